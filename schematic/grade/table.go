package grade

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/body"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"
)

// Table is the whole grading of a pattern, size by size.
type Table struct {
	Title string
	Sizes []string
	Units units.Unit
	Parts []TablePart
}

// TablePart is the rows that belong to one count or one measurement: what it is
// reckoned from, its target, the count, what the count makes and how far that is from the target.
type TablePart struct {
	Name string
	How  string // the sum and its rule, in words
	Rows []TableRow
}

// RowKind is what a row of the table tells.
type RowKind int

// The kinds of row.
const (
	RowBody RowKind = iota
	RowEase
	RowValue
	RowTarget
	RowCount
	RowMakes
	RowDifference
)

// TableRow is one line of numbers, one a size; lengths are in mm. Jump marks
// sizes whose step from the size before is unlike the other steps.
type TableRow struct {
	Kind RowKind
	Name string
	Dim  expr.Dim
	Vals expr.Graded
	Jump []bool
	Fit  []string // of an ease: its name in the yarn standard, one a size
}

// TableOf is the grading of the pattern that gs are the garments of: each line
// of its grading, and, for what the counts make, each measurement that has a body to be held against.
func TableOf(p *schematic.Pattern, gs []*schematic.Garment) Table {
	t := Table{Title: p.Title, Sizes: p.Sizes.Names, Units: p.Units}
	from := originsIn(p)
	for i := range p.Grading {
		if part, ok := gradedPart(p, i, from); ok {
			t.Parts = append(t.Parts, part)
		}
	}
	t.Parts = append(t.Parts, madeParts(p, gs)...)
	for i := range t.Parts {
		for k := range t.Parts[i].Rows {
			r := &t.Parts[i].Rows[k]
			r.Jump = make([]bool, len(r.Vals.Vals))
			if r.Kind != RowDifference && (r.Kind != RowValue || r.Dim == expr.LengthOf) {
				r.Jump = jumps(r.Vals, r.Dim)
			}
			if next := k + 1; r.Kind == RowCount && next < len(t.Parts[i].Rows) && t.Parts[i].Rows[next].Kind == RowMakes {
				small(r, t.Parts[i].Rows[next].Vals)
			}
		}
	}
	return t
}

func gradedPart(p *schematic.Pattern, i int, from *origins) (TablePart, bool) {
	g := &p.Grading[i]
	part := TablePart{Name: g.Name, How: howOf(g)}
	for _, s := range Sums(g) {
		if s.Sum != nil {
			part.Rows = append(part.Rows, from.rows(s.Sum)...)
		}
	}
	var values []schematic.GradedValue
	for _, v := range p.Graded {
		if v.Of == i {
			values = append(values, v)
		}
	}
	if len(values) == 0 {
		return part, false
	}
	if g.Kind != schematic.GradeStitches && g.Kind != schematic.GradeRows {
		for _, v := range values {
			part.Rows = append(part.Rows, TableRow{Kind: RowValue, Name: v.Name, Dim: v.Dim, Vals: v.Vals})
		}
		return part, true
	}
	target := targetOf(p, g)
	part.Rows = append(part.Rows, TableRow{Kind: RowTarget, Name: "target", Dim: expr.LengthOf, Vals: target})
	for _, v := range values {
		if v.Dim != expr.LengthOf {
			part.Rows = append(part.Rows, TableRow{Kind: RowCount, Name: v.Dim.String()[len("a number of "):], Dim: v.Dim, Vals: v.Vals})
			continue
		}
		part.Rows = append(part.Rows, TableRow{Kind: RowMakes, Name: "makes", Dim: expr.LengthOf, Vals: v.Vals},
			TableRow{Kind: RowDifference, Name: "difference", Dim: expr.LengthOf, Vals: minus(v.Vals, target)})
	}
	return part, true
}

// howOf is what a line is worked out of and its rule, in words.
func howOf(g *schematic.Grading) string {
	how := ""
	switch {
	case g.Given != nil:
		how = "as given"
	case g.Sum.Sum != nil && g.Kind == schematic.GradeValue:
		how = g.Sum.Sum.Text
	case g.Sum.Sum != nil:
		how = g.Kind.String() + " " + g.Sum.Sum.Text
	}
	if rule := ruleWords(g); rule != "" {
		how += ", " + rule
	}
	return how
}

