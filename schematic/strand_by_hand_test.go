package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// blockOf is a block of runs of 5, 4 and 6 stitches, the middle one of stitches of 20 mm and the others of 10.
func blockOf() (*strand, *block) {
	narrow := &Gauge{Stitches: units.Int(10), Rows: units.Int(20), Over: units.Int(100)}
	broad := &Gauge{Stitches: units.Int(5), Rows: units.Int(20), Over: units.Int(100)}
	s := &strand{gauge: narrow, blocks: []block{{x: units.Int(-90), runs: []run{{"a", 5, narrow}, {"b", 4, broad}, {"c", 6, narrow}}}}}
	return s, &s.blocks[0]
}

func counts(runs []run) (out []int) {
	for _, r := range runs {
		out = append(out, r.n)
	}
	return out
}

func TestStitchesAreGivenToAndTakenFromTheEndsOfARow(t *testing.T) {
	for _, c := range []struct {
		side segSide
		k    int
		want []int
	}{
		{segLeft, 0, []int{5, 4, 6}}, {segLeft, 4, []int{1, 4, 6}}, {segLeft, 5, []int{4, 6}}, {segLeft, 7, []int{2, 6}}, {segLeft, 14, []int{1}}, {segLeft, 99, []int{0}},
		{segRight, 5, []int{5, 4, 1}}, {segRight, 6, []int{5, 4}}, {segRight, 8, []int{5, 2}}, {segRight, 12, []int{3}}, {segRight, 15, []int{0}},
	} {
		_, b := blockOf()
		b.take(c.side, c.k)
		assert.Equal(t, c.want, counts(b.runs), "%+v", c)
	}
	_, b := blockOf()
	b.give(segLeft, 3)
	b.give(segRight, 2)
	assert.Equal(t, []int{8, 4, 8}, counts(b.runs))
	assert.Equal(t, 20, b.count())
	assert.False(t, b.uniform())
	b.take(segLeft, 12)
	assert.True(t, b.uniform())
}

// By hand: of 5 + 4 + 6; what is asked for beyond them belongs to the last.
func TestARowIsSliced(t *testing.T) {
	for _, c := range []struct {
		from, to int
		want     []int
	}{
		{0, 15, []int{5, 4, 6}}, {0, 5, []int{5}}, {5, 9, []int{4}}, {4, 10, []int{1, 4, 1}}, {6, 8, []int{2}}, {9, 9, []int{0}}, {12, 18, []int{6}}, {15, 17, []int{2}}, {20, 22, []int{2}},
	} {
		_, b := blockOf()
		got := b.slice(c.from, c.to)
		assert.Equal(t, c.want, counts(got), "%d to %d", c.from, c.to)
	}
	_, b := blockOf()
	assert.Equal(t, "b", b.slice(5, 9)[0].name)
	assert.Equal(t, "a", b.slice(20, 22)[0].name)
}

// By hand: 5 x 10, 4 x 20 and 6 x 10 mm are 190, in a tube 95; to stitch 7 it is 50 + 40, and 3 beyond the end are 30 more. A band of 8 rows of 5 mm is 40 wide.
func TestWhereTheStitchesOfARowStand(t *testing.T) {
	s, b := blockOf()
	for i, want := range map[int]int64{0: 0, 3: 30, 5: 50, 7: 90, 9: 130, 12: 160, 15: 190, 18: 220} {
		assert.Equal(t, units.Int(want), s.offsetOf(b, i), "%d", i)
	}
	assert.Equal(t, units.Int(100), s.right(b))
	s.round = true
	assert.Equal(t, units.Int(95), s.width(b))
	assert.Equal(t, units.Int(45), s.offsetOf(b, 7))
	s.blocks = append(s.blocks, s.blocks[0])
	assert.Equal(t, units.Int(190), s.width(b), "panels are drawn apart, at their full width")
	assert.Equal(t, 30, s.count())
	s.blocks, s.band = s.blocks[:1], 8
	assert.Equal(t, units.Int(20), s.width(b))
	s.round = false
	assert.Equal(t, units.Int(40), s.width(b))
}

