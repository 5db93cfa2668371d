package place

import (
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// whole is the width of a whole row that is drawn in panels: no drawing has its two ends, so
// that it stands as text under the first of the panels.
type whole struct {
	it   *item
	text string
}

// all gives every measurement of the view.
func (v *viewPlan) all(yield func(*item) bool) {
	for _, it := range v.items {
		if !yield(it) {
			return
		}
	}
	for _, h := range v.wholes {
		if !yield(h.it) {
			return
		}
	}
}

// whole are the widths of whole rows that stand under view index of a piece, or what has no line in the picture of what is worn.
func (p *plan) whole(v *viewPlan, index int) []*schematic.Measure {
	first := slices.IndexFunc(v.made.Views, func(v schematic.View) bool { return v.Panel })
	if v.worn {
		first = 0
	}
	var all []*schematic.Measure
	for k := range v.made.Measures {
		m := &v.made.Measures[k]
		if index == first && m.View == schematic.NoView && !m.Same && p.design().Wants(v.made.Name, m.Name) {
			all = append(all, m)
		}
	}
	return all
}

// wholesOf are those measurements as they are written.
func (p *plan) wholesOf(v *viewPlan, index int, byID []map[string]*schematic.Measure) []*whole {
	panels := 0
	for _, v := range v.made.Views {
		if v.Panel {
			panels++
		}
	}
	var all []*whole
	for _, m := range p.whole(v, index) {
		it := p.newItem(v.made.Name, m, byID)
		text := wholeText(m, panels)
		if v.worn {
			text = it.m.Name + it.suffix
		}
		all = append(all, &whole{it, text})
	}
	return all
}

// wholeText says what the width is of, when so many drawings show the row.
func wholeText(m *schematic.Measure, panels int) string {
	at := strings.TrimPrefix(strings.TrimPrefix(m.Name, "width at "), "width ")
	at = strings.Replace(at, " of yoke", " of the yoke", 1)
	row := "whole row"
	switch {
	case panels > 1:
		row = "all panels together"
	case m.Around:
		row = "all round"
	}
	text := row + " at the " + at
	if m.Stretched {
		text += ", stretched"
	}
	return text
}

// wholeLine is one line of such a text: words, then a letter or rules to write on.
type wholeLine struct {
	it          *item
	first       bool // of its item
	lettered    bool // its item bears a letter
	words       string
	letter      bool
	rules       []string // the units behind them
	width, high float64
}

const wholeGap = 1.2 // between words and a letter or rule, mm

// lines breaks the text to a width; lettered, it bears a letter.
func (h *whole) lines(o *Options, limit float64, lettered bool) []wholeLine {
	size := o.text()
	step := lineHeight(fonts.Regular, size) * 1.08
	text := fonts.Shown(fonts.Regular, h.text+":")
	broken := []string{text}
	if o.Labels != Letters && o.Labels != Blank {
		value := strings.TrimSuffix(strings.TrimPrefix(h.it.title, h.it.m.Name+": "), h.it.suffix)
		if broken[0] = text + " " + value; fonts.Width(fonts.Regular, size, broken[0]) > limit {
			broken = []string{text, value} // the value stays in one, if it can
		}
	}
	var all []wholeLine
	for _, b := range broken {
		for _, s := range sheet.Wrap(b, limit, size, fonts.Regular) {
			all = append(all, wholeLine{it: h.it, first: len(all) == 0, lettered: lettered, words: s, width: room(fonts.Regular, size, s), high: step})
		}
	}
	switch last := &all[len(all)-1]; {
	case lettered:
		last.letter = true
		last.width += wholeGap + h.it.letter.w
	case o.Labels == Blank:
		l := wholeLine{it: h.it, high: max(step, ruleRoom) + wholeGap}
		for _, f := range h.it.forms[:1] {
			for i, s := range f.lines {
				if i == len(f.lines)-1 {
					s = strings.TrimSuffix(s, h.it.suffix)
				}
				l.rules = append(l.rules, s)
				l.width += f.rule + ruleGap + fonts.Width(fonts.Regular, size, s)
			}
			l.width += wholeGap * 2 * float64(len(f.lines)-1)
		}
		all = append(all, l)
	}
	return all
}

// ruleLift is the room under rules to write on.
func ruleLift(l wholeLine) float64 {
	if len(l.rules) == 0 {
		return 0
	}
	return wholeGap
}

// wholeRows writes the widths of whole rows under the caption.
func (d *drawn) wholeRows(o pt, ids map[string]bool) []sheet.Item {
	size := d.o.text()
	at := add(o, d.capAt)
	at.Y += lineHeight(fonts.Regular, size) * 1.08 * float64(len(d.caption)+len(d.about))
	var items []sheet.Item
	var g *sheet.Group
	for _, l := range d.wholes {
		if l.first {
			g = &sheet.Group{ID: unique(ids, l.it.m.ID), Class: "measure", Title: l.it.title}
			if l.lettered {
				g.Title = l.it.name + ": " + g.Title
			}
			items = append(items, g)
		}
		base := at.Y - ruleLift(l) + l.high - lineHeight(fonts.Regular, size)*1.08 + fonts.Ascent(fonts.Bold)*size
		x := at.X - l.width/2
		put := func(s, class string) {
			t := newText(s, fonts.Regular, size, pt{X: x, Y: base}, sheet.Start, class)
			g.Items = append(g.Items, t)
			x += sheet.Elsewhere * t.Width
		}
		if l.words != "" {
			put(l.words, "caption")
		}
		if l.letter {
			x += wholeGap
			put(l.it.name, "label")
		}
		for _, u := range l.rules {
			rule := l.it.forms[0].rule
			g.Items = append(g.Items, line("blank", hair, pt{X: x, Y: base}, pt{X: x + rule, Y: base}))
			x += rule + ruleGap
			put(u, "label")
			x += 2 * wholeGap
		}
		at.Y += l.high
	}
	return items
}
