package chart

import (
	"math"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// rowName is what a row is called at its side, and where it begins.
type rowName struct {
	row       int
	s         string
	rightward bool // it begins at the left
	wrong     bool
	low       float64 // the least level of its name
}

// numbers are the names of rows and their arrows, in the plane.
type numbers struct {
	arrows []mark
	labels []label
	crowd  bool // they stand beside each other where there is no room above each other
}

// everything is all that the figure has, as one page that holds it sees it.
func (f *figure) everything() []*mark {
	out := make([]*mark, len(f.marks))
	for i := range out {
		out[i] = &f.marks[i]
	}
	return out
}

// extent is the room of the figure with its numbers.
func (f *figure) extent() (lo, hi pt) {
	g := figure{lo: f.lo, hi: f.hi}
	for _, m := range f.nums.arrows {
		g.grow(m.lo, m.hi)
	}
	for i := range f.nums.labels {
		g.grow(f.nums.labels[i].lo, f.nums.labels[i].hi)
	}
	return g.lo, g.hi
}

// beside is how many numbers at most stand beside each other.
const beside = 3

// alone is the room for the numbers of a figure that is on one page, mm.
const alone = 300.0

// sideRoom is the room of a number and its arrow beside a page's part, mm.
func (f *figure) sideRoom(o *Options) float64 {
	if len(f.names) == 0 {
		return 4
	}
	w := 0.0
	for _, n := range f.names {
		w = max(w, fonts.Width(fonts.Regular, o.text(), n.s))
	}
	w += sideGap + arrowLong + 0.9 + 1
	if f.nums.crowd {
		w *= beside
	}
	return w
}

// reach is what is seen of a row: its room, and its outermost stitches.
type reach struct {
	lo, hi      pt
	left, right *mark
}

// numbering puts names at the sides of rows.
type numbering struct {
	f               *figure
	rows            []reach
	marks, taken    *grid // what is drawn, and the names that stand already
	size, near      float64
	scale, farthest float64 // farthest: how far a name may stand beside its row
	out             numbers
}

// number puts the name of each row that is seen at the side where it begins, with an
// arrow, within a room in mm. Where that is full some go without.
func (f *figure) number(o *Options, scale float64, seen []*mark, room float64) numbers {
	if len(f.names) == 0 {
		return numbers{}
	}
	n := &numbering{f: f, size: o.plane(scale), scale: scale, farthest: (room - sideGap) / scale}
	lo, hi := extent(seen)
	n.marks, n.taken = gridOver(lo, hi), gridOver(lo, hi)
	high := (fonts.Ascent(fonts.Regular) + fonts.Descent(fonts.Regular)) * n.size
	if n.near = high; f.tight {
		n.near = high/2 - 0.3
	}
	n.see(seen)
	for i := range f.names {
		n.name(&f.names[i], high)
	}
	return n.out
}

// extent is how far marks reach.
func extent(list []*mark) (lo, hi pt) {
	for i, m := range list {
		if i == 0 {
			lo, hi = m.lo, m.hi
		}
		lo, hi = pt{X: min(lo.X, m.lo.X), Y: min(lo.Y, m.lo.Y)}, pt{X: max(hi.X, m.hi.X), Y: max(hi.Y, m.hi.Y)}
	}
	return lo, hi
}

// see notes what is drawn, and how far each row reaches.
func (n *numbering) see(seen []*mark) {
	last := n.f.names[len(n.f.names)-1].row
	inf := math.Inf(1)
	n.rows = make([]reach, last+1)
	for i := range n.rows {
		n.rows[i] = reach{lo: pt{X: inf, Y: inf}, hi: pt{X: -inf, Y: -inf}}
	}
	for _, m := range seen {
		if m.row >= n.f.off && m.row <= last && (m.stitch || n.f.tight && m.paths[0].Class == "grid") {
			n.rows[m.row].take(m)
		}
	}
	left, right := -inf, inf // no name stands between them
	for i := range n.rows {
		if r := &n.rows[i]; r.lo.X <= r.hi.X {
			left, right = max(left, r.lo.X), min(right, r.hi.X)
		}
	}
	for _, m := range seen {
		if m.lo.X <= left || m.hi.X >= right {
			n.marks.add(m)
		}
	}
}

func (r *reach) take(m *mark) {
	r.lo = pt{X: min(r.lo.X, m.lo.X), Y: min(r.lo.Y, m.lo.Y)}
	r.hi = pt{X: max(r.hi.X, m.hi.X), Y: max(r.hi.Y, m.hi.Y)}
	if !m.stitch {
		return
	}
	if r.left == nil || m.at.X < r.left.at.X {
		r.left = m
	}
	if r.right == nil || m.at.X > r.right.at.X {
		r.right = m
	}
}

// edge is the outermost place at a level of the rows about row, on the side that dir says.
func (n *numbering) edge(row int, y, dir float64) float64 {
	x := math.Inf(-1)
	for k := max(row-3, 0); k <= min(row+3, len(n.rows)-1); k++ {
		r := &n.rows[k]
		if r.lo.Y > y+n.near || r.hi.Y < y-n.near {
			continue
		}
		x = max(x, dir*r.lo.X, dir*r.hi.X)
	}
	return dir * x
}

// name puts one name beside its row, as near as there is room.
func (n *numbering) name(name *rowName, high float64) {
	first, dir, anchor := n.rows[name.row].right, 1.0, sheet.Start
	if name.rightward {
		first, dir, anchor = n.rows[name.row].left, -1, sheet.End
	}
	if first == nil {
		return
	}
	y := max((first.lo.Y+first.hi.Y)/2, name.low+high/2)
	x := n.edge(name.row, y, dir) + dir*sideGap/n.scale
	for from := x; ; x += dir * 0.8 {
		l := label{s: name.s, at: pt{X: x + dir*(arrowLong+0.9)/n.scale, Y: y}, row: name.row, anchor: anchor, side: true, class: "number"}
		l.lo, l.hi = l.box(n.size)
		lo, hi := l.lo, l.hi
		lo.X, hi.X = min(lo.X, x), max(hi.X, x)
		if math.Abs(x-from)+hi.X-lo.X > n.farthest {
			return
		}
		a, b := pt{X: lo.X - 0.3, Y: lo.Y - 0.2}, pt{X: hi.X + 0.3, Y: hi.Y + 0.2}
		if !n.taken.free(a, b) {
			n.out.crowd = true
			continue
		}
		if !n.marks.free(a, b) {
			continue
		}
		n.taken.put(lo, hi)
		n.out.arrows = append(n.out.arrows, newMark(name.row, false, arrow(pt{X: x + dir*arrowLong/n.scale, Y: y}, pt{X: x, Y: y}, name.wrong, n.scale)...))
		n.out.labels = append(n.out.labels, l)
		return
	}
}
