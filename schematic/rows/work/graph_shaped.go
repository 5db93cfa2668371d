package work

import (
	"slices"

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
				at += firstRow(n, size) - every
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
		row.Sided = r.sided
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
	kind := chainStitch()
	for _, s := range row.Stitches {
		if s.Stitch != nil && s.Stitch.Craft == stitch.Knitting {
			kind = knitStitch()
		}
	}
	if kind == knitStitch() {
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
	row := g.Rows[len(g.Rows)-1].Stitches
	var out []int
	for _, p := range g.places {
		if p < len(row) && row[p].Stitch != nil { // nothing is known of a row that was not read
			out = append(out, p)
		}
	}
	if len(out) != n {
		return nil
	}
	return out
}

// pattern are the stitches of the row two below, or as many as words say that the pattern has, which a knitted row worked even is
// like if words name no fabric; nil if that row is another.
func (g *Graph) pattern(n int, row *GraphRow) []GraphStitch {
	k := len(g.Rows) - max(g.period, 2)
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
	o := &overlaid{cloth: c, row: row, yarn: g.before, odd: len(g.Rows)%2 == 1}
	for _, m := range into {
		o.made += max(m, 0) // of two together the second adds 1, and the mark counts for none
	}
	if o.made == n && c == (ins.Cloth{}) {
		o.like = g.pattern(n, row)
		c.Unknown = g.period > 2 && o.like == nil
		o.cloth = c
	}
	row.Fabric = o.like == nil && c.St == nil && !c.Garter && !c.Unknown && (c.Knit == 0 || c.Purl == 0)
	o.colours = !g.oneYarn && slices.ContainsFunc(o.like, func(s GraphStitch) bool { return s.Colour != o.like[0].Colour })
	return o.putAll(into, foot)
}

// putAll puts what is worked into each stitch below, by how many: -1 together with the next.
func (o *overlaid) putAll(into []int, foot func(int) int) []GraphStitch {
	for i := 0; i < len(into); i++ {
		switch m := into[i]; {
		case m == -1:
			o.put(2, false, foot(i), foot(i+1))
			i++
		default:
			for range m {
				o.put(1, m > 1, foot(i))
			}
		}
	}
	return o.out
}

// overlaid are the stitches of a row of a fabric, as they are put one after the other.
type overlaid struct {
	cloth   ins.Cloth
	row     *GraphRow
	like    []GraphStitch // what stands two rows below, if the row is like it
	colours bool          // of several yarns
	yarn    string        // else the one that is worked with
	odd     bool
	made    int // in all
	out     []GraphStitch
}

// put puts in a stitch that uses n; more: one of several in one place.
func (o *overlaid) put(used int, more bool, feet ...int) {
	s := GraphStitch{Counts: true, Feet: feet, Colour: o.yarn}
	at := len(o.out)
	rs := o.row.RS || o.row.Round
	switch {
	case o.cloth.Unknown:
	case o.cloth.St != nil:
		s.Stitch = o.cloth.Crochet(used)
	case o.like != nil:
		if s.Stitch = o.like[at].Stitch; o.colours {
			s.Colour = o.like[at].Colour
		}
	default:
		if !rs {
			at = o.made - 1 - at
		}
		s.Stitch = o.cloth.Knitted(at, rs, o.odd, o.row.Round, used, more)
	}
	o.out = append(o.out, s)
}

// into is how many stitches a row that changes as e says works into each of n places,
// as met. A place with the next one in one stitch is marked -1.
func (e edges) into(n int) []int {
	if n <= 0 { // nothing is left to work into
		return nil
	}
	m := met{into: make([]int, n), first: min(max(e.off, 0), n-1), last: n - 1}
	for i := m.first; i < n; i++ {
		m.into[i] = 1
	}
	for _, c := range e.at {
		switch {
		case c.by > 0:
			m.into[min(c.place, m.last)] += c.by
		case c.end:
			m.together(c.place-1, -c.by, -2)
		default:
			m.together(c.place, -c.by, 2)
		}
	}
	m.edge(m.first, e.begin, 1)
	m.edge(m.last, e.end, -1)
	m.spread(e.spread)
	return m.into
}

// met are the places of a row and how many stitches go into each; first and last bound those that it works.
type met struct {
	into        []int
	first, last int
}

// pair works the places low and low+1 together, if each has one stitch as yet.
func (m *met) pair(low int) bool {
	if low < m.first || low+1 > m.last || m.into[low] != 1 || m.into[low+1] != 1 {
		return false
	}
	m.into[low] = -1
	return true
}

// together works n pairs together, from low on; a pair that is not free is passed over.
func (m *met) together(low, n, step int) {
	for range n {
		m.pair(low)
		low += step
	}
}

// edge adds by stitches at a place, or works pairs together inwards from it as long as they are free.
func (m *met) edge(at, by, step int) {
	if by > 0 {
		m.into[at] += by
	}
	for range -by {
		if !m.pair(min(at, at+step)) {
			return
		}
		at += 2 * step
	}
}

// spread adds by stitches evenly across the row, or takes them away.
func (m *met) spread(by int) {
	n := max(by, -by)
	for k := range n {
		at := m.first + (2*k+1)*(m.last-m.first+1)/(2*n)
		if by > 0 {
			m.into[min(at, m.last)]++
			continue
		}
		at = max(m.first, min(at, m.last+1-2*(n-k))) // those behind it need room too
		for at < m.last && (at > 0 && m.into[at-1] == -1 || !m.pair(at)) {
			at++
		}
	}
}
