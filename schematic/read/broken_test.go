package read

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
)

var update = flag.Bool("update", false, "write the goldens and the schema anew")

const testdata = "../../testdata/read"

// broken is a sound pattern with one or a few things spoiled.
type broken struct {
	name  string
	edits []string // old, new, old, new …
}

func base(t testing.TB) string {
	b, err := os.ReadFile(filepath.Join(testdata, "base.yaml"))
	require.NoError(t, err)
	return string(b)
}

func (b broken) source(t testing.TB) string {
	s := base(t)
	for i := 0; i < len(b.edits); i += 2 {
		require.Contains(t, s, b.edits[i], "%s: what is to be spoiled is not in the pattern", b.name)
		s = strings.Replace(s, b.edits[i], b.edits[i+1], 1)
	}
	return s
}

func told(t testing.TB, src string) (string, finding.List) {
	p, list := Pattern("vest.yaml", []byte(src))
	require.False(t, p == nil && !list.Errors(), "no pattern and no error")
	var out bytes.Buffer
	require.NoError(t, finding.Printer{}.Print(&out, list, map[string][]byte{"vest.yaml": []byte(src)}))
	return out.String(), list
}

// Every case of a family stands in one golden file, to be read by a person.
func TestBrokenFilesAreToldWell(t *testing.T) {
	n := 0
	for family, cases := range families {
		var all strings.Builder
		for _, c := range cases {
			n++
			text, list := told(t, c.source(t))
			require.NotEmpty(t, list, c.name)
			for _, f := range list {
				require.True(t, finding.Known(f.Kind), "%s: %s is in no table", c.name, f.Kind)
				require.NotEmpty(t, f.Message)
				if f.Severity == finding.Error && f.Kind != "file/many" {
					assert.NotEmpty(t, f.Want+f.Fix+f.Have, "%s: %s says neither what was expected nor a fix", c.name, f.Message)
				}
			}
			fmt.Fprintf(&all, "=== %s\n%s\n", c.name, text)
		}
		file := filepath.Join(testdata, "broken", family+".txt")
		if *update {
			require.NoError(t, os.WriteFile(file, []byte(all.String()), 0o644))
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err)
		require.Equal(t, string(want), all.String(), "%s: run with -update and read the difference", file)
	}
	require.GreaterOrEqual(t, n, 60)
}

// A join that calls an edge wrongly is an error that stops nothing else: every other error does.
func TestAWrongEdgeOfAJoinStopsNothing(t *testing.T) {
	p, found := Pattern("sorrel.yaml", []byte(strings.Replace(bare, "pieces:", "joins:\n  - sew: Bakc side\n    to: Front\npieces:", 1)))
	require.NotNil(t, p)
	require.Len(t, found, 2)
	assert.True(t, found.Errors())
	assert.False(t, found.Stop())
	_, found = Pattern("sorrel.yaml", []byte(strings.Replace(bare, "pieces:", "joins:\n  - sew: left edge of Back\n    to: Front side\npieces:", 1)))
	require.NotEmpty(t, found)
	assert.Equal(t, `did you mean "Back left edge"?`, found[0].Fix)
	p, found = Pattern("sorrel.yaml", []byte(strings.Replace(bare, "pieces:", "joins:\n  - sew: Back side\n    to: Front side\n    shade: dark\npieces:", 1)))
	require.NotNil(t, p)
	assert.True(t, found.Stop(), "%v", found)
}
