package grade

import (
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/expr"
)

// oneSize is the pattern with size i alone; parts names pieces that are taken in
// another size.
func oneSize(p *schematic.Pattern, i int, parts map[string]int) *schematic.Pattern {
	q := *p
	name := p.Sizes.Names[i]
	q.Sizes = expr.Sizes{Names: []string{name}, Groups: []int{1}}
	q.Sample = -1
	pick := func(at int) func(expr.Graded) expr.Graded {
		return func(g expr.Graded) expr.Graded {
			if g.IsZero() {
				return g
			}
			v, has := g.At(at)
			out := expr.Of(v)
			out.Has[0] = has
			return out
		}
	}
	q.Bodies, q.Finished = writtenOf(p.Bodies, pick(i)), writtenOf(p.Finished, pick(i))
	q.Pieces = nil
	for _, piece := range p.Pieces {
		at := i
		if j, ok := parts[piece.Name]; ok {
			at = j
		}
		q.Pieces = append(q.Pieces, remake(piece, pick(at)))
	}
	q.Joins = slices.Clone(p.Joins)
	for k := range q.Joins {
		q.Joins[k].Ease = pick(i)(q.Joins[k].Ease)
	}
	q.Yarn = slices.Clone(p.Yarn)
	for k := range q.Yarn {
		q.Yarn[k].Amount = pick(i)(q.Yarn[k].Amount)
	}
	q.Grading, q.Graded, q.Calls = nil, nil, nil
	return &q
}

func writtenOf(all []schematic.Written, f func(expr.Graded) expr.Graded) []schematic.Written {
	out := slices.Clone(all)
	for k := range out {
		out[k].Low, out[k].High, out[k].Other = f(out[k].Low), f(out[k].High), f(out[k].Other)
	}
	return out
}

// remake is the piece with every graded value put through f.
func remake(q *schematic.Piece, f func(expr.Graded) expr.Graded) *schematic.Piece {
	c := *q
	c.Make = f(q.Make)
	if q.Motifs != nil {
		m := *q.Motifs
		m.Across, m.Joining, m.Columns, m.Rows = f(m.Across), f(m.Joining), f(m.Columns), f(m.Rows)
		c.Motifs = &m
	}
	c.Sections = remakeAll(q.Sections, f)
	return &c
}

func remakeAll(list []schematic.Section, f func(expr.Graded) expr.Graded) []schematic.Section {
	if list == nil {
		return nil
	}
	out := make([]schematic.Section, len(list))
	for i, s := range list {
		out[i] = remakeOne(s, f)
		b := out[i].Base()
		b.To = f(b.To)
	}
	return out
}

func remakeOne(s schematic.Section, f func(expr.Graded) expr.Graded) schematic.Section {
	amount := func(a schematic.Amount) schematic.Amount {
		a.Rows, a.Length = f(a.Rows), f(a.Length)
		return a
	}
	switch s := s.(type) {
	case *schematic.CastOn:
		c := *s
		c.Stitches, c.Chain = f(s.Stitches), f(s.Chain)
		return &c
	case *schematic.Held:
		c := *s
		c.From = slices.Clone(s.From)
		for i := range c.From {
			c.From[i].Stitches, c.From[i].Added = f(c.From[i].Stitches), f(c.From[i].Added)
		}
		return &c
	case *schematic.Ring:
		c := *s
		c.Stitches = f(s.Stitches)
		return &c
	case *schematic.Sideways:
		c := *s
		c.Stitches, c.Rows = f(s.Stitches), f(s.Rows)
		return &c
	case *schematic.PickUp:
		c := *s
		c.Stitches = f(s.Stitches)
		return &c
	case *schematic.Even:
		c := *s
		c.Amount = amount(s.Amount)
		return &c
	case *schematic.Shape:
		c := *s
		c.Amount = amount(s.Amount)
		c.Shapings = slices.Clone(s.Shapings)
		for i := range c.Shapings {
			h := &c.Shapings[i]
			h.By, h.Every, h.Times = f(h.By), f(h.Every), f(h.Times)
			h.Then = slices.Clone(h.Then)
			for k := range h.Then {
				h.Then[k].Every, h.Then[k].Times = f(h.Then[k].Every), f(h.Then[k].Times)
			}
		}
		return &c
	case *schematic.RepeatRow:
		c := *s
		return &c
	case *schematic.AddEdge:
		c := *s
		c.Stitches = f(s.Stitches)
		return &c
	case *schematic.BindOff:
		c := *s
		c.Stitches, c.Every, c.Times = f(s.Stitches), f(s.Every), f(s.Times)
		return &c
	case *schematic.Divide:
		c := *s
		c.Parts = slices.Clone(s.Parts)
		for i := range c.Parts {
			c.Parts[i].Stitches = f(c.Parts[i].Stitches)
			c.Parts[i].Sections = remakeAll(c.Parts[i].Sections, f)
		}
		return &c
	case *schematic.JoinParts:
		c := *s
		c.Of = slices.Clone(s.Of)
		for i := range c.Of {
			c.Of[i].Added = f(c.Of[i].Added)
		}
		return &c
	case *schematic.Panels:
		c := *s
		c.Of = slices.Clone(s.Of)
		for i := range c.Of {
			c.Of[i].Stitches = f(c.Of[i].Stitches)
		}
		return &c
	case *schematic.Mitre:
		c := *s
		c.By, c.Every, c.Times = f(s.By), f(s.Every), f(s.Times)
		return &c
	case *schematic.ShortRows:
		c := *s
		c.Over, c.Rows, c.Step = f(s.Over), f(s.Rows), f(s.Step)
		return &c
	case *schematic.Mark:
		c := *s
		c.Count, c.Inset, c.Stitch, c.First, c.Apart = f(s.Count), f(s.Inset), f(s.Stitch), f(s.First), f(s.Apart)
		return &c
	case *schematic.Fold:
		c := *s
		return &c
	case *schematic.Gather:
		c := *s
		return &c
	}
	return s
}
