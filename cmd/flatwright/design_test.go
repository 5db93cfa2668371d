package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/starter"
	"flatwright/fonts"
)

// onePage are lines at the end of a pattern that leave the pieces out.
func onePage(lines string) string {
	if rest, ok := strings.CutPrefix(lines, "drawing:\n"); ok {
		lines = rest
	}
	return "drawing:\n  views: as worn\n" + lines
}

// drawn is the SVG of a starter with more lines at its end, drawn with flags.
func drawn(t *testing.T, kind, lines string, flags ...string) result {
	path := filepath.Join(t.TempDir(), kind+".yaml")
	require.NoError(t, os.WriteFile(path, append(starter.Text(kind), onePage(lines)...), 0o644))
	return flatwright(t, "", append([]string{"draw", "--size", "M", "--units", "cm", "--format", "svg", "--out", "-", path}, flags...)...)
}

func TestAPictureIsDrawnAsThePatternAndTheFlagsSay(t *testing.T) {
	r := drawn(t, "hat", "")
	require.Equal(t, exitWell, r.code, r.err)
	assert.Contains(t, r.out, `id="heading"`)
	assert.Contains(t, r.out, `id="key"`)
	assert.Contains(t, r.out, "<text")
	r = drawn(t, "hat", "drawing:\n  heading: no\n  width: 120 mm\n  colours: {line: \"#26323f\"}\n", "--without", "key,arrows", "--text", "outlines")
	require.Equal(t, exitWell, r.code, r.err)
	assert.NotContains(t, r.out, `id="heading"`)
	assert.NotContains(t, r.out, `id="key"`)
	assert.NotContains(t, r.out, `class="work"`)
	assert.NotContains(t, r.out, "<text")
	assert.Contains(t, r.out, `width="120.00mm"`)
	assert.Contains(t, r.out, `stroke="#26323f"`)
	assert.Contains(t, drawn(t, "hat", "", "--width", "90mm").out, `width="90.00mm"`)
	assert.NotContains(t, drawn(t, "hat", "", "--hide", "brim,length").out, "length:")
}

func TestWhatADrawingIsToldWronglyIsToldWithItsPlaceAndFix(t *testing.T) {
	for lines, want := range map[string][]string{
		"drawing:\n  width: wide\n":                     {"width: wide", "write width: 160 mm"},
		"drawing:\n  width: 3 m\n":                      {"length on paper"},
		"drawing:\n  size: 90 pt\n":                     {"out of bounds", "from 1.5 to 12 mm"},
		"drawing:\n  letters: of wood\n":                {"from A"},
		"drawing:\n  views: from above\n":               {"as worn, pieces"},
		"drawing:\n  colours: {line: red}\n":            {"six digits"},
		"drawing:\n  hide: depth of rip\n":              {`did you mean "depth of rib"`},
		"drawing:\n  colours: {measure: \"#aabbcc\"}\n": {"4.5 to 1", "the same colour darker"},
		"drawing:\n  font: x.ttf\n":                     {`"face"`},
		"drawing:\n  colours: {fill: \"#202020\"}\n":    {"ground #202020"},
		"drawing:\n  colours:\n    line: #26323f\n":     {"in quotes"},
	} {
		path := filepath.Join(t.TempDir(), "hat.yaml")
		require.NoError(t, os.WriteFile(path, append(starter.Text("hat"), lines...), 0o644))
		r := flatwright(t, "", "check", path)
		for _, w := range want {
			assert.Contains(t, r.out+r.err, w, lines)
		}
	}
}

func TestAFaceThatLacksGlyphsIsToldAndDrawn(t *testing.T) {
	dir := t.TempDir()
	few := fonts.SubsetOf(fonts.Regular, "0123456789 cmin").TTF
	require.NoError(t, os.WriteFile(filepath.Join(dir, "few.ttf"), few, 0o644))
	path := filepath.Join(dir, "hat.yaml")
	require.NoError(t, os.WriteFile(path, append(starter.Text("hat"), onePage("  face: few.ttf\n")...), 0o644))
	r := flatwright(t, "", "draw", "--size", "M", "--format", "svg", "--out", "-", path)
	require.Equal(t, exitWell, r.code, r.err)
	assert.Contains(t, r.err, "missing from the face")
	assert.Contains(t, r.out, "□")
	require.NoError(t, os.WriteFile(filepath.Join(dir, "few.ttf"), []byte("wOF2 and more"), 0o644))
	r = flatwright(t, "", "draw", "--size", "M", "--format", "svg", "--out", "-", path)
	assert.Equal(t, exitWell, r.code, r.err)
	assert.Contains(t, r.err, "web font")
	r = flatwright(t, "", "draw", "--face", filepath.Join(dir, "none.ttf"), "--out", "-", path)
	assert.Equal(t, exitUsage, r.code)
	assert.True(t, strings.Contains(r.err, "cannot read the face"), r.err)
}

// A face of few glyphs is told wherever it is used, and one that is not there is refused.
func TestAFaceCanBeNamedForWhateverIsDrawn(t *testing.T) {
	dir := t.TempDir()
	face := filepath.Join(dir, "few.ttf")
	require.NoError(t, os.WriteFile(face, fonts.SubsetOf(fonts.Regular, "0123456789 cmin").TTF, 0o644))
	path := filepath.Join(dir, "hat.yaml")
	require.NoError(t, os.WriteFile(path, starter.Text("hat"), 0o644))
	for _, command := range [][]string{{"draw"}, {"chart"}, {"handout"}, {"handout", "--life-size", "--size", "M"}, {"page"}, {"grade", "--nested"}} {
		t.Run(strings.Join(command, " "), func(t *testing.T) {
			run := func(file string) result {
				return flatwright(t, "", append(append([]string{}, command...), "--overwrite", "--face", file, "--out", filepath.Join(dir, "out"), path)...)
			}
			r := run(face)
			assert.Equal(t, exitWell, r.code, r.err)
			assert.Contains(t, r.err, "missing from the face")
			r = run(filepath.Join(dir, "none.ttf"))
			assert.Equal(t, exitUsage, r.code)
			assert.Contains(t, r.err, "cannot read the face")
		})
	}
}
