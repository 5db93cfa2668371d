package work

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Forms in which texts are published; the counts in them follow from their words by hand.
func TestFormsInWhichTextsAreSetOut(t *testing.T) {
	for _, c := range []struct {
		name, text string
		stitches   []int // of each row but the foundation
		round      bool
	}{
		{"a magic ring on a line of its own, and stitches of which no place is told",
			"Make a magic ring:\nRound 1: ch 3 (counts as dc), dc 11, sl st into 3rd ch. (12 dc)\nRound 2: ch 1, sc in each st around, join. (12 sc)", []int{12, 12}, true},
		{"the loop of the first round is its ring",
			"US terms\nCh 4, join with sl st to form ring\nRound 1: Ch 3 (counts as dc), *ch 1, dc into loop. Repeat from * 4 more times. Join to top of ch 3", []int{6}, true},
		{"labels on lines of their own, and rows of several sentences",
			"US terms\nCh 4, sl st to first ch to join into a ring.\nRound 1\nCh 1, 8 sc in ring.\nJoin with sl st to first sc.\n\nRound 2\nCh 1, 2 sc in each sc around.\nJoin.", []int{8, 16}, true},
		{"rows that are joined are rounds",
			"US terms\nCh 6, join to form a ring.\n1st Row. Ch 1, 16 sc in ring, join.\n2nd Row. Ch 1, sc in each sc, join.", []int{16, 16}, true},
		{"a foundation behind words of yarn and hook",
			"Terms: US\nRow 1: With size G hook ch 9, sc in 2nd ch from hook and in each ch across. Turn. (8 sc)\nRow 2: Sc in each st across.", []int{8, 8}, false},
		{"a foundation alone ends a list of stitches",
			"Terms: US\nSpecial Stitches\nShell = [sc, ch 3, 4 dc] in same stitch\nCh 10.\n1st row: sc in 2nd ch from hook and in each ch across, turn.", []int{9}, false},
		{"ea is each", "Terms: US\nCh 7.\nRow 1: Sc in 2nd ch from hook, sc in ea of next 5 ch, turn.\nRow 2: Ch 1, sc in ea sc.", []int{6, 6}, false},
		{"only these stitches are worked on",
			"Terms: US\nCh 10.\nRow 1: sc in 2nd ch from hook and in each ch, turn.\nRow 2: ch 1, sc in first 4 sts, turn. (We will now only be working with these 4 sts)\nRow 3: ch 1, sc in each st. (4 sc)", []int{9, 4, 4}, false},
		{"a bobble in one stitch", "Terms: US\nCh 6.\nRow 1: Sc in 2nd ch from hook and in each ch, turn.\nRow 2: Ch 1, sc in first 2 sts, dc3tog in next st, sc in last 2 sts. (5 sts)", []int{5, 5}, false},
		{"how a stitch is made is no row",
			"Terms: US\nBobble Stitch: Work 3 dc, always inserting the hook into the same stitch, yo and draw through all loops on the hook.\nCh 6.\nRow 1: Sc in 2nd ch from hook and in each ch, turn.", []int{5}, false},
		{"the last time around comes to what the slip stitches went over",
			"US terms\nMake a magic ring.\nRound 1: Ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, join. (12 dc)\n" +
				"Round 2: Ch 3 (counts as dc), dc in next 2 dc, *(2 dc, ch 2, 2 dc) in corner sp, dc in next 3 dc; rep from * 2 more times, (2 dc, ch 2, 2 dc) in corner sp, join. (28 dc)\n" +
				"Round 3: Sl st in next 4 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, *dc in each dc to next corner, (2 dc, ch 2, 2 dc) in corner sp; rep from * around, dc in each dc to beginning, join. (44 dc)",
			[]int{12, 28, 44}, true},
		{"the last time around ends in the space before the first corner",
			"US terms\nMake a magic ring.\nRound 1: Ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, join. (12 dc)\n" +
				"Round 2: Sl st to corner ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around, ch 1, join. (24 dc)\n" +
				"Round 3: Sl st to corner ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *ch 1, 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; repeat from * around, join. (36 dc)",
			[]int{12, 24, 36}, true},
		{"a pattern that begins is no other piece",
			"Cast on 8 sts.\nFoundation row: K8.\nCommence Pattern\n1st row: P8.\n2nd row: K8.", []int{8, 8, 8}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := graphOfText(t, c.text)
			var made []int
			for _, r := range g.Rows {
				if r.Start {
					continue
				}
				assert.Empty(t, r.Unread)
				assert.Equal(t, c.round, r.Round)
				n := 0
				for _, s := range r.Stitches {
					if s.Counts && s.Stitch != nil {
						n++
					}
				}
				made = append(made, n)
			}
			assert.Equal(t, c.stitches, made)
		})
	}
}

