package document

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// square is the test square with what it is for.
func (b *builder) square() {
	size := b.p.size
	words := wrap([]run{{"Test square: 50 mm by 50 mm", fonts.Regular, sheet.Black}}, size, b.wide()-testSquare-8)
	b.add(atom{high: testSquare, gap: size * 1.2, draw: func(g *sheet.Group, y float64) {
		x := inset
		q := &sheet.Group{ID: "test-square", Class: "scalebar", Title: "Test square, 50 mm"}
		q.Items = append(q.Items, &sheet.Path{Class: "scalebar", Style: thinStyle, Segs: []sheet.Seg{
			{Verb: sheet.Move, P: [3]sheet.Point{at(x, y)}}, {Verb: sheet.Line, P: [3]sheet.Point{at(x+testSquare, y)}},
			{Verb: sheet.Line, P: [3]sheet.Point{at(x+testSquare, y+testSquare)}}, {Verb: sheet.Line, P: [3]sheet.Point{at(x, y+testSquare)}},
			{Verb: sheet.Close}}})
		for i, l := range words {
			setLine(q, l, x+testSquare+5, y+fonts.Ascent(fonts.Regular)*size+float64(i)*lineHigh(size), size, "note")
		}
		g.Items = append(g.Items, q)
	}})
}

// traced is a group of paths, with the lines that they are made of, from which words keep away.
type traced struct {
	*sheet.Group
	on    func(sheet.Point) sheet.Point // from the part to the paper
	lines [][2]sheet.Point
}

func (d *traced) draw(style sheet.Style, class string, pts ...sheet.Point) {
	path := &sheet.Path{Class: class, Style: style}
	for i, q := range pts {
		q, v := d.on(q), sheet.Move
		if i > 0 {
			v = sheet.Line
			d.lines = append(d.lines, [2]sheet.Point{path.Segs[i-1].P[0], q})
		}
		path.Segs = append(path.Segs, sheet.Seg{Verb: v, P: [3]sheet.Point{q}})
	}
	d.Items = append(d.Items, path)
}

// lifeMap is a small picture of a part on its sheets.
type lifeMap struct {
	*lifePart
	t           tile
	w, h, scale float64 // of all sheets together, mm of the part, and of the picture
	small       float64 // of the names of sheets
	least       float64
}

// mapOf sets the map of a part.
func (b *builder) mapOf(p *lifePart, t tile) {
	size := b.p.size
	m := lifeMap{lifePart: p, t: t, w: float64(p.cols)*(t.w-Overlap) + Overlap, h: float64(p.rows)*(t.h-Overlap) + Overlap, small: size, least: size}
	m.scale = min(b.wide()/m.w, 90/m.h, max(0.1, lineHigh(size)*1.5/(t.h-Overlap)))
	if !b.o.Large {
		m.small, m.least = min(size, 0.55*(t.h-Overlap)*m.scale, 0.45*(t.w-Overlap)*m.scale), 1
	}
	title := fmt.Sprintf("%s: %d of %d sheets", p.name, len(p.page), p.cols*p.rows)
	if p.about != "" {
		title += ", " + p.about
	}
	b.para([]run{{title, fonts.Bold, sheet.Black}}, inset, b.wide(), 0, size*0.8, true)
	b.add(atom{high: m.h*m.scale + 2, draw: func(g *sheet.Group, y float64) {
		g.Items = append(g.Items, m.drawn(title, y))
	}})
}

// corner is the place where the middles of the laps of a sheet and its neighbours above and left cross.
func (m *lifeMap) corner(col, row int) sheet.Point {
	o := m.t.origin(m.lifePart, 0, 0)
	return sheet.Point{X: o.X + float64(col)*(m.t.w-Overlap) + Overlap/2, Y: o.Y + float64(row)*(m.t.h-Overlap) + Overlap/2}
}

// drawn is the map with its top at y.
func (m *lifeMap) drawn(title string, y float64) *sheet.Group {
	o := m.t.origin(m.lifePart, 0, 0)
	d := &traced{Group: &sheet.Group{Class: "key", Title: title}, on: func(q sheet.Point) sheet.Point {
		return at(inset+(q.X-o.X)*m.scale, y+(q.Y-o.Y)*m.scale)
	}}
	grid := sheet.Style{Width: 0.1, Stroke: sheet.Black}
	for c := range m.cols + 1 {
		x := m.corner(c, 0).X
		d.draw(grid, "table", sheet.Point{X: x, Y: o.Y}, sheet.Point{X: x, Y: o.Y + m.h})
	}
	for r := range m.rows + 1 {
		y := m.corner(0, r).Y
		d.draw(grid, "table", sheet.Point{X: o.X, Y: y}, sheet.Point{X: o.X + m.w, Y: y})
	}
	for _, s := range m.strokes {
		if s.class == "outline" {
			d.draw(sheet.Style{Width: 0.35, Stroke: sheet.Black}, s.class, s.pts...)
		}
	}
	for r := range m.rows {
		for c := range m.cols {
			name := "–"
			if m.page[[2]int{c, r}] {
				name = tileName(c, r)
			}
			if tx := free(name, m.small, m.least, d.on(m.corner(c, r)), (m.t.w-Overlap)*m.scale, (m.t.h-Overlap)*m.scale, d.lines); tx != nil {
				d.Items = append(d.Items, tx)
			}
		}
	}
	return d.Group
}

