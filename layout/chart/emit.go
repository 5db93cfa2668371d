package chart

import (
	"fmt"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// emit writes every page.
func (c *pages) emit(whole *Work) []*sheet.Sheet {
	var out []*sheet.Sheet
	c.told = make([]bool, len(c.d.work.Rows))
	for r := range c.rows {
		for k := range c.cols {
			if c.no[r][k] == 0 {
				continue
			}
			s := c.sheet(c.no[r][k], whole)
			if len(c.leaves) == 0 && len(c.key) > 0 {
				s.Root.Items = append(s.Root.Items, c.keyGroup(leaf{0, len(c.key)}, c.keyTop()))
			}
			c.chart(s, k, r)
			s.Snap()
			out = append(out, s)
		}
	}
	for i, l := range c.leaves {
		s := c.sheet(c.n+1+i, whole)
		s.Root.Items = append(s.Root.Items, c.keyGroup(l, margin+c.headHigh))
		s.Snap()
		out = append(out, s)
	}
	return out
}

// words tells the rows of the work that is drawn, each once worked out.
func (c *pages) words(w *Work) func(r int) string {
	if w != c.d.work {
		return w.words
	}
	if c.said == nil {
		c.said = make([]string, len(w.Rows))
	}
	return func(r int) string {
		if c.said[r] == "" {
			c.said[r] = w.words(r)
		}
		return c.said[r]
	}
}

// keyPages says where the key is, if not on each page.
func (c *pages) keyPages() string {
	switch n := len(c.leaves); n {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf("key on page %d", c.n+1)
	default:
		return fmt.Sprintf("key on pages %d to %d", c.n+1, c.n+n)
	}
}

func (c *pages) sheet(n int, whole *Work) *sheet.Sheet {
	s := &sheet.Sheet{W: c.w, H: c.h, Author: c.o.Designer, Lang: c.o.lang(), Prefix: c.o.Prefix}
	s.Title = c.title() + ", stitch chart"
	if t := c.d.work.Title; t != "" && t != c.title() {
		s.Title = c.title() + ", stitch chart: " + t
		s.Bookmark = "Chart: " + t
	} else {
		s.Bookmark = "Stitch chart"
	}
	if c.count() > 1 {
		page := fmt.Sprintf("page %d of %d", n, c.count())
		s.Title += ", " + page
		s.Bookmark += ", " + page
	}
	s.Desc = c.d.statement()
	if n == 1 { // once: a large chart has as many words as it has pages
		s.Desc += " " + whole.describe(c.words(whole))
	} else {
		s.Desc += " Its rows are written out on page 1."
	}
	s.Root = sheet.Group{ID: "stitch-chart", Class: "chart"}
	g := &s.Root
	head := &sheet.Group{ID: "heading", Class: "heading"}
	y := margin
	for _, r := range c.head {
		y += r.gap + fonts.Ascent(r.face)*r.size
		head.Items = append(head.Items, sheet.NewText(r.s, r.face, r.size, pt{X: margin, Y: y}, sheet.Start, r.class))
		y += fonts.Descent(r.face) * r.size
	}
	if len(head.Items) > 0 {
		g.Items = append(g.Items, head)
	}
	size := c.o.text()
	line := sheet.LineHeight(fonts.Regular, size)
	if c.count() > 1 {
		g.Items = append(g.Items, sheet.NewText(fmt.Sprintf("page %d of %d", n, c.count()), fonts.Regular, size,
			pt{X: c.w - margin, Y: c.h - margin - line + fonts.Ascent(fonts.Regular)*size}, sheet.End, "page"))
	}
	if w := c.keyPages(); w != "" && n <= c.n {
		g.Items = append(g.Items, sheet.NewText(w, fonts.Regular, size, pt{X: margin, Y: c.h - margin - line + fonts.Ascent(fonts.Regular)*size}, sheet.Start, "page"))
	}
	return s
}

// keyGroup is lines of the key, from a height down.
func (c *pages) keyGroup(l leaf, y float64) *sheet.Group {
	key := &sheet.Group{ID: "key", Class: "key", Title: "Key"}
	size := c.o.text()
	line := sheet.LineHeight(fonts.Regular, size)
	k := c.keyScale()
	for i := l.from; i < l.to; i++ {
		entries := c.key[i]
		x := margin
		mid := y + c.keyHigh[i]/2 + 1
		for _, e := range entries {
			lo, hi := bounds(e.paths)
			w, _ := c.entryBox(e)
			g := &sheet.Group{ID: "key-" + slug(e.id), Class: "key", Title: e.what}
			centre := pt{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2}
			for _, q := range e.paths {
				at := pt{X: x + k*(hi.X-lo.X)/2, Y: mid}
				g.Items = append(g.Items, c.ink.moved(q, centre, at, k, false))
			}
			lines, _ := c.entryText(e)
			base := mid + (fonts.Ascent(fonts.Regular)-fonts.Descent(fonts.Regular))*size/2 - float64(len(lines)-1)*line/2
			for j, s := range lines {
				g.Items = append(g.Items, sheet.NewText(s, fonts.Regular, size,
					pt{X: x + k*(hi.X-lo.X) + 1.5, Y: base + float64(j)*line}, sheet.Start, "key"))
			}
			key.Items = append(key.Items, g)
			x += w + c.entryGap(e)
		}
		y += c.keyHigh[i] + 2
	}
	return key
}

// keyTop is where the key begins: under the drawing, or at the foot of each of several pages.
func (c *pages) keyTop() float64 {
	foot := c.h - margin - c.footHigh + 5
	if c.count() > 1 {
		return foot
	}
	v := c.view(0, 0)
	lo, _ := c.d.f.extent()
	return min(foot, v.paper(lo).Y+8)
}

// slug is an id's letters and figures.
func slug(s string) string {
	out := []rune(nil)
	for _, r := range s {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' {
			out = append(out, r)
		} else {
			out = append(out, '-')
		}
	}
	return string(out)
}

