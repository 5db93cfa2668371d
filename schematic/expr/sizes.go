// Package expr holds values that depend on size, the trade's way of writing
// them in one line, and sums with the names of measurements. It does not know
// what the values mean.
package expr

import (
	"fmt"
	"strings"

	"flatwright/schematic/units"
)

// Sizes are the sizes of a pattern in order, smallest first, with the brackets
// in which the trade's line groups them: XS (S, M, L) (1X, 2X) has the groups
// 1, 3, 2. Every line of the pattern is bracketed alike.
type Sizes struct {
	Names  []string
	Groups []int
}

// Len is the number of sizes.
func (s Sizes) Len() int { return len(s.Names) }

// Index is the place of the size called name, or -1. Case does not matter.
func (s Sizes) Index(name string) int {
	for i, n := range s.Names {
		if strings.EqualFold(n, strings.TrimSpace(name)) {
			return i
		}
	}
	return -1
}

// Line writes one text a size in the trade's line. Equal texts for all sizes
// become one: a number alone is for all sizes.
func (s Sizes) Line(texts []string) string {
	same := true
	for _, t := range texts {
		same = same && t == texts[0]
	}
	if len(texts) > 0 && same {
		return texts[0]
	}
	return s.Full(texts)
}

// Full writes one text a size in the trade's line, even if all are equal.
func (s Sizes) Full(texts []string) string {
	var b strings.Builder
	i := 0
	for g, n := range s.Groups {
		part := strings.Join(texts[i:min(i+n, len(texts))], ", ")
		switch {
		case g == 0 && n == 1:
			b.WriteString(part)
		case g == 0:
			fmt.Fprintf(&b, "(%s)", part)
		default:
			fmt.Fprintf(&b, " (%s)", part)
		}
		i += n
	}
	return b.String()
}

// Dash stands where a size has none.
const Dash = "–"

// Graded is a number for each size, in the order of the sizes. Has[i] is false
// where size i has none (a dash in the trade's line). The unit is the user's
// affair: counts are whole, lengths are in mm.
type Graded struct {
	Vals []units.Num
	Has  []bool
	From *Sum // the sum of names that gave it, if one did

	Unwritten bool // no number of the file: what is meant where it says nothing
}

// Const is n for every one of size sizes.
func Const(n units.Num, sizes int) Graded {
	g := Graded{Vals: make([]units.Num, sizes), Has: make([]bool, sizes)}
	for i := range sizes {
		g.Vals[i], g.Has[i] = n, true
	}
	return g
}

// Of is one number a size, all present.
func Of(vals ...units.Num) Graded {
	g := Graded{Vals: vals, Has: make([]bool, len(vals))}
	for i := range g.Has {
		g.Has[i] = true
	}
	return g
}

// Counts is one whole number a size, all present.
func Counts(vals ...int) Graded {
	nums := make([]units.Num, len(vals))
	for i, v := range vals {
		nums[i] = units.Int(int64(v))
	}
	return Of(nums...)
}

// IsZero reports whether g was never given.
func (g Graded) IsZero() bool { return len(g.Vals) == 0 }

// At is the number of size i, and whether that size has one. A Graded that was
// never given has none.
func (g Graded) At(i int) (units.Num, bool) {
	if i < 0 || i >= len(g.Vals) || !g.Has[i] {
		return units.Num{}, false
	}
	return g.Vals[i], true
}

// Int is the whole number of size i, or otherwise where the size has none.
func (g Graded) Int(i, otherwise int) int {
	v, ok := g.At(i)
	if !ok {
		return otherwise
	}
	return int(v.Floor())
}
