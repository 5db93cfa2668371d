package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
)

var nine = []string{"XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X"}

func inches(quarters ...int64) expr.Graded {
	var all []units.Num
	for _, q := range quarters {
		all = append(all, inch(q, 4))
	}
	return expr.Of(all...)
}

func bodies(p *schematic.Pattern, all map[string]expr.Graded) finding.List {
	for _, name := range []string{"bust", "back waist length", "cross back", "upper arm", "arm to underarm", "armhole depth"} {
		if g, ok := all[name]; ok {
			p.Bodies = append(p.Bodies, schematic.Written{Name: name, Unit: units.Inch, Low: g, High: g})
		}
	}
	return Pattern(p, garments(p, func(int) []*schematic.Made { return nil }))
}

// Craft Yarn Council, Standards & Guidelines (2018), women's bodies: the lower end
// of each bust range as read, the rest from memory, in quarter inches.
func TestAPublishedBodyTableIsGradedWell(t *testing.T) {
	assert.Empty(t, bodies(pattern(nine...), map[string]expr.Graded{
		"bust":              inches(112, 128, 144, 160, 176, 192, 208, 224, 240),
		"back waist length": inches(66, 68, 69, 70, 71, 72, 72, 74, 74),
		"cross back":        inches(56, 58, 62, 66, 70, 72, 72, 74, 74),
		"upper arm":         inches(39, 41, 44, 48, 54, 62, 68, 74, 78),
		"arm to underarm":   inches(66, 68, 68, 70, 70, 72, 72, 72, 72),
		"armhole depth":     inches(24, 26, 28, 30, 32, 34, 36, 38, 40),
	}))
}

func TestTwoValuesThatChangedPlacesGoBackwards(t *testing.T) {
	got := bodies(pattern(nine...), map[string]expr.Graded{"bust": inches(112, 128, 160, 144, 176, 192, 208, 224, 240)})
	require.Equal(t, []string{"grading/backwards"}, kinds(got))
	assert.Equal(t, []string{"L"}, got[0].Sizes)
	assert.Equal(t, "40 in in M, 36 in in L", got[0].Have)
	assert.Equal(t, finding.Warning, got[0].Severity)
}

// Two values that changed places and two others: one series, one finding, with both places.
func TestTwoStepsBackInOneSeriesAreToldAsOne(t *testing.T) {
	got := bodies(pattern(nine...), map[string]expr.Graded{"bust": inches(112, 128, 160, 144, 176, 192, 224, 208, 240)})
	require.Equal(t, []string{"grading/backwards"}, kinds(got))
	assert.Equal(t, []string{"L", "4X"}, got[0].Sizes)
	assert.Equal(t, "body bust goes back from size M to L and from size 3X to 4X", got[0].Message)
	assert.Equal(t, "40 in in M, 36 in in L; 56 in in 3X, 52 in in 4X", got[0].Have)
}

// One wrong digit among lengths makes a step there and a step back.
func TestAWrongDigitAmongLengthsIsToldOnce(t *testing.T) {
	got := bodies(pattern(nine...), map[string]expr.Graded{"arm to underarm": inches(66, 68, 68, 170, 70, 72, 72, 72, 72)})
	require.Equal(t, []string{"grading/jump"}, kinds(got))
	assert.Equal(t, []string{"L", "1X"}, got[0].Sizes)
	assert.Equal(t, "25.5 in more in L than in M; 25 in less in 1X than in L", got[0].Have)
}

// Common practice: sleeves grow shorter as bodies grow wider.
func TestALengthMayGrowShorterButNotAllAtOnce(t *testing.T) {
	assert.Empty(t, bodies(pattern(nine...), map[string]expr.Graded{"arm to underarm": inches(72, 72, 71, 70, 70, 69, 68, 66, 66)}))
	got := bodies(pattern(nine...), map[string]expr.Graded{"arm to underarm": inches(72, 72, 71, 54, 54, 53, 52, 52, 52)})
	require.Equal(t, []string{"grading/jump"}, kinds(got))
	assert.Equal(t, "4.25 in less in L than in M", got[0].Have)
}

func TestAWrongDigitMakesAJumpUnlikeTheOthers(t *testing.T) {
	got := bodies(pattern(nine...), map[string]expr.Graded{"bust": inches(112, 128, 144, 160, 176, 192, 208, 224, 340)})
	require.Equal(t, []string{"grading/jump"}, kinds(got))
	assert.Equal(t, []string{"5X"}, got[0].Sizes)
	assert.Equal(t, finding.Note, got[0].Severity)
	assert.Equal(t, "29 in more in 5X than in 4X", got[0].Have) // 340 - 224 quarters
	assert.Equal(t, "about 4 in, as between the other sizes", got[0].Want)
}

func TestCountsMayMoveBackByAStitchBecauseTheyAreWhole(t *testing.T) {
	for _, c := range []struct {
		counts []int
		want   []string
	}{
		{[]int{40, 39, 44}, []string{}},
		{[]int{40, 38, 44}, []string{"grading/backwards"}},
	} {
		p := pattern("S", "M", "L")
		got := Pattern(p, garments(p, func(i int) []*schematic.Made {
			return []*schematic.Made{made("Back", schematic.KindBack, sts("Back", "cross back", c.counts[i]))}
		}))
		assert.Equal(t, c.want, kinds(got), "%v", c.counts)
	}
}

