package units

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
)

// At the ends of what 64 bits hold, and on both sides of them, every pair of numbers has the sum, the product and the
// order that math/big gives, or the nearest that can be held.
func TestSumsAtTheEndsOfWhatCanBeHeld(t *testing.T) {
	var all []Num
	for _, n := range []int64{0, 1, 2, 3, 1<<31 - 1, 1 << 31, 1<<32 - 1, 1 << 32, 1 << 62, math.MaxInt64 - 1, math.MaxInt64} {
		for _, d := range []int64{1, 2, 3, 1 << 31, 1<<32 + 1, math.MaxInt64} {
			all = append(all, Frac(n, d), Frac(-n, d))
		}
	}
	same := func(op string, a, b, got Num, want *big.Rat) {
		if want.Num().IsInt64() && want.Denom().IsInt64() && want.Num().Int64() != math.MinInt64 {
			assert.Zero(t, got.big().Cmp(want), "%s %s %s is %s, not %s", a, op, b, got, want)
		} else if most := new(big.Rat).SetFrac64(math.MaxInt64, 1<<20); new(big.Rat).Abs(want).Cmp(most) > 0 {
			assert.Equal(t, want.Sign(), got.Sign(), "%s %s %s", a, op, b)
			assert.Zero(t, new(big.Rat).Abs(got.big()).Cmp(most), "%s %s %s is %s", a, op, b, got)
		} else {
			off := new(big.Rat).Sub(got.big(), want)
			assert.LessOrEqual(t, off.Abs(off).Cmp(big.NewRat(1, 1<<20)), 0, "%s %s %s is %s, not %s", a, op, b, got, want)
		}
	}
	for _, a := range all {
		for _, b := range all {
			x, y := a.big(), b.big()
			same("+", a, b, a.Add(b), new(big.Rat).Add(x, y))
			same("-", a, b, a.Sub(b), new(big.Rat).Sub(x, y))
			same("×", a, b, a.Mul(b), new(big.Rat).Mul(x, y))
			if y.Sign() != 0 {
				same("/", a, b, a.Div(b), new(big.Rat).Quo(x, y))
			}
			if off := new(big.Rat).Sub(x, y); off.Abs(off).Cmp(big.NewRat(1, 1<<20)) >= 0 || off.Sign() == 0 {
				assert.Equal(t, x.Cmp(y), a.Cmp(b), "%s and %s", a, b)
			}
		}
	}
}

// Floors are those of whole division downwards: -7/2 is between -4 and -3.
func TestFloorsGoDown(t *testing.T) {
	for _, c := range []struct{ n, d, floor int64 }{{7, 2, 3}, {-7, 2, -4}, {6, 2, 3}, {-6, 2, -3}, {0, 5, 0}, {-1, 3, -1}, {1, 3, 0}} {
		assert.Equal(t, c.floor, Frac(c.n, c.d).Floor(), "%d/%d", c.n, c.d)
	}
}
