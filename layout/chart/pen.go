package chart

import (
	"math"

	"flatwright/layout/sheet"
)

type pt = sheet.Point

func add(p, q pt) pt         { return pt{X: p.X + q.X, Y: p.Y + q.Y} }
func sub(p, q pt) pt         { return pt{X: p.X - q.X, Y: p.Y - q.Y} }
func mul(p pt, k float64) pt { return pt{X: p.X * k, Y: p.Y * k} }
func long(p pt) float64      { return math.Sqrt(p.X*p.X + p.Y*p.Y) }

// unit is p with the length 1, and straight up if it has none.
func unit(p pt) pt {
	if l := long(p); l > 1e-9 {
		return mul(p, 1/l)
	}
	return pt{Y: 1}
}

// right is p turned a quarter clockwise, where y goes up.
func right(p pt) pt { return pt{X: p.Y, Y: -p.X} }

// polar is the point at a distance and an angle in radians, anticlockwise.
func polar(r, angle float64) pt {
	sin, cos := math.Sincos(angle)
	return pt{X: r * cos, Y: r * sin}
}

// pen draws in the frame of one stitch: u across it, v up along it, in mm. The
// plane's y goes up; the page turns it over.
type pen struct {
	o, u, v pt
	out     []*sheet.Path
	ink     *ink // nil: each stroke is made for itself
}

// stem is a pen with its foot at foot that looks to head, and the distance between.
func stem(foot, head pt) (pen, float64) {
	d := sub(head, foot)
	v := unit(d)
	return pen{o: foot, u: right(v), v: v}, long(d)
}

func (p *pen) at(u, v float64) pt { return add(p.o, add(mul(p.u, u), mul(p.v, v))) }

// stroke begins another stroke of n segments: those of a symbol that are alike are one path.
func (p *pen) stroke(n int, filled bool) []sheet.Seg {
	st := sheet.Style{Width: stroke, Stroke: sheet.Black}
	if filled {
		st = sheet.Style{Fill: sheet.Black}
	}
	if k := len(p.out) - 1; k >= 0 && p.out[k].Style.Fill == st.Fill {
		q := p.out[k]
		q.Segs = p.ink.segments(q.Segs, n)
		return q.Segs[len(q.Segs)-n:]
	}
	if p.out == nil {
		p.out = p.ink.list()
	}
	segs := p.ink.segments(nil, n)
	p.out = append(p.out, p.ink.path(segs, st, "stitch"))
	return segs
}

// line joins points given as u, v, u, v …
func (p *pen) line(uv ...float64) {
	segs := p.stroke(len(uv)/2, false)
	for i := range segs {
		verb := sheet.Line
		if i == 0 {
			verb = sheet.Move
		}
		segs[i] = sheet.Seg{Verb: verb, P: [3]pt{p.at(uv[2*i], uv[2*i+1])}}
	}
}

// curve is one cubic through the controls u, v of its four points.
func (p *pen) curve(u0, v0, u1, v1, u2, v2, u3, v3 float64) {
	segs := p.stroke(2, false)
	segs[0] = sheet.Seg{Verb: sheet.Move, P: [3]pt{p.at(u0, v0)}}
	segs[1] = sheet.Seg{Verb: sheet.Cubic, P: [3]pt{p.at(u1, v1), p.at(u2, v2), p.at(u3, v3)}}
}

// round is the distance of the controls at which four curves make a circle within
// 0.03 % of its radius.
const round = 0.5522847498

// oval is an ellipse around u, v with half axes a across and b along.
func (p *pen) oval(u, v, a, b float64, filled bool) {
	at := func(x, y float64) pt { return p.at(u+a*x, v+b*y) }
	copy(p.stroke(6, filled), []sheet.Seg{
		{Verb: sheet.Move, P: [3]pt{at(1, 0)}},
		{Verb: sheet.Cubic, P: [3]pt{at(1, round), at(round, 1), at(0, 1)}},
		{Verb: sheet.Cubic, P: [3]pt{at(-round, 1), at(-1, round), at(-1, 0)}},
		{Verb: sheet.Cubic, P: [3]pt{at(-1, -round), at(-round, -1), at(0, -1)}},
		{Verb: sheet.Cubic, P: [3]pt{at(round, -1), at(1, -round), at(1, 0)}},
		{Verb: sheet.Close},
	})
}
