package worn

import (
	"slices"
	"strings"

	"flatwright/schematic"
)

// face is which side of the wearer a panel lies on.
type face int

const (
	front face = iota
	back
	either // it faces wherever its bonds put it
)

// side is one straight stretch of a panel's loop, from its own place to that of the next.
type side struct {
	a     pt
	name  string   // of the edge that it belongs to
	keys  []string // of the bonds that it takes part in
	fold  bool     // the fabric goes on behind it
	taken bool     // another panel lies on it
	blind bool     // no line is drawn where another panel lies on it
	gap   bool     // it leads from the end of its partner to that of its own edge, which lies elsewhere
	curve bool     // part of an edge that lies in a curve
	part  int      // of an end that takes several of one piece, such as two legs: which of them it takes
}

// panel is one flat part of the garment, in mm, seen from its right side; its loop runs anticlockwise.
type panel struct {
	made  *schematic.Made
	view  int
	name  string
	face  face
	loop  []side
	lines []schematic.Line
	ribs  []schematic.Hatch
	marks []schematic.Marked
	flip  bool // seen from behind: mirrored
	disc  bool // a circle, which touches what it is bonded to
	slits []slit

	where motion
	drawn []side // as placed, with its bonded edges on those of its partners

	hosts      []*panel // on whose edges it was laid
	hung       bool     // it was laid on others
	seam       [2]pt    // the ends of the way on which it was laid
	own        [2]pt    // the same of its own edge, before it was placed
	laid       chord    // what was laid on what
	onto       []string // the names of the edges on which it was laid
	strap      bool     // of a saddle shoulder
	strip      bool     // a band that bends
	stands     bool     // a strip that stands up from a neck
	meets      bool     // its edges meet in front
	halved     bool     // but a half of its piece shows
	turned     bool     // some of it is turned in
	turnedBy   float64  // how deep
	flap       *panel   // what is turned
	closed     bool     // it is flat, and sewn into a round
	lengthwise bool     // it is folded along its whole length, and sewn to itself
	over       *panel   // it lies on this one, from whose slit it is worked
	foot       pt       // of what stands in an arch: the middle between its ends, and the place above it
	drop       pt
	leg        bool    // a round that goes on from a part of another of its piece
	lying      float64 // it lies turned as it is worn, such as by a quarter: its sine
	upended    bool    // and upside down, if it is worn so
	puffed     bool    // an end of it is gathered
	axis       float64 // of the half of it that shows, if it is puffed: it spreads alike to both sides of this upright
	arced      bool    // a shawl that is blocked, with its rows in arcs
	parted     bool    // it is drawn up to the middle, where its twin begins
	layered    bool    // half of a round that hides the other half
	onSide     bool    // it lies on its side, since what hangs from it hangs there
	slipper    bool    // it lies on its side, folded along the middle of its sole
	gusset     bool    // it is folded between a gusset and what lies across from it
	heel       pt      // of a leg seen from its side: where its heel begins, behind
	heights    bool    // one of several views, one above the other
	openings   [][]pt  // between them
	sole       [2]pt   // of its foot: how far it is around, from the sole up
}

// chord is how a panel was laid: two places of its own on two places, of which hold, a share of the way between them,
// is held fast.
type chord struct {
	own, on [2]pt
	hold    float64
}

func (p *panel) points() []pt {
	out := make([]pt, len(p.loop))
	for i, s := range p.loop {
		out[i] = s.a
	}
	return out
}

func points(loop []side) []pt {
	out := make([]pt, len(loop))
	for i, s := range loop {
		out[i] = s.a
	}
	return out
}

// box is the least and the greatest of the places of a loop.
func box(loop []side) (lo, hi pt) {
	for i, s := range loop {
		if i == 0 {
			lo, hi = s.a, s.a
		}
		lo = pt{X: min(lo.X, s.a.X), Y: min(lo.Y, s.a.Y)}
		hi = pt{X: max(hi.X, s.a.X), Y: max(hi.Y, s.a.Y)}
	}
	return lo, hi
}

