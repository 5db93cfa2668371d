package work

import "testing"

// What a row has beside its plain stitches may be told behind them. Counted by hand, over 21 sc: three in the middle one make 23, two in
// every third 28, one fewer in every seventh 18.
func TestStitchesToldBehindTheRowThatHasThem(t *testing.T) {
	const plain = "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 22.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (21 sc)\nRow 2: Ch 1, %s (%d sc)\n"
	for w, n := range map[string]int{
		"sc in each sc across, making 3 sc in center sc, turn.":     23,
		"sc in each sc, increasing 2 sc in center sc, turn.":        23,
		"sc in each sc across, making 2 sc in every 3rd sc.":        28,
		"sc across, inc 1 sc in every 3rd sc.":                      28,
		"work in sc, inc 1 sc in every 3rd sc.":                     28,
		"sc across, dec 1 st in every 7th st.":                      18,
		"dec 1 st in every 7th st.":                                 18,
		"sc across and dec 3 sc evenly.":                            18,
		"dec 3 sc evenly across.":                                   18,
		"sc to center sc, 3 sc in center sc, sc in each sc to end.": 23,
	} {
		phraseComesTo(t, plain, w, n, true)
	}
	const corner = "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 22.\nRow 1: Sc in 2nd ch from hook and in next 9 ch, 3 sc in next ch, sc in next 10 ch, turn. (23 sc)\nRow 2: Ch 1, %s (%d sc)\n"
	for _, w := range []string{
		"sc in each sc across, making 3 sc in center sc of the 3-sc group.", "sc in each sc to center sc of 3-sc group, 3 sc in center sc, sc in each sc to end.",
		"sc to center of 3-sc group, 3 sc in center sc, sc to end.",
	} {
		phraseComesTo(t, corner, w, 25, true)
	}
}

// A rib worked sideways is closed to a ring by a seam, told in any words, and the stitches along it follow its 40 rows. Counted by hand.
func TestARibWorkedSidewaysIsJoined(t *testing.T) {
	for _, w := range []string{
		"Sl st last row to foundation ch to form a circle.", "Sl st in both the foundation ch and last row to join.", "Holding first and last rows together, sl st through both thicknesses across 8 sts.",
		"Sl st the short ends together.", "Sl st short ends together through foundation ch and last row.", "Join last row to first row with sl st.",
	} {
		phraseComesTo(t, "Terms: US\nNotes: Ch 1 does not count as a stitch.\nBrim: Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\nRows 2-40: Ch 1, sc in BLO across, turn. (8 sc)\n%s\nRnd 1: Ch 1, sc in end of each row around, join. (%d sc)\n", w, 40, true)
	}
}

// The stitches of limbs that are joined stand beside those of the chain between them, on both of its sides. Counted by hand: 12 + 2 + 12 + 2.
func TestLimbsAreJoinedInABody(t *testing.T) {
	const leg = "Terms: US\nLeg (make 2)\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnds 3-5: Sc in each st around. (12)\nBody\nRnd 1: %s (%d)\nRnd 2: Sc in each st around. (28)\n"
	for _, w := range []string{
		"From second leg, ch 2, sc in 12 sts of first leg, sc in 2 ch, sc in 12 sts of second leg, sc in 2 ch.",
		"Ch 2, sc in each of 12 sts of first leg, sc in each of 2 ch, sc in each of 12 sts of second leg, sc in each of 2 ch.",
		"Ch 2, join with sl st to first leg, sc in next 12 sts of first leg, 2 sc along ch, sc in next 12 sts of second leg, 2 sc along other side of ch.",
		"Ch 2, join to the first leg with a sc, sc in next 11 sts, sc in next 2 ch, sc in next 12 sts of second leg, sc in next 2 ch.",
	} {
		phraseComesTo(t, leg, w, 28, false)
	}
}

