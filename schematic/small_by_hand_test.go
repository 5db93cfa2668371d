package schematic

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// By hand: 12 stitches published 2 at a time, 9 times, come out as 2 at a time 6 times, a third fewer; 20 as 2 at a time 10 times.
func TestStitchesArePartedAboutAsOftenAsPublished(t *testing.T) {
	for _, c := range [][5]int{{12, 2, 9, 2, 6}, {20, 2, 9, 2, 10}, {18, 2, 9, 2, 9}, {0, 2, 9, 0, 0}, {3, 1, 2, 1, 3}} {
		b, m := times(c[0], c[1], c[2], 40)
		assert.Equal(t, [2]int{c[3], c[4]}, [2]int{b, m}, "%d stitches", c[0])
	}
	_, m := times(12, 1, 12, 8)
	assert.LessOrEqual(t, m, 8, "no more often than there are rows")
}

// A bind-off of any stitches at one edge falls at the beginning of a row; at both edges, of all stitches, or left or held it does not.
func TestWhichBindOffsFallOnOneSideOfTheWork(t *testing.T) {
	for want, list := range map[bool][]BindOff{
		true: {{Stitches: expr.Counts(1), At: LeftEdge}, {Stitches: expr.Counts(5), At: RightEdge}},
		false: {{Stitches: expr.Counts(0), At: LeftEdge}, {At: LeftEdge}, {Stitches: expr.Counts(5), At: BothEdges}, {All: true, At: LeftEdge},
			{Stitches: expr.Counts(5), At: LeftEdge, Leave: true}, {Stitches: expr.Counts(5), At: LeftEdge, Hold: true}},
	} {
		for _, s := range list {
			assert.Equal(t, want, s.sided(), "%+v", s)
		}
	}
}

// By hand, at 20 stitches and 25 rows over 10 cm: 30 by 40 are 15 by 16 cm.
func TestTheAreaOfASwatch(t *testing.T) {
	g := Gauge{Stitches: units.Int(20), Rows: units.Int(25), Over: units.Int(100)}
	assert.Equal(t, units.Int(150*160), Swatch{Stitches: units.Int(30), Rows: units.Int(40)}.Area(g))
	assert.Equal(t, units.Int(100*120), Swatch{Width: units.Int(100), Height: units.Int(120)}.Area(g))
}

// A piece from side to side is made longer at its cast-on where all else lies along one of its long edges.
func TestWhereAPieceFromSideToSideIsMadeLonger(t *testing.T) {
	cast := &CastOn{Stitches: expr.Counts(60)}
	at := func(sides ...Side) Section {
		q := &Piece{From: FromLeft, Sections: []Section{cast, &Even{}}}
		for _, s := range sides {
			q.Sections = append(q.Sections, &Shape{Shapings: []Shaping{{At: s}}}, &BindOff{At: s})
		}
		return StitchesAlong(q)
	}
	assert.Equal(t, Section(cast), at())
	assert.Equal(t, Section(cast), at(LeftEdge))
	assert.Equal(t, Section(cast), at(RightEdge, RightEdge))
	assert.Nil(t, at(LeftEdge, RightEdge))
	assert.Nil(t, at(BothEdges))
	assert.Nil(t, StitchesAlong(&Piece{From: FromHem, Sections: []Section{cast}}))
	assert.Nil(t, StitchesAlong(&Piece{From: FromLeft, Sections: []Section{cast, &RepeatRow{}}}))
	assert.Nil(t, StitchesAlong(&Piece{From: FromLeft}))
}

// A quarter turn to the left is +90 degrees, to the right -90; of no direction there is no turn.
func TestTheTurnOfAnOutline(t *testing.T) {
	at := Point{3, 4}
	for z, want := range map[Point]float64{{3, 6}: math.Pi / 2, {3, 1}: -math.Pi / 2, {7, 4}: 0, {5, 6}: math.Pi / 4} {
		assert.InDelta(t, want, turnOf(Point{2, 0}, at, z), 1e-12, "%v", z)
	}
	assert.InDelta(t, math.Pi/4, turnOf(Point{2, 2}, at, Point{3, 9}), 1e-12)
	assert.Zero(t, turnOf(Point{}, at, Point{5, 6}))
}

