package place

import (
	"errors"
	"math"
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// Schematic draws the pieces of one garment, gs its sizes in order and o.Size the one
// that gives the shape, as finished sheets. A measurement keeps its ID through the
// sizes; a size that lacks it prints a dash. The drawing takes the fewest pages and
// then the largest usual scale; where even the smallest scale and further pages do
// not do, the error is a *TooLarge that names the paper it needs.
func Schematic(gs []*schematic.Garment, o Options) ([]*sheet.Sheet, error) {
	d, err := NewDraft(gs, o)
	if err != nil {
		return nil, err
	}
	return d.Sheets(d.Scales())
}

// errStopped is the error of a drawing for which no one waits any more.
var errStopped = errors.New("the drawing was stopped")

// Scales are those of a drawing, 8 for 1:8: of the garment as it is worn and of its pieces; 0 for what
// it doesn't show.
type Scales struct{ Worn, Pieces float64 }

// Or is the smaller scale of two, for each.
func (s Scales) Or(o Scales) Scales { return Scales{max(s.Worn, o.Worn), max(s.Pieces, o.Pieces)} }

func (s *Scales) of(p *plan) *float64 {
	if p.worn {
		return &s.Worn
	}
	return &s.Pieces
}

// Draft is a drawing before its sheets are made, so that several drawings may be
// brought to one scale without laying out again those that have it.
type Draft struct {
	parts []*choice
	gs    []*schematic.Garment
	o     Options
}

// NewDraft lays a drawing out at the scales that it takes by itself, or at those of o. Its
// error is that of Schematic.
func NewDraft(gs []*schematic.Garment, o Options) (*Draft, error) {
	in := o
	in.Text, in.Face = o.text()*likelyGrowth(o.Face), fonts.Regular
	p, err := newPlan(gs, in)
	if err != nil {
		return nil, err
	}
	d := &Draft{gs: gs, o: o}
	for _, part := range p.parts() {
		c, err := part.choose()
		if err != nil {
			return nil, err
		}
		d.parts = append(d.parts, c)
	}
	return d, nil
}

// Scales are the drawing's own.
func (d *Draft) Scales() Scales {
	var s Scales
	for _, c := range d.parts {
		*s.of(c.p) = c.f.scale
	}
	return s
}

// Common are the scales at which all of several drawings find room: the smallest of their own. Large words are so much in each other's way that a
// garment may find room at a larger scale alone; then all take one that is smaller still.
func Common(drafts []*Draft) Scales {
	var s Scales
	for _, d := range drafts {
		s = s.Or(d.Scales())
	}
	for k := 0; k < len(drafts); k++ {
		d := drafts[k]
		next := slices.IndexFunc(WornScales, func(w float64) bool { return w > s.Worn })
		if d.o.text() > defaultText && next >= 0 && !d.fitsAt(s.Worn) {
			s.Worn, k = WornScales[next], -1
		}
	}
	return s
}

// fitsAt reports whether the garment as worn finds room at a scale.
func (d *Draft) fitsAt(scale float64) bool {
	return !slices.ContainsFunc(d.parts, func(c *choice) bool {
		if !c.p.worn || c.f.scale == scale {
			return false
		}
		_, err := (&chooser{p: c.p}).at(scale)
		return err != nil && !errors.Is(err, errStopped)
	})
}

// Sheets are the drawing at given scales, what has others laid out anew. The error
// is a *TooLarge.
func (d *Draft) Sheets(scales Scales) ([]*sheet.Sheet, error) {
	return faced(d.o, func(o Options) ([]*sheet.Sheet, error) {
		parts := slices.Clone(d.parts)
		if o.text() != parts[0].p.o.text() {
			p, err := newPlan(d.gs, o)
			if err != nil {
				return nil, err
			}
			for i, part := range p.parts() {
				parts[i] = &choice{p: part, f: &frame{}}
			}
		}
		for i, c := range parts {
			scale := *scales.of(c.p)
			if scale == c.f.scale {
				continue
			}
			var err error
			if parts[i], err = (&chooser{p: c.p}).at(scale); err != nil {
				return nil, err
			}
		}
		return emit(parts), nil
	})
}

// choice is a drawing with its scale and pages.
type choice struct {
	p     *plan
	f     *frame
	t     *table
	pages []page
	more  [][]*item // rows of the table on pages of their own
	drawn []*drawn
}

func (c *choice) count() int { return len(c.pages) + len(c.more) }

// chooser tries scales, and lays each view out once a scale.
type chooser struct {
	p      *plan
	tables [2]*table
	tried  [2]bool

	last  []*drawn // as they were last laid out
	share float64  // of the room around them that they take at least at another scale
}

// table is the shape of the table on the paper this way up, measured at need.
func (ch *chooser) table(landscape bool) *table {
	i := 0
	w, long := ch.p.o.sides()
	if landscape {
		i, w = 1, long
	}
	if !ch.tried[i] {
		ch.tried[i] = true
		ch.tables[i] = newTable(ch.p, w-2*margin)
	}
	return ch.tables[i]
}

// leastPiece is how large the largest piece is on paper at least (the side of a square
// of its area, in mm for the default text), if the scale is not given: a smaller one
// would save paper and tell nothing. Values of all sizes need more room around it.
const (
	leastPiece    = 45.0
	leastAllSizes = 58.0
)

func (p *plan) leastPiece() float64 {
	least := leastPiece
	if p.o.Labels == AllSizes && p.g.Worn == nil { // else what a reader looks for is on the page before
		least = leastAllSizes
	}
	return least * math.Sqrt(p.o.text()/defaultText)
}

// scales are those that a drawing chooses from, the largest first.
func (p *plan) scales() []float64 {
	all := UsualScales
	if p.worn {
		all = WornScales
	}
	return all[slices.IndexFunc(all, func(s float64) bool { return s >= *p.o.From.of(p) }):]
}

// floor is the last of the scales at which the largest piece is not too small.
func (p *plan) floor(scales []float64) int {
	largest, floor := 0.0, 0
	for _, v := range p.views {
		largest = max(largest, math.Sqrt((v.hi.X-v.lo.X)*(v.hi.Y-v.lo.Y)))
	}
	for i, s := range scales {
		if largest/s >= p.leastPiece() {
			floor = i
		}
	}
	return floor
}

func (p *plan) choose() (*choice, error) {
	ch := &chooser{p: p}
	if p.o.Scale != 0 {
		return ch.at(p.o.Scale)
	}
	scales := p.scales()
	floor := p.floor(scales)
	if p.worn {
		if c, err := ch.onOne(scales[:floor+1]); c != nil || errors.Is(err, errStopped) {
			return c, err
		}
	}
	var least *choice
	var err error
	for ; floor < len(scales); floor++ {
		if least, err = ch.at(scales[floor]); err == nil || errors.Is(err, errStopped) {
			break
		}
	}
	if least == nil {
		return nil, err
	}
	ch.last, ch.share = least.drawn, 0.5
	for i, s := range scales[:floor] {
		if !ch.might(s, least) {
			continue
		}
		ch.share = 0.9 // of what was laid out at a scale nearby
		if c, err := ch.at(s); err == nil && c.count() <= least.count() {
			return ch.finer(c, scales, i), nil
		}
	}
	return ch.finer(least, scales, floor), nil
}

// onOne is the drawing at the largest scale at which it is one page; nil if there is none, or if it was stopped.
func (ch *chooser) onOne(scales []float64) (*choice, error) {
	for i, s := range scales {
		if ch.last != nil && len(ch.p.views) == 1 && !ch.mightAlone(ch.last[0], s) {
			continue
		}
		_, long := ch.p.o.sides()
		if v := ch.p.views[0]; ch.last == nil && max(v.hi.X-v.lo.X, v.hi.Y-v.lo.Y)/s > long-2*margin {
			continue
		}
		ch.share = 0.9 // of what was laid out at a scale nearby
		c, err := ch.at(s)
		switch {
		case errors.Is(err, errStopped):
			return nil, err
		case err == nil && c.count() == 1:
			return ch.finer(c, scales, i), nil
		}
	}
	return nil, nil
}

// finer is a picture between the scale that it has, the i-th of those that it chooses from, and the next larger,
// so that it fills its width: a twentieth of the way at a time. On paper the usual scale stays.
func (ch *chooser) finer(c *choice, scales []float64, i int) *choice {
	if ch.p.o.Width == 0 {
		return c
	}
	large, small := scales[i]*0.8, scales[i]
	if i > 0 {
		large = scales[i-1]
	}
	for k := 1; k < 20; k++ {
		s := math.Round((large+(small-large)*float64(k)/20)*100) / 100
		if finer, err := ch.at(s); err == nil && finer.count() <= c.count() {
			return finer
		}
	}
	return c
}

// at is what a view takes on paper at another scale, with a share of the room around it that it takes at its own.
func (d *drawn) at(scale, share float64) (w, h float64) {
	w, above, below := d.size()
	k := d.scale / scale
	return d.w*k + (w-d.w)*share, d.h*k + (above+below-d.h)*share
}

// mightAlone reports whether a view that has a page to itself could lie on it at a scale, with its table.
func (ch *chooser) mightAlone(d *drawn, scale float64) bool {
	w, h := d.at(scale, ch.share)
	for _, landscape := range []bool{false, true} {
		if !ch.p.o.turned(landscape) {
			continue
		}
		wide, high := ch.p.frame(landscape, scale).area(0)
		if t := ch.table(landscape); t != nil && len(d.letters) == len(d.v.items) { // whether fewer are letters is not known
			high -= t.high(d.letters)
		}
		if w <= wide && h <= high {
			return true
		}
	}
	return false
}

// might reports whether the outlines at a scale could lie on as many pages as the
// least drawing does, with a share of the room around them that they took when they were last laid out.
func (ch *chooser) might(scale float64, least *choice) bool {
	if len(ch.last) == 1 && least.count() == 1 {
		return ch.mightAlone(ch.last[0], scale)
	}
	short, long := ch.p.o.sides()
	short, long = short-2*margin, long-2*margin
	area := 0.0
	for _, d := range ch.last {
		w, h := d.at(scale, ch.share)
		if max(w, h) > long || min(w, h) > short {
			return false
		}
		area += w * h
	}
	head := 3 * lineHeight(fonts.Regular, ch.p.o.text()) // the least heading and scale bar
	return area <= (short*long-short*head)*float64(least.count())
}

// at lays the drawing out at a scale, the paper the way up that takes fewer pages.
func (ch *chooser) at(scale float64) (*choice, error) {
	list := make([]*drawn, len(ch.p.views))
	lettered := false
	for i, v := range ch.p.views {
		select {
		case <-ch.p.o.Stop:
			return nil, errStopped
		default:
		}
		list[i] = v.draw(&ch.p.o, scale)
		lettered = lettered || len(list[i].letters) > 0
	}
	ch.last = list
	tables := []bool{false}
	if lettered {
		tables = []bool{false, true}
	}
	var best *choice
	var least *TooLarge
	for _, landscape := range []bool{false, true} {
		if !ch.p.o.turned(landscape) {
			continue
		}
		var t *table
		if lettered {
			t = ch.table(landscape)
		}
		for _, apart := range tables {
			c, err := ch.pages(landscape, scale, list, t, apart)
			var large *TooLarge
			switch {
			case err == nil:
				best = best.or(c)
			case errors.As(err, &large):
				least = least.or(large)
			default:
				return nil, err
			}
		}
	}
	if best == nil {
		return nil, least
	}
	return best, nil
}

// or is the choice of fewer pages, the first of equals.
func (c *choice) or(other *choice) *choice {
	if c == nil || other.count() < c.count() {
		return other
	}
	return c
}

func (ch *chooser) pages(landscape bool, scale float64, list []*drawn, t *table, apart bool) (*choice, error) {
	f := ch.p.frame(landscape, scale)
	c := &choice{p: ch.p, f: f, t: t, drawn: list}
	if w, h := f.area(0); h <= 0 || w <= 0 {
		return nil, &TooLarge{What: "The heading", Paper: ch.p.o.Paper, W: f.w, H: f.h - h + 40}
	}
	var rest []*item
	var err error
	if c.pages, rest, err = pack(f, t, list, apart); err != nil {
		return nil, err
	}
	if len(rest) > 0 {
		large := &TooLarge{What: "The table of letters", Paper: ch.p.o.Paper, W: 1.5 * f.w, H: 1.5 * f.h}
		if t == nil {
			return nil, large
		}
		_, h := f.bare().area(1)
		var ok bool
		if c.more, ok = t.sheets(rest, h); !ok {
			return nil, large
		}
	}
	if c.count() == 0 {
		c.pages = []page{{}}
	}
	return c, nil
}

// emit writes the chosen pages of a drawing as sheets.
func emit(parts []*choice) []*sheet.Sheet {
	of := 0
	for _, c := range parts {
		of += c.count()
	}
	var sheets []*sheet.Sheet
	for _, c := range parts {
		sheets = append(sheets, c.emit(len(sheets), of)...)
	}
	return sheets
}

// emit writes the chosen pages as sheets: so many stand before them, and there are so many in all.
func (c *choice) emit(before, of int) []*sheet.Sheet {
	var sheets []*sheet.Sheet
	next := func(f *frame) (*sheet.Sheet, map[string]bool) {
		s := c.sheet(f, before+len(sheets)+1, of)
		sheets = append(sheets, s)
		return s, map[string]bool{"heading": true, "scalebar": true, "key": true, "letters": true, "schematic": true}
	}
	for i := range c.pages {
		pg := &c.pages[i]
		high, f := 0.0, c.f
		if pg.table {
			high = c.tableHigh(pg.rows)
		}
		if c.p.o.cut() {
			f = f.trimmed(pg, i, high, c.tableWide(high))
		} else {
			f = f.filled(pg, i, high)
		}
		s, ids := next(f)
		puts := pg.arrange(f, i, high)
		s.Desc = c.p.words(f.scale, puts)
		for _, u := range puts {
			s.Root.Items = append(s.Root.Items, u.d.emit(u.o, ids))
		}
		if high > 0 {
			_, h := f.area(i)
			c.tableOn(s, pg.rows, margin+f.headHigh+h-high+tableGap)
		}
	}
	for _, rows := range c.more {
		f := c.f.bare()
		if c.p.o.cut() {
			high := c.tableHigh(rows)
			f = f.trimmed(&page{}, len(sheets), high, c.tableWide(high))
		}
		s, _ := next(f)
		s.Desc = "Measurements by letter."
		c.tableOn(s, rows, margin+f.headHigh)
	}
	if !c.p.o.cut() { // the paper is whole, wherever the foot stands
		for _, s := range sheets {
			s.W, s.H = c.f.w, c.f.h
		}
	}
	c.finish(sheets)
	for _, s := range sheets {
		s.Snap()
	}
	c.stats(len(sheets))
	return sheets
}

func (c *choice) tableHigh(rows []*item) float64 {
	if c.t == nil {
		return 0
	}
	return c.t.high(rows)
}

// tableWide is the width of the tables that are so high together.
func (c *choice) tableWide(high float64) float64 {
	if high == 0 {
		return 0
	}
	return float64(c.t.columns)*(c.t.width+c.t.columnGap) - c.t.columnGap
}

func (c *choice) tableOn(s *sheet.Sheet, rows []*item, y float64) {
	g := &sheet.Group{ID: "letters", Class: "table", Title: "Measurements by letter"}
	c.t.draw(g, rows, margin, y)
	s.Root.Items = append(s.Root.Items, g)
}

// sheet is the n-th page of so many, with its head and foot.
func (c *choice) sheet(f *frame, n, of int) *sheet.Sheet {
	pat := c.p.g.Pattern
	s := &sheet.Sheet{W: f.w, H: f.h, Author: pat.Designer, Lang: c.p.o.lang(), Prefix: c.p.o.Prefix}
	s.Title = pat.Title + ", " + c.p.sizeText()
	s.Bookmark = c.p.sizeText()
	if of > 1 {
		s.Title += ", " + pageText(n, of)
		s.Bookmark += ", " + pageText(n, of)
	}
	s.Root = sheet.Group{ID: "schematic", Class: "schematic"}
	f.emit(&s.Root, n, of)
	return s
}

// words is a sheet in words.
func (p *plan) words(scale float64, puts []put) string {
	var b strings.Builder
	b.WriteString(p.statement(scale))
	for _, u := range puts {
		b.WriteString(" " + u.d.v.title + ".")
		if u.d.v.desc != "" {
			b.WriteString(" " + u.d.v.desc)
		}
	}
	return b.String()
}

func (c *choice) stats(sheets int) {
	s := c.p.o.Stats
	if s == nil {
		return
	}
	s.Pages += sheets
	s.Tables += len(c.more)
	for _, d := range c.drawn {
		s.Dropped += d.dropped
		s.Under += len(d.v.wholes)
		if c.p.o.Labels == Letters {
			s.Chosen += len(d.v.wholes)
		}
		for i := range d.dims {
			switch d.dims[i].how {
			case onLine:
				s.OnLine++
			case beside:
				s.Beside++
			case nextTrack:
				s.NextTrack++
			case within:
				s.Inside++
			case slanting:
				s.Slanted++
			case byLetter:
				s.Outermost++
			}
			if d.dims[i].letter {
				if c.p.o.Labels == Letters {
					s.Chosen++
				} else {
					s.Letter++
				}
			}
		}
	}
}
