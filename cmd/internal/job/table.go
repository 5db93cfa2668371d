package job

import (
	"bytes"
	"context"
	"fmt"
	"io"

	"flatwright/cmd/internal/files"
	"flatwright/layout/table"
	"flatwright/render/text"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// TableOptions say which measurements are told, and how. The zero value is
// aligned text of all sizes in both units.
type TableOptions struct {
	Format string       // text, markdown or csv; empty: text
	Size   string       // one size alone; empty: all
	Units  []units.Unit // empty: both, the authored one first
}

var tableFormats = map[string]struct {
	ending string
	write  func(io.Writer, table.Table, ...units.Unit) error
}{
	"":         {".txt", text.Aligned},
	"text":     {".txt", text.Aligned},
	"markdown": {".md", text.Markdown},
	"csv":      {".csv", text.CSV},
}

// Table gives one file with the finished measurements. Its error is
// ErrUnreadable, an OptionError, or of an ended ctx.
func Table(ctx context.Context, src Source, o TableOptions) (Result, error) {
	format, ok := tableFormats[o.Format]
	if !ok {
		return Result{}, &OptionError{fmt.Sprintf("no table format %q; choose text, markdown or csv", o.Format)}
	}
	p, gs, r, err := work(ctx, src)
	if err != nil {
		return r, err
	}
	if o.Size != "" {
		i, err := sizeNamed(p, o.Size)
		if err != nil {
			return r, err
		}
		gs = []*schematic.Garment{gs[i]}
	}
	var b bytes.Buffer
	if err := format.write(&b, table.Of(gs), o.Units...); err != nil {
		return r, err
	}
	r.Files = []files.File{{Name: namer{}.name(format.ending, p.Title, "measurements"), Body: b.Bytes()}}
	return r, nil
}
