package chart

import (
	"fmt"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// A round that is worked behind the one before, into the one below that, such as the arches behind the petals of a
// flower, is opened out: it stands outside, and grey lines lead from it to what it is worked into.

// behind stands for such a line where it passes through the round before.
var behind = &stitch.Stitch{ID: "behind", US: "worked behind", UK: "worked behind", Uses: 1, Makes: 1, Key: "behind", Base: "behind"}

const behindHalf = 0.5 // mm of room beside the line

// passBehind leads the feet of a row through the row before, back rows further down. It reports false if they
// can't be led there.
func (w *Work) passBehind(row *Row, back int) bool {
	last := len(w.Rows) - 1
	if back != 1 || last < 1 || !row.Round || w.Rows[last].Edge {
		return false
	}
	front := &w.Rows[last]
	at := map[int]int{}
	var st []St
	place := make([]int, len(front.St)) // where each stitch of the row before now is
	next, high := 0, front.tallest()
	wanted := row.footing(len(w.Rows[last-1].St))
	lead := func(until int) {
		for ; next < until; next++ {
			if wanted[next] {
				at[next] = len(st)
				st = append(st, St{Kind: behind, Feet: []int{next}, tall: high})
			}
		}
	}
	for i := range front.St {
		if s := &front.St[i]; len(s.Feet) > 0 && !s.Turn {
			if s.Feet[0] < next-1 { // it does not go around in order
				return false
			}
			lead(s.Feet[0])
		}
		place[i] = len(st)
		st = append(st, front.St[i])
	}
	lead(len(wanted))
	for i := range row.St {
		for k, f := range row.St[i].Feet {
			row.St[i].Feet[k] = at[f]
		}
	}
	front.St = st
	row.Behind = true
	return true
}

// footing is which of so many places below a row is worked into.
func (r *Row) footing(places int) []bool {
	out := make([]bool, places)
	for i := range r.St {
		for _, f := range r.St[i].Feet {
			out[f] = true
		}
	}
	return out
}

// behindNotes tell which rounds are opened out.
func (w *Work) behindNotes() []string {
	var out []string
	for r := range w.Rows {
		if row := &w.Rows[r]; row.Behind {
			out = append(out, fmt.Sprintf("%s is worked behind the round before it and opened out: grey lines lead to what it is worked into", row.title()))
		}
	}
	return out
}

// behindLine is the line through the round before.
func (p *plan) behindLine(n *node) []*sheet.Path {
	a, b := n.feet[0], n
	q := path("stitch", quiet, p.point(a, a.v+clear), p.point(b, b.v))
	q.Style.Stroke = sheet.Grey
	return []*sheet.Path{q}
}

// tallest is how tall the tallest stitch of a row is, mm.
func (r *Row) tallest() float64 {
	h := tall
	for i := range r.St {
		if s := &r.St[i]; s.Kind != nil && s.Kind != behind {
			h = max(h, height(s.Kind))
		}
	}
	return h
}
