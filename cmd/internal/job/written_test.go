package job

import (
	"context"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
)

// plant is one mistake in a written text, the words that must be marked and the sizes
// that it concerns (none: all).
type plant struct{ name, old, new, kind, words, sizes string }

// written are whole texts of five sizes that agree, with the mistakes that a tech editor
// is paid to find: each must be told once, at its place, and nothing else.
var written = []struct {
	text, pattern string
	plants        []plant
}{
	{"harrow-lane.txt", "harrow-lane.yaml", []plant{
		{"a wrong stated count in one size", "[34 (37, 41) (45, 49) htr]", "[34 (37, 42) (45, 49) htr]", "rows/stated", "34 (37, 42) (45, 49) htr", "L"},
		{"a repeat that does not fit", "Ch 62 (66, 66) (70, 70).\nRow 1 (RS): Dc in 2nd ch from hook, dc in each ch to end, turn. [61 (65, 65) (69, 69) dc]",
			"Ch 62 (66, 66) (72, 70).\nRow 1 (RS): Dc in 2nd ch from hook, dc in each ch to end, turn. [61 (65, 65) (71, 69) dc]",
			"rows/repeat", "*miss 1 st, 3 tr in next st, miss 1 st, dc in next st; rep from * to end", "XL"},
		{"a size dropped", "next 13 (13, 13) (14, 14) rows", "next 13 (13, 13) (14) rows", "rows/sizes", "13 (13, 13) (14)", "2X"},
		{"a row number out of order", "Rows 3-42 (42", "Rows 4-42 (42", "rows/number", "Rows 4-42 (42, 42) (44, 44):", ""},
		{"a word of the other terms", "Rows 2-4: Ch 2, htr in each", "Rows 2-4: Ch 2, hdc in each", "words/terms", "hdc", ""},
		{"inches that are not the centimetres", "15 (15, 15) (15¾, 15¾) in", "15 (15, 15) (15¾, 16½) in", "units/pair", "38 (38, 38) (40, 40) cm / 15 (15, 15) (15¾, 16½) in", "2X"},
		{"a length that the rows do not make", "Work 9 (9, 11) (11, 13) rows straight.\n", "Work 9 (9, 11) (11, 13) rows straight.\nFront measures 56.5 (57.5, 59) (62, 66) cm.\n",
			"rows/length", "56.5 (57.5, 59) (62, 66) cm", "2X"},
		{"more stitches used than there are", "Work 14 (14, 15) (15, 16) rows straight.", "Next row: Ch 2, htr in next 56 (56, 60) (64, 68) sts, turn.\nWork 13 (13, 14) (14, 15) rows straight.",
			"rows/over-use", "in next 56 (56, 60) (64, 68) sts", "S"},
		{"a turning chain that counts in one row alone", "Row 2: Ch 2, htr in each st to end, turn.\nRep", "Row 2: Ch 2 (counts as htr), htr in each st to end, turn.\nRep",
			"rows/turning-chain", "Ch 2 (counts as htr)", ""},
		{"a heading that makes another number than the pattern", "SLEEVES (make 2)", "SLEEVES (make 1)", "rows/against", "SLEEVES (make 1)", ""},
	}},
	{"skerry-hat.txt", "", []plant{
		{"a wrong stated count", "[70 (77, 84) (91, 98) sts]", "[70 (77, 84) (91, 99) sts]", "rows/stated", "70 (77, 84) (91, 99) sts", "Large"},
		{"a repeat that does not fit", "*K6, k2tog", "*K7, k2tog", "rows/repeat", "*K7, k2tog; rep from * around", ""},
		{"a size too many", "end of rnd 36 (40, 44) (46, 50)", "end of rnd 36 (40, 44) (46, 50, 52)", "rows/sizes", "36 (40, 44) (46, 50, 52)", ""},
		{"a round number out of order", "Rnd 13: Knit", "Rnd 14: Knit", "rows/number", "Rnd 14:", ""},
		{"inches that are not the centimetres", "4¾ (5¼, 5¾) (6, 6½) in", "4¾ (5¾, 5¾) (6, 6½) in", "units/pair", "12 (13.5, 14.5) (15.5, 16.5) cm / 4¾ (5¾, 5¾) (6, 6½) in", "Child"},
		{"a row to repeat that is not there", "Rnds 2-12: Rep Rnd 1", "Rnds 2-12: Rep Rnd 14", "rows/reference", "Rep Rnd 14", ""},
	}},
}

func TestMistakesPlantedInWrittenTextsAreEachToldOnce(t *testing.T) {
	for _, w := range written {
		good := writtenText(t, w.text)
		require.Empty(t, editorFindings(t, w.pattern, w.text, good), w.text)
		require.Empty(t, editorFindings(t, "", w.text, good), w.text)
		all := good
		for _, p := range w.plants {
			require.Equal(t, 1, strings.Count(good, p.old), "%s: %s", w.text, p.name)
			one := strings.Replace(good, p.old, p.new, 1)
			p.told(t, one, editorFindings(t, w.pattern, w.text, one))
			all = strings.Replace(all, p.old, p.new, 1)
		}
		if w.pattern == "" {
			continue
		}
		list := editorFindings(t, w.pattern, w.text, all)
		require.Len(t, list, len(w.plants), "all at once: %v", list)
		for _, p := range w.plants {
			var of finding.List
			for _, f := range list {
				if f.Kind == p.kind {
					of = append(of, f)
				}
			}
			p.told(t, all, of)
		}
	}
}

func writtenText(t *testing.T, name string) string {
	t.Helper()
	b, err := os.ReadFile("../../../testdata/written/" + name)
	require.NoError(t, err)
	return string(b)
}

// editorFindings are those of a text, against a pattern if one is named.
func editorFindings(t *testing.T, pattern, name, text string) finding.List {
	t.Helper()
	var src *Source
	if pattern != "" {
		src = &Source{pattern, []byte(writtenText(t, pattern))}
	}
	r, err := CheckRows(context.Background(), src, &Source{name, []byte(text)})
	require.NoError(t, err)
	assert.Equal(t, r.Read.Lines, r.Read.Whole, "every line is read")
	return r.Findings
}

// told holds that the mistake is told once, with its words marked and its sizes named.
func (p plant) told(t *testing.T, text string, list finding.List) {
	t.Helper()
	require.Len(t, list, 1, "%s: %v", p.name, list)
	f := list[0]
	assert.Equal(t, p.kind, f.Kind, p.name)
	assert.Equal(t, p.sizes, strings.Join(f.Sizes, " "), p.name)
	line := []rune(strings.Split(text, "\n")[f.Pos.Line-1])
	require.LessOrEqual(t, f.Pos.EndCol-1, len(line), p.name)
	assert.Equal(t, p.words, string(line[f.Pos.Col-1:f.Pos.EndCol-1]), p.name)
	assert.NotEmpty(t, f.Fix, p.name)
}
