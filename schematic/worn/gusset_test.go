package worn

import (
	"math"
	"strings"
	"testing"

	"flatwright/schematic"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 5 mm a stitch and a round.
const mittText = `version: 1
pattern: Mitt
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Mitt
    worked: in the round, from the hem
    make: 2
    sections:
      - {cast on: 42, edge: cuff}
      - {even: 10 rows}
      - panels:
          - {panel: Gusset, stitches: 2}
          - {panel: Hand, stitches: 40}
      - {increase: 1, at: lines, panel: Gusset, every: 2 rows, times: 10}
      - divide:
          - {hold: 22, name: thumb, edge: thumb edge}
          - part: Hand above
            stitches: 40
            sections:
              - {even: 1 row}
      - join parts: [Hand above, {add: 2}]
        round: yes
      - {even: 15 rows}
      - {bind off: all, edge: upper edge}
  - piece: Thumb
    make: 2
    worked: in the round, from the hem
    sections:
      - start from:
          - {piece: Mitt, part: thumb, stitches: 22}
      - {even: 8 rows}
      - {bind off: all}
`

// Half of the gusset grows from 5 to 55 mm over 20 rounds, 100 mm: laid on the hand it leans outwards by atan(50/100), 26.565 degrees. The thumb
// stands on its end, which the round of the hand alone, 5 mm, draws up at the hand.
func TestAMittIsFoldedBetweenItsGussetAndTheOuterSideOfTheHand(t *testing.T) {
	g := schematic.Work(written(t, mittText), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, noted(g))
	a := assembled(g)
	for _, p := range a.placed {
		switch p.name {
		case "Gusset":
			assert.InDelta(t, -math.Atan2(50, 100)*180/math.Pi, degrees(p.where), 0.01)
		case "Thumb":
			assert.InDelta(t, -math.Atan2(50, 100)*180/math.Pi, degrees(p.where), 8)
			assert.Less(t, degrees(p.where), -15.0, "it stands out")
		}
	}
	want := map[string]float64{"cuff": 210, "hand": 210, "length": 5 * (10 + 20 + 1 + 15), "gusset": 100, "thumb": 110, "thumb length": 40}
	for _, m := range g.Worn.Measures {
		assert.InDelta(t, want[m.Name], m.Length.Float(), 0.01, m.Name)
		delete(want, m.Name)
	}
	assert.Empty(t, want)

	// Without the stitches on hold nothing says where the thumb goes.
	apart := strings.Replace(mittText, "      - start from:\n          - {piece: Mitt, part: thumb, stitches: 22}", "      - {cast on: 22}", 1)
	g = schematic.Work(written(t, apart), 0)
	Dress(g)
	require.Len(t, noted(g), 1)
	assert.Contains(t, noted(g)[0].Message, "Thumb")
}

// Two panels that are alike are front and back, not a hand and its gusset.
func TestTwoLikePanelsAreNoGusset(t *testing.T) {
	like := strings.NewReplacer("{panel: Gusset, stitches: 2}", "{panel: Gusset, stitches: 18}", "{panel: Hand, stitches: 40}", "{panel: Hand, stitches: 24}", "cast on: 42", "cast on: 42", "hold: 22", "hold: 38", "stitches: 40\n", "stitches: 24\n", "stitches: 22}", "stitches: 38}").Replace(mittText)
	assert.Nil(t, gussetOf(schematic.Work(written(t, like), 0).Pieces[0].Worked()))
}

// 40 stitches around are 100 mm wide as they lie; 12 more at the right-hand fold, 30 mm of half of them, and the left-hand fold stays straight. All of
// them are held for the thumb, which stands above those 30 mm, beside the hand.
func TestAThumbIsWidenedForAtItsOwnFold(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Mitts
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Mitten
    worked: in the round, from the hem
    make: 2
    sections:
      - {cast on: 40, edge: cuff}
      - {even: 10 rows}
      - {increase: 2, at: right edge, every: 2 rows, times: 6}
      - divide:
          - {hold: 12, name: thumb}
          - part: Hand
            stitches: 40
            sections:
              - {even: 1 row}
      - join parts: [Hand]
        round: yes
      - {even: 15 rows}
      - {bind off: all}
  - piece: Thumb
    make: 2
    worked: in the round, from the hem
    sections:
      - start from:
          - {piece: Mitten, part: thumb, stitches: 12}
      - {even: 8 rows}
      - {bind off: all}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, noted(g))
	a := assembled(g)
	require.Len(t, a.placed, 2)
	hand, thumb := a.placed[0], a.placed[1]
	lo, _ := box(hand.drawn)
	for y, right := range map[float64]float64{25: 100, 80: 115, 150: 100} {
		x := across(points(hand.drawn), lo.Y+y)
		require.Len(t, x, 2)
		assert.InDelta(t, 0, x[0]-lo.X, 0.01, "the left-hand fold at %g mm", y)
		assert.InDelta(t, right, x[1]-lo.X, 0.01, "the right-hand fold at %g mm", y)
	}
	tl, th := box(thumb.drawn)
	assert.InDelta(t, 100, tl.X-lo.X, 0.01)
	assert.InDelta(t, 130, th.X-lo.X, 0.01)
}
