package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/units"
)

// By hand: an edge that slants from 0 to 10 mm over 20 mm of height is at 2.5 at 5 mm; a level one crosses no height.
func TestWhereAnEdgeCrossesAHeight(t *testing.T) {
	slope := seg{a: pt{units.Int(0), units.Int(0)}, b: pt{units.Int(10), units.Int(20)}}
	down := seg{a: slope.b, b: slope.a}
	for y, want := range map[float64]float64{0: 0, 5: 2.5, 20: 10} {
		for _, s := range []seg{slope, down} {
			x, ok := s.at(y)
			assert.True(t, ok)
			assert.InDelta(t, want, x, 1e-9)
		}
	}
	for _, y := range []float64{-0.1, 20.1} {
		_, ok := slope.at(y)
		assert.False(t, ok)
	}
	_, ok := seg{a: pt{}, b: pt{x: units.Int(5)}}.at(0)
	assert.False(t, ok)
}

// By hand: a piece 100 mm wide and 40 high, its right side 10 mm farther in above 20. A mark 5 mm in from an edge, at a height of 10 or 30, whichever way the piece is worked; one that is on no edge lies where it is.
func TestWhereAMarkIsPlaced(t *testing.T) {
	side := func(s segSide, x0, y0, x1, y1 int64) drawn {
		d := drawnFrom("side", x0, y0, x1, y1)
		d.seg.side, d.seg.a, d.seg.b = s, d.ex, d.ez
		return d
	}
	loop := [][]drawn{{side(segNone, 0, 0, 100, 0), side(segRight, 100, 0, 100, 20), side(segRight, 90, 20, 90, 40), side(segLeft, 0, 40, 0, 0), side(segLeft, 30, 40, 30, 0)}}
	for _, c := range []struct {
		from Direction
		side segSide
		y    int64
		want Point
	}{
		{FromHem, segRight, 10, Point{95, 10}}, {FromHem, segRight, 30, Point{85, 30}}, {FromHem, segRight, 20, Point{95, 20}}, {FromHem, segLeft, 10, Point{5, 10}}, {FromHem, segLeft, 50, Point{12, 50}}, {FromNeck, segRight, 10, Point{-95, -10}}, {FromCentre, segLeft, 10, Point{-5, -10}},
		{FromLeft, segRight, 10, Point{10, -95}}, {FromRight, segLeft, 10, Point{-10, 5}}, {FromHem, segNone, 10, Point{7, 10}},
	} {
		w := &worker{piece: &Piece{From: c.from}}
		got := w.placed(loop, mark{side: c.side, at: pt{units.Int(7), units.Int(c.y)}, inset: units.Int(5)})
		assert.InDelta(t, c.want.X, got.X, 1e-9, "%+v", c)
		assert.InDelta(t, c.want.Y, got.Y, 1e-9, "%+v", c)
	}
	panels := func(n int) (out []bool) {
		w := &worker{}
		for i := range n {
			w.views = append(w.views, &canvas{name: string(rune('A' + i)), panel: true})
		}
		w.views = append(w.views, &canvas{name: "whole"}, &canvas{name: "gone", panel: true, dead: true})
		for i := range n {
			out = append(out, w.middlePanel(string(rune('A'+i))))
		}
		return out
	}
	assert.Equal(t, []bool{false, true, false}, panels(3))
	assert.Equal(t, []bool{false, false, false, false}, panels(4))
}

// By hand, at a stitch of 5 mm and a row of 4: 20 mm are 5 rows and 4 stitches, 22 are 5.5 and 4.4.
func TestOfHowManyRowsOrStitchesALengthIs(t *testing.T) {
	g := &Gauge{Stitches: units.Int(20), Rows: units.Int(25), Over: units.Int(100)}
	rows, of := rowsIn(units.Int(20), g)
	assert.Equal(t, 5, rows)
	assert.Same(t, g, of)
	rows, of = rowsIn(units.Int(22), g)
	assert.Zero(t, rows)
	assert.Same(t, g, of)
	rows, of = rowsIn(units.Int(20), nil)
	assert.Zero(t, rows)
	assert.Nil(t, of)
	assert.Equal(t, []int{4, 4, 9, 0}, []int{stitchesIn(units.Int(20), 4, g), stitchesIn(units.Int(20), 2, g), stitchesIn(units.Int(20), 9, nil), stitchesIn(units.Int(22), 4, g)})
	a, b := pt{units.Int(3), units.Int(9)}, pt{units.Int(5), units.Int(2)}
	lo, hi := orderedUp(a, b)
	assert.Equal(t, [2]pt{b, a}, [2]pt{lo, hi})
	lo, hi = orderedUp(b, a)
	assert.Equal(t, [2]pt{b, a}, [2]pt{lo, hi})
	for _, c := range []struct {
		from   Direction
		lasts  bool
		ya, yb float64
		want   bool
	}{{FromHem, true, 10, 40, true}, {FromHem, true, 40, 10, false}, {FromHem, false, 10, 40, false}, {FromNeck, true, 40, 10, true}, {FromNeck, true, 10, 40, false}, {FromHem, true, 10, 10, true}, {FromNeck, true, 10, 10, true}} {
		m := &Made{From: c.from}
		assert.Equal(t, c.want, m.lastsTo(&Measure{lasts: c.lasts, A: Point{Y: c.ya}}, &Measure{A: Point{Y: c.yb}}), "%+v", c)
	}
}

// A measurement of an edge's own name, at the place of one that is shown, is left out; of one name the second has a number. Upright ones are at one place whatever their x, level ones whatever the height of their ends.
func TestEachDimensionIsShownOnce(t *testing.T) {
	at := func(id, name string, axis Axis, ax, ay, bx, by float64) Measure {
		return Measure{ID: id, Name: name, Axis: axis, A: Point{ax, ay}, B: Point{bx, by}, Main: true, Length: units.Int(int64(ax + 7*ay + 13*bx + 29*by))}
	}
	m := &Made{Measures: []Measure{
		at("p.depth", "depth", Vertical, 0, 0, 0, 40), at("p.depth", "depth", Vertical, 10, 0, 10, 50), at("p.height", "height of tab", Vertical, 90, 0, 80, 40), at("p.other", "height of tab", Vertical, 0, 0, 0, 45),
		at("p.hem", "hem", Horizontal, 0, 0, 60, 0), at("p.wide", "width of tab", Horizontal, 0, 0, 60, 9), at("p.less", "width of tab", Horizontal, 0, 0, 50, 9), at("p.twice", "side", Vertical, 0, 0, 0, 40), at("p.slant", "width of tab", Slanted, 0, 0, 60, 0),
	}}
	m.settleMeasures()
	var ids []string
	for _, s := range m.Measures {
		ids = append(ids, s.ID)
	}
	assert.Equal(t, []string{"p.depth", "p.depth.2", "p.other", "p.hem", "p.less", "p.twice", "p.slant"}, ids)
}
