package chart

import (
	"fmt"
	"slices"

	"flatwright/layout/sheet"
)

// knitRepeat is a stretch of squares that comes again and again across every row of a chart on a grid.
type knitRepeat struct {
	lo, hi int // the squares within which it repeats, from the left; hi is behind the last
	at, of int // where one of them begins, and how many squares it takes
}

// signs number the squares of each row by what stands in them: 0 is none, and what is alike has one number.
func (s *squares) signs() [][]int32 {
	known := map[string]int32{"": 0}
	out := make([][]int32, len(s.rows))
	for i := range s.rows {
		r, line := &s.rows[i], make([]int32, s.wide)
		for k := 0; k < len(r.cells); {
			n := r.crossing(k)
			for j := range n {
				sign := r.cells[k+j].sign(s.d.work.Rows[r.row].Wrong)
				if n > 1 {
					sign = fmt.Sprint(r.cells[k].st.Kind.ID, "/", j)
				}
				if _, ok := known[sign]; !ok {
					known[sign] = int32(len(known))
				}
				line[r.cells[k+j].col] = known[sign]
			}
			k += n
		}
		out[i] = line
	}
	return out
}

// sign is what stands in a square, in a form that is equal for what is alike.
func (c *cellOf) sign(wrong bool) string {
	k := c.st.Kind
	if c.of != nil {
		k = c.of
	}
	out := shownKey(k, wrong) + "/" + c.st.Colour
	if k != nil {
		out += "/" + k.ID
	}
	if c.part || c.st.Idle || c.st.Wrap {
		out += fmt.Sprint("/", c.part, c.st.Idle, c.st.Wrap)
	}
	return out
}

// repeated finds the narrowest stretch of squares that comes again and again, and makes up most of the chart.
func (s *squares) repeated() (knitRepeat, bool) {
	times := 3
	kept := s.d.work.kept
	if kept != nil && kept.Of < 2 { // it is the shape of a piece that is shortened
		return knitRepeat{}, false
	}
	if kept != nil || s.starred() { // others are left out, or the text says that there are some
		times = 2
	}
	for i := range s.rows {
		if r := &s.d.work.Rows[s.rows[i].row]; r.Unread != "" { // who knows
			return knitRepeat{}, false
		}
	}
	signs, wide, gap := s.signs(), s.wide, s.gap()
	if gap < wide { // what is left out are whole repeats: it goes on behind them
		for i, line := range signs {
			signs[i] = slices.Delete(line, gap, gap+1)
		}
		wide--
	}
	for p := 1; p <= min(wide/times, most); p++ {
		lo, hi := alikeEvery(signs, p, wide)
		if hi-lo < times*p || 2*(hi-lo) < wide {
			continue
		}
		r := knitRepeat{lo: lo, hi: hi, of: p}
		if p == 1 || !r.beside(gap) || s.shapedBeside(r) {
			return r, false
		}
		r.at = s.parting(r)
		return r, true
	}
	return knitRepeat{}, false
}

// beside moves a repeat to one side of the column in which stitches are left out, which its squares do not count. It reports
// false if that cuts each.
func (r *knitRepeat) beside(gap int) bool {
	switch {
	case r.lo < gap && gap < r.hi && max(gap-r.lo, r.hi-gap) < r.of:
		return false
	case gap <= r.lo, gap < r.hi && r.hi-gap >= r.of:
		r.lo, r.hi = max(r.lo, gap)+1, r.hi+1
	case gap < r.hi:
		r.hi = gap
	}
	return true
}

// gap is the column in which stitches are left out of the rows; as many as there are columns if none are.
func (s *squares) gap() int {
	for i := range s.rows {
		for k := range s.rows[i].cells {
			if c := &s.rows[i].cells[k]; c.st.Break {
				return c.col
			}
		}
	}
	return s.wide
}

// starred reports whether the text repeats any row's stitches across it.
func (s *squares) starred() bool {
	return slices.ContainsFunc(s.rows, func(r knitRow) bool { return s.d.work.Rows[r.row].Star > 0 })
}

// alikeEvery is the longest stretch of squares in which every row is alike every p squares.
func alikeEvery(signs [][]int32, p, wide int) (lo, hi int) {
	run := 0
	for c := 0; c+p <= wide; c++ {
		alike := c+p < wide
		for i := 0; alike && i < len(signs); i++ {
			alike = signs[i][c] == signs[i][c+p]
		}
		if alike {
			run++
			continue
		}
		if run > 0 && run+p > hi-lo {
			lo, hi = c-run, c+p
		}
		run = 0
	}
	return lo, hi
}

