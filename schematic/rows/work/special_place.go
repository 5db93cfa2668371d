package work

import (
	"slices"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
)

// first works into the first stitches: the one under a turning chain that counts
// too.
func (w *work) first(n ins.Item, p ins.Place) {
	if w.tchAt && w.cur.atStart() {
		w.tchAt = false
	}
	if !w.cur.atStart() && !w.again && w.travel == 0 && w.cur.pos > 0 && !p.Unit.Space {
		w.tell("rows/place", finding.Warning, p.At, "this is no longer the first stitch: %s are already used", "say next, or put it at the beginning of the row", w.cur.pos)
	}
	if p.Unit.Space && w.round && w.origin != nil && w.cur.left == 0 && w.began { // the one in which the round began
		w.foot(n, w.origin)
		return
	}
	if !w.eye(n, &p) {
		w.eachFoot(n, &p)
	}
}

// The chains that there are at most whose first one is the eye of a round, and the stitches that go into it at least.
const (
	mostEye     = 4
	fewestInEye = 4
)

// eye works all of a first round into the chain made first, of a few, which is its ring: ch 2, 6 sc in 1st ch.
func (w *work) eye(n ins.Item, p *ins.Place) bool {
	k := w.from.stitches()
	if !w.from.foundation() || len(w.from.runs) > 1 || k > mostEye || w.n(p.N) != 1 || w.amount(n) < fewestInEye || w.began {
		return false
	}
	if k > 2 { // those before it may count
		w.hook(n, *p, k)
		return true
	}
	w.pinned, w.free = true, true
	w.foot(n, w.feet(k-1))
	return true
}

// last works into the last stitches.
func (w *work) last(n ins.Item, p ins.Place) {
	w.takeTurning()
	k := max(w.n(p.N), 0)
	if w.round && !w.again && w.used() <= 1 && w.cur.left > k+1 { // of the round before: where it was joined
		w.blind = true
	}
	if p.Unit.Space || p.Unit.Group != nil || p.Unit.Stretch || p.Unit.Chain && w.cur.run() != nil && w.cur.run().space() {
		w.eachFoot(n, &p)
		return
	}
	w.reach(k+w.behindLast(p.Unit), p.At)
	p.Kind = ins.InNext
	w.eachFoot(n, &p)
}

// behindLast is 1 where the row below ends in a turning chain of another kind than the last stitch that is named, and what is worked goes
// on into it: shell in last sc, sc in 3rd ch of ch-5.
func (w *work) behindLast(u ins.Unit) int {
	k := len(w.from.runs) - 1
	if w.round || k < 1 || u.Stitch == nil || !w.from.runs[k].tch || w.from.runs[k].kind == nil || alike(u.Stitch, w.from.runs[k].kind) {
		return 0
	}
	for k--; k > 0 && w.from.runs[k].space(); k-- {
	}
	if w.from.runs[k].kind == nil || !alike(u.Stitch, w.from.runs[k].kind) || !slices.ContainsFunc(w.ahead, func(n ins.Item) bool {
		p := placesOf(n)
		return len(p) > 0 && p[0].Kind == ins.InTop
	}) {
		return 0
	}
	return 1
}

// mostSilent is how many stitches a row that goes into spaces may pass without a word before its last, for it to be followed.
const mostSilent = 4

// reach goes on to the last k stitches; what is passed must be what a space or a
// group leaves over.
func (w *work) reach(k int, at ins.Span) {
	over := w.cur.left - k
	if over <= 0 {
		return
	}
	last := len(w.out.runs) - 1
	led := last > 0 && w.out.runs[last].space() && over <= w.out.runs[last].chain // a chain leads over them
	if !led && (!w.spaced || w.spacesAhead(over)) {
		w.tell("rows/under-use", finding.Warning, at, "%s stitches are passed over before the last", "work or skip %s stitches before this", over, over)
	} else if over > mostSilent {
		w.vague = true
	}
	for over > 0 {
		w.cur.passSpaces()
		r := w.cur.run()
		if r == nil {
			return
		}
		m := min(over, r.n-w.cur.off)
		w.cur.step(m)
		over -= m
	}
	w.cur.passSpaces()
}

// spacesAhead reports whether a chain space stands within the next k stitches.
func (w *work) spacesAhead(k int) bool {
	c := w.cur
	for c.i < len(c.f.runs) && k > 0 {
		r := c.run()
		if r.space() {
			return true
		}
		m := min(k, r.n-c.off)
		c.step(m)
		k -= m
	}
	return false
}

