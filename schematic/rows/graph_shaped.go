package rows

import "flatwright/schematic/stitch"

// edges is how one row changes its count: stitches made at its beginning and end, as
// worked, or spread over it; fewer than 0 are worked together. Off are bound off at its beginning.
type edges struct{ begin, end, spread, off int }

// occurrences are the rows, from 1, on which a shaping in words falls, of rows in all:
// every sixth row is the sixth; 'on next row and every' begins with the first.
func (n *Node) occurrences(size, times, rows int) []int {
	w := n.where()
	every := max(w.Every.At(size), 1)
	var out []int
	at := 0
	first := times
	for _, t := range w.Then {
		first -= max(t.Times.At(size), 0)
	}
	run := func(every, times int, now bool) {
		for k := range times {
			if at += every; k == 0 && now {
				at += 1 - every
			}
			if at <= rows {
				out = append(out, at)
			}
		}
	}
	run(every, first, w.First)
	for _, t := range w.Then {
		run(max(t.Every.At(size), 1), max(t.Times.At(size), 0), false)
	}
	return out
}

// shapes adds what a shaping does in its rows to the plan of the rows. Side is 2 for a
// first row that is a wrong-side row. An edge that is called right as the piece is
// drawn is the beginning of a right-side row; every other one its end.
func (n *Node) shapes(plan []edges, size, times int, wrong, round bool) {
	w := n.where()
	k := max(n.N.At(size), 0)
	if !n.Inc {
		k = -k
	}
	for _, at := range n.occurrences(size, times, len(plan)) {
		e := &plan[at-1]
		rs := round || wrong != (at%2 == 1)
		switch {
		case w.Both:
			e.begin, e.end = e.begin+k, e.end+k
		case n.Name == "":
			e.spread += k
		case (n.Name == "right") == rs:
			e.begin += k
		default:
			e.end += k
		}
	}
}

// planned records rows whose counts change as planned, over f.
func (g *Graph) planned(f *fabric, plan []edges, no, side int, round bool, line int) {
	kind := f.main()
	n := f.stitches()
	for k, e := range plan {
		row := GraphRow{Number: -1, Round: round, Line: line, RS: side == 0 || round || (side == 1) == (k%2 == 1)}
		if no >= 0 {
			row.Number = no + 1 + k
		}
		row.Stitches = g.over(n, e, kind, round, row.RS)
		if g.total += len(row.Stitches); g.total > maxGraph || len(row.Stitches) == 0 {
			g.Cut = true
			return
		}
		n = len(row.Stitches)
		g.keep(row)
	}
}

// over are the stitches of a row over n stitches, changed as e says.
func (g *Graph) over(n int, e edges, kind *stitch.Stitch, round, rs bool) []GraphStitch {
	into := make([]int, n) // stitches into each place, as met
	for i := range into {
		into[i] = 1
	}
	for i := range min(max(e.off, 0), n-1) {
		into[i] = 0
	}
	// A place with the next one in one stitch is marked -1.
	first, last := min(max(e.off, 0), n-1), n-1
	edge := func(at, by, step int) {
		switch {
		case by > 0:
			into[at] += by
		case by < 0:
			for range -by {
				low := min(at, at+step)
				if low < first || low+1 > last || into[low] != 1 || into[low+1] != 1 {
					return
				}
				into[low] = -1
				at += 2 * step
			}
		}
	}
	edge(first, e.begin, 1)
	edge(last, e.end, -1)
	for k := range max(e.spread, -e.spread) {
		at := first + (2*k+1)*(last-first+1)/(2*max(e.spread, -e.spread))
		if e.spread > 0 {
			into[min(at, last)]++
			continue
		}
		for at+1 > last || into[at] != 1 || into[at+1] != 1 || at > 0 && into[at-1] == -1 {
			if at++; at+1 > last {
				at = first - 1
				break
			}
		}
		if at >= first {
			into[at] = -1
		}
	}
	single, together := kind, kind
	if kind != nil {
		if kind.Craft == stitch.Knitting {
			single, together = stitch.ByID("k"), stitch.ByID("k2tog")
			if !round && !rs {
				single, together = stitch.ByID("p"), stitch.ByID("p2tog")
			}
		} else if t := stitch.ByID(kind.ID + "2tog"); t != nil {
			together = t
		}
	}
	foot := func(i int) int {
		if round {
			return g.index(i)
		}
		return g.index(n - 1 - i)
	}
	var out []GraphStitch
	group := 0
	for i := 0; i < n; i++ {
		switch m := into[i]; {
		case m == -1:
			out = append(out, GraphStitch{Stitch: together, Counts: true, Feet: []int{foot(i), foot(i + 1)}})
			i++
		case m > 1:
			group++
			for range m {
				out = append(out, GraphStitch{Stitch: single, Counts: true, Feet: []int{foot(i)}, Group: group})
			}
		case m == 1:
			out = append(out, GraphStitch{Stitch: single, Counts: true, Feet: []int{foot(i)}})
		}
	}
	return out
}
