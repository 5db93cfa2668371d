package worn

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"flatwright/schematic"
)

// tick is a rib of a band.
func (p *panel) tick(a, b pt) {
	p.lines = append(p.lines, schematic.Line{Kind: schematic.LineRib, A: a, B: b})
}

// figure is the picture: what of each panel shows.
func (a *assembly) figure() schematic.View {
	var v schematic.View
	sheets := a.sheets()
	var above [][]pt
	for _, sh := range sheets {
		loops, seams, whole := merged(sh)
		if !whole {
			a.torn = cmp.Or(a.torn, sh[len(sh)-1].made)
		}
		if sh[0].face == back {
			for _, p := range sh {
				v.Lines = append(v.Lines, p.behind(a, above)...)
			}
			continue
		}
		covered := slices.ContainsFunc(loops, func(l []pt) bool { return overlaps(l, above) })
		for _, l := range loops {
			if covered {
				v.Under = append(v.Under, l)
				v.Lines = append(v.Lines, shown(schematic.LineEdge, l, true, above)...)
			} else {
				v.Outline = append(v.Outline, l)
			}
		}
		for _, s := range seams {
			v.Lines = append(v.Lines, shown(schematic.LineSeam, s, false, above)...)
		}
		for _, p := range sh {
			a.inside(&v, p, append(p.fronts(sh), above...))
		}
		above = append(above, loops...)
	}
	v.Lines = append(v.Lines, a.raised(above)...)
	slices.SortStableFunc(v.Outline, func(x, y []pt) int {
		switch ax, ay := area(x), area(y); {
		case ax > ay:
			return -1
		case ax < ay:
			return 1
		}
		return 0
	})
	return v
}

// fronts are the outlines of the panels in front, of those that lie edge on edge with a panel, whose ribs lean onto its own.
func (p *panel) fronts(sh []*panel) (out [][]pt) {
	for _, q := range sh {
		if p.face == either && q.face == front && len(p.ribs) > 0 && common(points(p.drawn), points(q.drawn)) > 1 {
			out = append(out, points(q.drawn))
		}
	}
	return out
}

// onEdge is how far from the front an edge of the back lies at most that is sewn to it and lies on it, mm: bind-offs stagger by a row,
// of which the tallest have 7 in 10 cm.
const onEdge = 15.0

// behind are the edges of the back that show: what is sewn to the front lies on it, and so does its armhole on that of the front, unless the front is narrower.
func (p *panel) behind(a *assembly, above [][]pt) []schematic.Line {
	var armholes [][]pt
	for _, o := range a.placed {
		for i, s := range o.drawn {
			if o.face == front && isArmhole(s) {
				armholes = append(armholes, []pt{s.a, o.drawn[(i+1)%len(o.drawn)].a})
			}
		}
	}
	var out []schematic.Line
	for i, s := range p.drawn {
		z := p.drawn[(i+1)%len(p.drawn)].a
		onto := above
		switch {
		case len(keysOf(p.drawn[i:i+1])) > 0:
		case isArmhole(s):
			onto = armholes
		default:
			onto = nil
		}
		if m := mid(s.a, z); !slices.ContainsFunc(onto, func(l []pt) bool { return distToLoop(l, m) < onEdge }) {
			out = append(out, shown(schematic.LineBehind, []pt{s.a, z}, false, above)...)
		}
	}
	return out
}

func isArmhole(s side) bool { return strings.EqualFold(s.name, "armhole") }

// raised is the neck edge of the back where short rows raise it above the front's.
func (a *assembly) raised(above [][]pt) []schematic.Line {
	for _, p := range slices.Backward(a.placed) {
		by := p.made.Views[p.view].Raised
		path := p.neck()
		if by.Sign() == 0 || p.face != front || path == nil {
			continue
		}
		if !p.strip { // its neighbours have the rest of the neck
			for _, c := range a.chains(&proto{panel: &panel{view: -1}}, map[string]bool{bends + "neck of " + p.made.Name: true}) {
				path = c.path
			}
		}
		m := alongPath(path, 0.5)
		m.Y += by.Float()
		arc := arcOf(path[0], m, path[len(path)-1])
		if arc == nil {
			arc = []pt{path[0], path[len(path)-1]}
		}
		return shown(schematic.LineBehind, arc, false, above)
	}
	return nil
}

