package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/files"
)

const tern = "testdata/tern.yaml"

type result struct {
	code     int
	out, err string
}

func flatwright(t *testing.T, stdin string, args ...string) result {
	t.Helper()
	return flatwrightIn(t, context.Background(), stdin, args...)
}

func flatwrightIn(t *testing.T, ctx context.Context, stdin string, args ...string) result {
	t.Helper()
	var out, errs bytes.Buffer
	code := run(ctx, args, environment{in: strings.NewReader(stdin), out: &out, err: &errs})
	return result{code, out.String(), errs.String()}
}

func contents(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(b)
}

// changed is the test pattern with one text replaced.
func changed(t *testing.T, old, new string) string {
	t.Helper()
	text := contents(t, tern)
	require.Contains(t, text, old)
	return strings.Replace(text, old, new, 1)
}

// names are the files in a folder, but for the record of what the program wrote.
func names(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	var all []string
	for _, e := range entries {
		if e.Name() != files.Record {
			all = append(all, e.Name())
		}
	}
	return all
}

func TestDrawWritesEverySizeIntoTheFolderThatItNames(t *testing.T) {
	pattern := contents(t, tern)
	t.Chdir(t.TempDir())
	r := flatwright(t, pattern, "draw", "-")
	require.Equal(t, exitWell, r.code, r.err)
	folder := filepath.Join("flatwright-out", "tern-slipover")
	files := []string{"tern-slipover-all-sizes.svg", "tern-slipover-l.svg", "tern-slipover-m.svg", "tern-slipover-s.svg", "tern-slipover.pdf"}
	assert.Equal(t, files, names(t, folder))
	assert.Empty(t, r.out, "standard output is for data")
	assert.Contains(t, r.err, "wrote 5 files into "+folder)
	assert.Contains(t, r.err, "3 sizes, S to L, 2 pieces")
	for _, f := range files {
		assert.Contains(t, r.err, f)
		text := contents(t, filepath.Join(folder, f))
		if filepath.Ext(f) == ".pdf" {
			assert.True(t, strings.HasPrefix(text, "%PDF-"))
			continue
		}
		wellFormed(t, text)
	}
	// 84 sts at 16 over 10 cm are 52.5 cm, 20.67 in: the nearest quarter is 20¾.
	m := contents(t, filepath.Join(folder, "tern-slipover-m.svg"))
	assert.Contains(t, m, "52.5 cm")
	assert.Contains(t, m, "20¾ in")
	all := contents(t, filepath.Join(folder, "tern-slipover-all-sizes.svg"))
	assert.Contains(t, all, "47.5 (52.5, 57.5)")
}

func wellFormed(t *testing.T, text string) {
	t.Helper()
	for d := xml.NewDecoder(strings.NewReader(text)); ; {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		require.NoError(t, err)
	}
}

func TestDrawGivesTheSameBytesEveryTime(t *testing.T) {
	a, b := t.TempDir(), t.TempDir()
	for _, dir := range []string{a, b} {
		require.Equal(t, exitWell, flatwright(t, "", "draw", "-o", dir, tern).code)
	}
	for _, f := range names(t, a) {
		assert.Equal(t, contents(t, filepath.Join(a, f)), contents(t, filepath.Join(b, f)), f)
	}
}

func TestASizeDrawnAloneIsDrawnAsInTheSet(t *testing.T) {
	all, one := t.TempDir(), t.TempDir()
	require.Equal(t, exitWell, flatwright(t, "", "draw", "-o", all, tern).code)
	require.Equal(t, exitWell, flatwright(t, "", "draw", "-o", one, "--size", "s", tern).code)
	assert.Equal(t, []string{"tern-slipover-s.pdf", "tern-slipover-s.svg"}, names(t, one))
	assert.Equal(t, contents(t, filepath.Join(all, "tern-slipover-s.svg")), contents(t, filepath.Join(one, "tern-slipover-s.svg")))
}

