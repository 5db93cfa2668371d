package chart

import (
	"math"

	"flatwright/schematic/stitch"
)

// form is how a chart is laid out.
type form int

const (
	flat    form = iota // rows, one above the other
	circle              // rounds from a centre
	polygon             // rounds with corners, each side straight
)

// node is a stitch on the chart. q is its head's place along its row: mm in rows, an
// angle in rounds, mm from the middle of its side in a polygon. v is its head's
// level: mm above the foundation, or from the centre. fv is the level of its foot.
type node struct {
	st          *St
	line        *line
	half, h     float64
	q, v, fv    float64
	feet        []*node
	kids        int
	kidSum      float64
	share       int     // it's the share-th of the group
	group       []*node // all that stand on its foot, side by side; nil if it alone does
	side        int     // of a polygon
	corner      bool
	extra       float64 // room beside the usual before it
	raise       float64 // above where it would stand, to be clear of a neighbour
	prev, next  *node   // in its row, around in a round
	chord, rise float64 // of an arch
	ends        [2]pt
	mark        bool // a place in a row that is not drawn: a break, a row end
}

// line is a row as laid out: from left to right, or around.
type line struct {
	row       *Row
	n         int // index of the row
	nodes     []*node
	rightward bool // worked from left to right
	base, top float64
	fixed     bool // its places are given: row ends
	corners   []int
	cut       float64 // of a round: the angle between its last and its first stitch
	wedge     float64 // the angle that its number takes there
}

// plan is a whole chart in a plane with y upwards, in mm at the usual size.
type plan struct {
	work  *Work
	form  form
	sides int
	lines []*line
	left  bool // for left-handed work: the mirror image
	slot  float64
	below *sideways // the part along whose row ends this one is worked
	off   int       // rows of the work before the first line
	start float64   // level of the ring
}

const (
	dip       = 3.2         // how far a head may stand under its row's top
	roundDip  = 0.9         // the same in rounds
	steep     = 0.866       // sine of the most that a stitch leans from upright
	pitch     = 1.6         // least distance from row to row
	tries     = 14          // how often a row is set wider where symbols meet
	ringMin   = 1.6         // radius of a ring without chains
	breakHalf = 2.2         // half the room of a break
	rounds    = 3           // of sweeping and settling, while symbols still come too near
	pull      = 0.5         // of the row above on a row, beside that of its feet
	sweeps    = 6           // up and down
	around    = 2 * math.Pi // a whole round
	topAt     = math.Pi / 2 // where rounds start
	share     = 1.6         // how far gaps of a round open, at most
	mostRing  = 40          // chains of a ring that is drawn as one
)

// newPlan makes the nodes of a work and joins them to their feet.
func newPlan(w *Work, left bool) *plan {
	p := &plan{work: w, left: left, slot: 4.2}
	p.form = formOf(w)
	for r := range w.Rows {
		row := &w.Rows[r]
		l := &line{row: row, n: r}
		nodes := make([]node, len(row.St))
		l.nodes = make([]*node, len(row.St))
		for i := range row.St {
			n := &nodes[i]
			n.st, n.line = &row.St[i], l
			n.measure()
			l.nodes[i] = n
			if r > 0 && !row.Edge {
				for _, f := range n.st.Feet {
					n.feet = append(n.feet, p.lines[r-1].at(f))
				}
			}
		}
		p.lines = append(p.lines, l)
		if p.form == flat {
			l.rightward = row.Wrong != left
			if row.Base && len(row.St) > 0 && row.St[0].Kind == rowEnd {
				l.rightward = true
			} else if row.Base {
				l.rightward = !left
				if r+1 < len(w.Rows) && !w.Rows[r+1].Round {
					l.rightward = w.Rows[r+1].Wrong == left
				}
			}
			if !l.rightward {
				reverse(l.nodes)
			}
		}
		l.shareFeet()
	}
	for _, l := range p.lines {
		k := len(l.nodes)
		for i, n := range l.nodes {
			if i > 0 {
				n.prev = l.nodes[i-1]
			}
			if i+1 < k {
				n.next = l.nodes[i+1]
			}
		}
		if p.form != flat && k > 1 {
			l.nodes[0].prev, l.nodes[k-1].next = l.nodes[k-1], l.nodes[0]
		}
	}
	if p.form == circle {
		p.findCorners()
	}
	return p
}

// at is the node of the i-th stitch in the order of working.
func (l *line) at(i int) *node {
	if len(l.nodes) > 1 && l.nodes[0].st != &l.row.St[0] {
		i = len(l.nodes) - 1 - i
	}
	return l.nodes[i]
}

func reverse(s []*node) {
	for i, j := 0, len(s)-1; i < j; i, j = i+1, j-1 {
		s[i], s[j] = s[j], s[i]
	}
}

