package job

import (
	"bytes"
	"context"
	"path/filepath"
	"strings"
	"unicode/utf8"
)

// IsPattern tells a pattern file from a text of rows: by the ending of its name, or by one of
// the keys that every pattern has.
func IsPattern(src Source) bool {
	switch strings.ToLower(filepath.Ext(src.Name)) {
	case ".yaml", ".yml":
		return true
	case ".txt":
		return false
	}
	if len(bytes.TrimSpace(src.Text)) == 0 || !utf8.Valid(src.Text) {
		return true // the reader of patterns says what is amiss
	}
	for line := range strings.Lines(string(src.Text)) {
		switch key, _, _ := strings.Cut(line, ":"); key {
		case "version", "pattern", "gauges", "pieces":
			return true
		}
	}
	return false
}

// ReadRows is a text of rows as a page shows it while a person types: what does not fit, and how
// each line was read.
type ReadRows struct {
	RowsResult
	Terms string // US or UK: as the text says, or shows
	Lines []ReadLine
}

// ReadLine is one line of instructions as it was read.
type ReadLine struct {
	Line     int // from 1
	Section  string
	Unread   []string // the words that were not read
	Stitches []int    // after it, one a size; -1 where not known
}

// ReadingOf reads a text of rows, alone or, with src, against a pattern. Its error is that of CheckRows.
func ReadingOf(ctx context.Context, src *Source, text Source) (ReadRows, error) {
	r, err := CheckRows(ctx, src, &text)
	out := ReadRows{RowsResult: r}
	if err != nil || r.text == nil {
		return out, err
	}
	lines := strings.Split(string(text.Text), "\n")
	out.Terms, out.Sizes = r.text.Terms.String(), r.rep.Sizes
	for _, s := range r.text.Sections {
		if s.Prose {
			continue
		}
		for _, l := range s.Lines {
			one := ReadLine{Line: l.At.Line, Section: s.Name, Stitches: r.rep.Stitches[l]}
			for _, u := range l.Unread {
				words := []rune(strings.TrimPrefix(lines[u.Line-1], "\ufeff"))
				one.Unread = append(one.Unread, string(words[u.Col-1:min(u.End-1, len(words))]))
			}
			out.Lines = append(out.Lines, one)
		}
	}
	return out, nil
}
