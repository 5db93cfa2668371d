package read

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"gopkg.in/yaml.v3"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// Texts that YAML refuses, with what is told of each: line, columns and words, counted by hand, and what they were made into.
func TestWhatIsWrongWithAText(t *testing.T) {
	for _, c := range []struct {
		text  string
		told  string // line:from-to message, the fatal one behind !
		made  string // of its lines, if anything was changed
		spoil string // the lines whose values are not what was meant
	}{
		{"even:10 rows", "1:1-6 the colon needs a space after it", "even: 10 rows", ""},
		{"  even:10 rows", "1:3-8 the colon needs a space after it", "  even: 10 rows", ""},
		{"- bind off:all", "1:3-12 the colon needs a space after it", "- bind off: all", ""},
		{"nothing:10", "!1:1-11 this line has no key and is not part of the text above it", "", ""},
		{"even:", "", "", ""},
		{"a: - # none", "", "a: – # none", ""},
		{"a: -", "", "a: –", ""},
		{"a: -5", "", "", ""},
		{"\ta: 5", "1:1-2 a tab indents this line", "", ""},
		{"a:\n  \t b: 5", "2:3-5 a tab indents this line", "", ""},
		{"a: *sc in next", "1:4-5 a text that begins with * needs quotes", "a: ·sc in next", "1"},
		{"a: ? x", "1:4-5 a text that begins with ? needs quotes", "a: · x", "1"},
		{"a: ?x", "", "", ""},
		{"a: |x", "1:4-5 a text that begins with | needs quotes", "a: ·x", "1"},
		{"a: |\n  b: c: d\n  *\ne: 5", "", "", ""},
		{"a: >- # folded\n  b: c: d", "", "", ""},
		{"a: |2\n  b: c: d", "", "", ""},
		{"a: b c: d", "1:6-8 a colon and a space make a key, and this line already has one", "a: b c· d", "1"},
		{"a: b c: d e: f", "1:6-8 a colon and a space make a key, and this line already has one", "a: b c· d e· f", "1"},
		{"a: b #c: d", "", "", ""},
		{`a: "b" c`, "1:8-9 the quotes end here and the text goes on", `a: "b" `, "1"},
		{`a: "b" # c`, "", "", ""},
		{`a: 'it''s' # c`, "", "", ""},
		{`a: "\q"`, "1:5-7 a backslash between double quotes begins a special character", `a: "/q"`, "1"},
		{`a: "\\ \" \n"`, "", "", ""},
		{`a: '\q'`, "", "", ""},
		{"a: \"b\nc: 5", "!1:4-5 this quote is never closed", "", ""},
		{"a: \"b\n  c\"", "", "", ""},
		{"a: [1, 2", "!1:4-5 this bracket is never closed", "", ""},
		{"a: [1, 2\n  , 3] b", "2:8-9 the bracket is closed here and the text goes on", "a: [1, 2\n  , 3] ", "2"},
		{"a: [1, {b: 2]", "!1:13-14 ] closes a bracket that was opened with another one", "", ""},
		{"a: [*b, c]", "1:5-6 a text that begins with * needs quotes", "a: [·b, c]", "1"},
		{"a: {b: \"x]\", c: 'y'}", "", "", ""},
		{"a: [b # ]\n  ]", "", "", ""},
		{"a: [b[1], c]", "1:9-13 the bracket is closed here and the text goes on", "a: [b[1]", "1"},
		{"a:\n  b: 1\n c: 2", "!3:2-6 this line is indented by 1 space, and no line above it has that indent", "", ""},
		{"a: 1\n  b: 2", "!2:3-7 this line is indented further than the one above it, which has its value already", "", ""},
		{"a:\n  - b: 1\n  c: 2", "!3:3-7 a key where the next entry of a list is needed", "", ""},
		{"a: 1\n- b", "!2:1-2 a list entry where a key is needed", "", ""},
		{"a:\n- b\n- c\nd: 5", "", "", ""},
		{"a: b\n  c d", "", "", ""},
		{"a: b\nc d", "!2:1-4 this line has no key and is not part of the text above it", "", ""},
		{"# c: d: e\n\n---\na: 1", "", "", ""},
		{"- - a: 1\n    b: 2\n  - c", "", "", ""},
	} {
		s := scan("t", c.text)
		var told []string
		for _, f := range s.findings {
			told = append(told, fmt.Sprintf("%d:%d-%d %s", f.Pos.Line, f.Pos.Col, f.Pos.EndCol, f.Message))
		}
		if f := s.fatal; f != nil {
			told = append(told, fmt.Sprintf("!%d:%d-%d %s", f.Pos.Line, f.Pos.Col, f.Pos.EndCol, f.Message))
		}
		assert.Equal(t, c.told, strings.Join(told, "; "), "%q", c.text)
		made := c.made
		if made == "" {
			made = c.text
		}
		assert.Equal(t, made, s.text, "%q", c.text)
		var spoilt []string
		for n := 1; n < 9; n++ {
			if s.spoiled[n] {
				spoilt = append(spoilt, fmt.Sprint(n))
			}
		}
		assert.Equal(t, c.spoil, strings.Join(spoilt, ","), "%q", c.text)
	}
	// What stands behind a column that was put in is told where it stands in the file; the fix names a key that several words make.
	s := scan("t", "even:*x")
	assert.Equal(t, map[int]int{1: 5}, s.shift)
	assert.Equal(t, 6, s.findings[1].Pos.Col)
	assert.Contains(t, scan("t", "a: 5 bind off: 3").findings[0].Fix, `put "bind off:" on a line of its own`)
	assert.Equal(t, `put the text in double quotes: "b c: d"`, scan("t", "a: b c: d").findings[0].Fix)
}

