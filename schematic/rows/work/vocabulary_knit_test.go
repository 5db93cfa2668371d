package work

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
60: K5, panel A Row 1 over next 12 sts, k to end | K5, [panel B Row 1 over next 10 sts, k4] twice, k to end | *work 12 sts of Chart; rep from * 4 times | Work 12 sts of chart 5 times | [Work 14 sts of Chart, pm] 4 times, k4
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
				phraseComesTo(t, k.text, w, n, !strings.Contains(low, "chart") && !strings.Contains(low, "pattern") && !strings.Contains(low, "panel")) // what a chart makes is not known
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
		"Terms: US\nCO 20 sts, join.\nRnd 1: [K1, kfb, k to 2 sts before end of needle, kfb, k1] twice. (24 sts)\nRnd 2: K1, k to 2 sts before end of round, k2. (24 sts)\n",
		"Terms: US\nCO 20 sts. Place 10 sts on each of the two needles, and join.\nRnd 1: K. (20 sts)\n",
		"Terms: US\nCO 60 sts, and divide in half over your circular needles.\nRnd 1: K. (60 sts)\nJoin and work k2,p2 for 20 rounds.\nRnd 22: K. (60 sts)\n",
		"Terms: US\nCO 80 sts, join.\nRnd 1: Knit 8, k2tog.\nRnd 2: Knit.\nRnd 3: Knit 7, k2tog.\nRnd 4: K. (64 sts)\n",
		"Terms: UK\nCast on 12 sts.\nRows 1-2: GS.\nRows 3-8: Inc 1 st at each end of rows 3, 5 and 7. (18 sts)\nRow 9: K. (18 sts)\n",
		"Terms: US\nCO 164 sts.\nRow 1: K.\nDivide for Body and Sleeves (RS): Work 26 sts as established for Left Front and place these sts on holder; work next 34 sts for first Sleeve; work next 44 sts for Back and place these sts on holder; work next 34 sts for second Sleeve; work remaining 26 sts for Right Front.\n",
		"Terms: US\nCO 40 sts.\nRow 1: K.\nRow 2: As row 1\nthese 2 rows form the pattern.\nRow 3: K. (40 sts)\n",
		"Terms: US\nPick up and k 4 sts along underarm, k52 held sts, pick up and k 4 sts. Join. (60 sts)\nRnd 1: K. (60 sts)\n",
		"Terms: UK\nWith rs facing, k 10 sts from right front holder, pick up and k 16 sts up right side of neck, k 26 sts from back neck holder, pick up and k 16 sts down left side of neck, then k 10 sts from left front holder. 78 sts.\n1st row: K. (78 sts)\n",
		"Terms: UK\nCast on 44 sts.\nDec 1 st at each end of next and every foll alt row until 28 sts rem, then at each end of every row until 16 sts rem.\nNext row: K. (16 sts)\n",
		"Terms: UK\nCast on 40 sts.\nCast off 14 sts at beg of next row, k to end. (26 sts)\nNext row: P. (26 sts)\n",
		"Terms: UK\nCast on 85 sts.\nCont in st st with garter borders until work measures 16 cm.\nNext row: K. (85 sts)\n",
		"Terms: US\nCO 52 sts.\nRow 1: K1, k2tog, k to last 3 sts, ssk, k1.\nRow 2: P.\nRep Rows 1 and 2 until 24 sts rem, then work Row 1 only until 16 sts rem.\nNext row: K. (16 sts)\n",
		"Terms: US\nCO 40 sts, join.\nRnd 1: K20, pm, k2, pm, k18.\nRnd 2: K to m, sm, m1, k to m, m1, sm, k to end.\nRnd 3: K.\nRep Rnds 2 and 3 until there are 16 sts between markers. (54 sts)\nRnd 4: K. (54 sts)\n",
		"Terms: US\nCO 244 sts.\nRow 1: K.\nRep last row once more. 244 sts: 70 sts each for front and back, 52 sts for each sleeve.\n",
		"Terms: US\nCO 60 sts, join.\nRnd 1: K, working each DS as one st. (60 sts)\nRow 1 (RS): K40, ssk, turn. (41 sts)\n",
		"Abbreviations:\nCable Back (CB): Slip 3 sts to cable needle and hold to back; k3, p1, then k3 from cable needle.\nDirections:\nCO 48 sts, join.\nRnd 1: (CB, P1, K3, P1, K3, P1) 3 times. (48 sts)\n",
		"Terms: US\nCO 60 sts.\nRow 1: Cast on 5 sts, k across. (65 sts)\n",
		"Terms: US\nCO 4 sts.\nRow 1: K f/b, k2, K f/b. (6 sts)\nRow 2: K f/b, k f/b, k2, k f/b, k f/b. (10 sts)\n",
		"Terms: US\nCO 60 sts.\nRows 1-8: Work in st st.\nRow 9: K2tog, k to end.\nRows 10-12: Rep Rows 2-4.\nRow 13: K. (59 sts)\n",
		"Terms: US\nCO 60 sts.\nRow 1: K.\nRow 2: P.\nRep rows 1 and 2 until piece measures 20 cm, ending after row 1 or row 2.\nNext row: K. (60 sts)\n",
	} {
		rep := Check(Read("t", []byte(src), Options{}))
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, src)
		assert.Empty(t, rep.Findings, src)
	}
}
