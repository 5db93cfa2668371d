package schematic

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// fittingOf chooses at 15 stitches and 20 rows over 10 cm where 20 and 26 were published, three quarters of the stitches, for a section of so many before and after.
func fittingOf(n, before, after int, next ...Section) *Fitting {
	return &Fitting{Chooser: &nearest{}, N: n, step: Step{Before: before, After: after}, next: next, Steps: map[Section]Step{}}
}

// By hand: what a multiple of 12 may gain or lose at both edges is a multiple of 2; 3 steps at both edges make 6; to the last stitch, or none, all may be.
func TestWhatBindOffsAskOfTheCountBeforeThem(t *testing.T) {
	then := Need{12, 5}
	for _, c := range []struct {
		s    Section
		want Need
	}{
		{&AddEdge{At: BothEdges}, Need{2, 1}}, {&AddEdge{At: LeftEdge}, Need{}}, {&BindOff{At: BothEdges, Times: expr.Counts(3)}, Need{6, 5}}, {&BindOff{At: RightEdge, Times: expr.Counts(4)}, Need{4, 1}},
		{&BindOff{At: RightEdge}, Need{}}, {&BindOff{All: true, At: BothEdges}, Need{}}, {&BindOff{At: BothEdges, Times: expr.Counts(0)}, Need{}},
	} {
		assert.Equal(t, c.want, c.s.need(nil, then), "%+v", c.s)
		assert.Equal(t, Need{}, c.s.need(nil, Need{}))
	}
	assert.Equal(t, []int{6, 2, 1}, []int{(&BindOff{At: BothEdges, Times: expr.Counts(3)}).off(), (&BindOff{}).off(), (&BindOff{At: LeftEdge}).off()})
}

// By hand: 8 of 80 added at each edge are 6 at each; nothing stays nothing. 80 less 2 x 10 are 60; now 60 less 2 x 7.5, to 8 and 44, or to 7 and 46.
func TestStitchesAtAnEdgeAnew(t *testing.T) {
	f := fittingOf(60, 80, 96)
	was, now := &AddEdge{Stitches: expr.Counts(8)}, &AddEdge{Stitches: expr.Counts(8)}
	now.fit(f, was)
	assert.Equal(t, []int{6, 72}, []int{now.Stitches.Int(0, 0), f.N})
	f = fittingOf(60, 80, 88)
	now, was = &AddEdge{At: LeftEdge, Stitches: expr.Counts(8)}, &AddEdge{At: LeftEdge, Stitches: expr.Counts(8)}
	now.fit(f, was)
	assert.Equal(t, []int{6, 66}, []int{now.Stitches.Int(0, 0), f.N})
	assert.Zero(t, f.edge(0, 2))
	for _, c := range [][5]int{{60, 80, 10, 8, 44}, {60, 60, 0, 0, 60}, {9, 80, 10, 4, 1}} {
		f := fittingOf(c[0], c[1], c[1]-2*c[2])
		was, now := &BindOff{Stitches: expr.Counts(c[2])}, &BindOff{Stitches: expr.Counts(c[2])}
		now.fit(f, was)
		assert.Equal(t, [2]int{c[3], c[4]}, [2]int{now.Stitches.Int(0, 0), f.N}, "%v", c)
	}
	f = fittingOf(6, 80, 0)
	(&BindOff{All: true}).fit(f, &BindOff{All: true})
	assert.Zero(t, f.N)
}

// By hand: 5 and then 5 at one edge are 3.75 each: 4, and of 7.5 in all 8 less 4, 4; after a section between they are rounded by themselves.
func TestBindOffsInTurnAreRoundedAsOne(t *testing.T) {
	off := func() *BindOff { return &BindOff{At: LeftEdge, Stitches: expr.Counts(6)} }
	next := []Section{off(), off(), &Even{}}
	f := fittingOf(60, 80, 74)
	var got []int
	for i := range 3 {
		f.next = next[i:]
		now := off()
		now.fit(f, off())
		got = append(got, now.Stitches.Int(0, 0))
	}
	assert.Equal(t, []int{5, 4, 5}, got, "4.5 to 5, 9 less 5, and 13.5 to 14 less 9")
	assert.Equal(t, [2]int{18, 14}, f.steps[LeftEdge])
	f.next = nil
	assert.Equal(t, [2]int{18, 14}, f.taken(LeftEdge))
	f.follow = 9
	assert.Equal(t, [2]int{}, f.taken(LeftEdge))
}

