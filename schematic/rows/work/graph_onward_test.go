package work

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	ins "flatwright/schematic/rows/instructions"
)

// A sentence between the rows tells in which yarn the work goes on (common practice).
func TestASentenceTellsTheYarnOfTheRowsThatFollow(t *testing.T) {
	for _, words := range []string{"Continue in A.", "Remainder of mitt will be knit in A.", "The rest of the hat is worked in A only.", "Drop B, pick up A.", "Cut B and continue in A only.",
		"Work remaining rounds in A.", "From here on, use A only.", "Rejoin A.", "Finish in A."} {
		assert.Contains(t, pictured(t, "Yarns A and B.\nWith A, cast on 4 sts and join in the round.\nRnd 1: With B, knit.\n"+words+"\nRnd 2: Knit.\n", func(s GraphStitch) string { return s.Colour }), "\nBBBB\nAAAA\n", words)
	}
	assert.Contains(t, pictured(t, "Yarns A and B.\nWith A, cast on 4 sts and join in the round.\nRnd 1: With B, knit.\nContinue in main pattern.\nRnd 2: Knit.\n", func(s GraphStitch) string { return s.Colour }), "\nBBBB\nBBBB\n")
}

// A wrong-side row is told by words at either end of its line, or in its name.
func TestASideIsToldInWordsAroundARow(t *testing.T) {
	for _, row := range []string{"Row 1 (this is a wrong side row): K8", "1st wrong-side row: K8", "Row 1: K8. (This is the wrong side of the headband)", "Row 1: K8. This row is the wrong side", "Row 1 is a wrong-side row: K8",
		"Row 1. Wrong side. K8", "Row 1 (W.S.): K8", "Row 1: With WS facing, k8", "Row 1: K8 - wrong side", "Row 1 = WS: K8", "WS: Row 1: K8"} {
		g, ok := GraphOf(Read("t", []byte("Cast on 8 sts.\n"+row+".\nRow 2: K8.\n"), Options{TermsSet: true}), "", 0)
		assert.True(t, ok && g.Sided && !g.Rows[1].RS && g.Rows[2].RS, row)
	}
}

// Stitches of brioche under names of the text's own; k2tog, yo is lace.
func TestStitchesOfBriocheAreToldInWords(t *testing.T) {
	for words, want := range map[string]string{"k2tog the stitch and its yo": "brk", "P2tog purl stitch and corresponding yo": "brp", "knit the slipped stitch together with its yarn over": "brk", "k2tog, yo": "k2togyo"} {
		text := fmt.Sprintf("Abbreviations\nzz: %s\n\nCast on 8 sts.\nRow 1: *Sl1yo, zz; rep from * to last 2 sts, k2.\n", words)
		assert.Contains(t, pictured(t, text, func(s GraphStitch) string { return s.Stitch.ID }), "\nsl1yo"+want+"sl1yo"+want, words)
	}
}

// A piece that is begun within a section takes no row of the one before it away.
func TestAPieceBegunAnewKeepsTheOneBeforeIt(t *testing.T) {
	x := Read("t", []byte("Strip\nCast on 4 sts.\nRow 1 (RS): K4.\nRow 2: P4. Bind off.\nFor the border, cast on 6 sts.\nRow 1 (RS): P6.\n"), Options{TermsSet: true})
	var rows []int
	var names []string
	for _, g := range Graphs(x, 0, func(*ins.Section) bool { return true }) {
		rows, names = append(rows, len(g.Rows)), append(names, g.Section)
	}
	assert.Equal(t, []int{3, 2}, rows)
	assert.Equal(t, []string{"Strip", "Strip, part 2"}, names)
}

// A yarn called C, and yarns that the text gives other letters (common practice): dark (D) and light (L).
func TestYarnsCalledByAnyLetter(t *testing.T) {
	colour := func(s GraphStitch) string { return s.Colour }
	assert.Contains(t, pictured(t, "Yarns A, B and C.\nWith A, cast on 4 sts and join in the round.\nRnd 1: Knit.\nThe rest of the hat is worked in C.\nRnd 2: Knit.\n", colour), "\nAAAA\nCCCC\n")
	for _, told := range []string{"Use two shades: dark (D) and light (L).", "Colours: D = dark, L = light.", "Two colours, dark (referred to as D) and light (L), are used.", "Yarn D (navy) and yarn L (lilac)."} {
		assert.Contains(t, pictured(t, "Cloth\n"+told+"\nWith D, cast on 4 sts.\nRow 1 (RS): With L, knit.\nRow 2: With D, purl.\n", colour), "DDDD\nLLLL\nDDDD\n", told)
	}
}

// How all stitches are slipped, and what edge the rows make, is no row.
func TestWhatIsToldOfTheRowsIsNoRow(t *testing.T) {
	for _, words := range []string{"Slip all stitches purlwise; yarn at the back on right-side rows.", "Work picot edge of brim."} {
		assert.Equal(t, "kkkk\nkkkk\npppp\n", pictured(t, "Cast on 4 sts.\n"+words+"\nRow 1 (RS): Knit.\nRow 2: Purl.\n", func(s GraphStitch) string { return s.Stitch.ID }), words)
	}
}

// A line before the rows founds them by its count.
func TestRowsStandOnTheStitchesThatALineBeforeThemSays(t *testing.T) {
	for _, words := range []string{"You have 12 sts.", "There are 12 sts on the needle.", "12 sts."} {
		g, ok := GraphOf(Read("t", []byte("Yoke\n"+words+"\nRow 1 (RS): K.\nRow 2: *P4, p2tog; rep from * to end.\nRow 3: K.\n"), Options{TermsSet: true}), "", 0)
		assert.True(t, ok && g.Rows[0].Held && g.Assumed == 0 && len(g.Rows[3].Stitches) == 10, words)
	}
}

// 2 + 6 + 2 stitches; the cable is one crossing of three over three, held behind.
func TestACableIsToldInTheRowThatWorksIt(t *testing.T) {
	for _, words := range []string{"move 3 sts to cable needle, hold in back of work, K3 from left needle, now K3 from cable needle", "slip the next 3 sts on a spare needle, leave at the back, k3, k the 3 sts from the spare needle"} {
		g, ok := GraphOf(Read("t", []byte("Cast on 10 sts.\nRow 1 (RS): P2, "+words+", p2.\n"), Options{TermsSet: true}), "", 0)
		assert.True(t, ok, words)
		if c := g.Rows[1].Stitches[2].Cross; assert.NotNil(t, c, words) {
			assert.Equal(t, Cross{Held: 3, Over: 3}, *c, words)
		}
	}
}
