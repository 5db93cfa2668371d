package work

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A stop behind a chain that is worked into ends the sentence: the number behind it is the row's count.
func TestACountStandsBehindTheStopOfAPlace(t *testing.T) {
	for _, s := range []string{"sc in 2nd ch from hook and each ch", "sc in 2nd ch from hook and in each ch", "sc in 2nd ch from hook, sc in every ch", "sc in 2nd ch from hook and in each remaining ch",
		"sc in 2nd ch from hook, sc in next 18 ch, sc in last ch"} {
		phraseComesTo(t, "Terms: US\nSizes: S (M)\nCh 21 (21).\nRow 1: %s. %d (20) sc\n", s, 20, true)
		phraseComesTo(t, "Terms: US\nRow 1: Ch 21, %s. %d sc. Turn.\n", s, 20, true)
	}
}

// What is called a row begins in a ring as well as a round does: 6 and then 12.
func TestARowBeginsWithARing(t *testing.T) {
	for _, s := range []string{"Row 1: Magic ring, 6 sc (6)", "Row 1: MR, 6 sc (6)", "Row 1: Make a magic ring, sc 6 (6)", "Row 1: magic circle, 6sc [6]", "R1: magic ring; 6 sc (6)", "Row 1: Magic ring. 6 sc. (6)"} {
		phraseComesTo(t, "Terms: US\nBody\n%s\nRow 2: inc around (%d)\n", s, 12, true)
		phraseComesTo(t, "Terms: US\nHead\nRow 1: 5 sc in magic ring (5)\nFasten off.\nBody\n%s\nRow 2: inc around (%d)\n", s, 12, true)
	}
}

// Four sizes, of which the third has one less: 30, 34, 37 and 42.
func TestSizesAreNamedByTheirPlace(t *testing.T) {
	const text = "Terms: UK\nTo fit bust 32 (34, 36, 38) in\nMake 31 (35, 39, 43) ch.\nRow 1: 1dc in 2nd ch from hook and each ch, turn. 30 (34, 38, 42) dc.\n" +
		"%s\nRow 3: 1ch, 1dc in each dc, turn. %d (34, 37, 42) dc.\n"
	const even, dec = "\nRow 2: 1ch, 1dc in each dc, turn.", "\nRow 2: 1ch, 1dc in each dc to last 2 dc, dc2tog, turn. 37 dc"
	for _, s := range []string{
		"First, Second and Fourth Sizes only:" + even + "\nThird Size only:" + dec + "\nAll sizes:",
		"1st, 2nd and 4th sizes only" + even + "\n3rd size only." + dec + "\nAll sizes",
		"For 1st, 2nd & last sizes only:" + even + "\nFor third size only:" + dec + "\nFor all sizes:",
		"Two smallest sizes:" + even + "\nThird size:" + dec + "\nLargest size:" + even + "\nAll sizes:",
		"First two sizes only:" + even + "\nSecond largest size only:" + dec + "\nLargest size only:" + even + "\nAll sizes:",
		"First 2 sizes only:" + even + "\n2nd largest size only:" + dec + "\nLast size only:" + even + "\nAll sizes:",
	} {
		phraseComesTo(t, text, s, 30, true)
	}
}

// Slip stitches that begin a row pass what they go over, and as many stitches may be left at its end: of 30, 20 and then 14.
func TestARowThatBeginsWithSlipStitchesLeavesItsEnd(t *testing.T) {
	const text = "Terms: US\nRow 1: Ch 31, sc in 2nd ch from hook and in each ch across, turn. (30 sc)\n%s\nNext row: Ch 1, sc in each sc across. (%d sc)\n"
	for _, s := range []string{
		"Row 2: Sl st across 5 sts, sc to last 5 sts, turn.\nRow 3: Sl st across 3 sts, sc to last 3 sts, turn.",
		"Row 2: Sl st in first 5 sts, ch 1, sc in next 20 sts, turn. (20 sc)\nRow 3: Sl st in first 3 sts, ch 1, sc in next 14 sts, turn. (14 sc)",
		"Row 2: Sl st in each of first 5 sc, sc in next 20 sc; leave rem 5 sc unworked. (20 sc)\nRow 3: Sl st across 3 sts, sc to within 3 sts of end. (14 sc)",
		"Row 2: Sl st in 5 sts, ch 1, sc in each st to last 5 sts, turn leaving them unworked. (20 sc)\nRow 3: Sl st over 3 sc, sc in each sc to within 3 sc of end, turn.",
	} {
		phraseComesTo(t, text, s, 14, true)
	}
}

// Six times 'sc, inc' around 12 are 18, whatever sign stands between a bracket and how often it is worked.
func TestHowOftenStandsBehindAnySign(t *testing.T) {
	const text = "Terms: US\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc around. (12)\nRnd 3: %s (%d)\n"
	for _, s := range []string{"(1 sc, 1 inc) – 6 times", "(sc, inc) - x6", "[sc, inc]: 6 times", "(sc, inc) / six times", "(sc, inc) times 6", "*sc, inc* – 6 times", "Repeat *1 sc, inc* around",
		"Inc every other st", "Inc in every 2nd st", "*sc in next st, 2 sc in next st; rep from * around, 18 sc."} {
		phraseComesTo(t, text, s, 18, s[len(s)-1] != '.')
	}
}

// 24 dc around a square of four groups of 3: 2 groups in each corner, wherever the round begins.
func TestARoundBeginsInACorner(t *testing.T) {
	const text = "Terms: US\nCh 4, join with sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, join with sl st in top of ch-3. (12 dc, 4 ch-2 sps)\n" +
		"Rnd 2: %s *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around, ch 1, join.\nRnd 3: Ch 1, sc in each dc and in each ch around. (%d sc)\n" // 24 dc, 4 x 2 and 4 chains
	for _, s := range []string{"(Sl st, ch 3, 2 dc, ch 2, 3 dc) in next ch-2 sp,", "(Ch 3, 2 dc, ch 2, 3 dc) in first ch-2 sp,", "Join in any ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp,",
		"Join in any ch-2 sp with a sl st, (ch 3, 2 dc, ch 2, 3 dc) in same sp,", "Join B with a standing dc in any ch-2 sp, (2 dc, ch 2, 3 dc) in same sp,",
		"With B, join in ch-2 sp, ch 3, 2 dc, ch 2, 3 dc in same sp,"} {
		phraseComesTo(t, text, s, 36, false)
		phraseComesTo(t, text[:len(text)-len("Rnd 3: Ch 1, sc in each dc and in each ch around. (%d sc)\n")-2]+". (%d dc)\n", s, 24, true)
	}
}

