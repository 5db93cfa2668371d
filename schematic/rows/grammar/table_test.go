package grammar

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	ins "flatwright/schematic/rows/instructions"
)

var update = flag.Bool("update", false, "write the table of forms anew")

// Every form of the table reads its example whole, as a row or as an instruction between rows.
func TestEveryExampleOfTheTableIsRead(t *testing.T) {
	require.Greater(t, len(Table()), 150)
	for _, f := range Table() {
		label := "Row 2: "
		if strings.HasPrefix(f.Example, "slip next") || f.Rule == "whole" || f.Rule == "clause" || f.Rule == "until" || f.Rule == "every" || f.Rule == "rowset" || f.Rule == "asforto" || f.Rule == "thenoff" || f.Rule == "same" || f.Rule == "neutral" || f.Rule == "marker" || strings.HasPrefix(f.Example, "Row ") || strings.HasPrefix(f.Example, "Rnd ") || strings.HasPrefix(f.Example, "Next row") {
			label = ""
		}
		src := "Terms: US\nSpecial stitches:\nShell: 5 dc in same st.\nV-st: (dc, ch 1, dc) in same st.\n\nBack\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n" + label + f.Example + ".\n"
		x := Read("t", []byte(src), ins.Options{})
		last := x.Sections[len(x.Sections)-1]
		require.NotEmpty(t, last.Lines, f.Example)
		for _, l := range last.Lines {
			assert.Empty(t, l.Unread, "%s: %s: %s", f.Rule, f.Pattern, f.Example)
		}
	}
}

// language.md ends with the table.
func TestTheLanguageIsWrittenFromTheTable(t *testing.T) {
	const file, mark = "../language.md", "<!-- the table of forms -->\n"
	old, err := os.ReadFile(file)
	require.NoError(t, err)
	head, _, _ := strings.Cut(string(old), mark)
	var b strings.Builder
	b.WriteString(head + mark + "\n| example | means |\n|---|---|\n")
	for _, f := range Table() {
		fmt.Fprintf(&b, "| `%s` | %s |\n", strings.ReplaceAll(f.Example, "|", "\\|"), f.Meaning)
	}
	if *update {
		require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o644))
	}
	assert.Equal(t, b.String(), string(old), "write it anew with -update")
}
