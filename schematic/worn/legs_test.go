package worn

import (
	"math"
	"slices"
	"strings"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/given"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const trousersHead = `version: 1
pattern: Trousers
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Trousers
    worked: in the round, from the waist
    sections:
      - {cast on: 88, edge: waist}
      - {even: 50 rows}
`

// A stitch and a row are 5 mm. Of 88 stitches 44 lie flat, 220 mm, and 50 rounds are 250 mm high. Each leg, folded along its middle, is half as wide as it is
// worked, its fold below the side of the round:
//   - two halves of 44, less 8 at both sides: 22 and then 14 stitches show, 110 and 70 mm; 8 x 4 + 8 rows are 200 mm;
//   - with 4 stitches bound off between them, in front and behind, 40 each: 20 show, 100 mm, beside a crotch of 20 mm;
//   - a row, and the round that it then becomes, with 4 stitches more: 24 of 48 show, of which 2 lie before or behind the other leg, and 20 at its end,
//     10 mm less at each side; 5 + 40 rows are 225 mm;
//   - two halves of 44 below 60 rows more, 300 mm, of which the first 50 lie behind them;
//   - a row on hold, from which a leg of 40 rows is worked.
func TestLegsThatAreHalvesOfARoundHangSideBySide(t *testing.T) {
	for _, c := range []struct {
		name, text string
		inside     float64 // leg
		ankle      float64 // around
		x          []float64
	}{
		{"worked flat", `      - divide:
          - part: Left leg
            stitches: 44
            sections:
              - {decrease: 1, at: both edges, every: 4 rows, times: 8}
              - {even: 8 rows}
              - {bind off: all, edge: ankle}
          - {part: Right leg, stitches: 44, mirror of: Left leg}
`, 200, 280 / 2, []float64{-110, -40, 40, 110}},
		{"with a crotch", `      - divide:
          - part: Right leg
            stitches: 40
            sections:
              - {even: 8 rows}
              - {bind off: all, edge: ankle}
          - {bind off: 4, edge: crotch}
          - {part: Left leg, stitches: 40, mirror of: Right leg}
          - {bind off: 4, edge: crotch}
`, 40, 400 / 2, []float64{-110, -10, 10, 110}},
		{"joined into rounds", `      - divide:
          - {part: Left leg, stitches: 44, sections: [{even: 5 rows}]}
          - {part: Right leg, stitches: 44, sections: [{even: 5 rows}]}
      - {join parts: [Left leg, {add: 4}], round: yes}
      - {decrease: 2, at: both edges, every: 10 rows, times: 2}
      - {even: 20 rows}
      - {bind off: all, edge: ankle}
      - {join parts: [Right leg, {add: 4}], round: yes}
      - {decrease: 2, at: both edges, every: 10 rows, times: 2}
      - {even: 20 rows}
      - {bind off: all, edge: ankle}
`, 225, 400 / 2, []float64{-100, 0, 0, 100}},
		{"rounds from the division on", `      - divide: [{part: Left leg, stitches: 44}, {part: Right leg, stitches: 44}]
      - {join parts: [Left leg], round: yes}
      - {even: 40 rows}
      - {bind off: all, edge: ankle}
      - {join parts: [Right leg], round: yes}
      - {even: 40 rows}
      - {bind off: all, edge: ankle}
`, 200, 440 / 2, []float64{-110, 0, 0, 110}},
		{"below a waistband that is turned in", `      - fold
      - {even: 60 rows}
      - divide:
          - {part: Left leg, stitches: 44, sections: [{even: 40 rows}, {bind off: all, edge: ankle}]}
          - {part: Right leg, stitches: 44, mirror of: Left leg}
`, 200, 440 / 2, []float64{-110, 0, 0, 110}},
		{"on hold", `      - divide:
          - {part: Left leg, stitches: 44, sections: [{even: 1 row}, {hold: all}]}
          - {part: Right leg, stitches: 44, mirror of: Left leg}
  - piece: Leg
    make: 2
    worked: in the round, from the waist
    sections:
      - start from: [{piece: Trousers, part: Left leg}]
      - {even: 40 rows}
      - {bind off: all, edge: ankle}
`, 205, 440 / 2, []float64{-110, 0, 0, 110}},
	} {
		g := schematic.Work(given.Text(t, trousersHead+c.text), 0)
		Dress(g)
		require.NotNil(t, g.Worn, c.name)
		assert.Empty(t, g.Findings, c.name)
		assert.InDelta(t, c.inside, measured(t, g, "inside leg").Length.Float(), 0.01, c.name)
		body := 250.0
		if strings.Contains(c.text, "fold") {
			body = 300
		}
		assert.InDelta(t, body+c.inside, measured(t, g, "length").Length.Float(), 0.01, c.name)
		assert.InDelta(t, 440, measured(t, g, "waist").Length.Float(), 0.01, c.name)
		at := slices.IndexFunc(g.Worn.Measures, func(m schematic.Measure) bool { return m.Axis == schematic.Horizontal && m.Name != "waist" && m.Around })
		require.GreaterOrEqual(t, at, 0, c.name)
		assert.InDelta(t, c.ankle, g.Worn.Measures[at].Length.Float(), 0.01, c.name)
		var x []float64
		for _, p := range assembled(g).placed {
			if lo, _ := box(p.drawn); lo.Y < -c.inside+1 {
				l, r := p.level(lo.Y, 0.01)
				x = append(x, l.X, r.X)
			}
		}
		slices.Sort(x)
		slices.Sort(c.x)
		assert.InDeltaSlice(t, c.x, x, 0.01, c.name)
	}
}

// A side of 75 + 3 rows has short rows below its last three, which part it: the back lies where its 75 rows lie on those of the front, and stands out above
// it by the 4 short rows alone, 18.2 mm at 22 to 10 cm. Sewn to its front it is 2 x 100 stitches around at the hem, at 20 to 10 cm.
func TestABackWithShortRowsBelowItsWaistbandLiesBehindItsFront(t *testing.T) {
	piece := func(name, short string) string {
		return `
  - piece: ` + name + `
    kind: skirt
    sections:
      - {cast on: 100, edge: hem}
      - {even: 75 rows}` + short + `
      - {even: 3 rows, rib: yes}
      - {bind off: all, edge: waist}`
	}
	g := schematic.Work(given.Text(t, `version: 1
pattern: Skirt
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 22 rows over 10 cm in dc}
pieces:`+piece("Front", "")+piece("Back", "\n      - {short rows: 4 rows, over: 40, at: middle, step: 8}")+`
joins:
  - {sew: Front side, to: Back side}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	for _, p := range assembled(g).placed {
		lo, hi := box(p.drawn)
		assert.InDelta(t, 0, lo.Y, 0.01, p.name)
		if p.face == back {
			assert.InDelta(t, 82*1000/220.0, hi.Y, 0.01)
		}
	}
	hem := measured(t, g, "hem")
	assert.True(t, hem.Around)
	assert.InDelta(t, 1000, hem.Length.Float(), 0.01)
}

