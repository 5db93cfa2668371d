package schematic

import (
	"fmt"
	"math"
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// freeform is a drawing from its own points: a disc, a mitred piece, a grid of
// motifs.
type freeform struct {
	disc   bool
	rounds []roundPoint // of a piece from the centre
	loops  [][]drawn
	lines  []Line
	sizes  []freeSize
	doubt  bool // of rounds that follow from an error
}

// roundPoint is the count after so many rounds from the centre.
type roundPoint struct{ row, n int }

// freeSize is a measurement of a freeform.
type freeSize struct {
	name   string
	a, b   Point
	axis   Axis
	length units.Num
	count  int
	of     string
	gauge  *Gauge
}

func (f *freeform) note(row, n int) { f.rounds = append(f.rounds, roundPoint{row, n}) }

// flatGrowth is the share of 2π × row height / stitch width that a round must grow
// by to lie flat rather than cup: below it the crown is drawn as a dome.
const flatGrowth = 0.75

// frilled is from how many times that growth on rounds are said to frill.
const frilled = 1.3

// settleDisc splits a piece from the centre into the disc that its growing rounds make and the
// tube that follows; a circle grows each round by 2π × row height / stitch
// width (geometry of the circle).
func (c *canvas) settleDisc(w *worker) {
	f := c.free
	if f == nil || !f.disc || c.dead {
		return
	}
	g := c.first.gauge
	if len(c.levels) > 0 && c.levels[0].gauge != nil {
		g = c.levels[0].gauge
	}
	h := g.RowHeight()
	need := flatGrowth * 2 * math.Pi * h.Float() / g.StitchWidth().Float()
	flat := 0
	last := roundPoint{}
	for i, p := range f.rounds {
		if i > 0 && p.row > last.row {
			grows := float64(p.n-last.n) / float64(p.row-last.row)
			if last.n > 0 && grows < need {
				break
			}
			if frill := need / flatGrowth * frilled; last.n > 0 && grows > frill && !f.doubt {
				w.find("arithmetic/flat", finding.Note, w.piece.Pos, fmt.Sprintf("rounds that grow by %.4g stitches do not lie flat at this gauge: they frill", grows),
					fmt.Sprintf("%.4g more in each round", grows), fmt.Sprintf("about %.1f more: 2π × row height ÷ stitch width", need/flatGrowth), "increase less in each round, or mean it")
			}
			flat = p.row
		}
		last = p
	}
	if flat == 0 {
		c.free = nil
		return
	}
	r := h.Times(flat)
	top := c.topY()
	disc := &canvas{name: "crown", free: f, first: c.first}
	if !r.Less(top) {
		disc.name = ""
	}
	rf := r.Float()
	const corners = 96
	var loop []drawn
	for i := range corners {
		a, b := 2*math.Pi*float64(i)/corners, 2*math.Pi*float64(i+1)/corners
		loop = append(loop, drawn{a: Point{rf * math.Cos(a), rf * math.Sin(a)}, b: Point{rf * math.Cos(b), rf * math.Sin(b)}, seg: seg{name: "edge of the crown"}})
	}
	f.loops = [][]drawn{loop}
	f.sizes = append(f.sizes, freeSize{name: "diameter", a: Point{-rf, 0}, b: Point{rf, 0}, axis: Horizontal, length: r.Times(2), count: flat, of: "row", gauge: g})
	c.free = nil
	if !r.Less(top) {
		// All of it is the disc.
		c.dead = true
		w.views = append(w.views, disc)
		return
	}
	var kept []seg
	var lo, hi units.Num
	for _, s := range c.segs {
		if !s.a.y.Less(r) && !s.b.y.Less(r) && !(s.a.y.Eq(r) && s.b.y.Eq(r)) {
			kept = append(kept, s)
		}
		for _, p := range []pt{s.a, s.b} {
			if p.y.Eq(r) {
				lo, hi = units.Min(lo, p.x), units.Max(hi, p.x)
			}
		}
	}
	c.segs = append([]seg{{a: pt{lo, r}, b: pt{hi, r}, name: "edge of the crown", both: true, sts: last.n}}, kept...)
	var levels []level
	for _, l := range c.levels {
		if !l.y.Less(r) {
			levels = append(levels, l)
		}
	}
	c.levels = levels
	c.name = "sides"
	w.views = append(w.views, disc)
}

func (c *canvas) topY() units.Num {
	var t units.Num
	for _, s := range c.segs {
		t = units.Max(t, units.Max(s.a.y, s.b.y))
	}
	return t
}

func (s *Mitre) work(w *worker) {
	st := w.cur
	if len(st.blocks) > 1 || st.row > 0 || st.round || st.band > 0 {
		w.find("arithmetic/mitre", finding.Error, s.Pos, "a mitred piece is bent from its first row on", "", "",
			"begin the piece with a cast on and then the mitre, flat")
		w.doubtful()
		return
	}
	b := &st.blocks[0]
	n := b.count()
	every, times, by := max(1, s.Every.Int(w.i, 2)), s.Times.Int(w.i, 0), s.By.Int(w.i, 0)
	if !s.Increase && by*times >= n {
		times = max(0, (n-1)/max(1, by))
		w.findCount("arithmetic/impossible", finding.Warning, s.Pos, fmt.Sprintf("the mitre takes away more than the %d stitches there are", n),
			fmt.Sprintf("%d stitches", n), "at least one left", fmt.Sprintf("shape %d times", times))
	}
	rows := every * times
	if rows == 0 {
		return
	}
	g := st.gauge
	sw, h := g.StitchWidth().Float(), g.RowHeight().Float()
	change := by * times
	if !s.Increase {
		change = -change
	}
	arm := float64(n) / 2 * sw
	end := arm + float64(change)/2*sw
	height := float64(rows) * h
	shift := arm - end
	alpha := math.Atan2(shift, height)
	want := s.Angle.Float() * math.Pi / 180 / 2
	if off := math.Abs(math.Tan(math.Abs(alpha))-math.Tan(want)) * height; off > sw/2 && want < 1.5 {
		fit := math.Tan(want) * height / sw * 2
		w.find("arithmetic/mitre", finding.Warning, s.Pos,
			fmt.Sprintf("at this gauge the mitre bends by %.0f degrees, not %s", math.Abs(alpha)*360/math.Pi, s.Angle),
			fmt.Sprintf("%d stitches over %d rows", by*times, rows), fmt.Sprintf("%.0f stitches over %d rows", fit, rows),
			"shape more or less often, or change the angle")
	}
	turnBy := func(x, y, a float64) Point {
		return Point{x*math.Cos(a) - y*math.Sin(a), x*math.Sin(a) + y*math.Cos(a)}
	}
	r0, r1, r2, r3 := Point{}, turnBy(arm, 0, alpha), turnBy(arm, height, alpha), turnBy(shift, height, alpha)
	mir := func(p Point) Point { return Point{-p.X, p.Y} }
	c := &canvas{first: st, free: &freeform{}}
	edge := "cast-on edge"
	if old := w.canvas(b); len(old.segs) > 0 {
		edge = old.segs[0].name
	}
	half := n / 2
	endHalf := (n + change) / 2
	mk := func(a, z Point, name string, left, right bool, sts, rows int) drawn {
		return drawn{a: a, b: z, left: left, right: right, seg: seg{name: name, sts: sts, rows: rows, pos: s.Pos}}
	}
	loop := []drawn{mk(r0, r1, edge, false, false, n-half, 0), mk(r1, r2, b.right, false, true, 0, rows)}
	if end > 1e-9 {
		loop = append(loop, mk(r2, r3, "top", false, false, n+change-endHalf, 0), mk(mir(r3), mir(r2), "top", false, false, endHalf, 0))
	}
	loop = append(loop, mk(mir(r2), mir(r1), b.left, true, false, 0, rows), mk(mir(r1), r0, edge, false, false, half, 0))
	c.free.loops = [][]drawn{loop}
	c.free.lines = []Line{{Kind: LinePanel, A: r0, B: r3, Name: "mitre line"}}
	c.free.sizes = []freeSize{
		{name: "arm of the mitre", a: r0, b: r1, axis: Slanted, length: g.StitchWidth().Mul(units.Frac(int64(n), 2)), count: half, of: "st", gauge: g},
		{name: "depth of the mitre", a: r1, b: r2, axis: Slanted, length: g.RowHeight().Times(rows), count: rows, of: "row", gauge: g},
	}
	mean := units.Int(int64(2*n + change)).Half().Times(rows)
	w.areas[g.Name] = w.areas[g.Name].Add(mean.Mul(g.StitchWidth()).Mul(g.RowHeight()))
	w.canvas(b).dead = true
	w.views = append(w.views, c)
	b.view = len(w.views) - 1
	b.runs[0].n = n + change
	b.x = units.Num{}
	st.y = st.y.Add(g.RowHeight().Times(rows))
	st.row += rows
	if rows%2 == 1 {
		st.rs = !st.rs
	}
}

// motifs draws a grid of motifs: the outline is what no two of them share.
func (w *worker) motifs(s *Motifs) {
	across := s.Across.Vals
	if len(across) == 0 {
		return
	}
	a, _ := s.Across.At(w.i)
	j, _ := s.Joining.At(w.i)
	cols, rows := s.Columns.Int(w.i, 1), s.Rows.Int(w.i, 1)
	filled := func(r, c int) byte {
		if len(s.Filled) == 0 {
			return 'x'
		}
		if r >= len(s.Filled) || c >= len(s.Filled[r]) {
			return '.'
		}
		return s.Filled[r][c]
	}
	if len(s.Filled) > 0 {
		rows, cols = len(s.Filled), 0
		for _, l := range s.Filled {
			cols = max(cols, len(strings.TrimRight(l, ".")))
		}
	}
	pitch := a.Add(j).Float()
	var cells [][]Point
	for r := range rows {
		for c := range cols {
			what := filled(r, c)
			if what == '.' || what == ' ' {
				continue
			}
			cells = append(cells, s.cell(r, c, rows, pitch, what))
		}
	}
	c := &canvas{free: &freeform{}}
	w.views = append(w.views, c)
	if len(cells) == 0 {
		c.dead = true
		w.find("arithmetic/motifs", finding.Error, s.Pos, "the grid has no motif", "", "", "put an x where there is a motif")
		return
	}
	// What two motifs share is a joining, not an edge.
	type key struct{ x, y int64 }
	k := func(p Point) key { return key{int64(math.Round(p.X * 1e4)), int64(math.Round(p.Y * 1e4))} }
	type pair struct{ a, b key }
	seen := map[pair]bool{}
	for _, p := range cells {
		for i := range p {
			seen[pair{k(p[i]), k(p[(i+1)%len(p)])}] = true
		}
	}
	next := map[key][]Point{}
	var starts []Point
	for _, p := range cells {
		for i, q := range p {
			z := p[(i+1)%len(p)]
			if seen[pair{k(z), k(q)}] {
				if k(q).x < k(z).x || k(q).x == k(z).x && k(q).y < k(z).y {
					c.free.lines = append(c.free.lines, Line{Kind: LineCell, A: q, B: z})
				}
				continue
			}
			next[k(q)] = append(next[k(q)], z)
			starts = append(starts, q)
		}
	}
	for _, o := range starts {
		if len(next[k(o)]) == 0 {
			continue
		}
		var loop []drawn
		at := o
		dir := Point{}
		for {
			outs := next[k(at)]
			if len(outs) == 0 {
				break
			}
			best := 0
			for i := range outs {
				if turnOf(dir, at, outs[i]) > turnOf(dir, at, outs[best]) {
					best = i
				}
			}
			z := outs[best]
			next[k(at)] = append(append([]Point(nil), outs[:best]...), outs[best+1:]...)
			loop = append(loop, drawn{a: at, b: z, seg: seg{name: "edge of the motifs", pos: s.Pos}})
			dir = Point{z.X - at.X, z.Y - at.Y}
			at = z
			if k(at) == k(o) {
				break
			}
		}
		c.free.loops = append(c.free.loops, loop)
	}
	lo, hi := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, l := range c.free.loops {
		for _, d := range l {
			lo = Point{math.Min(lo.X, d.a.X), math.Min(lo.Y, d.a.Y)}
			hi = Point{math.Max(hi.X, d.a.X), math.Max(hi.Y, d.a.Y)}
		}
	}
	// The outermost half joinings are not there.
	less := j
	wide, tall := micrometres(hi.X-lo.X).Sub(less), micrometres(hi.Y-lo.Y).Sub(less)
	if s.Shape == Square {
		wide, tall = a.Times(cols).Add(j.Times(cols-1)), a.Times(rows).Add(j.Times(rows-1))
	}
	c.free.sizes = []freeSize{
		{name: "width", a: Point{lo.X, lo.Y}, b: Point{hi.X, lo.Y}, axis: Horizontal, length: wide, count: cols, of: "motif"},
		{name: "length", a: Point{hi.X, lo.Y}, b: Point{hi.X, hi.Y}, axis: Vertical, length: tall, count: rows, of: "motif"},
	}
	t := 0.0
	for _, p := range cells {
		t += PolygonArea(p)
	}
	g := w.gauge(w.piece.Gauge)
	w.areas[g.Name] = w.areas[g.Name].Add(units.Frac(int64(math.Round(t)), 1))
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
