package alter

import (
	"cmp"

	"flatwright/schematic"
	"flatwright/schematic/finding"
)

// ribsOf are the multiples that the stitches of ribs, by their place in the file, are of their repeat, or so many more, in all sizes.
func ribsOf(p *schematic.Pattern) map[finding.Pos]schematic.Need {
	out := map[finding.Pos]schematic.Need{}
	for i := range p.Sizes.Names {
		for _, m := range schematic.Work(p, i).Pieces {
			for _, s := range m.Steps {
				pos, repeat := s.Section.Base().Pos, repeatIn(p, s)
				need := schematic.Need{Multiple: repeat, Plus: s.After % max(1, repeat)}
				if had, twice := out[pos]; twice && had != need {
					need = schematic.Need{}
				}
				out[pos] = need
			}
		}
	}
	return out
}

// repeatIn is the repeat of the rib that a section is worked in; 0 if it is none.
func repeatIn(p *schematic.Pattern, s schematic.Step) int {
	g := schematic.GaugeIn(p.Gauges, s.Gauge)
	switch {
	case !s.Section.Traits().Ribbed || g == nil || s.Rows == 0:
		return 0
	}
	return schematic.RibRepeat(cmp.Or(s.Section.Base().Stitch, g.Stitch))
}
