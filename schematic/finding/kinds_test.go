package finding

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every text in the code that looks like a kind of one of the families is in the
// table, and every kind in the table is used.
func TestEveryKindIsInTheTable(t *testing.T) {
	families := map[string]bool{}
	seen := map[string]bool{}
	for _, k := range Kinds {
		family, _, _ := strings.Cut(k.Kind, "/")
		families[family] = true
		assert.False(t, seen[k.Kind], "%s stands twice", k.Kind)
		assert.NotEmpty(t, k.What)
		seen[k.Kind] = true
	}
	form := regexp.MustCompile(`^([a-z]+)/[a-z-]+$`)
	used := map[string]bool{}
	err := filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := d.Name()
		if d.IsDir() && (name == "testdata" || strings.HasPrefix(name, ".") && name != "." && name != "..") {
			return filepath.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") || name == "kinds.go" {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return nil // a file that is being written; the compiler tells of it
		}
		imported := map[*ast.BasicLit]bool{}
		for _, i := range file.Imports {
			imported[i.Path] = true
		}
		ast.Inspect(file, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING || imported[lit] {
				return true
			}
			s, err := strconv.Unquote(lit.Value)
			if m := form.FindStringSubmatch(s); err == nil && m != nil && families[m[1]] {
				used[s] = true
				assert.True(t, Known(s), "%s: %q is not in the table of kinds", path, s)
			}
			return true
		})
		return nil
	})
	require.NoError(t, err)
	for _, k := range Kinds {
		assert.True(t, used[k.Kind], "no code finds %q", k.Kind)
	}
}
