package schematic

import (
	"sort"

	"flatwright/schematic/units"
)

// advance works k rows with the given movements of the edges of each block, and
// brings positions, counts, areas and edges up to date.
func (w *worker) advance(k int, left, right []profile) {
	if k <= 0 {
		return
	}
	w.settle()
	s := w.cur
	h := s.gauge.RowHeight()
	for i := range s.blocks {
		b := &s.blocks[i]
		c := w.canvas(b)
		lp, rp := b.corners(extend(left, i, k), segLeft), b.corners(extend(right, i, k), segRight)
		out := func(side segSide, d units.Num) units.Num { return s.moved(b, side, d) }
		l0, r0 := b.x, s.right(b)
		fold := s.round && len(s.blocks) == 1
		prev := profilePoint{}
		var ls []seg
		for _, q := range lp {
			ls = append(ls, seg{
				a: pt{l0.Sub(out(segLeft, q.d)), s.y.Add(h.Times(q.row))}, b: pt{l0.Sub(out(segLeft, prev.d)), s.y.Add(h.Times(prev.row))},
				name: b.left, part: s.name, side: segLeft, fold: fold, rows: q.row - prev.row, pos: w.section.Base().Pos, gauge: s.gauge})
			prev = q
		}
		c.segs = append(c.segs, ls...)
		prev = profilePoint{}
		for _, q := range rp {
			c.segs = append(c.segs, seg{
				a: pt{r0.Add(out(segRight, prev.d)), s.y.Add(h.Times(prev.row))}, b: pt{r0.Add(out(segRight, q.d)), s.y.Add(h.Times(q.row))},
				name: b.right, part: s.name, side: segRight, fold: fold, rows: q.row - prev.row, pos: w.section.Base().Pos, gauge: s.gauge})
			prev = q
		}
		if c.free != nil {
			for _, q := range lp.plus(rp) {
				c.free.doubt = c.free.doubt || s.doubt
				c.free.note(s.row+q.row, b.count()+int(q.d.Floor()))
			}
		}
		dl, dr := lp.last().d, rp.last().d
		w.grow(b, h, k, lp, rp)
		b.x = l0.Sub(out(segLeft, dl))
		b.change(dl, dr)
	}
	s.y = s.y.Add(h.Times(k))
	s.row += k
	if !s.round && k%2 == 1 {
		s.rs = !s.rs
	}
}

// extend gives the profile of block i a last point after k rows.
func extend(all []profile, i, k int) profile {
	var p profile
	if i < len(all) {
		p = all[i]
	}
	if l := p.last(); l.row < k {
		p = append(append(profile(nil), p...), profilePoint{k, l.d})
	}
	return p
}

// outer is the i-th run from one end.
func (b *block) outer(side segSide, i int) run {
	if side == segRight {
		i = len(b.runs) - 1 - i
	}
	return b.runs[i]
}

// moved is how far outwards an edge lies that has moved by d stitches: outwards those of the run at its end, inwards those of run after run.
func (s *strand) moved(b *block, side segSide, d units.Num) (by units.Num) {
	for i := 0; d.Sign() != 0; i++ {
		r, part := b.outer(side, i), d
		if i < len(b.runs)-1 {
			part = units.Max(d, units.Int(int64(-r.n)))
		}
		by, d = by.Add(r.gauge.StitchWidth().Mul(part)), d.Sub(part)
	}
	return by.Mul(s.layers())
}

// corners are a profile with a point where the edge has taken up a whole run, since it goes on at the width of the next one's stitches.
func (b *block) corners(p profile, side segSide) profile {
	out := p
	var taken units.Num
	for i := range len(b.runs) - 1 {
		taken = taken.Sub(units.Int(int64(b.outer(side, i).n)))
		row := p.firstAt(taken)
		if row == 0 {
			break
		}
		if row < p.last().row {
			out = out.plus(profile{{row, units.Num{}}, {p.last().row, units.Num{}}})
		}
	}
	return out
}

