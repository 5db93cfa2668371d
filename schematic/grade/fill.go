package grade

import (
	"bytes"
	"cmp"
	"slices"
	"unicode/utf8"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Fill writes the numbers into the pattern file src that its sums came to:
// every graded value that calls the grading becomes the trade's line. Only those
// bytes change; comments, order, spelling and line ends stay. p is the pattern
// read from src.
func Fill(src []byte, p *schematic.Pattern) []byte {
	edits := make([]edit, len(p.Calls))
	for i, c := range p.Calls {
		edits[i] = edit{c.Pos, filled(p, c)}
	}
	return edited(src, edits)
}

// edit is a text that takes the place of one in the file.
type edit struct {
	pos  finding.Pos
	text string
}

// edited is the file with all edits made; of two that overlap the first.
func edited(src []byte, edits []edit) []byte {
	slices.SortFunc(edits, func(a, b edit) int {
		return cmp.Or(cmp.Compare(a.pos.Line, b.pos.Line), cmp.Compare(a.pos.Col, b.pos.Col))
	})
	starts := lineStarts(src)
	var out []byte
	done := 0
	for _, e := range edits {
		if e.pos.Line < 1 || e.pos.Line > len(starts) {
			continue
		}
		start := starts[e.pos.Line-1]
		from, to := column(src, start, e.pos.Col), column(src, start, e.pos.EndCol)
		if from < done || to < from {
			continue
		}
		out = append(append(out, src[done:from]...), e.text...)
		done = to
	}
	return append(out, src[done:]...)
}

// filled is the text that takes a sum's place.
func filled(p *schematic.Pattern, c schematic.Call) string {
	if c.Dim != expr.LengthOf {
		return lineText(p, c.Vals, expr.Plain)
	}
	return lineText(p, c.Vals, c.Dim)
}

// lineText is a value in the trade's line. Lengths go into the pattern's unit and
// are cut to a thousandth of it; counts have their word behind them.
func lineText(p *schematic.Pattern, g expr.Graded, d expr.Dim) string {
	tail := [...]string{"", " " + p.Units.String(), " sts", " rows"}[d]
	return p.Sizes.Write(g, func(v units.Num) string {
		if d == expr.LengthOf {
			v = units.In(v, p.Units)
		}
		return units.Decimal(v, 3)
	}) + tail
}

func lineStarts(src []byte) []int {
	at := 0
	if bytes.HasPrefix(src, []byte("\ufeff")) {
		at = len("\ufeff")
	}
	starts := []int{at}
	for i, b := range src {
		if b == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

// column is the place of a column, counted in characters from 1, in the line that begins at start.
func column(src []byte, start, col int) int {
	i := start
	for range col - 1 {
		if i >= len(src) || src[i] == '\n' {
			break
		}
		_, n := utf8.DecodeRune(src[i:])
		i += n
	}
	return i
}
