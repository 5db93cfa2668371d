package work

import (
	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
	"slices"
)

// kind is the stitch in which the row is worked, for words that name none.
func (w *work) kind() *stitch.Stitch {
	if k := w.out.main(); k != nil && k.Plain() != nil {
		return k.Plain()
	}
	if k := w.from.main(); k != nil && k.Plain() != nil && k != chainStitch() {
		return k.Plain()
	}
	return stitch.ByID("sc")
}

// chain works ch n: at the beginning a turning chain, at the end one for the next
// row, elsewhere a chain space.
func (w *work) chain(n *ins.Chain, tail []ins.Item) {
	k := w.n(n.N)
	if k <= 0 {
		return
	}
	if !w.began && !w.tchAt && w.cur.pos == w.travel {
		if startsPicot(tail) || w.again && (k >= 3 || w.round && len(tail) > 0 && is[*ins.Skip](tail[0])) || w.round && k >= 3 && n.Count.How == ins.Unsaid && slipped(tail) { // the chain of a loop
			w.began = true
			w.emit(run{chain: k}, nil, n)
			return
		}
		w.start(n, tail)
		return
	}
	if endOfRow(tail) && w.forNext(n, k, tail) {
		w.next = n
		return
	}
	w.takeTurning()
	w.emit(run{chain: k}, nil, n)
}

// forNext reports whether a chain at the end of a row is that of the next one.
func (w *work) forNext(n *ins.Chain, k int, tail []ins.Item) bool {
	if slices.ContainsFunc(tail, is[*ins.Turn]) || w.cur.left == 0 && !w.round {
		return true
	}
	return w.round && !w.again && (w.cur.left == 0 || w.from.ring && n == w.leadsOn) && len(tail) == 0 && k <= 4 && (w.startChain == 0 && w.joined == nil || w.closedRound)
}

// startsPicot reports whether a slip stitch into the chain just made follows.
func startsPicot(tail []ins.Item) bool {
	if len(tail) == 0 {
		return false
	}
	s, ok := tail[0].(*ins.Stitch)
	return ok && s.Kind != nil && s.Kind.ID == "slst" && len(s.Places) == 1 && s.Places[0].Kind == ins.FromHook
}

// slipped reports whether a slip stitch into a place of the row below follows at once.
func slipped(tail []ins.Item) bool {
	if len(tail) == 0 {
		return false
	}
	s, ok := tail[0].(*ins.Stitch)
	return ok && s.Kind != nil && s.Kind.ID == "slst" && len(s.Places) == 1 && s.Places[0].Kind != ins.FromHook && s.Places[0].Kind != ins.InSame && s.Places[0].Kind != ins.InRing
}

func endOfRow(tail []ins.Item) bool {
	for _, m := range tail {
		switch m.(type) {
		case *ins.Turn, *ins.Nothing, *ins.Fasten, *ins.Measure, *ins.Marker:
		default:
			return false
		}
	}
	return true
}

// stands reports whether the chain at the beginning of a row counts. It does not where it is one chain, and a round of which no count is
// stated is joined to its first stitch: ch 1, … join to first sc.
func (w *work) stands(n *ins.Chain, k int) bool {
	besides := k == 1 && !w.counted && n.Count.How == ins.Unsaid && w.endsIn != nil && w.endsIn.First
	return !besides && w.counts(n.Count, k, false, n.At) == ins.CountsAsStitch
}

