package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/sheet"
)

// Small charts worked on paper: the stitches after each row, the squares across, what the cast-on is a multiple of, and on
// which side each row's number stands (r, l). A right-side row is read from the right; rounds all are.
func TestSmallKnittingChartsAreCountedByHand(t *testing.T) {
	for name, c := range map[string]struct {
		rows   string
		counts []int
		wide   int
		repeat string
		sides  map[string]string
	}{
		// 3 x 4 + 2 = 14
		"rib": {"Cast on 14 sts.\nRow 1 (RS): *K2, p2; rep from * to last 2 sts, k2.\nRow 2: *P2, k2; rep from * to last 2 sts, p2.\n",
			[]int{14, 14}, 14, "multiple of 4 + 2", map[string]string{"1": "r", "2": "l"}},
		// 4 x 2 + 1 = 9; each row is worked alike
		"seed stitch": {"Cast on 9 sts.\nRow 1 (RS): *K1, p1; rep from * to last st, k1.\nRow 2: *K1, p1; rep from * to last st, k1.\nRow 3: *K1, p1; rep from * to last st, k1.\n",
			[]int{9, 9, 9}, 9, "multiple of 2 + 1", map[string]string{"1": "r", "2": "l", "3": "r"}},
		// 1 + 5 x 2 + 1 = 12: an over for each 2 together; 2 of edge are one multiple more
		"eyelets": {"Cast on 12 sts.\nRow 1 (RS): K1, *yo, k2tog; rep from * to last st, k1.\nRow 2: Purl.\n",
			[]int{12, 12}, 12, "multiple of 2", map[string]string{"1": "r", "2": "l"}},
		// the first row is a wrong-side row: its number stands at the left
		"from the wrong side": {"Cast on 12 sts.\nRow 1 (WS): *K1, p3; rep from * to end.\nRow 2: *K3, p1; rep from * to end.\n",
			[]int{12, 12}, 12, "multiple of 4", map[string]string{"1": "l", "2": "r"}},
		// 4 x 3 = 12, every round from the right
		"rounds": {"Cast on 12 sts, join in the round.\nRnd 1: *K2, p1; rep from * around.\nRnd 2: *K2, p1; rep from * around.\n",
			[]int{12, 12}, 12, "multiple of 3", map[string]string{"1": "r", "2": "r"}},
		// 7, and 2 more in each right-side row: 9, 9, 11
		"a point": {"Cast on 7 sts.\nRow 1 (RS): K1, yo, k to last st, yo, k1. (9 sts)\nRow 2: Purl.\nRow 3: K1, yo, k to last st, yo, k1. (11 sts)\n",
			[]int{9, 9, 11}, 11, "", map[string]string{"1": "r", "2": "l", "3": "r"}},
	} {
		w := fromText(t, c.rows)
		assert.Equal(t, c.counts, counts(w), name)
		_, _, wide := squaresOf(w)
		assert.Equal(t, c.wide, wide, name)
		if r, ok := w.repeat(); ok || c.repeat != "" {
			assert.Equal(t, c.repeat, r.String(), name)
		}
		for _, left := range []bool{false, true} {
			got, _ := sidesOf(t, w, left)
			want := c.sides
			if left {
				want = map[string]string{}
				for n, s := range c.sides {
					want[n] = map[string]string{"r": "l", "l": "r"}[s]
				}
			}
			assert.Equal(t, want, got, "%s, left-handed %v", name, left)
		}
	}
}

// sidesOf is on which side of the middle of all numbers and squares each number stands, and the level of each.
func sidesOf(t *testing.T, w *Work, left bool) (map[string]string, map[string]float64) {
	t.Helper()
	ss, err := Draw(w, Options{LeftHanded: left})
	require.NoError(t, err)
	require.Len(t, ss, 1)
	d := build(w, &Options{LeftHanded: left}, 1)
	sides, level := map[string]string{}, map[string]float64{}
	mid := (d.f.lo.X + d.f.hi.X) / 2
	for i, l := range d.f.nums.labels {
		sides[l.s] = "l"
		if (d.f.nums.labels[i].lo.X+l.hi.X)/2 > mid {
			sides[l.s] = "r"
		}
	}
	sheet.Walk(&ss[0].Root, func(it sheet.Item) {
		if x, ok := it.(*sheet.Text); ok && x.Class == "number" {
			level[x.S] = x.At.Y
		}
	})
	return sides, level
}

// Rows are read from below: a later row's number stands higher on the sheet, all steps alike.
func TestNumbersOfAKnittingChartRiseByASquare(t *testing.T) {
	_, at := sidesOf(t, fromText(t, "Cast on 6 sts.\nRow 1 (RS): K1, p4, k1.\nRow 2: P2, k2, p2.\nRow 3: K3, p1, k2.\nRow 4: K6.\n"), false)
	require.Len(t, at, 4)
	step := at["1"] - at["2"]
	assert.Positive(t, step)
	assert.InDelta(t, step, at["2"]-at["3"], 1e-6)
	assert.InDelta(t, step, at["3"]-at["4"], 1e-6)
}

// Half-way between heights of 0 and 4 a wave is 2 high, between 4 and 2 it is 3; beyond its end it goes on as its last step: 4 - 2 x 1.5 = 1.
func TestAWaveIsStraightBetweenItsHeights(t *testing.T) {
	w := &wave{from: 10, step: 2, y: []float64{0, 4, 2}}
	for x, want := range map[float64]float64{10: 0, 11: 2, 12: 4, 13: 3, 14: 2, 15: 1, 9: -2} {
		assert.InDelta(t, want, w.at(x), 1e-12, "at %v", x)
	}
	assert.Zero(t, (*wave)(nil).at(12))
}

// The room of marks is that of the marks alone, wherever the plane begins.
func TestTheRoomOfMarksIsTheirOwn(t *testing.T) {
	for _, off := range []float64{0, -20} {
		lo, hi := extent([]*mark{
			{lo: pt{X: 2 + off, Y: 3 + off}, hi: pt{X: 4 + off, Y: 5 + off}},
			{lo: pt{X: 6 + off, Y: 1 + off}, hi: pt{X: 7 + off, Y: 4 + off}},
		})
		assert.Equal(t, [2]pt{{X: 2 + off, Y: 1 + off}, {X: 7 + off, Y: 5 + off}}, [2]pt{lo, hi})
	}
}

// A repeat is outlined within the chart where it can be: the first and the last have edges of their own.
func TestARepeatIsOutlinedAwayFromTheEdges(t *testing.T) {
	assert.Equal(t, []int{1, 2, 3, 0, 4}, middleFirst(5))
	assert.Equal(t, []int{0, 1}, middleFirst(2))
}
