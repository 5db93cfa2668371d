package yarn

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
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
	needs, found := Reckon(bysize.WorkAll(p), w)
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
	needs, found := Reckon(bysize.WorkAll(p), w)
	require.Empty(t, found)
	assert.Equal(t, units.Int(52), needs[0].Net)
	assert.Equal(t, units.Int(156), needs[1].Net)
	p.Sample = -1
	_, found = Reckon(bysize.WorkAll(p), w)
	assert.True(t, found.Errors())
}

func TestASwatchInStitchesAndRowsIsMeasuredAtItsGauge(t *testing.T) {
	s := swatch(t, "12 g over 30 sts and 40 rows", "")
	assert.Equal(t, units.Int(150*160), s.Area(scarf().Gauges[0]))
	assert.Equal(t, "14.175", units.Decimal(swatch(t, "½ oz over 6 x 6 in", "").Grams, 3)) // 1 oz is 28.3495 g
}

func TestWithoutASwatchForARibTheFirstOneStandsInAndIsTold(t *testing.T) {
	needs, found := Reckon(bysize.WorkAll(scarf()), schematic.Weights{Swatches: []schematic.Swatch{swatch(t, "3 g over 10 x 10 cm", "fabric")}})
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Message, `"rib"`)
	assert.Equal(t, units.Int(51), needs[0].Net)
	_, found = Reckon(bysize.WorkAll(scarf()), schematic.Weights{})
	assert.True(t, found.Errors())
	_, found = Reckon(bysize.WorkAll(scarf()), schematic.Weights{Swatches: []schematic.Swatch{swatch(t, "3 g over 10 x 10 cm", "lace")}})
	assert.True(t, found.Errors())
}

