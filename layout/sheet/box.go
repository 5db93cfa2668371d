package sheet

import "math"

// Box is a turned rectangle: the room that a text takes, for instance. C is its
// centre, U the unit vector along it, HalfW and HalfH half its sides along U and
// across it.
type Box struct {
	C            Point
	U            Point
	HalfW, HalfH float64
}

// Box is the text's box: ascent, descent and measured width, turned with it.
func (t *Text) Box() Box {
	c := t.Corners()
	ux, uy := c[1].X-c[0].X, c[1].Y-c[0].Y
	w := math.Hypot(ux, uy)
	h := math.Hypot(c[3].X-c[0].X, c[3].Y-c[0].Y)
	b := Box{
		C:     Point{(c[0].X + c[2].X) / 2, (c[0].Y + c[2].Y) / 2},
		U:     Point{1, 0},
		HalfW: w / 2, HalfH: h / 2,
	}
	if w > 0 {
		b.U = Point{ux / w, uy / w}
	}
	return b
}

// Grown is the box with mm more on every side.
func (b Box) Grown(mm float64) Box {
	b.HalfW += mm
	b.HalfH += mm
	return b
}

// Bounds is the smallest upright box around b.
func (b Box) Bounds() (lo, hi Point) {
	dx := math.Abs(b.U.X)*b.HalfW + math.Abs(b.U.Y)*b.HalfH
	dy := math.Abs(b.U.Y)*b.HalfW + math.Abs(b.U.X)*b.HalfH
	return Point{b.C.X - dx, b.C.Y - dy}, Point{b.C.X + dx, b.C.Y + dy}
}

// local is p seen from the box: along it and across it.
func (b Box) local(p Point) (u, v float64) {
	x, y := p.X-b.C.X, p.Y-b.C.Y
	return x*b.U.X + y*b.U.Y, -x*b.U.Y + y*b.U.X
}

// Overlaps reports whether the two boxes share any area (separating axes).
func (b Box) Overlaps(o Box) bool {
	return !b.apart(o) && !o.apart(b)
}

func (b Box) apart(o Box) bool {
	u, v := b.local(o.C)
	along := math.Abs(b.U.X*o.U.X + b.U.Y*o.U.Y)
	across := math.Abs(-b.U.Y*o.U.X + b.U.X*o.U.Y)
	return math.Abs(u) >= b.HalfW+along*o.HalfW+across*o.HalfH ||
		math.Abs(v) >= b.HalfH+across*o.HalfW+along*o.HalfH
}

// Touches reports whether any point of the straight line from p to q lies in the
// box.
func (b Box) Touches(p, q Point) bool {
	pu, pv := b.local(p)
	qu, qv := b.local(q)
	lo, hi := 0.0, 1.0
	for _, side := range [2][3]float64{{pu, qu, b.HalfW}, {pv, qv, b.HalfH}} {
		from, d, half := side[0], side[1]-side[0], side[2]
		if d == 0 {
			if math.Abs(from) >= half {
				return false
			}
			continue
		}
		t0, t1 := (-half-from)/d, (half-from)/d
		lo, hi = max(lo, min(t0, t1)), min(hi, max(t0, t1))
		if lo >= hi {
			return false
		}
	}
	return true
}

// Polyline is a path as runs of straight lines, each curve cut into pieces short
// enough to lie within 0.02 mm of it for the curves of a drawing.
func (p *Path) Polyline() [][]Point {
	var runs [][]Point
	var run []Point
	for i := range p.Segs {
		s := &p.Segs[i]
		switch s.Verb {
		case Move:
			if len(run) > 1 {
				runs = append(runs, run)
			}
			run = []Point{s.P[0]}
		case Line:
			run = append(run, s.P[0])
		case Cubic:
			if len(run) > 0 {
				run = flatten(run, s.P)
			}
		case Close:
			if len(run) > 0 {
				run = append(run, run[0])
				runs = append(runs, run)
				run = []Point{run[0]}
			}
		}
	}
	if len(run) > 1 {
		runs = append(runs, run)
	}
	return runs
}

func flatten(run []Point, c [3]Point) []Point {
	a := run[len(run)-1]
	long := math.Hypot(c[0].X-a.X, c[0].Y-a.Y) + math.Hypot(c[1].X-c[0].X, c[1].Y-c[0].Y) +
		math.Hypot(c[2].X-c[1].X, c[2].Y-c[1].Y)
	n := int(min(max(8, 4*math.Sqrt(long)), 400))
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		s := 1 - t
		w := [4]float64{s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t}
		run = append(run, Point{
			w[0]*a.X + w[1]*c[0].X + w[2]*c[1].X + w[3]*c[2].X,
			w[0]*a.Y + w[1]*c[0].Y + w[2]*c[1].Y + w[3]*c[2].Y,
		})
	}
	return run
}
