package schematic

import (
	"fmt"
	"strings"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// AddEdge adds stitches (chained or cast on) at the edges that At names.
type AddEdge struct {
	Common
	Stitches expr.Graded
	At       Side
	Edge     string // name of the edge that they make
}

func (s *AddEdge) Traits() Traits {
	return Traits{Words: "add", Adds: true, Shapings: []Shaping{{Increase: true, By: s.Stitches, At: s.At, Edge: s.Edge}}}
}

func (s *AddEdge) load(int, func(Amount) int64) Load { return Load{Rows: 1} }

func (s *AddEdge) work(w *worker) {
	st := w.cur
	n := s.Stitches.Int(w.i, 0)
	if n <= 0 {
		return
	}
	w.settle()
	at := w.side(s.At)
	if st.round && len(st.blocks) == 1 || at == Across || at == Lines {
		w.find("arithmetic/round", finding.Error, s.Pos, "a round has no edge to add stitches at", "", "", "use `increase` at `across`, or divide the round first")
		w.roundBy(n)
		return
	}
	if at == LeftEdge || at == BothEdges {
		b := &st.blocks[0]
		x := b.x.Sub(b.runs[0].gauge.StitchWidth().Times(n))
		w.step(b, x, st.right(b), orElse(s.Edge, "added edge"), "", n, 0)
		b.x = x
		b.give(segLeft, n)
	}
	if at == RightEdge || at == BothEdges {
		b := &st.blocks[len(st.blocks)-1]
		r := st.right(b).Add(b.runs[len(b.runs)-1].gauge.StitchWidth().Times(n))
		w.step(b, b.x, r, "", orElse(s.Edge, "added edge"), 0, n)
		b.give(segRight, n)
	}
	for i := range st.blocks {
		w.levelOf(&st.blocks[i], "", "", false, false)
	}
}

// BindOff takes stitches out of work at the edges that At names, or all of them:
// bound off, or left unworked (Leave). At both edges a bind-off takes two rows,
// one edge at the beginning of each. Repeats does so every Every rows.
type BindOff struct {
	Common
	Leave    bool
	Hold     bool // kept on hold, live for another piece
	All      bool
	Stitches expr.Graded
	At       Side
	Every    expr.Graded
	Times    expr.Graded
	Edge     string
}

func (s *BindOff) Traits() Traits {
	t := Traits{Words: "bind off", Takes: true, All: s.All, Leaves: s.Leave, Holds: s.Hold,
		Shapings: []Shaping{{By: s.Stitches, At: s.At, Every: s.Every, Times: s.Times, Edge: s.Edge}}}
	switch {
	case s.Hold:
		t.Words, t.As = "hold", s.Name
	case s.Leave:
		t.Words = "leave"
	}
	return t
}

func (s *BindOff) load(i int, _ func(Amount) int64) Load {
	l := again(s.Pos, s.Stitches, s.Every, s.Times, i)
	l.Rows *= 2 // at both edges
	return l
}

func (s *BindOff) work(w *worker) {
	st := w.cur
	if s.All {
		w.end(orElse(s.Edge, "top"), s.Pos, s.Hold)
		w.alsoLive(NamesIn(s))
		return
	}
	n := s.Stitches.Int(w.i, 0)
	at := w.side(s.At)
	if n <= 0 {
		if s.Edge != "" && !w.cur.round { // a size that takes none off has the edge all the same
			w.nameShaped(at, s.Edge)
		}
		return
	}
	if st.round && len(st.blocks) == 1 {
		w.find("arithmetic/round", finding.Error, s.Pos, "a round has no edge to bind off at", "", "",
			"divide the round into parts, one of them bound off or left")
		w.roundBy(-n)
		return
	}
	times := 1
	if !s.Times.IsZero() {
		times = s.Times.Int(w.i, 0)
	}
	if times <= 0 {
		return
	}
	off := takingOff{BindOff: s, at: at, n: n, times: times, edges: 1, plain: !s.Leave && !s.Hold}
	if at == BothEdges {
		off.edges = 2
	}
	off.every = 1
	if off.plain {
		off.every = off.edges
	}
	off.every = max(off.every, s.Every.Int(w.i, off.every))
	lost := off.bound(w)
	off.begins(w)
	if s.Edge != "" {
		w.nameShaped(at, s.Edge)
	}
	off.work(w)
	if lost > 0 && off.plain {
		w.advance(off.every*lost, nil, nil)
	}
}

// takingOff is a bind-off in one size: n stitches at each of its edges, times times, every so many rows.
type takingOff struct {
	*BindOff
	at                     Side
	n, times, edges, every int
	plain                  bool // bound off, not left or held
}

// bound takes no more off than there is, tells that, and gives how many times are lost.
func (o *takingOff) bound(w *worker) int {
	st := w.cur
	need := o.n * o.times * o.edges
	if need < st.count() || need == st.count() && o.edges == 1 {
		return 0
	}
	w.findCount("arithmetic/impossible", finding.Error, o.Pos,
		fmt.Sprintf("%d stitches are taken off, and there are %d", need, st.count()), takenOff(o.n, o.times, o.edges),
		fmt.Sprintf("%d stitches", st.count()), "take off fewer, or say `bind off: all`")
	w.doubtful()
	whole := o.times
	o.times = min(whole, max(0, st.count()-1)/(o.n*o.edges))
	return whole - o.times
}

// begins tells stitches bound off at the beginning of a row that begins at the other edge.
func (o *takingOff) begins(w *worker) {
	st := w.cur
	if !o.plain || st.flip || st.round || o.at != LeftEdge && o.at != RightEdge {
		return
	}
	if begin := o.at == RightEdge; begin != st.rs {
		w.findSide("arithmetic/row-side", finding.Warning, o.Pos,
			fmt.Sprintf("stitches are bound off at the beginning of a row, and the next row is a %s row, which begins at the other edge", sideName(st.rs)),
			"", "", "work one row more before it, or `leave` the stitches instead")
	}
}

// work takes the stitches off, and works the rows between.
func (o *takingOff) work(w *worker) {
	for t := range o.times {
		o.takeOff(w, t == o.times-1)
		if w.cur.count() == 0 {
			w.end(orElse(o.Edge, "top"), o.Pos, false)
			return
		}
		rows := o.every
		switch {
		case o.plain && o.edges == 2:
			rows -= 2
		case !o.plain && t == o.times-1:
			rows = 0
		}
		w.advance(rows, nil, nil)
	}
}

// takeOff takes stitches off once. The two rows of a last bind-off at both edges are no part of the edge that it makes, if what is between is bound off
// next as another edge: a shoulder is as long as its stitches, and the neck begins beside it.
func (o *takingOff) takeOff(w *worker, last bool) {
	c := w.canvas(&w.cur.blocks[0])
	from := len(c.segs)
	w.takeOff(o.BindOff, o.at, o.n, o.plain)
	if all, ok := w.next.(*BindOff); !last || !ok || !all.All || o.edges < 2 || o.Edge == "" || strings.EqualFold(o.Edge, orElse(all.Edge, "top")) {
		return
	}
	for i := from; i < len(c.segs); i++ {
		c.segs[i].step = c.segs[i].rows > 0
	}
}

// takenOff is the sum of a bind-off: 4 × 3 times at both edges.
func takenOff(n, times, edges int) string {
	text := fmt.Sprint(n)
	if times > 1 {
		text += fmt.Sprintf(" × %d times", times)
	}
	if edges > 1 {
		text += " at each of both edges"
	}
	return text
}

// takeOff takes n stitches off at each edge meant. Bound off at both edges it is
// done at the beginning of each of two rows.
func (w *worker) takeOff(s *BindOff, at Side, n int, plain bool) {
	st := w.cur
	w.settle()
	one := func(side segSide) {
		if s.Hold {
			w.hold(orElse(s.Name, st.name), n)
		}
		if side == segLeft {
			b := &st.blocks[0]
			x := b.x.Add(st.offsetOf(b, n))
			w.step(b, x, st.right(b), b.left, b.right, n, 0)
			b.x = x
			b.take(segLeft, n)
			return
		}
		b := &st.blocks[len(st.blocks)-1]
		r := b.x.Add(st.offsetOf(b, b.count()-n))
		w.step(b, b.x, r, b.left, b.right, 0, n)
		b.take(segRight, n)
	}
	switch at {
	case LeftEdge:
		one(segLeft)
	case RightEdge:
		one(segRight)
	default:
		first, second := segRight, segLeft
		if !st.rs {
			first, second = second, first
		}
		one(first)
		if plain {
			w.advance(1, nil, nil)
		}
		one(second)
		if plain {
			w.advance(1, nil, nil)
		}
	}
}

// Panels cuts the row into panels at marked lines, in the order in which a
// right-side row meets them. If a later shaping falls on the lines, each panel
// is drawn with its own outline.
type Panels struct {
	Common
	Of []Panel
}

func (s *Panels) Traits() Traits { return Traits{Words: "panels", Panels: s.Of} }

func (s *Panels) load(int, func(Amount) int64) Load { return Load{Panels: len(s.Of)} }

func (s *Panels) work(w *worker) {
	st := w.cur
	if len(st.blocks) > 1 || st.band > 0 {
		w.find("arithmetic/panels", finding.Error, s.Pos, "the row is cut into panels already", "", "", "cut it once, into all panels")
		return
	}
	var runs []run
	sum := 0
	for _, p := range s.Of {
		n := p.Stitches.Int(w.i, 0)
		sum += n
		g := st.gauge
		if p.Gauge != "" {
			g = w.gauge(p.Gauge)
		}
		if n > 0 {
			runs = append(runs, run{name: p.Name, n: n, gauge: g})
		}
	}
	if st.doubt {
		w.state(sum)
	} else if have := st.count(); sum != have {
		w.find("arithmetic/panels", finding.Warning, s.Pos, fmt.Sprintf("the panels have %d stitches and the row has %d", sum, have),
			sumText(len(s.Of), func(i int) int { return s.Of[i].Stitches.Int(w.i, 0) }, sum), fmt.Sprintf("%d in the row", have),
			fmt.Sprintf("make the panels %s in all", byStitches(have-sum)))
		w.over = units.Int(int64(sum - have))
	}
	if len(runs) == 0 {
		return
	}
	if !w.flippedOrder() {
		reverse(runs)
	}
	b := &st.blocks[0]
	next := *b
	next.runs = runs
	if w.lines {
		w.cutRow(next)
		return
	}
	w.settle()
	w.restepQuiet(b, next)
	c := w.canvas(b)
	w.panelLines(c, b)
}

// panelLines marks the lines between panels that are drawn together, at this height.
func (w *worker) panelLines(c *canvas, b *block) {
	x := b.x
	for i, r := range b.runs {
		width := r.gauge.StitchWidth().Times(r.n).Mul(w.cur.layers())
		c.panels = append(c.panels, partAt{name: r.name, at: pt{x.Add(width.Half()), w.cur.y}})
		x = x.Add(width)
		if i < len(b.runs)-1 {
			c.lines = append(c.lines, inner{kind: LinePanel, a: pt{x, w.cur.y}})
		}
	}
}

// restepQuiet is restep without a line where nothing changes.
func (w *worker) restepQuiet(b *block, next block) {
	if w.cur.width(&next).Eq(w.cur.width(b)) {
		next.x = b.x
		*b = next
		return
	}
	w.restep(b, next)
}

// flippedOrder reports whether a list in the order of a right-side row runs
// from left to right in the working: for the mirror of a part.
func (w *worker) flippedOrder() bool { return w.cur.flip }

// cutApart cuts the strand, just begun, into panels that are drawn apart.
func (w *worker) cutApart() {
	st := w.cur
	next := st.blocks[0]
	w.views[next.view].dead = true
	w.apart(next)
}

// cutRow ends the drawing of the whole row and goes on with one drawing a panel.
func (w *worker) cutRow(next block) {
	st := w.cur
	b := &st.blocks[0]
	c := w.canvas(b)
	if st.row == 0 {
		c.dead = true
	} else {
		w.settle()
		c.segs = append(c.segs, seg{a: pt{st.right(b), st.y}, b: pt{b.x, st.y}, name: "base of the panels", part: st.name, both: st.round,
			sts: b.count(), pos: w.section.Base().Pos})
		w.levelOf(b, "", "", false, true)
		c.name = orElse(w.lastName, "first rows")
	}
	w.apart(next)
}

func (w *worker) apart(whole block) {
	st := w.cur
	begin := st.blocks[0]
	edge := "live edge"
	if c := w.canvas(&begin); c.dead && len(c.segs) > 0 {
		edge = c.segs[0].name
	} else if !c.dead {
		edge = "base"
	}
	st.blocks = make([]block, len(whole.runs))
	// The drawings stand in the order in which a right-side row meets the panels.
	for i := len(whole.runs) - 1; i >= 0; i-- {
		r := whole.runs[i]
		nb := block{view: w.newView(r.name), runs: []run{r}, left: "line", right: "line", lineL: true, lineR: true}
		if i == 0 && !st.round {
			nb.left, nb.lineL = whole.left, false
		}
		if i == len(whole.runs)-1 && !st.round {
			nb.right, nb.lineR = whole.right, false
		}
		st.blocks[i] = nb
	}
	for i := range st.blocks {
		b := &st.blocks[i]
		b.x = st.gaugeWidth(b).Half().Neg()
		c := w.canvas(b)
		c.first, c.panel = st, true
		c.segs = append(c.segs, seg{a: pt{b.x, st.y}, b: pt{b.x.Add(st.gaugeWidth(b)), st.y}, name: edge, sts: b.count(), pos: w.section.Base().Pos})
		w.levelOf(b, "", "", true, false)
	}
	if w.canvas(&begin).dead {
		w.acrossPanels(w.panelsName(true))
	}
}

func (s *strand) gaugeWidth(b *block) units.Num {
	var t units.Num
	for _, r := range b.runs {
		t = t.Add(r.gauge.StitchWidth().Times(r.n))
	}
	return t
}

func sumText(n int, at func(int) int, sum int) string {
	t := ""
	for i := range n {
		if i > 0 {
			t += " + "
		}
		t += fmt.Sprint(at(i))
	}
	return fmt.Sprintf("%s = %d", t, sum)
}
