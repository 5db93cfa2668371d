package schematic

import (
	"slices"
	"strings"

	"flatwright/schematic/units"
)

// level notes the width at the end of a section where it says something: it
// changed, or the pattern names it.
func (w *worker) level(c *Common) {
	st := w.cur
	if st == nil || st.ended || st.dirty {
		return
	}
	if c.Width != "" && len(st.blocks) > 1 {
		w.acrossPanels(c.Width)
	}
	for i := range st.blocks {
		b := &st.blocks[i]
		levels := w.canvas(b).levels
		if c.Width == "" && len(levels) > 0 {
			last := levels[len(levels)-1]
			if last.l.Eq(b.x) && last.r.Eq(st.right(b)) && last.part == st.name {
				continue
			}
		}
		name := ""
		if i == 0 && len(st.blocks) == 1 {
			name = c.Width
		}
		w.levelOf(b, name, c.Name, len(levels) == 0, false)
	}
}

func (w *worker) levelOf(b *block, name, label string, start, end bool) {
	st := w.cur
	c := w.canvas(b)
	l := level{y: st.y, l: b.x, r: st.right(b), n: b.count(), uniform: b.uniform(), round: st.round && len(st.blocks) == 1,
		part: st.name, name: name, label: label, start: start, end: end, gauge: b.runs[0].gauge, armhole: isArmhole(b.left) || isArmhole(b.right), top: strings.ToLower(b.left)}
	if w.piece.From == FromRight {
		l.top = strings.ToLower(b.right)
	}
	if st.band > 0 {
		l.band, l.n, l.gauge = true, st.band, st.gauge
	}
	if !l.uniform {
		l.gauge = nil
	}
	l.doubt = w.inDoubt(st)
	l.stretched = l.gauge != nil && l.gauge.Stretched
	if st.dirty {
		l.l, l.r, l.n = st.topL, st.topR, st.topCount(c)
	}
	c.levels = append(c.levels, l)
}

func isArmhole(edge string) bool { return strings.EqualFold(edge, "armhole") }

// span is a level or upright stretch of a view that has a name.
type span struct {
	name    string
	half    bool // the name is told as half of itself
	part    string
	lo, hi  pt // ends as drawn
	axis    Axis
	length  units.Num
	count   int
	of      string
	gauge   *Gauge
	around  bool
	main    bool
	side    string
	stretch bool
	rank    int  // which of several measurements that say the same is shown: the least
	lasts   bool // a width that goes on to the end of its part
	given   bool // named by the pattern
	doubt   bool // it follows from an error
}

// Ranks of measurements that say the same: the whole length first; the names of the levels
// of a panel or yoke; the trade's names of edges; the names of other levels; the name of an
// edge that is no word of the trade.
const (
	rankWhole = iota
	rankPanel
	rankEdge
	rankLevel
	rankNamed
)

// measure derives the measurements of one view by the trade's names.
func (w *worker) measure(c *canvas, loops [][]drawn, view int) {
	m := w.made
	if c.free != nil {
		for _, s := range c.free.sizes {
			m.Measures = append(m.Measures, Measure{ID: m.ID + "." + viewID(c.name) + ID(s.name), Name: s.name, View: view, A: s.a, B: s.b,
				Axis: s.axis, Length: s.length, Count: s.count, Of: s.of, Gauge: s.gauge, Main: true, Doubt: m.Broken})
		}
		return
	}
	var all []span
	all = append(all, w.widths(c)...)
	all = append(all, w.heights(c, loops)...)
	all = append(all, w.named(c, loops)...)
	all = append(all, w.slitSpans(c)...)
	all = append(all, centreToCuff(all)...)
	for _, s := range all {
		if s.length.Sign() <= 0 {
			continue
		}
		id := m.ID + "." + viewID(c.name)
		if s.part != "" && ID(s.part)+"." != viewID(c.name) {
			id += ID(s.part) + "."
		}
		id += ID(s.name)
		if s.side != "" {
			id += "." + s.side
		}
		name := s.name
		if s.half { // the ID stays what it is without the word
			name = "half " + name
		}
		m.Measures = append(m.Measures, Measure{ID: id, Name: name, View: view, A: s.lo.point(), B: s.hi.point(), Axis: s.axis,
			Length: s.length, Around: s.around, Count: s.count, Of: s.of, Gauge: s.gauge, Part: s.part, Main: s.main, Stretched: s.stretch,
			Doubt: s.doubt || m.Cut, rank: s.rank, lasts: s.lasts, given: s.given})
	}
}

// centreToCuff is half of a piece that runs from the end of one sleeve to the other.
func centreToCuff(all []span) []span {
	ends := false
	for _, s := range all {
		ends = ends || s.name == "sleeve opening"
	}
	if !ends {
		return nil
	}
	widest := -1
	for i, s := range all {
		if s.axis == Horizontal && s.of == "st" && (widest < 0 || all[widest].length.Less(s.length)) {
			widest = i
		}
	}
	if widest < 0 {
		return nil
	}
	half := all[widest]
	all[widest].name = "cuff to cuff"
	half.name, half.main, half.length, half.count = "centre back to cuff", false, half.length.Half(), 0
	half.hi = pt{half.lo.x.Add(half.hi.x).Half(), half.hi.y}
	return []span{half}
}

func viewID(name string) string {
	if name == "" {
		return ""
	}
	return ID(name) + "."
}

// upwards reports whether a piece begins at its lower edge as drawn, or at its side.
func (d Direction) upwards() bool { return d != FromNeck && d != FromCentre }

func (d Direction) sideways() bool { return d == FromLeft || d == FromRight }

