// Package html writes the content of a pattern's page as one self-contained HTML
// file, or as a piece to put into any other page. A person chooses her size and
// unit, and every number and drawing follows: by style sheet alone, so that it
// works where no script may run. Nothing is fetched. It decides nothing.
package html

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"errors"
	"fmt"
	"hash/crc32"
	"html/template"
	"io"
	"maps"
	"regexp"
	"strings"
	"sync"

	"flatwright/layout/document"
	"flatwright/layout/sheet"
	"flatwright/layout/table"
	"flatwright/schematic/units"
)

// Page is what a page shows.
type Page struct {
	Content  *document.Content
	Drawings []document.Drawing
	Photos   []Photo
	Charts   []document.Drawing // stitch charts, for each size or for all
	Lang     string             // BCP 47; empty: en
	Prefix   string             // of every class and id: letters, digits and hyphens, a letter first; empty: fw
	Snippet  bool               // an element for another page instead of a whole one
}

// Photo is a photograph: an image file of the media type Kind, W by H pixels, and what it shows.
type Photo struct {
	Shows, Kind string
	W, H        int
	Data        []byte
}

// ErrPrefix is for a prefix that could not name a class.
var ErrPrefix = errors.New("a prefix has letters, digits and hyphens, and begins with a letter")

//go:embed page.tmpl
var pageText string

//go:embed page.css
var ownCSS string

//go:embed whole.css
var wholeCSS string

//go:embed page.js
var ownScript string

// pageTemplate is parsed by the first page, not by every start of the program.
var pageTemplate = sync.OnceValue(func() *template.Template { return template.Must(template.New("page").Parse(pageText)) })

// Write writes the page. It returns ErrPrefix, sheet.ErrNotFinite, or w's error.
func Write(w io.Writer, p Page) error {
	if p.Prefix == "" {
		p.Prefix = "fw"
	}
	if p.Lang = sheet.LanguageTag(p.Lang); p.Lang == "" {
		p.Lang = "en"
	}
	if !validPrefix(p.Prefix) {
		return ErrPrefix
	}
	v, err := newView(p)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := pageTemplate().Execute(&b, v); err != nil {
		return err
	}
	_, err = w.Write(lean(b.Bytes()))
	return err
}

func validPrefix(s string) bool {
	for i, r := range s {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		if !letter && (i == 0 || r != '-' && (r < '0' || r > '9')) {
			return false
		}
	}
	return len(s) <= 80
}

// lean leaves out indentation and empty lines, which come of the template.
func lean(b []byte) []byte {
	var out bytes.Buffer
	for line := range bytes.Lines(b) {
		if line = bytes.TrimLeft(line, " \t"); len(bytes.TrimSpace(line)) > 0 {
			out.Write(line)
		}
	}
	return out.Bytes()
}

// view is what the template sees.
type view struct {
	*document.Content
	P       string // prefix
	Lang    string
	Snippet bool
	CSS     template.CSS
	Script  template.JS
	Policy  string
	About   string
	Sizes   []choice
	Units   []choice
	Line    template.HTML // the sizes in the trade's line
	Fit     []fact
	Facts   []fact
	Tables  []group
	Photos  []photo
	Drawn   []drawn
	Charts  []drawn
	Rows    []written
	Short   []fact
	Special []template.HTML
	Notes   []template.HTML
	Finish  []template.HTML
	Careful []template.HTML
	Mended  []template.HTML
	Step    string

	UnitNames template.HTML
	Columns   int
}

type photo struct {
	Photo
	URL template.URL
}

type choice struct{ ID, Name, Value string }

type fact struct {
	Name  template.HTML
	Lines []template.HTML
}

// written are the rows as one size works them, or as they are told for all sizes. Without the
// style sheet only those of all sizes are shown.
type written struct {
	Class    string
	Hidden   bool
	Sections []section
}

type section struct {
	Name  string
	Lines []line
}