// formOf is how a work is drawn: rounds from a small ring go around it, all else lies
// in rows.
func formOf(w *Work) form {
	rounds := 0
	for i := range w.Rows {
		r := &w.Rows[i]
		switch {
		case r.Base:
			if len(r.St) > mostRing {
				return flat
			}
		case !r.Round:
			return flat
		case rounds == 0 && i > 0:
			for _, s := range r.St {
				if len(s.Feet) > 0 {
					return flat
				}
			}
			rounds++
		default:
			rounds++
		}
	}
	if rounds == 0 {
		return flat
	}
	return circle
}

// measure gives a node its room and its height.
func (n *node) measure() {
	s := n.st
	switch {
	case s.Break:
		n.half, n.mark = breakHalf, true
	case s.Turn:
		n.half, n.h = 0.9, turnHeight(s.Chain)
		if s.Kind != nil {
			n.h = Height(s.Kind)
		}
	case s.Kind == nil:
		n.half = archHalf(s.Chain)
	default:
		n.half, n.h = halfWidth(s.Kind), Height(s.Kind)
		if s.Kind.Together && s.Kind.Base != "sc" {
			n.half += 0.15
		}
	}
}

func archHalf(chains int) float64 {
	switch chains {
	case 1:
		return 1.1
	case 2:
		return 1.7
	}
	return min(0.315*float64(chains)*ovalLong, 7)
}

func (n *node) arch() bool  { return n.st.arch() }
func (n *node) picot() bool { return n.st.Kind != nil && n.st.Kind.Key == "picot" }

func (n *node) chain() bool { return n.st.Kind != nil && n.st.Kind.Key == "chain" && !n.st.Turn }

// shareFeet counts how many stand on one foot, so that they stand side by side.
func (l *line) shareFeet() {
	for i := 0; i < len(l.nodes); {
		n := l.nodes[i]
		if len(n.feet) != 1 {
			i++
			continue
		}
		group := []*node{n}
		j := i + 1
		for ; j < len(l.nodes); j++ {
			m := l.nodes[j]
			if len(m.feet) == 1 && m.feet[0] == n.feet[0] {
				group = append(group, m)
				continue
			}
			if !m.arch() && !m.picot() {
				break
			}
		}
		for k, m := range group {
			if len(group) > 1 {
				m.share, m.group = k, group
			}
		}
		i = max(i+1, j)
	}
}

// lay places everything: some sweeps up and down, then row by row for good.
func (p *plan) lay() {
	if r := p.work.edgeAt(); r > 0 {
		p.below = turnedPart(p.work, r, p.left)
		q := newPlan(p.below.along(p.work, r), p.left)
		q.below, q.slot, q.off = p.below, p.slot, r-1
		*p = *q
		p.below.fix(p)
	}
	p.begin()
	for _, l := range p.lines[1:] { // every row over the one below, to begin with
		p.up(l, 0)
		p.guess(l.n)
	}
	for range rounds {
		if p.form != polygon {
			for range sweeps {
				p.sweep()
			}
		}
		wider := false
		for r := range p.lines {
			wider = p.settle(r) || wider
		}
		if !wider {
			break
		}
	}
}

// sweep goes up over all rows and down again.
func (p *plan) sweep() {
	p.guess(0)
	for r := 1; r < len(p.lines); r++ {
		p.up(p.lines[r], pull)
		p.guess(r)
	}
	for r := len(p.lines) - 2; r >= 0; r-- {
		p.down(p.lines[r])
	}
}

// begin sets every row out by its gaps alone.
func (p *plan) begin() {
	for r, l := range p.lines {
		if !l.fixed {
			p.guess(r)
			p.even(l)
		}
	}
}

// even sets a row out by its gaps, a round all the way around.
func (p *plan) even(l *line) {
	x, all := 0.0, 0.0
	for i := range l.nodes {
		all += p.gap(l, i)
	}
	for i, n := range l.nodes {
		if i > 0 {
			x += p.gap(l, i)
		}
		n.q = x
		if p.form != flat {
			n.q = x / max(all, 1e-9) * around
		}
	}
	p.open(l)
}

// gap is the least distance, mm, from the node before to the i-th; for the first
// one of a round that from the last.
func (p *plan) gap(l *line, i int) float64 {
	n := l.nodes[i]
	if i > 0 {
		g := l.nodes[i-1].half + n.half + n.extra
		if n.picot() && l.nodes[i-1].picot() {
			g = max(g, 2.7)
		}
		return g
	}
	if p.form == flat || len(l.nodes) < 2 {
		return n.half * 2
	}
	return l.nodes[len(l.nodes)-1].half + n.half + n.extra
}

// need is the length of the row with all its gaps, and the room for its number.
func (p *plan) need(l *line) float64 {
	sum := 0.0
	if p.form != flat && !l.row.Base { // its number
		sum = p.slot
	}
	for i := range l.nodes {
		sum += p.gap(l, i)
	}
	return sum
}

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
	if l.row.Base {
		high = 0
	}
	l.top = max(l.base+high, p.need(l)/around)
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
	return max(r, wide/around-clear-high/2)
}

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
	if !l.row.Base {
		l.wedge = min(p.slot/max(l.top, 1e-6), 1.2)
	}
}

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

