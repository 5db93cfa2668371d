package schematic

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// nearest is a maker of 15 stitches and 20 rows over 10 cm where 20 and 26 were published: it takes the nearest count that a need allows, and
// what is moved by name.
type nearest struct {
	ribs  map[Section]Need
	moved map[string]int
	told  []string
}

func (c *nearest) Near(name string, exact units.Num, need Need, least int) int {
	n := int(exact.Round()) + c.moved[name]
	for d := 0; ; d++ {
		for _, k := range []int{n + d, n - d} {
			if k >= least && need.holds(k) {
				return k
			}
		}
	}
}
func (c *nearest) Spread(n, rows, _ int) []Spacing {
	if n < 1 || rows < n {
		return nil
	}
	return []Spacing{{Every: expr.Counts(rows / n), Times: expr.Counts(n)}}
}
func (c *nearest) Gauge(string) (was, now Gauge) {
	of := func(sts, rows int64) Gauge {
		return Gauge{Name: "fabric", Stitches: units.Int(sts), Rows: units.Int(rows), Over: units.Int(100)}
	}
	return of(20, 26), of(15, 20)
}
func (c *nearest) Live(of HeldPart) int { return of.Stitches.Int(0, 0) }
func (c *nearest) Tell(_ Section, f string, args ...any) {
	c.told = append(c.told, fmt.Sprintf(f, args...))
}
func (c *nearest) Part(s Section, f string, args ...any)        { c.Tell(s, f, args...) }
func (c *nearest) Odd(s Section, f string, args ...any)         { c.Tell(s, f, args...) }
func (c *nearest) Rule(expr.Graded) Need                        { return Need{} }
func (c *nearest) Rib(s Section) Need                           { return c.ribs[s] }
func (c *nearest) Pair(string)                                  {}
func (c *nearest) Paired(string) bool                           { return false }
func (c *nearest) TellRate(Section, string, int, int, int, int) {}

// By hand: what is 1 more than a multiple of 4 and odd is 1 more than a multiple of 4; of 3 and of 2 together, of 6.
func TestNeedsOfCountsByHand(t *testing.T) {
	assert.Equal(t, Need{4, 1}, Need{4, 1}.and(Need{2, 1}))
	assert.Equal(t, Need{6, 5}, Need{3, 2}.and(Need{2, 1}), "5, 11, 17 …")
	assert.Equal(t, Need{4, 1}, Need{4, 1}.and(Need{2, 0}), "nothing is both: the first stays")
	assert.Equal(t, Need{4, 1}, Need{4, 1}.and(Need{}))
	assert.Equal(t, Need{4, 1}, Need{}.and(Need{4, 1}))
	assert.Equal(t, Need{2, 1}, Need{4, 3}.of(1, 2), "1 + 2x: 3, 7, 11 for x 1, 3, 5")
	assert.Equal(t, Need{3, 1}, Need{3, 0}.of(5, 1), "5 + 1 = 6")
	assert.Equal(t, Need{}, Need{4, 1}.of(2, 2), "2 + 2x is never odd")
	assert.Equal(t, Need{}, Need{1, 0}.of(2, 2))
	assert.Equal(t, Need{}, Need{4, 1}.of(2, 0))
	assert.True(t, Need{4, 1}.holds(9))
	assert.False(t, Need{4, 1}.holds(8))
	assert.True(t, Need{1, 1}.holds(8))
	assert.Equal(t, Need{}, Need{20_001, 0}.bounded())
	assert.Equal(t, Need{20_000, 0}, Need{20_000, 0}.bounded())
	assert.Equal(t, Need{4, 3}, Need{4, -1}.bounded())
	assert.Equal(t, 3, mod(-1, 4))
	assert.Equal(t, 6, gcd(12, 18))
	assert.Equal(t, 5, gcd(-5, 0))
}