// top works into the top of the turning chain: the last stitch of the row below.
func (w *work) top(n ins.Item, p ins.Place) {
	if st, ok := n.(*ins.Stitch); ok && w.from.ring && w.from.base() && st.Kind != nil && st.Kind.ID != "slst" { // the first chain of a ring, which is its middle
		w.ring(n, &p)
		return
	}
	if w.eye(n, &p) {
		return
	}
	w.takeTurning()
	w.together(n, p.At)
	found := len(w.found)
	w.reach(1, p.At)
	if st, ok := n.(*ins.Stitch); ok && len(w.found) > found { // a round may begin anywhere
		w.doubted(w.round && st.Kind != nil && st.Kind.ID == "slst")
	}
	w.cur.passSpaces()
	r := w.cur.run()
	switch {
	case r == nil && w.passed > 0 && w.passedAt+w.passed == w.cur.pos: // skip last tr, ch 3, tr in top of ch-4: what is passed is the chain itself
		w.passed--
		w.lastPos, w.spaced = w.cur.pos-1, false
		w.foot(n, w.feet(w.lastPos))
		return
	case r == nil && p.Start && w.round && w.began: // in join, where the round began
		w.foot(n, w.origin)
		return
	case r == nil:
		w.doubtful("a stitch has no place left")
		w.tell("rows/over-use", finding.Warning, p.At, "there is no stitch left: the turning chain below is already used, or does not count", "take this out, or say that the turning chain counts as a stitch")
		w.doubted(!w.saysTurning())
		return
	}
	if t := w.n(p.Unit.Size); t > 0 && r.tall > 0 && t != r.tall && t != w.startChain && !(r.hook && t == r.tall+1) { // sc in 5th ch from hook: the loop is called ch-5; that of its own row is meant, where it is to be worked again
		w.tell("rows/turning-chain", finding.Warning, p.At, "the row below began with ch %s, not ch %s", "say the top of ch-%s", r.tall, t, r.tall)
	}
	w.cur.step(1)
	w.lastPos = w.cur.pos - 1
	w.spaced = false
	w.foot(n, w.feet(w.lastPos))
}

// hook works into the kth chain from the hook; the chains before it count as a
// stitch or not, as the text says.
func (w *work) hook(n ins.Item, p ins.Place, k int) {
	w.tchAt = false
	if k < 1 {
		return
	}
	if len(w.from.runs) > 0 && !w.from.runs[0].base { // chains that are added in words of which the reading is not sure
		w.tell("rows/not-read", finding.Note, p.At, "not followed: there is no chain to work into; the stitches are not counted", "chain at the end of the row before")
		w.blind, w.quiet = true, w.quiet+1
		return
	}
	if len(w.from.runs) == 0 {
		w.tell("rows/no-chain", finding.Warning, p.At, "there is no foundation chain to work into", "chain first")
		return
	}
	if w.cur.left < k {
		w.tell("rows/over-use", finding.Warning, p.At, "the chain has only %s chains, not %s", "chain more, or work nearer to the hook", w.cur.left, k)
		return
	}
	skipped := k - 1
	var count ins.Counting
	over := 1
	if st, ok := n.(*ins.Stitch); ok {
		if count = st.Count; p.Of && st.Kind != nil && st.Kind.Together { // dc2tog in 3rd and 4th ch from hook
			over = min(st.Kind.Uses, w.cur.left-skipped)
		}
	}
	if over == 1 {
		w.together(n, p.At)
	}
	if t := w.n(count.Told); t > 0 && t != skipped && count.How != ins.Unsaid {
		w.tell("rows/turning-chain", finding.Warning, p.At, "%s chains are skipped, not %s", "say %s, or work into another chain", skipped, t, skipped)
	}
	c, block := count.How, w.x.Blocks && skipped > 1 && w.from.runs[0].n == k+2 // from corner to corner: the next row goes into its skipped chains
	switch {
	case c != ins.Unsaid || skipped < 2:
	case block && w.out.stitches() == 0:
		c = ins.CountsAsStitch
	default:
		c = w.counts(count, skipped, true, p.At)
	}
	w.began = true
	w.cur.step(skipped)
	if block {
		w.out.add(run{chain: skipped})
	}
	if c == ins.CountsAsStitch {
		w.skippedCount(n, count, skipped)
		w.setApart(block)
	}
	w.hooked = w.cur.pos
	var feet []int
	for range over {
		w.cur.step(1)
		w.lastPos = w.cur.pos - 1
		feet = append(feet, w.feet(w.lastPos)...)
	}
	w.foot(n, feet)
}

// setApart notes in the graph that the chains of a block, which stand for a stitch, are a space too.
func (w *work) setApart(block bool) {
	if block && w.g != nil && w.quiet == 0 {
		w.g.cur.Stitches[len(w.g.cur.Stitches)-1].apart = true
	}
}

