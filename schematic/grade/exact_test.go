package grade

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"
)

// Columns are counted in characters: é is the third of its line, though it is two bytes.
func TestEditsTakeThePlaceOfTheirOwnCharacters(t *testing.T) {
	at := func(line, col, end int, text string) edit {
		return edit{finding.Pos{Line: line, Col: col, EndCol: end}, text}
	}
	const src = "a: one\n\u00e9\u00e9: two\nb: three"
	for _, c := range []struct {
		edits []edit
		want  string
	}{
		{nil, src},
		{[]edit{at(1, 4, 7, "1")}, "a: 1\n\u00e9\u00e9: two\nb: three"},
		{[]edit{at(2, 5, 8, "2")}, "a: one\n\u00e9\u00e9: 2\nb: three"},
		{[]edit{at(3, 4, 9, "3"), at(1, 1, 2, "x")}, "x: one\n\u00e9\u00e9: two\nb: 3"},
		{[]edit{at(3, 4, 99, "3")}, "a: one\n\u00e9\u00e9: two\nb: 3"},
		{[]edit{at(1, 4, 99, "1")}, "a: 1\n\u00e9\u00e9: two\nb: three"},
		{[]edit{at(0, 1, 2, "x"), at(4, 1, 2, "x")}, src},
		{[]edit{at(1, 4, 7, "1"), at(1, 6, 7, "x")}, "a: 1\n\u00e9\u00e9: two\nb: three"},
		{[]edit{at(1, 4, 5, "1"), at(1, 5, 7, "2")}, "a: 12\n\u00e9\u00e9: two\nb: three"},
		{[]edit{at(1, 4, 4, "x ")}, "a: x one\n\u00e9\u00e9: two\nb: three"},
		{[]edit{at(1, 5, 4, "x")}, src},
	} {
		assert.Equal(t, c.want, string(edited([]byte(src), c.edits)))
		assert.Equal(t, "\ufeff"+c.want, string(edited([]byte("\ufeff"+src), c.edits)), "behind a mark of the byte order")
	}
}

// At 18 stitches and 24 rows over 10 cm: 50 cm are 90 stitches, 50.5 cm are 90.9; 90 make 50 cm, 91 make 50.56, 92 make 51.11.
func TestHowALengthBecameACountIsToldByHand(t *testing.T) {
	g := schematic.Gauge{Stitches: units.Int(18), Rows: units.Int(24), Over: units.Int(100), OverUnit: units.CM}
	for _, c := range []struct {
		mm    int64
		dim   expr.Dim
		rule  shaping.Rule
		lines []string
	}{
		{500, expr.Stitches, shaping.Rule{}, []string{"50 cm at 18 sts over 10 cm: 90 sts", "90 sts, nothing to round"}},
		{505, expr.Stitches, shaping.Rule{}, []string{"50.5 cm at 18 sts over 10 cm: 90.9 sts", "90 sts make 50 cm (−0.5 cm), 91 sts make 50.56 cm (+0.06 cm)", "taken: 91 sts, the nearest"}},
		{505, expr.Stitches, shaping.Rule{Round: shaping.AtMost}, []string{"50.5 cm at 18 sts over 10 cm: 90.9 sts", "90 sts make 50 cm (−0.5 cm), 91 sts make 50.56 cm (+0.06 cm)", "taken: 90 sts, not more than wished"}},
		{501, expr.Stitches, shaping.Rule{Round: shaping.AtLeast}, []string{"50.1 cm at 18 sts over 10 cm: 90.18 sts", "90 sts make 50 cm (−0.1 cm), 91 sts make 50.56 cm (+0.46 cm)", "taken: 91 sts, not less than wished"}},
		{505, expr.Stitches, shaping.Rule{Multiple: 4, Plus: 2}, []string{"50.5 cm at 18 sts over 10 cm: 90.9 sts", "multiple of 4 + 2: 90 sts make 50 cm (−0.5 cm), 94 sts make 52.22 cm (+1.72 cm)", "taken: 90 sts, the nearest"}},
		{525, expr.Stitches, shaping.Rule{}, []string{"52.5 cm at 18 sts over 10 cm: 94.5 sts", "94 sts make 52.22 cm (−0.28 cm), 95 sts make 52.78 cm (+0.28 cm)", "taken: 95 sts, as near as the other, and a tie goes up"}},
		{20, expr.Stitches, shaping.Rule{Least: 10}, []string{"2 cm at 18 sts over 10 cm: 3.6 sts", "10 sts make 5.56 cm (+3.56 cm), the least that there may be"}},
		{100, expr.Rows, shaping.Rule{}, []string{"10 cm at 24 rows over 10 cm: 24 rows", "24 rows, nothing to round"}},
	} {
		each := g.StitchWidth()
		if c.dim == expr.Rows {
			each = g.RowHeight()
		}
		n, err := shaping.Count(units.Int(c.mm), each, c.rule)
		if assert.NoError(t, err) {
			assert.Equal(t, c.lines, countWords(n, c.rule, c.dim, g, true, units.CM))
			assert.Equal(t, c.lines[1:], countWords(n, c.rule, c.dim, g, false, units.CM))
		}
	}
}

// A jump of less than 1.5 cm is none; 15 mm are one.
func TestAJumpOfAFewRowsIsNone(t *testing.T) {
	for mm, is := range map[int]bool{14: false, 15: true} {
		r := TableRow{Vals: expr.Counts(10, 20, 30), Jump: []bool{false, true, true}}
		small(&r, expr.Counts(100, 100+mm, 300))
		assert.Equal(t, []bool{false, is, true}, r.Jump)
	}
	r := TableRow{Vals: expr.Counts(10, 20, 30), Jump: []bool{true, true, true}}
	r.Vals.Has[1] = false
	small(&r, expr.Counts(100, 300, 110))
	assert.Equal(t, []bool{true, true, false}, r.Jump, "the size between has none; the first has none before it")
	r.Jump = []bool{false, false, true}
	makes := expr.Counts(100, 300, 110)
	makes.Has[0] = false
	small(&r, makes)
	assert.Equal(t, []bool{false, false, true}, r.Jump, "nothing to hold it against")
}

func TestSumsOfMeasurements(t *testing.T) {
	a, b := expr.Counts(10, 20, 30), expr.Counts(1, 2, 3)
	a.Has[0], b.Has[1] = false, false
	d := minus(a, b)
	assert.Equal(t, []bool{false, false, true}, d.Has)
	assert.Equal(t, units.Int(27), d.Vals[2])

	s := newAgainst("width", 2)
	s.add(0, schematic.Measure{Length: units.Int(200), Count: 40, Of: "st"}, 2)
	s.add(0, schematic.Measure{Length: units.Int(50), Of: "st"}, 1)
	assert.Equal(t, [2]units.Num{units.Int(450), units.Int(80)}, [2]units.Num{s.made.Vals[0], s.counts.Vals[0]})
	assert.Equal(t, [2][]bool{{true, false}, {true, false}}, [2][]bool{s.made.Has, s.counts.Has})
	assert.Equal(t, expr.Stitches, s.dim)
	s.add(1, schematic.Measure{Length: units.Int(50), Of: "row"}, 1)
	assert.Equal(t, []bool{true, false}, s.counts.Has, "no count, no stitches")
	assert.Equal(t, expr.Rows, s.dim)
	for name, is := range map[string]bool{"bust": true, "Chest": true, "waist": false} {
		assert.Equal(t, is, isRound(name), name)
	}
}