// 50 stitches in parts of 24, 52 and 24 at three quarters: 18, what is left, 18.
func TestARowIsDividedAnewAsItWas(t *testing.T) {
	c := &nearest{moved: map[string]int{}}
	share := func(n, wider int, counts ...int) []int {
		f := &Fitting{Chooser: c, N: n, Steps: map[Section]Step{}}
		of := make([]units.Num, len(counts))
		for i := range of {
			of[i] = units.Frac(3, 4)
		}
		return f.share(&Divide{}, counts, counts, of, wider)
	}
	assert.Equal(t, []int{18, 39, 18}, share(75, -1, 24, 52, 24))
	assert.Equal(t, []int{18, 38, 18}, share(74, -1, 24, 52, 24), "the one without an equal takes what is left")
	assert.Equal(t, []int{37, 37}, share(74, -1, 50, 50))
	assert.Equal(t, []int{38, 37}, share(75, 0, 50, 50), "the front is one wider")
	assert.Empty(t, c.told)
	assert.Equal(t, []int{38, 37}, share(75, -1, 50, 50))
	assert.Equal(t, []string{"75 stitches can't be divided alike: 1 of 2 parts that were alike have one stitch more"}, c.told)
	assert.Equal(t, []int{0, 0}, share(9, -1, 0, 0))
	assert.Equal(t, []int{3, 1, 3}, share(7, -1, 8, 4, 8)[:3], "6, 1 and 6 have six more than there are: a stitch at a time off both")
}

// Shoulders of 32 and a neck of 32 by chance: the shoulders alone are alike, so that the row is any number.
func TestANeckAsWideAsAShoulderIsNoThirdShoulder(t *testing.T) {
	part := func(n, edge string) *Part { return &Part{Stitches: expr.Counts(len(n)), Edge: edge} }
	of := func(parts ...*Part) *Divide {
		d := &Divide{}
		for _, p := range parts {
			d.Parts = append(d.Parts, *p)
		}
		return d
	}
	three := of(part("xxx", "shoulder"), part("xxx", "neck"), part("xxx", "shoulder"))
	assert.Equal(t, []int{3, -1, 3}, three.like())
	assert.Equal(t, Need{}, alike(three.like()))
	assert.Equal(t, []int{3, 3}, of(part("xxx", ""), part("xxx", "")).like())
	assert.Equal(t, Need{2, 0}, alike(of(part("xxx", ""), part("xxx", "")).like()))
	assert.Equal(t, Need{3, 0}, alike([]int{3, 3, 3}))
	assert.Equal(t, []int{0, 2, 0, 2}, of(part("", "a"), part("xx", "b"), part("", "b"), part("xx", "b")).like())
}

func TestAStitchAtATimeIsSpared(t *testing.T) {
	for _, c := range []struct {
		out, want []int
		ask, got  int
	}{
		{[]int{6, 6}, []int{5, 5}, 2, 2},
		{[]int{6, 4}, []int{5, 4}, 1, 1},
		{[]int{2, 1}, []int{1, 1}, 3, 1},
		{[]int{3}, []int{3}, 0, 0},
	} {
		out := append([]int(nil), c.out...)
		assert.Equal(t, c.got, spare(out, c.ask))
		assert.Equal(t, c.want, out)
	}
}

func TestWhichPartTakesWhatRoundingLeaves(t *testing.T) {
	at := func(counts ...int) int {
		group := map[int]int{}
		for _, n := range counts {
			group[n]++
		}
		return (&Fitting{}).absorber(counts, counts, group)
	}
	assert.Equal(t, 1, at(24, 52, 24), "the one that has no equal")
	assert.Equal(t, 2, at(10, 24, 30, 24, 12), "of those, the one in the middle")
	assert.Equal(t, 1, at(30, 30, 8, 8), "the widest of those that all have equals")
	assert.Equal(t, 2, at(8, 8, 30, 30))
	assert.Equal(t, -1, at(0, 0))
	assert.Equal(t, Need{2, 0}, alike([]int{24, 24}))
	assert.Equal(t, Need{}, alike([]int{24, 52, 24}))
	assert.Equal(t, Need{2, 0}, alike([]int{8, 8, 20, 20, 20, 20}))
	assert.Equal(t, Need{}, alike([]int{8, 0, 0}))
}

// A front and a back are halves where they are as wide as each other; two fronts are none.
func TestHalvesOfARow(t *testing.T) {
	part := func(name string, n int) Part { return Part{Name: name, Stitches: expr.Counts(n)} }
	of := func(parts ...Part) string {
		front, back, ok := (&Divide{Parts: parts}).halves()
		return fmt.Sprint(front, back, ok)
	}
	assert.Equal(t, "0 1 true", of(part("Front", 50), part("Back", 50)))
	assert.Equal(t, "2 0 true", of(part("Back", 50), part("gap", 4), part("Front", 50)))
	assert.Equal(t, "0 1 false", of(part("Front", 50), part("Back", 52)))
	assert.Equal(t, "0 0 false", of(part("Left front", 25), part("Right front", 25), part("Back", 50)))
	assert.Equal(t, "0 0 false", of(part("Front", 50)))
	wider := func(by int) int {
		s := &Divide{Parts: []Part{part("Front", 50), part("Back", 50)}}
		f := &Fitting{Chooser: &nearest{moved: map[string]int{"one half wider, row 7": by}}, Steps: map[Section]Step{s: {FirstRow: 7}}}
		return f.wider(s)
	}
	assert.Equal(t, -1, wider(0))
	assert.Equal(t, 0, wider(1))
	assert.Equal(t, 1, wider(-1))
}

