package worn

import (
	"math"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// crossed folds two strips, or two of one, that are sewn to each other by an end of each and the beginning of a side of the other, as those of
// a poncho are: all round the neck they make a half of a full turn, so that it lies flat with a point in front and each strip folded straight across on a
// shoulder, midway along the side that is left for the neck. In front lies of the one what has the seam at its side, and of the other what
// has it at its end.
func (a *assembly) crossed() {
	for i := range a.g.Pattern.Joins {
		end, side := a.crosses(i)
		if end == nil || side == nil {
			continue
		}
		back := -1
		for k := range a.g.Pattern.Joins {
			if e, s := a.crosses(k); e == side && s == end {
				back = k
			}
		}
		of, on := a.protoOf(end), a.protoOf(side)
		if back < 0 || of == nil || on == nil || end == side && end.Make != 2 {
			continue
		}
		head, foot := of.split(joinKey(i), joinKey(back), false), on.split(joinKey(back), joinKey(i), true)
		if head == nil || foot == nil {
			continue
		}
		a.protos = slices.DeleteFunc(a.protos, func(q *proto) bool { return q == of || q == on })
		a.protos = append([]*proto{{panel: foot, left: 1}}, a.protos...)
		a.add(head, 1)
		return
	}
}

// crosses are the pieces of a join that sews one by its end to a side of another.
func (a *assembly) crosses(i int) (end, side *schematic.Made) {
	j := &a.g.Pattern.Joins[i]
	if j.How != schematic.AsLong && j.How != schematic.StitchToStitch || len(j.Sew) != 1 || len(j.Into) != 1 {
		return nil, nil
	}
	of, own := a.g.EdgesOf(j.Sew[0])
	on, other := a.g.EdgesOf(j.Into[0])
	if len(own) != 1 || len(other) != 1 {
		return nil, nil
	}
	level := func(e schematic.Edge) bool { return !e.Left && !e.Right }
	switch {
	case level(own[0]) && !level(other[0]):
		return of.Worked(), on.Worked()
	case level(other[0]) && !level(own[0]):
		return on.Worked(), of.Worked()
	}
	return nil, nil
}

// protoOf is the one flat panel of a piece that faces neither way, or nil.
func (a *assembly) protoOf(m *schematic.Made) *proto {
	var of *proto
	for _, q := range a.protos {
		if q.made == m {
			if of != nil || q.face != either || m.Round {
				return nil
			}
			of = q
		}
	}
	return of
}

// split is the part of a strip with its sewn end, or that with the seam along its side, up to where it is folded: midway along what is left of that
// side. Nil if it is no strip, or the seam does not begin at its other end.
func (p *panel) split(endKey, sideKey string, foot bool) *panel {
	lo, hi := box(p.loop)
	if absf(area(p.points())-(hi.X-lo.X)*(hi.Y-lo.Y)) > 1 {
		return nil
	}
	endY, from, to, left := math.NaN(), math.Inf(1), math.Inf(-1), false
	for i, s := range p.loop {
		z := p.loop[(i+1)%len(p.loop)].a
		switch {
		case levelAt(p, i, s.a.Y) && slices.Contains(s.keys, endKey):
			endY = s.a.Y
		case slices.Contains(s.keys, sideKey):
			from, to, left = min(from, s.a.Y, z.Y), max(to, s.a.Y, z.Y), absf(s.a.X-lo.X) < close
		}
	}
	var fold, up float64 // up is towards the end
	switch {
	case endY == hi.Y && absf(from-lo.Y) < close && to < hi.Y:
		fold, up = (to+hi.Y)/2, 1
	case endY == lo.Y && absf(to-hi.Y) < close && from > lo.Y:
		fold, up = (from+lo.Y)/2, -1
	default:
		return nil
	}
	if foot {
		up = -up
	}
	q := p.cut(func(a pt) float64 { return up * (a.Y - fold) }, "fold of "+p.name)
	if q == nil {
		return nil
	}
	if q.halved = true; !foot {
		q.upended = true
		return q
	}
	q.lying = math.Sqrt2 / 2
	if left == (up < 0) {
		q.lying = -q.lying
	}
	if up > 0 {
		q.upended = true
	}
	return q
}

// poncho measures two strips that are sewn to each other: how far they reach, from where they meet to the point in front, and a strip.
func (tk *taker) poncho(p *panel) {
	var all []pt
	for _, q := range tk.a.placed {
		all = append(all, points(q.drawn)...)
	}
	lo, hi := bounds([][]pt{all})
	at := func(y float64, of []pt) pt {
		return of[slices.IndexFunc(of, func(q pt) bool { return absf(q.Y-y) < close })]
	}
	point := at(lo.Y, all)
	tk.take("width at the shoulder folds", pt{X: lo.X, Y: hi.Y}, hi, schematic.Horizontal, false, units.Num{})
	for i, s := range p.drawn {
		z := p.drawn[(i+1)%len(p.drawn)].a
		switch {
		case s.taken: // the seam, whose upper end is at the neck
			top := s.a
			if z.Y > top.Y {
				top = z
			}
			tk.take("centre front depth", point, top, schematic.Vertical, false, units.Num{})
		case s.fold:
			tk.take("width of a strip", s.a, z, schematic.Slanted, false, units.Num{})
		}
	}
	tk.take("depth", point, pt{X: point.X, Y: hi.Y}, schematic.Vertical, false, units.Num{})
}
