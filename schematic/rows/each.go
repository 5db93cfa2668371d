package rows

import "flatwright/schematic/finding"

// stop is how many stitches an extent leaves at the end of the row.
func (w *work) stop(e Extent, reserve int) int {
	if e.Kind == ToLast {
		return max(w.n(e.N), 0)
	}
	return reserve
}

// reserve is how many stitches what comes after needs, so far as it says that it
// stands in the last ones: 'in each st across, dc in last st'.
func (w *work) reserve(tail []*Node, need int) int {
	k := need
	lastly := false
	sum := 0
	for _, n := range tail {
		for i := range n.Places {
			p := &n.Places[i]
			switch p.Kind {
			case InLast, InTop:
				lastly = true
				sum += max(w.n(p.N), 0)
			case InNext:
				if !p.Unit.Space {
					sum += max(w.n(p.N), 0)
				}
			}
		}
		if n.Op == OpLeave && !n.Open {
			lastly = true
			sum += max(w.n(n.N), 0)
		}
	}
	if lastly {
		k += sum
	}
	return k
}

// each works n into every place of the row that is left, to where the extent says.
func (w *work) each(n *Node, p *Place, reserve int) {
	w.takeTurning()
	w.began = true
	keep := w.stop(p.Extent, reserve)
	if keep > w.cur.left {
		w.tell("rows/over-use", finding.Warning, p.At, "there are only %s stitches left, so that 'to last %s' has none", "mend the count before it", w.cur.left, keep)
		return
	}
	if len(n.Also) > 0 {
		w.eachMixed(n, p, keep)
		return
	}
	kind, makes, uses := w.resolve(n)
	group := n.Op == OpGroup || n.Call != nil
	switch {
	case p.Unit.Space:
		worked := 0
		for w.spaceBefore(w.n(p.Unit.Size), keep) {
			if w.steps++; w.steps > maxSteps {
				return
			}
			w.space(w.n(p.Unit.Size), p.At)
			w.foot(n, w.feet(w.lastPos))
			worked++
		}
		if worked == 0 {
			w.space(w.n(p.Unit.Size), p.At) // tells that there is none
		}
		return
	case p.Unit.Group != nil:
		for w.groupAhead(p.Unit.Group) {
			if w.steps++; w.steps > maxSteps {
				return
			}
			w.nextGroup(p.Unit.Group, p.At)
			w.foot(n, w.feet(w.lastPos))
		}
		return
	}
	w.spaced = false
	per := max(w.n(n.N), 0)
	told := false
	for w.cur.left > keep {
		if w.steps++; w.steps > maxSteps {
			return
		}
		if p.Unit.Chain {
			if r := w.cur.run(); r.space() { // each chain of a space
				k := r.chain - w.cur.off
				w.cur.step(k)
				w.emit(run{kind: kind, n: k * per * makes}, w.feet(w.cur.pos-1), n)
				continue
			}
		} else {
			w.cur.passSpaces()
		}
		r := w.cur.run()
		if r == nil {
			break
		}
		k := min(r.n-w.cur.off, w.cur.left-keep)
		if u := p.Unit.Stitch; u != nil && !alike(u, r.kind) && !r.base {
			if !told {
				told = true
				w.tell("rows/under-use", finding.Warning, p.At, "'in each "+u.Abbr(w.x.Terms)+"' leaves %s "+article(r.kind, w.x.Terms)+" unworked", "say 'in each st', or what is done with them", k)
			}
			w.cur.step(k)
			continue
		}
		if uses > 1 {
			if k < uses {
				if w.cur.left-keep < uses {
					w.tell("rows/repeat", finding.Warning, p.At, kind.Abbr(w.x.Terms)+" takes %s stitches: %s are left over", "mend the count of the row below", uses, k)
					return
				}
				k = uses // over two runs
				w.use(uses, nil, p.At)
				w.emit(run{kind: kind, n: makes}, nil, n)
				continue
			}
			if w.rec == nil {
				t := k / uses
				w.cur.step(t * uses)
				w.emit(run{kind: kind, n: t * makes}, nil, n)
				continue
			}
			from := w.cur.pos
			w.cur.step(uses)
			w.emit(run{kind: kind, n: makes}, w.feetTo(from), n)
			continue
		}
		if group || w.rec != nil || per*makes >= 3 {
			w.cur.step(1)
			w.lastPos = w.cur.pos - 1
			w.foot(n, w.feet(w.lastPos))
			continue
		}
		w.cur.step(k)
		w.emit(run{kind: kind, n: k * per * makes}, nil, n)
	}
	if p.Unit.Chain {
		for r := w.cur.run(); r != nil && r.space() && keep == 0; r = w.cur.run() {
			k := r.chain - w.cur.off
			w.cur.step(k)
			w.emit(run{kind: kind, n: k * per * makes}, w.feet(w.cur.pos-1), n)
		}
	}
	w.lastPos = w.cur.pos - 1
}

