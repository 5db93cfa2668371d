package alter

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

// A trial that contradicts itself is worse than one whose joins part, that than one with measurements far off, and these count before all that is a little off.
func TestWhichTrialIsBetter(t *testing.T) {
	order := []score{{0, 0, 0, 0}, {0, 0, 0, 1}, {0, 0, 1, 0}, {0, 0, 2, 0}, {0, 1, 0, 0}, {0, 2, 0, 0}, {1, 0, 0, 0}, {2, 0, 0, 0}}
	for i, a := range order {
		for k, b := range order {
			assert.Equal(t, i < k, a.less(b), "%v and %v", a, b)
		}
	}
	assert.False(t, score{off: 1}.less(score{off: 1 + 1e-12}), "what is alike but for rounding is no better")
	assert.True(t, score{off: 99}.done())
	assert.False(t, score{far: 1}.done())
	assert.False(t, score{unlike: 1}.done())
	assert.False(t, score{broken: 1}.done())
}

// By hand: an edge of 40 cm from which 100 stitches were picked up asks for 90 of a gauge at which one stitch takes the place of 0.9. Half a centimetre more is less than the
// centimetre that does not matter; 44 cm ask for 90 × 44/40 = 99.
func TestAnEdgeThatIsLongerAsksForMore(t *testing.T) {
	nine, one := units.Frac(9, 10), units.Int(10)
	was := schematic.Along{Picked: 100, Length: units.Int(400)}
	for mm, want := range map[int64]int64{400: 90, 405: 90, 410: 90, 395: 90, 440: 99, 360: 81} {
		assert.True(t, units.Int(want).Eq(wished(nine, one, was, schematic.Along{Length: units.Int(mm)})), "%d mm", mm)
	}
}

func TestHowFarOffInWords(t *testing.T) {
	for _, c := range []struct {
		off      units.Num
		of, want string
	}{
		{units.Frac(6, 10), "st", "0.6 of a stitch"}, {units.Int(1), "st", "1 stitch"}, {units.Frac(22, 10), "st", "2.2 stitches"},
		{units.Frac(6, 10), "row", "0.6 of a row"}, {units.Int(1), "row", "1 row"}, {units.Int(2), "row", "2 rows"},
		{units.Frac(7, 10), "", "0.7 of a stitch or row"}, {units.Frac(15, 10), "", "1.5 stitches or rows"},
		{units.Frac(99, 100), "st", "1 stitch"}, // as it is printed
	} {
		assert.Equal(t, c.want, offBy(c.off, c.of))
	}
}

// By hand: of a multiple of 4 + 2, 70 is one (17×4 + 2); 71 lies between 70 and 74. 72 is even, 71 lies between 70 and 72; 71 is odd, 72 lies between 71 and 73.
func TestWhatALineOfTheGradingAsks(t *testing.T) {
	for _, c := range []struct {
		g         schematic.Grading
		n         int
		words     string
		low, high int
	}{
		{schematic.Grading{Multiple: 4, Plus: 2}, 70, "", 0, 0},
		{schematic.Grading{Multiple: 4, Plus: 2}, 71, "a multiple of 4 + 2", 70, 74},
		{schematic.Grading{Multiple: 4, Plus: 2}, 73, "a multiple of 4 + 2", 70, 74},
		{schematic.Grading{Even: true}, 72, "", 0, 0},
		{schematic.Grading{Even: true}, 71, "even", 70, 72},
		{schematic.Grading{Odd: true}, 71, "", 0, 0},
		{schematic.Grading{Odd: true}, 72, "odd", 71, 73},
	} {
		words, low, high, broken := breaks(&c.g, 1, c.n)
		assert.Equal(t, c.words != "", broken, "%d", c.n)
		assert.Contains(t, words, c.words, "%d", c.n)
		assert.Equal(t, [2]int{c.low, c.high}, [2]int{low, high}, "%d", c.n)
	}
}

// By hand: the edges are 3 mm unlike in one size and 8 in the other. What differs by 3 to 8 now is kept; 10 differs most as 8 does, 1 as 3.
func TestTheSizeWhoseJoinIsMostAlike(t *testing.T) {
	seam := func(apart int64) schematic.Seam {
		return schematic.Seam{Number: 1, SewLength: units.Int(100 + apart), IntoLength: units.Int(100)}
	}
	like := []*schematic.Garment{{Seams: []schematic.Seam{seam(3)}}, {Seams: []schematic.Seam{seam(8)}}}
	for now, want := range map[int64]int64{10: 8, 1: 3, 3: 3, 8: 8} {
		best, ok := nearest(like, seam(now))
		assert.True(t, ok, "%d mm", now)
		assert.True(t, best.SewLength.Eq(units.Int(100+want)), "%d mm is most like %d", now, want)
	}
	_, ok := nearest(like, seam(5))
	assert.False(t, ok, "between the two")
	_, ok = nearest(like, schematic.Seam{Number: 2})
	assert.False(t, ok, "no such join")
}

