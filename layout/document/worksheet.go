package document

import (
	"fmt"

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
	drawn, err := schematics(gs, c, o, place.Blank)
	if err != nil {
		return nil, err
	}
	if answers {
		fill(drawn, gs[o.Size], c.Steps)
	}
	var best *builder
	for _, line := range writing { // the most room to write in that takes no page more
		b := worksheet(gs, c, o, answers, line, drawn)
		if best == nil || len(b.p.sheets) < len(best.p.sheets) {
			best = b
		}
	}
	return laid(best), nil
}

// writing is how high a line to write on may be, mm: from one for a child's hand to a
// ruled exercise book's (common practice: 8 mm and 6 mm).
var writing = []float64{8, 7, 6}

func worksheet(gs []*schematic.Garment, c *Content, o Options, answers bool, line float64, drawn []atom) *builder {
	b := newBuilder(c, o)
	name := "Worksheet"
	if answers {
		name = "Answers"
	}
	b.p.right = name + ", " + sizeWords(c, o)
	b.cover()
	b.heading(name, 0, false)
	b.pupil(line)
	words := []string{
		"Work out each measurement from the stitches or rows and the gauge.",
		"width = stitches × length of the swatch ÷ stitches in it",
		"height = rows × length of the swatch ÷ rows in it",
		"1 in = 2.54 cm. Round only at the end: cm to the nearest " + units.Decimal(c.Steps.CM, 3) + ", in to the nearest " + units.Mixed(c.Steps.Inch) + ".",
	}
	for _, w := range words {
		b.para([]run{{w, fonts.Regular, sheet.Black}}, inset, b.wide(), 0, b.p.size*0.3, false)
	}
	for _, f := range c.Facts {
		if f.Name == "Gauge" || f.Name == "Tension" {
			b.facts([]Fact{f}, 38)
		}
	}
	b.questions(gs[o.Size], answers, line)
	if len(c.Cautions) > 0 {
		b.boxed("Caution", c.Cautions)
	}
	b.add(drawn...)
	b.p.flow(b.atoms)
	return b
}

// pupil is where a name and a date are written.
func (b *builder) pupil(line float64) {
	high := max(line, b.p.size*1.8)
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
	of := map[string]schematic.Measure{}
	for _, made := range g.Pieces {
		for _, m := range made.Measures {
			of[m.ID] = m
		}
	}
	us := b.units()
	t := grid{title: []string{"Measurement", "made by", "gauge"}, mark: -1, first: 2, least: 22}
	for _, u := range us {
		t.title = append(t.title, u.String())
	}
	for _, group := range b.c.Table.Groups {
		if group.Name == table.ToFit || group.Name == table.Written {
			continue
		}
		var rows []gridRow
		for _, r := range group.Rows {
			m, ok := of[r.ID]
			if !ok || m.Count == 0 || m.Gauge == nil {
				continue
			}
			row := gridRow{tall: max(line, b.p.size*1.8), cells: []gridCell{{s: r.Name}, {s: counted(m), left: true}, {s: m.Gauge.Name, left: true}}}
			for _, u := range us {
				cell := gridCell{blank: !answers}
				if answers {
					cell.s = r.Cells[b.o.Size].Text(u, b.c.Steps)
				}
				row.cells = append(row.cells, cell)
			}
			rows = append(rows, row)
		}
		if len(rows) > 0 {
			t.rows = append(append(t.rows, gridRow{group: group.Name}), rows...)
		}
	}
	b.table(t)
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
