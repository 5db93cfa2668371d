package xlsx

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"fmt"
	"path"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Bounds of a sheet that is read. A workbook of the most rows and columns, unpacked, has room in mostUnzip.
const (
	MostBytes   = 8 << 20
	mostUnzip   = 24 << 20
	mostPart    = 5 << 20 // of one part of a workbook
	mostWords   = 2 << 20 // of its table of texts and of its styles, which are kept whole
	mostRows    = 5000
	mostColumns = 500
)

// Read reads graded values from a workbook (.xlsx) or from CSV: a line with the
// names of the pattern's sizes, and below it one line a value, its name in the first column. A
// column called 'unit', or a unit behind the name (neck, cm), says what it counts: cm, in, mm, sts or rows; without
// one it is a plain number. A cell that is empty or has a dash is a size without a value. Cells with formulas
// give the values that were saved with them: nothing is reckoned or run. sheet chooses a
// sheet by name; if it is empty, it is the first one with a line of sizes. In a finding, line
// and column are those of the cell.
func Read(file string, data []byte, sheet string, sizes expr.Sizes) (vals []schematic.GradedValue, found finding.List) {
	r := &sheetReader{file: file, sizes: sizes}
	defer func() {
		if recover() != nil { // the library's own bounds are not all checked
			r.wrong(0, 0, "This file can't be read as a spreadsheet.", "", "a workbook (.xlsx) or CSV", "Save it again from the program that made it.")
			vals, found = nil, r.found
		}
	}()
	if len(data) > MostBytes {
		r.wrong(0, 0, "This sheet is too large.", fmt.Sprintf("%d bytes", len(data)), fmt.Sprintf("at most %d", MostBytes), "")
		return nil, r.found
	}
	if bytes.HasPrefix(data, []byte("PK")) {
		r.workbook(data, sheet)
	} else {
		r.csv(data)
	}
	r.found.Sort()
	return r.vals, r.found
}

type sheetReader struct {
	comma bool // decimals have a comma, as where semicolons part the cells
	file  string
	sizes expr.Sizes
	vals  []schematic.GradedValue
	found finding.List
	lines []int // of the rows, where the file has more lines than rows
}

func (r *sheetReader) wrong(row, col int, message, have, want, fix string) {
	if row > 0 && row <= len(r.lines) {
		row = r.lines[row-1]
	}
	r.found = append(r.found, finding.Finding{Kind: "file/sheet", Severity: finding.Error,
		Pos: finding.Pos{File: r.file, Line: row, Col: col, EndCol: col + 1}, Message: message, Have: have, Want: want, Fix: fix})
}

func (r *sheetReader) workbook(data []byte, sheet string) {
	if why := packed(data); why != "" {
		r.wrong(0, 0, "This workbook is too large.", why, fmt.Sprintf("at most %d MiB in all, unpacked", mostUnzip>>20), "Copy the sheet you mean into a workbook of its own.")
		return
	}
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{UnzipSizeLimit: mostUnzip, UnzipXMLSizeLimit: mostUnzip, RawCellValue: true})
	if err != nil {
		r.wrong(0, 0, "This file can't be read as a workbook.", err.Error(), "a workbook (.xlsx)", "Save it again from the program that made it.")
		return
	}
	defer f.Close() //nolint:errcheck // it was read only
	names := f.GetSheetList()
	if sheet != "" {
		if !slices.Contains(names, sheet) {
			r.wrong(0, 0, fmt.Sprintf("There is no sheet called %q.", sheet), "", "one of: "+strings.Join(names, ", "), "")
			return
		}
		names = []string{sheet}
	}
	// The program's own workbook keeps its grading apart from the measurements.
	if slices.Contains(names, Grading) {
		names = []string{Grading}
	}
	for i, name := range names {
		rows, err := someRows(f, name)
		if err != nil {
			r.wrong(0, 0, fmt.Sprintf("The sheet %q can't be read.", name), err.Error(), "", "")
			return
		}
		if r.head(rows) < 0 && i < len(names)-1 {
			continue
		}
		r.file += ", sheet " + name
		r.rows(rows)
		return
	}
}

