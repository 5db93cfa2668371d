package work

import "testing"

// The first word of a place may be left out: 2 hdc next st. 20 stitches and what each row adds, by hand.
func TestTheFirstWordOfAPlaceMayBeLeftOut(t *testing.T) {
	const text = "Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\nRow 2: %s (%d sts)\n"
	for w, n := range map[string]int{
		"2 hdc next 2 sts, hdc next 17, 2 hdc last st":          23,
		"2 sc first, sc next 18 sc, sc last":                    21,
		"2 sc ea of next 2, sc in each st across":               22,
		"(sc next 2, 2 sc next) 6 times, sc last 2":             26,
		"(sc next 2, 2 sc next st) 6 times, sc last 2 sts":      26,
		"*sc next 3, 2 sc same st, sc next; rep from * across":  30,
		"2 sc first st, sc each st across, 2 sc last st":        22,
		"2 sc in first, sc in each st to last, 2 sc in last":    22,
		"2 sc in first and last sc, sc in each st between them": 22,
		"dc next st and next 18 sts, 2 dc last":                 21,
		"sc 1st st, skip next st, dc next 17 sts, 3 dc last st": 21,
	} {
		phraseComesTo(t, text, w, n, true)
	}
}

// A round along both sides of its foundation: 1 and 8 stitches, 3 in the last chain, 8 and 2 are 22. However it is said
// that the work goes back.
func TestARoundGoesBackAlongTheOtherSideOfItsChain(t *testing.T) {
	for _, w := range []string{
		"turn piece so you are now working across the bottom of the foundation ch", "rotate to work in bottom of ch", "rotate piece 180 degrees",
		"now working back along the bottom of the starting chain", "pivot and work into the underside of the foundation chain",
		"rotate so you're working in the bottom loops", "on opposite side of ch", "in the other side of the chain", "along other side of chain",
		"on the other side of the starting chain", "then work in the bottom of the chain", "working along the other side of the foundation chain",
	} {
		phraseComesTo(t, "Terms: US\nCh 11.\nRnd 1: Sc in 2nd ch from hook, sc in next 8 ch, 3 sc in last ch, %s, sc in next 8 ch, 2 sc in last ch, join. (%d sc)\n", w, 22, true)
	}
}

// On the right needle are what is knitted and, of a row that bound off, what is left behind that: 59 less 6, of which 10, less 4.
func TestKnitUntilSoManyAreOnTheRightNeedle(t *testing.T) {
	for _, w := range []string{
		"Cast off 6 sts, k until there are 10 sts on right-hand needle, turn and work on these sts only.",
		"Cast off 6 sts, knit until there are 10 stitches on the right-hand needle, turn, leave rem sts on a holder.",
		"Cast off 6 sts, k until 10 sts on right needle, turn.", "Cast off 6 sts, patt until there are 10 sts on RH needle, turn.",
		"Cast off 6 sts, k until there are 10 sts on needle after cast-off, turn and leave remaining sts on a holder.",
		"K until there are 10 sts on right needle, turn.", "Cast off 6 sts, work until 10 sts are on right needle, turn.",
	} {
		phraseComesTo(t, "Cast on 59 sts.\nRow 1: K to end.\nRow 2: P to end.\nNext row: %s\nNext row: Cast off 4 sts, p to end. (%d sts)\n", w, 6, true)
	}
}

func TestNumbersInWordsMayBeOneASize(t *testing.T) {
	phraseComesTo(t, "Sizes: S (M, L)\nCO 20 (24, 28) sts.\nRow 1: K2, [k1, yo] %s times, k to end. (22, 27, %d sts)\n", "two (three, four)", 32, true)
}

// To where a part of another piece is complete is not where it begins: how many stitches there are then the line itself says.
func TestAsForAnotherPieceUntilAPartIsComplete(t *testing.T) {
	for _, w := range []string{"until armhole shaping has been completed", "to end of armhole shaping", "until armhole shaping is finished"} {
		phraseComesTo(t, "Back\nCast on 99 sts.\nRow 1: K to end.\nShape armholes\nCast off 5 sts at beg of next 2 rows. 89 sts.\nDec 1 st at each end of next 9 rows. 71 sts.\n\n"+
			"Front\nWork as given for back %s. 71 sts.\nNext row: K35, k2tog, k to end. (%d sts)\n", w, 70, true)
	}
}
