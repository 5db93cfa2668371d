package check

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// widest is how wide around the bust a garment is at most, in hundredths of the body, without a question: wider than any oversized one (a choice
// of this project).
const widest = 160

// ease tells sizes whose garment is smaller than the body that it fits. Around the
// bust that is seldom meant, beyond half a stitch of each piece; a sleeve or a hip may be meant to stretch.
func ease(p *schematic.Pattern, gs []*schematic.Garment, body *schematic.Written) finding.List {
	name := canonical(schematic.ID(body.Name))
	if !slices.Contains([]string{"bust", "hip", "upper-arm"}, name) {
		return nil
	}
	severity := finding.Note
	if name == "bust" {
		severity = finding.Warning
	}
	var all finding.List
	back := writtenGrading(p, body, "body")
	for _, g := range gs {
		low, ok := body.Low.At(g.Index)
		if !ok || slices.ContainsFunc(back, func(f finding.Finding) bool {
			return slices.Contains(f.Sizes, g.Size) || f.Kind == "grading/backwards" && slices.Contains(f.Sizes, p.Sizes.Names[min(g.Index+1, p.Sizes.Len()-1)])
		}) {
			continue // its body jumps or goes back, or the next one does, which is told there
		}
		high, ranged := body.High.At(g.Index)
		made, slack, how, ok := finishedOf(p, g, name)
		u := body.Unit
		if ok && ranged && !made.Less(low) && made.Add(slack).Less(high) {
			all = append(all, in(finding.Finding{Kind: "grading/ease", Severity: finding.Note, Pos: body.Pos,
				Message: fmt.Sprintf("the finished %s of %s is smaller than the largest body of the size, which is %s %s", body.Name, p.Steps.With(made, u), exact(high, u), u),
				Have:    how, Want: fmt.Sprintf("%s %s or more, unless it is meant to stretch", exact(high, u), u),
				Fix: fmt.Sprintf("add %s of width, or end the size's range at %s", long(high.Sub(made), u), long(made, u))}, p, g.Index))
		}
		if ok && name == "bust" && units.Max(low, high).Mul(units.Frac(widest, 100)).Less(made) {
			all = append(all, in(finding.Finding{Kind: "grading/ease", Severity: finding.Note, Pos: body.Pos,
				Message: fmt.Sprintf("the finished %s of %s is %s more than the body's", body.Name, p.Steps.With(made, u), long(made.Sub(units.Max(low, high)), u)),
				Have:    how, Want: "less than three fifths of the body as ease, unless it is meant to be that wide",
				Fix: "look for a wrong digit in the ease, the gauge or the body"}, p, g.Index))
		}
		if !ok || !made.Add(slack).Less(low.Add(stretched(p, g.Index).Times(2))) {
			continue
		}
		all = append(all, in(finding.Finding{Kind: "grading/ease", Severity: severity, Pos: body.Pos,
			Message: fmt.Sprintf("the finished %s of %s is smaller than the body's, which is %s %s", body.Name, p.Steps.With(made, u), exact(low, u), u),
			Have:    how, Want: fmt.Sprintf("%s %s or more, unless it is meant to stretch", exact(low, u), u),
			Fix: fmt.Sprintf("add %s of width, or say in a note that the ease is negative", long(low.Sub(made), u))}, p, g.Index))
	}
	return all
}

// stretched is the least ease of the grading, if its designer has the garment smaller than the body, and otherwise none. A multiple may take up as
// much again (a choice of this project).
func stretched(p *schematic.Pattern, size int) (least units.Num) {
	for _, v := range p.Graded {
		if n, ok := v.Vals.At(size); ok && v.Dim == expr.LengthOf && strings.HasSuffix(expr.Key(v.Name), "ease") {
			least = units.Min(least, n)
		}
	}
	return least
}

// finishedOf is the garment's measurement called id: what the counts make and what whole stitches cost it, or
// else what is written.
func finishedOf(p *schematic.Pattern, g *schematic.Garment, id string) (length, slack units.Num, how string, ok bool) {
	for _, d := range measured(g, id) {
		if d.broken() {
			return units.Num{}, units.Num{}, "", false
		}
		if d.girth {
			return d.length(), d.slack(p), d.words(p.Units), true
		}
	}
	for _, w := range p.Finished {
		if canonical(schematic.ID(w.Name)) != id {
			continue
		}
		if w.Of != "" {
			if made := sum(g, w.Of); len(made) > 0 {
				return made[0].length(), made[0].slack(p), made[0].words(p.Units), !made[0].broken()
			}
		}
		for _, end := range []expr.Graded{w.High, w.Low} {
			if long, ok := end.At(g.Index); ok {
				return long, units.Num{}, exact(long, w.Unit) + " " + w.Unit.String() + " written", true
			}
		}
	}
	return units.Num{}, units.Num{}, "", false
}
