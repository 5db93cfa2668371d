package place

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
)

// item is one measurement to be drawn.
type item struct {
	m      *schematic.Measure
	title  string
	value  value
	suffix string
	forms  []form
	letter form
	name   string // its letter
	nth    int    // which letter of the pattern's that is
}

// viewPlan is one view of a piece, with what is to be said of it at any scale.
type viewPlan struct {
	made    *schematic.Made
	view    *schematic.View
	worn    bool // the whole garment, as it is worn
	fill    schematic.Colour
	id      string
	title   string
	info    []string
	caption caption
	items   []*item
	wholes  []*whole // widths of the whole row that its piece draws in panels
	lo, hi  schematic.Point
	shape   [][]schematic.Point // outlines, curves flattened
	desc    string
}

// plan is a drawing before its scale is chosen.
type plan struct {
	o      Options
	g      *schematic.Garment
	s      scheme
	pieces []*schematic.Made
	views  []*viewPlan
	letter form
	bands  bool // some pieces are bands worked onto others
	worn   bool // it is of the garment as it is worn, and of no piece

	headings [2]*heading // portrait, landscape; made at need
}

func newPlan(gs []*schematic.Garment, o Options) (*plan, error) {
	if err := o.check(len(gs)); err != nil {
		return nil, err
	}
	for i, g := range gs {
		if g == nil || g.Pattern == nil {
			return nil, fmt.Errorf("garment %d has no pattern", i)
		}
	}
	g := gs[o.Size]
	p := &plan{o: o, g: g}
	p.s = scheme{o: o, steps: g.Pattern.Steps, first: g.Pattern.Units, sizes: sizesOf(gs), size: o.text()}
	if p.s.steps.CM.Sign() <= 0 || p.s.steps.Inch.Sign() <= 0 {
		return nil, fmt.Errorf("the pattern has no step to which measurements are rounded")
	}
	pieces, lent := piecesOf(gs, o)
	p.pieces = inOrder(g, pieces)
	byID := measuresOf(gs)
	if err := p.planViews(byID, lent); err != nil {
		return nil, err
	}
	p.letters(gs, byID)
	return p, nil
}

// parts are what has pages, and a scale, of its own, in order: the garment as it is worn, and the pieces.
func (p *plan) parts() []*plan {
	var all []*plan
	for i, v := range p.views {
		if i == 0 || v.worn != p.views[i-1].worn {
			q := *p
			q.views, q.headings, q.worn = nil, [2]*heading{}, v.worn
			if v.worn {
				q.o.Scale = cmp.Or(p.o.WornScale, p.o.Scale)
			}
			if i > 0 {
				q.o.Caution = ""
			}
			all = append(all, &q)
		}
		last := all[len(all)-1]
		last.views = append(last.views, v)
	}
	if all == nil {
		return []*plan{p}
	}
	return all
}

// planViews plans every view of every piece.
func (p *plan) planViews(byID []map[string]*schematic.Measure, lent map[*schematic.Made]string) error {
	ids := map[string]bool{}
	for _, made := range p.pieces {
		p.bands = p.bands || made.Piece != nil && len(made.Piece.Onto) > 0
		for i := range made.Views {
			v, err := p.planView(made, i, byID)
			if err != nil {
				return err
			}
			if size := lent[made]; size != "" {
				v.info = append(v.info, "drawn in size "+size)
				v.caption = newCaption(v.title, v.info, p.o.text())
			}
			v.id = unique(ids, v.id)
			p.views = append(p.views, v)
		}
	}
	return nil
}

// measuresOf are the measurements of each garment by their ids.
func measuresOf(gs []*schematic.Garment) []map[string]*schematic.Measure {
	byID := make([]map[string]*schematic.Measure, len(gs))
	for i, g := range gs {
		byID[i] = map[string]*schematic.Measure{}
		for _, made := range append(g.Pieces[:len(g.Pieces):len(g.Pieces)], g.AsWorn()...) {
			for k := range made.Measures {
				byID[i][made.Measures[k].ID] = &made.Measures[k]
			}
		}
	}
	return byID
}

