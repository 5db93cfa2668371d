package document

import (
	"slices"
	"strings"

	"flatwright/layout/table"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// Text is a line of words in which numbers may depend on size and unit.
type Text []Span

// Span is a stretch of a text: words that are the same for all sizes (S), a number for
// each size (Counts), or a length for each size (Lengths). A length is told with
// its unit.
type Span struct {
	S       string
	Counts  []string
	Lengths []table.Cell
	Strong  bool
}

// Words is a text that depends on nothing.
func Words(s string) Text { return Text{{S: s}} }

// Graded reports whether the span has more than one number to tell apart by size.
func (s Span) Graded() bool { return len(s.Counts) > 0 || len(s.Lengths) > 0 }

// each is the span's text for each size in u, without the unit.
func (s Span) each(u units.Unit, steps units.Steps) []string {
	if len(s.Counts) > 0 {
		return s.Counts
	}
	out := make([]string, len(s.Lengths))
	for i, c := range s.Lengths {
		out[i] = c.Text(u, steps)
	}
	return out
}

// Said is the text in the trade's line for the sizes, or with size >= 0 for that
// size alone, lengths in us.
func (t Text) Said(sizes expr.Sizes, size int, us []units.Unit, steps units.Steps) string {
	var b strings.Builder
	for _, s := range t {
		b.WriteString(s.said(sizes, size, us, steps))
	}
	return b.String()
}

func (s Span) said(sizes expr.Sizes, size int, us []units.Unit, steps units.Steps) string {
	line := func(each []string) string {
		if size >= 0 && size < len(each) {
			return each[size]
		}
		return sizes.Line(each)
	}
	switch {
	case len(s.Counts) > 0:
		return line(s.Counts)
	case len(s.Lengths) > 0:
		var parts []string
		for _, u := range us {
			parts = append(parts, line(s.each(u, steps))+" "+u.String())
		}
		return strings.Join(parts, " / ")
	}
	return s.S
}

// Piece is a stretch of a text as it is printed: Size is the index of the size
// whose number it is, -1 if it belongs to all of them.
type Piece struct {
	S      string
	Size   int
	Unit   units.Unit
	Length bool // it belongs to a length in Unit
	Strong bool
}

// Pieces cuts a span as it is printed in the trade's line, every number apart: what a
// page needs to let one size stand out, or to hide the others.
func (s Span) Pieces(sizes expr.Sizes, us []units.Unit, steps units.Steps) []Piece {
	if !s.Graded() {
		return []Piece{{S: s.S, Size: -1, Strong: s.Strong}}
	}
	length := len(s.Lengths) > 0
	if len(s.Counts) > 0 {
		us = us[:1]
	}
	var out []Piece
	for k, u := range us {
		if k > 0 {
			out = append(out, Piece{S: " / ", Size: -1, Strong: s.Strong})
		}
		line := lineOf(sizes, s.each(u, steps))
		if length {
			line = append(line, Piece{S: " " + u.String(), Size: -1})
		}
		for _, p := range line {
			p.Unit, p.Length, p.Strong = u, length, s.Strong
			out = append(out, p)
		}
	}
	return out
}

// lineOf is the trade's line of each size's text; of one alone if they are alike.
func lineOf(sizes expr.Sizes, each []string) []Piece {
	if len(each) > 0 && len(slices.Compact(slices.Clone(each))) == 1 {
		return []Piece{{S: each[0], Size: -1}}
	}
	var out []Piece
	i := 0
	for g, n := range sizes.Groups {
		open, shut := " (", ")"
		switch {
		case g == 0 && n == 1:
			open, shut = "", ""
		case g == 0:
			open = "("
		}
		for j := 0; j < n && i < len(each); j++ {
			before := ", "
			if j == 0 {
				before = open
			}
			out = append(out, Piece{S: before, Size: between}, Piece{S: each[i], Size: i})
			i++
		}
		out = append(out, Piece{S: shut, Size: between})
	}
	return slices.DeleteFunc(out, func(p Piece) bool { return p.Size == between && p.S == "" })
}

// between is the Size of a comma or a bracket of the trade's line: only a line of
// all sizes has it.
const between = -2

// Between reports whether the piece is a comma or a bracket of the trade's line.
func (p Piece) Between() bool { return p.Size == between }