func TestACountStandsLastInItsSentence(t *testing.T) {
	for _, s := range []string{"Sc in 2nd ch from hook and in each ch across, %d sc, turn.", "Sc in 2nd ch from hook, sc in next 19 ch, %d sc, turn.", "Sc in 2nd ch from hook and in each ch %d sc"} {
		phraseComesTo(t, "Terms: US\nCh 21.\n%s"+"Row 1: "+s+"\nRow 2: Ch 1, turn, sc in each sc across. (20 sc)\n", "", 20, false)
	}
}

// Pieces are no popcorns; rows that do not follow each other have the count of the last of them; a row may be worked again in another colour.
func TestWordsBesideTheRows(t *testing.T) {
	phraseComesTo(t, "Terms: US\nHead\n1) 6 sc in MR = 6\n2) *inc* = 12\n\n%s\n\n\nBoth are the same size. Start with black:\n1) 6 sc in MR = 6\n2) *inc* = %d\n", "Legs & arms (4 pcs):", 12, true)
	const flat = "Terms: US\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, ch 1, turn. (12 sc)\nRow 2: 2 sc in first sc, sc across to last sc, 2 sc in last sc, ch 1, turn. (14 sc)\n"
	phraseComesTo(t, flat+"%s\nRow 9: Sc in each sc across. (%d sc)\n", "Rows 3, 5 & 7: Sc in each sc across, ch 1, turn. (18 sc at end of row 7)\nRows 4, 6 & 8: Rep row 2. (20 sc at end of row 8)", 20, true)
	for _, s := range []string{"Work Row 3 in A.", "Work row 3 with color B.", "Row 3 in colour A.", "Work row 3 with MC."} {
		phraseComesTo(t, "Terms: US\nWith MC, ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, ch 1, turn. (12 sc)\nRow 2: Sc in each sc across, ch 1, turn.\nRow 3: 2 sc in first sc, sc across, ch 1, turn. (13 sc)\nRows 4-5: %s\nRow 6: Sc in each sc across. (%d sc)\n", s, 15, true)
	}
	for _, s := range []string{"sc in each st, inserting hook in both loops.", "sc in each st, inserting hook in back loop only.", "4 sc with white, 3 with black, 5 with white.", "4 sc in white, 3 in black, 5 in white."} {
		phraseComesTo(t, "Terms: US\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc around. (12)\nRnd 3: %s (%d)\n", s, 12, true)
	}
}

// 36 stitches take 'dec, 4 sc' six times, which leaves 30; 'dec, 5 sc' five times, with one stitch left that is no decrease.
func TestADecreaseOverTheLastStitchIsNone(t *testing.T) {
	const text = "Terms: US\nRnd 7: 36 sc in ring. (36)\nRnd 8: %s (%d sts)\n"
	for _, s := range []string{"*dec, sc in each of next 4 sts*", "*dec, sc in next 4 sts; rep from * around.", "(sc2tog, sc 4) around"} {
		phraseComesTo(t, text, s, 30, true)
	}
	for _, s := range []string{"*dec, sc in each of next 5 sts*", "*dec, sc in next 5 sts; rep from * around.", "(dec, sc 5) around"} {
		if list := check(fmt.Sprintf(text, s, 30)); len(list) != 1 {
			t.Error(s, list)
		}
	}
}

// What rows are worked on is no count of the row before them.
func TestRowsAreWorkedOnAPart(t *testing.T) {
	list := check("Terms: UK\nRow 1: Make 34 ch, 1 tr in 4th ch from hook, 1 tr in each ch to end. (32 tr)\nNext row: Pattern 18 tr, turn. Work 9 more rows on 18 tr. Fasten off.\n")
	for _, f := range list {
		if f.Kind == "rows/stated" {
			t.Error(f)
		}
	}
}

// Two of four sizes have one less: 40, 44, 47 and 51.
func TestTheLastSizesAreAsManyAsItSays(t *testing.T) {
	const text = "Hat\nSizes: XS (S, M, L)\nCast on 40 (44, 48, 52) sts.\nRow 1: K. 40 (44, 48, 52) sts\n%s:\nRow 2: K2tog, k to end. 39 (43, 47, 51) sts\nAll sizes:\nRow 3: Knit. %d (44, 47, 51) sts\n"
	for _, s := range []string{"Last 2 sizes only", "Last two sizes only", "Two largest sizes only"} {
		require.Empty(t, warnings(fmt.Sprintf(text, s, 40)), s)
	}
}

// What a text says of a multiple may be all that stands in a line.
func TestAMultipleAloneIsNoRow(t *testing.T) {
	for _, s := range []string{"((multiple of 8 sts))", "- - multiple of 4", "a (multiple of 8 sts)", "= = multiple of 6 sts plus 2 sts."} {
		require.NotPanics(t, func() { check("Cast on 20 sts.\n" + s + "\nRow 1: K. (20 sts)\n") }, s)
	}
}

// 33 tr less a decrease at each end are 31; (1 dc, 1 ch) stands for the first tr. A triple decrease at each end of 33 leaves 29.
func TestADecreaseTakesTheStitchesThatItsWordsName(t *testing.T) {
	const text = "Terms: UK\nSpecial abbreviations\n%s\nBack\nMake 35 ch.\nRow 1: Miss 3 ch (counts as one tr), 1 tr in each ch to end. 33 tr.\nRow 2: (1 dc, 1 ch) in first tr, Dec, 1 tr in each tr to last %d sts, Dec, 1 tr in last st. %s sts.\nRow 3: (1 dc, 1 ch) in first st, 1 tr in each tr to end. %[3]s tr.\nRep last row twice.\n"
	for how, takes := range map[string]int{
		"Dec - * yoh, draw up a lp in next st, yoh and draw through 2 lps, rep from * in next st, yoh and draw through all 3 lps on hook.":                 2,
		"Dec = (yoh, draw up a lp in next st, yoh and draw through 2 lps) twice, yoh and draw through all 3 lps on hook.":                                  2,
		"Dec = * yoh, draw up a lp in next tr, yoh and draw through 2 lps, rep from * in each of next 2 tr, yoh and draw through all 4 lps on hook.":       3,
		"Dec = [yoh, draw up a lp in next st, yoh and draw through 2 lps] 3 times, yoh and draw through all 4 lps on hook.":                                3,
		"Dec = yoh, draw up a lp in next st, yoh, draw through 2 lps, yoh, draw up a lp in same st, yoh, draw through 2 lps, yoh, draw through all 3 lps.": 1,
	} {
		left := 33 - 2*(takes-1)
		if list := check(fmt.Sprintf(text, how, takes+1, fmt.Sprint(left))); len(list) > 0 {
			t.Error(how, list)
		}
		if list := check(fmt.Sprintf(text, how, takes+1, fmt.Sprint(left+1))); len(list) == 0 {
			t.Error(how, "one more was not noticed")
		}
	}
}

