package html

import (
	"fmt"
	"html/template"
	"strings"

	"flatwright/layout/document"
	"flatwright/schematic/units"
)

// words writes texts in which every number knows its size and unit.
type words struct {
	p string
	c *document.Content
}

func (w *words) texts(all []document.Text) []template.HTML {
	var out []template.HTML
	for _, t := range all {
		out = append(out, w.text(t))
	}
	return out
}

func (w *words) facts(all []document.Fact) []fact {
	var out []fact
	for _, f := range all {
		out = append(out, fact{template.HTML(template.HTMLEscapeString(f.Name)), w.texts(f.Lines)})
	}
	return out
}

// text writes the text in the trade's line: read without the style sheet it is as a
// pattern prints it, and with it the numbers of other sizes and the other unit go.
func (w *words) text(t document.Text) template.HTML {
	var b strings.Builder
	for _, s := range t {
		pieces := s.Pieces(w.c.Sizes, w.c.Units(), w.c.Steps)
		var open bool
		var unit units.Unit
		for _, p := range pieces {
			if open && (!p.Length || p.Unit != unit) {
				b.WriteString("</span>")
				open = false
			}
			if p.Length && !open {
				fmt.Fprintf(&b, `<span class="%s-%s">`, w.p, p.Unit)
				open, unit = true, p.Unit
			}
			text := template.HTMLEscapeString(clean(p.S))
			switch {
			case p.Between():
				text = fmt.Sprintf(`<span class="%s-b">%s</span>`, w.p, text)
			case p.Size >= 0:
				text = fmt.Sprintf(`<span class="%s-%d">%s</span>`, w.p, p.Size, text)
			case s.Graded() && !p.Length && len(s.Lengths) > 0:
				text = fmt.Sprintf(`<span class="%s-both">%s</span>`, w.p, text)
			case p.Strong:
				text = "<strong>" + text + "</strong>"
			}
			b.WriteString(text)
		}
		if open {
			b.WriteString("</span>")
		}
	}
	return template.HTML(b.String())
}

// clean is text as an HTML file may hold it (HTML Standard, 13.1: no control
// characters, no noncharacters): any other control character is a space.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r < ' ' || r >= 0x7f && r < 0xa0:
			return ' '
		case r >= 0xfdd0 && r <= 0xfdef || r&0xfffe == 0xfffe:
			return -1
		}
		return r
	}, s)
}
