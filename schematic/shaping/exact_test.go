package shaping

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// The sums below are written out by hand; a bound is tried on both its sides.

func TestHowManyShapingsRowsHold(t *testing.T) {
	for _, c := range []struct{ n, rows, step int }{{-1, 4, 1}, {1, -1, 1}, {1, 4, 0}, {MaxCount + 1, MaxCount, 1}, {0, MaxCount + 1, 1}, {3, 2, 1}, {2, 3, 2}} {
		_, err := Spread(c.n, c.rows, c.step, SlowFirst)
		assert.Error(t, err, "%v", c)
	}
	for _, c := range []struct {
		n, rows, step int
		want          Plan
	}{
		{0, 0, 1, Plan{}}, {0, 7, 2, Plan{Rest: 7}}, {0, MaxCount, 1, Plan{Rest: MaxCount}}, {2, 4, 2, Plan{Runs: []Run{{2, 2}}}},
		{MaxCount, MaxCount, 1, Plan{Runs: []Run{{1, MaxCount}}}},
		{4, 21, 2, Plan{Runs: []Run{{6, 2}, {4, 2}}, Rest: 1}}, // ten rows of one side: 2 each and 2 over
	} {
		p, err := Spread(c.n, c.rows, c.step, SlowFirst)
		require.NoError(t, err)
		assert.Equal(t, c.want, p)
	}
	_, err := Spread(3, 2, 1, SlowFirst)
	assert.EqualError(t, err, "3 shapings do not fit into 2 rows")
	assert.Equal(t, []int{1, 2, 2}, []int{RowStep(schematic.AnyRow), RowStep(schematic.RightSide), RowStep(schematic.WrongSide)})
}

func TestASpreadOverRowsIsToldAsItIsReckoned(t *testing.T) {
	for want, c := range map[string][3]int{
		"52 rows have 26 of one side; 26 / 11 = 2 and 4 over: every 6th row 4 times, then every 4th row 7 times":                 {11, 52, 2},
		"21 rows have 10 of one side; 10 / 4 = 2 and 2 over: every 6th row 2 times, then every 4th row 2 times, then 1 row even": {4, 21, 2},
		"20 / 5 = 4: every 4th row 5 times": {5, 20, 1},
		"none, 3 rows even":                 {0, 3, 1},
	} {
		p, err := Spread(c[0], c[1], c[2], SlowFirst)
		require.NoError(t, err)
		assert.Equal(t, want, SpreadWords(c[0], c[1], c[2], p))
	}
	var said []string
	for _, n := range []int{1, 2, 3, 4, 11, 12, 13, 21, 22, 23, 111, 101} {
		said = append(said, strings.TrimSuffix(strings.TrimPrefix(everyRow(n), "every "), " row"))
	}
	assert.Equal(t, "row 2nd 3rd 4th 11th 12th 13th 21st 22nd 23rd 111th 101st", strings.Join(said, " "))
}

func TestStitchesAlongARow(t *testing.T) {
	for _, c := range [][2]int{{0, 4}, {1, -1}, {MaxCount + 1, 4}, {1, MaxCount + 1}} {
		_, err := Evenly(c[0], c[1], FullGaps)
		assert.Error(t, err, "%v", c)
	}
	for _, c := range []struct {
		n, m int
		ends ends
		want []int
	}{
		{1, 0, InRound, []int{0, 0}}, {3, 10, InRound, []int{3, 4, 3, 0}}, {1, 5, HalfGaps, []int{3, 2}}, {3, 12, FullGaps, []int{3, 3, 3, 3}}, {2, 12, HalfGaps, []int{3, 6, 3}},
	} {
		got, err := Evenly(c.n, c.m, c.ends)
		require.NoError(t, err)
		assert.Equal(t, c.want, got)
	}
	six := []int{1, 2, 3, 4, 5, 6}
	assert.Equal(t, "(a, work 1, a, work 2, a, work 3, a, work 4, a, work 5, a, work 6) 2 times", along(append([]int{0}, append(six, six...)...), "a"))
	seven := []int{1, 2, 3, 4, 5, 6, 7}
	assert.NotContains(t, along(append([]int{0}, append(seven, seven...)...), "a"), "times", "seven are more than is read at a glance")
	assert.Empty(t, along(nil, "a"))
	assert.Empty(t, along([]int{0}, "a"))
}

