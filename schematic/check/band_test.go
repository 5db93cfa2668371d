package check_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
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

// By hand: a rib of 85 rows at 17 over 10 cm is 50 cm long. One stitch in each row is 85, 53.1 cm at 16: well. Two are 170, 106 cm, more than half
// wider; one in every two 42, 26.3 cm, which is half of it. 50 cm are 80 stitches: 16 in 17, about 1 in each.
func TestWhatIsPickedUpAlongABandWorkedSidewaysFitsIt(t *testing.T) {
	for rate, want := range map[string]string{"1 in each row": "", "2 in each row": "wider", "1 in every 2 rows": "narrower"} {
		p, found := read.Pattern("side.yaml", []byte(`version: 1
pattern: Side
terms: UK
units: cm
sizes: M
gauges:
  fabric: 16 sts and 20 rows over 10 cm in stocking stitch
  rib: 18 sts and 17 rows over 10 cm in garter stitch
pieces:
  - piece: Back
    sections:
      - sideways: rib
        gauge: rib
        stitches: 10
        rows: 85
      - pick up: `+rate+`
        gauge: fabric
      - even: 60 rows
      - bind off: all
`))
		require.False(t, found.Errors(), "%v", found)
		var got []string
		for _, f := range check.Pattern(p, []*schematic.Garment{schematic.Work(p, 0)}) {
			if f.Kind == "joins/band" {
				got = append(got, f.Message)
				assert.Contains(t, f.Want, "50 cm of band: about 80 stitches")
				assert.Contains(t, f.Fix, "about 1 in each row")
			}
		}
		if want == "" {
			assert.Empty(t, got, rate)
			continue
		}
		assert.Equal(t, []string{"the stitches picked up along the band make rows much " + want + " than it is long"}, got, rate)
	}
}

// By hand: 40 rows of 10/28 cm that lose 40 stitches of 1/2 cm are a slope of √(14.29² + 20²) = 24.6 cm, 49 stitches of 1/2 cm: 5 in every 4 rows.
// 3 in every 4 are 30, 15 cm.
func TestASlopeHasARateOfItsOwn(t *testing.T) {
	for rate, want := range map[string]string{
		"3 in every 4 rows": "pick up about 5 in every 4 rows", "2 in every 1 rows": "pick up about 5 in every 4 rows", "5 in every 4 rows": "", "1 in every 1 rows": "",
	} {
		p, found := read.Pattern("slope.yaml", []byte(`version: 1
pattern: Slope
terms: US
units: cm
sizes: one
gauges:
  fabric: 20 sts and 28 rows over 10 cm in stockinette stitch
pieces:
  - piece: Front
    sections:
      - cast on: 60
      - {decrease: 1, at: left edge, every: 1 row, times: 40, edge: slope}
      - bind off: all
        edge: top
  - piece: Band
    kind: band
    onto:
      - Front slope, `+rate+`
    sections:
      - even: 6 rows
      - bind off: all
`))
		require.Empty(t, found)
		fix := ""
		for _, f := range check.Pattern(p, bysize.WorkAll(p)) {
			if f.Kind == "joins/band" {
				fix = f.Fix
			}
		}
		assert.Equal(t, want, fix, rate)
	}
}
