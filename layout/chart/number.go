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

// number puts the name of each row that is seen at the side where it begins, with an
// arrow, within a room in mm. Where that is full some go without.
func (f *figure) number(o *Options, scale float64, seen []*mark, room float64) numbers {
	var out numbers
	if len(f.names) == 0 {
		return out
	}
	type reach struct {
		lo, hi      pt
		left, right *mark // its outermost stitches
	}
	inf := math.Inf(1)
	last := f.names[len(f.names)-1].row
	rows := make([]reach, last+1)
	for i := range rows {
		rows[i] = reach{lo: pt{X: inf, Y: inf}, hi: pt{X: -inf, Y: -inf}}
	}
	g, taken := gridOver(f.lo, f.hi), gridOver(f.lo, f.hi)
	for _, m := range seen {
		g.add(m)
		if m.row < f.off || m.row > last || !m.stitch && !(f.tight && m.paths[0].Class == "grid") {
			continue
		}
		r := &rows[m.row]
		r.lo = pt{X: min(r.lo.X, m.lo.X), Y: min(r.lo.Y, m.lo.Y)}
		r.hi = pt{X: max(r.hi.X, m.hi.X), Y: max(r.hi.Y, m.hi.Y)}
		if m.stitch && (r.left == nil || m.at.X < r.left.at.X) {
			r.left = m
		}
		if m.stitch && (r.right == nil || m.at.X > r.right.at.X) {
			r.right = m
		}
	}
	size := o.plane(scale)
	high := (fonts.Ascent(fonts.Regular) + fonts.Descent(fonts.Regular)) * size
	near := high
	if f.tight {
		near = high/2 - 0.3
	}
	for _, n := range f.names {
		first := rows[n.row].right
		x, dir, anchor := -inf, 1.0, sheet.Start
		if n.rightward {
			first = rows[n.row].left
			x, dir, anchor = inf, -1, sheet.End
		}
		if first == nil {
			continue
		}
		y := max((first.lo.Y+first.hi.Y)/2, n.low+high/2)
		for k := max(n.row-3, 0); k <= min(n.row+3, last); k++ {
			if rows[k].lo.Y > y+near || rows[k].hi.Y < y-near {
				continue
			}
			if n.rightward {
				x = min(x, rows[k].lo.X)
			} else {
				x = max(x, rows[k].hi.X)
			}
		}
		x += dir * sideGap / scale
		for from := x; ; {
			l := label{s: n.s, at: pt{X: x + dir*(arrowLong+0.9)/scale, Y: y}, row: n.row, anchor: anchor, side: true, class: "number"}
			l.lo, l.hi = l.box(size)
			lo, hi := l.lo, l.hi
			lo.X, hi.X = min(lo.X, x), max(hi.X, x)
			if math.Abs(x-from)+hi.X-lo.X > (room-sideGap)/scale {
				break
			}
			a, b := pt{X: lo.X - 0.3, Y: lo.Y - 0.2}, pt{X: hi.X + 0.3, Y: hi.Y + 0.2}
			if other := !taken.free(a, b); other || !g.free(a, b) {
				x += dir * 0.8
				out.crowd = out.crowd || other
				continue
			}
			taken.put(lo, hi)
			out.arrows = append(out.arrows, newMark(n.row, false, arrow(pt{X: x + dir*arrowLong/scale, Y: y}, pt{X: x, Y: y}, n.wrong, scale)...))
			out.labels = append(out.labels, l)
			break
		}
	}
	return out
}
