package work

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What words mean where only that fits, each counted by hand: 12 stitches below, or what the line before it says.
func TestWordsMeanWhatFits(t *testing.T) {
	const twelve = "Terms: US\nRnd 1: 12 sc in magic ring (12)\n"
	for _, c := range []struct {
		text string
		n    int
		ways []string
	}{
		{twelve + "Rnd 2: %s (%d)\n", 18, []string{"(sc inc) x 6", "(1 sc inc) 6 times", "sc inc x 6", "*sc, sc inc* x 6", "*sc inc* around", "(sc, inc) rep 5x", "(sc, inc) repeat 5 times"}},                                                                                                                    // 12 + 6
		{twelve + "Rnd 2: %s (%d)\n", 16, []string{"(2 sc inc) x 4", "(2 sc inc) 3 times, 2 sc, inc"}},                                                                                                                                                                                                            // 12 + 4
		{twelve + "Rnd 2: %s (%d)\n", 8, []string{"(sc dec) x 4", "4 x (sc dec)", "(1 sc dec) around", "(sc, 2sctog) 4 times", "(1sc, 2sctog) around", "2sctog 4 times, 4sc"}},                                                                                                                                    // 12 - 4
		{twelve + "Rnd 2: %s (%d)\n", 15, []string{"*Sc in 1st, 2nd and 3rd sts, 2 sc in 4th st; rep from * around", "Sc in 1st, 2nd and 3rd st, 2 sc in 4th st, repeat around"}},                                                                                                                                 // 3 x 5
		{twelve + "Rnd 2: %s (%d)\n", 14, []string{"Sc in each of first 3 sts, 3 sc in same st, 8 sc", "3 sc, 3 sc in same st, 8 sc"}},                                                                                                                                                                            // 3 + 3 + 8
		{twelve + "Rnd 2: %s (%d sc)\n", 12, []string{"*sc between next 2 sc; rep from * around", "Sc between sc and next sc, *sc between next 2 sc; rep from * around"}},                                                                                                                                         // as many gaps
		{"Terms: US\nCh 4, join.\nRnd 1: *Sc in ring, ch 5; rep from * 5 times more, join. (6 ch-5 loops)\nRnd 2: %s (%d sc)\n", 18, []string{"*3 sc in next ch-5 loop; rep from * around", "*3 sc in top of next ch-5 loop; rep from * around", "*3 sc in top of next 5-ch loop; rep from * around"}},            // 6 x 3
		{"Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across (20 sc)\nRow 2: Ch 1, *%s, skip 1 st; rep from * across (%d sts)\n", 20, []string{"sc and dc in next st", "1 sc and 1 dc in next st", "sc & dc in next sc", "sc + dc in next st", "sc plus dc in next st", "sc, dc in next st"}}, // 10 x 2
		{"Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across (20 sc)\nRow 2: Ch 1, *%s, skip 1 st; rep from * across (%d sts)\n", 30, []string{"sc and 2 dc in next st", "sc, hdc and dc in next st", "2 hdc and dc in next sc"}},                                                             // 10 x 3
		{"Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across (20 sc)\nRow 2: Ch 1, *sc and dc in next sc, skip 1 sc; rep from * across (20 sts)\nRow 3: Ch 1, %s across (%d sts)\n", 20, []string{"sc in each st", "2 sc in each sc", "sc and dc in each sc", "sc in each sc"}},               // 20 x 1 or 10 x 2
		{"Terms: US\nCh 1 does not count as a st.\nPicot: ch 3, sl st in 3rd ch from hook.\nCh 22.\nRow 1: Sc in 2nd ch from hook, *ch 1, picot, ch 5, skip 3 ch, sc in next ch; rep from * across, turn (5 loops)\nRow 2: Ch 1, %s across, turn (%d sc)\n", 5, []string{"*sc in next loop; rep from *", "*sc in next ch-5 loop; rep from *", "*sc in next ch-6 loop; rep from *"}},
		{twelve + "Rnd 2: Ch 1, sc in first sc, *ch 4, picot, ch 4, skip 1 sc, sc in next sc; rep from * 4 times more, %s, join in first sc. (%d loops)\n", 6, []string{"ch 4, picot, ch 4", "ch 7, sl st in 3rd ch from hook, ch 3", "ch 4, picot, ch 4, picot, ch 1"}}, // the last lies over the 12th
		{"Terms: US\nCh 4, join.\nRnd 1: %s to make %d loops, join.\n", 6, []string{"*Sc in ring, ch 5; rep from * 5 times more", "[Sc in ring, ch 5] 6 times"}},
		{twelve + "Last r%s (%d)\n", 12, []string{"ound: sc in each sc around", "ound, sc in each sc around", "ound, ch 1, sc in each sc around"}},
		{"Terms: US\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: Ch 2 (counts as dc), %s, join. (%d sts)\n", 12, []string{"dcf around each of next 11 dc", "*dcf in next dc, dcb in next dc; rep from * to last st, dcf in last st"}},
	} {
		for _, w := range c.ways {
			phraseComesTo(t, c.text, w, c.n, true)
		}
	}
}

