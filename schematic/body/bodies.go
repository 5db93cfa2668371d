// Package body has the tables of body measurements: those of the yarn standard that come with the program and a
// designer's own, and the names of ease, how much larger a garment is than a body. It knows no pattern.
package body

import (
	"embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"path"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

//go:embed bodies/*.csv
var published embed.FS

// Table is a table of body measurements: one row a measurement, one column a
// size. Lengths are in mm.
type Table struct {
	Title  string
	Source string
	Unit   units.Unit // as authored
	Sizes  []string
	Rows   []Row
}

// Row is one measurement of a table of bodies; Low and High differ where
// the table has a range.
type Row struct {
	Name      string
	Low, High expr.Graded
	Pos       finding.Pos
}

// Published are the names of the tables of the yarn standard that come with
// the program, in alphabetical order.
func Published() []string {
	entries, _ := published.ReadDir("bodies")
	var names []string
	for _, e := range entries {
		names = append(names, strings.TrimSuffix(e.Name(), path.Ext(e.Name())))
	}
	return names
}

// Named is the table of the yarn standard called name (see
// Published), or false. Case does not matter.
func Named(name string) (*Table, bool) {
	name = strings.ToLower(strings.TrimSpace(name))
	if !slices.Contains(Published(), name) {
		return nil, false
	}
	data, err := published.ReadFile("bodies/" + name + ".csv")
	if err != nil {
		return nil, false
	}
	b, found := Read(name+".csv", data)
	return b, !found.Errors()
}

const (
	maxBodies     = 1 << 20 // bytes of a table
	maxBodySizes  = 400
	maxBodyRows   = 400
	maxBodyLength = 10_000 // mm: ten metres
)

// Read reads a table of bodies: lines title, source and unit (cm or in)
// with a colon, then a line that begins with 'measurement' and names the
// sizes, then one line a measurement. Cells are apart by comma, semicolon or
// tab, as in the line of sizes; a range has a dash, a size without a value has
// a lone dash; text behind # at the start of a line is a comment. Every error
// has its line and column; all are told at once.
func Read(file string, data []byte) (*Table, finding.List) {
	r := &reader{file: file, b: &Table{}}
	r.read(strings.TrimPrefix(string(data), "\ufeff"))
	return r.b, r.found
}

type reader struct {
	file  string
	b     *Table
	found finding.List
	unit  bool
}

func (r *reader) wrong(line, col, width int, message, have, want, fix string) {
	r.found = append(r.found, finding.Finding{
		Kind: "file/bodies", Severity: finding.Error,
		Pos:     finding.Pos{File: r.file, Line: line, Col: col, EndCol: col + max(width, 1)},
		Message: message, Have: have, Want: want, Fix: fix,
	})
}

func (r *reader) read(text string) {
	if len(text) > maxBodies {
		r.wrong(1, 1, 1, "This table of bodies is too large.", fmt.Sprintf("%d bytes", len(text)), fmt.Sprintf("at most %d", maxBodies), "")
		return
	}
	if !utf8.ValidString(text) {
		r.wrong(1, 1, 1, "This file is not text in UTF-8.", "", "a plain text file", "Save the sheet as 'CSV UTF-8'.")
		return
	}
	text = strings.ReplaceAll(text, "\r\n", "\n")
	line, rest := 1, text
	for rest != "" {
		one, after, _ := strings.Cut(rest, "\n")
		trimmed := strings.TrimSpace(one)
		if isHead(trimmed) {
			r.table(rest, line)
			return
		}
		if trimmed != "" && trimmed[0] != '#' {
			r.heading(one, line)
		}
		rest, line = after, line+1
	}
	r.wrong(line, 1, 1, "This table of bodies has no line of sizes.", "", "a line such as: measurement,XS,S,M", "Begin the line of sizes with the word 'measurement'.")
}

func isHead(line string) bool {
	rest, ok := cutFold(line, "measurement")
	return ok && rest != "" && strings.ContainsRune(",;\t", rune(rest[0]))
}

func cutFold(s, prefix string) (string, bool) {
	if len(s) < len(prefix) || !strings.EqualFold(s[:len(prefix)], prefix) {
		return s, false
	}
	return s[len(prefix):], true
}

func (r *reader) heading(one string, line int) {
	// Programs that save CSV put a cell with a comma into quotes and fill short lines with separators.
	t := strings.Trim(strings.TrimRight(strings.TrimSpace(one), ",;\t"), `"`)
	key, value, ok := strings.Cut(t, ":")
	value = strings.TrimSpace(value)
	width := utf8.RuneCountInString(one)
	if !ok {
		r.wrong(line, 1, width, "This line is neither a heading nor the line of sizes.", t, "title:, source:, unit: or measurement,…", "")
		return
	}
	switch strings.ToLower(strings.TrimSpace(key)) {
	case "title":
		r.b.Title = value
	case "source":
		r.b.Source = value
	case "unit":
		u, ok := units.ParseUnit(value)
		if !ok {
			r.wrong(line, 1, width, "This is not a unit of length.", value, "cm or in", "")
		}
		r.b.Unit, r.unit = u, true
	default:
		r.wrong(line, 1, width, fmt.Sprintf("A table of bodies has no heading '%s'.", strings.TrimSpace(key)), "", "title, source or unit", "")
	}
}

func (r *reader) table(text string, first int) {
	if !r.unit {
		r.wrong(first, 1, len("measurement"), "This table does not say its unit.", "", "unit: cm or unit: in, above the line of sizes", "")
	}
	in := csv.NewReader(strings.NewReader(text))
	in.Comma = rune(text[len("measurement")])
	in.Comment = '#'
	in.FieldsPerRecord = -1
	in.TrimLeadingSpace = in.Comma != '\t'
	head := true
	seen := map[string]int{}
	for {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			var p *csv.ParseError
			line, col := first, 1
			if errors.As(err, &p) {
				line, col = first+p.Line-1, p.Column
			}
			r.wrong(line, col, 1, "A quotation mark here does not belong to a pair.", "", "plain numbers, without quotation marks", "")
			return
		}
		at := func(i int) (int, int) {
			line, col := in.FieldPos(i)
			return first + line - 1, col
		}
		for len(cells) > 0 && strings.TrimSpace(cells[len(cells)-1]) == "" && (head || len(cells) > len(r.b.Sizes)+1) {
			cells = cells[:len(cells)-1]
		}
		if head {
			head = false
			r.sizes(cells, at)
			continue
		}
		r.row(cells, at, seen)
	}
	if len(r.b.Rows) == 0 && !r.found.Errors() {
		r.wrong(first, 1, 1, "This table has no measurements below its line of sizes.", "", "one line a measurement", "")
	}
}

