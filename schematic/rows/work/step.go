package work

import (
	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"slices"
)

// skip passes places of the row below.
func (w *work) skip(p *ins.Place) {
	k := w.n(p.N)
	if k <= 0 || p.Kind == ins.InSame && !w.cur.atStart() { // sl st over 4 sts, ch 3, skip st at base of ch: it is the last of them
		return
	}
	w.spaced = false
	if k -= w.passTurning(p); k == 0 {
		return
	}
	switch {
	case p.Unit.Space:
		for range k {
			if !w.space(w.spaceSize(p.Unit), p.At) {
				return
			}
		}
	case p.Unit.Word == "made" && !w.from.foundation(): // the chain of the turn
	case p.Unit.Chain:
		w.chains(k, p.At)
	case p.Unit.Group != nil || p.Unit.Stretch:
		for range k {
			if !w.nextGroup(p.Unit.Group, p.At) {
				return
			}
		}
	default:
		w.takeTurning()
		w.cur.passSpaces()
		w.passedAt = w.cur.pos
		w.passed = w.use(k, p.Unit.Stitch, p.At)
	}
}

// passTurning passes the turning chain of the row below, if it is the first of the places that are passed, and gives how many that is.
func (w *work) passTurning(p *ins.Place) int {
	if p.Kind != ins.InFirst && p.Kind != ins.InSame || !w.tchAt || !w.cur.atStart() {
		return 0
	}
	w.takeTurning()
	return 1
}

// nextChains is the run at which an instruction goes on that has taken so many chains: at its beginning, of the other side of the
// foundation too.
func (w *work) nextChains(got int) *run {
	r := w.cur.run()
	if r == nil && got == 0 && w.goesBack() {
		return w.cur.run()
	}
	return r
}

// chains takes k single chains: of a foundation, or of chain spaces.
func (w *work) chains(k int, at ins.Span) int {
	w.takeTurning()
	w.began = true
	got := 0
	for got < k {
		r := w.nextChains(got)
		if r == nil {
			break
		}
		switch {
		case r.space():
			m := min(k-got, r.chain-w.cur.off)
			w.cur.step(m)
			got += m
			w.spaced = true
		case r.base || r.tch && (got == 0 || w.cur.i == len(w.cur.f.runs)-1): // the turning chain below ends in one
			m := min(k-got, r.n-w.cur.off)
			w.cur.step(m)
			got += m
		default:
			if got == 0 && w.cur.f.hasChains(w.cur.i) || !w.from.hasChains(0) { // stitches before the chains are passed
				w.unsure()
				w.doubtful("which chain is meant is not clear")
				w.cur.step(1)
				got++
				continue
			}
			w.tell("rows/over-use", finding.Warning, at, "there is no chain left here, but "+article(r.kind, w.x.TermsAt(at.Line)), "name the stitch that is there")
			return got
		}
	}
	if w.lastPos = w.cur.pos - 1; w.cur.off > 0 && w.cur.run().space() { // within it
		w.lastPos++
	}
	if got < k {
		w.tellGap(k-got, w.from.stitches(), "rows/over-use", at, "this needs %s chains more than the row below has | %s places in the row below | at least %s places",
			"use %s fewer here, or chain more", k-got, w.from.stitches(), w.from.stitches()+k-got, k-got)
	}
	return got
}

func (f *fabric) hasChains(from int) bool {
	return slices.ContainsFunc(f.runs[from:], func(r run) bool { return r.space() || r.base })
}

// nextGroup goes on to the next whole group of that name and takes it; of any name, if
// none is given. Where no group is known, it is the next stitch.
func (w *work) nextGroup(g *ins.Group, at ins.Span) bool {
	w.takeTurning()
	w.began = true
	c := w.cur
	c.passGroup()
	for c.i < len(c.f.runs) {
		r := c.run()
		if r.group > 0 && (g == nil || stands(r.of, g)) && c.off == 0 {
			from, first := c, c.pos
			c.endGroup(r.group)
			w.cur = c
			w.spaced = true
			w.lastPos = from.middle(first, c.pos)
			return true
		}
		if r.space() {
			c.i, c.off = c.i+1, 0
			c.pos++
			continue
		}
		c.step(r.n - c.off)
	}
	name := "group"
	if g != nil {
		name = g.Name
	} else if w.cur.left > 0 && !slices.ContainsFunc(c.f.runs, func(r run) bool { return r.group > 0 }) {
		w.blind = true
		return w.use(1, nil, at) == 1
	}
	w.tell("rows/over-use", finding.Warning, at, "there is no "+name+" left to work into", "make it in the row below, or take this out")
	return false
}

// stands reports whether what was worked as one group may be called as another: a starting shell is a shell.
func stands(of, g *ins.Group) bool {
	return of == g || of != nil && (of.Name == "starting "+g.Name || of.Name == "beginning "+g.Name || of.Name == "beg "+g.Name)
}

// endGroup goes on behind the group of that number.
func (c *cursor) endGroup(id int) {
	for c.i < len(c.f.runs) && c.run().group == id {
		if q := c.run(); q.space() {
			c.step(q.chain - c.off)
		} else {
			c.step(q.n - c.off)
		}
	}
}

// passGroup goes on behind a group of which something was taken.
func (c *cursor) passGroup() {
	if r := c.run(); r != nil && r.group > 0 && (c.off > 0 || c.i > 0 && c.f.runs[c.i-1].group == r.group) {
		c.endGroup(r.group)
	}
}

// middle is the place in the middle of a group from one place up to another: a space of it, if it has one.
func (c cursor) middle(from, to int) int {
	best, off := (from+to-1)/2, to
	for c.pos < to {
		r := c.run()
		if far := abs(2*c.pos - from - to + 1); r.space() && far < off {
			best, off = c.pos, far
		}
		c.step(max(r.n, r.chain))
	}
	return best
}

func abs(n int) int { return max(n, -n) }

// skippedChains takes what chains skipped at the beginning of a foundation count as.
func (w *work) skippedChains(n *ins.Skip) {
	if w.began || len(w.from.runs) == 0 || !w.from.runs[0].base || len(n.Places) != 1 || !n.Places[0].Unit.Chain || !w.cur.atStart() {
		return
	}
	k := w.n(n.Places[0].N)
	c := n.Count.How
	if c == ins.Unsaid && k > 1 {
		c = w.counts(n.Count, k, true, n.At)
	}
	if c != ins.CountsAsStitch {
		return
	}
	kind := n.Count.As
	if kind == nil {
		kind = byTurning(k)
	}
	if w.rec != nil && w.quiet == 0 {
		w.rec(kind, 1, k, nil, n)
	}
	w.out.add(run{kind: kind, n: 1, tch: true})
}

// join holds the chain that a round is joined to against the one that began it.
func (w *work) join(n *ins.Join) {
	w.closedRound = n.Name != "ring" || w.began || len(w.out.runs) > 0 // else it only makes the ring
	if w.startChain == 0 {
		return
	}
	if t := w.n(n.Chain); t > 0 && t != w.startChain {
		w.tell("rows/join", finding.Warning, n.At, "the round is joined to a chain of %s, but began with one of %s", "join to the top of ch-%s", t, w.startChain, w.startChain)
		return
	}
	if k := w.n(n.Nth); k > 0 && w.startSpace > 0 && k != w.startChain-w.startSpace {
		w.tell("rows/join", finding.Warning, n.At, "the round is joined to chain %s, but the stitch that the chain counts as ends at chain %s", "join to chain %s",
			k, w.startChain-w.startSpace, w.startChain-w.startSpace)
	}
}
