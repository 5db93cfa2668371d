package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	ins "flatwright/schematic/rows/instructions"
)

func ids(s GraphStitch) string { return s.Stitch.ID }

// In stocking stitch a purl row is a wrong-side row, in its reverse a right-side row (common practice).
func TestStockingStitchBeginsWithTheRowThatWordsName(t *testing.T) {
	for words, want := range map[string]string{
		"3 rows st st starting with a purl row.":                 "kkkk\npppp\nkkkk\npppp\n",
		"Beg with a p row, work 3 rows in st st.":                "kkkk\npppp\nkkkk\npppp\n",
		"Commencing with a WS row, work 3 rows in stocking st.":  "kkkk\npppp\nkkkk\npppp\n",
		"Work in stockinette for 3 rows, starting with a k row.": "kkkk\nkkkk\npppp\nkkkk\n",
		"Work 3 rows in st st.":                                  "kkkk\nkkkk\npppp\nkkkk\n",
		"Rows 1-3: St st.":                                       "kkkk\nkkkk\npppp\nkkkk\n",
		"Beg with a p row, work 3 rows in rev st st.":            "kkkk\npppp\nkkkk\npppp\n",
	} {
		assert.Equal(t, want, pictured(t, "Cast on 4 sts.\n"+words+"\n", ids), words)
	}
	g, ok := GraphOf(Read("t", []byte("Cast on 4 sts.\nBeg with a p row, work 3 rows in st st.\n"), Options{TermsSet: true}), "", 0)
	assert.True(t, ok && !g.Rows[1].RS && g.Rows[2].RS && !g.Rows[3].RS)
}

// Rows of one side are told as a sentence, or by another word for them: rows 2 and 4 are purled.
func TestRowsOfOneSideAreToldBetweenTheOthers(t *testing.T) {
	for _, words := range []string{"Purl all WS rows.", "Purl every even-numbered row.", "WS rows: purl.", "Row 2 and alternative rows: Purl.", "Row 2 and all return rows: purl.", "Row 2: Purl. Purl all even numbered rows.",
		"Row 2 (and all wrong-side rows through Row 8): Purl."} {
		assert.Equal(t, "kkkk\nkkkk\npppp\nkkkk\npppp\nkkkk\n", pictured(t, "Cast on 4 sts.\nRow 1 (RS): K4.\n"+words+"\nRow 3: K4.\nRow 5: K4.\n", ids), words)
	}
}

// A sentence that says what rows make together works none.
func TestWhatRowsMakeTogetherIsNoRow(t *testing.T) {
	for _, words := range []string{"Two rows of single crochet form one ridge.", "Four rows make one pattern.", "2 rows of sc equal 1 inch.", "The cloth has 24 rows of single crochet.", "Single crochet is worked throughout."} {
		assert.Equal(t, "chchchch\nscscsc\n", pictured(t, "Ch 4.\n"+words+"\nRow 1: Sc in 2nd ch from hook and in each ch across. (3 sc)\n", func(s GraphStitch) string {
			if s.Stitch == nil {
				return ""
			}
			return s.Stitch.ID
		}), words)
	}
}

// A stitch over the next one that is worked into a row further down takes its place, and is not like the others; the row below alone
// is the one before.
func TestAStitchGoesIntoARowFurtherDown(t *testing.T) {
	down := func(s GraphStitch) string { return map[bool]string{true: "v", false: "-"}[s.Loop == ins.LowerDown] }
	text := "Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (4 sts)\nRow 2: Ch 1, sc in each sc across, turn. (4 sts)\nRow 3: Ch 1, sc in first sc, sc in @, sc in last 2 sc. (4 sts)\n"
	for place, want := range map[string]string{"next st 2 rows below": "-v--", "next st one row below": "-v--", "st below next sc": "-v--", "next sc of the row below": "----", "next st": "----"} {
		assert.Contains(t, pictured(t, strings.Replace(text, "@", place, 1), down), "\n-"+want+"\n", place)
	}
}

// It is told by a bare word as well, and that the stitch behind it is passed takes no other.
func TestAStitchFurtherDownTakesOne(t *testing.T) {
	down := func(s GraphStitch) string { return map[bool]string{true: "v", false: "-"}[s.Loop == ins.LowerDown] }
	for _, words := range []string{"sc below", "1 sc below", "sc below next sc", "sc one row down", "FPdc around next sc 2 rows below, skip next sc", "FPdc around next sc 2 rows below, skip st behind FPdc"} {
		text := "Terms: US\nCh 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (4 sts)\nRow 2: Ch 1, sc in each sc across, turn. (4 sts)\nRow 3: Ch 1, sc in first sc, " + words + ", sc in last 2 sc. (4 sts)\n"
		assert.Contains(t, pictured(t, text, down), "\n--v--\n", words)
		assert.Empty(t, Read("t", []byte(text), Options{}).Findings, words)
	}
}

