package units

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// 1 in is 25.4 mm exactly, 1 yd 0.9144 m (NIST SP 811, appendix B.8); ISO 216's A4 is
// 210 × 297 mm, ANSI/ASME Y14.1's size A 8.5 × 11 in.
func TestAnInchIsTwentyFivePointFourMillimetres(t *testing.T) {
	assert.True(t, Of(Int(1), Inch).Eq(Frac(254, 10)))
	assert.True(t, Of(Int(36), Inch).Eq(Frac(9144, 10)))
	assert.True(t, Of(Frac(17, 2), Inch).Eq(Frac(2159, 10)))
	assert.True(t, Of(Int(21), CM).Eq(Of(Int(210), MM)))
	assert.True(t, In(Frac(254, 1), Inch).Eq(Int(10)))
}

// Body lengths as the Craft Yarn Council prints them in both units (from memory): the
// printed centimetres and inches each come from one exact length.
func TestBothUnitsAreRoundedFromTheSameLength(t *testing.T) {
	for _, k := range []struct {
		mm   Num
		want string
	}{
		{Of(Frac(79, 2), CM), "39.5 cm / 15½ in"},
		{Of(Int(4), Inch), "10 cm / 4 in"},
		{Of(Int(10), CM), "10 cm / 4 in"}, // 3.937 in
		{Of(Int(32), Inch), "81.5 cm / 32 in"},
		{Of(Frac(1, 4), Inch), "0.5 cm / ¼ in"},
		{Frac(25, 10), "0.5 cm / 0 in"}, // a tie goes up; 0.098 in does not
	} {
		assert.Equal(t, k.want, Usual.Both(k.mm, CM))
		parts := strings.Split(k.want, " / ")
		assert.Equal(t, parts[1]+" / "+parts[0], Usual.Both(k.mm, Inch))
	}
	assert.Equal(t, "12 mm", Usual.With(Frac(119, 10), MM))
	assert.Equal(t, "3 1/3", Mixed(Frac(10, 3)))
	assert.Equal(t, "-1½", Mixed(Frac(-3, 2)))
}

func TestNumbersAreReadAsPeopleTypeThem(t *testing.T) {
	for text, want := range map[string]Num{
		"14": Int(14), "14.5": Frac(29, 2), ".5": Frac(1, 2), "15½": Frac(31, 2), "15 ½": Frac(31, 2), "15 1/2": Frac(31, 2), "1/4": Frac(1, 4), "1⁄4": Frac(1, 4), "-2": Int(-2), "−2": Int(-2), " 7 ": Int(7),
	} {
		v, ok := ParseNum(text)
		assert.True(t, ok, text)
		assert.True(t, v.Eq(want), "%s: %s", text, v)
	}
	for _, text := range []string{"", "-", "1e3", "NaN", "1/0", "1.2.3", "12345678901", "1.1234567", "½½", "1/2/3", "½ 1", "٣", "0x10", "--2", "1 2"} {
		_, ok := ParseNum(text)
		assert.False(t, ok, text)
	}
	for text, want := range map[string]Unit{"cm": CM, "in": Inch, `"`: Inch, "inches": Inch, "mm": MM, "centimetres": CM, "in.": Inch} {
		u, ok := ParseUnit(text)
		assert.True(t, ok, text)
		assert.Equal(t, want, u)
	}
	_, ok := ParseUnit("yards")
	assert.False(t, ok)
}

// What is printed in inches reads back as what was printed, within half of the step.
func TestPrintedNumbersReadBack(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		l := Frac(rapid.Int64Range(0, 2_000_000).Draw(r, "n"), rapid.Int64Range(1, 1000).Draw(r, "d"))
		for _, u := range []Unit{CM, Inch, MM} {
			v, ok := ParseNum(Usual.Format(l, u))
			if !ok {
				r.Fatalf("%q is not read", Usual.Format(l, u))
			}
			if Usual.Step(u).Half().Less(v.Sub(In(l, u)).Abs()) {
				r.Fatalf("%s is printed as %s", In(l, u), v)
			}
		}
	})
}

// Millimetres are printed whole, and what lies below one has no nought before its fraction.
func TestStepsOfEachUnit(t *testing.T) {
	for _, c := range []struct {
		n, d int64 // mm
		u    Unit
		want string
	}{
		{123, 10, MM, "12"}, {125, 10, MM, "13"}, {127, 10, Inch, "½"}, {-127, 10, Inch, "-½"}, {-254, 10, Inch, "-1"}, {-381, 10, Inch, "-1½"},
		{3175, 1000, Inch, "¼"}, {3, 1, Inch, "0"}, {24, 10, CM, "0"}, {25, 10, CM, "0.5"}, {1270, 10, CM, "12.5"},
	} {
		assert.Equal(t, c.want, Usual.Format(Frac(c.n, c.d), c.u), "%d/%d mm in %s", c.n, c.d, c.u)
	}
	fine := Steps{CM: Frac(1, 1000), Inch: Frac(1, 16)}
	assert.Equal(t, "1.235", fine.Format(Frac(12346, 1000), CM))
	assert.Equal(t, "1 1/16", fine.Format(Frac(127*17, 80), Inch), "17/16 of 25.4 mm")
	n, ok := ParseNum("1⁄2")
	assert.True(t, ok && n.Eq(Frac(1, 2)))
	_, ok = ParseNum("1⁄2⁄3")
	assert.False(t, ok)
}
