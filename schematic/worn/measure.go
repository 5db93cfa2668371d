package worn

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// most is how many measurements a garment has at most on its drawing.
const most = 15

// measures are the trade's measurements of what is worn, each once.
func (a *assembly) measures() []schematic.Measure {
	t := &taker{a: a, seen: map[string]bool{}}
	root := a.placed[0]
	switch b := a.body(); {
	case root.lengthwise:
		t.lengthwise(root)
	case root.onSide:
		t.onSide(root)
	case root.slipper:
		t.onFoot(root)
	case root.arced:
		t.crescent(root)
	case a.isWing(root):
		t.span()
		t.sides(root)
	case absf(root.lying) == math.Sqrt2/2:
		t.poncho(root)
	case root.lying != 0:
		t.bonnet(root)
	case a.goesOnInGores(root):
		t.inGores(a.rowOf(root))
	case a.isVessel(root):
		t.holder(root)
	case root.made.Kind == schematic.KindShawl || a.bordered() || root.face == either && root.made.Views[root.view].Panel && !root.made.Round:
		t.span()
	case root.made.Kind > schematic.KindBand && len(a.placed) > 1 && !a.skirtOfPieces(b) && !a.hasLegs(root):
		t.outside(root)
	case root.closed && (b == nil || b.kind == ""):
		t.outside(root)
	case root.made.Round && b != nil && b.kind == "" && !a.faced() && slices.ContainsFunc(a.placed, func(p *panel) bool { return p.made.Kind == schematic.KindSkirt && p.made.Round && p.hung }):
		t.outside(root) // a bodice in the round with its skirt
	case a.below(root) != nil && (b == nil || b.skirt == nil):
		t.limbs(root)
	case b != nil:
		t.trunk(b)
		t.sleeve()
		t.hoods()
	}
	for _, p := range a.placed {
		t.turnedBand(p)
		t.own(p)
		t.openings(p)
		if p.made.Kind == schematic.KindHood && p.hung && p.halved && p.where.sin == 0 {
			t.upright(p)
		}
	}
	t.straps()
	all := slices.Clone(t.out)
	t.out = slices.DeleteFunc(t.out, func(m schematic.Measure) bool { // its hem is that, or its bust
		return slices.ContainsFunc(all, func(o schematic.Measure) bool {
			return (m.Name == "widest width" && o.Name != m.Name || m.Name == "hip" && o.Name == t.bust()) && o.Axis == m.Axis && o.Around == m.Around && o.View == m.View && o.Length.Eq(m.Length)
		})
	})
	if len(t.out) > most {
		t.out = t.out[:most]
	}
	return t.out
}

// isWing reports whether what stands first is a shawl of one panel with sides that slope, or lie so that its wingspan is level.
func (a *assembly) isWing(root *panel) bool {
	return root.made.Kind == schematic.KindShawl && (root.lying != 0 || len(a.placed) == 1 && root.sloping())
}

// goesOnInGores reports whether what stands first is a panel of a round that goes on at both of its sides in others that show: it is no half of the round.
func (a *assembly) goesOnInGores(root *panel) bool {
	if !root.made.Round || !root.made.Views[root.view].Panel || root.gusset {
		return false
	}
	return root.face == either || root.made.Kind > schematic.KindBand && slices.ContainsFunc(a.rowOf(root), func(p *panel) bool { return p.face == either })
}

// leastDeep is how deep a band along a front is at least to be measured, mm: one for buttons is 2 to 5 cm (common practice).
const leastDeep = 60.0

// straps measures what stands upright from an edge to which one of its ends is sewn.
func (tk *taker) straps() {
	for _, p := range tk.a.placed {
		k := len(p.drawn) - 1
		if p.strip && p.over != nil || p.stands && !tk.spans(p.drawn[0].a.Y, p.drawn[k].a.Y) { // a collar that is turned over, or a roll neck
			name := strings.ToLower(p.made.Name) + " depth"
			if p.made.Kind != schematic.KindBand {
				name = "neck height"
			}
			tk.take(name, p.drawn[k].a, p.drawn[0].a, schematic.Slanted, false, units.Num{})
		}
		tk.deepBand(p)
		if p.drop != p.foot && !holds[tk.a.placed[0].made.Kind] { // in an arch: all of it is in no line
			l, h := bounds(p.made.Views[p.view].Outline)
			tk.under(strings.ToLower(p.made.Name)+" length", schematic.Measure{Axis: schematic.Vertical, Length: tk.exact(max(h.X-l.X, h.Y-l.Y))})
			continue
		}
		if !p.isStrap() || p.strip || !p.hung || len(p.hosts) > 0 {
			continue
		}
		lo, hi := box(p.drawn)
		name := strings.ToLower(p.made.Name) + " length"
		if p.halved { // folded on the shoulder: all of it is in no line
			l, h := bounds(p.made.Views[p.view].Outline)
			tk.under(name, schematic.Measure{Axis: schematic.Vertical, Length: tk.exact(h.Y - l.Y)})
			continue
		}
		if absf(p.where.sin) > 1e-9 { // such as a tie at a side
			l, h := box(p.loop)
			tk.take(name, p.where.at(pt{X: h.X, Y: l.Y}), p.where.at(h), schematic.Slanted, false, units.Num{})
			continue
		}
		tk.take(name, pt{X: hi.X, Y: lo.Y}, hi, schematic.Vertical, false, units.Num{})
	}
}

// spans reports whether an upright measurement reaches from one height to another.
func (t *taker) spans(low, high float64) bool {
	return slices.ContainsFunc(t.out, func(m schematic.Measure) bool {
		return m.Axis == schematic.Vertical && absf(min(m.A.Y, m.B.Y)-low) < close && absf(max(m.A.Y, m.B.Y)-high) < close
	})
}

// deepBand measures a band along a front that is deeper than for buttons.
func (tk *taker) deepBand(p *panel) {
	lo, hi := box(p.drawn)
	if !p.strip || p.over != nil || lo.Y >= leastDeep {
		return
	}
	if l, r := p.level(lo.Y, close); r.X-l.X > leastDeep && hi.Y-lo.Y > r.X-l.X {
		tk.take(strings.ToLower(p.made.Name)+" width", l, r, schematic.Horizontal, false, units.Num{})
	}
}

// isStrap reports whether a panel is a band, or named for something that hangs free.
func (p *panel) isStrap() bool {
	return p.made.Kind == schematic.KindBand || schematic.HangsFree(p.made.Name)
}

// taker takes measurements.
type taker struct {
	a    *assembly
	out  []schematic.Measure
	seen map[string]bool
}

// take adds a measurement between two places; around says that the other half of it lies behind.
func (t *taker) take(name string, a, b pt, axis schematic.Axis, around bool, exact units.Num) {
	l := dist(a, b)
	switch axis {
	case schematic.Horizontal:
		l = absf(a.X - b.X)
	case schematic.Vertical:
		l = absf(a.Y - b.Y)
	}
	if l < 1 || t.seen[name] {
		return
	}
	whole := l
	if around {
		whole = 2 * l
	}
	if exact.Sign() == 0 {
		exact = t.exact(whole)
	} else if absf(exact.Float()-whole) > 0.5 {
		return // not what is drawn: never a false line
	}
	t.seen[name] = true
	t.out = append(t.out, schematic.Measure{ID: "as-worn." + schematic.ID(name), Name: name, A: a, B: b, Axis: axis, Length: exact, Around: around, Main: true})
}

// exact is the exact length, of a measurement or an edge of any piece, that a drawn one comes from; or to 0.001 mm.
func (t *taker) exact(mm float64) units.Num {
	for _, m := range t.a.g.Pieces {
		for _, s := range m.Measures {
			for _, l := range []units.Num{s.Length, s.Length.Half(), s.Length.Times(2)} {
				if absf(l.Float()-mm) < 0.0005 {
					return l
				}
			}
		}
		for _, e := range m.Edges {
			if absf(e.Length.Float()-mm) < 0.0005 {
				return e.Length
			}
		}
	}
	return units.Frac(int64(math.Round(mm*1000)), 1000)
}

// trunk is what the sleeves hang from, or what stands first.
type trunk struct {
	panels   []*panel // in front, or the back if the fronts open
	hem, top float64
	low      float64 // of a band along the hem, or the hem
	under    float64 // the height of the underarm
	arms     bool
	kind     string  // armhole, raglan or yoke
	upper    float64 // the height at which the armhole, raglan or yoke ends
	upperAt  pt
	underAt  pt
	skirt    *panel // a round that hangs from its lower edge
}

func isTrunk(p *panel) bool {
	switch p.made.Kind {
	case schematic.KindBody, schematic.KindFront, schematic.KindBack:
		return true
	case schematic.KindYoke:
		return p.face == front && len(p.drawn) > 0 && p.made.Piece.Onto == nil
	}
	return p.face == front || p.face == back
}

