package work

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Counted by hand: six stitches in the only chain, and two in each of them.
func TestRoundsWithoutNumbersGoAroundTheirChainOrRing(t *testing.T) {
	for _, begin := range []string{"Ch 2, 6 sc in 2nd ch from hook. 2 sc in each sc.", "Chain 2. 6 sc into the first chain. 2 sc into each st.", "6 sc in magic ring.\n2 sc in each st.", "Ch 2.\n6 sc in 2nd ch from hook.\n2 sc in each sc."} {
		row, kinds, _ := lastRow(t, "Terms: US\n\nFlower\n"+begin+"\n")
		assert.True(t, row.Round, begin)
		assert.Equal(t, map[string]int{"sc": 12}, kinds, begin)
	}
	row, _, _ := lastRow(t, "Terms: US\n\nFan\nCh 4, 4 dc in 4th ch from hook, turn.\nRow 2: Ch 3, 2 dc in each dc across.\n")
	assert.False(t, row.Round, "what is turned is a fan")
}

// Counted by hand: four groups of three trebles, or five where the repeat is told to follow the first; the chain stands for one of them.
func TestACountSettlesHowOftenARepeatIsDrawn(t *testing.T) {
	for count, want := range map[string]int{"(12 sts, 4 ch-spaces)": 11, "(15 sts, 5 ch-spaces)": 14, "(12 dc)": 11} {
		_, kinds, _ := lastRow(t, "Terms: US\n\nSquare\nCh 4, sl st to join.\nRnd 1: Ch 3, 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 3 times, join to top of ch 3. "+count+"\n")
		assert.Equal(t, want, kinds["dc"], count)
	}
}

// Counted by hand: 4 corners of six trebles each, one of them a chain.
func TestYarnIsJoinedInACorner(t *testing.T) {
	const first = "Terms: US\n\nSquare\nCh 4, sl st to join.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join to top of ch 3. (12 dc)\n"
	for _, begin := range []string{
		"Join B in any corner-sp.\nRnd 2: (Ch 3, 2 dc, ch 2, 3 dc) in same corner-sp",
		"Join B to any corner.\nRnd 2: Ch 3, 2 dc, ch 2, 3 dc in same sp",
		"Rnd 2: Join B into any 2ch corner space. Ch 3, 2 dc, ch 2, 3 dc into the same corner space",
		"Rnd 2: Join B in any corner 2ch sp, ch 3, 2 dc, ch 2, 3 dc in same sp",
	} {
		_, kinds, arches := lastRow(t, first+begin+", ch 1, *(3 dc, ch 2, 3 dc) in next corner sp, ch 1; rep from * twice more, join. (24 dc)\n")
		assert.Equal(t, 23, kinds["dc"], begin)
		assert.Equal(t, map[int]int{1: 4, 2: 4}, arches, begin)
	}
}

// Counted by hand: 8 loops below, a stitch and an arch in each.
func TestHowOftenIsSaidBehindAround(t *testing.T) {
	for _, end := range []string{"(sc in next loop, ch 3) around eight times.", "*sc in next loop, ch 3; rep from * around, 8 times in all.", "*sc in next loop, ch 3* all around, 8 times."} {
		_, kinds, arches := lastRow(t, "Terms: US\n\nMotif\nCh 5, join to form a ring.\nRnd 1: (Sc, ch 6) into ring 8 times.\nRnd 2: "+end+"\n")
		assert.Equal(t, map[string]int{"sc": 8}, kinds, end)
		assert.Equal(t, map[int]int{3: 8}, arches, end)
	}
}

// Counted by hand: eleven stitches beside the chain, which is told before the round and stands in it.
func TestTheChainBehindAMagicRingBeginsTheFirstRound(t *testing.T) {
	for _, begin := range []string{"Make a magic ring, ch 3.\n", "Magic ring. Ch 3 (counts as dc).\n", "Make a magic ring.\nCh 3.\n"} {
		row, kinds, _ := lastRow(t, "Terms: US\n\nMotif\n"+begin+"Rnd 1: 11 dc in ring, join. (12 dc)\n")
		assert.Equal(t, map[string]int{"dc": 11}, kinds, begin)
		assert.True(t, row.Stitches[0].Turning && row.Stitches[0].Counts, begin)
	}
}

// Counted by hand: a picot behind each second of 12 stitches, and no arch beside it.
func TestAPicotOfSoManyChainsIsOne(t *testing.T) {
	for _, words := range []string{"ch-5 picot", "5-ch picot", "a 5ch picot"} {
		row, kinds, _ := lastRow(t, "Terms: US\n\nMotif\nMake a magic ring.\nRnd 1: Ch 1, 12 sc in ring, join. (12 sc)\nRnd 2: Ch 1, *sc in next 2 sc, "+words+"; rep from * around, join. (12 sc)\n")
		picots := 0
		for i := range row.Stitches {
			if s := &row.Stitches[i]; s.Stitch != nil && s.Stitch.ID == "picot" {
				picots++
			} else {
				assert.True(t, s.Chain == 0 || s.Turning, words)
			}
		}
		assert.Equal(t, 6, picots, words)
		assert.Equal(t, 12, kinds["sc"], words)
	}
}