func TestWhetherRowsFollowInWhichAStitchCanGo(t *testing.T) {
	e := &Even{}
	f := fittingOf(60, 80, 60, e)
	for rows, want := range map[int]bool{0: false, 3: false, 4: true} {
		f.Steps[e] = Step{Rows: rows}
		assert.Equal(t, want, f.evenNext(), "%d", rows)
	}
	e.Rows = expr.Graded{From: &expr.Sum{}}
	assert.False(t, f.evenNext(), "their number is given")
	f.next = []Section{&Fold{}}
	assert.False(t, f.evenNext())
	f.next = nil
	assert.False(t, f.evenNext())
}

// By hand: 25 % fewer stitches before a mark of 80 that are 60: 8 in are 6, stitch 20 is 15. Along 26 rows where 20 are as high: first 13 and 26 apart three times, 13 + 52 = 65, are 10 and 50 in all, 20 apart.
func TestMarksAreFittedByHand(t *testing.T) {
	was := &Mark{Inset: expr.Counts(8), Stitch: expr.Counts(20), First: expr.Counts(13), Apart: expr.Counts(26), Count: expr.Counts(3), Along: true}
	now := *was
	now.fit(fittingOf(60, 80, 80), was)
	assert.Equal(t, []int{6, 15, 10, 20}, []int{now.Inset.Int(0, 0), now.Stitch.Int(0, 0), now.First.Int(0, 0), now.Apart.Int(0, 0)})
	now, was.Along = *was, false
	now.Along = false
	now.fit(fittingOf(40, 80, 80), was)
	assert.Equal(t, []int{4, 10, 7, 13}, []int{now.Inset.Int(0, 0), now.Stitch.Int(0, 0), now.First.Int(0, 0), now.Apart.Int(0, 0)}, "half: 6.5 to 7, and 32.5 less 7 in two")
	now, was.Count = *was, expr.Counts(1)
	now.Count = was.Count
	now.fit(fittingOf(40, 80, 80), was)
	assert.Equal(t, 26, now.Apart.Int(0, 0), "one stands apart from none")
	now = Mark{Count: expr.Counts(2), Apart: expr.Counts(1)}
	was = &Mark{Count: expr.Counts(2), Apart: expr.Counts(1)}
	now.fit(fittingOf(1, 80, 80), was)
	assert.Equal(t, 1, now.Apart.Int(0, 0), "never on one another")
	now = Mark{Stitch: expr.Counts(20)}
	now.fit(fittingOf(0, 0, 0), &now)
	assert.Equal(t, 15, now.Stitch.Int(0, 0), "before any row by the gauge alone")
}

// By hand: what repeats over 6 and makes 5 wants a multiple of 6, and where 10 more than a multiple of 15 must come out of it, the 2nd, 5th … repeat: 12 more than a multiple of 18.
func TestWhatARepeatAsksOfTheCountBeforeIt(t *testing.T) {
	s := &RepeatRow{Use: 6, Makes: 5}
	f := fittingOf(0, 0, 0)
	for before, want := range map[int]Need{60: {6, 0}, 101: {6, 0}, 102: {}} {
		f.Steps[s] = Step{Before: before}
		assert.Equal(t, want, s.need(f, Need{}), "%d", before)
	}
	assert.Equal(t, Need{18, 12}, s.need(f, Need{15, 10}))
	for _, o := range []*RepeatRow{{Use: 6, Makes: 5, RestEven: true}, {Use: 0, Makes: 5}, {Use: 6}} {
		assert.Equal(t, Need{}, o.need(f, Need{15, 10}))
	}
	for _, c := range []struct {
		n, before, want int
		even            bool
		told            int
	}{{60, 84, 50, false, 0}, {62, 84, 52, true, 1}, {62, 85, 52, false, 0}, {5, 84, 5, true, 1}} {
		f, now := fittingOf(c.n, c.before, 0), &RepeatRow{Use: 6, Makes: 5}
		now.fit(f, &RepeatRow{Use: 6, Makes: 5})
		assert.Equal(t, c.want, f.N)
		assert.Equal(t, c.even, now.RestEven)
		told := f.Chooser.(*nearest).told
		assert.Len(t, told, c.told)
		if c.n == 62 && c.even {
			assert.Contains(t, told[0], "repeats over 6 stitches, and there are 62: work the last 2 even (or have 60 or 66 before it)")
		}
	}
}

