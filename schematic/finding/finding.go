// Package finding says what is wrong with a pattern and where: the one form in
// which the reader's errors and the checks' results are told, printed and
// exported. It knows nothing of how they are found.
package finding

import (
	"cmp"
	"slices"
	"strings"
)

// Pos is a place in a file. Lines and columns count from 1, columns in
// characters (not bytes); EndCol is the column after the last character of the
// words meant. A Line of 0 means no place.
type Pos struct {
	File   string
	Line   int
	Col    int
	EndCol int
}

// Severity orders findings by weight.
type Severity int

// The severities. An Error makes the pattern unreadable or its numbers
// impossible; a Warning is a number that does not fit; a Note is worth a look.
const (
	Error Severity = iota
	Warning
	Note
)

// String is error, warning or note.
func (s Severity) String() string { return [...]string{"error", "warning", "note"}[s] }

// Finding is one thing that does not fit. Kind is a stable name, family and
// thing, such as "arithmetic/division" (see Kinds). Message says what is wrong
// in a sentence; Have and Want are the two numbers with how they came about;
// Fix is what would make them agree. Sizes names the sizes concerned (empty:
// all); Row is the written row concerned, such as 'row 2'. Finding never changes the pattern.
type Finding struct {
	Kind     string
	Severity Severity
	Pos      Pos
	Piece    string
	Section  string
	Row      string
	Sizes    []string
	Message  string
	Have     string
	Want     string
	Fix      string
}

// List is findings in the order in which they are told.
type List []Finding

// Sort orders findings by file, line, column, then severity, kind and message.
func (l List) Sort() {
	slices.SortStableFunc(l, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(a.Pos.File, b.Pos.File),
			cmp.Compare(a.Pos.Line, b.Pos.Line),
			cmp.Compare(a.Pos.Col, b.Pos.Col),
			cmp.Compare(a.Severity, b.Severity),
			cmp.Compare(a.Kind, b.Kind),
			cmp.Compare(a.Message, b.Message),
		)
	})
}

// notRead is the kind of words that could not be read. They are not a finding against the pattern, and
// are told apart from those.
const notRead = "rows/not-read"

// NotRead reports whether it tells words that could not be read or followed.
func (f *Finding) NotRead() bool { return f.Kind == notRead }

// NotFollowed turns it into a note that its words were not followed: they may be meant otherwise than they were read.
func (f *Finding) NotFollowed() {
	f.Kind, f.Severity, f.Message = notRead, Note, notFollowed+f.Message
}

// notFollowed begins the message of words that were read, and may be meant otherwise.
const notFollowed = "not followed: "

// Unfollowed reports whether it tells words that were read and not followed.
func (f *Finding) Unfollowed() bool { return f.NotRead() && strings.HasPrefix(f.Message, notFollowed) }

// Apart parts what does not fit from what was not read, each in its order.
func (l List) Apart() (found, unread List) {
	for _, f := range l {
		if f.NotRead() {
			unread = append(unread, f)
		} else {
			found = append(found, f)
		}
	}
	return found, unread
}

// NoEdge is the kind of an edge that no piece has. A join that calls one is an error, and all the rest of the
// pattern can be worked and drawn without it.
const NoEdge = "reference/edge"

// Stop reports whether any of them is an Error with which a pattern that was read can't be worked.
func (l List) Stop() bool {
	return slices.ContainsFunc(l, func(f Finding) bool { return f.Severity == Error && f.Kind != NoEdge })
}

// Errors reports whether any of them is an Error.
func (l List) Errors() bool {
	return slices.ContainsFunc(l, func(f Finding) bool { return f.Severity == Error })
}
