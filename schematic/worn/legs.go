package worn

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
)

// dividedLegs makes panels of a round from the waist whose two halves go on by themselves, such as two legs: what is above them lies flat, and each of them, folded
// along its middle, hangs from its half, the fold outside. False if the piece is none.
func (a *assembly) dividedLegs(m *schematic.Made) bool {
	runs, joins := a.halvesOf(m)
	if runs == nil {
		return false
	}
	views := [2]*panel{}
	for i := range views {
		if views[i] = newPanel(m, i, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] }); views[i] == nil {
			return false
		}
	}
	y := views[0].foldEnd()
	body := views[0].cut(func(q pt) float64 { return q.Y - y }, "")
	if body == nil {
		return false
	}
	body.bareAt(y)
	left := slices.IndexFunc(runs, func(r run) bool { return r.main && sideWord(r.name) != "left" })
	body = a.gathered(body.turnedIn())
	body.name = m.Name
	body.divideHalf(y, runs, middleOf(runs, left))
	a.tube(m, body)
	for _, p := range views {
		atLeft := p.name == runs[left].name
		q := p.legBelow(y, atLeft)
		flat := q != nil && q.closedBelow(a, joins, atLeft)
		if q == nil { // it has no rows before it is a round
			q, _ = p.roundBelow(a, joins, atLeft)
			flat = q != nil
		}
		if !flat {
			a.hollow = append(a.hollow, hollow{made: m, why: p.name + " does not lie flat below the round"})
			return true
		}
		if _, end := ends(q); slices.ContainsFunc(a.g.Pieces, func(o *schematic.Made) bool { return goesOn(o, m, p.name) }) {
			q.bond(end, heldKey(m.Name, p.name))
		}
		a.add(q, m.Make)
	}
	return true
}

// bareAt takes the names off the sides of a panel that lie level at y.
func (p *panel) bareAt(y float64) {
	for i := range p.loop {
		if levelAt(p, i, y) {
			p.loop[i] = side{a: p.loop[i].a}
		}
	}
}

// halvesOf are the runs of a division of a round from its beginning into two legs, and the sections by which these become rounds; none if it is not divided so.
func (a *assembly) halvesOf(m *schematic.Made) (runs []run, joins []schematic.Section) {
	if !m.Round || !downwards(m) {
		return nil, nil
	}
	var parts []*schematic.Part
	for _, s := range m.Piece.Sections {
		switch t := s.Traits(); {
		case parts != nil && t.Closes:
			joins = append(joins, s)
		case t.Parts != nil || t.Closes:
			parts = t.Parts
		}
	}
	names := legNames(parts)
	if len(names) != 2 || len(m.Views) != 2+len(joins) || a.facing(names[0]) != either || a.facing(names[1]) != either {
		return nil, nil
	}
	if !halfViews(m, names) || slices.ContainsFunc(joins, func(s schematic.Section) bool { return !goesOnWith(s, names) }) {
		return nil, nil
	}
	runs = a.runsOf(m, parts)
	for i := range runs {
		runs[i].flow = runs[i].main
	}
	return runs, joins
}

// halfViews reports whether all views of a piece are halves, the first two by these names.
func halfViews(m *schematic.Made, names []string) bool {
	for i, v := range m.Views {
		if !v.Half || v.Panel || i < 2 && v.Name != names[i] {
			return false
		}
	}
	return true
}

// goesOnWith reports whether a section takes up one part of these names, and no other part.
func goesOnWith(s schematic.Section, names []string) bool {
	j := s.Traits().Joins
	return slices.Contains(names, j[0].Part) && !slices.ContainsFunc(j[1:], func(o schematic.JoinPart) bool { return o.Part != "" })
}

// legNames are the names of the two parts of a division that are a pair, or legs, and are worked on; none if it has others.
func legNames(parts []*schematic.Part) (names []string) {
	for _, q := range parts {
		if q.Hold {
			return nil
		}
		if !q.Leave {
			names = append(names, q.Name)
		}
	}
	isNoLeg := func(name string) bool { return !strings.Contains(strings.ToLower(name), "leg") }
	if len(names) != 2 || schematic.OtherSide(names[0]) != names[1] && slices.ContainsFunc(names, isNoLeg) {
		return nil
	}
	return names
}

// foldEnd is how far down the sides of half a round go before it is divided.
func (p *panel) foldEnd() float64 {
	y, _ := ends(p)
	for i, s := range p.loop {
		if s.fold {
			y = min(y, s.a.Y, p.loop[(i+1)%len(p.loop)].a.Y)
		}
	}
	return y
}

