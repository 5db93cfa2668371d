package chart

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// paged is a work on pages, as Draw would put it at a scale.
func paged(t require.TestingT, w *Work, scale float64, o Options) *pages {
	d := build(w, &o, scale)
	c, err := paginate(d, &o)
	require.NoError(t, err)
	c.told = make([]bool, len(w.Rows))
	return c
}

// Cuts fall on places of the better kind, where one lies in the farther half of a page.
func TestASpanIsCutAtItsBestPlaces(t *testing.T) {
	for _, c := range []struct {
		lo, hi, room float64
		kinds        []cuts
		want         []float64
	}{
		{0, 100, 100, nil, nil},
		{0, 100, 60, nil, []float64{50}},
		{0, 100, 60, []cuts{{12, 24, 36, 48, 60}}, []float64{48}},
		{0, 100, 60, []cuts{{10, 20}, {55}}, []float64{55}}, // a repeat that ends too early
		{0, 100, 60, []cuts{{35}, {50}}, []float64{35}},
		{-30, 150, 70, []cuts{{0, 30, 60, 90, 120}}, []float64{30, 90}},
	} {
		ws := cutSpan(c.lo, c.hi, c.room, c.kinds)
		require.Equal(t, c.lo, ws[0].lo)
		require.Equal(t, c.hi, ws[len(ws)-1].hi)
		var got []float64
		for i := range ws {
			require.LessOrEqual(t, ws[i].hi-ws[i].lo, c.room+1e-6)
			if i > 0 {
				require.Equal(t, ws[i-1].hi, ws[i].lo)
				got = append(got, ws[i].lo)
			}
		}
		require.GreaterOrEqual(t, len(got), len(c.want))
		assert.Equal(t, c.want, got[:len(c.want)], "%v", c)
	}
}

// The repeats of shells are 6 chains wide, those of their rows 2 rows high: pages meet
// between them, and no stitch stands on two of them.
func TestPagesMeetBetweenRepeats(t *testing.T) {
	for _, left := range []bool{false, true} {
		w := lacy(60, 24)
		c := paged(t, w, 1, Options{LeftHanded: left})
		require.Greater(t, len(c.cols), 1)
		require.Greater(t, len(c.rows), 1)
		p := newPlan(w, left)
		p.slot = 4.2
		p.lay()
		for _, col := range c.cols[1:] {
			x := col.lo
			for _, l := range p.lines {
				near := math.Inf(1)
				for i, n := range l.nodes {
					if k := len(l.nodes) - 1 - i; n.st.Kind.ID == "sc" || l.row.Base && k%6 == 0 {
						near = min(near, math.Abs(n.q-x))
					}
				}
				assert.Less(t, near, 4.0, "beside the stitch at which a repeat begins")
			}
		}
		for _, row := range c.rows[1:] {
			at := -1
			for r, l := range p.lines {
				if math.Abs(l.top+row.lo) < 1e-6 {
					at = r
				}
			}
			assert.True(t, at > 0 && at%2 == 1, "after row %d; rows 2 and 3 are repeated", at)
		}
	}
}

// A knitted repeat of 6 is cut between squares, after whole repeats.
func TestAKnittingChartIsCutAfterWholeRepeats(t *testing.T) {
	var b strings.Builder
	b.WriteString("Cast on 121 sts.\n")
	for r := 1; r <= 40; r += 2 {
		fmt.Fprintf(&b, "Row %d (RS): K1, *yo, k2, k2tog, k2; rep from * to end.\nRow %d: Purl.\n", r, r+1)
	}
	w := fromText(t, b.String())
	c := paged(t, w, 0.85, Options{})
	require.Greater(t, len(c.cols), 2)
	for _, col := range c.cols[1:] {
		at := col.lo / cell
		assert.InDelta(t, math.Round(at), at, 1e-9)
		assert.Equal(t, 0, int(math.Round(at))%6, "120 squares before the first stitch of the right side")
	}
	for _, row := range c.rows[1:] {
		at := -row.lo / cell
		assert.Equal(t, 0, int(math.Round(at))%2, "rows of one pair")
	}
}

