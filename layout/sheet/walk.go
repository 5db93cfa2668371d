package sheet

import (
	"errors"
	"math"
	"slices"

	"flatwright/fonts"
)

// Walk calls f with g and everything in it, in drawing order, a group before its
// items.
func Walk(g *Group, f func(Item)) {
	f(g)
	for _, it := range g.Items {
		if sub, ok := it.(*Group); ok {
			Walk(sub, f)
			continue
		}
		f(it)
	}
}

// Quantise brings a length in mm to the 0.01 mm grid on which every writer
// draws.
func Quantise(mm float64) float64 { return math.Round(mm*100) / 100 }

// ErrNotFinite is for a sheet with a position that is not a number.
var ErrNotFinite = errors.New("a position or size on the sheet is not a finite number")

// Finite returns ErrNotFinite if any number on the sheet is infinite or no number.
func (s *Sheet) Finite() error {
	ok := finite(s.W, s.H)
	Walk(&s.Root, func(it Item) {
		switch it := it.(type) {
		case *Path:
			ok = ok && finite(it.Style.Width) && finite(it.Style.Dash...)
			for i := range it.Segs {
				for _, p := range it.Segs[i].Points() {
					ok = ok && finite(p.X, p.Y)
				}
			}
		case *Text:
			ok = ok && finite(it.At.X, it.At.Y, it.Angle, it.Size)
		case *Picture:
			ok = ok && finite(it.At.X, it.At.Y, it.W, it.H)
		}
	})
	if !ok {
		return ErrNotFinite
	}
	return nil
}

func finite(vs ...float64) bool {
	return !slices.ContainsFunc(vs, func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) })
}

// Points are the points that the segment's verb uses.
func (s *Seg) Points() []Point {
	switch s.Verb {
	case Move, Line:
		return s.P[:1]
	case Cubic:
		return s.P[:3]
	}
	return nil
}

// Corners are the four corners of the text's box, from the left end of its
// descent anticlockwise: ascent, descent and measured width, turned with it.
func (t *Text) Corners() [4]Point {
	w := fonts.Width(t.Face, t.Size, t.S)
	left := 0.0
	switch t.Anchor {
	case Middle:
		left = -w / 2
	case End:
		left = -w
	}
	up, down := fonts.Ascent(t.Face)*t.Size, fonts.Descent(t.Face)*t.Size
	sin, cos := math.Sincos(t.Angle * math.Pi / 180)
	at := func(x, y float64) Point {
		return Point{t.At.X + x*cos + y*sin, t.At.Y - x*sin + y*cos}
	}
	return [4]Point{at(left, down), at(left+w, down), at(left+w, -up), at(left, -up)}
}

// Bounds is the smallest upright box around the item's points, control points and
// text boxes, without line widths; ok is false if it holds nothing.
func Bounds(it Item) (lo, hi Point, ok bool) {
	b := box{Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}}
	if g, isGroup := it.(*Group); isGroup {
		Walk(g, b.take)
	} else {
		b.take(it)
	}
	if b.lo.X > b.hi.X {
		return lo, hi, false
	}
	return b.lo, b.hi, true
}

// box is the smallest upright box around what it took.
type box struct{ lo, hi Point }

func (b *box) add(list []Point) {
	for _, p := range list {
		b.lo = Point{min(b.lo.X, p.X), min(b.lo.Y, p.Y)}
		b.hi = Point{max(b.hi.X, p.X), max(b.hi.Y, p.Y)}
	}
}

// take takes the points that an item keeps within.
func (b *box) take(it Item) {
	switch it := it.(type) {
	case *Path:
		for i := range it.Segs {
			b.add(it.Segs[i].Points())
		}
	case *Text:
		corners := it.Corners()
		b.add(corners[:])
	case *Picture:
		b.add([]Point{it.At, {it.At.X + it.W, it.At.Y + it.H}})
	}
}
