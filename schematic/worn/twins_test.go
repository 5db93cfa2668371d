package worn

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
)

// A seat of 120 stitches (600 mm around, 300 mm flat) leaves 8 in front and behind; each leg, 52 stitches and 16 added, is 170 mm wide where it begins and would
// reach 40 mm, the 8 added stitches in front, past its own 130 mm: 20 mm beyond the middle. They meet there, and the outline is one.
func TestLegsWithAGussetMeetInTheMiddle(t *testing.T) {
	g := schematic.Work(written(t, inTens+`
  - piece: Seat
    kind: body
    worked: in the round, from the neck
    sections:
      - {cast on: 120, edge: waist}
      - even: 40 rows
      - divide:
          - {hold: 52, name: Left leg}
          - {leave: 8, name: crotch}
          - {hold: 52, name: Right leg}
          - {leave: 8, name: back crotch}
  - piece: Leg
    make: 2
    worked: in the round, from the neck
    sections: [{start from: [{piece: Seat, part: Left leg}, {add: 16}]}, {decrease: 2, at: across, every: 2 rows, times: 16}, {bind off: all, edge: cuff edge}]
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	require.Len(t, g.Worn.Views[0].Outline, 1)
	loop := g.Worn.Views[0].Outline[0]
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 300, hi.X-lo.X, close)
	for _, q := range [2]pt{{X: lo.X, Y: hi.Y}, {X: hi.X, Y: hi.Y}} {
		hasCorner(t, loop, q.X, q.Y)
	}
	// From 170 mm to 90 over 32 rows (160 mm) each side comes in by 40: the inner side, 20 mm beyond the middle, passes it halfway down.
	hasCorner(t, loop, (lo.X+hi.X)/2, hi.Y-200-80)
	assert.Equal(t, 340.0, lengths(g.Worn)["leg width at upper edge"])
}
