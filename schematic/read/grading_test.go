package read

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// gradedTunic is a tunic of two pieces and two sleeves whose every count is a sum.
var gradedTunic = func() string {
	text, err := os.ReadFile("../../testdata/grade/tunic.yaml")
	if err != nil {
		panic(err)
	}
	return string(text)
}()

func TestAGradedPatternIsWorkedOutAndHasNoFinding(t *testing.T) {
	p, found := Pattern("tunic.yaml", []byte(gradedTunic))
	require.Empty(t, found)
	// M by hand: 97 + 12 = 109, half is 54.5 cm, at 1.8 stitches a cm 98.1, of 4 + 2 the nearest is 98.
	cast, ok := p.Pieces[0].Sections[0].(*schematic.CastOn)
	require.True(t, ok)
	assert.Equal(t, 98, cast.Stitches.Int(2, 0))
	for i := range p.Sizes.Names {
		g := schematic.Work(p, i)
		assert.Empty(t, g.Findings, p.Sizes.Names[i])
		require.Len(t, g.Seams, 1)
		// The cap is as long as both armholes and the ease, to half a stitch; two of each are made or meet.
		s := g.Seams[0]
		half := p.Gauges[0].StitchWidth().Half().Float()
		assert.InDelta(t, 2*10, s.SewLength.Sub(s.IntoLength).Float(), 2*half+0.01, p.Sizes.Names[i])
	}
}

func TestWhatIsWrongWithAGradingHasItsPlace(t *testing.T) {
	for _, c := range []struct{ name, from, to, kind, message, fix string }{
		{"a length where stitches are needed", "cast on: back stitches   #", "cast on: bust   #", "file/unit", "is a length", "whole stitches"},
		{"stitches added to a length", "upper arm + 5 cm", "upper arm + 5 sts", "file/sum", "a number of stitches", ""},
		{"a name that is not there", "even: body rows", "even: bodi rows", "file/reference", `"bodi rows"`, `"body rows"`},
		{"a name in the grading that is not there", "stitches: cross back", "stitches: cros back", "file/reference", `"cros back"`, `"cross back"`},
		{"a circle", "ease: 12 cm", "ease: back stitches makes - bust", "file/cycle", "ease → back stitches → ease", ""},
		{"not whole", "cast on: cuff stitches", "cast on: cuff stitches / 3", "file/bounds", "must be whole", "round it"},
		{"none in one size", "decrease: 1\n", "decrease: 1 (1, 0, 1) (1, 1)\n", "file/bounds", "is 0", "write –"},
		{"a key of another kind", "rows: 44 cm, even: yes", "rows: 44 cm, rounds: 3", "file/conflict", `"rounds" does not go with "rows"`, ""},
		{"a repeat that is none", "multiple: 4 + 2", "multiple: four", "file/form", "not a repeat", ""},
		{"what cannot be", "rows: 44 cm, even: yes", "rows: 8 cm, even: yes", "grading/impossible", "do not fit", ""},
		{"no gauge", "multiple: 4 + 2}", "gauge: ribbing}", "file/reference", `no gauge called "ribbing"`, ""},
		{"numbers for each size in a sum", "ease: 1 cm}", "ease: 1 (1, 1, 2) (2, 2) cm}", "file/sum", "numbers for each size", "a line of their own"},
		{"a key missing", ", first: armhole first, ease", ", ease", "file/missing-key", `"cap" needs "first"`, ""},
	} {
		src := strings.Replace(gradedTunic, c.from, c.to, 1)
		require.NotEqual(t, src, gradedTunic, c.name)
		_, found := Pattern("tunic.yaml", []byte(src))
		hit := false
		for _, f := range found {
			if f.Kind == c.kind && strings.Contains(f.Message, c.message) && strings.Contains(f.Fix, c.fix) {
				hit = true
				assert.Positive(t, f.Pos.Line, c.name)
				assert.Positive(t, f.Pos.Col, c.name)
			}
		}
		assert.True(t, hit, "%s: %+v", c.name, found)
	}
}

// By hand, XS: 0.6 of a bust of 76 cm is 45.6 cm, at 18 stitches over 10 cm 82.08; numbers with a word behind them stay numbers.
func TestASumMayBeginWithANumber(t *testing.T) {
	src := strings.NewReplacer("back stitches: {stitches: (bust + ease) / 2, multiple: 4 + 2}", "back stitches: {stitches: 0.6 x bust, multiple: 4 + 2}",
		"ease: 12 cm", "ease: 0.1 x bust", "cuff stitches: {stitches: \"22 (22, 23, 24) (25, 26) cm\", even: yes}", "cuff stitches: {stitches: 40 sts}").Replace(gradedTunic)
	p, found := Pattern("tunic.yaml", []byte(src))
	require.Empty(t, found)
	got := map[string]units.Num{}
	for _, v := range p.Graded {
		got[v.Name] = v.Vals.Vals[0]
	}
	assert.Equal(t, "82", units.Decimal(got["back stitches"], 2))
	assert.Equal(t, "76", units.Decimal(got["ease"], 2)) // mm
	assert.Equal(t, "40", units.Decimal(got["cuff stitches"], 2))
}

func TestAFileWithoutGradingHasNoCalls(t *testing.T) {
	src := "pattern: x\nterms: US\nunits: cm\nsizes: M\ngauges: {fabric: 20 sts and 20 rows over 10 cm in sc}\npieces:\n  - piece: P\n    sections:\n      - cast on: lots\n"
	_, found := Pattern("x.yaml", []byte(src))
	require.Len(t, found, 1)
	assert.Equal(t, "file/number", found[0].Kind)
}
