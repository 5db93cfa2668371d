package schematic

import (
	"slices"
	"strings"

	"flatwright/schematic/units"
)

// widths are the measurements along the rows: where the piece begins and ends,
// where it is widest or narrowest, and where the pattern names one.
func (w *worker) widths(c *canvas) []span {
	var out []span
	used := map[string]int{}
	widest := widestOf(c.levels)
	for i, l := range c.levels {
		s := l.span(w.piece.From)
		s.name, s.main = w.widthName(c, i, widest)
		if s.name == "" {
			continue
		}
		s.rank = rankLevel
		if c.panel || w.made.Kind == KindYoke {
			s.rank = rankPanel
		}
		s.given = l.name != ""
		s.lasts = l.name == "" && endsAt(c.levels, i)
		key := s.part + "." + s.name
		used[key]++
		if k := used[key]; k > 1 {
			s.name += " " + units.Int(int64(k)).String()
		}
		out = append(out, s)
	}
	return out
}

// widestOf is the widest level of the whole piece, the first of those as wide; -1 if there is none.
func widestOf(levels []level) int {
	widest := -1
	for i, l := range levels {
		if l.part == "" && (widest < 0 || levels[widest].r.Sub(levels[widest].l).Less(l.r.Sub(l.l))) {
			widest = i
		}
	}
	return widest
}

// span is the level as it is measured, without its name.
func (l level) span(d Direction) span {
	width := l.r.Sub(l.l)
	s := span{part: l.part, axis: Horizontal, length: width, count: l.n, of: "st", gauge: l.gauge, stretch: l.stretched, doubt: l.doubt}
	if l.band {
		s.of = "row"
	}
	if l.round {
		s.around, s.length = true, width.Times(2)
	}
	a, b := d.turned(pt{l.l, l.y}), d.turned(pt{l.r, l.y})
	s.lo, s.hi = ordered(a, b)
	if a.x.Eq(b.x) {
		s.axis = Vertical
	}
	return s
}

func ordered(a, b pt) (pt, pt) {
	if b.x.Less(a.x) || b.x.Eq(a.x) && b.y.Less(a.y) {
		return b, a
	}
	return a, b
}

// turning reports whether the strand is narrower, or wider, at level i than at
// the levels of its part before and after it.
func turning(levels []level, i int) bool {
	width := func(j int) units.Num { return levels[j].r.Sub(levels[j].l) }
	prev, next := -1, -1
	for j := i - 1; j >= 0; j-- {
		if levels[j].part == levels[i].part && !width(j).Eq(width(i)) {
			prev = j
			break
		}
	}
	for j := i + 1; j < len(levels); j++ {
		if levels[j].part == levels[i].part && !width(j).Eq(width(i)) {
			next = j
			break
		}
	}
	if prev < 0 || next < 0 {
		return true
	}
	return width(i).Less(width(prev)) == width(i).Less(width(next))
}

// underarm is the level of the whole piece at which its armholes begin, or -1.
func underarm(levels []level) int {
	first := slices.IndexFunc(levels, func(l level) bool { return l.armhole })
	for i := first - 1; i >= 0; i-- {
		if levels[i].part == "" {
			return i
		}
	}
	return -1
}

// lastArmhole reports whether level i is the width that the armhole shaping leaves.
func lastArmhole(levels []level, i int) bool {
	if !levels[i].armhole {
		return false
	}
	return !slices.ContainsFunc(levels[i+1:], func(k level) bool { return k.part == levels[i].part && k.armhole })
}

// endsAt reports whether the part of level i ends as wide as it is there.
func endsAt(levels []level, i int) bool {
	return slices.ContainsFunc(levels[i+1:], func(k level) bool {
		return k.end && k.part == levels[i].part && k.l.Eq(levels[i].l) && k.r.Eq(levels[i].r)
	})
}

