package chart

import "math"

// bar is a straight stroke with half its thickness: what a symbol takes of the plane.
type bar struct {
	a, b pt
	half float64
}

// apart is the least distance that symbols keep that are not worked into one place.
const apart = 0.3

// body is a stitch as a few bars, near enough to its strokes to hold it apart from
// others.
func (p *plan) body(n *node) []bar {
	if n.mark {
		return nil
	}
	if n.arch() {
		const cuts = 6
		out := make([]bar, 0, cuts)
		curve := p.curve(n)
		last := curve(0)
		for k := 1; k <= cuts; k++ {
			at := curve(float64(k) / cuts)
			out = append(out, bar{last, at, ovalWide/2 + stroke/2})
			last = at
		}
		return out
	}
	head := p.point(n, n.v)
	feet := p.footPoints(n)
	if n.chain() {
		at := p.point(n, n.v)
		along := mul(right(p.outward(n)), max(p.chainHalf(n), ovalLong*0.62)-ovalWide/2)
		return []bar{{sub(at, along), add(at, along), ovalWide/2 + stroke/2}}
	}
	if n.st.Turn {
		return []bar{{feet[0], head, ovalWide/2 + stroke/2}}
	}
	if n.picot() {
		return []bar{{feet[0], head, 1.25}}
	}
	var out []bar
	mid := mul(feet[0], 1/float64(len(feet)))
	for _, f := range feet[1:] {
		mid = add(mid, mul(f, 1/float64(len(feet))))
	}
	q, l := stem(mid, head)
	k := n.st.Kind
	switch k.Key {
	case "slip":
		return []bar{{q.at(0, l/2), q.at(0, l/2), dot}}
	case "cluster", "bobble", "popcorn", "puff":
		w := belly(k)
		out = append(out, bar{q.at(-topHalf, l), q.at(topHalf, l), stroke / 2})
		for _, w := range [2]float64{-1.15 * w, 1.15 * w} {
			out = append(out, bar{q.at(0, 0), q.at(w, 0.3*l), stroke / 2}, bar{q.at(w, 0.3*l), q.at(w, 0.7*l), stroke / 2}, bar{q.at(w, 0.7*l), q.at(0, l), stroke / 2})
		}
		return out
	}
	for _, f := range feet {
		out = append(out, bar{f, head, stroke / 2})
		leg, ll := stem(f, head)
		if k.Plain().Key == "sc" {
			out = append(out, bar{leg.at(-topHalf, ll/2), leg.at(topHalf, ll/2), stroke / 2})
		}
		for i := range bars(k.Plain()) {
			v := barsAt(k.Plain(), i, ll, len(feet) > 1)
			w := barWide(len(feet) > 1 || len(n.group) > 3)
			out = append(out, bar{leg.at(-w, v-0.3), leg.at(w, v+0.3), stroke / 2})
		}
	}
	if k.Plain().Key != "sc" {
		out = append(out, bar{q.at(-topHalf, l), q.at(topHalf, l), stroke / 2})
	}
	s := shape{kind: k, flip: n.line.row.Wrong, loop: n.st.Loop}
	switch s.shownLoop() {
	case BackLoop:
		out = append(out, bar{q.at(-0.8, -0.1), q.at(0, 0.47), stroke / 2}, bar{q.at(0, 0.47), q.at(0.8, -0.1), stroke / 2})
	case FrontLoop:
		out = append(out, bar{q.at(-0.8, 0.45), q.at(0, -0.12), stroke / 2}, bar{q.at(0, -0.12), q.at(0.8, 0.45), stroke / 2})
	}
	if s.post() != 0 {
		side := 1.1
		if s.post() == 2 {
			side = -1.1
		}
		out = append(out, bar{q.at(0, 0), q.at(side, 0.85), stroke / 2})
	}
	return out
}

// near is the least distance between two bodies, their thickness taken off; it stops
// looking under least.
func nearness(a, b []bar, least float64) float64 {
	d := math.Inf(1)
	for _, x := range a {
		for _, y := range b {
			t := x.half + y.half
			if max(min(x.a.X, x.b.X)-max(y.a.X, y.b.X), min(y.a.X, y.b.X)-max(x.a.X, x.b.X)) > t+least ||
				max(min(x.a.Y, x.b.Y)-max(y.a.Y, y.b.Y), min(y.a.Y, y.b.Y)-max(x.a.Y, x.b.Y)) > t+least {
				continue
			}
			d = min(d, between(x.a, x.b, y.a, y.b)-t)
		}
	}
	return d
}

// between is the least distance between two straight lines.
func between(a, b, c, d pt) float64 {
	u, v, w := sub(b, a), sub(d, c), sub(c, a)
	cross := u.X*v.Y - u.Y*v.X
	if math.Abs(cross) > 1e-12 {
		s, t := (w.X*v.Y-w.Y*v.X)/cross, (w.X*u.Y-w.Y*u.X)/cross
		if s >= 0 && s <= 1 && t >= 0 && t <= 1 {
			return 0
		}
	}
	return min(toLine(a, c, d), toLine(b, c, d), toLine(c, a, b), toLine(d, a, b))
}

func toLine(p, a, b pt) float64 {
	d := sub(b, a)
	l := d.X*d.X + d.Y*d.Y
	t := 0.0
	if l > 0 {
		t = min(max(((p.X-a.X)*d.X+(p.Y-a.Y)*d.Y)/l, 0), 1)
	}
	return long(sub(p, add(a, mul(d, t))))
}

