package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Ways in which published patterns tell where and how long knitting is shaped, each right as it stands, and wrong with the second words
// for the first: the counts were added up by hand (common practice).
func TestKnittingIsCountedWhereverItIsShaped(t *testing.T) {
	const twenty = "Terms: US\nCast on 20 sts.\nRow 1: K to end.\n"
	for name, c := range map[string]struct{ text, is, not string }{
		"one at a time, put back in words":    {twenty + "Row 2: K4, (slip next st knitwise) 2x, insert left needle into fronts of these 2 sts and return them to left needle, k2tog, k14. (19 sts)\n", "19 sts", "18 sts"},
		"put back, and nothing else said":     {twenty + "Row 2: K4, sl 1, sl 1, return to left needle, k2tog tbl, k14. (19 sts)\n", "19 sts", "18 sts"},
		"a scanned make one":                  {twenty + "Row 2: Kl, ml, k to last st, ml, kl. (22 sts)\n", "22 sts", "21 sts"},
		"yarn brought forward at a turn":      {twenty + "Row 2: K10, sl 1, yf, turn.\nRow 3: P5, yf, sl 1 purlwise, turn.\nRow 4: K2tog, k to end. (19 sts)\n", "19 sts", "20 sts"},
		"one at each side, and no more":       {twenty + "Inc 1 st each side. (22 sts)\nRow 3: K2tog, k to end. (21 sts)\n", "22 sts", "23 sts"},
		"ending the row with":                 {twenty + "Row 2: K 1, p 2 tog, p across, ending row with k 1. (19 sts)\n", "19 sts", "20 sts"},
		"decreased with an apostrophe":        {twenty + "Work in k 1, p 1 rib for 2 inches, ending on wrong side of work and dec'ing 4 sts evenly across last row - 16 sts on needle.\n", "16 sts", "17 sts"},
		"until so many are added":             {twenty + "Inc 1 st at front edge on every RS row until 6 sts have been increased. (26 sts)\nInc 1 st at each end of every 4th row until 6 sts have been added. (32 sts)\n", "26 sts", "27 sts"},
		"until so many are added each side":   {twenty + "Inc 1 st at each end of every 4th row until 6 sts have been added on each side. (32 sts)\n", "32 sts", "31 sts"},
		"so far apart until so long":          {twenty + "Inc 1 st each side every inch until sleeve measures 6 ins. (32 sts)\nNext row: K2tog, k to end. (31 sts)\n", "31 sts", "30 sts"},
		"every so many rows until so long":    {twenty + "Dec 1 st each side every 6 rows until sleeve measures 6 ins. (8 sts)\nNext row: K2tog, k to end. (7 sts)\n", "7 sts", "6 sts"},
		"dashes before a bracket":             {"Size: 1/3 – 6/9 – 12/18 months (2 – 3/4 years)\nTerms: UK\nCast on 40-44-48 (52-56) sts.\nKnit 4-4-4 (6-6) rows.\nNext row: K2tog, k to end. 39-43-47 (51-55) sts.\n", "(51-55) sts", "(51-56) sts"},
		"a rib without a label":               {"Terms: UK\nBack\nCast on 46 sts.\n*K2, p2; rep from * to last 2 sts, k2.\n*P2, k2; rep from * to last 2 sts, p2.\nWork 6 rows in st st.\nCast off 6 sts at beg of next 2 rows. 34 sts.\n", "Cast on 46", "Cast on 47"},
		"a length, and what is done there":    {"Terms: UK\nCast on 60 sts.\nWhen piece measures 12 cm cast off 3 sts at beg of next 2 rows. (54 sts)\nWhen piece measures 24 cm from cast-on edge dec 1 st each side. (52 sts)\n", "52 sts", "53 sts"},
		"rounds, then one taken away":         {"Terms: US\nCast on 19 sts and join.\nKnit 13 rounds, then decrease one stitch. (18 sts)\nNext round: Knit.\n", "18 sts", "17 sts"},
		"so long, then three taken away":      {"Terms: US\nCast on 19 sts.\nWork in rib for 2 in, dec 3 sts. (16 sts)\nNext row: Knit.\n", "16 sts", "17 sts"},
		"a plain row behind a row":            {twenty + "Row 2 (WS): P to end.\nRow 3: K2tog, k to end: 19 sts. Change to MC. Purl one row.\nNext row (RS): K2tog, k to end. (18 sts) Purl 1 row.\nNext row (RS): K2tog, k to end. (17 sts)\n", "17 sts", "16 sts"},
		"knitted, and increased in it":        {twenty + "Row 2: Knit and increase into this st, k to end. (21 sts)\nRow 3: P, inc in each st across. (42 sts)\n", "21 sts", "20 sts"},
		"another marker":                      {twenty + "Row 2: K 9, slip a marker on needle, K 2, slip another marker on needle, k2tog, k to end. (19 sts)\n", "19 sts", "18 sts"},
		"rows told with dashes":               {"Sizes: 2 (3-4) years\nTerms: US\nCast on 20 (22-24) sts.\nRow 1: K2tog, k to end. 19 (21-23) sts\nRow 2: Purl.\nRows 3-5-7: Knit.\nRows 4-6-8: Purl.\nRow 9: K2tog, k to end. 18 (20-22) sts\n", "18 (20-22)", "18 (20-23)"},
		"rows told behind commas":             {"Terms: UK\nRib: 1st row: *K1, P1*, 2nd and 4th row: *K1, P1*, 3rd row: *P1, K1*. Repeat 1st - 4th row.\nFront\nCast on 20 sts.\nNext row: K2tog, k to end. (19 sts)\n", "19 sts", "18 sts"},
		"a gauge of stitches and rows":        {"In Stockinette Stitch, 20 sts and 28 rows = 4\"\nTerms: US\nCast on 20 sts.\nRow 1: K2tog, k to end. (19 sts)\n", "19 sts)", "18 sts)"},
		"increased in the first and the last": {twenty + "Row 2: Inc 1 st in first st, k to end. (21 sts)\nRow 3: K to last st, inc 1 st in last st. (22 sts)\n", "22 sts", "21 sts"},
		"from in short":                       {twenty + "Row 2: *K 8, k2tog; repeat fr * across. (18 sts)\n", "18 sts", "19 sts"},
		"put on a cable needle":               {twenty + "Row 2: K 7, put the first 3 sts on cable needle, hold at front, k the next 3 sts, then k the 3 sts from cable needle, k2tog, k to end. (19 sts)\n", "19 sts", "18 sts"},
		"how many rows, said twice":           {twenty + "Rows 2-3: Knit 2 rows.\nRows 4-8: Beg with a p WS row, work 5 rows in st st.\nRow 9: K2tog, k to end. (19 sts)\n", "19 sts", "18 sts"},
		"explained in a bracket":              {twenty + "Row 2: K 3, k in front and back of next st (increase) k to end. (21 sts)\nRow 3: K2tog (dec) k to end. (20 sts)\n", "20 sts", "19 sts"},
		"the rest behind a repeat":            {twenty + "Row 2: K2tog, k 1, *k2tog, yo; rep from * to last 5 sts, k. (19 sts)\n", "19 sts", "18 sts"},
		"each succeeding row":                 {twenty + "Knit two together at the beginning of each succeeding row until 12 stitches remain.\nNext row: K2tog, k to end. (11 sts)\n", "11 sts", "10 sts"},
		"how it is taken away":                {twenty + "Decrease at each end by knitting two stitches together every seventh row until 12 stitches remain.\nNext row: K2tog, k to end. (11 sts)\n", "11 sts", "10 sts"},
		"increased in each, without a label":  {twenty + "Inc 1 st in each st across row. (40 sts)\n", "40 sts", "30 sts"},
		"an edge before its number":           {twenty + "Inc at armhole 1 st every other row 4 times. (24 sts)\nInc 1 st at armhole every other row 4 times. (28 sts)\n", "28 sts", "27 sts"},
		"each row slipped at its beginning":   {twenty + "Knit 5 rows, slipping the first st of each row.\nKnit four rows plain, remembering always to slip first st.\nNext row: K2tog, k to end. (19 sts)\n", "19 sts", "18 sts"},
		"a panel in rib":                      {twenty + "Work this panel in k1, p1 rib for 3 in.\nProceed in k1, p1 rib for 2 in.\nNext row: K2tog, k to end. (19 sts)\n", "19 sts", "18 sts"},
	} {
		t.Run(name, func(t *testing.T) { holds(t, c.text, c.is, c.not) })
	}
}

