package chart

import (
	"math"
	"slices"

	"flatwright/schematic/stitch"
)

// form is how a chart is laid out.
type form int

const (
	flat    form = iota // rows, one above the other
	circle              // rounds from a centre
	polygon             // rounds with corners, each side straight
	oval                // rounds around a chain: two straight sides and two round ends
)

// node is a stitch on the chart. q is its head's place along its row: mm in rows, an
// angle in rounds, mm from the middle of its side in a polygon and on the straight of an oval,
// an angle from the middle of its end there. v is its head's
// level: mm above the foundation, or from the centre. fv is the level of its foot.
type node struct {
	st          *St
	line        *line
	half, h     float64
	q, v, fv    float64
	feet        []*node
	kidSum      float64
	group       []*node // all that stand on its foot, side by side; nil if it alone does
	wish        float64 // how much it wishes to stand over its foot; 0: not known yet
	extra       float64 // room beside the usual before it
	raise       float64 // above where it would stand, to be clear of a neighbour
	prev, next  *node   // in its row, around in a round
	chord, rise float64 // of an arch
	ends        [2]pt
	bars        []bar // its body, as of the row's version bodyOf
	bodyOf      int32
	kids, share int32 // it's the share-th of the group
	place       int32 // in its row
	side        int   // of a polygon
	corner      bool
	mark        bool // a place in a row that is not drawn: a break, a row end
}

// line is a row as laid out: from left to right, or around.
type line struct {
	row       *Row
	n         int // index of the row
	nodes     []*node
	rightward bool // worked from left to right
	base, top float64
	least     float64             // of a round: its least radius, so that one around it does not stand far off
	tops      [trackSides]float64 // of an oval: how far out each side stands
	fixed     bool                // its places are given: row ends
	corners   []int
	version   int32   // how often it was laid
	cut       float64 // of a round: the angle between its last and its first stitch
	wedge     float64 // the angle that its number takes there
	strays    bool    // it begins beside where the round below does, or keeps its petals even: its number finds little room
	flower    bool    // it is petals, or what petals stand on
	steep     float64 // sine of the most that its stitches lean
}

// plan is a whole chart in a plane with y upwards, in mm at the usual size.
type plan struct {
	chains bool // of an oval: a chain that stands over nothing, as one that begins a round, makes more than its own end lean
	work   *Work
	form   form
	sides  int
	dirs   []pt // of its sides and corners, by turns
	lines  []*line
	left   bool // for left-handed work: the mirror image
	slot   float64
	below  *sideways // the part along whose row ends this one is worked
	off    int       // rows of the work before the first line
	start  float64   // level of the ring

	ink      ink
	groups   slab[*node]
	group    []*node // that shareFeet looks at
	bars     slab[bar]
	feetRoom []pt  // of footPoints
	mine     []bar // bodies that are held against others
	other    []bar
	solve    solver
	crossing map[*node][]*node // the stitches of its row that each crosses
	wave     *wave             // in which rows lie; nil: straight
	track    float64           // of an oval: its straight sides, mm
}

const (
	longer    = 0.5         // how much longer than its kind a stitch may be, to end at its row's top
	farther   = 1.0         // the same in rounds
	loosely   = 0.6         // how far a foot may stand over its place
	dip       = 3.2         // how far a head may stand under its row's top
	roundDip  = 0.9         // the same in rounds
	steep     = 0.866       // sine of the most that a stitch leans from upright
	steepAll  = 0.74        // the same in a row most of which leans, such as one of a triangle from its centre
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
		l := &line{row: &w.Rows[r], n: r, version: 1}
		p.lines = append(p.lines, l)
		p.nodesOf(l)
		switch {
		case p.form == flat:
			if l.rightward = p.worksRight(r); !l.rightward {
				reverse(l.nodes)
			}
		case l.clockwise():
			reverse(l.nodes)
		}
		p.shareFeet(l)
		l.link(p.form != flat && !(p.form == oval && l.row.Base))
		p.findCrossings(l)
	}
	if p.form == oval {
		p.onTrack(w.track())
	}
	if p.form == circle {
		p.findCorners()
		p.findPetals()
	}
	return p
}

// mostCrossed is over how many places, at most, a stitch crosses others.
const mostCrossed = 8

// findCrossings notes which stitches of a row cross each other, as those of a cable do: no room parts them.
func (p *plan) findCrossings(l *line) {
	for i, n := range l.nodes {
		if len(n.feet) != 1 {
			continue
		}
		for _, m := range l.nodes[i+1 : min(len(l.nodes), i+mostCrossed)] {
			if len(m.feet) != 1 {
				continue
			}
			if d := n.feet[0].place - m.feet[0].place; d > 0 && d < mostCrossed {
				if p.crossing == nil {
					p.crossing = map[*node][]*node{}
				}
				p.crossing[n], p.crossing[m] = append(p.crossing[n], m), append(p.crossing[m], n)
			}
		}
	}
}

// findPetals finds the rounds of petals, and those on which they stand.
func (p *plan) findPetals() {
	for r, l := range p.lines {
		if slices.ContainsFunc(l.nodes, (*node).petal) {
			l.flower = true
			if r > 1 {
				p.lines[r-1].flower = true
			}
		}
	}
}

// nodesOf makes the nodes of a row, in the order of working.
func (p *plan) nodesOf(l *line) {
	nodes := make([]node, len(l.row.St))
	l.nodes = make([]*node, len(nodes))
	feet := 0
	for i := range l.row.St {
		feet += len(l.row.St[i].Feet)
	}
	all := make([]*node, 0, feet)
	for i := range nodes {
		n := &nodes[i]
		n.st, n.line = &l.row.St[i], l
		n.measure()
		l.nodes[i] = n
		if l.n == 0 || l.row.Edge {
			continue
		}
		from := len(all)
		for _, f := range n.st.Feet {
			all = append(all, p.lines[l.n-1].at(f))
		}
		n.feet = all[from:len(all):len(all)]
	}
}

