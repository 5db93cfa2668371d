package chart

import (
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
