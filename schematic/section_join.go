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

func (s *JoinParts) work(w *worker) {
	for _, j := range s.Of {
		w.taken = append(w.taken, w.countOf(j))
	}
	if w.slit != nil {
		w.slit.close(w, s)
		return
	}
	if !slices.ContainsFunc(s.Of, func(j JoinPart) bool { return j.Part != "" }) {
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
		return
	}
	var bits []joined
	flip := w.cur != nil && w.cur.flip
	doubt := false
	for _, j := range s.Of {
		if j.Part == "" {
			bits = append(bits, joined{added: j.Added.Int(w.i, 0), edge: orElse(j.Edge, "added edge")})
			continue
		}
		q := w.strandOf(j.Part)
		if n := w.made.Live[j.Part]; q == nil && s.Round && n > 0 && w.onHold(j.Part) {
			w.take(j.Part)
			bits = append(bits, joined{added: n, held: true})
			continue
		}
		if q == nil || q.ended {
			w.find("arithmetic/join", finding.Error, j.Pos, fmt.Sprintf("%s has no live stitches to join", j.Part), "", "", w.joinHint(j.Part))
			doubt = true
			continue
		}
		delete(w.parts, j.Part)
		bits = append(bits, joined{q: q})
	}
	if !flip {
		reverse(bits) // a right-side row meets them from the right
	}
	var first *strand
	var rows []int
	y := units.Num{}
	for _, b := range bits {
		if b.q == nil {
			continue
		}
		w.cur = b.q
		w.settle()
		if first == nil {
			first = b.q
		}
		rows = append(rows, b.q.row)
		y = units.Max(y, b.q.y)
	}
	if first == nil {
		w.unseen(1)
		return
	}
	for _, b := range bits {
		doubt = doubt || b.q != nil && b.q.doubt
	}
	for _, r := range rows[1:] {
		if r != rows[0] {
			w.findSide("arithmetic/join-rows", finding.Warning, s.Pos, "the parts to be joined end after different rows",
				"rows "+listed(rows), "the same row", "work the shorter part on, or end the longer one earlier")
			break
		}
	}
	last := first
	for _, b := range bits {
		if b.q != nil {
			last = b.q
		}
	}
	if len(first.blocks) > 1 {
		w.find("arithmetic/join", finding.Error, s.Pos, "parts that are drawn in panels can't be joined here", "", "", "begin a new piece with `start from`")
		w.cur = first
		w.doubtful()
		return
	}
	if s.Round {
		w.joinRound(s, bits, first, y)
		w.cur.doubt = doubt
		return
	}
	j := &strand{name: s.Name, gauge: first.gauge, y: y, row: first.row, rs: first.rs, flip: flip, doubt: doubt, unseen: first.unseen}
	nb := block{view: first.blocks[0].view, left: first.blocks[0].left, right: last.blocks[len(last.blocks)-1].right}
	fit := true
	x := first.blocks[0].x
	for _, b := range bits {
		if b.q == nil {
			nb.runs = append(nb.runs, run{n: b.added, gauge: first.gauge})
			x = x.Add(first.gauge.StitchWidth().Times(b.added))
			continue
		}
		if !b.q.blocks[0].x.Eq(x) || b.q.blocks[0].view != nb.view || !b.q.y.Eq(y) {
			fit = false
		}
		nb.runs = append(nb.runs, b.q.blocks[0].runs...)
		x = x.Add(b.q.width(&b.q.blocks[0]))
	}
	for _, b := range bits {
		if b.q != nil {
			b.q.ended = true
		}
	}
	nb.runs = joinRuns(nb.runs)
	j.blocks = []block{nb}
	c := w.canvas(&nb)
	if fit {
		j.blocks[0].x = first.blocks[0].x
		x := first.blocks[0].x
		for _, b := range bits {
			if b.q != nil {
				x = x.Add(b.q.width(&b.q.blocks[0]))
				continue
			}
			z := x.Add(first.gauge.StitchWidth().Times(b.added))
			if b.added > 0 {
				c.segs = append(c.segs, seg{a: pt{x, y}, b: pt{z, y}, name: b.edge, part: s.Name, sts: b.added, pos: s.Pos})
			}
			x = z
		}
	} else {
		// The new row does not lie flat over the parts: each ends, and the row is drawn above
		// them about their common centre.
		lo, hi := first.blocks[0].x, last.right(&last.blocks[len(last.blocks)-1])
		for _, b := range bits {
			if b.q != nil {
				q := &b.q.blocks[0]
				w.canvas(q).segs = append(w.canvas(q).segs, seg{a: pt{b.q.right(q), b.q.y}, b: pt{q.x, b.q.y}, name: "joined edge", part: b.q.name, sts: q.count()})
			}
		}
		j.blocks[0].x = lo.Add(hi).Half().Sub(j.width(&j.blocks[0]).Half())
		c.segs = append(c.segs, seg{a: pt{j.blocks[0].x, y}, b: pt{j.right(&j.blocks[0]), y}, name: "joined edge", part: s.Name, sts: j.count()})
		w.cur = j
		if !w.bends(s) {
			w.findCount("arithmetic/join-gap", finding.Warning, s.Pos, "the stitches added do not fill the gap between the parts, so the joined row does not lie flat",
				w.long(j.width(&j.blocks[0]))+" of row", w.long(hi.Sub(lo))+" from end to end",
				"add as many stitches as were left and decreased there")
		}
	}
	w.cur = j
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
		if d, ok := s.(*Divide); ok {
			for i := range d.Parts {
				f(&d.Parts[i])
				eachPart(d.Parts[i].Sections, f)
			}
		}
	}
}
