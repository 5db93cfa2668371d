package worn

import (
	"iter"
	"math"
	"slices"

	"flatwright/schematic"
)

// sewnOn is a join of ends that are sewn on in places along an edge, such as those of handles and ties.
type sewnOn struct {
	join *schematic.Join
	key  string // of the edge that takes them
	into int    // how many edges take them
}

// sewOn lays what is sewn on by its ends onto what is there: with both of its ends it stands in an arch from one place to
// the next, as long along its middle as it is worked; with one it hangs straight from its place. It reports whether it laid any.
func (a *assembly) sewOn() bool {
	before := len(a.placed)
	for _, s := range a.ends {
		for m, edges := range a.sewnEnds(s.join) {
			if o := a.otherEnd(s, m); o != nil && a.liesInFront(o.key) && !a.liesInFront(s.key) {
				continue // it is laid by that
			}
			for _, q := range a.protos {
				if q.made == m && q.left > 0 && !m.Round {
					a.sewOnEnds(s, q, edges)
				}
			}
		}
	}
	return len(a.placed) > before
}

// sewnEnds are the pieces that a join sews on, in order, each with its ends: those of one strap may be listed one by one.
func (a *assembly) sewnEnds(j *schematic.Join) iter.Seq2[*schematic.Made, []schematic.Edge] {
	return func(yield func(*schematic.Made, []schematic.Edge) bool) {
		var order []*schematic.Made
		of := map[*schematic.Made][]schematic.Edge{}
		for _, ref := range j.Sew {
			m, edges := a.g.EdgesOf(ref)
			if len(edges) == 0 { // a finding says so
				continue
			}
			if of[m] == nil {
				order = append(order, m)
			}
			of[m] = append(of[m], edges...)
		}
		for _, m := range order {
			if !yield(m, of[m]) {
				return
			}
		}
	}
}

// spot is a place on an edge, and the way out of its panel there.
type spot struct{ at, out pt }

// directionAt is the way along a path at a share of it.
func directionAt(path []pt, share float64) pt {
	const step = 0.001
	d := sub(alongPath(path, min(1, share+step)), alongPath(path, max(0, share-step)))
	return mul(d, 1/max(length(d), close))
}

func (a *assembly) sewOnEnds(s sewnOn, q *proto, ends []schematic.Edge) {
	of := ends[0].Path
	wide := dist(of[0], of[len(of)-1])
	behind := a.behind(s, q.made)
	done := false
	for _, spots := range a.spots(s, wide) {
		switch {
		case len(ends) == 1 || len(ends) == 2 && len(behind) > 0: // two of a camisole's ends are sewn on behind
			for _, at := range spots {
				done = true
				p := *q.toShoulder(behind, of[0], at)
				p.drawn, p.hung = nil, true
				// The loop runs on along the end against the edge that takes it.
				along := pt{X: -at.out.Y * wide / 2, Y: at.out.X * wide / 2}
				p.laid = chord{own: [2]pt{of[0], of[len(of)-1]}, on: [2]pt{add(at.at, along), sub(at.at, along)}, hold: 0.5}
				a.settle(&p, laying(p.laid.own[0], p.laid.own[1], p.laid.on[0], p.laid.on[1], 0.5), nil, nil)
			}
		case len(ends) == 2:
			l := dist(mid(of[0], of[len(of)-1]), mid(ends[1].Path[0], ends[1].Path[len(ends[1].Path)-1]))
			for i := 0; i+1 < len(spots); i += 2 {
				if p := arched(q, spots[i], spots[i+1], l, wide); p != nil {
					done = true
					a.placed = append(a.placed, p)
				}
			}
		}
	}
	if done {
		q.left = 0
	}
}

// behind are the ways behind to which the other ends of straps are sewn, of which one is sewn on in front.
func (a *assembly) behind(s sewnOn, m *schematic.Made) []*chain {
	if o := a.otherEnd(s, m); o != nil {
		if a.liesInFront(o.key) {
			return nil
		}
		return a.waysOf(o.key)
	}
	if !a.liesInFront(s.key) {
		return nil
	}
	return a.waysBehind(s.key)
}

// toShoulder is what of a strap stands up in front, if its other end is sewn on behind: it is folded on the shoulder, where the rest of it reaches
// down to that end. It is all of it if nothing says where that is.
func (p *panel) toShoulder(behind []*chain, foot pt, at spot) *panel {
	lo, hi := box(p.loop)
	for _, c := range behind {
		high := ((c.start().Y+c.end().Y)/2 - at.at.Y + hi.Y - lo.Y) / 2
		if absf(at.out.Y-1) > close || high < 1 || high > hi.Y-lo.Y-1 {
			continue
		}
		if q := p.cut(func(b pt) float64 { return high - absf(b.Y-foot.Y) }, "fold of "+p.name); q != nil {
			q.halved = true
			return q
		}
	}
	return p
}

// otherEnd is the join of the other end of what a join sews on by one of its ends, or nil.
func (a *assembly) otherEnd(s sewnOn, m *schematic.Made) *sewnOn {
	for i := range a.ends {
		if o := &a.ends[i]; o.join != s.join && a.sews(o.join, m) {
			return o
		}
	}
	return nil
}

