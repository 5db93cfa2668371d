package job

import (
	"bytes"
	"context"
	"fmt"
	"hash/crc32"
	"strconv"
	"strings"

	"flatwright/cmd/internal/files"
	"flatwright/layout/document"
	"flatwright/render/html"
	"flatwright/schematic"
	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
)

// PageOptions say what a page is to be. The zero value is a whole page.
type PageOptions struct {
	Snippet bool    // an element for another page
	Rows    *Source // the file of written rows that the pattern names, if it was read
}

// widestFigure is how wide a drawing may be at 3.2 mm of text, mm: on a telephone's
// 360 px the text is then about 9 px high.
const widestFigure = 118

// Page gives one self-contained HTML file in which a person chooses her size and
// unit. Its error is ErrUnreadable, a place.TooLarge, or of an ended ctx.
func Page(ctx context.Context, src Source, o PageOptions) (Result, error) {
	p, gs, r, err := work(ctx, src)
	if err != nil {
		return r, err
	}
	drawings, err := document.Drawings(gs, widestFigure)
	if err != nil {
		return r, err
	}
	if err := ctx.Err(); err != nil {
		return r, fmt.Errorf("stopped: %w", context.Cause(ctx))
	}
	page := html.Page{Content: content(p, gs, o.Rows, -1), Drawings: drawings, Snippet: o.Snippet, Prefix: prefix(p)}
	name := "page"
	if o.Snippet {
		name = "snippet"
	}
	var b bytes.Buffer
	if err := html.Write(&b, page); err != nil {
		return r, err
	}
	r.Files = []files.File{{Name: namer{}.name(".html", p.Title, name), Body: b.Bytes()}}
	return r, nil
}

// prefix is short, and hardly that of another pattern: two may stand on one page.
func prefix(p *schematic.Pattern) string {
	sum := crc32.ChecksumIEEE([]byte(p.Title + "\n" + p.Designer))
	return "fw" + strconv.FormatUint(uint64(sum%(36*36*36)), 36)
}

// content is what the pages of a pattern say: with the designer's rows, or else with
// those that its pieces make.
// Those that are printed for one size alone leave out what that size does not do.
func content(p *schematic.Pattern, gs []*schematic.Garment, beside *Source, size int) *document.Content {
	text := p.Rows
	if beside != nil {
		text = string(beside.Text)
	}
	if strings.TrimSpace(text) == "" {
		text = rows.Print(p, gs, rows.PrintOptions{Terms: stitch.Terms(p.Terms), Size: size})
	}
	sections, short := document.Written(p, text)
	return document.Of(gs, sections, short)
}
