package expr

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

var (
	four  = Sizes{Names: []string{"S", "M", "L", "1X"}, Groups: []int{1, 2, 1}}
	two   = Sizes{Names: []string{"S", "M"}, Groups: []int{1, 1}}
	alone = Sizes{Names: []string{"S"}, Groups: []int{1}}
)

// told is what a person reads of what is wrong: the words it is at, the message and what may help.
type told struct{ text, at, message, fix string }

func (w told) held(t *testing.T, p *Problem) {
	t.Helper()
	if !assert.NotNil(t, p, "%q", w.text) {
		return
	}
	assert.Equal(t, w.message, p.Message, "%q", w.text)
	assert.Equal(t, w.fix, p.Fix, "%q", w.text)
	chars := []rune(w.text)
	assert.Equal(t, w.at, string(chars[p.Span.Start:min(p.Span.End, len(chars))]), "%q", w.text)
	if i := slices.Index(chars, ' '); w.at != "" && i < 0 {
		assert.LessOrEqual(t, p.Span.End, len(chars), "%q", w.text)
	}
}

func TestWhatIsWrongInALineIsToldAtItsPlace(t *testing.T) {
	for _, w := range []told{
		{"12 (13, 14) (15", "(", "this bracket is never closed", "add )"},
		{"12 ((13, 14) 15)", "(", "a bracket opens inside a bracket", "close the first bracket before the next one opens"},
		{"12) 13", ")", "a bracket closes that was never opened", "take it out, or add the one that opens its group"},
		{"12 (13 14) (15)", "14", "two numbers with no comma between them", "put a comma before it"},
		{"12 (13, 14 15) (16)", "15", "two numbers with no comma between them", "put a comma before it"},
		{"1 15/2 (2, 3) (4)", "15/2", "two numbers with no comma between them", "put a comma before it"},
		{"12 (13, , 14) (15)", ",", "a number is missing here", "put in the number, or take the comma out"},
		{"()", ")", "a number is missing here", "put in the number, or take the comma out"},
		{"", "", "a number is missing here", ""},
		{"  ", "  ", "a number is missing here", ""},
		{"12 (13, 14) (15) (16)", "16", "5 numbers for 4 sizes", "take out 1 number; 16 may be one too many"},
		{"12 (13, 14, 15) (16)", "15", "5 numbers for 4 sizes", "take out the extra ones for M, L: 3 numbers"},
		{"12,5 (13,5, 14,5) (15,5)", "12,5", "8 numbers for 4 sizes", "a comma separates the sizes: write a decimal with a point, 12.5"},
		{"12 (13, 14,5) (15)", "14,5", "5 numbers for 4 sizes", "a comma separates the sizes: write a decimal with a point, 14.5"},
		{"12 (13,14,15) (16)", "15", "5 numbers for 4 sizes", "take out the extra ones for M, L: 3 numbers"}, // no comma has a space: none is a point
		{"12 cm (13 in, 14) (15)", "in", `"cm" and "in" are on one line`, "write the unit once, after the last number"},
		{"twelve (13, 14) (15)", "twelve", `"twelve" is not a number`, "write 12"},
		{"three rows", "three", `"three" is not a number`, "write 3"},
		{"two hundred", "two hundred", `"two hundred" is not a number`, ""},
		{"12 (13, 14) (zero)", "zero", `"zero" is not a number`, "write 0"},
		{"12 (13, 14) (99999999999)", "99999999999", "99999999999 is larger than any number in a pattern", "look for figures that were typed twice"},
		{"12 (14-13, 14) (15)", "14-13", "the range 14-13 goes backwards", ""},
		{"12 (13-14-15, 14) (15)", "13-14-15", `"13-14-15" is not a number`, ""},
		{"12 (13, 14) (fish)", "fish", `"fish" is not a number`, ""},
		{"12 (13, 14x2) (15)", "14x2", `"14x2" is not a number`, ""},
	} {
		_, p := ParseLine(w.text, four)
		w.held(t, p)
	}
	for _, w := range []told{
		{"12,5", "12,5", "2 numbers for 1 size", "a comma separates the sizes: write a decimal with a point, 12.5"},
		{"12, 5", "5", "2 numbers for 1 size", "take out 1 number; 5 may be one too many"},
		{"1 (2)", "2", "2 numbers for 1 size", "take out 1 number; 2 may be one too many"},
	} {
		_, p := ParseLine(w.text, alone)
		w.held(t, p)
	}
	_, p := ParseLine("1 (2) (3)", two)
	told{"1 (2) (3)", "3", "3 numbers for 2 sizes", "take out 1 number; 3 may be one too many"}.held(t, p)
	three := Sizes{Names: []string{"S", "M", "L"}, Groups: []int{3}}
	_, p = ParseLine("12,5", three)
	told{"12,5", "12,5", "2 numbers for 3 sizes", "write a decimal with a point: 12.5"}.held(t, p)
	_, p = ParseLine("12, 5", three)
	told{"12, 5", "12, 5", "2 numbers for 3 sizes", "add a number for L, or a dash (–) where a size has none"}.held(t, p)
	assert.Equal(t, []string{"L"}, p.Sizes)
}

