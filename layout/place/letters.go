package place

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"flatwright/schematic"
)

// LetterOrder is the measurements of a pattern, by ID, in the order of their letters: gs are all its sizes.
func LetterOrder(gs []*schematic.Garment) []string {
	return (&plan{g: gs[0]}).order(gs, measuresOf(gs))
}

// letters gives every measurement its letter, the same in every size and on every sheet of the pattern.
func (p *plan) letters(gs []*schematic.Garment, byID []map[string]*schematic.Measure) {
	order := p.o.Order
	if order == nil {
		order = p.order(gs, byID)
	}
	nth := map[string]int{}
	for _, id := range order {
		nth[id] = len(nth)
	}
	letters := newLettering(p.g.Pattern.Sizes.Names, 'A'+byte(p.design().Letters))
	for _, v := range p.views {
		for it := range v.all {
			if _, ok := nth[it.m.ID]; !ok {
				nth[it.m.ID] = len(nth)
			}
			it.nth = nth[it.m.ID]
			it.name = letters.name(it.nth)
		}
	}
	p.letter = letters.form(len(nth), p.o.text())
	for _, v := range p.views {
		for it := range v.all {
			it.letter = p.letter
		}
	}
}

// lettered is a measurement among those that take letters.
type lettered struct {
	id   string
	at   float64 // where in reading order within its view
	rank int     // in the designer's order
}

// viewLetters are the measurements of a view in all sizes.
type viewLetters struct {
	view string
	worn bool
	all  []lettered
}

// order is the measurements of all sizes in the order of their letters: the designer's, or else view for view as they are read. It
// follows from the middle size, and for what that lacks from the next that has it.
func (p *plan) order(gs []*schematic.Garment, byID []map[string]*schematic.Measure) []string {
	var views []*viewLetters
	for k := range gs {
		views = p.read(views, gs[(len(gs)/2+k)%len(gs)], byID)
	}
	var ids []string
	for i := 0; i < len(views); {
		var part []lettered
		for worn := views[i].worn; i < len(views) && views[i].worn == worn; i++ {
			slices.SortStableFunc(views[i].all, func(a, b lettered) int { return cmp.Compare(a.at, b.at) })
			part = append(part, views[i].all...)
		}
		slices.SortStableFunc(part, func(a, b lettered) int { return cmp.Compare(a.rank, b.rank) })
		for _, l := range part {
			ids = append(ids, l.id)
		}
	}
	return ids
}

// read takes what one size has into the views, those that no size before had each in its place.
func (p *plan) read(views []*viewLetters, g *schematic.Garment, byID []map[string]*schematic.Measure) []*viewLetters {
	at := 0
	pieces := inOrder(g, g.Pieces)
	for _, made := range pieces {
		for i := range made.Views {
			v := &viewPlan{made: made, view: &made.Views[i], id: made.ID + strconv.Itoa(i), worn: slices.Contains(g.AsWorn(), made)}
			if v.bound() != nil {
				continue // its own drawing says why
			}
			n := slices.IndexFunc(views, func(r *viewLetters) bool { return r.view == v.id })
			if n < 0 {
				n = at
				views = slices.Insert(views, n, &viewLetters{view: v.id, worn: v.worn})
			}
			at = n + 1
			for _, m := range p.measured(v, i, pieces, byID) {
				v.items = append(v.items, &item{m: m})
			}
			views[n].add(v, p.whole(v, i), p.design())
		}
	}
	return views
}

// add takes in what the view has in one size, as far as no size before had it, and the widths of its whole rows.
func (r *viewLetters) add(v *viewPlan, whole []*schematic.Measure, design *schematic.Drawing) {
	put := func(m *schematic.Measure, at float64) {
		r.all = append(r.all, lettered{m.ID, at, design.Rank(v.made.Name, m.Name)})
	}
	has := func(m *schematic.Measure) bool {
		return slices.ContainsFunc(r.all, func(l lettered) bool { return l.id == m.ID })
	}
	if slices.ContainsFunc(v.items, func(it *item) bool { return !has(it.m) }) {
		d := &drawn{v: v, scale: 10}
		d.outlined()
		for _, s := range d.assign() {
			if !has(s.it.m) {
				put(s.it.m, d.clockwise(s))
			}
		}
	}
	for _, m := range whole {
		if !has(m) {
			put(m, math.Inf(1))
		}
	}
}

// clockwise is where a measurement is read: round the picture from its upper left corner, and within it, after that, from the top.
func (d *drawn) clockwise(s *sided) float64 {
	at, side := mid(s.a, s.b), s.side
	if s.axis == schematic.Slanted { // such as the top of a sleeve
		for _, c := range upright {
			if crossings(d.shape, at, c) == 0 {
				side = c
				break
			}
		}
	} else if s.crosses > 0 {
		return 2*math.Pi + at.Y/max(d.h, 1)
	}
	switch side {
	case top:
		at.Y = 0
	case bottom:
		at.Y = d.h
	case left:
		at.X = 0
	case right:
		at.X = d.w
	}
	a := math.Atan2(2*at.Y/max(d.h, 1)-1, 2*at.X/max(d.w, 1)-1) + 3*math.Pi/4
	if a < 0 {
		a += 2 * math.Pi
	}
	return a
}
