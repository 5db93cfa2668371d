package chart

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// knitted is a work of knitting on a held row of n stitches, each row given from the first
// stitch worked on.
func knitted(n int, rows ...[]St) *Work {
	w := &Work{Title: "Knitted", Rows: []Row{{Base: true, Held: true}}}
	for range n {
		w.Rows[0].St = append(w.Rows[0].St, St{Kind: stitch.ByID("k"), Counts: true})
	}
	for r, st := range rows {
		for i := range st {
			st[i].Counts = true
			st[i].Feet = []int{len(st) - 1 - i}
		}
		w.Rows = append(w.Rows, Row{Number: r + 1, Wrong: r%2 == 1, St: st})
	}
	return w
}

func inYarns(names string) []St {
	var out []St
	for _, c := range names {
		out = append(out, St{Kind: stitch.ByID("k"), Colour: string(c)})
	}
	return out
}

func crossed(c stitch.Cross) []St {
	k := c.Stitch()
	out := make([]St, c.Size())
	for i := range out {
		out[i] = St{Kind: k, Cross: k.Cross, At: i}
	}
	return out
}

func TestACrossingIsDrawnAcrossItsStitches(t *testing.T) {
	for _, c := range []stitch.Cross{{Held: 2, Over: 2}, {Held: 3, Over: 3, Left: true}, {Held: 1, Over: 2, Purl: true}, {Held: 1, Over: 1, Left: true, Twisted: true}} {
		w := knitted(c.Size(), crossed(c))
		d := build(w, &Options{}, 1)
		var strands *mark
		marks := 0
		for i := range d.f.marks {
			if m := &d.f.marks[i]; m.stitch {
				if marks++; len(m.paths) > 0 {
					require.Nil(t, strands, "one symbol")
					strands = m
				}
			}
		}
		require.NotNil(t, strands, c.Abbr())
		assert.Equal(t, c.Size(), marks, "every stitch is there")
		wide := cell * float64(c.Size())
		assert.Greater(t, strands.hi.X-strands.lo.X, wide-cell, "%s: over all of its squares", c.Abbr())
		assert.LessOrEqual(t, strands.hi.X, wide)
		first := strands.paths[0].Segs
		rises := first[1].P[0].X > first[0].P[0].X
		assert.Equal(t, !c.Left, rises, "%s: the strand in front leans to its side", c.Abbr())
		assert.Contains(t, w.words(1), c.Work())
	}
}

// So many over so many, as the yarn standard's knit chart symbols name cables (from memory): 2/2 RC is
// held behind, 2/2 LC in front.
func TestCrossingsHaveTheTradesNames(t *testing.T) {
	for want, c := range map[string]stitch.Cross{
		"2/2 RC": {Held: 2, Over: 2}, "2/2 LC": {Held: 2, Over: 2, Left: true}, "2/1 RPC": {Held: 1, Over: 2, Purl: true},
		"2/1 LPC": {Held: 2, Over: 1, Left: true, Purl: true}, "1/1 RT": {Held: 1, Over: 1},
	} {
		assert.Equal(t, want, c.Abbr())
	}
	assert.Equal(t, "hold 2 in front, p1, then k2 from the cable needle", stitch.Cross{Held: 2, Over: 1, Left: true, Purl: true}.Work())
	assert.Equal(t, "hold 1 behind, k2, then p1 from the cable needle", stitch.Cross{Held: 1, Over: 2, Purl: true}.Work())
}

func TestYarnsAreToldByAGroundAndAMark(t *testing.T) {
	w := knitted(8, inYarns("AABBAABB"), inYarns("AAAACCAA"), inYarns("AAAAAAAA"))
	y := w.yarns()
	require.Len(t, y.list, 3, "the row that they stand on, which names none, is not shown")
	assert.Equal(t, "A", y.list[0].name, "most stitches are of it")
	assert.Equal(t, sheet.None, y.list[0].ground)
	assert.Zero(t, y.list[0].sign)
	signs := map[int]bool{}
	for _, one := range y.list[1:] {
		assert.False(t, signs[one.sign])
		signs[one.sign] = true
		assert.NotZero(t, one.sign, "never a tone alone")
	}
	assert.Contains(t, w.words(1), "k in A")
	ss, err := Draw(w, Options{})
	require.NoError(t, err)
	found := 0
	sheet.Walk(&ss[0].Root, func(it sheet.Item) {
		if x, ok := it.(*sheet.Text); ok && strings.HasPrefix(x.S, "yarn ") {
			found++
		}
	})
	assert.Equal(t, 3, found)
}