// Every page that shows a stitch of a row has the row's number and arrow, on the side where the
// row begins.
func TestEveryPageNumbersTheRowsThatItShows(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		w := lacy(rapid.IntRange(2, 40).Draw(rt, "rows"), rapid.IntRange(2, 30).Draw(rt, "repeats"))
		o := Options{Whole: true, Scale: rapid.SampledFrom([]float64{0.85, 1, 1.6}).Draw(rt, "scale"), LeftHanded: rapid.Bool().Draw(rt, "left-handed")}
		ss, err := Draw(w, o)
		require.NoError(rt, err)
		for _, s := range ss {
			for _, it := range s.Root.Items {
				g, ok := it.(*sheet.Group)
				if !ok || !strings.HasPrefix(g.Title, "Row ") {
					continue
				}
				n, err := strconv.Atoi(strings.TrimPrefix(g.Title, "Row "))
				require.NoError(rt, err)
				lo, hi, arrows, shown := math.Inf(1), math.Inf(-1), 0, false
				var number *sheet.Text
				sheet.Walk(g, func(it sheet.Item) {
					switch x := it.(type) {
					case *sheet.Text:
						if x.Class == "number" {
							require.Nil(rt, number)
							number = x
						}
					case *sheet.Path:
						if x.Class == "stitch" || x.Class == "again" && x.Style.Width > quiet {
							a, b, _ := sheet.Bounds(x)
							lo, hi, shown = min(lo, a.X), max(hi, b.X), true
						}
						if x.Class == "work" {
							arrows++
						}
					}
				})
				if !shown {
					continue
				}
				require.NotNil(rt, number, "%s on %s", g.Title, s.Title)
				require.Equal(rt, strconv.Itoa(n), number.S)
				if right := n%2 == 1; right != o.LeftHanded { // right-side rows begin at the right
					require.Greater(rt, number.At.X, hi)
				} else {
					require.Less(rt, number.At.X, lo)
				}
			}
		}
	})
}

// A slanted edge leaves whole windows empty: they are no pages, and none is said to meet them.
func TestNoPageIsEmpty(t *testing.T) {
	var b strings.Builder
	b.WriteString("Terms: US\nCast on 90 sts.\nWork 4 rows even. (90 sts)\nDec 1 st at each end every 2 rows 40 times, over 80 rows. (10 sts)\n")
	ss, err := Draw(fromText(t, b.String()), Options{Whole: true, Scale: 1.6})
	require.NoError(t, err)
	require.Greater(t, len(ss), 6)
	for i, s := range ss {
		stitches := 0
		sheet.Walk(&s.Root, func(it sheet.Item) {
			switch x := it.(type) {
			case *sheet.Group:
				if x.Class == "stitch" {
					stitches++
				}
			case *sheet.Text:
				if n, ok := strings.CutPrefix(x.S, "meets page "); ok {
					k, err := strconv.Atoi(n)
					require.NoError(t, err)
					require.True(t, k >= 1 && k <= len(ss) && k != i+1, x.S)
				}
			}
		})
		assert.Positive(t, stitches, s.Title)
	}
}

func TestNothingOverlapsOnTheSheetsOfALargeChart(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		w := lacy(rapid.IntRange(10, 40).Draw(rt, "rows"), rapid.IntRange(10, 30).Draw(rt, "repeats"))
		o := Options{Whole: true, Scale: rapid.SampledFrom([]float64{0.85, 1, 1.6}).Draw(rt, "scale"), LeftHanded: rapid.Bool().Draw(rt, "left-handed"),
			Text: rapid.SampledFrom([]float64{0, 6.35}).Draw(rt, "text")}
		ss, err := Draw(w, o)
		require.NoError(rt, err)
		require.Equal(rt, made(w), stitchesOn(rt, ss))
		for _, s := range ss {
			require.Empty(rt, sheet.Overlaps(s, margin-0.5), s.Title)
		}
	})
}

