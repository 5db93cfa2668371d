package document

import "flatwright/schematic"

// cautions are what a page says where work can hurt someone, and that local rules
// come first; nothing where nothing can.
func cautions(p *schematic.Pattern) []string {
	var out []string
	for _, c := range schematic.Cautions(p) {
		out = append(out, c.Text)
	}
	if len(out) > 0 {
		out = append(out, schematic.LocalRules)
	}
	return out
}
