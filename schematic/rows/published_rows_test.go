package rows

import "testing"

// A stop behind a chain that is worked into ends the sentence: the number behind it is the row's count.
func TestACountStandsBehindTheStopOfAPlace(t *testing.T) {
	for _, s := range []string{"sc in 2nd ch from hook and each ch", "sc in 2nd ch from hook and in each ch", "sc in 2nd ch from hook, sc in every ch", "sc in 2nd ch from hook and in each remaining ch",
		"sc in 2nd ch from hook, sc in next 18 ch, sc in last ch"} {
		comesTo(t, "Terms: US\nSizes: S (M)\nCh 21 (21).\nRow 1: %s. %d (20) sc\n", s, 20, true)
		comesTo(t, "Terms: US\nRow 1: Ch 21, %s. %d sc. Turn.\n", s, 20, true)
	}
}

// What is called a row begins in a ring as well as a round does: 6 and then 12.
func TestARowBeginsWithARing(t *testing.T) {
	for _, s := range []string{"Row 1: Magic ring, 6 sc (6)", "Row 1: MR, 6 sc (6)", "Row 1: Make a magic ring, sc 6 (6)", "Row 1: magic circle, 6sc [6]", "R1: magic ring; 6 sc (6)", "Row 1: Magic ring. 6 sc. (6)"} {
		comesTo(t, "Terms: US\nBody\n%s\nRow 2: inc around (%d)\n", s, 12, true)
		comesTo(t, "Terms: US\nHead\nRow 1: 5 sc in magic ring (5)\nFasten off.\nBody\n%s\nRow 2: inc around (%d)\n", s, 12, true)
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
	} {
		comesTo(t, text, s, 30, true)
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
		comesTo(t, text, s, 14, true)
	}
}
