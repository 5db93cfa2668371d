package worn

import (
	"math"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// profile makes a panel of a sock, as it lies on its side: the leg with half of the heel below its back half, and the foot at a right angle
// to it. False if the piece has no heel of a kind that is known, or a foot that does not lie so.
func (a *assembly) profile(m *schematic.Made) bool {
	var leg, foot *panel
	back, deep := 0.0, 0.0
	halves := len(m.Views) == 3 && !slices.ContainsFunc(m.Views, func(v schematic.View) bool { return !v.Half })
	switch {
	case halves:
		if leg, foot = a.wedgeHeel(m); leg == nil && downwards(m) {
			leg, foot, back = a.flapHeel(m)
		}
	case len(m.Views) == 1 && m.Views[0].Half:
		leg, foot, back = a.shortRowHeel(m)
		deep = back // of one run, half lies below the leg and half before the foot
	}
	if leg == nil || foot == nil {
		if halves {
			a.hollow = append(a.hollow, hollow{made: m, why: "its heel does not lie flat on its side"})
		}
		return halves
	}
	if deep == 0 {
		lo, _ := box(leg.loop)
		deep = leg.heel.Y - lo.Y
	}
	p := leg.stepped(foot, back, deep)
	if p == nil {
		return false
	}
	a.add(p, m.Make)
	return true
}

// stepped is a leg with its foot at a right angle: the foot's first round stands so far before the back of the heel, its sole so deep below
// where the heel begins. At the ankle, where one lies on the other, the front of the leg ends on the foot. Nil if
// the foot is nowhere even, or does not reach beyond the leg.
func (p *panel) stepped(foot *panel, back, deep float64) *panel {
	q := *p
	lo, hi := box(p.loop)
	_, fh := box(foot.loop)
	low, high := foot.even()
	if low == high {
		return nil
	}
	edge := func(y float64) float64 { return across(points(foot.loop), y)[0] }
	at := func(a pt) pt { // a gusset is taken in above the sole
		return pt{X: lo.X + back + fh.Y - a.Y, Y: p.heel.Y - deep + a.X - edge(min(max(a.Y, high.Y), fh.Y-close)-close)}
	}
	toe := lerp(low, high, 0.05)
	x := across(points(foot.loop), toe.Y)
	q.sole = [2]pt{at(pt{X: x[0], Y: toe.Y}), at(pt{X: x[len(x)-1], Y: toe.Y})}
	ankle := side{fold: true}
	q.loop = nil
	if back > close {
		q.loop = append(q.loop, side{a: pt{X: lo.X, Y: p.heel.Y - deep}, fold: true})
	}
	for _, s := range foot.withoutHeel() {
		s.a = at(s.a)
		if n := len(q.loop); n > 0 && q.loop[n-1].a.X > hi.X && s.a.X <= hi.X {
			ankle.a = lerp(q.loop[n-1].a, s.a, (q.loop[n-1].a.X-hi.X)/(q.loop[n-1].a.X-s.a.X))
			break
		}
		q.loop = append(q.loop, s)
	}
	if ankle.a == (pt{}) {
		return nil
	}
	leg := p.withoutHeel()
	leg[0] = ankle
	q.loop = append(q.loop, leg[:len(leg)-1]...)
	q.lines = slices.Clone(p.lines)
	for _, l := range foot.lines {
		l.A, l.B = at(l.A), at(l.B)
		q.lines = append(q.lines, l)
	}
	step := deep / (p.heel.Y - lo.Y)
	for i, s := range p.loop {
		a, z := s.a, p.loop[(i+1)%len(p.loop)].a
		a.Y, z.Y = p.heel.Y-(p.heel.Y-a.Y)*step, p.heel.Y-(p.heel.Y-z.Y)*step
		if s.name == heelEdge && (absf(a.Y-z.Y) > close || a.Y > p.heel.Y-deep+close && a.Y < p.heel.Y-close) {
			q.lines = append(q.lines, schematic.Line{Kind: schematic.LineSeam, A: a, B: z})
		}
	}
	q.ribs = slices.Clone(p.ribs)
	for _, r := range foot.ribs {
		poly := make([]pt, len(r.Poly))
		for i, a := range r.Poly {
			poly[i] = at(a)
		}
		r.Poly, r.Dir = poly, pt{X: -r.Dir.Y, Y: r.Dir.X}
		q.ribs = append(q.ribs, r)
	}
	return &q
}

// withoutHeel is the way round a leg or a foot from the front end of its heel's edge, or from that at the sole, to the other, and the side after it.
func (p *panel) withoutHeel() []side {
	n := len(p.loop)
	_, hi := box(p.loop)
	heel := func(i int) bool { return p.loop[i%n].name == heelEdge || p.heel == (pt{}) && levelAt(p, i%n, hi.Y) }
	first := 0
	for !heel(first) || heel(first+1) {
		first++
	}
	var out []side
	for k := 1; k <= n; k++ {
		out = append(out, p.loop[(first+k)%n])
		if heel(first + k) {
			break
		}
	}
	return out
}

// even are the ends, below and above, of where a foot is worked even for longest.
func (p *panel) even() (low, high pt) {
	for i, s := range p.loop {
		a, b := byHeight(s.a, p.loop[(i+1)%len(p.loop)].a)
		if s.fold && absf(a.X-b.X) < close && b.Y-a.Y > high.Y-low.Y {
			low, high = a, b
		}
	}
	return low, high
}

// heelEdge is the name of the way along which leg and foot of a sock meet.
const heelEdge = "heel"

// flapHeel is a sock of which half of the round, the heel, is worked on by itself, and then joined into a round with the other half.
func (a *assembly) flapHeel(m *schematic.Made) (leg, foot *panel, back float64) {
	view := func(i int) *panel {
		return newPanel(m, i, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] })
	}
	heel, front, foot := view(0), view(1), view(2)
	if heel == nil || front == nil || foot == nil {
		return nil, nil, 0
	}
	bl, _ := box(heel.loop)
	fl, fh := box(front.loop)
	if bl.Y > fl.Y {
		heel, fl.Y, bl.Y = front, bl.Y, fl.Y
	}
	if fl.Y-bl.Y < close {
		return nil, nil, 0
	}
	leg = heel.half(heel.middle(), false, "fold of "+m.Name)
	if leg == nil {
		return nil, nil, 0
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
	return leg, foot, hi.X - lo.X
}

