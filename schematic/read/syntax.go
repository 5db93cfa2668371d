package read

import (
	"strconv"
	"strings"

	"flatwright/schematic/finding"
)

// reworded are YAML's own errors in a person's words, for those that the look
// through the lines has not explained.
var reworded = []struct{ yaml, message, fix string }{
	{"mapping values are not allowed", "a colon makes a key here, where no key can stand", "look at the indentation, or put quotes around a text that has a colon in it"},
	{"did not find expected key", "a key was expected here", "look at the indentation of this line and of the one above it"},
	{"did not find expected '-' indicator", "the next entry of a list was expected here", "begin it with a dash, below the dashes above"},
	{"could not find expected ':'", "a key has no colon here", "put a colon and a space after the key"},
	{"found unexpected end of stream", "the file ends inside quotes or brackets", "close the quote or the bracket"},
	{"did not find expected ',' or ']'", "a list in brackets is not closed", "add ] at its end"},
	{"did not find expected ',' or '}'", "a group in braces is not closed", "add } at its end"},
	{"cannot start any token", "a text can't begin with this character", "put quotes around the text"},
	{"unknown anchor", "a text that begins with * needs quotes", "put it in double quotes"},
	{"block sequence entries are not allowed", "a list can't begin in this place", "begin it on the next line, or write – where a size has none"},
	{"unknown escape character", "a backslash between double quotes begins a special character", `write \\ for a backslash`},
	{"exceeded max depth", "things are nested too deeply", ""},
}

// reword tells an error of YAML's, with a guess of its place.
func (r *reader) reword(err error) finding.Finding {
	text := strings.TrimPrefix(err.Error(), "yaml: ")
	line := 1
	if rest, ok := strings.CutPrefix(text, "line "); ok {
		if n, after, ok := strings.Cut(rest, ": "); ok {
			if k, err := strconv.Atoi(n); err == nil {
				line, text = k, after
			}
		}
	}
	line = max(1, min(line, len(r.lines)))
	for line < len(r.lines) && strings.TrimSpace(string(r.lines[line-1])) == "" {
		line++
	}
	t := []rune(strings.TrimRight(string(r.lines[line-1]), " "))
	p := min(skip(t, 0), max(len(t)-1, 0))
	f := finding.Finding{Kind: "file/syntax", Severity: finding.Error, Message: "the file can't be read here: " + text,
		Pos: finding.Pos{File: r.file, Line: line, Col: p + 1, EndCol: max(len(t)+1, p+2)}, Fix: "look at this line and the one above it"}
	for _, w := range reworded {
		if strings.Contains(text, w.yaml) {
			f.Message = w.message
			if w.fix != "" {
				f.Fix = w.fix
			}
			break
		}
	}
	return f
}
