package work

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Counted by hand: 6 sc with 5 ch-5 spaces between them, a dc at either end; a shell in each sc.
func TestTheLastShellOfARowStandsBeforeTheTurningChain(t *testing.T) {
	const below = "Terms: US\nSpecial stitches: Shell = 5 dc in st indicated. Picot = ch 3, sl st in 3rd ch from hook.\nCh 26.\nRow 1: Sc in 2nd ch from hook, *ch 5, skip 3 ch, sc in next ch; rep from * across. Turn. (6 ch-5 sps)\n" +
		"Row 2: Ch 5 (counts as dc, ch 2), *sc in next ch-5 sp, ch 5; rep from * to last ch-5 sp, sc in last ch-5 sp, ch 2, dc in last sc. Turn.\nRow 3: Ch 1, sc in first dc, *shell in next sc, sc in next ch-5 sp; rep from * across"
	for _, end := range []string{" to last sc, shell in last sc, sc in 3rd ch of ch-5", ", ending sc in 3rd ch of ch-5", ", sc in 3rd ch of ch-5"} {
		row, kinds, arches := lastRow(t, below+end+". Turn.\n")
		assert.Equal(t, map[string]int{"dc": 30, "sc": 7}, kinds, end)
		assert.Empty(t, arches, end)
		assert.Equal(t, []int{0}, row.Stitches[len(row.Stitches)-1].Feet, end)
	}
}

// By hand: 3 ch at the hook and 3 below a mesh of 2; ch 24 is 6 meshes, of which row 2 fills 2.
func TestChainsThatCountAsAMeshHoldIt(t *testing.T) {
	const filet = "Terms: US\nOpen mesh: ch 2, sk 2 sts, dc in next dc. Solid mesh over open mesh: 2 dc in ch-2 sp, dc in next dc.\nCh 24.\nRow 1: Dc in 9th ch from hook (counts as first open mesh), *ch 2, sk 2 ch, dc in next ch; rep from * across. Turn. (6 open meshes)\n"
	_, kinds, arches := lastRow(t, filet)
	assert.Equal(t, map[string]int{"dc": 6}, kinds)
	assert.Equal(t, map[int]int{2: 6}, arches)
	_, kinds, arches = lastRow(t, filet+"Row 2: Ch 5 (counts as dc and ch 2), sk first dc and ch-2 sp, dc in next dc, 1 open mesh, 2 solid mesh, 2 open mesh. Turn.\n")
	assert.Equal(t, map[string]int{"dc": 10}, kinds)
	assert.Equal(t, map[int]int{2: 4}, arches)
}

func TestBlocksFromCornerToCornerAreWorkedUpToByTheirSpaces(t *testing.T) {
	const blocks = "Terms: US\nRow 1: Ch 6, dc in 4th ch from hook and in next 2 ch. Turn.\nRow 2: Ch 6, dc in 4th ch from hook and in next 2 ch, (sl st, ch 3, 3 dc) in ch-3 sp of next block. Turn.\nRow 3: Ch 6, dc in 4th ch from hook and in next 2 ch, *(sl st, ch 3, 3 dc) in ch-3 sp of next block; rep from * across. Turn.\nRow 4: Rep Row 3.\n" +
		"Row 5: Sl st in each of first 3 dc and in ch-3 sp, ch 3, 3 dc in same sp, *(sl st, ch 3, 3 dc) in ch-3 sp of next block; rep from * "
	for _, end := range []string{"until 1 block remains, sl st in last ch-3 sp.", "across to last block, sl st in ch-3 sp of last block.", "to last ch-3 sp, sl st in last ch-3 sp."} {
		_, kinds, arches := lastRow(t, blocks+end+" Turn.\n")
		assert.Equal(t, map[string]int{"dc": 9, "slst": 3}, kinds, end) // 3 blocks of 4, the first begun by its turning chain
		assert.Equal(t, map[int]int{3: 2}, arches, end)
	}
}

