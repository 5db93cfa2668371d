package worn

import (
	"testing"

	"flatwright/schematic"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A stitch is 100/16 mm wide and a round 100/12 mm high. The brim is 72 stitches, 450 mm, of which half shows; the crown is 9 rounds deep, 75 mm, and its
// sides are 10, 83.333 mm. A flap is 14 stitches, 87.5 mm, and 7 rows, 58.333 mm. Half of the 30 stitches in front, 93.75 mm, lie on one side of
// it, and half of the 14 behind, 43.75 mm, on the other.
func TestAHatWithEarFlapsLiesOnItsSide(t *testing.T) {
	g := schematic.Work(pattern(t, "hat-ear-flaps.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, g.Findings)
	assert.Equal(t, "laid flat on its side", g.Worn.Lies)
	loop := g.Worn.Views[0].Outline[0]
	for _, x := range []float64{-112.5, 112.5} {
		hasCorner(t, loop, x, 0)
	}
	lo, hi := bounds([][]pt{loop})
	assert.InDelta(t, 75+83.333, hi.Y, 0.01)
	assert.InDelta(t, -58.333, lo.Y, 0.01)
	behind := 225.0
	for _, p := range loop {
		if absf(p.Y) < close && absf(p.X) < 112 {
			behind = min(behind, 112.5-absf(p.X))
		}
	}
	assert.InDelta(t, 43.75, behind, 0.01)
	for name, want := range map[string]float64{"brim": 450, "height": 75 + 83.333, "flap width": 87.5, "flap length": 58.333} {
		assert.InDelta(t, want, measured(t, g, name).Length.Float(), 0.01, name)
	}
}

// The straps are 60 rows of 100/15 mm, 400 mm. The back ends 12 rows, 80 mm, below the front: a strap stands up (400 - 80) / 2 mm above the front, and
// goes down 240 mm behind.
func TestAStrapFromTheFrontToTheBackIsFoldedOnTheShoulder(t *testing.T) {
	g := schematic.Work(pattern(t, "camisole.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	require.Len(t, g.Worn.Views[0].Outline, 3)
	_, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, (45+12)*100.0/15+160, hi.Y, 0.01)
	assert.InDelta(t, 400, measured(t, g, "strap length").Length.Float(), 0.01)
}

// A stitch is 5 mm wide and a round 4 mm high. The brim is 14 + 32 + 14 + 20 = 80 stitches, 400 mm, and the hat 25 + 14 rounds high, 156 mm. A flap is 14
// stitches, 70 mm, and 15 rows, 60 mm: half of the 32 stitches in front, 80 mm, lie on one side of it, and half of the 20 behind, 50 mm, on the other.
func TestAHatBegunFromItsEarFlapsLiesOnItsSide(t *testing.T) {
	g := schematic.Work(pattern(t, "hat-from-ear-flaps.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, g.Findings)
	assert.Equal(t, "laid flat on its side", g.Worn.Lies)
	loop := g.Worn.Views[0].Outline[0]
	for _, x := range []float64{-100, -50, 20, 100} {
		hasCorner(t, loop, x, 0)
	}
	for name, want := range map[string]float64{"brim": 400, "height": 156, "flap width": 70, "flap length": 60} {
		assert.InDelta(t, want, measured(t, g, name).Length.Float(), 0.01, name)
	}
}
