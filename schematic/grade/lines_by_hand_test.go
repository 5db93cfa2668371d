package grade

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// By hand: 160 stitches lose 80 in 4 rounds over 40 rows, 20 in every tenth.
func TestTheRowsOfAYokeLieBetweenItsRounds(t *testing.T) {
	yoke := with(t, counted(t, schematic.GradeYoke, "yoke", "160 sts"), "neck", "80 sts", "over", "40 rows")
	yoke.Rounds = 4
	vals, found := Resolve(gradedPattern(t, cloth(18, 24), yoke))
	require.Empty(t, found)
	for k := 1; k <= 4; k++ {
		assert.Equal(t, 10, ints(find(t, vals, fmt.Sprintf("yoke rows %d", k)))[0], k)
		assert.Equal(t, 20, ints(find(t, vals, fmt.Sprintf("yoke decreases %d", k)))[0], k)
		assert.Equal(t, 160-20*k, ints(find(t, vals, fmt.Sprintf("yoke left %d", k)))[0], k)
	}
}

// A count is as even as another although its line stands before it: of 4 + 1 all are odd.
func TestACountIsLikeOneThatStandsLater(t *testing.T) {
	front, back := counted(t, schematic.GradeStitches, "front", "bust / 2"), counted(t, schematic.GradeStitches, "back", "bust / 2 + 3 cm")
	front.Like, back.Multiple, back.Plus = "back", 4, 1
	vals, found := Resolve(gradedPattern(t, cloth(18, 24), front, back))
	require.Empty(t, found)
	for i, n := range ints(find(t, vals, "front")) {
		assert.Equal(t, 1, n%2, i)
	}
}

// A length where stitches or rows are needed is told where it stands.
func TestAWrongUnitIsToldAtItsPlace(t *testing.T) {
	at := func(col int, text string) schematic.GradedSum {
		s := sum(t, text)
		s.Pos.Col = col
		return s
	}
	for _, c := range []struct {
		yoke, over string
		col        int
		message    string
	}{{"40 cm", "40 rows", 20, `"yoke" is a length here, and a number of stitches is needed`}, {"160 sts", "40 cm", 40, `"over" is a length here, and a number of rows is needed`}} {
		yoke := schematic.Grading{Name: "yoke", Kind: schematic.GradeYoke, Rounds: 2, Sum: at(20, c.yoke), With: map[string]schematic.GradedSum{"neck": at(30, "80 sts"), "over": at(40, c.over)}}
		_, found := Resolve(gradedPattern(t, cloth(18, 24), yoke))
		require.Len(t, found, 1)
		assert.Equal(t, c.message, found[0].Message)
		assert.Equal(t, c.col, found[0].Pos.Col)
	}
}

// What follows from a line that can't be worked out is not told.
func TestWhatFollowsFromAFailedLineIsNotTold(t *testing.T) {
	odd := counted(t, schematic.GradeStitches, "odd one", "bust / 2")
	odd.Multiple, odd.Odd = 4, true
	_, found := Resolve(gradedPattern(t, cloth(18, 24), odd, value(t, "wider", "odd one + 2 sts"), value(t, "widest", "wider x 2")))
	assert.Len(t, found, 1, "%v", found)
}

// By hand: 5.3 cm at 18 over 10 cm are 9.54 stitches. 10 are the nearest, also where 9 are the least; of at least 12 there is no other.
func TestWhyACountWasTaken(t *testing.T) {
	for least, want := range map[int]string{0: "taken: 10 sts, the nearest", 9: "taken: 10 sts, the nearest", 10: "10 sts make 5.56 cm (+0.26 cm), the least that there may be", 12: "12 sts make 6.67 cm (+1.37 cm), the least that there may be"} {
		g := counted(t, schematic.GradeStitches, "few", "5.3 cm")
		g.Least = least
		all := Explain(gradedPattern(t, cloth(18, 24), g), 0)
		require.NotEmpty(t, all)
		assert.Contains(t, strings.Join(all[0].Lines, "\n"), want, least)
	}
}

