package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
)

const top = "Terms: US\nNotes: Ch 1 and ch 2 do not count as a stitch. Ch 3 counts as dc.\n"

func check(src string) finding.List {
	return Check(Read("t.txt", []byte(src), Options{})).Findings
}

// Each text has one thing wrong; the finding names its kind, its line and its
// numbers. The numbers are worked out by hand beside the text.
func TestEachThingThatDoesNotFitIsToldOnceWithItsNumbers(t *testing.T) {
	for _, c := range []struct {
		name, src, kind, message, fix string
		line                          int
	}{
		{"21 chains carry 20 sc", "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (21 sc)\nRow 2: Ch 1, sc in each st across, turn. (20 sc)\n",
			"rows/stated", "the row makes 20 sc, not 21", "say 20", 4},
		{"20 used of 18", "Ch 19.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (18 sc)\nRow 2: Ch 1, sc in next 20 sts, turn. (18 sc)\n",
			"rows/over-use", "this needs 2 stitches more than the row below has", "use 2 fewer", 5},
		{"16 used of 18", "Ch 19.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (18 sc)\nRow 2: Ch 1, sc in next 16 sts, turn. (16 sc)\n",
			"rows/under-use", "2 stitches are left over at the end", "work 2 more", 5},
		{"20 is not a multiple of 3", "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, *sc in next 3 sts; rep from * across, turn. (20 sc)\n",
			"rows/repeat", "the repeat does not fit: 2 stitches are left over after 6 times", "have 1 stitch more or 2 fewer", 5},
		{"row 4 after row 2", "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in each st across, turn. (10 sc)\nRow 4: Ch 1, sc in each st across, turn. (10 sc)\nRow 5: Ch 1, sc in each st across, turn. (10 sc)\n",
			"rows/number", "this is called row 4, but the one before it was row 2", "call it 3", 6},
		{"two right-side rows", "Ch 11.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2 (RS): Ch 1, sc in each st across, turn. (10 sc)\n",
			"rows/side", "this is called a right-side row, and so was the row before it", "(WS)", 5},
		{"no space", "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, 10 sc in next ch-2 sp, turn. (10 sc)\n",
			"rows/no-space", "there is no ch-2 space left", "", 5},
		{"a dc called sc", "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in next dc, sc in next 9 sts, turn. (10 sc)\n",
			"rows/kind", "the next stitch is sc, not dc", "", 5},
		{"left 7, says 8", "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in next 3 sts, leave remaining 8 sts unworked, turn. (3 sc)\n",
			"rows/unworked", "7 stitches are left unworked, not 8", "", 5},
		{"4 sizes, 3 numbers", "Sizes: S (M, L, XL)\nCh 11 (13, 15).\n", "rows/sizes", "has 3 numbers for 4 sizes", "put in the number", 4},
		{"brackets unlike those of the sizes", "Sizes: S (M, L) (XL)\nCast on 11 (13, 15, 17) sts.\nRow 1: Knit. 11 (13, 15) (17) sts\n",
			"words/brackets", "is bracketed unlike the line of sizes", "bracket the numbers like the sizes", 4},
		{"a row to repeat that is not there", "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRows 2-5: Rep Row 7. (10 sc)\n",
			"rows/reference", "there is no row 7 to repeat", "", 5},
		{"a first row that is itself again", "Ch 11.\nRow 1: Rep Row 1.\n", "rows/reference", "there is no row 1 to repeat", "", 4},
		{"43 sts, 42 on the way", "Cast on 43 sts.\nRow 1: Knit. (43 sts)\nDec 1 st at each end of every alt row until 30 sts rem, then on every row until 25 sts rem.\n",
			"rows/stated", "30 stitches cannot be reached from 43 in steps of 2", "", 5},
		{"8 sts bound off of 7", "Cast on 7 sts.\nRow 1: Knit. (7 sts)\nCast off rem 8 sts.\n", "rows/unworked", "7 stitches remain, not 8", "say 7", 5},
		{"a count before the work is fastened off", "Cast on 30 sts.\nRow 1: Knit. (30 sts)\nRow 2: K2tog, k to end. (29 sts)\nRep last row 4 times more. 26 sts. Fasten off.\n", "rows/stated", "the row makes 25 stitches, not 26", "say 25", 6},
		{"44 that waited and 4 cast on", "Cast on 96 sts.\nRow 1: Knit. (96 sts)\nSleeve\nPut 44 sts back on the needle, cast on 4 sts and join in the round. 47 sts\n", "rows/stated", "the row makes 48 stitches, not 47", "say 48", 6},
		{"back has 30 and 24, never 20", "Back\nCast on 30 sts.\nRow 1: Knit. (30 sts)\nCast off 3 sts at beg of next 2 rows. (24 sts)\nFront\nWork as for Back until 20 sts rem.\n", "rows/reference", "'back' never has 20 stitches", "name a count that it has", 8},
		{"a band of 93, 21 and 94", "Band\nRow 1: Join yarn at lower edge, work 93 hdc evenly up right front edge, 21 hdc across back neck and 94 hdc down left front edge. (207 hdc)\n", "rows/stated", "the row makes 208 hdc, not 207", "say 208", 4},
		{"1 round and 5 told in a sentence", "Rnd 1: 8 sc in magic ring. (8)\nSc in each st around for 5 rounds.\nRnd 8: Sc in each st around. (8)\n", "rows/number", "this is called round 8, but the one before it was round 6", "call it 7", 5},
		{"rows 11 to 13: off, plain, off", "Cast on 60 sts.\nKnit 10 rows.\nCast off 6 sts at beg of next and foll alt row.\nRow 13: Knit. (48 sts)\nRow 14: Knit. (48 sts)\n", "rows/number", "this is called row 13, but the one before it was row 13", "call it 14", 6},
		{"48 and 12 times 2", "Cast on 48 sts.\nBeg with a K row and working in st st throughout, inc 1 st at each end of next and every foll 8th row until there are 72 sts.\nRow 90: Knit. (71 sts)\n", "rows/stated", "the row makes 72 stitches, not 71", "say 72", 5},
		{"48 that waited", "Cast on 96 sts.\nRow 1: Knit. (96 sts)\nBack\nWith WS facing, join yarn to 48 back sts.\nWork 3 rows even.\nNext row: K2tog, k to end. (46 sts)\n", "rows/stated", "the row makes 47 stitches, not 46", "say 47", 8},
		{"twice 10 of 30 at an edge with its side", "Cast on 30 sts.\nCast off 10 sts at shoulder edge (right) every 2 rows 2 times, over 4 rows. (11 sts)\n", "rows/stated", "the row makes 10 stitches, not 11", "say 10", 4},
		{"3 times 3 at each end of 48", "Cast on 48 sts.\nLeave 3 sts unworked at each end every 2 rows 3 times, over 6 rows. (31 sts)\n", "rows/stated", "the row makes 30 stitches, not 31", "say 30", 4},
		{"3 times 3 bound off at each end of 48", "Cast on 48 sts.\nBind off 3 sts at each end every 2 rows 3 times, over 6 rows. (31 sts)\n", "rows/stated", "the row makes 30 stitches, not 31", "say 30", 4},
		{"24 of 48 for a heel", "Cast on 48 sts.\nKnit 10 rnds.\nHeel\nWork back and forth on 24 sts.\nRow 1: Knit. (25 sts)\n", "rows/stated", "the row makes 24 stitches, not 25", "say 24", 7},
		{"80 that waited longer than the 36 left last", "Cast on 160 sts.\nRow 1: Knit. (160 sts)\nFront\nCast on 70 sts.\nNext row: K34, turn and leave rem sts on a holder.\nKnit 3 rows.\nBack\nRejoin yarn to 80 sts on holder.\nNext row: K2tog, k to end. (78 sts)\n", "rows/stated", "the row makes 79 stitches, not 78", "say 79", 11},
		{"10 rows, 3 pairs and one", "Cast on 10 sts.\nRow 1: Knit. (10 sts)\nRow 2: Purl. (10 sts)\nRows 3-12: Rep Rows 1 and 2 three times, then rep Rows 1 and 2 once more. (10 sts)\n",
			"rows/number", "this line is for 10 rows, and its repeats make 8", "", 6},
		{"10 rows, 4 pairs", "Cast on 10 sts.\nRow 1: Knit. (10 sts)\nRow 2: Purl. (10 sts)\nRows 3-12: Rep Rows 1 and 2 four times. (10 sts)\n",
			"rows/number", "this line is for 10 rows, and its repeats make 8", "", 6},
		{"k2tog at both ends: 20 - 2", "Cast on 20 sts.\nRow 1: K1, ssk, k to last 3 sts, k2tog, k1. (17 sts)\n", "rows/stated", "the row makes 18 stitches, not 17", "say 18", 4},
		{"5 times 2 of 30", "Cast on 30 sts.\nRow 1: Knit. (30 sts)\nDec 1 st at each end of every 4th row 5 times. (22 sts)\n", "rows/stated", "the row makes 20 stitches, not 22", "", 5},
		{"2 x 4 of 30", "Cast on 30 sts.\nRow 1: Knit. (30 sts)\nBind off 4 sts at beg of next 2 rows. (21 sts)\n", "rows/stated", "the row makes 22 stitches, not 21", "", 5},
		{"words that are no row", "Cast on 30 sts.\nRow 1: Frogle the wizzle. (30 sts)\nRow 2: Purl. (30 sts)\n", "rows/not-read", "not read: Frogle the wizzle", "", 4},
		{"20 rows at 10 over 10 cm are 20 cm", "Gauge: 10 sts and 10 rows = 10 cm\nCast on 10 sts.\nRow 1: Knit. (10 sts)\nRows 2-20: Rep Row 1. (10 sts)\nPiece measures 22 cm.\n",
			"rows/length", "20 rows at this gauge measure 20 cm, not 22 cm", "work 22 rows", 7},
		{"20 cm are 7.9 in", "Cast on 10 sts.\nRow 1: Knit. (10 sts)\nPiece measures 20 cm / 9 in.\n", "units/pair", "not the same length", "", 5},
		{"27 + 4 + 50 of 80", "Cast on 80 sts.\nRow 1: Knit. (80 sts)\nDivide the row: 27 sts for Front, 4 sts left unworked, 50 sts for Back.\n", "rows/division", "the parts add up to 81 stitches, and the row has 80", "", 5},
		{"joined to ch-4, began with ch-3", "Ch 4, join with sl st to form a ring.\nRnd 1: Ch 3, 11 dc in ring, join with sl st to top of ch-4. (12 dc)\n", "rows/join", "a chain of 4, but began with one of 3", "", 4},
		{"sc2tog over one place", "Ch 4, join with sl st to form a ring.\nRnd 1: Ch 1, 6 sc2tog in ring, join. (6 sts)\n", "rows/together", "sc2tog takes 2 stitches", "", 4},
	} {
		src := top + c.src
		list := check(src)
		if !assert.Len(t, list, 1, "%s: %v", c.name, list) {
			continue
		}
		f := list[0]
		assert.Equal(t, c.kind, f.Kind, c.name)
		assert.Contains(t, f.Message, c.message, c.name)
		assert.Contains(t, f.Fix, c.fix, c.name)
		assert.Equal(t, c.line, f.Pos.Line, c.name)
		assert.True(t, finding.Known(f.Kind), f.Kind)
		assert.Greater(t, f.Pos.EndCol, f.Pos.Col, c.name)
	}
}

