package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Texts that are right, in forms that were told as wrong: each count is worked out by hand beside its row.
func TestWhatIsRightInFreeWordsIsNotToldAsWrong(t *testing.T) {
	for name, src := range map[string]string{
		"a bracket that says how often: 6 + 6 from 18":               "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: *sc in next st, 2 sc in next st; rep from * around. (18)\nRnd 4: dec (3 times), sc in next 6 sts, dec (3 times). (12)\n",
		"loops of a stitch are no spaces":                            "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: 12 sc in back loops only. (12)\nRnd 4: 12 sc through back loop. (12)\nRnd 5: Ch 1, sc in front loop only of same st as joining, sc in front loop of each st around, join with sl st to first sc. (13)\n",
		"what a ring holds, in a bracket: 12, then 24":               "Ch 4 and join to form a ring.\nRnd 1: Ch 3 (counts as 1st dc), 11 dc in ring (12 dc in ring), join to ch 3.\nRnd 2: Ch 3, dc in same st, 2 dc in each st around, join. (24 dc)\n",
		"a repeat around, as far as it goes: 1 + 2 + 11 x 3 + 1 - 1": "Ch 4 and join to form a ring.\nRnd 1: Ch 3 (counts as 1st dc), 11 dc in ring, join to ch 3. (12 dc)\nRnd 2: Ch 3, dc in same st, 2 dc in each st around, join. (24 dc)\nRnd 3: Ch 3, dc in same st, *dc in next st, 2 dc in next st, rep from * around, join. (36 dc)\n",
		"a round that a chain closes over the last stitch":           "Ch 8, join to form a ring.\n1st row: Ch 1, 20 sc in ring, join.\n2nd row: Ch 6, skip 1 sc, dc in next sc, *ch 3, skip 1 sc, dc in next sc, rep from * 7 times, ch 3, join in the 3rd st of ch 6.\n",
		"how the last time ends, said again: 3 + 9 x 8":              "Cast on 75 sts.\nRow 1: *K1, p1, k1, k5*, rep from * to * across, end k1, p1, k1.\nRow 2: K1, p1, k1, *p5, k1, p1, k1*, rep from * to * across, end k1, p1, k1.\n",
		"a number of times in all, and then otherwise: 50 - 8 - 2":   "Sizes: S (M, L)\nCast on 52 (56, 60) sts.\nRow 1: Knit.\nDec Row (RS): K2, ssk, k to last 4 sts, k2tog, k2. 50 (54, 58) sts\nNext row: Purl.\nWork Dec Row every other row a total of 5 (6, 7) times, then every 4th row 1 (0, 2) times. 40 (44, 42) sts.\n",
		"a row is worked and shaped in one: 18 - 6, then 12 + 4":     "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 3 sc in each st around. (18)\nRnd 3: Sc around, decreasing 6 evenly. (12)\nRnd 4: Sc in each st around, inc 4 sts evenly. (16)\n",
		"alternate rounds":          "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc around. (12)\n3rd and alternate rnds: Sc in each sc around.\n4th rnd: *2 sc in next sc, sc in next sc; rep from * around. (18)\n6th rnd: *2 sc in next sc, sc in next 2 sc; rep from * around. (24)\n",
		"a half in the gauge":       "Gauge: 13 ½ sts = 4\"; 8 rows = 4\" in pattern stitch\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n",
		"a ring of few chains":      "Ch 8, join to form a ring.\nRnd 1: *Sc, ch 9; rep from * 7 times more, sc, join to first sc.\n",
		"sleeves are held: 60 - 20": "Cast on 60 sts.\nRow 1: Knit.\nNext row: K10, place next 10 sts for first sleeve on scrap yarn, k20, place next 10 sts for second sleeve on scrap yarn, k10. (40 sts)\n",
	} {
		list := Check(Read("t", []byte("Terms: US\n"+src), Options{})).Findings
		assert.Empty(t, list, name)
	}
}

