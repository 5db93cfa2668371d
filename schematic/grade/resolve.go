// Package grade works a grading out: bodies and ease to whole stitches and rows, shapings by the sums of package shaping, a
// pattern's own sums of graded values, its table and its arithmetic in words. It knows nothing of YAML, drawing or paper.
package grade

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/body"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Resolve works the pattern's grading out for every size: the values by name, in
// the order of the file, and all that is wrong with it: names that are not
// there or stand twice, circles, values that cannot go together, counts that
// cannot be. Bodies are called by their names: the upper end of a range, or with 'low'
// before the name its lower end. The eases of the yarn standard are called
// 'close ease' and the like (see Fits). A count's name with 'makes' behind it is the
// length that it makes.
func Resolve(p *schematic.Pattern) ([]schematic.GradedValue, finding.List) {
	r := &resolver{p: p, values: map[string]schematic.GradedValue{}, line: map[string]int{}}
	r.bodies()
	r.names()
	r.unread()
	order := r.order()
	for _, i := range order {
		r.work(i)
	}
	slices.SortStableFunc(r.out, func(a, b schematic.GradedValue) int { return a.Of - b.Of })
	r.found = p.Sizes.Merge(r.found)
	r.found.Sort()
	return r.out, r.found
}

type resolver struct {
	p      *schematic.Pattern
	values map[string]schematic.GradedValue // by name in lower case
	line   map[string]int                   // the line of the grading that gives a name
	out    []schematic.GradedValue
	found  finding.List
	size   int
	failed []bool          // lines that could not be worked out
	broken map[string]bool // names of bodies whose numbers could not be read, which has been told
	told   told
}

func (r *resolver) fail(pos finding.Pos, kind, format string, args ...any) *finding.Finding {
	r.found = append(r.found, finding.Finding{Kind: kind, Severity: finding.Error, Pos: pos, Message: fmt.Sprintf(format, args...)})
	return &r.found[len(r.found)-1]
}

func (r *resolver) bodies() {
	add := func(name string, g expr.Graded) {
		r.values[expr.Key(name)] = schematic.GradedValue{Name: name, Dim: expr.LengthOf, Vals: g, Of: -1}
	}
	n := r.p.Sizes.Len()
	for _, f := range body.Fits() {
		add(f.Name+" ease", expr.Const(f.Middle(), n))
		if f.Name == "standard" {
			add("classic ease", expr.Const(f.Middle(), n))
		}
	}
	for _, b := range r.p.Bodies {
		high := b.High
		if high.IsZero() {
			high = b.Low
		}
		add(b.Name, high)
		add("low "+b.Name, b.Low)
	}
}

// unread takes the bodies out whose numbers could not be read, so that nothing is worked out of them.
func (r *resolver) unread() {
	r.broken = map[string]bool{}
	for _, b := range r.p.Bodies {
		if !b.Low.IsZero() || !b.High.IsZero() {
			continue
		}
		for _, name := range []string{b.Name, "low " + b.Name} {
			k := expr.Key(name)
			r.broken[k] = true
			delete(r.values, k)
		}
	}
}

// gives are the names that a line of the grading gives, its own first.
func gives(g *schematic.Grading) []string {
	of := func(tails ...string) []string {
		var out []string
		for _, t := range tails {
			out = append(out, g.Name+" "+t)
		}
		return out
	}
	spaced := []string{"every", "times", "then every", "then times"}
	switch g.Kind {
	case schematic.GradeStitches, schematic.GradeRows:
		return []string{g.Name, g.Name + " makes"}
	case schematic.GradeSpread:
		return of(append(spaced, "rest")...)
	case schematic.GradeArmhole:
		return of("first", "every", "times", "rest", "edge")
	case schematic.GradeCap:
		return of("first", "quick every", "quick times", "slow every", "slow times", "less slow every", "less slow times",
			"last every", "last times", "step", "step times", "top", "rows", "edge")
	case schematic.GradeRaglan:
		out := of("underarm", "rows")
		for _, piece := range []string{"back", "front", "sleeve"} {
			for _, s := range spaced {
				out = append(out, of(piece+" "+s)...)
			}
			out = append(out, of(piece+" rest", piece+" neck")...)
		}
		return out
	case schematic.GradeYoke:
		var out []string
		for i := range max(g.Rounds, 0) {
			out = append(out, of(fmt.Sprintf("rows %d", i+1), fmt.Sprintf("decreases %d", i+1), fmt.Sprintf("left %d", i+1))...)
		}
		return append(out, of("neck")...)
	}
	return []string{g.Name}
}

func (r *resolver) names() {
	for i := range r.p.Grading {
		g := &r.p.Grading[i]
		if !callable(g.Name) {
			r.fail(g.Pos, "file/name", "%q can't be the name of a value: a sum would not know it", g.Name).
				Want = "words of letters and digits, beginning with a letter, none of them half, twice or x"
		}
		for _, n := range gives(g) {
			k := expr.Key(n)
			if isEase(k) && !isBody(r.p, k) {
				delete(r.values, k) // her own instead of the standard's
			}
			if _, body := r.values[k]; body {
				r.fail(g.Pos, "file/duplicate-name", "%q is the name of a body measurement already", n).Fix = "call it something else"
				continue
			}
			if j, twice := r.line[k]; twice {
				f := r.fail(g.Pos, "file/duplicate-name", "two lines of the grading give %q", n)
				f.Have = fmt.Sprintf("also in line %d", r.p.Grading[j].Pos.Line)
				f.Fix = "call one of them something else"
				continue
			}
			r.line[k] = i
		}
	}
}

