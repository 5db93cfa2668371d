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
