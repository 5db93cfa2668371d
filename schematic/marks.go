package schematic

import "math"

// placed is where a mark lies: in from the edge at its height, if it is on one.
func (w *worker) placed(loops [][]drawn, k mark) Point {
	if k.side == segNone {
		return w.piece.From.turned(k.at).point()
	}
	y := k.at.y.Float()
	best, found := 0.0, false
	sign := 1.0
	if k.side == segRight {
		sign = -1
	}
	for _, l := range loops {
		for _, s := range l {
			if x, ok := s.seg.at(y); ok && s.seg.side == k.side && (!found || sign*(x-best) < 0) {
				best, found = x, true
			}
		}
	}
	if !found {
		best = k.at.x.Float()
	}
	best += sign * k.inset.Float()
	switch w.piece.From {
	case FromNeck, FromCentre:
		return Point{-best, -y}
	case FromLeft:
		return Point{y, -best}
	case FromRight:
		return Point{-y, best}
	}
	return Point{best, y}
}

func (w *worker) centreLine(v *View) {
	if !w.piece.Centre && !w.piece.FoldAt || len(v.Outline) == 0 || v.Panel && !w.middlePanel(v.Name) {
		return
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range v.Outline[0] {
		lo, hi = math.Min(lo, p.X), math.Max(hi, p.X)
	}
	x := (lo + hi) / 2
	kind := LineCentre
	if w.piece.FoldAt {
		kind = LineFold
	}
	c := crossings(v.Outline, Point{x, 0}, Point{0, 1})
	for i := 0; i+1 < len(c); i += 2 {
		v.Lines = append(v.Lines, Line{Kind: kind, A: Point{x, c[i]}, B: Point{x, c[i+1]}})
	}
}

// middlePanel reports whether the panel of this name lies over the centre of its piece: of an even number of panels the
// centre is the line between two of them.
func (w *worker) middlePanel(name string) bool {
	var names []string
	for _, c := range w.views {
		if c.panel && !c.dead {
			names = append(names, c.name)
		}
	}
	return len(names)%2 == 1 && names[len(names)/2] == name
}

// at is where an edge that goes up or down crosses a height.
func (s seg) at(y float64) (x float64, ok bool) {
	y0, y1 := s.a.y.Float(), s.b.y.Float()
	if math.Min(y0, y1) > y+1e-9 || math.Max(y0, y1) < y-1e-9 || y0 == y1 {
		return 0, false
	}
	return s.a.x.Float() + (s.b.x.Float()-s.a.x.Float())*(y-y0)/(y1-y0), true
}
