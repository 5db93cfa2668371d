package schematic

import (
	"slices"
	"strings"

	"flatwright/schematic/finding"
)

// mirrored is the piece as its mirror image, under its own name.
func (m *Made) mirrored(q *Piece, i int) *Made {
	c := *m
	c.Piece, c.ID, c.Name, c.MirrorOf = q, ID(q.Name), q.Name, m.Name
	c.Make = max(1, q.Make.Int(i, 1))
	if q.Kind != KindPiece {
		c.Kind = q.Kind
	}
	c.Views = mapped(m.Views, View.mirrored)
	c.Measures = mapped(m.Measures, func(s Measure) Measure {
		s.ID = mirrorID(c.ID + s.ID[len(m.ID):])
		s.A, s.B = s.A.mirrored(), s.B.mirrored()
		return s
	})
	c.Edges = mapped(m.Edges, Edge.Mirrored)
	return &c
}

func (p Point) mirrored() Point { return Point{-p.X + 0, p.Y} }

// turnedOver is a path as its mirror image, which runs the other way so that it keeps its direction around the piece.
func turnedOver(path []Point) []Point {
	out := mapped(path, Point.mirrored)
	slices.Reverse(out)
	return out
}

// Mirrored is the edge as its mirror image.
func (e Edge) Mirrored() Edge {
	e.Path, e.Left, e.Right = turnedOver(e.Path), e.Right, e.Left
	return e
}

func (v View) mirrored() View {
	v.Outline = mapped(v.Outline, turnedOver)
	v.Lines = mapped(v.Lines, func(l Line) Line { return Line{l.Kind, l.A.mirrored(), l.B.mirrored(), l.Name} })
	v.Ribs = mapped(v.Ribs, func(r Hatch) Hatch { return Hatch{mapped(r.Poly, Point.mirrored), r.Dir.mirrored(), r.Gap} })
	v.Notches = nil
	v.Points = mapped(v.Points, func(k Named) Named { return Named{k.Name, k.At.mirrored()} })
	v.Parts = mapped(v.Parts, func(k PartName) PartName { return PartName{k.Name, k.At.mirrored(), k.H} })
	v.Marks = mapped(v.Marks, func(k Marked) Marked { return Marked{k.What, k.At.mirrored(), k.Name} })
	v.Arrow, v.ArrowAt = v.Arrow.mirrored(), v.ArrowAt.mirrored()
	return v
}

// mapped is a list with each of its things put through f; of none it is nil.
func mapped[A, B any](list []A, f func(A) B) []B {
	var out []B
	for _, a := range list {
		out = append(out, f(a))
	}
	return out
}

func mirrorID(id string) string {
	switch {
	case strings.HasSuffix(id, ".left"):
		return strings.TrimSuffix(id, ".left") + ".right"
	case strings.HasSuffix(id, ".right"):
		return strings.TrimSuffix(id, ".right") + ".left"
	}
	return id
}

// OtherSide is a name, or a reference to an edge, with each left a right and each right a left: what it says of the other side of the body.
func OtherSide(name string) string {
	words := strings.Fields(name)
	for i, w := range words {
		other := ""
		switch {
		case strings.EqualFold(w, "left"):
			other = "right"
		case strings.EqualFold(w, "right"):
			other = "left"
		default:
			continue
		}
		if w[0] < 'a' {
			other = finding.Capital(other)
		}
		words[i] = other
	}
	return strings.Join(words, " ")
}