// moved is a path of the plane on paper: from goes to at.
func (k *ink) moved(q *sheet.Path, from, at pt, scale float64, grey bool) *sheet.Path {
	out := k.path(k.segments(nil, len(q.Segs)), q.Style, q.Class)
	out.Style.Width *= scale
	if out.Style.Dash != nil {
		out.Style.Dash = append([]float64(nil), q.Style.Dash...)
	}
	if grey {
		out.Class = "again"
		if out.Style.Stroke == sheet.Black {
			out.Style.Stroke = sheet.Grey
		}
		if out.Style.Fill == sheet.Black {
			out.Style.Fill = sheet.Grey
		}
	}
	for i := range q.Segs {
		s, t := &q.Segs[i], &out.Segs[i]
		t.Verb = s.Verb
		for k, p := range s.Points() {
			t.P[k] = pt{X: at.X + scale*(p.X-from.X), Y: at.Y - scale*(p.Y-from.Y)}
		}
	}
	return out
}

// view is the part of the figure that a page holds: a window, and how the plane
// lies on paper there.
type view struct {
	c        *pages
	col, row window
	k, r     int // which of the windows
	from, at pt  // a place of the plane, and where it lies
	more     float64
}

func (c *pages) view(k, r int) *view {
	col, row := c.cols[k], c.rows[r]
	areaW, areaH := c.w-2*margin, c.h-2*margin-c.headHigh-c.footHigh
	v := &view{c: c, col: col, row: row, k: k, r: r, more: overlap / c.d.scale}
	v.from = pt{X: (col.lo + col.hi) / 2, Y: -(row.lo + row.hi) / 2}
	v.at = pt{X: margin + areaW/2, Y: margin + c.headHigh + areaH/2}
	if c.count() == 1 { // near the heading
		high := c.d.scale * (row.hi - row.lo)
		v.at.Y = margin + c.headHigh + high/2 + min(6, (areaH-high)/2)
	}
	return v
}

// owns reports whether a place of the plane is in the view's window.
func (v *view) owns(p pt) bool {
	return (p.X >= v.col.lo || v.k == 0) && (p.X < v.col.hi || v.k == len(v.c.cols)-1) &&
		(-p.Y >= v.row.lo || v.r == 0) && (-p.Y < v.row.hi || v.r == len(v.c.rows)-1)
}

// shows reports whether a box is all in the window or the margin around it.
func (v *view) shows(lo, hi pt) bool {
	return lo.X >= v.col.lo-v.more && hi.X <= v.col.hi+v.more && -hi.Y >= v.row.lo-v.more && -lo.Y <= v.row.hi+v.more
}

// alone reports whether no page beside this one shows a mark of its own.
func (v *view) alone(m *mark) bool {
	return !(v.k > 0 && m.hi.X <= v.col.lo+v.more || v.k < len(v.c.cols)-1 && m.lo.X >= v.col.hi-v.more ||
		v.r > 0 && -m.lo.Y <= v.row.lo+v.more || v.r < len(v.c.rows)-1 && -m.hi.Y >= v.row.hi-v.more)
}

func (v *view) paper(p pt) pt {
	s := v.c.d.scale
	return pt{X: v.at.X + s*(p.X-v.from.X), Y: v.at.Y - s*(p.Y-v.from.Y)}
}

func (v *view) moved(q *sheet.Path, again bool) *sheet.Path {
	return v.c.ink.moved(q, v.from, v.at, v.c.d.scale, again)
}

// text is a label on paper.
func (v *view) text(l *label, at pt) *sheet.Text {
	p := v.paper(at)
	size := v.c.o.text()
	p.Y += (fonts.Ascent(fonts.Regular) - fonts.Descent(fonts.Regular)) * size / 2
	return sheet.NewText(l.s, fonts.Regular, size, p, l.shownAnchor(), l.class)
}

// sharing puts what a page shows into the groups of its rows.
type sharing struct {
	c      *pages
	v      *view
	groups []*sheet.Group
	rest   *sheet.Group // what belongs to no row
	own    []bool       // rows of which a stitch is the page's own
}

