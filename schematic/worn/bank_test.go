package worn

import (
	"strings"
	"testing"

	"flatwright/schematic"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A stitch and a row are 5 mm. Of 100 stitches 50 are the back, 250 mm; no stitches are left between it and the fronts, so its armholes are slits where the piece is
// folded. 40 rows lie below them, 200 mm, and 30 beside them, 150 mm: a sleeve of 60 stitches, 300 mm, fills each. The fronts end at the sides of the piece 6 stitches
// in, on one row: that is no rib which draws in.
func TestAPieceFoldedAtItsArmholesKeepsTheEdgesOfEachPart(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Jacket
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - piece: Body
    left edge: front edge
    right edge: front edge
    sections:
      - {cast on: 100, edge: hem}
      - {even: 8 rows, rib: yes}
      - {even: 32 rows}
      - divide:
          - part: Right front
            stitches: 25
            left edge: armhole
            right edge: front edge
            sections:
              - {even: 20 rows}
              - {leave: 6, at: right edge, edge: neck}
              - {even: 10 rows, right edge: neck}
              - {bind off: all, edge: shoulder}
          - part: Back
            stitches: 50
            left edge: armhole
            right edge: armhole
            sections:
              - {even: 30 rows}
              - {leave: 19, at: both edges, edge: shoulder}
              - {bind off: all, edge: neck}
          - part: Left front
            mirror of: Right front
  - piece: Sleeve
    make: 2
    left edge: sleeve seam
    right edge: sleeve seam
    sections:
      - {cast on: 60, edge: cuff}
      - {even: 60 rows}
      - {bind off: all, edge: top}
joins:
  - {sew: Body Right front shoulder, to: Body Back right shoulder}
  - {sew: Body Left front shoulder, to: Body Back left shoulder}
  - {sew: Sleeve top, into: [Body Right front armhole, Body Back armhole, Body Left front armhole]}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, g.Findings)
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 250+2*300, hi.X-lo.X, 0.01)
	assert.InDelta(t, 350, hi.Y-lo.Y, 0.01)
	for name, long := range map[string]float64{"length": 350, "body to underarm": 200, "upper arm": 300} {
		assert.InDelta(t, long, measured(t, g, name).Length.Float(), 0.01, name)
	}
}

// The heel is bound off, so that the instep alone is joined into a round, with 28 stitches picked up: 56 of 100/28 mm, 200 mm around.
func TestAFootGoesOnFromAnInstepWhoseHeelIsBoundOff(t *testing.T) {
	text := `version: 1
pattern: Sock
terms: UK
units: cm
sizes: one
gauges: {fabric: 28 sts and 36 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Sock
    worked: in the round, from the cuff
    sections:
      - {cast on: 56, edge: cuff}
      - {even: 40 rows}
      - divide:
          - part: Heel
            stitches: 28
            sections:
              - {even: 26 rows}
              - {bind off: all, edge: heel end}
          - {hold: 28, name: instep}
      - {join parts: [instep, {add: 28}], round: yes}
      - {even: 44 rows, to: 56}
      - {bind off: all, edge: toe}
`
	g := schematic.Work(written(t, text), 0)
	Dress(g)
	assert.Empty(t, g.Findings)
	require.Len(t, g.Pieces[0].Views, 3)
	require.NotNil(t, g.Worn)
	assert.InDelta(t, 200, measured(t, g, "foot").Length.Float(), 0.01)

	g = schematic.Work(written(t, strings.Replace(text, "to: 56", "to: 57", 1)), 0)
	assert.NotEmpty(t, g.Findings, "the stitches of the foot are counted")
}
