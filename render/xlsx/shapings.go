package xlsx

import (
	"fmt"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/grade"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"
)

// cell is a formula of one column, without the equals sign.
type cell func(col int) string

// of puts cells into a formula; every %s is one of them.
func of(format string, cells ...cell) cell {
	return func(col int) string {
		all := make([]any, len(cells))
		for i, c := range cells {
			all[i] = c(col)
		}
		return fmt.Sprintf(format, all...)
	}
}

// named is the cell of a row of the sheet.
func (l *sheetLines) named(name string) cell {
	return func(col int) string { return l.ref(name, col) }
}

// leading is the sum at the kind's own key.
func (l *sheetLines) leading(g *schematic.Grading) cell {
	return func(col int) string { return l.sum(g.Sum.Sum.Root, col) }
}

// with is the sum at another key of the line, or otherwise where there is none or the size has no value of it.
func (l *sheetLines) with(g *schematic.Grading, key string, otherwise cell) cell {
	s := g.With[key].Sum
	if s == nil {
		return otherwise
	}
	env := grade.Envs(l.p)
	return func(col int) string {
		if v, bad := s.Eval(env(col - first)); otherwise != nil && (bad != nil || !v.Has) {
			return otherwise(col)
		}
		return l.sum(s.Root, col)
	}
}

// live writes the value that the grading gave under name, with its formula.
func (l *sheetLines) live(name string, vals map[string]schematic.GradedValue, f cell) {
	if v, ok := vals[name]; ok {
		l.formulas(v.Name, v.Dim, v.Vals, f)
	}
}

// step writes a row between: what a sum of several cells comes to, from values of the grading.
func (l *sheetLines) step(name string, d expr.Dim, like expr.Graded, value func(size int) units.Num, f cell) {
	g := expr.Graded{Vals: make([]units.Num, len(like.Vals)), Has: like.Has}
	for i := range g.Vals {
		if g.Has[i] {
			g.Vals[i] = value(i)
		}
	}
	l.formulas(name, d, g, f)
}

// note writes a line of words.
func (l *sheetLines) note(text string) {
	l.b.next()
	l.b.text(1, text, l.b.note)
}

// cloth is how wide a stitch and how high a row of the line is, in the pattern's unit.
func (l *sheetLines) cloth(g *schematic.Grading) (stitch, row string) {
	rows := l.gauge[l.p.GaugeNamed(g.Gauge).Name]
	return fmt.Sprintf("$%s/$%s", dollar(rows[2]), dollar(rows[0])), fmt.Sprintf("$%s/$%s", dollar(rows[2]), dollar(rows[1]))
}

// milli rounds a length to a thousandth of a millimetre, as the grading does.
func (l *sheetLines) milli(c cell) cell {
	k := literal(units.In(units.Int(1), l.p.Units)) // a millimetre in the pattern's unit
	return of("ROUND(%s/"+k+",3)*"+k, of("(%s)", c))
}

// spread writes shapings spread over rows as a sheet reckons them.
func (l *sheetLines) spread(g *schematic.Grading, vals map[string]schematic.GradedValue) {
	step := fmt.Sprint(shaping.RowStep(g.On))
	l.runs(g.Name, vals, l.leading(g), l.with(g, "over", nil), func(int) string { return step })
}

// runs writes the two spacings of n shapings over rows, on every step-th row at most.
func (l *sheetLines) runs(name string, vals map[string]schematic.GradedValue, n, rows, step cell) {
	slots := of("INT(%s/%s)", rows, step)
	more, short := of("MOD(%s,%s)", slots, n), of("INT(%s/%s)", slots, n)
	l.live(name+" every", vals, of("IF(%s=0,1,IF(%s>0,(%s+1)*%s,%s*%s))", n, more, short, step, short, step))
	l.live(name+" times", vals, of("IF(%s=0,0,IF(%s>0,%s,%s))", n, more, more, n))
	l.live(name+" then every", vals, of("IF(%s=0,1,IF(%s>0,%s*%s,1))", n, more, short, step))
	l.live(name+" then times", vals, of("IF(%s=0,0,IF(%s>0,%s-%s,0))", n, more, n, more))
	l.live(name+" rest", vals, of("%s-IF(%s=0,0,%s*%s)", rows, n, slots, step))
}