// start works the chain at the beginning of a row: it counts or not, as the text
// says; where nothing says, as the reading takes it. Tail is the row behind it.
func (w *work) start(n *ins.Chain, tail []ins.Item) {
	k := w.n(n.N)
	// a round that ends in the 3rd of 4 chains says that the chain is a stitch of 3 and a space of 1
	top := 0
	if j := w.endsIn; j != nil && n.Count.How == ins.Unsaid {
		if of := w.count(j.Chain); of == 0 || of == k {
			top = w.count(j.Nth)
		}
	}
	if top >= k || top < 2 {
		top = 0
	}
	n = beforeGaps(beforeMesh(n, k, tail), k, tail)
	if top == 0 && !w.stands(n, k) {
		w.freeChain = k
		if w.g != nil && w.quiet == 0 {
			w.g.uncounted(k)
		}
		return
	}
	kind, beside := n.Count.As, 0
	if kind == nil {
		kind, beside = w.standsAs(k, tail)
	}
	if w.g != nil && w.quiet == 0 {
		_, said := w.x.Turning[k]
		_, all := w.x.Turning[0]
		w.g.oneChain = k == 1 && w.round && n.Count.How == ins.Unsaid && !said && !all
	}
	w.tchAt = true
	beyond := max(w.spaceBeside(n, k), beside)
	if n.Count.How == ins.Unsaid && beyond > 0 && beyond == w.x.TurnSpace[k] {
		kind = byTurning(k - beyond)
	}
	if top > 0 && n.Count.Space.By == nil && beyond != k-top {
		kind, beyond = byTurning(top), k-top
	}
	w.beyond = beyond
	w.out.add(run{kind: kind, n: 1, tch: true, tall: k})
	w.startChain, w.startSpace = k, w.count(n.Count.Space)
	w.turning(kind, k-beyond, beyond, n)
	w.began = true
}

// standsAs is the stitch that k chains count as, and what of them is a space beside it: of four, one where each stitch behind them is a double
// crochet of its own with one chain between two.
func (w *work) standsAs(k int, tail []ins.Item) (kind *stitch.Stitch, beside int) {
	kind = byTurning(k)
	if k != 4 || works(tail, kind) || !works(tail, byTurning(3)) {
		return kind, 0
	}
	kind = byTurning(3)
	if meshed, chain := w.meshed(tail, kind); w.round && meshed && chain && !is[*ins.Chain](tail[0]) {
		beside = 1
	}
	return kind, beside
}

// meshed reports whether all stitches of a list are single ones of that kind, and whether single chains stand among them.
func (w *work) meshed(list []ins.Item, kind *stitch.Stitch) (single, chain bool) {
	for _, n := range list {
		switch n := n.(type) {
		case *ins.Stitch:
			if n.Kind == kind && (w.count(n.N) != 1 || len(n.Places) == 1 && w.count(n.Places[0].N) > 1) || n.Kind != kind && (n.Kind == nil || n.Kind.ID != "slst") {
				return false, false
			}
		case *ins.Chain:
			if w.count(n.N) > 1 {
				return false, false
			}
			chain = true
		case *ins.Repeat:
			one, more := w.meshed(n.Body, kind)
			if chain = chain || more; !one {
				return false, false
			}
		}
	}
	return true, chain
}

// spaceBeside is how many of k chains that count as a stitch are a space beside it.
func (w *work) spaceBeside(n *ins.Chain, k int) int {
	beyond := w.count(n.Count.Space)
	switch {
	case beyond > 0:
		return beyond
	case n.Count.How == ins.Unsaid && w.x.TurnSpace[k] > 0:
		return w.x.TurnSpace[k]
	case n.Count.As == nil && n.Count.Space.By == nil && k > 4:
		return k - 3
	}
	return 0
}

// counts is what a chain of k counts as: as it is said there, or by the notes, or as this
// reading of the text takes it.
func (w *work) counts(c ins.Counting, k int, hook bool, on ins.Span) ins.Counts {
	if c.How != ins.Unsaid {
		return c.How
	}
	if v, ok := w.x.Turning[k]; ok {
		if at, by := w.x.ByRow[k]; by && (hook || on.Line < at) && w.pick.unlike() {
			return ins.CountsAsStitch + ins.CountsNot - v
		}
		return v
	}
	if v, ok := w.x.Turning[0]; ok {
		return v
	}
	return w.pick.chain(k, hook, on)
}

// turning records a chain that counts as a stitch, and makes the space of the chains
// beyond it.
func (w *work) turning(kind *stitch.Stitch, chain, beyond int, by ins.Item) {
	if w.rec != nil && w.quiet == 0 {
		var feet []int
		if w.travel > 0 { // it stands where the slip stitches led
			feet = w.feet(w.lastPos)
			w.origin = feet
		}
		w.rec(kind, 1, max(chain, 1), feet, by)
		if beyond > 0 {
			w.rec(nil, 0, beyond, nil, by)
		}
	}
	if beyond > 0 {
		w.out.add(run{chain: beyond})
	}
}