// legBelow is what of a panel lies below the height at which its round is divided, folded along its middle: the half at its right if it hangs at the left.
func (p *panel) legBelow(y float64, atLeft bool) *panel {
	q := p.cut(func(s pt) float64 { return y - s.Y }, "")
	if q == nil {
		return nil
	}
	// What the division leaves at both sides, such as a crotch, is no part of the leg.
	var loop []side
	n := len(q.loop)
	first := slices.IndexFunc(q.loop, func(s side) bool { return s.a.Y < y-close })
	if first < 0 {
		return nil
	}
	for k := range n {
		i := (first + k) % n
		switch level := levelAt(q, i, y); {
		case !level:
			loop = append(loop, q.loop[i])
		case !slices.ContainsFunc(loop, func(s side) bool { return s.name == legTop }):
			loop = append(loop, side{a: q.loop[i].a, name: legTop, keys: []string{openPart + p.name}, blind: true})
		}
	}
	q.loop = loop
	if q = q.half(p.middle(), !atLeft, fmt.Sprint("fold of ", p.name)); q != nil {
		q.leg = true
	}
	return q
}

// legTop is the name of the side from which a leg hangs.
const legTop = "top of a leg"

// roundBelow is the round that a leg becomes, if it does, with what is added for it at its inner side, and where that begins.
func (p *panel) roundBelow(a *assembly, joins []schematic.Section, atLeft bool) (q *panel, start float64) {
	at := slices.IndexFunc(joins, func(s schematic.Section) bool { return s.Traits().Joins[0].Part == p.name })
	if at < 0 {
		return nil, 0
	}
	q = newPanel(p.made, 2+at, func(e *schematic.Edge) []string { return a.keys[idOf(p.made, e)] })
	over := a.runsOver(p.made, joins[at])
	if q == nil || len(over) == 0 {
		return nil, 0
	}
	start, _ = ends(q)
	from := middleOf(over, 0)
	if !atLeft {
		from -= sum(over) / 2
	}
	q.divideHalf(start, over, from)
	q.leg, q.halved, q.name = true, true, p.name
	return q, start
}

// closedBelow takes into a leg the round that it becomes, if it does. False if that does not lie flat below it.
func (p *panel) closedBelow(a *assembly, joins []schematic.Section, atLeft bool) bool {
	if !slices.ContainsFunc(joins, func(s schematic.Section) bool { return s.Traits().Joins[0].Part == p.name }) {
		return true
	}
	q, start := p.roundBelow(a, joins, atLeft)
	if q == nil {
		return false
	}
	_, end := ends(p)
	heads := q.spans2(start, openPart+p.name)
	l, r := levelSpan(p, end)
	if len(heads) != 1 || absf(end-start) > close || absf(r-l-(heads[0][1]-heads[0][0])) > 1 {
		return false
	}
	q = q.movedBy(l - heads[0][0])
	q.snap(start, [2]float64{l, r})
	whole := p.withOpenings([]*panel{p, q})
	if whole == nil {
		return false
	}
	whole.heights = p.heights
	*p = *whole
	return true
}

// tail is what hangs lowest from a panel: itself, or what its stitches on hold go on in.
func (a *assembly) tail(p *panel) *panel {
	for _, q := range a.placed {
		if q.hung && !q.strip && slices.Contains(q.hosts, p) && q.where.sin == 0 && bottomOf(q.drawn) < bottomOf(p.drawn) {
			p = q
		}
	}
	return p
}

// hasLegs reports whether what stands first is the round of a piece from which its legs hang.
func (a *assembly) hasLegs(root *panel) bool {
	return slices.ContainsFunc(a.below(root), func(p *panel) bool { return p.leg && p.halved })
}

// flatLegs leaves out a divided round of which a part lies as one half of it and becomes a round by itself, such as a leg: it would lie on its like. It reports whether there is one.
func (a *assembly) flatLegs(m *schematic.Made) bool {
	for _, s := range m.Piece.Sections {
		t := s.Traits()
		if !t.Closes || len(t.Joins) == 0 || legView(m, t.Joins[0].Part) == 0 || slices.ContainsFunc(t.Joins[1:], func(o schematic.JoinPart) bool { return o.Part != "" }) {
			continue
		}
		part := t.Joins[0].Part
		a.hollow = append(a.hollow, hollow{m, part + " is half of the round that it is divided from, and 'join parts' makes it a round by itself",
			fmt.Sprintf("put %s on hold, and begin a piece from it: that is drawn as worn", part)})
		return true
	}
	return false
}