// firstAt is the first row in which the edge is moved by d, or further inwards; 0 if none is.
func (p profile) firstAt(d units.Num) int {
	prev := profilePoint{}
	for _, q := range p {
		if rows := q.row - prev.row; rows > 0 {
			each := q.d.Sub(prev.d).Mul(units.Frac(1, int64(rows)))
			at := func(k int) bool { return !d.Less(prev.d.Add(each.Times(k))) }
			if at(1) {
				return prev.row + 1
			}
			if at(rows) {
				return prev.row + 1 + sort.Search(rows-1, func(k int) bool { return at(k + 1) })
			}
		}
		prev = q
	}
	return 0
}

// change brings the counts up to date after the edges moved.
func (b *block) change(dl, dr units.Num) {
	total := int(dl.Add(dr).Floor())
	if len(b.runs) == 1 {
		b.runs[0].n += total
		return
	}
	l := int(dl.Floor())
	for _, d := range []struct {
		side segSide
		n    int
	}{{segLeft, l}, {segRight, total - l}} {
		if d.n < 0 {
			b.take(d.side, -d.n)
		} else {
			b.give(d.side, d.n)
		}
	}
}

// grow adds the fabric area of k rows, by gauge: the mean count of the rows
// between two corners times width and height of a stitch.
func (w *worker) grow(b *block, h units.Num, k int, lp, rp profile) {
	for i, r := range b.runs {
		n := units.Int(int64(r.n)).Times(k)
		if i == 0 {
			n = n.Add(meanSum(lp))
		}
		if i == len(b.runs)-1 {
			n = n.Add(meanSum(rp))
		}
		a := n.Mul(r.gauge.StitchWidth()).Mul(h)
		w.areas[r.gauge.Name] = w.areas[r.gauge.Name].Add(a)
	}
}

// meanSum is the sum of a profile over its rows (trapezoids).
func meanSum(p profile) units.Num {
	var t units.Num
	prev := profilePoint{}
	for _, q := range p {
		t = t.Add(q.d.Add(prev.d).Half().Times(q.row - prev.row))
		prev = q
	}
	return t
}

// step moves the ends of a block at the present height without working a row.
func (w *worker) step(b *block, l, r units.Num, left, right string, lsts, rsts int) {
	s := w.cur
	c := w.canvas(b)
	l0, r0 := b.x, s.right(b)
	pos := w.section.Base().Pos
	add := func(a, z units.Num, name string, side segSide, n int) {
		c.segs = append(c.segs, seg{a: pt{a, s.y}, b: pt{z, s.y}, name: name, part: s.name, side: side, sts: n, pos: pos,
			both: s.round && len(s.blocks) == 1})
	}
	switch l.Cmp(l0) {
	case 1:
		add(l, l0, left, segLeft, lsts)
	case -1:
		add(l, l0, left, segLeft, lsts)
	}
	if !r.Eq(r0) {
		add(r0, r, right, segRight, rsts)
	}
}

// toGauge goes on in another gauge, about the same centre.
func (w *worker) toGauge(g *Gauge) {
	s := w.cur
	if g == nil || g == s.gauge && len(s.blocks) == 1 && len(s.blocks[0].runs) == 1 {
		return
	}
	w.settle()
	for k := range s.blocks {
		b := &s.blocks[k]
		next := *b
		next.runs = append([]run(nil), b.runs...)
		for i := range next.runs {
			next.runs[i].gauge = g
		}
		w.restep(b, next)
	}
	s.gauge = g
}

// restep replaces a block by next at the same height, about the same centre,
// with a step where the widths differ and a line of change.
func (w *worker) restep(b *block, next block) {
	s := w.cur
	l0, r0 := b.x, s.right(b)
	band := s.band
	s.band = 0
	width := s.width(&next)
	mid := l0.Add(r0).Half()
	l, r := mid.Sub(width.Half()), mid.Add(width.Half())
	switch s.leans {
	case LeftEdge:
		l, r = r0.Sub(width), r0
	case RightEdge:
		l, r = l0, l0.Add(width)
	}
	s.band = band
	c := w.canvas(b)
	from := len(c.segs)
	w.step(b, l, r, b.left, b.right, 0, 0)
	for i := from; i < len(c.segs); i++ {
		c.segs[i].step = true
	}
	c.lines = append(c.lines, inner{kind: LineChange, a: pt{units.Max(l, l0), s.y}, b: pt{units.Min(r, r0), s.y}})
	*b = next
	b.x = l
}
