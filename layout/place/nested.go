package place

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// nest is the outlines of one view in all sizes that have it, one inside the
// other, in millimetres of the garment.
type nest struct {
	id, title string
	all       string // what all sizes are called together
	top       bool   // they begin at the top: labels stand above
	disc      bool
	sizes     []int
	loops     [][][]schematic.Point // a size's outlines
	begin     []schematic.Point     // a size's right-hand corner where all sizes begin
	end       []schematic.Point     // and at the other end
	lo, hi    schematic.Point
}

// nestLabel is one label of a nest, of one size or of several whose corner is the same.
type nestLabel struct {
	sizes []int
	text  string
	at    pt // centre
	from  pt // end of its leader at the outline
	to    pt // end at the label
	width float64
}

const (
	nestLead   = 9.0 // from the corners to the labels
	nestGap    = 2.5 // between two labels
	nestApart  = 9.0 // between two nests
	nestTouch  = 0.8 // from an outline to its leader
	nestSample = 14.0
)

// The sizes take kinds of line and weights in turn, four of the one and three of the other, so that
// twelve sizes have twelve lines, and neighbours differ in both.
var (
	nestDashes  = [4][]float64{nil, {2.6, 1.1}, {4.2, 1, 0.7, 1}, {0.01, 1.2}}
	nestWeights = [3]float64{0.25, 0.6, 0.4} // mm
)

// nestStyle is the line of the i-th size.
func nestStyle(i int) sheet.Style {
	s := sheet.Style{Width: nestWeights[i%len(nestWeights)], Stroke: sheet.Black, Dash: nestDashes[i%len(nestDashes)]}
	if len(s.Dash) > 0 && s.Dash[0] < s.Width {
		s.Width += 0.1 // dots: what prints no grey loses finer ones
	}
	return s
}

// Nested draws every piece with all sizes one inside the other, each line labelled
// with its size at a corner and of a kind and weight of its own among twelve, so that a bad step
// from size to size shows. Sizes with one corner share a label. Pieces worked from
// the neck meet at the top, others at the hem. o.Size and o.Labels do not matter.
func Nested(gs []*schematic.Garment, o Options) ([]*sheet.Sheet, error) {
	return faced(o, func(o Options) ([]*sheet.Sheet, error) { return nested(gs, o) })
}

// Compared draws every piece as published and as altered, one over the other, the altered one in a broken line.
func Compared(was, now *schematic.Garment, o Options) ([]*sheet.Sheet, error) {
	a, b := *was, *now
	a.Size, b.Size = "as published", "altered"
	o.altered = was.Size
	return Nested([]*schematic.Garment{&a, &b}, o)
}

func nested(gs []*schematic.Garment, o Options) ([]*sheet.Sheet, error) {
	o.Size, o.Labels = 0, OneSize
	var first *plan
	var nests []*nest
	byID := map[string]*nest{}
	all := "all sizes"
	if o.altered != "" {
		all = "both"
	}
	for i := range gs {
		o.Size = i
		p, err := newPlan(gs, o)
		if err != nil {
			return nil, err
		}
		if first == nil {
			first = p
		}
		for _, v := range p.views {
			if v.worn { // its sleeves turn from size to size: only pieces lie in each other
				continue
			}
			n := byID[v.id]
			if n == nil {
				n = &nest{id: v.id, title: v.title, all: all, top: v.made.From == schematic.FromNeck, disc: v.view.Disc}
				byID[v.id] = n
				nests = append(nests, n)
			}
			n.take(i, v)
		}
	}
	if first == nil {
		return nil, fmt.Errorf("there is no garment to draw")
	}
	return nestPages(first, gs, nests, o)
}

