package worn

import (
	"slices"

	"flatwright/schematic"
)

// tuck lets a host hide what of a panel lies on it beyond a corner at which their bonded edges end: underarm stitches of a wide sleeve
// lie at an angle to those of the body that they are sewn to, and the fabric folds there. The panel goes on from where it
// comes out at the free side of its host.
func (p *panel) tuck(host *panel, corner pt) {
	at := slices.IndexFunc(p.drawn, func(s side) bool { return s.gap })
	if at < 0 || p == host {
		return
	}
	own, on := p.drawn, host.drawn
	back := !near(own[at].a, corner)
	if back { // the gap leads to the corner, and not from it
		own, on = backwards(own), backwards(on)
		at = slices.IndexFunc(own, func(s side) bool { return s.gap })
	}
	own = slices.Concat(own[at:], own[:at])
	c := slices.IndexFunc(on, func(s side) bool { return near(s.a, corner) })
	if c < 0 || !near(own[0].a, corner) || !schematic.InPolygon(points(on), own[1].a) {
		return
	}
	on = slices.Concat(on[c:], on[:c]) // its last side leads to the corner
	i, j, x := comesOut(own, on)
	if i < 0 {
		if dist(corner, own[1].a) > p.slack() {
			return
		}
		own = own[1:]
		own[0].a = corner
		if back {
			own = backwards(own)
		}
		p.drawn = own
		return
	}
	// From the corner along the host's side to where the panel comes out, and on from there.
	out := []side{{a: corner, taken: true}}
	for k := len(on) - 1; k > j; k-- {
		out = append(out, side{a: on[k].a, taken: true})
	}
	first := own[i]
	first.a = x
	out = append(append(out, first), own[i+1:]...)
	rest := on[j]
	rest.a = x
	on = slices.Insert(on, j+1, rest)
	for k := j + 1; k < len(on); k++ {
		on[k].taken = true
	}
	if back {
		out, on = backwards(out), backwards(on)
	}
	p.drawn, host.drawn = out, on
}

// comesOut is the first side of a panel, after its first, that crosses one of the free sides at the end of its host, that side, and
// where; -1 if none does.
func comesOut(own, on []side) (i, j int, x pt) {
	for i := 1; i < len(own); i++ {
		a, b := own[i].a, own[(i+1)%len(own)].a
		for j := len(on) - 1; j > 0 && !on[j].taken && !on[j].gap; j-- {
			c, d := on[j].a, on[(j+1)%len(on)].a
			if t, ok := crossing(a, b, c, d); ok {
				return i, j, lerp(a, b, t)
			}
			if _, ok := onSegment(b, c, d); ok { // with a corner
				return i, j, b
			}
		}
	}
	return -1, -1, pt{}
}

// backwards is a loop the other way round.
func backwards(loop []side) []side {
	n := len(loop)
	out := make([]side, n)
	for i := range out {
		out[i] = loop[n-1-i]
		out[i].a = loop[(n-i)%n].a
	}
	return out
}
