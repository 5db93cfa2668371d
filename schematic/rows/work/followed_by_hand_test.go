package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// Each text as it stands comes to its last count, and to no other: a hand counts beside it. The words with the sign ~ are those counts.
func TestWhatRowsComeToInOtherWords(t *testing.T) {
	const sc20 = "Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
	const k40 = "Cast on 40 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\n"
	for name, text := range map[string]string{
		"decreases at both ends of every other row": k40 + "Dec 1 st at each end of every other row 5 times. (~30 sts)\n",                                                                                        // 40 - 10
		"decreases until a count":                   k40 + "Dec 1 st at each end of next and every foll 4th row until 32 sts rem. (~32 sts)\n",                                                                   //
		"a row repeated a number of times":          k40 + "Row 3: K1, ssk, k to last 3 sts, k2tog, k1. (38 sts)\nRow 4: Purl.\nRep Rows 3 and 4 four times more. (~30 sts)\n",                                   // 38 - 8
		"bound off at the beginning of rows":        k40 + "Bind off 3 sts at beg of next 4 rows. (~28 sts)\n",                                                                                                   // 40 - 12
		"bound off in the middle":                   k40 + "Row 3: K14, bind off 12 sts, k to end. (~28 sts)\n",                                                                                                  // 14 and 14
		"cast on at the end of rows":                k40 + "Cast on 5 sts at end of next 2 rows. (~50 sts)\n",                                                                                                    //
		"increased evenly":                          k40 + "Row 3: Knit, inc 8 sts evenly across. (~48 sts)\n",                                                                                                   //
		"decreased evenly in purl":                  k40 + "Row 3: Knit.\nRow 4: Purl, dec 6 sts evenly across row. (~34 sts)\n",                                                                                 //
		"knitted to a marker":                       "Cast on 30 sts.\nRow 1: K10, pm, k20. (30 sts)\nRow 2: P to marker, sm, p to end.\nRow 3: K to 2 sts before marker, k2tog, sm, ssk, k to end. (~28 sts)\n", //
		"markers around":                            "Cast on 40 sts and join in the round.\nRnd 1: (K10, pm) 4 times.\nRnd 2: *K1, m1, k to 1 st before marker, m1, k1, sm; rep from * around. (~48 sts)\n",     // 4 times 2
		"as another piece":                          "Back\nCast on 40 sts.\nRow 1: Knit.\nRow 2: K2tog, k to last 2 sts, k2tog. (38 sts)\nFront\nWork as for Back. (~38 sts)\n",
		"as another piece until a count":            "Back\nCast on 40 sts.\nRow 1: Knit.\nBind off 4 sts at beg of next 2 rows. (32 sts)\nRow 4: K2tog, k to end. (31 sts)\nFront\nWork as for Back until 32 sts rem.\nNext row: K2tog, k to last 2 sts, k2tog. (~30 sts)\n",
		"side by side, two sts in each second":      sc20 + "Row 2: Ch 1, *sc in next st, 2 sc in next st; rep from * across, turn. (~30 sc)\n",
		"every third left out":                      sc20 + "Row 2: Ch 1 (does not count as a st), sc in first 2 sts, *skip next st, sc in next 2 sts; rep from * across, turn. (~14 sc)\n", // 2 and 6 times 2
		"a stitch in each end":                      sc20 + "Row 2: Ch 1 (does not count as a st), 2 sc in first st, sc in each st across to last st, 2 sc in last st, turn. (~22 sc)\n",
		"a decrease in the middle":                  sc20 + "Row 2: Ch 1, sc in next 9 sts, sc2tog, sc in next 9 sts, turn. (~19 sc)\n",
		"rows told together":                        sc20 + "Rows 2-6: Ch 1, sc2tog, sc in each st across, turn. (~15 sc)\n",                                                                                     // 20 - 5
		"every row of a range repeats two":          sc20 + "Row 2: Ch 1, sc2tog, sc in each st across, turn. (19 sc)\nRow 3: Ch 1, sc in each st across, turn. (19 sc)\nRows 4-9: Rep Rows 2 and 3. (~16 sc)\n", // 3 more
		"tall stitches with a chain before them":    sc20 + "Row 2: Ch 3 (counts as dc), skip first st, dc in each st across, turn. (20 dc)\nRow 3: Ch 3 (counts as dc), dc in first st, dc in each st across to turning ch, 2 dc in top of turning ch, turn. (~22 dc)\n",
		"V-stitches":                                "Terms: US\nSpecial stitches:\nV-st: (Dc, ch 1, dc) in same st.\n" + strings.TrimPrefix(sc20, "Terms: US\n") + "Row 2: Ch 3 (counts as dc), skip first 2 sts, *V-st in next st, skip next 2 sts; rep from * to last 3 sts, V-st in next st, skip next st, dc in last st, turn. (~14 dc)\n", // 1, 6 times 2, 1
		"a corner in each side of a square":         "Terms: US\nRnd 1: 8 sc in magic ring. (8 sc)\nRnd 2: *Sc in next st, 3 sc in next st; rep from * around. (16 sc)\nRnd 3: *Sc in next 2 sts, 3 sc in next st, sc in next st; rep from * around. (~24 sc)\n",
		"a leg of which half goes on":               "Terms: US\nRnd 1: 6 sc in magic ring (6)\nRnd 2: 2 sc in each st around (12)\nRnd 3: *sc in next st, 2 sc in next st; rep from * around (18)\nRnd 4: sc in next 6 sts, sc2tog 3 times, sc in next 6 sts (~15)\n",
		"sizes":                                     "Sizes: S (M, L)\nCast on 40 (44, 48) sts.\nRow 1: Knit.\nRow 2: K2tog, k to last 2 sts, k2tog. 38 (42, 46) sts\nRow 3: (K5, m1) 4 times, k to end. 42 (46, ~50) sts\n",
		"a row for one size":                        "Sizes: S (M, L)\nCast on 40 (44, 48) sts.\nRow 1: Knit.\nSize L only: Row 2: K2tog, k to last 2 sts, k2tog. – (–, 46) sts\nAll sizes: Next row: K2tog, k to end. 39 (43, ~45) sts\n",
	} {
		at := strings.Index(text, "~")
		end := at + 1
		for end < len(text) && '0' <= text[end] && text[end] <= '9' {
			end++
		}
		count := text[at+1 : end]
		more := string([]byte{count[0], count[1] ^ 1})
		right, wrong := strings.Replace(text, "~", "", 1), text[:at]+more+text[end:]
		x := Read("t", []byte(right), Options{})
		assert.Equal(t, x.Read.Lines, x.Read.Whole, name)
		assert.Empty(t, Check(x).Findings, name)
		list := Check(Read("t", []byte(wrong), Options{})).Findings
		if assert.Len(t, list, 1, name) {
			assert.Equal(t, "rows/stated", list[0].Kind, name)
			assert.Equal(t, strings.Count(text[:at], "\n")+1, list[0].Pos.Line, name)
		}
	}
}

