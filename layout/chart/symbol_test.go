package chart

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

func shapeOf(paths []*sheet.Path) string {
	var b strings.Builder
	for _, p := range paths {
		fmt.Fprintf(&b, "%v%v;", p.Segs, p.Style.Fill)
	}
	return b.String()
}

// singly are the single strokes of paths, each from where the pen is put down.
func singly(paths []*sheet.Path) [][]sheet.Seg {
	var out [][]sheet.Seg
	for _, p := range paths {
		for _, s := range p.Segs {
			if s.Verb == sheet.Move {
				out = append(out, nil)
			}
			out[len(out)-1] = append(out[len(out)-1], s)
		}
	}
	return out
}

// slanted counts the slanted bars of a symbol, level those that lie across.
func strokesOf(paths []*sheet.Path) (slanted, level int) {
	for _, segs := range singly(paths) {
		if len(segs) != 2 || segs[1].Verb != sheet.Line {
			continue
		}
		d := sub(segs[1].P[0], segs[0].P[0])
		switch {
		case d.X != 0 && d.Y == 0:
			level++
		case d.X != 0:
			slanted++
		}
	}
	return slanted, level
}

// The international crochet symbols as published lists describe them: chain an open oval, slip stitch a dot, single
// crochet a cross, half double a T, double a T with one slash, treble with two (the table of common symbols in 'How to
// read crochet symbol charts', mrscrochetworld.com, and that of 'Basic crochet diagram symbols', dailyhandmade.com, both as
// read in November 2026: as many slashes as yarn overs); double treble with three and triple treble with four by that rule.
func TestPlainStitchesHaveTheirBars(t *testing.T) {
	for id, want := range map[string][2]int{"sc": {0, 1}, "hdc": {0, 1}, "dc": {1, 1}, "tr": {2, 1}, "dtr": {3, 1}, "trtr": {4, 1}} {
		slanted, level := strokesOf(sample(used{k: stitch.ByID(id)}))
		assert.Equal(t, want, [2]int{slanted, level}, id)
	}
	slip := sample(used{k: stitch.ByID("slst")})
	require.Len(t, slip, 1)
	assert.Equal(t, sheet.Black, slip[0].Style.Fill, "a slip stitch is a filled dot")
	chain := sample(used{k: stitch.ByID("ch")})
	require.Len(t, chain, 1)
	assert.Equal(t, sheet.None, chain[0].Style.Fill, "a chain is an open oval")
	lo, hi := bounds(chain)
	assert.Greater(t, hi.X-lo.X, hi.Y-lo.Y)
}

func TestNoTwoCrochetSymbolsAreAlike(t *testing.T) {
	drawn := map[string]string{}
	for _, k := range stitch.All() {
		if k.Craft != stitch.Crochet {
			continue
		}
		s := shapeOf(sample(used{k: k, post: k.Post}))
		other, ok := drawn[s]
		assert.False(t, ok, "%s is drawn like %s", k.ID, other)
		drawn[s] = k.ID
	}
}

func TestSymbolsAreAsTallAsTheirKind(t *testing.T) {
	for _, k := range stitch.All() {
		if k.Craft != stitch.Crochet || k.ID == "ch" {
			continue
		}
		lo, hi := bounds(sample(used{k: k, post: k.Post}))
		assert.InDelta(t, height(k), hi.Y-max(lo.Y, 0), 0.8, k.ID) // a cross has air above and below
		assert.Greater(t, lo.Y, -0.6, k.ID)
	}
}

func TestDecreasesShareAHeadAndIncreasesAFoot(t *testing.T) {
	k := stitch.ByID("dc3tog")
	legs := 0
	for _, segs := range singly(sample(used{k: k})) {
		if d := sub(segs[len(segs)-1].P[0], pt{Y: height(k)}); long(d) < 1e-9 {
			legs++
		}
	}
	assert.Equal(t, 3, legs)
	p, _ := laid(text(t, "rows/shells-5-2.txt"))
	group := 0
	for _, n := range p.lines[2].nodes {
		if len(n.group) == 5 {
			group++
			foot := p.footPoints(n)[0]
			assert.Less(t, long(sub(foot, p.point(n.feet[0], n.feet[0].v))), 4.5)
		}
	}
	assert.Equal(t, 10, group)
}

// The knitting symbols as published lists describe them: an empty square is knit on the right side and purl on the
// wrong, a dash or dot the other way round, a circle a yarn over, a slash to the right knit two together, to the left its
// mirror (tables of 'Learning to read written instructions', chapter 6, and of knittingfix.com, 'How to read knitting chart
// symbols', as read in November 2026; that decreases lean as their stitches do is told by both). Symbols of designers differ:
// the key names each.
func TestKnittingSymbolsAreOfTheFamiliesThatListsTell(t *testing.T) {
	drawn := func(id string, wrong bool) []*sheet.Path {
		k := stitch.ByID(id)
		require.NotNil(t, k, id)
		return knitSymbol(shownKey(k, wrong), pt{}, cell)
	}
	lean := func(paths []*sheet.Path) float64 { // of the longest straight stroke: above 0 to the right
		best, way := 0.0, 0.0
		for _, segs := range singly(paths) {
			if d := sub(segs[len(segs)-1].P[0], segs[0].P[0]); long(d) > best {
				best, way = long(d), d.X*d.Y
			}
		}
		return way
	}
	assert.Empty(t, drawn("k", false), "knit on the right side")
	assert.Empty(t, drawn("p", true), "purl on the wrong side")
	for _, paths := range [][]*sheet.Path{drawn("p", false), drawn("k", true)} {
		slanted, level := strokesOf(paths)
		assert.Equal(t, [2]int{0, 1}, [2]int{slanted, level}, "a dash")
	}
	yo := drawn("yo", false)
	lo, hi := bounds(yo)
	assert.Equal(t, sheet.None, yo[0].Style.Fill)
	assert.InDelta(t, hi.X-lo.X, hi.Y-lo.Y, 0.01, "a circle")
	for _, id := range []string{"k2tog", "k3tog"} {
		assert.Positive(t, lean(drawn(id, false)), id)
	}
	for _, id := range []string{"ssk", "skpo", "sk2p"} {
		assert.Negative(t, lean(drawn(id, false)), id)
	}
	for _, k := range stitch.All() { // each stitch has a symbol of its own family, or is named in the key by a spot
		if k.Craft == stitch.Knitting && k.Cross == nil && k.Key != "knit" && k.Key != "second of two" {
			assert.NotEmpty(t, knitSymbol(k.Key, pt{}, cell), k.ID)
		}
	}
}