func TestStatedYarnIsHeldAgainstTheFabric(t *testing.T) {
	p := scarf()
	w := schematic.Weights{Swatches: []schematic.Swatch{swatch(t, "3 g over 10 x 10 cm", "fabric"), swatch(t, "4 g over 10 x 10 cm", "rib")}, Allowance: units.Frac(1, 10)}
	needs, _ := Reckon(bysize.WorkAll(p), w) // 57.2 g and 171.6 g
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
		needs, found := Reckon(bysize.WorkAll(p), schematic.Weights{Swatches: []schematic.Swatch{s}})
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

// rectangle is a piece of so many stitches and rows in each size; at 10 stitches and rows over 10 cm they are its cm.
func rectangle(name string, pieces int, wide, high expr.Graded) *schematic.Piece {
	return &schematic.Piece{Name: name, Make: expr.Const(units.Int(int64(pieces)), len(wide.Vals)), Sections: []schematic.Section{
		&schematic.CastOn{Stitches: wide}, &schematic.Even{Amount: schematic.Amount{Rows: high}}}}
}

func published(pieces ...*schematic.Piece) []*schematic.Garment {
	n := len(pieces[0].Sections[0].(*schematic.CastOn).Stitches.Vals)
	p := &schematic.Pattern{Sizes: expr.Sizes{Names: []string{"1", "2", "3", "4", "5", "6", "7", "8", "9"}[:n], Groups: []int{n}}, Sample: 0, Pieces: pieces,
		Gauges: []schematic.Gauge{{Name: "fabric", Stitches: units.Int(10), Rows: units.Int(10), Over: units.Int(100)}}}
	return bysize.WorkAll(p)
}

// A cropped vest with a high neck (theknitmix.com, 'Mix and Match' vest): the finished chest and the metres of yarn
// in nine sizes. Its length is not published: as long in every size, the smallest size's 385 m give those of the others to
// one part in a hundred, so that its designer's yarn goes with the chest. What is left is the rounding of her metres and
// a neck and armholes that do not grow as the chest does.
func TestAPublishedVestTakesYarnAsItsFabricDoes(t *testing.T) {
	chest := expr.Counts(98, 108, 118, 128, 138, 148, 158, 168, 178)
	metres := []float64{385, 427, 461, 500, 540, 581, 623, 658, 701}
	needs, found := Reckon(published(rectangle("Vest", 1, chest, expr.Counts(45, 45, 45, 45, 45, 45, 45, 45, 45))),
		schematic.Weights{Sample: units.Int(385), Ball: schematic.Ball{Grams: units.Int(1), Length: units.Int(1000)}}) // of yarn of 1 m a gram
	require.Empty(t, found)
	for i, n := range needs {
		assert.InEpsilon(t, metres[i], n.Metres.Float(), 0.01, n.Size)
	}
}

// A jumper with a round yoke (knitsi.com, 'Yoke sweater', five sizes): chest 90 (98, 106, 114, 126) cm, length 64 (66, 67, 68, 68; the
// largest stands as 71 in its table) cm, sleeves 40 (41, 42, 42, 44) cm, 7 (7, 8, 9, 10) balls of 100 g. With sleeves of 27.5 % of the chest on
// an average (a cuff of 20 %, an upper arm of 35 %: the percentage system, from memory), a sample of 620 g, which takes 7 balls, gives all five. The
// difference between the 620 g and the 700 g that she buys is the last ball: whole balls hide up to 100 g.
func TestAPublishedJumperTakesItsBalls(t *testing.T) {
	needs, found := Reckon(published(
		rectangle("Body", 1, expr.Counts(90, 98, 106, 114, 126), expr.Counts(64, 66, 67, 68, 68)),
		rectangle("Sleeve", 2, expr.Counts(25, 27, 29, 31, 35), expr.Counts(40, 41, 42, 42, 44))),
		schematic.Weights{Sample: units.Int(620), Ball: schematic.Ball{Grams: units.Int(100)}})
	require.Empty(t, found)
	var balls []int
	for _, n := range needs {
		balls = append(balls, n.Balls)
	}
	assert.Equal(t, []int{7, 7, 8, 9, 10}, balls)
}

// By hand: a mat of sc from 6, six more in each of 15 rounds: 6 + 12 + 18 + … + 96 = 816 stitches. At 10 stitches and 10 rounds over 10 cm
// each is 1 cm²; the slant from 6 to 96 would make 771.
func TestADiscTakesTheYarnOfItsStitches(t *testing.T) {
	p := scarf()
	p.Gauges[0] = schematic.Gauge{Name: "fabric", Stitches: units.Int(10), Rows: units.Int(10), Over: units.Int(100), Stitch: "sc"}
	p.Pieces = []*schematic.Piece{{Name: "Mat", Round: true, From: schematic.FromCentre, Sections: []schematic.Section{
		&schematic.Ring{Stitches: expr.Counts(6)},
		&schematic.Shape{Shapings: []schematic.Shaping{{Increase: true, By: expr.Counts(6), At: schematic.Across, Every: expr.Counts(1), Times: expr.Counts(15)}}},
	}}}
	needs, _ := Reckon(bysize.WorkAll(p), schematic.Weights{Swatches: []schematic.Swatch{swatch(t, "1 g over 10 x 10 cm", "fabric")}})
	assert.Equal(t, "816", units.Decimal(SquareIn(needs[0].Area, units.CM), 3))
}

// A spinner's worked example (knitnmore.blogspot.com, June 2009, 'It all adds up'): a body of 40 in around and 18 in long at 5 stitches and 7 rows to
// the inch is 200 stitches of 126 rows; a yard made 45 stitches, so that it takes 560 yards.
func TestAPublishedBodyTakesTheYardsOfItsStitches(t *testing.T) {
	g := published(rectangle("Body", 1, expr.Counts(200), expr.Counts(126)))
	inch := units.Frac(254, 10)
	g[0].Pattern.Gauges[0] = schematic.Gauge{Name: "fabric", Stitches: units.Int(5), Rows: units.Int(7), Over: inch}
	ball, bad := ParseBall("100 g, 100 yd")
	require.Nil(t, bad)
	needs, found := Reckon(bysize.WorkAll(g[0].Pattern), schematic.Weights{Swatches: []schematic.Swatch{swatch(t, "1 g over 45 sts and 1 row", "fabric")}, Ball: ball})
	require.Empty(t, found)
	assert.Equal(t, "560", units.Decimal(needs[0].Yards, 2))
	assert.Equal(t, "720", units.Decimal(SquareIn(needs[0].Area, units.Inch), 3), "40 x 18 in")
}

// A designer's worked example (lindysknitslaces.com, August 2020, 'How to knit a helpful swatch', part 4): a back and a front of 20 by 28 in and two
// sleeves of 8 and 15 in that are 18 in long are 1120 and, by the trapezoid, 2 x 207 square inches. Here at 10 stitches and rows to the inch: 35 increases
// every 5 rows leave 5 rows of the 180, which are 1.75 more.
func TestAPublishedJumperHasItsArea(t *testing.T) {
	sleeve := &schematic.Piece{Name: "Sleeve", Make: expr.Counts(2), Sections: []schematic.Section{&schematic.CastOn{Stitches: expr.Counts(80)},
		&schematic.Shape{Shapings: []schematic.Shaping{{Increase: true, By: expr.Counts(1), At: schematic.BothEdges, Every: expr.Counts(5), Times: expr.Counts(35)}},
			Amount: schematic.Amount{Rows: expr.Counts(180)}}}}
	g := published(rectangle("Back", 2, expr.Counts(200), expr.Counts(280)), sleeve)
	g[0].Pattern.Gauges[0] = schematic.Gauge{Name: "fabric", Stitches: units.Int(10), Rows: units.Int(10), Over: units.Frac(254, 10)}
	needs, found := Reckon(bysize.WorkAll(g[0].Pattern), schematic.Weights{Swatches: []schematic.Swatch{swatch(t, "1 g over 10 x 10 cm", "fabric")}})
	require.Empty(t, found)
	assert.InDelta(t, 1120+2*(207+1.75), SquareIn(needs[0].Area, units.Inch).Float(), 0.01)
}