// take adds a size's outlines, moved so that they begin at one height with the others.
func (n *nest) take(size int, v *viewPlan) {
	if len(v.shape) == 0 || len(v.shape[0]) == 0 {
		return
	}
	dx, dy := 0.0, -v.lo.Y
	switch {
	case n.disc:
		dx, dy = -(v.lo.X+v.hi.X)/2, -(v.lo.Y+v.hi.Y)/2
	case n.top:
		dy = -v.hi.Y
	}
	begin := schematic.Point{X: math.Inf(-1), Y: math.Inf(1)}
	end := begin
	var loops [][]schematic.Point
	if len(n.sizes) == 0 {
		n.lo, n.hi = schematic.Point{X: v.lo.X + dx, Y: v.lo.Y + dy}, schematic.Point{X: v.hi.X + dx, Y: v.hi.Y + dy}
	}
	for _, loop := range v.shape {
		moved := make([]schematic.Point, len(loop))
		for i, q := range loop {
			q = schematic.Point{X: q.X + dx, Y: q.Y + dy}
			moved[i] = q
			if n.better(q, begin, n.top) {
				begin = q
			}
			if n.better(q, end, !n.top) {
				end = q
			}
			n.lo = schematic.Point{X: min(n.lo.X, q.X), Y: min(n.lo.Y, q.Y)}
			n.hi = schematic.Point{X: max(n.hi.X, q.X), Y: max(n.hi.Y, q.Y)}
		}
		loops = append(loops, moved)
	}
	n.sizes, n.loops = append(n.sizes, size), append(n.loops, loops)
	n.begin, n.end = append(n.begin, begin), append(n.end, end)
}

// better reports whether a label had better point at q: the right-hand corner at
// the top or at the bottom; of a circle, its right-hand side.
func (n *nest) better(q, than schematic.Point, top bool) bool {
	const even = 1e-6
	if n.disc {
		return q.X > than.X
	}
	rise := q.Y - than.Y
	if top {
		rise = -rise
	}
	if math.IsInf(than.X, 0) {
		return true
	}
	return rise < -even || rise <= even && q.X > than.X
}

// nestBox is a nest laid out at a scale, from its top left corner.
type nestBox struct {
	n      *nest
	labels []nestLabel
	origin pt // of the garment's (0, 0)
	w, h   float64
	scale  float64
	title  pt // start of the title's baseline
	size   float64
}

// corners are where the labels point, and whether they stand above: where the
// sizes begin, unless more of them are apart at the other end.
func (n *nest) corners(scale float64) (at []schematic.Point, above bool) {
	if !n.disc && apartBy(n.end, 0.3*scale) > apartBy(n.begin, 0.3*scale) {
		return n.end, !n.top
	}
	return n.begin, n.top && !n.disc
}

// apartBy is how many of the corners are further to the right than the one before by so many mm.
func apartBy(corners []schematic.Point, mm float64) int {
	xs := make([]float64, len(corners))
	for i, c := range corners {
		xs[i] = c.X
	}
	slices.Sort(xs)
	n := 0
	for i, x := range xs {
		if i == 0 || x-xs[i-1] >= mm {
			n++
		}
	}
	return n
}

