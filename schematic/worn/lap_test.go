package worn

import (
	"os"
	"slices"
	"strings"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Two fronts whose edges meet in the middle are two sheets: the right one with its band lies over the left one with its
// own, and of that no line shows beneath it.
func TestTheRightFrontAndItsBandLieOverTheLeft(t *testing.T) {
	text, err := os.ReadFile("../../examples/saltmarsh-cardigan.yaml")
	require.NoError(t, err)
	p, _ := read.Pattern("saltmarsh-cardigan.yaml", text)
	require.NotNil(t, p)
	g := schematic.Work(p, 2)
	Dress(g)
	require.NotNil(t, g.Worn)
	v := g.Worn.Views[0]
	require.Len(t, v.Outline, 1)
	require.Len(t, v.Under, 1)
	_, hi := bounds(v.Outline)
	under, _ := bounds(v.Under)
	// The band is 6 rows deep, about 30 mm, and reaches so far beyond the middle on top and beneath.
	assert.InDelta(t, 30, hi.X, 2)
	assert.InDelta(t, -30, under.X, 2)
	for _, l := range v.Lines {
		if l.Kind == schematic.LineEdge {
			assert.False(t, deepWithin(v.Outline[0], mid(l.A, l.B)), "%v", l)
		}
	}
}

func deepWithin(loop []pt, p pt) bool {
	return schematic.InPolygon(loop, p) && distTo(append(append([]pt{}, loop...), loop[0]), p) > 1
}

func TestRibsOfAGroundGoFromEdgeToEdge(t *testing.T) {
	// 30 mm wide and 10 high: ribs at 4.5, 13.5 and 22.5 mm.
	r := schematic.Hatch{Poly: []pt{{X: 0, Y: 0}, {X: 30, Y: 0}, {X: 30, Y: 10}, {X: 0, Y: 10}}, Dir: pt{Y: 1}}
	ribs := ribsOf(r)
	require.Len(t, ribs, 3)
	for _, s := range ribs {
		assert.InDelta(t, s[0].X, s[1].X, 1e-9)
		assert.InDelta(t, 10, dist(s[0], s[1]), 1e-9)
	}
	assert.InDelta(t, 9, absf(ribs[1][0].X-ribs[0][0].X), 1e-9)
	r.Dir = pt{X: 1} // along it there is room for one
	require.Len(t, ribsOf(r), 1)
	assert.InDelta(t, 30, dist(ribsOf(r)[0][0], ribsOf(r)[0][1]), 1e-9)
}

// A sleeve whose strap goes on to the neck between front and back bends at the armhole: its strap lies along the shoulder, and
// the rest of it hangs from the armhole.
func TestTheStrapOfASaddleLiesAlongTheShoulder(t *testing.T) {
	p := pattern(t, "saddle.yaml")
	g := schematic.Work(p, 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	for _, f := range g.Findings {
		assert.NotEqual(t, "worn/left-over", f.Kind, f.Message)
	}
	// The shoulder begins at 18 × 3.3333 + 90 × 3.5714 + 2 + 12 + 36 rows, 560 mm, and runs from 34 / 2 stitches, 85 mm, to 85 + 23 stitches,
	// 200 mm. Half of the strap, 16 stitches, is 40 mm deep: its outer corner is that of the sleeve too.
	loop := g.Worn.Views[0].Outline[0]
	for _, side := range []float64{-1, 1} {
		hasCorner(t, loop, side*85.36, 600)
		hasCorner(t, loop, side*199.64, 600)
	}
	straps := 0
	for _, q := range assembled(g).placed {
		if q.strap {
			straps++
			assert.InDelta(t, 90, absf(degrees(q.where)), 1e-6)
		}
	}
	assert.Equal(t, 2, straps)
	assert.InDelta(t, 600, measured(t, g, "length").Length.Float(), 0.01)
	// Where it is joined to the back alone nothing in front takes it, and the sleeve is named.
	p.Joins = slices.Delete(slices.Clone(p.Joins), 1, 2)
	without := schematic.Work(p, 0)
	Dress(without)
	assert.True(t, notes(without, map[string]bool{"Sleeve": true}), "%v", without.Findings)
}

// Where two fronts meet edge to edge, a band along both goes up on either side, and not down one and up the other.
func TestABandGoesUpBothFrontsThatMeet(t *testing.T) {
	a := assembled(schematic.Work(pattern(t, "gilet.yaml"), 0))
	n := 0
	for _, p := range a.placed {
		if p.made.Name != "Front band" {
			continue
		}
		n++
		// From the hem to the shoulder, and 10 rows of 3.3333 mm beyond the middle: 34 mm at its slanted end.
		lo, hi := box(p.drawn)
		assert.InDelta(t, 0, lo.Y, 0.01)
		assert.Greater(t, hi.Y, 540.0)
		assert.InDelta(t, 33.333, min(absf(lo.X), absf(hi.X)), 1)
	}
	assert.Equal(t, 2, n)
}

// A back of 28 cm that is sewn to 9 cm of chest at both its sides goes round to the front: neither is the garment, and no girth is told.
func TestABackThatGoesRoundToTheFrontIsNotDrawnBehindIt(t *testing.T) {
	const text = `
version: 1
pattern: Coat
terms: US
units: cm
sizes: one
gauges:
  fabric: 20 sts and 20 rows over 10 cm in moss stitch
pieces:
  - piece: Back
    left edge: chest side
    right edge: chest side
    sections:
      - {cast on: 56}
      - {even: 40 rows}
      - {bind off: all, edge: neck}
  - piece: Chest
    left edge: chest side
    right edge: chest side
    sections:
      - {cast on: 18}
      - {even: 40 rows}
      - {bind off: all, edge: neck}
joins:
  - {sew: Chest chest side, to: Back chest side}
`
	for piece, why := range map[string]string{"Chest\n": "not called a front", "Chest\n    kind: front\n": "does not lie flat"} {
		g := schematic.Work(written(t, strings.Replace(text, "piece: Chest\n", "piece: "+piece, 1)), 0)
		Dress(g)
		assert.Nil(t, g.Worn)
		require.Len(t, noted(g), 1)
		assert.Contains(t, noted(g)[0].Message, "Back is not in it")
		assert.Contains(t, noted(g)[0].Message, why)
	}
	g := schematic.Work(written(t, strings.Replace(strings.Replace(text, "piece: Chest\n", "piece: Chest\n    kind: front\n", 1), "cast on: 18", "cast on: 54", 1)), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, noted(g))
}

// A cowl of 40 rounds at 24 to 4 in stands up from the ends of the neck, and is no part of the length.
func TestACowlInTheRoundIsMeasuredFromTheShoulder(t *testing.T) {
	g := schematic.Work(pattern(t, "vest-cowl.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.InDelta(t, 40*101.6/24, measured(t, g, "cowl height").Length.Float(), 0.01)
	_, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, hi.Y-40*101.6/24, measured(t, g, "length").Length.Float(), 0.01)
}

// Straps of 22 by 150 mm that are sewn along one row of edges lie on each other, if only by less than what is sewn may: that is told, and not drawn.
func TestStrapsThatLieOnEachOtherAreNotDrawn(t *testing.T) {
	g := schematic.Work(written(t, `
version: 1
pattern: Straps
terms: US
units: cm
sizes: one
gauges:
  fabric: 18 sts and 20 rows over 10 cm in single crochet
pieces:
  - piece: Front
    sections:
      - {cast on: 60}
      - {even: 10 rows, left edge: side, right edge: side}
      - divide:
          - {part: Left cup, stitches: 30, mirror of: Right cup}
          - part: Right cup
            stitches: 30
            left edge: outer cup
            right edge: inner cup
            sections:
              - {decrease: 1, at: both edges, every: 1 row, times: 13}
              - {bind off: all, edge: cup top}
  - piece: Back
    sections:
      - {cast on: 60}
      - {even: 10 rows, left edge: side, right edge: side}
      - {bind off: all, edge: back top}
  - piece: Strap
    kind: band
    make: 2
    sections:
      - {cast on: 4, edge: end}
      - {even: 60 rows}
      - {bind off: all, edge: end}
joins:
  - {sew: Front side, to: Back side}
  - {sew: Strap end, to: [Front Left cup top, Front Right cup top, Back back top], how: in 4 places}
`), 0)
	Dress(g)
	assert.Nil(t, g.Worn)
	require.NotEmpty(t, g.Findings)
	assert.Contains(t, g.Findings[len(g.Findings)-1].Message, "Strap and Strap would lie on each other")
}

// A tie of 8 rows of 4 mm at the edge of the right front, which reaches 300 of 400 mm across, lies over the left front and out beyond it, 500 mm long; nothing of it is hidden.
func TestATieLiesOnTheFrontThatItCrosses(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Wrap
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 25 rows over 10 cm in dc}
pieces:
  - piece: Back
    sections: [{cast on: 80, edge: hem}, {even: 50 rows}, {divide: [{bind off: 30, edge: shoulder}, {bind off: 20, edge: neck}, {bind off: 30, edge: shoulder}]}]
  - piece: Right front
    right edge: front edge
    sections: [{cast on: 60, edge: hem}, {even: 20 rows}, {decrease: 1, at: right edge, edge: neck, times: 30}, {bind off: all, edge: shoulder}]
  - piece: Left front
    left edge: front edge
    sections: [{cast on: 40, edge: hem}, {even: 40 rows}, {decrease: 1, at: left edge, edge: neck, times: 10}, {bind off: all, edge: shoulder}]
  - piece: Tie
    kind: band
    sections: [{cast on: 8, edge: end}, {even: 125 rows}, {bind off: all}]
joins:
  - {sew: Right front shoulder, to: Back right shoulder}
  - {sew: Left front shoulder, to: Back left shoulder}
  - {sew: Right front side, to: Back right side}
  - {sew: Left front side, to: Back left side}
  - {sew: Tie end, to: Right front front edge, how: in 1 places}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	var tie [][]pt
	for _, l := range g.Worn.Views[0].Outline {
		if lo, hi := bounds([][]pt{l}); absf(hi.X-lo.X-500) < 0.1 {
			tie = append(tie, l)
			assert.InDelta(t, -200+300, lo.X, 0.1)
			assert.InDelta(t, 40, hi.Y-lo.Y, 0.1)
		}
	}
	assert.Len(t, tie, 1)
}

// The half of a round behind a bib is hidden by the half in front: of neither it is said that it is not drawn.
func TestWhatLiesBehindABibIsNotMissed(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Dungarees
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 25 rows over 10 cm in stocking stitch}
pieces:
  - piece: Leg
    make: 2
    worked: in the round, from the hem
    sections: [{cast on: 56, edge: cuff}, {even: 50 rows}, {divide: [{hold: 50, name: thigh}, {hold: 6, name: crotch}]}]
  - piece: Body
    worked: in the round, from the hem
    sections:
      - start from: [{piece: Leg, part: thigh}, {piece: Leg, part: thigh}]
      - even: 50 rows
      - divide:
          - {part: Front bib, stitches: 50, sections: [{even: 20 rows}, {bind off: all, edge: bib top}]}
          - {bind off: 50, edge: back waist}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, g.Findings)
}
