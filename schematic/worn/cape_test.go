package worn

import (
	"os"
	"slices"
	"strings"
	"testing"

	"flatwright/schematic"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 20 stitches and 20 rows to 10 cm: 5 mm each way, of the border too but for its 25 stitches.
const capeText = `version: 1
pattern: Cape
terms: UK
units: cm
sizes: one
gauges:
  fabric: 20 sts and 20 rows over 10 cm in stocking stitch
  border: 25 sts and 20 rows over 10 cm in rib, relaxed
pieces:
  - piece: Cape
    worked: flat, from the hem
    left edge: left front edge
    right edge: right front edge
    sections:
      - {cast on: 160, edge: hem, gauge: border}
      - {even: 6 rows, rib: yes}
      - panels:
          - {panel: Right front, stitches: 40}
          - {panel: Back, stitches: 80}
          - {panel: Left front, stitches: 40}
        gauge: fabric
      - {even: 40 rows}
      - {decrease: 1, at: lines, every: 2 rows, times: 20}
      - {hold: all}
  - piece: Hood
    worked: flat, from the neck
    left edge: face edge
    right edge: face edge
    sections:
      - start from:
          - {piece: Cape, part: Right front}
          - {piece: Cape, part: Back}
          - {piece: Cape, part: Left front}
      - {even: 60 rows}
      - {bind off: all, edge: top}
  - piece: Front band
    kind: band
    onto:
      - Cape right front edge, 3 in every 4 rows
      - Hood right face edge, 3 in every 4 rows
      - Hood left face edge, 3 in every 4 rows
      - Cape left front edge, 3 in every 4 rows
    sections:
      - {even: 8 rows}
      - {bind off: all}
joins:
  - {sew: Hood top, to: Hood top, how: at a fold}
`

// A right-side row from the hem begins at the right front, which is worn on the wearer's right, the left of the picture, with its
// front edge in the middle. The border, 160 of 4 mm, is shared out as the 160 stitches of 5 mm above it are: 160 mm of a front's 200 mm.
func TestACapeOfPanelsGoesRoundTheBodyWithAHoodOnItsNeck(t *testing.T) {
	g := schematic.Work(written(t, capeText), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, noted(g))
	a := assembled(g)
	named := func(name string) *panel {
		i := slices.IndexFunc(a.placed, func(p *panel) bool { return p.name == name && !p.strip })
		require.GreaterOrEqual(t, i, 0, name)
		return a.placed[i]
	}
	right, left, behind, hood := named("Right front"), named("Left front"), named("Back"), named("Hood")
	for p, at := range map[*panel][2]float64{right: {-200, 0}, left: {0, 200}, behind: {-200, 200}, hood: {-100, 100}} {
		lo, hi := box(p.drawn)
		assert.InDelta(t, at[0], lo.X, 0.01, p.name)
		assert.InDelta(t, at[1], hi.X, 0.01, p.name)
	}
	for _, s := range right.drawn {
		if strings.HasSuffix(s.name, "front edge") && s.a.Y > 31 {
			assert.InDelta(t, 0, s.a.X, 0.01)
		}
	}
	// 46 rows and 40 more, and the hood's 60 above them.
	lo, hi := box(hood.drawn)
	assert.InDelta(t, 5*86, lo.Y, 0.01)
	assert.InDelta(t, 5*(86+60), hi.Y, 0.01)
	// Each panel has its own area and its share of the border's.
	assert.InDelta(t, 200*200+150*200+160*30, area(right.points()), 0.5)
	assert.InDelta(t, 400*200+300*200+320*30, area(behind.points()), 0.5)
	require.Len(t, right.ribs, 1)
	assert.InDelta(t, 160*30, absf(area(right.ribs[0].Poly)), 0.5)

	assert.InDelta(t, 640, measured(t, g, "hem").Length.Float(), 0.01)
	assert.True(t, measured(t, g, "hem").Around)
	for _, m := range g.Worn.Measures {
		assert.NotEqual(t, "bust", m.Name, "nothing of a cape is as wide as a bust")
	}
	// The band, 8 rows and the row that picks it up or not, laps over the other half of the hood too.
	edges := slices.DeleteFunc(slices.Clone(hood.lines), func(l schematic.Line) bool { return l.Kind != schematic.LineEdge })
	require.Len(t, edges, 2)
	assert.InDelta(t, 40, edges[1].A.X-edges[0].A.X, 0.01)
}

// Of two that a cape is cut into, no one says how its hem would be shared out if it grows before.
func TestRowsThatWidenAreNotSharedOutBetweenPanels(t *testing.T) {
	g := schematic.Work(written(t, strings.Replace(capeText, "{even: 6 rows, rib: yes}", "{even: 4 rows, rib: yes}\n      - {increase: 1, at: both edges, every: 1 row, times: 1}\n      - {decrease: 1, at: both edges, every: 1 row, times: 1}", 1)), 0)
	assert.Nil(t, (&assembly{g: g}).firstRows(g.Pieces[0].Worked()))
}

// What an upper arm of a large raglan would be measured from lies under the body: its line is moved down the sleeve, as long as it was, or
// stands under the picture where the sleeve is narrower there, as in the largest sizes.
func TestAnUpperArmIsMeasuredBesideTheBody(t *testing.T) {
	text, err := os.ReadFile("../../examples/windlass-raglan.yaml")
	require.NoError(t, err)
	p := written(t, string(text))
	for i, size := range p.Sizes.Names {
		g := schematic.Work(p, i)
		Dress(g)
		m := measured(t, g, "upper arm")
		assert.Equal(t, i > p.Sizes.Index("1X"), m.View == schematic.NoView, size)
		if m.View == schematic.NoView {
			continue
		}
		assert.InDelta(t, m.Length.Float()/2, dist(m.A, m.B), 0.01, size)
		for _, q := range assembled(g).placed {
			switch {
			case q.made.Kind == schematic.KindSleeve && m.A.X < 0 == (q.where.by.X < 0):
				assert.Less(t, distToLoop(points(q.drawn), m.B), mostOff, size)
			case isTrunk(q) && q.face == front:
				assert.False(t, schematic.InPolygon(points(q.drawn), m.B), "%s: %v in %s", size, m.B, q.name)
			}
		}
	}
}

// Two ribs from either side of a corner would cross, or leave the corner bare: both end on the bisector, at 45 degrees between edges that meet
// squarely, whether the band lies outside the corner or inside it.
func TestRibsOfABandEndOnTheBisectorOfACorner(t *testing.T) {
	way := []pt{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: -100}}
	for _, path := range [][]pt{way, backwardsPath(way)} {
		p := &panel{}
		in, out := cornersBeside(path, 40)
		p.bandRibs(in, out)
		onBisector := 0
		for _, l := range p.lines {
			for _, q := range []pt{l.A, l.B} {
				if absf((q.X-100)-q.Y) < 1e-6 { // through the corner, at 45 degrees
					onBisector++
				} else {
					assert.Less(t, min(distTo(path, q), distTo(out, q)), 1e-6, "from edge to edge: %v", l)
				}
			}
		}
		assert.InDelta(t, 2*40/ribGap, onBisector, 2, "40 mm of both sides of the corner")
	}
}