// widthName is the trade's name of the width at level i and whether the drawing
// shows it; no name for a width that says nothing new.
func (w *worker) widthName(c *canvas, i, widest int) (string, bool) {
	l := c.levels[i]
	up := w.piece.From.upwards()
	if l.name != "" {
		return l.name, true
	}
	if toldBelow(c.levels, i, up) || !up && !l.end && endsAt(c.levels, i) { // or told where it ends
		return "", false
	}
	if l.part == "" && w.piece.From.sideways() {
		return w.lengthAt(c, i, widest)
	}
	at := c.placeOf(i, widest)
	if l.part != "" && !(l.round && l.part == c.name) { // a round that parts are joined to is a whole again
		// The width of a part where it begins follows from the division, and where it ends
		// from the edge that it ends in.
		if l.start || l.end || !turning(c.levels, i) || endsAt(c.levels, i) {
			return "", false
		}
		return "width of " + l.part + above(c, i), true
	}
	if name, show, ok := w.panelWidthName(c, i, at); ok {
		return name, show
	}
	if name, show, ok := w.kindWidthName(c, i, w.beforePanels(c, at)); ok {
		return name, show
	}
	return w.innerWidthName(c, i)
}

// toldBelow reports whether a level before it is as wide as level i, so that its width says nothing new.
func toldBelow(levels []level, i int, up bool) bool {
	l := levels[i]
	return slices.ContainsFunc(levels[:i], func(k level) bool {
		return k.part == l.part && k.l.Eq(l.l) && k.r.Eq(l.r) && (k.y.Eq(l.y) || l.end && up || !l.end && !turning(levels, i))
	})
}

// levelPlace is where a level stands in its view.
type levelPlace struct{ hem, top, widest, first, last bool }

func (c *canvas) placeOf(i, widest int) levelPlace {
	first, last := i == 0, i == len(c.levels)-1 && c.levels[i].end
	at := levelPlace{hem: first, top: last, widest: i == widest, first: first, last: last}
	if c.down {
		at.hem, at.top = last, first
	}
	return at
}

// panelWidthName names a width of a panel, or of a yoke that has some.
func (w *worker) panelWidthName(c *canvas, i int, at levelPlace) (name string, show, ok bool) {
	yoke := w.made.Kind == KindYoke
	switch {
	case yoke && !c.panel && c.name != "" && w.hasPanels():
		return "width of " + c.name, true, true
	case c.panel && w.raglan() || c.name != "" && len(w.views) > 1 && yoke:
		switch {
		case at.hem:
			return "width at base", true, true
		case at.top && !w.piece.From.upwards() && c.panel && !c.levels[i].start:
			return "width below neck", true, true // where two panels become one
		case at.top:
			return "width at neck edge", true, true
		}
	case c.panel:
		switch {
		case at.hem:
			return "width at lower edge", true, true
		case at.top || endsAt(c.levels, i):
			return "width at upper edge", true, true
		}
	}
	return "", false, false
}

// beforePanels is the place of a level of a round that goes on in panels: its end is no lower edge.
func (w *worker) beforePanels(c *canvas, at levelPlace) levelPlace {
	if !w.piece.From.upwards() && !c.panel && w.hasPanels() {
		at.top, at.hem = at.top || at.hem, false
	}
	return at
}

// kindNames are the trade's names of the widths of a kind of piece at its lower edge, where it is widest, and at
// its upper edge; none where the general name stands. quiet is an upper width that only the table has.
type kindNames struct {
	hem, widest, top string
	length           string
	quiet            bool
}

var tradeNames = map[Kind]kindNames{
	KindSleeve: {hem: "cuff", widest: "upper arm", top: "width at top", length: "sleeve length"},
	KindHat:    {hem: "brim", widest: "width around", top: "width at crown", quiet: true},
	KindYoke:   {hem: "base of yoke", top: "neck edge"},
	KindSkirt:  {hem: "hem", widest: "hip", top: "waist", length: "length"},
	KindShawl:  {hem: "lower edge", widest: "wingspan", top: "upper edge", length: "depth"},
	KindHood:   {hem: "neck edge", widest: "width of hood", top: "top", length: "hood height"},
	KindBag:    {hem: "lower edge", widest: "around", top: "opening", length: "height"},
	KindPoncho: {hem: "hem", widest: "widest width", top: "neck edge", length: "length"},
	KindMitten: {hem: "cuff", widest: "hand", top: "tip", length: "length"},
	KindSock:   {hem: "lower edge", widest: "widest width", top: "upper edge", length: "length"},
}

