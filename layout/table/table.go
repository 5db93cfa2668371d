// Package table is a garment's measurements in all sizes as plain rows and
// columns: the bodies that the sizes fit, what the counts make at the gauge, piece
// by piece, and what the designer wrote. It knows nothing of how a table is
// written down.
package table

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/check"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Table is measurements in groups, with one column a size.
type Table struct {
	Title  string
	Sizes  []string
	Units  units.Unit  // in which the pattern is authored; it stands first
	Steps  units.Steps // to which lengths are printed
	Groups []Group
}

// Group is the measurements of one piece, or another set that belongs together.
type Group struct {
	Name string
	Rows []Row
}

// Row is one measurement. ID is the measurement's own, the same in every size; it
// is unique in the table. There is one cell for each of the table's sizes.
type Row struct {
	ID    string
	Name  string
	Also  []string // IDs of measurements that are alike in every size, told once here
	Cells []Cell
}

// Cell is a length in one size, or a range of lengths, in mm. Has is false where
// the size has none. A Written length is printed as it was typed in the unit
// Unit, and in the other unit as Other if HasOther.
type Cell struct {
	Has       bool
	Low, High units.Num

	Written  bool
	Unit     units.Unit
	HasOther bool
	Other    units.Num
}

// None stands where a size has no such measurement.
const None = expr.Dash

// Text is the cell in u, without the unit, printed to steps: 39.5, 15½, 71–76 for
// a range.
func (c Cell) Text(u units.Unit, steps units.Steps) string {
	return c.text(u, steps, func(mm units.Num, s units.Steps) string { return s.Format(mm, u) })
}

// Decimal is the cell as Text gives it, with decimals in inches too: 15.5.
func (c Cell) Decimal(u units.Unit, steps units.Steps) string {
	return c.text(u, steps, func(mm units.Num, s units.Steps) string {
		return units.Decimal(units.In(mm, u).RoundTo(s.Step(u)), 3)
	})
}

func (c Cell) text(u units.Unit, steps units.Steps, format func(units.Num, units.Steps) string) string {
	if !c.Has {
		return None
	}
	low, high := c.Low, c.High
	if c.Written {
		if u != c.Unit && c.HasOther {
			low, high = c.Other, c.Other
		}
		if u == c.Unit || c.HasOther {
			steps = units.Steps{}
		}
	}
	text := format(low, steps)
	if other := format(high, steps); other != text {
		return text + "–" + other
	}
	return text
}

// The names of the groups that are not pieces.
const (
	ToFit   = "To fit"
	Written = "Finished measurements" // as the counts make them, or as written where they differ
)

// Of is the table of gs, which are garments of one pattern in different sizes, in
// the order of its columns. With no garment the table is empty.
func Of(gs []*schematic.Garment) Table {
	if len(gs) == 0 {
		return Table{}
	}
	p := gs[0].Pattern
	t := Table{Title: p.Title, Units: p.Units, Steps: p.Steps}
	for _, g := range gs {
		t.Sizes = append(t.Sizes, g.Size)
	}
	t.add(Group{Name: ToFit, Rows: writtenRows("to-fit", gs, p.Bodies)})
	for _, name := range pieces(gs) {
		t.add(Group{Name: name, Rows: measureRows(gs, name)})
	}
	t.add(Group{Name: Written, Rows: finishedRows(gs, p.Finished)})
	return t
}

// Worn is the measurements of the garment as it is worn, by the names that its designer gives them; without rows where it is not drawn.
func Worn(gs []*schematic.Garment) Group {
	made := make([][]*schematic.Made, len(gs))
	name := ""
	for i, g := range gs {
		d := &g.Pattern.Drawing
		if g.Worn == nil || len(d.Views) > 0 && !slices.Contains(d.Views, schematic.AsWorn) {
			continue
		}
		name = g.Worn.Name
		for _, w := range g.AsWorn() {
			m := *w
			m.Measures = slices.Clone(m.Measures)
			for k := range m.Measures {
				m.Measures[k].Name = d.NameOf(m.Name, m.Measures[k].Name)
			}
			made[i] = append(made[i], &m)
		}
	}
	return Group{Name: name, Rows: rowsOf(gs, made)}
}

