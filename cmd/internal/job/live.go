package job

import (
	"bytes"
	"context"
	"fmt"
	"slices"

	"flatwright/layout/place"
	"flatwright/layout/sheet"
	"flatwright/layout/table"
	"flatwright/render/svg"
	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/check"
	"flatwright/schematic/expr"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
	"flatwright/schematic/worn"
)

// Look is a pattern as a page shows it while a person types: one drawing as svg
// elements, each with ids of its own, and the measurements of all sizes.
type Look struct {
	Result
	Drawing string       // what is drawn: a size, or all sizes
	Scales  place.Scales // at which all sizes find room, if each is drawn by itself
	Letters []string     // the measurements in the order of their letters
	Pages   [][]byte     // svg elements to stand in a page
	Table   table.Table
	Sizes   expr.Sizes
	Sample  int // index of the sample's size, or -1
	Units   units.Unit
	Rows    RowsResult          // of the written rows, if there are any
	Names   map[string][]string // of what there is in the pattern, by what it is (read.Called)
}

// namesIn are what values of a pattern may call by name.
func namesIn(p *schematic.Pattern, gs []*schematic.Garment) map[string][]string {
	out := map[string][]string{"edge": gs[0].EdgeNames(), "measurement": {"bust"}}
	for _, g := range p.Gauges {
		out["gauge"] = append(out["gauge"], g.Name)
	}
	if len(p.Grading) > 0 { // a body changes nothing else
		for _, b := range p.Bodies {
			out["body"] = append(out["body"], b.Name)
		}
	}
	for _, m := range gs[0].Pieces {
		out["piece"] = append(out["piece"], m.Name)
		for _, one := range m.Measures {
			if !slices.Contains(out["measurement"], one.Name) {
				out["measurement"] = append(out["measurement"], one.Name)
			}
		}
	}
	return out
}

// StitchesAfter is how many stitches there are after the section that stands in the
// lines first to last of a pattern, one a size (-1 where it is not worked): nothing if
// the pattern can't be worked.
func StitchesAfter(ctx context.Context, src Source, first, last int) []int {
	_, gs, _, err := work(ctx, src)
	if err != nil {
		return nil
	}
	out := make([]int, len(gs))
	for i, g := range gs {
		out[i] = -1
		for _, m := range g.Pieces {
			if m.MirrorOf != "" {
				continue
			}
			for _, s := range m.Steps {
				if line := s.Section.Base().Pos.Line; line >= first && line <= last {
					out[i] = s.After
				}
			}
		}
	}
	return out
}

// EdgesOf are the names of the edges of all pieces, by which a join can call them: nothing if the pattern can't be worked.
func EdgesOf(ctx context.Context, src Source) []string {
	_, gs, _, err := work(ctx, src)
	if err != nil {
		return nil
	}
	return gs[0].EdgeNames()
}

// Live draws one drawing for the screen: that of o.Size, which may be empty for
// the sample's, with the labels of o. Its error is ErrUnreadable, an OptionError,
// a place.TooLarge, or of an ended ctx; findings and measurements are there
// if only the drawing failed. Written rows are checked too; beside gives the file of
// them that the pattern names, or nil, and may be nil itself.
func Live(ctx context.Context, src Source, o DrawOptions, beside func(name string) *Source) (Look, error) {
	var l Look
	ctx = context.WithValue(ctx, aside{}, true) // a glance may come meanwhile
	p, gs, r, err := work(ctx, src)
	l.Result = r
	if err != nil {
		return l, err
	}
	l.Table, l.Sizes, l.Sample, l.Units, l.Names = table.Of(gs), p.Sizes, p.Sample, p.Units, namesIn(p, gs)
	var text *Source
	if p.RowsFile != "" && beside != nil {
		text = beside(p.RowsFile)
	}
	if text != nil || p.Rows != "" {
		l.Rows.Result = r
		l.Rows.hold(src, text, p, gs)
		l.Findings = l.Rows.Findings
	}
	if o.Size == "" || p.Sizes.Index(o.Size) < 0 {
		o.Size = p.Sizes.Names[max(0, min(p.Sample, p.Sizes.Len()-1))]
		if p.Sample < 0 {
			o.Size = p.Sizes.Names[p.Sizes.Len()/2]
		}
	}
	if o.Labels == Every {
		o.Labels = One
	}
	if o.Labels == Nested {
		d := nestedDrawing(o)
		d.opts.Face = ownFace(facePos(p), o.Face, &l.Findings)
		if d.sheets, err = place.Nested(gs, d.opts); err != nil {
			return l, fmt.Errorf("%s: %w", d.name, err)
		}
		return l, l.put(d)
	}
	all, err := drawings(p, o)
	if err != nil {
		return l, err
	}
	all[0].opts.Face = ownFace(facePos(p), o.Face, &l.Findings)
	if err := lay(ctx, gs, all); err != nil {
		return l, err
	}
	l.Scales, l.Letters = all[0].scales, all[0].opts.Order
	return l, l.put(all[0])
}

// Glance draws o.Size, which has to be there, by itself, at the scales and with the letters that Live gave last: what
// a person waits for who types. It works no other size, checks nothing and gives no measurements; Live
// tells all that, and whether the scales are still those of all sizes. Its error is Live's.
func Glance(ctx context.Context, src Source, o DrawOptions, scales place.Scales, letters []string) (Look, error) {
	var l Look
	p, found := read.Pattern(src.Name, src.Text)
	l.Findings = found
	if p == nil || found.Stop() {
		return l, ErrUnreadable
	}
	l.Title, l.Sizes, l.Sample, l.Units, l.Scales, l.Letters = p.Title, p.Sizes, p.Sample, p.Units, scales, letters
	i, err := sizeNamed(p, o.Size)
	if err != nil {
		return l, err
	}
	o.Labels = One
	all, err := drawings(p, o)
	if err != nil {
		return l, err
	}
	gs := []*schematic.Garment{schematic.Work(p, i)}
	worn.Dress(gs[0])
	check.Own(gs)
	bysize.DrawOnce(gs)
	d := all[0]
	d.opts.Size, d.opts.Stop, d.opts.Order = 0, ctx.Done(), letters
	d.opts.Face = ownFace(facePos(p), o.Face, &l.Findings)
	d.opts.Scale, d.opts.WornScale = scales.Pieces, scales.Worn
	if d.sheets, err = place.Schematic(gs, d.opts); err != nil {
		return l, fmt.Errorf("%s: %w", d.name, err)
	}
	if err := stopped(ctx); err != nil {
		return l, err
	}
	return l, l.put(d)
}

// put writes a drawing's sheets.
func (l *Look) put(d *drawing) (err error) {
	l.Drawing = d.name
	l.Pages, err = inline("d", d.sheets)
	return err
}

// inline are sheets as svg elements of one page, each with ids of its own that begin with prefix.
func inline(prefix string, sheets []*sheet.Sheet) ([][]byte, error) {
	var out [][]byte
	for i, s := range sheets {
		s.Prefix = fmt.Sprintf("%s%d-", prefix, i+1)
		var b bytes.Buffer
		if err := svg.Inline(&b, s); err != nil {
			return nil, fmt.Errorf("page %d: %w", i+1, err)
		}
		out = append(out, b.Bytes())
	}
	return out, nil
}
