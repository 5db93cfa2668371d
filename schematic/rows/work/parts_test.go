package work

import (
	"strings"
	"testing"
)

// 14 + 16 + 14 + 16 are 60: the parts of a row make its count where each says how often it is there.
func TestCountsOfPartsMakeTheCountOfTheRow(t *testing.T) {
	const text = "Body\nCast on 60 sts. Join in the round.\nRnd 1: *K1, p1; rep from * around.\nNext rnd: ROW%s %d sts OF\nNext rnd: K2tog, k to end. 59 sts\n"
	for _, c := range []struct {
		row, of string
		n       int
	}{
		{"K14, pm, k16, pm, k14, pm, k to end.", "each for sleeves, 16 sts each for front and back.", 14},
		{"K14, pm, k16, pm, k14, pm, k to end:", "each for front and back, 14 sts for each sleeve.", 16},
		{"K14, pm, k16, pm, k14, pm, k to end:", "for each front and back, 14 sts for each sleeve.", 16},
		{"K30, pm for side, k30.", "each front and back.", 30},
		{"K30, pm for side, k to end.", "each for front and back.", 30},
		{"K30, pm, k30.", "for front, 30 sts for back.", 30},
	} {
		phraseComesTo(t, strings.NewReplacer("ROW", c.row, "OF", c.of).Replace(text), "", c.n, true)
	}
}

// A rib of 60, worked so long, has 60.
func TestARowIsWorkedForALength(t *testing.T) {
	const text = "Body\nCast on 60 sts. Join in the round.\nRnd 1: *K1, p1; rep from * around.\nRnd 2: Knit.\n%s\nNext rnd: K2tog, k to end. %d sts\n"
	for _, s := range []string{
		`Work Rnd 1 for 1".`, "Work Rnd 1 for 2 in.", "Work rnds 1 and 2 for 5 cm.", "Work Rnd 1 until ribbing measures 2 in.", "Rep Rnds 1 and 2 only until work measures 4 in.",
		"Rep Rnd 1 only for 4 in.", "Work Rnds 1 and 2 until piece measures approx 4 in.",
	} {
		phraseComesTo(t, text, s, 59, true)
	}
}

// What a round adds stands before the count that it comes to: 60 and 6 are 66.
func TestWhatARoundAddsIsNotItsCount(t *testing.T) {
	const text = "Body\nCast on 60 sts. Join in the round.\nRnd 1: Knit.\nInc rnd: *K10, M1; rep from * around%s %d sts.\n"
	for _, s := range []string{". 6 sts inc.", ". 6 sts inc'd—", ". 6 sts increased,", " (6 sts increased).", ". [6 sts inc]"} {
		phraseComesTo(t, text, s, 66, true)
	}
}