func (r *reader) sizes(cells []string, at func(int) (int, int)) {
	for i, c := range cells[1:] {
		c = strings.TrimSpace(c)
		line, col := at(i + 1)
		switch {
		case c == "":
			r.wrong(line, col, 1, "A size here has no name.", "", "a name such as M", "")
		case slices.ContainsFunc(r.b.Sizes, func(s string) bool { return strings.EqualFold(s, c) }):
			r.wrong(line, col, len(c), fmt.Sprintf("The size %s is twice in the line of sizes.", c), "", "each size once", "")
		case len(r.b.Sizes) == maxBodySizes:
			r.wrong(line, col, len(c), "This table has too many sizes.", fmt.Sprint(len(cells)-1), fmt.Sprint("at most ", maxBodySizes), "")
			return
		}
		r.b.Sizes = append(r.b.Sizes, c)
	}
}

func (r *reader) row(cells []string, at func(int) (int, int), seen map[string]int) {
	line, col := at(0)
	name := expr.Key(cells[0])
	width := utf8.RuneCountInString(cells[0])
	if strings.TrimSpace(strings.Join(cells, "")) == "" { // an empty line of a spreadsheet
		return
	}
	if len(r.b.Rows) == maxBodyRows {
		r.wrong(line, col, width, "This table has too many measurements.", "", fmt.Sprint("at most ", maxBodyRows), "")
		return
	}
	if !isName(name) {
		r.wrong(line, col, width, "This cannot be the name of a measurement.", cells[0], "words such as upper arm", "")
		return
	}
	if before, twice := seen[name]; twice {
		r.wrong(line, col, width, fmt.Sprintf("The measurement '%s' is there twice.", name), fmt.Sprintf("also in line %d", before), "each measurement once", "")
		return
	}
	seen[name] = line
	if n := len(cells) - 1; n != len(r.b.Sizes) {
		r.wrong(line, col, width, fmt.Sprintf("The measurement '%s' has the wrong number of values.", name),
			fmt.Sprintf("%d values", n), fmt.Sprintf("%d, one for each of %s", len(r.b.Sizes), strings.Join(r.b.Sizes, ", ")),
			"Put a dash where a size has none.")
		return
	}
	row := Row{Name: name, Pos: finding.Pos{File: r.file, Line: line, Col: col, EndCol: col + width}}
	for i, c := range cells[1:] {
		low, high, has := units.Num{}, units.Num{}, false
		if c = strings.TrimSpace(c); c != "" && c != "-" && c != "–" {
			var why string
			low, high, why = lengths(c, r.b.Unit)
			if has = why == ""; !has {
				line, col := at(i + 1)
				r.wrong(line, col, utf8.RuneCountInString(c), why, c, "a number such as 42.5 or 16½, or a range such as 28-30", "")
			}
		}
		row.Low.Vals, row.Low.Has = append(row.Low.Vals, low), append(row.Low.Has, has)
		row.High.Vals, row.High.Has = append(row.High.Vals, high), append(row.High.Has, has)
	}
	r.b.Rows = append(r.b.Rows, row)
}