func TestARuleOfACountInWordsAndSteps(t *testing.T) {
	for want, r := range map[string]Rule{
		"multiple of 4 + 1": {Multiple: 4, Plus: 1}, "multiple of 4 − 1": {Multiple: 4, Plus: -1}, "multiple of 4": {Multiple: 4}, "": {Multiple: 1, Plus: 3},
		"even": {Parity: Even}, "odd, not less": {Parity: Odd, Round: AtLeast}, "multiple of 3, not more": {Multiple: 3, Round: AtMost},
	} {
		assert.Equal(t, want, r.String())
	}
	for _, c := range []struct {
		r           Rule
		step, first int
		ok          bool
	}{
		{Rule{}, 1, 0, true}, {Rule{Multiple: 4, Plus: 1}, 4, 1, true}, {Rule{Multiple: 4, Plus: -1}, 4, 3, true}, {Rule{Multiple: 3, Parity: Even}, 6, 0, true},
		{Rule{Multiple: 3, Parity: Odd}, 6, 3, true}, {Rule{Multiple: 3, Plus: 1, Parity: Odd}, 6, 1, true}, {Rule{Multiple: 4, Plus: 1, Parity: Even}, 4, 1, false},
		{Rule{Multiple: -1}, 0, 0, false}, {Rule{Multiple: MaxCount + 1}, 0, 0, false}, {Rule{Plus: MaxCount + 1}, 0, 0, false}, {Rule{Plus: -MaxCount - 1}, 0, 0, false}, {Rule{Multiple: MaxCount}, MaxCount, 0, true},
	} {
		step, first, ok := c.r.Step()
		assert.Equal(t, []any{c.step, c.first, c.ok}, []any{step, first, ok}, "%+v", c.r)
	}
	whole := func(n, d int64, r Rule) int {
		k, _, err := Whole(units.Frac(n, d), r)
		require.NoError(t, err)
		return k
	}
	// 25/2 = 12.5: a tie goes up; of 4 + 1 the nearest is 13, not more 9; not less than 20: 21.
	assert.Equal(t, []int{13, 13, 9, 21, 0, 12}, []int{whole(25, 2, Rule{}), whole(25, 2, Rule{Multiple: 4, Plus: 1}), whole(25, 2, Rule{Multiple: 4, Plus: 1, Round: AtMost}),
		whole(25, 2, Rule{Multiple: 4, Plus: 1, Least: 20}), whole(-9, 1, Rule{}), whole(25, 2, Rule{Parity: Even, Round: AtMost})})
	_, _, err := Whole(units.Int(MaxCount+1), Rule{})
	assert.EqualError(t, err, "a count of 100001 is more than the 100000 that fit")
	_, _, err = Whole(units.Int(4), Rule{Multiple: 4, Plus: 1, Parity: Even})
	assert.EqualError(t, err, "no count can be multiple of 4 + 1, even")
	_, err = Count(units.Int(100), units.Int(0), Rule{})
	assert.Error(t, err)
}