// piecesOf are the pieces of the size that gives the shape and, where the values of all
// sizes are told, those that only other sizes have, each in its place and in the shape of the
// first of these sizes, which lent names.
func piecesOf(gs []*schematic.Garment, o Options) (pieces []*schematic.Made, lent map[*schematic.Made]string) {
	pieces = slices.Clone(gs[o.Size].Pieces)
	if o.Labels != AllSizes && o.Labels != Letters {
		return pieces, nil
	}
	lent = map[*schematic.Made]string{}
	for _, g := range gs {
		at := 0
		for _, made := range g.Pieces {
			if i := slices.IndexFunc(pieces, func(m *schematic.Made) bool { return m.ID == made.ID }); i >= 0 {
				at = i + 1
				continue
			}
			pieces = slices.Insert(pieces, at, made)
			lent[made] = g.Size
			at++
		}
	}
	return pieces, lent
}

func unique(seen map[string]bool, id string) string {
	name := id
	for n := 2; seen[name]; n++ {
		name = fmt.Sprintf("%s-%d", id, n)
	}
	seen[name] = true
	return name
}

// sizesOf is the line of sizes of the garments given: the pattern's own if they
// are all there.
func sizesOf(gs []*schematic.Garment) expr.Sizes {
	own := gs[0].Pattern.Sizes
	sum := 0
	for _, n := range own.Groups {
		sum += n
	}
	if own.Len() == len(gs) && sum == len(gs) {
		return own
	}
	s := expr.Sizes{Groups: []int{1}}
	for _, g := range gs {
		s.Names = append(s.Names, g.Size)
	}
	if len(gs) > 1 {
		s.Groups = append(s.Groups, len(gs)-1)
	}
	return s
}

func (p *plan) planView(made *schematic.Made, index int, byID []map[string]*schematic.Measure) (*viewPlan, error) {
	view := p.chosen(&made.Views[index])
	v := &viewPlan{made: made, view: view, id: made.ID, title: made.Name, worn: slices.Contains(p.g.AsWorn(), made), fill: p.design().Colours.Fill}
	if err := v.bound(); err != nil {
		return nil, err
	}
	if view.Name != "" {
		v.id += "-" + strings.ReplaceAll(strings.ToLower(view.Name), " ", "-")
		v.title += ": " + view.Name
	} else if len(made.Views) > 1 && index > 0 {
		v.id += fmt.Sprintf("-%d", index+1)
	}
	v.info = captionInfo(made, view)
	v.caption = newCaption(v.title, v.info, p.o.text())
	for _, m := range p.measured(v, index, p.pieces, byID) {
		v.items = append(v.items, p.newItem(made.Name, m, byID))
	}
	v.wholes = p.wholesOf(v, index, byID)
	v.tellApart()
	v.desc = v.describe()
	return v, nil
}

// measured are the measurements that stand at view index of one of the pieces.
func (p *plan) measured(v *viewPlan, index int, pieces []*schematic.Made, byID []map[string]*schematic.Measure) []*schematic.Measure {
	var all []*schematic.Measure
	for k := range v.made.Measures {
		m := &v.made.Measures[k]
		if m.View != index || !m.Main && !(m.Same && differs(m, byID)) || v.mirrored(m, all, byID) || onTwin(pieces, v.made, m, byID) || !p.design().Wants(v.made.Name, m.Name) {
			continue
		}
		all = append(all, m)
	}
	return all
}

