package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// kinds are the stitches of each row of a text's first graph, in the order of working: a chain arch by its number.
func kinds(t *testing.T, text string) (*Graph, [][]string) {
	t.Helper()
	g, ok := GraphOf(Read("a.txt", []byte(text), Options{}), "", 0)
	require.True(t, ok)
	var out [][]string
	for _, r := range g.Rows {
		var row []string
		for _, s := range r.Stitches {
			if s.Stitch == nil {
				row = append(row, string(rune('0'+s.Chain)))
			} else {
				row = append(row, s.Stitch.ID)
			}
		}
		out = append(out, row)
	}
	return g, out
}

// A dictionary of stitches gives a multiple and no number to cast on: three repeats are shown (counted by hand).
func TestAStitchPatternWithoutANumberStandsOnItsMultiple(t *testing.T) {
	for _, c := range []struct {
		text         string
		founded, all int
	}{
		{"Multiple of 6 sts plus 2.\nRow 1 (RS): K1, *yo, k2tog, k4; rep from * to last st, k1.\nRow 2: Purl.\n", 20, 20},
		{"Row 1 (RS): K1, *yo, k2tog, k4; rep from * to last st, k1.\nRow 2: Purl.\n", 20, 20},
		{"US terms\nRow 1 (RS): Sc in 2nd ch from hook, *skip 2 ch, 5 dc in next ch, skip 2 ch, sc in next ch; rep from * across, turn.\n", 20, 20},
		{"Multiple of 4 sts.\nRow 1: Knit.\nRow 2: *K2, p2; rep from * to end.\n", 12, 12},
		{"Row 1 (RS): P2, k4, p2.\nRow 2: K2, p4, k2.\n", 8, 0}, // no other number will do
	} {
		g, rows := kinds(t, c.text)
		require.NotEmpty(t, rows, c.text)
		assert.Len(t, rows[0], c.founded, c.text)
		assert.Equal(t, c.all, g.Assumed, c.text)
	}
	_, rows := kinds(t, "Row 1: Knit.\nRow 2: Purl.\n") // any number would do: none is made up
	for _, r := range rows {
		assert.Empty(t, r)
	}
}

// A row over one of which the count is not known has no stitches, and says so; it is not dropped.
func TestARowOverAnUnknownOneSaysSo(t *testing.T) {
	g, _ := kinds(t, "Cast on 20 sts.\nRow 1: K to marker, yo, k to end.\nRow 2: K2, yo, k to end.\n")
	last := g.Rows[len(g.Rows)-1]
	assert.Equal(t, 2, last.Number)
	assert.Empty(t, last.Stitches)
	assert.Equal(t, "what it is worked into is not known", last.Unread)
}

// Squares of filet over spaces and over blocks: a square is as many chains or stitches, and its post (common practice).
func TestSquaresOfFiletByTheirNames(t *testing.T) {
	_, rows := kinds(t, `US terms
Space (sp): ch 2, skip 2 sts, dc in next dc.
Block (bl): 2 dc in ch-2 sp and dc in next dc, or dc in each of next 3 dc.

Ch 17.
Row 1: Dc in 8th ch from hook, (ch 2, skip 2 ch, dc in next ch) 3 times, turn. (4 sps)
Row 2: Ch 5 (counts as dc and ch 2), skip next 2 ch, dc in next dc, 2 bls, 1 sp, turn.
Row 3: Ch 5, skip 2 ch, dc in next dc, bl, sp, 1 bl, turn.
`)
	require.Len(t, rows, 4)
	join := func(r []string) string { return strings.Join(r, " ") }
	assert.Equal(t, "dc 2 dc 2 dc 2 dc 2 dc", join(rows[1]))
	assert.Equal(t, "dc 2 dc dc dc dc dc dc dc 2 dc", join(rows[2]))
	assert.Equal(t, "dc 2 dc dc dc dc 2 dc dc dc dc", join(rows[3]))
}

// A name outside of a list tells a group, and what follows is no piece of its own; a shell goes into the middle of a shell.
func TestAGroupToldBeforeTheRowsIsNoPiece(t *testing.T) {
	g, rows := kinds(t, `US terms
Shell: (2 dc, ch 2, 2 dc) in indicated st or sp.
Ch 10.
Row 1: Shell in 6th ch from hook, skip 3 ch, dc in last ch, turn.
Row 2: Ch 3, shell in shell, dc in top of turning ch, turn.
`)
	require.Len(t, rows, 3)
	assert.Empty(t, g.Section)
	below := g.Rows[1].Stitches
	for _, s := range g.Rows[2].Stitches {
		if s.Stitch != nil && s.Stitch.ID == "dc" && !s.Turning && len(s.Feet) == 1 && s.Feet[0] != 0 {
			assert.Equal(t, 2, below[s.Feet[0]].Chain)
		}
	}
}