func (p *panel) middle() float64 {
	lo, hi := box(p.loop)
	return (lo.X + hi.X) / 2
}

// newPanel is a view of a piece as a panel: its outline, cut where an edge begins, each stretch with
// the name of its edge. keys gives the bonds of an edge.
func newPanel(m *schematic.Made, view int, keys func(e *schematic.Edge) []string) *panel {
	v := &m.Views[view]
	if len(v.Outline) == 0 || len(v.Outline[0]) < 3 {
		return nil
	}
	p := &panel{made: m, view: view, name: m.Name, lines: v.Lines, ribs: v.Ribs, marks: v.Marks, face: either, disc: v.Disc}
	if v.Name != "" {
		p.name = v.Name
	}
	var edges []*schematic.Edge
	for i := range m.Edges {
		if e := &m.Edges[i]; e.View == view {
			edges = append(edges, e)
		}
	}
	outline := v.Outline[0]
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		p.loop = append(p.loop, cutAt(a, b, edges)...)
	}
	for i := range p.loop {
		s, z := &p.loop[i], p.loop[(i+1)%len(p.loop)].a
		s.fold = v.Half
		for _, e := range edges {
			if along(e.Path, s.a, z) {
				s.name, s.fold, s.keys = e.Name, false, append(s.keys, keys(e)...)
			}
		}
		if s.fold {
			s.keys = append(s.keys, "fold of "+m.Name)
		}
	}
	p.slopes("shoulder")
	p.slits = slitsOf(v, edges, keys)
	return p
}

// slopes makes one straight edge of the steps in which stitches of an edge are bound off, as it lies when it is sewn: from the foot of
// the first step to the head of the last.
func (p *panel) slopes(name string) {
	n := len(p.loop)
	step := func(i int) bool {
		s, z := p.loop[i%n], p.loop[(i+1)%n].a
		return strings.EqualFold(s.name, name) && (absf(s.a.X-z.X) < close || absf(s.a.Y-z.Y) < close)
	}
	first := slices.IndexFunc(p.loop, func(s side) bool { return !strings.EqualFold(s.name, name) })
	if first < 0 {
		return
	}
	var out []side
	for k := 0; k < n; {
		i := first + k
		run := 0
		for k+run < n && step(i+run) && slices.Equal(p.loop[(i+run)%n].keys, p.loop[i%n].keys) {
			run++
		}
		out = append(out, p.loop[i%n])
		k += 1
		if run > 2 { // a step alone is as it is
			k += run - 1
		}
	}
	p.loop = out
}

// slit is an opening within a panel from which something else is worked.
type slit struct {
	a, z  pt // from the left
	name  string
	keys  []string
	taken bool
}

// slitsOf are the openings of a view whose edges have bonds.
func slitsOf(v *schematic.View, edges []*schematic.Edge, keys func(e *schematic.Edge) []string) []slit {
	var out []slit
	for _, l := range v.Lines {
		if l.Kind != schematic.LineSlit {
			continue
		}
		s := slit{a: l.A, z: l.B, name: l.Name}
		if s.z.X < s.a.X {
			s.a, s.z = s.z, s.a
		}
		for _, e := range edges {
			if along(e.Path, l.A, l.B) || along(e.Path, l.B, l.A) {
				s.keys = append(s.keys, keys(e)...)
			}
		}
		if len(s.keys) > 0 {
			out = append(out, s)
		}
	}
	return out
}

// cutAt is the stretch from a to b cut where an edge begins or ends on it.
func cutAt(a, b pt, edges []*schematic.Edge) []side {
	type cut struct {
		t float64
		p pt
	}
	var cuts []cut
	for _, e := range edges {
		for _, q := range e.Path {
			if t, ok := onSegment(q, a, b); ok && !near(q, a) && !near(q, b) {
				cuts = append(cuts, cut{t, q})
			}
		}
	}
	slices.SortStableFunc(cuts, func(x, y cut) int {
		switch {
		case x.t < y.t:
			return -1
		case x.t > y.t:
			return 1
		}
		return 0
	})
	out := []side{{a: a}}
	for _, c := range cuts {
		if !near(out[len(out)-1].a, c.p) {
			out = append(out, side{a: c.p})
		}
	}
	return out
}

