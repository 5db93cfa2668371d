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
	n := 0
	for r, row := range c.rows {
		for k, col := range c.cols {
			n++
			s := c.sheet(n, whole)
			c.chart(s, col, row, k, r)
			s.Snap()
			out = append(out, s)
		}
	}
	return out
}

func (c *pages) sheet(n int, whole *Work) *sheet.Sheet {
	s := &sheet.Sheet{W: c.w, H: c.h, Author: c.o.Designer, Lang: c.o.lang(), Prefix: c.o.Prefix}
	s.Title = c.head[0].s + ", stitch chart"
	if t := c.d.work.Title; t != "" && t != c.head[0].s {
		s.Title = c.head[0].s + ", stitch chart: " + t
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
		s.Desc += " " + whole.Describe()
	} else {
		s.Desc += " Its rows are told in words on page 1."
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
	g.Items = append(g.Items, head)
	size := c.o.text()
	line := sheet.LineHeight(fonts.Regular, size)
	if c.count() > 1 {
		g.Items = append(g.Items, sheet.NewText(fmt.Sprintf("page %d of %d", n, c.count()), fonts.Regular, size,
			pt{X: c.w - margin, Y: c.h - margin - line + fonts.Ascent(fonts.Regular)*size}, sheet.End, "page"))
	}
	if len(c.key) > 0 {
		g.Items = append(g.Items, c.keyGroup())
	}
	return s
}

func (c *pages) keyGroup() *sheet.Group {
	key := &sheet.Group{ID: "key", Class: "key", Title: "Key"}
	size := c.o.text()
	y := c.h - margin - c.footHigh + 5
	k := c.keyScale()
	for i, entries := range c.key {
		x := margin
		mid := y + c.keyHigh[i]/2 + 1
		for _, e := range entries {
			lo, hi := bounds(e.paths)
			w, _ := c.entryBox(e)
			g := &sheet.Group{ID: "key-" + slug(e.id), Class: "key", Title: e.what}
			centre := pt{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2}
			for _, q := range e.paths {
				at := pt{X: x + k*(hi.X-lo.X)/2, Y: mid}
				g.Items = append(g.Items, moved(q, centre, at, k, false))
			}
			base := mid + (fonts.Ascent(fonts.Regular)-fonts.Descent(fonts.Regular))*size/2
			g.Items = append(g.Items, sheet.NewText(c.entryText(e), fonts.Regular, size,
				pt{X: x + k*(hi.X-lo.X) + 1.5, Y: base}, sheet.Start, "key"))
			key.Items = append(key.Items, g)
			x += w + keyGap
		}
		y += c.keyHigh[i] + 2
	}
	return key
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
func moved(q *sheet.Path, from, at pt, scale float64, grey bool) *sheet.Path {
	out := &sheet.Path{Class: q.Class, Style: q.Style, Segs: make([]sheet.Seg, len(q.Segs))}
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
	for i, s := range q.Segs {
		t := sheet.Seg{Verb: s.Verb}
		for k, p := range s.Points() {
			t.P[k] = pt{X: at.X + scale*(p.X-from.X), Y: at.Y - scale*(p.Y-from.Y)}
		}
		out.Segs[i] = t
	}
	return out
}

// chart writes the part of the figure that a window holds.
func (c *pages) chart(s *sheet.Sheet, col, row window, k, r int) {
	d := c.d
	sc := d.scale
	areaW, areaH := c.w-2*margin, c.h-2*margin-c.headHigh-c.footHigh
	from := pt{X: (col.lo + col.hi) / 2, Y: -(row.lo + row.hi) / 2}
	at := pt{X: margin + areaW/2, Y: margin + c.headHigh + areaH/2}
	if c.count() == 1 { // near the heading
		at.Y = margin + c.headHigh + sc*(row.hi-row.lo)/2 + min(6, (areaH-sc*(row.hi-row.lo))/2)
	}
	more := overlap / sc
	owns := func(p pt) bool {
		return (p.X >= col.lo || k == 0) && (p.X < col.hi || k == len(c.cols)-1) &&
			(-p.Y >= row.lo || r == 0) && (-p.Y < row.hi || r == len(c.rows)-1)
	}
	shows := func(lo, hi pt) bool {
		return lo.X >= col.lo-more && hi.X <= col.hi+more && -hi.Y >= row.lo-more && -lo.Y <= row.hi+more
	}
	groups := make([]*sheet.Group, len(d.work.Rows))
	rest := &sheet.Group{ID: "marks", Class: "chart"}
	onPage := make([]bool, len(d.work.Rows))
	for i := range groups {
		groups[i] = &sheet.Group{ID: fmt.Sprintf("row-%d", i), Class: "chart", Title: d.work.Rows[i].title()}
	}
	put := func(row int, it sheet.Item) {
		if row < 0 {
			rest.Items = append(rest.Items, it)
			return
		}
		groups[row].Items = append(groups[row].Items, it)
	}
	for _, m := range d.f.marks {
		mine := owns(m.at)
		if m.row < 0 && !m.stitch && c.count() > 1 && !(mine && shows(m.lo, m.hi)) {
			for _, q := range m.paths {
				for _, part := range clip(q, col, row, more) {
					put(m.row, moved(part, from, at, sc, false))
				}
			}
			continue
		}
		if !mine && !shows(m.lo, m.hi) {
			continue
		}
		if mine && m.row >= 0 && m.stitch {
			onPage[m.row] = true
		}
		if mine && m.stitch {
			g := &sheet.Group{Class: "stitch"}
			for _, q := range m.paths {
				g.Items = append(g.Items, moved(q, from, at, sc, false))
			}
			put(m.row, g)
			continue
		}
		for _, q := range m.paths {
			put(m.row, moved(q, from, at, sc, !mine))
		}
	}
	for _, l := range d.f.labels {
		if !owns(l.at) {
			continue
		}
		p := pt{X: at.X + sc*(l.at.X-from.X), Y: at.Y - sc*(l.at.Y-from.Y)}
		size := c.o.text()
		p.Y += (fonts.Ascent(fonts.Regular) - fonts.Descent(fonts.Regular)) * size / 2
		put(l.row, sheet.NewText(l.s, fonts.Regular, size, p, l.shownAnchor(), l.class))
	}
	for i, g := range groups {
		if len(g.Items) > 0 {
			if !c.told[i] { // once, on the first page that shows it
				g.Desc, c.told[i] = d.work.Words(i), true
			}
			s.Root.Items = append(s.Root.Items, g)
		}
	}
	if c.count() > 1 {
		c.meet(rest, append(groups, rest), col, row, from, at, k, r)
	}
	if len(rest.Items) > 0 {
		s.Root.Items = append(s.Root.Items, rest)
	}
}

// shownAnchor is where the text's point lies.
func (l *label) shownAnchor() sheet.Anchor {
	if l.side {
		return l.anchor
	}
	return sheet.Middle
}

// meet writes where the pages meet: short lines at both ends of the edge, and the
// page beyond.
func (c *pages) meet(g *sheet.Group, drawn []*sheet.Group, col, row window, from, at pt, k, r int) {
	sc, size := c.d.scale, c.o.text()
	drawnLo, drawnHi := at, at
	for _, d := range drawn {
		if a, b, ok := sheet.Bounds(d); ok {
			drawnLo = pt{X: min(drawnLo.X, a.X), Y: min(drawnLo.Y, a.Y)}
			drawnHi = pt{X: max(drawnHi.X, b.X), Y: max(drawnHi.Y, b.Y)}
		}
	}
	x := func(v float64) float64 { return at.X + sc*(v-from.X) }
	y := func(v float64) float64 { return at.Y + sc*(v+from.Y) }
	lo, hi := y(row.lo), y(row.hi)
	if r > 0 {
		lo -= overlap
	}
	if r < len(c.rows)-1 {
		hi += overlap
	}
	tick := func(a, b pt) {
		g.Items = append(g.Items, path("again", quiet, a, b))
	}
	text := func(s string, p pt, a sheet.Anchor) {
		g.Items = append(g.Items, sheet.NewText(s, fonts.Italic, size, p, a, "again"))
	}
	page := func(k, r int) string { return fmt.Sprintf("meets page %d", r*len(c.cols)+k+1) }
	top, low := min(lo, drawnLo.Y)-1, max(hi, drawnHi.Y)+1
	if k > 0 {
		tick(pt{X: x(col.lo), Y: top - 3}, pt{X: x(col.lo), Y: top})
		tick(pt{X: x(col.lo), Y: low}, pt{X: x(col.lo), Y: low + 3})
		text(page(k-1, r), pt{X: x(col.lo) + 1, Y: low + 3}, sheet.Start)
	}
	if k < len(c.cols)-1 {
		tick(pt{X: x(col.hi), Y: top - 3}, pt{X: x(col.hi), Y: top})
		tick(pt{X: x(col.hi), Y: low}, pt{X: x(col.hi), Y: low + 3})
		text(page(k+1, r), pt{X: x(col.hi) - 1, Y: low + 3}, sheet.End)
	}
	left, right := x(col.lo), x(col.hi)
	if k > 0 {
		left -= overlap
	}
	if k < len(c.cols)-1 {
		right += overlap
	}
	left, right = min(left, drawnLo.X), max(right, drawnHi.X)
	if r > 0 {
		tick(pt{X: left - 4, Y: y(row.lo)}, pt{X: left - 1, Y: y(row.lo)})
		tick(pt{X: right + 1, Y: y(row.lo)}, pt{X: right + 4, Y: y(row.lo)})
		text(page(k, r-1), pt{X: (x(col.lo) + x(col.hi)) / 2, Y: top}, sheet.Middle)
	}
	if r < len(c.rows)-1 {
		tick(pt{X: left - 4, Y: y(row.hi)}, pt{X: left - 1, Y: y(row.hi)})
		tick(pt{X: right + 1, Y: y(row.hi)}, pt{X: right + 4, Y: y(row.hi)})
		text(page(k, r+1), pt{X: (x(col.lo) + x(col.hi)) / 2, Y: low + 3}, sheet.Middle)
	}
}

// clip cuts a path of straight lines to a window.
func clip(q *sheet.Path, col, row window, more float64) []*sheet.Path {
	lo := pt{X: col.lo - more, Y: -row.hi - more}
	hi := pt{X: col.hi + more, Y: -row.lo + more}
	var out []*sheet.Path
	for _, run := range q.Polyline() {
		for i := 1; i < len(run); i++ {
			a, b, ok := clipLine(run[i-1], run[i], lo, hi)
			if ok {
				part := path(q.Class, q.Style.Width, a, b)
				part.Style = q.Style
				out = append(out, part)
			}
		}
	}
	return out
}

// clipLine is the part of a line inside a box (Liang and Barsky).
func clipLine(a, b, lo, hi pt) (pt, pt, bool) {
	t0, t1 := 0.0, 1.0
	d := sub(b, a)
	for _, e := range [4][2]float64{{-d.X, a.X - lo.X}, {d.X, hi.X - a.X}, {-d.Y, a.Y - lo.Y}, {d.Y, hi.Y - a.Y}} {
		if e[0] == 0 {
			if e[1] < 0 {
				return a, b, false
			}
			continue
		}
		t := e[1] / e[0]
		if e[0] < 0 {
			t0 = max(t0, t)
		} else {
			t1 = min(t1, t)
		}
	}
	return add(a, mul(d, t0)), add(a, mul(d, t1)), t0 < t1
}
