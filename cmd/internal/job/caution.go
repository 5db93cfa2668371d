package job

import (
	"strings"

	"flatwright/schematic"
)

// smallParts and cords are words of materials that call for a caution on clothes
// for children: EN 71-1 (small parts, under three years; from memory) and EN 14682
// (cords and drawstrings).
var (
	smallParts = []string{"button", "bead", "toggle", "snap", "popper", "press stud", "pompom", "pom-pom", "sequin", "eye"}
	cords      = []string{"cord", "drawstring", "tie", "ties", "ribbon", "i-cord", "string", "strap"}
)

// caution is what a drawing of a child's garment says about small parts and
// cords, or nothing.
func caution(p *schematic.Pattern) string {
	if !p.Children {
		return ""
	}
	var words []string
	for _, list := range [][]schematic.Material{p.Notions, p.Tools} {
		for _, m := range list {
			words = append(words, m.Text)
		}
	}
	for _, q := range p.Pieces {
		words = append(words, q.Name)
		for _, s := range q.Sections {
			if m, ok := s.(*schematic.Mark); ok {
				words = append(words, m.What, m.Name)
			}
		}
	}
	var text []string
	if mentions(words, smallParts) {
		text = append(text, "Buttons and other small parts can choke: sew them on firmly, and leave them off for children under three.")
	}
	if mentions(words, cords) {
		text = append(text, "Cords can catch and strangle: keep them short, and have none at the neck or hood of a child's garment.")
	}
	if len(text) == 0 {
		return ""
	}
	return "Caution: " + strings.Join(text, " ") + " Follow the safety rules of your country."
}

// mentions reports whether any of texts has any of words, alone or in the plural
// or at the beginning of a longer word (buttonhole).
func mentions(texts, words []string) bool {
	for _, t := range texts {
		for _, f := range strings.FieldsFunc(strings.ToLower(t), func(r rune) bool { return r != '-' && (r < 'a' || r > 'z') }) {
			for _, w := range words {
				if f == w || len(w) > 3 && strings.HasPrefix(f, w) {
					return true
				}
			}
		}
	}
	return false
}