// liesInFront reports whether what takes ends is a piece that lies in front, and no round.
func (a *assembly) liesInFront(key string) bool {
	return slices.ContainsFunc(a.protos, func(q *proto) bool {
		return q.face == front && !q.made.Round && slices.ContainsFunc(q.loop, func(s side) bool { return slices.Contains(s.keys, key) })
	})
}

// waysOf are the ways along the edges that take ends: of what shows, or else of the back.
func (a *assembly) waysOf(key string) []*chain {
	if ways := a.chains(&proto{panel: &panel{view: -1}}, map[string]bool{key: true}); len(ways) > 0 {
		return ways
	}
	return a.waysBehind(key) // a strap that is sewn to the back stands up behind it
}

// waysBehind are the ways along the edges of the back that take ends.
func (a *assembly) waysBehind(key string) []*chain {
	var ways []*chain
	for _, p := range a.placed {
		if p.face == back {
			ways = append(ways, p.ways(map[string]bool{key: true})...)
		}
	}
	return ways
}

// spots are, for each edge that takes ends, the places that show, in order along it.
func (a *assembly) spots(s sewnOn, wide float64) [][]spot {
	var all [][]spot
	for _, c := range a.waysOf(s.key) {
		host := c.at[0].p
		var list []spot
		for _, t := range s.shares(c, host) {
			if least := wide / 2 / c.chord(); least < 0.5 { // at a fold the end lies within the panel
				t = min(max(t, least), 1-least)
			}
			at, d := alongPath(c.path, t), directionAt(c.path, t)
			list = append(list, spot{at, pt{X: d.Y, Y: -d.X}})
		}
		all = append(all, list)
	}
	return all
}

// shares are the shares of the way along a chain, on edges of a host, at which the places lie.
func (s *sewnOn) shares(c *chain, host *panel) []float64 {
	of := func(e *schematic.Edge) (out []float64) {
		for _, share := range s.join.Spots(host.made, e, s.into) {
			out = append(out, share.Float())
		}
		return out
	}
	name := c.first().name
	if !host.halved {
		return of(&schematic.Edge{View: host.view})
	}
	var out []float64 // of those that show
	for i := range host.made.Edges {
		e := &host.made.Edges[i]
		if e.View != host.view || e.Name != name {
			continue
		}
		for _, t := range of(e) {
			if at := host.spot(alongPath(e.Path, t)); distTo(c.path, at) < 1 {
				out = append(out, c.shareOf(at))
			}
		}
	}
	slices.Sort(out)
	return out
}

// shareOf is the share of the way along a chain at which a place on it lies.
func (c *chain) shareOf(at pt) float64 {
	way := 0.0
	for i := 1; i < len(c.path); i++ {
		if distTo(c.path[i-1:i+1], at) < 1 {
			return (way + dist(c.path[i-1], at)) / pathLength(c.path)
		}
		way += dist(c.path[i-1], c.path[i])
	}
	return 1
}

// arched is a strip from one place to another on one edge, in an arch: two upright legs and half a circle, or, where it is too short
// for that, an arc of a circle, as long along its middle as the strip. Nil if it does not reach.
func arched(q *proto, from, to spot, long, wide float64) *panel {
	d := dist(from.at, to.at)
	if long <= d*1.001 || wide >= d {
		return nil
	}
	along := mul(sub(to.at, from.at), 1/d)
	turn := math.Pi / 2 // half of the arc
	leg := (long - float64(math.Pi*d)/2) / 2
	if leg < 0 {
		leg = 0
		lo, hi := 0.0, math.Pi/2
		for range 60 { // sin(turn) / turn = d / long
			if turn = (lo + hi) / 2; math.Sin(turn)*long > d*turn {
				lo = turn
			} else {
				hi = turn
			}
		}
	}
	r := d / 2 / math.Sin(turn)
	// side is the way beside the middle, so far to its outside.
	side := func(off float64) []pt {
		var path []pt
		at := func(x, y float64) { path = append(path, add(add(from.at, mul(along, x)), mul(from.out, y))) }
		if leg > 0 {
			at(-off, 0)
		}
		for i := range arcSteps + 1 {
			sin, cos := math.Sincos(turn - 2*turn*float64(i)/arcSteps)
			at(d/2-float64((r+off)*sin), leg-float64(r*math.Cos(turn))+float64((r+off)*cos))
		}
		if leg > 0 {
			at(d+off, 0)
		}
		return path
	}
	inner, outer := side(-wide/2), side(wide/2)
	p := *q.panel
	p.strip, p.where, p.drawn, p.lines, p.ribs = true, still, nil, nil, nil
	p.foot, p.drop = mid(from.at, to.at), inner[len(inner)/2]
	slices.Reverse(outer)
	loop := slices.Concat(inner, outer)
	if area(loop) < 0 {
		slices.Reverse(loop)
	}
	for _, x := range loop {
		p.drawn = append(p.drawn, sideAt(x))
	}
	p.loop = p.drawn
	return &p
}

func sideAt(x pt) side { return side{a: x, name: "side"} }
