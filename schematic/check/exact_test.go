package check

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// The simplest rate that comes nearest, by hand: 15 stitches in 20 rows are 1 in each (5 off), 2 in 3 (1.7 off), 3 in 4 (none off).
func TestTheSimplestRateThatComesNearest(t *testing.T) {
	for _, c := range []struct {
		want units.Num
		rows int
		rate string
	}{
		{units.Int(20), 20, "about 1 in each row"},
		{units.Int(40), 20, "about 2 in each row"},
		{units.Int(30), 20, "about 3 in every 2 rows"},
		{units.Int(15), 20, "about 3 in every 4 rows"},
		{units.Frac(21, 2), 20, "about 1 in every 2 rows"}, // 10; 3 in 5 are 12, 3 in 6 are 10 again
		{units.Int(16), 20, "about 4 in every 5 rows"},
		{units.Int(19), 20, "about 1 in each row"},           // 5 in 6 are 16.7: farther off
		{units.Frac(1, 10), 10, "about 1 in every 6 rows"},   // 1.67, less than 2.5 by more than a half; 2.0 is not
		{units.Frac(39, 2), 20, "about 1 in each row"},       // half a stitch off, and 19.5 itself would be no simpler
		{units.Int(5), 0, "about 1 in each row"},             // nothing to pick up along
		{units.Int(1), 1, "about 1 in each row"},             // one row
		{units.Int(25), 30, "about 5 in every 6 rows"},       // the most that a rate is of
		{units.Frac(60, 7), 10, "about 4 in every 5 rows"},   // 8.57: 8; 5 in 6 are 8.33, nearer by less than a half
		{units.Frac(400, 7), 20, "about 17 in every 6 rows"}, // 57.1: 60, 60, 60, 55, 56 and 56.7
	} {
		assert.Equal(t, c.rate, rateOf(c.want, c.rows, inRows), "%s in %d", c.want, c.rows)
	}
}

// A stitch of the first gauge is 10 mm wide and its row 5 mm high; of the second 5 mm and 20 mm.
func TestTheUnitOfAMeasurementIsItsStitchOrItsRow(t *testing.T) {
	p := pattern("M")
	p.Gauges = append(p.Gauges, schematic.Gauge{Name: "fine", Stitches: units.Int(20), Rows: units.Int(5), Over: cm(10, 1)})
	for _, c := range []struct {
		m  schematic.Measure
		mm int64
	}{
		{schematic.Measure{Count: 4, Length: cm(10, 1), Of: "st"}, 25},
		{schematic.Measure{Count: 1, Length: cm(3, 1), Of: "row"}, 30},
		{schematic.Measure{Of: "st"}, 10},
		{schematic.Measure{Of: "row"}, 20},
		{schematic.Measure{}, 20},
		{schematic.Measure{Gauge: &fabric}, 10},
		{schematic.Measure{Gauge: &fabric, Of: "row"}, 5},
		{schematic.Measure{Gauge: &p.Gauges[1], Of: "st"}, 5},
	} {
		assert.Equal(t, units.Int(c.mm), unit(p, &c.m), "%+v", c.m)
		assert.Equal(t, units.Int(c.mm), grain(p, &c.m))
		c.m.Around = true
		assert.Equal(t, units.Int(2*c.mm), grain(p, &c.m), "twice where it goes around")
	}
}

func TestHowALengthCameAbout(t *testing.T) {
	back, front := made("Back", schematic.KindBack), made("Front", schematic.KindFront)
	of := func(count int, kind string, axis schematic.Axis, around bool) *schematic.Measure {
		return &schematic.Measure{Count: count, Of: kind, Axis: axis, Around: around, Length: cm(12, 1)}
	}
	one, two, half := units.Int(1), units.Int(2), units.Frac(1, 2)
	for _, c := range []struct {
		d    derived
		text string
	}{
		{derived{terms: []term{{one, back, of(129, "st", schematic.Horizontal, false)}}}, "129 sts of Back make 12 cm"},
		{derived{terms: []term{{one, back, of(1, "row", schematic.Vertical, false)}}}, "1 row of Back makes 12 cm"},
		{derived{terms: []term{{one, back, of(2, "row", schematic.Vertical, false)}}}, "2 rows of Back make 12 cm"},
		{derived{terms: []term{{one, back, of(0, "row", schematic.Vertical, false)}}}, "the rows of Back make 12 cm"},
		{derived{terms: []term{{one, back, of(0, "row", schematic.Horizontal, false)}}}, "the rows of Back make 12 cm"},
		{derived{terms: []term{{one, back, of(0, "", schematic.Vertical, false)}}}, "the rows of Back make 12 cm"},
		{derived{terms: []term{{one, back, of(0, "", schematic.Horizontal, true)}}}, "the stitches around of Back make 12 cm"},
		{derived{terms: []term{{two, back, of(9, "st", schematic.Horizontal, false)}}, plus: cm(3, 1)}, "2 x 9 sts of Back make 12 cm, and 3 cm: together 27 cm"},
		{derived{terms: []term{{half, back, of(9, "st", schematic.Horizontal, false)}, {one, front, of(8, "st", schematic.Horizontal, false)}}},
			"½ x 9 sts of Back make 12 cm, 8 sts of Front make 12 cm: together 18 cm"},
	} {
		assert.Equal(t, c.text, c.d.words(units.CM))
	}
}

