package chart

import (
	"fmt"
	"strconv"
)

// Repeat is a stretch of stitches that comes again and again across every row: its
// places in the first row, how often it comes, and what the first row's count is a
// multiple of.
type Repeat struct {
	From, Of int // its first place in the first row, and how many it takes
	Times    int
	Rest     int // places of the first row beyond the repeats
}

// String is the repeat as patterns say it: multiple of 6 + 1.
func (r Repeat) String() string {
	if r.Rest == 0 {
		return fmt.Sprintf("multiple of %d", r.Of)
	}
	return fmt.Sprintf("multiple of %d + %d", r.Of, r.Rest)
}

// span is the places of the first row that a stitch goes back to.
type span struct{ lo, hi int }

// spans follows every stitch down to the first row. What has no foot belongs to
// its neighbour with the lower place.
func (w *Work) spans(from, to int) [][]span {
	out := make([][]span, len(w.Rows))
	for r := from; r < to; r++ {
		row := &w.Rows[r]
		s := make([]span, len(row.St))
		out[r] = s
		if r == from && !row.Edge {
			for i := range s {
				s[i] = span{i, i}
			}
			continue
		}
		below := []span(nil)
		if !row.Edge {
			below = out[r-1]
		}
		footed := false
		for i := range row.St {
			s[i] = spanOf(row.St[i].Feet, below)
			footed = footed || len(row.St[i].Feet) > 0
		}
		if !footed {
			return nil
		}
		settleLoose(s, r%2 == 1)
	}
	return out
}

// spanOf is the span of all feet: of the places themselves, if below is nil.
func spanOf(feet []int, below []span) span {
	s := span{-1, -1}
	for k, f := range feet {
		at := span{f, f}
		if below != nil {
			at = below[f]
		}
		if k == 0 {
			s = at
		}
		s = span{min(s.lo, at.lo), max(s.hi, at.hi)}
	}
	return s
}

