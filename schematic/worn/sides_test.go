package worn

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/finding"
)

// count is how often panels of a piece are placed.
func (a *assembly) count(piece string) (n int) {
	for _, p := range a.placed {
		if p.made.Name == piece {
			n++
		}
	}
	return n
}

func dressedText(t *testing.T, text string) (*schematic.Garment, *assembly) {
	t.Helper()
	g := schematic.Work(written(t, text), 0)
	Dress(g)
	require.NotNil(t, g.Worn, "%v", g.Findings)
	return g, assembled(g)
}

// 40 stitches of 5 mm, 60 rows of 5 mm: folded along its middle a slipper is 300 mm long and 100 mm high; its sides are sewn to each other over the last 20
// rows, which leaves 40, 200 mm, for the opening.
func TestASlipperWorkedFlatLiesOnItsSide(t *testing.T) {
	g, _ := dressedText(t, inTens+`
  - piece: Slipper
    kind: sock
    make: 2
    sections:
      - {cast on: 40, edge: heel}
      - {even: 40 rows, left edge: rim, right edge: rim}
      - {even: 20 rows, left edge: instep, right edge: instep}
      - gather
joins:
  - {sew: Slipper left instep, to: Slipper right instep}
  - {sew: Slipper heel, to: Slipper heel, how: at a fold}
`)
	assert.Equal(t, map[string]float64{"foot length": 300, "heel height": 100, "opening length": 200, "foot": 200}, lengths(g.Worn))
}

const twoLegs = inTens + `
  - piece: Leg
    make: 2
    worked: in the round, from the hem
    sections:
      - {cast on: 40, edge: ankle}
      - {even: 60 rows}
      - divide: [{bind off: 4, edge: crotch}, {hold: 36, name: top}]
  - piece: Seat
    kind: skirt
    worked: in the round, from the hem
    sections:
      - start from: [{piece: Leg, part: top}, {piece: Leg, part: top}]
      - {even: 30 rows, width: hip}
      - {bind off: all}
`

// Two legs of 60 rounds (300 mm) go on in a round of 72 stitches, 360 mm, for 30 more (150 mm).
func TestLegsHangFromWhatGoesOnFromBoth(t *testing.T) {
	g, a := dressedText(t, twoLegs)
	assert.Equal(t, 2, a.count("Leg"))
	l := lengths(g.Worn)
	assert.Equal(t, 360.0, l["hip"])
	assert.Equal(t, 450.0, l["length"])
}

func TestAThumbCalledAMittenHangsFromTheHand(t *testing.T) {
	text := strings.Replace(mittText, "- piece: Thumb\n", "- piece: Thumb\n    kind: mitten\n", 1)
	require.NotEqual(t, mittText, text)
	g, _ := dressedText(t, text)
	want, _ := dressedText(t, mittText)
	assert.Equal(t, want.Worn.Views[0].Outline, g.Worn.Views[0].Outline)
}

const flatBody = inTens + `
  - piece: Back
    sections:
      - {cast on: 80}
      - {even: 40 rows}
      - {even: 36 rows, left edge: armhole, right edge: armhole}
      - divide: [{bind off: 25, edge: shoulder}, {bind off: 30, edge: neck}, {bind off: 25, edge: shoulder}]
  - piece: Front
    sections:
      - {cast on: 80}
      - {even: 40 rows}
      - {even: 20 rows, left edge: armhole, right edge: armhole}
      - divide:
          - {part: Left front, stitches: 25, mirror of: Right front}
          - {bind off: 30, edge: neck}
          - {part: Right front, stitches: 25, left edge: armhole, right edge: neck, sections: [even: 16 rows, {bind off: all, edge: shoulder}]}
`