// otherSide goes on along the other side of the foundation chain, from its last place back to the one in which
// the round began. Several stitches in the last place turn around it; one alone leaves it to be worked again.
func (w *work) otherSide() {
	from := w.from
	if !w.under && len(from.runs) > 0 && !from.runs[0].base { // it lies rows further down
		w.blind = true
	}
	if w.under || len(from.runs) != 1 || !from.runs[0].base || w.cur.left > 0 || w.cur.pos == 0 {
		return
	}
	n := w.cur.pos - w.hooked
	if turnsAround(w.maker) {
		n--
	}
	all := from.stitches()
	w.under, w.spaced = true, false
	w.from = &fabric{runs: []run{{kind: chainStitch(), n: n, base: true}}}
	w.cur = over(w.from)
	w.cur.pos = all
	if w.g != nil {
		w.g.turnAt(all, w.hooked+n-1)
	}
}

// turnsAround reports whether an instruction works several stitches into its last place.
func turnsAround(n ins.Item) bool {
	places := placesOf(n)
	if len(places) == 0 {
		return false
	}
	switch n := n.(type) {
	case *ins.Stitch:
		return n.N.At(0) > 1
	case *ins.Repeat:
		return len(n.Places) > 0
	}
	return false
}

// skippedCount makes the stitch, and the space beside it, that skipped chains count as.
func (w *work) skippedCount(n ins.Item, count ins.Counting, skipped int) {
	kind := count.As
	if kind == nil {
		if _, _, _, ok := w.called(n); ok {
			kind = byTurning(skipped)
		} else {
			kind, _, _ = w.resolve(n)
		}
	}
	w.out.add(run{kind: kind, n: 1, tch: true, tall: skipped, hook: true})
	beyond := w.count(count.Space)
	if beyond == 0 && (count.How == ins.Unsaid || count.Mesh) && kind.Turn > 0 && skipped > kind.Turn+1 { // the chains of the mesh below it, and its space
		beyond = max(w.spaceOfMesh(skipped-kind.Turn), 0)
	}
	up := skipped - beyond
	if beyond > 0 && kind.Turn > 0 { // the rest lies under the space
		up = min(up, kind.Turn)
	}
	w.turning(kind, up, beyond, n)
}

// spaceOfMesh is the chain space that over chains begin beside the turning chain: as many lie under it as
// it has.
func (w *work) spaceOfMesh(over int) int { return over / 2 }

// together tells a decrease of short stitches that is worked into one place.
func (w *work) together(by ins.Item, at ins.Span) {
	n, ok := by.(*ins.Stitch)
	if ok && n.Kind != nil && n.Kind.Together && n.Call == nil && (n.Kind.Base == "sc" || n.Kind.Base == "hdc") {
		w.tell("rows/together", finding.Warning, at, n.Kind.Abbr(w.x.TermsAt(at.Line))+" takes %s stitches, but here there is one place", "say over which stitches, or name another stitch", n.Kind.Uses)
	}
}

// centre works into a stitch of the next group: the one of a number, or the middle one. The first leaves those behind it.
func (w *work) centre(n ins.Item, p ins.Place) {
	before := w.cur
	if p.Unit.Group == nil && !w.again && w.cur.left == 1 && !w.groupAhead(nil) { // told behind the row that has it: sc across, making 3 sc in center sc of the group
		w.doubted(true)
		w.eachFoot(n, &ins.Place{Kind: ins.InNext, N: ins.N(1), At: p.At})
		return
	}
	if !w.nextGroup(p.Unit.Group, p.At) {
		return
	}
	if k := w.n(p.N); k > 0 {
		c := w.cur
		if at, ok := before.nthOf(k, c); ok {
			if w.lastPos = at.pos - 1; k == 1 {
				w.cur = at
			}
		}
	}
	w.foot(n, w.feet(w.lastPos))
}

// nthOf is the cursor behind the n-th stitch of the group that ends at to; false if it has fewer.
func (c cursor) nthOf(n int, to cursor) (cursor, bool) {
	if to.i == 0 || c.f.runs[to.i-1].group == 0 { // no group is known
		return c, false
	}
	id := c.f.runs[to.i-1].group
	c.passGroup()
	for c.i < to.i && c.run().group != id {
		c.step(max(c.run().n, c.run().chain) - c.off)
	}
	for c.i < to.i {
		r := c.run()
		switch {
		case r.space():
			c.step(r.chain)
		case n > r.n:
			n -= r.n
			c.step(r.n)
		default:
			c.step(n)
			return c, true
		}
	}
	return c, false
}