// Every 4th row 3 times, then every 2nd 5 times: after 4 of them 3 × 4 + 2 = 14 rows are done, and 4 are left.
func TestAShapingIsCutAfterSoMany(t *testing.T) {
	h := Shaping{By: expr.Counts(1), Every: expr.Counts(4), Times: expr.Counts(3), Then: []Spacing{{expr.Counts(2), expr.Counts(5)}}, Offset: 3}
	for n, want := range map[int][3]int{0: {0, 8, 3}, 2: {2, 6, 11}, 3: {3, 5, 15}, 4: {4, 4, 17}, 8: {8, 0, 25}} {
		first, rest, rows := h.cut(n)
		assert.Equal(t, want, [3]int{first.total(), rest.total(), rows}, n)
	}
	assert.True(t, even([]spaced{{4, 3}, {2, 5}, {3, 0}}))
	assert.False(t, even([]spaced{{4, 3}, {3, 1}}))
}

// 24 stitches, 4 at a time 6 times as published, keep that; 20 are 4 at a time 5 times; nothing is nothing.
func TestSoManyAtATimeSoOften(t *testing.T) {
	for _, c := range [][6]int{{24, 4, 6, 40, 4, 6}, {20, 4, 6, 40, 4, 5}, {0, 4, 6, 40, 0, 0}, {28, 4, 6, 40, 4, 7}, {7, 2, 3, 40, 2, 3}} {
		b, m := times(c[0], c[1], c[2], c[3])
		assert.Equal(t, [2]int{c[4], c[5]}, [2]int{b, m}, c)
	}
	assert.Equal(t, "1 st", stitches(1))
	assert.Equal(t, "2 sts", stitches(2))
	assert.Equal(t, "once", often(1))
	assert.Equal(t, "2 times", often(2))
}

// A piece of cast on, shaped rows and bind-off at three quarters of the stitches and ten thirteenths of the rows, by hand: 40 sts are 30,
// 26 rows are 20, an increase of 1 at both edges 10 times to 60 is 7 times and 1 stitch once, to 45 = 60 × ¾.
func TestAPieceIsFittedByHand(t *testing.T) {
	on := func(n int) Common { c := Common{}; c.Pos.Line = n; return c }
	shape := func(n int) *Shape {
		return &Shape{Common: on(n), Shapings: []Shaping{{Increase: true, By: expr.Counts(1), At: BothEdges, Every: expr.Counts(2), Times: expr.Counts(10)}}}
	}
	list := func() []Section {
		return []Section{&CastOn{Common: on(1), Stitches: expr.Counts(40)}, &Even{Common: on(2), Amount: Amount{Rows: expr.Counts(26)}}, shape(3), &BindOff{Common: on(4), At: BothEdges, Stitches: expr.Counts(4)}, &BindOff{Common: on(5), All: true}}
	}
	was, now := list(), list()
	steps := map[Section]Step{
		was[0]: {Section: was[0], After: 40, FirstRow: 1, Gauge: "fabric"},
		was[1]: {Section: was[1], Before: 40, After: 40, Rows: 26, FirstRow: 1, FirstRS: true, Gauge: "fabric"},
		was[2]: {Section: was[2], Before: 40, After: 60, Rows: 20, FirstRow: 27, FirstRS: true, Gauge: "fabric", Places: []int{2}},
		was[3]: {Section: was[3], Before: 60, After: 52, Rows: 0, FirstRow: 47, FirstRS: true, Gauge: "fabric"},
	}
	c := &nearest{moved: map[string]int{}}
	f := &Fitting{Chooser: c, Steps: steps, Gauge: "fabric", RS: true, Made: map[Section]int{}, Twos: map[Section]bool{}}
	out := f.Fit(now, was)
	assert.Equal(t, 30, out[0].(*CastOn).Stitches.Int(0, 0))
	assert.Equal(t, 20, out[1].(*Even).Amount.Rows.Int(0, 0))
	assert.Equal(t, 7, out[2].(*Shape).Shapings[0].total())
	assert.Equal(t, 1, out[2].(*Shape).Shapings[1].By.Int(0, 0))
	assert.Equal(t, 3, out[3].(*BindOff).Stitches.Int(0, 0))
}

