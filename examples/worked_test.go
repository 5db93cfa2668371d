// Package examples holds the example patterns; its tests work three sizes of each by
// hand, step by step, and hold the program to them.
package examples

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/check"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
)

func garments(t *testing.T, file string) (*schematic.Pattern, []*schematic.Garment) {
	t.Helper()
	src, err := os.ReadFile(file)
	require.NoError(t, err)
	p, found := read.Pattern(file, src)
	require.Empty(t, found)
	return p, bysize.WorkAll(p)
}

func piece(t *testing.T, g *schematic.Garment, name string) *schematic.Made {
	t.Helper()
	for _, m := range g.Pieces {
		if m.Name == name {
			return m
		}
	}
	require.Failf(t, "no such piece", name)
	return nil
}

// length is a measurement in mm, as an exact fraction.
func length(t *testing.T, m *schematic.Made, id string) units.Num {
	t.Helper()
	var ids []string
	for _, s := range m.Measures {
		if s.ID == m.ID+"."+id {
			return s.Length
		}
		ids = append(ids, s.ID)
	}
	require.Failf(t, "no such measurement", "%s among %v", id, ids)
	return units.Num{}
}

// counts are the stitches after each section of a piece, parts included.
func counts(m *schematic.Made) []int {
	var out []int
	for _, s := range m.Steps {
		out = append(out, s.After)
	}
	return out
}

func TestEveryExampleHasNoFindingOfWeight(t *testing.T) {
	for _, file := range []string{"saltmarsh-cardigan.yaml", "fellside-jumper.yaml", "pebble-hat.yaml", "windlass-raglan.yaml"} {
		p, gs := garments(t, file)
		assert.Empty(t, check.Pattern(p, gs), file)
	}
}

// A stitch of the fabric is 100/16 mm wide and a row 100/9 mm high, a stitch of the
// rib 100/18 mm, a row of it 100/17 mm.
func TestTheCardiganComesOutAsWorkedByHand(t *testing.T) {
	_, gs := garments(t, "saltmarsh-cardigan.yaml")
	for _, c := range []struct {
		size                                   int
		row, sideRows, front, under, back      int
		times1, times2, shoulder, neck         int
		cuff, repeat, increases, top, armRows  int
		sleeveRows, neckEdgeRows, bandStitches int
	}{
		// XS: 31 + 4 + 62 + 4 + 31 = 132; 9 × 1 + 4 × 2 = 17 rows; 30 ÷ 3 × 4 = 40; 40 + 2 × 10 = 60.
		// Rows of the side 1 picked up + 29, of the sleeve 1 picked up + 1 + 30 + 1. The band: 10 + 10 along the ribs, 54 for the 30 rows of each
		// front edge, 9 × 3 + 2 × 2 for the 17 rows of each side of the neck (two in each of the first four of five rows), 26 for the back.
		{0, 132, 30, 31, 4, 62, 9, 4, 18, 26, 30, 40, 10, 60, 17, 33, 17, 20 + 2*54 + 2*31 + 26},
		// M: 37 + 8 + 74 + 8 + 37 = 164; 11 + 8 = 19 rows; 33 ÷ 3 × 4 = 44; 44 + 2 × 12 = 68.
		{2, 164, 30, 37, 8, 74, 11, 4, 22, 30, 33, 44, 12, 68, 19, 34, 19, 20 + 2*54 + 2*35 + 30},
		// 5X: 55 + 20 + 110 + 20 + 55 = 260; 12 + 12 = 24 rows; 42 ÷ 3 × 4 = 56; 56 + 2 × 15 = 86.
		{8, 260, 32, 55, 20, 110, 12, 6, 37, 36, 42, 56, 15, 86, 24, 31, 24, 20 + 2*58 + 2*44 + 36},
	} {
		g := gs[c.size]
		require.Equal(t, c.row, 2*c.front+2*c.under+c.back)
		require.Equal(t, c.neckEdgeRows, c.times1+2*c.times2)
		require.Equal(t, c.shoulder, c.front-c.times1-c.times2)
		require.Equal(t, c.back, 2*c.shoulder+c.neck)
		require.Equal(t, c.top, c.repeat+2*c.increases)

		body := piece(t, g, "Body")
		rib := units.Frac(100, 18).Times(10)
		assert.Equal(t, units.Frac(100, 17).Times(c.row), length(t, body, "width-at-hem"), g.Size)
		assert.Equal(t, units.Frac(100, 16).Times(c.row), length(t, body, "width-at-underarm"), g.Size)
		assert.Equal(t, rib, length(t, body, "depth-of-rib"))
		assert.Equal(t, rib.Add(units.Frac(100, 9).Times(c.sideRows+c.armRows)), length(t, body, "length"), g.Size)
		assert.Equal(t, units.Frac(100, 16).Times(c.neck), length(t, body, "back.neck-width"), g.Size)
		assert.Equal(t, units.Frac(100, 16).Times(c.shoulder), length(t, body, "right-front.shoulder.right"), g.Size)
		assert.Equal(t, units.Frac(100, 9).Times(c.neckEdgeRows), length(t, body, "left-front.front-neck-depth.left"), g.Size)
		assert.Equal(t, []int{0, c.row, c.row, c.shoulder, 0, c.back, 0, c.shoulder, 0, 0}, counts(body), g.Size)

		sleeve := piece(t, g, "Sleeve")
		assert.Equal(t, []int{0, c.cuff, c.repeat, c.top, c.top, 0}, counts(sleeve), g.Size)
		assert.Equal(t, units.Frac(100, 16).Times(c.top), length(t, sleeve, "upper-arm"), g.Size)
		assert.Equal(t, rib.Add(units.Frac(100, 9).Times(c.sleeveRows)), length(t, sleeve, "sleeve-length"), g.Size)

		band := piece(t, g, "Front and neck band")
		assert.Equal(t, c.bandStitches, band.Steps[0].After, g.Size)
	}
}