// A length in inches at the end of a line begins no place, and the row below it stands for itself. Counted by hand.
func TestALineMayEndInInches(t *testing.T) {
	for _, w := range []string{"Rep Row 1 until piece measures 4 in", "Rep Row 1 until piece measures 4½ in", "Rep Row 1 until piece measures 4 1/2 in"} {
		phraseComesTo(t, "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 21.\nFoundation row: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 1: Ch 1, sc in each sc across, turn. (20 sc)\n%s\nRow 2: Ch 1, 2 sc in first sc, sc in each sc across. (%d sc)\n", w, 21, true)
	}
	for _, w := range []string{"Ch. 21 sts.", "Ch. 21 st.", "Ch 21 sts.", "Chain 21."} {
		phraseComesTo(t, "Terms: US\nNotes: Ch 1 does not count as a stitch.\n%s 1st row: Sc in 2nd ch from hook and in each ch across (%d sc).\n", w, 20, true)
	}
}

// A row that divides a yoke is a row, whatever it is called. Counted by hand: 1 + 8 + 18 + 9 dc and 2 times 4 ch are 44.
func TestADividingRowIsWorkedAsItStands(t *testing.T) {
	for _, w := range []string{"Divide for body and sleeves:", "Divide for armholes:", "Dividing rnd:", "Separate body and sleeves:", "Next rnd:"} {
		phraseComesTo(t, "Terms: US\nCh 60, join with sl st to first ch.\nRnd 1: Ch 3 (counts as dc), dc in each ch around, join. (60 dc)\n%s Ch 3, dc in next 8 dc, ch 4, sk 12 dc, dc in next 18 dc, ch 4, sk next 12 dc, dc in last 9 dc, join. (%d sts)\n", w, 44, true)
	}
}

// Yarn joined behind stitches that are passed stands on the one that the row begins in, a stacked sc is a dc, and how many corners a
// border has is known from its first round alone. Counted by hand.
func TestWhereARowBeginsAndItsCorners(t *testing.T) {
	const back = "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40 sc)\nArmholes\n%s (%d sc)\n"
	for _, w := range []string{
		"Row 1: Sk first 4 sc, join yarn in next sc, ch 1, sc in same st and next 31 sts, leave rem 4 sts unworked, turn.",
		"Row 1: Skip first 4 sts, attach yarn in next st, ch 1, sc in same st, sc in next 31 sts, leave last 4 sts unworked, turn.",
	} {
		phraseComesTo(t, back, w, 32, true)
	}
	for _, w := range []string{"Stacked sc in first st, dc in each rem st across.", "Chainless starting dc in first st, dc in next 19 sts.", "CSDC in first st, dc in next 19 sts."} {
		phraseComesTo(t, "Terms: US\nCh 22.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (20 dc)\nRow 2: %s (%d dc)\n", w, 20, true)
	}
	for _, w := range []string{"working 3 sc in each corner sc, join.", "3 sc in each corner, join."} {
		phraseComesTo(t, "Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nBorder\nRnd 1: Join yarn in any corner, ch 1, *3 sc in corner, 18 sc evenly across to next corner; rep from * around, join. (84 sc)\nRnd 2: Ch 1, sc in each sc around, %s (%d sc)\n", w, 92, false)
	}
	phraseComesTo(t, "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. %s%d]\n", "[Total stitches: ", 20, true)
}

// Rows set out in a table, a loop named before a colon, and a mesh of loops whose first is made by the chain that begins a row. Counted by
// hand: 6, 12 and 18 sc; three loops over 13 chains, and one more in each second row.
func TestRowsInATableAndLoopsOfAMesh(t *testing.T) {
	const ball = "Terms: US\nHEAD\n1 | Ch 2, 6 sc in 2nd ch (6) |\n2 | %s (%d) |\n3,4 | 12 sc (12) |\n5-7 | 12 sc (12) |\n"
	for _, w := range []string{"[2 sc in same sc] repeat around", "[inc] repeat around", "BLO: 6 inc", "2 sc in each sc around"} {
		phraseComesTo(t, ball, w, 12, true)
	}
	for _, w := range []string{"R2 – BLO:", "R2: BLO:", "R2 BLO:", "Rnd 2 - In BLO:", "R2 (BLO):", "R2 – FLO"} {
		phraseComesTo(t, "Terms: US\nR1: 6 sc in MR (6)\n%s 6 inc (%d)\n", w, 12, true)
	}
	for _, w := range []string{"ch 27, sl st in second ch and in each ch across, turn", "ch 27, sl st in 2nd ch from hook and in each ch across, turn", "ch 27, sc in 2nd ch, sc in each ch across, turn"} {
		phraseComesTo(t, "Terms: US\nNotes: Ch 1 does not count as a stitch.\nRow 1: %s (%d sts)\n", w, 26, true)
	}
	const mesh = "Terms: US\nCh 13.\nRow 1: Sc in 5th ch from hook, [ch 3, skip next 3 ch, sc in next ch] 2 times; turn. (3 lps)\n%s (%d lps)\n"
	phraseComesTo(t, mesh, "Row 2: Ch 4, sc in first ch-3 lp, ch 3, *sc in next lp, ch 3; rep from * to last lp; sc in last lp, ch 3, sc in 2nd ch of ch-5; turn.", 4, true)
}