// packed says what of a packed workbook is too large to be unpacked, or "".
func packed(data []byte) string {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return "" // the library says what is wrong with it
	}
	total := uint64(0)
	for _, f := range z.File {
		most := uint64(mostPart)
		if name := strings.ToLower(path.Base(f.Name)); !strings.HasPrefix(name, "sheet") {
			most = mostWords
		}
		if total += f.UncompressedSize64; f.UncompressedSize64 > most || total > mostUnzip {
			return fmt.Sprintf("%s has %d bytes", finding.Clip(f.Name), f.UncompressedSize64)
		}
	}
	return ""
}

// someRows are the rows of a sheet, one more than are read at the most.
func someRows(f *excelize.File, name string) ([][]string, error) {
	in, err := f.Rows(name)
	if err != nil {
		return nil, err
	}
	defer in.Close() //nolint:errcheck // it was read only
	var rows [][]string
	for in.Next() && len(rows) <= mostRows {
		cells, err := in.Columns()
		if err != nil {
			return nil, err
		}
		rows = append(rows, cells[:min(len(cells), mostColumns+1)])
	}
	for len(rows) > 0 && len(rows) <= mostRows && len(rows[len(rows)-1]) == 0 {
		rows = rows[:len(rows)-1]
	}
	return rows, in.Error()
}

func (r *sheetReader) csv(data []byte) {
	text := strings.TrimPrefix(string(data), "\ufeff")
	if !utf8.ValidString(text) {
		r.wrong(1, 1, "This file is neither a workbook nor text in UTF-8.", "", "a workbook (.xlsx) or CSV", "Save the sheet as 'CSV UTF-8'.")
		return
	}
	in := csv.NewReader(strings.NewReader(text))
	in.FieldsPerRecord = -1
	in.LazyQuotes = true
	head, _, _ := strings.Cut(text, "\n")
	for _, c := range ";\t" {
		if strings.Count(head, string(c)) > strings.Count(head, string(in.Comma)) {
			in.Comma = c
		}
	}
	r.comma = in.Comma == ';'
	var rows [][]string
	for {
		cells, err := in.Read()
		if err != nil {
			break
		}
		line, _ := in.FieldPos(0)
		rows, r.lines = append(rows, cells), append(r.lines, line)
		if len(rows) > mostRows {
			break
		}
	}
	r.rows(rows)
}

// head is the row that names sizes, or -1: the first one with two of them, or with all.
func (r *sheetReader) head(rows [][]string) int {
	for i, row := range rows {
		n := 0
		for _, c := range row {
			if r.sizes.Index(c) >= 0 {
				n++
			}
		}
		if n >= min(2, r.sizes.Len()) {
			return i
		}
	}
	return -1
}

func (r *sheetReader) rows(rows [][]string) {
	if len(rows) > mostRows {
		r.wrong(mostRows, 1, "This sheet has too many rows.", fmt.Sprint(len(rows)), fmt.Sprintf("at most %d", mostRows), "")
		return
	}
	head := r.head(rows)
	if head < 0 {
		r.wrong(1, 1, "No line of this sheet names the sizes.", "", strings.Join(r.sizes.Names, ", ")+" side by side", "Write the sizes as the pattern does.")
		return
	}
	if h := rows[head]; len(h) > 1 && h[0] == "of" && h[1] == "what" {
		r.wrong(head+1, 1, "This is the grading as a table to read, with targets and differences: it is not read back.", "", "one line a value, its name in the first column",
			"Write a workbook with grade --format xlsx, change its values and give that.")
		return
	}
	at, unit := r.columns(rows[head], head+1)
	if r.found.Errors() {
		return
	}
	seen := map[string]int{}
	for i := head + 1; i < len(rows); i++ {
		r.row(rows[i], i+1, at, unit, seen)
	}
}

// columns are where the sizes and the unit stand in the line that names them; -1 if it has no unit.
func (r *sheetReader) columns(cells []string, line int) (at []int, unit int) {
	at, unit = make([]int, r.sizes.Len()), -1
	for c, text := range cells[:min(len(cells), mostColumns+1)] {
		switch i := r.sizes.Index(text); {
		case i >= 0 && at[i] > 0:
			r.wrong(line, c+1, fmt.Sprintf("The size %s is there twice.", text), "", "each size once", "")
		case i >= 0:
			at[i] = c
		case expr.Key(text) == "unit" || expr.Key(text) == "units":
			unit = c
		}
	}
	for i, c := range at {
		if c == 0 {
			r.wrong(line, 1, fmt.Sprintf("The size %s is missing in the line of sizes.", r.sizes.Names[i]), "", strings.Join(r.sizes.Names, ", "), "")
		}
	}
	return at, unit
}

