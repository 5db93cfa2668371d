package walls

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// kindsOfSection are the types of schematic with Common in them.
func kindsOfSection(t *testing.T) map[string]bool {
	kinds := map[string]bool{}
	files, err := filepath.Glob(filepath.Join(root, "schematic", "*.go"))
	require.NoError(t, err)
	for _, path := range files {
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			spec, ok := n.(*ast.TypeSpec)
			if !ok {
				return true
			}
			if of, ok := spec.Type.(*ast.StructType); ok {
				for _, f := range of.Fields.List {
					if name, ok := f.Type.(*ast.Ident); ok && len(f.Names) == 0 && name.Name == "Common" {
						kinds[spec.Name.Name] = true
					}
				}
			}
			return false
		})
	}
	return kinds
}

// asked are the types for which a file of Go asks, in assertions and in switches over types.
func asked(n ast.Node) []ast.Expr {
	switch n := n.(type) {
	case *ast.TypeAssertExpr:
		return []ast.Expr{n.Type}
	case *ast.TypeSwitchStmt:
		var all []ast.Expr
		for _, c := range n.Body.List {
			all = append(all, c.(*ast.CaseClause).List...)
		}
		return all
	}
	return nil
}

// What a kind of section is stands beside its type: no other package asks a section which of them it is.
func TestNoOtherPackageAsksForAKindOfSection(t *testing.T) {
	kinds := kindsOfSection(t)
	require.Greater(t, len(kinds), 15)
	looked := 0
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") || filepath.Dir(path) == filepath.Join(root, "schematic") {
			return err
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, 0)
		if err != nil {
			return err
		}
		looked++
		ast.Inspect(file, func(n ast.Node) bool {
			for _, of := range asked(n) {
				if star, ok := of.(*ast.StarExpr); ok {
					of = star.X
				}
				if name, ok := of.(*ast.SelectorExpr); ok {
					pkg, _ := name.X.(*ast.Ident)
					assert.False(t, pkg != nil && pkg.Name == "schematic" && kinds[name.Sel.Name], "%s asks whether a section is a %s: ask for its traits", set.Position(name.Pos()), name.Sel.Name)
				}
			}
			return true
		})
		return nil
	}))
	require.Greater(t, looked, 300)
}
