package worn

import (
	"testing"

	"flatwright/schematic"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestABagStandsOnItsBase(t *testing.T) {
	g := schematic.Work(pattern(t, "bag.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	// 6 + 23 × 6 = 144 stitches of 5 mm are 720 mm around, half of it 360; 60 rows of 100/28 mm are 214.286 mm. The base
	// is 24 rows, 85.714 mm, from its centre, and touches the middle of the lower edge.
	loops := g.Worn.Views[0].Outline
	require.Len(t, loops, 2)
	hasCorner(t, loops[0], -180, 0)
	hasCorner(t, loops[0], 180, 214.286)
	hasCorner(t, loops[1], 0, 0)
	hasCorner(t, loops[1], 85.714, -85.714)
	hasCorner(t, loops[1], 0, -171.429)
}

func TestAThumbLiesOnTheHandAboveItsSlit(t *testing.T) {
	g := schematic.Work(pattern(t, "mitten.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	// A stitch is 100/24 mm. The 7 stitches of the slit end at the fold, 10 stitches or 41.667 mm from the middle, so that
	// its middle lies at 41.667 - 14.583 = 27.083 mm; half of the thumb's 16 stitches is 33.333 mm. The slit lies 20 rows of
	// 100/34 and 18 + 0.5 rows of 100/32 above the cuff at most; the thumb is 16 rows, 50 mm, long.
	y := 20*100.0/34 + 18*100.0/32
	hasCorner(t, g.Worn.Views[0].Outline[0], 27.083-16.667, g.Worn.Views[0].Outline[0][0].Y)
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 10.417, lo.X, 0.01)
	assert.InDelta(t, 43.75, hi.X, 0.01)
	assert.InDelta(t, 50, hi.Y-lo.Y, 0.01)
	assert.InDelta(t, y, lo.Y, 100.0/32)
}
