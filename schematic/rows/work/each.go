package work

import (
	"slices"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// stop is how many stitches an extent leaves at the end of the row; false if that is not known.
func (w *work) stop(e ins.Extent, reserve int, tail []ins.Item) (int, bool) {
	if e.Kind == ins.ToMiddle && len(w.from.marks) > 0 { // it is marked
		e.Kind = ins.ToMarker
	}
	switch e.Kind {
	case ins.ToMiddle:
		return w.toMiddle(w.count(e.N), e.Unit.Word == "middle")
	case ins.ToMade:
		k := w.cur.left - w.count(e.N) + w.out.stitches() - w.offAt
		w.blind = w.blind || k < 0 || k > w.cur.left
		return k, !w.blind
	case ins.ToLast:
		if w.round && e.Unit.Word == "tch" { // which stands where the round began
			return reserve, true
		}
		if k := w.behindSpaces(e); k >= 0 {
			return k, true
		}
		if w.endsHalf(e) {
			return w.toMark(ins.Extent{Kind: ins.ToMarker, N: e.N, At: e.At}, reserve)
		}
		return w.count(e.N) + w.beside(tail, e), true
	case ins.ToMarker, ins.ToLastMarker:
		if w.round && len(tail)+len(w.from.marks)+w.count(e.N) == 0 { // there is but the one where the round begins
			return reserve, true
		}
		return w.toMark(e, reserve)
	case ins.ToUnit:
		k := w.toUnit(e.Unit)
		if k < 0 && w.around > 0 && !w.spaceBefore(0, 0) { // it is the one in which the round began
			return 0, true
		}
		if k < 0 {
			w.blind = true
			return 0, false
		}
		return k, true
	}
	return reserve, true
}

// afar reports whether a stitch goes round one further down, of which is not said which.
func afar(n ins.Item) bool {
	return slices.ContainsFunc(placesOf(n), func(p ins.Place) bool { return p.Far && p.Kind == ins.InNext && !p.Unit.Row && p.Unit.Stitch == nil })
}

// stopOf is how many stitches a repeat leaves at the end of the row; false if that is not known.
func (w *work) stopOf(n *ins.Repeat, tail []ins.Item, need int) (int, bool) {
	w.blind = w.blind || slices.ContainsFunc(n.Body, afar) // how many there are is not said
	return w.stop(n.Until, w.reserve(tail, need), tail)
}

// toMark is how many stitches are left behind a marker up to which is worked, and those before it; false if that is not known.
func (w *work) toMark(e ins.Extent, reserve int) (int, bool) {
	if e.Kind == ins.ToLastMarker {
		w.passUpToLast()
	}
	m := w.nextMark(w.count(e.N))
	if (e.Part || w.heldTo > 0 && w.heldTo == m || w.workedTo(m) && w.count(e.N) == 0) && m == w.used() && w.marks+1 < len(w.from.marks) { // it stands where the part begins, or where stitches that wait end
		w.out.marks = append(w.out.marks, w.out.stitches())
		w.marks++
		m = w.from.marks[w.marks]
	}
	if m < 0 && (e.Part && w.cur.left > 0 || w.round && w.endsRound(e)) {
		return reserve, true
	}
	if m < 0 {
		w.blind = true
		return 0, false
	}
	w.reached = true
	return w.from.stitches() - m + w.count(e.N), true
}

// workedTo reports whether the stitches before a marker were told by their number, so that it goes without a word: K7, p to marker.
func (w *work) workedTo(m int) bool {
	return m == w.used() && (w.marks == 0 && m > 0 || w.marks > 0 && w.from.marks[w.marks-1] < m)
}

// endsHalf reports whether the last stitches up to which is worked are those of the first of two halves: k to last 3 sts, k2tog, k1; on
// second side, k1, ssk, k to end.
func (w *work) endsHalf(e ins.Extent) bool {
	if w.round || len(w.from.marks) != 1 || w.from.marks[0] <= w.used()+w.count(e.N) {
		return false
	}
	sum := 0
	for _, n := range w.ahead {
		used, _, ok := w.needs(n)
		if !ok {
			return sum > w.count(e.N)
		}
		if sum += used; sum > w.count(e.N) && sum-used != w.count(e.N) && sum-used < w.count(e.N) {
			return false // they end within a stitch
		}
	}
	return false
}

// endsRound reports whether what stands behind an extent takes just the stitches before its marker, which is that of the round then:
// k to 3 sts before marker, ssk, k1.
func (w *work) endsRound(e ins.Extent) bool {
	sum := 0
	for _, n := range w.ahead {
		used, _, ok := w.needs(n)
		if sum += used; !ok {
			return false
		}
	}
	return sum > 0 && sum == w.count(e.N)
}

// toMiddle is how many stitches are left before the middle one, and so many before it; false where the row has none, unless its middle may lie
// between two.
func (w *work) toMiddle(before int, between bool) (int, bool) {
	n := w.from.stitches()
	left := n/2 + n%2 + before
	if n%2 == 0 && !between || left > w.cur.left {
		w.blind = true
		return 0, false
	}
	return left, true
}

// beside is 1 where the last stitches that a repeat goes up to are told without the turning chain behind them: to
// last 3 sts, dc in next 3 sts, dc in top of turning ch.
func (w *work) beside(tail []ins.Item, e ins.Extent) int {
	sum, top := 0, false
	for _, n := range tail {
		if is[*ins.Turn](n) || is[*ins.Nothing](n) {
			continue
		}
		used, _, _ := w.needs(n)
		sum += used
		s, ok := n.(*ins.Stitch)
		top = ok && len(s.Places) > 0 && s.Places[len(s.Places)-1].Kind == ins.InTop
	}
	if top && sum == w.count(e.N)+1 {
		return 1
	}
	return 0
}

// reserve is how many stitches what comes after needs: so far as it says a number, or
// that it stands in the last ones.
func (w *work) reserve(tail []ins.Item, need int) int {
	k, sum := need, 0
	for _, n := range tail {
		used, last, ok := w.needs(n)
		sum += used
		if last || ok {
			k = need + sum
		}
		if !ok && !last {
			break
		}
	}
	return k
}

// needs is how many stitches an instruction takes, if it is a fixed number of them; last
// tells that it stands in the last ones.
func (w *work) needs(n ins.Item) (used int, last, ok bool) {
	switch n := n.(type) {
	case *ins.Stitch:
		return w.stitchNeeds(n)
	case *ins.Skip:
		return w.skipNeeds(n)
	case *ins.Leave:
		if n.All {
			return 0, false, false
		}
		return w.count(n.N), true, true
	case *ins.BindOff:
		return w.count(n.N), false, !n.All && n.To.Kind == ins.NoExtent
	case *ins.Repeat:
		if len(n.Places) > 0 || n.Until.Kind != ins.NoExtent || n.Times.By != nil && w.n(n.Times) < 0 {
			return w.placesNeed(n.Places)
		}
		for _, m := range n.Body {
			u, _, ok := w.needs(m)
			if !ok {
				return 0, false, false
			}
			used += u
		}
		return used * w.count(n.Times), false, true
	case *ins.Chain, *ins.Nothing, *ins.Turn, *ins.Marker, *ins.Psso, *ins.Measure:
		return 0, false, true
	}
	return 0, false, false
}

// skipNeeds is how many stitches are passed.
func (w *work) skipNeeds(n *ins.Skip) (used int, last, ok bool) {
	for i := range n.Places {
		if p := &n.Places[i]; w.takes(p) {
			used += w.count(p.N)
			last = last || p.Kind == ins.InLast
		}
	}
	return used, last, true
}

func (w *work) placesNeed(list []ins.Place) (used int, last, ok bool) {
	for i := range list {
		switch p := &list[i]; p.Kind {
		case ins.InLast, ins.InTop:
			if p.Start && w.round && w.travel == 0 { // in join, where the round began
				continue
			}
			last = true
			if w.takes(p) {
				used += w.count(p.N)
			}
		case ins.InNext:
			if p.Unit.Word != "skipped" && w.takes(p) {
				used += w.count(p.N)
			}
		case ins.InCentre:
			if p.Unit.Group != nil {
				return used, last, false
			}
			used++
		default:
			return used, last, false
		}
	}
	return used, last, len(list) > 0
}

// takes reports whether a place is of stitches. Chains are places of their own over a foundation alone.
func (w *work) takes(p *ins.Place) bool {
	return !p.Unit.Space && (!p.Unit.Chain || w.from.foundation()) && p.Unit.Group == nil && !p.Unit.Stretch
}

func (w *work) stitchNeeds(n *ins.Stitch) (used int, last, ok bool) {
	if n.Kind != nil && n.Kind.ID == "slst" && w.round {
		return 0, false, false
	}
	if n.Call != nil && n.Call.Mesh != nil {
		return 0, false, false
	}
	if len(n.Places) == 0 {
		if n.Call != nil && n.Call.Over != nil {
			return w.needs(&ins.Repeat{Body: n.Call.Over, Times: n.N, Stop: -1})
		}
		if n.Call != nil {
			return w.count(n.N), false, true
		}
		_, _, uses := w.resolve(n)
		return uses * w.count(n.N), false, true
	}
	return w.placesNeed(n.Places)
}

// exact reports whether instructions name one by one as many stitches as there are: none goes on as far as the row does.
func (w *work) exact(body []ins.Item) bool {
	sum := 0
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Join, *ins.Fasten:
			continue
		case *ins.Stitch:
			if n.Kind != nil && n.Kind.ID == "slst" {
				continue
			}
		}
		used, last, ok := w.needs(n)
		if !ok && !last {
			return false
		}
		sum += used
	}
	return sum > fewest && sum == w.from.stitches()
}

