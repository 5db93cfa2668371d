package work

import (
	"cmp"
	"slices"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// result is a row as worked.
type result struct {
	out    *fabric
	found  []raw
	pin    bool
	next   *ins.Chain
	lefts  *fabric
	unsure bool    // how many it left is not known
	ahead  *fabric // stitches that a short row has not come to
	per    int     // stitches in each row of an edge that is not known
	total  bool    // the count is not known from the work
	beyond bool    // it has more than is worked
	used   int
	exact  bool                 // it names as many stitches as there are, one by one
	doubt  doubt                // about what it makes
	along  bool                 // it was taken to go along the chains below, and no count says so
	steps  map[ins.Item]*traced // if somebody asks
}

// one works one row, in every reading that is alive, and in those that it opens.
func (r *runner) one(l *ins.Line, body []ins.Item) {
	if turnsWithin(body) && r.fab != nil && r.known() {
		by := net(body, r.size)
		if r.g != nil {
			r.g.gap(r, l, "the short rows within it", r.fab.stitches()+by)
		}
		r.change(body[0], by)
		return
	}
	list := r.room[:0]
	for _, rd := range r.readings() {
		from := len(list)
		list = r.ways(list, rd, l, body)
		if r.g == nil && rd.known() && rd.fab != nil && l.Stated == nil {
			list = asIfFitted(list, from, rd.fab.stitches())
		}
	}
	r.room = list
	r.keep(list)
	if r.res != nil && r.res.lefts != nil {
		r.lefts = append(r.lefts, left{f: r.res.lefts, no: r.no, at: l.At, unsure: r.res.unsure})
	}
	if r.g != nil {
		r.drawn(l)
	}
	r.cloth = ins.Cloth{}
	r.edge = 0
	r.turnedRound = r.round && turnsLast(body)
}

// turned is that a row of which it was not known how many stitches it had has k now; 0: that is not told.
func (res *result) turned(k int) {
	if k == 0 || res.pin {
		return
	}
	res.pin = true
	if res.out.stitches() != k { // there were more than was thought
		res.out = uniform(res.out.main(), k)
	}
}

// turnsCounted is how many stitches a row of knitting works that tells each of them by its number, and turns there: however many
// there were, so many there are now. It is 0 for any other row.
func turnsCounted(l *ins.Line, body []ins.Item, size int) int {
	turns, k := false, 0
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Stitch:
			if len(n.Places) > 0 || n.Kind != nil && n.Kind.Craft != stitch.Knitting || n.Chart || n.Inc || n.Dec || n.Call != nil || turns {
				return 0
			}
			makes := 1
			if n.Kind != nil {
				makes = n.Kind.Makes
			}
			k += makes * max(n.N.At(size), 0)
		case *ins.Turn:
			turns = true
		case *ins.Leave:
			turns = turns || n.All
		case *ins.Nothing, *ins.Marker:
		default:
			return 0
		}
	}
	if !turns || l.Label == nil {
		return 0
	}
	return k
}

// turnsLast reports whether the work is turned at a row's end.
func turnsLast(body []ins.Item) bool {
	if len(body) == 0 {
		return false
	}
	_, ok := body[len(body)-1].(*ins.Turn)
	return ok
}

// overFirst reports whether a round begins with a chain tall enough to stand for a stitch: after the
// work is turned it stands over the stitch that the round before was joined to.
func overFirst(body []ins.Item) bool {
	if len(body) == 0 {
		return false
	}
	c, ok := body[0].(*ins.Chain)
	return ok && (c.N.By != nil || c.N.All > 1)
}

// beginsInSame reports whether what a row works first, behind its chains, goes into the place in which the one before it
// ended: ch 1, sc in same loop.
func beginsInSame(body []ins.Item) bool {
	for _, n := range body {
		if p := placesOf(n); len(p) > 0 {
			return p[0].Kind == ins.InSame
		}
		if q, ok := n.(*ins.Repeat); ok && beginsInSame(q.Body) {
			return true
		}
		if !is[*ins.Chain](n) && !is[*ins.Nothing](n) {
			return false
		}
	}
	return false
}

// ways are the readings of one row over one reading of those before it.
func (r *runner) ways(out []reading, rd reading, l *ins.Line, body []ins.Item) []reading {
	first, rd := r.usual(rd, l, body)
	r.opened = r.opened || len(rd.pick.open) > 0
	if r.g != nil || len(rd.pick.open) == 0 || !rd.known() && !first.res.pin {
		return append(out, first)
	}
	todo := append([]key(nil), rd.pick.open...)
	picks := []*picks{rd.pick}
	seen := map[key]bool{}
	for _, k := range todo {
		if seen[k] || len(picks) >= mostReadings {
			continue
		}
		seen[k] = true
		n := len(picks)
		for i := range n {
			picks = append(picks, picks[i].with(k, true))
			picks[i] = picks[i].with(k, false)
		}
	}
	for _, p := range picks {
		q := rd
		q.pick = p
		out = append(out, r.worked(q, l, body))
	}
	return out
}

