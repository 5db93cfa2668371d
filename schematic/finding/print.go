package finding

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// Printer writes findings as text. Colour adds terminal colours; Width is the
// number of columns that a source line may take (0: 100).
type Printer struct {
	Colour bool
	Width  int
}

// Print writes findings as plain text: file:line:col: severity: message, the
// source line with a caret line under the words meant, then the sizes if not all of
// them are concerned, what was found, what was expected and the likely fix. What was not read follows under
// a heading of its own. Sources holds the bytes of each file by
// its name; a file that is not there is shown without its line. The error is w's.
func (p Printer) Print(w io.Writer, list List, sources map[string][]byte) error {
	if p.Width <= 0 {
		p.Width = 100
	}
	q := printing{Printer: p, sources: sources, lines: map[string][]string{}}
	found, unread := list.Apart()
	for _, f := range found {
		q.head(f, p.paint(hues[f.Severity], f.Severity.String()+":")+" "+Clean(f.Message)+" "+p.paint("2", "["+f.Kind+"]"))
		q.body(f)
	}
	if len(unread) > 0 && len(found) > 0 {
		q.b.WriteByte('\n')
	}
	if len(unread) > 0 {
		q.b.WriteString("Not read, and not checked:\n")
	}
	for _, f := range unread {
		q.head(f, Clean(f.Message))
		q.body(f)
	}
	_, err := w.Write(q.b.Bytes())
	return err
}

// printing is the text so far, and the lines of the files that it quotes.
type printing struct {
	Printer
	b       bytes.Buffer
	sources map[string][]byte
	lines   map[string][]string
}

// body writes what stands under the head of a finding.
func (p *printing) body(f Finding) {
	all, ok := p.lines[f.Pos.File]
	if !ok {
		all = Lines(p.sources[f.Pos.File])
		p.lines[f.Pos.File] = all
	}
	if f.Pos.Line > 0 && f.Pos.Line <= len(all) {
		p.source(&p.b, f, all[f.Pos.Line-1])
	}
	for _, t := range []struct{ name, text string }{
		{"in", f.in()}, {sizeWord(f.Sizes), strings.Join(f.Sizes, ", ")}, {"found", f.Have}, {"expected", f.Want}, {"fix", f.Fix},
	} {
		if t.text != "" {
			fmt.Fprintf(&p.b, "    %s %s\n", p.paint("2", t.name+":"), Clean(t.text))
		}
	}
}

// in is the written row of a finding with its heading, or nothing.
func (f Finding) in() string {
	if f.Row == "" || f.Section == "" {
		return f.Row
	}
	return f.Section + ", " + f.Row
}

var hues = [...]string{Error: "1;31", Warning: "1;33", Note: "1;36"}

// head writes where a finding is, and what is said of it.
func (p *printing) head(f Finding, said string) {
	if f.Pos.File != "" {
		p.b.WriteString(Clean(f.Pos.File))
		if f.Pos.Line > 0 {
			fmt.Fprintf(&p.b, ":%d", f.Pos.Line)
			if f.Pos.Col > 0 {
				fmt.Fprintf(&p.b, ":%d", f.Pos.Col)
			}
		}
		p.b.WriteString(": ")
	}
	p.b.WriteString(said + "\n")
}

// source writes the window of the line that holds the words, and carets under them.
func (p Printer) source(b *bytes.Buffer, f Finding, line string) {
	cells, starts := layOut(line)
	first, last := max(f.Pos.Col, 1)-1, f.Pos.EndCol-1
	from := starts[min(first, len(starts)-1)]
	to := from + 1
	if last > first {
		to = max(starts[min(last, len(starts)-1)], from+1)
	}
	left, right := 0, total(cells)
	head, tail := "", ""
	if right > p.Width {
		room := p.Width - 2
		left = max(0, min(from-room/3, right-room))
		right = min(right, left+room)
		if left > 0 {
			head = "…"
		}
		if right < total(cells) {
			tail = "…"
		}
	}
	var text strings.Builder
	at, shift := 0, -1
	for _, c := range cells {
		if at >= left && at+c.wide <= right {
			if shift < 0 {
				shift = at
			}
			text.WriteString(c.text)
		}
		at += c.wide
	}
	shift = max(shift, 0)
	number := fmt.Sprint(f.Pos.Line)
	gap := strings.Repeat(" ", len(number))
	fmt.Fprintf(b, " %s | %s%s%s\n", number, head, strings.TrimRight(text.String(), " "), tail)
	indent := max(from-shift, 0) + len([]rune(head))
	carets := max(1, min(to, right)-from)
	if f.Pos.Col == 0 {
		return
	}
	fmt.Fprintf(b, " %s | %s%s\n", gap, strings.Repeat(" ", indent), p.paint(hues[f.Severity], strings.Repeat("^", carets)))
}

func sizeWord(sizes []string) string {
	if len(sizes) == 1 {
		return "size"
	}
	return "sizes"
}

func (p Printer) paint(hue, s string) string {
	if !p.Colour {
		return s
	}
	return "\x1b[" + hue + "m" + s + "\x1b[0m"
}

// cell is one character as a terminal shows it.
type cell struct {
	text string
	wide int
}

func total(cells []cell) int {
	n := 0
	for _, c := range cells {
		n += c.wide
	}
	return n
}

// layOut gives the cells of a line and the terminal column at which each of its
// characters begins, with one more for the end.
func layOut(line string) ([]cell, []int) {
	const tab = 4
	cells := make([]cell, 0, len(line))
	starts := make([]int, 0, len(line)+1)
	at := 0
	for i, r := range line {
		starts = append(starts, at)
		if r >= ' ' && r < 0x7f { // lines of a mebibyte are quoted too
			cells, at = append(cells, cell{line[i : i+1], 1}), at+1
			continue
		}
		c := cell{string(r), 1}
		switch {
		case r == '\t':
			n := tab - at%tab
			c = cell{strings.Repeat(" ", n), n}
		case hidden(r):
			c.text = "·"
		case unicode.In(r, unicode.Mn, unicode.Me):
			c.wide = 0
		default:
			if k := width.LookupRune(r).Kind(); k == width.EastAsianWide || k == width.EastAsianFullwidth {
				c.wide = 2
			}
		}
		at += c.wide
		cells = append(cells, c)
	}
	return cells, append(starts, at)
}

// hidden reports whether a character would do something to a terminal instead
// of showing: controls, and the marks that turn the direction of text.
func hidden(r rune) bool {
	return unicode.IsControl(r) || unicode.In(r, unicode.Bidi_Control, unicode.Zl, unicode.Zp) || r == '\uFEFF'
}

// Clean is s as a terminal can show it, in one line: a point stands for what would do something to
// it instead.
func Clean(s string) string {
	return strings.Map(func(r rune) rune {
		if hidden(r) {
			return '·'
		}
		return r
	}, strings.ReplaceAll(s, "\n", " "))
}

// Lines are the lines of a file without their ends, counted as findings count
// them: a mark of byte order at its start is no part of the first line, and LF, CR
// and CR LF end a line.
func Lines(src []byte) []string {
	s := strings.TrimPrefix(string(src), "\uFEFF")
	s = strings.ReplaceAll(s, "\r\n", "\n")
	s = strings.ReplaceAll(s, "\r", "\n")
	return strings.Split(strings.TrimSuffix(s, "\n"), "\n")
}
