package yarn

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// By hand: 1 oz is 28.349523125 g and 1 yd 0.9144 m (both exact, the international pound and yard of 1959).
func TestWeightsAndLengthsAsTheyAreWritten(t *testing.T) {
	for text, want := range map[string]string{"412 g": "412", "14.5 gms": "14.5", "2 oz": "56.699", "½ ounce": "14.175", "0 g": "", "12": "", "12 cm": "", "1 g 2 g": "", "": "", "3.5g": "3.5", "1.5.": "", "7 grammes": "7"} {
		w, bad := ParseWeight(text)
		got := units.Decimal(w, 3)
		if bad != nil {
			got = ""
			assert.Equal(t, "this is not a weight", bad.Message)
			assert.Equal(t, expr.Span{End: len([]rune(text))}, bad.Span)
		}
		assert.Equal(t, want, got, text)
	}
	for text, want := range map[string][2]string{"50 g, 120 m": {"50", "120000"}, "100 g / 220 yd": {"100", "201168"}, "50 g": {"50", "0"}, "120 metres": {"0", "120000"}, "50 g, 120 m (131 yds)": {"50", "120000"}, "131 yards or 120 m, 50 g or 1 oz": {"50", "119786.4"}, "0 g, 0 m": {}, "wool": {}, "0 g, 5 m": {"0", "5000"}, "0 m 7 g": {"7", "0"}} {
		b, ok := FindBall(text)
		got := [2]string{}
		if ok {
			got = [2]string{units.Decimal(b.Grams, 3), units.Decimal(b.Length, 3)}
		}
		assert.Equal(t, want, got, text)
	}
	for text, want := range map[string]string{"10 %": "0.1", "0 %": "0", "200 percent": "2", "201 %": "", "0.25": "0.25", "2": "2", "2.01": "", "10 g": "", "-10 %": "", "1 2": "", "half": "", "0": "0", "½": "0.5"} {
		v, bad := ParseAllowance(text)
		got := v.String()
		if bad != nil {
			got = ""
		}
		assert.Equal(t, want, got, text)
	}
}

func TestSwatchesAsTheyAreWritten(t *testing.T) {
	for text, want := range map[string][5]string{ // g, mm wide and high, stitches and rows
		"12 g over 15 x 16 cm": {"12", "150", "160", "0", "0"}, "1 oz over 6 in by 5 in": {"28.35", "152.4", "127", "0", "0"}, "12 g over 6 in x 10 cm": {"12", "152.4", "100", "0", "0"}, "12 g over 15 × 16 cm": {"12", "150", "160", "0", "0"}, "12 g over 15, 16 cm": {"12", "150", "160", "0", "0"},
		"12 g over 30 sts and 40 rows": {"12", "0", "0", "30", "40"}, "12 g over 30 stitches, 40 rounds": {"12", "0", "0", "30", "40"}, "12 g over 200 x 200 cm": {"12", "2000", "2000", "0", "0"},
	} {
		s, bad := ParseSwatch(text)
		require.Nil(t, bad, text)
		assert.Equal(t, want, [5]string{units.Decimal(s.Grams, 2), s.Width.String(), s.Height.String(), s.Stitches.String(), s.Rows.String()}, text)
	}
	for text, want := range map[string]string{
		"12 g over 200.1 x 20 cm": "a swatch is larger than nothing and smaller than two metres", "12 g over 20 x 200.1 cm": "a swatch is larger than nothing and smaller than two metres", "12 g over 0 x 5 cm": "a swatch is larger than nothing and smaller than two metres", "12 g over 5 x 0 cm": "a swatch is larger than nothing and smaller than two metres",
		"12 g over 0 sts and 40 rows": "a swatch has stitches and rows", "12 g over 30 sts and 0 rows": "a swatch has stitches and rows", "12 cm over 5 x 5 cm": "a swatch has a weight in g or oz", "0 g over 5 x 5 cm": "a swatch has a weight in g or oz", "12 g over 5 ells x 5 cm": `"ells" is not a unit of length`,
		"12 g over 5 x 5": "a swatch is measured in cm or in, or counted in sts and rows", "12 g over 5 sts and 5 cm": `"sts" is not a unit of length`, "12 g": "this is not the weight of a swatch", "1 g 2 g 3 g 4 g": "this is not the weight of a swatch",
	} {
		_, bad := ParseSwatch(text)
		if assert.NotNil(t, bad, text) {
			assert.Equal(t, want, bad.Message, text)
		}
	}
}

