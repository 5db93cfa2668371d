package job

import (
	"bytes"
	"context"
	"hash/crc32"
	"slices"
	"strconv"
	"strings"

	"flatwright/cmd/internal/files"
	"flatwright/layout/chart"
	"flatwright/layout/document"
	"flatwright/layout/sheet"
	"flatwright/render/html"
	"flatwright/schematic"
	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
)

// PageOptions say what a page is to be. The zero value is a whole page.
type PageOptions struct {
	Snippet bool     // an element for another page
	Rows    *Source  // the file of written rows that the pattern names, if it was read
	Charts  []string // sections of the rows that are charted
	Photos  []Source // the files of the photographs that the pattern names
	Face    *Source  // the file of a face for the words on drawings; nil: the house's
}

// How wide drawings may be at 3.2 mm of text, mm. Of a telephone's 360 px, 328 are a drawing's: one with letters fits there
// with text of 12 px; one with values would have no room for its garment, and goes on to the right.
const (
	widestLetters = 87
	widestValues  = 118
)

// Page gives one self-contained HTML file in which a person chooses her size and
// unit. Its error is ErrUnreadable, a place.TooLarge, or of an ended ctx.
func Page(ctx context.Context, src Source, o PageOptions) (Result, error) {
	p, gs, r, err := work(ctx, src)
	if err != nil {
		return r, err
	}
	face := ownFace(facePos(p), o.Face, &r.Findings)
	drawings, err := document.Drawings(gs, face, widestLetters, widestValues)
	if err != nil {
		return r, err
	}
	if err := stopped(ctx); err != nil {
		return r, err
	}
	c := content(p, gs, o.Rows)
	for size := range gs {
		if len(gs) > 1 {
			ofSize(c, p, gs, o.Rows, size)
		}
	}
	pictures, err := photos(p, o.Photos)
	if err != nil {
		return r, err
	}
	page := html.Page{Content: c, Drawings: drawings, Photos: pictures, Snippet: o.Snippet, Prefix: prefix(p)}
	for _, section := range o.Charts {
		for size := range gs {
			name, sheets, err := pageChart(p, rowsOf(p, gs, o.Rows, -1), section, size, chart.Options{Trim: true, Text: pageText, Face: face})
			if err != nil {
				return r, err
			}
			page.Charts = append(page.Charts, document.Chart(name, size, sheets))
			if len(gs) > 1 && size == sampleOf(p) {
				d := document.Chart(name+", size "+p.Sizes.Names[size], size, sheets)
				d.Size = -1
				page.Charts = append(page.Charts, d)
			}
		}
	}
	r.Findings = append(r.Findings, lacking(facePos(p), figures(drawings, page.Charts)...)...)
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

// figures are the sheets of drawings.
func figures(all ...[]document.Drawing) []*sheet.Sheet {
	var out []*sheet.Sheet
	for _, d := range slices.Concat(all...) {
		for _, f := range d.Figures {
			out = append(out, f.Sheet)
		}
		out = append(out, d.Key...)
	}
	return out
}

// pageChart is the chart of a section; one that is little too wide for a telephone has larger words, so that it may stand there smaller.
func pageChart(p *schematic.Pattern, text, section string, size int, o chart.Options) (name string, sheets []*sheet.Sheet, err error) {
	const room, larger = 350 / 12.0, 1.35 // how many times as wide as its words are high it may be there
	name, sheets, err = charted(p, text, section, size, o)
	widest := 0.0
	for _, f := range document.Chart(name, size, sheets).Figures {
		widest = max(widest, f.Sheet.W)
	}
	if err != nil || widest <= room*o.Text || widest > room*o.Text*larger {
		return name, sheets, err
	}
	o.Text *= larger
	return charted(p, text, section, size, o)
}

// pageText is the size of the words of a chart on a web page, mm: that of its tables, 0.92 of 16 px, where 96 px are an inch.
const pageText = 3.9

// prefix is short, and hardly that of another pattern: two may stand on one page.
func prefix(p *schematic.Pattern) string {
	sum := crc32.ChecksumIEEE([]byte(p.Title + "\n" + p.Designer))
	return "fw" + strconv.FormatUint(uint64(sum%(36*36*36)), 36)
}

// sampleOf is the size that stands for all of them: the sample's, or the middle one.
func sampleOf(p *schematic.Pattern) int {
	if p.Sample >= 0 && p.Sample < p.Sizes.Len() {
		return p.Sample
	}
	return p.Sizes.Len() / 2
}

// content is what the pages of a pattern say.
func content(p *schematic.Pattern, gs []*schematic.Garment, beside *Source) *document.Content {
	sections, short := document.Written(p, rowsOf(p, gs, beside, -1))
	if ownWords(p, beside) && !slices.ContainsFunc(sections, document.WrittenSection.MakesUp) {
		if lines := rows.MakingUp(p, gs, rows.PrintOptions{Size: -1}); lines != nil {
			sections = append(sections, document.WrittenSection{Name: "Making up", Lines: lines})
		}
	}
	return document.Of(gs, sections, short)
}

// ownWords reports whether the designer wrote the rows.
func ownWords(p *schematic.Pattern, beside *Source) bool {
	return beside != nil || strings.TrimSpace(p.Rows) != ""
}

// ofSize gives content the rows of one size, if they are not the designer's own words.
func ofSize(c *document.Content, p *schematic.Pattern, gs []*schematic.Garment, beside *Source, size int) {
	if !ownWords(p, beside) {
		sections, _ := document.Written(p, rowsOf(p, gs, beside, size))
		c.Put(size, sections)
	}
}

// rowsOf are the designer's rows, or else those that the pieces make. Those that are
// printed for one size alone leave out what that size does not do.
func rowsOf(p *schematic.Pattern, gs []*schematic.Garment, beside *Source, size int) string {
	switch {
	case beside != nil:
		text, _ := decoded(*beside)
		return string(text.Text)
	case ownWords(p, nil):
		return p.Rows
	}
	return rows.Print(p, gs, rows.PrintOptions{Terms: stitch.Terms(p.Terms), Size: size})
}
