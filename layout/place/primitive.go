package place

import (
	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// newText is a text with its measured width; what the face can't draw is replaced
// as every writer will.
func newText(s string, face fonts.Face, size float64, at pt, a sheet.Anchor, class string) *sheet.Text {
	return &sheet.Text{S: s, At: at, Anchor: a, Face: face, Size: size,
		Width: fonts.Width(face, size, s), Ink: sheet.Black, Class: class}
}

// room is the width that a text may take anywhere.
func room(face fonts.Face, size float64, s string) float64 {
	return sheet.Elsewhere * fonts.Width(face, size, s)
}

func segs(ps []pt, closed bool) []sheet.Seg {
	out := make([]sheet.Seg, 0, len(ps)+1)
	for i, p := range ps {
		v := sheet.Line
		if i == 0 {
			v = sheet.Move
		}
		out = append(out, sheet.Seg{Verb: v, P: [3]pt{p}})
	}
	if closed {
		out = append(out, sheet.Seg{Verb: sheet.Close})
	}
	return out
}

// line is an open path through the points.
func line(class string, width float64, ps ...pt) *sheet.Path {
	return &sheet.Path{Segs: segs(ps, false), Class: class, Style: sheet.Style{Width: width, Stroke: sheet.Black}}
}

func boxPath(x, y, w, h float64) *sheet.Path {
	return &sheet.Path{Segs: segs([]pt{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}, true)}
}

// filled is a closed black shape.
func filled(class string, ps ...pt) *sheet.Path {
	return &sheet.Path{Segs: segs(ps, true), Class: class, Style: sheet.Style{Fill: sheet.Black}}
}

// ring is a circle as four curves. 0.5523 is the usual distance of the controls, at
// which a quarter is round within 0.03 % of the radius.
func ring(c pt, r float64) []sheet.Seg {
	const k = 0.5522847498
	p := func(x, y float64) pt { return pt{X: c.X + r*x, Y: c.Y + r*y} }
	return []sheet.Seg{
		{Verb: sheet.Move, P: [3]pt{p(1, 0)}},
		{Verb: sheet.Cubic, P: [3]pt{p(1, k), p(k, 1), p(0, 1)}},
		{Verb: sheet.Cubic, P: [3]pt{p(-k, 1), p(-1, k), p(-1, 0)}},
		{Verb: sheet.Cubic, P: [3]pt{p(-1, -k), p(-k, -1), p(0, -1)}},
		{Verb: sheet.Cubic, P: [3]pt{p(k, -1), p(1, -k), p(1, 0)}},
		{Verb: sheet.Close},
	}
}

// ends are the two ends of a dimension line: arrowheads that point outwards, or
// slanted strokes where the line is too short for them.
func ends(s seg) []sheet.Item {
	long := dist(s.a, s.b)
	if long == 0 {
		return nil
	}
	if long < openArrow {
		a, b := strokes(s)
		return []sheet.Item{line("dimension", narrow, a.a, a.b), line("dimension", narrow, b.a, b.b)}
	}
	u := mul(sub(s.b, s.a), 1/long)
	n := pt{X: -u.Y, Y: u.X}
	const l, h = 1.9, 0.38
	head := func(tip, u pt) sheet.Item {
		back := sub(tip, mul(u, l))
		return filled("dimension", tip, add(back, mul(n, h)), sub(back, mul(n, h)))
	}
	return []sheet.Item{head(s.a, mul(u, -1)), head(s.b, u)}
}

// strokes are those through the ends of a dimension line that has no room for arrowheads: they reach past it.
func strokes(s seg) (a, b seg) {
	u := mul(sub(s.b, s.a), 1/dist(s.a, s.b))
	d := mul(add(u, pt{X: -u.Y, Y: u.X}), 0.55)
	return seg{sub(s.a, d), add(s.a, d)}, seg{sub(s.b, d), add(s.b, d)}
}
