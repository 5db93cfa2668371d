package rows

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A text says much twice, and what it says twice can be wrong once. The sums stand beside each line; all were counted by hand.
func TestWhatATextSaysTwiceIsHeldTogether(t *testing.T) {
	const (
		yoke  = "Cast on 60 sts. Join to work in the round.\nSet-up rnd: K20, pm, k10, pm, k20, pm, k10.\n"
		inc   = "Inc rnd: *K1, m1r, knit to 1 st before marker, m1l, k1, sm; rep from * 3 more times."
		ball  = "Terms: US\nR1: 6 sc in MR (6)\nR2: inc x6 (12)\n"
		thumb = "Cast on 36 sts. Join in the round.\nKnit 2 rnds.\nNext rnd: K12. Slip next 12 sts onto a safety pin. Cast on 2 sts. K12. 26 sts.\nTHUMB\n"
		bound = "Cast on 90 sts.\nRow 1: K.\nRow 2: P.\n"
	)
	for text, bad := range map[string]string{
		yoke + inc + " (8 sts inc'd)": "", // 60 to 68
		yoke + inc + " (9 sts inc'd)": "8 stitches are added, not 9",
		"Cast on 40 sts.\nRow 1: K1, ssk, k to last 3 sts, k2tog, k1. 3 sts decreased.":                                                                         "2 stitches are taken away, not 3",
		"Cast on 40 sts.\nRow 1: K1, ssk, k to last 3 sts, k2tog, k1. (2 sts dec'd: 38 sts)":                                                                    "",
		yoke + inc + " 68 sts: 22 sts each for back and front, 12 sts for each sleeve.":                                                                         "", // 44 + 24
		yoke + inc + " 68 sts: 22 sts each for back and front, 13 sts for each sleeve.":                                                                         "its parts add up to 70 stitches, not 68",
		yoke + inc + " 68 sts, with 12 sts between markers for each sleeve.":                                                                                    "",
		yoke + inc + " 67 sts, with 12 sts between markers for each sleeve.":                                                                                    "the row makes 68 stitches, not 67",
		ball + "R3-R7: sc in each st around (12) 5 rounds":                                                                                                      "",
		ball + "R3-R7: sc in each st around (12) 6 rounds":                                                                                                      "these are 5 rounds by their numbers, not 6",
		ball + "Rnds 3-9 (odd): sc in each st around (12) 4 rounds":                                                                                             "", // 3, 5, 7, 9
		"Cast on 20 sts.\nRow 1 (RS): K.\nRow 2: P, turn, RS facing.\nRow 3: K, WS facing.\nRow 4: P. This is a wrong-side row.":                                "",
		"Cast on 20 sts.\nRow 1 (RS): K.\nRow 2: P.\nRow 3: K. This is a wrong-side row.":                                                                       "this is called a wrong-side row, and so was the row before it",
		ball + "R3-R7: sc in each st around (13) 5 rounds":                                                                                                      "the row makes 12 stitches, not 13",
		thumb + "Slip 12 sts from safety pin onto 2 needles. Rejoin yarn and pick up and knit 2 sts at base of thumb. 14 sts.":                                  "",
		thumb + "Return 12 held sts to needles. Rejoin yarn and pick up and knit 3 sts at base of thumb. 14 sts.":                                               "the row makes 15 stitches, not 14",
		bound + "Cast off 5 sts beg next 2 rows, then 3 sts beg following 4 rows. 68 sts.":                                                                      "", // 90 - 10 - 12
		bound + "Cast off 5 sts beg next 2 rows, then 3 sts beg following 4 rows. 67 sts.":                                                                      "the row makes 68 stitches, not 67",
		"FINISHING\nArmbands: Sew shoulder seam. With RS facing, pick up and knit 94 sts evenly around armhole.\n1st row (WS): P2, *k2, p2; rep from * to end.": "", // 4 x 23 + 2
		"FINISHING\nArmbands: Sew shoulder seam. With RS facing, pick up and knit 95 sts evenly around armhole.\n1st row (WS): P2, *k2, p2; rep from * to end.": "the repeat does not fit: 1 stitch is left over after 23 times",
		"Sizes: Child (Teen, Adult)\nTerms: US\nRnd 1: 60 sc in ring. (60)\n*Teen and Adult only:*\nRnd 2: *2 sc in next st, sc in next 5 sts; rep from * around. (70)\n*Adult only:*\nRnd 3: *2 sc in next st, sc in next 6 sts; rep from * around. (80)\n*All sizes:*\nNext rnd: Sc in each st around. 60 (70, 80) sc":                                                      "",
		"Cast on 90 sts.\nRow 1 (RS): K2, *p2, k2; rep from * to end.\nRow 2: P2, *k2, p2; rep from * to end.\nRep last 2 rows of (K2. P2) ribbing for 4 ins, ending on a WS row.\nRow 3 (RS): K1, ssk, k to end. 89 sts":                                                                                                                                                     "",
		"Terms: US\nNotes: Ch 3 counts as a dc. Ch 4 counts as a dc and a ch-1 sp.\nCh 23.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (21 dc)\nRow 2: Ch 4, skip next st, dc in next st, *ch 1, skip next st, dc in next st; rep from * to end, turn. (11 dc, 10 ch-1 sps)\nRow 3: Ch 3, dc in each ch-1 sp and dc to last st, dc in last st, turn. (21 dc)": "",
	} {
		rep := Check(Read("t", []byte(text), Options{}), Options{})
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, text)
		if bad == "" {
			assert.Empty(t, rep.Findings, text)
			continue
		}
		require.Len(t, rep.Findings, 1, text)
		assert.Equal(t, bad, rep.Findings[0].Message, text)
	}
}

