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
func pack(f *frame, t *table, list []*drawn, apart bool) (pages []page, rest []*item, err error) {
	var cur page
	high := 0.0 // of the page but its last shelf
	flush := func() {
		if len(cur.shelves) > 0 {
			pages = append(pages, cur)
		}
		cur, high = page{table: !apart}, 0
	}
	cur.table = !apart
	fits := func(s shelf, above float64, rows []*item) bool {
		w, h := f.area(len(pages))
		need := above + s.above + s.below
		if cur.table && len(rows) > 0 {
			if t == nil {
				return false
			}
			need += t.high(rows)
		}
		return s.w <= w && need <= h
	}
	for i, d := range list {
		if i > 0 && (list[i-1].v.worn || d.v.worn) {
			flush() // the garment as it is worn has the first page to itself
		}
		rows := cur.rows
		if cur.table {
			rows = append(rows[:len(rows):len(rows)], d.letters...)
		}
		if n := len(cur.shelves); n > 0 {
			if s := cur.shelves[n-1].with(d); fits(s, high, rows) {
				cur.shelves[n-1], cur.rows = s, rows
				rest = later(rest, d, cur.table)
				continue
			}
			last := cur.shelves[n-1]
			next := high + last.above + last.below + shelfGap
			if s := (shelf{}).with(d); fits(s, next, rows) {
				high = next
				cur.shelves, cur.rows = append(cur.shelves, s), rows
				rest = later(rest, d, cur.table)
				continue
			}
			flush()
		}
		s := (shelf{}).with(d)
		if cur.table && fits(s, 0, d.letters) {
			cur.shelves, cur.rows = []shelf{s}, d.letters
			continue
		}
		cur.table = false
		if len(pages) == 0 && f.cautHigh > 0 && !fits(s, 0, nil) {
			pages = append(pages, page{}) // the caution has the first page to itself
		}
		if !fits(s, 0, nil) {
			return nil, nil, f.tooLarge(d, list)
		}
		rest = later(rest, d, false)
		cur.shelves = []shelf{s}
	}
	flush()
	return pages, rest, nil
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
