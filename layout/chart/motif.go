package chart

import (
	"math"
	"slices"
)

// layMotif lays rounds with corners: those without corners first, around the middle, then
// each of the others along its sides, as far out as its stitches are tall and its sides long.
func (p *plan) layMotif() {
	p.begin()
	turned := false
	for r, l := range p.lines {
		if l.corners == nil {
			if r > 0 {
				p.up(l, 0)
			}
			p.settle(r)
			continue
		}
		l.base = p.motifBase(l)
		l.top = l.base + clear + l.tallest()
		if !turned && r > 0 {
			p.turnRing(l)
			l.top = l.base + clear + l.tallest()
		}
		turned = true
		for range tries {
			p.alongSides(l)
			if p.crowd(l) == nil {
				break
			}
			l.top += 0.4
		}
	}
}

// motifBase is the level on which a round with corners stands. What stands on nothing keeps clear of the arches below.
func (p *plan) motifBase(l *line) float64 {
	if l.n == 0 {
		return p.ringOf()
	}
	below := p.lines[l.n-1]
	base := below.top
	if l.row.Unread != "" {
		for _, n := range below.nodes {
			base = max(base, n.v)
		}
	}
	return base
}

// turnRing turns the rounds within so that those places of l stand over their feet, on the mean of them all.
func (p *plan) turnRing(l *line) {
	for range turns {
		p.alongSides(l)
		sin, cos := 0.0, 0.0
		for _, n := range l.nodes {
			for _, f := range n.feet {
				d := aim(p.point(n, l.top)) - aim(p.point(f, f.v))
				sin, cos = sin+math.Sin(d)/float64(len(n.feet)), cos+math.Cos(d)/float64(len(n.feet))
			}
		}
		if sin == 0 && cos == 0 {
			return
		}
		for _, m := range p.lines[:l.n] {
			p.turnBy(m, math.Atan2(sin, cos))
		}
	}
}

// turnBy turns a round by an angle, with its arches.
func (p *plan) turnBy(l *line, by float64) {
	l.version++
	l.cut += by
	for _, n := range l.nodes {
		n.q += by
	}
	for _, n := range l.nodes {
		if n.arch() {
			p.bow(n)
		}
	}
}

// turns is how often the rounds within are turned: what stands on them moves with them.
const turns = 3

// aim is the direction of a point from the centre.
func aim(at pt) float64 { return math.Atan2(at.Y, at.X) }

// alongSides sets a round along its sides, and gives its stitches their levels.
func (p *plan) alongSides(l *line) {
	l.version++
	k := p.sides
	sides := make([]side, k)
	for s := range sides {
		sides[s] = side{p: p, l: l, arches: l.corners[0]%2 == 0 && l.nodes[l.corners[0]/2].arch(), from: p.cornerRoom(l, (s+k-1)%k), to: p.cornerRoom(l, s)}
	}
	start := 0 // the first node of a side
	for i := range l.nodes {
		if l.nodes[i].side != l.nodes[(i+len(l.nodes)-1)%len(l.nodes)].side {
			start = i
			break
		}
	}
	for j := range l.nodes {
		n := l.nodes[(start+j)%len(l.nodes)]
		if n.corner {
			n.q = 0
			continue
		}
		sides[n.side].nodes = append(sides[n.side].nodes, n)
	}
	tan := math.Tan(math.Pi / float64(k))
	p.longSides(l, sides, tan)
	p.sideLevels(l)
	for s := range sides {
		sides[s].place(l.top * tan)
	}
	p.picots(l)
	for _, n := range l.nodes {
		if n.arch() {
			p.bow(n)
		}
	}
}

// longSides stands a round as far out as its sides are long, and lets its arches bow higher where it would stand far outside of
// the one below.
func (p *plan) longSides(l *line, sides []side, tan float64) {
	free := max(l.top, l.base+clear+l.tallest()+roomy)
	wide := longest(sides, 1) / 2 / tan
	if wide <= free {
		l.top = max(l.top, wide)
		return
	}
	least := longest(sides, bowed) / 2 / tan
	l.top = min(max(free, least), wide)
	by := 1.0
	if wide > least {
		by = bowed + (1-bowed)*(l.top-least)/(wide-least)
	}
	longest(sides, by)
}