// usual is a reading after one more row, with what the text leaves open taken as usual, and the reading before it. A row that was
// tried so is not worked again.
func (r *runner) usual(rd reading, l *ins.Line, body []ins.Item) (after, before reading) {
	if r.g == nil && (r.trace == nil || r.trace.line != l) && r.tested.is(&rd, l, body) {
		t := r.tested
		r.tested = tested{}
		rd.pick = t.pick
		return r.after(rd, l, body, r.fitting(rd, l, body, t.res)), rd
	}
	rd.pick = &picks{taken: rd.pick.taken, asked: rd.pick.asked}
	if rd.fab == nil && rd.carry == nil && (knitted(body) || len(r.x.Multiples) > 0 && !founding(body)) { // a stitch pattern: nothing says how many there are
		rd.lose()
	}
	return r.worked(rd, l, body), rd
}

// worked is a reading after one more row, which is worked over it.
func (r *runner) worked(rd reading, l *ins.Line, body []ins.Item) reading {
	return r.after(rd, l, body, r.fitting(rd, l, body, r.try(&rd, l, body)))
}

// after is a reading after a row that was worked over it.
func (r *runner) after(rd reading, l *ins.Line, body []ins.Item, res *result) reading {
	if rd.line == l && rd.res != nil && rd.res.total { // a row of several that the line works
		res.total = true
	}
	again := rd.line == l
	rd.line = l
	pinned := rd.known() || res.pin
	if len(res.found) > 0 && !res.beyond && (rd.long() || l.Label == nil && l.Stated == nil && uses(res.found) && len(body) == len(l.Body)) { // no count is near, or a sentence and not a row
		rd.pass(res, body)
	}
	rd.sinceTold(again, res)
	if res.ahead != nil && l.Stated == nil {
		rd.forget()
	}
	rd.confirm(res.exact)
	drop := rd.suspect > 0 && !res.pin && (l.Stated != nil || rd.guess)
	switch {
	case len(res.found) == 0:
	case drop:
		rd.suspect--
		res.found = nil
		if res.total = l.Stated != nil; !res.total {
			res.out = uniform(res.out.main(), rd.fab.stitches())
		}
	case pinned:
		rd.add(res.found...)
		if uses(res.found) {
			rd.suspect = suspectRows
		}
	}
	if res.pin && !res.total {
		rd.find()
	}
	if res.total && l.Stated == nil && res.per == 0 {
		rd.lose()
	}
	rd.supposes(res.along)
	rd.behind, rd.ahead = rd.ahead, res.ahead // what the row before left lies beyond the end of the next
	rd.fab, rd.carry, rd.res = res.out, res.next, res
	return rd
}

// supposes is whether where a row goes is only supposed, so that what it makes is no more than said.
func (c *certainty) supposes(so bool) {
	if so && c.why == none {
		c.why = said
	}
}

// sinceTold notes one more row that states no count: one worked again and again in a line that keeps its count is told once.
func (rd *reading) sinceTold(again bool, res *result) {
	if !again || res.out == nil || rd.fab == nil || res.out.stitches() != rd.fab.stitches() {
		rd.since++
	}
}

// pass goes over a row that does not fit and is not told of: how many stitches it leaves is not known, but of a rib.
func (rd *reading) pass(res *result, body []ins.Item) {
	if res.total = rd.long() || res.found[0].kind != "rows/repeat" || !oneForOne(body); !res.total {
		res.out = uniform(rd.fab.main(), rd.fab.stitches())
	}
	res.found = nil
}

// knitted reports whether the first stitch of a row is one of knitting, on a stitch below.
func knitted(body []ins.Item) bool {
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Stitch:
			return n.Kind != nil && n.Kind.Craft == stitch.Knitting && n.Kind.Uses > 0
		case *ins.Repeat:
			return knitted(n.Body)
		case *ins.Nothing, *ins.Marker:
		default:
			return false
		}
	}
	return false
}

// founding reports whether a row of crochet begins with stitches that need nothing below: a ring, foundation stitches.
func founding(body []ins.Item) bool {
	return slices.ContainsFunc(body, func(n ins.Item) bool {
		if s, ok := n.(*ins.Stitch); ok && s.Kind != nil && s.Kind.Uses == 0 {
			return true
		}
		return slices.ContainsFunc(placesOf(n), func(p ins.Place) bool { return p.Kind == ins.InRing })
	})
}

