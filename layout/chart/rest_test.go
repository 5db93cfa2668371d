package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/stitch"
)

// Rows that an earlier line tells by their numbers are drawn behind the last labelled one, and all even ones as far as they are repeated.
func TestRowsToldEarlierAreDrawnToTheLast(t *testing.T) {
	for text, last := range map[string]int{
		"Cast on 9 sts.\nRows 1, 3, and 5: K2tog, yo, k to end.\nRows 2, 4, 6, 8 and 10: Purl.\nRows 7 and 9: Knit.\n":                             10,
		"Cast on 9 sts.\nRow 1: Knit.\nRow 2 and all even rows: Purl.\nRow 3: P3, k to end.\nRow 5: P5, k to end.\nRepeat rows 1-6 for pattern.\n": 6,
		"Cast on 9 sts.\nRow 1: Knit.\nRow 2 and all even rows: Purl.\nRow 3: P3, k to end.\nRow 5: P5, k to end.\n":                               5,
	} {
		w := fromTextOf(text)
		assert.Equal(t, last, w.Rows[len(w.Rows)-1].Number, text)
	}
}

// In rows what hangs on nothing is told, beside stitches that stand on something: chains and picots do.
func TestAStitchThatHangsOnNothingIsToldInRows(t *testing.T) {
	dc, picot := stitch.ByID("dc"), stitch.ByID("picot")
	on := Row{St: []St{{Kind: dc, Feet: []int{0}}, {Chain: 3}, {Kind: picot}, {Kind: dc, Feet: []int{2}}}}
	assert.False(t, on.hangs())
	off := Row{St: append(on.St, St{Kind: dc})}
	assert.True(t, off.hangs())
	off.Round = true
	assert.False(t, off.hangs(), "in a round it stands in the ring")
}

// Yarn that is cut on a line of its own ends no motif; a round that is cut into lines is one; a space that is named without 'next'
// is the one in which yarn was joined; a chain before a slip stitch is a loop. Counted by hand.
func TestRoundsOfAMotifGoOnAsTheyArePrinted(t *testing.T) {
	w := fromTextOf(`Terms: US
Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st in top of ch-3.
Fasten off and weave in ends.
Rnd 2: Join red in any st, ch 1, sc in same st.
*Ch 5, skip next 2 dc, sc in next dc.
Repeat from * 2 more times, ch 5, join with sl st in first sc.
Fasten off.
Rnd 3: Join blue in any ch-5 sp, ch 1, (sc, 5 dc, sc) in ch-5 sp, *(sc, 5 dc, sc) in next ch-5 sp; rep from * 2 more times, join with sl st in first sc.
Fasten off.
Rnd 4: Ch 4, sl st between 1st and 2nd petals, *ch 4, sl st between next 2 petals; rep from * 2 more times.
`)
	assert.Empty(t, w.Gaps())
	assert.Equal(t, []int{12, 4, 28, 4}, counts(w))
	arches := 0
	for _, s := range w.Rows[len(w.Rows)-1].St {
		if s.arch() {
			arches++
		}
	}
	assert.Equal(t, 4, arches)
}

// What stands before a list of stitches is the place of all of it; what is passed may be told in two kinds; the last repeat may leave
// stitches out. Counted by hand.
func TestListsAndLastRepeatsAsDictionariesPrintThem(t *testing.T) {
	w := fromTextOf(`Terms: US
Ch 8, join with sl st to form ring.
Rnd 1: Ch 3 (counts as dc), 17 dc in ring. Join with sl st to top of ch-3.
Rnd 2: Ch 4 (counts as dc and ch-1), dc in same place as sl st, *ch 3, skip 2 dc; in next dc make dc, ch 1, dc. Repeat from * around, ending with ch 3, sl st in 3rd st of ch-4.
`)
	assert.Empty(t, w.Gaps())
	assert.Equal(t, []int{18, 12}, counts(w))
	w = fromTextOf(`Terms: US
Ch 26 (8+8+8+2= 26).
Row 1: 1sc into 2nd ch from hook, *2ch, skip 3ch, 4tr into next ch, 2ch, skip 3ch, 1sc into next ch; rep from * to end, turn.
Row 2: 1ch, 1sc into first st, *3ch, skip 2ch and 1tr, 1sc into next tr, 3ch, skip 2tr and 2ch, 1sc into next sc; rep from * to end, skip tch, turn.
Row 3: 4ch (count as 1tr), 1tr into first st, *2ch, skip 3ch, 1sc into next sc, 2ch, skip 3ch, 4tr into next sc; rep from * to end omitting 1tr at end of last rep, skip tch, turn.
`)
	assert.Empty(t, w.Gaps())
	assert.Equal(t, []int{16, 7, 16}, counts(w))
}

// A crossing that its row describes behind its name is drawn, there and where it is named again; a short name that nobody tells
// is told as a gap.
func TestACrossingIsDescribedInItsRow(t *testing.T) {
	w := fromTextOf(`Cast on 12 sts.
Row 1: P3, Front Cross (slip next 3 stitches to cable needle and hold in front, knit next 3 stitches, then knit 3 stitches from cable needle), P3.
Row 2: K3, P6, K3.
Row 3: P3, Front Cross, P3.
`)
	assert.Empty(t, w.Gaps())
	for _, r := range []int{1, 3} {
		crossed := 0
		for _, s := range w.Rows[r].St {
			if s.Cross != nil {
				crossed++
			}
		}
		assert.Equal(t, 6, crossed, "row %d", r)
	}
	w = fromTextOf("Cast on 12 sts.\nRow 1: P3, 2/2RPC, P5.\nRow 2: Knit.\nRow 3: P3, Spiral5, P4.\n")
	assert.NotEmpty(t, w.Gaps())
}

// A cable of three groups keeps the middle one between the others; stitches bound off within a row are squares of their own,
// under which those stand that are cast on over them.
func TestThreeGroupsAndBoundOffStitchesAreDrawn(t *testing.T) {
	w := fromTextOf("Cast on 12 sts.\nRow 1 (RS): P3, 2/1/2 RPC, P4.\nRow 2: K4, bind off 3 sts, k5.\nRow 3: P5, cast on 3 sts, p4.\n")
	assert.Empty(t, w.Gaps())
	c := w.Rows[1].St[3].Cross
	if assert.NotNil(t, c) {
		assert.Equal(t, [3]int{2, 1, 2}, [3]int{c.Over, c.Mid, c.Held})
	}
	rows, wide := columns(w)
	assert.Equal(t, 12, wide)
	assert.Len(t, rows[1].cells, 12)
	off := 0
	for i := range rows[1].cells {
		if rows[1].cells[i].st.off() {
			off++
		}
	}
	assert.Equal(t, 3, off)
}
