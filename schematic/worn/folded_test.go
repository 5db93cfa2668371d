package worn

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/given"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func dressed(t *testing.T, file string) *schematic.Garment {
	t.Helper()
	g := schematic.Work(pattern(t, file), 0)
	Dress(g)
	require.NotNil(t, g.Worn, g.Findings)
	return g
}

func hasMeasures(t *testing.T, file string, want map[string]float64) *schematic.Garment {
	t.Helper()
	g := dressed(t, file)
	for name, mm := range want {
		assert.InDelta(t, mm, measured(t, g, name).Length.Float(), 0.002, "%s: %s", file, name)
	}
	return g
}

// Strips of 400 mm: 80 rows are sewn, of 5 mm, and 70 are left for the neck. Each is folded in the middle of these, 400 + 175 = 575 mm from its
// end, and lies at 45 degrees: the point in front is the corner of a square of 400 mm, whose diagonal leads to the neck.
func TestAPonchoOfTwoStripsHasItsPointInFront(t *testing.T) {
	g := hasMeasures(t, "poncho-strips.yaml", map[string]float64{
		"centre front depth": 400 * math.Sqrt2, "depth": (400 + 575) / math.Sqrt2, "width at the shoulder folds": 2 * 575 / math.Sqrt2, "width of a strip": 400,
	})
	sum := 0.0
	for _, l := range g.Worn.Views[0].Outline {
		sum += area(l)
	}
	assert.InDelta(t, 400.0*(575+175), sum, 1, "a half of both strips")
	p := pattern(t, "poncho-strips.yaml")
	p.Joins = p.Joins[:1]
	g = schematic.Work(p, 0)
	Dress(g)
	assert.InDelta(t, 400.0*1500, area(g.Worn.Views[0].Outline[0]), 1, "one seam alone folds nothing")
}

// 120 stitches at 15 to 10 cm, 20 rows sewn and 45 open at 2 to 1 cm, and cuffs of 26 rounds at 22 to 10 cm.
func TestACocoonIsFoldedAcrossAndSewnAtItsSides(t *testing.T) {
	hasMeasures(t, "cocoon.yaml", map[string]float64{"width": 800, "side seam": 100, "armhole depth": 225, "length": 325, "cuff to cuff": 800 + 2*2600.0/22})
}

// An armhole of 20 rows of 10 mm takes 100 stitches at 18 to 10 cm: of the half that shows, 5000/18 mm, what is more than 200 mm bulges alike above the shoulder
// and below the underarm.
func TestAGatheredSleeveSpreadsAlikeToBothSides(t *testing.T) {
	g := dressed(t, "puff.yaml")
	upper := measured(t, g, "upper arm")
	top, arm := measured(t, g, "shoulder").A.Y, measured(t, g, "armhole depth")
	bulge := (5000.0/18 - 200) / 2
	assert.InDelta(t, top+bulge, max(upper.A.Y, upper.B.Y), 0.01)
	assert.InDelta(t, min(arm.A.Y, arm.B.Y)-bulge, min(upper.A.Y, upper.B.Y), 0.01)
}

// A collar of 24 rows at 30 to 4 in is deeper than its neck has room for: it lies on the fronts, and none of it in the neck.
func TestACollarThatIsTooDeepForItsNeckIsTurnedOver(t *testing.T) {
	g := hasMeasures(t, "polo.yaml", map[string]float64{"collar depth": 24 * 101.6 / 30, "neck width": 36 * 101.6 / 20})
	var over []*panel
	for _, p := range assembled(g).placed {
		if p.strip && p.over != nil {
			over = append(over, p)
		}
	}
	require.Len(t, over, 2)
	assert.Zero(t, common(points(over[0].drawn), points(over[1].drawn)))
}

