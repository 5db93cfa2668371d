package worn

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"flatwright/schematic"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A stitch and a row are 5 mm. Of 100 stitches 50 are the back, 250 mm; no stitches are left between it and the fronts, so its armholes are slits where the piece is
// folded. 40 rows lie below them, 200 mm, and 30 beside them, 150 mm: a sleeve of 60 stitches, 300 mm, fills each. The fronts end at the sides of the piece 6 stitches
// in, on one row: that is no rib which draws in.
func TestAPieceFoldedAtItsArmholesKeepsTheEdgesOfEachPart(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Jacket
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - piece: Body
    left edge: front edge
    right edge: front edge
    sections:
      - {cast on: 100, edge: hem}
      - {even: 8 rows, rib: yes}
      - {even: 32 rows}
      - divide:
          - part: Right front
            stitches: 25
            left edge: armhole
            right edge: front edge
            sections:
              - {even: 20 rows}
              - {leave: 6, at: right edge, edge: neck}
              - {even: 10 rows, right edge: neck}
              - {bind off: all, edge: shoulder}
          - part: Back
            stitches: 50
            left edge: armhole
            right edge: armhole
            sections:
              - {even: 30 rows}
              - {leave: 19, at: both edges, edge: shoulder}
              - {bind off: all, edge: neck}
          - part: Left front
            mirror of: Right front
  - piece: Sleeve
    make: 2
    left edge: sleeve seam
    right edge: sleeve seam
    sections:
      - {cast on: 60, edge: cuff}
      - {even: 60 rows}
      - {bind off: all, edge: top}
joins:
  - {sew: Body Right front shoulder, to: Body Back right shoulder}
  - {sew: Body Left front shoulder, to: Body Back left shoulder}
  - {sew: Sleeve top, into: [Body Right front armhole, Body Back armhole, Body Left front armhole]}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, g.Findings)
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 250+2*300, hi.X-lo.X, 0.01)
	assert.InDelta(t, 350, hi.Y-lo.Y, 0.01)
	for name, long := range map[string]float64{"length": 350, "body to underarm": 200, "upper arm": 300} {
		assert.InDelta(t, long, measured(t, g, name).Length.Float(), 0.01, name)
	}
}

// The heel is bound off, so that the instep alone is joined into a round, with 28 stitches picked up: 56 of 100/28 mm, 200 mm around.
func TestAFootGoesOnFromAnInstepWhoseHeelIsBoundOff(t *testing.T) {
	text := `version: 1
pattern: Sock
terms: UK
units: cm
sizes: one
gauges: {fabric: 28 sts and 36 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Sock
    worked: in the round, from the cuff
    sections:
      - {cast on: 56, edge: cuff}
      - {even: 40 rows}
      - divide:
          - part: Heel
            stitches: 28
            sections:
              - {even: 26 rows}
              - {bind off: all, edge: heel end}
          - {hold: 28, name: instep}
      - {join parts: [instep, {add: 28}], round: yes}
      - {even: 44 rows, to: 56}
      - {bind off: all, edge: toe}
`
	g := schematic.Work(written(t, text), 0)
	Dress(g)
	assert.Empty(t, g.Findings)
	require.Len(t, g.Pieces[0].Views, 3)
	require.NotNil(t, g.Worn)
	assert.InDelta(t, 200, measured(t, g, "foot").Length.Float(), 0.01)

	g = schematic.Work(written(t, strings.Replace(text, "to: 56", "to: 57", 1)), 0)
	assert.NotEmpty(t, g.Findings, "the stitches of the foot are counted")
}

const bibbed = `version: 1
pattern: Apron
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - piece: Skirt
    kind: skirt
    worked: in the round, from the hem
    sections:
      - {cast on: 120, edge: hem}
      - {even: 60 rows}
      - {bind off: all, edge: waist edge}
  - piece: Bib
    kind: piece
    left edge: bib side
    right edge: bib side
    sections:
      - {cast on: 40, edge: base}
      - {even: 40 rows}
      - {bind off: all, edge: bib top}
  - piece: Strap
    kind: band
    make: 2
    sections:
      - {cast on: 6, edge: end}
      - {even: 60 rows}
      - {bind off: all, edge: far end}
joins:
  - {sew: Bib base, to: Skirt waist edge}
  - {sew: Strap end, to: Skirt waist edge, how: in 2 places}
`

