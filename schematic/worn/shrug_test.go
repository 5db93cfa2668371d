package worn

import (
	"testing"

	"flatwright/schematic"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 24 rows of rib of 100/32 mm, 48 rows of increases of 100/30 mm and 150 rows, and the same back: 75 + 160 + 500 + 160 + 75 mm from cuff
// to cuff. 66 stitches of 100/24 mm are 275 mm around the cuff; 66 + 16 = 82 of 100/22 mm, folded, 186.364 mm deep.
func TestAShrugIsFoldedAlongItsLength(t *testing.T) {
	g := schematic.Work(pattern(t, "shrug.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	for name, want := range map[string]float64{"cuff to cuff": 970, "cuff": 275, "depth": 186.364, "opening": 500, "sleeve length": 235} {
		assert.InDelta(t, want, measured(t, g, name).Length.Float(), 0.002, name)
	}
	assert.True(t, measured(t, g, "cuff").Around)
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 970, hi.X-lo.X, 0.01)
	assert.InDelta(t, 186.364, hi.Y-lo.Y, 0.01)
	// The fold is on the shoulders: the whole length of the upper edge is level.
	hasCorner(t, g.Worn.Views[0].Outline[0], lo.X, hi.Y)
	hasCorner(t, g.Worn.Views[0].Outline[0], hi.X, hi.Y)
}

func TestAPieceThatIsNotSewnToItselfIsNotFolded(t *testing.T) {
	p := pattern(t, "shrug.yaml")
	p.Joins = nil
	g := schematic.Work(p, 0)
	Dress(g)
	assert.Nil(t, g.Worn)
}

// The face of a hood is free at both sides, which meet in front: a line from the neck to its top, in the middle.
func TestTheOpeningOfAHoodIsDrawn(t *testing.T) {
	g := schematic.Work(pattern(t, "hooded-jacket.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	height, n := measured(t, g, "hood height").Length.Float(), 0
	for _, l := range g.Worn.Views[0].Lines {
		if l.Kind == schematic.LineEdge && absf(l.A.X) < 0.5 && absf(l.B.X) < 0.5 {
			assert.InDelta(t, height, absf(l.A.Y-l.B.Y), 0.5)
			n++
		}
	}
	assert.Equal(t, 1, n)
}

// One join may name the stretches of both sleeves. 40 stitches of 5 mm and 30 rows of 4 mm a sleeve.
func TestOneJoinSewsBothSleevesOfAShrug(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Shrug
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 25 rows over 10 cm in stocking stitch}
pieces:
  - piece: Shrug
    worked: flat, from the left side
    top edge: upper sleeve
    bottom edge: lower sleeve
    sections:
      - {cast on: 40, edge: cuff}
      - even: 30 rows
      - {even: 60 rows, top edge: collar, bottom edge: hem}
      - {even: 30 rows, top edge: upper sleeve, bottom edge: lower sleeve}
      - {bind off: all, edge: cuff}
joins:
  - {sew: Shrug upper sleeve, to: Shrug lower sleeve}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	got := lengths(g.Worn)
	assert.InDelta(t, 200, got["cuff"], 0.01)
	assert.InDelta(t, 240, got["opening"], 0.01)
	assert.InDelta(t, 120, got["sleeve length"], 0.01)
	assert.InDelta(t, 100, got["depth"], 0.01)
}

// What is all there is, and has no hem or cuff, is measured by the names that its edges have: 60 stitches of 5 mm.
func TestALoneRoundIsMeasuredByTheNamesOfItsEdges(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Leg warmers
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 25 rows over 10 cm in stocking stitch}
pieces:
  - piece: Leg warmer
    make: 2
    worked: in the round, from the hem
    sections: [{cast on: 60, edge: ankle}, {increase: 2, at: across, every: 8 rows, times: 10}, {even: 20 rows}, {bind off: all, edge: knee}]
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	got := lengths(g.Worn)
	assert.InDelta(t, 300, got["ankle"], 0.01)
	assert.InDelta(t, 100*4, got["length"], 0.01)
}
