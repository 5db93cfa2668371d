package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

func hold(p *schematic.Pattern, w schematic.Written, pieces ...*schematic.Made) finding.List {
	p.Finished = []schematic.Written{w}
	return Pattern(p, garments(p, func(int) []*schematic.Made { return pieces }))
}

// Common practice: a measured half stitch or half row is within tolerance, and a
// printed value is within half of the step to which it is printed. At 1 cm a
// stitch and half-centimetre steps that is 0.5 + 0.25 = 0.75 cm; around, twice the stitch term:
// 1 + 0.25 = 1.25 cm; a row of 0.5 cm makes 0.25 + 0.25 = 0.5 cm.
func TestAWrittenMeasurementAgreesWithinHalfAStitchAndHalfAStep(t *testing.T) {
	bust := sts("Body", "bust", 90)
	bust.Around = true
	for _, c := range []struct {
		measure schematic.Measure
		written units.Num
		agrees  bool
	}{
		{sts("Back", "width at hem", 45), cm(4575, 100), true},
		{sts("Back", "width at hem", 45), cm(4576, 100), false},
		{sts("Back", "width at hem", 45), cm(4425, 100), true},
		{sts("Back", "width at hem", 45), cm(4424, 100), false},
		{bust, cm(9125, 100), true},
		{bust, cm(9126, 100), false},
		{rows("Back", "length", 120), cm(605, 10), true},
		{rows("Back", "length", 120), cm(6051, 100), false},
	} {
		got := hold(pattern("S"), schematic.Written{Name: c.measure.Name, Low: expr.Of(c.written), High: expr.Of(c.written)}, made("Back", schematic.KindBack, c.measure))
		if c.agrees {
			assert.Empty(t, got, "%s %s", c.measure.Name, c.written)
		} else {
			assert.Equal(t, []string{"drawn/written"}, kinds(got), "%s %s", c.measure.Name, c.written)
		}
	}
}

// At 14 sts over 10 cm, 129 sts are 129 / 1.4 = 92.14 cm.
func TestAFindingTellsBothNumbersAndHowTheyCameAbout(t *testing.T) {
	m := schematic.Measure{ID: "body.bust", Name: "bust", Axis: schematic.Horizontal, Count: 129, Of: "st", Around: true, Length: cm(1290, 14)}
	got := hold(pattern("S"), schematic.Written{Name: "bust", Low: expr.Of(cm(96, 1)), High: expr.Of(cm(96, 1)), Pos: finding.Pos{Line: 40}},
		made("Body", schematic.KindBody, m))
	require.Len(t, got, 1)
	f := got[0]
	assert.Equal(t, "bust is written as 96 cm, and the counts make 92 cm", f.Message)
	assert.Equal(t, "129 sts around of Body make 92.14 cm", f.Have)
	// twice half of 0.714 cm and half of 0.5 cm
	assert.Equal(t, "96 cm, give or take 0.96 cm: half a stitch, twice as it goes around, and half the printed step of ½ cm", f.Want)
	assert.Equal(t, "write 92 cm, or work 134 sts", f.Fix) // 96 x 1.4 = 134.4
	assert.Equal(t, 40, f.Pos.Line)
	assert.Equal(t, "Body", f.Piece)
}

func TestInchesAreHeldToTheirOwnStep(t *testing.T) {
	// 45 cm is 17.717 in; half a stitch is 0.197 in, half of ¼ in is 0.125: up to 18.039.
	w := func(n, d int64) schematic.Written {
		return schematic.Written{Name: "width at hem", Unit: units.Inch, Low: expr.Of(inch(n, d)), High: expr.Of(inch(n, d))}
	}
	back := made("Back", schematic.KindBack, sts("Back", "width at hem", 45))
	back2 := made("Front", schematic.KindFront)
	assert.Empty(t, hold(pattern("S"), w(18, 1), back, back2))
	got := hold(pattern("S"), w(73, 4), back, back2)
	require.Equal(t, []string{"drawn/written"}, kinds(got))
	assert.Equal(t, "width at hem is written as 18¼ in, and the counts make 17¾ in", got[0].Message)
}

func TestARangeAgreesWithWhatLiesInIt(t *testing.T) {
	w := schematic.Written{Name: "cuff", Low: expr.Of(cm(20, 1)), High: expr.Of(cm(24, 1))}
	assert.Empty(t, hold(pattern("S"), w, made("Sleeve", schematic.KindSleeve, sts("Sleeve", "cuff", 22))))
	got := hold(pattern("S"), w, made("Sleeve", schematic.KindSleeve, sts("Sleeve", "cuff", 25)))
	require.Equal(t, []string{"drawn/written"}, kinds(got))
	assert.Contains(t, got[0].Message, "20–24 cm")
}

