package job

import (
	"bytes"
	"context"
	"fmt"

	"flatwright/cmd/internal/files"
	"flatwright/layout/chart"
	"flatwright/layout/document"
	"flatwright/layout/place"
	"flatwright/layout/sheet"
	"flatwright/render/pdf"
	"flatwright/schematic/units"
)

// Sheets is which pages a handout has.
type Sheets string

// The kinds of handout.
const (
	WholePattern Sheets = ""
	ForClass     Sheets = "worksheet" // a worksheet, and its answers
	AtLifeSize   Sheets = "life"      // the pieces at 1:1
	WithMistake  Sheets = "mistake"   // measurements of all sizes with one of them wrong, and its answer
)

// HandoutOptions say what a handout has in it. The zero value is the whole pattern in all
// sizes, on A4.
type HandoutOptions struct {
	Kind    Sheets
	Size    string // the size whose numbers stand out; empty: all alike
	Alone   bool   // that size's numbers alone
	Units   []units.Unit
	Paper   place.Paper
	Large   bool     // 18 point and up
	Little  bool     // little ink
	Rows    *Source  // the file of written rows that the pattern names, if it was read
	Charts  []string // sections of the rows that are charted
	Seed    uint64   // of the mistake: the same one makes the same sheet
	Creator string
}

// Handout gives one PDF, or two for a worksheet: it and its answers. Its error is
// ErrUnreadable, an OptionError, a place.TooLarge, a document.TooMany, or of an ended ctx.
func Handout(ctx context.Context, src Source, o HandoutOptions) (Result, error) {
	p, gs, r, err := work(ctx, src)
	if err != nil {
		return r, err
	}
	d := document.Options{Paper: o.Paper, Large: o.Large, Little: o.Little, Size: -1, Alone: o.Alone, Units: o.Units}
	if o.Size != "" {
		if d.Size, err = sizeNamed(p, o.Size); err != nil {
			return r, err
		}
	}
	if d.Size < 0 && (o.Kind != WholePattern || o.Alone) {
		if p.Sizes.Len() > 1 && o.Kind != ForClass && o.Kind != WithMistake {
			return r, &OptionError{"choose a size with --size: life size and one size alone are of one size"}
		}
		d.Size = sampleOf(p) // a class works on one size
	}
	for _, section := range o.Charts {
		size := d.Size
		if size < 0 {
			size = sampleOf(p)
		}
		co := chart.Options{Paper: o.Paper, Orientation: place.Portrait}
		if o.Large {
			co.Text = place.Large
		}
		name, sheets, err := charted(p, rowsOf(p, gs, o.Rows, -1), section, size, co)
		if err != nil {
			return r, err
		}
		for _, s := range sheets {
			d.Charts = append(d.Charts, document.NamedSheet{Name: name + ", size " + p.Sizes.Names[size], Sheet: s})
		}
	}
	c := content(p, gs, o.Rows)
	if o.Alone {
		ofSize(c, p, gs, o.Rows, d.Size)
	}
	names := namer{}
	put := func(sheets []*sheet.Sheet, err error, parts ...string) error {
		if err != nil {
			return err
		}
		if err := stopped(ctx); err != nil {
			return err
		}
		var b bytes.Buffer
		info := pdf.Info{Title: p.Title, Author: p.Designer, Subject: parts[0], Lang: "en", Creator: o.Creator}
		if err := pdf.Write(&b, sheets, info); err != nil {
			return fmt.Errorf("PDF: %w", err)
		}
		r.Files = append(r.Files, files.File{Name: names.name(".pdf", append([]string{p.Title}, parts...)...), Body: b.Bytes()})
		return nil
	}
	parts := func(what string) []string {
		if d.Size >= 0 && p.Sizes.Len() > 1 {
			of := []string{what, p.Sizes.Names[d.Size]}
			if o.Alone && o.Kind == WholePattern {
				of = append(of, "alone")
			}
			return of
		}
		return []string{what}
	}
	switch o.Kind {
	case ForClass:
		for _, answers := range []bool{false, true} {
			sheets, err := document.Worksheet(gs, c, d, answers)
			if err := put(sheets, err, parts(map[bool]string{false: "worksheet", true: "answers"}[answers])...); err != nil {
				return r, err
			}
		}
		return r, nil
	case WithMistake:
		for _, answers := range []bool{false, true} {
			sheets, err := document.FindTheMistake(gs, c, d, o.Seed, answers)
			what := map[bool]string{false: "find the mistake", true: "mistake answer"}[answers]
			if err := put(sheets, err, what, fmt.Sprint(o.Seed)); err != nil {
				return r, err
			}
		}
		return r, nil
	case AtLifeSize:
		sheets, err := document.LifeSize(gs[d.Size], c, d)
		err = put(sheets, err, parts("life size")...)
		return r, err
	case WholePattern:
		sheets, err := document.Handout(gs, c, d)
		err = put(sheets, err, parts("handout")...)
		return r, err
	}
	return r, &OptionError{fmt.Sprintf("there is no handout %q; there are worksheet, life and mistake", o.Kind)}
}
