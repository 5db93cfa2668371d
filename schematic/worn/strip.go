package worn

import (
	"math"
	"slices"
	"strings"

	"flatwright/schematic"
)

// nextStrip lays the next band along the edges that it is worked onto; false if there is none.
func (a *assembly) nextStrip() bool {
	for i, s := range a.strips {
		done := false
		for a.strip(s) {
			done = true
		}
		if done {
			a.strips = append(a.strips[:i:i], a.strips[i+1:]...)
			return true
		}
	}
	return false
}

// strip lays a band along one free way of its edges: it bends with them, as deep as it is everywhere.
func (a *assembly) strip(s *strip) bool {
	keys := map[string]bool{s.key: true}
	var along *chain
	q := &proto{panel: &panel{made: s.made, view: -1}}
	for _, whole := range a.chains(q, keys) {
		for _, c := range whole.opened() {
			if along == nil || c.chord() > along.chord() {
				along = c
			}
		}
	}
	if along == nil {
		return a.border(s)
	}
	if a.turnsOver(s, along) {
		a.turnOver(s, along)
		return true
	}
	in, out := along.beside(s.deep)
	along.levelEnds(in, out)
	p := &panel{made: s.made, view: s.view, name: s.name, face: front, strip: true, where: still}
	if p.stands = along.standsUp(s.deep); p.stands {
		in, out = along.upright(s.deep)
	}
	for i := range along.at {
		at := along.at[len(along.at)-1-i]
		at.p.drawn[at.i].taken, p.hosts = true, append(p.hosts, at.p)
		sd := at.p.drawn[at.i]
		sd.a, sd.taken, sd.blind = along.path[len(along.path)-1-i], true, sd.blind && !s.curve
		p.drawn = append(p.drawn, sd)
	}
	round := near(along.start(), along.end())
	p.drawn = append(p.drawn, side{a: along.path[0], name: "end", blind: round, keys: s.endKeys(along.at[0].p)})
	for _, q := range out {
		p.drawn = append(p.drawn, side{a: q, keys: s.outer, name: "outer edge", curve: s.curve})
	}
	last := &p.drawn[len(p.drawn)-1]
	last.keys, last.name, last.curve, last.blind = s.endKeys(along.at[len(along.at)-1].p), "end", false, round
	p.loop = p.drawn
	if s.ribs {
		p.bandRibs(in, out)
	}
	if host := along.at[0].p; host.meets { // so is its collar
		lo, hi := box(p.drawn)
		x := host.where.at(pt{X: host.middle()}).X
		p.lines = append(p.lines, schematic.Line{Kind: schematic.LineEdge, A: pt{X: x, Y: lo.Y}, B: pt{X: x, Y: hi.Y}})
	}
	a.placed = append(a.placed, p)
	return true
}

// endKeys are the bonds of an end of the band, at a front.
func (s *strip) endKeys(host *panel) []string {
	if host.face != front {
		return nil
	}
	return s.ends[sideWord(host.name)]
}

// opened are the stretches of a way between the places where a right front and a left one only meet: what goes along both is open there.
func (c *chain) opened() []*chain {
	for i := 1; i < len(c.at); i++ {
		p, q := c.at[i-1].p, c.at[i].p
		x, y := sideWord(p.name), sideWord(q.name)
		if p.face == front && q.face == front && !p.strip && !q.strip && x != "" && y != "" && x != y && !p.laidOn(q) {
			rest := &chain{at: c.at[i:], path: c.path[i:]}
			return append([]*chain{{at: c.at[:i:i], path: c.path[: i+1 : i+1]}}, rest.opened()...)
		}
	}
	return []*chain{c}
}

// border lays a band round a panel of which all edges take it, such as that of a blanket: it lies in two loops, with a bridge between them at a corner.
func (a *assembly) border(s *strip) bool {
	for _, host := range a.placed {
		n := len(host.drawn)
		if host.made == s.made || slices.ContainsFunc(host.drawn, func(e side) bool { return e.taken || !slices.Contains(e.keys, s.key) }) {
			continue
		}
		round := points(host.drawn)
		out := offset(append(round, round[0], round[1]), s.deep)
		if len(out) != n+2 {
			return false
		}
		p := &panel{made: s.made, view: s.view, name: s.name, face: front, strip: true, where: still, hosts: []*panel{host}}
		for i := range n { // the other way round, and back to where it began
			e := side{a: round[(n-i)%n], taken: true}
			host.drawn[i].taken, p.drawn = true, append(p.drawn, e)
		}
		p.drawn = append(p.drawn, side{a: round[0], taken: true, blind: true})
		for _, q := range append([]pt{out[n]}, out[1:n]...) {
			p.drawn = append(p.drawn, side{a: q, name: "outer edge", keys: s.outer})
		}
		p.drawn = append(p.drawn, side{a: out[n], blind: true})
		p.loop = p.drawn
		if s.ribs {
			p.bandRibs(append(round[1:n:n], round[0], round[1]), out[1:])
		}
		a.placed = append(a.placed, p)
		return true
	}
	return false
}