// body is the trunk of the garment: nil if it has none.
func (a *assembly) body() *trunk {
	t := &trunk{hem: math.Inf(1), top: math.Inf(-1), under: math.Inf(1)}
	isBack := func(p *panel) bool { return p.face == back }
	inFront := slices.DeleteFunc(slices.Clone(a.placed), isBack)
	behind := slices.DeleteFunc(slices.Clone(a.placed), func(p *panel) bool { return !isBack(p) })
	for _, p := range append(inFront, behind...) {
		t.covers(p)
	}
	if len(t.panels) == 0 || a.placed[0].made.Kind == schematic.KindHat {
		return nil
	}
	for _, p := range a.placed {
		t.hangs(p)
	}
	for _, p := range a.placed { // where no sleeve hangs
		t.opens(p)
	}
	t.belowBindOff()
	if list := a.below(a.placed[0]); t.kind != "" && len(list) == 1 && list[0].made.Views[list[0].view].Half {
		t.hangsBelow(list[0])
	}
	for _, p := range a.placed {
		if p.made.Kind != schematic.KindSkirt || !p.hung || p == a.placed[0] {
			continue
		}
		if p.face == front {
			t.skirt = p
		} else if t.kind != "" && p.made.Round {
			t.hangsBelow(p)
		}
	}
	for _, p := range a.placed {
		if p.strap || p.hung && p.halved && slices.Contains(p.onto, "shoulder") { // the highest point of the shoulder is on it
			_, hi := box(p.drawn)
			t.top = max(t.top, hi.Y)
		}
		t.yoke(p, a.placed)
	}
	t.banded(a.placed)
	return t
}

// hangsBelow takes in a round that hangs from the lower edge, as its skirt.
func (t *trunk) hangsBelow(p *panel) {
	t.skirt = p
	t.panels = append(t.panels, p)
	lo, _ := box(p.drawn)
	t.hem = min(t.hem, lo.Y)
}

// banded takes in the bands along the lower edge and, of a skirt, along its waist: they are a part of its length, as a neckband is not.
func (t *trunk) banded(placed []*panel) {
	t.low = t.hem
	skirt := t.fromWaist()
	for _, p := range placed {
		if !p.strip || p.made.Kind != schematic.KindBand {
			continue
		}
		lo, hi := box(p.drawn)
		t.low = min(t.low, lo.Y)
		if skirt {
			t.top = max(t.top, hi.Y)
		}
	}
}

// covers takes in a panel that lies on the body.
func (t *trunk) covers(p *panel) {
	if !isTrunk(p) || p.made.Kind == schematic.KindBand || p.strip {
		return
	}
	t.panels = append(t.panels, p)
	lo, hi := box(p.drawn)
	if p.face != back || lo.Y < t.hem-onEdge { // it lies in front, but for a few rows
		t.hem = min(t.hem, lo.Y)
	}
	t.top = max(t.top, hi.Y)
}

// hangs takes the armhole from a sleeve that hangs in it.
func (t *trunk) hangs(p *panel) {
	if p.made.Kind != schematic.KindSleeve || !p.hung || p.strap {
		return
	}
	t.kind = "armhole"
	if low, high := byHeight(p.seam[0], p.seam[1]); !t.arms || low.X < t.underAt.X {
		t.arms, t.underAt, t.upperAt, t.under, t.upper = true, low, high, low.Y, high.Y
	}
}

// belowBindOff takes the underarm down to the row in which stitches are bound off for it, where no sleeve is sewn to them.
func (t *trunk) belowBindOff() {
	const most = 25.0 // mm: of two rows, by which bind-offs stagger
	under := t.under
	for _, p := range t.panels {
		for i, s := range p.drawn {
			z := p.drawn[(i+1)%len(p.drawn)].a
			if p.face != back && t.arms && !s.taken && absf(s.a.Y-z.Y) < close && absf(s.a.X-z.X) > 1 && s.a.Y > under-most && s.a.Y > t.hem+1 {
				t.under = min(t.under, s.a.Y)
			}
		}
	}
}

func byHeight(a, b pt) (low, high pt) {
	if b.Y < a.Y {
		return b, a
	}
	return a, b
}

// opens takes the armhole from the edges of a panel, where no sleeve hangs.
func (t *trunk) opens(p *panel) {
	for i, s := range p.drawn {
		if strings.EqualFold(s.name, "raglan") {
			t.kind = "raglan"
		}
		if t.arms || !strings.EqualFold(s.name, "armhole") || p.face == back {
			continue
		}
		t.kind = "armhole"
		low, high := byHeight(s.a, p.drawn[(i+1)%len(p.drawn)].a)
		if low.Y < t.under {
			t.under, t.underAt = low.Y, low
		}
		if high.Y > t.upper {
			t.upper, t.upperAt = high.Y, high
		}
	}
}

// yoke takes how far up the garment reaches from the front of its yoke.
func (t *trunk) yoke(p *panel, placed []*panel) {
	if p.made.Kind != schematic.KindYoke || p.face != front || p.strip {
		return
	}
	if t.kind != "raglan" {
		t.kind = "yoke"
	}
	neck := topOf(p.loop)
	if _, top := p.neckRibs(neck); top > bottomOf(p.loop)+close {
		neck = top
	}
	t.upper = p.where.at(pt{Y: neck}).Y
	t.upperAt = pt{X: math.Inf(1), Y: t.upper}
	for _, q := range placed { // where the picture is left at that height
		if x := across(points(q.drawn), t.upper-0.01); len(x) > 0 {
			t.upperAt.X = min(t.upperAt.X, x[0])
		}
	}
	t.top = max(t.upper, 0)
}

func topOf(loop []side) float64 {
	_, hi := box(loop)
	return hi.Y
}

func bottomOf(loop []side) float64 {
	lo, _ := box(loop)
	return lo.Y
}

// across is how far the trunk reaches to both sides just below a height, or to its corners there.
func (t *trunk) across(y float64) (l, r float64) {
	l, r = math.Inf(1), math.Inf(-1)
	for _, p := range t.panels {
		for _, at := range []float64{y - 0.5, y + 0.5} {
			if x := across(points(p.drawn), at); len(x) > 1 {
				if at > y && l < r {
					break
				}
				l, r = min(l, x[0]), max(r, x[len(x)-1])
			}
		}
	}
	for _, p := range t.panels {
		for _, s := range p.drawn {
			if absf(s.a.Y-y) < close && l < r {
				l, r = min(l, s.a.X), max(r, s.a.X)
			}
		}
	}
	return l, r
}

// around reports whether the back is as wide as the front between two uprights at a height: a round, or a back that
// lies behind.
func (t *trunk) around(y, l, r float64) bool {
	if slices.ContainsFunc(t.panels, func(p *panel) bool { return p.roundAt(y) }) {
		return true
	}
	if !t.closed() {
		return false
	}
	fl, fr := t.inFront(y)
	if fl < fr && (fl > l+2 || fr < r-2) {
		return false // the front is narrower than the back, by half a stitch at a side or more
	}
	for _, p := range t.panels {
		if p.face != back {
			continue
		}
		for _, by := range beside {
			if x := across(points(p.drawn), y+by); len(x) > 1 && absf(x[0]-l) < 0.3 && absf(x[len(x)-1]-r) < 0.3 {
				return true
			}
		}
	}
	return false
}

// beside are the heights besides one at which it is looked how wide a panel is: bind-offs stagger by a row.
var beside = []float64{-0.5, 0.5, -4, -8}

// inFront is how far what is not behind reaches to both sides at a height.
func (t *trunk) inFront(y float64) (l, r float64) {
	l, r = math.Inf(1), math.Inf(-1)
	for _, p := range t.panels {
		for _, by := range beside {
			if x := across(points(p.drawn), y+by); p.face != back && len(x) > 1 {
				l, r = min(l, x[0]), max(r, x[len(x)-1])
			}
		}
	}
	return l, r
}

// roundAt reports whether a panel is of a round, and reaches to a height.
func (p *panel) roundAt(y float64) bool {
	lo, hi := box(p.drawn)
	return (p.made.Round || p.made.Views[p.view].Half) && y > lo.Y-onEdge && y < hi.Y+onEdge
}

// closed reports whether a bond below the shoulders holds front and back together: what is joined at the shoulders alone hangs open,
// and goes around nothing.
func (t *trunk) closed() bool {
	low, all := map[face]map[string]bool{front: {}, back: {}}, map[face]map[string]bool{front: {}, back: {}}
	for _, p := range t.panels {
		for i, s := range p.drawn {
			for _, k := range s.keys {
				if p.face == either {
					continue
				}
				all[p.face][k] = true
				if min(s.a.Y, p.drawn[(i+1)%len(p.drawn)].a.Y) < t.hem+0.75*(t.top-t.hem) {
					low[p.face][k] = true
				}
			}
		}
	}
	return inBoth(low) || !inBoth(all)
}

// inBoth reports whether front and back have a key in common.
func inBoth(keys map[face]map[string]bool) bool {
	for k := range keys[front] {
		if keys[back][k] {
			return true
		}
	}
	return false
}

// faced reports whether a front lies before a back.
func (a *assembly) faced() bool {
	f, b := false, false
	for _, p := range a.placed {
		f, b = f || p.face == front, b || p.face == back
	}
	return f && b
}