func TestLinesThatAreWell(t *testing.T) {
	for text, want := range map[string][4]int64{ // lowest of each size, in quarters; -1: it has none
		"12 (13, 14) (15) cm": {48, 52, 56, 60}, "12 (13, 14) (15),": {48, 52, 56, 60}, "12, (13, 14), (15)": {48, 52, 56, 60},
		"8 to 10 (11 to12, 13) (14) rows": {32, 44, 52, 56}, "1 1/2 (2 3/4, 3) (4)": {6, 11, 12, 16}, "none cm (13, 14) (15)": {-1, 52, 56, 60},
		"- (–, none) (−)": {-1, -1, -1, -1}, "5": {20, 20, 20, 20}, "12 (13; 14) [15]": {48, 52, 56, 60}, "½ (¾, 1 ¼) (2½)": {2, 3, 5, 10},
	} {
		l, p := ParseLine(text, four)
		require.Nil(t, p, text)
		for i, q := range want {
			assert.Equal(t, q >= 0, l.Low.Has[i], text)
			if q >= 0 {
				assert.True(t, units.Frac(q, 4).Eq(l.Low.Vals[i]), "%s: %s", text, l.Low.Vals[i])
			}
		}
	}
	l, p := ParseLine("8 to 10 (11-12, 13) (14) rows", four)
	require.Nil(t, p)
	assert.True(t, l.Ranged)
	assert.Equal(t, "rows", l.Words)
	assert.Equal(t, Span{25, 29}, l.WordsAt)
	assert.Equal(t, []Span{{0, 7}, {9, 14}, {16, 18}, {21, 23}}, l.Spans)
	for i, high := range []int64{10, 12, 13, 14} {
		assert.True(t, units.Int(high).Eq(l.High.Vals[i]))
	}
	assert.True(t, l.Alike(four))
	assert.False(t, l.Alike(two))
	assert.False(t, Line{Groups: []int{1, 1, 2}}.Alike(four))
	assert.True(t, Line{}.Alike(four))
}

func TestWhatIsWrongInALineOfLengths(t *testing.T) {
	for _, w := range []told{
		{"12 (13, 14) (15) cm / 5 (6, 7) (8) cm", "/", "both lines are in cm", ""},
		{"12 (13, 14) (15) rows", "rows", `"rows" is not a unit of length`, ""},
		{"12 (13, 14) (15) cm / 5 (6, 7) in", "5 (6, 7", "3 numbers for 4 sizes", "add a number for 1X, or a dash (–) where a size has none"},
	} {
		_, p := ParseLength(w.text, four, units.CM)
		w.held(t, p)
	}
	l, p := ParseLength("5 (6, 7) (8) in / 12½ (15, 18) (20)", four, units.CM)
	require.Nil(t, p)
	assert.Equal(t, units.Inch, l.Unit)
	assert.Equal(t, units.CM, l.OtherUnit)
	assert.True(t, units.Int(127).Eq(l.Low.Vals[0]), "five inches of 25.4 mm")
	assert.True(t, units.Int(125).Eq(l.Other.Vals[0]))
	assert.Len(t, l.Lines, 2)
}