func TestWhetherATurningChainCountsIsAskedForAndNotAssumed(t *testing.T) {
	src := "Terms: US\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11 sc)\nRow 2: Ch 3, dc in next st and in each st across, turn. (11 dc)\n"
	list := check(src)
	require.Len(t, list, 1)
	assert.Equal(t, "rows/turning-chain", list[0].Kind)
	assert.Equal(t, finding.Note, list[0].Severity)
	assert.Contains(t, list[0].Message, "ch 3")
	for _, said := range []string{"Notes: Turning chain counts as a stitch.\n", "Notes: Ch-3 counts as a dc.\n"} {
		assert.Empty(t, check(strings.Replace(src, "Ch 12", said+"Ch 12", 1)), said)
	}
	list = check(strings.Replace(src, "Ch 3,", "Ch 3 (does not count as a st), skip next st,", 1))
	require.Len(t, list, 1, "without it 10 dc are made")
	assert.Equal(t, "rows/stated", list[0].Kind)
}

// Of several chains on one line the question stands at the first, at every run.
func TestTheQuestionStandsAtTheFirstChain(t *testing.T) {
	const line = "Ch 8, join with sl st to form ring. 1st rnd: Ch 5, (dc in ring, ch 2) 11 times. Join in top of starting chain. 2nd rnd: Ch 4, * 3 tr in next sp, tr in next dc. Repeat from * around; join."
	for range 20 {
		list := check("Terms: US\nDoily\n\n" + line + "\n")
		require.Len(t, list, 1)
		assert.Equal(t, strings.Index(line, "Ch 5")+1, list[0].Pos.Col)
	}
}