// A stitch is a quarter of an inch wide and a row a third of an inch high. The
// edges of cap and armhole are reckoned from their slants: √(¼² + ⅓²) = 5/12 in for
// one stitch decreased in every row, √(¼² + ⅔²) for one in every second row.
func TestTheJumperComesOutAsWorkedByHand(t *testing.T) {
	_, gs := garments(t, "fellside-jumper.yaml")
	inch := func(n, d int64) units.Num { return units.Frac(n, d).Mul(units.Inch.MM()) }
	for _, c := range []struct {
		size                         int
		hem, off, less, back         int64
		even, armhole                int64
		neck, shoulder               int64
		cuff, upper, capSlow, cap, t int64
	}{
		{0, 74, 3, 4, 60, 15, 23, 26, 17, 36, 48, 0, 14, 14},
		{2, 90, 5, 7, 66, 15, 26, 28, 19, 38, 56, 2, 13, 16},
		{5, 114, 8, 13, 72, 12, 29, 32, 20, 40, 74, 1, 16, 24},
	} {
		g := gs[c.size]
		require.Equal(t, c.back, c.hem-2*c.off-2*c.less)
		require.Equal(t, c.armhole, 2+c.less+c.even+2)
		require.Equal(t, c.back, 2*c.shoulder+c.neck)
		require.Equal(t, c.t, c.upper-2*c.off-2*c.capSlow-2*c.cap)

		back := piece(t, g, "Back")
		assert.Equal(t, inch(c.hem, 4), length(t, back, "width-at-underarm"), g.Size)
		assert.Equal(t, inch(c.back, 4), length(t, back, "cross-back"), g.Size)
		assert.Equal(t, inch(c.armhole, 3), length(t, back, "armhole-depth.left"), g.Size)
		assert.Equal(t, inch(c.neck-2, 4).Add(inch(2, 4)), length(t, back, "neck-width"), g.Size)
		assert.Equal(t, inch(c.shoulder, 4), length(t, back, "left-shoulder.shoulder.left"), g.Size)
		front := piece(t, g, "Front")
		assert.Equal(t, length(t, back, "length"), length(t, front, "length"), g.Size)
		assert.Equal(t, length(t, back, "neck-width"), length(t, front, "front-neck-width"), g.Size)

		sleeve := piece(t, g, "Sleeve")
		assert.Equal(t, inch(c.upper, 4), length(t, sleeve, "upper-arm"), g.Size)
		assert.Equal(t, inch(2+2*c.capSlow+c.cap, 3), length(t, sleeve, "cap-height"), g.Size)

		// Four armhole edges, front and back: bound-off step, the two rows in which it is bound off
		// (an armhole is measured from the first of them, at both edges), slant, upright rest.
		arm := float64(c.off)/4 + float64(c.less)*5/12 + float64(c.armhole-2-c.less)/3
		var seam schematic.Seam
		for _, s := range g.Seams {
			if s.Join.Sew[0] == "Sleeve cap" {
				seam = s
			}
		}
		assert.InDelta(t, 25.4*4*(arm+2/3.0), seam.IntoLength.Float(), 0.02, g.Size)
	}
}

// Half of bust and ease, at 18 stitches over 4 in, to the multiple of 4 + 2: XS (30 + 4) / 2 =
// 17 in, 76.5, 78 sts; 1X 25 in, 112.5, 114 sts; 5X 33 in, 148.5, 150 sts, which is nearer
// than 146.
func TestTheRaglanIsGradedFromItsBodies(t *testing.T) {
	_, gs := garments(t, "windlass-raglan.yaml")
	for _, c := range []struct{ size, back, underarm int }{{0, 78, 5}, {4, 114, 8}, {8, 150, 12}} {
		back := piece(t, gs[c.size], "Back")
		n := counts(back)
		assert.Equal(t, c.back, n[0], gs[c.size].Size)
		assert.Equal(t, c.back-2*c.underarm, n[3], gs[c.size].Size)
		assert.Equal(t, units.Frac(4, 18).Times(c.back).Mul(units.Inch.MM()), length(t, back, "bust"), gs[c.size].Size)
		front, sleeve := piece(t, gs[c.size], "Front"), piece(t, gs[c.size], "Sleeve")
		assert.Equal(t, back.Steps[4].Rows, front.Steps[4].Rows)
		assert.Equal(t, back.Steps[4].Rows, sleeve.Steps[4].Rows, "the raglan edges are sewn row to row")
	}
}

func TestTheHatComesOutAsWorkedByHand(t *testing.T) {
	_, gs := garments(t, "pebble-hat.yaml")
	for _, c := range []struct{ size, n, rib, plain, times int }{{0, 72, 8, 22, 8}, {2, 88, 10, 28, 10}, {4, 104, 12, 34, 12}} {
		hat := piece(t, gs[c.size], "Hat")
		require.Equal(t, 8, c.n-8*c.times)
		assert.Equal(t, []int{c.n, c.n, c.n, 8, 0}, counts(hat))
		assert.Equal(t, units.Frac(100, 22).Times(c.n), length(t, hat, "brim"))
		assert.Equal(t, units.Frac(100, 30).Times(c.rib+c.plain+2*c.times), length(t, hat, "hat-depth"))
	}
}