// avoid raises the stitches of one place together until they run into no symbol of the
// row below beside the one that they stand on.
func (p *plan) avoid(l *line) {
	if p.lines[l.n-1].fixed {
		return
	}
	body := p.bodies()
	for i := 0; i < len(l.nodes); i++ {
		n := l.nodes[i]
		if len(n.feet) == 0 || n.mark || n.group != nil && n.share > 0 {
			continue
		}
		group := []*node{n}
		if n.group != nil {
			group = n.group
		}
		const step = 0.35
		for range 24 {
			if !p.runsInto(group, body) {
				break
			}
			for _, m := range group {
				m.fv += step
				m.v += step
			}
		}
	}
}

// bodies gives the body of a node, made once.
func (p *plan) bodies() func(*node) []bar {
	made := map[*node][]bar{}
	return func(m *node) []bar {
		b, ok := made[m]
		if !ok {
			b = p.body(m)
			made[m] = b
		}
		return b
	}
}

// lift raises an arch until it runs into no symbol of the row below, nor into those of
// its own row beyond its neighbours.
func (p *plan) lift(n *node, body func(*node) []bar) {
	if n.line.n == 0 || p.lines[n.line.n-1].row.Base || n.prev == nil || n.next == nil || len(n.prev.feet) == 0 || len(n.next.feet) == 0 {
		return
	}
	from, to := n.prev.feet[0], n.next.feet[0]
	for tries := range 24 {
		mine := p.body(n)
		hit := false
		for _, m := range [2]*node{n.prev.prev, n.next.next} {
			hit = hit || m != nil && m != n && !m.mark && !m.arch() && !m.picot() && nearness(mine, p.body(m), apart) < apart
		}
		m := from
		if m.prev != nil {
			m = m.prev
		}
		for steps := 0; m != nil && steps < 48; m, steps = m.next, steps+1 {
			if !m.mark && nearness(mine, body(m), apart) < apart {
				hit = true
				break
			}
			if m == to.next {
				break
			}
		}
		if !hit {
			return
		}
		const step = 0.35
		n.rise += step
		n.v += step
		if tries > 3 { // its ends are in the way, not its middle
			for k := range n.ends {
				n.ends[k] = add(n.ends[k], mul(p.outward(n), step))
			}
			n.v += step
		}
		n.fv = n.v
	}
}

// runsInto reports whether any of the group is too near to a symbol of the row below.
func (p *plan) runsInto(group []*node, body func(*node) []bar) bool {
	own := map[*node]bool{}
	for _, f := range group[0].feet {
		own[f] = true
	}
	for _, n := range group {
		if n.arch() || n.picot() {
			continue
		}
		mine := p.body(n)
		reach := math.Abs(p.lean(n)) + topHalf + apart
		first, last := n.feet[0], n.feet[len(n.feet)-1]
		if len(n.feet) > 1 && first.prev == n.feet[1] {
			first, last = last, first
		}
		hit := func(m *node) bool {
			return !m.mark && !own[m] && m.v+apart+1.3 >= n.fv && nearness(mine, body(m), apart) < apart
		}
		for m, steps := first, 0; m != last && m != nil && steps < 24; m, steps = m.next, steps+1 {
			if hit(m) {
				return true
			}
		}
		if p.beside(first, (*node).before, reach, own, hit) || p.beside(last, (*node).after, reach, own, hit) {
			return true
		}
		if r := n.line.n - 2; r >= 0 && p.lines[r].top+apart+1.3 >= n.fv && len(first.feet) > 0 { // a tall one two rows below
			if p.nearby(n, first.feet[0], reach, hit) {
				return true
			}
		}
	}
	return false
}

// nearby reports whether any symbol is hit of those near f that lie within reach of n.
func (p *plan) nearby(n, f *node, reach float64, hit func(*node) bool) bool {
	const steps = 16
	for _, step := range [2]func(*node) *node{(*node).before, (*node).after} {
		m := f
		for k := 0; m != nil && k < steps; k++ {
			if math.Abs(p.drift(n, m))-max(m.half, m.chord/2+0.6) <= reach+1 && hit(m) {
				return true
			}
			m = step(m)
		}
	}
	return false
}

// beside reports whether any symbol is hit of those on one side of f within reach.
func (p *plan) beside(f *node, step func(*node) *node, reach float64, own map[*node]bool, hit func(*node) bool) bool {
	for m, steps := step(f), 0; m != nil && !own[m] && steps < 20; m, steps = step(m), steps+1 {
		if math.Abs(p.driftIn(m, f))-max(m.half, m.chord/2+0.6) > reach+1 {
			return false
		}
		if hit(m) {
			return true
		}
	}
	return false
}

// widen gives more room where two neighbours of a row come too near to each other,
// and says whether any did. Where room alone doesn't help it sets them level too.
func (p *plan) widen(l *line, level bool) bool {
	if l.row.Base || l.n == 0 {
		return false
	}
	found := false
	var last []bar
	for i, b := range l.nodes {
		body := p.body(b)
		a := b.prev
		if a == nil || i == 0 || a.mark || b.mark || a.chain() && b.chain() || a.arch() || b.arch() || a.picot() || b.picot() || a.group != nil && b.group != nil && &a.group[0] == &b.group[0] {
			last = body
			continue
		}
		if d := nearness(last, body, apart); d < apart-0.02 {
			b.extra += 0.12 + apart - max(d, -0.5)
			found = true
			if low, high := min(a.fv, b.fv), max(a.fv, b.fv); level && high > low {
				if a.fv < b.fv {
					a.raise += high - low
				} else {
					b.raise += high - low
				}
			}
		}
		last = body
	}
	return found
}
