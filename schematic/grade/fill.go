package grade

import (
	"bytes"
	"cmp"
	"slices"
	"unicode/utf8"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// Fill writes the numbers into the pattern file src that its sums came to:
// every graded value that calls the grading becomes the trade's line. Only those
// bytes change; comments, order, spelling and line ends stay. p is the pattern
// read from src.
func Fill(src []byte, p *schematic.Pattern) []byte {
	calls := slices.Clone(p.Calls)
	slices.SortFunc(calls, func(a, b schematic.Call) int {
		return cmp.Or(cmp.Compare(a.Pos.Line, b.Pos.Line), cmp.Compare(a.Pos.Col, b.Pos.Col))
	})
	starts := lineStarts(src)
	var out []byte
	done := 0
	for _, c := range calls {
		if c.Pos.Line < 1 || c.Pos.Line > len(starts) {
			continue
		}
		from := column(src, starts[c.Pos.Line-1], c.Pos.Col)
		to := column(src, starts[c.Pos.Line-1], c.Pos.EndCol)
		if from < done || to < from {
			continue
		}
		out = append(out, src[done:from]...)
		out = append(out, filled(p, c)...)
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
