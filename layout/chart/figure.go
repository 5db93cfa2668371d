package chart

import (
	"math"
	"slices"

	"flatwright/layout/sheet"
)

// mark is one thing of a chart as drawn: a stitch, a box, an arrow. at is the place
// that decides on which page it stands.
type mark struct {
	row    int // index of its row; -1: of none
	paths  []*sheet.Path
	at     pt
	lo, hi pt
	stitch bool
}

// label is a text of a chart, centred on at.
type label struct {
	s      string
	at     pt
	row    int
	anchor sheet.Anchor
	side   bool // beside its row: it keeps its anchor; otherwise it is centred
	class  string
	lo, hi pt // its room
}

// figure is a chart before it is cut into pages: in mm at the usual size, y upwards.
type figure struct {
	marks  []mark
	labels []label
	lo, hi pt

	names  []rowName // of the rows that are numbered at their sides
	nums   numbers   // as they stand if the figure is on one page
	off    int       // rows before the first that is numbered at its side
	tight  bool      // each row has a stretch of levels to itself
	across []cuts    // where pages may meet: x, the best places first
	up     []cuts    // the same, of levels from the top: -y
}

func newMark(row int, stitch bool, paths ...*sheet.Path) mark {
	m := mark{row: row, paths: paths, stitch: stitch}
	m.lo, m.hi = bounds(paths)
	m.at = mul(add(m.lo, m.hi), 0.5)
	return m
}

func (f *figure) add(ms ...mark) {
	for _, m := range ms {
		f.grow(m.lo, m.hi)
		f.marks = append(f.marks, m)
	}
}

func (f *figure) grow(lo, hi pt) {
	if f.lo == f.hi {
		f.lo, f.hi = lo, hi
	}
	f.lo = pt{X: min(f.lo.X, lo.X), Y: min(f.lo.Y, lo.Y)}
	f.hi = pt{X: max(f.hi.X, hi.X), Y: max(f.hi.Y, hi.Y)}
}

// stitches draws every stitch of the plan, row by row in the order of working.
func (p *plan) stitches(f *figure) {
	n := 0
	for _, l := range p.lines {
		n += len(l.nodes)
	}
	f.marks = slices.Grow(f.marks, n+n/8)
	for r, l := range p.lines {
		for i := range l.row.St {
			if n := l.at(i); !n.mark {
				m := newMark(r+p.off, true, p.draw(n)...)
				if l.row.Held {
					m.quieten()
				}
				f.add(m)
			}
		}
	}
}

// quieten draws a mark in grey.
func (m *mark) quieten() {
	for _, q := range m.paths {
		if q.Style.Stroke == sheet.Black {
			q.Style.Stroke = sheet.Grey
		}
		if q.Style.Fill == sheet.Black {
			q.Style.Fill = sheet.Grey
		}
	}
}

func bounds(paths []*sheet.Path) (lo, hi pt) {
	for i, q := range paths {
		a, b, ok := sheet.Bounds(q)
		if !ok {
			continue
		}
		if i == 0 {
			lo, hi = a, b
		}
		lo = pt{X: min(lo.X, a.X), Y: min(lo.Y, a.Y)}
		hi = pt{X: max(hi.X, b.X), Y: max(hi.Y, b.Y)}
	}
	return lo, hi
}

// draw gives the strokes of one stitch.
func (p *plan) draw(n *node) []*sheet.Path {
	switch {
	case n.arch():
		return p.archPaths(n)
	case n.chain():
		return p.foundation(n)
	case n.st.Kind == ring:
		q := pen{o: p.point(n, n.v-ringMin), u: pt{X: 1}, v: pt{Y: 1}, ink: &p.ink}
		q.oval(0, 0, ringMin-0.2, ringMin-0.2, false)
		return q.out
	case n.st.Kind == behind:
		return p.behindLine(n)
	}
	s := shape{kind: n.st.Kind, head: p.point(n, n.v), loop: n.st.Loop, flip: n.line.row.Wrong, chain: n.st.Chain, turn: n.st.Turn, tight: len(n.group) > 3, ink: &p.ink}
	s.feet = p.footPoints(n)
	return s.paths()
}

// footPoints are the feet of a stitch: over the heads that it is worked into, beside
// the others that share the place, lifted with the stitch where it was raised. They stand until the next
// call.
func (p *plan) footPoints(n *node) []pt {
	if len(n.feet) == 0 {
		at := p.point(n, n.fv)
		if p.form == polygon && n.line.corners != nil && n.line.n <= 1 && !n.picot() { // out of the ring
			at = mul(unit(p.point(n, n.v)), n.fv)
		}
		p.feetRoom = append(p.feetRoom[:0], at)
		return p.feetRoom
	}
	out := p.feetRoom[:0]
	lift := n.fv - footLevel(n)
	for _, f := range n.feet {
		v := f.v + clear + lift
		at := p.point(f, v)
		if p.form == oval && f.line.row.Base {
			at = p.underFoot(n, f, n.fv)
			if n.bent() {
				out = append(out, at)
				continue
			}
		}
		across := right(p.outward(f))
		if p.form == oval && !n.bent() {
			across = right(p.outward(n))
		}
		if p.form != flat {
			across = mul(across, -1)
		}
		at = add(at, mul(across, p.aside(n, f)))
		out = append(out, at)
	}
	if k := plainOf(n); (n.group != nil || p.form != flat) && len(out) == 1 && k != nil && k.Key == "sc" && !n.st.Turn {
		out[0] = p.crossed(n, out[0])
	}
	p.feetRoom = out
	p.rise(n)
	return out
}

