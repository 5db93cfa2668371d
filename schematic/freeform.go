package schematic

import (
	"fmt"
	"math"
	"slices"

	"flatwright/schematic/expr"
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

// flat is the last round up to which rounds lie flat, where each grows by circle stitches in a circle, and the
// stitches of the last one looked at; rounds that frill are told.
func (f *freeform) flat(w *worker, circle float64) (flat, stitches int) {
	last := roundPoint{}
	for i, p := range f.rounds {
		from := last
		last = p
		if i == 0 || p.row <= from.row {
			continue
		}
		grows := float64(p.n-from.n) / float64(p.row-from.row)
		if from.n > 0 && grows < flatGrowth*circle && !f.catchesUp(i, flatGrowth*circle) {
			return flat, from.n
		}
		if from.n > 0 && grows > circle*frilled && !f.doubt {
			w.find("arithmetic/flat", finding.Note, w.piece.Pos, fmt.Sprintf("rounds that grow by %.4g stitches do not lie flat at this gauge: they frill", grows),
				fmt.Sprintf("%.4g more in each round", grows), fmt.Sprintf("about %.1f more: 2π × row height ÷ stitch width", circle), "increase less in each round, unless it is meant to frill")
		}
		flat = p.row
	}
	return flat, last.n
}

// catchesUp reports whether the first rounds, where they grow too little, lie flat with the next, as a plain one before the first increases does.
func (f *freeform) catchesUp(i int, least float64) bool {
	if i > 1 || i+1 >= len(f.rounds) {
		return false
	}
	from, next := f.rounds[i-1], f.rounds[i+1]
	return float64(next.n-from.n) >= least*float64(next.row-from.row)
}

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
	flat, stitches := f.flat(w, 2*math.Pi*h.Float()/g.StitchWidth().Float())
	if flat == 0 {
		c.free = nil
		return
	}
	r := h.Times(flat)
	top := c.topY()
	name := "crown"
	if w.made.Kind == KindBag {
		name = "base"
	}
	disc := &canvas{name: name, free: f, first: c.first}
	if !r.Less(top) {
		disc.name = ""
	}
	rf := r.Float()
	const corners = 96
	var loop []drawn
	for i := range corners {
		a, b := 2*math.Pi*float64(i)/corners, 2*math.Pi*float64(i+1)/corners
		loop = append(loop, drawn{a: Point{rf * math.Cos(a), rf * math.Sin(a)}, b: Point{rf * math.Cos(b), rf * math.Sin(b)}, seg: seg{name: "edge of the " + name}})
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
	c.cutBelow(r, seg{name: "edge of the " + name, both: true, sts: stitches})
	c.name = "sides"
	w.views = append(w.views, disc)
}

// cutBelow takes out what is drawn below a height; the cut is an edge as s says.
func (c *canvas) cutBelow(y units.Num, s seg) {
	s.a, s.b = pt{y: y}, pt{y: y}
	for _, k := range c.segs {
		for _, p := range []pt{k.a, k.b} {
			if p.y.Eq(y) {
				s.a.x, s.b.x = units.Min(s.a.x, p.x), units.Max(s.b.x, p.x)
			}
		}
	}
	above := slices.DeleteFunc(c.segs, func(k seg) bool {
		return k.a.y.Less(y) || k.b.y.Less(y) || k.a.y.Eq(y) && k.b.y.Eq(y)
	})
	c.segs = append([]seg{s}, above...)
	c.levels = slices.DeleteFunc(c.levels, func(l level) bool { return l.y.Less(y) })
}

func (c *canvas) topY() units.Num {
	var t units.Num
	for _, s := range c.segs {
		t = units.Max(t, units.Max(s.a.y, s.b.y))
	}
	return t
}

// Mitre bends the row at its middle by Angle degrees while it is decreased or
// increased there By stitches in all on every Every-th row, Times times.
type Mitre struct {
	Common
	Angle    units.Num
	Increase bool
	By       expr.Graded
	Every    expr.Graded
	Times    expr.Graded
}

func (s *Mitre) Traits() Traits {
	return Traits{Words: "mitre", Free: true, Shapings: []Shaping{{Increase: s.Increase, By: s.By, At: Middle, Every: s.Every, Times: s.Times}}}
}

func (s *Mitre) load(i int, _ func(Amount) int64) Load {
	return again(s.Pos, s.By, s.Every, s.Times, i)
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
	c.name = "mitre"
	w.views = append(w.views, c)
	b.view = len(w.views) - 1
	b.runs[0].n = n + change
	b.x = units.Num{}
	st.y = st.y.Add(g.RowHeight().Times(rows))
	st.row += rows
	if rows%2 == 1 {
		st.rs = !st.rs
	}
	switch next := w.next.(type) {
	case nil, *Gather:
	case *BindOff:
		if !next.All {
			w.arms(endHalf, n+change-endHalf)
		}
	default:
		w.arms(endHalf, n+change-endHalf)
	}
	if len(st.blocks) == 1 {
		c.name = ""
	}
}

// arms goes on from a mitre with its two arms: the row is bent between them, so that each is drawn by itself.
func (w *worker) arms(left, right int) {
	st := w.cur
	whole := st.blocks[0]
	whole.runs = []run{{name: "left arm", n: left, gauge: st.gauge}, {name: "right arm", n: right, gauge: st.gauge}}
	w.apart(whole)
}
