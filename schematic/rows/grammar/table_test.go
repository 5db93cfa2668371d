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

// table is the declared table, in its order.
func table() []form {
	ready()
	var out []form
	for _, t := range tables {
		out = append(out, t...)
	}
	return out
}

var update = flag.Bool("update", false, "write the table of forms anew")

// Every form of the table reads its example whole, as a row or as an instruction between rows.
func TestEveryExampleOfTheTableIsRead(t *testing.T) {
	require.Greater(t, len(table()), 150)
	for _, f := range table() {
		label := "Row 2: "
		if strings.HasPrefix(f.example, "slip next") || f.rule == "whole" || f.rule == "clause" || f.rule == "until" || f.rule == "every" || f.rule == "rowset" || f.rule == "asforto" || f.rule == "thenoff" || f.rule == "same" || f.rule == "neutral" || f.rule == "marker" || strings.HasPrefix(f.example, "Row ") || strings.HasPrefix(f.example, "Rnd ") || strings.HasPrefix(f.example, "Next row") {
			label = ""
		}
		src := "Terms: US\nSpecial stitches:\nShell: 5 dc in same st.\nV-st: (dc, ch 1, dc) in same st.\n\nBack\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n" + label + f.example + ".\n"
		x := Read("t", []byte(src), ins.Options{})
		last := x.Sections[len(x.Sections)-1]
		require.NotEmpty(t, last.Lines, f.example)
		for _, l := range last.Lines {
			assert.Empty(t, l.Unread, "%s: %s: %s", f.rule, f.pattern, f.example)
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
	for _, f := range table() {
		fmt.Fprintf(&b, "| `%s` | %s |\n", strings.ReplaceAll(f.example, "|", "\\|"), f.meaning)
	}
	if *update {
		require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o644))
	}
	assert.Equal(t, b.String(), string(old), "write it anew with -update")
}
