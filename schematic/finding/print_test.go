package finding

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/owenrumney/go-sarif/v3/pkg/report/v210/sarif"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func printed(t testing.TB, p Printer, f Finding, src string) string {
	var b bytes.Buffer
	require.NoError(t, p.Print(&b, List{f}, map[string][]byte{"a.yaml": []byte(src)}))
	return b.String()
}

func at(line, col, end int) Finding {
	return Finding{Kind: "file/number", Message: "this is wrong", Pos: Pos{"a.yaml", line, col, end}}
}

func TestCaretsStandUnderTheWords(t *testing.T) {
	for _, c := range []struct{ name, line, words, carets string }{
		{"plain", "even: x", "x", " 1 | even: x\n   |       ^\n"},
		{"accents are one column", "é: xy", "xy", " 1 | é: xy\n   |    ^^\n"},
		{"accents of two characters too", "e\u0301: xy", "xy", " 1 | e\u0301: xy\n   |    ^^\n"},
		{"wide characters are two columns", "編み: xy", "xy", " 1 | 編み: xy\n   |       ^^\n"},
		{"wide words have wide carets", "a: 編み", "編み", " 1 | a: 編み\n   |    ^^^^\n"},
		{"tabs go to the next fourth column", "a:\txy", "xy", " 1 | a:  xy\n   |     ^^\n"},
		{"controls do nothing to the terminal", "a: \x1b[2Jx", "x", " 1 | a: ·[2Jx\n   |        ^\n"},
		{"marks that turn text are shown", "a: \u202ex", "x", " 1 | a: ·x\n   |     ^\n"},
	} {
		i := strings.LastIndex(c.line, c.words)
		from := len([]rune(c.line[:i])) + 1
		out := printed(t, Printer{}, at(1, from, from+len([]rune(c.words))), c.line+"\n")
		assert.Contains(t, out, c.carets, c.name)
	}
}

func TestLongLinesShowAWindowRoundTheWords(t *testing.T) {
	line := strings.Repeat("a", 300) + "WORDS" + strings.Repeat("b", 300)
	out := strings.Split(printed(t, Printer{Width: 60}, at(1, 301, 306), line), "\n")
	assert.LessOrEqual(t, len([]rune(out[1])), 60+len(" 1 | ")+1)
	assert.True(t, strings.Contains(out[1], "…a") && strings.Contains(out[1], "b…"))
	i := strings.Index(out[1], "WORDS")
	require.Positive(t, i)
	assert.Equal(t, strings.Index(out[2], "^"), len([]rune(out[1][:i])), "the caret stands under the words")
	assert.Equal(t, 5, strings.Count(out[2], "^"))
}

func TestColourOnlyWhenAsked(t *testing.T) {
	assert.NotContains(t, printed(t, Printer{}, at(1, 1, 2), "x"), "\x1b")
	assert.Contains(t, printed(t, Printer{Colour: true}, at(1, 1, 2), "x"), "\x1b[1;31merror:")
}

func TestAPlaceOutsideTheFileIsToldWithoutItsLine(t *testing.T) {
	assert.Equal(t, "a.yaml:9:1: error: this is wrong [file/number]\n", printed(t, Printer{}, at(9, 1, 2), "x"))
	assert.Equal(t, "error: this is wrong [file/number]\n", printed(t, Printer{}, Finding{Kind: "file/number", Message: "this is wrong"}, ""))
}

func TestLinesAreCountedAlikeForEveryLineEnd(t *testing.T) {
	for _, end := range []string{"\n", "\r\n", "\r"} {
		assert.Equal(t, []string{"a", "", "b"}, Lines([]byte("\uFEFFa"+end+end+"b"+end)), "%q", end)
	}
}

// Whatever the line and the place, what is printed has no control characters, and
// the carets are inside the window.
func TestPrintingIsSafeForAnyLine(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		line := strings.NewReplacer("\n", "", "\r", "").Replace(rapid.String().Draw(rt, "line"))
		f := at(1, rapid.IntRange(-1, 200).Draw(rt, "from"), rapid.IntRange(-1, 200).Draw(rt, "to"))
		var b bytes.Buffer
		require.NoError(rt, Printer{Width: 40}.Print(&b, List{f}, map[string][]byte{"a.yaml": []byte(line)}))
		for _, r := range b.String() {
			require.False(rt, r != '\n' && hidden(r), "%q", r)
		}
	})
}

