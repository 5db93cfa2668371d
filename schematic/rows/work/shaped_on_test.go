package work

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Shaping that goes on as before, in the words in which patterns say so (common practice): from 18 stitches to 60 in steps of 6, and
// from 18 down to 6.
func TestShapingGoesOnUntilTheNumberThatIsNamed(t *testing.T) {
	const to = "Terms: US\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st. (12)\nRnd 3: [1 sc, inc] 6 times. (18)\n%s\nNext rnd: 1 sc into each st around. (%d)\n"
	for n, phrases := range map[int][]string{
		60: {
			"Continue increasing 6 sts each round until there are 60 sts.", "Continue increasing 6 sts per round until 60 sts.",
			"Keep increasing by 6 sts each round until you have 60 sts.", "Continue increasing by 6 each round until there are 60 sts in total.",
			"Continue in this way, increasing 6 sts each round, until you have 60 sts.", "Continue to increase 6 sts every round in this way until you have 60 sts.",
			"Continue increasing 6 sts each round in this way until you have 60 sts.", "Continue in established pattern, increasing 6 sts per round, until you have 60 sts.",
			"Continue in this manner, adding 1 more sc between increases each round, until there are 60 sts.", "Continue like this until you have 60 sts.",
			"Carry on increasing in the same way until you have 60 stitches in total.", "Work increase rounds as set until there are 60 sts.",
			"Continue to increase in this way until you have 60 sts in the round.", "Work 7 more increase rounds. (60)", "Continue with increases until 60 sts.",
			"Continue for 7 more rounds, working 1 more st between increases each time. (60)", "Rnds 4-10: Continue increasing 6 sts each round. (60)",
			"Continue as established, increasing 6 stitches each round, for 7 more rounds (60 sts).", "Increase in this manner until the circle has 60 sts.",
		},
		6: {
			"Continue decreasing 6 sts each round in this way until 6 sts remain.", "Continue to decrease in the same manner until 6 sts are left.",
			"Keep decreasing until you have 6 sts left.", "Continue until you have six sts left.", "Repeat decreasing rounds until 6 sts remain.",
			"Carry on decreasing every round until only 6 stitches remain.", "Continue to dec 6 sts on every 2nd round until 6 sts remain.",
			"Keep working decrease rounds until 6 sts are left.",
		},
	} {
		for _, s := range phrases {
			phraseComesTo(t, to, s, n, true)
		}
	}
	for s, n := range map[string]int{
		"Continue increasing 6 sts each round in this way until you have 61 sts.":                61, // 43 is not a multiple of 6
		"Now continue like this adding 6 sts in each round, until you have the 60 sts you need.": 60, // not read: told, and never passed over
	} {
		rep := Check(Read("t", fmt.Appendf(nil, to, s, n), Options{}))
		assert.True(t, len(rep.Findings) > 0 || rep.Read.Whole < rep.Read.Lines, s)
	}
}

// A plain row that is shaped somewhere, by how many stands behind it, and what divides a count over the needles: 14 stitches before it.
func TestAPlainRowIsShapedSomewhere(t *testing.T) {
	for n, phrases := range map[int][]string{
		10: {"Next rnd: Knit, dec 2 sts at each end. %d sts"},
		12: {"Next rnd: Knit, dec 2 sts. %d sts", "Next rnd: Knit, decreasing 2 sts evenly around. (%d sts)", "Next rnd: Knit to end, decreasing 1 st at each end. (%d sts)", "Next rnd: Knit, dec 1 st over each gap. %d sts"},
		13: {"Next rnd: Knit, dec 1 st at beg of rnd. %d sts"},
		14: {"Next rnd: Knit, dec 0 sts. %d sts", "Work even until foot measures 7 in from toe, or 2 in less than desired length. %d sts"},
		16: {"Next rnd: Knit, pick up 2 sts at gap. %d sts", "Next rnd: Knit all sts, picking up 1 st in each gap to avoid holes. %d sts"},
		18: {"Next rnd: Purl, increasing 4 sts. (%d sts)"},
		40: {"Rep Rnds 2 and 3 13 more times. %d sts - 20 sts on each needle.", "Rep Rnds 2 and 3 13 more times. (%d sts, 20 on each needle)", "Rep Rnds 2 and 3 13 more times - %d sts (20 sts on each needle)."},
	} {
		for _, s := range phrases {
			const text = "Terms: US\nCast on 12 sts and join in the round.\nRnd 1: Knit.\nRnd 2: K1, m1, k to last st, m1, k1. (14)\nRnd 3: Knit.\n%s\nNext rnd: *K1; rep from * around. (%d sts)\n"
			phraseComesTo(t, text, fmt.Sprintf(s, n), n, true)
		}
	}
}

// 78 less 3 at the beginning of each of two rows is 72.
func TestStitchesAreBoundOffAtTheBeginningOfEachRowThatALabelNames(t *testing.T) {
	const text = "Back\nCast on 78 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\n%s\nNext row: K%d.\n"
	for _, label := range []string{"Next 2 rows", "Rows 3-4", "Rows 3 and 4", "3rd and 4th rows"} {
		for _, s := range []string{"Bind off 3 sts at the beginning of each row.", "BO 3 sts at beg of row.", "Cast off 3 sts at beg, k to end.", "Cast off 3 sts at start of both rows.", "Bind off 3 sts at beg of these rows.",
			"Cast off 3 sts at beg of each row, work to end.", "Cast off 3 sts at beg of every row."} {
			phraseComesTo(t, text, label+": "+s, 72, true)
		}
	}
}
