package rows

import "testing"

// A neck that is opened in a row of 65: 20 or 22 at each side of what is bound off or held. What is stated of each side is of both.
func TestANeckOpensBetweenTwoHalves(t *testing.T) {
	const text = "Back\nCast on 65 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nNext row (RS): %s %d sts " // the rest says of which
	for _, s := range []string{
		"K20, join a second ball of yarn and BO center 25 sts, knit to end.", "K20, join second ball of yarn, BO 25 sts, k20.", "K20; cast off centre 25 sts; k to end.",
		"K20 sts, place center 25 sts on holder, join 2nd ball of yarn, k to end.", "K20, slip next 25 sts to a holder for neck, join new yarn, k20.",
		"Knit 20, attach a second ball of yarn, bind off next 25 sts, knit to end.", "Work 20 sts, join another ball of yarn and bind off center 25 sts, work to end.",
		"K20, join a new ball of yarn, bind off the center 25 sts, knit to end of row.",
	} {
		for _, of := range []string{"each side.", "rem each side.", "at each side.", "on each side of neck.", "remain on each side of neck.", "each shoulder.", "rem for each shoulder."} {
			comesTo(t, text+of+"\n", s, 20, true)
		}
	}
	comesTo(t, text+"each side.\n", "K32, place center st on a safety pin, join a second ball of yarn and knit to end.", 32, true)
}

// The halves go on: shapings at each neck edge take from both, and a row goes up to the edge between them.
func TestBothHalvesOfANeckAreShaped(t *testing.T) {
	const text = "Back\nCast on 65 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nNext row (RS): K22, join 2nd ball of yarn, BO center 21 sts, k to end.\n%s %d sts each side.\n"
	for s, left := range map[string]int{
		"Next row: Purl across both sides.": 22,
		"Working both sides at once with separate balls of yarn, BO 2 sts at each neck edge once.":                                            20,
		"Dec 1 st at each neck edge every row 3 times.":                                                                                       19,
		"Next row: P22; with other ball, p22.\nDec 1 st at neck edges every other row twice.":                                                 20,
		"Working both sides at the same time, dec 1 st at each neck edge every RS row 2 times.":                                               20,
		"Next row: P to 2 sts before neck, p2tog; p2tog tbl, p to end.":                                                                       21,
		"Next row: P to 2 sts before neck, p2tog; p2tog tbl, p to end.\nNext row: K to 3 sts before neck edge, k2tog, k1; k1, ssk, k to end.": 20,
		"Next row (WS): Purl.\nDec row (RS): K to 3 sts before neck edge, k2tog, k1; with second ball, k1, ssk, k to end.":                    21,
		"Next row (WS): Purl.\nDec row (RS): K to last 3 sts of left side, k2tog, k1; on right side, k1, ssk, k to end.":                      21,
	} {
		comesTo(t, text, s, left, true)
	}
}

// One half alone goes on, and the other waits.
func TestTheOtherHalfOfANeckWaits(t *testing.T) {
	const text = "Back\nCast on 65 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nNext row: %s\nDec 1 st at neck edge every row 3 times. %d sts.\n"
	for _, s := range []string{"K20, turn, leaving remaining 45 sts on a holder.", "K20 and turn, leaving rem 45 sts on spare needle.", "K20, turn and leave rem sts on a stitch holder."} {
		comesTo(t, text, s, 17, true)
	}
}