// Either of two sleeves has its armhole, though the join names that of one side alone.
func TestASleeveSewnIntoOneSideIsSewnIntoTheOtherToo(t *testing.T) {
	_, a := dressedText(t, flatBody+`
  - piece: Sleeve
    make: 2
    sections: [{cast on: 60}, {even: 40 rows}, {bind off: all, edge: top}]
joins:
  - {sew: Front side, to: Back side}
  - {sew: Front shoulder, to: Back shoulder}
  - {sew: Sleeve top, into: [Front right armhole, Back right armhole]}
`)
	assert.Equal(t, 2, a.count("Sleeve"))
}

// A collar whose edge goes down into it along the back of the neck, and up again in front, is turned over: no motion lays it on both.
func TestASailorCollarIsNotedAndNotDrawn(t *testing.T) {
	g, a := dressedText(t, flatBody+`
  - piece: Collar
    sections:
      - {cast on: 60}
      - {even: 20 rows}
      - divide:
          - {part: Left tip, stitches: 15, mirror of: Right tip}
          - {bind off: 30, edge: neck}
          - {part: Right tip, stitches: 15, right edge: neck, sections: [even: 16 rows, {bind off: all}]}
joins:
  - {sew: Front side, to: Back side}
  - {sew: Front shoulder, to: Back shoulder}
  - {sew: Collar neck, to: [Back neck, Front neck]}
`)
	assert.Zero(t, a.count("Collar"))
	assert.True(t, slices.ContainsFunc(noted(g), func(f finding.Finding) bool { return f.Piece == "Collar" && strings.Contains(f.Message, "turned over") }), "%v", g.Findings)
}

const funnel = inTens + `
  - piece: Yoke
    worked: in the round, from the neck
    sections:
      - {cast on: 80, edge: neck}
      - {even: 24 rows}
      - panels:
          - {panel: Back, stitches: 28}
          - {panel: Left sleeve, stitches: 12}
          - {panel: Front, stitches: 28}
          - {panel: Right sleeve, stitches: 12}
      - {increase: 1, at: lines, every: 2 rows, times: 20}
      - divide:
          - {hold: 68, name: back}
          - {hold: 52, name: left sleeve}
          - {hold: 68, name: front}
          - {hold: 52, name: right sleeve}
  - piece: Body
    worked: in the round, from the neck
    sections:
      - start from: [{piece: Yoke, part: back, panel: Back}, {add: 8}, {piece: Yoke, part: front, panel: Front}, {add: 8}]
      - {even: 60 rows}
      - {bind off: all}
  - piece: Sleeve
    make: 2
    worked: in the round, from the armhole
    sections:
      - start from: [{piece: Yoke, part: left sleeve}, {add: 8}]
      - {even: 60 rows}
      - {bind off: all, edge: cuff}
`

// The neck of 24 rounds, 120 mm, is as wide above as below and as high as it is worked. Both sleeves go on from the yoke, though the left one alone is named.
func TestAFunnelStandsOnTheNeckOfARaglan(t *testing.T) {
	g, a := dressedText(t, funnel)
	assert.Equal(t, 120.0, lengths(g.Worn)["neck height"])
	assert.Equal(t, 2, a.count("Sleeve"))
	assert.Empty(t, noted(g))
	for _, p := range a.placed {
		if p.strip {
			lo, hi := box(p.drawn)
			l, r := p.level(hi.Y, 0.001)
			assert.InDelta(t, hi.X-lo.X, r.X-l.X, 0.01)
		}
	}
}

