package chart

import (
	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// crossing is how many squares from the i-th on a crossing takes; 1 if there is none.
func (r *knitRow) crossing(i int) int {
	c := r.cells[i].st.Cross
	if c == nil {
		return r.unknownCable(i)
	}
	n := 1
	for i+n < len(r.cells) && n < c.Size() && r.cells[i+n].st.Cross == c {
		n++
	}
	return n
}

// unknownCable is how many squares a cable takes of which the text does not say how it is crossed; 1 if there is none.
func (r *knitRow) unknownCable(i int) int {
	k := r.cells[i].st.Kind
	if k == nil || k.Key != "cable" || i+k.Uses > len(r.cells) {
		return 1
	}
	for j := range k.Uses {
		if c := &r.cells[i+j]; c.st.Kind != k || c.col != r.cells[i].col+j {
			return 1
		}
	}
	return k.Uses
}

// uncrossed draws a cable that the text does not describe: its squares as one, with its spot.
func (s *squares) uncrossed(r *knitRow, cells []cellOf, wrong bool) {
	wide := cell * float64(len(cells))
	at := s.corner(cells[0].col, r)
	s.d.f.add(newMark(r.row, false, s.box(at, wide)))
	m := newMark(r.row, true, knitSymbol(s.symbolOf(&cells[0], wrong), add(at, pt{X: wide / 2, Y: s.tall / 2}), s.tall)...)
	m.at = add(at, pt{X: cell / 2, Y: s.tall / 2})
	s.d.f.add(m)
	s.others(r, cells)
}

// others stand for the squares of a crossing that are drawn with its first.
func (s *squares) others(r *knitRow, cells []cellOf) {
	for _, q := range cells[1:] {
		mid := add(s.corner(q.col, r), pt{X: cell / 2, Y: s.tall / 2})
		s.d.f.add(mark{row: r.row, stitch: true, at: mid, lo: mid, hi: mid})
	}
}

// crossing draws a crossing across its squares.
func (s *squares) crossing(r *knitRow, cells []cellOf, wrong bool) {
	k := cells[0].st.Kind
	if k.Cross == nil {
		s.uncrossed(r, cells, wrong)
		return
	}
	c := *cells[0].st.Cross
	if wrong { // what is held in front there lies behind, as the right side shows it
		c.Held, c.Over = c.Over, c.Held
		if c.Left {
			c.Held, c.Over = c.Over, c.Held
		}
	}
	known := false
	for _, o := range s.crosses {
		known = known || o.ID == k.ID
	}
	if !known {
		s.crosses = append(s.crosses, k)
	}
	at := s.corner(cells[0].col, r)
	s.d.f.add(newMark(r.row, false, s.box(at, cell*float64(len(cells)))))
	m := newMark(r.row, true, s.crossStrokes(c, at)...)
	m.at = add(at, pt{X: cell / 2, Y: s.tall / 2})
	s.d.f.add(m)
	s.others(r, cells)
}

// crossStrokes are the two strands of a crossing whose lower left corner is at a place: the
// one in front whole, the one behind up to it; purl dashes on the one behind, and a ring on
// the one in front if its stitches are twisted.
func (s *squares) crossStrokes(c stitch.Cross, at pt) []*sheet.Path {
	const in = 0.55
	wide := cell * float64(c.Size())
	front, back, mid := cell*float64(c.Front()), cell*float64(c.Back()), cell*float64(c.Mid)
	lo, hi := 0.0, s.tall
	x := func(v float64) float64 { // as if the front leaned to the right
		if c.Left {
			return wide - v
		}
		return v
	}
	q := &pen{o: at, u: pt{X: 1}, v: pt{Y: 1}}
	line := func(x0, y0, x1, y1 float64) { q.line(x(x0), y0, x(x1), y1) }
	// the front goes from the lower left to the upper right
	line(in, lo, back+mid+in, hi)
	line(front-in, lo, wide-in, hi)
	// the back from the lower right to the upper left; it leaves off at the front's edges
	under := func(x0, x1 float64) {
		slope, lean := (x1-x0)/s.tall, (wide-front)/s.tall
		edge := func(from float64) float64 { return (from - x0) / (slope - lean) } // where they meet
		if y := edge(front - in); y > 0.3 {
			line(x0, lo, x0+slope*(y-0.25), y-0.25)
		}
		if y := edge(in); y < s.tall-0.3 {
			line(x0+slope*(y+0.25), y+0.25, x1, hi)
		}
	}
	under(front+mid+in, in)
	under(wide-in, back-in)
	for k := range c.Mid { // they are seen below the two and above them
		if x0 := (float64(k) + 0.5) * cell; c.Purl {
			line(front+x0-0.5, 0.4, front+x0+0.5, 0.4)
			line(back+x0-0.5, hi-0.4, back+x0+0.5, hi-0.4)
		}
	}
	if c.Purl && c.Mid == 0 {
		for k := range c.Back() {
			mid := front + (float64(k)+0.5)*cell
			line(mid-0.6, 0.55, mid+0.6, 0.55)
		}
	}
	if c.Twisted {
		q.oval(x(wide/2), s.tall/2, 0.5, 0.5, false)
	}
	return q.out
}