// A number of knitted rows is garter stitch, of rounds it is not.
func TestPlainRowsOfOneStitchAreGarterStitch(t *testing.T) {
	_, rows := kinds(t, "Cast on 5 sts. Knit 4 rows.\nRow 1: K1, p to end.\n")
	require.Len(t, rows, 6)
	for _, r := range rows[1:5] {
		assert.Equal(t, "k k k k k", strings.Join(r, " "))
	}
	_, rows = kinds(t, "Cast on 8 sts. Join to work in the round.\nRnd 1: *K1, p1; rep from * to end.\nPurl 2 rounds.\n")
	require.Len(t, rows, 4)
	assert.Equal(t, "p p p p p p p p", strings.Join(rows[3], " "))
}

// The second of three chains stands in the space that they make.
func TestAChainOfSoManyChainsStandsInTheirSpace(t *testing.T) {
	g, _ := kinds(t, `US terms
Ch 14.
Row 1: Dc in 4th ch from hook, *ch 3, skip 3 ch, dc in each of next 2 ch; rep from * to end, turn.
Row 2: Ch 3, skip first st, *5 dc in 2nd ch of next 3 chs; rep from *, ending 1 dc in top of turning ch, turn.
`)
	require.Len(t, g.Rows, 3)
	below := g.Rows[1].Stitches
	fans := 0
	for _, s := range g.Rows[2].Stitches {
		if len(s.Feet) == 1 && below[s.Feet[0]].Chain > 0 && !below[s.Feet[0]].Turning {
			fans++
			assert.Equal(t, 3, below[s.Feet[0]].Chain)
		}
	}
	assert.Equal(t, 10, fans)
}

// Rows that a remark says are joined are rounds, and what tells a cable without saying how it is crossed is no row.
func TestRemarksThatRowsAreRoundsAndOfCables(t *testing.T) {
	g, rows := kinds(t, "Cast on 8 sts.\nRows 1-2: (You will be joining to knit in the round) *K1, p1; rep from * to end.\nRow 3: Knit.\n")
	require.Len(t, rows, 4)
	for _, r := range g.Rows[1:] {
		assert.True(t, r.Round)
		assert.True(t, r.RS)
	}
	_, rows = kinds(t, "Cast on 10 sts.\nRow 1: P2, c6, p2.\nCable 6 = slip first three stitches to a cable needle, knit 3 then knit the 3 stitches from the cable needle.\n")
	assert.Len(t, rows, 2)
}

// Two stitches slipped together are both passed over: three become one, centred (common practice).
func TestTwoStitchesSlippedTogetherAreBothPassedOver(t *testing.T) {
	for words, id := range map[string]string{
		"sl 2 tog kwise, k1, psso": "s2kp", "sl 2 sts together knitwise, k1, pass 2 slipped sts over": "s2kp", "slip 2 sts as if to k2tog, k1, psso": "s2kp",
		"sl 2, k1, p2sso": "s2kp", "sl 1, k2tog, psso": "sk2p", "S2KP": "s2kp",
	} {
		g, rows := kinds(t, "Cast on 9 sts.\nRow 1: K3, "+words+", k3. (7 sts)\n")
		require.Len(t, rows, 2, words)
		assert.Equal(t, []string{"k", "k", "k", id, "k", "k", "k"}, rows[1], words)
		assert.ElementsMatch(t, []int{3, 4, 5}, g.Rows[1].Stitches[3].Feet, words)
	}
}

// What one row says of the row below is as it looks from the side that is worked: purl where knit was turned.
func TestStitchesAsTheyCome(t *testing.T) {
	_, rows := kinds(t, "Cast on 5 sts.\nRow 1 (RS): K2, p1, k2.\nRow 2: Knit the knit sts and purl the purl sts as they face you.\n")
	require.Len(t, rows, 3)
	assert.Equal(t, []string{"p", "p", "k", "p", "p"}, rows[2])
}

// A letter that the text names a yarn by is no part of a stitch's name.
func TestALetterThatNamesAYarnIsNoPartOfAStitch(t *testing.T) {
	g, rows := kinds(t, "A = cream, B = red.\nWith A, cast on 3 sts.\nRow 1 (RS): K3 A.\nRow 2: P1 A, p1 B, p1 A.\n")
	require.Len(t, rows, 3)
	assert.Equal(t, []string{"p", "p", "p"}, rows[2])
	assert.Equal(t, "B", g.Rows[2].Stitches[1].Colour)
}

// A repeat that leaves most of a row over is not drawn by a guess.
func TestARowThatMostlyDoesNotFitIsAGap(t *testing.T) {
	g, _ := kinds(t, "US terms\nCh 22.\nRow 1: (Sc, ch 3, 3 dc) in 2nd ch from hook, *skip next 3 ch, (sc, ch 3, 3 dc) in next ch; rep from * across to last 4 ch, skip 3 ch, sc in last ch, turn.\n"+
		"Row 2: Ch 1, (sc, ch 3, 3 dc) in first sc, *skip 3 dc, (sc, ch 3, 3 dc) in next ch-3 sp; rep from * to last sc, sc in last sc, turn.\n")
	require.Len(t, g.Rows, 3)
	assert.Empty(t, g.Rows[1].Unread)
	assert.Equal(t, "it does not fit on the row below", g.Rows[2].Unread)
}
