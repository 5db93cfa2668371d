package expr

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Each text is the shortest or the nearest on one side of a bound; its neighbour on the other side stands beside it.
func TestLinesAtTheirBounds(t *testing.T) {
	for _, w := range []told{
		{"(12, 13", "(", "this bracket is never closed", "add )"},
		{"((12, 13))", "(", "a bracket opens inside a bracket", "close the first bracket before the next one opens"},
		{"12 rows (13 sts, 14) (15)", "sts", `"rows" and "sts" are on one line`, "write the unit once, after the last number"},
		{"12 cm (13 rows, 14) (15)", "rows", `"cm" and "rows" are on one line`, "write the unit once, after the last number"},
		{"(12, cm)", "cm", `"cm" is not a number`, ""},
		{"8-x", "8-x", `"8-x" is not a number`, ""},
		{"8 to x", "8 to x", `"8 to x" is not a number`, ""},
		{"12 (13 ~5, 14) (15)", "13 ~5", `"13 ~5" is not a number`, ""},
		{"12 (13 ~, 14) (15)", "13 ~", `"13 ~" is not a number`, ""},
		{"12 (13 !, 14) (15)", "13 !", `"13 !" is not a number`, ""},
		{"1.2.3", "1.2.3", `"1.2.3" is not a number`, ""},
		{"14.", "14.", `"14." is not a number`, ""},
		{"14.x", "14.x", `"14.x" is not a number`, ""},
		{"1/", "1/", `"1/" is not a number`, ""},
		{"1/x", "1/x", `"1/x" is not a number`, ""},
		{"nonecm", "nonecm", `"nonecm" is not a number`, ""},
		{"none ~", "none ~", `"none ~" is not a number`, ""},
		{"15 3/2", "3/2", "two numbers with no comma between them", "put a comma before it"},
		{"1,2,3", "1,2,3", "3 numbers for 4 sizes", "add a number for 1X, or a dash (–) where a size has none"},
		{"12 (13),5 (14, 15)", "15", "5 numbers for 4 sizes", "take out 1 number; 15 may be one too many"},
		{"(12,13,14) 15,5", "15,5", "5 numbers for 4 sizes", "a comma separates the sizes: write a decimal with a point, 15.5"},
	} {
		_, p := ParseLine(w.text, four)
		w.held(t, p)
	}
	_, p := ParseLine("1,5", alone)
	told{"1,5", "1,5", "2 numbers for 1 size", "a comma separates the sizes: write a decimal with a point, 1.5"}.held(t, p)
	_, p = ParseLine("1 (2, 3)", two)
	told{"1 (2, 3)", "3", "3 numbers for 2 sizes", "take out the extra ones for M: 2 numbers"}.held(t, p)
	_, p = ParseLine("12;5", Sizes{Names: []string{"S", "M", "L"}, Groups: []int{3}})
	told{"12;5", "12;5", "2 numbers for 3 sizes", "add a number for L, or a dash (–) where a size has none"}.held(t, p)
	for _, r := range "@[`{\u02ff" { // beside A, Z, a and z, and below the first letter that is none of ours
		_, p := ParseLine("5 "+string(r), alone)
		assert.NotNil(t, p, "%q", r)
	}
	for text, words := range map[string]string{"5 a": "a", "5 z": "z", "5 A": "A", "5 Z": "Z", "5 \u0300": "\u0300", "(5) cm": "cm", "8 to": "to", "5 ": "", "8-10": "", "8-10 cm": "cm", "8 to9": "", "8 to  10": ""} {
		l, p := ParseLine(text, alone)
		if assert.Nil(t, p, text) {
			assert.Equal(t, words, l.Words, text)
			assert.Equal(t, text != "8 to" && text[0] == '8', l.Ranged, text)
		}
	}
	for text, want := range map[string]units.Num{"1⅔": units.Frac(5, 3), "0.25": units.Frac(1, 4), "9 9/10": units.Frac(99, 10), "123456789": units.Int(123456789), "15 10/12": units.Frac(95, 6)} {
		l, p := ParseLine(text, alone)
		if assert.Nil(t, p, text) {
			assert.True(t, want.Eq(l.Low.Vals[0]), text)
		}
	}
	for _, text := range []string{"12345678901 1/2", "1 1/12345678901", "1 1/1"} {
		_, p := ParseLine(text, alone)
		assert.NotNil(t, p, text)
	}
}

