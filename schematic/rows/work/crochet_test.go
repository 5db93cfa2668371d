package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Each text is right and read whole as it stands, and has one finding with the second word for the first: the counts were added up by
// hand, in forms of common practice.
func TestFormsOfCrochetAreReadAndCounted(t *testing.T) {
	for name, c := range map[string]struct{ text, is, not string }{
		"a stretch between stars that is worked so often": {"Terms: US\nCh 44.\nRow 1: Sc in 2nd ch from hook and in each ch across. (43 sc)\n" +
			"Row 2: Ch 1, sc in first st, *sc in next 2 sts, 2 sc in next st* work 14 times. (57 sc)\n", "(57 sc)", "(56 sc)"},
		"an increase and a decrease in full words": {"Terms: US\nCh 11.\n1.row: Sc in 2nd ch from hook and in each ch across. (10 sc)\n2.row: Ch 1, turn. *Single crochet 4, single crochet increase; repeat from * once more. (12 sc)\n" +
			"3.row: Ch 1, turn. Single crochet in next 10 sts, single crochet decrease. (11 sc)\n", "(12", "(10"},
		"the gap behind the chain of a round on a ring": {"Terms: US\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: Ch 3, dc between dc, ch 1, (dc in dc, dc between dc, ch 1) 11 times, join. (24 dc)\nRnd 3: Ch 1, sc in each dc and ch-1 sp around, join. (36 sc)\n", "(36", "(35"},
		"numbers of rows with a stop behind each": {"Terms: US\nCh 11.\n1. Sc in 2nd ch from hook and in each ch across. (10 sc)\n2. Ch 1, sc in each st. (10)\n3. – 5. Ch 1, sc in each st. (10)\n" +
			"6. Ch 1, 2 sc in first st, sc in each st. (11)\n", "(11)", "(13)"},
		"so many rows in all": {"Terms: US\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\nRow 2: Ch 1, sc in each st across. (10 sc)\n" +
			"Row 3: Ch 1, hdc in each st across. (10 hdc)\nRepeat rows 2 & 3 for a total of 16 rows.\nRow 17: Ch 1, sc in each st across. (10 sc)\n", "Row 17", "Row 18"},
		"so many rows of a part": {"Terms: US\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\nRows 2-20: Ch 1, sc in each st across. (10 sc)\nNeck\n" +
			"Row 21: Ch 1, sc in next 4 sts, turn. Leave remaining sts unworked. (4 sc)\nRep Row 21 until you have a total of 5 rows for the neck.\n", "Leave remaining sts unworked. (4 sc)", "Leave remaining sts unworked. (6 sc)"},
		"the second side of a neck": {"Sizes: S (M, L)\nTerms: UK\nMake 41 (51, 61) ch.\nRow 1: 1dc in 2nd ch from hook, 1dc in each ch to end. [40 (50, 60) sts]\nFirst side of neck\n" +
			"Row 2: 1ch, 1dc in each of next 15 (20, 25) sts, turn. [15 (20, 25) sts]\nRow 3: 1ch, 1dc in each st. [15 (20, 25) sts]\nSecond side of neck\n" +
			"Count 10 sts over from first side and attach yarn to next st.\nRow 2: 1ch, 1dc in same st, 1dc in each st to end. [15 (20, 25) sts]\n", "to end. [15 (20, 25) sts]\n", "to end. [15 (20, 24) sts]\n"},
		"sizes parted by dashes in a bracket": {"Sizes: XS/S (M-L-XL-2/3XL-4/5XL)\nTerms: US\nCh 11 (13-15-17-19-21).\nRow 1: Sc in 2nd ch from hook and in each ch across. 10 (12-14-16-18-20) sc.\n", "16-18", "17-18"},
		"chains in a yarn":                    {"Terms: UK\nMake 31 chain in the white wool.\n1st row: Miss 1 ch, 1 d.c. in each ch. (30 d.c.)\n", "(30", "(31"},
		"slip stitches along so many": {"Terms: UK\n31ch.\nRow 1: 1dc in 2nd ch from hook, 1dc in each ch to end. 30dc.\n" +
			"Next row: Sl st along 4 sts, 4dc, 4htr, 1tr in each st to last 12 sts, 4htr, 4dc, 4 sl sts. (30 sts)\n", "(30 sts)", "(29 sts)"},
		"even in a stitch beside the standard's": {"Terms: US\nCh 31.\nRow 1: Esc in 2nd ch from hook and in each ch across, turn—30 sts.\nRow 2: Ch 1, esc across, turn. Cont even in esc until piece measures 5\" from beg.\n" +
			"Next row: Ch 1, skip first st, esc across. (29 sts)\n", "turn—30", "turn—31"},
		"into the bar below a stitch": {"Terms: US\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across. (30)\nRow 2: Ch 1, working in back loop only of each st, sc in each sc of row 1. Turn. (30)\n" +
			"Row 3: Ch 1, sc in horizontal bar created below stitch in previous row in each sc to last sc, 2 sc in last sc. (31)\n", "(31)", "(32)"},
		"a round for each hand": {"Terms: US\nCh 28, join with sl st in first ch.\nRnd 1: Ch 1, sc in each ch around, join. (28 sc)\nRnd 2 (right hand): Ch 1, sc in next 20 sts, ch 6, skip 6 sts, sc in 2 sts, join. (22 sc, one ch-6 loop)\n" +
			"Rnd (left hand) 2: Ch 1, sc in next 2 sts, ch 6, skip 6 sts, sc in 20 sts, join. (22 sc, one ch-6 loop)\nRnd 3: Ch 1, sc in each st and ch, join. (28 sc)\n", "sc in 20 sts", "sc in 21 sts"},
		"stitches over a row further down": {"Terms: US\nCh 6, join to form a ring.\nRnd 1: Ch 1, 16 sc in ring, join. (16 sc)\nRnd 2: Ch 6 (counts as dc and ch 3), skip 1 sc, dc in next sc, *ch 3, skip 1 sc, dc in next sc; repeat from * 5 times, ch 3, join in 3rd ch of ch-6. (8 dc)\n" +
			"Rnd 3: Ch 1, *3 sc in next loop, ch 3, 3 sc in same loop; repeat from * all around, join. (48 sc)\nRnd 4: Ch 3 (counts as dc), dc in same space, *ch 7, 2 dc over dc of 2nd row; repeat from * 6 times, ch 7, join. (16 dc)\n", "(48 sc)", "(47 sc)"},
		"a length and with which row it ends": {"Terms: US\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in each st, turn.\nRow 3: Ch 1, hdc in each st, turn.\n" +
			"Repeat Rows 2 and 3 for the pattern. Work until the piece measures 6 inches, ending with row 3.\nNext row: Ch 1, sc in each st. (10 sc)\n", "each st. (10 sc)", "each st. (8 sc)"},
		"a round that begins with its increase": {"Terms: US\nCh 4, join to form a ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: Ch 3, dc in same st, 2 dc in each dc around, join. (24 dc)\n" +
			"Rnd 3: Ch 3, dc in same st, *dc in next st, 2 dc in next st; rep from * to end, join.\nRnd 4: Ch 3, dc in same st, *dc in next 2 sts, 2 dc in next st; rep from * to end, join. (48 dc)\n", "(48 dc)", "(46 dc)"},
		"sizes told in a sentence": {"Terms: US\nDirections are for Small; changes for Medium and Large are in parentheses.\nCh 65 (73, 81).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn – 64 (72, 80) sc.\n" +
			"Row 2: Ch 1, *sc in next 6 sc, sc2tog; repeat from * across – 56 (63, 70) sc.\n", "56 (63", "56 (62"},
		"blocks from corner to corner": {"Terms: US\nCh 6.\nRow 1: Dc in 4th ch from hook (counts as 2 dc), dc in each of last 2 ch. Turn. (1 block made)\n" +
			"Row 2: Ch 6, dc in 4th ch from hook, dc in each of next 2 ch – beg block made. (Sl st, ch 3, 3 dc) in next ch-3 sp – block made. Turn. (2 blocks)\n" +
			"Row 3: Beg block. *Block in next ch-3 sp. Rep from * to end of row. Turn. (3 blocks)\nRow 4: As Row 3, increasing 1 block in each row. (4 blocks)\nRep last row until there are 20 blocks.\n" +
			"Row 21: Sl st in each of first 3 dc. *Block in next ch-3 sp. Rep from * to end of row. Turn.\n", "(3 blocks)", "(4 blocks)"},
		"blocks that are not named": {"Terms: UK\nRow 1: 6ch, 1tr in 4th ch from hook, 1tr in next 2 ch. (1 tile)\nRow 2: 6ch, turn. 1tr in 4th ch from hook, 1tr in next 2 ch, (ss, 3ch, 3tr) in 3ch-sp of previous tile. (2 tiles)\n" +
			"Row 3: 6ch, turn. 1tr in 4th ch from hook, 1tr in next 2 ch, *s/s in next 3ch-sp, 3ch, 3tr in same sp; rep from * across. (3 tiles)\n", "(3 tiles)", "(2 tiles)"},
		"raised stitches by their initials": {"Terms: US\nCh 21.\nRow 1: Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch across. (19 dc)\n" +
			"Row 2: Ch 1, 1FPS around first st, *1 BPS around next st, dc tbl only in next 2 sts; rep from * across, ending 1 dc in each of last 3 sts. (19 sts)\n", "(19 sts)", "(17 sts)"},
		"another stitch in the last": {"Terms: US\nCh 24.\nRow 1: Dc in 6th ch from hook, *ch 1, skip 1 ch, dc in next ch; rep from * across, turn. (21 sts)\n" +
			"Row 2: Ch 4 (counts as dc and ch 1), dc in next dc, *ch 1, dc in next dc; rep from * across, work another dc in last st, turn. (22 sts)\n", "(22 sts)", "(24 sts)"},
		"into the first chain of a ring":            {"Terms: UK\nCh 4, ss in first ch to form a ring.\nRound 1: 3ch (counts as 1tr), 19 tr in first ch, ss in top of 3ch. (20 tr)\nRound 2: 1ch, 1dc in each tr, ss in first dc. (20 dc)\n", "(20 dc)", "(22 dc)"},
		"stitches distributed along an edge":        {"Terms: UK\nCh 21.\nRow 1: 1dc in 2nd ch from hook and in each ch. (20 dc)\nEdging\nRow 1: Evenly distribute 84dc along the edge, turn. (84 dc)\nRow 2: 1ch, 1dc in each dc, turn.\nRow 3: As row 2. (84 dc)\n", "2. (84 dc)", "2. (82 dc)"},
		"a dash run together with number and chain": {"Terms: US\nCh 21.\n1-Sc in 2nd ch from hook and in each ch across. (20)\n2-ch1, sc in each st. (20)\n3-ch1, 2 sc in each st. (40)\n", "(40)", "(38)"},
		"on the opposite side of row 1": {"Terms: US\nRnd 1: Ch 9, sc in 2nd ch from hook, sc in next 6 ch, 3 sc in last ch, on opposite side of row 1, sc in next 6 ch, 2 sc in last ch. (18 sc)\n" +
			"Rnd 2: Inc, sc 6, inc 3, sc 6, inc 2. (24)\n", "(24)", "(26)"},
		"a list of short names in one line": {"Terms: US\nAbbreviations: sc: single crochet, sh: shell (5 dc in same st), ch: chain, st: stitch\nCh 26.\n" +
			"Row 1: Sc in 2nd ch from hook, *skip 2 ch, sh in next ch, skip 2 ch, sc in next ch; rep from * across. (4 sh, 5 sc)\n", "(4 sh,", "(5 sh,"},
		"stitches that the text defines in words": {"Terms: US\nSpecial stitches:\n2V-st: (2 dc, ch 1, 2 dc) in same st.\n" +
			"Clus st: Yo, insert hook in st, pull up a loop, yo, pull through 2 loops, [yo, insert hook in same st, pull up a loop, yo, pull through 2 loops] twice, yo, pull through all 4 loops.\nCh 22.\n" +
			"Row 1: Sc in 2nd ch from hook and in each ch across. (21 sc)\nRow 2: Ch 3 (counts as dc), *skip next st, 2V-st in next st, skip next st, Clus st in next st; rep from * across. (5 2V-sts, 5 Clus sts, 1 dc)\n", "5 2V-sts", "4 2V-sts"},
		"numbers run together with a stop and a dash": {"Terms: US\n1. 6 sc in magic ring (6)\n2. inc around (12)\n3. (sc, inc) around (18)\n4.-11 Sc around. (18)\n12. (sc 1, dec) around (12)\n", "(12)\n3.", "(13)\n3."},
		"a decrease written large":                    {"Terms: US\n1. MC 8 [8]\n2. Inc x8 [16]\n3. *Sc, inc* x8 [24]\n4. *2 sc, inc* x8 [32]\n5. *2 sc Dec* x8 [24]\n6. *sc Dec* x8 [16]\n", "[24]\n6", "[23]\n6"},
		"the stitch behind those that are skipped": {"Terms: UK\nRound 1: 6dc in magic ring. (6)\nRound 2: 2dc in each st. (12)\nRound 3: 2dc in each st. (24)\n" +
			"Round 4: Skip 2 stitches and 3tr into third stitch. Repeat 7 times. (24)\n", "times. (24)", "times. (26)"},
		"the space before the next shell": {"Terms: US\nSpecial stitches: Shell: [sc, ch 2, sc] in same place.\nCh 33.\n" +
			"Row 1: Shell in 3rd ch from hook, sk 1 ch, *shell in next ch, sk 1 ch; rep from * across, sc in last ch, turn. (15 shells)\nRow 2: Ch 2, shell in each shell across, turn. (15 shells)\n" +
			"Row 3: Ch 2, *shell in next shell; rep from * 4 times, sc in sp before next shell, shell in next shell, sc in sp before next shell, shell in each shell across, turn. (15 shells, 2 sc)\n", "(15 shells, 2 sc)", "(17 shells, 2 sc)"},
		"Tunisian rows with a return pass": {"Terms: US\nCh 20.\nRow 1 (Forward): Pick up a loop in 2nd ch from hook and in each ch across. (20 loops on hook)\nRow 1 (Return): Yo, pull through 1 loop, *yo, pull through 2 loops; rep from * across.\n" +
			"Row 2: Tss in next st and in each st across. (20 loops) Return: Ch 1, *yo, pull through 2 loops; rep from * to end.\nRow 3: *Tks in next st, Tps in next st; rep from * to last st, Tss in last st. Return as usual. (20 sts)\n" +
			"Row 4: Tss2tog, Tss in each st across to last st, end st. Return. (19 sts)\n", "(19 sts)", "(18 sts)"},
		"Tunisian rows in UK words": {"Terms: UK\nCh 20.\nRow 1: FwdP: pick up a loop in 2nd ch from hook and in each ch to end. 20 sts. RetP: 1ch, *yrh, pull through 2 loops; rep from * to end.\nRow 2: FwdP: 1Tss in each st to end. RetP.\n" +
			"Row 3: FwdP: Tss2tog, 1Tss in each st to end. RetP. 19 sts.\n", "RetP. 19 sts", "RetP. 18 sts"},
		"a Tunisian foundation told in words": {"Terms: US\nCh 38.\nFoundation row: Insert hook in 2nd ch from hook, yo, draw up a loop. Repeat in each ch across, leaving all loops on hook. (38 loops on hook)\n" +
			"Return pass: Yo, draw through one loop on hook. *Yo, draw through 2 loops on hook.* Rep * to * until only 1 loop remains on hook.\n" +
			"Row 1: Tss in next 5 sts. *(Tss2tog, ch 1) twice. Tss in next 4 sts.* Rep * to * 3 more times, working last Tss through outer 2 strands of vertical loop at the end.\nReturn pass\n", "Ch 38", "Ch 39"},
		"chains of a mesh that are worked as stitches": {"Terms: US\nNote: Ch 2 at beg of row does not count as a st.\nCh 32.\nRow 1: Sc in 2nd ch from hook and in each ch. Turn. (31 sc)\nRow 2: Ch 1. Sc in first sc. *Ch 1. Skip next sc. Sc in next sc. Rep from * to end. Turn.\n" +
			"Row 3: Ch 2. 2 hdc in first st. Hdc in each st to last st. 2 hdc in last st. Turn. (33 hdc)\nRow 4: Ch 2. Hdc in each st. (33 hdc)\n", "last st. Turn. (33 hdc)", "last st. Turn. (32 hdc)"},
		"spaces of a mesh that are named by another size": {"Terms: US\nCh 32.\nRow 1: Sc in 2nd ch from hook and in each ch. Turn. (31 sc)\nRow 2: Ch 1. Sc in first sc. *Ch 1. Skip next sc. Sc in next sc. Rep from * to end. Turn.\n" +
			"Row 3: Ch 1, sc in each st and in each ch-1 sp across. (31 sc)\n", "each ch-1 sp", "each ch-2 sp"},
	} {
		t.Run(name, func(t *testing.T) {
			x := Read("t.txt", []byte(c.text), Options{})
			assert.Equal(t, x.Read.Lines, x.Read.Whole)
			assert.Empty(t, Check(x).Findings)
			assert.Equal(t, 1, strings.Count(c.text, c.is))
			assert.Len(t, check(strings.Replace(c.text, c.is, c.not, 1)), 1)
		})
	}
}
