package shaping

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/units"
)

// The sums of one cap, in cloth of 3 mm by 4 mm: 3 stitches bound off (2 rows), 2 decreases of one a row, 10 slow ones, 2 of one a row,
// 2 stitches bound off (2 rows), a top of 10. Without the slow ones: 10 × 3 + 2 × (10 + 10 + 5 × 3 + 4 × 4) = 132.
func TestTheSlowRowsOfACap(t *testing.T) {
	in := CapIn{First: 3, Cloth: threeByFour, Step: 1}
	shape := capShape{fast: 1, low: 2, high: 2, slow: 10, off: 2, n: 1, top: 10}
	settled := func(in CapIn, s capShape, goal float64) (int, float64, bool) {
		ok := s.settle(in, goal)
		return s.slowRows, s.length, ok
	}
	// 23 rows for 10: 3 every 3rd row, 9 by 36 mm, and 7 every 2nd, 21 by 56.
	long := 132 + 2*(math.Sqrt(9*9+36*36)+math.Sqrt(21*21+56*56))
	for _, off := range []float64{-3, 0, 3} { // a row more or less is about 7.4 mm on two sides
		rows, length, ok := settled(in, shape, long+off)
		assert.True(t, ok)
		assert.Equal(t, 23, rows)
		assert.InDelta(t, long, length, 1e-9)
	}
	_, _, ok := settled(in, shape, 131)
	assert.False(t, ok, "shorter than what is not slow")
	// 11 rows are the fewest, slower than a decrease a row: 1 every 2nd row, 3 by 8, and 9 every row, 27 by 36.
	rows, length, ok := settled(in, shape, 132+2*54)
	assert.True(t, ok)
	assert.Equal(t, 11, rows)
	assert.InDelta(t, 132+2*(math.Sqrt(73)+45), length, 1e-9)
	_, _, ok = settled(in, shape, 132+2*50)
	assert.False(t, ok, "50 mm, 10 rows: as quick as the quick ones")
	bare := shape
	bare.low, bare.high = 0, 0 // 132 − 2 × 20 = 92
	rows, _, ok = settled(in, bare, 92+2*50)
	assert.Equal(t, []any{10, true}, []any{rows, ok}, "without quick ones it may be")

	// On right-side rows alone, quick ones every 2nd row, 6 by 16 mm: 30 + 2 × (2 × √292 + 31).
	in.Step, shape.fast = 2, 2
	fixed := 30 + 2*(2*math.Sqrt(6*6+16*16)+31)
	of24, of26 := math.Sqrt(6*6+32*32)+math.Sqrt(24*24+64*64), math.Sqrt(9*9+48*48)+math.Sqrt(21*21+56*56) // 100.91 and 108.64
	for want, goal := range map[int]float64{24: fixed + 2*104, 26: fixed + 2*105} {                        // each by itself would be 25 rows
		rows, length, ok := settled(in, shape, goal)
		assert.True(t, ok)
		assert.Equal(t, want, rows)
		assert.InDelta(t, fixed+2*map[int]float64{24: of24, 26: of26}[want], length, 1e-9)
	}

	in.Step, shape.fast, shape.slow = 1, 1, 0
	for over, want := range map[float64]bool{0: true, 3: true, 5: false, 40: false} { // 4 mm over on two sides are half a row
		_, length, ok := settled(in, shape, 132+over)
		assert.Equal(t, want, ok, "%v", over)
		if ok {
			assert.InDelta(t, 132, length, 1e-9)
		}
	}
}

