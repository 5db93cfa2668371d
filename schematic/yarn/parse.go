package yarn

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// ounce is the grams in an ounce, avoirdupois: 28.349523125 g exactly (international yard and
// pound agreement, 1959; NIST SP 811).
var ounce = units.Frac(28349523, 1_000_000).Add(units.Frac(1, 8_000_000))

// yard is 0.9144 m exactly (the same agreement), in mm.
var yard = units.Frac(9144, 10)

// quantity is a number of a phrase and the word behind it.
type quantity struct {
	n    units.Num
	word string
	span expr.Span
}

// quantities reads a phrase as numbers, each with the word behind it.
func quantities(text string) []quantity {
	t := []rune(text)
	past := func(i int, of func(rune) bool) int { // what is of a kind
		for i < len(t) && of(t[i]) {
			i++
		}
		return i
	}
	in := func(set string) func(rune) bool {
		return func(r rune) bool { return strings.ContainsRune(set, r) }
	}
	var out []quantity
	for i := 0; i < len(t); {
		if !strings.ContainsRune("0123456789.½¼¾", t[i]) {
			i++
			continue
		}
		j := past(i, in("0123456789."))
		if j < len(t) && strings.ContainsRune("½¼¾", t[j]) {
			j++
		}
		n, ok := units.ParseNum(strings.TrimSuffix(string(t[i:j]), "."))
		k := past(j, in(" "))
		w := past(k, func(r rune) bool { return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r == '%' || r == '×' })
		if ok {
			out = append(out, quantity{n, strings.ToLower(string(t[k:w])), expr.Span{Start: i, End: j}})
		}
		i = max(j, i+1)
	}
	return out
}

func grams(q quantity) (units.Num, bool) {
	switch q.word {
	case "g", "gr", "gm", "gms", "gram", "grams", "gramme", "grammes":
		return q.n, true
	case "oz", "ounce", "ounces":
		return q.n.Mul(ounce), true
	}
	return units.Num{}, false
}

func runLength(q quantity) (units.Num, bool) {
	switch q.word {
	case "m", "metre", "metres", "meter", "meters":
		return q.n.Times(1000), true
	case "yd", "yds", "yard", "yards":
		return q.n.Mul(yard), true
	}
	return units.Num{}, false
}

func problem(text, message, want string) *expr.Problem {
	return &expr.Problem{Kind: "file/form", Span: expr.Span{Start: 0, End: len([]rune(text))}, Message: message, Want: want}
}

// ParseSwatch reads 12 g over 15 x 15 cm, 0.5 oz over 6 x 6 in or 12 g over 30
// sts and 40 rows.
func ParseSwatch(text string) (schematic.Swatch, *expr.Problem) {
	const form = "a weight and what weighs it: 12 g over 15 x 15 cm, or 12 g over 30 sts and 40 rows"
	q := quantities(text)
	var s schematic.Swatch
	if len(q) != 3 {
		return s, problem(text, "this is not the weight of a swatch", form)
	}
	w, ok := grams(q[0])
	if !ok || w.Sign() <= 0 {
		return s, problem(text, "a swatch has a weight in g or oz", form)
	}
	s.Grams = w
	if in(q[1].word, "st", "sts", "stitches") && in(q[2].word, "row", "rows", "rounds", "rnds") {
		s.Stitches, s.Rows = q[1].n, q[2].n
		if s.Stitches.Sign() <= 0 || s.Rows.Sign() <= 0 {
			return s, problem(text, "a swatch has stitches and rows", form)
		}
		return s, nil
	}
	u, ok := expr.ParseUnit(q[2].word)
	if !ok {
		return s, problem(text, "a swatch is measured in cm or in, or counted in sts and rows", form)
	}
	v := u
	if q[1].word != "x" && q[1].word != "×" && q[1].word != "by" && q[1].word != "" {
		if v, ok = expr.ParseUnit(q[1].word); !ok {
			return s, problem(text, fmt.Sprintf("%q is not a unit of length", q[1].word), form)
		}
	}
	s.Width, s.Height = units.Of(q[1].n, v), units.Of(q[2].n, u)
	if s.Width.Sign() <= 0 || s.Height.Sign() <= 0 || mostSwatch.Less(s.Width) || mostSwatch.Less(s.Height) {
		return s, problem(text, "a swatch is larger than nothing and smaller than two metres", form)
	}
	return s, nil
}

var mostSwatch = units.Int(2000) // mm

func in(s string, words ...string) bool {
	return slices.Contains(words, s)
}

// ParseBall reads what is sold: 50 g, 120 m; 100 g / 220 yd; 50 g alone.
func ParseBall(text string) (schematic.Ball, *expr.Problem) {
	b, ok := FindBall(text)
	if !ok {
		return b, problem(text, "this is not a ball of yarn", "its weight and its length: 50 g, 120 m, or 100 g / 220 yd")
	}
	return b, nil
}

// FindBall finds the weight and length of a ball in a line of materials; of two
// lengths (metres and yards of the same ball) the first one counts.
func FindBall(text string) (b schematic.Ball, ok bool) {
	for _, q := range quantities(text) {
		if w, is := grams(q); is && b.Grams.Sign() == 0 && w.Sign() > 0 {
			b.Grams = w
		}
		if l, is := runLength(q); is && b.Length.Sign() == 0 && l.Sign() > 0 {
			b.Length = l
		}
	}
	return b, b.Grams.Sign() > 0 || b.Length.Sign() > 0
}

// ParseWeight reads a weight: 412 g, 14.5 oz.
func ParseWeight(text string) (units.Num, *expr.Problem) {
	q := quantities(text)
	if len(q) == 1 {
		if w, ok := grams(q[0]); ok && w.Sign() > 0 {
			return w, nil
		}
	}
	return units.Num{}, problem(text, "this is not a weight", "a weight such as 412 g or 14.5 oz")
}

// ParseAllowance reads a share: 10 %, or 0.1.
func ParseAllowance(text string) (units.Num, *expr.Problem) {
	q := quantities(text)
	if len(q) == 1 && !strings.ContainsAny(text, "-−–") {
		v := q[0].n
		switch q[0].word {
		case "%", "percent", "per":
			v = v.Mul(units.Frac(1, 100))
		case "":
		default:
			v = units.Int(-1)
		}
		if v.Sign() >= 0 && v.Cmp(units.Int(2)) <= 0 {
			return v, nil
		}
	}
	return units.Num{}, problem(text, "this is not an allowance", "a share such as 10 %")
}