// The upper edge of a crescent is cast on, 9 stitches, with both of its sides: 30 times 3 stitches over 2 rows, 0.6 and 0.2222 in, a row that grows by 60 stitches
// across, and 9 rows, 1/9 in each: 1.8 + 2 (30 x 0.63983 + 10/9). The 60 stitches lengthen no side.
func TestStitchesAddedAcrossARowLengthenNoSideOfACrescent(t *testing.T) {
	g := schematic.Work(given.Text(t, `version: 1
pattern: Crescent
terms: US
units: in
sizes: one
gauges: {fabric: 20 sts and 36 rows over 4 in in garter stitch}
pieces:
  - piece: Shawl
    kind: shawl
    worked: flat, from the centre
    left edge: upper edge
    right edge: upper edge
    sections:
      - {cast on: 9}
      - {increase: 3, at: both edges, every: 2 rows, times: 30}
      - {increase: 60, at: across}
      - {even: 9 rows}
      - {bind off: all, edge: lower edge}
`), 0)
	Dress(g)
	assert.InDelta(t, 25.4*(1.8+2*(30*math.Hypot(0.6, 2/9.0)+10/9.0)), measured(t, g, "wingspan").Length.Float(), 0.01)
}

// A kerchief from its point grows by a stitch at both edges every other row, 30 times: each of its sides is 30 x 6.25 mm out over 60 rows of 3.3333 mm.
func TestTheSidesOfAKerchiefFromItsPointAreMeasuredAlongThem(t *testing.T) {
	g := schematic.Work(given.Text(t, `version: 1
pattern: Kerchief
terms: UK
units: cm
sizes: one
gauges: {fabric: 16 sts and 30 rows over 10 cm in garter stitch}
pieces:
  - piece: Shawl
    left edge: lower edge
    right edge: lower edge
    sections:
      - {cast on: 3}
      - {increase: 1, at: both edges, every: 2 rows, times: 30}
      - {bind off: all, edge: upper edge}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.InDelta(t, math.Hypot(30*6.25, 200), measured(t, g, "lower edge").Length.Float(), 0.01)
	assert.InDelta(t, 63*6.25, measured(t, g, "wingspan").Length.Float(), 0.01)
}

// A strip from side to side whose ends are sewn to each other goes round: half of its 100 rows, 2.5 mm each, shows.
func TestTheEndsOfAStripThatAreSewnToEachOtherMakeARing(t *testing.T) {
	g := schematic.Work(given.Text(t, `version: 1
pattern: Cowl
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 40 rows over 10 cm in garter stitch}
pieces:
  - piece: Cowl
    worked: flat, from the left side
    sections:
      - {cast on: 30, edge: back seam, top edge: face edge, bottom edge: neck edge}
      - {even: 100 rows}
      - {bind off: all, edge: back seam}
joins:
  - {sew: Cowl back seam, to: Cowl back seam, how: at a fold}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 125, hi.X-lo.X, 0.01)
	assert.True(t, slices.ContainsFunc(g.Worn.Measures, func(m schematic.Measure) bool { return m.Around && absf(m.Length.Float()-250) < 0.01 }))
}