// An edge of increases widens by one stitch each, and the fabric beside it has no hole.
func TestAnIncreasedEdgeStaysBesideTheFabric(t *testing.T) {
	w := &Work{Rows: []Row{{Base: true}}}
	n := 20
	for range n {
		w.Rows[0].St = append(w.Rows[0].St, St{Kind: stitch.ByID("ch"), Counts: true})
	}
	for r := 1; r <= 30; r++ {
		row := Row{Number: r, Wrong: r%2 == 0}
		for k := range n {
			times := 1
			if r%6 == 0 && (k == 0 || k == n-1) {
				times = 2
			}
			for range times {
				row.St = append(row.St, St{Kind: stitch.ByID("hdc"), Feet: []int{n - 1 - k}, Counts: true})
			}
		}
		n = len(row.St)
		w.Rows = append(w.Rows, row)
	}
	p, f := laid(w)
	require.Empty(t, touching(p, f, 0.05))
	for _, l := range p.lines {
		for i := 1; i < len(l.nodes); i++ {
			assert.Less(t, l.nodes[i].q-l.nodes[i-1].q, 2*2*1.25+0.1, "row %d: at most one place between stitches", l.n)
		}
		mid := (l.nodes[0].q + l.nodes[len(l.nodes)-1].q) / 2
		assert.InDelta(t, (p.lines[0].nodes[0].q+p.lines[0].nodes[19].q)/2, mid, 0.6, "row %d stands in the middle", l.n)
	}
}

// A row narrowed at both ends stands in the middle over its feet, in crochet and in
// knitting, and no stitch far from the one that it is worked into.
func TestANarrowedRowStandsInTheMiddle(t *testing.T) {
	const crochet = "Terms: US\nNotes: The turning chain does not count as a stitch.\nCh 31.\nRow 1: Hdc in 2nd ch from hook and in each ch across, turn. (30 hdc)\n" +
		"Dec 1 st at each end every row 10 times, over 10 rows. (10 sts)\n"
	p, _ := laid(fromText(t, crochet))
	mid := 0.0
	for _, l := range p.lines[1:] {
		at := (l.nodes[0].q + l.nodes[len(l.nodes)-1].q) / 2
		if l.n > 1 && !l.nodes[0].st.Turn && !l.nodes[len(l.nodes)-1].st.Turn {
			assert.InDelta(t, mid, at, 0.8, "row %d", l.n)
			for _, n := range l.nodes {
				for _, f := range n.feet {
					assert.Less(t, math.Abs(n.q-f.q), 3.2)
				}
			}
		} else {
			mid = (p.lines[0].nodes[0].q + p.lines[0].nodes[len(p.lines[0].nodes)-1].q) / 2
		}
	}
	w := fromText(t, "Terms: US\nCast on 30 sts.\nWork 2 rows even. (30 sts)\nDec 1 st at each end every 2 rows 10 times, over 20 rows. (10 sts)\n")
	rows, n := columns(w)
	require.Equal(t, 30, n)
	for _, r := range rows {
		left, right := r.cells[0].col, n-1-r.cells[len(r.cells)-1].col
		assert.Equal(t, left, right, "row %d", r.row)
	}
}

// A part shows the held stitches that it is worked into in grey, one under each of the
// stitches of its first row, and says which they are.
func TestAPartIsDrawnOverTheStitchesItGrowsOutOf(t *testing.T) {
	w := fromPart(t, "Body, Left", "Terms: US\nNotes: The turning chain does not count as a stitch.\n# Body\nCh 21.\nRow 1: Hdc in 2nd ch from hook and in each ch across, turn. (20 hdc)\n"+
		"Divide the row: 8 sts for Right, 4 sts left unworked, 8 sts for Left.\n# Body, Left\nTake up 8 held sts. (8 sts)\nWork 3 rows even. (8 sts)\n")
	require.True(t, w.Rows[0].Held)
	ss, err := Draw(w, Options{})
	require.NoError(t, err)
	assert.Equal(t, made(w), stitchesOn(t, ss))
	assert.Contains(t, ss[0].Desc, "Worked on stitches 13 to 20 of the 20 of row 1 of Body")
	assert.Contains(t, ss[0].Desc, "Held stitches: 8 hdc")
	grey := 0
	sheet.Walk(&ss[0].Root, func(it sheet.Item) {
		if g, ok := it.(*sheet.Group); ok && g.Title == "Held stitches" {
			for _, it := range g.Items {
				if s, ok := it.(*sheet.Group); ok && s.Class == "stitch" {
					assert.Equal(t, sheet.Grey, s.Items[0].(*sheet.Path).Style.Stroke)
					grey++
				}
			}
		}
	})
	assert.Equal(t, 8, grey)
	p, _ := laid(w)
	for _, n := range p.lines[1].nodes {
		require.Len(t, n.feet, 1)
		assert.InDelta(t, n.feet[0].q, n.q, 0.5)
		assert.Less(t, n.feet[0].fv, n.feet[0].v-4, "they stand at their kind's height")
	}
}