// along reports whether the way from a to z is a part of a path, in its direction.
func along(path []pt, a, z pt) bool {
	m, d := mid(a, z), sub(z, a)
	for i := 1; i < len(path); i++ {
		t, ok := onSegment(m, path[i-1], path[i])
		if ok && t > 0 && dot(sub(path[i], path[i-1]), d) > 0 {
			return true
		}
	}
	return false
}

// mirrored is the panel as seen from behind.
func (p *panel) mirrored() *panel {
	q := *p
	q.flip = !p.flip
	q.loop = mirror(p.loop)
	at := func(a pt) pt { return pt{X: -a.X + 0, Y: a.Y} }
	q.lying = -p.lying
	q.lines, q.ribs, q.marks, q.slits = nil, nil, nil, nil
	for _, s := range p.slits {
		s.a, s.z = at(s.z), at(s.a)
		q.slits = append(q.slits, s)
	}
	for _, l := range p.lines {
		l.A, l.B = at(l.A), at(l.B)
		q.lines = append(q.lines, l)
	}
	for _, r := range p.ribs {
		poly := make([]pt, len(r.Poly))
		for i, a := range r.Poly {
			poly[i] = at(a)
		}
		r.Poly, r.Dir = poly, at(r.Dir)
		q.ribs = append(q.ribs, r)
	}
	for _, m := range p.marks {
		m.At = at(m.At)
		q.marks = append(q.marks, m)
	}
	return &q
}

// mirror is a loop in the mirror, running anticlockwise again.
func mirror(loop []side) []side {
	n := len(loop)
	out := make([]side, n)
	for i := range out {
		s := loop[n-1-i]
		s.a = pt{X: -loop[(n-i)%n].a.X + 0, Y: loop[(n-i)%n].a.Y}
		out[i] = s
	}
	return out
}

// half is what of the panel lies to the left (or right) of the upright through x: the panel is folded
// there.
func (p *panel) half(x float64, left bool, key string) *panel {
	q := p.cut(func(a pt) float64 {
		if left {
			return x - a.X
		}
		return a.X - x
	}, key)
	if q != nil {
		q.halved = true
	}
	return q
}

// cut is what of the panel lies where keep is positive; the cut has the key.
func (p *panel) cut(keep func(a pt) float64, key string) *panel {
	q := *p
	q.loop = nil
	n := len(p.loop)
	first := max(0, slices.IndexFunc(p.loop, func(s side) bool { return absf(keep(s.a)) > close }))
	off := false // the way comes from beyond the cut
	for i := range p.loop {
		s, z := p.loop[(first+i)%n], p.loop[(first+i+1)%n].a
		if d := keep(s.a); absf(d) > close {
			off = d < 0
		}
		switch far := beyond(s.a, z, keep); {
		case far && off:
			continue // the far bank of a slit on the cut
		case absf(keep(s.a)) < close && absf(keep(z)) < close:
			off = far
		}
		q.loop = append(q.loop, s.kept(z, keep, key)...)
	}
	q.lines, q.ribs, q.marks = nil, nil, nil
	for _, l := range p.lines {
		if a, b, ok := clipTo(l.A, l.B, keep); ok {
			l.A, l.B = a, b
			q.lines = append(q.lines, l)
		}
	}
	for _, r := range p.ribs {
		if poly := clipPoly(r.Poly, keep); len(poly) > 2 {
			r.Poly = poly
			q.ribs = append(q.ribs, r)
		}
	}
	for _, m := range p.marks {
		if keep(m.At) >= 0 {
			q.marks = append(q.marks, m)
		}
	}
	if len(q.loop) < 3 {
		return nil
	}
	return &q
}