const piped = inTens + `
  - piece: Back
    sections: [{cast on: 90}, {even: 60 rows}, {decrease: 1, at: both edges, every: 2 rows, times: 28, edge: raglan}, {bind off: all, edge: neck}]
  - piece: Front
    sections: [{cast on: 90}, {even: 60 rows}, {decrease: 1, at: both edges, every: 2 rows, times: 28, edge: raglan}, {bind off: all, edge: neck}]
  - piece: Sleeve
    make: 2
    left edge: sleeve seam
    right edge: sleeve seam
    sections: [{cast on: 70}, {even: 60 rows}, {decrease: 1, at: both edges, every: 2 rows, times: 28, edge: raglan}, {bind off: all, edge: neck}]
  - piece: Left piping
    kind: band
    onto: ["Front left raglan, 1 in every 1 rows"]
    sections: [{even: 4 rows}, {bind off: all, edge: outer edge}]
  - piece: Right piping
    kind: band
    onto: ["Front right raglan, 1 in every 1 rows"]
    sections: [{even: 4 rows}, {bind off: all, edge: outer edge}]
  - piece: Neckband
    kind: band
    onto: ["Back neck, 1 in every 1 sts", "Sleeve neck, 1 in every 1 sts", "Front neck, 1 in every 1 sts"]
    sections: [{even: 4 rows}, {bind off: all, edge: outer edge}]
joins:
  - {sew: Sleeve raglan, to: [Left piping outer edge, Right piping outer edge, Back raglan]}
  - {sew: Front side, to: Back side}
`

// The sleeves are sewn to bands along the front's raglan lines, and the neckband goes on over the ends of these: it is one.
func TestSleevesAreSewnToBandsAlongRaglanLines(t *testing.T) {
	g, a := dressedText(t, piped)
	assert.Empty(t, noted(g))
	assert.Equal(t, 2, a.count("Sleeve"))
	assert.Equal(t, 1, a.count("Neckband"))
}

const steeked = inTens + `
  - piece: Body
    worked: flat, from the hem
    sections:
      - {cast on: 160}
      - {even: 60 rows}
      - divide:
          - {hold: 36, name: Right front}
          - {bind off: 8, edge: underarm}
          - {hold: 72, name: Back}
          - {bind off: 8, edge: underarm}
          - {hold: 36, name: Left front}
  - piece: Sleeve
    make: 2
    worked: in the round, from the hem
    sections:
      - {cast on: 56, edge: cuff}
      - {even: 60 rows}
      - divide: [{bind off: 8, edge: underarm}, {hold: 48, name: top}]
  - piece: Yoke
    worked: flat, from the hem
    left edge: front edge
    right edge: front edge
    sections:
      - start from:
          - {piece: Body, part: Right front}
          - {piece: Sleeve, part: top}
          - {piece: Body, part: Back}
          - {piece: Sleeve, part: top}
          - {piece: Body, part: Left front}
      - {even: 20 rows}
      - repeat row: 2 together
      - {even: 20 rows}
      - {even: 4 rows, gauge: rib, rib: yes}
      - {bind off: all, edge: neck}
  - piece: Left band
    kind: band
    onto: ["Body left side, 1 in every 1 rows", "Yoke left front edge, 1 in every 1 rows"]
    sections: [{even: 4 rows}, {bind off: all, edge: outer edge}]
  - piece: Right band
    kind: band
    onto: ["Body right side, 1 in every 1 rows", "Yoke right front edge, 1 in every 1 rows"]
    sections: [{even: 4 rows}, {bind off: all, edge: outer edge}]
`

// The ribs at the neck, 4 rows, are open in front: there is one band along each front and its ribs, from the hem to their end, and none along the neck. The right front
// with its ribs and its band lies over the left.
func TestTheRibsOfAFlatYokeAreOpenInFront(t *testing.T) {
	g, a := dressedText(t, steeked)
	assert.Equal(t, 1, a.count("Left band"))
	assert.Equal(t, 1, a.count("Right band"))
	assert.Len(t, g.Worn.Views[0].Under, 1)
	for _, p := range a.placed {
		if l, h := box(p.drawn); p.made.Kind == schematic.KindBand {
			assert.InDelta(t, 20, h.X-l.X, 1, "4 rows")
			assert.InDelta(t, (60+1+40+4)*5, h.Y-l.Y, 25, "the rows of body and yoke, whose neck bends")
			assert.Equal(t, p.name == "Right band", h.X > -l.X, "the right one reaches over the left front")
		}
	}
}

