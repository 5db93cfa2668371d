package chart

import (
	"slices"
	"strings"

	"flatwright/schematic/stitch"
)

// cellOf is the place of a stitch on a knitting chart.
type cellOf struct {
	st   *St
	col  int            // of all columns of the chart, from the left
	part bool           // a further stitch of an increase
	of   *stitch.Stitch // the increase, if several stitches of different kinds are worked into one
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
func columns(w *Work) ([]knitRow, int) {
	var out []knitRow
	l := &columnList{head: -1, pattern: w.patterned(), wedges: w.inWedges()}
	var below []int // column of each stitch of the row below, from the left
	for r := range w.Rows {
		row := &w.Rows[r]
		st := row.fromLeft(w.runsRight(r))
		if len(below) == 0 {
			below = l.fresh(len(st))
		} else {
			below = l.over(w, r, st, below)
		}
		if !row.Base || row.Held {
			out = append(out, knitRow{row: r, cells: cellsOf(st, below, row.Wrong)})
		}
	}
	if l.pattern {
		l.justify(out)
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

// cellsOf are the stitches in their columns. Of an increase the middle one is drawn, and the others marked.
func cellsOf(st []*St, cols []int, wrong bool) []cellOf {
	out := make([]cellOf, len(st))
	for i, s := range st {
		out[i] = cellOf{st: s, col: cols[i]}
	}
	for i := 0; i < len(st); {
		n := 1
		for i+n < len(st) && sameFeet(st[i], st[i+n]) && st[i].intoOne() && st[i+n].intoOne() {
			n++
		}
		if n > 1 {
			for k := range n {
				out[i+k].part = true
			}
			mid := &out[i+(n-1)/2]
			mid.part, mid.of = false, increaseOf(st[i:i+n], wrong)
		}
		i += n
	}
	return out
}

// intoOne reports whether a stitch may be one of several in one place.
func (s *St) intoOne() bool { return s.Kind != nil && s.Cross == nil && !s.Break && !s.Idle }

// increaseOf is stitches in one place, from the left, as one stitch.
func increaseOf(st []*St, wrong bool) *stitch.Stitch {
	if k := st[0].Kind; k.Makes == len(st) {
		return k
	}
	var words []string
	for _, s := range st {
		words = append(words, s.Kind.USAbbr)
	}
	if !wrong { // worked from the right
		slices.Reverse(words)
	}
	name := "(" + strings.Join(words, ", ") + ") into one stitch"
	return &stitch.Stitch{ID: name, US: name, UK: name, USAbbr: name, UKAbbr: name, Craft: stitch.Knitting, Uses: 1, Makes: len(st), Base: "k", Key: "knit front and back"}
}

// columnList is the columns of a chart from the left, to put new ones between.
type columnList struct {
	next, prev []int
	head       int
	pattern    bool // columns begin and end within the chart alone
	wedges     bool // and stay ended: each wedge of a crown narrows by itself
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

// feetFromLeft are the places of a row below of so many, from the left, that the stitches of a row, from the left, stand on.
func feetFromLeft(st []*St, below int, belowRight bool) [][]int {
	feet := make([][]int, len(st))
	for i, s := range st {
		for _, f := range s.Feet {
			if f >= 0 && f < below {
				if !belowRight {
					f = below - 1 - f
				}
				feet[i] = append(feet[i], f)
			}
		}
		slices.Sort(feet[i])
	}
	return feet
}

// over gives the stitches of row r, from the left, their columns.
func (l *columnList) over(w *Work, r int, st []*St, below []int) []int {
	n := len(st)
	feet := feetFromLeft(st, len(below), w.runsRight(r-1))
	if r > 0 {
		overGap(feet, w.Rows[r-1].fromLeft(w.runsRight(r-1)))
	}
	change := changesOf(feet)
	var lefts, rights int // columns that the edges move in, or out if negative
	if !l.pattern && !l.wedges {
		lefts, rights = edgesOf(change)
	}
	ends := make([]lean, n)
	for i, s := range st {
		ends[i] = leanOf(shownKey(s.Kind, w.Rows[r].Wrong))
	}
	seq := l.take(feet, change, below, ends)
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

// overGap stands stitches that are cast on over those that the row below has bound off within it.
func overGap(feet [][]int, below []*St) {
	next := 0 // place of the row below
	for i := range feet {
		if n := len(feet[i]); n > 0 {
			next = feet[i][n-1] + 1
		} else if next > 0 && next < len(below) && below[next].off() {
			feet[i] = []int{next}
			next++
		}
	}
}

// edgesOf takes from the changes of a row those that move its edges: the first one at each, if it is near, with what goes on
// beside it.
func edgesOf(change []int) (lefts, rights int) {
	n := len(change)
	move := func(at func(i int) int, nearer func(i int) bool) (moved int) {
		for i := range n {
			k := at(i)
			switch {
			case moved == 0 && (i > edgeStitches || !nearer(i)), moved != 0 && (change[k] == 0 || change[k] > 0 == (moved > 0)):
				return moved
			}
			moved -= change[k]
			change[k] = 0
		}
		return moved
	}
	lefts = move(func(i int) int { return i }, func(i int) bool { return 2*i < n })
	rights = move(func(i int) int { return n - 1 - i }, func(int) bool { return true })
	return lefts, rights
}

// lean is the way a decrease leans: the column that it goes on in.
type lean uint8

const (
	leansRight lean = iota // its last column from the left
	leansLeft
	stands // the middle one
)

func leanOf(key string) lean {
	switch {
	case strings.HasPrefix(key, "left-leaning"):
		return leansLeft
	case strings.HasPrefix(key, "centred"):
		return stands
	}
	return leansRight
}

// kept are those of its columns in which a decrease goes on that ends some of them.
func (k lean) kept(cols []int, ends int) []int {
	ends = min(ends, len(cols))
	from := 0
	switch k {
	case leansRight:
		from = ends
	case stands:
		from = ends / 2
	}
	return cols[from : from+len(cols)-ends]
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
// increase and the next decrease make up for each other, from either edge on.
func changesOf(feet [][]int) []int {
	used := -1
	change := make([]int, len(feet))
	for i := range feet {
		fresh := 0
		for _, v := range feet[i] {
			if v > used {
				used = v
				fresh++
			}
		}
		change[i] = 1 - fresh
	}
	var open unpaired
	half := (len(change) + 1) / 2
	for i, c := range change[:half] {
		open.put(i, c)
	}
	var right unpaired
	for i := len(change) - 1; i >= half; i-- {
		right.put(i, change[i])
	}
	slices.Reverse(right)
	for _, e := range right {
		open.put(e.at, e.by)
	}
	for i := range change {
		change[i] = 0
	}
	for _, e := range open {
		change[e.at] += e.by
	}
	return change
}

// unpaired are increases and decreases, each by one, that nothing makes up for so far.
type unpaired []struct{ at, by int }

// put adds those of a stitch.
func (u *unpaired) put(at, by int) {
	sign := 1
	if by < 0 {
		sign = -1
	}
	for range abs(by) {
		if k := len(*u) - 1; k >= 0 && (*u)[k].by != sign {
			*u = (*u)[:k]
		} else {
			*u = append(*u, struct{ at, by int }{at, sign})
		}
	}
}

// take goes on with the columns of the row below, without those that end and with
// those that begin inside the row: first those that ended there before.
func (l *columnList) take(feet [][]int, change, below []int, ends []lean) []int {
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
		seq = append(seq, ends[i].kept(mine, max(-change[i], 0))...)
		for range max(change[i], 0) {
			last := -1
			if len(seq) > 0 {
				last = seq[len(seq)-1]
			}
			seq = append(seq, l.between(last, taken, below))
		}
	}
	return seq
}

// between is a column behind last and before the next one of the row below that is not taken: one that is empty there, or a
// new one.
func (l *columnList) between(last, taken int, below []int) int {
	c := l.head
	if last >= 0 {
		c = l.next[last]
	}
	if l.pattern && c >= 0 && taken+1 < len(below) && c != below[taken+1] {
		return c
	}
	return l.after(last)
}

// patterned reports whether a work whose count changes comes back to it, as a pattern of stitches does, and is not the shape
// of a piece: in repeats, or away from its edges.
func (w *Work) patterned() bool {
	var rows []int
	for r := range w.Rows {
		if len(w.Rows[r].St) > 0 && w.Rows[r].Unread == "" {
			rows = append(rows, r)
		}
	}
	if len(rows) < 3 {
		return false
	}
	count := func(k int) int { return len(w.Rows[rows[k]].St) }
	if count(0) != count(len(rows)-1) && !w.growsAndShrinks(rows) || !slices.ContainsFunc(rows, func(r int) bool { return len(w.Rows[r].St) != count(0) }) {
		return false
	}
	if _, ok := w.repeat(); ok {
		return true
	}
	const inside = 3
	for _, r := range rows[1:] {
		change := changesOf(feetFromLeft(w.Rows[r].fromLeft(w.runsRight(r)), len(w.Rows[r-1].St), w.runsRight(r-1)))
		for i, c := range change {
			if c != 0 && min(i, len(change)-1-i) < inside {
				return false
			}
		}
	}
	return true
}

// inWedges reports whether a round changes its count at two places or more that are equally far from each other all around.
func (w *Work) inWedges() bool {
	for r := 1; r < len(w.Rows); r++ {
		if row := &w.Rows[r]; row.Round && row.Unread == "" && spacedAround(w.kept != nil, changesOf(feetFromLeft(row.fromLeft(w.runsRight(r)), len(w.Rows[r-1].St), w.runsRight(r-1)))) {
			return true
		}
	}
	return false
}

// spacedAround reports whether the changes of a round come at equal distances, of more than one stitch; in a round that is
// shortened all distances but one.
func spacedAround(shortened bool, change []int) bool {
	var at []int
	for i, c := range change {
		if c != 0 {
			at = append(at, i)
		}
	}
	many := map[int]int{} // of each distance
	for k, i := range at {
		next := at[0] + len(change)
		if k+1 < len(at) {
			next = at[k+1]
		}
		many[next-i]++
	}
	for gap, n := range many {
		if gap > 1 && n > 1 && (n == len(at) || shortened && n+1 == len(at)) {
			return true
		}
	}
	return false
}

// growsAndShrinks reports whether the counts of rows whose stitches the text repeats across them go up and down.
func (w *Work) growsAndShrinks(rows []int) bool {
	up, down, starred := false, false, false
	for k, r := range rows {
		starred = starred || w.Rows[r].Star > 0
		if k > 0 && !w.Rows[rows[k-1]].Base {
			by := len(w.Rows[r].St) - len(w.Rows[rows[k-1]].St)
			up, down = up || by > 0, down || by < 0
		}
	}
	return up && down && starred
}

// justify moves the stitches between columns that are full in every row to the side on which fewer such columns stand
// together: a leaf's to its midrib, so that it shows its shape.
func (l *columnList) justify(rows []knitRow) {
	full, order := map[int]int{}, []int{} // rows that each column is full in
	for c := l.head; c >= 0; c = l.next[c] {
		order = append(order, c)
	}
	worked := 0
	for _, r := range rows {
		if len(r.cells) == 0 {
			continue
		}
		worked++
		for i := range r.cells {
			full[r.cells[i].col]++
		}
	}
	for i := 0; i < len(order); {
		k := i
		for k < len(order) && (full[order[k]] == worked) == (full[order[i]] == worked) {
			k++
		}
		if full[order[i]] < worked {
			before, behind := runOf(order[:i], full, worked, true), runOf(order[k:], full, worked, false)
			if before != behind {
				block(order[i:k]).move(rows, behind < before)
			}
		}
		i = k
	}
}

// runOf is how many columns at the end of a stretch, or at its beginning, are full one after the other; many if it ends
// there.
func runOf(cols []int, full map[int]int, worked int, end bool) int {
	const many = 1 << 20
	for i := range cols {
		k := i
		if end {
			k = len(cols) - 1 - i
		}
		if full[cols[k]] < worked {
			return i
		}
	}
	return many
}

// block is columns beside each other.
type block []int

// move puts the stitches of every row that stand in the block beside each other, at its right end or its left one.
func (b block) move(rows []knitRow, right bool) {
	for _, r := range rows {
		var in []int
		for i := range r.cells {
			if slices.Contains(b, r.cells[i].col) {
				in = append(in, i)
			}
		}
		for k, i := range in {
			if right {
				k += len(b) - len(in)
			}
			r.cells[i].col = b[k]
		}
	}
}
