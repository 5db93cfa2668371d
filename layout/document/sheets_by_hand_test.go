package document

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

func sp(x, y float64) sheet.Point { return sheet.Point{X: x, Y: y} }

// By hand: what of a line lies on a sheet of 100 by 60 mm, as shares of its length.
func TestWhatOfALineLiesOnASheet(t *testing.T) {
	for _, c := range []struct {
		a, b   sheet.Point
		t0, t1 float64
		ok     bool
	}{
		{sp(10, 10), sp(90, 50), 0, 1, true}, {sp(-50, 30), sp(150, 30), 0.25, 0.75, true}, {sp(50, -30), sp(50, 90), 0.25, 0.75, true}, {sp(150, 30), sp(50, 30), 0.5, 1, true}, {sp(-10, 30), sp(-10, 40), 0, 0, false}, {sp(10, 70), sp(90, 70), 0, 0, false},
		{sp(-10, 50), sp(50, 110), 1.0 / 6, 1.0 / 6, false}, {sp(0, 0), sp(100, 0), 0, 1, true}, {sp(120, 30), sp(150, 30), 0, 0, false}, {sp(90, -10), sp(110, 10), 0.5, 0.5, false},
	} {
		t0, t1, ok := within(c.a, c.b, 100, 60)
		assert.Equal(t, c.ok, ok, "%+v", c)
		if ok {
			assert.InDeltaSlice(t, []float64{c.t0, c.t1}, []float64{t0, t1}, 1e-9, "%+v", c)
		}
	}
	// a W over the foot of the sheet whose corner is at 10, 10: it leaves and comes back
	got := clip([]sheet.Point{sp(20, 20), sp(40, 80), sp(60, 20), sp(80, 80), sp(100, 20)}, sp(10, 10), 100, 60)
	assert.Len(t, got, 3)
	assert.InDelta(t, 10+20*5.0/6, got[0][1].X, 1e-9)
	assert.InDelta(t, 60, got[0][1].Y, 1e-9)
	assert.Len(t, got[1], 3)
	assert.Equal(t, sp(50, 10), got[1][1])
	assert.Empty(t, clip([]sheet.Point{sp(0, 0), sp(5, 5)}, sp(10, 10), 100, 60))
}

// By hand: sheets of 190 by 260 mm of room that share Overlap, for a part of 300 by 200: with Overlap at either end, and the part in the middle.
func TestHowManySheetsAPartTakes(t *testing.T) {
	m := tile{w: 190, h: 260}
	o := float64(Overlap)
	assert.Equal(t, 1, m.needs(190-2*o, 190))
	assert.Equal(t, 2, m.needs(190-2*o+0.1, 190))
	assert.Equal(t, 2, m.needs(2*(190-o)+o-2*o, 190))
	assert.Equal(t, 3, m.needs(2*(190-o)+o-2*o+0.1, 190))
	assert.Equal(t, 1, m.needs(0, 190))
	p := &lifePart{name: "Back", w: 300, h: 200, cols: 2, rows: 1, page: map[[2]int]bool{{0, 0}: true, {1, 0}: true, {0, 1}: true}}
	all := 2*(190-o) + o
	assert.Equal(t, sp(-(all-300)/2, -30), m.origin(p, 0, 0))
	assert.Equal(t, sp(-(all-300)/2+190-o, -30), m.origin(p, 1, 0))
	lm := &lifeMap{lifePart: p, t: m}
	c := lm.corner(1, 1)
	assert.InDeltaSlice(t, []float64{-(all-300)/2 + 190 - o + o/2, -30 + 260 - o + o/2}, []float64{c.X, c.Y}, 1e-9)
	words := func(c, r int) (s string) {
		for _, w := range p.heading(c, r) {
			s += w.s
		}
		return s
	}
	assert.Equal(t, "Back, sheet "+tileName(0, 0)+" · right "+tileName(1, 0)+", below "+tileName(0, 1), words(0, 0))
	assert.Equal(t, "Back, sheet "+tileName(1, 0)+" · left "+tileName(0, 0), words(1, 0))
	assert.Equal(t, "Back, sheet "+tileName(0, 1)+" · above "+tileName(0, 0), words(0, 1))
	p.about = "make 2"
	assert.Equal(t, "Back, sheet "+tileName(2, 2)+" · make 2", words(2, 2))
}

func TestWhetherInIsAUnit(t *testing.T) {
	for _, c := range []struct {
		number, rest string
		want         bool
	}{{"2", " each stitch", false}, {"2½", " each stitch", true}, {"1/2", " x", true}, {"4.5", " x", true}, {"2", "", true}, {"2", ". Turn", true}, {"2", " from the edge", true}, {"2", " fromage", false}, {"10", " wide", true}, {"10", " the round", false}} {
		assert.Equal(t, c.want, inches(c.number, c.rest), "%+v", c)
	}
}

// By hand: four columns of 30 mm behind names of 80 on paper 150 wide: all four leave 30, which is less than 0.27 of it; two at a time leave 90.
func TestNamesWrapWhereATableHasFewerParts(t *testing.T) {
	for _, c := range []struct {
		names, beside, wide, want float64
	}{{80, 0, 150, 80}, {120, 0, 150, 90}, {120, 0, 165, 45}, {120, 20, 190, 110}, {120, 20, 210, 70}, {20, 0, 165, 20}} {
		k := &columns{grid: grid{first: 0}, w: []float64{c.names, 30, 30, 30, 30}}
		if c.beside > 0 {
			k.first, k.w = 1, []float64{c.names, c.beside, 30, 30, 30, 30}
		}
		k.narrow(c.wide)
		assert.InDelta(t, c.want, k.w[0], 1e-9, "%+v", c)
	}
}

// A swatch of 10 cm, or of 4 in, goes for the other; any other length is as it is.
func TestAGaugeInWords(t *testing.T) {
	p := &schematic.Pattern{}
	g := schematic.Gauge{Name: "rib", Stitches: units.Int(20), Rows: units.Frac(57, 2), Over: units.Int(100), OverUnit: units.CM}
	assert.Equal(t, "20 sts and 28½ rows over 10 cm / 4 in", gaugeText(g, p, false))
	assert.Equal(t, "rib: 20 sts and 28½ rows over 10 cm / 4 in", gaugeText(g, p, true))
	g.Over, g.OverUnit, g.Rounds, g.Stretched = units.Of(units.Int(4), units.Inch), units.Inch, true, true
	assert.Equal(t, "20 sts and 28½ rounds over 4 in / 10 cm, stretched", gaugeText(g, p, false))
	g.Over, g.OverUnit, g.Rounds, g.Stretched = units.Int(50), units.CM, false, false
	assert.Equal(t, "20 sts and 28½ rows over 5 cm", gaugeText(g, p, false))
	g.Over, g.OverUnit = units.Of(units.Int(1), units.Inch), units.Inch
	assert.Equal(t, "20 sts and 28½ rows over 1 in", gaugeText(g, p, false))
}
