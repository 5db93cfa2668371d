// Package worn puts a garment together as it is worn, laid flat with its front up: its pieces become panels,
// each panel is moved, without being bent, until its bonded edges lie on those of its partners, and
// what of them shows is drawn. It knows the craft and nothing of paper. There is no picture of any
// garment in it: where a panel comes to lie follows from joins, held stitches, marked lines, bands and folds alone.
package worn

import (
	"strings"

	"flatwright/schematic"
)

// All puts the garments together, the sizes of one pattern as schematic.Work gives them: each Garment's Worn is
// set. What can't be put together has none, or is noted there.
func All(gs []*schematic.Garment) {
	for _, g := range gs {
		g.Worn = one(g)
	}
}

func one(g *schematic.Garment) *schematic.Made {
	a := &assembly{g: g, keys: map[string][]string{}}
	a.build()
	a.put()
	if len(a.placed) < 1 {
		return nil
	}
	m := &schematic.Made{ID: "as-worn", Name: "As worn", Make: 1}
	m.Views = []schematic.View{a.figure()}
	m.Measures = a.measures()
	if len(m.Views[0].Outline) == 0 {
		return nil
	}
	return m
}

// sideWord is left or right, whichever a name says.
func sideWord(name string) string {
	for _, w := range strings.Fields(strings.ToLower(name)) {
		if w == "left" || w == "right" {
			return w
		}
	}
	return ""
}
