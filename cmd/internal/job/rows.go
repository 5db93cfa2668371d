package job

import (
	"bytes"
	"context"
	"errors"
	"fmt"

	"flatwright/cmd/internal/files"
	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/read"
	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
)

// RowsResult is what a check of written rows gives: the findings of the rows, and of
// the pattern if there is one, and how much of the text was read.
type RowsResult struct {
	Result
	Read    rows.Reading
	Sources map[string][]byte // the files that findings stand in, as they were read: in UTF-8
	text    *rows.Text
	rep     rows.Report
}

// RowsFile is the file beside the pattern in which its rows are written, or "" if
// it names none.
func RowsFile(src Source) string {
	p, _ := read.Pattern(src.Name, src.Text)
	if p == nil {
		return ""
	}
	return p.RowsFile
}

// CheckRows checks written rows: text alone if src is nil, else against the pattern
// src; with no text, the rows that stand in the pattern, if any. Its error is
// ErrUnreadable, or of an ended ctx.
func CheckRows(ctx context.Context, src, text *Source) (RowsResult, error) {
	out := RowsResult{Sources: map[string][]byte{}}
	var note finding.List
	if text != nil {
		t, n := decoded(*text)
		text, note = &t, n
		out.Sources[t.Name] = t.Text
	}
	if src == nil {
		var err error
		if out.text, out.rep, err = readRows(ctx, text); err != nil {
			return out, err
		}
		out.rep.Findings = append(note, out.rep.Findings...)
		out.Findings, out.Read = out.rep.Findings, out.rep.Read
		out.Title, out.Sizes = out.text.Title, out.rep.Sizes
		return out, nil
	}
	out.Sources[src.Name] = src.Text
	p, gs, r, err := work(ctx, *src)
	out.Result = r
	if err != nil || text == nil && p.Rows == "" {
		return out, err
	}
	held := RowsResult{Result: r, Sources: out.Sources}
	held.Findings = append(held.Findings, note...)
	if err := apart(ctx, func() { held.hold(*src, text, p, gs) }); err != nil {
		return out, err
	}
	return held, nil
}

// readRows reads and checks a text of rows alone.
func readRows(ctx context.Context, text *Source) (x *rows.Text, rep rows.Report, err error) {
	var read *rows.Text
	var held rows.Report
	if err := apart(ctx, func() {
		read = rows.Read(text.Name, text.Text, rows.Options{})
		held = rows.Check(read, rows.Options{})
	}); err != nil {
		return nil, rep, err
	}
	return read, held, nil
}

// hold checks written rows against the pattern src; with no text, those that stand
// in it.
func (out *RowsResult) hold(src Source, text *Source, p *schematic.Pattern, gs []*schematic.Garment) {
	within := text == nil
	if within {
		text = &Source{Name: src.Name, Text: []byte(p.Rows)}
	}
	o := rowsOptions(p)
	out.text = rows.Read(text.Name, text.Text, o)
	out.rep = rows.Check(out.text, o)
	list := rows.First(out.text, append(out.rep.Findings, rows.Against(out.text, p, gs)...))
	if within {
		for i := range list {
			list[i].Pos = inFile(list[i].Pos, p.RowsPos)
		}
	}
	out.Read = out.rep.Read
	out.rep.Findings = list
	out.Findings = append(out.Findings, list...)
	out.Findings.Sort()
}

// inFile is a place within a block of rows, as a place in the file that the block
// begins at in.
func inFile(p, in finding.Pos) finding.Pos {
	if p.Line == 0 {
		return in
	}
	return finding.Pos{File: in.File, Line: p.Line + in.Line - 1, Col: p.Col + in.Col - 1, EndCol: p.EndCol + in.Col - 1}
}

func rowsOptions(p *schematic.Pattern) rows.Options {
	return rows.Options{Sizes: p.Sizes, Terms: stitch.Terms(p.Terms), TermsSet: true}
}

