package worn

import (
	"maps"
	"math"
	"slices"
	"strings"

	"flatwright/schematic"
)

// chain is a way along sides of placed panels, end to end, that are still free.
type chain struct {
	at   []place
	path []pt // one place more than sides
}

// place is a side of a placed panel.
type place struct {
	p *panel
	i int
}

func (c *chain) start() pt { return c.path[0] }
func (c *chain) end() pt   { return c.path[len(c.path)-1] }
func (c *chain) chord() float64 {
	return dist(c.start(), c.end())
}

// put places all panels, the trunk first and then, one after the other, the panel of which most
// of its bonded edge is there already.
func (a *assembly) put() {
	if !a.trunk() {
		return
	}
	if r := a.placed[0]; r.face == either && r.made.Round && r.made.Views[r.view].Panel && !r.gusset && !a.halfRound(r) {
		a.placed = nil // which of its panels lie in front nobody says
		return
	}
	defer a.stand()
	for {
		a.overlay()
		a.discs()
		a.onSlits()
		best := a.best()
		if best.score == 0 {
			if a.hoods() {
				continue
			}
			a.bent()
			a.bend()
			if !a.nextStrip() && !a.sewOn() {
				return
			}
			continue
		}
		a.lay(best)
	}
}

// best is the panel of which most of its bonded edge is there already.
func (a *assembly) best() fit {
	var best fit
	for _, q := range a.protos {
		if q.left < 1 || q.face == back || q.disc || q.unfit || q.made.Kind == schematic.KindHood && a.reachesBoth(q) {
			continue // a hood that goes round waits for the whole of its neck
		}
		if f := a.fit(q); f.score > best.score {
			best = f
		}
	}
	return best
}

// trunk stands the first panel upright on its middle: the front if it is one panel, or else the back, seen
// from the front, with the fronts before it.
func (a *assembly) trunk() bool {
	var fronts, backs, others []*proto
	for _, q := range a.protos {
		switch {
		case q.share || q.made.Kind == schematic.KindYoke:
			others = append(others, q)
		case q.face == front:
			fronts = append(fronts, q)
		case q.face == back:
			backs = append(backs, q)
		case a.goesOnFrom(q.made): // such as a thumb
			others = append(others, q)
		case q.made.Kind == schematic.KindBody && !q.leg, holds[q.made.Kind] && !q.disc, q.onSide, a.onLegs(q.made):
			others = append([]*proto{q}, others...)
		default:
			others = append(others, q)
		}
	}
	largest := func(list []*proto) *proto {
		return slices.MaxFunc(list, func(x, y *proto) int {
			switch ax, ay := area(x.points()), area(y.points()); {
			case ax < ay-1:
				return -1
			case ax > ay+1:
				return 1
			}
			return 0
		})
	}
	fronts = a.bodices(fronts)
	var root *proto
	switch {
	case len(fronts) == 1:
		root = fronts[0]
	case len(fronts) > 1 && len(backs) > 0:
		root = largest(backs)
		root.panel = root.mirrored()
	case len(fronts) > 0:
		root = largest(fronts)
	case len(others) > 0:
		root = standsFirst(others)
	case len(backs) > 0:
		root = largest(backs)
		root.face = front
	default:
		return false
	}
	if q := a.ring(root); q != nil {
		a.closeInFront(root.panel, q)
		root.panel = q
	}
	p := root.panel
	if p.made.Kind == schematic.KindShawl && len(a.protos) == 1 && len(a.strips) == 0 && !p.made.Round && !p.made.Views[p.view].Panel {
		p.laidOut(a.g.Pattern.Gauges)
	}
	a.settle(p, p.standing(), nil, nil)
	a.oneOf(root)
	root.left--
	return true
}

// standsFirst is what stands first of what is neither a front nor a back: the front of a round that is shared out, and no base before what stands on it.
func standsFirst(list []*proto) *proto {
	root := list[0]
	for _, q := range list {
		if q.share && q.face == front || root.disc && !q.disc {
			root = q
		}
	}
	return root
}

// goesOnFrom reports whether a piece begins from stitches of another of a kind that other pieces hang from.
func (a *assembly) goesOnFrom(m *schematic.Made) bool {
	return holds[m.Kind] && slices.ContainsFunc(heldFrom(m), func(f schematic.HeldPart) bool {
		of := a.made(f.Piece)
		return of != nil && of != m && of.Kind == m.Kind
	})
}