// works reports whether a stitch of that kind is among instructions.
func works(list []ins.Item, kind *stitch.Stitch) bool {
	return slices.ContainsFunc(list, func(n ins.Item) bool {
		switch n := n.(type) {
		case *ins.Stitch:
			return n.Kind == kind
		case *ins.Repeat:
			return works(n.Body, kind)
		}
		return false
	})
}

// byTurning is the stitch as tall as a chain of n (common practice).
func byTurning(n int) *stitch.Stitch {
	switch {
	case n <= 1:
		return stitch.ByID("sc")
	case n == 2:
		return stitch.ByID("hdc")
	case n == 4:
		return stitch.ByID("tr")
	}
	return stitch.ByID("dc")
}

// use takes k stitches of the row below, passing chain spaces; it tells if
// there are fewer, or if they are not of the kind that is named.
func (w *work) use(k int, kind *stitch.Stitch, at ins.Span) int {
	w.takeTurning()
	w.began = true
	got := 0
	told := false
	for got < k {
		w.cur.passSpaces()
		r := w.cur.run()
		if r == nil && w.goesOn(got) {
			continue
		}
		if r == nil {
			break
		}
		if kind != nil && !told && !alike(kind, r.kind) && !r.base {
			if w.chainsOver(kind) {
				continue
			}
			if told = true; w.otherKind(kind, r.kind, at) {
				continue
			}
		}
		m := min(k-got, r.n-w.cur.off)
		w.cur.step(m)
		got += m
	}
	w.lastPos = w.cur.pos - 1
	if got < k && w.quiet > 0 && len(w.from.runs) == 0 { // nothing is known of what there is
		return k
	}
	if got < k && w.from.ring { // they go into the ring, and not into its chains
		w.pinned = true
		return k
	}
	if got < k {
		w.tooMany(k-got, kind, at)
	}
	return got
}

// tooMany tells of stitches that the row below does not have, gap of them, of that kind if one is named.
func (w *work) tooMany(gap int, kind *stitch.Stitch, at ins.Span) {
	have := w.from.stitches()
	if have == 0 && w.quiet == 0 {
		w.g.unfounded()
	}
	w.tellGap(gap, have, "rows/over-use", at, "this needs %s stitches more than the row below has | %s stitches in the row below | at least %s stitches",
		"use %s fewer here, or make them in the row below", gap, have, have+gap, gap)
	w.doubted(kind != nil && kind != chainStitch() && w.from.base()) // in next ch and next sc: in those of the row itself
}

// doubted says of what was found last, if it is so, that where it is worked is not sure.
func (w *work) doubted(so bool) {
	if k := len(w.found) - 1; so && k >= 0 && w.found[k].why == none {
		w.found[k].why = loosely
	}
}

// saysTurning reports whether the text says of some chain that begins a row whether it counts.
func (w *work) saysTurning() bool { return len(w.x.Turning) > 0 }

// goesOn reports whether a round that has come to its end, got stitches into an instruction, has somewhere to go.
func (w *work) goesOn(got int) bool { return w.comesAround() || got == 0 && w.goesBack() }

// goesBack goes on along the other side of a foundation chain where a round has worked several stitches into its last
// place and there is nowhere else to go: the words that say so are many.
func (w *work) goesBack() bool {
	n, _ := w.maker.(*ins.Stitch)
	if w.under || !w.round || w.cur.left > 0 || n == nil || len(n.Places) == 0 || n.N.At(0) < 2 || n.N.At(0) < 3 && n.Places[0].Kind != ins.InLast {
		return false
	}
	w.otherSide()
	return w.under
}

