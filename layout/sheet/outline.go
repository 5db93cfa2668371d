package sheet

import (
	"math"

	"flatwright/fonts"
)

// Outline is a text as a filled path, for what knows no face: where it stands, turned as it is, in its ink. Without segments if
// nothing of it is seen.
func (t *Text) Outline() *Path {
	out := &Path{Class: t.Class, Style: Style{Fill: t.Ink}}
	shown := fonts.Shown(t.Face, t.S)
	left := 0.0
	switch t.Anchor {
	case Middle:
		left = -fonts.Width(t.Face, t.Size, shown) / 2
	case End:
		left = -fonts.Width(t.Face, t.Size, shown)
	}
	sin, cos := math.Sincos(t.Angle * math.Pi / 180)
	at := func(p [2]float64) Point { // y runs downwards, and the angle against the clock
		x, y := left+p[0]*t.Size, p[1]*t.Size
		return Point{X: t.At.X + float64(x*cos) + float64(y*sin), Y: t.At.Y - float64(x*sin) + float64(y*cos)}
	}
	var end Point
	add := func(verb Verb, p ...Point) {
		s := Seg{Verb: verb}
		copy(s.P[:], p)
		out.Segs = append(out.Segs, s)
	}
	for i, c := range fonts.Outline(t.Face, shown) {
		var p [3]Point
		for k, q := range c.Points() {
			p[k] = at(q)
		}
		switch c.Verb {
		case 'M':
			if i > 0 {
				add(Close)
			}
			add(Move, p[0])
			end = p[0]
		case 'L':
			add(Line, p[0])
			end = p[0]
		case 'Q': // the same curve with two control points
			toward := func(a Point) Point { return Point{X: a.X + 2*(p[0].X-a.X)/3, Y: a.Y + 2*(p[0].Y-a.Y)/3} }
			add(Cubic, toward(end), toward(p[1]), p[1])
			end = p[1]
		case 'C':
			add(Cubic, p[0], p[1], p[2])
			end = p[2]
		}
	}
	if len(out.Segs) > 0 {
		add(Close)
	}
	return out
}
