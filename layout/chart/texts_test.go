package chart

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/rows"
)

// Texts as they are published begin and end among words: each is drawn with all its rows on as many stitches as it tells, and
// nothing is taken for a row that is none. Counted by hand.
func TestAChartHasTheRowsOfItsTextAndNoOthers(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		rows int // without a foundation
		wide int
	}{
		"what short names stand for, behind the rows": {"Cast on 9 sts.\nRow 1 (RS): K1, *yo, k2tog; rep from * to end.\nRow 2: Purl.\n\nyo = yarn over\nk2tog = knit 2 stitches together\n", 2, 9},
		"in columns":                   {"Cast on 9 sts.\nRow 1 (RS): K1, *yo, ssk; rep from * to end.\nRow 2: Purl.\nssk     slip, slip, knit\nWS     wrong side\n", 2, 9},
		"a list before them":           {"Rep: Repeat\nK: Knit\nP: Purl\nLT: Left Twist\nCast on 8 sts.\nRow 1 (RS): P2, *LT, p1; rep from * to end.\nRow 2: *K1, p2; rep from * to last 2 sts, k2.\n", 2, 8},
		"crossings right above":        {"Special Abbreviations:\nC4B=Slip next 2 sts onto cable needle and hold at back of work, knit next 2 sts, then knit sts from cable needle\n1st row (right side): P3, C4B, p3.\n2nd row: K3, p4, k3.\n", 2, 10},
		"a crossing that print cut":    {"2/2 RC (2 over 2 Right Cross): Slip next 2 sts\nto cable needle and hold in back, k2, k2 from\ncable needle.\n\nCast on 10 sts.\nRow 1 (RS): P3, 2/2 RC, p3.\n", 1, 10},
		"words that tell of no work":   {"Leaf\nMultiple of  6 + 1 stitches and 2 rows\nThe number of stitches varies within 2 rows of pattern repeat.\nRow 1 (RS): K1, *yo, k1, sk2p, k1, yo, k1; rep from * to end.\nRow 2: Purl.\n", 2, 19},
		"the third row tells":          {"Row 1 (RS): Purl.\nRow 2: Knit.\nRow 3: P8, k3, p8.\nRow 4: K8, p3, k8.\n", 4, 19},
		"rows of a pattern's name":     {"Cast on 7 sts.\nPattern Row 1 (and all odd rows) purl.\nPattern Row 2: K2, yo, sk2p, yo, k2.\nPattern Row 4: K1, yo, ssk, k1, k2tog, yo, k1.\n", 4, 7},
		"rows told in turns":           {"Cast on 6 sts.\nBorder Rows:\n1, 3, 5: K1, P1 across\n2, 4: P1, K1 across\nRow 1: K6.\nRow 2: P6.\n", 7, 6},
		"yarn overs as they come":      {"Cast on 7 sts.\nRow 1 (RS): K2, yo, k3tog, yo, k2.\nRow 2 and all even rows: work each stitch as it appears; purl yo's.\nRow 3: K1, yo, k1, k3tog, k1, yo, k1.\nRow 4: Purl.\n", 4, 7},
		"bound off by its initials":    {"Cast on 6 sts.\nRow 1 (RS): K6.\nRow 2: P6.\n\nB.O.\n", 2, 6},
		"ribbed behind the cast-on":    {"CO 8 stitches *K2 P2*\nRow 2: *K2, P2* to end.\n", 2, 8},
		"knitted behind the cast-on":   {"Cast on 8 sts and knit 2 rows.\nRow 1: K8.\n", 3, 8},
		"rib told with the cast-on":    {"Cast on 8 sts and work in k1, p1 rib for 4 rows.\nRow 1: K8.\n", 5, 8},
		"short names without a sign":   {"K Knit\nP Purl\nYO Yarn Over\nSts Stitches\nCast on 4 sts.\nRow 1 (RS): K1, yo, k2tog, k1.\nRow 2: Purl.\n", 2, 4},
		"even rows with a remark":      {"Cast on 4 sts.\nRow 1 (RS): K1, yo, k2tog, k1.\nRow 2 and all even rows (except the last): P across.\nRow 3: K1, ssk, yo, k1.\nRow 4: Purl.\nRow 5: K4.\n", 5, 4},
		"wrong-side rows in words":     {"Cast on 6 sts and work according to chart.\nThe chart shows only RS rows.\nOn WS rows, work sts as they appear and yo's P.\nThe pat rep = 2 sts wide.\nBegin with edge st, work patt rep throughout, end with edge st.\nsk2p: slip 1 stitch as if to knit, knit 2 together and pass the slipped stitch over\nRow 1: edge st, *yo, k2tog; rep from *, edge st.\nRow 3: edge st, *ssk, yo; rep from *, edge st.\nRepeat Rows 1-4 throughout.\n", 4, 6},
		"its own edge, with a number":  {"Cast on 7 sts.\nRow 1 (right side): 1 edge stitch, * k1, p1 *; repeat from * to *; end with k1, 1 edge stitch.\nRow 2: 1 edge stitch, p1, * k1, p1 *; repeat from * to *; end with 1 edge stitch.\n", 2, 7},
		"a cable told where it is":     {"Cast on 10 sts. 1st row: P 3, k 4, p 3. 2nd row: K across. 3rd row: P 3, make a cable (to make a cable, slip off next 2 sts on a holder; keeping the holder in front, k the next 2 sts, then k the 2 sts on the holder), p 3.\n", 3, 10},
		"the writer tells of herself":  {"Cast on 5 sts.\nRow 1 Knit 5\nI use a marker to mark the center stitch. Then knit to within one stitch of the end, finishing with a yo, k1.\nRow 2 Knit 5\n", 2, 5},
		"the side behind the stitches": {"Cast on 5 sts.\nRow 1: K5 (Wrong side)\nRow 2: K2, yo, k2tog, k1 (Right side)\n", 2, 5},
	} {
		t.Run(name, func(t *testing.T) {
			w := fromText(t, c.text)
			assert.Empty(t, w.Gaps())
			n := 0
			for i := range w.Rows {
				if !w.Rows[i].Base {
					n++
					assert.Len(t, w.Rows[i].St, c.wide, "row %d", i)
				}
			}
			assert.Equal(t, c.rows, n)
		})
	}
	w := fromText(t, "Cast on 5 sts.\nRow 1: K5 (Wrong side)\nRow 2: K2, yo, k2tog, k1 (Right side)\n")
	assert.True(t, w.Rows[1].Wrong)
	assert.False(t, w.Faced, "the text tells the sides")
}