// The sums of a line are told with the names of its keys, and its own without.
func TestASumIsToldWithItsKey(t *testing.T) {
	all := Explain(gradedPattern(t, cloth(18, 24), value(t, "wide", "40 sts"), value(t, "deep", "30 rows"), with(t, counted(t, schematic.GradeSpread, "grow", "wide / 4"), "over", "deep - 2 rows")), 0)
	text := strings.Join(all[len(all)-1].Lines, "\n")
	assert.Contains(t, text, "over: deep - 2 rows = 30 rows - 2 rows = 28 rows")
	assert.Contains(t, text, "wide / 4 = 40 sts / 4 = 10 sts")
	assert.NotContains(t, text, "spread: ")
}

func TestSumsOfOneLineStandInTheirOrder(t *testing.T) {
	p := gradedPattern(t, cloth(18, 24), value(t, "wide", "40 sts"))
	vals, found := Resolve(p)
	require.Empty(t, found)
	p.Graded = vals
	for _, c := range []struct {
		line, col int
		text      string
	}{{9, 4, "wide + 3 sts"}, {7, 30, "wide + 2 sts"}, {7, 10, "wide + 1 st"}} {
		p.Calls = append(p.Calls, schematic.Call{Sum: sum(t, c.text).Sum, Pos: finding.Pos{Line: c.line, Col: c.col}})
	}
	got := calledSums(p, 0)
	require.Len(t, got, 3)
	for i, n := range []string{"= 41 sts", "= 42 sts", "= 43 sts"} {
		assert.Contains(t, got[i], n)
	}
}

// By hand: a back of 50 cm alone is 100 around; with a front of 45 it is 95; a round body is told by itself.
func TestABackAloneCountsTwice(t *testing.T) {
	piece := func(kind schematic.Kind, cm int64) *schematic.Made {
		return &schematic.Made{Name: kind.String(), Kind: kind, Make: 1, Measures: []schematic.Measure{{Name: "bust", Length: units.Int(10 * cm), Count: int(cm)}}}
	}
	of := func(pieces ...*schematic.Made) *against {
		return wholeGirth([]*schematic.Garment{{Pieces: pieces}}, "bust", 1)
	}
	assert.Equal(t, "1000", of(piece(schematic.KindBack, 50)).made.Vals[0].String())
	assert.Equal(t, "900", of(piece(schematic.KindFront, 45)).made.Vals[0].String())
	assert.Equal(t, "950", of(piece(schematic.KindBack, 50), piece(schematic.KindFront, 45)).made.Vals[0].String())
	assert.Nil(t, of(piece(schematic.KindBody, 90)))
}

func TestTheRowOfASheetInWhichALinesNumberStands(t *testing.T) {
	ease, back := value(t, "Ease", "10 cm"), counted(t, schematic.GradeStitches, "Back", "40 cm")
	assert.Equal(t, "ease", inputName(&ease))
	assert.Equal(t, "back, target", inputName(&back))
}

// A grid of 4 by 3 motifs is 12 sections more; one of no columns has none.
func TestMotifsCountAsSections(t *testing.T) {
	of := func(columns, rows expr.Graded) int {
		f := &follower{p: &schematic.Pattern{Pieces: []*schematic.Piece{{Motifs: &schematic.Motifs{Columns: columns, Rows: rows}}}}}
		return f.sections()
	}
	none := of(expr.Graded{}, expr.Graded{})
	assert.Equal(t, none, of(expr.Graded{}, expr.Counts(3)))
	assert.Equal(t, none, of(expr.Counts(4), expr.Graded{}))
	assert.Equal(t, 12*(of(expr.Counts(1), expr.Counts(1))-none), of(expr.Counts(4), expr.Counts(3))-none)
}
