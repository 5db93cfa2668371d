package grade

import (
	"cmp"
	"fmt"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Take writes values from elsewhere, such as a spreadsheet, into the pattern
// file src: each line of its grading that has the name of a value and gives numbers gets those of
// the value. Only those bytes change. Values that no line of the grading has the name of, and
// lines that are worked out and not given, are findings; nothing is written for them. p is the pattern read from src.
func Take(src []byte, p *schematic.Pattern, vals []schematic.GradedValue) ([]byte, finding.List) {
	var found finding.List
	type edit struct {
		pos  finding.Pos
		text string
	}
	var edits []edit
	for _, v := range vals {
		i := slices.IndexFunc(p.Grading, func(g schematic.Grading) bool { return key(g.Name) == key(v.Name) })
		if i < 0 {
			continue // the sheet may hold more than the pattern asks for
		}
		g := &p.Grading[i]
		if g.Kind != schematic.GradeValue || g.Given == nil && hasNames(g) {
			continue // worked out from others
		}
		if g.ValuePos.Line == 0 {
			found = append(found, finding.Finding{Kind: "file/form", Severity: finding.Warning, Pos: g.Pos,
				Message: fmt.Sprintf("%q stands over several lines and was not changed", g.Name), Fix: "write it in one line: " + g.Name + ": …"})
			continue
		}
		dim := v.Dim
		if have, ok := givenDim(g); ok && dim == expr.Plain {
			dim = have // a sheet may leave units out; lengths then are in the pattern's
			if dim == expr.LengthOf {
				v.Vals = lengthsIn(v.Vals, p.Units)
			}
		} else if ok && dim != have {
			found = append(found, finding.Finding{Kind: "file/unit", Severity: finding.Error, Pos: g.Pos,
				Message: fmt.Sprintf("%q is %s in the pattern and %s in the sheet", g.Name, have, dim), Fix: "put the right unit into the sheet"})
			continue
		}
		edits = append(edits, edit{g.ValuePos, lineText(p, v.Vals, dim)})
	}
	if len(edits) == 0 && len(found) == 0 {
		found = append(found, finding.Finding{Kind: "file/sheet", Severity: finding.Warning, Pos: p.SizesPos,
			Message: "no row of the sheet has the name of a value that the grading gives", Want: "one of: " + givenNames(p)})
	}
	slices.SortFunc(edits, func(a, b edit) int {
		return cmp.Or(cmp.Compare(a.pos.Line, b.pos.Line), cmp.Compare(a.pos.Col, b.pos.Col))
	})
	starts := lineStarts(src)
	var out []byte
	done := 0
	for _, e := range edits {
		if e.pos.Line > len(starts) {
			continue
		}
		from, to := column(src, starts[e.pos.Line-1], e.pos.Col), column(src, starts[e.pos.Line-1], e.pos.EndCol)
		if from < done || to < from {
			continue
		}
		out = append(append(out, src[done:from]...), e.text...)
		done = to
	}
	return append(out, src[done:]...), found
}

func hasNames(g *schematic.Grading) bool { return g.Sum.Sum != nil && len(g.Sum.Sum.Names()) > 0 }

// givenDim is what a line's own numbers count.
func givenDim(g *schematic.Grading) (expr.Dim, bool) {
	if g.Given != nil {
		return g.Given.Dim, true
	}
	if g.Sum.Sum == nil {
		return 0, false
	}
	v, bad := g.Sum.Sum.Eval(func(string) (expr.Value, bool) { return expr.Value{}, false })
	return v.Dim, bad == nil
}

func lengthsIn(g expr.Graded, u units.Unit) expr.Graded {
	out := expr.Graded{Vals: slices.Clone(g.Vals), Has: g.Has}
	for i := range out.Vals {
		out.Vals[i] = units.Of(out.Vals[i], u)
	}
	return out
}

func givenNames(p *schematic.Pattern) string {
	s := ""
	for i := range p.Grading {
		if g := &p.Grading[i]; g.Kind == schematic.GradeValue && !hasNames(g) {
			if s != "" {
				s += ", "
			}
			s += g.Name
		}
	}
	return s
}
