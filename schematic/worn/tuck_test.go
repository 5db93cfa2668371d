package worn

import (
	"os"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Underarm stitches of a wide sleeve lie at an angle to those of the body: in no size does the outline cross itself there, and
// the sleeve goes on from the side of the body.
func TestTheUnderarmOfAWideSleeveIsHiddenByTheBody(t *testing.T) {
	text, err := os.ReadFile("../../examples/windlass-raglan.yaml")
	require.NoError(t, err)
	p, found := read.Pattern("windlass-raglan.yaml", text)
	require.NotNil(t, p, "%v", found)
	patterns := []*schematic.Pattern{p}
	for _, f := range files(t) {
		patterns = append(patterns, pattern(t, f))
	}
	tucked := map[string]int{}
	for _, p := range patterns {
		for size := range p.Sizes.Len() {
			g := schematic.Work(p, size)
			Dress(g)
			if g.Worn == nil {
				continue
			}
			for _, loop := range g.Worn.Views[0].Outline {
				for i, a := range loop {
					for j := i + 2; j < len(loop) && (i > 0 || j < len(loop)-1); j++ {
						u, ok := crossing(a, loop[i+1], loop[j], loop[(j+1)%len(loop)])
						at := lerp(a, loop[(i+1)%len(loop)], u)
						assert.False(t, ok && !near(at, loop[j]) && !near(at, loop[(j+1)%len(loop)]), "%s %s crosses itself at %v", p.Title, g.Size, at)
					}
				}
			}
			for _, s := range assembled(g).placed {
				for i := range s.drawn {
					if s.drawn[i].taken && s.drawn[i].keys == nil {
						tucked[p.Title]++
					}
				}
			}
		}
	}
	assert.Equal(t, map[string]int{"Windlass Raglan": 18, "Raglan cardigan from the neck": 2, "Yoke cardigan from the neck": 2, "Rook Yoke": 14, "Crow Yoke": 14, "Heather Yoke Cardigan": 10, "Holm Raglan": 8, "Skerry Raglan": 6, "Sound Yoke": 6}, tucked) // both sleeves in all sizes
}

// Both legs have 27 of the 54 stitches that show of the body, at 24 to 10 cm: 112.5 mm each, and meet in the middle; a body
// of 50 rows, and 8 of rib at 3.4 to 1 cm; a leg of 10 rows of rib and 44 at 3.2 to 1 cm.
func TestLegsThatAreWorkedFirstHangFromTheirHalvesOfTheBody(t *testing.T) {
	g := schematic.Work(pattern(t, "dungarees.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	var legs [][2]float64
	for _, p := range assembled(g).placed {
		if lo, hi := box(p.drawn); p.made.Name == "Leg" {
			legs = append(legs, [2]float64{lo.X, hi.X})
			assert.InDelta(t, 0, p.where.sin, 1e-9)
		}
	}
	require.Len(t, legs, 2)
	if legs[0][0] > legs[1][0] {
		legs[0], legs[1] = legs[1], legs[0]
	}
	assert.InDeltaSlice(t, []float64{-112.5, 0}, legs[0][:], 0.01)
	assert.InDeltaSlice(t, []float64{0, 112.5}, legs[1][:], 0.01)
	assert.InDelta(t, 10/3.4*10+44/3.2*10, measured(t, g, "inside leg").Length.Float(), 0.01)
	assert.InDelta(t, 50/3.2*10+8/3.4*10, measured(t, g, "body length").Length.Float(), 0.01)
	assert.InDelta(t, 108/2.4*10, measured(t, g, "hip").Length.Float(), 0.01)
	assert.True(t, measured(t, g, "hip").Around)
}

// 200 stitches at 20 to 10 cm are 1 m around and lie 50 cm wide; 12 decreases at both edges leave 176, 88 cm; 132 rows and 12 of
// the waistband at 28 to 10 cm.
func TestAFlatPieceWithASeamLiesFlatAsARound(t *testing.T) {
	g := schematic.Work(pattern(t, "skirt-seam.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 500, hi.X-lo.X, 0.01)
	for name, mm := range map[string]float64{"hem": 1000, "waist": 880} {
		assert.InDelta(t, mm, measured(t, g, name).Length.Float(), 0.01, name)
		assert.True(t, measured(t, g, name).Around, name)
	}
	assert.InDelta(t, (132+12)/2.8*10, measured(t, g, "length").Length.Float(), 0.01)

	p := pattern(t, "skirt-seam.yaml")
	p.Joins = nil
	g = schematic.Work(p, 0)
	Dress(g)
	lo, hi = bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 1000, hi.X-lo.X, 0.01, "without its seam it is open")
}

// The peplum takes 80 stitches of the front's waist and as many of the back's, at 20 to 4 in: 32 in around, and 48 at its hem after
// 80 increases (240 stitches), 2, 1 and 36 rows at 28 to 4 in long.
func TestARoundThatIsPickedUpFromFrontAndBackHangsFromThem(t *testing.T) {
	g := schematic.Work(pattern(t, "peplum.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	for name, in := range map[string]float64{"waist": 32, "hem": 48, "bust": 35.2} {
		assert.InDelta(t, in*25.4, measured(t, g, name).Length.Float(), 0.01, name)
		assert.True(t, measured(t, g, name).Around, name)
	}
	assert.InDelta(t, 39.0/7*25.4, measured(t, g, "peplum length").Length.Float(), 0.01)
}

// The strap is sewn to the point of a cup that is itself sewn on in places.
func TestWhatIsSewnToWhatIsSewnOnInPlacesIsThere(t *testing.T) {
	g := schematic.Work(pattern(t, "bralette.yaml"), 0)
	straps := 0
	for _, p := range assembled(g).placed {
		if p.made.Name == "Strap" {
			straps++
		}
	}
	assert.Equal(t, 2, straps)
}

// A panel whose corner lies on the free side of its host comes out there.
func TestAPanelComesOutWithACorner(t *testing.T) {
	own := []side{{a: pt{X: 0, Y: 10}}, {a: pt{X: -5, Y: 5}}, {a: pt{X: 0, Y: 3}}, {a: pt{X: 20, Y: 3}}}
	on := []side{{a: pt{X: 0, Y: 10}}, {a: pt{X: -20, Y: 10}}, {a: pt{X: -20, Y: 0}}, {a: pt{X: 0, Y: 0}}}
	i, j, x := comesOut(own, on)
	assert.Equal(t, []int{1, 3}, []int{i, j})
	assert.Equal(t, pt{X: 0, Y: 3}, x)
}

// An underarm on hold that nothing takes is left, as one that is bound off is: the body hides the same corner of the sleeve, and the neck's ribs
// are in no length: 50 + 20 rounds of 4 mm, of which 5 are ribs.
func TestAnUnderarmOnHoldLiesAsOneThatIsBoundOff(t *testing.T) {
	var outlines [][][]pt
	for _, under := range []string{"bind off: 10", "hold: 10, name: underarm"} {
		g := schematic.Work(written(t, `version: 1
pattern: Raglan
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 25 rows over 10 cm in stocking stitch}
pieces:
  - piece: Body
    worked: in the round, from the hem
    sections:
      - {cast on: 180, edge: hem}
      - even: 50 rows
      - divide: [{hold: 80, name: Back}, {`+under+`}, {hold: 80, name: Front}, {`+under+`}]
  - piece: Sleeve
    make: 2
    worked: in the round, from the hem
    sections:
      - {cast on: 60, edge: cuff}
      - even: 50 rows
      - divide: [{hold: 50, name: top}, {`+under+`}]
  - piece: Yoke
    worked: in the round, from the hem
    sections:
      - start from:
          - {piece: Body, part: Back, panel: Back}
          - {piece: Sleeve, part: top, panel: Left sleeve}
          - {piece: Body, part: Front, panel: Front}
          - {piece: Sleeve, part: top, panel: Right sleeve}
      - {decrease: 1, at: lines, times: 15, edge: raglan}
      - {even: 5 rows, rib: yes}
      - {bind off: all, edge: neck}
`), 0)
		Dress(g)
		require.NotNil(t, g.Worn)
		assert.InDelta(t, (50+15)*4, measured(t, g, "length").Length.Float(), 0.01)
		assert.InDelta(t, 15*4, measured(t, g, "raglan depth").Length.Float(), 0.01)
		outlines = append(outlines, g.Worn.Views[0].Outline)
	}
	assert.Equal(t, outlines[0], outlines[1])
}
