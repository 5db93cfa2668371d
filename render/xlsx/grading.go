package xlsx

import (
	"fmt"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/body"
	"flatwright/schematic/expr"
	"flatwright/schematic/grade"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"
)

// sheetLines knows in which row each name of the grading stands.
type sheetLines struct {
	b      *book
	p      *schematic.Pattern
	rows   map[string]int
	values map[string]schematic.GradedValue // as they are written
	gauge  map[string][3]int                // rows of stitches, rows and the length that they are counted over
	later  []func()                         // rows are given out first, then the formulas that call them are written
}

func (b *book) grading(p *schematic.Pattern) *sheetLines {
	l := &sheetLines{b: b, p: p, rows: map[string]int{}, values: map[string]schematic.GradedValue{}, gauge: map[string][3]int{}}
	b.next()
	b.text(1, p.Title, b.group)
	b.sizes("Grading", p.Sizes.Names)
	l.gauges()
	l.given()
	for i := range p.Grading {
		l.line(i)
	}
	for _, f := range l.later {
		f()
	}
	return l
}

// take begins a row for a name.
func (l *sheetLines) take(name, unit string) int {
	l.b.next()
	l.b.text(1, name, 0)
	l.b.text(2, unit, 0)
	l.rows[expr.Key(name)] = l.b.row
	return l.b.row
}

func (l *sheetLines) group(name string) {
	l.b.next()
	l.b.text(1, name, l.b.group)
}

func (l *sheetLines) gauges() {
	l.group("Gauges")
	for _, g := range l.p.Gauges {
		var rows [3]int
		for i, v := range []struct {
			name, unit string
			n          units.Num
		}{{"stitches", "sts", g.Stitches}, {"rows", "rows", g.Rows}, {"over", l.p.Units.String(), units.In(g.Over, l.p.Units)}} {
			l.b.next()
			l.b.text(1, fmt.Sprintf("gauge %s, %s", g.Name, v.name), 0)
			l.b.text(2, v.unit, 0)
			l.b.number(first, v.n.Float(), l.b.count)
			rows[i] = l.b.row
		}
		l.gauge[g.Name] = rows
	}
}

// given are the bodies and eases, as numbers.
func (l *sheetLines) given() {
	l.group("Bodies")
	called := l.called()
	for _, b := range l.p.Bodies {
		high := b.High
		if high.IsZero() {
			high = b.Low
		}
		l.numbers(b.Name, expr.LengthOf, high)
		if called["low "+expr.Key(b.Name)] {
			l.numbers("low "+b.Name, expr.LengthOf, b.Low)
		}
	}
	for _, f := range body.Fits() {
		for _, name := range []string{f.Name + " ease", "classic ease"} {
			if (name != "classic ease" || f.Name == "standard") && called[name] {
				l.numbers(name, expr.LengthOf, expr.Const(f.Middle(), l.p.Sizes.Len()))
			}
		}
	}
	if len(l.p.Grading) > 0 {
		l.group("Worked out")
	}
}

// called are the names that the grading calls and does not give itself.
func (l *sheetLines) called() map[string]bool {
	called := map[string]bool{}
	for i := range l.p.Grading {
		for _, s := range sumsOf(&l.p.Grading[i]) {
			for _, n := range s.Sum.Names() {
				called[expr.Key(n)] = true
			}
		}
	}
	for i := range l.p.Grading {
		delete(called, expr.Key(l.p.Grading[i].Name))
	}
	return called
}

func sumsOf(g *schematic.Grading) []schematic.GradedSum {
	var out []schematic.GradedSum
	if g.Sum.Sum != nil {
		out = append(out, g.Sum)
	}
	for _, s := range g.With {
		if s.Sum != nil {
			out = append(out, s)
		}
	}
	return out
}

func (l *sheetLines) unitOf(d expr.Dim) string {
	return [...]string{"", l.p.Units.String(), "sts", "rows"}[d]
}

