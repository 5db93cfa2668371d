package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/examples"
)

const leftOut = "…" // a line that stands for any lines of output

// tried runs the command blocks of a guide in one folder that has the examples, writes
// the files that it shows, and gives the guide with the output as it is: as many lines
// before and after a line left out as the guide has.
func tried(t *testing.T, guide string) string {
	t.Helper()
	var out []string
	lines := strings.Split(guide, "\n")
	for i := 0; i < len(lines); i++ {
		info, fenced := strings.CutPrefix(lines[i], "```")
		out = append(out, lines[i])
		if !fenced {
			continue
		}
		var block []string
		for i++; lines[i] != "```"; i++ {
			block = append(block, lines[i])
		}
		switch kind, name, named := strings.Cut(info, " "); {
		case kind == "console":
			block = printed(t, block)
		case named:
			require.NoError(t, os.WriteFile(filepath.FromSlash(name), []byte(strings.Join(block, "\n")+"\n"), 0o600))
		}
		out = append(append(out, block...), lines[i])
	}
	return strings.Join(out, "\n")
}

// printed is a block of commands with their output.
func printed(t *testing.T, block []string) []string {
	t.Helper()
	var out []string
	for i := 0; i < len(block); {
		command, ok := strings.CutPrefix(block[i], "$ flatwright ")
		require.True(t, ok, "a command is expected: %s", block[i])
		out = append(out, block[i])
		var shown []string
		for i++; i < len(block) && !strings.HasPrefix(block[i], "$ "); i++ {
			shown = append(shown, block[i])
		}
		var both bytes.Buffer
		run(context.Background(), arguments(command), environment{in: strings.NewReader(""), out: &both, err: &both})
		got := strings.Split(strings.TrimRight(both.String(), "\n"), "\n")
		for k, l := range got {
			if strings.HasPrefix(l, "wrote ") {
				l = filepath.ToSlash(l)
			}
			got[k] = strings.TrimRight(l, " ")
		}
		for k, l := range shown {
			if after := len(shown) - k - 1; l == leftOut && len(got) > k+after+1 {
				got = append(append(got[:k:k], leftOut), got[len(got)-after:]...)
				break
			}
		}
		out = append(out, got...)
	}
	return out
}

var argument = regexp.MustCompile(`"[^"]*"|\S+`)

// arguments are those of a command line; quotes keep a few words together.
func arguments(line string) []string {
	all := argument.FindAllString(line, -1)
	for i := range all {
		all[i] = strings.Trim(all[i], `"`)
	}
	return all
}

// Every command of every guide is run, and prints what the guide shows; -update writes
// what it prints into the guide.
func TestTheGuidesAreTrue(t *testing.T) {
	guides, err := filepath.Abs("../../examples/guides")
	require.NoError(t, err)
	all, err := filepath.Glob(filepath.Join(guides, "*.md"))
	require.NoError(t, err)
	require.NotEmpty(t, all)
	rows, err := os.ReadFile("../../examples/tideline-shells.txt")
	require.NoError(t, err)
	link := regexp.MustCompile(`\]\(([^)#:]+)\)`)
	for _, path := range all {
		t.Run(filepath.Base(path), func(t *testing.T) {
			text := strings.ReplaceAll(contents(t, path), "\r\n", "\n")
			for _, m := range link.FindAllStringSubmatch(text, -1) {
				assert.FileExists(t, filepath.Join(guides, filepath.FromSlash(m[1])))
			}
			t.Chdir(t.TempDir())
			for _, name := range examples.Names() {
				require.NoError(t, os.WriteFile(name+".yaml", examples.Text(name), 0o600))
			}
			require.NoError(t, os.WriteFile("tideline-shells.txt", rows, 0o600))
			got := tried(t, text)
			if *update {
				require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
				return
			}
			assert.Equal(t, text, got, "go test ./cmd/flatwright -run Guides -update writes it anew: read the difference")
		})
	}
}
