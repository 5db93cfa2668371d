package worn

import (
	"math"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// sideways is half of a hood by itself of which one level end is sewn to itself at a fold: it lies on its side as it is worn, folded
// along its middle, with the fold on top and the seam behind, at the right. Nil if it is none, or is bonded to a neck.
func (a *assembly) sideways(m *schematic.Made, p *panel) *panel {
	if m.Kind != schematic.KindHood && m.Kind != schematic.KindHat || len(m.Piece.Onto) > 0 || len(heldFrom(m)) > 0 {
		return nil
	}
	if slices.ContainsFunc(p.loop, func(s side) bool { return len(notBends(s.keys)) > 0 }) {
		return nil
	}
	if slices.ContainsFunc(a.g.Pieces, func(o *schematic.Made) bool {
		return o.Worked() != m && o.Kind != schematic.KindBand && !schematic.HangsFree(o.Name)
	}) {
		return nil // what it stands on nobody says
	}
	seam, ok := a.foldedSeam(m, p)
	if !ok {
		return nil
	}
	up := seam > (topOf(p.loop)+bottomOf(p.loop))/2
	q := p.half(p.middle(), !up, "fold of "+m.Name)
	if q == nil {
		return nil
	}
	if q.lying = 1; up {
		q.lying = -1 // clockwise
	}
	return q
}

// foldedSeam is the height of a level edge, about the middle of a panel, that is sewn to itself at a fold.
func (a *assembly) foldedSeam(m *schematic.Made, p *panel) (y float64, ok bool) {
	for i := range a.g.Pattern.Joins {
		j := &a.g.Pattern.Joins[i]
		if j.How != schematic.AtFold || len(j.Sew) != 1 {
			continue
		}
		of, edges := a.g.EdgesOf(j.Sew[0])
		if of == nil || of.Worked() != m || len(edges) != 1 || edges[0].View != p.view {
			continue
		}
		if l, h := bounds([][]pt{edges[0].Path}); h.X-l.X > h.Y-l.Y && absf(l.X+h.X-2*p.middle()) < 1 {
			return (l.Y + h.Y) / 2, true
		}
	}
	return 0, false
}

// onItsSide is the motion that lays a panel on its side, a quarter turned, and stands it on the level of its lowest place, about its middle.
func (p *panel) onItsSide() motion {
	m := motion{sin: p.lying, cos: math.Sqrt(1 - p.lying*p.lying)}
	if p.upended {
		m.sin, m.cos = -m.sin, -m.cos
	}
	lo, hi := box(p.loop)
	least := math.Inf(1)
	for _, s := range p.loop {
		least = min(least, m.at(s.a).Y)
	}
	m.by = pt{X: -m.at(mid(lo, hi)).X, Y: -least}
	return m
}

// bonnet measures what lies on its side: how deep it is from its face to its seam, and how high up to its fold.
func (tk *taker) bonnet(p *panel) {
	lo, hi := box(p.drawn)
	tk.take("depth", pt{X: lo.X, Y: hi.Y}, hi, schematic.Horizontal, false, units.Num{})
	tk.take("height", pt{X: hi.X, Y: lo.Y}, hi, schematic.Vertical, false, units.Num{})
	face := pt{X: lo.X, Y: hi.Y}
	for _, s := range p.drawn {
		if absf(s.a.X-lo.X) < close {
			face.Y = min(face.Y, s.a.Y)
		}
	}
	if face.Y > lo.Y+1 {
		tk.take("height at the face", face, pt{X: lo.X, Y: hi.Y}, schematic.Vertical, false, units.Num{})
	}
}