// rise lets a turning chain begin above a place that it shares: it is wider than the stems.
func (p *plan) rise(n *node) {
	if !n.st.Turn || len(n.group) < 3 {
		return
	}
	head := p.point(n, n.v)
	for i, at := range p.feetRoom {
		p.feetRoom[i] = add(at, mul(sub(head, at), chainRise))
	}
}

// chainRise is how much of its length a turning chain that shares its place begins above it.
const chainRise = 0.17

// crossed is the foot of a cross that shares its place with others: near to straight under its head,
// so that their arms stay clear of each other; not where all of them lean far to one side.
func (p *plan) crossed(n *node, foot pt) pt {
	upright := 0.75 * max(0, 1-math.Abs(p.lean(n))/(1.5*n.h))
	if p.wave != nil { // each on its own place of the row
		upright = 1
	}
	head := p.point(n, n.v)
	if far := long(sub(head, foot)) >= longCross*n.h; p.form != oval && (n.group == nil || upright == 0) {
		if !far {
			return foot
		}
		upright = max(upright, 0.5) // a cross has no stem that could reach down
	}
	way := add(mul(unit(sub(foot, head)), 1-upright), mul(p.outward(n), -upright))
	return add(head, mul(unit(way), n.h))
}

// longCross is how much longer than its kind a cross alone in its place is drawn.
const longCross = 1.2

// aside is how far beside the middle of f the foot of n stands: beside the others of
// its group, and over a chain arch where it leans least.
func (p *plan) aside(n, f *node) float64 {
	by, wide := p.gapBehind(n, f), footGap
	if f.arch() && n.group != nil {
		wide = min(1.3, max(footGap, 0.75*f.chord/float64(len(n.group))))
	}
	span := wide * float64(len(n.group)-1)
	if n.group != nil {
		by += (float64(n.share) - float64(len(n.group)-1)/2) * wide
		if f.chain() || !f.arch() {
			if first := n.group[0]; !n.st.Gap && (first.st.Turn || n.group[len(n.group)-1].st.Turn) {
				by *= 1.8
			}
		}
	}
	if f.arch() && p.form != polygon {
		room := max((f.chord-1.6-max(span, 0))/2, 0)
		want := 0.0
		if n.group == nil {
			want = p.drift(n, f)
		} else {
			for _, m := range n.group {
				want += p.drift(m, f) / float64(len(n.group))
			}
		}
		by += min(max(want, -room), room)
	}
	return by
}

// gapBehind is how far beside f lies the middle of the gap between it and the stitch that follows it,
// for a stitch that is worked into that gap.
func (p *plan) gapBehind(n, f *node) float64 {
	g := f.next
	if n.line.clockwise() || p.form == flat && !n.line.rightward {
		g = f.prev
	}
	switch {
	case !n.st.Gap || g == nil:
		return 0
	case p.form == oval:
		return (p.trackAlong(g, n) - p.trackAlong(f, n)) / 2
	case p.form == polygon:
		return (p.sideOf(g, n) - p.sideOf(f, n)) / 2
	case p.form == circle:
		return p.turned(g, f) * f.v / 2
	}
	return (g.q - f.q) / 2
}

// chainHalf is half the length of a chain that lies along its row: longer where its
// neighbours leave room, so that a foundation has no holes.
func (p *plan) chainHalf(n *node) float64 {
	room := 2 * ovalLong
	for _, m := range []*node{n.prev, n.next} {
		if m == nil || m == n {
			continue
		}
		if d := math.Abs(m.q-p.near(n.q, m.q)) * p.scale(n.line); d > 0.5 {
			room = min(room, d*0.47)
		}
	}
	if room == 2*ovalLong {
		return ovalLong / 2
	}
	return min(room, ovalLong)
}

// foundation is a chain that lies along its row.
func (p *plan) foundation(n *node) []*sheet.Path {
	half := p.chainHalf(n)
	at := p.point(n, n.v)
	if p.form != flat {
		at = p.point(n, n.v-ovalWide/2)
	}
	q := pen{o: at, v: p.outward(n), ink: &p.ink}
	q.u = right(q.v)
	q.oval(0, 0, half, ovalWide/2, false)
	return q.out
}