// each works n into every place of the row that is left, to where the extent says.
func (w *work) each(n ins.Item, p *ins.Place, reserve int) {
	w.takeTurning()
	w.began = true
	keep, known := w.stop(p.Extent, reserve, nil)
	if !known {
		w.blindOver(n)
		return
	}
	if keep > w.cur.left {
		if p.Extent.Kind != ins.ToLast {
			keep = w.cur.left
		} else {
			w.tell("rows/over-use", finding.Warning, p.At, "only %s stitches are left, so nothing is worked 'to last %s'", "correct the count before it", w.cur.left, keep)
			return
		}
	}
	st, _ := n.(*ins.Stitch)
	switch {
	case st != nil && len(st.Also) > 0 && w.cornersUnmarked(st):
		bare := *st
		bare.Also = nil
		w.each(&bare, p, reserve)
		w.blind = true // how many corners there are is not said
	case st != nil && len(st.Also) > 0:
		w.eachMixed(st, p, keep)
	case p.Unit.Space:
		w.eachSpace(n, p, keep)
	case p.Unit.Group != nil || p.Unit.Stretch:
		worked := false
		for w.groupAhead(p.Unit.Group) {
			if w.steps++; w.steps > maxSteps {
				return
			}
			w.nextGroup(p.Unit.Group, p.At)
			w.foot(n, w.feet(w.lastPos))
			worked = true
		}
		w.blind = w.blind || !worked
	case w.n(p.N) > 1:
		w.everyNth(n, p, keep)
	case !w.overAll(n, p, keep):
		w.eachStitch(n, p, keep)
	}
}