func (tk *taker) trunk(t *trunk) {
	if t.kind == "" && !tk.a.faced() {
		return
	}
	left, _ := t.across(t.hem + 1)
	at := t.upperAt.X
	if t.kind == "" {
		at, _ = t.across(t.panelsTop() - 1)
	}
	tk.take("length", pt{X: left, Y: t.low}, pt{X: at, Y: t.top}, schematic.Vertical, false, units.Num{})
	if t.fromWaist() {
		tk.skirtOfPieces(t)
		return
	}
	for _, p := range t.panels {
		if p.face == front {
			tk.named(p, "shoulder", "neck width", "front neck depth", "neck depth", "motif")
		}
		tk.shaped(t, p)
	}
	tk.slits(t)
	for _, p := range t.panels {
		if p.face == back {
			tk.named(p, "cross back", "neck width", "shoulder")
			tk.once("cross back")
		}
	}
	if t.kind == "" {
		tk.withoutArmhole(t)
		return
	}
	tk.girth(t, tk.bust(), "width at underarm", t.under, tk.clearOfSleeves(t))
	tk.neckAround(t)
	tk.lower(t)
	tk.skirt(t)
	_, r := t.across(t.under)
	if _, hr := t.across(t.hem + 1); !math.IsInf(t.under, 0) {
		tk.take("body to underarm", pt{X: hr, Y: t.low}, pt{X: r, Y: t.under}, schematic.Vertical, false, units.Num{})
		from, to := pt{X: t.underAt.X, Y: t.under}, pt{X: t.upperAt.X, Y: t.upper}
		if t.kind == "yoke" { // its neck curves, and is as low as this in the middle
			from.X, to.X = 0, 0
		}
		tk.take(t.kind+" depth", from, to, schematic.Vertical, false, units.Num{})
	}
}

// neckAround tells how long the neck of a yoke is, around or from front to front: it lies in a curve, or across the shoulders.
func (tk *taker) neckAround(t *trunk) {
	for _, p := range t.panels {
		if p.made.Kind != schematic.KindYoke || tk.seen["neck"] || tk.seen["neck width"] {
			continue
		}
		var long units.Num
		for i := range p.made.Edges {
			if e := &p.made.Edges[i]; strings.Contains(strings.ToLower(e.Name), "neck") && e.Path[0].Y == e.Path[len(e.Path)-1].Y && (!p.made.Round || long.Sign() == 0) {
				long = long.Add(e.Length) // of each panel, if it is flat
			}
		}
		if long.Sign() > 0 {
			tk.under("neck", schematic.Measure{Axis: schematic.Horizontal, Length: long, Around: p.made.Round})
		}
	}
}

// withoutArmhole measures a trunk of which no armhole says where the bust is: below sleeves that are worked with the body.
func (tk *taker) withoutArmhole(t *trunk) {
	t.under = math.Inf(1)
	if y := t.hem + (t.top-t.hem)*2/5; t.cape() && tk.legs(t) {
		tk.bib(t)
	} else if t.cape() {
		tk.girth(t, "hem", "hem", t.hem+1, t.hem)
		if hooded := func(p *panel) bool { return p.made.Kind == schematic.KindHood }; !tk.seen["neck width"] && !slices.ContainsFunc(tk.a.placed, hooded) {
			tk.girth(t, "neck", "", t.top-1, t.top)
		}
	} else if y = t.belowSlope(y); !tk.legs(t) && tk.onBody(t) {
		tk.girth(t, tk.bust(), "width", y, y)
	} else if l, r := t.across(y); !tk.seen["leg"] {
		tk.take("width", pt{X: l, Y: y}, pt{X: r, Y: y}, schematic.Horizontal, false, units.Num{})
	}
	tk.ofOneWithSleeves(t)
}

// onBody reports whether the trunk is worn, and no cushion: its pattern has bodies, or one of its edges is that of a garment.
func (tk *taker) onBody(t *trunk) bool {
	return len(tk.a.g.Pattern.Bodies) > 0 || slices.ContainsFunc(t.panels, func(p *panel) bool {
		return slices.ContainsFunc(p.loop, func(s side) bool {
			return slices.ContainsFunc(strings.Fields(strings.ToLower(s.name)), func(w string) bool {
				return slices.Contains([]string{"neck", "shoulder", "armhole", "underarm", "cuff", "hem", "waist"}, w)
			})
		})
	})
}

// once leaves out a width that lies as another does, such as that of a back that ends in its neck.
func (tk *taker) once(name string) {
	same := func(x, y float64) bool { return absf(x-y) < 1 }
	tk.out = slices.DeleteFunc(tk.out, func(m schematic.Measure) bool {
		return m.Name == name && slices.ContainsFunc(tk.out, func(o schematic.Measure) bool {
			return o.Name != name && o.Axis == m.Axis && !o.Around && same(min(o.A.X, o.B.X), min(m.A.X, m.B.X)) && same(max(o.A.X, o.B.X), max(m.A.X, m.B.X))
		})
	})
}

// skirt measures a skirt that hangs from a bodice: its waist, unless it is as wide as the bust, and how long it is.
func (tk *taker) skirt(t *trunk) {
	if t.skirt == nil {
		return
	}
	lo, hi := box(t.skirt.drawn)
	a, z := t.skirt.seam[0], t.skirt.seam[1]
	if l, r := t.across(t.under - 1); absf(dist(a, z)-(r-l)) > 1 {
		tk.take("waist", a, z, schematic.Horizontal, t.around(hi.Y+1, a.X, z.X), units.Num{})
	}
	_, x := t.across(t.hem + 1)
	words := slices.DeleteFunc(strings.Fields(strings.ToLower(t.skirt.made.Name)), func(w string) bool { return w == "front" || w == "back" })
	tk.take(strings.Join(append(words, "length"), " "), pt{X: x, Y: lo.Y}, pt{X: max(a.X, z.X), Y: hi.Y}, schematic.Vertical, false, units.Num{})
}

// bust is what the trade calls the girth below the arms: a child has a chest, and so has whoever the pattern gives a chest.
func (tk *taker) bust() string {
	p := tk.a.g.Pattern
	names := func(name string) bool {
		is := func(w schematic.Written) bool { return strings.EqualFold(w.Name, name) }
		return slices.ContainsFunc(p.Bodies, is) || slices.ContainsFunc(p.Finished, is)
	}
	if !names("bust") && (p.Children || names("chest")) {
		return "chest"
	}
	return "bust"
}

// clearOfSleeves is the height at which the bust is drawn: at the underarm, or below the sleeves that lie on the sides there, as far down
// as the body is no narrower.
func (tk *taker) clearOfSleeves(t *trunk) float64 {
	const step, most = 2.0, 60.0 // mm
	l, r := t.across(t.under)
	y := t.under
	for y > max(t.hem, t.under-most) && slices.ContainsFunc(tk.a.placed, func(p *panel) bool {
		return p.made.Kind == schematic.KindSleeve && covers(points(p.drawn), pt{X: l, Y: y - step})
	}) {
		if nl, nr := t.across(y - step); y < t.under-2*step && absf(nr-nl-(r-l)) > 1 {
			break
		}
		y -= step
	}
	return y
}

// girth measures how wide the trunk is at a height, drawn at another: around under one name, or flat under the other.
func (tk *taker) girth(t *trunk, around, flat string, y, drawn float64) {
	l, r := t.across(y)
	whole, off, laps := tk.lap(t, y, l, r)
	switch {
	case l >= r:
	case laps && off >= mostMissed:
		tk.under(around, schematic.Measure{Axis: schematic.Horizontal, Length: tk.exact(whole), Around: true})
		tk.take(flat, pt{X: l, Y: drawn}, pt{X: r, Y: drawn}, schematic.Horizontal, false, units.Num{})
	case laps || t.around(y, l, r):
		l, r = t.toCorners(drawn, l, r)
		tk.take(around, pt{X: l, Y: drawn}, pt{X: r, Y: drawn}, schematic.Horizontal, true, units.Num{})
	case tk.unlike(t, around, y, l, r):
	case flat != "":
		tk.take(flat, pt{X: l, Y: drawn}, pt{X: r, Y: drawn}, schematic.Horizontal, false, units.Num{})
	}
}

// toCorners is how wide the trunk is at a height, to the very corners there, if it is measured a little beside it.
func (t *trunk) toCorners(y, l, r float64) (left, right float64) {
	const beside = 2.0
	left, right = l, r
	for _, p := range t.panels {
		for _, s := range p.drawn {
			switch x := s.a.X; {
			case absf(s.a.Y-y) > close:
			case absf(x-l) < beside:
				left = x
			case absf(x-r) < beside:
				right = x
			}
		}
	}
	return left, right
}

// mostMissed is how far two fronts may miss the width of the back, mm: by two stitches that are picked up or left.
const mostMissed = 15.0

// lap is how far two fronts with bands that lap go around with the back at a height, and by how much that is not twice as far as they all are wide, with
// a band or without one; ok if there are such bands. Fronts that are drawn in by themselves stand out beyond the back.
func (tk *taker) lap(t *trunk, y, l, r float64) (around, off float64, ok bool) {
	own, whole, band, fronts := 0.0, 0.0, 0.0, 0
	for _, p := range tk.a.placed {
		x := across(points(p.drawn), y-0.5)
		switch {
		case len(x) != 2:
		case p.strip && p.made.Kind == schematic.KindBand:
			lo, hi := bounds(p.made.Views[0].Outline)
			band = max(band, hi.Y-lo.Y)
		case p.face == back && isTrunk(p):
			for _, by := range beside {
				if x := across(points(p.drawn), y+by); len(x) == 2 {
					own = max(own, x[1]-x[0])
				}
			}
		case p.face == front && isTrunk(p):
			whole += x[1] - x[0]
			fronts++
		}
	}
	own = cmp.Or(own, r-l)
	whole += own
	if off = mostMissed; own > r-l-2 {
		off = min(absf(whole-2*(r-l)), absf(whole+band-2*(r-l)))
	}
	return whole + band, off, fronts == 2 && band > 0 && band <= leastDeep && !t.wraps()
}

