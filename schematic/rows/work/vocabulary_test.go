package work

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The words of the trade, as lists of abbreviations in pattern books explain them (common practice), and how many stitches there
// are after a row of 43 in which one of them stands behind five plain stitches and before the rest; rows of 43 in the ways that they are told, and what is told
// of the shape of 60.
func TestWordsOfTheTradeMakeTheStitchesThatListsSay(t *testing.T) {
	crafts := []struct {
		text  string
		words map[int][]string
	}{
		{"Terms: US\nCO 43 sts.\nRow 1: K5, %s, k to end. (%d sts)\n", map[int][]string{
			39: {
				"[ssk, k2tog] twice",
			},
			40: {
				"bind off 3 sts", "BO 3 sts", "cast off 3 sts", "(k2tog) 3 times", "sl 3, k1, p3sso",
			},
			41: {
				"k3tog", "p3tog", "sssk", "sssp", "sk2p", "sk2po", "sl1-k2tog-psso", "s2kp", "s2kpo", "s2kp2", "cdd", "slip 1, knit 2 together, pass slipped stitch over",
				"slip 2 together knitwise, knit 1, pass 2 slipped stitches over", "sl1, k2tog, psso", "ssk twice", "k2tog twice",
				"sl 2 tog kwise, k1, p2sso", "sl 2, k1, pass both slipped sts over", "slip 2 together knitwise, k 1, psso twice",
				"sl 2 tog, knit 1, pass the 2 slipped stitches over",
			},
			42: {
				"k2tog", "p2tog", "ssk", "ssp", "skp", "skpo", "k2tog tbl", "p2tog tbl", "slip 1, knit 1, pass slipped stitch over",
				"knit 2 together through back loops", "knit two together", "purl two together", "dec 1", "sl 1, k1, psso", "ssk tbl",
			},
			43: {
				"wyif sl1", "sl1 wyif", "sl1 wyib", "k1tbl", "p1 tbl", "ktbl", "k1 below", "k1b", "sl 1 knitwise", "sl 1 purlwise",
				"k1 elongated", "mb", "make bobble", "br k1", "k 1 tbl", "k2tog, yo", "yo, ssk",
				"yo, k2tog tbl", "slip next 3 sts", "sl next 3 sts purlwise", "slip next 2 sts together knitwise",
			},
			44: {
				"kfb", "kf&b", "pfb", "k1f&b", "inc1", "m1", "m1l", "m1r", "m1p", "mk1", "make 1", "yo", "yfwd", "yf", "yrn", "yon",
				"k into front and back of next st", "m1 purlwise", "lli", "rli", "yarn over", "yarn forward", "yarn round needle",
				"kbf", "increase 1", "inc in next st", "inc 1 in next st", "k twice in next st", "k in front and back", "p1f&b",
			},
			45: {
				"kfbf", "(k1, yo, k1) in next st", "(k1, p1, k1) into next st", "yo twice", "yo 2", "yo2", "m2", "kyok", "k1-yo-k1 in next st",
			},
			46: {
				"co 3 sts", "cast on 3 sts",
			},
		}},
		{"Terms: US\nCh 44.\nRow 1: Sc in 2nd ch from hook and in each ch across. (43 sc)\nRow 2: Ch 1 (does not count as a st), sc in first 5 sts, %s, sc to end. (%d sts)\n", map[int][]string{
			39: {
				"dc5tog",
			},
			41: {
				"sc3tog", "dc3tog", "[sc2tog] twice", "sc2tog x 2",
			},
			42: {
				"sc2tog", "sc dec", "dc2tog", "dec", "invdec", "inv dec", "inv. dec.", "hdc2tog", "work 2 sc tog", "sc next 2 sts tog",
				"skip next st", "sk 1", "sc in next 2 sts, sc2tog", "dec over next 2 sts", "dec 1", "1 dec", "hdc dec", "tr2tog",
			},
			43: {
				"sc in next st", "fpdc around next st", "bpdc around next st", "fpsc in next st", "BPhdc in next st", "fptr in next st",
				"blo sc in next st", "sc blo in next st", "sc in blo of next st", "scblo", "esc in next st", "linked dc in next st",
				"sk 2 sts, 5 dc in next st, sk 2 sts", "puff in next st", "puff st in next st", "pc in next st", "popcorn in next st",
				"bobble in next st", "cluster in next st", "sl st in next st", "ss in next st", "slst in next 3 sts", "rsc in next st",
				"crab st in next st", "reverse sc in next st", "dtr in next st", "hdc in next 2 sts", "sc in each of next 2 sts",
				"spike st in next st", "1 sc", "sc 4", "4sc", "sc x 4", "FPdc in next st", "BPdc around the post of next st", "sc in the next stitch",
				"sc in nxt st", "sc in 1 st", "sc1", "2sc", "hdc in third loop of next st", "hdc in 3rd loop of next st", "sc tbl",
				"sc in front loop of next st", "picot", "ch 3, sl st in 3rd ch from hook",
			},
			44: {
				"hdc inc", "sc inc", "inc", "2 sc in next st", "(sc, ch 1, sc) in next st", "inc 1", "2sc in 1 st", "sc, inc",
				"1 inc",
			},
			45: {
				"3 dc in next st", "2 dc in same st as last st", "2 hdc in each of next 2 sts", "inc in next 2 sts", "3sc in one st",
				"inc x2", "2 inc",
			},
			46: {
				"fsc 3", "(2 dc, ch 2, 2 dc) in next st", "3 sc in the same st",
			},
			47: {
				"5 dc in next st",
			},
		}},
		{"Terms: US\nCO 43 sts.\nRow 1: %s. (%d sts)\n", map[int][]string{
			20: {
				"K10, BO next 23 sts, k to end",
			},
			22: {
				"K2tog across to last st, k1", "*K2tog; rep from * to last st, k1", "K1, *k2tog, rep from * to end", "K1, (k2tog) 21 times",
			},
			28: {
				"K14, cast off 15 sts, k to end",
			},
			35: {
				"Cast off 4 sts, k to last 4 sts, cast off 4",
			},
			36: {
				"K1, *k4, k2tog; rep from * 7 times", "K1, *K4, k2tog, rep from * to end of row", "K1, *k4, k2tog* 7 times", "K1, [k4, k2tog] x 7",
				"K1, (k4, k2tog) seven times", "K1, [k4, k2tog] rep to end",
			},
			39: {
				"Bind off 4, k to end", "BO 4 sts, knit to end", "Cast off 4 stitches, knit to end of row",
			},
			40: {
				"Purl across, decreasing 3 sts evenly spaced", "K, dec 3 sts evenly across row",
			},
			41: {
				"K1, ssk, k to last 3 sts, k2tog, k1", "K1, k2tog, knit to last 3 stitches, ssk, k1", "K1, ssk, knit to 3 sts before end, k2tog, k1",
				"K2tog, knit to last 2 sts, k2tog", "dec 1 st each end", "Dec 1 st at each end of row",
			},
			42: {
				"K2tog, k to end",
			},
			43: {
				"K", "Knit", "Knit all sts", "Knit all stitches", "Purl", "P all sts", "K every st", "Knit across", "Knit to end",
				"K to the end of the row", "Knit one row", "K 1 row", "Purl back", "K2, p to last 2 sts, k2", "K2, purl to the last two stitches, k2",
				"K3, p until 3 sts remain, k3", "K3, p37, k3", "K 3, P 37, K 3", "k3 p37 k3", "*K1, p1; rep from * to last st, k1",
				"*K1, P1* repeat to last stitch, K1", "*k1, p1*, rep from * to * to last st, k1", "(K1, p1) to last st, k1", "[k1, p1] 21 times, k1",
				"K1, *p1, k1; rep from * to end", "K1, (p1, k1) across", "K1, [p1, k1] to end of row", "K1 *P1 K1* to end", "K1, *p1, k1, rep from * across",
				"k1, p1 across, ending k1", "K1, p1 to last st, k1", "K1, P1 across row, end with K1", "Work in k1, p1 rib to end",
				"Rib across", "K1, *yo, k2tog; rep from * to end", "K1, *k2tog, yo; repeat from * to last 2 sts, k2", "K4, (yo, k2tog) repeat to last 3 sts, k3",
				"K21, pm, k22", "K to last 5 sts, k5", "Sl 1, k to end", "Sl1 pwise wyif, k to end", "Slip first st, knit to end",
				"Sl 1, p to last st, k1", "S1, K42", "K across all sts", "K across 43 sts", "Knit across next row", "knit each stitch across",
				"K into back of each st", "P1, k1 alternately across, end p1", "Knit the knit sts and purl the purl sts", "K the knits and p the purls",
				"Work even", "Work sts as they appear", "knit around", "Knit the k sts, purl the p sts", "Knit all knit sts, purl all purl sts",
				"K2, knit the knits and purl the purls to last 2 sts, k2",
			},
			44: {
				"K20, m1, k to end",
			},
			45: {
				"K1, m1, k to last st, m1, k1", "K1, M1L, knit until 1 stitch remains, M1R, K1", "Kfb, k to last 2 sts, kfb, k1",
				"Inc in first st, k to last st, inc in last st", "Increase 1, knit to last stitch, increase 1", "K1, inc 1, k to last 2 sts, inc 1, k1",
				"K1, inc in next st, k to last 2 sts, inc in next st, k1", "inc 1 st at both ends",
			},
			48: {
				"CO 5 sts, k to end", "Cast on 5 stitches, knit across", "k to end, CO 5", "K to end, cast on 5 sts",
			},
			50: {
				"K1, *inc in next st, k5; rep from * to end", "K1, *k5, inc in next st; rep from * to end", "Inc 7 sts evenly across row",
				"Knit, increasing 7 sts evenly",
			},
		}},
		{"Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 44.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (43 sc)\nRow 2: Ch 1, %s, turn. (%d sts)\n", map[int][]string{
			36: {
				"(4 sc, dec) 7 times, sc in last st", "*sc 4, sc2tog; repeat from * across to last st, sc",
			},
			37: {
				"Sl st in first 3 sts, ch 1, sc in each st across to last 3 sts",
			},
			40: {
				"Sc in each st across to last 3 sts, leave remaining sts unworked", "Sc in next 40 sts, leave last 3 unworked",
				"Sl st across first 3 sts, sc in next 37 sts, leave rem sts unworked",
			},
			41: {
				"Sc2tog, sc across to last 2 sts, sc2tog", "Sc in first st, sc2tog, sc in each st to last 3 sts, sc2tog, sc in last st",
				"dec at both ends", "dc2tog over first 2 sts, dc to last 2 sts, dc2tog over last 2 sts",
			},
			42: {
				"Skip first st, sc in each st across",
			},
			43: {
				"sc in each st across", "Sc across", "1 sc in each sc to end", "sc in every st across, turn", "Sc in each stitch",
				"sc all across", "43 sc", "Sc in each of the 43 sts", "Sc in blo across", "BLO sc across", "Sc in each st across in back loops only",
				"Working in BLO, sc in each st", "sc in first st, hdc in next, dc in next 39, hdc in next, sc in last", "Sc 10, hdc 10, dc 10, hdc 10, sc 3",
				"sc in next st and in each st across", "sc in first st and each st across", "sc in same st as joining, sc in each st around",
				"1 sc into each st", "Work 1 sc in each st to end", "Work 43 sc across", "Make 1 sc in every st",
			},
			45: {
				"2 sc in first st, sc in each st across to last st, 2 sc in last st", "2 sc in first sc, sc to last sc, 2 sc in last sc",
				"Inc, sc in each st to last st, inc", "sc in next 20 sts, 3 sc in next st, sc in next 22 sts", "20 sc, 3 sc in next st, 22 sc",
				"sc in 20, 3 sc in next, sc in 22", "Inc in first and last st", "Sc in the first st, 2 sc in the next st, sc in each of the next 39 sts, 2 sc in the next st, sc in the last st",
			},
			50: {
				"*sc in next 5 sts, 2 sc in next st; rep from * to last st, sc in last st", "[Sc in next 5 sts, inc] 7 times, sc in last st",
				"(5 sc, inc) x 7, 1 sc", "(5 sc, inc) repeat 7 times, sc", "5 sc, inc, repeat from beginning 6 more times, sc in last st",
				"*sc 5, inc* x7, sc 1", "*sc in each of next 5 sts, 2 sc in next st* repeat to last st, sc in last", "[5sc, 2sc in next st] to last st, 1sc",
			},
		}},
		{"Terms: US\nCO 60 sts.\n%s.\nNext row: K to end. (%d sts)\n", map[int][]string{
			20: {
				"Next row: K20, turn and leave rem 40 sts on a holder",
			},
			24: {
				"Next row: K12, bind off center 36 sts, k to end",
			},
			30: {
				"K 2 tog across row", "K2tog all around", "Next row: (K2tog) 30 times", "K2tog 30 times",
			},
			38: {
				"Bind off at each armhole edge 4 sts once, 2 sts twice, 1 st 3 times",
				"Cast off 5 sts at beg of next 2 rows and 3 sts at beg of foll 4 rows",
			},
			40: {
				"Next row: K20, place next 20 sts on holder, k20", "Slip first 20 sts onto a stitch holder, k to end", "Cast off 5 sts at beg of next 2 rows. Dec 1 st at each end of next 5 rows",
				"Cast off 10 sts at beg of next and foll alt row",
			},
			42: {
				"BO 3 sts at beg of next 4 rows, 2 sts at beg of next 2 rows, 1 st at beg of next 2 rows", "Bind off 3 sts at beg of next 6 rows",
			},
			48: {
				"Bind off 4 sts at the beginning of next 2 rows, then 2 sts at the beginning of next 2 rows",
			},
			50: {
				"At each edge BO 3 sts once, 2 sts once",
				"Dec 1 st each end of every RS row 5 times", "Decrease 1 st at each end of every other row 5 times", "Dec 1 st at both ends of every 4th row 5 times",
				"Dec 1 st at each side on next and every following alt row until 50 sts remain", "Dec 1 st at each end of next 5 rows",
				"Dec 1 stitch each side every RS row 5 times", "Dec one stitch at each end of the needle every other row until 50 sts remain",
				"Dec 1 st at each end of every row until there are 50 sts", "Dec 1 st at each end of 3rd and every foll alt row to 50 sts",
				"Dec 1 st at neck edge on every row until 50 sts rem", "Dec 1 st at each end of next and foll 4 alt rows", "Dec 1 st at each end of next 3 rows, then on foll 2 alt rows",
				"Dec 1 st at each end of next row and following 4 rows", "Dec 1 st at each end of next 3 rows and 2 foll alt rows",
				"Cast off 5 sts at beg of next row and foll alt row", "*K4, k2tog; rep from * around", "Next rnd: *K4, k2tog; rep from * to end. 50 sts",
			},
			51: {
				"Bind off 5 sts at neck edge once, then 2 sts every other row twice",
				"Next row: K3, *k2tog, k4; rep from * to last 3 sts, k3",
			},
			52: {
				"Bind off 4 sts at the beginning of the next 2 rows", "BO 4 sts at beg of next 2 rows", "Cast off 4 sts at beginning of next two rows",
				"Cast off 4 stitches at the start of each of the next 2 rows", "At the beginning of each of the next 2 rows bind off 4 sts",
				"Dec 1 st at neck edge every row 5 times, then every alt row 3 times", "BO 4 sts at beg of next 2 rows - 52 sts",
				"When work measures 30 cm, cast off 4 sts at beg of next 2 rows",
			},
			54: {
				"Dec 6 sts evenly across next row", "Next row: K, dec 6 sts evenly across", "Knit 1 row, decreasing 6 stitches evenly spaced",
				"P next row, dec 6 sts evenly",
			},
			55: {
				"Dec 1 st at neck edge on next 5 rows", "Dec 1 st at armhole edge every row 3 times and every other row twice",
				"Keeping armhole edge straight, dec 1 st at neck edge every other row 5 times",
			},
			60: {
				"Work in St st for 10 rows", "Work 10 rows in stockinette st", "Work 10 rows St st, beg with a k row", "Beg with a K row, work in st st for 10 cm, ending with a WS row",
				"Continue straight until work measures 30 cm from cast-on edge, ending with RS facing for next row", "Cont in patt without shaping until Back measures 12 in, ending after a wrong side row",
				"Work even until armhole measures 7 in", "Knit 4 rows", "Work in k1, p1 rib for 5 cm", "Work 2 inches of K2, P2 ribbing",
				"Rib 10 rows in k2, p2", "Work 10 rows of garter stitch", "Purl 1 row. Knit 1 row", "K 1 row, P 1 row for 8 rows",
				"Working on these 60 sts only, work 4 rows", "Work 6 rows in seed st", "Work in moss st for 8 rows", "Change to larger needles and work in stocking st for 20 rows",
				"With smaller needles work 8 rows garter st", "Work 4 rows in garter stitch (knit every row)", "Work even until piece measures same as back to armhole",
			},
			66: {
				"K 4 rows, inc 6 sts evenly across last row", "Knit 4 rows, increasing 6 sts evenly in last row",
			},
			70: {
				"Inc 1 st at each end of every 6th row 5 times", "Inc 1 st each side every 6 rows 5 times", "Increase 1 st at each end of the next and every foll 6th row to 70 sts",
				"Inc 1 st at each end of next and every foll 4th row until there are 70 sts", "Inc 1 st at each end of 5th and every foll 6th row until there are 70 sts, then work straight",
				"Shape sleeves by inc 1 st at each end of 7th and every following 8th row to 70 sts", "Inc one st at beg and end of every 6th row 5 times",
				"Inc 1 st at each end of 3rd and every following 4th row until there are 70 sts", "Inc 1 st at each end of 5th and every foll 6th row 4 times",
				"Inc 1 st at each end of 5th row, then every 6th row until there are 70 sts", "Inc 1 st at each side on 5th row and then every 4th row 4 times more",
				"Inc 1 st each side every 4th row 3 times, every 6th row 2 times", "Increase one stitch at each end of every fourth row until there are seventy stitches",
				"Increase 1 st at each end of next row, then every following 8th row to 70 sts", "Inc at both ends of next and every 8th row until 70 sts",
				"Inc 1 st at beg of next 10 rows", "Inc 1 st in first and last st of every 4th row, 5 times",
			},
		}},
		{"Terms: US\nCh 44.\nRow 1: Sc in 2nd ch from hook and in each ch across. (43 sc)\nRow 2: Ch 1 (does not count as a st), sc in first 5 sts, %s, sc to end. (%d sts)\n", map[int][]string{
			41: {
				"sc3tog over the next 3 sts", "cluster over next 3 sts",
			},
			42: {
				"fpdc2tog", "fpdc2tog over next 2 sts", "bpdc2tog", "fptr2tog", "fpdc2tog around next 2 sts", "sc2tog over next 2 sts",
				"sc 2 tog over the next two stitches", "skip next st, sc in following st", "hdc-sc dec", "dc dec",
				"decrease over next 2 stitches", "decrease once", "2 sc tog", "sc next 2 together", "sk next sc, sc in next sc",
			},
			43: {
				"fphdc in next st", "FPtr around post of next st", "hdc worked in next st", "1 sc in the next st of the row below", "sc in next st 2 rows below",
				"tr in next st two rows below", "dc in front loop of next st 1 row below", "sc in next st, ch 2, skip 2 sts, sc in next st", "ch 2, sk 2, sc",
				"ch 1, sk 1, sc in next", "skip 1 st, 3 dc in next st, skip 1 st", "sc evenly over next 6 sts", "3-dc cluster in next st",
				"4dc bobble in next st", "5-dc popcorn in next st", "puff stitch in next stitch", "MB in next st", "bobble",
			},
			44: {
				"2 sc worked in next st", "work 2 sc into the next st", "place 2 sc in next st", "two sc in next st", "sc twice in next st",
				"sc in next 3 sts, 2 sc in next st", "1 sc into each of the next 3 sts, 2 sc into the next st", "sc in each of the following 4 sts, inc",
				"increase once", "1 increase", "inc by working 2 sc in next st", "make an increase", "work an inc", "sc-inc", "sc inc in next st",
				"tr in same st as last sc",
			},
			45: {
				"3 sc, all in next st", "(sc, hdc, dc) in next st", "sc, hdc, dc all in next st", "in next st work sc, hdc and dc", "in next st: (sc, hdc, dc)",
				"work [sc, hdc, dc] into next st", "work 3 sc in the next", "inc in each of next 2 sts",
			},
		}},
		{"Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 44.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (43 sc)\nRow 2: Ch 1, %s, turn. (%d sts)\n", map[int][]string{
			10: {
				"sc 10, leave rest unworked", "sc in next 10 sts, turn leaving rem sts unworked", "sc in first 10 sts only",
				"sc in next 10 sts (leave remaining sts unworked)", "sc in the first 10 stitches, do not work remaining sts",
			},
			37: {
				"sl st in first 3 sts, sc in each of next 37 sts, leave last 3 sts unworked",
			},
			40: {
				"sc in each st to within last 3 sts", "sc in each st to within 3 sts of end",
			},
			41: {
				"sc2tog, sc in each st across to last 2 sts, sc2tog", "sc2tog at beg, sc across, sc2tog at end", "dec at beg and end of row",
				"sc across, dec 1 st at each end", "sc2tog over first 2 sts, sc across to last 2 sts, sc2tog over last 2 sts",
				"skip first st, sc to last 2 sts, sk 1, sc in last st",
			},
			42: {
				"sc till last 2 sts, sc2tog",
			},
			43: {
				"sc in next st and till end", "sc in first st and to end", "sc in first st and in each remaining st",
				"sc in first st, then in each st to end of row", "sc all the way across", "sc in every single st", "work across in sc", "work even in sc",
				"sc along the row", "1 sc in each st along", "sc until the end of the row", "one single crochet in each stitch to the end",
				"‘sc in next st, hdc in next st’ across to last st, sc in last st", "'sc, hdc' across to last st, sc in last st",
				"\"sc, hdc\" across to last st, sc", "“sc, hdc” to last st, sc", "<sc, hdc> across to last st, sc in last st",
				"{sc, hdc} rep across to last st, sc in last st", "*sc in next st, hdc in next st*, repeat ** to last st, sc in last st",
				"*sc, hdc* rep to last st, sc", "*sc, hdc; rep from * across until 1 st remains, sc in last st",
				"*sc in next st, hdc in next st, rep from * ending with sc in last st", "sc in next st *hdc in next st, sc in next st* repeat ** across",
				"(sc, hdc) to last st, ending with sc", "sc, hdc, repeat to last st, sc in last st", "sc, hdc, rep to end, ending with a sc",
				"sc, (hdc, sc) till end", "sc in next 5 sts, * ch 3, sk 3, sc in next 5 sts; rep from * to last 6 sts, ch 3, sk 3, sc in last 3 sts",
				"sc in next 3 sts, [ch 2, sk 2, sc in next 3 sts] 8 times", "sc in blo of each st to last st, sc in both loops of last st",
				"working in back loops only, sc in each st across", "sc through back loops only across", "sc across in BL",
				"sc in the back loop of each st to end", "in BLO: sc across", "sc in each st across, working in BLO", "43 sc blo", "BLO sc 43",
				"sc in flo across", "dc in first st, fpdc around next st, *bpdc around next st, fpdc around next st; rep from * to last st, dc in last st",
				"dc, *fpdc, bpdc; rep from * across", "*fpdc around next st, bpdc around next st; rep from * to last st, dc in last st",
				"dc in first st, *fpdc in next st, bpdc in next st* to end",
			},
			44: {
				"sc in each st to the last one, 2 sc in last st",
			},
			45: {
				"sc in next 21 sts, 3 sc in next st, sc in next 21 sts", "sc in each st to center st, 3 sc in center st, sc in each st to end",
				"sc across, inc 1 st at each end", "2 sc in first and last st, sc in each st between",
			},
			57: {
				"[sc 2, inc] 14 times, sc 1", "(sc 2, inc) x14, sc", "(sc 2, inc) * 14, sc", "(sc 2, inc)×14, sc", "14x (sc 2, inc), sc",
				"14 times (sc 2, inc), sc", "14 x [2 sc, inc], 1 sc", "*sc in next 2 sts, inc in next st* 14 times, sc in last st",
				"*2 sc, inc; repeat 14 times total, sc in last st", "*sc 2, inc; rep from * 13 more times, sc",
				"*sc 2, inc; rep from * for a total of 14 times, sc", "(sc 2, inc) repeat 14 times, sc in last st", "repeat (sc 2, inc) 14 times, sc in last st",
				"repeat [sc 2, inc] across to last st, sc in last st", "sc in next 2 sts, 2 sc in next st, *sc in next 2 sts, 2 sc in next st* 13 times, sc",
			},
		}},
		{"Terms: US\nCh 4, sl st in first ch to form a ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: %s (%d sts)\n", map[int][]string{
			6: {
				"dec x 6", "dec around", "sc2tog around", "sc2tog 6 times", "6 dec", "6 invdec", "inv dec x6", "[inv dec] 6 times",
			},
			8: {
				"(sc, dec) x 4", "*sc, dec* 4 times",
			},
			12: {
				"Sl st in next st, ch 3, dc in each of next 11 sts, join.", "Sl st to next st, ch 1, sc in each st around.",
				"Join yarn with a sc in any dc, sc in each st around, join.", "Beg with a standing sc in any st, sc in each st around, join.",
				"Ch 1, sc around, join.", "Sc around. Do not join.", "Ch 3, dc in each dc around, join.",
				"Ch 2 (does not count), hdc in each st around, join to first hdc.",
			},
			18: {
				"Ch 3, [2 dc in next st, dc in next st] 5 times, 2 dc in last st, join in 3rd ch of beg ch-3.",
				"Ch 3, 2 dc in next st, *dc in next st, 2 dc in next st; rep from * around. Join with sl st.",
				"Ch 3, *2 dc in next st, dc in next st* 5 times, 2 dc in last st, sl st in top of first ch 3.",
				"Ch 1, (sc in next st, 2 sc in next st) around, join.", "*Sc, inc* around", "*1 sc, inc* x 6", "[1 sc, 1 inc] x 6", "(1 sc, 1 inc)*6",
				"(sc 1, inc 1) 6 times", "1 sc, 1 inc, repeat x 6", "sc, inc - repeat 6 times", "*1 sc in next st, 2 sc in next st; repeat from * 6 times",
				"(inc, sc) rep 6x", "6 x (1 sc, inc)", "6x [sc, inc]", "sc in 1, inc, repeat around", "[sc in next st, inc in next st] repeat around",
				"2 sc in first st, sc in next st, repeat around",
				"Ch 3 (counts as first dc), 2 dc in next st, (dc in next st, 2 dc in next st) 5 times, sl st to top of ch-3 to join.",
				"Ch 3, *skip next st, 3 dc in next st; rep from * around to last st, sk last st, 2 dc in joining st, join",
			},
			24: {
				"Ch 3 (counts as dc), dc in same st, 2 dc in each st around, join.",
				"Ch 3, dc in same st as joining, 2 dc in each dc around, join with sl st to top of ch-3.",
				"Ch 3, dc in st at base of ch, 2 dc in each st around; join.", "Ch 3, dc in base of ch 3, 2 dc in each st around, sl st to join.",
				"Ch 3, 1 dc in the same place, 2 dc in each of next 11 dc, join.", "Ch 3, dc in same space, *2 dc in next st; rep from * around, join.",
				"Ch 1, 2 sc in each st around, sl st in first sc.", "Join new color in any st, ch 1, 2 sc in each st around, join.",
				"Join B with sc in any st, sc in same st, 2 sc in each st around, join.",
				"Attach color B with sl st in any st, ch 3, dc in same st, 2 dc in each st around, join.",
				"With B, join with standing dc in any st, dc in same st, 2 dc in each st around, join.",
				"Standing dc in any st, dc in same st, 2 dc in each st around, join.", "2 sc in each st around. Do not join, place marker.", "Inc in each st.",
				"Inc x 12.", "12 inc.", "Inc 12 times.", "[Inc] 12 times.", "(inc) x12", "*inc* repeat around",
			},
		}},
	}
	for _, craft := range crafts {
		for n, list := range craft.words {
			for _, w := range list {
				phraseComesTo(t, craft.text, w, n, !strings.Contains(w, "ch ") && w != "picot") // a count may take in chains
			}
		}
	}
}

// phraseComesTo holds a phrase in its place in a text to the count that it must come to, and to no other if it is exact.
func phraseComesTo(t *testing.T, text, w string, n int, exact bool) {
	t.Helper()
	x := Read("t", fmt.Appendf(nil, text, w, n), Options{})
	rep := Check(x)
	require.Equal(t, rep.Read.Lines, rep.Read.Whole, w)
	assert.Empty(t, rep.Findings, "%s: %d", w, n)
	if exact {
		x = Read("t", fmt.Appendf(nil, text, w, n+1), Options{})
		assert.NotEmpty(t, Check(x).Findings, "%s: %d, said to be one more", w, n)
	}
}
