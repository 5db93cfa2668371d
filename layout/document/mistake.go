package document

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"flatwright/layout/sheet"
	"flatwright/layout/table"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// errNothingAsked is for a pattern without a measurement that is a count at one gauge.
var errNothingAsked = errors.New("no measurement of this pattern comes from one count at one gauge, so a class could find no mistake")

// mistake is a measurement that is printed wrong in some sizes.
type mistake struct {
	row         countedRow
	unit        units.Unit
	sizes       []int
	right, said map[int]string // what it is and what is printed, one a size
}

// FindTheMistake sets a sheet for a class: counts and measurements of all sizes, of which one is wrong
// in some sizes. The seed says which; the same one gives the same sheet. With answers the sheet tells
// it. The error says that the pattern has nothing to ask for.
func FindTheMistake(gs []*schematic.Garment, c *Content, o Options, seed uint64, answers bool) ([]*sheet.Sheet, error) {
	o.Size, o.Alone = -1, false
	b := newBuilder(c, o)
	rows := countedRows(gs, c.Table)
	if len(rows) == 0 {
		return nil, errNothingAsked
	}
	wrong := misprint(rows, b.units()[0], c.Steps, dice(seed))
	name := "Find the mistake"
	if answers {
		name += ": the answer"
	}
	b.p.right = fmt.Sprintf("%s, no. %d", name, seed)
	b.cover()
	b.heading(b.p.right, 0, false)
	b.pupil(8, answers)
	if answers {
		b.told(wrong.told(c)...)
	} else {
		some := " in some of the sizes"
		if c.Sizes.Len() == 1 {
			some = ""
		}
		b.told("One measurement of this table is wrong" + some + ": it does not follow from its stitches or rows and the gauge. Find it, and say what it should be.")
	}
	b.rule(b.units()[:1])
	b.table(mistaken(rows, wrong, c, len(gs[0].Pattern.Gauges) > 1))
	b.p.flow(b.atoms)
	if !answers {
		b.room("Working")
	}
	return laid(b), nil
}

// countedRow is a line of the table with the counts that make it, one a size; 0 where there is none.
type countedRow struct {
	table.Row
	of     string // the piece
	counts []schematic.Measure
}

// any is the measurement in one of the sizes that can be worked out.
func (r countedRow) any() schematic.Measure { return r.counts[slices.IndexFunc(r.counts, asked)] }

// made is what makes it: sts or rows.
func (r countedRow) made() string { return r.any().Of + "s" }

// countedRows are the measurements that a pupil can work out.
func countedRows(gs []*schematic.Garment, t table.Table) []countedRow {
	var of []map[string]schematic.Measure
	for _, g := range gs {
		of = append(of, askedOf(g))
	}
	var out []countedRow
	for _, g := range madeGroups(t) {
		for _, r := range g.Rows {
			row := countedRow{Row: r, of: g.Name}
			for i := range gs {
				m := of[i][r.ID]
				if !r.Cells[i].Has {
					m = schematic.Measure{}
				}
				row.counts = append(row.counts, m)
			}
			if slices.ContainsFunc(row.counts, asked) {
				out = append(out, row)
			}
		}
	}
	return out
}

// madeGroups are the groups of a table whose measurements the counts make.
func madeGroups(t table.Table) []table.Group {
	return slices.DeleteFunc(slices.Clone(t.Groups), func(g table.Group) bool { return g.Name == table.ToFit || g.Name == table.Written })
}

// measuresOf are the measurements of a garment's pieces by their ids.
func measuresOf(g *schematic.Garment) map[string]schematic.Measure {
	out := map[string]schematic.Measure{}
	for _, made := range g.Pieces {
		for _, m := range made.Measures {
			out[m.ID] = m
		}
	}
	return out
}

// dice are numbers from 0 to below n that a seed makes: Steele, Lea and Flood's SplitMix64 (2014),
// the same on every machine.
func dice(seed uint64) func(n int) int {
	return func(n int) int {
		seed += 0x9e3779b97f4a7c15
		z := seed
		z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
		z = (z ^ z>>27) * 0x94d049bb133111eb
		return int((z ^ z>>31) % uint64(n))
	}
}

// shortest is a length of which an eighth shows, mm.
const shortest = 80

