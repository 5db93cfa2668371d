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
		st := row.fromLeft(w.runsRight(r))
		if len(below) == 0 {
			below = l.fresh(len(st))
		} else {
			below = columnsOver(st, below, w.runsRight(r-1), l)
		}
		if !row.Base || row.Held {
			out = append(out, knitRow{row: r, cells: cellsOf(st, below)})
		}
	}
	place, n := l.places()
	for i := range out {
		for k := range out[i].cells {
			c := &out[i].cells[k]
			c.col = place[c.col]
		}
	}
	return out, n
}

// fromLeft are the stitches of a row from the left, as the right side shows it.
func (row *Row) fromLeft(runsRight bool) []*St {
	out := make([]*St, len(row.St))
	for i := range row.St {
		if runsRight {
			out[i] = &row.St[i]
		} else {
			out[len(out)-1-i] = &row.St[i]
		}
	}
	return out
}

// cellsOf are the stitches in their columns; the second stitch of an increase is marked.
func cellsOf(st []*St, cols []int) []cellOf {
	var out []cellOf
	for i, s := range st {
		c := cellOf{st: s, col: cols[i]}
		c.two = i > 0 && s.Kind != nil && s.Kind.Makes == 2 && sameFeet(s, st[i-1]) && !out[i-1].two
		out = append(out, c)
	}
	return out
}

// columnList is the columns of a chart from the left, to put new ones between.
type columnList struct {
	next, prev []int
	head       int
}

// fresh are n new columns beside each other.
func (l *columnList) fresh(n int) []int {
	var out []int
	last := -1
	for range n {
		last = l.after(last)
		out = append(out, last)
	}
	return out
}

// places are the places of all columns from the left, and how many there are.
func (l *columnList) places() ([]int, int) {
	out := make([]int, len(l.next))
	n := 0
	for id := l.head; id >= 0; id = l.next[id] {
		out[id] = n
		n++
	}
	return out, n
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

// rightOf is the column to the right of the last of a sequence, a new one if there is none.
func (l *columnList) rightOf(seq []int) int {
	if len(seq) == 0 {
		return l.after(-1)
	}
	last := seq[len(seq)-1]
	if c := l.next[last]; c >= 0 {
		return c
	}
	return l.after(last)
}

// leftOf is the column to the left of the first of a sequence, a new one if there is none.
func (l *columnList) leftOf(seq []int) int {
	if c := l.prev[seq[0]]; c >= 0 {
		return c
	}
	return l.after(-1)
}

// edgeStitches is how near to its edge a row's shaping moves the edge itself; farther
// in, a column begins or ends inside the chart.
const edgeStitches = 6

// columnsOver gives the stitches of a row, from the left, their columns. The places of the
// row below run from the left if belowRight.
func columnsOver(st []*St, below []int, belowRight bool, l *columnList) []int {
	n := len(st)
	feet := make([][]int, n) // places of the row below, from the left
	for i, s := range st {
		for _, f := range s.Feet {
			if f >= 0 && f < len(below) {
				if !belowRight {
					f = len(below) - 1 - f
				}
				feet[i] = append(feet[i], f)
			}
		}
		slices.Sort(feet[i])
	}
	change := changesOf(feet)
	lefts, rights := 0, 0 // columns that the edges move in, or out if negative
	for i := range change {
		switch {
		case i <= edgeStitches && 2*i < n:
			lefts -= change[i]
			change[i] = 0
		case n-1-i <= edgeStitches:
			rights -= change[i]
			change[i] = 0
		}
	}
	seq := takeColumns(feet, change, below, l)
	seq = seq[min(max(lefts, 0), len(seq)):]
	seq = seq[:len(seq)-min(max(rights, 0), len(seq))]
	for ; lefts < 0 && len(seq) > 0; lefts++ {
		seq = append([]int{l.leftOf(seq)}, seq...)
	}
	for len(seq) < n {
		seq = append(seq, l.rightOf(seq))
	}
	l.close(st, seq)
	return seq[:n]
}

// close lets the stitches of a crossing stand beside each other: the columns that end or begin within it do so at
// its side instead.
func (l *columnList) close(st []*St, seq []int) {
	for i := range st {
		if st[i].Cross == nil || i == 0 || st[i-1].Cross != st[i].Cross || abs(st[i].At-st[i-1].At) != 1 {
			continue
		}
		seq[i] = l.next[seq[i-1]]
	}
}

func abs(n int) int { return max(n, -n) }

// changesOf is by how many columns the row changes at each stitch, from the left: an
// increase and the next decrease make up for each other.
func changesOf(feet [][]int) []int {
	type event struct{ at, sign int }
	var open []event
	used := -1
	for i := range feet {
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
			} else {
				open = append(open, event{i, sign})
			}
		}
	}
	change := make([]int, len(feet))
	for _, e := range open {
		change[e.at] += e.sign
	}
	return change
}

// takeColumns goes on with the columns of the row below, without those that end and with
// those that begin inside the row.
func takeColumns(feet [][]int, change, below []int, l *columnList) []int {
	var seq []int
	taken := -1
	for i := range feet {
		var mine []int
		for _, v := range feet[i] {
			if v > taken {
				mine = append(mine, below[v])
				taken = v
			}
		}
		seq = append(seq, mine[min(max(-change[i], 0), len(mine)):]...)
		for range max(change[i], 0) {
			last := -1
			if len(seq) > 0 {
				last = seq[len(seq)-1]
			}
			seq = append(seq, l.after(last))
		}
	}
	return seq
}
