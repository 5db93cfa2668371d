package worn

import (
	"slices"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/given"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fromBehind is a garment of which the back is wanted too.
func fromBehind(t *testing.T, file string, views ...schematic.DrawnView) *schematic.Garment {
	t.Helper()
	p := pattern(t, file)
	p.Drawing.Views = views
	g := schematic.Work(p, 0)
	Dress(g)
	return g
}

func TestTheBackIsDrawnOnRequest(t *testing.T) {
	assert.Nil(t, fromBehind(t, "set-in.yaml").WornBack)
	g := fromBehind(t, "set-in.yaml", schematic.AsWorn, schematic.BackAsWorn)
	require.NotNil(t, g.WornBack)
	// Half of 96 stitches of 5 mm; the shoulders end where the back's neck of 34 stitches begins: at 18 × 3.3333 mm of rib and
	// 90 + 2 + 12 + 40 = 144 rows of 3.5714 mm, 574.286 mm, the neck is level.
	loop := g.WornBack.Views[0].Outline[0]
	hasCorner(t, loop, 240, 0)
	hasCorner(t, loop, -240, 0)
	_, hi := bounds([][]pt{loop})
	assert.InDelta(t, 574.286, hi.Y, 4)
	for _, p := range loop { // nothing of the front's neck
		assert.False(t, absf(p.X) < 50 && p.Y > 400 && p.Y < hi.Y-10, "%v", p)
	}
	// What the front has is told there, once: one letter for one measurement.
	front := map[string]bool{}
	for _, m := range g.Worn.Measures {
		front[m.Name] = true
	}
	assert.True(t, front["bust"])
	for _, m := range g.WornBack.Measures {
		assert.False(t, front[m.Name], m.Name)
	}
}

// From behind, the back of a round yoke lies in front, and the fronts of a cardigan behind.
func TestFromBehindWhatFacesBackLiesOnTop(t *testing.T) {
	g := fromBehind(t, "raglan-round.yaml", schematic.BackAsWorn)
	require.NotNil(t, g.WornBack)
	for turned, want := range map[bool]string{true: "Back", false: "Front"} {
		a := newAssembly(g, turned)
		assert.True(t, slices.ContainsFunc(a.placed, func(p *panel) bool { return p.name == want && p.face == front }), want)
	}
	c := fromBehind(t, "cardigan.yaml", schematic.BackAsWorn)
	require.NotNil(t, c.WornBack)
	for _, l := range c.WornBack.Views[0].Lines {
		assert.False(t, l.Kind == schematic.LineBehind && l.A.X == 0 && l.B.X == 0, "the opening is hidden")
	}
}

// What has no back is turned over as it is: a toe that points to the right points to the left.
func TestFromBehindASockOrSlipperIsTurnedOver(t *testing.T) {
	for _, file := range []string{"sock.yaml", "slipper.yaml"} {
		turnedOver(t, fromBehind(t, file, schematic.AsWorn, schematic.BackAsWorn))
	}
}

func turnedOver(t *testing.T, g *schematic.Garment) {
	t.Helper()
	require.NotNil(t, g.WornBack)
	front, behind := g.Worn.Views[0].Outline[0], g.WornBack.Views[0].Outline[0]
	lo, hi := bounds([][]pt{front})
	bl, bh := bounds([][]pt{behind})
	for _, p := range front {
		hasCorner(t, behind, bl.X+hi.X-p.X, p.Y-lo.Y+bl.Y)
	}
	assert.InDelta(t, hi.X-lo.X, bh.X-bl.X, close)
	assert.Empty(t, g.WornBack.Measures, "each is told in front")
}

// A thumb at the right of a palm is at the left of the back of the hand.
func TestFromBehindAThumbIsAtTheOtherSide(t *testing.T) {
	p := given.Text(t, thumbText)
	p.Drawing.Views = []schematic.DrawnView{schematic.AsWorn, schematic.BackAsWorn}
	g := schematic.Work(p, 0)
	Dress(g)
	require.NotNil(t, g.WornBack)
	at := map[bool]float64{}
	for _, turned := range []bool{false, true} {
		for _, q := range newAssembly(g, turned).placed {
			if q.made.Name == "Thumb" {
				lo, hi := box(q.drawn)
				at[turned] = (lo.X + hi.X) / 2
			}
		}
	}
	assert.NotZero(t, at[false])
	assert.InDelta(t, -at[false], at[true], close)
	assert.Empty(t, g.WornBack.Measures, "each is told in front")
}

const thumbText = `version: 1
pattern: Mitten
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Mitten
    make: 2
    worked: in the round, from the hem
    sections:
      - {cast on: 40, edge: cuff}
      - {even: 20 rows}
      - {increase: 2, at: across, every: 3 rows, times: 6}
      - divide:
          - {hold: 14, name: thumb}
          - {part: Hand, stitches: 38, sections: [{even: 1 row}]}
      - {join parts: [Hand, {add: 2}], round: yes}
      - {even: 26 rows}
      - {gather}
  - piece: Thumb
    make: 2
    worked: in the round, from the hem
    sections: [{start from: [{piece: Mitten, part: thumb}, {add: 2}]}, {even: 12 rows}, gather]
`
