package check

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// unlike tells of a back and a front that are as wide in most sizes and not in the others: a number of one of them is in the place of
// another, or has a wrong digit. Necks differ anyhow, and of heights within a piece their joins tell. Of what differs the first is told.
func unlike(p *schematic.Pattern, all []*series) finding.List {
	back, front := onlyOf(p, schematic.KindBack), onlyOf(p, schematic.KindFront)
	if back == nil || front == nil {
		return nil
	}
	other := map[string]*series{}
	for _, s := range all {
		if s.piece == front.Name {
			other[sideless(s)] = s
		}
	}
	for _, s := range all {
		o := other[sideless(s)]
		if s.piece != back.Name || o == nil || s.length && sideless(s) != "length" || strings.Contains(strings.ToLower(s.name), "neck") {
			continue
		}
		if f, apart := s.apartFrom(p, o); apart {
			f.Fix = fmt.Sprintf("compare the numbers of %s and %s in these sizes", back.Name, front.Name)
			return finding.List{f}
		}
	}
	return nil
}

// apartFrom is what is found of two series that are alike in most sizes, and not in the others: of lengths in one alone, but to the row.
func (s *series) apartFrom(p *schematic.Pattern, o *series) (finding.Finding, bool) {
	var sizes, haves []string
	alike := 0
	for i := range s.vals {
		switch {
		case !s.has[i] || !o.has[i]:
		case s.vals[i].Eq(o.vals[i]):
			alike++
		case s.grain[i].Less(s.vals[i].Sub(o.vals[i]).Abs()) || s.length && len(p.Grading) == 0:
			sizes = append(sizes, p.Sizes.Names[i])
			haves = append(haves, fmt.Sprintf("%s and %s in %s", long(s.vals[i], s.unit), long(o.vals[i], s.unit), p.Sizes.Names[i]))
		}
	}
	if len(sizes) == 0 || len(sizes) >= alike || s.length && len(sizes) > 1 {
		return finding.Finding{}, false
	}
	return s.find("grading/unlike", finding.Note, sizes, fmt.Sprintf("%s and %s are alike in the other sizes, but not in %s", s.name, o.name, listed(sizes)),
		strings.Join(haves, "; "), "the same in every size, unless it is meant", ""), true
}

// seamsUnlike tells of edges that are sewn together, as long as each other to the stitch or row, but for one size, in which a seam takes up what
// they differ: a number of one of them is one off. What a grading rounds may be.
func seamsUnlike(p *schematic.Pattern, gs []*schematic.Garment) finding.List {
	var out finding.List
	if len(p.Grading) > 0 || len(gs) == 0 {
		return nil
	}
	for k := range gs[0].Seams {
		var sizes, haves []string
		alike := 0
		for _, g := range gs {
			i := slices.IndexFunc(g.Seams, func(s schematic.Seam) bool { return s.Number == gs[0].Seams[k].Number })
			if i < 0 || g.Seams[i].Join == nil || g.Seams[i].Broken || g.Seams[i].Join.How != schematic.AsLong || alongRows(g.Seams[i].Sew) != alongRows(g.Seams[i].Into) {
				continue
			}
			switch s := &g.Seams[i]; {
			case s.SewLength.Eq(s.IntoLength):
				alike++
			case len(join(g, s)) == 0:
				sizes, haves = append(sizes, g.Size), append(haves, fmt.Sprintf("%d and %d in %s", s.SewCount, s.IntoCount, g.Size))
			}
		}
		if j := gs[0].Seams[k].Join; len(sizes) == 1 && alike > 1 {
			sew, into := names2(j)
			out = append(out, finding.Finding{Kind: "grading/unlike", Severity: finding.Note, Pos: j.Pos, Sizes: sizes,
				Message: fmt.Sprintf("%s and %s are equally long in the other sizes, and not quite in %s", sew, into, listed(sizes)),
				Have:    strings.Join(haves, "; ") + ", in rows or stitches", Want: "the same in every size, unless it is meant",
				Fix: "count both edges in these sizes: a number of one of them may be wrong"})
		}
	}
	return out
}

// onlyOf is the piece of a kind, if there is just one, with its mirrors.
func onlyOf(p *schematic.Pattern, kind schematic.Kind) *schematic.Piece {
	var only *schematic.Piece
	for _, q := range p.Pieces {
		if q.MirrorOf != "" {
			continue
		}
		if q.Kind == kind && only != nil {
			return nil
		}
		if q.Kind == kind {
			only = q
		}
	}
	return only
}