// unlike measures a front that is narrower at a height than the back that it is sewn to: each of them, and, in no line, both. It reports whether it is.
func (tk *taker) unlike(t *trunk, name string, y, l, r float64) bool {
	fl, fr := t.inFront(y)
	if !t.closed() || !tk.a.faced() || t.wraps() || fl >= fr || fl < l+2 && fr > r-2 || t.around(y, l, r) || slices.ContainsFunc(t.panels, func(p *panel) bool { return p.face == either }) {
		return false
	}
	tk.take("front "+name, pt{X: fl, Y: y}, pt{X: fr, Y: y}, schematic.Horizontal, false, units.Num{})
	tk.take("back "+name, pt{X: l, Y: y}, pt{X: r, Y: y}, schematic.Horizontal, false, units.Num{})
	tk.under(name, schematic.Measure{Axis: schematic.Horizontal, Length: tk.exact(r - l + fr - fl), Around: true})
	return true
}

// shaped measures the waist and the hip of a body that has them, around if its back is as wide.
func (tk *taker) shaped(t *trunk, p *panel) {
	for _, m := range p.made.Measures {
		if m.View != p.view || p.halved || m.Axis != schematic.Horizontal || m.Name != "waist" && m.Name != "hip" {
			continue
		}
		a, b := p.spot(m.A), p.spot(m.B)
		around, whole := m.Around, m.Length
		if l, r := t.inFront(a.Y); !around && p.face == front && absf(r-l-dist(a, b)) > 0.5 {
			continue // one of two fronts
		}
		if l, r := t.across(a.Y); !around && absf(r-l-dist(a, b)) < 0.5 && t.around(a.Y, l, r) {
			around, whole = true, m.Length.Times(2)
		}
		tk.take(m.Name, a, b, schematic.Horizontal, around, whole)
	}
}

// skirtOfPieces reports whether a trunk is that of a skirt with a front before its back.
func (a *assembly) skirtOfPieces(t *trunk) bool { return t != nil && a.faced() && t.fromWaist() }

// skirtOfPieces measures a skirt of fronts and backs: its waist, below its band, and its hem.
func (tk *taker) skirtOfPieces(t *trunk) {
	for _, e := range []struct {
		name string
		y    float64
	}{{"waist", t.panelsTop()}, {"hem", t.hem}} {
		if e.name == "hem" && tk.crotch(t) {
			continue
		}
		l, r := pt{X: math.Inf(1), Y: e.y}, pt{X: math.Inf(-1), Y: e.y}
		for _, p := range t.panels {
			pl, pr := p.level(e.y, 0)
			l.X, r.X = min(l.X, pl.X), max(r.X, pr.X)
		}
		if !tk.unlike(t, e.name, e.y, l.X, r.X) {
			tk.take(e.name, l, r, schematic.Horizontal, t.around(e.y, l.X, r.X), units.Num{})
		}
		for _, p := range t.panels {
			tk.shaped(t, p)
		}
		tk.wrapped(t, e.name, e.y)
	}
}

// wrapped measures the front that is wrapped over the other, at a height.
func (tk *taker) wrapped(t *trunk, name string, y float64) {
	for _, p := range t.panels {
		if l, r := p.level(y, 0); p.face == front && sideWord(p.name) == "right" && t.wraps() {
			tk.take("front "+name, l, r, schematic.Horizontal, false, units.Num{})
		}
	}
}

// wraps reports whether two fronts lie on each other by more than a band.
func (t *trunk) wraps() bool {
	var fronts []*panel
	for _, p := range t.panels {
		if p.face == front {
			fronts = append(fronts, p)
		}
	}
	return len(fronts) == 2 && common(points(fronts[0].drawn), points(fronts[1].drawn)) > mostClash
}

// panelsTop is how far up the panels reach, without bands.
func (t *trunk) panelsTop() float64 {
	y := math.Inf(-1)
	for _, p := range t.panels {
		_, hi := box(p.drawn)
		y = max(y, hi.Y)
	}
	return y
}

// fromWaist reports whether the trunk is a skirt of fronts and backs: all of them end above in an edge that is their waist.
func (t *trunk) fromWaist() bool {
	return t.kind == "" && !slices.ContainsFunc(t.panels, func(p *panel) bool {
		_, hi := box(p.drawn)
		return p.made.Kind != schematic.KindSkirt && !slices.ContainsFunc(p.drawn, func(s side) bool {
			return strings.EqualFold(s.name, "waist") && absf(s.a.Y-hi.Y) < close
		})
	})
}

// cape reports whether the trunk hangs from the shoulders, without arms, and narrows from its lower edge to the neck.
func (t *trunk) cape() bool {
	l, r := t.across(t.top - 1)
	hl, hr := t.across(t.hem + 1)
	return t.kind == "" && r-l < 0.7*(hr-hl) && !slices.ContainsFunc(t.panels, func(p *panel) bool {
		lo, hi := box(p.drawn)
		return hi.X-lo.X > muchWider*(hr-hl) // to its cuffs
	})
}

// lower measures the lower edge, unless it is as wide as the bust, or that of legs.
func (tk *taker) lower(t *trunk) {
	if tk.legs(t) {
		return
	}
	l, r := t.across(t.under)
	hl, hr := t.across(t.hem + 1)
	if tk.crotch(t) {
		return
	}
	if l >= r || absf(hr-hl-(r-l)) > 1 {
		tk.girth(t, "hem", "hem", t.hem+1, t.hem)
	}
}

// sewnBelow is the name of the lower edge of a front that is sewn to that of the back, such as a crotch; none if the edge is open.
func (t *trunk) sewnBelow() string {
	for _, p := range t.panels {
		for i, s := range p.drawn {
			if low := p.lowest(); p.face == front && p.hosts == nil && !s.taken && absf(s.a.Y-low) < close && absf(p.drawn[(i+1)%len(p.drawn)].a.Y-low) < close && joinOf(s) != "" {
				return s.name
			}
		}
	}
	return ""
}

// crotch measures a front and a back that are sewn to each other below, between the legs: how wide that is, and a leg's opening around. It reports
// whether they are.
func (tk *taker) crotch(t *trunk) bool {
	name := t.sewnBelow()
	if name == "" {
		return false
	}
	if l, r := t.across(t.hem + 1); t.kind != "" && absf(r-l-t.wide()) < 1 {
		return true // a bag: the bust is as wide
	}
	for _, p := range t.panels {
		if p.face != front {
			continue
		}
		low := p.lowest()
		l, r := p.level(low, 0.01)
		tk.take(name, l, r, schematic.Horizontal, false, units.Num{})
		for i, s := range p.drawn {
			next := p.drawn[(i+1)%len(p.drawn)]
			if joinOf(s) != "" || absf(s.a.Y-low) > close || next.a.Y < s.a.Y+1 {
				continue
			}
			if absf(low-t.hem) < close && joinOf(next) != "" { // straight up to the side seam, and the back as the front
				tk.take("leg opening", s.a, next.a, schematic.Slanted, tk.a.faced(), units.Num{})
				tk.girth(t, "hip", "", next.a.Y+0.5, next.a.Y)
			}
		}
	}
	if !tk.seen["leg opening"] {
		tk.legOpening(t)
	}
	return true
}

// legOpening tells how far a leg's opening goes around, along the front and the back, where no line of the picture is as long.
func (tk *taker) legOpening(t *trunk) {
	long := map[face]float64{}
	for _, p := range t.panels {
		_, r := p.level(p.lowest(), 0.01)
		n := len(p.drawn)
		at := slices.IndexFunc(p.drawn, func(s side) bool { return near(s.a, r) })
		for k := 0; at >= 0 && k < n && joinOf(p.drawn[(at+k)%n]) == ""; k++ {
			long[p.face] += dist(p.drawn[(at+k)%n].a, p.drawn[(at+k+1)%n].a)
		}
	}
	if long[front] > 1 && long[back] > 1 {
		tk.under("leg opening", schematic.Measure{Axis: schematic.Slanted, Length: tk.exact(long[front] + long[back]), Around: true})
	}
}

// wide is how wide the trunk is at the underarm.
func (t *trunk) wide() float64 {
	l, r := t.across(t.under)
	return r - l
}

// legs measures a body whose lower edge is that of two legs: one of them around, and how long it is inside. It reports
// whether there are any.
func (tk *taker) legs(t *trunk) bool {
	for _, p := range t.panels {
		loop := points(p.drawn)
		x := across(loop, t.hem+1)
		if p.face != front || len(x) != 4 {
			continue
		}
		crotch := math.Inf(1)
		for _, q := range loop {
			if q.X > x[1]-close && q.X < x[2]+close && q.Y > t.hem+1 {
				crotch = min(crotch, q.Y)
			}
		}
		for _, q := range loop { // the place above the gap that is not on its sides' steps
			if q.X > x[1]-close && q.X < x[2]+close && len(across(loop, q.Y-0.5)) == 4 {
				crotch = max(crotch, q.Y)
			}
		}
		tk.take("leg", pt{X: x[0], Y: t.hem}, pt{X: x[1], Y: t.hem}, schematic.Horizontal, tk.a.faced(), units.Num{})
		tk.take("inside leg", pt{X: x[2], Y: t.hem}, pt{X: x[2], Y: crotch}, schematic.Vertical, false, units.Num{})
		return true
	}
	return false
}