func TestDrawOptionsChooseWhatIsDrawn(t *testing.T) {
	for _, c := range []struct {
		args  string
		files []string
		has   []string
		lacks []string
	}{
		{args: "--labels one --format svg", files: []string{"tern-slipover-l.svg", "tern-slipover-m.svg", "tern-slipover-s.svg"}},
		{args: "--labels all --format svg", files: []string{"tern-slipover-all-sizes.svg"}, has: []string{"47.5 (52.5, 57.5)"}},
		{args: "--labels letters", files: []string{"tern-slipover-letters.pdf", "tern-slipover-letters.svg"}, has: []string{"52.5"}},
		{args: "--labels blank --format svg", files: []string{"tern-slipover-blank.svg"}, lacks: []string{"52.5"}},
		{args: "--size L --units in --format svg", files: []string{"tern-slipover-l.svg"}, has: []string{"22¾"}, lacks: []string{"57.5"}},
		{args: "--size L --units cm --format svg", files: []string{"tern-slipover-l.svg"}, has: []string{"57.5"}, lacks: []string{"22¾"}},
		{args: "--size M --scale 1:10 --format svg", files: []string{"tern-slipover-m.svg"}, has: []string{"1:10"}},
		{args: "--size M --scale 12 --format svg", files: []string{"tern-slipover-m.svg"}, has: []string{"1:12"}},
		{args: "--size M --paper letter --orientation portrait --format svg", files: []string{"tern-slipover-m.svg"}, has: []string{`width="215.9`}},
		{args: "--size M --paper A4 --orientation landscape --format svg", files: []string{"tern-slipover-m.svg"}, has: []string{`width="297`}},
		{args: "--size M --large --format pdf", files: []string{"tern-slipover-m.pdf"}},
		{args: "--format pdf", files: []string{"tern-slipover.pdf"}},
	} {
		dir := t.TempDir()
		args := append(strings.Fields(c.args), "-o", dir, tern)
		r := flatwright(t, "", append([]string{"draw"}, args...)...)
		require.Equal(t, exitWell, r.code, "%s\n%s", c.args, r.err)
		assert.Equal(t, c.files, names(t, dir), c.args)
		text := contents(t, filepath.Join(dir, c.files[len(c.files)-1]))
		for _, s := range c.has {
			assert.Contains(t, text, s, c.args)
		}
		for _, s := range c.lacks {
			assert.NotContains(t, text, ">"+s, c.args)
		}
	}
}

func TestDrawWritesOneFileToStandardOutput(t *testing.T) {
	r := flatwright(t, "", "draw", "--size", "M", "--format", "svg", "-o", "-", tern)
	require.Equal(t, exitWell, r.code, r.err)
	wellFormed(t, r.out)
	r = flatwright(t, "", "draw", "-o", "-", tern)
	assert.Equal(t, exitUsage, r.code)
	assert.Contains(t, r.err, "5 files cannot go to standard output")
	assert.Empty(t, r.out)
}

func TestDrawTellsFindingsAndWritesAllTheSame(t *testing.T) {
	text := changed(t, "length: 53.5 (55, 56.5)", "length: 53.5 (58, 59.5)")
	for _, c := range []struct {
		args []string
		code int
	}{{nil, exitWell}, {[]string{"--strict"}, exitFindings}} {
		dir := t.TempDir()
		r := flatwright(t, text, append([]string{"draw", "-o", dir, "-"}, c.args...)...)
		assert.Equal(t, c.code, r.code)
		assert.Len(t, names(t, dir), 5)
		assert.Contains(t, r.err, "found 1 warning, 1 note:")
		assert.Contains(t, r.err, "standard input:30:3: warning: length is written as – (58, 59.5) cm")
		assert.Contains(t, r.err, "standard input:14:12: note: Back is not in the drawing of the garment as worn: no join or held stitch says where it goes; add a join for one of its edges")
	}
}

func TestCheckExitCodes(t *testing.T) {
	for _, c := range []struct {
		name, text string
		args       []string
		code       int
		out        string
	}{
		{"nothing found", contents(t, tern), nil, exitWell, ""},
		{"a measurement that the counts do not make", changed(t, "length: 53.5 (55, 56.5)", "length: 53.5 (58, 59.5)"), nil, exitFindings,
			"standard input:30:3: warning: length is written as – (58, 59.5) cm, and the counts make – (55, 56.5) cm [drawn/written]"},
		{"a note alone", changed(t, "length: 53.5", "collar: 53.5"), nil, exitWell, "note:"},
		{"a note, strictly", changed(t, "length: 53.5", "collar: 53.5"), []string{"--strict"}, exitFindings, "note:"},
		{"a wrong key", changed(t, "sample: M", "sampel: M"), nil, exitUnreadable, "sampel: M"},
		{"no YAML", "pattern: [", nil, exitUnreadable, "standard input:1"},
		{"nothing", "", nil, exitUnreadable, "error"},
		{"not text", "\xff\xfe\x00", nil, exitUnreadable, "file/encoding"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := flatwright(t, c.text, append([]string{"check", "-"}, c.args...)...)
			assert.Equal(t, c.code, r.code, r.err)
			assert.Contains(t, r.out, c.out)
			if c.out == "" {
				assert.Empty(t, r.out, "no finding")
				assert.Equal(t, nothing+"\n", r.err, "silence would leave a person in doubt")
			}
		})
	}
}

