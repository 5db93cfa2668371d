package schematic

import (
	"math"
	"slices"
	"sort"

	"flatwright/schematic/units"
)

func sortStrings(s []string) { sort.Strings(s) }

// drawn is a stretch of outline in the coordinates of the drawing.
type drawn struct {
	a, b   Point
	ex, ez pt // the exact ends as drawn; zero for a freeform
	exact  bool
	seg    seg
	left   bool
	right  bool
}

// linked joins a canvas' stretches to closed loops, the fabric to their left.
func linked(segs []seg) [][]seg {
	type key struct{ xn, xd, yn, yd int64 }
	k := func(p pt) key {
		xn, xd := p.x.Parts()
		yn, yd := p.y.Parts()
		return key{xn, xd, yn, yd}
	}
	from := map[key][]int{}
	for i, s := range segs {
		if k(s.a) != k(s.b) {
			from[k(s.a)] = append(from[k(s.a)], i)
		}
	}
	used := make([]bool, len(segs))
	var loops [][]seg
	for i, s := range segs {
		if used[i] || k(s.a) == k(s.b) {
			continue
		}
		var loop []seg
		at := i
		for {
			used[at] = true
			loop = append(loop, segs[at])
			if k(segs[at].b) == k(segs[i].a) {
				break
			}
			next, best := -1, math.Inf(-1)
			for _, j := range from[k(segs[at].b)] {
				if used[j] {
					continue
				}
				if t := turn(segs[at], segs[j]); t > best {
					next, best = j, t
				}
			}
			if next < 0 {
				break
			}
			at = next
		}
		loops = append(loops, loop)
	}
	return loops
}

// turn is the angle by which b leaves to the left of a; straight back is the last choice.
func turn(a, b seg) float64 {
	ax, ay := a.b.x.Sub(a.a.x).Float(), a.b.y.Sub(a.a.y).Float()
	bx, by := b.b.x.Sub(b.a.x).Float(), b.b.y.Sub(b.a.y).Float()
	t := math.Atan2(float64(ax*by)-float64(ay*bx), float64(ax*bx)+float64(ay*by))
	if math.Abs(t) > math.Pi-1e-9 {
		return -math.Pi
	}
	return t
}

// turned is an exact point as drawn: the way up in which the piece is worn.
func (d Direction) turned(p pt) pt {
	switch d {
	case FromNeck, FromCentre:
		return pt{p.x.Neg(), p.y.Neg()}
	case FromLeft:
		return pt{p.y, p.x.Neg()}
	case FromRight:
		return pt{p.y.Neg(), p.x}
	}
	return p
}

func (p pt) point() Point { return Point{p.x.Float(), p.y.Float()} }

// finish turns what was worked into views, edges and measurements.
func (w *worker) finish() {
	m := w.made
	for _, c := range w.views {
		c.settleDisc(w)
	}
	for _, c := range w.views {
		if c.dead || (len(c.segs) == 0 && (c.free == nil || len(c.free.loops) == 0)) {
			continue
		}
		w.view(c)
	}
	for _, name := range sortedKeys(w.areas) {
		a := w.areas[name]
		m.Areas = append(m.Areas, GaugeArea{name, a})
		m.Area = m.Area.Add(a)
	}
	for _, s := range m.Steps {
		m.Rows = max(m.Rows, s.FirstRow+s.Rows-1)
	}
	for _, s := range w.wholes {
		s.ID = m.ID + "." + ID(s.Name)
		m.Measures = append(m.Measures, s)
	}
	m.settleMeasures()
}

