package work

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pictured is a graph as a text, a row a line, its stitches in the order of working.
func pictured(t *testing.T, text string, of func(s GraphStitch) string) string {
	t.Helper()
	g, ok := GraphOf(Read("t", []byte(text), Options{TermsSet: true}), "", 0)
	require.True(t, ok)
	var b strings.Builder
	for _, row := range g.Rows {
		for _, s := range row.Stitches {
			b.WriteString(of(s))
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// A yarn that is taken up goes on until another one is; a slipped stitch keeps its own, and a stitch
// that names its yarn changes none of the others. Counted by hand.
func TestTheYarnOfATextGoesOnFromRowToRow(t *testing.T) {
	assert.Equal(t, `AAAAAAAA
AAAAAAAA
BBABBABB
BBABBABB
AAAAAAAA
CCCCCCCC
CCDCCDCC
`, pictured(t, `Mosaic
With A, CO 8 sts.
Row 1 (RS): Knit.
Row 2 (WS): With B, p2, sl 1, p2, sl 1, p2.
Row 3: K2, sl 1, k2, sl 1, k2.
Row 4: With A, purl.
Change to C.
Row 5: Knit.
Row 6: P2, p1 in D, p2, p1 in D, p2.
`, func(s GraphStitch) string { return s.Colour }))
}

// A short row leaves stitches waiting on the needle, which a later row comes to. Counted by hand:
// 8 of 10 from the right, back over 6, on over 7, and back to the end.
func TestStitchesBeyondTheTurnOfAShortRowWait(t *testing.T) {
	assert.Equal(t, `kkkkkkkkkk
kkkkkkkkkk
pppppppp..
..kkkkkk..
..ppppppp.
.kkkkkkkkk
pppppppppp
`, pictured(t, `Heel
CO 10 sts.
Row 1 (RS): Knit.
Row 2: P8, w&t.
Row 3: K6, w&t.
Row 4: P7, turn.
Row 5: K to end.
Row 6: Purl. (10 sts)
`, func(s GraphStitch) string {
		if s.Idle {
			return "."
		}
		return s.Stitch.ID
	}))
}

// A crossing is described in words that have commas of their own, among abbreviations on one line or on
// several; what is cast on after them begins the work.
func TestCrossingsAreDescribedAmongAbbreviations(t *testing.T) {
	for _, list := range []string{
		"Abbreviations: k = knit, p = purl; 2/2 RC: sl next 2 sts to cable needle and hold in back, k2, k2 from cable needle; st = stitch.\n",
		"Abbreviations:\n2/2 RC: sl next 2 sts to cable needle and hold in back, k2, k2 from cable needle.\nst: stitch\n",
	} {
		x := Read("t", []byte("Panel\n"+list+"CO 8 sts.\nRow 1 (RS): P2, k4, p2.\nRow 2: K2, p4, k2.\nRow 3: P2, 2/2 RC, p2.\n"), Options{TermsSet: true})
		g, ok := GraphOf(x, "", 0)
		require.True(t, ok)
		require.Len(t, g.Rows, 4)
		c := g.Rows[3].Stitches[3].Cross
		require.NotNil(t, c)
		assert.Equal(t, Cross{Held: 2, Over: 2}, *c)
	}
}

// After a turn a round meets the one before from its other end: a tall chain stands over the stitch that
// the round before was joined to, anything else begins over the last stitch made. Counted by hand.
func TestATurnedRoundGoesAroundTheOtherWay(t *testing.T) {
	feet := func(s GraphStitch) string { return fmt.Sprint(s.Feet) }
	rounds := strings.Split(pictured(t, `Motif
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 4 dc in ring, join with sl st in top of ch-3, turn. (5 dc)
Rnd 2: Ch 3 (counts as dc), 2 dc in next dc, dc in next 3 dc, join with sl st in top of ch-3, turn. (6 dc)
Rnd 3: Sl st in next 2 dc, ch 1, sc in same st, sc in next 5 dc, join with sl st in first sc. (6 sc)
`, feet), "\n")
	assert.Equal(t, "[][4][4][3][2][1]", rounds[2], "its chain has the joined stitch to itself")
	assert.Equal(t, "[][4][3][2][1][0][5]", rounds[3])
}

// The stitches that a round's slip stitches go over come last: counted by hand, 8 and 2
// in each of 4 corners are 16.
func TestARoundThatBeginsBehindSlipStitchesComesAround(t *testing.T) {
	text := `Motif
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), dc in ring, ch 2, (2 dc in ring, ch 2) 3 times, join with sl st in top of ch-3. (8 dc, 4 ch-2 sps)
Rnd 2: Sl st in next dc, sl st in ch-2 sp, ch 3 (counts as dc), dc in same sp, *dc in next 2 dc, 2 dc in next ch-2 sp; rep from * 2 more times, dc in next 2 dc, join with sl st in top of ch-3. (16 dc)
`
	assert.Empty(t, check("Terms: US\n"+text))
	rounds := strings.Split(pictured(t, text, func(s GraphStitch) string { return fmt.Sprint(s.Feet) }), "\n")
	assert.Equal(t, "[2][2][3][4][5][5][6][7][8][8][9][10][11][11][0][1]", rounds[2])
}

// Between two groups of a round without chains between them lies a gap, behind the last stitch of the
// first one. Counted by hand: 3 and 3 around a corner, twice; where spaces are fewer than the round
// means, nothing is drawn by a guess.
func TestAGapLiesBetweenTwoGroups(t *testing.T) {
	text := `Motif
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, 3 dc in ring, ch 2, join with sl st in top of ch-3. (6 dc, 2 ch-2 sps)
Rnd 2: Sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, join with sl st in top of ch-3. (12 dc, 2 ch-2 sps)
Rnd 3: Sl st in next 2 dc, sl st in next ch-2 sp, ch 1, sc in same sp, *sc in next space between groups, sc in next ch-2 sp; rep from * once more, join with sl st in first sc.
`
	feet := func(s GraphStitch) string {
		if s.Between {
			return fmt.Sprint(s.Feet, "+")
		}
		return fmt.Sprint(s.Feet)
	}
	assert.Equal(t, "[][3][6]+[10]", strings.Split(pictured(t, strings.Replace(text, "; rep from * once more", "", 1), feet), "\n")[3])
	g, ok := GraphOf(Read("t", []byte(strings.ReplaceAll(text, "space between groups", "sp")), Options{TermsSet: true}), "", 0)
	require.True(t, ok)
	assert.Equal(t, "it is not clear which space is meant", g.Rows[3].Unread)
}

// A round along both sides of a chain comes back to the place where it began; a row that is off what it stands on by a
// quarter or more is not drawn by a guess: it keeps its count.
func TestARoundGoesAlongBothSidesOfAChain(t *testing.T) {
	graph := func(text string) []GraphRow {
		g, ok := GraphOf(Read("t", []byte(text), Options{TermsSet: true}), "", 0)
		require.True(t, ok)
		return g.Rows
	}
	oval := graph(`Oval
Ch 11.
Rnd 1: Sc in 2nd ch from hook, sc in next 8 ch, 3 sc in last ch; working along opposite side of foundation ch, sc in next 8 ch, 2 sc in last ch, join with sl st in first sc. (22 sc)
Rnd 2: Sc in each sc around, join with sl st in first sc. (22 sc)
`)
	require.Len(t, oval[1].Stitches, 22)
	var feet []int
	for i, s := range oval[1].Stitches { // along the chain, around its last place, and back under it
		feet = append(feet, s.Feet[0])
		assert.Equal(t, i >= 12, s.Under, i)
	}
	assert.Equal(t, []int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 10, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 1}, feet)
	assert.Len(t, oval[2].Stitches, 22)
	rows := graph(`Scarf
Ch 13.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)
Row 2: Ch 1, sc in next 4 sc, turn. (5 sc)
`)
	assert.Equal(t, "it does not fit on the row below", rows[2].Unread)
	assert.Len(t, rows[2].Stitches, 5)
	short := graph(`Scarf
Ch 13.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)
Row 2: Ch 1, sc in next 4 sc, turn. (4 sc)
`)
	assert.Empty(t, short[2].Unread, "it makes what it states: whether the others stay unworked is asked in a note")
	near := graph(`Scarf
Ch 13.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)
Row 2: Ch 1, sc in next 10 sc, turn. (10 sc)
`)
	assert.Empty(t, near[2].Unread, "two of twelve stitches are drawn as they are told")
}