func TestEveryCommandSaysThatAPatternCannotBeRead(t *testing.T) {
	dir := t.TempDir()
	text := changed(t, "S (M, L)\nsample", "S (M, L\nsample")
	for _, command := range []string{"draw", "table", "check"} {
		args := []string{command, "-"}
		if command != "check" {
			args = append(args, "-o", filepath.Join(dir, "out"))
		}
		r := flatwright(t, text, args...)
		assert.Equal(t, exitUnreadable, r.code, command)
		assert.Contains(t, r.out+r.err, "standard input:7:", command)
		assert.Contains(t, r.err, "the pattern cannot be read", command)
	}
	assert.Empty(t, names(t, dir), "nothing is written")
}

func TestWrongUseExitsWithThree(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	require.NoError(t, os.WriteFile(file, nil, 0o644))
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"drawn", tern}, `unknown command "drawn"`},
		{[]string{"draw"}, "name a pattern file"},
		{[]string{"check"}, "name a pattern file"},
		{[]string{"draw", tern, tern}, "takes one pattern file"},
		{[]string{"draw", "--colour", tern}, "unknown flag: --colour"},
		{[]string{"draw", "--labels", "some", tern}, "one, all, letters, blank"},
		{[]string{"draw", "--paper", "a3", tern}, "a4, letter"},
		{[]string{"draw", "--scale", "1:0", tern}, "write a scale as 1:8"},
		{[]string{"draw", "--scale", "eight", tern}, "write a scale as 1:8"},
		{[]string{"draw", "--size", "XXL", tern}, `no size "XXL"; the sizes are S, M, L`},
		{[]string{"table", "--size", "XXL", tern}, "the sizes are S, M, L"},
		{[]string{"table", "--format", "html", tern}, "text, markdown, csv"},
		{[]string{"check", "--format", "xml", tern}, "text, json"},
		{[]string{"draw", filepath.Join(dir, "none.yaml")}, "there is no such file"},
		{[]string{"check", dir}, "it is a folder"},
		{[]string{"draw", "-o", file, tern}, file},
		{[]string{"draw", "--scale", "1:1", "-o", dir, tern}, "does not fit on A4"},
		{[]string{"schema", "nothing"}, "nothing"},
		{[]string{"version", "now"}, "now"},
	} {
		r := flatwright(t, "", c.args...)
		assert.Equal(t, exitUsage, r.code, "%v", c.args)
		assert.Contains(t, r.err, c.want, "%v", c.args)
		assert.Empty(t, r.out, "%v", c.args)
	}
	assert.Equal(t, []string{"file"}, names(t, dir), "nothing is written")
}

func TestAnInterruptStopsBeforeAnythingIsWritten(t *testing.T) {
	ctx, stop := context.WithCancelCause(context.Background())
	stop(errors.New("interrupt"))
	dir := filepath.Join(t.TempDir(), "out")
	for _, command := range []string{"draw", "table"} {
		r := flatwrightIn(t, ctx, "", command, "-o", dir, tern)
		assert.Equal(t, exitUsage, r.code)
		assert.Contains(t, r.err, "interrupt")
		assert.NoDirExists(t, dir)
	}
}

func TestTableForms(t *testing.T) {
	r := flatwright(t, "", "table", tern)
	require.Equal(t, exitWell, r.code, r.err)
	assert.Contains(t, r.out, "Width at hem")
	assert.Regexp(t, `Width at hem\s+cm\s+47\.5\s+52\.5\s+57\.5`, r.out)

	r = flatwright(t, "", "table", "--format", "csv", "--units", "in", tern)
	require.Equal(t, exitWell, r.code, r.err)
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(r.out, "\ufeff"))).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, []string{"id", "piece", "measurement", "unit", "S", "M", "L"}, rows[0])
	assert.Contains(t, rows, []string{"back.width-at-hem", "Back", "Width at hem", "in", "18.75", "20.75", "22.75"})

	r = flatwright(t, "", "table", "--format", "markdown", "--size", "M", tern)
	require.Equal(t, exitWell, r.code, r.err)
	assert.Contains(t, r.out, "| Width at hem | cm | 52.5 |")

	dir := t.TempDir()
	r = flatwright(t, "", "table", "--format", "csv", "-o", dir, tern)
	require.Equal(t, exitWell, r.code, r.err)
	assert.Empty(t, r.out)
	assert.Equal(t, []string{"tern-slipover-measurements.csv"}, names(t, dir))
}

func compile(t *testing.T, schema string) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(schema))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("mem:schema", doc))
	s, err := c.Compile("mem:schema")
	require.NoError(t, err)
	return s
}