// misprint makes one measurement wrong: by an eighth to a fifth of it, in a run of sizes that are
// not all of them.
func misprint(rows []countedRow, unit units.Unit, steps units.Steps, throw func(int) int) mistake {
	long := slices.DeleteFunc(slices.Clone(rows), func(r countedRow) bool {
		return slices.ContainsFunc(r.Cells, func(c table.Cell) bool { return c.Has && c.Low.Less(units.Int(shortest)) })
	})
	if len(long) == 0 {
		long = rows
	}
	row := long[throw(len(long))]
	var has []int
	for i, m := range row.counts {
		if asked(m) {
			has = append(has, i)
		}
	}
	run := 1
	if len(has) > 2 {
		run += throw(len(has) - 1)
	}
	from := throw(len(has) - run + 1)
	w := mistake{row: row, unit: unit, right: map[int]string{}, said: map[int]string{}}
	share := units.Frac(int64(throw(4)+5), 40) // from 5/40 to 8/40
	if throw(2) == 0 {
		share = share.Neg()
	}
	for _, i := range has[from : from+run] {
		cell := row.Cells[i]
		off := cell
		off.Low, off.High = cell.Low.Add(cell.Low.Mul(share)), cell.High.Add(cell.High.Mul(share))
		off.Written, off.HasOther = false, false
		w.sizes = append(w.sizes, i)
		w.right[i], w.said[i] = cell.Text(unit, steps), off.Text(unit, steps)
		if w.right[i] == w.said[i] { // too short to show it: a whole unit more
			off.Low, off.High = cell.Low.Add(units.Of(units.Int(1), unit)), cell.High.Add(units.Of(units.Int(1), unit))
			w.said[i] = off.Text(unit, steps)
		}
	}
	return w
}

// told is the mistake in words.
func (w mistake) told(c *Content) []string {
	out := []string{fmt.Sprintf("%s: %s is wrong in %s.", w.row.of, w.row.Name, sizesNamed(c, w.sizes))}
	if c.Sizes.Len() == 1 {
		out = []string{fmt.Sprintf("%s: %s is wrong.", w.row.of, w.row.Name)}
	}
	for _, i := range w.sizes {
		m := w.row.counts[i]
		per := m.Gauge.Stitches
		if m.Of == "row" {
			per = m.Gauge.Rows
		}
		in := m.Gauge.OverUnit
		sum := fmt.Sprintf("%s × %s %s ÷ %s = ", counted(m), units.In(m.Gauge.Over, in), in, units.Mixed(per))
		if in != w.unit {
			sum += units.Decimal(units.In(m.Length, in), 2) + " " + in.String() + " = "
		}
		sum += fmt.Sprintf("%s %s, not %s %s.", w.right[i], w.unit, w.said[i], w.unit)
		if c.Sizes.Len() > 1 {
			sum = "Size " + c.Sizes.Names[i] + ": " + sum
		}
		out = append(out, sum)
	}
	return out
}

func sizesNamed(c *Content, sizes []int) string {
	var names []string
	for _, i := range sizes {
		names = append(names, c.Sizes.Names[i])
	}
	if len(names) == 1 {
		return "size " + names[0]
	}
	return "sizes " + strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// length is a measurement of one size as the sheet has it.
func (w mistake) length(r countedRow, size int, c *Content) string {
	if said, ok := w.said[size]; ok && r.ID == w.row.ID {
		return said
	}
	return r.Cells[size].Text(w.unit, c.Steps)
}

// mistaken is the table with the mistake in it, and the gauge of each measurement, if they are to be named.
func mistaken(rows []countedRow, w mistake, c *Content, named bool) grid {
	t := grid{title: []string{"Measurement", ""}, mark: -1, first: 1}
	if named {
		t.title, t.first = append(t.title, "gauge"), 2
	}
	t.title = append(t.title, c.Sizes.Names...)
	for k, r := range rows {
		if k == 0 || rows[k-1].of != r.of {
			t.rows = append(t.rows, gridRow{group: r.of})
		}
		made := gridRow{cells: []gridCell{{s: r.Name}, {s: r.made(), left: true}}, keep: true}
		long := gridRow{cells: []gridCell{{}, {s: w.unit.String(), left: true}}}
		if named {
			made.cells = append(made.cells, gridCell{s: r.any().Gauge.Name, left: true})
			long.cells = append(long.cells, gridCell{left: true})
		}
		for i, m := range r.counts {
			n := "–"
			if asked(m) {
				n = fmt.Sprint(m.Count)
			}
			made.cells = append(made.cells, gridCell{s: n})
			long.cells = append(long.cells, gridCell{s: w.length(r, i, c)})
		}
		t.rows = append(t.rows, made, long)
	}
	return t
}