func TestASizeWithoutWhatItsNeighboursHave(t *testing.T) {
	p := pattern("S", "M", "L", "XL")
	got := Pattern(p, garments(p, func(i int) []*schematic.Made {
		if i == 1 || i == 3 {
			return nil
		}
		return []*schematic.Made{made("Pocket", schematic.KindPiece, sts("Pocket", "width", 12))}
	}))
	require.Equal(t, []string{"grading/hole"}, kinds(got), "the largest size may go without")
	assert.Equal(t, []string{"M"}, got[0].Sizes)
}

func TestAGarmentSmallerThanTheBodyItFits(t *testing.T) {
	p := pattern("S", "M")
	p.Bodies = []schematic.Written{{Name: "bust", Low: expr.Of(cm(86, 1), cm(96, 1)), High: expr.Of(cm(91, 1), cm(101, 1))}}
	bust := func(n int) schematic.Measure {
		m := sts("Body", "bust", n)
		m.Around = true
		return m
	}
	got := Pattern(p, garments(p, func(i int) []*schematic.Made {
		return []*schematic.Made{made("Body", schematic.KindBody, bust([]int{86, 94}[i]))}
	}))
	// 86 cm go round the smallest body of S (86 to 91), not round the largest: both ends of a range count.
	require.Equal(t, []string{"grading/ease", "grading/ease"}, kinds(got))
	assert.Equal(t, []string{"M"}, got[0].Sizes)
	assert.Equal(t, "add 2 cm of width, or say in a note that the ease is negative", got[0].Fix)
	assert.Equal(t, []string{"S"}, got[1].Sizes)
	assert.Equal(t, finding.Note, got[1].Severity)
	assert.Equal(t, "add 5 cm of width, or end the size's range at 86 cm", got[1].Fix) // 91 - 86

	p.Finished = []schematic.Written{{Name: "bust", Low: expr.Of(cm(84, 1), cm(98, 1)), High: expr.Of(cm(84, 1), cm(98, 1))}}
	got = Pattern(p, garments(p, func(int) []*schematic.Made { return nil }))
	assert.Equal(t, []string{"grading/ease", "drawn/unknown", "grading/ease"}, kinds(got), "what is written stands in where the counts have no bust; 98 is between the ends of M, 96 and 101")
	assert.Equal(t, []string{"S"}, got[0].Sizes)
}

// 96 cm within half a stitch (1 cm each, twice as it goes around) are 96 cm.
func TestHalfAStitchShortOfTheBodyIsNotSmaller(t *testing.T) {
	p := pattern("S", "M")
	p.Bodies = []schematic.Written{{Name: "bust", Low: expr.Of(cm(86, 1), cm(96, 1))}}
	got := Pattern(p, garments(p, func(i int) []*schematic.Made {
		m := sts("Body", "bust", []int{85, 94}[i])
		m.Around = true
		return []*schematic.Made{made("Body", schematic.KindBody, m)}
	}))
	require.Equal(t, []string{"grading/ease"}, kinds(got))
	assert.Equal(t, []string{"M"}, got[0].Sizes)
}

// A wrong digit at the upper end of a range alone, 48-60 where 48-50 was meant (the ranges are the Craft Yarn Council's,
// 2018): 60 in 2X, 54 in 3X.
func TestARangeIsHeldAtBothItsEnds(t *testing.T) {
	p := pattern(nine...)
	p.Bodies = []schematic.Written{{Name: "bust", Unit: units.Inch, Low: inches(112, 128, 144, 160, 176, 192, 208, 224, 240),
		High: inches(120, 136, 152, 168, 184, 200, 216, 232, 248)}}
	none := func(int) []*schematic.Made { return nil }
	assert.Empty(t, Pattern(p, garments(p, none)))
	p.Bodies[0].High = inches(120, 136, 152, 168, 184, 240, 216, 232, 248)
	got := Pattern(p, garments(p, none))
	require.Equal(t, []string{"grading/backwards"}, kinds(got))
	assert.Equal(t, "60 in in 2X, 54 in in 3X", got[0].Have)
	assert.Contains(t, got[0].Message, "upper end")
}

// Steps of 4, 4, 4 and 10 in: two and a half times the largest of the others. 9.5 in is less.
func TestALastStepTwoAndAHalfTimesItsNeighboursIsFound(t *testing.T) {
	sizes := []string{"S", "M", "L", "XL", "2X"}
	got := bodies(pattern(sizes...), map[string]expr.Graded{"bust": inches(128, 144, 160, 176, 216)})
	require.Equal(t, []string{"grading/jump"}, kinds(got))
	assert.Equal(t, "10 in more in 2X than in XL", got[0].Have)
	assert.Empty(t, bodies(pattern(sizes...), map[string]expr.Graded{"bust": inches(128, 144, 160, 176, 214)}))
}