// newItem is a measurement with its values in all sizes.
func (p *plan) newItem(piece string, m *schematic.Measure, byID []map[string]*schematic.Measure) *item {
	it := &item{m: p.named(piece, m), value: make(value, len(byID))}
	for i := range byID {
		it.value[i] = byID[i][m.ID]
	}
	if m.Around {
		it.suffix += " around"
	}
	if m.Stretched {
		it.suffix += " stretched"
	}
	if p.o.Labels != Blank || m.View == schematic.NoView { // blanks stand in the table, all of them, since a hand writes along the sheet
		it.forms = p.s.forms(it.value, it.suffix)
	}
	it.title = it.m.Name
	if p.o.Labels != Blank {
		it.title += ": " + p.s.words(it.value, it.suffix)
	}
	return it
}

// differs reports whether a measurement that another one of its view says in this size is
// one of its own in another size.
func differs(m *schematic.Measure, byID []map[string]*schematic.Measure) bool {
	for i := range byID {
		if o := byID[i][m.ID]; o != nil && !o.Same {
			return true
		}
	}
	return false
}

// tellApart has the titles of measurements of one name that are not alike say of which part each tells, as the table does.
func (v *viewPlan) tellApart() {
	named := map[string][]*item{}
	for _, it := range v.items {
		named[it.m.Name] = append(named[it.m.Name], it)
	}
	for name, all := range named {
		titles, parts := map[string]bool{}, map[string]bool{}
		for _, it := range all {
			titles[it.title], parts[it.m.Part] = true, true
		}
		if len(titles) < 2 || len(parts) < 2 {
			continue
		}
		for _, it := range all {
			if it.m.Part != "" {
				it.title = name + " (" + it.m.Part + ")" + strings.TrimPrefix(it.title, name)
			}
		}
	}
}

// describe is the view in words.
func (v *viewPlan) describe() string {
	var parts []string
	for it := range v.all {
		parts = append(parts, it.title)
	}
	text := strings.Join(v.info, ", ")
	if v.made.Piece != nil {
		if text != "" {
			text += "; "
		}
		text += "worked " + v.made.Piece.Worked()
	}
	if len(parts) > 0 {
		if text != "" {
			text += ". "
		}
		text += strings.Join(parts, "; ")
	}
	if text == "" {
		return ""
	}
	return finding.Capital(text) + "."
}

// captionInfo is what stands under a piece's name.
func captionInfo(m *schematic.Made, v *schematic.View) []string {
	var info []string
	switch {
	case m.Mirrored:
		info = append(info, fmt.Sprintf("make %d: as drawn, and mirrored", max(2, m.Make)))
	case m.Make > 1:
		info = append(info, fmt.Sprintf("make %d", m.Make))
	}
	if m.MirrorOf != "" {
		info = append(info, "mirror of "+m.MirrorOf)
	}
	if v.Half && !v.Disc {
		info = append(info, "half of the round")
	}
	if m.Bends() {
		info = append(info, "blocked, its upper edge straightens and its lower edge curves")
	}
	if s := v.AlikeText(); s != "" {
		info = append(info, s)
	}
	name := strings.ToLower(m.Name)
	if strings.Contains(name, "left") || strings.Contains(name, "right") || m.Mirrored {
		return info
	}
	switch m.Kind {
	case schematic.KindFront:
		info = append(info, "drawn left is right as worn")
	case schematic.KindBack:
		info = append(info, "drawn left is left as worn")
	}
	return info
}

