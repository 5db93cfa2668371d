// Package shaping does the sums of shaping: a length into whole stitches or rows by a rule, shapings spread over rows, and the
// edges of armholes, sleeve caps, raglans and round yokes that fit, each with its arithmetic in words. It knows no pattern.
package shaping

import (
	"fmt"

	"flatwright/schematic/units"
)

// Parity is whether a count must be even or odd.
type Parity int

// The parities.
const (
	AnyParity Parity = iota
	Even
	Odd
)

// String is any, even or odd.
func (p Parity) String() string { return [...]string{"any", "even", "odd"}[p] }

// Like is the parity of n, for a partner that must have the same.
func Like(n int) Parity {
	if n%2 == 0 {
		return Even
	}
	return Odd
}

// Nearness is which way a count is rounded.
type Nearness int

// The ways of rounding: to the nearest count (a tie goes up), to the least that
// is not smaller, to the greatest that is not larger.
const (
	Nearest Nearness = iota
	AtLeast
	AtMost
)

// Rule is what a count must be beside near its target: a multiple of Multiple
// plus Plus (4 + 1), even or odd, and not less than Least. A Multiple of 0 is 1.
type Rule struct {
	Multiple, Plus int
	Parity         Parity
	Round          Nearness
	Least          int
}

// MaxCount bounds every count, so that no sum runs away.
const MaxCount = 100_000

// Step is the distance between two counts that the rule allows: the multiple,
// or twice the multiple where evenness binds. First is the least count, from 0,
// that the rule's multiple and parity allow; ok is false if there is none.
func (r Rule) Step() (step, first int, ok bool) {
	step = max(r.Multiple, 1)
	if r.Multiple < 0 || step > MaxCount || r.Plus < -MaxCount || r.Plus > MaxCount {
		return 0, 0, false
	}
	first = ((r.Plus % step) + step) % step
	if r.Parity == AnyParity {
		return step, first, true
	}
	want := int(r.Parity) - int(Even) // 0 even, 1 odd
	if step%2 == 0 {
		return step, first, first%2 == want
	}
	if first%2 != want {
		first += step
	}
	return 2 * step, first, true
}

// String is the rule in words: multiple of 4 + 1, even.
func (r Rule) String() string {
	s := ""
	add := func(t string) {
		if s != "" {
			s += ", "
		}
		s += t
	}
	if r.Multiple > 1 {
		switch {
		case r.Plus > 0:
			add(fmt.Sprintf("multiple of %d + %d", r.Multiple, r.Plus))
		case r.Plus < 0:
			add(fmt.Sprintf("multiple of %d − %d", r.Multiple, -r.Plus))
		default:
			add(fmt.Sprintf("multiple of %d", r.Multiple))
		}
	}
	if r.Parity != AnyParity {
		add(r.Parity.String())
	}
	switch r.Round {
	case AtLeast:
		add("not less")
	case AtMost:
		add("not more")
	}
	return s
}

// Counted is a measure turned into whole stitches or rows. Lengths are in mm.
type Counted struct {
	Target units.Num // as wished
	Each   units.Num // width of a stitch or height of a row
	Exact  units.Num // Target in stitches or rows, not rounded
	Count  int
	Makes  units.Num // what Count makes
	Cost   units.Num // Makes less Target: what the rounding cost
	Step   int       // distance between two counts that the rule allows
}

// Count turns the length target (mm) into whole stitches or rows of width or
// height each (mm) by the rule. A tie between two counts goes to the larger
// one. It fails if no count fulfils the rule.
func Count(target, each units.Num, r Rule) (Counted, error) {
	if each.Sign() <= 0 {
		return Counted{}, fmt.Errorf("a stitch or row must be larger than nothing, not %s mm", each)
	}
	exact := target.Div(each)
	n, step, err := Whole(exact, r)
	if err != nil {
		return Counted{}, err
	}
	makes := each.Times(n)
	return Counted{Target: target, Each: each, Exact: exact, Count: n, Makes: makes, Cost: makes.Sub(target), Step: step}, nil
}

// Whole is the count nearest to exact that the rule allows, and the distance to
// the next one.
func Whole(exact units.Num, r Rule) (n, step int, err error) {
	step, first, ok := r.Step()
	if !ok {
		return 0, 0, fmt.Errorf("no count can be %s", r)
	}
	if units.Int(MaxCount).Less(exact.Abs()) {
		return 0, 0, fmt.Errorf("a count of %s is more than the %d that fit", exact, MaxCount)
	}
	steps := exact.Sub(units.Int(int64(first))).Div(units.Int(int64(step)))
	var k int64
	switch r.Round {
	case AtLeast:
		k = steps.Ceil()
	case AtMost:
		k = steps.Floor()
	default:
		k = steps.Round()
	}
	n = first + int(k)*step
	if least := max(r.Least, 0); n < least {
		n += (least - n + step - 1) / step * step
	}
	return n, step, nil
}
