package document

import (
	"strings"

	"flatwright/fonts"
	"flatwright/layout/place"
	"flatwright/layout/sheet"
	"flatwright/layout/table"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// UnitOf is a unit in which lengths are printed.
type UnitOf = units.Unit

// Options say how a document is set. The zero value is for size 0; give Size -1 for
// all sizes.
type Options struct {
	Paper  place.Paper
	Large  bool         // 18 point and up
	Little bool         // little ink: no grounds, fewer ribs
	Size   int          // the chosen size, or -1
	Alone  bool         // with a size: its numbers alone
	Units  []UnitOf     // empty: both, the authored one first
	Charts []NamedSheet // pages of charts
	Face   fonts.Face   // of the words on drawings
}

// NamedSheet is a page with its name in the outline.
type NamedSheet struct {
	Name  string
	Sheet *sheet.Sheet
}

// UsualText is the size of a handout's words, ten point in mm.
const UsualText = 3.5

// largeText is 18 point.
const largeText = place.Large

func newBuilder(c *Content, o Options) *builder {
	short, long := o.Paper.Size()
	size := UsualText
	if o.Large {
		size = largeText
	}
	p := &pages{w: short, h: long, size: size, title: c.Title, doc: sheet.Sheet{Author: c.Designer, Lang: "en"}}
	p.right = sizeWords(c, o)
	return &builder{o: o, c: c, p: p}
}

func sizeWords(c *Content, o Options) string {
	switch {
	case c.Sizes.Len() == 1:
		return "one size"
	case o.Size >= 0:
		return "size " + c.Sizes.Names[o.Size]
	}
	return "all sizes"
}

// Handout sets a pattern as pages of one paper: what it is and what is needed, its
// measurements, schematics, charts and rows, with room for notes. The error is that of a
// schematic that finds no room, a *place.TooLarge.
func Handout(gs []*schematic.Garment, c *Content, o Options) ([]*sheet.Sheet, error) {
	b := newBuilder(c, o)
	b.cover()
	b.photographs()
	b.facts(c.Fit, 38)
	b.facts(c.Facts, 38)
	b.listed("Notes", c.Notes)
	b.listed("Special stitches", c.Special)
	if len(c.Cautions) > 0 {
		b.boxed("Caution", c.Cautions)
	}
	drawn, err := schematics(gs, c, o, place.OneSize)
	if err != nil {
		return nil, err
	}
	var letter map[string]string
	if o.Size < 0 && c.Sizes.Len() > 1 {
		drawn, letter = untabled(drawn)
	}
	b.heading("Finished measurements", 0, false)
	b.measurements(letter)
	b.add(drawn...)
	for _, ch := range o.Charts {
		b.add(atom{page: headless(ch.Sheet, "Chart: "+ch.Name, true, b.p.size)})
	}
	b.instructions()
	if len(c.Abbreviations) > 0 {
		b.heading("Abbreviations, in "+c.Terms+" terms", 0, false)
		b.facts(c.Abbreviations, 24)
	}
	b.listed("Finishing", c.Finishing)
	b.listed("Care", c.Care)
	if c.Edition != "" || len(c.Corrections) > 0 {
		b.heading("Edition", 0, false)
		if c.Edition != "" {
			b.para([]run{{"Edition " + c.Edition, fonts.Regular, sheet.Black}}, inset, b.wide(), 0, 0, false)
		}
		b.list(c.Corrections)
	}
	b.p.flow(b.atoms)
	b.room("Room for notes")
	return laid(b), nil
}

// room is rules to write on, over what is left of the last page, or a page of them.
func (b *builder) room(name string) {
	least, step := 5, b.step()
	b.atoms = nil
	b.heading(name, 0, false)
	head := 0.0
	for _, a := range b.atoms {
		head += a.gap + a.high
	}
	left := int((b.p.bottom() - b.p.y - head) / step)
	if !b.p.open || left < least {
		b.atoms[0].fresh = true
		left = int((b.p.bottom() - edge - lineHigh(b.p.headSize()) - 5 - head) / step)
	}
	b.rules(left)
	b.p.flow(b.atoms)
}

func laid(b *builder) []*sheet.Sheet {
	sheets := b.p.finish()
	if b.o.Little {
		for _, s := range sheets {
			lessInk(&s.Root)
		}
	}
	return sheets
}

// cover is the title with the line that all our pages have: a measure from edge to edge.
func (b *builder) cover() {
	size := b.p.size * 2.3
	if b.o.Large {
		size = b.p.size * 1.6
	}
	wide := b.wide()
	for i, l := range wrap([]run{{b.c.Title, fonts.Bold, sheet.Black}}, size, wide) {
		a := atom{high: lineHigh(size), keep: true, draw: func(g *sheet.Group, y float64) {
			setLine(g, l, inset, y+fonts.Ascent(fonts.Bold)*size, size, "heading")
		}}
		if i == 0 {
			a.name = b.c.Title
		}
		b.add(a)
	}
	for _, s := range []string{b.c.Note, b.c.Designer} {
		if s != "" {
			b.para([]run{{s, fonts.Regular, sheet.Black}}, inset, wide, 0, 0, true)
		}
	}
	line := []run{{"Sizes ", fonts.Bold, sheet.Black}}
	if b.c.Sizes.Len() == 1 || b.o.Size >= 0 && b.o.Alone {
		line[0].s = "Size "
	}
	line = append(line, b.runs(Text{{Counts: b.c.Sizes.Names}})...)
	if b.o.Size >= 0 && !b.o.Alone && b.c.Sizes.Len() > 1 {
		line = append(line, run{"  ·  yours is ", fonts.Regular, sheet.Black}, run{b.c.Sizes.Names[b.o.Size], fonts.Bold, sheet.Black},
			run{": its numbers are bold", fonts.Regular, sheet.Black})
	}
	b.para(line, inset, wide, 0, b.p.size*0.3, true)
	b.add(atom{high: 6, keep: true, draw: func(g *sheet.Group, y float64) {
		g.Items = append(g.Items, rule(inset, y+3, inset+wide, y+3, 0.25, "heading"),
			rule(inset, y+1.5, inset, y+4.5, 0.5, "heading"), rule(inset+wide, y+1.5, inset+wide, y+4.5, 0.5, "heading"))
	}})
}

// measurements is the table of all sizes with the chosen one marked, or of the chosen
// size alone. letter are the letters that stand for them on a schematic.
func (b *builder) measurements(letter map[string]string) {
	t := b.c.Table
	g := grid{title: []string{"Measurement", ""}, mark: -1, first: 1}
	alone := b.o.Size >= 0 && b.o.Alone
	for i, name := range t.Sizes {
		if alone && i != b.o.Size {
			continue
		}
		if i == b.o.Size && !alone {
			g.mark = len(g.title)
			name = "► " + name
		}
		g.title = append(g.title, name)
	}
	for _, group := range b.c.Groups(letter) {
		if group.Name == table.Written || group.Name == table.ToFit {
			continue // on the cover
		}
		g.rows = append(g.rows, gridRow{group: group.Name})
		for _, r := range group.Rows {
			g.rows = append(g.rows, b.measured(r, letter)...)
		}
	}
	b.table(g)
}

// measured are the rows of a measurement, one a unit: its name, behind its letter if it has one, is at the first.
func (b *builder) measured(r table.Row, letter map[string]string) []gridRow {
	name := r.Name
	for _, id := range append([]string{r.ID}, r.Also...) {
		if l := letter[id]; l != "" {
			name = l + " · " + r.Name
			break
		}
	}
	cells := r.Cells
	if b.o.Size >= 0 && b.o.Alone {
		cells = cells[b.o.Size : b.o.Size+1]
	}
	var out []gridRow
	us := b.units()
	for k, u := range us {
		row := gridRow{cells: []gridCell{{s: name}, {s: u.String(), left: true}}, keep: k+1 < len(us)}
		for _, c := range cells {
			row.cells = append(row.cells, gridCell{s: c.Text(u, b.c.Table.Steps)})
		}
		out, name = append(out, row), ""
	}
	return out
}

func (b *builder) instructions() {
	size := -1
	if b.o.Alone {
		size = b.o.Size
	}
	for i, s := range b.c.RowsFor(size) {
		if i == 0 {
			b.heading("Instructions", 0, true)
		}
		if s.Name != "" {
			b.heading(s.Name, 1, false)
		}
		hang := b.p.size * 1.4
		for k, t := range s.Lines {
			almost := k == len(s.Lines)-2 // the last one does not stand alone over a page
			b.para(labelled(b.runs(t)), inset, min(b.wide(), 46*b.p.size), hang, b.p.size*0.28, almost)
		}
	}
}

// labelled makes the label of a row bold: what stands before its first colon, if that
// is short.
func labelled(runs []run) []run {
	n, at := 0, -1
	for i, r := range runs {
		if k := strings.IndexByte(r.s, ':'); k >= 0 {
			at = i
			n += k
			break
		}
		n += len(r.s)
	}
	first := ""
	if len(runs) > 0 {
		first, _, _ = strings.Cut(strings.TrimSpace(runs[0].s), " ")
	}
	switch strings.ToLower(strings.TrimSuffix(first, ":")) {
	case "row", "rows", "round", "rounds", "rnd", "rnds", "next":
	default:
		return runs
	}
	if at < 0 || n > 90 {
		return runs
	}
	var out []run
	for i, r := range runs {
		if i < at && r.ink == sheet.Black {
			r.face = fonts.Bold
		}
		if i == at {
			k := strings.IndexByte(r.s, ':') + 1
			out = append(out, run{r.s[:k], fonts.Bold, r.ink})
			r.s = r.s[k:]
		}
		out = append(out, r)
	}
	return out
}
