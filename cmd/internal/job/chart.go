package job

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"

	"flatwright/cmd/internal/files"
	"flatwright/layout/chart"
	"flatwright/layout/place"
	"flatwright/layout/sheet"
	"flatwright/render/pdf"
	"flatwright/render/svg"
	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
)

// ChartOptions say which stitch charts are drawn, and how. The zero value is every
// named stretch of rows, as SVG and PDF, on A4.
type ChartOptions struct {
	Size        string // the size whose counts are charted; empty: the sample's, or the first
	Section     string // that stretch of rows alone; empty: each
	Terms       string // names of the stitches in the key, US or UK; empty: the text's
	Paper       place.Paper
	Orientation place.Orientation
	Scale       float64 // of the symbols, 1 for their usual size; 0: the largest that fits
	Least       float64 // under which no symbols are drawn by themselves; 0: 0.6
	Text        float64 // of numbers and words, mm; 0: the usual
	LeftHanded  bool
	Trim        bool                // cut the paper's height to the chart
	Without     schematic.DrawnPart // the heading or the key, to leave off
	Outlines    bool                // write the words of SVG as outlines
	Gauge       bool                // squares of a grid in the gauge's proportions
	Floats      int                 // how far a yarn is carried at most, in stitches, untold; 0: the usual
	Whole       bool                // leave nothing out of long rows and many rows
	Format      string              // svg or pdf; empty: both
	Face        *Source             // the file of a face for the words; nil: the house's
	Creator     string              // told in the PDF
}

// Chart draws the stitch charts of a pattern (text is the file of its rows, nil for
// those that stand in it, or else for the rows that its counts make), or of a text of
// rows alone if src is nil. Its error is ErrUnreadable, an OptionError, or of an ended
// ctx.
func Chart(ctx context.Context, src, text *Source, o ChartOptions) (Result, error) {
	var r Result
	var x *rows.Text
	opts := chart.Options{Paper: o.Paper, Orientation: o.Orientation, Scale: o.Scale, Least: o.Least, Text: o.Text, LeftHanded: o.LeftHanded, Trim: o.Trim, Without: o.Without, Whole: o.Whole, Floats: o.Floats}
	sample := 0
	var at finding.Pos // where the face is named
	if text != nil {
		t, _ := decoded(*text)
		text = &t
		at = finding.Pos{File: text.Name, Line: 1, Col: 1}
	}
	if src == nil {
		var rep rows.Report
		var err error
		if x, rep, err = readRows(ctx, text); err != nil {
			return r, err
		}
		r.Findings, r.Sizes = rep.Findings, rep.Sizes
		doubt(x, rep.Findings)
		o.Floats = floatsIn(x, o.Floats)
		opts.Floats = o.Floats
		r.Title = cmp.Or(x.Title, fileTitle(text.Name))
	} else {
		p, gs, res, err := work(ctx, *src)
		r = res
		if err != nil {
			return r, err
		}
		x = patternRows(p, gs, text, src.Name)
		opts.Designer = p.Designer
		at = facePos(p)
		sample = max(p.Sample, 0)
	}
	r.Slug, opts.Title = Slug(r.Title), r.Title
	opts.Face = ownFace(at, o.Face, &r.Findings)
	size, err := chartSize(x, o.Size, sample)
	switch {
	case err != nil:
		return r, err
	case says(x, "entrelac"):
		return r, errEntrelac
	case o.Gauge:
		if opts.Proportion, err = proportion(x); err != nil {
			return r, err
		}
	}
	works, err := made(ctx, func() ([]*chart.Work, error) { return chartWorks(x, o, size, &r.Findings) })
	if err != nil {
		return r, err
	}
	if len(works) == 1 && namesNothing(x, works[0].Title) {
		works[0].Title = ""
	}
	opts.Title = shownTitle(src, x, works, r.Title)
	var all []stitchChart
	var drawn []*sheet.Sheet
	for _, w := range works {
		if len(x.Sizes.Names) > 1 {
			w.Note = "Size " + strings.TrimPrefix(x.Sizes.Names[size], "size ") // one without a name is called by its number
		}
		r.Findings = append(r.Findings, chartFindings(w, x.Name, opts.Floats)...)
		sheets, err := made(ctx, func() ([]*sheet.Sheet, error) { return chart.Draw(w, opts) })
		switch {
		case stopped(ctx) != nil:
			return r, stopped(ctx)
		case err != nil && w.Title != "":
			return r, fmt.Errorf("%s: %w", w.Title, err)
		case err != nil:
			return r, err
		}
		all = append(all, stitchChart{w.Title, sheets})
		drawn = append(drawn, sheets...)
	}
	r.Findings = append(r.Findings, lacking(at, drawn...)...)
	r.Files, err = renderCharts(r.Title, opts.Designer, all, o)
	return r, err
}

