package schematic

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// joined is one of the parts that are joined to a row, or stitches added between them.
type joined struct {
	q     *strand
	added int
	edge  string
	held  bool // added are stitches of a part that was on hold
}

// strandOf is the strand of a part that is to be joined, or nil.
func (w *worker) strandOf(part string) *strand {
	if q := w.parts[part]; q != nil {
		return q
	}
	if w.cur != nil && w.cur.name == part {
		return w.cur // the one part that went on
	}
	return nil
}

// countOf is how many stitches of a part, or how many added, a join takes.
func (w *worker) countOf(j JoinPart) int {
	if j.Part == "" {
		return j.Added.Int(w.i, 0)
	}
	if q := w.strandOf(j.Part); q != nil {
		return q.count()
	}
	return w.made.Live[j.Part]
}

// JoinParts makes one row of several parts, in the order in which a right-side
// row meets them, with stitches added in the gaps. With Round the row becomes a round;
// if no part is named it is the row in work that is joined, over the stitches added.
type JoinParts struct {
	Common
	Name  string // of the joined part; empty: the piece goes on
	Of    []JoinPart
	Round bool // joined into a round
}

func (s *JoinParts) Traits() Traits {
	return Traits{Words: "join parts", Joins: s.Of, Closes: s.Round, As: s.Name}
}

func (s *JoinParts) work(w *worker) {
	for _, j := range s.Of {
		w.taken = append(w.taken, w.countOf(j))
	}
	switch {
	case w.slit != nil:
		w.slit.close(w, s)
		return
	case !s.Traits().Rejoins():
		s.closeRow(w)
		return
	}
	j := &joining{w: w, s: s}
	for _, part := range s.Of {
		j.gather(part)
	}
	if !j.meet() {
		w.unseen(1)
		return
	}
	switch {
	case len(j.first.blocks) > 1:
		w.find("arithmetic/join", finding.Error, s.Pos, "parts that are drawn in panels can't be joined here", "", "", "begin a new piece with `start from`")
		w.cur = j.first
		w.doubtful()
	case s.Round:
		w.joinRound(s, j.bits, j.first, j.y)
		w.cur.doubt = j.doubt
	default:
		j.row()
	}
}

// closeRow joins the row in work to itself.
func (s *JoinParts) closeRow(w *worker) {
	if !s.Round || w.cur == nil || w.cur.ended {
		w.find("arithmetic/join", finding.Error, s.Pos, "there is nothing to join here", "", "",
			"name the parts; or say `round: yes` to join the row in work into a round")
		if w.cur == nil || w.cur.ended {
			w.unseen(1)
		}
		return
	}
	n, edge := 0, ""
	for _, j := range s.Of {
		n += j.Added.Int(w.i, 0)
		edge = orElse(edge, j.Edge)
	}
	w.closeRound(n, edge, s.Name, s.Pos)
}

// joining is parts on their way to one row.
type joining struct {
	w           *worker
	s           *JoinParts
	bits        []joined // as a row of the right side meets them
	first, last *strand
	y           units.Num // of the highest of them
	doubt       bool
}

// gather takes one of the parts, or stitches added, into the row.
func (j *joining) gather(part JoinPart) {
	w := j.w
	if part.Part == "" {
		j.bits = append(j.bits, joined{added: part.Added.Int(w.i, 0), edge: orElse(part.Edge, "added edge")})
		return
	}
	q := w.strandOf(part.Part)
	if n := w.made.Live[part.Part]; q == nil && j.s.Round && n > 0 && w.onHold(part.Part) {
		w.take(part.Part)
		j.bits = append(j.bits, joined{added: n, held: true})
		return
	}
	if q == nil || q.ended {
		w.find("arithmetic/join", finding.Error, part.Pos, fmt.Sprintf("%s has no live stitches to join", part.Part), "", "", w.joinHint(part.Part))
		j.doubt = true
		return
	}
	delete(w.parts, part.Part)
	j.bits = append(j.bits, joined{q: q})
}

