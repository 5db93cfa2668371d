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
		if i == 0 {
			name = c.Width
		}
		w.levelOf(b, name, c.Name, len(levels) == 0, false)
	}
}

func (w *worker) levelOf(b *block, name, label string, start, end bool) {
	st := w.cur
	c := w.canvas(b)
	l := level{y: st.y, l: b.x, r: st.right(b), n: b.count(), uniform: b.uniform(), round: st.round && len(st.blocks) == 1,
		part: st.name, name: name, label: label, start: start, end: end, gauge: b.runs[0].gauge, edge: b.left}
	if st.band > 0 {
		l.band, l.n, l.gauge = true, st.band, st.gauge
	}
	if !l.uniform {
		l.gauge = nil
	}
	l.stretched = l.gauge != nil && l.gauge.Stretched
	if st.dirty {
		l.l, l.r = st.topL, st.topR
	}
	c.levels = append(c.levels, l)
}

// span is a level or upright stretch of a view that has a name.
type span struct {
	name    string
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
	whole   bool // the whole length of the view
	top     bool // the width at its end
}

// measure derives the measurements of one view by the trade's names.
func (w *worker) measure(c *canvas, loops [][]drawn, view int) {
	m := w.made
	if c.free != nil {
		for _, s := range c.free.sizes {
			m.Measures = append(m.Measures, Measure{ID: m.ID + "." + viewID(c.name) + ID(s.name), Name: s.name, View: view, A: s.a, B: s.b,
				Axis: s.axis, Length: s.length, Count: s.count, Of: s.of, Gauge: s.gauge, Main: true})
		}
		return
	}
	var all []span
	all = append(all, w.widths(c)...)
	all = append(all, w.heights(c, loops)...)
	all = append(all, w.named(loops)...)
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
		m.Measures = append(m.Measures, Measure{ID: id, Name: s.name, View: view, A: s.lo.point(), B: s.hi.point(), Axis: s.axis,
			Length: s.length, Around: s.around, Count: s.count, Of: s.of, Gauge: s.gauge, Part: s.part, Main: s.main, Stretched: s.stretch,
			whole: s.whole, top: s.top})
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

// widths are the measurements along the rows: where the piece begins and ends,
// where it is widest or narrowest, and where the pattern names one.
func (w *worker) widths(c *canvas) []span {
	var out []span
	used := map[string]int{}
	up := w.piece.From.upwards()
	d := w.piece.From
	widest := -1
	for i, l := range c.levels {
		if l.part == "" && (widest < 0 || c.levels[widest].r.Sub(c.levels[widest].l).Less(l.r.Sub(l.l))) {
			widest = i
		}
	}
	for i, l := range c.levels {
		width := l.r.Sub(l.l)
		s := span{part: l.part, axis: Horizontal, length: width, count: l.n, of: "st", gauge: l.gauge, stretch: l.stretched}
		if l.band {
			s.of = "row"
		}
		if l.round {
			s.around, s.length = true, width.Times(2)
		}
		a, b := d.turned(pt{l.l, l.y}), d.turned(pt{l.r, l.y})
		s.lo, s.hi = ordered(a, b)
		if a.x.Eq(b.x) {
			s.axis = Vertical
		}
		s.name, s.main = w.widthName(c, i, widest)
		if l.name == "" && !up && endsAt(c.levels, i) {
			s.main = false // shown where it ends
		}
		if s.name == "" {
			continue
		}
		s.top = l.end && l.name == ""
		key := s.part + "." + s.name
		used[key]++
		if k := used[key]; k > 1 {
			s.name += " " + units.Int(int64(k)).String()
		}
		out = append(out, s)
	}
	return out
}

func ordered(a, b pt) (pt, pt) {
	if b.x.Less(a.x) || b.x.Eq(a.x) && b.y.Less(a.y) {
		return b, a
	}
	return a, b
}

// turning reports whether the strand is narrower, or wider, at level i than at
// the levels of its part before and after it.
func turning(levels []level, i int) bool {
	width := func(j int) units.Num { return levels[j].r.Sub(levels[j].l) }
	prev, next := -1, -1
	for j := i - 1; j >= 0; j-- {
		if levels[j].part == levels[i].part && !width(j).Eq(width(i)) {
			prev = j
			break
		}
	}
	for j := i + 1; j < len(levels); j++ {
		if levels[j].part == levels[i].part && !width(j).Eq(width(i)) {
			next = j
			break
		}
	}
	if prev < 0 || next < 0 {
		return true
	}
	return width(i).Less(width(prev)) == width(i).Less(width(next))
}

// lastArmhole reports whether level i is the width that the armhole shaping leaves.
func lastArmhole(levels []level, i int) bool {
	if levels[i].edge != "armhole" {
		return false
	}
	for _, k := range levels[i+1:] {
		if k.part == levels[i].part && k.edge == "armhole" {
			return false
		}
	}
	return true
}

// endsAt reports whether the part of level i ends as wide as it is there.
func endsAt(levels []level, i int) bool {
	for _, k := range levels[i+1:] {
		if k.end && k.part == levels[i].part && k.l.Eq(levels[i].l) && k.r.Eq(levels[i].r) {
			return true
		}
	}
	return false
}

// widthName is the trade's name of the width at level i and whether the drawing
// shows it; no name for a width that says nothing new.
func (w *worker) widthName(c *canvas, i, widest int) (string, bool) {
	l := c.levels[i]
	up := w.piece.From.upwards()
	for j := range i {
		if k := c.levels[j]; k.part == l.part && k.l.Eq(l.l) && k.r.Eq(l.r) && l.name == "" && (k.y.Eq(l.y) || l.end && up || !l.end && !turning(c.levels, i)) {
			return "", false
		}
	}
	if l.name != "" {
		return l.name, true
	}
	first, last := i == 0, i == len(c.levels)-1 && l.end
	hem, top := first, last
	if !up {
		hem, top = last, first
	}
	kind := w.made.Kind
	if l.part != "" {
		// The width of a part where it begins follows from the division, and where it ends
		// from the edge that it ends in.
		if l.start || l.end || !turning(c.levels, i) || endsAt(c.levels, i) {
			return "", false
		}
		return "width of " + l.part + above(c, i, up), true
	}
	switch {
	case c.name != "" && len(w.views) > 1 && (kind == KindYoke || w.lines):
		switch {
		case hem:
			return "width at base", true
		case top:
			return "width at neck edge", true
		}
	case kind == KindSleeve:
		switch {
		case hem:
			return "cuff", true
		case i == widest:
			return "upper arm", true
		case top:
			return "width at top", true
		}
	case kind == KindHat:
		switch {
		case hem:
			return "brim", true
		case i == widest:
			return "width around", true
		case top:
			return "width at crown", false
		}
	case kind == KindYoke:
		switch {
		case hem:
			return "base of yoke", true
		case top:
			return "neck edge", true
		}
	case kind == KindBand:
		switch {
		case first:
			return "length of band", true
		case last:
			return "length at outer edge", turning(c.levels, i)
		}
	}
	switch {
	case hem && kind == KindPiece:
		return "width at lower edge", true
	case top && kind == KindPiece:
		return "width at upper edge", true
	case hem:
		return "width at hem", true
	case i == widest:
		if kind == KindBody || kind == KindBack || kind == KindFront {
			return "width at underarm", true
		}
		return "width", true
	case top:
		return "width at top", true
	}
	if !turning(c.levels, i) && !lastArmhole(c.levels, i) {
		if l.label != "" {
			return "width after " + l.label, false
		}
		return "", false
	}
	switch kind {
	case KindBack:
		return "cross back", true
	case KindFront:
		return "cross front", true
	case KindSleeve:
		return "width above cuff", true
	}
	return "width above" + above(c, i, up), true
}

// above names a width by what it follows.
func above(c *canvas, i int, up bool) string {
	if l := c.levels[i].label; l != "" {
		return " " + l
	}
	if i > 0 && c.levels[i-1].band {
		return " rib"
	}
	return ""
}

// heights are the length of the view and the depths of its ribs and short rows.
func (w *worker) heights(c *canvas, loops [][]drawn) []span {
	d := w.piece.From
	var out []span
	if len(loops) == 0 || len(loops[0]) == 0 {
		return nil
	}
	lo, hi := loops[0][0], loops[0][0]
	for _, l := range loops {
		for _, s := range l {
			if s.seg.a.y.Less(lo.seg.a.y) {
				lo = s
			}
			if hi.seg.a.y.Less(s.seg.a.y) {
				hi = s
			}
		}
	}
	total := hi.seg.a.y.Sub(lo.seg.a.y)
	a, b := orderedUp(lo.ex, hi.ex)
	s := span{name: w.lengthName(c), axis: Vertical, lo: a, hi: b, length: total, main: true, whole: true}
	s.count, s.gauge = rowsIn(total, oneGauge(slices.Concat(loops...)))
	s.of = "row"
	if d == FromLeft || d == FromRight {
		s.axis = Horizontal
		s.lo, s.hi = ordered(lo.ex, hi.ex)
	}
	out = append(out, s)
	for _, dep := range c.depths {
		a, b := d.turned(pt{dep.x, dep.y0}), d.turned(pt{dep.x, dep.y1})
		s := span{name: dep.name, part: dep.part, axis: Vertical, length: dep.y1.Sub(dep.y0), count: dep.count, of: dep.of, main: true,
			gauge: dep.gauge, stretch: dep.stretched}
		s.lo, s.hi = orderedUp(a, b)
		if d == FromLeft || d == FromRight {
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
	switch w.made.Kind {
	case KindSleeve:
		return "sleeve length"
	case KindYoke:
		return "yoke depth"
	case KindBand:
		return "depth of band"
	case KindHat:
		if c.name == "sides" {
			return "depth of sides"
		}
		return "hat depth"
	}
	if w.piece.From == FromLeft || w.piece.From == FromRight {
		return "width from side to side"
	}
	if w.lines && c.name != "" {
		return "raglan depth"
	}
	return "length"
}

// named are the heights and widths of the edges that have a name of the trade.
func (w *worker) named(loops [][]drawn) []span {
	var out []span
	for _, l := range loops {
		mid := middle(loops)
		n := len(l)
		for i := 0; i < n; {
			j := i + 1
			for j < n && l[j].seg.name == l[i].seg.name && l[j].seg.fold == l[i].seg.fold {
				j++
			}
			if !l[i].seg.fold {
				out = append(out, w.edgeSpans(l[i:j], mid)...)
			}
			i = j
		}
	}
	markTwins(out)
	return out
}

// markTwins shows one of two equal measurements left and right.
func markTwins(out []span) {
	for i := range out {
		for j := range i {
			if out[i].name == out[j].name && out[i].axis == out[j].axis && out[i].length.Eq(out[j].length) && out[j].main {
				out[i].main = false
			}
		}
	}
}

func middle(loops [][]drawn) units.Num {
	lo, hi := loops[0][0].ex.x, loops[0][0].ex.x
	for _, l := range loops {
		for _, s := range l {
			lo, hi = units.Min(lo, s.ex.x), units.Max(hi, s.ex.x)
		}
	}
	return lo.Add(hi).Half()
}

// edgeSpans are height and width of one run of edge of one name.
func (w *worker) edgeSpans(run []drawn, mid units.Num) []span {
	name := strings.ToLower(run[0].seg.name)
	e, ok := edgeWords(name)
	if !ok || w.made.Kind == KindBand {
		return nil
	}
	g := oneGauge(run)
	top, bottom, left, right := run[0].ex, run[0].ex, run[0].ex, run[0].ex
	sts, part := 0, ""
	parts := map[string]bool{}
	for _, s := range run {
		for _, p := range []pt{s.ex, s.ez} {
			if top.y.Less(p.y) {
				top = p
			}
			if p.y.Less(bottom.y) {
				bottom = p
			}
			if p.x.Less(left.x) {
				left = p
			}
			if right.x.Less(p.x) {
				right = p
			}
		}
		if s.ex.y.Eq(s.ez.y) {
			sts += s.seg.sts
		}
		parts[s.seg.part] = true
		part = s.seg.part
	}
	if len(parts) != 1 {
		part = ""
	}
	where := strings.ToLower(part)
	prefix := ""
	switch {
	case w.made.Kind == KindBack || strings.Contains(where, "back"):
		prefix = "back "
	case w.made.Kind == KindFront || strings.Contains(where, "front"):
		prefix = "front "
	}
	side := ""
	switch c := left.x.Add(right.x).Half(); {
	case c.Less(mid):
		side = "left"
	case mid.Less(c):
		side = "right"
	}
	var out []span
	if e.height != "" {
		s := span{name: e.heightName(prefix), part: part, axis: Vertical, lo: bottom, hi: top, length: top.y.Sub(bottom.y), main: true, of: "row", side: side}
		s.count, s.gauge = rowsIn(s.length, g)
		if w.piece.From == FromLeft || w.piece.From == FromRight {
			s.of = "st"
		}
		out = append(out, s)
	}
	if e.width != "" && !run[0].seg.both {
		out = append(out, span{name: e.widthName(prefix), part: part, axis: Horizontal, lo: left, hi: right, length: right.x.Sub(left.x), main: true,
			count: sts, of: "st", gauge: w.gauge(w.piece.Gauge), side: side})
	}
	return out
}

// words of one named edge: what its height and its width are called.
type words struct {
	height, width string
	prefixed      bool // told apart as front and back
}

func (e words) heightName(prefix string) string {
	if e.prefixed {
		return prefix + e.height
	}
	return e.height
}

func (e words) widthName(prefix string) string {
	if e.prefixed && prefix == "front " {
		return prefix + e.width
	}
	return e.width
}

// edgeWords are the trade's names; an edge of another name that the pattern gives
// is measured under it, and one that only the working made is not.
func edgeWords(name string) (words, bool) {
	switch name {
	case "armhole":
		return words{height: "armhole depth"}, true
	case "neck":
		return words{height: "neck depth", width: "neck width", prefixed: true}, true
	case "shoulder":
		return words{height: "shoulder slope", width: "shoulder"}, true
	case "side":
		return words{height: "side length"}, true
	case "cap":
		return words{height: "cap height"}, true
	case "raglan":
		return words{height: "raglan depth"}, true
	case "underarm":
		return words{width: "underarm"}, true
	case "front edge":
		return words{height: "front edge"}, true
	case "sleeve seam":
		return words{height: "length to underarm"}, true
	case "sleeve end":
		return words{height: "sleeve opening", width: "sleeve opening"}, true
	case "", "hem", "cast-on edge", "top", "step", "line", "live edge", "picked-up edge", "base", "gap", "opening", "left over", "added edge",
		"short-row turn", "joined edge", "division", "centre", "gathered edge", "held edge", "base of the panels", "edge of the crown", "edge of the motifs":
		return words{}, false
	}
	return words{height: "height of " + name, width: "width of " + name}, true
}

// hides reports whether another measurement says what s says: the whole length beside an
// edge as long, the edge at the top beside the width there.
func (m *Made) hides(s *Measure) bool {
	for i := range m.Measures {
		o := &m.Measures[i]
		if o == s || o.View != s.View || o.Axis != s.Axis || !o.Main || !o.Length.Eq(s.Length) || o.Around != s.Around {
			continue
		}
		sameUp := s.Axis == Vertical && o.A.Y == s.A.Y && o.B.Y == s.B.Y
		sameAcross := s.Axis == Horizontal && o.A.X == s.A.X && o.B.X == s.B.X
		switch {
		case o.whole && !s.whole && (sameUp || sameAcross):
			return true
		case strings.HasPrefix(s.Name, "width of ") && sameAcross:
			return true
		case s.top && sameAcross && o.A.Y == s.A.Y && !o.top:
			return true
		}
	}
	return false
}

func mirrorID(id string) string {
	switch {
	case strings.HasSuffix(id, ".left"):
		return strings.TrimSuffix(id, ".left") + ".right"
	case strings.HasSuffix(id, ".right"):
		return strings.TrimSuffix(id, ".right") + ".left"
	}
	return id
}

// settleMeasures makes the IDs unique, and shows each dimension once: not one
// that equals the whole length or width beside it.
func (m *Made) settleMeasures() {
	seen := map[string]int{}
	type shown struct {
		view int
		axis Axis
		a, b Point
	}
	place := map[shown]bool{}
	var kept []Measure
	for i := range m.Measures {
		s := &m.Measures[i]
		seen[s.ID]++
		if n := seen[s.ID]; n > 1 {
			s.ID += "." + units.Int(int64(n)).String()
		}
		k := shown{s.View, s.Axis, s.A, s.B}
		if s.Axis == Vertical {
			k.a.X, k.b.X = 0, 0
		} else if s.Axis == Horizontal {
			k.a.Y, k.b.Y = s.A.Y, s.A.Y
		}
		if m.hides(s) {
			s.Main, s.Same = false, true
		}
		if made := strings.HasPrefix(s.Name, "width of ") || strings.HasPrefix(s.Name, "height of "); place[k] && made {
			continue
		}
		if s.Main {
			place[k] = true
		}
		kept = append(kept, *s)
	}
	m.Measures = kept
}
