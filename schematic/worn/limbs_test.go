package worn

import (
	"math"
	"os"
	"slices"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
	"flatwright/schematic/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Of 120 stitches, 220 in 10 cm, half lies flat: 60 x 100/22 = 272.7 mm, of which each leg has 27, and half of the 6 of the
// crotch; it begins from 54 + 6 stitches, so that its half is 30 wide, 136.4 mm, and ends in the middle of the crotch.
func TestLegsHangFromTheirSharesOfTheHipAndMeetAtTheCrotch(t *testing.T) {
	g := schematic.Work(pattern(t, "trousers.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	var legs [][2]float64
	a := assembled(g)
	for _, p := range a.placed {
		if lo, hi := box(p.drawn); p.made.Name == "Leg" {
			legs = append(legs, [2]float64{lo.X, hi.X})
		}
	}
	require.Len(t, legs, 2)
	slices.SortFunc(legs, func(x, y [2]float64) int { return int(x[0] - y[0]) })
	assert.InDeltaSlice(t, []float64{-136.36, 0}, legs[0][:], 0.01)
	assert.InDeltaSlice(t, []float64{0, 136.36}, legs[1][:], 0.01)
	// 10 rows of rib at 3.2 a cm and 4 + 24 + 20 of the fabric at 3 a cm; a leg 6 + 42 + 12 of it and 12 of rib.
	assert.InDelta(t, 31.25+160+200+37.5, measured(t, g, "length").Length.Float(), 0.01)
	assert.InDelta(t, 237.5, measured(t, g, "inside leg").Length.Float(), 0.01)
	assert.InDelta(t, 31.25+160, measured(t, g, "front length").Length.Float(), 0.01)
	assert.InDelta(t, 104*100/24.0*10/10, measured(t, g, "waist").Length.Float(), 0.01)
	assert.True(t, measured(t, g, "waist").Around)
}

// Nothing holds the sides of a ruana together, so that it is wide and not around: 112 stitches at 14 to 4 in.
func TestWhatHangsOpenAtItsSidesIsNotMeasuredAround(t *testing.T) {
	g := schematic.Work(pattern(t, "ruana.yaml"), 0)
	Dress(g)
	w := measured(t, g, "width")
	assert.InDelta(t, 112*101.6/14, w.Length.Float(), 0.01)
	assert.False(t, w.Around)
	for _, m := range g.Worn.Measures {
		assert.False(t, m.Around, m.Name)
	}
}

// The side has 60 stitches at 18 to 10 cm; above it the sleeve has 20 + 10 of them.
func TestASleeveWorkedWithItsBodyHasAnUnderarm(t *testing.T) {
	g := schematic.Work(pattern(t, "sideways.yaml"), 0)
	Dress(g)
	assert.InDelta(t, 60*100/18.0, measured(t, g, "body to underarm").Length.Float(), 0.01)
	arm := measured(t, g, "upper arm")
	assert.InDelta(t, 2*30*100/18.0, arm.Length.Float(), 0.01)
	assert.True(t, arm.Around)
}

// The band is 8 rows deep, 8 x 100/30 = 26.7 mm, and its upper end at the underarm stands over the side, 47/2 cm from the middle.
func TestABandTurnsNoCornerAtTheStaggerOfARow(t *testing.T) {
	for _, size := range []int{0, 6} {
		g := schematic.Work(pattern(t, "slipover.yaml"), size)
		Dress(g)
		half := measured(t, g, "bust").Length.Float() / 4
		for _, p := range assembled(g).placed {
			if p.strip {
				lo, hi := box(p.drawn)
				assert.GreaterOrEqual(t, lo.X, -half-0.01)
				assert.LessOrEqual(t, hi.X, half+0.01)
			}
		}
	}
}

// The rib of the back draws in by 86/18 - 86/20 and that of a front by 38/18 - 38/20 cm, so that their sides differ at the hem; at the
// underarm they meet, and the body is 2 x 86/18 cm around.
func TestFrontsMeetTheBackAtTheUnderarmWhereTheirRibsDrawInOtherwise(t *testing.T) {
	g := schematic.Work(pattern(t, "shawl-collar.yaml"), 0)
	Dress(g)
	bust := measured(t, g, "bust")
	assert.True(t, bust.Around)
	assert.InDelta(t, 2*86*100/18.0, bust.Length.Float(), 0.01)
}

// A rib steps in by 8 at the end of an edge; the band beside it is straight all the same, and ends level with it.
func TestABandIsStraightWhereARibDrawsIn(t *testing.T) {
	assert.Equal(t, []pt{{}, {Y: 50}, {Y: 300}}, steady([]pt{{X: -8}, {X: -8, Y: 50}, {Y: 50}, {Y: 300}}, 40))
	assert.Equal(t, []pt{{}, {Y: 250}, {Y: 300}}, steady([]pt{{}, {Y: 250}, {X: 8, Y: 250}, {X: 8, Y: 300}}, 40))
	step := []pt{{X: -30}, {X: -30, Y: 50}, {Y: 50}, {Y: 300}}
	assert.Equal(t, step, steady(step, 40), "too wide a step for a rib")
}

// The sides of a bonnet's brim are sewn to the sides of its crown, at a right angle: it stands up round the head.
func TestWhatIsSewnToItselfRoundACornerIsDrawnAsItIsWorkedAndNoted(t *testing.T) {
	p := written(t, `version: 1
pattern: Bonnet
terms: UK
units: cm
sizes: one
gauges: {fabric: 24 sts and 40 rows over 10 cm in garter stitch}
pieces:
  - piece: Bonnet
    sections:
      - {cast on: 74, edge: face}
      - even: 44 rows
      - divide:
          - {bind off: 25, name: left side, edge: side edge}
          - part: Crown
            stitches: 24
            left edge: crown edge
            right edge: crown edge
            sections:
              - even: 42 rows
              - {bind off: all, edge: nape}
          - {bind off: 25, name: right side, edge: side edge}
joins:
  - {sew: Bonnet left side, to: Bonnet left crown edge}
  - {sew: Bonnet right side, to: Bonnet right crown edge}
`)
	g := schematic.Work(p, 0)
	Dress(g)
	assert.Nil(t, g.Worn)
	require.Len(t, noted(g), 1)
	assert.Contains(t, noted(g)[0].Message, "round a corner")
}

// A hood stands on no neck of its own accord, whichever of the two is listed first.
func TestAHoodThatNothingHoldsIsNoted(t *testing.T) {
	neck := `
  - piece: Neck
    worked: in the round, from the hem
    sections:
      - {cast on: 88, edge: lower edge}
      - even: 40 rows
      - {bind off: all, edge: upper edge}`
	hood := `
  - piece: Hood
    left edge: face
    right edge: face
    sections:
      - {cast on: 88, edge: neck edge}
      - even: 60 rows
      - {bind off: all, edge: top}`
	for _, pieces := range []string{neck + hood, hood + neck} {
		g := schematic.Work(written(t, `version: 1
pattern: Balaclava
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 28 rows over 10 cm in stocking stitch}
pieces:`+pieces+`
joins:
  - {sew: Hood top, to: Hood top, how: at a fold}
`), 0)
		Dress(g)
		assert.Nil(t, g.Worn)
		require.Len(t, noted(g), 1)
		assert.Contains(t, noted(g)[0].Message, "no join or held stitch")
	}
}

func written(t *testing.T, text string) *schematic.Pattern {
	t.Helper()
	p, found := read.Pattern("written.yaml", []byte(text))
	require.NotNil(t, p, "%v", found)
	return p
}

func noted(g *schematic.Garment) []finding.Finding {
	return slices.DeleteFunc(slices.Clone(g.Findings), func(f finding.Finding) bool { return f.Kind != "worn/left-over" && f.Kind != "worn/not-flat" })
}

// A wing's edge along the spine is 100/18 x 60 mm out over 120 rows of 100/36 mm, and its border, 10 times 100/18 over 20 rows of 100/30 mm:
// a bulge against the other wing's, so that both are drawn along the chord, atan((60+10) x 5.5556 / (333.3 + 66.7)) from upright.
func TestWingsThatBulgeAgainstEachOtherMeetOnAStraightSpine(t *testing.T) {
	text, err := os.ReadFile("../../cmd/internal/starter/kinds/shawl.yaml")
	require.NoError(t, err)
	g := schematic.Work(written(t, string(text)), 0)
	Dress(g)
	spine := measured(t, g, "spine")
	assert.InDelta(t, math.Hypot(70*100/18.0, 400), spine.Length.Float(), 0.01)
	assert.InDelta(t, spine.A.X, spine.B.X, 0.01, "upright")
	span := measured(t, g, "wingspan")
	assert.InDelta(t, spine.A.X, (span.A.X+span.B.X)/2, 0.5, "both wings alike")
	assert.InDelta(t, span.A.Y, span.B.Y, 0.5, "both wings alike")
}

// A hood of stitches held at a neck stands on it, folded: of 88, 20 to 10 cm, half is 220 mm wide.
func TestAHoodBeginsFromStitchesHeldAtTheNeck(t *testing.T) {
	text, err := os.ReadFile("../../cmd/internal/starter/kinds/hood.yaml")
	require.NoError(t, err)
	g := schematic.Work(written(t, string(text)), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Empty(t, noted(g))
	hood := assembled(g).placedAt(t, "Hood")
	lo, hi := box(hood.loop)
	assert.InDelta(t, 300, hi.Y-lo.Y, 2.5)
	assert.InDelta(t, measured(t, g, "hood width").Length.Float(), hi.X-lo.X, 0.01)
}

// The ribs of a cuff go round all of the leg, not the half with the heel alone.
func TestTheRibsOfASockGoAcrossTheLeg(t *testing.T) {
	text, err := os.ReadFile("../../cmd/internal/starter/kinds/sock.yaml")
	require.NoError(t, err)
	g := schematic.Work(written(t, string(text)), 0)
	Dress(g)
	leg := assembled(g).placed[0]
	require.Len(t, leg.ribs, 1)
	lo, hi := bounds([][]pt{leg.ribs[0].Poly})
	assert.InDelta(t, measured(t, g, "cuff").Length.Float()/2, hi.X-lo.X, 0.01)
}

// A waistband of 10 rows is turned in, so that 10 rows of edging and the skirt show, and no more; 28 rows to 10 cm.
func TestWhatIsTurnedInAtAFoldIsNotOfTheLengthAsWorn(t *testing.T) {
	skirt := func(fold string) *schematic.Garment {
		g := schematic.Work(written(t, `version: 1
pattern: Skirt
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 28 rows over 10 cm in stocking stitch}
pieces:
  - piece: Skirt
    worked: in the round, from the hem
    sections:
      - {cast on: 200, edge: hem}
      - {decrease: 8, at: across, every: 14 rows, times: 10}
      - {even: 10 rows, width: waist}`+fold+`
      - even: 10 rows
      - {bind off: all, edge: waist edge}
`), 0)
		Dress(g)
		return g
	}
	assert.InDelta(t, 160*100/28.0, measured(t, skirt(""), "length").Length.Float(), 0.01)
	g := skirt("\n      - fold")
	require.NotNil(t, g.Worn)
	assert.InDelta(t, 150*100/28.0, measured(t, g, "length").Length.Float(), 0.01)
	assert.InDelta(t, 2*300, measured(t, g, "waist").Length.Float(), 0.01)
	_, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 150*100/28.0, hi.Y, 0.01)
}

// An underarm on hold beside what a yoke takes of a sleeve is worn below, at both sides: one sleeve is the other's mirror in every size.
func TestBothSleevesOfAYokeHaveTheirUnderarmBelow(t *testing.T) {
	text, err := os.ReadFile("../../cmd/internal/starter/kinds/yoke.yaml")
	require.NoError(t, err)
	p := written(t, string(text))
	for i, size := range p.Sizes.Names {
		var sleeves []*panel
		for _, q := range assembled(schematic.Work(p, i)).placed {
			if q.made.Name == "Sleeve" {
				sleeves = append(sleeves, q)
			}
		}
		require.Len(t, sleeves, 2, size)
		l, lh := box(sleeves[0].drawn)
		r, rh := box(sleeves[1].drawn)
		for _, d := range []float64{l.X + rh.X, lh.X + r.X, l.Y - r.Y, lh.Y - rh.Y} {
			assert.InDelta(t, 0, d, 0.5, size)
		}
	}
}

// Of 156 stitches, 18 to 10 cm, half lies flat: 433.3 mm, of which each leg has half. A leg takes 78 of them and 8 at the crotch: its half is 43
// stitches, 238.9 mm, wide at its hem, and it spreads outwards from the crotch. It is 35 rounds at 20 long, the body 52.
func TestTheLegsOfShortsAreTheSameWorkedOnOrPickedUp(t *testing.T) {
	for _, file := range []string{"shorts.yaml", "shorts-legs.yaml"} {
		g := schematic.Work(pattern(t, file), 0)
		Dress(g)
		require.NotNil(t, g.Worn, file)
		a := assembled(g)
		require.Len(t, a.placed, 3, file)
		var outer []float64
		for _, p := range a.placed[1:] {
			lo, hi := box(p.drawn)
			outer = append(outer, lo.X, hi.X)
		}
		slices.Sort(outer)
		assert.InDeltaSlice(t, []float64{-238.89, 0, 0, 238.89}, outer, 0.01, file)
		assert.InDelta(t, 175, measured(t, g, "inside leg").Length.Float(), 0.01, file)
		assert.InDelta(t, 435, measured(t, g, "length").Length.Float(), 0.01, file)
		assert.InDelta(t, 156*100/18.0, measured(t, g, "hip").Length.Float(), 0.01, file)
	}
}

// A front of 48 of the 112 stitches of a round, listed first, lies in the middle of its half of 56: 4 stitches, 16 to 4 in, on either side of it.
func TestTheOneFrontOfARoundLiesInItsMiddle(t *testing.T) {
	g := schematic.Work(pattern(t, "halter.yaml"), 0)
	Dress(g)
	assert.InDelta(t, 44*101.6/12, measured(t, g, "strap length").Length.Float(), 0.01) // 44 rows of 12 to 4 in
	loop := points(assembled(g).placed[0].drawn)
	half := 28 * 25.4 / 4.0
	var corners []float64
	for _, p := range loop {
		if absf(p.Y-30*101.6/12) < 0.01 {
			corners = append(corners, p.X)
		}
	}
	slices.Sort(corners)
	assert.InDeltaSlice(t, []float64{-half, -half + 25.4, half - 25.4, half}, corners, 0.01)
}

// The skirt front has 70 stitches, 16 to 4 in, gathered to the 52, 18 to 4 in, of the bodice: it hangs from these and spreads to its hem.
func TestAGatheredSkirtSpreadsFromItsWaist(t *testing.T) {
	g := schematic.Work(pattern(t, "empire.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	for _, p := range assembled(g).placed {
		if p.name != "Skirt front" {
			continue
		}
		lo, hi := box(p.drawn)
		l, r := p.level(hi.Y, 0)
		assert.InDelta(t, 52*101.6/18, r.X-l.X, 0.01)
		assert.InDelta(t, 70*101.6/16, hi.X-lo.X, 0.01)
	}
	assert.InDelta(t, 2*52*101.6/18, measured(t, g, "chest").Length.Float(), 0.01)
	assert.InDelta(t, 24*101.6/10, measured(t, g, "skirt length").Length.Float(), 0.01)
	for _, l := range g.Worn.Views[0].Lines {
		if l.Kind == schematic.LineBehind { // nothing of the back's armholes
			assert.Greater(t, l.A.Y, 60.0) // the bodice begins at 0, its armholes at 50.8
		}
	}
}

// A bib of 34 rows at 28 to 10 cm that is picked up from a waist is no trunk: the trousers, 12 rounds of rib at 30 and 46, with legs of 8 + 48 rounds and 10 of
// rib, hang from their own waist, and the length is that of all of them.
func TestABibThatIsPickedUpStandsOnItsTrousers(t *testing.T) {
	g := schematic.Work(written(t, `
version: 1
pattern: Bib
terms: UK
units: cm
sizes: one
gauges:
  fabric: 20 sts and 28 rounds over 10 cm in stocking stitch
  rib: 20 sts and 30 rounds over 10 cm in rib
pieces:
  - piece: Trousers
    worked: in the round, from the neck
    sections:
      - {cast on: 104, gauge: rib, edge: waist}
      - {even: 12 rows, rib: yes}
      - {even: 46 rows, gauge: fabric}
      - divide:
          - {hold: 52, name: right leg}
          - {hold: 52, name: left leg}
  - piece: Leg
    make: 2
    worked: in the round, from the neck
    sections:
      - start from:
          - {piece: Trousers, part: right leg, stitches: 52}
          - {add: 4}
      - {even: 8 rows}
      - {decrease: 2, at: across, every: 6 rows, times: 8}
      - {even: 10 rows, gauge: rib, rib: yes}
      - {bind off: all, edge: cuff}
  - piece: Bib
    kind: front
    onto:
      - Trousers waist, 1 in every 2 sts
    sections:
      - {even: 34 rows}
      - {bind off: all, edge: bib top}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	trousers, leg, bib := 12/3.0*10+46/2.8*10, 56/2.8*10+10/3.0*10, 34/2.8*10
	assert.InDelta(t, trousers+leg+bib, measured(t, g, "length").Length.Float(), 0.01)
	assert.InDelta(t, leg, measured(t, g, "inside leg").Length.Float(), 0.01)
	assert.InDelta(t, bib, measured(t, g, "bib height").Length.Float(), 0.01)
	assert.InDelta(t, 520, measured(t, g, "hip").Length.Float(), 0.01)
}

// A bib of 30 stitches, 20 in 4 in, is 6 in wide and 28 rows of 1/7 in high, whatever the waist is wide to which it is sewn: 110 stitches, 22 in around.
func TestABibIsAsWideAsItsStitches(t *testing.T) {
	g := schematic.Work(given.Text(t, `version: 1
pattern: Pinafore
terms: US
units: in
sizes: S
gauges:
  fabric: 20 sts and 28 rows over 4 in in stockinette
pieces:
  - piece: Skirt
    kind: skirt
    worked: in the round, from the waist
    sections: [{cast on: 110, edge: waist edge}, {even: 7 rows}, {increase: 10, at: across, every: 10 rows, times: 5}, {even: 6 rows}, {bind off: all, edge: hem}]
  - {piece: Bib, worked: "flat, from the hem", sections: [{cast on: 30, edge: bib base}, {even: 28 rows}, {bind off: all, edge: bib top}]}
joins:
  - {sew: Bib bib base, to: Skirt waist edge}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.InDelta(t, 6*25.4, measured(t, g, "bib width").Length.Float(), 0.1)
	assert.InDelta(t, 4*25.4, measured(t, g, "bib height").Length.Float(), 0.1)
}
