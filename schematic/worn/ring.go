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
	opens := p.opensInFront()
	if !opens && (len(left) != 1 || left[0] == "" || !slices.Equal(left, right)) {
		return nil
	}
	q := *p
	half := func(a pt) pt { return pt{X: mid + (a.X-mid)/2, Y: a.Y} }
	q.loop, q.lines, q.ribs, q.marks = slices.Clone(p.loop), nil, nil, nil
	for i := range q.loop {
		s := &q.loop[i]
		s.a = half(s.a)
		if (opens || joinOf(*s) == left[0]) && !levelAt(&q, i, lo.Y) && !levelAt(&q, i, hi.Y) {
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
	if opens {
		q.flare()
		q.lines = append(q.lines, schematic.Line{Kind: schematic.LineEdge, A: pt{X: mid, Y: lo.Y}, B: pt{X: mid, Y: hi.Y}})
	}
	q.halved, q.closed, q.meets = true, true, opens
	return &q
}

// flare draws straight, from the neck to where it is as wide as below, each side of a piece that widens in rounds of increases: the fabric
// falls so.
func (p *panel) flare() {
	lo, hi := box(p.loop)
	wide := func(q pt) bool { return absf(q.X-lo.X) < close || absf(q.X-hi.X) < close }
	p.loop = slices.DeleteFunc(p.loop, func(s side) bool { return s.fold && s.a.Y > lo.Y+close && s.a.Y < hi.Y-close && !wide(s.a) })
}

// opensInFront reports whether a flat piece from the neck, such as a cape, meets in front: its sides are called so, and nothing but a band is worked or sewn to them.
func (p *panel) opensInFront() bool {
	lo, hi := box(p.loop)
	if !downwards(p.made) || p.made.Kind != schematic.KindPoncho && p.made.Kind != schematic.KindBody {
		return false
	}
	n := 0
	for i, s := range p.loop {
		switch {
		case levelAt(p, i, lo.Y), levelAt(p, i, hi.Y):
		case len(notBends(s.keys)) > 0 || !strings.Contains(strings.ToLower(s.name), "front"):
			return false
		default:
			n++
		}
	}
	return n > 1
}

// joinOf is the key of the join that a side takes part in, if it is but one.
func joinOf(s side) string {
	if len(s.keys) == 1 && strings.HasPrefix(s.keys[0], "join ") {
		return s.keys[0]
	}
	return ""
}

// closeInFront draws the bands along the sides of a piece that meets in front, one over the other, on its ring; no other edge takes them then.
func (a *assembly) closeInFront(p, ring *panel) {
	if !p.opensInFront() {
		return
	}
	lo, hi := box(p.loop)
	along := func(s *strip, level bool) bool {
		for i, e := range p.loop {
			if (levelAt(p, i, lo.Y) || levelAt(p, i, hi.Y)) == level && slices.Contains(e.keys, s.key) {
				return true
			}
		}
		return false
	}
	drawn := false
	a.strips = slices.DeleteFunc(a.strips, func(s *strip) bool {
		if !along(s, false) || along(s, true) {
			return false
		}
		if !drawn {
			ring.bandInFront(s, ring.middle(), lo.Y, hi.Y)
		}
		drawn = true
		return true
	})
}
