package worn

import (
	"math"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// wingspanUp turns a shawl of one panel until its longest straight edge, which is its wingspan, lies level above the rest. One that is worked
// so is left as it is, and so is one whose longest edge is not longer than its width.
func (p *panel) wingspanUp() {
	var best [2]pt
	all := straightSides(p.loop)
	for i, s := range all {
		if z := all[(i+1)%len(all)].a; dist(s.a, z) > dist(best[0], best[1])+1 {
			best = [2]pt{s.a, z}
		}
	}
	lo, hi := box(p.loop)
	d := sub(best[1], best[0])
	long := length(d)
	if absf(d.Y) < 0.02*long || long < 1.02*max(hi.X-lo.X, hi.Y-lo.Y) {
		return
	}
	// The loop runs anticlockwise: along its upper edge to the left.
	cos, sin := -d.X/long, d.Y/long
	if p.lying, p.upended = sin, cos < 0; p.upended {
		p.lying = -sin
	}
}

// leastSide is the share of the wingspan from which on a side of a shawl is measured: a shorter one is that of a tip or of an edging.
const leastSide = 0.15

// sides measures the other straight sides of a shawl by their names.
func (tk *taker) sides(p *panel) {
	lo, hi := box(p.drawn)
	all := straightSides(p.drawn)
	for i, s := range all {
		z := all[(i+1)%len(all)].a
		if long := dist(s.a, z); long > leastSide*(hi.X-lo.X) && absf(s.a.Y-z.Y) > math.Max(1, 0.02*long) {
			tk.take(strings.ToLower(s.name), s.a, z, schematic.Slanted, false, units.Num{})
		}
	}
}

// straightSides are those of a loop, each from one of its corners to the next.
func straightSides(loop []side) []side {
	var out []side
	n := len(loop)
	for i, s := range loop {
		a, b := sub(s.a, loop[(i+n-1)%n].a), sub(loop[(i+1)%n].a, s.a)
		if absf(cross(a, b)) > 1e-6*length(a)*length(b) || dot(a, b) < 0 {
			out = append(out, s)
		}
	}
	return out
}
