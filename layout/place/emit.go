package place

import (
	"fmt"
	"math"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// emit writes a placed view as a group of primitives, its outline's top left corner
// at o. ids holds the ids of the sheet so far.
func (d *drawn) emit(o pt, ids map[string]bool) *sheet.Group {
	g := &sheet.Group{ID: unique(ids, d.v.id), Class: "piece", Title: d.v.title, Desc: d.v.desc}
	put := func(items ...sheet.Item) { g.Items = append(g.Items, items...) }
	if fill := d.v.fill; fill.Set && len(d.v.view.Under) > 0 {
		put(d.under(o, sheet.RGB(fill.R, fill.G, fill.B)))
	}
	if p := d.hatching(o); p != nil {
		put(p)
	}
	for _, l := range d.v.view.Lines {
		p := line(lineClass(l.Kind), lineWidth(l.Kind), add(o, d.on(l.A)), add(o, d.on(l.B)))
		p.Style.Dash = lineDash(l.Kind)
		put(p)
	}
	if p := d.outline(o); p != nil {
		put(p)
	}
	if len(d.arrow) > 0 {
		put(line("work", narrow, moved(d.arrow, o)...))
	}
	for _, n := range d.notches {
		put(line("notch", wide, add(o, n.a), add(o, n.b)))
	}
	for i, m := range d.v.view.Marks {
		for _, l := range markSign(m.What, add(o, d.marks[i])) {
			put(line("mark", narrow, l...))
		}
	}
	size := d.o.text()
	for _, t := range d.tags {
		if len(t.lead) > 0 {
			put(line(t.class, hair, moved(t.lead, o)...))
		}
		put(centred(t.s, add(o, t.at), t.angle, size, t.class))
	}
	for i := range d.dims {
		put(d.dims[i].emit(o, size, ids))
	}
	put(d.captions(o)...)
	put(d.wholeRows(o, ids)...)
	return g
}

func moved(ps []pt, o pt) []pt {
	out := make([]pt, len(ps))
	for i, p := range ps {
		out[i] = add(o, p)
	}
	return out
}

// centred is a text whose box has its middle at c.
func centred(s string, c pt, angle, size float64, class string) *sheet.Text {
	t := newText(s, fonts.Regular, size, c, sheet.Middle, class)
	t.Angle = angle
	down := (fonts.Ascent(fonts.Regular) - fonts.Descent(fonts.Regular)) * size / 2
	sin, cos := math.Sincos(angle * math.Pi / 180)
	t.At = add(c, pt{X: down * sin, Y: down * cos})
	return t
}

// under is the ground of what lies beneath the outline in part.
func (d *drawn) under(o pt, fill sheet.Ink) *sheet.Path {
	p := &sheet.Path{Class: "ground", Style: sheet.Style{Fill: fill}}
	for _, loop := range d.v.view.Under {
		ps := make([]pt, len(loop))
		for i, q := range loop {
			ps[i] = add(o, d.on(q))
		}
		p.Segs = append(p.Segs, segs(ps, true)...)
	}
	return p
}

func (d *drawn) outline(o pt) *sheet.Path {
	p := &sheet.Path{Class: "outline", Style: sheet.Style{Width: wide, Stroke: sheet.Black}}
	for i, loop := range d.shape {
		if i == 0 && d.v.view.Disc {
			c, r := circleOf(d.v.view.Outline[0])
			p.Segs = append(p.Segs, ring(add(o, d.on(c)), r/d.scale)...)
			continue
		}
		p.Segs = append(p.Segs, segs(moved(loop, o), true)...)
	}
	if len(p.Segs) == 0 {
		return nil
	}
	return p
}

// leastHatch is how near ribs are drawn on paper, mm.
const leastHatch = 0.8

func (d *drawn) hatching(o pt) *sheet.Path {
	p := &sheet.Path{Class: "hatch", Style: sheet.Style{Width: hair, Stroke: sheet.Grey}}
	for i, r := range d.v.view.Ribs {
		gap := max(leastHatch, r.Gap/d.scale)
		for _, l := range hatch(d.field.hatch[i], pt{X: r.Dir.X, Y: -r.Dir.Y}, gap) {
			p.Segs = append(p.Segs, segs([]pt{add(o, l.a), add(o, l.b)}, false)...)
		}
	}
	if len(p.Segs) == 0 {
		return nil
	}
	return p
}

func (m *dim) emit(o pt, size float64, ids map[string]bool) *sheet.Group {
	g := &sheet.Group{ID: unique(ids, m.it.m.ID), Class: "measure", Title: m.it.title}
	if m.letter {
		g.Title = m.it.name + ": " + g.Title
	}
	put := func(items ...sheet.Item) { g.Items = append(g.Items, items...) }
	for _, t := range m.tail {
		put(line("extension", narrow, add(o, t.a), add(o, t.b)))
	}
	if m.ends {
		put(line("dimension", narrow, add(o, m.line.a), add(o, m.line.b)))
		put(ends(seg{add(o, m.line.a), add(o, m.line.b)})...)
	}
	if len(m.lead) > 0 {
		class := "dimension"
		if !m.ends {
			class = "leader"
		}
		put(line(class, narrow, moved(m.lead, o)...))
	}
	put(m.texts(o, size)...)
	return g
}

// texts are the label's lines, around its centre.
func (m *dim) texts(o pt, size float64) []sheet.Item {
	lines := m.form.lines
	if m.letter {
		lines = []string{m.it.name}
	}
	sin, cos := math.Sincos(m.angle * math.Pi / 180)
	turn := func(x, y float64) pt { return pt{X: x*cos + y*sin, Y: -x*sin + y*cos} }
	c := add(o, m.at)
	var items []sheet.Item
	for i, s := range lines {
		y := (float64(i) + 0.5 - float64(len(lines))/2) * m.form.line
		if m.form.rule == 0 {
			items = append(items, centred(s, add(c, turn(0, y)), m.angle, size, "label"))
			continue
		}
		w := fonts.Width(fonts.Regular, size, s)
		room := m.form.line - lineHeight(fonts.Regular, size)
		y += room / 2
		end := m.form.w / 2
		items = append(items, centred(s, add(c, turn(end-w/2, y)), m.angle, size, "label"))
		low := y + (fonts.Ascent(fonts.Regular)-fonts.Descent(fonts.Regular))*size/2
		items = append(items, line("blank", hair, add(c, turn(-end, low)), add(c, turn(end-w-ruleGap, low))))
	}
	return items
}

func (d *drawn) captions(o pt) []sheet.Item {
	size := d.o.text()
	step := lineHeight(fonts.Regular, size) * 1.08
	at := add(o, d.capAt)
	at.Y += fonts.Ascent(fonts.Bold) * size
	var items []sheet.Item
	for _, s := range d.caption {
		items = append(items, newText(s, fonts.Bold, size, at, sheet.Middle, "caption"))
		at.Y += step
	}
	for _, s := range d.about {
		items = append(items, newText(s, fonts.Regular, size, at, sheet.Middle, "caption"))
		at.Y += step
	}
	return items
}

// signs are the signs that a drawing uses, for its key.
type signs struct {
	kinds map[schematic.LineKind]bool
	arrow bool
	notch bool
	hatch bool
	marks []string
}

func (p *plan) signs() signs {
	s := signs{kinds: map[schematic.LineKind]bool{}}
	seen := map[string]bool{}
	for _, v := range p.views {
		for _, l := range v.view.Lines {
			s.kinds[l.Kind] = true
		}
		s.arrow = s.arrow || v.view.Arrow != schematic.Point{}
		s.notch = s.notch || len(v.view.Notches) > 0
		s.hatch = s.hatch || len(v.view.Ribs) > 0
		for _, m := range v.view.Marks {
			if !seen[m.What] {
				seen[m.What] = true
				s.marks = append(s.marks, m.What)
			}
		}
	}
	return s
}

// keyEntry is one sign with what it means.
type keyEntry struct {
	what string
	sign func(o pt) []sheet.Item // within keySign x text height, o its left middle
}

const keySign = 9.0

func (p *plan) key() []keyEntry {
	s := p.signs()
	var list []keyEntry
	at := func(o pt, x, y float64) pt { return pt{X: o.X + x, Y: o.Y + y} }
	if s.arrow {
		list = append(list, keyEntry{"direction of work", func(o pt) []sheet.Item {
			return []sheet.Item{line("work", narrow, at(o, 0, 0), at(o, 8, 0), at(o, 6.4, -0.7), at(o, 8, 0), at(o, 6.4, 0.7))}
		}})
	}
	if s.notch {
		list = append(list, keyEntry{"edges with the same number are joined", func(o pt) []sheet.Item {
			return []sheet.Item{line("outline", wide, at(o, 1, 1), at(o, 7.5, 1)), line("notch", wide, at(o, 4.2, 1), at(o, 4.2, -1))}
		}})
	}
	if s.hatch {
		list = append(list, keyEntry{"rib, along its ribs", func(o pt) []sheet.Item {
			var items []sheet.Item
			for i := range 8 {
				x := 0.6 + float64(i)*0.9
				l := line("hatch", hair, at(o, x, -1.2), at(o, x, 1.2))
				l.Style.Stroke = sheet.Grey
				items = append(items, l)
			}
			return items
		}})
	}
	for _, k := range []struct {
		kind schematic.LineKind
		what string
	}{{schematic.LineFold, "fold"}, {schematic.LineCentre, "centre"}, {schematic.LinePanel, "between panels"},
		{schematic.LineMark, "marked row"}, {schematic.LineSlit, "slit"}} {
		if s.kinds[k.kind] {
			list = append(list, keyEntry{k.what, func(o pt) []sheet.Item {
				l := line(lineClass(k.kind), lineWidth(k.kind), at(o, 0, 0), at(o, 8, 0))
				l.Style.Dash = lineDash(k.kind)
				return []sheet.Item{l}
			}})
		}
	}
	for _, what := range s.marks {
		list = append(list, keyEntry{what, func(o pt) []sheet.Item {
			var items []sheet.Item
			for _, l := range markSign(what, at(o, 5, 0)) {
				items = append(items, line("mark", narrow, l...))
			}
			return items
		}})
	}
	return list
}

func pageText(n, of int) string { return fmt.Sprintf("page %d of %d", n, of) }
