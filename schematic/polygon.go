package schematic

import (
	"math"
	"sort"
)

// PolygonArea is the area of a closed polygon, mm², positive if it runs
// anticlockwise (shoelace formula).
func PolygonArea(p []Point) float64 {
	var t float64
	for i, a := range p {
		b := p[(i+1)%len(p)]
		t += float64(a.X*b.Y) - float64(b.X*a.Y)
	}
	return t / 2
}

// InPolygon reports whether p lies in a closed polygon; of its edge either may be said.
func InPolygon[P ~struct{ X, Y float64 }](loop []P, p P) bool {
	in, q := false, Point(p)
	for i := range loop {
		a, b := Point(loop[i]), Point(loop[(i+1)%len(loop)])
		if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// OutlineArea is the area within the outline of all views, mm²; holes count out. It
// differs from Area where fabric is gathered, folded or in two layers.
func (m *Made) OutlineArea() float64 {
	var t float64
	for _, v := range m.Views {
		for _, l := range v.Outline {
			t += PolygonArea(l) * float64(max(1, v.Alike))
		}
	}
	return t
}

// crossings are where the line through o in direction d crosses the loops, as
// distances from o along d.
func crossings(loops [][]Point, o, d Point) []float64 {
	var out []float64
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			ca := float64(d.X*(a.Y-o.Y)) - float64(d.Y*(a.X-o.X))
			cb := float64(d.X*(b.Y-o.Y)) - float64(d.Y*(b.X-o.X))
			if (ca > 0) == (cb > 0) {
				continue
			}
			t := ca / (ca - cb)
			x, y := a.X+float64(t*(b.X-a.X)), a.Y+float64(t*(b.Y-a.Y))
			out = append(out, float64((x-o.X)*d.X)+float64((y-o.Y)*d.Y))
		}
	}
	sort.Float64s(out)
	return out
}

// exit is where the line from a in direction d leaves the outline.
func exit(loops [][]Point, a, d Point) (Point, bool) {
	for _, t := range crossings(loops, a, d) {
		if t > 0.01 {
			return Point{a.X + float64(d.X*t), a.Y + float64(d.Y*t)}, true
		}
	}
	return Point{}, false
}

// inside is a place well within the outline: the middle of the widest crossing
// at a third of the way along d.
func inside(loops [][]Point, d Point) Point {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, l := range loops {
		for _, p := range l {
			t := float64(p.X*d.X) + float64(p.Y*d.Y)
			lo, hi = math.Min(lo, t), math.Max(hi, t)
		}
	}
	best, width := Point{}, -1.0
	across := Point{-d.Y, d.X}
	for _, f := range []float64{0.37, 0.5, 0.25, 0.7} {
		t := lo + float64((hi-lo)*f)
		o := Point{float64(d.X * t), float64(d.Y * t)}
		c := crossings(loops, o, across)
		for i := 0; i+1 < len(c); i += 2 {
			if c[i+1]-c[i] > width+1 {
				width = c[i+1] - c[i]
				m := (c[i] + c[i+1]) / 2
				best = Point{o.X + float64(across.X*m), o.Y + float64(across.Y*m)}
			}
		}
		if width > 0 {
			break
		}
	}
	return best
}
