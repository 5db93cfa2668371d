package alter_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/alter"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

// A back and a front with sleeves that grow out of them; the underarm of both is one seam.
const wrap = `version: 1
pattern: Grown-on Sleeves
terms: UK
units: cm
sizes: S
gauges:
  fabric: 22 sts and 30 rows over 10 cm in stocking stitch
pieces:
  - piece: Back
    sections:
      - cast on: 104
      - even: 88 rows
      - {increase: 1, at: both edges, edge: underarm, every: 2 rows, times: 5}
      - {add: 12, at: both edges, edge: underarm}
      - even: 50 rows
      - divide:
          - {bind off: 52, name: right shoulder, edge: shoulder}
          - {bind off: 34, name: back neck, edge: neck}
          - {bind off: 52, name: left shoulder, edge: shoulder}
  - piece: Right front
    right edge: front edge
    sections:
      - cast on: 58
      - even: 88 rows
      - shape:
          - {increase: 1, at: left edge, edge: underarm, every: 2 rows, times: 5}
          - {decrease: 1, at: right edge, edge: neck, every: 2 rows, times: 5}
      - {add: 12, at: left edge, edge: underarm}
      - {decrease: 1, at: right edge, edge: neck, every: 2 rows, times: 18, rows: 50, to: 52}
      - {bind off: all, edge: shoulder}
joins:
  - {sew: Right front shoulder, to: Back right shoulder, how: stitch to stitch}
  - {sew: Right front underarm, to: Back left underarm}
`

// By hand, at 0.87 of the stitches: the hem is 90.48, the underarm 17 × 0.87 = 14.79 and the row above it 120.06 stitches wide, so 90 + 2×15 =
// 120 = 45 + 30 + 45 keeps all of them within half a stitch. The 15 stitches, 4 + 11 or 5 + 10, must come on at back and front at once, since one alone parts
// their seam: the nearest to 5 × 0.87 = 4.35 and 12 × 0.87 = 10.44 are 4 and 10.
func TestWhatIsJoinedMovesTogether(t *testing.T) {
	p := given.Text(t, wrap)
	g := p.Gauges[0]
	g.Stitches = g.Stitches.Mul(units.Frac(87, 100))
	a, _ := alter.Alter(p, alter.Request{Gauges: []schematic.Gauge{g}})
	require.NotNil(t, a)
	var counts []int
	for _, s := range a.Now.Pieces[0].Steps {
		counts = append(counts, s.After)
	}
	assert.Equal(t, []int{90, 120, 120, 0}, append(counts[1:2:2], counts[3:]...))
	assert.True(t, a.Now.Seams[1].SewLength.Eq(a.Now.Seams[1].IntoLength))
}

// By hand: 3 in every 4 of 30 rows are 7×3 + 2 = 23 stitches along each edge, and 46 of both. At 18 stitches instead of 20 they would be 41.4, 20.7 along each: 6 in every 9
// give 3×6 + 3 = 21, and the band has 42 stitches. At 19.4 stitches 23 along one edge would be 22.31, which 3 in every 4 still meets within a stitch.
func TestABandSaysWhyItIsNotAsLong(t *testing.T) {
	for _, c := range []struct {
		edges, why string
		sts        units.Num
		n          int
	}{
		{"[\"Front left leg, 3 in every 4 rows\", \"Front right leg, 3 in every 4 rows\"]", "0.6 of a stitch off: edges that are alike keep one rate, and its stitches go by 2", units.Int(18), 42},
		{"[\"Front left leg, 3 in every 4 rows\"]", "0.7 of a stitch off: it keeps its rates, which come within a stitch along each edge", units.Frac(194, 10), 23},
	} {
		p := given.Text(t, `version: 1
pattern: Leg
terms: UK
units: cm
sizes: S
rounding: 0.1 cm and 1/8 in
gauges:
  fabric: 20 sts and 28 rows over 10 cm in stocking stitch
pieces:
  - piece: Front
    left edge: leg
    right edge: leg
    sections:
      - cast on: 40
      - even: 30 rows
      - bind off: all
  - piece: Band
    kind: band
    onto: `+c.edges+`
    sections:
      - even: 4 rows
      - bind off: all
`)
		g := p.Gauges[0]
		g.Stitches = c.sts
		a, found := alter.Alter(p, alter.Request{Gauges: []schematic.Gauge{g}})
		require.NotNil(t, a)
		assert.Equal(t, c.n, a.Now.Pieces[1].Steps[0].After)
		assert.True(t, slices.ContainsFunc(found, func(f finding.Finding) bool {
			return f.Piece == "Band" && strings.HasSuffix(f.Message, c.why)
		}), "%s: %v", c.why, found)
	}
}
