package check_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/check"
	"flatwright/schematic/read"
)

// By hand: the neck is 20 rows, 40 stitches bound off and 20 rows. 3 in every 4 of the rows are 15 and 15, with one in
// each of the stitches 70. The edge is 20 cm of stitches and two times 20 rows of 1/3 cm: 33.3 cm; 70 stitches of 1/2 cm are 35.
// At 3 in every 1 row they are 160, 80 cm; at 1 in every 10 rows 44, 22 cm, which is two thirds of the edge.
func TestARateInRowsIsForTheRowsAndTheBandFitsItsEdge(t *testing.T) {
	for _, c := range []struct {
		rate   string
		picked int
		find   string
	}{
		{"3 in every 4 rows", 70, ""},
		{"3 in every 1 rows", 160, "the stitches picked up along Front neck make a band much longer than the edge"},
		{"1 in every 10 rows", 44, "the stitches picked up along Front neck make a band much shorter than the edge"},
	} {
		p, found := read.Pattern("rate.yaml", []byte(`version: 1
pattern: Rate
terms: UK
units: cm
sizes: M
gauges:
  fabric: 20 sts and 30 rows over 10 cm in stocking stitch
pieces:
  - piece: Front
    sections:
      - cast on: 100
      - even: 60 rows
      - divide:
          - part: Left neck
            stitches: 30
            mirror of: Right neck
          - bind off: 40
            edge: neck
          - part: Right neck
            stitches: 30
            sections:
              - even: 20 rows
                right edge: neck
              - bind off: all
                edge: shoulder
  - piece: Neckband
    kind: band
    onto:
      - Front neck, `+c.rate+`
    sections:
      - even: 8 rows
      - bind off: all
        edge: outer edge
`))
		require.False(t, found.Errors(), "%v", found)
		g := schematic.Work(p, 0)
		assert.Equal(t, c.picked, g.Pieces[1].Steps[0].After, c.rate)
		told := ""
		for _, f := range check.Pattern(p, []*schematic.Garment{g}) {
			if f.Kind == "joins/band" {
				told = f.Message
			}
		}
		assert.Equal(t, c.find, told, c.rate)
	}
}
