package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/stitch"
)

// squaresOf are the columns of a knitting chart in every row, and the symbols as the
// right side shows them, from the left.
func squaresOf(w *Work) (cols [][]int, keys [][]string, wide int) {
	rows, n := columns(w)
	for _, r := range rows {
		var c []int
		var k []string
		for _, s := range r.cells {
			c = append(c, s.col)
			k = append(k, shownKey(s.st.Kind, w.Rows[r.row].Wrong))
		}
		cols, keys = append(cols, c), append(keys, k)
	}
	return cols, keys, n
}

func TestWrongSideRowsAreDrawnAsTheyLookFromTheRightSide(t *testing.T) {
	_, keys, _ := squaresOf(fromText(t, "Cast on 6 sts.\nRow 1 (RS): K2, p2, k2. (6 sts)\nRow 2: P2, k2, p2. (6 sts)\nRow 3: K1, ssk, k2tog, k1. (4 sts)\nRow 4: P1, p2tog, p1. (3 sts)\n"))
	rib := []string{"knit", "knit", "purl", "purl", "knit", "knit"}
	assert.Equal(t, rib, keys[0])
	assert.Equal(t, rib, keys[1], "rib stands over rib")
	assert.Equal(t, []string{"knit", "right-leaning decrease", "left-leaning decrease", "knit"}, keys[2], "from the left")
	assert.Equal(t, []string{"knit", "right-leaning decrease", "knit"}, keys[3], "p2tog on the wrong side looks like k2tog")
}

func TestLaceKeepsItsColumns(t *testing.T) {
	cols, _, wide := squaresOf(text(t, "rows/horseshoe.txt"))
	assert.Equal(t, 41, wide)
	for _, row := range cols {
		for i, c := range row {
			require.Equal(t, i, c, "as many stitches as squares, side by side")
		}
	}
}

func TestShapingAtTheEdgesMovesTheEdges(t *testing.T) {
	cols, _, wide := squaresOf(fromText(t, "Cast on 10 sts.\nRow 1 (RS): K10. (10 sts)\nRow 2: Purl. (10 sts)\nRow 3: K1, ssk, k4, k2tog, k1. (8 sts)\nRow 4: Purl. (8 sts)\n"))
	assert.Equal(t, 10, wide)
	assert.Equal(t, []int{1, 2, 3, 4, 5, 6, 7, 8}, cols[2])
	assert.Equal(t, cols[2], cols[3])
}

func TestEverySquareOfARowIsItsOwn(t *testing.T) {
	for _, path := range []string{"rows/eyelets-knit.txt", "rows/rib-knit.txt", "rows/feather-18.txt", "rows/old-shale-40.txt"} {
		cols, _, wide := squaresOf(text(t, path))
		for r, row := range cols {
			for i, c := range row {
				require.Less(t, c, wide)
				if i > 0 {
					require.Greater(t, c, row[i-1], "%s, row %d", path, r+1)
				}
			}
		}
	}
}

// Every knitting symbol has strokes of its own, but knit, which is blank.
func TestNoTwoKnitSymbolsAreAlike(t *testing.T) {
	drawn := map[string]string{}
	for _, k := range stitch.All() {
		if k.Craft != stitch.Knitting {
			continue
		}
		shape := shapeOf(knitSymbol(k.Key, pt{}, cell))
		if other, ok := drawn[shape]; ok {
			assert.Equal(t, other, k.Key, "drawn alike")
		}
		drawn[shape] = k.Key
	}
}

// A leaf whose count changes keeps the columns beside it and its midrib; its stitches stand at the midrib in every repeat
// alike (drawn by hand: four leaves of seven squares at their widest, between columns of four).
func TestALeafShowsItsShapeInEveryRepeat(t *testing.T) {
	cols, _, wide := squaresOf(fromText(t, `Cast on 14 sts.
Row 1 (RS): *P4, yo, k1, yo; rep from * to last 4 sts, p4. (18 sts)
Row 2: *K4, p3; rep from * to last 4 sts, k4.
Row 3: *P4, [k1, yo] twice, k1; rep from * to last 4 sts, p4. (22 sts)
Row 4: *K4, p5; rep from * to last 4 sts, k4.
Row 5: *P4, ssk, k1, k2tog; rep from * to last 4 sts, p4. (18 sts)
Row 6: *K4, p3; rep from * to last 4 sts, k4.
Row 7: *P4, sl 2 tog kwise, k1, psso; rep from * to last 4 sts, p4. (14 sts)
Row 8: *K4, p1; rep from * to last 4 sts, k4.
`))
	assert.Equal(t, 22, wide)
	for r, leaf := range [][]int{{1, 2, 3}, {1, 2, 3}, {0, 1, 2, 3, 4}, {0, 1, 2, 3, 4}, {1, 2, 3}, {1, 2, 3}, {2}, {2}} {
		var want []int
		for at := range 3 {
			for k := range 4 {
				want = append(want, 9*at+k)
			}
			for _, k := range leaf {
				if at < 2 {
					want = append(want, 9*at+4+k)
				}
			}
		}
		assert.Equal(t, want, cols[r], "row %d", r+1)
	}
}