// view draws one canvas.
func (w *worker) view(c *canvas) {
	m := w.made
	d := w.piece.From
	var loops [][]drawn
	if c.free != nil && len(c.free.loops) > 0 {
		loops = c.free.loops
	} else {
		for _, l := range linked(c.segs) {
			var out []drawn
			for _, s := range l {
				a, b := d.turned(s.a), d.turned(s.b)
				dr := drawn{a: a.point(), b: b.point(), ex: a, ez: b, exact: true, seg: s}
				dr.left, dr.right = s.side == segLeft, s.side == segRight
				if !d.upwards() {
					dr.left, dr.right = dr.right, dr.left
				}
				out = append(out, dr)
			}
			loops = append(loops, out)
		}
	}
	v := View{Name: c.name, Panel: c.panel}
	for _, s := range c.segs {
		v.Half = v.Half || s.fold
	}
	for i := range loops {
		loops[i] = rotated(loops[i])
		v.Outline = append(v.Outline, corners(loops[i]))
	}
	// The outside first: the loop of the greatest area.
	order := make([]int, len(loops))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := PolygonArea(v.Outline[a]), PolygonArea(v.Outline[b])
		switch {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	sortedLoops := make([][]drawn, len(loops))
	outs := make([][]Point, len(loops))
	for i, j := range order {
		sortedLoops[i], outs[i] = loops[j], v.Outline[j]
	}
	loops, v.Outline = sortedLoops, outs
	if c.free != nil {
		v.Disc = c.free.disc && len(c.free.loops) > 0
		v.Lines = append(v.Lines, c.free.lines...)
	}
	index := len(m.Views)
	at := func(p pt) Point { return d.turned(p).point() }
	for _, l := range c.lines {
		if l.kind == LinePanel {
			continue
		}
		v.Lines = append(v.Lines, Line{l.kind, at(l.a), at(l.b), l.name})
	}
	up := at(pt{units.Num{}, units.Int(1)})
	for _, l := range c.lines {
		if l.kind != LinePanel {
			continue
		}
		a := at(l.a)
		if z, ok := exit(v.Outline, a, up); ok {
			v.Lines = append(v.Lines, Line{LinePanel, a, z, l.name})
		}
	}
	for _, r := range c.ribs {
		v.Ribs = append(v.Ribs, Hatch{
			Poly: []Point{at(pt{r.l0, r.y0}), at(pt{r.r0, r.y0}), at(pt{r.r1, r.y1}), at(pt{r.l1, r.y1})},
			Dir:  up, Gap: r.gap.Float()})
	}
	for _, k := range c.panels {
		if a, z := at(k.at), at(k.at); k.name != "" {
			if out, ok := exit(v.Outline, a, up); ok {
				z = out
			}
			v.Parts = append(v.Parts, PartName{k.name, Point{(a.X + z.X) / 2, (a.Y + z.Y) / 2}, math.Hypot(z.X-a.X, z.Y-a.Y)})
		}
	}
	for _, k := range c.names {
		// In a view that is the part itself the view's name says it.
		if k.name != c.name {
			v.Parts = append(v.Parts, PartName{k.name, at(k.at), k.h.Float()})
		}
	}
	for _, k := range c.marks {
		v.Marks = append(v.Marks, Marked{What: k.what, At: w.placed(c, loops, k), Name: k.name})
	}
	w.centreLine(&v)
	if !v.Disc && w.piece.Motifs == nil && len(v.Outline) > 0 {
		v.Arrow = up
		v.ArrowAt = inside(v.Outline, up)
	}
	for _, l := range loops {
		v.Points = append(v.Points, pointsOf(l)...)
	}
	m.Views = append(m.Views, v)
	for _, l := range loops {
		m.Edges = append(m.Edges, w.edgesOf(l, index, c.name)...)
	}
	for _, x := range c.extra {
		x.edge.View, x.edge.Path = index, []Point{at(x.a), at(x.b)}
		m.Edges = append(m.Edges, x.edge)
	}
	w.measure(c, loops, index)
}

// rotated begins a loop where an edge begins, so that no edge is cut in two.
func rotated(l []drawn) []drawn { return beginning(l, sameEdge) }

// beginning begins a loop where two of its stretches are not the same.
func beginning(l []drawn, same func(a, b drawn) bool) []drawn {
	for i := range l {
		prev := l[(i+len(l)-1)%len(l)]
		if !same(prev, l[i]) {
			return append(append([]drawn(nil), l[i:]...), l[:i]...)
		}
	}
	return l
}

func sameEdge(a, b drawn) bool {
	return a.seg.name == b.seg.name && a.seg.also == b.seg.also && a.left == b.left && a.right == b.right && a.seg.fold == b.seg.fold
}

// corners are the points of a loop where it turns. Collinear stretches are exact,
// so nothing is taken for straight by a tolerance.
func corners(l []drawn) []Point {
	var out []Point
	for i := range l {
		prev := l[(i+len(l)-1)%len(l)]
		if prev.exact && l[i].exact {
			dx1, dy1 := prev.ez.x.Sub(prev.ex.x), prev.ez.y.Sub(prev.ex.y)
			dx2, dy2 := l[i].ez.x.Sub(l[i].ex.x), l[i].ez.y.Sub(l[i].ex.y)
			if dx1.Mul(dy2).Eq(dy1.Mul(dx2)) && dx1.Mul(dx2).Add(dy1.Mul(dy2)).Sign() > 0 {
				continue
			}
		}
		out = append(out, l[i].a)
	}
	return out
}

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

// placed is where a mark lies: in from the edge at its height, if it is on one.
func (w *worker) placed(c *canvas, loops [][]drawn, k mark) Point {
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
			if s.seg.side != k.side {
				continue
			}
			y0, y1 := s.seg.a.y.Float(), s.seg.b.y.Float()
			if math.Min(y0, y1) > y+1e-9 || math.Max(y0, y1) < y-1e-9 || y0 == y1 {
				continue
			}
			x := s.seg.a.x.Float() + (s.seg.b.x.Float()-s.seg.a.x.Float())*(y-y0)/(y1-y0)
			if !found || sign*(x-best) < 0 {
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
	if !w.piece.Centre && !w.piece.FoldAt || len(v.Outline) == 0 {
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
		e := &out[n-1]
		if s.seg.part != "" && !slices.Contains(e.Parts, s.seg.part) {
			e.Parts = append(e.Parts, s.seg.part)
		}
		if s.seg.also != "" && !slices.Contains(e.Parts, s.seg.also) {
			e.Parts = append(e.Parts, s.seg.also)
		}
		e.Path = append(e.Path, s.b)
		e.Doubt = e.Doubt || s.seg.doubt || w.made.Cut
		if s.seg.step {
			continue
		}
		l := lengthOf(s)
		if s.seg.both {
			l = l.Times(2)
		}
		e.Length = e.Length.Add(l)
		e.Stitches += s.seg.sts
		e.Rows += s.seg.rows
	}
	// A level edge wholly to one side of the piece is its left or right one.
	for i := range out {
		if e := &out[i]; !e.Left && !e.Right {
			e.Left, e.Right = sideOf(e.Path, l)
		}
	}
	return out
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
