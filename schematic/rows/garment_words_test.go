package rows

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Phrases for a stretch of a garment, and the count that each must come to: every line has the count, and behind it the phrases
// (common practice; counts by hand).
func TestPhrasesOfGarmentsComeToTheirCounts(t *testing.T) {
	for _, k := range []struct{ where, text, phrases string }{
		{"a neck of one half, on 40", "Left Front\nCast on 40 sts.\nRow 1 (RS): Knit.\n%s. %d sts.\n", `
29: At neck edge, BO 4 sts once, then 2 sts twice, then dec 1 st every RS row 3 times | At neck edge, bind off 4 sts once, 2 sts twice, then dec 1 st every other row 3 times | At neck edge on every other row, bind off 4 sts once, 2 sts twice, 1 st 3 times | At neck edge, bind off 4 sts once, then bind off 2 sts every other row 2 times, then bind off 1 st every other row 3 times
32: At neck edge, BO 4 sts once, then 2 sts twice
31: Bind off from neck edge 4 sts once, 2 sts once, then 1 st 3 times | At beg of WS rows, BO 4 sts once, 2 sts twice, 1 st once | At beg of every WS row bind off 4 sts once, 2 sts twice, and 1 st once
10: BO from shoulder edge 10 sts 3 times | At armhole edge BO 8 sts twice, then 7 sts twice | At shoulder edge, bind off 10 sts once, then 10 sts twice
`},
		{"armholes on 100", "Back\nCast on 100 sts.\nRow 1 (RS): Knit.\n%s. %d sts.\n", `
90: Dec 1 st at armhole edges every RS row 5 times | Dec 1 st at both armhole edges every RS row 5 times
78: At each armhole edge, BO 6 sts once, 3 sts once, then dec 1 st every RS row 2 times
`},
	} {
		for _, line := range strings.Split(strings.TrimSpace(k.phrases), "\n") {
			count, list, _ := strings.Cut(line, ": ")
			n, err := strconv.Atoi(count)
			require.NoError(t, err, line)
			for _, w := range strings.Split(list, " | ") {
				comesTo(t, k.text, w, n, true)
			}
		}
	}
}
