package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A square of 10 with a hole of 2 in its middle, and a triangle of 12 by 12 standing on its side; every crossing in the margin.
func TestWhereLinesCrossAnOutline(t *testing.T) {
	square := []Point{{0, 0}, {10, 0}, {10, 10}, {0, 10}}
	hole := []Point{{4, 4}, {4, 6}, {6, 6}, {6, 4}}
	triangle := []Point{{0, 0}, {12, 0}, {0, 12}}
	both := [][]Point{square, hole}

	assert.InDelta(t, 100, PolygonArea(square), 1e-12)
	assert.InDelta(t, -4, PolygonArea(hole), 1e-12)
	assert.InDelta(t, 72, PolygonArea(triangle), 1e-12)

	assert.InDeltaSlice(t, []float64{-2, 8}, crossings([][]Point{square}, Point{2, 5}, Point{1, 0}), 1e-12)
	assert.InDeltaSlice(t, []float64{-8, 2}, crossings([][]Point{square}, Point{2, 5}, Point{-1, 0}), 1e-12, "the other way")
	assert.InDeltaSlice(t, []float64{-2, 2, 4, 8}, crossings(both, Point{2, 5}, Point{1, 0}), 1e-12)
	// from (1, 1), 3 to the right and 4 up for every 5: the top, 9 higher, is 9 / 0.8 away, and the foot -1 / 0.8.
	assert.InDeltaSlice(t, []float64{-1.25, 11.25}, crossings([][]Point{square}, Point{1, 1}, Point{0.6, 0.8}), 1e-12)

	at, ok := exit(both, Point{2, 5}, Point{1, 0})
	assert.True(t, ok)
	assert.Equal(t, Point{4, 5}, at)
	at, ok = exit([][]Point{square}, Point{1, 1}, Point{0.6, 0.8})
	assert.True(t, ok)
	assert.InDeltaSlice(t, []float64{7.75, 10}, []float64{at.X, at.Y}, 1e-12)
	at, ok = exit([][]Point{square}, Point{10, 5}, Point{1, 0})
	assert.False(t, ok, "%v", at)

	// 0.37 of the way up the square are 3.7, and its middle 5 across; up the triangle 4.44, where it is 7.56 wide.
	for _, k := range []struct {
		loops [][]Point
		d     Point
		x, y  float64
	}{
		{[][]Point{square}, Point{0, 1}, 5, 3.7},
		{[][]Point{square}, Point{1, 0}, 3.7, 5},
		{[][]Point{triangle}, Point{0, 1}, 3.78, 4.44},
		{[][]Point{{{20, 30}, {30, 30}, {30, 40}, {20, 40}}}, Point{0, 1}, 25, 33.7},
		{[][]Point{{{0, 0}, {10, 0}, {10, 10}, {8, 10}, {8, 2}, {4, 2}, {4, 10}, {0, 10}}}, Point{0, 1}, 2, 3.7}, // two legs, of 4 and 2
	} {
		p := inside(k.loops, k.d)
		assert.InDeltaSlice(t, []float64{k.x, k.y}, []float64{p.X, p.Y}, 1e-9)
		assert.True(t, InPolygon(k.loops[0], p))
	}
	for _, k := range []struct {
		p  Point
		in bool
	}{{Point{1, 1}, true}, {Point{7, 4.9}, true}, {Point{7, 5.1}, false}, {Point{-0.1, 5}, false}, {Point{13, 0.5}, false}, {Point{5, -0.1}, false}} {
		assert.Equal(t, k.in, InPolygon(triangle, k.p), k.p)
	}
}
