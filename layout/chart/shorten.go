package chart

import "fmt"

// shortText says what was left out of a work to make it short.
type shortText struct {
	Times int // repeats left out
	Of    int
	Wedge bool // one repeat is drawn, of Times
	Edges int  // stitches beside it
	Rows  bool // of rows, not of rounds
}

// shorten leaves repeats out of the middle of a work in rows that is wider than most
// stitches, and puts a break in their place in every row. Where that is not enough, such
// as in a yoke whose increases fall everywhere, it leaves out of the middle what is there.
func (w *Work) shorten(mostWide int) (*Work, *shortText) {
	wide := w.widest()
	from, to := w.block()
	if wide <= mostWide || from > 0 {
		return w, nil
	}
	st, ok := w.strips(from, to)
	if !ok {
		return w, nil
	}
	if first, p, times, ok := st.repeat(); ok {
		per := wide / max((len(st.sign)+p-1)/p, 1) // stitches of a repeat in the widest row
		outside := wide - times*per
		keep := max(2, 8/max(per, 1), min(mostWide*2/3, mostWide-outside)/max(per, 1))
		head := (keep + 1) / 2
		if keep < times-1 {
			a, b := st.at[first+head*p], st.at[first+(times-(keep-head))*p]
			out := w.without(a, b)
			if r, ok := w.repeat(); ok {
				if r.Times = min(r.Times, 2); head > 1 { // the second of those that stand before the break
					r.From, r.Times = r.From+r.Of, 2
				}
				out.kept = &r
			}
			if left := out.widest(); wide <= mostWide*3/2 && 3*left > 2*wide { // a break is worth a third of the width
				return w, nil
			} else if left <= mostWide*3/2 {
				return out, &shortText{Times: times - keep, Of: st.at[first+p] - st.at[first]}
			}
		}
	}
	if wide <= mostWide*3/2 {
		return w, nil
	}
	a, b := w.middle(st, w.spans(from, to), mostWide)
	if a >= b {
		return w, nil
	}
	return w.without(a, b), &shortText{}
}

func (w *Work) widest() int {
	wide := 0
	for r := range w.Rows {
		wide = max(wide, len(w.Rows[r].St))
	}
	return wide
}

// middle are the places of the first row between which to cut, so that at most
// half as many again as most stitches of the widest row remain, half on each side.
func (w *Work) middle(st *strips, all [][]span, most int) (a, b int) {
	wide := 0
	for r := range w.Rows {
		if all[r] != nil && len(w.Rows[r].St) > len(w.Rows[wide].St) {
			wide = r
		}
	}
	over := make([]int, st.at[len(st.at)-1]+1) // stitches of that row over each place
	for _, s := range all[wide] {
		over[min(max(s.hi, 0), len(over)-1)]++
	}
	strip := func(i int) int { // its stitches
		sum := 0
		for place := st.at[i]; place < st.at[i+1]; place++ {
			sum += over[place]
		}
		return sum
	}
	for i := range len(st.at) - 1 {
		if strip(i) > most { // nothing that a part could stand for
			return 0, 0
		}
	}
	b = st.at[len(st.at)-1]
	sum := 0
	for i := range len(st.at) - 1 {
		sum += strip(i)
		if a = st.at[max(i, 1)]; sum > most*3/4 {
			break
		}
	}
	sum = 0
	for i := len(st.at) - 2; i > 0; i-- {
		b = st.at[i]
		if sum += strip(i); sum > most*3/4 {
			break
		}
	}
	return a, b
}

// without is the work without what stands on the places from a to b of its first row.
func (w *Work) without(a, b int) *Work {
	all := w.spans(w.block())
	out := *w
	out.kept, out.unrolled = &Repeat{}, true
	out.Rows = make([]Row, len(w.Rows))
	var below []int
	for r := range w.Rows {
		out.Rows[r], below = cutRow(&w.Rows[r], all[r], a, b, below)
	}
	return &out
}

