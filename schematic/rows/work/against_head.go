package work

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/units"
)

// againstHead holds what the top of a text says against its pattern: sizes, terms and
// gauge. Sizes may be named otherwise, as long as there are as many and none of the
// pattern's names stands in another place.
func againstHead(x *ins.Text, p *schematic.Pattern) finding.List {
	var out finding.List
	tell := func(kind string, at ins.Span, message, want, fix string) {
		out = append(out, finding.Finding{Kind: kind, Severity: finding.Warning, Pos: x.Pos(at),
			Message: message, Want: want, Fix: fix})
	}
	if names := x.Said.Sizes.Names; len(names) > 0 {
		shifted := len(names) != len(p.Sizes.Names)
		for i, n := range names {
			k := slices.IndexFunc(p.Sizes.Names, func(s string) bool { return strings.EqualFold(s, n) })
			shifted = shifted || k >= 0 && k != i
		}
		if shifted {
			tell("rows/sizes", x.Said.SizesAt, fmt.Sprintf("the text is in the sizes %s, the pattern in %s", x.Said.Sizes.Full(names), p.Sizes.Full(p.Sizes.Names)),
				p.Sizes.Full(p.Sizes.Names), "write the same sizes in both")
		}
	}
	if t := x.Said.Terms; (t == "US" || t == "UK") && t != p.Terms.String() {
		tell("words/terms", x.Said.TermsAt, fmt.Sprintf("the text says that it is in %s terms, the pattern is in %s terms", t, p.Terms), p.Terms.String()+" terms", "write the same terms in both")
	}
	if g := x.Gauge; g != nil && x.Said.GaugeAt.Line > 0 && len(p.Gauges) > 0 {
		near := func(a, b units.Num) bool { // 4 in and 10 cm are one nominal length
			return a.Sub(b).Abs().Times(50).Cmp(b) <= 0
		}
		var all []string
		for _, q := range p.Gauges {
			if q.Stitches.Sign() <= 0 || q.Rows.Sign() <= 0 || near(g.StitchWidth, q.StitchWidth()) && near(g.RowHeight, q.RowHeight()) {
				return out
			}
			all = append(all, fmt.Sprintf("%s sts and %s rows over %s", units.Mixed(q.Stitches), units.Mixed(q.Rows), nominal(q.Over, p.Units)))
		}
		tell("rows/against", x.Said.GaugeAt, "the gauge in the text is not one of the pattern's", strings.Join(all, "; "), "correct the text, or the pattern's gauge")
	}
	return out
}

// nominal is a length of a gauge as the pattern's author writes it.
func nominal(l units.Num, u units.Unit) string {
	return units.Decimal(units.In(l, u), 2) + " " + u.String()
}

// makeFound holds how many a heading says to make against the pattern, in one size.
func makeFound(s *ins.Section, m *schematic.Made) []raw {
	if s == nil || s.Make == 0 || s.Make == m.Make {
		return nil
	}
	return []raw{{kind: "rows/against", sev: finding.Warning, at: s.At,
		msg: "the heading says to make %s of " + m.Name + ", the pattern %s", fix: "correct the heading, or the pattern's 'make'", a: []int{s.Make, m.Make}}}
}

// chainFound holds the foundation chain with which a piece begins against the one that the pattern's designer wrote.
func chainFound(s *ins.Section, m *schematic.Made, size int, have []plateau) []raw {
	if len(have) > 0 && have[0].doubt { // the text contradicts itself there
		return nil
	}
	if s == nil || m.Round || len(s.Lines) == 0 || len(s.Lines[0].Body) == 0 || len(m.Steps) == 0 { // a ring has as many chains as stitches
		return nil
	}
	begin := m.Steps[0].Section.Traits()
	chain, chained := s.Lines[0].Body[0].(*ins.Chain)
	if !chained || begin.Chain.IsZero() || !chain.N.Set() {
		return nil
	}
	said, wrote := chain.N.At(size), begin.Chain.Int(size, 0)
	if said < 0 || wrote == 0 || said == wrote {
		return nil
	}
	return []raw{{kind: "rows/against", sev: finding.Warning, at: chain.At,
		msg: "the text of " + m.Name + " begins with %s chains, the pattern with %s", fix: "correct the text, or the chain of the cast-on", a: []int{said, wrote}}}
}
