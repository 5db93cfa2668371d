package schematic_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
)

// Cords by EN 14682 and small parts by EN 71-1 (from memory) are warned of on all clothes for children, and named where the pattern has them.
func TestCautionsNameWhatThePatternHas(t *testing.T) {
	named := func(children bool, notion, note string) []bool {
		var out []bool
		for _, c := range schematic.Cautions(&schematic.Pattern{Children: children, Notions: []schematic.Material{{Text: notion}}, Notes: []string{note}}) {
			out = append(out, c.Named)
		}
		return out
	}
	assert.Empty(t, named(false, "5 buttons", "Sew in the ends."))
	assert.Equal(t, []bool{true}, named(false, "", "Block to size."))
	assert.Equal(t, []bool{false, false}, named(true, "stitch holder", ""))
	for _, small := range []string{"5 buttons", "Button, 15 mm", "2 safety eyes", "press studs", "a pom-pom"} {
		assert.Equal(t, []bool{false, true}, named(true, small, ""), small)
	}
	for _, cord := range []string{"elastic cord", "ties, 2 of 30 cm", "a ribbon", "i-cord"} {
		assert.Equal(t, []bool{true, false}, named(true, cord, ""), cord)
	}
	assert.Equal(t, []bool{false, false}, named(true, "eyelets are worked, no tied ends", ""), "longer words that begin with a short one are others")
	p := &schematic.Pattern{Children: true, Pieces: []*schematic.Piece{{Sections: []schematic.Section{&schematic.Mark{What: "buttonhole"}}}}}
	assert.True(t, schematic.Cautions(p)[1].Named, "a buttonhole has its button")
}

// WCAG 2.2: black on white is 21 to 1. #777777 on white is just below 4.5 to 1, and #767676 just above.
func TestContrastIsThatOfWCAG(t *testing.T) {
	white, black := schematic.Colour{R: 255, G: 255, B: 255}, schematic.Colour{}
	grey := func(v uint8) schematic.Colour { return schematic.Colour{R: v, G: v, B: v} }
	assert.InDelta(t, 21, black.Contrast(white), 1e-9)
	assert.InDelta(t, 21, white.Contrast(black), 1e-9)
	assert.InDelta(t, 1, grey(9).Contrast(grey(9)), 1e-9)
	assert.InDelta(t, 4.48, grey(0x77).Contrast(white), 0.005)
	assert.InDelta(t, 4.54, grey(0x76).Contrast(white), 0.005)
	dark, ok := grey(0x77).Darker(4.5, white)
	assert.True(t, ok)
	assert.Equal(t, "#767676", dark.String())
	dark, ok = grey(0x76).Darker(4.5, white)
	assert.True(t, ok)
	assert.Equal(t, "#767676", dark.String(), "no darker than it must be")
	_, ok = grey(0x77).Darker(7, black)
	assert.False(t, ok, "no darker colour stands out from black")
}
