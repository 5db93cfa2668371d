// Package units holds exact numbers and lengths, and is the only place that
// turns them into text. A length is a Num of millimetres. Nothing here knows
// of stitches, pieces or paper.
package units

import (
	"fmt"
	"math"
	"math/big"
	"math/bits"
	"strings"
)

// Num is an exact fraction. The zero value is 0. Sums stay exact while the
// reduced fraction fits in 63 bits over 63 bits, which every pattern within
// the reader's bounds does; beyond that the result is the nearest multiple of
// 2^-20 (saturating), so that no input can make arithmetic fail.
type Num struct {
	n, d int64 // d == 0 stands for 1, so that the zero value is 0
}

// Int is the whole number n.
func Int(n int64) Num { return Num{n, 1} }

// Frac is n/d. It panics if d is 0: a fraction with a denominator from outside
// must be checked first.
func Frac(n, d int64) Num {
	if d == 0 {
		panic("units: zero denominator")
	}
	return reduce(n, d)
}

func (a Num) den() int64 {
	if a.d == 0 {
		return 1
	}
	return a.d
}

func reduce(n, d int64) Num {
	if n == math.MinInt64 || d == math.MinInt64 {
		return fromBig(new(big.Rat).SetFrac(big.NewInt(n), big.NewInt(d)))
	}
	if d < 0 {
		n, d = -n, -d
	}
	if g := gcd(abs(n), d); g > 1 {
		n, d = n/g, d/g
	}
	return Num{n, d}
}

func abs(n int64) int64 {
	if n < 0 {
		return -n
	}
	return n
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func mul(a, b int64) (int64, bool) {
	hi, lo := bits.Mul64(uint64(abs(a)), uint64(abs(b)))
	if hi != 0 || lo > math.MaxInt64 {
		return 0, false
	}
	if (a < 0) != (b < 0) {
		return -int64(lo), true
	}
	return int64(lo), true
}

func (a Num) big() *big.Rat { return big.NewRat(a.n, a.den()) }

// fromBig keeps r exact if it fits and otherwise rounds it to 2^-20.
func fromBig(r *big.Rat) Num {
	if r.Num().IsInt64() && r.Denom().IsInt64() && r.Num().Int64() != math.MinInt64 {
		return Num{r.Num().Int64(), r.Denom().Int64()}
	}
	const shift = 20
	q := new(big.Int).Lsh(r.Num(), shift)
	q.Quo(q, r.Denom())
	if !q.IsInt64() {
		if q.Sign() < 0 {
			return Num{-math.MaxInt64, 1 << shift}
		}
		return Num{math.MaxInt64, 1 << shift}
	}
	return reduce(q.Int64(), 1<<shift)
}

// Add is a+b.
func (a Num) Add(b Num) Num {
	ad, bd := a.den(), b.den()
	g := gcd(ad, bd)
	x, ok1 := mul(a.n, bd/g)
	y, ok2 := mul(b.n, ad/g)
	d, ok3 := mul(ad, bd/g)
	if s := x + y; ok1 && ok2 && ok3 && (s > x) == (y > 0) {
		return reduce(s, d)
	}
	return fromBig(new(big.Rat).Add(a.big(), b.big()))
}

// Sub is a-b.
func (a Num) Sub(b Num) Num { return a.Add(b.Neg()) }

// Mul is a×b.
func (a Num) Mul(b Num) Num {
	an, ad, bn, bd := a.n, a.den(), b.n, b.den()
	if g := gcd(abs(an), bd); g > 1 {
		an, bd = an/g, bd/g
	}
	if g := gcd(abs(bn), ad); g > 1 {
		bn, ad = bn/g, ad/g
	}
	n, ok1 := mul(an, bn)
	d, ok2 := mul(ad, bd)
	if ok1 && ok2 {
		return reduce(n, d)
	}
	return fromBig(new(big.Rat).Mul(a.big(), b.big()))
}

// Div is a/b. It panics if b is 0.
func (a Num) Div(b Num) Num {
	if b.n == 0 {
		panic("units: division by zero")
	}
	inv := Num{b.den(), b.n}
	if inv.d < 0 {
		inv = Num{-inv.n, -inv.d}
	}
	return a.Mul(inv)
}

// Times is a×k.
func (a Num) Times(k int) Num { return a.Mul(Int(int64(k))) }

// Half is a/2.
func (a Num) Half() Num { return a.Mul(Num{1, 2}) }

// Neg is -a.
func (a Num) Neg() Num { return Num{-a.n, a.den()} }

// Abs is a without its sign.
func (a Num) Abs() Num { return Num{abs(a.n), a.den()} }

// Sign is -1, 0 or 1.
func (a Num) Sign() int {
	switch {
	case a.n < 0:
		return -1
	case a.n > 0:
		return 1
	}
	return 0
}

// Cmp is -1, 0 or 1 as a is less than, equal to or greater than b.
func (a Num) Cmp(b Num) int {
	if a.den() == b.den() {
		switch {
		case a.n < b.n:
			return -1
		case a.n > b.n:
			return 1
		}
		return 0
	}
	return a.Sub(b).Sign()
}

// Less reports whether a < b.
func (a Num) Less(b Num) bool { return a.Cmp(b) < 0 }

// Eq reports whether a and b are the same number.
func (a Num) Eq(b Num) bool { return a.n == b.n && a.den() == b.den() }

// Max is the greater of a and b.
func Max(a, b Num) Num {
	if a.Less(b) {
		return b
	}
	return a
}

// Min is the lesser of a and b.
func Min(a, b Num) Num {
	if b.Less(a) {
		return b
	}
	return a
}

// IsInt reports whether a is a whole number.
func (a Num) IsInt() bool { return a.den() == 1 }

// Floor is the greatest whole number not above a.
func (a Num) Floor() int64 {
	q := a.n / a.den()
	if a.n%a.den() != 0 && a.n < 0 {
		q--
	}
	return q
}

// Ceil is the least whole number not below a.
func (a Num) Ceil() int64 { return -a.Neg().Floor() }

// Round is the nearest whole number; a tie goes up.
func (a Num) Round() int64 { return a.Add(Num{1, 2}).Floor() }

// RoundTo is the nearest multiple of step; a tie goes up. A step of 0 or less
// leaves a as it is.
func (a Num) RoundTo(step Num) Num {
	if step.Sign() <= 0 {
		return a
	}
	return step.Mul(Int(a.Div(step).Round()))
}

// Float is the nearest float64.
func (a Num) Float() float64 { return float64(a.n) / float64(a.den()) }

// Parts are the numerator and the denominator, reduced, the denominator positive.
func (a Num) Parts() (n, d int64) { return a.n, a.den() }

// String is a as a decimal if it ends within three places, and as a fraction
// otherwise; it is for messages, not for measurements (see Format).
func (a Num) String() string {
	if a.IsInt() {
		return fmt.Sprint(a.n)
	}
	if t := a.Times(1000); t.IsInt() {
		return Decimal(a, 3)
	}
	return fmt.Sprintf("%d/%d", a.n, a.den())
}

// Decimal is a with at most places decimals, a tie up, without trailing zeros.
func Decimal(a Num, places int) string {
	scale := int64(1)
	for range places {
		scale *= 10
	}
	r := a.Times(int(scale)).Round()
	sign := ""
	if r < 0 {
		sign, r = "-", -r
	}
	s := fmt.Sprintf("%s%d", sign, r/scale)
	if frac := r % scale; frac != 0 {
		s += "." + strings.TrimRight(fmt.Sprintf("%0*d", places, frac), "0")
	}
	return s
}