// beside are the corners of a chain and of the way beside it; of a chain that comes back to where it began its ends meet in a corner.
func (c *chain) beside(deep float64) (in, out []pt) {
	n := len(c.path)
	if n < 4 || !near(c.start(), c.end()) {
		return cornersBeside(steady(c.path, deep), deep)
	}
	in, out = cornersBeside(slices.Concat([]pt{c.path[n-2]}, c.path, []pt{c.path[1]}), deep)
	if len(out) == n+2 {
		in, out = in[1:n+1], out[1:n+1]
	}
	return in, out
}

// levelEnds ends a band that is steep where it comes to a shoulder level with it: it goes on behind.
func (c *chain) levelEnds(in, out []pt) {
	n := len(out)
	for _, e := range []struct {
		end, next int
		host      *panel
	}{{0, 1, c.at[0].p}, {n - 1, n - 2, c.at[len(c.at)-1].p}} {
		if n < 2 || e.host.face != front || absf(topOf(e.host.drawn)-in[e.end].Y) > onEdge {
			continue
		}
		d := sub(out[e.end], out[e.next])
		if d.Y > 0.7*length(d) {
			out[e.end] = add(out[e.next], mul(d, (in[e.end].Y-out[e.next].Y)/d.Y))
		}
	}
}

// standsUp reports whether a band from shoulder to shoulder is deeper than the neck has room for, such as a roll neck, or far deeper than the neck is, such as
// a funnel.
func (c *chain) standsUp(deep float64) bool {
	a, z := c.start(), c.end()
	lo, _ := bounds([][]pt{c.path})
	onTop := func(p *panel, q pt) bool { return absf(topOf(p.drawn)-q.Y) < onEdge }
	return a.X > z.X && (a.X-z.X < 2*deep || deep > 2*(a.Y-lo.Y) && a.Y-lo.Y > onEdge) && absf(a.Y-z.Y) < onEdge && onTop(c.at[0].p, a) && onTop(c.at[len(c.at)-1].p, z)
}

// upright is the level edge so far above the ends of a way, and what of the way is below each of its places.
func (c *chain) upright(deep float64) (in, out []pt) {
	for _, q := range c.path {
		switch n := len(in); {
		case n == 0 || absf(q.X-in[n-1].X) > close:
			in, out = append(in, q), append(out, pt{X: q.X, Y: max(c.start().Y, c.end().Y) + deep})
		case q.Y < in[n-1].Y:
			in[n-1] = q
		}
	}
	return in, out
}

// steady is a path without the stagger of a row or two with which it may begin or end: a band as deep as this turns no corner there.
func steady(path []pt, deep float64) []pt {
	turns := func(a, b, c pt) bool {
		u, v := sub(b, a), sub(c, b)
		return length(u) < deep/2 && dot(u, v) < 0.7*length(u)*length(v)
	}
	for len(path) > 2 && turns(path[0], path[1], path[2]) {
		path = path[1:]
	}
	for n := len(path); n > 2 && turns(path[n-1], path[n-2], path[n-3]); n = len(path) {
		path = path[:n-1]
	}
	for i := 1; i+2 < len(path); i++ { // a rib that draws in is no corner either
		b, c := path[i], path[i+1]
		if dist(b, c) > deep/2 || !jogs(path[i-1], b, c, path[i+2]) {
			continue
		}
		path = slices.Clone(path)
		switch by := sub(c, b); {
		case i == 1 && (i+3 < len(path) || dist(path[0], b) < dist(c, path[3])):
			path[0] = add(path[0], by)
		case i+3 == len(path):
			path[i+2], path[i+1] = sub(path[i+2], by), b
		}
		path = slices.Delete(path, i, i+1)
	}
	return path
}

