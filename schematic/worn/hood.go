package worn

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"flatwright/schematic"
)

// hoods stands what is worked or sewn along the whole of a neck, front and back, upright on it: it goes round the head
// as a body in the round goes round the wearer, so that half of its width shows. It reports whether there was one.
func (a *assembly) hoods() bool {
	for _, q := range a.protos {
		if q.left < 1 || q.face != either || !q.folded || q.made.Round {
			continue
		}
		if p, ok := a.hood(q); ok {
			a.settle(p, p.where, nil, nil)
			q.left--
			return true
		}
	}
	return false
}

// hood is half of a panel, about its middle, on the neck that it is bonded to.
func (a *assembly) hood(q *proto) (*panel, bool) {
	keys := keysOf(q.loop)
	var neck []side
	var faces [3]bool
	for _, p := range a.placed {
		for i, s := range p.drawn {
			if s.has(keys) {
				neck, faces[p.face] = append(neck, s, p.drawn[(i+1)%len(p.drawn)]), true
			}
		}
	}
	if !faces[front] || !faces[back] {
		return nil, false
	}
	lo, hi := box(neck)
	l, r := box(q.loop)
	wide := (r.X - l.X) / 2
	if d := wide / (hi.X - lo.X); d > mostUnlike || d < 1/mostUnlike {
		return nil, false
	}
	start, _ := ends(q.panel)
	if start != l.Y {
		return nil, false // it hangs, and does not stand
	}
	key := "fold of " + q.name
	p := q.half(q.middle()-wide/2, false, key)
	if p == nil {
		return nil, false
	}
	if p = p.half(q.middle()+wide/2, true, key); p == nil {
		return nil, false
	}
	p.drawn, p.hung = nil, true
	if top, ok := q.opens(); ok { // its edges meet in front of the face
		at := q.middle()
		p.lines = append(slices.Clone(p.lines), schematic.Line{Kind: schematic.LineEdge, Name: "face", A: pt{X: at, Y: start}, B: pt{X: at, Y: top}})
		p.bandInFront(a.bandOf(q), at, start, top)
	}
	p.where = motion{cos: 1, by: pt{X: (lo.X+hi.X)/2 - q.middle(), Y: hi.Y - start}}
	p.laid = chord{own: [2]pt{{X: q.middle() - wide/2, Y: start}, {X: q.middle() + wide/2, Y: start}},
		on: [2]pt{{X: lo.X, Y: hi.Y}, {X: hi.X, Y: hi.Y}}, hold: 0.5}
	return p, true
}

// bandInFront draws the band along edges that meet at x: the right half laps over the left.
func (p *panel) bandInFront(b *strip, x, low, high float64) {
	if b == nil {
		return
	}
	p.lines = append(p.lines, schematic.Line{Kind: schematic.LineEdge, Name: "band", A: pt{X: x + b.deep, Y: low}, B: pt{X: x + b.deep, Y: high}})
	for y := low + ribGap/2; b.ribs && y < high; y += ribGap {
		p.tick(pt{X: x, Y: y}, pt{X: x + b.deep, Y: y})
	}
}

// bandOf is the band that lies along the edges of a panel, or nil.
func (a *assembly) bandOf(q *proto) *strip {
	for _, s := range a.strips {
		if slices.ContainsFunc(q.loop, func(e side) bool { return slices.Contains(e.keys, s.key) }) {
			return s
		}
	}
	return nil
}

// opens reports whether both sides of a panel that goes round are free, so that they meet in front, and up to where.
func (q *proto) opens() (float64, bool) {
	l, h := box(q.loop)
	var up [2]float64 // how far, at the left and at the right
	for i, s := range q.loop {
		z := q.loop[(i+1)%len(q.loop)].a
		for k, x := range []float64{l.X, h.X} {
			switch {
			case absf(s.a.X-x) > close || absf(z.X-x) > close:
			case len(notBends(s.keys)) > 0 || s.fold:
				return 0, false
			default:
				up[k] = max(up[k], s.a.Y, z.Y)
			}
		}
	}
	return up[0], up[0] > l.Y+close && absf(up[0]-up[1]) < close
}

// halfRound leaves, of a round of panels of which none says that it lies in front, the half that shows: root in the middle, and
// beside it whole panels and, at either end, what of the next lies in front of the fold. It reports false where they would not lie as
// a skirt does: they come to a point, or are fewer than three.
func (a *assembly) halfRound(root *panel) bool {
	row := a.gores(root)
	n := len(row)
	if n < 3 || slices.ContainsFunc(row, (*proto).pointed) {
		return false
	}
	whole, quarters := (n-2)/4, (n-2)%4 // that show on either side of the middle one
	for i, q := range row {
		switch k := min(i, n-i); {
		case k <= whole:
		case k == whole+1 && quarters > 0:
			if p := q.share4(quarters, i == k); p != nil {
				q.panel = p
			}
		default:
			q.left = 0
		}
	}
	return true
}

