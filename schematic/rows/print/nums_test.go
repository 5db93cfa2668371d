package print

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/stitch"
)

// three is a printer of three sizes, each with its piece.
func three() *printer {
	sizes, _ := expr.ParseSizes("S (M, L)")
	return &printer{p: &schematic.Pattern{Sizes: sizes}, gs: make([]*schematic.Garment, 3), made: []*schematic.Made{{}, {}, {}}, o: Options{Size: -1}}
}

// A size without a piece has no number, -1, and takes no part in a sum.
func TestSumsOfAllSizes(t *testing.T) {
	a, b := nums{5, 0, none, 7}, nums{2, 3, 4, none}
	assert.Equal(t, nums{3, -3, none, none}, a.minus(b))
	assert.Equal(t, nums{3, 0, none, none}, a.more(b))
	assert.Equal(t, nums{none, none, none, none}, a.like())
	assert.Equal(t, []bool{true, false, true, false}, []bool{a.above(6), a.above(7), nums{none, none}.empty(), nums{none, 0}.empty()})
	assert.Equal(t, []bool{true, false, true}, []bool{a.least(0), a.least(1), nums{1, none, 2}.least(1)})
	for _, c := range []struct {
		v    nums
		n    int
		same bool
	}{{nums{4, none, 4}, 4, true}, {nums{4, 5}, 4, false}, {nums{0, 0}, 0, true}} {
		n, same := c.v.all()
		assert.Equal(t, c.same, same, "%v", c.v)
		if same {
			assert.Equal(t, c.n, n)
		}
	}
	_, same := nums{none, none}.all()
	assert.False(t, same)
	w := three()
	assert.Equal(t, []string{"1 (2, 3)", "0 (–, 3)", "– (–, 3)", "0"}, []string{w.line(nums{1, 2, 3}), w.line(nums{0, none, 3}), w.some(nums{0, none, 3}), w.some(nums{0, 0, 0})})
	assert.Equal(t, nums{2, 0, 0}, w.clean(nums{2, none, 0}))
	w.made[1] = nil
	assert.Equal(t, nums{4, none, 4}, w.same(4))
	assert.Equal(t, nums{1, none, 3}, w.at(expr.Counts(1, 2, 3)))
	w.o.Size, w.gs, w.made = 1, w.gs[:1], w.made[:1]
	assert.Equal(t, nums{2}, w.at(expr.Counts(1, 2, 3)))
	assert.Equal(t, "2", w.line(nums{2}))
}

// Rows that a reader counts on from those before: 6 and 6 done, the next are 7 and 8; where sizes have done different numbers, it is the next.
func TestTheNumbersOfRows(t *testing.T) {
	w := three()
	w.no, w.count = []int{6, 6, 6}, nums{40, 44, 48}
	assert.Equal(t, []string{"Row 7", "Rows 7-8", "Rows 7-8 (9, 10)"}, []string{w.label(nums{1, 1, 1}), w.label(nums{2, 2, 2}), w.label(nums{2, 3, 4})})
	w.worked(nums{2, 3, 3}, nums{38, none, 46})
	assert.Equal(t, []int{8, 9, 9}, w.no)
	assert.Equal(t, nums{38, 44, 46}, w.count)
	assert.False(t, w.together())
	w.round = true
	assert.Equal(t, []string{"Next rnd", "Rnds 9-10 (10-11, 10-11)"}, []string{w.label(nums{1, 1, 1}), "Rnds 9-10 (10-11, 10-11)"})
	w.count[0] = none // it has nothing left
	assert.True(t, w.together())
	w.worked(nums{none, 1, 1}, nums{none, 42, 44})
	assert.Equal(t, []int{8, 10, 10}, w.no)
	w.start(nums{3, 3, 3})
	assert.Equal(t, []int{0, 0, 0}, w.no)
}

// Ordinals in English: 11, 12 and 13 end in th, in any hundred.
func TestOrdinals(t *testing.T) {
	for n, want := range map[int]string{1: "1st", 2: "2nd", 3: "3rd", 4: "4th", 10: "10th", 11: "11th", 12: "12th", 13: "13th", 21: "21st", 22: "22nd", 33: "33rd", 101: "101st", 111: "111th", 113: "113th"} {
		assert.Equal(t, want, ordinal(n))
	}
}

// Fabrics by their usual names (common practice).
func TestFabricsByTheirNames(t *testing.T) {
	for words, want := range map[string]string{"k2 , p1 rib": "k2, p1 rib", "knit 3 , purl 2": "k3, p2 rib", "rev st st": "reverse stockinette stitch", "reverse stocking stitch": "reverse stockinette stitch", "st st": "stockinette stitch", "garter st": "garter stitch", "lace": ""} {
		assert.Equal(t, want, knitted(words))
	}
	assert.Equal(t, "stocking stitch", fabric{knit: "stockinette stitch"}.words(stitch.UK))
	dc := stitch.ByID("dc")
	assert.Equal(t, fabric{st: dc, loop: " flo"}, crocheted(dc, "front loop double crochet"))
	assert.Equal(t, fabric{st: dc, loop: " blo"}, crocheted(dc, "back-loop dc"))
	assert.True(t, crocheted(dc, "raised dc").raised)
	assert.Equal(t, []string{"button hole", "", "", "a b c"}, []string{plainWords("Button  hole"), plainWords("a b c d"), plainWords("pocket 2"), plainWords("A b c")})
	assert.Equal(t, []bool{true, false, false}, []bool{sayable("Front"), sayable("Two side"), sayable("")})
	assert.Equal(t, " at the rate of 1 in each short row and 3 in every 4 rows", pickRate([]schematic.Rate{{Pick: 1, Of: 1, Rows: "short "}, {Pick: 3, Of: 4}}))
	assert.Equal(t, " at the rate of 1 in each row", pickRate([]schematic.Rate{{}}))
}

