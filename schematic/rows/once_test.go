package rows

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