// A crossing with its stitches stuck to their numbers is a cable: two over two, half of it purled behind.
func TestACrossingWithItsStitchesStuckToItsNumbers(t *testing.T) {
	g := graphOfText(t, "T4B = slip next 2sts onto a cable needle and hold at back of work, k2sts from left hand needle, then p2sts from cable needle\nCast on 8 sts.\nRow 1: K2, T4B, k2.")
	row := g.Rows[1]
	require.Len(t, row.Stitches, 8)
	require.NotNil(t, row.Stitches[2].Cross)
	assert.Equal(t, Cross{Held: 2, Over: 2, Purl: true}, *row.Stitches[2].Cross)
}

// A row that stands on nothing that is known is a gap that is told, and so are those that stand on it.
func TestARowThatStandsOnNothing(t *testing.T) {
	g := graphOfText(t, "Terms: US\nRow 1: Sc in each st, turn.\nRow 2: Sc in each st, turn.")
	require.Len(t, g.Rows, 2)
	assert.Equal(t, "what it is worked into is not known", g.Rows[0].Unread)
	assert.True(t, g.Rows[1].Unknown)
	assert.Empty(t, g.Rows[1].Stitches)
}

// What is told once may stand for more: counts by hand.
func TestWordsThatStandForMoreThanTheySay(t *testing.T) {
	counts := func(r GraphRow) (stitches, arches int) {
		for _, s := range r.Stitches {
			switch {
			case s.Stitch != nil && s.Counts:
				stitches++
			case s.Stitch == nil && !s.Turning:
				arches++
			}
		}
		return stitches, arches
	}
	t.Run("a group without a bracket is worked into its corner", func(t *testing.T) {
		g := graphOfText(t, "Terms: US\nCh 4, join to form a ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) twice, ch 2, join to top of ch 3. (9 dc + 3 ch spaces)\n"+
			"Rnd 2: Sl st into corner sp, ch 3 (counts as dc), 2 dc, ch 2, 3 dc in same sp, *ch 1, 3 dc, ch 2, 3 dc in next ch-2 sp; rep from * once more, ch 1, join to top of ch 3. (18 dc)")
		st, ar := counts(g.Rows[2])
		assert.Equal(t, []int{18, 6}, []int{st, ar}) // three corners of 6 dc and a space, three spaces between
		on := map[int]int{}
		for _, s := range g.Rows[2].Stitches {
			if len(s.Feet) == 1 && s.Stitch != nil && s.Stitch.ID == "dc" && !s.Turning {
				on[s.Feet[0]]++
			}
		}
		var groups []int
		for _, n := range on {
			groups = append(groups, n)
		}
		assert.ElementsMatch(t, []int{5, 6, 6}, groups)
	})
	t.Run("between two stitches is one stitch over both", func(t *testing.T) {
		g := graphOfText(t, "Terms: US\nCh 6, join to form a ring.\nRnd 1: Ch 1, 12 sc in ring, join.\nRnd 2: * Sc between next 2 sc; repeat from * around. Join.")
		st, _ := counts(g.Rows[2])
		assert.Equal(t, 6, st)
	})
	t.Run("in each within a repeat is in the next", func(t *testing.T) {
		g := graphOfText(t, "Terms: US\nCh 6, join to form a ring.\nRnd 1: Ch 1, (sc in ring, ch 3) 5 times, join to first sc.\nRnd 2: *Sc in each sc, 5 dc in next ch-3 sp. Repeat from * around. Join.")
		st, _ := counts(g.Rows[2])
		assert.Equal(t, 30, st)
	})
	t.Run("stitches that are only counted go over the chains too", func(t *testing.T) {
		g := graphOfText(t, "Terms: US\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch, ch 1, turn.\nRow 2: sc 4, ch 1, sk 1, sc 5, ch 1, turn.\nRow 3: sc 3, ch 1, sk 1, sc 6, ch 1, turn.")
		st, ar := counts(g.Rows[3])
		assert.Equal(t, []int{9, 1}, []int{st, ar})
		assert.Empty(t, g.Rows[3].Unread)
	})
	t.Run("rows that are repeated to no said number stand once", func(t *testing.T) {
		g := graphOfText(t, "Cast on 8 sts.\nRow 1: Knit.\nRow 2: Purl.\nRow 3: K2, p4, k2.\nRow 4: P2, k4, p2.\nRep these 4 rows.")
		assert.Len(t, g.Rows, 5)
		assert.Equal(t, [2]int{1, 4}, g.Again)
	})
	t.Run("a wrapped stitch waits", func(t *testing.T) {
		g := graphOfText(t, "Cast on 10 sts.\nRow 1 (RS): k7, w&t.\nRow 2: p4, w&t.\nRow 3: Knit to end.")
		row := g.Rows[1].Stitches
		require.Len(t, row, 10)
		assert.True(t, row[7].Wrapped && row[7].Idle)
		assert.False(t, row[8].Wrapped)
		assert.True(t, g.Sided)
	})
	t.Run("a title is no row", func(t *testing.T) {
		x := Read("t", []byte("A Springy, Lacy Knit Scarf\nCast on 8 sts.\nRow 1: Knit."), Options{})
		assert.Equal(t, "A Springy, Lacy Knit Scarf", x.Title)
		assert.Len(t, x.Sections[0].Lines, 2)
	})
}

