package work

import (
	"testing"

	"github.com/stretchr/testify/assert"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// Sums by hand over small rows; how each comes about stands beside it.

var (
	sc = stitch.ByID("sc")
	dc = stitch.ByID("dc")
)

// shells is sc, ch 2, 3 dc of a shell, ch 1, 2 sc: 1+3+2 = 6 stitches, 2+1 chains in 2 spaces, 8 places.
func shells() *fabric {
	f := &fabric{marks: []int{1, 4}, picots: 2, groups: 1}
	for _, r := range []run{{kind: sc, n: 1}, {chain: 2}, {kind: dc, n: 3, group: 1}, {chain: 1}, {kind: sc, n: 2}} {
		f.add(r)
	}
	return f
}

func TestARowCountsItsStitchesAndItsChainsApart(t *testing.T) {
	f := shells()
	chains, spaces := f.chains()
	assert.Equal(t, []int{6, 3, 2}, []int{f.stitches(), chains, spaces})
	assert.Equal(t, []int{1, 1, 3, 1, 2}, elements(f))
	assert.Equal(t, sc, (&fabric{runs: []run{{kind: sc, n: 2}, {kind: dc, n: 3}, {kind: sc, n: 2}}}).main(), "2 + 2 sc against 3 dc")
	assert.Equal(t, dc, (&fabric{runs: []run{{kind: sc, n: 2}, {kind: dc, n: 3}}}).main())
	assert.Equal(t, sc, f.main(), "3 of each: the one that comes first")
	assert.False(t, f.base())
	assert.True(t, (&fabric{runs: []run{{kind: chainStitch(), n: 3, base: true}}}).foundation())
	assert.Equal(t, 7, uniform(sc, 7).stitches())
	assert.Empty(t, uniform(sc, 0).runs)
}

func elements(f *fabric) (out []int) {
	for _, r := range f.runs {
		out = append(out, r.elements())
	}
	return out
}

func TestRunsThatAreAlikeAreOne(t *testing.T) {
	f := &fabric{}
	for _, r := range []run{{kind: sc, n: 2}, {kind: sc, n: 3}, {chain: 2}, {chain: 2}, {kind: sc, n: 1}, {kind: sc, n: 1, tch: true}, {kind: sc, n: 1, group: 1}, {kind: sc, n: 1, base: true}, {}} {
		f.add(r)
	}
	assert.Equal(t, []int{5, 1, 1, 1, 1, 1, 1}, elements(f), "2 + 3; spaces, a turning chain, a group and a foundation stand by themselves")
	assert.Equal(t, 9, f.stitches())
}

func TestARowTurnedIsMetFromItsOtherEnd(t *testing.T) {
	f := shells()
	g := f.reversed()
	assert.Equal(t, []int{2, 1, 3, 1, 1}, elements(g))
	assert.Equal(t, []int{2, 5}, g.marks, "6 - 4 and 6 - 1")
	assert.Equal(t, []int{2, 1}, []int{g.picots, g.groups})
	assert.True(t, f.same(g.reversed()))
	assert.False(t, f.same(g))
	room := fabric{runs: make([]run, 9)}
	assert.Equal(t, elements(g), elements(f.reversedInto(&room)), "a room that is larger")
	one := uniform(sc, 4)
	assert.Same(t, one, one.reversed(), "all alike")
}

func TestARoundBegunFromItsLastPlace(t *testing.T) {
	assert.Equal(t, []int{1, 1, 1, 3, 1, 1}, elements(shells().fromLast()), "one of the last 2 sc first, and 1 of them left")
	f := &fabric{runs: []run{{kind: sc, n: 2}, {chain: 3}}}
	assert.Equal(t, []int{1, 2}, elements(f.fromLast()), "the space first")
	g := &fabric{runs: []run{{kind: sc, n: 2}, {kind: dc, n: 1}}}
	assert.Equal(t, []int{1, 2}, elements(g.fromLast()))
	one := uniform(sc, 4)
	assert.Same(t, one, one.fromLast())
}

func TestRowsAreAlikeForWhatGoesIntoThem(t *testing.T) {
	for name, change := range map[string]func(f *fabric){
		"one more":    func(f *fabric) { f.runs[0].n++ },
		"longer":      func(f *fabric) { f.add(run{chain: 1}) },
		"another":     func(f *fabric) { f.runs[0].kind = dc },
		"a chain":     func(f *fabric) { f.runs[1].chain = 3 },
		"a marker":    func(f *fabric) { f.marks[0]++ },
		"a picot":     func(f *fabric) { f.picots-- },
		"no group":    func(f *fabric) { f.runs[2].group = 0 },
		"a beginning": func(f *fabric) { f.runs[0].tch = true },
	} {
		f := shells()
		change(f)
		assert.False(t, shells().same(f), name)
	}
	f := shells()
	f.runs[2].group = 5
	assert.True(t, shells().same(f), "which group it is makes no difference")
	assert.True(t, same(nil, nil))
	assert.False(t, same(f, nil))
	assert.True(t, same(f, shells()))
}

func TestTheCursorUsesPlaceByPlace(t *testing.T) {
	c := over(shells())
	assert.True(t, c.atStart())
	assert.Equal(t, 6, c.left)
	c.step(1) // the sc
	assert.Equal(t, []int{1, 0, 1, 5}, []int{c.i, c.off, c.pos, c.left})
	assert.False(t, c.atStart())
	c.passSpaces()
	assert.Equal(t, []int{2, 0, 2, 5}, []int{c.i, c.off, c.pos, c.left}, "a space is a place and no stitch")
	c.step(2) // 2 of the 3 dc
	assert.Equal(t, []int{2, 2, 4, 3}, []int{c.i, c.off, c.pos, c.left})
	left := rest(&c)
	assert.Equal(t, []int{1, 1, 2}, elements(left))
	assert.Equal(t, 3, left.stitches(), "1 dc and 2 sc")
	c.step(1)
	c.step(1) // into the space of one chain
	assert.Equal(t, []int{4, 0, 6, 2}, []int{c.i, c.off, c.pos, c.left})
	c.toEnd()
	assert.Equal(t, []int{5, 0, 8, 0}, []int{c.i, c.off, c.pos, c.left})
	assert.Nil(t, c.run())
}

func TestASpaceOfSeveralChainsIsLeftChainByChain(t *testing.T) {
	c := over(&fabric{runs: []run{{chain: 3}, {kind: sc, n: 1}}})
	c.step(2)
	assert.Equal(t, []int{0, 2, 0, 1}, []int{c.i, c.off, c.pos, c.left})
	c.step(1)
	assert.Equal(t, []int{1, 0, 1, 1}, []int{c.i, c.off, c.pos, c.left})
	c.toEnd()
	assert.Equal(t, 2, c.pos)
}

func TestAStitchBetweenSpacesHoldsChainsAlone(t *testing.T) {
	net := func(runs ...run) cursor {
		c := over(&fabric{runs: runs})
		c.i = 1
		return c
	}
	one, space := run{kind: sc, n: 1}, run{chain: 3}
	for want, c := range map[bool][]cursor{
		true:  {net(space, one, space), net(space, one)},
		false: {net(one, one, space), net(space, run{kind: sc, n: 2}, space), net(space, one, one), net(space, space), net(space, run{kind: sc, n: 1, group: 1}, space), over(&fabric{runs: []run{one, space}}), over(&fabric{})},
	} {
		for i, k := range c {
			assert.Equal(t, want, k.anchor(), "%v %d", want, i)
		}
	}
}

func TestTwoRowsAreOneBehindTheOther(t *testing.T) {
	f := joined2(uniform(sc, 3), shells())
	assert.Equal(t, []int{4, 1, 3, 1, 2}, elements(f), "3 + 1 sc are one stretch")
	assert.Equal(t, 9, f.stitches())
}

func TestAMeshHasAStitchForEachSpace(t *testing.T) {
	mesh := &fabric{runs: []run{{kind: dc, n: 1}, {chain: 1}, {kind: dc, n: 1}, {chain: 1}}}
	assert.True(t, mesh.parted())
	mesh.add(run{kind: dc, n: 1})
	assert.False(t, mesh.parted(), "3 stitches, 2 spaces")
	assert.False(t, uniform(dc, 0).parted())
}

func TestWhatInstructionsAddInAll(t *testing.T) {
	st := func(id string, n int) *ins.Stitch { return &ins.Stitch{Kind: stitch.ByID(id), N: ins.N(n)} }
	inc, dec := &ins.Stitch{Inc: true, N: ins.N(3)}, &ins.Stitch{Dec: true, N: ins.N(2)}
	assert.Equal(t, 0, net([]ins.Item{st("k", 5), st("p", 2)}, 0))
	assert.Equal(t, 1, net([]ins.Item{inc, dec}, 0), "3 - 2")
	assert.Equal(t, -3, net([]ins.Item{st("k2tog", 1), st("sk2p", 1)}, 0), "one less, and two less")
	assert.Equal(t, 4, net([]ins.Item{st("yo", 2), st("m1", 2)}, 0))
	assert.Equal(t, 10, net([]ins.Item{&ins.CastOn{N: ins.N(4)}, &ins.Repeat{Body: []ins.Item{st("yo", 1)}, Times: ins.N(6)}}, 0), "4 + 6 x 1")
	assert.Equal(t, 7, net([]ins.Item{&ins.CastOn{N: ins.Num{By: []int{4, 7}}}}, 1), "of the second size")
}

func TestHowUnlikelyAReadingIs(t *testing.T) {
	for _, c := range []struct {
		taken map[key]bool
		want  int
	}{
		{map[key]bool{}, 0},
		{map[key]bool{{chain: 3}: true, {chain: 1}: false}, 0},                    // as is usual
		{map[key]bool{{chain: 3}: false}, 3},                                      // a tall chain counts mostly
		{map[key]bool{{chain: 4}: false}, 3},                                      //
		{map[key]bool{{chain: 1}: true}, 3},                                       // a chain of one seldom
		{map[key]bool{{chain: 2}: true}, 1},                                       //
		{map[key]bool{{chain: 2}: false}, 0},                                      //
		{map[key]bool{{inAll: true}: true}, 2},                                    //
		{map[key]bool{{inAll: true}: false}, 0},                                   //
		{map[key]bool{{chain: 3, hook: true}: false, {chain: 3}: true}, 4},        // 3, and unlike the next rows
		{map[key]bool{{chain: 3, hook: true}: true, {chain: 3}: true}, 0},         //
		{map[key]bool{{inAll: true}: true, {turns: true}: true}, 4},               // 2 + 2
		{map[key]bool{{chain: 2}: true, {chain: 1}: true, {made: true}: true}, 6}, // 1 + 3 + 2
	} {
		p := newPicks()
		p.taken = c.taken
		assert.Equal(t, c.want, p.unusual(), "%v", c.taken)
		rd := reading{pick: p}
		assert.Equal(t, 2*c.want, rd.rank())
		rd.guess = true
		assert.Equal(t, 2*c.want+1, rd.rank())
	}
}

func TestReadingsThatFitBestAreKeptTheLikeliestFirst(t *testing.T) {
	rd := func(n, cost int, chain1 bool) reading {
		p := newPicks()
		p.taken[key{chain: 1}] = chain1
		return reading{fab: uniform(sc, n), cost: cost, pick: p}
	}
	out := prune([]reading{rd(5, 1, false), rd(6, 0, true), rd(7, 0, false), rd(7, 0, true)})
	assert.Len(t, out, 2, "one costs more, and two have the same row")
	assert.Equal(t, []int{7, 6}, []int{out[0].fab.stitches(), out[1].fab.stitches()})
	assert.False(t, out[0].pick.taken[key{chain: 1}])
	var many []reading
	for n := range 12 {
		many = append(many, rd(n+1, 0, false))
	}
	assert.Len(t, prune(many), mostReadings)
}

func TestHowSureACountIs(t *testing.T) {
	var c certainty
	assert.True(t, c.known())
	c.lose()
	assert.False(t, c.known())
	c.confirm(true)
	assert.False(t, c.known(), "a row that fits says nothing where nothing is known")
	c.find()
	assert.True(t, c.known())
	c.why, c.suspect = said, 3
	c.confirm(false)
	assert.Equal(t, certainty{why: said, suspect: 3}, c)
	c.confirm(true)
	assert.Equal(t, certainty{}, c)
	c.since = mostSince
	assert.False(t, c.long())
	c.since++
	assert.True(t, c.long())
	c = certainty{}
	c.forget()
	assert.True(t, c.long())
	for _, g := range []struct {
		gap, of int
		want    bool
	}{{3, 4, false}, {3, 5, true}, {-3, 5, true}, {2, 5, false}, {5, 10, false}, {6, 10, true}, {-5, 10, false}, {-6, 10, true}} {
		assert.Equal(t, g.want, (&raw{gap: g.gap, of: g.of}).gross(), "%+v", g)
	}
}

func TestWhatUsesAndWhatMisses(t *testing.T) {
	assert.True(t, uses([]raw{{kind: "rows/count"}, {kind: "rows/over-use"}}))
	assert.False(t, uses([]raw{{kind: "rows/count"}}))
	for _, c := range []struct {
		f    raw
		want bool
	}{
		{raw{kind: "rows/under-use", gap: 3, of: 12}, true}, // a quarter
		{raw{kind: "rows/under-use", gap: 3, of: 13}, false},
		{raw{kind: "rows/under-use", gap: 2, of: 4}, false}, // two are a slip
		{raw{kind: "rows/count", gap: 3, of: 4}, false},
		{raw{kind: "rows/repeat", a: []int{3, 0, 12}}, true},
		{raw{kind: "rows/repeat", a: []int{3, 0, 13}}, false},
		{raw{kind: "rows/repeat", a: []int{2, 0, 4}}, false},
	} {
		assert.Equal(t, c.want, misses([]raw{c.f}), "%+v", c.f)
	}
}
