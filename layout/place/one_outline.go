package place

import (
	"math"
	"slices"
	"strings"

	"flatwright/schematic"
)

// oneOutline is the pieces with each back that differs from a front in its neck alone drawn on that front: one piece
// of that outline with both necks and the measurements of both. A front and a back that differ elsewhere stay as they are.
func oneOutline(pieces []*schematic.Made) []*schematic.Made {
	out := slices.Clone(pieces)
	for _, back := range pieces {
		if back.Kind != schematic.KindBack || len(back.Views) != 1 {
			continue
		}
		for i, front := range out {
			if front.Kind != schematic.KindFront || len(front.Views) != 1 {
				continue
			}
			if both := onFront(front, back); both != nil {
				out[i] = both
				out = slices.DeleteFunc(out, func(m *schematic.Made) bool { return m == back })
				break
			}
		}
	}
	return out
}

// sameOutline is how far apart two outlines may lie that are one, mm: half of what is printed.
const sameOutline = 2.5

// onFront is the front with the neck of the back on it, seen from the front, or nil if they differ elsewhere.
func onFront(front, back *schematic.Made) *schematic.Made {
	fv, bv := &front.Views[0], &back.Views[0]
	if len(fv.Outline) != 1 || len(bv.Outline) != 1 {
		return nil
	}
	f, b := fv.Outline[0], bv.Outline[0]
	fc, bc := lowerMiddle(f), lowerMiddle(b)
	at := func(p schematic.Point) schematic.Point {
		return schematic.Point{X: fc.X - (p.X - bc.X) + 0, Y: fc.Y + (p.Y - bc.Y)}
	}
	seen := through(b, at)
	necks := neckPaths(back, at)
	// What is bound off at two edges staggers by a row, so that up and down a row counts as little as what is printed.
	flat := func(p schematic.Point) schematic.Point {
		return schematic.Point{X: p.X, Y: p.Y * min(1, 0.9*sameOutline/rowHeight(front))}
	}
	seen = through(seen, flat)
	if len(necks) == 0 || !liesOn(seen, neckPaths(back, func(p schematic.Point) schematic.Point { return flat(at(p)) }), through(f, flat)) || !liesOn(through(f, flat), neckPaths(front, flat), seen) {
		return nil
	}
	both := *front
	both.Name = front.Name + " and " + back.Name
	view := *fv
	view.Lines = slices.Clone(fv.Lines)
	for _, path := range necks {
		for i := 1; i < len(path); i++ {
			view.Lines = append(view.Lines, schematic.Line{Kind: schematic.LineBehind, A: path[i-1], B: path[i]})
		}
	}
	both.Views = []schematic.View{view}
	both.Measures = append(slices.Clone(front.Measures), neckMeasures(front, back, at)...)
	return &both
}

// neckMeasures are the measurements of the neck of the back that the front does not have, where at puts them.
func neckMeasures(front, back *schematic.Made, at func(schematic.Point) schematic.Point) []schematic.Measure {
	var out []schematic.Measure
	for _, m := range back.Measures {
		said := func(o schematic.Measure) bool {
			return o.Name == m.Name || o.Axis == m.Axis && o.Length.Eq(m.Length) && strings.HasSuffix(o.Name, m.Name)
		}
		if !m.Main || !strings.Contains(m.Name, "neck") || slices.ContainsFunc(front.Measures, said) {
			continue
		}
		m.A, m.B = at(m.A), at(m.B)
		if m.Axis == schematic.Horizontal && m.B.X < m.A.X || m.Axis == schematic.Vertical && m.B.Y < m.A.Y {
			m.A, m.B = m.B, m.A
		}
		out = append(out, m)
	}
	return out
}

// rowHeight is that of the highest rows along the edges of a piece, mm.
func rowHeight(m *schematic.Made) float64 {
	high := 0.1
	for _, e := range m.Edges {
		if e.Rows > 0 && len(e.Path) > 1 {
			high = max(high, math.Abs(e.Path[len(e.Path)-1].Y-e.Path[0].Y)/float64(e.Rows))
		}
	}
	return high
}

func lowerMiddle(loop []schematic.Point) schematic.Point {
	lo, hi := loop[0], loop[0]
	for _, p := range loop {
		lo = schematic.Point{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
		hi.X = max(hi.X, p.X)
	}
	return schematic.Point{X: (lo.X + hi.X) / 2, Y: lo.Y}
}

// neckPaths are the ways of the edges of a piece that are its neck, each place put through at.
func neckPaths(m *schematic.Made, at func(schematic.Point) schematic.Point) [][]schematic.Point {
	var out [][]schematic.Point
	for _, e := range m.Edges {
		if !strings.Contains(strings.ToLower(e.Name), "neck") {
			continue
		}
		out = append(out, through(e.Path, at))
	}
	return out
}

// liesOn reports whether all corners of a loop, but for those of its necks, lie on another loop.
func liesOn(loop []schematic.Point, necks [][]schematic.Point, other []schematic.Point) bool {
	closed := append(slices.Clone(other), other[0])
	for _, p := range loop {
		neck := slices.ContainsFunc(necks, func(path []schematic.Point) bool { return distToPath(path, p) < 0.01 })
		if !neck && distToPath(closed, p) > sameOutline {
			return false
		}
	}
	return true
}

// distToPath is how far a place is from a way.
func distToPath(path []schematic.Point, p schematic.Point) float64 {
	best := math.Inf(1)
	for i := 1; i < len(path); i++ {
		a, d := path[i-1], schematic.Point{X: path[i].X - path[i-1].X, Y: path[i].Y - path[i-1].Y}
		t := 0.0
		if l := float64(d.X*d.X) + float64(d.Y*d.Y); l > 0 {
			t = min(1, max(0, (float64((p.X-a.X)*d.X)+float64((p.Y-a.Y)*d.Y))/l))
		}
		best = min(best, math.Hypot(p.X-a.X-float64(t*d.X), p.Y-a.Y-float64(t*d.Y)))
	}
	return best
}

// through is a way with each of its places put through at.
func through(path []schematic.Point, at func(schematic.Point) schematic.Point) []schematic.Point {
	out := make([]schematic.Point, len(path))
	for i, p := range path {
		out[i] = at(p)
	}
	return out
}
