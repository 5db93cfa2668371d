package expr

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/units"
)

func env(name string) (Value, bool) {
	v, ok := map[string]Value{
		"bust":              {units.Int(900), LengthOf, true},
		"cross-back":        {units.Int(360), LengthOf, true},
		"Back width at hem": {units.Int(500), LengthOf, true},
		"Panel 2 width":     {units.Int(100), LengthOf, true},
		"Back stitches":     {units.Int(70), Stitches, true},
		"hem rows":          {units.Int(12), Rows, true},
		"nothing":           {units.Int(0), LengthOf, true},
		"missing":           {units.Int(0), LengthOf, false},
	}[name]
	return v, ok
}

func TestSumsAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]Value{
		"bust":                             {units.Int(900), LengthOf, true},
		"bust + 15 cm":                     {units.Int(1050), LengthOf, true},
		"bust+15cm":                        {units.Int(1050), LengthOf, true},
		"bust - 2 in":                      {units.Frac(4246, 5), LengthOf, true},
		"(bust + 10 cm) / 2":               {units.Int(500), LengthOf, true},
		"2 x Back width at hem + 3 cm":     {units.Int(1030), LengthOf, true},
		"2×Back width at hem":              {units.Int(1000), LengthOf, true},
		"2x(bust)":                         {units.Int(1800), LengthOf, true},
		"half of bust":                     {units.Int(450), LengthOf, true},
		"half of (bust + 10 cm)":           {units.Int(500), LengthOf, true},
		"a quarter of bust - 1 cm":         {units.Int(215), LengthOf, true},
		"1/2 of bust":                      {units.Int(450), LengthOf, true},
		"twice Back width at hem":          {units.Int(1000), LengthOf, true},
		"cross-back + Panel 2 width":       {units.Int(460), LengthOf, true},
		"Back stitches - 2 x 3 sts":        {units.Int(64), Stitches, true},
		"hem rows / 2 rows":                {units.Int(6), Plain, true},
		"bust / cross-back":                {units.Frac(5, 2), Plain, true},
		"-bust + 1000 mm":                  {units.Int(100), LengthOf, true},
		"10 − 2 − 3":                       {units.Int(5), Plain, true},
		"12 / 2 / 3":                       {units.Int(2), Plain, true},
		"missing + 1 cm":                   {units.Int(10), LengthOf, false},
		"15½ in":                           {units.Frac(3937, 10), LengthOf, true},
		"Back width at hem x 2 + 1 1/2 cm": {units.Int(1015), LengthOf, true},
	} {
		s, bad := ParseSum(text)
		if !assert.Nil(t, bad, text) {
			continue
		}
		v, bad := s.Eval(env)
		if assert.Nil(t, bad, text) {
			assert.Equal(t, want.Dim, v.Dim, text)
			assert.Equal(t, want.Has, v.Has, text)
			if v.Has {
				assert.True(t, want.N.Eq(v.N), "%s is %s", text, v.N)
			}
		}
	}
}

func TestSumsThatHaveNoMeaning(t *testing.T) {
	for text, c := range map[string]struct{ words, message string }{
		"bust + Back stitches": {"bust + Back stitches", `"bust" is a length and can't be added to "Back stitches", which is a number of stitches`},
		"bust - 3 sts":         {"bust - 3 sts", `"3 sts" is a number of stitches and can't be taken from "bust", which is a length`},
		"bust + 15":            {"bust + 15", `"bust" is a length and can't be added to "15", which is a plain number`},
		"2 x (bust + 3 rows)":  {"(bust + 3 rows)", `"bust" is a length and can't be added to "3 rows", which is a number of rows`},
		"bust x bust":          {"bust x bust", "a length times a length has no meaning"},
		"bust / hem rows":      {"bust / hem rows", "a length divided by a number of rows has no meaning here"},
		"bust / 0":             {"0", `"0" is 0: nothing can be divided by it`},
		"2 / (1 - 1)":          {"(1 - 1)", `"(1 - 1)" is 0: nothing can be divided by it`},
		"bust / nothing":       {"nothing", `"nothing" is 0: nothing can be divided by it`},
		"bust + waist":         {"waist", `nothing is called "waist"`},
	} {
		s, bad := ParseSum(text)
		require.Nil(t, bad, text)
		_, bad = s.Eval(env)
		if assert.NotNil(t, bad, text) {
			assert.Equal(t, c.message, bad.Message)
			assert.Equal(t, c.words, string([]rune(text)[bad.Span.Start:bad.Span.End]), text)
		}
	}
}

func TestSumsThatCantBeRead(t *testing.T) {
	for _, text := range []string{"", " ", "+", "bust +", "(bust", "bust)", "2 bust", "bust 2 x", "2 x", "bust ++ 2", "1 2", "half of", "[bust]", "bust = 2",
		strings.Repeat("(", 100) + "1" + strings.Repeat(")", 100), strings.Repeat("-", 100) + "1", strings.Repeat("half of ", 100) + "bust", "1" + strings.Repeat(" + 1", 300)} {
		_, bad := ParseSum(text)
		assert.NotNil(t, bad, text)
	}
}