// What goes into a round further down, or around as often as nothing tells, is told and not drawn as one of it.
func TestARoundFurtherDownIsTold(t *testing.T) {
	const two = "Ch 6, join with sl st to form a ring.\nRnd 1: Ch 1, 16 sc in ring, join.\nRnd 2: Ch 6, skip 1 sc, dc in next sc, *ch 3, skip 1 sc, dc in next sc; rep from * 5 times, ch 3, join in 3rd ch of ch-6.\nRnd 3: Ch 1, (3 sc, ch 3, 3 sc) in each ch-3 sp around, join.\n"
	for _, line := range []string{"Rnd 4: Ch 4, 1 dc in same space, *ch 7, 2 dc over dc of 2nd rnd; rep from * around, join.\n", "Rnd 4: Ch 1, sc in same st, *ch 7, sc in dc of Rnd 2; rep from * 6 times, ch 7, join.\n"} {
		assert.NotEmpty(t, fromText(t, two+line).Gaps(), line)
	}
	assert.Empty(t, fromText(t, two).Gaps())
}

// The first row of which the text tells the side tells it of those before: Row 1 (RS) behind three knitted rows.
func TestTheSideOfARowTellsOfThoseBefore(t *testing.T) {
	for text, wrong := range map[string][]bool{
		"Cast on 6 sts.\nKnit all for three rows.\nRow 1 (RS): K2, p2, k2.\nRow 2: P2, k2, p2.\n": {true, false, true, false, true},
		"Cast on 6 sts.\nKnit one row.\nRow 1 (RS): K2, p2, k2.\nRow 2: P2, k2, p2.\n":            {true, false, true},
		"Cast on 6 sts.\nK all sts 2 rows.\nRow 1 (RS): K2, p2, k2.\nRow 2: P2, k2, p2.\n":        {false, true, false, true},
		"Cast on 6 sts.\nKnit one row.\nRow 1: K2, p2, k2.\n":                                     {false, true},
	} {
		var got []bool
		for _, r := range fromText(t, text).Rows[1:] {
			got = append(got, r.Wrong)
		}
		assert.Equal(t, wrong, got[:min(len(got), len(wrong))], text)
		assert.Len(t, got, len(wrong), text)
	}
}