// onLegs reports whether a piece goes on from more than one of what is made several times, such as from two legs.
func (a *assembly) onLegs(m *schematic.Made) bool {
	n := 0
	for _, f := range heldFrom(m) {
		if of := a.made(f.Piece); of != nil && of.Make > m.Make {
			n++
		}
	}
	return n > 1 && m.Kind == schematic.KindSkirt
}

// ring is a panel closed by its seam, as a ring, unless a join of it binds it to another piece; or nil.
func (a *assembly) ring(p *proto) *panel {
	keys := keysOf(p.loop)
	maps.DeleteFunc(keys, func(k string, _ bool) bool { return !strings.HasPrefix(k, "join ") })
	if slices.ContainsFunc(a.protos, func(q *proto) bool { return q.made != p.made && sharesKey(q.loop, keys) }) {
		return nil
	}
	return p.ring()
}

// standing is the motion that stands a panel upright on its middle.
func (p *panel) standing() motion {
	lo, hi := box(p.loop)
	switch {
	case p.lying != 0:
		return p.onItsSide()
	case p.made.Kind == schematic.KindBag && p.made.From == schematic.FromCentre: // it stands on its base
		return motion{cos: -1, by: pt{X: p.middle(), Y: hi.Y}}
	}
	return motion{cos: 1, by: pt{X: -p.middle(), Y: -lo.Y}}
}

// bodices are the fronts that do not stand on another by an end, and without skirts, if any is left: they hang from it.
func (a *assembly) bodices(fronts []*proto) []*proto {
	fronts = slices.DeleteFunc(slices.Clone(fronts), func(q *proto) bool { // such as a bib
		return len(q.made.Piece.Onto) > 0 || slices.ContainsFunc(a.ends, func(s sewnOn) bool { return a.sews(s.join, q.made) })
	})
	if b := slices.DeleteFunc(slices.Clone(fronts), func(q *proto) bool { return q.made.Kind == schematic.KindSkirt }); len(b) > 0 {
		return b
	}
	return fronts
}

// oneOf leaves one of a pair of mittens to be drawn, with its share of the other pieces.
func (a *assembly) oneOf(root *proto) {
	if n := root.left; holds[root.made.Kind] && n > 1 {
		for _, q := range a.protos {
			q.left = (q.left + n - 1) / n
		}
	}
}

// holds are the kinds of piece that other pieces hang from as they do from a body.
var holds = map[schematic.Kind]bool{schematic.KindBag: true, schematic.KindMitten: true, schematic.KindSock: true}

// settle puts a panel where a motion brings it. Its sides run, from side first on, lie on the chain, and
// are drawn there.
func (a *assembly) settle(p *panel, m motion, run []int, c *chain) {
	p.where = m
	n := len(p.loop)
	if c == nil {
		for _, s := range p.loop {
			s.a = m.at(s.a)
			p.drawn = append(p.drawn, s)
		}
		a.placed = append(a.placed, p)
		return
	}
	// The run, from its own beginning, meets the chain from its end.
	k := len(c.path) - 1
	for i := range c.at {
		at := c.at[len(c.at)-1-i]
		at.p.drawn[at.i].taken, p.hosts = true, append(p.hosts, at.p)
		s := at.p.drawn[at.i]
		s.a = c.path[k-i]
		s.taken = true
		p.drawn = append(p.drawn, s)
	}
	after := (run[len(run)-1] + 1) % n
	narrow := absf(c.start().Y-c.end().Y) < close && dist(p.loop[after].a, p.loop[run[0]].a) < leastEased*c.chord() // such as a bib on a wider waist
	far := func(real, put pt, host *panel) bool {
		d := dist(real, put)
		return d > p.slack() || narrow && d > mostTucked || d > mostTucked && !p.shares() && schematic.InPolygon(points(host.drawn), real)
	}
	endOf, startOf := m.at(p.loop[after].a), m.at(p.loop[run[0]].a)
	rest := n - len(run)
	for j := range rest {
		s := p.loop[(after+j)%n]
		s.a = m.at(s.a)
		if j == 0 {
			if far(endOf, c.path[0], c.at[0].p) {
				gap := s
				gap.a, gap.keys, gap.name, gap.gap = c.path[0], nil, "", true
				p.drawn = append(p.drawn, gap)
			} else {
				s.a = c.path[0]
			}
		}
		p.drawn = append(p.drawn, s)
	}
	if far(startOf, c.path[k], c.at[k-1].p) && rest > 0 {
		p.drawn = append(p.drawn, side{a: startOf, gap: true})
	}
	a.placed = append(a.placed, p)
}

// mostDrawn is how far the end of a bonded edge is drawn to that of its partner, mm: what is
// sewn has no gap, and so little more does not show. An underarm may gape wider; what would at its other end does not lie flat as one panel, such as a sleeve with the strap
// of its shoulder.
const mostDrawn = 50.0

