package grade

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/body"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// M by hand, as in the test of a sum of body and ease: target 53.26 cm, 94
// stitches of 18 over 10 cm make 52.222 cm, 1.038 cm less.
func TestTheTableTellsBodyEaseTargetCountAndDifference(t *testing.T) {
	back := counted(t, schematic.GradeStitches, "back stitches", "bust round / 2")
	back.Multiple, back.Plus = 4, 2
	p := gradedPattern(t, cloth(18, 24), value(t, "ease", "10 cm"), value(t, "bust round", "bust + ease"), back)
	vals, found := Resolve(p)
	require.Empty(t, found)
	p.Graded = vals
	tab := TableOf(p, nil)
	require.Len(t, tab.Parts, 3)
	part := tab.Parts[2]
	assert.Equal(t, "stitches bust round / 2, multiple of 4 + 2", part.How)
	var got []string
	for _, r := range part.Rows {
		got = append(got, kindNames[r.Kind]+" "+r.Label(units.CM)+" "+r.Text(2, units.CM))
	}
	assert.Equal(t, []string{"body bust, cm 96.52", "ease ease, cm 10", "target target, cm 53.26", "count stitches 94", "makes makes, cm 52.22", "difference difference, cm -1.04"}, got)
}

func TestAWrongDigitIsMarkedAsAJump(t *testing.T) {
	even := expr.Counts(60, 66, 72, 78, 84, 90)
	assert.NotContains(t, jumps(even, expr.Stitches), true)
	wrong := expr.Counts(60, 66, 72, 98, 84, 90)
	assert.Equal(t, []bool{false, false, false, true, false, false}, jumps(wrong, expr.Stitches))
	// The published bodies are graded well, save for babies' arms, which jump from 14 in to 18 in in the standard
	// itself, and for heads, which it gives for a few ages only.
	for _, name := range body.Published() {
		b, _ := body.Named(name)
		for _, r := range b.Rows {
			if r.Name == "head" || name == "babies" && r.Name == "centre back to cuff" {
				continue
			}
			assert.NotContains(t, jumps(r.High, expr.LengthOf), true, "%s %s", name, r.Name)
		}
	}
}

func TestWhatTheCountsMakeStandsAgainstTheBody(t *testing.T) {
	p := gradedPattern(t, cloth(20, 25))
	p.Pieces = []*schematic.Piece{{Name: "Sleeve", Kind: schematic.KindSleeve, Make: expr.Const(units.Int(2), 9), Sections: []schematic.Section{
		&schematic.CastOn{Stitches: expr.Const(units.Int(50), 9)},
		&schematic.Shape{Shapings: []schematic.Shaping{{Increase: true, By: expr.Const(units.Int(1), 9), At: schematic.BothEdges, Every: expr.Const(units.Int(4), 9), Times: expr.Const(units.Int(10), 9)}}},
	}}}
	tab := TableOf(p, bysize.WorkAll(p))
	require.NotEmpty(t, tab.Parts)
	arm := tab.Parts[0]
	assert.Equal(t, "Sleeve: upper arm", arm.Name)
	assert.Equal(t, "35", arm.Rows[2].Text(2, units.CM))   // 70 × 5 mm
	assert.Equal(t, "7.06", arm.Rows[3].Text(2, units.CM)) // less 11 in
}

// A body that grows by half an inch in every second size, at 30 rows over 4 in, steps by 4 rows (3.75), which is
// 1.35 cm and no wrong digit; 8 rows are.
func TestAFewFineRowsAreNoJump(t *testing.T) {
	of := func(rows ...int) TableRow {
		g, makes := expr.Counts(rows...), expr.Graded{}
		for i := range g.Vals {
			makes.Vals, makes.Has = append(makes.Vals, g.Vals[i].Mul(units.Frac(1016, 300))), append(makes.Has, true)
		}
		r := TableRow{Kind: RowCount, Dim: expr.Rows, Vals: g, Jump: jumps(g, expr.Rows)}
		small(&r, makes)
		return r
	}
	assert.NotContains(t, of(105, 105, 109, 109, 113, 113, 116).Jump, true)
	assert.Equal(t, []bool{false, false, true, false, false, false}, of(105, 105, 113, 113, 114, 114).Jump)
}

// Both fronts and both armholes of a back are measured; where they are alike they are told once.
func TestTheTwoSidesOfAPieceAreToldOnce(t *testing.T) {
	p := gradedPattern(t, cloth(20, 25))
	n := func(v int64) expr.Graded { return expr.Const(units.Int(v), 9) }
	p.Pieces = []*schematic.Piece{{Name: "Back", Kind: schematic.KindBack, Make: n(1), Sections: []schematic.Section{
		&schematic.CastOn{Stitches: n(100)},
		&schematic.Even{Amount: schematic.Amount{Rows: n(60)}},
		&schematic.BindOff{Stitches: n(6), At: schematic.BothEdges, Edge: "armhole"},
		&schematic.Even{Amount: schematic.Amount{Rows: n(50)}},
		&schematic.BindOff{All: true},
	}}}
	names := map[string]int{}
	for _, part := range TableOf(p, bysize.WorkAll(p)).Parts {
		names[part.Name]++
	}
	assert.Equal(t, 1, names["Back: armhole depth"], "%v", names)
}

var kindNames = [...]string{"body", "ease", "value", "target", "count", "makes", "difference"}
