package xlsx

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

var three = expr.Sizes{Names: []string{"S", "M", "L"}, Groups: []int{1, 2}}

func named(t *testing.T, vals []schematic.GradedValue, name string) schematic.GradedValue {
	for _, v := range vals {
		if v.Name == name {
			return v
		}
	}
	require.Fail(t, "no row called "+name)
	return schematic.GradedValue{}
}

func TestWhatIsWrittenIsReadBack(t *testing.T) {
	p := tunic(t)
	vals, found := Read("tunic.xlsx", written(t, p), "", p.Sizes)
	require.Empty(t, found)
	for _, v := range p.Graded {
		got := named(t, vals, v.Name)
		assert.Equal(t, v.Dim, got.Dim, v.Name)
		for i := range v.Vals.Vals {
			assert.Equal(t, v.Vals.Has[i], got.Vals.Has[i])
			assert.InDelta(t, v.Vals.Vals[i].Float(), got.Vals.Vals[i].Float(), 1e-6, v.Name)
		}
	}
}

func TestCSVIsReadWithEitherSeparator(t *testing.T) {
	for _, text := range []string{
		"Our grading,,,,\nwhat,L,S,unit,M\nneck,19,18,cm,18.5\ncast on,110,–,sts,102\n\"ease, in\",4,3,,3\n\nheading,,,,\n",
		"\ufeffwhat;L;S;unit;M\r\nneck;19;18;cm;18.5\r\ncast on;110;-;sts;102\r\nease, in;4;3;;3\r\n",
	} {
		vals, found := Read("g.csv", []byte(text), "", three)
		require.Empty(t, found)
		require.Len(t, vals, 3)
		assert.Equal(t, []units.Num{units.Int(180), units.Int(185), units.Int(190)}, named(t, vals, "neck").Vals.Vals)
		cast := named(t, vals, "cast on")
		assert.Equal(t, expr.Stitches, cast.Dim)
		assert.Equal(t, []bool{false, true, true}, cast.Vals.Has)
		assert.Equal(t, units.Of(units.Int(4), units.Inch), named(t, vals, "ease").Vals.Vals[2])
	}
}

func TestABadSheetNamesItsCells(t *testing.T) {
	_, found := Read("g.csv", []byte("x,S,M,L,unit\na,1,two,3,cm\nb,1,2,3,ells\nb2,=1+1,2,3,cm\na,1,2,3,cm\n,1,2,3,cm\n"), "", three)
	var at [][2]int
	for _, f := range found {
		at = append(at, [2]int{f.Pos.Line, f.Pos.Col})
	}
	assert.Equal(t, [][2]int{{2, 3}, {3, 5}, {4, 2}, {5, 1}, {6, 1}}, at)
	_, found = Read("g.csv", []byte("x,S,M\na,1,2\n"), "", three)
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Message, "size L is missing")
	_, found = Read("g.csv", []byte("nothing here\n"), "", three)
	assert.True(t, found.Errors())
	_, found = Read("g.xlsx", []byte("PK\x03\x04rubbish"), "", three)
	assert.True(t, found.Errors())
	_, found = Read("g.csv", bytes.Repeat([]byte("a,b\n"), MostBytes), "", three)
	assert.True(t, found.Errors())
}

func TestAFormulaIsNeverReckonedOnReading(t *testing.T) {
	f := excelize.NewFile()
	for cell, v := range map[string]any{"A1": "what", "B1": "S", "C1": "M", "D1": "L", "A2": "saved", "B2": 5.0, "C2": 6.0, "D2": 7.0} {
		require.NoError(t, f.SetCellValue("Sheet1", cell, v))
	}
	require.NoError(t, f.SetCellFormula("Sheet1", "B2", "1000+1")) // its saved value is 5
	var b bytes.Buffer
	require.NoError(t, f.Write(&b))
	vals, found := Read("g.xlsx", b.Bytes(), "Sheet1", three)
	require.Empty(t, found)
	assert.Equal(t, units.Int(5), named(t, vals, "saved").Vals.Vals[0])
	_, found = Read("g.xlsx", b.Bytes(), "Elsewhere", three)
	require.True(t, found.Errors())
	assert.Contains(t, found[0].Want, "Sheet1")
}

func TestTheGradingAsATableIsToldOnceThatItIsNotReadBack(t *testing.T) {
	_, found := Read("g.csv", []byte("of,what,S,M,L\nease,\"ease, cm\",4,4,4\nback,stitches,60,66,72\nback,\"makes, cm\",43,47,51\n"), "", three)
	require.Len(t, found, 1)
	assert.Equal(t, 1, found[0].Pos.Line)
	assert.Contains(t, found[0].Fix, "grade --format xlsx")
}
