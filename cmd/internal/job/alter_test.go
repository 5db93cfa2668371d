package job

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 40 and 60 stitches at 20 over 10 cm are 44 and 66 at 22; 60 rows at 30 are 72 at 36: 11 increases at each end over 72 rows leave 6 over, by
// twos as published (every 6 rows): 11 twos are 22, and the other 25 twos of rows are 2 a shaping and 3 more: every 8 rows 3 times, every 6 rows 8 times.
func TestAnAlterationTellsTheNewSpacingOfItsShapings(t *testing.T) {
	src := Source{Name: "sleeve.yaml", Text: []byte(`version: 1
pattern: Sleeve
terms: UK
units: cm
sizes: S
gauges:
  fabric: 20 sts and 30 rows over 10 cm in stocking stitch
pieces:
  - piece: Sleeve
    sections:
      - cast on: 40
      - increase: 1
        at: both edges
        every: 6 rows
        times: 10
        to: 60
      - bind off: all
`)}
	r, err := Alter(t.Context(), src, AlterOptions{Size: "S", Gauges: []string{"22 sts and 36 rows over 10 cm"}})
	require.NoError(t, err)
	text := string(r.Files[len(r.Files)-1].Body)
	_, worked, ok := strings.Cut(text, "How it is worked as altered\n\n")
	require.True(t, ok, text)
	assert.Equal(t, `# Sleeve
Cast on 44 sts.
Inc 1 st at each end every 8 rows 3 times, then every 6 rows 8 times, over 72 rows in stocking stitch. (66 sts)
Cast off all sts.
`, worked)
	r, err = Alter(t.Context(), src, AlterOptions{Size: "S"})
	require.NoError(t, err)
	assert.NotContains(t, string(r.Files[len(r.Files)-1].Body), "as altered", "nothing changes")
}
