package place

import (
	"math"

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
		switch s.axis {
		case schematic.Vertical:
			choices = level
		case schematic.Slanted:
			choices = around
			ends = append(one[:0], mid(s.a, s.b))
		}
		best := math.Inf(1)
		for _, c := range choices {
			n, away := 0, 0.0
			for _, p := range ends {
				n += crossings(d.shape, p, c)
				away += d.away(p, c) / float64(len(ends))
			}
			reach := max(d.w, d.h, 1)
			cost := float64(n)*1000 + 100*math.Round(away/reach*4)/4 + float64(count[c])
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

// away is how far p is from a side of the outline's box.
func (d *drawn) away(p pt, s side) float64 {
	return [...]float64{p.Y, d.h - p.Y, p.X, d.w - p.X}[s]
}

const (
	lineGap   = 0.9 // between a dimension line and the text above it, mm
	overshoot = 1.2 // of an extension line beyond the dimension line
	startGap  = 0.8 // of an extension line from the outline
	leastOpen = 4.0 // shortest dimension line that stands within a view
)

// slanted places what is measured along a slanted edge: a line beside the edge, its
// label above it. What has no room keeps its leader and becomes a letter.
func (d *drawn) slanted(list []*sided) {
	for _, s := range list {
		if s.axis != schematic.Slanted {
			continue
		}
		long := dist(s.a, s.b)
		if long < leastOpen {
			continue
		}
		u := mul(sub(s.b, s.a), 1/long)
		u, angle := reading(u)
		up := pt{X: u.Y, Y: -u.X} // above the text
		outward := 1.0
		if m := mid(s.a, s.b); inside(d.shape, add(m, mul(up, 0.3))) {
			outward = -1
		}
		d.parallel(s, u, up, angle, long, outward)
	}
}

// reading turns a direction so that text along it reads from the bottom or, where
// it is steep, from the right like a vertical one. The angle is in degrees.
func reading(u pt) (pt, float64) {
	angle := math.Atan2(-u.Y, u.X) * 180 / math.Pi
	const steep = 60.0
	if angle <= -steep || angle > 180-steep {
		u = mul(u, -1)
		angle = math.Atan2(-u.Y, u.X) * 180 / math.Pi
	}
	return u, angle
}

func (d *drawn) parallel(s *sided, u, up pt, angle, long, outward float64) {
	forms := append(append([]form{}, s.it.forms...), s.it.letter)
	for _, dir := range []float64{outward, -outward} {
		for _, f := range forms {
			if f.w > long-1 {
				continue
			}
			for _, off := range []float64{4, 5.5, 7, 9, 11} {
				v := mul(up, dir*off)
				line := seg{add(s.a, v), add(s.b, v)}
				tail := []seg{{add(s.a, mul(up, dir*startGap)), add(s.a, mul(up, dir*(off+overshoot)))},
					{add(s.b, mul(up, dir*startGap)), add(s.b, mul(up, dir*(off+overshoot)))}}
				if !d.field.clear(line, 2) || !d.field.clear(tail[0], 0) || !d.field.clear(tail[1], 0) {
					continue
				}
				for _, shift := range []float64{0, -0.25, 0.25} {
					c := add(add(mid(line.a, line.b), mul(u, shift*(long-f.w))), mul(up, lineGap+f.h/2))
					if d.take(s, dim{line: line, tail: tail, ends: true, form: f, at: c, angle: angle, how: slanting, letter: f.letter}) {
						return
					}
				}
			}
		}
	}
}

// take places a measurement within the view if its label is free there.
func (d *drawn) take(s *sided, m dim) bool {
	box := m.box()
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

func (d *drawn) open(s *sided) {
	// along u the measurement runs; text stands at smaller v, above or left of its line
	uv, angle := func(u, v float64) pt { return pt{X: u, Y: v} }, 0.0
	ua, va, ub, vb := s.a.X, s.a.Y, s.b.X, s.b.Y
	if s.axis == schematic.Vertical {
		uv, angle = func(u, v float64) pt { return pt{X: v, Y: u} }, 90
		ua, va, ub, vb = s.a.Y, s.a.X, s.b.Y, s.b.X
	}
	if ua > ub {
		ua, va, ub, vb = ub, vb, ua, va
	}
	if ub-ua < leastOpen {
		return
	}
	levels := []float64{va, vb, (va + vb) / 2}
	for _, off := range []float64{4, 6, 9, 12} {
		levels = append(levels, va-off, va+off, vb-off, vb+off)
	}
	forms := s.it.forms
	if d.o.Labels == Letters {
		forms = []form{s.it.letter}
	}
	for _, f := range forms {
		if f.w > ub-ua-1 {
			continue
		}
		for _, v := range levels {
			line := seg{uv(ua, v), uv(ub, v)}
			if !d.field.clear(line, 1.8) {
				continue
			}
			var tail []seg
			ok := true
			for _, e := range [2][2]float64{{ua, va}, {ub, vb}} {
				if by := v - e[1]; math.Abs(by) > startGap {
					sign := math.Copysign(1, by)
					t := seg{uv(e[0], e[1]+sign*startGap), uv(e[0], v+sign*overshoot)}
					ok = ok && d.field.clear(t, 0)
					tail = append(tail, t)
				}
			}
			if !ok {
				continue
			}
			room := ub - ua - f.w - 1
			for _, shift := range []float64{0, -0.25, 0.25, -0.5, 0.5} {
				c := uv((ua+ub)/2+shift*room, v-lineGap-f.h/2)
				if d.take(s, dim{line: line, tail: tail, ends: true, form: f, at: c, angle: angle, how: within, letter: f.letter}) {
					return
				}
			}
		}
	}
}
