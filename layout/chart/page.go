package chart

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/place"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

// Draw draws the chart of a work on as many sheets as it needs: one, if any of the
// usual symbol sizes lets it. Its error is of options or of a work that can't be
// drawn, a TooMany, or a place.TooLarge if not even the heading finds room.
func Draw(w *Work, o Options) ([]*sheet.Sheet, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	if err := w.Check(); err != nil {
		return nil, err
	}
	if !o.Face.House() {
		return place.Faced(o.Face, o.text(), func(size float64) ([]*sheet.Sheet, error) {
			in := o
			in.Text, in.Face = size, fonts.Regular
			return draw(w, in)
		})
	}
	return draw(w, o)
}

// draw draws a chart in the face of the house.
func draw(w *Work, o Options) ([]*sheet.Sheet, error) {
	var short *shortText
	whole := w
	if !o.Whole {
		w, short = w.short()
	}
	if n := w.size(); n > mostStitches {
		return nil, &TooMany{"stitches", n, mostStitches}
	}
	scales := o.scales()
	var c *pages
	var large error
	for i, s := range scales {
		if i+1 < len(scales) && !c.mayHold(s) {
			continue
		}
		d := build(w, &o, s)
		d.notes = append(d.notes, shortNotes(w, short)...)
		next, err := onPages(d, &o)
		if err != nil { // smaller symbols may find room
			large = err
			continue
		}
		if c = next; c.count() == 1 || i+1 == len(scales) {
			break
		}
	}
	if c == nil {
		return nil, large
	}
	if c.count() > mostPages {
		return nil, &TooMany{"pages", c.count(), mostPages}
	}
	return c.cutOut(whole), nil
}

// cutOut writes every page, one alone cut to what is drawn if that is asked for.
func (c *pages) cutOut(whole *Work) []*sheet.Sheet {
	if !c.o.Trim || c.count() > 1 {
		return c.emit(whole)
	}
	c.trim()
	out := c.emit(whole)
	out[0].Crop(0)
	out[0].Snap()
	return out
}

// TooMany is the error of a chart that no one could read.
type TooMany struct {
	What    string // stitches or pages
	N, Most int
}

// Error is the error's text.
func (e *TooMany) Error() string {
	return fmt.Sprintf("a chart of it has %d %s; at most %d are drawn. Chart one section alone, or symbols at a smaller scale", e.N, e.What, e.Most)
}

// size is how many symbols there are to draw.
func (w *Work) size() int {
	n := 0
	for r := range w.Rows {
		for i := range w.Rows[r].St {
			n += 1 + w.Rows[r].St[i].Chain
		}
	}
	return n
}

// trim cuts the paper to the chart, its heading and its key.
func (c *pages) trim() {
	room := c.h - 2*margin - c.headHigh - c.footHigh
	c.h -= max(0, room-c.d.scale*(c.rows[0].hi-c.rows[0].lo)-2)
	wide := c.d.scale * (c.cols[0].hi - c.cols[0].lo)
	for _, r := range c.head {
		wide = max(wide, sheet.Elsewhere*fonts.Width(r.face, r.size, r.s))
	}
	for _, entries := range c.key {
		x := -keyGap
		for _, e := range entries {
			w, _ := c.entryBox(e)
			x += w + c.entryGap(e)
		}
		wide = max(wide, x)
	}
	c.w = min(c.w, wide+2*margin)
}

// wedgeNote says how often a repeat is worked that is drawn for all.
func (s *shortText) wedgeNote() string {
	word, between := "round", ""
	if s.Rows {
		word = "row"
	}
	if s.Edges > 0 {
		between = " between the " + plural(s.Edges, "edge stitch")
	}
	return fmt.Sprintf("One repeat is drawn: work it %d times in each %s%s", s.Times, word, between)
}

func shortNotes(w *Work, s *shortText) []string {
	if s == nil {
		return nil
	}
	if s.Wedge {
		return []string{s.wedgeNote()}
	}
	if s.Of == 0 {
		least, most := -1, 0
		for i := range w.Rows {
			if r := &w.Rows[i]; !r.Base && r.Left > 0 {
				most = max(most, r.Left)
				if least < 0 || r.Left < least {
					least = r.Left
				}
			}
		}
		if least == most {
			return []string{fmt.Sprintf("%s of each row are left out at the break, whatever they are", plural(most, "stitch"))}
		}
		return []string{fmt.Sprintf("%d to %d stitches of each row are left out at the break, whatever they are", least, most)}
	}
	if s.Of == 1 {
		return []string{fmt.Sprintf("Each row is shortened at the break by %s", plural(s.Times, "stitch"))}
	}
	return []string{fmt.Sprintf("Each row is shortened at the break by %s of %d stitches", plural(s.Times, "repeat"), s.Of)}
}

