package rows

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/stitch"
)

// corpusText is one text of testdata/rows with its line of the manifest.
type corpusText struct {
	name, sort, source string
	src                []byte
	options            Options
}

func corpus(t testing.TB) []corpusText {
	t.Helper()
	dir := filepath.Join("..", "..", "testdata", "rows")
	list, err := os.ReadFile(filepath.Join(dir, "manifest.tsv"))
	require.NoError(t, err)
	var out []corpusText
	for _, line := range strings.Split(strings.TrimSpace(string(list)), "\n") {
		if strings.HasPrefix(line, "#") {
			continue
		}
		f := strings.Split(line, "\t")
		require.Len(t, f, 5, line)
		src, err := os.ReadFile(filepath.Join(dir, f[0]))
		require.NoError(t, err)
		c := corpusText{name: f[0], sort: f[1], source: f[4], src: src, options: Options{TermsSet: true}}
		if f[2] == "UK" {
			c.options.Terms = stitch.UK
		}
		out = append(out, c)
	}
	return out
}

// Every text of the corpus is correct: its counts are its source's.
func TestNoCorrectTextHasAFinding(t *testing.T) {
	sorts := map[string]int{}
	stated := map[string]int{}
	var all Reading
	for _, c := range corpus(t) {
		x := Read(c.name, c.src, c.options)
		rep := Check(x, c.options)
		for _, f := range rep.Findings {
			assert.Failf(t, "finding", "%s:%d:%d %s: %s %v | %s | %s | %s", c.name, f.Pos.Line, f.Pos.Col, f.Kind, f.Message, f.Sizes, f.Have, f.Want, f.Fix)
		}
		sorts[c.sort]++
		stated[c.sort] += rep.Read.Stated
		all.Lines += rep.Read.Lines
		all.Whole += rep.Read.Whole
		all.Words += rep.Read.Words
	}
	t.Logf("texts: %d read at a source, %d recalled, %d whole garments of our own; rows with stated counts: %d, %d, %d",
		sorts["read"], sorts["recalled"], sorts["own"], stated["read"], stated["recalled"], stated["own"])
	t.Logf("read whole: %d of %d instruction lines (%.1f %%); %d further lines are words", all.Whole, all.Lines, 100*all.Share(), all.Words)
	assert.GreaterOrEqual(t, all.Share(), 0.98)
	assert.GreaterOrEqual(t, all.Lines, 500)
	assert.GreaterOrEqual(t, stated["read"], 40)
	assert.GreaterOrEqual(t, sorts["own"], 3)
}
