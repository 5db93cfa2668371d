package grade

import (
	"fmt"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// A rate of picking up holds as long as stitches and rows change alike. It is kept within
// three in a hundred, less than blocking moves an edge by (a choice of this project); beyond
// that the simplest rate of up to ten rows that is within two.
var (
	rateKept = units.Frac(3, 100)
	rateNear = units.Frac(1, 50)
)

const rateRows = 10

// rateOff is how far p in every q is from a wish, as a part of it.
func rateOff(p, q int, wish units.Num) units.Num {
	return units.Frac(int64(p), int64(q)).Sub(wish).Abs().Div(wish)
}

// nearRate is pick in every of, or the simplest rate near to the one that is wished for.
func nearRate(wish units.Num, pick, of int) (int, int) {
	if wish.Sign() <= 0 || pick < 1 || of < 1 || !rateKept.Less(rateOff(pick, of, wish)) {
		return pick, of
	}
	best, bestOf := 0, 1
	for q := 1; q <= rateRows; q++ {
		p := max(1, int(wish.Times(q).Round()))
		if best == 0 || rateOff(p, q, wish).Less(rateOff(best, bestOf, wish)) {
			best, bestOf = p, q
		}
		if !rateNear.Less(rateOff(best, bestOf, wish)) {
			break
		}
	}
	return best, bestOf
}

// rates works out anew how many stitches of a band are picked up along each edge, so that
// it is as long as before for its edge.
func (r *regauger) rates(q *schematic.Piece) {
	if len(q.Onto) == 0 {
		return
	}
	old := ontoOf(r.was, q.Name)
	p := *r.p
	p.Pieces, p.Joins = append(append([]*schematic.Piece(nil), r.before...), q), nil
	now := ontoOf(schematic.Work(&p, 0), q.Name)
	if len(old) != len(q.Onto) || len(now) != len(q.Onto) {
		return // an edge that is not there is told elsewhere
	}
	gauge := q.Gauge
	if len(q.Sections) > 0 && q.Sections[0].Base().Gauge != "" {
		gauge = q.Sections[0].Base().Gauge
	}
	sts, _ := r.ratio(gauge)
	edges := append([]schematic.EdgeRate(nil), q.Onto...)
	for k := range edges {
		e := &edges[k]
		a, b := old[k], now[k]
		if a.Units < 1 || b.Units < 1 || a.Length.Sign() <= 0 || b.Length.Sign() <= 0 || e.Of < 1 {
			continue
		}
		wish := units.Frac(int64(e.Pick), int64(e.Of)).Mul(sts).Mul(b.Length.Div(units.Int(int64(b.Units)))).Div(a.Length.Div(units.Int(int64(a.Units))))
		pick, of := nearRate(wish, e.Pick, e.Of)
		r.tellRate(e.Pos, q.Name, e.Edge, pick, of, e.Pick, e.Of)
		e.Pick, e.Of = pick, of
	}
	q.Onto = edges
}

func ontoOf(g *schematic.Garment, piece string) []schematic.Along {
	for _, m := range g.Pieces {
		if m.Name == piece && len(m.Steps) > 0 {
			return m.Steps[0].Onto
		}
	}
	return nil
}

// rerated changes the rate at which stitches are picked up along a band worked sideways, if
// its rows at the new gauge, which keep its length, are no longer at the old one, and says of how
// many rows it is then; 0 if the rate holds. Of the rates near enough it takes the one that
// moves the stitches least, which all that follows is worked on, and then the rows.
func (r *regauger) rerated(up *schematic.PickUp, stitches, rows int, rule Rule) int {
	if stitches < 1 || rows < 1 {
		return 0
	}
	wish := units.Frac(int64(stitches), int64(rows))
	if !rateKept.Less(rateOff(up.Pick, up.Of, wish)) {
		return 0
	}
	off := func(n, wish int) units.Num { return units.Frac(int64(n), int64(wish)).Sub(units.Int(1)).Abs() }
	best, pick, of := 0, 0, 0
	var least units.Num
	for q := 1; q <= rateRows; q++ {
		p := int(wish.Times(q).Round())
		if p < 1 || rateKept.Less(rateOff(p, q, wish)) {
			continue
		}
		for k := max(1, rows/q-p); k <= rows/q+p+1; k++ {
			if d := off(k*p, stitches).Times(3).Add(off(k*q, rows)); rule.holds(k*p) && (best == 0 || d.Less(least)) {
				best, pick, of, least = k*q, p, q, d
			}
		}
	}
	if best > 0 {
		r.tellRate(up.Pos, r.name, "the long edge of the band", pick, of, up.Pick, up.Of)
		up.Pick, up.Of = pick, of
	}
	return best
}

func (r *regauger) tellRate(pos finding.Pos, piece, edge string, pick, of, wasPick, wasOf int) {
	if pick == wasPick && of == wasOf {
		return
	}
	*r.found = append(*r.found, finding.Finding{Kind: "alter/rate", Severity: finding.Note, Pos: pos, Piece: piece,
		Message: fmt.Sprintf("along %s pick up %s instead of %s", edge, inEvery(pick, of), inEvery(wasPick, wasOf))})
}

func inEvery(pick, of int) string {
	if of == 1 {
		return fmt.Sprintf("%d in each", pick)
	}
	return fmt.Sprintf("%d in every %d", pick, of)
}