// blindOver goes over what is left where nothing tells how far.
func (w *work) blindOver(ins.Item) {
	k := w.cur.left
	kind := w.kind()
	w.cur.toEnd()
	w.doubtful("it does not say how far it goes")
	w.emit(run{kind: kind, n: k}, nil, nil)
}

func (w *work) eachSpace(n ins.Item, p *ins.Place, keep int) {
	if w.eachGap(n, p, keep) {
		return
	}
	worked := 0
	w.blind = w.blind || w.from.plain
	for w.spaceBefore(w.spaceSize(p.Unit), keep) {
		if w.steps++; w.steps > maxSteps {
			return
		}
		w.space(w.spaceSize(p.Unit), p.At)
		w.foot(n, w.feet(w.lastPos))
		worked++
	}
	if worked == 0 {
		w.blind = w.blind || w.quiet == 0 && w.from.spaces(w.spaceSize(p.Unit)) // it means others than those before
		w.space(w.spaceSize(p.Unit), p.At)                                      // tells that there is none
	}
}

// eachGap works n into each gap between two stitches, or two groups, of a row without chain spaces. It reports false if others are meant.
func (w *work) eachGap(n ins.Item, p *ins.Place, keep int) bool {
	if !p.Unit.Between && !w.gaps || p.Unit.Size.Set() || w.from.spaces(0) || w.from.plain || len(w.from.runs) == 0 || w.cur.left <= keep {
		return false
	}
	for w.cur.left > keep {
		if w.steps++; w.steps > maxSteps || !w.betweenGroups() && !w.gap("", p.At) {
			return true
		}
		w.foot(n, w.feet(w.lastPos))
	}
	return true
}