// meet brings the parts to their last rows, which are to be the same; false if there are none.
func (j *joining) meet() bool {
	w := j.w
	if w.cur == nil || !w.cur.flip {
		reverse(j.bits) // a right-side row meets them from the right
	}
	var rows []int
	for _, b := range j.bits {
		if b.q == nil {
			continue
		}
		w.cur = b.q
		w.settle()
		if j.first == nil {
			j.first = b.q
		}
		j.last = b.q
		rows = append(rows, b.q.row)
		j.y = units.Max(j.y, b.q.y)
		j.doubt = j.doubt || b.q.doubt
	}
	if len(rows) > 0 && slices.ContainsFunc(rows, func(r int) bool { return r != rows[0] }) {
		w.findSide("arithmetic/join-rows", finding.Warning, j.s.Pos, "the parts to be joined end after different rows",
			"rows "+listed(rows), "the same row", "work the shorter part on, or end the longer one earlier")
		j.doubt = true
	}
	if j.first == nil && w.cur != nil && slices.ContainsFunc(j.bits, func(b joined) bool { return b.held }) {
		j.first, j.y = w.cur, w.cur.y // what was worked before lends its gauge and place: a heel bound off before its instep goes on
	}
	return j.first != nil
}

// row goes on with one flat row of all of them.
func (j *joining) row() {
	w, first := j.w, j.first
	next := &strand{name: j.s.Name, gauge: first.gauge, y: j.y, row: first.row, rs: first.rs, flip: first.flip, doubt: j.doubt, unseen: first.unseen}
	b := block{view: first.blocks[0].view, left: first.blocks[0].left, right: j.last.blocks[len(j.last.blocks)-1].right}
	for _, bit := range j.bits {
		if bit.q == nil {
			b.runs = append(b.runs, run{n: bit.added, gauge: first.gauge})
			continue
		}
		b.runs = append(b.runs, bit.q.blocks[0].runs...)
		bit.q.ended = true
	}
	b.runs = joinRuns(b.runs)
	next.blocks = []block{b}
	if j.flat() {
		next.blocks[0].x = first.blocks[0].x
		j.fill()
	} else {
		j.above(next)
	}
	w.cur = next
}

// eachX calls f with each of the parts and stitches added, and with the place where it begins if they lie side by side.
func (j *joining) eachX(f func(bit joined, x, end units.Num)) {
	x := j.first.blocks[0].x
	for _, bit := range j.bits {
		end := x.Add(j.first.gauge.StitchWidth().Times(bit.added))
		if bit.q != nil {
			end = x.Add(bit.q.width(&bit.q.blocks[0]))
		}
		f(bit, x, end)
		x = end
	}
}

// flat reports whether the parts lie side by side at one height, and what is added fills the gaps.
func (j *joining) flat() bool {
	fit := true
	j.eachX(func(bit joined, x, _ units.Num) {
		if bit.q != nil {
			b := &bit.q.blocks[0]
			fit = fit && b.x.Eq(x) && b.view == j.first.blocks[0].view && bit.q.y.Eq(j.y)
		}
	})
	return fit
}

// fill draws the edges of what is added.
func (j *joining) fill() {
	c := j.w.canvas(&j.first.blocks[0])
	j.eachX(func(bit joined, x, end units.Num) {
		if bit.q == nil && bit.added > 0 {
			c.segs = append(c.segs, seg{a: pt{x, j.y}, b: pt{end, j.y}, name: bit.edge, part: j.s.Name, sts: bit.added, pos: j.s.Pos})
		}
	})
}

// above draws a row that does not lie flat over the parts: each of them ends, and the row stands above them about
// their common centre.
func (j *joining) above(next *strand) {
	w, b := j.w, &next.blocks[0]
	lo, hi := j.first.blocks[0].x, j.last.right(&j.last.blocks[len(j.last.blocks)-1])
	for _, bit := range j.bits {
		if bit.q != nil {
			q := &bit.q.blocks[0]
			w.canvas(q).segs = append(w.canvas(q).segs, seg{a: pt{bit.q.right(q), bit.q.y}, b: pt{q.x, bit.q.y}, name: "joined edge", part: bit.q.name, sts: q.count()})
		}
	}
	b.x = lo.Add(hi).Half().Sub(next.width(b).Half())
	c := w.canvas(b)
	c.segs = append(c.segs, seg{a: pt{b.x, j.y}, b: pt{next.right(b), j.y}, name: "joined edge", part: j.s.Name, sts: next.count()})
	w.cur = next
	if !w.bends(j.s) {
		w.findCount("arithmetic/join-gap", finding.Warning, j.s.Pos, "the stitches added do not fill the gap between the parts, so the joined row does not lie flat",
			w.long(next.width(b))+" of row", w.long(hi.Sub(lo))+" from end to end",
			"add as many stitches as were left and decreased there")
	}
}

