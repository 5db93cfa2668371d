package work

import (
	"slices"

	ins "flatwright/schematic/rows/instructions"
)

// needle is one of several that hold a round, and what is worked on it.
type needle struct {
	no, said int // said: stitches that stand there behind it; 0: not told
	body     []ins.Item
	width    int // stitches that it holds; -1: not known
}

// byNeedles works a round needle by needle. What a needle holds is told, or follows from what is worked on it; where
// neither is so, how many there are behind it follows all the same, as long as each goes to an end.
func (w *work) byNeedles(n *ins.Needles) {
	w.takeTurning()
	list := w.needlesOf(n)
	w.blind = w.blind || slices.ContainsFunc(list, func(d needle) bool { return usesNothing(d.body) }) // beside what is picked up others may have waited
	sure := w.widths(list)
	from, out := w.from, make([]int, 0, len(list))
	for _, d := range list {
		whole := w.cur
		sub := whole.part(d.width)
		w.from, w.cur = sub, cursor{f: sub, left: sub.stitches(), pos: whole.pos}
		made := w.out.stitches()
		w.onNeedle(d, sure)
		w.from, w.cur = from, whole
		w.cur.advance(d.width)
		out = append(out, w.out.stitches()-made)
	}
	if w.began = true; sure {
		w.out.needles = out
	}
}

// onNeedle works what is told of one needle.
func (w *work) onNeedle(d needle, sure bool) {
	if d.body == nil {
		w.plainOver()
		return
	}
	if !sure {
		missed := w.missed
		w.quiet++
		w.seq(d.body, 0)
		w.quiet--
		w.blind = w.blind || w.missed > missed || w.cur.left > 0
		return
	}
	w.seq(d.body, 0)
	if left := w.cur.left; left > 0 && !w.leave && !w.turned && !w.free {
		w.tellGap(left, w.from.stitches(), "rows/under-use", d.body[len(d.body)-1].Span(), "%s stitches are left over on the needle | %s stitches on it, %s used | all of them worked, or the text to say that the rest stay unworked",
			"work %s more, or say that they are left unworked", left, w.from.stitches(), w.from.stitches()-left, left)
	}
}

// needlesOf are the needles of a round in their order, those too of which nothing is told: they are worked as they stand.
func (w *work) needlesOf(n *ins.Needles) []needle {
	var list []needle
	for _, p := range n.Parts {
		for _, no := range p.On {
			for k := len(list) + 1; k < no && (len(list) == 0 || list[len(list)-1].no == k-1); k++ {
				list = append(list, needle{no: k, width: -1})
			}
			d := needle{no: no, body: p.Body, width: -1}
			if len(p.Said) == 1 && p.Said[0].Any {
				d.said = w.count(p.Said[0].N)
			}
			list = append(list, d)
		}
	}
	for k := len(list) + 1; k <= len(w.from.needles) && list[len(list)-1].no == k-1; k++ {
		list = append(list, needle{no: k, width: -1})
	}
	return list
}

// widths finds how many stitches each needle holds; false if that is no more than a guess.
func (w *work) widths(list []needle) bool {
	all := w.from.stitches()
	if sum(w.from.needles) == all && len(w.from.needles) == len(list) && !slices.ContainsFunc(list, func(d needle) bool { return d.no > len(list) }) {
		for i := range list {
			list[i].width = w.from.needles[list[i].no-1]
		}
		return true
	}
	rest, open := all, 0
	for i := range list {
		d := &list[i]
		if d.width = w.fixed(d); d.width < 0 {
			open++
			continue
		}
		rest -= d.width
	}
	if open == 0 || rest < 0 {
		for i := range list {
			list[i].width = max(list[i].width, 0)
		}
		return rest >= 0
	}
	for i, k := 0, 0; i < len(list); i++ {
		if list[i].width < 0 {
			list[i].width = rest/open + min(max(rest%open-k, 0), 1)
			k++
		}
	}
	return open == 1
}

// fixed is how many stitches a needle holds by what is worked on it: as many whatever there are, or as its count says;
// -1 if it goes as far as the needle does.
func (w *work) fixed(d *needle) int {
	if d.body == nil {
		return -1
	}
	all := w.from.stitches()
	used, made, fits := w.tried(d.body, all)
	less, _, fitsLess := w.tried(d.body, all-1)
	if fits && fitsLess && used == less {
		return used
	}
	if d.said > 0 && fits {
		return d.said - made + used
	}
	return -1
}

// tried is what a list uses and makes of the first n stitches.
func (w *work) tried(list []ins.Item, n int) (used, made int, fits bool) {
	if n <= 0 {
		return 0, 0, false
	}
	s, from, blind := w.save(), w.from, w.blind
	sub := over(from)
	part := sub.part(n)
	w.from, w.cur = part, over(part)
	before := w.out.stitches()
	fits = w.trial(list)
	used, made = part.stitches()-w.cur.left, w.out.stitches()-before
	w.restore(s)
	w.from, w.blind = from, blind
	return used, made, fits
}

// keepNeedles keeps what each needle holds, if a round leaves as many as there were.
func (w *work) keepNeedles() {
	if w.out.needles == nil && w.from.needles != nil && w.out.stitches() == w.from.stitches() {
		w.out.needles = w.from.needles
	}
}

// part is the next n stitches as a row of their own.
func (c *cursor) part(n int) *fabric {
	f := &fabric{plain: c.f.plain}
	for i, off := c.i, c.off; i < len(c.f.runs) && n > 0; i, off = i+1, 0 {
		r := c.f.runs[i]
		if !r.space() {
			r.n = min(r.n-off, n)
			n -= r.n
		}
		f.runs = append(f.runs, r)
	}
	return f
}

// advance goes over the next n stitches.
func (c *cursor) advance(n int) {
	for n > 0 && c.i < len(c.f.runs) {
		if c.passSpaces(); c.i >= len(c.f.runs) {
			return
		}
		k := min(n, c.run().n-c.off)
		c.step(k)
		n -= k
	}
}

func sum(list []int) int {
	n := 0
	for _, v := range list {
		n += v
	}
	return n
}

// tellsNeedles takes what a line says of how many stitches needles hold, where it makes up the round.
func (r *runner) tellsNeedles(l *ins.Line) {
	if len(l.Needles) == 0 || r.fab == nil {
		return
	}
	held := needlesHeld(l.Needles, r.size, r.fab.stitches())
	if held == nil {
		return
	}
	put := func(f *fabric) *fabric {
		if f == nil || f.stitches() != sum(held) {
			return f
		}
		g := *f
		g.needles = held
		return &g
	}
	r.fab = put(r.fab)
	for i := range r.others {
		r.others[i].fab = put(r.others[i].fab)
	}
}

// needlesHeld is what each needle holds of n stitches, as counts say; nil if they do not make them up.
func needlesHeld(counts []ins.NeedleCount, size, n int) []int {
	var held []int
	for _, c := range counts {
		k := c.N.At(size)
		switch {
		case c.Of > 1 && n%c.Of == 0:
			return slices.Repeat([]int{n / c.Of}, c.Of)
		case len(c.On) == 0 && k > 0 && n%k == 0 && n/k > 1 && n/k < 7:
			return slices.Repeat([]int{k}, n/k)
		}
		for _, no := range c.On {
			for len(held) < no {
				held = append(held, 0)
			}
			held[no-1] = max(k, 0)
		}
	}
	if sum(held) != n || slices.Contains(held, 0) {
		return nil
	}
	return held
}
