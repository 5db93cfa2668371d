package schematic

import (
	"slices"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// closeRound joins the row in work into a round, over n stitches added between its end
// and its beginning, such as the front of a neck worked flat from above.
func (w *worker) closeRound(n int, edge, name string, pos finding.Pos) {
	st := w.cur
	if st.round {
		w.find("arithmetic/round", finding.Warning, pos, "this is worked in the round already", "", "", "take this section out, or say that the piece is worked flat")
		return
	}
	if st.band > 0 {
		w.find("arithmetic/start", finding.Error, pos, "no stitches are picked up along the band yet", "", "", "put `pick up` before it")
		return
	}
	w.settle()
	if len(st.blocks) > 1 {
		w.closePanels(n, edge, name, pos)
	} else {
		w.closeRow(n, edge, name, pos)
	}
	st.round, st.rs = true, true
}

// closePanels makes one panel of the first and the last, which are drawn apart, and
// what is added between them.
func (w *worker) closePanels(n int, edge, name string, pos finding.Pos) {
	st := w.cur
	first, last := st.blocks[0], st.blocks[len(st.blocks)-1]
	c, from := w.canvas(&first), w.canvas(&last)
	gap := first.runs[0].gauge.StitchWidth().Times(n)
	c.take(from, first.x.Sub(gap).Sub(st.right(&last)))
	if n > 0 {
		c.segs = append(c.segs, seg{a: pt{first.x.Sub(gap), st.y}, b: pt{first.x, st.y}, name: orElse(edge, "neck"), part: st.name, sts: n, pos: pos})
	}
	if name == "" {
		name = last.runs[0].name + " and " + first.runs[0].name
	}
	c.name = name
	whole := block{view: first.view, x: first.x.Sub(gap).Sub(st.width(&last)), left: last.left, right: first.right, lineL: true, lineR: true}
	for _, r := range slices.Concat(last.runs, []run{{n: n, gauge: first.runs[0].gauge}}, first.runs) {
		r.name = name
		if r.n > 0 {
			whole.runs = append(whole.runs, r)
		}
	}
	whole.runs = joinRuns(whole.runs)
	st.blocks = append(slices.Clone(st.blocks[1:len(st.blocks)-1]), whole)
	w.levelOf(&st.blocks[len(st.blocks)-1], "", "", false, false)
}

// take takes over what another canvas holds, moved by dx.
func (c *canvas) take(o *canvas, dx units.Num) {
	move := func(p pt) pt { return pt{p.x.Add(dx), p.y} }
	for _, s := range o.segs {
		s.a, s.b = move(s.a), move(s.b)
		c.segs = append(c.segs, s)
	}
	for _, l := range o.lines {
		l.a, l.b = move(l.a), move(l.b)
		c.lines = append(c.lines, l)
	}
	for _, a := range o.ribs {
		a.l0, a.r0, a.l1, a.r1 = a.l0.Add(dx), a.r0.Add(dx), a.l1.Add(dx), a.r1.Add(dx)
		c.ribs = append(c.ribs, a)
	}
	for _, m := range o.marks {
		m.at = move(m.at)
		c.marks = append(c.marks, m)
	}
	for _, p := range o.names {
		p.at = move(p.at)
		c.names = append(c.names, p)
	}
	for _, d := range o.depths {
		d.x = d.x.Add(dx)
		c.depths = append(c.depths, d)
	}
	// The levels of the two are those of two panels: told apart by no part, they are left.
	c.levels = nil
	o.dead = true
}

// closeRow ends the drawing of the flat rows and goes on with a tube, which lies
// flat at half its way round.
func (w *worker) closeRow(n int, edge, name string, pos finding.Pos) {
	st := w.cur
	b := &st.blocks[0]
	c := w.canvas(b)
	unworked := !slices.ContainsFunc(c.segs, func(s seg) bool { return !s.a.y.Eq(st.y) || !s.b.y.Eq(st.y) })
	c.segs = append(c.segs, seg{a: pt{st.right(b), st.y}, b: pt{b.x, st.y}, name: "joined edge", part: st.name, sts: b.count(), pos: pos})
	if k := len(c.levels); k > 0 {
		c.levels[k-1].end = true
	}
	if c.dead = unworked || st.row == 0; c.dead {
		name = orElse(name, c.name) // a part that is a round from its beginning
	}
	if c.name == "" {
		c.name = "worked flat"
	}
	next := *b
	next.runs = slices.Clone(b.runs)
	if n > 0 {
		next.runs = joinRuns(append(next.runs, run{name: next.runs[len(next.runs)-1].name, n: n, gauge: st.gauge}))
	}
	next.view = w.newView(orElse(name, "in the round"))
	if c.dead {
		w.views[next.view].name = name
	}
	st.blocks = []block{next}
	st.round = true
	b = &st.blocks[0]
	b.x = st.width(b).Half().Neg()
	nc := w.canvas(b)
	nc.first = st
	base := "joined edge"
	if c.dead && len(c.segs) > 0 {
		base = c.segs[0].name
	}
	nc.segs = append(nc.segs, seg{a: pt{b.x, st.y}, b: pt{st.right(b), st.y}, name: orElse(edge, base), part: st.name, both: true, sts: b.count(), pos: pos})
	w.levelOf(b, "", "", true, false)
}

// roundBy changes a round by d stitches that its sections give to an edge, which it has not:
// that many there are to be, wherever they go.
func (w *worker) roundBy(d int) {
	b := &w.cur.blocks[0]
	next := *b
	next.runs = slices.Clone(b.runs)
	k := len(next.runs) - 1
	if next.runs[k].n += d; next.runs[k].n < 1 {
		next.runs[k].n = 1
		w.doubtful()
	}
	w.settle()
	w.restep(b, next)
}
