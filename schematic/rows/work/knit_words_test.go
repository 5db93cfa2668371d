package work

import (
	"strings"
	"testing"
)

// A rib in words: knit one, purl one.
func TestARibInWordsIsRead(t *testing.T) {
	for _, w := range []string{"Work 10 rows of knit one, purl one ribbing", "Work in knit one, purl one rib for 10 rows", "Knit 10 rows of knit one, purl one rib"} {
		phraseComesTo(t, "Cast on 46 sts.\n%s.\nNext row: K2tog, k to end. (%d sts)\n", w, 45, true)
	}
}

// Two stitches that are slipped before one are both passed over it (common practice).
func TestBothSlippedStitchesArePassedOver(t *testing.T) {
	for _, w := range []string{"sl 2, k1, psso", "sl2 k1 psso", "sl 2 knitwise, k1, psso", "slip 2, knit 1, pass the slipped sts over", "sl 2 tog, k1, psso"} {
		phraseComesTo(t, "Cast on 40 sts.\nRow 1: *K3, "+w+", k4; rep from * to end.\n%.0sNext row: K. (%d sts)\n", w, 32, true)
	}
}

// A stitch that the text explains is worked where it is named, with a verb, in a bracket and so many times.
func TestAStitchOfTheTextIsWorkedWhereItIsNamed(t *testing.T) {
	for _, w := range []string{"(Nib) 3 times", "work Nib 3 times", "make 3 Nib", "Nib 3 times", "(Nib st) three times", "[Nib] x 3", "work Nib, make Nib, Nib"} {
		phraseComesTo(t, "Special stitches:\nNib: k3tog, yo.\n\nCast on 40 sts.\nRow 1: K2, %s, k to end. (%d sts)\n", w, 37, true)
		phraseComesTo(t, "Special stitches:\nNib stitch: k3tog, yo.\n\nCast on 40 sts.\nRow 1: K2, %s, k to end. (%d sts)\n", w, 37, true)
	}
}

// As many stitches are made in one as it is worked in front and in back.
func TestALegAfterAnotherIsAStitch(t *testing.T) {
	for w, more := range map[string]int{"k into front, back and front of next st": 2, "p into front, back, and front again of next st": 2, "k into front, back, front, back and front of next st": 4} {
		phraseComesTo(t, "Cast on 40 sts.\nRow 1: K2, %s, k to end. (%d sts)\n", w, 40+more, true)
	}
}

// Words about rows and needles that count nothing.
func TestNeedlesAndRowsInWordsCountNothing(t *testing.T) {
	for _, w := range []string{"Divide sts onto 3 needles: 16, 14, 16", "Divide the stitches on 3 needles; 16--14--16", "Distribute sts on 3 dpns: 16, 14 and 16", "K row 1, P row 2 and continue in this way for 4 inches", "Work 6 rows in k1.p1 rib",
		"1st row across all sts: K. 2nd row over all sts: P", "Row 1: K1, [k1, p1]. Repeat from [ to ] until last st, k1"} {
		phraseComesTo(t, "Cast on 46 sts.\n%s.\nNext row: K2tog, k to end. (%d sts)\n", w, 45, true)
	}
}

// A full stop behind an abbreviation ends nothing before the number of what is left.
func TestWhatIsLeftHasItsNumber(t *testing.T) {
	phraseComesTo(t, "Cast on 40 sts.\nRow 1: K20, turn.\nOn these 20 sts k 4 rows. Break yarn.\n%s, k 4 rows.\nNext row: K2tog, k to end. (%d sts)\n", "On rem. 20 sts", 19, false)
}

// Stitches that waited are taken up, and how many they are is not told until a row states it.
func TestStitchesThatWaitedAreTakenUpWithoutTheirNumber(t *testing.T) {
	for _, w := range []string{"Place held sts of thumb on larger double-pointed needles and rejoin yarn", "Return held sts to needles", "Transfer thumb sts from waste yarn to dpns", "Move the held sts to dpns, join yarn", "With RS facing, place held sts onto dpns", "Divide held 12 sts over 3 needles",
		"Put thumb stitches back on needles", "Slip sts from holder to three dpns", "Rejoin yarn to held sts", "Carefully remove the waste yarn and put the live sts on hold on two dpns"} {
		phraseComesTo(t, "Hand\nCast on 30 sts and join in the round.\nK 4 rounds.\nNext round: Place first 12 sts of round on hold on waste yarn, k to end of round. (18 sts)\nBreak yarn.\n\nThumb\n%s.\nRound 1: K all sts, pick up and k 4 sts along edge of hand. (16 sts)\nRound 2: K2tog, k to end. (%d sts)\n", w, 15, true)
	}
}

