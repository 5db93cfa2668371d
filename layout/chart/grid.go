package chart

import (
	"math"

	"flatwright/layout/sheet"
)

// grid is an index of strokes and boxes, to find a free place: a chain of boxes for each
// square of a stretch of the plane; what lies beyond goes into the squares at its edge.
type grid struct {
	lo         pt
	wide, high int
	head       []int32 // of each square: its first entry, from 1
	next       []int32 // of each entry, from 1
	which      []int32 // the box of an entry
	boxes      [][2]pt
}

const gridCell = 3.0

// gridOver is an empty index over a stretch of the plane.
func gridOver(lo, hi pt) *grid {
	const beyond = 30.0 // mm around
	g := &grid{lo: sub(lo, pt{X: beyond, Y: beyond})}
	g.wide = int((hi.X-lo.X+2*beyond)/gridCell) + 1
	g.high = int((hi.Y-lo.Y+2*beyond)/gridCell) + 1
	g.head = make([]int32, g.wide*g.high)
	return g
}

// newGrid is an index of the marks of a figure that reach into a stretch of it.
func newGrid(f *figure, lo, hi pt) *grid {
	return gridOf(f, lo, hi, func(m *mark) bool { return m.lo.X <= hi.X && m.hi.X >= lo.X && m.lo.Y <= hi.Y && m.hi.Y >= lo.Y })
}

// gridOf is an index of some marks of a figure, over a stretch of it.
func gridOf(f *figure, lo, hi pt, in func(m *mark) bool) *grid {
	g := gridOver(lo, hi)
	strokes := 0
	for i := range f.marks {
		if in(&f.marks[i]) {
			strokes += f.marks[i].strokes()
		}
	}
	g.room(strokes)
	for i := range f.marks {
		if in(&f.marks[i]) {
			g.add(&f.marks[i])
		}
	}
	return g
}

// room makes room for so many boxes, of which most lie in one square or two.
func (g *grid) room(boxes int) {
	g.boxes = make([][2]pt, 0, boxes)
	g.next, g.which = make([]int32, 0, 2*boxes), make([]int32, 0, 2*boxes)
}

// strokes is how many straight lines and curves a mark has.
func (m *mark) strokes() int {
	n := 0
	for _, q := range m.paths {
		n += len(q.Segs) - 1
	}
	return n
}

// add puts the strokes of a mark into the index: a curve by the box of its controls.
func (g *grid) add(m *mark) {
	for _, q := range m.paths {
		var at, first pt
		for _, s := range q.Segs {
			lo, hi := at, at
			n := 1
			switch s.Verb {
			case sheet.Move:
				at, first = s.P[0], s.P[0]
				continue
			case sheet.Close:
				s.P[0] = first
			case sheet.Cubic:
				n = 3
			}
			for _, p := range s.P[:n] {
				lo = pt{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
				hi = pt{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
			}
			at = s.P[n-1]
			g.put(lo, hi)
		}
	}
}

func (g *grid) put(lo, hi pt) {
	k := int32(len(g.boxes))
	g.boxes = append(g.boxes, [2]pt{lo, hi})
	x0, x1, y0, y1 := g.squares(lo, hi)
	for y := y0; y <= y1; y++ {
		for c := y*g.wide + x0; c <= y*g.wide+x1; c++ {
			g.next = append(g.next, g.head[c])
			g.which = append(g.which, k)
			g.head[c] = int32(len(g.next))
		}
	}
}

// free reports whether nothing reaches into the box.
func (g *grid) free(lo, hi pt) bool {
	x0, x1, y0, y1 := g.squares(lo, hi)
	for y := y0; y <= y1; y++ {
		for c := y*g.wide + x0; c <= y*g.wide+x1; c++ {
			for e := g.head[c]; e > 0; e = g.next[e-1] {
				b := &g.boxes[g.which[e-1]]
				if b[0].X < hi.X && b[1].X > lo.X && b[0].Y < hi.Y && b[1].Y > lo.Y {
					return false
				}
			}
		}
	}
	return true
}

// squares are those that a box lies over.
func (g *grid) squares(lo, hi pt) (x0, x1, y0, y1 int) {
	at := func(v, from float64, n int) int { return min(max(int(math.Floor((v-from)/gridCell)), 0), n-1) }
	return at(lo.X, g.lo.X, g.wide), at(hi.X, g.lo.X, g.wide), at(lo.Y, g.lo.Y, g.high), at(hi.Y, g.lo.Y, g.high)
}

// passes reports whether a line of points goes clear of everything.
func (g *grid) passes(line []pt) bool {
	const piece, room = 0.4, 0.12
	for i := 1; i < len(line); i++ {
		a, d := line[i-1], sub(line[i], line[i-1])
		n := max(math.Ceil(long(d)/piece), 1)
		for k := range int(n) {
			b, c := add(a, mul(d, float64(k)/n)), add(a, mul(d, float64(k+1)/n))
			if !g.free(pt{X: min(b.X, c.X) - room, Y: min(b.Y, c.Y) - room}, pt{X: max(b.X, c.X) + room, Y: max(b.Y, c.Y) + room}) {
				return false
			}
		}
	}
	return true
}