// A shawl that grows at its edges and at its middle is the same on both sides of its middle.
func TestAShawlIsTheSameOnBothSidesOfItsMiddle(t *testing.T) {
	cols, _, wide := squaresOf(fromText(t, `Cast on 7 sts.
Row 1 (RS): K2, yo, k1, yo, k1, yo, k1, yo, k2. (11 sts)
Row 2: K2, p to last 2 sts, k2.
Row 3: K2, yo, k3, yo, k1, yo, k3, yo, k2. (15 sts)
Row 4: K2, p to last 2 sts, k2.
Row 5: K2, yo, k1, *yo, k2tog; rep from * to centre st, yo, k1, yo, *ssk, yo; rep from * to last 3 sts, k1, yo, k2. (19 sts)
`))
	for r, row := range cols {
		for i, c := range row {
			assert.Equal(t, wide-1, c+row[len(row)-1-i], "row %d", r+1)
		}
	}
}

// What is worked through the back loops, slipped before or behind its yarn or makes several of one has a symbol of its own on either
// side (by hand: k2tog through the back loops leans left; on the wrong side yarn held at the back lies on the right side).
func TestStitchesThatDifferHaveSymbolsThatDiffer(t *testing.T) {
	w := fromText(t, "Cast on 12 sts.\nRow 1 (RS): K1, k2tog tbl, yo, k2tog, yo, sl 1 wyif, sl 1 wyib, k5. (12 sts)\nRow 2: P2, p2tog tbl, sl 1 wyib, sl 1 wyif, (k1, p1, k1) in next st, p6. (13 sts)\n")
	_, keys, _ := squaresOf(w)
	assert.Equal(t, []string{"slipped", "slipped, yarn in front", "yarn over", "right-leaning decrease", "yarn over", "left-leaning decrease tbl", "knit"}, keys[0][5:])
	assert.Equal(t, []string{"knit", "knit", "left-leaning decrease tbl", "slipped, yarn in front", "slipped"}, keys[1][:5])
	s := &squares{keys: map[string]*inUse{}}
	rows, _ := columns(w)
	for _, r := range rows {
		for i := range r.cells {
			s.symbolOf(&r.cells[i], w.Rows[r.row].Wrong)
		}
	}
	assert.Equal(t, "k2tog tbl on the right side, p2tog tbl on the wrong side", s.keys["left-leaning decrease tbl"].words(true, w.Terms))
	assert.Equal(t, "k2tog: knit two together", s.keys["right-leaning decrease"].words(true, w.Terms), "none is worked on the wrong side")
	assert.Equal(t, "(k, p, k) into one stitch on the wrong side", s.keys["purl front and back 3"].words(true, w.Terms))
	assert.Equal(t, "sl wyib on the right side, sl wyif on the wrong side", s.keys["slipped"].words(true, w.Terms))
}

// The outline of a repeat goes around a crossing that it would cut, and stands where the text begins its repeats. By hand, from the
// right: the first cable takes squares 4 to 7, the second 8 to 11 in every twelve; lace whose last stitches differ repeats between.
func TestARepeatGoesAroundWhatItWouldCut(t *testing.T) {
	outline := func(text string) (at, of int, moved []int) {
		w := fromText(t, text)
		d := &drawing{work: w}
		s := &squares{d: d, o: &Options{}}
		s.rows, s.wide = columns(w)
		r, ok := s.repeated()
		require.True(t, ok)
		for i := range s.rows {
			moved = append(moved, s.rows[i].moved(r.at))
		}
		return s.wide - r.at - r.of, r.of, moved // from the right
	}
	at, of, moved := outline("C4B = sl 2 sts to cable needle and hold in back, k2, k2 from cable needle.\nCast on 26 sts.\nRow 1 (RS): P3, C4B, *p4, C4B; rep from * to last 3 sts, p3.\nRow 2: K3, p4, *k4, p4; rep from * to last 3 sts, k3.\nRow 3: P1, *C4B, C4B; rep from * to last st, p1.\nRow 4: Purl.\nRow 5: P1, k2, p4, *C4B, p4; rep from * to last 3 sts, k2, p1.\nRow 6: Purl.\nRow 7: P1, *C4B, C4B; rep from * to last st, p1.\n")
	assert.Equal(t, []int{8, 1}, []int{of, at % 8})
	assert.Equal(t, []int{0, 0, 0, 0}, moved[:4])
	assert.Equal(t, 2, abs(moved[4]), "the crossing of the last row is cut in its middle")
	at, of, _ = outline("Cast on 19 sts.\nRow 1 (RS): K1, *yo, skp, k1, k2tog, yo, k1; rep from * to end.\nRow 2: Purl.\nRow 3: K2tog, *yo, k3, yo, sk2p; rep from *, end last repeat skp.\n")
	assert.Equal(t, []int{6, 1}, []int{of, at})
}

// A piece whose shaped rows are shortened at a break has no repeat to outline.
func TestAShortenedPieceHasNoRepeat(t *testing.T) {
	w := text(t, "rows/rib-knit.txt")
	short, left := w.shorten(40)
	require.NotNil(t, left)
	d := &drawing{work: short}
	s := &squares{d: d, o: &Options{}}
	s.rows, s.wide = columns(short)
	_, ok := s.repeated()
	require.Less(t, short.kept.Of, 2)
	assert.False(t, ok)
}