// 20 (26) stitches: 2 more for size a, 4 more for size b, each told below its letter; the line after it is for both.
func TestALetterAloneSaysForWhichSizeALineIs(t *testing.T) {
	const text = "Terms: UK\nThe instructions are written for the smaller size (a). The larger size (b) is written in brackets.\n\nFront\nCast on 20 (26) stitches.\n1st Row: Knit.\n(a)\nK1, inc in next st, k16, inc in next st, k1. (22 stitches).\n(b)\nK1, inc in next st, k22, inc in next st, k1. (%d stitches).\nNext Row: K11 (14), turn and work on these stitches.\n"
	if list := check(fmt.Sprintf(text, 28)); len(list) > 0 {
		t.Error(list)
	}
	if list := check(fmt.Sprintf(text, 29)); len(list) != 1 || list[0].Sizes[0] != "b" {
		t.Error(list)
	}
}

// Slipped and knitted: 2 stitches made one. 72 - 8 are 64; with the pass over told it is what it says, 3 stitches made one.
func TestSlippedAndKnittedAreOne(t *testing.T) {
	phraseComesTo(t, "Cast on 72 sts.\nRow 1: %s (%d sts)\n", "*sl2k, k14, k2tog; rep from * to end.", 64, true)
	phraseComesTo(t, "Cast on 72 sts.\nRow 1: %s (%d sts)\n", "*K2, sl2k, k1, p2sso, k1; rep from * to end.", 48, true)
}

// The loops that are left of the first chain are its chains; a cycle of rows may be worked consecutively; right sides are no cable.
func TestLoopsOfTheFirstChain(t *testing.T) {
	const text = "Terms: US\nCh 21.\nRow 1: 1 sc in 2nd ch from hook, 1 sc in each ch to end. 20 sc. Turn.\nRow 2: Ch 1, 1 sc in each sc across. 20 sc. Turn.\n%s\nNext row: Ch 1, 1 sc in each sc across. %d sc.\n"
	for _, s := range []string{"Rows 3-6: [Rep rows 1-2 consecutively] twice.", "Rows 3-6: Rep rows 1 and 2 consecutively twice."} {
		phraseComesTo(t, strings.Replace(text, "Row 1: 1 sc in 2nd ch from hook, 1 sc in each ch to end.", "Set-up row: 1 sc in 2nd ch from hook, 1 sc in each ch to end.\nRow 1: Ch 1, 1 sc in each sc across.", 1), s, 20, true)
	}
	for _, s := range []string{"1 sc in each rem loop of starting ch", "1 sc in each free lp of foundation ch"} {
		phraseComesTo(t, text, "Edging\nRow 1: Join yarn with sl st in first ch of starting ch, ch 1, 1 sc in same sp, "+s+", turn. 20 sc.", 20, true)
	}
	if list := check("Cast on 20 sts.\nKnit 4 rows.\nCast off.\nSew up, rt sides together.\n"); len(list) > 0 {
		t.Error(list)
	}
}

// Bound off at the beginning of both rows, with 'at' and 'of' or without: of 45, 39 are left, and the next row is a right-side row again.
func TestBeginningNeedsNoAt(t *testing.T) {
	for _, s := range []string{"BO 3 sts beg next 2 rows.", "Bind off 3 sts beg of next 2 rows.", "Cast off 3 sts at beg next 2 rows.", "BO 3 sts at beg of next 2 rows."} {
		phraseComesTo(t, "Cast on 45 sts.\nWork 4 rows st st, ending with a WS row.\n%s\nNext row (RS): K3, ssk, k to last 5 sts, k2tog, k3. %d sts.\n", s, 37, true)
	}
}

// A line that tells its rows and no more is whole: 20 less 5, and 21 of which one is worked behind the last decrease.
func TestALineOfRowsIsWhole(t *testing.T) {
	for _, s := range []string{"Knit 2 rounds", "K 2 rounds", "Knit 2 more rnds"} {
		phraseComesTo(t, "Cast on 20 sts.\nJoin.\n%s\n*K2, k2tog* around (%d sts)\nKnit 2 rounds\n", s, 15, true)
		phraseComesTo(t, "Cast on 21 sts.\nJoin.\n%s\n*K2, k2tog* around (%d sts)\nKnit 2 rounds\n", s, 16, true)
	}
}

// A number that a row of another size has is missing in no other.
func TestARowOfOneSizeLeavesTheOthersKnown(t *testing.T) {
	for _, s := range []string{"First size only:\nRow 2: K2tog, k to last 2 sts, k2tog. 58 sts.\nAll sizes:", "Size S only:\nRow 2: K2tog, k to last 2 sts, k2tog. 58 sts.\nAll sizes:"} {
		phraseComesTo(t, "Sizes: S (M, L)\nCast on 60 (62, 64) sts.\nRow 1: Knit.\n%s\nRow 3: Knit. 58 (%d, 64) sts.\n", s, 62, true)
	}
}

// A remark says of which part it holds, and is no chain: the row over 12 chains has 10.
func TestARemarkOnChainsNamesItsPart(t *testing.T) {
	for _, s := range []string{"Ch2 does not count as first st throughout sleeve", "The beginning ch 2 does not count as a stitch throughout the sleeve.", "Ch 2 does not count as a st throughout left front."} {
		phraseComesTo(t, "Terms: US\nSleeve\n%s\nRow 1: Ch 12, hdc in 3rd ch from hook and in each ch across. (10)\nRow 2: Ch 2, hdc in each st across. (%d)\n", s, 10, true)
	}
}