// eachMixed works over a stretch in which stitches and spaces are worked unlike:
// sc in each sc and 2 sc in each ch-2 sp.
func (w *work) eachMixed(n *Node, p *Place, keep int) {
	list := append([]*Node{n}, n.Also...)
	for _, m := range list {
		w.together(m, p.At)
	}
	pick := func(r *run) *Node {
		for _, m := range list {
			u := m.Places[0].Unit
			switch {
			case u.Space:
				if size := w.n(u.Size); r.space() && (size <= 0 || size == r.chain) {
					return m
				}
			case u.Chain:
				if r.space() || r.base {
					return m
				}
			case !r.space() && alike(u.Stitch, r.kind):
				return m
			}
		}
		return nil
	}
	for w.cur.i < len(w.cur.f.runs) && (w.cur.left > keep || keep == 0) {
		if w.steps++; w.steps > maxSteps {
			return
		}
		r := w.cur.run()
		m := pick(r)
		switch {
		case m == nil && r.space():
			w.cur.passSpaces()
		case m == nil:
			w.tell("rows/under-use", finding.Warning, p.At, "%s "+article(r.kind, w.x.Terms)+" are not worked", "say what is done with them", r.n-w.cur.off)
			w.cur.step(r.n - w.cur.off)
		case r.space():
			times := 1
			if m.Places[0].Unit.Chain {
				times = r.chain
			}
			w.cur.step(r.chain)
			w.lastPos = w.cur.pos - 1
			for range times {
				w.foot(m, w.feet(w.lastPos))
			}
		default:
			k := min(r.n-w.cur.off, w.cur.left-keep)
			kind, makes, _ := w.resolve(m)
			if w.rec != nil || m.Op == OpGroup || m.Call != nil {
				k = 1
				w.cur.step(1)
				w.lastPos = w.cur.pos - 1
				w.foot(m, w.feet(w.lastPos))
				continue
			}
			w.cur.step(k)
			w.emit(run{kind: kind, n: k * max(w.n(m.N), 0) * makes}, nil, m)
		}
	}
}

// spaceBefore reports whether there is a chain space ahead, before the last keep
// stitches.
func (w *work) spaceBefore(size, keep int) bool {
	c := w.cur
	for c.i < len(c.f.runs) {
		r := c.run()
		if r.space() && (size <= 0 || r.chain == size) && c.off == 0 {
			return c.left >= keep
		}
		if r.space() {
			c.i, c.off = c.i+1, 0
			continue
		}
		c.left -= r.n - c.off
		c.i, c.off = c.i+1, 0
	}
	return false
}

func (w *work) groupAhead(g *Group) bool {
	for i := w.cur.i; i < len(w.cur.f.runs); i++ {
		if r := w.cur.f.runs[i]; r.group > 0 && r.of == g && (i > w.cur.i || w.cur.off == 0) {
			return true
		}
	}
	return false
}

// group works a bracket: into places, so many times, or as far as it goes.
func (w *work) group(n *Node, tail []*Node, need int) {
	if len(n.Places) > 0 {
		times := 1
		if n.Until.Kind == NoExtent {
			times = max(w.n(n.Times), 1)
		}
		for range min(times, maxSteps) {
			for i := range n.Places {
				w.place(n, &n.Places[i], w.reserve(tail, need))
			}
			if w.steps > maxSteps {
				return
			}
		}
		return
	}
	if n.Until.Kind == NoExtent {
		t := w.n(n.Times)
		if t == none {
			return
		}
		for range min(t, maxSteps) {
			w.seq(n.Body, 0)
			if w.steps > maxSteps {
				return
			}
		}
		return
	}
	w.loop(n, tail, need)
}

// state is what a trial of one more repeat may have to take back.
type state struct {
	cur            cursor
	out            *fabric
	all            []run // as it stood: a trial may have moved it
	runs           int
	last           run
	picots, groups int
	spaced, tchAt  bool
	began          bool
	lastPos        int
	missed, psso   int
	next           *Node
}