// heights are the length of the view and the depths of its ribs and short rows.
func (w *worker) heights(c *canvas, loops [][]drawn) []span {
	d := w.piece.From
	var out []span
	if len(loops) == 0 || len(loops[0]) == 0 {
		return nil
	}
	all := slices.Concat(loops...)
	height := func(a, b drawn) int { return a.seg.a.y.Cmp(b.seg.a.y) }
	lo, hi := slices.MinFunc(all, height), slices.MaxFunc(all, height)
	total := hi.seg.a.y.Sub(lo.seg.a.y)
	a, b := orderedUp(lo.ex, hi.ex)
	s := span{name: w.lengthName(c), axis: Vertical, lo: a, hi: b, length: total, main: true, rank: rankWhole}
	s.count, s.gauge = rowsIn(total, oneGauge(all))
	s.of = "row"
	if d.sideways() {
		s.axis = Horizontal
		s.lo, s.hi = ordered(lo.ex, hi.ex)
	}
	if c.heel && s.axis == Vertical {
		out = append(out, c.shortSpans(d)...)
	}
	if up := c.raisedBy(); up.Sign() > 0 && s.axis == Vertical {
		front := s
		front.name = "front " + s.name
		out = append(append(out, front), c.shortSpans(d)...)
		s.length, s.hi.y, s.count, s.gauge = s.length.Add(up), s.hi.y.Add(up), 0, nil
	}
	out = append(out, s)
	for _, dep := range c.depths {
		a, b := d.turned(pt{dep.x, dep.y0}), d.turned(pt{dep.x, dep.y1})
		s := span{name: c.depthName(dep), part: dep.part, axis: Vertical, length: dep.y1.Sub(dep.y0), count: dep.count, of: dep.of, main: true, rank: rankEdge,
			gauge: dep.gauge, stretch: dep.stretched}
		s.lo, s.hi = orderedUp(a, b)
		if d.sideways() {
			s.axis = Horizontal
			s.lo, s.hi = ordered(a, b)
		}
		if s.length.Eq(total) {
			s.main = false
		}
		out = append(out, s)
	}
	return out
}

// depthName is what a depth is called: after its section where there are several of its name, such as the ribs of a cuff and of a top.
func (c *canvas) depthName(dep depth) string {
	several := slices.ContainsFunc(c.depths, func(o depth) bool { return o.name == dep.name && o.part == dep.part && o.section != dep.section })
	if several && dep.section != "" {
		return "depth of " + dep.section
	}
	return dep.name
}

// shortSpans are the heights of the runs of short rows.
func (c *canvas) shortSpans(d Direction) []span {
	var out []span
	lines := c.raisedLines()
	for i, r := range c.raised {
		foot, top := d.turned(lines[3*i][0]), d.turned(lines[3*i][1])
		lo, hi := orderedUp(pt{top.x, foot.y}, top)
		out = append(out, span{name: "short rows", part: r.part, axis: Vertical, lo: lo, hi: hi, length: r.high, count: r.rows, of: "row",
			main: true, rank: rankEdge, gauge: r.gauge})
	}
	return out
}

func orderedUp(a, b pt) (pt, pt) {
	if b.y.Less(a.y) {
		return b, a
	}
	return a, b
}

// rowsIn is the rows that make a height in one gauge, or none.
func rowsIn(h units.Num, g *Gauge) (int, *Gauge) {
	if g == nil {
		return 0, nil
	}
	r := h.Div(g.RowHeight())
	if !r.IsInt() {
		return 0, g
	}
	return int(r.Floor()), g
}

// stitchesIn is the stitches that make a width in one gauge: those of its level stretches, unless some of it slants, as a neck
// does whose sides are decreased. 0 where no whole number of them makes it.
func stitchesIn(wide units.Num, level int, g *Gauge) int {
	if g == nil || g.StitchWidth().Times(level).Eq(wide) {
		return level
	}
	n := wide.Div(g.StitchWidth())
	if !n.IsInt() {
		return 0
	}
	return int(n.Floor())
}

// oneGauge is the gauge of all rows along the stretches, or nil if there are several.
func oneGauge(l []drawn) *Gauge {
	var g *Gauge
	for _, s := range l {
		if s.seg.gauge == nil {
			continue
		}
		if g != nil && g != s.seg.gauge || s.seg.rows == 0 {
			return nil
		}
		g = s.seg.gauge
	}
	return g
}

func (w *worker) lengthName(c *canvas) string {
	switch kind, sideways := w.made.Kind, w.piece.From.sideways(); {
	case kind == KindBand && (sideways || w.lengthwise(c)):
		return "length of band"
	case sideways:
		return "width from side to side"
	case kind == KindBand:
		return "depth of band"
	case kind == KindYoke && !c.panel && c.name != "" && w.hasPanels():
		return "depth of " + c.name
	case kind == KindYoke:
		return "yoke depth"
	case kind == KindHat && c.panel:
		return "crown depth"
	case kind == KindHat && (c.name == "sides" || w.hasPanels()):
		return "depth of sides"
	case kind == KindHat:
		return "hat depth"
	case c.panel && w.raglan():
		return "raglan depth"
	case c.panel && kind == KindShawl:
		return "height of the rows" // the depth is measured from wing to wing
	case !c.panel && kind == KindBody && w.hasPanels() && w.raglan():
		return "length to underarm" // its yoke is drawn in panels, with a depth of their own
	default:
		return orElse(tradeNames[kind].length, "length")
	}
}

// raglan reports whether the marked lines are raglan lines, between body and sleeves.
func (w *worker) raglan() bool {
	if w.made.Kind == KindYoke {
		return true
	}
	for _, v := range w.views {
		if strings.Contains(strings.ToLower(v.name), "sleeve") {
			return true
		}
		for _, s := range v.segs {
			if strings.Contains(strings.ToLower(s.name), "raglan") {
				return true
			}
		}
	}
	return false
}
