package document

import (
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// run is a stretch of text in one face and ink.
type run struct {
	s    string
	face fonts.Face
	ink  sheet.Ink
}

// words are runs that stay on one line together.
type word struct {
	runs []run
	w    float64
}

func lineHigh(size float64) float64 {
	return (fonts.Ascent(fonts.Regular) + fonts.Descent(fonts.Regular)) * size
}

// wrap breaks runs into lines of at most wide mm. A word that is wider is broken
// where it must be.
func wrap(runs []run, size, wide float64) [][]run {
	var lines [][]run
	var line []run
	at := 0.0
	space := fonts.Width(fonts.Regular, size, " ")
	flush := func() {
		lines = append(lines, line)
		line, at = nil, 0
	}
	for _, w := range wordsOf(runs, size, wide) {
		if at > 0 && at+space+w.w > wide {
			flush()
		}
		if at > 0 {
			line = append(line, run{" ", w.runs[0].face, w.runs[0].ink})
			at += fonts.Width(w.runs[0].face, size, " ")
		}
		line = append(line, w.runs...)
		at += w.w
	}
	if len(line) > 0 || len(lines) == 0 {
		flush()
	}
	for i := range lines {
		lines[i] = joined(lines[i])
	}
	return lines
}

func wordsOf(runs []run, size, wide float64) []word {
	c := &cutter{size: size, wide: wide}
	for _, r := range runs {
		for i, part := range strings.Split(fonts.Shown(r.face, r.s), " ") {
			if i > 0 {
				c.end()
			}
			c.take(run{part, r.face, r.ink})
		}
	}
	c.end()
	return c.out
}

// cutter makes words no wider than a column.
type cutter struct {
	size, wide float64
	word       word // that grows
	out        []word
}

func (c *cutter) end() {
	if len(c.word.runs) > 0 {
		c.out = append(c.out, c.word)
	}
	c.word = word{}
}

// take adds what has no space in it to the word, which ends where the column does.
func (c *cutter) take(r run) {
	for r.s != "" {
		fit := r.s
		if c.word.w+fonts.Width(r.face, c.size, fit) > c.wide {
			fit = fitting(r.s, r.face, c.size, c.wide-c.word.w)
		}
		if fit == "" && len(c.word.runs) > 0 {
			c.end()
			continue
		}
		if fit == "" {
			fit = string([]rune(r.s)[:1])
		}
		c.word.runs = append(c.word.runs, run{fit, r.face, r.ink})
		c.word.w += fonts.Width(r.face, c.size, fit)
		if r.s = r.s[len(fit):]; r.s != "" {
			c.end()
		}
	}
}

// fitting is as much of s as is at most wide.
func fitting(s string, f fonts.Face, size, wide float64) string {
	last := 0
	for i := range s {
		if i > 0 && fonts.Width(f, size, s[:i]) > wide {
			break
		}
		last = i
	}
	return s[:last]
}

// joined makes one run of neighbours that look alike.
func joined(line []run) []run {
	var out []run
	for _, r := range line {
		if n := len(out); n > 0 && out[n-1].face == r.face && out[n-1].ink == r.ink {
			out[n-1].s += r.s
			continue
		}
		out = append(out, r)
	}
	return out
}

// setLine draws one line with its baseline at y.
func setLine(g *sheet.Group, line []run, x, y, size float64, class string) {
	for _, r := range line {
		w := fonts.Width(r.face, size, r.s)
		lead := len(r.s) - len(strings.TrimLeft(r.s, " "))
		text := strings.TrimRight(r.s[lead:], " ")
		if text != "" {
			in := w - fonts.Width(r.face, size, r.s[lead:]) // a space kerns with what follows
			g.Items = append(g.Items, &sheet.Text{S: text, At: at(x+in, y), Face: r.face, Size: size,
				Width: fonts.Width(r.face, size, text), Ink: r.ink, Class: class})
		}
		x += w
	}
}

func at(x, y float64) sheet.Point { return sheet.Point{X: sheet.Quantise(x), Y: sheet.Quantise(y)} }

// rule is a straight line.
func rule(x0, y0, x1, y1, width float64, class string) *sheet.Path {
	return &sheet.Path{Class: class, Style: sheet.Style{Width: width, Stroke: sheet.Black},
		Segs: []sheet.Seg{{Verb: sheet.Move, P: [3]sheet.Point{at(x0, y0)}}, {Verb: sheet.Line, P: [3]sheet.Point{at(x1, y1)}}}}
}