// By hand: 3 rows from a right-side row end before a wrong-side one. From there an odd number ends alike; begun on the other side, an even one.
func TestRowsThatEndOnTheSideOnWhichTheyEnded(t *testing.T) {
	for _, c := range []struct {
		rs, first bool
		rows      int
		want      Need
	}{{true, true, 3, Need{2, 1}}, {true, true, 4, Need{2, 0}}, {false, true, 4, Need{2, 1}}, {false, true, 3, Need{2, 0}}, {true, false, 3, Need{2, 0}}} {
		f := &Fitting{RS: c.rs, step: Step{Rows: c.rows, FirstRS: c.first}}
		assert.Equal(t, c.want, f.sameSide(), c)
		f.Round = true
		assert.Equal(t, Need{}, f.sameSide())
	}
}

// By hand, 20 sts and 26 rows to 15 and 20: 8 short rows over 40 sts turned 3 times by 4, 12 sts in all, are 6 over 30 turned
// twice, 9 sts in all: 4.5, so by 5; those of 8 sts over 8 have room for
// 2 at a time at an edge (5 stitches for 2 turns) and for 1 in the middle (4 turns).
func TestShortRowsAreFittedByHand(t *testing.T) {
	for _, c := range []struct {
		over, step int
		at         Side
		want       [3]int
	}{{40, 4, RightEdge, [3]int{6, 30, 5}}, {8, 8, LeftEdge, [3]int{6, 6, 2}}, {8, 8, BothEdges, [3]int{6, 6, 1}}} {
		was, now := shortRows(c.over, c.step, c.at), shortRows(c.over, c.step, c.at)
		f := &Fitting{Chooser: &nearest{}, Steps: map[Section]Step{was: {Before: 60, After: 60, Rows: 8, FirstRow: 1, FirstRS: true}}, N: 45, RS: true}
		out := f.Fit([]Section{now}, []Section{was})[0].(*ShortRows)
		assert.Equal(t, c.want, [3]int{out.Rows.Int(0, 0), out.Over.Int(0, 0), out.Step.Int(0, 0)}, c)
	}
}

func shortRows(over, step int, at Side) *ShortRows {
	return &ShortRows{Over: expr.Counts(over), Rows: expr.Counts(8), Step: expr.Counts(step), At: at}
}

// At 20 stitches and 20 rows a circle grows by 2π, 6.28 a round (geometry of the circle); 1.3 times that, 8.17, frills.
func TestRoundsFrillBeyondACircle(t *testing.T) {
	for by, frills := range map[int]bool{6: false, 8: false, 9: true} {
		p := &Pattern{Sizes: expr.Sizes{Names: []string{"S"}, Groups: []int{1}}, Gauges: []Gauge{{Name: "g", Stitches: units.Int(20), Rows: units.Int(20), Over: units.Int(100)}}}
		p.Pieces = []*Piece{{Name: "Disc", Round: true, From: FromCentre, Sections: []Section{&Ring{Stitches: expr.Counts(6)},
			&Shape{Shapings: []Shaping{{Increase: true, By: expr.Counts(by), At: Across, Every: expr.Counts(1), Times: expr.Counts(6)}}}, &BindOff{All: true}}}}
		n := 0
		for _, f := range Work(p, 0).Findings {
			if f.Kind == "arithmetic/flat" {
				n++
			}
		}
		assert.Equal(t, frills, n > 0, by)
	}
}

// A mirrored piece is of the kind that its name says, and otherwise of the kind of what it mirrors; it is made as often as it says.
func TestAMirroredPieceHasItsKind(t *testing.T) {
	m := &Made{Name: "Front", Kind: KindFront, ID: "front", Edges: []Edge{{Name: "side", Left: true}}}
	assert.Equal(t, KindFront, m.mirrored(&Piece{Name: "Other", Kind: KindPiece}, 0).Kind)
	assert.Equal(t, KindBack, m.mirrored(&Piece{Name: "Back", Kind: KindBack}, 0).Kind)
	assert.Equal(t, 1, m.mirrored(&Piece{Name: "Other"}, 0).Make)
	assert.Equal(t, 2, m.mirrored(&Piece{Name: "Other", Make: expr.Counts(2)}, 0).Make)
	e := m.mirrored(&Piece{Name: "Other"}, 0).Edges[0]
	assert.True(t, e.Right && !e.Left)
	assert.Equal(t, Point{-3, 4}, Point{3, 4}.mirrored())
}