// build draws a work at a scale.
func build(w *Work, o *Options, scale float64) *drawing {
	d := &drawing{work: w, scale: scale, craft: w.craft(), f: &figure{}}
	if f := w.filet(); f != nil {
		d.mesh(f, o)
		d.f.nums = d.f.number(o, scale, d.f.everything(), alone)
		return d
	}
	if w.gridded() {
		d.work = w.squared()
		d.grid(o)
		d.notes = slices.Concat(d.notes, w.gapNotes(), w.amissNotes(), w.toldNotes())
		d.f.nums = d.f.number(o, scale, d.f.everything(), alone)
		return d
	}
	p := newPlan(w, o.LeftHanded)
	p.slot = (fonts.Width(fonts.Regular, o.text(), widestNumber(w)) + 2) / scale
	p.lay()
	p.ring(d.f)
	if p.below != nil {
		p.below.draw(d.f, o, scale)
	}
	p.stitches(d.f)
	p.seals(d.f)
	p.frame(d.f, o, scale)
	p.breaks(d.f, o, scale)
	p.nameRows(d.f, o, scale)
	p.cuts(d.f)
	if o.LeftHanded && p.form != flat {
		d.f.mirror()
	}
	d.f.nums = d.f.number(o, scale, d.f.everything(), alone)
	d.form = p.form
	d.key = p.keyOf()
	d.notes = slices.Concat(p.notes(), w.behindNotes(), w.amissNotes(), p.roundGaps(), w.gapNotes(), w.yarnNotes(), w.toldNotes())
	return d
}

// toldNotes tell which rows are repeated, and how the sides were found.
func (w *Work) toldNotes() []string {
	var out []string
	if from, to := w.Again[0], w.Again[1]; to > from {
		out = append(out, fmt.Sprintf("%s to %d are repeated", finding.Capital(w.rowWord()+fmt.Sprintf(" %d", from)), to))
	}
	if w.Assumed > 0 {
		what := "stitches"
		if w.craft() == stitch.Crochet {
			what = "chains"
		}
		out = append(out, fmt.Sprintf("Drawn on %d %s: the text does not say how many", w.Assumed, what))
	}
	if w.Faced {
		out = append(out, "The text does not say which side is which: shaped rows are drawn as right-side rows")
	}
	return out
}

// rowWord is what the work's rows are called.
func (w *Work) rowWord() string {
	if w.hasRounds() {
		return "rounds"
	}
	return "rows"
}

// roundGaps tell what a chart in the round leaves out: there is no room for it between its rounds.
func (p *plan) roundGaps() []string {
	if p.form == flat {
		return nil
	}
	var out []string
	for r := range p.work.Rows {
		if words := p.work.Rows[r].leftOut(); words != "" {
			out = append(out, finding.Capital(words))
		}
	}
	if words := p.work.ending(); words != "" {
		out = append(out, finding.Capital(words))
	}
	return out
}

func widestNumber(w *Work) string {
	s := "0"
	for i := range w.Rows {
		if n := w.Rows[i].name(); len(n) > len(s) && len(n) < 4 {
			s = strings.Repeat("0", len(n))
		}
	}
	return s
}

// grownFrom says out of what the work grows.
func (w *Work) grownFrom() []string {
	if w.From == "" {
		return nil
	}
	return []string{"Worked on " + w.From + "; they are drawn in grey"}
}

// notes say how the chart is read.
func (p *plan) notes() []string {
	out := p.work.grownFrom()
	if k := p.work.hooked; k > 0 {
		out = append(out, fmt.Sprintf("Chain %d; the first round is worked into chain %d from the hook", p.work.chains, k))
	}
	if p.work.stoodOn {
		out = append(out, "The first round is worked into the chains of the ring, not under them")
	}
	if p.form != flat {
		ways := [2]string{"anticlockwise", "clockwise"}
		if p.left {
			ways[0], ways[1] = ways[1], ways[0]
		}
		note := "Rounds are read " + ways[0] + " from the centre"
		if slices.ContainsFunc(p.lines, (*line).clockwise) {
			note += ", wrong-side rounds " + ways[1]
		}
		out = append(out, note)
	}
	if p.left {
		out = append(out, leftHanded)
	}
	if p.form == flat && p.work.hasRounds() {
		out = append(out, p.work.flatNote())
	}
	if p.form != flat {
		out = append(out, p.work.spiralNote()...)
	}
	turned := false
	lines := p.lines
	if p.below != nil {
		lines = append(append([]*line(nil), p.below.p.lines...), p.lines...)
	}
	for _, l := range lines {
		for i := range l.row.St {
			s := &l.row.St[i]
			turned = turned || l.row.Wrong && (s.Loop == BackLoop || s.Loop == FrontLoop || s.Kind != nil && s.Kind.Post != stitch.NoPost)
		}
	}
	if turned {
		out = append(out, "Post and loop symbols of wrong-side rows are drawn as they look from the right side: there, work the other one")
	}
	return out
}

