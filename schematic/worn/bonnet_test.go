package worn

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
)

const inTens = `version: 1
pattern: Small
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rows over 10 cm in stocking stitch, rib: 25 sts and 20 rows over 10 cm in rib}
pieces:`

// A bonnet of 60 stitches (30 cm) and 30 rows (15 cm), its end sewn to itself, lies on its side: 15 cm deep, folded at 15 cm, the face at the
// left; a tie on either side hangs from the middle of its neck edge.
func TestABonnetLiesOnItsSide(t *testing.T) {
	g := schematic.Work(written(t, inTens+`
  - piece: Bonnet
    kind: hood
    left edge: neck edge
    right edge: neck edge
    sections:
      - {cast on: 60, edge: face}
      - even: 30 rows
      - {bind off: all, edge: back seam}
  - {piece: Tie, make: 2, sections: [{cast on: 4, edge: end}, even: 50 rows, bind off: all]}
joins:
  - {sew: Bonnet back seam, to: Bonnet back seam, how: at a fold}
  - {sew: Tie end, to: Bonnet neck edge, how: in 2 places}
`), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	assert.Equal(t, map[string]float64{"depth": 150, "height": 150, "tie length": 250}, lengths(g.Worn))
	corners(t, assembled(g).placed[0], pt{X: -75, Y: 0}, pt{X: 75, Y: 150})
	corners(t, assembled(g).placed[1], pt{X: -10, Y: 0}, pt{X: 10, Y: -250})
	for _, s := range assembled(g).placed[0].drawn {
		if s.name == "face" {
			assert.InDelta(t, -75, s.a.X, close)
		}
	}
}

func lengths(m *schematic.Made) map[string]float64 {
	out := map[string]float64{}
	for _, w := range m.Measures {
		out[w.Name] = w.Length.Float()
	}
	return out
}

func corners(t *testing.T, p *panel, want ...pt) {
	t.Helper()
	lo, hi := box(p.drawn)
	for _, q := range want {
		assert.True(t, (absf(q.X-lo.X) < close || absf(q.X-hi.X) < close) && (absf(q.Y-lo.Y) < close || absf(q.Y-hi.Y) < close), "%v in %v %v", q, lo, hi)
	}
}

// A bib of 30 rows (15 cm) stands on a waist; straps of 110 rows (55 cm) are sewn to its top and, behind, to the waist: they are folded where as
// much lies behind as in front, 55 - 15 = 40, 20 cm above the bib. All of a strap is told under the picture.
func TestStrapsAreFoldedOnTheShoulder(t *testing.T) {
	text := inTens + `
  - {piece: Skirt, worked: "in the round, from the waist", sections: [{cast on: 120, edge: waist}, even: 60 rows, {bind off: all, edge: hem}]}
  - {piece: Bib, kind: front, sections: [{cast on: 40, edge: base}, even: 30 rows, {bind off: all, edge: top}]}
  - {piece: Strap, make: 2, kind: band, sections: [{cast on: 8, edge: front end}, even: 110 rows, {bind off: all, edge: back end}]}
joins:
  - {sew: Bib base, to: Skirt waist, how: in 1 place}
  - {sew: Strap front end, to: Bib top, how: in 2 places}
  - {sew: Strap back end, to: Skirt waist, how: in 2 places}
`
	g := schematic.Work(written(t, text), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	lo, hi := bounds(append(g.Worn.Views[0].Outline, g.Worn.Views[0].Under...))
	assert.InDelta(t, 300+150+200, hi.Y-lo.Y, close)
	assert.InDelta(t, 550, lengths(g.Worn)["strap length"], close)
	g = schematic.Work(written(t, strings.Replace(text, "  - {sew: Strap back end, to: Skirt waist, how: in 2 places}\n", "", 1)), 0)
	Dress(g)
	lo, hi = bounds(append(g.Worn.Views[0].Outline, g.Worn.Views[0].Under...))
	assert.InDelta(t, 300+150+550, hi.Y-lo.Y, close, "without the join behind they stand up")
}

// What is cast on for a rib is as wide as the rib, whether the gauge is said at the cast-on or with its rows: 50 stitches, 20 cm.
func TestAnEdgeIsAsWideAsTheRowsWorkedIntoIt(t *testing.T) {
	g := schematic.Work(written(t, inTens+`
  - {piece: Back, sections: [{cast on: 50}, {even: 10 rows, gauge: rib, rib: yes}, {even: 10 rows, gauge: fabric}]}
`), 0)
	lo, hi := bounds(g.Pieces[0].Views[0].Outline)
	assert.InDelta(t, 250, hi.X-lo.X, close)
	for _, q := range g.Pieces[0].Views[0].Outline[0] {
		if q.Y < lo.Y+49 {
			assert.InDelta(t, 100, absf(q.X-(lo.X+hi.X)/2), close)
		}
	}
}

// Ends of a strap that are listed one by one in a join are its two ends: it stands in an arch, 20 cm less its width's half above places 15 cm apart.
func TestEndsListedOneByOneAreThoseOfOneStrap(t *testing.T) {
	for _, sew := range []string{"[Strap end, Strap other end]", "[Strap other end, Strap end]"} {
		g := schematic.Work(written(t, inTens+`
  - {piece: Bag, worked: "in the round, from the hem", sections: [{cast on: 120, edge: base}, even: 60 rows, {bind off: all, edge: top}]}
  - {piece: Strap, make: 2, sections: [{cast on: 6, edge: end}, even: 100 rows, {bind off: all, edge: other end}]}
joins:
  - {sew: `+sew+`, to: Bag top, how: in 4 places}
`), 0)
		a := assembled(g)
		require.Len(t, a.placed, 2)
		assert.True(t, a.placed[1].strip)
	}
}

// A sleeve of 72 stitches (36 cm) with a level top and 4 rows below it for the underarm, in an armhole of 18 cm above 5 stitches that are left: its fold is level,
// at the height of the shoulder.
func TestASleeveWithALevelTopSticksOutSquare(t *testing.T) {
	body := `[{cast on: 80, edge: hem}, even: 60 rows, {leave: 5, at: both edges, edge: armhole},
      {even: 36 rows, left edge: armhole, right edge: armhole},
      {divide: [{bind off: 20, name: right shoulder, edge: shoulder}, {bind off: 30, name: neck, edge: neck}, {bind off: 20, name: left shoulder, edge: shoulder}]}]`
	g := schematic.Work(written(t, inTens+`
  - {piece: Back, sections: `+body+`}
  - {piece: Front, sections: `+body+`}
  - {piece: Sleeve, make: 2, left edge: seam, right edge: seam, sections: [{cast on: 72, edge: cuff}, even: 60 rows, {even: 4 rows, left edge: underarm, right edge: underarm}, {bind off: all, edge: top}]}
joins:
  - {sew: Front shoulder, to: Back shoulder}
  - {sew: Front side, to: Back side}
  - {sew: [Sleeve left underarm, Sleeve top, Sleeve right underarm], into: [Front armhole, Back armhole]}
`), 0)
	n := 0
	for _, p := range assembled(g).placed {
		if p.made.Kind == schematic.KindSleeve {
			n++
			_, hi := box(p.drawn)
			assert.InDelta(t, 0, p.where.cos, 1e-9)
			assert.InDelta(t, 480, hi.Y, close)
		}
	}
	assert.Equal(t, 2, n)
}

// A front and a back that are sewn together between the legs: 10 stitches (5 cm) below, 40 at the hip (40 cm around), a leg's opening of twice the way from one to the other,
// 15 stitches (7.5 cm) over 20 rows (10 cm).
func TestACrotchIsNoHemAround(t *testing.T) {
	half := `sections: [{cast on: 40, edge: waist}, {even: 30 rows, left edge: side, right edge: side}, {decrease: 3, at: both edges, every: 4 rows, times: 5, edge: leg}, {bind off: all, edge: crotch}]}`
	g := schematic.Work(written(t, inTens+`
  - {piece: Front, worked: "flat, from the waist", `+half+`
  - {piece: Back, worked: "flat, from the waist", `+half+`
joins: [{sew: Front side, to: Back side}, {sew: Front crotch, to: Back crotch}]
`), 0)
	Dress(g)
	got := lengths(g.Worn)
	assert.InDelta(t, 50, got["crotch"], close)
	assert.InDelta(t, 400, got["hip"], 0.5)
	assert.InDelta(t, 250, got["leg opening"], 0.5)
	assert.NotContains(t, got, "hem")
}

// The opening of a shrug lies between its sleeves, whatever lies beside them: 12 cm after sleeves of 10 cm with cuffs of 5 cm.
func TestTheOpeningOfAShrugLiesBetweenItsSleeves(t *testing.T) {
	g := schematic.Work(written(t, inTens+`
  - piece: Shrug
    worked: flat, from the left side
    top edge: upper edge
    bottom edge: lower edge
    sections:
      - {cast on: 60, edge: cuff}
      - even: 10 rows
      - {even: 20 rows, top edge: a, bottom edge: b}
      - {even: 24 rows, top edge: neck, bottom edge: back}
      - {even: 20 rows, top edge: c, bottom edge: d}
      - {even: 10 rows, top edge: upper edge, bottom edge: lower edge}
      - {bind off: all, edge: other cuff}
joins: [{sew: Shrug a, to: Shrug b}, {sew: Shrug c, to: Shrug d}]
`), 0)
	Dress(g)
	assert.InDelta(t, 120, lengths(g.Worn)["opening"], close)
	assert.InDelta(t, 100, lengths(g.Worn)["sleeve length"], close)
}

// A tie that is sewn by the edge it begins with to the tip of an earflap hangs down from it, 25 cm.
func TestATieHangsFromAnEarflap(t *testing.T) {
	g := schematic.Work(written(t, inTens+`
  - {piece: Hat, worked: "in the round, from the hem", sections: [{cast on: 80, edge: brim}, even: 40 rows, gather: ]}
  - {piece: Earflap, make: 2, sections: [{cast on: 20, edge: top}, {decrease: 2, at: both edges, every: 4 rows, times: 4}, {bind off: all, edge: tip}]}
  - {piece: Tie, make: 2, sections: [{cast on: 4, edge: end}, even: 50 rows, bind off: all]}
joins:
  - {sew: Earflap top, to: Hat brim, how: in 2 places}
  - {sew: Tie end, to: Earflap tip}
`), 0)
	n := 0
	for _, p := range assembled(g).placed {
		if lo, _ := box(p.drawn); p.made.Name == "Tie" {
			n++
			assert.InDelta(t, -80-250, lo.Y, close)
		}
	}
	assert.Equal(t, 2, n)
}