func TestTwoUnitsAtTheirBounds(t *testing.T) {
	for _, w := range []told{
		{" / 5 in", "/ 5 in", `"/ 5 in" is not a number`, ""},
		{"1 /2", "1 /2", `"1 /2" is not a number`, ""},
	} {
		_, p := ParseLength(w.text, alone, units.CM)
		w.held(t, p)
	}
	l, p := ParseLength("½/1 in", alone, units.CM)
	require.Nil(t, p)
	assert.True(t, units.Int(5).Eq(l.Low.Vals[0]))
	assert.True(t, units.Frac(254, 10).Eq(l.Other.Vals[0]))
}

func TestSumsAtTheirBounds(t *testing.T) {
	for text, want := range map[string]units.Num{
		"12 -2": units.Int(10), "2x3": units.Int(6), "half of(12)": units.Int(6),
		strings.Repeat("-1 + ", 39) + "-1": units.Int(-40), strings.Repeat("half of 2 + ", 39) + "half of 2": units.Int(40),
	} {
		s, p := ParseSum(text)
		if assert.Nil(t, p, text) {
			v, p := s.Eval(env)
			assert.Nil(t, p, text)
			assert.True(t, want.Eq(v.N), "%s is %s", text, v.N)
		}
	}
	for _, text := range []string{strings.Repeat("(", 40) + "1" + strings.Repeat(")", 40), strings.Repeat("-", 40) + "1", strings.Repeat("half of ", 40) + "1", strings.Repeat("1/2 of ", 40) + "1"} {
		_, p := ParseSum(text)
		assert.NotNil(t, p, text)
	}
	told{"2xbust", "xbust", `"xbust" can't stand here in a sum`, "put +, −, x or / before it"}.held(t, second(ParseSum("2xbust")))
	for _, text := range []string{"{", "`", "[", "@", "¿"} {
		told{text, text, `"` + text + `" can't stand here in a sum`, ""}.held(t, second(ParseSum(text)))
	}
	s, p := ParseSum("aZ + zA + À + half o")
	require.Nil(t, p)
	assert.Equal(t, []string{"aZ", "zA", "À", "half o"}, s.Names())
	assert.Equal(t, Span{8, 9}, s.Root.Left.At, "the second plus")
}

func second(_ *Sum, p *Problem) *Problem { return p }

func TestLinesOfTextsAndFindingsAtTheirBounds(t *testing.T) {
	assert.Equal(t, "5", four.Line([]string{"5", "5", "5", "5"}))
	assert.Equal(t, "5 (5, 5) (6)", four.Line([]string{"5", "5", "5", "6"}))
	assert.Equal(t, "", Sizes{}.Line(nil))
	assert.Equal(t, "5", alone.Line([]string{"5"}))
	bracketed := func(n string) string { return "<" + n + ">" }
	for s, want := range map[string]string{"9 9/10 in": "<9 9/10> in", "10 0/9": "<10 0/9>", "3/x": "<3>/x", "3/": "<3>/", "9.5 in": "<9.5> in", "3.½": "3.½"} {
		assert.Equal(t, want, eachNumber(s, bracketed), s)
	}
	assert.Len(t, four.Merge(finding.List{sized("41 stitches", "S"), sized("42 stitches", "S")}), 2, "two numbers of one size")
	a, b := sized("41 stitches", "S"), sized("42 stitches", "M")
	a.Fix, b.Fix = "work 1 row", "skip it"
	assert.Equal(t, "S: work 1 row; M: skip it", four.Merge(finding.List{a, b})[0].Fix)
}

func TestRowsInASumAreReplacedAlone(t *testing.T) {
	twice := func(n units.Num) units.Num { return n.Times(2) }
	env := func(string) (Value, bool) { return Value{units.Int(40), Rows, true}, true }
	s, bad := ParseSum("deep - 10 rows + 2 x (deep - 1 row)")
	require.Nil(t, bad)
	v, bad := s.WithRows(twice).Eval(env)
	require.Nil(t, bad)
	assert.Equal(t, "96", v.N.String(), "40 - 20 + 2 × (40 - 2)")
	v, _ = s.Eval(env)
	assert.Equal(t, "108", v.N.String(), "the sum itself stays: 40 - 10 + 2 × 39")
	plain, _ := ParseSum("deep / 2")
	assert.Same(t, plain, plain.WithRows(twice))
}
