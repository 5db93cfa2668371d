package check

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

func cm(n, d int64) units.Num { return units.Of(units.Frac(n, d), units.CM) }

func inch(n, d int64) units.Num { return units.Of(units.Frac(n, d), units.Inch) }

// fabric is 10 sts and 20 rows over 10 cm: a stitch of 1 cm, a row of half a
// centimetre, so that tolerances can be read off.
var fabric = schematic.Gauge{Name: "fabric", Stitches: units.Int(10), Rows: units.Int(20), Over: cm(10, 1)}

func pattern(sizes ...string) *schematic.Pattern {
	return &schematic.Pattern{File: "vest.yaml", Title: "Vest", Units: units.CM, Steps: units.Usual,
		Sizes: expr.Sizes{Names: sizes, Groups: []int{1, len(sizes) - 1}}, Gauges: []schematic.Gauge{fabric}}
}

// sts is a width of n stitches at 1 cm, and rows a height of n rows at 5 mm.
func sts(piece, name string, n int) schematic.Measure {
	return schematic.Measure{ID: schematic.ID(piece) + "." + schematic.ID(name), Name: name, Axis: schematic.Horizontal, Main: true,
		Count: n, Of: "st", Length: cm(int64(n), 1)}
}

func rows(piece, name string, n int) schematic.Measure {
	return schematic.Measure{ID: schematic.ID(piece) + "." + schematic.ID(name), Name: name, Axis: schematic.Vertical, Main: true,
		Count: n, Of: "row", Length: cm(int64(n), 2)}
}

func made(name string, kind schematic.Kind, measures ...schematic.Measure) *schematic.Made {
	return &schematic.Made{ID: schematic.ID(name), Name: name, Kind: kind, Make: 1, Measures: measures}
}

func garments(p *schematic.Pattern, pieces func(i int) []*schematic.Made) []*schematic.Garment {
	var gs []*schematic.Garment
	for i, s := range p.Sizes.Names {
		gs = append(gs, &schematic.Garment{Pattern: p, Size: s, Index: i, Pieces: pieces(i)})
	}
	return gs
}

func kinds(l finding.List) []string {
	all := []string{}
	for _, f := range l {
		all = append(all, f.Kind)
	}
	return all
}

func TestTheSameFindingOfSeveralSizesIsToldOnceWithItsNumbersInTheTradesLine(t *testing.T) {
	p := pattern("XS", "S", "M", "2X")
	gs := garments(p, func(int) []*schematic.Made { return nil })
	pos := finding.Pos{File: "vest.yaml", Line: 12, Col: 3}
	for i, n := range []int{0, 33, 37, 41} {
		if i == 0 {
			continue
		}
		gs[i].Findings = finding.List{{Kind: "arithmetic/count", Pos: pos, Piece: "Back",
			Message: fmt.Sprintf("after this section there are %d stitches, not 50", n), Have: fmt.Sprintf("%d left of 2X", n), Fix: "count again"}}
	}
	got := Pattern(p, gs)
	require.Len(t, got, 1)
	assert.Equal(t, []string{"S", "M", "2X"}, got[0].Sizes)
	assert.Equal(t, "after this section there are – (33, 37, 41) stitches, not 50", got[0].Message)
	assert.Equal(t, "– (33, 37, 41) left of 2X", got[0].Have, "the name of a size is no number")
	assert.Equal(t, "count again", got[0].Fix)
}

func TestAFindingOfAllSizesNamesNoneAndOtherThingsStayApart(t *testing.T) {
	p := pattern("S", "M")
	gs := garments(p, func(int) []*schematic.Made { return nil })
	for i := range gs {
		gs[i].Findings = finding.List{
			{Kind: "arithmetic/count", Pos: finding.Pos{Line: 4}, Message: "7 left"},
			{Kind: "arithmetic/count", Pos: finding.Pos{Line: 9}, Message: "7 left"},
		}
	}
	gs[1].Findings = append(gs[1].Findings, finding.Finding{Kind: "arithmetic/start", Pos: finding.Pos{Line: 9}, Message: "nothing here"})
	got := Pattern(p, gs)
	require.Len(t, got, 3)
	assert.Empty(t, got[0].Sizes)
	assert.Empty(t, got[1].Sizes)
	assert.Equal(t, []string{"M"}, got[2].Sizes)
}

func TestTextsThatDifferInMoreThanNumbersNameTheirSizes(t *testing.T) {
	p := pattern("S", "M")
	gs := garments(p, func(int) []*schematic.Made { return nil })
	gs[0].Findings = finding.List{{Kind: "arithmetic/count", Message: "7 left", Fix: "add 1 stitch"}}
	gs[1].Findings = finding.List{{Kind: "arithmetic/count", Message: "8 left", Fix: "take 2 stitches off"}}
	got := Pattern(p, gs)
	require.Len(t, got, 1)
	assert.Equal(t, "7 (8) left", got[0].Message)
	assert.Equal(t, "S: add 1 stitch; M: take 2 stitches off", got[0].Fix)
}

func TestEveryKindIsInTheTable(t *testing.T) {
	for _, k := range []string{"drawn/written", "drawn/missing", "drawn/unknown", "units/pair", "grading/missing", "grading/hole", "grading/backwards",
		"grading/jump", "grading/ease", "joins/length", "joins/count", "joins/rate", "joins/ease", "joins/gather"} {
		assert.True(t, finding.Known(k), k)
	}
}
