package print

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"flatwright/schematic/expr"
)

// none stands for the number of a size that has none.
const none = -1

// nums is one number a size that is printed.
type nums []int

// each is f for every size that has the piece.
func (w *printer) each(f func(i int) int) nums {
	out := make(nums, len(w.gs))
	for i := range out {
		if out[i] = none; w.made[i] != nil {
			out[i] = f(i)
		}
	}
	return out
}

// same is one number for all sizes that have the piece.
func (w *printer) same(n int) nums { return w.each(func(int) int { return n }) }

// at is a graded value of the sizes that are printed.
func (w *printer) at(g expr.Graded) nums {
	return w.each(func(i int) int { return g.Int(w.size(i), none) })
}

// size is the pattern's size of the i-th that is printed.
func (w *printer) size(i int) int {
	if w.o.Size >= 0 {
		return w.o.Size
	}
	return i
}

// clean has 0 where a size that has the piece lacks the number.
func (w *printer) clean(v nums) nums {
	return w.each(func(i int) int { return max(v[i], 0) })
}

// line is the numbers in the trade's line, with a dash for a size that has none.
func (w *printer) line(v nums) string {
	t := make([]string, len(v))
	for i, n := range v {
		if t[i] = fmt.Sprint(n); n < 0 {
			t[i] = "–"
		}
	}
	if w.o.Size >= 0 || len(t) == 1 {
		return t[0]
	}
	return w.p.Sizes.Line(t)
}

// some is a line of how much there is of something, with a dash for the sizes that have
// none of it, if others have.
func (w *printer) some(v nums) string {
	if !v.above(0) {
		return w.line(v)
	}
	out := slices.Clone(v)
	for i, n := range v {
		if n == 0 {
			out[i] = none
		}
	}
	return w.line(out)
}

// like is as many numbers, none of them known.
func (v nums) like() nums {
	out := make(nums, len(v))
	for i := range out {
		out[i] = none
	}
	return out
}

// with is f of both numbers of every size that has both.
func (v nums) with(u nums, f func(a, b int) int) nums {
	out := v.like()
	for i := range v {
		if v[i] >= 0 && u[i] >= 0 {
			out[i] = f(v[i], u[i])
		}
	}
	return out
}

func (v nums) minus(u nums) nums { return v.with(u, func(a, b int) int { return a - b }) }

// more is how many more there are, 0 where there are fewer.
func (v nums) more(u nums) nums { return v.with(u, func(a, b int) int { return max(a-b, 0) }) }

func (v nums) empty() bool { return !slices.ContainsFunc(v, func(n int) bool { return n >= 0 }) }

// above reports whether a size has more than k.
func (v nums) above(k int) bool { return slices.ContainsFunc(v, func(n int) bool { return n > k }) }

// least reports whether every size that is there has at least k.
func (v nums) least(k int) bool {
	return !slices.ContainsFunc(v, func(n int) bool { return n >= 0 && n < k })
}

// all is the number that all sizes have that have one; false if they differ, or none has.
func (v nums) all() (int, bool) {
	first := none
	for _, n := range v {
		switch {
		case n < 0:
		case first < 0:
			first = n
		case n != first:
			return 0, false
		}
	}
	return first, first >= 0
}

// word is a noun after numbers: one of it where no size has more.
func word(one string, v nums) string {
	if v.above(1) || !v.above(0) {
		return one + "s"
	}
	return one
}

func plain(s string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(s, "#", " ")), " ")
}

// letters is a name's letters and digits alone.
func letters(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }), " ")
}

// name is a name without what would end a clause.
func name(s string) string {
	s = strings.Map(func(r rune) rune {
		if strings.ContainsRune(".,;:()[]{}*0123456789", r) {
			return ' '
		}
		return r
	}, plain(s))
	return strings.Join(strings.Fields(s), " ")
}

// list is words as a person lists them: a, b and c.
func list(all []string) string {
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	return strings.Join(all[:len(all)-1], ", ") + " and " + all[len(all)-1]
}
