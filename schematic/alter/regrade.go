package alter

import (
	"maps"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/grade"
	"flatwright/schematic/units"
)

// regrading works the grading of a pattern out anew, for other gauges: each count that it rounds
// is the nearest to what it made as published that its own rule allows, and whatever
// is worked out of it follows. Pieces may be of several sizes.
type regrading struct {
	p      *schematic.Pattern // all sizes
	gauges []schematic.Gauge
	size   int
	parts  map[string]int // the size of a piece, where it is another
	own    bool           // worked out of a maker's own body: its counts round that, and not what was published
}

// values gives every number of the trial's garment that was worked out of the grading anew;
// false if the grading can't be worked out at these gauges.
func (r *regrading) values(t *trial) (func(*schematic.Piece, expr.Graded) expr.Graded, bool) {
	envs := map[int]expr.Env{}
	for _, at := range append([]int{r.size}, sortedSizes(r.parts)...) {
		env, ok := r.env(t, at)
		if !ok {
			return nil, false
		}
		envs[at] = env
	}
	ok := true
	value := func(piece *schematic.Piece, g expr.Graded) expr.Graded {
		if g.From == nil {
			return g
		}
		at := r.size
		if j, other := r.parts[piece.Name]; other {
			at = j
		}
		v, bad := g.From.WithRows(func(n units.Num) units.Num { return r.rows(t, piece, n) }).Eval(envs[at])
		if bad != nil || v.Has && v.N.Sign() < 0 {
			ok = false
			return g
		}
		out := expr.Of(v.N)
		out.Has[0], out.From = v.Has, g.From
		return out
	}
	return value, ok
}

// rows are a number of rows in a sum anew, as high in the gauge that its piece begins with.
func (r *regrading) rows(t *trial, piece *schematic.Piece, n units.Num) units.Num {
	was, now := t.Gauge(piece.Gauge)
	high := was.RowHeight().Div(now.RowHeight())
	return units.Int(int64(t.Near(grading+n.String()+" rows", n.Mul(high), schematic.Need{}, 0)))
}

func sortedSizes(parts map[string]int) []int {
	var out []int
	for _, j := range parts {
		out = append(out, j)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// env is the values of one size.
func (r *regrading) env(t *trial, at int) (expr.Env, bool) {
	q := oneSize(r.p, at, nil)
	q.Gauges = r.gauges
	pick := picker(at)
	q.Grading = slices.Clone(r.p.Grading)
	for i := range q.Grading {
		g := &q.Grading[i]
		if g.Given != nil {
			v := *g.Given
			v.Vals = pick(v.Vals)
			g.Given = &v
		}
		if !r.own {
			r.asPublished(t, g, at)
		}
	}
	vals, found := grade.Resolve(q)
	if found.Errors() {
		return nil, false
	}
	q.Graded = vals
	env := grade.Envs(q)(0)
	for i := range q.Grading {
		g := &q.Grading[i]
		v, ok := env(g.Name)
		if need := ruleOf(g); ok && v.Has && need.Multiple > 1 {
			p := picked{of: "st", n: int(v.N.Floor()), need: need, line: g.Name}
			if g.Kind == schematic.GradeRows {
				p.of = "row"
			}
			t.picks = append(t.picks, p)
		}
	}
	return env, true
}

// asPublished has a line of the grading keep what it made as published.
func (r *regrading) asPublished(t *trial, g *schematic.Grading, at int) {
	switch {
	case g.Kind == schematic.GradeStitches || g.Kind == schematic.GradeRows:
		r.target(t, g, at)
	case g.Kind == schematic.GradeCap:
		r.top(g, at)
	case g.Given != nil:
		g.Given.Vals = r.count(t, g, g.Given.Vals)
	}
}

// count is a count that the grading writes down instead of working it out, as wide or high as published; even, if it is even in all sizes. Stitches that all
// sizes share, and so are of the stitch pattern, stay.
func (r *regrading) count(t *trial, g *schematic.Grading, of expr.Graded) expr.Graded {
	all := r.p.Grading[slices.IndexFunc(r.p.Grading, func(h schematic.Grading) bool { return h.Name == g.Name })].Given.Vals.Vals
	if dim := g.Given.Dim; dim != expr.Rows && (dim != expr.Stitches || len(all) > 0 && !slices.ContainsFunc(all, func(n units.Num) bool { return !n.Eq(all[0]) })) {
		return of
	}
	was, now := t.Gauge(g.Gauge)
	narrower, need := was.StitchWidth().Div(now.StitchWidth()), schematic.Need{}
	if g.Given.Dim == expr.Rows {
		narrower = was.RowHeight().Div(now.RowHeight())
	}
	if !slices.ContainsFunc(all, func(n units.Num) bool { return !n.Half().IsInt() }) {
		need.Multiple = 2
	}
	return expr.Counts(t.Near(grading+expr.Key(g.Name), first(of).Mul(narrower), need, 0))
}

// target has a count round to what it made as published, moved as the trial says.
func (r *regrading) target(t *trial, g *schematic.Grading, at int) {
	i := slices.IndexFunc(r.p.Graded, func(v schematic.GradedValue) bool { return expr.Key(v.Name) == expr.Key(g.Name+" makes") })
	gauge := schematic.GaugeIn(r.gauges, g.Gauge)
	if i < 0 || gauge == nil {
		return
	}
	makes, has := r.p.Graded[i].Vals.At(at)
	if !has {
		return
	}
	each := gauge.StitchWidth()
	if g.Kind == schematic.GradeRows {
		each = gauge.RowHeight()
	}
	step := max(1, ruleOf(g).Multiple)
	name := grading + expr.Key(g.Name)
	t.choose(name, step)
	makes = units.Max(units.Num{}, makes.Add(each.Times(t.moved[name]*step)))
	g.Sum, g.Up, g.Down = schematic.GradedSum{}, false, false
	g.Given = &schematic.GradedValue{Name: g.Name, Dim: expr.LengthOf, Vals: expr.Of(makes)}
}

// ruleOf is what a line of the grading asks of its count.
func ruleOf(g *schematic.Grading) schematic.Need {
	if g.Kind != schematic.GradeStitches && g.Kind != schematic.GradeRows {
		return schematic.Need{}
	}
	step := max(1, g.Multiple)
	if step%2 == 1 && (g.Even || g.Odd || g.Like != "") {
		step *= 2
	}
	return schematic.Need{Multiple: step}
}

// top has a cap as wide at its top as published, where nothing else is wished for.
func (r *regrading) top(g *schematic.Grading, at int) {
	i := slices.IndexFunc(r.p.Graded, func(v schematic.GradedValue) bool { return expr.Key(v.Name) == expr.Key(g.Name+" top") })
	gauge := r.p.GaugeNamed(g.Gauge)
	if _, wished := g.With["top"]; wished || i < 0 || gauge == nil {
		return
	}
	n, has := r.p.Graded[i].Vals.At(at)
	if !has {
		return
	}
	sum, bad := expr.ParseSum(units.Decimal(units.In(gauge.StitchWidth().Mul(n), units.CM), 3) + " cm")
	if bad != nil {
		return
	}
	g.With = maps.Clone(g.With)
	g.With["top"] = schematic.GradedSum{Sum: sum, Pos: g.Pos}
}
