package worn

import (
	"math"
	"slices"

	"flatwright/schematic"
)

// disc bonds the circle that a bag begins with, or goes on from, to the beginning of the sides that are worked on from it.
func (a *assembly) disc(m *schematic.Made, p *panel) {
	key := "round of " + m.Name
	bag := m.Kind == schematic.KindBag
	for _, o := range a.g.Pieces {
		for _, f := range heldFrom(o) {
			if f.Piece == m.Name && (o.Kind == schematic.KindBag || o.Kind == schematic.KindPiece) {
				key, bag = heldKey(f.Piece, f.Part), true
			}
		}
	}
	if !bag {
		return
	}
	for i := range p.loop {
		p.loop[i].keys = append(p.loop[i].keys, key)
	}
	for _, q := range a.protos {
		if q.made != m || q.disc {
			continue
		}
		start, _ := ends(q.panel)
		for i := range q.loop {
			if levelAt(q.panel, i, start) {
				q.loop[i].keys = append(q.loop[i].keys, key)
			}
		}
	}
	a.add(p, m.Make)
}

// discs places the circles that are bonded to what is there: each touches the middle of its partner's edge from
// outside, as the base of a round vessel does in its net.
func (a *assembly) discs() {
	for _, q := range a.protos {
		if q.left < 1 || !q.disc {
			continue
		}
		lo, hi := box(q.loop)
		r := (hi.X - lo.X) / 2
		for _, c := range a.chains(q, keysOf(q.loop)) {
			around := math.Pi * r // half of its edge, as half of its partner's shows
			if l := c.chord(); l < 1 || l/around > mostUnlike || around/l > mostUnlike {
				continue
			}
			d := mul(sub(c.end(), c.start()), 1/c.chord())
			out := pt{X: d.Y, Y: -d.X} // loops run anticlockwise
			p := *q.panel
			p.drawn = nil
			a.settle(&p, motion{cos: 1, by: sub(add(mid(c.start(), c.end()), mul(out, r)), mid(lo, hi))}, nil, nil)
			for _, at := range c.at {
				at.p.drawn[at.i].taken = true
			}
			q.left--
			break
		}
	}
}

// onSlits lays what is worked from an opening within a panel on that panel: its stitches on the edge
// of the opening, and the rest of it upwards from there.
func (a *assembly) onSlits() {
	for _, host := range slices.Clone(a.placed) {
		for i := range host.slits {
			if s := &host.slits[i]; !s.taken {
				s.taken = a.onSlit(host, s)
			}
		}
	}
}

// onSlit lays the first round that is worked from an opening on it.
func (a *assembly) onSlit(host *panel, s *slit) bool {
	keys := map[string]bool{}
	for _, k := range s.keys {
		keys[k] = true
	}
	from, to := host.where.at(s.a), host.where.at(s.z)
	for _, q := range a.protos {
		if q.left < 1 || q.made == host.made || q.flat == nil {
			continue
		}
		p := *q.flat
		run := longestRun(p.loop, keys)
		if len(run) == 0 {
			continue
		}
		x, z := p.loop[run[0]].a, p.loop[(run[len(run)-1]+1)%len(p.loop)].a
		if d := dist(x, z) / dist(from, to); d > mostUnlike || d < 1/mostUnlike {
			continue
		}
		p.drawn, p.hung, p.over = nil, true, host
		p.laid = chord{own: [2]pt{x, z}, on: [2]pt{from, to}, hold: 0.5}
		a.settle(&p, laying(x, z, from, to, 0.5), nil, nil)
		q.left--
		return true
	}
	return false
}
