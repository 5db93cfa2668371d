package units

import (
	"fmt"
	"strings"
)

// Unit is a unit of length in which a pattern is written or printed.
type Unit int

// The units that a pattern may be written in.
const (
	CM Unit = iota
	Inch
	MM
)

// MM is the number of millimetres in one of u. 1 in is 25.4 mm exactly
// (international yard and pound agreement, 1959; NIST SP 811).
func (u Unit) MM() Num {
	switch u {
	case Inch:
		return Num{127, 5}
	case MM:
		return Num{1, 1}
	}
	return Num{10, 1}
}

// String is the unit's symbol: cm, in or mm.
func (u Unit) String() string {
	switch u {
	case Inch:
		return "in"
	case MM:
		return "mm"
	}
	return "cm"
}

// ParseUnit reads a unit's symbol or name, or says that it is none.
func ParseUnit(s string) (Unit, bool) {
	switch strings.ToLower(strings.TrimSuffix(strings.TrimSpace(s), ".")) {
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return CM, true
	case "in", "inch", "inches", "″", `"`, "ins":
		return Inch, true
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return MM, true
	}
	return CM, false
}

// Of is the length of n units u, in mm.
func Of(n Num, u Unit) Num { return n.Mul(u.MM()) }

// In is the length l (mm) counted in u.
func In(l Num, u Unit) Num { return l.Div(u.MM()) }

// Steps are the printed steps of a measurement: centimetres to CM, inches to
// Inch, each in its own unit.
type Steps struct{ CM, Inch Num }

// Usual is the trade's common practice: the nearest half centimetre and the
// nearest quarter inch.
var Usual = Steps{CM: Num{1, 2}, Inch: Num{1, 4}}

// Step is the printed step of u, in u. Millimetres are whole.
func (s Steps) Step(u Unit) Num {
	switch u {
	case Inch:
		return s.Inch
	case CM:
		return s.CM
	}
	return Int(1)
}

// Format prints the length l (mm) in u without the unit: 39.5, or 15½. It is
// rounded from the exact length to the step, a tie up.
func (s Steps) Format(l Num, u Unit) string {
	v := In(l, u).RoundTo(s.Step(u))
	if u == Inch {
		return Mixed(v)
	}
	return Decimal(v, 3)
}

// With prints the length with its unit: 39.5 cm, 15½ in.
func (s Steps) With(l Num, u Unit) string { return s.Format(l, u) + " " + u.String() }

// AndOther are both units, u first.
func (u Unit) AndOther() []Unit {
	if u == Inch {
		return []Unit{Inch, CM}
	}
	return []Unit{CM, Inch}
}

// Both prints the length in centimetres and inches, in u first, each rounded from the
// exact length: 39.5 cm / 15½ in.
func (s Steps) Both(l Num, u Unit) string {
	both := u.AndOther()
	return s.With(l, both[0]) + " / " + s.With(l, both[1])
}

var vulgar = map[Num]string{
	{1, 2}: "½", {1, 4}: "¼", {3, 4}: "¾", {1, 8}: "⅛", {3, 8}: "⅜", {5, 8}: "⅝", {7, 8}: "⅞",
}

// Mixed prints a number with a real fraction: 15½. Fractions without a
// character of their own are printed as 15 2/3, and tenths, which no ruler in inches has, as 27.2.
func Mixed(v Num) string {
	if v.IsInt() {
		return fmt.Sprint(v.n)
	}
	if t := v.Times(1000); v.den()%5 == 0 && t.IsInt() {
		return Decimal(v, 3)
	}
	sign := ""
	if v.Sign() < 0 {
		sign, v = "-", v.Neg()
	}
	whole := v.Floor()
	f := v.Sub(Int(whole))
	text, ok := vulgar[f]
	if !ok {
		text = fmt.Sprintf("%d/%d", f.n, f.den())
		if whole != 0 {
			text = " " + text
		}
	}
	if whole == 0 {
		return sign + text
	}
	return fmt.Sprintf("%s%d%s", sign, whole, text)
}

// ParseNum reads a number as people type it: 14, 14.5, 15½, 15 1/2, 1/4, -2.
// It refuses exponents, more than nine digits before or six after the point,
// and anything that is not a number.
func ParseNum(text string) (Num, bool) {
	t := strings.TrimSpace(text)
	neg := false
	for _, m := range []string{"-", "−"} {
		if rest, ok := strings.CutPrefix(t, m); ok {
			neg, t = true, strings.TrimSpace(rest)
			break
		}
	}
	t = strings.TrimSpace(strings.Replace(t, "⁄", "/", 1))
	v, ok := parsePositive(t)
	if ok && neg {
		v = v.Neg()
	}
	return v, ok
}

func parsePositive(t string) (Num, bool) {
	for f, c := range vulgar {
		if rest, ok := strings.CutSuffix(t, c); ok {
			w, ok := digits(strings.TrimSpace(rest), mostWhole)
			return Int(w).Add(f), ok || strings.TrimSpace(rest) == ""
		}
	}
	if a, b, ok := strings.Cut(t, "/"); ok {
		return parseFraction(strings.TrimSpace(a), strings.TrimSpace(b))
	}
	return parseDecimal(t)
}

// How many figures a number may have before the point, and behind it or below a stroke.
const (
	mostWhole = 9
	mostPart  = 6
)

// parseFraction reads what stands above the stroke, with a whole number before it or not, and what stands below.
func parseFraction(above, below string) (Num, bool) {
	whole, ok := int64(0), true
	if i := strings.LastIndexByte(above, ' '); i >= 0 {
		whole, ok = digits(strings.TrimSpace(above[:i]), mostWhole)
		above = above[i+1:]
	}
	n, ok1 := digits(above, mostWhole)
	d, ok2 := digits(below, mostPart)
	if !ok || !ok1 || !ok2 || d == 0 {
		return Num{}, false
	}
	return Int(whole).Add(Frac(n, d)), true
}

func parseDecimal(t string) (Num, bool) {
	a, b, point := strings.Cut(t, ".")
	if a == "" && point {
		a = "0"
	}
	w, ok := digits(a, mostWhole)
	if !ok || !point {
		return Int(w), ok
	}
	f, ok := digits(b, mostPart)
	if !ok {
		return Num{}, false
	}
	scale := int64(1)
	for range len(b) {
		scale *= 10
	}
	return Int(w).Add(Frac(f, scale)), true
}

func digits(s string, most int) (int64, bool) {
	if s == "" || len(s) > most {
		return 0, false
	}
	var v int64
	for _, r := range s {
		if r < '0' || r > '9' {
			return 0, false
		}
		v = v*10 + int64(r-'0')
	}
	return v, true
}