// lengths reads a number or a range, in u, as mm; why is empty if it is one.
func lengths(text string, u units.Unit) (low, high units.Num, why string) {
	a, b, ranged := strings.Cut(strings.Replace(text, "–", "-", 1), "-")
	low, ok := units.ParseNum(a)
	high, ok2 := low, true
	if ranged {
		high, ok2 = units.ParseNum(b)
	}
	switch {
	case !ok || !ok2:
		why = "This is not a length."
		if strings.Contains(text, ",") {
			why = "This is not a length: a decimal is written with a point."
		}
	case low.Sign() <= 0:
		why = "A body measurement is more than 0."
	case high.Less(low):
		why = "This range goes backwards."
	}
	low, high = units.Of(low, u), units.Of(high, u)
	if why == "" && units.Int(maxBodyLength).Less(high) {
		why = "No body is that large: is the unit right?"
	}
	return low, high, why
}

// alike are names of the same size in two ways of writing.
var alike = map[string]string{"1x": "xl", "xxl": "2x", "2xl": "2x", "3xl": "3x", "4xl": "4x", "5xl": "5x", "xxxl": "3x",
	"x-small": "xs", "small": "s", "medium": "m", "large": "l", "x-large": "xl", "1xl": "xl"}

func plainSize(name string) string {
	n := strings.ToLower(strings.TrimSpace(name))
	if a, ok := alike[n]; ok {
		return a
	}
	return n
}

// Row is the measurement called name, or nil. Bust and chest are one, and so
// are hip and hips.
func (b *Table) Row(name string) *Row {
	find := func(n string) *Row {
		for i := range b.Rows {
			if strings.EqualFold(b.Rows[i].Name, n) {
				return &b.Rows[i]
			}
		}
		return nil
	}
	if row := find(name); row != nil {
		return row
	}
	for _, pair := range [][2]string{{"bust", "chest"}, {"hip", "hips"}} {
		for i, n := range pair {
			if strings.EqualFold(n, name) {
				return find(pair[1-i])
			}
		}
	}
	return nil
}

// For is the table's values for the sizes given, in their order, a size of the
// pattern that the table lacks having none. XL and 1X are one size, and so are
// the other two ways of writing sizes. Missing are the sizes that the table lacks.
func (b *Table) For(sizes expr.Sizes) (rows []Row, missing []string) {
	at := make([]int, sizes.Len())
	for i, s := range sizes.Names {
		at[i] = slices.IndexFunc(b.Sizes, func(n string) bool { return strings.EqualFold(n, strings.TrimSpace(s)) })
		if at[i] < 0 {
			at[i] = slices.IndexFunc(b.Sizes, func(n string) bool { return plainSize(n) == plainSize(s) })
		}
		if at[i] < 0 {
			missing = append(missing, s)
		}
	}
	pick := func(g expr.Graded) expr.Graded {
		out := expr.Graded{Vals: make([]units.Num, len(at)), Has: make([]bool, len(at))}
		for i, j := range at {
			out.Vals[i], out.Has[i] = g.At(j)
		}
		return out
	}
	for _, row := range b.Rows {
		rows = append(rows, Row{Name: row.Name, Low: pick(row.Low), High: pick(row.High), Pos: row.Pos})
	}
	return rows, missing
}

// isName reports whether s can name a measurement: words that begin with a
// letter, of letters, digits, hyphens and spaces.
func isName(s string) bool {
	for i, c := range s {
		letter := unicode.IsLetter(c)
		if !letter && (i == 0 || !unicode.IsDigit(c) && c != ' ' && c != '-') {
			return false
		}
	}
	return s != "" && len(s) <= 60
}
