package work

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lastRow counts what the last row of a text has of each kind: stitches by their names, arches by their chains.
func lastRow(t *testing.T, src string) (row GraphRow, kinds map[string]int, arches map[int]int) {
	t.Helper()
	g := graph(t, src)
	row = g.Rows[len(g.Rows)-1]
	require.Empty(t, row.Unread)
	kinds, arches = map[string]int{}, map[int]int{}
	for _, s := range row.Stitches {
		switch {
		case s.Chain > 0 && !s.Turning:
			arches[s.Chain]++
		case s.Stitch != nil && s.Chain == 0:
			kinds[s.Stitch.ID]++
		}
	}
	return row, kinds, arches
}

// Counted by hand: 6 pairs of treble and 6 spaces below, so that each corner gives 2 and each side keeps 2.
func TestTheLastSpaceOfASizeIsOneSpace(t *testing.T) {
	const below = "5ch, ss to join into a ring.\nRnd 1: 3ch (counts as 1tr), 1tr into ring, *2ch, 2tr into ring; rep from * 4 times more, 2ch, ss into 3rd of 3ch.\n"
	for _, end := range []string{"rep from * 4 more times, [1tr, 2ch, 1tr] into last 2ch sp", "rep from * to last 2ch sp, [1tr, 2ch, 1tr] into next 2ch sp", "rep from * to last 2ch sp, [1tr, 2ch, 1tr] into last 2ch sp"} {
		row, kinds, arches := lastRow(t, below+"Rnd 2: 3ch, 1tr into next tr, *[1tr, 2ch, 1tr] into next 2ch sp, 1tr into each of next 2tr; "+end+", ss into 3rd of 3ch.\n")
		assert.Equal(t, map[string]int{"tr": 23}, kinds, end)
		assert.Equal(t, map[int]int{2: 6}, arches, end)
		assert.Equal(t, []int{17}, row.Stitches[len(row.Stitches)-1].Feet, end)
	}
}

// Counted by hand: 12 stitches below, every second one worked into.
func TestAChainToldBehindARepeatIsNotWorkedTwice(t *testing.T) {
	const below = "Terms: US\nCh 5, join with sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st in top of ch 3. (12 dc)\nRnd 2: Ch 3, dc in same st, "
	for _, rest := range []string{"(ch 2, skip next st, 2 dc in next st) around, ch 2, join.", "*ch 2, skip next st, 2 dc in next st; rep from * around, ending with ch 2, join.", "*ch 2, skip next st, 2 dc in next st; rep from * around; join."} {
		_, kinds, arches := lastRow(t, below+rest+"\n")
		assert.Equal(t, map[string]int{"dc": 11}, kinds, rest)
		assert.Equal(t, map[int]int{2: 6}, arches, rest)
	}
}

func TestAClusterIsAsItWasToldBefore(t *testing.T) {
	const ring = "Terms: US\nCh 6, join with sl st to form ring.\nRnd 1: "
	_, kinds, _ := lastRow(t, ring+"Ch 4, holding back on hook the last loop of each tr work 2 tr in ring, thread over and draw through all loops on hook (cluster made), *ch 3, cluster in ring; rep from * 4 more times, ch 3, join.\n")
	assert.Equal(t, map[string]int{"2trcl": 1, "3trcl": 5}, kinds, "the chain that begins the round is the third")
	_, kinds, _ = lastRow(t, ring+"Ch 1, *sc in ring, ch 3, 4-dc popcorn in ring, ch 3; rep from * 2 more times, popcorn in ring, ch 3, join.\n")
	assert.Equal(t, map[string]int{"sc": 3, "4dcpc": 4}, kinds)
}

// Counted by hand: six groups of five, and a shell over each, the first over the second group.
func TestARoundThatBeginsWithinAGroupEndsInTheOneBefore(t *testing.T) {
	row, kinds, _ := lastRow(t, "Terms: US\nCh 6, join with sl st to form ring.\nRnd 1: Ch 1, *sc in ring, ch 3; rep from * 5 more times, join.\nRnd 2: Sl st in next loop, ch 3, 4 dc in same loop, 5 dc in each loop around, join.\nRnd 3: Sl st in next 7 dc, ch 3, dc in same place, ch 2, 2 dc in same place, *in center dc of next 5-dc group make 2 dc, ch 2 and 2 dc; rep from * around, join.\n")
	assert.Equal(t, map[string]int{"dc": 23}, kinds)
	assert.Equal(t, []int{2}, row.Stitches[len(row.Stitches)-1].Feet, "the middle of the first")
}

