package chart

import (
	"math"

	"flatwright/layout/sheet"
)

// bow sets a chain arch between the heads beside it: as high as its chains make it,
// and never quite flat if there are three or more.
func (p *plan) bow(n *node) {
	a, b := n.prev, n.next
	n.ends[0] = p.hang(n, a, 1)
	n.ends[1] = p.hang(n, b, -1)
	chord := long(sub(n.ends[1], n.ends[0]))
	chains := float64(n.st.span())
	length := chains * ovalLong * 1.02
	rise := 0.0
	if length > chord*1.04 {
		lo, hi := 0.0, length
		for range 40 {
			if rise = (lo + hi) / 2; arcLength(chord, rise) < length {
				lo = rise
			} else {
				hi = rise
			}
		}
	}
	if n.st.span() >= 3 {
		rise = max(rise, min(0.16*chord, 2))
	}
	mid := mul(add(n.ends[0], n.ends[1]), 0.5)
	if p.isCircle(n.line) || p.form == oval && n.bent() { // it follows the round
		rise = max(rise, (p.levelOf(n, n.ends[0])+p.levelOf(n, n.ends[1]))/2-p.levelOf(n, mid))
	}
	n.chord, n.rise = chord, rise
	n.v = p.levelOf(n, mid) + rise + ovalWide/2
	n.fv = n.v
}

// levelOf is the level of a point by which n stands.
func (p *plan) levelOf(n *node, at pt) float64 {
	switch {
	case p.isCircle(n.line):
		return long(at)
	case p.form == oval && n.bent():
		return long(sub(at, p.centre(n.side)))
	case p.form == polygon || p.form == oval:
		d := p.dirs[2*n.side]
		if n.corner {
			d = p.dirs[2*n.side+1]
			return (at.X*d.X + at.Y*d.Y) * math.Cos(math.Pi/float64(p.sides))
		}
		return at.X*d.X + at.Y*d.Y
	}
	return at.Y - p.wave.at(at.X)
}

// hang is the end of the arch n at its neighbour m, which lies before it (dir 1) or
// after it.
func (p *plan) hang(n, m *node, dir float64) pt {
	if m == nil {
		return add(p.point(n, n.line.base+clear), pt{X: -dir * n.half})
	}
	toward := func(at, along pt, by float64) pt { return add(at, mul(unit(along), by)) }
	switch {
	case m.arch():
		v := max(n.line.base, n.line.top-p.dip()) + clear
		return mul(add(p.point(n, v), p.point(m, v)), 0.5)
	case m.picot():
		at := p.point(m, m.fv)
		return toward(at, sub(p.point(n, m.fv), at), 0.25)
	}
	by := topHalf + 0.2
	if k := plainOf(m); m.st.Turn {
		by = ovalWide/2 + 0.15
	} else if k != nil && (k.Key == "sc" || k.Key == "slip") {
		by = 0.6
	}
	if l := n.line; l.row.Joined && m == l.nodes[0] && n == l.nodes[len(l.nodes)-1] { // beyond the slip stitch that closes the round
		by += 2*dot + 0.3
	}
	v := m.v
	if k := plainOf(m); k != nil && k.Key == "sc" && !m.st.Turn {
		v -= 0.14 * m.h
	}
	at := p.point(m, v)
	along := sub(p.point(n, v), at)
	if m.st.Turn && len(m.feet) > 0 { // one that leans lies under the arch
		stem, way := unit(sub(p.footPoints(m)[0], at)), unit(along)
		at = add(at, mul(p.outward(m), ovalWide*max(0, stem.X*way.X+stem.Y*way.Y)))
	}
	return toward(at, along, by)
}

// curve is the line of an arch from its one end, 0, to its other, 1.
func (p *plan) curve(n *node) func(t float64) pt {
	a, b := n.ends[0], n.ends[1]
	up := right(unit(sub(a, b)))
	if c := p.outward(n); up.X*c.X+up.Y*c.Y < 0 {
		up = mul(up, -1)
	}
	c1 := add(add(a, mul(sub(b, a), 0.25)), mul(up, n.rise*4/3))
	c2 := add(add(a, mul(sub(b, a), 0.75)), mul(up, n.rise*4/3))
	return func(t float64) pt {
		s := 1 - t
		return add(add(mul(a, s*s*s), mul(c1, 3*s*s*t)), add(mul(c2, 3*s*t*t), mul(b, t*t*t)))
	}
}

// archPaths draws the chains of an arch along its curve.
func (p *plan) archPaths(n *node) []*sheet.Path {
	at := p.curve(n)
	const most = 64
	cuts := min(12+12*n.st.span(), most)
	var sum [most + 1]float64
	last := at(0)
	for k := 1; k <= cuts; k++ {
		q := at(float64(k) / float64(cuts))
		sum[k] = sum[k-1] + long(sub(q, last))
		last = q
	}
	where := func(s float64) pt {
		k := 1
		for k < cuts && sum[k] < s {
			k++
		}
		f := 0.0
		if d := sum[k] - sum[k-1]; d > 0 {
			f = (s - sum[k-1]) / d
		}
		return at((float64(k-1) + f) / float64(cuts))
	}
	each := sum[cuts] / float64(n.st.span())
	half := min(each, ovalLong*1.15) * 0.46
	out := p.ink.list()
	for k := range n.st.Chain {
		s := (float64(k) + 0.5) * each
		c := where(s)
		q, _ := stem(c, add(c, sub(where(s+0.3), where(s-0.3))))
		q.ink, q.out = &p.ink, out
		q.oval(0, 0, ovalWide/2*min(1, half/0.6), half, false)
		out = q.out
	}
	if k := n.st.Close; k != nil { // from the first stitch back to the last chain
		s := shape{kind: k, feet: []pt{where(sum[cuts])}, head: where(float64(n.st.Chain)*each + topHalf/2), ink: &p.ink}
		out = append(out, s.paths()...)
	}
	return out
}

// outward is the direction away from the foundation at n.
func (p *plan) outward(n *node) pt {
	switch {
	case p.isCircle(n.line):
		return polar(1, topAt+p.angle(n))
	case p.form == oval && n.bent():
		return polar(1, p.sideAngle(n.side)+n.q)
	case p.form == polygon || p.form == oval:
		if n.corner {
			return p.dirs[2*n.side+1]
		}
		return p.dirs[2*n.side]
	}
	if p.wave != nil {
		return unit(pt{X: -p.wave.slope(n.q), Y: 1})
	}
	return pt{Y: 1}
}

// point is where n stands at a level.
func (p *plan) point(n *node, v float64) pt {
	switch {
	case p.isCircle(n.line):
		return polar(v, topAt+p.angle(n))
	case p.form == oval:
		return p.trackPoint(n, v)
	case p.form == polygon:
		if n.corner {
			return mul(p.dirs[2*n.side+1], v/math.Cos(math.Pi/float64(p.sides)))
		}
		d := p.dirs[2*n.side]
		return add(mul(d, v), mul(pt{X: -d.Y, Y: d.X}, n.q))
	}
	return pt{X: n.q, Y: v + p.wave.at(n.q)}
}