func TestPlacesInALine(t *testing.T) {
	at := func(f func([]rune, int) int, s string, from int) int { return f([]rune(s), from) }
	assert.Equal(t, []int{2, 0, 3, 3}, []int{at(skip, "  a", 0), at(skip, "a", 0), at(skip, "   ", 1), at(skip, " \t a", 0)})
	assert.Equal(t, []int{1, -1, 3, -1, 1, -1}, []int{at(colonAt, "a: b", 0), at(colonAt, "a:b", 0), at(colonAt, "a:b: c", 0), at(colonAt, "a #b: c", 0), at(colonAt, "a:", 0), at(colonAt, "a: b", 2)})
	assert.Equal(t, []int{3, -1, -1, 5, 4}, []int{at(keyEnd, `"a": b`, 0), at(keyEnd, `"a" b`, 0), at(keyEnd, "[a: b", 0), at(keyEnd, `'it': b`, 1) + 1, at(keyEnd, `"a" : b`, 0)})
	assert.Equal(t, []int{3, 6, 6, 2}, []int{at(quoteEnd, `"a" b`, 0), at(quoteEnd, `'a''b' c`, 0), at(quoteEnd, `"a\"b" c`, 0) - 0, at(quoteEnd, `"a`, 0)})
	for s, want := range map[string]bool{"": true, "# a": true, "a": false} {
		assert.Equal(t, want, ended([]rune(s), 0), s)
	}
	assert.Equal(t, []bool{true, false}, []bool{ended([]rune("a #b"), 2), ended([]rune("a#b"), 1)})
	assert.Equal(t, []bool{true, true, true, false, false}, []bool{separates([]rune("a,b"), 1), separates([]rune("a: b"), 1), separates([]rune("a:"), 1), separates([]rune("a:b"), 1), separates([]rune("ab"), 1)})
	assert.Equal(t, []word{{"a", expr.Span{Start: 1, End: 2}}, {",", expr.Span{Start: 2, End: 3}}, {"bé", expr.Span{Start: 4, End: 6}}}, wordsOf(" A, Bé "))
}

// readerOf is a reader of a text of so many sizes, and the value of its one key.
func readerOf(t *testing.T, sizes, text string) (*reader, *yaml.Node) {
	t.Helper()
	var doc yaml.Node
	assert.NoError(t, yaml.Unmarshal([]byte(text), &doc))
	r := &reader{file: "t"}
	for l := range strings.SplitSeq(text, "\n") {
		r.lines = append(r.lines, []rune(l))
	}
	r.sizes, _ = expr.ParseSizes(sizes)
	return r, doc.Content[0].Content[1]
}