// A round that makes another count than it states is marked, and one upon it is drawn only if its own count holds. By hand:
// 12 dc, then 2 in each are 24, of which 26 are stated.
func TestARoundThatDoesNotAgreeWithItsTextIsMarked(t *testing.T) {
	const two = "Make a magic ring.\nRnd 1: Ch 1, 12 dc in ring, join. (12 dc)\nRnd 2: Ch 1, 2 dc in each dc around, join. (26 dc)\n"
	w := fromText(t, two+"Rnd 3: Ch 1, sc in each dc around, join.\n")
	assert.Equal(t, []Gap{{3, "round 2: 24 drawn, 26 stated"}}, w.Amiss())
	assert.Equal(t, "round 3 stands on it and is not drawn", w.ending())
	sheets, err := Draw(w, Options{})
	require.NoError(t, err)
	assert.Contains(t, wordsOn(sheets), "* Round 2: 24 drawn, 26 stated")
	assert.Contains(t, wordsOn(sheets), " 2*")
	w = fromText(t, two+"Rnd 3: Ch 1, sc in each dc around, join. (24 sc)\n")
	assert.Empty(t, w.ending(), "its count tells what it stands on")
	w = fromText(t, strings.Replace(two, "26", "24", 1)+"Rnd 3: Ch 1, sc in each dc around, join.\n")
	assert.Empty(t, w.Amiss())
	assert.Equal(t, []int{1, 2, 3}, []int{w.Rows[0].Number, w.Rows[1].Number, w.Rows[2].Number})
}

// Texts that ended the program: a petal without a neighbour, a last loop where no stitch is left. The first states 24 stitches
// over a round that was not read, and a triple treble of US terms, which UK terms call another stitch, has no symbol.
func TestRoundsOverWhatIsNotKnown(t *testing.T) {
	w := fromText(t, "Pattern in UK terms.\nWith A make a magic ring.\nRound 1: 1 ch, 6 dc into ring, ss to first dc. (6 sts)\nRound 2: 1 ch, *1 dc into a place that nobody knows; rep from * to end. (12 sts)\n\nFasten off and join B in any 1 ch sp between 2 trs of the round before.\n\nRound 3: 1 ch, *2 dc, 3 ch, 2 tr into 1 ch sp of round 1, 3 ch*, repeat from * to * 5 times, ss into first dc. (24 sts)\n")
	_, err := Draw(w, Options{})
	require.NoError(t, err)
	assert.NotEmpty(t, w.Amiss())
	w = fromText(t, "Ch 8, join with sl st.\nRnd 1: Ch 3, 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 6 more times, join.\nRnd 2: Ch 3, dc in same place as sl st, *dc in next dc, 2 dc in next dc, ch 2, 2 dc in next dc; rep from * around, ending with ch 2. Join.\nRnd 3: Sl st in next dc, ch 3, *dc in next 2 dc, ch 3, sc in ch-2 sp, ch 3, skip 1 dc, dc in next dc; rep from * around, ending with ch 3. Join.\n")
	_, err = Draw(w, Options{})
	require.NoError(t, err)
	w = fromText(t, "Terms: US\nCh 8, join.\nRnd 1: Ch 1, 12 sc in ring, join.\nRnd 2: Ch 1, *sc in next sc, tr tr in next sc; rep from * around, join.\n")
	assert.Equal(t, "round 2 was not read: triple treble has no symbol here", w.ending())
}

// The yarn that stands in the brackets behind a row's number is taken up; a slipped stitch keeps its own.
func TestTheYarnInTheBracketsOfARow(t *testing.T) {
	w := fromText(t, "Using color A, cast on 5 sts.\nRow 1 (WS, Color A): Knit.\nRow 2 (RS, Color B): K1, sl 1 wyib, k1, sl 1 wyib, k1.\nRow 3 (WS, Color B): Knit.\n")
	colours := ""
	for _, s := range w.Rows[2].St {
		colours += s.Colour
	}
	assert.Equal(t, "BABAB", colours)
}

