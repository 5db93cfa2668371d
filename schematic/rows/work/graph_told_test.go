package work

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func colour(s GraphStitch) string { return s.Colour }

// Forms in which designers name the yarn of a few stitches (common practice); each says 2 in A, 3 in B, 2 in A.
func TestAYarnIsNamedBeforeBehindOrBesideItsStitches(t *testing.T) {
	for _, row := range []string{"A: 2 sc, B: 3 sc, A: 2 sc", "[A] sc in next 2, [B] sc in next 3, [A] sc in next 2", "(A) 2 sc, (B) 3 sc, (A) 2 sc",
		"sc 2 (A), sc 3 (B), sc 2 (A)", "A sc 2, B sc 3, A sc 2", "2 sc A, 3 sc B, 2 sc A", "A 2, B 3, A 2", "sc in next 2 sts, join B, sc in next 3 sts, switch to A, sc in next 2 sts",
		"sc in first 2 sts with A, drop A, pick up B, sc in next 3 sts, drop B, pick up A, sc in last 2 sts"} {
		assert.Contains(t, pictured(t, "Yarn A, yarn B.\nWith A, ch 8.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (7 sc)\nRow 2: Ch 1, "+row+", turn.\n", colour), "\nAABBBAA\n", row)
	}
	for _, row := range []string{"K2A, K3B, K2A", "(k2)A, (k3)B, (k2)A", "k2/A, k3/B, k2/A", "A: k2, B: k3, A: k2", "Knit 2 stitches in A, 3 stitches in B, 2 stitches in A", "k2, join B, k3, with A k2"} {
		assert.Contains(t, pictured(t, "Yarn A, yarn B.\nCast on 7 sts in A.\nRow 1 (RS): K.\nRow 2: P.\nRow 3: "+row+".\n", colour), "\nAAAAAAA\nAAAAAAA\nAABBBAA\n", row)
	}
	assert.Contains(t, pictured(t, "Cast on 7 sts in A.\nRow 1 (RS): K3A, K1B, K3A.\n", func(s GraphStitch) string { return s.Stitch.ID + s.Colour }), "\nkAkAkAkBkAkAkA\n", "K1B is no stitch through the back loop")
}

// Short names that a text gives its yarns, and a yarn that a row names before it is worked as another.
func TestShortNamesOfYarnsAreDeclared(t *testing.T) {
	assert.Contains(t, pictured(t, "Main colour (M) ecru, contrast (C1) moss.\nWith M cast on 5 sts.\nRow 1 (RS): Knit.\nRow 2: 2M, 1C1, 2M.\nRow 3: 1 M, 3 C1, 1 M.\n", func(s GraphStitch) string { return s.Colour + " " }), "\nM M C1 M M \nM C1 C1 C1 M \n")
	assert.Contains(t, pictured(t, "W = white, R = red\nWith W, ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across. (5 sc)\nRow 2: Ch 1, turn, (2 W), (1 R), (2 W)\n", colour), "\nWWRWW\n")
	assert.Contains(t, pictured(t, "With yarn A cast on 3 sts.\nRow 1 (RS): A. Knit.\nRow 2: B. Purl.\nRow 3: C. As row 1.\n", colour), "AAA\nAAA\nBBB\nCCC\n")
}

// 6 + 2 repeats of 8 + yo, k2tog, k4 + k4 = 32 (2 of the row below for k2tog).
func TestALastRepeatThatIsWorkedOtherwiseHasItsRoom(t *testing.T) {
	for _, end := range []string{"end last repeat K4, K4", "ending last rep k8", "end last rep with k8"} {
		assert.Contains(t, pictured(t, "Cast on 32 sts.\nRow 1 (RS): K6, *yo, k2tog, k6; rep from *, "+end+".\n", func(s GraphStitch) string { return s.Stitch.ID + " " }), "k yo k2tog "+strings.Repeat("k ", 8)+"\n", end)
	}
}

// One is passed over two: 3 become 2, for which there is no symbol.
func TestASlippedStitchPassedOverTwoIsNotDrawnAsOverOne(t *testing.T) {
	g, ok := GraphOf(Read("t", []byte("Cast on 8 sts.\nRow 1: K3, sl 1, k2, psso, yo, k2.\n"), Options{TermsSet: true}), "", 0)
	require.True(t, ok)
	assert.NotEmpty(t, g.Rows[1].Unread)
}

// A pattern is shown on the multiple that the text says where its first row fits on others too: 3 of 6, and 3.
func TestAPatternIsShownOnTheMultipleThatItSays(t *testing.T) {
	g, ok := GraphOf(Read("t", []byte("Eyelets\n(multiple of 6 sts plus 3)\nRow 1 (RS): K2, *yo, k2tog, k3, k1; rep from *, end k1.\nRow 2: Purl.\n"), Options{TermsSet: true}), "", 0)
	require.True(t, ok)
	assert.Len(t, g.Rows[0].Stitches, 21)
}

