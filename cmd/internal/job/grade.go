package job

import (
	"bufio"
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"flatwright/cmd/internal/files"
	"flatwright/layout/place"
	"flatwright/render/text"
	"flatwright/render/xlsx"
	"flatwright/schematic"
	"flatwright/schematic/body"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/grade"
	"flatwright/schematic/units"
)

// MostSheet is the size of the largest sheet that is read, in bytes.
const MostSheet = xlsx.MostBytes

// GradeOptions say what of the grading is wanted. The zero value is the table as text.
type GradeOptions struct {
	Format string // text, markdown, csv or xlsx; empty: text
	Fill   bool   // instead of a table: the pattern file with its sums filled in
	From   Source // a spreadsheet whose values go into the grading first; then the pattern file is given
	Sheet  string // of From
	Nested bool   // instead of a table: a drawing of all sizes, one inside the other
	Draw   DrawOptions
	// Explain tells the arithmetic under the table, in text and Markdown, for Size or, if that is
	// empty, the sample's size.
	Explain bool
	Size    string
	Bodies  Source // a table of bodies for the pattern's sizes: published by name alone, or with its text
}

func nestedDrawing(o DrawOptions) *drawing {
	return &drawing{name: "nested", opts: place.Options{Paper: o.Paper, Orientation: o.Orientation, Scale: o.Scale, Text: o.Text, Trim: o.Trim}}
}

// Grade gives the grading of a pattern: as a table, as a workbook, or as the
// pattern file with numbers filled in. Its error is ErrUnreadable, an OptionError, or of an ended ctx.
func Grade(ctx context.Context, src Source, o GradeOptions) (Result, error) {
	p, gs, r, err := work(ctx, src)
	if err != nil {
		return r, err
	}
	name := namer{}
	switch {
	case o.Bodies.Name != "":
		body, err := bodies(p, &r, o.Bodies)
		r.Files = []files.File{{Name: name.name(".yaml", p.Title, "bodies"), Body: body}}
		return r, err
	case o.From.Name != "":
		vals, found := xlsx.Read(o.From.Name, o.From.Text, o.Sheet, p.Sizes)
		r.Findings = append(r.Findings, found...)
		if found.Errors() {
			return r, ErrUnreadable
		}
		text, found := grade.Take(src.Text, p, vals)
		r.Findings = append(r.Findings, found...)
		if found.Errors() {
			return r, ErrUnreadable
		}
		if q, _, _, err := work(ctx, Source{Name: src.Name, Text: text}); err == nil {
			r.Findings = append(r.Findings, grade.NotTaken(q, vals)...)
		}
		r.Files = []files.File{{Name: name.name(".yaml", p.Title), Body: text}}
		return r, nil
	case o.Nested:
		d := nestedDrawing(o.Draw)
		d.opts.Face = ownFace(facePos(p), o.Draw.Face, &r.Findings)
		if d.sheets, err = place.Nested(gs, d.opts); err != nil {
			return r, err
		}
		r.Findings = append(r.Findings, lacking(facePos(p), d.sheets...)...)
		r.Files, err = render(ctx, p, []*drawing{d}, o.Draw)
		return r, err
	case o.Fill:
		r.Files = []files.File{{Name: name.name(".yaml", p.Title), Body: grade.Fill(src.Text, p)}}
		return r, nil
	}
	var b bytes.Buffer
	ending := ".txt"
	size, explained, err := explained(p, o)
	if err != nil {
		return r, err
	}
	switch t := grade.TableOf(p, gs); o.Format {
	case "", "text":
		err = gradeText(&b, t)
		explainText(&b, size, explained)
	case "markdown":
		ending = ".md"
		gradeMarkdown(&b, t)
		explainMarkdown(&b, size, explained)
	case "csv":
		ending, err = ".csv", gradeCSV(&b, t)
	case "xlsx":
		ending, err = ".xlsx", xlsx.Write(&b, p, gs)
	default:
		return r, &OptionError{fmt.Sprintf("no format %q; choose text, markdown, csv or xlsx", o.Format)}
	}
	r.Files = []files.File{{Name: name.name(ending, p.Title, "grading"), Body: b.Bytes()}}
	return r, err
}

