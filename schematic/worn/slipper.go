package worn

import (
	"maps"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// slipper is half of a foot worked in the round, of which a part is worked on flat to the heel and sewn to itself there at a fold: it lies on its side, sole down, folded
// along the middle of that part, with its opening above. Nil if the piece is none.
func (a *assembly) slipper(m *schematic.Made) *panel {
	if len(m.Views) == 1 && !m.Views[0].Half && m.Kind == schematic.KindSock {
		return a.flatFoot(m)
	}
	if len(m.Views) != 2 || !m.Views[0].Half || m.Views[1].Half {
		return nil
	}
	view := func(i int) *panel {
		return newPanel(m, i, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] })
	}
	foot, part := view(0), view(1)
	if foot == nil || part == nil {
		return nil
	}
	_, footEnd := ends(foot)
	start, end := ends(part)
	if y, ok := a.foldedSeam(m, part); !ok || absf(y-end) > close {
		return nil
	}
	up := start < end // the fold that comes to lie below is at the right then, or else at the left
	sole := part.half(part.middle(), up, "fold of "+m.Name)
	if sole == nil {
		return nil
	}
	l, r := levelSpan(foot, footEnd)
	sl, sh := box(sole.loop)
	if sh.X-sl.X > r-l+close {
		return nil
	}
	q := *foot
	q.loop, q.slipper, q.lying, q.heel = nil, true, 1, pt{X: l, Y: footEnd}
	at, free := l-sl.X, sh.X
	if up {
		q.lying, q.heel.X, at, free = -1, r, r-sh.X, sl.X
	}
	for _, s := range append(sole.around(start), side{a: pt{X: free, Y: start}, name: "opening"}) {
		s.a = add(s.a, pt{X: at, Y: footEnd - start})
		q.loop = append(q.loop, s)
	}
	n, begins := len(foot.loop), 0
	for i := range foot.loop {
		if levelAt(foot, i, footEnd) && !levelAt(foot, (i+n-1)%n, footEnd) {
			begins = i
		}
	}
	for k := range n {
		if i := (begins + k) % n; !levelAt(foot, i, footEnd) {
			q.loop = append(q.loop, foot.loop[i])
		}
	}
	return &q
}

// flatFoot is half of a flat piece of which an end is sewn to itself at a fold, behind, and its two sides to each other from the other end up to an
// opening. Nil if it is none.
func (a *assembly) flatFoot(m *schematic.Made) *panel {
	p := newPanel(m, 0, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] })
	if p == nil {
		return nil
	}
	seam, ok := a.foldedSeam(m, p)
	if !ok {
		return nil
	}
	lo, hi := box(p.loop)
	up := absf(seam-hi.Y) < close
	if !up && absf(seam-lo.Y) > close {
		return nil
	}
	q := p.half(p.middle(), up, "fold of "+m.Name)
	if q == nil {
		return nil
	}
	if q.heel, ok = q.endOf(p.sewnSides(), seam); !ok {
		return nil
	}
	if q.slipper, q.lying = true, 1; up {
		q.lying = -1
	}
	return q
}

// sewnSides are the joins that sew the left side of a panel to its right.
func (p *panel) sewnSides() map[string]bool {
	var of [2]map[string]bool
	for k := range of {
		of[k] = map[string]bool{}
	}
	for i, s := range p.loop {
		z := p.loop[(i+1)%len(p.loop)].a
		if j := joinOf(s); j != "" && !levelAt(p, i, s.a.Y) {
			k := 0
			if (s.a.X+z.X)/2 > p.middle() {
				k = 1
			}
			of[k][j] = true
		}
	}
	maps.DeleteFunc(of[0], func(j string, _ bool) bool { return !of[1][j] })
	return of[0]
}

// endOf is that end of the sides with one of the joins which is nearest to a height.
func (p *panel) endOf(joins map[string]bool, y float64) (at pt, ok bool) {
	for i, s := range p.loop {
		if levelAt(p, i, s.a.Y) || !joins[joinOf(s)] {
			continue
		}
		for _, e := range []pt{s.a, p.loop[(i+1)%len(p.loop)].a} {
			if !ok || absf(e.Y-y) < absf(at.Y-y) {
				at, ok = e, true
			}
		}
	}
	return at, ok
}

// around is the way round a panel from one end of its level beginning to the other, without that.
func (p *panel) around(start float64) []side {
	n := len(p.loop)
	at := slices.IndexFunc(p.loop, func(s side) bool { return absf(s.a.Y-start) < close })
	for levelAt(p, at%n, start) {
		at++
	}
	var out []side
	for k := 0; k < n && !levelAt(p, (at+k)%n, start); k++ {
		out = append(out, p.loop[(at+k)%n])
	}
	return out
}

// onFoot measures a slipper that lies on its side: all of its length, its opening, how high it is behind, and how far around the foot.
func (tk *taker) onFoot(p *panel) {
	lo, hi := box(p.drawn)
	tk.take("foot length", lo, pt{X: hi.X, Y: lo.Y}, schematic.Horizontal, false, units.Num{})
	at := p.where.at(p.heel)
	top := lo.Y
	for _, s := range p.drawn {
		if absf(s.a.X-hi.X) < close {
			top = max(top, s.a.Y)
		}
	}
	tk.take("heel height", pt{X: hi.X, Y: lo.Y}, pt{X: hi.X, Y: top}, schematic.Vertical, false, units.Num{})
	tk.take("opening length", pt{X: at.X, Y: top}, pt{X: hi.X, Y: top}, schematic.Horizontal, false, units.Num{})
	if x := at.X - 1; hi.Y > top-1 {
		tk.take("foot", pt{X: x, Y: lo.Y}, pt{X: x, Y: hi.Y}, schematic.Vertical, true, units.Num{})
	}
	tk.seen["length"] = true
}