func (n *nest) layOut(names []string, scale, size float64) *nestBox {
	b := &nestBox{n: n, scale: scale, size: size}
	line := lineHeight(fonts.Regular, size)
	on := func(q schematic.Point) pt { return pt{X: q.X / scale, Y: -q.Y / scale} }
	corner, above := n.corners(scale)
	at := make([]int, len(n.sizes))
	for i := range at {
		at[i] = i
	}
	slices.SortStableFunc(at, func(a, b int) int { return cmp.Compare(corner[a].X, corner[b].X) })
	row := -n.lo.Y/scale + nestLead // of the labels' near side
	if above {
		row = -n.hi.Y/scale - nestLead
	}
	for _, i := range at {
		from := on(corner[i])
		if k := len(b.labels) - 1; k >= 0 && from.X-b.labels[k].from.X < 0.3 {
			b.labels[k].sizes = append(b.labels[k].sizes, n.sizes[i])
			continue
		}
		b.labels = append(b.labels, nestLabel{sizes: []int{n.sizes[i]}, from: from})
	}
	for k := range b.labels {
		b.labels[k].text = fonts.Shown(fonts.Regular, together(b.labels[k].sizes, names, n.all))
	}
	spreadLabels(b.labels, size)
	lo, hi := on(schematic.Point{X: n.lo.X, Y: n.hi.Y}), on(schematic.Point{X: n.hi.X, Y: n.lo.Y})
	for k := range b.labels {
		l := &b.labels[k]
		way := 1.0
		if above {
			way = -1
		}
		l.from.Y += way * nestTouch
		if n.disc {
			l.from.Y = 0
		}
		l.to = pt{X: l.at.X, Y: row - way*0.6}
		l.at.Y = row + way*line/2
		lo.X, hi.X = min(lo.X, l.at.X-l.width/2), max(hi.X, l.at.X+l.width/2)
	}
	top, bottom := lo.Y, row+line
	if above {
		top, bottom = row-line, hi.Y
	}
	title := fonts.Width(fonts.Bold, size, fonts.Shown(fonts.Bold, n.title))
	b.w = max(hi.X-lo.X, title)
	b.origin = pt{X: (b.w-(hi.X-lo.X))/2 - lo.X, Y: -top}
	b.title = pt{X: (b.w - title) / 2, Y: bottom - top + 2 + fonts.Ascent(fonts.Bold)*size}
	b.h = bottom - top + 2 + lineHeight(fonts.Bold, size)
	return b
}

// together names several sizes: all of them in that word, a run as 'S to L', others in a list.
func together(sizes []int, names []string, all string) string {
	slices.Sort(sizes)
	if len(sizes) == len(names) && len(names) > 1 {
		return all
	}
	var parts []string
	for i := 0; i < len(sizes); {
		j := i
		for j+1 < len(sizes) && sizes[j+1] == sizes[j]+1 {
			j++
		}
		switch {
		case j-i >= 2:
			parts = append(parts, names[sizes[i]]+" to "+names[sizes[j]])
		default:
			for k := i; k <= j; k++ {
				parts = append(parts, names[sizes[k]])
			}
		}
		i = j + 1
	}
	return strings.Join(parts, ", ")
}

// spreadLabels sets labels side by side in the order of their corners, as near to
// them as room allows: neighbours in each other's way make a block that stands
// over the mean of its corners (pooling).
func spreadLabels(labels []nestLabel, size float64) {
	type block struct {
		first, n   int
		mean, wide float64
	}
	var blocks []block
	for i := range labels {
		l := &labels[i]
		l.width = room(fonts.Regular, size, l.text)
		blocks = append(blocks, block{i, 1, l.from.X, l.width})
		for len(blocks) > 1 {
			a, b := blocks[len(blocks)-2], blocks[len(blocks)-1]
			if a.mean+a.wide/2+nestGap <= b.mean-b.wide/2 {
				break
			}
			j := block{a.first, a.n + b.n, (a.mean*float64(a.n) + b.mean*float64(b.n)) / float64(a.n+b.n), a.wide + b.wide + nestGap}
			blocks = append(blocks[:len(blocks)-2], j)
		}
	}
	for _, b := range blocks {
		x := b.mean - b.wide/2
		for i := b.first; i < b.first+b.n; i++ {
			labels[i].at.X = x + labels[i].width/2
			x += labels[i].width + nestGap
		}
	}
}

// nestPut is a box at its place on a page.
type nestPut struct {
	b *nestBox
	o pt
}

