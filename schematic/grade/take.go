package grade

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Take writes values from elsewhere, such as a spreadsheet, into the pattern
// file src: each line of its grading that has the name of a value and gives numbers gets those of
// the value, and a count that rounds given numbers gets those of its target ('neck stitches, target', or a length under its own
// name). Only those bytes change, and only where the numbers differ. A sheet that has none of
// these is a finding; NotTaken tells what else of a sheet was left. p is the pattern read from src.
func Take(src []byte, p *schematic.Pattern, vals []schematic.GradedValue) ([]byte, finding.List) {
	t := taking{p: p}
	for _, v := range vals {
		t.take(v)
	}
	if t.known == 0 && len(t.found) == 0 {
		t.found = append(t.found, finding.Finding{Kind: "file/sheet", Severity: finding.Warning, Pos: p.SizesPos,
			Message: "no row of the sheet has the name of a value that the grading gives", Want: "one of: " + givenNames(p)})
	}
	return edited(src, t.edits), t.found
}

// taking is what a pattern takes from a sheet.
type taking struct {
	p     *schematic.Pattern
	known int // values that have a line in the grading
	edits []edit
	found finding.List
}

// take takes one value, if a line of the grading gives it and gives it otherwise.
func (t *taking) take(v schematic.GradedValue) {
	name, target := strings.CutSuffix(expr.Key(v.Name), ", target")
	i := slices.IndexFunc(t.p.Grading, func(g schematic.Grading) bool { return expr.Key(g.Name) == name })
	if i < 0 {
		return // the sheet may hold more than the pattern asks for
	}
	g := &t.p.Grading[i]
	target = isTarget(g, v, target)
	if !target && worksOut(g) {
		return
	}
	t.known++
	dim := v.Dim
	switch have, ok := givenDim(g); {
	case ok && dim == expr.Plain:
		dim = have // a sheet may leave units out; lengths then are in the pattern's
		if dim == expr.LengthOf {
			v.Vals = lengthsIn(v.Vals, t.p.Units)
		}
	case ok && target && dim == expr.LengthOf && have != dim:
		return // a count that is given as one: its target in the sheet is what it makes
	case ok && dim != have:
		t.found = append(t.found, finding.Finding{Kind: "file/unit", Severity: finding.Error, Pos: g.Pos,
			Message: fmt.Sprintf("%q is %s in the pattern and %s in the sheet", g.Name, have, dim), Fix: "put the right unit into the sheet"})
		return
	}
	switch {
	case equalVals(v.Vals, givenVals(t.p, g)):
	case g.ValuePos.Line == 0:
		t.found = append(t.found, finding.Finding{Kind: "file/form", Severity: finding.Warning, Pos: g.Pos,
			Message: fmt.Sprintf("%q is on several lines and was not changed", g.Name), Fix: "write it in one line: " + g.Name + ": …"})
	default:
		t.edits = append(t.edits, edit{g.ValuePos, lineText(t.p, v.Vals, dim)})
	}
}

// NotTaken tells of bodies and of values that are worked out which the sheet has otherwise than the pattern p
// does once it has taken what it takes, so that nobody believes them taken: a warning each. A cap's numbers are left out: in a sheet
// they do not follow.
func NotTaken(p *schematic.Pattern, vals []schematic.GradedValue) finding.List {
	var found finding.List
	for _, v := range vals {
		name, target := strings.CutSuffix(expr.Key(v.Name), ", target")
		i := slices.IndexFunc(p.Grading, func(g schematic.Grading) bool { return expr.Key(g.Name) == name })
		switch {
		case i < 0:
			found = append(found, bodyKept(p, v)...)
		case p.Grading[i].Kind == schematic.GradeCap:
		case !isTarget(&p.Grading[i], v, target) && worksOut(&p.Grading[i]):
			found = append(found, workedKept(p, &p.Grading[i], v)...)
		}
	}
	return found
}

// isTarget reports whether v is the numbers that a count rounds; named is whether it is called so.
func isTarget(g *schematic.Grading, v schematic.GradedValue, named bool) bool {
	counting := g.Kind == schematic.GradeStitches || g.Kind == schematic.GradeRows
	return counting && g.Given != nil && (named || v.Dim == expr.LengthOf && g.Given.Dim == expr.LengthOf)
}

func worksOut(g *schematic.Grading) bool {
	return g.Kind != schematic.GradeValue || g.Given == nil && hasNames(g)
}

// givenVals are the numbers that a line gives now.
func givenVals(p *schematic.Pattern, g *schematic.Grading) expr.Graded {
	if g.Given != nil {
		return g.Given.Vals
	}
	for _, v := range p.Graded {
		if expr.Key(v.Name) == expr.Key(g.Name) {
			return v.Vals
		}
	}
	return expr.Graded{}
}

// equalVals reports whether two values are the same in every size, to a hundredth of a millimetre or stitch: sheets keep fifteen digits.
func equalVals(a, b expr.Graded) bool {
	if len(a.Vals) != len(b.Vals) {
		return false
	}
	for i := range a.Vals {
		if a.Has[i] != b.Has[i] || a.Has[i] && !a.Vals[i].Sub(b.Vals[i]).Abs().Less(units.Frac(1, 100)) {
			return false
		}
	}
	return true
}

// bodyKept is a warning if v is a body and not the pattern's.
func bodyKept(p *schematic.Pattern, v schematic.GradedValue) finding.List {
	for _, b := range p.Bodies {
		ends := map[string]expr.Graded{expr.Key(b.Name): b.High, "low " + expr.Key(b.Name): b.Low}
		if b.High.IsZero() {
			ends[expr.Key(b.Name)] = b.Low
		}
		have, ok := ends[expr.Key(v.Name)]
		if !ok {
			continue
		}
		vals := v.Vals
		if v.Dim == expr.Plain {
			vals = lengthsIn(vals, p.Units)
		}
		if equalVals(vals, have) {
			return nil
		}
		return finding.List{{Kind: "file/sheet", Severity: finding.Warning, Pos: b.Pos, Message: fmt.Sprintf("%q of the sheet was not taken: bodies are in the pattern", b.Name),
			Have: lineText(p, vals, expr.LengthOf) + " in the sheet", Want: lineText(p, have, expr.LengthOf), Fix: "write them into the pattern, if they are right"}}
	}
	return nil
}

// workedKept is a warning if the sheet has other numbers than the pattern works out.
func workedKept(p *schematic.Pattern, g *schematic.Grading, v schematic.GradedValue) finding.List {
	i := slices.IndexFunc(p.Graded, func(w schematic.GradedValue) bool { return expr.Key(w.Name) == expr.Key(v.Name) })
	if i < 0 || v.Dim != p.Graded[i].Dim && v.Dim != expr.Plain {
		return nil
	}
	vals, have := v.Vals, p.Graded[i]
	if v.Dim == expr.Plain && have.Dim == expr.LengthOf {
		vals = lengthsIn(vals, p.Units)
	}
	if equalVals(vals, have.Vals) {
		return nil
	}
	return finding.List{{Kind: "file/sheet", Severity: finding.Warning, Pos: g.Pos, Message: fmt.Sprintf("%q of the sheet was not taken: the pattern works it out", v.Name),
		Have: lineText(p, vals, have.Dim) + " in the sheet", Want: lineText(p, have.Vals, have.Dim), Fix: "change what it is worked out of, or write the numbers into the pattern in place of the sum"}}
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
		if g := &p.Grading[i]; g.Kind == schematic.GradeValue && !hasNames(g) || g.Given != nil {
			if s != "" {
				s += ", "
			}
			s += g.Name
		}
	}
	return s
}
