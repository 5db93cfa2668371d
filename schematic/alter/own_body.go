package alter

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/grade"
	"flatwright/schematic/units"
)

// Own is one measurement of a maker's own body, called as the pattern calls it.
type Own struct {
	Name   string
	Length units.Num // mm
}

// forBody is the pattern with its grading worked out anew for a maker's own body in the place of that of size i: whatever
// is worked out of the body follows, and numbers that the designer wrote stay those of the size. The others of the pattern's
// sizes stay as they are. Its findings are errors if it cannot be.
func forBody(p *schematic.Pattern, i int, body []Own) (*schematic.Pattern, finding.List) {
	q := *p
	var found finding.List
	if q.Bodies, found = ownBodies(p, i, body); found.Errors() {
		return nil, found
	}
	if w, ok := placed(p, body); ok {
		found = append(found, w.follow(&q, i)...)
	}
	vals, graded := grade.Resolve(&q)
	if graded.Errors() {
		return nil, append(found, graded...)
	}
	q.Graded = vals
	env := grade.Envs(&q)
	anew := func(g expr.Graded) expr.Graded {
		if g.From == nil || !hasAt(g, i) {
			return g
		}
		v, bad := g.From.Eval(env(i))
		if bad != nil || v.N.Sign() < 0 {
			found = append(found, finding.Finding{Kind: "alter/body", Severity: finding.Error, Pos: p.SizesPos,
				Message: "at these measurements a count of the pattern falls below 0, or can't be worked out", Fix: "check the measurements; if they are right, take the nearest size and alter its lengths"})
			return g
		}
		g.Vals, g.Has = slices.Clone(g.Vals), slices.Clone(g.Has)
		g.Vals[i], g.Has[i] = v.N, v.Has
		return g
	}
	q.Pieces = make([]*schematic.Piece, len(p.Pieces))
	for k, piece := range p.Pieces {
		q.Pieces[k] = piece.With(anew)
	}
	q.Calls = slices.Clone(p.Calls)
	for k := range q.Calls {
		q.Calls[k].Vals = anew(q.Calls[k].Vals)
	}
	if found.Errors() {
		return nil, found[:1]
	}
	return &q, append(found, unmoved(p, body)...)
}

func hasAt(g expr.Graded, i int) bool {
	_, has := g.At(i)
	return has && i < len(g.Vals)
}

// ownBodies are the bodies of a pattern with a maker's own measurements in size i, a range being its one length.
func ownBodies(p *schematic.Pattern, i int, body []Own) ([]schematic.Written, finding.List) {
	var found finding.List
	fail := func(fix, format string, args ...any) {
		found = append(found, finding.Finding{Kind: "alter/body", Severity: finding.Error, Pos: p.SizesPos, Message: fmt.Sprintf(format, args...), Fix: fix})
	}
	if len(p.Grading) == 0 {
		fail("alter it by lengths (`--body`, `--sleeve`), or take a piece of another size", "the pattern has no grading: its counts are not worked out of a body")
		return nil, found
	}
	out := slices.Clone(p.Bodies)
	for _, own := range body {
		k := slices.IndexFunc(out, func(b schematic.Written) bool { return expr.Key(b.Name) == expr.Key(own.Name) })
		if k < 0 {
			var names []string
			for _, b := range out {
				names = append(names, b.Name)
			}
			fail("it has: "+strings.Join(names, ", "), "the pattern has no body measurement called %q", own.Name)
			continue
		}
		b := &out[k]
		b.Low = withAt(b.Low, i, p.Sizes.Len(), own.Length)
		if !b.High.IsZero() {
			b.High = withAt(b.High, i, p.Sizes.Len(), own.Length)
		}
		b.Other = expr.Graded{}
	}
	return out, found
}

// between is where a maker stands among the sizes of a pattern by the first of its body measurements, by which sizes
// are made: past the size low by so much of the way to the next.
type between struct {
	by   schematic.Written
	own  []Own
	low  int
	part units.Num
	out  string // in words, if she is beyond all sizes
}

// placed is where a maker's own body stands among the sizes; false if she does not say the measurement that sizes are
// made by, or the pattern's own do not go up in it.
func placed(p *schematic.Pattern, own []Own) (w between, ok bool) {
	if len(p.Bodies) == 0 {
		return w, false
	}
	w = between{by: p.Bodies[0], own: own}
	k := slices.IndexFunc(own, func(o Own) bool { return expr.Key(o.Name) == expr.Key(w.by.Name) })
	if k < 0 {
		return w, false
	}
	high := w.by.High
	if high.IsZero() {
		high = w.by.Low
	}
	n := p.Sizes.Len()
	of := make([]units.Num, n)
	for i := range of {
		v, has := high.At(i)
		if !has || i > 0 && !of[i-1].Less(v) {
			return w, false
		}
		of[i] = v
	}
	mine := own[k].Length
	switch {
	case mine.Less(of[0]):
		w.out = "is less than that of the smallest size"
	case of[n-1].Less(mine):
		w.low, w.out = n-1, "is more than that of the largest size"
	default:
		for w.low < n-1 && !mine.Less(of[w.low+1]) {
			w.low++
		}
		if w.low < n-1 {
			w.part = mine.Sub(of[w.low]).Div(of[w.low+1].Sub(of[w.low]))
		}
	}
	return w, true
}

