package work

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
		{"a band of 80 with six buttonholes", "Band\nCast on 80 sts.\nRow 1 (RS): Rib to end.\nButtonhole row (WS): Rib 4, [BO 2 sts, rib 12] 5 times, BO 2, rib to end.\nNext row: %s. %d sts.\n", `
80: Rib to end, casting on 2 sts over those cast off on previous row | Rib across, casting on 2 sts over each buttonhole | Work in rib, CO 2 sts over those bound off | Work across in rib, casting on 2 sts over each 2 bound-off sts | Rib, casting on 2 sts in place of those cast off | Rib 4, [CO 2 sts over bound-off sts, rib 12] 5 times, CO 2 sts, rib to end | CO 2 sts over those bound off
`},
		{"a row of 80 with buttonholes in one row", "Band\nCast on 80 sts.\nRow 1: Rib to end.\nRow 2: %s. %d sts.\n", `
80: Rib 4, work a 2-st buttonhole, *rib 12, work 2-st buttonhole; rep from * 4 more times, rib 4 | Rib 4 sts, make one-row buttonhole over next 2 sts, rib to end | Rib 4, work a 3-st one-row buttonhole, rib to end
68: Rib 4, (cast off 2 sts, rib next 12 sts) 5 times, cast off 2 sts, rib to end
`},
		{"the lining of a pocket", "Front\nCast on 60 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nNext row: %s. %d sts.\n", `
60: K20, place next 20 sts on holder, k across 20 sts of pocket lining, k20 | K20, slip next 20 sts onto a holder, k across 20 sts of pocket lining, k to end | K20, leave next 20 sts on a holder, k20 from pocket lining, k20 | K20, sl next 20 sts to a holder, in place of these k across 20 sts of first pocket lining, k20 | K20, cast off next 20 sts, k to end. Next row: P20, p across 20 sts of pocket lining, p20 | K20, BO 20 sts, k to end. Next row: P20, with WS facing p 20 pocket lining sts, p20
`},
		{"a stitch on a safety pin, of 81", "Front\nCast on 81 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nNext row: %s. (%d sts each side)\n", `
40: K40, place next st on holder, join new ball, k to end | K40, place center st on holder, join a second ball of yarn, k40 | K40, slip next st to a safety pin, with another ball of yarn k to end
`},
		{"stitches around a neck", "Neckband\nWith RS facing, %s—%d sts. Join.\nRnd 1: Knit.\n", `
90: pick up and knit 20 sts along left front neck edge, k15 sts from front holder, pick up and knit 20 sts along right front neck edge, and k35 sts from back holder | k across 35 sts on back neck holder, pick up and k 20 sts down left side, 15 sts across front, 20 sts up right side | knit up 20 sts down left front neck, knit across 15 sts on holder, knit up 20 sts up right front neck, knit across 35 sts on back neck holder
126: starting at right shoulder seam, pick up and knit 35 sts from back neck, 45 sts from left front neck, pm, 1 st from center, pm, 45 sts from right front neck
`},
		{"a body of 144 joined to its sleeves", "Body\nCast on 144 sts and join in the round.\nRnd 1: Knit.\nJoining rnd: %s. %d sts.\n", `
224: K72 front sts, pm, k40 sleeve sts, pm, k72 back sts, pm, k40 sleeve sts, pm | K across 72 front sts, k40 left sleeve sts from holder, k72, k across 40 right sleeve sts
`},
		{"a gusset beside a heel of 20", "Gusset\nCast on 20 sts.\nRow 1 (RS): Knit.\nNext rnd: %s. %d sts.\n", `
84: K20, pick up and k 16 sts along heel flap, k32 instep sts, pick up and k 16 sts along other side of heel flap | K20, pick up and k 16 sts, pm, k across 32 held instep sts, pm, pick up and k 16 sts
`},
		{"an instep of 32 whose stitches are there", "Foot\nCast on 52 sts and join in the round.\nRnd 1: Knit.\nNext rnd: %s. %d sts.\n", `
60: K20, pick up and k 8 sts along heel flap, k32 instep sts
`},
		{"a gusset of 84 with markers", "Foot\nCast on 84 sts and join in the round.\nRnd 1: K26, pm, k32, pm, k26.\nRnd 2: %s. %d sts.\n", `
82: K to last 3 sts before instep, k2tog, k1, k32 instep sts, k1, ssk, k to end | K to 3 sts before instep, k2tog, k1, k across instep, k1, ssk, k to end
`},
		{"a yoke of 248 with its markers", "Yoke\nCast on 248 sts and join in the round.\nRnd 1: K68, pm, k56, pm, k68, pm, k56, pm.\nNext rnd: %s. %d sts.\n", `
152: K to first marker, put the sleeve sts onto a spare piece of yarn, CO 8 sts, k to third marker, put the sleeve sts onto a spare piece of yarn, CO 8 sts | Knit across back to m, remove m, slip sleeve sts to waste yarn, remove m, cast on 8 sts, k across front to m, remove m, slip sleeve sts to waste yarn, cast on 8 sts | K to marker, slip sts to next marker onto scrap yarn, CO 8 sts, k to next marker, place sts between markers on hold, CO 8 sts
`},
		{"eight increases at four markers", "Yoke\nCast on 88 sts and join in the round.\nRnd 1: K28, pm, k16, pm, k28, pm, k16, pm.\nNext rnd: %s. %d sts.\n", `
96: *K1, m1, k to one st before marker, m1, k1, sm; rep from * around | *K1, m1, knit to the last stitch before the marker, m1, k1, sm; rep from * around | *K1, m1, k to st before m, m1, k1, sm; rep from * around | *K1, m1, knit until 1 st remains before next marker, m1, k1, sm*, repeat from * to * 3 more times
248: Inc 1 st each side of each marker. Next rnd: K. Rep these 2 rnds 19 times more
`},
		{"a sleeve of 64 in the round", "Sleeve\nCast on 64 sts and join in the round.\n%s. %d sts.\n", `
44: Next rnd: Pm, k to end.\nK 8 rounds.\nDecrease round: k1, k2tog, k to 3 sts before marker, ssk, k1. (62 sts)\nRepeat the last 9 rounds 9 times more | Knit 8 rnds.\nDec rnd: K2tog, k to 2 sts before marker, ssk. (62 sts)\nRep the dec rnd every 9th rnd 9 times more | *Knit 8 rnds.\nNext rnd: K1, k2tog, k to last 3 sts, ssk, k1.\nRep from * 9 times more | *Knit 8 rnds. Next rnd: K1, k2tog, k to last 3 sts, ssk, k1; rep from * 9 times more | Dec rnd: K1, k2tog, k to last 3 sts, ssk, k1.\n*Knit 8 rnds, rep dec rnd; rep from * 8 times more
`},
		{"a blanket of 60 with borders", "Blanket\nCast on 60 sts.\nRow 1: K7, pm, p46, pm, k7.\nRow 2: K.\nRow 3: K7; purl to marker; slip marker; K7. (60 sts)\nRepeat these 3 rows 14 times more, ending with Row 2.\nNext row: %s. %d sts.\n", `
59: K2tog, k to end
`},
		{"the second half of a neck of 90", "Front\nCast on 90 sts.\nRow 1 (RS): K.\nRow 2: P.\nNext row: K35, turn and work on these sts only, leaving rem sts on a holder.\nDec 1 st at neck edge on next 8 rows. 27 sts.\n%s. %d sts.\n", `
35: With RS facing, slip centre 20 sts onto a holder, rejoin yarn to rem sts and k to end | With RS facing, slip centre 20 sts onto a holder. Rejoin yarn to rem sts and k to end | Leaving centre 20 sts on holder, rejoin yarn to rem sts and k to end | Return to rem sts. With RS facing, slip next 20 sts to holder, rejoin yarn and k to end
`},
		{"words that lead to a row of 90", "Front\nCast on 90 sts.\nRow 1 (RS): K.\nRow 2: P.\n%s turn. %d sts.\n", `
44: Shape V-neck: Next row (RS): Knit 43, k2tog, | Neck shaping - Next row (RS): Knit 43, k2tog, | For V-neck: Next row: Knit 43, k2tog,
`},
		{"stitches picked up at a rate", "Band\n%s: %d sts.\nRow 1: Knit.\n", `
92: Picking up 3 sts for every 4 rows, pick up and k 92 sts along edge
`},
		{"a toe of two needles with 12 each", "Toe\nCast on 24 sts (12 per needle). Join.\nRnd 1: Knit.\nRnd 2: %s. %d sts.\n", `
28: *K1, m1, k to last st on needle, m1, k1; rep from * on 2nd needle | *K1, m1, k to last st, m1, k1; rep from * for needle 2
20: *K1, ssk, k to last 3 sts of instep, k2tog, k1; rep from * across sole
`},
		{"both halves of a neck in a row", "Front\nCast on 90 sts.\nRow 1 (RS): K.\nRow 2: P.\nRow 3: K43, k2tog; join a second ball of yarn, ssk, k to end. 88 sts.\nRow 4: P across both sides.\nRow 5: %s. %d sts.\n", `
86: K to last 3 sts, k2tog, k1; on second side, k1, ssk, k to end | First side: k to last 3 sts, k2tog, k1; second side: k1, ssk, k to end | K to 3 sts from end of first side, k2tog, k1; k1, ssk, k to end of second side
`},
		{"a count beside its change", "Back\nCast on 38 sts.\nRow 1 (RS): K1, kfb, k to last 2 sts, kfb, k1%s%d sts.\n", `
40:  - 2 sts inc'd;  | ; 2 sts increased; 
`},
	} {
		for _, line := range strings.Split(strings.TrimSpace(k.phrases), "\n") {
			count, list, _ := strings.Cut(line, ": ")
			n, err := strconv.Atoi(count)
			require.NoError(t, err, line)
			for _, w := range strings.Split(list, " | ") {
				phraseComesTo(t, k.text, strings.ReplaceAll(w, `\n`, "\n"), n, true)
			}
		}
	}
}
