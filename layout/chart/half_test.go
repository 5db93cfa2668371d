package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Rows that begin in a ring and are turned fan out of it, whatever the ring is made of, and each row is worked from the other side.
func TestRowsThatBeginInARingFanOutOfIt(t *testing.T) {
	for text, stitches := range map[string][]int{
		"Ch 4, sl st in first ch to form ring.\nRow 1: Ch 3 (counts as dc), 6 dc in ring, turn. (7 dc)\nRow 2: Ch 3, dc in first dc, 2 dc in each dc across, turn. (14 dc)\n":                                     {7, 14},
		"Make a magic ring.\nRow 1: Ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in ring, turn.\nRow 2: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, turn.\n":                               {7, 7},
		"Row 1: Ch 5, join with sl st to form a ring, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in ring. Turn.\nRow 2: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, turn.\n":             {7, 7},
		"Make a magic ring.\nRow 1: Ch 3 (counts as dc), 3 dc in ring, ch 2, 4 dc in ring, turn.\nRow 2: Ch 3 (counts as dc), dc in next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each dc across, turn.\n": {9, 13},
	} {
		w := fromText(t, text)
		require.Len(t, w.Rows, 3, text)
		assert.True(t, w.Rows[0].Base && len(w.Rows[0].St) == 1 && w.Rows[0].St[0].Kind == ring, text)
		for i, n := range stitches {
			assert.Len(t, w.Rows[i+1].St, n, text)
			assert.Equal(t, i == 1, w.Rows[i+1].Wrong, text)
			assert.False(t, w.Rows[i+1].Round || w.Rows[i+1].Joined, text)
		}
		p, f := laid(w)
		assert.Empty(t, touching(p, f, 0.02), text)
	}
}
