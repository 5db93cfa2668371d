package rows

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A fraction or a pair of sizes at the end of a row is no count: the row has 20, whatever is measured.
func TestAFractionAtTheEndOfARowIsNoCount(t *testing.T) {
	for _, s := range []string{"Row 1: Knit until piece measures 4 1/2", "Row 1: Knit to size 20/24"} {
		x := Read("t", []byte("Terms: US\nCast on 20 sts.\n"+s+"\nRow 2: K2tog, k to end. 19 sts\n"), Options{})
		for _, l := range x.Sections[0].Lines {
			if len(l.Stated) > 0 {
				assert.Contains(t, []int{19, 20}, l.Stated[0].N.All, s)
			}
		}
		assert.Empty(t, Check(x, Options{}).Findings, s)
	}
}

// Rows out of tables, spreadsheets and marked-up pages are read as those that a hand types; of six counts, one that is wrong is told.
func TestRowsAreReadHoweverTheyWerePasted(t *testing.T) {
	rows := []struct {
		body string
		n    int
	}{{"6 sc in MR", 6}, {"inc x6", 12}, {"(sc, inc) x6", 18}, {"(2 sc, inc) x6", 24}, {"sc around", 24}}
	for _, form := range []string{
		"**Rnd %d:** %s **(%d)**", "*Rnd %d:* %s *(%d)*", "_Rnd %d:_ %s _(%d)_", "- [ ] Rnd %d: %s (%d)", "☐ Rnd %d: %s (%d)", "• Rnd %d: %s (%d sts)", "%d. %s (%d)", "%d) %s [%d]", "R%d) %s [%d]",
		"Rnd %d – %s – %d sts", "Rnd %d: %s = %d sc", "| %d | %s | %d |", "| Rnd %d | %s | (%d) |", "|%d|%s|%d sts|", "Rnd %d\t%s\t%d", "%d\t%s\t(%d)", "Rnd %d:\t%s\t%d sts", "Rnd %d; %s; %d sts.",
		"Rnd %d: %s <%d>", "Rnd %d: %s {%d}", "Rnd %d: %s ...... %d", "Rnd %d: %s → %d", "Rnd %d: %s // %d", "Rnd %d: %s | %d", "#%d: %s (%d)", "Rnd %d %s (%d)", "Rnd %d: %s. Total: %d",
		"Rnd %d: %s. Stitch count: %d", "“Rnd %d: %s (%d)”", "R: %d - %s (%d)", "Rnd %d: %s (total %d sc)",
	} {
		for wrong := range 2 {
			lines := []string{"Ball"}
			for i, r := range rows {
				n := r.n
				if i == 3 {
					n += wrong
				}
				lines = append(lines, fmt.Sprintf(form, i+1, r.body, n))
			}
			rep := Check(Read("t", []byte(strings.Join(lines, "\n")), Options{}), Options{})
			assert.Len(t, rep.Findings, wrong, form)
			assert.Equal(t, [2]int{5, 5}, [2]int{rep.Read.Whole, rep.Read.Lines}, form)
		}
	}
}

// A column counts the characters of the file, for a caret and for whoever corrects the word there.
func TestAFindingStandsAtItsWordHoweverItWasTypeset(t *testing.T) {
	for _, form := range []string{
		"Row 2: Ch 1, 2 sc in first st, sc in each st to end. [13 sc]",
		"Row 2: Ch 1, 2 sc in \ufb01rst st, sc in each st to end. [13 sc]",
		"Row 2:\u200b Ch\u00a01, 2 sc in first st & in each st to\u00ad\u200b end. [13 sc]",
		"Row 2:\u2009Ch 1, 2 sc in \ufb01rst st, sc in each st to end. [1\u200b3 sc]",
		"Row 2: Ch 1, 2 sc in first st, sc in each st to end. [13\u200b sc]",
	} {
		want := len([]rune(form[:strings.Index(form, "[")])) + 1
		rep := Check(Read("pasted.txt", []byte("Panel\nCh 11.\nRow 1: Sc in 2nd ch from hook & in each ch across. 10 sc\n"+strings.NewReplacer("[", "", "]", "").Replace(form)+"\n"), Options{}), Options{})
		require.Len(t, rep.Findings, 1, form)
		end := len([]rune(form)) - 1
		assert.Equal(t, [2]int{want, end}, [2]int{rep.Findings[0].Pos.Col, rep.Findings[0].Pos.EndCol}, form)
	}
}