// Counted by hand: in AABBBBBBA the A is carried over 6 stitches; around a join of a round of
// BAAAAAAB the B over none, the A over 2 and the B over 6.
func TestFloatsAreCounted(t *testing.T) {
	w := knitted(9, inYarns("AABBBBBBA"))
	require.Len(t, w.Floats(5), 1)
	assert.Equal(t, "row 1: A is carried over 6 stitches", w.Floats(5)[0].String())
	assert.Empty(t, w.Floats(6))
	round := Row{Number: 1, Round: true, St: inYarns("BAAAAAAB")}
	assert.Equal(t, []Float{{&round, "B", 6}}, round.floats(5))
	round.St = inYarns("AABBBBBB")
	assert.Equal(t, []Float{{&round, "A", 6}}, round.floats(5), "around the join")
}

func TestSquaresHaveTheGaugesProportions(t *testing.T) {
	d := build(knitted(4, inYarns("AAAA")), &Options{Proportion: 0.75}, 1)
	for _, m := range d.f.marks {
		for _, q := range m.paths {
			if q.Class == "grid" {
				lo, hi, _ := sheet.Bounds(q)
				assert.InDelta(t, 0.75, (hi.Y-lo.Y)/(hi.X-lo.X), 1e-9)
			}
		}
	}
}

const boat = `Terms: US
Ch 24.
Row 1: Dc in 4th ch from hook (3 skipped ch count as dc), dc in next 2 ch, *ch 2, skip 2 ch, dc in next ch; rep from * 5 more times, turn.
Row 2: Ch 5 (counts as dc, ch 2), dc in next dc, *2 dc in next ch-2 sp, dc in next dc; rep from * 3 more times, ch 2, dc in next dc, dc in next 2 dc, dc in top of ch-3, turn.
`

// Counted by hand in the text: row 1 from the right one solid mesh, then six open ones; row 2 from the
// left one open, four solid, one open, one solid.
func TestFiletIsOpenAndSolidMesh(t *testing.T) {
	f := fromText(t, boat).filet()
	require.NotNil(t, f)
	assert.Equal(t, 2, f.chains)
	assert.Equal(t, "dc", f.post.ID)
	assert.Equal(t, []bool{false, false, false, false, false, false, true}, f.solid[0])
	assert.Equal(t, []bool{false, true, true, true, true, false, true}, f.solid[1])
	assert.Nil(t, text(t, "rows/shells-5-2.txt").filet())
}

func TestPlainRowsOfAShapedPieceAreFoldedAway(t *testing.T) {
	w := fromText(t, "Cast on 40 sts.\nRow 1 (RS): Knit. (40 sts)\nRow 2: Purl. (40 sts)\nInc 1 st at each end of every 6th row 8 times. (56 sts)\nWork 12 rows even.\n")
	short := w.foldPlain()
	require.NoError(t, short.Check())
	drawn, told := 0, 0
	for i := range short.Rows {
		r := &short.Rows[i]
		if !r.Base {
			drawn++
		}
		told += r.Gap
	}
	assert.Equal(t, 62, drawn+told+short.More, "every row is drawn or told")
	assert.Equal(t, 9, drawn, "the first row and those that are shaped")
	assert.Contains(t, short.describe(short.words), "worked even")
}

func TestACrownIsOneWedgeOfItsRepeats(t *testing.T) {
	w := fromText(t, "Cast on 96 sts and join to work in the round.\nRnd 1: Knit. (96 sts)\nRnd 2: *K14, k2tog; rep from * around. (90 sts)\nRnd 3: Knit. (90 sts)\nRnd 4: *K13, k2tog; rep from * around. (84 sts)\n")
	one, s := w.wedge()
	require.NotNil(t, one)
	assert.Equal(t, 6, s.Times)
	assert.Equal(t, 16, s.Of)
	for r, n := range []int{16, 16, 15, 15, 14} {
		assert.Len(t, one.Rows[r].St, n)
	}
	require.NoError(t, one.Check())
}

