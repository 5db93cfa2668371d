package read

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic/finding"
)

// sound is what holds for every file, however broken.
func sound(t require.TestingT, src []byte) {
	p, list := Pattern("f.yaml", src)
	require.False(t, p == nil && !list.Errors(), "no pattern, and no error says why")
	lines := finding.Lines(src)
	for _, f := range list {
		require.True(t, finding.Known(f.Kind), f.Kind)
		require.Equal(t, "f.yaml", f.Pos.File)
		require.LessOrEqual(t, f.Pos.Line, len(lines)+1, "%v", f)
		if f.Pos.Line > 0 && f.Pos.Line <= len(lines) {
			n := len([]rune(lines[f.Pos.Line-1]))
			require.LessOrEqual(t, f.Pos.Col, n+2, "%v", f)
		}
		require.LessOrEqual(t, len(f.Message), 3000)
	}
	require.LessOrEqual(t, len(list), mostFindings+1)
}

func FuzzPattern(f *testing.F) {
	files, _ := filepath.Glob("../../examples/*.yaml")
	for _, name := range append(files, filepath.Join(testdata, "full.yaml"), filepath.Join(testdata, "base.yaml")) {
		src, err := os.ReadFile(name)
		require.NoError(f, err)
		f.Add(src)
	}
	for _, cases := range families {
		for _, c := range cases {
			f.Add([]byte(c.source(f)))
		}
	}
	f.Fuzz(func(t *testing.T, src []byte) { sound(t, src) })
}

// A sound file with a few of its lines and characters changed is read or refused, never worse.
func TestChangedFilesAreReadOrRefused(t *testing.T) {
	src := string(full(t))
	pieces := []string{"\t", ":", ": ", "- ", "-", "[", "]", "{", "}", "\"", "'", "|", ">", "#", "&a ", "*a", "!x ", "(", ")", ",", "é", "½", "–", "\n", "  ", "999999", "\x00", "\xff", "? ", "---\n", "<<: "}
	rapid.Check(t, func(t *rapid.T) {
		s := src
		for range rapid.IntRange(1, 4).Draw(t, "changes") {
			i := rapid.IntRange(0, len(s)).Draw(t, "at")
			j := min(len(s), i+rapid.IntRange(0, 12).Draw(t, "out"))
			s = s[:i] + rapid.SampledFrom(pieces).Draw(t, "in") + s[j:]
		}
		sound(t, []byte(s))
	})
}

// What the lines of a file say does not depend on its line ends, nor on a mark of byte order.
func TestLineEndsAndByteOrderMakeNoDifference(t *testing.T) {
	src := string(full(t))
	want, list := Pattern("f.yaml", []byte(src))
	require.Empty(t, list)
	for _, s := range []string{strings.ReplaceAll(src, "\n", "\r\n"), strings.ReplaceAll(src, "\n", "\r"), "\uFEFF" + src, "\uFEFF" + strings.ReplaceAll(src, "\n", "\r\n")} {
		got, list := Pattern("f.yaml", []byte(s))
		require.Empty(t, list)
		assert.Equal(t, want, got)
	}
	broken := strings.Replace(src, "units: cm", "unitts: cm", 1)
	_, a := Pattern("f.yaml", []byte(broken))
	_, b := Pattern("f.yaml", []byte("\uFEFF"+strings.ReplaceAll(broken, "\n", "\r\n")))
	require.NotEmpty(t, a)
	assert.Equal(t, a, b)
}

func TestFilesThatAreNoTextAreRefused(t *testing.T) {
	for name, c := range map[string]struct{ src, kind string }{
		"nothing":               {"", "file/empty"},
		"only comments":         {"# a pattern\n\n", "file/empty"},
		"a word":                {"hello", "file/kind"},
		"a list":                {"- a\n- b", "file/kind"},
		"UTF-16, small end":     {"\xff\xfep\x00a\x00t\x00", "file/encoding"},
		"UTF-16, big end":       {"\xfe\xff\x00p\x00a\x00t", "file/encoding"},
		"UTF-16 without a mark": {"p\x00a\x00t\x00t\x00e\x00r\x00n\x00", "file/encoding"},
		"too large":             {strings.Repeat("#", mostBytes+1), "file/size"},
		"a binary":              {"\x7fELF\x02\x01\x01\x00", "file/characters"},
	} {
		p, list := Pattern("f.yaml", []byte(c.src))
		require.NotEmpty(t, list, name)
		assert.Equal(t, c.kind, list[0].Kind, name)
		assert.True(t, list.Errors(), name)
		if c.kind != "file/kind" {
			assert.Nil(t, p, name)
		}
	}
}

// The largest files do not run away: a mebibyte of anything is read or refused.
func TestTheLargestFilesAreBounded(t *testing.T) {
	for name, unit := range map[string]string{
		"brackets": "[", "braces": "{a: ", "dashes": "- ", "anchors": "- &a x\n", "sections": "      - even: 10 rows\n",
		"colons": "a: b: ", "quotes": "\"", "brackets of the trade": "{a: 1 (2, ", "keys": "aa: 1\n", "asterisks": "- *a\n",
	} {
		src := "pieces:\n  - piece: A\n    sections:\n" + strings.Repeat(unit, mostBytes/2/len(unit))
		_, list := Pattern(name, []byte(src))
		require.True(t, list.Errors(), name)
	}
}

// A garment of six pieces in nine sizes.
func garment(b *testing.B) []byte {
	line := "60 (66, 72, 78, 84) (90, 96, 102, 108)"
	var s strings.Builder
	s.WriteString("pattern: Large\nterms: US\nunits: cm\nsizes: XS (S, M, L, XL) (1X, 2X, 3X, 4X)\ngauges:\n  fabric: 14 sts and 10 rows over 10 cm in hdc\npieces:\n")
	for _, name := range []string{"Back", "Left front", "Right front", "Sleeve", "Collar", "Pocket"} {
		s.WriteString("  - piece: " + name + "\n    sections:\n      - cast on: " + line + "\n      - even: 8 rows\n        rib: yes\n")
		for range 6 {
			s.WriteString("      - decrease: 1\n        at: both edges\n        every: 2 rows\n        times: 2 (2, 2, 3, 3) (3, 4, 4, 4)\n        to: " + line + "\n")
			s.WriteString("      - even: 20 (20, 21, 21, 22) (22, 23, 23, 24) cm\n")
		}
		s.WriteString("      - bind off: all\n")
	}
	p, list := Pattern("g.yaml", []byte(s.String()))
	require.Empty(b, list)
	require.Len(b, p.Pieces, 6)
	return []byte(s.String())
}

func BenchmarkSixPiecesInNineSizes(b *testing.B) {
	src := garment(b)
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		Pattern("g.yaml", src)
	}
}

func BenchmarkTheFullFile(b *testing.B) {
	src := full(b)
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		Pattern("full.yaml", src)
	}
}

func TestAPatternWithoutAPieceIsRefused(t *testing.T) {
	_, list := Pattern("f.yaml", []byte("pattern: A\nterms: US\nunits: cm\nsizes: M\ngauges:\n  g: 20 sts and 28 rows over 10 cm\npieces: []\n"))
	require.Len(t, list, 1)
	assert.Equal(t, "file/empty", list[0].Kind)
	assert.Equal(t, 7, list[0].Pos.Line)
	assert.Contains(t, list[0].Fix, "write a piece")
}
