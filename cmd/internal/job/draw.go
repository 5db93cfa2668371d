package job

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"flatwright/cmd/internal/files"
	"flatwright/layout/place"
	"flatwright/layout/sheet"
	"flatwright/render/pdf"
	"flatwright/render/svg"
	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Labels is what the measurements of the drawings say.
type Labels string

// The ways of labelling. Every asks for a drawing of each size and one with all sizes.
const (
	Every   Labels = ""
	One     Labels = "one"     // a drawing of each size, with its own values
	All     Labels = "all"     // one drawing with the values of all sizes in the trade's line
	Letters Labels = "letters" // one drawing with letters, and a table
	Blank   Labels = "blank"   // one drawing with rules to write on
	Nested  Labels = "nested"  // Live alone: all sizes one inside the other
)

// DrawOptions say what is drawn, and how. The zero value is each size and all
// sizes, as SVG and PDF, on A4.
type DrawOptions struct {
	Size        string // that size alone; empty: each. It gives the shape of a drawing of all sizes
	Labels      Labels
	Units       []units.Unit // empty: both for one size, the authored one for all sizes
	Paper       place.Paper
	Orientation place.Orientation
	Scale       float64 // 8 for 1:8; 0: the largest usual one that suits every drawing
	Text        float64 // size of the values in mm; 0: the usual
	Trim        bool    // cut the paper to the drawing
	Width       float64 // of pictures cut to their ink, mm; 0: the pattern's, or the paper
	Without     schematic.DrawnPart
	Show, Hide  []string // measurements, besides those that the pattern shows and hides
	Face        *Source  // the file of a face for the words; nil: the house's
	Outlines    bool     // write words as outlines
	Format      string   // svg or pdf; empty: both
	Creator     string   // told in the PDF
}

// drawing is one drawing, of one or more sheets.
type drawing struct {
	name   string // of the file, behind the title
	opts   place.Options
	scales place.Scales // of all sizes, if each is drawn by itself
	sheets []*sheet.Sheet
}

// Draw gives the schematics: one SVG a sheet, and one PDF with all of them. Its
// error is ErrUnreadable, an OptionError, a place.TooLarge, or of an ended ctx.
func Draw(ctx context.Context, src Source, o DrawOptions) (Result, error) {
	p, gs, r, err := work(ctx, src)
	if err != nil {
		return r, err
	}
	r.Findings = append(r.Findings, asDrawn(p, gs)...)
	drawings, err := drawings(p, o)
	if err != nil {
		return r, err
	}
	f := ownFace(facePos(p), o.Face, &r.Findings)
	for _, d := range drawings {
		d.opts.Face = f
	}
	if err := lay(ctx, gs, drawings); err != nil {
		return r, err
	}
	r.Findings = append(r.Findings, lacking(facePos(p), sheetsOf(drawings)...)...)
	r.Findings.Sort()
	r.Files, err = render(ctx, p, drawings, o)
	return r, err
}

// designed are the options with what the pattern says of its drawing, where they say nothing;
// what they show and hide is added to the pattern.
func designed(p *schematic.Pattern, o DrawOptions) DrawOptions {
	d := &p.Drawing
	for _, add := range []struct {
		to    *[]schematic.Called
		names []string
	}{{&d.Show, o.Show}, {&d.Hide, o.Hide}} {
		for _, name := range add.names {
			*add.to = append(*add.to, schematic.Called{Name: name, Pos: finding.Pos{File: p.File, Line: 1, Col: 1}})
		}
	}
	d.Without |= o.Without
	o.Without, o.Width, o.Text = d.Without, cmp.Or(o.Width, d.Width), cmp.Or(o.Text, d.Text)
	if o.Labels == Every {
		o.Labels = map[schematic.Lettering]Labels{schematic.ByLetter: Letters, schematic.ByValue: One}[d.Lettered]
	}
	return o
}

// chosen is the size that gives the shape of a drawing of all sizes, and those that are drawn: the one named, or all.
func chosen(p *schematic.Pattern, name string) (shape int, sizes []int, err error) {
	if name != "" {
		shape, err = sizeNamed(p, name)
		return shape, []int{shape}, err
	}
	for i := range p.Sizes.Len() {
		sizes = append(sizes, i)
	}
	return sampleOf(p), sizes, nil
}

