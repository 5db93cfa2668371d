package chart

import (
	"math"
	"slices"
)

// A motif worked around a foundation chain is laid along a track: two straight sides over and under
// the chain, and two round ends around its last places. As seen from the right side its rounds go
// along the top from the right-hand end, where the hook was, around the left-hand one, and back.

// The sides of a track, in the order in which rounds meet them.
const (
	topSide = iota
	leftEnd
	underSide
	rightEnd
	trackSides
)

const (
	core        = 1.35 // mm from the middle of the chain's last place to the feet around it
	mostTrack   = 60   // chains of a foundation that rounds are drawn around
	trackTries  = 60   // how often a round is set farther out where symbols meet
	trackRaises = 8    // the same on a straight side, before all are set longer
	trackLonger = 8    // how often they are
	trackGrow   = 0.03 // of its length, each time
	trackWiden  = 0.3  // mm of an end's radius, each time
)

// bent reports whether n stands at a round end of a track.
func (n *node) bent() bool { return n.side%2 == 1 }

// alongChain cuts the foundation that a round goes along on both sides to the places that are worked into.
func (w *Work) alongChain() {
	if len(w.Rows) < 2 || !w.Rows[0].Base || !w.Rows[1].under() {
		return
	}
	base, row := &w.Rows[0], &w.Rows[1]
	first, last := len(base.St), row.lastUsed()
	for i := range row.St {
		for _, f := range row.St[i].Feet {
			first = min(first, f)
		}
	}
	base.St = base.St[first : last+1]
	row.moveFeet(-first, 0)
}

// under reports whether a round goes on along the other side of its foundation.
func (r *Row) under() bool {
	for i := range r.St {
		if r.St[i].Under {
			return r.Round
		}
	}
	return false
}

// track says on which side of a track each stitch of each round stands; nil if they do not lie along one.
func (w *Work) track() [][]int {
	if len(w.Rows) < 2 || !w.Rows[0].Base || !w.Rows[1].under() || len(w.Rows[0].St) > mostTrack || len(w.Rows[0].St) < 2 {
		return nil
	}
	out := [][]int{make([]int, len(w.Rows[0].St))}
	for r := 1; r < len(w.Rows); r++ {
		row := &w.Rows[r]
		if !row.Round || row.Base {
			return nil
		}
		sides := make([]int, len(row.St))
		for i := range row.St {
			sides[i] = -1
			if s := &row.St[i]; len(s.Feet) > 0 {
				sides[i] = s.sideOver(r, out[r-1], len(w.Rows[0].St)-1)
			}
		}
		fillSides(sides)
		if !around4(sides) {
			return nil
		}
		out = append(out, sides)
	}
	return out
}

// sideOver is the side on which a stitch of round r stands, over those of the row below; last is the last place
// of the chain.
func (s *St) sideOver(r int, below []int, last int) int {
	f := s.Feet[0]
	switch {
	case r > 1:
		return below[f]
	case f == 0:
		return rightEnd
	case f == last:
		return leftEnd
	case s.Under:
		return underSide
	}
	return topSide
}

// fillSides gives what stands on nothing, such as an arch, the side of what stands beside it: at
// the border of two the round one.
func fillSides(sides []int) {
	k := len(sides)
	for i, s := range sides {
		if s >= 0 {
			continue
		}
		a, b := -1, -1
		for d := 1; d < k && (a < 0 || b < 0); d++ {
			if q := sides[(i+k-d)%k]; a < 0 && q >= 0 {
				a = q
			}
			if q := sides[(i+d)%k]; b < 0 && q >= 0 {
				b = q
			}
		}
		if sides[i] = a; b%2 == 1 {
			sides[i] = b
		}
	}
}

// around4 reports whether each side is met once on the way around.
func around4(sides []int) bool {
	changes := 0
	var seen [trackSides]bool
	for i, s := range sides {
		if s < 0 {
			return false
		}
		seen[s] = true
		if s != sides[(i+len(sides)-1)%len(sides)] {
			changes++
		}
	}
	return changes <= trackSides && seen[leftEnd]
}

// onTrack gives every node its side, in the order of working.
func (p *plan) onTrack(sides [][]int) {
	for r, l := range p.lines {
		for i := range l.row.St {
			l.at(i).side = sides[r][i]
		}
	}
}

