package worn

import (
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// gusset is a round that is cut into two panels, of which one is a gusset, such as that of a thumb: it lies flat, folded along the middles of both,
// with what is worked before and after them.
type gusset struct {
	hand, wedge  int // views
	before, past int // of the rounds in one before and after the panels, or -1
}

// mostWedge is the share of the other panel's width that a gusset has at most.
const mostWedge = 0.6

// gussetOf is the gusset of a piece, or nil.
func gussetOf(m *schematic.Made) *gusset {
	if !m.Round {
		return nil
	}
	g := &gusset{hand: -1, wedge: -1, before: -1, past: -1}
	var panels []int
	for i, v := range m.Views {
		switch {
		case v.Panel:
			panels = append(panels, i)
		case !v.Half:
			return nil
		case len(panels) == 0 && g.before < 0:
			g.before = i
		case len(panels) == 2 && g.past < 0:
			g.past = i
		default:
			return nil
		}
	}
	if len(panels) != 2 || g.before < 0 && g.past < 0 {
		return nil
	}
	g.hand, g.wedge = panels[0], panels[1]
	if wideOf(m, g.hand) < wideOf(m, g.wedge) {
		g.hand, g.wedge = g.wedge, g.hand
	}
	if wideOf(m, g.wedge) > mostWedge*wideOf(m, g.hand) {
		return nil
	}
	return g
}

// wideOf is how wide a view is at most.
func wideOf(m *schematic.Made, view int) float64 {
	lo, hi := bounds(m.Views[view].Outline[:1])
	return hi.X - lo.X
}

// gusseted makes the panels of a piece with a gusset: the half of the hand at the left of it and half of the gusset, bonded along their line, and
// the rounds before and after, bonded to the hand. It reports whether there is one.
func (a *assembly) gusseted(m *schematic.Made) bool {
	g := gussetOf(m)
	if g == nil {
		return false
	}
	of := map[int]*panel{}
	for i := range m.Views {
		p := newPanel(m, i, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] })
		switch i {
		case g.hand:
			p = p.half(p.middle(), false, "fold of "+m.Name)
		case g.wedge:
			p = p.half(p.middle(), true, "fold of "+p.name)
		}
		if p == nil {
			return false
		}
		of[i] = p
	}
	hand := of[g.hand]
	hand.gusset = true
	start, end := ends(hand)
	hand.bond(start, "before the panels of "+m.Name)
	hand.bond(end, "after the panels of "+m.Name)
	if p := of[g.before]; p != nil {
		_, y := ends(p)
		p.bond(y, "before the panels of "+m.Name)
	}
	if p := of[g.past]; p != nil {
		y, _ := ends(p)
		p.bond(y, "after the panels of "+m.Name)
	}
	for i := range m.Views {
		if i != g.hand {
			a.add(of[i], m.Make)
		}
	}
	a.add(hand, m.Make)
	a.lines(m)
	return true
}

// bond gives the level edge at a height a bond that no seam shows.
func (p *panel) bond(y float64, key string) {
	for i := range p.loop {
		if levelAt(p, i, y) {
			s := &p.loop[i]
			s.keys, s.blind, s.fold = append(s.keys, key), true, false
		}
	}
}

// gusset measures what has one: its first edge and the hand around, all of its length, how high the gusset is, and what is worked from it.
func (tk *taker) gusset(hand *panel) {
	m := hand.made
	g := gussetOf(m)
	lo, hi := box(hand.drawn)
	for _, p := range tk.a.placed {
		if p.made == m {
			l, h := box(p.drawn)
			lo.Y, hi.Y = min(lo.Y, l.Y), max(hi.Y, h.Y)
		}
	}
	for _, p := range tk.a.placed {
		l, h := box(p.drawn)
		name := strings.ToLower(p.made.Name)
		switch {
		case p.made != m && p.hung:
			pl, ph := box(p.loop)
			tk.take(name+" length", p.where.at(pt{X: ph.X, Y: pl.Y}), p.where.at(ph), schematic.Slanted, false, units.Num{})
			tk.take(name, p.where.at(pl), p.where.at(pt{X: ph.X, Y: pl.Y}), schematic.Slanted, p.made.Round, units.Num{})
		case p.view == g.wedge:
			pl, ph := box(p.loop) // along its fold
			tk.take("gusset", p.where.at(pt{X: ph.X, Y: pl.Y}), p.where.at(ph), schematic.Slanted, false, units.Num{})
		case p.view == g.before:
			a, z := p.level(l.Y, 0.01)
			tk.take("cuff", a, z, schematic.Horizontal, true, units.Num{})
		case p.view == g.past:
			y := l.Y // where it is widest: stitches are added where it begins
			for _, s := range p.drawn {
				if absf(s.a.X-h.X) < close {
					y = s.a.Y
				}
			}
			tk.take("hand", pt{X: l.X, Y: y}, pt{X: h.X, Y: y}, schematic.Horizontal, true, units.Num{})
			if a, z := p.level(h.Y, -0.01); h.X-l.X-dist(a, z) > 1 {
				tk.take("upper edge", a, z, schematic.Horizontal, true, units.Num{})
			}
		}
	}
	tk.take("length", lo, pt{X: lo.X, Y: hi.Y}, schematic.Vertical, false, units.Num{})
}
