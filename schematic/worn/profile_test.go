package worn

import (
	"strings"
	"testing"

	"flatwright/schematic"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A stitch is 100/28 mm wide and a round 100/36 mm high. The leg is 40 rounds, 111.111 mm, and half of 56 stitches, 100 mm, wide;
// the heel 26 + 6 rows, 88.889 mm, below its back half. Foot and leg meet along the way from the front of the leg to the middle of
// the heel, which rises by 88.889 mm over 100: the foot turns by atan(88.889 / 100) = 41.634°.
func TestASockLiesOnItsSide(t *testing.T) {
	g := schematic.Work(pattern(t, "sock.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	require.Len(t, g.Worn.Views[0].Outline, 1)
	loop := g.Worn.Views[0].Outline[0]
	hasCorner(t, loop, -50, 0)
	hasCorner(t, loop, -50, 200)
	hasCorner(t, loop, 50, 88.889)
	foot := assembled(schematic.Work(pattern(t, "sock.yaml"), 0)).placedAt(t, "Sock")
	assert.InDelta(t, 41.634, degrees(foot.where), 0.002)
	want := map[string]float64{"cuff": 200, "leg": 40 * 100.0 / 36, "heel": 32 * 100.0 / 36, "foot": 200, "foot after the heel": (7*2 + 30 + 9*2) * 100.0 / 36}
	for _, m := range g.Worn.Measures {
		assert.InDelta(t, want[m.Name], m.Length.Float(), 0.01, m.Name)
		delete(want, m.Name)
	}
	assert.Empty(t, want)
}

// The heel of this one is 24 short rows of 100/36 mm, 66.667 mm, over half of 52 stitches of 100/26 mm: its foot turns by
// atan(66.667 / 100) = 33.690°. The last row but goes over 26 - 2 × 11 stitches, 4, of which half is 7.692 mm.
func TestTheShortRowsOfASockAreItsHeel(t *testing.T) {
	for _, f := range []string{"sock-toe-up.yaml", "sock-short-rows.yaml"} {
		g := schematic.Work(pattern(t, f), 0)
		Dress(g)
		require.NotNil(t, g.Worn, f)
		require.Len(t, g.Worn.Views[0].Outline, 1)
		loop := g.Worn.Views[0].Outline[0]
		y := loop[0].Y
		for _, p := range loop {
			if near(pt{X: p.X}, pt{X: -50}) {
				y = min(y, p.Y)
			}
		}
		hasCorner(t, loop, -50, y)
		hasCorner(t, loop, 50, y+66.667)
		foot := assembled(schematic.Work(pattern(t, f), 0)).placedAt(t, "Sock")
		assert.InDelta(t, 33.690, degrees(foot.where), 0.002, f)
		for _, m := range g.Pieces[0].Measures {
			assert.NotEqual(t, "front length", m.Name, "a heel raises no neck")
		}
	}
}

// A heel that is narrowed and widened again: 14 rows of 100/42 mm each way, 33.333 mm below and above the middle of the heel, over 73.333 mm,
// half of 44 stitches of 100/30 mm: leg and foot turn by twice atan(33.333 / 73.333), 48.888°, and meet on a line without a bulge.
func TestAHeelThereAndBackTurnsTheFootTwice(t *testing.T) {
	text := `version: 1
pattern: Sock
terms: UK
units: cm
sizes: one
gauges: {fabric: 30 sts and 42 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Sock
    worked: in the round, from the neck
    sections:
      - {cast on: 44, edge: cuff}
      - {even: 42 rows}
      - {short rows: 14 rows, over: 22, at: left edge, step: 1}
      - {short rows: 14 rows, over: 22, at: left edge, step: 1}
      - {even: 42 rows}
      - {bind off: all, edge: toe}
`
	g := schematic.Work(written(t, text), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	require.Len(t, g.Worn.Views[0].Outline, 1)
	foot := assembled(g).placedAt(t, "Sock")
	assert.InDelta(t, 48.888, degrees(foot.where), 0.002)
	assert.InDelta(t, 100/3.0, measured(t, g, "heel").Length.Float(), 0.01)
	assert.InDelta(t, 100, measured(t, g, "foot after the heel").Length.Float(), 0.01)

	apart := strings.Replace(text, "step: 1}\n      - {short", "step: 1}\n      - {even: 2 rows}\n      - {short", 1)
	g = schematic.Work(written(t, apart), 0)
	Dress(g)
	assert.Nil(t, g.Worn, "of two at two places nobody says which is the heel")
}
