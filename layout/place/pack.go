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
func pack(f *frame, t *table, list []*drawn) (pages []page, rest []*item, err error) {
	var cur page
	high := 0.0 // of the page but its last shelf
	flush := func() {
		if len(cur.shelves) > 0 {
			pages = append(pages, cur)
		}
		cur, high = page{table: true}, 0
	}
	cur.table = true
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
	for _, d := range list {
		rows := append(cur.rows[:len(cur.rows):len(cur.rows)], d.letters...)
		if n := len(cur.shelves); n > 0 {
			if s := cur.shelves[n-1].with(d); fits(s, high, rows) {
				cur.shelves[n-1], cur.rows = s, rows
				continue
			}
			last := cur.shelves[n-1]
			next := high + last.above + last.below + shelfGap
			if s := (shelf{}).with(d); fits(s, next, rows) {
				high = next
				cur.shelves, cur.rows = append(cur.shelves, s), rows
				continue
			}
			flush()
		}
		s := (shelf{}).with(d)
		if !fits(s, 0, d.letters) {
			cur.table = false
			if !fits(s, 0, nil) {
				return nil, nil, f.tooLarge(d)
			}
			rest = append(rest, d.letters...)
			cur.shelves = []shelf{s}
			continue
		}
		cur.shelves, cur.rows = []shelf{s}, d.letters
	}
	flush()
	return pages, rest, nil
}

func (f *frame) tooLarge(d *drawn) error {
	w, above, below := d.size()
	aw, ah := f.area(0)
	return &TooLarge{What: d.v.title, Scale: f.scale, Paper: f.p.o.Paper,
		W: f.w - aw + w, H: f.h - ah + above + below}
}

// arrange gives every view of a page its place: shelves and the views on them evenly
// apart, and says where the pieces end.
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
	gap := min(spare/float64(len(p.shelves)+1), 14)
	y := margin + f.headHigh + gap
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
