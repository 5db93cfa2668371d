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
	l := looking{s: s, margin: margin, cells: map[cell][]int{}, seen: map[[2]int]bool{}, off: -1}
	var strokes []stroke
	paths := 0
	Walk(&s.Root, func(it Item) {
		switch it := it.(type) {
		case *Text:
			if it.S != "" {
				l.label(it)
			}
		case *Path:
			strokes = appendStrokes(strokes, it, paths)
			paths++
		}
	})
	for i := range l.texts {
		l.labels(i)
	}
	for _, st := range strokes {
		l.line(st)
	}
	return l.found
}

// looking is a sheet while what lies on each other is looked for.
type looking struct {
	s      *Sheet
	margin float64
	texts  []*Text
	boxes  []Box
	cells  map[cell][]int // the labels in each
	seen   map[[2]int]bool
	off    int // the last path found to reach off the page
	found  []Problem
}

// label puts a label into the cells that it lies in.
func (l *looking) label(t *Text) {
	box := t.Box().Grown(-hair)
	lo, hi := box.Bounds()
	if l.offPage(lo, hi, 0) {
		l.found = append(l.found, Problem{LabelOffPage, t.S, "", lo})
	}
	i := len(l.texts)
	l.texts, l.boxes = append(l.texts, t), append(l.boxes, box)
	over(lo, hi, func(c cell) { l.cells[c] = append(l.cells[c], i) })
}

func (l *looking) offPage(lo, hi Point, by float64) bool {
	least := l.margin - by
	return lo.X < least || lo.Y < least || hi.X > l.s.W-least || hi.Y > l.s.H-least
}

// labels finds the later labels that share room with one.
func (l *looking) labels(i int) {
	lo, hi := l.boxes[i].Bounds()
	over(lo, hi, func(c cell) {
		for _, j := range l.cells[c] {
			if key := [2]int{i, j}; j > i && !l.seen[key] {
				l.seen[key] = true
				if l.boxes[i].Overlaps(l.boxes[j]) {
					l.found = append(l.found, Problem{LabelOnLabel, l.texts[i].S, l.texts[j].S, l.boxes[i].C})
				}
			}
		}
	})
}

// line finds the labels that a stroke touches, and whether it is on the page.
func (l *looking) line(st stroke) {
	lo := Point{min(st.a.X, st.b.X) - st.half, min(st.a.Y, st.b.Y) - st.half}
	hi := Point{max(st.a.X, st.b.X) + st.half, max(st.a.Y, st.b.Y) + st.half}
	if l.off != st.path && l.offPage(lo, hi, hair) {
		l.off = st.path
		l.found = append(l.found, Problem{LineOffPage, st.class, "", lo})
	}
	along(st, func(c cell) {
		for _, i := range l.cells[c] {
			if key := [2]int{-1 - st.path, i}; !l.seen[key] && l.boxes[i].Grown(st.half).Touches(st.a, st.b) {
				l.seen[key] = true
				l.found = append(l.found, Problem{LabelOnLine, l.texts[i].S, st.class, l.boxes[i].C})
			}
		}
	})
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