// fitting is a row as worked over a reading, with the chains of the row below taken for stitches if it fits only so.
func (r *runner) fitting(rd reading, l *ins.Line, body []ins.Item, res *result) *result {
	if !rd.known() || rd.fab == nil || len(res.found) == 0 && (l.Stated == nil || len(r.misfits(l, res.out)) == 0) {
		return res
	}
	if r.g != nil {
		if l.Stated != nil && l.Label != nil {
			return cmp.Or(r.otherwise(rd, l, body, uses(res.found)), res)
		}
		return res
	}
	if uses(res.found) {
		if again := r.overChains(rd, l, body); again != nil {
			return again
		}
	}
	if again := r.otherwise(rd, l, body, uses(res.found)); again != nil {
		return again
	}
	if again := r.longChain(rd, l, body); again != nil {
		return again
	}
	if again := r.otherReach(rd, l, body); uses(res.found) && again != nil {
		return again
	}
	return res
}

// longestPost is how many chains as tall as a stitch at most that are mostly no more.
const longestPost = 3

// longChain is a row without a count whose long turning chain, that of a loop or a space, counts otherwise than such chains do elsewhere
// in a text that does not say it; nil if it does not fit so either.
func (r *runner) longChain(rd reading, l *ins.Line, body []ins.Item) *result {
	c := rd.carry
	if first := behindWords(body); c == nil && len(first) > 0 {
		c, _ = first[0].(*ins.Chain)
	}
	if l.Stated != nil || c == nil || c.Count.How != ins.Unsaid {
		return nil
	}
	k := key{chain: c.N.At(r.size)}
	v, taken := rd.pick.taken[k]
	if !taken || k.chain <= longestPost {
		return nil
	}
	rd.pick = rd.pick.with(k, !v)
	if res := r.try(&rd, l, body); len(res.found) == 0 && !res.total {
		return res
	}
	return nil
}

// overChains is a row that takes each chain of the row below for a stitch, as a mesh is told: ch 1, skip next st, dc in
// each of next 3 sts. It is nil if the row names spaces, or does not fit so either.
func (r *runner) overChains(rd reading, l *ins.Line, body []ins.Item) *result {
	if namesSpaces(body) {
		return nil
	}
	f, arches := *rd.fab, *rd.fab
	f.runs, arches.runs = slices.Clone(f.runs), nil
	for i, q := range f.runs {
		if q.space() {
			f.runs[i] = run{n: q.chain}
			arches.runs = append(arches.runs, f.runs[i])
		}
	}
	if len(arches.runs) == 0 {
		return nil
	}
	for _, below := range []*fabric{&f, &arches} { // the stitches between the arches may be passed
		rd.fab = below
		if res := r.try(&rd, l, body); len(res.found) == 0 {
			res.along = l.Stated == nil && below == &arches
			return res
		}
	}
	return nil
}

// namesSpaces reports whether stitches go into spaces.
func namesSpaces(list []ins.Item) bool {
	return slices.ContainsFunc(list, func(n ins.Item) bool {
		if q, ok := n.(*ins.Repeat); ok && namesSpaces(q.Body) {
			return true
		}
		return slices.ContainsFunc(placesOf(n), func(p ins.Place) bool { return p.Unit.Space || p.Unit.Group != nil || p.Unit.Stretch })
	})
}

// below is the row below as this row meets it: turned, if the work is, and with what lies beyond it.
func (r *runner) below(rd *reading, body []ins.Item) (below *fabric, flipped bool) {
	if below = rd.fab; below == nil {
		below = &fabric{}
	}
	flipped = (!r.round || r.turnedRound) && r.begun && !below.ring
	switch {
	case flipped && r.g == nil:
		below = below.reversedInto(&r.turned)
	case flipped: // a graph holds what it is worked from
		below = below.reversed()
	}
	if r.round && beginsAtLast(below, flipped, body) {
		below = below.fromLast()
	}
	if rd.behind != nil {
		below = joined2(below, rd.behind)
	}
	return below, flipped
}

// beginsAtLast reports whether a round begins over what lies last in the one below as it meets it: over the stitch that this was joined
// to, once it is turned, or else in the arch in the middle of which it ended.
func beginsAtLast(below *fabric, flipped bool, body []ins.Item) bool {
	inArch := below.midArch && beginsInSame(body)
	return inArch != flipped && (inArch || overFirst(body))
}

// into is the round further down that a row names, behind the last one; nil if it is the last.
func (r *runner) into(l *ins.Line) *fabric {
	if l.Into == 0 || !r.round || r.turnedRound {
		return nil
	}
	for _, d := range r.cur.rows {
		if d.no == l.Into && d.no < r.no {
			return d.after
		}
	}
	return nil
}