// neck is the way along the free edge of a panel that lies in a curve and is not its base, or nil.
func (p *panel) neck() []pt {
	var path []pt
	for i, s := range p.drawn {
		if !s.curve || s.taken || s.name == "base" {
			continue
		}
		if path == nil {
			path = append(path, s.a)
		}
		path = append(path, p.drawn[(i+1)%len(p.drawn)].a)
	}
	return path
}

// inside adds the lines, ribs and marks of a panel that show.
func (a *assembly) inside(v *schematic.View, p *panel, above [][]pt) {
	at := p.where.at
	for _, l := range p.lines {
		switch l.Kind {
		case schematic.LineChange: // at an edge that is drawn along its chord it ends with it
			for _, part := range insideOf([2]pt{at(l.A), at(l.B)}, points(p.drawn)) {
				v.Lines = append(v.Lines, shown(l.Kind, part[:], false, above)...)
			}
		case schematic.LineEdge, schematic.LineSeam, schematic.LineRib, schematic.LineCell, schematic.LineSlit, schematic.LineMark:
			if l.Kind == schematic.LineSlit && slices.ContainsFunc(p.slits, func(s slit) bool { return s.taken && s.name == l.Name }) {
				continue // what is worked from it stands there
			}
			for _, s := range shown(l.Kind, []pt{at(l.A), at(l.B)}, false, above) {
				s.Name = ""
				v.Lines = append(v.Lines, s)
			}
		}
	}
	for _, r := range p.ribs {
		p.ribbed(v, r, above)
	}
	for _, m := range p.marks {
		m.At, m.Name = at(m.At), ""
		if !slices.ContainsFunc(above, func(l []pt) bool { return schematic.InPolygon(l, m.At) }) {
			v.Marks = append(v.Marks, m)
		}
	}
}

// ribbed adds what shows of a ground of ribs: one by one where something hides a part of them.
func (p *panel) ribbed(v *schematic.View, r schematic.Hatch, above [][]pt) {
	poly := make([]pt, len(r.Poly))
	for i, q := range r.Poly {
		poly[i] = p.where.at(q)
	}
	r.Poly, r.Dir = besides(poly, above), p.where.turn(r.Dir)
	drawn := points(p.drawn)
	tucked := slices.ContainsFunc(poly, func(q pt) bool { return !covers(drawn, q) })
	if !tucked && !slices.ContainsFunc(above, func(l []pt) bool { return common(r.Poly, l) > 1 }) {
		v.Ribs = append(v.Ribs, r)
		return
	}
	for _, s := range ribsOf(r) {
		parts := [][2]pt{s}
		if tucked {
			parts = insideOf(s, drawn)
		}
		for _, t := range parts {
			v.Lines = append(v.Lines, shown(schematic.LineRib, t[:], false, above)...)
		}
	}
}

// insideOf are the stretches of a line that lie within a loop.
func insideOf(l [2]pt, loop []pt) [][2]pt {
	var out [][2]pt
	from := 0.0
	for _, o := range append(open(l[0], l[1], [][]pt{loop}), [2]float64{1, 1}) {
		if o[0]-from > 1e-6 {
			out = append(out, [2]pt{lerp(l[0], l[1], from), lerp(l[0], l[1], o[0])})
		}
		from = o[1]
	}
	return out
}

// besides is what of a ground shows beside what lies on its left or right end from its foot to its head, such as a band.
func besides(poly []pt, above [][]pt) []pt {
	lo, hi := bounds([][]pt{poly})
	for _, l := range above {
		foot, head := across(l, lo.Y+1), across(l, hi.Y-1)
		if len(foot) != 2 || len(head) != 2 || absf(foot[0]-head[0])+absf(foot[1]-head[1]) > 1 {
			continue
		}
		switch from, to := foot[0], foot[1]; {
		case from <= lo.X+close && to > lo.X && to < hi.X:
			poly, lo.X = clipPoly(poly, func(q pt) float64 { return q.X - to }), to
		case to >= hi.X-close && from < hi.X && from > lo.X:
			poly, hi.X = clipPoly(poly, func(q pt) float64 { return from - q.X }), from
		}
	}
	return poly
}