// comesAround gives a round that began behind slip stitches the place that it began in once more, at its very end; it
// reports false if that is none, or was given.
func (w *work) comesAround() bool {
	if !w.round || w.travel == 0 || len(w.from.runs) == 0 || w.closedUp {
		return false
	}
	c := over(w.from)
	for c.i < len(c.f.runs) && c.pos+c.run().elements() < w.travel {
		c.step(max(c.run().n, c.run().chain))
	}
	r := c.run()
	if r == nil || r.space() {
		return false
	}
	f, first := *w.cur.f, *r
	first.n = 1
	f.runs = append(slices.Clip(f.runs), first)
	w.closedUp = true
	w.around++
	w.cur.f = &f
	w.cur.left++
	return true
}

// otherKind tells that the next stitch, of the kind there, is not of the kind that is named; it reports true if such a one stands
// elsewhere in the row: where is meant is not sure.
func (w *work) otherKind(kind, there *stitch.Stitch, at ins.Span) bool {
	if w.from.plain || w.from.holds(kind) {
		w.unsure()
		return true
	}
	w.tell("rows/kind", finding.Warning, at, "the next stitch is "+article(there, w.x.TermsAt(at.Line))+", not "+article(kind, w.x.TermsAt(at.Line)), "name the stitch that is there, or skip to the one you mean")
	return false
}

// chainsOver passes the stitch in between that holds two arches of the row below, where a chain leads over it to the next stitch of
// that kind: tr in last tr, * ch 5, tr in next tr; it reports false if none is there.
func (w *work) chainsOver(kind *stitch.Stitch) bool {
	k := len(w.out.runs) - 1
	if k < 0 || !w.out.runs[k].space() || !w.cur.anchor() {
		return false
	}
	c := w.cur
	c.step(1)
	c.passSpaces()
	if r := c.run(); r == nil || r.n < 2 || !alike(kind, r.kind) {
		return false
	}
	w.cur.step(1)
	return true
}

// mostLed is how many stitches a chain or a group leads over at most without a word.
const mostLed = 8

// leadOver passes stitches of other kinds up to the next of the one that is named, where a chain leads over them, or a group of n
// stitches spreads over them: ch 2, dc in next tr; sc in next dc, 5 dc in next sc.
func (w *work) leadOver(kind *stitch.Stitch, n int) {
	k := len(w.out.runs)
	if kind == nil || kind.Craft != stitch.Crochet || w.from.plain || k == 0 || n < 3 && !w.out.runs[k-1].space() {
		return
	}
	w.takeTurning()
	c := w.cur
	for passed := 0; passed <= mostLed; {
		c.passSpaces()
		r := c.run()
		switch {
		case r == nil, r.base:
			return
		case alike(kind, r.kind):
			if passed > 1 { // one between two arches is passed by chainsOver
				w.ledOver, w.cur = true, c
			}
			return
		}
		passed += r.n - c.off
		c.step(r.n - c.off)
	}
}

// doubtLed makes a row vague that passed stitches without a word and does not fit.
func (w *work) doubtLed() { w.vague = w.vague || w.ledOver && uses(w.found) }

func article(s *stitch.Stitch, t stitch.Terms) string {
	if s == nil {
		return "another"
	}
	return s.Abbr(t)
}

// unsure notes that where a stitch is worked is not sure; it reports false in a trial, which it ends.
func (w *work) unsure() bool {
	if w.quiet > 0 {
		w.missed++
		return false
	}
	w.vague = true
	w.blind = w.blind || w.from.plain
	return true
}

// holds reports whether a stitch of that kind stands in the row.
func (f *fabric) holds(kind *stitch.Stitch) bool {
	for i := range f.runs {
		if r := &f.runs[i]; !r.space() && r.kind != nil && alike(kind, r.kind) {
			return true
		}
	}
	return false
}

// spaces reports whether a chain space of that size, or of any, stands in the row.
func (f *fabric) spaces(size int) bool {
	for i := range f.runs {
		if f.runs[i].space() && f.sized(i, size) {
			return true
		}
	}
	return false
}

// sized reports whether the i-th run, a space, may be called one of so many chains: 0 is any. The one beside a turning chain
// is called by all chains of that too.
func (f *fabric) sized(i, size int) bool {
	chains := f.runs[i].chain
	if size <= 0 || f.runs[i].called(size) {
		return true
	}
	return slices.ContainsFunc([]int{i - 1, i + 1}, func(k int) bool {
		return k >= 0 && k < len(f.runs) && f.runs[k].tch && f.runs[k].tall == size && f.runs[k].standsFor(size-chains)
	})
}