// By hand, as above for the scarf: 1600 cm² at 3 g for 100 cm² and 100 at 4 g; with a tenth 57.2 g, which are 1.14 balls; in inches 248 and 16 square inches (of 6.4516 cm²), at 19.35 and 25.81 g for 100 of them.
func TestTheSumOfTheYarnIsWrittenOut(t *testing.T) {
	p := scarf()
	w := schematic.Weights{Swatches: []schematic.Swatch{swatch(t, "3 g over 10 x 10 cm", "FABRIC"), swatch(t, "4 g over 10 x 10 cm", "rib")}, Ball: schematic.Ball{Grams: units.Int(50)}, Allowance: units.Frac(1, 10)}
	needs, _ := Reckon(bysize.WorkAll(p), w)
	assert.Equal(t, []string{"fabric: 1600 cm² at 3 g for 100 cm² = 48 g", "rib: 100 cm² at 4 g for 100 cm² = 4 g", "52 g + 10 % allowance = 57.2 g", "57.2 g / 50 g a ball = 1.14, so 2"}, needs[0].Lines)
	assert.Equal(t, []any{"S", 2, units.Num{}}, []any{needs[0].Size, needs[0].Balls, needs[0].Metres})
	p.Units, p.Gauges[0].Name, w.Allowance, w.Ball.Grams = units.Inch, "", units.Num{}, units.Int(26)
	p.Pieces[0].Sections[2].Base().Gauge, w.Swatches[0].Gauge = "", ""
	p.Pieces[0].Sections = p.Pieces[0].Sections[:2]
	needs, _ = Reckon(bysize.WorkAll(p), w)
	assert.Equal(t, []string{"rib: 16 in² at 25.81 g for 100 in² = 4 g", "4 g / 26 g a ball = 0.15, so 1"}, needs[0].Lines)
	w.Ball.Grams = units.Int(4)
	needs, _ = Reckon(bysize.WorkAll(p), w)
	assert.Equal(t, 1, needs[0].Balls, "to the gram")
	assert.Equal(t, "fabric", gaugeName(p, 0))
	none, found := Reckon(nil, w)
	assert.Nil(t, none)
	assert.Empty(t, found)
}

// By hand: the sample's 52 g less 100 cm² of rib at 4 g, or at 52 g or more; a sample beside two swatches says nothing.
func TestWhatASampleSays(t *testing.T) {
	rib, fabric := swatch(t, "4 g over 10 x 10 cm", "rib"), swatch(t, "3 g over 10 x 10 cm", "fabric")
	for _, c := range []struct {
		sample  int64
		list    []schematic.Swatch
		net     string
		message string
	}{
		{52, []schematic.Swatch{rib}, "52", ""}, {4, []schematic.Swatch{rib}, "", "the swatches alone weigh more than the whole sample"}, {3, []schematic.Swatch{rib}, "", "the swatches alone weigh more than the whole sample"}, {99, []schematic.Swatch{rib, fabric}, "52", ""}, {17, nil, "17", ""},
	} {
		needs, found := Reckon(bysize.WorkAll(scarf()), schematic.Weights{Sample: units.Int(c.sample), Swatches: c.list})
		got, message := "", ""
		if len(needs) > 0 {
			got = needs[0].Net.String()
		}
		if len(found) > 0 {
			message = found[0].Message
		}
		assert.Equal(t, []string{c.net, c.message}, []string{got, message}, "%+v", c)
	}
	p := scarf()
	for _, at := range []int{-1, 2} {
		p.Sample = at
		_, found := Reckon(bysize.WorkAll(p), schematic.Weights{Sample: units.Int(52)})
		assert.Equal(t, "the sample has a weight, and its size is missing", found[0].Message)
	}
	p.Sample = 1
	needs, _ := Reckon(bysize.WorkAll(p), schematic.Weights{Sample: units.Int(156)})
	assert.Equal(t, []string{"52", "156"}, []string{needs[0].Net.String(), needs[1].Net.String()}, "a sample of the second size, a third of which is the first")
}

// By hand, for 57.2 g with a tenth and 52 without, balls of 50 g: 52 and 57.2 are just enough, 1.25 x 57.2 + 50 = 121.5 just not too much.
func TestHowMuchYarnIsEnough(t *testing.T) {
	need := []Need{{Size: "S", Net: units.Int(52), Grams: units.Frac(572, 10), Balls: 2}}
	for grams, want := range map[string]string{
		"51.9": "there is not enough yarn for this size, even without an allowance", "52": "there is enough yarn for this size, but not with the allowance", "57.1": "there is enough yarn for this size, but not with the allowance", "57.2": "", "121.5": "", "121.6": "much more yarn is stated than this size takes",
	} {
		n, _ := units.ParseNum(grams)
		p := scarf()
		p.Yarn = []schematic.Material{{Text: "g of wool", Amount: expr.Of(n)}}
		found := Compare(p, need, schematic.Ball{Grams: units.Int(50)})
		got := ""
		if len(found) > 0 {
			got = found[0].Message
			assert.Equal(t, []string{"57 g", "say 2 balls"}, []string{found[0].Want, found[0].Fix})
			assert.Contains(t, found[0].Have, grams+" g, ")
		}
		assert.Equal(t, want, got, grams)
	}
	same := func(message, have, want string) finding.Finding {
		return finding.Finding{Message: message, Have: have, Want: want, Sizes: []string{"S"}}
	}
	l := merge(finding.List{same("a", "b", "c")}, same("a", "b", "c"))
	assert.Equal(t, []string{"S", "S"}, l[0].Sizes)
	for _, f := range []finding.Finding{same("x", "b", "c"), same("a", "x", "c"), same("a", "b", "x")} {
		assert.Len(t, merge(l, f), 2)
	}
}
