package worn

import (
	"slices"
	"strings"

	"flatwright/schematic"
)

// firstRows are the rows, as wide from their beginning to their end, that a flat piece has before it is cut into panels, or folded round the
// body: each panel has its share of them.
type firstRows struct {
	of     *panel
	bases  []float64 // how wide the panels begin
	lo, hi pt
	last   bool // they are its last
}

// level is the height at which a panel meets the rows.
func (f *firstRows) level(p *panel) float64 {
	start, end := ends(p)
	if f.last {
		return end
	}
	return start
}

// above reports whether the rows lie above what they are rows of.
func (f *firstRows) above(p *panel) bool { return downwards(p.made) != f.last }

// firstRows are those of a piece, or nil.
func (a *assembly) firstRows(m *schematic.Made) *firstRows {
	n := len(m.Views)
	if m.Round || n < 3 || m.Views[0].Panel || slices.ContainsFunc(m.Views[1:], func(v schematic.View) bool { return !v.Panel }) {
		return nil
	}
	of := newPanel(m, 0, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] })
	if of == nil {
		return nil
	}
	f := &firstRows{of: of}
	f.lo, f.hi = box(of.loop)
	start, _ := ends(of)
	f.lo.X, f.hi.X = levelSpan(of, start)
	if absf(area(of.points())-(f.hi.X-f.lo.X)*(f.hi.Y-f.lo.Y)) > 1 {
		return nil
	}
	for i := 1; i < n; i++ {
		p := newPanel(m, i, func(*schematic.Edge) []string { return nil })
		if p == nil {
			return nil
		}
		start, _ := ends(p)
		l, r := levelSpan(p, start)
		f.bases = append(f.bases, r-l)
	}
	return f
}

// drawnIn is a flat piece without the rib with which it begins, or ends, if that draws in, and those rows; or all of it, and nil.
func (p *panel) drawnIn(last bool) (rest *panel, f *firstRows) {
	start := (&firstRows{last: last}).level(p)
	l, r := levelSpan(p, start)
	if !slices.ContainsFunc(p.ribs, func(h schematic.Hatch) bool { return touches(h, start) }) {
		return p, nil
	}
	steps := map[float64]int{} // heights at which the sides step
	for i, s := range p.loop {
		z := p.loop[(i+1)%len(p.loop)].a
		if levelAt(p, i, start) || !levelAt(p, i, s.a.Y) {
			continue
		}
		for _, x := range []float64{l, r} {
			if absf(s.a.X-x) < close || absf(z.X-x) < close {
				steps[s.a.Y]++
			}
		}
	}
	for y, n := range steps {
		if n != 2 || !slices.ContainsFunc(p.ribs, func(h schematic.Hatch) bool { return touches(h, start) && touches(h, y) }) {
			continue
		}
		up := y - start
		key := bends + "first rows of " + p.name
		of := p.cut(func(q pt) float64 { return (y - q.Y) * up }, key)
		rest := p.cut(func(q pt) float64 { return (q.Y - y) * up }, key)
		if of == nil || rest == nil || area(rest.points()) < 1 || absf(area(of.points())-(r-l)*absf(up)) > 1 {
			continue
		}
		return rest, &firstRows{of: of, lo: pt{X: l, Y: min(y, start)}, hi: pt{X: r, Y: max(y, start)}, last: last}
	}
	return p, nil
}

// underView lets the panel of a view after that of the rows begin with its share of them, if there are any.
func (f *firstRows) underView(p *panel, view int) {
	switch {
	case f == nil:
	case downwards(p.made):
		f.under(p, view-1)
	default: // a right-side row begins at the right
		f.under(p, len(f.bases)-view)
	}
}

// share gives panels, from the left, their shares of the rows.
func (f *firstRows) share(row []*panel) {
	if f == nil {
		return
	}
	for _, p := range row {
		start := f.level(p)
		l, r := levelSpan(p, start)
		f.bases = append(f.bases, r-l)
	}
	for k, p := range row {
		f.under(p, k)
	}
}

// touches reports whether a ground of ribs reaches to a height.
func touches(h schematic.Hatch, y float64) bool {
	return slices.ContainsFunc(h.Poly, func(q pt) bool { return absf(q.Y-y) < close })
}

// under lets panel k, from the left, begin with its share of the first rows: in the middle of where it begins or, at an outer edge, flush with it, since a rib
// draws in where it is free to, and not along a band.
func (f *firstRows) under(p *panel, k int) {
	start := f.level(p)
	l, r := levelSpan(p, start)
	total := 0.0
	for _, w := range f.bases {
		total += w
	}
	in := (total - (f.hi.X - f.lo.X)) / float64(len(f.bases)-1) // at the two sides of a cut together
	y := f.lo.Y
	if f.above(p) {
		y = f.hi.Y
	}
	base, left, right := f.sides(y)
	near, far := pt{X: l + in/2, Y: y}, pt{X: r - in/2, Y: y}
	first, last := k == 0, k == len(f.bases)-1
	switch {
	case first:
		near.X = l
	case last:
		far.X = r
	}
	if f.above(p) { // the loop runs along it from the right
		near, far, left, right, first, last = far, near, right, left, last, first
	}
	n := len(p.loop)
	begins := func(i int) bool { return levelAt(p, i%n, start) && !levelAt(p, (i+n-1)%n, start) }
	at := 0
	for !begins(at) {
		at++
	}
	goesOn := at
	for levelAt(p, goesOn%n, start) {
		base.keys = append(base.keys, notBends(p.loop[goesOn%n].keys)...)
		goesOn++
	}
	if !first { // it goes on what is beside it
		left = p.loop[(at+n-1)%n]
	}
	if !last {
		right = p.loop[goesOn%n]
	}
	left.a, base.a, right.a = pt{X: near.X, Y: start}, near, far
	out := []side{left, base, right}
	if a := p.loop[at].a; dist(a, left.a) > close {
		out = append([]side{{a: a}}, out...)
	}
	if up := (pt{X: far.X, Y: start}); dist(up, p.loop[goesOn%n].a) > close {
		out = append(out, side{a: up})
	}
	for i := goesOn; i < at+n; i++ {
		out = append(out, p.loop[i%n])
	}
	p.loop = out
	for _, h := range f.of.ribs {
		h.Poly = []pt{{X: near.X, Y: start}, {X: far.X, Y: start}, far, near}
		p.ribs = append(slices.Clone(p.ribs), h)
		p.lines = append(slices.Clone(p.lines), schematic.Line{Kind: schematic.LineChange, A: h.Poly[0], B: h.Poly[1]})
	}
}

// notBends are the keys without those of bands.
func notBends(keys []string) []string {
	return slices.DeleteFunc(slices.Clone(keys), func(k string) bool { return strings.HasPrefix(k, bends) })
}

// sides are those of the rows: where they begin, at y, and at the left and the right.
func (f *firstRows) sides(y float64) (base, left, right side) {
	for i, s := range f.of.loop {
		z := f.of.loop[(i+1)%len(f.of.loop)].a
		switch {
		case absf(s.a.Y-y) < close && absf(z.Y-y) < close:
			base = s
		case absf(s.a.X-f.lo.X) < close && absf(z.X-f.lo.X) < close:
			left = s
		case absf(s.a.X-f.hi.X) < close && absf(z.X-f.hi.X) < close:
			right = s
		}
	}
	return base, left, right
}