// 60 stitches at the neck, at 14 to 10 cm, around, and a hood of as many, folded; the fronts meet in the middle.
func TestACapeThatOpensInFrontIsClosed(t *testing.T) {
	g := hasMeasures(t, "cape-hooded.yaml", map[string]float64{"neck": 6000.0 / 14, "hood width": 3000.0 / 14, "hem": 10500.0 / 14})
	assert.Contains(t, g.Worn.Views[0].Lines, schematic.Line{Kind: schematic.LineEdge, B: pt{Y: 312.5}})
}

// 54 stitches at 22 to 10 cm around, twice; a bib of 26 and 30 rows.
func TestABibStandsOnTrousers(t *testing.T) {
	hasMeasures(t, "bib-trousers.yaml", map[string]float64{"waist": 2 * 54 * 100.0 / 22, "bib width": 2600.0 / 22, "bib height": 100, "leg": 2 * 2500.0 / 22, "inside leg": 120})
}

func TestARollNeckStandsOnADickey(t *testing.T) {
	hasMeasures(t, "dickey.yaml", map[string]float64{"collar height": 8 * 25.4})
}

func TestSlitsAreMeasured(t *testing.T) {
	hasMeasures(t, "tunic-slits.yaml", map[string]float64{"slit": 4 * 25.4, "back slit": 6 * 25.4})
}

// Two fronts that lap, with sleeves worked on: 58 + 2 x 22 stitches at 24 to 10 cm, 67 rows and 43 at 48 to 10 cm.
func TestSleevesOfOneWithTwoFrontsAreMeasured(t *testing.T) {
	hasMeasures(t, "surplice.yaml", map[string]float64{"cuff to cuff": 10200.0 / 24, "cuff": 8600.0 / 48, "body to underarm": 6700.0 / 48})
}

// 123 stitches at 18 and 248 rows at 36 to 4 in, of which the last 8 are even: the longest edge, of 120 stitches and 240 rows, is level.
func TestAShawlOfOnePanelHasItsLongestEdgeAbove(t *testing.T) {
	g := hasMeasures(t, "shawl-sidelong.yaml", map[string]float64{"bound-off edge": 123 * 101.6 / 18, "straight edge": 248 * 101.6 / 36})
	long := math.Hypot(120*101.6/18, 240*101.6/36)
	_, hi := bounds(g.Worn.Views[0].Outline)
	level := 0.0
	for _, q := range g.Worn.Views[0].Outline[0] {
		for _, z := range g.Worn.Views[0].Outline[0] {
			if absf(q.Y-hi.Y) < 0.01 && absf(z.Y-hi.Y) < 0.01 {
				level = max(level, q.X-z.X)
			}
		}
	}
	assert.InDelta(t, long, level, 0.01)
}

// Half of a saddle of 12 stitches at 18 to 10 cm is a part of the length, give or take a row of 4.2 mm by which bind-offs stagger.
func TestAVestIsAsLongAsToTheMiddleOfItsSaddle(t *testing.T) {
	g := dressed(t, "saddle-vest.yaml")
	_, hi := bounds(g.Worn.Views[0].Outline)
	m := measured(t, g, "length")
	assert.InDelta(t, hi.Y, max(m.A.Y, m.B.Y), 0.01)
	assert.InDelta(t, measured(t, g, "body to underarm").Length.Float()+measured(t, g, "armhole depth").Length.Float()+6*100.0/18, m.Length.Float(), 5)
}

// A front of 90 stitches and a back of 96 at 24 to 4 in have no girth that a line of theirs shows, and a crotch goes around nothing. A leg's opening goes along
// both: 36 stitches and rows of decreases at 28 to 4 in and 8 rows, and 39 in 78 rows.
func TestAFrontThatIsNarrowerThanItsBackHasNoGirth(t *testing.T) {
	g := dressed(t, "swim-bottoms.yaml")
	for _, m := range g.Worn.Measures {
		assert.Equal(t, m.View == schematic.NoView, m.Around, m.Name)
	}
	assert.InDelta(t, (90+96)*101.6/24, measured(t, g, "waist").Length.Float(), 0.002)
	leg := math.Hypot(36*101.6/24, 36*101.6/28) + 8*101.6/28 + math.Hypot(39*101.6/24, 78*101.6/28)
	assert.InDelta(t, leg, measured(t, g, "leg opening").Length.Float(), 0.002)
	assert.InDelta(t, 18*101.6/24, measured(t, g, "crotch").Length.Float(), 0.002)
}

