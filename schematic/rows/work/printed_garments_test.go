package work

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
)

// warnings are the findings of a text without its questions.
func warnings(text string) finding.List {
	return slices.DeleteFunc(check(text), func(f finding.Finding) bool { return f.Severity == finding.Note })
}

// Ways in which patterns of crocheted garments are printed, each right as it stands, and wrong with the second word for the
// first: the counts were added up by hand.
func TestCrochetedGarmentsAreCountedHoweverTheyArePrinted(t *testing.T) {
	const twenty = "Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n"
	const treble = "Terms: UK\nBack\nMake 20 ch.\nRow 1: 1 tr in 4th ch from hook (3 skipped chs count as tr), 1 tr in each ch to end. 18 sts.\n"
	const shells = "Terms: US\nSpecial Stitches\nShell (sh): 5 dc in same st.\n\nCh 20.\nRow 1: Sc in 2nd ch from hook, *sk 2 ch, sh in next ch, sk 2 ch, sc in next ch; rep from * across. (4 sc, 3 sh)\n"
	const ten = "Terms: US\nMake a magic ring.\nRnd 1: Ch 1 (does not count as a st), 10 hdc in ring, join with sl st to first hdc. (10 sts)\n"
	for name, c := range map[string]struct{ text, is, not string }{
		"a count behind 1 tr in top of 3 ch":                                                   {treble + "Row 2: 3 ch (counts as tr), miss first tr, 1 tr in each tr to end, 1 tr in top of 3 ch. 18 sts\n", "1 tr in top of 3 ch. 18 sts", "1 tr in top of 3 ch. 17 sts"},
		"a count behind 1 tr in top of turning ch":                                             {treble + "Row 2: 3 ch (counts as tr), miss first tr, 1 tr in each tr to end, 1 tr in top of turning ch. 18 sts.\n", "1 tr in top of turning ch. 18 sts.", "1 tr in top of turning ch. 17 sts."},
		"a count behind 1tr into top of 3ch at beg of last row":                                {treble + "Row 2: 3 ch (counts as tr), miss first tr, 1 tr in each tr to end, 1tr into top of 3ch at beg of last row. 18 sts.\n", "1tr into top of 3ch at beg of last row. 18 sts.", "1tr into top of 3ch at beg of last row. 17 sts."},
		"a count behind 1 tr in top of 3 t-ch":                                                 {treble + "Row 2: 3 ch (counts as tr), miss first tr, 1 tr in each tr to end, 1 tr in top of 3 t-ch. 18 sts.\n", "1 tr in top of 3 t-ch. 18 sts.", "1 tr in top of 3 t-ch. 17 sts."},
		"a count behind 1 tr into 3rd ch of 3 ch":                                              {treble + "Row 2: 3 ch (counts as tr), miss first tr, 1 tr in each tr to end, 1 tr into 3rd ch of 3 ch. 18 sts.\n", "1 tr into 3rd ch of 3 ch. 18 sts.", "1 tr into 3rd ch of 3 ch. 17 sts."},
		"slip stitches, and a chain from the last of them":                                     {treble + "Row 2: Sl st over first 4 sts, 3 ch (counts as tr), miss st at base of ch, 1 tr in each st to last 3 sts, turn, leaving last 3 sts unworked. 12 sts.\n", "12 sts", "13 sts"},
		"the first row of another piece on a chain of its own":                                 {treble + "Row 2: 3 ch (counts as tr), miss first tr, 1 tr in each tr to end, 1 tr in top of 3 ch. 18 sts.\nFasten off.\nSleeve\nMake 15 ch and work first row as for Back.\nRow 2: 3 ch (counts as tr), miss first tr, 1 tr in each tr to end, 1 tr in top of 3 ch. 13 sts.\n", "13 sts", "14 sts"},
		"shells, rep from a star, ending with 3 dc in last sc":                                 {shells + "Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sc in 3rd dc of next sh, sh in next sc; rep from *, ending with 3 dc in last sc. (16 dc, 3 sc)\n", "(16 dc, 3 sc)", "(16 dc, 4 sc)"},
		"shells, rep from a star to last sc, 3 dc in last sc":                                  {shells + "Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sc in 3rd dc of next sh, sh in next sc; rep from * to last sc, 3 dc in last sc. (16 dc, 3 sc)\n", "(16 dc, 3 sc)", "(16 dc, 4 sc)"},
		"shells, rep from a star across to last sh, sc in 3rd dc of sh, 3 dc in last sc":       {shells + "Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sc in 3rd dc of next sh, sh in next sc; rep from * across to last sh, sc in 3rd dc of sh, 3 dc in last sc. (16 dc, 3 sc)\n", "(16 dc, 3 sc)", "(16 dc, 4 sc)"},
		"shells, rep from a star across, ending with sc in 3rd dc of last sh, 3 dc in last sc": {shells + "Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sc in 3rd dc of next sh, sh in next sc; rep from * across, ending with sc in 3rd dc of last sh, 3 dc in last sc. (16 dc, 3 sc)\n", "(16 dc, 3 sc)", "(16 dc, 4 sc)"},
		"shells, rep from a star across, 3 dc in last sc":                                      {shells + "Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sc in 3rd dc of next sh, sh in next sc; rep from * across, 3 dc in last sc. (16 dc, 3 sc)\n", "(16 dc, 3 sc)", "(16 dc, 4 sc)"},
		"sizes each second one in brackets": {"Terms: US\nCh 21 (21) 26 (26) 31.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 (20) 25 (25) 30 sc)\n" +
			"Row 2: Ch 1 (does not count as a st), sc in next 5 (5) 10 (10) 15 sts, sc2tog, sc to end. (19 (19) 24 (24) 29 sc)\n", "29 sc", "28 sc"},
		"sizes with colons": {"Terms: UK\nUsing A, make 21:26:31ch.\nRow 1: 1dc in 2nd ch from hook, 1dc in each ch to end, turn. (20:25:30 sts)\n" +
			"Row 2: 1ch (does not count as a st), 1dc in next 5:10:15 sts, dc2tog, 1dc in each st to end. (19:24:29 sts)\n", "19:24:29", "19:24:28"},
		"a size in braces": {"Terms: US\nInstructions are for size S, with size L in {}.\nCh 21 {26}.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 {25} sc)\n" +
			"Row 2: Ch 1 (does not count as a st), sc in next 5 {10} sts, sc2tog, sc in each of next 13 {13} sts. (19 {24} sc)\n", "(19 {24} sc)", "(19 {25} sc)"},
		"a list of counts in braces": {"Terms: US\nCh 21 (21) 26 (26) 31.\nRow 1: Sc in 2nd ch from hook and in each ch across {20, 20, 25, 25, 30 sc}\n" +
			"Row 2: Ch 1 (does not count as a st), sc in next 5 (5) 10 (10) 15 sts, sc2tog, sc to end {19, 19, 24, 24, 29 sc}\n" +
			"Row 3: Ch 1 (does not count as a st), sc in next 4 (4) 9 (9) 14 sts, sc2tog, sc to end {18, 18, 23, 23, 28 sc}\n", "28 sc}", "27 sc}"},
		"a dash right behind the number of a row": {"Notes: Ch 1 does not count as a st.\n" + twenty + "Row 2- 1 sc in each st across. (20 sc)\nRow 3- 2 sc in first st, sc in each st across. (21 sc)\n", "(21 sc)", "(22 sc)"},
		"so often in one place":                   {"Terms: US\nCh 11.\nRow 1: Dc in 4th ch from hook, dc 3 more times in same ch, dc in each of next 7 ch. (12 dc)\n", "(12 dc)", "(13 dc)"},
		"a group in brackets is the group":        {"Terms: US\nSpecial stitches:\nShell: (2 dc, ch 2, 2 dc) in indicated st.\nInstructions:\nCh 20.\nRow 1: (2 dc, ch 2, 2 dc) in 6th ch from hook (beg ch counts as dc), *ch 2, skip next 5 ch, shell in next ch; rep from * once, skip next ch, dc in next ch, turn. (3 shells)\n", "(3 shells)", "(4 shells)"},
		"a bracket closed by another sign":        {"Terms: UK\nMake 22 ch.\nRow 1: 1 tr into 4th ch from hook, 1 tr into each ch to end. (20 tr)\nRow 2: 3 ch (counts as 1 tr], 1 tr into each of next 10 tr, [1 tr, 1 tr] into next tr, 1 tr into each st to end. (21 tr)\n", "(21 tr)", "(20 tr)"},
		"a word written twice":                    {twenty + "Row 2: Ch 1 (does not count as a st), sc in next 18 sts, skip next next st, 2 sc in the the last st. (20 sc)\nRow 3: Ch 1 (does not count as a st), 2 sc in first st, sc in each st. (21 sc)\n", "(21 sc)", "(20 sc)"},
		"rounds that run on without capitals":     {"Terms: US\nSunny blanket (any size hook) rnd 1: ch 4, join with sl st to form a ring, ch 3 (counts as dc), 11 dc in ring (12 dc). join with sl st to top of ch 3. rnd 2: ch 3 (counts as dc), 1 dc in same st, 2 dc in each st around (24 dc). join. rnd 3: ch 3 (counts as dc), dc in same st, *dc in next 3 sts, 2 dc in next st; rep from * 4 more times, dc in next 3 sts. join (30 dc).\n", "(30 dc)", "(29 dc)"},
		"each of next st around":                  {ten + "Rnd 2: Ch 1 (does not count as a st), 2 hdc in first st and in each of next st around, join. (20 sts)\n", "(20 sts)", "(21 sts)"},
		"a kind that stands for all of them":      {twenty + "Row 2: Ch 1, turn, sc in first 2 sc, (tr in next sc, sc in next sc) across. (20)\nRow 3: Ch 1 (does not count as a st), turn, sc in each sc across. (20)\nRow 4: Ch 1 (does not count as a st), turn, 2 sc in first sc, sc in each sc across. (21)\n", "(21)", "(20)"},
		"a count that takes in spaces":            {"Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook, *ch 1, skip 1 ch, sc in next ch; rep from * to last ch, sc in last ch, turn—20 sts, counting ch-1 spaces. Fasten off A.\n", "20 sts", "19 sts"},
		"work to the last stitches":               {twenty + "Row 2: Ch 1 (does not count as a st), turn, sc2tog, work to last 2 sts, sc2tog. (18 sc)\n", "(18 sc)", "(19 sc)"},
		"a chain counted from the hook":           {"Terms: US\nChain 22. Skipped chains count as a stitch.\nRow 1: Dc in the 4 chain from hook, dc in each ch across. (20 dc)\n", "(20 dc)", "(19 dc)"},
		"the top of the first":                    {ten + "Rnd 2: Ch 1 (does not count as a st), 2 hdc in each st around, sl st in top of first hdc. (20 sts)\n", "(20 sts)", "(10 sts)"},
		"rows joined with a slip stitch":          {"Terms: US\nCh 20, join with sl st to form a ring.\nRow 1: Ch 1, sc in each ch, sl st in first sc. (20 sc)\nRow 2: Ch 1 (does not count as a st), *sc in next 4 sc, 2 sc in next sc; rep from * around, sl st in first sc. (24 sc)\n", "(24 sc)", "(25 sc)"},
		"the space beside a turning chain called by all its chains": {"Terms: US\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11 sc)\n" +
			"Row 2: Ch 7 (counts as 1 tr and ch-3 sp), skip first 2 sc, tr in next sc, ch 3, skip next 3 sc, tr in next sc, ch 3, skip next 3 sc, tr in last sc, turn.\n" +
			"Row 3: Ch 1 (does not count as a st), sc in first tr, 3 sc in next ch-3 sp, sc in next tr, 3 sc in next ch-3 sp, sc in next tr, 4 sc in last ch-7 sp, sc in 4th ch of ch-7. (14 sc)\n", "(14 sc)", "(13 sc)"},
		"so many along each edge, and more in corners": {"Terms: US\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\nEdging: 1st rnd: Ch 1, 3 sc in first sc for corner. Work 17 sc along each edge of blanket and 3 sc in each corner st. Join. 80 sc.\n" +
			"2nd rnd: Ch 1 (does not count as a st), *sc in next 18 sts, 2 sc in each of next 2 sts; rep from * around. 88 sc.\n", "88 sc", "87 sc"},
		"items of notes with their numbers": {"Terms: US\nNotes:\n1. The wrap is worked from side to side.\n2. One leaf = 3 dc (of a group or a pair).\n3. The ch-2 of a pair = the middle of the back.\nWrap\nCh 21.\n" +
			"Row 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\nRow 2: Ch 1 (does not count as a st), sc2tog, sc in each st. (19 sc)\n", "(19 sc)", "(18 sc)"},
		"steps of a row as items of a list": {"Terms: US\n- Row 1: Chain 22 stitches.\n- Skip the first three chains and place one double crochet in the fourth chain and in each chain across. (20 dc)\n- Row 2: Chain three and turn.\n" +
			"- Make one double crochet in each stitch across. (20 dc)\n- Row 3: Chain three and turn.\n- Make two double crochet in the next stitch and one double crochet in each stitch across. (21 dc)\n", "(21 dc)", "(22 dc)"},
		"spaces times their chains": {"Terms: UK\nMake 22 ch.\n1st row - 1 dc in 2nd ch from hook, 1 dc in each of next 4 ch, *2 ch, 1 dc in each of next 4 ch, rep from * to end, turn ... 21 dc and 4 x 2ch-sps forming 4 ripples at the end of this row.\n", "21 dc", "20 dc"},
		"a join on a line of its own": {"Terms: US\nMake a magic ring.\nRound 1: Ch 1 (does not count as a st), 8 hdc in ring. (8 hdc)\nSl st to top of first st.\nRound 2: Ch 1 (does not count as a st), 2 hdc in each st. (16 hdc)\nSl st to top of first st.\n" +
			"Round 3: Ch 1 (does not count as a st), *hdc in next st, 2 hdc in next st; rep from * around. (24 hdc)\n", "(24 hdc)", "(25 hdc)"},
		"a sentence with a number word is work and no count": {"Terms: US\nMake a magic ring.\nRnd 1: Ch 1 (does not count as a st), 8 hdc in ring, join. (8 hdc)\nRnd 2: Ch 1 (does not count as a st). 2 hdc in first st. Two hdc in each st (16 hdc). Sl st to top of first st.\n", "(16 hdc)", "(17 hdc)"},
		"rows by number words":                               {twenty + "Row Two: Ch 1 (does not count as a st), sc in each st. (20 sc)\nRow Three: Ch 1 (does not count as a st), 2 sc in first st, sc in each st. (21 sc)\nRepeat rows two and three until piece has 5 rows.\n", "(21 sc)", "(22 sc)"},
		"the gap beside the edge":                            {twenty + "Row 2: Ch 1 (does not count as a st), turn, sc in each st. (20 sc)\nRow 3: Ch 3 (counts as dc), turn, 2 dc between the last and 2nd to last sc of previous row, dc in each st to end. (21 dc)\n", "(21 dc)", "(22 dc)"},
		"loops that come back to where their round began": {"Terms: US\nCh 6, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), 23 dc in ring, join. (24 dc)\nRnd 2: Sc in same place as join, *ch 5, skip 1 dc, sc in next dc; rep from * around, ending with ch 5, sl st in first sc.\n" +
			"Rnd 3: Sl st to center of next loop, sc in same loop, *ch 5, sc in next loop, ch 3, (sc in next loop, ch 5) twice, sc in next loop; rep from * around, join.\n" + // 12 loops: the last sc is the first
			"Rnd 4: Sl st to center of next loop, sc in same loop, *ch 5, sc in next loop; rep from * around, join.\nRnd 5: Sl st in next loop, ch 3 (counts as dc), 2 dc in same loop, 3 dc in each loop around, join. (36 dc)\n", "(36 dc)", "(37 dc)"},
		"a stretch between stars in each space":                 {ten + "Rnd 2: Ch 1 (does not count as a st), *hdc in next st, ch 2, skip next st* Complete five times, join. (5 hdc)\nRnd 3: *2 dc, ch 1, 2 dc* in each ch-2 sp around, join. (20 dc)\n", "(20 dc)", "(21 dc)"},
		"two chains from the hook together":                     {"Terms: US\nCh 16.\nRow 1: Dc2tog in 3rd and 4th ch from hook (skipped ch count as dc), dc in each ch across. (14 sts)\n", "(14 sts)", "(15 sts)"},
		"to the last stitches, where the last time ends sooner": {"Terms: US\nCh 27.\nRow 1: 2 dc in 3rd ch from hook (skipped ch count as dc), *skip 2 ch, sc in next ch, skip 2 ch, 5 dc in next ch; rep from * to last 3 ch, skip 2 ch, 3 dc in last ch. (25 sts)\n", "(25 sts)", "(24 sts)"}, // 3 + 3 x 6 + 1 + 3
		"each space of the next group": {"Terms: US\nSpecial stitches:\nDouble V-stitch (2V-st): (dc, ch 2, 2 dc, ch 2, dc) in indicated st.\nFan: 4 dc in indicated sp.\nScarf\nCh 31.\nRow 1: Dc in 4th ch from hook (skipped ch count as dc), [skip next 3 ch, 2V-st in next ch, skip next 3 ch, dc in each of next 2 ch] 3 times, turn. (20 dc)\n" +
			"Row 2: Ch 4 (counts as dc and ch-1 sp), fan in each ch-2 sp of next 2V-st, [ch 2, fan in each ch-2 sp of next 2V-st] twice, ch 1, skip next 2 dc, dc in top of beg ch-3, turn. (26 dc)\n", "(26 dc)", "(25 dc)"},
		"a chain and its space by the notes": {"Terms: US\nNotes: Chain-4 at beginning of row counts as first double crochet and chain-1 unless otherwise stated.\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n" +
			"Row 2: Ch 4, skip first 2 sc, dc in next sc, *ch 1, skip next sc, dc in next sc; rep from * twice, dc in last sc, turn. (6 dc)\nRow 3: Ch 1 (does not count as a st), sc in each dc and ch-1 sp across. (10 sc)\n", "(10 sc)", "(9 sc)"},
		"a bracket too many, a picot made and that same space": {ten + "Rnd 2: Ch 1 (does not count as a st), *hdc in next st, ch 4, skip next st; rep from * around, join. (5 hdc)\nRnd 3: Sl st in next ch-4 sp, ch 3 (counts as dc), 3 dc in that same ch-4 sp, *(2 dc, ch 3, sl st in third ch from hook - picot made, 2 dc) in next ch-4 sp): rep from * around, join. (20 dc)\n", "(20 dc)", "(19 dc)"},
		"a round that ends in its last corner":                 {"Terms: US\nCh 4, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * two times more, join. (12 dc)\nRnd 2: Ch 3 (counts as dc), dc in each of next 2 dc, *(3 dc, ch 2, 3 dc) in next ch-2 corner sp, dc in each of next 3 dc; rep from * around, join. (36 dc)\n", "(36 dc)", "(37 dc)"}, // 12 and 4 x 6
		"a bare repeat before the count":                       {"Terms: US\nRound 1: 6 hdc in a magic ring.\nRound 2: 2 hdc in each st = 12 st\nRound 3: 1 hdc, 2hdc, repeat = 18 st\nRound 4: 2 hdc, inc, repeat: 24 sts\n", "18 st", "19 st"},
		"a dash between the number of a round and its first": {"Terms: US\nCh 2, work 4 sc in 2nd ch from hook.\nRound 2: 3 sc in each of 4 sc; 12 sc.\nRound 3–1 sc in next sc, * 3 sc in next sc–center sc of corner, 1 sc in each of next 2 sc; repeat from * twice more, 3 sc in next sc, 1 sc in last sc; 20 sc.\n" +
			"Round 4–1 sc in each of next 2 sc, * 3 sc in next sc–center sc of corner, 1 sc in each of next 4 sc; repeat from * twice more, 3 sc in next sc, 1 sc in each of last 2 sc; 28 sc.\n", "28 sc", "27 sc"},
		"counts in each of what they stand":                        {"Terms: US\nCh 14.\nRow 1: Sc in 2nd ch from hook, *ch 2, skip 2 ch, 5 dc in next ch, ch 2, skip 2 ch, sc in next ch; rep from * across, turn. (3 sc, 5 dc in each shell, 4 ch-2 sps)\nRow 2: Ch 1 (does not count as a st), sc in first sc, *ch 4, skip 2 dc, sc in next dc, ch 4, skip 2 dc, sc in next sc; rep from * across, turn. (5 sc)\n", "(5 sc)", "(6 sc)"},
		"how an increase and a decrease are made, before the rows": {"Terms: US\ninc: 2 sc in one stitch\ndec: 1 sc over two stitches through the front loops only\nMake a magic ring.\nR1: 6 sc into ring (6)\nR2: inc in each stitch around (12)\nR3: *inc, sc* around (18)\n", "(18)", "(17)"},
		"the last repeat of a second sentence":                     {"Terms: US\nCh 20.\nRow 1: Dc in 4th ch from hook and in each ch across. (18 dc)\nRow 2: Ch 3, turn, *skip next dc, dc in next dc, ch 1; repeat from *. End last repeat with dc in top of ch-3. Turn.\n", "(18 dc)", "(19 dc)"},
	} {
		t.Run(name, func(t *testing.T) {
			holds(t, c.text, c.is, c.not)
		})
	}
}

