package worn

import (
	"math"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// laidOut lays a shawl of one panel out, as it is blocked or with its wingspan level.
func (p *panel) laidOut(gauges []schematic.Gauge) {
	if q := p.blocked(p.shapedAcross(gauges)); q != nil {
		*p = *q
		return
	}
	p.wingspanUp()
}

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

// mostBlocked is the share by which blocking stretches or eases the lower edge of a shawl at most, so that it is drawn so: one whose stitches double
// when its depth has doubled is eased by more than a third just before.
const mostBlocked = 0.45

// blocked is a shawl from the middle of its upper edge as it is blocked: what is cast on lies in one straight line with both of its sides, which
// the row ends of a half disc are, and its rows lie in arcs below. Nil if the last of them would be longer or shorter than it is by too much.
func (p *panel) blocked(across [][2]float64) *panel {
	if !p.made.Bends() {
		return nil
	}
	rows := p.made.RowEnds()
	start, end := ends(p)
	l, r := levelSpan(p, start)
	half := (r - l) / 2
	arc := func(y float64) []pt { // from the left
		u, d := half+p.sideDown(y, rows, across), start-y
		return arcOf(pt{X: -u}, pt{Y: -d}, pt{X: u})
	}
	last := arc(end)
	l, r = levelSpan(p, end)
	if last == nil || absf(pathLength(last)/(r-l)-1) > mostBlocked {
		return nil
	}
	q := *p
	q.arced, q.lines, q.ribs = true, nil, nil
	q.loop = []side{{a: last[len(last)-1], name: "upper edge"}}
	for _, a := range last[:len(last)-1] {
		q.loop = append(q.loop, side{a: a, name: "lower edge", curve: true})
	}
	for _, line := range p.lines {
		way := arc(line.A.Y)
		if line.Kind != schematic.LineChange || absf(line.B.Y-line.A.Y) > close || way == nil {
			continue
		}
		for i := 1; i < len(way); i++ {
			q.lines = append(q.lines, schematic.Line{Kind: line.Kind, A: way[i-1], B: way[i]})
		}
	}
	return &q
}

// sideDown is how long the right side of a panel is from its beginning down to a height. What is shaped across a row makes it no longer.
func (p *panel) sideDown(y float64, rows bool, across [][2]float64) float64 {
	start, _ := ends(p)
	if rows {
		return start - y
	}
	long := 0.0
	for i, s := range p.loop {
		z := p.loop[(i+1)%len(p.loop)].a
		if z.Y > s.a.Y+close && z.Y > y && s.a.X > p.middle() { // it runs upwards
			foot := lerp(s.a, z, max(0, (y-s.a.Y)/(z.Y-s.a.Y)))
			share := 0.0
			for _, c := range across {
				share += max(0, min(z.Y, c[1])-max(foot.Y, c[0])) / (z.Y - foot.Y)
			}
			long += share*(z.Y-foot.Y) + (1-share)*dist(foot, z)
		}
	}
	return long
}

// shapedAcross are the heights, each from its lower end, of the rows of a panel that are shaped across.
func (p *panel) shapedAcross(gauges []schematic.Gauge) (out [][2]float64) {
	y, _ := ends(p)
	for _, s := range p.made.Steps {
		down := y
		if g := schematic.GaugeIn(gauges, s.Gauge); g != nil {
			down -= g.RowHeight().Float() * float64(s.Rows)
		}
		if s.Section.Traits().Across {
			out = append(out, [2]float64{down, y})
		}
		y = down
	}
	return out
}

// crescent measures a shawl that is blocked in arcs: its lower edge is in no line.
func (tk *taker) crescent(p *panel) {
	lo, hi := box(p.drawn)
	tk.take("wingspan", pt{X: lo.X, Y: hi.Y}, hi, schematic.Horizontal, false, units.Num{})
	tk.take("depth", hi, pt{Y: lo.Y}, schematic.Vertical, false, units.Num{})
	long := 0.0
	for i, s := range p.drawn {
		if s.curve {
			long += dist(s.a, p.drawn[(i+1)%len(p.drawn)].a)
		}
	}
	for _, m := range p.made.Measures {
		if m.Name == "lower edge" {
			if absf(long/m.Length.Float()-1) > 0.1 {
				m.Name += " before blocking"
			}
			tk.under(m.Name, schematic.Measure{Axis: schematic.Horizontal, Length: m.Length})
		}
	}
	tk.seen["length"] = true
}

// leastSide is the share of the wingspan from which on a side of a shawl is measured: a shorter one is that of a tip or of an edging.
const leastSide = 0.15

// sides measures the other straight sides of a shawl by their names.
func (tk *taker) sides(p *panel) {
	for _, e := range longSides(p.drawn) {
		if absf(e.a.Y-e.b.Y) > math.Max(1, 0.02*dist(e.a, e.b)) {
			tk.take(strings.ToLower(e.name), e.a, e.b, schematic.Slanted, false, units.Num{})
		}
	}
}

// sloping reports whether a shawl whose rows do not bend has a long side that is neither level nor upright: no width or height says how long it is.
func (p *panel) sloping() bool {
	return !p.made.Bends() && slices.ContainsFunc(longSides(p.loop), func(e arc) bool {
		return min(absf(e.a.X-e.b.X), absf(e.a.Y-e.b.Y)) > 0.02*dist(e.a, e.b)
	})
}

// longSides are the straight sides of a loop but for those of a tip or of an edging.
func longSides(loop []side) (out []arc) {
	lo, hi := box(loop)
	all := straightSides(loop)
	for i, s := range all {
		if z := all[(i+1)%len(all)].a; dist(s.a, z) > leastSide*(hi.X-lo.X) {
			out = append(out, arc{s, z})
		}
	}
	return out
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
