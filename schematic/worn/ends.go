package worn

import (
	"math"
	"slices"

	"flatwright/schematic"
)

// sewnOn is a join of ends that are sewn on in places along an edge, such as those of handles and ties.
type sewnOn struct {
	join *schematic.Join
	key  string // of the edge that takes them
}

// sewOn lays what is sewn on by its ends onto what is there: with both of its ends it stands in an arch from one place to
// the next, as long along its middle as it is worked; with one it hangs straight from its place. It reports whether it laid any.
func (a *assembly) sewOn() bool {
	before := len(a.placed)
	for _, s := range a.ends {
		for _, ref := range s.join.Sew {
			m, edges := a.g.EdgesOf(ref)
			if m == nil {
				continue
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

// spot is a place on an edge, and the way out of its panel there.
type spot struct{ at, out pt }

func (a *assembly) sewOnEnds(s sewnOn, q *proto, ends []schematic.Edge) {
	of := ends[0].Path
	wide := dist(of[0], of[len(of)-1])
	done := false
	for _, spots := range a.spots(s, q, wide) {
		switch len(ends) {
		case 1:
			for _, at := range spots {
				done = true
				p := *q.panel
				p.drawn, p.hung = nil, true
				// The loop runs on along the end against the edge that takes it.
				along := pt{X: -at.out.Y * wide / 2, Y: at.out.X * wide / 2}
				p.laid = chord{own: [2]pt{of[0], of[len(of)-1]}, on: [2]pt{add(at.at, along), sub(at.at, along)}, hold: 0.5}
				a.settle(&p, laying(p.laid.own[0], p.laid.own[1], p.laid.on[0], p.laid.on[1], 0.5), nil, nil)
			}
		case 2:
			l := dist(mid(of[0], of[len(of)-1]), mid(ends[1].Path[0], ends[1].Path[len(ends[1].Path)-1]))
			for i := 0; i+1 < len(spots); i += 2 {
				if p := arched(q, spots[i], spots[i+1], l, wide); p != nil {
					p.order, done = len(a.placed), true
					a.placed = append(a.placed, p)
				}
			}
		}
	}
	if done {
		q.left = 0
	}
}

// spots are, for each edge that takes ends, the places that show, in order along it.
func (a *assembly) spots(s sewnOn, q *proto, wide float64) [][]spot {
	var all [][]spot
	keys := map[string]bool{s.key: true}
	ways := a.chains(q, keys)
	if len(ways) == 0 { // a strap that is sewn to the back stands up behind it
		for _, p := range a.placed {
			if p.face == back {
				ways = append(ways, p.ways(keys)...)
			}
		}
	}
	for _, c := range ways {
		host := c.at[0].p
		e := &schematic.Edge{View: host.view}
		var list []spot
		d := mul(sub(c.end(), c.start()), 1/c.chord())
		for _, share := range host.made.Spots(e, s.join.Places) {
			t := share.Float()
			if least := wide / 2 / c.chord(); least < 0.5 { // at a fold the end lies within the panel
				t = min(max(t, least), 1-least)
			}
			list = append(list, spot{alongPath(c.path, t), pt{X: d.Y, Y: -d.X}})
		}
		all = append(all, list)
	}
	return all
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
	p.strip, p.placed, p.where, p.drawn, p.lines, p.ribs = true, true, still, nil, nil, nil
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