// Of 10 stitches a decrease over the 4th and the 5th takes one, if the 4th is worked already: 4, 1 and 5 over the rest.
func TestADecreaseBeginsInTheSameStitch(t *testing.T) {
	for _, s := range []string{"hdc2tog in same and next st", "hdc2tog over same st and next st", "work hdc2tog in same st as last hdc and in next st", "hdc2tog worked over the same st and the next st"} {
		phraseComesTo(t, "Terms: US\nRow 1: Ch 11, hdc in 2nd ch from hook and in each ch across. (10)\nRow 2: Ch 1, hdc in next 4 sts, %s, hdc in last 5 sts. (%d)\n", s, 10, true)
	}
}

// Without the row below, what is worked into it is as many as the row says: 50, 2, 12 along the neck and 9.
func TestARowGoesOnAlongAnEdge(t *testing.T) {
	phraseComesTo(t, "Terms: US\nBack\nRow 1: Ch 11, hdc in 2nd ch from hook and each ch to end. (10)\nFasten off.\n\nEdging\nAttach yarn at bottom right.\n%s (%d)\n",
		"Row 1: Ch 1, hdc in 50 sts, 2 hdc in next st, 12 hdc across neck, hdc in 9 sts.", 73, false)
}

// A round that only says how many stitches it is works as many: 12 in each of two rounds.
func TestARoundOnlySaysItsStitches(t *testing.T) {
	for _, s := range []string{"12 sts round", "12 sts around", "12 sts", "12 stitches all round."} {
		phraseComesTo(t, "Terms: US\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc around. (12)\nRnd 3: %s\nRnd 4: sc in each st around. (%d)\n", s, 12, true)
	}
	assert.Len(t, warnings("Terms: US\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc around. (12)\nRnd 3: 11 sts round\n"), 1)
}

// The chain that is passed is that of the row below: of 12 sc with a chain between two, every other one.
func TestAChainIsPassed(t *testing.T) {
	for _, s := range []string{"skip next sc, skip ch 1", "skip next sc, skip the ch-1", "skip next sc, skip next ch 1"} {
		phraseComesTo(t, "Terms: US\nRow 1: Ch 24, sc in 2nd ch from hook and in each ch across. (23)\nRow 2: Ch 1, sc in first sc, *ch 1, skip next sc, sc in next sc; rep from * across. (12 sc)\n"+
			"Row 3: Ch 1, sc in first sc, sc in next ch-1 sp, *%s, sc in next sc, sc in next ch-1 sp; rep from * to last sc, sc in last sc. (%d sc)\n", s, 13, true)
	}
}

// A yarn that has a number is no cable and no stitch; the yarn C is no increase.
func TestAYarnHasANumber(t *testing.T) {
	for _, s := range []string{"With C1, ch 1, sc in each sc across.", "Using C2, ch 1, sc in each sc across.", "In C, ch 1, sc in each sc across.", "Join C2, ch 1, sc in each sc across. Drop C1.",
		"Ch 1, with C1 sc in next 10 sc, with C2 sc in next 10 sc."} {
		phraseComesTo(t, "Terms: US\nWith C1, ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20)\nRow 2: %s (%d)\n", s, 20, true)
	}
}

// Of 31 chains and one more the last is passed: 31 are worked.
func TestTheChainJustMadeIsPassedInTheNextLine(t *testing.T) {
	for _, s := range []string{"Ch 31, ch 1 more.\nRow 1: Sk ch just made, sl st in each ch.", "Ch 31, then ch 1 more to turn.\nRow 1: Skip the ch just made, sc in each ch across.", "Ch 31.\nRow 1: Ch 1, sk ch just made, sc in each ch across."} {
		phraseComesTo(t, "Terms: US\n%s (%d)\n", s, 31, true)
	}
}

// Six times 'sc, inc' around 12 are 18, if the number stands first, and if only the last stitch seems to be worked so often.
func TestHowOftenStandsFirst(t *testing.T) {
	for _, s := range []string{"6 (sc, inc)", "6*(sc, inc)", "6x (1 sc, 1 inc)", "6 × (1 sc, 1 inc)", "3 (sc, inc), 3 (sc, inc)", "sc, inc x6", "sc, inc (6 times)"} {
		phraseComesTo(t, "Terms: US\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: inc around (12)\nRnd 3: %s (%d)\n", s, 18, true)
	}
}

// One more in the last stitch of 20, and words that say how it is made.
func TestHowAnIncreaseIsMadeIsTold(t *testing.T) {
	for _, s := range []string{"increasing 1 sc in last sc", "increasing in last st", "increasing 1 sc in last sc—to inc 1 sc, make 2 sc in 1 sc", "increasing 1 sc at end (to inc 1 sc, make 2 sc in 1 sc)"} {
		phraseComesTo(t, "Terms: US\nRow 1: Ch 21, sc in 2nd ch from hook and in each ch across. (20)\nRow 2: Ch 1, sc in each sc across, %s. (%d sc)\n", s, 21, true)
	}
}

// A sentence that only slips into the first stitch closes its round, and is none of its own.
func TestASentenceClosesTheRound(t *testing.T) {
	for _, s := range []string{"Ch 2, 6 sc in 2nd ch from hook. Sl st in first sc. (6)", "Using yarn A ch 2, 6 sc into second ch from hook. Ss into first sc. (6)", "Ch 4. Sl st to first ch. 6 sc in ring. Sl st to first sc. (6)"} {
		phraseComesTo(t, "Terms: US\n%s\nRnd 2: 2 sc in each st around. (%d)\n", s, 12, true)
	}
}

// The first round goes into the first of a few chains: 11 and the three chains that are passed, or 9 alone.
func TestTheFirstRoundGoesIntoTheFirstChain(t *testing.T) {
	for _, s := range []string{"Rnd 1: Ch 4, 11 dc in first ch, join.", "Ch 4.\nRnd 1: 11 dc in first ch, join.", "Rnd 1: Ch 4, 11 dc in 1st ch made, join."} {
		phraseComesTo(t, "Terms: US\n%s (%d)\nRnd 2: Ch 3, dc in same st, 2 dc in each st around, join. (24)\n", s, 12, true)
	}
	phraseComesTo(t, "Terms: US\n%s (9)\nRnd 2: Ch 2, 2 hdc in each st around, join. (%d)\n", "Rnd 1: Chain 3, 9 hdc in first ch. Join.", 18, true)
}