func TestWhatIsWrongInTheSizes(t *testing.T) {
	for _, w := range []told{
		{"", "", "there is no size here", ""},
		{"S (M, L", "(", "this bracket is never closed", "add )"},
		{"S (M, M)", "M", `two sizes are called "M"`, "give one of them another name"},
		{"s (S, M)", "S", `two sizes are called "s"`, "give one of them another name"},
		{"S (none)", "none", `"none" can't be the name of a size`, ""},
		{"S (–)", "–", `"–" can't be the name of a size`, ""},
		{"S (M,, L)", ",", "the name of a size is missing here", ""},
		{"S ((M) L)", "(", "a bracket opens inside a bracket", "close the first bracket before the next one opens"},
		{"S (M, L) 1X", "1X", `"1X" comes after a bracket, with no comma and no bracket of its own`, ""},
		{"3 (6, 12) months", "months", `"months" comes after the sizes`, `remove "months", or write it with each size`},
	} {
		_, p := ParseSizes(w.text)
		w.held(t, p)
	}
	s, p := ParseSizes("3-6  months (1 year), 2 years")
	require.Nil(t, p)
	assert.Equal(t, Sizes{Names: []string{"3-6 months", "1 year", "2 years"}, Groups: []int{1, 1, 1}}, s)
	assert.Equal(t, 1, s.Index(" 1 Year "))
	assert.Equal(t, -1, s.Index("1"))
}

func TestWhatIsWrongInASum(t *testing.T) {
	for _, w := range []told{
		{"", "", "the sum ends where a number or a name is missing", ""},
		{"bust +", "+", "the sum ends where a number or a name is missing", ""},
		{"half of", "f", "the sum ends where a number or a name is missing", ""},
		{"(bust", "(", "this bracket is never closed", "add )"},
		{"bust)", ")", `")" can't stand here in a sum`, ""},
		{"2 bust", "bust", `"bust" can't stand here in a sum`, "put +, −, x or / before it"},
		{"1 2", "2", `"2" can't stand here in a sum`, "put +, −, x or / before it"},
		{"bust = 2", "=", `"=" can't stand here in a sum`, ""},
		{"12345678901 + 2", "12345678901", "12345678901 is larger than any number in a pattern", "look for figures that were typed twice"},
	} {
		_, p := ParseSum(w.text)
		w.held(t, p)
	}
	s, p := ParseSum("2 x (bust + 3 cm) - 1")
	require.Nil(t, p)
	assert.Equal(t, 7, s.Len(), "four values and three signs")
}

// A problem of a text that begins at column 5 of a line is told in the columns of that line.
func TestAProblemIsAFindingWhereItsTextStands(t *testing.T) {
	p := &Problem{Kind: "file/number", Span: Span{3, 7}, Message: "m", Want: "w", Fix: "f", Sizes: []string{"S"}}
	f := p.Finding(finding.Pos{File: "a", Line: 2, Col: 5})
	assert.Equal(t, finding.Finding{Kind: "file/number", Severity: finding.Error, Pos: finding.Pos{File: "a", Line: 2, Col: 8, EndCol: 12},
		Message: "m", Want: "w", Fix: "f", Sizes: []string{"S"}}, f)
	assert.Equal(t, "m", p.Error())
	assert.Equal(t, finding.Pos{File: "a"}, p.Finding(finding.Pos{File: "a"}).Pos, "what has no column gets none")
	assert.Equal(t, Span{5, 9}, p.shifted(2).Span)
	assert.Equal(t, Span{3, 7}, p.Span)
}

func sized(message string, sizes ...string) finding.Finding {
	return finding.Finding{Kind: "k", Message: message, Have: "have " + message, Fix: "say " + message, Sizes: sizes}
}