// try works one row over a reading, without keeping anything.
func (r *runner) try(rd *reading, l *ins.Line, body []ins.Item) *result {
	below, flipped := r.below(rd, body)
	if f := r.into(l); f != nil {
		below = f
	}
	carry := rd.carry
	if flipped && !r.round {
		below, carry, body = r.addChain(below, carry, body)
	}
	w := &r.work
	if r.g != nil {
		w = &work{} // it holds what it is worked from
	}
	kept := &struct {
		result
		out fabric
	}{out: fabric{runs: r.buf[:0]}} // in one piece of memory: many rows are tried
	*w = work{task: task{x: r.x, size: r.size, from: below, round: r.round, rows: r.edge, carry: carry, counted: l.Stated != nil, pick: rd.pick},
		place: place{cur: over(below), out: &kept.out, lastPos: -1}}
	if r.edge == 0 && r.no > 0 {
		w.rows = r.no
	}
	if r.g != nil {
		r.g.begin(w, below, flipped, rd.ahead, l, body, r)
	}
	if !rd.known() && !beginsOnNothing(body) && (r.g == nil || l.Stated == nil) {
		w.quiet = 1
		r.g.unfounded()
	}
	if r.trace != nil && r.trace.line == l {
		w.trace = &tracer{line: l, steps: map[ins.Item]*traced{}, quiet: w.quiet}
	}
	w.body(body)
	r.buf = w.out.runs
	w.out.runs = slices.Clone(r.buf)
	res := &kept.result
	*res = result{out: w.out, pin: w.pinned, next: w.next, used: w.used(), exact: len(w.found) == 0 && w.exact(body)}
	if w.trace != nil {
		res.steps = w.trace.steps
	}
	if w.edge && w.rows <= 0 {
		res.total, res.per = true, w.perRow
	}
	res.total = res.total || w.blind || w.vague && l.Stated == nil
	r.leftOver(w, res, l, body)
	if res.unsure = !rd.known(); res.unsure {
		res.turned(turnsCounted(l, body, r.size))
	}
	w.loosen()
	if res.found = w.found; w.vague {
		res.doubt = loosely
	}
	r.g.unsure(w, below)
	r.multiple(w)
	r.steps += w.steps + len(w.out.runs) + len(below.runs)
	w.bounded(res, l)
	return res
}

// loosen says of what was found in a row of which the words are vague that it is no more than loosely so.
func (w *work) loosen() {
	w.doubtLed()
	for i := range w.found {
		if f := &w.found[i]; f.why == none && (w.vague || w.free && f.kind == "rows/over-use") { // free: beside what is picked up others may have waited
			f.why = loosely
		}
		if f := &w.found[i]; f.why == none && f.kind == "rows/over-use" && !w.counted && w.round && w.from.widest() > 2 { // it may go along the chains
			f.why = loosely
		}
	}
}

// bounded tells of a row that takes more steps than are worked.
func (w *work) bounded(res *result, l *ins.Line) {
	if w.steps <= maxSteps {
		return
	}
	w.quiet = 0
	w.tell("rows/bounds", finding.Error, l.At, "this row is too long to work: more than %s steps", "correct the counts of its repeats", maxSteps)
	res.found, res.beyond = w.found, true
}

// asIfFitted adds to the ways from the given one on, where they use other stitches than there are, the row as if it fitted.
func asIfFitted(list []reading, from, stitches int) []reading {
	for k, n := from, len(list); k < n; k++ {
		if way := list[k]; uses(way.res.found) {
			way.fab, way.guess = uniform(way.fab.main(), stitches), true
			list = append(list, way)
		}
	}
	return list
}

// drawn ends the row in the graph.
func (r *runner) drawn(l *ins.Line) {
	vague := func(s ins.StitchGroup) bool { return s.Unit.Stretch && !s.Any } // 3 shells that nothing tells
	counted := l.Stated != nil && !slices.ContainsFunc(l.Stated, vague) && len(r.misfits(l, r.fab)) == 0
	if counted || r.res.pin { // its count says what it stands on
		r.g.lost = false
	}
	side := r.side
	if side != 0 && !r.round {
		side = 3 - side
	}
	r.g.cur.Sided = l.Label != nil && l.Label.Side != 0
	if r.g.cur.Amiss = r.untrusted(l); r.g.cur.Amiss == "" && l.Passed != (ins.Span{}) && !counted {
		r.g.cur.Amiss = "it is drawn without '" + r.x.Quote(l.Passed) + "', which was not followed"
	}
	one := r.g.oneChain && !counted
	r.g.commit(side, nameOf(l))
	if k := len(r.g.Rows) - 1; one && r.g.Rows[k].Amiss == "" { // what stands on it may be right
		r.g.Rows[k].Amiss = "it comes out only if the chain at its beginning is a stitch"
	}
}

// untrusted says what a row as worked does not share with its words; empty: it may be trusted.
func (r *runner) untrusted(l *ins.Line) string {
	switch {
	case r.res == nil || r.res.total || !r.known():
		return ""
	case l.Stated == nil && uses(r.res.found):
		return "it does not fit the one below"
	}
	return ""
}
