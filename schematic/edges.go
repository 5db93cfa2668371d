package schematic

import (
	"math"
	"slices"

	"flatwright/schematic/units"
)

// edgesOf are the named edges of one loop.
func (w *worker) edgesOf(l []drawn, view int, panel string) []Edge {
	var out []Edge
	for i, s := range l {
		if s.seg.fold {
			continue
		}
		n := len(out)
		if i == 0 || !sameEdge(l[i-1], s) || n == 0 {
			e := Edge{Name: s.seg.name, Left: s.left, Right: s.right, View: view, Pos: s.seg.pos, Path: []Point{s.a}}
			if panel != "" {
				e.Parts = append(e.Parts, panel)
			}
			out = append(out, e)
			n++
		}
		if s.seg.rows > 0 && s.exact && w.made.RowEnds() { // what is shaped across steps as it is drawn, and not as it lies
			s.ez.x = s.ex.x
		}
		out[n-1].extend(s)
		out[n-1].Doubt = out[n-1].Doubt || w.made.Cut
	}
	// A level edge wholly to one side of the piece is its left or right one.
	for i := range out {
		if e := &out[i]; !e.Left && !e.Right {
			e.Left, e.Right = sideOf(e.Path, l)
		}
	}
	return out
}

// extend makes an edge go on along a stretch.
func (e *Edge) extend(s drawn) {
	for _, name := range []string{s.seg.part, s.seg.also} {
		if name != "" && !slices.Contains(e.Parts, name) {
			e.Parts = append(e.Parts, name)
		}
	}
	e.Path = append(e.Path, s.b)
	e.Doubt = e.Doubt || s.seg.doubt
	if s.seg.step {
		return
	}
	l := lengthOf(s)
	if s.seg.both {
		l = l.Times(2)
	}
	e.Length = e.Length.Add(l)
	if n := max(s.seg.sts, s.seg.rows); n > 0 {
		e.Grain = units.Max(e.Grain, l.Div(units.Int(int64(n))))
	}
	e.Stitches += s.seg.sts
	e.Rows += s.seg.rows
}

// pointNames are the trade's names of the points where two edges meet.
var pointNames = map[[2]string]string{
	{"armhole", "side"}:        "underarm",
	{"armhole", "underarm"}:    "underarm",
	{"armhole", "front edge"}:  "underarm",
	{"armhole", "shoulder"}:    "shoulder point",
	{"neck", "shoulder"}:       "neck point",
	{"front edge", "neck"}:     "front neck point",
	{"cap", "sleeve seam"}:     "underarm",
	{"cap", "side"}:            "underarm",
	{"shoulder", "sleeve end"}: "wrist point",
	{"hem", "side"}:            "hem corner",
	{"front edge", "hem"}:      "hem corner",
	{"cast-on edge", "side"}:   "hem corner",
}

// pointsOf are the named points of a loop.
func pointsOf(l []drawn) []Named {
	var out []Named
	for i := range l {
		a, b := l[(i+len(l)-1)%len(l)].seg.name, l[i].seg.name
		if b < a {
			a, b = b, a
		}
		if name, ok := pointNames[[2]string{a, b}]; ok {
			out = append(out, Named{name, l[i].a})
		}
	}
	return out
}

func sideOf(path []Point, loop []drawn) (left, right bool) {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, d := range loop {
		lo, hi = math.Min(lo, d.a.X), math.Max(hi, d.a.X)
	}
	mid := (lo + hi) / 2
	left, right = true, true
	for _, p := range path {
		left = left && p.X <= mid+1e-6
		right = right && p.X >= mid-1e-6
	}
	return left && !right, right && !left
}

// lengthOf is exact for a level or upright stretch, and to 0.001 mm for a slanted one.
func lengthOf(s drawn) units.Num {
	if s.exact {
		dx, dy := s.ez.x.Sub(s.ex.x).Abs(), s.ez.y.Sub(s.ex.y).Abs()
		if dx.Sign() == 0 {
			return dy
		}
		if dy.Sign() == 0 {
			return dx
		}
	}
	return micrometres(math.Hypot(s.b.X-s.a.X, s.b.Y-s.a.Y))
}

func micrometres(mm float64) units.Num { return units.Frac(int64(math.Round(mm*1000)), 1000) }