// The first half of a heel is worked once more behind the round, and the next rounds begin there: 16 + 14 + 28 + 14 = 72, 2 fewer in 8 rounds 56.
func TestARoundBeginsInTheMiddleOfTheHeel(t *testing.T) {
	const text = "CO 56 sts. Join in the round.\nHEEL\nThe heel flap is worked over the first 16 sts. Leave the remaining 40 sts on hold.\nRow 1 (RS): K16. Turn.\nRow 2 (WS): P16. Turn.\nGUSSET\n" +
		"Set-up round: K16 heel sts, pick up and knit 14 sts along side of heel flap, pm, k28 instep sts, pm, pick up and knit 14 sts along other side of heel flap, k8. 72 sts.\n" +
		"Round 1: Knit to 3 sts before first marker, k2tog, k1, slm, knit to second marker, slm, k1, ssk, knit to end. 2 sts decreased.\nRound 2: Knit.\nRepeat Rounds 1 and 2 7 more times. 56 sts.\n"
	rep := Check(Read("t", []byte(text), Options{}), Options{})
	assert.Empty(t, rep.Findings)
}

// One slip is one finding: what repeats the row, its side, and the row that takes up its rest follow. Counted by hand: 90 - 2 x 5 = 80, 80 - 2 x 4 = 72.
func TestASlipIsNotToldAgainFurtherDown(t *testing.T) {
	const text = "Cast on 90 sts.\nRow 1 (RS): K.\nRow 2: P.\nBO 5 sts at beg of next 2 rows. 80 sts.\nDec row (RS): K1, ssk, k to last 3 sts, k2tog, k1. (2 sts dec'd)\n" +
		"P 1 row.\nRep these 2 rows 3 more times. 72 sts.\nNext row (RS): K30, turn, placing remaining 42 sts on a holder.\nBO all sts.\nWith RS facing, place next 12 sts on a second holder, rejoin yarn to rem 30 sts and k to end.\n"
	lines := func(from, to string) (at []int) {
		require.Contains(t, text, from)
		for _, f := range Check(Read("t", []byte(strings.Replace(text, from, to, 1)), Options{}), Options{}).Findings {
			at = append(at, f.Pos.Line)
		}
		return at
	}
	assert.Empty(t, lines("90", "90"))
	assert.Equal(t, []int{4}, lines("next 2 rows", "next 3 rows"))
	assert.Equal(t, []int{5}, lines("last 3 sts", "last 4 sts"))
	assert.Equal(t, []int{5}, lines("2 sts dec", "3 sts dec"))
	assert.Equal(t, []int{7}, lines("P 1 row", "P 2 rows"))
	assert.Equal(t, []int{7}, lines("3 more", "4 more"))
	assert.Equal(t, []int{8}, lines("remaining 42", "remaining 41"))
	assert.Equal(t, []int{10}, lines("next 12", "next 13"))
	assert.Equal(t, []int{10}, lines("rem 30", "rem 31"))
}
