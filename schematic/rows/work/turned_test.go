package work

import "testing"

// Short rows that go back to where the work was turned, by the names of both ways of turning (common practice), change no count.
func TestShortRowsGoBackToWhereTheWorkWasTurned(t *testing.T) {
	const text = "Body\nCast on 60 sts.\nRow 1: Knit.\nRow 2: Purl.\n%s\nNext row: P. 60 sts\nNext row: K2tog, k to end. %d sts\n"
	for _, s := range []string{
		"Short row 1 (RS): K40, turn.\nShort row 2 (WS): MDS, p20, turn.\nShort row 3: MDS, k to DS, k DS, k3, turn.\nShort row 4: MDS, p to DS, p DS, p3, turn.\nNext row: MDS, k to end.",
		"Short row 1 (RS): K40, turn.\nShort row 2 (WS): DS, p20, turn.\nShort row 3: DS, k to DS, knit DS as one st, k3, turn.\nNext row: DS, knit to end.",
		"Short row 1 (RS): K40, turn.\nShort row 2 (WS): MDS, p to last 15 sts, turn.\nShort row 3: MDS, k to 5 sts before last DS, turn.\nNext row: MDS, k to end, working DSs as single sts.",
		"Short row 1: K40, w&t.\nShort row 2: P20, w&t.\nShort row 3: K to wrapped st, k wrapped st tog with wrap, k2, w&t.\nNext row: K to end.",
		"Short row 1: K40, w&t.\nShort row 2: P20, w&t.\nShort row 3: K to 3 sts past wrapped st, picking up wrap, w&t.\nNext row: K to end, picking up wraps as you come to them.",
	} {
		phraseComesTo(t, text, s, 59, false)
	}
}

// A toe of 60 that loses 4 in every second round comes to 28 by 8 of them; one more or fewer it does not come to.
func TestRoundsAreRepeatedWithFewerBetweenTheirDecreases(t *testing.T) {
	const text = "Toe\nCast on 60 sts. Join in the round.\nRnd 1: *K1, ssk, k24, k2tog, k1; rep from * once. 56 sts\nRnd 2: Knit.\n%s\nNext rnd: K2tog, k to end. %d sts\n"
	phraseComesTo(t, text, "Rep Rnds 1 and 2, working 2 sts fewer between decreases each time, until 28 sts rem.", 27, true)
}