// wedgeHeel is a sock of which half of the round is narrowed and widened again by itself, and then joined into a round with the other half: what is
// worked first is of the half that it goes on from, the rest of the other.
func (a *assembly) wedgeHeel(m *schematic.Made) (leg, foot *panel) {
	var views [3]*panel
	for i := range views {
		if views[i] = newPanel(m, i, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] }); views[i] == nil {
			return nil, nil
		}
	}
	up := 1.0 // the way in which it is worked
	if downwards(m) {
		up = -1
	}
	first, last := views[0], views[2]
	_, y := ends(first)
	_, at := ends(views[1])
	if up*(at-y) > 0 {
		first, y, at = views[1], at, y
	}
	rows := first.wedge(at, y)
	key := "cut of " + m.Name
	if first = first.cut(func(q pt) float64 { return up * (at - q.Y) }, key); first == nil || rows == nil {
		return nil, nil
	}
	start, _ := ends(last)
	for i := range last.loop {
		if levelAt(last, i, start) {
			last.loop[i].keys = append(last.loop[i].keys, key)
		}
	}
	rows[0].y, rows[1].y = at, start
	if up > 0 {
		return rows[1].legOver(last, key), rows[0].footUnder(first, key)
	}
	return rows[0].legOver(first, key), rows[1].footUnder(last, key)
}

// wedge are the two runs of rows that narrow and widen again from one height to another, as far out at the end as at the beginning; nil if there are none.
func (p *panel) wedge(from, to float64) []heelRows {
	in := (to - from) / absf(to-from) * close
	wide := func(y float64) float64 {
		x := across(points(p.loop), y)
		if len(x) != 2 {
			return 0
		}
		return (x[1] - x[0]) / 2
	}
	base, narrow, at := wide(from+in), math.Inf(1), from
	for _, s := range p.loop {
		if w := wide(s.a.Y - in); (s.a.Y-from)*in > close*close && w < narrow {
			narrow, at = w, s.a.Y
		}
	}
	if base == 0 || narrow > base-1 || absf(wide(to-in)-base) > 1 || absf(at-to) < close {
		return nil
	}
	return []heelRows{{from: base, to: narrow, high: absf(at - from)}, {from: base, to: narrow, high: absf(to - at)}}
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
func (a *assembly) shortRowHeel(m *schematic.Made) (leg, foot *panel, back float64) {
	p := newPanel(m, 0, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] })
	if p == nil {
		return nil, nil, 0
	}
	rows := heelOf(p)
	if rows == nil {
		return nil, nil, 0
	}
	y, key := rows[0].y, "cut of "+m.Name
	leg = p.cut(func(q pt) float64 { return q.Y - y }, key)
	foot = p.cut(func(q pt) float64 { return y - q.Y }, key)
	if leg == nil || foot == nil {
		return nil, nil, 0
	}
	leg = rows[0].legOver(leg, key)
	if len(rows) == 2 {
		return leg, rows[1].footUnder(foot, key), 0
	}
	return leg, foot, rows[0].high / 2
}

// legOver is a leg with the rows below the back half of the level at which it has the key.
func (h heelRows) legOver(leg *panel, key string) *panel {
	lo, _ := box(leg.loop)
	var loop []side
	for _, s := range leg.loop {
		if !slices.Contains(s.keys, key) {
			loop = append(loop, s)
			continue
		}
		loop = append(loop, side{a: pt{X: lo.X, Y: h.y}, fold: true})
		loop = append(loop, h.beside(lo.X, h.y, -1)...)
	}
	leg.loop, leg.heel = loop, pt{X: lo.X, Y: h.y}
	return leg
}

// footUnder is a foot with the rows above the back half of the level at which it has the key.
func (h heelRows) footUnder(foot *panel, key string) *panel {
	foot.loop = h.above(foot.loop, key)
	return foot
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

// sock measures a sock that lies on its side: how far it is around at the cuff and, at the toe's end of where it is worked even for longest,
// at the foot, leg, heel, and all of the foot.
func (tk *taker) sock(p *panel) {
	lo, hi := box(p.drawn)
	heel := p.where.at(p.heel)
	x := across(points(p.drawn), hi.Y-close)
	tk.take("cuff", pt{X: x[0], Y: hi.Y}, pt{X: x[len(x)-1], Y: hi.Y}, schematic.Horizontal, true, units.Num{})
	tk.take("leg", heel, pt{X: lo.X, Y: hi.Y}, schematic.Vertical, false, units.Num{})
	tk.take("heel", pt{X: lo.X, Y: lo.Y}, heel, schematic.Vertical, false, units.Num{})
	tk.take("foot", p.where.at(p.sole[0]), p.where.at(p.sole[1]), schematic.Vertical, true, units.Num{})
	toe := lo
	for _, s := range p.drawn {
		if s.a.X > toe.X {
			toe = s.a
		}
	}
	tk.take("foot length", lo, toe, schematic.Horizontal, false, units.Num{})
}
