package schematic

import (
	"strings"

	"flatwright/schematic/finding"
)

// oneSide gives a measurement that a piece has once, in every size, one ID, though the edge that it is of lies to the left
// of the middle in one size and to the right, or across it, in another.
func oneSide(made []*Made) {
	ids := map[string]string{} // by what is left without the side, the ID in the first size that has it
	twice := map[string]bool{}
	for _, m := range made {
		seen := map[string]bool{}
		for _, s := range m.Measures {
			base := sideless(s.ID)
			twice[base] = twice[base] || seen[base]
			seen[base] = true
			if _, ok := ids[base]; !ok {
				ids[base] = s.ID
			}
		}
	}
	for _, m := range made {
		for i := range m.Measures {
			s := &m.Measures[i]
			if base := sideless(s.ID); !twice[base] {
				s.ID = ids[base]
			}
		}
	}
}

// SameSides gives the measurements of a garment the IDs that those of a like one have, where they differ in the side alone.
func SameSides(like, g *Garment) {
	for i, m := range g.Pieces {
		if i < len(like.Pieces) && like.Pieces[i].ID == m.ID {
			oneSide([]*Made{like.Pieces[i], m})
		}
	}
}

// sideless is an ID without the side at its end.
func sideless(id string) string {
	return strings.TrimSuffix(strings.TrimSuffix(id, ".left"), ".right")
}

// OtherSide is a name, or a reference to an edge, with each left a right and each right a left: what it says of the other side of the body.
func OtherSide(name string) string {
	words := strings.Fields(name)
	for i, w := range words {
		other := ""
		switch {
		case strings.EqualFold(w, "left"):
			other = "right"
		case strings.EqualFold(w, "right"):
			other = "left"
		default:
			continue
		}
		if w[0] < 'a' {
			other = finding.Capital(other)
		}
		words[i] = other
	}
	return strings.Join(words, " ")
}