// A sleeve takes 34 stitches of a yoke and 16 at a wide underarm, of which half lie below the yoke: the way along both turns back, and the sleeve is laid on the yoke's.
func TestASleeveWithAWideUnderarmHangsFromItsYoke(t *testing.T) {
	g := schematic.Work(given.Text(t, `version: 1
pattern: Yoke
terms: UK
units: in
sizes: one
gauges: {fabric: 5 sts and 7 rnds over 1 in in stocking stitch}
pieces:
  - piece: Yoke
    worked: in the round, from the neck
    sections:
      - {cast on: 80, edge: neck}
      - {increase: 40, at: across, every: 16 rows, times: 3}
      - divide: [{hold: 66, name: Back}, {hold: 34, name: Right sleeve}, {hold: 66, name: Front}, {hold: 34, name: Left sleeve}]
  - piece: Body
    worked: in the round, from the neck
    sections:
      - start from: [{piece: Yoke, part: Back}, {add: 16}, {piece: Yoke, part: Front}, {add: 16}]
      - {even: 14 in}
      - {bind off: all, edge: hem}
  - piece: Sleeve
    make: 2
    worked: in the round, from the armhole
    sections:
      - start from: [{piece: Yoke, part: Right sleeve}, {add: 16}]
      - {even: 10 in}
      - {bind off: all, edge: cuff}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, noted(g))
	assert.InDelta(t, 50*5.08, measured(t, g, "upper arm").Length.Float(), 0.01)
}

// Two bands on one base, of which the right one leans onto the left one: what lies on it is not drawn through it.
func TestTheOutlineOfWhatLeansOntoItsNeighbourGoesRoundBoth(t *testing.T) {
	tangled := []pt{{}, {X: 30}, {X: 30, Y: 10}, {X: 10, Y: 10}, {X: 15}, {X: 15, Y: 12}, {Y: 12}}
	assert.Equal(t, []pt{{}, {X: 30}, {X: 30, Y: 10}, {X: 15, Y: 10}, {X: 15, Y: 12}, {Y: 12}}, straightened(untangled(tangled)))
	plain := []pt{{}, {X: 30}, {X: 30, Y: 10}, {X: 15, Y: 12}, {Y: 12}}
	assert.Equal(t, plain, untangled(plain))
}

// The rib of 26 stitches to 10 cm with which a body from the neck ends draws in where it is free to: its fronts' edges, and the band along them, go straight on. The
// 49 stitches of a front, 23 to 10 cm, are 213 mm wide.
func TestABandIsStraightBesideARibWorkedLast(t *testing.T) {
	g := schematic.Work(given.Text(t, `version: 1
pattern: Cardigan
terms: UK
units: cm
sizes: one
gauges:
  fabric: 23 sts and 31 rows over 10 cm in stocking stitch
  rib: 26 sts and 34 rows over 10 cm in 1x1 rib, relaxed
pieces:
  - piece: Yoke
    worked: flat, from the neck
    left edge: front edge
    right edge: front edge
    sections:
      - {cast on: 98, edge: neck}
      - panels: [{panel: Left front, stitches: 18}, {panel: Left sleeve, stitches: 12}, {panel: Back, stitches: 38}, {panel: Right sleeve, stitches: 12}, {panel: Right front, stitches: 18}]
      - {increase: 1, at: lines, edge: raglan, every: 2 rows, times: 31}
      - divide: [{hold: 49, name: Left front}, {hold: 74, name: Left sleeve}, {hold: 100, name: Back}, {hold: 74, name: Right sleeve}, {hold: 49, name: Right front}]
  - piece: Body
    worked: flat, from the neck
    left edge: front edge
    right edge: front edge
    sections:
      - start from: [{piece: Yoke, part: Left front}, {add: 10}, {piece: Yoke, part: Back}, {add: 10}, {piece: Yoke, part: Right front}]
      - {even: 90 rows}
      - {even: 20 rows, gauge: rib, rib: yes}
      - {bind off: all, edge: hem}
  - piece: Band
    kind: band
    gauge: rib
    onto: ["Body right front edge, 3 in every 4 rows", "Yoke right front edge, 3 in every 4 rows", "Yoke neck, 1 in every 1 sts", "Yoke left front edge, 3 in every 4 rows", "Body left front edge, 3 in every 4 rows"]
    sections: [{even: 10 rows, rib: yes}, {bind off: all}]
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	low := 0.0
	for _, p := range assembled(g).placed {
		lo, _ := box(p.drawn)
		low = min(low, lo.Y)
	}
	for _, p := range assembled(g).placed {
		if l, r := p.level(low, 0.01); p.strip && l.X < r.X {
			assert.InDelta(t, 1000*10/340.0, r.X-l.X, 0.01, "as wide as it is deep")
			x := across(points(p.drawn), low+100)
			assert.InDeltaSlice(t, []float64{l.X, r.X}, x, 0.01, "and straight above the rib, of 20 rows and 58.8 mm")
		}
	}
}

// Of four panels the front shows whole and of those beside it a half: 36 stitches of 108, 15 to 10 cm, are not half of the waist.
func TestPanelsThatGoOnAtBothSidesAreNoHalfOfARound(t *testing.T) {
	g := schematic.Work(given.Text(t, `version: 1
pattern: Skirt
terms: UK
units: cm
sizes: one
gauges: {fabric: 15 sts and 20 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Skirt
    kind: skirt
    worked: in the round, from the waist
    sections:
      - {cast on: 108, edge: waist}
      - {even: 8 rows, rib: yes}
      - panels: [{panel: Front, stitches: 36}, {panel: Left side, stitches: 18}, {panel: Back, stitches: 36}, {panel: Right side, stitches: 18}]
      - {increase: 1, at: lines, every: 8 rows, times: 12}
      - {bind off: all, edge: hem}
`), 0)
	Dress(g)
	assert.InDelta(t, 720, measured(t, g, "waist").Length.Float(), 0.01)
	assert.InDelta(t, 204*1000/150.0, measured(t, g, "hem").Length.Float(), 0.01)
}

// Above armholes in a round that grows from its centre nothing is drawn as worn: that is told, where it said nothing.
func TestOnePieceOfSeveralPartsThatIsNotDrawnAsWornIsTold(t *testing.T) {
	g := schematic.Work(given.Text(t, `version: 1
pattern: Shrug
terms: US
units: in
sizes: one
gauges: {fabric: 14 sts and 8 rows over 4 in in dc}
pieces:
  - piece: Shrug
    worked: in the round, from the centre
    sections:
      - {ring: 12}
      - {increase: 12, at: across, every: 1 row, times: 9}
      - divide:
          - {part: Upper, stitches: 36, sections: [{even: 1 row}]}
          - {leave: 24, edge: armhole}
          - {part: Lower, stitches: 36, sections: [{even: 1 row}]}
          - {leave: 24, edge: armhole}
      - {join parts: [Upper, {add: 24}, Lower, {add: 24}], round: yes}
      - {bind off: all, edge: outer edge}
`), 0)
	Dress(g)
	assert.Nil(t, g.Worn)
	require.Len(t, noted(g), 1)
	assert.Contains(t, noted(g)[0].Message, "how its parts lie")
}
