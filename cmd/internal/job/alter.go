package job

import (
	"bytes"
	"context"
	"fmt"
	"strings"
	"text/tabwriter"

	"flatwright/cmd/internal/files"
	"flatwright/layout/place"
	"flatwright/schematic"
	"flatwright/schematic/alter"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/read"
	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
	"flatwright/schematic/units"
	"flatwright/schematic/yarn"
)

// AlterOptions are a maker's wishes. Gauges are as in a pattern file, with the
// gauge's name and a colon before it where it is not the first; Body and Sleeve are lengths
// such as +5 cm or -2 in; Parts are a piece, a colon and a size; Own are a body measurement of the pattern, a colon and a length.
type AlterOptions struct {
	Size   string
	Gauges []string
	Body   string
	Sleeve string
	Parts  []string
	Own    []string
	Draw   DrawOptions
	Yarn   YarnOptions
}

// unaltered is the ErrUnreadable of a pattern that can be read, and not altered as asked; the findings say why.
type unaltered struct{}

func (unaltered) Error() string { return "it can't be altered that way; nothing was written" }

func (unaltered) Is(err error) bool { return err == ErrUnreadable }

// altered is a pattern and what an alteration makes of it. The findings are those of the alteration: the pattern's own
// are the designer's.
func altered(ctx context.Context, src Source, o AlterOptions) (*schematic.Pattern, *alter.Altered, Result, error) {
	p, _, r, err := work(ctx, src)
	if err != nil {
		return nil, nil, r, err
	}
	q, err := request(p, o)
	if err != nil {
		return nil, nil, r, err
	}
	own := r.Findings
	a, found := alter.Alter(p, q)
	r.Findings = found
	for _, f := range own { // an alteration can be no better than its pattern
		if f.Severity == finding.Error {
			r.Findings = append(r.Findings, f)
		}
	}
	r.Findings.Sort()
	if a == nil {
		return nil, nil, r, unaltered{}
	}
	return p, a, r, nil
}

// AlterLook is an alteration as a page shows it while a person types.
type AlterLook struct {
	Result
	Both    [][]byte // svg elements: as published and altered, one over the other
	Now     [][]byte // and altered, with its measurements
	Changes []Changed
}

// Changed is a number that an alteration changes.
type Changed struct{ Piece, What, Was, Now, Unit string }

// Altered draws what Alter writes, for the screen. Its error is Alter's.
func Altered(ctx context.Context, src Source, o AlterOptions) (AlterLook, error) {
	p, a, r, err := altered(ctx, src, o)
	l := AlterLook{Result: r}
	if err != nil {
		return l, err
	}
	d := nestedDrawing(DrawOptions{Paper: o.Draw.Paper, Text: o.Draw.Text, Trim: true})
	if d.sheets, err = place.Compared(a.Was, a.Now, d.opts); err != nil {
		return l, fmt.Errorf("%s: %w", d.name, err)
	}
	if l.Both, err = inline("b", d.sheets); err != nil {
		return l, err
	}
	d = alteredDrawing(p, a, o.Draw)
	if err := lay(ctx, []*schematic.Garment{a.Now}, []*drawing{d}); err != nil {
		return l, err
	}
	l.Now, err = inline("n", d.sheets)
	l.Changes = changed(a)
	return l, err
}

func alteredDrawing(p *schematic.Pattern, a *alter.Altered, o DrawOptions) *drawing {
	return &drawing{name: "altered " + a.Now.Size, opts: place.Options{Paper: o.Paper, Orientation: o.Orientation,
		Scale: o.Scale, Text: o.Text, Units: unitsOf(o.Units, place.Both), Caution: caution(p)}}
}

// changed are the numbers that an alteration changes, in words.
func changed(a *alter.Altered) []Changed {
	var out []Changed
	for _, c := range a.Changes {
		w := Changed{c.Piece, c.What, c.Was.String(), c.Now.String(), "sts"}
		switch c.Dim {
		case expr.Rows:
			w.Unit = "rows"
		case expr.LengthOf:
			w.Was, w.Now, w.Unit = a.Pattern.Steps.Format(c.Was, a.Pattern.Units), a.Pattern.Steps.Format(c.Now, a.Pattern.Units), a.Pattern.Units.String()
		}
		out = append(out, w)
	}
	return out
}

// Alter gives the drawing and a text of counts and yarn for one person. Its
// error is ErrUnreadable, an OptionError, a place.TooLarge, or of an ended ctx.
func Alter(ctx context.Context, src Source, o AlterOptions) (Result, error) {
	p, a, r, err := altered(ctx, src, o)
	if err != nil {
		return r, err
	}
	var b bytes.Buffer
	if err := alteredText(&b, a, r.Findings); err != nil {
		return r, err
	}
	w, err := weights(p, o.Yarn)
	if err != nil {
		return r, err
	}
	if len(w.Swatches) > 0 {
		now, found := yarn.Reckon([]*schematic.Garment{a.Now}, w)
		was, _ := yarn.Reckon([]*schematic.Garment{a.Was}, w)
		if !found.Errors() && len(now) == 1 && len(was) == 1 {
			fmt.Fprintf(&b, "\nYarn: %s g (as published %s g)", units.Decimal(now[0].Grams, 0), units.Decimal(was[0].Grams, 0))
			if now[0].Balls > 0 {
				fmt.Fprintf(&b, ", %d balls (%d)", now[0].Balls, was[0].Balls)
			}
			fmt.Fprintln(&b)
		}
	}
	if len(a.Changes) > 0 {
		alteredRows(&b, a)
	}
	drawings := []*drawing{alteredDrawing(p, a, o.Draw)}
	if err := lay(ctx, []*schematic.Garment{a.Now}, drawings); err != nil {
		return r, err
	}
	if r.Files, err = render(ctx, a.Pattern, drawings, o.Draw); err != nil {
		return r, err
	}
	r.Files = append(r.Files, files.File{Name: namer{}.name(".txt", p.Title, "altered", a.Now.Size), Body: b.Bytes()})
	return r, nil
}

