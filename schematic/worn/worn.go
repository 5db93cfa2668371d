// Package worn puts a garment together as it is worn, laid flat with its front up: its pieces become panels,
// each panel is moved, without being bent, until its bonded edges lie on those of its partners, and
// what of them shows is drawn. It knows the craft and nothing of paper. There is no picture of any
// garment in it: where a panel comes to lie follows from joins, held stitches, marked lines, bands and folds alone.
package worn

import (
	"strings"

	"flatwright/schematic"
)

// Dress puts a garment together, as schematic.Work gives it, and sets its Worn. What can't be put together has none.
func Dress(g *schematic.Garment) { g.Worn = assemble(g) }

func assemble(g *schematic.Garment) *schematic.Made {
	a := &assembly{g: g, keys: map[string][]string{}}
	a.build()
	a.put()
	if len(a.placed) < 2 {
		return nil // one panel is drawn as it is worked
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