// A round of 180 stitches at 20 to 4 in goes on in a front and a back of 90, on its two halves, and a skirt of 14 in is gathered to its foot.
func TestARoundThatGoesOnInAFrontAndABackIsTheirBody(t *testing.T) {
	hasMeasures(t, "tank-dress.yaml", map[string]float64{"bust": 180 * 101.6 / 20, "skirt length": 14 * 25.4})
}

// 80 stitches at 2 to 1 cm go around the fold as they go around the edge that is turned in.
func TestAHatIsMeasuredAroundTheFoldOfItsBrim(t *testing.T) {
	g := hasMeasures(t, "hat-brim.yaml", map[string]float64{"brim": 400, "depth of rib": 40})
	m := measured(t, g, "brim")
	_, low := bounds([][]pt{{m.A, m.B}})
	lo, _ := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, lo.Y, low.Y, 0.001)
}

// The back is 90 stitches at 2 to 1 cm wide at the waist, and so are two fronts of 45; what is left between two steps of its shoulders is no
// cross back, nor is a waist.
func TestTheWaistOfACardiganIsThatOfItsBack(t *testing.T) {
	g := hasMeasures(t, "cardigan-waist.yaml", map[string]float64{"waist": 900, "bust": 1000})
	for _, m := range g.Worn.Measures {
		assert.NotEqual(t, "cross back", m.Name)
	}
}

// Of 28 + 4 + 68 + 4 + 28 stitches at 2 to 1 cm the back and half of those added, 72, lie behind two fronts of 30; with a band of 30 mm that laps
// the body is 660 + 30 mm around, which is not twice 360.
func TestACardiganFromTheNeckIsFoldedAtItsSides(t *testing.T) {
	g := hasMeasures(t, "cardigan-neck.yaml", map[string]float64{"width at underarm": 360, "bust": 690, "neck": 300, "raglan depth": 200, "length": 500, "upper arm": 260})
	assert.Empty(t, g.Findings)
	assert.Equal(t, "laid flat, front up", g.Worn.Lies)
}

// Of 280 stitches at 2 to 1 cm the body takes 42 + 8 + 84 + 8 + 42 = 184, 920 mm; a sleeve 56 + 8 = 64, 320 mm. The yoke is 40 rows at 2 to 1 cm
// high, and the length is that and 60 rows more. Its front edges are upright, of rows alone.
func TestTheYokeOfACardiganIsSharedOut(t *testing.T) {
	g := hasMeasures(t, "yoke-cardigan.yaml", map[string]float64{"bust": 920, "neck": 400, "yoke depth": 200, "length": 500, "body to underarm": 300, "upper arm": 320})
	assert.Empty(t, g.Findings)
}

