package chart

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/sheet"
	"flatwright/schematic/rows"
)

// A round of thousands of stitches is told in a few words, and once, however many pages it takes.
func TestALargeChartIsToldOnceAndInFewWords(t *testing.T) {
	src := "Rnd 1: 6 sc in magic ring. (6 sts)\n" + strings.Repeat("Next rnd: 2 sc in each st around.\n", 8)
	x := rows.Read("x", []byte(src), rows.Options{})
	g, ok := rows.GraphOf(x, x.Sections[0].Name, 0)
	require.True(t, ok)
	w, ok := FromGraph(g)
	require.True(t, ok)
	require.Greater(t, len(w.Rows[len(w.Rows)-1].St), 1500)
	assert.Less(t, len(w.describe(w.words)), 2000)
	ss, err := Draw(w, Options{Scale: 1})
	require.NoError(t, err)
	require.Greater(t, len(ss), 4)
	told := map[string]int{}
	for i, s := range ss {
		assert.Equal(t, i == 0, strings.Contains(s.Desc, w.describe(w.words)))
		for _, it := range s.Root.Items {
			if g, ok := it.(*sheet.Group); ok && g.Desc != "" {
				told[g.Desc]++
			}
		}
	}
	for i := range w.Rows {
		if !w.Rows[i].Base {
			assert.Equal(t, 1, told[w.words(i)], w.words(i))
		}
	}
}

func TestRepeatsAreToldByTheShortestThatCoversMost(t *testing.T) {
	for in, want := range map[string]string{
		"a b c": "a b c", "a a": "a a", "a a a": "(a) 3 times", "a b a b a b c": "(a, b) 3 times c", "x a b a b a b a": "x (a, b) 3 times a", "a a b a a b a a b": "(a, a, b) 3 times",
	} {
		assert.Equal(t, want, strings.Join(repeats(strings.Fields(in)), " "))
	}
}

// A hundred thousand stitches in one place, or a chain as long, are counted and not drawn.
func TestAChartThatNoOneCouldReadIsRefused(t *testing.T) {
	for _, src := range []string{
		"Ch 9.\nRow 1: 90000 sc in 2nd ch from hook.\n", "Ch 9.\nRow 1: Sc in 2nd ch from hook, ch 90000, sc in next ch.\n",
		"Rnd 1: 6 sc in magic ring. (6 sts)\n" + strings.Repeat("Next rnd: 2 sc in each st around.\n", 14),
	} {
		x := rows.Read("x", []byte(src), rows.Options{})
		g, ok := rows.GraphOf(x, x.Sections[0].Name, 0)
		require.True(t, ok, src)
		w, ok := FromGraph(g)
		require.True(t, ok, src)
		_, err := Draw(w, Options{})
		var many *TooMany
		require.ErrorAs(t, err, &many, src)
		assert.Greater(t, many.N, many.Most)
	}
}

// The words of the key stand whole in large print, over as many lines as they take.
func TestTheKeyIsWholeInLargePrint(t *testing.T) {
	name := "yarn that was wound by hand from the fleece of a black ewe"
	w := &Work{Rows: []Row{{Base: true, St: make([]St, 4)}, {Number: 1, St: make([]St, 4)}}}
	d := build(w, &Options{Text: 7}, 1)
	d.key = []entry{{"yarn", []*sheet.Path{path("stitch", quiet, pt{}, pt{X: 3, Y: 3})}, name}}
	for _, trim := range []bool{false, true} {
		c, err := onPages(d, &Options{Text: 7, Trim: trim})
		require.NoError(t, err)
		lines, wide := c.entryText(d.key[0])
		assert.Equal(t, name, strings.Join(lines, " "))
		assert.Greater(t, len(lines), 1)
		assert.GreaterOrEqual(t, c.keyHigh[0], 7*float64(len(lines)))
		assert.Less(t, wide, c.w)
	}
}

