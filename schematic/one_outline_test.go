package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func boxed(kind Kind, name string, wide, depth float64) *Made {
	m := &Made{ID: name, Name: name, Kind: kind, Views: []View{{Outline: [][]Point{{{0, 0}, {wide, 0}, {wide, 500}, {wide - 100, 500}, {wide - 100, 500 - depth}, {100, 500 - depth}, {100, 500}, {0, 500}}}}}}
	m.Edges = []Edge{{Name: "neck", Path: []Point{{wide - 100, 500}, {wide - 100, 500 - depth}, {100, 500 - depth}, {100, 500}}}}
	m.Measures = []Measure{{ID: name + ".length", Name: "length", Main: true}, {ID: name + ".depth", Name: kind.String() + " neck depth", Main: true, Axis: Vertical, A: Point{100, 500 - depth}, B: Point{100, 500}}}
	return m
}

func TestAFrontAndABackThatDifferInTheirNecksAreOneOutline(t *testing.T) {
	front, back, sleeve := boxed(KindFront, "Front", 480, 80), boxed(KindBack, "Back", 480, 20), &Made{Name: "Sleeve", Kind: KindSleeve}
	got := OneOutline([]*Made{back, front, sleeve})
	require.Len(t, got, 2)
	both := got[0]
	assert.Equal(t, "Front and Back", both.Name)
	assert.Equal(t, front.Views[0].Outline, both.Views[0].Outline, "the deeper neck is cut out of the fabric")
	// The neck of the back, 20 mm deep, seen from the front: three stretches.
	assert.Equal(t, []Line{{Kind: LineBehind, A: Point{100, 500}, B: Point{100, 480}}, {Kind: LineBehind, A: Point{100, 480}, B: Point{380, 480}},
		{Kind: LineBehind, A: Point{380, 480}, B: Point{380, 500}}}, both.Views[0].Lines)
	var names []string
	for _, m := range both.Measures {
		names = append(names, m.Name)
	}
	assert.Equal(t, []string{"length", "front neck depth", "back neck depth"}, names)
	assert.Equal(t, Point{380, 480}, both.Measures[2].A)
	assert.Empty(t, front.Views[0].Lines, "the piece itself stays as it is")

	stagger := boxed(KindBack, "Back", 480, 20)
	stagger.Edges = append(stagger.Edges, Edge{Name: "side", Rows: 100, Path: []Point{{480, 0}, {480, 500}}})
	front.Edges = append(front.Edges, stagger.Edges[1])
	stagger.Views[0].Outline[0][2].Y = 504.5 // a row of 5 mm
	assert.Len(t, OneOutline([]*Made{stagger, front}), 1)
	stagger.Views[0].Outline[0][2].Y = 511
	assert.Len(t, OneOutline([]*Made{stagger, front}), 2)

	wider := boxed(KindBack, "Back", 490, 20)
	assert.Equal(t, []*Made{wider, front}, OneOutline([]*Made{wider, front}), "5 mm wider at either side is more than a neck")
}
