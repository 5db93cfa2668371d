package work

import (
	"slices"
	"strings"
	"sync"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// between works an unnumbered line: a foundation, casting on, joining yarn,
// fastening off. It reports false for a line that is a row.
func (r *runner) between(l *ins.Line) bool {
	s := r.startOf(l)
	switch {
	case s.yarn != nil && !(len(s.picks) > 0 && (r.fab != nil && r.fab.waited || r.takesAll(l, s))): // place 14 held sts on needles; rejoin yarn, pick up 2 sts
		r.yarn(l, s)
	case (s.magic || !s.ring && r.fab != nil && r.fab.ring && len(r.fab.runs) == 0) && s.chain != nil && !s.stitches: // make a magic ring, ch 3: the first round begins with it
		r.put(&fabric{ring: true}, true)
		r.carry = s.chain
	case (s.chain != nil || s.cast != nil) && !s.stitches:
		r.found1(l, s)
	case len(s.picks) > 0:
		r.pickUp(l, s)
	case s.stitches:
		return false
	case s.magic && r.fab != nil && r.fab.foundation() && len(r.fab.runs) == 1 && !r.fab.ring: // Ch 26. Join to form a ring.
		f := *r.fab
		f.ring = true
		r.put(&f, true)
		r.round = true
	case s.magic:
		r.put(&fabric{ring: true}, true)
	default:
		r.ends(l)
		if l.Stated != nil {
			r.checkOnly(l)
		}
	}
	return true
}

// yarn takes up the work where yarn is joined, and works the row that the line goes on with.
func (r *runner) yarn(l *ins.Line, s start) {
	r.joinYarn(s.yarn, s.skipped, l)
	var rest []ins.Item
	offs := false
	for i, n := range l.Body {
		if n == ins.Item(s.yarn) {
			rest = l.Body[i+1:]
		}
	}
	for _, n := range rest {
		_, off := n.(*ins.BindOff)
		offs = offs || off
	}
	if !s.stitches && !offs {
		return
	}
	r.rows(l, rest)
	r.fresh, r.no, r.side = true, 0, 0
}

// waiting is how many stitches that waited are on the needle, beside which others are cast on.
func (r *runner) waiting(s start) (n int) {
	for _, p := range s.held {
		n += max(p.N.At(r.size), 0)
	}
	if n == 0 && r.fab != nil && r.fab.waited && r.known() {
		return r.fab.stitches()
	}
	return n
}

// found1 begins with chains or stitches cast on.
func (r *runner) found1(l *ins.Line, s start) {
	var k int
	if s.chain != nil {
		k = s.chain.N.At(r.size)
	} else if k = s.cast.N.At(r.size); k != ins.None {
		k += r.waiting(s)
	}
	if k == ins.None || s.chain != nil && k == 1 { // one chain to close a piece begins none
		return
	}
	r.anew()
	f := &fabric{ring: s.ring}
	if s.chain != nil {
		f.add(run{kind: chainStitch(), n: k, base: true})
	} else {
		f = uniform(knitStitch(), k)
		f.ring = false
	}
	r.put(f, true)
	r.round, r.cloth = s.ring && s.chain != nil || s.round || s.ring && s.cast != nil, ins.Cloth{}
	if r.g != nil {
		r.g.anew()
		r.g.foundation(r.fab, l.At.Line, r.round)
	}
	r.goesOnAs(l)
	if l.Stated != nil && r.known() {
		r.res = &result{out: r.fab}
		r.check(l)
	}
}

// goesOnAs works what a line says of another piece behind its own beginning: ch 30 and work first row as for Back.
func (r *runner) goesOnAs(l *ins.Line) {
	for _, n := range l.Body {
		if a, ok := n.(*ins.AsFor); ok {
			r.asFor(l, a)
		}
	}
}

// ends works what closes a piece, or takes stitches off it.
func (r *runner) ends(l *ins.Line) {
	waiting := len(r.lefts)
	for _, n := range l.Body {
		switch n := n.(type) {
		case *ins.Fasten:
			r.fasten(l)
		case *ins.BindOff:
			switch {
			case n.All:
				r.allOff(n)
				r.put(nil, false)
				r.fresh, r.side = true, 0
			case n.Next && len(r.lefts) > 0:
				v := &r.lefts[len(r.lefts)-1]
				v.f = uniform(r.stuff(v.f), max(v.f.stitches()-max(n.N.At(r.size), 0), 0))
			case n.Hold && len(r.lefts) > waiting && r.lefts[waiting].f.stitches() == n.N.At(r.size): // work on 28 sts, place the other 28 on hold
			case r.fab != nil:
				rows := 1
				if n.Hold {
					rows = 0
				}
				r.lessen(n, max(n.N.At(r.size), 0), rows, false)
			}
		case *ins.Join:
			r.round = r.round || n.Name == "round"
		case *ins.Leave:
			r.leaves(n)
		}
	}
}

// allOff tells where other stitches are left than all those that are bound off.
func (r *runner) allOff(n *ins.BindOff) {
	k := n.N.At(r.size)
	if !n.N.Set() || k <= 0 || r.fab == nil || !r.known() || r.long() || r.suspect > 0 && r.amiss {
		return
	}
	if have := r.fab.stitches(); !r.mayHave(k) && 2*max(have-k, k-have) <= max(have, k) {
		r.tell("rows/unworked", finding.Warning, n.At, "%s stitches remain, not %s", "say %s, or correct the count before it", have, k, have)
	}
}

// mayHave reports whether there are k stitches in a reading that is alive, such as that in which a stated count is right.
func (r *runner) mayHave(k int) bool {
	return slices.ContainsFunc(r.readings(), func(rd reading) bool { return rd.fab != nil && rd.known() && rd.fab.stitches() == k })
}

// fasten ends the piece, if the labelled line behind is not the round after the one worked last: then the yarn alone is cut.
func (r *runner) fasten(l *ins.Line) {
	if r.round && r.no > 0 && r.fab != nil && r.numberAfter(l) == r.no+1 {
		return
	}
	r.put(nil, false)
	r.fresh, r.side = true, 0
}

// leaves works on some of the stitches alone: those that are there, or fewer of them.
func (r *runner) leaves(n *ins.Leave) {
	if r.fab == nil {
		return
	}
	k := n.N.At(r.size)
	if n.All || !r.known() || k == ins.None {
		r.lefts = append(r.lefts, left{f: r.fab, no: r.no})
		return
	}
	have := r.fab.stitches()
	switch {
	case r.mayHave(k):
	case k < have && len(r.lefts) == 0:
		f := uniform(r.stuff(r.fab), k)
		r.lefts = append(r.lefts, left{f: uniform(r.stuff(r.fab), have-k), no: r.no})
		r.put(f, true)
	case r.long():
		r.put(uniform(r.stuff(r.fab), k), true)
	default:
		r.tell("rows/unworked", finding.Warning, n.At, "%s stitches remain, not %s", "say %s, or correct the count before it", have, k, have)
	}
}

var chainStitch = sync.OnceValue(func() *stitch.Stitch { return stitch.ByID("ch") })

func (r *runner) anew() {
	r.no, r.side, r.edge, r.panels, r.altNo = 0, 0, 0, nil, 0
	r.cur.anew, r.turnedRound = true, false
	r.fresh, r.begun = true, true
}

// onlyCut reports whether a yarn is joined where another one was cut, and no stitches wait: Rejoin MC.
func (r *runner) onlyCut(n *ins.JoinYarn) bool {
	return n.From == "yarn" && len(n.Place) == 0 && !n.N.Set() && len(r.lefts) == 0 && r.fab != nil && r.fab.stitches() > 0
}

// joinYarn takes up stitches that a row left unworked, or begins along an edge.
func (r *runner) joinYarn(n *ins.JoinYarn, skipped int, l *ins.Line) {
	if r.round && r.fab != nil && r.fab.stitches() > 0 && len(r.lefts) == 0 && len(n.Place) > 0 && n.From != "held" && (n.Place[0].Unit.Space || n.Place[0].Unit.Any() || n.Place[0].Unit.Stitch != nil) { // another colour in the next round
		r.carry = nil
		return
	}
	if skipped == 0 && r.onlyCut(n) {
		return
	}
	r.only()
	r.carry, r.side, r.cloth = nil, 0, ins.Cloth{}
	r.fresh, r.begun = true, false
	taken := skipped > 0 || slices.Contains([]string{"held", "holder", "next", "remaining", "rem", "unworked", "skipped"}, n.From)
	told := n.N.At(r.size)
	at := slices.IndexFunc(r.lefts, func(v left) bool { return v.f.stitches() == told })
	if len(r.lefts) == 0 || at < 0 && (!taken || max(told, 2*skipped) > 2*r.lefts[r.mostLeft()].f.stitches()) { // others wait from before
		r.put(nil, false)
		if told > 0 || n.From == "held" || n.From == "holder" { // of some it is not told how many they are
			f := uniform(r.mainOf(), max(told, 1))
			f.waited, f.untold = true, told <= 0
			r.put(f, told > 0)
		}
		r.no, r.edge = 0, 0
		if len(r.cur.rows) > 0 { // its rows may be counted on
			r.no = -1
		}
		r.cur.anew = true
		return
	}
	best := at
	if at < 0 {
		best = r.mostLeft()
	}
	v := r.lefts[best]
	r.workedOn(v.at)
	r.lefts = append(r.lefts[:best:best], r.lefts[best+1:]...)
	c := over(v.f)
	if skipped > c.left {
		r.tell("rows/over-use", finding.Warning, n.At, "%s stitches are skipped, and only %s were left", "skip fewer", skipped, c.left)
		skipped = c.left
	}
	w := &work{task: task{x: r.x, size: r.size, from: v.f, pick: newPicks()}, place: place{cur: c, out: &fabric{}}, quiet: 1}
	w.use(skipped, nil, n.At)
	r.put(rest(&w.cur).reversed(), !v.unsure)
	r.remains(n, told, &v)
	r.begun = true
	r.no = v.no
	r.round = false
	if r.g != nil {
		r.g.anew()
		r.g.foundation(r.fab, l.At.Line, false)
		r.g.held()
	}
}

// remains holds what a line says that remains against what is left of a row, unless something behind that row is told already: it may be the same slip.
func (r *runner) remains(n *ins.JoinYarn, told int, v *left) {
	k := r.fab.stitches()
	if told < 1 || k == told || v.unsure || !strings.HasPrefix(n.From, "rem") {
		return
	}
	if !slices.ContainsFunc(r.all, func(f raw) bool { return f.at.Line >= v.at.Line && f.sev != finding.Note }) {
		r.tell("rows/unworked", finding.Warning, n.At, "%s stitches remain, not %s", "say %s, or correct the counts before it", k, told, k)
	}
}

// mostLeft is which of the stitches left unworked are the most.
func (r *runner) mostLeft() (best int) {
	for i, v := range r.lefts {
		if v.f.stitches() > r.lefts[best].f.stitches() {
			best = i
		}
	}
	return best
}

// workedOn takes back that the row at that place leaves stitches of which nothing is said: they are worked on now.
func (r *runner) workedOn(at ins.Span) {
	rest := func(list []raw) []raw {
		return slices.DeleteFunc(slices.Clone(list), func(f raw) bool { return f.kind == "rows/under-use" && f.at == at })
	}
	r.found, r.all, r.misfit = rest(r.found), rest(r.all), slices.Clone(r.misfit)
	for i := range r.misfit {
		r.misfit[i].list = rest(r.misfit[i].list)
	}
}

// lessen takes k stitches off in so many rows; at the beginning of each, if each is set.
func (r *runner) lessen(n ins.Item, k, rows int, each bool) {
	g := r.g
	if g != nil && each && rows > 0 {
		plan := make([]edges, min(rows, maxGraph))
		for i := range plan {
			plan[i].off = k / rows
		}
		g.planned(r, plan, 0)
		r.g = nil
	}
	r.even(rows)
	r.g = g
	if r.change(n, -k); rows > 0 {
		r.counted()
	}
}

// counted notes what the rows worked last come to.
func (r *runner) counted() {
	if k := len(r.cur.rows) - 1; k >= 0 {
		r.cur.rows[k].after, r.cur.rows[k].sure = r.fab, r.known()
	}
}

// change adds to the count of every reading, and tells where more is taken than there is.
func (r *runner) change(n ins.Item, by int) {
	list := r.readings()
	for i := range list {
		rd := &list[i]
		if rd.fab == nil || !rd.known() {
			continue
		}
		have := rd.fab.stitches()
		if have+by < 0 && rd.long() {
			rd.lose()
		} else if have+by < 0 {
			rd.add(raw{kind: "rows/over-use", sev: finding.Warning, at: n.Span(), msg: "this takes off %s stitches, and there are only %s", fix: "take off %s at most", a: []int{-by, have, have}})
		}
		marks := marksMoved(n, rd.fab, by)
		rd.fab = uniform(r.stuff(rd.fab), max(have+by, 0))
		rd.fab.marks = marks
		rd.res = &result{out: rd.fab}
	}
	r.keep(list)
}

// marksMoved are the markers of a row once a shaping has changed it by so many stitches, in equal parts at its ends or on each side
// of every marker; none if where it falls is not known.
func marksMoved(n ins.Item, f *fabric, by int) []int {
	s, ok := n.(*ins.Shape)
	if !ok || !s.Both || s.Halves || s.Panel != "" || len(f.marks) == 0 || s.Marked && s.Markers.Set() {
		return nil
	}
	first, step := by/2, 0 // at each end
	if s.Marked {
		first = by / (2 * len(f.marks))
		step = 2 * first
	}
	if f.marks[0] == 0 && s.Marked { // the round begins at a marker: what is before it falls at the end
		first = 0
	} else if f.marks[len(f.marks)-1] == f.stitches() && s.Marked { // what is behind it falls at the beginning
		first = step
	}
	out := make([]int, len(f.marks))
	for i, m := range f.marks {
		out[i] = max(m+first+i*step, 0)
	}
	return out
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
		list := r.readings()
		for i := range list {
			if f := list[i].fab; f != nil {
				list[i].fab = uniform(r.stuff(f), f.stitches())
				list[i].fab.marks = f.marks
				list[i].carry, list[i].behind, list[i].ahead = nil, nil, nil
			}
		}
		r.keep(list)
		r.cur.rows = append(r.cur.rows, done{no: no, count: rows, after: r.fab, sure: r.known(), side: r.side})
	}
	if r.no >= 0 {
		r.no += rows
	}
	if !r.round && r.side != 0 && rows%2 == 1 {
		r.side = 3 - r.side
	}
	r.begun = true
}