// By hand: at 22 stitches instead of 20 and 21 rows instead of 28 the rib of 24 and 32 becomes 26.4 and 24, to the quarter 26½ and 24.
func TestOtherGaugesFollowTheFirst(t *testing.T) {
	gauge := func(name string, sts, rows int64) schematic.Gauge {
		return schematic.Gauge{Name: name, Stitches: units.Int(sts), Rows: units.Int(rows), Over: units.Int(100), OverUnit: units.CM}
	}
	p := &schematic.Pattern{Gauges: []schematic.Gauge{gauge("fabric", 20, 28), gauge("rib", 24, 32)}}
	now := []schematic.Gauge{gauge("fabric", 22, 21), gauge("rib", 24, 32)}
	var found finding.List
	inProportion(p, now, []bool{true, false}, &found)
	assert.True(t, now[1].Stitches.Eq(units.Frac(53, 2)), now[1].Stitches)
	assert.True(t, now[1].Rows.Eq(units.Int(24)), now[1].Rows)
	if assert.Len(t, found, 1) {
		assert.Contains(t, found[0].Message, "rib is scaled in proportion to fabric: 26.5 sts and 24 rows over 10 cm")
	}
	now, found = []schematic.Gauge{gauge("fabric", 22, 21), gauge("rib", 25, 30)}, nil
	inProportion(p, now, []bool{true, true}, &found)
	assert.True(t, now[1].Stitches.Eq(units.Int(25)))
	assert.Empty(t, found, "told by the maker herself")
	now = []schematic.Gauge{gauge("fabric", 20, 28), gauge("rib", 24, 32)}
	inProportion(p, now, []bool{true, false}, &found)
	assert.Empty(t, found, "nothing is another")
}

// By hand: crowns of 8 stitches a round that end with 8 or 16 left run into a point, with 17 they do not; increases and shapings at edges never do.
func TestWhatRunsIntoAPoint(t *testing.T) {
	shape := func(s schematic.Shaping) []schematic.Section {
		s.By = expr.Counts(8)
		return []schematic.Section{&schematic.Even{}, &schematic.Shape{Shapings: []schematic.Shaping{s}}}
	}
	down := shape(schematic.Shaping{At: schematic.Across})
	assert.Equal(t, []int{8, 8, 0}, []int{pointBy(down, 8), pointBy(down, 16), pointBy(down, 17)})
	assert.Zero(t, pointBy(shape(schematic.Shaping{At: schematic.Across, Increase: true}), 8))
	assert.Zero(t, pointBy(shape(schematic.Shaping{At: schematic.BothEdges}), 8))
	assert.Zero(t, pointBy(nil, 8))
}

func TestWhichPartsAreAlike(t *testing.T) {
	of := func(stitches ...int) []schematic.Section {
		d := &schematic.Divide{}
		for _, n := range stitches {
			d.Parts = append(d.Parts, schematic.Part{Stitches: expr.Counts(n)})
		}
		return []schematic.Section{&schematic.Even{}, d}
	}
	assert.True(t, partsAlike(of(20, 30, 20)))
	assert.False(t, partsAlike(of(20, 30, 21)))
	assert.False(t, partsAlike(of(20)))
	held := func(parts ...schematic.HeldPart) []schematic.Section {
		return []schematic.Section{&schematic.Held{From: parts}}
	}
	a, b := schematic.HeldPart{Piece: "Sleeve", Stitches: expr.Counts(20)}, schematic.HeldPart{Piece: "Back", Stitches: expr.Counts(20)}
	assert.True(t, partsAlike(held(a, b, a)))
	assert.False(t, partsAlike(held(a, b)))
	a.Half = true
	assert.True(t, partsAlike(held(a)), "its other half")
}

// By hand: at 20 rows over 10 cm the longest stretch of 40 rows is 20 cm. 15 cm less leave a quarter of it; 15.5 cm do not, and all 71 rows share them: 40, 1
// and 30 of 71 parts. 27 cm of 35.5 leave less than a quarter.
func TestAPieceIsMadeShorterInItsLongestStretchOrInAll(t *testing.T) {
	p := given.Text(t, "version: 1\npattern: T\nterms: US\nunits: cm\nsizes: S\ngauges: {fabric: 20 sts and 20 rows over 10 cm in sc}\npieces:\n"+
		"  - piece: Back\n    sections:\n      - cast on: 90\n      - even: 40 rows\n      - {decrease: 1, at: both edges, every: 1 row, times: 1}\n      - even: 30 rows\n      - bind off: all\n")
	f := newFitter(oneSize(p, 0, nil), p.Gauges, nil)
	q := f.was.Pieces[0]
	asked := func(mm int64) (map[schematic.Section]units.Num, finding.List) {
		var found finding.List
		l := &lengthener{f: f, found: &found, by: map[schematic.Section]units.Num{}}
		l.up(q, units.Int(mm))
		return l.by, found
	}
	by, found := asked(-150)
	assert.Empty(t, found)
	assert.Len(t, by, 1)
	assert.True(t, by[q.Sections[1]].Eq(units.Int(-150)))
	by, found = asked(-155)
	assert.Empty(t, found)
	if assert.Len(t, by, 3) {
		for k, rows := range []int64{40, 1, 30} {
			assert.True(t, by[q.Sections[1+k]].Eq(units.Frac(-155*rows, 71)), "%d rows", rows)
		}
	}
	by, found = asked(-270)
	assert.Empty(t, by)
	if assert.Len(t, found, 1) {
		assert.Contains(t, found[0].Message, "Back can't become 27 cm")
	}
}