func request(p *schematic.Pattern, o AlterOptions) (alter.Request, error) {
	var q alter.Request
	var err error
	if o.Size == "" {
		return q, &OptionError{"say which size is altered; the sizes are " + strings.Join(p.Sizes.Names, ", ")}
	}
	if q.Size, err = sizeNamed(p, o.Size); err != nil {
		return q, err
	}
	for _, text := range o.Gauges {
		g, err := ownGauge(p, text)
		if err != nil {
			return q, err
		}
		q.Gauges = append(q.Gauges, g)
	}
	if q.Body, err = longer(o.Body, p.Units); err != nil {
		return q, err
	}
	if q.Sleeve, err = longer(o.Sleeve, p.Units); err != nil {
		return q, err
	}
	if q.Own, err = ownBody(p, o.Own); err != nil {
		return q, err
	}
	for _, text := range o.Parts {
		piece, size, ok := strings.Cut(text, ":")
		if !ok {
			return q, &OptionError{fmt.Sprintf("%q is not a piece and a size, such as Sleeve: L", text)}
		}
		i, err := sizeNamed(p, size)
		if err != nil {
			return q, err
		}
		if q.Parts == nil {
			q.Parts = map[string]int{}
		}
		q.Parts[strings.TrimSpace(piece)] = i
	}
	return q, nil
}

// ownBody are the measurements of a maker's own body.
func ownBody(p *schematic.Pattern, texts []string) ([]alter.Own, error) {
	var out []alter.Own
	for _, text := range texts {
		name, length, ok := strings.Cut(text, ":")
		mm, err := longer(length, p.Units)
		if !ok || err != nil || mm.Sign() <= 0 {
			return nil, &OptionError{fmt.Sprintf("%q is not a body measurement and a length, such as bust: 98 cm", text)}
		}
		out = append(out, alter.Own{Name: strings.TrimSpace(name), Length: mm})
	}
	return out, nil
}

// ownGauge is a maker's gauge, with the name of the pattern's, or of its first, before it.
func ownGauge(p *schematic.Pattern, text string) (schematic.Gauge, error) {
	name, rest, named := strings.Cut(text, ":")
	if !named {
		name, rest = p.Gauges[0].Name, text
	}
	g, bad := read.Gauge(strings.TrimSpace(rest), p.Units)
	g.Name = strings.TrimSpace(name)
	return g, asOption("the gauge", text, bad)
}

// longer is a length with or without a sign before it, in mm; nothing is 0.
func longer(text string, u units.Unit) (units.Num, error) {
	if text == "" {
		return units.Num{}, nil
	}
	t, minus := strings.CutPrefix(strings.TrimPrefix(strings.TrimSpace(text), "+"), "-")
	v, bad := expr.ParseLength(t, expr.Sizes{Names: []string{"x"}, Groups: []int{1}}, u)
	if bad != nil || units.Int(2000).Less(v.Low.Vals[0]) {
		return units.Num{}, &OptionError{fmt.Sprintf("%q is not a length such as +5 cm or -2 in", text)}
	}
	if minus {
		return v.Low.Vals[0].Neg(), nil
	}
	return v.Low.Vals[0], nil
}

// alteredRows are the rows as they are worked now, with the spacing of every shaping.
func alteredRows(b *bytes.Buffer, a *alter.Altered) {
	text := rows.Print(a.Pattern, []*schematic.Garment{a.Now}, rows.PrintOptions{Terms: stitch.Terms(a.Pattern.Terms), Size: -1})
	if _, pieces, ok := strings.Cut(text, "\n# "); ok { // after the title, terms and size
		fmt.Fprintf(b, "\nHow it is worked as altered\n\n# %s", pieces)
	}
}

// alteredText is what the maker needs: gauges, what was told of the alteration, and every number
// that changes.
func alteredText(b *bytes.Buffer, a *alter.Altered, told finding.List) error {
	fmt.Fprintf(b, "%s, size %s, altered\n", a.Pattern.Title, a.Now.Size)
	for _, g := range a.Pattern.Gauges {
		fmt.Fprintf(b, "  gauge %s: %s sts and %s rows over %s %s\n", g.Name, g.Stitches, g.Rows, units.In(g.Over, g.OverUnit), g.OverUnit)
	}
	for i, f := range told {
		if i == 0 {
			fmt.Fprintln(b)
		}
		text := f.Message
		if f.Piece != "" {
			text = f.Piece + ": " + text
		}
		for _, more := range []struct{ word, text string }{{"found", f.Have}, {"expected", f.Want}} {
			if more.text != "" {
				text += "; " + more.word + " " + more.text
			}
		}
		fmt.Fprintf(b, "  %s: %s\n", f.Severity, text)
	}
	if len(a.Changes) == 0 {
		fmt.Fprintln(b, "\nNothing changes.")
		return nil
	}
	tab := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	piece := ""
	for _, c := range changed(a) {
		if c.Piece != piece {
			piece = c.Piece
			fmt.Fprintf(tab, "\n%s\tas published\taltered\t\n", piece)
		}
		fmt.Fprintf(tab, "  %s\t%s\t%s\t%s\n", c.What, c.Was, c.Now, c.Unit)
	}
	return tab.Flush()
}