// The same forms still tell what does not fit.
func TestWhatIsWrongInFreeWordsIsTold(t *testing.T) {
	for name, src := range map[string]string{
		"4 x dec for 3":     "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: *sc in next st, 2 sc in next st; rep from * around. (18)\nRnd 4: dec (3 times), sc in next 6 sts, dec (4 times). (12)\n",
		"13 for 12":         "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: 13 sc in back loops only. (13)\n",
		"3 + 9 x 8 + 1":     "Cast on 76 sts.\nRow 1: K1, p1, k1, *p5, k1, p1, k1*, rep from * to * across, end k1, p1, k1.\n",
		"39 for 40":         "Cast on 52 sts.\nRow 1: Knit.\nDec Row (RS): K2, ssk, k to last 4 sts, k2tog, k2. 50 sts\nNext row: Purl.\nWork Dec Row every other row a total of 5 times, then every 4th row once. 39 sts.\n",
		"two sc are passed": "Ch 8, join to form a ring.\n1st row: Ch 1, 21 sc in ring, join.\n2nd row: Ch 6, skip 1 sc, dc in next sc, *ch 3, skip 1 sc, dc in next sc, rep from * 7 times, ch 3, join in the 3rd st of ch 6.\n",
		"24 is 23 + 1":      "Cast on 24 sts.\nRow 1: K1, *k2, p2; rep from * to end.\n",
	} {
		list := Check(Read("t", []byte("Terms: US\n"+src), Options{})).Findings
		require.Len(t, list, 1, name)
	}
}

// Rows for some sizes are worked in those alone, and their numbers are those of these sizes. By hand: 64 + 4 are 68 in
// size 4, 64 + 8 are 72 in the others, 72 + 4 are 76 in size 8.
func TestRowsForSomeSizesAreOfThoseAlone(t *testing.T) {
	src := `Terms: US
Sizes: 2 (4, 6, 8)
Notes: Ch 1 does not count as a stitch.

Hat
Ch 64 and join with sl st to form a ring.
Rnd 1: Ch 1, sc in each ch around. (64 sc)
Size 4 only: Rnd 2: Ch 1, *sc in next 15 sts, 2 sc in next st; rep from * around. (68 sc)
Sizes 6 and 8 only: Rnd 2: Ch 1, *sc in next 7 sts, 2 sc in next st; rep from * around. (72 sc)
Size 8 only: Rnd 3: Ch 1, *sc in next 17 sts, 2 sc in next st; rep from * around. (76 sc)
All sizes: Next rnd: Ch 1, sc in each st around. 64 (68, 72, 76) sc.
`
	assert.Empty(t, check(src))
	list := check(strings.Replace(src, "(68, 72, 76)", "(68, 73, 76)", 1))
	require.Len(t, list, 1)
	assert.Equal(t, []string{"6"}, list[0].Sizes)

	src = `Terms: US
Sizes: 2 (4, 6, 8)

Back
Cast on 20 (22, 24, 26) sts.
Sizes 6 and 8 only
Row 1: K2 (3), k2tog, k to last 2 (3) sts, k2 (3). 23 (25) sts
All sizes
Next row: K to end. 20 (22, 23, 25) sts
`
	assert.Empty(t, check(src))
	list = check(strings.Replace(src, "23 (25) sts", "23 (24) sts", 1))
	require.Len(t, list, 1)
	assert.Equal(t, []string{"8"}, list[0].Sizes)
}

// A rib that does not fit and the counts that are off for it are one slip, told at the rib, also where another piece is worked as the first.
// By hand: 107 - 2 is 26 x 4 + 1, so that 106 were meant; 106 - 12 = 94, 94 - 14 = 80. A count that is off by itself is told too.
func TestARibThatDoesNotFitIsToldOnceForTheCountsBehindIt(t *testing.T) {
	src := "Terms: UK\n\nBack\nCast on 107 sts.\nRow 1: *K2, p2; rep from * to last 2 sts, k2.\nRow 2: *P2, k2; rep from * to last 2 sts, p2.\n" +
		"Rep last 2 rows 8 times more.\nWork 76 rows in st st.\nShape armholes\nCast off 6 sts at beg of next 2 rows. 94 sts.\nDec 1 st at each end of next 7 rows. 80 sts.\n" +
		"Work 47 rows in st st.\nCast off.\n\nFront\nWork as given for Back to armhole shaping.\nShape armholes\nCast off 6 sts at beg of next 2 rows. 94 sts.\nDec 1 st at each end of next 7 rows. 80 sts.\n"
	lines := func(src string) (at []int) {
		for _, f := range Check(Read("t", []byte(src), Options{})).Findings {
			at = append(at, f.Pos.Line)
		}
		return at
	}
	assert.Equal(t, []int{5}, lines(src))
	assert.Empty(t, lines(strings.Replace(src, "107", "106", 1)))
	assert.Equal(t, []int{5, 11}, lines(strings.Replace(src, "80 sts", "79 sts", 1)))
	assert.Equal(t, []int{5, 19}, lines(src[:len(src)-len("80 sts.\n")]+"79 sts.\n"))
}
