package place

// put is a view on its page: o is the place of its outline's top left corner.
type put struct {
	d *drawn
	o pt
}

// shelf is a row of views whose outlines stand on one line.
type shelf struct {
	views        []*drawn
	w            float64
	above, below float64 // the line
}

// page is one sheet before it is written.
type page struct {
	shelves []shelf
	rows    []*item // of the table on this page
	table   bool    // the table stands on this page
}

const shelfGap = 7.0 // between two views, mm

func (d *drawn) size() (w, above, below float64) {
	return d.all.hi.X - d.all.lo.X, d.h - d.all.lo.Y, d.all.hi.Y - d.h
}

func (s shelf) with(d *drawn) shelf {
	w, above, below := d.size()
	if len(s.views) > 0 {
		s.w += shelfGap
	}
	s.w += w
	s.above, s.below = max(s.above, above), max(s.below, below)
	s.views = append(s.views[:len(s.views):len(s.views)], d)
	return s
}

// pack sets the views on shelves and pages in their order. Rows of the table that
// have no page beside their piece come back as rest.
// With apart, no table stands beside the pieces.
func pack(f *frame, t *table, list []*drawn, apart bool) ([]page, []*item, error) {
	p := packer{f: f, t: t, apart: apart, cur: page{table: !apart}}
	for _, d := range list {
		if p.onShelf(d) || p.onNewShelf(d) {
			continue
		}
		p.flush()
		if !p.onNewPage(d) {
			return nil, nil, f.tooLarge(d, list)
		}
	}
	p.flush()
	return p.pages, p.rest, nil
}

// packer is a drawing while its views are set on pages.
type packer struct {
	f     *frame
	t     *table
	apart bool
	pages []page
	rest  []*item
	cur   page
	high  float64 // of the page but its last shelf
}

// flush ends the page, if anything is on it.
func (p *packer) flush() {
	if len(p.cur.shelves) > 0 {
		p.pages = append(p.pages, p.cur)
		p.cur, p.high = page{table: !p.apart}, 0
	}
}

// rows are those of the table on the page with the letters of a view.
func (p *packer) rows(d *drawn) []*item {
	rows := p.cur.rows
	if p.cur.table {
		rows = append(rows[:len(rows):len(rows)], d.letters...)
	}
	return rows
}

// fits reports whether a shelf fits below so much of the page, with the rows of the table.
func (p *packer) fits(s shelf, above float64, rows []*item) bool {
	w, h := p.f.area(len(p.pages))
	need := above + s.above + s.below
	if p.cur.table && len(rows) > 0 {
		if p.t == nil {
			return false
		}
		need += p.t.high(rows)
	}
	return s.w <= w && need <= h
}

// onShelf sets a view on the last shelf of the page, if it fits.
func (p *packer) onShelf(d *drawn) bool {
	n := len(p.cur.shelves)
	if n == 0 {
		return false
	}
	s, rows := p.cur.shelves[n-1].with(d), p.rows(d)
	if !p.fits(s, p.high, rows) {
		return false
	}
	p.cur.shelves[n-1], p.cur.rows = s, rows
	p.rest = later(p.rest, d, p.cur.table)
	return true
}

// onNewShelf sets a view on a further shelf of the page, if it fits.
func (p *packer) onNewShelf(d *drawn) bool {
	n := len(p.cur.shelves)
	if n == 0 {
		return false
	}
	last := p.cur.shelves[n-1]
	s, rows, next := shelf{}.with(d), p.rows(d), p.high+last.above+last.below+shelfGap
	if !p.fits(s, next, rows) {
		return false
	}
	p.high, p.cur.shelves, p.cur.rows = next, append(p.cur.shelves, s), rows
	p.rest = later(p.rest, d, p.cur.table)
	return true
}

// onNewPage sets a view on an empty page, with its table if that fits too.
func (p *packer) onNewPage(d *drawn) bool {
	s := shelf{}.with(d)
	if p.cur.table && p.fits(s, 0, d.letters) {
		p.cur.shelves, p.cur.rows = []shelf{s}, d.letters
		return true
	}
	p.cur.table = false
	if len(p.pages) == 0 && p.f.cautHigh > 0 && !p.fits(s, 0, nil) {
		p.pages = append(p.pages, page{}) // the caution has the first page to itself
	}
	if !p.fits(s, 0, nil) {
		return false
	}
	p.rest = later(p.rest, d, false)
	p.cur.shelves = []shelf{s}
	return true
}

// later adds the view's letters to those without a table beside their piece.
func later(rest []*item, d *drawn, table bool) []*item {
	if table {
		return rest
	}
	return append(rest, d.letters...)
}

// tooLarge names the view that did not fit, and the paper that holds every view.
func (f *frame) tooLarge(d *drawn, list []*drawn) *TooLarge {
	aw, ah := f.area(1)
	e := &TooLarge{What: "Piece " + d.v.title, Scale: f.scale, Paper: f.p.o.Paper}
	for _, d := range list {
		w, above, below := d.size()
		e.W, e.H = max(e.W, f.w-aw+w), max(e.H, f.h-ah+above+below)
	}
	return e
}

// mostApart is the most that is added between two shelves, mm: farther apart they
// would no longer be one drawing.
const mostApart = 14

// arrange gives every view of a page its place: shelves and the views on them evenly
// apart, a little more of what room is left below them than above.
func (p *page) arrange(f *frame, n int, table float64) []put {
	w, h := f.area(n)
	need := 0.0
	for i, s := range p.shelves {
		if i > 0 {
			need += shelfGap
		}
		need += s.above + s.below
	}
	spare := max(0, h-table-need)
	gap := min(spare/float64(len(p.shelves)+1), mostApart)
	y := margin + f.headHigh + 0.4*(spare-gap*float64(len(p.shelves)-1))
	var puts []put
	for i, s := range p.shelves {
		if i > 0 {
			y += shelfGap + gap
		}
		y += s.above
		side := max(0, w-s.w) / float64(len(s.views)+1)
		x := margin + side
		for _, d := range s.views {
			dw, _, _ := d.size()
			puts = append(puts, put{d, pt{X: x - d.all.lo.X, Y: y - d.h}})
			x += dw + shelfGap + side
		}
		y += s.below
	}
	return puts
}