// bib measures what stands above the waist of a front with legs: how wide and how high it is, and the waist around.
func (tk *taker) bib(t *trunk) {
	for _, p := range t.panels {
		if p.face != front {
			continue
		}
		loop := points(p.drawn)
		for i, s := range p.drawn {
			z := p.drawn[(i+1)%len(p.drawn)].a
			if absf(s.a.Y-z.Y) > close || s.a.Y < t.hem+1 || s.a.Y > t.top-1 || s.a.X < p.mid() || len(across(loop, s.a.Y-1)) != 2 {
				continue // the level step at the waist, on the right
			}
			tk.girth(t, "waist", "waist", s.a.Y-1, s.a.Y)
			l, r := p.level(t.top, -0.01)
			tk.take("bib width", l, r, schematic.Horizontal, false, units.Num{})
			tk.take("bib height", pt{X: min(s.a.X, z.X), Y: s.a.Y}, r, schematic.Vertical, false, units.Num{})
			return
		}
	}
}

// slits measures the sides that are left open below the seams, such as those of a tunic.
func (tk *taker) slits(t *trunk) {
	for _, p := range t.panels {
		for i, s := range p.drawn {
			z := p.drawn[(i+1)%len(p.drawn)].a
			if p.face != either && strings.Contains(strings.ToLower(s.name), "slit") && z.Y > s.a.Y+1 && absf(s.a.Y-p.lowest()) < close {
				name := s.name
				if p.face == back && tk.seen[name] {
					name = "back " + name
				}
				tk.take(name, s.a, z, schematic.Vertical, false, units.Num{})
			}
		}
	}
}

func (p *panel) lowest() float64 {
	lo, _ := box(p.drawn)
	return lo.Y
}

// muchWider is how many times as wide as its hem a body is that has its sleeves worked with it.
const muchWider = 1.25

// ofOneWithSleeves measures a body whose sleeves are worked with it: from cuff to cuff, a cuff, and the body below the
// sleeves.
func (tk *taker) ofOneWithSleeves(t *trunk) {
	l, r := t.across(t.hem + 1)
	for _, p := range t.panels {
		lo, hi := box(p.drawn)
		if p.face == either || hi.X-lo.X < muchWider*(r-l) || !t.spannedBy(p) { // one of two fronts does not reach from cuff to cuff
			continue
		}
		low, high := pt{X: lo.X, Y: math.Inf(1)}, pt{X: lo.X, Y: math.Inf(-1)} // of the left end
		for _, s := range p.drawn {
			if absf(s.a.X-lo.X) < close {
				low.Y, high.Y = min(low.Y, s.a.Y), max(high.Y, s.a.Y)
			}
		}
		left, right := lo.X, hi.X
		for _, b := range tk.a.placed { // with its bands
			if l, h := box(b.drawn); b.strip && l.Y > low.Y-1 && h.Y < high.Y+1 {
				left, right = min(left, l.X), max(right, h.X)
			}
		}
		tk.take("cuff to cuff", pt{X: left, Y: high.Y}, pt{X: right, Y: high.Y}, schematic.Horizontal, false, units.Num{})
		tk.take("cuff", low, high, schematic.Vertical, tk.a.faced(), units.Num{})
		if under := p.underarm(t.hem); under != (pt{}) {
			tk.take("body to underarm", pt{X: r, Y: t.low}, under, schematic.Vertical, false, units.Num{})
			if top := p.above(under); absf(top-under.Y-(high.Y-low.Y)) > onEdge/2 { // it narrows to its cuff, and by more than the row by which bind-offs stagger
				tk.take("upper arm", under, pt{X: under.X, Y: top}, schematic.Vertical, tk.a.faced(), units.Num{})
			}
		}
		return
	}
}

// spannedBy reports whether a panel reaches as far to both sides as all of them.
func (t *trunk) spannedBy(p *panel) bool {
	lo, hi := box(p.drawn)
	return !slices.ContainsFunc(t.panels, func(o *panel) bool {
		l, h := box(o.drawn)
		return l.X < lo.X-1 || h.X > hi.X+1
	})
}

// underarm is where the right side of a body turns outwards, level, into a sleeve that is worked with it; none where the side leans
// into the sleeve.
func (p *panel) underarm(hem float64) pt {
	at := -1
	for i, s := range p.drawn {
		if absf(s.a.Y-hem) < 1 && (at < 0 || s.a.X > p.drawn[at].a.X) {
			at = i
		}
	}
	var best, found = 0.0, pt{}
	for n := len(p.drawn); at >= 0; at++ {
		a, z := p.drawn[at%n].a, p.drawn[(at+1)%n].a
		d := sub(z, a)
		if d.X < 0 || d.Y < -close {
			break
		}
		if d.X > 3*d.Y && d.X > best && a.Y > hem+1 { // the longest: a rib steps too
			best, found = d.X, a
		}
	}
	return found
}

// above is how far up the panel reaches over a place of its edge.
func (p *panel) above(q pt) float64 {
	y := q.Y
	for i, s := range p.drawn {
		z := p.drawn[(i+1)%len(p.drawn)].a
		if lo, hi := min(s.a.X, z.X), max(s.a.X, z.X); lo <= q.X && q.X <= hi && lo < hi {
			y = max(y, lerp(s.a, z, (q.X-s.a.X)/(z.X-s.a.X)).Y)
		}
	}
	return y
}

// bordered reports whether a band lies all round the one panel that there is.
func (a *assembly) bordered() bool {
	return len(a.placed) == 2 && a.placed[1].strip && !slices.ContainsFunc(a.placed[0].drawn, func(s side) bool { return !s.taken })
}

// span measures what is no garment with a body, such as a shawl: from tip to tip, how deep it is, and the lines between its
// panels; a rectangle has a width and a length.
func (tk *taker) span() {
	var all []pt
	fabric := 0.0
	for _, p := range tk.a.placed {
		all = append(all, points(p.drawn)...)
		fabric += area(points(p.drawn))
	}
	lo, hi := bounds([][]pt{all})
	across, down := "wingspan", "depth"
	if whole := (hi.X - lo.X) * (hi.Y - lo.Y); fabric > 0.97*whole {
		across, down = "width", "length"
	}
	byX := func(a, b pt) int { return cmp.Compare(a.X, b.X) }
	byY := func(a, b pt) int { return cmp.Compare(a.Y, b.Y) }
	tk.take(across, slices.MinFunc(all, byX), slices.MaxFunc(all, byX), schematic.Horizontal, false, units.Num{})
	if !tk.uprightSpine(hi.Y - lo.Y) {
		tk.take(down, slices.MinFunc(all, byY), slices.MaxFunc(all, byY), schematic.Vertical, false, units.Num{})
	}
	for _, p := range tk.a.placed {
		for i, s := range p.drawn {
			if down == "length" {
				break // its other sides are as long
			}
			name := s.name
			if name == "line" {
				name = "line between the panels"
			}
			if !s.taken || name == "" {
				continue
			}
			if a, z := p.wholeOf(i); name == "spine" || absf(a.X-z.X) > close || dist(a, z) < 0.95*(hi.Y-lo.Y) { // or as long as it is deep
				tk.take(name, a, z, schematic.Slanted, false, units.Num{})
			}
		}
	}
	tk.seen["length"] = true // the panels' own measurements say how they are worked
}

// uprightSpine reports whether a spine is as long as all of a shawl is deep: one of the two says enough.
func (tk *taker) uprightSpine(deep float64) bool {
	for _, p := range tk.a.placed {
		for i, s := range p.drawn {
			if s.taken && s.name == "spine" {
				if a, z := p.wholeOf(i); absf(a.X-z.X) < close && dist(a, z) > deep-close {
					return true
				}
			}
		}
	}
	return false
}

// wholeOf is the straight way along all sides of the name of side i, on which others lie.
func (p *panel) wholeOf(i int) (a, z pt) {
	n := len(p.drawn)
	goesOn := func(j int) bool {
		s := p.drawn[(j+n)%n]
		return s.taken && s.name == p.drawn[i].name
	}
	from, to := i, i+1
	for k := 0; k < n && goesOn(from-1); k++ {
		from--
	}
	for k := 0; k < n && goesOn(to); k++ {
		to++
	}
	return p.drawn[(from+n)%n].a, p.drawn[to%n].a
}