// armhole writes an armhole: about a third bound off, the others decreased, the rest even.
func (l *sheetLines) armhole(g *schematic.Grading, vals map[string]schematic.GradedValue) {
	w, h := l.cloth(g)
	begin, step := 2, shaping.RowStep(g.On)
	if g.Leave {
		begin = 0
	}
	rows := l.with(g, "over", nil)
	lose := g.Name + ", to lose at each side"
	firstOf, times := vals[g.Name+" first"].Vals, vals[g.Name+" times"].Vals
	l.step(lose, expr.Stitches, firstOf, func(i int) units.Num { return firstOf.Vals[i].Add(times.Vals[i]) }, of("(%s-%s)/2", l.leading(g), l.with(g, "to", nil)))
	each := l.named(lose)
	inch := fmt.Sprintf("MAX(1,INT(ROUND(%s/(%s),9)+0.5))", literal(units.In(units.Int(25), l.p.Units)), w)
	chosen := of("MIN(%s,MAX("+inch+",INT((%s+2)/3)))", each, each)
	start := chosen
	if g.With["first"].Sum != nil {
		own := l.with(g, "first", func(int) string { return "0" })
		start = of("IF(%s>0,%s,%s)", own, own, chosen)
	}
	l.live(g.Name+" first", vals, of(fmt.Sprintf("MAX(%%s,%%s-TRUNC((INT(%%s*2/3)-%d)/%d))", begin, step), start, each, rows))
	off, n := l.named(g.Name+" first"), l.named(g.Name+" times")
	level := of(fmt.Sprintf("IF(%%s=0,0,%d)", begin), off)
	l.live(g.Name+" every", vals, of(fmt.Sprintf("IF(%%s>0,%d,1)", step), n))
	l.live(g.Name+" times", vals, of("%s-%s", each, off))
	l.live(g.Name+" rest", vals, of(fmt.Sprintf("MAX(0,%%s-%%s-%%s*%d)", step), rows, level, n))
	l.live(g.Name+" edge", vals, l.milli(of(fmt.Sprintf("%%s*%s+(%%s+%%s)*%s+SQRT((%%s*%s)^2+(%%s*%d*%s)^2)", w, h, w, step, h), off, level, l.named(g.Name+" rest"), n, n)))
}

// cap writes a sleeve cap. Its decreases come from a search, so they are numbers; what
// they come to is reckoned, and held against what is to fit.
func (l *sheetLines) cap(g *schematic.Grading, vals map[string]schematic.GradedValue) {
	w, h := l.cloth(g)
	upper, fit := l.leading(g), g.Name+", to fit"
	edge := vals[g.Name+" edge"]
	target := l.valuesOf(edge.Vals, func(v func(key string) units.Num) units.Num { return v("armhole").Add(v("ease")) }, g)
	l.note(g.Name + ": its decreases and steps were found by trying, not by a sum: they stay when others change.")
	l.note("Its edge must come within half a stitch of what is to fit. If it does not, change the pattern and grade it again.")
	zero := func(int) string { return "0" }
	l.formulas(fit, expr.LengthOf, target, of("%s+%s", l.with(g, "armhole", nil), l.with(g, "ease", zero)))
	l.live(g.Name+" first", vals, l.with(g, "first", nil))
	off := l.named(g.Name + " first")
	lost, up, slants := []cell{off}, []cell{}, []cell{}
	for _, slot := range []string{"quick", "slow", "less slow", "last"} {
		every, times := g.Name+" "+slot+" every", g.Name+" "+slot+" times"
		for _, name := range []string{every, times} {
			if v, ok := vals[name]; ok {
				l.numbers(v.Name, v.Dim, v.Vals)
			}
		}
		e, t := l.named(every), l.named(times)
		lost = append(lost, t)
		up = append(up, of("%s*%s", e, t))
		slants = append(slants, of(fmt.Sprintf("SQRT((%%s*%s)^2+(%%s*%%s*%s)^2)", w, h), t, e, t))
	}
	for _, name := range []string{g.Name + " step", g.Name + " step times"} {
		if v, ok := vals[name]; ok {
			l.numbers(v.Name, v.Dim, v.Vals)
		}
	}
	size, n := l.named(g.Name+" step"), l.named(g.Name+" step times")
	lost = append(lost, of("%s*%s", size, n))
	level := of("IF(%s=0,0,2)+2*%s", off, n) // rows of what is bound off
	if g.Leave {
		level = of("MAX(0,%s-1)", n)
	}
	l.live(g.Name+" top", vals, of("%s-2*(%s)", upper, plus(lost)))
	l.live(g.Name+" rows", vals, of("%s+%s", level, plus(up)))
	l.live(g.Name+" edge", vals, l.milli(of(fmt.Sprintf("2*((%%s+%%s*%%s)*%s+(%%s)*%s+%%s)+%%s*%s", w, h, w), off, size, n, level, plus(slants), l.named(g.Name+" top"))))
	diff := expr.Graded{Vals: make([]units.Num, len(edge.Vals.Vals)), Has: edge.Vals.Has}
	for i := range diff.Vals {
		diff.Vals[i] = edge.Vals.Vals[i].Sub(target.Vals[i])
	}
	l.formulas(g.Name+", difference", expr.LengthOf, diff, of("%s-%s", l.named(edge.Name), l.named(fit)))
	half := l.p.GaugeNamed(g.Gauge).StitchWidth().Half()
	l.step(g.Name+", half a stitch", expr.LengthOf, edge.Vals, func(int) units.Num { return half }, func(int) string { return w + "/2" })
}

// plus is the sum of cells.
func plus(cells []cell) cell {
	return of(strings.TrimSuffix(strings.Repeat("%s+", len(cells)), "+"), cells...)
}

