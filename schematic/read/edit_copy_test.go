package read

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const slip = `version: 1
pattern: Gorse Slip   # a first go
terms: UK
units: cm
sizes: XS (S, M)
gauges:
  fabric: 20 sts and 28 rows over 10 cm in stocking stitch
notes:
  - Wash 3 times.
pieces:
  - piece: Front
    # two borders
    sections:
      - cast on: 86 (96, 108)
      - even: 30 (31, 32.5) cm
      - bind off: 26
        at: both edges
      - bind off: all
finished:
  width at hem: 43 (48, 54)
`

func TestACopyStandsBehindWhatIsCopied(t *testing.T) {
	out, err := Edit([]byte(slip), Change{Act: Copy, Path: "pieces/0"})
	require.NoError(t, err)
	piece := slip[strings.Index(slip, "  - piece"):strings.Index(slip, "finished")]
	assert.Equal(t, strings.Replace(slip, "finished:", strings.Replace(piece, "Front", "Front 2", 1)+"finished:", 1), string(out))
	out, err = Edit([]byte(slip), Change{Act: Copy, Path: "pieces/0/sections/2"})
	require.NoError(t, err)
	section := "      - bind off: 26\n        at: both edges\n"
	assert.Equal(t, strings.Replace(slip, section, section+section, 1), string(out))
	for _, path := range []string{"", "sizes", "pieces", "pieces/7"} {
		_, err = Edit([]byte(slip), Change{Act: Copy, Path: path})
		assert.Error(t, err, path)
	}
}

func TestASizeIsAddedWithTheNumbersOfItsNeighbour(t *testing.T) {
	for _, c := range []struct {
		after            int
		sizes, on, even_ string
	}{
		{0, "XS (L, S, M)", "86 (86, 96, 108)", "30 (30, 31, 32.5) cm"}, // the one that stands alone stays alone
		{1, "XS (S, L, M)", "86 (96, 96, 108)", "30 (31, 31, 32.5) cm"},
		{2, "XS (S, M, L)", "86 (96, 108, 108)", "30 (31, 32.5, 32.5) cm"},
	} {
		out, err := Edit([]byte(slip), Change{Act: Widen, Path: "sizes", Cell: c.after, Value: "L"})
		require.NoError(t, err)
		for _, want := range []string{"sizes: " + c.sizes + "\n", "cast on: " + c.on + "\n", "even: " + c.even_ + "\n", "bind off: 26\n", "# a first go"} {
			assert.Contains(t, string(out), want)
		}
		back, err := Edit(out, Change{Act: Narrow, Path: "sizes", Cell: c.after + 1})
		require.NoError(t, err)
		assert.Equal(t, slip, string(back))
	}
	for _, value := range []string{"", "S", "a, b", "(L)"} {
		_, err := Edit([]byte(slip), Change{Act: Widen, Path: "sizes", Cell: 0, Value: value})
		assert.Error(t, err, value)
	}
	one := strings.NewReplacer("XS (S, M)", "XS", " (96, 108)", "", " (31, 32.5)", "", " (48, 54)", "").Replace(slip)
	out, err := Edit([]byte(one), Change{Act: Widen, Path: "sizes", Cell: 0, Value: "S"})
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(one, "sizes: XS", "sizes: XS (S)", 1), string(out))
	_, err = Edit([]byte(one), Change{Act: Narrow, Path: "sizes", Cell: 0})
	assert.ErrorContains(t, err, "only size")
}

// Every pattern to begin with and every example takes a size more and gives it back, byte for byte.
func TestEveryPatternTakesASizeMoreAndGivesItBack(t *testing.T) {
	var all []string
	for _, in := range []string{"../../cmd/internal/starter/kinds/*.yaml", "../../examples/*.yaml"} {
		some, err := filepath.Glob(filepath.FromSlash(in))
		require.NoError(t, err)
		all = append(all, some...)
	}
	require.Greater(t, len(all), 15)
	done := 0
	for _, path := range all {
		src, err := os.ReadFile(path)
		require.NoError(t, err)
		_, sizes, ok := Fields(src)
		require.True(t, ok)
		for i := range sizes.Names {
			out, err := Edit(src, Change{Act: Widen, Path: "sizes", Cell: i, Value: "Another"})
			if err != nil {
				assert.ErrorContains(t, err, "in the text", path)
				continue
			}
			_, now, _ := Fields(out)
			assert.Equal(t, sizes.Len()+1, now.Len(), path)
			back, err := Edit(out, Change{Act: Narrow, Path: "sizes", Cell: i + 1})
			require.NoError(t, err, path)
			if sizes.Len() > 1 {
				assert.Equal(t, string(src), string(back), path)
				done++
			}
		}
	}
	t.Logf("%d sizes of %d files", done, len(all))
	assert.Greater(t, done, 20)
}

// A measurement told in both units has a number of the size in each.
func TestASizeComesAndGoesInBothUnits(t *testing.T) {
	full := func(out []byte) string {
		_, s, _ := strings.Cut(string(out), "finished:\n  bust: ")
		s, _, _ = strings.Cut(s, "\n")
		return s
	}
	src, err := os.ReadFile("../../testdata/read/full.yaml")
	require.NoError(t, err)
	for i, want := range []string{"86 (86, 95, 104) (112, 121) cm / 34 (34, 37½, 41) (44, 47 3/4) in", "86 (95, 95, 104) (112, 121) cm / 34 (37½, 37½, 41) (44, 47 3/4) in",
		"86 (95, 104, 104) (112, 121) cm / 34 (37½, 41, 41) (44, 47 3/4) in", "86 (95, 104) (112, 112, 121) cm / 34 (37½, 41) (44, 44, 47 3/4) in"} {
		out, err := Edit(src, Change{Act: Widen, Path: "sizes", Cell: i, Value: "Another"})
		require.NoError(t, err)
		assert.Equal(t, want, full(out))
		back, err := Edit(out, Change{Act: Narrow, Path: "sizes", Cell: i + 1})
		require.NoError(t, err)
		assert.Equal(t, string(src), string(back))
	}
}

