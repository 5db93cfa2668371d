package table

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// entryOf is a row of one name, of a view, a part and a side, and its length in mm.
func entryOf(id, view, part string, length int64) entry {
	return entry{of: schematic.Measure{ID: id, Part: part}, view: view, row: Row{ID: id, Name: "Depth", Cells: []Cell{{Has: true, Low: units.Int(length)}}}}
}

// Rows of one name that are not all alike say of which views, parts and sides they tell, three of them at the most.
func TestRowsOfOneNameAreToldApart(t *testing.T) {
	for _, c := range []struct {
		name string
		all  []entry
		want []string
	}{
		{"alike", []entry{entryOf("a.left", "", "", 5), entryOf("a.right", "", "", 5)}, []string{"Depth"}},
		{"by sides", []entry{entryOf("a.left", "", "", 5), entryOf("a.right", "", "", 6)}, []string{"Depth (left)", "Depth (right)"}},
		{"by views", []entry{entryOf("a", "Front", "", 5), entryOf("b", "Back", "", 6)}, []string{"Depth (Front)", "Depth (Back)"}},
		{"by parts", []entry{entryOf("a", "Front", "L", 5), entryOf("b", "Front", "R", 6)}, []string{"Depth (L)", "Depth (R)"}},
		{"by both", []entry{entryOf("a", "Front", "L", 5), entryOf("b", "Back", "R", 6)}, []string{"Depth (Front, L)", "Depth (Back, R)"}},
		{"a part called as its view", []entry{entryOf("a", "Front", "Front", 5), entryOf("b", "Back", "Back", 6)}, []string{"Depth (Front)", "Depth (Back)"}},
		{"by view and side", []entry{entryOf("a.left", "Front", "", 5), entryOf("a.right", "Front", "", 6), entryOf("b", "Back", "", 6)}, []string{"Depth (Front, left)", "Depth (Front, right; Back)"}},
		{"by nothing", []entry{entryOf("a", "", "", 5), entryOf("b", "", "", 6)}, []string{"Depth", "Depth"}},
		{"three", []entry{entryOf("a", "A", "", 5), entryOf("b", "B", "", 5), entryOf("c", "C", "", 5), entryOf("d", "D", "", 6)}, []string{"Depth (A; B; C)", "Depth (D)"}},
		{"four", []entry{entryOf("a", "A", "", 5), entryOf("b", "B", "", 5), entryOf("c", "C", "", 5), entryOf("d", "D", "", 5), entryOf("e", "E", "", 6)}, []string{"Depth (A; B; and 2 more)", "Depth (E)"}},
	} {
		var got []string
		for _, r := range distinct(c.all) {
			got = append(got, r.Name)
		}
		assert.Equal(t, c.want, got, c.name)
	}
	alike := distinct([]entry{entryOf("a", "", "", 5), entryOf("b", "", "", 5), entryOf("c", "", "", 5)})
	assert.Equal(t, []string{"b", "c"}, alike[0].Also)
	one, two := entryOf("a", "A", "", 5), entryOf("b", "B", "", 6)
	one.each = "each of 6"
	assert.Equal(t, "Depth (A, each of 6)", distinct([]entry{one, two})[0].Name)
	assert.Equal(t, "Depth (each of 6)", distinct([]entry{one})[0].Name)
}

func TestHowARowIsCalled(t *testing.T) {
	for want, m := range map[string]schematic.Measure{"Hip": {Name: "hip"}, "Hip, around": {Name: "hip", Around: true}, "Width around": {Name: "width around", Around: true}, "Cuff, around, stretched": {Name: "cuff", Around: true, Stretched: true}} {
		assert.Equal(t, want, rowName(m))
	}
	made := &schematic.Made{Views: []schematic.View{{Name: "Front"}, {Name: "Gore", Alike: 6}}}
	for view, want := range map[int][2]string{0: {"Front", ""}, 1: {"Gore", "each of 6"}, 2: {"", ""}, schematic.NoView: {"all panels", ""}} {
		m := schematic.Measure{View: view}
		assert.Equal(t, want, [2]string{viewName(made, m), each(made, m)})
	}
}