// A sentence in brackets behind a size is no size more.
func TestASentenceIsNoSize(t *testing.T) {
	x := Read("t", []byte("Size: approx. women's 8. (Can be made to any size by working more rows.)\nTerms: US\nRow 1: Ch 21, sc in 2nd ch from hook and in each ch. (20)\n"), Options{})
	assert.Less(t, len(x.Sizes.Names), 2)
}

// Two in each of eight spaces, and a chain between them: 16.
func TestChainsStandBetweenStitchesInOnePlace(t *testing.T) {
	for _, s := range []string{"*2 dc with ch 2 between in next loop, ch 2; rep from * around", "*2 dc with ch-2 between each in next loop, ch 2; rep from * around", "*2 dc separated by ch 2 in next loop, ch 2; rep from * around", "2 dc with 2 ch between in each loop around"} {
		phraseComesTo(t, "Terms: US\nCh 6, join.\nRnd 1: Ch 1, 8 sc in ring, join. (8)\nRnd 2: *Ch 4, sc in next sc; rep from * around. (8 sc)\nRnd 3: %s, join. (%d dc)\n", s, 16, true)
	}
}

// Bound off where a row begins, though the words stand first: of 67, 4 are bound off.
func TestARowBeginsBindingOff(t *testing.T) {
	for _, s := range []string{"At the beg of the next row bind off 4 sts, work to end of row.", "At beg of row, cast off 4 sts, k to end.", "At the beginning of this row bind off 4 sts, k to end of row."} {
		phraseComesTo(t, "Cast on 67 sts.\nRow 1: Purl.\nRow 2: %s\nRow 3: Purl. %d sts.\n", s, 63, true)
	}
}

// Stitches told by their yarns alone, the verb before them said once: 11 and 11 twice, and 11 more, are 55.
func TestAVerbLeadsToYarns(t *testing.T) {
	for _, s := range []string{"K (11 B, 11 W) to last 11 sts, 11 B", "K *11 B, 11 W; rep from * to last 11 sts, 11 B", "P (11 B, 11 W) twice, 11 B", "K 11 B, (11 W, 11 B) twice", "*11 L, 11 D; rep from * to last 11 sts, 11 L", "K (11 MC, 11 CC) to last 11 sts, 11 MC"} {
		phraseComesTo(t, "Cast on 55 sts.\nRow 1: %s. %d sts.\n", s, 55, true)
	}
}

// What one name stands for ends where the next is told: two stitches cross two.
func TestACableEndsWhereTheNextNameIsTold(t *testing.T) {
	for _, s := range []string{"; dec: decrease; k2tog - knit 2 sts together.", "; K2tog = knit 2 sts together; p: purl 2 sts.", ""} {
		phraseComesTo(t, "Abbreviations: C4F: slip 2 sts to cable holder and hold in front, k2 sts from left needle, k2 sts from holder%s\nCast on 16 sts.\nRow 1: *K4, c4f; rep from * to end. %d sts.\n", s, 16, true)
	}
}

// An edge may stand before what is done at it: of 30, one at each of two rows is taken away, and nothing is asked.
func TestAnEdgeStandsBeforeTheShaping(t *testing.T) {
	for _, s := range []string{"At neck edge dec 1 st every other row twice.", "At neck edge, dec 1 st every other row twice.", "Dec at neck edge 1 st every other row twice.", "On armhole edge decrease 1 st every 2nd row 2 times."} {
		phraseComesTo(t, "Cast on 30 sts.\nWork even for 2 in.\n%s %d sts.\n", s, 28, true)
	}
}

// A word that print has cut goes on in the next line.
func TestAWordIsCutWhereTheLineEnds(t *testing.T) {
	for _, s := range []string{"Row 1: K1, p1, re-\npeat until you reach the last stitch, k1.", "Row 1: *K1, p1; re-\npeat from * to last st, k1.", "Row 1: K1, *p1, k1; repeat from * to the end.\nRows 2 to 5: re-\npeat row 1.", "Row 1: K1, pur-\nl to the last st, k1."} {
		phraseComesTo(t, "Cast on 39 sts.\n%s\nNext row: Knit. %d sts.\n", s, 39, true)
	}
}

// Words behind a row, in its line, work it and the one before once more: the next is row 5.
func TestARowIsRepeatedInItsOwnLine(t *testing.T) {
	for _, s := range []string{"Repeat these last 2 rows once more.", "Repeat last 2 rows once more.", "Rep the previous two rows 1 time more.", "Repeat the 2 rows above once more.", "Work these 2 rows once more.", "Repeat Rows 1 and 2 once.", "Rep Rows 1-2 once more."} {
		phraseComesTo(t, "Cast on 31 sts.\nRow 1: Knit.\nRow 2: K1, *p1, k1; rep from * across. %s Row 5: K2tog, k to end. %d sts.\n", s, 30, true)
	}
	for _, s := range []string{"(repeat these 2 rows once more)", "[Rep rows 1 and 2 once more.]", "(Rep last 2 rows once more)."} {
		const rows = "Cast on 31 sts.\nRow 1: Knit.\nRow 2: K1, *p1, k1; rep from * across. %s\nRow %d: K2tog, k to end.\n"
		phraseComesTo(t, rows, s, 5, false)
	}
}

// A word that nothing has makes no stitch of the one before it: 10 and 10 are the 20 that there are.
func TestAWordUnknownBehindSlipIsNoStitch(t *testing.T) {
	for _, s := range []string{"slip makrer", "then slip wobble", "slip makrer and"} {
		rep := Check(Read("t", fmt.Appendf(nil, "Cast on 20 sts.\nRow 1: K10, %s, k10. (20 sts)\nRow 2: Purl. 20 sts.\n", s), Options{}))
		assert.Empty(t, rep.Findings, s)
		rep = Check(Read("t", fmt.Appendf(nil, "Cast on 20 sts.\nRow 1: K10, sl 1, k10. (20 sts)\nRow 2: Purl. 20 sts.\n"), Options{}))
		assert.NotEmpty(t, rep.Findings)
	}
}

