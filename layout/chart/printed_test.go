package chart

import (
	"strings"
	"testing"

	"flatwright/layout/sheet"
	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// workOfText is the work of a text's first section.
func workOfText(t *testing.T, text string) *Work {
	t.Helper()
	x := rows.Read("t", []byte(text), rows.Options{})
	g, ok := rows.GraphOf(x, "", 0)
	require.True(t, ok)
	w, ok := FromGraph(g)
	require.True(t, ok)
	return w
}

// textsOn are all texts of a sheet.
func textsOn(s *sheet.Sheet) []*sheet.Text {
	var out []*sheet.Text
	sheet.Walk(&s.Root, func(it sheet.Item) {
		if t, ok := it.(*sheet.Text); ok {
			out = append(out, t)
		}
	})
	return out
}

// wordsOn are all words of some sheets.
func wordsOn(sheets []*sheet.Sheet) string {
	var out []string
	for _, s := range sheets {
		for _, t := range textsOn(s) {
			out = append(out, t.S)
		}
	}
	return strings.Join(out, " ")
}

// Lace whose text tells no sides is drawn from the right side: its shaped rows are worked there (common practice).
func TestShapedRowsAreRightSideRows(t *testing.T) {
	const rows = "Cast on 9 sts.\nRow 1: Knit.\nRow 2: K3, yo, ssk, k4.\nRow 3: K1, p7, k1.\nRow 4: K4, yo, ssk, k3.\nRow 5: K1, p7, k1."
	w := workOfText(t, rows)
	var wrong []bool
	for _, r := range w.Rows[1:] {
		wrong = append(wrong, r.Wrong)
	}
	assert.Equal(t, []bool{true, false, true, false, true}, wrong)
	assert.True(t, w.Faced)
	told := workOfText(t, strings.Replace(rows, "Row 1:", "Row 1 (RS):", 1))
	assert.False(t, told.Faced)
	assert.False(t, told.Rows[1].Wrong)
}

// The stitches of a crossing stand beside each other, whatever ends or begins in the rows about it.
func TestNoEmptySquareStandsWithinACrossing(t *testing.T) {
	w := workOfText(t, "T4B = slip next 2 sts to cable needle and hold at back, k2, then p2 from cable needle\nCast on 24 sts.\nRow 1 (RS): K10, m1, k4, m1, k10.\nRow 2: P26.\nRow 3: K9, k2tog, k2tog, k2tog, k11.\nRow 4: P23.\nRow 5: K9, T4B, k10.")
	rows, _ := columns(w)
	crossed := 0
	for _, r := range rows {
		for i := 1; i < len(r.cells); i++ {
			a, b := r.cells[i-1], r.cells[i]
			assert.Less(t, a.col, b.col)
			if a.st.Cross != nil && a.st.Cross == b.st.Cross {
				crossed++
				assert.Equal(t, a.col+1, b.col)
			}
		}
	}
	assert.Equal(t, 3, crossed)
}

func TestWhatAChartTellsInWords(t *testing.T) {
	draw := func(text string) string {
		sheets, err := Draw(workOfText(t, text), Options{})
		require.NoError(t, err)
		return wordsOn(sheets)
	}
	assert.Contains(t, draw("Cast on 8 sts.\nRow 1 (RS): K2, p4, k2.\nRow 2: P2, k4, p2.\nRep these 2 rows."), "Rows 1 to 2 are repeated")
	assert.Contains(t, draw("Cast on 10 sts.\nRow 1 (RS): k7, w&t.\nRow 2: p4, w&t.\nRow 3: Knit to end."), "w&t: the yarn goes around this stitch")
	assert.Contains(t, draw("Terms: US\nCh 6.\nRow 1: Sc in 2nd ch from hook and in each ch, turn.\nRow 2: Ch 1, sc in first 2 sts, dc3tog in next st, sc in last 2 sts."), "all in one place")
	assert.Contains(t, draw("Terms: US\nMagic ring.\nRnd 1: 6 sc in ring.\nRnd 2: 2 sc in each st. (12)\nRnds 3-90: sc in each st. (12)"), "Rounds 3 to 90: 12 sts, worked even")
}

// However many lines were not read, what is told of them stays on the paper.
func TestTheWordsOfAGapStayOnThePaper(t *testing.T) {
	const odd = ": glorp the fuzzle of every third wibble until it snorks. (9 sc)\n"
	w := workOfText(t, "Terms: US\nCh 10.\nRow 1: Sc in 2nd ch from hook and in each ch, turn. (9 sc)\nRow 2"+strings.Replace(odd, "(9 sc)", "", 1)+"Row 3: glorp.\nRow 4: glorp it.\nRow 5: glorp them.\nRow 6: Ch 1, sc in each st.")
	sheets, err := Draw(w, Options{})
	require.NoError(t, err)
	for _, s := range sheets {
		for _, x := range textsOn(s) {
			for _, at := range x.Corners() {
				assert.True(t, at.X >= 0 && at.X <= s.W, x.S)
			}
		}
	}
	assert.Contains(t, wordsOn(sheets), "were not read")
}

func TestAFoundationAloneIsNoChart(t *testing.T) {
	x := rows.Read("t", []byte("Cast on 80 sts.\n"), rows.Options{})
	if g, ok := rows.GraphOf(x, "", 0); ok {
		if w, ok := FromGraph(g); ok {
			assert.Error(t, w.Check())
		}
	}
}

// A text of which nothing can be drawn says why, in words that a maker knows.
func TestARowOverPlacesThatAreNotThereIsAGap(t *testing.T) {
	chain, dc := stitch.ByID("ch"), stitch.ByID("dc")
	g := &rows.Graph{Rows: []rows.GraphRow{{Start: true, RS: true, Stitches: []rows.GraphStitch{{Stitch: chain, Counts: true}, {Stitch: chain, Counts: true}}},
		{Number: 1, RS: true, Stitches: []rows.GraphStitch{{Stitch: dc, Counts: true, Feet: []int{1}}, {Stitch: dc, Counts: true, Feet: []int{0}}}},
		{Number: 2, Stitches: []rows.GraphStitch{{Stitch: dc, Counts: true, Feet: []int{4}}}},
		{Number: 3, RS: true, Stitches: []rows.GraphStitch{{Stitch: dc, Counts: true, Feet: []int{0}}}}}}
	w, ok := FromGraph(g)
	require.True(t, ok)
	require.NoError(t, w.Check())
	assert.Len(t, w.Rows, 2)
	assert.Equal(t, "row 2 was not read: what it is worked into is not known; row 3 stands on it and is not drawn", w.ending())
}

func TestASlipStitchLiesOnItsPlaceAndASpiralLeavesNoGapUnderIt(t *testing.T) {
	w := workOfText(t, "Terms: US\nRnd 1: Ch 2, 5 sc in 2nd ch from hook. (5)\nRnd 2: 2 sc in each st around. (10)\nRnd 3: *3 tr in next st, sl st in next st; rep from * around.\n")
	p := newPlan(w, false)
	p.lay()
	slips := 0
	for _, n := range p.lines[len(p.lines)-1].nodes {
		assert.LessOrEqual(t, n.fv, n.feet[0].v+2*clear, "its foot is at its place")
		if n.st.Kind.Key == "slip" {
			slips++
			assert.Less(t, n.v, n.feet[0].v+2.5)
		}
	}
	assert.Equal(t, 5, slips)
}
