package body

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// place is line, column and the column behind a finding.
func places(t *testing.T, text string) (out [][3]int, said []string) {
	t.Helper()
	_, found := Read("own.csv", []byte(text))
	for _, f := range found {
		out, said = append(out, [3]int{f.Pos.Line, f.Pos.Col, f.Pos.EndCol}), append(said, f.Message)
	}
	return out, said
}

const head = "unit: cm\nmeasurement,S,M\n"

func TestWhereATableIsWrongIsCountedByHand(t *testing.T) {
	for text, want := range map[string]struct {
		at   [3]int
		says string
	}{
		"unit: cm\nsizes,S,M\n" + head + "bust,8,9\n": {[3]int{2, 1, 10}, "neither a heading"},
		"unit: cm\n":                                 {[3]int{2, 1, 2}, "no line of sizes"},
		"measurement,S\nbust,80\n":                   {[3]int{1, 1, 12}, "table does not say its unit"},
		"unit: ell\nmeasurement,S\nbust,80\n":        {[3]int{1, 1, 10}, "not a unit"},
		"maker: A\nunit: cm\nmeasurement,S\nbust,80": {[3]int{1, 1, 9}, "no heading 'maker'"},
		head: {[3]int{2, 1, 2}, "no measurements"},
		"unit: cm\nmeasurement,S,s\nbust,80,90\n":   {[3]int{2, 15, 16}, "size s is twice"},
		"unit: cm\nmeasurement,S,,M\nbust,80,8,9\n": {[3]int{2, 15, 16}, "has no name"},
		head + "bust,80\n":                          {[3]int{3, 1, 5}, "wrong number of values"},
		head + "bust,80,90,95\n":                    {[3]int{3, 1, 5}, "wrong number of values"},
		head + "bust,80,90\n\nBust ,1,2\n":          {[3]int{5, 1, 6}, "'bust' is there twice"},
		head + "4 ply,80,90\n":                      {[3]int{3, 1, 6}, "cannot be the name"},
		head + "bust,80,x\n":                        {[3]int{3, 9, 10}, "not a length"},
		head + "bust,80,\"8,5\"\n":                  {[3]int{3, 9, 12}, "a decimal is written with a point"},
		head + "bust,80-70,90\n":                    {[3]int{3, 6, 11}, "goes backwards"},
		head + "bust,0,90\n":                        {[3]int{3, 6, 7}, "more than 0"},
		head + "bust,1000.1,90\n":                   {[3]int{3, 6, 12}, "No body is that large"},
		head + "bust,80,90\nhip,\"9\"0,95\n":        {[3]int{4, 7, 8}, "quotation mark"},
		"unit: cm\nmeasurement,S\xff\n":             {[3]int{1, 1, 2}, "not text in UTF-8"},
	} {
		at, said := places(t, text)
		if assert.Len(t, at, 1, "%q: %v", text, said) {
			assert.Equal(t, want.at, at[0], "%q: %v", text, said)
			assert.Contains(t, said[0], want.says, "%q", text)
		}
	}
}

func TestHowMuchATableHolds(t *testing.T) {
	wide := func(n int) string {
		var names, values []string
		for i := range n {
			names, values = append(names, fmt.Sprintf("S%d", i)), append(values, "80")
		}
		return "unit: cm\nmeasurement," + strings.Join(names, ",") + "\nbust," + strings.Join(values, ",") + "\n"
	}
	at, said := places(t, wide(400))
	assert.Empty(t, at, "%v", said)
	_, said = places(t, wide(401))
	assert.Contains(t, strings.Join(said, "\n"), "too many sizes")
	tall := func(n int) string {
		text := "unit: cm\nmeasurement,S\n"
		for i := range n {
			text += fmt.Sprintf("m%d,80\n", i)
		}
		return text
	}
	at, said = places(t, tall(400))
	assert.Empty(t, at, "%v", said)
	at, said = places(t, tall(401))
	assert.Equal(t, [][3]int{{403, 1, 5}}, at, "%v", said)
	long := head + "bust,80,90\n"
	long += "#" + strings.Repeat("x", 1<<20-len(long)-1)
	at, said = places(t, long)
	assert.Empty(t, at, "%v", said)
	at, said = places(t, long+"x")
	assert.Equal(t, [][3]int{{1, 1, 2}}, at, "%v", said)
}

func TestCellsThatAreEmptyOrAtABound(t *testing.T) {
	b, found := Read("own.csv", []byte("unit: cm\nmeasurement,S,M,,\nbust,1000,–,,\nhip,-,95,,\nupper arm,,30\n,\nw-1 a,28–30,30½\n"))
	require.Empty(t, found)
	assert.Equal(t, []string{"S", "M"}, b.Sizes)
	has := map[string][]bool{}
	for _, r := range b.Rows {
		has[r.Name] = r.High.Has
	}
	assert.Equal(t, map[string][]bool{"bust": {true, false}, "hip": {false, true}, "upper arm": {false, true}, "w-1 a": {true, true}}, has)
	assert.Equal(t, units.Int(10_000), b.Row("bust").High.Vals[0], "ten metres are the most")
	assert.Equal(t, []units.Num{units.Int(280), units.Int(300)}, []units.Num{b.Row("W-1 A").Low.Vals[0], b.Row("w-1 a").High.Vals[0]})
	p := b.Row("upper arm").Pos
	assert.Equal(t, [3]int{5, 1, 10}, [3]int{p.Line, p.Col, p.EndCol})
	assert.Nil(t, b.Row("waist"))
	rows, missing := b.For(expr.Sizes{Names: []string{"Small", " m", "XXL"}, Groups: []int{1, 2}})
	assert.Equal(t, []string{"XXL"}, missing)
	assert.Equal(t, []bool{true, false, false}, rows[0].High.Has, "the first size of the table too is found")
	assert.False(t, isName("") || isName(" a") || isName("-a") || isName(strings.Repeat("a", 61)) || isName("a.b"))
	assert.True(t, isName(strings.Repeat("a", 60)) && isName("a1") && isName("élan") && isName("a-b c"))
}
