package worn

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
)

// A cowl of 80 stitches around (400 mm) and 10 rows; half of it, 40 stitches, goes on as a bib of 16 rows, and the other half, bound off, lies behind it: one
// picture, 200 mm wide, each width once.
func TestTheFrontOfADividedCowlHidesItsBack(t *testing.T) {
	g := schematic.Work(written(t, inTens+`
  - piece: Cowl
    worked: in the round, from the neck
    sections:
      - {cast on: 80, edge: upper edge}
      - even: 10 rows
      - divide:
          - {part: Bib, stitches: 40, sections: [{decrease: 1, at: both edges, every: 2 rows, times: 8}, {bind off: all, edge: point}]}
          - {bind off: 40, edge: back neck}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	require.Len(t, g.Worn.Views[0].Outline, 1)
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 200, hi.X-lo.X, close)
	assert.InDelta(t, 130, hi.Y-lo.Y, close)
	m := lengths(g.Worn)
	assert.Equal(t, 120.0, m["width of point"])
	assert.NotContains(t, m, "width of back neck")
}

// A bag of 60 stitches (300 mm) is sewn along its lower edge: that is no crotch, and no wider than the chest around, 600 mm.
func TestABagForSleepingIsMeasuredAroundOnce(t *testing.T) {
	side := `sections: [{cast on: 60, edge: hem}, even: 60 rows, {bind off: 2, at: both edges, edge: armhole}, {even: 20 rows, left edge: armhole, right edge: armhole},
      {divide: [{bind off: 16, edge: shoulder}, {bind off: 24, edge: neck}, {bind off: 16, edge: shoulder}]}]`
	g := schematic.Work(written(t, inTens+`
  - piece: Back
    `+side+`
  - piece: Front
    `+side+`
joins: [{sew: Front hem, to: Back hem}, {sew: Front side, to: Back side}, {sew: Front shoulder, to: Back shoulder}]
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	m := lengths(g.Worn)
	assert.Equal(t, 600.0, m["bust"])
	assert.NotContains(t, m, "hem")
}

// The neck of a round yoke lies in a curve, so that no line has its length; that of its depth begins where the picture ends at that height.
func TestTheNeckOfARoundYokeIsTold(t *testing.T) {
	g := dressed(t, "yoke-neck.yaml")
	neck := measured(t, g, "neck")
	assert.Equal(t, schematic.NoView, neck.View)
	assert.True(t, neck.Around)
	m := measured(t, g, "length")
	top := m.A
	if m.B.Y > top.Y {
		top = m.B
	}
	least := 1e9
	for _, l := range g.Worn.Views[0].Outline {
		if x := across(l, top.Y-0.01); len(x) > 0 {
			least = min(least, x[0])
		}
	}
	assert.InDelta(t, least, top.X, 0.1)
}

// The V of a front whose neck its pattern calls so, 30 rows of 5 mm, is its neck's depth.
func TestAnEdgeCalledFrontNeckHasANeckDepth(t *testing.T) {
	g := schematic.Work(written(t, inTens+`
  - {piece: Back, sections: [cast on: 40, even: 60 rows, {divide: [{bind off: 10, edge: shoulder}, {bind off: 20, edge: neck}, {bind off: 10, edge: shoulder}]}]}
  - piece: Left front
    left edge: front edge
    sections: [cast on: 20, even: 30 rows, {decrease: 1, at: left edge, every: 3 rows, times: 10, edge: front neck}, {bind off: all, edge: shoulder}]
  - {piece: Right front, mirror of: Left front}
joins: [{sew: [Left front shoulder, Right front shoulder], to: Back shoulder}, {sew: Left front side, to: Back right side}, {sew: Right front side, to: Back left side}]
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Equal(t, 150.0, lengths(g.Worn)["front neck depth"])
}