// Two wings of 40 stitches (200 mm) and 80 rows (400 mm) meet at an upright spine, which is as long as the shawl is deep.
func TestAnUprightSpineIsTheDepth(t *testing.T) {
	g, _ := dressedText(t, inTens+`
  - piece: Left wing
    kind: shawl
    left edge: spine
    right edge: top edge
    sections: [{cast on: 1}, {increase: 1, at: right edge, every: 2 rows, times: 40}, {bind off: all, edge: lower edge}]
  - {piece: Right wing, mirror of: Left wing}
joins:
  - {sew: Left wing spine, to: Right wing spine}
`)
	l := lengths(g.Worn)
	assert.Equal(t, 400.0, l["spine"])
	assert.NotContains(t, l, "depth")
}

func TestARoundThatIsDividedMoreThanOnceIsNoted(t *testing.T) {
	g := schematic.Work(written(t, inTens+`
  - piece: Coat
    kind: body
    worked: in the round, from the neck
    sections:
      - {cast on: 80}
      - {even: 10 rows}
      - divide:
          - {part: Back, stitches: 50, sections: [even: 10 rows]}
          - {leave: 6}
          - {part: Front, stitches: 18, sections: [even: 10 rows]}
          - {leave: 6}
      - join parts: [Back, {add: 6}, Front, {add: 6}]
        round: yes
      - {even: 10 rows}
      - divide:
          - {part: Tail, stitches: 64, sections: [even: 10 rows, {bind off: all}]}
          - {bind off: 16}
`), 0)
	Dress(g)
	assert.Nil(t, g.Worn)
	require.Len(t, noted(g), 1)
	assert.Contains(t, noted(g)[0].Message, "divided more than once")
}

// A front of 16 rows and a back of 24 (80 and 120 mm) go on in a round of 60 rows (300 mm), which hangs upright: the back's hem shows 40 mm below the front's.
func TestARoundThatBeginsFromFrontAndBackHemsStandsOnBoth(t *testing.T) {
	g, a := dressedText(t, inTens+`
  - piece: Front hem
    kind: front
    sections: [{cast on: 80}, {even: 16 rows}]
  - piece: Back hem
    kind: back
    sections: [{cast on: 80}, {even: 24 rows}]
  - piece: Body
    worked: in the round, from the hem
    sections:
      - start from: [{piece: Front hem, panel: Front}, {piece: Back hem, panel: Back}]
      - {even: 60 rows}
      - divide:
          - {part: Front, stitches: 72, left edge: armhole, right edge: armhole, sections: [even: 30 rows, {bind off: all, edge: shoulder}]}
          - {bind off: 8, edge: underarm}
          - {part: Back, stitches: 72, left edge: armhole, right edge: armhole, sections: [even: 40 rows, {bind off: all, edge: shoulder}]}
          - {bind off: 8, edge: underarm}
`)
	assert.Empty(t, noted(g))
	low := map[string]float64{}
	for _, p := range a.placed {
		assert.InDelta(t, 0, p.where.sin, 1e-9, p.name)
		low[p.name] = bottomOf(p.drawn)
	}
	assert.Contains(t, low, "Back hem")
	assert.InDelta(t, 40, low["Front hem"]-low["Back hem"], 0.01)
}

const capelet = inTens + `
  - piece: Capelet
    kind: poncho
    worked: flat, from the neck
    left edge: front edge
    right edge: front edge
    sections: [{cast on: 80, edge: neck}, {increase: 8, at: across, every: 4 rows, times: 10}, {bind off: all, edge: hem}]
  - piece: Left band
    kind: band
    onto: ["Capelet left front edge, 1 in every 1 rows"]
    sections: [{even: 6 rows}, {bind off: all}]
  - piece: Right band
    kind: band
    onto: ["Capelet right front edge, 1 in every 1 rows"]
    sections: [{even: 6 rows}, {bind off: all}]
`