// sideLevels gives the heads of a round with corners one level: the tallest stand on the
// round below, and none stands far under them.
func (p *plan) sideLevels(l *line) {
	tallest := l.tallest()
	for _, n := range l.nodes {
		if n.arch() || n.picot() {
			n.v, n.fv = l.top, l.top
			continue
		}
		h := min(n.h, tallest)
		foot := l.base + clear
		if len(n.feet) > 0 {
			foot = footLevel(n)
		}
		n.v = max(min(foot+h, l.top), l.top-roundDip)
		if h == tallest {
			n.v = l.top
		}
		n.fv = n.v - h
		if len(n.feet) <= 1 && !n.st.Turn && l.n > 0 { // down to the ring, or to its place
			n.fv = max(n.v-(1+farther)*h, min(n.fv, foot))
		}
		if n.corner {
			n.fv = n.v - h*math.Cos(math.Pi/float64(p.sides))
		}
	}
}

// cornerRoom is how far from the corner at a side's end its last symbol keeps: an arch turns
// the corner with little of its length left over.
func (p *plan) cornerRoom(l *line, s int) float64 {
	c := l.corners[s]
	if c%2 != 0 {
		return 0.6
	}
	n := l.nodes[c/2]
	if n.arch() {
		return 0.42 * float64(min(n.st.Chain, 5)) * ovalLong / math.Cos(math.Pi/float64(p.sides))
	}
	return n.half
}

// side is one side of a round: its nodes from corner to corner, the least room before
// each and after the last, and the room that the corners take.
type side struct {
	p        *plan
	l        *line
	from, to float64
	arches   bool    // arches turn the corners
	bent     bool    // the round end of an oval
	even     bool    // whose stitches stand evenly
	narrow   float64 // how wide its arches are at least, of their usual width; 0: as usual
	nodes    []*node
	gap      []float64
	need     float64
}

// longest is the room that the longest side needs whose arches are narrower by a factor.
func longest(sides []side, arches float64) float64 {
	long := 0.0
	for s := range sides {
		sides[s].narrow = arches
		sides[s].measure()
		long = max(long, sides[s].need)
	}
	return long
}

func (s *side) measure() {
	s.need, s.even = s.from+s.to, s.plainEnd()
	s.gap = make([]float64, len(s.nodes)+1)
	last := 0.0
	for i, n := range s.nodes {
		half := n.half
		if s.narrow > 0 && n.arch() && n.st.span() > 2 {
			half *= s.narrow
		}
		s.gap[i] = last + half + n.extra
		if n == s.l.nodes[0] && !s.l.row.Base {
			s.gap[i] += s.p.slot * slotShare[s.bent && !s.even]
		}
		last = half
		s.need += s.gap[i]
	}
	s.gap[len(s.nodes)] = last
	s.need += last
	if s.even { // what stands beside it on the straight is as far from the end as two places of the chain
		each := s.p.track / float64(len(s.p.lines[0].nodes)-1)
		for _, i := range [2]int{0, len(s.nodes)} {
			less := min(s.gap[i], each-topHalf)
			s.gap[i] -= less
			s.need -= less
		}
	}
}

// trackOver is overFoot along a chain, where as many stand on as many, and around its ends.
var trackOver = map[bool]float64{false: 40, true: 8}

// How much farther out than its stitches are tall a round stands whose arches keep their width, mm; and the least width of arches
// farther out.
const (
	roomy = 1.5
	bowed = 0.6
)

// slotShare is the room of a round's number where it begins, of its size: more at an end with arches, where it narrows.
var slotShare = map[bool]float64{false: 0.3, true: 1.5}

const (
	stiff    = 4.0  // of the room between two stitches, beside the wish to stand over a foot
	fanWide  = 1.35 // how far stitches in one place stand apart at most, of their least room
	overFoot = 1.0
)

// place sets the nodes as evenly as the side lets it, near to what they stand on. half is
// half the side.
func (s *side) place(half float64) {
	k := len(s.nodes)
	if k == 0 {
		return
	}
	rest := s.rests(2 * half)
	t, w, x := make([]float64, k), make([]float64, k), make([]float64, k)
	for i, n := range s.nodes {
		if len(n.feet) == 0 || s.l.n == 0 || s.bent && s.l.n == 1 {
			continue
		}
		w[i] = overFoot
		if s.p.form == oval {
			w[i] = trackOver[s.bent]
		}
		for _, f := range n.feet {
			t[i] += (s.along(f) + s.p.aside(n, f)) / float64(len(n.feet))
		}
		if n.group != nil {
			w[i] /= float64(len(n.group))
		}
	}
	s.p.solve.springs(x, t, w, rest, stiff, &window{-half + s.from, half - s.to})
	for i := range w {
		w[i] = 1
	}
	copy(t, x)
	lo, hi := -half+s.from+s.gap[0], half-s.to-s.gap[k]
	s.p.solve.spread(x, t, w, s.gap[:k], lo, hi)
	for i, n := range s.nodes {
		n.q = x[i]
		if s.bent {
			n.q /= s.radius()
		}
	}
}