// The sleeve at the buttons lies as the other does. Of 64 stitches at 2 to 1 cm the chest is 640 around, and not as wide as what is left above the
// underarm; its 40 rows are 200 mm.
func TestARaglanThatButtonsIsWornClosed(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Raglan that buttons
terms: UK
units: cm
sizes: One
gauges:
  fabric: 20 sts and 20 rows over 10 cm in stocking stitch
pieces:
  - piece: Front
    sections:
      - {cast on: 64, edge: hem}
      - even: 40 rows
      - {bind off: 4, at: both edges, edge: underarm}
      - {decrease: 1, at: both edges, every: 2 rows, times: 16, edge: raglan}
      - {bind off: all, edge: neck}
  - piece: Back
    sections:
      - {cast on: 64, edge: hem}
      - even: 40 rows
      - {bind off: 4, at: both edges, edge: underarm}
      - {decrease: 1, at: both edges, every: 2 rows, times: 16, edge: raglan}
      - {bind off: all, edge: neck}
  - piece: Left sleeve
    kind: sleeve
    left edge: sleeve seam
    right edge: sleeve seam
    sections:
      - {cast on: 36, edge: cuff}
      - {increase: 1, at: both edges, every: 8 rows, times: 5}
      - {bind off: 4, at: both edges, edge: underarm}
      - {decrease: 1, at: both edges, every: 2 rows, times: 16, edge: raglan}
      - {bind off: all, edge: neck}
  - piece: Right sleeve
    mirror of: Left sleeve
joins:
  - {sew: Front side, to: Back side}
  - {sew: Front right raglan, to: Right sleeve left raglan}
  - {sew: Back right raglan, to: Right sleeve right raglan}
  - {sew: Back left raglan, to: Left sleeve left raglan}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, noted(g))
	for name, want := range map[string]float64{"bust": 640, "body to underarm": 200, "upper arm": 230, "cuff": 180} {
		assert.InDelta(t, want, measured(t, g, name).Length.Float(), 0.01, name)
	}
}

// The hand above the thumb has the 40 stitches of the hand, and no width of its own.
func TestAHandIsMeasuredOnce(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: t
terms: UK
units: cm
sizes: One
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - piece: Mitten
    kind: mitten
    worked: in the round, from the hem
    sections:
      - {cast on: 32, edge: cuff}
      - even: 10 rows
      - {increase: 8, at: across}
      - even: 9 rows
      - divide:
          - {hold: 8, name: thumb}
          - {part: Palm, stitches: 32, sections: [{even: 1 row}]}
      - {join parts: [Palm, {add: 8}], round: yes, as: Hand}
      - even: 20 rows
      - {decrease: 4, at: across, every: 1 row, times: 8}
      - gather
  - piece: Thumb
    worked: in the round, from the hem
    sections:
      - start from: [{piece: Mitten, part: thumb}, {add: 8}]
      - even: 10 rows
      - gather
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	n := 0
	for _, m := range g.Worn.Measures {
		if m.Length.Float() == 200 && m.Axis == schematic.Horizontal {
			n++
		}
	}
	assert.Equal(t, 1, n)
}

// A hood of 60 stitches at 2 to 1 cm goes round a neck of as many, of which 150 mm show.
func TestWhatIsSewnRoundATubeIsFolded(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: t
terms: UK
units: cm
sizes: One
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - piece: Poncho
    worked: in the round, from the neck
    sections: [{cast on: 60, edge: neck}, {increase: 4, at: across, every: 2 rows, times: 20}, {bind off: all, edge: hem}]
  - piece: Hood
    sections: [{cast on: 60, edge: neck edge}, {even: 50 rows}, {bind off: all, edge: top}]
joins:
  - {sew: Hood neck edge, to: Poncho neck}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, noted(g))
	assert.InDelta(t, 150, measured(t, g, "hood width").Length.Float(), 0.01)
}

func TestACushionHasNoBust(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: t
terms: UK
units: cm
sizes: One
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - piece: Front
    sections: [{cast on: 80, edge: lower edge}, {even: 60 rows}, {bind off: all, edge: upper edge}]
  - piece: Back
    sections: [{cast on: 80, edge: lower edge}, {even: 60 rows}, {bind off: all, edge: upper edge}]
joins:
  - {sew: Front lower edge, to: Back lower edge}
  - {sew: Front side, to: Back side}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.InDelta(t, 400, measured(t, g, "width").Length.Float(), 0.01)
	for _, m := range g.Worn.Measures {
		assert.NotEqual(t, "bust", m.Name)
	}
}