// holds reads a text that is right as it stands, and wrong in one count with the second words for the first.
func holds(t *testing.T, text, is, not string) {
	x := Read("t", []byte(text), Options{})
	assert.Equal(t, x.Read.Lines, x.Read.Whole)
	require.Contains(t, text, is)
	assert.Empty(t, warnings(text))
	list := warnings(strings.Replace(text, is, not, 1))
	require.Len(t, list, 1)
	assert.Equal(t, "rows/stated", list[0].Kind)
}

// Rows told as steps are rows, each word in its own column; steps that work no stitches are none.
func TestStepsThatWorkStitchesAreRows(t *testing.T) {
	const steps = "Terms: US\nStep 1: 6 sc in magic ring. (6)\nStep 2: 2 sc in each st around. (12)\nStep 3: (sc, 2 sc in next st) 6 times. (18)\n"
	holds(t, steps, "(18)", "(17)")
	list := warnings(strings.Replace(steps, "(18)", "(17)", 1))
	require.Len(t, list, 1)
	assert.Equal(t, strings.Index("Step 3: (sc, 2 sc in next st) 6 times. (18)", "18")+1, list[0].Pos.Col)
	x := Read("t", []byte("Step 1: Make the body.\nStep 2: Sew the ears on.\nStep 3: Stuff it.\n"), Options{})
	assert.Zero(t, x.Read.Lines)
}
