package schematic

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic/units"
)

// named are the heights and widths of the edges that have a name of the trade.
func (w *worker) named(c *canvas, loops [][]drawn) []span {
	var out []span
	for _, l := range loops {
		mid := middle(loops)
		l = beginning(l, func(a, b drawn) bool { return a.seg.name == b.seg.name && a.seg.fold == b.seg.fold })
		n := len(l)
		for i := 0; i < n; {
			j := i + 1
			for j < n && l[j].seg.name == l[i].seg.name && l[j].seg.fold == l[i].seg.fold {
				j++
			}
			if !l[i].seg.fold {
				out = append(out, w.edgeSpans(c, l[i:j], mid, halved(l[(i+n-1)%n], l[i:j], l[j%n]))...)
			}
			i = j
		}
	}
	tellApart(out)
	markTwins(out)
	return out
}

// halved reports whether a run of edge, with what comes before and after it, is one side of a
// neck that the piece has but half of, as a front that opens in the middle: from its lowest point, at
// the opening, it rises to the other end; or it is level and the opening goes down from one of its ends.
func halved(before drawn, run []drawn, after drawn) bool {
	if len(run) == 0 || !run[0].exact || !before.exact || !after.exact {
		return false
	}
	a, b := run[0].ex, run[len(run)-1].ez
	low, high := units.Min(a.y, b.y), units.Max(a.y, b.y)
	least := low
	for _, s := range run {
		least = units.Min(least, units.Min(s.ex.y, s.ez.y))
	}
	down := func(s drawn, far pt) bool {
		return s.ex.x.Eq(s.ez.x) && far.y.Less(low) && !isArmhole(s.seg.name)
	}
	opensA, opensB := down(before, before.ex), down(after, after.ez)
	if a.y.Eq(b.y) {
		return least.Eq(low) && opensA != opensB
	}
	if b.y.Less(a.y) {
		return least.Eq(low) && high.Eq(a.y) && !isArmhole(after.seg.name)
	}
	return least.Eq(low) && high.Eq(b.y) && !isArmhole(before.seg.name)
}

// tellApart names the heights of an edge that is cut in two, as the side of a piece is by a
// dart of short rows: lower and upper, or the first, second … from below.
func tellApart(out []span) {
	type key struct{ name, part, side string }
	groups := map[key][]int{}
	var order []key
	for i, s := range out {
		k := key{s.name, s.part, s.side}
		if s.axis != Vertical {
			continue
		}
		if groups[k] == nil {
			order = append(order, k)
		}
		groups[k] = append(groups[k], i)
	}
	for _, k := range order {
		g := groups[k]
		if len(g) < 2 {
			continue
		}
		slices.SortStableFunc(g, func(a, b int) int { return out[a].lo.y.Cmp(out[b].lo.y) })
		for n, i := range g {
			switch {
			case len(g) > 2:
				out[i].name = fmt.Sprintf("%s %d", k.name, n+1)
			case n == 0:
				out[i].name = "lower " + k.name
			default:
				out[i].name = "upper " + k.name
			}
		}
	}
}

// markTwins shows one of two equal measurements left and right.
func markTwins(out []span) {
	for i := range out {
		for j := range i {
			if out[i].name == out[j].name && out[i].axis == out[j].axis && out[i].length.Eq(out[j].length) && out[j].main {
				out[i].main = false
			}
		}
	}
}

func middle(loops [][]drawn) units.Num {
	lo, hi := loops[0][0].ex.x, loops[0][0].ex.x
	for _, l := range loops {
		for _, s := range l {
			lo, hi = units.Min(lo, s.ex.x), units.Max(hi, s.ex.x)
		}
	}
	return lo.Add(hi).Half()
}

// reach is how far a run of edge goes, the stitches of its level stretches, and the one part that it is of, if it is of one.
type reach struct {
	top, bottom, left, right pt
	sts                      int
	part                     string
	doubt                    bool
}

func reachOf(run []drawn) reach {
	first := run[0]
	r := reach{first.ex, first.ex, first.ex, first.ex, 0, first.seg.part, false}
	for _, s := range run {
		r.add(s.ex)
		r.add(s.ez)
		if s.ex.y.Eq(s.ez.y) {
			r.sts += s.seg.sts
		}
		r.doubt = r.doubt || s.seg.doubt
	}
	if slices.ContainsFunc(run, func(s drawn) bool { return s.seg.part != first.seg.part }) {
		r.part = ""
	}
	return r
}

func (r *reach) add(p pt) {
	if r.top.y.Less(p.y) {
		r.top = p
	}
	if p.y.Less(r.bottom.y) {
		r.bottom = p
	}
	if p.x.Less(r.left.x) {
		r.left = p
	}
	if r.right.x.Less(p.x) {
		r.right = p
	}
}

// side is the side of the middle on which it lies.
func (r reach) side(mid units.Num) string {
	switch r.left.x.Add(r.right.x).Half().Cmp(mid) {
	case -1:
		return "left"
	case 1:
		return "right"
	}
	return ""
}

