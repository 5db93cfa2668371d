package chart

import (
	"math"
	"slices"

	"flatwright/schematic/stitch"
)

// bar is a straight stroke with half its thickness: what a symbol takes of the plane.
type bar struct {
	a, b pt
	half float64
}

// apart is the least distance that symbols keep that are not worked into one place.
const apart = 0.3

// usualBars is how many bars most bodies have.
const usualBars = 6

// body is a stitch as a few bars, near enough to its strokes to hold it apart from
// others, in the given room.
func (p *plan) body(out []bar, n *node) []bar {
	out = out[:0]
	if n.mark {
		return out
	}
	if n.arch() {
		const cuts = 6
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
	switch {
	case n.chain():
		along := mul(right(p.outward(n)), max(p.chainHalf(n), ovalLong*0.62)-ovalWide/2)
		return append(out, bar{sub(head, along), add(head, along), ovalWide/2 + stroke/2})
	case n.st.Turn:
		return append(out, bar{feet[0], head, ovalWide/2 + stroke/2})
	case n.picot():
		return append(out, bar{feet[0], head, 1.25})
	}
	q, l := stem((&shape{feet: feet}).foot(), head)
	k := n.st.Kind
	switch k.Key {
	case "slip":
		return append(out, bar{q.at(0, l/2), q.at(0, l/2), dot})
	case "behind":
		return append(out, bar{p.point(n.feet[0], n.feet[0].v+clear), head, quiet / 2})
	case "unread":
		return append(out, bar{q.at(-0.5, 0.15), q.at(0.5, 0.15), stroke / 2})
	case "cluster", "bobble", "popcorn", "puff":
		return clusterBars(out, &q, l, k)
	}
	for _, f := range feet {
		out = legBars(out, f, head, k.Plain(), len(feet) > 1, len(feet) > 1 || len(n.group) > 3)
	}
	if k.Plain().Key != "sc" {
		out = append(out, bar{q.at(-topHalf, l), q.at(topHalf, l), stroke / 2})
	}
	s := shape{kind: k, flip: n.line.row.Wrong, loop: n.st.Loop}
	return s.footBars(out, &q)
}

// clusterBars are the bars of a symbol that closes at both ends; a popcorn under an oval.
func clusterBars(out []bar, q *pen, l float64, k *stitch.Stitch) []bar {
	side, end := 1.15*belly(k), pt{Y: l}
	if k.Key == "popcorn" {
		out = append(out, bar{q.at(-0.5, l-0.45), q.at(0.5, l-0.45), 0.45 + stroke/2})
		end = pt{X: 0.8 * belly(k), Y: l - 0.9}
	} else {
		out = append(out, bar{q.at(-topHalf, l), q.at(topHalf, l), stroke / 2})
	}
	for _, s := range [2]float64{-1, 1} {
		low, high := q.at(s*side, 0.3*end.Y), q.at(s*side, 0.7*end.Y)
		out = append(out, bar{q.at(0, 0), low, stroke / 2}, bar{low, high, stroke / 2}, bar{high, q.at(s*end.X, end.Y), stroke / 2})
	}
	return out
}

// legBars are the bars of one stem: many if it is one of several, tight among others.
func legBars(out []bar, foot, head pt, base *stitch.Stitch, many, tight bool) []bar {
	leg, l := stem(foot, head)
	out = append(out, bar{foot, head, stroke / 2})
	if base.Key == "sc" {
		half, at := topHalf, l/2
		if many {
			half, at = 0.6, 0.36*l
		}
		return append(out, bar{leg.at(-half, at), leg.at(half, at), stroke / 2})
	}
	for i := range bars(base) {
		v, w := barsAt(base, i, l, many), barWide(tight)
		out = append(out, bar{leg.at(-w, v-0.3), leg.at(w, v+0.3), stroke / 2})
	}
	return out
}

// footBars are the bars of the loop or the hook at a symbol's foot.
func (s *shape) footBars(out []bar, q *pen) []bar {
	switch s.shownLoop() {
	case BackLoop:
		out = append(out, bar{q.at(-0.8, -0.1), q.at(0, 0.47), stroke / 2}, bar{q.at(0, 0.47), q.at(0.8, -0.1), stroke / 2})
	case LowerDown:
		out = append(out, bar{q.at(-0.6, 0.45), q.at(0, -0.3), stroke / 2}, bar{q.at(0, -0.3), q.at(0.6, 0.45), stroke / 2})
	case FrontLoop:
		out = append(out, bar{q.at(-0.8, 0.45), q.at(0, -0.12), stroke / 2}, bar{q.at(0, -0.12), q.at(0.8, 0.45), stroke / 2})
	}
	switch s.post() {
	case stitch.FrontPost:
		out = append(out, bar{q.at(0, 0), q.at(1.1, 0.85), stroke / 2})
	case stitch.BackPost:
		out = append(out, bar{q.at(0, 0), q.at(-1.1, 0.85), stroke / 2})
	}
	return out
}

// nearness is the least distance between two bodies, their thickness taken off; it stops
// looking under what stands apart.
func nearness(a, b []bar) float64 {
	d := math.Inf(1)
	for _, x := range a {
		for _, y := range b {
			t := x.half + y.half
			if max(min(x.a.X, x.b.X)-max(y.a.X, y.b.X), min(y.a.X, y.b.X)-max(x.a.X, x.b.X)) > t+apart ||
				max(min(x.a.Y, x.b.Y)-max(y.a.Y, y.b.Y), min(y.a.Y, y.b.Y)-max(x.a.Y, x.b.Y)) > t+apart {
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
			if !p.runsInto(group) {
				break
			}
			for _, m := range group {
				m.fv += step
				m.v += step
			}
		}
	}
}

// made is the body of a node, kept for as long as its row stands as it does.
func (p *plan) made(m *node) []bar {
	if m.bodyOf != m.line.version {
		if m.bars == nil {
			m.bars = p.bars.take(usualBars)[:0]
		}
		m.bars, m.bodyOf = p.body(m.bars, m), m.line.version
	}
	return m.bars
}

// lift raises an arch until it runs into no symbol of the row below, nor into those of
// its own row beyond its neighbours.
func (p *plan) lift(n *node) {
	if n.line.n == 0 || p.lines[n.line.n-1].row.Base || n.prev == nil || n.next == nil || len(n.prev.feet) == 0 || len(n.next.feet) == 0 {
		return
	}
	const step = 0.35
	for tries := range 24 {
		if !p.archHits(n) {
			return
		}
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

// archHits reports whether an arch is too near to a symbol under it, or to one beyond its
// neighbours.
func (p *plan) archHits(n *node) bool {
	p.mine = p.body(p.mine, n)
	mine := p.mine
	hits := func(m *node, body []bar) bool { return !m.mark && nearness(mine, body) < apart }
	for _, m := range [2]*node{n.prev.prev, n.next.next} {
		if m != nil && m != n && !m.arch() && !m.picot() {
			if p.other = p.body(p.other, m); hits(m, p.other) {
				return true
			}
		}
	}
	m, last := n.prev.feet[0], n.next.feet[0].next
	if m.prev != nil {
		m = m.prev
	}
	for steps := 0; m != nil && steps < 48; m, steps = m.next, steps+1 {
		if hits(m, p.made(m)) {
			return true
		}
		if m == last {
			return false
		}
	}
	return false
}

// runsInto reports whether any of the group is too near to a symbol of the row below, or to a
// tall one two rows below.
func (p *plan) runsInto(group []*node) bool {
	for _, n := range group {
		if n.arch() || n.picot() {
			continue
		}
		own := group[0].feet
		for _, m := range p.crossing[n] {
			own = append(own[:len(own):len(own)], m.feet...)
		}
		if p.mine = p.body(p.mine, n); p.meets(p.mine, n, own) {
			return true
		}
	}
	return false
}

// meets reports whether a stitch, whose body is mine, is too near to a symbol below other than those own that it
// is worked into.
func (p *plan) meets(mine []bar, n *node, own []*node) bool {
	first, last := n.feet[0], n.feet[len(n.feet)-1]
	reach := max(math.Abs(p.lean(n)), math.Abs(p.drift(n, first)), math.Abs(p.drift(n, last))) + topHalf + apart
	if len(n.feet) > 1 && first.prev == n.feet[1] {
		first, last = last, first
	}
	low := n.lowest()
	hit := func(m *node) bool {
		return !m.mark && m.v+apart+1.3 >= low && !slices.Contains(own, m) && nearness(mine, p.made(m)) < apart
	}
	for m, steps := first, 0; m != last && m != nil && steps < 24; m, steps = m.next, steps+1 {
		if hit(m) {
			return true
		}
	}
	if p.beside(first, (*node).before, reach, own, hit) || p.beside(last, (*node).after, reach, own, hit) {
		return true
	}
	r := n.line.n - 2
	return r >= 0 && p.lines[r].top+apart+1.3 >= low && p.nearby(n, first.stands(), reach, hit)
}

// stands is a place of the row below that lies under n; nil if none is known.
func (n *node) stands() *node {
	for _, m := range [3]*node{n, n.prev, n.next} {
		if m != nil && len(m.feet) > 0 {
			return m.feet[0]
		}
	}
	return nil
}

// lowest is the level under which no stroke of a stitch lies: the lowest of its feet, or that of a cross that stands upright among others.
func (n *node) lowest() float64 {
	v, lift := n.v-n.h, n.fv-footLevel(n)
	for _, f := range n.feet {
		v = min(v, f.v+clear+lift)
	}
	return v
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
func (p *plan) beside(f *node, step func(*node) *node, reach float64, own []*node, hit func(*node) bool) bool {
	for m, steps := step(f), 0; m != nil && !slices.Contains(own, m) && steps < 20; m, steps = step(m), steps+1 {
		far := math.Abs(p.driftIn(m, f)) - max(m.half, m.chord/2+0.6)
		if beside := steps == 0 && m.arch(); !beside && far > reach+1 && far-math.Abs(p.lean(m)) > reach+1 { // an arch's ends lie lower than it is long
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
	last, body := p.other, p.mine
	for i, b := range l.nodes {
		last, body = body, p.body(last, b)
		a := b.prev
		if a == nil || i == 0 || p.mayMeet(a, b) {
			continue
		}
		if d := nearness(last, body); d < apart-0.02 {
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
	}
	p.other, p.mine = last, body
	return found
}

// mayMeet reports whether no room of their own parts two neighbours of a row: chains, what stands in one place, stitches that cross, and
// marks, arches and picots, which take theirs from others.
func (p *plan) mayMeet(a, b *node) bool {
	none := func(n *node) bool { return n.mark || n.arch() || n.picot() }
	together := a.group != nil && b.group != nil && &a.group[0] == &b.group[0]
	return none(a) || none(b) || together || a.chain() && b.chain() || slices.Contains(p.crossing[a], b)
}
