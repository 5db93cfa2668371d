// Package pdf writes sheets as the pages of one PDF, true to scale: vectors, live
// text in embedded and subset faces, the same picture as package svg. It decides
// nothing.
package pdf

import (
	"bytes"
	"cmp"
	"errors"
	"io"
	"strings"
	"time"

	"github.com/go-pdf/fpdf"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// Info is what a document says of itself, in plain text. An empty entry is left
// out; Title, Author and Lang are then the first sheet's.
type Info struct {
	Title    string
	Author   string
	Subject  string
	Keywords string
	Lang     string // BCP 47, such as en
	Creator  string // the program that made the pages, with its version
	// Date is the date of the document. A zero Date is 1 January 2000, so that
	// the same sheets make the same bytes on every day.
	Date time.Time
	// Outlined writes words as paths, for programs that know no face within a file. They can't be searched.
	Outlined bool
}

// ErrNoSheets is for a document without a page.
var ErrNoSheets = errors.New("a PDF needs at least one sheet")

// Write writes one page a sheet, each in its sheet's own size. It returns
// ErrNoSheets, sheet.ErrNotFinite, an error of the PDF library, or w's.
func Write(w io.Writer, sheets []*sheet.Sheet, info Info) error {
	if len(sheets) == 0 {
		return ErrNoSheets
	}
	for _, s := range sheets {
		if err := s.Finite(); err != nil {
			return err
		}
	}
	first := sheets[0]
	p := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: sizeOf(first)})
	d := &document{Fpdf: p, sheets: sheets, targets: map[string]target{}}
	d.describe(info)
	if d.outlined = info.Outlined; !d.outlined {
		d.embed()
	}
	d.findTargets()
	for _, s := range sheets {
		d.page(s)
	}
	var out bytes.Buffer
	if err := p.Output(&out); err != nil {
		return err
	}
	whole, err := withPreferences(out.Bytes())
	if err != nil {
		return err
	}
	_, err = w.Write(whole)
	return err
}

// document is one PDF on its way out. The library keeps the first error.
type document struct {
	*fpdf.Fpdf
	sheets  []*sheet.Sheet
	targets map[string]target
	pen     pen
	// families are the names of the faces within the file.
	families map[fonts.Face]string
	outlined bool
	unicode  bool // a face is set, and the library encodes bookmarks
}

// target is where a link within the document leads: to a group's top.
type target struct {
	page, link int
	y          float64
}

func (d *document) describe(info Info) {
	first := d.sheets[0]
	d.SetMargins(0, 0, 0)
	d.SetAutoPageBreak(false, 0)
	d.SetCatalogSort(true)
	d.SetProducer("fpdf", true)
	for _, entry := range []struct {
		set  func(string, bool)
		text string
	}{
		{d.SetTitle, cmp.Or(info.Title, first.Title)},
		{d.SetAuthor, cmp.Or(info.Author, first.Author)},
		{d.SetSubject, info.Subject},
		{d.SetKeywords, info.Keywords},
		{d.SetCreator, info.Creator},
	} {
		if text := metadata(entry.text); text != "" {
			entry.set(text, true)
		}
	}
	d.SetLang(sheet.LanguageTag(cmp.Or(info.Lang, first.Lang)))
	date := info.Date
	if date.IsZero() {
		date = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	d.SetCreationDate(date.UTC())
	d.SetModificationDate(date.UTC())
	d.SetLineCapStyle("round")
	d.SetLineJoinStyle("round")
}

// embed adds what the sheets use of each face, and no other: each one costs time.
func (d *document) embed() {
	used := map[fonts.Face][]string{}
	var order []fonts.Face
	for _, s := range d.sheets {
		sheet.Walk(&s.Root, func(it sheet.Item) {
			t, ok := it.(*sheet.Text)
			if !ok || !t.Visible() {
				return
			}
			if used[t.Face] == nil {
				order = append(order, t.Face)
			}
			used[t.Face] = append(used[t.Face], t.S)
		})
	}
	d.families = map[fonts.Face]string{}
	for _, f := range order {
		sub := fonts.SubsetOf(f, used[f]...)
		d.families[f] = sub.Name
		// A copy, since the library pads tables in place.
		d.AddUTF8FontFromBytes(sub.Name, "", bytes.Clone(sub.TTF))
		d.SetFont(sub.Name, "", 10)
		d.unicode = true
	}
}

func (d *document) findTargets() {
	for i, s := range d.sheets {
		sheet.Walk(&s.Root, func(it sheet.Item) {
			g, ok := it.(*sheet.Group)
			if !ok || g.ID == "" {
				return
			}
			if _, known := d.targets[g.ID]; known {
				return
			}
			lo, _, _ := sheet.Bounds(g)
			d.targets[g.ID] = target{page: i + 1, y: sheet.Quantise(lo.Y)}
		})
	}
}

func (d *document) page(s *sheet.Sheet) {
	d.AddPageFormat("P", sizeOf(s))
	d.pen = pen{}
	if s.Bookmark != "" {
		d.bookmark(s, sheet.Bookmark{Name: s.Bookmark})
	}
	for _, b := range s.Places {
		d.bookmark(s, b)
	}
	d.group(&s.Root)
}

func (d *document) bookmark(s *sheet.Sheet, b sheet.Bookmark) {
	// The library measures every bookmark from the height of the last page.
	last := sizeOf(d.sheets[len(d.sheets)-1])
	name := metadata(b.Name)
	if !d.unicode {
		name = utf16Text(name)
	}
	d.Bookmark(name, max(b.Level, 0), last.Ht-sizeOf(s).Ht+sheet.Quantise(b.Y))
}

func sizeOf(s *sheet.Sheet) fpdf.SizeType {
	return fpdf.SizeType{Wd: sheet.Quantise(s.W), Ht: sheet.Quantise(s.H)}
}

// metadata is text that the library can encode: valid, on one line, within the
// Basic Multilingual Plane.
func metadata(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case r < ' ' || r == 0x7f || r == '\uFFFD':
			return -1
		case r > 0xFFFF:
			return fonts.StandIn
		}
		return r
	}, s)
}