// kindWidthName names a width by what the piece is on the body.
func (w *worker) kindWidthName(c *canvas, i int, at levelPlace) (name string, show, ok bool) {
	kind := w.made.Kind
	trade, known := tradeNames[kind]
	lengthwise := kind == KindBand && w.lengthwise(c)
	band := kind == KindBand && !lengthwise
	switch {
	case kind == KindShawl && at.widest && !c.panel:
		return trade.widest, true, true
	case known && at.hem && !c.panel:
		return trade.hem, true, true
	case kind == KindMitten && at.widest && slices.ContainsFunc(c.slits, func(s slitAt) bool { return s.by < 0 }):
		return "hand with thumb", true, true // its gusset is left there
	case known && at.widest && trade.widest != "" && !(at.top && kind > KindBand):
		return trade.widest, true, true
	case kind == KindHat && at.top && c.name == "sides":
		return trade.widest, true, true // of the head: the brim is wider
	case known && at.top:
		return trade.top, !trade.quiet, true
	case lengthwise && at.first:
		return "width of band", true, true
	case band && at.first:
		return "length of band", true, true
	case band && at.last:
		return "length at outer edge", turning(c.levels, i), true
	}
	return kind.widthAt(c, i, at)
}

// widthAt names a width of a piece of the kind by where it stands.
func (k Kind) widthAt(c *canvas, i int, at levelPlace) (name string, show, ok bool) {
	trunk, arms := k.Trunk(), underarm(c.levels)
	switch {
	case trunk && at.top && c.ownedBy(c.levels[i], "waist"):
		return "waist", true, true
	case at.hem && k == KindPiece:
		return "width at lower edge", true, true
	case at.top && k == KindPiece:
		return "width at upper edge", true, true
	case at.hem:
		return "width at hem", true, true
	case trunk && i == arms, trunk && at.widest && arms < 0:
		return "width at underarm", true, true
	case at.widest && trunk:
		return "widest width", true, true
	case at.widest:
		return "width", true, true
	case at.top:
		return "width at top", true, true
	}
	return "", false, false
}

// Trunk reports whether a piece of the kind covers the body.
func (k Kind) Trunk() bool { return k == KindBody || k == KindBack || k == KindFront }

// ownedBy reports whether all of a level is an edge of this name.
func (c *canvas) ownedBy(l level, name string) bool {
	return slices.ContainsFunc(c.segs, func(s seg) bool {
		lo, hi := ordered(s.a, s.b)
		return strings.EqualFold(s.name, name) && lo.y.Eq(l.y) && hi.y.Eq(l.y) && lo.x.Eq(l.l) && hi.x.Eq(l.r)
	})
}

// innerWidthName names a width between the ends of a piece, where it turns from growing to narrowing or back.
func (w *worker) innerWidthName(c *canvas, i int) (string, bool) {
	l, kind := c.levels[i], w.made.Kind
	if c.afterShoulder(l) || !turning(c.levels, i) && !lastArmhole(c.levels, i) {
		if l.label != "" {
			return "width after " + l.label, false
		}
		return "", false
	}
	if kind.Trunk() && l.part == "" && w.belowTheArms(c, i) {
		if slices.ContainsFunc(c.levels, func(k level) bool { return k.name != "" && k.part == l.part && k.l.Eq(l.l) && k.r.Eq(l.r) }) {
			return "", false // told where its name stands
		}
		if l.r.Sub(l.l).Less(c.levels[i-1].r.Sub(c.levels[i-1].l)) {
			return "waist", true
		}
		return "widest width", true
	}
	wide := func(l level) units.Num { return l.r.Sub(l.l) }
	widest := widestOf(c.levels)
	switch label := above(c, i); {
	case kind.Trunk() && widest >= 0 && wide(l).Eq(wide(c.levels[widest])):
		return "width at underarm", true // a straight armhole
	case kind == KindBack:
		return "cross back", true
	case kind == KindFront && opensInFront(c):
		return "half cross front", true
	case kind == KindFront:
		return "cross front", true
	case kind == KindSleeve:
		return "width above cuff", true
	case label != "":
		return "width above" + label, true
	case endsAt(c.levels, i) && kind == KindPiece:
		return "width at upper edge", true
	case endsAt(c.levels, i):
		return "width at top", true
	case l.r.Sub(l.l).Less(c.levels[i-1].r.Sub(c.levels[i-1].l)):
		return "narrowest width", true
	}
	return "widest width", true
}

