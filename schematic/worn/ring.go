package worn

import (
	"slices"
	"strings"

	"flatwright/schematic"
)

// ring closes a flat piece that is sewn to itself along both of its sides, such as a skirt with one seam: it lies flat as a round does, at half of
// its width, with the seam behind. Nil if it is none.
func (p *panel) ring() *panel {
	if p.face != either || p.made.Round || p.made.Kind == schematic.KindSleeve {
		return nil
	}
	lo, hi := box(p.loop)
	mid := p.middle()
	var left, right []string
	for i, s := range p.loop {
		z := p.loop[(i+1)%len(p.loop)].a
		switch {
		case levelAt(p, i, lo.Y), levelAt(p, i, hi.Y):
			continue
		case max(s.a.X, z.X) < mid:
			left = append(left, joinOf(s))
		case min(s.a.X, z.X) > mid:
			right = append(right, joinOf(s))
		default:
			return nil
		}
	}
	left, right = slices.Compact(left), slices.Compact(right)
	if len(left) != 1 || left[0] == "" || !slices.Equal(left, right) {
		return nil
	}
	q := *p
	half := func(a pt) pt { return pt{X: mid + (a.X-mid)/2, Y: a.Y} }
	q.loop, q.lines, q.ribs, q.marks = slices.Clone(p.loop), nil, nil, nil
	for i := range q.loop {
		s := &q.loop[i]
		s.a = half(s.a)
		if joinOf(*s) == left[0] {
			s.fold, s.keys, s.name = true, []string{"fold of " + p.name}, "fold"
		}
	}
	for _, l := range p.lines {
		l.A, l.B = half(l.A), half(l.B)
		q.lines = append(q.lines, l)
	}
	for _, r := range p.ribs {
		r.Poly = slices.Clone(r.Poly)
		for i, a := range r.Poly {
			r.Poly[i] = half(a)
		}
		q.ribs = append(q.ribs, r)
	}
	q.halved, q.closed = true, true
	return &q
}

// joinOf is the key of the join that a side takes part in, if it is but one.
func joinOf(s side) string {
	if len(s.keys) == 1 && strings.HasPrefix(s.keys[0], "join ") {
		return s.keys[0]
	}
	return ""
}
