package sheet

import (
	"fmt"
	"math"
)

// Problem is a place where a sheet can't be read: two things that lie on each
// other.
type Problem struct {
	What ProblemKind
	A, B string // the texts, or the class of the line
	At   Point
}

// ProblemKind is which two things meet.
type ProblemKind int

// The kinds of problem.
const (
	LabelOnLabel ProblemKind = iota
	LabelOnLine
	LabelOffPage
	LineOffPage
)

// String says the problem in words.
func (p Problem) String() string {
	words := [...]string{"label on label", "label on line", "label off the page", "line off the page"}[p.What]
	return fmt.Sprintf("%s: %q, %q at %.1f, %.1f mm", words, p.A, p.B, p.At.X, p.At.Y)
}

// hair is how deep, in mm, two things may reach into each other before it counts:
// positions are rounded to 0.01 mm.
const hair = 0.015

// cellSize is the side of a cell of the index, in mm.
const cellSize = 8.0

type cell struct{ x, y int }

type stroke struct {
	a, b  Point
	half  float64
	path  int // its place among the sheet's paths
	class string
}

// Overlaps finds every two labels that share room, every label that a line
// touches (curves flattened, the line's width counted, dashes taken as whole), and
// everything that reaches beyond margin mm from the paper's edge. Grounds that
// are only filled with a light ink are no lines.
func Overlaps(s *Sheet, margin float64) []Problem {
	var texts []*Text
	var strokes []stroke
	paths := 0
	Walk(&s.Root, func(it Item) {
		switch it := it.(type) {
		case *Text:
			if it.S != "" {
				texts = append(texts, it)
			}
		case *Path:
			strokes = appendStrokes(strokes, it, paths)
			paths++
		}
	})
	var found []Problem
	boxes := make([]Box, len(texts))
	cells := map[cell][]int{}
	for i, t := range texts {
		boxes[i] = t.Box().Grown(-hair)
		lo, hi := boxes[i].Bounds()
		if lo.X < margin || lo.Y < margin || hi.X > s.W-margin || hi.Y > s.H-margin {
			found = append(found, Problem{LabelOffPage, t.S, "", lo})
		}
		over(lo, hi, func(c cell) { cells[c] = append(cells[c], i) })
	}
	seen := map[[2]int]bool{}
	for i := range texts {
		lo, hi := boxes[i].Bounds()
		over(lo, hi, func(c cell) {
			for _, j := range cells[c] {
				if j <= i || seen[[2]int{i, j}] {
					continue
				}
				seen[[2]int{i, j}] = true
				if boxes[i].Overlaps(boxes[j]) {
					found = append(found, Problem{LabelOnLabel, texts[i].S, texts[j].S, boxes[i].C})
				}
			}
		})
	}
	off := -1 // the last path found to reach off the page
	for _, st := range strokes {
		lo := Point{min(st.a.X, st.b.X) - st.half, min(st.a.Y, st.b.Y) - st.half}
		hi := Point{max(st.a.X, st.b.X) + st.half, max(st.a.Y, st.b.Y) + st.half}
		if (lo.X < margin-hair || lo.Y < margin-hair || hi.X > s.W-margin+hair || hi.Y > s.H-margin+hair) && off != st.path {
			off = st.path
			found = append(found, Problem{LineOffPage, st.class, "", lo})
		}
		along(st, func(c cell) {
			for _, i := range cells[c] {
				if key := [2]int{-1 - st.path, i}; !seen[key] && boxes[i].Grown(st.half).Touches(st.a, st.b) {
					seen[key] = true
					found = append(found, Problem{LabelOnLine, texts[i].S, st.class, boxes[i].C})
				}
			}
		})
	}
	return found
}

func appendStrokes(strokes []stroke, p *Path, path int) []stroke {
	half := p.Style.Width / 2
	if p.Style.Stroke == None || p.Style.Width <= 0 {
		if p.Style.Fill != Black && p.Style.Fill != Grey {
			return strokes
		}
		half = 0
	}
	for _, run := range p.Polyline() {
		for i := 1; i < len(run); i++ {
			strokes = append(strokes, stroke{run[i-1], run[i], half, path, p.Class})
		}
	}
	return strokes
}

func cellAt(p Point) cell {
	return cell{int(math.Floor(p.X / cellSize)), int(math.Floor(p.Y / cellSize))}
}

func over(lo, hi Point, f func(cell)) {
	a, b := cellAt(lo), cellAt(hi)
	for x := a.x; x <= b.x; x++ {
		for y := a.y; y <= b.y; y++ {
			f(cell{x, y})
		}
	}
}

// along calls f with the cells near a line: piece by piece, so that a long slanted
// line doesn't take in the whole page.
func along(st stroke, f func(cell)) {
	n := int(math.Hypot(st.b.X-st.a.X, st.b.Y-st.a.Y)/cellSize) + 1
	for i := range n {
		t0, t1 := float64(i)/float64(n), float64(i+1)/float64(n)
		p := Point{st.a.X + t0*(st.b.X-st.a.X), st.a.Y + t0*(st.b.Y-st.a.Y)}
		q := Point{st.a.X + t1*(st.b.X-st.a.X), st.a.Y + t1*(st.b.Y-st.a.Y)}
		over(Point{min(p.X, q.X) - st.half, min(p.Y, q.Y) - st.half},
			Point{max(p.X, q.X) + st.half, max(p.Y, q.Y) + st.half}, f)
	}
}