// isEase reports whether k is the name of one of the yarn standard's eases.
func isEase(k string) bool {
	return k == "classic ease" || slices.ContainsFunc(body.Fits(), func(f body.Fit) bool { return k == f.Name+" ease" })
}

// callable reports whether a sum reads name as one name.
func callable(name string) bool {
	s, bad := expr.ParseSum(name)
	return bad == nil && s.Root.Op == expr.Name && expr.Key(s.Root.Name) == expr.Key(name) && name != "none"
}

// Sums are the sums of a line with their keys, in a fixed order.
func Sums(g *schematic.Grading) []schematic.GradedSum {
	keys := make([]string, 0, len(g.With))
	for k := range g.With {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	out := []schematic.GradedSum{g.Sum}
	for _, k := range keys {
		out = append(out, g.With[k])
	}
	return out
}

// order is the lines of the grading in an order in which each comes after those
// that it calls. A circle is a finding that names its members; they are left out.
func (r *resolver) order() []int {
	r.failed = make([]bool, len(r.p.Grading))
	state := make([]int, len(r.p.Grading))
	var out, path []int
	var visit func(i int)
	visit = func(i int) {
		state[i] = 1
		path = append(path, i)
		g := &r.p.Grading[i]
		call := func(name string, pos finding.Pos) {
			j, ok := r.line[expr.Key(name)]
			switch {
			case !ok:
			case state[j] == 0:
				visit(j)
			case state[j] == 1:
				var circle []string
				for _, m := range path[slices.Index(path, j):] {
					circle = append(circle, r.p.Grading[m].Name)
					r.failed[m] = true
				}
				r.fail(pos, "file/cycle", "these lines of the grading need each other in a circle: %s → %s", strings.Join(circle, " → "), circle[0]).
					Fix = "give one of them a number of its own"
			}
		}
		for _, s := range Sums(g) {
			if s.Sum == nil {
				continue
			}
			for _, n := range s.Sum.Names() {
				call(n, s.Pos)
			}
		}
		if g.Like != "" {
			call(g.Like, g.Pos)
		}
		state[i] = 2
		path = path[:len(path)-1]
		out = append(out, i)
	}
	for i := range r.p.Grading {
		if state[i] == 0 {
			visit(i)
		}
	}
	return out
}

// Env gives the values of one size by name, for sums.
func Env(p *schematic.Pattern, size int) expr.Env { return Envs(p)(size) }

// Envs gives the values of any size by name, for sums that are worked in each.
func Envs(p *schematic.Pattern) func(size int) expr.Env {
	r := resolver{p: p, values: map[string]schematic.GradedValue{}}
	r.bodies()
	for _, v := range p.Graded {
		r.values[expr.Key(v.Name)] = v
	}
	return func(size int) expr.Env {
		of := r
		of.size = size
		return of.env
	}
}

// Names are all names that a sum of the pattern may call, for messages that
// guess what was meant.
func Names(p *schematic.Pattern) []string {
	var out []string
	for _, b := range p.Bodies {
		out = append(out, b.Name)
	}
	for _, v := range p.Graded {
		out = append(out, v.Name)
	}
	return out
}

func (r *resolver) env(name string) (expr.Value, bool) {
	v, ok := r.values[expr.Key(name)]
	if !ok {
		return expr.Value{}, false
	}
	n, has := v.Vals.At(r.size)
	return expr.Value{N: n, Dim: v.Dim, Has: has}, true
}

// value works a sum out for every size; ok is false if it can't be, which is told.
func (r *resolver) value(s schematic.GradedSum) (v schematic.GradedValue, ok bool) {
	n := r.p.Sizes.Len()
	v.Vals = expr.Graded{Vals: make([]units.Num, n), Has: make([]bool, n)}
	for r.size = range n {
		val, bad := s.Sum.Eval(r.env)
		if bad != nil {
			if bad.Kind == "file/reference" && r.spoilt(s) {
				return v, false // the line that it calls has been told of
			}
			r.found = append(r.found, bad.Finding(s.Pos))
			return v, false
		}
		v.Dim = val.Dim
		v.Vals.Vals[r.size], v.Vals.Has[r.size] = val.N, val.Has
	}
	return v, true
}

// spoilt reports whether the sum calls a body that could not be read, or a line that could not be worked out.
func (r *resolver) spoilt(s schematic.GradedSum) bool {
	for _, n := range s.Sum.Names() {
		if r.broken[expr.Key(n)] {
			return true
		}
		if j, ok := r.line[expr.Key(n)]; ok && r.failed[j] {
			return true
		}
	}
	return false
}

func (r *resolver) give(i int, name string, dim expr.Dim, vals expr.Graded) {
	v := schematic.GradedValue{Name: name, Dim: dim, Vals: vals, Of: i}
	if r.line[expr.Key(name)] != i {
		return // the name belongs to another line: that has been told
	}
	r.values[expr.Key(name)] = v
	r.out = append(r.out, v)
}
