package random

import (
	"fmt"

	"flatwright/schematic"
)

// gored is a row of equal panels, shaped at their lines: a skirt of gores, a crown of wedges,
// a cape of two halves. Sometimes one of them is wider, or is shaped again.
func (m *g) gored() {
	gores := m.int("gores", 2, 8)
	wide := m.grade("gore", 12, 40)
	odd := m.int("odd gore", -3, gores-1)
	more := m.int("wider by", 0, 6)
	panels := &schematic.Panels{}
	for i := range gores {
		stitches := gr(wide)
		if i == odd {
			stitches = gr(m.each(func(i int) int { return wide[i] + more }))
		}
		panels.Of = append(panels.Of, schematic.Panel{Name: fmt.Sprintf("Gore %d", i+1), Stitches: stitches})
	}
	n := m.each(func(i int) int {
		sum := gores * wide[i]
		if odd >= 0 {
			sum += more
		}
		return sum
	})
	shape := &schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(1), At: schematic.Lines, Every: m.one(m.int("gore rows", 1, 6)), Times: m.one(m.int("gore times", 1, 5))}}}
	if m.yes("shaped again") && odd >= 0 {
		shape.Shapings = append(shape.Shapings, schematic.Shaping{Increase: true, By: m.one(1), At: schematic.Lines, Panel: panels.Of[odd].Name, Every: m.one(3), Times: m.one(1)})
	}
	from := schematic.FromHem
	if m.yes("from the neck") {
		from = schematic.FromNeck
	}
	m.add(&schematic.Piece{Name: m.name("Skirt"), Round: m.yes("in the round"), From: from, Sections: []schematic.Section{
		m.castOn(n), &schematic.Even{Amount: rows(m.same(m.int("rows before", 0, 4)))}, panels, shape, &schematic.BindOff{All: true}}})
}