// Rows that a sentence behind a row works are counted, so that the next one has its number. Counted by hand.
func TestRowsToldBehindARowAreCounted(t *testing.T) {
	const text = "Terms: US\nCh 1 does not count as a st.\nCh 14. 1st row: Sc in 2nd ch from hook and in each ch across. Ch 1, turn. 2nd row: Sc in each sc across. Ch 1, turn. 3rd row: 2 sc in first sc, sc in each sc across. Ch 1, turn. %s Sc in each sc across. (%d sc)\n"
	for n, ways := range map[int][]string{
		14: {"Work 4 rows even. Ch 1, turn. 8th row:", "Now work 4 rows without increasing. Ch 1, turn. 8th row:", "Repeat 2nd row twice. 6th row:"},
		15: {"Repeat 2nd and 3rd rows once more. 6th row:", "Repeat the 2nd and 3rd rows once more. Repeat 2nd row once more. 7th row:"},
	} {
		for _, w := range ways {
			phraseComesTo(t, text, w, n, true)
		}
	}
}

// A chain that begins a round of stitches and gaps has room for a stitch and a gap, and a round may be joined by chains and a stitch.
// Counted by hand: 16 stitches, each second one passed.
func TestARoundOfGapsBeginsWithAStitchAndAGap(t *testing.T) {
	const text = "Terms: US\nBeginning chain counts as a stitch.\nRnd 1: Ch 2, 15 hdc in ring, join. (16 hdc)\nRnd 2: %s (%d ch-1 sps)\nRnd 3: Sl st in next sp, ch 2, hdc in same sp, 2 hdc in each ch-1 sp around, join. (16 hdc)\n"
	for _, w := range []string{
		"Ch 3, skip a st, *hdc in next st, ch 1, skip a st; rep from * around, join.",
		"Ch 3, sk next st, (hdc in next st, ch 1, sk next st) around, join.",
		"Ch 4, sk next st, *dc in next st, ch 1, sk next st; rep from * around, join with sl st in 3rd ch.",
	} {
		phraseComesTo(t, text, w, 8, true)
	}
	const joined = "Terms: US\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: Ch 3, %s (%d dc)\n"
	for _, w := range []string{
		"dc in same st, 2 dc in each dc around, join with (1 ch and 1 sc) in the 3rd ch.",
		"dc in same st, 2 dc in each dc around, join with ch 1 and sc in 3rd ch.",
		"dc in same st, 2 dc in each dc around, close the round with 1 ch and 1 sc in the 3rd ch.",
	} {
		phraseComesTo(t, joined, w, 24, true)
	}
}

// A count of more than one kind may be that of one time of the repeat: 24 stitches, counted by hand.
func TestACountMayBeThatOfOneRepeat(t *testing.T) {
	phraseComesTo(t, "Terms: US\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: Ch 3, dc in same st, 2 dc in each dc around, join. (24 dc)\n%s\nRnd 4: Ch 1, sc in each st around, join. (%d sc)\n",
		"Rnd 3: Ch 3, dc in next 2 dc, FPdc around next dc, *dc in next 3 dc, FPdc around next dc; rep from * around, join. (3 dc, 1 FPdc)", 24, true)
}

