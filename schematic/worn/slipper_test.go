package worn

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
)

// A stitch is 5 mm wide, a row 5 mm high. The foot is 40 stitches around (200 mm) and 12 + 20 rows long; 28 of its stitches go on for 20 rows to the
// heel: 160 + 100 = 260 mm in all, and folded along the sole half of 28 stitches, 70 mm, high behind. The fold lies below, the toe at the left.
func TestASlipperLiesOnItsSide(t *testing.T) {
	text := inTens + `
  - piece: Slipper
    kind: sock
    make: 2
    worked: in the round, from the FROM
    sections:
      - {cast on: 16, edge: toe}
      - {increase: 4, at: across, every: 2 rows, times: 6}
      - even: 20 rows
      - divide:
          - {part: Sole, stitches: 28, sections: [even: 20 rows, {bind off: all, edge: heel}]}
          - {bind off: 12, edge: instep}
`
	joins := "joins: [{sew: Slipper Sole heel, how: at a fold}]\n"
	for _, from := range []string{"neck", "hem"} {
		g := schematic.Work(written(t, strings.ReplaceAll(text, "FROM", from)+joins), 0)
		Dress(g)
		require.NotNil(t, g.Worn)
		assert.Equal(t, map[string]float64{"foot length": 260, "heel height": 70, "opening length": 100, "foot": 200}, lengths(g.Worn), from)
		corners(t, assembled(g).placed[0], pt{X: -130, Y: 0}, pt{X: 130, Y: 100})
		hasCorner(t, g.Worn.Views[0].Outline[0], 30, 70)
		hasCorner(t, g.Worn.Views[0].Outline[0], 130, 70)
	}
	g := schematic.Work(written(t, strings.ReplaceAll(text, "FROM", "neck")), 0)
	Dress(g)
	for _, p := range assembled(g).placed {
		assert.False(t, p.slipper, "without its seam nothing says that the sole is folded")
	}
}

// A half disc: 8 stitches (40 mm) are doubled four times, to 128 (640 mm), over 4 + 36 rows (200 mm). Its sides are row ends, in one line with the
// first edge: 200 + 40 + 200 mm, and its last row is about half of the way round them (440 pi / 2 = 691).
func TestAHalfMoonIsDrawnAsItIsBlocked(t *testing.T) {
	text := inTens + `
  - piece: Shawl
    worked: flat, from the neck
    sections:
      - cast on: 8
      - repeat row: 2 in 1
      - even: 4 rows
      - repeat row: 2 in 1
      - even: 8 rows
      - repeat row: 2 in 1
      - even: 8 rows
      - repeat row: 2 in 1
      - even: ROWS rows
      - {bind off: all, edge: lower edge}
`
	g := schematic.Work(written(t, strings.ReplaceAll(text, "ROWS", "16")), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Equal(t, map[string]float64{"wingspan": 440, "depth": 200, "lower edge": 640}, lengths(g.Worn))
	corners(t, assembled(g).placed[0], pt{X: -220, Y: 0}, pt{X: 220, Y: 200})
	g = schematic.Work(written(t, strings.ReplaceAll(text, "ROWS", "60")), 0)
	Dress(g)
	assert.Nil(t, g.Worn, "its last row is too short for that: it is drawn as it is worked")
}

// Of 48 stitches (240 mm) 12 are bound off at each side, in two rows: these are no measurement, and how wide they are is.
func TestTheRowsByWhichBindOffsStaggerAreNotMeasured(t *testing.T) {
	g := schematic.Work(written(t, inTens+`
  - piece: Apron
    kind: front
    sections: [cast on: 48, even: 40 rows, {bind off: 12, at: both edges, edge: waist}, {even: 20 rows, left edge: bib side, right edge: bib side}, {bind off: all, edge: bib top}]
`), 0)
	names := lengths(g.Pieces[0])
	assert.NotContains(t, names, "height of waist")
	assert.Equal(t, 60.0, names["width of waist"])
}

// The right front, 42 stitches of 100 / 15 mm, is wrapped over the left one, and is as wide at the hem as 10 stitches more.
func TestAWrapSkirtTellsHowFarItsFrontReaches(t *testing.T) {
	g := schematic.Work(pattern(t, "wrap-skirt.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.InDelta(t, 280, lengths(g.Worn)["front waist"], 0.01)
	assert.InDelta(t, 346.667, lengths(g.Worn)["front hem"], 0.01)
}
