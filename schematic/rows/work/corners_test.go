package work

import "testing"

// Corners that a row below opens with chains are spaces, wherever they are named. Counted by hand: each of four corners of a square of 12
// dc takes 6 dc, or 3 sc or 4 dc beside the 3 stitches of a side.
func TestCornersAreTheSpacesThatAreThere(t *testing.T) {
	const square = "Terms: US\nCh 4, join with sl st in first ch to form ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)\nRnd 2: %s %d "
	for of, ways := range map[string][]string{
		"24 dc": {
			"Sl st in next 2 dc and next sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next corner; rep from * around, join.",
			"Sl st to corner, ch 3, (2 dc, ch 2, 3 dc) in same corner, *(3 dc, ch 2, 3 dc) in next corner; rep from * around, join.",
			"Sl st to corner, ch 3, (2 dc, ch 2, 3 dc) in same corner, ch 1, *(3 dc, ch 2, 3 dc) in next corner, ch 1; rep from * around, join.",
			"Join yarn in any corner, ch 3, (2 dc, ch 2, 3 dc) in same corner, ch 1, *(3 dc, ch 2, 3 dc) in next corner, ch 1; rep from * around, join.",
		},
		"24 sc": {
			"Ch 1, sc in each st around with 3 sc in each corner. Join.",
			"Ch 1, sc in each dc around and 3 sc in each corner, join.",
			"Ch 1, sc in each dc around, working 3 sc in each corner, join.",
			"Ch 1, sc in each dc to corner, 3 sc in corner, *sc in each dc to next corner, 3 sc in corner; rep from * around.",
		},
		"28 dc": {
			"Ch 3, dc in each dc around, (2 dc, ch 2, 2 dc) in each corner, join.",
			"Ch 3, dc in each dc around, working (2 dc, ch 2, 2 dc) in each corner sp; join.",
			"Ch 3, dc in each dc around with (2 dc, ch 2, 2 dc) in each ch-2 sp, join.",
		},
	} {
		n := int(of[0]-'0')*10 + int(of[1]-'0')
		for _, w := range ways {
			phraseComesTo(t, square+of[3:]+"\n", w, n, true)
		}
	}
	phraseComesTo(t, square+"dc, 4 corner sps, 4 ch-1 sps.\n", "Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * twice, ch 1, join.", 24, true)
	phraseComesTo(t, square+"dc, 6 dc each side.\n", "Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around, join.", 24, true)
}

// A chain may be told with what it has more for the turn, and a buttonhole is the space that its chains make. Counted by hand.
func TestChainsToldWithThoseForTheTurn(t *testing.T) {
	for _, w := range []string{"Ch 20 + 1 for turning", "Ch 20 + 1", "Ch 20, plus 1 for turning ch", "Ch 20 (plus 1 for turning ch)", "Ch 20 plus 1 turning ch", "Ch 20, plus 1 extra to turn"} {
		phraseComesTo(t, "Terms: US\n%s.\nRow 1: Sc in 2nd ch from hook and across, turn. (%d sc)\n", w, 20, true)
	}
	const dc = "Terms: US\nCh 22.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (20 dc)\nRow 2: Ch 3 (counts as dc), %s (%d dc)\n"
	for _, w := range []string{
		"dc in 2nd dc and in each dc across, ending dc in top of ch 3.", "turn, dc in 2nd st and each st across, including top of turning ch.",
		"dc in second dc, dc in each dc across to turning ch, dc in top of turning ch.",
	} {
		phraseComesTo(t, dc, w, 20, true)
	}
	const band = "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40 sc)\nRow 2: Ch 1, sc 3, ch 2, sk 2, sc 6, ch 2, sk 2, sc 27.\nRow 3: Ch 1, %s (%d sc)\n"
	for _, w := range []string{"sc across, working 2 sc in each buttonhole.", "sc in each sc and 2 sc in each buttonhole across.", "sc in next 27 sc, 2 sc in next buttonhole, sc in next 6 sc, 2 sc in next buttonhole, sc in each sc to end.", "sc in each sc, 2 sc in each ch-2 sp.", "sc in each sc and in each ch across."} {
		phraseComesTo(t, band, w, 40, true)
	}
	const mesh = "Terms: US\nCh 24.\nRow 1: Dc in 6th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep from * across, turn. (10 ch-1 sps)\nRow 2: Ch 4 (counts as dc, ch 1), %s %d ch-1 sps.\n"
	for _, w := range []string{
		"sk first ch-1 sp, dc in next dc, *ch 1, sk next ch-1 sp, dc in next dc; rep from * across, ending with dc in 3rd ch of turning ch.",
		"dc in next dc, *ch 1, dc in next dc; rep from * across, ending with dc in top of turning ch.",
	} {
		phraseComesTo(t, mesh, w, 10, true)
	}
}
