// Package check holds a pattern against itself: what the designer wrote against
// what the counts make, centimetres against inches, size against size and edge
// against edge. It reports and never changes the pattern. One file holds one family of
// checks. It knows nothing of files or drawing.
package check

import (
	"flatwright/schematic"
	"flatwright/schematic/finding"
)

// Pattern is everything found in p and its garments gs, one for each size in the
// order of p.Sizes (see schematic.Work): what was found in the working of
// the rows, and what the checks of this package find. The same thing found in several
// sizes is told once, with those sizes. The list is sorted by place.
func Pattern(p *schematic.Pattern, gs []*schematic.Garment) finding.List {
	all := terms(p)
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
	all = append(append(p.Sizes.Merge(all), grading(p, gs)...), drawing(p, gs)...)
	all.Sort()
	return all
}
