package chart

import (
	"math"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// Measures of the symbols, mm, at their usual size.
const (
	stroke   = 0.3
	tall     = 3.0  // a single crochet (US); other heights in proportion
	topHalf  = 0.95 // half the bar at a stitch's head
	barHalf  = 0.7  // half a slanted bar
	barApart = 1.0
	ovalLong = 2.1 // a chain
	ovalWide = 1.0
	dot      = 0.55 // radius of a slip stitch
	footGap  = 0.4  // between feet that share a place
	clear    = 0.35 // from a head to the foot over it
)

// shape is one symbol as it stands: its feet, its head, and what is drawn.
type shape struct {
	kind  *stitch.Stitch
	feet  []pt // of each leg, at least one
	head  pt
	loop  Loop
	flip  bool // seen from its other side: a wrong-side row
	tight bool // it stands among many others in one place
	chain int  // chains of a turning chain
	turn  bool
	ink   *ink
}

// post is the post stitch as the right side shows it.
func (s *shape) post() stitch.Post {
	if s.kind == nil {
		return stitch.NoPost
	}
	p := s.kind.Post
	if s.flip && p != stitch.NoPost {
		return stitch.FrontPost + stitch.BackPost - p
	}
	return p
}

func (s *shape) shownLoop() Loop {
	if s.loop == LowerDown && s.post() != stitch.NoPost { // its hook stands there
		return BothLoops
	}
	if s.flip && (s.loop == BackLoop || s.loop == FrontLoop) {
		return BackLoop + FrontLoop - s.loop
	}
	return s.loop
}

// height is how tall the symbol of a kind is, in mm at the usual size.
func height(k *stitch.Stitch) float64 {
	switch k.Key {
	case "slip":
		return 2*dot + 0.3
	case "chain":
		return ovalWide
	case "picot":
		return 3.0
	}
	return tall * k.Height
}

// halfWidth is half the room that a symbol needs at its head.
func halfWidth(k *stitch.Stitch) float64 {
	switch k.Key {
	case "slip":
		return 0.9
	case "chain":
		return ovalLong/2 + 0.1
	case "picot": // it stands above its neighbours
		return 0.3
	case "cluster", "bobble", "popcorn", "puff":
		return max(1.3, 1.15*belly(k)+0.35)
	}
	if k.Post != stitch.NoPost {
		return 1.45
	}
	return 1.25
}

// belly is how far the outer legs of a symbol that closes at both ends stand out.
func belly(k *stitch.Stitch) float64 { return bellyOf(max(k.Legs, 2)) }

func bellyOf(legs int) float64 { return min(0.42*float64(legs-1), 1.5) }

// bars is how many slanted bars a plain stitch has.
func bars(k *stitch.Stitch) int {
	switch k.Plain().Key {
	case "dc":
		return 1
	case "tr":
		return 2
	case "dtr":
		return 3
	case "trtr":
		return 4
	}
	return 0
}

// paths draws the symbol.
func (s *shape) paths() []*sheet.Path {
	p, l := stem(s.foot(), s.head)
	p.ink = s.ink
	switch {
	case s.turn:
		s.turning(&p, l)
	case s.kind == unread:
		return unreadStitch(&p)
	case s.kind.Key == "slip":
		p.oval(0, l/2, dot, dot, true)
	case s.kind.Key == "picot":
		s.picot(&p)
	case s.kind.Key == "puff":
		s.puff(&p, l)
	case s.kind.Key == "cluster" || s.kind.Key == "bobble" || s.kind.Key == "popcorn", s.bunched():
		s.cluster(&p, l)
	default:
		s.plain(&p, l)
	}
	return p.out
}

// bunched reports whether stitches that are finished together are all worked into one place.
func (s *shape) bunched() bool { return s.bunchedOn(len(s.feet)) }

// bunchedOn is bunched for a stitch over so many places.
func (s *shape) bunchedOn(feet int) bool {
	return feet == 1 && s.kind.Together && s.kind.Uses > 1 && s.kind.Base != "sc"
}

// foot is the middle of the feet.
func (s *shape) foot() pt {
	var m pt
	for _, f := range s.feet {
		m = add(m, f)
	}
	return mul(m, 1/float64(len(s.feet)))
}

// plain draws one leg or several that meet at the head.
func (s *shape) plain(p *pen, l float64) {
	base := s.kind.Plain()
	feet := s.feet
	top := l
	if base.Key == "sc" {
		top = 0.86 * l
	}
	for _, f := range feet {
		q, ll := stem(f, p.at(0, top))
		q.ink, q.out = p.ink, p.out
		s.leg(&q, ll, base, len(feet) > 1)
		p.out = q.out
	}
	if base.Key != "sc" {
		p.line(-topHalf, l, topHalf, l)
	}
	if lo := s.shownLoop(); lo != BothLoops {
		arc(p, lo)
	}
}

// leg draws one stem with its bars; the foot leaves room for a hook or an arc.
func (s *shape) leg(q *pen, l float64, base *stitch.Stitch, many bool) {
	from := 0.0
	if base.Key == "sc" {
		from = 0.14 * l
	}
	switch s.post() {
	case stitch.FrontPost:
		hook(q, l, 1)
	case stitch.BackPost:
		hook(q, l, -1)
	default:
		if s.shownLoop() != BothLoops {
			from = max(from, 0.55)
		}
		q.line(0, from, 0, l)
	}
	if base.Key == "sc" {
		half := topHalf
		at := (from + l) / 2
		if many {
			half, at = 0.6, 0.42*l
		}
		q.line(-half, at, half, at)
		return
	}
	half := barWide(many || s.tight)
	for k := range bars(base) {
		at := barsAt(base, k, l, many)
		q.line(-half, at-0.3, half, at+0.3)
	}
}

// barWide is half the length of a slanted bar, where stems come together a shorter one.
func barWide(tight bool) float64 {
	if tight {
		return 0.48
	}
	return barHalf
}

// barsAt is how far along its stem the k-th bar of a stitch stands.
func barsAt(base *stitch.Stitch, k int, l float64, many bool) float64 {
	mid, step := 0.62*l, barApart
	if many {
		mid, step = 0.45*l, 0.75
	}
	return mid + (float64(k)-float64(bars(base)-1)/2)*step
}

// hook draws a stem whose foot goes around the post below: to the right for a front
// post, to the left for a back post.
func hook(q *pen, l, side float64) {
	copy(q.stroke(3, false), []sheet.Seg{
		{Verb: sheet.Move, P: [3]pt{q.at(0, l)}},
		{Verb: sheet.Line, P: [3]pt{q.at(0, 0.85)}},
		{Verb: sheet.Cubic, P: [3]pt{q.at(0, -0.15), q.at(side*1.1, -0.15), q.at(side*1.1, 0.85)}},
	})
}

// arc draws the loop that is worked into, under the foot: for the back loop it opens
// down, for the front loop up. An arrow goes on to a stitch further down.
func arc(p *pen, lo Loop) {
	switch lo {
	case BackLoop:
		p.curve(-0.8, -0.1, -0.7, 0.65, 0.7, 0.65, 0.8, -0.1)
	case FrontLoop:
		p.curve(-0.8, 0.45, -0.7, -0.3, 0.7, -0.3, 0.8, 0.45)
	default:
		p.line(0, 0.55, 0, -0.3)
		p.line(-0.6, 0.45, 0, -0.3)
		p.line(0, -0.3, 0.6, 0.45)
	}
}

// cluster draws legs that share foot and head: closed by a bar, or by an oval for a
// popcorn.
func (s *shape) cluster(p *pen, l float64) {
	n := max(s.kind.Legs, 2)
	if s.kind.Legs == 0 {
		n = max(s.kind.Uses, 2)
	}
	top := l
	if s.kind.Key == "popcorn" {
		top = l - 0.9
	}
	for k := range n {
		u := bellyOf(n) * (2*float64(k)/float64(n-1) - 1)
		w := 0.0
		if s.kind.Key == "popcorn" {
			w = u * 0.8
		}
		p.curve(0, 0, u*1.3, 0.35*top, u*1.3, 0.65*top, w, top)
		at, mid := 0.5*top, u*0.975+w*0.125
		p.line(mid-0.22, at-0.12, mid+0.22, at+0.12)
	}
	if s.kind.Key == "popcorn" {
		p.oval(0, l-0.45, 0.95, 0.45, false)
		return
	}
	p.line(-topHalf, l, topHalf, l)
	if s.kind.Key == "bobble" {
		p.line(-topHalf, l-0.55, topHalf, l-0.55)
	}
}

// puff draws long loops that close at both ends.
func (s *shape) puff(p *pen, l float64) {
	n := max(s.kind.Legs, 2)
	for k := range n {
		u := belly(s.kind) * 1.3 * (2*float64(k)/float64(n-1) - 1)
		p.curve(0, 0, u, 0.3*l, u, 0.7*l, 0, l)
	}
	p.line(-topHalf*0.7, l, topHalf*0.7, l)
}

// picot draws a loop of three chains over a dot.
func (s *shape) picot(p *pen) {
	p.oval(0, 0.3, 0.3, 0.3, true)
	p.oval(-0.85, 1.15, 0.4, 0.7, false)
	p.oval(0.85, 1.15, 0.4, 0.7, false)
	p.oval(0, 2.2, 0.8, 0.4, false)
}

// turning draws chains upright, one over the other.
func (s *shape) turning(p *pen, l float64) {
	n := max(s.chain, 1)
	each := l / float64(n)
	for k := range n {
		p.oval(0, (float64(k)+0.5)*each, ovalWide/2, min(each, ovalLong*1.6)*0.47, false)
	}
}

// turnHeight is how tall n chains stand.
func turnHeight(n int) float64 { return float64(n) * ovalLong * 0.92 }

// arcLength is how long a flat arch of that chord and rise is, near enough for
// chains: the parabola's.
func arcLength(chord, rise float64) float64 {
	if rise < 1e-9 {
		return chord
	}
	k := 4 * rise / max(chord, 1e-9)
	return chord/2*math.Sqrt(1+k*k) + chord/(2*k)*math.Asinh(k)
}
