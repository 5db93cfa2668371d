// Package document makes the pages of a pattern: first what they say, for all
// sizes and as plain data (Content), which a web page and a printed one share; then
// that content laid over sheets of paper with running heads, page numbers and
// bookmarks; and pieces at life size over as many sheets as they take. It draws no
// schematics itself and knows nothing of files or formats.
package document

import (
	"slices"
	"strings"

	"flatwright/layout/table"
	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/stitch"
	"flatwright/schematic/units"
)

// Content is what the pages of a pattern say, for all sizes.
type Content struct {
	Title, Designer, Note string
	Sizes                 expr.Sizes
	Terms                 string
	Unit                  units.Unit // as authored; it stands first
	Steps                 units.Steps
	Fit                   []Fact // to fit, finished size, ease
	Facts                 []Fact // gauge, materials and the like
	Table                 table.Table
	Worn                  table.Group       // of the garment as it is worn
	Rows                  []Section         // written rows
	RowsOf                map[int][]Section // written rows of one size, where they are written for it
	Abbreviations         []Fact
	Special               []Text
	Notes                 []Text
	Finishing             []Text
	Care                  []Text
	Cautions              []string
	Photos                []Photo
	Edition               string
	Corrections           []Text
}

// Units are both units, the authored one first.
func (c *Content) Units() []units.Unit {
	return c.Unit.AndOther()
}

// Fact is a name with what there is to say of it, a line or several.
type Fact struct {
	Name  string
	Lines []Text
}

// Section is a stretch of written rows under a heading.
type Section struct {
	Name  string
	Lines []Text
}

// Of is the content of the pages of gs, the garments of one pattern in all its
// sizes, in order. The written rows are text, and may be empty. abbreviations are
// those that the rows use. It panics if gs is empty: there is nothing to say.
func Of(gs []*schematic.Garment, text []WrittenSection, abbreviations []Fact) *Content {
	p := gs[0].Pattern
	r := newReader(p.Sizes)
	c := &Content{
		Title: p.Title, Designer: p.Designer, Note: p.Note, Sizes: p.Sizes, Terms: p.Terms.String(), Unit: p.Units, Steps: p.Steps,
		Table: table.Of(gs), Worn: table.Worn(gs), Abbreviations: abbreviations, Edition: p.Edition, Cautions: cautions(p),
		Special: r.texts(p.Special), Notes: r.texts(p.Notes), Finishing: r.texts(p.Making), Care: r.texts(p.Care), Corrections: r.texts(p.Mended),
	}
	c.Fit = fit(p, c.Table)
	c.Facts = facts(p, gs, r)
	c.Rows = r.sections(text)
	return c
}

// Groups are the measurements, those of the garment as it is worn before its pieces, each in the order of their letters, by ID, on the drawing.
func (c *Content) Groups(letter map[string]string) []table.Group {
	var all []table.Group
	for _, g := range c.Table.Groups {
		all = append(all, g.InLetters(letter))
	}
	if len(c.Worn.Rows) == 0 {
		return all
	}
	at := 0
	if len(all) > 0 && all[0].Name == table.ToFit {
		at = 1
	}
	return slices.Insert(all, at, c.Worn.InLetters(letter))
}

// Put sets the rows as they are written for one size.
func (c *Content) Put(size int, text []WrittenSection) {
	if c.RowsOf == nil {
		c.RowsOf = map[int][]Section{}
	}
	c.RowsOf[size] = newReader(c.Sizes).sections(text)
}

func (r *reader) sections(text []WrittenSection) []Section {
	var out []Section
	for _, w := range text {
		out = append(out, Section{Name: w.Name, Lines: r.texts(w.Lines)})
	}
	return out
}

// WrittenSection is a stretch of written rows as text.
type WrittenSection struct {
	Name  string
	Lines []string
}

func (r *reader) texts(all []string) []Text {
	var out []Text
	for _, s := range all {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, r.text(s))
		}
	}
	return out
}

// fit is what a person looks at first to choose her size: the body that it fits, what the
// garment measures, and the difference.
func fit(p *schematic.Pattern, t table.Table) []Fact {
	var body, made, ease []Text
	for _, g := range t.Groups {
		switch g.Name {
		case table.ToFit:
			for _, row := range g.Rows {
				body = append(body, measured(row.Name, row.Cells))
				if d := difference(finished(t, row.Name), row.Cells); d != nil {
					ease = append(ease, measured(row.Name, d))
				}
			}
		case table.Written:
			for _, row := range g.Rows {
				made = append(made, measured(row.Name, row.Cells))
			}
		}
	}
	var out []Fact
	for _, f := range []Fact{{table.ToFit, body}, {"Finished size", made}, {"Ease", ease}} {
		if len(f.Lines) > 0 {
			out = append(out, f)
		}
	}
	if p.Sample >= 0 && p.Sample < p.Sizes.Len() {
		out = append(out, Fact{"Sample", []Text{Words("size " + p.Sizes.Names[p.Sample])}})
	}
	return out
}