// ruleWords is the rule of a count in words.
func ruleWords(g *schematic.Grading) string {
	r := shaping.Rule{Multiple: g.Multiple, Plus: g.Plus}
	if g.Up {
		r.Round = shaping.AtLeast
	}
	if g.Down {
		r.Round = shaping.AtMost
	}
	if g.Even {
		r.Parity = shaping.Even
	}
	if g.Odd {
		r.Parity = shaping.Odd
	}
	s := r.String()
	if g.Like != "" {
		s = strings.TrimPrefix(s+", even or odd as "+g.Like, ", ")
	}
	return s
}

// targetOf is the length that a count aims at, in each size.
func targetOf(p *schematic.Pattern, g *schematic.Grading) expr.Graded {
	n := p.Sizes.Len()
	out := expr.Graded{Vals: make([]units.Num, n), Has: make([]bool, n)}
	gauge := p.GaugeNamed(g.Gauge)
	for i := range n {
		v := expr.Value{}
		if g.Given != nil {
			v.Dim = g.Given.Dim
			v.N, v.Has = g.Given.Vals.At(i)
		} else {
			v, _ = g.Sum.Sum.Eval(Env(p, i))
		}
		if v.Dim != expr.LengthOf && gauge != nil {
			each := gauge.StitchWidth()
			if g.Kind == schematic.GradeRows {
				each = gauge.RowHeight()
			}
			v.N = v.N.Mul(each)
		}
		out.Vals[i], out.Has[i] = v.N, v.Has
	}
	return out
}

func minus(a, b expr.Graded) expr.Graded {
	out := expr.Graded{Vals: make([]units.Num, len(a.Vals)), Has: make([]bool, len(a.Vals))}
	for i := range a.Vals {
		out.Vals[i], out.Has[i] = a.Vals[i].Sub(b.Vals[i]), a.Has[i] && b.Has[i]
	}
	return out
}

// origins are the bodies and eases that the lines of a grading come from. Each line is followed once: of 490 lines, each
// of them a sum of those above it, the last one comes from all.
type origins struct {
	p    *schematic.Pattern
	line map[string]int // the grading line of a name
	of   map[int][]string
}

func originsIn(p *schematic.Pattern) *origins {
	o := &origins{p: p, line: map[string]int{}, of: map[int][]string{}}
	for i := range slices.Backward(p.Grading) {
		o.line[expr.Key(p.Grading[i].Name)] = i
	}
	return o
}

// rows are the bodies and eases that a sum comes from, through the lines that it calls.
func (o *origins) rows(s *expr.Sum) []TableRow {
	var out []TableRow
	for _, name := range o.names(s) {
		kind := RowBody
		if saysEase(name) {
			kind = RowEase
		}
		out = append(out, inEach(o.p, kind, name))
	}
	return out
}

// saysEase reports whether a name speaks of an ease, the yarn standard's or the designer's own.
func saysEase(name string) bool { return strings.Contains(expr.Key(name), "ease") }

func (o *origins) names(s *expr.Sum) []string {
	var out []string
	seen := map[string]bool{}
	for _, name := range s.Names() {
		for _, from := range o.behind(name) {
			if k := expr.Key(from); !seen[k] {
				seen[k] = true
				out = append(out, from)
			}
		}
	}
	return out
}

func (o *origins) behind(name string) []string {
	k := expr.Key(name)
	i, called := o.line[k]
	if saysEase(name) || !called && isBody(o.p, k) { // what another line gives is told there
		return []string{name}
	}
	if !called || o.p.Grading[i].Kind != schematic.GradeValue || o.p.Grading[i].Sum.Sum == nil {
		return nil
	}
	from, met := o.of[i]
	if !met {
		o.of[i] = nil // of a line that comes from itself, which is told elsewhere
		from = o.names(o.p.Grading[i].Sum.Sum)
		o.of[i] = from
	}
	return from
}

// inEach is a row of what is called name, one a size.
func inEach(p *schematic.Pattern, kind RowKind, name string) TableRow {
	row := TableRow{Kind: kind, Name: name}
	for i := range p.Sizes.Names {
		v, _ := Env(p, i)(name)
		row.Dim = v.Dim
		row.Vals.Vals, row.Vals.Has = append(row.Vals.Vals, v.N), append(row.Vals.Has, v.Has)
	}
	return row
}

