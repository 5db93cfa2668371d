package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// 1 in = 2.54 cm exactly (international yard and pound agreement, 1959). At half
// centimetres and quarter inches a pair may be 0.25 cm + 0.125 in = 0.5675 cm apart.
func TestCentimetresAndInchesAgreeIfTheyCanBeRoundedFromOneLength(t *testing.T) {
	half := units.Steps{CM: units.Frac(1, 2), Inch: units.Frac(1, 2)}
	for _, c := range []struct {
		a, b   units.Num
		unit   units.Unit
		steps  units.Steps
		agrees bool
	}{
		{cm(92, 1), inch(145, 4), units.CM, units.Usual, true},   // 36¼ in is 92.075 cm
		{cm(92, 1), inch(36, 1), units.CM, units.Usual, true},    // 91.44 cm: 0.56 apart
		{cm(925, 10), inch(36, 1), units.CM, units.Usual, false}, // 1.06 apart
		{cm(92, 1), inch(143, 4), units.CM, units.Usual, false},  // 35¾ in is 90.805 cm
		{cm(925, 10), inch(73, 2), units.CM, half, true},         // 36½ in is 92.71; ½ in steps: 0.885 cm
		{cm(918, 10), inch(73, 2), units.CM, half, false},        // 0.91 apart
		{inch(36, 1), cm(91, 1), units.Inch, units.Usual, true},
		{inch(36, 1), cm(93, 1), units.Inch, units.Usual, false},
	} {
		p := pattern("S")
		p.Steps = c.steps
		p.Bodies = []schematic.Written{{Name: "height", Unit: c.unit, Low: expr.Of(c.a), High: expr.Of(c.a), Other: expr.Of(c.b)}}
		got := Pattern(p, garments(p, func(int) []*schematic.Made { return nil }))
		if c.agrees {
			assert.Empty(t, got, "%s and %s mm", c.a, c.b)
		} else {
			assert.Equal(t, []string{"units/pair"}, kinds(got), "%s and %s mm", c.a, c.b)
		}
	}
}

func TestAPairThatDiffersTellsTheRoundingItIsHeldTo(t *testing.T) {
	p := pattern("S", "M")
	p.Bodies = []schematic.Written{{Name: "bust", Low: expr.Of(cm(92, 1), cm(102, 1)), High: expr.Of(cm(92, 1), cm(102, 1)),
		Other: expr.Of(inch(145, 4), inch(42, 1))}}
	got := Pattern(p, garments(p, func(int) []*schematic.Made { return nil }))
	require.Equal(t, []string{"units/pair"}, kinds(got))
	assert.Equal(t, []string{"M"}, got[0].Sizes)
	assert.Equal(t, "102 cm is 40.16 in, and 42 in is written", got[0].Have)
	assert.Equal(t, "at most 0.57 cm between them, as they are printed to ½ cm and ¼ in", got[0].Want)
	assert.Contains(t, got[0].Fix, "write 40¼ in beside it")
}
