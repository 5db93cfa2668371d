package table

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

func mm(n int64) units.Num { return units.Int(n) }

func cm(n, d int64) units.Num { return units.Of(units.Frac(n, d), units.CM) }

func measure(id, name string, length units.Num) schematic.Measure {
	return schematic.Measure{ID: id, Name: name, Length: length}
}

func TestAMeasurementKeepsItsRowThroughTheSizes(t *testing.T) {
	p := &schematic.Pattern{Title: "Dune Vest", Steps: units.Usual, Sizes: expr.Sizes{Names: []string{"S", "M", "L"}, Groups: []int{1, 2}}}
	gs := []*schematic.Garment{
		{Pattern: p, Size: "S", Index: 0, Pieces: []*schematic.Made{
			{Name: "Back", Measures: []schematic.Measure{measure("back.hem", "width at hem", mm(450)), measure("back.length", "length", mm(600))}},
			{Name: "Pocket", Measures: []schematic.Measure{measure("pocket.depth", "depth", mm(120))}},
		}},
		{Pattern: p, Size: "M", Index: 1, Pieces: []*schematic.Made{
			{Name: "Back", Measures: []schematic.Measure{measure("back.hem", "width at hem", mm(500)), measure("back.waist", "waist", mm(480)), measure("back.length", "length", mm(610))}},
		}},
		{Pattern: p, Size: "L", Index: 2, Pieces: []*schematic.Made{
			{Name: "Collar", Measures: []schematic.Measure{measure("collar.length", "length", mm(400))}},
			{Name: "Back", Measures: []schematic.Measure{measure("back.hem", "width at hem", mm(550)), measure("back.length", "length", mm(620))}},
		}},
	}
	got := Of(gs)
	assert.Equal(t, []string{"S", "M", "L"}, got.Sizes)
	var names []string
	for _, g := range got.Groups {
		names = append(names, g.Name)
	}
	assert.Equal(t, []string{"Collar", "Back", "Pocket"}, names, "in the order of each size")
	back := got.Groups[1]
	require.Len(t, back.Rows, 3)
	want := [][]string{{"45", "50", "55"}, {"–", "48", "–"}, {"60", "61", "62"}}
	for i, row := range back.Rows {
		var texts []string
		for _, c := range row.Cells {
			texts = append(texts, c.Text(units.CM, got.Steps))
		}
		assert.Equal(t, want[i], texts, row.Name)
	}
	assert.Equal(t, "Waist", back.Rows[1].Name)
}

func TestALengthIsPrintedInBothUnitsFromTheSameExactValue(t *testing.T) {
	// 1 in = 2.54 cm exactly (international yard and pound agreement, 1959).
	// 39.37 cm = 15.5 in; to the half 39.5 cm. 15.125 in is a tie between 15 and
	// 15¼ and goes up; it is 38.4175 cm, to the half 38.5.
	for _, c := range []struct {
		mm              units.Num
		cm, in, decimal string
	}{
		{units.Of(units.Frac(31, 2), units.Inch), "39.5", "15½", "15.5"},
		{units.Of(units.Frac(121, 8), units.Inch), "38.5", "15¼", "15.25"},
		{mm(25), "2.5", "1", "1"},
		{mm(0), "0", "0", "0"},
	} {
		cell := Cell{Has: true, Low: c.mm, High: c.mm}
		assert.Equal(t, c.cm, cell.Text(units.CM, units.Usual))
		assert.Equal(t, c.in, cell.Text(units.Inch, units.Usual))
		assert.Equal(t, c.decimal, cell.Decimal(units.Inch, units.Usual))
	}
}

