package work

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func graphOfText(t *testing.T, text string) *Graph {
	t.Helper()
	x := Read("t.txt", []byte(text), Options{})
	g, ok := GraphOf(x, "", 0)
	require.True(t, ok)
	return g
}

func TestARowThatWasNotReadKeepsItsNumberAndItsSide(t *testing.T) {
	g := graphOfText(t, `Terms: UK
Cast on 10 sts.
Row 1 (RS): P2, k6, p2. (10 sts)
Row 2: K2, p6, k2. (10 sts)
Row 3: P2, c6q, p2. (10 sts)
Row 4: K2, p6, k2. (10 sts)
`)
	require.Len(t, g.Rows, 5)
	assert.Equal(t, "c6q", g.Rows[3].Unread)
	assert.Equal(t, []int{3, 4}, []int{g.Rows[3].Number, g.Rows[4].Number})
	assert.Equal(t, []bool{true, false}, []bool{g.Rows[3].RS, g.Rows[4].RS})
	assert.Len(t, g.Rows[3].Stitches, 10)
}

func TestNothingStandsOnARowWhoseCountIsNotKnown(t *testing.T) {
	g := graphOfText(t, `Terms: US
Ch 11.
Row 1: Sc in 2nd ch from hook, glorp in each ch.
Row 2: Ch 1, sc in each st across, turn.
`)
	require.Len(t, g.Rows, 3)
	assert.True(t, g.Rows[1].Unknown)
	assert.True(t, g.Rows[2].Unknown)
	assert.Empty(t, g.Rows[2].Stitches)
	assert.Equal(t, 2, g.Rows[2].Number)
}

func TestACrossingStandsInTheGraphStitchByStitch(t *testing.T) {
	g := graphOfText(t, `Terms: UK
Special stitches: C6B = slip next 3 sts onto cable needle and hold at back, k3, k3 from cable needle.
Cast on 10 sts.
Row 1 (RS): P2, C6B, p2. (10 sts)
`)
	row := g.Rows[1].Stitches
	require.Len(t, row, 10)
	for i := 2; i < 8; i++ {
		require.NotNil(t, row[i].Cross, i)
		assert.Equal(t, i-2, row[i].At)
		assert.Len(t, row[i].Feet, 1)
	}
	assert.Nil(t, row[8].Cross)
}

func TestNoPlaceStandsOnARowOfWhichNothingIsKnown(t *testing.T) {
	g := &Graph{Rows: []GraphRow{{Unknown: true}}, places: []int{0, 1}}
	assert.Nil(t, g.standing(1))
	g.Rows[0].Stitches = []GraphStitch{{Stitch: chainStitch()}, {}}
	assert.Equal(t, []int{0}, g.standing(1), "the second is a space")
}

func TestStitchesIntoThoseThatAnEarlierRoundSkippedAreNotDrawn(t *testing.T) {
	g := graphOfText(t, `Terms: US
Ch 4, join with sl st to form ring.
Rnd 1: Ch 1, 12 sc in ring, join.
Rnd 2: Ch 1, sc in same st, ch 1, skip next st, *sc in next st, ch 1, skip next st; rep from * around, join.
Rnd 3: Ch 1, *sc in next sc, dc in next skipped st in rnd 1; rep from * around, join.
`)
	require.Len(t, g.Rows, 4)
	assert.False(t, g.Rows[2].Unknown)
	assert.Equal(t, "stitches go into some that an earlier row skipped", g.Rows[3].Unread)
}

// Counted by hand: twelve stitches have twelve gaps; the chain stands on the first stitch, eleven more in the gaps behind the first eleven.
func TestStitchesThatRepeatOneBetweenTwoStandBetweenTwo(t *testing.T) {
	g := graphOfText(t, "Mat\nRnd 1: Ch 6, sl st in first ch to form ring, ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\n"+
		"Rnd 2: Ch 4 (counts as dc, ch 1), dc between dc of rnd below, (ch 1, dc) 10 times, ch 1, join with sl st in 3rd ch of ch-4. (12 dc)\n")
	n := 0
	for _, s := range g.Rows[2].Stitches {
		if s.Stitch != nil && !s.Turning {
			assert.True(t, s.Between, n)
			assert.Equal(t, []int{n}, s.Feet)
			n++
		}
	}
	assert.Equal(t, 11, n)
}

// The last of seven stitches goes into the chain itself, which is the first stitch of the row below, not into the space beside it; one that
// would stand behind a chain is told by no other words, so that its row is a gap.
func TestTheLastStitchIsWorkedIntoTheTurningChain(t *testing.T) {
	const start = "Strip\nCh 17.\nRow 1: Dc in 4th ch from hook and in each ch across. (15 dc)\n" +
		"Row 2: Ch 4 (counts as dc, ch 1), skip first 2 dc, dc in next dc, *ch 1, skip next dc, dc in next dc; rep from * to end. Turn.\n"
	g := graphOfText(t, start+"Row 3: Ch 4, *tr in next ch-1 sp; rep from * to end, working last tr in 3rd of 4 ch.\n")
	row := g.Rows[3].Stitches
	assert.Len(t, row, 8)
	assert.Equal(t, []int{3}, row[6].Feet)
	assert.Equal(t, []int{0}, row[7].Feet)
	g = graphOfText(t, start+"Row 3: Ch 4, *tr in next ch-1 sp, ch 1; rep from * to end. Work your last tr around the ch 4 at the end of the row.\n")
	assert.NotEmpty(t, g.Rows[3].Unread)
}

// Three shells that nothing tells are no count that a row could stand on, nor is a chain before the next one part of an unread row.
func TestACountOfShellsThatNothingTellsFoundsNoRow(t *testing.T) {
	g := graphOfText(t, "Motif\nRow 1: Ch 6, dc in 4th ch from hook, dc in next 2 ch. First shell made (1 shell)\n"+
		"Row 2: Ch 6, dc in 4th ch from hook, dc in next 2 ch, beginning shell made, turn row 1 and flip shell upward, (slip st in first st, ch 3, 3 dc) all in marked ch-3 sp of previous row.\n"+
		"Row 3: Beginning shell, turn previous row, *shell; repeat from * across. (3 shells)\nRow 4: Beginning shell, turn previous row, *shell; repeat from * across. (4 shells)\n")
	require.Len(t, g.Rows, 5)
	for _, row := range g.Rows[3:] {
		assert.Empty(t, row.Stitches, row.Number)
		assert.True(t, row.Unknown, row.Number)
	}
	g.chained(6)
	assert.Empty(t, g.Rows[4].Stitches)
}
