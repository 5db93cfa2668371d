package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each row's yarns as worked, by hand from the text: the last letter or figure of each yarn's name, - for none.
func TestRowsThatTellTheirYarns(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want []string
	}{
		"rounds in a yarn":                     {"Using CC1, cast on 4 sts and join in the round.\nWork in k1, p1 rib as follows:\n1 round using CC3\nWork 1 round in stockinette st using CC2.\n", []string{"3333", "2222"}},
		"what is cast on with goes on":         {"Using MC, cast on 4 sts and join in the round.\nK 1 round.\nP 1 round.\n", []string{"CCCC", "CCCC"}},
		"a round in one yarn behind a pattern": {"With MC, cast on 4 sts and join in the round.\nRnd 1: (K1 CC1, k1 MC) around.\nRnd 2: (K1 MC, k1 CC1) around.\nKnit 1 round in MC.\n", []string{"1C1C", "C1C1", "CCCC"}},
		"a letter behind a number":             {"With A, cast on 5 sts.\nRow 1 (RS): K2A, k1B, k2A.\nRow 2 (WS): P1A, p3B, p1A.\n", []string{"AABAA", "ABBBA"}},
		"a number before a yarn":               {"With MC, cast on 4 sts and join in the round.\nRnd 1: *1 MC, 1 CC1; rep from * around.\nRnd 2: (MC 1, CC 3) around.\n", []string{"C1C1", "CCCC"}},
		"yarns in brackets":                    {"Terms: US\nWith A, ch 6.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across. (5 sc)\nRow 2 (WS): Ch 1, (A) x 1, (B) x 3, (A) x 1, turn.\n", []string{"AAAAA", "ABBBA"}},
		"a yarn with its times":                {"Terms: US\nWith A, ch 6.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across. (5 sc)\nRow 2 (WS): Ch 1, A x 1, B x 4, turn.\n", []string{"AAAAA", "ABBBB"}},
		"a letter glued to its number":         {"Terms: US\nSingle crochet panel, Color A = Grey, Color B = Pink\nRow 1 (RS): A4, B1 (5 sts)\nRow 2 (WS): B3, A2 (5 sts)\n", []string{"AAAAB", "BBBAA"}},
		"a yarn before the stitch":             {"Terms: US\nWith MC, ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across. (5 sc)\nRow 2: Ch 1, turn, 1 MC sc, 3 CC sc, 1 MC sc. (5 sc)\nRow 3: Ch 1, turn, sc 5 in MC.\n", []string{"CCCCC", "CCCCC", "CCCCC"}},
		"small letters":                        {"a = main colour\nb = contrast colour\nUsing main colour, cast on 5 sts.\nPattern row 1: k2a, k1b, k2a\nPattern row 2: k1a, p3b, k1a\n", []string{"AABAA", "ABBBA"}},
		"a yarn by its number":                 {"With Color 2, cast on 4 sts. Join to knit in the round.\nRow 1: *K2 Color 1, K2 color 2* repeat to end of the round\nRow 2: Knit all stitches in color 1\n", []string{"1122", "1111"}},
		"a yarn behind the one before":         {"With black yarn, cast on 4 sts and join in the round.\nRow 1: *Knit 3 white, 1 black* repeat to end of round.\n", []string{"EEEK"}},
		"a change in a bracket":                {"Terms: US\nWith red, ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across. (5 sc)\nRow 2: Ch 1, turn, sc in next 2 sts (change to white), sc in next st (change to red), sc in last 2 sts.\n", []string{"DDDDD", "DDEDD"}},
		"how a yarn is changed":                {"Terms: US\nWith red, ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across. (5 sc)\nRow 2: Ch 1, turn, sc in next 2 sts. To change colors on the 2nd sc, yo and pull through with white; sc in next st, 2 red sc.\n", []string{"DDDDD", "DDEDD"}},
	} {
		t.Run(name, func(t *testing.T) {
			w := fromText(t, c.text)
			assert.Empty(t, w.Gaps())
			require.True(t, w.gridded())
			var got []string
			for _, row := range w.squared().Rows {
				if row.Base {
					continue
				}
				line := ""
				for i := range row.St {
					if n := len(row.St[i].Colour); n > 0 {
						line += row.St[i].Colour[n-1:]
					} else {
						line += "-"
					}
				}
				got = append(got, line)
			}
			assert.Equal(t, c.want, got)
		})
	}
	w := fromText(t, "Terms: US\nWith MC, ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across. (5 sc)\nRow 2: Ch 1, turn, 1 MC sc, 3 CC sc, 1 MC sc. (5 sc)\n")
	require.NotNil(t, w.sole())
	assert.Equal(t, "sc", w.sole().ID, "its squares need no symbol")
}