func TestAWrittenLengthStandsAsItWasTyped(t *testing.T) {
	p := &schematic.Pattern{Steps: units.Usual, Bodies: []schematic.Written{
		{Name: "bust", Unit: units.Inch, Low: expr.Of(units.Of(mm(28), units.Inch)), High: expr.Of(units.Of(mm(30), units.Inch))},
	}, Finished: []schematic.Written{
		{Name: "bust", Unit: units.CM, Low: expr.Of(cm(863, 10)), High: expr.Of(cm(863, 10))},
		{Name: "length", Unit: units.CM, Low: expr.Of(cm(60, 1)), High: expr.Of(cm(60, 1)), Other: expr.Of(units.Of(mm(24), units.Inch))},
	}}
	got := Of([]*schematic.Garment{{Pattern: p, Size: "S"}})
	require.Len(t, got.Groups, 2)
	assert.Equal(t, ToFit, got.Groups[0].Name)
	fit := got.Groups[0].Rows[0].Cells[0]
	assert.Equal(t, "28–30", fit.Text(units.Inch, got.Steps))
	assert.Equal(t, "71–76", fit.Text(units.CM, got.Steps), "71.12 and 76.2 cm to the half")
	bust := got.Groups[1].Rows[0].Cells[0]
	assert.Equal(t, "86.3", bust.Text(units.CM, got.Steps), "not rounded: it is what she wrote")
	assert.Equal(t, "34", bust.Text(units.Inch, got.Steps), "86.3 cm is 33.98 in")
	length := got.Groups[1].Rows[1].Cells[0]
	assert.Equal(t, "24", length.Text(units.Inch, got.Steps), "her own inches, though 60 cm is 23.62 in")
}

// A hat of 193.3 mm is 19.33 cm, to the half 19.5, and 7.61 in, to the quarter 7½; out of the
// printed 19.5 cm it would be 7.68 in, and 7¾.
func TestAFinishedLengthIsTheExactOneInBothUnits(t *testing.T) {
	p := &schematic.Pattern{Units: units.CM, Steps: units.Usual, Sizes: expr.Sizes{Names: []string{"S", "M", "L"}}, Finished: []schematic.Written{
		{Name: "depth", Unit: units.CM, Low: expr.Of(cm(39, 2), cm(39, 2), cm(39, 2)), High: expr.Of(cm(39, 2), cm(39, 2), cm(39, 2))},
	}}
	made := func(length units.Num) []*schematic.Made {
		return []*schematic.Made{{Name: "Hat", Measures: []schematic.Measure{measure("hat.depth", "depth", length)}}}
	}
	got := Of([]*schematic.Garment{
		{Pattern: p, Size: "S", Index: 0, Pieces: made(units.Frac(1933, 10))},
		{Pattern: p, Size: "M", Index: 1, Pieces: made(mm(300))},
		{Pattern: p, Size: "L", Index: 2},
	})
	written := got.Groups[len(got.Groups)-1]
	require.Equal(t, Written, written.Name)
	assert.Equal(t, "Finished measurements", written.Name, "an exact length is not called as written")
	var texts []string
	for _, c := range written.Rows[0].Cells {
		texts = append(texts, c.Text(units.CM, got.Steps)+" "+c.Text(units.Inch, got.Steps))
	}
	assert.Equal(t, []string{"19.5 7½", "19.5 7¾", "19.5 7¾"}, texts, "one that the counts do not make stands as it was typed")
	hat := got.Groups[0].Rows[0].Cells[0]
	assert.Equal(t, "7½", hat.Text(units.Inch, got.Steps), "the same figure as in the row of the piece")
}

func part(name string, m schematic.Measure) schematic.Measure {
	m.Part = name
	return m
}

func TestMeasurementsOfLikeNameAreToldApartAndTwinsAreOne(t *testing.T) {
	p := &schematic.Pattern{Steps: units.Usual}
	around := measure("body.bust", "bust", mm(900))
	around.Around = true
	front, back := measure("body.right-front.length", "length", mm(600)), measure("body.back.length", "length", mm(610))
	front, back = part("Right front", front), part("Back", back)
	got := Of([]*schematic.Garment{{Pattern: p, Size: "S", Pieces: []*schematic.Made{{Name: "Body", Measures: []schematic.Measure{
		around, front, back, measure("body.side.left", "side length", mm(300)), measure("body.side.right", "side length", mm(300)),
		measure("body.slope.left", "slope", mm(20)), measure("body.slope.right", "slope", mm(30)),
		part("Back", measure("body.back.armhole.left", "armhole", mm(200))), part("Back", measure("body.back.armhole.right", "armhole", mm(200))),
		part("Front", measure("body.front.armhole.right", "armhole", mm(210))),
	}}}}})
	var names []string
	for _, r := range got.Groups[0].Rows {
		names = append(names, r.Name)
	}
	assert.Equal(t, []string{"Bust, around", "Length (Right front)", "Length (Back)", "Side length", "Slope (left)", "Slope (right)",
		"Armhole (Back)", "Armhole (Front)"}, names)
}

func TestNoGarmentsMakeAnEmptyTable(t *testing.T) {
	assert.Empty(t, Of(nil).Groups)
}
