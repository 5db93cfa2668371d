package rows

import "testing"

// A rib in words: knit one, purl one.
func TestARibInWordsIsRead(t *testing.T) {
	for _, w := range []string{"Work 10 rows of knit one, purl one ribbing", "Work in knit one, purl one rib for 10 rows", "Knit 10 rows of knit one, purl one rib"} {
		comesTo(t, "Cast on 46 sts.\n%s.\nNext row: K2tog, k to end. (%d sts)\n", w, 45, true)
	}
}

// Two stitches that are slipped before one are both passed over it (common practice).
func TestBothSlippedStitchesArePassedOver(t *testing.T) {
	for _, w := range []string{"sl 2, k1, psso", "sl2 k1 psso", "sl 2 knitwise, k1, psso", "slip 2, knit 1, pass the slipped sts over", "sl 2 tog, k1, psso"} {
		comesTo(t, "Cast on 40 sts.\nRow 1: *K3, "+w+", k4; rep from * to end.\n%.0sNext row: K. (%d sts)\n", w, 32, true)
	}
}

// A stitch that the text explains is worked where it is named, with a verb, in a bracket and so many times.
func TestAStitchOfTheTextIsWorkedWhereItIsNamed(t *testing.T) {
	for _, w := range []string{"(Nib) 3 times", "work Nib 3 times", "make 3 Nib", "Nib 3 times", "(Nib st) three times", "[Nib] x 3", "work Nib, make Nib, Nib"} {
		comesTo(t, "Special stitches:\nNib: k3tog, yo.\n\nCast on 40 sts.\nRow 1: K2, %s, k to end. (%d sts)\n", w, 37, true)
		comesTo(t, "Special stitches:\nNib stitch: k3tog, yo.\n\nCast on 40 sts.\nRow 1: K2, %s, k to end. (%d sts)\n", w, 37, true)
	}
}

// As many stitches are made in one as it is worked in front and in back.
func TestALegAfterAnotherIsAStitch(t *testing.T) {
	for w, more := range map[string]int{"k into front, back and front of next st": 2, "p into front, back, and front again of next st": 2, "k into front, back, front, back and front of next st": 4} {
		comesTo(t, "Cast on 40 sts.\nRow 1: K2, %s, k to end. (%d sts)\n", w, 40+more, true)
	}
}

// Words about rows and needles that count nothing.
func TestNeedlesAndRowsInWordsCountNothing(t *testing.T) {
	for _, w := range []string{"Divide sts onto 3 needles: 16, 14, 16", "Divide the stitches on 3 needles; 16--14--16", "Distribute sts on 3 dpns: 16, 14 and 16", "K row 1, P row 2 and continue in this way for 4 inches", "Work 6 rows in k1.p1 rib",
		"1st row across all sts: K. 2nd row over all sts: P", "Row 1: K1, [k1, p1]. Repeat from [ to ] until last st, k1"} {
		comesTo(t, "Cast on 46 sts.\n%s.\nNext row: K2tog, k to end. (%d sts)\n", w, 45, true)
	}
}

// A full stop behind an abbreviation ends nothing before the number of what is left.
func TestWhatIsLeftHasItsNumber(t *testing.T) {
	comesTo(t, "Cast on 40 sts.\nRow 1: K20, turn.\nOn these 20 sts k 4 rows. Break yarn.\n%s, k 4 rows.\nNext row: K2tog, k to end. (%d sts)\n", "On rem. 20 sts", 19, false)
}
