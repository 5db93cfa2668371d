package work

import (
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// edges is how one row changes its count: stitches made at its beginning and end, as
// worked, or spread over it; fewer than 0 are worked together. Off are bound off at its beginning.
// Inner are changes within the row.
type edges struct {
	begin, end, spread, off int
	inner                   []inner
	at                      []change // what inner comes to in a row of known panels
}

// inner is a change of by at every marker between panels, on both sides of it; or at the
// ends of one panel, or in the middle of the row, of by in all.
type inner struct {
	by     int
	all    int // by at all of its places
	panel  string
	middle bool
}

// change is a change of by at a place, counted as met; both is for the end of a panel, whose
// stitch is worked together with the one before it.
type change struct {
	place, by int
	end       bool
}

// occurrences are the rows, from 1, on which a shaping in words falls, of rows in all:
// every sixth row is the sixth; 'on next row and every' begins with the first.
func occurrences(n *ins.Shape, size, times, rows int) []int {
	every := max(n.Every.At(size), 1)
	var out []int
	at := 0
	first := times
	for _, t := range n.Then {
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
	run(every, first, n.First)
	for _, t := range n.Then {
		run(max(t.Every.At(size), 1), max(t.Times.At(size), 0), false)
	}
	return out
}

// atRight reports whether a shaping is at the right edge, as the right side shows it: one
// whose side nothing tells is not.
func atRight(n *ins.Shape) bool {
	if n.Side != "" {
		return n.Side == "right"
	}
	return n.Edge == "right"
}

// shapes adds what a shaping does in its rows to the plan of the rows. Wrong: the
// first is a wrong-side row. The right edge is the beginning of a
// right-side row.
func shapes(n *ins.Shape, plan []edges, size, times, places int, wrong, round bool) {
	k := max(n.N.At(size), 0)
	if !n.Inc {
		k = -k
	}
	if n.HasOver && !n.HasTimes && !n.Every.Set() && n.Edge == "" && !n.Both { // so many in all, over so many rows
		for i := range plan {
			plan[i].spread += k*(i+1)/len(plan) - k*i/len(plan)
		}
		return
	}
	last := 0
	for _, at := range occurrences(n, size, times, len(plan)) {
		if onWrong := wrong == (at%2 == 1); !round && (n.RSOnly && onWrong || n.WSOnly && !onWrong) && at > last+1 {
			at-- // the row before it faces as the text says
		}
		last = at
		e := &plan[at-1]
		rs := round || wrong != (at%2 == 1)
		switch {
		case n.Inner || n.Both && n.Marked:
			e.inner = append(e.inner, inner{by: k, all: k * places, panel: n.Panel, middle: n.Inner && n.Panel == ""})
		case n.Both:
			e.begin, e.end = e.begin+k, e.end+k
		case n.Edge == "" || n.Spread:
			e.spread += k
		case atRight(n) == rs:
			e.begin += k
		default:
			e.end += k
		}
	}
}

// planned records rows whose counts change as planned, over what r has.
func (g *Graph) planned(r *runner, plan []edges, line int) {
	c := r.cloth
	if kind := r.stuff(r.fab); c.St == nil && kind != nil && kind.Craft == stitch.Crochet {
		c = ins.Cloth{St: kind}
	} else if kind == nil {
		c = ins.Cloth{Unknown: true}
	}
	n := r.fab.stitches()
	for k, e := range plan {
		if g.total+n > maxGraph {
			g.Cut = true
			return
		}
		row := GraphRow{Number: -1, Round: r.round, Line: line, RS: true}
		switch {
		case r.round:
		case r.side == 0:
			row.RS = g.next()
		default:
			row.RS = (r.side == 1) == (k%2 == 1)
		}
		if r.no >= 0 {
			row.Number = r.no + 1 + k
		}
		if g.lost {
			row.Unknown = true
			g.Rows = append(g.Rows, row)
			continue
		}
		e.settle(&r.panels, n, row.RS || row.Round, row.Round)
		row.Stitches = g.over(n, e, c, &row)
		if g.total += len(row.Stitches); g.total > maxGraph || len(row.Stitches) == 0 {
			g.Cut = true
			return
		}
		n = len(row.Stitches)
		g.keep(row)
	}
}

// atOnce leaves stitches at an edge of the row before, or adds chains there: what the
// next row is worked into. At the right edge a right-side row begins.
func (g *Graph) atOnce(n *ins.Shape, change int) {
	k := len(g.Rows) - 1
	if k < 0 || change == 0 {
		return
	}
	row := &g.Rows[k]
	low := atRight(n) == (row.RS && !row.Start)
	first, last := 0, change
	if low {
		first, last = change, 0
	}
	if n.Both {
		first, last = change/2, change-change/2
	}
	if change < 0 {
		if -change < len(g.places) {
			g.places = g.places[-first : len(g.places)+last]
		}
		return
	}
	kind := chainStitch
	for _, s := range row.Stitches {
		if s.Stitch != nil && s.Stitch.Craft == stitch.Knitting {
			kind = knitStitch
		}
	}
	if kind == knitStitch {
		return // a grid has them in the next row
	}
	if g.total += change; g.total > maxGraph {
		g.Cut = true
		return
	}
	chains := func(n int) []GraphStitch {
		out := make([]GraphStitch, n)
		for i := range out {
			out[i] = GraphStitch{Stitch: kind, Counts: row.Start}
		}
		return out
	}
	old := g.places
	g.places = make([]int, 0, len(old)+change)
	for i := range first {
		g.places = append(g.places, i)
	}
	for _, p := range old {
		g.places = append(g.places, p+first)
	}
	for i := range last {
		g.places = append(g.places, first+len(row.Stitches)+i)
	}
	row.Stitches = append(append(chains(first), row.Stitches...), chains(last)...)
}

// standing are the places of the row before that are stitches, n of them; nil if there
// are not so many.
func (g *Graph) standing(n int) []int {
	if len(g.Rows) == 0 || len(g.places) == n {
		return nil
	}
	var out []int
	for _, p := range g.places {
		if g.Rows[len(g.Rows)-1].Stitches[p].Stitch != nil {
			out = append(out, p)
		}
	}
	if len(out) != n {
		return nil
	}
	return out
}

// pattern are the stitches of the row two below, which a knitted row worked even is
// like if words name no fabric; nil if that row is another.
func (g *Graph) pattern(n int, row *GraphRow) []GraphStitch {
	k := len(g.Rows) - 2
	if k < 0 || g.Rows[k].Start || g.Rows[k].RS != row.RS || g.Rows[k].Round != row.Round || len(g.Rows[k].Stitches) != n {
		return nil
	}
	for _, s := range g.Rows[k].Stitches {
		if s.Stitch == nil || s.Stitch.Uses != 1 || s.Stitch.Makes != 1 || s.Stitch.Craft != stitch.Knitting {
			return nil
		}
	}
	return g.Rows[k].Stitches
}

// over are the stitches of a row over n stitches, changed as e says.
func (g *Graph) over(n int, e edges, c ins.Cloth, row *GraphRow) []GraphStitch {
	into := e.into(n)
	places := g.standing(n)
	foot := func(i int) int {
		if !row.Round {
			i = n - 1 - i
		}
		if places != nil {
			return places[i]
		}
		return g.index(i)
	}
	made, used := 0, 0
	for _, m := range into {
		made += max(m, 0)
		if m == -1 {
			made++
			used++
		}
	}
	made -= used // the second one of two together
	var like []GraphStitch
	if made == n && c == (ins.Cloth{}) {
		like = g.pattern(n, row)
	}
	odd := len(g.Rows)%2 == 1
	var out []GraphStitch
	group := 0
	put := func(used int, two bool, feet ...int) {
		s := GraphStitch{Counts: true, Feet: feet}
		at := len(out)
		switch {
		case c.Unknown:
		case c.St != nil:
			s.Stitch = c.Crochet(used)
		case like != nil:
			s.Stitch = like[at].Stitch
		default:
			if !row.RS && !row.Round {
				at = made - 1 - at
			}
			s.Stitch = c.Knitted(at, row.RS || row.Round, odd, row.Round, used, two)
		}
		if two {
			s.Group = group
		}
		out = append(out, s)
	}
	for i := 0; i < n; i++ {
		switch m := into[i]; {
		case m == -1:
			put(2, false, foot(i), foot(i+1))
			i++
		case m > 1:
			group++
			for range m {
				put(1, true, foot(i))
			}
		case m == 1:
			put(1, false, foot(i))
		}
	}
	return out
}

// into is how many stitches a row that changes as e says works into each of n places,
// as met. A place with the next one in one stitch is marked -1.
func (e edges) into(n int) []int {
	into := make([]int, n)
	for i := range into {
		into[i] = 1
	}
	first, last := min(max(e.off, 0), n-1), n-1
	for i := range first {
		into[i] = 0
	}
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
	for _, c := range e.at {
		switch low := c.place; {
		case c.by > 0:
			into[min(c.place, last)] += c.by
		case c.by < 0:
			step := 2
			if c.end {
				low, step = low-1, -2
			}
			for range -c.by {
				if low >= first && low+1 <= last && into[low] == 1 && into[low+1] == 1 {
					into[low] = -1
				}
				low += step
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
	return into
}
