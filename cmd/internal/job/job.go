// Package job does what a person asks for: it takes the bytes of a pattern file
// and options, and gives named files, findings and a summary. The command line and
// a server ask alike. It touches no disk and prints nothing.
package job

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"flatwright/cmd/internal/files"
	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/check"
	"flatwright/schematic/finding"
	"flatwright/schematic/read"
	"flatwright/schematic/worn"
)

// Source is a pattern file: its name, for messages, and its bytes.
type Source struct {
	Name string
	Text []byte
}

// Result is what a job gives. Findings are there even with an error.
type Result struct {
	Title    string
	Slug     string   // of the title: names of files and of a folder begin with it
	Sizes    []string // all sizes of the pattern
	Pieces   int
	Files    []files.File
	Findings finding.List
}

// ErrUnreadable is the error of a pattern that cannot be read; the findings say why.
var ErrUnreadable = errors.New("the pattern cannot be read")

// OptionError is the error of an option that does not fit the pattern.
type OptionError struct{ Text string }

// Error is the error's text.
func (e *OptionError) Error() string { return e.Text }

// work reads the pattern, works every size and checks them.
func work(ctx context.Context, src Source) (*schematic.Pattern, []*schematic.Garment, Result, error) {
	var r Result
	var p *schematic.Pattern
	var found finding.List
	if err := apart(ctx, func() { p, found = read.Pattern(src.Name, src.Text) }); err != nil {
		return nil, nil, r, err
	}
	r.Findings = found
	if p == nil || found.Stop() {
		return nil, nil, r, ErrUnreadable
	}
	r.Title, r.Slug, r.Sizes, r.Pieces = p.Title, Slug(p.Title), p.Sizes.Names, len(p.Pieces)
	gs := make([]*schematic.Garment, p.Sizes.Len())
	err := each(ctx, len(gs), func(i int) error {
		gs[i] = schematic.Work(p, i)
		worn.Dress(gs[i])
		return nil
	})
	if err != nil {
		return nil, nil, r, err
	}
	check.Own(gs)
	bysize.DrawOnce(gs)
	if err := apart(ctx, func() { found = check.Pattern(p, gs) }); err != nil {
		return nil, nil, r, err
	}
	r.Findings = append(r.Findings, found...)
	r.Findings = slices.DeleteFunc(r.Findings, OfTheDrawing)
	r.Findings.Sort()
	return p, gs, r, nil
}

// OfTheDrawing reports whether a finding tells of the garment as it is drawn, and of no number.
func OfTheDrawing(f finding.Finding) bool { return strings.HasPrefix(f.Kind, "worn/") }

// asDrawn is what there is to tell of the drawing of the garment as it is worn. Of a pattern that joins nothing, and goes on from nothing, that is told
// once: of the first piece that a join would place.
func asDrawn(p *schematic.Pattern, gs []*schematic.Garment) finding.List {
	none := len(p.Joins) == 0 && !slices.ContainsFunc(p.Pieces, goesOn) && !slices.ContainsFunc(gs, func(g *schematic.Garment) bool { return g.Worn != nil })
	told := false
	return slices.DeleteFunc(check.Pattern(p, gs), func(f finding.Finding) bool {
		again := none && f.Kind == "worn/left-over" && (told || !slices.ContainsFunc(p.Pieces, isOfABody))
		told = told || f.Kind == "worn/left-over"
		return !OfTheDrawing(f) || again
	})
}

// isOfABody reports whether a piece is one of a garment with a body.
func isOfABody(p *schematic.Piece) bool {
	return p.Kind.Trunk() || p.Kind == schematic.KindSleeve || p.Kind == schematic.KindYoke || p.Kind == schematic.KindSkirt
}

// goesOn reports whether a piece is worked on from held stitches of others.
func goesOn(p *schematic.Piece) bool {
	return len(p.Sections) > 0 && p.Sections[0].Traits().From != nil
}

// sizeNamed is the index of a size, or an error that names those that there are.
func sizeNamed(p *schematic.Pattern, name string) (int, error) {
	if i := p.Sizes.Index(strings.TrimSpace(name)); i >= 0 {
		return i, nil
	}
	return 0, &OptionError{fmt.Sprintf("no size %q; the sizes are %s", name, strings.Join(p.Sizes.Names, ", "))}
}

// Check reads the pattern and finds what does not fit. It gives no files.
func Check(ctx context.Context, src Source) (Result, error) {
	_, _, r, err := work(ctx, src)
	return r, err
}
