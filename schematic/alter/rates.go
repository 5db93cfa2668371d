package alter

import (
	"fmt"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// rateRows are the most rows in which a rate of picking up repeats.
const rateRows = 20

// carried is how many times as long an edge must be as what rates before it left over, to take that up: a choice of this project.
const carried = 10

// rateFor is pick in every of along an edge, if that gives the wish to a stitch; otherwise
// the simplest rate that comes nearest to it.
func rateFor(wish units.Num, edge schematic.Along, pick, of int, rows bool) (int, int) {
	off := func(p, q int) units.Num { return units.Int(int64(edge.Pick(p, q, rows))).Sub(wish).Abs() }
	n, paid := edge.Rows+edge.Stitches, 0
	if rows {
		n, paid = edge.Rows, edge.Stitches // one each, at any rate
	}
	if wish.Sign() <= 0 || n < 1 || !units.Int(1).Less(off(pick, of)) {
		return pick, of
	}
	best, bestOf := pick, of
	for q := 1; q <= rateRows; q++ {
		p := max(1, int(wish.Sub(units.Int(int64(paid))).Times(q).Div(units.Int(int64(n))).Round()))
		if half.Less(off(best, bestOf)) && off(p, q).Less(off(best, bestOf)) {
			best, bestOf = p, q
		}
	}
	return best, bestOf
}

// rated is what the rate of an edge follows from.
type rated struct {
	was, rows, stitches, pick, of int
	length                        string
}

func ratedOf(old, now schematic.Along, e schematic.EdgeRate) rated {
	return rated{old.Picked, now.Rows, now.Stitches, e.Pick, e.Of, now.Length.String()}
}

// wished is how many stitches an edge asks for: as many as were picked up, by how much narrower they are, or for an edge that is
// longer by more than one, in proportion.
func wished(narrower, one units.Num, was, now schematic.Along) units.Num {
	wish := narrower.Times(was.Picked)
	if one.Less(now.Length.Sub(was.Length).Abs()) {
		wish = wish.Mul(now.Length).Div(was.Length)
	}
	return wish
}

// rates works out anew how many stitches of a band are picked up along each edge, so that
// it is as long as before for its edge, and gives the step of a band as published and as it is now.
func (t *trial) rates(q *schematic.Piece) (beginning schematic.Beginning, ok bool) {
	if len(q.Onto) == 0 {
		return beginning, false
	}
	old, now := ontoOf(madeIn(t.f.base, q.Name)), ontoOf(t.worked(q.Name))
	if len(old.Onto) != len(q.Onto) || len(now.Onto) != len(q.Onto) {
		return beginning, false // an edge that is not there is told elsewhere
	}
	was, is := t.Gauge(old.Gauge)
	sts := was.StitchWidth().Div(is.StitchWidth())
	edges := append([]schematic.EdgeRate(nil), q.Onto...)
	alike := map[rated]int{} // how many edges; a right and a left one that are alike keep one rate
	for k, e := range edges {
		alike[ratedOf(old.Onto[k], now.Onto[k], e)]++
	}
	rate := map[rated][2]int{}
	sum, short := 0, units.Num{} // short is what rates before left of their wish
	for k := range edges {
		e := &edges[k]
		a, b := old.Onto[k], now.Onto[k]
		if a.Picked > 0 && b.Picked > 0 && a.Length.Sign() > 0 && e.Of > 0 {
			wish := wished(sts, units.Max(is.StitchWidth(), is.RowHeight()), a, b)
			twin := ratedOf(a, b, *e)
			r, ok := rate[twin]
			if !ok {
				more := short.Div(units.Int(int64(alike[twin])))
				if wish.Div(units.Int(carried)).Less(more.Abs()) {
					more = units.Num{} // a short edge would be a band too long or too short for it
				}
				r[0], r[1] = rateFor(wish.Add(more), b, e.Pick, e.Of, e.Rows)
				rate[twin] = r
			}
			t.tellRate(e.Pos, e.Edge, r[0], r[1], e.Pick, e.Of)
			e.Pick, e.Of = r[0], r[1]
			short = short.Add(wish).Sub(units.Int(int64(b.Pick(e.Pick, e.Of, e.Rows))))
			if units.Int(2).Less(short.Abs()) {
				short = units.Num{} // it would bend the next edge
			}
		}
		sum += b.Pick(e.Pick, e.Of, e.Rows)
	}
	q.Onto = edges
	return schematic.Beginning{Step: old, N: sum}, true
}

func madeIn(g *schematic.Garment, piece string) *schematic.Made {
	for _, m := range g.Pieces {
		if m.Name == piece {
			return m
		}
	}
	return nil
}

// ontoOf is the step in which a band's stitches are picked up.
func ontoOf(m *schematic.Made) schematic.Step {
	if m == nil || len(m.Steps) == 0 {
		return schematic.Step{}
	}
	return m.Steps[0]
}

func (t *trial) tellRate(pos finding.Pos, edge string, pick, of, wasPick, wasOf int) {
	if pick == wasPick && of == wasOf {
		return
	}
	t.found = append(t.found, finding.Finding{Kind: "alter/rate", Severity: finding.Note, Pos: pos, Piece: t.piece,
		Message: fmt.Sprintf("along %s pick up %s instead of %s", edge, inEvery(pick, of), inEvery(wasPick, wasOf))})
}

func inEvery(pick, of int) string {
	if of == 1 {
		return fmt.Sprintf("%d in each", pick)
	}
	return fmt.Sprintf("%d in every %d", pick, of)
}