// Two wedges of 5 that each lose a stitch in every second round: by hand, the columns of k2tog's first stitch end, the
// outermost of each wedge, and the others go on.
func TestEachWedgeOfACrownNarrowsByItself(t *testing.T) {
	w := fromText(t, "Cast on 10 sts and join in the round.\nRnd 1: (K3, k2tog) twice.\nRnd 2: Knit.\nRnd 3: (K2, k2tog) twice.\n")
	rows, wide := columns(w)
	require.Equal(t, 10, wide)
	for i, want := range [][]int{{1, 2, 3, 4, 6, 7, 8, 9}, {1, 2, 3, 4, 6, 7, 8, 9}, {2, 3, 4, 7, 8, 9}} {
		var got []int
		for _, c := range rows[i].cells {
			got = append(got, c.col)
		}
		assert.Equal(t, want, got, "round %d", i+1)
	}
	assert.False(t, spacedAround(false, []int{0, -1, 0, 0, 0, 0, 0, -1, 0}), "a sleeve, decreased beside its seam")
	assert.True(t, spacedAround(true, []int{-1, 0, 0, -1, 0, 0, -1, 0}), "a break among them")
}

// A cable's name behind a stitch is no yarn.
func TestACableIsNoYarn(t *testing.T) {
	w := fromText(t, "Cast on 8 sts and join in the round.\nRnd 1: *P4, k4; rep from * around.\nRnd 2: *P4 C4F; rep from * around.\n")
	assert.Empty(t, w.yarns().list)
}

// What the text calls a row is a round where work was joined and its words go around.
func TestRowsThatGoAround(t *testing.T) {
	w := fromText(t, "Cast on 8 sts and join in the round.\nRow 1: *K3, p1; repeat to end of round.\nRow 2: Knit.\nRows 3-4: Work pattern for 2 rows; *k1, p1* repeat to end of round.\n")
	require.Len(t, w.Rows, 5)
	for _, r := range w.Rows[1:] {
		assert.True(t, r.Round, r.title())
		assert.Len(t, r.St, 8)
	}
	w = fromText(t, "Cast on 8 sts and join in the round, placing a marker.\nRnd 1: (K3, p1) repeat to marker.\nRnd 2: Knit.\n")
	assert.Empty(t, w.Gaps())
	assert.Len(t, w.Rows[2].St, 8)
}

// Rows 3-7 as row 1 are rows 3, 5 and 7 where another line tells all wrong-side rows (by hand: row 4 is purled, all knit stitches
// as the right side shows it).
func TestARangeLeavesTheRowsBetweenToTheirOwnLine(t *testing.T) {
	w := fromText(t, "Cast on 9 sts.\nRow 1 (RS): K2, p5, k2.\nRow 2 and all WS rows: Purl.\nRows 3-7: As row 1.\nRow 9: Knit.\nRow 10: Purl.\n")
	require.Len(t, w.Rows, 11)
	for r, row := range w.Rows[1:] {
		knit, purl, _ := row.worked()
		want := [2]int{4, 5}
		switch {
		case r%2 == 1:
			want = [2]int{0, 9}
		case r == 8:
			want = [2]int{9, 0}
		}
		assert.Equal(t, want, [2]int{knit, purl}, row.title())
	}
}
