package place

import (
	"math"
	"sort"

	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// pt is a place on paper, mm, y downwards.
type pt = sheet.Point

type seg struct{ a, b pt }

func add(p, q pt) pt                 { return pt{X: p.X + q.X, Y: p.Y + q.Y} }
func sub(p, q pt) pt                 { return pt{X: p.X - q.X, Y: p.Y - q.Y} }
func mul(p pt, k float64) pt         { return pt{X: p.X * k, Y: p.Y * k} }
func dist(p, q pt) float64           { return math.Hypot(p.X-q.X, p.Y-q.Y) }
func cross(p, q pt) float64          { return p.X*q.Y - p.Y*q.X }
func mid(p, q pt) pt                 { return mul(add(p, q), 0.5) }
func between(v, lo, hi float64) bool { return v > lo && v < hi }

// crosses reports whether two lines cross at a point inside both.
func (s seg) crosses(o seg) bool {
	d, e := sub(s.b, s.a), sub(o.b, o.a)
	return cross(d, sub(o.a, s.a))*cross(d, sub(o.b, s.a)) < 0 &&
		cross(e, sub(s.a, o.a))*cross(e, sub(s.b, o.a)) < 0
}

// shrunk is the line without mm at each end.
func (s seg) shrunk(mm float64) seg {
	l := dist(s.a, s.b)
	if l <= 2*mm {
		m := mid(s.a, s.b)
		return seg{m, m}
	}
	d := mul(sub(s.b, s.a), mm/l)
	return seg{add(s.a, d), sub(s.b, d)}
}

// along reports whether o runs beside s, nearer than mm, for more than 1 mm.
func (s seg) along(o seg, mm float64) bool {
	l := dist(s.a, s.b)
	if l == 0 {
		return false
	}
	d := mul(sub(s.b, s.a), 1/l)
	ua, ub := dot(sub(o.a, s.a), d), dot(sub(o.b, s.a), d)
	va, vb := cross(d, sub(o.a, s.a)), cross(d, sub(o.b, s.a))
	return math.Abs(va) < mm && math.Abs(vb) < mm && min(max(ua, ub), l)-max(min(ua, ub), 0) > 1
}

func dot(p, q pt) float64 { return p.X*q.X + p.Y*q.Y }

// inside reports whether p lies in the loops (even-odd).
func inside(loops [][]pt, p pt) bool {
	in := false
	for _, loop := range loops {
		in = in != schematic.InPolygon(loop, p)
	}
	return in
}

// hatch cuts a closed polygon into lines that run along dir, gap mm apart, evenly
// between its two sides.
func hatch(poly []pt, dir pt, gap float64) []seg {
	l := math.Hypot(dir.X, dir.Y)
	if l == 0 || len(poly) < 3 || gap <= 0 {
		return nil
	}
	d := mul(dir, 1/l)
	n := pt{X: -d.Y, Y: d.X}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range poly {
		lo, hi = min(lo, dot(p, n)), max(hi, dot(p, n))
	}
	count := math.Round((hi - lo) / gap)
	if count < 1 || count > 5000 {
		return nil
	}
	step := (hi - lo) / count
	var lines []seg
	var cuts []float64
	for k := 0.5; k < count; k++ {
		v := lo + k*step
		cuts = cutsOf(cuts[:0], poly, d, n, v)
		for i := 0; i+1 < len(cuts); i += 2 {
			if cuts[i+1]-cuts[i] > 0.05 {
				lines = append(lines, seg{add(mul(n, v), mul(d, cuts[i])), add(mul(n, v), mul(d, cuts[i+1]))})
			}
		}
	}
	return lines
}

// cutsOf are the places along d, in order, at which the line at v across n crosses a polygon's sides; they go behind those in cuts.
func cutsOf(cuts []float64, poly []pt, d, n pt, v float64) []float64 {
	for i, a := range poly {
		b := poly[(i+1)%len(poly)]
		va, vb := dot(a, n), dot(b, n)
		if (va > v) != (vb > v) {
			t := (v - va) / (vb - va)
			cuts = append(cuts, dot(a, d)+t*(dot(b, d)-dot(a, d)))
		}
	}
	sort.Float64s(cuts)
	return cuts
}

// extent grows around what it is given.
type extent struct {
	lo, hi pt
	any    bool
}

func (e *extent) add(ps ...pt) {
	for _, p := range ps {
		if !e.any {
			e.lo, e.hi, e.any = p, p, true
			continue
		}
		e.lo = pt{X: min(e.lo.X, p.X), Y: min(e.lo.Y, p.Y)}
		e.hi = pt{X: max(e.hi.X, p.X), Y: max(e.hi.Y, p.Y)}
	}
}

func (e *extent) box(b sheet.Box) {
	lo, hi := b.Bounds()
	e.add(lo, hi)
}
