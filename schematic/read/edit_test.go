package read

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic/long"
)

func patterns(t testing.TB) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	for _, glob := range []string{"../../examples/*.yaml", "../../testdata/garments/*.yaml", "../../testdata/grade/*.yaml", "../../testdata/read/full.yaml"} {
		all, err := filepath.Glob(glob)
		require.NoError(t, err)
		for _, path := range all {
			b, err := os.ReadFile(path)
			require.NoError(t, err)
			out[filepath.Base(path)] = b
		}
	}
	require.Greater(t, len(out), 8)
	return out
}

func walkGroups(g *Group, f func(*Group)) {
	f(g)
	for i := range g.Groups {
		walkGroups(&g.Groups[i], f)
	}
}

func allFields(t testing.TB, src []byte) (fields []Field, groups []Group) {
	t.Helper()
	g, _, ok := Fields(src)
	require.True(t, ok)
	walkGroups(&g, func(g *Group) {
		groups = append(groups, *g)
		fields = append(fields, g.Fields...)
	})
	return fields, groups
}

// comments are what stands behind # in a file, in order.
func comments(src []byte) []string {
	var out []string
	for _, l := range strings.Split(string(src), "\n") {
		if _, c, ok := strings.Cut(" "+l, " #"); ok {
			out = append(out, c)
		}
	}
	return out
}

func TestEveryFieldOfEveryPatternCanBeSetAndNothingElseChanges(t *testing.T) {
	for name, src := range patterns(t) {
		fields, _ := allFields(t, src)
		require.NotEmpty(t, fields)
		for n, f := range fields {
			if !long.Some(n, 11) {
				continue
			}
			if f.Fixed || n%3 != 0 && name != "full.yaml" {
				continue
			}
			value := "7 changed: \"so\" # it is, 'really'"
			out, err := Edit(src, Change{Act: Set, Path: f.Path, Value: value, Cell: -1})
			if !assert.NoError(t, err, "%s %s", name, f.Path) {
				continue
			}
			again, _ := allFields(t, out)
			if f.Path != "sizes" {
				assert.Len(t, again, len(fields), "%s %s", name, f.Path)
				for i := range min(len(again), len(fields)) {
					if again[i].Path == f.Path {
						assert.Equal(t, value, again[i].Value)
					} else {
						assert.Equal(t, fields[i], again[i], "%s: setting %s", name, f.Path)
					}
				}
			}
			assert.Equal(t, bytes.Count(src, []byte("\n")), bytes.Count(out, []byte("\n")))
			back, err := Edit(out, Change{Act: Set, Path: f.Path, Value: f.Value, Cell: -1})
			require.NoError(t, err)
			assert.Equal(t, comments(src), comments(back), "%s %s", name, f.Path)
		}
	}
}

func TestACellChangesItsOwnBytesAlone(t *testing.T) {
	for name, src := range patterns(t) {
		fields, _ := allFields(t, src)
		for n, f := range fields {
			if !long.Some(n, 9) {
				continue
			}
			for i, c := range f.Cells {
				if i%3 != 0 {
					continue
				}
				out, err := Edit(src, Change{Act: Set, Path: f.Path, Value: "41", Cell: i})
				if !assert.NoError(t, err, "%s %s %d", name, f.Path, i) {
					continue
				}
				assert.Equal(t, len(src)+2-len(c.Text), len(out))
				back, err := Edit(out, Change{Act: Set, Path: f.Path, Value: c.Text, Cell: i})
				require.NoError(t, err)
				assert.Equal(t, string(src), string(back), "%s %s %d", name, f.Path, i)
			}
		}
	}
}

func TestLinesOfTheExamplesHaveACellASize(t *testing.T) {
	src := patterns(t)["saltmarsh-cardigan.yaml"]
	fields, _ := allFields(t, src)
	n := 0
	for _, f := range fields {
		if strings.Contains(f.Value, "(") && f.Sized && f.Path != "sizes" {
			require.Len(t, f.Cells, 9, f.Path)
			assert.Equal(t, "XS", f.Cells[0].Size)
			n++
		}
	}
	assert.Greater(t, n, 20)
}