// shapedBeside reports whether any row has so many stitches beside the repeats that it is the shape of a piece which makes them,
// and not the edge of a pattern.
func (s *squares) shapedBeside(r knitRepeat) bool {
	times := (r.hi - r.lo) / r.of
	for i := range s.rows {
		in, out := 0, 0
		for k := range s.rows[i].cells {
			if c := s.rows[i].cells[k].col; c >= r.lo && c < r.hi {
				in++
			} else {
				out++
			}
		}
		if s.d.work.kept == nil && out > 3*max(in/times, 2) {
			return true
		}
	}
	return false
}

// parting is where a repeat begins so that the fewest crossings are cut; of equal ones where most rows of the text begin theirs, or
// where whole repeats count from the right, in which most rows begin.
func (s *squares) parting(r knitRepeat) int {
	stars := s.stars(r.of)
	best, least := r.lo, [2]int{len(s.rows) + 1}
	for at := r.hi - r.of; at >= max(r.lo, r.hi-2*r.of+1); at-- {
		cost := [2]int{0, -stars[at%r.of]}
		for i := range s.rows {
			if s.rows[i].moved(at) != 0 {
				cost[0]++
			}
		}
		if slices.Compare(cost[:], least[:]) < 0 {
			best, least = at, cost
		}
	}
	if (r.hi-r.lo)/r.of > 2 && best-r.of >= r.lo { // one between others
		best -= r.of
	}
	return best
}

// stars count the rows that begin their repeat at each square of one that takes so many.
func (s *squares) stars(of int) []int {
	out := make([]int, of)
	for i := range s.rows {
		r := &s.rows[i]
		k := s.d.work.Rows[r.row].Star - 1
		switch n := len(r.cells); {
		case k < 0 || k >= n:
		case s.d.work.runsRight(r.row):
			out[r.cells[k].col%of]++
		default:
			out[(r.cells[n-1-k].col+1)%of]++
		}
	}
	return out
}

// moved is how far the side of a repeat moves that would cut a crossing of the row, or an increase: to the nearer end of it.
func (r *knitRow) moved(at int) int {
	for i := 0; i < len(r.cells); {
		n := r.crossing(i)
		if from, to := r.cells[i].col, r.cells[i+n-1].col+1; from < at && at < to {
			if at-from < to-at {
				return from - at
			}
			return to - at
		}
		i += n
	}
	return 0
}

// repeat draws a heavy line around one repeat, which goes around what it would cut.
func (s *squares) repeat() {
	r, ok := s.repeated()
	if !ok {
		return
	}
	d := s.d
	var sides [2][]pt
	for i := range s.rows {
		kr := &s.rows[i]
		by := kr.moved(r.at)
		if kr.moved(r.at+r.of) != by { // the edge of the chart
			by = 0
		}
		for k, at := range [2]int{r.at + by, r.at + by + r.of} {
			x := float64(at) * cell
			sides[k] = append(sides[k], pt{X: x, Y: kr.low}, pt{X: x, Y: kr.low + s.tall})
		}
	}
	loop := append([]pt(nil), sides[0]...)
	for i := len(sides[1]) - 1; i >= 0; i-- {
		loop = append(loop, sides[1][i])
	}
	box := path("repeat", 0.7, loop...)
	box.Segs = append(box.Segs, sheet.Seg{Verb: sheet.Close})
	d.f.add(newMark(-1, false, box))
	size := s.o.plane(d.scale)
	mid := (sides[0][0].X + sides[1][0].X) / 2
	d.f.label(s.o, d.scale, label{s: s.repeatWords(r), at: pt{X: mid, Y: d.f.lo.Y - size}, row: -1, class: "repeat"})
}

// repeatWords name a repeat, and what it is a multiple of unless that changes from row to row.
func (s *squares) repeatWords(r knitRepeat) string {
	n := -1
	for i := range s.rows {
		k := 0
		for j := range s.rows[i].cells {
			if c := s.rows[i].cells[j].col; c >= r.at && c < r.at+r.of {
				k++
			}
		}
		if n >= 0 && k != n {
			return "repeat"
		}
		n = k
	}
	return "repeat: " + s.said(r).String()
}

// said is the repeat as patterns say it, by the stitches of the first row.
func (s *squares) said(r knitRepeat) Repeat {
	first := &s.rows[0]
	out := Repeat{Of: 0, Times: 1}
	for k := range first.cells {
		if c := first.cells[k].col; c >= r.at && c < r.at+r.of {
			out.Of++
		}
	}
	n := len(first.cells)
	if k := s.d.work.kept; k != nil {
		out.Of, n = k.Of, k.Rest
	}
	if out.Of > 0 {
		out.Rest = n % out.Of
	}
	return out
}