// ribGap is between two ribs that are drawn one by one, at life size, mm.
const ribGap = 9.0

// ribsOf are the ribs of a ground one by one, from edge to edge.
func ribsOf(r schematic.Hatch) [][2]pt {
	n := pt{X: -r.Dir.Y, Y: r.Dir.X}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range r.Poly {
		lo, hi = min(lo, dot(q, n)), max(hi, dot(q, n))
	}
	var out [][2]pt
	for t := lo + ribGap/2; t < hi; t += ribGap {
		var ends []pt
		for i, a := range r.Poly {
			b := r.Poly[(i+1)%len(r.Poly)]
			if da, db := dot(a, n)-t, dot(b, n)-t; (da > 0) != (db > 0) {
				ends = append(ends, lerp(a, b, da/(da-db)))
			}
		}
		if len(ends) == 2 {
			out = append(out, [2]pt{ends[0], ends[1]})
		}
	}
	return out
}

// sheets are the placed panels that lie edge on edge, those on top first: what is in front before what is
// behind, right over left, later before earlier.
func (a *assembly) sheets() [][]*panel {
	of := sets{}
	seen := map[stretch]*panel{}
	for _, p := range a.placed {
		for k, s := range p.drawn {
			seen[stretchOf(s.a, p.drawn[(k+1)%len(p.drawn)].a)] = p
		}
	}
	for _, p := range a.placed {
		for k, s := range p.drawn {
			q := seen[stretchOf(p.drawn[(k+1)%len(p.drawn)].a, s.a)]
			if q != nil && p.laidOn(q) && q.face != back && p.face != back {
				of[of.first(p)] = of.first(q)
			}
		}
	}
	groups := map[*panel][]*panel{}
	var order []*panel
	for _, p := range a.placed {
		r := of.first(p)
		if groups[r] == nil {
			order = append(order, r)
		}
		groups[r] = append(groups[r], p)
	}
	var out [][]*panel
	for _, r := range order {
		out = append(out, groups[r])
	}
	slices.SortStableFunc(out, func(x, y []*panel) int { return rank(x) - rank(y) })
	return out
}

// node is a place, and stretch a way from one to the next, that two panels have in common if they lie edge on edge.
type (
	node    struct{ x, y int64 }
	stretch struct{ a, b node }
)

func nodeOf(p pt) node          { return node{grid(p.X), grid(p.Y)} }
func stretchOf(a, b pt) stretch { return stretch{nodeOf(a), nodeOf(b)} }

// sets are panels that belong together: each leads to another of its set, but one.
type sets map[*panel]*panel

// first is the panel of its set that leads to no other.
func (s sets) first(p *panel) *panel {
	for s[p] != nil && s[p] != p {
		p = s[p]
	}
	return p
}

// rank is how far up a sheet lies, 0 on top.
func rank(sh []*panel) int {
	r := 2
	for _, p := range sh {
		switch {
		case p.face == back:
			return 9
		case p.over != nil, p.hung && schematic.HangsFree(p.made.Name): // a tie lies on what it is sewn to
			return 0
		case sideWord(p.name) == "right" && p.face == front:
			r = 1
		}
	}
	return r
}

// laidOn reports whether a panel was laid on the other, or that on it: two fronts that only meet are no one sheet.
func (p *panel) laidOn(q *panel) bool {
	return slices.Contains(p.hosts, q) || slices.Contains(q.hosts, p)
}

func grid(x float64) int64 { return int64(math.Round(x * 1000)) }

// merged are the outlines of panels that lie edge on edge, and the seams between them; whole if each of the outlines comes back to where it began, as it
// does unless panels lie on each other.
func merged(sh []*panel) (loops, seams [][]pt, whole bool) {
	whole = true
	there := map[stretch]bool{}
	var list []arc
	for _, p := range sh {
		for i, s := range p.drawn {
			z := p.drawn[(i+1)%len(p.drawn)].a
			if e := stretchOf(s.a, z); e.a != e.b {
				there[e] = true
				list = append(list, arc{s, z})
			}
		}
	}
	free := outer{}
	for _, e := range list {
		k := stretchOf(e.a, e.b)
		switch inner := there[stretch{k.b, k.a}]; {
		case !inner:
			free[k.a] = append(free[k.a], e)
		case !e.blind && (k.a.x < k.b.x || k.a.x == k.b.x && k.a.y < k.b.y):
			seams = append(seams, []pt{e.a, e.b})
		}
	}
	for _, e := range list {
		loop, closed := free.loop(nodeOf(e.a), 1)
		if whole = whole && closed; len(loop) > 2 {
			loops = append(loops, straightened(untangled(points(loop))))
		}
	}
	return loops, joined(seams), whole
}

