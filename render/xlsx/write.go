// Package xlsx writes the measurements and the grading of a pattern as a
// spreadsheet with live formulas, and reads graded values from one, or from
// CSV. It runs nothing that a sheet holds: a text stays a text, whatever it begins with.
package xlsx

import (
	"bytes"
	"fmt"
	"io"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"flatwright/layout/table"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// The sheets of a workbook.
const (
	Measurements = "Measurements"
	Grading      = "Grading"
)

// Write writes a workbook of the garments gs of one pattern: the table of their
// measurements, inches reckoned from centimetres by formulas (or the other way
// round, as the pattern is authored), and its grading, every sum a formula. The
// same pattern gives the same bytes.
func Write(w io.Writer, p *schematic.Pattern, gs []*schematic.Garment) error {
	f := excelize.NewFile()
	defer f.Close() //nolint:errcheck // nothing of it is on disk
	b := &book{f: f}
	b.styles()
	if err := f.SetSheetName("Sheet1", Measurements); err != nil {
		return fmt.Errorf("xlsx: %w", err)
	}
	if _, err := f.NewSheet(Grading); err != nil {
		return fmt.Errorf("xlsx: %w", err)
	}
	b.sheet = Grading
	lines := b.grading(p)
	b.page()
	b.sheet, b.row, b.widest = Measurements, 0, 0
	b.measurements(table.Of(gs), lines.following(), len(p.Grading) > 0)
	b.page()
	if b.err != nil {
		return fmt.Errorf("xlsx: %w", b.err)
	}
	full := true
	if err := f.SetCalcProps(&excelize.CalcPropsOptions{FullCalcOnLoad: &full}); err != nil {
		return fmt.Errorf("xlsx: %w", err)
	}
	// A fixed date: the same pattern gives the same bytes.
	const date = "2000-01-01T00:00:00Z"
	if err := f.SetDocProps(&excelize.DocProperties{Title: p.Title, Creator: "Flatwright", Created: date, Modified: date}); err != nil {
		return fmt.Errorf("xlsx: %w", err)
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		return fmt.Errorf("xlsx: %w", err)
	}
	fixed, err := undated(out.Bytes())
	if err != nil {
		return fmt.Errorf("xlsx: %w", err)
	}
	_, err = w.Write(fixed)
	return err
}

// book is a workbook in the making; its first error sticks.
type book struct {
	f     *excelize.File
	sheet string
	row   int // the last row written
	err   error

	head, size, group, length, count, none, note, wrapped int // styles

	widest int // the longest name of the sheet, in characters
}

func (b *book) style(s *excelize.Style) int {
	id, err := b.f.NewStyle(s)
	b.keep(err)
	return id
}

func (b *book) styles() {
	format := func(s string) *string { return &s }
	b.head = b.style(&excelize.Style{Font: &excelize.Font{Bold: true}, Border: []excelize.Border{{Type: "bottom", Style: 1, Color: "000000"}}})
	b.size = b.style(&excelize.Style{Font: &excelize.Font{Bold: true}, Alignment: &excelize.Alignment{Horizontal: "right"},
		Border: []excelize.Border{{Type: "bottom", Style: 1, Color: "000000"}}})
	b.group = b.style(&excelize.Style{Font: &excelize.Font{Bold: true}})
	b.length = b.style(&excelize.Style{CustomNumFmt: format("0.00")})
	b.count = b.style(&excelize.Style{CustomNumFmt: format("0.###")})
	b.none = b.style(&excelize.Style{Alignment: &excelize.Alignment{Horizontal: "right"}})
	b.wrapped = b.style(&excelize.Style{Font: &excelize.Font{Italic: true}, Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}})
	b.note = b.style(&excelize.Style{Font: &excelize.Font{Italic: true}})
}

func (b *book) keep(err error) {
	if b.err == nil {
		b.err = err
	}
}

// cell is the name of a cell of the row being written; columns count from 1.
func (b *book) cell(col int) string { return at(col, b.row) }

func at(col, row int) string {
	name, err := excelize.CoordinatesToCellName(col, row)
	if err != nil {
		return "A1"
	}
	return name
}

func (b *book) text(col int, s string, style int) {
	if col == 1 && style != b.note {
		b.widest = max(b.widest, utf8.RuneCountInString(s))
	}
	b.keep(b.f.SetCellStr(b.sheet, b.cell(col), s))
	if style > 0 {
		b.keep(b.f.SetCellStyle(b.sheet, b.cell(col), b.cell(col), style))
	}
}

func (b *book) number(col int, v float64, style int) {
	b.keep(b.f.SetCellFloat(b.sheet, b.cell(col), v, -1, 64))
	b.keep(b.f.SetCellStyle(b.sheet, b.cell(col), b.cell(col), style))
}

// formula writes a formula, and its value for readers that do not reckon.
func (b *book) formula(col int, formula string, v float64, style int) {
	b.number(col, v, style)
	b.keep(b.f.SetCellFormula(b.sheet, b.cell(col), formula))
}

