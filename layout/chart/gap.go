package chart

import (
	"fmt"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic/finding"
)

// leftOut says what is left out of the chart before a row: rows like others, or rows that
// can't be drawn.
func (r *Row) leftOut() string {
	var parts []string
	if r.Gap > 0 && r.Same != "" {
		parts = append(parts, r.Same)
	}
	return strings.Join(append(parts, told(r.Missing)...), "; ")
}

// mostMissing is how many lines that were not read are told one by one at one place of a chart.
const mostMissing = 2

// told says which rows are missing: more of them than can be told one by one together.
func told(list []Missing) []string {
	var out []string
	for _, m := range list {
		out = append(out, m.String())
	}
	n := len(list) - 1
	if n < mostMissing {
		return out
	}
	if to := max(list[n].To, list[n].Number); list[0].Number > 0 && to > 0 {
		return []string{rowsNamed([]Row{{Round: list[0].Round, Number: list[0].Number}, {Number: to}}) + " were not read"}
	}
	return []string{out[0], fmt.Sprintf("%d more lines were not read", n)}
}

// gapWords is what is left out before a row, or why its stitches are not known.
func (r *Row) gapWords() string {
	words := r.leftOut()
	if r.Unread == "" {
		return words
	}
	if words != "" {
		words += "; "
	}
	return words + lowerFirst(r.title()) + notRead(false) + clipWords(r.Unread)
}

// ending says what is left out of the chart at its end.
func (w *Work) ending() string {
	var parts []string
	if w.More > 0 && w.Same != "" {
		parts = append(parts, w.Same)
	}
	return strings.Join(append(parts, told(w.missing)...), "; ")
}

// mostWords is how many letters of what was not read are told on a chart.
const mostWords = 40

// String says which rows are missing, and why.
func (m Missing) String() string {
	word := "row"
	if m.Round {
		word = "round"
	}
	name, many := "", false
	switch {
	case m.Number > 0 && m.To > m.Number:
		name, many = rowsNamed([]Row{{Round: m.Round, Number: m.Number}, {Number: m.To}}), true
	case m.Number > 0:
		name = fmt.Sprintf("%s %d", word, m.Number)
	case m.Name != "":
		name = m.Name
	default:
		name = "a line"
	}
	if m.Words == "" {
		if many {
			return name + " stand on it and are not drawn"
		}
		return name + " stands on it and is not drawn"
	}
	return name + notRead(many) + clipWords(m.Words)
}

func notRead(many bool) string {
	if many {
		return " were not read: "
	}
	return " was not read: "
}

func clipWords(s string) string {
	if r := []rune(s); len(r) > mostWords {
		return string(r[:mostWords-1]) + "…"
	}
	return s
}

// Gap is what a chart does not show, and the line of the text that was not read.
type Gap struct {
	Line  int
	Words string
}

// Gaps are what the chart does not show of its rows, one for each line that was not read.
func (w *Work) Gaps() []Gap {
	var out []Gap
	put := func(line int, words string) {
		if k := len(out); k == 0 || out[k-1].Line != line {
			out = append(out, Gap{line, words})
		}
	}
	missing := func(list []Missing) {
		for _, m := range list {
			if m.Words != "" {
				put(m.Line, m.String())
			}
		}
	}
	for i := range w.Rows {
		r := &w.Rows[i]
		missing(r.Missing)
		if r.Unread != "" {
			put(r.Line, lowerFirst(r.title())+notRead(false)+clipWords(r.Unread))
		}
	}
	missing(w.missing)
	return out
}

// Amiss are the rows that are drawn otherwise than their text says.
func (w *Work) Amiss() []Gap {
	var out []Gap
	for i := range w.Rows {
		if r := &w.Rows[i]; r.asterisk() != "" {
			if g := (Gap{r.Line, lowerFirst(r.title()) + ": " + r.Amiss}); len(out) == 0 || out[len(out)-1] != g {
				out = append(out, g)
			}
		}
	}
	return out
}

// amissNotes tell in the heading which numbers are marked, and why.
func (w *Work) amissNotes() []string {
	var out []string
	for _, g := range w.Amiss() {
		out = append(out, "* "+finding.Capital(g.Words))
	}
	return out
}

func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

// gapNotes tell in the heading that not all was read.
func (w *Work) gapNotes() []string {
	if len(w.Gaps()) == 0 {
		return nil
	}
	return []string{"Not all rows could be read: each gap is marked"}
}

// unreadRow draws a row of a grid that was not read: its room, hatched at both ends, and why.
func (s *squares) unreadRow(r *knitRow, row *Row) {
	if len(r.cells) == 0 {
		return
	}
	f := s.d.f
	from, to := s.corner(r.cells[0].col, r), s.corner(r.cells[len(r.cells)-1].col+1, r)
	f.add(newMark(r.row, false, s.box(from, to.X-from.X)))
	words := fmt.Sprintf("not read: %s", clipWords(row.Unread))
	size := s.o.plane(s.d.scale)
	room := fonts.Width(fonts.Regular, size, words) + 2
	if room > to.X-from.X || size > s.tall {
		words, room = "", 0
	}
	mid := (from.X + to.X) / 2
	const atEnds = 9.0 // mm; a page that shows the row's middle alone has room for its words
	for x := from.X + 0.6; x+1.2 < to.X; x += 1.5 {
		if words != "" && (x+1.6 > mid-room/2 && x-0.4 < mid+room/2 || x > from.X+atEnds && x < to.X-atEnds) {
			continue
		}
		f.add(newMark(r.row, false, path("break", quiet, pt{X: x, Y: from.Y + 0.5}, pt{X: x + 0.8, Y: from.Y + s.tall - 0.5})))
	}
	if words != "" {
		f.label(s.o, s.d.scale, label{s: words, at: pt{X: mid, Y: from.Y + s.tall/2}, row: r.row, class: "break"})
	}
	for _, c := range r.cells { // they are counted, though no one knows what they are
		at := pt{X: (float64(c.col) + 0.5) * cell, Y: r.low + s.tall/2}
		f.add(mark{row: r.row, stitch: true, at: at, lo: at, hi: at})
	}
}

// unreadStitch is the place of a stitch that was not read, in a chart of crochet.
func unreadStitch(q *pen) []*sheet.Path {
	q.line(-0.5, 0.15, 0.5, 0.15)
	q.out[0].Class = "break"
	return q.out
}