// A measurement that says what another says is left out, unless in one size it says something else.
func TestWhatSaysTheSameIsLeftOut(t *testing.T) {
	p := &schematic.Pattern{Steps: units.Usual}
	of := func(same ...bool) (ids []string) {
		var gs []*schematic.Garment
		for i, s := range same {
			gs = append(gs, &schematic.Garment{Pattern: p, Index: i, Pieces: []*schematic.Made{{Name: "Back", Measures: []schematic.Measure{{ID: "a", Name: "hem", Length: units.Int(9)}, {ID: "b", Name: "hip", Length: units.Int(int64(9 + i)), Same: s}}}}})
		}
		for _, r := range Of(gs).Groups[0].Rows {
			ids = append(ids, r.ID)
		}
		return ids
	}
	assert.Equal(t, []string{"a"}, of(true, true))
	assert.Equal(t, []string{"a", "b"}, of(true, false))
	assert.Equal(t, []string{"a", "b"}, of(false, true))
	assert.Empty(t, Of(nil).Groups)
}

// By hand: 250 mm are 25 cm and 9.84 in, to a quarter 9¾; a range of 250 to 260 ends at 10¼. What its designer wrote in inches she wrote so.
func TestWhatStandsInACell(t *testing.T) {
	c := Cell{Has: true, Low: units.Int(250), High: units.Int(250)}
	steps := units.Steps{CM: units.Frac(1, 2), Inch: units.Frac(1, 4)}
	assert.Equal(t, []string{"25", "9¾", "9.75"}, []string{c.Text(units.CM, steps), c.Text(units.Inch, steps), c.Decimal(units.Inch, steps)})
	c.High = units.Int(260)
	assert.Equal(t, []string{"25–26", "9¾–10¼", "9.75–10.25"}, []string{c.Text(units.CM, steps), c.Text(units.Inch, steps), c.Decimal(units.Inch, steps)})
	c = Cell{Has: true, Written: true, Unit: units.CM, Low: units.Int(253), High: units.Int(253)}
	assert.Equal(t, []string{"25.3", "10"}, []string{c.Text(units.CM, steps), c.Text(units.Inch, steps)}, "as written; 9.96 in to a step")
	c.Other, c.HasOther = units.Frac(254, 1), true
	assert.Equal(t, []string{"25.3", "10"}, []string{c.Text(units.CM, steps), c.Text(units.Inch, steps)})
	assert.Equal(t, None, Cell{}.Text(units.CM, steps))
}

func TestTheGarmentAsItIsWornIsAGroup(t *testing.T) {
	worn := func(views ...schematic.DrawnView) *schematic.Garment {
		p := &schematic.Pattern{Drawing: schematic.Drawing{Views: views, Names: []schematic.Renamed{{Called: schematic.Called{Name: "hip"}, To: "seat"}}}}
		return &schematic.Garment{Pattern: p, Worn: &schematic.Made{Name: "As worn", Measures: []schematic.Measure{{ID: "w.hip", Name: "hip", Length: units.Int(900)}}}, WornBack: &schematic.Made{Name: "Behind", Measures: []schematic.Measure{{ID: "w.neck", Name: "neck", Length: units.Int(200)}}}}
	}
	for _, c := range []struct {
		g    *schematic.Garment
		name string
		rows []string
	}{
		{worn(), "As worn", []string{"Seat", "Neck"}}, {worn(schematic.AsWorn), "As worn", []string{"Seat", "Neck"}}, {worn(schematic.AsWorn + 1), "", nil}, {&schematic.Garment{Pattern: &schematic.Pattern{}}, "", nil},
	} {
		got := Worn([]*schematic.Garment{c.g})
		var rows []string
		for _, r := range got.Rows {
			rows = append(rows, r.Name)
		}
		assert.Equal(t, c.name, got.Name)
		assert.Equal(t, c.rows, rows)
	}
	g := Group{Rows: []Row{{ID: "x"}, {ID: "b"}, {ID: "a"}, {ID: "y", Also: []string{"c"}}}}.InLetters(map[string]string{"a": "A", "b": "AA", "c": "B"})
	var ids []string
	for _, r := range g.Rows {
		ids = append(ids, r.ID)
	}
	assert.Equal(t, []string{"a", "y", "b", "x"}, ids)
	w := schematic.Written{Name: "Full bust", Low: expr.Of(units.Int(900)), High: expr.Of(units.Int(950)), Other: expr.Of(units.Int(889)), Unit: units.CM}
	row := writtenRows("to-fit", []*schematic.Garment{{Pattern: &schematic.Pattern{}}}, []schematic.Written{w})[0]
	assert.Equal(t, Row{ID: "to-fit.full-bust", Name: "Full bust", Cells: []Cell{{Has: true, Written: true, Unit: units.CM, Low: units.Int(900), High: units.Int(950), Other: units.Int(889), HasOther: true}}}, row)
}
