package expr

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic/units"
)

func anySizes(t *rapid.T) Sizes {
	var s Sizes
	for range rapid.IntRange(1, 5).Draw(t, "groups") {
		n := rapid.IntRange(1, 5).Draw(t, "group")
		s.Groups = append(s.Groups, n)
		for range n {
			s.Names = append(s.Names, fmt.Sprintf("S%d", len(s.Names)))
		}
	}
	return s
}

// What Write writes, ParseLine reads back, with the brackets of the sizes.
func TestALineIsReadBackAsItWasWritten(t *testing.T) {
	texts := map[string]func(units.Num) string{
		"with fractions": units.Mixed,
		"as decimals":    func(n units.Num) string { return units.Decimal(n, 3) },
	}
	for name, text := range texts {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			s := anySizes(t)
			g := Const(units.Num{}, s.Len())
			for i := range g.Vals {
				g.Vals[i] = units.Frac(rapid.Int64Range(0, 8000).Draw(t, "eighths"), 8)
				if g.Has[i] = rapid.IntRange(0, 5).Draw(t, "has") > 0; !g.Has[i] {
					g.Vals[i] = units.Num{}
				}
			}
			words := rapid.SampledFrom([]string{"", " cm", " rows"}).Draw(t, "words")
			line, bad := ParseLine(s.Write(g, text)+words, s)
			require.Nil(t, bad)
			require.Equal(t, g, line.Low)
			require.Equal(t, g, line.High)
			require.True(t, line.Alike(s))
			require.Equal(t, strings.TrimSpace(words), line.Words)
		}))
	}
}

func TestSizesAreReadBackAsTheyWereWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySizes(t)
		got, bad := ParseSizes(s.Full(s.Names))
		require.Nil(t, bad)
		require.Equal(t, s, got)
	})
}

// No text makes the parsers panic, and what is wrong is inside the text.
func TestAnyTextIsReadOrRefusedWithItsPlace(t *testing.T) {
	s := Sizes{Names: []string{"S", "M", "L"}, Groups: []int{1, 2}}
	parts := []string{"12", "-", "–", "(", ")", ",", " ", "/", "½", "1/2", "cm", "in", "x", "+", "none", "bust", "of", "half", ".", "é", "["}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(parts), 0, 14).Draw(t, "parts"), "")
		if rapid.Bool().Draw(t, "any") {
			text = rapid.String().Draw(t, "text")
		}
		n := len([]rune(text))
		var all []*Problem
		_, p := ParseLine(text, s)
		all = append(all, p)
		_, p = ParseLength(text, s, units.CM)
		all = append(all, p)
		_, p = ParseSizes(text)
		all = append(all, p)
		sum, p := ParseSum(text)
		all = append(all, p)
		if sum != nil {
			_, p = sum.Eval(func(string) (Value, bool) { return Value{units.Int(10), LengthOf, true}, true })
			all = append(all, p)
		}
		for _, p := range all {
			if p != nil {
				require.True(t, 0 <= p.Span.Start && p.Span.Start <= p.Span.End && p.Span.End <= max(n, 1), "%q: %v", text, p)
				require.NotEmpty(t, p.Message)
			}
		}
	})
}

func TestNumbersAsPeopleTypeThem(t *testing.T) {
	one := Sizes{Names: []string{"S"}, Groups: []int{1}}
	for text, want := range map[string]units.Num{
		"14": units.Int(14), "14.5": units.Frac(29, 2), "15½": units.Frac(31, 2), "15 ½": units.Frac(31, 2), "15 1/2": units.Frac(31, 2),
		"15-1/2": units.Frac(31, 2), "½": units.Frac(1, 2), "1/4": units.Frac(1, 4), ".5": units.Frac(1, 2), "3⅓": units.Frac(10, 3), "2 10/12": units.Frac(17, 6),
	} {
		l, bad := ParseLine(text, one)
		if assert.Nil(t, bad, text) {
			assert.True(t, want.Eq(l.Low.Vals[0]), "%s is %s", text, l.Low.Vals[0])
			assert.False(t, l.Ranged, text)
		}
	}
	for _, text := range []string{"5e1", "1_000", "0x1F", ".inf", "~", "No", "yes", "2026-01-01", "1:30", "+5", "1/0", "１２", "12345678901", "1.2.3", "--5"} {
		_, bad := ParseLine(text, one)
		assert.NotNil(t, bad, text)
	}
}

func TestRangesDashesAndMinuses(t *testing.T) {
	s := Sizes{Names: []string{"S", "M", "L"}, Groups: []int{1, 2}}
	l, bad := ParseLine("28-30 (–, 36 to 38½) in", s)
	require.Nil(t, bad)
	assert.Equal(t, []bool{true, false, true}, l.Low.Has)
	assert.True(t, l.Low.Vals[2].Eq(units.Int(36)) && l.High.Vals[2].Eq(units.Frac(77, 2)))
	assert.Equal(t, "in", l.Words)

	l, bad = ParseLine("-2 (− 3, none)", s)
	require.Nil(t, bad)
	assert.True(t, l.Low.Vals[0].Eq(units.Int(-2)) && l.Low.Vals[1].Eq(units.Int(-3)))
	assert.False(t, l.Low.Has[2])
	assert.False(t, l.Ranged)
}

func TestBothUnits(t *testing.T) {
	s := Sizes{Names: []string{"S", "M", "L"}, Groups: []int{1, 2}}
	l, bad := ParseLength("86 (95, 104) cm / 34 (37½, 41) in", s, units.Inch)
	require.Nil(t, bad)
	assert.Equal(t, units.CM, l.Unit)
	assert.True(t, l.Low.Vals[1].Eq(units.Int(950)))
	assert.True(t, l.Other.Vals[1].Eq(units.Of(units.Frac(75, 2), units.Inch)))

	l, bad = ParseLength("15\" (16\", 17½″)", s, units.CM)
	require.Nil(t, bad)
	assert.Equal(t, units.Inch, l.Unit)
	l, bad = ParseLength("1/2 (3/4, 1)", s, units.Inch)
	require.Nil(t, bad)
	assert.True(t, l.Low.Vals[0].Eq(units.Of(units.Frac(1, 2), units.Inch)))
}

func TestWhichSizesHaveNoNumber(t *testing.T) {
	s := Sizes{Names: []string{"XS", "S", "M", "L", "1X"}, Groups: []int{1, 2, 2}}
	for text, want := range map[string][]string{
		"1 (2, 3) (4)": {"1X"}, "1 (2) (4, 5)": {"M"}, "1 (2) (4)": {"M", "1X"}, "1 (2, 3)": {"L", "1X"}, "1 (2, 3, 4)": {"1X"},
	} {
		_, bad := ParseLine(text, s)
		if assert.NotNil(t, bad, text) {
			assert.Equal(t, "file/list-length", bad.Kind)
			assert.Equal(t, want, bad.Sizes, text)
		}
	}
}

// A line copied from a page or a typeset book has spaces of other widths between its numbers.
func TestSpacesOfAnyWidthPartNumbers(t *testing.T) {
	for _, space := range []string{" ", "\u00a0", "\u2009", "\u202f", "\t"} {
		l, p := ParseLine("103"+space+"(111,"+space+"119)", Sizes{Names: []string{"S", "M", "L"}, Groups: []int{1, 2}})
		assert.Nil(t, p, "%q", space)
		assert.Len(t, l.Spans, 3, "%q", space)
	}
}
