package work

import (
	"slices"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// resolve is the kind of stitch of n, and how many stitches it leaves and takes: inc
// and dec are of the stitch in which the row is worked.
func (w *work) resolve(by ins.Item) (kind *stitch.Stitch, makes, uses int) {
	n, ok := by.(*ins.Stitch)
	switch {
	case !ok:
		return w.kind(), 1, 1
	case n.Kind != nil:
		return n.Kind, n.Kind.Makes, n.Kind.Uses
	case n.Inc:
		k := w.kind()
		if k.Craft == stitch.Knitting && w.pick.raised() {
			return stitch.ByID("m1"), 1, 0
		}
		if k.Craft == stitch.Knitting {
			k = stitch.ByID("kfb")
		}
		return k, 2, 1
	case n.Dec:
		k := w.kind()
		if k.Craft == stitch.Knitting {
			return stitch.ByID("k2tog"), 1, 2
		}
		if d := stitch.ByID(k.ID + "2tog"); d != nil {
			return d, 1, 2
		}
		return stitch.ByID("sc2tog"), 1, 2
	}
	return w.kind(), 1, 1
}

// called is the group that n works, if it calls or is one: its body, its name, how often.
func (w *work) called(by ins.Item) (body []ins.Item, of *ins.Group, times int, ok bool) {
	switch n := by.(type) {
	case *ins.Repeat:
		return n.Body, w.named(n.Body), 1, true
	case *ins.Stitch:
		if n.Call != nil {
			return n.Call.Body, n.Call, w.count(n.N), true
		}
	}
	return nil, nil, 0, false
}

// named is the group of the text that a list of stitches is, told out; nil: none.
func (w *work) named(list []ins.Item) *ins.Group {
	for _, g := range w.x.Groups {
		if g.Mesh == nil && len(list) > 1 && slices.EqualFunc(g.Body, list, w.alikeItems) {
			return g
		}
	}
	return nil
}

// alikeItems reports whether two instructions of what is worked into one place are as many stitches of a kind, or as many chains.
func (w *work) alikeItems(a, b ins.Item) bool {
	switch a := a.(type) {
	case *ins.Stitch:
		b, ok := b.(*ins.Stitch)
		return ok && a.Kind != nil && a.Kind == b.Kind && a.Call == b.Call && w.count(a.N) == w.count(b.N)
	case *ins.Chain:
		b, ok := b.(*ins.Chain)
		return ok && w.count(a.N) == w.count(b.N)
	}
	return false
}

// amount is how many stitches n makes in one place.
func (w *work) amount(by ins.Item) int {
	if n, ok := by.(*ins.Stitch); ok {
		return w.count(n.N)
	}
	return 1
}

// foot makes what n says in one place: n.N stitches, or its group, N times.
func (w *work) foot(by ins.Item, feet []int) {
	if list, of, times, ok := w.called(by); ok {
		w.blind = w.blind || of != nil && len(list) == 0 // the text does not say of what it is
		for range times {
			w.out.groups++
			w.into(list, of, w.out.groups, feet)
		}
		return
	}
	kind, makes, uses := w.resolve(by)
	k := w.amount(by)
	if kind.ID == "picot" {
		w.picots(k, by)
		return
	}
	group := 0
	if k*makes >= 3 && uses == 1 {
		w.out.groups++
		group = w.out.groups
	}
	w.emit(run{kind: kind, n: k * makes, group: group, one: kind.Together && uses > 1}, feet, by)
}

func (w *work) picots(k int, n ins.Item) {
	w.out.picots += k
	w.out.picoted = k > 0
	w.began = true
	if w.rec != nil && w.quiet == 0 && k > 0 {
		w.rec(stitch.ByID("picot"), k, 0, nil, n)
	}
}

// into makes the stitches of a bracket, all in one place.
func (w *work) into(list []ins.Item, of *ins.Group, group int, feet []int) {
	for _, m := range list {
		if w.steps++; w.steps > maxSteps {
			return
		}
		switch m := m.(type) {
		case *ins.Stitch:
			w.stitchInto(m, of, group, feet)
		case *ins.Chain:
			w.chainInto(m, of, group, w.opens(list))
		case *ins.Repeat:
			times := 1
			if m.Until.Kind == ins.NoExtent {
				times = w.count(m.Times)
			}
			for range min(times, maxSteps) {
				w.into(m.Body, of, group, feet)
			}
		}
	}
}

func (w *work) stitchInto(m *ins.Stitch, of *ins.Group, group int, feet []int) {
	if w.picotSlip(m) {
		return
	}
	if m.Call != nil {
		w.foot(m, feet)
		return
	}
	kind, makes, _ := w.resolve(m)
	if kind.ID == "picot" {
		w.picots(w.count(m.N), m)
		return
	}
	w.emit(run{kind: kind, n: w.count(m.N) * makes, group: group, of: of, one: kind.Together}, feet, m)
}

// opens reports whether a bracket opens its round, and does not come back down as a petal does: (ch 3, 2 dc) in first sp.
func (w *work) opens(list []ins.Item) bool {
	st, ok := list[len(list)-1].(*ins.Stitch)
	return w.round && len(w.out.runs) == 0 && !w.again && len(list) > 1 && is[*ins.Stitch](list[1]) && ok && st.Kind != nil && st.Kind.ID != "slst"
}

func (w *work) chainInto(m *ins.Chain, of *ins.Group, group int, opens bool) {
	if opens || !w.began && (m.Count.How != ins.Unsaid || w.cur.pos == w.travel || w.round && w.cur.pos == 1 && len(w.out.runs) == 0) { // in same dc
		w.start(m, nil)
		w.tchAt = false // it stands in the space itself
		return
	}
	if k := w.n(m.N); k > 0 {
		w.emit(run{chain: k, group: group, of: of}, nil, m)
	}
}

// picotSlip closes ch 3, sl st in 3rd ch from hook to a picot.
func (w *work) picotSlip(n *ins.Stitch) bool {
	if n.Kind == nil || n.Kind.ID != "slst" && n.Kind.ID != "sc" || len(n.Places) != 1 {
		return false
	}
	p := &n.Places[0]
	slip := n.Kind.ID == "slst"
	first := p.Kind == ins.FromHook || slip && (w.onLastMade(p) || p.Kind == ins.InTop && w.lastIsArch() && w.cur.left > 1 && !w.pinned ||
		p.Kind == ins.InLast && w.lastIsArch() && w.cur.left > 1 && !w.round || p.Kind == ins.InFirst && p.Unit.Chain || p.Kind == ins.InSame && !p.Unit.Space && w.lastIsArch())
	k := len(w.out.runs) - 1
	if !first || k < 0 || !w.out.runs[k].space() || p.Kind == ins.InSame && p.Unit.Stitch != w.out.runs[max(k-1, 0)].kind && w.petal() {
		return false
	}
	if w.out.runs[k].chain = beyondPicot(n, w.out.runs[k].chain); w.out.runs[k].chain == 0 {
		w.out.runs = w.out.runs[:k]
	}
	w.picots(1, n)
	return true
}

// beyondPicot is how many of the chains before it a picot leaves: ch 7, sl st in 4th ch from hook leaves 3.
func beyondPicot(n ins.Item, chain int) int {
	list := placesOf(n)
	if len(list) == 1 && list[0].Kind == ins.FromHook && list[0].N.By == nil {
		return max(chain-list[0].N.All, 0)
	}
	return 0
}

// petal reports whether the last chain goes back down beside tall stitches that as long a chain led up to: ch 3, 2 tr in same
// place, ch 3, sl st in same place.
func (w *work) petal() bool {
	k := len(w.out.runs) - 1
	for i := k - 1; i >= 0; i-- {
		r := &w.out.runs[i]
		switch {
		case r.tch || r.space():
			return i < k-1 && (r.chain == w.out.runs[k].chain || r.tch && w.startChain == w.out.runs[k].chain)
		case r.kind == nil || r.kind.Height < 2:
			return false
		}
	}
	return k > 0 && w.freeChain == w.out.runs[k].chain
}

// onLastMade reports whether a place is the stitch made last, named as it is, on which a chain of some stands.
func (w *work) onLastMade(p *ins.Place) bool {
	return p.Kind == ins.InSame && p.Unit.Stitch != nil && w.archStands() && p.Unit.Stitch == w.out.runs[len(w.out.runs)-2].kind
}

// lastIsArch reports whether what was made last is a chain that stands on a stitch.
func (w *work) lastIsArch() bool { return !w.spaced && w.archStands() }

func (w *work) archStands() bool {
	k := len(w.out.runs) - 1
	return k > 0 && w.out.runs[k].space() && w.out.runs[k].chain >= 2 && w.out.runs[k].chain <= 6
}

// stitch works n.N stitches of a kind in its places.
func (w *work) stitch(n *ins.Stitch, tail []ins.Item, need int) {
	if w.legs(n) || w.alongOwn(n, tail) || w.alongAdded(n) || w.picotSlip(n) || w.closing(n, tail) || w.lastArch(n, tail) {
		return
	}
	if n.Call != nil && n.Call.Mesh != nil {
		w.meshes(n)
		return
	}
	if n.Kind != nil && n.Kind.ID == "picot" && len(n.Places) == 0 {
		w.picots(w.count(n.N), n)
		return
	}
	if len(n.Places) == 0 {
		w.bare(n, tail)
		return
	}
	for i := range n.Places {
		last := i == len(n.Places)-1
		reserve := need
		w.ahead = tail
		if n.Places[i].Kind == ins.InEach {
			if last {
				reserve = w.reserve(tail, need)
			} else if n.Places[i].Extent.Kind == ins.NoExtent || n.Places[i].Extent.Kind == ins.ToEnd {
				reserve = w.reserve([]ins.Item{&ins.Stitch{Kind: n.Kind, N: n.N, Places: n.Places[i+1:]}}, need)
			}
		}
		if w.slipTravel(n, &n.Places[i], tail) {
			continue
		}
		w.place1(n, &n.Places[i], reserve)
	}
}

// bare works stitches of which no place is named: into the next ones.
func (w *work) bare(n *ins.Stitch, tail []ins.Item) {
	k := w.n(n.N)
	if k <= 0 {
		return
	}
	kind, makes, uses := w.resolve(n)
	switch {
	case w.onlyRing() && n.Call == nil && uses > 0 && kind.ID != "slst":
		w.place1(n, &ins.Place{Kind: ins.InRing, N: ins.N(1), At: n.At}, 0)
		return
	case n.Call != nil:
		w.calls(n, k)
		return
	case uses == 0: // yo, m1
		w.takeTurning()
		w.emit(run{kind: kind, n: k * makes}, nil, n)
		return
	case kind.ID == "slst" && w.ends(tail): // 12 sc, sl st, ch 1
		w.joins()
		return
	}
	w.spaced = false
	if k > 1 && w.beforeLast() && uses == 1 && kind.Craft == stitch.Crochet { // to last st, 2 dc: both in it
		w.place1(n, &ins.Place{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: n.At}, 0)
		return
	}
	if uses > 1 || makes > 1 || kind.ID == "slst" || w.rec != nil {
		w.oneByOne(n, run{kind: kind, n: makes}, k, uses)
		return
	}
	got := w.use(k*uses, nil, n.At)
	w.emit(run{kind: kind, n: got}, nil, n)
}

// oneByOne works a stitch k times, each over so many stitches of its own.
func (w *work) oneByOne(n *ins.Stitch, made run, k, uses int) {
	for range k {
		if w.steps++; w.steps > maxSteps {
			return
		}
		from := w.feetFrom()
		if w.use(uses, nil, n.At) < uses {
			return
		}
		w.emit(made, w.feetTo(from), n)
	}
}

// beforeLast reports whether a repeat went up to the last stitch, which is next.
func (w *work) beforeLast() bool { return w.upTo == 1 && w.cur.left == 1 }

// calls works a group k times: each into the next stitch, or over as many as it goes over.
func (w *work) calls(n *ins.Stitch, k int) {
	for range k {
		if n.Call.Over != nil {
			w.seq(n.Call.Over, 0)
			continue
		}
		w.eachFoot(n, &ins.Place{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: n.At})
	}
}

// ends reports whether a slip stitch stands at the end of a round that has nothing left: it closes it.
func (w *work) ends(tail []ins.Item) bool {
	if w.cur.left > 0 && !w.pinned || len(w.out.runs) == 0 || !onlyEnds(tail) {
		return false
	}
	w.closedRound = true
	return true
}

// onlyEnds reports whether nothing more is worked in a round.
func onlyEnds(tail []ins.Item) bool {
	return !slices.ContainsFunc(tail, func(n ins.Item) bool {
		switch n.(type) {
		case *ins.Turn, *ins.Nothing, *ins.Fasten, *ins.Chain, *ins.Join:
			return false
		}
		return true
	})
}

// slipTravel takes slip stitches at the beginning that only lead to where the row
// starts: they are followed by a chain that starts it, or by what is worked into a space.
func (w *work) slipTravel(n *ins.Stitch, p *ins.Place, tail []ins.Item) bool {
	if !w.travels(n, p, tail) {
		return false
	}
	if p.Kind == ins.InSame {
		return true
	}
	k := w.count(p.N)
	same := w.round && !w.from.ring && p == &n.Places[len(n.Places)-1] && inSameSpace(tail)
	p = w.cornerSpace(p)
	w.tchAt = false
	if r := w.cur.run(); w.round && w.cur.atStart() && r != nil && r.tch { // the join stands on it
		w.cur.step(1)
	}
	switch {
	case p.Kind == ins.InEach: // to the first space, and on into it
		w.space(w.spaceSize(p.Extent.Unit), p.At)
	case p.Unit.Space:
		w.slipIntoSpace(p)
	case w.round && !w.from.ring && p.Unit.Chain && w.cur.f.hasChains(w.cur.i), same && p.Unit.Stitch == nil && p.Kind == ins.InNext && w.loopAhead():
		w.alongLoop(k, p, tail)
	default:
		w.use(k, p.Unit.Stitch, p.At)
	}
	if same && w.loopAhead() && !w.inSpace() { // sl st into loop, ch 3, 2 dc in same loop
		w.space(0, p.At)
	}
	w.turnRound()
	return true
}

// slipIntoSpace goes on into a space, to which slip stitches lead stitch by stitch.
func (w *work) slipIntoSpace(p *ins.Place) {
	before, at := w.cur.left, w.cur.run()
	w.space(w.spaceSize(p.Unit), p.At)
	passed := before - w.cur.left
	if joined := passed == 1 && !(w.round && w.from.runs[0].tch); passed > 0 && at != nil && w.travel > 0 && !joined { // it was joined to the first, or turned on it
		w.tell("rows/under-use", finding.Warning, p.At, "%s stitches lie between the slip stitches and the space", "slip stitch in %s more", passed, passed)
	}
}

// travels reports whether a slip stitch is one of those.
func (w *work) travels(n *ins.Stitch, p *ins.Place, tail []ins.Item) bool {
	if n.Kind == nil || n.Kind.ID != "slst" || len(w.out.runs) > 0 || len(tail) == 0 || p.Kind == ins.InEach && !w.upToSpace(p, tail) || !p.Unit.Space && loops(tail[0]) {
		return false
	}
	return leadsOn(tail) || w.round && p.Unit.Space && goesInSame(tail) || w.round && p.Unit.Chain && w.intoThat(tail) || w.mayLead(p, tail) && w.pick.leads(!w.round && w.count(p.N) > 1)
}

// loops reports whether an instruction is a repeat of chains that end in a slip stitch each: the slip stitch before it holds the first.
func loops(n ins.Item) bool {
	q, ok := n.(*ins.Repeat)
	if !ok || len(q.Body) != 2 || len(q.Places) > 0 || !is[*ins.Chain](q.Body[0]) {
		return false
	}
	st, ok := q.Body[1].(*ins.Stitch)
	return ok && st.Kind != nil && st.Kind.ID == "slst"
}

// upToSpace reports whether slip stitches of a round go on to its first chain space, where a chain begins.
func (w *work) upToSpace(p *ins.Place, tail []ins.Item) bool {
	return w.round && p.Extent.Kind == ins.ToUnit && p.Extent.Unit.Space && leadsOn(tail) && w.from.spaces(w.spaceSize(p.Extent.Unit))
}

// alongLoop goes along k chains of the first loop of a round. What begins in the same place has all of it.
func (w *work) alongLoop(k int, p *ins.Place, tail []ins.Item) {
	for r := w.cur.run(); r != nil && !r.space() && !r.base; r = w.cur.run() { // the stitch that the round was joined to
		w.cur.step(r.n - w.cur.off)
	}
	if w.chains(k, p.At); w.cur.off > 0 && w.cur.run().space() && (goesInSame(tail) || w.intoThat(tail)) {
		w.cur.step(w.cur.run().chain - w.cur.off)
		w.lastPos = w.cur.pos - 1
	}
	w.spaced = true
}

// intoThat reports whether the first stitch of a list goes into a space that no word calls the next one: sl st in next 5 ch, sc in loop.
func (w *work) intoThat(list []ins.Item) bool {
	for _, n := range list {
		if p := placesOf(n); len(p) > 0 {
			return p[0].Unit.Space && p[0].Kind == ins.InNext && !strings.Contains(strings.ToLower(w.x.Quote(p[0].At)), "next")
		}
	}
	return false
}

// inSameSpace reports whether the first stitch behind chains goes into the space where they begin.
func inSameSpace(list []ins.Item) bool {
	if len(list) == 0 || !is[*ins.Chain](list[0]) {
		return false
	}
	for _, n := range list[1:] {
		if p := placesOf(n); len(p) > 0 {
			return p[0].Kind == ins.InSame && p[0].Unit.Space
		}
	}
	return false
}

// loopAhead reports whether a chain space comes next, behind the stitch that the round was joined to.
func (w *work) loopAhead() bool {
	runs, i := w.cur.f.runs, w.cur.i
	if i < len(runs) && w.cur.atStart() && !runs[i].space() && runs[i].n == 1 {
		i++
	}
	return i < len(runs) && runs[i].space()
}

// inSpace reports whether the place that was gone to last is a chain space.
func (w *work) inSpace() bool {
	k := w.cur.i - 1
	return k >= 0 && w.cur.off == 0 && w.cur.f.runs[k].space()
}

// goesInSame reports whether the first stitch of a list goes into the place that was worked into last.
func goesInSame(list []ins.Item) bool {
	for _, n := range list {
		if p := placesOf(n); len(p) > 0 {
			return p[0].Kind == ins.InSame
		}
	}
	return false
}

// mayLead reports whether slip stitches into the next stitches may only lead to others, of another kind, that follow them.
func (w *work) mayLead(p *ins.Place, tail []ins.Item) bool {
	if p.Unit.Space || p.Kind != ins.InNext && p.Kind != ins.InFirst || w.pinned || w.from.ring {
		return false
	}
	for _, m := range tail {
		switch m := m.(type) {
		case *ins.Nothing:
			continue
		case *ins.Stitch:
			return m.Kind != nil && m.Kind.ID != "slst"
		}
		break
	}
	return false
}

// leadsOn reports whether a chain that starts the row follows, behind further slip stitches.
func leadsOn(tail []ins.Item) bool {
	for _, m := range tail {
		switch m := m.(type) {
		case *ins.Chain:
			return true
		case *ins.Repeat:
			if len(m.Body) == 0 {
				return false
			}
			_, ok := m.Body[0].(*ins.Chain)
			return ok
		case *ins.Stitch:
			if m.Call != nil && len(m.Call.Body) > 0 && is[*ins.Chain](m.Call.Body[0]) { // a first shell, which begins with ch 3
				return true
			}
			if m.Kind == nil || m.Kind.ID != "slst" {
				return false
			}
		case *ins.Nothing, *ins.Turn:
		default:
			return false
		}
	}
	return false
}

// onlyRing reports whether a row stands on a ring of which no chain is worked into: a magic one, or of so few chains that they
// are a centre (common practice: up to 10).
func (w *work) onlyRing() bool {
	return w.from.ring && (len(w.from.runs) == 0 || w.from.base() && w.cur.atStart() && w.from.stitches() <= 10)
}

func (w *work) feetFrom() int {
	if w.rec == nil {
		return 0
	}
	w.takeTurning()
	c := w.cur
	c.passSpaces()
	return c.pos
}

func (w *work) feetTo(from int) []int {
	if w.rec == nil {
		return nil
	}
	var out []int
	for i := from; i < w.cur.pos; i++ {
		out = append(out, i)
	}
	return out
}

// place1 works n into one place.
func (w *work) place1(n ins.Item, p *ins.Place, reserve int) {
	k := w.n(p.N)
	if s, ok := n.(*ins.Stitch); ok && s.Call == nil && w.n(s.N) == ins.None || k == ins.None {
		return // this size has ins.None
	}
	if p.Unit.Chain && !w.from.foundation() && strings.Contains(w.x.Quote(p.At), "foundation") && !w.unsure() { // it lies below other rows
		return
	}
	switch p.Kind {
	case ins.InNext:
		if along := w.alongN(p); along != k {
			q := *p
			q.N, p = ins.N(along), &q
		}
		w.pastJoin(p)
		w.eachFoot(n, p)
	case ins.InFirst:
		w.first(n, *p)
	case ins.InLast:
		w.last(n, *p)
	case ins.InEach:
		w.each(n, p, reserve)
	case ins.InSame:
		w.same(n, p)
	case ins.InRing:
		w.ring(n, p)
	case ins.InTop:
		w.top(n, *p)
	case ins.FromHook:
		w.hook(n, *p, k)
	case ins.InCentre:
		w.centre(n, *p)
	case ins.InEvery: // in the 3rd st: those before it are passed
		if p.Unit.Between && w.gaps { // the round began in a gap, and goes on to the next
			w.feetIn(n, 1, func() bool {
				return w.spaceOrGap(&ins.Place{Unit: ins.Unit{Space: true, Between: true, Word: "sp"}, At: p.At})
			})
			return
		}
		if p.Unit.Between { // in the gap between two stitches
			w.betweenTwo(n, p)
			return
		}
		if w.tchAt && w.cur.atStart() && k > 1 { // ch 3 (counts as dc), dc in 2nd dc: the first is below the chain
			w.takeTurning()
			k--
		}
		w.use(max(k-1, 0), nil, p.At)
		u := p.Unit
		if r := w.cur.run(); u.Any() && r != nil && r.chain == 1 && len(w.out.runs) > 0 && w.out.runs[0].tch { // the chain is that stitch
			u = ins.Unit{Space: true}
		}
		w.eachFoot(n, &ins.Place{Kind: ins.InNext, N: ins.N(1), Unit: u, At: p.At})
	case ins.RowEnds:
		w.rowEnds(n, p)
	}
}

// same works n where the stitch before it was worked.
func (w *work) same(n ins.Item, p *ins.Place) {
	if p.Start && w.origin != nil && w.began && (w.cur.left == 0 || p.Unit.Space && w.from.midArch) {
		w.foot(n, w.origin)
		return
	}
	if p.Unit.Space && w.tchAt && w.cur.atStart() && w.travel == 0 && w.origin == nil {
		w.gap("gap", p.At) // dc in same sp, of a round that begins in a gap
	}
	w.toSame(p)
	if st, ok := n.(*ins.Stitch); p.Unit.Space && !w.gaps && w.round && w.from.spaces(0) && !(ok && st.Kind != nil && st.Kind.ID == "slst") && w.g.onStitch(w.lastPos) {
		if w.doubtful(whichSpace); w.g != nil {
			w.g.firstSame = !slices.ContainsFunc(w.g.cur.Stitches, func(s GraphStitch) bool { return s.Stitch != nil && !s.Turning })
		}
	}
	w.foot(n, w.feet(w.lastPos))
}

// toSame goes to the place that was worked into last: at the beginning of a row, that of its first stitch.
func (w *work) toSame(p *ins.Place) {
	if w.under && w.cur.left == 1 { // in same ch as the first
		w.use(1, nil, p.At)
	}
	if w.tchAt || !w.began || w.cur.pos == 0 && !w.spaced {
		w.tchAt = false
		switch {
		case w.from.midArch && w.cur.atStart() && w.cur.run().space(): // in the loop that the round before ended in
			w.space(0, p.At)
		case w.cur.atStart() && w.cur.left > 0:
			w.cur.passSpaces()
			w.cur.step(1)
			w.lastPos = w.cur.pos - 1
		}
	}
}

// legs works a decrease that begins where the stitch before it went: sc2tog over same st and next st.
func (w *work) legs(n *ins.Stitch) bool {
	if n.Call != nil || n.Kind == nil || n.Kind.Craft != stitch.Crochet || n.Kind.Uses < 2 || len(n.Places) != 2 || w.n(n.N) != 1 {
		return false
	}
	same, next := &n.Places[0], &n.Places[1]
	if same.Kind != ins.InSame || next.Kind != ins.InNext || w.n(next.N) != n.Kind.Uses-1 {
		return false
	}
	w.toSame(same)
	feet, from := w.feet(w.lastPos), w.feetFrom()
	if next.Unit.Space {
		w.space(w.spaceSize(next.Unit), next.At)
	} else {
		w.use(n.Kind.Uses-1, next.Unit.Stitch, next.At)
	}
	w.emit(run{kind: n.Kind, n: n.Kind.Makes}, append(feet, w.feetTo(from)...), n)
	return true
}

func (w *work) ring(n ins.Item, p *ins.Place) {
	if !w.from.ring && w.from.stitches() > 0 && !w.pinned && w.cur.atStart() {
		w.tell("rows/no-ring", finding.Warning, p.At, "there is no ring to work into", "join the chains to a ring first")
	}
	w.tchAt = false
	w.pinned = true
	w.together(n, p.At)
	if w.g == nil {
		w.foot(n, nil)
		return
	}
	k := len(w.g.cur.Stitches)
	w.foot(n, nil)
	for i := range w.g.cur.Stitches[k:] {
		w.g.cur.Stitches[k+i].Ring = true
	}
}

// rowEnds works n into the end of each row worked before, as many as are known.
func (w *work) rowEnds(n ins.Item, p *ins.Place) {
	w.tchAt = false
	w.free, w.pinned, w.edge = true, true, true
	w.together(n, p.At)
	if w.rows <= 0 {
		w.perRow = max(w.amount(n), 1)
		w.out = &fabric{}
		return
	}
	kind, makes, _ := w.resolve(n)
	if w.rec == nil {
		w.emit(run{kind: kind, n: w.rows * w.amount(n) * makes}, nil, n)
		return
	}
	for i := range w.rows {
		w.emit(run{kind: kind, n: w.amount(n) * makes}, []int{i}, n)
	}
}

// betweenTwo works n into the gap between the next two stitches; the one behind the chain that begins a row is still to come.
func (w *work) betweenTwo(n ins.Item, p *ins.Place) {
	if w.tchAt && w.cur.atStart() {
		w.tchAt = false
	}
	if w.use(1, nil, p.At) < 1 {
		return
	}
	first := w.lastPos
	if p.Unit.Word == "tch" {
		w.gapAt = w.cur.pos
	} else {
		w.use(1, nil, p.At)
	}
	w.spaced = false
	w.foot(n, w.feet(first))
}

// gap goes on to the next gap between two stitches of a row without chain spaces, behind the next stitch where the one here is taken;
// one that is told by the stitch beside it takes none. It reports false if the row below has spaces, or nothing is known of it.
func (w *work) gap(word string, at ins.Span) bool {
	if w.from.spaces(0) || w.from.plain || len(w.from.runs) == 0 {
		return false
	}
	w.takeTurning()
	if word == "" || word != "gap" && (w.cur.pos == 0 || w.gapAt == w.cur.pos) {
		w.use(1, nil, at)
	}
	w.gapAt = w.cur.pos
	w.began, w.gaps, w.free, w.pinned = true, true, true, true
	w.lastPos = w.cur.pos - 1
	return true
}

func (w *work) feet(pos int) []int {
	if w.rec == nil || pos < 0 {
		return nil
	}
	return []int{pos}
}

// cornerSpace is a place at a corner as the space that is there, and any other as it is.
func (w *work) cornerSpace(p *ins.Place) *ins.Place {
	if p.Unit.Word != "corner" || !w.from.spaces(0) {
		return p
	}
	corner := *p
	corner.Unit = ins.Unit{Space: true, Word: "corner"}
	return &corner
}

// spaceSize is how many chains the spaces have that a place names, 0: any. Those of corners are the longest, if there are at
// least three of them beside others.
func (w *work) spaceSize(u ins.Unit) int {
	if u.Word != "corner" || u.Size.Set() {
		return w.n(u.Size)
	}
	most, corners, others := w.from.widest(), 0, 0
	for _, r := range w.from.runs {
		switch {
		case r.space() && r.chain == most:
			corners++
		case r.space():
			others++
		}
	}
	if corners < 3 || others == 0 {
		return 0
	}
	return most
}

// led reports whether a place is the space to which slip stitches led, where nothing was worked but the chain that begins the round: sl st
// to corner, (ch 3, 2 dc, ch 2, 3 dc) in corner; sl st in ch-4 sp, ch 1, *(sc, ch 3, sc) in ch-4 sp.
func (w *work) led(p *ins.Place) bool {
	k := w.cur.i - 1
	if !p.Unit.Space || p.Unit.Between || w.travel == 0 || w.cur.pos != w.travel || k < 0 || w.cur.off > 0 || strings.Contains(strings.ToLower(w.x.Quote(p.At)), "next") {
		return false
	}
	r, size := w.cur.f.runs[k], w.spaceSize(p.Unit)
	return r.space() && (size <= 0 || size == r.chain) && !slices.ContainsFunc(w.out.runs, func(r run) bool { return !r.tch })
}

// inOne reports whether tall stitches together go into one stitch: dc3tog in next st is a bobble, and behind chains of a round, ch 2,
// dc2tog in next st, two are a cluster.
func (w *work) inOne(kind *stitch.Stitch, uses int) bool {
	if uses < 2 || !kind.Together || kind.Base == "sc" || kind.Base == "hdc" {
		return false
	}
	k := len(w.out.runs) - 1
	return uses > 2 || w.round && k > 0 && w.out.runs[k].space()
}

// eachFoot works n into each of the next p.N places.
func (w *work) eachFoot(n ins.Item, p *ins.Place) {
	k := max(w.n(p.N), 0)
	kind, makes, uses := w.resolve(n)
	_, _, _, group := w.called(n)
	if group {
		kind, uses = nil, 1
	}
	if p.Unit.Space && w.from.ring && !w.from.spaces(0) { // the loop of a first round is its ring
		w.place1(n, &ins.Place{Kind: ins.InRing, N: ins.N(1), At: p.At}, 0)
		return
	}
	p = w.cornerSpace(p)
	switch {
	case w.led(p):
		w.foot(n, w.feet(w.lastPos))
	case w.crosses(n, p, k):
	case p.Unit.Word == "down" && !w.nextIs(p.Unit.Stitch):
		w.doubtful("stitches go into a row further down")
		w.free, w.pinned = true, true
		w.emit(run{kind: kind, n: k * makes * w.amount(n)}, nil, n)
	case p.Unit.Word == "held" && w.from.stitches() == 0, p.Unit.Word == "unworked" && w.cur.left == 0, p.Unit.Word == "skipped" && w.passed == 0: // of a row further down
		if p.Unit.Word == "skipped" {
			w.skippedBelow()
		}
		w.together(n, p.At)
		w.free, w.pinned = true, true
		w.emit(run{kind: kind, n: k * makes * w.amount(n)}, nil, n)
	case p.Unit.Space && p.Unit.Within && p.Unit.Word != "gap":
		w.toGroupOfSpace(w.spaceSize(p.Unit))
		if w.feetIn(n, k, func() bool { return w.space(w.spaceSize(p.Unit), p.At) }); k == 1 {
			w.cur.passGroup()
		}
	case p.Unit.Space:
		w.feetIn(n, k, func() bool { return w.spaceOrGap(p) })
	case p.Unit.Group != nil || p.Unit.Stretch:
		w.feetIn(n, k, func() bool { return w.nextGroup(p.Unit.Group, p.At) })
	case k == 1 && w.inOne(kind, uses):
		w.spaced = false
		if w.use(1, p.Unit.Stitch, p.At) == 1 {
			w.emit(run{kind: kind, n: w.amount(n) * makes, one: true}, w.feet(w.lastPos), n)
		}
	case uses > 1:
		w.overNext(n, p, k)
	default:
		w.spaced = false
		per := w.amount(n)
		w.leadOver(p.Unit.Stitch, per)
		if group || w.rec != nil || per*makes >= 3 || kind.ID == "picot" {
			w.feetIn(n, k, func() bool { return w.take(p, 1) > 0 })
			return
		}
		w.emit(run{kind: kind, n: w.take(p, k) * per * makes}, nil, n)
	}
}

// skippedBelow notes that stitches go into some that an earlier row skipped: where those stand is not known.
func (w *work) skippedBelow() {
	w.blind = true
	w.doubtful("stitches go into some that an earlier row skipped")
}

// doubtful notes in the graph why it is not sure where the row stands.
func (w *work) doubtful(why string) {
	if w.g != nil && w.quiet == 0 {
		w.g.doubt = why
	}
}

// nextIs reports whether the next stitch of the row below is of that kind.
func (w *work) nextIs(kind *stitch.Stitch) bool {
	c := w.cur
	c.passSpaces()
	r := c.run()
	return r != nil && r.kind != nil && alike(kind, r.kind)
}

// toGroupOfSpace goes on to the next group that has a space of that size, past spaces between groups; it stays if there is none.
func (w *work) toGroupOfSpace(size int) {
	c := w.cur
	for c.i < len(c.f.runs) {
		if r := c.run(); r.space() && r.group > 0 && c.off == 0 && (size <= 0 || r.called(size)) {
			w.took(c)
			return
		} else if r.space() {
			c.step(r.chain - c.off)
		} else {
			c.step(r.n - c.off)
		}
	}
}

// crosses works n into k stitches that were skipped before, over those behind them; it reports false if that is not meant.
func (w *work) crosses(n ins.Item, p *ins.Place, k int) bool {
	if p.Unit.Word != "skipped" || w.passed < k || k == 0 {
		return false
	}
	for i := range k {
		w.foot(n, w.feet(w.passedAt+i))
	}
	w.passed, w.passedAt = w.passed-k, w.passedAt+k
	return true
}

// betweenTwoGroups reports whether the work stands behind one group and before another.
func (w *work) betweenTwoGroups() bool {
	c := w.cur
	next := c.run()
	return c.off == 0 && c.i > 0 && next != nil && c.f.runs[c.i-1].group > 0 && next.group > 0 && next.group != c.f.runs[c.i-1].group
}

// spaceOrGap goes on to the next chain space, or to the next gap between stitches where those are meant.
func (w *work) spaceOrGap(p *ins.Place) bool {
	size := w.spaceSize(p.Unit)
	if p.Unit.Word == "gap" && p.Unit.Within && w.betweenTwoGroups() { // sp before next shell
		return w.took(w.cur)
	}
	return (p.Unit.Between || w.gaps && size == 0) && (w.betweenGroups() || !(w.beganThere() && w.from.groups > 1) && w.gap(p.Unit.Word, p.At)) || w.space(size, p.At)
}

// feetIn works n k times, each time where next has gone to, as long as it finds a place.
func (w *work) feetIn(n ins.Item, k int, next func() bool) {
	for range k {
		if w.steps++; w.steps > maxSteps || !next() {
			return
		}
		w.foot(n, w.feet(w.lastPos))
	}
}

// take goes over the next k chains or stitches that p names, and says how many there were.
func (w *work) take(p *ins.Place, k int) int {
	if p.Unit.Chain {
		return w.chains(k, p.At)
	}
	return w.use(k, p.Unit.Stitch, p.At)
}

// overNext works stitches together over the next k: sc2tog over next 2 sts.
func (w *work) overNext(n ins.Item, p *ins.Place, k int) {
	kind, makes, uses := w.resolve(n)
	times := max(k/uses, 1)
	if k%uses != 0 && k > 1 {
		w.tell("rows/over-use", finding.Warning, p.At, kind.Abbr(w.x.TermsAt(p.At.Line))+" takes %s stitches, not %s", "say over the next %s stitches", uses, k, uses*times)
	}
	w.spaced = false
	for range times * max(w.amount(n), 1) {
		if w.steps++; w.steps > maxSteps {
			return
		}
		from := w.feetFrom()
		if w.use(uses, p.Unit.Stitch, p.At) < uses {
			return
		}
		w.emit(run{kind: kind, n: makes}, w.feetTo(from), n)
	}
}

// lastArch reports whether n is the tall stitch into the first of a round that stands for the last chains of its last arch:
// ch 2, dc in first sc; ch 2, dc in 4th ch of ch-5.
func (w *work) lastArch(n *ins.Stitch, tail []ins.Item) bool {
	k := len(w.out.runs) - 1
	if !w.round || k < 1 || !w.out.runs[k].space() && !(n.Kind != nil && w.cur.left <= 2 && w.out.hasChains(0) && w.out.runs[k].kind != nil && (w.out.runs[k].kind.ID == "sc" || w.spaced)) || w.cur.atStart() && !w.from.ring && len(w.from.runs) > 0 || !endOfRow(tail) || n.Kind == nil || n.Kind.Height < 1 || n.Kind.Height == 1 && !w.out.runs[k].space() {
		return false
	}
	if len(n.Places) != 1 || w.count(n.N) != 1 || n.Places[0].Unit.Space || n.Places[0].N.By != nil || n.Places[0].N.All != 1 {
		return false
	}
	if p := n.Places[0]; p.Kind != ins.InFirst && (p.Kind != ins.InTop || w.startChain < 3 && !w.out.runs[0].tch) && !w.closesBelow(&p) {
		return false
	}
	w.closedRound = true
	w.cur.toEnd()
	w.standsForChains(&w.out.runs[k], n.Kind)
	w.out.midArch = true
	if w.g != nil && w.quiet == 0 {
		w.g.closeArch(n.Kind)
	}
	return true
}

// standsForChains counts a tall stitch as chains of the last arch, or as all of it.
func (w *work) standsForChains(last *run, kind *stitch.Stitch) {
	switch {
	case !last.space(): // all of the last arch
		w.out.add(run{chain: 1})
		if w.doubtful(aloneClosed); w.g != nil && w.quiet == 0 {
			w.g.put(GraphStitch{Chain: 1, Counts: true})
		}
	case w.g == nil: // a stitch as tall as chains stands for these
		last.chain += chainsOf(kind)
	}
}

// aloneClosed is why a round is not drawn that ends in a stitch which stands for the whole of its last space.
const aloneClosed = "its last space is a stitch alone"

// chainsOf is how many chains are as tall as a stitch (common practice): 1 a single crochet, 2 a half double, 3 a double, 4 a treble.
func chainsOf(kind *stitch.Stitch) int {
	if kind.Height <= 1 {
		return 1
	}
	return int(kind.Height) + 1
}

// leadsToBeginning reports whether the last arch of a round lies over what is left, and leads to the place of that kind with
// which it began.
func (w *work) leadsToBeginning(k ins.PlaceKind, u ins.Unit) bool {
	switch {
	case len(w.out.runs) == 0:
		return false
	case k == ins.InFirst:
		return !u.Chain && !u.Space && w.out.runs[len(w.out.runs)-1].space() && !w.cur.atStart() && (w.spaced || w.lastIsArch())
	case k == ins.InTop && w.round && w.startChain > 0:
		return w.spaced && !w.spaceBefore(0, 0) || w.cur.left == 1 && w.lastIsArch()
	}
	return false
}

// closesBelow reports whether a place is the tall stitch that closed the last arch of the round below: in dc of 2nd rnd.
func (w *work) closesBelow(p *ins.Place) bool {
	u := p.Unit.Stitch
	return p.Kind == ins.InNext && w.from.midArch && u != nil && u.Height > 1 && !w.from.holds(u)
}

// closing reports whether n is the slip stitch that joins a round to its beginning.
func (w *work) closing(n *ins.Stitch, tail []ins.Item) bool {
	if n.Kind == nil || n.Kind.ID != "slst" || len(n.Places) != 1 || len(w.out.runs) == 0 || !w.round && !w.pinned && !w.under && (n.Places[0].Kind != ins.InFirst || w.cur.left > 0) {
		return false
	}
	k, u := n.Places[0].Kind, n.Places[0].Unit
	arch := w.leadsToBeginning(k, u)
	last := w.round && w.spaced && k == ins.InFirst && w.cur.left <= 2 && !w.spaceBefore(0, 0) // it was worked in its spaces, and none is left
	left := w.cur.left - w.around
	top := w.round && k == ins.InTop && onlyEnds(tail)
	if left > 0 && !w.pinned && !arch && !last && !top && !(w.under && left == 1) {
		return false
	}
	w.leave = w.leave || top && left > 0 && left == w.upTo // rep from * until 2 sts are left, sl st to top of ch 2
	if !w.atBeginning(&n.Places[0]) || k == ins.InNext && goesInSame(tail) {
		return false
	}
	w.closedRound = true
	w.joins()
	return true
}

// atBeginning reports whether a slip stitch there goes into what the round begins with.
func (w *work) atBeginning(p *ins.Place) bool {
	switch u := p.Unit; p.Kind {
	case ins.InFirst, ins.InTop:
		return true
	case ins.InEvery:
		return u.Chain
	case ins.InNext:
		return w.cur.left == 0 && (u.Any() || u.Stitch != nil && w.round && w.count(p.N) == 1)
	}
	return false
}

// joins tells the graph that the round is joined.
func (w *work) joins() {
	if w.g != nil && w.quiet == 0 && w.round {
		w.g.cur.Joined, w.g.cur.Spiral = true, false
	}
}