// A row of one size that print cuts is that size's to its end: 24 become 28 in the second, and stay so.
func TestARowOfOneSizeIsCutByPrint(t *testing.T) {
	for _, s := range []string{"*sc in next 5 sc, 2 sc\nin next sc. Rep from * around. Join to\nfirst sc. 28 sc.", "*sc in next 5 sc.\n2 sc in next sc. Rep from * around. Join to first sc.\n28 sc.", "*sc in next 5 sc, 2 sc in next sc.\nRep from * around. Join to first sc. 28 sc."} {
		phraseComesTo(t, "Terms: US\nSizes: 2 (4)\nNotes: Ch 1 does not count as a stitch.\nCh 4, join with sl st to form ring.\n1st rnd: Ch 1, 12 sc in ring. Join.\n2nd rnd: Ch 1, 2 sc in each sc. Join to first sc. 24 sc.\nSize 4 only: 3rd rnd: Ch 1, %s\nAll sizes: Next rnd: Ch 1, sc in each sc around. 24 (%d) sc.\n", s, 28, true)
	}
}

// What a row says of its chain does not bind a round before it: 12 in the ring are 12, and twice 12 are 24.
func TestAChainCountsFromTheRowThatSaysSo(t *testing.T) {
	for _, s := range []string{"Ch 1, 12 hdc in ring, join to first hdc. (12 hdc)\nRnd 2: Ch 1 (counts as 1st hdc), hdc in same st, 2 hdc in each st around, join.", "Ch 3, 12 dc in ring, join to first dc. (12 dc)\nRnd 2: Ch 3 (counts as first dc), dc in same st, 2 dc in each dc around, join."} {
		phraseComesTo(t, "Terms: US\nCh 4, join with sl st to form ring.\nRnd 1: %s (%d sts)\n", s, 24, true)
	}
}

// A bracket names the stitches before it, before the place they go into or behind it: 4 of them over 24 chains and one.
func TestABracketNamesAGroup(t *testing.T) {
	for _, s := range []string{"5 dc in next ch (seam shell)", "5 dc (shell) in next ch", "5 dc in next ch (shell)", "5 dc in next ch (shell made)", "5 dc (a shell) in next ch"} {
		phraseComesTo(t, "Terms: US\nNotes: Ch 3 counts as a dc.\nCh 26.\nRow 1: Sc in 2nd ch from hook, *skip 2 ch, %s, skip 2 ch, sc in next ch; rep from * across, turn. (%d shells)\n"+
			"Row 2: Ch 3, 2 dc in first sc, *sc in center dc of next shell, 5 dc in next sc (another shell); rep from * across, ending with 3 dc in last sc, turn.\n", s, 4, true)
	}
	phraseComesTo(t, "Terms: US\nRnd 1: Ch 3 (counts as dc), 15 dc in ring, join. (16 dc)\nRnd 2: Ch 1, *sc in next st, skip 3 dc, %s in next dc, skip 3 dc; rep from * around, join. (%d sc, 2 shells)\n", "3 dc, ch 2, 3 dc (shell)", 2, true)
}

// Another way to begin is told, and is no round of its own.
func TestAnotherWayIsNoRow(t *testing.T) {
	for _, s := range []string{"Alternate way to begin: chain 2, 6 sc in 2nd chain from hook (6)", "Alternatively: ch 2, 6 sc in 2nd ch from hook. (6)", "If you prefer: ch 2, 6 sc in 2nd ch from hook. (6)", "Another way to start: ch 2, 6 sc in 2nd ch from hook.",
		"(Or: ch 2, 6 sc in 2nd ch from hook.)", "Option without magic ring: Chain 2, 6 sc in the second chain from hook. (6)", "Optional: ch 2, 6 sc in 2nd ch from hook"} {
		phraseComesTo(t, "Terms: US\nRnd 1: 6 sc in magic ring (6)\n%s\nRnd 2: inc x6 (%d)\n", s, 12, true)
	}
	phraseComesTo(t, "Terms: US\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x6 (12)\n%s: Sc in each st around. (%d)\n", "Optional border", 12, true)
}

// What a sentence beside a row says to be left is not asked about.
func TestStitchesAreSaidToBeLeftBesideTheRow(t *testing.T) {
	for _, s := range []string{"Start working back and forth in rows. 4 stitches of the round will be left unworked.", "The last 4 sts are not worked."} {
		phraseComesTo(t, "Terms: US\nRnd 1: 9 sc in magic ring (9)\nRnd 2: inc x9 (18)\n%s\nRow 3: Sc in next 14 sts, ch 1, turn. (%d)\nRow 4: Sc in each st across. (14)\n", s, 14, true)
	}
}

// Legs of 12 and a bridge of 3 chains, on one side or on both: 12 + 3 + 12 and the 3 of the other side.
func TestLegsAreJoined(t *testing.T) {
	for _, s := range []string{"Work 12 sc around the second leg, ch 3, 12 sc around the first leg, 3 sc in ch", "6 sc on second leg, ch 3, 12 sc on first leg, sc in each of the 3 ch, 6 sc on second leg",
		"Chain 3, sc into first leg, sc in next 11 st of the first leg, 3 sc in chain, 12 sc in second leg, 3 sc on the other side of chain", "Ch 3, join to first leg with sc, sc in next 11 sts, sc in each of 3 ch, sc in each of 12 sts of second leg, sc in other side of 3 ch."} {
		phraseComesTo(t, "Terms: US\nLeg (make 2)\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: inc x 6. (12)\nFasten off the first leg.\nBody\nRnd 3: %s (30)\nRnd 4: Sc in each st around. (%d)\n", s, 30, true)
	}
	phraseComesTo(t, "Terms: US\nLeg (make 2)\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: inc x 6. (12)\nFasten off the first leg.\nBody\nRnd 3: %s (%d)\n", "Join legs with a sc, 12 sc around first leg, 12 sc around second leg", 25, true)
	phraseComesTo(t, "Terms: US\nLeg (make 2)\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: inc x 6. (12)\nFasten off the first leg.\nBody\nRnd 3: %s (%d)\n", "Sc in the next 6 sts of the second leg, sc in 12 sts of the first leg, sc in last 6 sts of second leg", 24, true)
}