func isBody(p *schematic.Pattern, k string) bool {
	return slices.ContainsFunc(p.Bodies, func(b schematic.Written) bool { return expr.Key(b.Name) == k || "low "+expr.Key(b.Name) == k })
}

// girths are bodies that are measured around: pieces that lie flat show a part of each.
var girths = []string{"bust", "chest", "waist", "hip", "hips"}

// against is a measurement that a body stands against, one a size.
type against struct {
	name         string
	dim          expr.Dim
	made, counts expr.Graded
}

func newAgainst(name string, sizes int) *against {
	blank := func() expr.Graded { return expr.Graded{Vals: make([]units.Num, sizes), Has: make([]bool, sizes)} }
	return &against{name: name, dim: expr.Stitches, made: blank(), counts: blank()}
}

// add adds a measurement of the garment of size i, so many times.
func (a *against) add(i int, s schematic.Measure, times int) {
	a.made.Vals[i], a.made.Has[i] = a.made.Vals[i].Add(s.Length.Times(times)), true
	if s.Count > 0 {
		a.counts.Vals[i], a.counts.Has[i] = a.counts.Vals[i].Add(units.Int(int64(s.Count*times))), true
	}
	if s.Of == "row" {
		a.dim = expr.Rows
	}
}

// part is the table's part of it.
func (a *against) part(name string, high expr.Graded) TablePart {
	ease := minus(a.made, high)
	fits := make([]string, len(ease.Vals))
	for i := range fits {
		if ease.Has[i] && isRound(name) {
			fits[i] = body.FitOf(ease.Vals[i]).Name
		}
	}
	return TablePart{Name: a.name, How: "what the counts make, against the body", Rows: []TableRow{
		{Kind: RowBody, Name: name, Dim: expr.LengthOf, Vals: high},
		{Kind: RowCount, Name: a.dim.String()[len("a number of "):], Dim: a.dim, Vals: a.counts},
		{Kind: RowMakes, Name: "makes", Dim: expr.LengthOf, Vals: a.made},
		{Kind: RowEase, Name: "ease", Dim: expr.LengthOf, Vals: ease, Fit: fits},
	}}
}

// madeParts are measurements of the worked garments that a body stands against by name.
func madeParts(p *schematic.Pattern, gs []*schematic.Garment) []TablePart {
	var out []TablePart
	for _, b := range p.Bodies {
		high := b.High
		if high.IsZero() {
			high = b.Low
		}
		all := named(gs, b.Name, p.Sizes.Len())
		if slices.Contains(girths, expr.Key(b.Name)) {
			if w := wholeGirth(gs, b.Name, p.Sizes.Len()); w != nil {
				all = []*against{w}
			}
		}
		for _, a := range all {
			if slices.ContainsFunc(out, func(o TablePart) bool {
				return o.Name == a.name && sameVals(o.Rows[2].Vals, a.made) && sameVals(o.Rows[1].Vals, a.counts)
			}) {
				continue // its other side, which is alike
			}
			out = append(out, a.part(b.Name, high))
		}
	}
	return out
}

// named are the measurements called name, each by itself.
func named(gs []*schematic.Garment, name string, sizes int) []*against {
	var out []*against
	for _, id := range measureIDs(gs, name) {
		a := newAgainst("", sizes)
		for _, g := range gs {
			for m, s := range g.Measured() {
				if s.ID == id && g.Index < sizes && !a.made.Has[g.Index] {
					a.name = m.Name + ": " + s.Name
					a.add(g.Index, *s, 1)
				}
			}
		}
		out = append(out, a)
	}
	return out
}

