package chart

import "math"

// findCorners looks for the corners of rounds that make a polygon: places in which
// several stitches stand, as many in every round, each over one of the round below.
// Where it finds them it makes the chart a polygon.
func (p *plan) findCorners() {
	first := -1
	for r, l := range p.lines {
		if !l.row.Base && r > 0 && !p.lines[r-1].row.Base {
			first = r
			break
		}
	}
	if first < 1 {
		return
	}
	largest := 0
	var feet []*node
	for _, g := range p.lines[first].groups() {
		if len(g) > largest {
			largest, feet = len(g), nil
		}
		if len(g) == largest {
			feet = append(feet, g[0].feet[0])
		}
	}
	k := len(feet)
	if largest < 3 || largest%2 == 0 || k < 3 || k > 8 || k*largest == len(p.lines[first].nodes) && k*4 > 24 {
		return
	}
	corners := make([][]int, len(p.lines))
	index := func(l *line, n *node) int {
		for i, m := range l.nodes {
			if m == n {
				return i
			}
		}
		return -1
	}
	for _, f := range feet {
		corners[first-1] = append(corners[first-1], index(p.lines[first-1], f))
	}
	for r := first; r < len(p.lines); r++ {
		l := p.lines[r]
		for _, c := range corners[r-1] {
			f := p.lines[r-1].nodes[c]
			lo, hi := -1, -1
			for i, n := range l.nodes {
				if len(n.feet) == 1 && n.feet[0] == f {
					if lo < 0 {
						lo = i
					}
					hi = i
				}
			}
			if lo < 0 || (hi-lo)%2 != 0 || hi-lo > 40 {
				return
			}
			corners[r] = append(corners[r], (lo+hi)/2)
		}
	}
	for r := first - 1; r < len(p.lines); r++ {
		for i := 1; i < k; i++ {
			if corners[r][i] <= corners[r][i-1] {
				return
			}
		}
	}
	p.form, p.sides = polygon, k
	for r, l := range p.lines {
		l.corners = corners[r]
		if r < first-1 {
			continue
		}
		side := 0
		for i, n := range l.nodes {
			n.side = side % k
			if side < k && i == corners[r][side] {
				n.corner = true
				side++
			}
		}
	}
}

// groups are the runs of nodes that stand in one place, with the arches among them.
func (l *line) groups() [][]*node {
	var out [][]*node
	for i := 0; i < len(l.nodes); i++ {
		n := l.nodes[i]
		if len(n.feet) != 1 {
			continue
		}
		end := i
		for j := i + 1; j < len(l.nodes); j++ {
			m := l.nodes[j]
			if len(m.feet) == 1 && m.feet[0] == n.feet[0] {
				end = j
			} else if !m.arch() && !m.picot() {
				break
			}
		}
		if end > i {
			out = append(out, l.nodes[i:end+1])
		}
		i = end
	}
	return out
}

// sideAngle is the direction in which a side lies from the centre: the first at the
// top, the others anticlockwise.
func (p *plan) sideAngle(side int) float64 {
	return topAt + around*float64(side)/float64(p.sides)
}

// sideOf is where f lies along the side of n, mm from the side's middle.
func (p *plan) sideOf(f, n *node) float64 {
	half := f.v * math.Tan(math.Pi/float64(p.sides))
	switch {
	case n.corner && f.corner:
		return 0
	case f.line.corners == nil: // a ring: straight in from the side
		return n.q * f.v / max(n.v, 1e-9)
	case f.corner && f.side == n.side:
		return half
	case f.corner && (f.side+1)%p.sides == n.side:
		return -half
	}
	return f.q
}

// bySide calls do with the nodes of each side in order, without the corners, and
// the corners that bound it.
func (p *plan) bySide(l *line, do func(nodes []*node, from, to *node)) {
	k := p.sides
	for s := range k {
		var nodes []*node
		to := l.nodes[l.corners[s]]
		from := l.nodes[l.corners[(s+k-1)%k]]
		if s == 0 {
			nodes = append(append(nodes, l.nodes[l.corners[k-1]+1:]...), l.nodes[:l.corners[0]]...)
		} else {
			nodes = l.nodes[l.corners[s-1]+1 : l.corners[s]]
		}
		do(nodes, from, to)
	}
}

// sideGap is the room before the i-th node of a side.
func (p *plan) sideGap(nodes []*node, i int, from *node) float64 {
	n := nodes[i]
	before := from
	if i > 0 {
		before = nodes[i-1]
	}
	g := before.half + n.half + n.extra
	if n == n.line.nodes[0] {
		g += p.slot
	}
	return g
}

// sideNeed is the least level at which every side has room.
func (p *plan) sideNeed(l *line) float64 {
	if l.corners == nil {
		return 0
	}
	most := 0.0
	p.bySide(l, func(nodes []*node, from, to *node) {
		sum := to.half
		if len(nodes) > 0 {
			sum += nodes[len(nodes)-1].half
		} else {
			sum += from.half
		}
		for i := range nodes {
			sum += p.sideGap(nodes, i, from)
		}
		most = max(most, sum)
	})
	return most / 2 / math.Tan(math.Pi/float64(p.sides))
}

// sidesOf sets the nodes of a round along its sides.
func (p *plan) sidesOf(l *line) {
	if l.corners == nil {
		return
	}
	l.top = max(l.top, p.sideNeed(l))
	for _, n := range l.nodes {
		n.v = l.top
	}
	half := l.top * math.Tan(math.Pi/float64(p.sides))
	p.bySide(l, func(nodes []*node, from, to *node) {
		from.q, to.q = 0, 0
		k := len(nodes)
		if k == 0 {
			return
		}
		t, w, gap, x := make([]float64, k), make([]float64, k), make([]float64, k), make([]float64, k)
		any := false
		for i, n := range nodes {
			gap[i] = p.sideGap(nodes, i, from)
			if len(n.feet) > 0 && n.feet[0].line.corners != nil {
				sum := 0.0
				for _, f := range n.feet {
					sum += p.sideOf(f, n)
				}
				t[i], w[i] = sum/float64(len(n.feet)), 1
				any = true
			}
		}
		lo, hi := -half+gap[0], half-nodes[k-1].half-to.half
		if !any {
			for i := range nodes {
				t[i], w[i] = lo+(hi-lo)*(float64(i)+0.5)/float64(k), 1
			}
		}
		fill(t, w, gap)
		spread(x, t, w, gap, lo, hi)
		for i, n := range nodes {
			n.q = x[i]
		}
	})
}
