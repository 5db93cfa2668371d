// Package walls holds the house's walls: imports run one way, from what knows the
// craft to what knows the user, and each package has a place in that order.
package walls

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	root   = "../../.."
	module = "flatwright"
)

// floors are the packages from the bottom up. A package may import those of
// lower floors, and but for the lowest floor and the writers those of its own
// that stand before it.
var floors = [][]string{
	{"schematic/long", "fonts", "schematic/units", "schematic/finding", "schematic/stitch", "examples"},
	{"schematic/expr", "schematic/body"},
	{"schematic"},
	{"schematic/bysize", "schematic/yarn", "schematic/shaping", "schematic/grade", "schematic/alter", "schematic/rows/instructions", "schematic/rows/text", "schematic/rows/grammar", "schematic/rows/work", "schematic/rows/print", "schematic/rows", "schematic/random", "schematic/worn", "schematic/read", "schematic/given", "schematic/check"},
	{"layout/sheet", "layout/place", "layout/chart", "layout/table", "layout/document"},
	{"render/svg", "render/pdf", "render/text", "render/html", "render/xlsx", "render/compare"},
	{"cmd/internal/files", "cmd/internal/job", "cmd/internal/starter", "cmd/internal/serve", "cmd/internal/walls"},
	{"cmd/flatwright"},
}

// only says which packages alone may import something from outside.
var only = map[string][]string{
	"gopkg.in/yaml.v3":         {"schematic/read"},
	"github.com/ajstarks/svgo": {"render/svg"},
	"github.com/go-pdf/fpdf":   {"render/pdf"},
	"github.com/xuri/excelize": {"render/xlsx"},
	"github.com/spf13/cobra":   {"cmd/flatwright"},
	"github.com/go-fonts":      {"fonts"},
	"os":                       {"cmd/flatwright", "cmd/internal/files", "cmd/internal/serve", "render/compare", "schematic/long", "schematic/given"},
	"os/exec":                  {"render/compare", "cmd/internal/serve"},
	"time":                     {"render/pdf", "render/xlsx", "render/compare", "cmd/internal/serve", "cmd/internal/files"},
	"math/rand":                {},
	"math/rand/v2":             {"render/compare", "schematic/random", "schematic/long"},
	"net/http":                 {"cmd/internal/serve"},
}

// forbidden are imports from inside the house that a lower floor would allow.
var forbidden = map[string][]string{
	"layout/": {"schematic/read"},
	"render/": {"schematic/read", "schematic/check", "layout/place"},
}

// imports are the imports of each package, with those of its tests apart.
func imports(t *testing.T) (code, tests map[string][]string) {
	t.Helper()
	code, tests = map[string][]string{}, map[string][]string{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := d.Name()
		if d.IsDir() && path != root && (strings.HasPrefix(name, ".") || name == "testdata") {
			return filepath.SkipDir
		}
		if d.IsDir() || filepath.Ext(name) != ".go" {
			return nil
		}
		rel, err := filepath.Rel(root, filepath.Dir(path))
		if err != nil {
			return err
		}
		pkg := filepath.ToSlash(rel)
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		into := code
		if strings.HasSuffix(name, "_test.go") {
			into = tests
		}
		if into[pkg] == nil {
			into[pkg] = []string{}
		}
		for _, im := range file.Imports {
			p, err := strconv.Unquote(im.Path.Value)
			if err != nil {
				return err
			}
			if !slices.Contains(into[pkg], p) {
				into[pkg] = append(into[pkg], p)
			}
		}
		return nil
	})
	require.NoError(t, err)
	require.Greater(t, len(code), 5, "the walk found the house")
	return code, tests
}

// place is the floor of a package and the place on it, or -1. What stands below a
// named package belongs to it.
func place(pkg string) (floor, at int) {
	best := ""
	floor, at = -1, -1
	for i, f := range floors {
		for j, p := range f {
			if (pkg == p || strings.HasPrefix(pkg, p+"/")) && len(p) > len(best) && !(p == "schematic" && pkg != p) {
				best, floor, at = p, i, j
			}
		}
	}
	return floor, at
}

