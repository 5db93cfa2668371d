package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/files"
)

// A folder as a person has it, a command that writes into it, and the file that must
// stay as it is. None of them costs her a byte.
func TestNoCommandReplacesWhatIsNotItsOwn(t *testing.T) {
	raglan := contents(t, "../../examples/windlass-raglan.yaml")
	for name, c := range map[string]struct{ file, holds, args, why string }{
		"its input":               {"windlass-raglan.yaml", raglan, "grade --fill -o . windlass-raglan.yaml", "this command reads it"},
		"its input, in spite":     {"windlass-raglan.yaml", raglan, "grade --fill --overwrite -o . windlass-raglan.yaml", "this command reads it"},
		"its input, another path": {"windlass-raglan.yaml", raglan, "grade --fill -o ../sub/. ../sub/windlass-raglan.yaml", "this command reads it"},
		"rows of her own":         {"windlass-raglan-rows.txt", "Row 1: mine", "rows -o . windlass-raglan.yaml", "--overwrite replaces it"},
		"a table of her own":      {"windlass-raglan-measurements.txt", "x", "table -o . windlass-raglan.yaml", "--overwrite"},
		"a drawing of her own":    {"windlass-raglan-s-page-1.svg", "<svg/>", "draw -o . windlass-raglan.yaml", "--overwrite"},
		"a page of her own":       {"windlass-raglan-page.html", "<p>", "page -o . windlass-raglan.yaml", "--overwrite"},
		"a handout of her own":    {"windlass-raglan-handout.pdf", "%PDF", "handout -o . windlass-raglan.yaml", "--overwrite"},
		"yarn of her own":         {"windlass-raglan-yarn.txt", "12 balls", "yarn --swatch 9g/10x10cm -o . windlass-raglan.yaml", "--overwrite"},
		"a grading of her own":    {"windlass-raglan-grading.csv", "a,b", "grade --format csv -o . windlass-raglan.yaml", "--overwrite"},
		"a record of her own":     {files.Record, "{}", "rows -o . windlass-raglan.yaml", files.Record},
	} {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "sub")
			require.NoError(t, os.Mkdir(dir, 0o755))
			t.Chdir(dir)
			require.NoError(t, os.WriteFile("windlass-raglan.yaml", []byte(raglan), 0o644))
			require.NoError(t, os.WriteFile(c.file, []byte(c.holds), 0o644))
			before := names(t, dir)
			args := strings.Fields(c.args)
			for i, a := range args {
				args[i] = strings.Replace(a, "9g/10x10cm", "9 g over 10 x 10 cm", 1)
			}
			r := flatwright(t, "", args...)
			assert.Equal(t, exitUsage, r.code, r.err)
			assert.Contains(t, r.err, "kept ")
			assert.Contains(t, r.err, c.why)
			assert.Equal(t, 1, strings.Count(strings.TrimSpace(r.err), "\n")+1, "told in one line: %s", r.err)
			assert.Equal(t, c.holds, contents(t, c.file))
			assert.Equal(t, before, names(t, dir), "and nothing else is written beside it")
		})
	}
}

func TestACommandReplacesItsOwnFilesUntilSomeoneChangesThem(t *testing.T) {
	dir := t.TempDir()
	pattern := filepath.Join(dir, "tern.yaml")
	require.NoError(t, os.WriteFile(pattern, []byte(contents(t, tern)), 0o644))
	out := filepath.Join(dir, "out")
	rows := filepath.Join(out, "tern-slipover-rows.txt")
	write := func(more ...string) result {
		return flatwright(t, "", append([]string{"rows", "-o", out, pattern}, more...)...)
	}
	require.Equal(t, exitWell, write().code)
	require.Equal(t, exitWell, write("--size", "M").code, "another file of the same command")
	require.NoError(t, os.WriteFile(pattern, []byte(changed(t, "76 (84, 92)", "78 (84, 92)")), 0o644))
	first := contents(t, rows)
	r := write()
	require.Equal(t, exitWell, r.code, r.err)
	require.NotEqual(t, first, contents(t, rows), "drawn anew: it was as the program had left it")

	edited := contents(t, rows) + "My own last row.\n"
	require.NoError(t, os.WriteFile(rows, []byte(edited), 0o644))
	require.Equal(t, exitUsage, write().code)
	require.Equal(t, edited, contents(t, rows))
	require.Equal(t, exitWell, write("--overwrite").code)
	require.NotEqual(t, edited, contents(t, rows))
	require.Equal(t, exitWell, write().code, "it is the program's again")

	require.NoError(t, os.Rename(pattern, filepath.Join(dir, "other.yaml")))
	r = flatwright(t, "", "rows", "-o", out, filepath.Join(dir, "other.yaml"))
	require.Equal(t, exitWell, r.code, "the very same bytes: nothing is lost")
	require.NoError(t, os.WriteFile(pattern, []byte(contents(t, tern)), 0o644))
	r = write()
	require.Equal(t, exitUsage, r.code, "it is now of another pattern with the same title")
}

func TestAnEmptyArgumentIsWrongUseOfEveryCommand(t *testing.T) {
	for _, c := range newRoot(environment{}).Commands() {
		args := []string{c.Name(), ""}
		if c.Name() == "new" {
			args = append(args, "")
		}
		r := flatwright(t, "", args...)
		assert.Equal(t, exitUsage, r.code, c.Name())
		assert.Contains(t, r.err, "--help", c.Name())
		if c.Flags().Lookup("out") != nil {
			r = flatwright(t, "", c.Name(), "--out", "", tern)
			assert.Equal(t, exitUsage, r.code, c.Name())
			assert.Contains(t, r.err, "--out is empty", c.Name())
		}
	}
	r := flatwright(t, "", "yarn", "--swatch", "", tern)
	assert.Contains(t, r.err, "--swatch is empty")
	r = flatwright(t, "", "check", "--rows", "", tern)
	assert.Contains(t, r.err, "--rows is empty")
}

func TestNamesFromElsewhereDoNothingToATerminal(t *testing.T) {
	r := flatwright(t, "", "draw", "a\x1b[2J\u202eb\n.yaml")
	assert.Equal(t, exitUsage, r.code)
	assert.NotContains(t, r.err, "\x1b")
	assert.NotContains(t, r.err, "\u202e")
	assert.Contains(t, r.err, "a·[2J·b")
	dir := filepath.Join(t.TempDir(), "o\x1b[2J\u202e")
	r = flatwright(t, "", "rows", "-o", dir, tern)
	require.Equal(t, exitWell, r.code)
	assert.Contains(t, r.err, "o·[2J·")
	assert.NotContains(t, r.err, "\x1b")
}
