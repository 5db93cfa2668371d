package schematic

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// By hand: motifs of 60 mm. A triangle is 60 x √3/2 = 51.96 high; a hexagon of 60 across flats has sides of 60/√3 = 34.64, and its rows stand one and a half sides apart.
func TestWhereTheCornersOfMotifsLie(t *testing.T) {
	h, s := 51.961524, 34.641016
	for _, c := range []struct {
		shape     MotifShape
		r, c      int
		what      byte
		want      []Point
		area      float64
		whole     int
		halfMotif int
	}{
		{Square, 1, 0, 'x', []Point{{0, 0}, {60, 0}, {60, 60}, {0, 60}}, 3600, 1, 0},
		{Square, 0, 2, '/', []Point{{120, 60}, {180, 60}, {180, 120}}, 1800, 0, 1},
		{Square, 1, 1, '\\', []Point{{60, 0}, {120, 0}, {60, 60}}, 1800, 0, 1},
		{HalfSquare, 1, 1, 'x', []Point{{60, 0}, {120, 0}, {60, 60}}, 1800, 0, 1},
		{HalfSquare, 1, 1, '/', []Point{{60, 0}, {120, 0}, {120, 60}}, 1800, 0, 1},
		{Triangle, 1, 1, 'x', []Point{{30, 0}, {90, 0}, {60, h}}, 30 * h, 1, 0},
		{Triangle, 0, 1, 'x', []Point{{60, h}, {90, 2 * h}, {30, 2 * h}}, 30 * h, 1, 0},
		{Hexagon, 1, 0, 'x', []Point{{30, 0}, {60, s / 2}, {60, 1.5 * s}, {30, 2 * s}, {0, 1.5 * s}, {0, s / 2}}, 90 * s, 1, 0},
		{Hexagon, 0, 1, 'x', []Point{{120, 1.5 * s}, {150, 2 * s}, {150, 3 * s}, {120, 3.5 * s}, {90, 3 * s}, {90, 2 * s}}, 90 * s, 1, 0},
		{Hexagon, 1, 1, 'r', []Point{{90, 0}, {120, s / 2}, {120, 1.5 * s}, {90, 2 * s}}, 45 * s, 0, 1},
		{Hexagon, 1, 1, 'l', []Point{{90, 0}, {90, 2 * s}, {60, 1.5 * s}, {60, s / 2}}, 45 * s, 0, 1},
		{HalfHexagon, 1, 1, 'x', []Point{{90, 0}, {90, 2 * s}, {60, 1.5 * s}, {60, s / 2}}, 45 * s, 0, 1},
		{HalfHexagon, 1, 1, 'r', []Point{{90, 0}, {120, s / 2}, {120, 1.5 * s}, {90, 2 * s}}, 45 * s, 0, 1},
	} {
		m := &Motifs{Shape: c.shape}
		got := m.cell(c.r, c.c, 2, 60, c.what)
		if assert.Len(t, got, len(c.want)) {
			for i := range got {
				assert.InDelta(t, c.want[i].X, got[i].X, 1e-5, "%+v", c)
				assert.InDelta(t, c.want[i].Y, got[i].Y, 1e-5, "%+v", c)
			}
		}
		assert.InDelta(t, c.area, PolygonArea(got), 1e-3)
		m.Filled = []string{"." + string(c.what) + " "}
		whole, half := m.Count(0)
		assert.Equal(t, [2]int{c.whole, c.halfMotif}, [2]int{whole, half}, "%+v", c)
	}
}

// measuredGrid is a grid of motifs worked to its sizes: outline, edges and measurements.
func measuredGrid(s *Motifs) *freeform {
	g, f := newGrid(s, 0), &freeform{}
	g.border(f)
	g.name(f, 12)
	g.measure(f)
	return f
}

// By hand: squares of 50 mm joined at 2 are 52 apart. A yoke of 4 columns and 3 rows, of which the two in the middle of the top row are left out for the neck: 4 x 50 + 3 x 2 = 206 wide and 3 x 50 + 2 x 2 = 154 high; the neck is 2 x 52 wide and 52 deep.
func TestAGridOfSquaresWithANeck(t *testing.T) {
	f := measuredGrid(&Motifs{Shape: Square, Across: expr.Of(units.Int(50)), Joining: expr.Of(units.Int(2)), Armhole: expr.Counts(2), Filled: []string{"x..x", "xxxx", "xxxx"}})
	sizes := map[string]freeSize{}
	for _, s := range f.sizes {
		sizes[s.name] = s
	}
	assert.Equal(t, []units.Num{units.Int(206), units.Int(154), units.Int(50), units.Int(104), units.Int(52)},
		[]units.Num{sizes["width"].length, sizes["length"].length, sizes["motif"].length, sizes["neck width"].length, sizes["neck depth"].length})
	assert.Equal(t, []int{4, 3, 1}, []int{sizes["width"].count, sizes["length"].count, sizes["motif"].count})
	assert.Equal(t, []Point{{1, 0}, {51, 0}}, []Point{sizes["motif"].a, sizes["motif"].b})
	assert.Equal(t, []Point{{52, 156}, {156, 156}, {156, 104}, {156, 156}}, []Point{sizes["neck width"].a, sizes["neck width"].b, sizes["neck depth"].a, sizes["neck depth"].b})
	assert.Equal(t, []Point{{0, 0}, {208, 0}, {208, 0}, {208, 156}}, []Point{sizes["width"].a, sizes["width"].b, sizes["length"].a, sizes["length"].b})
	names := map[string]int{}
	left, right, sts := 0, 0, 0
	for _, d := range f.loops[0] {
		names[d.seg.name]++
		sts += d.seg.sts
		if d.left {
			left++
		}
		if d.right {
			right++
		}
	}
	assert.Equal(t, map[string]int{"bottom edge": 4, "side": 2, "armhole": 4, "top edge": 2, "neck": 4}, names)
	assert.Equal(t, []int{3, 3, 16 * 12}, []int{left, right, sts})
	assert.Len(t, f.lines, 3+3+2+4, "joinings in each of two rows, and between the rows")
}

