package place

import (
	"math"
	"slices"

	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// sided is a measurement with the side that it is measured on, unless it finds a
// place within the view.
type sided struct {
	it      *item
	owner   int
	a, b    pt
	axis    schematic.Axis
	side    side
	crosses int
	placed  bool
}

// The sides on which a measurement may be taken, the preferred one first.
var (
	upright = []side{top, bottom}
	level   = []side{right, left}
	around  = []side{right, left, top, bottom}
)

// assign gives every measurement the side on which its extension lines cross the
// fewest edges, then the nearer one, then the emptier one, and keeps its ways free.
func (d *drawn) assign() []*sided {
	all := make([]sided, len(d.v.items))
	list := make([]*sided, len(all))
	var count [4]int
	var one [2]pt
	for i, it := range d.v.items {
		s := &all[i]
		*s = sided{it: it, owner: i, a: d.on(it.m.A), b: d.on(it.m.B), axis: it.m.Axis}
		choices := upright
		switch {
		case s.axis == schematic.Slanted && math.Abs(s.a.Y-s.b.Y) < 0.2:
			s.axis = schematic.Horizontal
		case s.axis == schematic.Slanted && math.Abs(s.a.X-s.b.X) < 0.2:
			s.axis = schematic.Vertical
		}
		ends := append(one[:0], s.a, s.b)
		reach := max(d.w, d.h, 1)
		switch s.axis {
		case schematic.Horizontal:
			if d.v.worn { // with sleeves it is much wider than high
				reach = max(d.h, 1)
			}
		case schematic.Vertical:
			choices = level
		case schematic.Slanted:
			choices = around
			ends = append(one[:0], mid(s.a, s.b))
		}
		best := math.Inf(1)
		for _, c := range choices {
			n, cost := d.cost(s, c, ends, reach)
			cost += float64(count[c])
			if cost < best-1e-9 {
				best, s.side, s.crosses = cost, c, n
			}
		}
		count[s.side]++
		for _, p := range ends {
			d.field.rays = append(d.field.rays, ray{p, s.side, i})
		}
		list[i] = s
	}
	return list
}

// cost is how often a measurement on a side crosses the outline, and what that and the way to the side count.
func (d *drawn) cost(s *sided, on side, ends []pt, reach float64) (n int, cost float64) {
	away := 0.0
	for _, p := range ends {
		n += crossings(d.shape, p, on)
		away += d.away(p, on) / float64(len(ends))
	}
	cost = float64(n)*1000 + 100*math.Round(away/reach*4)/4
	if on == top && d.v.worn && s.it.m.Around && s.axis == schematic.Horizontal && math.Abs(s.a.X-s.b.X) > 0.6*d.w { // a bust stands below, with the hem
		cost += 100
	}
	return n, cost
}

// away is how far p is from a side of the outline's box.
func (d *drawn) away(p pt, s side) float64 {
	return [...]float64{p.Y, d.h - p.Y, p.X, d.w - p.X}[s]
}

const (
	lineGap   = 0.9 // between a dimension line and the text above it, mm
	overshoot = 1.2 // of an extension line beyond the dimension line
	startGap  = 0.8 // of an extension line from the outline
	leastOpen = 4.0 // shortest dimension line that stands within a view
	mostOver  = 8.0 // how far from its end a line through a view may pass an edge
)

// slanted places what is measured along a slanted edge: a line beside the edge, its
// label above it. What has no room keeps its leader and becomes a letter. None takes one beside its edge before it is last.
func (d *drawn) slanted(list []*sided, last bool) {
	for _, s := range list {
		if s.placed || s.axis != schematic.Slanted {
			continue
		}
		long := dist(s.a, s.b)
		if long < leastOpen {
			continue
		}
		u := mul(sub(s.b, s.a), 1/long)
		u, angle := reading(u)
		up := pt{X: u.Y, Y: -u.X} // above the text
		w := slope{u: u, up: up, angle: angle, long: long}
		outward := 1.0
		if m := mid(s.a, s.b); inside(d.shape, add(m, mul(up, 0.3))) {
			outward = -1
			w.through = inside(d.shape, sub(m, mul(up, 0.3)))
		}
		forms := [][]form{s.it.forms}
		if last || d.o.Labels == Letters || d.o.Labels == Blank {
			forms = append(forms, []form{s.it.letter})
		}
		d.parallel(s, w, forms, outward)
	}
}

// reading turns a direction so that text along it reads from the bottom or, where
// it is steep, from the right like a vertical one. The angle is in degrees.
func reading(u pt) (pt, float64) {
	angle := math.Atan2(-u.Y, u.X) * 180 / math.Pi
	const steep = 70.0
	if angle <= -steep || angle > 180-steep {
		u = mul(u, -1)
		angle = math.Atan2(-u.Y, u.X) * 180 / math.Pi
	}
	return u, angle
}

// slope is the way that a slanted measurement runs: u along it, up from its text's foot to its head.
type slope struct {
	u, up       pt
	angle, long float64
	through     bool // it runs within the view
}

// parallel tries to measure beside the edge, from outward on; what runs through the view, such as an upper arm from its fold to its seam, on
// its very line before that.
func (d *drawn) parallel(s *sided, w slope, forms [][]form, outward float64) {
	if !w.through {
		for _, list := range forms {
			if d.outside(s, w, list, outward) {
				return
			}
		}
		return
	}
	for _, f := range slices.Concat(forms...) {
		if f.w <= w.long-1 && d.alongside(s, w, f, 1, 0) || d.aside(s, w, f, outward) || d.aside(s, w, f, -outward) {
			return
		}
	}
}

// outside tries to measure beside an edge of the outline, from outward on; what is too short for its words, such as a cuff, with them level beside it.
func (d *drawn) outside(s *sided, w slope, forms []form, outward float64) bool {
	for _, try := range []func(*sided, slope, form, float64) bool{d.aside, d.levelBeside} {
		for _, dir := range []float64{outward, -outward} {
			if slices.ContainsFunc(forms, func(f form) bool { return try(s, w, f, dir) }) {
				return true
			}
		}
	}
	return false
}

// levelBeside tries to measure on one side of a slanted edge, with the words level beside the line, away from the edge.
func (d *drawn) levelBeside(s *sided, w slope, f form, dir float64) bool {
	out := mul(w.up, dir)
	if f.w > 1.5*w.long { // it would stand far away
		return false
	}
	for _, off := range []float64{4, 5.5, 7, 9} {
		v := mul(out, off)
		line := seg{add(s.a, v), add(s.b, v)}
		tail := []seg{{add(s.a, mul(out, startGap)), add(s.a, mul(out, off+overshoot))}, {add(s.b, mul(out, startGap)), add(s.b, mul(out, off+overshoot))}}
		if !d.field.clear(line, 2) || !d.field.measurable(line) || slices.ContainsFunc(tail, func(t seg) bool { return !d.field.clear(t, 0) }) {
			continue
		}
		// As far from the line as its half width and height need.
		c := add(mid(line.a, line.b), mul(out, 2*lineGap+(math.Abs(out.X)*f.w+math.Abs(out.Y)*f.h)/2))
		if d.take(s, dim{line: line, tail: tail, ends: true, form: f, at: c, how: slanting, letter: f.letter}) {
			return true
		}
	}
	return false
}

// aside tries to measure on one side of a slanted edge, near it and then farther off; within the view at last with the label between.
func (d *drawn) aside(s *sided, w slope, f form, dir float64) bool {
	offs := []float64{4, 5.5, 7, 9, 11}
	if w.through {
		offs = append(offs, f.h+3*lineGap)
	}
	return f.w <= w.long-1 && slices.ContainsFunc(offs, func(off float64) bool { return d.alongside(s, w, f, dir, off) })
}

// alongside tries to measure off mm beside a slanted edge, to the side that dir says; 0 is on the line itself.
func (d *drawn) alongside(s *sided, w slope, f form, dir, off float64) bool {
	v := mul(w.up, dir*off)
	line := seg{add(s.a, v), add(s.b, v)}
	free := line
	if off == 0 || w.through { // at the seam that it ends on it may pass another
		free = line.shrunk(min(mostOver, w.long/4))
	}
	var tail []seg
	for _, end := range []pt{s.a, s.b} {
		if off > 0 {
			tail = append(tail, seg{add(end, mul(w.up, dir*startGap)), add(end, mul(w.up, dir*(off+overshoot)))})
		}
	}
	blocked := func(t seg) bool { return !d.field.clear(t, 0) }
	if w.through { // the edges that it runs between lead to its ends
		tail = slices.DeleteFunc(tail, blocked)
	}
	if !d.field.clear(free, 2) || !d.field.measurable(line) || slices.ContainsFunc(tail, blocked) {
		return false
	}
	for _, shift := range []float64{0, -0.25, 0.25} {
		c := add(add(mid(line.a, line.b), mul(w.u, shift*(w.long-f.w))), mul(w.up, lineGap+f.h/2))
		if d.take(s, dim{line: line, tail: tail, ends: true, form: f, at: c, angle: w.angle, how: slanting, letter: f.letter}) {
			return true
		}
	}
	return false
}

// take places a measurement within the view if its label is free there.
func (d *drawn) take(s *sided, m dim) bool {
	box := m.box()
	if d.v.worn { // its outlines are near
		box = boxOf(m.at, m.angle, sheet.Elsewhere*m.form.w, m.form.h)
	}
	if !d.field.free(box, s.owner) {
		return false
	}
	room := box.Grown(0.3)
	for _, t := range append([]seg{m.line}, m.tail...) {
		if room.Touches(t.a, t.b) {
			return false
		}
	}
	m.it = s.it
	s.placed = true
	d.field.release(s.owner)
	d.field.labels = append(d.field.labels, box)
	// what measures counts as solid from here on: no other such line crosses it
	d.field.segs = append(d.field.segs, seg{})
	copy(d.field.segs[d.field.solid+1:], d.field.segs[d.field.solid:])
	d.field.segs[d.field.solid] = m.line
	d.field.solid++
	d.field.segs = append(d.field.segs, m.tail...)
	if l := dist(m.line.a, m.line.b); l > 0 && l < openArrow {
		a, b := strokes(m.line)
		d.field.segs = append(d.field.segs, a, b)
	}
	d.dims = append(d.dims, m)
	d.all.box(box.Grown(clearance))
	d.all.add(m.line.a, m.line.b)
	for _, t := range m.tail {
		d.all.add(t.a, t.b)
	}
	return true
}

// within tries to measure inside the view what would cross an edge from outside,
// such as a waist or the depth of a neck.
func (d *drawn) within(list []*sided) {
	for _, s := range list {
		if s.placed || s.axis == schematic.Slanted || s.crosses == 0 {
			continue
		}
		d.open(s)
	}
}

// opening is a measurement within a view: along u it runs, its text stands at smaller v, above or left of its line.
type opening struct {
	angle    float64
	ua, ub   float64 // ua <= ub
	va, vb   float64
	vertical bool
}

func openingOf(s *sided) opening {
	o := opening{ua: s.a.X, va: s.a.Y, ub: s.b.X, vb: s.b.Y}
	if s.axis == schematic.Vertical {
		o = opening{angle: 90, ua: s.a.Y, va: s.a.X, ub: s.b.Y, vb: s.b.X, vertical: true}
	}
	if o.ua > o.ub {
		o.ua, o.va, o.ub, o.vb = o.ub, o.vb, o.ua, o.va
	}
	return o
}

func (o opening) at(u, v float64) pt {
	if o.vertical {
		return pt{X: v, Y: u}
	}
	return pt{X: u, Y: v}
}

// tails are the extension lines of both ends to a line at v.
func (o opening) tails(v float64) []seg {
	var tail []seg
	for _, e := range [2][2]float64{{o.ua, o.va}, {o.ub, o.vb}} {
		if by := v - e[1]; math.Abs(by) > startGap {
			sign := math.Copysign(1, by)
			tail = append(tail, seg{o.at(e[0], e[1]+sign*startGap), o.at(e[0], v+sign*overshoot)})
		}
	}
	return tail
}

func (d *drawn) open(s *sided) {
	o := openingOf(s)
	if o.ub-o.ua < leastOpen {
		return
	}
	levels := []float64{o.va, o.vb, (o.va + o.vb) / 2}
	for _, off := range []float64{4, 6, 9, 12} {
		levels = append(levels, o.va-off, o.va+off, o.vb-off, o.vb+off)
	}
	forms := s.it.forms
	if d.o.Labels == Letters || d.o.Labels == Blank {
		forms = []form{s.it.letter}
	}
	rooms := d.rooms(o, levels)
	if len(rooms) == 0 {
		return
	}
	for _, f := range forms {
		if f.w <= o.ub-o.ua-1 && slices.ContainsFunc(rooms, func(m dim) bool { return d.openAt(s, o, f, m) }) {
			return
		}
	}
	if !o.vertical {
		return
	}
	for _, f := range forms { // too short for its words, such as the depth of a neck: they stand beside it
		if f.h <= o.ub-o.ua && slices.ContainsFunc(rooms, func(m dim) bool { return d.openBeside(s, o, f, m) }) {
			return
		}
	}
}

// rooms are the dimension lines, with their extension lines, that have room within the view, of those at levels.
func (d *drawn) rooms(o opening, levels []float64) []dim {
	var all []dim
	for _, v := range levels {
		line := seg{o.at(o.ua, v), o.at(o.ub, v)}
		if !d.field.clear(line, 1.8) || !d.field.measurable(line) {
			continue
		}
		tail := o.tails(v)
		if !slices.ContainsFunc(tail, func(t seg) bool { return !d.field.clear(t, 0) }) {
			all = append(all, dim{line: line, tail: tail, ends: true, how: within})
		}
	}
	return all
}

// openBeside tries to measure upright along a line within the view, with the words level beside it.
func (d *drawn) openBeside(s *sided, o opening, f form, m dim) bool {
	m.form, m.letter = f, f.letter
	for _, side := range []float64{1, -1} {
		if m.at = o.at((o.ua+o.ub)/2, m.line.a.X+side*(2*lineGap+f.w/2)); d.take(s, m) {
			return true
		}
	}
	return false
}

// openAt tries to measure along a line within the view.
func (d *drawn) openAt(s *sided, o opening, f form, m dim) bool {
	m.form, m.angle, m.letter = f, o.angle, f.letter
	v := m.line.a.Y
	if o.vertical {
		v = m.line.a.X
	}
	room := o.ub - o.ua - f.w - 1
	for _, shift := range []float64{0, -0.25, 0.25, -0.5, 0.5} {
		if m.at = o.at((o.ua+o.ub)/2+shift*room, v-lineGap-f.h/2); d.take(s, m) {
			return true
		}
	}
	return false
}
