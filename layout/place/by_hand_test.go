package place

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/layout/sheet"
	"flatwright/schematic"
)

func at(x, y float64) pt { return pt{X: x, Y: y} }

func TestLinesCrossInsideBoth(t *testing.T) {
	flat := seg{at(0, 0), at(10, 0)}
	assert.True(t, flat.crosses(seg{at(4, -1), at(6, 1)}))
	assert.False(t, flat.crosses(seg{at(4, 0), at(6, 1)}), "it begins on it")
	assert.False(t, flat.crosses(seg{at(4, 1), at(6, 2)}), "beside it")
	assert.False(t, flat.crosses(seg{at(11, -1), at(11, 1)}), "past its end")
	assert.False(t, seg{at(4, -1), at(6, 1)}.crosses(seg{at(20, 0), at(30, 0)}))
}

func TestALineWithoutItsEnds(t *testing.T) {
	// 3, 4, 5: a millimetre along it is 0.6 across and 0.8 down.
	assert.InDeltaSlice(t, []float64{0.6, 0.8, 2.4, 3.2}, flatOf(seg{at(0, 0), at(3, 4)}.shrunk(1)), 1e-12)
	assert.Equal(t, []float64{1.5, 2, 1.5, 2}, flatOf(seg{at(0, 0), at(3, 4)}.shrunk(2.5)), "nothing is left but its middle")
	assert.Equal(t, []float64{1.5, 2, 1.5, 2}, flatOf(seg{at(0, 0), at(3, 4)}.shrunk(9)))
}

func flatOf(s seg) []float64 { return []float64{s.a.X, s.a.Y, s.b.X, s.b.Y} }

func TestALineThatRunsBesideAnother(t *testing.T) {
	flat := seg{at(0, 0), at(10, 0)}
	for _, c := range []struct {
		o    seg
		mm   float64
		want bool
	}{
		{seg{at(2, 0.5), at(8, 0.5)}, 1, true},
		{seg{at(8, 0.5), at(2, 0.5)}, 1, true},    // the other way
		{seg{at(2, -0.5), at(8, -0.5)}, 1, true},  // on its other side
		{seg{at(2, 1), at(8, 1)}, 1, false},       // not nearer than that
		{seg{at(2, 0.5), at(8, 1.5)}, 1, false},   // it leaves
		{seg{at(9, 0.5), at(20, 0.5)}, 1, false},  // for 1 mm
		{seg{at(8.9, 0.5), at(20, 0.5)}, 1, true}, // for 1.1
		{seg{at(-9, 0.5), at(1, 0.5)}, 1, false},  // for 1
		{seg{at(-9, 0.5), at(1.1, 0.5)}, 1, true}, // for 1.1
		{seg{at(12, 0.5), at(20, 0.5)}, 1, false}, // behind it
	} {
		assert.Equal(t, c.want, flat.along(c.o, c.mm), "%v", c.o)
	}
	assert.False(t, seg{at(1, 1), at(1, 1)}.along(flat, 9), "a point runs nowhere")
}

func TestAHoleIsNotInside(t *testing.T) {
	square := func(lo, hi float64) []pt { return []pt{at(lo, lo), at(hi, lo), at(hi, hi), at(lo, hi)} }
	loops := [][]pt{square(0, 10), square(4, 6)}
	assert.True(t, inside(loops, at(2, 2)))
	assert.False(t, inside(loops, at(5, 5)))
	assert.False(t, inside(loops, at(12, 5)))
	assert.InDelta(t, 11, dot(at(1, 2), at(3, 4)), 0, "1 x 3 + 2 x 4")
	assert.InDelta(t, -2, cross(at(1, 2), at(3, 4)), 0, "1 x 4 - 2 x 3")
	assert.Equal(t, at(2, 3), mid(at(1, 2), at(3, 4)))
}

func TestAnExtentGrowsAroundWhatItIsGiven(t *testing.T) {
	var e extent
	e.add(at(3, 4))
	assert.Equal(t, []pt{at(3, 4), at(3, 4)}, []pt{e.lo, e.hi})
	e.add(at(-1, 9), at(5, 2))
	assert.Equal(t, []pt{at(-1, 2), at(5, 9)}, []pt{e.lo, e.hi})
	e.box(boxOf(at(10, 10), 0, 4, 2)) // 8 to 12, 9 to 11
	assert.Equal(t, []pt{at(-1, 2), at(12, 11)}, []pt{e.lo, e.hi})
	lo, hi := boxOf(at(10, 10), 90, 4, 2).Bounds() // upright: 9 to 11, 8 to 12
	assert.InDeltaSlice(t, []float64{9, 8, 11, 12}, []float64{lo.X, lo.Y, hi.X, hi.Y}, 1e-9)
}

func TestCornersSideBySide(t *testing.T) {
	corners := func(xs ...float64) (out []schematic.Point) {
		for _, x := range xs {
			out = append(out, schematic.Point{X: x})
		}
		return out
	}
	assert.Equal(t, 0, apartBy(nil, 1))
	assert.Equal(t, 1, apartBy(corners(5), 1))
	assert.Equal(t, 3, apartBy(corners(4, 0, 2, 2.5), 1), "0, 2 and 4; 2.5 is half a millimetre on")
	assert.Equal(t, 2, apartBy(corners(0, 1), 1))
}