func TestWhatACapIsWorthAndHowHighItIs(t *testing.T) {
	// 16 decreases: a quarter is 4. A top of 30 mm for 24 is 0.25 off; 0.2 for a step, |2 − 4| / 5, |5 − 4| / 5, 3 × 0.2.
	s := capShape{top: 10, n: 1, low: 2, high: 5, off: 3, slow: 9, slowRows: 44}
	worth := func(s capShape, k int, asked bool) float64 { s.judge(k, 24, 3, asked); return s.worth }
	assert.InDelta(t, 1.65, worth(s, 16, false), 1e-9)
	assert.InDelta(t, 3.9, worth(s, 16, true), 1e-9, "a top that was asked for counts ten times")
	s.slowRows = 54
	assert.InDelta(t, 3.65, worth(s, 16, false), 1e-9, "every 6th row is 2 more than every 4th")
	// 18: 4.5; |2 − 4.5| / 5.5 and |5 − 4.5| / 5.5 are 3 / 5.5.
	assert.InDelta(t, 0.25+0.2+3/5.5+0.6+2, worth(s, 18, false), 1e-9)
	s.slow = 0
	assert.InDelta(t, 1.65, worth(s, 16, false), 1e-9)

	s = capShape{fast: 2, low: 2, high: 3, slowRows: 20, off: 2, n: 3}
	assert.Equal(t, 2+6+10+20, s.height(CapIn{First: 3}))
	assert.Equal(t, 0+2+10+20, s.height(CapIn{First: 3, Leave: true}), "left, a row lies between two")

	assert.Equal(t, []units.Num{units.Int(75), units.Int(30)}, []units.Num{wished(CapIn{Upper: 60, Cloth: Cloth{Stitch: units.Int(5)}}), wished(CapIn{Upper: 60, Top: units.Int(30)})})
	c := &capSearch{in: CapIn{Cloth: Cloth{Stitch: units.Int(5)}}, wish: 75}
	for top, far := range map[int]bool{13: true, 14: false, 15: false, 16: false, 17: true} {
		assert.Equal(t, far, c.far(capShape{top: top}), "%d", top)
	}
	c.in.Top = units.Int(75)
	c.found = map[int]capShape{17: {top: 17}}
	assert.False(t, c.meets())
	c.found[16] = capShape{top: 16}
	assert.True(t, c.meets())
	c.in.Top, c.found = units.Int(0), map[int]capShape{30: {top: 30}}
	assert.True(t, c.meets(), "no top was asked for")
}

func TestCapsOfTwoSizesCostWhatTheyDiffer(t *testing.T) {
	five := Cloth{units.Int(5), units.Int(5)}
	size := func(goal, wish float64, upper int) capSize {
		return capSize{search: &capSearch{in: CapIn{Upper: upper, First: 1, Cloth: five}, goal: goal, wish: wish}}
	}
	line := capLine{size(400, 50, 60), size(420, 60, 62)} // 100 and 110 mm more than the sleeve is wide
	a, b := capShape{top: 12, slowRows: 30}, capShape{top: 14, slowRows: 30}
	// 60/50 = 1.2 and 70/60 = 1.1667: twice the difference.
	assert.InDelta(t, 2*(1.2-7.0/6), line.apart(1, a, b), 1e-9)
	b.top = 10 // 50/60 = 0.8333; narrower than before by 10 mm of 60
	assert.InDelta(t, 2*(1.2-5.0/6)+1+1.0/6, line.apart(1, a, b), 1e-9)
	b.top, b.slowRows = 14, 24 // 6 rows lower
	assert.InDelta(t, 2*(1.2-7.0/6)+1.5, line.apart(1, a, b), 1e-9)
	line[1] = size(420, 60, 65) // 95 mm more than the sleeve is wide: the cap may be lower
	assert.InDelta(t, 2*(1.2-7.0/6), line.apart(1, a, b), 1e-9)
	line[1] = size(420, 40, 62) // a narrower top is wished for
	assert.InDelta(t, 2*(50.0/40-1.2), line.apart(1, a, capShape{top: 10, slowRows: 30}), 1e-9)
	costs := []float64{2, 1, 1, 3}
	assert.Equal(t, 1, least(4, func(i int) float64 { return costs[i] }), "the first of those that cost least")
}