// nestPages chooses the paper's way up and the scale, fewest pages first, then the
// largest scale, and writes the sheets.
func nestPages(p *plan, gs []*schematic.Garment, nests []*nest, o Options) ([]*sheet.Sheet, error) {
	scales := UsualScales
	if o.Scale != 0 {
		scales = []float64{o.Scale}
	}
	names, inKey := nestNames(gs, o)
	var best [][]nestPut
	var frame *frame
	var large *TooLarge
	for _, scale := range scales {
		boxes := make([]*nestBox, len(nests))
		for i, n := range nests {
			boxes[i] = n.layOut(names, scale, o.text())
		}
		for _, landscape := range []bool{false, true} {
			if !o.turned(landscape) {
				continue
			}
			f := nestFrame(p, inKey, landscape, scale)
			pages, tooLarge := f.shelves(boxes)
			if tooLarge != nil {
				large = large.or(tooLarge)
				continue
			}
			if best == nil || len(pages) < len(best) {
				best, frame = pages, f
			}
		}
	}
	if best == nil {
		return nil, large
	}
	return emitNests(frame, inKey, best), nil
}

// nestNames are the names of the sizes at their lines, and in the key. Where the names together are
// wider than the paper, numbers take their place and the key tells them.
func nestNames(gs []*schematic.Garment, o Options) (names, inKey []string) {
	names, inKey = make([]string, len(gs)), make([]string, len(gs))
	wide := 0.0
	for i, g := range gs {
		names[i], inKey[i] = g.Size, g.Size
		wide += room(fonts.Regular, o.text(), fonts.Shown(fonts.Regular, g.Size)) + nestGap
	}
	if short, _ := o.sides(); wide > short-2*margin {
		for i := range names {
			names[i] = fmt.Sprint(i + 1)
			inKey[i] = names[i] + " is " + inKey[i]
		}
	}
	return names, inKey
}

// nestFrame is the paper with a heading for a nested drawing. The key at its foot
// is the sizes' lines.
func nestFrame(p *plan, names []string, landscape bool, scale float64) *frame {
	f := p.frame(landscape, scale)
	size, pat := p.o.text(), p.g.Pattern
	f.key = nil
	f.head = slices.Concat(
		f.rows(pat.Title, fonts.Bold, size*1.75, 0, "heading"),
		f.rows(p.nestTold(), fonts.Regular, size, 0.8, "heading"),
		f.rows("Scale 1:"+scaleText(scale)+" · right side facing · flat, as worked, before seaming.", fonts.Italic, size, 0.4, "note"))
	f.headHigh = rowsHigh(f.head) + 4
	f.footHigh = 5 + float64(f.nestKeyRows(names))*(lineHeight(fonts.Regular, size)+1.2) + 1.5 + f.bar.high
	return f
}

func (f *frame) nestKeyWidth(name string) float64 {
	size := f.p.o.text()
	return nestSample + 1.5 + room(fonts.Regular, size, fonts.Shown(fonts.Regular, name)) + 5
}

func (f *frame) nestKeyRows(names []string) int {
	rows, x := 1, 0.0
	for _, n := range names {
		w := f.nestKeyWidth(n)
		if x > 0 && x+w > f.w-2*margin {
			rows, x = rows+1, 0
		}
		x += w
	}
	return rows
}

// shelves sets boxes side by side on shelves, shelves on pages.
func (f *frame) shelves(boxes []*nestBox) ([][]nestPut, *TooLarge) {
	var pages [][]nestPut
	var page []nestPut
	x, y, high := 0.0, 0.0, 0.0
	for _, b := range boxes {
		w, h := f.area(len(pages))
		if b.w > w || b.h > h {
			if _, full := f.area(1); b.w > w || b.h > full {
				return nil, &TooLarge{What: b.n.title, Paper: f.p.o.Paper, W: b.w + 2*margin, H: b.h + f.h - h}
			}
		}
		if x > 0 && x+b.w > w {
			x, y, high = 0, y+high+nestApart, 0
		}
		if y+b.h > h && (len(page) > 0 || b.h > h) { // the caution has the first page to itself, if need be
			pages, page = append(pages, page), nil
			x, y, high = 0, 0, 0
		}
		page = append(page, nestPut{b, pt{X: margin + x, Y: margin + f.headHigh + y}})
		x, high = x+b.w+nestApart, max(high, b.h)
	}
	return append(pages, page), nil
}

