package work

import (
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// Words that say how rows begin and end: slipping the first st of every row; the first st of each row is slipped; slip the first and
// knit the last st of every row.
var (
	slipsFirst = text.Once(`(?i)\bslipping (?:always )?(?:the )?(?:first|1st) st|\b(?:slip|sl)\.? (?:the )?(?:first|1st) (?:st\b|stitch|and\b)[^.;]*\b(?:each|every|all)\b|\b(?:first|1st) st(?:itch)?\b[^.;]*\b(?:each|every|all)\b[^.;]*\bslipped\b`)
	butFirst   = text.Once(`(?i)\b(?:except|but not|apart from)\b[^.;]*\b(?:first|1st)\b`)
	knitsLast  = text.Once(`(?i)\b(?:knit|k) (?:the )?last st[^.;]*\b(?:each|every|all)\b`)
)

// slipNote is the line of a note that says that all rows begin with a slipped stitch; 0: none does.
func slipNote(x *ins.Text) int {
	for i, line := range x.Src {
		if text.Has(line, "every") || text.Has(line, "each") || text.Has(line, "all") {
			if slipsFirst().MatchString(line) && !worksRows(x, i+1) {
				return i + 1
			}
		}
	}
	return 0
}

// worksRows reports whether a line holds the work of rows.
func worksRows(x *ins.Text, line int) bool {
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			if l.At.Line != line {
				continue
			}
			for _, n := range l.Body {
				if !is[*ins.Nothing](n) {
					return true
				}
			}
		}
	}
	return false
}

// edgesOf takes from a line, or from the note at line note, how the flat rows that it makes begin and end, and whether it tells a wrong side.
func (g *Graph) edgesOf(x *ins.Text, l *ins.Line, note int) {
	g.slips, g.wrong = "", l.Label != nil && l.Label.Side == 2
	switch {
	case l.Label == nil && slipsFirst().MatchString(l.Src):
		g.slips = l.Src
	case note > 0 && note < l.At.Line:
		g.slips = x.Src[note-1]
	}
	g.whole = g.slips != "" && butFirst().MatchString(g.slips)
}

// slip makes a slipped stitch of the first one of a knitted row, where words say so.
func (g *Graph) slip(row *GraphRow) {
	n := len(row.Stitches)
	if g.slips == "" || row.Round || row.Start || n == 0 || len(g.Rows) == 0 {
		return
	}
	if g.whole {
		g.whole = false
		return
	}
	first, last := &row.Stitches[0], &row.Stitches[n-1]
	below := g.Rows[len(g.Rows)-1].Stitches
	if plain(first) {
		if first.Stitch = stitch.ByID("sl"); first.Feet[0] < len(below) {
			first.Colour = below[first.Feet[0]].Colour
		}
	}
	if plain(last) && knitsLast().MatchString(g.slips) {
		last.Stitch = stitch.ByID("k")
	}
}

// plain reports whether a stitch is knitted or purled into one stitch.
func plain(s *GraphStitch) bool {
	return s.Stitch != nil && (s.Stitch.ID == "k" || s.Stitch.ID == "p") && len(s.Feet) == 1 && s.Cross == nil && !s.Idle
}
