package chart

import (
	"math"
	"slices"
)

// guess gives a row of a round its radius before its heads are known.
func (p *plan) guess(r int) {
	if p.form == flat || len(p.lines) == 0 {
		return
	}
	l := p.lines[r]
	if r > 0 {
		l.base = p.lines[r-1].top
	}
	high := 0.0
	for _, n := range l.nodes {
		high = max(high, n.h)
	}
	l.top = max(l.base+high, p.need(l)/around, l.least)
	if l.row.Base {
		l.top = p.ringOf()
	} else if r == 0 {
		l.base = p.ringOf()
		l.top = max(l.base+high, p.need(l)/around)
	}
	for _, n := range l.nodes {
		n.v = l.top
	}
}

// closeUp moves rounds of arches out under a round that needs more room than they leave it, and says whether any is moved: each takes
// half of the gap over it.
func (p *plan) closeUp() bool {
	moved := false
	for r := len(p.lines) - 1; r > 1; r-- {
		l, below := p.lines[r], p.lines[r-1]
		far := max(l.top, l.least) - l.tallest() - clear - below.top
		if p.isCircle(l) && p.isCircle(below) && far > farOff && below.wide() && !l.row.Spiral {
			below.least, moved = below.top+far/2, true
		}
	}
	return moved
}

// farOff is how far a round stands off the one that it is worked into, at most, mm.
const farOff = 2.0

// wide reports whether a round has arches of several chains, which open as far as it is wide.
func (l *line) wide() bool {
	return slices.ContainsFunc(l.nodes, func(n *node) bool { return n.arch() && n.st.span() > 2 })
}

// ringOf is the radius of the ring, at which the stitches of the first round stand
// beside each other already at half their height.
func (p *plan) ringOf() float64 {
	r := ringMin
	first := p.lines[0]
	if first.row.Base {
		r = max(r, p.need(first)/around)
		if len(p.lines) == 1 {
			return r
		}
		first = p.lines[1]
	}
	if p.form == polygon { // its first round stands along the sides
		return r
	}
	wide, high := p.slot, 0.0
	for _, n := range first.nodes {
		wide += 2 * topHalf * 1.2
		high = max(high, n.h)
	}
	if p.lines[0].row.Base { // its ovals lie beside each other, and stems reach down to them
		return max(r, min(wide/around-clear-high/2, mostOpen*r))
	}
	return max(r, wide/around-clear-high/2)
}

// mostOpen is how far a ring of chains opens for what stands around it, of its least radius.
const mostOpen = 1.6

// scale is how many mm a unit of q is at the level of the row's heads.
func (p *plan) scale(l *line) float64 {
	if p.isCircle(l) {
		return max(l.top, 1e-6) * (1 - l.wedge/around)
	}
	return 1
}

// isCircle reports whether a row lies on a circle: all of a round chart, and the ring
// of a polygon.
func (p *plan) isCircle(l *line) bool {
	return p.form == circle || p.form == polygon && l.corners == nil
}

// open makes room for the number of a round between its last and its first stitch:
// q runs as if there were none, so that rounds stand over one another.
func (p *plan) open(l *line) {
	if !p.isCircle(l) || len(l.nodes) == 0 {
		return
	}
	first, last := l.nodes[0].q, l.nodes[len(l.nodes)-1].q
	l.cut = first - max(around-(last-first), 0)/2
	l.wedge = 0
	if l.row.Base {
		return
	}
	l.wedge = min(p.slot/max(l.top, 1e-6), mostWedge)
	if l.strays = l.flower; !l.flower && l.n > 1 && p.isCircle(p.lines[l.n-1]) {
		below := p.lines[l.n-1]
		d := l.cut - below.cut
		l.strays = below.strays || !below.row.Base && math.Abs(d-around*math.Round(d/around))*l.top > p.slot
	}
	switch {
	case l.strays:
		l.wedge *= strayWedge
	case l.nodes[0].standsBeside():
		l.wedge *= besideWedge
	}
}

// strayWedge is what a round keeps of the room for its number that begins beside where the one below does: the stitches of both
// stand over each other, and the number where nothing is in its way.
const strayWedge = 0.25

// besideWedge is what a round keeps of it that begins with a chain that stands on nothing: the number stands over the room of that.
const besideWedge = 0.6

// angle is the angle at which a node of a round is drawn.
func (p *plan) angle(n *node) float64 {
	l := n.line
	return l.cut + l.wedge/2 + (n.q-l.cut)*(1-l.wedge/around)
}

// turned is the angle from f to n, the short way.
func (p *plan) turned(n, f *node) float64 {
	d := p.angle(n) - p.angle(f)
	return d - around*math.Round(d/around)
}

// near is the angle q as it is nearest to the angle by; a place in a row stays.
func (p *plan) near(q, by float64) float64 {
	if p.form != flat && p.form != oval {
		q += around * math.Round((by-q)/around)
	}
	return q
}

// mostWedge is the most of a round that the room for its number takes, in radians: what stands over the stitches beside it
// leans for it.
const mostWedge = 0.3
