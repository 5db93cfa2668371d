package chart

import (
	"cmp"
	"math"
	"slices"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// A work may go on along the ends of its rows, as from a rib that is worked sideways:
// then what was worked so far lies turned by a quarter, and the next row grows out of
// its edge.

// edgeAt is the index of the last row that is worked along row ends, or -1.
func (w *Work) edgeAt() int {
	for r := len(w.Rows) - 1; r > 0; r-- {
		if w.Rows[r].Edge {
			return r
		}
	}
	return -1
}

// end is one row end of the turned part: where it is, and how high.
type end struct{ x, y float64 }

// sideways is the part below an edge, laid out and turned.
type sideways struct {
	p    *plan
	left bool // its last row ended at its left edge
	ends []end
}

// turned lays out the rows before r, and finds their ends at the edge where the yarn
// is.
func turnedPart(w *Work, r int, left bool) *sideways {
	part := &Work{Title: w.Title, Terms: w.Terms, Rows: w.Rows[:r]}
	p := newPlan(part, left)
	p.lay()
	s := &sideways{p: p, left: !p.lines[r-1].rightward}
	f := &figure{}
	p.stitches(f)
	high := f.lo
	high = s.turn(pt{X: f.lo.X})
	if !s.left {
		high = s.turn(pt{X: f.hi.X})
	}
	for _, l := range p.lines {
		if l.row.Base || len(l.nodes) == 0 {
			s.ends = append(s.ends, end{})
			continue
		}
		n := l.nodes[0]
		if !s.left {
			n = l.nodes[len(l.nodes)-1]
		}
		at := s.turn(pt{X: n.q, Y: (n.fv + n.v) / 2})
		s.ends = append(s.ends, end{at.X, high.Y})
	}
	return s
}

// turn turns a point by a quarter, so that the edge where the yarn is lies on top.
func (s *sideways) turn(q pt) pt {
	if s.left {
		return pt{X: q.Y, Y: -q.X}
	}
	return pt{X: -q.Y, Y: q.X}
}

// along is the rows from r on over a row of row ends.
func (s *sideways) along(w *Work, r int) *Work {
	base := Row{Base: true, Number: 0}
	place := make([]int, r) // of a row, among the ends from the left
	var order []int
	for i := range s.ends {
		if !w.Rows[i].Base {
			order = append(order, i)
		}
	}
	if !s.left { // the last row lies on the left
		slices.Reverse(order)
	}
	for k, i := range order {
		place[i] = k
		base.St = append(base.St, St{Kind: rowEnd})
	}
	out := &Work{Title: w.Title, Terms: w.Terms, More: w.More, Same: w.Same, From: w.From, kept: w.kept, Rows: []Row{base}}
	for i := r; i < len(w.Rows); i++ {
		row := w.Rows[i]
		if i == r {
			row.Edge = false
			row.St = slices.Clone(row.St)
			for k := range row.St {
				row.St[k].Feet = slices.Clone(row.St[k].Feet)
				for j, f := range row.St[k].Feet {
					row.St[k].Feet[j] = place[f]
				}
			}
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

// rowEnd stands for the end of a row, which is worked into and not drawn.
var rowEnd = &stitch.Stitch{ID: "row end", Key: "row end"}

// fix puts the first row of p onto the ends.
func (s *sideways) fix(p *plan) {
	l := p.lines[0]
	l.fixed = true
	k := 0
	for i := range s.ends {
		j := i
		if !s.left {
			j = len(s.ends) - 1 - i
		}
		if s.p.lines[j].row.Base {
			continue
		}
		n := l.nodes[k]
		n.mark = true
		n.q, n.v, n.fv = s.ends[j].x, s.ends[j].y, s.ends[j].y
		n.half = 0.3
		k++
	}
}

// draw adds the turned part to a figure, with its numbers under it.
func (s *sideways) draw(f *figure, o *Options, scale float64) {
	g := &figure{}
	s.p.stitches(g)
	s.p.breaks(g, o, scale)
	for _, m := range g.marks {
		for _, q := range m.paths {
			for i := range q.Segs {
				for k := range q.Segs[i].P {
					q.Segs[i].P[k] = s.turn(q.Segs[i].P[k])
				}
			}
		}
		f.add(newMark(m.row, m.stitch, m.paths...))
	}
	s.nameRows(f, o, scale)
	for _, l := range s.p.lines {
		if words := l.row.gapWords(); words != "" {
			f.label(o, scale, label{s: words, at: pt{X: (f.lo.X + f.hi.X) / 2, Y: f.lo.Y - o.plane(scale)}, row: l.n, anchor: sheet.Middle, class: "break"})
		}
	}
}

// nameRows writes the rows' numbers under the turned part, with their arrows.
func (s *sideways) nameRows(f *figure, o *Options, scale float64) {
	size := o.plane(scale)
	drop := f.lo.Y - sideGap/scale
	long := arrowLong / scale
	taken := math.Inf(-1) // the right end of the number before
	order := slices.Clone(s.p.lines)
	slices.SortFunc(order, func(a, b *line) int { return cmp.Compare(s.ends[a.n].x, s.ends[b.n].x) })
	for _, l := range order {
		name := l.row.name()
		if name == "" || len(l.nodes) == 0 {
			continue
		}
		x := s.ends[l.n].x
		a, b := pt{X: x, Y: drop - long}, pt{X: x, Y: drop}
		if l.rightward == s.left { // from the upper edge to the lower one
			a, b = b, a
		}
		f.add(newMark(l.n, false, arrow(a, b, l.row.Wrong, scale)...))
		half := fonts.Width(fonts.Regular, size, name)/2 + 0.3/scale
		if x-half > taken { // where rows stand closer than their numbers, some go without
			taken = x + half
			f.label(o, scale, label{s: name, at: pt{X: x, Y: drop - long - 0.8*size}, row: l.n, class: "number"})
		}
	}
}

// shortenEdge leaves rows out of a long part under an edge, and the stitches that
// stand on them.
func (w *Work) shortenEdge(mostRows int) *Work {
	r := w.edgeAt()
	if r < 0 || r <= mostRows {
		return w
	}
	part := &Work{Rows: w.Rows[:r]}
	low := part.lowered(mostRows, true)
	gone := r - len(low.Rows)
	a := len(low.Rows)
	for i := range low.Rows {
		if low.Rows[i].Gap > 0 {
			a = i
		}
	}
	all := w.spans(r, len(w.Rows))
	if gone == 0 || all == nil || a == len(low.Rows) { // the last row is kept, at which the yarn is
		return w
	}
	out := *w
	out.Rows = append([]Row(nil), low.Rows...)
	var below []int
	for i := r; i < len(w.Rows); i++ {
		var row Row
		row, below = cutRow(&w.Rows[i], all[i], a, a+gone, below)
		if i == r {
			row.overEnds(a, gone)
		}
		out.Rows = append(out.Rows, row)
	}
	return &out
}

// overEnds moves the feet of a row along row ends, of which gone from a on are left out.
func (row *Row) overEnds(a, gone int) {
	for k := range row.St {
		s := &row.St[k]
		if s.Break {
			s.Feet = []int{a - 1, a}
			continue
		}
		feet := make([]int, len(s.Feet))
		for j, f := range s.Feet {
			if feet[j] = f; f >= a+gone {
				feet[j] = f - gone
			}
		}
		s.Feet = feet
	}
}