// free is a text in a cell where it touches no line: at the middle, else at other
// places of the cell, no smaller than least; nil if there is none.
func free(s string, size, least float64, lo sheet.Point, w, h float64, lines [][2]sheet.Point) *sheet.Text {
	for ; size >= least; size *= 0.85 {
		tw, th := fonts.Width(fonts.Regular, size, s), lineHigh(size)
		if tw > w || th > h {
			continue
		}
		for _, f := range [][2]float64{{.5, .5}, {.5, .2}, {.5, .8}, {.2, .5}, {.8, .5}, {.15, .15}, {.85, .15}, {.15, .85}, {.85, .85}} {
			cx, cy := lo.X+0.4+tw/2+(w-tw-0.8)*f[0], lo.Y+0.4+th/2+(h-th-0.8)*f[1]
			box := sheet.Box{C: sheet.Point{X: cx, Y: cy}, U: sheet.Point{X: 1}, HalfW: tw/2 + 0.3, HalfH: th/2 + 0.3}
			if !touched(box, lines) {
				return middle(s, fonts.Regular, size, cx, cy)
			}
		}
	}
	return nil
}

func touched(box sheet.Box, lines [][2]sheet.Point) bool {
	return slices.ContainsFunc(lines, func(l [2]sheet.Point) bool { return box.Touches(l[0], l[1]) })
}

// middle is a text whose box has its middle at x, y.
func middle(s string, f fonts.Face, size, x, y float64) *sheet.Text {
	base := y + (fonts.Ascent(f)-fonts.Descent(f))*size/2
	return &sheet.Text{S: s, At: at(x, base), Anchor: sheet.Middle, Face: f, Size: size, Width: fonts.Width(f, size, s), Ink: sheet.Black, Class: "label"}
}

// tiles are the sheets of a part.
func (b *builder) tiles(p *lifePart, t tile) {
	first := true
	for r := range p.rows {
		for c := range p.cols {
			if !p.page[[2]int{c, r}] {
				continue
			}
			s := b.p.doc
			s.W, s.H = b.p.w, b.p.h
			s.Root = sheet.Group{ID: "page", Class: "document"}
			if first {
				s.Places = []sheet.Bookmark{{Name: p.name + ", life size", Level: 0}}
				first = false
			}
			b.tile(&s, p, t, c, r)
			b.add(atom{page: &s})
		}
	}
}

func (b *builder) tile(s *sheet.Sheet, p *lifePart, t tile, c, r int) {
	o := t.origin(p, c, r)
	d := &traced{Group: &sheet.Group{ID: "life-size", Class: "piece", Title: p.name + ", sheet " + tileName(c, r)},
		on: func(q sheet.Point) sheet.Point { return at(edge+q.X, t.top+q.Y) }}
	// half a line's width stays inside the room, so that the printer cuts nothing off
	in := outlineStyle.Width
	for _, st := range p.strokes {
		for _, run := range clip(st.pts, sheet.Point{X: o.X + in, Y: o.Y + in}, t.w-2*in, t.h-2*in) {
			for i := range run {
				run[i].X += in
				run[i].Y += in
			}
			d.draw(st.style, st.class, run...)
		}
	}
	const arm = 4
	for _, x := range [2]float64{Overlap / 2, t.w - Overlap/2} {
		for _, y := range [2]float64{Overlap / 2, t.h - Overlap/2} {
			d.draw(thinStyle, "mark", sheet.Point{X: x - arm, Y: y}, sheet.Point{X: x + arm, Y: y})
			d.draw(thinStyle, "mark", sheet.Point{X: x, Y: y - arm}, sheet.Point{X: x, Y: y + arm})
		}
	}
	t.letter(d, p.labels, o, b.p.size)
	s.Root.Items = append(s.Root.Items, d.Group)
	size := b.p.headSize()
	line := wrap(p.heading(c, r), size, s.W-2*edge)[0]
	setLine(&s.Root, line, edge, edge+lineHigh(size)+1+fonts.Ascent(fonts.Regular)*size, size, "heading")
}

// letter puts those of the labels on a sheet that find room on it, its corner being at o.
func (t tile) letter(d *traced, labels []lifeLabel, o sheet.Point, size float64) {
	var boxes []sheet.Box
	for _, l := range labels {
		x, y := edge+l.at.X-o.X, t.top+l.at.Y-o.Y
		w, h := fonts.Width(l.face, size, l.s)/2+0.8, lineHigh(size)/2+0.5
		box := sheet.Box{C: sheet.Point{X: x, Y: y}, U: sheet.Point{X: 1}, HalfW: w, HalfH: h}
		out := x-w < edge || x+w > edge+t.w || y-h < t.top || y+h > t.top+t.h
		if !out && !touched(box, d.lines) && !slices.ContainsFunc(boxes, box.Overlaps) {
			boxes = append(boxes, box)
			d.Items = append(d.Items, middle(l.s, l.face, size, x, y))
		}
	}
}

// heading is what a sheet of the part is called, with its neighbours.
func (p *lifePart) heading(c, r int) []run {
	text := []run{{p.name + ", sheet " + tileName(c, r), fonts.Bold, sheet.Black}}
	var near []string
	for _, n := range []struct {
		word string
		c, r int
	}{{"left", c - 1, r}, {"right", c + 1, r}, {"above", c, r - 1}, {"below", c, r + 1}} {
		if p.page[[2]int{n.c, n.r}] {
			near = append(near, n.word+" "+tileName(n.c, n.r))
		}
	}
	if len(near) > 0 {
		text = append(text, run{" · " + strings.Join(near, ", "), fonts.Regular, sheet.Black})
	}
	if p.about != "" {
		text = append(text, run{" · " + p.about, fonts.Regular, sheet.Black})
	}
	return text
}
