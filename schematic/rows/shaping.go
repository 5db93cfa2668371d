package rows

import (
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

func (r *runner) endSide(n *Node) {
	if n.where().EndRS != 0 {
		r.side = n.where().EndRS
	}
}

// evenRows works even: so many rows, to a row, or to a length.
func (r *runner) evenRows(l *Line, n *Node) {
	r.in(n)
	if k := n.where().part; k.set() && r.fab != nil && r.known && k.At(r.size) > r.fab.stitches() {
		r.tell("rows/over-use", finding.Warning, n.At, "the short rows go over %s stitches, and there are only %s", "go over fewer", k.At(r.size), r.fab.stitches())
	}
	switch {
	case n.where().ToRow.set():
		to := n.where().ToRow.At(r.size)
		switch {
		case to == none:
			return
		case r.no < 0:
			r.no = to
			r.even(0)
		case to < r.no:
			r.tell("rows/number", finding.Warning, n.At, "row %s is past already: the last one was row %s", "name a later row", to, r.no)
		default:
			r.even(to - r.no)
		}
	case n.where().Length != nil:
		if r.fab != nil {
			r.fab = uniform(r.stuff(r.fab), r.fab.stitches())
		}
		r.no, r.side = -1, 0
		r.endSide(n)
		return
	case n.where().Rows.set():
		r.even(max(n.where().Rows.At(r.size), 0))
	case l.Label != nil:
		r.even(r.times(l))
	}
	if e := n.where().EndRS; e != 0 {
		if r.side != 0 && r.side != e {
			names := [...]string{1: "right", 2: "wrong"}
			r.tell("rows/side", finding.Warning, n.At, "these rows end after a "+names[r.side]+"-side row, not a "+names[e]+"-side row", "work one row more or less")
		}
		r.side = e
	}
}

// shape works increases or decreases that are told in words.
func (r *runner) shape(l *Line, n *Node) {
	r.in(n)
	w := n.where()
	every := max(w.Every.At(r.size), 1)
	times := 1
	switch {
	case w.HasTimes:
		times = max(w.Times.At(r.size), 0)
		if w.First {
			times++
		}
	case w.Rows.set():
		times = max(w.Rows.At(r.size), 0) / every
	case l.Label != nil:
		times = r.times(l) / every
	}
	per := max(n.N.At(r.size), 0) * r.places(n)
	if w.Until.set() && r.fab != nil {
		want := w.Until.At(r.size)
		d := r.fab.stitches() - want
		if n.Inc {
			d = -d
		}
		if per > 0 && d >= 0 && d%per == 0 {
			times = d / per
		} else if r.known {
			r.tell("rows/stated", finding.Warning, n.At, "%s stitches are not reached from %s in steps of %s", "mend the number, or the count before it", want, r.fab.stitches(), per)
			times = max(d, 0) / max(per, 1)
		}
	}
	rows := times * every
	if w.First && every > 1 {
		rows = 1 + (times-1)*every
	}
	if l.Label != nil {
		rows = r.times(l)
	}
	for _, t := range w.Then {
		k, every := max(t.Times.At(r.size), 0), max(t.Every.At(r.size), 1)
		times += k
		rows += k * every
	}
	if w.HasOver {
		rows = max(w.Over.At(r.size), 0)
	}
	if n.More { // at the same time as the shaping before
		rows = max(rows-r.shaped, 0)
	} else {
		r.shaped = 0
	}
	r.shaped += rows
	if r.fab == nil || !r.known {
		r.even(rows)
		return
	}
	have := r.fab.stitches()
	change := per * times
	if !n.Inc {
		if change > have {
			r.tell("rows/over-use", finding.Warning, n.At, "this decreases %s stitches, but there are only %s", "decrease fewer times", change, have)
			change = have
		}
		change = -change
	}
	if r.g != nil && rows == 0 {
		r.g.atOnce(n, change)
	}
	r.plan(l, n, times, rows)
	r.fab = uniform(r.stuff(r.fab), have+change)
	r.also(change)
	if k := len(r.cur.rows); k > 0 {
		r.cur.rows[k-1].after = r.fab
	}
	if w.RSOnly || w.WSOnly {
		r.side = 0
	}
}

// places is at how many places of the row a shaping falls.
func (r *runner) places(n *Node) int {
	w := n.where()
	switch {
	case !w.Both:
		return 1
	case w.marked && w.markers.set():
		return 2 * max(w.markers.At(r.size), 0)
	case w.marked && r.round && len(r.panels) > 0:
		return 2 * len(r.panels)
	case w.marked && len(r.panels) > 1:
		return 2 * (len(r.panels) - 1)
	case w.marked:
		r.tell("rows/reference", finding.Warning, n.At, "no markers were placed before this", "say how many there are: on each side of 4 markers")
	}
	return 2
}

// marks works the placing of markers between panels, which must make up the row.
func (r *runner) marks(n *Node) {
	sum := 0
	for _, g := range n.Groups {
		sum += max(g.N.At(r.size), 0)
	}
	if r.fab != nil && r.known && sum != r.fab.stitches() && sum > 0 {
		r.tell("rows/division", finding.Warning, n.At, "the panels add up to %s stitches, and the row has %s", "mend a panel by %s", sum, r.fab.stitches(), r.fab.stitches()-sum)
	}
	r.panels = nil
	for _, g := range n.Groups {
		if k := max(g.N.At(r.size), 0); k > 0 {
			r.panels = append(r.panels, panel{strings.TrimPrefix(g.Unit.Word, "for "), k})
		}
	}
}

// plan counts the rows of a shaping, and records them for a graph with what they change:
// those of the shapings at the same time too, whose own rows are these.
func (r *runner) plan(l *Line, n *Node, times, rows int) {
	if r.g == nil || n.More || rows == 0 {
		r.even(rows)
		return
	}
	plan := make([]edges, min(rows, maxGraph))
	wrong := r.side == 1 || r.side == 0 && !r.g.next()
	n.shapes(plan, r.size, times, r.places(n), wrong, r.round)
	after := false
	for _, m := range l.Body {
		if m == n {
			after = true
			continue
		}
		if after && m.Op == OpShape && m.More && m.where().HasTimes {
			k := max(m.where().Times.At(r.size), 0)
			for _, t := range m.where().Then {
				k += max(t.Times.At(r.size), 0)
			}
			m.shapes(plan, r.size, k, r.places(m), wrong, r.round)
		}
	}
	g := r.g
	g.planned(r, plan, l.At.Line)
	r.g = nil // they are recorded
	r.even(rows)
	r.g = g
}

// asFor works as for another piece: to a row of it, to a heading of it, or to its end.
func (r *runner) asFor(n *Node) {
	at := -1
	name := headingKey(n.Name)
	for i, p := range r.pieces[:len(r.pieces)-1] {
		if p.name == name {
			at = i
			break
		}
	}
	for i, p := range r.pieces[:len(r.pieces)-1] {
		if at < 0 && name != "" && (strings.HasPrefix(p.name, name) || p.name != "" && strings.HasPrefix(name, p.name)) {
			at = i
		}
	}
	if at < 0 {
		r.tell("rows/reference", finding.Warning, n.At, "there is no piece called '"+n.Name+"' before this", "call it by its heading")
		r.known = false
		return
	}
	var chain []*piece
	for i := at; i < len(r.pieces)-1; i++ {
		if i > at && (r.pieces[i].anew || !strings.Contains(r.pieces[i].name, "shape") && !strings.Contains(r.pieces[i].name, "shaping") && !strings.Contains(r.pieces[i].name, "divide")) {
			break
		}
		chain = append(chain, r.pieces[i])
	}
	to := n.where().ToRow
	switch {
	case to.set():
		k := to.At(r.size)
		for c := len(chain) - 1; c >= 0; c-- {
			for i := len(chain[c].rows) - 1; i >= 0; i-- {
				if d := chain[c].rows[i]; d.no > 0 && d.no <= k && k < d.no+d.count {
					r.anew()
					r.fab, r.known, r.no = d.after, true, k
					r.side = d.side
					if d.side != 0 && (k-d.no)%2 == 0 {
						r.side = 3 - d.side
					}
					return
				}
			}
		}
		r.tell("rows/reference", finding.Warning, n.At, "'"+n.Name+"' has no row %s", "name a row that it has", k)
		r.known = false
		return
	case n.Lines != nil:
		word := strings.Fields(n.Lines.From)
		for _, p := range chain[min(1, len(chain)):] {
			if len(word) > 0 && strings.Contains(p.name, strings.TrimSuffix(word[0], "s")) {
				r.anew()
				r.fab, r.known, r.no, r.side = p.start, p.start != nil, p.startNo, 0
				return
			}
		}
		r.tell("rows/reference", finding.Warning, n.At, "'"+n.Name+"' has no part called '"+strings.TrimSpace(n.Lines.From)+"'", "name a row or a heading that it has")
		r.known = false
		return
	}
	p := chain[len(chain)-1]
	if r.fab != nil && r.known && r.no > 0 {
		for _, q := range chain {
			for _, d := range q.rows {
				if d.no > 0 && d.no <= r.no && r.no < d.no+d.count && d.after != nil && d.after.stitches() != r.fab.stitches() {
					r.tell("rows/as-for", finding.Warning, n.At, "'"+n.Name+"' has %s stitches after that row, this has %s", "mend the count, or write the rows out", d.after.stitches(), r.fab.stitches())
				}
			}
		}
	}
	r.fab, r.no = p.end, p.no
	r.known = p.end != nil
	r.side = 0
}

// partsOf works a division, whose parts must add up to the row, or makes one row of
// several parts.
func (r *runner) partsOf(n *Node) {
	sum := 0
	for _, g := range n.Groups {
		sum += max(g.N.At(r.size), 0)
	}
	if n.Op == OpTogether {
		kind := r.mainOf()
		if r.fab == nil {
			r.cloth = r.parted
		}
		r.anew()
		r.fab, r.known, r.round = uniform(kind, sum), true, false
		if r.g != nil {
			r.g.anew()
			r.g.foundation(r.fab, n.At.Line, false)
			r.g.held()
			r.g.From = r.origin(r.section.Name)
		}
		return
	}
	if r.fab != nil && r.known && sum != r.fab.stitches() && sum > 0 {
		r.tell("rows/division", finding.Warning, n.At, "the parts add up to %s stitches, and the row has %s", "mend a part by %s", sum, r.fab.stitches(), r.fab.stitches()-sum)
	}
	s := split{section: r.section.Name, row: max(r.no, 0)}
	for _, g := range n.Groups {
		s.parts = append(s.parts, splitPart{strings.TrimPrefix(g.Unit.Word, "for "), max(g.N.At(r.size), 0)})
	}
	r.splits = append(r.splits, s)
	if r.fab != nil {
		r.last, r.parted = r.stuff(r.fab), r.cloth
		r.lefts = append(r.lefts, left{f: r.fab, no: r.no})
	}
}

func (r *runner) mainOf() *stitch.Stitch {
	if r.fab != nil {
		if k := r.stuff(r.fab); k != nil {
			return k
		}
	}
	return r.last
}