func TestAChildHasAChest(t *testing.T) {
	name := func(text string) string {
		return (&taker{a: &assembly{g: &schematic.Garment{Pattern: written(t, strings.Replace(capeText, "sizes:", text+"sizes:", 1))}}}).bust()
	}
	assert.Equal(t, "bust", name(""))
	assert.Equal(t, "chest", name("for: children\n"))
	assert.Equal(t, "chest", name("bodies: {chest: 100 cm}\n"))
	assert.Equal(t, "bust", name("for: children\nbodies: {bust: 60 cm}\n"))
	assert.Equal(t, "bust", name("bodies: {bust: 90 cm, chest: 100 cm}\n"))
}

// 60 and 24 rounds of 5 mm; 100 stitches of 5 mm at the neck.
func TestACowlOfAPonchoIsMeasured(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Poncho
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Poncho
    worked: in the round, from the neck
    sections:
      - {cast on: 100, edge: neck}
      - {increase: 4, at: across, every: 1 row, times: 60}
      - {bind off: all, edge: hem}
  - piece: Cowl
    kind: band
    onto: ["Poncho neck, 1 in every 1 sts"]
    sections:
      - {even: 24 rows}
      - {bind off: all}
`), 0)
	Dress(g)
	assert.InDelta(t, 120, measured(t, g, "cowl height").Length.Float(), 0.01)
	assert.InDelta(t, 500, measured(t, g, "neck").Length.Float(), 0.01)
	assert.InDelta(t, 300, measured(t, g, "length").Length.Float(), 0.01)
}

// 72 stitches of 5 mm around the neck, 10 rounds of 5 mm before the panels.
func TestTheRowsOfAPonchoBeforeItsPanelsAreItsNeck(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Poncho
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Poncho
    worked: in the round, from the neck
    sections:
      - {cast on: 72, edge: neck}
      - {even: 10 rows}
      - panels:
          - {panel: Front, stitches: 36}
          - {panel: Back, stitches: 36}
      - {increase: 1, at: lines, every: 2 rows, times: 30}
      - {bind off: all, edge: hem}
`), 0)
	Dress(g)
	assert.InDelta(t, 50, measured(t, g, "neck height").Length.Float(), 0.01)
	assert.InDelta(t, 360, measured(t, g, "neck edge").Length.Float(), 0.01)
}