// share4 is so many quarters of a gore, at its left or its right, from its one end to its other.
func (q *proto) share4(quarters int, left bool) *panel {
	start, end := ends(q.panel)
	x := func(y float64) float64 {
		l, r := levelSpan(q.panel, y)
		if left {
			return l + (r-l)*float64(quarters)/4
		}
		return r - (r-l)*float64(quarters)/4
	}
	a, d := pt{X: x(start), Y: start}, pt{X: x(end) - x(start), Y: end - start}
	if (d.Y < 0) == left { // what is kept lies at the left of the cut
		d = mul(d, -1)
	}
	p := q.cut(func(b pt) float64 { return cross(d, sub(b, a)) / length(d) }, "fold of "+q.name)
	if p != nil {
		p.halved = true
	}
	return p
}

// gores are the panels of a round in order, root first.
func (a *assembly) gores(root *panel) []*proto {
	var row []*proto
	for _, q := range a.protos {
		if q.made == root.made && q.made.Views[q.view].Panel {
			row = append(row, q)
		}
	}
	slices.SortFunc(row, func(x, y *proto) int { return x.view - y.view })
	at := slices.IndexFunc(row, func(q *proto) bool { return q.view == root.view })
	return slices.Concat(row[at:], row[:at])
}

// pointed reports whether a gore comes to a point.
func (q *proto) pointed() bool {
	start, end := ends(q.panel)
	l, r := levelSpan(q.panel, start)
	l2, r2 := levelSpan(q.panel, end)
	return (r-l)*pointed < r2-l2 || (r2-l2)*pointed < r-l
}

// pointed is how many times as wide one end of a gore is as the other from which on it comes to a point.
const pointed = 8

// levelSpan is from where to where a panel reaches along a level at its end.
func levelSpan(p *panel, y float64) (l, r float64) {
	l, r = math.Inf(1), math.Inf(-1)
	for i := range p.loop {
		if levelAt(p, i, y) {
			a, z := p.loop[i].a.X, p.loop[(i+1)%len(p.loop)].a.X
			l, r = min(l, a, z), max(r, a, z)
		}
	}
	if l > r {
		return 0, 0
	}
	return l, r
}

// inGores measures a round that lies in panels side by side: its widths go along no straight line, and are told under the
// picture; its length is that of a panel.
func (tk *taker) inGores(row []*panel) {
	last := slices.MaxFunc(row, func(x, y *panel) int { return cmp.Compare(x.mid(), y.mid()) })
	lo, hi := box(last.loop)
	name := "length"
	if slices.ContainsFunc(tk.a.placed, func(p *panel) bool { return p.strip && last.made.Kind == schematic.KindSkirt }) {
		name = "length below the waistband"
	}
	tk.take(name, last.where.at(hi), last.where.at(pt{X: hi.X, Y: lo.Y}), schematic.Slanted, false, tk.exact(hi.Y-lo.Y))
	tk.seen["length"] = true
	for _, m := range last.made.Measures {
		switch name, wide := strings.CutPrefix(m.Name, "width at "); {
		case !m.Around || m.Axis != schematic.Horizontal:
		case m.View == schematic.NoView && wide:
			tk.under(name, m)
		case m.View != schematic.NoView && !last.made.Views[m.View].Panel:
			tk.under(edgeNamed(last.made, m), m)
		}
	}
}

// under takes a measurement that has no line in the picture.
func (tk *taker) under(name string, m schematic.Measure) {
	if tk.seen[name] {
		return
	}
	tk.seen[name] = true
	m.ID, m.Name, m.View, m.Main = "as-worn."+schematic.ID(name), name, schematic.NoView, true
	tk.out = append(tk.out, m)
}

// edgeNamed is the name of the edge along which a width is measured, or else its own.
func edgeNamed(m *schematic.Made, w schematic.Measure) string {
	for i := range m.Edges {
		if e := &m.Edges[i]; e.View == w.View && e.Name != "base of the panels" && e.Length.Eq(w.Length) {
			return e.Name
		}
	}
	return w.Name
}

// rowOf are the placed panels of one row, in its order.
func (a *assembly) rowOf(root *panel) []*panel {
	var row []*panel
	for _, p := range a.placed {
		if p.made == root.made && !p.strip {
			row = append(row, p)
		}
	}
	slices.SortFunc(row, func(x, y *panel) int { return x.view - y.view })
	return row
}
