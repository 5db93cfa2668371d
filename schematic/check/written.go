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

// written holds a finished measurement that the designer wrote against what the
// counts make. They agree within half a stitch or row, twice that if it
// goes around, and half the printed step of the unit in which it is written.
func written(p *schematic.Pattern, gs []*schematic.Garment, w *schematic.Written) finding.List {
	of := orName(w)
	var all finding.List
	held := false
	var wrong finding.List
	line, made := asWritten(p, w), map[string]units.Num{}
	for _, g := range gs {
		low, ok := w.Low.At(g.Index)
		options := sum(g, of)
		held = held || len(options) > 0
		if slices.ContainsFunc(options, derived.broken) {
			continue
		}
		switch {
		case !ok && len(options) > 0:
			line[g.Index], made[p.Sizes.Names[g.Index]] = p.Steps.Format(options[0].length(), w.Unit), options[0].length()
			wrong = append(wrong, in(finding.Finding{Kind: "grading/missing", Severity: finding.Warning, Pos: w.Pos,
				Message: fmt.Sprintf("%s is not written for every size that has it", w.Name),
				Have:    "a dash", Want: options[0].words(w.Unit),
				Fix: "write " + p.Steps.With(options[0].length(), w.Unit)}, p, g.Index))
		case ok && len(options) > 0:
			high, ok := w.High.At(g.Index)
			if !ok {
				high = low
			}
			if f, bad := differs(p, w, low, high, options); bad {
				line[g.Index], made[p.Sizes.Names[g.Index]] = p.Steps.Format(options[0].length(), w.Unit), options[0].length()
				wrong = append(wrong, in(f, p, g.Index))
			}
		}
	}
	if len(wrong) > 1 { // the whole line, so that no size is lost who pastes it
		for i := range wrong {
			wrong[i].Fix = strings.Replace(wrong[i].Fix, "write "+p.Steps.With(made[wrong[i].Sizes[0]], w.Unit), "write "+p.Sizes.Line(line)+" "+w.Unit.String(), 1)
		}
	}
	all = append(all, wrong...)
	if held {
		return append(all, unmade(p, gs, w, of)...)
	}
	if len(gs) == 0 {
		return nil
	}
	return finding.List{unknown(gs, w, of)}
}

// unknown tells that the counts make nothing of the name of a written measurement.
func unknown(gs []*schematic.Garment, w *schematic.Written, of string) finding.Finding {
	f := finding.Finding{Kind: "drawn/unknown", Severity: finding.Note, Pos: w.Pos,
		Message: fmt.Sprintf("no measurement is called %q", of),
		Want:    "one of " + names(gs), Fix: "name the measurement it stands for with `of`"}
	if like := finding.Nearest(of, allNames(gs)); like != "" {
		f.Fix = fmt.Sprintf("did you mean %q?", like)
		if w.Of != "" {
			f.Severity = finding.Warning
		}
		return f
	}
	if w.Of != "" {
		f.Severity, f.Fix = finding.Warning, "name a measurement, or a sum such as `2 x Back bust`"
	}
	return f
}

// asWritten is the measurement as the designer wrote it, one text a size.
func asWritten(p *schematic.Pattern, w *schematic.Written) []string {
	out := make([]string, p.Sizes.Len())
	for i := range out {
		out[i] = expr.Dash
		low, ok := w.Low.At(i)
		if !ok {
			continue
		}
		out[i] = exact(low, w.Unit)
		if high, ok := w.High.At(i); ok && !high.Eq(low) {
			out[i] += "–" + exact(high, w.Unit)
		}
	}
	return out
}

// unmade tells sizes for which a measurement is written that their pieces do
// not have, though other sizes' pieces do.
func unmade(p *schematic.Pattern, gs []*schematic.Garment, w *schematic.Written, of string) finding.List {
	var all finding.List
	for _, g := range gs {
		if low, ok := w.Low.At(g.Index); ok && len(sum(g, of)) == 0 && !g.Findings.Errors() {
			all = append(all, in(finding.Finding{Kind: "drawn/missing", Severity: finding.Warning, Pos: w.Pos,
				Message: fmt.Sprintf("%s is written for a size whose pieces have none", w.Name),
				Have:    p.Steps.With(low, w.Unit) + " written", Want: "a dash, or rows that make it",
				Fix: "give the size rows that make it; if it is meant to have none, write a dash"}, p, g.Index))
		}
	}
	return all
}

