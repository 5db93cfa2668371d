package schematic

import (
	"slices"
	"strings"
)

// mirrored is the piece as its mirror image, under its own name.
func (m *Made) mirrored(q *Piece, i int) *Made {
	c := *m
	c.Piece, c.ID, c.Name, c.MirrorOf = q, ID(q.Name), q.Name, m.Name
	c.Make = max(1, q.Make.Int(i, 1))
	if q.Kind != KindPiece {
		c.Kind = q.Kind
	}
	flip := func(p Point) Point { return Point{-p.X + 0, p.Y} }
	flips := func(ps []Point) []Point {
		out := make([]Point, len(ps))
		for i, p := range ps {
			out[i] = flip(p)
		}
		return out
	}
	c.Views = nil
	for _, v := range m.Views {
		n := v
		n.Outline, n.Lines, n.Ribs, n.Notches, n.Marks = nil, nil, nil, nil, nil
		for _, l := range v.Outline {
			f := flips(l)
			slices.Reverse(f)
			n.Outline = append(n.Outline, f)
		}
		for _, l := range v.Lines {
			n.Lines = append(n.Lines, Line{l.Kind, flip(l.A), flip(l.B), l.Name})
		}
		for _, r := range v.Ribs {
			n.Ribs = append(n.Ribs, Hatch{flips(r.Poly), flip(r.Dir), r.Gap})
		}
		n.Parts, n.Points = nil, nil
		for _, k := range v.Points {
			n.Points = append(n.Points, Named{k.Name, flip(k.At)})
		}
		for _, k := range v.Parts {
			n.Parts = append(n.Parts, PartName{k.Name, flip(k.At), k.H})
		}
		for _, k := range v.Marks {
			k.At = flip(k.At)
			n.Marks = append(n.Marks, k)
		}
		n.Arrow, n.ArrowAt = flip(v.Arrow), flip(v.ArrowAt)
		c.Views = append(c.Views, n)
	}
	c.Measures = nil
	for _, s := range m.Measures {
		s.ID = mirrorID(c.ID + s.ID[len(m.ID):])
		s.A, s.B = flip(s.A), flip(s.B)
		c.Measures = append(c.Measures, s)
	}
	c.Edges = nil
	for _, e := range m.Edges {
		e.Path = flips(e.Path)
		slices.Reverse(e.Path)
		e.Left, e.Right = e.Right, e.Left
		c.Edges = append(c.Edges, e)
	}
	return &c
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