// settleLoose gives stitches without feet the places of a neighbour: in one row of the
// one with the lower places, in the next of the other, so that cuts between arches
// that stand over arches go straight up.
func settleLoose(s []span, lower bool) {
	first, last := -1, -1
	for i := range s {
		if s[i].lo >= 0 {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	up := s[first].hi <= s[last].hi
	forward := up == lower // they follow the neighbour before them
	pass := func(forward bool) {
		for k := 1; k < len(s); k++ {
			i, from := k, k-1
			if !forward {
				i, from = len(s)-1-k, len(s)-k
			}
			if s[i].lo < 0 && s[from].lo >= 0 {
				at := s[from].hi
				if !lower {
					at = s[from].lo
				}
				s[i] = span{at, at}
			}
		}
	}
	pass(forward)
	pass(!forward)
}

// strips are the stretches of the first row between places at which the whole work
// may be cut without cutting through a stitch, each with what stands on it.
type strips struct {
	at   []int // where each begins; at the end, the length of the first row
	sign []string
}

func (w *Work) strips(from, to int) (*strips, bool) {
	all := w.spans(from, to)
	if all == nil || to-from < 2 {
		return nil, false
	}
	n := len(w.Rows[from].St)
	if w.Rows[from].Edge {
		n = from
	}
	closed := make([]bool, n+1) // stitches go over the cut before place i
	for r := from; r < to; r++ {
		if !closeOver(all[r], closed[:n]) {
			return nil, false
		}
	}
	st := &strips{}
	index := make([]int, n)
	for g := range n {
		if !closed[g] {
			st.at = append(st.at, g)
		}
		index[g] = len(st.at) - 1
	}
	st.sign = w.signs(from, to, all, index, len(st.at))
	st.at = append(st.at, n)
	return st, true
}

// widestStitch is over how many places of the first row a stitch goes at most, for the work to
// have strips.
const widestStitch = 64

// closeOver closes the cuts over which stitches of a row go; it reports false for one that
// goes over too many.
func closeOver(s []span, closed []bool) bool {
	last := -1
	down := len(s) > 1 && s[0].hi > s[len(s)-1].hi
	for k := range s {
		q := s[k]
		if down {
			q = s[len(s)-1-k]
		}
		if q.hi-q.lo > widestStitch {
			return false
		}
		hi := q.hi
		if q.lo < last { // out of order: it can't be cut between
			q.lo, hi = max(q.lo, 0), max(last, hi)
		}
		for g := q.lo + 1; g <= hi && g < len(closed); g++ {
			closed[g] = true
		}
		last = max(last, q.hi)
	}
	return true
}

// signs are what stands on each of n strips, in a form that is equal for what is alike.
func (w *Work) signs(from, to int, all [][]span, index []int, n int) []string {
	parts := partsOf(all[from:to], index, n)
	start, next := make([]int, n), make([]int, n) // place in the row below at which the strip begins
	for r := from; r < to; r++ {
		for i := range next {
			next[i] = -1
		}
		for i := range w.Rows[r].St {
			k := index[min(all[r][i].lo, len(index)-1)]
			if next[k] < 0 {
				next[k] = i
			}
			parts[k] = w.Rows[r].St[i].sign(parts[k], start[k])
		}
		for i := range parts {
			parts[i] = append(parts[i], '\n')
		}
		start, next = next, start
	}
	out := make([]string, n)
	for i := range parts {
		out[i] = string(parts[i])
	}
	return out
}

// partsOf are n empty signs, with the room that what stands on each strip mostly takes.
func partsOf(all [][]span, index []int, n int) [][]byte {
	const usual = 16 // bytes of a stitch
	sizes, sum := make([]int, n), 0
	for _, row := range all {
		for i := range row {
			sizes[index[min(row[i].lo, len(index)-1)]] += usual
		}
		sum += usual * len(row)
	}
	room := make([]byte, sum+n*len(all))
	out := make([][]byte, n)
	for i := range out {
		k := sizes[i] + len(all)
		out[i], room = room[:0:k], room[k:]
	}
	return out
}

// sign adds a stitch to b in a form that is equal for equal stitches, its feet counted from a
// place.
func (s *St) sign(b []byte, from int) []byte {
	if s.Kind != nil {
		b = append(b, s.Kind.ID...)
	}
	for _, v := range [3]int{s.Chain, int(s.Loop), s.At} {
		b = strconv.AppendInt(append(b, '/'), int64(v), 10)
	}
	is := byte('0')
	for k, v := range [3]bool{s.Turn, s.Break, s.Idle} {
		if v {
			is += 1 << k
		}
	}
	b = append(append(b, '/', is, '/'), s.Colour...)
	for _, f := range s.Feet {
		b = strconv.AppendInt(append(b, ','), int64(f-from), 10)
	}
	return append(b, ' ')
}

// most is how many strips a repeat is looked for over.
const most = 48

// repeat finds the shortest stretch of strips that comes at least three times, and
// makes up most of the row.
func (st *strips) repeat() (first, period, times int, ok bool) {
	n := len(st.sign)
	for p := 1; p <= min(n/3, most); p++ {
		bestAt, bestRun := 0, 0
		run := 0
		for i := p; i <= n; i++ {
			if i < n && st.sign[i] == st.sign[i-p] {
				run++
				continue
			}
			if run > bestRun {
				bestAt, bestRun = i-run-p, run
			}
			run = 0
		}
		if bestRun >= 2*p && 2*(bestRun+p) >= n {
			return bestAt, p, (bestRun + p) / p, true
		}
	}
	return 0, 0, 0, false
}

// repeat is the stitch repeat of a work in rows, if it has one of more than one
// stitch.
func (w *Work) repeat() (Repeat, bool) {
	if w.kept != nil {
		return *w.kept, w.kept.Of > 1
	}
	for r := range w.Rows {
		if w.Rows[r].Unread != "" { // who knows
			return Repeat{}, false
		}
	}
	from, to := w.block()
	st, ok := w.strips(from, to)
	if !ok {
		return Repeat{}, false
	}
	first, p, times, ok := st.repeat()
	if !ok {
		return Repeat{}, false
	}
	r := Repeat{From: st.at[first], Of: st.at[first+p] - st.at[first], Times: times}
	r.Rest = st.at[len(st.at)-1] - r.Of*times
	for r.Rest >= r.Of { // a run that the edges interrupt
		r.Rest -= r.Of
	}
	return r, r.Of > 1 && !w.shaped(r, from, to)
}

// shaped reports whether any row has so many stitches beside the repeats that it is the
// shape of a piece which makes them, and not the edge of a pattern.
func (w *Work) shaped(r Repeat, from, to int) bool {
	all := w.spans(from, to)
	for row := from; row < to; row++ {
		in, out := 0, 0
		for _, s := range all[row] {
			if s.hi >= r.From && s.hi < r.From+r.Of*r.Times {
				in++
			} else {
				out++
			}
		}
		if out > 3*max(in/r.Times, 2) {
			return true
		}
	}
	return false
}

// block are the rows from the last edge on.
func (w *Work) block() (from, to int) {
	for r := range w.Rows {
		if w.Rows[r].Edge {
			from = r
		}
	}
	return from, len(w.Rows)
}

// sign is a row in a form that is equal for equal rows.
func (r *Row) sign() string {
	b := fmt.Appendf(nil, "%t%t%t%s|", r.Wrong, r.Round, r.Base, r.leftOut()+r.Unread+r.Amiss)
	for i := range r.St {
		b = r.St[i].sign(b, 0)
	}
	return string(b)
}