// chart writes the part of the figure that a page holds.
func (c *pages) chart(s *sheet.Sheet, k, r int) {
	d := c.d
	sh := &sharing{c: c, v: c.view(k, r), groups: make([]*sheet.Group, len(d.work.Rows)), own: make([]bool, len(d.work.Rows)),
		rest: &sheet.Group{ID: "marks", Class: "chart"}}
	for i := range sh.groups {
		sh.groups[i] = &sheet.Group{ID: fmt.Sprintf("row-%d", i), Class: "chart", Title: d.work.Rows[i].title()}
	}
	nums := sh.look()
	for i := range d.f.marks {
		sh.mark(&d.f.marks[i])
	}
	sh.numbers(nums)
	sh.labels()
	for i, g := range sh.groups {
		if len(g.Items) == 0 {
			continue
		}
		if !c.told[i] { // once, on the first page that shows it
			g.Desc, c.told[i] = c.words(d.work)(i), true
		}
		s.Root.Items = append(s.Root.Items, g)
	}
	if c.count() > 1 {
		c.meet(sh.rest, append(sh.groups, sh.rest), sh.v)
	}
	if len(sh.rest.Items) > 0 {
		s.Root.Items = append(s.Root.Items, sh.rest)
	}
}

func (s *sharing) put(row int, it sheet.Item) {
	g := s.rest
	if row >= 0 {
		g = s.groups[row]
	}
	g.Items = append(g.Items, it)
}

// look notes what the page shows, and gives the names of the rows as they stand beside it.
func (s *sharing) look() numbers {
	d := s.c.d
	if s.c.count() == 1 || len(d.f.names) == 0 {
		return d.f.nums
	}
	seen := make([]*mark, 0, len(d.f.marks)/s.c.count())
	for i := range d.f.marks {
		m := &d.f.marks[i]
		mine, shown := s.v.owns(m.at), s.v.shows(m.lo, m.hi)
		switch {
		case m.long() && !(mine && shown):
			seen = append(seen, s.parts(m)...)
		case mine || shown:
			seen = append(seen, m)
		}
	}
	return d.f.number(s.c.o, d.scale, seen, d.f.sideRoom(s.c.o))
}

// parts are those of a mark across the chart that lie on the page.
func (s *sharing) parts(m *mark) []*mark {
	var out []*mark
	for _, q := range m.paths {
		for _, part := range clip(q, s.v.col, s.v.row, s.v.more) {
			p := newMark(m.row, false, part)
			out = append(out, &p)
		}
	}
	return out
}

// mark puts a mark where the page shows it: its own in black, a neighbour's in grey, and of
// a long one the part that lies here.
func (s *sharing) mark(m *mark) {
	v := s.v
	mine, shown := v.owns(m.at), v.shows(m.lo, m.hi)
	if m.long() && s.c.count() > 1 && !(mine && shown) {
		for _, p := range s.parts(m) {
			s.put(m.row, v.moved(p.paths[0], false))
		}
		return
	}
	if !mine && !shown {
		return
	}
	if mine && m.stitch {
		s.own[max(m.row, 0)] = true
		g := &s.c.ink.groups.take(1)[0]
		g.Class, g.Items = "stitch", s.c.ink.items.take(len(m.paths))
		for i, q := range m.paths {
			g.Items[i] = s.onPaper(q, m, false)
		}
		s.put(m.row, g)
		return
	}
	for _, q := range m.paths {
		s.put(m.row, s.onPaper(q, m, !mine))
	}
}

// onPaper is a path of a mark where it lies on the page. What no other page shows is the figure's own.
func (s *sharing) onPaper(q *sheet.Path, m *mark, again bool) *sheet.Path {
	if again || !s.v.alone(m) {
		return s.v.moved(q, again)
	}
	scale := s.c.d.scale
	q.Style.Width *= scale
	for i := range q.Segs {
		points := q.Segs[i].Points()
		for k := range points {
			points[k] = s.v.paper(points[k])
		}
	}
	return q
}

// numbers puts the names of the rows that the page shows.
func (s *sharing) numbers(nums numbers) {
	for _, m := range nums.arrows {
		for _, q := range m.paths {
			s.put(m.row, s.v.moved(q, !s.own[m.row]))
		}
	}
	for i := range nums.labels {
		l := &nums.labels[i]
		s.put(l.row, s.v.text(l, l.at))
	}
}

// labels puts the words that stand on the page.
func (s *sharing) labels() {
	f := s.c.d.f
	for i := range f.labels {
		l := &f.labels[i]
		at := l.at
		if l.class == "break" && len(s.c.cols) > 1 { // on each page that it crosses
			at.X = f.beside(s.v.col.lo, s.v.col.hi, at.Y+gapHigh/2)
		}
		if s.v.owns(at) {
			s.put(l.row, s.v.text(l, at))
		}
	}
}

// long reports whether a mark goes across the chart, so that each page shows its part.
func (m *mark) long() bool {
	if m.stitch {
		return false
	}
	return m.row < 0 || m.paths[0].Class == "break"
}

// shownAnchor is where the text's point lies.
func (l *label) shownAnchor() sheet.Anchor {
	if l.side {
		return l.anchor
	}
	return sheet.Middle
}
