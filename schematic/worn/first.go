package worn

import (
	"slices"
	"strings"

	"flatwright/schematic"
)

// firstRows are the rows, as wide from their beginning to their end, that a flat piece has before it is cut into panels: each panel has its
// share of them.
type firstRows struct {
	of     *panel
	bases  []float64 // how wide the panels begin, in the order of their views
	lo, hi pt
}

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

// under lets panel k begin with its share of the first rows: in the middle of where it begins or, at an outer edge, flush with it, since a rib
// draws in where it is free to, and not along a band.
func (f *firstRows) under(p *panel, k int) {
	if f == nil {
		return
	}
	start, _ := ends(p)
	l, r := levelSpan(p, start)
	total := 0.0
	for _, w := range f.bases {
		total += w
	}
	in := (r - l) * (1 - (f.hi.X-f.lo.X)/total) // how much less wide they are
	y := f.lo.Y
	if downwards(p.made) {
		y = f.hi.Y
	} else { // a right-side row begins at the right
		k = len(f.bases) - 1 - k
	}
	base, left, right := f.sides(y)
	near, far := pt{X: l + in/2, Y: y}, pt{X: r - in/2, Y: y}
	switch {
	case k == 0:
		near.X, far.X, right = l, r-in, side{name: "line"}
	case k == len(f.bases)-1:
		near.X, far.X, left = l+in, r, side{name: "line"}
	default:
		left, right = side{name: "line"}, side{name: "line"}
	}
	if downwards(p.made) { // the loop runs along it from the right
		near, far, left, right = far, near, right, left
	}
	var out []side
	for i, s := range p.loop {
		if !levelAt(p, i, start) {
			out = append(out, s)
			continue
		}
		left.a, base.a, right.a = pt{X: near.X, Y: start}, near, far
		base.keys = append(base.keys, notBends(s.keys)...)
		if dist(s.a, left.a) > close {
			out = append(out, side{a: s.a})
		}
		out = append(out, left, base, right)
		if up := (pt{X: far.X, Y: start}); dist(up, p.loop[(i+1)%len(p.loop)].a) > close {
			out = append(out, side{a: up})
		}
	}
	p.loop = out
	for _, h := range f.of.ribs {
		h.Poly = []pt{{X: near.X, Y: start}, {X: far.X, Y: start}, far, near}
		p.ribs = append(slices.Clone(p.ribs), h)
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