// flat is the instructions of a line without the repeats of whole rows in it: each stands there as often as it is worked.
func (r *runner) flat(list []ins.Item) []ins.Item {
	var out []ins.Item
	for _, n := range list {
		q, ok := n.(*ins.Repeat)
		if !ok || len(q.Places) > 0 || q.Until.Kind != ins.NoExtent || !wholeRows(q) {
			out = append(out, n)
			continue
		}
		for range min(q.Times.At(r.size), mostTimes) {
			out = append(out, q.Body...)
		}
	}
	return out
}

// mostTimes is how often whole rows are repeated at most.
const mostTimes = 200

// wholeRows reports whether a repeat is of whole rows: even ones and those of another line only beside others, or more than once.
func wholeRows(q *ins.Repeat) bool {
	again := q.Times.By != nil || q.Times.All > 1
	for _, n := range q.Body {
		switch n := n.(type) {
		case *ins.BindEach, *ins.Shape:
		case *ins.RepeatRows:
			if !again {
				return false
			}
		case *ins.Even:
			if !again || !n.Rows.Set() || len(q.Body) == 1 {
				return false
			}
		default:
			return false
		}
	}
	return len(q.Body) > 0
}

// whole works a line that is about whole rows; it reports false for other lines.
func (r *runner) whole(l *ins.Line) bool {
	found := false
	body := r.flat(l.Body)
	for i, n := range body {
		switch n := n.(type) {
		case *ins.RepeatRows, *ins.BindEach, *ins.AsFor, *ins.Edge, *ins.Measure, *ins.Divide, *ins.Together, *ins.Markers:
			found = true
		case *ins.Even:
			found = true
		case *ins.Shape:
			if n.Spread && l.Label != nil && !n.HasTimes && !n.Every.Set() && len(body) > 1 {
				return false
			}
			found = true
		case *ins.Stitch, *ins.Repeat, *ins.CastOn, *ins.PickUp:
			return false
		case *ins.Chain:
			if len(body) > 1 && !(found && slices.ContainsFunc(body[i+1:], is[*ins.Turn]) && endOfRow(body[i+1:])) { // Row 5: Repeat Row 3. Ch 1, turn.
				return false
			}
		}
	}
	if !found {
		return false
	}
	r.sameRow = false
	for i, n := range body {
		if endsWork(n) {
			r.checkWhole(l)
		}
		if e, ok := n.(*ins.Even); ok && l.Label != nil && shapedToo(e, body[i+1:]) {
			r.takeCloth(l, e)
			continue
		}
		r.wholeOne(l, n)
		r.sameRow = l.Label != nil && is[*ins.RepeatRows](n)
	}
	r.sameRow = false
	r.checkWhole(l)
	return true
}

