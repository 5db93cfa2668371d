package place

import (
	"math"
	"slices"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// how is the way in which a label found its place.
type how int

const (
	onLine how = iota
	beside
	nextTrack
	within
	slanting
	byLetter
)

// dim is one measurement as placed, in the view's own millimetres.
type dim struct {
	it     *item
	line   seg   // the measured stretch, between its two ends
	tail   []seg // extension lines
	lead   []pt  // a leader, or the line on under a label that stands beside
	ends   bool  // arrowheads or strokes at the ends of line
	form   form
	at     pt // centre of the label
	angle  float64
	how    how
	letter bool
}

func (d *dim) box() sheet.Box { return boxOf(d.at, d.angle, d.form.w, d.form.h) }

func boxOf(c pt, angle, w, h float64) sheet.Box {
	sin, cos := math.Sincos(angle * math.Pi / 180)
	return sheet.Box{C: c, U: pt{X: cos, Y: -sin}, HalfW: w / 2, HalfH: h / 2}
}

// tag is a short text at a mark.
type tag struct {
	s     string
	at    pt
	angle float64
	lead  []pt
	class string
}

// drawn is a view at one scale: everything in millimetres on paper, from the top
// left corner of its outline.
type drawn struct {
	v       *viewPlan
	o       *Options
	scale   float64
	w, h    float64
	shape   [][]pt
	edges   []seg // of the shape
	field   field
	arrow   []pt
	notches []seg
	marks   []pt
	tags    []tag
	dropped int
	dims    []dim
	all     extent
	caption []string // the name
	about   []string // what stands under it
	wholes  []wholeLine
	capAt   pt
	letters []*item
}

func (d *drawn) on(p schematic.Point) pt {
	return pt{X: (p.X - d.v.lo.X) / d.scale, Y: (d.v.hi.Y - p.Y) / d.scale}
}

// draw lays one view out at a scale. It always ends, with every measurement
// placed: what finds no other place becomes a letter.
func (v *viewPlan) draw(o *Options, scale float64) *drawn {
	d := &drawn{v: v, o: o, scale: scale}
	d.core()
	sides := d.assign()
	d.slanted(sides, false)
	d.within(sides)
	d.slanted(sides, true)
	d.name()
	d.tracks(sides)
	d.bound()
	return d
}

// outlined takes in the outlines.
func (d *drawn) outlined() {
	d.w, d.h = (d.v.hi.X-d.v.lo.X)/d.scale, (d.v.hi.Y-d.v.lo.Y)/d.scale
	for _, loop := range d.v.shape {
		ps := make([]pt, len(loop))
		for i, p := range loop {
			ps[i] = d.on(p)
		}
		d.shape = append(d.shape, ps)
	}
}

// core takes in what the piece itself shows.
func (d *drawn) core() {
	view := d.v.view
	d.outlined()
	for _, loop := range d.shape {
		for i, a := range loop {
			if b := loop[(i+1)%len(loop)]; a != b {
				d.edges = append(d.edges, seg{a, b})
			}
		}
	}
	d.field.segs = append(make([]seg, 0, len(d.edges)+len(view.Lines)+3*len(d.v.items)+16), d.edges...)
	for _, l := range view.Lines {
		d.field.segs = append(d.field.segs, seg{d.on(l.A), d.on(l.B)})
	}
	d.field.solid = len(d.field.segs)
	for _, r := range view.Ribs {
		poly := make([]pt, len(r.Poly))
		for i, p := range r.Poly {
			poly[i] = d.on(p)
		}
		d.field.hatch = append(d.field.hatch, poly)
	}
	d.arrow = d.arrowLines()
	for i := 1; i < len(d.arrow); i++ {
		d.field.segs = append(d.field.segs, seg{d.arrow[i-1], d.arrow[i]})
	}
	for _, n := range view.Notches {
		out := pt{X: n.Out.X, Y: -n.Out.Y}
		at := d.on(n.At)
		s := seg{at, add(at, mul(out, notchLength))}
		d.notches = append(d.notches, s)
		d.field.segs = append(d.field.segs, s)
		d.all.add(s.b)
	}
	for _, m := range view.Marks {
		at := d.on(m.At)
		d.marks = append(d.marks, at)
		for _, line := range markSign(m.What, at) {
			for i := 1; i < len(line); i++ {
				d.field.segs = append(d.field.segs, seg{line[i-1], line[i]})
			}
			d.all.add(line...)
		}
	}
	d.all.add(pt{}, pt{X: d.w, Y: d.h})
}

const (
	notchLength = 2.0
	arrowLength = 9.0
	arrowHead   = 1.6
)

// arrowLines are the arrow for the direction of work, as one line with its head,
// no longer than the piece has room for; none if there's no room.
func (d *drawn) arrowLines() []pt {
	view := d.v.view
	dir := pt{X: view.Arrow.X, Y: -view.Arrow.Y}
	l := math.Hypot(dir.X, dir.Y)
	if l == 0 || len(d.shape) == 0 {
		return nil
	}
	dir = mul(dir, 1/l)
	at := d.beside(d.on(view.ArrowAt), dir)
	for long := arrowLength; long > 3; long *= 0.75 {
		a, b := sub(at, mul(dir, long/2)), add(at, mul(dir, long/2))
		n := pt{X: -dir.Y, Y: dir.X}
		h := min(arrowHead, long/3)
		l, r := add(sub(b, mul(dir, h)), mul(n, h*0.45)), sub(sub(b, mul(dir, h)), mul(n, h*0.45))
		if inside(d.shape, a) && inside(d.shape, b) && inside(d.shape, l) && inside(d.shape, r) {
			return []pt{a, b, l, b, r}
		}
	}
	return nil
}

// beside is at, or a little to the side of it where an arrow would run along a line
// of the piece, such as its centre.
func (d *drawn) beside(at, dir pt) pt {
	n := pt{X: -dir.Y, Y: dir.X}
	for _, off := range []float64{0, -5, 5, -10, 10} {
		p := add(at, mul(n, off))
		s := seg{sub(p, mul(dir, arrowLength/2)), add(p, mul(dir, arrowLength/2))}
		free := off == 0 || inside(d.shape, s.a) && inside(d.shape, s.b)
		for _, l := range d.field.segs[len(d.edges):d.field.solid] {
			free = free && !s.along(l, 2)
		}
		if free {
			return p
		}
	}
	return at
}

// name puts the numbers of matching marks and the names of marks and lines where
// there is room. The key says what has none.
func (d *drawn) name() {
	size := d.o.text()
	for i, n := range d.v.view.Notches {
		s := d.notches[i]
		out := sub(s.b, s.a)
		d.tagAt(tagText(n.Number), "notch", s.a, mul(out, 1/notchLength), size)
	}
	for i, m := range d.v.view.Marks {
		if m.Name != "" {
			d.tagAt(m.Name, "mark", d.marks[i], pt{X: 0, Y: -1}, size)
		}
	}
	for _, l := range d.v.view.Lines {
		if l.Name != "" {
			d.nameLine(l, size)
		}
	}
	for _, p := range d.v.view.Parts {
		d.namePart(p, size)
	}
}

// leastPart is how high a part is on paper at least, in lines of text, to bear its name.
const leastPart = 3

// namePart puts the name of a part within it, level or, in a narrow one, upright.
func (d *drawn) namePart(p schematic.PartName, size float64) {
	at := d.on(p.At)
	w, h := fonts.Width(fonts.Regular, size, p.Name), lineHeight(fonts.Regular, size)
	if p.H/d.scale < leastPart*h {
		return
	}
	for _, angle := range []float64{0, 90} {
		for _, off := range []float64{0, -6, 6, -12, 12, -20, 20} {
			box := boxOf(add(at, pt{X: 0, Y: off}), angle, w, h)
			if d.field.free(box, -1) && d.holds(box.Grown(1)) {
				d.field.labels = append(d.field.labels, box)
				d.tags = append(d.tags, tag{s: p.Name, at: box.C, angle: angle, class: "part"})
				return
			}
		}
	}
	d.dropped++
}

// holds reports whether a box lies within the outline.
func (d *drawn) holds(b sheet.Box) bool {
	if !inside(d.shape, b.C) {
		return false
	}
	return !slices.ContainsFunc(d.edges, func(e seg) bool { return b.Touches(e.a, e.b) })
}

// tagAt tries places around at, first towards out, nearer ones first; from the
// farther ones a thin line leads back. A matching mark on the right half of a piece tries
// them as one on the left half does in a mirror.
func (d *drawn) tagAt(s, class string, at, out pt, size float64) {
	first := 1
	if class == "notch" && (out.X < 0 || out.X == 0 && at.X > d.w/2) {
		first = 0
	}
	w, h := fonts.Width(fonts.Regular, size, s), lineHeight(fonts.Regular, size)
	for _, r := range []float64{2.6, 3.6, 5, 7, 9, 12} {
		if d.field.spent() {
			break
		}
		for k := range 12 {
			turn := float64((k+1)/2) * math.Pi / 6
			if k%2 == first {
				turn = -turn
			}
			sin, cos := math.Sincos(turn)
			dir := pt{X: out.X*cos - out.Y*sin, Y: out.X*sin + out.Y*cos}
			c := add(at, pt{X: dir.X * (r + w/2), Y: dir.Y * (r + h/2)})
			if d.tagged(tag{s: s, at: c, class: class}, boxOf(c, 0, w, h), seg{add(at, mul(dir, 0.8)), add(at, mul(dir, r-1))}, r > 4) {
				return
			}
		}
	}
	d.dropped++
}

// tagged puts a tag in its place, with a thin line back if far, if both have room.
func (d *drawn) tagged(t tag, b sheet.Box, lead seg, far bool) bool {
	if !d.field.free(b, -1) || far && (!d.field.clear(lead, 0) || b.Grown(0.3).Touches(lead.a, lead.b)) {
		return false
	}
	if far {
		t.lead = []pt{lead.a, lead.b}
		d.field.segs = append(d.field.segs, lead)
	}
	d.field.labels = append(d.field.labels, b)
	d.tags = append(d.tags, t)
	d.all.box(b)
	return true
}

// nameLine puts a line's name along it, above or below, from the middle to the ends.
func (d *drawn) nameLine(l schematic.Line, size float64) {
	a, b := d.on(l.A), d.on(l.B)
	long := dist(a, b)
	w, h := fonts.Width(fonts.Regular, size, l.Name), lineHeight(fonts.Regular, size)
	if long > 0 {
		u, angle := reading(mul(sub(b, a), 1/long))
		n := pt{X: u.Y, Y: -u.X}
		for _, off := range []float64{1 + h/2, -1 - h/2} {
			for _, t := range []float64{0, -0.2, 0.2, -0.35, 0.35} {
				c := add(add(mid(a, b), mul(u, t*long)), mul(n, off))
				box := boxOf(c, angle, w, h)
				if d.field.free(box, -1) {
					d.field.labels = append(d.field.labels, box)
					d.tags = append(d.tags, tag{s: l.Name, at: c, angle: angle, class: lineClass(l.Kind)})
					d.all.box(box)
					return
				}
			}
		}
	}
	d.dropped++
}

// endRoom is how far the end of a dimension line reaches around its point, mm.
const endRoom = 0.9

// captionClear is the least room beside a caption, mm.
const captionClear = 2.0

// bound takes in everything placed, and the caption below it.
func (d *drawn) bound() {
	for i := range d.dims {
		m := &d.dims[i]
		e := m.extent()
		d.all.add(e.lo, e.hi)
		if m.letter {
			d.letters = append(d.letters, m.it)
		}
	}
	for _, t := range d.tags {
		d.all.add(t.lead...)
	}
	size := d.o.text()
	limit := max(d.all.hi.X-d.all.lo.X, 45*size/defaultText)
	names, info, cw := d.v.caption.at(limit, size)
	d.caption, d.about = names, info
	line := lineHeight(fonts.Regular, size) * 1.08
	high := line * float64(len(names)+len(info))
	lettered := d.o.Labels == Letters || d.o.Labels == Blank && len(d.letters) > 0 // as the others are
	for _, h := range d.v.wholes {
		for _, l := range h.lines(d.o, limit, lettered) {
			d.wholes = append(d.wholes, l)
			cw, high = max(cw, l.width), high+l.high
		}
		if lettered {
			d.letters = append(d.letters, h.it)
		}
	}
	x := min(max(d.w/2, d.all.lo.X+cw/2), max(d.all.hi.X-cw/2, d.all.lo.X+cw/2))
	if d.all.hi.X-d.all.lo.X < cw {
		x = d.w / 2
	}
	d.capAt = pt{X: x, Y: d.below(x-cw/2-captionClear, x+cw/2+captionClear) + 2.5}
	d.all.add(pt{X: x - cw/2, Y: d.capAt.Y}, pt{X: x + cw/2, Y: d.capAt.Y + high})
}

// extent is all the room that a measurement takes.
func (m *dim) extent() extent {
	var e extent
	e.box(m.box().Grown(clearance))
	for _, p := range [2]pt{m.line.a, m.line.b} {
		e.add(sub(p, pt{X: endRoom, Y: endRoom}), add(p, pt{X: endRoom, Y: endRoom}))
	}
	e.add(m.lead...)
	for _, t := range m.tail {
		e.add(t.a, t.b)
	}
	return e
}

// below is the foot of the outline, or of what stands under it between lo and hi: a
// value that hangs down beside a low piece does not push the caption away.
func (d *drawn) below(lo, hi float64) float64 {
	var all []extent
	for i := range d.dims {
		all = append(all, d.dims[i].extent())
	}
	for _, b := range d.field.labels {
		var e extent
		e.box(b)
		all = append(all, e)
	}
	for _, n := range d.notches {
		var e extent
		e.add(n.a, n.b)
		all = append(all, e)
	}
	for _, t := range d.tags {
		var e extent
		e.add(t.at)
		e.add(t.lead...)
		all = append(all, e)
	}
	for i, at := range d.marks {
		var e extent
		for _, line := range markSign(d.v.view.Marks[i].What, at) {
			e.add(line...)
		}
		all = append(all, e)
	}
	y := d.h
	for _, e := range all {
		if e.hi.X >= lo && e.lo.X <= hi {
			y = max(y, e.hi.Y)
		}
	}
	return y
}
