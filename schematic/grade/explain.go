package grade

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"
)

// Working is the arithmetic of one line of the grading in one size, a step a line.
type Working struct {
	Name, How string // as in TablePart
	Lines     []string
}

// Explain is the arithmetic of the grading of p in one size: the sums with the numbers in
// place of the names, how each count was rounded and what each choice would
// have cost, and how shapings, armholes, caps, raglans and yokes come about. Then, under a name
// of its own, the sums in the pieces. A line that the size has no value of is left out.
func Explain(p *schematic.Pattern, size int) []Working {
	if size < 0 || size >= p.Sizes.Len() {
		return nil
	}
	r := &resolver{p: p, values: map[string]schematic.GradedValue{}, line: map[string]int{}, told: told{on: true, size: size, lines: map[int][]string{}}}
	r.bodies()
	r.names()
	for _, i := range r.order() {
		r.work(i)
	}
	var out []Working
	for i := range p.Grading {
		if lines := r.told.lines[i]; len(lines) > 0 {
			out = append(out, Working{Name: p.Grading[i].Name, How: howOf(&p.Grading[i]), Lines: lines})
		}
	}
	if lines := calledSums(p, size); len(lines) > 0 {
		out = append(out, Working{Name: "sums in the pieces", Lines: lines})
	}
	return out
}

// told gathers the arithmetic of one size while the grading is worked out.
type told struct {
	on    bool
	size  int
	lines map[int][]string // by line of the grading
}

func (in *inputs) telling() bool { return in.r.told.on && in.r.size == in.r.told.size }

func (in *inputs) tell(lines ...string) {
	if in.telling() {
		in.r.told.lines[in.i] = append(in.r.told.lines[in.i], lines...)
	}
}

// tellSums tells the sums that the line is worked out of, those that call something.
func (in *inputs) tellSums() {
	if !in.telling() {
		return
	}
	if in.g.Given != nil {
		if v, ok := in.g.Given.Vals.At(in.r.size); ok {
			in.tell(valueText(expr.Value{N: v, Dim: in.g.Given.Dim}, in.r.p.Units))
		}
	}
	own := in.g.Kind.String()
	in.tellSum("", in.g.Sum)
	for _, w := range wanted[in.g.Kind] {
		if w.key != own {
			in.tellSum(w.key+": ", in.g.With[w.key])
		}
	}
}

func (in *inputs) tellSum(head string, s schematic.GradedSum) {
	if s.Sum == nil {
		return
	}
	text, ok := worked(s.Sum, in.r.env, in.r.p.Units)
	if ok && (len(s.Sum.Names()) > 0 || in.g.Kind == schematic.GradeValue) {
		in.tell(head + text)
	}
}

// worked is a sum, the same sum with numbers, and what it comes to: (bust + ease) / 2 = (34 in + 4 in) / 2 = 19 in.
// It is false for a sum that the size has no value of.
func worked(s *expr.Sum, env expr.Env, u units.Unit) (string, bool) {
	v, bad := s.Eval(env)
	if bad != nil || !v.Has {
		return "", false
	}
	result := valueText(v, u)
	text := strings.TrimSpace(s.Text)
	if len(s.Names()) == 0 {
		if s.Root.Op == expr.Number {
			return result, true
		}
		return text + " = " + result, true
	}
	if s.Root.Op == expr.Name {
		return text + " = " + result, true
	}
	return text + " = " + withNumbers(s, env, u) + " = " + result, true
}

// withNumbers is the sum as authored, with a number in the place of each name.
func withNumbers(s *expr.Sum, env expr.Env, u units.Unit) string {
	type place struct {
		at   expr.Span
		text string
	}
	var places []place
	var walk func(n *expr.Node)
	walk = func(n *expr.Node) {
		if n == nil {
			return
		}
		if v, ok := env(n.Name); n.Op == expr.Name && ok {
			places = append(places, place{n.Span, valueText(v, u)})
		}
		walk(n.Left)
		walk(n.Right)
	}
	walk(s.Root)
	slices.SortFunc(places, func(a, b place) int { return a.at.Start - b.at.Start })
	t := []rune(s.Text)
	var b strings.Builder
	done := 0
	for _, p := range places {
		if p.at.Start < done || p.at.End > len(t) {
			continue
		}
		b.WriteString(string(t[done:p.at.Start]))
		b.WriteString(p.text)
		done = p.at.End
	}
	b.WriteString(string(t[done:]))
	return strings.TrimSpace(b.String())
}

func valueText(v expr.Value, u units.Unit) string {
	if v.Dim == expr.LengthOf {
		return shaping.LongIn(v.N, u)
	}
	return shaping.CountedIn(v.N, v.Dim)
}

// countWords tells how a length became a whole count: the exact one, the counts beside it that the
// rule allows with what each makes, and which was taken and why.
func countWords(c shaping.Counted, rule shaping.Rule, dim expr.Dim, g schematic.Gauge, length bool, u units.Unit) []string {
	per := g.Stitches
	if dim == expr.Rows {
		per = g.Rows
	}
	var out []string
	exact := shaping.CountedIn(c.Exact, dim)
	if length {
		out = append(out, fmt.Sprintf("%s at %s over %s %s: %s", shaping.LongIn(c.Target, u), shaping.CountedIn(per, dim), units.Decimal(units.In(g.Over, g.OverUnit), 2), g.OverUnit, exact))
	}
	want := rule
	want.Round = shaping.Nearest
	of := want.String()
	if of != "" {
		of += ": "
	}
	if c.Exact.Eq(units.Int(int64(c.Count))) {
		return append(out, fmt.Sprintf("%s%s, nothing to round", of, exact))
	}
	makes := func(n int) string {
		long := c.Each.Times(n)
		return fmt.Sprintf("%s make %s (%s)", shaping.CountedIn(units.Int(int64(n)), dim), shaping.LongIn(long, u), shaping.Signed(long.Sub(c.Target), u))
	}
	low, high := c.Count, c.Count+c.Step
	if c.Exact.Less(units.Int(int64(c.Count))) {
		low, high = c.Count-c.Step, c.Count
	}
	why := ""
	below, above := c.Exact.Sub(units.Int(int64(low))), units.Int(int64(high)).Sub(c.Exact)
	switch {
	case low < max(rule.Least, 0) || below.Sign() < 0 || above.Sign() < 0:
		return append(out, fmt.Sprintf("%s%s, the least that there may be", of, makes(c.Count)))
	case rule.Round == shaping.AtLeast:
		why = "not less than wished"
	case rule.Round == shaping.AtMost:
		why = "not more than wished"
	case below.Eq(above):
		why = "as near as the other, and a tie goes up"
	default:
		why = "the nearest"
	}
	return append(out, fmt.Sprintf("%s%s, %s", of, makes(low), makes(high)), fmt.Sprintf("taken: %s, %s", shaping.CountedIn(units.Int(int64(c.Count)), dim), why))
}

// calledSums are the sums that stand in the pieces, by their lines in the file.
func calledSums(p *schematic.Pattern, size int) []string {
	env := Env(p, size)
	calls := slices.Clone(p.Calls)
	slices.SortStableFunc(calls, func(a, b schematic.Call) int {
		if a.Pos.Line != b.Pos.Line {
			return a.Pos.Line - b.Pos.Line
		}
		return a.Pos.Col - b.Pos.Col
	})
	var out []string
	for _, c := range calls {
		if c.Sum.Root.Op == expr.Name {
			continue
		}
		if text, ok := worked(c.Sum, env, p.Units); ok {
			out = append(out, fmt.Sprintf("line %d: %s", c.Pos.Line, text))
		}
	}
	return out
}
