package sheet_test

import (
	"math"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/clip"
	"github.com/paulmach/orb/planar"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/layout/sheet"
)

func drawBox(t *rapid.T, label string) sheet.Box {
	turn := rapid.Float64Range(-4, 4).Draw(t, label+" turn")
	at := rapid.Float64Range(-6, 6)
	half := rapid.Float64Range(0.1, 6)
	sin, cos := math.Sincos(turn)
	return sheet.Box{C: sheet.Point{X: at.Draw(t, "x"), Y: at.Draw(t, "y")}, U: sheet.Point{X: cos, Y: sin},
		HalfW: half.Draw(t, "w"), HalfH: half.Draw(t, "h")}
}

// seen is p as box b sees it: b upright around 0, 0.
func seen(b sheet.Box, p sheet.Point) orb.Point {
	x, y := p.X-b.C.X, p.Y-b.C.Y
	return orb.Point{x*b.U.X + y*b.U.Y, y*b.U.X - x*b.U.Y}
}

func bound(b sheet.Box) orb.Bound {
	return orb.Bound{Min: orb.Point{-b.HalfW, -b.HalfH}, Max: orb.Point{b.HalfW, b.HalfH}}
}

// Held against the clipping of github.com/paulmach/orb: two boxes overlap if one
// clipped to the other has an area.
func TestBoxesOverlapWhereTheirClippedAreaSays(t *testing.T) {
	both := [2]int{}
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawBox(t, "a"), drawBox(t, "b")
		v := sheet.Point{X: -b.U.Y, Y: b.U.X}
		var ring orb.Ring
		for _, c := range [5][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}, {-1, -1}} {
			ring = append(ring, seen(a, sheet.Point{
				X: b.C.X + c[0]*b.HalfW*b.U.X + c[1]*b.HalfH*v.X,
				Y: b.C.Y + c[0]*b.HalfW*b.U.Y + c[1]*b.HalfH*v.Y}))
		}
		area := 0.0
		if left := clip.Polygon(bound(a), orb.Polygon{ring}); left != nil {
			area = math.Abs(planar.Area(left))
		}
		if area > 0 && area < 1e-6 {
			t.Skip("they only touch")
		}
		require.Equal(t, area > 0, a.Overlaps(b))
		require.Equal(t, a.Overlaps(b), b.Overlaps(a))
		if area > 0 {
			both[1]++
		} else {
			both[0]++
		}
	})
	require.Positive(t, both[0])
	require.Positive(t, both[1])
}

func TestALineTouchesABoxWhereClippingLeavesAnyOfIt(t *testing.T) {
	both := [2]int{}
	rapid.Check(t, func(t *rapid.T) {
		b := drawBox(t, "box")
		at := rapid.Float64Range(-12, 12)
		p := sheet.Point{X: at.Draw(t, "px"), Y: at.Draw(t, "py")}
		q := sheet.Point{X: at.Draw(t, "qx"), Y: at.Draw(t, "qy")}
		if math.Hypot(p.X-q.X, p.Y-q.Y) < 1e-3 {
			t.Skip("a point")
		}
		long := 0.0
		for _, part := range clip.LineString(bound(b), orb.LineString{seen(b, p), seen(b, q)}) {
			long += planar.Length(part)
		}
		if long < 1e-6 && b.Grown(1e-6).Touches(p, q) != b.Touches(p, q) {
			t.Skip("it only touches")
		}
		require.Equal(t, long > 0, b.Touches(p, q))
		if long > 0 {
			both[1]++
		} else {
			both[0]++
		}
	})
	require.Positive(t, both[0])
	require.Positive(t, both[1])
}

func TestAFlattenedQuarterCircleKeepsItsRadius(t *testing.T) {
	const r, k = 40.0, 0.5522847498
	p := sheet.Path{Segs: []sheet.Seg{
		{Verb: sheet.Move, P: [3]sheet.Point{{X: r}}},
		{Verb: sheet.Cubic, P: [3]sheet.Point{{X: r, Y: k * r}, {X: k * r, Y: r}, {Y: r}}},
	}}
	runs := p.Polyline()
	require.Len(t, runs, 1)
	for i, q := range runs[0] {
		require.InDelta(t, r, math.Hypot(q.X, q.Y), 0.03*r/100)
		if i > 0 {
			m := runs[0][i-1]
			require.InDelta(t, r, math.Hypot((q.X+m.X)/2, (q.Y+m.Y)/2), 0.04, "the chord lies near the curve")
		}
	}
}