// Of 12 stitches in a round 12 gaps are worked into, the first behind the chain at the beginning: 12 + 12 stitches, or two in each.
func TestARoundGoesIntoEveryGap(t *testing.T) {
	for _, words := range []string{
		"dc between ch 3 and next dc, *dc in dc, dc between dc; rep from * around", "dc between ch 3 and next dc, *dc in dc, dc between dc; rep from * 10 times more",
		"dc in sp between ch 3 and next dc, *dc in dc, dc in sp between dc; rep from * around", "dc between same st and next dc, *dc in dc, dc between dc; rep from * around",
		"dc in sp between dc, *2 dc in sp between dc* rep *to* 11 times", "dc in same sp, *2 dc in next sp between dc*, rep from * to * 11 times", "dc in sp between dc, (2 dc in next sp between dc) 11 times",
	} {
		text := "Terms: US\nCh 4, join with sl st in first ch.\nRnd 1: Ch 3, 11 dc in ring, join with sl st in top of ch-3. (12 dc)\nRnd 2: Ch 3, " + words + ", join with sl st in top of ch-3. (24 dc)\n"
		g, ok := GraphOf(Read("t", []byte(text), Options{}), "", 0)
		if assert.True(t, ok && len(g.Rows) == 3, words) {
			assert.Len(t, g.Rows[2].Stitches, 24, words)
			assert.Empty(t, g.Rows[2].Amiss+g.Rows[2].Unread, words)
		}
	}
}

// The wrong side of a mosaic goes over the stitches of the row below by their yarn, or as that row did.
func TestAMosaicIsWorkedBackByItsYarns(t *testing.T) {
	for _, words := range []string{"K all B sts, sl all A sts wyif", "With B, sl all A sts wyif, k all B sts", "Knit the B stitches and slip the A stitches with yarn in front", "Sl the slipped sts wyif, k all others", "Knit all sts in B, slip all sts in A wyif"} {
		assert.Contains(t, pictured(t, "Yarns A and B.\nWith A, cast on 5 sts.\nRow 1 (RS): With A, knit.\nRow 2: With A, knit.\nRow 3: With B, k1, *sl 1, k1; rep from * to end.\nRow 4: "+words+".\n", func(s GraphStitch) string { return s.Stitch.ID + s.Colour }),
			"\nkBslAkBslAkB\nkBslwyifAkBslwyifAkB\n", words)
	}
}

// Rows in pattern are those of as many rows as the words say that the pattern has, not of the row two below.
func TestAPatternOfFourRowsIsWorkedOn(t *testing.T) {
	for _, words := range []string{"These 4 rows form the pattern. Work 4 more rows in pattern.", "Rows 1-4 form the pattern.\nWork 4 rows in pattern.", "These four rows set the pattern. Continue in pattern for 4 rows."} {
		assert.Contains(t, pictured(t, "Cast on 4 sts.\nRow 1 (RS): K.\nRow 2: P.\nRow 3: *K1, p1; rep from * to end.\nRow 4: *P2, k2; rep from * to end.\n"+words+"\n", func(s GraphStitch) string { return s.Stitch.ID }),
			strings.Repeat("\nkkkk\npppp\nkpkp\nppkk", 2)+"\n", words)
	}
}

// A cable of 2 over 2 is told by other verbs, with its long name first, or without a verb.
func TestACableIsToldByManyVerbs(t *testing.T) {
	for words, left := range map[string]bool{
		"C4B = slide 2 sts onto cable needle at back of work, knit 2 sts, then knit the 2 sts off the cable needle":     false,
		"C4F: take 2 sts onto a spare needle and leave at front, k2, then k2 from spare needle":                         true,
		"Cable 4 Back (C4B): Slip 2 sts onto a cable needle and hold at back, k2, k2 from cable needle":                 false,
		"C4F = 2 sts to cn, hold in front, k2, k2 from cn":                                                              true,
		"C4B: Move 2 sts to cable needle and hold in back, knit the following two sts, then knit two from cable needle": false,
		"C4B, cross 4 back: slip 2 sts onto a cable needle to the back, k2, k2 from cable needle":                       false,
	} {
		name := "C4B"
		if left {
			name = "C4F"
		}
		g, ok := GraphOf(Read("t", []byte("Cloth\n"+words+".\nCast on 8 sts.\nRow 1 (RS): P2, "+name+", p2.\n"), Options{TermsSet: true}), "", 0)
		if c := g.Rows[1].Stitches[2].Cross; assert.True(t, ok && c != nil, words) {
			assert.Equal(t, [3]any{2, 2, left}, [3]any{c.Held, c.Over, c.Left}, words)
		}
	}
}