// everyNth works n into every so-manieth stitch: those between are plain if it is an
// increase, or passed.
func (w *work) everyNth(n ins.Item, p *ins.Place, keep int) {
	k := w.n(p.N)
	kind, makes, uses := w.resolve(n)
	plain := w.amount(n)*makes > 1 && uses == 1
	for w.cur.left > keep {
		if w.steps++; w.steps > maxSteps {
			return
		}
		between := min(k-1, w.cur.left-keep)
		if !plain { // in every other st: it begins with one
			w.use(1, nil, p.At)
			w.foot(n, w.feet(w.lastPos))
			between = min(k-1, w.cur.left-keep)
			if between > 0 {
				w.use(between, nil, p.At)
			}
			continue
		}
		if between > 0 {
			w.use(between, nil, p.At)
			w.emit(run{kind: kind, n: between}, nil, nil)
		}
		if w.cur.left > keep {
			w.use(1, nil, p.At)
			w.foot(n, w.feet(w.lastPos))
		}
	}
}

// strange reports whether no stitch of the row below, but for its turning chain, may be called u.
func (w *work) strange(u *stitch.Stitch) bool {
	return !slices.ContainsFunc(w.from.runs, func(r run) bool { return !r.space() && !r.tch && (alike(u, r.kind) || r.base) })
}

// eachStitch works n into each stitch, or each chain.
func (w *work) eachStitch(n ins.Item, p *ins.Place, keep int) {
	_, _, uses := w.resolve(n)
	w.spaced = false
	told := false
	u := p.Unit.Stitch
	if w.misnamed(u, p.At) {
		u = nil
	}
	for w.cur.left > keep {
		if w.steps++; w.steps > maxSteps {
			return
		}
		if p.Unit.Chain && w.chainsOfSpace(n) {
			continue
		}
		if !p.Unit.Chain {
			w.cur.passSpaces()
		}
		r := w.cur.run()
		if r == nil {
			break
		}
		switch k := min(r.n-w.cur.off, w.cur.left-keep); {
		case u != nil && !alike(u, r.kind) && !r.base && !w.meansAll():
			told = told || w.tellOthers(u, r.kind, k, p.At)
			w.cur.step(k)
		case uses > 1:
			if !w.eachTogether(n, p, k, keep) {
				return
			}
		default:
			w.eachOf(n, k)
		}
	}
	for p.Unit.Chain && keep == 0 && w.chainsOfSpace(n) {
	}
	w.lastPos = w.cur.pos - 1
}

// overAll works a stitch into every stitch down to the last so many at once, if what it makes does not stand on single ones; it
// reports whether it did.
func (w *work) overAll(n ins.Item, p *ins.Place, keep int) bool {
	st, ok := n.(*ins.Stitch)
	if !ok || st.Kind == nil || st.Call != nil || st.Kind.Uses != 1 || p.Unit.Stitch != nil || p.Unit.Chain || w.rec != nil {
		return false
	}
	per, over := w.count(st.N)*st.Kind.Makes, w.cur.left-keep
	if per >= 3 || over <= 0 {
		return false
	}
	was := w.cur
	for at := over; at > 0; {
		w.cur.passSpaces()
		r := w.cur.run()
		if r == nil {
			w.cur = was
			return false
		}
		k := min(r.n-w.cur.off, at)
		w.cur.step(k)
		at -= k
	}
	w.spaced = false
	w.emit(run{kind: st.Kind, n: over * per}, nil, n)
	w.lastPos = w.cur.pos - 1
	return true
}

// misnamed tells of a name that no stitch of the row below has: it is another for those that are there.
func (w *work) misnamed(u *stitch.Stitch, at ins.Span) bool {
	r := w.cur.run()
	if r == nil || u == nil || w.from.plain || !w.strange(u) {
		return false
	}
	w.tell("rows/kind", finding.Warning, at, "no stitch of the row below is "+article(u, w.x.TermsAt(at.Line))+": it has "+article(r.kind, w.x.TermsAt(at.Line)), "name the stitch that is there")
	return true
}

// meansAll reports whether a kind that is named for each stitch stands for those of other kinds too: in this reading of a
// row that states a count, or of the rows before.
func (w *work) meansAll() bool {
	return (w.counted || w.pick != nil && w.pick.taken[key{loose: true}]) && w.pick.loosely()
}