// leastEased is how much of its partner's length a level edge has at least that is drawn as wide as that.
const leastEased = 0.85

// mostTucked is the same, mm, of what comes to lie on its host, which hides it.
const mostTucked = 10.0

// slack is mostDrawn of a panel; a share of a round yoke, which has no seam there, has more of it: in large sizes the shares of body and
// sleeve slope otherwise by several stitches.
func (p *panel) slack() float64 {
	if p.shares() {
		return 2 * mostDrawn
	}
	return mostDrawn
}

// shares reports whether a panel is a share of a round.
func (p *panel) shares() bool {
	return slices.ContainsFunc(p.loop, func(s side) bool { return s.name == shareEdge })
}

// fit is a way in which a panel may be placed.
type fit struct {
	q     *proto
	p     *panel
	run   []int
	chain *chain
	score float64
}

// candidates are the forms in which a panel may lie: as it is, either half of it, or either half
// of a tube.
func (q *proto) candidates() []*panel {
	switch {
	case q.folded:
		key := "fold of " + q.name
		x := q.middle()
		var out []*panel
		for _, left := range []bool{true, false} {
			h := q.half(x, left, key)
			if h == nil {
				continue
			}
			if q.puffed && q.made.Kind == schematic.KindSleeve {
				h.spread(x)
			}
			if out = append(out, h); q.strap { // of one of a pair another side lies in front
				out = append(out, h.mirrored())
			}
		}
		return out
	case len(q.variants) > 0:
		return q.variants
	}
	return []*panel{q.panel}
}

// fit is the best way to place a panel on what is there.
func (a *assembly) fit(q *proto) fit {
	forms := q.candidates()
	best := a.fitOf(q, forms)
	if best.score == 0 && q.folded && q.made.Kind == schematic.KindSleeve && q.made.Make > 1 { // the other of a pair, of which another side lies in front
		for i := range forms {
			forms[i] = forms[i].mirrored()
		}
		best = a.fitOf(q, forms)
	}
	return best
}

func (a *assembly) fitOf(q *proto, forms []*panel) fit {
	var best fit
	for _, p := range forms {
		keys := keysOf(p.loop)
		for _, c := range a.chains(q, keys) {
			f := a.meet(q, p, c)
			if f.score > best.score+1e-9 {
				best = f
			}
		}
	}
	return best
}

// chains are the ways along free sides of what faces front that share a bond with a panel.
func (a *assembly) chains(q *proto, keys map[string]bool) []*chain {
	var all []*chain
	for _, p := range a.placed {
		if p.face != back && (p.made != q.made || p.view != q.view || q.share || q.leg) {
			own := maps.Clone(keys)
			maps.DeleteFunc(own, func(k string, _ bool) bool { return !binds(k, q.panel, p) })
			all = append(all, p.ways(own)...)
		}
	}
	if q.view < 0 {
		all = append(all, a.bridges(all)...)
	}
	return linked(all)
}

// bridges are the ends of bands that lie between two of the ways of another band: that goes on over them.
func (a *assembly) bridges(ways []*chain) (out []*chain) {
	for _, p := range a.placed {
		for i, s := range p.drawn {
			if z := p.drawn[(i+1)%len(p.drawn)].a; p.strip && s.name == "end" && !s.taken && !s.blind &&
				slices.ContainsFunc(ways, func(c *chain) bool { return near(c.end(), s.a) }) &&
				slices.ContainsFunc(ways, func(c *chain) bool { return near(c.start(), z) }) {
				out = append(out, &chain{at: []place{{p, i}}, path: []pt{s.a, z}})
			}
		}
	}
	return out
}

// binds reports whether a key binds two panels to each other: that of a piece which is worked onto edges of both, such as a hood onto the necks of front
// and back, binds each to that piece.
func binds(key string, x, y *panel) bool {
	return !strings.HasPrefix(key, "onto ") || x.made == nil || key == ontoKey(x.made) || key == ontoKey(y.made)
}

// ways are the longest ways along free sides of a panel with one of the keys.
func (p *panel) ways(keys map[string]bool) []*chain {
	n := len(p.drawn)
	free := func(i int) bool {
		s := &p.drawn[i%n]
		return !s.taken && !s.fold && s.has(keys)
	}
	first := 0
	for first < n && free(first) {
		first++
	}
	var all []*chain
	var cur *chain
	for k := range n {
		i := (first + k) % n
		switch {
		case first == n: // all of its edge
			return nil
		case !free(i):
			cur = nil
			continue
		case cur == nil || p.drawn[i].parted(cur.last()):
			cur = &chain{path: []pt{p.drawn[i].a}}
			all = append(all, cur)
		}
		cur.at = append(cur.at, place{p, i})
		cur.path = append(cur.path, p.drawn[(i+1)%n].a)
	}
	return all
}