// A side in brackets behind the colon is the row's, whatever stands beside it.
func TestASideInBracketsBehindTheColonIsTheRows(t *testing.T) {
	for _, side := range []string{"(WS)", "(WS).", "[WS]", "(Wrong Side)", "(wrong side of work)", "(wrong side):"} {
		g, ok := GraphOf(Read("t", []byte("Cast on 6 sts.\nRow 1: "+side+" Knit.\nRow 2: Purl.\n"), Options{TermsSet: true}), "", 0)
		require.True(t, ok)
		assert.True(t, g.Sided, side)
		assert.Equal(t, [2]bool{false, true}, [2]bool{g.Rows[1].RS, g.Rows[2].RS}, side)
	}
}

// Twists as pattern books tell them (common practice): the second stitch before the first leans right; behind it, left.
func TestTwistsAreToldInManyWords(t *testing.T) {
	for words, want := range map[string]Cross{
		"k into front of second st on left needle, then into front of first st, slip both off together": {},
		"skip 1 st, k next st, then k skipped st, sl both sts off needle":                               {},
		"k2nd st, k1st st, slip both off":                                                               {},
		"knit into the front of the 2nd stitch, then the first stitch, let both fall":                   {},
		"skip 1 st, k next st tbl, then k skipped st, sl both sts off needle":                           {Left: true},
		"from behind, k 2nd st tbl, then k 1st st, sl both off":                                         {Left: true},
		"skip 1 st, k the 2nd st, p the first st, slip both off":                                        {Purl: true},
		"working behind, p into 2nd st, then k into first st, sl both off":                              {Left: true, Purl: true},
	} {
		g, ok := GraphOf(Read("t", []byte("Special abbreviations\nT2X: "+words+".\n\nCast on 6 sts.\nRow 1 (RS): P2, T2X, p2.\n"), Options{TermsSet: true}), "", 0)
		require.True(t, ok, words)
		c := g.Rows[1].Stitches[2].Cross
		require.NotNil(t, c, words)
		want.Held, want.Over = 1, 1
		assert.Equal(t, want, *c, words)
	}
}

// Rows behind a list of special abbreviations are the work, and so is a set-up row that founds it.
func TestRowsBehindSpecialAbbreviationsAreTheWork(t *testing.T) {
	for _, above := range []string{"Special abbreviations\nC4F - slip next 2 sts onto cable needle and hold at front, k2, then k2 from cable needle.\nW3: slip 3 sts to cn, wrap the yarn around them twice, k3 from cn.\n\n",
		"Abbreviations\nbrk: knit the slipped st together with its yarn over\n\nCast on 8 sts.\n", "brk: knit the slipped st together with its yarn over\nCast on 8 sts.\n"} {
		assert.Contains(t, pictured(t, above+"Set-up row (WS): K2, p4, k2.\nRow 1 (RS): P2, k4, p2.\n", func(s GraphStitch) string { return s.Stitch.ID }), "kkppppkk\nppkkkkpp\n", above)
	}
}

// The first stitch of a row is slipped wherever the words say so.
func TestAFirstStitchIsSlippedWhereverTheRowSaysSo(t *testing.T) {
	for _, row := range []string{"Knit across, slipping the first stitch", "Slipping first st, knit across", "K to end, sl first st", "Slip the first st, knit to end", "With first st slipped, knit to end"} {
		assert.Contains(t, pictured(t, "Cast on 4 sts.\nRow 1: "+row+".\n", func(s GraphStitch) string { return s.Stitch.ID + " " }), "\nsl k k k \n", row)
	}
}

// 5 + 2 repeats of 4 + 5 = 18.
func TestARepeatBetweenStarsGoesToTheLastStitches(t *testing.T) {
	for _, rep := range []string{", repeat between *'s to last 5sts", " rep bet *'s to last 5 sts", ", repeat from between *'s until 5 sts remain"} {
		row := fmt.Sprintf("K5, *k2, p2*%s, k5", rep)
		assert.Contains(t, pictured(t, "Cast on 18 sts.\nRow 1 (RS): "+row+".\n", func(s GraphStitch) string { return s.Stitch.ID }), "\nkkkkkkkppkkppkkkkk\n", row)
	}
}

// A row that was not followed leaves no guess: nothing stands on it unless it says how many stitches it leaves.
func TestARowThatWasNotFollowedIsAGap(t *testing.T) {
	for stated, want := range map[string]int{"": 0, " (9 sts)": 9} {
		x := Read("t", []byte("Cast on 8 sts.\nRow 1 (RS): K.\nRow 2: K2, m1, k to end."+stated+"\nRow 3: K.\n"), Options{TermsSet: true})
		x.Doubt(3)
		g, ok := GraphOf(x, "", 0)
		require.True(t, ok)
		assert.Equal(t, misfits, g.Rows[2].Unread)
		assert.Len(t, g.Rows[3].Stitches, want)
	}
}

// A heel that is turned by short rows stands on stitches that only the text before it could tell.
func TestShortRowsAreNotShownOnAsManyAsTheyWork(t *testing.T) {
	g, ok := GraphOf(Read("t", []byte("Row 1 (RS): Sl 1, k16, ssk, k1, turn.\nRow 2: Sl 1, p5, p2tog, p1, turn.\n"), Options{TermsSet: true}), "", 0)
	require.True(t, ok)
	for _, row := range g.Rows {
		for _, s := range row.Stitches {
			assert.Nil(t, s.Stitch)
		}
	}
}
