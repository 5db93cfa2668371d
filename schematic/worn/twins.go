package worn

import (
	"slices"

	"flatwright/schematic"
)

// partTwins lets two panels of one piece that hang upright side by side, such as legs with a gusset between them, end at the upright midway between
// them: what reaches past it is folded in between, and does not show.
func (a *assembly) partTwins() {
	for i, p := range a.placed {
		for _, q := range a.placed[:i] {
			middle, ok := p.twin(q)
			if !ok {
				continue
			}
			for _, o := range []*panel{p, q} {
				o.endAt(middle)
			}
			for _, host := range p.hosts {
				host.nodeAt(middle)
			}
		}
	}
}

// twin is the upright midway between two panels of one piece that hang upright and lie on each other by a little.
func (p *panel) twin(q *panel) (x float64, ok bool) {
	upright := func(p *panel) bool { return p.hung && p.face != back && !p.strip && p.where.sin == 0 }
	if p.made != q.made || !upright(p) || !upright(q) {
		return 0, false
	}
	c := common(points(p.drawn), points(q.drawn))
	pl, ph := box(p.drawn)
	ql, qh := box(q.drawn)
	alike := absf((ph.X-pl.X)-(qh.X-ql.X)) < 1 && absf(pl.X+ph.X-ql.X-qh.X) > 1
	return (pl.X + ph.X + ql.X + qh.X) / 4, alike && c >= 1 && c <= mostParted*min(area(points(p.drawn)), area(points(q.drawn)))
}

// mostParted is the share of a leg up to which it may lie behind its twin.
const mostParted = 0.3

// endAt is the panel, where it lies, without what is beyond an upright.
func (p *panel) endAt(x float64) {
	lo, hi := box(p.drawn)
	keep := func(a pt) float64 { return x - a.X }
	if (lo.X+hi.X)/2 > x {
		keep = func(a pt) float64 { return a.X - x }
	}
	key := "twin of " + p.name
	q := p.cut(func(a pt) float64 { return keep(p.where.at(a)) }, key)
	if q == nil {
		return
	}
	q.drawn, q.parted = nil, true
	for i, s := range p.drawn {
		q.drawn = append(q.drawn, s.kept(p.drawn[(i+1)%len(p.drawn)].a, keep, key)...)
	}
	*p = *q
}

// nodeAt cuts the level sides of a panel at an upright, as what lies on them is cut.
func (p *panel) nodeAt(x float64) {
	for i := 0; i < len(p.drawn); i++ {
		s, z := p.drawn[i], p.drawn[(i+1)%len(p.drawn)].a
		if absf(s.a.Y-z.Y) < close && (s.a.X-x)*(z.X-x) < -close {
			s.a = schematic.Point{X: x, Y: s.a.Y}
			p.drawn = slices.Insert(p.drawn, i+1, s)
			i++
		}
	}
}