// tellOthers says that 'in each u' leaves k other stitches, where no stated count tells whether it is meant so.
func (w *work) tellOthers(u, other *stitch.Stitch, k int, at ins.Span) bool {
	if w.counted {
		return true
	}
	w.tell("rows/under-use", finding.Warning, at, "'in each "+u.Abbr(w.x.TermsAt(at.Line))+"' leaves %s "+article(other, w.x.TermsAt(at.Line))+" unworked", "say 'in each st', or what to do with them", k)
	return true
}

// eachOf works n into each of the next k stitches of a run, or into the next one where what is made stands on it.
func (w *work) eachOf(n ins.Item, k int) {
	kind, makes, _ := w.resolve(n)
	_, _, _, group := w.called(n)
	if per := w.amount(n); !group && w.rec == nil && per*makes < 3 {
		w.cur.step(k)
		w.emit(run{kind: kind, n: k * per * makes}, nil, n)
		return
	}
	w.cur.step(1)
	w.lastPos = w.cur.pos - 1
	w.foot(n, w.feet(w.lastPos))
}

// chainsOfSpace works n into each chain of the space that is met; it reports false if none is.
func (w *work) chainsOfSpace(n ins.Item) bool {
	r := w.cur.run()
	if r == nil || !r.space() {
		return false
	}
	kind, makes, _ := w.resolve(n)
	k := r.chain - w.cur.off
	w.cur.step(k)
	w.emit(run{kind: kind, n: k * w.amount(n) * makes}, w.feet(w.cur.pos-1), n)
	return true
}

// eachTogether works the next stitches of a run of k together; it reports false at the end.
func (w *work) eachTogether(n ins.Item, p *ins.Place, k, keep int) bool {
	kind, makes, uses := w.resolve(n)
	switch {
	case k < uses:
		if w.cur.left-keep < uses {
			w.tell("rows/repeat", finding.Warning, n.Span(), kind.Abbr(w.x.TermsAt(n.Span().Line))+" takes %s stitches: %s stitches are left over", "correct the count of the row below", uses, k)
			return false
		}
		w.use(uses, nil, p.At) // over two runs
		w.emit(run{kind: kind, n: makes}, nil, n)
	case w.rec == nil:
		t := k / uses
		w.cur.step(t * uses)
		w.emit(run{kind: kind, n: t * makes}, nil, n)
	default:
		from := w.cur.pos
		w.cur.step(uses)
		w.emit(run{kind: kind, n: makes}, w.feetTo(from), n)
	}
	return true
}

// eachMixed works over a stretch in which stitches and spaces are worked unlike:
// sc in each sc and 2 sc in each ch-2 sp.
func (w *work) eachMixed(n *ins.Stitch, p *ins.Place, keep int) {
	here := *n
	here.Places = []ins.Place{*p}
	list := append([]*ins.Stitch{&here}, n.Also...)
	for _, m := range list {
		w.together(m, p.At)
	}
	for w.cur.i < len(w.cur.f.runs) && (w.cur.left > keep || keep == 0 || w.spaceBeforeLast(p)) {
		if w.steps++; w.steps > maxSteps {
			return
		}
		r := w.cur.run()
		m := w.meant(list, r)
		switch {
		case m == nil && r.space():
			w.cur.passSpaces()
		case m == nil:
			w.tell("rows/under-use", finding.Warning, p.At, "%s "+article(r.kind, w.x.TermsAt(p.At.Line))+" are not worked", "say what to do with them", r.n-w.cur.off)
			w.cur.step(r.n - w.cur.off)
		case r.space():
			times := 1
			if m.Places[0].Unit.Chain {
				times = r.chain
			}
			w.cur.step(r.chain)
			w.lastPos = w.cur.pos - 1
			for range times {
				w.foot(m, w.feet(w.lastPos))
			}
		default:
			k := min(r.n-w.cur.off, w.cur.left-keep)
			kind, makes, _ := w.resolve(m)
			if w.rec != nil || m.Call != nil {
				w.cur.step(1)
				w.lastPos = w.cur.pos - 1
				w.foot(m, w.feet(w.lastPos))
				continue
			}
			w.cur.step(k)
			w.emit(run{kind: kind, n: k * w.count(m.N) * makes}, nil, m)
		}
	}
}

// spaceBeforeLast reports whether a space is next, of a stretch that ends before the last stitches: those before them are of it.
func (w *work) spaceBeforeLast(p *ins.Place) bool {
	return p.Extent.Kind == ins.ToLast && !p.Extent.Unit.Space && w.cur.run().space()
}

