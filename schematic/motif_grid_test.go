package schematic

import (
	"testing"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"

	"github.com/stretchr/testify/assert"
)

func gridOf(rows ...string) *Made {
	one := func(n int64) expr.Graded { return expr.Const(units.Int(n), 1) }
	p := &Pattern{Sizes: expr.Sizes{Names: []string{"One"}, Groups: []int{1}}, Gauges: []Gauge{{Name: "fabric"}},
		Pieces: []*Piece{{Name: "Front", Motifs: &Motifs{Shape: Square, Across: one(100), Joining: one(10), Filled: rows, Side: one(20)}}}}
	p.Gauges[0] = Gauge{Name: "fabric", Stitches: units.Int(20), Rows: units.Int(20), Over: units.Int(100)}
	return Work(p, 0).Pieces[0]
}

func TestTheEdgesOfAGridOfMotifsHaveNamesAndStitches(t *testing.T) {
	m := gridOf("x..x", "xxxx")
	count := map[string]int{}
	for _, e := range m.Edges {
		count[e.Name] += e.Stitches
	}
	// Two motifs deep and four wide: each side of a motif, 20 stitches, lies on one edge. The neck is one motif down, two across
	// and one up.
	assert.Equal(t, map[string]int{"bottom edge": 4 * 20, "side": 2 * 2 * 20, "top edge": 2 * 20, "neck": 4 * 20}, count)
	byName := map[string]float64{}
	for _, s := range m.Measures {
		byName[s.Name] = s.Length.Float()
	}
	// 4 × 100 + 3 × 10 mm wide, 2 × 100 + 10 mm long; the gap of two motifs with their joinings is 2 × 110 mm.
	assert.Equal(t, map[string]float64{"width": 430, "length": 210, "motif": 100, "neck width": 220, "neck depth": 110}, byName)
}