// bends reports whether the row that s joins is shaped at marked lines later, as a raglan yoke is: it goes over the
// shoulders, and nothing of it need lie flat.
func (w *worker) bends(s *JoinParts) bool {
	if w.raglan() {
		return true
	}
	at := slices.IndexFunc(w.piece.Sections, func(o Section) bool { return o == Section(s) })
	return at >= 0 && slices.ContainsFunc(w.piece.Sections[at+1:], func(o Section) bool {
		shape, ok := o.(*Shape)
		return ok && slices.ContainsFunc(shape.Shapings, func(h Shaping) bool { return h.At == Lines })
	})
}

// joinRound ends the drawing of every part, and goes on with a tube of all their
// stitches and those added. How the parts lay beside each other does not matter to it.
func (w *worker) joinRound(s *JoinParts, bits []joined, first *strand, y units.Num) {
	j := &strand{name: s.Name, gauge: first.gauge, round: true, rs: true, y: y, row: first.row, flip: first.flip, unseen: first.unseen}
	b := block{view: w.newView(orElse(s.Name, "in the round")), left: first.blocks[0].left, right: first.blocks[0].right}
	for _, bit := range bits {
		if bit.q == nil {
			b.runs = append(b.runs, run{n: bit.added, gauge: first.gauge})
			continue
		}
		for k := range bit.q.blocks {
			q := &bit.q.blocks[k]
			c := w.canvas(q)
			c.segs = append(c.segs, seg{a: pt{bit.q.right(q), bit.q.y}, b: pt{q.x, bit.q.y}, name: "joined edge", part: bit.q.name, sts: q.count(), pos: s.Pos})
			b.runs = append(b.runs, q.runs...)
		}
		bit.q.ended = true
	}
	b.runs = joinRuns(b.runs)
	j.blocks = []block{b}
	w.cur = j
	w.place(&j.blocks[0])
	w.bottom("joined edge", s.Pos)
	c := w.canvas(&j.blocks[0])
	c.first = j
	for _, bit := range bits {
		if bit.q != nil || bit.added < 1 || bit.held {
			continue
		}
		l, width := j.blocks[0].x, first.gauge.StitchWidth().Times(bit.added)
		c.extra = append(c.extra, extraEdge{pt{l, y}, pt{l.Add(width.Half()), y}, Edge{Name: bit.edge, Length: width, Stitches: bit.added, Pos: s.Pos}})
	}
	w.levelOf(&j.blocks[0], "", "", true, false)
}

// long is a length in the pattern's unit, for messages.
func (w *worker) long(l units.Num) string {
	u := w.b.p.Units
	return units.Decimal(units.In(l, u), 2) + " " + u.String()
}

// listed are numbers in words: 104 and 120.
func listed(ns []int) string {
	var parts []string
	for _, n := range ns {
		parts = append(parts, fmt.Sprint(n))
	}
	last := len(parts) - 1
	if last < 1 {
		return strings.Join(parts, "")
	}
	return strings.Join(parts[:last], ", ") + " and " + parts[last]
}

// joinRuns merges neighbours of one name and gauge.
func joinRuns(runs []run) []run {
	var out []run
	for _, r := range runs {
		if k := len(out) - 1; k >= 0 && out[k].gauge == r.gauge && out[k].name == r.name {
			out[k].n += r.n
			continue
		}
		out = append(out, r)
	}
	return out
}

// onHold reports whether a part of the piece is on hold.
func (w *worker) onHold(name string) bool {
	held := false
	eachPart(w.piece.Sections, func(p *Part) { held = held || p.Hold && p.Name == name })
	return held
}

// take takes the stitches of a part that is on hold into work again.
func (w *worker) take(name string) {
	delete(w.made.Live, name)
	delete(w.made.liveParts, name)
}

// joinHint says what may be meant by a part that has no live stitches to join.
func (w *worker) joinHint(name string) string {
	known := false
	var names []string
	eachPart(w.piece.Sections, func(p *Part) {
		known = known || p.Name == name
		names = append(names, p.Name)
	})
	switch {
	case w.onHold(name) && w.made.Live[name] > 0:
		return "held stitches are taken up in a round: say `round: yes`, or begin a piece of its own with `start from`"
	case w.onHold(name):
		return "its held stitches are taken up already"
	case !known:
		if like := finding.Nearest(name, names); like != "" {
			return fmt.Sprintf("did you mean %q?", like)
		}
		return "name parts of this piece: " + strings.Join(names, ", ")
	}
	return "let its sections end without binding all of it off"
}

// eachPart calls f with every part of every division in a list of sections.
func eachPart(list []Section, f func(*Part)) {
	for _, s := range list {
		for _, p := range s.Traits().Parts {
			f(p)
			eachPart(p.Sections, f)
		}
	}
}
