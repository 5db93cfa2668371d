package chart

import "math"

// grid is an index of strokes and boxes, to find a free place.
type grid struct{ cells map[[2]int][][2]pt }

const gridCell = 3.0

func newGrid(f *figure) *grid {
	g := &grid{cells: map[[2]int][][2]pt{}}
	for i := range f.marks {
		g.add(&f.marks[i])
	}
	return g
}

// add puts the strokes of a mark into the index.
func (g *grid) add(m *mark) {
	for _, q := range m.paths {
		for _, run := range q.Polyline() {
			for k := 1; k < len(run); k++ {
				a, b := run[k-1], run[k]
				g.put(pt{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, pt{X: max(a.X, b.X), Y: max(a.Y, b.Y)})
			}
		}
	}
}

func (g *grid) put(lo, hi pt) {
	g.over(lo, hi, func(c [2]int) bool {
		g.cells[c] = append(g.cells[c], [2]pt{lo, hi})
		return true
	})
}

// free reports whether nothing reaches into the box.
func (g *grid) free(lo, hi pt) bool {
	return g.over(lo, hi, func(c [2]int) bool {
		for _, b := range g.cells[c] {
			if b[0].X < hi.X && b[1].X > lo.X && b[0].Y < hi.Y && b[1].Y > lo.Y {
				return false
			}
		}
		return true
	})
}

func (g *grid) over(lo, hi pt, do func(c [2]int) bool) bool {
	for x := int(math.Floor(lo.X / gridCell)); x <= int(math.Floor(hi.X/gridCell)); x++ {
		for y := int(math.Floor(lo.Y / gridCell)); y <= int(math.Floor(hi.Y/gridCell)); y++ {
			if !do([2]int{x, y}) {
				return false
			}
		}
	}
	return true
}