// 1 + 4 times 6 + 1 = 26, less 4 in each right-side row: 22, 18, 14, 10.
func TestACrownInRowsIsOneRepeatBetweenItsEdges(t *testing.T) {
	w := fromText(t, "Cast on 26 sts.\nRow 1 (RS): K1, *k4, k2tog; rep from * to last st, k1.\nRow 2: Purl.\nRow 3: K1, *k3, k2tog; rep from * to last st, k1.\nRow 4: Purl.\nRow 5: K1, *k2, k2tog; rep from * to last st, k1.\nRow 6: Purl.\nRow 7: K1, *k1, k2tog; rep from * to last st, k1.\n")
	one, s := w.wedge()
	require.NotNil(t, one)
	assert.Equal(t, []int{4, 6, 2}, []int{s.Times, s.Of, s.Edges})
	for r, n := range []int{8, 7, 7, 6, 6, 5, 5, 4} {
		assert.Len(t, one.Rows[r].St, n)
	}
	require.NoError(t, one.Check())
	assert.Equal(t, "One repeat is drawn: work it 4 times in each row between the 2 edge stitches", s.wedgeNote())
}

func TestARowThatWasNotReadKeepsItsPlaceOnTheChart(t *testing.T) {
	w := fromText(t, "Terms: US\nNotes: Ch 1 does not count as a st.\nCh 16.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (15 sc)\nRow 2: Ch 1, sc in each st across, turn. (15 sc)\nRow 3: Ch 1, zorble each st, turn. (15 sc)\nRow 4: Ch 1, sc in each st across, turn. (15 sc)\n")
	require.Len(t, w.Rows, 5)
	assert.Equal(t, []bool{false, true, false, true}, []bool{w.Rows[1].Wrong, w.Rows[2].Wrong, w.Rows[3].Wrong, w.Rows[4].Wrong})
	gaps := w.Gaps()
	require.Len(t, gaps, 1)
	assert.Equal(t, 6, gaps[0].Line)
	assert.Contains(t, gaps[0].Words, "row 3 was not read")
	ss, err := Draw(w, Options{})
	require.NoError(t, err)
	assert.Empty(t, sheet.Overlaps(ss[0], margin-0.5))
	told := false
	sheet.Walk(&ss[0].Root, func(it sheet.Item) {
		if x, ok := it.(*sheet.Text); ok {
			told = told || strings.Contains(x.S, "row 3 was not read")
		}
	})
	assert.True(t, told, "on the picture")
}

func TestAChartOfRowsThatNoneCanReadIsRefused(t *testing.T) {
	w := fromText(t, "Terms: US\nCh 11.\nRow 1: Glorp in each ch.\nRow 2: Ch 1, sc in each st across, turn.\n")
	assert.ErrorContains(t, w.Check(), "row 1 was not read")
}

// Rounds that are not joined rise into one another: where one ends the next begins.
func TestASpiralHasNoStep(t *testing.T) {
	w := flatCircle(stitch.ByID("sc"), 6, 6)
	for r := range w.Rows {
		w.Rows[r].Spiral = true
	}
	p, f := laid(w)
	for r := 1; r < len(p.lines); r++ {
		end, begin := p.lines[r-1].nodes, p.lines[r].nodes
		assert.InDelta(t, long(p.point(end[len(end)-1], end[len(end)-1].v)), long(p.point(begin[0], begin[0].v)), 1.2, "round %d", r+1)
	}
	assert.Empty(t, touching(p, f, 0.02))
}

// randomSquares is knitting of plain stitches, crossings and yarns.
func randomSquares(t *rapid.T) *Work {
	n := rapid.IntRange(4, 24).Draw(t, "stitches")
	var rows [][]St
	for range rapid.IntRange(1, 8).Draw(t, "rows") {
		var row []St
		for len(row) < n {
			c := stitch.Cross{Held: rapid.IntRange(1, 3).Draw(t, "held"), Over: rapid.IntRange(1, 3).Draw(t, "over"), Left: rapid.Bool().Draw(t, "left"), Purl: rapid.Bool().Draw(t, "purl")}
			if rapid.IntRange(0, 4).Draw(t, "cable") == 0 && len(row)+c.Size() <= n {
				row = append(row, crossed(c)...)
				continue
			}
			row = append(row, St{Kind: stitch.ByID(rapid.SampledFrom([]string{"k", "p"}).Draw(t, "kind")), Colour: rapid.SampledFrom([]string{"", "A", "B", "C"}).Draw(t, "yarn")})
		}
		rows = append(rows, row)
	}
	return knitted(n, rows...)
}

func TestNothingOverlapsOnAnyGrid(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		w := randomSquares(rt)
		ss, err := Draw(w, Options{LeftHanded: rapid.Bool().Draw(rt, "left-handed"), Proportion: rapid.SampledFrom([]float64{0, 0.7, 1.3}).Draw(rt, "proportion")})
		require.NoError(rt, err)
		for _, s := range ss {
			require.NoError(rt, s.Finite())
			require.Empty(rt, sheet.Overlaps(s, margin-0.5))
		}
	})
}