// Yarn that is joined at the end of a row further down begins anew there: how many stitches it finds is not known, and nothing is
// told of them. What lies below other rows is not counted either.
func TestYarnJoinedFurtherDownFindsItsOwnStitches(t *testing.T) {
	const text = "Terms: US\nRow 1: Ch 73, hdc in 3rd ch from hook, hdc in each ch across, ch 1, turn. (71 sts)\nRow 2: Hdc in next 12 sts, hdc2tog, leave remaining sts unworked, ch 1, turn. (13 sts)\nRow 3: Hdc in each st across, fasten off. (13 sts)\nRow 4: %s, ch 1, hdc in same st, hdc in next 13 sts, hdc2tog, leave remaining sts unworked, ch 1, turn. (%d sts)\n"
	for _, w := range []string{"Join yarn at other end of Row 1", "Join end row 1", "Join yarn in last st of Row 1", "Join at opposite end of row 1", "Attach yarn to the other end of Row 1"} {
		phraseComesTo(t, text, w, 15, false)
	}
}

// A star round one word only stresses it, and 'repeat' before a starred stretch says again what its number does. Counted by hand: 24
// stitches below.
func TestStarsMayOnlyStress(t *testing.T) {
	const text = "Terms: US\nRnd 1: 6 sc in magic ring (6)\nRnd 2: 2 sc in each st (12)\nRnd 3: (sc, inc) x 6 (18)\nRnd 4: (2 sc, inc) x 6 (24)\nRnd 5: %s (%d)\n"
	for _, w := range []string{"Sc in the next 8 st, *Inc* in the next 6 st, Sc in the last 10 st", "*Sc* in next 8 sts, *inc* in next 6 sts, *sc* in last 10 sts", "Sc in next 8 sts, repeat *inc in the next st* 6 times, sc in next 10 sts", "8 sc, *inc* x 6, 10 sc"} {
		phraseComesTo(t, text, w, 30, true)
	}
	phraseComesTo(t, "Terms: US\n1. 6 sc in magic ring (6)\n2. %s (%d)\n", "inc", 12, true)
}

// Sizes may stand in brackets in turn, as their numbers do.
func TestSizesInBracketsInTurn(t *testing.T) {
	for _, sizes := range []string{"32-34 (36-38) 40-42 (44-46) 48-50", "S (M) L (XL) XXL", "8(10) 12(14) 16"} {
		x := Read("t", []byte("Terms: UK\nSizes: "+sizes+"\nCh 96 (106) 116 (128) 140.\nRow 1: 1 dc in 2nd ch from hook and in each ch to end, turn – 95 (105) 115 (127) 139 dc.\n"), Options{})
		require.Len(t, x.Sizes.Names, 5, sizes)
		assert.Empty(t, Check(x).Findings, sizes)
	}
}

// A chain of one length may count before one stitch and not before another, if each row says so; before the same stitch it may not.
func TestAChainMayCountBeforeOneStitchOnly(t *testing.T) {
	const text = "Terms: US\nCh 28, join.\nRnd 1: Ch 2 (counts as hdc), hdc in each of next 27 ch, join. (28 hdc)\nRnd 2: Ch 2 (does not count as a st), %s in same st, %[1]s in each st around, join. (28 %[1]s)\n"
	assert.Empty(t, Check(Read("t", fmt.Appendf(nil, text, "dc"), Options{})).Findings)
	assert.NotEmpty(t, Check(Read("t", fmt.Appendf(nil, text, "hdc"), Options{})).Findings)
	phraseComesTo(t, "Terms: US\nCh 2 and ch 3 count as a stitch.\nRnd 1: Ch 2, 19 hdc in ring, join. (20 hdc)\nRnd 2: Ch 3, %s, join. (10 sc, %d ch-2 sps)\n", "skip next st, sc in next st, ch 2, *skip next st, sc in next st, ch 2; rep from * around", 10, true)
}

// A sentence that leads to a row is no row of its own, and a row may be told as one of a pattern.
func TestASentenceThatLeadsToARowIsNone(t *testing.T) {
	for _, text := range []string{
		"Terms: US\nRnd 1: 8 sc in magic ring (8)\nRnd 2: 8 inc (16)\nOn the next rnd, join the legs.\nRnd 3: 16 sc (16)\nRnd 4: (sc, inc) x 8 (24)\n",
		"Terms: US\nCh 22. 1st row: Sc in 2nd ch from hook and in each ch across. Ch 1, turn. (21 sc)\n1st row of lace pattern: Sc in each sc across. Ch 1, turn. 2nd to 7th rows incl: Repeat 1st row. 8th row: Sc in each sc across. (21 sc)\n",
	} {
		assert.Empty(t, Check(Read("t", []byte(text), Options{})).Findings, text)
	}
}
