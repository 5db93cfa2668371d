package place

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
)

func boxed(kind schematic.Kind, name string, wide, depth float64) *schematic.Made {
	m := &schematic.Made{ID: name, Name: name, Kind: kind, Views: []schematic.View{{Outline: [][]schematic.Point{{{X: 0, Y: 0}, {X: wide, Y: 0}, {X: wide, Y: 500}, {X: wide - 100, Y: 500}, {X: wide - 100, Y: 500 - depth}, {X: 100, Y: 500 - depth}, {X: 100, Y: 500}, {X: 0, Y: 500}}}}}}
	m.Edges = []schematic.Edge{{Name: "neck", Path: []schematic.Point{{X: wide - 100, Y: 500}, {X: wide - 100, Y: 500 - depth}, {X: 100, Y: 500 - depth}, {X: 100, Y: 500}}}}
	m.Measures = []schematic.Measure{{ID: name + ".length", Name: "length", Main: true}, {ID: name + ".depth", Name: kind.String() + " neck depth", Main: true, Axis: schematic.Vertical, A: schematic.Point{X: 100, Y: 500 - depth}, B: schematic.Point{X: 100, Y: 500}}}
	return m
}

func TestAFrontAndABackThatDifferInTheirNecksAreoneOutline(t *testing.T) {
	front, back, sleeve := boxed(schematic.KindFront, "Front", 480, 80), boxed(schematic.KindBack, "Back", 480, 20), &schematic.Made{Name: "Sleeve", Kind: schematic.KindSleeve}
	got := oneOutline([]*schematic.Made{back, front, sleeve})
	require.Len(t, got, 2)
	both := got[0]
	assert.Equal(t, "Front and Back", both.Name)
	assert.Equal(t, front.Views[0].Outline, both.Views[0].Outline, "the deeper neck is cut out of the fabric")
	// The neck of the back, 20 mm deep, seen from the front: three stretches.
	assert.Equal(t, []schematic.Line{{Kind: schematic.LineBehind, A: schematic.Point{X: 100, Y: 500}, B: schematic.Point{X: 100, Y: 480}}, {Kind: schematic.LineBehind, A: schematic.Point{X: 100, Y: 480}, B: schematic.Point{X: 380, Y: 480}},
		{Kind: schematic.LineBehind, A: schematic.Point{X: 380, Y: 480}, B: schematic.Point{X: 380, Y: 500}}}, both.Views[0].Lines)
	var names []string
	for _, m := range both.Measures {
		names = append(names, m.Name)
	}
	assert.Equal(t, []string{"length", "front neck depth", "back neck depth"}, names)
	assert.Equal(t, schematic.Point{X: 380, Y: 480}, both.Measures[2].A)
	assert.Empty(t, front.Views[0].Lines, "the piece itself stays as it is")

	stagger := boxed(schematic.KindBack, "Back", 480, 20)
	stagger.Edges = append(stagger.Edges, schematic.Edge{Name: "side", Rows: 100, Path: []schematic.Point{{X: 480, Y: 0}, {X: 480, Y: 500}}})
	front.Edges = append(front.Edges, stagger.Edges[1])
	stagger.Views[0].Outline[0][2].Y = 504.5 // a row of 5 mm
	assert.Len(t, oneOutline([]*schematic.Made{stagger, front}), 1)
	stagger.Views[0].Outline[0][2].Y = 511
	assert.Len(t, oneOutline([]*schematic.Made{stagger, front}), 2)

	wider := boxed(schematic.KindBack, "Back", 490, 20)
	assert.Equal(t, []*schematic.Made{wider, front}, oneOutline([]*schematic.Made{wider, front}), "5 mm wider at either side is more than a neck")
}

// By hand: over a way from 0,0 to 10,0 and up to 10,20. Beside it the distance is square to it; past its ends it is that from the end, by 3, 4, 5.
func TestHowFarAPlaceIsFromAWay(t *testing.T) {
	way := []schematic.Point{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 20}}
	for p, want := range map[schematic.Point]float64{{X: 5, Y: 0}: 0, {X: 5, Y: -3}: 3, {X: 4, Y: 2}: 2, {X: 13, Y: 24}: 5, {X: -3, Y: 4}: 5, {X: 7, Y: 10}: 3, {X: 12, Y: 15}: 2, {X: 10, Y: 20}: 0, {X: -4, Y: -3}: 5, {X: 10, Y: 25}: 5} {
		assert.InDelta(t, want, distToPath(way, p), 1e-9, "%v", p)
	}
	slanted := []schematic.Point{{X: 0, Y: 0}, {X: 30, Y: 40}}
	assert.InDelta(t, 5, distToPath(slanted, schematic.Point{X: 15 + 4, Y: 20 - 3}), 1e-9)
	assert.InDelta(t, 10, distToPath(slanted, schematic.Point{X: 30 + 6, Y: 40 + 8}), 1e-9)
	assert.InDelta(t, 5, distToPath([]schematic.Point{{X: 1, Y: 1}, {X: 1, Y: 1}}, schematic.Point{X: 4, Y: 5}), 1e-9, "a way of no length")
	assert.True(t, math.IsInf(distToPath(nil, schematic.Point{}), 1))
}
