package rows

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Counts follow from the words: every third row is the third; a bind-off is at the
// beginning of its row, of a right-side row at the right.
func TestAGraphShapesItsRowsAsTheWordsSay(t *testing.T) {
	const head = "Terms: US\nNotes: The turning chain does not count as a stitch.\n# Sleeve\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
	for _, c := range []struct {
		line   string
		counts []int
	}{
		{"Inc 1 st at each end every 3 rows 2 times, over 7 rows. (24 sts)", []int{20, 20, 22, 22, 22, 24, 24}},
		{"Dec 1 st at neck edge every row 2 times, then every 2 rows 1 time, over 5 rows. (17 sts)", []int{19, 18, 18, 17, 17}},
		{"Dec 1 st at each end every 2 rows 2 times, over 4 rows, and at the same time dec 1 st at neck edge every row 2 times, over 4 rows. (14 sts)", []int{19, 16, 16, 14}},
		{"Dec 5 sts evenly every row 1 time, over 1 row. (15 sts)", []int{15}},
		{"Bind off 3 sts at beg of next 2 rows. (14 sts)", []int{17, 14}},
	} {
		x := Read("x.txt", []byte(head+c.line+"\nRow 9: Ch 1, sc in each st across, turn.\n"), Options{})
		g, ok := GraphOf(x, "Sleeve", 0)
		require.True(t, ok)
		var counts []int
		below := 0
		for _, r := range g.Rows {
			n := 0
			for _, s := range r.Stitches {
				if s.Counts {
					n++
				}
				for _, f := range s.Feet {
					require.True(t, f >= 0 && f < below, "%s: a foot at %d of %d", c.line, f, below)
				}
			}
			below = len(r.Stitches)
			counts = append(counts, n)
		}
		require.Greater(t, len(counts), 2+len(c.counts)-1, c.line)
		assert.Equal(t, c.counts, counts[2:2+len(c.counts)], c.line)
	}
}
