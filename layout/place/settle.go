package place

import (
	"math"
	"slices"
)

// settle turns the tracks of a side into lines and labels.
func (d *drawn) settle(t *sideTracks) {
	at := func(u, v float64) pt {
		switch t.side {
		case top:
			return pt{X: u, Y: -v}
		case bottom:
			return pt{X: u, Y: d.h + v}
		case left:
			return pt{X: -v, Y: u}
		}
		return pt{X: d.w + v, Y: u}
	}
	angle := 0.0
	if t.side.vertical() {
		angle = 90
	}
	first := len(d.dims)
	for _, o := range t.items {
		v := t.tracks[o.track].v
		m := dim{it: o.s.it, form: o.form, angle: angle, how: o.how, letter: o.form.letter, ends: !o.leader}
		m.line = seg{at(o.u.lo, v), at(o.u.hi, v)}
		up := lineGap + o.form.h/2
		if !t.side.outer() {
			up = -up
		}
		m.at = at((o.label.lo+o.label.hi)/2, v+up)
		if o.beside {
			end, far := m.line.b, o.label.hi
			if o.label.hi < o.u.hi {
				end, far = m.line.a, o.label.lo
			}
			m.lead = []pt{end, at(far, v)}
		}
		if o.leader {
			m.lead = append([]pt{o.ends[0]}, m.lead...)
			m.line = seg{m.lead[0], m.lead[0]}
		} else {
			m.tail = make([]seg, 0, 2)
			for _, p := range o.ends {
				m.tail = append(m.tail, seg{d.leave(p, t.side), d.level(p, t.side, at, v)})
			}
		}
		d.dims = append(d.dims, m)
	}
	once(d.dims[first:], t.side.out())
}

// once draws an extension line that several measurements share only once, for the
// one that it goes farthest for.
func once(dims []dim, out pt) {
	e := extensions{out: out}
	for i := range dims {
		for k := range dims[i].tail {
			e.add(&dims[i].tail[k])
		}
	}
	for i := range dims {
		dims[i].tail = slices.DeleteFunc(dims[i].tail, func(t seg) bool { return t == seg{} })
	}
}

// extensions are the extension lines of a side that are drawn.
type extensions struct {
	out  pt
	kept []*seg
}

// add keeps an extension line or, if it lies on one that is kept, makes one of the two and empties the other.
func (e *extensions) add(t *seg) {
	i := slices.IndexFunc(e.kept, func(o *seg) bool { return e.shared(*t, *o) })
	if i < 0 {
		e.kept = append(e.kept, t)
		return
	}
	o := e.kept[i]
	from := t.a
	if dot(o.a, e.out) < dot(from, e.out) {
		from = o.a
	}
	if dot(t.b, e.out) <= dot(o.b, e.out) {
		o.a, *t = from, seg{}
		return
	}
	t.a, *o = from, seg{}
	e.kept[i] = t
}

// shared reports whether two extension lines lie on each other.
func (e *extensions) shared(a, b seg) bool {
	return math.Abs(cross(sub(a.a, b.a), e.out)) < 0.02 &&
		dot(a.a, e.out) <= dot(b.b, e.out) && dot(b.a, e.out) <= dot(a.b, e.out)
}

// level is the end of p's extension line, a little beyond the dimension line.
func (d *drawn) level(p pt, s side, at func(u, v float64) pt, v float64) pt {
	if s.vertical() {
		return at(p.Y, v+overshoot)
	}
	return at(p.X, v+overshoot)
}

// leave is where p's extension line starts: a little off the outline, after any
// edge that it would only run along.
func (d *drawn) leave(p pt, s side) pt {
	out := s.out()
	for range 8 {
		moved := false
		for _, e := range d.edges {
			if math.Abs(cross(sub(e.a, p), out)) > 0.15 || math.Abs(cross(sub(e.b, p), out)) > 0.15 {
				continue
			}
			near, far := dot(sub(e.a, p), out), dot(sub(e.b, p), out)
			if near > far {
				near, far = far, near
			}
			if near < 0.3 && far > 0.3 {
				p, moved = add(p, mul(out, far)), true
			}
		}
		if !moved {
			break
		}
	}
	return add(p, mul(out, startGap))
}