// shapedToo reports whether the rows of a label that are worked even are those that the shaping behind it changes: Row 2: Work in pattern, inc 1 st at each end.
func shapedToo(e *ins.Even, behind []ins.Item) bool {
	i := slices.IndexFunc(behind, func(n ins.Item) bool { return !is[*ins.Nothing](n) })
	return i >= 0 && is[*ins.Shape](behind[i]) && !e.Rows.Set() && e.Length == nil && !e.ToRow.Set() && !e.Until.Set() && !e.Part.Set()
}

// endsWork reports whether the work is at its end with an instruction.
func endsWork(n ins.Item) bool {
	off, ok := n.(*ins.BindOff)
	return ok && off.All || is[*ins.Fasten](n)
}

// checkWhole holds the row that whole rows come to against the count that their line states.
func (r *runner) checkWhole(l *ins.Line) {
	if r.fab == nil || l.Stated == nil {
		return
	}
	list := r.readings()
	for i := range list {
		list[i].res = &result{out: list[i].fab, total: !list[i].known()}
	}
	r.keep(list)
	r.check(l)
}

// wholeOne works one instruction about whole rows.
func (r *runner) wholeOne(l *ins.Line, n ins.Item) bool {
	switch n := n.(type) {
	case *ins.RepeatRows:
		return r.rep(l, n)
	case *ins.Even:
		r.evenRows(l, n)
	case *ins.Shape:
		r.shape(l, n)
	case *ins.Divide:
		r.divide(n)
	case *ins.Together:
		r.together1(n)
	case *ins.Markers:
		r.marks1(n)
	case *ins.BindEach:
		if k := r.times(l); k > 1 && n.Rows.By == nil && n.Rows.All == 1 && !n.Alt { // Next 2 rows: bind off 3 sts at beg of each row
			each := *n
			n, each.Rows = &each, ins.N(k)
		}
		r.bindEach(n)
	case *ins.AsFor:
		r.asFor(l, n)
	case *ins.Edge:
		r.only()
		r.edge = max(r.no, 0)
		r.no, r.side, r.carry = 0, 0, nil
		r.fresh = true
	case *ins.Chain:
		list := r.readings()
		for i := range list {
			list[i].carry = n
		}
		r.keep(list)
	case *ins.Measure:
		r.measure(n.Length)
	case *ins.Leave:
		r.leaves(n)
	case *ins.BindOff:
		if n.All {
			r.allOff(n)
			r.put(nil, false)
			r.fresh, r.side = true, 0
		} else if r.fab != nil && r.known() {
			rows := 1
			if n.Hold { // leave sts on a spare needle: no row
				rows = 0
			}
			r.lessen(n, max(n.N.At(r.size), 0), rows, false)
		}
	case *ins.Fasten:
		r.fasten(l)
	}
	return false
}

func (r *runner) bindEach(n *ins.BindEach) {
	if n.Cloth != (ins.Cloth{}) {
		r.cloth = n.Cloth
	}
	rows := max(n.Rows.At(r.size), 0)
	if one := *n; n.Alt {
		one.Rows, one.Alt = ins.N(1), false
		for i := range rows {
			r.even(min(i, 1))
			r.bindEach(&one)
		}
		return
	}
	k := max(n.N.At(r.size), 0) * rows
	switch {
	case r.fab == nil || !r.known():
		r.even(rows)
	case n.Add:
		r.even(rows)
		r.change(n, k)
	default:
		r.lessen(n, k, rows, true)
	}
	if k := len(r.cur.rows); k > 0 && rows > 0 {
		one := *n
		one.Rows = ins.N(1)
		r.cur.rows[k-1].shape = &one
	}
}
