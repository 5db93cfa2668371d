package place

import "math"

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
	type ref struct{ m, t int }
	same := func(a, b seg) bool {
		return math.Abs(cross(sub(a.a, b.a), out)) < 0.02 &&
			dot(a.a, out) <= dot(b.b, out) && dot(b.a, out) <= dot(a.b, out)
	}
	var kept []ref
	for i := range dims {
		for k := 0; k < len(dims[i].tail); k++ {
			t := dims[i].tail[k]
			merged := false
			for n, r := range kept {
				o := &dims[r.m].tail[r.t]
				if !same(t, *o) {
					continue
				}
				if dot(o.a, out) < dot(t.a, out) {
					t.a = o.a
				} else {
					o.a = t.a
				}
				if dot(t.b, out) <= dot(o.b, out) {
					dims[i].tail[k] = seg{}
				} else {
					dims[i].tail[k] = t
					*o = seg{}
					kept[n] = ref{i, k}
				}
				merged = true
				break
			}
			if !merged {
				kept = append(kept, ref{i, k})
			}
		}
	}
	for i := range dims {
		left := dims[i].tail[:0]
		for _, t := range dims[i].tail {
			if t != (seg{}) {
				left = append(left, t)
			}
		}
		dims[i].tail = left
	}
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