// A body of 80 stitches of 5 mm begins with a rib of 4 mm a stitch, 80 mm less: 20 mm at each side of the back, and as much at the side of
// a front, whose front edge is straight, so that its band is no wider than its 6 rows of 5 mm anywhere.
func TestARibDrawsInAtTheSidesAndNotAlongTheFrontEdges(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Cardigan
terms: UK
units: cm
sizes: one
gauges:
  fabric: 20 sts and 20 rows over 10 cm in stocking stitch
  rib: 25 sts and 20 rows over 10 cm in rib, relaxed
pieces:
  - piece: Body
    worked: flat, from the hem
    left edge: left front edge
    right edge: right front edge
    sections:
      - {cast on: 80, gauge: rib, edge: hem}
      - {even: 10 rows, rib: yes}
      - {even: 40 rows, gauge: fabric}
      - divide:
          - part: Right front
            stitches: 20
            sections:
              - {even: 20 rows, left edge: armhole}
              - {bind off: all, edge: shoulder}
          - part: Back
            stitches: 40
            sections:
              - {even: 20 rows, left edge: armhole, right edge: armhole}
              - divide:
                  - {bind off: 12, edge: shoulder}
                  - {bind off: 16, edge: neck}
                  - {bind off: 12, edge: shoulder}
          - part: Left front
            stitches: 20
            mirror of: Right front
  - piece: Band
    onto: ["Body right front edge, 1 in every 1 rows", "Body left front edge, 1 in every 1 rows"]
    sections:
      - {even: 6 rows}
      - {bind off: all}
`), 0)
	a := assembled(g)
	want := map[string]float64{"Right front": 100*350 - 20*50, "Back": 200*350 - 40*50, "Left front": 100*350 - 20*50}
	for _, p := range a.placed {
		if p.strip {
			lo, hi := box(p.drawn)
			assert.InDelta(t, 30, hi.X-lo.X, 0.01)
			continue
		}
		assert.InDelta(t, want[p.name], area(points(p.drawn)), 0.5, p.name)
		require.Len(t, p.ribs, 1)
		for _, q := range p.drawn {
			if strings.HasSuffix(q.name, "front edge") {
				assert.InDelta(t, 0, q.a.X, 0.01)
			}
		}
		delete(want, p.name)
	}
	assert.Empty(t, want)
	Dress(g)
	hasCorner(t, g.Worn.Views[0].Outline[0], -80, 0)
	assert.InDelta(t, 400, measured(t, g, "bust").Length.Float(), 0.01)
}

// A rib of 100 mm under a band of 10 mm at its left end shows 90 mm; one in its middle leaves it as it is, to be drawn rib by rib.
func TestARibShowsBesideABand(t *testing.T) {
	ribs := []pt{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: 50}, {X: 0, Y: 50}}
	strip := func(l, r float64) [][]pt {
		return [][]pt{{{X: l, Y: -5}, {X: r, Y: -5}, {X: r, Y: 200}, {X: l, Y: 200}}}
	}
	assert.InDelta(t, 90*50, area(besides(ribs, strip(-20, 10))), 1e-6)
	assert.InDelta(t, 70*50, area(besides(ribs, strip(70, 100))), 1e-6)
	assert.InDelta(t, 100*50, area(besides(ribs, strip(40, 60))), 1e-6)
	assert.InDelta(t, 100*50, area(besides(ribs, strip(120, 160))), 1e-6)
}

// 100 stitches of 5 mm at the waist, 150 at the hem of the lower tier; 20 and 30 rounds of 5 mm.
func TestASkirtOfTiersIsMeasuredAsAWhole(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Skirt
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Upper tier
    kind: skirt
    worked: in the round, from the waist
    sections:
      - {cast on: 100, edge: waist}
      - {even: 20 rows}
      - {hold: all}
  - piece: Lower tier
    worked: in the round, from the waist
    sections:
      - start from: [{piece: Upper tier}]
      - {increase: 50, at: across, every: 1 row}
      - {even: 29 rows}
      - {bind off: all, edge: hem}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	want := map[string]float64{"waist": 500, "hem": 750, "length": 250, "lower tier length": 150}
	for _, m := range g.Worn.Measures {
		assert.InDelta(t, want[m.Name], m.Length.Float(), 0.01, m.Name)
		assert.Equal(t, m.Axis == schematic.Horizontal, m.Around, m.Name)
		delete(want, m.Name)
	}
	assert.Empty(t, want)
}

func TestAWidthHasTheNameOfTheEdgeItIsAlong(t *testing.T) {
	p := &panel{where: still, drawn: []side{{a: pt{X: 0, Y: 0}, name: "hem"}, {a: pt{X: 10, Y: 0}, name: "side"}, {a: pt{X: 10, Y: 50}, name: "top"}, {a: pt{X: 0, Y: 50}, name: "side"}}}
	at := func(name string, y float64) string { return p.edgeOf(schematic.Measure{Name: name, A: pt{Y: y}}) }
	assert.Equal(t, "hem", at("width at lower edge", 0))
	assert.Equal(t, "width at upper edge", at("width at upper edge", 50), "a top is no part of the body")
	assert.Equal(t, "depth of rib", at("depth of rib", 0))
}

// A stitch is 5 mm wide and a row 100/28 mm high. The body is 184 stitches, 920 mm, of which half shows: its fronts are 42 stitches, its back 84, and of the 8
// stitches that are left at an underarm 4 lie on either side of the fold. 14 rows of 100/30 mm and 96 rows are 389.524 mm. The sleeves' 8 stitches at the
// underarm meet those of the body.
func TestAYokeCardiganFromTheHemIsSharedOutAndFolded(t *testing.T) {
	g := schematic.Work(pattern(t, "yoke-cardigan-hem.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, g.Findings)
	for name, want := range map[string]float64{"bust": 920, "body to underarm": 389.524, "upper arm": 320, "cuff": 220, "yoke depth": 58.0 * 100 / 28} {
		assert.InDelta(t, want, measured(t, g, name).Length.Float(), 0.01, name)
	}
	for _, loop := range g.Worn.Views[0].Outline {
		for _, p := range loop {
			assert.False(t, absf(p.X) < 225 && p.Y < 380 && p.Y > 60 && absf(p.X) > 30, "no sleeve lies on the body: %v", p)
		}
	}
}
