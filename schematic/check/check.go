// Package check holds a pattern against itself: what the designer wrote against
// what the counts make, centimetres against inches, size against size and edge
// against edge. It reports and never changes the pattern. One file holds one family of
// checks. It knows nothing of files or drawing.
package check

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/finding"
)

// Pattern is everything found in p and its garments gs, one for each size in the
// order of p.Sizes (see schematic.Work): what was found in the working of
// the rows, and what the checks of this package find. The same thing found in several
// sizes is told once, with those sizes. The list is sorted by place.
func Pattern(p *schematic.Pattern, gs []*schematic.Garment) finding.List {
	all := look(p, gs)
	if turned := exchanged(p, all); turned != nil {
		return turned
	}
	return slipped(p, gs, all)
}

// look is what the checks find, each by itself.
func look(p *schematic.Pattern, gs []*schematic.Garment) finding.List {
	all := append(terms(p), gaugeUnits(p)...)
	for _, g := range gs {
		for _, f := range g.Findings {
			if len(f.Sizes) == 0 {
				f.Sizes = []string{g.Size}
			}
			all = append(all, f)
		}
		for i := range g.Seams {
			all = append(all, join(g, &g.Seams[i])...)
		}
		all = append(append(all, sewnTwice(g)...), armholes(p, g)...)
		for _, m := range g.Pieces {
			all = append(all, band(p, g, m)...)
		}
		all = append(all, wear(p, g)...)
		all = append(all, sides(g)...)
	}
	for i := range p.Finished {
		all = append(all, written(p, gs, &p.Finished[i])...)
		all = append(all, pair(p, &p.Finished[i], "finished")...)
	}
	for i := range p.Bodies {
		all = append(all, pair(p, &p.Bodies[i], "body")...)
		all = append(all, ease(p, gs, &p.Bodies[i])...)
	}
	all = append(p.Sizes.Merge(all), drawing(p, gs)...)
	for _, f := range grading(p, gs) {
		if !slices.ContainsFunc(all, func(o finding.Finding) bool {
			return slices.Equal(o.Sizes, f.Sizes) && (o.Kind == "joins/armhole" && f.Kind == "grading/jump" && strings.Contains(f.Message, "armhole depth") ||
				o.Kind == "joins/length" && f.Kind == "grading/unlike" || o.Kind == "joins/armhole" && f.Kind == "grading/unlike")
		}) { // edges unlike are told once
			all = append(all, f)
		}
	}
	all.Sort()
	return all
}

// mostSwapped is how many gauges are tried, each of which works the whole garment anew.
const mostSwapped = 4

// exchanged is what is found of a pattern with the stitches and rows of a gauge in each other's place, and that they are, where every written
// measurement agrees with the counts then and some did not before; nil elsewhere.
func exchanged(p *schematic.Pattern, all finding.List) finding.List {
	drawn := func(f finding.Finding) bool { return strings.HasPrefix(f.Kind, "drawn/") }
	if len(p.Grading) > 0 || !slices.ContainsFunc(all, func(f finding.Finding) bool { return f.Kind == "drawn/written" }) {
		return nil
	}
	before := bysize.WorkAll(p)
	for k, g := range p.Gauges[:min(len(p.Gauges), mostSwapped)] {
		if g.Stitches.Eq(g.Rows) || g.Stitch != "" && !g.Crochet(p.Terms) && g.Stitches.Less(g.Rows) {
			continue // a knitted stitch is wider than high (common practice): these stand in their places
		}
		q := *p
		q.Gauges = slices.Clone(p.Gauges)
		q.Gauges[k].Stitches, q.Gauges[k].Rows = g.Rows, g.Stitches
		gs := bysize.WorkAll(&q)
		found := look(&q, gs)
		if slices.ContainsFunc(found, drawn) || recounted(before, gs) {
			continue
		}
		found = append(found, finding.Finding{Kind: "drawn/gauge", Severity: finding.Warning, Pos: g.Pos,
			Message: fmt.Sprintf("the written measurements agree with %s sts and %s rows, not with %s sts and %s rows", g.Rows, g.Stitches, g.Stitches, g.Rows),
			Have:    fmt.Sprintf("the gauge %s", g.Name), Want: "a gauge in which the counts make what is written", Fix: "swap its stitches and rows"})
		found.Sort()
		return found
	}
	return nil
}

// recounted reports whether a measurement is of other stitches or rows in one garment than in the other, as the widest place of a piece may be another.
func recounted(a, b []*schematic.Garment) bool {
	for i, g := range a {
		if len(b[i].Pieces) != len(g.Pieces) {
			return true
		}
		for k, m := range g.Pieces {
			counts := map[string]int{}
			for _, v := range m.Measures {
				counts[v.ID] = v.Count
			}
			if slices.ContainsFunc(b[i].Pieces[k].Measures, func(v schematic.Measure) bool { n, ok := counts[v.ID]; return ok && n != v.Count }) {
				return true
			}
		}
	}
	return false
}
