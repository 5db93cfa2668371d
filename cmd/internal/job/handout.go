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
	"flatwright/schematic"
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
	Face    *Source  // the file of a face for the words on drawings; nil: the house's
	Photos  []Source // the files of the photographs that the pattern names, for the whole pattern
	Seed    uint64   // of the mistake: the same one makes the same sheet
	Creator string
}

// handoutKind is how a kind of handout is made.
type handoutKind struct {
	one   bool // it is of one size
	class bool // which is the sample's, where none is chosen
	files []handoutFile
}

type handoutFile struct {
	what   string
	sheets func(h *handout) ([]*sheet.Sheet, error)
}

// handout is what its files are made of.
type handout struct {
	p    *schematic.Pattern
	gs   []*schematic.Garment
	c    *document.Content
	d    document.Options
	o    HandoutOptions
	kind handoutKind
}

func worksheet(answers bool) func(*handout) ([]*sheet.Sheet, error) {
	return func(h *handout) ([]*sheet.Sheet, error) { return document.Worksheet(h.gs, h.c, h.d, answers) }
}

func mistake(answers bool) func(*handout) ([]*sheet.Sheet, error) {
	return func(h *handout) ([]*sheet.Sheet, error) {
		return document.FindTheMistake(h.gs, h.c, h.d, h.o.Seed, answers)
	}
}

var handoutKinds = map[Sheets]handoutKind{
	WholePattern: {files: []handoutFile{{"handout", func(h *handout) ([]*sheet.Sheet, error) { return document.Handout(h.gs, h.c, h.d) }}}},
	ForClass:     {one: true, class: true, files: []handoutFile{{"worksheet", worksheet(false)}, {"answers", worksheet(true)}}},
	WithMistake:  {one: true, class: true, files: []handoutFile{{"find the mistake", mistake(false)}, {"mistake answer", mistake(true)}}},
	AtLifeSize: {one: true, files: []handoutFile{{"life size", func(h *handout) ([]*sheet.Sheet, error) {
		return document.LifeSize(h.gs[h.d.Size], h.c, h.d)
	}}}},
}

// Handout gives one PDF, or two for what has answers: it and they. Its error is
// ErrUnreadable, an OptionError, a place.TooLarge, a document.TooMany, or of an ended ctx.
func Handout(ctx context.Context, src Source, o HandoutOptions) (Result, error) {
	p, gs, r, err := work(ctx, src)
	if err != nil {
		return r, err
	}
	h := &handout{p: p, gs: gs, o: o, d: document.Options{Paper: o.Paper, Large: o.Large, Little: o.Little, Alone: o.Alone, Units: o.Units, Face: ownFace(facePos(p), o.Face, &r.Findings)}}
	var ok bool
	if h.kind, ok = handoutKinds[o.Kind]; !ok {
		return r, &OptionError{fmt.Sprintf("no handout %q; choose worksheet, life or mistake", o.Kind)}
	}
	if h.d.Size, err = h.size(); err != nil {
		return r, err
	}
	if err := h.charts(); err != nil {
		return r, err
	}
	h.c = content(p, gs, o.Rows)
	if err := h.photographs(); err != nil {
		return r, err
	}
	if o.Alone {
		ofSize(h.c, p, gs, o.Rows, h.d.Size)
	}
	names := namer{}
	var all []*sheet.Sheet
	for _, f := range h.kind.files {
		sheets, err := f.sheets(h)
		if err != nil {
			return r, err
		}
		if err := stopped(ctx); err != nil {
			return r, err
		}
		all = append(all, sheets...)
		var b bytes.Buffer
		info := pdf.Info{Title: p.Title, Author: p.Designer, Subject: f.what, Lang: "en", Creator: o.Creator}
		if err := pdf.Write(&b, sheets, info); err != nil {
			return r, fmt.Errorf("PDF: %w", err)
		}
		r.Files = append(r.Files, files.File{Name: names.name(".pdf", append([]string{p.Title, f.what}, h.told()...)...), Body: b.Bytes()})
	}
	r.Findings = append(r.Findings, lacking(facePos(p), all...)...)
	return r, nil
}

// photographs takes those of the whole pattern in; to save ink is to have none.
func (h *handout) photographs() error {
	if h.o.Kind != WholePattern || h.o.Little {
		return nil
	}
	all, err := photos(h.p, h.o.Photos)
	if err != nil {
		return err
	}
	h.c.Photos, err = onPaper(all)
	return err
}

// size is the size that the handout is of, or whose numbers stand out, below 0 for none.
func (h *handout) size() (int, error) {
	switch {
	case h.o.Size != "":
		return sizeNamed(h.p, h.o.Size)
	case !h.kind.one && !h.o.Alone:
		return -1, nil
	case h.p.Sizes.Len() > 1 && !h.kind.class:
		return -1, &OptionError{"choose a size with --size: life size and one size alone are of one size"}
	}
	return sampleOf(h.p), nil // a class works on one size
}

// charts adds the sections that are to be charted.
func (h *handout) charts() error {
	size := h.d.Size
	if size < 0 {
		size = sampleOf(h.p)
	}
	co := chart.Options{Paper: h.o.Paper, Orientation: place.Portrait, Text: document.UsualText, Face: h.d.Face}
	if h.o.Large {
		co.Text = place.Large
	}
	for _, section := range h.o.Charts {
		name, sheets, err := charted(h.p, rowsOf(h.p, h.gs, h.o.Rows, -1), section, size, co)
		if err != nil {
			return err
		}
		for _, s := range sheets {
			h.d.Charts = append(h.d.Charts, document.NamedSheet{Name: name + ", size " + h.p.Sizes.Names[size], Sheet: s})
		}
	}
	return nil
}

// told is what the name of a file tells beside the pattern and what it is.
func (h *handout) told() []string {
	switch {
	case h.o.Kind == WithMistake:
		return []string{fmt.Sprint(h.o.Seed)}
	case h.d.Size < 0 || h.p.Sizes.Len() < 2:
		return nil
	case h.o.Alone && h.o.Kind == WholePattern:
		return []string{h.p.Sizes.Names[h.d.Size], "alone"}
	}
	return []string{h.p.Sizes.Names[h.d.Size]}
}