// A bracket that is worked once stands in the one place that its last stitch has, and a note on how the work looks works nothing.
// Counted by hand, over 19 sc: two more in one of them make 20, in the middle, and a stitch more in every one 38.
func TestAPlaceSaidLastInABracketIsForAllOfIt(t *testing.T) {
	const plain = "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 20.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (19 sc)\nRow 2: Ch 1, %s (%d sts)\n"
	for w, n := range map[string]int{
		"sc in next 9 sts, [sc, hdc, sc in next st], sc in next 9 sts.":        21,
		"sc in next 9 sts, (2 sc in next st), sc in next 9 sts.":               20,
		"sc in each in next 9 sts, 2 sc in next st, sc in each in next 9 sts.": 20,
		"2 sc in each st across. Note: Each st should have 2 sc worked in it.": 38,
	} {
		phraseComesTo(t, plain, w, n, true)
	}
	phraseComesTo(t, plain, "sc in next 9 sts, (sc, ch 2, sc in next st), sc in next 9 sts.", 20, false) // the chains may be one stitch of it
}

// What goes into the corners of a border is added to its stitches, wherever they begin. Counted by hand: 40 and 2 more at each of 4 corners.
func TestCornersOfABorderThatBeginsInItsFirstStitch(t *testing.T) {
	const square = "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 10.\nRow 1: Sc in 2nd ch from hook and in each ch across. (9 sc)\nRows 2-9: Ch 1, turn, sc in each sc across. (9 sc)\nBorder\nRnd 1: Ch 1, sc evenly around with 3 sc in each corner, join. (40 sc)\nRnd 2: Ch 1, %s (%d sc)\n"
	for _, w := range []string{
		"sc in each sc around placing 3 sc in each corner, join.", "sc in same st as joining and in each sc around, working 3 sc in each corner, join.",
		"sc in same st as joining and each sc around, placing 3 sc in each corner, join.", "sc in first st and in each sc around, putting 3 sc in each corner, join.",
	} {
		phraseComesTo(t, square, w, 48, false)
	}
}

// Places that are told by their number one after the other are one beside the other, in every time of a repeat. Counted by hand, over 12 sc.
func TestPlacesToldByTheirNumberFollowEachOther(t *testing.T) {
	const plain = "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 2.\nRnd 1: 6 sc in 2nd ch from hook. (6)\nRnd 2: 2 sc in each of your beginning 6 sc. (sc 12)\nRnd 3: %s (%d sc)\n"
	for w, n := range map[string]int{
		"*Sc in first st, sc in second st, 2 sc in third st; rep from * around.": 16,
		"*Sc in first st, sc in second st, 2 sc in next st; rep from * around.":  16,
		"*Sc in 1st st, 2 sc in 2nd st; rep from * around.":                      18,
		"(Sc in first 2 sts, 2 sc in third st) around.":                          16,
		"(Sc in sc, sc between sc) around.":                                      24,
		"Increase row - *sc in next st, 2 sc in next st; rep from * around.":     18,
		"Decrease row – *sc2tog, sc in next st; rep from * around.":              8,
	} {
		phraseComesTo(t, plain, w, n, true)
	}
}