// linked are the ways of which those that go on in each other are made one.
func linked(all []*chain) []*chain {
	for {
		i, j := goingOn(all)
		if i < 0 {
			return all
		}
		x, y := all[i], all[j]
		x.at = append(x.at, y.at...)
		x.path = append(x.path, y.path[1:]...)
		all = slices.Delete(all, j, j+1)
	}
}

// goingOn are the first two ways of which the second begins where the first ends, or -1.
func goingOn(all []*chain) (int, int) {
	for i, x := range all {
		for j, y := range all {
			if i != j && dist(x.end(), y.start()) < 1 && !x.turnsBack(y) && !y.first().parted(x.last()) {
				return i, j
			}
		}
	}
	return -1, -1
}

func (c *chain) first() *side { return &c.at[0].p.drawn[c.at[0].i] }
func (c *chain) last() *side  { return &c.at[len(c.at)-1].p.drawn[c.at[len(c.at)-1].i] }

// parted reports whether two sides take two of one piece, such as two legs.
func (s *side) parted(o *side) bool { return s.part != o.part && s.part > 0 && o.part > 0 }

// turnsBack reports whether the way along y would go back along that of x: two fronts that meet are no one edge.
func (x *chain) turnsBack(y *chain) bool {
	n := len(x.path)
	a, b := sub(x.path[n-1], x.path[n-2]), sub(y.path[1], y.path[0])
	return dot(a, b) < -0.99*length(a)*length(b)
}

// meet lays a panel on a chain, if the run of its sides that the chain bonds suits it.
func (a *assembly) meet(q *proto, p *panel, c *chain) fit {
	keys, own := keysOf(c.sides()), keysOf(p.loop)
	for k := range keys {
		if !own[k] {
			delete(keys, k)
		}
	}
	run := longestRun(p.loop, keys)
	if len(run) == 0 {
		return fit{}
	}
	n := len(p.loop)
	from, to := p.loop[run[0]].a, p.loop[(run[len(run)-1]+1)%n].a
	most := a.mostUnlike(keys)
	if !alikeChords(dist(from, to), c.chord(), most) && !p.alikeBond(run, c, most) || !c.inOrder(p.loop[run[0]], p.loop[run[len(run)-1]]) || !q.rightWayUp(c, from, to) || q.foldsUnderarm(p, run, c) || p.strap && !p.inwards(run, c) {
		return fit{}
	}
	return fit{q, p, run, c, a.matched(q, p, run) + 0.01*p.addedBeside(run, c)}
}

// alikeBond reports whether the longest bond of a run of a sleeve is as long as its partner, though added stitches turn the way that both lie on so that its ends do not
// meet: those of a wide underarm go back below the yoke.
func (p *panel) alikeBond(run []int, c *chain, most float64) bool {
	first, last, on, to := longestBond(p, run, c)
	own := dist(p.loop[run[first]].a, p.loop[(run[last]+1)%len(p.loop)].a)
	return p.made.Kind == schematic.KindSleeve && last-first+1 < len(run) && alikeChords(own, dist(on, to), most)
}

// addedBeside is 1 if the stitches that are added beside a run of the panel come to lie where its partner leaves some, as those of a
// leg do at the crotch, or those on hold beside it at the underarm, or else 0.
func (p *panel) addedBeside(run []int, c *chain) float64 {
	n := len(p.loop)
	prefixed := func(s side, prefix string) bool {
		return slices.ContainsFunc(s.keys, func(k string) bool { return strings.HasPrefix(k, prefix) })
	}
	from, to := c.at[0], c.at[len(c.at)-1]
	before := from.p.drawn[(from.i+len(from.p.drawn)-1)%len(from.p.drawn)]
	after := to.p.drawn[(to.i+1)%len(to.p.drawn)]
	own, other := p.loop[(run[len(run)-1]+1)%n], p.loop[(run[0]+n-1)%n]
	goesOn := func(s side) bool { return !s.fold && s.name == p.loop[run[0]].name } // with stitches on hold for an underarm
	up := c.end().Y - c.start().Y
	switch {
	case goesOn(own) && up > 1, goesOn(other) && up < -1:
		return 1
	case prefixed(before, addedTo) && prefixed(own, addedTo), prefixed(after, addedTo) && prefixed(other, addedTo),
		before.parted(c.first()) && prefixed(own, crotchOf), after.parted(c.last()) && prefixed(other, crotchOf):
		return 1
	}
	return 0
}

