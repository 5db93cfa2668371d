package worn

import (
	"cmp"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// lengthwise is the lower half of a piece of which stretches of the lower edge are sewn to those of the upper edge above them, as
// both sleeves of a shrug are: it is folded between them, along its whole length, and the fold lies on the shoulders. Nil if nothing of it is sewn so.
func (a *assembly) lengthwise(m *schematic.Made, p *panel) *panel {
	lo, hi := box(p.loop)
	y := (lo.Y + hi.Y) / 2
	n := 0
	for i := range a.g.Pattern.Joins {
		lower, upper := a.joinWithin(&a.g.Pattern.Joins[i], m)
		if len(lower) == 0 || len(upper) == 0 {
			continue
		}
		for _, e := range lower {
			ll, lh := bounds([][]pt{e.Path})
			if !slices.ContainsFunc(upper, func(o schematic.Edge) bool {
				ul, uh := bounds([][]pt{o.Path})
				return absf(ll.X-ul.X) < 1 && absf(lh.X-uh.X) < 1 && absf(ll.Y+uh.Y-2*y) < 1 && min(lh.Y, uh.Y) < max(ll.Y, ul.Y)+1
			}) {
				return nil
			}
		}
		n++
	}
	if n == 0 {
		return nil
	}
	h := p.cut(func(q pt) float64 { return y - q.Y }, "fold of "+m.Name)
	over := p.cut(func(q pt) float64 { return q.Y - y }, "fold of "+m.Name)
	if h == nil || over == nil {
		return nil
	}
	if folded := over.points(); !alikeOver(h.points(), folded, y) {
		if crossesItself(folded) {
			a.hollow = append(a.hollow, hollow{made: m, why: "its fronts, folded over its back, lie on each other"})
			return nil
		}
		h = over.upsideDown(p.middle(), y) // its other half lies in front, the other way up
	}
	h.halved, h.lengthwise = true, true
	return h
}

// alikeOver reports whether two halves of a piece cover each other when it is folded at a height.
func alikeOver(lower, upper []pt, y float64) bool {
	var on []pt
	for _, q := range slices.Backward(upper) {
		on = append(on, pt{X: q.X, Y: 2*y - q.Y})
	}
	return common(lower, on) > 0.97*max(area(lower), area(on))
}

// crossesItself reports whether the way round a loop crosses itself.
func crossesItself(loop []pt) bool {
	n := len(loop)
	beside := func(a, b, c pt) float64 { return cross(sub(b, a), sub(c, a)) }
	for i := range n {
		a, b := loop[i], loop[(i+1)%n]
		for k := i + 2; k < n; k++ {
			c, d := loop[k], loop[(k+1)%n]
			if beside(a, b, c)*beside(a, b, d) < -close && beside(c, d, a)*beside(c, d, b) < -close {
				return true
			}
		}
	}
	return false
}

// upsideDown is the panel turned by half a turn about a place.
func (p *panel) upsideDown(x, y float64) *panel {
	m := motion{cos: -1, by: pt{X: 2 * x, Y: 2 * y}}
	q := *p
	q.loop, q.lines, q.ribs, q.marks = slices.Clone(p.loop), slices.Clone(p.lines), slices.Clone(p.ribs), slices.Clone(p.marks)
	for i := range q.loop {
		q.loop[i].a = m.at(q.loop[i].a)
	}
	for i := range q.lines {
		q.lines[i].A, q.lines[i].B = m.at(q.lines[i].A), m.at(q.lines[i].B)
	}
	for i := range q.ribs {
		r := &q.ribs[i]
		r.Poly, r.Dir = slices.Clone(r.Poly), m.turn(r.Dir)
		for k := range r.Poly {
			r.Poly[k] = m.at(r.Poly[k])
		}
	}
	for i := range q.marks {
		q.marks[i].At = m.at(q.marks[i].At)
	}
	return &q
}

// joinWithin are the edges of a piece that a join sews to others of it; none if it binds anything else, or does so at a fold or in places.
func (a *assembly) joinWithin(j *schematic.Join, m *schematic.Made) (own, other []schematic.Edge) {
	if j.How == schematic.AtFold || j.How == schematic.InPlaces || len(j.Sew) != 1 || len(j.Into) != 1 {
		return nil, nil
	}
	of, own := a.g.EdgesOf(j.Sew[0])
	with, other := a.g.EdgesOf(j.Into[0])
	if of != m || with != m {
		return nil, nil
	}
	return own, other
}

// sewnToItself reports whether a piece is sewn to itself otherwise than along its sides, in the mirror of its middle, as a bonnet's crown
// is: it does not lie flat.
func (a *assembly) sewnToItself(m *schematic.Made, p *panel) bool {
	for i := range a.g.Pattern.Joins {
		own, other := a.joinWithin(&a.g.Pattern.Joins[i], m)
		if len(own) != 1 || len(other) != 1 {
			continue
		}
		lo, hi := bounds([][]pt{own[0].Path})
		l2, h2 := bounds([][]pt{other[0].Path})
		x := 2 * p.middle()
		upright := hi.Y-lo.Y > hi.X-lo.X
		if other := h2.Y-l2.Y > h2.X-l2.X; upright != other && absf(lo.X+h2.X-x)+absf(hi.X+l2.X-x) > 1 {
			return true
		}
	}
	return false
}

// lengthwise measures what is folded along its whole length: from end to end, an end around, the stretch that is sewn and that which is
// open, and how deep it lies.
func (tk *taker) lengthwise(p *panel) {
	lo, hi := box(p.drawn)
	if tk.acrossFold(p) {
		return
	}
	var seam, other []pt // from the left
	end := pt{X: lo.X, Y: hi.Y}
	for i, s := range p.drawn {
		z := p.drawn[(i+1)%len(p.drawn)].a
		switch {
		case s.fold:
		case absf(s.a.X-lo.X) < close && absf(z.X-lo.X) < close:
			end.Y = min(end.Y, s.a.Y, z.Y)
		case len(s.keys) > 0 && min(s.a.X, z.X) < p.mid():
			seam = append(seam, s.a, z)
		case len(s.keys) > 0:
			other = append(other, s.a, z)
		}
	}
	byX := func(a, b pt) int { return cmp.Compare(a.X, b.X) }
	if name := strings.ToLower(p.made.Name); len(other) == 0 && len(seam) > 0 && slices.MaxFunc(seam, byX).X > hi.X-1 { // a ring, such as a headband
		tk.take(name+" width", pt{X: lo.X, Y: hi.Y}, hi, schematic.Horizontal, false, units.Num{})
		tk.take(name, lo, pt{X: lo.X, Y: hi.Y}, schematic.Vertical, true, units.Num{})
		return
	}
	tk.take("cuff to cuff", pt{X: lo.X, Y: hi.Y}, pt{X: hi.X, Y: hi.Y}, schematic.Horizontal, false, units.Num{}) // along the fold
	var open []pt
	if len(seam) > 0 && len(other) > 0 { // between the two
		open = []pt{slices.MaxFunc(seam, byX), slices.MinFunc(other, byX)}
	}
	tk.take("cuff", pt{X: lo.X, Y: hi.Y}, end, schematic.Vertical, true, units.Num{})
	for _, w := range []struct {
		name string
		way  []pt
	}{{"sleeve length", seam}, {"opening", open}} {
		if len(w.way) > 0 {
			slices.SortFunc(w.way, byX)
			tk.take(w.name, w.way[0], w.way[len(w.way)-1], schematic.Horizontal, false, units.Num{})
		}
	}
	tk.take("depth", pt{X: hi.X, Y: lo.Y}, pt{X: hi.X, Y: hi.Y}, schematic.Vertical, false, units.Num{})
}

// acrossFold measures what is sewn at its sides, up to its armholes, such as a cocoon: false if its sides are not.
func (tk *taker) acrossFold(p *panel) bool {
	lo, hi := box(p.drawn)
	seam := lo.Y
	for i, s := range p.drawn {
		if z := p.drawn[(i+1)%len(p.drawn)].a; joinOf(s) != "" && absf(s.a.X-hi.X) < close && absf(z.X-hi.X) < close {
			seam = max(seam, s.a.Y, z.Y)
		}
	}
	if seam < lo.Y+close {
		return false
	}
	left, right := lo.X, hi.X
	for _, b := range tk.a.placed { // with its cuffs
		l, h := box(b.drawn)
		left, right = min(left, l.X), max(right, h.X)
	}
	if right-left > hi.X-lo.X+1 {
		tk.take("cuff to cuff", pt{X: left, Y: hi.Y}, pt{X: right, Y: hi.Y}, schematic.Horizontal, false, units.Num{})
		tk.take("cuff length", hi, pt{X: right, Y: hi.Y}, schematic.Horizontal, false, units.Num{})
	}
	tk.take("width", lo, pt{X: hi.X, Y: lo.Y}, schematic.Horizontal, false, units.Num{})
	tk.take("side seam", pt{X: hi.X, Y: lo.Y}, pt{X: hi.X, Y: seam}, schematic.Vertical, false, units.Num{})
	tk.take("armhole depth", pt{X: hi.X, Y: seam}, hi, schematic.Vertical, false, units.Num{})
	tk.take("length", lo, pt{X: lo.X, Y: hi.Y}, schematic.Vertical, false, units.Num{})
	return true
}