// A few chains that are called row 1 are the foundation of the next row; the first round of an oval begins in a chain from the hook.
func TestAFewChainsBeginAPiece(t *testing.T) {
	const head = "Terms: US\nHead\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x6 (12)\n\n"
	phraseComesTo(t, head+"Ears\nRow 1: %s\nRow 2: Sc in 2nd ch from hook and in each ch across, turn (%d)\n", "Ch 5", 4, true)
	for _, s := range []string{"starting from the second loop from the hook:", "starting from the second from the loop hook:", "from the second ch:", "beginning with 2nd loop from hook,", "starting in 2nd ch from hook:"} {
		phraseComesTo(t, head+"Soles\nRnd 1: Ch 6, %s 4 sc, 3 sc in last ch, on other side of chain: 3 sc, inc (12)\nRnd 2: 12 sc (%d)\n", s, 12, true)
	}
}

// What a bracket on a line of its own says is worked, and the counts behind it are held; a length takes no count away.
func TestABracketStandsOnItsOwnLine(t *testing.T) {
	for _, s := range []string{"(repeat these 2 rows once more)", "[Repeat these 2 rows once more.]", "(Repeat the last two rows 1 more time.)"} {
		phraseComesTo(t, "Cast on 20 sts.\nRow 1: K.\nRow 2: P.\n%s\nRow 5: K2tog, k to last 2 sts, k2tog. (%d sts)\nRow 6: P.\n", s, 18, true)
	}
	phraseComesTo(t, "Terms: US\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x6 (12)\nRnd 3: (1 sc, inc) x6 (%[2]d)\n%[1]s\nRnd 4: sc in each st around\n", "(*at this point the crown should measure 1.5 inches across)", 18, true)
}

// The first stitch beside a chain that counts is the one behind it where only that fits: 1 + 2 x 9, 1 + 3 x 9, 1 + 4 x 9.
func TestTheFirstStitchStandsBesideTheChain(t *testing.T) {
	phraseComesTo(t, "Terms: US\nCh 3.\nRnd 1: 9 dc in 3rd ch from hook, join in first dc (10 sts)\nRnd 2: Ch 2, 2 dc in each st around, join in first dc (19 sts)\n"+
		"Rnd 3: Ch 2, %s, dc in next st, *2 dc in next st, dc in next st; rep from * around, join in first dc (28 sts)\nRnd 4: Ch 2, 2 dc in first st, dc in next 2 sts, *2 dc in next st, dc in next 2 sts; rep from * around, join in first dc (%d sts)\n", "2 dc in first st", 37, true)
}

// What one row says of its chain need not hold for all.
func TestAChainCountsInItsRow(t *testing.T) {
	phraseComesTo(t, "Terms: US\nRnd 1: Ch 3 (counts as dc), 11 dc in ring. (12)\nRnd 2: Ch 1 (counts as 1st hdc), hdc in same st, 2 hdc in each st around. (24)\nRnd 3: %s (%d)\n", "Ch 1, 24 hdc.", 24, true)
	x := Check(Read("t", []byte("Terms: US\nCh 124.\n1st row: Dc in 4th ch from hook, dc in each ch. Ch 5, turn.\n2nd row: *Skip 2 dc, sc in next dc, ch 5; rep from * to end. Ch 4, turn.\n3rd row: Sc in first ch-5 loop, *ch 5, sc in next loop; rep from * to end. Ch 4, turn.\n"+
		"4th row: 4 dc in first ch-5 loop, *dc in next sc, 4 dc in next ch-5 loop; rep from * to end, making 2 dc in last loop. Ch 5, turn.\n5th row: *Skip 3 dc, sc in next, ch 5; rep from * to end. Ch 4, turn.\n"), Options{}))
	assert.Empty(t, x.Findings)
}

// A count behind a dash ends the row, with or without a stop.
func TestACountEndsTheRowBeforeOtherWork(t *testing.T) {
	for _, s := range []string{"— 20 sts Continue in st st and work 5 rows.", "= 20 sts Cont in st st for 5 rows.", "- 20 sts Work 5 rows in st st.", "— 20 sts Break off yarn."} {
		phraseComesTo(t, "Cast on 12 sts.\n1st row: Inc k-wise into every st — 24 sts.\nNext row: (K3, k2tog) 4 times, k4 %s\nNext row: (K2tog) to end — %d sts.\n", s, 10, true)
	}
}

// How many posts there are is not said, and each is the next one beside a space.
func TestPostsAreNotCounted(t *testing.T) {
	rep := Check(Read("t", []byte("Terms: US\nCh 4, join with sl st to form ring.\nRnd 1: Ch 3 (counts as dc), *ch 1, dc into ring; rep from * 4 more times, join.\nRnd 2: Ch 1, *4 dc in ch-1 sp, sc in dc; rep from * around, join.\n"+
		"Rnd 3: Working in back of flower, *sc around the post, ch 4; rep from * around, sl st to first sc.\nRnd 4: Ch 1, *6 dc in ch-4 sp, sl st in each sc; rep from * around, join.\nRnd 5: Working in back of flower, *sc around the post, ch 5; rep from * around, sl st to first sc.\nRnd 6: Ch 1, *8 dc in ch-5 sp, sl st in each sc; rep from * around, join.\n"), Options{}))
	assert.Empty(t, rep.Findings)
	assert.Equal(t, rep.Read.Lines, rep.Read.Whole)
}

// Sizes are named with the word 'only' or without it; 16, 24 and 32 stitches are on the hook, for a brim of 20, 28 and 36.
func TestSizesAreNamedWithoutOnly(t *testing.T) {
	for _, s := range [][3]string{{"Medium and Large size", "Large size only", "All Sizes"}, {"Medium and Large sizes:", "Large size:", "All sizes:"}, {"Medium & Large sizes only:", "Large only:", "All sizes:"}, {"For Medium and Large sizes", "For Large size", "For all sizes"},
		{"For medium and large:", "For large:", "For all sizes:"}, {"Sizes Medium and Large", "Size Large", "All sizes"}, {"Medium/Large sizes only", "Large only", "All sizes"}, {"MEDIUM AND LARGE SIZES ONLY", "LARGE SIZE ONLY", "ALL SIZES"}} {
		phraseComesTo(t, "Terms: US\nSizes: Small (Medium, Large)\nSize Large\nRnd 1: 8 sc into ring. 8 sts\nRnd 2: 2 sc into each sc - 16 sts.\n"+s[0]+"\nRnd 3: *1 sc into next sc, 2 sc into next sc; rep from * to end - 24 sts.\n"+s[1]+"\nRnd 4: *1 sc into each of next 2 sc, 2 sc into next sc; rep from * to end - 32 sts.\n"+s[2]+
			"\nBrim\nNext rnd: *1 sc into each of next 3 (5, 7) sc, 2 sc into next sc%s; rep from * to end - %d (28, 36) sts.\n", "", 20, true)
	}
}

