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
	require.Equal(t, []string{"grading/ease"}, kinds(got))
	assert.Equal(t, []string{"M"}, got[0].Sizes)
	assert.Equal(t, "add 2 cm of width, or say in a note that the ease is negative", got[0].Fix)

	p.Finished = []schematic.Written{{Name: "bust", Low: expr.Of(cm(84, 1), cm(98, 1)), High: expr.Of(cm(84, 1), cm(98, 1))}}
	got = Pattern(p, garments(p, func(int) []*schematic.Made { return nil }))
	assert.Equal(t, []string{"grading/ease", "drawn/unknown"}, kinds(got), "what is written stands in where the counts have no bust")
	assert.Equal(t, []string{"S"}, got[0].Sizes)
}
