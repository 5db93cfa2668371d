package finding

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A text as long as it may be is whole; one letter more, and its last letter is the sign that it goes on. Letters
// are counted, not bytes.
func TestATextIsClippedAtItsLastLetter(t *testing.T) {
	assert.Equal(t, "abcd", ClipTo("abcd", 4))
	assert.Equal(t, "abc…", ClipTo("abcde", 4))
	assert.Equal(t, "éééé", ClipTo("éééé", 4), "eight bytes, four letters")
	assert.Equal(t, strings.Repeat("x", 59)+"…", Clip(strings.Repeat("x", 61)))
}

func TestSpacesAreOneBetweenWordsAndNoneAround(t *testing.T) {
	for in, want := range map[string]string{"": "", "a b": "a b", " a": "a", "a ": "a", "a  b": "a b", "a\nb": "a b", "a\u00a0b": "a b"} {
		assert.Equal(t, want, Spaced(in), "%q", in)
	}
	assert.Equal(t, "front neck depth", PlainName("Front-neck_Depth"))
}

// A third of the letters may be others, one in a word of one to five; another word is none. The nearest is meant, and of two as
// near the first.
func TestHowNearANameMustBe(t *testing.T) {
	for _, c := range []struct {
		word  string
		names []string
		want  string
	}{
		{"neck", []string{"nock"}, "nock"},
		{"neck", []string{"nook"}, ""},                    // two of four
		{"sleeve", []string{"slaeve", "sleev"}, "slaeve"}, // both one off: the first
		{"sleeve", []string{"sloove"}, "sloove"},          // two of six
		{"sleeve", []string{"slooze"}, ""},                // three of six
		{"a", []string{"b"}, ""},                          // one letter is all there is of it
		{"a", []string{"b", "A"}, "A"},
		{"5", []string{"2", "51"}, ""}, // no number is near to another
		{"36", []string{"34", "38"}, ""},
		{"ab", []string{"ba"}, "ba"},            // swapped is one
		{"gauge", []string{"gauges"}, "gauges"}, // a plural is near
		{"under arm", []string{"underarm"}, "underarm"},
		{"hem", []string{"heming"}, ""}, // three letters more
		{"heming", []string{"hem"}, ""}, // and three fewer
		{strings.Repeat("x", 101), []string{strings.Repeat("x", 101)}, ""},
	} {
		assert.Equal(t, c.want, Nearest(c.word, c.names), "%s among %v", c.word, c.names)
	}
	many := make([]string, 301)
	for i := range many {
		many[i] = "zzzzzzzzzz"
	}
	many[300] = "sleeve"
	assert.Empty(t, Nearest("sleeve", many), "no more than 300 names are looked at")
	many[299] = "sleeve"
	assert.Equal(t, "sleeve", Nearest("sleeve", many))
}

// By hand: a word of 41 letters and an empty one are too far apart to be worth the table; one of 40 is 40 away.
func TestDistancesOfUnlikeLengths(t *testing.T) {
	assert.Equal(t, 40, Distance("", strings.Repeat("x", 40)))
	assert.Equal(t, 1000, Distance("", strings.Repeat("x", 41)))
	assert.Equal(t, 1, Distance("abcd", "abdc"))
	assert.Equal(t, 0, Distance("é", "é"))
}

func TestAFindingInOneLine(t *testing.T) {
	f := Finding{Severity: Warning, Message: "m"}
	assert.Equal(t, "warning: m", f.String())
	f.Pos.File = "a.txt"
	assert.Equal(t, "a.txt: warning: m", f.String())
	f.Pos.Line = 1
	assert.Equal(t, "a.txt:1: warning: m", f.String())
	f.Pos.Col = 1
	assert.Equal(t, "a.txt:1:1: warning: m", f.String())
	f.Row = "row 3"
	assert.Equal(t, "a.txt:1:1: warning: m (row 3)", f.String())
	f.Section, f.Sizes = "Back", []string{"S", "M"}
	assert.Equal(t, "a.txt:1:1: warning: m (Back, row 3; S, M)", f.String())
	f.Row = ""
	assert.Equal(t, "a.txt:1:1: warning: m (S, M)", f.String(), "a heading alone tells no row")
}

// What was not read stands under its own heading, behind a line left empty if there is something before it.
func TestTheHeadingOfWhatWasNotRead(t *testing.T) {
	show := func(list ...Finding) string {
		var b strings.Builder
		require.NoError(t, Printer{}.Print(&b, list, nil))
		return b.String()
	}
	found, unread := Finding{Kind: "rows/count", Severity: Error, Message: "f"}, Finding{Kind: "rows/not-read", Message: "u"}
	assert.Equal(t, "error: f [rows/count]\n", show(found))
	assert.Equal(t, "Not read, and not checked:\nu\n", show(unread))
	assert.Equal(t, "error: f [rows/count]\n\nNot read, and not checked:\nu\n", show(unread, found))
}