// Common practice: the finished bust goes all the way around, so flat pieces add
// up: back 46 and two fronts of 24 make 94 cm.
func TestABustOfFlatPiecesIsTheirSum(t *testing.T) {
	w := schematic.Written{Name: "bust", Low: expr.Of(cm(94, 1)), High: expr.Of(cm(94, 1))}
	back := made("Back", schematic.KindBack, sts("Back", "width at underarm", 46))
	front := made("Front", schematic.KindFront, sts("Front", "width at underarm", 24))
	front.Make = 2
	sleeve := made("Sleeve", schematic.KindSleeve, sts("Sleeve", "upper arm", 30))
	assert.Empty(t, hold(pattern("S"), w, back, front, sleeve))
	w.Low, w.High = expr.Of(cm(70, 1)), expr.Of(cm(70, 1))
	got := hold(pattern("S"), w, back, front, sleeve)
	require.Equal(t, []string{"drawn/written"}, kinds(got))
	assert.Equal(t, "46 sts of Back make 46 cm, 2 x 24 sts of Front make 24 cm: together 94 cm", got[0].Have)
}

func TestABodyWorkedFlatInOnePieceGoesAround(t *testing.T) {
	body := made("Body", schematic.KindBody, sts("Body", "width at hem", 100))
	w := schematic.Written{Name: "bust", Low: expr.Of(cm(1012, 10)), High: expr.Of(cm(1012, 10))}
	assert.Empty(t, hold(pattern("S"), w, body), "1.2 cm off, within 1.25 around")
	body.Measures = append(body.Measures, sts("Body", "width at top", 80))
	assert.Equal(t, []string{"drawn/unknown"}, kinds(hold(pattern("S"), w, body)), "no width of a shaped body is its bust unless it is called so")
}

func TestOfNamesAMeasurementOrASum(t *testing.T) {
	back := made("Back", schematic.KindBack, sts("Back", "width at hem", 45), rows("Back", "length", 120))
	yoke := made("Yoke", schematic.KindYoke, rows("Yoke", "yoke depth", 40))
	for of, want := range map[string]int64{
		"Back width at hem": 45, "back Width At Hem": 45, "2 x Back width at hem": 90, "2 × Back width at hem + 3 cm": 93,
		"Back length + Yoke yoke depth": 80, "Back length - 10 cm": 50, "Back width at hem / 3": 15, "half of Back length": 30,
	} {
		w := schematic.Written{Name: "anything", Of: of, Low: expr.Of(cm(want, 1)), High: expr.Of(cm(want, 1))}
		assert.Empty(t, hold(pattern("S"), w, back, yoke), of)
		w.Low, w.High = expr.Of(cm(want+4, 1)), expr.Of(cm(want+4, 1))
		assert.Equal(t, []string{"drawn/written"}, kinds(hold(pattern("S"), w, back, yoke)), of)
	}
}

func TestANameThatNothingHasIsANoteAndOneAskedForAWarning(t *testing.T) {
	back := made("Back", schematic.KindBack, rows("Back", "length", 120))
	w := schematic.Written{Name: "collar", Low: expr.Of(cm(8, 1)), High: expr.Of(cm(8, 1))}
	got := hold(pattern("S"), w, back)
	require.Equal(t, []string{"drawn/unknown"}, kinds(got))
	assert.Equal(t, finding.Note, got[0].Severity)
	assert.Contains(t, got[0].Want, "Back length")
	w.Of = "Collar depth"
	got = hold(pattern("S"), w, back)
	require.Equal(t, []string{"drawn/unknown"}, kinds(got))
	assert.Equal(t, finding.Warning, got[0].Severity)
}

func TestSizesThatAreNotWrittenAndSizesThatHaveNothing(t *testing.T) {
	p := pattern("S", "M", "L")
	dash := expr.Of(cm(20, 1), units.Num{}, cm(22, 1))
	dash.Has[1] = false
	p.Finished = []schematic.Written{{Name: "cuff", Low: dash, High: dash}}
	got := Pattern(p, garments(p, func(i int) []*schematic.Made {
		if i == 2 {
			return []*schematic.Made{made("Body", schematic.KindBody)}
		}
		return []*schematic.Made{made("Sleeve", schematic.KindSleeve, sts("Sleeve", "cuff", 20+i))}
	}))
	assert.ElementsMatch(t, []string{"grading/missing", "drawn/missing", "grading/hole"}, kinds(got))
	for _, f := range got {
		if f.Kind == "drawn/missing" {
			assert.Equal(t, []string{"L"}, f.Sizes)
		} else {
			assert.Equal(t, []string{"M"}, f.Sizes)
		}
	}
}