// A line of the gauge was a label, '28 rows =', and 62 stitches in threes went by behind it: 2 are left over.
func TestARowGaugeOnItsOwnLineIsNoLabel(t *testing.T) {
	const text = "Terms: US\nGauge:\n20 sts = 4 inches\n28 rows = 4 inches\n\nBack:\nCast on 60 sts.\nNext row: * K1, k2tog, rep from * to end. (40 sts)\n"
	assert.Empty(t, check(text))
	list := check(strings.NewReplacer("on 60", "on 62", "(40", "(42").Replace(text))
	if assert.Len(t, list, 1) {
		assert.Equal(t, "rows/repeat", list[0].Kind)
	}
}

// Ten rows of 10 to 10 cm are 10 cm: 'when it measures 40 cm' says that the work goes on till then, but 5 cm are long past.
func TestWhatIsDoneWhenALengthIsReached(t *testing.T) {
	const text = "Terms: US\nGauge: 10 sts and 10 rows = 10 cm\nCast on 20 sts.\nRows 1-10: Knit.\nWhen scarf measures 40 cm, bind off.\n"
	assert.Empty(t, check(text))
	for _, s := range []string{strings.Replace(text, "40 cm", "5 cm", 1), strings.Replace(text, "When scarf measures 40 cm, bind off", "Scarf measures 40 cm", 1)} {
		list := check(s)
		if assert.Len(t, list, 1, s) {
			assert.Equal(t, "rows/length", list[0].Kind)
		}
	}
}

// Lists behind 'Sizes S, M and L only' have a number for each of those: they are not read, and nothing is wrong with them.
func TestListsOfSomeSizesAreNoMistakes(t *testing.T) {
	const text = "Sizes: S (M-L-XL)\nTerms: US\nBack\nCast on 20 (22-24-26) sts.\nSizes S, M and L only: Work 4 rows in pattern.\nWork 4 rows even. 20 (22-24) sts.\n"
	assert.Empty(t, Read("t", []byte(text), Options{}).Findings)
	assert.Len(t, Read("t", []byte(strings.Replace(text, "Sizes S, M and L only: ", "", 1)), Options{}).Findings, 1)
}