func TestTheCircleAboutALoop(t *testing.T) {
	c, r := circleOf([]schematic.Point{{X: 1, Y: 5}, {X: 4, Y: 2}, {X: 7, Y: 5}, {X: 4, Y: 8}})
	assert.Equal(t, schematic.Point{X: 4, Y: 5}, c)
	assert.InDelta(t, 3, r, 0)
	_, r = circleOf(nil)
	assert.Zero(t, r)
}

func TestAQuarterOfARingIsRound(t *testing.T) {
	segs := ring(at(2, 3), 10)
	from := segs[0].P[0]
	for _, s := range segs[1:5] { // a cubic's middle is (a + 3b + 3c + d)/8
		m := mul(add(add(from, mul(s.P[0], 3)), add(mul(s.P[1], 3), s.P[2])), 1.0/8)
		assert.InDelta(t, 10, dist(m, at(2, 3)), 0.003)
		assert.InDelta(t, 10, dist(s.P[2], at(2, 3)), 1e-9)
		from = s.P[2]
	}
	assert.Equal(t, segs[0].P[0], from, "it closes")
}

func TestHowFarASideReachesIntoTheCorner(t *testing.T) {
	lo, hi := at(10, 0), at(50, 0)
	side := func(s side, from, to float64) *sideTracks {
		return &sideTracks{side: s, any: true, reach: span{from, to}}
	}
	assert.InDelta(t, 4, corner(side(top, 0, 60), side(left, -4, 90), lo, hi, 80), 0, "4 above the outline")
	assert.InDelta(t, 10, corner(side(bottom, 0, 60), side(left, -4, 90), lo, hi, 80), 0, "90 - 80 below it")
	assert.Zero(t, corner(side(top, 0, 60), side(left, 4, 90), lo, hi, 80), "not past it")
	assert.Zero(t, corner(side(bottom, 0, 60), side(left, -4, 70), lo, hi, 80))
	assert.Zero(t, corner(side(top, 9, 60), side(left, -4, 90), lo, hi, 80), "1 mm past the corner is the end of a line")
	assert.InDelta(t, 4, corner(side(top, 8.9, 60), side(left, -4, 90), lo, hi, 80), 0)
	assert.Zero(t, corner(side(top, 0, 51), side(right, -4, 90), lo, hi, 80))
	assert.InDelta(t, 4, corner(side(top, 0, 51.1), side(right, -4, 90), lo, hi, 80), 0)
	assert.Zero(t, corner(&sideTracks{}, side(left, -4, 90), lo, hi, 80))
}

func TestAnExtensionLineThroughALabel(t *testing.T) {
	ways := []float64{10, 20}
	assert.True(t, runsThrough(ways, span{8, 12}))
	assert.True(t, runsThrough(ways, span{10.6, 15}), "nearer than 0.7")
	assert.False(t, runsThrough(ways, span{10.8, 15}))
	assert.True(t, runsThrough(ways, span{15, 19.4}))
	assert.False(t, runsThrough(ways, span{15, 19.2}))
	assert.False(t, runsThrough(ways, span{21, 30}))
}

func TestTheSmallestPaperThatHolds(t *testing.T) { // ISO 216
	assert.Equal(t, " (A4)", namedPaper(297, 210))
	assert.Equal(t, " (A3)", namedPaper(297, 211))
	assert.Equal(t, " (A2)", namedPaper(420.5, 100))
	assert.Equal(t, " (A0)", namedPaper(841, 1189))
	assert.Empty(t, namedPaper(842, 1189))
	assert.Equal(t, "2.5", scaleText(2.5))
	assert.Equal(t, "0.333", scaleText(1.0/3))
}

func TestStrokesReachPastALine(t *testing.T) {
	a, b := strokes(seg{at(0, 0), at(4, 0)}) // 45° through each end, 0.55 to each side
	assert.InDeltaSlice(t, []float64{-0.55, -0.55, 0.55, 0.55}, flatOf(a), 1e-12)
	assert.InDeltaSlice(t, []float64{3.45, -0.55, 4.55, 0.55}, flatOf(b), 1e-12)
	assert.Nil(t, ends(seg{at(1, 1), at(1, 1)}))
}

func TestNothingIsMinusNothing(t *testing.T) {
	s := &sheet.Sheet{}
	s.Root.Items = append(s.Root.Items, line("edge", narrow, at(-0.001, 1.006), at(2.344, 3)))
	s.Snap()
	p := s.Root.Items[0].(*sheet.Path).Segs
	assert.Equal(t, []pt{at(0, 1.01), at(2.34, 3)}, []pt{p[0].P[0], p[1].P[0]})
	assert.False(t, math.Signbit(p[0].P[0].X))
}

func TestLabelsInEachOthersWayStandOverTheirMean(t *testing.T) {
	labels := []nestLabel{{text: "A", from: at(0, 0)}, {text: "A", from: at(1, 0)}, {text: "A", from: at(100, 0)}}
	spreadLabels(labels, 3)
	assert.InDelta(t, 0.5, (labels[0].at.X+labels[1].at.X)/2, 1e-9, "over 0 and 1")
	assert.InDelta(t, labels[0].width+nestGap, labels[1].at.X-labels[0].at.X, 1e-9, "side by side")
	assert.InDelta(t, 100, labels[2].at.X, 1e-9, "alone")
}

func TestALineIsBrokenWhereItIsGrouped(t *testing.T) {
	assert.Equal(t, []string{"86 (95, 104)", "(112, 121) cm"}, balance("86 (95, 104) (112, 121) cm", 2, 3))
}
