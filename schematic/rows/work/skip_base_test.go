package work

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A chain of three that counts stands for the first of 20, so that the stitch below it is passed and 19 follow: 20, however it is said.
// Common practice.
func TestTheStitchBelowATurningChainIsPassedOnce(t *testing.T) {
	for _, pass := range []string{"skip same st", "skip the base st", "skip st at base of ch", "skip the stitch at the base of the turning chain", "sk first st", "skip first dc (directly below ch 3)",
		"skip the stitch the ch 3 is worked from", "without working into the first st", "leaving first st unworked"} {
		for _, across := range []string{"dc in each st across", "dc in each of next 18 sts, dc in last st", "*dc in next st; rep from * across"} {
			src := fmt.Sprintf("Terms: US\nCh 22.\nRow 1: Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch across, turn. (20 dc)\n"+
				"Row 2: Ch 3 (counts as dc), %s, %s, turn. (20 dc)\nRow 3: Ch 3 (counts as dc), skip first st, dc2tog, dc in each st across. (19 dc)\n", pass, across)
			assert.Empty(t, Check(Read("t", []byte(src), Options{})).Findings, src)
			slip := strings.Replace(src, "turn. (20 dc)\nRow 3", "turn. (21 dc)\nRow 3", 1)
			assert.Len(t, Check(Read("t", []byte(slip), Options{})).Findings, 1, slip)
		}
	}
}