func (l *sheetLines) float(v units.Num, d expr.Dim) float64 {
	if d == expr.LengthOf {
		v = units.In(v, l.p.Units)
	}
	return v.Float()
}

func (l *sheetLines) styleOf(d expr.Dim) int {
	if d == expr.LengthOf {
		return l.b.length
	}
	return l.b.count
}

func (l *sheetLines) numbers(name string, d expr.Dim, g expr.Graded) {
	l.take(name, l.unitOf(d))
	l.values[expr.Key(name)] = schematic.GradedValue{Name: name, Dim: d, Vals: g}
	for i := range g.Vals {
		if !g.Has[i] {
			l.b.text(first+i, expr.Dash, l.b.none)
			continue
		}
		l.b.number(first+i, l.float(g.Vals[i], d), l.styleOf(d))
	}
}

// formulas writes a row of formulas, one a size, when all rows are known.
func (l *sheetLines) formulas(name string, d expr.Dim, g expr.Graded, formula func(col int) string) {
	row := l.take(name, l.unitOf(d))
	l.values[expr.Key(name)] = schematic.GradedValue{Name: name, Dim: d, Vals: g}
	l.later = append(l.later, func() {
		l.b.row = row
		for i := range g.Vals {
			if !g.Has[i] {
				l.b.text(first+i, expr.Dash, l.b.none)
				continue
			}
			l.b.formula(first+i, formula(first+i), l.float(g.Vals[i], d), l.styleOf(d))
		}
	})
}

func (l *sheetLines) ref(name string, col int) string { return at(col, l.rows[expr.Key(name)]) }

func (l *sheetLines) line(i int) {
	g := &l.p.Grading[i]
	vals := map[string]schematic.GradedValue{}
	var order []schematic.GradedValue
	for _, v := range l.p.Graded {
		if v.Of == i {
			vals[v.Name] = v
			order = append(order, v)
		}
	}
	if len(order) == 0 {
		return
	}
	switch {
	case g.Kind == schematic.GradeValue && g.Given == nil:
		v := order[0]
		l.formulas(g.Name, v.Dim, v.Vals, func(col int) string { return l.sum(g.Sum.Sum.Root, col) })
	case g.Kind == schematic.GradeStitches || g.Kind == schematic.GradeRows:
		l.count(g, vals[g.Name], vals[g.Name+" makes"])
	case g.Kind == schematic.GradeSpread:
		l.spread(g, vals)
	case g.Kind == schematic.GradeArmhole:
		l.armhole(g, vals)
	case g.Kind == schematic.GradeCap:
		l.cap(g, vals)
	case g.Kind == schematic.GradeRaglan:
		l.raglan(g, vals)
	case g.Kind == schematic.GradeYoke:
		l.yoke(g, vals)
	default:
		for _, v := range order {
			l.numbers(v.Name, v.Dim, v.Vals)
		}
	}
}

// sum is a sum as a formula of a sheet. Every operation has brackets of its own.
func (l *sheetLines) sum(n *expr.Node, col int) string {
	switch n.Op {
	case expr.Number:
		v := n.N
		if n.Dim == expr.LengthOf {
			v = units.In(v, l.p.Units)
		}
		return literal(v)
	case expr.Name:
		return l.ref(n.Name, col)
	case expr.Negate:
		return "(-" + l.sum(n.Left, col) + ")"
	}
	sign := map[expr.Op]string{expr.Add: "+", expr.Subtract: "-", expr.Multiply: "*", expr.Divide: "/"}[n.Op]
	return "(" + l.sum(n.Left, col) + sign + l.sum(n.Right, col) + ")"
}

func literal(v units.Num) string {
	n, d := v.Parts()
	if d == 1 && n >= 0 {
		return fmt.Sprint(n)
	}
	return fmt.Sprintf("(%d/%d)", n, d)
}

