package chart

import (
	"math"
	"slices"
	"sort"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// cuts are places at which a chart may be cut into pages.
type cuts []float64

// overlap is how much of its neighbour a page shows, mm on paper.
const overlap = 9.0

// cut shares the drawing among pages of w by h mm for it: one, if it fits; else each
// has room beside its part for what it shows of its neighbours, for row numbers and
// for the words that tell where pages meet. It reports false if that leaves no room.
func (c *pages) cut(w, h float64) bool {
	f, s := c.d.f, c.d.scale
	lo, hi := f.extent()
	defer c.numberPages()
	if s*(hi.X-lo.X) <= w+1e-9 && s*(hi.Y-lo.Y) <= h+1e-9 {
		c.cols, c.rows = []window{{lo.X, hi.X}}, []window{{-hi.Y, -lo.Y}}
		return true
	}
	const meet = 4.5 // of the lines where pages meet
	w -= 2 * (f.sideRoom(c.o) + meet)
	line := sheet.LineHeight(fonts.Italic, c.o.text())
	h -= 2 * (4 + line)
	const least = 8.0 // mm of drawing
	if w < least || h-6*line < least {
		c.cols, c.rows = []window{{lo.X, hi.X}}, []window{{-hi.Y, -lo.Y}}
		return false
	}
	c.cols = f.share(f.lo.X, f.hi.X, w, s, f.across, func(m *mark) (at, lo, hi float64) { return m.at.X, m.lo.X, m.hi.X })
	if len(c.cols) > 1 {
		h -= 2 * line
		if f.nums.crowd {
			h -= 2 * line
		}
		if c.narrowColumns() {
			h -= 2 * line
		}
	}
	c.rows = f.share(-f.hi.Y, -f.lo.Y, h, s, f.up, func(m *mark) (at, lo, hi float64) { return -m.at.Y, -m.hi.Y, -m.lo.Y })
	return true
}

// share shares a stretch of the figure among windows on pages with room mm, at a scale: one, or several with room
// beside them for what they show of their neighbours, and for how far their own stitches lean out of them.
func (f *figure) share(lo, hi, room, scale float64, kinds []cuts, along func(*mark) (at, lo, hi float64)) []window {
	out := cutSpan(lo, hi, room/scale, kinds)
	if len(out) == 1 {
		return out
	}
	for more := overlap; ; {
		out = cutSpan(lo, hi, max(room-2*more, room/4)/scale, kinds)
		lean := scale * f.lean(out, along)
		if lean <= more || more > 3*room/8 {
			return out
		}
		more = lean
	}
}

// lean is how far stitches reach out of the windows that own them, along one axis of the plane.
func (f *figure) lean(ws []window, along func(*mark) (at, lo, hi float64)) float64 {
	most := 0.0
	for i := range f.marks {
		m := &f.marks[i]
		if m.long() {
			continue
		}
		at, lo, hi := along(m)
		w := ws[last(ws, at)]
		most = max(most, w.lo-lo, hi-w.hi)
	}
	return most
}

// last is the last window that begins at a place or before it.
func last(ws []window, at float64) int {
	return max(sort.Search(len(ws), func(i int) bool { return ws[i].lo > at })-1, 0)
}

// narrowColumns reports whether the words of the sides may stand under each other on a page.
func (c *pages) narrowColumns() bool {
	return slices.ContainsFunc(c.cols, func(w window) bool { return narrow(c.o.text(), c.d.scale*(w.hi-w.lo), mostPages) })
}

// numberPages numbers the windows in which something stands: beside a slanted edge some
// are empty.
func (c *pages) numberPages() {
	c.no = make([][]int, len(c.rows))
	for r := range c.no {
		c.no[r] = make([]int, len(c.cols))
	}
	put := func(p pt) { c.no[last(c.rows, -p.Y)][last(c.cols, p.X)] = 1 }
	for i := range c.d.f.marks {
		put(c.d.f.marks[i].at)
	}
	for i := range c.d.f.labels {
		put(c.d.f.labels[i].at)
	}
	c.n = 0
	for r := range c.no {
		for k := range c.no[r] {
			if c.no[r][k] > 0 {
				c.n++
				c.no[r][k] = c.n
			}
		}
	}
	if c.n == 0 {
		c.n, c.no[0][0] = 1, 1
	}
}

// cutSpan shares a stretch among windows of at most room, of about one size: each cut is
// at a place of the first kind of which one lies in the farther half of its window, and
// if there is none, at the even share.
func cutSpan(lo, hi, room float64, kinds []cuts) []window {
	var out []window
	at := lo
	for hi-at > room+1e-9 {
		left := math.Ceil((hi-at)/room - 1e-9)
		share := at + (hi-at)/left
		cut, found := share, false
		for _, kind := range kinds {
			if cut, found = kind.nearest(share, max(at+room/2, hi-(left-1)*room), at+room); !found {
				cut, found = kind.nearest(share, at+room/2, at+room)
			}
			if found {
				break
			}
		}
		if !found {
			cut = share
		}
		out = append(out, window{at, cut})
		at = cut
	}
	return append(out, window{at, hi})
}

// nearest is the place nearest to at, from lo to hi.
func (c cuts) nearest(at, lo, hi float64) (float64, bool) {
	best, found := 0.0, false
	for _, x := range c {
		if x >= lo-1e-9 && x <= hi+1e-9 && (!found || math.Abs(x-at) < math.Abs(best-at)) {
			best, found = x, true
		}
	}
	return best, found
}

// cuts finds where a chart in rows may be cut: between repeats, or else between
// stitches; and between repeats of rows, or else between rows.
func (p *plan) cuts(f *figure) {
	if p.form != flat {
		return
	}
	from, to := p.work.block()
	if repeats, others, ok := p.work.places(from, to); ok {
		parts := p.partings(from, to)
		f.across = []cuts{p.cutsAt(parts, repeats), p.cutsAt(parts, others)}
	}
	first, period, n := p.work.rowRepeat()
	var repeats, others cuts
	for r := 1; r < len(p.lines); r++ {
		at := -p.lines[r-1].top
		if p.lines[r].row.gapWords() != "" || p.lines[r-1].row.Base {
			continue
		}
		if k := r - first + period; n > 0 && k >= 0 && k <= n+period && k%period == 0 {
			repeats = append(repeats, at)
		}
		others = append(others, at)
	}
	f.up = []cuts{repeats, others}
}

// cutsAt are where cuts before places of the first row go.
func (p *plan) cutsAt(parts partings, places []int) cuts {
	var at cuts
	var side []pt
	for _, place := range places {
		if side = p.side(side, parts, place); len(side) == 0 {
			continue
		}
		sum := 0.0
		for _, q := range side {
			sum += q.X
		}
		at = append(at, sum/float64(len(side)))
	}
	return at
}

// places are those places of the first row at which the work may be cut: between its
// repeats, and elsewhere.
func (w *Work) places(from, to int) (repeats, others []int, ok bool) {
	st, ok := w.strips(from, to)
	if !ok {
		return nil, nil, false
	}
	if w.kept != nil && w.kept.Of > 1 {
		gap := 0 // places of a break before
		for i, at := range st.at[:len(st.at)-1] {
			if i > 0 && w.Rows[from].St[st.at[i-1]].Break {
				gap = 1
			}
			if k := at - gap - w.kept.From; k%w.kept.Of == 0 {
				repeats = append(repeats, at)
			} else {
				others = append(others, at)
			}
		}
		return repeats, others, true
	}
	first, p, times, found := st.repeat()
	for i, at := range st.at[:len(st.at)-1] {
		if found && i >= first && i <= first+p*times && (i-first)%p == 0 && st.at[first+p]-st.at[first] > 1 {
			repeats = append(repeats, at)
		} else {
			others = append(others, at)
		}
	}
	return repeats, others, true
}

// partings are those of the rows that are cut.
func (p *plan) partings(from, to int) partings {
	places := len(p.work.Rows[from].St)
	if p.work.Rows[from].Edge {
		places = from
	}
	return partingsOf(p.work.spans(from, to), from, to, places)
}

// side are the points between the stitches that a cut before a place of the first row
// parts, from the lowest row up, in the room of out.
func (p *plan) side(out []pt, at partings, cut int) []pt {
	out = out[:0]
	for row, places := range at {
		if places == nil || cut >= len(places) {
			continue
		}
		a, b, ok := p.parted(p.lines[row], places[cut])
		if !ok {
			continue
		}
		lowV, highV := (a.fv+b.fv)/2, min(a.v, b.v)
		if p.lines[row].row.Base && !p.lines[row].row.Held {
			lowV, highV = -ovalWide, ovalWide/2
		}
		foot := (footX(p, a) + footX(p, b)) / 2
		head := (a.q + a.half + b.q - b.half) / 2
		out = append(out, pt{X: foot, Y: lowV + p.wave.at(foot)}, pt{X: head, Y: highV + p.wave.at(head)})
	}
	return out
}

// cuts finds where a chart on a grid may be cut: between repeats, or else anywhere
// between squares.
func (s *squares) cuts() {
	d := s.d
	var repeats, others cuts
	if r, ok := s.repeated(); ok {
		for at := r.lo + (r.at-r.lo)%r.of; at <= r.hi; at += r.of {
			repeats = append(repeats, float64(at)*cell)
		}
	}
	for c := 1; c < s.wide; c++ {
		others = append(others, float64(c)*cell)
	}
	d.f.across = []cuts{repeats, others}
	first, period, many := d.work.rowRepeat()
	repeats, others = nil, nil
	for i := 1; i < len(s.rows); i++ {
		r := &s.rows[i]
		if d.work.Rows[r.row].leftOut() != "" {
			continue
		}
		if k := r.row - first + period; many > 0 && k >= 0 && k <= many+period && k%period == 0 {
			repeats = append(repeats, -r.low)
		}
		others = append(others, -r.low)
	}
	d.f.up = []cuts{repeats, others}
}