func (w *work) save() state {
	s := state{cur: w.cur, out: w.out, all: w.out.runs, runs: len(w.out.runs), picots: w.out.picots, groups: w.out.groups, spaced: w.spaced, tchAt: w.tchAt,
		began: w.began, lastPos: w.lastPos, missed: w.missed, psso: w.psso, next: w.next}
	if s.runs > 0 {
		s.last = w.out.runs[s.runs-1]
	}
	return s
}

func (w *work) restore(s state) {
	w.cur, w.spaced, w.tchAt, w.began, w.lastPos, w.missed, w.psso, w.next = s.cur, s.spaced, s.tchAt, s.began, s.lastPos, s.missed, s.psso, s.next
	w.out = s.out
	w.out.runs, w.out.picots, w.out.groups = s.all[:s.runs], s.picots, s.groups
	if s.runs > 0 {
		w.out.runs[s.runs-1] = s.last
	}
}

// loop works a bracket again and again, to the end of the row or to its last so
// many stitches, as long as it fits.
func (w *work) loop(n *Node, tail []*Node, need int) {
	w.takeTurning()
	keep := w.stop(n.Until, w.reserveAll(tail, need, n.Until))
	if keep > w.cur.left {
		w.tell("rows/over-use", finding.Warning, n.Until.At, "there are only %s stitches left, so that 'to last %s' has none", "mend the count before it", w.cur.left, keep)
		return
	}
	body := n.Body
	times := 0
	rec := w.rec
	per := 0
	for w.steps < maxSteps {
		if w.cur.left <= keep && !(keep == 0 && w.bySpaces(body) && w.spaceBefore(0, 0)) {
			break
		}
		if w.cur.left == keep && keep > 0 {
			break
		}
		s := w.save()
		w.quiet++
		w.rec = nil
		w.seq(body, 0)
		w.quiet--
		w.rec = rec
		failed := w.missed > s.missed
		moved := w.cur.pos > s.cur.pos
		short := w.cur.left < keep
		if !failed && moved && !short {
			per = s.cur.left - w.cur.left
			if rec != nil { // again, for the graph
				w.restore(s)
				w.seq(body, 0)
			}
			times++
			continue
		}
		left := s.cur.left
		w.restore(s)
		if !moved && !failed {
			if w.pinned || len(w.from.runs) == 0 {
				return
			}
			w.tell("rows/repeat", finding.Warning, n.At, "this repeat uses no stitch of the row below, so that it never ends", "say how many times it is worked")
			return
		}
		if n.Stop >= 0 && n.Stop < len(body) { // ending last rep at **
			w.seq(body[:n.Stop], 0)
			return
		}
		if times == 0 && failed {
			w.seq(body, 0) // tells why not even the first fits
			return
		}
		if w.bySpaces(body) && times > 0 && !w.spaceBefore(0, 0) { // no space is left: the rest lies behind the last one
			return
		}
		rest := left - keep
		w.tell("rows/repeat", finding.Warning, n.At, "the repeat does not fit: %s stitches are left over after %s times | %s stitches to repeat over, the repeat uses %s | a multiple of %s",
			"make %s stitches more or %s fewer before it, or say what becomes of the rest", rest, times, w.span(rest, times, per), w.perOr(per, body), w.perOr(per, body), max(w.perOr(per, body)-rest, 1), rest)
		for w.cur.left > keep { // go on behind the rest
			w.cur.passSpaces()
			r := w.cur.run()
			if r == nil {
				break
			}
			w.cur.step(min(r.n-w.cur.off, w.cur.left-keep))
		}
		return
	}
	if n.Stop >= 0 && n.Stop < len(body) && w.cur.left > keep {
		w.seq(body[:n.Stop], 0)
	}
}

func (w *work) span(rest, times, per int) int { return rest + times*per }

func (w *work) perOr(per int, body []*Node) int {
	if per > 0 {
		return per
	}
	return max(len(body), 1)
}

// bySpaces reports whether a repeat is worked into chain spaces.
func (w *work) bySpaces(body []*Node) bool {
	for _, n := range body {
		for _, p := range n.Places {
			if p.Unit.Space {
				return true
			}
		}
		if n.Op == OpGroup && len(n.Places) == 0 && w.bySpaces(n.Body) {
			return true
		}
	}
	return false
}

// reserveAll is what comes after a repeat that goes 'across' and has more to work
// behind it; 'to end' leaves nothing.
func (w *work) reserveAll(tail []*Node, need int, e Extent) int {
	return w.reserve(tail, need)
}
