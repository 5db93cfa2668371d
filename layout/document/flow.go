package document

import (
	"fmt"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// atom is the least thing that a page may break between: a line, a row of a table.
type atom struct {
	high, gap float64 // gap is above it, and falls away at the head of a page
	keep      bool    // no break behind it
	head      *head   // repeated at the head of a page if the table goes on there
	fresh     bool    // begins a page
	name      string  // in the outline
	level     int
	draw      func(g *sheet.Group, y float64)
	page      *sheet.Sheet // a page of its own, as it is
}

// head is the head of a table.
type head struct {
	high float64
	draw func(g *sheet.Group, y float64)
}

// pages is a document being set.
type pages struct {
	w, h   float64
	size   float64 // of the text, mm
	title  string  // running head
	right  string  // its right-hand side
	doc    sheet.Sheet
	sheets []*sheet.Sheet
	y      float64
	open   bool
}

const (
	edge  = 10.0 // from the paper's edge to the running head and foot
	inset = 18.0 // from the paper's edge to the text
)

// headSize is the text of running head and foot: large print stays large.
func (p *pages) headSize() float64 {
	if p.size >= 6 {
		return p.size
	}
	return 2.9
}

func (p *pages) top() float64 {
	if len(p.sheets) <= 1 {
		return edge + 4
	}
	return edge + lineHigh(p.headSize()) + 5
}

func (p *pages) bottom() float64 { return p.h - edge - lineHigh(p.headSize()) - 4 }

func (p *pages) newPage() {
	s := p.doc
	s.W, s.H = p.w, p.h
	s.Root = sheet.Group{ID: "page", Class: "document"}
	p.sheets = append(p.sheets, &s)
	p.y, p.open = p.top(), true
}

func (p *pages) current() *sheet.Sheet { return p.sheets[len(p.sheets)-1] }

// flow sets the atoms over pages.
func (p *pages) flow(all []atom) {
	for i := 0; i < len(all); {
		a := &all[i]
		if a.page != nil {
			p.sheets = append(p.sheets, a.page)
			p.open = false
			i++
			continue
		}
		if !p.open || a.fresh {
			p.newPage()
		}
		n, need := p.chunk(all[i:])
		room := p.bottom() - p.y
		if need > room && p.y > p.top() {
			p.newPage()
			if a.head != nil && i > 0 && all[i-1].head == a.head {
				a.head.draw(&p.current().Root, p.y)
				p.y += a.head.high
			}
			n, _ = p.chunk(all[i:])
		}
		for range n {
			p.set(&all[i])
			i++
			if i < len(all) && p.y+all[i].gap+all[i].high > p.bottom() {
				break // what must stay together is longer than a page
			}
		}
	}
}

// chunk is how many atoms stay together, and their height.
func (p *pages) chunk(all []atom) (n int, high float64) {
	for i := range all {
		if all[i].page != nil {
			return max(i, 1), high
		}
		if i > 0 || p.y > p.top() {
			high += all[i].gap
		}
		high += all[i].high
		if !all[i].keep {
			return i + 1, high
		}
	}
	return len(all), high
}

func (p *pages) set(a *atom) {
	if p.y > p.top() {
		p.y += a.gap
	}
	s := p.current()
	if a.name != "" {
		s.Places = append(s.Places, sheet.Bookmark{Name: a.name, Level: a.level, Y: p.y})
	}
	if a.draw != nil {
		a.draw(&s.Root, p.y)
	}
	p.y += a.high
}

// finish writes running heads and page numbers.
func (p *pages) finish() []*sheet.Sheet {
	size := p.headSize()
	for i, s := range p.sheets {
		g := &sheet.Group{ID: "running", Class: "page"}
		if i > 0 {
			base := edge + fonts.Ascent(fonts.Regular)*size
			right := cutText(p.right, fonts.Regular, size, (s.W-2*edge)/2-4)
			rw := fonts.Width(fonts.Regular, size, right)
			left := cutText(p.title, fonts.Regular, size, s.W-2*edge-rw-6)
			setLine(g, []run{{left, fonts.Regular, sheet.Black}}, edge, base, size, "page")
			setLine(g, []run{{right, fonts.Regular, sheet.Black}}, s.W-edge-rw, base, size, "page")
		}
		text := fmt.Sprintf("page %d of %d", i+1, len(p.sheets))
		w := fonts.Width(fonts.Regular, size, text)
		foot := s.H - edge - fonts.Descent(fonts.Regular)*size
		setLine(g, []run{{text, fonts.Regular, sheet.Black}}, s.W-edge-w, foot, size, "page")
		s.Root.Items = append(s.Root.Items, g)
		s.Title = fmt.Sprintf("%s, %s", p.title, text)
	}
	return p.sheets
}

// cutText is s, shortened with an ellipsis to wide mm.
func cutText(s string, f fonts.Face, size, wide float64) string {
	s = fonts.Shown(f, s)
	if fonts.Width(f, size, s) <= wide {
		return s
	}
	return fitting(s, f, size, wide-fonts.Width(f, size, "…")) + "…"
}