// afterShoulder reports whether a level is what stitches bound off for a shoulder leave.
func (c *canvas) afterShoulder(l level) bool {
	return slices.ContainsFunc(c.segs, func(s seg) bool {
		a, b := ordered(s.a, s.b)
		return strings.EqualFold(s.name, "shoulder") && b.x.Eq(l.l) && a.x.Less(l.l)
	})
}

// belowTheArms reports whether the whole piece is wider than at level i both above and below it, or narrower: only below
// the arms a body is shaped so.
func (w *worker) belowTheArms(c *canvas, i int) bool {
	arms := underarm(c.levels)
	if i == 0 || !turning(c.levels, i) || arms >= 0 && i > arms {
		return false
	}
	width := c.levels[i].r.Sub(c.levels[i].l)
	differs := func(list []level) (wider, narrower bool) {
		for _, k := range list {
			d := k.r.Sub(k.l)
			if k.part == "" { // a rib draws in, and is no narrower body
				wider, narrower = wider || width.Less(d), narrower || d.Less(width) && k.gauge == c.levels[i].gauge
			}
		}
		return wider, narrower
	}
	wider, narrower := differs(c.levels[:i])
	wider2, narrower2 := differs(c.levels[i+1:])
	return wider && wider2 || arms > i && narrower && narrower2
}

func (w *worker) hasPanels() bool {
	return slices.ContainsFunc(w.views, func(c *canvas) bool { return c.panel })
}

// lengthAt is the name of a level of a piece worked from side to side: its rows run along
// the body, so that the level is a length.
func (w *worker) lengthAt(c *canvas, i, widest int) (string, bool) {
	l := c.levels[i]
	for _, k := range c.levels[:i] {
		if k.part == l.part && k.r.Sub(k.l).Eq(l.r.Sub(l.l)) {
			return "", false
		}
	}
	near, far := "left", "right"
	if w.piece.From == FromRight {
		near, far = far, near
	}
	switch {
	case i == widest && w.made.Kind == KindSleeve:
		return "sleeve length", true
	case i == widest && w.made.Kind == KindHat:
		return "hat depth", true
	case i == widest && w.made.Kind == KindBand:
		return "depth of band", true
	case i == widest:
		return "length", true
	case i == 0:
		return "length at " + near + " edge", true
	case i == len(c.levels)-1 && l.end:
		return "length at " + far + " edge", true
	case !turning(c.levels, i):
		return "", false
	case l.top != "" && l.top != "side":
		return "length at " + l.top, true
	}
	return "inner length", true
}

// lengthwise reports whether a band is worked from one of its ends to the other.
func (w *worker) lengthwise(c *canvas) bool {
	if len(w.piece.Onto) > 0 || len(w.piece.Sections) == 0 || len(c.levels) == 0 {
		return false
	}
	if _, ok := w.piece.Sections[0].(*CastOn); !ok {
		return false
	}
	first, last := c.levels[0], c.levels[len(c.levels)-1]
	return first.r.Sub(first.l).Less(last.y.Sub(first.y))
}

// above names a width by what it follows.
func above(c *canvas, i int) string {
	if l := c.levels[i].label; l != "" {
		return " " + l
	}
	if i > 0 && c.levels[i-1].band {
		return " rib"
	}
	return ""
}

// opensInFront reports whether a front has the edge of an opening, so that it is half of one.
func opensInFront(c *canvas) bool {
	return slices.ContainsFunc(c.segs, func(s seg) bool {
		switch strings.ToLower(s.name) {
		case "front edge", "front opening", "centre front", "center front":
			return true
		}
		return false
	})
}