// count writes a count as a sheet reckons it: target, count, what it makes, and the difference.
func (l *sheetLines) count(g *schematic.Grading, n, makes schematic.GradedValue) {
	rows := l.gauge[l.p.GaugeNamed(g.Gauge).Name]
	per := rows[0]
	if g.Kind == schematic.GradeRows {
		per = rows[1]
	}
	each := func(of string) string { // a count of stitches or rows as a length
		return fmt.Sprintf("%s*$%s/$%s", of, dollar(rows[2]), dollar(per))
	}
	target := expr.Graded{Vals: make([]units.Num, len(makes.Vals.Vals)), Has: makes.Vals.Has}
	for _, part := range grade.TableOf(l.p, nil).Parts {
		if part.Name != g.Name {
			continue
		}
		for _, r := range part.Rows {
			if r.Kind == grade.RowTarget {
				target.Vals = r.Vals.Vals
			}
		}
	}
	targetRow := g.Name + ", target"
	if g.Given != nil {
		l.numbers(targetRow, expr.LengthOf, target)
	} else {
		length := g.Sum.Sum
		l.formulas(targetRow, expr.LengthOf, target, func(col int) string {
			s := l.sum(length.Root, col)
			if l.dim(length) != expr.LengthOf {
				return each(s)
			}
			return s
		})
	}
	l.formulas(g.Name, n.Dim, n.Vals, func(col int) string {
		exact := fmt.Sprintf("%s*$%s/$%s", l.ref(targetRow, col), dollar(per), dollar(rows[2]))
		return l.rounded(g, exact, col)
	})
	l.formulas(g.Name+" makes", expr.LengthOf, makes.Vals, func(col int) string { return each(l.ref(g.Name, col)) })
	diff := expr.Graded{Vals: make([]units.Num, len(target.Vals)), Has: target.Has}
	for i := range diff.Vals {
		diff.Vals[i] = makes.Vals.Vals[i].Sub(target.Vals[i])
	}
	l.formulas(g.Name+", difference", expr.LengthOf, diff, func(col int) string {
		return l.ref(g.Name+" makes", col) + "-" + l.ref(targetRow, col)
	})
}

// dollar is the first size's cell of a row, its row fixed; the column gets its own sign.
func dollar(row int) string {
	name := at(first, row)
	at := slices.IndexFunc([]byte(name), func(c byte) bool { return c >= '0' && c <= '9' })
	return name[:at] + "$" + name[at:]
}

// dim is what a sum counts, by its first size that has a value.
func (l *sheetLines) dim(s *expr.Sum) expr.Dim {
	v, _ := s.Eval(grade.Env(l.p, 0))
	return v.Dim
}

// rounded is the count nearest to exact that the rule allows, as a formula. Numbers
// of a sheet carry fifteen digits: the ninth decimal is rounded away before a half is decided.
func (l *sheetLines) rounded(g *schematic.Grading, exact string, col int) string {
	rule := shaping.Rule{Multiple: g.Multiple, Plus: g.Plus}
	if g.Even {
		rule.Parity = shaping.Even
	}
	if g.Odd {
		rule.Parity = shaping.Odd
	}
	step, from, _ := rule.Step()
	start := fmt.Sprint(from)
	if g.Like != "" && step%2 == 1 {
		start = fmt.Sprintf("IF(MOD(%s,2)=%d,%d,%d)", l.ref(g.Like, col), from%2, from, from+step)
		step *= 2
	}
	steps := fmt.Sprintf("ROUND((%s-%s)/%d,9)", exact, start, step)
	k := fmt.Sprintf("INT(%s+0.5)", steps)
	switch {
	case g.Up:
		k = fmt.Sprintf("-INT(-%s)", steps)
	case g.Down:
		k = fmt.Sprintf("INT(%s)", steps)
	}
	n := fmt.Sprintf("%s+%d*(%s)", start, step, k)
	if least := max(g.Least, 0); least > 0 || g.Plus < 0 || g.Down {
		return fmt.Sprintf("%s+%d*MAX(0,-INT(-(%d-(%s))/%d))", n, step, least, n, step)
	}
	return n
}