// 20 stitches at 2 to 1 cm and 80 rows, sewn end to end: a ring of 400 mm has no cuffs.
func TestAStripSewnEndToEndIsARing(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: t
terms: UK
units: cm
sizes: One
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - piece: Headband
    sections: [{cast on: 20, edge: first end}, {even: 80 rows}, {bind off: all, edge: last end}]
joins:
  - {sew: Headband first end, to: Headband last end}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	require.Len(t, g.Worn.Measures, 2)
	assert.InDelta(t, 100, measured(t, g, "headband width").Length.Float(), 0.01)
	assert.InDelta(t, 400, measured(t, g, "headband").Length.Float(), 0.01)
}

// The band along the neck of the cardigan that is shaped to its waist slants up to its shoulder, 20 stitches of 5 mm in 40 rows of 5: across it, its end
// would stand up above the shoulder.
func TestABandEndsLevelWithTheShoulder(t *testing.T) {
	p := pattern(t, "cardigan-waist.yaml")
	band := written(t, `version: 1
pattern: t
terms: UK
units: cm
sizes: One
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - piece: Band
    kind: band
    onto: ["Right front front edge, 1 in every 1 rows", "Right front neck, 1 in every 1 rows"]
    sections: [{even: 8 rows}, {bind off: all}]
`)
	p.Pieces = append(p.Pieces, band.Pieces...)
	g := schematic.Work(p, 0)
	Dress(g)
	for _, q := range assembled(g).placed {
		if q.strip {
			assert.InDelta(t, topOf(q.hosts[0].drawn), topOf(q.drawn), 0.01)
			return
		}
	}
	assert.Fail(t, "no band")
}

// A border of 8 rows at 2 to 1 cm, 40 mm, lies round a blanket of 80 stitches and 60 rows: 400 + 80 by 300 + 80 mm, and what lies between is its own.
func TestABorderLiesAllRoundABlanket(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: t
terms: UK
units: cm
sizes: One
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - piece: Blanket
    sections: [{cast on: 80, edge: lower edge}, {even: 60 rows}, {bind off: all, edge: upper edge}]
  - piece: Border
    kind: band
    onto: ["Blanket lower edge, 1 in every 1 sts", "Blanket left side, 1 in every 1 rows", "Blanket upper edge, 1 in every 1 sts", "Blanket right side, 1 in every 1 rows"]
    sections: [{even: 8 rows}, {bind off: all}]
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, noted(g))
	require.Len(t, g.Worn.Measures, 2)
	assert.InDelta(t, 480, measured(t, g, "width").Length.Float(), 0.01)
	assert.InDelta(t, 380, measured(t, g, "length").Length.Float(), 0.01)
	require.Len(t, g.Worn.Views[0].Outline, 1)
	assert.InDelta(t, 480.0*380, area(g.Worn.Views[0].Outline[0]), 0.01)
}

// Shoulders on hold of which no piece goes on wait for their neckband or their seam.
func TestShouldersOnHoldAreNoRunsOfAnotherPiece(t *testing.T) {
	p := given.Text(t, `version: 1
pattern: P
terms: UK
units: cm
sizes: S
gauges:
  fabric: 20 sts and 30 rows over 10 cm
pieces:
  - piece: Back
    sections:
      - cast on: 60
      - even: 60 rows
      - divide:
          - {hold: 20, name: right shoulder, edge: shoulder}
          - {hold: 20, name: back neck, edge: neck}
          - {hold: 20, name: left shoulder, edge: shoulder}
`)
	assert.NotPanics(t, func() { Dress(schematic.Work(p, 0)) })
}

