package job

import (
	"strings"

	"flatwright/schematic"
)

// caution is what a drawing says: of what the pattern itself names on a child's
// garment, such as its buttons.
func caution(p *schematic.Pattern) string {
	if !p.Children {
		return ""
	}
	var text []string
	for _, c := range schematic.Cautions(p) {
		if c.Named {
			text = append(text, c.Text)
		}
	}
	if len(text) == 0 {
		return ""
	}
	return "Caution: " + strings.Join(append(text, schematic.LocalRules), " ")
}
