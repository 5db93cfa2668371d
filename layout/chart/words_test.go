package chart

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/sheet"
	"flatwright/schematic/rows"
)

// A round of thousands of stitches is told in a few words, and once, however many pages it takes.
func TestALargeChartIsToldOnceAndInFewWords(t *testing.T) {
	src := "Rnd 1: 6 sc in magic ring. (6 sts)\n" + strings.Repeat("Next rnd: 2 sc in each st around.\n", 8)
	x := rows.Read("x", []byte(src), rows.Options{})
	g, ok := rows.GraphOf(x, x.Sections[0].Name, 0)
	require.True(t, ok)
	w, ok := FromGraph(g)
	require.True(t, ok)
	require.Greater(t, len(w.Rows[len(w.Rows)-1].St), 1500)
	assert.Less(t, len(w.describe(w.words)), 2000)
	ss, err := Draw(w, Options{Scale: 1})
	require.NoError(t, err)
	require.Greater(t, len(ss), 4)
	told := map[string]int{}
	for i, s := range ss {
		assert.Equal(t, i == 0, strings.Contains(s.Desc, w.describe(w.words)))
		for _, it := range s.Root.Items {
			if g, ok := it.(*sheet.Group); ok && g.Desc != "" {
				told[g.Desc]++
			}
		}
	}
	for i := range w.Rows {
		if !w.Rows[i].Base {
			assert.Equal(t, 1, told[w.words(i)], w.words(i))
		}
	}
}

func TestRepeatsAreToldByTheShortestThatCoversMost(t *testing.T) {
	for in, want := range map[string]string{
		"a b c": "a b c", "a a": "a a", "a a a": "(a) 3 times", "a b a b a b c": "(a, b) 3 times c", "x a b a b a b a": "x (a, b) 3 times a", "a a b a a b a a b": "(a, a, b) 3 times",
	} {
		assert.Equal(t, want, strings.Join(repeats(strings.Fields(in)), " "))
	}
}

// A hundred thousand stitches in one place, or a chain as long, are counted and not drawn.
func TestAChartThatNoOneCouldReadIsRefused(t *testing.T) {
	for _, src := range []string{
		"Ch 9.\nRow 1: 90000 sc in 2nd ch from hook.\n", "Ch 9.\nRow 1: Sc in 2nd ch from hook, ch 90000, sc in next ch.\n",
		"Rnd 1: 6 sc in magic ring. (6 sts)\n" + strings.Repeat("Next rnd: 2 sc in each st around.\n", 14),
	} {
		x := rows.Read("x", []byte(src), rows.Options{})
		g, ok := rows.GraphOf(x, x.Sections[0].Name, 0)
		require.True(t, ok, src)
		w, ok := FromGraph(g)
		require.True(t, ok, src)
		_, err := Draw(w, Options{})
		var many *TooMany
		require.ErrorAs(t, err, &many, src)
		assert.Greater(t, many.N, many.Most)
	}
}

// The words of the key stand whole in large print, over as many lines as they take.
func TestTheKeyIsWholeInLargePrint(t *testing.T) {
	name := "yarn that was wound by hand from the fleece of a black ewe"
	w := &Work{Rows: []Row{{Base: true, St: make([]St, 4)}, {Number: 1, St: make([]St, 4)}}}
	d := build(w, &Options{Text: 7}, 1)
	d.key = []entry{{"yarn", []*sheet.Path{path("stitch", quiet, pt{}, pt{X: 3, Y: 3})}, name}}
	for _, trim := range []bool{false, true} {
		c, err := onPages(d, &Options{Text: 7, Trim: trim})
		require.NoError(t, err)
		lines, wide := c.entryText(d.key[0])
		assert.Equal(t, name, strings.Join(lines, " "))
		assert.Greater(t, len(lines), 1)
		assert.GreaterOrEqual(t, c.keyHigh[0], 7*float64(len(lines)))
		assert.Less(t, wide, c.w)
	}
}