// A fix that can be pasted has every size: 25 for the size that is wrong, 22 for the one that the designer left
// out, and what she wrote for the others.
func TestAFixNeverWritesADashForASizeThatHasTheMeasurement(t *testing.T) {
	p := pattern("S", "M", "L")
	low := expr.Of(cm(20, 1), units.Num{}, cm(29, 1))
	low.Has[1] = false
	p.Finished = []schematic.Written{{Name: "cuff", Low: low, High: low}}
	n := []int{20, 22, 25}
	fixes := 0
	for _, f := range Pattern(p, garments(p, func(i int) []*schematic.Made {
		return []*schematic.Made{made("Sleeve", schematic.KindSleeve, sts("Sleeve", "cuff", n[i]))}
	})) {
		if f.Kind == "drawn/written" || f.Kind == "grading/missing" {
			assert.Contains(t, f.Fix, "write 20 (22, 25) cm", f.Kind)
			fixes++
		}
	}
	assert.Equal(t, 2, fixes)
}

func TestANumberThatFitsInAnotherUnitIsTakenForAMistakenUnit(t *testing.T) {
	back := made("Back", schematic.KindBack, sts("Back", "width at hem", 45))
	for _, c := range []struct {
		unit units.Unit
		n    int64
		fix  string
	}{
		{units.CM, 18, "18 in would fit: is the unit meant to be in?"}, // 18 in are 45.72 cm
		{units.Inch, 45, "45 cm would fit: is the unit meant to be cm?"},
		{units.MM, 45, "45 cm would fit: is the unit meant to be cm?"},
		{units.CM, 40, "write 45 cm, or work 40 sts"},
	} {
		l := expr.Of(units.Of(units.Int(c.n), c.unit))
		got := hold(pattern("S"), schematic.Written{Name: "width at hem", Low: l, High: l, Unit: c.unit}, back)
		require.Equal(t, []string{"drawn/written"}, kinds(got))
		assert.Equal(t, c.fix, got[0].Fix)
	}
}

func TestTheMeasurementThatWasMeantIsNamed(t *testing.T) {
	l := expr.Of(cm(45, 1))
	got := hold(pattern("S"), schematic.Written{Name: "widht at hem", Low: l, High: l}, made("Back", schematic.KindBack, sts("Back", "width at hem", 45)))
	require.Equal(t, []string{"drawn/unknown"}, kinds(got))
	assert.Equal(t, `did you mean "width at hem"?`, got[0].Fix)
}

// What a written measurement is held against tells of grading; the written one says no more.
func TestAWrongDigitInAWrittenMeasurementIsToldOnce(t *testing.T) {
	p := pattern("S", "M", "L", "XL")
	l := expr.Of(cm(40, 1), cm(54, 1), cm(48, 1), cm(52, 1)) // 54 for 44
	p.Finished = []schematic.Written{{Name: "width at hem", Low: l, High: l}}
	got := Pattern(p, garments(p, func(i int) []*schematic.Made {
		return []*schematic.Made{made("Back", schematic.KindBack, sts("Back", "width at hem", 40+4*i))}
	}))
	require.Equal(t, []string{"drawn/written"}, kinds(got))
	assert.Equal(t, []string{"M"}, got[0].Sizes)
}

// The neck of a half front is told as half; the whole of it may be written, or the half.
func TestAWidthOfHalfAPieceIsHeldAgainstTheWholeOrTheHalf(t *testing.T) {
	for _, c := range []struct {
		name string
		n    int64
		want []string
	}{
		{"front neck width", 20, []string{}},
		{"front neck width", 10, []string{}},
		{"half front neck width", 10, []string{}},
		{"half front neck width", 20, []string{"drawn/written"}},
		{"front neck width", 15, []string{"drawn/written"}},
		{"Front front neck width", 20, []string{}},
	} {
		p := pattern("S")
		p.Finished = []schematic.Written{{Name: c.name, Unit: units.CM, Low: expr.Of(cm(c.n, 1)), High: expr.Of(cm(c.n, 1))}}
		gs := garments(p, func(int) []*schematic.Made {
			return []*schematic.Made{made("Front", schematic.KindFront, sts("Front", "half front neck width", 10))}
		})
		assert.Equal(t, c.want, kinds(Pattern(p, gs)), "%s %d", c.name, c.n)
	}
}
