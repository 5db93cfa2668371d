package read

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/units"
)

const weighed = `pattern: Scarf
terms: UK
units: cm
sizes: M
sample: M
gauges:
  fabric: 20 sts and 25 rows over 10 cm in st st
swatches:
  fabric: 12 g over 15 x 15 cm
sample weight: 240 g
ball: 50 g, 120 m
allowance: 10 %
pieces:
  - piece: Scarf
    sections:
      - cast on: 40
      - even: 100 rows
`

func TestWeightsAreReadAndBadOnesHaveTheirPlace(t *testing.T) {
	p, found := Pattern("scarf.yaml", []byte(weighed))
	require.Empty(t, found)
	require.Len(t, p.Weights.Swatches, 1)
	assert.Equal(t, units.Int(240), p.Weights.Sample)
	assert.Equal(t, units.Int(120_000), p.Weights.Ball.Length)
	assert.Equal(t, units.Frac(1, 10), p.Weights.Allowance)
	bad := strings.NewReplacer("12 g over", "heavy over", "240 g", "240", "10 %", "lots").Replace(weighed)
	_, found = Pattern("scarf.yaml", []byte(bad))
	var lines []int
	for _, f := range found {
		lines = append(lines, f.Pos.Line)
	}
	assert.Equal(t, []int{9, 10, 12}, lines)
}
