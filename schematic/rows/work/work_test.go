package work

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// Every count here is worked by hand, and stands beside its row.

func st(kind string, n int, places ...ins.Place) *ins.Stitch {
	return &ins.Stitch{Kind: stitch.ByID(kind), N: ins.N(n), Places: places}
}

func next(n int) ins.Place {
	return ins.Place{Kind: ins.InNext, N: ins.N(n), Unit: ins.Unit{Word: "st"}}
}

func skip(n int) *ins.Skip { return &ins.Skip{Places: []ins.Place{next(n)}} }

// again repeats instructions to the end of the row, or to its last so many stitches.
func again(last int, body ...ins.Item) *ins.Repeat {
	e := ins.Extent{Kind: ins.ToEnd}
	if last > 0 {
		e = ins.Extent{Kind: ins.ToLast, N: ins.N(last), Unit: ins.Unit{Word: "st"}}
	}
	return &ins.Repeat{Body: body, Until: e, Stop: -1}
}

// worked is a row over n stitches of a kind.
func worked1(kind string, n int, round bool, body ...ins.Item) *work {
	x := &ins.Text{Turning: map[int]ins.Counts{}}
	x.Sizes.Names = []string{""}
	f := uniform(stitch.ByID(kind), n)
	w := &work{task: task{x: x, from: f, round: round, pick: newPicks()}, place: place{cur: over(f), out: &fabric{}, lastPos: -1}}
	w.body(body)
	return w
}

func TestARowIsWorkedStitchByStitch(t *testing.T) {
	each := ins.Place{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}}
	for name, c := range map[string]struct {
		kind               string
		from               int
		round              bool
		body               []ins.Item
		makes, used, found int
	}{
		"each":                            {"sc", 12, false, []ins.Item{st("sc", 1, each)}, 12, 12, 0},
		"two in each":                     {"dc", 12, true, []ins.Item{st("dc", 2, each)}, 24, 12, 0},
		"one, two in the next, around":    {"dc", 12, true, []ins.Item{again(0, st("dc", 1, next(1)), st("dc", 2, next(1)))}, 18, 12, 0}, // 6 times 3
		"two together":                    {"k", 10, false, []ins.Item{again(0, st("k2tog", 1))}, 5, 10, 0},
		"yarn overs":                      {"k", 9, false, []ins.Item{st("k", 1), again(0, st("yo", 1), st("k2tog", 1))}, 9, 9, 0},
		"a rib that does not divide":      {"k", 10, false, []ins.Item{again(0, st("k", 2), st("p", 1))}, 10, 10, 1}, // 3 times 3, and 1 left
		"too many":                        {"sc", 4, false, []ins.Item{st("sc", 5)}, 4, 4, 1},
		"to the last, and both in it":     {"dc", 5, true, []ins.Item{again(1, st("dc", 1, next(1))), st("dc", 2)}, 6, 5, 0}, // 4, and 2 in one
		"a round ends with what it skips": {"dc", 45, true, []ins.Item{again(0, skip(1), st("dc", 2, next(1)))}, 44, 45, 0},  // 22 times 2
		"a row does not":                  {"dc", 45, false, []ins.Item{again(0, skip(1), st("dc", 2, next(1)))}, 44, 45, 1},
		"decreased over what is left":     {"k", 10, false, []ins.Item{st("k", 2), &ins.Shape{N: ins.N(3)}}, 7, 10, 0},
		"decreased over too few":          {"k", 10, false, []ins.Item{st("k", 6), &ins.Shape{N: ins.N(3)}}, 8, 10, 1},
		"decreased over none":             {"k", 10, false, []ins.Item{again(0, st("k", 1)), &ins.Shape{N: ins.N(3)}}, 10, 10, 0},
		"plain to the end, less 3":        {"k", 10, false, []ins.Item{st("k", 1, each), &ins.Shape{N: ins.N(3)}}, 7, 10, 0},
		"increased":                       {"k", 10, false, []ins.Item{&ins.Shape{N: ins.N(3), Inc: true}}, 13, 10, 0},
		"bound off at its beginning":      {"k", 10, false, []ins.Item{&ins.BindOff{N: ins.N(4)}, st("k", 1, each)}, 6, 10, 0},
	} {
		t.Run(name, func(t *testing.T) {
			w := worked1(c.kind, c.from, c.round, c.body...)
			assert.Equal(t, c.makes, w.out.stitches(), "made")
			assert.Equal(t, c.used, c.from-w.cur.left, "used")
			assert.Len(t, w.found, c.found)
		})
	}
}

func TestWhatIsLeftOverIsTold(t *testing.T) {
	w := worked1("k", 14, false, again(0, st("k", 2), st("p", 2))) // 3 times 4 are 12
	require.Len(t, w.found, 1)
	assert.Equal(t, "rows/repeat", w.found[0].kind)
	assert.Equal(t, []int{2, 3}, w.found[0].a[:2], "2 left over after 3 times")
}

