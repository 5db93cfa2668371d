package alter

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

// seamed is a model of choices that move the edge of one join by a stitch each, and a measurement of their own: off so far by offs, and by up for a step up.
func seamed(apart float64, offs, up []float64) *together {
	l := &together{now: []float64{0, apart}, costs: []func(float64) float64{free, apartCost(0.25, costUnlike)}, movedBy: make([][]int, 2+len(offs))}
	for i := range offs {
		l.choices, l.moved, l.base = append(l.choices, choice{}), append(l.moved, 0), append(l.base, 0)
		l.now, l.costs = append(l.now, offs[i]), append(l.costs, offCost(0.5))
		both := []effect{{1, 1}, {2 + i, up[i]}}
		l.does = append(l.does, [2][]effect{both, both})
		l.movedBy[1], l.movedBy[2+i] = append(l.movedBy[1], i), append(l.movedBy[2+i], i)
	}
	return l
}

// By hand: edges a stitch apart meet if one of three counts falls by 1. Of -0.2, 0.6 and 0.1 the second comes to -0.4, the others to -1.2 and -0.9.
func TestTheCountThatCostsLeastIsMoved(t *testing.T) {
	l := seamed(1, []float64{-0.2, 0.6, 0.1}, []float64{1, 1, 1})
	l.settle(3)
	assert.InDelta(t, 0, l.now[1], 1e-9)
	assert.Equal(t, []int{0, -1, 0}, l.moved)

	l = seamed(3, []float64{0.9, 0.9, 0.9}, []float64{1, 1, 1})
	l.settle(3)
	assert.Equal(t, []int{-1, -1, -1}, l.moved, "edges three stitches apart: each of three counts that are 0.9 too many falls by 1, and all are 0.1 too few")
}

// By hand: two counts of 0.9 too many and 0.9 too few move the same edge, which may not move: moved alone each parts it, moved together neither does.
func TestTwoCountsAreMovedAtOnce(t *testing.T) {
	l := seamed(0, []float64{0.9, -0.9}, []float64{1, 1})
	l.settle(1)
	assert.Equal(t, []int{0, 0}, l.moved)
	l.settle(2)
	assert.Equal(t, []int{-1, 1}, l.moved)
}

// No choice is moved farther than two steps, so that a search ends.
func TestNoChoiceIsMovedFar(t *testing.T) {
	l := seamed(9, []float64{0}, []float64{0})
	l.settle(3)
	assert.LessOrEqual(t, -farthest, l.moved[0])
}

// By hand, at 87 stitches for 100 of a raglan of 94, whose neck of 34 and underarms of 5 leave 25 decreases a side: 81.78, 29.58 and 4.35 are 82, 30 and 4, which leave 22.
// The sleeve's 64, 4 and 5 are 55.68, 3.48 and 4.35, nearest 56, 3 and 4, which leave 22.5: its raglan would not fit. With 4 at its top, off by 0.52, it does, and nothing else
// moves; 83 for the back would put back and front 1.22 off.
func TestARaglanTakesTheCountsThatFitTogether(t *testing.T) {
	piece := func(name, sts, neck string) string {
		return "  - piece: " + name + "\n    sections:\n      - cast on: " + sts + "\n      - even: 44 rows\n        width: widest\n      - {leave: 5, at: both edges, edge: underarm}\n" +
			"      - {decrease: 1, at: both edges, edge: raglan, every: 1 row, times: 25, to: " + neck + "}\n      - {bind off: all, edge: neck}\n"
	}
	p := given.Text(t, "version: 1\npattern: T\nterms: US\nunits: cm\nsizes: S\ngauges: {fabric: 17 sts and 13 rows over 10 cm in sc}\npieces:\n"+
		piece("Back", "94", "34")+piece("Front", "94", "34")+piece("Sleeve", "64", "4")+"    make: 2\n"+
		"joins:\n  - {sew: Sleeve raglan, into: [Back raglan, Front raglan], how: stitch to stitch}\n  - {sew: Sleeve underarm, to: [Back underarm, Front underarm], how: stitch to stitch}\n")
	g := p.Gauges[0]
	g.Stitches = g.Stitches.Mul(units.Frac(87, 100))
	a, found := Alter(p, Request{Gauges: append(p.Gauges[:0:0], g)})
	require.NotNil(t, a, "%v", found)
	counts := map[string][]int{}
	for _, m := range a.Now.Pieces {
		for _, s := range m.Steps {
			counts[m.Name] = append(counts[m.Name], s.After)
		}
	}
	assert.Equal(t, []int{82, 82, 74, 30, 0}, counts["Back"])
	assert.Equal(t, []int{82, 82, 74, 30, 0}, counts["Front"])
	assert.Equal(t, []int{56, 56, 48, 4, 0}, counts["Sleeve"])
}
