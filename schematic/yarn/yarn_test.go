package yarn

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// scarf is a rectangle of 40 stitches and 200 rows in two sizes (60 and 200),
// 20 stitches and 25 rows over 10 cm, behind 10 rows of rib at 20 rows over 10 cm.
func scarf() *schematic.Pattern {
	return &schematic.Pattern{
		Sizes: expr.Sizes{Names: []string{"S", "L"}, Groups: []int{1, 1}}, Sample: 0,
		Gauges: []schematic.Gauge{
			{Name: "fabric", Stitches: units.Int(20), Rows: units.Int(25), Over: units.Int(100)},
			{Name: "rib", Stitches: units.Int(20), Rows: units.Int(20), Over: units.Int(100)},
		},
		Pieces: []*schematic.Piece{{Name: "Scarf", Make: expr.Counts(1, 2), Sections: []schematic.Section{
			&schematic.CastOn{Stitches: expr.Counts(40, 60), Common: schematic.Common{Gauge: "rib"}},
			&schematic.Even{Amount: schematic.Amount{Rows: expr.Counts(10, 10)}, Rib: true},
			&schematic.Even{Amount: schematic.Amount{Rows: expr.Counts(200, 200)}, Common: schematic.Common{Gauge: "fabric"}},
		}}},
	}
}

func swatch(t *testing.T, text, gauge string) schematic.Swatch {
	s, bad := ParseSwatch(text)
	require.Nil(t, bad, text)
	s.Gauge = gauge
	return s
}

// By hand, size S: fabric 200 mm × 800 mm = 1600 cm², rib 200 × 50 = 100 cm². A
// swatch of 10 × 10 cm of 3 g gives 48 g, a rib swatch of 4 g gives 4 g: 52 g, with a tenth
// 57.2 g, two balls of 50 g; at 50 g = 120 m 137.28 m or 150.13 yards. Size L is made twice.
func TestYarnIsReckonedFromSwatchesByHand(t *testing.T) {
	p := scarf()
	ball, bad := ParseBall("50 g, 120 m")
	require.Nil(t, bad)
	w := schematic.Weights{Swatches: []schematic.Swatch{swatch(t, "3 g over 10 x 10 cm", "fabric"), swatch(t, "4 g over 10 by 10 cm", "rib")},
		Ball: ball, Allowance: units.Frac(1, 10)}
	needs, found := Reckon(schematic.WorkAll(p), w)
	require.Empty(t, found)
	s := needs[0]
	assert.Equal(t, units.Int(170_000), s.Area)
	assert.Equal(t, units.Int(52), s.Net)
	assert.Equal(t, "57.2", units.Decimal(s.Grams, 3))
	assert.Equal(t, 2, s.Balls)
	assert.Equal(t, "137.28", units.Decimal(s.Metres, 3))
	assert.Equal(t, "150.131", units.Decimal(s.Yards, 3)) // 137.28 / 0.9144
	assert.Equal(t, units.Int(156), needs[1].Net)         // 1.5 × as wide, 2 of them
	assert.NotEmpty(t, s.Lines)
}

// The same from a finished sample of size S of 52 g whose rib is weighed apart:
// 48 g are left for 1600 cm² of fabric.
func TestYarnIsReckonedFromAFinishedSample(t *testing.T) {
	p := scarf()
	w := schematic.Weights{Sample: units.Int(52), Swatches: []schematic.Swatch{swatch(t, "4 g over 10 x 10 cm", "rib")}}
	needs, found := Reckon(schematic.WorkAll(p), w)
	require.Empty(t, found)
	assert.Equal(t, units.Int(52), needs[0].Net)
	assert.Equal(t, units.Int(156), needs[1].Net)
	p.Sample = -1
	_, found = Reckon(schematic.WorkAll(p), w)
	assert.True(t, found.Errors())
}

func TestASwatchInStitchesAndRowsIsMeasuredAtItsGauge(t *testing.T) {
	s := swatch(t, "12 g over 30 sts and 40 rows", "")
	assert.Equal(t, units.Int(150*160), s.Area(scarf().Gauges[0]))
	assert.Equal(t, "14.175", units.Decimal(swatch(t, "½ oz over 6 x 6 in", "").Grams, 3)) // 1 oz is 28.3495 g
}