// A gap that is cast over where stitches were put on a holder leaves the rest of the round to be worked.
func TestTheRestIsWorkedBehindAGap(t *testing.T) {
	for _, w := range []string{"remove 15 thumb stitches and put them on a stitch holder. Cast on 2 stitches over the gap", "place first 15 sts on a holder, cast on 2 sts over the gap"} {
		phraseComesTo(t, "Cast on 57 sts and join in the round.\nKnit 5 rounds.\nNext round: %s. (%d sts)\n", w, 44, true)
	}
}

// What a short name stands for may be told behind a dash, before there is a heading.
func TestShortNamesBehindDashesAreNoRows(t *testing.T) {
	for _, w := range []string{"K– knit; P– purl; rep – repeat; st(s) – stitch(es)", "alt – alternate; beg – beginning; dec – decrease; inc – increase;", "k - knit, p - purl, st - stitch, tog - together", "The rows that follow are written to begin and end with k1, p1, k1"} {
		phraseComesTo(t, "Cast on 46 sts.\n%s.\nRow 1: K2tog, k to end. (%d sts)\n", w, 45, true)
	}
}

// A crossing that is told in a bracket behind its name, in any usual spelling, is not asked for.
func TestACrossingInABracketIsNotAskedFor(t *testing.T) {
	for _, w := range []string{"c2b (sl1 st on cable needle and leave at back, k1, p1 st from cable needle)", "c2f (slip 1 st on dp needle and leave at front of work, p1, k1 from dp needle)", "c2f (sl 1 st to dpn, hold in front, k1, k1 from dpn)"} {
		phraseComesTo(t, "Cast on 46 sts.\nRow 1: P3, %s, p to last 2 sts, p2tog. (%d sts)\n", w, 45, true)
	}
}

// A row that ends so many rows is none up to which the work goes.
func TestSoManyRowsEndWithARowOfThePattern(t *testing.T) {
	for _, w := range []string{"Work pattern rows 1 and 2 for 13 rows ending with row 2", "Work in pattern for 12 rows, ending with row 2", "Rep rows 1 and 2 for 6 rows, ending with row 2"} {
		phraseComesTo(t, "Cast on 46 sts.\nRow 1: K.\nRow 2: P.\nWork rows 1 and 2 three times.\n%s.\nNext row: K2tog, k to end. (%d sts)\n", w, 45, false)
	}
}

// Two stretches of a rib alone are the whole row, again and again.
func TestTheTwoStretchesOfARibAreTheRow(t *testing.T) {
	for _, w := range []string{"K2, P2", "P2, K2", "k1, p1", "K3, P2", "Join contrast yarn and K1, P1 (rib)"} {
		phraseComesTo(t, "Cast on 46 sts.\nRow 1: %s\nRow 2: P. (%d sts)\n", w, 46, true)
	}
}

// What is told beside the work of a row or behind it.
func TestWordsBesideKnittedRowsCountNothing(t *testing.T) {
	for _, w := range []string{"Row 1: K30, working over 16 centre sts, k7, k2tog, k7", "Row 1: P2, k2 for 1 inch, dec 1 stitch after the last row of ribbing", "Row 1: K2tog, k to end. There are three sets of 15 sts on the needle", "Row 1: K2tog, knit center 44 sts"} {
		phraseComesTo(t, "Cast on 46 sts.\n%s.\nRow 2: P. (%d sts)\n", w, 45, false)
	}
}

// A range of rows whose dash stands free, and no sign behind it.
func TestARangeOfPlainRowsHasNoStitches(t *testing.T) {
	for _, w := range []string{"Row 2 – 4 knit", "Rows 2 - 4 purl", "Row 2 - 4 k", "Row 2: And every other row knit"} {
		phraseComesTo(t, "Cast on 46 sts.\nRow 1 knit\n%s\nRow 5 k2tog, k to end (%d sts)\n", strings.ReplaceAll(w, "other row knit", "other row knit\nRow 3: k"), 45, true)
	}
}

// A letter and a number that name a diagram are no count.
func TestADiagramIsNoCount(t *testing.T) {
	for _, w := range []string{"See diagram A.1. The diagram shows all rows"} {
		phraseComesTo(t, "Cast on 46 sts.\n%s.\nRow 1: k2tog, k to end. (%d sts)\n", w, 45, true)
	}
}

// Moss stitch in words works each stitch.
func TestMossStitchInWordsWorksEachStitch(t *testing.T) {
	for _, w := range []string{"Knit the purl stitches and purl the knit stitches", "Purl the knit sts and knit the purl sts", "Knit the purl stitch and purl the knitted stitch", "K over the purl sts, p over the knit sts"} {
		phraseComesTo(t, "Cast on 46 sts.\nRow 1: *K1, p1; rep from * to end.\nRow 2: %s.\nRow 3: K2tog, k to end. (%d sts)\n", w, 45, false)
	}
}