// The same thing in several sizes is told once, its numbers in the line of the sizes.
func TestFindingsOfSizesAreToldAsOne(t *testing.T) {
	got := four.Merge(finding.List{sized("41 stitches, not 40", "S"), sized("45 stitches, not 44", "M"), sized("49 stitches, not 48", "L"), sized("53 stitches, not 52", "1X")})
	require.Len(t, got, 1)
	assert.Equal(t, "41 (45, 49) (53) stitches, not 40 (44, 48) (52)", got[0].Message)
	assert.Equal(t, "say 41 (45, 49) (53) stitches, not 40 (44, 48) (52)", got[0].Fix)
	assert.Nil(t, got[0].Sizes, "all of them")

	got = four.Merge(finding.List{sized("45 stitches, not 40", "M"), sized("53 stitches, not 40", "1X")})
	require.Len(t, got, 1)
	assert.Equal(t, "– (45, –) (53) stitches, not 40", got[0].Message)
	assert.Equal(t, []string{"M", "1X"}, got[0].Sizes)

	got = four.Merge(finding.List{sized("15 2/3 in, not 15 of 16", "S"), sized("16 1/16 in, not 2/3 of 16", "L")})
	require.Len(t, got, 1)
	assert.Equal(t, "15 2/3 (–, 16 1/16) (–) in, not 15 (–, 2/3) (–) of 16", got[0].Message, "a number keeps its fraction")

	got = four.Merge(finding.List{sized("the same", "S"), sized("the same", "L")})
	require.Len(t, got, 1)
	assert.Equal(t, "the same", got[0].Message)
	assert.Equal(t, []string{"S", "L"}, got[0].Sizes)

	by := finding.List{sized("41 stitches", "L")}
	assert.Equal(t, by, four.Merge(by))
	strange := finding.List{sized("41 stitches", "L"), sized("42 stitches", "XXL")}
	assert.Len(t, four.Merge(strange), 2, "a size that the pattern does not have")
}

func TestNumbersInWords(t *testing.T) {
	double := func(n string) string { return "<" + n + ">" }
	for s, want := range map[string]string{
		"27 sts": "<27> sts", "2X has 13.5 cm": "2X has <13.5> cm", "15½ in": "<15½> in", "¼": "<¼>", "no number": "no number",
		"3.": "<3>.", "1.2.3": "1.2.3", "a3 4b": "a3 4b", "": "", "½½": "½½", "5⅓": "5⅓",
	} {
		assert.Equal(t, want, eachNumber(s, double), s)
	}
}

func TestALengthAndANumberWithoutAUnit(t *testing.T) {
	for text, fix := range map[string]string{"bust + 15": "write the unit after the number, such as 15 cm", "15 + bust": "write the unit after the number, such as 15 cm", "bust + hem rows": ""} {
		s, p := ParseSum(text)
		require.Nil(t, p)
		_, p = s.Eval(env)
		require.NotNil(t, p, text)
		assert.Equal(t, fix, p.Fix, text)
	}
	s, p := ParseSum("5 x -bust")
	require.Nil(t, p)
	assert.Equal(t, Span{4, 9}, s.Root.Right.Span)
	assert.Equal(t, Span{4, 5}, s.Root.Right.At)
}

// What would help in one size and not in another stands behind its size.
func TestFixesThatAreNotAlikeAreToldBySize(t *testing.T) {
	a, b, c := sized("41 stitches", "S"), sized("42 stitches", "M"), sized("43 stitches", "L")
	a.Fix, b.Fix, c.Fix = "work one row", "", "skip it"
	got := four.Merge(finding.List{a, b, c, sized("too few", "1X")})
	require.Len(t, got, 2)
	assert.Equal(t, "41 (42, 43) (–) stitches", got[0].Message)
	assert.Equal(t, "S: work one row; L: skip it", got[0].Fix)
	assert.Equal(t, "too few", got[1].Message)
	p := &Problem{Span: Span{0, 1}}
	assert.Equal(t, 1, p.Finding(finding.Pos{Line: 1, Col: 1}).Pos.Col)
	assert.Equal(t, 2, p.Finding(finding.Pos{Line: 1, Col: 1}).Pos.EndCol)
}
