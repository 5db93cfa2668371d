package check

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// stretch is how much an edge or a cuff gives when it is put on: a quarter more
// than it measures (common practice; ribs give more, chained edges less).
var stretch = units.Frac(5, 4)

// wear holds the neck opening against the head and the cuff against the hand,
// stretched, in every size whose body is given. A garment that opens in front need
// not go over the head.
func wear(p *schematic.Pattern, g *schematic.Garment) finding.List {
	var all finding.List
	for i := range p.Bodies {
		b := &p.Bodies[i]
		least, ok := b.Low.At(g.Index)
		if !ok {
			continue
		}
		switch strings.ToLower(b.Name) {
		case "head":
			if around := neckOpening(g); around.Sign() > 0 && around.Mul(stretch).Less(least) {
				all = append(all, tight(p, b, "the neck opening", around, least, "head", g))
			}
		case "hand":
			all = append(all, tightCuffs(p, b, least, g)...)
		}
	}
	return all
}

// tightCuffs are findings of the cuffs that do not go over a hand.
func tightCuffs(p *schematic.Pattern, b *schematic.Written, least units.Num, g *schematic.Garment) finding.List {
	var all finding.List
	for _, m := range g.Pieces {
		if m.Kind != schematic.KindSleeve {
			continue
		}
		for _, s := range m.Measures {
			if !s.Doubt && s.Name == "cuff" && s.Length.Mul(stretch).Less(least) {
				f := tight(p, b, "the cuff", s.Length, least, "hand", g)
				f.Piece = m.Name
				all = append(all, f)
			}
		}
	}
	return all
}

func tight(p *schematic.Pattern, b *schematic.Written, what string, have, least units.Num, body string, g *schematic.Garment) finding.Finding {
	u := p.Units
	return finding.Finding{Kind: "grading/opening", Severity: finding.Warning, Pos: b.Pos, Sizes: []string{g.Size},
		Message: fmt.Sprintf("%s does not go over the %s, even stretched by a quarter", what, body),
		Have:    fmt.Sprintf("%s, stretched %s", long(have, u), long(have.Mul(stretch), u)), Want: fmt.Sprintf("at least %s, around the %s", long(least, u), body),
		Fix: "make it wider, or give it an opening"}
}

// neckOpening is the length of all neck edges together, or 0 where the garment has
// none, or opens in front.
func neckOpening(g *schematic.Garment) units.Num {
	var sum units.Num
	for _, m := range g.Pieces {
		if m.Cut {
			return units.Num{}
		}
		if m.Kind == schematic.KindBand {
			continue
		}
		for _, e := range m.Edges {
			neck := strings.Contains(strings.ToLower(e.Name), "neck")
			if opensInFront(e.Name) || neck && e.Doubt {
				return units.Num{}
			}
			if neck {
				sum = sum.Add(e.Length.Times(max(1, m.Make)))
			}
		}
	}
	return sum
}

func opensInFront(edge string) bool {
	return slices.ContainsFunc([]string{"front edge", "front opening", "placket"}, func(part string) bool { return strings.Contains(strings.ToLower(edge), part) })
}
