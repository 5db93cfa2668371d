package xlsx

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/layout/table"
	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/grade"
	"flatwright/schematic/units"
)

// following is how the lengths of the first sheet follow the numbers of the second; nil for a pattern that is not graded.
type following struct {
	l   *sheetLines
	was map[string][]grade.Follow
	fit map[string]string // bodies of the table by ID, as the second sheet calls them
}

// following finds how the lengths follow.
func (l *sheetLines) following() *following {
	if len(l.p.Grading) == 0 {
		return nil
	}
	searched := map[string]bool{}
	for _, v := range l.p.Graded {
		if l.p.Grading[v.Of].Kind == schematic.GradeCap {
			searched[expr.Key(v.Name)] = isSearched(v.Name)
		}
	}
	f := &following{l: l, fit: map[string]string{}, was: grade.Follows(l.p, worked, func(name string) bool { return searched[name] })}
	if f.was == nil {
		return nil
	}
	for i, r := range toFit(l.p) {
		f.fit[r.ID] = l.p.Bodies[i].Name
	}
	return f
}

// toFit are the rows of the bodies, in the order of the pattern.
func toFit(p *schematic.Pattern) []table.Row {
	for _, g := range table.Of(bysize.WorkAll(p)).Groups {
		if g.Name == table.ToFit {
			return g.Rows
		}
	}
	return nil
}

// worked is the table of a pattern's garments as lengths. Findings of a count that is stated do not count: it differs when one value is moved by itself.
func worked(p *schematic.Pattern) grade.Worked {
	gs := bysize.WorkAll(p)
	out := grade.Worked{Lengths: grade.Lengths{}}
	for _, g := range gs {
		stated := slices.DeleteFunc(slices.Clone(g.Findings), func(f finding.Finding) bool { return f.Kind == "arithmetic/count" })
		out.Found = append(out.Found, len(stated))
	}
	for _, g := range table.Of(gs).Groups {
		if g.Name != table.ToFit {
			for _, r := range g.Rows {
				take(out.Lengths, r)
			}
		}
	}
	return out
}

func take(all grade.Lengths, r table.Row) {
	l := expr.Graded{Vals: make([]units.Num, len(r.Cells)), Has: make([]bool, len(r.Cells))}
	for i, c := range r.Cells {
		l.Vals[i], l.Has[i] = c.Low, c.Has && c.Low.Eq(c.High)
	}
	for _, id := range append([]string{r.ID}, r.Also...) {
		all[id] = l
	}
}

// formula is that of a row in one size; empty if it is a number. A range of bodies follows at its upper end alone, which the grading calls.
func (f *following) formula(r table.Row, size int, upper bool) string {
	if f == nil || !r.Cells[size].Has {
		return ""
	}
	if name, body := f.fit[r.ID]; body {
		if !upper {
			return ""
		}
		return f.ref(name, size)
	}
	if size >= len(f.was[r.ID]) || !upper {
		return ""
	}
	follow := f.was[r.ID][size]
	if len(follow.Terms) == 0 && len(follow.While) == 0 {
		return ""
	}
	sum := f.sum(follow, size)
	if len(follow.While) == 0 {
		return sum
	}
	var as []string
	for _, in := range follow.While {
		as = append(as, f.asItWas(in, size))
	}
	return fmt.Sprintf("IF(AND(%s),%s,%q)", strings.Join(as, ","), sum, anew)
}

func (f *following) ref(name string, size int) string {
	return Grading + "!" + f.l.ref(name, first+size)
}

// gauge is the cell of the stitches, of the rows, or of the length of a gauge.
func (f *following) gauge(name string, k int) string {
	return Grading + "!" + at(first, f.l.gauge[name][k])
}

// sum is the terms in the unit of the sheet, those of one gauge together.
func (f *following) sum(follow grade.Follow, size int) string {
	type cloth struct {
		gauge string
		rows  bool
	}
	var order []cloth
	counts := map[cloth][]string{}
	for _, t := range follow.Terms {
		c := cloth{t.Gauge, t.Rows}
		if counts[c] == nil {
			order = append(order, c)
		}
		counts[c] = append(counts[c], f.times(t, size))
	}
	var sums []string
	for _, c := range order {
		per := 0
		if c.rows {
			per = 1
		}
		sums = append(sums, fmt.Sprintf("(%s)*%s/%s", strings.TrimPrefix(strings.Join(counts[c], ""), "+"), f.gauge(c.gauge, 2), f.gauge(c.gauge, per)))
	}
	if follow.Rest.Sign() != 0 || len(sums) == 0 {
		sums = append(sums, literal(units.In(follow.Rest, f.l.p.Units)))
	}
	return strings.Join(sums, "+")
}

// times is a term with its sign.
func (f *following) times(t grade.Term, size int) string {
	sign, of := "+", []string{literal(t.By.Abs())}
	if t.By.Sign() < 0 {
		sign = "-"
	}
	for _, name := range t.Of {
		of = append(of, f.ref(name, size))
	}
	if len(of) > 1 && of[0] == "1" {
		of = of[1:]
	}
	return sign + strings.Join(of, "*")
}

// asItWas says that an input has the value with which the sheet was written.
func (f *following) asItWas(in grade.Input, size int) string {
	if in.Gauge != "" {
		g, k := f.l.p.GaugeNamed(in.Gauge), 0
		n := g.Stitches
		if in.Rows {
			k, n = 1, g.Rows
		}
		return fmt.Sprintf("ROUND(%s/%s-%s,9)=0", f.gauge(in.Gauge, k), f.gauge(in.Gauge, 2), literal(n.Div(units.In(g.Over, f.l.p.Units))))
	}
	if in.Positive {
		return f.ref(in.Name, size) + ">0"
	}
	return fmt.Sprintf("ROUND(%s-%s,6)=0", f.ref(in.Name, size), f.l.was(in.Name, size))
}

// was is the value of a row as it was written.
func (l *sheetLines) was(name string, size int) string {
	v := l.values[expr.Key(name)]
	n, has := v.Vals.At(size)
	if !has {
		return "0"
	}
	if v.Dim == expr.LengthOf {
		n = units.In(n, l.p.Units)
	}
	return literal(n)
}

// isSearched reports whether a name of a cap is of a number that was found by trying.
func isSearched(name string) bool {
	return slices.ContainsFunc([]string{" every", " times", " step"}, func(tail string) bool { return strings.HasSuffix(name, tail) })
}
