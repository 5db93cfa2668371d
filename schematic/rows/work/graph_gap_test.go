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