func TestSlipStitchesBehindAJoinLeadToTheNextRound(t *testing.T) {
	for _, slips := range []string{", sl st in next 2 dc and in ch-2 sp", ". Sl st across to the next ch-2 sp", ", sl st in each of next 2 dc, sl st in next ch-2 sp"} {
		src := "Terms: US\nCh 4, sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st to top of ch-3" + slips +
			".\nRnd 2: Ch 3, 2 dc in same sp, ch 2, 3 dc in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next sp, ch 1; rep from * 2 more times, join with sl st to top of ch-3.\n"
		row, kinds, arches := lastRow(t, src)
		assert.Equal(t, map[string]int{"dc": 23}, kinds, slips)
		assert.Equal(t, map[int]int{2: 4, 1: 4}, arches, slips)
		assert.Equal(t, []int{3}, row.Stitches[0].Feet, slips)
		assert.Empty(t, Check(Read("t", []byte(src), Options{TermsSet: true})).Findings, slips)
	}
}

// Counted by hand: each later row has a new block over its own six chains, of which three stand up, and one over each block below.
func TestBlocksFromCornerToCornerStandOnTheirOwnChains(t *testing.T) {
	g := graph(t, "Terms: US\nRow 1: Ch 6, dc in 4th ch from hook and in next 2 ch, turn. (1 block)\nRow 2: Ch 6, dc in 4th ch from hook and in next 2 ch, (sl st, ch 3, 3 dc) in ch-3 sp of previous block, turn. (2 blocks)\nRow 3: Ch 6, dc in 4th ch from hook and in next 2 ch, *(sl st, ch 3, 3 dc) in ch-3 sp of next block; rep from * once more, turn. (3 blocks)\n")
	for r, last := range map[int]int{2: 9, 3: 14} {
		below, row := g.Rows[r-1].Stitches, g.Rows[r].Stitches
		require.Equal(t, last, len(below)-1)
		require.Equal(t, "ch", below[last].Stitch.ID)
		assert.Equal(t, []int{last - 3}, row[1].Feet, "the 4th chain from the hook")
		assert.Equal(t, []int{last - 5}, row[3].Feet, "the first one chained")
	}
	assert.Equal(t, []int{5}, g.Rows[3].Stitches[4].Feet, "the chains of the block below")
	assert.Equal(t, []int{0}, g.Rows[3].Stitches[9].Feet, "those of the first block")
}

func TestARepeatGoesFromTheSignThatIsNamed(t *testing.T) {
	_, kinds, arches := lastRow(t, "Terms: US\nMagic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: # Ch 3, sk next dc, sc in next dc, * ch 2, sk next dc, sc in next dc; rep from * around, ch 2, join.\n")
	assert.Equal(t, map[string]int{"sc": 5}, kinds)
	assert.Equal(t, map[int]int{2: 5}, arches)
}

func TestARepeatMayBeginInTheSpaceThatSlipStitchesLedTo(t *testing.T) {
	row, kinds, arches := lastRow(t, "Terms: US\nMagic ring.\nRnd 1: Ch 1, (sc in ring, ch 3) 6 times, join with sl st to first sc.\nRnd 2: Sl st into next ch-3 sp, ch 1, *sc in ch-3 sp, ch 5; rep from * around, join with sl st to first sc.\n")
	assert.Equal(t, map[string]int{"sc": 6}, kinds)
	assert.Equal(t, map[int]int{5: 6}, arches)
	assert.Equal(t, []int{2}, row.Stitches[1].Feet)
}

func TestTwoStitchesDefinedInOneLineAreTwo(t *testing.T) {
	_, kinds, arches := lastRow(t, "Terms: US\nSpecial stitches\nV-stitch (V-st): (Dc, ch 1, dc) in indicated st. Fan: 4 dc in indicated st.\n\nCh 14.\nRow 1: Dc in 4th ch from hook (counts as 2 dc), sk 2 ch, V-st in next ch, sk 2 ch, fan in next ch, sk 2 ch, dc in each of last 2 ch, turn.\n")
	assert.Equal(t, map[string]int{"dc": 9}, kinds)
	assert.Equal(t, map[int]int{1: 1}, arches)
}