// Ties of 30, 30, 40 and 40 cm are their designer's; of 30, 30, 80 and 80 they are worth a look: more than half as long again.
func TestATieMayBeAsLongAsItsDesignerLikes(t *testing.T) {
	for _, c := range []struct {
		name  string
		rows  []int
		kinds []string
	}{
		{"Tie", []int{30, 30, 40, 40}, []string{}},
		{"Bag handle", []int{30, 30, 40, 40}, []string{}},
		{"Neck tie", []int{40, 40, 30, 30}, []string{}},
		{"Tie", []int{30, 30, 80, 80}, []string{"grading/jump"}},
		{"Sleeve", []int{30, 30, 40, 40}, []string{"grading/jump"}},
	} {
		p := pattern("S", "M", "L", "XL")
		got := Pattern(p, garments(p, func(i int) []*schematic.Made {
			m := sts(c.name, "length", c.rows[i])
			m.Length, m.Of, m.Axis = units.Int(int64(c.rows[i]*10)), "row", schematic.Vertical
			return []*schematic.Made{made(c.name, schematic.KindPiece, m)}
		}))
		assert.Equal(t, c.kinds, kinds(got), "%s %v", c.name, c.rows)
	}
}

// Tops of 14, 14, 22 and 40 stitches that a grading chose are no one's wrong digit.
func TestNumbersThatTheGradingChoseAreNoWrongDigit(t *testing.T) {
	p := pattern("S", "M", "L", "XL")
	tops := []int{14, 14, 16, 40}
	p.Grading = []schematic.Grading{{Name: "cap", Kind: schematic.GradeCap, Pos: finding.Pos{Line: 12}}}
	p.Graded = []schematic.GradedValue{{Name: "cap top", Dim: expr.Stitches, Vals: expr.Counts(tops...), Of: 0}}
	work := func(i int) []*schematic.Made {
		return []*schematic.Made{made("Sleeve", schematic.KindSleeve, sts("Sleeve", "top", tops[i]))}
	}
	got := Pattern(p, garments(p, work))
	require.Equal(t, []string{"grading/jump"}, kinds(got))
	assert.Equal(t, `the grading chose these: change what "cap" is worked out from (line 12)`, got[0].Fix)
	p.Grading[0].Kind = schematic.GradeStitches // rounded from a length that is worked out
	assert.Contains(t, Pattern(p, garments(p, work))[0].Fix, "the grading chose these")
	p.Grading[0].Given = &schematic.GradedValue{} // numbers that the designer gave there
	assert.Contains(t, Pattern(p, garments(p, work))[0].Fix, "look for a wrong digit")
	p.Graded = nil
	assert.Contains(t, Pattern(p, garments(p, work))[0].Fix, "look for a wrong digit")
}

// A body of panels of 20, 40 and 20 stitches and, under the name of the second, a part of its 40: 80 around, not 120 or 20.
func TestAPartNamedLikeItsPanelDoesNotCountTwice(t *testing.T) {
	p := pattern("S")
	panel := func(view, n int, part string) schematic.Measure {
		m := sts("Body", "bust", n)
		m.View, m.Part = view, part
		m.ID += string(rune('a'+view)) + part
		return m
	}
	g := garments(p, func(int) []*schematic.Made {
		return []*schematic.Made{made("Body", schematic.KindBody, panel(0, 20, ""), panel(1, 40, "Back"), panel(1, 40, "back"), panel(2, 20, ""), panel(2, 20, "Left front"))}
	})
	one := measured(g[0], "bust")
	require.Len(t, one, 1)
	assert.Equal(t, sts("Body", "bust", 80).Length, one[0].length())
}

// Underarms of 10, 11, 12 and 13 stitches lie in front by 5 and 5, 5 and 6, 6 and 6, 6 and 7: one measurement, two, one again, and two.
func TestAnUnderarmThatIsToldOnceForBothSidesIsNoHole(t *testing.T) {
	p, found := read.Pattern("p.yaml", []byte(`version: 1
pattern: P
units: cm
sizes: S (M, L, XL)
gauges: {fabric: 20 sts and 28 rows over 10 cm}
pieces:
  - piece: Body
    worked: in the round, from the hem
    sections:
      - {cast on: 176 (192, 208, 228), edge: hem}
      - {even: 96 rows}
      - divide:
          - part: Front
            stitches: 78 (85, 92, 101)
            sections: [{even: 12 rows}, {bind off: all, edge: front neck}]
          - {bind off: 10 (11, 12, 13), edge: underarm}
          - part: Back
            stitches: 78 (85, 92, 101)
            sections: [{even: 12 rows}, {bind off: all, edge: back neck}]
          - {bind off: 10 (11, 12, 13), edge: underarm}
`))
	require.NotNil(t, p, "%v", found)
	var gs []*schematic.Garment
	for i := range p.Sizes.Len() {
		gs = append(gs, schematic.Work(p, i))
	}
	for _, f := range Pattern(p, gs) {
		assert.NotEqual(t, "grading/hole", f.Kind, "%s %s", f.Message, f.Have)
	}
}