func inside(path string) (string, bool) {
	rest, ok := strings.CutPrefix(path, module+"/")
	return rest, ok
}

// allowed reports whether pkg may import other: from a lower floor, or from its
// own floor if it stands there before pkg. Writers know nothing of each other.
func allowed(pkg, other string) bool {
	f, at := place(pkg)
	g, to := place(other)
	if f != g {
		return g < f
	}
	return to == at || to < at && !strings.HasPrefix(pkg, "render/") && f > 0
}

func TestEveryPackageHasItsPlace(t *testing.T) {
	code, tests := imports(t)
	for _, m := range []map[string][]string{code, tests} {
		for pkg := range m {
			f, _ := place(pkg)
			assert.GreaterOrEqual(t, f, 0, "%s is not in the order of the house: give it a place in floors, or put it elsewhere", pkg)
		}
	}
}

func TestImportsRunOneWay(t *testing.T) {
	code, _ := imports(t)
	for pkg, all := range code {
		for _, path := range all {
			other, ok := inside(path)
			if !ok {
				continue
			}
			assert.True(t, allowed(pkg, other), "%s may not import %s", pkg, other)
			for prefix, names := range forbidden {
				if strings.HasPrefix(pkg, prefix) {
					assert.NotContains(t, names, other, "%s may not know of %s", pkg, other)
				}
			}
		}
	}
}

func TestOnlyTheirOwnPackageKnowsALibrary(t *testing.T) {
	code, _ := imports(t)
	for pkg, all := range code {
		for _, path := range all {
			for library, who := range only {
				if path == library || !strings.Contains(library, "/") && path == library ||
					strings.Contains(library, ".") && strings.HasPrefix(path, library+"/") {
					ok := slices.ContainsFunc(who, func(w string) bool { return pkg == w || strings.HasPrefix(pkg, w+"/") })
					assert.True(t, ok, "%s may not import %s: only %v", pkg, path, who)
				}
			}
		}
	}
}

func TestTheTopHoldsNothingButTheRooms(t *testing.T) {
	rooms := []string{"cmd", "examples", "fonts", "layout", "render", "schematic", "testdata"}
	entries, err := os.ReadDir(root)
	require.NoError(t, err)
	for _, e := range entries {
		if e.IsDir() && !strings.HasPrefix(e.Name(), ".") && e.Name() != "flatwright-out" && e.Name() != "dist" {
			assert.Contains(t, rooms, e.Name())
		}
		assert.NotEqual(t, ".go", filepath.Ext(e.Name()), "code belongs in a room: %s", e.Name())
	}
}

func TestThePlannedWallsHold(t *testing.T) {
	for _, c := range []struct {
		pkg, other string
		want       bool
	}{
		{"layout/place", "layout/sheet", true}, {"layout/sheet", "layout/place", false},
		{"schematic/check", "schematic", true}, {"schematic", "schematic/check", false},
		{"schematic/read", "schematic/grade", true}, {"schematic/shaping", "schematic/grade", false}, {"schematic/grade", "schematic/alter", false}, {"schematic/rows", "schematic/read", false},
		{"schematic/finding", "schematic/units", false}, {"render/compare", "render/svg", false},
		{"render/svg", "render/pdf", false}, {"render/svg", "layout/sheet", true},
		{"schematic/expr", "schematic/units", true}, {"schematic/units", "schematic/expr", false},
		{"cmd/internal/job", "cmd/internal/files", true}, {"cmd/internal/files", "cmd/internal/job", false},
		{"schematic/units", "schematic", false}, {"fonts", "layout/sheet", false},
	} {
		assert.Equal(t, c.want, allowed(c.pkg, c.other), "%s importing %s", c.pkg, c.other)
	}
}
