package work

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A hook or needles named before the first chain or stitch, as patterns begin (common practice): the number of its size is no count, and
// the chain behind it is none the less one.
func TestAHookNamedBeforeTheChainIsNoPartOfIt(t *testing.T) {
	for _, s := range []string{
		"With 4 mm hook make 52 ch.", "With 4 mm hook ch 52.", "With 4mm hook, ch 52.", "Using 4 mm hook make 52 ch.", "Using 4 mm hook and A make 52 ch.",
		"With A and 4 mm hook ch 52.", "With 4.00 mm hook make 52ch.", "With size H hook ch 52.", "With US 7 (4.5 mm) hook and MC ch 52.", "With larger hook ch 52.",
		"Using hook size 4 mm ch 52 sts.", "With No 9 hook make 52 ch.", "With a 4 mm hook make a chain of 52.", "With main colour and 4 mm hook work 52 ch.",
	} {
		phraseComesTo(t, "Terms: UK\nBack\n%s\nFoundation row: 1 htr in 3rd ch from hook, 1 htr in each ch to end, turn. %d htr.\n", s, 51, true)
	}
}

// Over a round of 20 trebles with a space of 2 chains behind each: 2 in each space and 1 in each treble are 60.
func TestSpacesAndStitchesAreWorkedAsTheyCome(t *testing.T) {
	const text = "Terms: UK\nRound 1: 60dc into ring, ss to first dc. (60 dc)\n" +
		"Round 2: 5ch (counts as 1tr, 2ch), miss next 2 sts, [1tr into next st, 2ch, miss 2 sts] to end, ss to 3rd of 5ch. (20 spaces)\nRound 3: %s (%d dc)\n"
	for _, s := range []string{
		"1ch, 2dc into each 2ch sp and 1dc into each tr around, ss to first dc.", "1ch, 2 dc in each ch-2 sp and 1 dc in each tr around, ss to first dc.",
		"1ch, 2 dc in each 2-ch sp and 1 dc in each tr around.", "1ch, 2 dc in each ch sp and 1 dc in each tr around.", "1ch, 1 dc in each tr and 2 dc in each 2-ch sp around.",
		"1ch, 1 dc in each tr, 2 dc in each 2-ch sp around.", "1ch, 2 dc in each sp, 1 dc in each tr to end.",
	} {
		phraseComesTo(t, text, s, 60, true)
	}
	phraseComesTo(t, text, "1ch, 1dc in same st as join, *2 dc in next sp, dc in next tr; rep from * to last sp, 2 dc in last sp, join.", 60, false)
}

func TestFrontAndBackOfSeveralStitches(t *testing.T) {
	for _, s := range []string{"knit into front and back of next 5 sts", "knit in front and back of each of next 5 sts", "(knit into the front and back of the next st) 5 times"} {
		phraseComesTo(t, "Terms: US\nCast on 14 sts.\nRow 1: K4, %s, k5. (%d sts)\n", s, 19, true) // 14 and 5 more
	}
}

// Counts behind each stretch of a row are not the count of the row: 6 and 12 by turns are 42.
func TestCountsOfStretchesAreNotTheRows(t *testing.T) {
	const text = "Terms: US\nCast on 42 sts.\nRow 1: P1K1 x3 (6st), K1P1 x6 (12st), P1K1 x3 (6st), K1P1 x6 (12st), P1K1 x3 (6st)\nRow 2: Knit. (%d sts)\n"
	for n, told := range map[int]int{42: 0, 43: 1} {
		rep := Check(Read("t", fmt.Appendf(nil, text, n), Options{}))
		assert.Len(t, rep.Findings, told)
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole)
	}
}

// A row that names all the stitches which a line before it states, one by one, is sure of them, even if that line was not read.
func TestAStatedCountThatTheNextRowUsesUpIsSure(t *testing.T) {
	const text = "Terms: US\nCast on 3 sts.\nKnit 6 rows. Zorb 3 sts along the edge, then 3 sts from the cast-on edge. 9 sts.\nRow 1: K3, yo, k1, yo, k1, yo, k1, yo, k3. %d sts.\n" // 9 named, 4 made between them
	for n, told := range map[int]int{13: 0, 14: 1} {
		var warned int
		for _, f := range Check(Read("t", fmt.Appendf(nil, text, n), Options{})).Findings {
			if f.Kind == "rows/stated" {
				warned++
			}
		}
		assert.Equal(t, told, warned, n)
	}
}

