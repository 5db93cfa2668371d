package worn

import (
	"os"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Two fronts whose edges meet in the middle are two sheets: the right one with its band lies over the left one with its
// own, and of that no line shows beneath it.
func TestTheRightFrontAndItsBandLieOverTheLeft(t *testing.T) {
	text, err := os.ReadFile("../../examples/saltmarsh-cardigan.yaml")
	require.NoError(t, err)
	p, _ := read.Pattern("saltmarsh-cardigan.yaml", text)
	require.NotNil(t, p)
	g := schematic.Work(p, 2)
	Dress(g)
	require.NotNil(t, g.Worn)
	v := g.Worn.Views[0]
	require.Len(t, v.Outline, 1)
	require.Len(t, v.Under, 1)
	_, hi := bounds(v.Outline)
	under, _ := bounds(v.Under)
	// The band is 6 rows deep, about 30 mm, and reaches so far beyond the middle on top and beneath.
	assert.InDelta(t, 30, hi.X, 2)
	assert.InDelta(t, -30, under.X, 2)
	for _, l := range v.Lines {
		if l.Kind == schematic.LineEdge {
			assert.False(t, deepWithin(v.Outline[0], mid(l.A, l.B)), "%v", l)
		}
	}
}

func deepWithin(loop []pt, p pt) bool {
	return within(loop, p) && distTo(append(append([]pt{}, loop...), loop[0]), p) > 1
}

func TestRibsOfAGroundGoFromEdgeToEdge(t *testing.T) {
	// 30 mm wide and 10 high: ribs at 4.5, 13.5 and 22.5 mm.
	r := schematic.Hatch{Poly: []pt{{X: 0, Y: 0}, {X: 30, Y: 0}, {X: 30, Y: 10}, {X: 0, Y: 10}}, Dir: pt{Y: 1}}
	ribs := ribsOf(r)
	require.Len(t, ribs, 3)
	for _, s := range ribs {
		assert.InDelta(t, s[0].X, s[1].X, 1e-9)
		assert.InDelta(t, 10, dist(s[0], s[1]), 1e-9)
	}
	assert.InDelta(t, 9, absf(ribs[1][0].X-ribs[0][0].X), 1e-9)
	r.Dir = pt{X: 1} // along it there is room for one
	require.Len(t, ribsOf(r), 1)
	assert.InDelta(t, 30, dist(ribsOf(r)[0][0], ribsOf(r)[0][1]), 1e-9)
}