// atCrotch is which end of a level chain meets the partner of another of its like, such as the other leg: 0 its start, 1 its end, or 0.5 if neither does.
func (c *chain) atCrotch() float64 {
	from, to := c.at[0], c.at[len(c.at)-1]
	before := from.p.drawn[(from.i+len(from.p.drawn)-1)%len(from.p.drawn)]
	after := to.p.drawn[(to.i+1)%len(to.p.drawn)]
	switch start, end := before.parted(c.first()), after.parted(c.last()); {
	case start && !end:
		return 0
	case end && !start:
		return 1
	}
	return 0.5
}

// sides are those of placed panels that the chain runs along.
func (c *chain) sides() []side {
	var out []side
	for _, s := range c.at {
		out = append(out, s.p.drawn[s.i])
	}
	return out
}

// alikeChords reports whether two chords are so alike in length that one may be sewn to the other.
func alikeChords(x, y, most float64) bool {
	return x >= 1 && y >= 1 && x/y <= most && y/x <= most
}

// mostUnlike is how many times as long as its partner an edge with these bonds may be.
func (a *assembly) mostUnlike(keys map[string]bool) float64 {
	for k := range keys {
		if a.gathers[k] {
			return mostGathered
		}
	}
	return mostUnlike
}

// inOrder reports whether along the chain the bonds come in the order of a run, from its end.
func (c *chain) inOrder(first, last side) bool {
	sides := c.sides()
	return last.has(keysOf(sides[:1])) && first.has(keysOf(sides[len(sides)-1:]))
}

// rightWayUp reports whether a panel whose chord from from to to lies on the chain is worn as its pattern says: not
// upside down, unless it hangs free, and upright if it is worn in front.
func (q *proto) rightWayUp(c *chain, from, to pt) bool {
	cos := laying(to, from, c.start(), c.end(), 0).cos
	return (c.at[0].p.made == q.made || q.upended || cos >= -0.5 || schematic.HangsFree(q.made.Name)) && (q.face != front || q.share || cos >= 0.9)
}

// foldsUnderarm reports whether a panel that is folded would have its fold at the underarm, which is the lower end of the chain.
func (q *proto) foldsUnderarm(p *panel, run []int, c *chain) bool {
	if !q.folded {
		return false
	}
	n := len(p.loop)
	first, last := p.loop[(run[0]+n-1)%n].fold, p.loop[(run[len(run)-1]+1)%n].fold
	up := c.end().Y - c.start().Y
	return first && !last && up < -1 || last && !first && up > 1
}

// matched is how much of the bonded edges of a panel, of those that reach what is or may be in front, a run has: of two that
// have all, the longer has a little more.
func (a *assembly) matched(q *proto, p *panel, run []int) float64 {
	bonded, matched := 0.0, 0.0
	for i, s := range p.loop {
		if len(s.keys) == 0 || s.fold || !a.reaches(q, &s) {
			continue
		}
		l := dist(s.a, p.loop[(i+1)%len(p.loop)].a)
		bonded += l
		if slices.Contains(run, i) {
			matched += l
		}
	}
	score := 1.0
	if bonded > 0 {
		score = matched / bonded
	}
	return score + 0.1*min(1, matched/2000)
}

// mostUnlike is how many times as long as its partner a bonded edge may be: more is a mistake in the
// pattern or in what is taken for bonded.
const mostUnlike = 1.9

// mostGathered is the same of what is gathered.
const mostGathered = 5.0

// reaches reports whether a bond of a side leads to a panel that is, or may be, in front.
func (a *assembly) reaches(q *proto, s *side) bool {
	keys := keysOf([]side{*s})
	for _, o := range a.protos {
		if o.panel != q.panel && o.face != back && o.made != q.made && sharesKey(o.loop, keys) {
			return true
		}
		if o.panel != q.panel && o.face != back && o.made == q.made && (o.view != q.view || q.leg) && sharesKey(o.loop, keys) {
			return true
		}
		if o.share && o.panel != q.panel && o.face != back && sharesKey(o.loop, keys) {
			return true
		}
	}
	return slices.ContainsFunc(a.placed, func(p *panel) bool { return p.strip && sharesKey(p.drawn, keys) })
}