// A hat that is too wide to be drawn whole is its body and its crown, each one repeat of it: 80 stitches are 20 times a rib
// of 4, and 8 times a wedge of 10 that becomes one stitch (counted by hand). What is left out of its middle is told, all of it.
func TestAHatIsItsBodyAndAWedgeOfItsCrown(t *testing.T) {
	w := fromText(t, "Terms: UK\nHat\nCast on 80 sts, join to work in the round.\nWork 8 rnds even in k2, p2 rib. (80 sts)\nWork 26 rnds even in stocking stitch. (80 sts)\nDec 8 sts evenly every 2 rnds 9 times, over 18 rnds. (8 sts)\n")
	parts := w.Parts()
	require.Len(t, parts, 2)
	for i, want := range []struct {
		times, first, last int
		says               string
	}{{20, 4, 4, ""}, {8, 10, 1, "the 80 stitches of round 35"}} {
		one, s := parts[i].short()
		require.NotNil(t, s)
		assert.True(t, s.Wedge)
		assert.Equal(t, want.times, s.Times)
		assert.Len(t, one.Rows[0].St, want.first)
		assert.Len(t, one.Rows[len(one.Rows)-1].St, want.last)
		assert.Equal(t, want.says, parts[i].From)
	}
	whole, _ := w.short()
	var told []string
	for i := range whole.Rows {
		if s := whole.Rows[i].leftOut(); s != "" {
			told = append(told, s)
		}
	}
	assert.Equal(t, []string{"rounds 4 to 8: as round 2; rounds 9 to 35: 80 sts, worked even"}, told)
}

// Counted by hand: ■ is a solid square, each row from the left as the right side shows it, the first row first. A space or
// block that the text does not tell is of 2 chains or stitches and a post (common practice); the chain of 5 with which a row
// begins holds the post and the chains of its first space.
func TestFiletCountedInSquares(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want []string
	}{
		"the chain is the first space": {"Terms: US\nCh 20.\n1st row: Dc in 8th ch from hook, * ch 2, skip 2 ch, dc in next ch. Repeat from * 3 times more. (5 sps). Ch 5, turn.\n" +
			"2nd row: Skip first dc, dc in next dc (1 sp made), 1 bl, 1 more sp, 1 bl, 1 sp. Ch 5, turn.\n3rd row: 2 sps, 2 bls, 1 sp. Ch 5, turn.\n4th row: 5 sps.\n", []string{"□□□□□", "□■□■□", "□■■□□", "□□□□□"}},
		"more than the first": {"Terms: US\nCh 20.\nRow 1: Dc in 8th ch from hook, *ch 2, skip 2 ch, dc in next ch; rep from * across. (5 sps)\n" +
			"Row 2: Ch 5, turn, skip first sp, dc in next dc, 1 sp, 2 bls, 1 sp.\nRow 3: Ch 5, turn, 1 more sp, 2 bls, 1 sp.\n", []string{"□□□□□", "□□■■□", "□■■□□"}},
		"a block first": {"Terms: US\nCh 18.\n1st row: Dc in 4th ch from hook, dc in next 2 ch, 1 sp, 1 bl, 2 sps. Turn.\n2nd row: Ch 5, 2 sps, 1 bl, 1 sp, 1 bl. Turn.\n3rd row: Ch 3, 5 bls.\n", []string{"□□■□■", "□□■□■", "■■■■■"}},
		"a square that begins": {"Terms: US\nOpen mesh: ch 2, sk 2 sts, dc in next dc.\nSolid mesh: 2 dc in next ch-2 sp (or dc in next 2 dc), dc in next dc.\nBeginning open mesh: ch 5 (counts as dc, ch 2), dc in next dc.\n" +
			"Ch 20.\nRow 1: Dc in 8th ch from hook, (ch 2, sk 2 ch, dc in next ch) 4 times, turn.\nRow 2: Beg open mesh, 2 solid meshes, 2 open meshes, turn.\nRow 3: Beg open mesh, 4 open meshes, turn.\n", []string{"□□□□□", "□■■□□", "□□□□□"}},
	} {
		t.Run(name, func(t *testing.T) {
			f := fromText(t, c.text).filet()
			require.NotNil(t, f)
			var got []string
			for _, row := range f.solid {
				line := ""
				for _, solid := range row {
					line += map[bool]string{true: "■", false: "□"}[solid]
				}
				got = append(got, line)
			}
			assert.Equal(t, c.want, got)
		})
	}
}