func TestABracketAroundRepeatedRowsIsNoMoreThanItsRows(t *testing.T) {
	g := graph(t, "Terms: US\nCh 6.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (5 sc)\nRow 2: Ch 1, sc in each st across, turn. (5 sc)\nRow 3: Ch 1, hdc in each st across, turn. (5 hdc)\nRows 4-9: [Rep rows 2 and 3] 3 times.\n")
	assert.Len(t, g.Rows, 10)
}

func TestYarnJoinedBetweenAnyTwoStitchesIsNoStitch(t *testing.T) {
	_, kinds, _ := lastRow(t, "Terms: UK\nMagic ring.\nRnd 1: 3ch (counts as tr), 11tr in ring, ss to top of 3ch.\nRnd 2: Join B between any 2 tr, 1ch, 1dc in each tr around, ss to first dc.\n")
	assert.Equal(t, map[string]int{"dc": 12}, kinds)
}

func TestNothingIsDrawnOnARoundOfWhichItIsNotKnownWhatItMakes(t *testing.T) {
	g := graph(t, "Terms: US\nMagic ring.\nRnd 1: Ch 1, 8 sc in ring, join. (8 sc)\nRnd 2: Ch 1, *whirl in next sc, ch 3; rep from * around, join.\nRnd 3: Ch 1, *5 dc in next ch-3 sp; rep from * around, join.\n")
	last := g.Rows[len(g.Rows)-1]
	assert.Empty(t, last.Stitches)
	assert.True(t, last.Unknown)
}

// By hand: 8 loops of 10, 8 pairs with 3 chains within and 4 between; the first pair is the sc and the stitch behind its 6 chains.
func TestSlipStitchesAlongALoopLeadIntoIt(t *testing.T) {
	row, kinds, arches := lastRow(t, "Terms: US\nCh 8. Join to form ring.\n1st rnd: (Sc in ring, ch 10) 8 times; sl st in 1st sc.\n2nd rnd: Sl st in next 5 ch, sc in loop, ch 6, dc in same loop, (ch 4, in next loop make dc, ch 3 and dc) 7 times; ch 4, sl st in 3rd ch of ch-6.\n")
	assert.Equal(t, map[string]int{"sc": 1, "dc": 15}, kinds)
	assert.Equal(t, map[int]int{6: 1, 3: 7, 4: 8}, arches)
	assert.Equal(t, []int{1}, row.Stitches[0].Feet)
	assert.Equal(t, []int{1}, row.Stitches[2].Feet)
}

func TestARoundWhoseLastSpaceIsAStitchAloneIsNotDrawnWithoutIt(t *testing.T) {
	g := graph(t, "Terms: US\nCh 4, join to form ring.\nRnd 1: Ch 4 (counts as dc and ch 1), (dc in ring, ch 1) 7 times, join to 3rd ch of ch-4.\nRnd 2: Sl st in next sp, ch 3 (counts as dc), dc in same sp, ch 2, (2 dc in next sp, ch 2) 6 times, 2 dc in next sp, hdc in first dc.\nRnd 3: Ch 1, *sc in next sp, ch 5; rep from * around, join.\n")
	assert.Equal(t, "its last space is a stitch alone", g.Rows[2].Unread)
	assert.Len(t, g.Rows[2].Stitches, 1+15+7+1, "the space is one of it")
}

func TestALineThatTellsHowToWorkAStitchDefinesIt(t *testing.T) {
	_, kinds, arches := lastRow(t, "Terms: US\nHow to work a V-stitch (V): work 1 dc, ch 1 and 1 dc all into the same stitch or space.\n\nCh 14.\nRow 1: V in 5th ch from hook, *skip 2 ch, V in next ch; rep from * to last 3 ch, skip 2 ch, dc in last ch.\n")
	assert.Equal(t, map[string]int{"dc": 7}, kinds)
	assert.Equal(t, map[int]int{1: 3}, arches)
}