// untangled is the way round the outside of a loop that crosses itself, as where the ribs of two panels that lie edge on edge draw in or lean onto each other; the loop itself
// if it does not, or does not come back so.
func untangled(loop []pt) []pt {
	n := len(loop)
	var free outer = map[node][]arc{}
	crossed := 0
	for i, a := range loop {
		z := loop[(i+1)%n]
		ts := crossings(loop, i)
		crossed += len(ts)
		ts = append(ts, 0, 1)
		slices.Sort(ts)
		for k := 1; k < len(ts); k++ {
			p, q := lerp(a, z, ts[k-1]), lerp(a, z, ts[k])
			free[nodeOf(p)] = append(free[nodeOf(p)], arc{side{a: p}, q})
		}
	}
	if crossed == 0 {
		return loop
	}
	lowest := slices.MinFunc(loop, func(p, q pt) int { return cmp.Or(cmp.Compare(p.Y, q.Y), cmp.Compare(p.X, q.X)) })
	if out, closed := free.loop(nodeOf(lowest), -1); closed && area(points(out)) > 0.9*area(loop) { // what lies twice counted twice
		return points(out)
	}
	return loop
}

// crossings is where on the i-th side of a loop others cross it, as shares of its length.
func crossings(loop []pt, i int) (ts []float64) {
	n := len(loop)
	for j, c := range loop {
		if j == i || (j+1)%n == i || j == (i+1)%n {
			continue
		}
		if t, ok := crossing(loop[i], loop[(i+1)%n], c, loop[(j+1)%n]); ok && t > 1e-6 && t < 1-1e-6 {
			ts = append(ts, t)
		}
	}
	return ts
}

// arc is a side of a panel, and where it ends.
type arc struct {
	side
	b pt
}

// outer are the stretches on which no other panel lies, by where they begin.
type outer map[node][]arc

// loop takes out the way round from a place, as far to the left as can be, or to the right if hand is -1, nil if nothing begins there; closed if it comes back.
func (o outer) loop(at node, hand float64) (loop []side, closed bool) {
	var dir pt
	for len(o[at]) > 0 {
		best := 0
		for i, e := range o[at] {
			if hand*turnTo(dir, sub(e.b, e.a)) > hand*turnTo(dir, sub(o[at][best].b, o[at][best].a)) {
				best = i
			}
		}
		e := o[at][best]
		o[at] = slices.Delete(slices.Clone(o[at]), best, best+1)
		loop = append(loop, e.side)
		dir, at = sub(e.b, e.a), nodeOf(e.b)
		if at == nodeOf(loop[0].a) {
			return loop, true
		}
	}
	return loop, len(loop) == 0
}

func turnTo(dir, d pt) float64 {
	if dir == (pt{}) {
		return 0
	}
	return math.Atan2(cross(dir, d), dot(dir, d))
}

// straightened is a loop without the places at which it does not turn.
func straightened(loop []pt) []pt {
	var out []pt
	n := len(loop)
	for i, p := range loop {
		a, b := sub(p, loop[(i+n-1)%n]), sub(loop[(i+1)%n], p)
		if absf(cross(a, b)) > 1e-6*length(a)*length(b) || dot(a, b) < 0 {
			out = append(out, p)
		}
	}
	return out
}

// joined are stretches made one where they go on straight.
func joined(list [][]pt) [][]pt {
	for i := 0; i < len(list); i++ {
		for j := 0; j < len(list); j++ {
			if long, ok := oneWay(list[i], list[j]); ok && i != j {
				list[i] = long
				list = slices.Delete(list, j, j+1)
				i, j = 0, -1
			}
		}
	}
	return list
}

