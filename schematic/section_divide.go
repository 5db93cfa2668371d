package schematic

import (
	"fmt"
	"slices"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// stretchOf is where a part of a division lies: stitches from to to counted from
// the left end of the row in work.
type stretchOf struct {
	part     *Part
	from, to int
}

// places are the stretches of a row of n stitches that the parts take, from the left. A right-side row meets the parts from the
// right; the mirror of a part from the left.
func (s *Divide) places(size, n int, mirror bool) []stretchOf {
	var places []stretchOf
	at := 0
	for i := range s.Parts {
		if k := s.Parts[i].Stitches.Int(size, 0); k > 0 {
			places = append(places, stretchOf{&s.Parts[i], at, at + k})
			at += k
		}
	}
	if mirror {
		return places
	}
	for i := range places {
		places[i].from, places[i].to = n-places[i].to, n-places[i].from
	}
	reverse(places)
	return places
}

// Divide splits the row into parts, in the order in which a right-side row
// meets them (from the right-hand edge as drawn, for a piece worked from the hem).
type Divide struct {
	Common
	Parts []Part
}

func (s *Divide) Traits() Traits {
	t := Traits{Words: "divide", Takes: true, Parts: make([]*Part, len(s.Parts))}
	for i := range s.Parts {
		t.Parts[i] = &s.Parts[i]
	}
	return t
}

func (s *Divide) work(w *worker) {
	st := w.cur
	w.settle()
	sum := 0
	for i := range s.Parts {
		sum += s.Parts[i].Stitches.Int(w.i, 0)
	}
	w.carried(func(n int) bool { return n == sum })
	n := st.count()
	if st.doubt {
		w.state(sum)
		n = st.count()
	} else if sum != n {
		w.find("arithmetic/division", finding.Warning, s.Pos,
			fmt.Sprintf("the parts have %d stitches and the row has %d", sum, n),
			sumText(len(s.Parts), func(i int) int { return s.Parts[i].Stitches.Int(w.i, 0) }, sum), fmt.Sprintf("%d in the row", n),
			fmt.Sprintf("make the parts %s in all, or the row before it %s", byStitches(n-sum), byStitches(sum-n)))
		w.doubtful()
		for i := range s.Parts {
			w.made.doubtful(s.Parts[i].Name)
		}
	}
	places := s.places(w.i, n, st.flip)
	if s.slits(w, places, n) {
		s.slit(w, places, n)
		w.onePart()
		return
	}
	var strands []*strand
	switch {
	case len(st.blocks) > 1:
		strands = w.divideApart(places)
	case st.round:
		strands = w.divideRound(places, n)
	default:
		strands = w.divideFlat(&st.blocks[0], places, n)
	}
	whole := w.cur
	whole.ended = true
	for _, p := range s.Parts {
		for _, q := range strands {
			if q.name == p.Name && p.worked() {
				w.workPart(s, &p, q)
			}
		}
	}
	w.cur = whole
	w.onePart()
}

// onePart goes on with the part that goes on, if it is but one: that is the piece itself from there on.
func (w *worker) onePart() {
	if len(w.parts) == 1 {
		for _, name := range sortedKeys(w.parts) {
			w.cur = w.parts[name]
			delete(w.parts, name)
		}
	}
}

// workPart works one part of a division to the end of its sections.
func (w *worker) workPart(s *Divide, p *Part, q *strand) {
	sections, left, right := p.Sections, p.LeftEdge, p.RightEdge
	q.flip = w.cur.flip
	for i := range s.Parts {
		if o := &s.Parts[i]; p.MirrorOf != "" && o.Name == p.MirrorOf {
			sections = o.Sections
			q.flip = !q.flip
			if left == "" && right == "" { // the neck of a front is that of the other too
				left, right = o.RightEdge, o.LeftEdge
			}
		}
	}
	whole, section := w.cur, w.section
	w.cur = q
	w.nameEdgesAsDrawn(left, right)
	for k := range q.blocks {
		w.levelOf(&q.blocks[k], "", "", true, false)
	}
	c, mid, y0 := w.canvas(&q.blocks[0]), q.blocks[0].x.Add(q.width(&q.blocks[0]).Half()), q.y
	w.sections(sections)
	if !w.cur.ended {
		w.parts[p.Name] = w.cur
	}
	c.names = append(c.names, partAt{p.Name, pt{mid, y0.Add(q.y).Half()}, q.y.Sub(y0)})
	w.cur, w.section = whole, section
}

// nameEdgesAsDrawn names the edges of the strand in work by their sides as drawn.
func (w *worker) nameEdgesAsDrawn(l, r string) {
	if !w.piece.From.upwards() {
		l, r = r, l
	}
	w.nameEdges(l, r)
}

// divideFlat makes the strands of the parts that are worked on, flat from here, and ends the others.
func (w *worker) divideFlat(b *block, places []stretchOf, n int) []*strand {
	st := w.cur
	c := w.canvas(b)
	var out []*strand
	for i, p := range places {
		x0 := b.x.Add(st.offsetOf(b, p.from))
		x1 := b.x.Add(st.offsetOf(b, p.to))
		if p.from < 0 {
			x0 = b.x.Sub(b.runs[0].gauge.StitchWidth().Times(-p.from))
		}
		if q := w.partStrand(p, b, x0); q != nil {
			if i > 0 {
				q.blocks[0].left = orElse(gapEdge(places[i-1].part), "opening")
			}
			if i+1 < len(places) {
				q.blocks[0].right = orElse(gapEdge(places[i+1].part), "opening")
			}
			out = append(out, q)
			w.overhang(c, x0, x1, b.x, st.right(b))
			continue
		}
		w.topOf(c, p, units.Max(x0, b.x), units.Min(x1, st.right(b)))
	}
	if len(places) == 0 {
		return out
	}
	// Stitches that no part has: left, with no name, so that the outline closes.
	if f := places[0].from; f > 0 {
		c.segs = append(c.segs, seg{a: pt{b.x.Add(st.offsetOf(b, f)), st.y}, b: pt{b.x, st.y}, name: "left over", sts: f})
	}
	if t := places[len(places)-1].to; t < n {
		c.segs = append(c.segs, seg{a: pt{st.right(b), st.y}, b: pt{b.x.Add(st.offsetOf(b, t)), st.y}, name: "left over", sts: n - t})
	}
	return out
}

// overhang closes a part from below where it has more stitches than the row.
func (w *worker) overhang(c *canvas, x0, x1, l, r units.Num) {
	y := w.cur.y
	if x0.Less(l) {
		c.segs = append(c.segs, seg{a: pt{x0, y}, b: pt{units.Min(l, x1), y}, name: "left over"})
	}
	if r.Less(x1) {
		c.segs = append(c.segs, seg{a: pt{units.Max(r, x0), y}, b: pt{x1, y}, name: "left over"})
	}
}

func gapEdge(p *Part) string {
	if p.Leave || p.Hold {
		return orElse(p.Edge, "gap")
	}
	return ""
}

// topOf draws the top of stitches that are left, bound off or held.
func (w *worker) topOf(c *canvas, p stretchOf, x0, x1 units.Num) {
	st := w.cur
	if p.part.Hold {
		w.hold(p.part.Name, p.to-p.from)
	}
	if !x0.Less(x1) {
		return
	}
	c.segs = append(c.segs, seg{a: pt{x1, st.y}, b: pt{x0, st.y}, name: orElse(p.part.Edge, "gap"), part: st.name, also: p.part.Name,
		sts: p.to - p.from, pos: p.part.Pos, doubt: st.doubt})
}

func (w *worker) hold(name string, n int) {
	w.made.Live[name] += n
	if w.made.liveParts == nil {
		w.made.liveParts = map[string]int{}
	}
	w.made.liveParts[name] += n
}

// partStrand is the strand of a part that is worked on, or nil.
func (w *worker) partStrand(p stretchOf, b *block, x units.Num) *strand {
	if p.part.Leave || p.part.Hold {
		return nil
	}
	st := w.cur
	q := &strand{name: p.part.Name, gauge: st.gauge, y: st.y, row: st.row, rs: st.rs, unseen: st.unseen}
	if st.round {
		q.rs = true
	}
	q.blocks = []block{{view: b.view, x: x, runs: b.slice(p.from, p.to), left: b.left, right: b.right}}
	return q
}

// divideRound divides a round: each half of it is a drawing of its own, if every
// part lies within one half; otherwise each part is.
func (w *worker) divideRound(places []stretchOf, n int) []*strand {
	half := n / 2
	if by := foldIn(places, n); by != 0 {
		places = turned(places, by, n)
		b := &w.cur.blocks[0]
		b.runs = append(b.slice(by, n), b.slice(0, by)...)
	}
	fits := n%2 == 0
	for _, p := range places {
		fits = fits && !(p.part.worked() && p.from < half && p.to > half)
	}
	worked := slices.ContainsFunc(places, func(p stretchOf) bool { return p.part.worked() })
	if !fits || w.cur.row == 0 || !worked || intoRounds(places) {
		return w.divideTube(places, n)
	}
	return w.divideLayers(places, n)
}

// intoRounds reports whether all of a round goes on in rounds of their own, such as two legs: none of them is a half that lies flat.
func intoRounds(places []stretchOf) bool {
	for _, p := range places {
		if !p.part.worked() {
			return false
		}
		if p.part.MirrorOf != "" {
			continue
		}
		if len(p.part.Sections) == 0 {
			return false
		}
		if t := p.part.Sections[0].Traits(); !t.Closes || t.Rejoins() {
			return false
		}
	}
	return len(places) > 1
}

// foldIn is the stitch of a round at which it is folded, with the opposite one: both in the middle of gaps between the parts that are worked
// on, those nearest to the beginning of the round, such as two underarms of which one is listed last; where but one part is worked on, it
// lies in the middle of its half. 0 if no two gaps lie opposite each other.
func foldIn(places []stretchOf, n int) int {
	gaps := gapsOf(places, n)
	if len(gaps) == 1 && 2*(gaps[0][1]-gaps[0][0]) > n {
		return centredFold(gaps[0], n)
	}
	best, off := 0, n
	for i, g := range gaps {
		for j, h := range gaps {
			for _, turn := range []int{-n, 0, n} {
				opposite := [2]int{h[0] + turn - n/2, h[1] + turn - n/2}
				by := (g[0] + g[1] + opposite[0] + opposite[1]) / 4
				if i == j || by < max(g[0], opposite[0]) || by > min(g[1], opposite[1]) || by <= -n/2 || by > n/2 {
					continue
				}
				d := g[0] + g[1] - opposite[0] - opposite[1] // twice what the middles are apart
				if d = max(d, -d); d < off || d == off && max(by, -by) < max(best, -best) {
					best, off = by, d
				}
			}
		}
	}
	return (best + n) % n
}

// centredFold is the stitch at which a round with one gap is folded so that the gap lies in the middle of a half.
func centredFold(gap [2]int, n int) int {
	by := ((gap[0]+gap[1])/2 - n/4 + n) % (n / 2)
	if by > n/4 {
		by -= n / 2
	}
	return (by + n) % n
}

// gapsOf are the stretches of a round, from and to, that no part is worked on; one that lies round the beginning begins before it.
func gapsOf(places []stretchOf, n int) [][2]int {
	var gaps [][2]int
	for _, p := range places {
		switch k := len(gaps) - 1; {
		case p.part.worked():
		case k >= 0 && gaps[k][1] == p.from:
			gaps[k][1] = p.to
		default:
			gaps = append(gaps, [2]int{p.from, p.to})
		}
	}
	if k := len(gaps) - 1; k > 0 && gaps[0][0] == 0 && gaps[k][1] == n {
		gaps[0][0] = gaps[k][0] - n
		gaps = gaps[:k]
	}
	return gaps
}

// turned are the stretches of a round of n stitches counted from stitch by; one that lies round it is two.
func turned(places []stretchOf, by, n int) []stretchOf {
	var after, before []stretchOf
	for _, p := range places {
		if from, to := max(p.from, by), p.to; from < to {
			after = append(after, stretchOf{p.part, from - by, to - by})
		}
		if from, to := p.from, min(p.to, by); from < to {
			before = append(before, stretchOf{p.part, from + n - by, to + n - by})
		}
	}
	return append(after, before...)
}

// worked reports whether a part is worked on.
func (p *Part) worked() bool { return !p.Leave && !p.Hold }

// divideTube ends the drawing of the tube; each part goes on by itself.
func (w *worker) divideTube(places []stretchOf, n int) []*strand {
	st := w.cur
	b := &st.blocks[0]
	c := w.canvas(b)
	w.tubeEdges(c, b, places, n)
	c.segs = append(c.segs, seg{a: pt{st.right(b), st.y}, b: pt{b.x, st.y}, name: "division", both: true, sts: n, pos: w.section.Base().Pos})
	w.levelOf(b, "", "", false, true)
	c.dead = st.row == 0
	var out []*strand
	for _, p := range places {
		if p.part.Hold {
			w.hold(p.part.Name, p.to-p.from)
		}
		if q := w.partStrand(p, b, units.Num{}); q != nil {
			nb := &q.blocks[0]
			nb.view = w.newView(p.part.Name)
			nb.left, nb.right = "opening", "opening"
			nb.x = q.width(nb).Half().Neg()
			nc := w.canvas(nb)
			nc.first = q
			nc.segs = append(nc.segs, seg{a: pt{nb.x, q.y}, b: pt{q.right(nb), q.y}, name: "base", part: p.part.Name, sts: nb.count()})
			out = append(out, q)
		}
	}
	return out
}

// divideLayers draws each half of the round. The second half of it, the left one in the row, is the other
// layer: it has the tube drawn again under it.
func (w *worker) divideLayers(places []stretchOf, n int) []*strand {
	st := w.cur
	b := &st.blocks[0]
	c := w.canvas(b)
	other := w.newView("")
	oc := w.views[other]
	oc.segs = append(oc.segs, c.segs...)
	oc.ribs = append(oc.ribs, c.ribs...)
	oc.lines = append(oc.lines, c.lines...)
	oc.first = c.first
	oc.name, c.name = "second half of the round", "first half of the round"
	half := n / 2
	var out []*strand
	for layer, view := range []int{b.view, other} {
		lo, hi := half, n
		if layer == 1 {
			lo, hi = 0, half
		}
		mine := within(places, lo, hi)
		if i := slices.IndexFunc(mine, func(p stretchOf) bool { return p.part.worked() }); i >= 0 {
			w.views[view].name = mine[i].part.Name
		}
		// A layer is drawn at full width: flat, it is half the round.
		flat := &strand{gauge: st.gauge, y: st.y, row: st.row, rs: true, unseen: st.unseen}
		flat.blocks = []block{{view: view, x: b.x, runs: b.slice(lo, hi), left: b.left, right: b.right}}
		w.cur = flat
		out = append(out, w.divideFlat(&flat.blocks[0], mine, hi-lo)...)
		w.cur = st
	}
	return out
}

// within are the stretches between two stitches, counted from the first of them.
func within(places []stretchOf, lo, hi int) []stretchOf {
	var mine []stretchOf
	for _, p := range places {
		if from, to := max(p.from, lo), min(p.to, hi); to > from {
			mine = append(mine, stretchOf{p.part, from - lo, to - lo})
		}
	}
	return mine
}

// tubeEdges notes the edges that stitches left at the end of a tube make: they lie
// along its top, some on the layer behind.
func (w *worker) tubeEdges(c *canvas, b *block, places []stretchOf, n int) {
	st := w.cur
	for _, p := range places {
		if !p.part.Leave {
			continue
		}
		// The round begins at the right; what is left of the middle lies on the layer behind.
		at := func(i int) pt {
			k := 2*i - n
			if k < 0 {
				k = 2 * i
			}
			return pt{b.x.Add(st.offsetOf(b, min(k, n))), st.y}
		}
		a, z := at(p.to), at(p.from)
		var length units.Num
		for _, r := range b.slice(p.from, p.to) {
			length = length.Add(r.gauge.StitchWidth().Times(r.n))
		}
		c.extra = append(c.extra, extraEdge{a, z, Edge{Name: orElse(p.part.Edge, "gap"), Parts: []string{p.part.Name}, Length: length,
			Stitches: p.to - p.from, Pos: p.part.Pos}})
	}
}

// divideApart divides a row of panels that are drawn apart: a part must be whole panels.
func (w *worker) divideApart(places []stretchOf) []*strand {
	st := w.cur
	var out []*strand
	used := make([]bool, len(st.blocks))
	for _, p := range places {
		q := &strand{name: p.part.Name, gauge: st.gauge, y: st.y, row: st.row, rs: st.rs, unseen: st.unseen}
		covered, at := 0, 0
		for i := range st.blocks {
			b := &st.blocks[i]
			from, to := at, at+b.count()
			at = to
			switch {
			case from < p.from || to > p.to:
				continue
			case p.part.worked():
				q.blocks = append(q.blocks, *b)
			default:
				w.endBlock(b, orElse(p.part.Edge, "held edge"), p.part)
			}
			covered += to - from
			used[i] = true
		}
		w.onLines(p, covered)
		if len(q.blocks) > 0 {
			out = append(out, q)
		}
	}
	for i := range st.blocks {
		if !used[i] {
			w.endBlock(&st.blocks[i], "left over", nil)
		}
	}
	return out
}

// onLines holds a part to the whole panels in it, where these have counts of their own, and its stitches if it is on hold.
func (w *worker) onLines(p stretchOf, covered int) {
	if covered != p.to-p.from && !w.cur.shared && w.over.Sign() == 0 {
		w.findCount("arithmetic/panels", finding.Warning, p.part.Pos,
			fmt.Sprintf("%s does not end on a marked line: the panels in it have %d stitches, the part has %d", p.part.Name, covered, p.to-p.from),
			fmt.Sprintf("%d in whole panels", covered), fmt.Sprintf("%d in the part", p.to-p.from),
			"divide on the marked lines, or begin a new piece with `start from`")
	}
	if p.part.Hold {
		w.hold(p.part.Name, p.to-p.from)
	}
}

func (w *worker) endBlock(b *block, edge string, p *Part) {
	st := w.cur
	c := w.canvas(b)
	part := ""
	if p != nil {
		part = p.Name
	}
	c.segs = append(c.segs, seg{a: pt{st.right(b), st.y}, b: pt{b.x, st.y}, name: edge, also: part, sts: b.count()})
	w.levelOf(b, "", "", false, true)
}