func TestARaglanToTheRow(t *testing.T) {
	in := RaglanIn{Back: 60, Front: 60, Sleeve: 40, NeckBack: 20, NeckFront: 20, NeckSleeve: 8, Underarm: 4, Rows: 32, Step: 2}
	p, err := Raglan(in) // (60 − 20) / 2 − 4 = 16, as many as 32 rows have of one side; (40 − 8) / 2 − 4 = 12
	require.NoError(t, err)
	assert.Equal(t, []int{4, 2, 16, 12}, []int{p.Underarm, p.Step, p.Pieces[0].Decreases, p.Pieces[2].Decreases})
	assert.Equal(t, []string{
		"back: 60 − 2 × 4 at the underarms − 20 at the neck = 32, so 16 decreases at each edge over 32 rows",
		"back: 32 rows have 16 of one side; 16 / 16 = 1: every 2nd row 16 times",
		"front: 60 − 2 × 4 at the underarms − 20 at the neck = 32, so 16 decreases at each edge over 32 rows",
		"front: 32 rows have 16 of one side; 16 / 16 = 1: every 2nd row 16 times",
		"sleeve: 40 − 2 × 4 at the underarms − 8 at the neck = 24, so 12 decreases at each edge over 32 rows",
		"sleeve: 32 rows have 16 of one side; 16 / 12 = 1 and 4 over: every 4th row 4 times, then every 2nd row 8 times",
	}, p.Lines)
	in.Rows = 31
	p, err = Raglan(in)
	require.NoError(t, err)
	assert.Equal(t, "16 decreases do not fit into the 15 right-side rows of 31: every row may have one", p.Lines[0])
	assert.Equal(t, 1, p.Step)
	assert.Equal(t, Plan{Runs: []Run{{4, 3}, {2, 9}}, Rest: 1}, p.Pieces[2].Plan, "the sleeve's 12 go into the 15 still")
	in.Rows = 14
	p, err = Raglan(in)
	require.NoError(t, err)
	assert.Equal(t, "16 decreases do not fit into 14 rows: 2 more stitches are bound off or held at each underarm", p.Lines[1])
	assert.Equal(t, []int{6, 14, 10}, []int{p.Underarm, p.Pieces[0].Decreases, p.Pieces[2].Decreases})
	in.Rows, in.Back = 32, 61
	p, err = Raglan(in)
	require.NoError(t, err)
	assert.Equal(t, "back: a neck of 20 leaves an odd stitch, so it is 21", p.Lines[0])
	assert.NotContains(t, strings.Join(p.Lines, "\n"), "front: a neck")
	assert.Equal(t, []int{21, 20}, []int{p.Pieces[0].Neck, p.Pieces[1].Neck})
	// 20 to lose at the back, 8 at the sleeve: with 12 rows 8 go at the underarm, and the sleeve has none left to decrease.
	in.Back, in.Sleeve, in.Rows = 60, 24, 12
	p, err = Raglan(in)
	require.NoError(t, err)
	assert.Equal(t, []int{8, 12, 0}, []int{p.Underarm, p.Pieces[0].Decreases, p.Pieces[2].Decreases})
	in.Rows = 10
	_, err = Raglan(in)
	assert.EqualError(t, err, "the raglan is 10 rows deep, the busiest edge has 20 stitches to lose and the sleeve only 8 at each side: make it 12 rows deep, or its neck narrower")
	for name, bad := range map[string]func(*RaglanIn){
		"no rows": func(q *RaglanIn) { q.Rows = 0 }, "too many": func(q *RaglanIn) { q.Rows = MaxCount + 1 }, "no step": func(q *RaglanIn) { q.Step = 0 },
		"less than no underarm": func(q *RaglanIn) { q.Underarm = -1 }, "a neck and underarms of more than the sleeve": func(q *RaglanIn) { q.Sleeve = 14 },
	} {
		q := RaglanIn{Back: 60, Front: 60, Sleeve: 40, NeckBack: 20, NeckFront: 20, NeckSleeve: 8, Underarm: 4, Rows: 32, Step: 2}
		bad(&q)
		_, err := Raglan(q)
		assert.Error(t, err, name)
	}
	_, err = Raglan(RaglanIn{Back: 28, Front: 28, Sleeve: 16, NeckBack: 20, NeckFront: 20, NeckSleeve: 8, Underarm: 4, Rows: 1, Step: 1})
	assert.NoError(t, err, "nothing is left to decrease, and one row is a row")
}

