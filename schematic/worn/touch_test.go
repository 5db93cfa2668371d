package worn

import (
	"math"
	"slices"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/read"

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
	require.Len(t, loops, 3)
	hasCorner(t, loops[0], -180, 0)
	hasCorner(t, loops[0], 180, 214.286)
	base := loops[1]
	if lo, _ := bounds(loops[1:2]); lo.Y > 0 {
		base = loops[2]
	}
	hasCorner(t, base, 0, 0)
	hasCorner(t, base, 85.714, -85.714)
	hasCorner(t, base, 0, -171.429)
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

// Four places in a round of 720 mm: two on the front half of 360, at 90 and at 270. Half a circle of 180 mm across is 282.743 mm long, the
// handle 100 rows of 100/28, 357.143: either leg is 37.2 mm. Its inner side is half of 8 stitches of 5 mm, 20 mm, within.
func TestAHandleStandsInAnArchAsLongAsItself(t *testing.T) {
	g := schematic.Work(pattern(t, "bag.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	rim := 214.286
	found := false
	for _, l := range g.Worn.Views[0].Outline {
		if lo, hi := bounds([][]pt{l}); lo.Y > rim-1 {
			found = true
			hasCorner(t, l, -110, rim)
			hasCorner(t, l, -70, rim)
			hasCorner(t, l, 70, rim+37.2)
			hasCorner(t, l, 110, rim+37.2)
			assert.InDelta(t, rim+37.2+110, hi.Y, 0.3)
			assert.InDelta(t, 40*357.143, area(l), 40) // a circle of straight stretches
		}
	}
	require.True(t, found)
	i := slices.IndexFunc(g.Worn.Measures, func(m schematic.Measure) bool { return m.Name == "handle drop" })
	require.GreaterOrEqual(t, i, 0)
	assert.InDelta(t, 37.2+90-20, g.Worn.Measures[i].Length.Float(), 0.01)
}

func TestAShortHandleIsAnArcAndTooShortAOneIsLeftOut(t *testing.T) {
	q := &proto{panel: &panel{}}
	up := pt{Y: 1}
	// A third of a circle of radius 100: its chord is 100 × √3, its length 2π/3 × 100.
	p := arched(q, spot{pt{}, up}, spot{pt{X: 100 * math.Sqrt(3)}, up}, 200*math.Pi/3, 10)
	require.NotNil(t, p)
	assert.InDelta(t, 50-5, p.drop.Y, 0.01, "half of the radius high, less half of its width")
	assert.InDelta(t, 10*200*math.Pi/3, area(points(p.drawn)), 2)
	assert.Nil(t, arched(q, spot{pt{}, up}, spot{pt{X: 100}, up}, 100, 10))
	assert.Nil(t, arched(q, spot{pt{}, up}, spot{pt{X: 10}, up}, 100, 10), "wider than its places are apart")
}

const bib = `version: 1
pattern: Bib
terms: UK
units: cm
sizes: One
gauges:
  fabric: 20 sts and 25 rows over 10 cm in garter stitch
pieces:
  - piece: Bib
    kind: body
    sections: [{cast on: 40}, {even: 50 rows}, {bind off: all}]
  - piece: Tie
    sections: [{cast on: 4, edge: tie end}, {even: 75 rows}, {bind off: all}]
    make: 2
joins:
  - {sew: Tie tie end, into: Bib left side, how: in 2 places}
`

// A stitch is 5 mm wide and a row 4 mm high: the bib is 200 mm by 200, a tie 20 by 300, and the two places lie 50 and 150 mm up
// its left side, at -100: a tie reaches to -400, between 40 and 60 mm.
func TestTiesHangOutwardsFromTheirPlaces(t *testing.T) {
	p, found := read.Pattern("bib.yaml", []byte(bib))
	require.NotNil(t, p, "%v", found)
	g := schematic.Work(p, 0)
	Dress(g)
	require.NotNil(t, g.Worn, "%v", g.Findings)
	loops := g.Worn.Views[0].Outline
	require.Len(t, loops, 3)
	hasCorner(t, slices.Concat(loops[1], loops[2]), -400, 40)
	hasCorner(t, slices.Concat(loops[1], loops[2]), -400, 160)
	hasCorner(t, slices.Concat(loops[1], loops[2]), -100, 60)
}

// A skirt of 160 stitches is gathered to a bodice of 84, 1.905 times as wide: it hangs on it all the same; joined as long as each
// other they would be a mistake.
func TestWhatIsGatheredMayBeMuchWider(t *testing.T) {
	p := pattern(t, "dress.yaml")
	a := assembled(schematic.Work(p, 0))
	assert.True(t, slices.ContainsFunc(a.placed, func(q *panel) bool { return q.made.Name == "Front bodice" }))
	for i := range p.Joins {
		p.Joins[i].How = 0
	}
	a = assembled(schematic.Work(p, 0))
	assert.False(t, slices.ContainsFunc(a.placed, func(q *panel) bool { return q.made.Name == "Front bodice" }))
}

// 6 + 5 × 6 = 36 stitches of 5 mm around; 6 rounds of 4 mm from the centre. What begins from all of the last round stands on it, whatever it is called.
func TestSidesBegunFromABaseStandOnIt(t *testing.T) {
	for _, kind := range []string{"bag", "piece"} {
		g := schematic.Work(written(t, `version: 1
pattern: Bag
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 25 rows over 10 cm in dc}
pieces:
  - piece: Base
    worked: in the round, from the centre
    sections:
      - ring: 6
      - {increase: 6, at: across, times: 5}
      - {hold: all, name: edge}
  - piece: Sides
    kind: `+kind+`
    worked: in the round, from the hem
    sections:
      - start from:
          - {piece: Base, part: edge}
      - even: 50 rows
      - {bind off: all, edge: rim}
`), 0)
		Dress(g)
		require.NotNil(t, g.Worn, kind)
		assert.Len(t, g.Worn.Views[0].Outline, 2)
		assert.Len(t, g.Worn.Measures, 3)
		assert.InDelta(t, 2*24, measured(t, g, "base width").Length.Float(), 0.01)
		assert.InDelta(t, 180, measured(t, g, "opening").Length.Float(), 0.01)
		assert.InDelta(t, 200, measured(t, g, "height").Length.Float(), 0.01)
	}
}
