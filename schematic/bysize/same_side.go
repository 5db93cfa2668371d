package bysize

import (
	"strings"

	"flatwright/schematic"
)

// oneSide gives a measurement that a piece has once, in every size, one ID, though the edge that it is of lies to the left
// of the middle in one size and to the right, or across it, in another.
func oneSide(made []*schematic.Made) {
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
func SameSides(like, g *schematic.Garment) {
	for i, m := range g.Pieces {
		if i < len(like.Pieces) && like.Pieces[i].ID == m.ID {
			oneSide([]*schematic.Made{like.Pieces[i], m})
		}
	}
}

// sideless is an ID without the side at its end.
func sideless(id string) string {
	return strings.TrimSuffix(strings.TrimSuffix(id, ".left"), ".right")
}