func TestWordsInNames(t *testing.T) {
	for name, is := range map[string][3]bool{ // of the armhole, along the body, says one side
		"armhole": {true, false, false}, "Left underarm": {true, false, true}, "raglan depth": {true, true, false}, "neck": {},
		"body length": {false, true, false}, "height of rib": {false, true, false}, "hem to waist": {false, true, false}, "right front": {false, false, true},
		"left and right": {}, "top": {},
	} {
		left, one := leftOrRight(name)
		assert.Equal(t, is, [3]bool{ofArmhole(name), alongBody(name), one}, name)
		assert.Equal(t, name == "Left underarm" || name == "left and right", left, name)
	}
	assert.True(t, ofArmhole("neck", "Armhole"))
	assert.Equal(t, [2]string{"left", "right"}, [2]string{sideWord(true), sideWord(false)})
}

// A shaping narrows a piece at its opening if it decreases at an edge that has such a name.
func TestAShapingOpensAPieceWhereItsEdgeSaysSo(t *testing.T) {
	for _, c := range []struct {
		at          schematic.Side
		left, right string // edges of the section
		edge        string
		more        bool
		opens       bool
	}{
		{at: schematic.LeftEdge, left: "neck", opens: true},
		{at: schematic.LeftEdge, right: "neck"},
		{at: schematic.RightEdge, right: "Wrap edge", opens: true},
		{at: schematic.RightEdge, left: "wrap edge"},
		{at: schematic.BothEdges, left: "front edge", opens: true},
		{at: schematic.BothEdges, right: "opening", opens: true},
		{at: schematic.Across, left: "neck", right: "neck"},
		{at: schematic.Across, edge: "neck", opens: true},
		{at: schematic.LeftEdge, left: "side", right: "side"},
		{at: schematic.LeftEdge, left: "neck", more: true},
	} {
		s := &schematic.Shape{Common: schematic.Common{LeftEdge: c.left, RightEdge: c.right}, Shapings: []schematic.Shaping{{At: c.at, Edge: c.edge, Increase: c.more}}}
		m := made("Front", schematic.KindFront)
		m.Piece = &schematic.Piece{}
		assert.Equal(t, c.opens, opens(m, s), "%+v", c)
		s.LeftEdge, s.RightEdge = "", ""
		m.Piece.LeftEdge, m.Piece.RightEdge = c.left, c.right
		assert.Equal(t, c.opens, opens(m, s), "%+v, of the piece", c)
	}
}

func TestAPieceIsStraightIfItHasOneWidth(t *testing.T) {
	part := sts("P", "width of yoke", 9)
	part.Part = "Yoke"
	up := rows("P", "width at side", 9)
	assert.True(t, straight(made("P", schematic.KindPiece, sts("P", "width", 10), part, up, sts("P", "cuff", 9))))
	assert.False(t, straight(made("P", schematic.KindPiece, sts("P", "width at hem", 10), sts("P", "width at top", 12))))
	assert.False(t, straight(made("P", schematic.KindPiece, part)))
}

func TestPiecesOfTheBodyAndThoseWorkedSideways(t *testing.T) {
	for k := range schematic.Kinds() {
		kind := schematic.Kind(k)
		assert.Equal(t, kind == schematic.KindBody || kind == schematic.KindBack || kind == schematic.KindFront, kind.Trunk(), kind.String())
	}
	for from := schematic.FromHem; from <= schematic.FromCentre; from++ {
		assert.Equal(t, from == schematic.FromLeft || from == schematic.FromRight, sideways(&schematic.Made{From: from}), "%d", from)
	}
}

// 40 rows of 5 mm are 20 cm of band, 20 stitches of 1 cm. Up to half as many more are drawn in by the rib: 30, not 31; five sixths do not
// ruffle: 17 (16.7) are enough and 16 are not.
func TestStitchesAlongABandWorkedSideways(t *testing.T) {
	for picked, found := range map[int]string{16: "narrower", 17: "", 20: "", 30: "", 31: "wider"} {
		p := pattern("M")
		m := made("Back", schematic.KindPiece)
		m.Piece = &schematic.Piece{}
		m.Steps = []schematic.Step{{Section: &schematic.Sideways{Rows: n(40)}}, {Section: &schematic.PickUp{}, After: picked}}
		list := band(p, &schematic.Garment{}, m)
		if found == "" {
			assert.Empty(t, list, "%d", picked)
			continue
		}
		if assert.Len(t, list, 1, "%d", picked) {
			assert.Equal(t, "the stitches picked up along the band make rows much "+found+" than it is long", list[0].Message)
			assert.Equal(t, "20 cm of band: about 20 stitches", list[0].Want)
			assert.Contains(t, list[0].Fix, "pick up about 1 in every 2 rows")
		}
	}
}

// A count that a line of the grading chose is one that it chose in every size.
func TestCountsAreChosenByALineIfAllOfThemAre(t *testing.T) {
	p := pattern("S", "M", "L")
	p.Grading = []schematic.Grading{{Kind: schematic.GradeArmhole}}
	p.Graded = []schematic.GradedValue{{Of: 0, Dim: expr.Stitches, Vals: expr.Counts(4, 5, 6)}}
	s := newSeries(p, "width", units.CM)
	s.counts, s.has = []int{4, 5, 6}, []bool{true, true, true}
	assert.NotNil(t, s.chosenBy(p))
	s.counts = []int{4, 5, 7}
	assert.Nil(t, s.chosenBy(p))
	s.counts, s.has = []int{4, 5, 0}, []bool{true, true, false}
	assert.NotNil(t, s.chosenBy(p), "a size without it says nothing")
	s.has = make([]bool, 3)
	assert.Nil(t, s.chosenBy(p), "no size has it")
	s.has, s.counts = []bool{true, true, true}, []int{4, 5, 6}
	p.Graded[0].Of = 1
	assert.Nil(t, s.chosenBy(p), "no such line")
}
