package work

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// 20 less 4 are 16, whether the sentence stands in the row, below it or above it; over 15 stitches 5 are left, not 4.
func TestStitchesLeftAreToldInASentenceOfTheirOwn(t *testing.T) {
	const text = "Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n%sRow 2: Ch 1, sc in next %d sc, turn.%sRow 3: Ch 1, sc in each sc across. (%d sc)\n"
	for _, s := range []string{"Leave 4 sts unworked.", "4 stitches are left unworked.", "Last 4 sts remain unworked.", "There will be 4 sts left unworked.", "4 sts unworked.", "The last 4 sts are not worked."} {
		assert.Empty(t, check(fmt.Sprintf(text, "", 16, "\n"+s+"\n", 16)), s)
		assert.Empty(t, check(fmt.Sprintf(text, "", 16, " "+s+"\n", 16)), s)
		assert.NotEmpty(t, check(fmt.Sprintf(text, "", 15, "\n"+s+"\n", 15)), s)
	}
	for _, s := range []string{"4 stitches will be left unworked.", "Note: 4 stitches will be left unworked.", "On the next row, leave the last 4 sts unworked."} {
		assert.Empty(t, check(fmt.Sprintf(text, s+"\n", 16, "\n", 16)), s)
		assert.NotEmpty(t, check(fmt.Sprintf(text, s+"\n", 15, "\n", 15)), s)
	}
}

// 34 and 38 stitches less one are 33 and 37: the words for sizes stand for the letters of the size line.
func TestLinesForSomeSizesByTheirWords(t *testing.T) {
	const text = "Sizes: S, M, L\nCast on 30 (34, 38) sts.\nRow 1: Knit. (30, 34, 38 sts)\n%s\nRow 2: K2tog, knit to end. (33, 37 sts)\nAll sizes:\nRow 3: K2tog, knit to end. (29, 32, 36 sts)\n"
	for _, s := range []string{"M and L sizes only", "For sizes M and L:", "Medium and large sizes only", "For medium and large sizes only:"} {
		assert.Empty(t, check(fmt.Sprintf(text, s)), s)
		assert.Len(t, check(strings.Replace(fmt.Sprintf(text, s), "33, 37", "33, 38", 1)), 1, s)
	}
}

// Two patterns in one text, each in its own terms: a UK treble stands on 3 chains, a US single crochet on 1 (Craft Yarn Council).
func TestTermsHoldFromTheirPlaceOn(t *testing.T) {
	const us = "\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in each sc across, turn. (10 sc)\n"
	const uk = "\nCh 12.\nRow 1: Tr in 4th ch from hook and in each ch to end, turn. (10 tr)\nRow 2: Ch 3, miss first tr, tr in each tr to end, turn. (10 tr)\n"
	for _, w := range [][2]string{{"Terms: US", "Terms: UK"}, {"US terms", "UK terms"}, {"Written in US terms.", "Written in UK terms."}} {
		for _, s := range []string{"COASTER\n" + w[0] + us + "\nMAT\n" + w[1] + uk, "MAT\n" + w[1] + uk + "\nCOASTER\n" + w[0] + us} {
			assert.Empty(t, check(s), s)
			assert.Len(t, check(strings.Replace(s, "turn. (10 sc)", "turn. (11 sc)", 1)), 1, s)
		}
	}
}

// 28 rows to 4 inches are 4 inches, and not 7.
func TestAGaugeInTwoLinesMeasuresRows(t *testing.T) {
	const text = "%s\nCast on 40 sts.\nRow 1: Knit. (40 sts)\nRows 2-28: Rep Row 1. (40 sts)\nPiece measures %s.\n"
	for _, g := range []string{"20 sts = 4 inches\n28 rows = 4 inches", "Gauge: 20 sts = 4\"\n28 rows = 4\"", "GAUGE\n5 sts = 1 inch\n7 rows = 1 inch", "Tension: 20 sts = 10 cm;\n28 rows = 10 cm"} {
		right, wrong := "4 inches", "7 inches"
		if strings.Contains(g, "cm") {
			right, wrong = "10 cm", "18 cm"
		}
		assert.Empty(t, check(fmt.Sprintf(text, g, right)), g)
		if list := check(fmt.Sprintf(text, g, wrong)); assert.Len(t, list, 1, g) {
			assert.Equal(t, "rows/length", list[0].Kind)
		}
	}
	assert.Empty(t, check(fmt.Sprintf(text, "20 sts = 4 inches in st st\n28 rows = 4 inches in rib", "7 inches")), "of two fabrics")
}

// 6 stitches doubled are 12, and 18 with every second one doubled, behind a stitch that is told in the same paragraph.
func TestRowsFollowAStitchThatIsToldInTheirParagraph(t *testing.T) {
	const text = "Terms: US\n%sRnd 1: Ch 2, 6 sc in 2nd ch from hook. (6 sc) Rnd 2: 2 sc in each sc around. (12 sc) Rnd 3: (Sc in next sc, 2 sc in next sc) around. (%d sc)\n"
	for _, s := range []string{"Picot: ch 3, sl st in 3rd ch from hook. HAT ", "Picot = ch 3, sl st in 3rd ch from hook. ", "Special stitch: Picot: ch 3, sl st in 3rd ch from hook. ", "Shell: 5 dc in same st. HAT (make 2) "} {
		assert.Empty(t, check(fmt.Sprintf(text, s, 18)), s)
		assert.Len(t, check(fmt.Sprintf(text, s, 19)), 1, s)
	}
}