// Each chain of a space is one stitch of the repeat, the space at the end of a round is not left out, and a bracket that says
// which space is meant is no stitch. By hand: 6 times 5 + 1 = 36; 6 times 3 + 3 = 36; 15 and 1 treble over 32 places, 2 apart.
func TestPlacesAlongAndBetweenSpaces(t *testing.T) {
	arches := "Ch 6, join to form a ring.\nRnd 1: Ch 1, (sc in ring, ch 5) 6 times, join in first sc.\nRnd 2: Ch 1, "
	groups := "Ch 6, join to form a ring.\nRnd 1: Ch 3, 2 dc in ring, (ch 2, 3 dc in ring) 5 times, ch 2, join.\nRnd 2: Sl st in next 2 dc and in next ch-2 sp, ch 3, 2 dc in same sp, ch 2, 3 dc in same sp, (ch 1, in next sp %s make 3 dc, ch 2, 3 dc) 5 times, ch 1, join.\n"
	shells := "Ch 8, join to form a ring.\nRnd 1: Ch 3, 1 dc in ring, ch 2, 2 dc in ring, (ch 2, sc in ring, ch 2, 2 dc in ring, ch 2, 2 dc in ring) 7 times, ch 2, sc in ring, ch 2, join.\nRnd 2: Sl st in next dc and in next sp, ch 3, in same sp make 2 dc, ch 2 and 3 dc; *ch 3, sc in next sc, ch 3, in next sp (between dc-groups) make 3 dc, ch 2 and 3 dc; rep from * around, ending with ch 3, sc in last sc, ch 3, join.\n"
	for src, want := range map[string]string{
		arches + "*sc in next 5 ch, sc in next sc; rep from * around, join in first sc.\n":                 "(5 sc in ch-5 space, 1 sc) 6 times, joined with a slip stitch; 36 stitches",
		arches + "sc in same sc, *sc in each ch of ch-5, sc in next sc; rep from * around, join.\n":        "(1 sc, 5 sc in ch-5 space) 6 times, joined with a slip stitch; 36 stitches",
		arches + "*sc in each st of next ch 5 loop, sc in next sc; rep from * around, join in first sc.\n": "(5 sc in ch-5 space, 1 sc) 6 times, joined with a slip stitch; 36 stitches",
		strings.Replace(groups, "%s", "(between dc-groups)", 1):                                            "joined with a slip stitch; 36 stitches",
		strings.Replace(groups, "%s", "(between 2 dc)", 1):                                                 "joined with a slip stitch; 36 stitches",
		shells: "Round 1: ", // beside the next space stands a stitch alone: round 2 is told and not drawn
		"Ch 10, join to form a ring.\nRnd 1: Ch 3, 31 dc in ring, join.\nRnd 2: Ch 9, *skip next d c, treble crochet (tr c) in next d c, ch 5, repeat from * all around, join in 4th st of ch.\n": "(ch 5, 1 tr) 15 times, ch 5",
	} {
		assert.Contains(t, lastRound(t, src), want, src)
	}
}

