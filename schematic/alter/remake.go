package alter

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
	pick := picker
	q.Bodies, q.Finished = writtenOf(p.Bodies, pick(i)), writtenOf(p.Finished, pick(i))
	q.Pieces = nil
	for _, piece := range p.Pieces {
		at := i
		if j, ok := parts[piece.Name]; ok {
			at = j
		}
		q.Pieces = append(q.Pieces, piece.With(pick(at)))
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

// picker is what takes the number of size at out of all.
func picker(at int) func(expr.Graded) expr.Graded {
	return func(g expr.Graded) expr.Graded {
		if g.IsZero() {
			return g
		}
		v, has := g.At(at)
		out := expr.Of(v)
		out.Has[0], out.From = has, g.From
		return out
	}
}

func writtenOf(all []schematic.Written, f func(expr.Graded) expr.Graded) []schematic.Written {
	out := slices.Clone(all)
	for k := range out {
		out[k].Low, out[k].High, out[k].Other = f(out[k].Low), f(out[k].High), f(out[k].Other)
	}
	return out
}