// Counted by hand: a chain that is a stitch and 11 more; the count behind the join works nothing.
func TestDashesStandForBrackets(t *testing.T) {
	const ring = "Terms: US\nCh 5, join with sl st to form a ring.\nRnd 1: "
	for _, s := range []string{"- counts as dc -", "— counts as 1 dc —,", "-counts as first dc-", "- this counts as a dc -"} {
		_, kinds, _ := lastRow(t, ring+"Ch 3 "+s+" 11 dc in ring, join with sl st in top of ch-3.\n")
		assert.Equal(t, map[string]int{"dc": 11}, kinds, s)
	}
	for _, s := range []string{"join. -12 dc, 4 ch sps-", "join - 12 dc -", "join. – 12 dc, 4 ch-2 sps –", "join. --12 dc, 4 corners--."} {
		_, kinds, arches := lastRow(t, ring+"Ch 3, 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times, "+s+"\n")
		assert.Equal(t, map[string]int{"dc": 11}, kinds, s)
		assert.Equal(t, map[int]int{2: 4}, arches, s)
	}
}

func TestALoopToHangAPieceOnIsNoRound(t *testing.T) {
	const mat = "Mat\nTerms: US\nMagic ring.\nRnd 1: Ch 1, 9 sc in ring, join with sl st in first sc.\nRnd 2: Ch 1, 2 sc in each sc around, join with sl st in first sc.\n"
	for _, s := range []string{"Hanging loop: ch 8, skip next sc and sl st in next sc. Fasten off.", "Loop: Ch 9, sl st in same st. Fasten off.", "Hanger - ch 10, sl st in next sc."} {
		row, kinds, _ := lastRow(t, mat+s+"\n")
		assert.Equal(t, map[string]int{"sc": 18}, kinds, s)
		assert.Equal(t, 2, row.Number, s)
	}
}

func TestWhatARoundGoesIntoIsToldBeforeIt(t *testing.T) {
	for _, s := range []string{"Work all sts into a magic ring:", "Crochet all the stitches in a magic circle:", "Make all these sts into a magic ring:"} {
		_, kinds, _ := lastRow(t, "Terms: US\nRound 1: "+s+" ch 3, 3 tr, 4 dc, ch 1, tr, ch 1, 4 dc, 3 tr, ch 3, sl st in ring.\n")
		assert.Equal(t, 8, kinds["dc"], s)
		assert.Equal(t, 7, kinds["tr"], s)
	}
}

// Counted by hand: 7 stitches behind the one that the chain stands in, an arch before each and one behind the last.
func TestTwoTogetherBehindAnArchAreAClusterInOneStitch(t *testing.T) {
	for _, count := range []string{"", "(7, tr2tog, 1tr + 3ch)", "[7 tr2tog/8 sps]", "[8 cl/8 ch-2 sps]", "(8, 2ch sps)"} {
		_, kinds, arches := lastRow(t, "Terms: UK\nMagic ring.\nRound 1: 1ch, 8dc into ring, ss to first dc.\nRound 2: 3ch, 1tr into same st, 2ch, *tr2tog into next dc, 2ch, rep from * to end, ss to top of 3ch. "+count+"\n")
		assert.Equal(t, map[string]int{"tr": 1, "tr2tog": 7}, kinds, count)
		assert.Equal(t, map[int]int{2: 8}, arches, count)
	}
	_, kinds, _ := lastRow(t, "Terms: US\nMagic ring.\nRound 1: Ch 1, 8 sc in ring, join.\nRound 2: Ch 3, dc in next sc, *ch 2, dc2tog over next 2 sc; rep from * around, ch 2, join.\n")
	assert.Equal(t, map[string]int{"dc": 1, "dc2tog": 3}, kinds)
}

// Counted by hand: 12 double crochet in the ring, two in each.
func TestWhereARoundBeganHasManyNames(t *testing.T) {
	const below = "Terms: US\nMake a magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st to top of ch 3.\nRnd 2: Ch 3, "
	for _, words := range []string{
		"dc in that first st, 2 dc in each st around", "1 more dc in same first st, 2 dc in each st around", "dc in join, 2 dc in each st around",
		"dc in the st where you joined, 2 dc in each st around", "dc in same st ch 3 comes from, 2 dc in each st around", "dc in st below ch 3, 2 dc in each st around",
		"2 dc in each st around, dc in join", "2 dc in next 11 sts, dc in join at top of ch-3", "2 dc in next 11 sts, dc in the st where you began", "2 dc in next 11 sts, dc in sl st of join",
	} {
		row, kinds, _ := lastRow(t, below+words+", join with sl st to 3rd ch.\n")
		assert.Equal(t, 23, kinds["dc"], words)
		assert.Empty(t, row.Amiss, words)
	}
}

