package schematic_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/given"
)

// 40 + 2 x 5 = 50 and 50 + 2 x 4 = 58. With 42 cast on both counts are 2 too many: that is one mistake. With 50 stated as 52 and 58 as 57
// there are two.
func TestACountThatIsCarriedOnIsToldOnce(t *testing.T) {
	for _, k := range []struct {
		cast, first, second int
		want                []string
	}{
		{40, 50, 58, nil},
		{42, 50, 58, []string{"after this section there are 52 stitches, not 50"}},
		{40, 52, 57, []string{"after this section there are 50 stitches, not 52", "after this section there are 58 stitches, not 57"}},
		{40, 52, 58, []string{"after this section there are 50 stitches, not 52"}},
		{40, 50, 57, []string{"after this section there are 58 stitches, not 57"}},
	} {
		p := given.Text(t, fmt.Sprintf(`version: 1
pattern: Sleeve
terms: UK
units: cm
sizes: S
gauges:
  fabric: 20 sts and 30 rows over 10 cm
pieces:
  - piece: Sleeve
    sections:
      - cast on: %d
      - {increase: 1, at: both edges, every: 6 rows, times: 5, to: %d}
      - {increase: 1, at: both edges, every: 8 rows, times: 4, to: %d}
      - bind off: all
`, k.cast, k.first, k.second))
		var told []string
		for _, f := range schematic.Work(p, 0).Findings {
			told = append(told, f.Message)
		}
		assert.Equal(t, k.want, told, "%+v", k)
	}
}