// sideless is the name of a measurement without its piece and the side of the body: cross back and cross front are cross.
func sideless(s *series) string {
	words := strings.Fields(strings.ToLower(strings.TrimPrefix(s.name, s.piece)))
	return strings.Join(slices.DeleteFunc(words, func(w string) bool { return w == "back" || w == "front" }), " ")
}

// turning finds a foundation chain whose chains for the turn are not as many in all sizes.
func turning(p *schematic.Pattern, q *schematic.Piece) finding.List {
	if len(q.Sections) == 0 {
		return nil
	}
	c := q.Sections[0].Traits()
	if c.Chain.IsZero() {
		return nil
	}
	more, often := make([]int, p.Sizes.Len()), map[int]int{}
	for i := range more {
		more[i] = c.Chain.Int(i, 0) - c.Cast.Int(i, 0)
		often[more[i]]++
	}
	var sizes, haves []string
	usual := slices.MaxFunc(more, func(a, b int) int { return often[a] - often[b] })
	for i, n := range more {
		if name := p.Sizes.Names[i]; n != usual {
			sizes, haves = append(sizes, name), append(haves, fmt.Sprintf("%d chains for %d stitches in %s", c.Chain.Int(i, 0), c.Cast.Int(i, 0), name))
		}
	}
	if len(sizes) == 0 || 2*len(sizes) >= len(more) {
		return nil
	}
	return finding.List{{Kind: "grading/unlike", Severity: finding.Note, Pos: q.Sections[0].Base().Pos, Piece: q.Name, Sizes: sizes,
		Message: fmt.Sprintf("the chain has %d more than its stitches in the other sizes, but not in %s", usual, listed(sizes)),
		Have:    strings.Join(haves, "; "), Want: fmt.Sprintf("%d more in every size, unless the difference is meant", usual), Fix: "look for a wrong digit in the chain or the stitches"}}
}

// yarns tells of yarn of which a size has less than the size before, or more by a step unlike the others.
func yarns(p *schematic.Pattern) finding.List {
	var out finding.List
	for _, m := range p.Yarn {
		s := newSeries(p, "yarn", p.Units)
		for i := range s.vals {
			s.vals[i], s.has[i] = m.Amount.At(i)
			s.has[i] = s.has[i] && !m.Amount.IsZero()
		}
		var steps, grain []units.Num
		var ends [][2]int
		var back, far change
		s.steps(func(a, b int) {
			steps, grain, ends = append(steps, s.vals[b].Sub(s.vals[a])), append(grain, units.Int(1)), append(ends, [2]int{a, b})
			if s.vals[b].Less(s.vals[a]) {
				back.add(p, s, a, b)
			}
		})
		for _, odd := range bysize.OddSteps(steps, grain, units.Int(1)) {
			far.add(p, s, ends[odd.At][0], ends[odd.At][1])
		}
		switch {
		case len(back.sizes) > 0:
			out = append(out, finding.Finding{Kind: "grading/backwards", Severity: finding.Warning, Pos: m.Pos, Sizes: back.sizes,
				Message: "less yarn for size " + listed(back.ways), Have: strings.Join(back.haves, "; "),
				Want: "at least as much as in the size before", Fix: "look for two swapped amounts, or a wrong digit"})
		case len(far.sizes) > 0:
			out = append(out, finding.Finding{Kind: "grading/jump", Severity: finding.Note, Pos: m.Pos, Sizes: far.sizes,
				Message: "much more yarn for size " + listed(far.ways), Have: strings.Join(far.haves, "; "),
				Want: "a step like those between the other sizes", Fix: "look for a wrong digit"})
		}
	}
	return out
}

// change is a value that changes from size to size: the size, in words, and both amounts.
type change struct{ sizes, ways, haves []string }

func (c *change) add(p *schematic.Pattern, s *series, a, b int) {
	from, to := p.Sizes.Names[a], p.Sizes.Names[b]
	c.sizes, c.ways = append(c.sizes, to), append(c.ways, fmt.Sprintf("%s than for %s", to, from))
	c.haves = append(c.haves, fmt.Sprintf("%s in %s, %s in %s", s.vals[a], from, s.vals[b], to))
}
