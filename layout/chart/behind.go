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

// behindPetals leads a round of arches, each of which stands between two petals of the round before, through that round to what
// those petals stand between: such arches lie behind them.
func (w *Work) behindPetals(row *Row) {
	last := len(w.Rows) - 1
	if !row.Round || last < 2 || w.Rows[last].Unread != "" {
		return
	}
	front, below := &w.Rows[last], &w.Rows[last-1]
	under := map[int]int{} // of the last stitch of each petal: the stitch of the row below between it and the next
	petals := front.petals(below)
	for k, at := range petals {
		under[at] = below.standsBehind(front.St[at].Feet[0], k == len(petals)-1)
	}
	arches := 0
	for i := range row.St {
		s := &row.St[i]
		switch to, ok := -1, false; {
		case s.arch() && s.Chain > 1:
			arches++
		case s.Turn || len(s.Feet) == 0:
		case !s.Gap:
			return
		default:
			if to, ok = under[s.Feet[0]]; !ok || to < 0 {
				return
			}
		}
	}
	if arches < leastPetals {
		return
	}
	place := make([]int, len(front.St)) // where each line is, behind the last stitch of its petal
	var st []St
	high := front.tallest()
	for i := range front.St {
		st = append(st, front.St[i])
		if to, ok := under[i]; ok {
			place[i] = len(st)
			st = append(st, St{Kind: behind, Feet: []int{to}, tall: high})
		}
	}
	for i := range row.St {
		if s := &row.St[i]; s.Gap && len(s.Feet) == 1 {
			s.Feet, s.Gap = []int{place[s.Feet[0]]}, false
		}
	}
	front.St, row.Behind = st, true
}

// leastPetals is how many petals or arches make a flower, and leastPetal of how many stitches one is at least.
const (
	leastPetals = 3
	leastPetal  = 4
)

// petals are the last stitches of the petals of a round, if it is of petals alone: what stands in one arch, and is lower at its ends.
func (r *Row) petals(below *Row) []int {
	var out []int
	for i := 0; i < len(r.St); {
		if s := &r.St[i]; s.Turn || s.Travel || s.Kind != nil && s.Kind.ID == "slst" {
			i++
			continue
		}
		to := r.petal(i, below)
		if to < 0 {
			return nil
		}
		out = append(out, to)
		i = to + 1
	}
	return out
}

// petal is the last stitch of the petal that begins with the i-th; -1 if none does.
func (r *Row) petal(i int, below *Row) int {
	foot, high, last := -1, 0.0, i
	for k := i; k < len(r.St); k++ {
		s := &r.St[k]
		if len(s.Feet) == 0 && s.arch() {
			continue
		}
		if len(s.Feet) != 1 || foot >= 0 && s.Feet[0] != foot {
			break
		}
		foot, last = s.Feet[0], k
		high = max(high, height(s.Kind))
	}
	if foot < 0 || last-i+1 < leastPetal || !below.St[foot].arch() || r.St[i].Kind == nil || height(r.St[i].Kind) >= high || height(r.St[last].Kind) >= high {
		return -1
	}
	return last
}

// standsBehind is the stitch behind an arch, the first of the round behind the last; -1 if none stands there.
func (r *Row) standsBehind(arch int, last bool) int {
	for i := arch + 1; i < len(r.St) && !r.St[i].arch(); i++ {
		if r.St[i].Kind != nil {
			return i
		}
	}
	for i := 0; last && i < arch && (r.St[i].Turn || !r.St[i].arch()); i++ {
		if r.St[i].Kind != nil {
			return i
		}
	}
	return -1
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
