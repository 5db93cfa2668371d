package rows

import "testing"

// Further ways in which knitting is told, each right as it stands, and wrong with the second words for the first: the counts were added up
// by hand (common practice).
func TestKnittingIsCountedHoweverItIsTold(t *testing.T) {
	const twenty = "Terms: US\nCast on 20 sts.\nRow 1: K to end.\n"
	for name, c := range map[string]struct{ text, is, not string }{
		"slipped stitches put back":           {twenty + "Row 2: K4, slip 2 sts one at a time knitwise, slip these 2 sts back onto left needle, k2tog tbl, k14. (19 sts)\n", "19 sts", "21 sts"},
		"slipped stitches put back and named": {twenty + "Row 2: K4, sl 3 knitwise, return them to left needle and knit them together through back loops, k13. (18 sts)\n", "18 sts", "17 sts"},
		"a stitch over the one worked":        {twenty + "Row 2: K4, k1, sl st back to left needle, pass next st over it, slip it to right needle, k14. (19 sts)\n", "19 sts", "20 sts"},
		"a decrease put back":                 {twenty + "Row 2: K4, k2tog, sl resulting st to LH needle, pass next st over, sl st back to RH needle, k13. (18 sts)\n", "18 sts", "19 sts"},
		"bound off by knitting together":      {twenty + "Row 2: K2, slip both sts back to LH needle, k2tog tbl, *k1, slip both sts back to LH needle, k2tog tbl; rep from * 9 times more, k to end. (9 sts)\n", "9 sts", "10 sts"},
		"a wrapped stitch put back":           {twenty + "Row 2: K10, sl 1 wyif, yarn to back, return st to left needle, turn.\nRow 3: P10. (10 sts)\n", "10 sts", "11 sts"},
		"rows again, twice in a line":         {twenty + "Row 2: P to end.\nRow 3: K to end.\nRow 4: P to end.\nRow 5: K to end.\nRows 6-43: Repeat Rows 2-5 nine more times, then repeat Rows 2 and 3 once more.\nRow 44: K2tog, k to end. (19 sts)\n", "19 sts", "20 sts"},
		"sizes with those who wear them":      {"Sizes: child (women's, men's)\nTerms: US\nCast on 27 (29 women's, 35 men's) sts.\nRow 1: K2tog, k to end. 26 (28, 34) sts\n", "26 (28, 34)", "26 (28, 35)"},
		"sizes behind a comma":                {"Sizes: S (M, L)\nTerms: US\nCast on 20 (24, 28) sts.\nRow 1: K7, (9, 11), k2tog, k to end. 19 (23, 27) sts\n", "19 (23, 27)", "19 (22, 27)"},
		"a cable told with a dash": {"C4F – slip next 2 sts on a cable needle and move to front of work, K2 then K2 from cable needle\nTerms: US\nCast on 20 sts.\n" +
			"Row 1: K8, C4F, k6, k2tog. (19 sts)\n", "19 sts", "20 sts"},
		"a row that is one decrease":         {"Terms: US\nCast on 22 sts, join in the round.\nRnd 1: K.\nRnd 2: K2tog (11)\nRnd 3: K.\n", "(11)", "(12)"},
		"turns with numbers":                 {"Terms: US\nCast on 20 sts.\nTurn 1: Sl 1, p11, p2tog, p1, turn.\nTurn 2: Sl 1, k5, ssk, k1, turn.\nTurn 3: Sl 1, p6, p2tog, p1, turn.\nNext row: K to end. (17 sts)\n", "(17", "(16"},
		"purled, making one":                 {"Terms: UK\nCast on 12 stitches.\nFirst row:—Knit.\nSecond row:—Seamed, making 1 at the beginning. (13 sts)\n", "13 sts", "12 sts"},
		"so many stitches of ribbing":        {twenty + "Row 2: 9 sts of ribbing, k2tog, 5 sts in pattern, k to end. (19 sts)\n", "19 sts", "20 sts"},
		"steps that are numbered":            {"Terms: US\n1 With size 10 needles, CO 30 sts.\n2 Work in k1, p1 rib until piece measures 5 inches, ending with a WS row.\n3 Next row (RS—begin panel): K2tog, k to end. 29 sts\n4 Next row: P2tog, p to end. 28 sts\n", "28 sts", "29 sts"},
		"how a decrease is made":             {"Terms: US\nCast on 30 sts.\nDec 1 st at armhole edge every RS row (by working across row to last 3 sts, k2tog, k1) until 27 sts rem.\nNext row: K2tog, k to end. 26 sts\n", "26 sts", "25 sts"},
		"a row for a boy and for a girl":     {twenty + "Row 2: K2, yo, k2tog for buttonhole (boy), k to end; for girl, k to last 4 sts, yo, k2tog, k2. (20 sts)\nRow 3: K2tog, k to end. (19 sts)\n", "19 sts", "20 sts"},
		"words that lead to a row":           {twenty + "Change to 6 mm needles and work the foll inc row:\nNext row: K10, m1, k10. (21 sts)\n", "21 sts", "22 sts"},
		"a stretch of increases, and ending": {twenty + "Row 2: K2, *inc in next st, k4*, end k3. (23 sts)\n", "23 sts", "24 sts"},
	} {
		t.Run(name, func(t *testing.T) { holds(t, c.text, c.is, c.not) })
	}
}
