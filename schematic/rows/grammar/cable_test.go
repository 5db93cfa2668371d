package grammar

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/stitch"
)

func TestACableThatTheTextDescribesIsACrossing(t *testing.T) {
	for words, want := range map[string]stitch.Cross{
		"slip next 3 sts onto cable needle and hold at back, k3, k3 from cable needle":                                                        {Held: 3, Over: 3},
		"slip next 2 sts to cable needle and hold in front, k2, k2 from cable needle":                                                         {Held: 2, Over: 2, Left: true},
		"sl next 2 sts to cn, hold in front, p1, k2 from cn":                                                                                  {Held: 2, Over: 1, Left: true, Purl: true},
		"sl 1 st to cn and hold behind, k2, p1 from cn":                                                                                       {Held: 1, Over: 2, Purl: true},
		"slip next st to cable needle and hold in front, knit 1 tbl, k1 tbl from cable needle":                                                {Held: 1, Over: 1, Left: true, Twisted: true},
		"knit the second st on the left needle in front of the first, then knit the first":                                                    {Held: 1, Over: 1},
		"knit the second st on the left needle from behind, then knit the first, slip both off":                                               {Held: 1, Over: 1, Left: true},
		"place the next four sts on a cable needle at the front, knit 4, then knit the 4 from cable":                                          {Held: 4, Over: 4, Left: true},
		"k2tog but do not slip from needle, knit first st again, slip both sts":                                                               {Held: 1, Over: 1},
		"skip first st, knit 2nd st through back loop, knit first st, slip both sts":                                                          {Held: 1, Over: 1, Left: true},
		"sl 3 sts to cn and hold in back, k2, slip the purl st from cn back to left needle and p1, k2 from cn":                                {Held: 2, Over: 2, Mid: 1, Purl: true},
		"place 2 sts on cn and hold in front, place 1 st on a second cn and hold in back, k2, k1 from the back cn, then k2 from the front cn": {Held: 2, Over: 2, Mid: 1, Left: true},
		"slip off the next 2 sts on a holder; keep the holder in front of the work, k the next 2 sts, then k the 2 sts on the holder":         {Held: 2, Over: 2, Left: true},
	} {
		got, ok := crossOf(words)
		assert.True(t, ok, words)
		assert.Equal(t, want, got, words)
	}
	_, ok := crossOf("sc in next st, ch 3, sc in same st")
	assert.False(t, ok)
	_, ok = crossOf("sl 3 sts to cn and hold in back, k2, slip 1 st back to left needle and k3 from cn")
	assert.False(t, ok, "two groups where three are told of")
}
