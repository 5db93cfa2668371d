package rows

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Phrases of modern knitting and the count that each must come to: every line has the count, and behind it the phrases (common practice).
func TestPhrasesOfModernKnittingComeToTheirCounts(t *testing.T) {
	for _, k := range []struct{ where, text, phrases string }{
		{"a stitch in a row of 43", "Terms: US\nCO 43 sts.\nRow 1: K5, %s, k to end. (%d sts)\n", `
41: brLsl dec | brRsl dec
42: drop next st | drop 1 st | drop the next stitch off the needle | slip, slip, knit | slip, slip, purl | sl, sl, k
43: brk1 | brp1 | brk | brp | sl1yo | yfsl1yo
44: pfkb | p1f1b | k1f1b | krl | rlinc | llinc
45: brkyobrk | kpk | double yo | y2rn
`},
		{"a row of 43", "Terms: US\nCO 43 sts.\nRow 1: %s. (%d sts)\n", `
43: Rib as set
`},
		{"a round of 60", "Terms: US\nCO 60 sts, join in the round.\nRnd 1: %s. (%d sts)\n", `
60: *work 12 sts of Chart; rep from * 4 times | Work 12 sts of chart 5 times | [Work 14 sts of Chart, pm] 4 times, k4
`},
		{"words between rounds of 60", "Terms: US\nCO 60 sts, join in the round.\n%s.\nNext rnd: K to end. (%d sts)\n", `
60: Work Rows 1-10 of Chart A, then rep Rows 1-4 once more | Work the first 10 rounds of chart | Work 9 or 10 rounds | Knit 10 (or 12) rounds
`},
	} {
		for _, line := range strings.Split(strings.TrimSpace(k.phrases), "\n") {
			count, list, _ := strings.Cut(line, ": ")
			n, err := strconv.Atoi(count)
			require.NoError(t, err, line)
			for _, w := range strings.Split(list, " | ") {
				low := strings.ToLower(w)
				comesTo(t, k.text, w, n, !strings.Contains(low, "chart") && !strings.Contains(low, "pattern") && !strings.Contains(low, "panel")) // what a chart makes is not known
			}
		}
	}
}
