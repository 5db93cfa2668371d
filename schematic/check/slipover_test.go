package check_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/check"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
)

// By hand: 92 stitches of ½ cm are 46 across and 92 around below the armholes, whose stitches are bound off by no name. At the
// neck 16 stitches are bound off and 7 decreased at either side: 30 stitches, 15 cm.
const slipover = `version: 1
pattern: Slipover
terms: US
units: cm
sizes: M
finished:
  bust: 92
  Back neck width: 15
gauges:
  fabric: 20 sts and 28 rows over 10 cm in stockinette stitch
pieces:
  - piece: Back
    sections:
      - cast on: 92
      - even: 96 rows
      - bind off: 5
        at: both edges
      - decrease: 1
        at: both edges
        every: 2 rows
        times: 4
      - even: 44 rows
      - divide:
          - part: First side
            stitches: 29
            mirror of: Second side
          - bind off: 16
            edge: neck
          - part: Second side
            stitches: 29
            sections:
              - decrease: 1
                at: right edge
                every: 2 rows
                times: 7
              - bind off: all
                edge: shoulder
`

// front is as the back is.
var front = "  - piece: Front\n" + strings.SplitN(slipover, "  - piece: Back\n", 2)[1]

func TestTheBustIsBelowStitchesBoundOffForArmholesThatHaveNoName(t *testing.T) {
	p, found := read.Pattern("slipover.yaml", []byte(slipover+front))
	require.False(t, found.Errors(), "%v", found)
	g := schematic.Work(p, 0)
	for _, f := range check.Pattern(p, []*schematic.Garment{g}) {
		assert.NotEqual(t, "measurements/written", f.Kind, "%s: %s", f.Message, f.Have)
		assert.NotContains(t, f.Message, "bust", f.Have)
	}
	for _, m := range g.Pieces[0].Measures {
		if m.Name == "neck width" {
			assert.Equal(t, 30, m.Count)
			assert.True(t, units.Int(150).Eq(m.Length))
			return
		}
	}
	assert.Fail(t, "the neck has no width")
}