// RSF and WSF tell the side too, a foundation row stands below row 1 without a number, and a knitted row that goes around is a round.
func TestSidesAndRoundsByOtherWords(t *testing.T) {
	w := fromText(t, "Multiple of 4 sts.\nFoundation row: RSF, *k2, p2; rep from * to end.\nCommence Pattern\n1st row: WSF, *p2, k2; rep from * to end.\n2nd row: Knit.\n")
	require.Len(t, w.Rows, 4)
	assert.Equal(t, []bool{false, true, false}, []bool{w.Rows[1].Wrong, w.Rows[2].Wrong, w.Rows[3].Wrong})
	assert.Equal(t, []string{"foundation", "1", "2"}, []string{w.Rows[1].name(), w.Rows[2].name(), w.Rows[3].name()})
	w = fromText(t, "Cast on 12 sts and join.\nRow 1: *Ssk, k1, yo, p1; repeat from * around\nRow 2: *K3, p1; repeat from * around\n")
	assert.True(t, w.Rows[1].Round && w.Rows[2].Round)
}

// A pattern behind rows of which the count is lost stands on stitches of its own.
func TestAPatternBehindALostCount(t *testing.T) {
	x := rows.Read("t", []byte("Cast on 20 sts.\nWork 18 rows in stocking stitch with 4 garter sts at each side.\n\nLETTER PATTERN\nRow 1 (RS): K all sts.\nRow 2: P2, k3, p2.\nRow 3: K all sts.\n"), rows.Options{TermsSet: true})
	g, ok := rows.GraphOf(x, "LETTER PATTERN", 0)
	require.True(t, ok)
	w, ok := FromGraph(g)
	require.True(t, ok)
	assert.Empty(t, w.Gaps())
	assert.Len(t, w.Rows, 4)
}

// A row repeated is worked in the yarn that its line names, or else in its own; the yarn may stand before the work.
func TestTheYarnOfARowRepeated(t *testing.T) {
	yarns := func(text string) (out string) {
		for _, r := range fromText(t, text).Rows[1:] {
			out += r.St[0].Colour[:1]
		}
		return out
	}
	assert.Equal(t, "AABB", yarns("Cast on 5 sts.\n1st row: RSF, using colour A, k1, *yfd, sl1pw, yb, k1, rep from * to end.\n2nd row: Using colour A, p2, *yb, sl1pw, yfd, p1, rep from * to last st, p1.\n3rd row: Using colour B, as 1st row.\n4th row: Using colour B, as 2nd row.\n"))
	assert.Equal(t, "WWBBWW", yarns("Cast on 8 sts.\nRow 1: White: Knit.\nRow 2: White: Purl.\nRow 3: Blue: K3, sl 2 wyib, k3. (Slip all stitches purl-wise.)\nRow 4: Blue: P3, sl 2 wyif, p3.\nRows 5 & 6: White: Repeat rows 1 and 2.\n"))
}

// The stitches beyond the turn of a short row keep their marker, and what is slipped over a stitch that is put back is gone.
func TestAMarkerBeyondAShortRow(t *testing.T) {
	w := fromText(t, "Cast on 9 sts.\nRow 1 (RS): K3, place marker, k6.\nRow 2: K6, turn.\nRow 3: K6.\nRow 4: K to marker, slip marker, k3.\nRow 5: K8, slip the last st just worked back onto the left needle and slip 1 st over it, k1.\n")
	assert.Empty(t, w.Gaps())
	require.Len(t, w.Rows, 6)
	assert.Len(t, w.Rows[4].St, 9)
	assert.Equal(t, 8, w.Rows[5].counted())
}

// A heading in the midst of numbered rows parts them, and loses none.
func TestAHeadingAmongRowsToldInTurns(t *testing.T) {
	x := rows.Read("t", []byte("CO 33 sts.\nRow 1: K across.\nRow 2: K across.\nRows 3 & 5: Repeat Row 1.\nRows 4 & 6: Repeat Row 2.\n\nBegin heart---\nRow 7: K16, P1, K16.\nRow 8: K4, P11, K3, P11, K4.\n"), rows.Options{TermsSet: true})
	var all []int
	for _, g := range rows.Graphs(x, 0, func(*rows.Section) bool { return true }) {
		w, ok := FromGraph(g)
		require.True(t, ok)
		require.NoError(t, w.Check())
		for i := range w.Rows {
			if !w.Rows[i].Base {
				all = append(all, w.Rows[i].Number)
			}
		}
	}
	assert.Equal(t, []int{1, 2, 3, 4, 5, 6, 7, 8}, all)
}
