package work

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
)

// A chain one too long: 40 sc are made where 39 are stated, and each later count follows
// from the one before it. 39 - 3 = 36, 36 - 2 x 5 = 26.
func TestWhatFollowsFromAWrongCountIsNotToldAgain(t *testing.T) {
	list := check(top + `Ch 41.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (39 sc)
Row 2: Ch 1, sc in each st across, turn.
Row 3: Ch 1, sc in each st across, turn.
Row 4: Sl st in first 3 sts, ch 1, sc in each st across, turn. (36 sc)
Dec 1 st at each end of next 5 rows. (26 sts)
Work 4 rows even.
`)
	require.Len(t, list, 1)
	assert.Equal(t, "rows/stated", list[0].Kind)
	assert.Equal(t, 4, list[0].Pos.Line)
}

func TestASecondWrongCountIsToldBesideTheFirst(t *testing.T) {
	list := check(top + `Ch 41.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (39 sc)
Row 2: Ch 1, sc in each st across, turn. (39 sc)
Dec 1 st at each end of next 5 rows. (28 sts)
`)
	require.Len(t, list, 2)
	assert.Equal(t, []int{4, 6}, []int{list[0].Pos.Line, list[1].Pos.Line})
}

func TestStitchesAfterTheLastAreLeftWhereTheStatedCountLeavesThemOut(t *testing.T) {
	const start = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
	assert.Empty(t, check(top+start+"Row 2: Ch 1, sc in each st to last 4 sts, turn. (16 sc)\n"))
	for _, row := range []string{"Row 2: Ch 1, sc in each st to last 4 sts, turn.", "Row 2: Ch 1, sc in each st to last 4 sts. (16 sc)", "Row 2: Ch 1, sc in next 16 sts, turn. (16 sc)"} {
		list := check(top + start + row + "\n")
		require.Len(t, list, 1, row)
		assert.Equal(t, "rows/under-use", list[0].Kind)
	}
}

// Words that only the other terms have are read as what they mean, so that the count
// behind them is still worked; words of several belong together.
func TestAWordOfTheOtherTermsIsReadAndToldOnce(t *testing.T) {
	const uk = "Terms: UK\nNotes: Turning chains do not count as a stitch.\nCh 21.\n"
	for _, c := range []struct{ row, word string }{
		{"Row 1: Sc in 2nd ch from hook and in each ch to end. (20 sts)", "sc"},
		{"Row 1: Half double crochet in 2nd ch from hook and in each ch to end. (20 sts)", "half double crochet"},
		{"Row 1: Double crochet in 2nd ch from hook and in each ch to end. (20 dc)", ""},
	} {
		list := check(uk + c.row + "\n")
		if c.word == "" {
			assert.Empty(t, list, c.row)
			continue
		}
		require.Len(t, list, 1, c.row)
		assert.Equal(t, "words/terms", list[0].Kind)
		assert.Contains(t, list[0].Message, c.word)
		assert.Equal(t, 8+len(c.word), list[0].Pos.EndCol)
	}
	list := check(uk + "Row 1: Sc in 2nd ch from hook and in each ch to end. (21 sts)\n")
	assert.True(t, slices.ContainsFunc(list, func(f finding.Finding) bool { return f.Kind == "rows/stated" }), list)
}

// The same ten double crochets in rows that say otherwise of the chain before them.
func TestAChainThatCountsInOneRowAndNotInAnotherIsTold(t *testing.T) {
	const start = "Ch 12.\nRow 1: Dc in 4th ch from hook (3 skipped ch count as dc), dc in each ch across, turn. (10 dc)\n"
	const counts = "Ch 3 (counts as dc), dc in next st and in each st across, turn. (10 dc)\n"
	const counts0 = "Ch 3, dc in next st and in each st across, turn. (10 dc)\n"
	const not = "Ch 3 (does not count as a st), dc in each st across, turn. (10 dc)\n"
	for _, c := range []struct {
		name, src, message string
		line               int
	}{
		{"one row and the next", "Terms: US\nBack\n" + start + "Row 2: " + counts + "Row 3: " + not, "ch 3 does not count as a stitch here, but in line 5 it counts", 6},
		{"the notes and a row", "Terms: US\nNotes: Ch 3 does not count as a stitch.\nBack\n" + start + "Row 2: " + counts, "but by the notes it does not count", 6},
		{"said once, where it stands first", "Terms: US\nBack\n" + start + "Row 2: " + counts + "Row 3: " + counts0, "", 0},
		{"one piece and another", "Terms: US\nBack\n" + start + "Row 2: " + counts + "Fasten off.\nFront\n" + start + "Row 2: " + not + "Fasten off.\n", "", 0},
	} {
		list := check(c.src)
		if c.line == 0 {
			assert.Empty(t, list, c.name)
			continue
		}
		require.Len(t, list, 1, c.name)
		assert.Equal(t, "rows/turning-chain", list[0].Kind, c.name)
		assert.Contains(t, list[0].Message, c.message, c.name)
		assert.Equal(t, c.line, list[0].Pos.Line, c.name)
	}
}