func measured(name string, cells []table.Cell) Text {
	return Text{{S: name + " "}, {Lengths: cells}}
}

// finished are the cells of the finished measurement of that name: as the
// designer wrote it, or as the counts make it all round.
func finished(t table.Table, name string) []table.Cell {
	var made []table.Cell
	for _, g := range t.Groups {
		for _, row := range g.Rows {
			switch {
			case g.Name == table.ToFit:
			case g.Name == table.Written && strings.EqualFold(row.Name, name):
				return row.Cells
			case made == nil && strings.EqualFold(row.Name, name+", around"):
				made = row.Cells
			}
		}
	}
	return made
}

// difference is what the garment measures beyond the body, a range if the body is one.
func difference(made, body []table.Cell) []table.Cell {
	if made == nil {
		return nil
	}
	out := make([]table.Cell, len(made))
	for i, m := range made {
		if m.Has && body[i].Has {
			out[i] = table.Cell{Has: true, Low: m.Low.Sub(body[i].High), High: m.High.Sub(body[i].Low)}
		}
	}
	return out
}

// facts are gauge and materials.
func facts(p *schematic.Pattern, gs []*schematic.Garment, r *reader) []Fact {
	var out []Fact
	put := func(name string, lines []Text) {
		if len(lines) > 0 {
			out = append(out, Fact{name, lines})
		}
	}
	var gauges []Text
	for _, g := range p.Gauges {
		gauges = append(gauges, Words(gaugeText(g, p, len(p.Gauges) > 1)))
	}
	gauges = append(gauges, Words("All of blocked fabric: block the swatch as you will block the garment, and let it rest before you measure."))
	name := "Gauge"
	if p.Terms == schematic.UK {
		name = "Tension"
	}
	put(name, gauges)
	put("Yarn", append(materials(p.Yarn, r), reckoned(p, gs)...))
	put("Tools", materials(p.Tools, r))
	put("Notions", materials(p.Notions, r))
	put("Terms", []Text{Words("stitches are named in " + p.Terms.String() + " terms")})
	return out
}

// nominal are the two lengths of a swatch that go for one another; the counts are worked out with the first.
var nominal = map[units.Unit]string{units.CM: "10 cm / 4 in", units.Inch: "4 in / 10 cm"}

// oneLength is a gauge for who works out a measurement: only one of the two lengths makes it exactly.
func oneLength(gauge Text) Text {
	s := gauge[0].S
	for _, pair := range nominal {
		first, _, _ := strings.Cut(pair, " /")
		s = strings.Replace(s, pair, first, 1)
	}
	return Words(s)
}

func gaugeText(g schematic.Gauge, p *schematic.Pattern, named bool) string {
	rows := "rows"
	if g.Rounds {
		rows = "rounds"
	}
	over := units.Steps{}.With(g.Over, g.OverUnit)
	if g.Over.Eq(units.Int(100)) && g.OverUnit == units.CM || g.Over.Eq(units.Of(units.Int(4), units.Inch)) {
		over = nominal[g.OverUnit]
	}
	text := units.Mixed(g.Stitches) + " sts and " + units.Mixed(g.Rows) + " " + rows + " over " + over
	if g.Stitch != "" {
		text += " in " + spelled(g.Stitch, p.Terms)
	}
	if g.Stretched {
		text += ", stretched"
	}
	if named && g.Name != "" {
		text = g.Name + ": " + text
	}
	return text
}

// spelled is the stitch with its whole name behind its abbreviation.
func spelled(name string, t schematic.Terms) string {
	first, rest, _ := strings.Cut(name, " ")
	if s, ok := stitch.Lookup(strings.ToLower(first), stitch.Terms(t)); ok && s.Name(stitch.Terms(t)) != first {
		first += " (" + s.Name(stitch.Terms(t)) + ")"
	}
	return strings.TrimSpace(first + " " + rest)
}

func materials(all []schematic.Material, r *reader) []Text {
	var out []Text
	for _, m := range all {
		t := r.text(m.Text)
		if !m.Amount.IsZero() {
			t = append(t.and(": "), Span{Counts: numbers(m.Amount, r.sizes.Len())})
		}
		out = append(out, t)
	}
	return out
}

func numbers(g expr.Graded, n int) []string {
	out := make([]string, n)
	for i := range out {
		out[i] = expr.Dash
		if v, ok := g.At(i); ok {
			out[i] = units.Mixed(v)
		}
	}
	return out
}