// By hand: two shapings of 2 at both edges change 4; what follows must be of 8, so that the count before goes in fours; one alone takes as many as it takes.
func TestWhatShapingsAskOfTheCountBeforeThem(t *testing.T) {
	of := func(at Side, by int) Shaping { return Shaping{At: at, By: expr.Counts(by), Times: expr.Counts(3)} }
	for _, c := range []struct {
		list []Shaping
		step Step
		want Need
	}{
		{[]Shaping{of(BothEdges, 2), of(BothEdges, 2)}, Step{Rows: 9, Places: []int{2, 2}}, Need{4, 1}}, {[]Shaping{of(BothEdges, 2), of(Lines, 1)}, Step{Rows: 9, Places: []int{2, 6}}, Need{2, 1}},
		{[]Shaping{of(BothEdges, 2)}, Step{Rows: 9, Places: []int{2}}, Need{}}, {[]Shaping{of(BothEdges, 2)}, Step{Places: []int{2}}, Need{4, 1}}, {[]Shaping{of(Across, 8)}, Step{}, Need{}}, {[]Shaping{of(Lines, 1)}, Step{Rows: 9, Places: []int{8}}, Need{8, 5}},
		{[]Shaping{of(LeftEdge, 1)}, Step{Rows: 9}, Need{}}, {[]Shaping{of(LeftEdge, 0)}, Step{Rows: 9, Places: []int{0}}, Need{}},
	} {
		s := &Shape{Shapings: c.list}
		f := fittingOf(0, 0, 0)
		f.Steps[s] = c.step
		assert.Equal(t, c.want, s.need(f, Need{8, 5}), "%+v", c)
		assert.Equal(t, Need{}, s.need(f, Need{1, 0}))
	}
}

// By hand: rounds by 8 that leave 16 stitches or fewer run into a point.
func TestWhichShapingRunsIntoAPoint(t *testing.T) {
	at := func(side Side, increase bool, times int) *Shape {
		return &Shape{Shapings: []Shaping{{At: side, Increase: increase, By: expr.Counts(8), Every: expr.Counts(2), Times: expr.Counts(times)}}}
	}
	assert.NotNil(t, at(Across, false, 2).point(Step{After: 16}))
	assert.Nil(t, at(Across, false, 2).point(Step{After: 17}))
	assert.Nil(t, at(Across, false, 1).point(Step{After: 8}))
	assert.Nil(t, at(Across, true, 2).point(Step{After: 8}))
	assert.Nil(t, at(BothEdges, false, 2).point(Step{After: 8}))
	s := at(Across, false, 2)
	s.Shapings = append(s.Shapings, s.Shapings[0])
	assert.Nil(t, s.point(Step{After: 8}))
}

// By hand: 4 at every 2nd row, 3 at every 4th and 2 at every 6th row are 8, 12 and 12 rows; half as many rows and shapings, all at even rows, are 2, 2 and 1 in 4, 6 and 6.
func TestACurveStaysACurve(t *testing.T) {
	runs := []spaced{{2, 4}, {4, 3}, {6, 2}}
	f := fittingOf(60, 80, 60)
	tr := &spreading{f: f, s: &Shape{}, total: 16, ratio: units.Frac(1, 2)}
	text := func(list []Spacing) (out []string) {
		for _, g := range list {
			out = append(out, fmt.Sprintf("%d x %d", g.Every.Int(0, 0), g.Times.Int(0, 0)))
		}
		return out
	}
	assert.Equal(t, []string{"2 x 2", "3 x 2", "6 x 1"}, text(tr.runs(runs, 9, 5, 16, 1)))
	assert.Equal(t, []string{"2 x 4", "4 x 3", "6 x 2"}, text((&spreading{f: f, s: &Shape{}, total: 32, ratio: units.Int(1)}).runs(runs, 9, 9, 32, 2)))
	assert.Equal(t, []string{"1 x 9"}, text((&spreading{f: f, s: &Shape{}, total: 9, ratio: units.Frac(1, 4)}).runs([]spaced{{4, 9}}, 9, 9, 9, 1)))
	assert.True(t, even(runs))
	assert.True(t, even([]spaced{{2, 1}, {3, 0}}))
	assert.False(t, even([]spaced{{2, 1}, {3, 1}}))
	var h Shaping
	set(&h, nil)
	assert.Zero(t, h.total())
	set(&h, []Spacing{{expr.Counts(2), expr.Counts(3)}, {expr.Counts(4), expr.Counts(5)}})
	assert.Equal(t, 8, h.total())
	assert.Equal(t, 26, h.profile(0).last().row)
}