// layTrack lays rounds around a chain: each along its sides, the straight ones as long as the fullest
// needs, the ends as far out as their stitches are tall and many.
func (p *plan) layTrack() {
	p.aim(trackSides)
	has := func(is func(*node) bool) bool {
		return slices.ContainsFunc(p.lines[1:], func(l *line) bool { return slices.ContainsFunc(l.nodes, is) })
	}
	p.chains = has(func(n *node) bool { return len(n.feet) == 0 && !n.arch() && !n.picot() && !n.mark }) &&
		(len(p.lines[0].nodes) < longOval || has((*node).arch))
	p.track = max(2*topHalf*1.1*float64(len(p.lines[0].nodes)-1), 1)
	for _, l := range p.lines[1:] {
		p.lengthen(p.sidesOf(l))
	}
	p.layAlong(false)
	p.loosenTrack()
	for try := range trackLonger {
		if p.layAlong(try == trackLonger-1) {
			return
		}
		p.track *= 1 + trackGrow
	}
}

// longOval is over how many chains an end of an oval stands evenly though the other has a chain over nothing: on a short one both lean.
const longOval = 7

// loosenTrack makes the straight sides longer, so that stitches stand on them about as far apart as around the ends.
func (p *plan) loosenTrack() {
	const most = 1.6 // of what they need
	sum, n := 0.0, 0
	for _, l := range p.lines[1:] {
		for _, m := range l.nodes {
			if m.bent() {
				n++
			}
		}
		sum += around / 2 * (l.tops[leftEnd] + l.tops[rightEnd])
	}
	if n > 0 {
		each := sum / float64(n)
		p.track = min(max(p.track, 0.9*each*float64(len(p.lines[0].nodes)-1)), most*p.track)
	}
}

// lengthen makes the straight sides as long as a round needs: the places of the chain stand as far apart as
// what stands on them.
func (p *plan) lengthen(sides []side) {
	places := float64(len(p.lines[0].nodes))
	for _, s := range sides {
		if !s.bent {
			p.track = max(p.track, s.need*(places-1)/max(places-2, 1))
		}
	}
}

// layAlong lays all rounds on a track of the length that it has; it reports false if it is too short,
// the last time only when nothing else helps.
func (p *plan) layAlong(last bool) bool {
	p.chainAlong()
	fits := true
	for _, l := range p.lines[1:] {
		fits = p.layRound(l, last) && fits
		l.top = 0
		for _, t := range l.tops {
			l.top = max(l.top, t)
		}
	}
	return fits
}

// layRound lays one round, wider or farther out where symbols meet; it reports false if its straight sides are
// too long for the track.
func (p *plan) layRound(l *line, last bool) bool {
	sides := p.sidesOf(l)
	p.tops(l, sides)
	raised := 0
	for range trackTries {
		p.alongTrack(l, sides)
		n := p.crowd(l)
		if n == nil {
			n = p.archInWay(l)
		}
		if n == nil {
			n = p.standsInArch(l)
		}
		if n == nil {
			return true
		}
		if raised++; !last && !n.bent() && raised > trackRaises {
			return false
		}
		l.tops[n.side] += trackWiden
	}
	return last
}

// chainAlong lays the foundation in the middle, the hook's end on the right.
func (p *plan) chainAlong() {
	base := p.lines[0]
	base.version++
	each := p.track / float64(len(base.nodes)-1)
	for i, n := range base.nodes {
		n.side, n.q = topSide, -p.track/2+each*float64(i)
		n.v, n.fv = ovalWide/2, ovalWide/2
	}
	base.top = core
	for s := range base.tops {
		base.tops[s] = core
	}
}

// sidesOf shares a round among the sides of the track, with the room that each needs.
func (p *plan) sidesOf(l *line) []side {
	sides := make([]side, trackSides)
	start := 0
	for i, n := range l.nodes {
		if n.side != l.nodes[(i+len(l.nodes)-1)%len(l.nodes)].side {
			start = i
			break
		}
	}
	for i := range l.nodes {
		n := l.nodes[(start+i)%len(l.nodes)]
		sides[n.side].nodes = append(sides[n.side].nodes, n)
	}
	for i := range sides {
		s := &sides[i]
		s.p, s.l, s.bent = p, l, i%2 == 1
		s.measure()
	}
	return sides
}