// A capelet that is buttoned is closed, 160 stitches, 800 mm, around at its hem; the right band, 6 rows or 30 mm, lies over the left from the middle on.
func TestABandOnEitherFrontEdgeClosesACapelet(t *testing.T) {
	g, a := dressedText(t, capelet)
	assert.Empty(t, noted(g))
	hem := measured(t, g, "hem")
	assert.True(t, hem.Around)
	assert.Equal(t, 800.0, hem.Length.Float())
	assert.Zero(t, a.count("Left band")+a.count("Right band"))
	var at []float64
	for _, l := range g.Worn.Views[0].Lines {
		if l.Kind == schematic.LineEdge {
			at = append(at, l.A.X)
		}
	}
	assert.Equal(t, []float64{0, 30}, at)
}

const onePiece = inTens + `
  - piece: Kimono
    kind: body
    sections:
      - {cast on: 60, edge: back hem}
      - {even: 40 rows}
      - {add: 20, at: both edges, edge: sleeve underside}
      - {even: 20 rows, left edge: cuff, right edge: cuff}
      - divide:
          - part: Right front
            stitches: 40
            sections:
              - {even: 20 rows}
              - {bind off: 20, at: right edge, edge: sleeve underside}
              - {increase: 1, at: left edge, every: 1 row, times: TIMES, rows: 40, left edge: front edge, right edge: front side}
              - {bind off: all, edge: front hem}
          - {bind off: 20, edge: neck}
          - {part: Left front, stitches: 40, mirror of: Right front}
joins:
  - {sew: Kimono Right front front side, to: Kimono right side}
  - {sew: Kimono Left front front side, to: Kimono left side}
`

// The fronts of what is worked over the shoulders lie in front: with 5 more stitches each, of 20 between them, the opening is 10 stitches, 50 mm, wide at the hem. Where
// they would lie on each other, one piece is no picture of them.
func TestTheFrontsOfOnePieceLieInFront(t *testing.T) {
	_, a := dressedText(t, strings.Replace(onePiece, "TIMES", "5", 1))
	hasCorner(t, points(a.placed[0].drawn), -25, 0)
	hasCorner(t, points(a.placed[0].drawn), 25, 0)
	g := schematic.Work(written(t, strings.Replace(onePiece, "TIMES", "15", 1)), 0)
	Dress(g)
	assert.Nil(t, g.Worn)
	require.Len(t, noted(g), 1)
	assert.Contains(t, noted(g)[0].Message, "lie on each other")
}

// An armhole of 40 rows is 200 mm long and half of a sleeve's 88 stitches 220 mm: what is eased in is at the underarm, and the fold of the sleeve goes on
// level from the shoulder.
func TestASleeveLongerThanItsArmholeDoesNotRiseAboveTheShoulder(t *testing.T) {
	g := schematic.Work(written(t, `version: 1
pattern: Jumper
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch}
pieces:
  - piece: Back
    sections:
      - {cast on: 100}
      - {even: 60 rows}
      - {even: 40 rows, left edge: armhole, right edge: armhole}
      - {bind off: all, edge: shoulder}
  - piece: Front
    sections:
      - {cast on: 100}
      - {even: 60 rows}
      - {even: 40 rows, left edge: armhole, right edge: armhole}
      - {bind off: all, edge: shoulder}
  - piece: Sleeve
    make: 2
    sections:
      - {cast on: 44, edge: cuff}
      - {increase: 1, at: both edges, every: 4 rows, times: 22}
      - {bind off: all, edge: top}
joins:
  - {sew: Front shoulder, to: Back shoulder}
  - {sew: Front side, to: Back side}
  - {sew: Sleeve top, into: [Front armhole, Back armhole], how: eased by 2 cm}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	sleeves := 0
	for _, p := range assembled(g).placed {
		if p.made.Kind == schematic.KindSleeve {
			sleeves++
			lo, hi := box(p.drawn)
			assert.InDelta(t, 500, hi.Y, 0.01, "100 rows above the hem")
			assert.InDelta(t, 500-200, lo.Y, 0.01, "its end is drawn to the underarm")
		}
	}
	assert.Equal(t, 2, sleeves)
}
