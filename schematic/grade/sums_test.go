package grade

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/body"
	"flatwright/schematic/expr"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"
)

func TestNamesOfEase(t *testing.T) {
	assert.True(t, isEase("classic ease"))
	for _, f := range body.Fits() {
		assert.True(t, isEase(f.Name+" ease"))
		assert.False(t, isEase(f.Name))
	}
	assert.False(t, isEase("sleeve ease"))
}

// Ten pieces with two measurements written: 10 × 2 looked for, 100 / 10 held against each other, 9 × (1 + 1) for those of one section,
// 1 + 2 + 3 for the one whose two parts have 2 and 1: 54 in all. A cap that is searched counts for 50 more.
func TestHowMuchWorkFollowingIsSummedByHand(t *testing.T) {
	p := &schematic.Pattern{Finished: make([]schematic.Written, 2)}
	for range 9 {
		p.Pieces = append(p.Pieces, &schematic.Piece{Sections: []schematic.Section{&schematic.Gather{}}})
	}
	p.Pieces = append(p.Pieces, &schematic.Piece{Sections: []schematic.Section{&schematic.CastOn{}, &schematic.Divide{Parts: []schematic.Part{
		{Sections: []schematic.Section{&schematic.Even{}, &schematic.Gather{}}}, {Sections: []schematic.Section{&schematic.Even{}}}}}}})
	f := &follower{p: p}
	assert.Equal(t, 54, f.sections())
	p.Grading = []schematic.Grading{{Kind: schematic.GradeValue}, {Kind: schematic.GradeCap}}
	assert.Equal(t, 104, f.sections())
	// 3 × 2 names, 1 pair, 3 × (0 bodies + 2 lines + 1), 8 × 0 gauges
	f.names, f.pairs = []string{"a", "b"}, make([][2]string, 1)
	assert.Equal(t, 6+1+9, f.runs())
}

func TestValuesAreMovedBySoMuch(t *testing.T) {
	f := &follower{env: func(size int) expr.Env {
		return func(name string) (expr.Value, bool) {
			return expr.Value{N: units.Int(int64(10 * (size + 1))), Has: true}, name == "bust"
		}
	}}
	env := f.shifted(map[string]int64{"bust": 3, "other": 5})(1)
	v, ok := env("bust")
	assert.True(t, ok)
	assert.Equal(t, int64(23), v.N.Floor())
	v, ok = env("other")
	assert.False(t, ok)
	assert.Equal(t, int64(20), v.N.Floor(), "what is not known is not moved")
}

// A line that gives a number by itself: as it was given, or as a sum that calls nothing comes to.
func TestWhatALineGivesByItself(t *testing.T) {
	sum := func(text string) schematic.GradedSum {
		s, bad := expr.ParseSum(text)
		if bad != nil {
			t.Fatal(text)
		}
		return schematic.GradedSum{Sum: s}
	}
	f := &follower{p: &schematic.Pattern{Sizes: expr.Sizes{Names: []string{"S", "M"}}}, env: func(int) expr.Env {
		return func(string) (expr.Value, bool) { return expr.Value{}, false }
	}}
	given := &schematic.GradedValue{Name: "g"}
	for _, k := range []schematic.GradingKind{schematic.GradeValue, schematic.GradeStitches, schematic.GradeRows} {
		assert.Equal(t, given, f.number(&schematic.Grading{Kind: k, Given: given}))
	}
	assert.Nil(t, f.number(&schematic.Grading{Kind: schematic.GradeCap, Given: given}))
	v := f.number(&schematic.Grading{Kind: schematic.GradeValue, Sum: sum("2 + 3")})
	if assert.NotNil(t, v) {
		n, ok := v.Vals.At(1)
		assert.True(t, ok)
		assert.Equal(t, int64(5), n.Floor())
	}
	assert.Nil(t, f.number(&schematic.Grading{Kind: schematic.GradeValue, Sum: sum("bust + 3")}))
}

func TestANumberStandsByItselfAndASumBeforeWhatItComesTo(t *testing.T) {
	env := func(name string) (expr.Value, bool) {
		return expr.Value{N: units.Int(4), Has: true, Dim: expr.Plain}, name == "each"
	}
	for text, want := range map[string]string{"4": "4", "2 + 3": "2 + 3 = 5", "each": "each = 4", "each + 1": "each + 1 = 4 + 1 = 5"} {
		s, bad := expr.ParseSum(text)
		assert.Nil(t, bad)
		got, ok := worked(s, env, units.CM)
		assert.True(t, ok, text)
		assert.Equal(t, want, got)
	}
}

// A count is a whole number, not less than the least nor more than the most that is counted; half a stitch and one too many are told.
func TestACountIsWhole(t *testing.T) {
	most := int64(shaping.MaxCount)
	for _, c := range []struct {
		n    units.Num
		want int
		told int
	}{
		{units.Int(12), 12, 0}, {units.Int(0), 0, 0}, {units.Int(-3), -3, 0}, {units.Int(most), int(most), 0}, {units.Int(-most), -int(most), 0},
		{units.Frac(25, 2), 0, 1}, {units.Int(most + 1), 0, 1}, {units.Int(-most - 1), 0, 1},
	} {
		r := &resolver{p: &schematic.Pattern{Sizes: expr.Sizes{Names: []string{"S"}}}}
		in := &inputs{r: r, g: &schematic.Grading{}, vals: map[string]schematic.GradedValue{"stitches": {Vals: expr.Const(c.n, 1)}}, ok: true}
		n, ok := in.whole("stitches")
		assert.Equal(t, c.want, n, "%v", c.n)
		assert.Equal(t, c.told == 0, ok, "%v", c.n)
		assert.Len(t, r.found, c.told, "%v", c.n)
		n, ok = in.whole("rows")
		assert.Equal(t, 0, n)
		assert.False(t, ok, "none is given")
	}
	in := &inputs{r: &resolver{size: 1}, vals: map[string]schematic.GradedValue{"rows": {Vals: expr.Const(units.Int(4), 1)}}}
	n, ok := in.whole("rows")
	assert.Equal(t, 0, n)
	assert.False(t, ok, "a size that has none")
}

// Values are the same to less than a hundredth.
func TestValuesThatAreTheSame(t *testing.T) {
	of := func(n ...units.Num) expr.Graded {
		g := expr.Graded{Vals: n}
		for range n {
			g.Has = append(g.Has, true)
		}
		return g
	}
	assert.True(t, equalVals(of(units.Int(5), units.Int(6)), of(units.Int(5), units.Frac(1201, 200).Sub(units.Frac(1, 1000))))) // 6 and 6.004
	assert.True(t, equalVals(of(units.Int(5)), of(units.Frac(5*1000+9, 1000))), "5.009")
	assert.True(t, equalVals(of(units.Int(5)), of(units.Frac(500000+995, 100000))), "5.00995")
	assert.False(t, equalVals(of(units.Int(5)), of(units.Frac(501, 100))), "5.01")
	assert.False(t, equalVals(of(units.Int(5)), of(units.Int(5), units.Int(6))))
	none := of(units.Int(5))
	none.Has[0] = false
	assert.False(t, equalVals(of(units.Int(5)), none))
	assert.True(t, equalVals(none, none))
}