// drawings are the drawings that o asks for.
func drawings(p *schematic.Pattern, o DrawOptions) ([]*drawing, error) {
	o = designed(p, o)
	shape, sizes, err := chosen(p, o.Size)
	if err != nil {
		return nil, err
	}
	base := place.Options{Paper: o.Paper, Orientation: o.Orientation, Scale: o.Scale, Text: o.Text, Trim: o.Trim, Width: o.Width, Without: o.Without, Caution: caution(p)}
	// a drawing of all sizes in the shape of one that was asked for tells which
	shaped := func(name string) string { return strings.TrimSpace(name + " " + o.Size) }
	make1 := func(name string, i int, labels place.Labels, u place.Units) *drawing {
		d := &drawing{name: name, opts: base}
		d.opts.Size, d.opts.Labels, d.opts.Units = i, labels, u
		return d
	}
	both, authored := unitsOf(o.Units, place.Both), unitsOf(o.Units, place.CM)
	if len(o.Units) == 0 && p.Units == units.Inch {
		authored = place.Inches
	}
	var all []*drawing
	switch o.Labels {
	case Every, One:
		for _, i := range sizes {
			all = append(all, make1(p.Sizes.Names[i], i, place.OneSize, both))
		}
		if o.Labels == Every && o.Size == "" && p.Sizes.Len() > 1 {
			all = append(all, make1("all sizes", shape, place.AllSizes, authored))
		}
	case All:
		all = append(all, make1(shaped("all sizes"), shape, place.AllSizes, authored))
	case Letters:
		all = append(all, make1(shaped("letters"), shape, place.Letters, both))
	case Blank:
		all = append(all, make1(shaped("blank"), shape, place.Blank, both))
	default:
		return nil, &OptionError{fmt.Sprintf("no labels %q; choose one, all, letters or blank", o.Labels)}
	}
	return all, nil
}

func unitsOf(us []units.Unit, otherwise place.Units) place.Units {
	cm, in := slices.Contains(us, units.CM), slices.Contains(us, units.Inch)
	switch {
	case cm && in:
		return place.Both
	case cm:
		return place.CM
	case in:
		return place.Inches
	}
	return otherwise
}

// lay places every drawing. Those of one size share the scales at which all sizes
// find room, so that one may be held against another, and a size drawn alone is
// drawn as in the set.
func lay(ctx context.Context, gs []*schematic.Garment, all []*drawing) error {
	order := place.LetterOrder(gs)
	for _, d := range all {
		d.opts.Order = order
	}
	ofOne := func(d *drawing) bool { return d.opts.Labels == place.OneSize && d.opts.Scale == 0 }
	drafts := make([]*place.Draft, len(gs))
	var scales place.Scales
	if first := slices.IndexFunc(all, ofOne); first >= 0 {
		o := all[first].opts
		o.Stop = ctx.Done()
		draft := func(i int) (err error) {
			o := o
			o.Size = i
			drafts[i], err = place.NewDraft(gs, o)
			return err
		}
		last := len(gs) - 1 // mostly the largest: the others need no larger scale than it has
		if err := draft(last); err != nil {
			return err
		}
		o.From = drafts[last].Scales()
		if err := each(ctx, last, draft); err != nil {
			return err
		}
		scales = place.Common(drafts)
	}
	return each(ctx, len(all), func(i int) (err error) {
		d := all[i]
		if ofOne(d) {
			d.scales = scales
			d.sheets, err = drafts[d.opts.Size].Sheets(scales)
		} else {
			o := d.opts
			o.Stop = ctx.Done()
			d.sheets, err = place.Schematic(gs, o)
		}
		if err != nil {
			return fmt.Errorf("%s: %w", d.name, err)
		}
		return nil
	})
}

// render writes the sheets into files.
func render(ctx context.Context, p *schematic.Pattern, all []*drawing, o DrawOptions) ([]files.File, error) {
	names := namer{}
	var out []files.File
	var pages []*sheet.Sheet
	for _, d := range all {
		for k, s := range d.sheets {
			pages = append(pages, s)
			parts := []string{p.Title, d.name}
			if len(d.sheets) > 1 {
				parts = append(parts, fmt.Sprintf("page %d", k+1))
			}
			if o.Format != "pdf" {
				out = append(out, files.File{Name: names.name(".svg", parts...)})
			}
		}
	}
	svgs := len(out)
	if o.Format != "svg" {
		parts := []string{p.Title}
		if len(all) == 1 {
			parts = append(parts, all[0].name)
		}
		out = append(out, files.File{Name: names.name(".pdf", parts...)})
	}
	info := pdf.Info{Title: p.Title, Author: p.Designer, Subject: subject(p), Lang: "en", Creator: o.Creator, Outlined: o.Outlines}
	err := each(ctx, len(out), func(i int) (err error) {
		var b bytes.Buffer
		i = len(out) - 1 - i // the PDF takes longest: it begins
		if i < svgs {
			write := svg.Write
			if o.Outlines {
				write = svg.WriteOutlined
			}
			err = write(&b, pages[i])
		} else {
			err = pdf.Write(&b, pages, info)
		}
		out[i].Body = b.Bytes()
		if err != nil {
			return fmt.Errorf("%s: %w", out[i].Name, err)
		}
		return nil
	})
	return out, err
}

func subject(p *schematic.Pattern) string {
	return "Schematic in " + strings.TrimSpace(fmt.Sprintf("%d %s", p.Sizes.Len(), map[bool]string{true: "size", false: "sizes"}[p.Sizes.Len() == 1]))
}