func TestChainsSkippedAndCountedFromTheHookAreSkippedOnce(t *testing.T) {
	g := graphOfText(t, "Terms: US\nRow 1: Ch 12, skip 3 ch (counts as first dc), dc in 4th ch from hook, dc in rest of chs across. Turn. (10 dc)")
	n := 0
	for _, s := range g.Rows[1].Stitches {
		if s.Counts && s.Stitch != nil {
			n++
		}
	}
	assert.Equal(t, 10, n) // nine chains are left, and the skipped three count as one
}

func TestARowOfOneBracketGoesAround(t *testing.T) {
	g := graphOfText(t, "Cast on 14 sts and join in the round.\nRound 1: [K3 MC, k4 CC] around.\nRound 2: [[K1 MC, k1 CC] twice, k3 MC]\nRound 3: Knit around. (14 sts)")
	assert.Len(t, g.Rows[2].Stitches, 14)
	assert.Empty(t, g.Rows[2].Unread)
}

// Counted by hand: 1, 4 times 3, 1; a stitch, a chain, 4 groups and 3 arches of 2 chains, a chain, a stitch; 2, 4, 3 times 2, 2.
func TestTheLastTimeStopsBeforeItsChains(t *testing.T) {
	g, ok := GraphOf(Read("t", []byte(`Terms: US
Row 1: Ch 15, sc in 2nd ch from hook and in each ch across, turn. (14 sc)
Row 2: Ch 3 (counts as dc), skip first 2 sts, *3 dc in next st**, skip 2 sts; rep from * across, ending last rep at **, skip 1 st, dc in last st, turn. (14 dc)
Row 3: Ch 4 (counts as dc and ch 1), *dc3tog over next 3 dc**, ch 2; rep from * across, ending last rep at **, ch 1, dc in top of tch, turn.
Row 4: Ch 1, sc in first st, sc in next ch, *sc in next cluster**, sc in each of next 2 ch; rep from * across, ending last rep at **, sc in last ch, sc in last st. (14 sc)
`), Options{TermsSet: true}), "", 0)
	require.True(t, ok)
	var arches []int
	for _, s := range g.Rows[3].Stitches {
		if s.Stitch == nil {
			arches = append(arches, s.Chain)
		}
	}
	assert.Equal(t, []int{1, 2, 2, 2, 1}, arches)
	made := 0
	for _, s := range g.Rows[4].Stitches {
		if s.Stitch != nil && s.Stitch.ID == "sc" {
			made++
		}
	}
	assert.Equal(t, 14, made)
}
