package rows

import (
	"slices"

	"flatwright/schematic/finding"
	"flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/work"
)

// mostHeld is how many findings are held against each other at most.
const mostHeld = 200

// First leaves out the findings of a text that follow from another one further up in the same piece: a row that does not fit is told
// once, and not again in the rows that repeat it, in the side of the next row, or against the pattern.
func First(x *Text, list finding.List) finding.List {
	if len(list) > mostHeld {
		return list
	}
	var out finding.List
	for i := range list {
		f := &list[i]
		if !ours(x, f) {
			out = append(out, *f)
			continue
		}
		follows, from := false, foundedAt(x, f.Pos.Line)
		for k := range list {
			g := &list[k]
			follows = follows || k != i && g.Pos.Line >= from && before(x, g, f) && (k < i || g.Kind != f.Kind) && explains(x, g, f)
		}
		if !follows {
			out = append(out, *f)
		}
	}
	return out
}

// ours reports whether a finding is of rows that were read.
func ours(x *Text, f *finding.Finding) bool {
	return f.Severity != finding.Note && f.Pos.File == x.Name && !f.NotRead()
}

// before reports whether a finding stands above another one, or on its line, in a size of it.
func before(x *Text, g, f *finding.Finding) bool {
	return ours(x, g) && g.Pos.Line <= f.Pos.Line &&
		(len(f.Sizes) == 0 || len(g.Sizes) == 0 || slices.ContainsFunc(f.Sizes, func(s string) bool { return slices.Contains(g.Sizes, s) }))
}

// explains reports whether a finding above another one explains that.
func explains(x *Text, g, f *finding.Finding) bool {
	number, same := g.Kind == "rows/number" || g.Kind == "rows/reference", g.Pos.Line == f.Pos.Line
	switch f.Kind {
	case "rows/side":
		return g.Kind != "rows/side"
	case "rows/against":
		return number || work.Rests(g.Kind)
	case "rows/number":
		return g.Kind == f.Kind && x.SectionAt(g.Pos.Line) == x.SectionAt(f.Pos.Line)
	}
	if !work.Rests(f.Kind) {
		return false
	}
	return number && same || !same && work.Rests(g.Kind) && again(x, f.Pos.Line, len(f.Sizes) > 0 && slices.Equal(f.Sizes, g.Sizes))
}

// again reports whether a line works rows again, tells how they go on to a count, or takes up what another row left: it shows what is
// amiss further up. Of one that shapes in words that is sure if it is amiss in the same sizes alone.
func again(x *Text, line int, alike bool) bool {
	s := x.SectionAt(line)
	if s == nil {
		return false
	}
	for i, l := range s.Lines {
		if l.At.Line == line && (l.Label == nil && (alike || slices.ContainsFunc(l.Body, toCount)) || has[*instructions.RepeatRows](l) || has[*instructions.JoinYarn](l) || i > 0 && has[*instructions.JoinYarn](s.Lines[i-1])) {
			return true
		}
	}
	return false
}

// toCount reports whether an instruction goes on until there are so many stitches.
func toCount(n instructions.Item) bool {
	switch n := n.(type) {
	case *instructions.Shape:
		return n.Until.Set()
	case *instructions.Even:
		return n.Until.Set()
	}
	return false
}

// has reports whether a line has an instruction of a kind.
func has[T instructions.Item](l *Line) bool {
	return slices.ContainsFunc(l.Body, func(n instructions.Item) bool { _, ok := n.(T); return ok })
}

// foundedAt is the line at which the piece begins that is worked at a line of the text.
func foundedAt(x *Text, line int) (at int) {
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			if l.At.Line <= line && slices.ContainsFunc(l.Body, founds) {
				at = max(at, l.At.Line)
			}
		}
	}
	return at
}

// founds reports whether a piece begins with an instruction.
func founds(n instructions.Item) bool {
	switch n := n.(type) {
	case *instructions.CastOn, *instructions.AsFor:
		return true
	case *instructions.Chain:
		return n.N.By != nil || n.N.All > mostTurning
	case *instructions.Join:
		return n.Name == "ring"
	case *instructions.Stitch:
		return slices.ContainsFunc(n.Places, func(p instructions.Place) bool { return p.Kind == instructions.InRing })
	}
	return false
}

// mostTurning is how many chains turn a row at most; more of them begin a piece, or widen it.
const mostTurning = 9