// page makes the first column as wide as its names, and the sheet one page wide, lying, with the
// sizes on top of each page.
func (b *book) page() {
	b.keep(b.f.SetColWidth(b.sheet, "A", "A", float64(min(max(b.widest, 30), 70)+2)))
	yes, lying, one, any := true, "landscape", 1, 0
	b.keep(b.f.SetSheetProps(b.sheet, &excelize.SheetPropsOptions{FitToPage: &yes}))
	b.keep(b.f.SetPageLayout(b.sheet, &excelize.PageLayoutOptions{Orientation: &lying, FitToWidth: &one, FitToHeight: &any}))
	b.keep(b.f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: fmt.Sprintf("%s!$1:$%d", b.sheet, titleRows), Scope: b.sheet}))
}

func (b *book) next() { b.row++ }

// first is the column of the first size, titleRows are the rows above the numbers.
const (
	first     = 3
	titleRows = 2
)

func (b *book) sizes(title string, names []string) {
	b.next()
	b.text(1, title, b.head)
	b.text(2, "Unit", b.head)
	for i, s := range names {
		b.text(first+i, s, b.size)
	}
	b.widest = 0
	b.keep(b.f.SetPanes(b.sheet, &excelize.Panes{Freeze: true, XSplit: 2, YSplit: b.row, TopLeftCell: at(first, b.row+1), ActivePane: "bottomRight"}))
}

// exact and follows say on top of every page what the numbers of the first sheet are, and anew stands for one that does not follow.
const (
	exact   = "Exact, to a hundredth; drawings and tables round them once."
	follows = " They follow a change in Grading. Where a cell says 'redo', it does not: read the sheet back with 'grade --from', then write it again."
	stale   = " These are the counts from when this was written: there are too many to follow Grading. Read it back with 'grade --from', then write it again."
	anew    = "redo"
)

// wide writes a note above the columns of the sizes, in as many lines as it takes there.
func (b *book) wide(note string, sizes int) {
	const column, line = 9, 15 // characters of a column, points of a line
	b.text(first, note, b.wrapped)
	b.keep(b.f.MergeCell(b.sheet, b.cell(first), b.cell(first+max(sizes, 1)-1)))
	lines := utf8.RuneCountInString(note)/(column*max(sizes, 1)) + 1
	b.keep(b.f.SetRowHeight(b.sheet, b.row, float64(min(line*lines, 400))))
}

func (b *book) measurements(t table.Table, live *following, graded bool) {
	b.next()
	b.text(1, t.Title, b.group)
	note := exact
	switch {
	case live != nil:
		note += follows
	case graded:
		note += stale
	}
	b.wide(note, len(t.Sizes))
	b.sizes("Measurement", t.Sizes)
	authored, other, factor := units.CM, units.Inch, "/2.54"
	if t.Units == units.Inch {
		authored, other, factor = units.Inch, units.CM, "*2.54"
	}
	for _, g := range t.Groups {
		b.next()
		b.text(1, g.Name, b.group)
		for _, r := range g.Rows {
			b.pair(r, authored, other, factor, live)
		}
	}
}

// pair writes a measurement in the authored unit, exactly, and in the other one by formula;
// ranges take two pairs.
func (b *book) pair(r table.Row, authored, other units.Unit, factor string, live *following) {
	ranged := false
	for _, c := range r.Cells {
		ranged = ranged || c.Has && !c.Low.Eq(c.High)
	}
	ends := []func(table.Cell) units.Num{func(c table.Cell) units.Num { return c.Low }}
	labels := []string{r.Name}
	if ranged {
		ends = append(ends, func(c table.Cell) units.Num { return c.High })
		labels = []string{r.Name + ", from", r.Name + ", to"}
	}
	for k, end := range ends {
		b.next()
		b.text(1, labels[k], 0)
		b.text(2, authored.String(), 0)
		for i, c := range r.Cells {
			v := units.In(end(c), authored).Float()
			switch formula := live.formula(r, i, k > 0 || !ranged); {
			case !c.Has:
				b.text(first+i, table.None, b.none)
			case formula != "":
				b.formula(first+i, formula, v, b.length)
			default:
				b.number(first+i, v, b.length)
			}
		}
		b.converted(r, labels[k], other, factor, end)
	}
}

// converted is the row above it in the other unit.
func (b *book) converted(r table.Row, label string, other units.Unit, factor string, end func(table.Cell) units.Num) {
	b.next()
	b.text(1, label, 0)
	b.text(2, other.String(), 0)
	for i, c := range r.Cells {
		if !c.Has {
			b.text(first+i, table.None, b.none)
			continue
		}
		of := at(first+i, b.row-1)
		b.formula(first+i, fmt.Sprintf("IF(ISNUMBER(%s),%s%s,%s)", of, of, factor, of), units.In(end(c), other).Float(), b.length)
	}
}