func TestWhichLiveStitchesAreInDoubt(t *testing.T) {
	m := &Made{Live: map[string]int{"arm": 20}, doubtLive: map[string]bool{"neck": true}}
	assert.False(t, m.doubts("arm"))
	assert.True(t, m.doubts("neck"))
	assert.True(t, m.doubts(""), "one of them is")
	m = &Made{Live: map[string]int{"arm": 20}, Broken: true}
	assert.False(t, m.doubts("arm"), "it came to stitches")
	assert.True(t, m.doubts("neck"))
	assert.True(t, (&Made{Cut: true, Live: map[string]int{"arm": 20}}).doubts("arm"))
	assert.False(t, (&Made{Live: map[string]int{"arm": 20}}).doubts(""))
}

// The piece with the longest name is meant, in either order.
func TestAnEdgeIsThatOfTheLongestName(t *testing.T) {
	front, band := &Made{Name: "Front"}, &Made{Name: "Front band"}
	for _, list := range [][]*Made{{front, band}, {band, front}} {
		m, _ := (&Garment{Pieces: list}).EdgesOf("front band long edge")
		assert.Same(t, band.Worked(), m)
		m, _ = (&Garment{Pieces: list}).EdgesOf("Front neck")
		assert.Same(t, front.Worked(), m)
	}
	m, _ := (&Garment{Pieces: []*Made{front}}).EdgesOf("Back neck")
	assert.Nil(t, m)
}

// Of a grid that is filled by lines the lines say how large it is.
func TestAFilledGridIsAsLargeAsItsLines(t *testing.T) {
	s := &Motifs{Shape: Square, Across: expr.Of(units.Int(100)), Columns: expr.Counts(9), Rows: expr.Counts(9), Filled: []string{"xx..", "xxx."}}
	g := newGrid(s, 0)
	assert.Equal(t, [2]int{2, 3}, [2]int{g.rows, g.cols})
	assert.Len(t, g.cells, 5)
	s.Filled = s.Filled[:1]
	g = newGrid(s, 0)
	assert.Equal(t, [2]int{1, 2}, [2]int{g.rows, g.cols})
	s.Filled = nil
	g = newGrid(s, 0)
	assert.Equal(t, [2]int{9, 9}, [2]int{g.rows, g.cols})
}

// By hand: at two fifths of the stitches 40 are 16, and a shaping that falls once falls 0.4 times, which is never; 40 less 11 are 29, now 11.6: the other
// falls 4 times.
func TestAShapingThatFallsOnceMayFallNever(t *testing.T) {
	s := func() Section {
		return &Shape{Shapings: []Shaping{{At: LeftEdge, By: expr.Counts(1), Every: expr.Counts(2), Times: expr.Counts(1)}, {At: RightEdge, By: expr.Counts(1), Every: expr.Counts(2), Times: expr.Counts(10)}}}
	}
	was := []Section{&CastOn{Stitches: expr.Counts(40)}, s()}
	now := []Section{&CastOn{Stitches: expr.Counts(40)}, s()}
	f := &Fitting{Chooser: &coarse{}, Made: map[Section]int{}, Twos: map[Section]bool{}, RS: true, Steps: map[Section]Step{
		was[0]: {Section: was[0], After: 40}, was[1]: {Section: was[1], Before: 40, After: 29, Rows: 20, FirstRow: 1, FirstRS: true, Places: []int{1, 1}}}}
	out := f.Fit(now, was)
	assert.Equal(t, 12, f.N)
	sh := out[1].(*Shape).Shapings
	assert.Equal(t, [2]int{0, 4}, [2]int{sh[0].total(), sh[1].total()})
}

// coarse chooses the nearest at two fifths of the stitches.
type coarse struct{ nearest }

func (c *coarse) Gauge(string) (was, now Gauge) {
	was, now = c.nearest.Gauge("")
	now.Stitches = units.Int(8)
	return was, now
}