// Counted by hand: 6 in the ring, joined without a word of where.
func TestARingIsTakenUpInManyWays(t *testing.T) {
	for _, words := range []string{
		"Rnd 1: MR, ch 1, 6 sc, ss to first sc.", "Rnd 1: Create a magic ring. Ch 1, 6 sc, sl st in first sc.", "Rnd 1: 6 sc MR, sl st.", "Rnd 1: MR: 6 sc, join.", "Rnd 1: 6 sc in magic ring. 1 ss, 1 ch.",
		"Rnd 1: Slip knot, ch 2, 6 sc in first ch, join.", "Rnd 1: Ch 4, join with sl st. Into the middle of ch 4: ch 1, 6 sc, sl st to first sc.", "Make a sliding loop.\nRnd 1: Ch 1, 6 sc in loop, join.",
		"Create a mr or use the ch 4 method.\nRnd 1: Ch 1, 6 sc, ss to first sc.",
	} {
		row, kinds, _ := lastRow(t, "Terms: US\n"+words+"\n")
		assert.Equal(t, 6, kinds["sc"], words)
		assert.True(t, row.Joined, words)
	}
}

// Counted by hand: 12 below, one worked in, five times two of the rest; the last one is passed and the slip stitch joins.
func TestARepeatEndsInTheSlipStitchThatJoins(t *testing.T) {
	_, kinds, _ := lastRow(t, "Terms: US\nMake a magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st to top of ch 3.\nRnd 2: 3 sc in same st as join, sl st in same st, *skip next st, sl st in next st, 3 sc in same st, sl st in same st; rep from * around, join.\n")
	assert.Equal(t, map[string]int{"sc": 18, "slst": 11}, kinds)
}

// 11 below: 10 behind the first, of which one is kept; 9 are no pairs.
func TestARepeatUpToAStitchThatDoesNotComeOutIsTold(t *testing.T) {
	g := graph(t, "Terms: US\nMake a magic ring.\nRnd 1: Ch 3 (counts as dc), 10 dc in ring, join with sl st to top of ch 3.\nRnd 2: Ch 3, dc in same st, *ch 3, skip 1 st, 2 dc in next st; rep from * until 1 st remains, ch 3, join.\n")
	assert.NotEmpty(t, g.Rows[len(g.Rows)-1].Amiss)
}

// A round that is joined to its first single crochet has no stitch in its one chain.
func TestOneChainBesideTheFirstStitchIsNone(t *testing.T) {
	row, _, _ := lastRow(t, "Terms: US\nMake a magic ring.\nRnd 1: Ch 1, 11 sc in ring, join with sl st to first sc.\nRnd 2: Ch 3, dc in same st, dc in next st, *2 dc in next st, dc in next st; rep from * around, join.\n")
	assert.Len(t, row.Stitches, 17)
}

// Counted by hand: 12 in the ring, a chain between two of them, so 12 spaces and 36 behind them.
func TestTheChainsOfARoundWithSpacesAreAStitchAndASpace(t *testing.T) {
	const below = "Terms: US\nMake a magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st to top of ch 3.\nRnd 2: Ch 4, "
	for _, second := range []string{"dc in next st, *ch 1, dc in next st; rep from * around, ch 1, join to 3rd ch", "*dc in next st, ch 1* 11 times, join", "*dc in next st, ch 1; rep from * around, sl st"} {
		for _, third := range []string{"(Ch 3, 2 dc) in first sp, 3 dc in each remaining sp", "Ch 3, 2 dc in the ch-1 sp, *3 dc in next ch-1 sp; rep from * around"} {
			row, kinds, arches := lastRow(t, below+second+".\nRnd 3: "+third+", join.\n")
			assert.Equal(t, 35, kinds["dc"], second+third)
			assert.True(t, row.Stitches[0].Turning && row.Stitches[0].Counts, second+third)
			assert.Empty(t, arches, second+third)
		}
	}
}