// By hand: of one square no motif is told apart from the whole; hexagons of 60 joined at 3 stand 63 apart, two rows of 2 are 2.5 x 63 less 3 wide, and 3.5 sides of 63/√3 less 2/√3 x 3 high.
func TestGridsOfOtherMotifs(t *testing.T) {
	f := measuredGrid(&Motifs{Shape: Square, Across: expr.Of(units.Int(50)), Columns: expr.Counts(1), Rows: expr.Counts(1)})
	assert.Len(t, f.sizes, 2)
	assert.Len(t, f.loops[0], 4)
	two := measuredGrid(&Motifs{Shape: Square, Across: expr.Of(units.Int(50)), Columns: expr.Counts(2), Rows: expr.Counts(1)})
	assert.Len(t, two.sizes, 3)
	assert.Len(t, two.lines, 1)
	f = measuredGrid(&Motifs{Shape: Hexagon, Across: expr.Of(units.Int(60)), Joining: expr.Of(units.Int(3)), Columns: expr.Counts(2), Rows: expr.Counts(2)})
	assert.InDelta(t, 2.5*63-3, f.sizes[0].length.Float(), 1e-3)
	assert.InDelta(t, 3.5*63/math.Sqrt(3)-6/math.Sqrt(3), f.sizes[1].length.Float(), 1e-3)
	assert.Len(t, f.lines, 5, "one in each row and three between the rows")
	f = measuredGrid(&Motifs{Shape: Triangle, Across: expr.Of(units.Int(60)), Joining: expr.Of(units.Int(3)), Columns: expr.Counts(2), Rows: expr.Counts(1)})
	pitch := 60 + 3*math.Sqrt(3)
	assert.InDelta(t, 1.5*pitch-3*math.Sqrt(3), f.sizes[0].length.Float(), 1e-3)
	assert.InDelta(t, pitch*math.Sqrt(3)/2-3, f.sizes[1].length.Float(), 1e-3)
	lo, hi := bounds([]Point{{3, -2}, {-1, 7}, {0, 0}})
	assert.Equal(t, [2]Point{{-1, -2}, {3, 7}}, [2]Point{lo, hi})
	lo, hi = bounds(nil)
	assert.Greater(t, lo.X, hi.X)
}

// By hand: at the crossing of two squares that meet at a corner the leftmost way keeps them one loop each, or one in all, but loses none of the eight sides.
func TestMotifsThatMeetAtACorner(t *testing.T) {
	f := measuredGrid(&Motifs{Shape: Square, Across: expr.Of(units.Int(50)), Filled: []string{".x", "x."}})
	n := 0
	for _, l := range f.loops {
		n += len(l)
		assert.Positive(t, PolygonArea(loopPoints([][]drawn{l})[0]))
	}
	assert.Equal(t, 8, n)
}

// By hand: of a corner of 90 degrees in rows of the same height and width each row takes 2; 20 rows make 20 of them, a point of 1 stitch out of 41 the same.
func TestAMitreThatRunsIntoItsPoint(t *testing.T) {
	square := Gauge{Stitches: units.Int(20), Rows: units.Int(20), Over: units.Int(100)}
	of := func(n, rows, after int, increase bool) mitring {
		f := &Fitting{Chooser: &between{was: square, now: square}, N: n, step: Step{Rows: rows, After: after}}
		return f.mitred(&Mitre{Increase: increase}, mitring{2, 1, rows}, math.Pi/4)
	}
	assert.Equal(t, mitring{2, 1, 20}, of(41, 20, 1, false))
	assert.Equal(t, mitring{2, 1, 15}, of(31, 20, 1, false), "as many as there are stitches for")
	assert.Equal(t, mitring{2, 1, 20}, of(61, 20, 21, false))
	assert.Equal(t, mitring{2, 1, 10}, of(22, 20, 21, false), "to one stitch at the least")
	assert.Equal(t, mitring{2, 1, 20}, of(3, 20, 43, true))
}
