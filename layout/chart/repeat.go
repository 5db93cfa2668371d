package chart

import (
	"fmt"
	"strings"
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
		footed := 0
		for i := range row.St {
			s[i] = span{-1, -1}
			for k, f := range row.St[i].Feet {
				at := span{f, f}
				if !row.Edge {
					at = out[r-1][f]
				}
				if k == 0 {
					s[i] = at
				}
				s[i] = span{min(s[i].lo, at.lo), max(s[i].hi, at.hi)}
				footed++
			}
		}
		if footed == 0 {
			return nil
		}
		settleLoose(s, r%2 == 1)
	}
	return out
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
	closed := make([]int, n+1) // how many stitches go over the cut before place i
	for r := from; r < to; r++ {
		last := -1
		down := len(all[r]) > 1 && all[r][0].hi > all[r][len(all[r])-1].hi
		for k := range all[r] {
			i := k
			if down {
				i = len(all[r]) - 1 - k
			}
			s := all[r][i]
			if s.lo < last { // out of order: it can't be cut between
				s.lo = max(s.lo, 0)
				for g := s.lo + 1; g <= last && g < n; g++ {
					closed[g]++
				}
			}
			last = max(last, s.hi)
			for g := s.lo + 1; g <= s.hi && g < n; g++ {
				closed[g]++
				if g-s.lo > 64 {
					return nil, false
				}
			}
		}
	}
	st := &strips{}
	index := make([]int, n)
	for g := range n {
		if closed[g] == 0 {
			st.at = append(st.at, g)
		}
		index[g] = len(st.at) - 1
	}
	parts := make([]strings.Builder, len(st.at))
	start := make([]int, len(st.at)) // place in the row below at which the strip begins
	for r := from; r < to; r++ {
		next := make([]int, len(st.at))
		for i := range next {
			next[i] = -1
		}
		for i := range w.Rows[r].St {
			k := index[min(all[r][i].lo, n-1)]
			s := &w.Rows[r].St[i]
			if next[k] < 0 {
				next[k] = i
			}
			b := &parts[k]
			if s.Kind != nil {
				b.WriteString(s.Kind.ID)
			}
			fmt.Fprintf(b, "/%d/%d/%t/%t/%s/%t/%d", s.Chain, s.Loop, s.Turn, s.Break, s.Colour, s.Idle, s.At)
			for _, f := range s.Feet {
				fmt.Fprintf(b, ",%d", f-start[k])
			}
			b.WriteByte(' ')
		}
		for i := range parts {
			parts[i].WriteByte('\n')
		}
		start = next
	}
	for i := range parts {
		st.sign = append(st.sign, parts[i].String())
	}
	st.at = append(st.at, n)
	return st, true
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

// Repeat is the stitch repeat of a work in rows, if it has one of more than one
// stitch.
func (w *Work) Repeat() (Repeat, bool) {
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
	var b strings.Builder
	fmt.Fprintf(&b, "%t%t%t%s|", r.Wrong, r.Round, r.Base, r.leftOut()+r.Unread)
	for i := range r.St {
		s := &r.St[i]
		if s.Kind != nil {
			b.WriteString(s.Kind.ID)
		}
		fmt.Fprintf(&b, "/%d/%d/%t/%t/%s/%t/%d%v ", s.Chain, s.Loop, s.Turn, s.Break, s.Colour, s.Idle, s.At, s.Feet)
	}
	return b.String()
}
