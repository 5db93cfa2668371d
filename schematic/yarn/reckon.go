// Package yarn reckons how much yarn a garment takes in each size, from the
// area of its fabric and the weight of a swatch or of a finished sample. It
// knows nothing of files or paper.
package yarn

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Need is the yarn for one size. Metres, Yards and Balls are 0 where the ball
// that they are reckoned from is not known.
type Need struct {
	Size   string
	Area   units.Num // mm² of fabric, all pieces
	Parts  []Part    // by gauge
	Net    units.Num // grams without the allowance
	Grams  units.Num
	Metres units.Num
	Yards  units.Num
	Balls  int
	Lines  []string // the arithmetic
}

// Part is the yarn for the fabric of one gauge.
type Part struct {
	Gauge string
	Area  units.Num // mm²
	Grams units.Num // without the allowance
}

// areas is the fabric of a garment by gauge, in mm², in the order of the pattern's gauges.
func areas(g *schematic.Garment) []Part {
	out := make([]Part, len(g.Pattern.Gauges))
	for i := range out {
		out[i].Gauge = g.Pattern.Gauges[i].Name
	}
	for _, m := range g.Pieces {
		rest := m.Area
		for _, a := range m.Areas {
			for i := range out {
				if out[i].Gauge == a.Gauge {
					out[i].Area = out[i].Area.Add(a.Area.Times(m.Make))
					rest = rest.Sub(a.Area)
					break
				}
			}
		}
		if rest.Sign() > 0 && len(out) > 0 { // fabric of no gauge of its own, such as motifs
			out[0].Area = out[0].Area.Add(rest.Times(m.Make))
		}
	}
	return out
}

// Reckon reckons the yarn of each garment, all of one pattern, by w. Grams go with
// area (common practice): the fabric of a gauge weighs what its swatch weighs, that
// of a gauge without a swatch what the first swatch does; without any, what the
// finished sample does. The list says what was taken in place of something that is not there, and what is
// wrong with w.
func Reckon(gs []*schematic.Garment, w schematic.Weights) ([]Need, finding.List) {
	if len(gs) == 0 {
		return nil, nil
	}
	p := gs[0].Pattern
	rate, found := rates(gs, w)
	if found.Errors() {
		return nil, found
	}
	var out []Need
	for _, g := range gs {
		n := Need{Size: g.Size}
		for i, a := range areas(g) {
			if a.Area.Sign() == 0 {
				continue
			}
			a.Grams = a.Area.Mul(rate[i])
			n.Parts = append(n.Parts, a)
			n.Area, n.Net = n.Area.Add(a.Area), n.Net.Add(a.Grams)
			n.say("%s: %s %s² at %s g for 100 %s² = %s g", gaugeName(p, i), units.Decimal(SquareIn(a.Area, p.Units), 0), p.Units,
				units.Decimal(rate[i].Div(SquareIn(units.Int(1), p.Units)).Times(100), 2), p.Units, units.Decimal(a.Grams, 1))
		}
		n.Grams = n.Net.Mul(units.Int(1).Add(w.Allowance))
		if w.Allowance.Sign() > 0 {
			n.say("%s g + %s %% allowance = %s g", units.Decimal(n.Net, 1), units.Decimal(w.Allowance.Times(100), 1), units.Decimal(n.Grams, 1))
		}
		if b := w.Ball; b.Grams.Sign() > 0 {
			n.Balls = int(n.Grams.Div(b.Grams).Ceil())
			n.say("%s g / %s g a ball = %s, so %d", units.Decimal(n.Grams, 1), units.Decimal(b.Grams, 1), units.Decimal(n.Grams.Div(b.Grams), 2), n.Balls)
			if b.Length.Sign() > 0 {
				long := n.Grams.Mul(b.Length).Div(b.Grams)
				n.Metres, n.Yards = long.Div(units.Int(1000)), long.Div(yard)
			}
		}
		out = append(out, n)
	}
	return out, found
}

// SquareIn is the area a (mm²) counted in squares of one u.
func SquareIn(a units.Num, u units.Unit) units.Num { return a.Div(u.MM()).Div(u.MM()) }