// longestRun are the sides, in order, of the longest run with one of the keys.
func longestRun(loop []side, keys map[string]bool) []int {
	n := len(loop)
	has := func(i int) bool { return !loop[i%n].fold && loop[i%n].has(keys) }
	first := 0
	for first < n && has(first) {
		first++
	}
	if first == n {
		return nil
	}
	var best, cur []int
	bl, cl := 0.0, 0.0
	for k := 1; k <= n; k++ {
		i := (first + k) % n
		if !has(i) {
			cur, cl = nil, 0
			continue
		}
		cur = append(cur, i)
		if cl += dist(loop[i].a, loop[(i+1)%n].a); cl > bl {
			best, bl = slices.Clone(cur), cl
		}
	}
	return best
}

// level is how much steeper than this an edge is, as a share of its length, that has an underarm at its
// lower end.
const level = 0.25

// lay places a panel: the chord of its bonded edge on that of the chain, the underarm held fast, or the middle
// where the chain is level. Of several bonds it is the longest whose chord is laid.
func (a *assembly) lay(f fit) {
	p := *f.p
	n := len(p.loop)
	first, last, from, to := longestBond(&p, f.run, f.chain)
	x, y := p.loop[f.run[first]].a, p.loop[(f.run[last]+1)%n].a
	hold := f.chain.atCrotch()
	if d := sub(to, from); math.Abs(d.Y) > level*length(d) {
		hold = 0
		if d.Y < 0 {
			hold = 1
		}
	}
	// The run's end meets the chain's start.
	laid := chord{own: [2]pt{y, x}, on: [2]pt{from, to}, hold: hold}
	if square := f.squareTop(laid); square != nil {
		laid = *square
	} else if p.made.Kind == schematic.KindSleeve && p.halved && hold != 0.5 && absf(x.Y-y.Y) < close && dist(x, y) > dist(from, to) {
		laid.hold = 1 - hold // a level end that is the longer hangs from the shoulder: it would stand up above it
	}
	m := laying(laid.own[0], laid.own[1], laid.on[0], laid.on[1], laid.hold)
	run0, run1 := p.loop[f.run[0]].a, p.loop[(f.run[len(f.run)-1]+1)%n].a
	upper := dist(m.at(run0), f.chain.end())
	if hold == 1 {
		upper = dist(m.at(run1), f.chain.start())
	}
	if hold != 0.5 && upper > p.slack() {
		f.q.unfit = true
		return
	}
	p.drawn = nil
	f.chain.straighten(&p, f.run, m)
	a.settle(&p, m, f.run, f.chain)
	p.laid = laid
	p.hung, p.seam = true, [2]pt{f.chain.start(), f.chain.end()}
	p.own = [2]pt{run1, run0}
	for _, at := range f.chain.at {
		p.onto = append(p.onto, at.p.drawn[at.i].name)
	}
	f.q.left--
	ends := f.chain.at
	p.tuck(ends[0].p, f.chain.start())
	p.tuck(ends[len(ends)-1].p, f.chain.end())
}

// squareTop lays the level end of a sleeve that is folded in half along the upright of its armhole, from the shoulder, instead of a chord: below it
// stitches are left for both at the underarm, whose chords would tilt it. Nil if it has no such end.
func (f *fit) squareTop(c chord) *chord {
	if f.p.made.Kind != schematic.KindSleeve || !f.p.halved || c.hold == 0.5 {
		return nil
	}
	n := len(f.p.loop)
	at := f.run[0] // the side next to the fold, where the chain ends
	if c.hold == 1 {
		at = f.run[len(f.run)-1]
	}
	own, on := [2]pt{f.p.loop[(at+1)%n].a, f.p.loop[at].a}, longestStraight(f.chain.path)
	d, least := sub(on[1], on[0]), 0.6*dist(c.on[0], c.on[1])
	switch {
	case absf(own[0].Y-own[1].Y) > close || absf(d.X) > 0.02*absf(d.Y):
		return nil
	case length(d) < least || dist(own[0], own[1]) < least:
		return nil
	case near(on[0], c.on[0]) && near(on[1], c.on[1]):
		return nil // its chord is the armhole's
	}
	return &chord{own: own, on: on, hold: 1 - c.hold}
}

// longestStraight is the longest stretch of a path that goes straight on.
func longestStraight(path []pt) (out [2]pt) {
	for i := 0; i+1 < len(path); {
		k := i + 1
		for k+1 < len(path) && absf(cross(sub(path[k], path[i]), sub(path[k+1], path[k]))) < 1e-3*dist(path[i], path[k])*dist(path[k], path[k+1]) {
			k++
		}
		if dist(path[i], path[k]) > dist(out[0], out[1]) {
			out = [2]pt{path[i], path[k]}
		}
		i = k
	}
	return out
}