// explained is the arithmetic that is asked for, and its size.
func explained(p *schematic.Pattern, o GradeOptions) (string, []grade.Working, error) {
	if !o.Explain {
		if o.Size != "" {
			return "", nil, &OptionError{"a size goes with the arithmetic, and that is not asked for"}
		}
		return "", nil, nil
	}
	if o.Format == "csv" || o.Format == "xlsx" {
		return "", nil, &OptionError{"the arithmetic is shown in text and Markdown; in a workbook, the cells hold the formulas"}
	}
	size := max(p.Sample, 0)
	if o.Size != "" {
		var err error
		if size, err = sizeNamed(p, o.Size); err != nil {
			return "", nil, err
		}
	}
	return p.Sizes.Names[size], grade.Explain(p, size), nil
}

func explainText(w io.Writer, size string, all []grade.Working) {
	switch {
	case size == "":
		return
	case len(all) == 0:
		fmt.Fprintf(w, "\nThe pattern has no grading: its counts of size %s are written in the file.\n", size)
		return
	}
	fmt.Fprintf(w, "\nHow the counts of size %s are worked out\n", size)
	for _, e := range all {
		fmt.Fprintf(w, "\n%s%s\n  %s\n", e.Name, how(e.How), strings.Join(e.Lines, "\n  "))
	}
}

func explainMarkdown(w io.Writer, size string, all []grade.Working) {
	if size == "" {
		return
	}
	if len(all) == 0 {
		fmt.Fprintf(w, "\nThe pattern has no grading: its counts of size %s are written in the file.\n", finding.Markdown(size))
		return
	}
	fmt.Fprintf(w, "\n### How the counts of size %s are worked out\n", finding.Markdown(size))
	for _, e := range all {
		fmt.Fprintf(w, "\n**%s**%s\n\n", finding.Markdown(e.Name), finding.Markdown(how(e.How)))
		for _, l := range e.Lines {
			fmt.Fprintf(w, "- %s\n", finding.Markdown(l))
		}
	}
}

// bodies are the lines of a pattern file with the bodies of a table for its sizes.
func bodies(p *schematic.Pattern, r *Result, from Source) ([]byte, error) {
	b, ok := body.Named(from.Name)
	if from.Text != nil {
		table, found := body.Read(from.Name, from.Text)
		r.Findings = append(r.Findings, found...)
		if found.Errors() {
			return nil, ErrUnreadable
		}
		b, ok = table, true
	}
	if !ok {
		return nil, &OptionError{fmt.Sprintf("no table of bodies %q; choose %s, or a file of your own", from.Name, strings.Join(body.Published(), ", "))}
	}
	rows, missing := b.For(p.Sizes)
	if len(missing) == p.Sizes.Len() {
		return nil, &OptionError{fmt.Sprintf("the table %q has none of the sizes %s; it has %s", from.Name, strings.Join(missing, ", "), strings.Join(b.Sizes, ", "))}
	}
	var out bytes.Buffer
	out.WriteString("bodies:\n")
	if b.Source != "" {
		fmt.Fprintf(&out, "  # %s\n", b.Source)
	}
	if len(missing) > 0 {
		fmt.Fprintf(&out, "  # not in this table: %s\n", strings.Join(missing, ", "))
	}
	for _, row := range rows {
		texts := make([]string, p.Sizes.Len())
		for i := range texts {
			texts[i] = bodyText(row, i, b.Unit)
		}
		fmt.Fprintf(&out, "  %s: %s %s\n", row.Name, p.Sizes.Line(texts), b.Unit)
	}
	return out.Bytes(), nil
}

// bodyText is a body of size i, or both ends of it, or a dash.
func bodyText(row body.Row, i int, u units.Unit) string {
	low, has := row.Low.At(i)
	high, _ := row.High.At(i)
	switch {
	case !has:
		return expr.Dash
	case high.Eq(low):
		return amount(low, u)
	}
	return amount(low, u) + "-" + amount(high, u)
}

