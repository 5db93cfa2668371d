package document

import (
	"strings"

	"flatwright/schematic"
)

// Cautions are what a page says where work can hurt someone: cords (EN 14682) and
// small parts (EN 71-1, under three years; from memory) on clothes for children, and
// the iron where a pattern tells to block or press. They defer to local rules.
func Cautions(p *schematic.Pattern) []string {
	var out []string
	if p.Children {
		out = append(out,
			"Cords, ties and drawstrings can catch and strangle. Have none at the neck or hood of a young child's garment, and keep any others short (EN 14682).",
			"Buttons, beads and other small parts can choke a child under three years. Sew them on firmly, check them after every wash, or leave them off (EN 71-1).")
	}
	if hot(p) {
		out = append(out, "Iron and steam burn, and melt some fibres. Keep children away, try on the swatch first, and follow the yarn's own label.")
	}
	if len(out) > 0 {
		out = append(out, "Follow the safety rules of the country where it will be worn.")
	}
	return out
}

// hot reports whether the pattern speaks of heat, or of blocking without saying how.
func hot(p *schematic.Pattern) bool {
	for _, list := range [][]string{p.Notes, p.Making, p.Care, p.Special} {
		for _, s := range list {
			s = strings.ToLower(s)
			for _, w := range []string{"iron", "press", "steam", "block"} {
				if strings.Contains(s, w) {
					return true
				}
			}
		}
	}
	return false
}
