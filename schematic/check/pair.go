package check

import (
	"fmt"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// pair holds the centimetres and inches of one written measurement against each
// other. They agree if the lengths from which each may have been rounded meet:
// at the half centimetre and the quarter inch they may be 0.5675 cm apart.
func pair(p *schematic.Pattern, w *schematic.Written, what string) finding.List {
	var all finding.List
	other := units.Inch
	if w.Unit == units.Inch {
		other = units.CM
	}
	most := units.Of(p.Steps.Step(w.Unit), w.Unit).Add(units.Of(p.Steps.Step(other), other)).Half()
	for i := range p.Sizes.Len() {
		a, ok1 := w.Low.At(i)
		b, ok2 := w.Other.At(i)
		if !ok1 || !ok2 || !most.Less(a.Sub(b).Abs()) {
			continue
		}
		all = append(all, in(finding.Finding{Kind: "units/pair", Severity: finding.Warning, Pos: w.Pos,
			Message: fmt.Sprintf("the %s %s of %s %s and %s %s are not the same length", what, w.Name, exact(a, w.Unit), w.Unit, exact(b, other), other),
			Have:    fmt.Sprintf("%s %s is %s, and %s %s is written", exact(a, w.Unit), w.Unit, long(a, other), exact(b, other), other),
			Want: fmt.Sprintf("at most %s between them, as they are printed to %s %s and %s %s", long(most, w.Unit),
				units.Mixed(p.Steps.Step(w.Unit)), w.Unit, units.Mixed(p.Steps.Step(other)), other),
			Fix: fmt.Sprintf("write %s beside it; if a coarser rounding is meant, state it as `rounding`", p.Steps.With(a, other))}, p, i))
	}
	return all
}

// gaugeUnits finds a gauge over 4 cm beside one over 4 in: the same number in the unit that is not the pattern's. A swatch of so many inches is not measured
// over as many centimetres (common practice).
func gaugeUnits(p *schematic.Pattern) finding.List {
	var all finding.List
	over := func(g schematic.Gauge) units.Num { return units.In(g.Over, g.OverUnit) }
	for _, g := range p.Gauges {
		i := slices.IndexFunc(p.Gauges, func(h schematic.Gauge) bool { return h.OverUnit != g.OverUnit && over(h).Eq(over(g)) })
		if g.OverUnit == p.Units || i < 0 {
			continue
		}
		size := units.Mixed(over(g))
		all = append(all, finding.Finding{Kind: "units/pair", Severity: finding.Warning, Pos: g.Pos,
			Message: fmt.Sprintf("the gauge %s is over %s %s, and %s over %s %s", g.Name, size, g.OverUnit, p.Gauges[i].Name, size, p.Units),
			Fix:     fmt.Sprintf("write %s %s, or the length that was measured", size, p.Units)})
	}
	return all
}