// noFloats is more stitches than any yarn is carried over.
const noFloats = 1 << 30

// floatsIn is over how many stitches yarns of a text are carried untold: in intarsia none is carried.
func floatsIn(x *rows.Text, said int) int {
	if said == 0 && says(x, "intarsia") && !says(x, "strand") && !says(x, "fair isle") {
		return noFloats
	}
	return said
}

// doubt marks the rows that were not followed: what they make is not drawn.
func doubt(x *rows.Text, found finding.List) {
	for _, f := range found {
		if f.Unfollowed() {
			x.Doubt(f.Pos.Line)
		}
	}
}

// proportion is how tall a row is beside the width of a stitch, at the gauge of the text.
func proportion(x *rows.Text) (float64, error) {
	if x.Gauge == nil || x.Gauge.StitchWidth.Sign() <= 0 {
		return 0, &OptionError{"there is no gauge of stitches and rows from which squares take their proportions"}
	}
	return x.Gauge.RowHeight.Float() / x.Gauge.StitchWidth.Float(), nil
}

// chartFindings tell what a chart does not show, and floats that are long.
func chartFindings(w *chart.Work, name string, floats int) finding.List {
	var out finding.List
	for _, g := range w.Gaps() {
		out = append(out, finding.Finding{Kind: "chart/gap", Severity: finding.Warning, Pos: finding.Pos{File: name, Line: g.Line}, Section: w.Title,
			Message: "the chart has a gap: " + g.Words, Fix: "write it in words that can be read"})
	}
	for _, g := range w.Amiss() {
		out = append(out, finding.Finding{Kind: "chart/gap", Severity: finding.Warning, Pos: finding.Pos{File: name, Line: g.Line}, Section: w.Title,
			Message: "the chart does not agree with the text: " + g.Words, Fix: "correct the row or its count"})
	}
	told := map[string]bool{} // a float that a row repeats
	for _, f := range w.Floats(floats) {
		if told[f.String()] {
			continue
		}
		told[f.String()] = true
		out = append(out, finding.Finding{Kind: "chart/float", Severity: finding.Note, Pos: finding.Pos{File: name, Line: f.Row.Line}, Section: w.Title,
			Message: f.String(), Fix: "catch it on the way"})
	}
	return out
}

// HasGap reports whether a chart does not show all rows, as some were not read.
func HasGap(list finding.List) bool {
	return slices.ContainsFunc(list, func(f finding.Finding) bool { return f.Kind == "chart/gap" })
}

// shownTitle is what charts are called: as the pattern or the text is; a text that says no title by its first line if that is a name,
// by the name of its one piece, or else by its file's.
func shownTitle(src *Source, x *rows.Text, works []*chart.Work, title string) string {
	if src != nil || x.Title != "" {
		return title
	}
	if line := firstName(x); line != "" {
		return line
	}
	if len(works) == 1 && works[0].Title != "" {
		return works[0].Title
	}
	return title
}

// firstName is the first line of a text, if it is a name and no row, heading or list.
func firstName(x *rows.Text) string {
	for i, line := range x.Src {
		line = strings.TrimRight(strings.TrimSpace(strings.TrimLeft(line, "# ")), "!")
		n := len(strings.Fields(line))
		if n == 0 {
			continue
		}
		if n > mostTitle || n == 1 && line == strings.ToUpper(line) || strings.HasPrefix(strings.ToUpper(line), "ABBR") || strings.Contains(line, " – ") || strings.ContainsAny(line, ":.;*[]=") || isRow(x, i+1) {
			return ""
		}
		return finding.Capital(line)
	}
	return ""
}

