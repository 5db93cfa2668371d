package schematic

import (
	"cmp"
	"iter"
	"math"
	"slices"
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// grid is a grid of motifs on its way to an outline.
type grid struct {
	*Motifs
	across, joining units.Num
	cols, rows      int
	pitch           float64
	arms            float64 // the height above which its sides are armholes
	cells           [][]Point
}

// motifs draws a grid of motifs: the outline is what no two of them share.
func (w *worker) motifs(s *Motifs) {
	if len(s.Across.Vals) == 0 {
		return
	}
	g := newGrid(s, w.i)
	c := &canvas{free: &freeform{}}
	w.views = append(w.views, c)
	if len(g.cells) == 0 {
		c.dead = true
		w.find("arithmetic/motifs", finding.Error, s.Pos, "the grid has no motif", "", "", "put an x where there is a motif")
		return
	}
	g.border(c.free)
	g.name(c.free, s.Side.Int(w.i, 0))
	g.measure(c.free)
	t := 0.0
	for _, p := range g.cells {
		t += PolygonArea(p)
	}
	gauge := w.gauge(w.piece.Gauge)
	w.areas[gauge.Name] = w.areas[gauge.Name].Add(units.Frac(int64(math.Round(t)), 1))
}

func newGrid(s *Motifs, i int) *grid {
	g := &grid{Motifs: s, cols: s.Columns.Int(i, 1), rows: s.Rows.Int(i, 1)}
	g.across, _ = s.Across.At(i)
	g.joining, _ = s.Joining.At(i)
	if len(s.Filled) > 0 {
		g.rows, g.cols = len(s.Filled), 0
		for _, l := range s.Filled {
			g.cols = max(g.cols, len(strings.TrimRight(l, ".")))
		}
	}
	g.pitch = g.across.Float() + g.joining.Float()*g.Shape.apart()
	arms := s.Armhole.Int(i, 0)
	g.arms = math.Inf(1)
	for r := range g.rows {
		for c := range g.cols {
			what := g.at(r, c)
			if what == '.' || what == ' ' {
				continue
			}
			cell := s.cell(r, c, g.rows, g.pitch, what)
			g.cells = append(g.cells, cell)
			if lo, _ := bounds(cell); r < arms {
				g.arms = min(g.arms, lo.Y)
			}
		}
	}
	return g
}

// Count is how many motifs, and how many halves of them, are made in a size.
func (s *Motifs) Count(size int) (whole, half int) {
	g := newGrid(s, size)
	for r := range g.rows {
		for c := range g.cols {
			switch what := g.at(r, c); {
			case what == '.' || what == ' ':
			case what == 'x' && s.Shape != HalfHexagon && s.Shape != HalfSquare:
				whole++
			default:
				half++
			}
		}
	}
	return whole, half
}

// at is what stands in a place of the grid.
func (g *grid) at(r, c int) byte {
	switch {
	case len(g.Filled) == 0:
		return 'x'
	case r >= len(g.Filled) || c >= len(g.Filled[r]):
		return '.'
	}
	return g.Filled[r][c]
}

// place is a point as a key: to 0.0001 mm.
type place struct{ x, y int64 }

func placeOf(p Point) place {
	return place{int64(math.Round(p.X * 1e4)), int64(math.Round(p.Y * 1e4))}
}

// sides are the sides of all motifs, each from one corner to the next.
func (g *grid) sides() iter.Seq2[Point, Point] {
	return func(yield func(a, b Point) bool) {
		for _, p := range g.cells {
			for i, a := range p {
				if !yield(a, p[(i+1)%len(p)]) {
					return
				}
			}
		}
	}
}

// border draws the edges that no two motifs share, as loops; what two share is a joining, a line within.
func (g *grid) border(f *freeform) {
	type pair struct{ a, b place }
	seen := make(map[pair]bool, 6*len(g.cells))
	for a, b := range g.sides() {
		seen[pair{placeOf(a), placeOf(b)}] = true
	}
	next := map[place][]Point{}
	var starts []Point
	for q, z := range g.sides() {
		a, b := placeOf(q), placeOf(z)
		switch {
		case !seen[pair{b, a}]:
			next[a] = append(next[a], z)
			starts = append(starts, q)
		case a.x < b.x || a.x == b.x && a.y < b.y:
			f.lines = append(f.lines, Line{Kind: LineCell, A: q, B: z})
		}
	}
	for _, o := range starts {
		if loop := g.loopFrom(o, next); len(loop) > 0 {
			f.loops = append(f.loops, loop)
		}
	}
}

// loopFrom takes the loop that begins at o out of what goes on from each place: at a crossing the leftmost way.
func (g *grid) loopFrom(o Point, next map[place][]Point) []drawn {
	var loop []drawn
	at, dir := o, Point{}
	for len(next[placeOf(at)]) > 0 {
		outs := next[placeOf(at)]
		best := 0
		for i := range outs {
			if turnOf(dir, at, outs[i]) > turnOf(dir, at, outs[best]) {
				best = i
			}
		}
		z := outs[best]
		next[placeOf(at)] = append(append([]Point(nil), outs[:best]...), outs[best+1:]...)
		loop = append(loop, drawn{a: at, b: z, seg: seg{name: "edge of the motifs", pos: g.Pos}})
		dir, at = Point{z.X - at.X, z.Y - at.Y}, z
		if placeOf(at) == placeOf(o) {
			break
		}
	}
	return loop
}

// name names the edges of the grid by where they face: the lower, the upper and the two sides, and the neck, an opening
// between two columns that reach higher. side is the stitches along one side of a motif.
func (g *grid) name(f *freeform, side int) {
	outline := loopPoints(f.loops)
	for _, l := range f.loops {
		for i := range l {
			d := &l[i]
			n := Point{d.b.Y - d.a.Y, d.a.X - d.b.X} // outwards
			long := math.Hypot(n.X, n.Y)
			if long == 0 {
				continue
			}
			off := Point{(d.a.X+d.b.X)/2 + n.X/long, (d.a.Y+d.b.Y)/2 + n.Y/long}
			beside := crossings(outline, off, Point{X: 1})
			upright := crossings(outline, off, Point{Y: 1})
			d.seg.sts = side
			switch {
			case len(beside) > 0 && beside[0] < 0 && beside[len(beside)-1] > 0 && (len(upright) == 0 || upright[len(upright)-1] < 0):
				d.seg.name = "neck"
			case n.Y < -0.5*long:
				d.seg.name = "bottom edge"
			case n.Y > 0.5*long:
				d.seg.name = "top edge"
			default:
				d.seg.name, d.left, d.right = "side", n.X < 0, n.X >= 0
				if min(d.a.Y, d.b.Y) > g.arms-0.01 {
					d.seg.name = "armhole"
				}
			}
		}
	}
}

func loopPoints(loops [][]drawn) [][]Point {
	out := make([][]Point, len(loops))
	for i, l := range loops {
		for _, d := range l {
			out[i] = append(out[i], d.a)
		}
	}
	return out
}

// measure measures the grid: all of it, one motif, and its neck.
func (g *grid) measure(f *freeform) {
	var all, neck []Point
	for _, l := range f.loops {
		for _, d := range l {
			all = append(all, d.a)
			if d.seg.name == "neck" {
				neck = append(neck, d.a, d.b)
			}
		}
	}
	lo, hi := bounds(all)
	nlo, nhi := bounds(neck)
	beyondX, beyondY := g.Shape.beyond()
	joining := g.joining.Float()
	wide, tall := micrometres(hi.X-lo.X-joining*beyondX), micrometres(hi.Y-lo.Y-joining*beyondY)
	if g.Shape == Square {
		wide, tall = g.across.Times(g.cols).Add(g.joining.Times(g.cols-1)), g.across.Times(g.rows).Add(g.joining.Times(g.rows-1))
	}
	half := g.joining.Half().Float()
	f.sizes = []freeSize{
		{name: "width", a: Point{lo.X, lo.Y}, b: Point{hi.X, lo.Y}, axis: Horizontal, length: wide, count: g.cols, of: "motif"},
		{name: "length", a: Point{hi.X, lo.Y}, b: Point{hi.X, hi.Y}, axis: Vertical, length: tall, count: g.rows, of: "motif"},
	}
	if g.Shape == Square && len(g.cells) > 1 {
		low := slices.MinFunc(g.cells, func(a, b []Point) int { // the motif at the lower left
			return cmp.Or(cmp.Compare(a[0].Y, b[0].Y), cmp.Compare(a[0].X, b[0].X))
		})[0]
		a := Point{low.X + half, low.Y}
		f.sizes = append(f.sizes, freeSize{name: "motif", a: a, b: Point{a.X + g.across.Float(), a.Y}, axis: Horizontal, length: g.across, count: 1, of: "motif"})
	}
	if nlo.X < nhi.X {
		f.sizes = append(f.sizes,
			freeSize{name: "neck width", a: Point{nlo.X, nhi.Y}, b: nhi, axis: Horizontal, length: micrometres(nhi.X - nlo.X)},
			freeSize{name: "neck depth", a: Point{nhi.X, nlo.Y}, b: nhi, axis: Vertical, length: micrometres(nhi.Y - nlo.Y)})
	}
}

// bounds are the ends of all points across and up; of none the first is the greater.
func bounds(ps []Point) (lo, hi Point) {
	lo, hi = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, p := range ps {
		lo, hi = Point{min(lo.X, p.X), min(lo.Y, p.Y)}, Point{max(hi.X, p.X), max(hi.Y, p.Y)}
	}
	return lo, hi
}

func turnOf(dir, at, z Point) float64 {
	if dir == (Point{}) {
		return 0
	}
	bx, by := z.X-at.X, z.Y-at.Y
	return math.Atan2(dir.X*by-dir.Y*bx, dir.X*bx+dir.Y*by)
}

// cell is one motif, anticlockwise; row 0 is the top one. l and r are the left and
// right half of a hexagon, / and \ the half of a square below that diagonal.
func (s *Motifs) cell(r, c, rows int, pitch float64, what byte) []Point {
	y := float64(rows-1-r) * pitch
	x := float64(c) * pitch
	switch s.Shape {
	case Triangle:
		// Upright and hanging equilateral triangles in turn, of side pitch.
		h := pitch * math.Sqrt(3) / 2
		x, y := float64(c)*pitch/2, float64(rows-1-r)*h
		if (r+c)%2 == 0 {
			return []Point{{x, y}, {x + pitch, y}, {x + pitch/2, y + h}}
		}
		return []Point{{x + pitch/2, y}, {x + pitch, y + h}, {x, y + h}}
	case Hexagon, HalfHexagon:
		side := pitch / math.Sqrt(3)
		cx := float64(c)*pitch + pitch/2
		if (rows-1-r)%2 == 1 {
			cx += pitch / 2
		}
		cy := float64(rows-1-r)*side*1.5 + side
		top, bottom := Point{cx, cy + side}, Point{cx, cy - side}
		ru, rd := Point{cx + pitch/2, cy + side/2}, Point{cx + pitch/2, cy - side/2}
		lu, ld := Point{cx - pitch/2, cy + side/2}, Point{cx - pitch/2, cy - side/2}
		switch {
		case what == 'r':
			return []Point{bottom, rd, ru, top}
		case what == 'l' || s.Shape == HalfHexagon:
			return []Point{bottom, top, lu, ld}
		}
		return []Point{bottom, rd, ru, top, lu, ld}
	}
	a, b, cc, d := Point{x, y}, Point{x + pitch, y}, Point{x + pitch, y + pitch}, Point{x, y + pitch}
	switch {
	case what == '/':
		return []Point{a, b, cc}
	case what == '\\' || s.Shape == HalfSquare:
		return []Point{a, b, d}
	}
	return []Point{a, b, cc, d}
}