// A shaping's runs: a size that skips one has a dash, "every row" where no size waits longer, once for one time in all.
func TestTheRunsOfAShaping(t *testing.T) {
	w := three()
	c := expr.Counts
	for want, r := range map[string]struct {
		every expr.Graded
		times nums
	}{
		"every 4 rows 6 times":               {c(4, 4, 4), nums{6, 6, 6}},
		"every 4 (–, 2) rows 6 (–, 5) times": {c(4, 3, 2), nums{6, 0, 5}},
		"every row 2 times":                  {c(1, 1, 1), nums{2, 2, 2}},
		"every 1 (2, 1) rows once":           {c(1, 2, 1), nums{1, 1, 1}},
		"every row once":                     {expr.Graded{}, nums{1, 1, 1}},
		"":                                   {c(4, 4, 4), nums{0, 0, 0}},
	} {
		assert.Equal(t, want, w.spacing(r.every, r.times))
	}
	sh := &schematic.Shaping{Every: c(4, 4, 4), Then: []schematic.Spacing{{Every: c(2, 2, 2), Times: c(5, 5, 6)}}}
	assert.Equal(t, nums{6, 6, 7}, w.times(sh), "once, if nothing is said, and 5 (5, 6)")
	assert.Equal(t, []string{"every 4 rows once", "every 2 rows 5 (5, 6) times"}, w.runs(sh))
	sh.Times = c(2, 3, 4)
	assert.Equal(t, nums{7, 8, 10}, w.times(sh))
}

// What is taken off at a time, how often: 2 at both edges 3 times are 6 times and 12 stitches, which take 6 rows.
func TestStitchesTakenOff(t *testing.T) {
	three3 := expr.Counts(3, 3, 3)
	of := func(edges int, times expr.Graded, n, gone, rows int) offOf {
		return offOf{Shaping: schematic.Shaping{Times: times}, c: change{rows: nums{rows, rows, none}}, n: nums{n, n, none}, gone: nums{gone, gone, none}, times: nums{3, 3, none}, edges: edges}
	}
	for _, c := range []struct {
		o                      offOf
		eachRow, atOnce, whole bool
	}{
		{of(2, three3, 2, 12, 6), true, false, true}, {of(2, three3, 2, 12, 12), false, false, true}, {of(2, three3, 2, 11, 6), false, false, false},
		{of(1, three3, 2, 6, 3), true, false, true}, {of(1, expr.Graded{}, 5, 5, 1), true, false, true}, {of(1, expr.Graded{}, 5, 5, 0), false, true, true},
		{of(2, expr.Graded{}, 5, 10, 0), false, true, true}, {of(2, three3, 2, 12, 0), false, false, true}, {of(1, expr.Graded{}, 0, 0, 0), false, false, false},
	} {
		assert.Equal(t, []bool{c.eachRow, c.atOnce, c.whole}, []bool{c.o.eachRow(), c.o.atOnce(), c.o.whole()}, "%+v", c.o)
	}
	assert.Equal(t, nums{6, 6, none}, of(2, three3, 2, 12, 6).per())
	assert.Equal(t, nums{2, 2, none}, of(2, expr.Graded{}, 2, 4, 2).per())
}

// 43 stitches with 8 increases: 35 plain in 8 gaps are 3 of 5 and 5 of 4, half a gap of 4 at either end (2 and 2) in a row, a gap before
// each in a round.
func TestShapingSpreadOverARow(t *testing.T) {
	w := three()
	run := func(increase bool, count, n int, wrong bool) []string {
		out, _ := w.spread(increase, w.same(count), w.same(n), wrong)
		return out
	}
	w.fab = fabric{knit: "stockinette stitch"}
	assert.Equal(t, []string{"k2", "[kfb, k5] 3 times", "[kfb, k4] 4 times", "kfb", "k2"}, run(true, 43, 8, false))
	assert.Equal(t, []string{"p2", "[p2tog, p4] 7 times", "p2tog", "p2"}, run(false, 48, 8, true))
	assert.Equal(t, []string{"k2", "k2tog", "k1"}, run(false, 5, 1, false), "3 plain: 2 before and 1 behind")
	w.round = true
	assert.Equal(t, []string{"[k5, kfb] 3 times", "[k4, kfb] 5 times"}, run(true, 43, 8, false))
	assert.Equal(t, []string{"*k4, k2tog; rep from * to end"}, run(false, 48, 8, false))
	_, ok := w.spread(false, w.same(15), w.same(8), false)
	assert.False(t, ok, "8 times two together are 16")
	_, ok = w.spread(false, w.same(16), w.same(8), false)
	assert.True(t, ok)
	_, ok = w.spread(true, nums{43, 40, 48}, w.same(8), false)
	assert.False(t, ok, "some sizes have wider gaps and others none")
}
