package work

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/finding"
)

// Forms of garments as they are published, counted by hand.
func TestFormsOfCrochetGarmentsAgree(t *testing.T) {
	const base = "Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\nRow 2: Ch 1, turn, sc in each sc across. (20 sc)\n"
	for name, text := range map[string]string{
		"a crossing told in words goes over four":         "Special stitches:\nFC: Skip next 2 sts, fptr in next 2 sts, fptr in 2 sts just skipped.\n" + base + "Row 3: Ch 1, turn, sc in first 8 sts, FC, sc in next 8 sts. (20)\n",
		"a round begins before a space":                   "Terms: US\nCh 40, join with sl st in first ch.\nRound 1: Ch 4 (counts as dc and ch 1), *sk 1 ch, dc in next ch, ch 1; rep from * to last ch, sk last ch, join with sl st in 3rd of ch 4. (20 dc)\nRound 2: Ch 1, *2 sc in next sp, sc in next dc; rep from * around, join with sl st in first sc. (60 sc)\n",
		"rows in all, the first times among them":         base + "Row 3: Ch 1, turn, 2 sc in first sc, sc in each sc across. (21 sc)\nRow 4: Ch 1, turn, sc in each sc across. (21 sc)\nRepeat last two rows a total of 3 times. (23 sc)\n",
		"rows in all, beyond the first times":             base + "Row 3: Ch 1, turn, 2 sc in first sc, sc in each sc across. (21 sc)\nRow 4: Ch 1, turn, sc in each sc across. (21 sc)\nRepeat last two rows a total of 3 times. (24 sc)\n",
		"steps in a list under a label":                   base + "Rows 3-4:\n1. Ch 1, turn.\n2. Sc in each sc across. (20 sc)\nRow 5: Ch 1, turn, 2 sc in first sc, sc in each sc across. (21 sc)\n",
		"what each size measures, in brackets of its own": "Sizes: XS (32 inch bust), S (34 inch bust), M (36 inch bust)\nTerms: US\nCh 21 (23, 25).\nRow 1: Sc in 2nd ch from hook and in each ch across. 20 (22, 24) sc\n",
		"numbered materials":                              "Materials:\n1) 1 FULL skein of worsted yarn\n2) 5 mm hook\nDirections:\n" + base,
		"twice into the last stitch":                      base + "Row 3: Ch 3 (counts as dc), turn, dc in next 18 sts, [ch 1, dc] twice in last st. (21 dc)\n",
		"small spaces count, the corner does not":         "Terms: US\nCh 4, join.\nRow 1: Ch 3 (counts as dc), (4 dc, ch 2, 5 dc) in ring. Turn. (10 dc)\nRow 2: Ch 3 (counts as dc), dc in first dc, (ch 1, skip next dc, dc in next dc) twice, (dc, ch 2, dc) in ch-2 sp, (dc in next dc, ch 1, skip next dc) twice, 2 dc in last dc. Turn. (14 sts)\n",
		"the stitch under the chain is passed":            base + "Row 3: Ch 2 (counts as hdc), turn, skip st, hdc in each st across. (20 hdc)\n",
		"a repeated row names the stitches it had":        base + "Row 3: Ch 3 (counts as dc), turn, dc in each sc across. (20 dc)\nRows 4-5: Repeat row 3.\nRow 6: Repeat row 5.\n",
		"into the space in which the round begins":        "Terms: US\nCh 30, join.\nRound 1: Ch 1, *sc in next ch, ch 3; rep from * around, join. (30 ch-3 spaces)\nRounds 2-5: Sl st into the next ch-3 space, ch 1, *sc in next ch-3 space, ch 3; rep from * around, join. (30 ch-3 spaces)\n",
		"another part comes next":                         base + "Do not fasten off! Proceed directly to 'Neckline decrease' instructions.\nNeckline\nRow 3: Ch 1, turn, sc in each sc across. (20 sc)\n",
		"stitches of a row further down":                  base + "Row 3: Ch 1, turn, sc in first 15 sc, leaving rem 5 sc unworked.\nRow 4: Ch 1, turn, sc in next 15 sc.\nRow 5: Ch 1, turn, sc in next 15 sc, sc in next 5 sc 2 rows below. (20 sc)\n",
		"the last space is told behind the repeat":        "Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook, *ch 3, sk 3 ch, sc in next ch; rep from * across to last 3 ch, ch 3, sk 2 ch, sc in last ch. (5 ch-3 sps)\nRow 2: Ch 3 (counts as dc), turn, *3 dc in next ch-3 sp; rep from * across, end 2 dc in last ch-3 sp, dc in last sc. (16 dc)\n",
		"a count on a line of its own":                    "Sizes: S (M, L)\nTerms: US\nRow 1 (WS): Ch 17 (19, 21), sc in 2nd ch from hook, sc in each rem ch across, turn.\n\n16 (18, 20) sc.\n\nRow 2 (RS): Ch 1, sc in each sc across to last sc, 2 sc in last sc, turn.\n\n17 (19, 21) sc\n\nRow 3: Ch 1, sc in each sc across. 17 (19, 21) sc\n",
		"numbered steps that are no rows":                 "Prepare\n1. Flatten and smooth out the bag.\n2. Remove handles and bottom of bag.\nBag\n" + base,
		"a ring closed by half a tall stitch":             "Terms: UK\nMagic ring.\nRound 1: 3ch, 47tr into ring. Join to third ch of initial 3ch. [48st]\nRound 2: 1ch, 1dc in same st. *ch3, miss 1 stitch, 1dc in next; rep from * around until the second to last stitch. Make a half tr into beginning dc. [24 chain spaces]\n",
		"joins and rows by short names":                   "Terms: US\nMagic ring.\nRound 1: Ch 1, 8 hdc in ring, jn to first hdc. (8)\nRound 2: Ch 1, 2 hdc in ea st, jn. (16)\n",
		"the chain of a mesh is not among its counts":     "Terms: UK\nSHAWL\nWork 30 ch.\nROW 1: 1 tr in 9th ch from hook, * 2 ch, skip 2 ch, 1 tr in next ch *, repeat from *-* 6 more times = 8 tr. Turn.\nROW 2: 5 ch, 1 tr in next tr, * 2 ch, 1 tr in next tr *, repeat from *-* 5 more times, 2 ch, skip 2 ch, 1 tr in next ch = 8 tr. Turn.\n",
		"a label glued to its row":                        "Terms: US\nHead\n1. 6 sc in magic ring (6)\n2. 6 inc (12)\n3. (sc, inc) x 6 (18)\n4. (2 sc, inc) x 6 (24)\n5.1 sc, inc, (3 sc, inc) x 5, 2 sc (30)\n6.3 sc, (dec, 6 sc) x 3, dec, 1 sc (26)\n",
		"a remark before the place":                       "Terms: US\nCh 4 (3 sk chs count as dc).\nRow 1: 8 dc (counts as fan) in 4th ch from hook, turn. (9 dc)\nRow 2: Ch 3 (counts as dc), dc in each dc across. (9 dc)\n",
		"a chain of four is a dc and a space":             "Terms: US\nCh 17.\nRow 1: Dc in 4th ch from hook (3 skipped ch count as dc), dc in each ch across. (15 dc)\nRow 2: Ch 4, turn, dc in first dc, *ch 1, skip next dc, dc in next dc; rep from * across. (9 dc)\n",
		"down the chain and back in sentences":            "Terms: US\nCh 9.\nRnd 1: Sc in 2nd ch from hook. Sc down the chain. 3 sc in last ch. Sc down other side. 2 sc in last ch. (18)\nRnd 2: 2 sc in each of first 2 sc, sc in next 16 sc. (20)\n",
		"brackets that only name brackets":                "Terms: US\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x 6 (12)\nRnd 3: [sc, inc] rep bet [ ] 6 times (18)\nRnd 4: (2 sc, inc) rep between ( ) to end (24)\nRnd 5: 3 blue sc, 3 white sc, 18 blue sc (24)\n",
		"all but the last":                                base + "Row 3: Ch 1, turn, sc in each sc across except 2 sc in last st. (21 sc)\nRow 4: Ch 1, turn, sc in each st except the last, 2 sc in last st. (22 sc)\n",
		"into a chain that was just added":                base + "Row 3: Ch 1, turn, sc in each sc across, using a separate length of wool to make 7 ch from base of sc just worked. Now work 1 sc in each ch to end. (27 sc)\n",
		"the foundation chain is called round 1":          "Terms: US\nRnd 1: Ch 16.\nRnd 2: Sc in 2nd ch from hook and each of next 13 ch, 3 sc in next ch, working in other side of chain, sc in each of next 13 ch, 2 sc in next ch. (32 sc)\n",
		"a chain goes into a place with its stitches":     "Terms: US\nRnd 1: 12 dc in magic ring, join. (12 dc)\nRnd 2: Ch 1, 2 dc, ch 1 in first st, (2 dc, ch 1) in each of next 11 sts, sl st with first dc. (24 dc)\n",
		"joined to the third of the first chain":          "Terms: US\nRnd 1: 10 hdc in magic ring (10)\nRnd 2: Ch 4 (counts as dc and ch 1), dc in same st, (dc, ch 1, dc) in each of next 9 sts, sl st in 3rd ch from ch 4 at beginning of round.\nRnd 3: Dc in any ch-1 space, (dc, ch 1, 2 dc) in same space, (2 dc, ch 1, 2 dc) in each of next 9 ch-1 spaces. Sl st in top of the standing dc at beginning of the round.\n",
		"one chain to close a leg":                        "Terms: US\nRnd 1: 6 sc in magic ring (6)\nRnds 2-9: Sc around (6)\nThis completes the first leg - chain 1, place a stitch marker in this stitch and fasten off.\nRnd 10: Sc around (6)\n",
		"a row that a column of print cuts":               "Terms: US\nCh 27.\n1st row: (RS). 1 dc in 4th ch from \nhook (skipped ch-3 counts as dc). \nCh 1. Skip next 2 ch. 3 dc in next \nch. *Ch 1. Skip next 3 ch. 3 dc in \nnext ch. Rep from * to last 4 ch. \nCh 1. Skip next 2 ch. 1 dc in each of \nlast 2 ch. Turn.\n2nd row: Ch 3 (counts as dc). 3 dc \nin first ch-1 sp. *Ch 1. 3 dc in next \nch-1 sp. Rep from * to last 2 sts. Skip \nnext dc. 1 dc in top of ch 3. Turn.\n3rd row: Ch 3 (counts as dc). 1 dc in \nfirst dc. *Ch 1. 3 dc in next ch-1 sp. \n\nRep from * to last st. Ch 1. 2 dc in \ntop of ch 3. Turn.\n",
		"repeat across behind a skip":                     base + "Row 3: Ch 4 (counts as dc and ch 1), turn. Skip 1 st, 1 dc in next st, ch 1, skip 1 st, repeat across.\nRow 4: Ch 3 (counts as dc), turn, 2 dc in each ch-1 space across, dc in top of turning ch.\n",
		"a bracket says what it made":                     "Terms: US\nCh 15.\nFoundation row: (1 dc. Ch 1. 1 dc - V-st made) in 6th ch from hook (skipped ch-5 counts as 1 dc and 2 skipped ch). *Skip next 2 ch. V-st in next ch. Rep from * to last 3 ch. Skip next 2 ch. 1 dc in last ch. 3 V-sts. Turn.\n1st row: Ch 3 (counts as dc). V-st in ch-1 sp of each V-st to end of row. 1 dc in top of turning ch. Turn.\n",
		"increases by a sign without a space":             "Terms: US\nR1: 6 sc in magic ring (6)\nR2: incx3, 2 hdc in next 3 sts (12)\nR3: Increase 1 stitch in every other stitch (18)\n",
		"yarns by number":                                 "Terms: US\nCh 4. Insert hook into the 1st ch to make a ring.\nR1: Ch 3 (counts as dc), 11 dc in ring, join (12 dc)\nR2: Join contrast color 2, ch 3 (counts as dc), dc in same st, 2 dc in each of next 11 sts, join (24 dc)\n",
		"the chain of its own row is named":               "Terms: US\nCh 12.\nRow 1: Dc in 4th ch from hook (ch 3 counts as first dc) and each ch to end. (10 dc)\nRow 2: Ch 2 (counts as 1st dc), turn, dc in each st to last st, dc in top of ch 2. (10 dc)\nRows 3-5: Repeat row 2.\n",
	} {
		rep := Check(Read("t", []byte(text), Options{}))
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, name)
		for _, f := range rep.Findings {
			assert.Equal(t, finding.Note, f.Severity, "%s: %d: %s", name, f.Pos.Line, f.Message)
			assert.NotEqual(t, "rows/not-read", f.Kind, "%s: %d: %s", name, f.Pos.Line, f.Message)
		}
	}
}