// A stitch is 5 mm. The bib's 40, 200 mm, stand in the middle of the 60 that show of the waist, 300 mm: 50 mm of it are free at each side. They are not
// stretched to its width; 54 stitches, 270 mm, are 0.9 of it, and are. The straps are sewn to the edge that the bib has taken, which is told.
func TestABibIsAsWideAtItsBaseAsItIsWorked(t *testing.T) {
	g := schematic.Work(written(t, bibbed), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	loop := g.Worn.Views[0].Outline[0]
	for _, x := range []float64{-100, 100} {
		hasCorner(t, loop, x, 300)
		hasCorner(t, loop, x, 500)
	}
	assert.True(t, notes(g, map[string]bool{"Strap": true}), "%v", g.Findings)

	g = schematic.Work(written(t, strings.Replace(bibbed, "cast on: 40", "cast on: 54", 1)), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	hasCorner(t, g.Worn.Views[0].Outline[0], 135, 500)
	for _, p := range g.Worn.Views[0].Outline[0] {
		assert.False(t, near(p, pt{X: 135, Y: 300}), "eased to the waist")
	}
}

// The last 5 rows are even, so that the narrowed width is reached below the edge that has it.
func TestAWidthIsCalledByTheEdgeAboveItThatIsAsWide(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Cowl
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - piece: Cowl
    worked: in the round, from the hem
    sections:
      - {cast on: 100, edge: shoulder edge}
      - {decrease: 10, at: across, every: 5 rows, times: 4}
      - {even: 5 rows}
      - {bind off: all, edge: face edge}
`), 0)
	Dress(g)
	assert.InDelta(t, 500, measured(t, g, "shoulder edge").Length.Float(), 0.01)
	assert.InDelta(t, 300, measured(t, g, "face edge").Length.Float(), 0.01)
}

// From its cuff a sleeve goes up, and so does a mitten, and a hat from its brim.
func TestThePieceBeginsAtTheEndThatTheTradeNames(t *testing.T) {
	for piece, end := range map[string]string{"Sleeve": "cuff", "Mitten": "cuff", "Hat": "brim"} {
		p := written(t, "version: 1\npattern: One\nterms: UK\nunits: cm\nsizes: one\ngauges: {st: 20 sts and 20 rows over 10 cm in stocking stitch}\n"+
			"pieces:\n  - piece: "+piece+"\n    worked: in the round, from the "+end+"\n    sections: [{cast on: 40}, {even: 20 rows}, {bind off: all}]\n")
		assert.Equal(t, schematic.FromHem, p.Pieces[0].From, piece)
	}
}

// Sewn with its left edge to the back and its right edge to the front, one of two sleeves that are alike lies at one side and its mirror image at the other: the
// picture is that of sleeves of which no edge is said.
func TestTheSecondOfTwoSleevesLiesMirrored(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("../../testdata/garments/worn", "raglan-flat.yaml"))
	require.NoError(t, err)
	sewn := "  - {sew: Sleeve raglan, into: [Back raglan, Front raglan], how: stitch to stitch}\n"
	require.Contains(t, string(text), sewn)
	apart := "  - {sew: Sleeve left raglan, to: Back raglan}\n  - {sew: Sleeve right raglan, to: Front raglan}\n"
	one, other := schematic.Work(written(t, string(text)), 0), schematic.Work(written(t, strings.Replace(string(text), sewn, apart, 1)), 0)
	Dress(one)
	Dress(other)
	require.NotNil(t, other.Worn)
	assert.Empty(t, other.Findings)
	lo, hi := bounds(one.Worn.Views[0].Outline)
	l, h := bounds(other.Worn.Views[0].Outline)
	assert.InDelta(t, hi.X-lo.X, h.X-l.X, 0.01)
	assert.InDelta(t, hi.Y-lo.Y, h.Y-l.Y, 0.01)
}

// Edges are left and right as drawn: laid behind a front, a back has its left edge at the front's right one.
func TestABackThatIsSewnTwistedIsTold(t *testing.T) {
	text := `version: 1
pattern: Top
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - {piece: Front, sections: [{cast on: 60}, {even: 60 rows}, {bind off: all}]}
  - {piece: Back, sections: [{cast on: 60}, {even: 60 rows}, {bind off: all}]}
joins:
  - {sew: Front left side, to: Back right side}
  - {sew: Front right side, to: Back left side}
`
	g := schematic.Work(written(t, text), 0)
	Dress(g)
	assert.NotNil(t, g.Worn)
	assert.Empty(t, g.Findings)

	g = schematic.Work(written(t, strings.NewReplacer("Back right", "Back left", "Back left", "Back right").Replace(text)), 0)
	Dress(g)
	assert.Nil(t, g.Worn)
	require.Len(t, g.Findings, 1)
	assert.Contains(t, g.Findings[0].Message, "left edge is sewn to a left edge")
}

// A hood whose crown is sewn to itself goes round the head: on a scarf that lies flat it does not lie flat too. With its crown open it does.
func TestAHoodSewnAtItsFoldStandsOnNoFlatScarf(t *testing.T) {
	text := `version: 1
pattern: Hooded Scarf
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - {piece: Scarf, sections: [{cast on: 300}, {even: 30 rows}, {divide: [{bind off: 100, edge: end}, {bind off: 100, edge: base}, {bind off: 100, edge: end}]}]}
  - {piece: Hood, kind: hood, worked: "flat, from the neck", sections: [{cast on: 100, edge: neck}, {even: 60 rows}, {bind off: all, edge: crown}]}
joins:
  - {sew: Hood neck, to: Scarf base}
`
	g := schematic.Work(written(t, text), 0)
	Dress(g)
	assert.NotNil(t, g.Worn)
	g = schematic.Work(written(t, text+"  - {sew: Hood crown, to: Hood crown, how: at a fold}\n"), 0)
	Dress(g)
	assert.Nil(t, g.Worn)
	require.NotEmpty(t, g.Findings)
	assert.Contains(t, g.Findings[0].Message, "Hood is not in the drawing of the garment as worn: it is folded")
}