// In large print the words of many stitches leave no room for the chart: the key has pages of its own,
// and every page of the chart says which.
func TestALongKeyHasPagesOfItsOwn(t *testing.T) {
	b := &strings.Builder{}
	b.WriteString("Terms: US\nCh 101.\nRow 1: Sc in 2nd ch from hook and in each ch across. (100 sc)\n")
	for i, k := range []string{"hdc", "dc", "tr", "dtr", "FPdc", "BPdc", "FPtr", "BPtr", "sc", "FPsc", "BPsc", "dc2tog", "sc2tog", "tr2tog"} {
		if n, ok := strings.CutSuffix(k, "2tog"); ok {
			fmt.Fprintf(b, "Row %d: Ch 1, turn, %s, *%s, 2 %s in next st; rep from * to last 3 sts, %s 3. (100 sts)\n", i+2, n, k, n, n)
			continue
		}
		fmt.Fprintf(b, "Row %d: Ch 1, turn, %s in each st across. (100 sts)\n", i+2, k)
	}
	ss, err := Draw(fromText(t, b.String()), Options{Whole: true, Text: 6.35})
	require.NoError(t, err)
	keys, told := 0, 0
	for i, s := range ss {
		require.Empty(t, sheet.Overlaps(s, margin-0.5), s.Title)
		stitches, key := 0, false
		sheet.Walk(&s.Root, func(it sheet.Item) {
			switch x := it.(type) {
			case *sheet.Group:
				key = key || x.ID == "key"
				if x.Class == "stitch" {
					stitches++
				}
			case *sheet.Text:
				if strings.HasPrefix(x.S, "key on page") {
					told++
				}
			}
		})
		require.NotEqual(t, key, stitches > 0, "page %d", i+1)
		if key {
			keys++
		}
	}
	require.Positive(t, keys)
	require.Equal(t, len(ss)-keys, told)
}

// A stitch that leans out of its page's part takes its room from that part: with 20 mm of lean to the right of the
// stitch at 65, a page of 100 mm has room for at most 100 - 2 × 20 = 60 mm of its own.
func TestAPartLeavesRoomForStitchesThatLeanOutOfIt(t *testing.T) {
	f := &figure{}
	for x := 5.0; x < 200; x += 10 {
		m := mark{at: pt{X: x}, lo: pt{X: x - 4}, hi: pt{X: x + 4}, stitch: true}
		if x == 65 {
			m.hi.X = x + 25
		}
		f.marks = append(f.marks, m)
	}
	along := func(m *mark) (at, lo, hi float64) { return m.at.X, m.lo.X, m.hi.X }
	all := cuts{}
	for x := 10.0; x < 200; x += 10 {
		all = append(all, x)
	}
	out := f.share(0, 200, 100, 1, []cuts{all}, along)
	for _, w := range out {
		assert.LessOrEqual(t, w.hi-w.lo, 100-2*max(overlap, f.lean(out, along)))
	}
	assert.Equal(t, 20.0, f.lean([]window{{0, 70}, {70, 200}}, along))
	assert.Equal(t, []window{{0, 200}}, f.share(0, 200, 200, 1, []cuts{all}, along))
}
