package check

import (
	"fmt"

	"flatwright/schematic"
	"flatwright/schematic/finding"
)

// drawing finds the measurements that the drawing is told of and that no size has.
func drawing(p *schematic.Pattern, gs []*schematic.Garment) finding.List {
	d := &p.Drawing
	told := append(append(append([]schematic.Called{}, d.Show...), d.Hide...), d.Order...)
	for _, n := range d.Names {
		told = append(told, n.Called)
	}
	var all finding.List
	for _, c := range told {
		if known(gs, c) {
			continue
		}
		f := finding.Finding{Kind: "drawing/unknown", Severity: finding.Warning, Pos: c.Pos,
			Message: fmt.Sprintf("the drawing has no measurement called %q", finding.Clip(c.Name)),
			Want:    "one of " + names(gs) + ", or the name of a piece"}
		if like := finding.Nearest(c.Name, allNames(gs)); like != "" {
			f.Fix = fmt.Sprintf("did you mean %q?", like)
		}
		all = append(all, f)
	}
	return all
}

func known(gs []*schematic.Garment, c schematic.Called) bool {
	for _, g := range gs {
		for _, made := range append(g.Pieces[:len(g.Pieces):len(g.Pieces)], g.AsWorn()...) {
			for i := range made.Measures {
				if c.Is(made.Name, made.Measures[i].Name) {
					return true
				}
			}
		}
	}
	return false
}