// outside measures what hangs from a round, such as a poncho with its hood: its edges as they lie, and its length.
func (tk *taker) outside(root *panel) {
	lo, hi := box(root.drawn)
	lowest := root
	for _, p := range tk.a.placed { // a tier hangs from it
		if l, _ := box(p.drawn); p.hung && p.made.Round && !p.strip && l.Y < lo.Y-1 {
			lowest, lo = p, l
		}
	}
	l, r := lowest.level(lo.Y, 0.01)
	tl, tr := root.level(hi.Y, -0.01)
	tk.levelEdge(lowest, "hem", l, r)
	if absf(dist(l, r)-dist(tl, tr)) > 1 {
		upper := "upper edge"
		switch root.made.Kind {
		case schematic.KindBody:
			upper = tk.bust()
		case schematic.KindPoncho:
			upper = "neck edge"
		}
		tk.levelEdge(root, upper, tl, tr)
	}
	tk.named(root, "hip")
	top := hi.Y
	for _, p := range tk.a.placed { // a waistband is a part of the length
		if _, h := box(p.drawn); p.strip && root.made.Kind == schematic.KindSkirt {
			top = max(top, h.Y)
		}
	}
	tk.take("length", pt{X: lo.X, Y: lo.Y}, pt{X: tl.X, Y: top}, schematic.Vertical, false, units.Num{})
	for _, p := range tk.a.placed {
		pl, ph := box(p.drawn)
		switch {
		case p == root || p.strip || !p.hung || p.where.sin != 0 || p.made.Kind == schematic.KindBand && len(p.hosts) == 0: // a strap
		case p.made.Round && ph.Y < hi.Y-close:
			tk.take(strings.ToLower(p.made.Name)+" length", pt{X: ph.X, Y: pl.Y}, pt{X: max(p.seam[0].X, p.seam[1].X), Y: max(p.seam[0].Y, p.seam[1].Y)}, schematic.Vertical, false, units.Num{})
		default:
			tk.upright(p)
		}
		if l, h := box(p.drawn); p.strip && l.Y > hi.Y-close && root.made.Kind != schematic.KindSkirt { // such as a cowl
			tk.take(tk.standing(p)+" height", pt{X: h.X, Y: l.Y}, h, schematic.Vertical, false, units.Num{})
		}
	}
}

// standing is what something that stands on the rest is called: the rows of a poncho before its panels are its neck.
func (tk *taker) standing(p *panel) string {
	if root := tk.a.placed[0]; p != root && p.made == root.made && p.made.Kind == schematic.KindPoncho {
		return "neck"
	}
	return strings.ToLower(p.made.Name)
}

// level is from where to where a panel reaches along its edge at a height: to its very corners.
func (p *panel) level(y, by float64) (l, r pt) {
	l, r = pt{X: math.Inf(1), Y: y}, pt{X: math.Inf(-1), Y: y}
	for _, s := range p.drawn {
		if absf(s.a.Y-y) < close {
			l.X, r.X = min(l.X, s.a.X), max(r.X, s.a.X)
		}
	}
	if l.X < r.X {
		return l, r
	}
	l.X, r.X = p.mid(), p.mid()
	if x := across(points(p.drawn), y+by); len(x) > 1 {
		l.X, r.X = x[0], x[len(x)-1]
	}
	return l, r
}

// levelEdge measures a level edge, by its own name if it is the waist or the neck.
func (tk *taker) levelEdge(p *panel, name string, l, r pt) {
	for _, own := range []string{"waist", "neck"} {
		if slices.ContainsFunc(p.drawn, func(s side) bool { return s.name == own && absf(s.a.Y-l.Y) < close }) {
			name = own
		}
	}
	tk.take(name, l, r, schematic.Horizontal, p.made.Round || p.closed, units.Num{})
}

// below are the panels that hang upright from the lower edge of what stands first, such as legs, from the left.
func (a *assembly) below(root *panel) []*panel {
	lo, _ := box(root.drawn)
	var out []*panel
	for _, p := range a.placed {
		if _, hi := box(p.drawn); p.hung && !p.strip && (p.made.Kind == schematic.KindPiece || p.leg) && p.where.sin == 0 && slices.Contains(p.hosts, root) && hi.Y < lo.Y+1 {
			out = append(out, p)
		}
	}
	slices.SortFunc(out, func(x, y *panel) int { return cmp.Compare(x.where.by.X, y.where.by.X) })
	return out
}

// limbs measures a body with what hangs from its lower edge: all of it, the body, and one of the others, from its inner side if it has one.
func (tk *taker) limbs(root *panel) {
	list := tk.a.below(root)
	p := list[0]
	lo, rh := box(root.drawn)
	left := lo.X
	for _, q := range list {
		l, _ := box(tk.a.tail(q).drawn)
		lo = pt{X: min(lo.X, l.X), Y: min(lo.Y, l.Y)}
	}
	foot, _ := tk.a.tail(p).level(lo.Y, 0.01)
	tk.take("length", foot, pt{X: left, Y: tk.bibs(root, rh.Y)}, schematic.Vertical, false, units.Num{})
	named := func(name string) bool {
		return slices.ContainsFunc(root.made.Measures, func(m schematic.Measure) bool { return m.Name == name })
	}
	back := "body length"
	if named("front length") { // short rows make the back longer
		back = "back length"
	}
	l, h := box(p.drawn)
	leg := p.limb()
	name := leg
	inner := pt{X: h.X, Y: h.Y}
	if len(list) > 1 {
		name = "inside " + name
		p = list[len(list)-1]
		l, h = box(p.drawn)
		if inner.X = l.X; list[len(list)-2].reaches(inner.X) { // its inner side meets that of the other: as long is its outer one
			inner.X = h.X
		}
	} else {
		name += " length"
	}
	top := pt{X: p.corner(inner.X, h.Y), Y: h.Y}
	p = tk.a.tail(p)
	l, _ = box(p.drawn)
	tk.take(name, pt{X: p.corner(inner.X, l.Y), Y: l.Y}, top, schematic.Vertical, false, units.Num{})
	if p.leg && p.halved { // folded: what shows is half of it
		l, r := p.level(l.Y, 0.01)
		i := slices.IndexFunc(p.drawn, func(s side) bool { return near(s.a, l) })
		tk.take(leg+" "+cmp.Or(strings.ToLower(p.drawn[i].name), "cuff"), l, r, schematic.Horizontal, true, units.Num{})
	}
	for _, m := range p.made.Measures {
		switch name := leg + " " + p.edgeOf(m); {
		case p.leg && p.halved:
		case m.View != p.view || !m.Main || m.Axis != schematic.Horizontal:
		case p.holds(m.A, m.B):
			tk.take(name, p.spot(m.A), p.spot(m.B), m.Axis, m.Around, m.Length)
		case p.parted: // some of it lies behind its twin
			tk.under(name, schematic.Measure{Axis: m.Axis, Length: m.Length, Around: m.Around})
		}
	}
	tk.ofBody(root, back, rh.Y)
	tk.seen["length"] = true
}

// ofBody measures what legs, or others, hang from, by its own measurements: its length under one name.
func (tk *taker) ofBody(root *panel, length string, top float64) {
	named := func(name string) bool {
		return slices.ContainsFunc(root.made.Measures, func(m schematic.Measure) bool { return m.Name == name })
	}
	lo, _ := box(root.loop)
	bottom, legs := bottomOf(root.drawn), tk.a.hasLegs(root)
	for _, m := range root.made.Measures {
		name := root.edgeOf(m)
		m, ok := root.withoutTurned(m)
		if !ok || m.View != root.view || !m.Main || !root.holds(m.A, m.B) || root.acrossSlit(m.A, m.B) || legs && !m.Around && min(m.A.Y, m.B.Y) < lo.Y+close {
			continue
		}
		y := root.spot(m.A).Y
		switch wide := m.Axis == schematic.Horizontal; {
		case name == "length":
			name = length
		case legs && wide && strings.HasPrefix(name, "width") && absf(y-top) < 1:
			name = "waist"
		case legs && wide && strings.HasPrefix(name, "width"), wide && !named("hip") && absf(y-bottom) < 1: // the legs hang from it
			name = "hip"
		}
		tk.take(name, root.spot(m.A), root.spot(m.B), m.Axis, m.Around, m.Length)
	}
}

// bibs measures what faces front and stands on what legs hang from, and is how high all of it reaches.
func (tk *taker) bibs(root *panel, top float64) float64 {
	for _, q := range tk.a.placed {
		if _, h := box(q.drawn); q.face == front && q.hung && slices.Contains(q.hosts, root) && !q.strip && h.Y > top {
			top = h.Y
			tk.upright(q)
		}
	}
	return top
}

// reaches reports whether the panel reaches as far to the right as x.
func (p *panel) reaches(x float64) bool {
	_, hi := box(p.drawn)
	return hi.X > x-1
}

// corner is the x of the place at a height that lies nearest to x.
func (p *panel) corner(x, y float64) float64 {
	best, at := math.Inf(1), x
	for _, s := range p.drawn {
		if d := absf(s.a.X - x); absf(s.a.Y-y) < close && d < best {
			best, at = d, s.a.X
		}
	}
	return at
}

// limb is what something that hangs from a body is called, whichever side it is of.
func (p *panel) limb() string {
	if !p.leg {
		return strings.ToLower(p.made.Name)
	}
	words := strings.Fields(strings.ToLower(p.name))
	if one := slices.DeleteFunc(slices.Clone(words), func(w string) bool { return w == "left" || w == "right" }); len(one) > 0 {
		words = one
	}
	return strings.Join(words, " ")
}

// edgeOf is what a measurement of a panel is called: a width by the name of the edge along which it is, if that is one of the body.
func (p *panel) edgeOf(m schematic.Measure) string {
	if !strings.HasPrefix(m.Name, "width at ") {
		return m.Name
	}
	for _, s := range p.drawn {
		if slices.Contains([]string{"waist", "hem", "cuff", "neck"}, s.name) && absf(s.a.Y-p.spot(m.A).Y) < close {
			return s.name
		}
	}
	return m.Name
}