// ExplainRows tells how the instructions on a line of a text of rows were read: in the terms and sizes of the
// pattern src, if it is not nil. Its error is an OptionError if none stand there, ErrUnreadable, or of an ended ctx.
func ExplainRows(ctx context.Context, src *Source, text Source, line int) ([]string, error) {
	text, _ = decoded(text)
	var o rows.Options
	if src != nil {
		p, _, _, err := work(ctx, *src)
		if err != nil {
			return nil, err
		}
		o = rowsOptions(p)
	}
	var out []string
	if err := apart(ctx, func() { out = rows.Explain(rows.Read(text.Name, text.Text, o), line) }); err != nil {
		return nil, err
	}
	if len(out) == 0 {
		return nil, &OptionError{fmt.Sprintf("line %d of %s has no instructions", line, text.Name)}
	}
	return out, nil
}

// Markdown is a report to send to the designer, or nil if there was no text.
func (r RowsResult) Markdown() ([]byte, error) {
	if r.text == nil {
		return nil, nil
	}
	rep := r.rep
	rep.Findings = r.Findings
	var b bytes.Buffer
	err := rows.Markdown(&b, r.text, rep, r.Sources)
	return b.Bytes(), err
}

// RowsOptions say how the rows of a pattern are printed.
type RowsOptions struct {
	Terms  string // US or UK; empty: the pattern's own
	Size   string // one size alone; empty: all in the trade's line
	Evenly bool   // where each stitch of an even change falls is spelled out
}

// Rows prints the rows of every section of a pattern as one text file. Its error
// is ErrUnreadable, an OptionError, or of an ended ctx.
func Rows(ctx context.Context, src Source, o RowsOptions) (Result, error) {
	p, gs, r, err := work(ctx, src)
	if err != nil {
		return r, err
	}
	po := rows.PrintOptions{Terms: stitch.Terms(p.Terms), Size: -1, Evenly: o.Evenly}
	if o.Terms != "" {
		if po.Terms, err = terms(o.Terms); err != nil {
			return r, err
		}
	}
	parts := []string{p.Title, "rows"}
	if o.Size != "" {
		if po.Size, err = sizeNamed(p, o.Size); err != nil {
			return r, err
		}
		parts = append(parts, p.Sizes.Names[po.Size])
	}
	r.Files = []files.File{{Name: namer{}.name(".txt", parts...), Body: []byte(rows.Print(p, gs, po))}}
	return r, nil
}

func terms(name string) (stitch.Terms, error) {
	switch name {
	case "US", "us":
		return stitch.US, nil
	case "UK", "uk":
		return stitch.UK, nil
	}
	return stitch.US, &OptionError{fmt.Sprintf("no terms %q; choose US or UK", name)}
}

// Words turns a text of rows from one set of terms into the other, everything else as it
// stands. From may be empty: the terms that the text says, or shows, it is in. Its error is an
// OptionError.
func Words(text Source, from, to string) ([]byte, error) {
	text, _ = decoded(text)
	b, err := terms(to)
	if err != nil {
		return nil, err
	}
	a := stitch.US
	if from == "" {
		x := rows.Read(text.Name, text.Text, rows.Options{})
		if !x.TermsSet {
			return nil, &OptionError{"the text does not say whether it is in US or UK terms; say it with --from"}
		}
		a = x.Terms
	} else if a, err = terms(from); err != nil {
		return nil, err
	}
	if a == b {
		return text.Text, nil
	}
	return rows.Translate(text.Text, a, b), nil
}

// SaysTerms reports whether a text says which terms it is in, and does not only show it.
func SaysTerms(text []byte) bool {
	return rows.Read("", text, rows.Options{TermsSet: true}).Said.Terms != ""
}

// Abbreviations lists the abbreviations that a text uses, in the project's words.
func Abbreviations(text Source) []rows.Abbreviated {
	text, _ = decoded(text)
	return rows.Abbreviations(rows.Read(text.Name, text.Text, rows.Options{}))
}

var errNoText = errors.New("there are no written rows: name a text with --rows, or write them in the pattern")

// NeedsText is the error of a report on rows where there are none.
func (r RowsResult) NeedsText() error {
	if r.text == nil {
		return errNoText
	}
	return nil
}