// materials are the words of a line that says what is needed.
var materials = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(?:hooks?|needles?|yarns?|skeins?|scissors)\b`)
})

// namesNothing reports whether the heading above the one piece of a text is no name of it: Start, Directions, or the stitch that is told there.
func namesNothing(x *rows.Text, name string) bool {
	low := strings.ToLower(name)
	if slices.Contains([]string{"start", "for", "directions", "instructions", "pattern", "to make", "method", "begin", "shell", "fan", "instruction"}, low) || materials().MatchString(name) {
		return true
	}
	for _, g := range x.Groups {
		if strings.EqualFold(g.Name, name) {
			return true
		}
	}
	_, told := stitch.Lookup(low, x.Terms)
	return told
}

// mostTitle is how many words a line has at most that is a title.
const mostTitle = 8

// isRow reports whether a line of the text was read as a row.
func isRow(x *rows.Text, line int) bool {
	for _, s := range x.Sections {
		if slices.ContainsFunc(s.Lines, func(l *rows.Line) bool { return l.At.Line == line && len(l.Unread) == 0 }) {
			return true
		}
	}
	return false
}

// fileTitle is a title for a text that has none: its file's name as words.
func fileTitle(name string) string {
	base := filepath.Base(filepath.ToSlash(name))
	base = strings.TrimSuffix(base, filepath.Ext(base))
	if base == "" || base == "-" || base == "." || strings.HasPrefix(base, "<") || strings.Trim(base, "-_ ") == "" {
		return "Stitch chart"
	}
	words := strings.Join(strings.FieldsFunc(base, func(r rune) bool { return r == '-' || r == '_' || r == ' ' }), " ")
	return finding.Capital(words)
}

// patternRows are the rows of a pattern: written beside it, in it, or as its counts
// make them.
func patternRows(p *schematic.Pattern, gs []*schematic.Garment, text *Source, name string) *rows.Text {
	if text == nil {
		text = &Source{Name: name, Text: []byte(p.Rows)}
		if p.Rows == "" {
			text.Text = []byte(rows.Print(p, gs, rows.PrintOptions{Terms: stitch.Terms(p.Terms), Size: -1}))
		}
	}
	return rows.Read(text.Name, text.Text, rowsOptions(p))
}

func chartSize(x *rows.Text, name string, sample int) (int, error) {
	if name == "" {
		return min(sample, max(len(x.Sizes.Names)-1, 0)), nil
	}
	if i := x.Sizes.Index(strings.TrimSpace(name)); i >= 0 {
		return i, nil
	}
	return 0, &OptionError{fmt.Sprintf("no size %q; the sizes are %s", name, strings.Join(x.Sizes.Names, ", "))}
}

// says reports whether a text has a word of small letters.
func says(x *rows.Text, word string) bool {
	return slices.ContainsFunc(x.Src, func(l string) bool { return strings.Contains(strings.ToLower(l), word) })
}

var errEntrelac = errors.New("entrelac is worked in blocks that lean, each on the edge of others; a chart of squares can't show it")

var errNoRows = errors.New("there are no rows that a chart can be drawn from")

// chartWorks are the stretches of rows that are charted, one a section.
// mostCharted bounds the stitches of all sections that are charted at once: the largest garments have 60,000.
const mostCharted = 300_000

// A section whose rows can't be drawn is told, if others are.
func chartWorks(x *rows.Text, o ChartOptions, size int, told *finding.List) ([]*chart.Work, error) {
	var works []*chart.Work
	var names []string
	var refused error
	var missing finding.List
	want := func(s *rows.Section) bool {
		if noRows(s) {
			return false
		}
		names = append(names, s.Name)
		return o.Section == "" || strings.EqualFold(s.Name, o.Section)
	}
	left := mostCharted
	for s, g := range rows.Graphs(joined(x, o.Section), size, want) {
		if left -= g.Len(); left < 0 {
			return nil, &OptionError{fmt.Sprintf("up to %q there are more than %d stitches, too many to chart at once; chart one section alone with --section", s.Name, mostCharted)}
		}
		w, ok := chart.FromGraph(g)
		if !ok {
			continue
		}
		if err := w.Check(); err != nil {
			refused = err
			if i := slices.IndexFunc(s.Lines, func(l *rows.Line) bool { return l.Label != nil }); i >= 0 {
				missing = append(missing, finding.Finding{Kind: "chart/gap", Severity: finding.Warning, Pos: finding.Pos{File: x.Name, Line: s.Lines[i].At.Line}, Section: s.Name,
					Message: "these rows have no chart: " + err.Error(), Fix: "write them in words that can be read"})
			}
			continue
		}
		works = append(works, w.Parts()...)
	}
	if o.Terms != "" {
		t, err := terms(o.Terms)
		if err != nil {
			return nil, err
		}
		for _, w := range works {
			w.Terms = t
		}
	}
	switch {
	case len(works) > 0:
		*told = append(*told, missing...)
		return works, nil
	case refused != nil:
		return nil, fmt.Errorf("%w: %w%s", errNoRows, refused, wayOut(x))
	case o.Section != "" && len(names) > 0:
		return nil, &OptionError{fmt.Sprintf("there is no stretch of rows %q that can be charted; there are %s", o.Section, strings.Join(names, ", "))}
	}
	return nil, errNoRows
}

// noRows reports whether a section is prose, or names the stitches of a pattern and has no row of it: Stitches used: single crochet (sc).
func noRows(s *rows.Section) bool {
	name := strings.ToLower(s.Name)
	return s.Prose || (strings.Contains(name, "stitches used") || strings.Contains(name, "stitches you") || strings.Contains(name, "abbreviation")) &&
		!slices.ContainsFunc(s.Lines, func(l *rows.Line) bool { return l.Label != nil })
}

// joined is a text whose headings part no rows that go on, unless one of its sections is asked for.
func joined(x *rows.Text, section string) *rows.Text {
	if section != "" {
		return x
	}
	return rows.Joined(x)
}

// wayOut is what would make a chart of a text that is worked from corner to corner.
func wayOut(x *rows.Text) string {
	for _, line := range x.Src {
		if low := strings.ReplaceAll(strings.ToLower(line), "-", " "); strings.Contains(low, "corner to corner") || strings.Contains(low, "c2c") {
			return "; blocks from corner to corner can't be charted by their yarns alone: write each as it is worked, such as ch 3, 3 dc"
		}
	}
	return ""
}

// stitchChart is one chart, of one or more sheets.
type stitchChart struct {
	name   string
	sheets []*sheet.Sheet
}

// page is what tells page k of the chart apart from the others of it, or "".
func (c stitchChart) page(k int) string {
	if len(c.sheets) < 2 {
		return ""
	}
	return fmt.Sprintf("page %d", k+1)
}

// chartSVG writes a page of a chart.
func chartSVG(s *sheet.Sheet, outlines bool) ([]byte, error) {
	var b bytes.Buffer
	write := svg.Write
	if outlines {
		write = svg.WriteOutlined
	}
	err := write(&b, s)
	return b.Bytes(), err
}

func renderCharts(title, designer string, all []stitchChart, o ChartOptions) ([]files.File, error) {
	names := namer{}
	name := func(ending string, parts ...string) string {
		return names.name(ending, slices.DeleteFunc(parts, func(s string) bool { return s == "" })...)
	}
	var pages []*sheet.Sheet
	var out []files.File
	for _, c := range all {
		pages = append(pages, c.sheets...)
		section := c.name
		if section == title {
			section = ""
		}
		for k, s := range c.sheets {
			if o.Format == "pdf" {
				break
			}
			body, err := chartSVG(s, o.Outlines)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", c.name, err)
			}
			out = append(out, files.File{Name: name(".svg", title, "chart", section, o.Size, c.page(k)), Body: body})
		}
	}
	if o.Format == "svg" {
		return out, nil
	}
	var b bytes.Buffer
	info := pdf.Info{Title: title + ", stitch charts", Author: designer, Subject: "Stitch charts", Lang: "en", Creator: o.Creator}
	if err := pdf.Write(&b, pages, info); err != nil {
		return nil, fmt.Errorf("PDF: %w", err)
	}
	return append(out, files.File{Name: name(".pdf", title, "charts", o.Size), Body: b.Bytes()}), nil
}