// valuesOf is a number for each size out of the sums at a line's keys; a key that is not there is 0.
func (l *sheetLines) valuesOf(like expr.Graded, value func(v func(key string) units.Num) units.Num, g *schematic.Grading) expr.Graded {
	out := expr.Graded{Vals: make([]units.Num, len(like.Vals)), Has: like.Has}
	env := grade.Envs(l.p)
	for i := range out.Vals {
		if !out.Has[i] {
			continue
		}
		out.Vals[i] = value(func(key string) units.Num {
			s := g.With[key].Sum
			if key == g.Kind.String() {
				s = g.Sum.Sum
			}
			if s == nil {
				return units.Num{}
			}
			if v, bad := s.Eval(env(i)); bad == nil && v.Has {
				return v.N
			}
			return units.Num{}
		})
	}
	return out
}

// raglan writes a raglan: necks without an odd stitch, an underarm that the rows hold, decreases spread.
func (l *sheetLines) raglan(g *schematic.Grading, vals map[string]schematic.GradedValue) {
	back, neck := l.leading(g), l.with(g, "neck", nil)
	rows, under := l.with(g, "over", nil), l.with(g, "underarm", nil)
	pieces := []struct {
		name         string
		stitches, at cell
	}{
		{"back", back, neck},
		{"front", l.with(g, "front", back), l.with(g, "front neck", neck)},
		{"sleeve", l.with(g, "sleeve", nil), l.with(g, "sleeve neck", nil)},
	}
	name := func(piece, tail string) string { return g.Name + " " + piece + tail }
	decreases := func(piece string, i int) units.Num {
		return vals[name(piece, " times")].Vals.Vals[i].Add(vals[name(piece, " then times")].Vals.Vals[i])
	}
	like := vals[g.Name+" underarm"].Vals
	var most []cell
	for _, q := range pieces {
		l.live(name(q.name, " neck"), vals, of("%s+MOD(%s-%s,2)", q.at, q.stitches, q.at))
		most = append(most, of("(%s-%s)/2", q.stitches, l.named(name(q.name, " neck"))))
	}
	busiest := g.Name + ", to lose at the busiest edge"
	l.step(busiest, expr.Stitches, like, func(i int) units.Num {
		n := units.Num{}
		for _, q := range pieces {
			n = units.Max(n, decreases(q.name, i))
		}
		return n.Add(like.Vals[i])
	}, of("MAX(%s,%s,%s)", most...))
	l.live(g.Name+" underarm", vals, of("%s+MAX(0,%s-%s-%s)", under, l.named(busiest), under, rows))
	l.live(g.Name+" rows", vals, rows)
	for i, q := range pieces {
		n := name(q.name, ", decreases at each edge")
		l.step(n, expr.Plain, like, func(i int) units.Num { return decreases(q.name, i) }, of("%s-%s", most[i], l.named(g.Name+" underarm")))
		step := of("1")
		if shaping.RowStep(g.On) == 2 {
			step = of("IF(%s<=INT(%s/2),2,1)", l.named(n), rows)
		}
		l.runs(name(q.name, ""), vals, l.named(n), rows, step)
	}
}

// yoke writes a round yoke: its way round falls in a straight line, in rounds of decreases spread over the rows.
func (l *sheetLines) yoke(g *schematic.Grading, vals map[string]schematic.GradedValue) {
	start, rows := l.leading(g), l.with(g, "over", nil)
	m, k := max(g.Multiple, 1), g.Rounds
	nearest := func(c cell) cell { return of(fmt.Sprintf("%d*INT(ROUND(%%s/%d,9)+0.5)", m, m), of("(%s)", c)) }
	l.live(g.Name+" neck", vals, of(fmt.Sprintf("MIN(%%s,MAX(%d,%%s))", m), start, nearest(l.with(g, "neck", nil))))
	neck := l.named(g.Name + " neck")
	high := l.with(g, "first", nil) // the rows up to the first round, where they are not as many as between the others
	before := start
	for i := range k {
		left := fmt.Sprintf("%s left %d", g.Name, i+1)
		up := of(fmt.Sprintf("INT(%%s/%d)+IF(%d<=MOD(%%s,%d),1,0)", k, i+1, k), rows, rows)
		switch {
		case high != nil && i == 0:
			up = high
		case high != nil:
			up = of(fmt.Sprintf("INT((%%s-%%s)/%d)+IF(%d<=MOD(%%s-%%s,%d),1,0)", k-1, i, k-1), rows, high, rows, high)
		}
		l.live(fmt.Sprintf("%s rows %d", g.Name, i+1), vals, up)
		l.live(fmt.Sprintf("%s decreases %d", g.Name, i+1), vals, of("%s-%s", before, l.named(left)))
		after := neck
		if i < k-1 {
			row := of(fmt.Sprintf("(%d*INT(%%s/%d)+MIN(%d,MOD(%%s,%d)))", i+1, k, i+1, k), rows, rows)
			near := nearest(of("%s-(%s-%s)*%s/%s", start, start, neck, row, rows))
			if high != nil {
				near = nearest(of(fmt.Sprintf("%%s-(%%s-%%s)*%d/%d", i+1, k), start, start, neck))
			}
			after = of(fmt.Sprintf("%%s+%d*MAX(0,-INT(-(%%s-%%s)/%d))", m, m), near, neck, near)
		}
		l.live(left, vals, after)
		before = l.named(left)
	}
}