// InLetters is a group of which the rows stand in the order of their letters on a drawing, by ID; those without one after them.
func (g Group) InLetters(letter map[string]string) Group {
	rank := func(r Row) (int, string) {
		for _, id := range append([]string{r.ID}, r.Also...) {
			if l := letter[id]; l != "" {
				return len(l), l
			}
		}
		return math.MaxInt, ""
	}
	g.Rows = slices.Clone(g.Rows)
	slices.SortStableFunc(g.Rows, func(a, b Row) int {
		la, sa := rank(a)
		lb, sb := rank(b)
		return cmp.Or(cmp.Compare(la, lb), cmp.Compare(sa, sb))
	})
	return g
}

func (t *Table) add(g Group) {
	if len(g.Rows) > 0 {
		t.Groups = append(t.Groups, g)
	}
}

func writtenRows(prefix string, gs []*schematic.Garment, all []schematic.Written) []Row {
	var rows []Row
	for _, w := range all {
		row := Row{ID: prefix + "." + strings.ReplaceAll(strings.ToLower(w.Name), " ", "-"), Name: finding.Capital(w.Name)}
		for _, g := range gs {
			c := Cell{Written: true, Unit: w.Unit}
			c.Low, c.Has = w.Low.At(g.Index)
			c.High = c.Low
			if high, ok := w.High.At(g.Index); ok {
				c.High = high
			}
			c.Other, c.HasOther = w.Other.At(g.Index)
			row.Cells = append(row.Cells, c)
		}
		rows = append(rows, row)
	}
	return rows
}

// finishedRows are the finished measurements as their designer wrote them. One that she
// wrote in a single unit, and that agrees with the counts, is printed from the exact length in
// both units, as it is wherever else it stands: never one unit out of the other's figure.
func finishedRows(gs []*schematic.Garment, all []schematic.Written) []Row {
	rows := writtenRows("written", gs, all)
	for i := range rows {
		for k := range rows[i].Cells {
			c := &rows[i].Cells[k]
			if made, ok := check.Made(gs[k], &all[i]); ok && !c.HasOther {
				*c = Cell{Has: true, Low: made, High: made}
			}
		}
	}
	return rows
}

// pieces are the names of the pieces of all sizes, in order.
func pieces(gs []*schematic.Garment) []string {
	var names []string
	for _, g := range gs {
		at := 0
		for _, m := range g.Pieces {
			at = place(&names, m.Name, at)
		}
	}
	return names
}

// place puts name into all at at if it is not there, and gives the place after it.
func place(all *[]string, name string, at int) int {
	if i := slices.Index(*all, name); i >= 0 {
		return i + 1
	}
	*all = slices.Insert(*all, at, name)
	return at + 1
}

func measureRows(gs []*schematic.Garment, piece string) []Row {
	made := make([][]*schematic.Made, len(gs))
	for i, g := range gs {
		for _, m := range g.Pieces {
			if m.Name == piece {
				made[i] = append(made[i], m)
			}
		}
	}
	return rowsOf(gs, made)
}

// rowsOf are the rows of what each garment has of one piece.
func rowsOf(gs []*schematic.Garment, of [][]*schematic.Made) []Row {
	var ids []string
	first := map[string]entry{}
	cells := map[string][]Cell{}
	for i := range gs {
		at := 0
		for _, made := range of[i] {
			for _, m := range made.Measures {
				if m.Same && cells[m.ID] == nil && sameInAll(gs, m.ID) {
					continue
				}
				at = place(&ids, m.ID, at)
				if cells[m.ID] == nil {
					first[m.ID] = entry{of: m, view: viewName(made, m), each: each(made, m)}
					cells[m.ID] = make([]Cell, len(gs))
				}
				cells[m.ID][i] = Cell{Has: true, Low: m.Length, High: m.Length}
			}
		}
	}
	var all []entry
	for _, id := range ids {
		e := first[id]
		e.row = Row{ID: id, Name: rowName(e.of), Cells: cells[id]}
		all = append(all, e)
	}
	return distinct(all)
}

