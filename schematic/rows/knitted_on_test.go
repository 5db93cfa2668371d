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
		"a row that is one decrease":                     {"Terms: US\nCast on 22 sts, join in the round.\nRnd 1: K.\nRnd 2: K2tog (11)\nRnd 3: K.\n", "(11)", "(12)"},
		"turns with numbers":                             {"Terms: US\nCast on 20 sts.\nTurn 1: Sl 1, p11, p2tog, p1, turn.\nTurn 2: Sl 1, k5, ssk, k1, turn.\nTurn 3: Sl 1, p6, p2tog, p1, turn.\nNext row: K to end. (17 sts)\n", "(17", "(16"},
		"purled, making one":                             {"Terms: UK\nCast on 12 stitches.\nFirst row:—Knit.\nSecond row:—Seamed, making 1 at the beginning. (13 sts)\n", "13 sts", "12 sts"},
		"so many stitches of ribbing":                    {twenty + "Row 2: 9 sts of ribbing, k2tog, 5 sts in pattern, k to end. (19 sts)\n", "19 sts", "20 sts"},
		"steps that are numbered":                        {"Terms: US\n1 With size 10 needles, CO 30 sts.\n2 Work in k1, p1 rib until piece measures 5 inches, ending with a WS row.\n3 Next row (RS—begin panel): K2tog, k to end. 29 sts\n4 Next row: P2tog, p to end. 28 sts\n", "28 sts", "29 sts"},
		"how a decrease is made":                         {"Terms: US\nCast on 30 sts.\nDec 1 st at armhole edge every RS row (by working across row to last 3 sts, k2tog, k1) until 27 sts rem.\nNext row: K2tog, k to end. 26 sts\n", "26 sts", "25 sts"},
		"a row for a boy and for a girl":                 {twenty + "Row 2: K2, yo, k2tog for buttonhole (boy), k to end; for girl, k to last 4 sts, yo, k2tog, k2. (20 sts)\nRow 3: K2tog, k to end. (19 sts)\n", "19 sts", "20 sts"},
		"words that lead to a row":                       {twenty + "Change to 6 mm needles and work the foll inc row:\nNext row: K10, m1, k10. (21 sts)\n", "21 sts", "22 sts"},
		"a stretch of increases, and ending":             {twenty + "Row 2: K2, *inc in next st, k4*, end k3. (23 sts)\n", "23 sts", "24 sts"},
		"a shaped row and a plain one again":             {"Terms: UK\nCast on 60 sts.\nDec 1 st at each end of next row.\nWork 1 row even.\nRep last 2 rows 4 times more. 50 sts.\n", "50 sts", "58 sts"},
		"a shaped row again":                             {"Terms: UK\nCast on 60 sts.\nOn the next RS row dec 1 st at beg and end of row. Repeat this RS row dec 4 more times.\n50 sts remain.\n", "50 sts", "58 sts"},
		"rows shaped until":                              {"Terms: UK\nCast on 60 sts.\nDec 1 st at each end of next row.\nWork 1 row even.\nRep last 2 rows until 40 sts remain.\nNext row: K2tog, k to end. 39 sts\n", "39 sts", "57 sts"},
		"rows cast off again":                            {"Terms: UK\nCast on 60 sts.\nCast off 3 sts at beg of next 2 rows.\nRep last 2 rows twice more. 42 sts.\n", "42 sts", "54 sts"},
		"an even shaping again":                          {"Terms: UK\nCast on 40 sts.\nInc 6 sts evenly across next row.\nRepeat last row once more. (52 sts)\n", "52 sts", "46 sts"},
		"a side after a length":                          {"Terms: US\nCast on 30 sts.\nSet-Up Body Pattern (RS) K5, 20 sts of Chart A, k5. Continue in pattern as established until piece measures 8 in from beg, ending with a WS row.\nBind off 2 sts at beg of next 2 rows. 26 sts.\nDec Row (RS) K2, ssk, work in pattern to last 4 sts, k2tog, k2. (Work all WS rows as k1, p to last st, k1.) Work Dec Row every other row a total of 6 times, then every 4th row once. 12 sts remain.\n", "12 sts", "14 sts"},
		"cast on each of two needles":                    {"Terms: US\nCO 10 sts onto each of 2 needles: 20 sts.\nRnd 1: K to end. (20 sts)\n", "needles: 20", "needles: 21"},
		"cast on each needle, and in all":                {"Terms: US\nCast on 25 sts on each needle point, 50 in total, using a closed cast-on.\nKnit one round.\nRnd 2: K1, m1, k to end. (51 sts)\n", "51 sts", "26 sts"},
		"picked up at the ends of rows":                  {"Terms: US\nPick up 20 sts across top of shoulder. Work back and forth in stockinette st, picking up 2 sts at end of each row until 70 sts have been picked up. Decrease 1 st at each end every 4th row to 64 sts.\nNext row: K2tog, k to end. 63 sts\n", "63 sts", "62 sts"},
		"a finger from palm and back":                    {"Terms: US\nPinky\nRib 5 sts from palm, co 7, rib 8 sts from back = 20 sts\nrib 24 rds, then work fingertip as follows:\nrd 25: k2tog, rib 18 = 19 sts\n", "= 19", "= 18"},
		"an increase in each of several":                 {twenty + "Row 2: K15, inc 1 st in each of next 2 sts, k3. (22 sts)\n", "22 sts", "21 sts"},
		"a decrease that the text tells":                 {"Terms: US\nDDX = sl 2, k1, pass 2 slipped sts over.\nCast on 20 sts.\nRow 1: K3, DDX, k to end. (18 sts)\n", "18 sts", "19 sts"},
		"its long name before it":                        {"Terms: US\ncddr = centred double decrease over ribbing: sl 1 (a knit st), p 1, pass next knit st on left needle over just-purled st, pass slipped knit st over purled st\nCast on 20 sts and join in the round.\nrd 1: p1, cddr, rib 3, cddr, rib 3, cddr, rib 4 = 14 sts\n", "14 sts", "15 sts"},
		"an increase that the text tells":                {"Terms: US\nAbbreviations:\nQ5 = (k1, yo, k1, yo, k1) in next st.\nZed: k2tog, yo twice, ssk.\n\nCast on 20 sts.\nRow 1: K3, Q5, k to end. (24 sts)\nRow 2: K3, 2 Zed, k to end. (24 sts)\nRow 3: *Zed; rep from * to end. (24 sts)\n", "k to end. (24 sts)\nRow 3", "k to end. (26 sts)\nRow 3"},
		"buttonhole told over two sentences":             {"Terms: US\nCast on 36 sts.\nK 1, P 1, bind off the next 2 sts. K 1, P 1 to end, work back, casting on 2 sts over the bound off sts.\nNext row: K2tog, k to end. (35 sts)\nNext row: K2tog, k to end. (34 sts)\n", "34 sts", "33 sts"},
		"held stitches of a hand, beside some picked up": {"Terms: US\nHand\nReturn held sts to needles, join yarn, pick up and knit 2 sts from base of little finger, k37. (39 sts)\nKnit 3 rnds.\nNext rnd: K7, place next 26 sts on waste yarn, cast on 2 sts, k last 6 sts. (15 sts)\n", "39 sts", "38 sts"},
		"held stitches from both ends":                   {"Terms: US\nMiddle finger\nSlip first 7 sts and last 6 sts of rem 26 held sts onto needles. Pick up and k 2 sts from base of ring finger, k7, cast on 2 sts, k6. (17 sts)\nNext rnd: K2tog, k to end. (16 sts)\n", "(16 sts", "(15 sts"},
		"a thumb taken up":                               {"Terms: US\nThumb\nPlace 15 held sts on needles, pick up and knit 3 sts over gap. (18 sts)\nNext rnd: K15, k3tog. (16 sts)\n", "18 sts", "19 sts"},
		"heel stitches told again":                       {"Terms: US\nCast on 16 sts.\nKnit across 16 heel sts, pick up and k 15 sts along side of heel flap, k across 28 instep sts, pick up and k 15 sts along other side, k 8 heel sts. 74 sts.\n", "74 sts", "75 sts"},
		"a part of a row of unknown length":              {"Terms: UK\nBack\nCast on 60 sts.\nWork 10 rows in st st.\nCast off.\nFront\nWork as given for back until armholes measure 12 cm, ending with a p row.\nNext row: K 28, turn and leave rem sts on a spare needle.\nDec 1 st at neck edge on next 6 rows, then on foll 3 alt rows. 19 sts.\n", "19 sts", "18 sts"},
		"increased at even intervals":                    {"Terms: US\nCast on 58 sts and work in ribbing K1, P1 for 2 inch. Incr. 2 sts. at even intervals across last row of ribbing.\nNext row: K2tog, k to end. 59 sts\n", "59 sts", "58 sts"},
		"off at the beginning, told first":               {"Terms: US\nCast on 66 sts.\nWork 10 rows in pattern. Bind off for armhole at the beg. of the next 2 rows 4 sts., at the beg. of the next 4 rows 2 sts.\nNext row: K2tog, k to end. 49 sts\n", "49 sts", "50 sts"},
		"a raglan within a paragraph":                    {"Terms: US\nPATTERN:\n1st row: K2, p2, k2.\n2nd row: P2, k2, p2.\nBACK:\nCast on 58 sts. Work in pattern for 6 rows. Shape raglan: 1st row: K2, slip 1, K1, p.s.s.o., work across row in pattern to within 4 sts., K2 tog., K2. 2nd row: work in pattern across row. Repeat these 2 rows 11 times.\nNext row: K2tog, k to end. 33 sts\n", "33 sts", "31 sts"},
		"the remaining stitches bound off":               {"Terms: US\nCast on 24 sts.\nRow 1: K2tog, k to end. 23 sts\nRow 2: P. 23 sts\nRem. 23 sts. bind off for neck.\n", "end. 23 sts", "end. 24 sts"},
		"cast on the first and on the others":            {"Terms: UK\nCast on 56 stitches on the first needle, and 48 on each of the other 2. Knit 1 row plain. Second row: knit 40 stitches plain, seam a stitch, knit all round plain. (152 sts)\n", "152 sts", "153 sts"},
		"ribbing told as plain and purl":                 {"Terms: UK\nCast on 40 stitches on each of three needles, 120 stitches in all. Work in ribbing, 2 stitches plain and 2 stitches purl for 4 rounds.\nNext round: K2tog, k to end. 119 sts\n", "119 sts", "118 sts"},
		"rows whose names stand alone":                   {"Terms: US\nCast on 56 sts and join in the round.\nrounds 1 thru 8:\nk all sts\nround 9:\n*k5, k2tog.\nrepeat from * around (48 sts)\nround 10:\nk all sts\nround 11:\n*k4, k2tog.\nrepeat from * around (40 sts)\n", "40 sts", "41 sts"},
		"rows that a next row tells":                     {"Terms: US\nCast on 60 sts.\nWork 4 rows in k2, p2 rib.\nNext row [RS]: Starting with k2, work in k2, p2 rib for 18 rows.\nNext row [RS]: Continuing in rib as set, BO 4 sts at beg of next 2 rows. 52 sts\n", "52 sts", "56 sts"},
		"between the stars, with an apostrophe":          {"Terms: US\nCast on 20 sts.\n1st row: K 2, * k 2 tog, k 1, slip, k and pass *, k 6, repeat between *'s once, k 2 (16 sts).\n2nd row: K 2, * k 2 tog, k 1, slip, k and pass *, k 2, repeat between *'s once, k 2 (12 sts).\n", "(12 sts", "(14 sts"},
		"a row bound off and worked across":              {"Terms: US\nCast on 60 sts.\n1st row: Bind off 7 sts, work across row in pattern as established.\n2nd row: Bind off 7 sts, k across. (46 sts)\n", "46 sts", "53 sts"},
		"rows until a count, and the row just done":      {"Terms: US\nCast on 12 sts.\nRow 1 (WS): Purl.\nRow 2: K2, m1r, k to last 2 sts, m1l, k2.\nKnit rows 1 & 2 until you have 28 stitches on your needle and you've just completed row 1 of the pattern.\nRow 1 (RS): K2tog, k to end. (27 sts)\n", "(27 sts", "(26 sts"},
		"both loops of a double yarn over":               {"Terms: US\nCast on 28 sts.\nRow 1 (RS): K4, * k2tog, yo twice, ssk; rep from * to last 4 sts, k4.\nRow 2: K4, * k1, (k1, p1) into double yo, k1 *, k4. (28 sts)\n", "(28 sts", "(34 sts"},
	} {
		t.Run(name, func(t *testing.T) { holds(t, c.text, c.is, c.not) })
	}
}