// cutRow is the row without what stands on the places from a to b, with a break
// there; below maps places of the row below to where they are now, and the
// result maps those of the row itself.
func cutRow(row *Row, s []span, a, b int, below []int) (Row, []int) {
	out := *row
	out.St, out.Left = nil, 0
	now := make([]int, len(row.St))
	broken := false
	for i := range row.St {
		if s[i].hi < a || s[i].hi >= b {
			st := row.St[i]
			st.Feet = feetNow(st.Feet, below)
			out.St = append(out.St, st)
			now[i] = len(out.St) - 1
			continue
		}
		if !broken {
			broken = true
			br := St{Break: true, Chain: 1}
			if below != nil {
				br.Feet = []int{breakAt(below)}
			}
			out.St = append(out.St, br)
		}
		if row.St[i].Counts && row.St[i].Kind != nil {
			out.Left++
		}
		now[i] = -len(out.St) // the break, counted from 1
	}
	return out, now
}

// feetNow are feet where the places of the row below are now.
func feetNow(feet, below []int) []int {
	if below == nil {
		return feet
	}
	out := make([]int, len(feet))
	for i, f := range feet {
		if out[i] = below[f]; out[i] < 0 {
			out[i] = -out[i] - 1
		}
	}
	return out
}

func breakAt(below []int) int {
	for _, k := range below {
		if k < 0 {
			return -k - 1
		}
	}
	return 0
}

// lower leaves rows out of a work that has more than mostRows, where they repeat the
// rows before them.
func (w *Work) lower(mostRows int) *Work { return w.lowered(mostRows, false) }

// lowered is lower; with most it keeps as many rows as it may, half of them after the
// break.
func (w *Work) lowered(mostRows int, most bool) *Work {
	if len(w.Rows) <= mostRows {
		return w
	}
	from, p, n := w.rowRepeat()
	drop := 0
	if p > 0 {
		drop = (n/p - 1) * p
	}
	after := 0
	if most && p > 0 {
		drop = min(drop, (len(w.Rows)-mostRows+p-1)/p*p)
		after = (n - drop) / (2 * p) * p
	}
	if drop < 2*p || drop < 4 {
		return w
	}
	for i := range w.Rows { // rows over an edge count the rows below
		if w.Rows[i].Edge {
			return w
		}
	}
	out := *w
	a := from + n - n%p - drop - after // the first row left out
	out.Rows = append(append([]Row(nil), w.Rows[:a]...), w.Rows[a+drop:]...)
	same := rowsNamed(w.Rows[from-p : from])
	left := rowsNamed(w.Rows[a : a+drop])
	words := left + ": as " + same
	if a < len(out.Rows) {
		next := &out.Rows[a]
		if next.Gap += drop; next.Same != "" { // others are left out behind them
			words += "; " + next.Same
		}
		next.Same = words
	} else {
		if out.More += drop; out.Same != "" {
			words += "; " + out.Same
		}
		out.Same = words
	}
	return &out
}

// rowRepeat finds the longest stretch of rows that are alike again and again: the n rows
// from one on are as those p before them. It has none if n is 0.
func (w *Work) rowRepeat() (from, p, n int) {
	sign := make([]string, len(w.Rows))
	for r := range w.Rows {
		sign[r] = w.Rows[r].sign()
		if r > 0 { // rows on a foundation are worked in other words
			sign[r] += fmt.Sprint(len(w.Rows[r-1].St), w.Rows[r-1].Base)
		}
	}
	for step := 1; step <= 12; step++ {
		run := 0
		for r := step; r <= len(sign); r++ {
			if r < len(sign) && sign[r] == sign[r-step] && !w.Rows[r].Base {
				run++
				continue
			}
			if run > n+step {
				from, p, n = r-run, step, run
			}
			run = 0
		}
	}
	return from, p, n
}

// rowsNamed is rows 3 to 8, or rows 3 and 4, or row 3.
func rowsNamed(rows []Row) string {
	word := "row"
	if rows[0].Round {
		word = "round"
	}
	first, last := rows[0].Number, rows[len(rows)-1].Number
	switch {
	case first < 1 || last < 1:
		return fmt.Sprintf("%d %ss", len(rows), word)
	case first == last:
		return fmt.Sprintf("%s %d", word, first)
	case last == first+1:
		return fmt.Sprintf("%ss %d and %d", word, first, last)
	}
	return fmt.Sprintf("%ss %d to %d", word, first, last)
}