func TestAYokeToTheRound(t *testing.T) {
	p, err := Yoke(YokeIn{Start: 200, Neck: 90, Rows: 40})
	require.NoError(t, err)
	// 40 / 3: rounds 14, 27 and 40; 200 − 110 × 14/40 = 161.5, up; 200 − 110 × 27/40 = 125.75. 38 of 200, 36 of 162, 36 of 126 are less than a third.
	var got [][3]int
	for _, r := range p.Rounds {
		got = append(got, [3]int{r.Row, r.Before, r.After})
		sum := 2 * (r.Before - r.After)
		for _, g := range r.Gaps {
			sum += g
		}
		assert.Equal(t, r.Before, sum)
	}
	assert.Equal(t, [][3]int{{14, 200, 162}, {27, 162, 126}, {40, 126, 90}}, got)
	assert.Equal(t, "200 − 90 at the neck = 110 stitches to lose over 40 rounds", p.Lines[0])
	assert.Equal(t, "rounds with decreases: 40 / 3 = 13 and 1 over: every 14th row once, then every 13th row 2 times", p.Lines[1])
	// From 200 to 60 three rounds lose 70 of 107, more than half: 4 lose 35 each, 35 of 95 is more than a third; 5 lose 28, 28 of 88 is not.
	p, err = Yoke(YokeIn{Start: 200, Neck: 60, Rows: 50})
	require.NoError(t, err)
	assert.Len(t, p.Rounds, 5)
	// Plain to round 20, then rounds 30 and 40: each loses as many, to a multiple of 10; 95 at the neck is 100.
	p, err = Yoke(YokeIn{Start: 200, Neck: 95, Rows: 40, Rounds: 3, First: 20, Multiple: 10})
	require.NoError(t, err)
	assert.Equal(t, 100, p.Neck)
	assert.Equal(t, "a neck of 95 is not a multiple of 10: 100", p.Lines[0])
	assert.Equal(t, [][3]int{{20, 200, 170}, {30, 170, 130}, {40, 130, 100}}, [][3]int{{p.Rounds[0].Row, p.Rounds[0].Before, p.Rounds[0].After}, {p.Rounds[1].Row, p.Rounds[1].Before, p.Rounds[1].After}, {p.Rounds[2].Row, p.Rounds[2].Before, p.Rounds[2].After}})
	p, err = Yoke(YokeIn{Start: 100, Neck: 100, Rows: 9})
	require.NoError(t, err)
	assert.Empty(t, p.Rounds)
	p, err = Yoke(YokeIn{Start: 100, Neck: 50, Rows: 9, Rounds: 1})
	require.NoError(t, err, "every second stitch may go")
	assert.Equal(t, "round 9: 100 − 50 = 50, decrease 50 times", strings.Replace(p.Lines[len(p.Lines)-1], "(decrease) ", "decrease ", 1))
	for _, in := range []YokeIn{{Start: 100, Neck: 49, Rows: 9, Rounds: 1}, {Start: 1, Neck: 1, Rows: 9}, {Start: MaxCount + 1, Neck: 1, Rows: 9}, {Start: 100, Neck: 50}, {Start: 100, Neck: 50, Rows: MaxCount + 1},
		{Start: 100, Neck: 50, Rows: 9, Rounds: -1}, {Start: 100, Neck: 50, Rows: 9, First: -1}, {Start: 100, Neck: 50, Rows: 9, First: 10}, {Start: 100, Rows: 9}, {Start: 100, Neck: 101, Rows: 9}, {Start: 100, Neck: 90, Rows: 9, Rounds: 10}} {
		_, err := Yoke(in)
		assert.Error(t, err, "%+v", in)
	}
	for _, in := range []YokeIn{{Start: 2, Neck: 1, Rows: 1, Rounds: 1}, {Start: 100, Neck: 50, Rows: 9, Rounds: 1, First: 9}, {Start: 100, Neck: 90, Rows: 9, Rounds: 9}} {
		_, err := Yoke(in)
		assert.NoError(t, err, "%+v", in)
	}
	// 11 in all: 4 gaps of 3 and 7 of 2 come to no repeat of few words
	assert.Equal(t, "decreases spread evenly, 4 times with 3 between and 7 times with 2", around([]int{3, 2, 2, 3, 2, 3, 2, 2, 2, 3, 2, 0}))
}