// Squares of filet by other words: 1 open, 3 solid, 2 open are 7 posts, 9 stitches between those of the solid ones among them.
func TestSquaresOfFiletAreCountedInOtherWords(t *testing.T) {
	const cloth = "Ch 23.\nRow 1: Dc in 8th ch from hook, *ch 2, sk 2 ch, dc in next ch; rep from * across, turn. (6 open meshes)\nRow 2: @\n"
	of := func(row string) string {
		return pictured(t, strings.Replace(cloth, "@", row, 1), func(s GraphStitch) string {
			if s.Stitch == nil {
				return "-"
			}
			return s.Stitch.ID
		})
	}
	want := of("1 open mesh, 3 solid meshes, 2 open meshes")
	assert.Contains(t, want, "dcdcdcdcdcdcdcdcdcdc")
	for _, row := range []string{"1 open, 3 solid, 2 open", "1 OM, 3 SM, 2 OM", "One open, three solid, two open meshes.", "Open mesh x 1, solid mesh x 3, open mesh x 2.", "1 hole, 3 blocks, 2 holes", "1 open square, 3 filled squares, 2 open squares", "Work 1 space, 3 blocks, 2 spaces"} {
		assert.Equal(t, want, of(row), row)
	}
}

// So many of a stitch along the row are so many in all: 18 over 18; 2 of them are 2 in each (common practice).
func TestManyStitchesAlongTheRowAreSoManyInAll(t *testing.T) {
	for words, want := range map[string]int{"18 sc along the row": 18, "Work 18 sc across the row": 18, "2 sc across the row": 36} {
		g, ok := GraphOf(Read("t", []byte("Ch 19.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (18 sc)\nRow 2: "+words+", turn.\n"), Options{TermsSet: true}), "", 0)
		assert.True(t, ok && len(g.Rows[2].Stitches) == want, words)
	}
}

// The last row of a pattern may be told by the line of all wrong-side rows: it is worked before the rows are worked again. By hand: rows
// 1 to 4 twice, then a knit row.
func TestTheLastWrongSideRowIsWorkedBeforeTheRowsAgain(t *testing.T) {
	const once = "yok2togkk\npkkp\nkkyok2tog\npkkp\n"
	for _, words := range []string{"Repeat rows 1-4 once.", "Repeat these 4 rows once more.", "Rep last 4 rows once.", "Repeat from Row 1 once more.", "Rep these rows once.", "Repeat pattern once more.", "Work rows 1-4 once more."} {
		for _, told := range []string{"Row 1 (RS): Yo, k2tog, k2.\nRow 2 and all WS rows: P1, k2, p1.\n", "All WS rows: P1, k2, p1.\nRow 1 (RS): Yo, k2tog, k2.\n"} {
			text := "Cast on 4 sts.\n" + told + "Row 3: K2, yo, k2tog.\n" + words + "\nNext row: Knit.\n"
			assert.Equal(t, "kkkk\n"+once+once+"kkkk\n", pictured(t, text, ids), text)
		}
	}
	assert.Contains(t, pictured(t, "Cast on 4 sts.\nRow 1 (RS): Yo, k2tog, k2.\nRow 2 and all WS rows: P1, k2, p1.\nRow 3: K2, yo, k2tog.\nRep rows 3 and 4 once.\nNext row: Knit.\n", ids), once+"kkyok2tog\npkkp\nkkkk\n")
}

// A bracket with nothing in it is repeated without harm.
func TestARepeatOfNothingIsWorked(t *testing.T) {
	assert.NotPanics(t, func() {
		Check(Read("t", []byte("*_* = repeat from * to * to end of round\n[]x = knit text in brackets as many times as told\n\nCast on 8 sts and distribute evenly on double-pointed needles.\n\nRow 1: *YO, K1*\n\nRow 2: *YO, K2TOG*\n\nRow 3: *YO2, K1*\n"), Options{TermsSet: true}))
	})
}
