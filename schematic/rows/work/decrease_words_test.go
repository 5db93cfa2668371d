package work

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Decreases told by each movement of the hook, as leaflets print them (common practice): two stitches become one, so that 20 less one at each
// end are 18, and a count of 19 is one finding.
func TestDecreasesToldByTheirMovements(t *testing.T) {
	for _, dec := range []string{
		"draw up a loop in each of next 2 sts, yo and draw through all 3 loops on hook", "pull up a lp in each of first 2 sc, yarn over, pull through all lps",
		"draw a loop through each of next 2 sc, thread over and draw yarn through 3 loops on hook", "[insert hook in next st, yo, pull up a loop] twice, yo, pull through all 3 loops",
		"(pull up loop in next st) 2 times, yo and pull through 3 loops", "dec by drawing up a loop in each of next 2 sts, yo and draw through all 3 loops", "work first 2 sc tog",
		"dec 1 st", "dec (draw up a loop in each of next 2 sts, yo and draw through all loops)",
	} {
		src := fmt.Sprintf("Terms: US\nNotes: Ch 1 does not count as a st.\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"+
			"Row 2: Ch 1, %s, sc in next 16 sts, sc2tog, turn. (18 sc)\nRow 3: Ch 1, sc in each st across, turn. (18 sc)\n", dec)
		x := Read("t", []byte(src), Options{})
		assert.Empty(t, Check(x).Findings, src)
		for _, s := range x.Sections {
			for _, l := range s.Lines {
				assert.Empty(t, l.Unread, src)
			}
		}
		assert.Len(t, Check(Read("t", []byte(strings.Replace(src, "(18 sc)", "(19 sc)", 1)), Options{})).Findings, 1, src)
	}
}

// A half double has its yarn over first.
func TestTallerStitchesAreNoSingleCrochetDecrease(t *testing.T) {
	for _, body := range []string{"yo, draw up a loop in each of next 2 sts, yo and draw through all 5 loops on hook", "[yo, insert hook in next st, draw up a loop] twice, yo and draw through all 5 loops"} {
		x := Read("t", []byte("Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\nRow 2: Ch 1, "+body+", sc in next 18 sts.\n"), Options{})
		assert.NotContains(t, strings.Join(Explain(x, 4), "\n"), "together", body)
	}
	x := Read("t", []byte("Terms: US\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\nRow 2: Ch 1, draw up a loop in each of next 2 sts, yo and draw through all 3 loops, sc in next 18 sts.\n"), Options{})
	assert.Contains(t, strings.Join(Explain(x, 4), "\n"), "single crochet two together")
}

// One shaping at its place is no shaping of the whole row: 20, then 1 fewer at each end, then 1 more.
func TestAShapingAtItsPlaceLeadsTheRow(t *testing.T) {
	for _, src := range []string{
		"Cast on 20 sts.\nRow 1: Dec 1 st, k16, dec 1 st. (18 sts)\nRow 2: Inc 1 st, k to last st, inc 1 st. (20 sts)\n",
		"Cast on 20 sts.\nRow 1: Dec 1 st, work to last 2 sts, dec 1 st. (18 sts)\nRow 2: Dec 1 st. Knit to end. (17 sts)\n",
	} {
		assert.Empty(t, Check(Read("t", []byte(src), Options{})).Findings, src)
		assert.Len(t, Check(Read("t", []byte(strings.Replace(src, "(18 sts)", "(19 sts)", 1)), Options{})).Findings, 1, src)
	}
}
