package worn

import (
	"testing"

	"flatwright/schematic"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The shoulder of 27 stitches of a front is bound off in three steps, the last of them 4 rows above the first: it lies in one slope from the armhole to the neck, 135 mm wide at 20 to 10 cm.
func TestAShoulderBoundOffInStepsIsOneSlope(t *testing.T) {
	g := schematic.Work(pattern(t, "tunic.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	n := 0
	for _, p := range assembled(g).placed {
		for i, s := range p.drawn {
			if z := p.drawn[(i+1)%len(p.drawn)].a; s.name == "shoulder" && p.face == front {
				assert.InDelta(t, 135, absf(s.a.X-z.X), 0.01)
				assert.InDelta(t, 4*100/28.0, absf(s.a.Y-z.Y), 0.01)
				n++
			}
		}
	}
	assert.Equal(t, 2, n)
	assert.InDelta(t, 340/2, measured(t, g, "neck width").Length.Float(), 0.01)
}

// 18 + 18 + 8 rows of a front at 12 to 10 cm, and 6 of its band: a band along the hem is a part of the length and of the body below the arms.
func TestABandAlongTheHemIsAPartOfTheLength(t *testing.T) {
	g := schematic.Work(pattern(t, "bolero.yaml"), 0)
	Dress(g)
	assert.InDelta(t, 50*100/12.0, measured(t, g, "length").Length.Float(), 10.01) // the back has a row more
	assert.InDelta(t, 24*100/12.0, measured(t, g, "body to underarm").Length.Float(), 10.01)
	assert.InDelta(t, 24*100/15.0, measured(t, g, "neck width").Length.Float(), 0.01)
}

// A back of 52 stitches, 15 to 10 cm, and 20 more at its hem, lapped by two fronts of 42: around it is twice the back, and its length has its waistband.
func TestAWrapSkirtHasAWaistAndAHemAndNoBust(t *testing.T) {
	g := schematic.Work(pattern(t, "wrap-skirt.yaml"), 0)
	Dress(g)
	assert.InDelta(t, 2*52*100/15.0, measured(t, g, "waist").Length.Float(), 0.01)
	assert.InDelta(t, 2*72*100/15.0, measured(t, g, "hem").Length.Float(), 0.01)
	assert.InDelta(t, (66+6-6+5)*100/12.0, measured(t, g, "length").Length.Float(), 10)
	for _, m := range g.Worn.Measures {
		assert.NotEqual(t, "bust", m.Name)
	}
	assert.True(t, measured(t, g, "waist").Around)
}

// The ends of a rib that runs out of what is drawn of its panel are cut off.
func TestRibsEndWhereAPanelDoes(t *testing.T) {
	loop := []pt{{}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}
	got := insideOf([2]pt{{X: 5, Y: -5}, {X: 5, Y: 4}}, loop)
	require.Len(t, got, 1)
	assert.InDelta(t, 0, got[0][0].Y, 0.6)
	assert.InDelta(t, 4, got[0][1].Y, 1e-9)
	assert.Empty(t, insideOf([2]pt{{X: 15}, {X: 15, Y: 5}}, loop))
}

// 96 stitches of a bodice in the round, 18 to 10 cm, and a skirt of 168 gathered to it; 12 and 30 rows at 14 to 10 cm, and a strap of 30.
func TestABodiceInTheRoundIsMeasuredWithItsSkirtAndStraps(t *testing.T) {
	g := schematic.Work(pattern(t, "sundress.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	for name, want := range map[string]float64{"chest": 96 * 100 / 18.0, "hem": 168 * 100 / 18.0, "length": 42 * 100 / 14.0, "skirt length": 30 * 100 / 14.0, "strap length": 30 * 100 / 14.0} {
		assert.InDelta(t, want, measured(t, g, name).Length.Float(), 0.01, name)
	}
	assert.Len(t, g.Worn.Measures, 5)
}