// leastStep is how much wider, in mm, the edge on which a panel stands is than the panel itself, where it is not its own: a choice of this project.
const leastStep = 5

// itself is how far a panel reaches to the left and right between two heights, its ends left out.
func (p *panel) itself(low, high float64) (l, r float64) {
	l, r = math.Inf(1), math.Inf(-1)
	for _, y := range []float64{low + 0.5, (low + high) / 2, high - 0.5} {
		if x := across(points(p.drawn), y); len(x) > 1 {
			l, r = min(l, x[0]), max(r, x[len(x)-1])
		}
	}
	return l, r
}

// upright measures what stands on another panel, such as a hood.
func (tk *taker) upright(p *panel) {
	l, h := box(p.drawn)
	name := tk.standing(p)
	tk.take(name+" height", pt{X: h.X, Y: l.Y}, pt{X: h.X, Y: h.Y}, schematic.Vertical, false, units.Num{})
	left, right := pt{X: l.X, Y: h.Y}, pt{X: h.X, Y: h.Y}
	if a, b := p.itself(l.Y, h.Y); p.made.Kind != schematic.KindHood && h.X-l.X > b-a+leastStep { // the edge that it is sewn to is wider
		left.X, right.X = a, b
	}
	tk.take(name+" width", left, right, schematic.Horizontal, false, units.Num{})
}

// hoods measures what stands on a neck.
func (tk *taker) hoods() {
	for _, p := range tk.a.placed {
		if p.shares() && p.hung && p.made.Kind != schematic.KindYoke && len(p.ribs) > 0 { // such as a roll neck
			lo, hi := box(p.drawn)
			tk.take(strings.ToLower(p.made.Name)+" height", pt{X: hi.X, Y: lo.Y}, hi, schematic.Vertical, false, units.Num{})
		}
		if lo, hi := box(p.drawn); p.made.Round && p.hung && !p.shares() && p.where.sin == 0 && slices.Contains(p.onto, "neck") && hi.Y > p.seam[0].Y+close && lo.Y < hi.Y { // a cowl
			tk.take(strings.ToLower(p.made.Name)+" height", pt{X: hi.X, Y: p.seam[0].Y}, hi, schematic.Vertical, false, units.Num{})
		}
		if p.face == either && p.halved && p.hung && p.made.Kind != schematic.KindSleeve && p.where.sin == 0 && !p.isStrap() {
			tk.upright(p)
			lo, hi := box(p.drawn)
			for i := range tk.out { // it stands on them
				if m := &tk.out[i]; m.Name == "neck width" || m.Name == "shoulder" && max(m.A.X, m.B.X) > lo.X && min(m.A.X, m.B.X) < hi.X {
					m.View = schematic.NoView
				}
			}
		}
	}
}

// isVessel reports whether it is a bag, or what else pieces hang from, or stands on a base.
func (a *assembly) isVessel(root *panel) bool {
	return holds[root.made.Kind] || slices.ContainsFunc(a.placed, func(p *panel) bool { return p.disc })
}

// holder measures a bag, or what else pieces hang from, and then them.
func (tk *taker) holder(root *panel) {
	switch {
	case root.gusset:
		tk.gusset(root)
	case root.made.Kind == schematic.KindBag, root.made.Kind == schematic.KindPiece:
		tk.bag(root)
	case root.heel != (pt{}):
		tk.sock(root)
	default:
		tk.own(root)
	}
	for _, p := range tk.a.placed {
		l, h := box(p.drawn)
		name := strings.ToLower(p.made.Name)
		switch {
		case p.disc:
			y := (l.Y + h.Y) / 2
			tk.take("base width", pt{X: l.X, Y: y}, pt{X: h.X, Y: y}, schematic.Horizontal, false, units.Num{})
		case p.drop != p.foot:
			tk.take(name+" drop", p.foot, p.drop, schematic.Vertical, false, units.Num{})
		case p.over != nil && p.name == "flap":
			tk.take("flap depth", pt{X: h.X, Y: l.Y}, h, schematic.Vertical, false, units.Num{})
		case p.over != nil && p.where.sin == 0:
			tk.take(name+" length", pt{X: h.X, Y: l.Y}, pt{X: h.X, Y: h.Y}, schematic.Vertical, false, units.Num{})
			tk.take(name+" width", pt{X: l.X, Y: h.Y}, pt{X: h.X, Y: h.Y}, schematic.Horizontal, p.made.Round, units.Num{})
		}
	}
	tk.seen["length"] = true
}

// bag measures the sides of a bag: its opening, how far it is around at its lower edge, and its height.
func (tk *taker) bag(root *panel) {
	var corners []pt
	lo, hi := box(root.drawn)
	level := func(y float64) (l, r pt) {
		corners = corners[:0]
		for _, s := range root.drawn {
			if absf(s.a.Y-y) < close {
				corners = append(corners, s.a)
			}
		}
		byX := func(a, b pt) int { return cmp.Compare(a.X, b.X) }
		return slices.MinFunc(corners, byX), slices.MaxFunc(corners, byX)
	}
	l, r := level(hi.Y)
	tk.take("opening", l, r, schematic.Horizontal, root.made.Round, units.Num{})
	left, right := level(lo.Y)
	if absf(dist(l, r)-dist(left, right)) > 1 {
		tk.take("around at base", left, right, schematic.Horizontal, root.made.Round, units.Num{})
	}
	tk.take("height", left, l, schematic.Vertical, false, units.Num{})
}

// sleeve measures the sleeve at the left.
func (tk *taker) sleeve() {
	var p *panel
	for _, q := range tk.a.placed {
		if q.made.Kind == schematic.KindSleeve && q.hung && !q.strap && (p == nil || q.where.by.X < p.where.by.X) {
			p = q
		}
	}
	if p == nil {
		return
	}
	lo, _ := box(p.loop)
	under := min(p.own[0].Y, p.own[1].Y)
	arm, wider := p.across("upper arm")
	cuff, ok := p.across("cuff")
	if ok && !wider && p.straight(lo.Y, under) {
		arm, wider = cuff, true
		arm.A.Y, arm.B.Y = under, under
	}
	if wider {
		tk.half(p, "upper arm", arm)
	}
	if ok && !(wider && arm.Length.Eq(cuff.Length)) { // a straight sleeve has one width
		tk.half(p, "cuff", cuff)
	}
	x := tk.outer(p)
	tk.take("sleeve to underarm", p.where.at(pt{X: x, Y: lo.Y}), p.where.at(pt{X: x, Y: under}), schematic.Slanted, false, units.Num{})
}

// outer is the upright, in a sleeve's own measure, along its outer side at the cuff.
func (tk *taker) outer(p *panel) float64 {
	lo, hi := box(p.loop)
	x := across(points(p.loop), lo.Y+0.5)
	l, r := lo.X, hi.X
	if len(x) > 1 {
		l, r = x[0], x[len(x)-1]
	}
	if p.halved {
		if l, r := lo.X, hi.X; p.foldAt(l) {
			return l
		} else {
			return r
		}
	}
	if p.where.at(pt{X: l}).Y > p.where.at(pt{X: r}).Y {
		return lo.X // where it is widest, so that the line is clear of the sleeve
	}
	return hi.X
}

func (p *panel) foldAt(x float64) bool {
	n := 0.0
	for i, s := range p.loop {
		if z := p.loop[(i+1)%len(p.loop)].a; s.fold && absf(s.a.X-x) < close && absf(z.X-x) < close {
			n += dist(s.a, z)
		}
	}
	return n > 1
}

// spot is where a place of a piece as it is worked comes to lie.
func (p *panel) spot(q pt) pt {
	if p.flip {
		q.X = -q.X
	}
	return p.where.at(q)
}

// isNeckWidth reports whether a measurement with this name is the width of a neck, front or back, and not half of one.
func isNeckWidth(name string) bool {
	if edge, ok := strings.CutPrefix(name, "width of "); ok {
		return slices.Contains([]string{"neck", "front neck", "back neck"}, edge)
	}
	return strings.HasSuffix(name, "neck width") && !strings.HasPrefix(name, "half")
}

// neckAlong reports whether a level measurement is that of an edge called a neck.
func (p *panel) neckAlong(m schematic.Measure) bool {
	for i, s := range p.loop {
		z := p.loop[(i+1)%len(p.loop)].a
		if strings.Contains(s.name, "neck") && absf(s.a.Y-m.A.Y) < close && absf(absf(s.a.X-z.X)-absf(m.A.X-m.B.X)) < close {
			return true
		}
	}
	return false
}

// named takes measurements of a panel that its piece has by these names.
func (tk *taker) named(p *panel, names ...string) {
	for _, want := range names {
		for _, m := range p.made.Measures {
			name := m.Name
			if m.View != p.view || name != want && !p.alsoCalled(want, m) {
				continue
			}
			if p.shares() || p.halved && !p.holds(m.A, m.B) || want == "neck width" && !p.spansMiddle(m) {
				continue
			}
			tk.take(want, p.spot(m.A), p.spot(m.B), m.Axis, m.Around, m.Length)
		}
	}
}

