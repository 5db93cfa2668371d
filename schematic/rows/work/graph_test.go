package work

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/stitch"
)

// standing counts the stitches of a row that stand in its count.
func standing(r GraphRow) int {
	n := 0
	for _, s := range r.Stitches {
		if s.Counts && s.Stitch != nil {
			n++
		}
	}
	return n
}

func graph(t *testing.T, src string) *Graph {
	t.Helper()
	g, ok := GraphOf(Read("t", []byte(src), Options{TermsSet: true}), "", 0)
	require.True(t, ok)
	return g
}

func TestAFlatRowMeetsTheRowBelowFromItsOtherEnd(t *testing.T) {
	g := graph(t, "Notes: Ch 1 does not count as a st.\nCh 4.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (3 sc)\nRow 2: Ch 1, sc in each st across, turn. (3 sc)\n")
	require.Len(t, g.Rows, 3)
	row1, row2 := g.Rows[1], g.Rows[2]
	assert.Equal(t, []int{2}, row1.Stitches[0].Feet, "the 2nd chain from the hook is the last but one chained")
	assert.True(t, row2.Stitches[0].Turning)
	assert.False(t, row2.Stitches[0].Counts)
	assert.Equal(t, []int{2}, row2.Stitches[1].Feet)
	assert.Equal(t, []int{0}, row2.Stitches[3].Feet)
}

func TestAShellSharesAFootAndADecreaseHasTwo(t *testing.T) {
	g := graph(t, "Notes: Ch 1 does not count as a st.\nCh 8.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (7 sc)\nRow 2: Ch 1, sc2tog, skip next st, 5 dc in next st, skip next st, sc2tog, turn. (5 dc, 2 sc)\n")
	row := g.Rows[2].Stitches
	require.Len(t, row, 8)
	assert.Equal(t, []int{6, 5}, row[1].Feet)
	for i := 2; i < 7; i++ {
		assert.Equal(t, []int{3}, row[i].Feet)
	}
}

func TestARoundMeetsTheRoundBelowFromItsBeginning(t *testing.T) {
	g := graph(t, "Ch 4, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st to top of ch-3. (12 dc)\nRnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around, join with sl st to top of ch-3. (24 dc)\n")
	r := g.Rows[2]
	require.True(t, r.Round)
	assert.True(t, r.Stitches[0].Turning && r.Stitches[0].Counts)
	assert.Equal(t, 3, r.Stitches[0].Chain)
	assert.Equal(t, []int{0}, r.Stitches[1].Feet)
	assert.Equal(t, []int{1}, r.Stitches[2].Feet)
	assert.Equal(t, []int{11}, r.Stitches[23].Feet)
	assert.True(t, g.Rows[1].Stitches[5].Ring)
}

func TestChainArchesAndWhatIsWorkedIntoThemAreInTheGraph(t *testing.T) {
	g := graph(t, "Notes: Ch 1 does not count as a st.\nCh 8.\nRow 1: Sc in 2nd ch from hook, *ch 3, skip next 2 ch, sc in next ch; rep from * across, turn. (3 sc, 2 ch-3 sps)\nRow 2: Ch 1, 3 sc in each ch-3 sp across, turn. (6 sc)\n")
	r1, r2 := g.Rows[1].Stitches, g.Rows[2].Stitches
	require.Len(t, r1, 5)
	assert.Equal(t, 3, r1[1].Chain)
	assert.Nil(t, r1[1].Stitch)
	assert.Equal(t, []int{3}, r2[1].Feet)
	assert.Equal(t, []int{1}, r2[6].Feet)
}

func TestASlippedStitchPassedOverIsOneDecrease(t *testing.T) {
	g := graph(t, "Cast on 5 sts.\nRow 1: K1, sl 1, k2tog, psso, k1. (3 sts)\n")
	r := g.Rows[1].Stitches
	require.Len(t, r, 3)
	assert.Equal(t, stitch.ByID("sk2p"), r[1].Stitch)
	assert.Len(t, r[1].Feet, 3)
}