// sameInAll reports whether the measurement id says in every size that has it what
// another one says.
func sameInAll(gs []*schematic.Garment, id string) bool {
	for _, g := range gs {
		for _, made := range g.Pieces {
			for k := range made.Measures {
				if m := &made.Measures[k]; m.ID == id && !m.Same {
					return false
				}
			}
		}
	}
	return true
}

// entry is a row with the measurement that it tells, and the name of its view.
type entry struct {
	of   schematic.Measure
	view string
	each string // of how many panels alike it is one's
	row  Row
}

// distinct are the rows of all. Measurements of one name that are alike in every size,
// such as two armholes, are one row; where not all of that name are alike, each row says of
// which views, parts and sides it tells.
func distinct(all []entry) []Row {
	var rows []Row
	for i, e := range all {
		if slices.ContainsFunc(all[:i], func(o entry) bool { return o.row.Name == e.row.Name && slices.Equal(o.row.Cells, e.row.Cells) }) {
			continue
		}
		var named, alike []entry
		for _, o := range all {
			if o.row.Name != e.row.Name {
				continue
			}
			named = append(named, o)
			if slices.Equal(o.row.Cells, e.row.Cells) {
				alike = append(alike, o)
			}
		}
		row := e.row
		for _, o := range alike[1:] {
			row.Also = append(row.Also, o.row.ID)
		}
		told := ""
		if len(alike) < len(named) {
			told = where(alike, named)
		}
		switch {
		case e.each != "" && told != "":
			told = strings.TrimSuffix(told, ")") + ", " + e.each + ")"
		case e.each != "":
			told = " (" + e.each + ")"
		}
		row.Name += told
		rows = append(rows, row)
	}
	return rows
}

// where says in brackets of which of the measurements named alike tells.
func where(alike, named []entry) string {
	differ := func(of func(entry) string) bool {
		return slices.ContainsFunc(named, func(e entry) bool { return of(e) != of(named[0]) })
	}
	view, part := func(e entry) string { return e.view }, func(e entry) string { return e.of.Part }
	views, parts := differ(view), differ(part)
	label := func(e entry) string {
		words := []string{}
		if views {
			words = append(words, e.view)
		}
		if parts && e.of.Part != e.view {
			words = append(words, e.of.Part)
		}
		return strings.Join(slices.DeleteFunc(words, func(w string) bool { return w == "" }), ", ")
	}
	var labels []string
	for _, e := range alike {
		l := label(e)
		// The side tells it from what is not alike and has the same label.
		if s := side(e.of.ID); s != "" && slices.ContainsFunc(named, func(o entry) bool {
			return label(o) == l && !slices.Equal(o.row.Cells, e.row.Cells)
		}) {
			l = strings.TrimPrefix(l+", "+s, ", ")
		}
		if l != "" && !slices.Contains(labels, l) {
			labels = append(labels, l)
		}
	}
	const most = 3
	if n := len(labels); n > most {
		labels = append(labels[:most-1], fmt.Sprintf("and %d more", n-most+1))
	}
	if len(labels) == 0 {
		return ""
	}
	return " (" + strings.Join(labels, "; ") + ")"
}

// side is the side with which a measurement's ID ends, or nothing.
func side(id string) string {
	for _, s := range []string{"left", "right"} {
		if strings.HasSuffix(id, "."+s) {
			return s
		}
	}
	return ""
}

func viewName(made *schematic.Made, m schematic.Measure) string {
	if m.View == schematic.NoView {
		return "all panels"
	}
	if m.View >= len(made.Views) {
		return ""
	}
	return made.Views[m.View].Name
}

// each says that a measurement is of one of several panels that are alike.
func each(made *schematic.Made, m schematic.Measure) string {
	if m.View == schematic.NoView || m.View >= len(made.Views) || made.Views[m.View].Alike < 2 {
		return ""
	}
	return fmt.Sprintf("each of %d", made.Views[m.View].Alike)
}

func rowName(m schematic.Measure) string {
	name := finding.Capital(m.Name)
	if m.Around && !strings.Contains(strings.ToLower(name), "around") {
		name += ", around"
	}
	if m.Stretched {
		name += ", stretched"
	}
	return name
}
