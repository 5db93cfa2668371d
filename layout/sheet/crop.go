package sheet

// cropGap is the room around the ink of a cut sheet, mm: half of the widest line and a hair.
const cropGap = 0.3

// Crop cuts the paper to the ink all round. Where width is more than 0 the paper is so wide, and
// the ink stands in its middle.
func (s *Sheet) Crop(width float64) {
	lo, hi, ok := Bounds(&s.Root)
	if !ok {
		return
	}
	w, h := hi.X-lo.X+2*cropGap, hi.Y-lo.Y+2*cropGap
	dx, dy := cropGap-lo.X, cropGap-lo.Y
	if width > 0 {
		dx, w = dx+(width-w)/2, width
	}
	s.Root, s.W, s.H = *Moved(&s.Root, dx, dy), w, h
	for i := range s.Places {
		s.Places[i].Y += dy
	}
}

// Moved is the group with everything in it moved.
func Moved(g *Group, dx, dy float64) *Group {
	out := *g
	out.Items = make([]Item, len(g.Items))
	for i, it := range g.Items {
		switch it := it.(type) {
		case *Group:
			out.Items[i] = Moved(it, dx, dy)
		case *Path:
			p := *it
			p.Segs = make([]Seg, len(it.Segs))
			for j, s := range it.Segs {
				for k := range s.P {
					s.P[k].X += dx
					s.P[k].Y += dy
				}
				p.Segs[j] = s
			}
			out.Items[i] = &p
		case *Text:
			t := *it
			t.At.X += dx
			t.At.Y += dy
			out.Items[i] = &t
		}
	}
	return &out
}