// The last stitches may be told without the turning chain behind them: to last 3 sts, 3 dc, dc in top of turning ch needs 4.
func TestTheTurningChainStandsBesideTheLastStitches(t *testing.T) {
	top := ins.Place{Kind: ins.InTop, N: ins.N(1)}
	w := worked1("dc", 12, false)
	e := ins.Extent{Kind: ins.ToLast, N: ins.N(3)}
	assert.Equal(t, 1, w.beside([]ins.Item{st("dc", 1, next(3)), st("dc", 1, top), &ins.Turn{}}, e))
	assert.Equal(t, 0, w.beside([]ins.Item{st("dc", 1, next(2)), st("dc", 1, top)}, e), "it is one of the 3")
	assert.Equal(t, 0, w.beside([]ins.Item{st("dc", 1, next(4))}, e), "no turning chain")
}

func TestARowThatEndsAgainIsOnSeveralNeedles(t *testing.T) {
	to := func(n int) *ins.Stitch {
		return st("k", 1, ins.Place{Kind: ins.InEach, N: ins.N(1), Extent: ins.Extent{Kind: ins.ToLast, N: ins.N(n)}})
	}
	assert.False(t, endsAgain([]ins.Item{to(3), st("k2tog", 1), to(1)}))
	assert.True(t, endsAgain([]ins.Item{to(1), st("k", 1), to(1)}))
	assert.True(t, endsAgain([]ins.Item{to(1), st("k", 1), to(3)}))
	assert.False(t, endsAgain([]ins.Item{to(3)}))
}

func TestByFarIsMoreThanHalf(t *testing.T) {
	for _, c := range []struct {
		gap, of int
		far     bool
	}{{3, 5, true}, {2, 5, false}, {-3, 5, true}, {3, 6, false}, {4, 6, true}, {4, 4, false}, {0, 0, false}} {
		f := raw{gap: c.gap, of: c.of}
		assert.Equal(t, c.far, f.gross(), "%d of %d", c.gap, c.of)
	}
}

func TestCertaintyIsLostAndFound(t *testing.T) {
	var c certainty
	assert.True(t, c.known())
	c.lose()
	assert.False(t, c.known())
	c.find()
	assert.True(t, c.known())
	c.why = said
	c.find()
	assert.Equal(t, said, c.why, "what is only said is not found by that")
	c = certainty{since: mostSince}
	assert.False(t, c.long())
	c.since++
	assert.True(t, c.long())
	c = certainty{}
	c.forget()
	assert.True(t, c.long())
}

// A finding over stitches that are only said is in doubt; behind one that is off by far, so are those after it.
func TestDoubtGoesOnToWhatRestsOnIt(t *testing.T) {
	c := certainty{}
	list := c.judged([]raw{{kind: "rows/stated", gap: 1, of: 20}})
	assert.Equal(t, none, list[0].why)
	assert.Equal(t, none, c.why)
	list = c.judged([]raw{{kind: "rows/stated", gap: 15, of: 20}})
	assert.Equal(t, far, list[0].why)
	assert.Equal(t, said, c.why)
	list = c.judged([]raw{{kind: "rows/stated", gap: 1, of: 20}})
	assert.Equal(t, said, list[0].why)
	c = certainty{}
	c.judged([]raw{{kind: "rows/number", why: far}})
	assert.Equal(t, none, c.why, "a number rests on no stitches")
}

func TestDoubtfulFindingsAreNotes(t *testing.T) {
	x := &ins.Text{Sections: []*ins.Section{{Lines: make([]*ins.Line, 0)}}}
	for range 20 {
		x.Sections[0].Lines = append(x.Sections[0].Lines, &ins.Line{Body: []ins.Item{&ins.Turn{}}})
	}
	m := func(line int, kind string, why doubt) *merged {
		return &merged{raw: raw{kind: kind, sev: finding.Warning, why: why, at: ins.Span{Line: line}}}
	}
	list := []*merged{m(1, "rows/stated", none), m(2, "rows/stated", said), m(3, "rows/number", said), m(4, "rows/stated", held)}
	judge(x, list)
	var kinds []string
	for _, v := range list {
		kinds = append(kinds, v.kind)
	}
	assert.Equal(t, []string{"rows/stated", "rows/not-read", "rows/number", "rows/stated"}, kinds)
	list = []*merged{m(1, "rows/stated", held), m(2, "rows/stated", held), m(3, "rows/stated", held)}
	judge(x, list)
	assert.Equal(t, finding.Note, list[0].sev, "three rows that use other stitches and still make what they state: a form of its own")
}

func TestTheReadingsThatFitBestAreKept(t *testing.T) {
	a, b := uniform(stitch.ByID("sc"), 10), uniform(stitch.ByID("sc"), 12)
	usual, odd := newPicks(), newPicks().with(key{chain: 1}, true)
	list := prune([]reading{{fab: a, cost: 1, pick: usual}, {fab: b, pick: odd}, {fab: b, pick: usual}})
	require.Len(t, list, 1, "the dearer one goes, and of two alike the less usual one")
	assert.Equal(t, 12, list[0].fab.stitches())
	assert.Zero(t, list[0].pick.unusual())
}

func TestARowOverNothingIsShapedIntoNothing(t *testing.T) {
	assert.Empty(t, edges{off: 2}.into(0))
	assert.Equal(t, []int{0, 0, 1, 1}, edges{off: 2}.into(4))
}
