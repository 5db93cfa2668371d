package worn

import (
	"math"
	"slices"

	"flatwright/schematic"
)

// saddled takes the strap off a sleeve that goes on over the shoulder: its upright sides are sewn to the shoulders, and what
// is below them to the armholes, so that the two lie at an angle. Nil if the sleeve has none.
func (a *assembly) saddled(m *schematic.Made, p *panel) (sleeve, strap *panel) {
	_, end := ends(p)
	lo, hi := box(p.loop)
	if m.Kind != schematic.KindSleeve || end != hi.Y {
		return nil, nil
	}
	y := math.Inf(1) // where the strap begins
	n := 0
	for i, s := range p.loop {
		z := p.loop[(i+1)%len(p.loop)].a
		if absf(s.a.X-z.X) < close && absf(max(s.a.Y, z.Y)-hi.Y) < close && len(s.keys) > 0 {
			y = min(y, s.a.Y, z.Y)
			n++
		}
	}
	below := slices.ContainsFunc(p.loop, func(s side) bool { return len(keysOf([]side{s})) > 0 && s.a.Y < y-close && s.name == "cap" })
	if n == 0 || y <= lo.Y+close || hi.Y-y < onEdge || !below { // a cap that ends with bind-offs has a row or two upright
		return nil, nil
	}
	sleeve = p.cut(func(q pt) float64 { return y - q.Y }, cutEdge)
	strap = p.cut(func(q pt) float64 { return q.Y - y }, cutEdge)
	if sleeve == nil || strap == nil {
		return nil, nil
	}
	for _, q := range []*panel{sleeve, strap} {
		for i := range q.loop {
			if s := &q.loop[i]; slices.Contains(s.keys, cutEdge) {
				s.name, s.keys, s.fold = cutEdge, nil, false
			}
		}
	}
	strap.strap = true
	return sleeve, strap
}

// cutEdge is the name of the way along which a sleeve and its strap go on in each other.
const cutEdge = "end of the strap"

// inwards reports whether the end at which a strap goes on in its sleeve lies farther from the middle than its other.
func (p *panel) inwards(run []int, c *chain) bool {
	n := len(p.loop)
	in, out := absf(c.start().X), absf(c.end().X) // the run's end meets the chain's start
	if p.loop[(run[len(run)-1]+1)%n].name == cutEdge {
		in, out = out, in
	}
	return in < out
}

// bent lets the outer end of every strap go on in its sleeve: the fabric bends there.
func (a *assembly) bent() {
	for _, strap := range a.placed {
		if !strap.strap {
			continue
		}
		to := strap.outer()
		best, at := mostDrawn, (*pt)(nil)
		for _, q := range a.placed {
			if q.made != strap.made || q.strap {
				continue
			}
			if c := q.outer(); c != nil && to != nil && dist(*c, *to) < best {
				best, at = dist(*c, *to), c
			}
		}
		if at != nil {
			*at = *to
		}
	}
}

// outer is the end of the cut between a sleeve and its strap that lies farthest from what they hang on, as drawn.
func (p *panel) outer() *pt {
	n := len(p.drawn)
	for i := range p.drawn {
		if p.drawn[i].name != cutEdge {
			continue
		}
		from := func(q pt) float64 { return distTo(p.seam[:], q) }
		a, z := &p.drawn[i].a, &p.drawn[(i+1)%n].a
		if from(*a) > from(*z) {
			return a
		}
		return z
	}
	return nil
}
