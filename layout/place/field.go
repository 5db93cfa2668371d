package place

import (
	"math"
	"slices"

	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// side is a side of a view. Within a side, u runs along it and v away from it.
type side int

const (
	top side = iota
	bottom
	left
	right
)

func (s side) vertical() bool { return s == left || s == right }

// outer reports whether text above its line stands on the far side of the line.
func (s side) outer() bool { return s == top || s == left }

func (s side) out() pt {
	return [...]pt{{X: 0, Y: -1}, {X: 0, Y: 1}, {X: -1, Y: 0}, {X: 1, Y: 0}}[s]
}

// ray is a way out of the view that is kept free: where an extension line or a
// leader will run.
type ray struct {
	from  pt
	to    side
	owner int
}

const far = 1e5

func (r ray) seg() seg { return seg{r.from, add(r.from, mul(r.to.out(), far))} }

// field is what a view holds so far: the one question it answers is whether a
// place is free.
type field struct {
	segs   []seg
	solid  int // of segs, those that dimension lines keep clear of
	hatch  [][]pt
	labels []sheet.Box
	rays   []ray
	looked int // lines that boxes were held against
}

// mostLooked bounds the search for room: a garment's drawing takes a hundredth of it.
const mostLooked = 20_000_000

// spent reports whether no more room is looked for.
func (f *field) spent() bool { return f.looked > mostLooked }

const clearance = 0.5 // between a label and anything else, mm

// free reports whether nothing touches the box, save the ways that owner keeps.
func (f *field) free(b sheet.Box, owner int) bool {
	b = b.Grown(clearance + wide/2)
	lo, hi := b.Bounds()
	f.looked += len(f.segs)
	for i := range f.segs {
		if s := &f.segs[i]; !s.passes(lo, hi) && b.Touches(s.a, s.b) {
			return false
		}
	}
	if slices.ContainsFunc(f.labels, b.Overlaps) {
		return false
	}
	for _, r := range f.rays {
		if r.owner != owner && b.Touches(r.from, r.seg().b) {
			return false
		}
	}
	return !slices.ContainsFunc(f.hatch, func(poly []pt) bool { return meetsPoly(b, poly) })
}

// around is the upright box about a segment, mm wider on every side.
func (s *seg) around(mm float64) (lo, hi pt) {
	return pt{X: min(s.a.X, s.b.X) - mm, Y: min(s.a.Y, s.b.Y) - mm}, pt{X: max(s.a.X, s.b.X) + mm, Y: max(s.a.Y, s.b.Y) + mm}
}

// passes reports whether the segment lies wholly to one side of the upright box from lo to hi.
func (s *seg) passes(lo, hi pt) bool {
	return s.a.X > hi.X && s.b.X > hi.X || s.a.X < lo.X && s.b.X < lo.X ||
		s.a.Y > hi.Y && s.b.Y > hi.Y || s.a.Y < lo.Y && s.b.Y < lo.Y
}

func meetsPoly(b sheet.Box, poly []pt) bool {
	if schematic.InPolygon(poly, b.C) {
		return true
	}
	for i, p := range poly {
		if b.Touches(p, poly[(i+1)%len(poly)]) {
			return true
		}
	}
	return false
}

// clear reports whether a line that measures may run here: it crosses no outline
// and no other such line, runs beside none, and touches no label.
func (f *field) clear(s seg, beside float64) bool {
	in := s.shrunk(0.3)
	lo, hi := s.around(beside)
	for i := range f.segs[:f.solid] {
		if o := &f.segs[i]; !o.passes(lo, hi) && (in.crosses(*o) || beside > 0 && s.along(*o, beside)) {
			return false
		}
	}
	if f.labelled(s) {
		return false
	}
	for _, poly := range f.hatch {
		for i, p := range poly {
			if in.crosses(seg{p, poly[(i+1)%len(poly)]}) {
				return false
			}
		}
		if schematic.InPolygon(poly, mid(s.a, s.b)) {
			return false
		}
	}
	return true
}

// measurable reports whether a dimension line touches no label, nor do the strokes at its ends.
func (f *field) measurable(s seg) bool {
	if f.labelled(s) {
		return false
	}
	if l := dist(s.a, s.b); l == 0 || l >= openArrow {
		return true
	}
	a, b := strokes(s)
	return !f.labelled(a) && !f.labelled(b)
}

// labelled reports whether a line touches a label.
func (f *field) labelled(s seg) bool {
	return slices.ContainsFunc(f.labels, func(b sheet.Box) bool { return b.Grown(clearance).Touches(s.a, s.b) })
}

// release gives up the ways that owner keeps.
func (f *field) release(owner int) {
	kept := f.rays[:0]
	for _, r := range f.rays {
		if r.owner != owner {
			kept = append(kept, r)
		}
	}
	f.rays = kept
}

// crossings counts how often a way out from p crosses the outline. A way that
// runs along an edge crosses nothing.
func crossings(loops [][]pt, p pt, to side) int {
	const off = 0.05
	n := math.MaxInt
	for _, d := range [2]float64{-off, off} {
		q := p
		if to.vertical() {
			q.Y += d
		} else {
			q.X += d
		}
		n = min(n, crossingsAt(loops, q, to))
	}
	return n
}

func crossingsAt(loops [][]pt, p pt, to side) int {
	const near = 0.4
	n := 0
	for _, loop := range loops {
		for i, a := range loop {
			if far, ok := outTo(p, a, loop[(i+1)%len(loop)], to); ok && far > near {
				n++
			}
		}
	}
	return n
}

// outTo is how far out from p its way to that side meets the line of the edge from a to b, which lies on both sides of it.
func outTo(p, a, b pt, to side) (float64, bool) {
	if to.vertical() { // the same, as if it went up or down
		p, a, b = pt{X: p.Y, Y: p.X}, pt{X: a.Y, Y: a.X}, pt{X: b.Y, Y: b.X}
	}
	if (a.X > p.X) == (b.X > p.X) {
		return 0, false
	}
	y := a.Y + (p.X-a.X)/(b.X-a.X)*(b.Y-a.Y)
	if to == top || to == left {
		return p.Y - y, true
	}
	return y - p.Y, true
}
