package schematic

import (
	"cmp"
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
	k := linking{segs: segs, from: map[exactPoint][]int{}, used: make([]bool, len(segs))}
	for i, s := range segs {
		if k.used[i] = exactly(s.a) == exactly(s.b); !k.used[i] {
			k.from[exactly(s.a)] = append(k.from[exactly(s.a)], i)
		}
	}
	var loops [][]seg
	for i := range segs {
		if !k.used[i] {
			loops = append(loops, k.loop(i))
		}
	}
	return loops
}

// exactPoint is a point as the key of a map.
type exactPoint struct{ xn, xd, yn, yd int64 }

func exactly(p pt) exactPoint {
	xn, xd := p.x.Parts()
	yn, yd := p.y.Parts()
	return exactPoint{xn, xd, yn, yd}
}

// linking is stretches by where they begin, and which of them have been taken.
type linking struct {
	segs []seg
	from map[exactPoint][]int
	used []bool
}

// loop follows the stretches from one of them until it is closed, or nothing goes on.
func (k *linking) loop(first int) []seg {
	var loop []seg
	for at := first; at >= 0; at = k.next(at) {
		k.used[at] = true
		loop = append(loop, k.segs[at])
		if exactly(k.segs[at].b) == exactly(k.segs[first].a) {
			break
		}
	}
	return loop
}

// next is the stretch that goes on from one and turns the most to the left, or -1.
func (k *linking) next(at int) int {
	next, best := -1, math.Inf(-1)
	for _, j := range k.from[exactly(k.segs[at].b)] {
		if k.used[j] {
			continue
		}
		if t := turn(k.segs[at], k.segs[j]); t > best {
			next, best = j, t
		}
	}
	return next
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

// loopsOf are the closed outlines of a canvas as drawn.
func (w *worker) loopsOf(c *canvas) [][]drawn {
	if c.free != nil && len(c.free.loops) > 0 {
		return c.free.loops
	}
	d := w.piece.From
	var loops [][]drawn
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
	return loops
}

// outsideFirst puts the loop of the greatest area first.
func outsideFirst(loops [][]drawn) {
	area := make(map[*drawn]float64, len(loops))
	for i := range loops {
		loops[i] = rotated(loops[i])
		area[&loops[i][0]] = PolygonArea(corners(loops[i]))
	}
	slices.SortStableFunc(loops, func(a, b []drawn) int { return cmp.Compare(area[&b[0]], area[&a[0]]) })
}

// addLines draws the lines of a canvas, those of panels as far as the outline goes on.
func (v *View) addLines(c *canvas, at func(pt) Point, up Point) {
	for _, panel := range []bool{false, true} {
		for _, l := range c.lines {
			a, z, ok := at(l.a), at(l.b), true
			if panel {
				z, ok = exit(v.Outline, a, up)
			}
			if ok && (l.kind == LinePanel) == panel {
				v.Lines = append(v.Lines, Line{l.kind, a, z, l.name})
			}
		}
	}
	for _, l := range c.raisedLines() {
		v.Lines = append(v.Lines, Line{LineBehind, at(l[0]), at(l[1]), ""})
	}
}

// addParts names the panels of a canvas and its parts, each with the height that it has.
func (v *View) addParts(c *canvas, at func(pt) Point, up Point) {
	for _, k := range c.panels {
		if k.name == "" {
			continue
		}
		a, z := at(k.at), at(k.at)
		if out, ok := exit(v.Outline, a, up); ok {
			z = out
		}
		v.Parts = append(v.Parts, PartName{k.name, Point{(a.X + z.X) / 2, (a.Y + z.Y) / 2}, math.Hypot(z.X-a.X, z.Y-a.Y)})
	}
	for _, k := range c.names {
		// In a view that is the part itself the view's name says it.
		if k.name != c.name {
			v.Parts = append(v.Parts, PartName{k.name, at(k.at), k.h.Float()})
		}
	}
}

// view draws one canvas.
func (w *worker) view(c *canvas) {
	m := w.made
	d := w.piece.From
	loops := w.loopsOf(c)
	v := View{Name: c.name, Panel: c.panel}
	c.down = !d.upwards()
	v.Half = slices.ContainsFunc(c.segs, func(s seg) bool { return s.fold })
	outsideFirst(loops)
	for _, l := range loops {
		v.Outline = append(v.Outline, corners(l))
	}
	if c.free != nil {
		v.Disc = c.free.disc && len(c.free.loops) > 0
		v.Lines = append(v.Lines, c.free.lines...)
	}
	index := len(m.Views)
	at := func(p pt) Point { return d.turned(p).point() }
	up := at(pt{units.Num{}, units.Int(1)})
	v.addLines(c, at, up)
	v.Raised = c.raisedBy()
	for _, r := range c.ribs {
		v.Ribs = append(v.Ribs, Hatch{
			Poly: []Point{at(pt{r.l0, r.y0}), at(pt{r.r0, r.y0}), at(pt{r.r1, r.y1}), at(pt{r.l1, r.y1})},
			Dir:  up, Gap: r.gap.Float()})
	}
	v.addParts(c, at, up)
	for _, k := range c.marks {
		v.Marks = append(v.Marks, Marked{What: k.what, At: w.placed(loops, k), Name: k.name})
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

// neck is the level at which a canvas has its upper end as worn: the first, or the last.
func (c *canvas) neck() (l level, up bool) {
	if len(c.levels) == 0 {
		return level{}, false
	}
	l = c.levels[0]
	for _, k := range c.levels {
		if d := k.y.Sub(l.y); c.down && d.Sign() < 0 || !c.down && d.Sign() > 0 {
			l = k
		}
	}
	return l, !c.down
}

// raisedLines are the neck edge of the layer behind, where short rows raise it, or the heel of a sock.
func (c *canvas) raisedLines() [][2]pt {
	n, up := c.neck()
	var out [][2]pt
	y := n.y
	mid, half := n.l.Add(n.r).Half(), n.r.Sub(n.l).Half()
	for _, r := range c.raised {
		if c.heel {
			y = r.at
		}
		top := y.Add(r.high)
		if !up && !c.heel {
			top = y.Sub(r.high)
		}
		f, p := half.Mul(r.foot), half.Mul(r.plateau)
		ps := []pt{{mid.Sub(f), y}, {mid.Sub(p), top}, {mid.Add(p), top}, {mid.Add(f), y}}
		for i := 1; i < len(ps); i++ {
			out = append(out, [2]pt{ps[i-1], ps[i]})
		}
		y = top
	}
	return out
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