func (r *sheetReader) row(cells []string, row int, at []int, unit int, seen map[string]int) {
	if len(cells) == 0 {
		return
	}
	name := strings.Join(strings.Fields(cells[0]), " ")
	word := ""
	if unit >= 0 && unit < len(cells) {
		word = strings.TrimSpace(cells[unit])
	}
	if a, b, ok := cutUnit(name); ok && word == "" {
		name, word = a, b
	}
	v := schematic.GradedValue{Name: name, Of: -1}
	for _, c := range at {
		n, ok := r.number(cells, row, c)
		v.Vals.Vals, v.Vals.Has = append(v.Vals.Vals, n), append(v.Vals.Has, ok)
	}
	if !slices.Contains(v.Vals.Has, true) {
		return // a heading, or an empty line
	}
	if name == "" {
		r.wrong(row, 1, "This row has numbers and no name.", "", "the name of a value in the first column", "")
		return
	}
	u, length := expr.ParseUnit(word)
	switch w := strings.ToLower(strings.TrimSuffix(word, ".")); {
	case length:
		v.Dim = expr.LengthOf
		for i := range v.Vals.Vals {
			v.Vals.Vals[i] = units.Of(v.Vals.Vals[i], u)
		}
	case slices.Contains([]string{"st", "sts", "stitches"}, w):
		v.Dim = expr.Stitches
	case slices.Contains([]string{"row", "rows", "rounds", "rnds"}, w):
		v.Dim = expr.Rows
	case w != "":
		r.wrong(row, max(unit+1, 1), fmt.Sprintf("%q is not a unit.", finding.Clip(word)), "", "cm, in, mm, sts or rows", "")
		return
	}
	k := expr.Key(name)
	if before, twice := seen[k]; twice {
		r.wrong(row, 1, fmt.Sprintf("The row %q is there twice.", finding.Clip(name)), fmt.Sprintf("also in row %d", before), "each name once", "")
		return
	}
	seen[k] = row
	r.vals = append(r.vals, v)
}

// number is what stands in a cell; nothing, a dash and none are no number, and anything else is told.
func (r *sheetReader) number(cells []string, row, c int) (units.Num, bool) {
	text := ""
	if c < len(cells) {
		text = strings.TrimSpace(cells[c])
	}
	if text == "" || text == "-" || text == expr.Dash || strings.EqualFold(text, "none") {
		return units.Num{}, false
	}
	if r.comma && strings.Count(text, ",") == 1 && !strings.Contains(text, ".") {
		text = strings.Replace(text, ",", ".", 1)
	}
	n, ok := decimal(text)
	if !ok {
		fix := ""
		if strings.HasPrefix(text, "=") {
			fix = "A formula stored as text is not calculated: put the number there."
		}
		r.wrong(row, c+1, fmt.Sprintf("%q is not a number.", finding.Clip(text)), "", "a number, or nothing where a size has none", fix)
	}
	return n, ok
}

// cutUnit takes a unit off the end of a name: neck, cm; neck (cm); neck in cm.
func cutUnit(name string) (string, string, bool) {
	for _, mark := range []string{",", "("} {
		if i := strings.LastIndex(name, mark); i > 0 {
			word := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(name[i+1:]), ")"))
			_, ok := expr.ParseUnit(word)
			if ok || slices.Contains([]string{"sts", "stitches", "rows"}, strings.ToLower(word)) {
				return strings.TrimSpace(name[:i]), word, true
			}
		}
	}
	return name, "", false
}

// decimal reads a number of a sheet; sheets keep fifteen digits, of which nine
// places are enough.
func decimal(text string) (units.Num, bool) {
	if n, ok := units.ParseNum(text); ok {
		return n, true
	}
	a, b, ok := strings.Cut(text, ".")
	if !ok || len(b) <= 6 || strings.Trim(b, "0123456789") != "" || len(b) > 40 {
		return units.Num{}, false
	}
	head, ok := units.ParseNum(a + "." + b[:6])
	if !ok {
		return units.Num{}, false
	}
	rest, ok := units.ParseNum((b[6:] + "000")[:3])
	if !ok {
		return units.Num{}, false
	}
	part := rest.Mul(units.Frac(1, 1_000_000_000))
	if strings.HasPrefix(strings.TrimSpace(a), "-") {
		part = part.Neg()
	}
	return head.Add(part), true
}