// Two stitches of 80 worked together leave 79.
func TestTogetherWithoutANumberIsTwo(t *testing.T) {
	for _, s := range []string{"Ktog, k to end.", "K1, ktog, k to end.", "K to last 2 sts, ptog."} {
		text := "Cast on 80 sts.\nRow 1: " + s + " (%d sts)\nRow 2: Purl. (79 sts)\n"
		assert.Empty(t, check(fmt.Sprintf(text, 79)), s)
		assert.NotEmpty(t, check(fmt.Sprintf(text, 78)), s)
	}
}

// 10 stitches and one more at each end are 12; over a row that shapes nothing the same words are worked.
func TestWhatARowHasChangedIsNotWorkedAgain(t *testing.T) {
	const text = "Terms: US\nNotes: Ch 1 does not count as a st.\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st%s\nRow 3: Ch 1, sc in each st across. (12 sc)\n"
	for _, s := range []string{" (inc by 2).", " (increases 2 sts).", " (adding 1 st at each end).", " (inc 1 st at each end of row).", " (st count increases by 2).", " [2 more sts than the row before]", " (you will inc 2 sts each row).",
		" - inc by 2 sts.", ", increasing 2 sts.", ". This increases 2 sts.", ". 2 increases made.", " – 2 sts more.", " (total increase: 2 sts).", ". Total of 2 sts increased."} {
		assert.Empty(t, check(fmt.Sprintf(text, s)), s)
		assert.Len(t, check(strings.Replace(fmt.Sprintf(text, s), "(12 sc)", "(13 sc)", 1)), 1, s)
	}
	assert.Empty(t, check("Cast on 20 sts.\nRow 1 (RS): Knit (inc 1 st at each end).\nRow 2: Purl. (22 sts)\n"))
	assert.Empty(t, check("Cast on 20 sts.\nRow 1: K2, inc, k to last 3 sts, inc 1, k2. (22 sts)\n"))
}

// One row, whatever holds the words of its shaping: 20 and one more at each end are 22.
func TestAShapingBesideTheWordsOfItsRow(t *testing.T) {
	for _, row := range []string{"Knit", "K to end", "Work in pattern", "Knit across", "Purl to end", "Work across"} {
		for _, s := range []string{" (inc 1 st at each end)", " [inc 1 st at both ends]", ", inc 1 st at each end"} {
			text := "Cast on 20 sts.\nRow 1 (RS): Knit.\nRow 2: " + row + s + ".\nRow 3: Knit. (22 sts)\n"
			assert.Empty(t, check(text), row+s)
			assert.Len(t, check(strings.Replace(text, "22", "21", 1)), 1, row+s)
		}
	}
}

// A label alone on its line, and the yarn below it: what follows is that row. 11 stitches stand over 10 chains and the 3 that turn.
func TestTheYarnStandsBelowTheLabelOfItsRow(t *testing.T) {
	const text = "Terms: US\nNotes: Ch 3 counts as a dc.\nCh 13.\nRow 1: 1 dc in 4th ch from hook and in each ch across, turn. (11 dc)\nRow 2:\n%s\nCh 3, 1 dc in each of next %d sts. (11 dc)\nRow 3:\nCh 3, 1 dc in each of next 10 sts. (11 dc)\n"
	for _, s := range []string{"Second colour", "New color:", "Yellow yarn", "Third Color\nAdd third color to first st.", "Add B in first st."} {
		assert.Empty(t, check(fmt.Sprintf(text, s, 10)), s)
		assert.NotEmpty(t, check(fmt.Sprintf(text, s, 9)), s)
	}
}

// 8 spaces of 5 stitches each are 40, wherever the stars of the stretch stand.
func TestAStretchGoesIntoFurtherPlaces(t *testing.T) {
	const text = "Terms: US\nCh 4, sl st to form ring.\nRnd 1: Ch 4 (counts as dc, ch 1), *dc in ring, ch 1; rep from * 6 more times, sl st in 3rd ch of ch-4. (8 ch-1 sps)\nRnd 2: Ch 1, %s, join to first sc.\nRnd 3: Ch 1, sc in each st around. (40 sc)\n"
	for _, s := range []string{"*sc, 3 dc, sc* in same sp, rep from * to * in next 7 ch-1 sps", "*1 sc, 3 dc, 1 sc** into the same ch-1 space; repeat from * to ** into the next 7 ch-1 spaces", "*sc, 3 dc, sc* in first ch-1 sp, repeat *to* in each ch-1 sp around"} {
		assert.Empty(t, check(fmt.Sprintf(text, s)), s)
		assert.Len(t, check(strings.Replace(fmt.Sprintf(text, s), "(40 sc)", "(41 sc)", 1)), 1, s)
	}
}

// 60 stitches, one more at each end eight times: 76. The sign for inches may stand behind the full stop, and 'in.' ends no sentence.
func TestAShapingThatIsRepeatedByLength(t *testing.T) {
	for _, s := range []string{"Inc. 1 st each side every ½ in. 8 times", "Inc 1 st each side every ½ in., 8 times", "Inc. 1 st each side of next row; repeat incs. every ½ in. 7 times", "Inc 1 st at each end of next row. Repeat this inc every 1 in. 7 times",
		"Inc 1 st at each end of next row and repeat this increase every 3 cm 7 times more", "Inc 1 st at each end of next row. Rep this inc every 4th row 7 times", "Inc 1 st at each end of next row. Repeat this increase every 4 rows 7 times more"} {
		text := "Cast on 60 sts.\nWork in k1, p1 rib for 2.\" Change to larger needles.\n" + s + ". (76 sts)\nNext row: Knit. (76 sts)\n"
		assert.Empty(t, check(text), s)
		assert.NotEmpty(t, check(strings.ReplaceAll(text, "(76", "(77")), s)
	}
}