// Counted by hand: four groups of 3 and four arches of 2 in the ring.
func TestSoManyTimesBehindAListIsAllOfIt(t *testing.T) {
	for _, words := range []string{"Ch 1, 3 sc in ring, ch 2, 4 times, join.", "Ch 1. 3 sc in ring, ch 2, four times. Join.", "Ch 1; 3 sc in ring and ch 2 four times; join.", "Ch 1, 3 sc in ring, ch 2, 4 times, join. (4, 3sc groups + 2ch)", "Ch 1, 3 sc in ring, ch 2, 4 times, join. (4 sets of sc, 4 ch 2 sections around ring)"} {
		row, kinds, arches := lastRow(t, "Terms: US\nCh 4, join with sl st to form ring.\nRnd 1: "+words+"\n")
		assert.Equal(t, map[string]int{"sc": 12}, kinds, words)
		assert.Equal(t, map[int]int{2: 4}, arches, words)
		assert.Empty(t, row.Amiss, words)
	}
}

// Counted by hand: two in each of 12, then three in each of the 12 spaces between the pairs; the chains stand for one of them.
func TestABracketThatOpensAStretchIsNoCount(t *testing.T) {
	const below = "Terms: US\nMake a magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st to top of ch 3.\nRnd 2: Ch 3, dc in same st, ch 1, *(2 dc), ch 1* around, join.\n"
	_, kinds, arches := lastRow(t, below)
	assert.Equal(t, 23, kinds["dc"])
	assert.Equal(t, map[int]int{1: 12}, arches)
	for _, third := range []string{"Join into ch 1 sp, ch 3, (2 dc), ch 1, *(3 dc), ch 1* in every sp, ss to ch 3.", "Join in ch1sp, ch 3, 2 dc in same sp, ch 1, *3 dc in every sp, ch 1* around, join."} {
		_, kinds, arches = lastRow(t, below+"Rnd 3: "+third+"\n")
		assert.Equal(t, 35, kinds["dc"], third)
		assert.Equal(t, map[int]int{1: 12}, arches, third)
	}
}

// 11 below are no pairs, unless the chain is one of them, which nothing says.
func TestAChainThatIsAStitchOnlyForTheCountIsTold(t *testing.T) {
	g := graph(t, "Terms: US\nMake a magic ring.\nRnd 1: Ch 3 (counts as dc), 10 dc in ring, join with sl st to top of ch 3.\nRnd 2: Ch 1, *2 sc in next st, sc in next st; rep from * around, join.\n")
	assert.NotEmpty(t, g.Rows[len(g.Rows)-1].Amiss)
}

// Counted by hand: 12 spaces, two in each.
func TestYarnJoinedBeforeARoundTellsWhereItBegins(t *testing.T) {
	for _, words := range []string{"Fasten off.\nJoin new colour in any ch-2 space.\n", "Fasten off and weave in ends.\nJoin B into any 2 CH space;\n", "Break yarn.\nAttach B with a sl st in any ch sp.\n"} {
		_, kinds, arches := lastRow(t, "Terms: US\nCh 4, join.\nRnd 1: Ch 3, 11 dc in ring, join.\nRnd 2: Ch 5, (dc in next dc, ch 2) around, join to 3rd ch.\n"+words+"Rnd 3: Ch 3, dc in same sp, ch 1, (2 dc in next sp, ch 1) around, join.\n")
		assert.Equal(t, 23, kinds["dc"], words)
		assert.Equal(t, map[int]int{1: 12}, arches, words)
	}
}

// Counted by hand: 12 in one chain, two in each.
func TestARowIntoOneChainThatIsJoinedIsARound(t *testing.T) {
	for _, words := range []string{"Ch 3.\nRow 1: 12 dc in 3rd ch from hook, sl st in first dc.\n", "Row 1: Ch 3, 12 dc in third ch from hook. Join.\n"} {
		row, kinds, _ := lastRow(t, "Terms: US\n"+words+"Row 2: Ch 2, 2 dc in each dc around, sl st in first dc.\n")
		assert.Equal(t, 24, kinds["dc"], words)
		assert.True(t, row.Round, words)
	}
}