func gaugeName(p *schematic.Pattern, i int) string {
	if p.Gauges[i].Name == "" {
		return "fabric"
	}
	return p.Gauges[i].Name
}

func (n *Need) say(format string, args ...any) {
	n.Lines = append(n.Lines, fmt.Sprintf(format, args...))
}

// rates are grams per mm² of the pattern's gauges.
func rates(gs []*schematic.Garment, w schematic.Weights) ([]units.Num, finding.List) {
	p := gs[0].Pattern
	out, first, found := swatched(p, w.Swatches)
	if found.Errors() {
		return nil, found
	}
	if w.Sample.Sign() > 0 {
		if r, ok := sampleRate(gs, w, out, &found); ok {
			first = r
		}
	}
	if first.Sign() == 0 {
		return nil, append(found, finding.Finding{Kind: "materials/swatch", Severity: finding.Error, Pos: p.SizesPos,
			Message: "the weight of the fabric is missing", Want: "the weight of a swatch, or of the finished sample",
			Fix: "weigh a swatch: 12 g over 15 x 15 cm"})
	}
	used := areas(gs[0])
	for i := range out {
		if out[i].Sign() > 0 {
			continue
		}
		out[i] = first
		if used[i].Area.Sign() > 0 && w.Sample.Sign() == 0 {
			found = append(found, finding.Finding{Kind: "materials/swatch", Severity: finding.Note, Pos: p.Gauges[i].Pos,
				Message: fmt.Sprintf("%q has no swatch of its own: its fabric is taken to weigh as much as the first swatch", gaugeName(p, i)),
				Fix:     "weigh a swatch of it too: a rib is heavier than plain fabric"})
		}
	}
	return out, found
}

// swatched are the rates of the gauges that have a swatch, 0 for the others, and that of the first swatch.
func swatched(p *schematic.Pattern, swatches []schematic.Swatch) (out []units.Num, first units.Num, found finding.List) {
	out = make([]units.Num, len(p.Gauges))
	for _, s := range swatches {
		at := slices.IndexFunc(p.Gauges, func(g schematic.Gauge) bool { return strings.EqualFold(g.Name, s.Gauge) })
		if s.Gauge == "" && len(p.Gauges) > 0 {
			at = 0
		}
		if at < 0 {
			found = append(found, finding.Finding{Kind: "file/reference", Severity: finding.Error, Pos: s.Pos,
				Message: fmt.Sprintf("no gauge is called %q", s.Gauge), Want: "one of: " + strings.Join(gaugeNames(p), ", ")})
			continue
		}
		area := s.Area(p.Gauges[at])
		if area.Sign() <= 0 || s.Grams.Sign() <= 0 {
			continue
		}
		out[at] = s.Grams.Div(area)
		if first.Sign() == 0 {
			first = out[at]
		}
	}
	return out, first, found
}

func gaugeNames(p *schematic.Pattern) []string {
	var out []string
	for _, g := range p.Gauges {
		out = append(out, g.Name)
	}
	return out
}

// sampleRate is grams per mm² of the sample's fabric that has no swatch.
func sampleRate(gs []*schematic.Garment, w schematic.Weights, known []units.Num, found *finding.List) (units.Num, bool) {
	p := gs[0].Pattern
	fail := func(message, fix string) (units.Num, bool) {
		*found = append(*found, finding.Finding{Kind: "materials/swatch", Severity: finding.Error, Pos: w.SamplePos, Message: message, Fix: fix})
		return units.Num{}, false
	}
	if p.Sample < 0 || p.Sample >= p.Sizes.Len() {
		return fail("the sample has a weight, and its size is missing", "add a line sample: M")
	}
	g := schematic.Work(p, p.Sample)
	rest, area := w.Sample, units.Num{}
	for i, a := range areas(g) {
		if known[i].Sign() > 0 {
			rest = rest.Sub(a.Area.Mul(known[i]))
		} else {
			area = area.Add(a.Area)
		}
	}
	switch {
	case area.Sign() == 0:
		return units.Num{}, false // swatches say it all
	case rest.Sign() <= 0:
		return fail("the swatches alone weigh more than the whole sample", "weigh them again")
	}
	return rest.Div(area), true
}