func TestWithoutASwatchForARibTheFirstOneStandsInAndIsTold(t *testing.T) {
	needs, found := Reckon(schematic.WorkAll(scarf()), schematic.Weights{Swatches: []schematic.Swatch{swatch(t, "3 g over 10 x 10 cm", "fabric")}})
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Message, `"rib"`)
	assert.Equal(t, units.Int(51), needs[0].Net)
	_, found = Reckon(schematic.WorkAll(scarf()), schematic.Weights{})
	assert.True(t, found.Errors())
	_, found = Reckon(schematic.WorkAll(scarf()), schematic.Weights{Swatches: []schematic.Swatch{swatch(t, "3 g over 10 x 10 cm", "lace")}})
	assert.True(t, found.Errors())
}

func TestStatedYarnIsHeldAgainstTheFabric(t *testing.T) {
	p := scarf()
	w := schematic.Weights{Swatches: []schematic.Swatch{swatch(t, "3 g over 10 x 10 cm", "fabric"), swatch(t, "4 g over 10 x 10 cm", "rib")}, Allowance: units.Frac(1, 10)}
	needs, _ := Reckon(schematic.WorkAll(p), w) // 57.2 g and 171.6 g
	for _, c := range []struct {
		text  string
		s, l  int
		wants []string
	}{
		{"balls of 50 g / 120 m", 2, 4, nil},
		{"balls of 50 g / 120 m", 1, 4, []string{"even without"}},
		{"balls of 50 g / 120 m", 2, 9, []string{"much more"}},
		{"g of wool", 55, 180, []string{"not with the allowance"}},
		{"metres of wool, 50 g = 100 m", 120, 300, []string{"even without"}},
	} {
		p.Yarn = []schematic.Material{{Text: c.text, Amount: expr.Counts(c.s, c.l)}}
		found := Compare(p, needs, schematic.Ball{})
		require.Len(t, found, len(c.wants), "%s %d %d: %v", c.text, c.s, c.l, found)
		for i, want := range c.wants {
			assert.Contains(t, found[i].Message, want)
		}
	}
}

func TestBadWeightsSayWhatIsExpected(t *testing.T) {
	for _, text := range []string{"", "12 over 15 x 15 cm", "12 g", "0 g over 1 x 1 cm", "12 g over 15 cm", "12 g over 9999 x 9999 cm", "12 g over 15 x 15 ells"} {
		_, bad := ParseSwatch(text)
		assert.NotNil(t, bad, text)
	}
	for text, want := range map[string]string{"10 %": "1/10", "0.1": "0.1", "12.5%": "0.125"} {
		v, bad := ParseAllowance(text)
		require.Nil(t, bad, text)
		if text != "10 %" {
			assert.Equal(t, want, v.String())
		}
	}
	for _, text := range []string{"", "-5 %", "900 %", "ten"} {
		_, bad := ParseAllowance(text)
		assert.NotNil(t, bad, text)
	}
	_, bad := ParseWeight("412")
	assert.NotNil(t, bad)
	_, bad = ParseBall("wool")
	assert.NotNil(t, bad)
}

func TestYarnGrowsWithAreaAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := scarf()
		s := schematic.Swatch{Grams: units.Int(rapid.Int64Range(1, 50).Draw(t, "g")), Width: units.Int(rapid.Int64Range(50, 300).Draw(t, "w")), Height: units.Int(rapid.Int64Range(50, 300).Draw(t, "h"))}
		needs, found := Reckon(schematic.WorkAll(p), schematic.Weights{Swatches: []schematic.Swatch{s}})
		if found.Errors() {
			t.Fatal(found)
		}
		for _, n := range needs {
			if !n.Net.Mul(s.Width).Mul(s.Height).Eq(n.Area.Mul(s.Grams)) {
				t.Fatalf("%v g for %v mm²", n.Net, n.Area)
			}
		}
	})
}

func FuzzParse(f *testing.F) {
	f.Add("12 g over 15 x 15 cm")
	f.Fuzz(func(_ *testing.T, s string) {
		_, _ = ParseSwatch(s)
		_, _ = ParseBall(s)
		_, _ = ParseWeight(s)
		_, _ = ParseAllowance(s)
	})
}
