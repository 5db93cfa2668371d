package rows

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
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
43: Rib as set | K1, p1 5 times, k33 | K2, p2 ten times, k3 | K3, yo, k2tog 5 times, k to end
`},
		{"a round of 60", "Terms: US\nCO 60 sts, join in the round.\nRnd 1: %s. (%d sts)\n", `
60: *work 12 sts of Chart; rep from * 4 times | Work 12 sts of chart 5 times | [Work 14 sts of Chart, pm] 4 times, k4
`},
		{"words between rows of 60", "Terms: US\nCO 60 sts.\n%s.\nNext row: K to end. (%d sts)\n", `
60: Work 18 rows with yarn C, 4 rows with yarn B and 4 rows with yarn C | Work 2 rows in A, 2 rows in B | K 2 rows in MC, 4 rows in CC | Working in stripes of 2 rows A, 2 rows B, work 20 rows
66: Knit, increasing evenly by 6 so there are 66 sts | Next row: P across, increasing for 6 sts
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

// Ways in which rows are told one after the other, each with the count that they come to in its last row (common practice).
func TestRowsToldOneAfterTheOtherComeToTheirCounts(t *testing.T) {
	for _, src := range []string{
		"Terms: US\nCO 60 sts and join in rnd, placing a marker on first st.\nRnd 1: K. (60 sts)\n",
		"Terms: US\nCO 60 sts.\n* Next row: K1, k2tog, k to last 3 sts, k2tog, k1. Next row: Purl. Rep from * once more. Next row: K. (56 sts)\n",
		"Terms: US\nCO 60 sts.\n**Row 1: K1, k2tog, k to last 3 sts, k2tog, k1.\nRow 2: P.\nRep from ** 4 times.\nNext row: K. (50 sts)\n",
		"Terms: US\nCO 60 sts.\n*Next row (RS): K1, k2tog, k to last 3 sts, k2tog, k1.\nWork 3 rows in st st.*\nRep from * to * twice more.\nNext row: K. (54 sts)\n",
		"Terms: US\nCO 60 sts.\n*Next row: K1, k2tog, k to last 3 sts, k2tog, k1.\nNext row: Purl.\nRep from * once.\nNext row: K. (56 sts)\n",
		"Terms: US\nCO 60 sts.\n*Next row: K2tog, k to last 2 sts, k2tog.\nNext row: P.\nRep from * until 40 sts remain.\nNext row: K. (40 sts)\n",
		"Terms: US\nCO 60 sts.\nEven-numbered Rounds 2-8: K all sts.\nRnd 3: K.\n",
		"Terms: US\nCO 60 sts.\nNext row: K20, turn. Work on these 20 sts only.\nNext row: P. (20 sts)\n",
		"Terms: US\nCO 61 sts. Join in the round by knitting first and last sts together. (60 sts)\nRnd 1: K. (60 sts)\n",
		"Terms: US\nCO 60 sts.\nRow 1: CO 15 sts P across. (75 sts)\n",
		"Terms: US\nCO 60 sts.\nRow 1: Cast on 5 sts, k across. (65 sts)\n",
		"Terms: US\nCO 4 sts.\nRow 1: K f/b, k2, K f/b. (6 sts)\nRow 2: K f/b, k f/b, k2, k f/b, k f/b. (10 sts)\n",
		"Terms: US\nCO 60 sts.\nRows 1-8: Work in st st.\nRow 9: K2tog, k to end.\nRows 10-12: Rep Rows 2-4.\nRow 13: K. (59 sts)\n",
		"Terms: US\nCO 60 sts.\nRow 1: K.\nRow 2: P.\nRep rows 1 and 2 until piece measures 20 cm, ending after row 1 or row 2.\nNext row: K. (60 sts)\n",
	} {
		rep := Check(Read("t", []byte(src), Options{}), Options{})
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, src)
		assert.Empty(t, rep.Findings, src)
	}
}
