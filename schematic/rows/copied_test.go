package rows

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A copy is a text as it comes out of mail, a page's source, a list, a telephone; each must read as the text itself does.
var copies = map[string]func(string) string{
	"quoted in an answer": func(s string) string { return ahead.ReplaceAllString(s, "> ") },
	"quoted twice":        func(s string) string { return ahead.ReplaceAllString(s, "> > ") },
	"a list":              func(s string) string { return ahead.ReplaceAllString(s, "• ") },
	"set in":              func(s string) string { return ahead.ReplaceAllString(s, "\t") },
	"paragraphs of a page": func(s string) string {
		return ahead.ReplaceAllString(behind.ReplaceAllString(s, "</p>"), `<p class="row">`)
	},
	"spaces of a page": func(s string) string { return strings.ReplaceAll(s, ". ", ".&nbsp; ") },
	"and of a page":    func(s string) string { return strings.ReplaceAll(s, " and ", " &amp; ") },
	"other stars":      func(s string) string { return strings.ReplaceAll(s, "*", "✱") },
	"without capitals": strings.ToLower,
	"all capitals":     strings.ToUpper,
	"with heads and feet": func(s string) string {
		return strings.ReplaceAll(s, "Row 3:", "www.example.org   Page 1 of 2   © 2019 The Designer\nRow 3:")
	},
	"lines of a column": func(s string) string { return wide.ReplaceAllString(s, "$1\n") },
}

var (
	ahead  = regexp.MustCompile(`(?m)^`)
	behind = regexp.MustCompile(`(?m)$`)
	wide   = regexp.MustCompile(`(?m)^(.{40,60}) `)
)

const copiedText = `Notes
Wash by hand and dry flat. The sleeves are worked from the top.

Back
Cast on 62 sts.
Row 1 (RS): *K2, p2; rep from * to last 2 sts, k2.
Row 2: *P2, k2; rep from * to last 2 sts, p2.
Row 3: K2, k2tog, k to last 4 sts, ssk, k2. 60 sts.
Row 4: Purl.
Row 5: K2, k2tog, k to last 4 sts, ssk, k2. 58 sts.

Neckband
With right side facing pick up and k 20 sts, *k2, p2; rep from * 4 times. 36 sts.
Next row: P2, *k2, p2; rep from * to last 2 sts, k2. 36 sts.
`

func TestATextReadsAlikeHoweverItIsCopied(t *testing.T) {
	plain := Check(Read("t", []byte(copiedText), Options{}), Options{})
	require.Empty(t, plain.Findings)
	require.Equal(t, plain.Read.Lines, plain.Read.Whole)
	for name, copied := range copies {
		rep := Check(Read("t", []byte(copied(copiedText)), Options{}), Options{})
		assert.Empty(t, rep.Findings, name)
		assert.Equal(t, [2]int{plain.Read.Lines, plain.Read.Whole}, [2]int{rep.Read.Lines, rep.Read.Whole}, name)

		wrong := copied(strings.Replace(copiedText, "60 sts", "61 sts", 1))
		rep = Check(Read("t", []byte(wrong), Options{}), Options{})
		if assert.Len(t, rep.Findings, 1, name) {
			at := rep.Findings[0].Pos
			line := []rune(strings.Split(wrong, "\n")[at.Line-1])
			assert.True(t, strings.HasPrefix(string(line[at.Col-1:at.EndCol-1]), "61"), name)
		}
	}
}

// Of 7 stitches 3 lie before the one in the middle; of 8, 4 before the middle of the row. Counted by hand.
func TestARowGoesUpToItsMiddle(t *testing.T) {
	for row, sts := range map[string]int{
		"K to centre st, yo, k centre st, yo, k3": 7, "K to center stitch, yo, k the center stitch, yo, k3": 7, "K1, yo, k to centre st, m1, k1, m1, k to last st, yo, k1": 7,
		"K to 1 st before centre st, sl 2 tog, k1, p2sso, k2": 7, "K to centre, p1, k3": 7, "K to centre, yo, k4": 8, "P to middle st, p1, p3": 7,
	} {
		x := Read("t", []byte("Cast on "+string(rune('0'+sts))+" sts.\nRow 1: "+row+".\n"), Options{})
		rep := Check(x, Options{})
		assert.Empty(t, rep.Findings, row)
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, row)
	}
}

// A definition that a column breaks is read whole, and the rows behind it are rows.
func TestDefinitionsGoOnOverLines(t *testing.T) {
	for _, heading := range []string{"Special stitches", "Special abbreviations", "Stitch guide", "Abbreviations"} {
		x := Read("t", []byte(heading+"\nC4F: slip next 2 sts onto cable needle and hold at front of\nwork, k2, then k2 from cable needle.\nMB - make bobble: (k1, p1, k1) all into next st,\nturn, p3, turn, k3tog.\n\n"+
			"Cast on 22 sts.\nRow 1 (RS): P2, k2, p7, C4F, p3, MB, p3.\nRow 2: K9, p4, k9.\n"), Options{})
		rep := Check(x, Options{})
		assert.Empty(t, rep.Findings, heading)
		assert.Equal(t, []int{3, 3}, []int{rep.Read.Lines, rep.Read.Whole}, heading)
	}
}