// By hand: markers behind 3 and 8 of 12 stitches, where a round begins 5 further on: behind 10 and 3.
func TestARoundThatBeginsFurtherOn(t *testing.T) {
	f := uniform(sc, 12)
	assert.Same(t, f, f.begunAt(5))
	f.marks = []int{3, 8}
	assert.ElementsMatch(t, []int{10, 3}, f.begunAt(5).marks)
	assert.ElementsMatch(t, []int{3, 8}, f.begunAt(0).marks)
	assert.Nil(t, (*fabric)(nil).begunAt(3))
	f.ring = true
	assert.False(t, f.covered().ring)
	f.ring = false
	assert.Same(t, f, f.covered())
}

func TestWhatStandsAtTheEndsOfARow(t *testing.T) {
	slip := func(p ...ins.Place) ins.Item { return st("slst", 1, p...) }
	chain, same, top := &ins.Chain{N: ins.N(3)}, ins.Place{Kind: ins.InSame, Unit: ins.Unit{Space: true}}, ins.Place{Kind: ins.InTop}
	for _, c := range []struct {
		name string
		got  bool
		want bool
	}{
		{"loops", loops(&ins.Repeat{Body: []ins.Item{chain, slip()}}), true}, {"loops of three", loops(&ins.Repeat{Body: []ins.Item{chain, slip(), slip()}}), false}, {"loops of sc", loops(&ins.Repeat{Body: []ins.Item{chain, st("sc", 1)}}), false},
		{"loops without a chain", loops(&ins.Repeat{Body: []ins.Item{slip(), slip()}}), false}, {"loops in places", loops(&ins.Repeat{Body: []ins.Item{chain, slip()}, Places: []ins.Place{top}}), false}, {"no repeat", loops(chain), false},
		{"same space", inSameSpace([]ins.Item{chain, st("dc", 1, same)}), true}, {"behind a stitch", inSameSpace([]ins.Item{st("dc", 1, same)}), false}, {"next", inSameSpace([]ins.Item{chain, st("dc", 1, next(1)), st("dc", 1, same)}), false}, {"none", inSameSpace(nil), false},
		{"first in same space", firstInSameSpace([]ins.Item{chain, st("dc", 1, same)}), true}, {"first in the next", firstInSameSpace([]ins.Item{st("dc", 1, next(1)), st("dc", 1, same)}), false}, {"nothing first", firstInSameSpace([]ins.Item{chain}), false},
		{"in same", goesInSame([]ins.Item{chain, st("dc", 1, same)}), true}, {"not in same", goesInSame([]ins.Item{st("dc", 1, next(1))}), false},
		{"joins", joinsRound(&ins.Join{}), true}, {"slip to top", joinsRound(slip(top)), true}, {"slip to the next", joinsRound(slip(next(1))), false}, {"slip nowhere", joinsRound(slip()), false}, {"sc to top", joinsRound(st("sc", 1, top)), false},
		{"off last", offLast([]ins.Item{st("k", 5), &ins.BindOff{N: ins.N(4)}}), true}, {"off and nothing", offLast([]ins.Item{st("k", 5), &ins.BindOff{N: ins.N(4)}, &ins.Nothing{}}), true}, {"off first", offLast([]ins.Item{&ins.BindOff{N: ins.N(4)}}), false}, {"off all", offLast([]ins.Item{st("k", 5), &ins.BindOff{All: true}}), false},
		{"off then knit", offLast([]ins.Item{&ins.BindOff{N: ins.N(4)}, st("k", 5)}), false},
	} {
		assert.Equal(t, c.want, c.got, c.name)
	}
	lengths := map[int]bool{}
	out := chained([]ins.Item{&ins.Chain{N: ins.N(1)}, &ins.Repeat{Body: []ins.Item{&ins.Chain{N: ins.N(3)}, st("sc", 1)}}}, ins.N(5), false, lengths)
	assert.Equal(t, map[int]bool{3: true}, lengths)
	assert.Equal(t, 1, out[0].(*ins.Chain).N.All, "of the repeat alone")
	assert.Equal(t, 5, out[1].(*ins.Repeat).Body[0].(*ins.Chain).N.All)
	rows, ok := chainedAll([]done{{body: []ins.Item{&ins.Repeat{Body: []ins.Item{&ins.Chain{N: ins.N(3)}, &ins.Chain{N: ins.N(2)}}}}}}, ins.N(5))
	assert.True(t, ok)
	assert.True(t, rows[0].unread, "of two lengths")
	_, ok = chainedAll(nil, ins.N(5))
	assert.False(t, ok)
}