// straighten draws a way on its chord where what is laid on it, a panel of the same piece, bulges against it as the spine of a shawl with a
// deeper border does: both wings have an equal share of it.
func (c *chain) straighten(p *panel, run []int, m motion) {
	if len(c.path) < 3 || c.at[0].p.made != p.made || len(run) != len(c.at) {
		return
	}
	d := mul(sub(c.end(), c.start()), 1/max(1, c.chord()))
	off := func(q pt) float64 { return cross(d, sub(q, c.start())) }
	for k := 1; k < len(c.path)-1; k++ {
		own := m.at(p.loop[run[len(run)-k]].a)
		if there, here := off(c.path[k]), off(own); absf(there+here) > 0.2*(absf(there)+absf(here)) || absf(there) > mostDrawn {
			return
		}
	}
	for k := 1; k < len(c.path)-1; k++ {
		c.path[k] = add(c.start(), mul(d, dot(d, sub(c.path[k], c.start()))))
		c.at[k].p.drawn[c.at[k].i].a = c.path[k]
	}
}

// longestBond is the longest stretch of one bond in a run: its first and last side, counted in the run, and
// the ends of its partner on the chain.
func longestBond(p *panel, run []int, c *chain) (first, last int, from, to pt) {
	type group struct{ first, last int }
	n := len(p.loop)
	groups := []group{{0, 0}}
	for i := 1; i < len(run); i++ {
		g := &groups[len(groups)-1]
		if p.loop[run[i]].has(keysOf([]side{p.loop[run[g.first]]})) {
			g.last = i
		} else {
			groups = append(groups, group{i, i})
		}
	}
	// The same on the chain, from its end.
	var ends [][2]int
	k := len(c.at)
	same := func(i, j int) bool {
		x, y := c.at[i], c.at[j]
		return x.p.drawn[x.i].has(keysOf([]side{y.p.drawn[y.i]}))
	}
	for i := k - 1; i >= 0; i-- {
		if len(ends) > 0 && same(i, ends[len(ends)-1][1]) {
			ends[len(ends)-1][0] = i
		} else {
			ends = append(ends, [2]int{i, i})
		}
	}
	if len(ends) != len(groups) {
		return 0, len(run) - 1, c.start(), c.end()
	}
	best, long := 0, -1.0
	for i, g := range groups {
		if l := dist(p.loop[run[g.first]].a, p.loop[(run[g.last]+1)%n].a); l > long {
			best, long = i, l
		}
	}
	g, e := groups[best], ends[best]
	return g.first, g.last, c.path[e[0]], c.path[e[1]+1]
}

// overlay lays what faces the other way over what it is bonded to at its sides: seen from the front,
// both edges lie on each other.
func (a *assembly) overlay() {
	for again := true; again; {
		again = false
		for _, q := range a.protos {
			if q.left < 1 || q.face == either || q.share || q.unfit {
				continue
			}
			p := q.panel
			if q.face == back {
				p = q.mirrored()
			}
			by, apart, ok := a.over(p)
			if q.unfit = apart; !ok || apart {
				continue
			}
			c := *p
			c.drawn = nil
			a.settle(&c, motion{cos: 1, by: by}, nil, nil)
			q.left--
			again = true
		}
	}
}

// over is the move that brings a panel onto the panels of the other face: the mean of what brings the ends
// of each bonded run onto those of its partner, upright edges before level ones. They are apart if upright edges then lie far beside their partners: such
// a back goes round to the front.
func (a *assembly) over(p *panel) (by pt, apart, ok bool) {
	var pairs []pair
	for _, o := range a.placed {
		if o.face == either || o.face == p.face && (p.face != back || o.made == p.made) { // of what lies behind, one may go on from another
			continue
		}
		pairs = append(pairs, p.pairs(o)...)
	}
	if up := slices.DeleteFunc(slices.Clone(pairs), func(q pair) bool { return !q.own.upright() }); len(up) > 0 {
		pairs = up
	}
	var sum pt
	for _, q := range pairs {
		sum = add(sum, q.move())
	}
	by = mul(sum, 1/max(1, float64(len(pairs))))
	for _, q := range pairs {
		apart = apart || q.own.upright() && absf(q.move().X-by.X) > mostDrawn
	}
	return by, apart, len(pairs) > 0
}

