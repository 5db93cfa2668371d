package html

import (
	"encoding/base64"
	"fmt"
	"html/template"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// pen draws sheets as svg elements of the page. Looks go into classes of the page's
// one style sheet, in the page's own colours, so that nine drawings stay small and
// follow a dark page.
type pen struct {
	p      string
	styles []string // rules, without their class
	plain  bool     // looks stand in attributes too, for a page that keeps no style sheet
	faces  []fonts.Face
	texts  map[fonts.Face][]string
}

// pxPerMM is how large a drawing stands on the page at most: half as large again
// as on paper.
const pxPerMM = 1.5 * 96 / 25.4

func newPen(prefix string) *pen { return &pen{p: prefix, texts: map[fonts.Face][]string{}} }

// telephone is the room that a narrow screen has for a drawing, px, and readable is how
// high words in a drawing are at least, px.
const (
	telephone = 328
	readable  = 12
)

// leastWidth is how wide a sheet has to stand for its smallest words to be readable, px.
func leastWidth(s *sheet.Sheet) int {
	smallest := math.Inf(1)
	sheet.Walk(&s.Root, func(it sheet.Item) {
		if t, ok := it.(*sheet.Text); ok && t.Visible() {
			smallest = min(smallest, t.Size)
		}
	})
	return int(math.Ceil(s.W * readable / smallest))
}

// look is the class of a rule, and its attributes where they are wanted.
func (d *pen) look(rule string) string {
	class := fmt.Sprintf(`class="%s"`, d.class(rule))
	if !d.plain {
		return class
	}
	for one := range strings.SplitSeq(rule, ";") {
		key, value, _ := strings.Cut(one, ":")
		if part, ok := strings.CutPrefix(value, mixed); ok {
			percent, _, _ := strings.Cut(part, "%")
			class += fmt.Sprintf(` %s="currentColor" %s-opacity=".%02s"`, key, key, percent)
			continue
		}
		class += fmt.Sprintf(` %s="%s"`, key, strings.TrimSuffix(value, "px"))
	}
	return class
}

// class is the class of a rule.
func (d *pen) class(rule string) string {
	i := slices.Index(d.styles, rule)
	if i < 0 {
		i = len(d.styles)
		d.styles = append(d.styles, rule)
	}
	return fmt.Sprintf("%s-y%d", d.p, i)
}

// css are the rules of all drawings so far.
func (d *pen) css() string {
	var b strings.Builder
	for _, f := range d.faces {
		fmt.Fprintf(&b, "@font-face{font-family:%s%s;src:url(data:font/woff;base64,%s) format(\"woff\")}\n", d.family(f), weight(f),
			base64.StdEncoding.EncodeToString(fonts.SubsetOf(f, d.texts[f]...).WOFF()))
	}
	fmt.Fprintf(&b, ".@ svg{font-family:%s,%s;font-weight:400;font-style:normal;letter-spacing:0;word-spacing:0;text-transform:none;font-variant:normal}\n", d.family(fonts.Regular), fonts.Family)
	for i, s := range d.styles {
		fmt.Fprintf(&b, ".@ .@-y%d{%s}\n", i, s)
	}
	return b.String()
}

// family is what the page calls a face: one name for those of the house, and one for a face
// of the designer's own.
func (d *pen) family(f fonts.Face) string {
	if f.House() {
		return d.p + "-face"
	}
	return d.p + "-own"
}

// weight is the weight or the style of a face, if it is not the usual one.
func weight(f fonts.Face) string {
	switch f {
	case fonts.Bold:
		return ";font-weight:700"
	case fonts.Italic:
		return ";font-style:italic"
	}
	return ""
}

// paper is the ground of a sheet in the designer's own colours: white, on a dark page too, since
// their contrast is held to it.
func paper(s *sheet.Sheet) string {
	own := false
	sheet.Walk(&s.Root, func(it sheet.Item) {
		switch it := it.(type) {
		case *sheet.Text:
			own = own || it.Ink.Own()
		case *sheet.Path:
			own = own || it.Style.Stroke.Own() || it.Style.Fill.Own()
		}
	})
	if own {
		return ";background:#fff;color:#000"
	}
	return ""
}

// draw writes a sheet as large as it may stand on the page; a narrow screen shrinks it.
func (d *pen) draw(s *sheet.Sheet, label string) (template.HTML, error) {
	if err := s.Finite(); err != nil {
		return "", err
	}
	var b strings.Builder
	fmt.Fprintf(&b, `<svg class="%s" width="%d" height="%d" viewBox="0 0 %s %s" role="img" aria-label="%s"`,
		d.class(fmt.Sprintf("min-width:%dpx", leastWidth(s))+paper(s)), int(s.W*pxPerMM+0.5), int(s.H*pxPerMM+0.5), number(s.W), number(s.H), template.HTMLEscapeString(clean(label)))
	if d.plain {
		b.WriteString(` font-family="` + template.HTMLEscapeString(fonts.Family) + `"`)
	}
	b.WriteByte('>')
	d.group(&b, &s.Root)
	b.WriteString("</svg>")
	return template.HTML(b.String()), nil
}

func (d *pen) group(b *strings.Builder, g *sheet.Group) {
	measure := g.Class == "measure"
	if measure {
		fmt.Fprintf(b, `<g data-m="%s">`, template.HTMLEscapeString(clean(g.ID)))
	}
	for i := 0; i < len(g.Items); i++ {
		switch it := g.Items[i].(type) {
		case *sheet.Group:
			d.group(b, it)
		case *sheet.Path:
			rule := pathRule(it)
			if rule == "" {
				continue
			}
			fmt.Fprintf(b, `<path %s d="`, d.look(rule))
			path(b, it)
			for i+1 < len(g.Items) { // the same pen draws on
				next, ok := g.Items[i+1].(*sheet.Path)
				if !ok || pathRule(next) != rule {
					break
				}
				path(b, next)
				i++
			}
			b.WriteString(`"/>`)
		case *sheet.Text:
			d.text(b, it, measure)
		}
	}
	if measure {
		b.WriteString("</g>")
	}
}

func pathRule(p *sheet.Path) string {
	if !p.Visible() {
		return ""
	}
	s := p.Style.Drawn()
	rule := "fill:" + ink(s.Fill)
	if s.Stroke == sheet.None {
		return rule
	}
	rule += ";stroke:" + ink(s.Stroke) + ";stroke-width:" + number(s.Width)
	if len(s.Dash) > 0 {
		var all []string
		for _, v := range s.Dash {
			all = append(all, number(v))
		}
		rule += ";stroke-dasharray:" + strings.Join(all, " ")
	}
	return rule
}

// mixed begins a colour that is a part of the page's own.
const mixed = "color-mix(in srgb,currentColor "

// ink is a colour of the sheet in those of the page.
func ink(k sheet.Ink) string {
	if k.Own() {
		r, g, b := k.RGB()
		return fmt.Sprintf("#%02x%02x%02x", r, g, b)
	}
	switch k {
	case sheet.None, sheet.Paper:
		return "none"
	case sheet.Tint:
		return mixed + "8%,transparent)"
	case sheet.Pale:
		return mixed + "18%,transparent)"
	case sheet.Mid:
		return mixed + "32%,transparent)"
	case sheet.Grey:
		return mixed + "65%,transparent)"
	}
	return "currentColor"
}

// path writes path data, places after the first one from the last: they are
// shorter, and sums of hundredths are exact in whole numbers.
func path(b *strings.Builder, p *sheet.Path) {
	var at, start [2]int64
	put := func(verb byte, pts []sheet.Point, relative bool) {
		b.WriteByte(verb)
		from := at
		for i, pt := range pts {
			x, y := hundredths(pt.X), hundredths(pt.Y)
			at = [2]int64{x, y}
			if relative {
				x, y = x-from[0], y-from[1]
			}
			b.WriteString(short(x))
			if y >= 0 {
				b.WriteByte(' ')
			}
			b.WriteString(short(y))
			if i+1 < len(pts) {
				b.WriteByte(' ')
			}
		}
	}
	for i := range p.Segs {
		s := &p.Segs[i]
		switch s.Verb {
		case sheet.Move:
			put('M', s.P[:1], false)
			start = at
		case sheet.Line:
			put('l', s.P[:1], true)
		case sheet.Cubic:
			put('c', s.P[:3], true)
		case sheet.Close:
			b.WriteByte('z')
			at = start
		}
	}
}

func hundredths(v float64) int64 {
	if v < 0 {
		return -int64(-v*100 + 0.5)
	}
	return int64(v*100 + 0.5)
}

func short(h int64) string { return strconv.FormatFloat(float64(h)/100, 'f', -1, 64) }

func number(v float64) string { return short(hundredths(v)) }

// text writes a text; that of a measurement has its units apart.
func (d *pen) text(b *strings.Builder, t *sheet.Text, measure bool) {
	shown := fonts.Shown(t.Face, t.S)
	if !t.Visible() || shown == "" {
		return
	}
	if d.texts[t.Face] == nil {
		d.faces = append(d.faces, t.Face)
	}
	d.texts[t.Face] = append(d.texts[t.Face], shown)
	rule := "font-size:" + number(t.Size) + "px;fill:" + ink(t.Ink) + weight(t.Face)
	if !t.Face.House() {
		rule += ";font-family:" + d.family(t.Face)
	}
	switch t.Anchor {
	case sheet.Middle:
		rule += ";text-anchor:middle"
	case sheet.End:
		rule += ";text-anchor:end"
	}
	fmt.Fprintf(b, `<text %s x="%s" y="%s"`, d.look(rule), number(t.At.X), number(t.At.Y))
	if a := sheet.Quantise(t.Angle); a != 0 {
		fmt.Fprintf(b, ` transform="rotate(%s %s %s)"`, number(-a), number(t.At.X), number(t.At.Y))
	}
	b.WriteByte('>')
	if measure || t.Class == "label" {
		d.label(b, shown)
	} else {
		b.WriteString(template.HTMLEscapeString(shown))
	}
	b.WriteString("</text>")
}

// inUnit is a value at the beginning of a label, its unit, and the stroke before the same in the other unit.
var inUnit = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(.*? (cm|in))\b( /(?: |$))?`) })

// label writes a value with each unit apart: 42.5 cm / 16¾ in, or one of the two, behind its name or alone.
func (d *pen) label(b *strings.Builder, s string) {
	if i := strings.LastIndex(s, ": "); i >= 0 {
		b.WriteString(template.HTMLEscapeString(s[:i+2]))
		s = s[i+2:]
	}
	span := func(class, text string) {
		if text != "" {
			fmt.Fprintf(b, `<tspan class="%s-%s">%s</tspan>`, d.p, class, template.HTMLEscapeString(text))
		}
	}
	for m := inUnit().FindStringSubmatch(s); m != nil; m = inUnit().FindStringSubmatch(s) {
		span(m[2], m[1])
		span("both", m[3])
		s = s[len(m[0]):]
	}
	b.WriteString(template.HTMLEscapeString(s))
}