// up wishes each stitch over the mean of its feet, and with the share pull of the wish
// under those that stand on it.
func (p *plan) up(l *line, pull float64) {
	p.countKids(l)
	t, w := make([]float64, len(l.nodes)), make([]float64, len(l.nodes))
	any := false
	for i, n := range l.nodes {
		if len(n.feet) == 0 {
			continue
		}
		any = true
		sum, first := 0.0, n.feet[0].q
		for _, f := range n.feet {
			sum += p.near(f.q, first)
		}
		t[i], w[i] = sum/float64(len(n.feet)), p.weight(n)
		if n.kids > 0 && pull > 0 {
			t[i] = (1-pull)*t[i] + pull*p.near(n.kidSum/float64(n.kids), t[i])
		}
	}
	if !any {
		return
	}
	p.fit(l, t, w)
}

// weight is how much a stitch wishes to stand over its foot. Of several in the last
// place of a row, such as half a shell at the edge, the outermost does, so that the
// edge goes straight up.
func (p *plan) weight(n *node) float64 {
	if p.form != flat || n.group == nil {
		return 1
	}
	first, last := n.group[0], n.group[len(n.group)-1]
	f := n.feet[0]
	if first.prev.beyond() && f.prev.beyond() && n != first || last.next.beyond() && f.next.beyond() && n != last {
		return 0.05
	}
	return 1
}

// beyond reports whether n lies beyond the stitches of its row: it's none, or a chain at
// the beginning that does not count.
func (n *node) beyond() bool { return n == nil || n.st.Turn && n.st.Kind == nil }

// countKids adds up where the stitches stand that are worked into each of a row.
func (p *plan) countKids(l *line) {
	for _, n := range l.nodes {
		n.kids, n.kidSum = 0, 0
	}
	if l.n+1 >= len(p.lines) || p.form == polygon {
		return
	}
	for _, n := range p.lines[l.n+1].nodes {
		for _, f := range n.feet {
			if p.weight(n) == 1 {
				f.kids++
				f.kidSum += p.near(n.q, f.q)
			}
		}
	}
}

// near is the angle q as it is nearest to the angle by; a place in a row stays.
func (p *plan) near(q, by float64) float64 {
	if p.form == circle {
		q += around * math.Round((by-q)/around)
	}
	return q
}

// down wishes each place under the stitches that stand on it.
func (p *plan) down(l *line) {
	p.countKids(l)
	t, w := make([]float64, len(l.nodes)), make([]float64, len(l.nodes))
	for i, n := range l.nodes {
		if n.kids == 0 {
			t[i], w[i] = n.q, 0.05
			continue
		}
		t[i], w[i] = n.kidSum/float64(n.kids), 1
	}
	p.fit(l, t, w)
}

// fit sets a row as near to its wishes as the gaps allow. A place without a wish
// stands between its neighbours.
func (p *plan) fit(l *line, t, w []float64) {
	if l.fixed {
		return
	}
	k := len(l.nodes)
	p.open(l)
	scale := p.scale(l)
	gap := make([]float64, k)
	for i := range l.nodes {
		gap[i] = p.gap(l, i) / scale
	}
	if p.form == circle { // stitches of a round share the room that there is
		sum := 0.0
		for _, g := range gap {
			sum += g
		}
		more := min(max(0.995*around/max(sum, 1e-9), 1), share)
		for i := range gap {
			gap[i] *= more
		}
	}
	fill(t, w, gap)
	if p.form == circle {
		for i := 1; i < k; i++ {
			t[i] = p.near(t[i], t[i-1]+1e-9)
		}
	}
	x := make([]float64, k)
	lo, hi := math.Inf(-1), math.Inf(1)
	if p.form == circle {
		spread(x, t, w, gap, lo, hi)
		room := around - gap[0]
		if x[k-1]-x[0] > room {
			mid := (x[0] + x[k-1]) / 2
			spread(x, t, w, gap, mid-room/2, mid+room/2)
		}
	} else {
		spread(x, t, w, gap, lo, hi)
	}
	for i, n := range l.nodes {
		n.q = x[i]
	}
	p.open(l)
}

// fill gives the places without a wish one between their neighbours', and little
// weight.
func fill(t, w, gap []float64) {
	const light = 0.02
	last := -1
	for i := range t {
		if w[i] == 0 {
			continue
		}
		switch {
		case last < 0:
			for k := i - 1; k >= 0; k-- {
				t[k], w[k] = t[k+1]-gap[k+1], light
			}
		case last < i-1:
			for k := last + 1; k < i; k++ {
				t[k] = t[last] + (t[i]-t[last])*float64(k-last)/float64(i-last)
			}
			for k := last + 1; k < i; k++ {
				w[k] = light
			}
		}
		last = i
	}
	if last < 0 {
		return
	}
	for k := last + 1; k < len(t); k++ {
		t[k], w[k] = t[k-1]+gap[k], light
	}
}

// plainOf is the kind that a node's measures are of.
func plainOf(n *node) *stitch.Stitch {
	if n.st.Kind == nil {
		return nil
	}
	return n.st.Kind.Plain()
}