// turnedIn is the panel without what is turned to its inside at a fold, such as a hem or the inside of a waistband: no more of it than
// what shows.
func (p *panel) turnedIn() *panel {
	for _, l := range p.lines {
		lo, hi := box(p.loop)
		y := l.A.Y
		if l.Kind != schematic.LineFold || absf(l.B.Y-y) > close || y < lo.Y+1 || y > hi.Y-1 || !p.spans(l) {
			continue
		}
		up := 1.0 // what is kept
		if hi.Y-y < y-lo.Y {
			up = -1
		}
		if q := p.cut(func(a pt) float64 { return up * (a.Y - y) }, "turned in of "+p.name); q != nil {
			q.turned, q.turnedBy = true, min(hi.Y-y, y-lo.Y)
			q.flap = p.cut(func(a pt) float64 { return up * (y - a.Y) }, "")
			p = q
		}
	}
	return p
}

// spans reports whether a line goes from side to side.
func (p *panel) spans(l schematic.Line) bool {
	x := across(points(p.loop), l.A.Y-0.01)
	return len(x) == 2 && absf(x[0]-min(l.A.X, l.B.X)) < 1 && absf(x[1]-max(l.A.X, l.B.X)) < 1
}

// kept is what remains of a side that runs to z where keep is positive, and the beginning of the cut if it leaves there.
func (s side) kept(z pt, keep func(a pt) float64, key string) []side {
	const on = 1e-9
	ds, dz := keep(s.a), keep(z)
	fold := side{a: s.a, fold: true, name: "fold", keys: []string{key}}
	switch {
	case ds > on && dz >= -on || ds >= -on && dz > on:
		return []side{s}
	case ds >= -on && dz >= -on && !beyond(s.a, z, keep): // the near bank of a slit on the cut
		return []side{s}
	case ds >= -on && dz >= -on: // along the cut
		return []side{fold}
	case ds > on:
		fold.a = lerp(s.a, z, ds/(ds-dz))
		return []side{s, fold}
	case ds >= -on:
		fold.a = lerp(s.a, z, ds/(ds-dz))
		return []side{fold}
	case dz > on:
		s.a = lerp(s.a, z, ds/(ds-dz))
		return []side{s}
	}
	return nil
}

// beyond reports whether the side from a to z lies on a cut, with what it bounds, which is at its left, beyond it.
func beyond(a, z pt, keep func(a pt) float64) bool {
	return absf(keep(a)) < close && absf(keep(z)) < close && keep(pt{X: a.X - (z.Y - a.Y), Y: a.Y + z.X - a.X}) < 0
}

func clipTo(a, b pt, keep func(pt) float64) (pt, pt, bool) {
	da, db := keep(a), keep(b)
	switch {
	case da < 0 && db < 0 || da <= 0 && db <= 0:
		return a, b, false
	case da < 0:
		a = lerp(a, b, da/(da-db))
	case db < 0:
		b = lerp(a, b, da/(da-db))
	}
	return a, b, true
}

// clipPoly is a convex polygon cut at a line (Sutherland and Hodgman, 1974).
func clipPoly(poly []pt, keep func(pt) float64) []pt {
	var out []pt
	for i, a := range poly {
		b := poly[(i+1)%len(poly)]
		da, db := keep(a), keep(b)
		if da >= 0 {
			out = append(out, a)
		}
		if da > 0 && db < 0 || da < 0 && db > 0 {
			out = append(out, lerp(a, b, da/(da-db)))
		}
	}
	return out
}

// facing is where a name says that its fabric lies: in front is what the picture is seen from.
func (a *assembly) facing(name string) face {
	name = strings.ToLower(name)
	f, b := strings.Contains(name, "front"), strings.Contains(name, "back")
	switch {
	case f == b:
		return either
	case f != a.turned:
		return front
	}
	return back
}
