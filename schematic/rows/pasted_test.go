package rows

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

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
