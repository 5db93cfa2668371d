package check

import (
	"fmt"
	"slices"
	"strings"

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

// unlikeEdge is how a band of a width lies against an edge that it does not suit: longer, shorter; else nothing.
func unlikeEdge(gauge *schematic.Gauge, made, edge units.Num) string {
	if edge.Sign() <= 0 || made.Sign() <= 0 {
		return ""
	}
	switch share := made.Div(edge); {
	case ruffled.Less(share):
		return "longer"
	case share.Less(drawnIn) && !gauge.Stretched:
		return "shorter"
	}
	return ""
}

// band holds the stitches that are picked up along each edge, and along a band that is worked sideways, against their length.
func band(p *schematic.Pattern, g *schematic.Garment, m *schematic.Made) finding.List {
	if m.Piece == nil || m.Broken || len(m.Steps) == 0 {
		return nil
	}
	all := onSideways(p, g, m)
	if len(m.Steps[0].Onto) != len(m.Piece.Onto) {
		return all
	}
	gauge := p.GaugeNamed(m.Steps[0].Gauge)
	for i, a := range m.Steps[0].Onto {
		e := m.Piece.Onto[i]
		made := gauge.StitchWidth().Times(a.Picked)
		what := unlikeEdge(gauge, made, a.Length)
		if what == "" {
			continue
		}
		want := a.Length.Div(gauge.StitchWidth())
		along, of, rest := a.Rows+a.Stitches, [2]string{"row or stitch", "rows or stitches"}, 0
		if e.Rows {
			along, of, rest = a.Rows, inRows, a.Stitches
		}
		fix := "pick up " + rateOf(want.Sub(units.Int(int64(rest))), along, of)
		if a.Rows > 0 && a.Stitches > 0 {
			fix += ": rows and stitches that are bound off each have their own rate"
		}
		all = append(all, finding.Finding{Kind: "joins/band", Severity: finding.Warning, Pos: e.Pos, Piece: m.Name, Sizes: []string{g.Size},
			Message: fmt.Sprintf("the stitches picked up along %s make a band much %s than the edge", e.Edge, what),
			Have:    fmt.Sprintf("%d stitches, %s", a.Picked, p.Steps.With(made, p.Units)),
			Want:    fmt.Sprintf("%s of edge: about %d stitches", p.Steps.With(a.Length, p.Units), want.Round()),
			Fix:     fix})
	}
	if len(all) == 0 {
		all = twoRates(g, m)
	}
	return all
}

// sided are words that tell an edge of a piece from the one across from it.
var sided = []string{"left", "right", "upper", "lower", "top", "bottom"}

// twoRates finds edges at both sides of a piece, of as many rows, along which stitches are picked up at two rates.
func twoRates(g *schematic.Garment, m *schematic.Made) finding.List {
	first := map[string]int{}
	for i, e := range m.Piece.Onto {
		a := m.Steps[0].Onto[i]
		edge := fmt.Sprint(slices.DeleteFunc(strings.Fields(strings.ToLower(e.Edge)), func(w string) bool { return slices.Contains(sided, w) }), a.Rows, a.Stitches)
		k, there := first[edge]
		if !there {
			first[edge] = i
			continue
		}
		o := m.Piece.Onto[k]
		if o.Pick*e.Of == e.Pick*o.Of || o.Rows != e.Rows || a.Rows+a.Stitches < 1 {
			continue
		}
		return finding.List{{Kind: "joins/band", Severity: finding.Note, Pos: e.Pos, Piece: m.Name, Sizes: []string{g.Size},
			Message: fmt.Sprintf("stitches are picked up along %s at another rate than along %s, which is as long", e.Edge, o.Edge),
			Have:    fmt.Sprintf("%d in every %d, and %d in every %d", e.Pick, e.Of, o.Pick, o.Of), Want: "one rate along both, unless it is meant",
			Fix: "look for a wrong digit in one of the rates"}}
	}
	return nil
}

// onSideways holds stitches that are picked up along bands worked sideways against the bands: fabric up to half wider than its rib is
// drawn in, and up to a fifth narrower ruffles it no more than a band does (choices of this project).
func onSideways(p *schematic.Pattern, g *schematic.Garment, m *schematic.Made) finding.List {
	var all finding.List
	for i, s := range m.Steps {
		if s.Section.Traits().Rates == nil || i == 0 || s.After < 1 || s.Doubt {
			continue
		}
		rows := m.Steps[i-1].Section.Traits().Band.Int(g.Index, 0)
		if rows < 1 {
			continue
		}
		gauge, of := p.GaugeNamed(s.Gauge), p.GaugeNamed(m.Steps[i-1].Gauge)
		made, edge := gauge.StitchWidth().Times(s.After), of.RowHeight().Times(rows)
		what := ""
		switch share := made.Div(edge); {
		case units.Frac(3, 2).Less(share) && !of.Stretched:
			what = "wider"
		case share.Less(units.Frac(5, 6)):
			what = "narrower"
		default:
			continue
		}
		want := edge.Div(gauge.StitchWidth())
		all = append(all, finding.Finding{Kind: "joins/band", Severity: finding.Warning, Pos: s.Section.Base().Pos, Piece: m.Name, Sizes: []string{g.Size},
			Message: fmt.Sprintf("the stitches picked up along the band make rows much %s than it is long", what),
			Have:    fmt.Sprintf("%d stitches, %s", s.After, p.Steps.With(made, p.Units)),
			Want:    fmt.Sprintf("%s of band: about %d stitches", p.Steps.With(edge, p.Units), want.Round()),
			Fix:     "pick up " + rateOf(want, rows, inRows) + ", or say that the band's gauge is stretched"})
	}
	return all
}

// inRows is what a rate is of: one, and several.
var inRows = [2]string{"row", "rows"}

// rateOf is the simplest rate, in up to six, that comes nearest to want stitches along n.
func rateOf(want units.Num, n int, along [2]string) string {
	best, bestOf, least := 1, 1, units.Num{}
	for of := 1; of <= 6 && n > 0; of++ {
		pick := max(1, int(want.Times(of).Div(units.Int(int64(n))).Round()))
		off := units.Frac(int64(pick)*int64(n), int64(of)).Sub(want).Abs()
		if of == 1 || off.Add(units.Frac(1, 2)).Less(least) {
			best, bestOf, least = pick, of, off
		}
	}
	if bestOf == 1 {
		return fmt.Sprintf("about %d in each %s", best, along[0])
	}
	return fmt.Sprintf("about %d in every %d %s", best, bestOf, along[1])
}
