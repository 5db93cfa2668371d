package job_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/job"
)

// muff is a pattern with rows of its designer, whose joins nobody has put into words.
const muff = `version: 1
pattern: Sloe Handwarmers
terms: UK
units: cm
sizes: S (M)
gauges:
  fabric: 20 sts and 28 rows over 10 cm in stocking stitch
pieces:
  - piece: Hand
    make: 2
    sections:
      - cast on: 40 (44)
      - even: 28 (32) rows
      - bind off: all
        edge: hand top
  - piece: Thumb
    make: 2
    sections:
      - cast on: 40 (44)
      - even: 8 rows
      - bind off: all
        edge: top
joins:
  - {sew: Thumb top, into: Hand hand top, how: stitch to stitch}
rows: |
`

func TestJoinsAreToldWhereTheDesignersRowsDoNotTellThem(t *testing.T) {
	const told = "Sew each Thumb top to each Hand top, stitch for stitch."
	own := "  Hand\n  Cast on 40 (44) sts.\n  Row 1: K to end. (40 (44) sts)\n"
	for name, c := range map[string]struct {
		rows string
		want int
	}{
		"nothing of it":  {own, 1},
		"her own words":  {own + "\n  # Making up\n  Sew it all.\n", 0},
		"another's name": {own + "\n  # Care\n  Wash by hand.\n", 1},
	} {
		r, err := job.Page(context.Background(), job.Source{Name: "muff.yaml", Text: []byte(muff + c.rows)}, job.PageOptions{})
		require.NoError(t, err, r.Findings)
		page := string(r.Files[0].Body)
		_, first, ok := strings.Cut(page, `<section class="fw`) // the rows of all sizes, not those of one
		require.True(t, ok)
		if c.want == 0 {
			assert.NotContains(t, first, told, name)
			continue
		}
		_, rows, ok := strings.Cut(page, `-rows">Instructions`)
		require.True(t, ok, name)
		all, _, _ := strings.Cut(rows, `hidden>`)
		assert.Equal(t, c.want, strings.Count(all, told), name)
		assert.Contains(t, all, ">Making up</h3>", name)
	}
}
