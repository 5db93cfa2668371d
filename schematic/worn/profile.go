package worn

import (
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// profile makes two panels of a sock, as it lies on its side: the leg with half of the heel below its back half, and the foot,
// which is bonded to all of their lower edge. False if the piece has no heel of a kind that is known.
func (a *assembly) profile(m *schematic.Made) bool {
	var leg, foot *panel
	switch {
	case len(m.Views) == 3 && !slices.ContainsFunc(m.Views, func(v schematic.View) bool { return !v.Half }):
		leg, foot = a.flapHeel(m)
	case len(m.Views) == 1 && m.Views[0].Half:
		leg, foot = a.shortRowHeel(m)
	}
	if leg == nil || foot == nil {
		return false
	}
	key := "heel of " + m.Name
	for _, p := range []*panel{leg, foot} {
		lo, hi := box(p.loop)
		for i := range p.loop {
			s := &p.loop[i]
			if s.name == heelEdge || p == foot && levelAt(p, i, hi.Y) {
				s.name, s.keys, s.fold = heelEdge, []string{key}, false
				s.blind = p == leg && i > 0 && s.a.X >= (lo.X+hi.X)/2-close && absf(s.a.Y-leg.heel.Y) < close
			}
		}
	}
	a.add(leg, m.Make)
	a.add(foot, m.Make).share = true
	return true
}

// heelEdge is the name of the way along which leg and foot of a sock meet.
const heelEdge = "heel"

// flapHeel is a sock of which half of the round, the heel, is worked on by itself, and then joined into a round with the other half.
func (a *assembly) flapHeel(m *schematic.Made) (leg, foot *panel) {
	view := func(i int) *panel {
		return newPanel(m, i, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] })
	}
	back, front, foot := view(0), view(1), view(2)
	if back == nil || front == nil || foot == nil {
		return nil, nil
	}
	bl, _ := box(back.loop)
	fl, fh := box(front.loop)
	if bl.Y > fl.Y {
		back, fl.Y, bl.Y = front, bl.Y, fl.Y
	}
	if fl.Y-bl.Y < close {
		return nil, nil
	}
	leg = back.half(back.middle(), false, "fold of "+m.Name)
	if leg == nil {
		return nil, nil
	}
	leg.halved = false
	// The front half of the leg goes on where the back half ends.
	lo, hi := box(leg.loop)
	wide := (fh.X - fl.X) / 2
	var loop []side
	n := len(leg.loop)
	for i, s := range leg.loop {
		z := leg.loop[(i+1)%n].a
		switch above := min(s.a.Y, z.Y) > fl.Y-close; {
		case above && s.a.Y < z.Y && absf(s.a.X-hi.X) < close: // the side of the leg
			loop = append(loop, side{a: pt{X: hi.X, Y: fl.Y}, name: heelEdge}, side{a: pt{X: hi.X + wide, Y: fl.Y}, fold: true})
		case above && absf(s.a.Y-z.Y) < close && absf(s.a.X-hi.X) < close: // its upper edge
			s.a.X += wide
			loop = append(loop, s)
		case absf(s.a.X-lo.X) < close && absf(z.X-lo.X) < close:
			loop = append(loop, s)
		case above:
			loop = append(loop, s)
		default:
			s.name = heelEdge
			loop = append(loop, s)
		}
	}
	leg.loop, leg.heel = loop, pt{X: lo.X, Y: fl.Y}
	leg.widen(hi.X, fl.Y, wide)
	return leg, foot
}

// widen lets the ribs and lines of a panel that end at an upright, above a height, go on by so much.
func (p *panel) widen(x, above, by float64) {
	on := func(q pt) pt {
		if absf(q.X-x) < close && q.Y > above-close {
			q.X += by
		}
		return q
	}
	for i := range p.lines {
		if l := &p.lines[i]; absf(l.A.X-l.B.X) > close {
			l.A, l.B = on(l.A), on(l.B)
		}
	}
	for i := range p.ribs {
		poly := slices.Clone(p.ribs[i].Poly)
		for k := range poly {
			poly[k] = on(poly[k])
		}
		p.ribs[i].Poly = poly
	}
}

// shortRowHeel is a sock whose heel is short rows over a part of a round.
func (a *assembly) shortRowHeel(m *schematic.Made) (leg, foot *panel) {
	var rows []schematic.Line
	for _, l := range m.Views[0].Lines {
		if l.Kind == schematic.LineBehind {
			rows = append(rows, l)
		}
	}
	if len(rows) != 3 { // of more runs than one nobody says which is the heel
		return nil, nil
	}
	p := newPanel(m, 0, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] })
	y, high := rows[0].A.Y, absf(rows[0].B.Y-rows[0].A.Y)
	key := "cut of " + m.Name
	leg = p.cut(func(q pt) float64 { return q.Y - y }, key)
	foot = p.cut(func(q pt) float64 { return y - q.Y }, key)
	if leg == nil || foot == nil {
		return nil, nil
	}
	lo, _ := box(leg.loop)
	middle := p.middle()
	from, to := absf(rows[0].A.X-middle), absf(rows[0].B.X-middle)
	var loop []side
	for _, s := range leg.loop {
		if !slices.Contains(s.keys, key) {
			loop = append(loop, s)
			continue
		}
		loop = append(loop, side{a: pt{X: lo.X, Y: y}, fold: true}, side{a: pt{X: lo.X, Y: y - high}, name: heelEdge})
		for _, x := range []pt{{X: lo.X + to, Y: y - high}, {X: lo.X + from, Y: y}} {
			if !near(loop[len(loop)-1].a, x) {
				loop = append(loop, side{a: x, name: heelEdge})
			}
		}
	}
	leg.loop, leg.heel = loop, pt{X: lo.X, Y: y}
	return leg, foot
}

// sock measures a sock that lies on its side: how far it is around at the cuff and at the foot, leg, heel, and the foot from the heel on.
func (tk *taker) sock(leg *panel) {
	lo, hi := box(leg.drawn)
	heel := leg.where.at(leg.heel)
	tk.take("cuff", pt{X: lo.X, Y: hi.Y}, pt{X: hi.X, Y: hi.Y}, schematic.Horizontal, true, units.Num{})
	tk.take("leg", heel, pt{X: lo.X, Y: hi.Y}, schematic.Vertical, false, units.Num{})
	tk.take("heel", pt{X: lo.X, Y: lo.Y}, heel, schematic.Vertical, false, units.Num{})
	for _, p := range tk.a.placed {
		if p.made != leg.made || p == leg {
			continue
		}
		l, h := box(p.loop)
		best := 0.0
		var at pt
		for i, s := range p.loop { // at the toe's end of where it is worked even for longest
			z := p.loop[(i+1)%len(p.loop)].a
			if d := absf(z.Y - s.a.Y); s.fold && absf(s.a.X-z.X) < close && d > best {
				best, at = d, lerp(s.a, z, 0.05)
				if s.a.Y > z.Y {
					at = lerp(z, s.a, 0.05)
				}
			}
		}
		if x := across(points(p.loop), at.Y+0.01); best > 0 && len(x) > 1 {
			tk.take("foot", p.where.at(pt{X: x[0], Y: at.Y}), p.where.at(pt{X: x[len(x)-1], Y: at.Y}), schematic.Slanted, true, units.Num{})
		}
		tk.take("foot after the heel", p.where.at(pt{X: l.X, Y: l.Y}), p.where.at(pt{X: l.X, Y: h.Y}), schematic.Slanted, false, units.Num{})
	}
}