// The stitches that wait on the cable needle are knitted from it, however many: 14 of 14, then one less.
func TestAllThatWaitIsKnittedFromTheCableNeedle(t *testing.T) {
	for _, s := range []string{"slip 2 sts to a cable needle and hold in front, k2, knit the sts from the cable needle", "slip 2 st onto a cable needle to the front, k2, knit the st from the cable needle", "place 2 sts on cn and hold at back, k2, k sts from cn", "sl2 to cn, hold in back, k2, knit those stitches from the cable needle"} {
		phraseComesTo(t, "Cast on 14 sts.\nRow 1: K1, p1, k1, p2, %s, p2, k1, p1, k1\nRow 2: K2tog, k to end. (%d)\n", s, 13, true)
	}
}

// Times without a bracket are those of as many stitches before them as fit 59: own lines.
func TestTimesInKnittingReachBackAsFarAsFits(t *testing.T) {
	for _, s := range []string{"K1, p1 (4x), k51", "K2tog, yo (4x), k51", "k1, yo, k2tog (5x), k44", "k5, *yo, k2tog (3x)*, k48", "p5, k1 (twice), k52", "k3, p2 (twice), k49", "k50, p1, (k1, p1) x (4)",
		"k1, k2tog, yo, k1 6 times, k35", "yo, ssk, k1 x 10, k29", "K1, p1 (4x), k1, purl to last 9 sts, k1, p1 four times, k1"} {
		phraseComesTo(t, "Cast on 59 sts.\nRow 1: %s.\nRow 2: P %d.\n", s, 59, true)
	}
	x := Read("t", []byte("Cast on 59 sts.\nRow 1: K1, p1 (4x), k50.\nRow 2: P 59.\n"), Options{})
	assert.Len(t, Check(x).Findings, 1, "8 + 50 of 59")
}

// Own lines: what stands about a row or between it and its count is none of it.
func TestWhatStandsAboutAKnittedRowIsNoPartOfIt(t *testing.T) {
	for _, s := range []string{"Next Row (RS): Begin St st, inc 1 st at end of row–72 (80) sts.", "Next Row: K to last st, kfb-72 (80) sts.", "Next Row: Switch to garter st and inc 1 st at end of row. [72 (80) sts]",
		"Row 5 (RS): (Note: shaping begins here.)\nK to last st, kfb. 72 (80) sts.", "Row 5: (Shaping begins on this row.)\nK to last st, kfb. 72 (80) sts.", "Work even for 3'' then inc 1 st at end of last row. 72 (80) sts",
		"Work 3“ in st st, inc 1 st at end of last row. 72 (80) sts"} {
		phraseComesTo(t, "Sizes: S (M)\nCast on 71 (79) sts.\n%s\nNext Row: K. %d (80) sts.\n", s, 72, true)
	}
}

// Own lines: a piece is missed only where its name can be one.
func TestAPieceIsMissedOnlyByAName(t *testing.T) {
	for _, s := range []string{"Work the same way as back until armhole is bound off.", "Work as high as the back.", "Work exactly the same as for back."} {
		x := Read("t", []byte("BACK\nCast on 80 sts.\nWork 10 rows. Bind off.\n\nFRONT\nCast on 80 sts.\n"+s+"\n"), Options{})
		assert.Empty(t, Check(x).Findings, s)
	}
}

// Own lines: forms of published knitting, each with what it comes to.
func TestKnittedRowsAsPublishedComeTo(t *testing.T) {
	for s, n := range map[string]int{
		"Cast on 10 sts.\nRow 1: P.\nRow 2: K, inc every stitch (k front, k back) - 20 sts.":                                                                                                         20,
		"Cast on 10 sts.\nRow 1: P.\nRow 2: Knit, kfb in every st. 20 sts.":                                                                                                                          20,
		"Cast on 10 sts.\nRow 1: P.\nRow 2: K, inc 1 st in every other st. 15 sts.":                                                                                                                  15,
		"Cast on 59 sts.\nRow 1: K.\nRow 2: P.\nNext row: repeat row 1 (12X) for a total of 12 rows.":                                                                                                59,
		"CO 64 sts. Join. 16 sts for each needle (1, 2, 3 & 4)\nK 10 rounds.":                                                                                                                        64,
		"Cast on 70 sts. Bind off 2 sts at beginning of next 2 rows–66 sts. Dec 1 st at beginning and end of every right side row 3 times.":                                                          60,
		"Cast on 80 sts. Work in stockinette for 6 more inches.":                                                                                                                                     80,
		"Cast on 30 sts.\nThumb Row 1: K.\nThumb Rows 2 - 9: St st.\nThumb Row 10: K 2 tog across.":                                                                                                  15,
		"Cast on 30 sts.\nBorder Rows 1, 2, 3 & 4: K.\nBorder Row 5: K 2 tog across.":                                                                                                                15,
		"Cast on 100 sts. Work across 1st 40 sts, inc. 1 st in each of next 20 sts, work across remaining 40 sts.":                                                                                   120,
		"Cast on 79 sts.\n1st row (RS): K1, *p1, k1; rep from * to end.\n2nd row: P1, *k1, p1; rep from * to end.\nRep last 2 rows (K1, P1) ribbing for 3\", ending on a WS row.\nNext row (RS): K.": 79,
	} {
		phraseComesTo(t, "%s\nNext row: K. %d sts.\n", s, n, true)
	}
	phraseComesTo(t, "CO 44[48, 52] sts. Join.\nK 6 rounds.\nSizes S, L Only:\nNext Round: Using D, [k9[-, 11], k2tog] four times. 40[-, 48] sts.\nAll Sizes:\n%s. %d[48, 48] sts.\n", "K 2 rounds", 40, true)
	phraseComesTo(t, "Cast on 77[83:91:99] sts.\nWork in rib for 3 cm, %s. %d[87:95:105] sts.\n", "inc 4[4:4:6] sts evenly across last row", 81, true)
}
