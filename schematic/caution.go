package schematic

import "strings"

// Caution is what is said where work can hurt someone. Named is set where the
// pattern itself speaks of the thing.
type Caution struct {
	Text  string
	Named bool
}

// LocalRules closes every list of cautions.
const LocalRules = "Follow the safety rules of the country where it will be worn."

var (
	smallParts = []string{"button", "bead", "toggle", "snap", "popper", "stud", "pompom", "pom-pom", "sequin", "eye"}
	cords      = []string{"cord", "drawstring", "tie", "ribbon", "i-cord", "string", "strap"}
	heat       = []string{"iron", "press", "steam", "block"}
)

// Cautions are those that a pattern calls for: cords (EN 14682) and small parts (EN
// 71-1, under three years; from memory) on clothes for children, and the iron where it tells
// to block or press. They defer to local rules.
func Cautions(p *Pattern) []Caution {
	var out []Caution
	if p.Children {
		things := p.things()
		out = append(out,
			Caution{"Cords, ties and drawstrings can catch and strangle. Have none at the neck or hood of a young child's garment, and keep any others short (EN 14682).", mentions(things, cords)},
			Caution{"Buttons, beads and other small parts can choke a child under three years. Sew them on firmly, check them after every wash, or leave them off (EN 71-1).", mentions(things, smallParts)})
	}
	for _, list := range [][]string{p.Notes, p.Making, p.Care, p.Special} {
		if mentions(list, heat) {
			return append(out, Caution{"Iron and steam burn, and melt some fibres. Keep children away, try on the swatch first, and follow the yarn's own label.", true})
		}
	}
	return out
}

// things are what the pattern needs, makes and marks.
func (p *Pattern) things() []string {
	var words []string
	for _, list := range [][]Material{p.Notions, p.Tools} {
		for _, m := range list {
			words = append(words, m.Text)
		}
	}
	for _, q := range p.Pieces {
		words = append(words, q.Name)
		for _, s := range q.Sections {
			if m, ok := s.(*Mark); ok {
				words = append(words, m.What, m.Name)
			}
		}
	}
	return words
}

// mentions reports whether any of texts has any of words, alone or in the plural
// or at the beginning of a longer word (buttonhole).
func mentions(texts, words []string) bool {
	for _, t := range texts {
		for _, f := range strings.FieldsFunc(strings.ToLower(t), func(r rune) bool { return r != '-' && (r < 'a' || r > 'z') }) {
			for _, w := range words {
				if f == w || f == w+"s" || len(w) > 3 && strings.HasPrefix(f, w) {
					return true
				}
			}
		}
	}
	return false
}
