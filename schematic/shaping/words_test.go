package shaping

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// A cloth of 3 mm by 4 mm: one stitch over one row is 5 mm aslant, by the triangle of 3, 4 and 5.
var threeByFour = Cloth{units.Int(3), units.Int(4)}

func TestAnEdgeInWordsAndItsSum(t *testing.T) {
	for _, c := range []struct {
		edge       Edge
		words, sum string
		mm         float64
	}{
		{Edge{off(3, 1, false)}, "bind off 3", "0.9 cm level + 0.8 cm up; in all 1.7 cm", 17},
		{Edge{off(4, 1, true)}, "leave 4", "1.2 cm level; in all 1.2 cm", 12},
		{Edge{off(2, 2, true)}, "leave 2, 2 times", "1.2 cm level + 0.4 cm up; in all 1.6 cm", 16},
		{Edge{off(1, 3, false)}, "bind off 1, 3 times", "0.9 cm level + 2.4 cm up; in all 3.3 cm", 33},
		{Edge{off(0, 4, false), {Even: 1}}, "work 1 row even", "0.4 cm up; in all 0.4 cm", 4},
		{Edge{{Every: 1, Times: 2}, {Even: 5}}, "decrease 1 every row 2 times; work 5 rows even", "√(0.6² + 0.8²) = 1 cm aslant + 2 cm up; in all 3 cm", 30},
		{Edge{{Every: 1, Times: 1, Even: 2}, {Every: 2, Times: 1}}, "decrease 1 every row once; work 2 rows even; decrease 1 every 2nd row once",
			"√(0.3² + 0.4²) = 0.5 cm aslant + 0.8 cm up + √(0.3² + 0.8²) = 0.85 cm aslant; in all 2.15 cm", 5 + 8 + math.Sqrt(73)},
		{nil, "work even", "; in all 0 cm", 0},
	} {
		assert.Equal(t, c.words, c.edge.String())
		assert.Equal(t, c.sum, c.edge.sum(threeByFour, units.CM), c.words)
		assert.InDelta(t, c.mm, c.edge.Length(threeByFour), 1e-9, c.words)
	}
	assert.Equal(t, []int{6, 6}, []int{off(1, 3, false).rows(), off(1, 4, true).rows() + off(1, 4, false).rows() - 5}, "left, a row lies between two")
	assert.Equal(t, 1+2*2+3, Edge{off(1, 1, false), {Every: 1, Times: 2}, {Even: 2}, off(9, 0, true)}.rows()+2)
	assert.Equal(t, []int{3, 2, 0}, []int{off(1, 3, true).in(), Move{Every: 4, Times: 2}.in(), Move{Even: 7}.in()})
}

func TestLengthsAndCountsAsTheyArePrinted(t *testing.T) {
	assert.Equal(t, []string{"1.23", "0.486", "1"}, []string{Long(units.Frac(1234, 100), units.CM), Long(units.Frac(1234, 100), units.Inch), Long(units.Frac(254, 10), units.Inch)})
	assert.Equal(t, []string{"+0.5 cm", "−0.5 cm", "±0"}, []string{Signed(units.Int(5), units.CM), Signed(units.Int(-5), units.CM), Signed(units.Int(0), units.CM)})
	third := units.Frac(1, 3)
	assert.Equal(t, []string{"0.33 sts", "1 st", "2 sts", "1 row", "0.33 rows", "0.33"}, []string{CountedIn(third, expr.Stitches), CountedIn(units.Int(1), expr.Stitches),
		CountedIn(units.Int(2), expr.Stitches), CountedIn(units.Int(1), expr.Rows), CountedIn(third, expr.Rows), CountedIn(third, expr.Dim(-1))})
}

func TestTheSmallestArmholes(t *testing.T) {
	even, err := Armhole(ArmholeIn{Body: 10, Cross: 10, Rows: 1, Step: 1, Leave: true, Cloth: threeByFour})
	require.NoError(t, err, "nothing to lose, in one row")
	assert.Equal(t, []int{0, 0, 1}, []int{even.First, even.Edge.in(), even.Edge.rows()})
	// 25 mm of 17 mm are 1.47 stitches, so 1, as is a third of 2: 1 at once and 1 by a decrease.
	p, err := Armhole(ArmholeIn{Body: 14, Cross: 10, Rows: 12, Step: 1, Cloth: Cloth{units.Int(17), units.Int(9)}})
	require.NoError(t, err)
	assert.Equal(t, Edge{off(1, 1, false), {Every: 1, Times: 1}, {Even: 9}}, p.Edge)
	assert.Equal(t, "bind off about a third of 2, and at least 2.5 cm (1), at the underarm: 1", p.Lines[1])
	// Of a stitch of 60 mm even one is more than 25 mm.
	p, err = Armhole(ArmholeIn{Body: 14, Cross: 10, Rows: 12, Step: 1, Cloth: Cloth{units.Int(60), units.Int(9)}})
	require.NoError(t, err)
	assert.Equal(t, 1, p.First)
	// Two thirds of 3 rows are the 2 of the bind-off: all at once, and the row that is left is even.
	p, err = Armhole(ArmholeIn{Body: 14, Cross: 10, Rows: 3, Step: 1, Cloth: threeByFour})
	require.NoError(t, err)
	assert.Equal(t, Edge{off(2, 1, false), {Even: 1}}, p.Edge)
}

func TestCountsRaglansAndYokesAtTheirEnds(t *testing.T) {
	step, first, ok := Rule{Multiple: 5, Plus: 3, Parity: Odd}.Step() // 3, 13, 23 …
	assert.Equal(t, []any{10, 3, true}, []any{step, first, ok})
	assert.Equal(t, "multiple of 2", Rule{Multiple: 2}.String())
	_, err := Raglan(RaglanIn{Back: 20, Front: 20, Sleeve: 10, Rows: 12, Step: 1})
	assert.NoError(t, err, "a neck and underarms of no stitches")
	_, err = Raglan(RaglanIn{Back: 60, Front: 60, Sleeve: 15, NeckBack: 20, NeckFront: 20, NeckSleeve: 9, Underarm: 4, Rows: 32, Step: 2})
	assert.EqualError(t, err, "the sleeve has 15 stitches: 4 at each underarm and 9 at the neck do not come out of them")
	p, err := Yoke(YokeIn{Start: 2, Neck: 1, Rows: 1, Rounds: 1})
	require.NoError(t, err)
	assert.Equal(t, []int{1, 1}, []int{p.Neck, p.Rounds[0].After})
}