// mirror turns the figure over, numbers the right way round.
func (f *figure) mirror() {
	for i := range f.marks {
		m := &f.marks[i]
		for _, q := range m.paths {
			for k := range q.Segs {
				for j := range q.Segs[k].P {
					q.Segs[k].P[j].X *= -1
				}
			}
		}
		m.lo.X, m.hi.X, m.at.X = -m.hi.X, -m.lo.X, -m.at.X
	}
	for i := range f.labels {
		l := &f.labels[i]
		l.at.X *= -1
		if l.side {
			l.anchor = sheet.End - l.anchor
		}
	}
	f.lo.X, f.hi.X = -f.hi.X, -f.lo.X
	for i := range f.names {
		f.names[i].rightward = !f.names[i].rightward
	}
	for _, c := range f.across {
		for i := range c {
			c[i] *= -1
		}
	}
}

// textRow is one line of the heading.
type textRow struct {
	s     string
	face  fonts.Face
	size  float64
	gap   float64
	class string
}

// pages is a drawing on paper, one way up.
type pages struct {
	d          *drawing
	o          *Options
	w, h       float64 // paper
	head       []textRow
	key        [][]entry
	keyHigh    []float64
	keyWide    float64 // of the paper that its lines may take
	headHigh   float64
	footHigh   float64
	cols, rows []window // of the plane
	told       []bool   // rows whose words stand on a page already
	no         [][]int  // numbers of the pages, by row and column; 0: nothing is there
	n          int      // pages of the chart
	leaves     []leaf   // pages of the key by itself
	ink        *ink
	said       []string // the words of each row
}

// leaf is the lines of the key that a page of their own holds.
type leaf struct{ from, to int }

// window is a stretch of the plane that a page owns, and what it shows beyond it.
type window struct{ lo, hi float64 }

// count is how many pages have something on them.
func (c *pages) count() int { return c.n + len(c.leaves) }

// onPages is a drawing on pages, with a smaller key where the whole one has no room: stitches opened out take the
// most.
func onPages(d *drawing, o *Options) (*pages, error) {
	if o.Without.Has(schematic.Key) {
		d.key = nil
	}
	c, err := paginate(d, o)
	if err == nil {
		return c, nil
	}
	d.key = slices.DeleteFunc(d.key, func(e entry) bool { return strings.HasPrefix(e.id, "opened ") })
	return paginate(d, o)
}

// paginate takes the way up that needs fewer pages, then portrait.
func paginate(d *drawing, o *Options) (*pages, error) {
	var best *pages
	var large error
	for _, landscape := range []bool{false, true} {
		if landscape && o.Orientation == place.Portrait || !landscape && o.Orientation == place.Landscape {
			continue
		}
		c, err := newPages(d, o, landscape)
		if err != nil {
			large = err
			continue
		}
		if best == nil || c.count() < best.count() {
			best = c
		}
	}
	if best == nil {
		return nil, large
	}
	return best, nil
}

// newPages has the key at the foot of every page, or where it would take more room there than
// the chart, on pages of its own.
func newPages(d *drawing, o *Options, landscape bool) (*pages, error) {
	c, err := layPages(d, o, landscape, false)
	if err == nil && (c.count() == 1 || c.keyTall() < (c.h-2*margin-c.headHigh)/2) {
		return c, nil
	}
	if apart, e := layPages(d, o, landscape, true); e == nil {
		return apart, nil
	}
	return c, err
}