func TestEveryKeyThatAGroupMayHaveCanBePutAndTakenOutAgain(t *testing.T) {
	for name, src := range patterns(t) {
		_, groups := allFields(t, src)
		for n, g := range groups {
			if !long.Some(n, 5) {
				continue
			}
			for i, k := range g.Can {
				if i != n%len(g.Can) {
					continue // one key a group, another in each
				}
				out, err := Edit(src, Change{Act: Put, Path: g.Path, Key: k.Name, Value: "8"})
				if !assert.NoError(t, err, "%s %s + %s", name, g.Path, k.Name) {
					continue
				}
				assert.Equal(t, comments(src), comments(out))
				back, err := Edit(out, Change{Act: Set, Path: under(g.Path, k.Name), Cell: -1})
				if err != nil { // a list goes with its only entry
					back, err = Edit(out, Change{Act: Take, Path: under(g.Path, k.Name) + "/0", Cell: -1})
				}
				assert.NoError(t, err, "%s %s + %s", name, g.Path, k.Name)
				assert.Equal(t, string(src), string(back), "%s %s + %s", name, g.Path, k.Name)
			}
		}
	}
}

func TestASectionOfEachKindCanBePutBehindEverySectionAndTakenOutAgain(t *testing.T) {
	for name, src := range patterns(t) {
		_, groups := allFields(t, src)
		done := 0
		for n, g := range groups {
			if !long.Some(n, 5) {
				continue
			}
			if !g.Entry || !strings.Contains(g.Path, "/sections/") || strings.Contains(g.Path[strings.LastIndex(g.Path, "sections/")+9:], "/") {
				continue
			}
			for _, k := range addable("section")[done%len(addable("section")):][:1] {
				done++
				out, err := Edit(src, Change{Act: Insert, Path: g.Path, Key: k.Name})
				if !assert.NoError(t, err, "%s %s + %s", name, g.Path, k.Name) {
					continue
				}
				at := strings.LastIndex(g.Path, "/")
				next := g.Path[:at+1] + plus1(g.Path[at+1:])
				sections := map[string]int{"shaped armhole": 3}[k.Name] // bound off, decreased and worked even
				back := out
				for range max(1, sections) {
					back, err = Edit(back, Change{Act: Take, Path: next})
					require.NoError(t, err, "%s %s", name, next)
				}
				want := string(src)
				if k.Name == "shaped neck" { // it takes the place of the bind-off at the end of its piece
					want = withoutBindOff(want, string(back))
				}
				assert.Equal(t, want, string(back), "%s %s + %s", name, g.Path, k.Name)
			}
		}
		require.Positive(t, done)
	}
}

// withoutBindOff is a text without the one bind-off, and the line of its edge, that another text does not have.
func withoutBindOff(text, other string) string {
	lines, rest := strings.Split(text, "\n"), strings.Split(other, "\n")
	i := 0
	for i < len(rest) && lines[i] == rest[i] {
		i++
	}
	gone := len(lines) - len(rest)
	if gone < 1 || gone > 2 || !strings.Contains(lines[i], "- bind off:") || gone == 2 && !strings.Contains(lines[i+1], " edge:") {
		return text
	}
	return strings.Join(slices.Delete(lines, i, i+gone), "\n")
}

func plus1(s string) string {
	n := 0
	for _, c := range s {
		n = n*10 + int(c-'0')
	}
	n++
	out := ""
	for ; n > 0; n /= 10 {
		out = string(rune('0'+n%10)) + out
	}
	return out
}

func TestTemplatesOfSectionsAreReadWithoutAnError(t *testing.T) {
	base := "version: 1\npattern: T\nterms: UK\nunits: cm\nsizes: S (M)\ngauges:\n  a: 20 sts and 20 rows over 10 cm in dc\npieces:\n  - piece: A\n    sections:\n      - cast on: 40\n"
	for _, k := range addable("section") {
		out, err := Edit([]byte(base), Change{Act: Insert, Path: "pieces/0/sections/0", Key: k.Name})
		require.NoError(t, err, k.Name)
		_, found := Pattern("t", out)
		assert.Empty(t, found, k.Name)
	}
}