// A list in brackets takes a value more, as a list of lines does.
func TestAListInBracketsTakesAValueMore(t *testing.T) {
	src := []byte("version: 1\ndrawing:\n  order: [bust, length] # as they are read\n")
	out, err := Edit(src, Change{Act: Insert, Path: "drawing/order/0", Key: "line", Value: "cuff, around"})
	require.NoError(t, err)
	assert.Contains(t, string(out), "order: [bust, \"cuff, around\", length] # as")
}

// A pattern whose sizes can't be read has no counts to begin from.
func TestACopyInAPatternWithoutSizesStopsNothing(t *testing.T) {
	src := "pattern: Bag\nterms: US\nunits: cm\nsizes: []\npieces:\n  - piece: Bag\n    sections:\n      - cast on: 40\n"
	assert.NotPanics(t, func() {
		_, _ = Edit([]byte(src), Change{Act: Copy, Path: "pieces/0", Cell: -1, After: func(int, int) []int { return nil }})
	})
}

// Sizes that have other names are called so wherever a mapping calls them, and as the sample; what only looks like one is not.
func TestSizesAreRenamedWhereverTheyAreCalled(t *testing.T) {
	const named = `version: 1
pattern: Slip
terms: US
units: cm
sizes: XS (S, M) # three
sample: S
bodies: {bust: 80 (86, 92)}
gauges: {fabric: 20 sts and 28 rows over 10 cm in stockinette}
yarn:
  - text: wool
    amount: {XS: 5, S: 6, M: 7}
pieces:
  - piece: S
    sections:
      - cast on:
          XS: 86
          S: 96
          M: 108
      - even: {XS: 30, M: 31, S: 32}
      - bind off: all
`
	rename := func(now, was string) string {
		src := strings.Replace(named, "XS (S, M) #", now+" #", 1)
		out, err := Edit([]byte(src), Change{Act: Rename, Path: "sizes", Value: was})
		if err != nil {
			return err.Error()
		}
		return string(out)
	}
	out := rename("1 (2, Large)", "XS, S, M")
	for _, want := range []string{"sample: 2\n", "amount: {1: 5, 2: 6, Large: 7}", "  1: 86\n          2: 96\n          Large: 108\n", "- even: {1: 30, Large: 31, 2: 32}\n", "piece: S\n", "# three"} {
		assert.Contains(t, out, want)
	}
	out = rename("S (M, L)", "XS, S, M")
	assert.Contains(t, out, "sample: M\n")
	assert.Contains(t, out, "amount: {S: 5, M: 6, L: 7}")
	assert.Equal(t, strings.Replace(named, "XS (S, M) #", "M (S, XS) #", 1), rename("M (S, XS)", "XS, S, M"), "they changed places")
	assert.Equal(t, named, rename("XS (S, M)", "XS, S"), "another number of sizes")
	back, err := Edit([]byte(rename("1 (2, Large)", "XS, S, M")), Change{Act: Set, Path: "sizes", Cell: -1, Value: "XS (S, M)"})
	require.NoError(t, err)
	back, err = Edit(back, Change{Act: Rename, Path: "sizes", Value: "1, 2, Large"})
	require.NoError(t, err)
	assert.Equal(t, named, string(back))
}

// A size comes and goes in mappings by size and in lists of numbers too, in one line and in several; what only looks like one stays.
func TestASizeComesAndGoesInMappingsAndLists(t *testing.T) {
	const three = `version: 1
pattern: Slip
terms: US
units: cm
sizes: [XS, S, M] # three
sample: S
bodies: {bust: [80, 86, 92]}
gauges: {fabric: 20 sts and 28 rows over 10 cm in stockinette}
yarn:
  - text: wool
    amount: {XS: 5, S: 6, M: 7}
notes: [Block., Weave in., Rest.]
pieces:
  - piece: S
    sections:
      - cast on:
          XS: 86
          S: 96 # more
          M: 108
      - even:
          - 30
          - 31
          - 32
      - even: {M: 3, XS: 1, S: 2}
      - bind off: all
`
	out, err := Edit([]byte(three), Change{Act: Widen, Path: "sizes", Cell: 1, Value: "S2"})
	require.NoError(t, err)
	for _, want := range []string{"sizes: [XS, S, S2, M] # three\n", "bust: [80, 86, 86, 92]}", "amount: {XS: 5, S: 6, S2: 6, M: 7}", "notes: [Block., Weave in., Rest.]\n", "piece: S\n",
		"          S: 96 # more\n          S2: 96\n          M: 108\n", "          - 31\n          - 31\n          - 32\n", "even: {M: 3, XS: 1, S: 2, S2: 2}"} {
		assert.Contains(t, string(out), want)
	}
	back, err := Edit(out, Change{Act: Narrow, Path: "sizes", Cell: 2})
	require.NoError(t, err)
	assert.Equal(t, three, string(back))
	for i, want := range []string{"{M: 3, S: 2}", "{M: 3, XS: 1}", "{XS: 1, S: 2}"} {
		less, err := Edit([]byte(three), Change{Act: Narrow, Path: "sizes", Cell: i})
		require.NoError(t, err)
		assert.Contains(t, string(less), want)
		assert.Equal(t, i != 1, strings.Contains(string(less), "sample: S"), "the sample of a size that is no more goes with it")
	}
}