// cornersUnmarked reports whether something goes into corners that no space of the row below marks.
func (w *work) cornersUnmarked(n *ins.Stitch) bool {
	return w.from.widest() == 0 && slices.ContainsFunc(n.Also, func(m *ins.Stitch) bool { return m.Places[0].Unit.Word == "corner" })
}

// meant is which of several instructions is for the places of a run.
func (w *work) meant(list []*ins.Stitch, r *run) *ins.Stitch {
	for _, m := range list {
		u := m.Places[0].Unit
		switch {
		case u.Word == "corner":
			if r.space() && r.chain == w.from.widest() {
				return m
			}
		case u.Space:
			if size := w.n(u.Size); r.space() && (size <= 0 || size == r.chain) {
				return m
			}
		case u.Chain:
			if r.space() || r.base {
				return m
			}
		case !r.space() && alike(u.Stitch, r.kind):
			return m
		}
	}
	return nil
}

// spaceBefore reports whether there is a chain space ahead, before the last keep
// stitches.
func (w *work) spaceBefore(size, keep int) bool {
	c := w.cur
	for c.i < len(c.f.runs) {
		r := c.run()
		if r.space() && c.f.sized(c.i, size) && c.off == 0 {
			return c.left >= keep
		}
		if r.space() {
			c.i, c.off = c.i+1, 0
			continue
		}
		c.left -= r.n - c.off
		c.i, c.off = c.i+1, 0
	}
	return false
}

func (w *work) groupAhead(g *ins.Group) bool {
	for i := w.cur.i; i < len(w.cur.f.runs); i++ {
		if r := w.cur.f.runs[i]; r.group > 0 && (g == nil || r.of == g) && (i > w.cur.i || w.cur.off == 0) {
			return true
		}
	}
	return false
}

// skipsFirst is how many stitches a stretch passes before it works one.
func (w *work) skipsFirst(body []ins.Item) int {
	at := slices.IndexFunc(body, func(n ins.Item) bool { return !ofLoop(n) })
	if at < 0 {
		return 0
	}
	n, ok := body[at].(*ins.Skip)
	if !ok {
		return 0
	}
	k := 0
	for i := range n.Places {
		k += w.count(n.Places[i].N)
	}
	return k
}

// bySpaces reports whether a repeat is worked into chain spaces.
func (w *work) bySpaces(body []ins.Item) bool {
	_, ok := w.spaceIn(body)
	return ok
}

// spaceIn is of how many chains the spaces are into which a repeat is worked, 0: of any; false if it is worked into none.
func (w *work) spaceIn(body []ins.Item) (size int, ok bool) {
	for _, n := range body {
		if r, ok := n.(*ins.Repeat); ok && len(r.Places) == 0 {
			if size, ok := w.spaceIn(r.Body); ok {
				return size, true
			}
		}
		list := placesOf(n)
		if k := slices.IndexFunc(list, func(p ins.Place) bool { return p.Unit.Space }); k >= 0 {
			return w.spaceSize(list[k].Unit), true
		}
		if k := slices.IndexFunc(list, w.alongSpace); k >= 0 {
			return w.alongN(&list[k]), true
		}
	}
	return 0, false
}

// alongSpace reports whether a place is each chain of a space of the round below: sc in next 5 ch, sc in next sc.
func (w *work) alongSpace(p ins.Place) bool {
	n := w.alongN(&p)
	return w.round && p.Kind == ins.InNext && p.Unit.Chain && n > 1 && slices.ContainsFunc(w.from.runs, func(r run) bool { return r.space() && r.chain == n })
}

// alongN is in how many chains a place lies: each ch of next loop, in as many as that has.
func (w *work) alongN(p *ins.Place) int {
	n := w.n(p.N)
	if n != 0 || !p.Of || !p.Unit.Chain {
		return n
	}
	for _, r := range w.cur.f.runs[min(w.cur.i, len(w.cur.f.runs)):] {
		if r.space() {
			return r.chain
		}
	}
	return n
}

// pastJoin passes the stitch on which a round was joined, if its repeat begins along the space behind that: the stitch comes last.
func (w *work) pastJoin(p *ins.Place) {
	r := w.from.runs
	if !w.alongSpace(*p) || !w.again || w.began || w.travel > 0 || len(r) < 2 || r[0].n != 1 || r[0].space() || !r[1].space() || r[1].chain != w.alongN(p) {
		return
	}
	if w.takeTurning(); w.cur.atStart() {
		w.cur.step(1)
	}
	w.began = true
	w.comesLast(1)
}