func TestACountOfChainsThatIsAdviceIsNotWorked(t *testing.T) {
	g := graph(t, "Terms: US\nCh 22 loosely. (I like thin scarves. Chain a multiple of 2, plus an additional 2 chains.)\nRow 1: Dc in 3rd ch from hook and in each ch across. (20 dc)\nRow 2: Ch 2, turn. *FPdc (front post double crochet) in first dc. BPdc in next dc.* Rep from * across.\n")
	assert.Len(t, g.Rows[0].Stitches, 22)
	assert.Equal(t, "BPdc", g.Rows[2].Stitches[2].Stitch.ID, "a long name in brackets is no stitch of its own")
}

// 12 chains are 3 times 3, 1 and 2 for the foundation; the row is met from the hook.
func TestARowIsShownOnTheMultipleWithTheChainsThatAreAdded(t *testing.T) {
	g := graph(t, "Terms: US\nMultiple of 3 sts + 1. (add 2 for base chain)\nRow 1: Skip 3 ch (count as 1 dc), 1 dc into next and each ch to end, turn.\n")
	require.Len(t, g.Rows, 2)
	assert.Equal(t, 12, g.Assumed)
	assert.Equal(t, []int{8}, g.Rows[1].Stitches[1].Feet)
	shells := "Terms: US\nMultiple of 6 + 3.\nRow 1: 2 dc into 3rd ch from hook, *skip 2 ch, sc into next, skip 2 ch, 5 dc into next; rep from * to last 3 ch, skip 2 ch, 3 dc into last ch.\nRow 2: Ch 1, sc into %s, *ch 2, dc5tog over next 5 sts, ch 2, sc into next st; rep from * to end.\n"
	g = graph(t, fmt.Sprintf(shells, "each of first 2 sts"))
	assert.NotEmpty(t, g.Rows[2].Unread, "nobody is told what does not fit on stitches that nobody said")
	g = graph(t, fmt.Sprintf(shells, "first st")) // 2 skipped ch, 2 + 1 + 5 + 1 + 5 + 1 + 3 = 19 = 1 + 3 times 6
	assert.Len(t, g.Rows[1].Stitches, 19)
	assert.Equal(t, []int{0}, g.Rows[2].Stitches[len(g.Rows[2].Stitches)-1].Feet, "the last goes into the skipped chains, as row 2 tells")
}

// How rows begin and end, as designers say it (common practice).
func TestRowsBeginWithASlippedStitchAsWordsSay(t *testing.T) {
	kind := func(s GraphStitch) string { return strings.ToUpper(s.Stitch.ID[:1]) }
	for words, want := range map[string]string{
		"Knit 2 rows, slipping the first st of every row.\n":                              "SKKK\nSKKK\nKKKK\n",
		"Knit 2 rows, slipping the first st of all except the first row.\n":               "KKKK\nSKKK\nKKKK\n",
		"Slip the first st of every row.\nRow 1: Knit.\nRow 2: Purl.\n":                   "SKKK\nSPPP\nSKKK\n",
		"The first st of each row is slipped purlwise.\nRow 1: Knit.\nRow 2: Purl.\n":     "SKKK\nSPPP\nSKKK\n",
		"Slip the first and knit the last st of every row.\nRow 1: Knit.\nRow 2: Purl.\n": "SKKK\nSPPK\nSKKK\n",
		"1 row purl.\n3 rows knit.\nPurl 2 rows.\n":                                       "PPPP\nKKKK\nKKKK\nKKKK\nPPPP\nPPPP\nKKKK\n",
	} {
		assert.Contains(t, pictured(t, "Cast on 4 sts.\n"+words+"Next row: Knit.\n", kind), "KKKK\n"+want, words)
	}
}