// pairs are the bonded runs of a panel, each with that of a placed one at the same side which is most alike in length.
func (p *panel) pairs(o *panel) []pair {
	var out []pair
	along := 1.0
	if o.face == p.face { // they lie side by side
		along = -1
	}
	for _, r := range keyedRuns(p.loop) {
		best, unlike := keyedRun{}, math.Inf(1)
		for _, s := range keyedRuns(o.drawn) {
			same := r.key == s.key && (along > 0 || strings.HasPrefix(r.key, "held ")) && binds(r.key, p, o) && along*dot(sub(r.z, r.a), sub(s.z, s.a)) > 0 && (r.mid()-p.middle())*(s.mid()-o.mid()) >= 0
			if by := (pair{r, s}).unlike(); same && by < unlike {
				best, unlike = s, by
			}
		}
		if best.key != "" {
			out = append(out, pair{r, best})
		}
	}
	// An edge that short rows part has several runs for one of its partner: the most alike is laid there.
	return slices.DeleteFunc(slices.Clone(out), func(q pair) bool {
		return slices.ContainsFunc(out, func(r pair) bool { return r.on == q.on && r.unlike() < q.unlike() })
	})
}

// pair is a run of a panel and that which it is to lie over.
type pair struct{ own, on keyedRun }

// unlike is by how much one of the two is longer.
func (q pair) unlike() float64 { return absf(dist(q.own.a, q.own.z) - dist(q.on.a, q.on.z)) }

// move brings the run onto its partner: as high as its lower end and, where ribs draw in otherwise, beside its upper end, which is the
// underarm; its middle if it is level.
func (q pair) move() pt {
	if !q.own.upright() {
		return sub(mid(q.on.a, q.on.z), mid(q.own.a, q.own.z))
	}
	low, high := byHeight(q.on.a, q.on.z)
	own, ownHigh := byHeight(q.own.a, q.own.z)
	return pt{X: high.X - ownHigh.X, Y: low.Y - own.Y}
}

func (r keyedRun) upright() bool { return absf(r.z.Y-r.a.Y) > absf(r.z.X-r.a.X) }
func (r keyedRun) mid() float64  { return (r.a.X + r.z.X) / 2 }

func (p *panel) mid() float64 {
	lo, hi := box(p.drawn)
	return (lo.X + hi.X) / 2
}

// keyedRun is a run of sides of one bond.
type keyedRun struct {
	key  string
	a, z pt
}

func keyedRuns(loop []side) []keyedRun {
	var out []keyedRun
	n := len(loop)
	keys := keysOf(loop)
	names := make([]string, 0, len(keys))
	for k := range keys {
		names = append(names, k)
	}
	slices.Sort(names)
	for _, k := range names {
		has := func(i int) bool { return slices.Contains(loop[i%n].keys, k) }
		for i := range n {
			if !has(i) || has(i+n-1) && i > 0 || has(i+n-1) && i == 0 {
				continue
			}
			j := i
			for has(j) && j < i+n {
				j++
			}
			out = append(out, keyedRun{k, loop[i].a, loop[j%n].a})
		}
	}
	return out
}

// stand turns a flat piece of panels that has neither front nor back until it stands on its middle: the line
// between its two middle panels is upright, or its middle panel is.
func (a *assembly) stand() {
	if len(a.placed) == 0 {
		return
	}
	root := a.placed[0]
	if root.face != either || !root.made.Views[root.view].Panel || root.made.Round {
		return // a round has its root in the middle
	}
	row := a.rowOf(root)
	mid := row[len(row)/2]
	m := motion{cos: mid.where.cos, sin: -mid.where.sin}
	if len(row)%2 == 0 {
		var a, z pt
		other := points(row[len(row)/2-1].drawn)
		for i, s := range mid.drawn {
			e := mid.drawn[(i+1)%len(mid.drawn)].a
			if s.taken && dist(s.a, e) > dist(a, z) && slices.ContainsFunc(other, func(q pt) bool { return near(q, s.a) }) && slices.ContainsFunc(other, func(q pt) bool { return near(q, e) }) {
				a, z = s.a, e
			}
		}
		d := sub(z, a)
		if length(d) == 0 {
			return
		}
		up := pt{Y: 1}
		if dot(mid.where.turn(up), d) < 0 {
			up.Y = -1
		}
		m = laying(pt{}, d, pt{}, up, 0)
	}
	for _, p := range a.placed {
		p.turn(m)
	}
}

// turn moves a placed panel once more.
func (p *panel) turn(m motion) {
	p.where = motion{cos: m.cos*p.where.cos - m.sin*p.where.sin, sin: m.sin*p.where.cos + m.cos*p.where.sin, by: m.at(p.where.by)}
	for i := range p.drawn {
		p.drawn[i].a = m.at(p.drawn[i].a)
	}
}
