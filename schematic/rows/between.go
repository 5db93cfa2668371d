package rows

import (
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

// between works an unnumbered line: a foundation, casting on, joining yarn,
// fastening off. It reports false for a line that is a row.
func (r *runner) between(l *Line) bool {
	var start, yarn *Node
	ring, round, stitches := false, false, false
	skipped := 0
	for _, n := range l.Body {
		switch n.Op {
		case OpChain, OpCastOn:
			if start == nil && !stitches {
				start = n
			}
		case OpJoin:
			ring = ring || n.Name == "ring" || start != nil && start.Op == OpChain
			round = round || n.Name == "round"
		case OpJoinYarn:
			yarn = n
		case OpSkip:
			if yarn == nil {
				for _, p := range n.Places {
					skipped += max(p.N.At(r.size), 0)
				}
			}
		case OpStitch, OpGroup, OpPickUp:
			stitches = true
		}
	}
	switch {
	case yarn != nil:
		r.joinYarn(yarn, skipped, l)
		if !stitches {
			return true
		}
		var rest []*Node
		for i, n := range l.Body {
			if n == yarn {
				rest = l.Body[i+1:]
			}
		}
		r.rows(l, rest)
		r.fresh, r.no, r.side = true, 0, 0
		return true
	case start != nil && !stitches:
		k := start.N.At(r.size)
		if k == none {
			return true
		}
		r.anew()
		if start.Op == OpChain {
			r.fab = &fabric{ring: ring}
			r.fab.add(run{kind: chainStitch, n: k, base: true})
		} else {
			r.fab = uniform(knitStitch, k)
		}
		r.known, r.round, r.cloth = true, ring || round, cloth{}
		if r.g != nil {
			r.g.anew()
			r.g.foundation(r.fab, l.At.Line, r.round)
		}
		if l.Stated != nil {
			r.check(l, &result{out: r.fab})
		}
		return true
	case stitches:
		for _, n := range l.Body {
			if n.Op == OpPickUp && n.Stitch == nil {
				r.anew()
				r.fab, r.known = uniform(knitStitch, max(n.N.At(r.size), 0)), true
				r.round = round
				if r.g != nil {
					r.g.anew()
					r.g.foundation(r.fab, l.At.Line, round)
				}
				return true
			}
		}
		return false
	}
	for _, n := range l.Body {
		switch n.Op {
		case OpFasten:
			r.fab, r.carry, r.alt = nil, nil, nil
			r.fresh, r.side = true, 0
		case OpBindOff:
			if n.Open {
				r.fab, r.alt = nil, nil
				r.fresh, r.side = true, 0
			} else if r.fab != nil {
				rows := 1
				if n.Name == "hold" {
					rows = 0
				}
				r.lessen(n, max(n.N.At(r.size), 0), rows)
			}
		case OpLeave:
			if r.fab != nil {
				if k := n.N.At(r.size); !n.Open && r.known && k != none && k != r.fab.stitches() {
					r.tell("rows/unworked", finding.Warning, n.At, "%s stitches remain, not %s", "say %s, or mend the count before it", r.fab.stitches(), k, r.fab.stitches())
				}
				r.lefts = append(r.lefts, left{f: r.fab, no: r.no})
			}
		}
	}
	return true
}

var chainStitch = stitch.ByID("ch")

func (r *runner) anew() {
	r.no, r.side, r.carry, r.alt, r.edge, r.panels = 0, 0, nil, nil, 0, nil
	r.cur.anew = true
	r.fresh, r.begun = true, true
}

// joinYarn takes up stitches that a row left unworked, or begins along an edge.
func (r *runner) joinYarn(n *Node, skipped int, l *Line) {
	r.carry, r.alt, r.side, r.cloth = nil, nil, 0, cloth{}
	r.fresh, r.begun = true, false
	taken := skipped > 0 || n.Name == "held" || n.Name == "holder" || n.Name == "next"
	if !taken || len(r.lefts) == 0 {
		r.fab, r.known, r.no, r.edge = nil, false, 0, 0
		r.cur.anew = true
		if taken {
			r.tell("rows/unworked", finding.Warning, n.At, "no stitches were left unworked before this", "say where they were left")
		}
		return
	}
	best := 0
	for i, v := range r.lefts {
		if v.f.stitches() > r.lefts[best].f.stitches() {
			best = i
		}
	}
	v := r.lefts[best]
	r.lefts = append(r.lefts[:best:best], r.lefts[best+1:]...)
	c := over(v.f)
	if skipped > c.left {
		r.tell("rows/over-use", finding.Warning, n.At, "%s stitches are skipped, but only %s were left", "skip fewer", skipped, c.left)
		skipped = c.left
	}
	w := &work{x: r.x, size: r.size, cur: c, from: v.f, out: &fabric{}, quiet: 1}
	w.use(skipped, nil, n.At)
	r.fab, r.known = rest(&w.cur).reversed(), true
	r.begun = true
	r.no = v.no
	r.round = false
	if r.g != nil {
		r.g.anew()
		r.g.foundation(r.fab, l.At.Line, false)
		r.g.held()
	}
}

// lessen takes k stitches off in n rows.
func (r *runner) lessen(n *Node, k, rows int) {
	have := r.fab.stitches()
	if k > have {
		r.tell("rows/over-use", finding.Warning, n.At, "this takes %s stitches off, but there are only %s", "take off %s at most", k, have, have)
		k = have
	}
	if g := r.g; g != nil && n.Op == OpBindEach && rows > 0 {
		plan := make([]edges, min(rows, maxGraph))
		for i := range plan {
			plan[i].off = k / rows
		}
		g.planned(r, plan, 0)
		r.g = nil
		r.even(rows)
		r.g = g
	} else {
		r.even(rows)
	}
	r.fab = uniform(r.stuff(r.fab), have-k)
	r.also(-k)
}

// also changes the other count that the row may have.
func (r *runner) also(change int) {
	if r.alt != nil {
		r.alt = uniform(r.alt.main(), max(r.alt.stitches()+change, 0))
	}
}

// even counts rows worked even.
func (r *runner) even(rows int) {
	if rows > 0 && r.fab != nil {
		no := -1
		if r.no >= 0 {
			no = r.no + 1
		}
		if r.g != nil {
			r.g.even(r, rows)
		}
		r.fab = uniform(r.stuff(r.fab), r.fab.stitches())
		r.cur.rows = append(r.cur.rows, done{no: no, count: rows, after: r.fab, side: r.side})
	}
	if r.no >= 0 {
		r.no += rows
	}
	if !r.round && r.side != 0 && rows%2 == 1 {
		r.side = 3 - r.side
	}
	r.begun = true
}

// whole works a line that is about whole rows; it reports false for other lines.
func (r *runner) whole(l *Line) bool {
	found := false
	for _, n := range l.Body {
		switch n.Op {
		case OpRep, OpEven, OpShape, OpBindEach, OpAsFor, OpEdge, OpMeasure, OpDivide, OpTogether, OpMarkers:
			found = true
		case OpStitch, OpGroup:
			return false
		}
	}
	if !found {
		return false
	}
	var res *result
	for _, n := range l.Body {
		switch n.Op {
		case OpRep:
			res = r.rep(l, n)
		case OpEven:
			r.evenRows(l, n)
		case OpShape:
			r.shape(l, n)
		case OpDivide, OpTogether:
			r.partsOf(n)
		case OpMarkers:
			r.marks(n)
		case OpBindEach:
			r.in(n)
			rows := max(n.M.At(r.size), 0)
			k := max(n.N.At(r.size), 0) * rows
			if r.fab == nil || !r.known {
				r.even(rows)
			} else if n.Inc {
				r.even(rows)
				r.fab = uniform(r.stuff(r.fab), r.fab.stitches()+k)
				r.also(k)
			} else {
				r.lessen(n, k, rows)
			}
		case OpAsFor:
			r.asFor(n)
		case OpEdge:
			r.edge = max(r.no, 0)
			r.no, r.side, r.carry, r.alt = 0, 0, nil, nil
			r.fresh = true
		case OpMeasure:
			r.measure(n.Lines)
		}
	}
	if res == nil && r.fab != nil {
		res = &result{out: r.fab}
	}
	if res != nil && l.Stated != nil {
		res.out = r.fab
		r.check(l, res)
	}
	return true
}

// bodies are the rows that 'rep' means, in order.
func (r *runner) bodies(n *Node) ([]done, bool) {
	var out []done
	switch {
	case n.Name == "last":
		k := n.N.At(r.size)
		for i := len(r.cur.rows) - 1; i >= 0 && len(out) < k; i-- {
			for j := 0; j < r.cur.rows[i].count && len(out) < k; j++ {
				out = append([]done{r.cur.rows[i]}, out...)
			}
		}
		return out, len(out) == k
	case n.Name != "":
		for p := len(r.pieces) - 1; p >= 0; p-- {
			for i := len(r.pieces[p].rows) - 1; i >= 0; i-- {
				if r.pieces[p].rows[i].name == n.Name {
					return []done{r.pieces[p].rows[i]}, true
				}
			}
		}
		return nil, false
	}
	want := []int{}
	for i := 1; i < len(n.Rows) && !n.More; i++ {
		if n.Rows[i].At(r.size) == n.Rows[i-1].At(r.size) {
			r.tell("rows/reference", finding.Warning, n.At, "row %s is named twice", "name the rows in their order", n.Rows[i].At(r.size))
		}
	}
	for i, v := range n.Rows {
		k := v.At(r.size)
		if n.More && i > 0 {
			for j := n.Rows[i-1].At(r.size) + 1; j < k && len(want) < 1000; j++ {
				want = append(want, j)
			}
		}
		want = append(want, k)
	}
	for _, k := range want {
		d, ok := r.row(k)
		if !ok {
			r.tell("rows/reference", finding.Warning, n.At, "there is no row %s to repeat", "name a row that was worked before", k)
			return nil, true
		}
		out = append(out, d)
	}
	return out, len(out) > 0
}

// row is the row of that number, of this section or else of the latest that has one.
func (r *runner) row(k int) (done, bool) {
	for p := len(r.pieces) - 1; p >= 0; p-- {
		list := r.pieces[p].rows
		for i := len(list) - 1; i >= 0; i-- {
			if d := list[i]; d.body != nil && (d.no > 0 && d.no <= k && k < d.no+d.count || d.alt > 0 && d.alt <= k && k < d.alt+d.count) {
				return d, true
			}
		}
		if r.pieces[p].anew {
			break
		}
	}
	return done{}, false
}

// rep repeats rows.
func (r *runner) rep(l *Line, n *Node) *result {
	cycle, ok := r.bodies(n)
	if !ok {
		r.tell("rows/reference", finding.Warning, n.At, "there are no such rows to repeat", "name rows that were worked before")
	}
	if len(cycle) == 0 {
		r.known = false
		if l.Label != nil {
			r.count(l, r.times(l))
		}
		return nil
	}
	times := max(n.Times.At(r.size), 0)
	rows, gap := times*len(cycle), 0
	switch {
	case l.Label != nil:
		rows = r.times(l)
		if n.Times.By != nil || n.Times.All != 1 {
			if times*len(cycle) != rows {
				r.tell("rows/number", finding.Warning, n.At, "this line is for %s rows, but its repeats are %s | %s rows by its numbers | %s rows by its repeats", "mend the numbers of the rows, or repeat otherwise",
					rows, times*len(cycle), rows, times*len(cycle))
			}
		}
	case n.where().ToRow.set():
		to := n.where().ToRow.At(r.size)
		if r.no < 0 {
			r.no = to
			rows = len(cycle)
			break
		}
		rows = to - r.no
		if rows < 0 {
			r.tell("rows/number", finding.Warning, n.At, "row %s is past already: the last one was row %s", "name a later row", to, r.no)
			return nil
		}
	case n.where().Every.All > 1 || n.where().Every.By != nil:
		gap = max(n.where().Every.At(r.size), 1) - 1
	case n.where().Until.All > 0 || n.where().Until.By != nil:
		return r.repUntil(l, n, cycle)
	case n.where().Length != nil:
		rows = len(cycle)
	}
	var res *result
	var last *fabric
	for k := 0; k < rows; k++ {
		d := cycle[k%len(cycle)]
		if r.steps > maxWork {
			return res
		}
		if gap > 0 {
			r.even(gap)
		}
		mark := len(r.all)
		res = r.one(l, d.body)
		if len(r.all) > mark {
			msg := r.all[mark]
			r.all = r.all[:mark]
			msg.at = n.At
			r.all = append(r.all, msg)
			r.log(l, d.body, d.name, 1, res)
			r.count(l, rows-k)
			return res
		}
		r.log(l, d.body, d.name, 1, res)
		r.count(l, 1)
		if k%len(cycle) == len(cycle)-1 && gap == 0 && r.g == nil {
			if last != nil && last.same(r.fab) || k > maxRepeat {
				rest := rows - k - 1
				rest -= rest % len(cycle)
				if rest > 0 {
					r.log(l, d.body, d.name, rest, res)
					r.count(l, rest)
					k += rest
				}
			}
			last = r.fab
		}
	}
	if n.where().Length != nil {
		if len(cycle) > 0 && r.known && last != nil && r.fab.stitches() != last.stitches() {
			r.known = false
		}
		r.no, r.side = -1, 0
		r.endSide(n)
	}
	return res
}

// repUntil repeats until so many stitches are there.
func (r *runner) repUntil(l *Line, n *Node, cycle []done) *result {
	want := n.where().Until.At(r.size)
	var res *result
	for k := 0; k < maxRepeat && r.fab != nil && r.steps < maxWork; k++ {
		have := r.fab.stitches()
		if have == want {
			return res
		}
		for _, d := range cycle {
			res = r.one(l, d.body)
			r.log(l, d.body, d.name, 1, res)
			r.count(l, 1)
		}
		if now := r.fab.stitches(); now == have || (now > want) != (have > want) && now != want {
			r.tell("rows/stated", finding.Warning, n.At, "%s stitches never remain: the repeat goes from %s to %s", "mend the number, or the count before it", want, have, now)
			r.fab = uniform(r.fab.main(), max(want, 0))
			return res
		}
	}
	return res
}
