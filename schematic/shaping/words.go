package shaping

import (
	"fmt"
	"strings"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// Long is the length mm as the grading prints it: to a hundredth of a centimetre
// or a thousandth of an inch, without the unit.
func Long(mm units.Num, u units.Unit) string {
	places := 2
	if u == units.Inch {
		places = 3
	}
	return units.Decimal(units.In(mm, u), places)
}

// LongIn is long with its unit.
func LongIn(mm units.Num, u units.Unit) string { return Long(mm, u) + " " + u.String() }

// Signed is longIn with a sign, for what a rounding costs.
func Signed(mm units.Num, u units.Unit) string {
	switch mm.Sign() {
	case 1:
		return "+" + LongIn(mm, u)
	case -1:
		return "−" + LongIn(mm.Abs(), u)
	}
	return "±0"
}

// CountedIn is a count with its word: 86 sts, 1 row, 4.
func CountedIn(n units.Num, d expr.Dim) string {
	t := units.Decimal(n, 2)
	one := n.Eq(units.Int(1))
	switch {
	case d == expr.Stitches && one:
		return t + " st"
	case d == expr.Stitches:
		return t + " sts"
	case d == expr.Rows && one:
		return t + " row"
	case d == expr.Rows:
		return t + " rows"
	}
	return t
}

// SpreadWords is the arithmetic of n shapings spread over rows by Spread, and the plan that comes of it.
func SpreadWords(n, rows, step int, p Plan) string {
	if n == 0 {
		return fmt.Sprintf("none, %s even", CountedIn(units.Int(int64(rows)), expr.Rows))
	}
	slots := rows / step
	short, more := slots/n, slots%n
	var s strings.Builder
	if step == 2 {
		fmt.Fprintf(&s, "%d rows have %d of one side; ", rows, slots)
	}
	fmt.Fprintf(&s, "%d / %d = %d", slots, n, short)
	if more > 0 {
		fmt.Fprintf(&s, " and %d over", more)
	}
	fmt.Fprintf(&s, ": %s", p)
	if p.Rest > 0 {
		fmt.Fprintf(&s, ", then %s even", CountedIn(units.Int(int64(p.Rest)), expr.Rows))
	}
	return s.String()
}