// By hand: an edge goes out by 4 stitches to row 8 and by 2 more to row 12; the other goes in by 3 from row 4 to row 10.
func TestHowFarAnEdgeHasMoved(t *testing.T) {
	p := profile{{8, units.Int(4)}, {12, units.Int(6)}}
	q := profile{{4, units.Num{}}, {10, units.Int(-3)}}
	for row, want := range map[int]units.Num{0: units.Int(0), 2: units.Int(1), 6: units.Int(3), 8: units.Int(4), 9: units.Frac(9, 2), 12: units.Int(6), 20: units.Int(6)} {
		assert.Equal(t, want, p.at(row), "%d", row)
	}
	sum := profile{{4, units.Int(2)}, {8, units.Int(2)}, {10, units.Int(2)}, {12, units.Int(3)}}
	assert.Equal(t, sum, p.plus(q))
	assert.Equal(t, sum, q.plus(p))
	assert.Equal(t, profile{{8, units.Int(8)}, {12, units.Int(12)}}, p.plus(p))
	assert.Equal(t, p, p.plus(nil))
	assert.Equal(t, p, profile(nil).plus(p))
	assert.Equal(t, profile{{8, units.Int(2)}, {12, units.Int(3)}}, p.scaled(units.Frac(1, 2)))
	assert.Equal(t, units.Int(5), profile{{0, units.Int(5)}, {4, units.Int(7)}}.at(0), "at once")
	assert.Equal(t, profilePoint{12, units.Int(6)}, p.last())
	assert.Equal(t, profilePoint{}, profile(nil).last())
}

// By hand: after 3 even rows, 2 stitches fewer every 4th row 3 times, then every 2nd row twice: 3 + 12 + 4 rows, 6 and 10 stitches.
func TestTheEdgeOfAShaping(t *testing.T) {
	sh := &Shaping{By: expr.Counts(2), Every: expr.Counts(4), Times: expr.Counts(3), Offset: 3, Then: []Spacing{{expr.Counts(2), expr.Counts(2)}, {expr.Counts(9), expr.Counts(0)}}}
	assert.Equal(t, profile{{3, units.Num{}}, {15, units.Int(-6)}, {19, units.Int(-10)}}, sh.profile(0))
	sh.Increase, sh.Offset = true, 0
	assert.Equal(t, profile{{12, units.Int(6)}, {16, units.Int(10)}}, sh.profile(0))
	assert.Equal(t, 5, sh.total())
	assert.Equal(t, []spaced{{1, 1}}, (&Shaping{}).spacings(0), "once, in the next row")
	assert.Empty(t, (&Shaping{By: expr.Counts(1), Times: expr.Counts(0)}).profile(0))
	across := &Shape{Shapings: []Shaping{{At: Across, Increase: true, By: expr.Counts(6), Every: expr.Counts(4), Times: expr.Counts(3)}, {At: BothEdges, By: expr.Counts(50), Times: expr.Counts(50)}, {At: Across, By: expr.Counts(5), Every: expr.Counts(1), Times: expr.Counts(2)}}}
	assert.Equal(t, units.Int(-23), across.ofStitches(0), "6 x 3 at half of 2 - 4, and -5 x 2 at half of 2 - 1")
}

// By hand: in 5 of every 8 rows 3 short ones of the round's 40 stitches are 1/4 of the layer's 20 at the last; a band of 3 rows is 15 mm high.
func TestShortRowsRaiseTheLayerBehind(t *testing.T) {
	s, b := blockOf()
	b.runs, s.y = []run{{"", 40, s.gauge}}, units.Int(60)
	c := &canvas{}
	w := &worker{cur: s, views: []*canvas{c}, made: &Made{}, areas: map[string]units.Num{}}
	w.raise(b, 3, 15, 10)
	assert.Equal(t, raise{high: units.Int(15), at: units.Int(60), rows: 3, foot: units.Frac(3, 4), plateau: units.Frac(1, 4), gauge: s.gauge}, c.raised[0])
	assert.Equal(t, units.Int(1500), w.areas[""], "10 on the mean, of 10 mm, in 15 mm")
	assert.Equal(t, 3, s.row)
	w.raise(b, 2, 30, 0)
	assert.Equal(t, units.Int(1), c.raised[1].foot, "no further than all of it")
	assert.Equal(t, units.Int(25), c.raisedBy())
	w.made.Kind = KindSock
	w.raise(b, 2, 30, 0)
	assert.Equal(t, units.Num{}, c.raisedBy(), "a heel stays where it is")
}