// wholeGirth is a girth of flat backs and fronts together, all around the body: a back alone counts twice. It is nil
// where a piece goes all the way round by itself, or no back or front has the measurement.
func wholeGirth(gs []*schematic.Garment, name string, sizes int) *against {
	a := newAgainst("", sizes)
	var of []string
	for _, g := range gs {
		backs, fronts := 0, 0
		for _, m := range g.Pieces {
			i := slices.IndexFunc(m.Measures, func(s schematic.Measure) bool { return expr.Key(s.Name) == expr.Key(name) })
			if i < 0 || g.Index >= sizes {
				continue
			}
			switch {
			case m.Measures[i].Around || m.Kind == schematic.KindBody:
				return nil
			case m.Kind == schematic.KindBack:
				backs++
			case m.Kind == schematic.KindFront:
				fronts++
			default:
				continue
			}
			if !slices.Contains(of, m.Name) {
				of = append(of, m.Name)
			}
			a.add(g.Index, m.Measures[i], max(1, m.Make))
			a.name = m.Measures[i].Name
		}
		if a.made.Has[g.Index] && (backs == 0 || fronts == 0) {
			a.made.Vals[g.Index], a.counts.Vals[g.Index] = a.made.Vals[g.Index].Times(2), a.counts.Vals[g.Index].Times(2)
		}
	}
	if len(of) == 0 {
		return nil
	}
	if len(of) == 1 {
		of[0] = "twice " + of[0]
	}
	a.name = strings.Join(of, " and ") + ": " + a.name
	return a
}

func sameVals(a, b expr.Graded) bool {
	return slices.Equal(a.Has, b.Has) && slices.EqualFunc(a.Vals, b.Vals, units.Num.Eq)
}

// isRound reports whether the standard's eases are of this measurement.
func isRound(name string) bool {
	k := expr.Key(name)
	return k == "bust" || k == "chest"
}

// measureIDs are the measurements called name, in the order in which they come.
func measureIDs(gs []*schematic.Garment, name string) []string {
	var ids []string
	for _, g := range gs {
		for _, s := range g.Measured() {
			if expr.Key(s.Name) == expr.Key(name) && !slices.Contains(ids, s.ID) {
				ids = append(ids, s.ID)
			}
		}
	}
	return ids
}

// jumps marks sizes whose step from the size before is unlike the other steps, and more
// than a floor: 3 cm, or 3 stitches or rows.
func jumps(g expr.Graded, d expr.Dim) []bool {
	out := make([]bool, len(g.Vals))
	floor := units.Int(1)
	if d == expr.LengthOf {
		floor = units.Int(10)
	}
	var steps []units.Num
	var to []int
	last := -1
	for i := range g.Vals {
		if !g.Has[i] {
			continue
		}
		if last >= 0 {
			steps, to = append(steps, g.Vals[i].Sub(g.Vals[last])), append(to, i)
		}
		last = i
	}
	for _, odd := range bysize.OddSteps(steps, make([]units.Num, len(steps)), floor) {
		out[to[odd.At]] = true
	}
	return out
}

// small takes the mark off a count whose step makes less than 1.5 cm: a few rows of fine knitting
// are no wrong digit.
func small(r *TableRow, makes expr.Graded) {
	last := -1
	for i := range r.Jump {
		if !r.Vals.Has[i] {
			continue
		}
		if r.Jump[i] && last >= 0 && makes.Has[i] && makes.Has[last] && makes.Vals[i].Sub(makes.Vals[last]).Abs().Less(units.Int(15)) {
			r.Jump[i] = false
		}
		last = i
	}
}

// Text is one cell as it is printed: counts whole, lengths in the table's unit
// to two places (three in inches), a dash where the size has none, an
// exclamation mark behind a jump.
func (r TableRow) Text(i int, u units.Unit) string {
	v, ok := r.Vals.At(i)
	if !ok {
		return expr.Dash
	}
	t := units.Decimal(v, 2)
	if r.Dim == expr.LengthOf {
		t = shaping.Long(v, u)
		if r.Kind == RowDifference && v.Sign() > 0 {
			t = "+" + t
		}
	}
	if r.Jump[i] {
		t += " !"
	}
	return t
}

// Label is what stands before the numbers of a row, with its unit.
func (r TableRow) Label(u units.Unit) string {
	switch r.Dim {
	case expr.LengthOf:
		return fmt.Sprintf("%s, %s", r.Name, u)
	case expr.Rows:
		if r.Kind != RowCount {
			return r.Name + ", rows"
		}
	case expr.Stitches:
		if r.Kind != RowCount {
			return r.Name + ", sts"
		}
	}
	return r.Name
}
