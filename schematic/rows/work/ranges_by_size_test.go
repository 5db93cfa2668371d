package work

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Each size has rows of its own (common practice). By hand: rows 8 to 11, 15 and 19 are 2, 3 and 4 times two rows, of which the first takes
// one stitch: from 9 there are 7, 6 and 5.
func TestRangesOfRowsBySize(t *testing.T) {
	for _, rows := range []string{"Rows 2-5 (2-7, 2-9)", "Rows 2 – 5 (2 – 7, 2 – 9)", "Rows 2 to 5 (2 to 7, 2 to 9)", "Rows 2-5 [2-7, 2-9]", "Rows 2-5 (2-7) (2-9)", "Rows 2-5 (7, 9)"} {
		for _, again := range []string{"Rep rows 6-7 (8-9, 10-11)", "Rep rows 6 and 7 (8 and 9, 10 and 11)", "Rep rows 6 & 7 [8 & 9, 10 & 11]", "Rep last 2 rows"} {
			src := fmt.Sprintf("Sizes: S (M, L)\nTerms: US\nNotes: Ch 1 does not count as a st.\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n%s: Ch 1, sc in each st across.\n"+
				"Row 6 (8, 10): Ch 1, sc across to last 2 sts, sc2tog. (9 sts)\nRow 7 (9, 11): Ch 1, sc across.\nRows 8-11 (10-15, 12-19): %s.\nRow 12 (16, 20): Ch 1, sc across. (7 (6, 5) sts)\n", rows, again)
			assert.Empty(t, Check(Read("t", []byte(src), Options{})).Findings, src)
			assert.Len(t, Check(Read("t", []byte(strings.Replace(src, "(7 (6, 5)", "(7 (6, 6)", 1)), Options{})).Findings, 1, src)
		}
	}
}