// nestTold is what a nested drawing shows.
func (p *plan) nestTold() string {
	if p.o.altered != "" {
		return "Size " + p.o.altered + " as published, and altered in a broken line"
	}
	return "Sizes " + p.s.sizes.Full(p.s.sizes.Names) + ", one inside the other"
}

func emitNests(paper *frame, names []string, pages [][]nestPut) []*sheet.Sheet {
	var out []*sheet.Sheet
	pat := paper.p.g.Pattern
	for i, page := range pages {
		f := paper.centre(page, i)
		s := &sheet.Sheet{W: f.w, H: f.h, Title: pat.Title + ", all sizes one inside the other", Author: pat.Designer, Lang: f.p.o.lang(),
			Prefix: f.p.o.Prefix, Bookmark: "All sizes, one inside the other"}
		if len(pages) > 1 {
			s.Title += ", " + pageText(i+1, len(pages))
			s.Bookmark += ", " + pageText(i+1, len(pages))
		}
		s.Root = sheet.Group{ID: "nested", Class: "schematic"}
		f.emit(&s.Root, i+1, len(pages))
		f.nestKey(&s.Root, names)
		var titles []string
		ids := map[string]bool{"nested": true, "heading": true, "scalebar": true, "key": true}
		for _, u := range page {
			s.Root.Items = append(s.Root.Items, u.b.emit(u.o, ids))
			titles = append(titles, u.b.n.title)
		}
		if s.Desc = paper.p.o.Caution; len(titles) > 0 {
			s.Desc = "All sizes of " + strings.Join(titles, ", ") + ", one inside the other, each line labelled with its size."
		}
		if paper.p.o.cut() {
			s.Crop(paper.p.o.Width)
		}
		s.Snap()
		out = append(out, s)
	}
	return out
}

// nestKey shows the line of each size.
func (f *frame) nestKey(g *sheet.Group, names []string) {
	size := f.p.o.text()
	high := lineHeight(fonts.Regular, size)
	key := &sheet.Group{ID: "key", Class: "key", Title: "Lines of the sizes"}
	x, y := margin, f.h-margin-f.footHigh+5+1.2
	for i, name := range names {
		w := f.nestKeyWidth(name)
		if x > margin && x+w > f.w-margin {
			x, y = margin, y+high+1.2
		}
		sample := line("outline", hair, pt{X: x, Y: y + high/2}, pt{X: x + nestSample, Y: y + high/2})
		sample.Style = nestStyle(i)
		t := centred(fonts.Shown(fonts.Regular, name), pt{Y: y + high/2}, 0, size, "key")
		t.Anchor, t.At.X = sheet.Start, x+nestSample+1.5
		key.Items = append(key.Items, sample, t)
		x += w
	}
	g.Items = append(g.Items, key)
}

func (b *nestBox) emit(o pt, ids map[string]bool) *sheet.Group {
	g := &sheet.Group{ID: unique(ids, b.n.id), Class: "piece", Title: b.n.title}
	at := add(o, b.origin)
	for i, size := range b.n.sizes {
		for _, loop := range b.n.loops[i] {
			ps := make([]pt, len(loop))
			for k, q := range loop {
				ps[k] = add(at, pt{X: q.X / b.scale, Y: -q.Y / b.scale})
			}
			path := &sheet.Path{Segs: segs(ps, true), Class: "outline",
				Style: nestStyle(size)}
			g.Items = append(g.Items, path)
		}
	}
	for _, l := range b.labels {
		g.Items = append(g.Items, line("leader", hair, add(at, l.from), add(at, l.to)), centred(l.text, add(at, l.at), 0, b.size, "size"))
	}
	title := newText(fonts.Shown(fonts.Bold, b.n.title), fonts.Bold, b.size, add(o, b.title), sheet.Start, "caption")
	g.Items = append(g.Items, title)
	return g
}