func TestJSONKeepsToItsSchema(t *testing.T) {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("finding.schema.json", doc))
	s, err := c.Compile("finding.schema.json")
	require.NoError(t, err)
	for _, list := range []List{nil, {at(1, 2, 3)}, {
		{Kind: "words/brackets", Severity: Warning, Message: "<a> & b", Piece: "Back", Section: "even", Sizes: []string{"S"}, Have: "1", Want: "2", Fix: "3"},
		{Kind: "file/size", Severity: Note, Message: "m", Row: "Row 2"}, {Kind: notRead, Severity: Note, Message: "not read: m"},
	}} {
		var b bytes.Buffer
		require.NoError(t, JSON(&b, list))
		v, err := jsonschema.UnmarshalJSON(&b)
		require.NoError(t, err)
		require.NoError(t, s.Validate(v))
	}
	for _, k := range Kinds {
		assert.Regexp(t, "^[a-z]+/[a-z-]+$", k.Kind)
	}
	assert.Error(t, s.Validate(map[string]any{"version": 1}))
}

func TestTheSizesConcernedAreNamed(t *testing.T) {
	f := at(1, 1, 2)
	f.Have = "3"
	assert.NotContains(t, printed(t, Printer{}, f, "x\n"), "size", "all of them")
	f.Sizes = []string{"M"}
	assert.Contains(t, printed(t, Printer{}, f, "x\n"), "\n    size: M\n    found: 3\n")
	f.Sizes = []string{"M", "2X"}
	assert.Contains(t, printed(t, Printer{}, f, "x\n"), "\n    sizes: M, 2X\n")
}

// Words that were not read are no findings: they follow apart, and are in none of the counts.
func TestWhatWasNotReadIsToldApart(t *testing.T) {
	unread := Finding{Kind: notRead, Severity: Note, Message: "not read: frogle", Pos: Pos{"a.yaml", 1, 1, 2}, Section: "Back", Row: "Row 3"}
	list := List{unread, at(2, 1, 2)}
	found, apart := list.Apart()
	assert.Equal(t, List{list[1]}, found)
	assert.Equal(t, List{unread}, apart)

	var b bytes.Buffer
	require.NoError(t, Printer{}.Print(&b, list, map[string][]byte{"a.yaml": []byte("x\ny\n")}))
	assert.Equal(t, "a.yaml:2:1: error: this is wrong [file/number]\n 2 | y\n   | ^\n\nNot read, and not checked:\n"+
		"a.yaml:1:1: not read: frogle\n 1 | x\n   | ^\n    in: Back, Row 3\n", b.String())

	b.Reset()
	require.NoError(t, JSON(&b, list))
	var v struct {
		Errors, Notes    int
		Findings, Unread []struct{ Message, Row string }
	}
	require.NoError(t, json.Unmarshal(b.Bytes(), &v))
	assert.Equal(t, 1, v.Errors)
	assert.Zero(t, v.Notes)
	require.Len(t, v.Findings, 1)
	require.Len(t, v.Unread, 1)
	assert.Equal(t, "Row 3", v.Unread[0].Row)

	b.Reset()
	require.NoError(t, SARIF(&b, list, ""))
	log, err := sarif.FromBytes(b.Bytes())
	require.NoError(t, err)
	require.NoError(t, log.Validate())
	require.Len(t, log.Runs[0].Results, 1)
	require.Len(t, log.Runs[0].Invocations, 1)
	require.Len(t, log.Runs[0].Invocations[0].ToolExecutionNotifications, 1)
	assert.Equal(t, "not read: frogle", *log.Runs[0].Invocations[0].ToolExecutionNotifications[0].Message.Text)
	assert.Equal(t, "a.yaml:1:1: note: not read: frogle (Back, Row 3)", unread.String())
}
