package document

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/place"
	"flatwright/layout/sheet"
	"flatwright/layout/table"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// Worksheet sets a sheet for a class: the stitches and rows of one size and the gauge
// are given, and the measurements that they make are left blank, in the table and on the
// schematic. With answers it is the same sheet with all of them filled in, line by line in the
// same place. o.Size must be a size. The error is that of Handout.
func Worksheet(gs []*schematic.Garment, c *Content, o Options, answers bool) ([]*sheet.Sheet, error) {
	o.Alone = true
	gs = unworn(gs)
	drawn, err := schematics(gs, c, o, place.Blank)
	if err != nil {
		return nil, err
	}
	fill(drawn, gs[o.Size], c.Steps, func(m schematic.Measure) bool { return answers || !asked(m) })
	var best *builder
	for _, line := range writing { // the most room to write in that takes no page more
		b := worksheet(gs, c, o, answers, line, drawn)
		if best == nil || len(b.p.sheets) < len(best.p.sheets) {
			best = b
		}
	}
	return laid(best), nil
}

// unworn are the garments without the view as they are worn: it has no stitches and rows of its own,
// and gives away what is asked.
func unworn(gs []*schematic.Garment) []*schematic.Garment {
	out := make([]*schematic.Garment, len(gs))
	for i, g := range gs {
		one := *g
		one.Worn, one.WornBack = nil, nil
		out[i] = &one
	}
	return out
}

// asked reports whether a measurement is a count at one gauge, which a pupil can work out. What
// hangs together of several is given on the drawing.
func asked(m schematic.Measure) bool { return m.Count != 0 && m.Gauge != nil }

// writing is how high a line to write on may be, mm: from one with room for working above it, by
// one for a child's hand, to a ruled exercise book's (common practice: 8 mm and 6 mm).
var writing = []float64{12, 10, 8, 7, 6}

const (
	blankWide = 25.0 // of a rule to write on, mm
	workWide  = 30.0 // least, of the room for working, mm
)

func worksheet(gs []*schematic.Garment, c *Content, o Options, answers bool, line float64, drawn []atom) *builder {
	b := newBuilder(c, o)
	name := "Worksheet"
	if answers {
		name = "Answers"
	}
	b.p.right = name + ", " + sizeWords(c, o)
	b.cover()
	b.heading(name, 0, false)
	b.pupil(line, answers)
	b.told("Work out each measurement from the stitches or rows and the gauge. A measurement that is printed on the drawing is given.")
	b.rule(b.units())
	b.questions(gs[o.Size], answers, line)
	if len(c.Cautions) > 0 {
		b.boxed("Caution", c.Cautions)
	}
	b.add(drawn...)
	b.p.flow(b.atoms)
	return b
}

// told are sentences to the pupil.
func (b *builder) told(all ...string) {
	for _, s := range all {
		b.para([]run{{s, fonts.Regular, sheet.Black}}, inset, b.wide(), 0, b.p.size*0.3, false)
	}
}

// rule is how counts become lengths in the units, with the gauges of the pattern.
func (b *builder) rule(in []UnitOf) {
	var nearest []string
	for _, u := range in {
		step := units.Decimal(b.c.Steps.CM, 3)
		if u == units.Inch {
			step = units.Mixed(b.c.Steps.Inch)
		}
		nearest = append(nearest, u.String()+" to the nearest "+step)
	}
	b.told("width = stitches × length of the swatch ÷ stitches in it",
		"height = rows × length of the swatch ÷ rows in it",
		"1 in = 2.54 cm. Round only at the end: "+strings.Join(nearest, ", ")+".")
	for _, f := range b.c.Facts {
		if f.Name == "Gauge" || f.Name == "Tension" {
			f.Lines = slices.Clone(f.Lines)
			for i, line := range f.Lines {
				f.Lines[i] = oneLength(line)
			}
			b.facts([]Fact{f}, 38)
		}
	}
}

// pupil is where a name and a date are written; answers leave the room empty.
func (b *builder) pupil(line float64, answers bool) {
	high := max(min(line, 8), b.p.size*1.8)
	if answers {
		b.add(atom{high: high + b.p.size*0.8, gap: b.p.size * 0.3})
		return
	}
	b.add(atom{high: high + b.p.size*0.8, gap: b.p.size * 0.3, draw: func(g *sheet.Group, y float64) {
		base := y + high - b.p.size*0.4
		x := inset
		for _, f := range []struct {
			word string
			to   float64
		}{{"Name", inset + b.wide()*0.62}, {"Date", inset + b.wide()}} {
			setLine(g, []run{{f.word, fonts.Regular, sheet.Black}}, x, base, b.p.size, "text")
			x += fonts.Width(fonts.Regular, b.p.size, f.word) + b.p.size*0.5
			g.Items = append(g.Items, rule(x, base+0.6, f.to, base+0.6, 0.18, "name"))
			x = f.to + b.p.size
		}
	}})
}

// questions are the measurements of a garment that are made by a count at one gauge.
func (b *builder) questions(g *schematic.Garment, answers bool, line float64) {
	of := askedOf(g)
	t := grid{title: []string{"Measurement", "made by"}, mark: -1, first: 1, least: blankWide}
	named := len(g.Pattern.Gauges) > 1
	if named {
		t.title, t.first = append(t.title, "gauge"), 2
	}
	if !b.o.Large { // large print leaves no room for working beside it
		t.title, t.first = append(t.title, "working"), t.first+1
		t.loose, t.looseLeast = t.first, workWide
	}
	for _, u := range b.units() {
		t.title = append(t.title, u.String())
	}
	for _, group := range madeGroups(b.c.Table) {
		var rows []gridRow
		for _, r := range group.Rows {
			if m, ok := of[r.ID]; ok {
				row := gridRow{tall: max(line, b.p.size*1.8), cells: []gridCell{{s: r.Name}, {s: counted(m), left: true}}}
				if named {
					row.cells = append(row.cells, gridCell{s: m.Gauge.Name, left: true})
				}
				if t.loose > 0 {
					row.cells = append(row.cells, gridCell{left: true})
				}
				row.cells = append(row.cells, b.answers(r, answers)...)
				rows = append(rows, row)
			}
		}
		if len(rows) > 0 {
			t.rows = append(append(t.rows, gridRow{group: group.Name}), rows...)
		}
	}
	b.table(t)
}

// askedOf are the measurements of a garment that a pupil works out, by their ids; a piece that mirrors another one would ask
// for the same again.
func askedOf(g *schematic.Garment) map[string]schematic.Measure {
	of := map[string]schematic.Measure{}
	for _, made := range g.Pieces {
		if made.MirrorOf != "" {
			continue
		}
		for _, m := range made.Measures {
			of[m.ID] = m
		}
	}
	maps.DeleteFunc(of, func(_ string, m schematic.Measure) bool { return !asked(m) })
	return of
}

// answers are a measurement in each unit, or blanks for it.
func (b *builder) answers(r table.Row, told bool) []gridCell {
	var out []gridCell
	for _, u := range b.units() {
		cell := gridCell{blank: true}
		if told {
			cell = gridCell{s: r.Cells[b.o.Size].Text(u, b.c.Steps)}
		}
		out = append(out, cell)
	}
	return out
}

func counted(m schematic.Measure) string {
	what := map[string]string{"st": "stitch", "row": "row"}[m.Of]
	if what == "" {
		what = m.Of
	}
	if m.Count == 1 {
		return "1 " + what
	}
	if what == "stitch" {
		return fmt.Sprintf("%d stitches", m.Count)
	}
	return fmt.Sprintf("%d %ss", m.Count, what)
}
