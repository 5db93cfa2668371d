package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Sums with their results as school arithmetic has them, on both sides of every sign and bound.
func TestSumsOfFractions(t *testing.T) {
	half, third := Frac(1, 2), Frac(1, 3)
	for _, c := range []struct {
		got, want Num
		what      string
	}{
		{half.Add(third), Frac(5, 6), "1/2 + 1/3"}, {half.Sub(third), Frac(1, 6), "1/2 - 1/3"}, {third.Sub(half), Frac(-1, 6), "1/3 - 1/2"},
		{Frac(2, 3).Mul(Frac(9, 4)), Frac(3, 2), "2/3 x 9/4"}, {Frac(-2, 3).Mul(Frac(3, 4)), Frac(-1, 2), "-2/3 x 3/4"},
		{Frac(-2, 3).Mul(Frac(-3, 4)), half, "-2/3 x -3/4"}, {Frac(2, 3).Mul(Frac(-3, 4)), Frac(-1, 2), "2/3 x -3/4"},
		{Int(3).Mul(Int(5)), Int(15), "3 x 5"}, {Frac(2, 3).Div(Frac(4, 9)), Frac(3, 2), "2/3 : 4/9"}, {half.Div(Frac(-1, 4)), Int(-2), "1/2 : -1/4"},
		{Frac(7, 2).Half(), Frac(7, 4), "half of 7/2"}, {third.Times(6), Int(2), "6 x 1/3"}, {Frac(4, 8), half, "4/8"}, {Frac(3, -6), Frac(-1, 2), "3/-6"},
		{Max(half, third), half, "the greater"}, {Max(third, half), half, "the greater"}, {Min(half, third), third, "the lesser"}, {Min(third, half), third, "the lesser"},
		{Frac(-7, 2).Abs(), Frac(7, 2), "without sign"}, {Frac(17, 8).RoundTo(Frac(1, 4)), Frac(9, 4), "a tie to the quarter goes up"},
		{Frac(33, 16).RoundTo(Frac(1, 4)), Int(2), "33/16 to the quarter"}, {Frac(17, 8).RoundTo(Num{}), Frac(17, 8), "no step"},
		{Frac(-17, 8).RoundTo(Frac(1, 4)), Int(-2), "a tie below nothing goes up as well"},
	} {
		assert.True(t, c.got.Eq(c.want), "%s is %s, not %s", c.what, c.want, c.got)
	}
	for _, c := range []struct {
		v           Num
		floor, ceil int64
	}{{Frac(5, 2), 2, 3}, {Frac(-5, 2), -3, -2}, {Int(4), 4, 4}, {Int(-4), -4, -4}, {Num{}, 0, 0}, {Frac(1, 7), 0, 1}, {Frac(-1, 7), -1, 0}} {
		assert.Equal(t, c.floor, c.v.Floor(), c.v)
		assert.Equal(t, c.ceil, c.v.Ceil(), c.v)
	}
	assert.Equal(t, []int{-1, 0, 1, -1, 1}, []int{third.Cmp(half), half.Cmp(Frac(2, 4)), half.Cmp(third), Int(1).Cmp(Int(2)), Int(2).Cmp(Int(1))})
	assert.True(t, third.Less(half) && !half.Less(third) && !half.Less(half))
	assert.Equal(t, []int{-1, 0, 1}, []int{Int(-3).Sign(), Num{}.Sign(), Int(3).Sign()})
	assert.Equal(t, []bool{true, false}, []bool{Int(3).IsInt(), half.IsInt()})
	assert.InDelta(t, 0.5, half.Float(), 0)
}

// Every fraction that has a character of its own has that one, and is read back.
func TestEveryVulgarFractionIsItsOwn(t *testing.T) {
	for text, want := range map[string]Num{"½": Frac(1, 2), "¼": Frac(1, 4), "¾": Frac(3, 4), "⅛": Frac(1, 8), "⅜": Frac(3, 8), "⅝": Frac(5, 8), "⅞": Frac(7, 8)} {
		assert.Equal(t, text, Mixed(want))
		assert.Equal(t, "15"+text, Mixed(want.Add(Int(15))))
		assert.Equal(t, "-15"+text, Mixed(want.Add(Int(15)).Neg()))
		for _, typed := range []string{text, "15" + text, "15 " + text} {
			got, ok := ParseNum(typed)
			assert.True(t, ok, typed)
			assert.True(t, got.Sub(want).IsInt(), typed)
		}
	}
	assert.Equal(t, []string{"27.2", "-0.1", "¼", "1/16", "6⅛"}, []string{Mixed(Frac(136, 5)), Mixed(Frac(-1, 10)), Mixed(Frac(1, 4)), Mixed(Frac(1, 16)), Mixed(Frac(49, 8))}, "no ruler in inches has tenths")
	assert.Equal(t, []string{"2/3", "15 2/3", "-2/3", "0", "-4"}, []string{Mixed(Frac(2, 3)), Mixed(Frac(47, 3)), Mixed(Frac(-2, 3)), Mixed(Num{}), Mixed(Int(-4))})
}

// Nine figures before the point and six behind it are read, and not one more.
func TestNumbersHaveSoManyFigures(t *testing.T) {
	for text, want := range map[string]Num{
		"999999999": Int(999_999_999), "0.000001": Frac(1, 1_000_000), "14.25": Frac(57, 4), ".5": Frac(1, 2), "999999999 1/2": Frac(1_999_999_999, 2), "999999999/2": Frac(999_999_999, 2),
		"1/999999": Frac(1, 999_999), "999999999½": Frac(1_999_999_999, 2), "15 3⁄4": Frac(63, 4), "-2": Int(-2), "− 2 1/2": Frac(-5, 2), " 7 ": Int(7), "0": {},
	} {
		got, ok := ParseNum(text)
		assert.True(t, ok && got.Eq(want), "%q is %s, not %s", text, want, got)
	}
	for _, text := range []string{"1000000000", "0.0000001", "1000000000 1/2", "1000000000/2", "1/1000000", "1000000000½", "1/0", "1//2", "1⁄2⁄3", "1 x/2", "1/", "/2", ".", "5.", "", "-", "--1", "1e3", "x½", "1.2.3"} {
		_, ok := ParseNum(text)
		assert.False(t, ok, text)
	}
}

func TestDecimalsHaveAtMostSoManyPlaces(t *testing.T) {
	for _, c := range []struct {
		v      Num
		places int
		want   string
	}{{Frac(1, 8), 3, "0.125"}, {Frac(1, 8), 2, "0.13"}, {Frac(-1, 8), 3, "-0.125"}, {Frac(5, 2), 0, "3"}, {Int(7), 2, "7"}, {Frac(1, 3), 2, "0.33"}, {Frac(1, 1000), 2, "0"}, {Frac(21, 20), 1, "1.1"}, {Frac(1001, 1000), 3, "1.001"}} {
		assert.Equal(t, c.want, Decimal(c.v, c.places), c.v)
	}
	assert.Equal(t, []string{"0.125", "1/3", "4", "-2.5"}, []string{Frac(1, 8).String(), Frac(1, 3).String(), Int(4).String(), Frac(-5, 2).String()})
}
