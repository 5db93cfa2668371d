package schematic_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/given"
)

// Words of ribs as people publish them (common practice).
func TestTheRepeatOfARib(t *testing.T) {
	for words, want := range map[string]int{"knit 2, purl 2 rib": 4, "k2p2": 4, "k1, p1 rib": 2, "1 x 1 rib": 2, "2/3 rib": 5, "2-by-2 ribbing": 4, "single rib": 2, "Double Rib": 4,
		"stockinette stitch": 0, "knit 3": 0, "purl 2": 0, "k100, p2": 0, "k99, p1": 100, "K3 P2 K1 P2": 8} {
		assert.Equal(t, want, schematic.RibRepeat(words), words)
	}
}

// By hand: 81 stitches are 40 pairs and 1 over, and 20 times four and 1 over; 80 come out. A flat rib of 81 ends as it begins.
func TestARibInTheRoundComesOut(t *testing.T) {
	const round = `version: 1
pattern: Cuff
terms: UK
units: cm
sizes: S
gauges:
  fabric: 20 sts and 30 rows over 10 cm in stocking stitch
  rib: 20 sts and 30 rows over 10 cm in knit 1, purl 1 rib
pieces:
  - piece: Cuff
    worked: in the round, from the hem
    sections:
      - {cast on: 81, gauge: rib, edge: cuff}
      - {even: 10 rows, rib: yes}
      - {even: 10 rows, gauge: fabric}
      - bind off: all
`
	told := func(changes ...string) []string {
		p := given.Text(t, strings.NewReplacer(changes...).Replace(round))
		var out []string
		for _, f := range schematic.Work(p, 0).Findings {
			out = append(out, f.Message+"; "+f.Have+"; "+f.Fix)
		}
		return out
	}
	assert.Equal(t, []string{"81 stitches in the round do not come out in a rib of 2; 81 = 40 × 2 + 1; make 80 or 82 stitches of it"}, told())
	assert.Equal(t, []string{"81 stitches in the round do not come out in a rib of 4; 81 = 20 × 4 + 1; make 80 or 84 stitches of it"}, told("knit 1, purl 1", "k2, p2"))
	assert.Empty(t, told("81", "80"))
	assert.Empty(t, told("in the round", "flat"))
	assert.Empty(t, told("knit 1, purl 1 rib", "raised rib"), "words that do not say the repeat")
	assert.Empty(t, told("rib: yes", "name: border"))
}
