package expr

import "strings"

// brackets walks through a line of places that are grouped with brackets and parted by commas:
// 103 (111, 119) (127, 135).
type brackets struct {
	t       []rune
	i       int
	loose   bool   // a place may follow a group without a comma, and a comma between groups does no harm
	example string // of such a line, for messages
	missing func(i int) *Problem
	state   state
	opened  int   // place of the bracket that is open, or -1
	comma   int   // place of the last comma
	in      int   // places in the group so far
	groups  []int // how many places each group has
}

// state is what stands before the place at hand.
type state int

const (
	free   state = iota // nothing, a bracket or a comma: a place is due
	full                // a place, and no comma yet
	closed              // the end of a group
)

// next goes to where the next place begins. It gives false at the end, and the problem if the line
// can't be so.
func (b *brackets) next() (bool, *Problem) {
	for b.i = skipSpace(b.t, b.i); b.i < len(b.t); b.i = skipSpace(b.t, b.i+1) {
		var p *Problem
		switch b.t[b.i] {
		case '(', '[':
			p = b.open()
		case ')', ']':
			p = b.close()
		case ',', ';':
			p = b.part()
		default:
			return true, nil
		}
		if p != nil {
			return false, p
		}
	}
	return false, b.end()
}

func (b *brackets) open() *Problem {
	if b.opened >= 0 {
		return &Problem{Kind: "file/form", Span: Span{b.i, b.i + 1}, Message: "a bracket opens inside a bracket",
			Want: "groups side by side, such as " + b.example, Fix: "close the first bracket before the next one opens"}
	}
	b.group()
	b.opened, b.state, b.comma = b.i, free, b.i
	return nil
}

func (b *brackets) close() *Problem {
	if b.opened < 0 {
		return &Problem{Kind: "file/form", Span: Span{b.i, b.i + 1}, Message: "a bracket closes that was never opened",
			Fix: "take it out, or add the one that opens its group"}
	}
	if b.state == free {
		return b.missing(b.i)
	}
	b.group()
	b.opened, b.state = -1, closed
	return nil
}

func (b *brackets) part() *Problem {
	switch {
	case b.state == free:
		return b.missing(b.i)
	case b.state == full || !b.loose:
		b.state, b.comma = free, b.i
	}
	return nil
}

func (b *brackets) end() *Problem {
	switch {
	case b.opened >= 0:
		return &Problem{Kind: "file/form", Span: Span{b.opened, b.opened + 1}, Message: "this bracket is never closed",
			Want: "a closing bracket after the last size of the group", Fix: "add )"}
	case b.state == free && b.comma >= 0:
		return b.missing(b.comma)
	}
	b.group()
	return nil
}

// take counts the place that ends at end.
func (b *brackets) take(end int) {
	b.in, b.state, b.i = b.in+1, full, end
}

// due reports whether a place may stand here.
func (b *brackets) due() bool { return b.state == free || b.loose && b.state == closed }

// group ends a group.
func (b *brackets) group() {
	if b.in > 0 {
		b.groups = append(b.groups, b.in)
	}
	b.in = 0
}

// placeEnd is where the place that begins at i ends.
func placeEnd(t []rune, i int) int {
	for i < len(t) && !strings.ContainsRune(",;()[]", t[i]) {
		i++
	}
	for i > 0 && isSpace(t[i-1]) {
		i--
	}
	return i
}