// By hand: a piece of 40, 36 and then 36 again, 30 and unsure, 20: 36 is its first stretch's, 33 lies between 36 and 30, 25 behind what is not sure.
func TestWhichStretchComesToACount(t *testing.T) {
	at := func(n int) done { return done{after: uniform(sc, n), sure: true} }
	chain := []*piece{{rows: []done{at(40), at(36)}}, {rows: []done{at(36), at(30)}}}
	for k, want := range map[int][2]int{40: {0, 0}, 36: {0, 0}, 30: {1, 1}, 33: {-1, 1}, 38: {-1, 1}, 41: {-1, 0}, 29: {-1, 0}} {
		n, open := comesTo(chain, k)
		assert.Equal(t, want[0], n, "%d", k)
		if k != 30 {
			assert.Equal(t, want[1] == 1, open, "%d", k)
		}
	}
	chain = append(chain, &piece{rows: []done{{after: uniform(sc, 25)}, at(20)}})
	n, open := comesTo(chain, 25)
	assert.Equal(t, -1, n)
	assert.True(t, open)
	n, _ = comesTo(chain, 20)
	assert.Equal(t, 2, n)
}

// By hand: what the last time of a repeat has others for begins where so many stitches are left of it.
func TestWhereTheLastTimeOfARepeatDiffers(t *testing.T) {
	w := worked1("sc", 12, false)
	rep := &ins.Repeat{Body: []ins.Item{st("sc", 2), skip(1), st("sc", 3)}}
	for n, want := range map[int]int{0: -1, 3: 2, 5: 0, 1: -1, 4: -1, 6: -1} {
		rep.LastFor = ins.N(n)
		assert.Equal(t, want, w.instead(rep), "%d", n)
	}
	c := worked1("sc", 1, false)
	c.cur = over(&fabric{runs: []run{{chain: 4}, {kind: stitch.ByID("sc"), n: 1}}})
	assert.Equal(t, 3, c.alongN(&ins.Place{N: ins.N(3)}))
	assert.Equal(t, 4, c.alongN(&ins.Place{Of: true, Unit: ins.Unit{Chain: true}}), "as many as the loop has")
	assert.Equal(t, 0, c.alongN(&ins.Place{Unit: ins.Unit{Chain: true}}))
	assert.False(t, c.inSpace())
	c.cur.step(4)
	assert.True(t, c.inSpace())
	assert.False(t, c.loopAhead())
}
