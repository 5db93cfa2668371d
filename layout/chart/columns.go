package chart

import "slices"

// cellOf is the place of a stitch on a knitting chart.
type cellOf struct {
	st  *St
	col int // of all columns of the chart, from the left
	two bool
}

// knitRow is a row of a knitting chart as the right side shows it, from the left.
type knitRow struct {
	row   int
	cells []cellOf
	low   float64 // level of its lower edge
}

// columns gives every knitted stitch a column. A row with as many stitches as the row
// below keeps its columns; where a row has fewer, the columns of decreases that no
// increase makes up for end; where it has more, new columns begin, which are empty
// below.
func columns(w *Work, left bool) ([]knitRow, int) {
	var out []knitRow
	l := &columnList{head: -1}
	var below []int // column of each stitch of the row below, from the left
	for r := range w.Rows {
		row := &w.Rows[r]
		n := len(row.St)
		backwards := !w.runsRight(r) // worked from right to left
		at := func(i int) int {      // the i-th from the left, in the order of working
			if backwards {
				return n - 1 - i
			}
			return i
		}
		var cols []int
		if r == 0 || len(below) == 0 {
			last := -1
			for range n {
				last = l.after(last)
				cols = append(cols, last)
			}
		} else {
			cols = columnsOver(row, at, below, w.runsRight(r-1), l)
		}
		if !row.Base || row.Held {
			k := knitRow{row: r}
			for i := range n {
				s := &row.St[at(i)]
				c := cellOf{st: s, col: cols[i]}
				if i > 0 && s.Kind != nil && s.Kind.Makes == 2 && sameFeet(s, &row.St[at(i-1)]) && !k.cells[i-1].two {
					c.two = true
				}
				k.cells = append(k.cells, c)
			}
			out = append(out, k)
		}
		below = cols
	}
	place := make([]int, len(l.next))
	n := 0
	for id := l.head; id >= 0; id = l.next[id] {
		place[id] = n
		n++
	}
	for i := range out {
		for k := range out[i].cells {
			c := &out[i].cells[k]
			c.col = place[c.col]
		}
	}
	return out, n
}

// columnList is the columns of a chart from the left, to put new ones between.
type columnList struct {
	next, prev []int
	head       int
}

// after makes a new column to the right of c; at the left end for -1.
func (l *columnList) after(c int) int {
	id := len(l.next)
	n := l.head
	if c >= 0 {
		n = l.next[c]
		l.next[c] = id
	} else {
		l.head = id
	}
	l.next, l.prev = append(l.next, n), append(l.prev, c)
	if n >= 0 {
		l.prev[n] = id
	}
	return id
}

// edgeStitches is how near to its edge a row's shaping moves the edge itself; farther
// in, a column begins or ends inside the chart.
const edgeStitches = 6

// columnsOver gives the stitches of a row, from the left, their columns.
func columnsOver(row *Row, at func(int) int, below []int, belowWrong bool, l *columnList) []int {
	n := len(row.St)
	visual := func(f int) int { // a place of the row below, from the left
		if belowWrong {
			return f
		}
		return len(below) - 1 - f
	}
	type event struct {
		at   int
		sign int
	}
	var open []event
	used := -1
	feet := make([][]int, n)
	for i := range n {
		s := &row.St[at(i)]
		for _, f := range s.Feet {
			if v := visual(f); v >= 0 && v < len(below) {
				feet[i] = append(feet[i], v)
			}
		}
		slices.Sort(feet[i])
		fresh := 0
		for _, v := range feet[i] {
			if v > used {
				used = v
				fresh++
			}
		}
		sign := 1
		if fresh > 1 {
			sign = -1
		}
		for range max(1-fresh, fresh-1) {
			if k := len(open) - 1; k >= 0 && open[k].sign != sign {
				open = open[:k]
				continue
			}
			open = append(open, event{i, sign})
		}
	}
	change := make([]int, n)
	for _, e := range open {
		change[e.at] += e.sign
	}
	var seq []int
	taken := -1
	lefts, rights := 0, 0 // columns that the edges move in, or out if negative
	for i := range n {
		switch {
		case change[i] != 0 && i <= edgeStitches && 2*i < n:
			lefts -= change[i]
			change[i] = 0
		case change[i] != 0 && n-1-i <= edgeStitches:
			rights -= change[i]
			change[i] = 0
		}
		drop := max(-change[i], 0)
		var mine []int
		for _, v := range feet[i] {
			if v > taken {
				mine = append(mine, below[v])
				taken = v
			}
		}
		seq = append(seq, mine[min(drop, len(mine)):]...)
		for range max(change[i], 0) {
			last := -1
			if len(seq) > 0 {
				last = seq[len(seq)-1]
			}
			seq = append(seq, l.after(last))
		}
	}
	if d := min(max(lefts, 0), len(seq)); d > 0 {
		seq = seq[d:]
	}
	if d := min(max(rights, 0), len(seq)); d > 0 {
		seq = seq[:len(seq)-d]
	}
	for ; lefts < 0 && len(seq) > 0; lefts++ {
		c := l.prev[seq[0]]
		if c < 0 {
			c = l.after(-1)
		}
		seq = append([]int{c}, seq...)
	}
	for len(seq) < n {
		c := -1
		if len(seq) > 0 {
			last := seq[len(seq)-1]
			if c = l.next[last]; c < 0 {
				c = l.after(last)
			}
		} else {
			c = l.after(-1)
		}
		seq = append(seq, c)
	}
	return seq[:n]
}