func TestAnArmholeToTheRow(t *testing.T) {
	in := ArmholeIn{Body: 100, Cross: 76, Rows: 48, Step: 2, Cloth: Cloth{units.Int(5), units.Int(4)}}
	p, err := Armhole(in) // 24 to lose, 12 a side; 25 mm are 5 stitches, a third of 12 are 4; 7 decreases
	require.NoError(t, err)
	assert.Equal(t, 5, p.First)
	assert.Equal(t, Edge{off(5, 1, false), {Every: 2, Times: 7}, {Even: 32}}, p.Edge)
	assert.Equal(t, "100 − 76 = 24 stitches to lose, 12 at each side", p.Lines[0])
	assert.Contains(t, p.Lines[1], "(5), at the underarm: 5")
	assert.Equal(t, "2 rows there + 7 × 2 for the decreases + 32 even = 48 rows", p.Lines[3])
	in.Rows = 12 // two thirds of 12 less the 2 of the bind-off are 6 rows: 3 decreases, so 9 stitches go at once
	p, err = Armhole(in)
	require.NoError(t, err)
	assert.Equal(t, 9, p.First)
	assert.Contains(t, p.Lines[2], "two thirds of the 12 rows hold 3 decreases")
	assert.Contains(t, p.Lines[2], "9 instead of 5")
	in.First, in.Rows = 12, 48
	p, err = Armhole(in)
	require.NoError(t, err)
	assert.Equal(t, Edge{off(12, 1, false), {Even: 46}}, p.Edge, "all at once")
	in.First, in.Leave = 5, true // left, they take no row of their own
	p, err = Armhole(in)
	require.NoError(t, err)
	assert.Equal(t, Edge{off(5, 1, true), {Every: 2, Times: 7}, {Even: 48 - 14 - off(5, 1, true).rows()}}, p.Edge)
	for name, bad := range map[string]func(*ArmholeIn){
		"more bound off than is to be lost": func(q *ArmholeIn) { q.First = 13 }, "an odd stitch": func(q *ArmholeIn) { q.Body = 101 }, "wider than below": func(q *ArmholeIn) { q.Cross = 102 },
		"no rows": func(q *ArmholeIn) { q.Rows = 0 }, "one row": func(q *ArmholeIn) { q.Rows = 1 }, "no step": func(q *ArmholeIn) { q.Step = 0 }, "nothing across": func(q *ArmholeIn) { q.Cross = 0 },
		"no stitch": func(q *ArmholeIn) { q.Cloth.Stitch = units.Int(0) }, "no row's height": func(q *ArmholeIn) { q.Cloth.Row = units.Int(0) },
	} {
		q := ArmholeIn{Body: 100, Cross: 76, Rows: 48, Step: 2, Cloth: Cloth{units.Int(5), units.Int(4)}}
		bad(&q)
		_, err := Armhole(q)
		assert.Error(t, err, name)
	}
	_, err = Armhole(ArmholeIn{Body: 3, Cross: 1, Rows: 48, Step: 1, Cloth: Cloth{units.Int(5), units.Int(4)}})
	assert.NoError(t, err)
}

func TestWhatACapMayBe(t *testing.T) {
	ok := CapIn{Upper: 60, First: 5, Armhole: units.Int(400), Cloth: Cloth{units.Int(5), units.Int(4)}, Step: 1}
	p, err := Cap(ok)
	require.NoError(t, err)
	assert.Equal(t, "upper arm 60 − 2 × 5 (bind off 5 at each side as at the armhole) = 50", p.Lines[0])
	assert.Equal(t, 60, 2*p.Edge.in()+p.Top)
	assert.LessOrEqual(t, p.Length.Sub(units.Int(400)).Abs().Float(), 2.5, "half a stitch")
	for name, bad := range map[string]func(*CapIn){
		"no step": func(q *CapIn) { q.Step = 0 }, "fewer than none at once": func(q *CapIn) { q.First = -1 }, "nothing left above": func(q *CapIn) { q.First = 29 }, "more than fits": func(q *CapIn) { q.Upper = MaxCount + 1 },
		"no stitch": func(q *CapIn) { q.Cloth.Stitch = units.Int(0) }, "no row": func(q *CapIn) { q.Cloth.Row = units.Int(0) }, "an armhole as long as the sleeve is wide": func(q *CapIn) { q.Armhole = units.Int(300) },
	} {
		q := ok
		bad(&q)
		_, err := Cap(q)
		assert.Error(t, err, name)
	}
}