// 2π is 6.28: three quarters of it, 4.71, and more lie flat; a round that grows by 4 is where a dome begins.
func TestACrownLiesFlatAsLongAsItGrows(t *testing.T) {
	f := &freeform{rounds: []roundPoint{{row: 0, n: 6}, {row: 1, n: 12}, {row: 2, n: 17}, {row: 4, n: 27}, {row: 5, n: 31}, {row: 6, n: 37}}}
	flat, sts := f.flat(nil, 6.28)
	assert.Equal(t, [2]int{4, 27}, [2]int{flat, sts})
	f.rounds = f.rounds[:3]
	flat, sts = f.flat(nil, 6.28)
	assert.Equal(t, [2]int{2, 17}, [2]int{flat, sts})
	// A plain round after the ring, (18 - 8) / 2 = 5 of 0.75 × 7.5 = 5.6, lies flat with the round of nine after it: 19 / 3 = 6.3.
	f.rounds = []roundPoint{{row: 1, n: 8}, {row: 3, n: 18}, {row: 4, n: 27}, {row: 5, n: 36}, {row: 7, n: 36}}
	flat, sts = f.flat(nil, 7.5)
	assert.Equal(t, [2]int{5, 36}, [2]int{flat, sts})
}

// By hand, stitches of 5 and 4 mm with 6 of the first at the left: moved in by 4 it lies 20 mm in, by 8 it lies 6 × 5 + 2 × 4 = 38 mm in; outwards it goes on
// with its own, 2 are 10 mm. Taken in by one a row over 8 rows, the edge turns after the sixth.
func TestAnEdgeThatTakesUpARunGoesOnInTheNext(t *testing.T) {
	wide, narrow := &Gauge{Stitches: units.Int(20), Over: units.Int(100)}, &Gauge{Stitches: units.Int(25), Over: units.Int(100)}
	b := &block{runs: []run{{n: 6, gauge: wide}, {n: 20, gauge: narrow}}}
	s := &strand{blocks: []block{*b}}
	for d, want := range map[int64]int64{-4: -20, -8: -38, 2: 10} {
		assert.True(t, units.Int(want).Eq(s.moved(b, segLeft, units.Int(d))), d)
	}
	assert.True(t, units.Int(-40).Eq(s.moved(b, segRight, units.Int(-10))))
	p := b.corners(profile{{8, units.Int(-8)}}, segLeft)
	assert.Equal(t, []int{6, 8}, []int{p[0].row, p[1].row})
	assert.True(t, units.Int(-6).Eq(p[0].d) && units.Int(-8).Eq(p[1].d))
}

// By hand: 5 cm more of 10/15 cm each are 7.5 stitches, with the 30 that 40 became 37.5: 38. A piece from side to side goes on with them all.
func TestStitchesAlongAreAdded(t *testing.T) {
	was, now := &CastOn{Stitches: expr.Counts(40)}, &CastOn{Stitches: expr.Counts(40)}
	f := &Fitting{Chooser: &nearest{}, Steps: map[Section]Step{was: {After: 40}}, Extra: map[Section]units.Num{was: units.Int(50)}, Made: map[Section]int{}}
	out := f.Fit([]Section{now}, []Section{was})
	assert.Equal(t, 38, out[0].(*CastOn).Stitches.Int(0, 0))
	assert.Equal(t, 38, f.Made[was])
	assert.Equal(t, 38, f.N)
	assert.Equal(t, 11, f.more, "38 are as wide as 51 of those published")
}

// By hand: 2 in 1 and 1 in each of 2 make 4 of 3, so 30 are 40; 31 leave one over, which is told.
func TestARowThatRepeatsIsFittedByHand(t *testing.T) {
	for n, want := range map[int][2]int{30: {40, 0}, 31: {41, 1}} {
		was, now := &RepeatRow{Use: 3, Makes: 4}, &RepeatRow{Use: 3, Makes: 4}
		c := &nearest{}
		f := &Fitting{Chooser: c, Steps: map[Section]Step{was: {Before: 60, After: 80, Rows: 1}}, N: n}
		f.Fit([]Section{now}, []Section{was})
		assert.Equal(t, want, [2]int{f.N, len(c.told)}, n)
	}
}