// standsFor reports whether so many chains, or one fewer than is usual, may be the stitch that a turning chain counts as.
func (r *run) standsFor(chains int) bool {
	return chains > 0 && (r.kind == nil || chains >= r.kind.Turn-1)
}

// space goes on to the next chain space of that size and takes it.
func (w *work) space(size int, at ins.Span) bool {
	w.takeTurning()
	first := w.again && !w.began && w.round && w.travel == 0 && w.cur.atStart()
	w.began = true
	c := w.cur
	for c.i < len(c.f.runs) {
		r := c.run()
		if r.space() && c.f.sized(c.i, size) && (c.off == 0 || c.i == w.cur.i && w.travel > 0) { // slip stitches may lead into it
			passed := c.i
			c.step(r.chain - c.off)
			w.cur = c
			w.spaced = true
			w.lastPos = c.pos - 1
			if first {
				w.comesLast(passed)
			}
			return true
		}
		if r.space() {
			c.i, c.off = c.i+1, 0
			c.pos++
			continue
		}
		c.step(r.n - c.off)
	}
	if w.from.plain || w.from.spaces(size) { // which is meant is not sure
		if w.g != nil && w.quiet == 0 {
			w.g.doubt = "it is not clear which space is meant"
		}
		return w.unsure() // it is worked somewhere
	}
	if w.besideChain(size) {
		w.blind = true
		return w.unsure()
	}
	if size > 0 {
		w.tell("rows/no-space", finding.Warning, at, "there is no ch-%s space left to work into", "make the space in the row below, or name the one that is there", size)
	} else {
		w.tell("rows/no-space", finding.Warning, at, "there is no chain space left to work into", "make the space in the row below, or take this out")
		w.doubted(!slices.ContainsFunc(w.from.runs, run.space)) // the gap between stitches is called so
	}
	return false
}

// besideChain reports whether a row that begins with chains added to it means the chain of that size at the edge of the row below:
// the block of a square that grows from its corner.
func (w *work) besideChain(size int) bool {
	return size > 2 && !w.round && len(w.from.runs) > 1 && w.from.runs[0].base && slices.ContainsFunc(w.from.runs, func(r run) bool { return r.tch && r.tall == size })
}

// betweenGroups goes on to where one group ends and another begins, or to the chains between them; it
// reports false if the row below has no groups.
func (w *work) betweenGroups() bool {
	c := w.cur
	for c.i < len(c.f.runs) {
		r := c.run()
		if c.step(r.n + r.chain - c.off); r.space() && r.group == 0 {
			if c.i > 1 && c.f.lone(c.i-2) != c.f.lone(c.i) { // beside it stands no group
				w.doubtful("it is not clear between which groups")
			}
			return w.took(c)
		}
		next := c.run()
		switch {
		case r.group == 0 && r.tch && next != nil: // it is a stitch of the group that follows
		case next == nil && r.group > 1 && !w.beganThere(), next != nil && !next.space() && next.group != r.group:
			return w.took(c)
		}
	}
	return false
}

// beganThere reports whether a round begins with a chain that is a stitch where the round before was joined: no gap is left there.
func (w *work) beganThere() bool {
	return w.round && w.travel == 0 && len(w.out.runs) > 0 && w.out.runs[0].tch
}

// lone reports whether the i-th run is one stitch without another beside it; i may lie behind the last one.
func (f *fabric) lone(i int) bool {
	r := &f.runs[i%len(f.runs)]
	return r.n == 1 && !r.space() && (i == 0 || i >= len(f.runs) || f.runs[i-1].space()) && (i+1 >= len(f.runs) || f.runs[i+1].space())
}

// took takes the space at which the cursor c has come.
func (w *work) took(c cursor) bool {
	w.takeTurning()
	w.cur, w.began, w.spaced = c, true, true
	w.lastPos = c.pos - 1
	return true
}