func TestACapIsWrittenFromItsShape(t *testing.T) {
	in := CapIn{Upper: 60, First: 3, Armhole: units.Int(360), Cloth: threeByFour, Step: 1}
	p := CapPlan{Target: in.Armhole}
	require.NoError(t, p.fill(in, capShape{fast: 1, low: 2, high: 2, slow: 10, slowRows: 23, off: 2, n: 1, top: 22}, 54))
	assert.Equal(t, [4]Run{{1, 2}, {3, 3}, {2, 7}, {1, 2}}, p.Slots)
	assert.Equal(t, Edge{off(3, 1, false), {Every: 1, Times: 2}, {Every: 3, Times: 3}, {Every: 2, Times: 7}, {Every: 1, Times: 2}, off(2, 1, false)}, p.Edge)
	assert.Equal(t, []int{22, 2 + 2 + 9 + 14 + 2 + 2}, []int{p.Top, p.Rows})
	// 17 + 10 + √(9² + 36²) + √(21² + 56²) + 10 + 14 = 147.917, twice that and 66.
	assert.InDelta(t, 361.833, p.Length.Float(), 0.0015)
	assert.Equal(t, []string{
		"found by trying caps near the trade's bell (quick, slow, quick; a top of about 4.5 cm): a top of 22 sts, 6.6 cm",
		"54 − 22 at the top = 32 to lose, 16 at each side",
		"each side: bind off 3; decrease 1 every row 2 times; decrease 1 every 3rd row 3 times; decrease 1 every 2nd row 7 times; decrease 1 every row 2 times; bind off 2",
	}, p.Lines[:3])
	assert.Equal(t, []string{"twice that and the top are 36.18 cm, +0.18 cm from what is to fit (half a stitch is 0.15 cm)", "31 rows are 12.4 cm high"}, p.Lines[4:])

	p = CapPlan{}
	require.NoError(t, p.fill(in, capShape{fast: 2, low: 2, high: 3, slow: 5, slowRows: 10, top: 34}, 54))
	assert.Equal(t, Edge{off(3, 1, false), {Every: 2, Times: 10}}, p.Edge, "stretches of one spacing are one")
	assert.Equal(t, [4]Run{{2, 2}, {2, 5}, {2, 0}, {2, 3}}, p.Slots)
	assert.Equal(t, Move{}, p.Steps)
}

// By hand, stitches of 0.2 in and rows of 4/27 in, right-side rows alone: nearest to the bell the smaller size would have a top of 18 and the larger 16. With a step
// of three below it the smaller has 16 too: 1 + 0.296 up, √(0.6² + 0.889²) = 1.072, √(0.2² + 0.593²) = 0.625, √(1.6² + 2.370²) = 2.860, 0.6 + 0.296 up are 6.749 a
// side, so 16.70 in of 16.72; the larger 1 + 0.296, √(0.8² + 1.185²) = 1.430, √(0.4² + 1.185²) = 1.251, √(2² + 2.963²) = 3.575 are 7.552, 18.30 in of 18.40.
func TestTheTopOfALargerSizeIsNoNarrower(t *testing.T) {
	inch := func(n, d int64) units.Num { return units.Frac(n*254, d*10) }
	cloth := Cloth{Stitch: inch(1, 5), Row: inch(4, 27)}
	plans, errs := Caps([]CapIn{{Upper: 56, First: 5, Armhole: inch(16222, 1000), Ease: inch(1, 2), Cloth: cloth, Step: 2},
		{Upper: 58, First: 5, Armhole: inch(17897, 1000), Ease: inch(1, 2), Cloth: cloth, Step: 2}})
	require.Equal(t, []error{nil, nil}, errs)
	assert.Equal(t, []int{16, 16}, []int{plans[0].Top, plans[1].Top})
	assert.InDelta(t, 16.70*25.4, plans[0].Length.Float(), 0.2)
	assert.InDelta(t, 18.30*25.4, plans[1].Length.Float(), 0.2)
}
