package chart

import (
	"cmp"
	"math"
	"slices"
)

// settle places a row for good: along itself, then its levels, and wider where
// symbols would meet; it says whether any did.
func (p *plan) settle(r int) bool {
	l := p.lines[r]
	wider := false
	for try := 0; ; try++ {
		p.guess(r)
		if r > 0 {
			p.up(l, pull)
		} else if p.isCircle(l) && try > 0 {
			p.even(l)
		}
		p.levels(r)
		if try == tries || !p.widen(l, try >= tries/2) {
			return wider
		}
		wider = true
	}
}

// drift is how far, in mm, the head of n stands beside the straight over f.
func (p *plan) drift(n, f *node) float64 {
	switch {
	case p.isCircle(n.line):
		return p.turned(n, f) * n.v
	case p.form == oval && n.bent():
		return n.q*n.v - p.trackAlong(f, n)*n.v/max(f.v, 1e-6)
	case p.form == oval:
		return n.q - p.trackAlong(f, n)
	case p.form == polygon && n.corner:
		return -p.sideOf(f, n)
	case p.form == polygon:
		return n.q - p.sideOf(f, n)
	}
	return n.q - f.q
}

// lean is the mean drift from all feet, as they stand.
func (p *plan) lean(n *node) float64 {
	if len(n.feet) == 0 {
		return 0
	}
	sum := 0.0
	for _, f := range n.feet {
		sum += p.drift(n, f) - p.aside(n, f)
	}
	return sum / float64(len(n.feet))
}

// levels gives the heads of a row their heights: each stitch stands on its foot at
// its kind's height, longer only where it would lean more than the steepest; none
// stands far under its row's top, and none runs into a symbol below.
func (p *plan) levels(r int) {
	l := p.lines[r]
	l.version++
	if l.row.Base {
		p.baseLevels(l)
		return
	}
	gap := p.baseOf(l)
	top := l.base + p.pitchOf(l)
	if p.isCircle(l) {
		top = max(top, p.need(l)/around, l.least)
	}
	stand := l.standing()
	l.steep = p.steepOf(stand)
	for _, n := range stand {
		n.fv = p.footOf(n, gap) + n.raise
		n.v = n.fv + p.rises(n)
	}
	if r > 0 {
		p.avoid(l)
	}
	top = topOf(stand, top)
	if p.straighten(l, stand, top) && r > 0 {
		p.avoid(l)
		top = topOf(stand, top)
	}
	l.top = top
	p.picots(l)
	for _, n := range l.nodes {
		if n.arch() {
			p.bow(n)
			p.lift(n)
		}
		if n.arch() || n.picot() {
			l.top = max(l.top, n.v)
		}
	}
}

// steepOf is how far the stitches of a row lean at most: less far where most of them would, or they would lie on each other.
func (p *plan) steepOf(stand []*node) float64 {
	sum, all := 0.0, 0.0
	for _, n := range stand {
		if n.chain() || n.st.Kind != nil && n.st.Kind.Key == "slip" { // of blocks from corner to corner
			return steep
		}
		if len(n.feet) > 0 && n.h > 0 {
			sum, all = sum+math.Abs(p.lean(n))/n.h, all+1
		}
	}
	if p.form == flat && sum > 0.75*all {
		return steepAll
	}
	return steep
}

// baseOf sets the level on which a row stands, and gives the room under it for words that tell
// what is left out there.
func (p *plan) baseOf(l *line) float64 {
	switch {
	case l.n > 0:
		l.base = p.lines[l.n-1].top
	case p.form != flat:
		l.base = p.ringOf()
	default:
		l.base = p.start
	}
	if p.form == flat && l.row.gapWords() != "" {
		l.base += gapHigh
		return gapHigh
	}
	return 0
}

// standing are the stitches of a row that stand by themselves: no arches and no picots.
func (l *line) standing() []*node {
	out := make([]*node, 0, len(l.nodes))
	for _, n := range l.nodes {
		if !n.arch() && !n.picot() {
			out = append(out, n)
		}
	}
	return out
}

// footOf is the level of a stitch's foot, over the room gap.
func (p *plan) footOf(n *node, gap float64) float64 {
	switch {
	case len(n.feet) > 0:
		return footLevel(n) + gap
	case n.st.Turn:
		return p.besideLevel(n, n.line.base-gap) + gap
	}
	return n.line.base + clear
}

// topOf is the highest head, or top.
func topOf(nodes []*node, top float64) float64 {
	for _, n := range nodes {
		top = max(top, n.v)
	}
	return top
}

// straighten raises stitches that stand far under their row's top; those of a row of one
// height to its top, if they are near. It says whether any was.
func (p *plan) straighten(l *line, stand []*node, top float64) bool {
	moved := false
	even := p.form == flat && l.oneHeight()
	for _, n := range stand {
		if n.chain() { // added at the edge: it goes on from the heads
			n.fv, n.v = top-ovalWide/2, top-ovalWide/2
			continue
		}
		if p.standsLow(n) {
			continue
		}
		low := top - p.dip()
		if l.steep == steepAll {
			low = top
		}
		if even && n.v > low {
			low = top
		}
		if d := low - n.v; d > 0 {
			lift := d
			switch {
			case even: // it stands at its foot, and is as long as it takes
				lift = min(d, loosely) + max(0, d-loosely-l.longer()*n.h)
			case p.form == circle && (len(n.feet) == 1 || l.n <= 1 && !n.st.Turn): // a round far out: its stems reach down to their places
				lift = max(0, d-farther*n.h)
			}
			n.fv += lift
			n.v += d
			moved = true
		}
	}
	return moved
}