func TestFindingsAsJSONKeepToTheSchemaThatIsPrinted(t *testing.T) {
	schema := flatwright(t, "", "schema", "findings")
	require.Equal(t, exitWell, schema.code, schema.err)
	s := compile(t, schema.out)
	for _, text := range []string{contents(t, tern), changed(t, "length: 53.5", "length: 63.5"), "pattern: ["} {
		r := flatwright(t, text, "check", "--format", "json", "-")
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(r.out))
		require.NoError(t, err, r.out)
		assert.NoError(t, s.Validate(doc))
	}
}

func TestThePatternSchemaThatIsPrintedIsASchema(t *testing.T) {
	for _, args := range [][]string{{"schema"}, {"schema", "pattern"}} {
		r := flatwright(t, "", args...)
		require.Equal(t, exitWell, r.code, r.err)
		compile(t, r.out)
	}
}

func TestCheckOfSeveralFilesTellsAllOfThem(t *testing.T) {
	dir := t.TempDir()
	bad := filepath.Join(dir, "bad.yaml")
	require.NoError(t, os.WriteFile(bad, []byte(changed(t, "56.5)", "66.5)")), 0o644))
	r := flatwright(t, "", "check", "--format", "json", tern, bad, bad)
	assert.Equal(t, exitFindings, r.code)
	var report struct{ Findings []struct{ File string } }
	require.NoError(t, json.Unmarshal([]byte(r.out), &report))
	require.Len(t, report.Findings, 2)
	assert.Equal(t, bad, report.Findings[0].File)
}

// A text in which no rows were found is not called free of problems without a word.
func TestATextWithoutRowsIsSaidToHaveNone(t *testing.T) {
	file := filepath.Join(t.TempDir(), "letter.txt")
	require.NoError(t, os.WriteFile(file, []byte("Dear maker,\nthank you for the yarn.\n"), 0o644))
	assert.Contains(t, flatwright(t, "", "check", file).err, "found no rows to read")
}

func TestHelpShowsExamplesFirst(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"help"}, nil, {"draw", "--help"}, {"help", "table"}, {"check", "-h"}, {"schema", "--help"}, {"version", "--help"}, {"licences", "--help"}} {
		r := flatwright(t, "", args...)
		assert.Equal(t, exitWell, r.code, "%v", args)
		assert.True(t, strings.HasPrefix(r.out, "Examples:\n  flatwright "), "%v: %.40q", args, r.out)
		assert.Contains(t, r.out, "\nUse:\n", "%v", args)
		for _, line := range strings.Split(r.out, "\n") {
			assert.LessOrEqual(t, len(line), 100, "%v: %s", args, line)
		}
	}
}

func TestVersionTellsTheBuild(t *testing.T) {
	r := flatwright(t, "", "version")
	assert.Equal(t, exitWell, r.code)
	assert.Regexp(t, `^flatwright \S.* \(go`, r.out)
	for want, info := range map[string]*debug.BuildInfo{
		"flatwright unknown (":     nil,
		"flatwright development (": {Main: debug.Module{Version: "(devel)"}},
		"flatwright v1.2.3 (":      {Main: debug.Module{Version: "v1.2.3"}},
		"flatwright development, commit 0123456789ab with changes (": {Settings: []debug.BuildSetting{
			{Key: "vcs.revision", Value: "0123456789abcdef"}, {Key: "vcs.modified", Value: "true"}}},
	} {
		assert.True(t, strings.HasPrefix(version(info), want), "%s", version(info))
	}
}

func TestLicencesNameThisProgramAndTheFaces(t *testing.T) {
	r := flatwright(t, "", "licences")
	assert.Equal(t, exitWell, r.code)
	assert.Contains(t, r.out, "The Flatwright authors")
	assert.Contains(t, r.out, "SIL OPEN FONT LICENSE")
}

func TestNoColourIsRespected(t *testing.T) {
	f, err := os.Open(os.DevNull) // a character device, as a terminal is
	require.NoError(t, err)
	defer f.Close()
	env := func(set map[string]string) func(string) string { return func(k string) string { return set[k] } }
	assert.True(t, colourful(f, env(nil)))
	assert.False(t, colourful(f, env(map[string]string{"NO_COLOR": "1"})))
	assert.False(t, colourful(f, env(map[string]string{"TERM": "dumb"})))
	plain, err := os.Open(tern)
	require.NoError(t, err)
	defer plain.Close()
	assert.False(t, colourful(plain, env(nil)), "not into a file")
}

func TestColoursAreOnlyWhereTheyAreWanted(t *testing.T) {
	text := changed(t, "length: 53.5", "length: 63.5")
	for _, colour := range []bool{false, true} {
		var out, errs bytes.Buffer
		run(context.Background(), []string{"check", "-"}, environment{in: strings.NewReader(text), out: &out, err: &errs, outColour: colour})
		assert.Equal(t, colour, strings.Contains(out.String(), "\x1b["))
	}
}
