package work

import (
	"flatwright/schematic/stitch"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Counts follow from the words: every third row is the third; a bind-off is at the
// beginning of its row, of a right-side row at the right.
func TestAGraphShapesItsRowsAsTheWordsSay(t *testing.T) {
	const head = "Terms: US\nNotes: The turning chain does not count as a stitch.\n# Sleeve\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
	for _, c := range []struct {
		line   string
		counts []int
	}{
		{"Inc 1 st at each end every 3 rows 2 times, over 7 rows. (24 sts)", []int{20, 20, 22, 22, 22, 24, 24}},
		{"Dec 1 st at neck edge every row 2 times, then every 2 rows 1 time, over 5 rows. (17 sts)", []int{19, 18, 18, 17, 17}},
		{"Dec 1 st at each end every 2 rows 2 times, over 4 rows, and at the same time dec 1 st at neck edge every row 2 times, over 4 rows. (14 sts)", []int{19, 16, 16, 14}},
		{"Dec 5 sts evenly every row 1 time, over 1 row. (15 sts)", []int{15}},
		{"Dec 6 sts evenly over 4 rows. (14 sts)", []int{19, 17, 16, 14}},
		{"Bind off 3 sts at beg of next 2 rows. (14 sts)", []int{17, 14}},
	} {
		x := Read("x.txt", []byte(head+c.line+"\nRow 9: Ch 1, sc in each st across, turn.\n"), Options{})
		g, ok := GraphOf(x, "Sleeve", 0)
		require.True(t, ok)
		var counts []int
		below := 0
		for _, r := range g.Rows {
			n := 0
			for _, s := range r.Stitches {
				if s.Counts {
					n++
				}
				for _, f := range s.Feet {
					require.True(t, f >= 0 && f < below, "%s: a foot at %d of %d", c.line, f, below)
				}
			}
			below = len(r.Stitches)
			counts = append(counts, n)
		}
		require.Greater(t, len(counts), 2+len(c.counts)-1, c.line)
		assert.Equal(t, c.counts, counts[2:2+len(c.counts)], c.line)
	}
}

// The parts of a division stand in it as they are listed.
func TestAPartKnowsOutOfWhichStitchesItIsWorked(t *testing.T) {
	x := Read("x.txt", []byte(`Terms: US
Notes: The turning chain does not count as a stitch.
# Body
Ch 61.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (60 sc)
Divide the row: 14 sts for Right front, 2 sts left unworked, 28 sts for Back, 2 sts left unworked, 14 sts for Left front.
# Body, Right front
Take up 14 held sts. (14 sts)
Work 3 rows even in hdc. (14 sts)
Bind off all sts.
# Body, Back
Take up 28 held sts. (28 sts)
Work 2 rows even. (28 sts)
Divide the row: 10 sts for First shoulder, 8 sts left unworked, 10 sts left unworked.
# Body, Left front
Take up 14 held sts. (14 sts)
Dec 1 st at neck edge (left) every row 2 times, over 2 rows. (12 sts)
`), Options{})
	for _, c := range []struct {
		section, stitch string
		want            Origin
	}{
		{"Body, Right front", "hdc", Origin{Section: "Body", Row: 1, First: 1, Last: 14, All: 60}},
		{"Body, Back", "sc", Origin{Section: "Body", Row: 1, First: 17, Last: 44, All: 60}},
		{"Body, Left front", "sc", Origin{Section: "Body", Row: 1, First: 47, Last: 60, All: 60}},
	} {
		g, ok := GraphOf(x, c.section, 0)
		require.True(t, ok)
		require.NotNil(t, g.From, c.section)
		assert.Equal(t, c.want, *g.From, c.section)
		assert.True(t, g.Rows[0].Held, c.section)
		last := g.Rows[len(g.Rows)-1].Stitches
		assert.Equal(t, c.stitch, last[0].Stitch.Plain().ID, c.section)
	}
	g, _ := GraphOf(x, "Body, Left front", 0)
	row := g.Rows[1] // the first, a right-side row: it ends at the left edge
	assert.Len(t, row.Stitches[len(row.Stitches)-1].Feet, 2)
}

// Stitches left unworked are at their edge, and chains added at an edge are worked into.
func TestStitchesAreLeftAndAddedAtTheirEdge(t *testing.T) {
	const head = "Terms: US\nNotes: The turning chain does not count as a stitch.\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n"
	for _, c := range []struct {
		line        string
		first, last int // the feet of the next row's ends, of 10 stitches and a chain that turns
		chains      int
	}{
		{"Leave 3 sts unworked at right edge. (7 sts)", 9, 3, 0}, // row 1 began at the right
		{"Leave 3 sts unworked at armhole edge (left). (7 sts)", 6, 0, 0},
		{"Add 4 sts at right edge. (14 sts)", 13, 0, 4},
		{"Add 4 sts at each end. (18 sts)", 17, 0, 8},
	} {
		x := Read("x.txt", []byte(head+c.line+"\nWork 2 rows even. "+c.line[strings.LastIndex(c.line, "("):]+"\n"), Options{})
		require.Empty(t, Check(x).Findings, c.line)
		g, ok := GraphOf(x, "", 0)
		require.True(t, ok)
		require.Len(t, g.Rows, 4, c.line)
		place := func(i int) int { // of a row, less what turns
			n := 0
			for k := range i {
				if !g.Rows[1].Stitches[k].Turning {
					n++
				}
			}
			return n
		}
		row := g.Rows[2].Stitches
		assert.Equal(t, c.first, place(row[0].Feet[0]), c.line)
		assert.Equal(t, c.last, place(row[len(row)-1].Feet[0]), c.line)
		chains := 0
		for _, s := range g.Rows[1].Stitches {
			if s.Stitch == stitch.ByID("ch") {
				chains++
			}
		}
		assert.Equal(t, c.chains, chains, c.line)
	}
}

// A decrease at the left edge is at the end of a right-side row and at the beginning of a
// wrong-side row, whichever of them is the first; rows that are called rounds are.
func TestAShapingFallsOnItsEdgeWhicheverSideFaces(t *testing.T) {
	const head = "Terms: US\nNotes: The turning chain does not count as a stitch.\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
	for _, c := range []struct {
		even  string
		begin bool
	}{{"", true}, {"Work 1 row even. (20 sts)\n", false}} {
		x := Read("x.txt", []byte(head+c.even+"Dec 1 st at left edge every row 1 time, over 1 row. (19 sts)\n"), Options{})
		g, ok := GraphOf(x, "", 0)
		require.True(t, ok)
		row := g.Rows[len(g.Rows)-1]
		assert.Equal(t, !c.begin, row.RS)
		assert.Equal(t, c.begin, len(row.Stitches[0].Feet) == 2)
		assert.Equal(t, !c.begin, len(row.Stitches[len(row.Stitches)-1].Feet) == 2)
	}
	for text, round := range map[string]bool{
		"Work 3 rnds even. (40 sts)": true, "Work 3 rows even. (40 sts)": false,
		"Dec 1 st at each end every 2 rnds 2 times, over 4 rnds. (36 sts)": true,
		"Dec 1 st at each end every 2 rows 2 times, over 4 rows. (36 sts)": false,
	} {
		x := Read("x.txt", []byte("Terms: US\nCast on 40 sts.\n"+text+"\n"), Options{})
		g, ok := GraphOf(x, "", 0)
		require.True(t, ok)
		for _, r := range g.Rows[1:] {
			assert.Equal(t, round, r.Round, text)
		}
	}
}

// Of the rows of its spacing a shaping of right-side rows falls on the last that is one, so that the chart shows what
// the words say: after two rows even the fourth of four is a wrong-side row, and the third (row 5) faces right; after three
// it is the fourth (row 7) itself.
func TestAShapingOfOneSideFallsOnRowsOfThatSide(t *testing.T) {
	for _, c := range []struct {
		even int
		side string
		want []int
	}{
		{2, "right-side", []int{5, 9}}, {3, "right-side", []int{7, 11}}, {2, "wrong-side", []int{6, 10}}, {3, "wrong-side", []int{6, 10}},
	} {
		g := graphOfText(t, fmt.Sprintf("Terms: US\nCast on 20 sts.\nWork %d rows even in stockinette stitch. (20 sts)\nDec 1 st at each end of %s rows every 4 rows 2 times, over 9 rows. (16 sts)\n", c.even, c.side))
		var shaped []int
		for k, r := range g.Rows[1:] {
			if standing(r) != standing(g.Rows[k]) {
				assert.Equal(t, c.side == "right-side", r.RS, "row %d", r.Number)
				shaped = append(shaped, r.Number)
			}
		}
		assert.Equal(t, c.want, shaped, "%d rows even, %s rows", c.even, c.side)
	}
}