// What stands in the last words of a round, and in the first: a join is no stitch, slip stitches lead into the loop in which the
// round then begins, a petal's chain is no picot and the last petal stands too. By hand: 12 places around.
func TestHowRoundsBeginAndEnd(t *testing.T) {
	ring := "Make a magic ring.\nRnd 1: Ch 1, 12 dc in ring, join in first dc.\n"
	loops := ring + "Rnd 2: Ch 1, *sc in next dc, ch 3, skip next dc; rep from * around, join in first sc.\n"
	for src, want := range map[string]string{
		ring + "Rnd 2: Ch 1, dc in first dc, *ch 1, dc in next dc; rep from * around, ch 1, join in first dc.\n":                                                                                "(1 dc, ch 1) 12 times, joined with a slip stitch; 12 stitches",
		ring + "Rnd 2: Ch 1, dc in first dc, *ch 1, dc in next dc; rep from * around, ch 1, sl st to join into 1st dc.\n":                                                                       "(1 dc, ch 1) 12 times, joined with a slip stitch; 12 stitches",
		ring + "Rnd 2: Ch 1, sc in first dc, *ch 3, skip next dc, sc in next dc; rep from * 4 times, ch 1, join with hdc in first sc.\n":                                                        "ch 1 and hdc into the first stitch; 6 stitches",
		"Round 1: Make a magic ring. Ch 3, 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join.\n":                                                                                           "chain 3 as first dc, 2 dc, (ch 2, 3 dc) 3 times, ch 2, joined with a slip stitch; 12 stitches",
		ring + "Rnd 2: (INC) Ch 2, does not count, 2 dc in each dc around, join.\n":                                                                                                             "(2 dc in one stitch) 12 times, joined with a slip stitch; 24 stitches",
		loops + "Rnd 3: Sl st in each of next 2 sts, ch 1, 1 sc in same (ch 3) loop as last sl st, *ch 6, 1 sc in next (ch 3) loop; rep from * around ending with ch 6, a sl st in first sc.\n": "(1 sc in ch-3 space, ch 6) 6 times, joined with a slip stitch; 6 stitches",
		loops + "Rnd 3: Sl st into loop, ch 3, 2 dc in same loop, *ch 1, 3 dc in next loop; rep from * around, ch 1, join.\n":                                                                   "chain 3 as first dc, 2 dc in ch-3 space, (ch 1, 3 dc in ch-3 space) 5 times, ch 1, joined with a slip stitch; 18 stitches",
		loops + "Rnd 3: Ch 1, *sc in next sc, 3 dc in each ch of next lp; rep from * around, join.\n":                                                                                           "(1 sc, 9 dc in ch-3 space) 6 times, joined with a slip stitch; 60 stitches",
		ring + "Rnd 2: *Ch 4, 2 tr in same place, ch 4, sl st in same place, sl st in next dc; rep from * around.\n":                                                                            "(ch 4, 2 tr in one stitch, ch 4, 2 sl st) 11 times, ch 4, 2 tr in one stitch, ch 4, 1 sl st; 47 stitches",
		ring + "Rnd 2: Ch 1, *sc in next dc, ch 3, sl st in same sc, skip next dc; rep from * around, join.\n":                                                                                  "(1 sc, 1 picot) 6 times",
	} {
		assert.Contains(t, lastRound(t, src), want, src)
	}
}

// A chain slipped into the stitch made last is a picot, however that stitch is called, in a loop and in a stitch; one that goes back to the stitch below
// beside tall stitches is the side of a petal. By hand: four loops, or six stitches of twelve.
func TestHowPicotsAreCalled(t *testing.T) {
	ring := "Rnd 1: Ch 1, 12 sc in magic ring, sl st in first sc. (12 sc)\n"
	loops := ring + "Rnd 2: Ch 1, sc in same st, ch 5, skip next 2 sts, [sc in next st, ch 5, skip next 2 sts] 3 times, sl st in first sc. (4 ch-5 loops)\n"
	for _, place := range []string{"top of last sc made", "last sc made", "top of last sc", "top of previous sc", "top of sc just made", "sc just worked", "same sc", "the sc just completed"} {
		words := lastRound(t, loops+"Rnd 3: (2 sc, ch 3, sl st in "+place+", 2 sc) in each ch-5 loop around, sl st in first sc.\n")
		assert.Contains(t, words, "(2 sc in ch-5 space, 1 picot, 2 sc in ch-5 space) 4 times", place)
		assert.Contains(t, words, "16 stitches", place)
		words = lastRound(t, ring+"Rnd 2: Ch 1, *sc in next sc, ch 3, sl st in "+place+", skip next sc; rep from * around, sl st in first sc.\n")
		assert.Contains(t, words, "(1 sc, 1 picot) 6 times", place)
	}
	for _, place := range []string{"same sc", "same st", "same place"} {
		words := lastRound(t, ring+"Rnd 2: *Ch 4, 2 tr in next sc, ch 4, sl st in "+place+", sl st in next sc; rep from * around.\n")
		assert.Contains(t, words, "ch 4, 2 tr in one stitch, ch 4, 2 sl st", place)
	}
}

// lastRound is the last round of a text in words.
func lastRound(t *testing.T, src string) string {
	x := rows.Read("x", []byte("Terms: US\n"+src), rows.Options{})
	g, ok := rows.GraphOf(x, x.Sections[0].Name, 0)
	require.True(t, ok, src)
	w, ok := FromGraph(g)
	require.True(t, ok, src)
	return w.words(len(w.Rows) - 1)
}