// differs reports that none of options agrees with low to high, and tells the
// first of them.
func differs(p *schematic.Pattern, w *schematic.Written, low, high units.Num, options []derived) (finding.Finding, bool) {
	if _, ok := agreeing(p, w, low, high, options); ok {
		return finding.Finding{}, false
	}
	d := options[0]
	slack := d.slack(p).Add(units.Of(p.Steps.Step(w.Unit), w.Unit).Half())
	text := exact(low, w.Unit)
	if !low.Eq(high) {
		text += "–" + exact(high, w.Unit)
	}
	f := finding.Finding{Kind: "drawn/written", Severity: finding.Warning, Pos: w.Pos, Piece: d.terms[0].piece.Name,
		Message: fmt.Sprintf("%s is written as %s %s, and the counts make %s", w.Name, text, w.Unit, p.Steps.With(d.length(), w.Unit)),
		Have:    d.words(w.Unit),
		Want: fmt.Sprintf("%s %s, give or take %s: %s, and half the printed step of %s %s", text, w.Unit, long(slack, w.Unit),
			d.slackWords(), units.Mixed(p.Steps.Step(w.Unit)), w.Unit),
		Fix: "write " + p.Steps.With(d.length(), w.Unit)}
	if m, one := d.single(); one && m.Count > 0 {
		if n := low.Add(high).Half().Div(unit(p, m)).Round(); n > 0 && int(n) != m.Count {
			f.Fix += fmt.Sprintf(", or work %d %s", n, plural(m.Of, int(n)))
		}
	}
	for _, u := range []units.Unit{units.CM, units.Inch, units.MM} {
		// The same number in another unit, to a tenth: a unit that was mistaken.
		l := units.Of(units.In(low, w.Unit), u)
		if u != w.Unit && l.Sub(d.length()).Abs().Less(d.length().Div(units.Int(10))) {
			f.Fix = fmt.Sprintf("%s would fit: is the unit meant to be %s?", text+" "+u.String(), u)
		}
	}
	return f, true
}

// agreeing is the first of options that agrees with low to high.
func agreeing(p *schematic.Pattern, w *schematic.Written, low, high units.Num, options []derived) (derived, bool) {
	step := units.Of(p.Steps.Step(w.Unit), w.Unit)
	for _, d := range options {
		slack := d.slack(p).Add(step.Half())
		if l := d.length(); !d.broken() && !l.Less(low.Sub(slack)) && !high.Add(slack).Less(l) {
			return d, true
		}
	}
	return derived{}, false
}

// Made is the exact length, in mm, that the counts of g make for a finished measurement
// that its designer wrote. It is false where she wrote none for that size, where nothing
// is called so, or where the two do not agree.
func Made(g *schematic.Garment, w *schematic.Written) (units.Num, bool) {
	low, ok := w.Low.At(g.Index)
	if !ok {
		return units.Num{}, false
	}
	high, ok := w.High.At(g.Index)
	if !ok {
		high = low
	}
	d, ok := agreeing(g.Pattern, w, low, high, sum(g, orName(w)))
	if !ok {
		return units.Num{}, false
	}
	return d.length(), true
}

func (d derived) slackWords() string {
	of := "half a stitch"
	if m := d.terms[0].measure; m.Of == "row" || m.Of == "" && m.Axis == schematic.Vertical {
		of = "half a row"
	}
	if _, one := d.single(); !one {
		return of + " for each of them"
	}
	if d.girth {
		return of + ", twice as it goes around"
	}
	return of
}

// exact is a length as it was written.
func exact(l units.Num, u units.Unit) string { return units.Steps{}.Format(l, u) }