func TestWhatIsLeftOfARow(t *testing.T) {
	_, kinds, _ := lastRow(t, "Terms: US\nCh 12.\nRow 1: Sc in 2nd ch from hook, sc in each ch across. Turn.\nRow 2: Ch 1, sc in first 2 sts, ch 3, cluster over next 4 sts, ch 3, cluster over last 5 sts. Turn.\n")
	assert.Equal(t, map[string]int{"sc": 2, "dc4tog": 1, "dc5tog": 1}, kinds)
	row, _, _ := lastRow(t, "Terms: US\nCh 6, join with sl st to form ring.\nRow 1: Ch 4 (counts as tr), 3 tr in ring. Turn.\nRow 2: Ch 4 (counts as tr), skip first tr, 1 dc in each of next 2 tr. Skip last tr. Ch 1, tr in top of ch-4. Turn.\n")
	assert.Equal(t, []int{0}, row.Stitches[len(row.Stitches)-1].Feet, "what is skipped is the chain itself")
}

func TestHeadingsPartNoRowsThatAreNumberedOn(t *testing.T) {
	src := "A Square\n\nTerms: US\nIncrease\nCh 4.\nRow 1: Sc in 2nd ch from hook and in each ch across. Turn.\nRow 2: Ch 1, 2 sc in each st across. Turn.\nDecrease\nRow 3: Ch 1, *sc2tog; rep from * across. Turn.\n"
	x := Joined(Read("t", []byte(src), Options{}))
	require.Len(t, x.Sections, 1)
	assert.Equal(t, "Increase, Decrease", x.Sections[0].Name)
}

// Ch 13: 4 at the hook, a shell, 2 passed, sc, 2 passed, a shell, 1 passed, and the end.
func TestAGroupMayBeToldAmongAbbreviations(t *testing.T) {
	for _, told := range []string{"ch – chain; dc – double crochet; shell – (2 dc, ch 2, 2 dc) in place stated.", "ch = chain, dc = double crochet, shell = (2 dc, ch 2, 2 dc) in place stated"} {
		row, kinds, arches := lastRow(t, "Terms: US\nABBREVIATIONS: "+told+"\nCh 13.\nRow 1: Shell in 5th ch from hook, skip 2 ch, sc in next ch, skip 2 ch, shell in next ch, dc in end ch. Turn.\n")
		assert.Equal(t, map[string]int{"dc": 9, "sc": 1}, kinds, told)
		assert.Equal(t, map[int]int{2: 2}, arches, told)
		assert.Equal(t, []int{0}, row.Stitches[len(row.Stitches)-1].Feet)
	}
}

// What stands behind a row, or in its note, said as designers do (common practice).
func TestRowsAreToldByWordsBehindThem(t *testing.T) {
	kind := func(s GraphStitch) string { return strings.ToUpper(s.Stitch.ID[:1]) }
	for _, first := range []string{"Row 1: Purl all odd rows on (WS).", "Row 1 (WS): Purl. And all odd rows.", "Row 1: P4 – and every following wrong side row"} {
		assert.Contains(t, pictured(t, "Cast on 4 sts.\n"+first+"\nRow 2: K3, p1.\nRow 4: P1, k3.\n", kind), "KKKK\nPPPP\nKKKP\nPPPP\nPKKK\n", first)
	}
	assert.Contains(t, pictured(t, "Cast on 4 sts.\nRow 1 (RS): Knit.\nRow 2: Knit, dec 1 st at each end. (2 sts)\n", kind), "KKKK\nKK\n", "k2tog at both ends of four")
	assert.Contains(t, pictured(t, "Cast on 4 sts in A.\nRow 1 (RS): 1A, 2B, 1A.\n", func(s GraphStitch) string { return s.Stitch.ID + s.Colour }), "kAkBkBkA\n", "a cast-on looks like no stitch yet")
	assert.Contains(t, pictured(t, "Using CA cast on 2 sts.\nRow 1 (RS): Using CB, knit.\n", colour), "CACA\nCBCB\n")
	g := graph(t, "Terms: US\nCh 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, *ch 4, sc in next sc; rep from * across, turn.\nRow 3: Holding ch-4 loops at back, ch 1, sc in each sc across, turn.\nRow 4: Ch 1, sc in each sc across.\nRepeat from Row 2 for pattern.\n")
	assert.Equal(t, [2]int{2, 4}, g.Again)
	assert.Len(t, g.Rows[3].Stitches, 5, "a turning chain and 4 sc")
}