// Counted by hand: six arches of 3, and in each of them 1 + 1 + 2 + 1 + 1.
func TestAListBeforeASpaceGoesIntoItAsAWhole(t *testing.T) {
	const below = "Terms: US\nMake a magic ring.\nRnd 1: Ch 1, 12 sc in ring, join.\nRnd 2: Ch 1, sc in same st, *ch 3, skip 1, sc in next; rep from * around, ch 3, join.\nRnd 3: "
	for _, words := range []string{
		"Sc, hdc, 2 dc, hdc, sc in each ch-3 loop around, join.", "Work 1 sc, 1 hdc, 2 dc, 1 hdc, 1 sc into each loop. Join.", "*Sc, hdc, 2 dc, hdc, sc all in next loop; rep from * around, join.",
		"Ch 1, sc, hdc, 2 dc, hdc, sc in first sp, *sc, hdc, 2 dc, hdc, sc in next sp; rep from * around, join.", "*In next loop make sc, hdc, 2 dc, hdc, sc; rep from * around, join.",
		"Sl st in loop, ch 1, in same loop work sc, hdc, 2 dc, hdc, sc. In each loop around, work sc, hdc, 2 dc, hdc, sc. Join.",
	} {
		row, kinds, _ := lastRow(t, below+words+"\n")
		assert.Equal(t, map[string]int{"sc": 12, "hdc": 12, "dc": 12}, kinds, words)
		assert.Empty(t, row.Amiss, words)
	}
}

// Counted by hand: 12 below, one round the post and one in the top of each, the chain among them.
func TestAPostStitchGoesRoundTheChainThatBeganTheRound(t *testing.T) {
	_, kinds, arches := lastRow(t, "Terms: US\nMake a magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st to top of ch 3.\nRnd 2: Ch 3, (fpdc around next st, dc in same st) around, fpdc around ch 3, join.\n")
	assert.Equal(t, map[string]int{"dc": 11, "FPdc": 12}, kinds)
	assert.Empty(t, arches)
}

// Counted by hand: eight pairs, the first behind its chain, and an arch behind each of them, the last one too.
func TestTheLastChainOfARepeatIsAnArchOfItsRound(t *testing.T) {
	const below = "Terms: US\nCh 6, join.\nRnd 1: Ch 3, dc in ring, ch 1, *2 dc in ring, ch 1; rep from * 6 times, join.\n"
	for _, end := range []string{"rep from *.", "rep from * around.", "rep from * around, join."} {
		_, kinds, arches := lastRow(t, below+"Rnd 2: Ch 3, 1 dc in dc, ch 3, *1 dc in each of next 2 dc, ch 3; "+end+"\n")
		assert.Equal(t, 15, kinds["dc"], end)
		assert.Equal(t, map[int]int{3: 8}, arches, end)
	}
}

// A cup in a spiral: the slip stitch below three rounds of one line closes the last of them; rounds that each begin with a chain are each joined.
func TestTheLastOfRoundsInASpiralIsJoined(t *testing.T) {
	for rows, want := range map[string][]bool{
		"Rnds 3-5: Sc in each st around. (12)\nSl st to first sc, fasten off.\n":     {false, false, false, false, true},
		"Rnds 3-5: Sc in each st around (12), sl st in next st, fasten off.\n":       {false, false, false, false, true},
		"Rnds 3-5: Ch 1, sc in each st around, join. (12)\n":                         {false, false, true, true, true},
		"Rnd 3: Sc in each st around, join.\nRnds 4-5: Sc in each st around, join\n": {false, false, true, true, true},
	} {
		g, ok := GraphOf(Read("t", []byte("Terms: US\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"+rows), Options{}), "", 0)
		require.True(t, ok)
		var got []bool
		for _, r := range g.Rows[len(g.Rows)-5:] {
			got = append(got, r.Joined)
		}
		assert.Equal(t, want, got, rows)
	}
}

// R1 is a round where the text has rings and rounds; yarn that is brought forward, a measuring tape and work turned around make none.
func TestARowIsNoRoundForWordsThatHoldARing(t *testing.T) {
	for line, want := range map[string]bool{"Bring yarn to front before slipping.": false, "Measuring tape and a string of beads": false, "Turn your knitting around.": false, "Join in the round.": true, "Work each rnd in st st.": true, "Magic ring": true} {
		g, ok := GraphOf(Read("t", []byte(line+"\n\nCast on 8 sts.\nR1: Knit.\nR2: Purl.\n"), Options{TermsSet: true}), "", 0)
		require.True(t, ok)
		assert.Equal(t, want, g.Rows[len(g.Rows)-1].Round, line)
	}
}