// along is where f lies along the side.
func (s *side) along(f *node) float64 {
	if s.p.form == oval {
		at := s.p.trackAlong(f, s.nodes[0])
		if s.bent {
			at *= s.radius() / max(f.v, 1e-6)
		}
		return at
	}
	d := s.p.dirs[2*s.nodes[0].side]
	at := s.p.point(f, f.v)
	return at.Y*d.X - at.X*d.Y
}

// rests shares a length among the gaps of a side in proportion, but for those beside an arch
// at the corner, which keep their least, and those within a cluster, which open little where
// others can open more.
func (s *side) rests(long float64) []float64 {
	inner, outer := 0.0, 0.0
	within := func(i int) bool {
		return i > 0 && i < len(s.nodes) && s.nodes[i].group != nil && s.nodes[i-1].group != nil && s.nodes[i].group[0] == s.nodes[i-1].group[0]
	}
	k := len(s.gap) - 1
	long -= s.from + s.to
	if s.even {
		return s.evenly(long)
	}
	for i, g := range s.gap {
		switch {
		case s.arches && (i == 0 || i == k):
			long -= g
		case within(i):
			inner += g
		default:
			outer += g
		}
	}
	even := long / max(inner+outer, 1e-9)
	fan := min(even, max(fanWide, 0.8*even))
	if outer < 0.2*inner {
		fan = even
	}
	out := make([]float64, k+1)
	for i, g := range s.gap {
		switch {
		case s.arches && (i == 0 || i == k):
			out[i] = g
		case within(i):
			out[i] = g * fan
		default:
			out[i] = g * (long - fan*inner) / max(outer, 1e-9)
		}
	}
	return out
}

// plainEnd reports whether a side is a round end of stitches alone, also beside it.
func (s *side) plainEnd() bool {
	k := len(s.nodes) - 1
	if !s.bent || k < 0 || s.p.chains || slices.ContainsFunc(s.nodes, (*node).standsBeside) { // the legs of what stands beside it lean towards it
		return false
	}
	arch := func(n *node) bool { return n != nil && (n.arch() || n.picot()) }
	return !slices.ContainsFunc(s.nodes, arch) && !arch(s.nodes[0].prev) && !arch(s.nodes[k].next)
}

// evenly shares the length of a round end so that its stitches, and those beside it on the straight sides, stand equally far
// apart, but for the room that the number takes.
func (s *side) evenly(long float64) []float64 {
	k := len(s.nodes)
	each := s.p.track / float64(len(s.p.lines[0].nodes)-1)
	out := make([]float64, k+1)
	wide := (long + 2*each) / float64(k+1)
	edge := max(wide-each, 0)
	for i := range out {
		out[i] = (long - 2*edge) / float64(max(k-1, 1))
	}
	out[0], out[k] = edge, edge
	return out
}

// crowd is the first symbol of a round that runs into one of the round below, or into one
// beside it, an arch between them or not; nil if none does.
func (p *plan) crowd(l *line) *node {
	for _, n := range l.nodes {
		if n.arch() || n.picot() || n.mark {
			continue
		}
		a := n.prev
		for a != nil && a != n && (a.arch() || a.picot()) {
			a = a.prev
		}
		if a != nil && a != n && !sameGroup(a, n) && nearness(p.made(a), p.made(n)) < apart/2 {
			return n
		}
		if l.n > 0 && !p.lines[l.n-1].row.Base && len(n.feet) > 0 && p.meets(p.made(n), n, n.feet) {
			return n
		}
	}
	return nil
}

func sameGroup(a, b *node) bool {
	return a.group != nil && b.group != nil && a.group[0] == b.group[0]
}

// sideAngle is the direction in which a side lies from the centre: the first at the
// top, the others anticlockwise.
func (p *plan) sideAngle(side int) float64 {
	return topAt + around*float64(side)/float64(p.sides)
}

// aim notes the directions of the sides, and of the corners behind each.
func (p *plan) aim(sides int) {
	p.sides = sides
	p.dirs = make([]pt, 2*sides)
	for i := range p.dirs {
		p.dirs[i] = polar(1, topAt+around*float64(i)/float64(2*sides))
	}
}

// sideOf is where f lies along the side of n, mm from the side's middle; for the stitch at
// a corner, beside the line through it.
func (p *plan) sideOf(f, n *node) float64 {
	d := p.outward(n)
	at := p.point(f, f.v)
	return at.Y*d.X - at.X*d.Y
}