// tops sets how far out a round stands on each side: those of one height alike.
func (p *plan) tops(l *line, sides []side) {
	below := p.lines[l.n-1]
	var high [trackSides]float64
	l.base = below.top
	for i, s := range sides {
		for _, n := range s.nodes {
			if n.st.Kind != nil && !n.picot() {
				high[i] = max(high[i], n.h)
			}
		}
		l.tops[i] = below.tops[i] + clear + high[i]
		if s.bent {
			l.tops[i] = max(l.tops[i], s.need/math.Pi+roundDip)
		}
	}
	for i := range sides {
		for k := range sides {
			if high[i] == high[k] && below.tops[i] == below.tops[k] {
				l.tops[i] = max(l.tops[i], l.tops[k])
			}
		}
	}
}

// alongTrack places a round at the levels that its sides have.
func (p *plan) alongTrack(l *line, sides []side) {
	l.version++
	for i := range sides {
		s := &sides[i]
		for _, n := range s.nodes {
			p.trackLevel(n)
		}
		half := p.track / 2
		if s.bent {
			half = s.radius() * math.Pi / 2
		}
		s.place(half)
	}
	if l.n > 1 {
		p.avoid(l)
	}
	p.picots(l)
	for _, n := range l.nodes {
		if n.arch() {
			p.bow(n)
			p.lift(n)
		}
	}
}

// archInWay is the first arch of a round that runs into a symbol; nil if none does.
func (p *plan) archInWay(l *line) *node {
	for _, n := range l.nodes {
		if n.arch() && l.n > 1 && n.prev != nil && n.next != nil && len(n.prev.feet) > 0 && len(n.next.feet) > 0 && p.archHits(n) {
			return n
		}
	}
	return nil
}

// standsInArch is a place of a round over nothing, such as the chain that begins it, that runs into an arch of the round
// below; nil if there is none.
func (p *plan) standsInArch(l *line) *node {
	if l.n < 2 {
		return nil
	}
	for _, n := range l.nodes {
		if len(n.feet) > 0 || n.arch() || n.picot() || n.mark {
			continue
		}
		for _, m := range p.lines[l.n-1].nodes {
			if m.arch() && m.side == n.side && nearness(p.made(n), p.made(m)) < apart/2 {
				return n
			}
		}
	}
	return nil
}

// radius is that at which the lowest heads of a round end stand, mm.
func (s *side) radius() float64 {
	if len(s.nodes) == 0 {
		return 1
	}
	return s.l.tops[s.nodes[0].side] - roundDip
}

// trackLevel gives a stitch its level: at an end near the top of its round, along the chain as tall as it is.
func (p *plan) trackLevel(n *node) {
	top := n.line.tops[n.side]
	if n.arch() || n.picot() {
		n.v, n.fv = top, top
		return
	}
	low := dip
	if n.bent() {
		low = roundDip
	}
	foot := p.lines[n.line.n-1].tops[n.side] + clear
	if len(n.feet) > 0 && n.line.n > 1 {
		foot = footLevel(n)
	}
	n.v = max(min(foot+n.h, top), top-low)
	n.fv = n.v - n.h
}

// centre is the middle of the end of the track at which a side lies; of a straight side its own.
func (p *plan) centre(side int) pt {
	switch side {
	case leftEnd:
		return pt{X: -p.track / 2}
	case rightEnd:
		return pt{X: p.track / 2}
	}
	return pt{}
}

// trackPoint is where n stands on its track at a level.
func (p *plan) trackPoint(n *node, v float64) pt {
	d := p.outward(n)
	if n.bent() {
		return add(p.centre(n.side), mul(d, v))
	}
	return add(mul(d, v), mul(pt{X: -d.Y, Y: d.X}, n.q))
}

// underFoot is where a stitch of the first round stands on the chain: n over, under or around it.
func (p *plan) underFoot(n, f *node, v float64) pt {
	at := p.centre(n.side)
	if !n.bent() {
		at = pt{X: p.point(f, 0).X}
	}
	return add(at, mul(p.outward(n), v))
}

// trackAlong is where f lies along the side of n: mm, at f's level around an end.
func (p *plan) trackAlong(f, n *node) float64 {
	at := p.point(f, f.v)
	if !n.bent() {
		d := p.outward(n)
		return at.Y*d.X - at.X*d.Y
	}
	if f.line.row.Base { // they stand around it
		return n.q * f.v
	}
	c := sub(at, p.centre(n.side))
	d := math.Atan2(c.Y, c.X) - p.sideAngle(n.side)
	return (d - around*math.Round(d/around)) * f.v
}
