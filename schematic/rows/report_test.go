package rows

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
)

const top = "Terms: US\nNotes: Ch 1 and ch 2 do not count as a stitch. Ch 3 counts as dc.\n"

func check(src string) finding.List {
	return Check(Read("t.txt", []byte(src), Options{}), Options{}).Findings
}

func TestTheReportQuotesTheLineAndShowsTheArithmetic(t *testing.T) {
	src := top + "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (21 sc)\n"
	x := Read("t.txt", []byte(src), Options{})
	var b strings.Builder
	require.NoError(t, Markdown(&b, x, Check(x, Options{}), nil))
	for _, want := range []string{"# Check of the written rows", "The row makes 20 sc, not 21", "Here: `21 sc`", "Found: 20 sc made", "2 of 2 lines of instructions were read whole (100.0 %)"} {
		assert.Contains(t, b.String(), want)
	}
}

// A text with a fault of each kind in several sizes: what is told of sizes, rows, files and what was not read.
func TestTheReportIsFitToSend(t *testing.T) {
	src := `Terms: US
Sizes: S (M, L) (1X, 2X)
Notes: Ch 1 does not count as a stitch.

Back
Ch 42 (46, 50) (54, 58).
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (41 (45, 49) (53, 57) sc)
Row 2: Ch 1, sc in each st across, turn. (41 (44, 49) (53, 55) sc)
Row 3: Ch 1, frobnicate in next 3 *st_s\, sc in each st across. (41 (45, 49) (53, 57) sc)
Row 4: Ch 1, sc in next 40 (44, 48) (52, 56) sts, turn.
`
	x := Read("t.txt", []byte(src), Options{})
	rep := Check(x, Options{})
	found, unread := rep.Findings.Apart()
	require.Len(t, found, 2)
	assert.Equal(t, "the row makes 45 and 57 sc, not 44 and 55", found[0].Message)
	assert.Equal(t, "say 41 (45, 49) (53, 57), or correct the row so that it makes 44 and 55", found[0].Fix, "pasted, it keeps every size")
	assert.Equal(t, []string{"M", "2X"}, found[0].Sizes)
	assert.Equal(t, "1 stitch is left over at the end", found[1].Message)
	for i, row := range []string{"Row 2", "Row 4"} {
		assert.Equal(t, row, found[i].Row)
		assert.Equal(t, "Back", found[i].Section)
	}
	require.Len(t, unread, 1)
	assert.Equal(t, "Row 3", unread[0].Row)

	rep.Findings = append(rep.Findings, finding.Finding{Kind: "drawn/written", Severity: finding.Warning, Message: "the piece is 40 cm wide, not 42 cm",
		Pos: finding.Pos{File: "p.yaml", Line: 2, Col: 1, EndCol: 7}})
	var b strings.Builder
	require.NoError(t, Markdown(&b, x, rep, map[string][]byte{"p.yaml": []byte("a: 1\nfinished: 42\n")}))
	out := b.String()
	assert.Contains(t, out, "(Back, Row 2; line 8 of t.txt; sizes M and 2X)")
	assert.Contains(t, out, "(line 2 of p.yaml)\n\n       finished: 42\n")
	assert.NotContains(t, strings.ReplaceAll(out, `st_s\`, ""), `\`, "nothing strange stands in a letter")
	told, apart, cut := strings.Cut(out, "## Not read")
	require.True(t, cut)
	assert.NotContains(t, told, "frobnicate")
	assert.Contains(t, apart, "frobnicate")
	assert.Less(t, strings.Index(out, "1 stitch is left over"), strings.Index(out, "The row makes 45"), "what can't be worked is told first")
}

func TestNothingOfATextIsMarkupInAReport(t *testing.T) {
	for in, want := range map[string]string{
		"plain (41) words: 'so'": "plain (41) words: 'so'",
		"a *b* c":                "a `*b*` c",
		"a [x](y) c":             "a `[x](y)` c",
		"[2 dc] twice":           "[2 dc] twice",
		"x `y z":                 "x `` `y `` z",
		"state `to: 8`, or":      "state `to: 8`, or",
		"x `y` *z*":              "x `` `y` *z* ``",
		"<b>":                    "`<b>`",
		"see http://a.b now":     "see `http://a.b` now",
	} {
		assert.Equal(t, want, inline(in), in)
	}
}
