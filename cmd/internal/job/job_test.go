package job

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/cmd/internal/files"
	"flatwright/schematic"
	"flatwright/schematic/finding"
)

func TestSlugs(t *testing.T) {
	for name, want := range map[string]string{
		"Saltmarsh Cardigan":            "saltmarsh-cardigan",
		"  Möwe & Ærø – nº 2½ ":         "mowe-aero-no-2-1-2",
		"Fisherman's rib":               "fishermans-rib",
		"2X":                            "2x",
		"3–6 months":                    "3-6-months",
		"Тельняшка":                     "pattern",
		"":                              "pattern",
		"../../etc/passwd":              "etc-passwd",
		"Aux":                           "aux-pattern",
		"LPT1":                          "lpt1-pattern",
		strings.Repeat("very long ", 9): strings.Repeat("very-long-", 6) + "v",
	} {
		assert.Equal(t, want, Slug(name), "%q", name)
	}
}

func TestNamesAreSafeOnEverySystemAndNoTwoAreOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		title := rapid.String().Draw(t, "title")
		n, seen := namer{}, map[string]bool{}
		for _, size := range rapid.SliceOfN(rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"S", "s", "S-2", "all sizes", "con", "…"})), 1, 20).Draw(t, "sizes") {
			name := n.name(".svg", title, size)
			require.NoError(t, files.CheckName(name))
			require.False(t, seen[strings.ToLower(name)], "%s twice", name)
			seen[strings.ToLower(name)] = true
		}
	})
}

func TestSizesWithoutLatinLettersStillHaveNames(t *testing.T) {
	n := namer{}
	assert.Equal(t, "tern-size.svg", n.name(".svg", "Tern", "大"))
	assert.Equal(t, "tern-size-2.svg", n.name(".svg", "Tern", "小"))
}

// EN 14682 (cords on children's clothes) and EN 71-1 (small parts, under three
// years; from memory).
func TestCautionsOnChildrensClothes(t *testing.T) {
	button, cord := []schematic.Material{{Text: "5 buttons, 15 mm"}}, []schematic.Material{{Text: "80 cm of i-cord"}}
	for _, c := range []struct {
		p      schematic.Pattern
		choke  bool
		strang bool
	}{
		{schematic.Pattern{Children: true, Notions: button}, true, false},
		{schematic.Pattern{Children: true, Notions: cord}, false, true},
		{schematic.Pattern{Children: true, Notions: append(cord, button...)}, true, true},
		{schematic.Pattern{Children: false, Notions: button}, false, false},
		{schematic.Pattern{Children: true, Notions: []schematic.Material{{Text: "a card of wool"}}}, false, false},
		{schematic.Pattern{Children: true, Pieces: []*schematic.Piece{{Name: "Button band"}}}, true, false},
		{schematic.Pattern{Children: true, Pieces: []*schematic.Piece{{Name: "Front", Sections: []schematic.Section{&schematic.Mark{What: "buttonhole"}}}}}, true, false},
	} {
		text := caution(&c.p)
		assert.Equal(t, c.choke, strings.Contains(text, "choke"), text)
		assert.Equal(t, c.strang, strings.Contains(text, "strangle"), text)
		assert.Equal(t, c.choke || c.strang, strings.Contains(text, "safety rules of the country"))
	}
}

func TestAnUnreadablePatternGivesItsFindingsAndNoFiles(t *testing.T) {
	src := Source{"x.yaml", []byte("version: 1\npattern: X\n")}
	for name, f := range map[string]func() (Result, error){
		"draw":  func() (Result, error) { return Draw(context.Background(), src, DrawOptions{}) },
		"table": func() (Result, error) { return Table(context.Background(), src, TableOptions{}) },
		"check": func() (Result, error) { return Check(context.Background(), src) },
	} {
		r, err := f()
		require.ErrorIs(t, err, ErrUnreadable, name)
		assert.True(t, r.Findings.Errors(), name)
		assert.Empty(t, r.Files, name)
	}
}

func TestFileNamesOfADrawnPattern(t *testing.T) {
	src := sources(t, "../../flatwright/testdata/*.yaml")[0]
	r, err := Draw(context.Background(), src, DrawOptions{})
	require.NoError(t, err)
	for _, f := range r.Files {
		assert.True(t, strings.HasPrefix(f.Name, r.Slug), f.Name)
		assert.NotEmpty(t, f.Body)
		require.NoError(t, files.CheckName(f.Name))
	}
}

func sources(t testing.TB, glob string) []Source {
	t.Helper()
	paths, err := filepath.Glob(glob)
	require.NoError(t, err)
	var all []Source
	for _, p := range paths {
		text, err := os.ReadFile(p)
		require.NoError(t, err)
		all = append(all, Source{filepath.Base(p), text})
	}
	require.NotEmpty(t, all, "no files %s", glob)
	return all
}

func TestEveryExampleAgreesWithItselfAndIsDrawnAlikeEveryTime(t *testing.T) {
	for _, src := range sources(t, "../../../examples/*.yaml") {
		a, err := Draw(context.Background(), src, DrawOptions{})
		require.NoError(t, err, "%s: %v", src.Name, a.Findings)
		for _, f := range a.Findings {
			assert.Equal(t, finding.Note, f.Severity, "%s", f)
		}
		b, err := Draw(context.Background(), src, DrawOptions{})
		require.NoError(t, err, src.Name)
		require.Len(t, b.Files, len(a.Files))
		for i := range a.Files {
			assert.True(t, bytes.Equal(a.Files[i].Body, b.Files[i].Body), "%s differs", a.Files[i].Name)
		}
	}
}