// longer is how much longer than its kind a stitch of a row may be, to end at its top: far, where most lean.
func (l *line) longer() float64 {
	if l.steep == steepAll {
		return 3 * longer
	}
	return longer
}

// standsLow reports whether a stitch stays under its row's top: a slip stitch has no stem and lies on its place; in rounds the short ones
// of a petal stand at its sides, and what parts petals between them.
func (p *plan) standsLow(n *node) bool {
	return n.st.Kind != nil && n.st.Kind.Key == "slip" || p.form != flat && (n.petal() || n.prev.petal() || n.next.petal())
}

// dip is how far a head may stand under its row's top: in rounds, where what is
// farther in has less room, less far.
func (p *plan) dip() float64 {
	if p.form == flat {
		return dip
	}
	return roundDip
}

// pitchOf is the least height of a row: its number needs room under the next one
// on the same side.
func (p *plan) pitchOf(l *line) float64 {
	if p.form != flat || l.n > 0 && !p.lines[l.n-1].row.Base && p.lines[l.n-1].rightward == l.rightward {
		return 2 * pitch
	}
	return pitch
}

func footLevel(n *node) float64 {
	v := 0.0
	for _, f := range n.feet {
		v = max(v, f.v)
	}
	return v + clear
}

// besideLevel is the foot of a chain that stands on no stitch: that of the stitch
// beside it.
func (p *plan) besideLevel(n *node, otherwise float64) float64 {
	for _, m := range []*node{n.next, n.prev} {
		if m != nil && m.line == n.line && len(m.feet) > 0 {
			return footLevel(m)
		}
	}
	return otherwise + clear
}

// rises is how far above its foot the head of n stands.
func (p *plan) rises(n *node) float64 {
	dx := math.Abs(p.lean(n))
	h := n.h
	if n.corner {
		return h * math.Cos(math.Pi/float64(p.sides))
	}
	if n.st.Turn && n.st.Kind == nil {
		h = min(h, n.line.tallest())
	}
	if p.wave != nil {
		l := 1.03 * h // its foot lies beside the middle of its place
		return max(h*math.Hypot(1, p.wave.slope(n.q)), math.Sqrt(max(l*l-dx*dx, 0))-p.bent(n))
	}
	l := max(h, dx/cmp.Or(n.line.steep, steep))
	up := math.Sqrt(l*l - dx*dx)
	if k := plainOf(n); p.form == circle && n.group != nil && k != nil && k.Key == "sc" { // it is drawn near to upright
		up = max(up, 0.85*h)
	}
	return up
}

// bent is how much higher the wave of the rows is at a stitch than at its feet.
func (p *plan) bent(n *node) float64 {
	if len(n.feet) == 0 {
		return 0
	}
	at := 0.0
	for _, f := range n.feet {
		at += p.wave.at(f.q) / float64(len(n.feet))
	}
	return p.wave.at(n.q) - at
}

// petal reports whether a stitch shares its place with stitches of other heights.
func (n *node) petal() bool {
	return n != nil && slices.ContainsFunc(n.group, func(m *node) bool { return m.h != n.h })
}

// oneHeight reports whether all stitches of a row are of one height.
func (l *line) oneHeight() bool {
	h := 0.0
	for _, n := range l.nodes {
		if n.st.Kind == nil || n.st.Turn || n.picot() || n.chain() {
			continue
		}
		if h > 0 && n.h != h {
			return false
		}
		h = n.h
	}
	return true
}

func (l *line) tallest() float64 {
	h := 0.0
	for _, n := range l.nodes {
		if n.st.Kind != nil && !n.picot() {
			h = max(h, n.h)
		}
	}
	if h == 0 {
		return tall
	}
	return h
}

// baseLevels lays a foundation.
func (p *plan) baseLevels(l *line) {
	if l.fixed {
		for _, n := range l.nodes {
			l.top = max(l.top, n.v)
		}
		return
	}
	if l.row.Held && p.form == flat { // they stand under the first row
		for _, n := range l.nodes {
			n.v, n.fv = 0, -n.h
		}
		l.top = 0
		return
	}
	l.top = ovalWide / 2
	at := l.top
	if p.form != flat {
		l.top = p.ringOf()
		at = l.top
	} else if p.work.overRingOf(l.n) { // it holds all of the round, which no one of its chains does
		at -= ovalWide
	}
	for _, n := range l.nodes {
		n.v, n.fv = at, at
		if p.form != flat {
			n.v += ovalWide / 2
		}
	}
	if p.form != flat {
		l.top += ovalWide / 2
	}
}

// picots stand on the stitches between which they are made.
func (p *plan) picots(l *line) {
	for _, n := range l.nodes {
		if !n.picot() {
			continue
		}
		v, arch := l.base, false
		for _, dir := range [2]func(*node) *node{(*node).before, (*node).after} {
			m := dir(n)
			for steps := 0; m != nil && (m.arch() || m.picot()) && steps < 4; steps++ {
				arch = arch || m.arch()
				m = dir(m)
			}
			if m != nil && !m.arch() && !m.picot() {
				v = max(v, m.v)
			}
		}
		n.fv = v + 0.15
		if arch {
			n.fv += 1.6
		}
		n.v = n.fv + n.h
	}
}

func (n *node) before() *node { return n.prev }
func (n *node) after() *node  { return n.next }

// driftIn is the distance in mm along one row.
func (p *plan) driftIn(m, f *node) float64 {
	switch {
	case p.isCircle(m.line):
		return p.turned(m, f) * m.v
	case p.form == polygon || p.form == oval:
		return p.drift(m, f)
	}
	return m.q - f.q
}
