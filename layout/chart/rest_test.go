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