// bound takes the outlines of the view, and the corners of everything in it.
func (v *viewPlan) bound() error {
	v.shape = v.view.Outline
	if v.view.Disc && len(v.shape) > 0 {
		v.shape = append([][]schematic.Point{circle(v.shape[0])}, v.shape[1:]...)
	}
	first, ok := true, true
	add := func(p schematic.Point) {
		if math.IsNaN(p.X+p.Y) || math.IsInf(p.X, 0) || math.IsInf(p.Y, 0) || math.Abs(p.X)+math.Abs(p.Y) > 1e7 {
			ok = false
		}
		if first {
			v.lo, v.hi, first = p, p, false
		}
		v.lo = schematic.Point{X: min(v.lo.X, p.X), Y: min(v.lo.Y, p.Y)}
		v.hi = schematic.Point{X: max(v.hi.X, p.X), Y: max(v.hi.Y, p.Y)}
	}
	all := func(ps []schematic.Point) {
		for _, p := range ps {
			add(p)
		}
	}
	for _, loop := range v.shape {
		all(loop)
	}
	for _, l := range v.view.Lines {
		all([]schematic.Point{l.A, l.B})
	}
	for _, h := range v.view.Ribs {
		all(h.Poly)
	}
	for _, n := range v.view.Notches {
		add(n.At)
	}
	for _, m := range v.view.Marks {
		add(m.At)
	}
	for k := range v.made.Measures {
		if m := &v.made.Measures[k]; m.Main && m.View >= 0 && m.View < len(v.made.Views) && &v.made.Views[m.View] == v.view {
			all([]schematic.Point{m.A, m.B})
		}
	}
	if !ok {
		return fmt.Errorf("piece %s has a point that is not a place within 10 km", v.made.Name)
	}
	return nil
}

// circle is a polygon close to the circle through the loop's points.
func circle(loop []schematic.Point) []schematic.Point {
	c, r := circleOf(loop)
	const n = 96
	ps := make([]schematic.Point, n)
	for i := range ps {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		ps[i] = schematic.Point{X: c.X + r*cos, Y: c.Y + r*sin}
	}
	return ps
}

func circleOf(loop []schematic.Point) (c schematic.Point, r float64) {
	if len(loop) == 0 {
		return
	}
	lo, hi := loop[0], loop[0]
	for _, p := range loop {
		lo = schematic.Point{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
		hi = schematic.Point{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
	}
	c = schematic.Point{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2}
	for _, p := range loop {
		r = max(r, math.Hypot(p.X-c.X, p.Y-c.Y))
	}
	return c, r
}

// mirrored reports whether one of the earlier measurements of the view is the same on the
// other half of a symmetrical piece: each dimension is given once.
func (v *viewPlan) mirrored(m *schematic.Measure, earlier []*schematic.Measure, byID []map[string]*schematic.Measure) bool {
	flip := func(p schematic.Point) schematic.Point {
		return schematic.Point{X: v.lo.X + v.hi.X - p.X, Y: p.Y}
	}
	const near = 0.5 // mm
	same := func(p, q schematic.Point) bool {
		return math.Abs(p.X-q.X) < near && math.Abs(p.Y-q.Y) < near
	}
	a, b := flip(m.A), flip(m.B)
	for _, o := range earlier {
		flipped := same(o.A, a) && same(o.B, b) || same(o.A, b) && same(o.B, a)
		if flipped && o.Axis == m.Axis && o.Around == m.Around && o.Stretched == m.Stretched && alike(o, m, byID) {
			return true
		}
	}
	return false
}

// onTwin reports whether the piece that made mirrors has the same measurement: the
// pair is measured once.
func onTwin(pieces []*schematic.Made, made *schematic.Made, m *schematic.Measure, byID []map[string]*schematic.Measure) bool {
	if made.MirrorOf == "" {
		return false
	}
	for _, twin := range pieces {
		if twin.Name != made.MirrorOf || twin == made || twin.MirrorOf != "" {
			continue
		}
		for k := range twin.Measures {
			o := &twin.Measures[k]
			if o.Main && o.View == m.View && o.Name == m.Name && o.Axis == m.Axis && o.Around == m.Around && alike(o, m, byID) {
				return true
			}
		}
	}
	return false
}

// alike reports whether two measurements are equal in every size.
func alike(o, m *schematic.Measure, byID []map[string]*schematic.Measure) bool {
	for i := range byID {
		x, y := byID[i][o.ID], byID[i][m.ID]
		if (x == nil) != (y == nil) || x != nil && !x.Length.Eq(y.Length) {
			return false
		}
	}
	return true
}
