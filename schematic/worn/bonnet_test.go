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