// Marks of a page or a typesetter are read as what a hand types: spaces that do not break, letters cast in one, hyphens that are not there.
func TestMarksOfATypesetterChangeNothing(t *testing.T) {
	const text = "Sizes: S (M, L)\nCast on 80 (88, 96) sts.\nRow 1: K2tog, k to end. 79 (87, 95) sts\nRow 2: Bind off 4 sts, p to end. %s\n"
	for _, of := range [][2]string{{" ", "\u00a0"}, {" ", "\u2009"}, {" ", "\u202f"}, {"ff", "ﬀ"}, {"sts", "s\u00adts"}, {"k to", "k \u200bto"}} {
		for now, told := range map[string]int{"75 (83, 91) sts": 0, "75 (83, 92) sts": 1} {
			src := strings.ReplaceAll(fmt.Sprintf(text, now), of[0], of[1])
			rep := Check(Read("t", []byte(src), Options{}))
			assert.Len(t, rep.Findings, told, "%q", src)
			assert.Equal(t, rep.Read.Lines, rep.Read.Whole)
		}
	}
}

// The chain of the next round stands behind the join of this one, the first round in a ring too: 12 and then 24.
func TestTheChainOfTheNextRoundStandsBehindTheJoin(t *testing.T) {
	const text = "Notes: Ch 3 counts as a dc.\nTerms: US\nCh 5, join with sl st to form ring.\nRnd 1: %s\nRnd 2: Dc in same st, 2 dc in each dc around, join. (%d dc)\n"
	for _, s := range []string{
		"Ch 3, 11 dc in ring, join, ch 3. (12 dc)", "Ch 3, 11 dc in ring, join with sl st in top of ch 3. Ch 3. (12 dc)", "Ch 3, 11 dc in ring, sl st in top of ch 3. Ch 3.", "12 dc in ring, join, ch 3. (12 dc)",
	} {
		phraseComesTo(t, text, s, 24, true)
	}
}

// 25 of 31 stitches go on when the last 6 are put aside.
func TestTheLastStitchesArePutAside(t *testing.T) {
	const text = "Terms: US\nBack\nCast on 31 sts.\nRow 1: Knit.\nNext row: knit to last 6 sts, %s.\nNext row: Purl. %d sts\n"
	for _, s := range []string{"place these stitches on a stitch holder", "slip these sts onto a holder", "place these 6 sts on a holder"} {
		phraseComesTo(t, text, s, 25, true)
	}
}

// A rib between borders of 4, in brackets or not, is over 44 of 52.
func TestARibGoesUpToTheLastStitchesOfARow(t *testing.T) {
	for _, s := range []string{"K4, (K1, P1 rib to last 4 stitches), K4", "K4, K1, P1 rib to last 4 stitches, K4", "K4, (k1, p1 to last 4 sts), k4", "K2, yo, k2tog, (k1, p1 rib to last 4 sts), k4"} {
		phraseComesTo(t, "Terms: US\nCast on 52 sts.\nRow 1: %s. %d sts\n", s, 52, true)
	}
}

// 7 + 7 x 8 + 4 + 7 are 74: the last time ends with its purls, and the border takes the place of its knits.
func TestABorderTakesThePlaceOfTheEndOfTheLastRepeat(t *testing.T) {
	const text = "Terms: US\nCast on 74 sts.\nRow 1: %s. %d sts\n"
	phraseComesTo(t, text, "K7, *p4, k4, repeat from *, ending k7", 74, true)
	phraseComesTo(t, text, "K. 7, * P. 4, K. 4, repeat from *, ending K. 7", 74, true)
	phraseComesTo(t, "Terms: US\nCast on 78 sts.\nRow 1: %s. %d sts\n", "K7, *p4, k4, repeat from *, ending k7", 78, true) // eight times and no more
}

// A V-stitch is named where it is made first, in any of the usual ways (common practice); in the next row it is worked by its name: 3 and two times 2.
func TestAVStitchIsNamedWhereItIsMade(t *testing.T) {
	const text = "Terms: US\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. 10 sc. Turn.\nRow 2: Ch 3 (counts as dc), skip first 2 sc, *(dc, ch 3, dc) in next sc%s, skip 2 sc; rep from * once, dc in next sc, dc in last sc. (7 dc) Turn.\n" +
		"Row 3: Ch 3 (counts as dc), V st in ch-3 sp of each V st, dc in next dc, dc in top of ch 3. (%d dc)\n"
	for _, s := range []string{" - V st made", " (V-st made)", ", V-st made", " (V-stitch made)", " – V-st made"} {
		phraseComesTo(t, text, s, 7, true)
	}
}