// worksRight reports whether a row is worked from left to right on the paper.
func (p *plan) worksRight(r int) bool {
	row := &p.work.Rows[r]
	if !row.Base {
		return row.Wrong != p.left
	}
	if len(row.St) > 0 && row.St[0].Kind == rowEnd {
		return true
	}
	return p.work.runsRight(r) != p.left
}

// clockwise reports whether a round is worked from the wrong side, after a turn: it goes around the
// other way.
func (l *line) clockwise() bool { return l.row.Round && l.row.Wrong && !l.row.Base }

// link joins each node to its neighbours, in a round all the way around.
func (l *line) link(round bool) {
	k := len(l.nodes)
	for i, n := range l.nodes {
		n.place = int32(i)
		if i > 0 {
			n.prev = l.nodes[i-1]
		}
		if i+1 < k {
			n.next = l.nodes[i+1]
		}
	}
	if round && k > 1 {
		l.nodes[0].prev, l.nodes[k-1].next = l.nodes[k-1], l.nodes[0]
	}
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
	if w.unrolled {
		return flat
	}
	if w.track() != nil {
		return oval
	}
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
	if rounds == 0 || !w.round() {
		return flat
	}
	return circle
}

// round reports whether rounds lie around their centre: the last ones of a tube or of a ball would
// have much more room than they fill, and a frill much less than it needs.
func (w *Work) round() bool {
	const (
		tube  = 0.35 // of the room
		wide  = 12   // stitches with which a tube begins, and half of those of a frill
		frill = 3    // heights more
		short = 4    // rounds of a tube that begins with few stitches, at least
	)
	at, room, rounds, lace := ringMin, 1.0, 0, false
	for i := range w.Rows {
		long, high := 0.0, 0.0
		for k := range w.Rows[i].St {
			n := node{st: &w.Rows[i].St[k]}
			n.measure()
			long += 2 * n.half
			high = max(high, n.h)
			lace = lace || n.arch()
		}
		if w.Rows[i].Base {
			at = max(at, long/around)
			continue
		}
		if i > 0 && len(w.Rows[0].St) >= 2*wide && long/around > at+frill*high+4 {
			return false
		}
		room = long / around / (at + high)
		at = max(at+high, long/around)
		rounds++
	}
	return room >= tube || len(w.Rows[0].St) < wide && (lace || rounds < short)
}

// measure gives a node its room and its height.
func (n *node) measure() {
	s := n.st
	switch {
	case s.Break:
		n.half, n.mark = breakHalf, true
	case s.Kind == unread:
		n.half, n.h = 1.25, 0.5
	case s.Kind == behind:
		n.half, n.h = behindHalf, s.tall
	case s.Kind == ring:
		n.half, n.h = ringMin, 2*ringMin
	case s.Idle:
		n.half, n.mark = 0.9, true
	case s.Turn:
		if n.half, n.h = 0.9, turnHeight(s.Chain); s.Side {
			n.half = 1.5
		}
		if s.Kind != nil {
			n.h = height(s.Kind)
		}
	case s.Kind == nil:
		n.half = archHalf(s.span())
	default:
		n.half, n.h = halfWidth(s.Kind), height(s.Kind)
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

func (n *node) arch() bool { return n.st.arch() }

func (n *node) picot() bool { return n.st.Kind != nil && n.st.Kind.Key == "picot" }

func (n *node) chain() bool { return n.st.Kind != nil && n.st.Kind.Key == "chain" && !n.st.Turn }

// shareFeet counts how many stand on one foot, so that they stand side by side. A round may begin within
// what shares one.
func (p *plan) shareFeet(l *line) {
	var first, last []*node
	for i := 0; i < len(l.nodes); {
		n := l.nodes[i]
		if len(n.feet) != 1 {
			i++
			continue
		}
		group, j := p.sharing(l.nodes[i:])
		j += i
		atEnd := j == len(l.nodes)
		if len(group) > 1 || i == 0 || atEnd {
			kept := p.together(group)
			if i == 0 {
				first = kept
			} else if atEnd {
				last = kept
			}
		}
		i = max(i+1, j)
	}
	if p.form != flat && first != nil && last != nil && first[0].feet[0] == last[0].feet[0] {
		p.together(append(append(p.group[:0], last...), first...))
	}
}

// sharing is what stands where the first of some nodes does, with only arches and picots between, and how many of them these are.
func (p *plan) sharing(nodes []*node) ([]*node, int) {
	p.group = append(p.group[:0], nodes[0])
	for j, m := range nodes[1:] {
		switch {
		case len(m.feet) == 1 && m.feet[0] == nodes[0].feet[0]:
			p.group = append(p.group, m)
		case !m.arch() && !m.picot():
			return p.group, j + 1
		}
	}
	return p.group, len(nodes)
}

// together makes a group of what stands in one place; of one stitch none.
func (p *plan) together(group []*node) []*node {
	kept := p.groups.take(len(group))
	copy(kept, group)
	if len(group) > 1 {
		for k, m := range kept {
			m.share, m.group = int32(k), kept
		}
	}
	return kept
}

// plainOf is the kind that a node's measures are of.
func plainOf(n *node) *stitch.Stitch {
	if n.st.Kind == nil {
		return nil
	}
	return n.st.Kind.Plain()
}