// What is turned in is in no measurement: of 24 rounds of 100/32 mm in rib 12 lie inside, 37.5 mm, and the shorts reach from the fold to the crotch 12 rounds
// of rib and 45 of 100/30 mm, 187.5 mm.
func TestAFoldedWaistbandOfShortsHasADepth(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Shorts
terms: UK
units: cm
sizes: one
gauges:
  fabric: 22 sts and 30 rounds over 10 cm in stocking stitch
  rib: 22 sts and 32 rounds over 10 cm in knit 1, purl 1 rib, relaxed
pieces:
  - piece: Shorts
    kind: body
    worked: in the round, from the waist
    sections:
      - {cast on: 96, gauge: rib, edge: waist}
      - {even: 12 rows, rib: yes}
      - fold
      - {even: 12 rows}
      - {increase: 12, gauge: fabric, at: across, every: 1 row}
      - {even: 44 rows}
      - divide:
          - {hold: 50, name: Left leg}
          - {leave: 4, edge: crotch}
          - {hold: 50, name: Right leg}
          - {leave: 4, edge: crotch}
  - piece: Leg
    make: 2
    worked: in the round, from the waist
    sections:
      - start from: [{piece: Shorts, part: Left leg}, {add: 4}]
      - {even: 14 rows}
      - {bind off: all, edge: leg cuff}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.InDelta(t, 37.5, measured(t, g, "waistband depth").Length.Float(), 0.01)
	assert.InDelta(t, 187.5, measured(t, g, "body length").Length.Float(), 0.01)
}

// A sleeve and a back that are sewn along their raglans are sewn at their underarms too, whether a join says so or not.
func TestUnderarmsThatNoJoinNamesMeet(t *testing.T) {
	const name = "raglan-flat.yaml"
	whole := schematic.Work(pattern(t, name), 0)
	Dress(whole)
	p := pattern(t, name)
	n := len(p.Joins)
	p.Joins = slices.DeleteFunc(p.Joins, func(j schematic.Join) bool { return strings.HasSuffix(j.Sew[0], "underarm") })
	require.Less(t, len(p.Joins), n)
	g := schematic.Work(p, 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Equal(t, whole.Worn.Views[0].Outline, g.Worn.Views[0].Outline)
}

// changed is a garment of which some words are others, in its first size.
func changed(t *testing.T, file string, words ...string) *schematic.Garment {
	t.Helper()
	text, err := os.ReadFile(garments + file)
	require.NoError(t, err)
	g := schematic.Work(written(t, strings.NewReplacer(words...).Replace(string(text))), 0)
	Dress(g)
	require.NotNil(t, g.Worn, g.Findings)
	return g
}

// 60 rows at 30 to 10 cm, on a neck that is less than twice as wide: bent along it the band would cross itself.
func TestANeckbandThatIsTooDeepForItsNeckStandsUp(t *testing.T) {
	g := changed(t, "slipover.yaml", "onto:\n      - Back neck, 1 in every 1 sts\n      - Front neck, 3 in every 4 rows\n    sections:\n      - {even: 8 rows", "onto:\n      - Back neck, 1 in every 1 sts\n      - Front neck, 3 in every 4 rows\n    sections:\n      - {even: 60 rows")
	assert.InDelta(t, 200, measured(t, g, "neckband depth").Length.Float(), 0.002)
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, measured(t, g, "length").Length.Float()+200, hi.Y-lo.Y, 0.01)
	x := across(g.Worn.Views[0].Outline[0], hi.Y-1)
	require.Len(t, x, 2)
	assert.InDelta(t, measured(t, g, "neck width").Length.Float(), x[1]-x[0], 0.01)
}

// Hems of 100 stitches and twice 50 at 22 to 10 cm, and a band of 10 rows at 30 to 10 cm on another.
func TestADrawnInHemWithBandsThatLapGoesAround(t *testing.T) {
	rib := ", gauge: rib, edge: hem}\n      - {even: 20 rows, rib: yes}"
	g := changed(t, "gilet.yaml", ", edge: hem}\n      - even: 100 rows", rib+"\n      - {even: 80 rows, gauge: fabric}", ", edge: hem}\n      - even: 99 rows", rib+"\n      - {even: 79 rows, gauge: fabric}")
	m := measured(t, g, "hem")
	assert.True(t, m.Around)
	assert.InDelta(t, 20000.0/22+100.0/3, m.Length.Float(), 0.002)
}
