package worn

import (
	"slices"
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

// The back of 36 rows at 18 to 4 in goes on beyond its fold for 28 + 6: 192 mm of flap over a front of 203.2 mm.
func TestTheFlapOfABagLiesOverItsFront(t *testing.T) {
	g := schematic.Work(pattern(t, "bag-flap.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	_, hi := bounds(g.Worn.Views[0].Outline[:1])
	hasCorner(t, g.Worn.Views[0].Outline[0], -127+6*6.35, 203.2-34*101.6/18)
	hasCorner(t, g.Worn.Views[0].Outline[0], 127, 203.2-28*101.6/18)
	assert.InDelta(t, 203.2, hi.Y, 0.01)
	assert.InDelta(t, 34*101.6/18, measured(t, g, "flap depth").Length.Float(), 0.01)
	assert.InDelta(t, 203.2, measured(t, g, "height").Length.Float(), 0.01)
	for _, m := range g.Worn.Measures {
		assert.NotContains(t, m.Name, "waistband")
	}
}

// From the centre 1 + 9 rounds at 18 to 10 cm are the crown, 55.556 mm from its middle, which lies above the sides, 16 + 12 rounds.
func TestTheCrownOfAHatLiesOnItsSides(t *testing.T) {
	g := schematic.Work(pattern(t, "hat-bucket.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.InDelta(t, (10+16+12)/1.8*10, measured(t, g, "hat depth").Length.Float(), 0.01)
	assert.InDelta(t, 80/1.6*10+32/1.6*10, measured(t, g, "brim").Length.Float(), 0.01)
}

// A skirt of 160 stitches at 22 to 10 cm is as wide at its hem; its waist, as wide as the chest, is told once.
func TestASkirtThatIsGatheredByOneJoinHasAHemAndNoSecondWaist(t *testing.T) {
	g := schematic.Work(pattern(t, "pinafore.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.InDelta(t, 160/2.2*10, measured(t, g, "hem").Length.Float(), 1e-9)
	for _, m := range g.Worn.Measures {
		assert.NotEqual(t, "waist", m.Name)
	}
}

// The straps of a racer back show beside the edges of the front's neck, and what is narrow above the arms is no waist.
func TestTheStrapsOfARacerBackShowInTheNeck(t *testing.T) {
	g := schematic.Work(pattern(t, "racer.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.True(t, slices.ContainsFunc(g.Worn.Views[0].Lines, func(l schematic.Line) bool {
		return l.Kind == schematic.LineBehind && l.A.X > 60 && l.A.X < 90 // 15 of 24 to 10 cm are 62.5 mm, 18 are 75 mm
	}))
	assert.InDelta(t, 30/2.4*10, measured(t, g, "cross back").Length.Float(), 0.01)
	for _, m := range g.Worn.Measures {
		assert.NotEqual(t, "waist", m.Name)
	}
}