// jogs reports whether a way turns from b to c and back again.
func jogs(a, b, c, d pt) bool {
	u, v, w := sub(b, a), sub(c, b), sub(d, c)
	side := func(x, y pt) bool { return dot(x, y) < 0.7*length(x)*length(y) }
	return side(u, v) && side(v, w) && cross(u, v)*cross(v, w) < 0
}

// offset is a way beside path, to its right, at a distance: joined at the corners, and without the turns where
// the way is too bent for it.
func offset(path []pt, by float64) []pt {
	_, out := cornersBeside(path, by)
	return out
}

// cornersBeside are those of the way beside path, each with that of path which it lies beside.
func cornersBeside(path []pt, by float64) (in, out []pt) {
	var dirs []pt
	var ps []pt
	for i := 1; i < len(path); i++ {
		if d := sub(path[i], path[i-1]); length(d) > 1e-6 {
			dirs = append(dirs, mul(d, 1/length(d)))
			ps = append(ps, path[i-1])
		}
	}
	if len(dirs) == 0 {
		return nil, nil
	}
	ps = append(ps, path[len(path)-1])
	right := func(d pt) pt { return pt{X: d.Y, Y: -d.X} }
	for i, p := range ps {
		var q pt
		switch {
		case i == 0:
			q = add(p, mul(right(dirs[0]), by))
		case i == len(ps)-1:
			q = add(p, mul(right(dirs[len(dirs)-1]), by))
		default:
			n := add(right(dirs[i-1]), right(dirs[i]))
			l := dot(n, n) / 2
			if l < 0.2 {
				l = 0.2
			}
			q = add(p, mul(n, by/l))
		}
		if i == 0 || i == len(ps)-1 || distTo(ps, q) > by*0.97 {
			in, out = append(in, p), append(out, q)
		}
	}
	return in, out
}

// bandRibs are the ribs of a band from the corners of a way to those beside it.
func (p *panel) bandRibs(in, out []pt) {
	for i := 1; i < len(out); i++ {
		d := sub(out[i], out[i-1])
		across := schematic.Hatch{Poly: []pt{in[i-1], in[i], out[i], out[i-1]}, Dir: mul(pt{X: -d.Y, Y: d.X}, 1/length(d))}
		for _, r := range ribsOf(across) {
			p.tick(r[0], r[1])
		}
	}
}

// bend lays the free ways along edges that lie in a curve, such as the neck of a round yoke, on an arc of a
// circle through their ends and their middle.
func (a *assembly) bend() {
	keys := map[string]bool{}
	for _, p := range a.placed {
		for _, s := range p.drawn {
			if s.curve && !s.taken {
				for _, k := range s.keys {
					keys[k] = keys[k] || len(k) > 0 && k[:1] == bends
				}
			}
		}
	}
	for _, k := range sorted(keys) {
		for _, c := range a.chains(&proto{panel: &panel{view: -1}}, map[string]bool{k: true}) {
			c.bend()
		}
	}
}

func sorted(keys map[string]bool) []string {
	var out []string
	for k, ok := range keys {
		if ok {
			out = append(out, k)
		}
	}
	slices.Sort(out)
	return out
}

// arcSteps is how many straight stretches make an arc.
const arcSteps = 32

// bend lays a chain on its arc.
func (c *chain) bend() {
	o, z := c.start(), c.end()
	m := alongPath(c.path, 0.5)
	arc := arcOf(o, m, z)
	if arc == nil {
		return
	}
	// Where each side begins on the arc.
	total := pathLength(c.path)
	at := make([]float64, len(c.path))
	for i := 1; i < len(c.path); i++ {
		at[i] = at[i-1] + dist(c.path[i-1], c.path[i])/total
	}
	for i := len(c.at) - 1; i >= 0; i-- {
		p, k := c.at[i].p, c.at[i].i
		s := p.drawn[k]
		var bent []side
		s.a = alongPath(arc, at[i])
		bent = append(bent, s)
		for j := 1; j < arcSteps; j++ {
			if t := float64(j) / arcSteps; t > at[i]+1e-6 && t < at[i+1]-1e-6 {
				s.a = alongPath(arc, t)
				bent = append(bent, s)
			}
		}
		end := alongPath(arc, at[i+1])
		if k+1 < len(p.drawn) {
			p.drawn[k+1].a = end
		} else {
			p.drawn[0].a = end
		}
		p.drawn = slices.Concat(p.drawn[:k:k], bent, p.drawn[k+1:])
	}
}

