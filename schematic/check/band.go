package check

import (
	"fmt"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// A band may draw its edge in by a quarter, as a neckband in rib does, or be a fifth longer; beyond that it puckers or ruffles
// (common practice says that too many stitches ruffle and too few pucker; the two bounds are a choice of this project).
var (
	drawnIn = units.Frac(3, 4)
	ruffled = units.Frac(6, 5)
)

// band holds the stitches that are picked up along each edge against the edge's length.
func band(p *schematic.Pattern, g *schematic.Garment, m *schematic.Made) finding.List {
	if m.Piece == nil || m.Broken || len(m.Steps) == 0 || len(m.Steps[0].Onto) != len(m.Piece.Onto) {
		return nil
	}
	gauge := p.GaugeNamed(m.Steps[0].Gauge)
	var all finding.List
	for i, a := range m.Steps[0].Onto {
		e := m.Piece.Onto[i]
		made := gauge.StitchWidth().Times(a.Picked)
		if a.Length.Sign() <= 0 || a.Picked < 1 {
			continue
		}
		what := ""
		switch share := made.Div(a.Length); {
		case ruffled.Less(share):
			what = "longer"
		case share.Less(drawnIn) && !gauge.Stretched:
			what = "shorter"
		default:
			continue
		}
		all = append(all, finding.Finding{Kind: "joins/band", Severity: finding.Warning, Pos: e.Pos, Piece: m.Name, Sizes: []string{g.Size},
			Message: fmt.Sprintf("the stitches picked up along %s make a band much %s than the edge", e.Edge, what),
			Have:    fmt.Sprintf("%d stitches, %s", a.Picked, p.Steps.With(made, p.Units)),
			Want:    fmt.Sprintf("%s of edge: about %d stitches", p.Steps.With(a.Length, p.Units), a.Length.Div(gauge.StitchWidth()).Round()),
			Fix:     "pick up at another rate: rows and stitches that are bound off each have their own"})
	}
	return all
}
