package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/long"
)

var update = flag.Bool("update", false, "write licences.txt anew")

type module struct {
	Path, Version, Dir string
	Main               bool
}

// built are the modules whose packages are in the program on any of the systems
// for which it is built.
func built(t *testing.T) []module {
	t.Helper()
	seen := map[string]module{}
	for _, system := range []string{"linux", "windows", "darwin"} {
		cmd := exec.Command("go", "list", "-deps", "-json=Module", ".")
		cmd.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0")
		out, err := cmd.Output()
		require.NoError(t, err)
		for d := json.NewDecoder(strings.NewReader(string(out))); ; {
			var p struct{ Module *module }
			err := d.Decode(&p)
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err)
			if p.Module != nil && !p.Module.Main {
				seen[p.Module.Path] = *p.Module
			}
		}
	}
	var all []module
	for _, m := range seen {
		all = append(all, m)
	}
	slices.SortFunc(all, func(a, b module) int { return strings.Compare(a.Path, b.Path) })
	return all
}

func licenceFiles(t *testing.T, dir string) string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	var text strings.Builder
	for _, e := range entries {
		name := strings.ToUpper(e.Name())
		if e.IsDir() || !(strings.HasPrefix(name, "LICEN") || strings.HasPrefix(name, "COPYING") || strings.HasPrefix(name, "NOTICE")) {
			continue
		}
		body, err := os.ReadFile(filepath.Join(dir, e.Name()))
		require.NoError(t, err)
		lines := strings.Split(strings.ReplaceAll(string(body), "\r\n", "\n"), "\n")
		for i, l := range lines {
			lines[i] = strings.TrimRight(l, " \t\f")
		}
		fmt.Fprintf(&text, "\n%s\n", strings.Trim(strings.Join(lines, "\n"), "\n"))
	}
	return text.String()
}

func TestLicencesAreThoseOfEveryModuleInTheBuild(t *testing.T) {
	long.Test(t)
	var b strings.Builder
	b.WriteString("Flatwright\n" + licenceFiles(t, filepath.Join("..", "..")))
	b.WriteString("\nWhat follows is built into the program, each under its own licence.\n")
	for _, m := range append([]module{{Path: "The Go standard library", Dir: goroot(t)}}, built(t)...) {
		text := licenceFiles(t, m.Dir)
		require.NotEmpty(t, text, "%s has no licence file", m.Path)
		fmt.Fprintf(&b, "\n%s\n%s\n%s", strings.Repeat("=", 76), m.Path, text)
	}
	if *update {
		require.NoError(t, os.WriteFile("licences.txt", []byte(b.String()), 0o644))
	}
	got, err := os.ReadFile("licences.txt")
	require.NoError(t, err)
	assert.Equal(t, b.String(), strings.ReplaceAll(string(got), "\r\n", "\n"), "go test ./cmd/flatwright -run Licences -update writes it anew")
}

func goroot(t *testing.T) string {
	t.Helper()
	out, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	return strings.TrimSpace(string(out))
}