func amount(mm units.Num, u units.Unit) string {
	if v := units.In(mm, u); u == units.Inch {
		return units.Mixed(v)
	}
	return units.Decimal(units.In(mm, u), 3)
}

// gradeWidths are how wide the names and the values of a table of grading are.
func gradeWidths(t grade.Table) (label, column int) {
	label, column = 4, 1
	fit := func(to *int, text string) { *to = max(*to, utf8.RuneCountInString(text)) }
	for i, s := range t.Sizes {
		fit(&column, s)
		for _, part := range t.Parts {
			for _, row := range part.Rows {
				fit(&label, row.Label(t.Units))
				fit(&column, row.Text(i, t.Units))
				if row.Fit != nil {
					fit(&column, row.Fit[i])
				}
			}
		}
	}
	return label, column
}

func gradeText(w io.Writer, t grade.Table) error {
	label, column := gradeWidths(t)
	out := bufio.NewWriter(w)
	line := func(name string, cells []string) {
		var b strings.Builder
		fmt.Fprintf(&b, "  %-*s", label, name)
		for _, c := range cells {
			fmt.Fprintf(&b, "  %*s", column, c)
		}
		fmt.Fprintln(out, strings.TrimRight(b.String(), " "))
	}
	fmt.Fprintf(out, "%s: grading\n\n", t.Title)
	line("", t.Sizes)
	jumped := false
	for _, part := range t.Parts {
		fmt.Fprintf(out, "\n%s%s\n", part.Name, how(part.How))
		for _, row := range part.Rows {
			cells := make([]string, len(t.Sizes))
			for i := range cells {
				jumped = jumped || row.Jump[i]
				cells[i] = row.Text(i, t.Units)
			}
			line(row.Label(t.Units), cells)
			if strings.Join(row.Fit, "") != "" {
				line("fit", row.Fit)
			}
		}
	}
	if len(t.Parts) == 0 {
		fmt.Fprintln(out, "The pattern has no grading, and no measurement to compare with a body.")
	}
	if jumped {
		fmt.Fprintln(out, "\n! a step from the size before that is unlike the other steps")
	}
	return out.Flush()
}

func how(s string) string {
	if s == "" {
		return ""
	}
	return ": " + s
}

func gradeMarkdown(w io.Writer, t grade.Table) {
	fmt.Fprintf(w, "## %s: grading\n", finding.Markdown(t.Title))
	for _, part := range t.Parts {
		fmt.Fprintf(w, "\n**%s**%s\n\n| |", finding.Markdown(part.Name), finding.Markdown(how(part.How)))
		for _, s := range t.Sizes {
			fmt.Fprintf(w, " %s |", finding.Markdown(s))
		}
		fmt.Fprintf(w, "\n|---|%s\n", strings.Repeat("---:|", len(t.Sizes)))
		for _, row := range part.Rows {
			fmt.Fprintf(w, "| %s |", finding.Markdown(row.Label(t.Units)))
			for i := range t.Sizes {
				fmt.Fprintf(w, " %s |", row.Text(i, t.Units))
			}
			fmt.Fprintln(w)
		}
	}
}

func gradeCSV(w io.Writer, t grade.Table) error {
	out := csv.NewWriter(w)
	head := []string{"of", "what"}
	for _, s := range t.Sizes {
		head = append(head, text.Harmless(s))
	}
	if err := out.Write(head); err != nil {
		return err
	}
	for _, part := range t.Parts {
		for _, row := range part.Rows {
			cells := []string{text.Harmless(part.Name), text.Harmless(row.Label(t.Units))}
			for i := range t.Sizes {
				cells = append(cells, strings.TrimPrefix(strings.TrimSuffix(row.Text(i, t.Units), " !"), "+"))
			}
			if err := out.Write(cells); err != nil {
				return err
			}
		}
	}
	out.Flush()
	return out.Error()
}
