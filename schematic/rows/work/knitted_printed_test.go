package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Ways in which leaflets of knitted garments go on from one row or piece to the next, each right as it stands, and wrong with the second
// words for the first: the counts were added up by hand (common practice).
func TestKnittedGarmentsAreCountedHoweverTheyArePrinted(t *testing.T) {
	const back = "Sizes: S (M)\nTerms: UK\nBack\nCast on 60 (64) sts.\nWork 20 rows in st st.\n"
	for name, c := range map[string]struct{ text, is, not string }{
		"as far as two stars": {back + "Dec 1 st at each end of next 5 rows. 50 (54) sts. **\nWork 30 rows.\nShape Shoulders\nCast off 10 sts at beg of next 2 rows.\nCast off rem sts.\n" +
			"Front\nWork as given for Back to **.\nNext row: K20, k2tog, k6, k2tog, k to end. 48 (52) sts.\n", "48 (52)", "47 (51)"},
		"from two stars to two stars": {strings.Replace(back, "Cast on 60", "**Cast on 60", 1) + "Next row: K2tog, k to end. 59 (63) sts. **\nCast off 20 sts, k to end.\nCast off all sts.\n" +
			"Front\nWork from ** to ** as given for Back.\nNext row: K2tog, k to end. 58 (62) sts.\n", "58 (62)", "57 (61)"},
		"stars on a line of their own":                {back + "**\nNext row: K2tog, k to end. 59 (63) sts.\nCast off all sts.\nFront\nWork as for Back to **.\nNext row: K to end. 60 (64) sts.\n", "K to end. 60 (64)", "K to end. 59 (63)"},
		"at both ends, then at one":                   {back + "Dec 1 st at each end of next row, then at beg of following row. 57 (61) sts.\n", "57 (61)", "58 (62)"},
		"so many at each end, then one":               {back + "Dec 1 st each end next 4 rows, then 1 st each end every RS row 3 times. 46 (50) sts.\n", "46 (50)", "45 (49)"},
		"off at one end, a decrease at the other":     {back + "Cast off 2 sts at beg and dec 1 st at end of next row. 57 (61) sts.\n", "57 (61)", "58 (62)"},
		"so often at the same edge":                   {back + "Cast off 2 sts 1 (2) times at same edge. 58 (60) sts.\n", "58 (60)", "58 (62)"},
		"yarn that is brought forward and taken back": {back + "Row 1: *K1, yfwd, sl 1 purlwise, ybk; rep from * to end. 60 (64) sts.\n", "k; rep from * to end. 60 (64)", "k; rep from * to end. 61 (65)"},
		"a row by its name again": {back + "Increase Row: K1, m1, k to last st, m1, k1. 62 (66) sts.\nP 1 row.\nWork Increase Row as above.\nNext row: P1, m1, p to last st, m1, p1.\n" +
			"Repeat these 2 rows twice more. 74 (78) sts.\nCast on 5 sts at end of next 2 rows using backward loop method. 84 (88) sts.\n", "84 (88)", "82 (86)"},
		"make one beside a stitch without a comma":       {back + "Next row: K2, *m1, k5; rep from * to last 8 (2) sts, m1 k to end. 71 (77) sts.\n", "71 (77)", "70 (76)"},
		"a rib said again in brackets":                   {"Terms: US\nCO 42 sts.\nKnit 1x2 rib (K2, P1) for 6 rounds.\nNext round: K2tog, k to end. 41 sts.\n", "41", "40"},
		"how many rows there are now":                    {back + "1st row: K1, p1 to end.\nRep 1st row 15 (17) times = 16 (18) rows rib.\nNext row: K2tog, k to end. 59 (63) sts.\n", "59 (63)", "58 (62)"},
		"a repeat cut at the end of the line":            {back + "Next row: K1, p2, (k2, p2)\n14 (15) times, kfb. 61 (65) sts.\n", "61 (65)", "60 (64)"},
		"a count cut within its brackets":                {back + "Dec 1 st at each end of next 3 (\n4) RS rows. 54 (\n56) sts.\n", "56) sts", "54) sts"},
		"a heading that counts its rows":                 {back + "5 Decrease Rows For Neck\nDec 1 st at neck edge on next 5 rows. 55 (59) sts.\n", "55 (59)", "50 (54)"},
		"rows of a rib again, with a remark in brackets": {back + "Work 7 rows (or 2 cm) in K1, P1 rib.\nRow 1: *K1, p1; rep from * to end.\nRow 2: *K1, p1; rep from * to end.\nRep these 2 rib rows 4 times more.\nNext row: K2tog, k to end. 59 (63) sts.\n", "59 (63)", "58 (62)"},
		"items of notes behind their key":                {"Sizes: S (M)\nTerms: UK\nNote: 1. The jumper is worked in pieces.\n2. A small square is worked for the neck.\nBack\nCast on 60 (64) sts.\nNext row: K2tog, k to end. 59 (63) sts.\n", "59 (63)", "58 (62)"},
		"markers passed without a word":                  {"Terms: US\nCO 20 sts, join in the round.\nRnd 1: [K8, kfb, pm, k1] twice. (22 sts)\nRnd 2: [K to 1 st before marker, kfb, kfb] twice. (26 sts)\nRnd 3: [K to 1 st before marker, kfb, kfb] twice, k1. (30 sts)\n", "30 sts", "29 sts"},
		"picked up after others":                         {"Terms: UK\nNeckband\nPick up and knit 18 sts along left side of front neck, 15 sts from cast off sts at front of neck and 12 sts evenly along right side of neck. 45 sts.\n", "45", "44"},
		"picked up beside stitches that waited":          {"Terms: UK\nBootee\nK 9 sts from holder, pick up and knit 8 sts from side of instep, k 9 centre sts, pick up and k 8 along side of instep, k 9 sts from holder. 43 sts.\n", "43", "42"},
		"a sleeve taken up from its holder":              {"Sizes: S (M)\nTerms: US\nSleeve\nReturn 50 (56) held sleeve sts to dpns. Beg at center of underarm, pick up and k 4 sts, k across sleeve, pick up and k 4 sts, join. 58 (64) sts.\n", "58 (64)", "59 (65)"},
		"a sleeve off waste yarn":                        {"Sizes: S (M)\nTerms: US\nSleeve\nSlip 50 (56) sts from waste yarn to dpns. Pick up and k 8 sts from underarm, join. 58 (64) sts.\n", "58 (64)", "59 (64)"},
		"rows shaped on as they began": {back + "Decrease row 1: K 28 (30), k2tog, ssk, k 28 (30).\nDecrease row 2: P 27 (29), p2tog, p2tog, p 27 (29).\n" +
			"Continue working these two decrease rows, keeping the decreases in the middle, until there are 20 (24) sts left.\nNext row: K2tog, k to end. 19 (23) sts.\n", "19 (23)", "20 (24)"},
		"a count that such steps never reach": {back + "Decrease row 1: K 28 (30), k2tog, ssk, k 28 (30).\nDecrease row 2: P 27 (29), p2tog, p2tog, p 27 (29).\n" +
			"Repeat these 2 rows until 20 (24) sts remain.\n", "20 (24)", "21 (25)"},
		"an example in brackets":                                    {"Terms: US\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\nRow 2: Inc in every other st (e.g. 2 sc in 1st st, 1 sc in 2nd, 2 sc in 3rd and so on), turn. (18 sc)\n", "(18 sc)", "(19 sc)"},
		"a neckband of stitches picked up and stitches that waited": {"Terms: UK\nNeckband\nWith right side facing pick up and k 14 sts up right front neck, k across 4 sts of right sleeve, 22 sts of back neck and 4 sts of left sleeve, then pick up and k 14 sts down left front neck. 58 sts.\n", "58 sts", "57 sts"},
		"a neckband off holders":                                    {"Terms: UK\nNeckband\nPick up and k 14 sts up right front neck, knit 4 sts from right sleeve holder, 22 sts from back neck holder, 4 sts from left sleeve holder, pick up and k 14 sts down left front neck. 58 sts.\n", "58 sts", "57 sts"},
		"an edge shaped on":                                         {back + "Dec 1 st at raglan edge on next row and every alt row 5 times. 54 (58) sts.\nCont to dec at raglan edge only until 2 sts rem.\nNext row: K1, m1, k1. 3 sts.\n", "K1, m1, k1. 3 sts", "K1, m1, k1. 4 sts"},
		"raglan shaping as for another piece":                       {back + "Shape raglan\nDec 1 st at each end of next 10 rows. 40 (44) sts.\nCast off all sts.\nSleeves\nCast on 30 (32) sts.\nWork 4 rows in st st.\nWork raglan shaping as for back until 8 sts rem.\nNext row: K2tog, k to end. 7 sts.\n", "7 sts", "6 sts"},
		"as another piece, on a count of its own":                   {back + "Shape raglan\nDec 1 st at each end of next 10 rows. 40 (44) sts.\nCast off all sts.\nFront\nCast on 30 (32) sts.\nWork as for back to raglan shaping.\nShape raglan\nNext row: Cast off 3 sts, k to end. 27 (29) sts.\nNext row: K2tog, k to end. 26 (28) sts.\n", "26 (28)", "25 (27)"},
		"off again at the same edge":                                {back + "Bind off 4 sts at beg of next row, then 2 sts 1 (2) times at same edge. 54 (56) sts.\n", "54 (56)", "54 (57)"},
		"rows of stripes that say their colour alone":               {back + "Stripe pattern\nRow 1: Col B.\nRow 2: Col B.\nRows 3 and 4: Col C.\nRow 5: Col A, k2tog, k to end. 59 (63) sts.\n", "59 (63)", "58 (62)"},
		"a raglan as given": {back + "Shape raglans\nDec 1 st at each end of next 10 rows. 40 (44) sts.\nCast off all sts.\nSleeves\nCast on 30 (32) sts.\nWork 4 rows in st st.\n" +
			"Shape raglans as given for back until 8 sts rem.\nNext row: K2tog, k to end. 7 sts.\n", "7 sts", "6 sts"},
	} {
		t.Run(name, func(t *testing.T) { holds(t, c.text, c.is, c.not) })
	}
}

// The side of a row follows from the rows before it, however those are told.
func TestSidesOfKnittedRowsFollowFromTheWordsBefore(t *testing.T) {
	for _, between := range []string{
		"Stst straight until armhole measures\n17 (18) cm from beg, end with a WS row.",
		"Stst for 4 rows.\nNext row (WS): P.",
		"Next row (WS): Patt.",
		"Cast off 2 sts at beg and dec 1 st at end of next row, then dec 1 st at end of following row.\nNext row (WS): P.",
	} {
		text := "Sizes: S (M)\nTerms: UK\nBack\nCast on 60 (64) sts.\nNext row (RS): K.\nNext row (WS): P.\nNext row (RS): K.\n"
		if strings.HasPrefix(between, "Cast") {
			text += "Next row (WS): P.\n"
			between = strings.Replace(between, "(WS): P", "(RS): K", 1) + "\nNext row (WS): P."
		}
		assert.Empty(t, warnings(text+between+"\nNext row (RS): K.\n"), between)
		assert.Len(t, warnings(text+between+"\nNext row (WS): P.\n"), 1, between)
	}
}
