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

// heelRows are short rows over a part of a round, half of which shows: at what height they are, how far from the middle of the round they
// begin and end, and how many mm they add.
type heelRows struct{ y, from, to, high float64 }

// heelOf are the short rows of a sock: one run, or two at one place, as a heel that is narrowed and then widened again. Of others nobody says
// which is the heel.
func heelOf(p *panel) []heelRows {
	var rows []schematic.Line
	for _, l := range p.lines {
		if l.Kind == schematic.LineBehind {
			rows = append(rows, l)
		}
	}
	if n := len(rows); n != 3 && n != 6 {
		return nil
	}
	var out []heelRows
	for ; len(rows) > 0; rows = rows[3:] {
		a, z := rows[0].A, rows[0].B
		out = append(out, heelRows{a.Y, absf(a.X - p.middle()), absf(z.X - p.middle()), absf(z.Y - a.Y)})
	}
	if len(out) == 2 && absf(out[0].y-out[1].y) > close {
		return nil
	}
	return out
}

// beside is the way along the edge of the rows, from the fold behind, at x, to where they end on the level at y, as far down as sign says.
func (h heelRows) beside(x, y, sign float64) []side {
	out := []side{{a: pt{X: x, Y: y + sign*h.high}, name: heelEdge}}
	for _, q := range []pt{{X: x + h.to, Y: y + sign*h.high}, {X: x + h.from, Y: y}} {
		if !near(out[len(out)-1].a, q) {
			out = append(out, side{a: q, name: heelEdge})
		}
	}
	return out
}

// shortRowHeel is a sock whose heel is short rows over a part of a round: the first run is of the leg, and a second one of the foot.
func (a *assembly) shortRowHeel(m *schematic.Made) (leg, foot *panel) {
	p := newPanel(m, 0, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] })
	if p == nil {
		return nil, nil
	}
	rows := heelOf(p)
	if rows == nil {
		return nil, nil
	}
	y, key := rows[0].y, "cut of "+m.Name
	leg = p.cut(func(q pt) float64 { return q.Y - y }, key)
	foot = p.cut(func(q pt) float64 { return y - q.Y }, key)
	if leg == nil || foot == nil {
		return nil, nil
	}
	lo, _ := box(leg.loop)
	var loop []side
	for _, s := range leg.loop {
		if !slices.Contains(s.keys, key) {
			loop = append(loop, s)
			continue
		}
		loop = append(loop, side{a: pt{X: lo.X, Y: y}, fold: true})
		loop = append(loop, rows[0].beside(lo.X, y, -1)...)
	}
	leg.loop, leg.heel = loop, pt{X: lo.X, Y: y}
	if len(rows) == 2 {
		foot.loop = rows[1].above(foot.loop, key)
	}
	return leg, foot
}

// above is the loop of a foot with the rows above the back half of the level at which it begins.
func (h heelRows) above(loop []side, key string) []side {
	lo, _ := box(loop)
	var out []side
	for _, s := range loop {
		if !slices.Contains(s.keys, key) {
			out = append(out, s)
			continue
		}
		way := h.beside(lo.X, h.y, 1)
		s.name = heelEdge
		out = append(out, s)
		for i := range way[1:] { // it runs to the fold
			out = append(out, side{a: way[len(way)-1-i].a, name: heelEdge})
		}
		out = append(out, side{a: way[0].a, fold: true})
	}
	return out
}

// sock measures a sock that lies on its side: how far it is around at the cuff and at the foot, leg, heel, and the foot from the heel on.
func (tk *taker) sock(leg *panel) {
	lo, hi := box(leg.drawn)
	heel := leg.where.at(leg.heel)
	tk.take("cuff", pt{X: lo.X, Y: hi.Y}, pt{X: hi.X, Y: hi.Y}, schematic.Horizontal, true, units.Num{})
	tk.take("leg", heel, pt{X: lo.X, Y: hi.Y}, schematic.Vertical, false, units.Num{})
	tk.take("heel", pt{X: lo.X, Y: lo.Y}, heel, schematic.Vertical, false, units.Num{})
	for _, p := range tk.a.placed {
		if p.made == leg.made && p != leg {
			tk.foot(p)
		}
	}
}

// foot measures the foot of a sock: around, at the toe's end of where it is worked even for longest, and from the heel to its toe.
func (tk *taker) foot(p *panel) {
	l, h := box(p.loop)
	h.Y = l.Y
	for _, s := range p.loop { // in front, where no rows of the heel are
		if absf(s.a.X-h.X) < close {
			h.Y = max(h.Y, s.a.Y)
		}
	}
	best := 0.0
	var at pt
	for i, s := range p.loop {
		low, high := byHeight(s.a, p.loop[(i+1)%len(p.loop)].a)
		if d := high.Y - low.Y; s.fold && absf(low.X-high.X) < close && d > best {
			best, at = d, lerp(low, high, 0.05)
		}
	}
	if x := across(points(p.loop), at.Y+0.01); best > 0 && len(x) > 1 {
		tk.take("foot", p.where.at(pt{X: x[0], Y: at.Y}), p.where.at(pt{X: x[len(x)-1], Y: at.Y}), schematic.Slanted, true, units.Num{})
	}
	tk.take("foot after the heel", p.where.at(pt{X: l.X, Y: l.Y}), p.where.at(pt{X: l.X, Y: h.Y}), schematic.Slanted, false, units.Num{})
}