// oneWay is the stretch of two of which the second goes straight on from the end of the first.
func oneWay(x, y []pt) ([]pt, bool) {
	for _, y := range [][]pt{y, {y[1], y[0]}} {
		a, b := sub(x[1], x[0]), sub(y[1], y[0])
		if near(x[1], y[0]) && absf(cross(a, b)) < 1e-6*length(a)*length(b) && dot(a, b) > 0 {
			return []pt{x[0], y[1]}, true
		}
	}
	return nil, false
}

// shown are the stretches of a way that nothing above hides.
func shown(kind schematic.LineKind, path []pt, closed bool, above [][]pt) []schematic.Line {
	var out []schematic.Line
	n := len(path)
	last := n - 1
	if closed {
		last = n
	}
	for i := range last {
		a, b := path[i], path[(i+1)%n]
		for _, s := range open(a, b, above) {
			out = append(out, schematic.Line{Kind: kind, A: lerp(a, b, s[0]), B: lerp(a, b, s[1])})
		}
	}
	return slices.DeleteFunc(out, func(l schematic.Line) bool { return dist(l.A, l.B) < 0.5 })
}

// open are the shares of the way from a to b, from and to, that nothing above hides.
func open(a, b pt, above [][]pt) [][2]float64 {
	ts := []float64{0, 1}
	for _, l := range above {
		for j, c := range l {
			if t, ok := crossing(a, b, c, l[(j+1)%len(l)]); ok {
				ts = append(ts, t)
			}
		}
	}
	slices.Sort(ts)
	var out [][2]float64
	on := false
	for k := 1; k < len(ts); k++ {
		if ts[k]-ts[k-1] < 1e-9 {
			continue
		}
		m := lerp(a, b, (ts[k]+ts[k-1])/2)
		hidden := slices.ContainsFunc(above, func(l []pt) bool { return covers(l, m) })
		switch {
		case hidden:
		case on:
			out[len(out)-1][1] = ts[k]
		default:
			out = append(out, [2]float64{ts[k-1], ts[k]})
		}
		on = !hidden
	}
	return out
}

// covers reports whether a place lies inside a loop or on its edge.
func covers(loop []pt, p pt) bool {
	return schematic.InPolygon(loop, p) || distToLoop(loop, p) < 0.5
}

// crossing is how far along a to b it meets the stretch from c to d.
func crossing(a, b, c, d pt) (float64, bool) {
	u, v, w := sub(b, a), sub(d, c), sub(c, a)
	x := cross(u, v)
	if absf(x) < 1e-9 {
		// Along each other: where the other ends.
		for _, q := range []pt{c, d} {
			if t, ok := onSegment(q, a, b); ok {
				return t, true
			}
		}
		return 0, false
	}
	t, s := cross(w, v)/x, cross(w, u)/x
	return t, t > 0 && t < 1 && s >= 0 && s <= 1
}

// overlaps reports whether a loop lies on any of the others by more than its edge.
func overlaps(loop []pt, others [][]pt) bool {
	return slices.ContainsFunc(others, func(o []pt) bool { return common(loop, o) > 100 })
}

// common is the area that two loops have in common, by lines across it.
func common(x, y []pt) float64 {
	lo, hi := bounds([][]pt{x})
	lo2, hi2 := bounds([][]pt{y})
	y0, y1 := max(lo.Y, lo2.Y), min(hi.Y, hi2.Y)
	if y1 <= y0 || max(lo.X, lo2.X) >= min(hi.X, hi2.X) {
		return 0
	}
	const lines = 64
	t := 0.0
	for k := range lines {
		at := y0 + (y1-y0)*(float64(k)+0.5)/lines
		a, b := across(x, at), across(y, at)
		for i := 0; i+1 < len(a); i += 2 {
			for j := 0; j+1 < len(b); j += 2 {
				t += max(0, min(a[i+1], b[j+1])-max(a[i], b[j]))
			}
		}
	}
	return t * (y1 - y0) / lines
}

// across are the places at which a level line crosses a loop, from the left.
func across(loop []pt, y float64) []float64 {
	var out []float64
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		if (a.Y > y) != (b.Y > y) {
			out = append(out, a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
		}
	}
	slices.Sort(out)
	return out
}
