// Package svg writes a sheet as one SVG file or element, in millimetres: live text
// with the glyphs that it uses, or text as outlines; groups with their names and
// descriptions; no script, and no style that could reach another drawing, so that any
// number of them may stand in one page. It decides nothing.
package svg

import (
	"bufio"
	"bytes"
	"cmp"
	"encoding/base64"
	"io"
	"math"
	"strconv"
	"strings"

	svgo "github.com/ajstarks/svgo/float"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// Write writes the sheet as a whole SVG file, with the glyphs of its texts as faces of
// its own, for a device that has no face as wide. It returns the first error of w, or
// sheet.ErrNotFinite before anything is written.
func Write(w io.Writer, s *sheet.Sheet) error { return write(w, s, embedded) }

// WriteOutlined is Write with every text as outlines, for programs that know no face
// within a file; readers of screens are told the words.
func WriteOutlined(w io.Writer, s *sheet.Sheet) error { return write(w, s, outlined) }

// Inline writes the sheet as an svg element to stand in an HTML page that has the faces of
// the house: without the XML declaration, without a style, a text in any other face as outlines. Give
// each sheet of a page its own Prefix.
func Inline(w io.Writer, s *sheet.Sheet) error {
	return write(&fromElement{w: w}, s, inPage)
}

// words is how a drawing brings its texts.
type words int

const (
	embedded words = iota
	outlined
	inPage
)

func write(w io.Writer, s *sheet.Sheet, how words) error {
	if err := s.Finite(); err != nil {
		return err
	}
	out := bufio.NewWriterSize(w, 32<<10)
	d := &drawing{Writer: out, canvas: svgo.New(out), prefix: s.Prefix, ids: map[string]bool{}, how: how, families: map[fonts.Face]string{}}
	texts := map[fonts.Face][]string{}
	var faces []fonts.Face
	sheet.Walk(&s.Root, func(it sheet.Item) {
		switch it := it.(type) {
		case *sheet.Group:
			d.ids[it.ID] = true
		case *sheet.Text:
			if !it.Visible() {
				return
			}
			if texts[it.Face] == nil {
				faces = append(faces, it.Face)
			}
			texts[it.Face] = append(texts[it.Face], it.S)
		}
	})
	rules := ""
	if how == embedded {
		rules = d.embed(faces, texts)
	}
	d.open(s, rules)
	d.group(&s.Root)
	d.canvas.End()
	return out.Flush()
}

// embed gives rules for the parts of the faces that the texts need (CSS Fonts 3, section 4;
// WOFF 1.0). Their names are made of their bytes, so that no two drawings in one page part.
func (d *drawing) embed(faces []fonts.Face, texts map[fonts.Face][]string) string {
	var rules strings.Builder
	for _, f := range faces {
		sub := fonts.SubsetOf(f, texts[f]...)
		d.families[f] = `"` + sub.Name + `", ` + fonts.Family
		rules.WriteString(`@font-face{font-family:"` + sub.Name + `"` + look(f, ";font-weight:", ";font-style:", "") +
			`;src:url(data:font/woff;base64,` + base64.StdEncoding.EncodeToString(sub.WOFF()) + `) format("woff")}`)
	}
	return rules.String()
}

// look is what tells the weight or the style of a face, if it is not the usual one.
func look(f fonts.Face, weight, style, end string) string {
	switch f {
	case fonts.Bold:
		return weight + "700" + end
	case fonts.Italic:
		return style + "italic" + end
	}
	return ""
}

// drawing is one sheet on its way out. The writer keeps the first error.
type drawing struct {
	*bufio.Writer
	canvas *svgo.SVG
	prefix string
	ids    map[string]bool // the sheet's own, without prefix
	buf    []byte          // for path data and attributes
	how    words
	// families are the faces that the file brings, each with the stack behind it.
	families map[fonts.Face]string
}

func (d *drawing) open(s *sheet.Sheet, rules string) {
	role := `role="img"`
	if d.how == outlined { // what is within is told too (WAI-ARIA Graphics Module)
		role = `role="graphics-document document"`
	}
	attributes := []string{
		role,
		// What a presentation attribute can't say; nothing of a page around may
		// reach the text, whose box is reserved.
		`style="font-kerning:normal;font-variant-ligatures:none;text-transform:none"`,
		`font-family="` + escaped(cmp.Or(d.families[fonts.Regular], fonts.Family)) + `"`,
		`font-weight="400" font-style="normal" letter-spacing="0" word-spacing="0" direction="ltr"`,
		`text-rendering="geometricPrecision"`,
		`fill="none" stroke="none" stroke-linecap="round" stroke-linejoin="round"`,
	}
	if lang := sheet.LanguageTag(s.Lang); lang != "" {
		attributes = append(attributes, `lang="`+lang+`" xml:lang="`+lang+`"`)
	}
	title, desc := d.id("sheet-title"), d.id("sheet-desc")
	switch {
	case s.Title != "" && s.Desc != "":
		attributes = append(attributes, `aria-labelledby="`+title+` `+desc+`"`)
	case s.Title != "":
		attributes = append(attributes, `aria-labelledby="`+title+`"`)
	}
	w, h := sheet.Quantise(s.W), sheet.Quantise(s.H)
	viewBox := `viewBox="0 0 ` + number(w) + ` ` + number(h) + `"`
	d.canvas.Startunit(w, h, "mm", append([]string{viewBox}, attributes...)...)
	d.named("title", title, s.Title)
	d.named("desc", desc, s.Desc)
	d.canvas.Rect(0, 0, w, h, `class="paper" fill="#ffffff"`)
	if rules != "" {
		d.WriteString("<style>" + rules + "</style>\n")
	}
}

func (d *drawing) group(g *sheet.Group) {
	href := ""
	if safe, ok := sheet.SafeLink(g.Link); ok {
		href = safe
		if safe[0] == '#' && d.ids[safe[1:]] {
			href = "#" + d.id(safe[1:])
		}
	}
	if href != "" {
		d.WriteString(`<a xlink:href="` + escaped(href) + `">` + "\n")
	}
	d.WriteString("<g")
	if g.ID != "" {
		d.WriteString(` id="` + d.id(g.ID) + `"`)
	}
	if class := classOf(g.Class); class != "" {
		d.WriteString(` class="` + class + `"`)
	}
	d.WriteString(">\n")
	d.named("title", "", g.Title)
	d.named("desc", "", g.Desc)
	for _, it := range g.Items {
		switch it := it.(type) {
		case *sheet.Group:
			d.group(it)
		case *sheet.Path:
			d.path(it)
		case *sheet.Text:
			d.text(it)
		case *sheet.Picture:
			d.picture(it)
		}
	}
	d.canvas.Gend()
	if href != "" {
		d.canvas.LinkEnd()
	}
}

// picture writes a photograph with its file in it.
func (d *drawing) picture(p *sheet.Picture) {
	d.WriteString("<image")
	for _, a := range []struct {
		name string
		mm   float64
	}{{"x", p.At.X}, {"y", p.At.Y}, {"width", p.W}, {"height", p.H}} {
		d.WriteString(" " + a.name + `="` + strconv.FormatFloat(sheet.Quantise(a.mm), 'f', -1, 64) + `"`)
	}
	d.WriteString(` preserveAspectRatio="none" xlink:href="data:image/jpeg;base64,` + base64.StdEncoding.EncodeToString(p.JPEG) + `"/>` + "\n")
}

// named writes a title or a desc, which the library can give no id.
func (d *drawing) named(element, id, text string) {
	if text == "" {
		return
	}
	d.WriteString("<" + element)
	if id != "" {
		d.WriteString(` id="` + id + `"`)
	}
	d.WriteString(">" + escaped(text) + "</" + element + ">\n")
}

// letters are the verbs of a path in SVG.
var letters = [...]byte{sheet.Move: 'M', sheet.Line: 'L', sheet.Cubic: 'C', sheet.Close: 'Z'}

func (d *drawing) path(p *sheet.Path) {
	if !p.Visible() {
		return
	}
	b := d.buf[:0]
	for i := range p.Segs {
		s := &p.Segs[i]
		b = append(b, letters[s.Verb])
		for j, pt := range s.Points() {
			if j > 0 {
				b = append(b, ' ')
			}
			b = appendNumber(b, pt.X)
			b = append(b, ' ')
			b = appendNumber(b, pt.Y)
		}
	}
	data := string(b)
	style := p.Style.Drawn()
	b = appendClass(b[:0], p.Class)
	if style.Stroke != sheet.None {
		b = appendInk(b, "stroke", style.Stroke)
		b = append(b, ` stroke-width="`...)
		b = appendNumber(b, style.Width)
		b = append(b, '"')
	}
	if len(style.Dash) > 0 {
		b = append(b, ` stroke-dasharray="`...)
		for i, v := range style.Dash {
			if i > 0 {
				b = append(b, ' ')
			}
			b = appendNumber(b, v)
		}
		b = append(b, '"')
	}
	if style.Fill != sheet.None {
		b = appendInk(b, "fill", style.Fill)
	}
	d.canvas.Path(data, string(b[1:]))
	d.buf = b
}

func (d *drawing) text(t *sheet.Text) {
	if !t.Visible() {
		return
	}
	shown := fonts.Shown(t.Face, t.S)
	if shown == "" {
		return
	}
	if d.how == outlined || d.how == inPage && !t.Face.House() {
		d.outline(t, shown)
		return
	}
	b := appendClass(d.buf[:0], t.Class)
	b = append(b, ` font-size="`...)
	b = appendNumber(b, t.Size)
	b = append(b, '"')
	if family := d.families[t.Face]; family != "" && t.Face != fonts.Regular {
		b = append(b, ` font-family="`+escaped(family)+`"`...)
	}
	b = append(b, look(t.Face, ` font-weight="`, ` font-style="`, `"`)...)
	switch t.Anchor {
	case sheet.Middle:
		b = append(b, ` text-anchor="middle"`...)
	case sheet.End:
		b = append(b, ` text-anchor="end"`...)
	}
	// Where no face of ours is known, the words are set in another, as wide as their box (SVG 1.1, 10.5).
	b = append(b, ` textLength="`...)
	b = appendNumber(b, fonts.Width(t.Face, t.Size, shown))
	b = append(b, `" lengthAdjust="spacingAndGlyphs"`...)
	x, y := sheet.Quantise(t.At.X), sheet.Quantise(t.At.Y)
	if a := sheet.Quantise(t.Angle); a != 0 {
		b = append(b, ` transform="rotate(`...)
		b = appendNumber(b, -a)
		b = append(b, ' ')
		b = appendNumber(b, x)
		b = append(b, ' ')
		b = appendNumber(b, y)
		b = append(b, `)"`...)
	}
	b = appendInk(b, "fill", t.Ink)
	if strings.Contains(shown, "  ") || shown[0] == ' ' || shown[len(shown)-1] == ' ' {
		// On the element itself: browsers do not inherit it into a text.
		b = append(b, ` xml:space="preserve" style="white-space:pre"`...)
	}
	d.canvas.Text(x, y, shown, string(b[1:]))
	d.buf = b
}

// outline writes a text as a path, named by its words.
func (d *drawing) outline(t *sheet.Text, shown string) {
	size := sheet.Quantise(t.Size)
	curves := fonts.Outline(t.Face, shown)
	if len(curves) == 0 {
		return
	}
	left := 0.0
	switch t.Anchor {
	case sheet.Middle:
		left = -fonts.Width(t.Face, size, shown) / 2
	case sheet.End:
		left = -fonts.Width(t.Face, size, shown)
	}
	b := append(d.buf[:0], `<path role="img" aria-label="`...)
	b = append(b, escaped(shown)...)
	b = append(b, '"')
	b = appendClass(b, t.Class)
	b = append(b, ` transform="translate(`...)
	b = appendNumber(b, t.At.X)
	b = append(b, ' ')
	b = appendNumber(b, t.At.Y)
	b = append(b, ')')
	if a := sheet.Quantise(t.Angle); a != 0 {
		b = append(b, ` rotate(`...)
		b = appendNumber(b, -a)
		b = append(b, ')')
	}
	b = append(b, '"')
	b = appendInk(b, "fill", t.Ink)
	b = append(b, ` d="`...)
	for i, c := range curves {
		if c.Verb == 'M' && i > 0 {
			b = append(b, 'Z')
		}
		b = append(b, c.Verb)
		for k, p := range c.Points() {
			if k > 0 {
				b = append(b, ' ')
			}
			b = appendThousandths(b, left+p[0]*size)
			b = append(b, ' ')
			b = appendThousandths(b, p[1]*size)
		}
	}
	b = append(b, `Z"/>`+"\n"...)
	d.Write(b) //nolint:errcheck // the writer keeps its first error
	d.buf = b
}

// appendThousandths writes v to a thousandth of a mm: a letter is small.
func appendThousandths(b []byte, v float64) []byte {
	n := math.Round(v * 1000)
	if n == 0 {
		return append(b, '0')
	}
	return strconv.AppendFloat(b, n/1000, 'f', -1, 64)
}

func appendInk(b []byte, attribute string, k sheet.Ink) []byte {
	const hex = "0123456789abcdef"
	b = append(b, ' ')
	b = append(b, attribute...)
	b = append(b, `="#`...)
	r, g, bl := k.RGB()
	for _, v := range [3]int{r, g, bl} {
		b = append(b, hex[v>>4&15], hex[v&15])
	}
	return append(b, '"')
}

func appendClass(b []byte, class string) []byte {
	if class = classOf(class); class == "" {
		return b
	}
	b = append(b, ` class="`...)
	b = append(b, class...)
	return append(b, '"')
}

func number(v float64) string { return string(appendNumber(nil, v)) }

// appendNumber writes v on the 0.01 grid, without noughts that say nothing.
func appendNumber(b []byte, v float64) []byte {
	v = sheet.Quantise(v)
	if v == 0 {
		return append(b, '0') // never -0
	}
	return strconv.AppendFloat(b, v, 'f', -1, 64)
}

// fromElement drops what stands before the svg element.
type fromElement struct {
	w      io.Writer
	before []byte
	inside bool
}

func (f *fromElement) Write(p []byte) (int, error) {
	if f.inside {
		return f.w.Write(p)
	}
	f.before = append(f.before, p...)
	at := bytes.Index(f.before, []byte("<svg"))
	if at < 0 {
		return len(p), nil
	}
	f.inside = true
	if _, err := f.w.Write(f.before[at:]); err != nil {
		return 0, err
	}
	return len(p), nil
}
