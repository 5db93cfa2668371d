package work

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/stitch"
)

// Texts of our own, laid out as people publish them: rows run on in a paragraph, numbers of the sizes cut over lines,
// bullets, keys in capitals. Each line of work is read whole and nothing is found; their counts are counted by hand.
func TestTextsAsTheyAreLaidOutAreReadWhole(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "..", "..", "testdata", "rows", "laid-out", "*.txt"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		src, err := os.ReadFile(file)
		require.NoError(t, err)
		o := Options{TermsSet: true}
		if name := filepath.Base(file); len(name) > 7 && name[:3] == "uk-" {
			o.Terms = stitch.UK
		}
		x := Read(filepath.Base(file), src, o)
		for _, s := range x.Sections {
			for _, l := range s.Lines {
				assert.Empty(t, l.Unread, "%s:%d: %s", x.Name, l.At.Line, l.Src)
			}
		}
		rep := Check(x)
		for _, f := range rep.Findings {
			assert.Failf(t, "finding", "%s:%d:%d %s: %s | %s | %s", x.Name, f.Pos.Line, f.Pos.Col, f.Kind, f.Message, f.Have, f.Want)
		}
		assert.Greater(t, x.Read.Lines, 4, x.Name)
	}
}