// at is a value where the maker stands, and whether there is one that differs from that of size i.
func (w between) at(g expr.Graded, i int) (units.Num, bool) {
	a, has := g.At(w.low)
	was, had := g.At(i)
	if g.IsZero() || !has || !had {
		return was, false
	}
	if w.part.Sign() > 0 {
		b, has := g.At(w.low + 1)
		if !has {
			return was, false
		}
		a = a.Add(b.Sub(a).Mul(w.part))
	}
	return a, !a.Eq(was)
}

// follow has all that the grading takes of a size, and the maker does not say herself, follow her own measurement in
// size i, as it does from size to size: edges that are joined stay as long as each other. It tells what does.
func (w between) follow(q *schematic.Pattern, i int) finding.List {
	told := append(w.bodies(q, i), w.lists(q, i)...)
	if len(told) == 0 {
		return nil
	}
	where := "as in size " + q.Sizes.Names[w.low]
	switch {
	case w.out != "":
		where = fmt.Sprintf("which %s: as in size %s", w.out, q.Sizes.Names[w.low])
	case w.part.Sign() > 0:
		where = fmt.Sprintf("which lies between %s and %s", q.Sizes.Names[w.low], q.Sizes.Names[w.low+1])
	}
	return finding.List{{Kind: "alter/body", Severity: finding.Note, Pos: q.SizesPos,
		Message: fmt.Sprintf("measurements that you do not give follow your %s, %s: %s", expr.Key(w.by.Name), where, strings.Join(told, ", ")),
		Fix:     "give your own, where they differ"}}
}

// bodies has body measurements that the grading asks for follow, and gives them in words.
func (w between) bodies(q *schematic.Pattern, i int) []string {
	var told []string
	n := q.Sizes.Len()
	for k := range q.Bodies {
		b := &q.Bodies[k]
		if slices.ContainsFunc(w.own, func(o Own) bool { return expr.Key(o.Name) == expr.Key(b.Name) }) ||
			!slices.ContainsFunc(q.Grading, func(g schematic.Grading) bool { return asks(&g, b.Name) }) {
			continue
		}
		low, moved := w.at(b.Low, i)
		high, also := w.at(b.High, i)
		if moved {
			b.Low = withAt(b.Low, i, n, low)
		}
		if also {
			b.High, low = withAt(b.High, i, n, high), high
		}
		if moved || also {
			told = append(told, b.Name+" "+both(q, low))
		}
	}
	return told
}

// lists has numbers that the grading lists by size follow, counts in whole ones, and gives them in words.
func (w between) lists(q *schematic.Pattern, i int) []string {
	var told []string
	q.Grading = slices.Clone(q.Grading)
	for k := range q.Grading {
		g := &q.Grading[k]
		if g.Given == nil {
			continue
		}
		v, moved := w.at(g.Given.Vals, i)
		if !moved {
			continue
		}
		text := both(q, v)
		if g.Given.Dim != expr.LengthOf {
			v = units.Int(int64(v.Round()))
			text = v.String()
		}
		given := *g.Given
		given.Vals = withAt(given.Vals, i, q.Sizes.Len(), v)
		g.Given = &given
		told = append(told, g.Name+" "+text)
	}
	return told
}

// withAt is g, one for each of n sizes, with another length in size i.
func withAt(g expr.Graded, i, n int, to units.Num) expr.Graded {
	out := expr.Graded{Vals: make([]units.Num, n), Has: make([]bool, n)}
	for k := range n {
		out.Vals[k], out.Has[k] = g.At(k)
	}
	out.Vals[i], out.Has[i] = to, true
	return out
}

// unmoved tells of measurements that change nothing, since nothing of the grading is worked out of them.
func unmoved(p *schematic.Pattern, body []Own) finding.List {
	var out finding.List
	for _, own := range body {
		if slices.ContainsFunc(p.Grading, func(g schematic.Grading) bool { return asks(&g, own.Name) }) {
			continue
		}
		out = append(out, finding.Finding{Kind: "alter/body", Severity: finding.Note, Pos: p.SizesPos,
			Message: fmt.Sprintf("your %s changes nothing: the grading does not use it", own.Name)})
	}
	return out
}

// asks reports whether a line of the grading calls a body measurement, by its upper or its lower end.
func asks(g *schematic.Grading, body string) bool {
	return slices.ContainsFunc(grade.Sums(g), func(s schematic.GradedSum) bool {
		return s.Sum != nil && slices.ContainsFunc(s.Sum.Names(), func(n string) bool {
			return expr.Key(n) == expr.Key(body) || expr.Key(n) == "low "+expr.Key(body)
		})
	})
}