// By hand: 9 of 80 rows before the first of 20 shapings, now 40 rows: 4.5, to 5; 4 rows, of which 30 shapings want more, leave none to wait. 30 in 8 rows are 22 too many: 8, 8 and 6 once more.
func TestShapingsWithoutRoomFallTwiceInARow(t *testing.T) {
	was := &Shape{Shapings: []Shaping{{At: LeftEdge, By: expr.Counts(1), Every: expr.Counts(3), Times: expr.Counts(20), Offset: 9}}}
	now := &Shape{Shapings: []Shaping{was.Shapings[0]}}
	tr := &spreading{f: fittingOf(60, 80, 60), s: now, total: 40, ratio: units.Frac(1, 2)}
	tr.spread(0, was, 20)
	assert.Equal(t, 5, now.Shapings[0].Offset)
	assert.Equal(t, 20, now.Shapings[0].total())
	now = &Shape{Shapings: []Shaping{was.Shapings[0]}}
	tr = &spreading{f: fittingOf(60, 80, 60), s: now, total: 8, ratio: units.Frac(1, 10)}
	tr.spread(0, was, 30)
	var each []int
	for _, h := range now.Shapings {
		each = append(each, h.total())
	}
	assert.Equal(t, []int{8, 8, 8, 6}, each)
	assert.Equal(t, []string{"30 shapings fall in 8 rows: shape two stitches instead of one in 22 of them"}, tr.f.Chooser.(*nearest).told)
	sided := &Shape{Shapings: []Shaping{{At: LeftEdge, On: RightSide, By: expr.Counts(1), Every: expr.Counts(2), Times: expr.Counts(4)}}}
	now = &Shape{Shapings: []Shaping{sided.Shapings[0]}}
	tr = &spreading{f: fittingOf(60, 80, 60), s: now, total: 8, ratio: units.Int(1)}
	tr.spread(0, sided, 5)
	assert.Equal(t, []int{4, 1}, []int{now.Shapings[0].total(), now.Shapings[1].total()}, "on right-side rows alone there is room for 4")
}

// By hand: the gauge in which most rows are worked until the count changes.
func TestWhichGaugeSaysHowWideAStartIs(t *testing.T) {
	rib, body, more := &Even{Common: Common{Gauge: "rib"}}, &Even{Common: Common{Gauge: "fabric"}}, &Shape{}
	for _, c := range []struct {
		rib, body int
		want      string
	}{{20, 30, "fabric"}, {30, 20, "rib"}, {20, 20, "rib"}} {
		f := fittingOf(0, 0, 0, rib, body, more)
		f.Gauge, f.Steps = "rib", map[Section]Step{rib: {Rows: c.rib, Before: 8, After: 8}, body: {Rows: c.body, Before: 8, After: 8}, more: {Rows: 99, Before: 8, After: 9}}
		more.Gauge = "lace"
		f.Steps[body] = Step{Rows: c.body, Before: 8, After: 10}
		assert.Equal(t, c.want, f.governing(), "%+v", c)
		f.Steps[body] = Step{Rows: c.body, Before: 8, After: 8}
		assert.Equal(t, "lace", f.governing())
	}
	cast := &CastOn{Stitches: expr.Counts(81), Chain: expr.Counts(84)}
	now, f := *cast, fittingOf(0, 0, 81)
	now.fit(f, cast)
	assert.Equal(t, []int{61, 61, 64}, []int{f.N, now.Stitches.Int(0, 0), now.Chain.Int(0, 0)}, "60.75, and 3 more to turn")
	for _, s := range []Section{cast, &Held{}, &Ring{}, &Sideways{}, &JoinParts{}} {
		assert.Equal(t, Need{}, s.need(nil, Need{6, 1}), "nothing is before it")
	}
}

// By hand: of 44 live and 7 added, now 33 and 5.25, there would be 38.25 for 51: a stitch is made up for where rows worked even follow, two at the most.
func TestAStartFromSeveralPiecesIsAsWideAsItWas(t *testing.T) {
	e := &Even{}
	of := func(live, added, after int) (int, int) {
		held := func(n int) *Held {
			return &Held{From: []HeldPart{{Piece: "Body", Stitches: expr.Counts(n)}, {Added: expr.Counts(added)}}}
		}
		f := fittingOf(0, 0, after, e)
		f.Steps[e] = Step{Rows: 9}
		held(live).fit(f, held(44))
		return f.N, f.odd
	}
	for _, c := range [][5]int{{33, 7, 51, 38, 0}, {32, 7, 51, 37, 1}, {31, 7, 51, 36, 2}, {30, 7, 51, 35, 0}, {35, 7, 51, 40, -2}, {36, 7, 51, 41, 0}, {33, 0, 44, 33, 0}} {
		n, odd := of(c[0], c[1], c[2])
		assert.Equal(t, [2]int{c[3], c[4]}, [2]int{n, odd}, "%v", c)
	}
}

// By hand: 24 rows of a band 8 deep at 26 for 20 are 18.5, to 18, and 6 deep.
func TestABandWorkedSidewaysIsFittedByHand(t *testing.T) {
	was := &Sideways{Stitches: expr.Counts(8), Rows: expr.Counts(24)}
	now, f := *was, fittingOf(3, 0, 0)
	now.fit(f, was)
	assert.Equal(t, []int{6, 18, 0}, []int{now.Stitches.Int(0, 0), now.Rows.Int(0, 0), f.N})
	assert.Equal(t, units.Int(40), f.want, "8 of 5 mm")
	assert.Equal(t, units.Int(40), f.have, "6 of 20/3")
}