// told is how a line begins that there is nothing to do for.
var told = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?i:notes?|terms|sizes?|abbreviations|gauge|tension|materials|special stitch(?:es)?)\b[^.]{0,20}:`)
})

// line is a row with the name of its box to tick, nothing if it only tells something.
type line struct {
	ID   string
	HTML template.HTML
}

type group struct {
	Name string
	Rows []row
}

type row struct {
	ID, Name string
	Letters  []mark
	Cells    []cell
}

// mark is a letter on a drawing; Class says of which size's.
type mark struct{ Class, Letter string }

type cell struct {
	Class string
	In    template.HTML // the length in each unit
}

type drawn struct {
	Class, About string
	Hidden       bool // without the style sheet
	Figures      []figure
	Lettered     bool
	Key          []sign
}

// sign is one of a key: beside the words that say what it means, or with them in it.
type sign struct {
	SVG   template.HTML
	Words string
}

type figure struct {
	Name string
	Wide bool // wider than the screen of a telephone
	SVG  template.HTML
	Turn bool // it is seen from its right side on
}

func newView(p Page) (*view, error) {
	c := p.Content
	v := &view{Content: c, P: p.Prefix, Lang: p.Lang, Snippet: p.Snippet, Columns: c.Sizes.Len() + 2}
	w := &words{p: p.Prefix, c: c}
	v.Sizes = []choice{{"all", "All sizes", ""}}
	if c.Sizes.Len() < 2 {
		v.Sizes = nil
	}
	for i, name := range c.Sizes.Names {
		if v.Sizes != nil {
			v.Sizes = append(v.Sizes, choice{fmt.Sprintf("s%d", i), name, name})
		}
	}
	v.Units = []choice{{"both", "Both", ""}}
	for _, u := range c.Units() {
		v.Units = append(v.Units, choice{u.String(), map[units.Unit]string{units.CM: "Centimetres", units.Inch: "Inches"}[u], u.String()})
	}
	v.Line = w.text(document.Text{{Counts: c.Sizes.Names}})
	v.Fit, v.Facts, v.Short = w.facts(c.Fit), w.facts(c.Facts), w.facts(c.Abbreviations)
	v.Special, v.Notes, v.Finish, v.Careful, v.Mended = w.texts(c.Special), w.texts(c.Notes), w.texts(c.Finishing), w.texts(c.Care), w.texts(c.Corrections)
	v.Rows = v.written(w)
	step := map[units.Unit]string{units.CM: units.Decimal(c.Steps.CM, 3) + " cm", units.Inch: units.Mixed(c.Steps.Inch) + " in"}
	v.Step = "to the nearest " + step[c.Units()[0]] + " and " + step[c.Units()[1]]
	v.UnitNames = v.inUnits(units.Unit.String)
	v.About = fmt.Sprintf("%s: schematic, finished measurements and materials in %s", c.Title, count(c.Sizes.Len(), "size"))
	for _, f := range p.Photos {
		// the data's own letters can't leave an address, and the kind is the writer's caller's
		v.Photos = append(v.Photos, photo{f, template.URL("data:" + f.Kind + ";base64," + base64.StdEncoding.EncodeToString(f.Data))})
	}
	pen := newPen(p.Prefix)
	for _, d := range p.Drawings {
		one, err := v.drawing(d, pen)
		if err != nil {
			return nil, err
		}
		v.Drawn = append(v.Drawn, one)
	}
	for _, d := range p.Charts {
		one, err := v.drawing(d, pen)
		if err != nil {
			return nil, err
		}
		v.Charts = append(v.Charts, one)
	}
	v.tables(p.Drawings)
	v.style(pen)
	return v, nil
}

func count(n int, what string) string {
	if n == 1 {
		return "one " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// written are the rows: those of all sizes, then each size's.
func (v *view) written(w *words) []written {
	if len(v.Content.Rows) == 0 {
		return nil
	}
	n := v.Content.Sizes.Len()
	if n < 2 {
		n = 0
	}
	var out []written
	for size := -1; size < n; size++ {
		one := written{Class: v.classOf(size), Hidden: size >= 0}
		at := 0
		for _, s := range v.Content.RowsFor(size) {
			sec := section{Name: s.Name}
			for _, html := range w.texts(s.Lines) {
				at++
				id := fmt.Sprintf("%s-t%d-%d", v.P, size+1, at)
				if told().MatchString(string(html)) {
					id = ""
				}
				sec.Lines = append(sec.Lines, line{id, html})
			}
			one.Sections = append(one.Sections, sec)
		}
		out = append(out, one)
	}
	return out
}

// foreign is how much wider a sign with its words is than its words in the house's face need: on a page that keeps no
// style sheet they stand in another one.
const foreign = 1.15

func (v *view) drawing(d document.Drawing, pen *pen) (drawn, error) {
	out := drawn{Class: v.classOf(d.Size), Hidden: d.Size >= 0 && v.Content.Sizes.Len() > 1, About: d.Note}
	tell := "."
	if d.Scale != "" {
		tell = ". Its measurements are in the table."
	}
	who := "all sizes, by letter"
	if d.Size >= 0 {
		who = "size " + v.Content.Sizes.Names[d.Size]
	}
	pen.plain = !out.Hidden
	for _, f := range d.Figures {
		svg, err := pen.draw(f.Sheet, f.Name+", "+who+tell)
		if err != nil {
			return out, err
		}
		out.Figures = append(out.Figures, figure{f.Name, leastWidth(f.Sheet) > telephone, svg, f.FromRight})
		out.Lettered = out.Lettered || len(f.Letters) > 0
	}
	for _, k := range d.Key {
		one, words, label := *k, "", "Sign on the drawing: "+k.Title
		if bare, ok := withoutWords(k); ok {
			one, words, label = *bare, k.Title, "Sign on the drawing"
		} else {
			one.W *= foreign
		}
		svg, err := pen.draw(&one, label)
		if err != nil {
			return out, err
		}
		out.Key = append(out.Key, sign{svg, words})
	}
	return out, nil
}

// withoutWords is a sign of a key without the words beside it, which then stand in the page's own text and wrap. It reports
// false for a sign that has letters of its own, or is none but words.
func withoutWords(k *sheet.Sheet) (*sheet.Sheet, bool) {
	var words []string
	var strip func(g *sheet.Group) *sheet.Group
	strip = func(g *sheet.Group) *sheet.Group {
		out := *g
		out.Items = nil
		for _, it := range g.Items {
			switch it := it.(type) {
			case *sheet.Text:
				words = append(words, it.S)
			case *sheet.Group:
				out.Items = append(out.Items, strip(it))
			default:
				out.Items = append(out.Items, it)
			}
		}
		return &out
	}
	bare := strip(&k.Root)
	lo, hi, ok := sheet.Bounds(bare)
	if !ok || strings.Join(words, " ") != k.Title || len(words) > 1 {
		return nil, false
	}
	const around = 0.3 // mm
	out := *k
	out.W, out.H = hi.X-lo.X+2*around, hi.Y-lo.Y+2*around
	out.Root = *sheet.Moved(bare, around-lo.X, around-lo.Y)
	return &out, true
}

// classOf is the class of what belongs to a size; -1 is all sizes.
func (v *view) classOf(size int) string {
	switch {
	case v.Content.Sizes.Len() < 2:
		return v.P + "-only"
	case size < 0:
		return v.P + "-all"
	}
	return fmt.Sprintf("%s-one %s-%d", v.P, v.P, size)
}

func (v *view) tables(all []document.Drawing) {
	letter := map[string]string{}
	for _, d := range all {
		for _, f := range d.Figures {
			if d.Size < 0 || len(all) == 1 {
				maps.Copy(letter, f.Letters)
			}
		}
	}
	for _, g := range v.Content.Groups(letter) {
		if g.Name == table.Written {
			continue // it stands at the head of the page
		}
		out := group{Name: g.Name}
		for _, r := range g.Rows {
			out.Rows = append(out.Rows, row{ID: r.ID, Name: r.Name, Letters: v.letters(all, r), Cells: v.cells(r)})
		}
		v.Tables = append(v.Tables, out)
	}
}

// letters are those that a row of the table has on the drawings.
func (v *view) letters(all []document.Drawing, r table.Row) []mark {
	var out []mark
	for _, d := range all {
		for _, f := range d.Figures {
			if l := letterOf(f, r); l != "" {
				out = append(out, mark{v.classOf(d.Size), l})
			}
		}
	}
	return out
}

func (v *view) cells(r table.Row) []cell {
	t := v.Content.Table
	var out []cell
	for i, c := range r.Cells {
		class := fmt.Sprintf("%s-%d", v.P, i)
		if len(t.Sizes) < 2 {
			class = v.P + "-only"
		}
		out = append(out, cell{class, v.inUnits(func(u units.Unit) string { return c.Text(u, t.Steps) })})
	}
	return out
}

// inUnits is what a text is in each unit, the authored one first, one under the other on a page that keeps no style sheet too.
func (v *view) inUnits(text func(u units.Unit) string) template.HTML {
	var out []string
	for _, u := range v.Content.Units() {
		out = append(out, fmt.Sprintf(`<div class="%s-%s">%s</div>`, v.P, u, template.HTMLEscapeString(clean(text(u)))))
	}
	return template.HTML(strings.Join(out, " ")) // whoever reads the text alone has a gap between them
}

// letterOf is the letter of a row on a figure. A table tells measurements that are
// alike once, so that the figure may know the row by the name of its twin.
func letterOf(f document.Figure, r table.Row) string {
	for _, id := range append([]string{r.ID}, r.Also...) {
		if l := f.Letters[id]; l != "" {
			return l
		}
	}
	return ""
}

// style makes the style sheet, and the policy that allows it and nothing else.
func (v *view) style(pen *pen) {
	var b strings.Builder
	if !v.Snippet {
		b.WriteString(wholeCSS)
	}
	b.WriteString(ownCSS)
	n := v.Content.Sizes.Len()
	if n > 1 {
		for i := range n {
			var others []string
			for j := range n {
				if j != i {
					others = append(others, fmt.Sprintf(".@-%d", j))
				}
			}
			fmt.Fprintf(&b, ".@:has(#@-s%d:checked) :is(%s){display:none}\n.@:has(#@-s%d:checked) :is(span,td).@-%d{font-weight:700}\n", i, strings.Join(others, ","), i, i)
		}
	}
	b.WriteString(pen.css())
	css := "\n" + lineUp(b.String(), v.P)
	script := "\n" + strings.NewReplacer("@ticks", fmt.Sprintf("%s-%08x", v.P, v.rowsSum()), "@", v.P).Replace(string(lean([]byte(ownScript))))
	v.CSS, v.Script = template.CSS(css), template.JS(script)
	v.Policy = "default-src 'none'; style-src '" + hashOf(css) + "'; script-src '" + hashOf(script) + "'; img-src 'self' data:; font-src data:; base-uri 'none'; form-action 'none'"
}

// hashOf is how a policy names a text that it allows (CSP 3, 2.3.1).
func hashOf(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

// rowsSum tells the rows of one edition from those of another: ticks belong to rows.
func (v *view) rowsSum() uint32 {
	h := crc32.NewIEEE()
	for _, w := range v.Rows {
		for _, s := range w.Sections {
			for _, l := range s.Lines {
				_, _ = io.WriteString(h, string(l.HTML)) // a sum in memory takes everything
			}
		}
	}
	return h.Sum32()
}

// lineUp puts the prefix in the place of the sign @ in selectors, and leaves out indentation, as
// the page is written.
func lineUp(css, prefix string) string {
	css = strings.NewReplacer(".@", "."+prefix, "#@", "#"+prefix, "=@", "="+prefix).Replace(css)
	return string(lean([]byte(css)))
}

// With is what the template of a list of facts sees.
func (v *view) With(facts []fact) any {
	return struct {
		P     string
		Facts []fact
	}{v.P, facts}
}

// WithLines is what the template of a list of lines sees.
func (v *view) WithLines(lines []template.HTML) any {
	return struct {
		P     string
		Lines []template.HTML
	}{v.P, lines}
}

// WithDrawn is what the template of drawings sees.
func (v *view) WithDrawn(all []drawn) any {
	return struct {
		P     string
		Drawn []drawn
	}{v.P, all}
}

// Head is what the template of a heading sees: one level deeper where the page is a
// part of another.
func (v *view) Head(id, text string) any {
	return struct {
		Snippet  bool
		ID, Text string
	}{v.Snippet, v.P + "-" + id, text}
}

// Sizes0 are the names of the sizes that have columns.
func (v *view) Sizes0() []string { return v.Content.Sizes.Names }