// arcOf is the arc from a by way of m to z; nil if they lie on a line.
func arcOf(a, m, z pt) []pt {
	d := 2 * cross(sub(m, a), sub(z, a))
	if absf(d) < 1 {
		return nil
	}
	b, c := sub(m, a), sub(z, a)
	bb, cc := dot(b, b), dot(c, c)
	o := add(a, pt{X: (c.Y*bb - b.Y*cc) / d, Y: (b.X*cc - c.X*bb) / d})
	r := sub(a, o)
	turn := math.Atan2(cross(r, sub(z, o)), dot(r, sub(z, o)))
	if (turn > 0) == (d < 0) {
		turn -= math.Copysign(2*math.Pi, turn)
	}
	out := []pt{a}
	for i := 1; i < arcSteps; i++ {
		sin, cos := math.Sincos(turn * float64(i) / arcSteps)
		out = append(out, add(o, motion{cos: cos, sin: sin}.turn(r)))
	}
	return append(out, z)
}

func pathLength(path []pt) float64 {
	l := 0.0
	for i := 1; i < len(path); i++ {
		l += dist(path[i-1], path[i])
	}
	return l
}

// alongPath is the place at a share of the way along a path.
func alongPath(path []pt, share float64) pt {
	left := share * pathLength(path)
	for i := 1; i < len(path); i++ {
		l := dist(path[i-1], path[i])
		if left <= l && l > 0 {
			return lerp(path[i-1], path[i], left/l)
		}
		left -= l
	}
	return path[len(path)-1]
}

// turnsOver reports whether a collar is turned over: deeper than its neck has room for, its fronts would cross. One that goes on along
// the fronts laps.
func (a *assembly) turnsOver(s *strip, along *chain) bool {
	offNeck := func(o schematic.EdgeRate) bool { return !strings.Contains(strings.ToLower(o.Edge), "neck") }
	if !strings.Contains(strings.ToLower(s.name), "collar") || slices.ContainsFunc(s.made.Piece.Onto, offNeck) {
		return false
	}
	lies := func(c *chain) []pt {
		return append(slices.Clone(c.path), backwardsPath(offset(steady(c.path, s.deep), s.deep))...)
	}
	other := func(c *chain) bool { return common(lies(c), lies(along)) > 100 }
	for _, p := range a.placed {
		if p.over != nil && p.strip && p.made == s.made { // its other front is
			return true
		}
	}
	q := &proto{panel: &panel{made: s.made, view: -1}}
	return slices.ContainsFunc(a.chains(q, map[string]bool{s.key: true}), func(c *chain) bool { return c.path[0] != along.path[0] && other(c) })
}

// turnOver lays a collar on what it is worked onto, as deep as it is.
func (a *assembly) turnOver(s *strip, along *chain) {
	back := backwardsPath(along.path)
	p := &panel{made: s.made, view: s.view, name: s.name, face: front, strip: true, where: still, over: along.at[0].p}
	for _, at := range along.at {
		at.p.drawn[at.i].taken, p.hosts = true, append(p.hosts, at.p)
	}
	for _, q := range along.path {
		p.drawn = append(p.drawn, side{a: q, taken: true, name: "fold", keys: []string{s.key}})
	}
	p.drawn[len(p.drawn)-1].name = "end"
	out := offset(back, s.deep)
	n := len(out)
	for _, e := range []struct {
		end, next int
		at        pt
		host      *panel
	}{{0, 1, back[0], along.at[len(along.at)-1].p}, {n - 1, n - 2, back[len(back)-1], along.at[0].p}} {
		if n < 2 {
			break
		}
		if d := sub(out[e.end], out[e.next]); d.Y > 0.5*length(d) && absf(topOf(e.host.drawn)-e.at.Y) < onEdge { // it goes on behind from the shoulder
			out[e.end] = add(out[e.next], mul(d, (e.at.Y-out[e.next].Y)/d.Y))
		}
	}
	for _, q := range out {
		p.drawn = append(p.drawn, side{a: q, keys: s.outer, name: "outer edge"})
	}
	last := &p.drawn[len(p.drawn)-1]
	last.keys, last.name = nil, "end"
	p.loop = p.drawn
	a.placed = append(a.placed, p)
}

func backwardsPath(path []pt) []pt {
	path = slices.Clone(path)
	slices.Reverse(path)
	return path
}