func layPages(d *drawing, o *Options, landscape, apart bool) (*pages, error) {
	short, tallSide := o.Paper.Size()
	c := &pages{d: d, o: o, w: short, h: tallSide, ink: &ink{}}
	if landscape {
		c.w, c.h = tallSide, short
	}
	avail := c.w - 2*margin
	size := o.text() * 1.15
	put := func(text string, face fonts.Face, size, gap float64, class string) {
		for i, s := range sheet.Wrap(fonts.Shown(face, text), avail/sheet.Elsewhere, size, face) {
			if i > 0 {
				gap = 0
			}
			c.head = append(c.head, textRow{s, face, size, gap, class})
		}
	}
	title := c.title()
	if o.Without.Has(schematic.Heading) {
		put = func(string, fonts.Face, float64, float64, string) {}
	}
	put(title, fonts.Bold, size*1.75, 0, "heading")
	sub := "Stitch chart"
	if d.work.Title != "" && d.work.Title != title {
		sub += ": " + d.work.Title
	}
	if o.Designer != "" {
		sub += " · " + o.Designer
	}
	put(sub, fonts.Regular, size, 0.8, "heading")
	put(d.work.Note, fonts.Regular, size, 0.4, "note")
	put(d.statement(), fonts.Italic, size, 0.4, "note")
	for _, r := range c.head {
		c.headHigh += r.gap + sheet.LineHeight(r.face, r.size)
	}
	if len(c.head) > 0 {
		c.headHigh += 6
	}
	c.keyRows(avail)
	c.footHigh = 5 + sheet.LineHeight(fonts.Regular, o.text()) + 2
	if !apart {
		c.footHigh += c.keyTall()
	} else if !c.leave() {
		return nil, &place.TooLarge{What: "The heading", Paper: o.Paper, W: c.w, H: c.h + 25}
	}
	w, h := avail, c.h-2*margin-c.headHigh-c.footHigh
	if h < 25 {
		return nil, &place.TooLarge{What: "The heading with the key", Paper: o.Paper, W: c.w, H: c.h + 25 - h}
	}
	if !c.cut(w, h) {
		return nil, &place.TooLarge{What: "The heading with the key", Paper: o.Paper, W: c.w, H: c.h + 25}
	}
	return c, nil
}

// mayHold reports whether the drawing might be on one page at another size, by its room alone: no smaller one
// takes less of the plane.
func (c *pages) mayHold(scale float64) bool {
	if c == nil { // nothing was drawn yet
		return true
	}
	f := c.d.f
	w, h := scale*(f.hi.X-f.lo.X), scale*(f.hi.Y-f.lo.Y)
	return max(w, h) <= max(c.w, c.h)-2*margin && min(w, h) <= min(c.w, c.h)-2*margin
}

// title is what the chart is called.
func (c *pages) title() string { return cmp.Or(c.o.Title, c.d.work.Title, "Stitch chart") }

// statement is what every chart says of itself.
func (d *drawing) statement() string {
	parts := []string{"Right side facing"}
	parts = append(parts, d.notes...)
	return strings.Join(parts, " · ") + "."
}

const keyGap = 6.0

// keySlack is how much wider than measured the words of the key may come out where a machine shows them in another face.
const keySlack = 0.15

// entryGap is the room behind an entry of the key.
func (c *pages) entryGap(e entry) float64 {
	_, wide := c.entryText(e)
	return max(keyGap, keySlack*wide+2)
}

// keyScale is the size of the key's symbols: with the words beside them.
func (c *pages) keyScale() float64 { return min(c.d.scale, max(1, 0.6*c.o.text()/defaultText)) }

func (c *pages) entryBox(e entry) (w, h float64) {
	lo, hi := bounds(e.paths)
	k := c.keyScale()
	lines, wide := c.entryText(e)
	return k*(hi.X-lo.X) + 1.5 + wide, max(k*(hi.Y-lo.Y), float64(len(lines))*sheet.LineHeight(fonts.Regular, c.o.text()))
}

// entryText is the entry's words, in lines beside its symbol, and how wide they are.
func (c *pages) entryText(e entry) (lines []string, wide float64) {
	lo, hi := bounds(e.paths)
	room := c.keyWide - c.keyScale()*(hi.X-lo.X) - 1.5
	lines = sheet.Wrap(fonts.Shown(fonts.Regular, e.what), room/sheet.Elsewhere, c.o.text(), fonts.Regular)
	for _, s := range lines {
		wide = max(wide, fonts.Width(fonts.Regular, c.o.text(), s))
	}
	return lines, wide
}

// keyRows shares the key among lines.
func (c *pages) keyRows(avail float64) {
	line := sheet.LineHeight(fonts.Regular, c.o.text())
	c.keyWide = avail
	x := 0.0
	for _, e := range c.d.key {
		w, h := c.entryBox(e)
		if len(c.key) == 0 || x+w > avail {
			c.key = append(c.key, nil)
			c.keyHigh = append(c.keyHigh, line)
			x = 0
		}
		k := len(c.key) - 1
		c.key[k] = append(c.key[k], e)
		c.keyHigh[k] = max(c.keyHigh[k], h)
		x += w + c.entryGap(e)
	}
}

// keyTall is how high all lines of the key are.
func (c *pages) keyTall() float64 {
	t := 0.0
	for _, h := range c.keyHigh {
		t += h + 2
	}
	return t
}

// leave shares the key among pages of its own. It reports false if a line of it is higher than a page.
func (c *pages) leave() bool {
	room := c.h - 2*margin - c.headHigh - c.footHigh
	used := room
	for i, h := range c.keyHigh {
		if h+2 > room {
			return false
		}
		if used += h + 2; used > room {
			c.leaves = append(c.leaves, leaf{from: i})
			used = h + 2
		}
		c.leaves[len(c.leaves)-1].to = i + 1
	}
	return true
}
