package work

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/finding"
)

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
			phraseComesTo(t, text+of+"\n", s, 20, true)
		}
	}
	phraseComesTo(t, text+"each side.\n", "K32, place center st on a safety pin, join a second ball of yarn and knit to end.", 32, true)
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
		phraseComesTo(t, text, s, left, true)
	}
}

// One half alone goes on, and the other waits.
func TestTheOtherHalfOfANeckWaits(t *testing.T) {
	const text = "Back\nCast on 65 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nNext row: %s\nDec 1 st at neck edge every row 3 times. %d sts.\n"
	for _, s := range []string{"K20, turn, leaving remaining 45 sts on a holder.", "K20 and turn, leaving rem 45 sts on spare needle.", "K20, turn and leave rem sts on a stitch holder."} {
		phraseComesTo(t, text, s, 17, true)
	}
}

// 54 stitches: 20 at each side of 14 in the middle. A number that says otherwise is told, once.
func TestWhatRemainsBehindTheMiddleIsCounted(t *testing.T) {
	const text = "Front\nCast on 54 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nNext row: K%d, turn and leave rem sts on a spare needle.\n" +
		"Dec 1 st at neck edge on next 4 rows. %d sts.\nCast off.\nWith RS facing, slip centre %d sts onto a holder, rejoin yarn to rem %d sts, k to end.\n"
	for said, findings := range map[[4]int]int{
		{20, 16, 14, 20}: 0, {20, 16, 12, 20}: 1, {20, 16, 14, 21}: 1,
		{21, 16, 14, 20}: 1, // 17 are left of the first half: the second follows from it
	} {
		rep := Check(Read("t", fmt.Appendf(nil, text, said[0], said[1], said[2], said[3]), Options{}))
		assert.Len(t, rep.Findings, findings, said)
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, said)
	}
}

// A neckband of 22 + 14 + 22 + 30 = 88 stitches, each stretch counted; how many the row before left is not known.
func TestANeckbandOfCountedStretchesIsAddedUp(t *testing.T) {
	const text = "Front\nCast on 54 sts.\nRow 1: Knit.\nComplete to match back.\n\nNeckband\nWith RS facing, pick up and k 22 sts down left side of neck, " +
		"k across %d sts at front, pick up and k 22 sts up right side of neck and k across 30 sts at back neck. 88 sts.\n"
	for front, findings := range map[int]int{14: 0, 13: 1, 15: 1} {
		rep := Check(Read("t", fmt.Appendf(nil, text, front), Options{}))
		assert.Len(t, slices.DeleteFunc(rep.Findings, func(f finding.Finding) bool { return f.Kind != "rows/stated" }), findings, front)
	}
}