// spansMiddle reports whether a width goes across the middle of a panel: a half of a neck, beside an opening, is no neck's width.
func (p *panel) spansMiddle(m schematic.Measure) bool {
	x := p.middle()
	if p.flip {
		x = -x
	}
	return min(m.A.X, m.B.X) < x && x < max(m.A.X, m.B.X)
}

// alsoCalled reports whether a measurement is what the trade calls otherwise: a neck's width by its edge, or its depth where one piece is made for
// front and back.
func (p *panel) alsoCalled(want string, m schematic.Measure) bool {
	switch want {
	case "neck width":
		return isNeckWidth(m.Name) || m.Name == "width at top" && p.neckAlong(m)
	case "front neck depth":
		return p.face == front && m.Name == "height of front neck"
	case "neck depth":
		return p.face == front && m.Name == "back neck depth"
	}
	return false
}

// holds reports whether the ends of a measurement lie in what shows of the panel.
func (p *panel) holds(a, b pt) bool {
	lo, hi := box(p.loop)
	return a.X >= lo.X-close && b.X <= hi.X+close && min(a.X, b.X) >= lo.X-close && max(a.X, b.X) <= hi.X+close
}

// across is the width of a panel that its piece has by this name.
func (p *panel) across(name string) (schematic.Measure, bool) {
	i := slices.IndexFunc(p.made.Measures, func(m schematic.Measure) bool {
		return m.Name == name && m.View == p.view && m.Axis == schematic.Horizontal
	})
	if i < 0 {
		return schematic.Measure{}, false
	}
	return p.made.Measures[i], true
}

// straight reports whether a panel, as it is worked, is as wide at its lower end as at its underarm.
func (p *panel) straight(low, under float64) bool {
	x, z := across(points(p.loop), low+0.5), across(points(p.loop), under-0.5)
	return under > low+1 && len(x) == 2 && len(z) == 2 && absf(x[1]-x[0]-(z[1]-z[0])) < close
}

// half takes a width of a piece of which a half shows.
func (tk *taker) half(p *panel, name string, m schematic.Measure) {
	a, b := m.A, m.B
	if !m.Around {
		lo, hi := box(p.loop)
		a.X, b.X = max(a.X, lo.X), min(b.X, hi.X)
		if p.axis != 0 {
			w := m.Length.Half().Float()
			a.X, b.X = p.axis-w/2, p.axis+w/2
		}
	}
	if from, to, ok := tk.clearOfBody(p, p.spot(a), p.spot(b)); ok {
		tk.take(name, from, to, schematic.Slanted, true, m.Length)
	} else {
		tk.under(name, schematic.Measure{Axis: schematic.Slanted, Length: m.Length, Around: true})
	}
}

// mostOff is how far from the edge of a sleeve its width may end, mm, where it is moved to.
const mostOff = 25.0

// clearOfBody moves a width of a sleeve towards its cuff until neither end of it lies on the body, which hides the underarm of a sleeve that hangs
// steeply: as long as before, and where no line of the body comes in its way. It reports whether the sleeve is as wide there.
func (tk *taker) clearOfBody(p *panel, a, b pt) (from, to pt, ok bool) {
	const step, beside = 2.0, 14.0 // mm
	lo, hi := box(p.loop)
	down := p.where.turn(pt{Y: -step})
	hidden := func(q pt) bool {
		return slices.ContainsFunc(tk.a.placed, func(o *panel) bool { return isTrunk(o) && !o.strip && o.face != back && covers(points(o.drawn), q) })
	}
	onBody := func(q pt) bool {
		return hidden(pt{X: q.X - beside, Y: q.Y}) || hidden(pt{X: q.X + beside, Y: q.Y})
	}
	from, to = a, b
	if !hidden(a) && !hidden(b) {
		return a, b, true
	}
	for moved := 0.0; onBody(from) || onBody(to); moved += step {
		if moved > (hi.Y-lo.Y)/2 {
			return a, b, false
		}
		from, to = add(from, down), add(to, down)
	}
	most := mostOff
	if absf(from.X-to.X) < close { // its line is drawn beside the sleeve, and its extension lines begin there
		most = mostTucked
	}
	off := func(q pt) bool { return distToLoop(points(p.drawn), q) > most }
	return from, to, !off(from) && !off(to)
}

// own takes the measurements of a panel that is no part of a body or sleeve: those that its piece shows.
func (tk *taker) own(p *panel) {
	switch p.made.Kind {
	case schematic.KindSleeve, schematic.KindBand:
		return
	}
	if p.strip || p.hung && p.isStrap() || len(tk.out) > 0 && tk.seen["length"] {
		return
	}
	for _, m := range p.made.Measures {
		if m.View != p.view && !(p.heights && m.Axis == schematic.Horizontal && p.made.Views[m.View].Half) || !m.Main || p.halved || p.acrossSlit(m.A, m.B) || p.toldAsWide(m) {
			continue
		}
		axis := m.Axis
		if p.where.sin != 0 {
			axis = schematic.Slanted
		}
		if m, ok := p.withoutTurned(p.whole(m)); ok {
			tk.take(p.freeEdge(m), p.spot(m.A), p.spot(m.B), axis, m.Around, m.Length)
		}
	}
}

// freeEdge is what a width is called that has a name but for where it is drawn: by the nearest edge that is as wide, if nothing is worked or sewn to that.
func (p *panel) freeEdge(m schematic.Measure) string {
	if !strings.HasSuffix(m.Name, " edge") && m.Name != "width at top" {
		return p.edgeOf(m)
	}
	name, best := "", math.Inf(1)
	from, to := p.spot(m.A), p.spot(m.B)
	for i, s := range p.drawn {
		z, off := p.drawn[(i+1)%len(p.drawn)].a, absf(s.a.Y-from.Y)
		if s.fold || absf(s.a.Y-z.Y) > close || absf(min(s.a.X, z.X)-min(from.X, to.X)) > close || absf(max(s.a.X, z.X)-max(from.X, to.X)) > close || off >= best {
			continue
		}
		if best, name = off, s.name; s.taken {
			name = ""
		}
	}
	return cmp.Or(name, p.edgeOf(m))
}

// withoutTurned is a measurement of a panel without what of it is turned in; not ok if nothing is left that could be drawn.
func (p *panel) withoutTurned(m schematic.Measure) (schematic.Measure, bool) {
	if !p.turned {
		return m, true
	}
	from, to := m.A, m.B
	lo, hi := box(p.loop)
	m.A.Y, m.B.Y = min(max(from.Y, lo.Y), hi.Y), min(max(to.Y, lo.Y), hi.Y)
	l, r := p.level(p.spot(m.A).Y, 0.01)
	switch {
	case near(from, m.A) && near(to, m.B):
	case m.Axis == schematic.Horizontal && absf(dist(l, r)-dist(m.A, m.B)) < 0.5: // as wide at the fold
	case m.Axis != schematic.Vertical:
		return m, false
	default:
		m.Length = units.Num{}
	}
	return m, true
}

// turnedBand measures how deep a band is that is turned in, from its fold to where its stitch or gauge changes, or else as far as it is turned in.
func (tk *taker) turnedBand(p *panel) {
	lo, hi := box(p.drawn)
	for _, s := range p.drawn {
		if !p.turned || p.made.Kind == schematic.KindBag || !slices.ContainsFunc(s.keys, func(k string) bool { return strings.HasPrefix(k, "turned in of ") }) {
			continue
		}
		name, to, best := "hem depth", s.a.Y+p.turnedBy, math.Inf(1)
		if s.a.Y > (lo.Y+hi.Y)/2 {
			name, to = "waistband depth", s.a.Y-p.turnedBy
		}
		for _, l := range p.lines {
			if y := p.where.at(l.A).Y; l.Kind == schematic.LineChange && absf(y-s.a.Y) > 1 && absf(y-s.a.Y) < best {
				best, to = absf(y-s.a.Y), y
			}
		}
		if _, r := p.level(s.a.Y, 0); p.where.sin == 0 {
			tk.take(name, r, pt{X: r.X, Y: to}, schematic.Vertical, false, units.Num{})
		}
	}
}

// toldAsWide reports whether the width of a part is that of its piece, which has a name of the trade.
func (p *panel) toldAsWide(m schematic.Measure) bool {
	return strings.HasPrefix(m.Name, "width of ") && slices.ContainsFunc(p.made.Measures, func(o schematic.Measure) bool {
		return o.View == m.View && o.Axis == m.Axis && o.Main && o.Around == m.Around && !strings.HasPrefix(o.Name, "width ") && o.Length.Eq(m.Length)
	})
}

// acrossSlit reports whether a measurement is that of an opening that something is worked from.
func (p *panel) acrossSlit(a, b pt) bool {
	return slices.ContainsFunc(p.slits, func(s slit) bool { return s.taken && near(s.a, a) && near(s.z, b) })
}

// belowSlope is the height, at most y, below which the sides no longer lean out into sleeves that are worked with the body.
func (t *trunk) belowSlope(y float64) float64 {
	const step = 5.0 // mm
	for at := y; at > t.hem+2*step; at -= step {
		l, r := t.across(at)
		nl, nr := t.across(at - step)
		if (r-l)-(nr-nl) < step { // of both sides: half a mm in one
			return at
		}
	}
	return y
}
