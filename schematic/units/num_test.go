package units

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func num() *rapid.Generator[Num] {
	return rapid.Custom(func(t *rapid.T) Num {
		if rapid.IntRange(0, 4).Draw(t, "size") == 0 { // as far as they go
			return Frac(rapid.Int64().Draw(t, "n"), rapid.Int64Min(1).Draw(t, "d"))
		}
		return Frac(rapid.Int64Range(-1_000_000, 1_000_000).Draw(t, "n"), rapid.Int64Range(1, 10_000).Draw(t, "d"))
	})
}

// Against math/big, the standard library's own fractions: exact while the result fits, and
// otherwise within 2^-20 or at the end of what there is.
func TestSumsAreThoseOfBigFractions(t *testing.T) {
	near := func(r *rapid.T, op string, got Num, want *big.Rat) {
		if want.Num().IsInt64() && want.Denom().IsInt64() && want.Num().Int64() != math.MinInt64 {
			require.Zero(r, got.big().Cmp(want), "%s: %s, not %s", op, got.big(), want)
			return
		}
		most := new(big.Rat).SetFrac64(math.MaxInt64, 1<<20)
		if new(big.Rat).Abs(want).Cmp(most) > 0 {
			require.Equal(r, want.Sign(), got.Sign(), op)
			return
		}
		off := new(big.Rat).Abs(new(big.Rat).Sub(got.big(), want))
		require.LessOrEqual(r, off.Cmp(big.NewRat(1, 1<<20)), 0, "%s: %s, not %s", op, got.big(), want)
	}
	rapid.Check(t, func(r *rapid.T) {
		a, b := num().Draw(r, "a"), num().Draw(r, "b")
		x, y := a.big(), b.big()
		near(r, "+", a.Add(b), new(big.Rat).Add(x, y))
		near(r, "-", a.Sub(b), new(big.Rat).Sub(x, y))
		near(r, "x", a.Mul(b), new(big.Rat).Mul(x, y))
		if b.Sign() != 0 {
			near(r, "/", a.Div(b), new(big.Rat).Quo(x, y))
		}
		assert.Equal(r, x.Sign(), a.Sign())
		assert.Equal(r, x.Cmp(y) == 0, a.Eq(b))
	})
}

func TestRoundingGoesToTheNearestAndTiesUp(t *testing.T) {
	for _, k := range []struct {
		n, d                    int64
		floor, ceil, round, tie int64 // tie: rounded to the nearest multiple of 2
	}{
		{5, 2, 2, 3, 3, 2}, {-5, 2, -3, -2, -2, -2}, {7, 3, 2, 3, 2, 2}, {-7, 3, -3, -2, -2, -2}, {3, 1, 3, 3, 3, 4}, {-3, 1, -3, -3, -3, -2}, {0, 1, 0, 0, 0, 0},
	} {
		v := Frac(k.n, k.d)
		assert.Equal(t, k.floor, v.Floor(), v)
		assert.Equal(t, k.ceil, v.Ceil(), v)
		assert.Equal(t, k.round, v.Round(), v)
		assert.True(t, v.RoundTo(Int(2)).Eq(Int(k.tie)), "%s to %s", v, v.RoundTo(Int(2)))
	}
	assert.True(t, Int(7).RoundTo(Int(0)).Eq(Int(7)))
}

func TestNothingIsDividedByNought(t *testing.T) {
	assert.Panics(t, func() { Frac(1, 0) })
	assert.Panics(t, func() { Int(1).Div(Num{}) })
	assert.True(t, Num{}.Eq(Int(0)))
	assert.True(t, Num{}.Add(Int(2)).Eq(Int(2)))
	assert.True(t, Max(Int(2), Frac(5, 2)).Eq(Frac(5, 2)))
	assert.True(t, Min(Int(2), Frac(5, 2)).Eq(Int(2)))
}

func TestDecimalsAreRoundedAndKeepNoZeros(t *testing.T) {
	for _, k := range []struct {
		v      Num
		places int
		want   string
	}{
		{Frac(79, 2), 3, "39.5"}, {Int(40), 2, "40"}, {Frac(1, 3), 2, "0.33"}, {Frac(2, 3), 0, "1"}, {Frac(-1, 8), 2, "-0.12"}, {Frac(1, 8), 2, "0.13"}, {Frac(-1, 1000), 2, "0"},
	} {
		assert.Equal(t, k.want, Decimal(k.v, k.places), k.v)
	}
}
