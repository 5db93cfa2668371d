package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Counted by hand: 8 sc into the one chain, then 8 dc.
func TestAFirstRoundWithoutALabelIsARound(t *testing.T) {
	w := fromText(t, `Terms: US
Ch 2, 8 sc in 2nd st from hook, join in 1st sc.
Rnd 2: Ch 3 (counts as dc), dc in next 7 sc, join with sl st in top of ch-3. (8 dc)
Rnd 3: Ch 1 (does not count as a st), 2 sc in each dc around, join with sl st in first sc. (16 sc)
`)
	p, _ := laid(w)
	assert.Equal(t, circle, p.form)
	assert.Equal(t, []int{8, 8, 16}, counts(w))
}

func TestACrossingOfWhichNothingIsSaidIsNotDrawn(t *testing.T) {
	w := fromText(t, `Terms: US
Ch 9.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)
Row 2: Ch 1 (does not count as a st), sc in first sc, Cr3R, Cr3L, sc in last sc, turn. (8 sts)
`)
	row := &w.Rows[len(w.Rows)-1]
	assert.Contains(t, row.Unread, "is crossed")
	for i := range row.St {
		if s := &row.St[i]; s.Kind == unread {
			assert.Len(t, s.Feet, 1)
		}
	}
}

// Edge stitches are drawn with a sign of their own, and count.
func TestEdgeStitches(t *testing.T) {
	w := fromText(t, `Cast on 8 sts.
Row 1: edge st, k2, p2, k2, edge st. (8 sts)
Row 2: edge st, p2, k2, p2, edge st. (8 sts)
`)
	assert.Empty(t, w.Gaps())
	assert.Equal(t, []int{8, 8}, counts(w))
	assert.Equal(t, "edge", w.Rows[1].St[0].Kind.ID)
}

// Round 2 can't be read and says no count: round 3, which stands on it, is not drawn on the ring.
func TestARoundOnAnUnreadOneIsNotDrawn(t *testing.T) {
	w := fromText(t, `Terms: US
Ch 5, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st in top of ch-3. (12 dc)
Rnd 2: Flourish the yarn in the usual way for a garland around, join.
Rnd 3: Ch 3 (counts as dc), 6 dc in same sp, 7 dc in next ch-1 sp and each ch-1 sp around, join with sl st in top of ch-3.
`)
	require.NotEmpty(t, w.Gaps())
	assert.Equal(t, []int{12}, counts(w))
}

// A twist that the text only names leans as its name says; a cable that it does not describe takes its squares as one.
func TestACrossingThatIsOnlyNamed(t *testing.T) {
	w := fromText(t, "Cast on 10 sts.\nRow 1 (RS): P1, RT, p1, LT, C4B.\nRow 2: P4, k2, p2, k2.\n")
	rows, _ := columns(w)
	r := rows[0]
	assert.Equal(t, []int{4, 2, 1, 2, 1}, []int{r.crossing(0), r.crossing(4), r.crossing(6), r.crossing(7), r.crossing(9)})
	assert.True(t, r.cells[4].st.Cross.Left)
	assert.False(t, r.cells[7].st.Cross.Left)
	assert.Nil(t, r.cells[0].st.Cross)
}

// Stitches that cross stand within the room of their crossing, level with the others, and their row is turned like any.
func TestStitchesThatCrossStandOverTheirCrossing(t *testing.T) {
	for text, over := range map[string]float64{ // columns between a foot and the head over it
		"Ch 21.\nRow 1 (RS): Dc in 4th ch from hook and in each ch across, turn. (19 dc)\nRow 2: Ch 1, sc in each st across, turn.\n" +
			"Row 3: Ch 3 (counts as dc), *skip next sc, dc in next sc, dc in skipped sc; rep from * across, turn. (19 dc)\nRow 4: Ch 1, sc in each st across, turn.\n": 1,
		"Ch 22.\nRow 1 (RS): Dc in 4th ch from hook and in each ch across, turn. (20 dc)\nRow 2: Ch 2, hdc in next 7 sts, BPdc around next 4 sts, hdc in last 8 sts, turn.\n" +
			"Row 3: Ch 2, hdc in next 7 sts, skip next 2 sts, FPtr around next 2 sts, working in front, FPtr around 2 skipped sts, hdc in last 8 sts, turn.\n": 2,
	} {
		w := fromText(t, text)
		p, _ := laid(w)
		const column = 2 * 1.25
		for r, l := range p.lines[1:] {
			assert.Equal(t, r%2 == 1, l.row.Wrong, "row %d", r+1)
			for _, n := range l.nodes {
				if len(n.feet) == 1 {
					assert.InDelta(t, n.feet[0].q, n.q, (over+0.5)*column, "row %d", r+1)
				}
			}
		}
		assert.Less(t, p.lines[3].top-p.lines[2].top, 3*tall+clear+1, text)
	}
}
