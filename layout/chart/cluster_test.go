package chart

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A cluster has as many legs, and of the stitch, as its name or its words tell, and the key says so.
func TestAClusterIsOfTheStitchesThatItsNameTells(t *testing.T) {
	const ring = "Make a magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: Ch 3, dc in next dc, ch 1, *"
	for words, want := range map[string]string{
		"2dc-cl in next st":       "2-dc cl opened out: 2 dc in one place, closed together",
		"2-dc cluster in next st": "2-dc cl opened out: 2 dc in one place, closed together",
		"3-dc cluster in next st": "cl opened out: 3 dc in one place, closed together",
		"cl in next st":           "cl opened out: 3 dc in one place, closed together",
		"4-tr cluster in next st": "4-tr cl opened out: 4 tr in one place, closed together",
		"5-tr bobble in next st":  "5-tr bo opened out: 5 tr in one place, closed together",
		"holding back last loop of each tr on hook, 4 tr in next st, yo and draw through all loops on hook": "4-tr cl opened out: 4 tr in one place, closed together",
	} {
		p, _ := laid(fromText(t, ring+words+", ch 1; rep from * around, join.\n"))
		var key []string
		for _, e := range p.keyOf() {
			key = append(key, e.what)
		}
		assert.Contains(t, key, want, words)
	}
}

// The text's own name for a cluster and the chains that stand for one are one symbol: the key tells it once, by that name.
func TestAClusterThatHasTwoNamesIsToldOnce(t *testing.T) {
	const own = "Special stitches\n\n2dc-cl – 2 dc worked together to form 1 st\n\nPattern\n\n"
	p, _ := laid(fromText(t, own+"Make a magic ring.\nR1: ch 3 (counts as dc) 11dc, sl st to close (12dc)\nR2: ch 3, dc in same st (counts as 2dc-cl), 2dc-cl in same st, ch1, *(2x2dc-cl, ch1) in next st, rep from * around, sl st to 1st st to join\n"))
	var key []string
	for _, e := range p.keyOf() {
		if strings.Contains(e.what, "cl") {
			key = append(key, e.what)
		}
	}
	assert.Equal(t, []string{"2dc-cl: 2-dc cluster (UK 2-tr cluster)", "2dc-cl opened out: 2 dc in one place, closed together"}, key)
}

// Without a name for joined or open rounds: which go on in a spiral is said, and a last round that is not joined is none.
func TestWhichRoundsAreNotJoinedIsSaid(t *testing.T) {
	for rows, want := range map[string]string{
		"Rnd 3: Sc in each sc around. (12)\n":                                                                                  "they go on in a spiral and are not joined",
		"Rnd 3: Sc in each sc around, join. (12)\nRnd 4: Ch 1, sc in each sc around, join. (12)\n":                             "rounds 1 and 2 go on in a spiral and are not joined",
		"Rnd 3: Sc in each sc around, join. (12)\nRnd 4: Ch 1, sc in each sc around. (12)\nRnd 5: Sc in each sc around, join.": "round 4 is not joined",
	} {
		w := workOfText(t, "Terms: US\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc around. (12)\n"+rows)
		assert.Contains(t, w.spiralNote(), want, rows)
	}
	w := workOfText(t, "Terms: US\nRnd 1: Ch 1, 6 sc in magic ring, join. (6)\nRnd 2: Ch 1, 2 sc in each sc around. (12)\n")
	assert.Empty(t, w.spiralNote())
}