func TestAWrongCountIsToldForItsSizesOnly(t *testing.T) {
	list := check("Sizes: S (M, L) (XL)\n" + top + "Ch 21 (25, 29) (33).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 (24, 27) (32) sc)\n")
	require.Len(t, list, 1)
	assert.Equal(t, []string{"L"}, list[0].Sizes)
	assert.Contains(t, list[0].Message, "the row makes 28 sc, not 27")
}

func TestTheNumbersOfAllSizesStandInTheTradesLine(t *testing.T) {
	list := check("Sizes: S (M, L)\n" + top + "Ch 21 (25, 29).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (21 (25, 29) sc)\n")
	require.Len(t, list, 1)
	assert.Empty(t, list[0].Sizes)
	assert.Contains(t, list[0].Message, "the row makes 20 (24, 28) sc, not 21 (25, 29)")
}

// A wrong count that the rows after it take up is the row's mistake; one that they do
// not is the count's: either way it is one finding.
func TestOneCauseIsToldOnce(t *testing.T) {
	rest := strings.Repeat("Next row: Ch 1, sc in next NN sts, turn. (NN sc)\n", 20)
	src := top + "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (22 sc)\n"
	for _, n := range []string{"20", "22"} {
		list := check(src + strings.ReplaceAll(rest, "NN", n))
		require.Len(t, list, 1, n)
		assert.Equal(t, 4, list[0].Pos.Line)
	}
}

func TestShapingInWordsIsWorked(t *testing.T) {
	src := top + `
Back
Cast on 60 sts.
Row 1 (RS): Knit. (60 sts)
Work 9 rows even. (60 sts)
Shape armholes
Bind off 4 sts at beg of next 2 rows. (52 sts)
Dec 1 st at each end of next and every foll 2nd row 3 times. (44 sts)
Dec 1 st at armhole edge on next 2 rows. (42 sts)
Dec 1 st each side every 4th row 2 times, then every 2 rows 3 times, over 16 rows. (32 sts)

Front
Work as for Back to armholes. (60 sts)
Bind off 5 sts at beg of next 2 rows. (50 sts)
`
	assert.Empty(t, check(src))
	list := check(strings.Replace(src, "(60 sts)\nBind off 5", "(58 sts)\nBind off 5", 1))
	require.Len(t, list, 1)
	assert.Contains(t, list[0].Message, "60 stitches, not 58")
}
