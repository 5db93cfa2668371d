package place

import (
	"math"
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// row is one line of the heading or the foot.
type row struct {
	s    string
	face fonts.Face
	size float64
	ink  sheet.Ink
	gap  float64 // above it
	cl   string
}

func (r row) high() float64 { return lineHeight(r.face, r.size) + r.gap }

// frame is the paper, and what stands at its head and foot at one scale.
type frame struct {
	p        *plan
	w, h     float64
	scale    float64
	head     []row
	key      [][]keyEntry
	caution  []row
	bar      *bar
	headHigh float64
	footHigh float64 // without the caution
	cautHigh float64
}

// heading is what a frame says at every scale, broken for the paper one way up.
type heading struct {
	head, caution []row
	key           [][]keyEntry
}

func (p *plan) frame(landscape bool, scale float64) *frame {
	short, long := p.o.sides()
	f := &frame{p: p, w: short, h: long, scale: scale}
	way := 0
	if landscape {
		way, f.w, f.h = 1, long, short
	}
	size := p.o.text()
	avail := f.w - 2*margin
	if p.headings[way] == nil {
		p.headings[way] = f.heading()
	}
	h := p.headings[way]
	f.caution, f.key = h.caution, h.key
	f.head = slices.Concat(h.head, f.rows(p.statement(scale), fonts.Italic, size, 0.4, "note"))
	f.headHigh = rowsHigh(f.head) + 4
	if p.o.Without.Has(schematic.Heading) {
		f.head, f.headHigh = nil, 0
	}
	f.cautHigh = rowsHigh(f.caution)
	f.bar = newBar(p.s.first, scale, size, avail)
	line := lineHeight(fonts.Regular, size)
	f.footHigh = 5 + float64(len(f.key))*(line+1.2) + 1.5 + f.bar.high
	if p.o.Without.Has(schematic.ScaleBar) && len(f.key) == 0 {
		f.footHigh = 0
	}
	return f
}

// bare is the frame of a page on which nothing is drawn: it needs no scale, no key and no word on how it is drawn.
func (f *frame) bare() *frame {
	b := *f
	b.key, b.bar = nil, nil
	b.footHigh = 5 + lineHeight(fonts.Regular, f.p.o.text())
	if f.head != nil {
		way := 0
		if f.w > f.h {
			way = 1
		}
		b.head = f.p.headings[way].head
		b.headHigh = rowsHigh(b.head) + 4
	}
	return &b
}

func (f *frame) heading() *heading {
	size, pat := f.p.o.text(), f.p.g.Pattern
	sub := f.p.sizeText()
	if pat.Designer != "" {
		sub += " · " + pat.Designer
	}
	h := &heading{head: slices.Concat(
		f.rows(pat.Title, fonts.Bold, size*1.75, 0, "heading"),
		f.rows(sub, fonts.Regular, size, 0.8, "heading"),
		f.rows(pat.Note, fonts.Regular, size, 0.4, "note"))}
	if f.p.o.Caution != "" {
		h.caution = f.rows(f.p.o.Caution, fonts.Bold, size, 1.5, "caution")
	}
	if !f.p.o.Without.Has(schematic.Key) {
		h.key = f.keyRows(f.w-2*margin, size)
	}
	return h
}

// rows are a text broken to the paper's width, with gap above the first.
func (f *frame) rows(text string, face fonts.Face, size, gap float64, class string) []row {
	var rows []row
	for i, s := range sheet.Wrap(fonts.Shown(face, text), (f.w-2*margin)/sheet.Elsewhere, size, face) {
		if i > 0 {
			gap = 0
		}
		rows = append(rows, row{s, face, size, sheet.Black, gap, class})
	}
	return rows
}

func rowsHigh(rows []row) float64 {
	h := 0.0
	for _, r := range rows {
		h += r.high()
	}
	return h
}

// sizeText says which sizes the values are of, and which one gives the shape.
func (p *plan) sizeText() string {
	name := p.g.Size
	switch {
	case p.o.Labels == Blank || p.o.Labels == OneSize || p.s.sizes.Len() == 1:
		if strings.Contains(strings.ToLower(name), "size") {
			return name // One size
		}
		return "Size " + name
	}
	return "Sizes " + p.s.sizes.Full(p.s.sizes.Names) + " · drawn in size " + name
}

var unitName = map[units.Unit]string{units.CM: "cm", units.Inch: "inches"}

// statement is what every schematic says of itself.
func (p *plan) statement(scale float64) string {
	parts := []string{"Scale 1:" + scaleText(scale)}
	if p.worn {
		parts = append(parts, "as worn", p.views[0].made.Lies)
	} else {
		parts = append(parts, "right side facing", "flat, as worked, before seaming")
		if p.bands {
			parts = append(parts, "without the bands worked on later")
		}
	}
	var names []string
	for _, u := range p.s.units() {
		names = append(names, unitName[u])
	}
	parts = append(parts, "measurements in "+strings.Join(names, " and "))
	return strings.Join(parts, " · ") + "."
}

// keyRows shares the key's entries among lines.
func (f *frame) keyRows(avail, size float64) [][]keyEntry {
	var key [][]keyEntry
	x := 0.0
	for _, e := range f.p.key() {
		w := f.keyWidth(e, size)
		if len(key) == 0 || x+w > avail {
			key = append(key, nil)
			x = 0
		}
		key[len(key)-1] = append(key[len(key)-1], e)
		x += w
	}
	return key
}

func (f *frame) keyWidth(e keyEntry, size float64) float64 {
	return keySign + 1.5 + room(fonts.Regular, size, f.keyText(e)) + 6
}

// keyText is the entry's words, cut to the line.
func (f *frame) keyText(e keyEntry) string {
	size := f.p.o.text()
	words := sheet.Wrap(fonts.Shown(fonts.Regular, e.what), (f.w-2*margin-keySign-8)/sheet.Elsewhere, size, fonts.Regular)
	if len(words) == 0 {
		return ""
	}
	return words[0]
}

// bar is the scale bar: two bars of a round length, in centimetres and inches, the pattern's own first.
type bar struct {
	bars    [2]barOf
	wide    float64 // of both, page number beside them
	high    float64 // of both, page number beside them
	size    float64
	stacked bool // one above the other
}

// barOf is a bar of n of a unit.
type barOf struct {
	n    int
	unit units.Unit
	long float64
}

func newBar(first units.Unit, scale, size, avail float64) *bar {
	b := &bar{size: size}
	need := 2*barText + barApart + fonts.Width(fonts.Regular, size, "  page 000 of 000")
	for i, unit := range first.AndOther() {
		mm := unit.MM().Float() / scale
		n := 1
		for _, k := range []int{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000} {
			if float64(k)*mm <= 45 || k == 1 {
				n = k
			}
		}
		b.bars[i] = barOf{n, unit, float64(n) * mm}
		need += b.bars[i].long + fonts.Width(fonts.Regular, size, barName(n, unit))
	}
	b.high, b.wide = lineHeight(fonts.Regular, size), min(need, avail)
	if b.stacked = need > avail; b.stacked {
		b.high = 2*b.high + 1
	}
	return b
}

const (
	barText  = 2.0 // from a bar to its length
	barApart = 9.0 // from one bar to the next
)

func barName(n int, u units.Unit) string {
	return units.Usual.With(units.Of(units.Int(int64(n)), u), u)
}

func (b *bar) draw(g *sheet.Group, x, y float64) {
	line0 := lineHeight(fonts.Regular, b.size)
	m := y + line0/2
	for _, u := range b.bars {
		g.Items = append(g.Items, line("scalebar", narrow, pt{X: x, Y: m}, pt{X: x + u.long, Y: m}))
		parts := 2
		if u.n%5 == 0 {
			parts = 5
		}
		for k := 0; k <= parts; k++ {
			h := 0.7
			if k == 0 || k == parts {
				h = 1.3
			}
			at := x + u.long*float64(k)/float64(parts)
			g.Items = append(g.Items, line("scalebar", narrow, pt{X: at, Y: m - h}, pt{X: at, Y: m + h}))
		}
		t := centred(barName(u.n, u.unit), pt{Y: m}, 0, b.size, "scalebar")
		t.Anchor = sheet.Start
		t.At.X = x + u.long + barText
		g.Items = append(g.Items, t)
		if b.stacked {
			m += line0 + 1
			continue
		}
		x = t.At.X + t.Width + barApart
	}
}

// emit writes head and foot on a sheet.
func (f *frame) emit(g *sheet.Group, n, of int) {
	head := &sheet.Group{ID: "heading", Class: "heading"}
	y := margin
	for _, r := range f.head {
		y += r.gap + fonts.Ascent(r.face)*r.size
		head.Items = append(head.Items, newText(r.s, r.face, r.size, pt{X: margin, Y: y}, sheet.Start, r.cl))
		y += fonts.Descent(r.face) * r.size
	}
	if len(head.Items) > 0 {
		g.Items = append(g.Items, head)
	}

	size := f.p.o.text()
	line := lineHeight(fonts.Regular, size)
	y = f.h - margin - line
	if of > 1 {
		g.Items = append(g.Items, newText(pageText(n, of), fonts.Regular, size,
			pt{X: f.w - margin, Y: y + fonts.Ascent(fonts.Regular)*size}, sheet.End, "page"))
	}
	if f.bar != nil && !f.p.o.Without.Has(schematic.ScaleBar) {
		barGroup := &sheet.Group{ID: "scalebar", Class: "scalebar", Title: "Scale 1:" + scaleText(f.scale)}
		f.bar.draw(barGroup, margin, f.h-margin-f.bar.high)
		g.Items = append(g.Items, barGroup)
	}
	y = f.h - margin - f.footHigh + 5
	if len(f.key) > 0 {
		key := &sheet.Group{ID: "key", Class: "key", Title: "Key"}
		for _, entries := range f.key {
			y += 1.2
			x := margin
			for _, e := range entries {
				key.Items = append(key.Items, e.sign(pt{X: x, Y: y + line/2})...)
				t := centred(f.keyText(e), pt{Y: y + line/2}, 0, size, "key")
				t.Anchor, t.At.X = sheet.Start, x+keySign+1.5
				key.Items = append(key.Items, t)
				x += f.keyWidth(e, size)
			}
			y += line
		}
		g.Items = append(g.Items, key)
	}
	if n == 1 && len(f.caution) > 0 {
		y = f.h - margin - f.footHigh - f.cautHigh + 2
		for _, r := range f.caution {
			y += r.gap + fonts.Ascent(r.face)*r.size
			g.Items = append(g.Items, newText(r.s, r.face, r.size, pt{X: margin, Y: y}, sheet.Start, r.cl))
			y += fonts.Descent(r.face) * r.size
		}
	}
}

// area is the room for pieces and their table on the n-th page, mm.
func (f *frame) area(n int) (w, h float64) {
	h = f.h - 2*margin - f.headHigh - f.footHigh
	if n == 0 {
		h -= f.cautHigh
	}
	return f.w - 2*margin, math.Max(h, 0)
}