// A line as wide as the paper is shown whole. Of a longer one, a third of the room stands before the words, and
// the end of the line is shown where the words are near it.
func TestTheWindowOfALongLine(t *testing.T) {
	show := func(width, words int, line string) string {
		var b strings.Builder
		f := Finding{Kind: "k", Message: "m", Pos: Pos{File: "f", Line: 1, Col: words, EndCol: words + 1}}
		require.NoError(t, Printer{Width: width}.Print(&b, List{f}, map[string][]byte{"f": []byte(line)}))
		lines := strings.Split(b.String(), "\n")
		require.Greater(t, len(lines), 2)
		return strings.TrimPrefix(lines[1], " 1 | ")
	}
	digits := strings.Repeat("0123456789", 4)
	assert.Equal(t, digits[:20], show(20, 3, digits[:20]))
	assert.Equal(t, digits[:18]+"…", show(20, 3, digits[:21]), "18 and the signs at both ends are 20")
	assert.Equal(t, "…"+digits[14:32]+"…", show(20, 21, digits), "the 21st letter, six of eighteen before it")
	assert.Equal(t, "…"+digits[22:], show(20, 40, digits))
	assert.Equal(t, digits, show(0, 3, digits), "100 wide if nothing is said")
}

// The parts of a result that depend on what a finding knows.
func TestWhereAResultIs(t *testing.T) {
	write := func(f Finding) map[string]any {
		var b strings.Builder
		require.NoError(t, SARIF(&b, List{f}, "1"))
		var log struct {
			Runs []struct{ Results []map[string]any }
		}
		require.NoError(t, json.Unmarshal([]byte(b.String()), &log))
		require.Len(t, log.Runs[0].Results, 1)
		return log.Runs[0].Results[0]
	}
	as := func(v any) string { b, _ := json.Marshal(v); return string(b) }
	none := write(Finding{Kind: "rows/count", Message: "m"})
	assert.NotContains(t, none, "locations")
	assert.NotContains(t, none, "properties")
	assert.Equal(t, `[{"logicalLocations":[{"name":"Back"}]}]`, as(write(Finding{Message: "m", Piece: "Back"})["locations"]))
	file := write(Finding{Message: "m", Pos: Pos{File: "a b.yaml"}, Sizes: []string{"S"}})
	assert.Equal(t, `[{"physicalLocation":{"artifactLocation":{"uri":"a%20b.yaml"}}}]`, as(file["locations"]))
	assert.Equal(t, `{"sizes":["S"]}`, as(file["properties"]))
	assert.Contains(t, as(write(Finding{Message: "m", Pos: Pos{File: "f", Line: 2}})["locations"]), `"region":{"startLine":2}`)
	assert.Contains(t, as(write(Finding{Message: "m", Pos: Pos{File: "f", Line: 2, Col: 1, EndCol: 1}})["locations"]), `"region":{"startColumn":1,"startLine":2}`)
	assert.Contains(t, as(write(Finding{Message: "m", Pos: Pos{File: "f", Line: 2, Col: 1, EndCol: 2}})["locations"]), `"region":{"endColumn":2,"startColumn":1,"startLine":2}`)
}

// RFC 8089: a path from the root, or from a drive, is a file reference; others stay relative.
func TestPathsAsReferences(t *testing.T) {
	for in, want := range map[string]string{"a.yaml": "a.yaml", "/a/b": "file:///a/b", "c:/a": "file:///c:/a", "c:a": "./c:a", "c:": "./c:", "ab/c": "ab/c"} {
		assert.Equal(t, want, fileURI(in), in)
	}
}

func TestTheRuleOfAKindSaysWhatItIs(t *testing.T) {
	require.NotEmpty(t, Kinds)
	last := Kinds[len(Kinds)-1]
	assert.Equal(t, last.What, about(last.Kind))
	assert.NotEqual(t, Kinds[0].What, about(last.Kind))
	assert.Equal(t, "no/kind", about("no/kind"))
}

func TestACapitalIsOfALetterAndNotOfAByte(t *testing.T) {
	for in, want := range map[string]string{"": "", "a": "A", "élan": "Élan", "ñ": "Ñ", "3 rows": "3 rows", "Back": "Back", "\xffa": "\xffa"} {
		assert.Equal(t, want, Capital(in), "%q", in)
	}
}
