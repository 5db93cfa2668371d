package worn

import (
	"slices"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/finding"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A balaclava of 80 stitches at 20 to 10 cm lies 200 mm wide, with 24 of them, 120 mm, open in the middle of the front: from 36 rounds of rib at 30 and
// 6 at 28 to 10 cm, 141.429 mm above the hem, for 32 rows, 114.286 mm. It goes on for 12 + 18 rounds, 107.143 mm. Its band, of 5 rows of rib, 16.667 mm,
// lies within the opening.
func TestARoundThatIsJoinedAgainHasAnOpening(t *testing.T) {
	g := schematic.Work(pattern(t, "balaclava.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	for _, f := range g.Findings {
		assert.NotContains(t, f.Kind, "worn/")
	}
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 200, hi.X-lo.X, 0.01)
	assert.InDelta(t, 141.429+114.286+107.143, hi.Y-lo.Y, 0.01)
	require.Len(t, g.Worn.Views[0].Outline, 2)
	hole := g.Worn.Views[0].Outline[1]
	for _, x := range []float64{-60 + 16.667, 60 - 16.667} {
		hasCorner(t, hole, x, 141.429+16.667)
		hasCorner(t, hole, x, 141.429+114.286-16.667)
	}
	assert.InDelta(t, 120, measured(t, g, "face opening width").Length.Float(), 0.01)
	assert.InDelta(t, 114.286, measured(t, g, "face opening height").Length.Float(), 0.01)
	assert.InDelta(t, 362.857, measured(t, g, "hat depth").Length.Float(), 0.01)
}

// Of 96 stitches at 20 to 10 cm the belly, 20, lies in the middle across from the back, with a leg of 6 at both of its sides: openings from 50 to 80 mm
// from the middle, 16 rows at 28 to 10 cm high, below a collar of 16 rounds at 30 and 12 at 28 to 10 cm.
func TestAnOpeningLiesAtBothSidesOfWhatFacesFront(t *testing.T) {
	g := schematic.Work(pattern(t, "dog-jumper.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	loops := g.Worn.Views[0].Outline
	require.Len(t, loops, 3)
	_, hi := bounds(loops)
	top := hi.Y - 16/3.0*10 - 12/2.8*10
	for _, y := range []float64{top, top - 16/2.8*10} {
		hasCorner(t, append(loops[1], loops[2]...), -80, y)
		hasCorner(t, append(loops[1], loops[2]...), -50, y)
		hasCorner(t, append(loops[1], loops[2]...), 50, y)
		hasCorner(t, append(loops[1], loops[2]...), 80, y)
	}
	assert.InDelta(t, 30, measured(t, g, "leg opening width").Length.Float(), 0.01)
	assert.InDelta(t, 300, measured(t, g, "neck").Length.Float(), 0.01)
	assert.InDelta(t, 480, measured(t, g, "hem").Length.Float(), 0.01)
}

// A front of 80 of 180 stitches between two armholes of 10, with the round that is joined above them: 46 rows of armhole, and 8 + 8 rounds above.
func TestARoundIsJoinedAboveTheArmholes(t *testing.T) {
	g := schematic.Work(pattern(t, "tabard.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	require.Len(t, g.Worn.Views[0].Outline, 1)
	loop := g.Worn.Views[0].Outline[0]
	for _, y := range []float64{90 / 2.8 * 10, 136 / 2.8 * 10} {
		hasCorner(t, loop, 200, y)
		hasCorner(t, loop, -225, y)
	}
	hasCorner(t, loop, 125, 152/2.8*10)
	assert.InDelta(t, 46/2.8*10, measured(t, g, "armhole depth").Length.Float(), 0.01)
	assert.InDelta(t, 152/2.8*10, measured(t, g, "length").Length.Float(), 0.01)
}

// A part that goes all round is open in the middle for its 14 rows, at 30 to 4 in.
func TestAPartThatGoesAllRoundLeavesASlit(t *testing.T) {
	g := schematic.Work(pattern(t, "mitts-slit.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Len(t, g.Worn.Views[0].Outline, 1)
	assert.InDelta(t, 14*101.6/30, measured(t, g, "opening height").Length.Float(), 0.01)
}

// A round that is narrower than what it is joined over is no picture, and is told.
func TestPartsThatDoNotReachTheRoundAboveAreNotDrawnSo(t *testing.T) {
	p := pattern(t, "balaclava.yaml")
	_, j := dividedAndJoined(schematic.Work(p, 0).Pieces[0])
	added := j.Traits().Joins[1].Added
	for i, n := range added.Vals {
		added.Vals[i] = n.Times(2)
	}
	g := schematic.Work(p, 0)
	Dress(g)
	assert.Nil(t, g.Worn)
	assert.True(t, slices.ContainsFunc(g.Findings, func(f finding.Finding) bool { return f.Kind == "worn/not-flat" && f.Piece == "Balaclava" }), "%v", g.Findings)
}