func TestLineEndsStayAsTheyWere(t *testing.T) {
	src := patterns(t)["fellside-jumper.yaml"]
	for _, end := range []string{"\n", "\r\n", "\r"} {
		text := []byte("\ufeff" + strings.ReplaceAll(string(src), "\n", end))
		out, err := Edit(text, Change{Act: Set, Path: "pieces/0/sections/1/even", Value: "9 rows", Cell: -1})
		require.NoError(t, err)
		assert.Equal(t, strings.Replace(string(text), "even: 8 rows", "even: 9 rows", 1), string(out))
		out, err = Edit(text, Change{Act: Put, Path: "pieces/0/sections/1", Key: "width", Value: "hem"})
		require.NoError(t, err)
		assert.Equal(t, strings.Count(string(text), end)+1, strings.Count(string(out), end))
	}
}

func TestWhatCannotBeChangedIsSaid(t *testing.T) {
	src := patterns(t)["pebble-hat.yaml"]
	for _, c := range []struct {
		src  string
		do   Change
		want string
	}{
		{"a: [", Change{Path: "a", Value: "1", Cell: -1}, "fix its text"},
		{string(src), Change{Path: "pieces/9/piece", Value: "1", Cell: -1}, "not there any more"},
		{string(src), Change{Path: "pattern", Value: "a\nb", Cell: -1}, "one line"},
		{string(src), Change{Path: "pieces", Value: "a", Cell: -1}, "more than one value"},
		{string(src), Change{Path: "pieces/0/sections/0/cast on", Value: "1, 2", Cell: 0}, "not one number"},
		{string(src), Change{Path: "pieces/0/sections/0/cast on", Value: "57-42", Cell: 0}, "57-42 goes backwards: expected the smaller number first"},
		{string(src), Change{Path: "pieces/0/sections/0/cast on", Value: "x7", Cell: 0}, `"x7" is not a number`},
		{string(src), Change{Path: "pieces/0/sections/0/cast on", Value: "1", Cell: 7}, "not there any more"},
		{string(src), Change{Act: Put, Path: "pieces/0", Key: "piece", Value: "x"}, "there already"},
		{string(src), Change{Act: Take, Path: "pieces/0"}, "only one"},
		{string(src), Change{Act: Insert, Path: "pieces/0/sections/1", Key: "sideways"}, "can't be added"},
	} {
		_, err := Edit([]byte(c.src), c.do)
		assert.ErrorContains(t, err, c.want)
	}
}

// Whatever is put into whichever field, the file is as it was but for that field, or
// the change is refused.
func TestNoValueBreaksOutOfItsPlace(t *testing.T) {
	src := patterns(t)["full.yaml"]
	fields, _ := allFields(t, src)
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(fields).Draw(t, "field")
		value := rapid.StringOfN(rapid.RuneFrom([]rune(`ab1 ,:#"'{}[]()-*&!|>%@\–½`)), 1, 12, -1).Draw(t, "value")
		if f.Path == "sizes" {
			return
		}
		out, err := Edit(src, Change{Act: Set, Path: f.Path, Value: value, Cell: -1})
		if err != nil || strings.TrimSpace(value) == "" {
			return
		}
		again, _, ok := Fields(out)
		if !ok {
			t.Fatalf("the file can't be read any more")
		}
		i := 0
		walkGroups(&again, func(g *Group) {
			for _, h := range g.Fields {
				if h.Path == f.Path && h.Value != strings.TrimSpace(value) {
					t.Fatalf("%q became %q", value, h.Value)
				}
				i++
			}
		})
		if i != len(fields) {
			t.Fatalf("%d fields became %d", len(fields), i)
		}
	})
}

func BenchmarkFields(b *testing.B) {
	src := patterns(b)["saltmarsh-cardigan.yaml"]
	b.ReportAllocs()
	for b.Loop() {
		Fields(src)
	}
}

func BenchmarkEdit(b *testing.B) {
	src := patterns(b)["saltmarsh-cardigan.yaml"]
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Edit(src, Change{Path: "pieces/0/sections/2/even", Value: "31", Cell: 3}); err != nil {
			b.Fatal(err)
		}
	}
}