// A repeat is 4, or 4 and so many more or fewer, and no larger than 1,000.
func TestARepeatOfStitches(t *testing.T) {
	for text, want := range map[string]string{"4": "4 0 true", "4 + 1": "4 1 true", "6 plus 2 sts": "6 2 true", "of 4 - 1": "4 -1 true", "8 – 3": "8 -3 true", "8 minus 3": "8 -3 true", "1": "1 0 true", "1000 + 1000": "1000 1000 true",
		"0": "0 0 false", "1001": "0 0 false", "4 + 1001": "0 0 false", "4.5": "0 0 false", "4 + 0.5": "0 0 false", "x": "0 0 false", "4 + x": "0 0 false"} {
		r, n := readerOf(t, "S", "multiple: "+text)
		of, plus, ok := r.multiple(n)
		assert.Equal(t, want, fmt.Sprint(of, plus, ok), text)
		assert.Equal(t, ok, len(r.findings) == 0, text)
	}
}

// A point is 1/72 in: 9 pt are 3.175 mm, to a hundredth 3.18 (2 x 25.4 = 50.8).
func TestLengthsOnPaper(t *testing.T) {
	for text, want := range map[string]float64{"160 mm": 160, "16cm": 160, "2 in": 50.8, "9 pt": 3.18, "12.345 mm": 12.35, "1 mm": 1, "200 mm": 200, "0.9 mm": 0, "201 mm": 0, "16": 0, "-3 mm": 0} {
		var doc yaml.Node
		assert.NoError(t, yaml.Unmarshal([]byte("width: "+text), &doc))
		r := &reader{file: "t", lines: [][]rune{[]rune("width: " + text)}}
		m := r.mapping(doc.Content[0], drawingKeys)
		assert.InDelta(t, want, r.paperLength(m, "width", 1, 200), 1e-9, text)
		assert.Equal(t, want == 0, len(r.findings) > 0, text)
	}
}

// Gauges and steps in the words of the trade; 4 in are 101.6 mm.
func TestPhrasesWordByWord(t *testing.T) {
	for text, want := range map[string]string{
		"14 sts and 10 rows over 10 cm in hdc":                  "14 10 100 hdc false false",
		"17 sts x 16 rnds over 4 in / 10 cm in sc, stretched":   "17 16 100 sc true true",
		"14½ sts, 20 1/2 rows to 4\" in hdc, blo, relaxed":      "14.5 20.5 101.6 hdc, blo false false",
		"1 1/4 sts by 1 row per 1cm":                            "1.25 1 10  false false",
		"14 rows and 10 sts over 10 cm":                         "!4-8 \"rows\" is not understood here",
		"14 sts and 10 rows over 10 cm in":                      "!31-33 something is missing after this",
		"14 sts and 10 rows over 10 cm / 4 cm":                  "!35-37 \"cm\" is not understood here",
		"14 sts and 10 rows over 10 cm in hdc, pulled":          "14 10 100 hdc, pulled false false",
		"14 sts and 10 rows over 10 cm in hdc, blocked, pulled": "!48-54 \"pulled\" is not understood here",
		"14 sts": "!4-7 something is missing after this",
	} {
		r, n := readerOf(t, "S", "g: "+text)
		r.unit = units.CM
		g, ok := r.gauge("g", n)
		got := fmt.Sprint(g.Stitches, " ", g.Rows, " ", g.Over, " ", g.Stitch, " ", g.Rounds, " ", g.Stretched)
		if !ok && assert.Len(t, r.findings, 1, text) {
			f := r.findings[0]
			got = fmt.Sprintf("!%d-%d %s", f.Pos.Col-3, f.Pos.EndCol-3, f.Message)
		}
		assert.Equal(t, want, got, text)
	}
	for text, want := range map[string]string{"0.5 cm and 1/4 in": "0.5 0.25", "1/2 in": "0.5 0.5", "10 cm": "10 0.25", "1 cm, 1/8 in": "1 0.125"} {
		r, n := readerOf(t, "S", "g: "+text)
		s := r.rounding(n)
		assert.Equal(t, want, fmt.Sprint(s.CM, " ", s.Inch), text)
		assert.Empty(t, r.findings, text)
	}
	for _, text := range []string{"11 cm", "0 cm", "5 mm"} {
		r, n := readerOf(t, "S", "g: "+text)
		r.rounding(n)
		assert.Len(t, r.findings, 1, text)
	}
}
