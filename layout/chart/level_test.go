package chart

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A triangle from its centre grows by two groups in the middle of each row, so that its other groups lean outwards: they lean less than
// half a right angle and a little, and the heads of a row lie in one line.
func TestATriangleFromItsCentreHasStraightRows(t *testing.T) {
	p, _ := laid(fromText(t, "Terms: US\nCh 4, sl st in first ch to form ring.\nRow 1: Ch 4 (counts as dc, ch 1), 3 dc in ring, ch 2, 3 dc in ring, ch 1, dc in ring. Turn.\n"+
		"Row 2: Ch 4 (counts as dc, ch 1), 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in ch-2 sp, ch 1, 3 dc in last sp, ch 1, dc in 3rd ch of ch-4. Turn.\n"+
		"Row 3: Ch 4 (counts as dc, ch 1), *3 dc in next ch-1 sp, ch 1; rep from * once, (3 dc, ch 2, 3 dc) in ch-2 sp, *ch 1, 3 dc in next ch-1 sp; rep from * once, ch 1, dc in 3rd ch of ch-4. Turn.\n"))
	require.Len(t, p.lines, 4)
	for _, l := range p.lines[2:] {
		for _, n := range l.standing() {
			if len(n.feet) > 0 {
				assert.InDelta(t, l.standing()[0].v, n.v, 0.5, "row %d", l.n)
				assert.LessOrEqual(t, math.Abs(p.lean(n)), steepAll/math.Sqrt(1-steepAll*steepAll)*(n.v-n.fv)+0.01)
			}
		}
	}
}

func TestAChainBesideABreakKeepsItsLength(t *testing.T) {
	p, _ := laid(fromText(t, "Terms: US\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across. Turn.\n"))
	base := p.lines[0].nodes
	last := base[len(base)-1]
	last.q += 3 * (last.q - base[len(base)-2].q) // as far off as behind a break
	before := base[len(base)-2]
	assert.InDelta(t, p.chainHalf(base[len(base)-3]), p.chainHalf(before), 1e-9, "it has no more room than its nearer neighbour leaves")
}
