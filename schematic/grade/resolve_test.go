package grade

import (
	"fmt"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/body"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// cloth is a fabric by its stitches and rows over 10 cm.
func cloth(sts, rows int64) shaping.Cloth {
	return shaping.Cloth{Stitch: units.Frac(100, sts), Row: units.Frac(100, rows)}
}

// cloths are three gauges, each with knitting's short rows and crochet's tall
// ones (stitches and rows over 10 cm; realistic for fine, medium and bulky yarn, common practice).
var cloths = map[string]struct {
	Cloth shaping.Cloth
	Tall  bool
}{
	"fine knit":      {cloth(28, 38), false},
	"medium knit":    {cloth(19, 26), false},
	"bulky knit":     {cloth(11, 16), false},
	"fine crochet":   {cloth(22, 13), true},
	"medium crochet": {cloth(14, 9), true},
	"bulky crochet":  {cloth(9, 6), true},
}

// gradedPattern is a pattern with women's bodies in nine sizes and the gauges
// given; lines are the grading.
func gradedPattern(t testing.TB, c shaping.Cloth, lines ...schematic.Grading) *schematic.Pattern {
	sizes := expr.Sizes{Names: []string{"XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X"}, Groups: []int{1, 3, 5}}
	p := &schematic.Pattern{File: "test.yaml", Sizes: sizes, Sample: -1}
	b, ok := body.Named("women")
	require.True(t, ok)
	rows, missing := b.For(sizes)
	require.Empty(t, missing)
	for _, r := range rows {
		p.Bodies = append(p.Bodies, schematic.Written{Name: r.Name, Low: r.Low, High: r.High, Unit: b.Unit})
	}
	p.Gauges = []schematic.Gauge{{Name: "fabric", Stitches: units.Int(100).Div(c.Stitch), Rows: units.Int(100).Div(c.Row), Over: units.Int(100), Stitch: "st st"}}
	for i := range lines {
		lines[i].Pos = finding.Pos{File: "test.yaml", Line: i + 1, Col: 3, EndCol: 4}
	}
	p.Grading = lines
	return p
}

func sum(t testing.TB, text string) schematic.GradedSum {
	s, bad := expr.ParseSum(text)
	require.Nil(t, bad, text)
	return schematic.GradedSum{Sum: s, Pos: finding.Pos{File: "test.yaml", Line: 1, Col: 10, EndCol: 11}}
}

func value(t testing.TB, name, text string) schematic.Grading {
	return schematic.Grading{Name: name, Sum: sum(t, text)}
}

func counted(t testing.TB, kind schematic.GradingKind, name, text string) schematic.Grading {
	return schematic.Grading{Name: name, Kind: kind, Sum: sum(t, text)}
}

func with(t testing.TB, g schematic.Grading, pairs ...string) schematic.Grading {
	g.With = map[string]schematic.GradedSum{}
	for i := 0; i < len(pairs); i += 2 {
		g.With[pairs[i]] = sum(t, pairs[i+1])
	}
	return g
}

func find(t testing.TB, vals []schematic.GradedValue, name string) expr.Graded {
	for _, v := range vals {
		if v.Name == name {
			return v.Vals
		}
	}
	require.Fail(t, "no value called "+name, "%v", vals)
	return expr.Graded{}
}

func ints(g expr.Graded) []int {
	var out []int
	for i := range g.Vals {
		out = append(out, g.Int(i, -1))
	}
	return out
}

// Worked by hand for M (bust 36-38 in, upper end 38 in = 96.52 cm): + 10 cm =
// 106.52 cm, half 53.26 cm, at 18 stitches over 10 cm 95.868 stitches; of 4 + 2 the nearest is 94 (98 is farther).
func TestASumOfBodyAndEaseBecomesStitchesByHand(t *testing.T) {
	back := counted(t, schematic.GradeStitches, "back stitches", "bust round / 2")
	back.Multiple, back.Plus = 4, 2
	front := counted(t, schematic.GradeStitches, "front stitches", "half of (bust round + 2 cm)")
	front.Like = "back stitches"
	p := gradedPattern(t, cloth(18, 24), back, front, value(t, "bust round", "bust + 10 cm"),
		value(t, "neck", "back stitches - 30 sts"))
	vals, found := Resolve(p)
	require.Empty(t, found)
	assert.Equal(t, 94, ints(find(t, vals, "back stitches"))[2])
	assert.Equal(t, 64, ints(find(t, vals, "neck"))[2])
	assert.Equal(t, "522.222", units.Decimal(find(t, vals, "back stitches makes").Vals[2], 3))
	for i, n := range ints(find(t, vals, "front stitches")) {
		assert.Zero(t, n%2, i)
	}
}

func TestWhatIsWrongWithAGradingIsToldAtOnce(t *testing.T) {
	odd := counted(t, schematic.GradeStitches, "odd one", "bust / 2")
	odd.Multiple, odd.Odd = 4, true
	p := gradedPattern(t, cloth(18, 24),
		value(t, "a", "b + 1 cm"), value(t, "b", "c x 2"), value(t, "c", "a / 2"),
		value(t, "mixed", "bust + 12 sts"), value(t, "lost", "no such thing + 1 cm"), value(t, "bust", "1 cm"),
		value(t, "again", "1 cm"), value(t, "again", "2 cm"), odd, value(t, "follows", "a + 1 cm"))
	_, found := Resolve(p)
	kinds := map[string]int{}
	for _, f := range found {
		t.Log(f.Kind, f.Message)
		kinds[f.Kind]++
	}
	assert.Equal(t, map[string]int{"file/cycle": 1, "file/sum": 1, "file/reference": 1, "file/duplicate-name": 2, "grading/impossible": 1}, kinds)
	for _, f := range found {
		switch f.Kind {
		case "file/cycle":
			assert.Contains(t, f.Message, "a → b → c → a")
		case "file/sum":
			assert.Contains(t, f.Message, "a number of stitches")
			assert.Contains(t, f.Message, "a length")
		}
	}
}

func TestASizeWithoutABodyHasNoCounts(t *testing.T) {
	p := gradedPattern(t, cloth(18, 24), counted(t, schematic.GradeStitches, "back", "bust / 2"))
	p.Bodies[0].High.Has[3] = false
	vals, found := Resolve(p)
	require.Empty(t, found)
	_, has := find(t, vals, "back").At(3)
	assert.False(t, has)
	_, has = find(t, vals, "back").At(4)
	assert.True(t, has)
}

// setIn is the grading of a pullover with set-in sleeves; crochet leaves stitches
// instead of binding them off.
func setIn(t testing.TB, leave bool) []schematic.Grading {
	on := schematic.RightSide
	if leave {
		on = schematic.AnyRow
	}
	even := func(g schematic.Grading) schematic.Grading { g.Even = true; return g }
	cross := counted(t, schematic.GradeStitches, "cross stitches", "cross back")
	cross.Like, cross.Down = "back stitches", true
	armhole := with(t, counted(t, schematic.GradeArmhole, "armhole", "back stitches"), "to", "cross stitches", "over", "armhole rows")
	armhole.On, armhole.Leave = on, leave
	cap := with(t, counted(t, schematic.GradeCap, "cap", "upper stitches"), "armhole", "2 x armhole edge", "first", "armhole first", "ease", "1 cm")
	cap.Leave = leave
	inc := with(t, counted(t, schematic.GradeSpread, "sleeve increases", "(upper stitches - cuff stitches) / 2"), "over", "sleeve rows")
	return []schematic.Grading{
		value(t, "ease", "standard ease"),
		even(counted(t, schematic.GradeStitches, "back stitches", "(bust + ease) / 2")),
		cross,
		even(counted(t, schematic.GradeRows, "armhole rows", "armhole depth + 2.5 cm")),
		even(counted(t, schematic.GradeRows, "body rows", "back waist length - armhole depth + 6 cm")),
		armhole,
		even(counted(t, schematic.GradeStitches, "upper stitches", "upper arm + 5 cm")),
		even(counted(t, schematic.GradeStitches, "cuff stitches", "hand + 2 cm")),
		even(counted(t, schematic.GradeRows, "sleeve rows", "arm to underarm")),
		inc, cap,
	}
}

func TestASetInSleeveIsGradedInNineSizesAtEveryGauge(t *testing.T) {
	for name, c := range cloths {
		p := gradedPattern(t, c.Cloth, setIn(t, c.Tall)...)
		vals, found := Resolve(p)
		require.Empty(t, found, name)
		upper, first := ints(find(t, vals, "upper stitches")), ints(find(t, vals, "cap first"))
		for i := range p.Sizes.Names {
			left := upper[i] - 2*first[i]
			for _, slot := range []string{"quick", "slow", "less slow", "last"} {
				left -= 2 * ints(find(t, vals, "cap "+slot+" times"))[i]
			}
			left -= 2 * ints(find(t, vals, "cap step"))[i] * ints(find(t, vals, "cap step times"))[i]
			assert.Equal(t, ints(find(t, vals, "cap top"))[i], left, "%s %d", name, i)
			edge := find(t, vals, "cap edge").Vals[i].Sub(find(t, vals, "armhole edge").Vals[i].Times(2)).Sub(units.Int(10)).Abs()
			assert.False(t, c.Cloth.Stitch.Half().Add(units.Frac(2, 1000)).Less(edge), "%s %d", name, i)
		}
	}
}

func TestARaglanAndAYokeAreGradedByName(t *testing.T) {
	raglan := with(t, counted(t, schematic.GradeRaglan, "raglan", "back stitches"), "sleeve", "upper stitches", "neck", "neck stitches",
		"sleeve neck", "2 sts", "underarm", "4 sts", "over", "armhole rows")
	raglan.On = schematic.RightSide
	yoke := with(t, counted(t, schematic.GradeYoke, "yoke", "2 x back stitches + 2 x upper stitches - 32 sts"), "neck", "3 x neck stitches", "over", "armhole rows")
	yoke.Rounds, yoke.Multiple = 4, 4
	lines := append(setIn(t, false)[:7], counted(t, schematic.GradeStitches, "neck stitches", "18 cm"), raglan, yoke)
	p := gradedPattern(t, cloths["medium knit"].Cloth, lines...)
	vals, found := Resolve(p)
	require.Empty(t, found)
	back, under, neck := ints(find(t, vals, "back stitches")), ints(find(t, vals, "raglan underarm")), ints(find(t, vals, "raglan back neck"))
	n, m := ints(find(t, vals, "raglan back times")), ints(find(t, vals, "raglan back then times"))
	start := ints(find(t, vals, "upper stitches"))
	for i := range back {
		assert.Equal(t, neck[i], back[i]-2*(under[i]+n[i]+m[i]))
		left := 2*back[i] + 2*start[i] - 32
		for k := 1; k <= 4; k++ {
			left -= ints(find(t, vals, fmt.Sprintf("yoke decreases %d", k)))[i]
			assert.Equal(t, ints(find(t, vals, fmt.Sprintf("yoke left %d", k)))[i], left)
		}
		assert.Equal(t, ints(find(t, vals, "yoke neck"))[i], left)
	}
}

func BenchmarkNineSizes(b *testing.B) {
	p := gradedPattern(b, cloths["fine knit"].Cloth, setIn(b, false)...)
	b.ReportAllocs()
	for b.Loop() {
		if _, found := Resolve(p); found.Errors() {
			b.Fatal(found)
		}
	}
}

func BenchmarkTwoHundredSizes(b *testing.B) {
	p := gradedPattern(b, cloths["fine knit"].Cloth, setIn(b, false)...)
	nine := p.Sizes.Len()
	p.Sizes = expr.Sizes{Groups: []int{200}}
	for i := range 200 {
		p.Sizes.Names = append(p.Sizes.Names, fmt.Sprint(i))
	}
	wide := func(g expr.Graded) expr.Graded {
		out := expr.Graded{}
		for i := range 200 {
			out.Vals, out.Has = append(out.Vals, g.Vals[i%nine]), append(out.Has, true)
		}
		return out
	}
	for i := range p.Bodies {
		p.Bodies[i].Low, p.Bodies[i].High = wide(p.Bodies[i].Low), wide(p.Bodies[i].High)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, found := Resolve(p); found.Errors() {
			b.Fatal(found)
		}
	}
}

// In some sizes the shapings do not fit into the rows: told once, with each size's number.
func TestWhatCannotBeInSeveralSizesIsToldOnce(t *testing.T) {
	p := gradedPattern(t, cloth(18, 24),
		counted(t, schematic.GradeStitches, "back", "bust / 2"),
		with(t, counted(t, schematic.GradeSpread, "grow", "back - 60 sts"), "over", "24 rows"))
	vals, found := Resolve(p)
	require.Len(t, found, 1)
	var over []string
	fit := 0
	for i, n := range ints(find(t, vals, "back")) {
		over = append(over, fmt.Sprint(n-60))
		if n-60 <= 24 {
			over[i], fit = expr.Dash, fit+1
		}
	}
	require.Positive(t, fit)
	assert.Equal(t, `"grow": `+p.Sizes.Line(over)+" shapings do not fit into 24 rows", found[0].Message)
	assert.Len(t, found[0].Sizes, 9-fit)
}