// stagger reports whether a height is but that of the rows by which bind-offs at both sides of a row stagger, and no measurement: of an edge that
// its level stretches make, whose name is no word of the trade.
func (r reach) stagger(s span, rank int) bool {
	return rank == rankNamed && r.sts > 0 && s.of == "row" && s.count > 0 && s.count <= 2 && s.length.Less(r.right.x.Sub(r.left.x))
}

// frontOrBack is the word before the name of an edge of a front or a back, which the kind of the piece says or the name of its part.
func (w *worker) frontOrBack(part string) string {
	part = strings.ToLower(part)
	switch {
	case w.made.Kind == KindBack || strings.Contains(part, "back"):
		return "back "
	case w.made.Kind == KindFront || strings.Contains(part, "front"):
		return "front "
	}
	return ""
}

// edgeSpans are height and width of one run of edge of one name.
func (w *worker) edgeSpans(c *canvas, run []drawn, mid units.Num, half bool) []span {
	name := strings.ToLower(run[0].seg.name)
	e, ok := edgeWords(name)
	if !ok || w.made.Kind == KindBand {
		return nil
	}
	g := oneGauge(run)
	r := reachOf(run)
	part, doubt := r.part, r.doubt
	prefix, side := w.frontOrBack(orElse(part, c.name)), r.side(mid)
	rank := rankEdge
	if strings.HasPrefix(e.height, "height of ") {
		rank = rankNamed
	}
	var out []span
	if e.height != "" {
		s := span{name: e.heightName(prefix), part: part, axis: Vertical, lo: r.bottom, hi: r.top, length: r.top.y.Sub(r.bottom.y), main: true, of: "row", side: side, rank: rank, doubt: doubt}
		if w.piece.From.sideways() {
			s.of, s.gauge = "st", w.gauge(w.piece.Gauge)
			s.count = stitchesIn(s.length, r.sts, s.gauge)
		} else {
			s.count, s.gauge = rowsIn(s.length, g)
		}
		if !r.stagger(s, rank) {
			out = append(out, s)
		}
	}
	if e.width != "" && !run[0].seg.both {
		s := span{name: e.widthName(prefix), half: half && e.prefixed, part: part, axis: Horizontal, lo: r.left, hi: r.right, length: r.right.x.Sub(r.left.x), main: true,
			count: r.sts, of: "st", gauge: w.gauge(w.piece.Gauge), side: side, rank: rank, doubt: doubt}
		if w.piece.From.sideways() {
			s.of = "row"
			s.count, s.gauge = rowsIn(s.length, g)
		} else {
			s.gauge = w.gaugeAcross(run, g)
			s.count = stitchesIn(s.length, s.count, s.gauge)
		}
		out = append(out, s)
	}
	return out
}

// gaugeAcross is the gauge of the stitches along a run of edge, whose rows are of the gauge given or of none: that one, else
// the piece's first or another one in which its level stretches are as wide as they are; nil if there is none.
func (w *worker) gaugeAcross(run []drawn, rows *Gauge) *Gauge {
	all := []*Gauge{rows}
	if rows == nil {
		all[0] = w.gauge(w.piece.Gauge)
		for i := range w.b.p.Gauges {
			all = append(all, &w.b.p.Gauges[i])
		}
	}
	for _, g := range all {
		if g != nil && !slices.ContainsFunc(run, func(s drawn) bool {
			return s.seg.sts > 0 && s.ex.y.Eq(s.ez.y) && !g.StitchWidth().Times(s.seg.sts).Eq(s.ez.x.Sub(s.ex.x).Abs())
		}) {
			return g
		}
	}
	return nil
}

// words of one named edge: what its height and its width are called.
type words struct {
	height, width string
	prefixed      bool // told apart as front and back
}

func (e words) heightName(prefix string) string {
	if e.prefixed {
		return prefix + e.height
	}
	return e.height
}

func (e words) widthName(prefix string) string {
	if e.prefixed && prefix == "front " {
		return prefix + e.width
	}
	return e.width
}

// edgeWords are the trade's names; an edge of another name that the pattern gives
// is measured under it, and one that only the working made is not.
func edgeWords(name string) (words, bool) {
	switch name {
	case "armhole":
		return words{height: "armhole depth"}, true
	case "neck":
		return words{height: "neck depth", width: "neck width", prefixed: true}, true
	case "shoulder":
		return words{height: "shoulder slope", width: "shoulder"}, true
	case "side":
		return words{height: "side length"}, true
	case "cap":
		return words{height: "cap height"}, true
	case "raglan":
		return words{height: "raglan depth"}, true
	case "underarm":
		return words{width: "underarm"}, true
	case "front edge":
		return words{height: "front edge"}, true
	case "sleeve seam":
		return words{height: "length to underarm"}, true
	case "sleeve end":
		return words{height: "sleeve opening", width: "sleeve opening"}, true
	case "", "hem", "cast-on edge", "top", "step", "line", "live edge", "picked-up edge", "base", "gap", "opening", "left over", "added edge",
		"short-row turn", "joined edge", "division", "centre", "gathered edge", "held edge", "base of the panels", "edge of the crown", "edge of the base", "edge of the motifs":
		return words{}, false
	}
	return words{height: "height of " + name, width: "width of " + name}, true
}
