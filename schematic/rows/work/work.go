// Package work works written rows: instructions and the row below in, a row out, and what
// does not fit between them; and the graph of stitches that charts are drawn from.
package work

import (
	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
	"slices"
)

// The bounds of the work of one row, and of a whole text in one size.
const (
	maxSteps    = 40000
	maxStitches = 1000000
	maxWork     = 2000000
)

// task is what a row is worked from: all that is fixed before it begins.
type task struct {
	x       *ins.Text
	size    int
	from    *fabric
	round   bool
	rows    int // rows of the edge along which stitches are worked, 0: not known
	carry   *ins.Chain
	counted bool   // the row states a count
	pick    *picks // what the text leaves open, as this reading takes it
	rec     recorder
	trace   *tracer // nil: nobody asks how the row is read
	g       *Graph
}

// recorder takes each stitch as it is made: of a kind, n of them or a chain, on its feet.
type recorder func(kind *stitch.Stitch, n, chain int, feet []int, by ins.Item)

// place is where in the row the work stands.
type place struct {
	heldTo   int // how many of the row below were used when the last of them were put on a holder
	filled   int // how many gaps of the row below were closed
	offAt    int // how many were made before the last that was bound off
	cur      cursor
	out      *fabric
	passed   int   // stitches that were skipped last, and not worked yet
	passedAt int   // where they begin
	spaced   bool  // the last place was a chain space: stitches may be passed
	tchAt    bool  // a counting chain stands over the first stitch, not yet taken
	began    bool  // something has been made or used
	lastPos  int   // element last worked into, for 'same'
	origin   []int // the place in which the row began, in a graph; nil: not known
	next     *ins.Chain
	psso     int
	marks    int        // markers of the row below that are passed
	missed   int        // what a trial would have told
	again    bool       // within a repeat: the first stitch is that of each time
	hooked   int        // place of the foundation that the row begins in, counted from the hook
	maker    ins.Item   // the instruction that made stitches last
	gaps     bool       // it is worked into the gaps between stitches
	under    bool       // it goes along the other side of its foundation
	ahead    []ins.Item // what stands behind the stitch that is worked as far as the row goes
	reached  bool       // a marker was worked up to, and not yet met
	ended    int        // instructions that follow and only say how a repeat ends
	upTo     int        // stitches at the row's end that a repeat went up to
	closedUp bool       // the place that it began in stands at its end too
	own      int        // chains left of one within the row along which stitches go back
	around   int        // stitches that a round passed at its beginning, and comes to at its end
}

// work works one row in one size.
type work struct {
	task
	place
	found  []raw
	quiet  int // > 0: a trial, whose findings are counted only
	travel int // stitches passed by slip stitches at the beginning
	steps  int
	made   int // stitches made in this row, trials too

	turned      bool
	closedRound bool       // a join closed it
	leadsOn     *ins.Chain // behind its join, for the next round
	leave       bool
	closed      bool           // bound off
	edge        bool           // worked along row ends
	free        bool           // what is left over is not told
	pinned      bool           // all stitches were worked into a ring or along an edge
	vague       bool           // where a stitch is worked is not sure
	ledOver     bool           // stitches were passed without a word: so is it, if the row does not fit
	blind       bool           // the count does not follow from the words
	within      *stitch.Stitch // of the row that the next instruction shapes
	perRow      int            // stitches in each row of an edge of which the rows are not known

	beyond                 int       // chains beyond the stitch that the first chain counts as
	joined                 *ins.Join // the join at the row's end, if it has one
	endsIn                 *ins.Join // what it ends in: the join, or a stitch into the chain that began it
	freeChain              int       // the chain that begins the row and is no stitch of it
	startChain, startSpace int       // the chain that begins the row, and what of it is a space
	per                    int       // stitches that the first repeat to an end uses
	perAt                  ins.Span
}

// body works the instructions of a row.
func (w *work) body(list []ins.Item) {
	for _, n := range list {
		if j, ok := n.(*ins.Join); ok {
			w.joined = j
		}
	}
	w.endsIn = w.joined
	if p := lastPlace(list); w.endsIn == nil && w.round && p.Kind == ins.InTop {
		w.endsIn = &ins.Join{Chain: p.Unit.Size, Nth: ins.N(p.Nth)}
	}
	w.leadsOn = behindJoin(list)
	if w.carry != nil {
		w.start(w.carry, list)
	}
	if w.baseBare(list) && w.pick.turns() {
		w.cur.step(1)
	}
	if !slices.ContainsFunc(list, is[*ins.Needles]) && endsAgain(list) {
		w.blind = true
		if w.g != nil {
			w.g.doubt = "it goes to the end of more than one needle"
		}
	}
	w.seq(list, 0)
	w.takeTurning()
	if !w.free {
		w.passMarks()
	}
	w.keepNeedles()
	w.doubtLed()
}

// behindJoin is the chain that stands last, behind a join or the slip stitch that is one; nil if none does.
func behindJoin(list []ins.Item) *ins.Chain {
	list = slices.DeleteFunc(slices.Clone(list), is[*ins.Nothing])
	k := len(list) - 1
	if k < 1 {
		return nil
	}
	n, ok := list[k].(*ins.Chain)
	st, slips := list[k-1].(*ins.Stitch)
	if !ok || !is[*ins.Join](list[k-1]) && !(slips && st.Kind != nil && st.Kind.ID == "slst") {
		return nil
	}
	return n
}

// lastPlace is the place of the stitch that a row ends with.
func lastPlace(list []ins.Item) ins.Place {
	for i := len(list) - 1; i >= 0; i-- {
		if p := placesOf(list[i]); len(p) > 0 && is[*ins.Stitch](list[i]) {
			return p[len(p)-1]
		}
		if !is[*ins.Nothing](list[i]) {
			break
		}
	}
	return ins.Place{}
}

// endsAgain reports whether a row comes up to its last stitches and then again to as many: they are those of each needle.
func endsAgain(list []ins.Item) bool {
	last := 0
	for _, n := range list {
		list := placesOf(n)
		for i := range list {
			p := &list[i]
			if p.Kind != ins.InEach || p.Extent.Kind != ins.ToLast || p.Extent.N.By != nil || p.Extent.Unit.Word == "tch" {
				continue
			}
			if last > 0 && p.Extent.N.All >= last {
				return true
			}
			last = p.Extent.N.All
		}
	}
	return false
}

// baseBare reports whether a row goes over a chain in each stitch, and says nothing of the hook.
func (w *work) baseBare(list []ins.Item) bool {
	if w.round || w.g != nil || len(list) == 0 || len(w.from.runs) != 1 || !w.from.runs[0].base || w.from.runs[0].n < 3 {
		return false
	}
	s, ok := list[0].(*ins.Stitch)
	return ok && s.Kind != nil && s.Kind.Craft == stitch.Crochet && len(s.Places) > 0 && s.Places[0].Kind == ins.InEach
}

// seq works instructions in order; need is what comes after the whole sequence.
func (w *work) seq(list []ins.Item, need int) {
	for k, n := range list {
		if w.steps++; w.steps > maxSteps || w.closed {
			return
		}
		w.passReached(n)
		if w.ended > 0 {
			w.ended--
			continue
		}
		if w.trace != nil {
			w.trace.item(w, n, list[k+1:], need)
			continue
		}
		w.one(n, list[k+1:], need)
		if placesOf(n) != nil {
			w.maker = n
		}
	}
}

// passReached keeps a marker up to which was worked, and of which nothing more is said.
func (w *work) passReached(n ins.Item) {
	if st, ok := n.(*ins.Stitch); !w.reached || is[*ins.Nothing](n) || ok && st.Kind != nil && st.Kind.Uses == 0 { // k to marker, yo, sm
		return
	}
	if w.marks < len(w.from.marks) && w.from.marks[w.marks] > w.used() { // k to 1 st before marker, kfb
		return
	}
	if w.reached = false; !is[*ins.Marker](n) && w.marks < len(w.from.marks) && w.from.marks[w.marks] == w.used() {
		w.marks++
		w.out.marks = append(w.out.marks, w.out.stitches())
	}
}

// takeTurning takes the chain that the next row needs: over the first stitch.
func (w *work) takeTurning() {
	if w.tchAt {
		w.tchAt = false
		if w.cur.atStart() && w.cur.left > 0 && w.travel == 0 {
			w.cur.passSpaces()
			w.cur.step(1)
		} else if w.travel > 0 && w.cur.pos == w.travel && w.g == nil && !w.spaced && w.cur.left > 0 && w.pick.overNext() {
			w.cur.passSpaces()
			w.cur.step(1)
		}
	}
}

func (w *work) n(v ins.Num) int { return v.At(w.size) }

// count is a number that is at least none.
func (w *work) count(v ins.Num) int { return max(v.At(w.size), 0) }

func (w *work) emit(r run, feet []int, by ins.Item) {
	w.steps++
	if w.made += max(r.n, 0); w.made > maxStitches {
		w.steps = maxSteps + 1 // no row of a garment is so long
	}
	if w.steps > maxSteps {
		return
	}
	if w.rec != nil && w.quiet == 0 {
		w.rec(r.kind, r.n, r.chain, feet, by)
	}
	if w.origin == nil && len(feet) == 1 {
		w.origin = feet
	}
	w.out.add(r)
	w.began = true
}

// one works one instruction.
func (w *work) one(n ins.Item, tail []ins.Item, need int) {
	switch n := n.(type) {
	case *ins.Nothing:
		w.free = w.free || n.Part || n.Fold
		if n.Under {
			w.otherSide()
		}
		if n.Tch && w.quiet == 0 {
			w.g.lastInTurning()
		}
		if w.g != nil && n.Colour != "" {
			w.g.yarn = n.Colour
		}
	case *ins.Join:
		w.join(n)
	case *ins.Turn:
		w.turned = true
		w.free = w.free || w.from.base() && slices.ContainsFunc(tail, is[*ins.Stitch]) // the piece may be turned, to go along the other side of its chain
	case *ins.Needles:
		w.byNeedles(n)
	case *ins.Stitch:
		if !w.everyNthHere(n) && !w.shapedWithin(n, tail) {
			w.stitch(n, tail, need)
		}
	case *ins.Chain:
		w.chain(n, tail)
	case *ins.Skip:
		w.skippedChains(n)
		for i := range n.Places {
			w.skip(&n.Places[i])
		}
		if len(n.Places) == 0 {
			w.cur.toEnd()
		}
	case *ins.Repeat:
		w.repeat(n, tail, need)
	case *ins.Psso:
		w.passOver()
	case *ins.BindOff:
		w.bindOff(n)
	case *ins.Leave:
		w.leaves(n)
	case *ins.CastOn:
		w.castOn(n, tail, need)
	case *ins.PickUp:
		w.pickUp(n, tail, need)
	case *ins.Shape:
		w.shapeHere(n)
	case *ins.Even:
		w.evenHere(n, tail, need)
	case *ins.Marker:
		w.marker(n)
	case *ins.JoinYarn:
		w.joinHere(n, tail)
	}
}

// pickUp takes stitches in that were not in the row below, unless they wait there.
func (w *work) pickUp(n *ins.PickUp, tail []ins.Item, need int) {
	kind := n.Kind
	if kind == nil {
		kind = knitStitch()
	}
	if n.Held && w.cur.left >= w.count(n.N) {
		w.stitch(&ins.Stitch{Placed: n.Placed, Kind: kind, N: n.N}, tail, need)
		return
	}
	w.free, w.pinned, w.blind = true, !w.from.untold, w.blind || w.from.untold
	w.emit(run{kind: kind, n: w.count(n.N)}, nil, n)
}

// castOn casts on within the row; over each gap of the row below, if nothing but that is told, or the row is at its end.
func (w *work) castOn(n *ins.CastOn, tail []ins.Item, need int) {
	if w.castBefore(w.count(n.N), tail, need) {
		return
	}
	gaps, last := 1, len(tail) == 0
	if n.Over && last && (w.used() == 0 || w.used() == w.heldTo) { // the rest of the row goes without saying
		w.plainOver()
	}
	if n.Over && last && w.cur.left == 0 {
		gaps = max(len(w.from.marks)-w.filled, 1)
	}
	w.filled++
	w.emit(run{kind: w.kind(), n: gaps * w.count(n.N)}, nil, n)
}

// castBefore puts stitches that are cast on before those of the row below, if what stands behind works just so many: cast on 6
// sts, k34.
func (w *work) castBefore(k int, tail []ins.Item, need int) bool {
	q := w.cur.run()
	if w.g != nil || w.out.stitches() > 0 || q == nil || q.space() || w.reserve(tail, need) != w.cur.left+k {
		return false
	}
	from := *w.from
	from.runs, from.marks = slices.Clone(from.runs), slices.Clone(from.marks)
	from.runs[w.cur.i].n += k
	for i, at := range from.marks {
		if at > w.used() {
			from.marks[i] += k
		}
	}
	w.from, w.cur.f, w.cur.left = &from, &from, w.cur.left+k
	return true
}

func (w *work) passOver() {
	if w.g != nil && w.quiet == 0 && w.rec != nil {
		w.g.psso()
	}
	if k := len(w.out.runs) - 1; k >= 0 && w.out.stitches() > 0 {
		if w.out.runs[k].n--; w.out.runs[k].n == 0 {
			w.out.runs = w.out.runs[:k]
		}
	}
	w.psso++
}

func (w *work) bindOff(n *ins.BindOff) {
	w.began = true
	if n.Made {
		w.hold(w.count(n.N))
		return
	}
	k := w.count(n.N)
	switch {
	case n.All:
		k = w.cur.left
		w.closed = true
	case n.To.Kind != ins.NoExtent:
		rest, known := w.stop(n.To, 0, nil)
		if known = known && len(w.from.marks) > 0; !known {
			w.blind = true
			return
		}
		k = w.cur.left - rest
	}
	w.drawOff(n, k)
	w.use(k, nil, n.At)
	w.offAt = w.out.stitches()
	if n.Hold {
		w.heldTo = w.used()
	}
	w.halves()
	if !n.All && !n.Hold && w.cur.left > 1 && w.kind().Craft == stitch.Knitting && w.pick.stays() {
		w.seq([]ins.Item{&ins.Stitch{Kind: stitch.ByID("k"), N: ins.N(1)}}, 0)
	}
}

// boundOff is a stitch that is bound off, as a chart shows it.
var boundOff = &stitch.Stitch{ID: "bound off", US: "bind off", UK: "cast off", USAbbr: "BO", UKAbbr: "cast off", Craft: stitch.Knitting, Uses: 1, Base: "bound off", Key: "bound off"}

// drawOff records k stitches that are bound off while others of the row go on.
func (w *work) drawOff(n *ins.BindOff, k int) {
	if w.rec == nil || n.All || n.Hold || n.Drop && !n.Past || k >= w.cur.left || w.kind().Craft != stitch.Knitting {
		return
	}
	for i := range k {
		w.rec(boundOff, 1, 0, []int{w.cur.pos + i}, n)
	}
}

// halves marks where a row in two halves goes on to the edge between them.
func (w *work) halves() {
	if at := w.out.stitches(); !w.round && at > 0 && w.cur.left > 0 && !slices.Contains(w.out.marks, at) {
		w.out.marks = append(w.out.marks, at)
	}
}

// hold takes k stitches off that were made last in the row; 0: all that were made since others were taken off.
func (w *work) hold(k int) {
	have := w.out.stitches()
	if k == 0 {
		k = have - w.offAt
	}
	if k < 0 || k > have {
		w.blind = true
		return
	}
	for runs := w.out.runs; k > 0 && len(runs) > 0; w.out.runs = runs {
		last := &runs[len(runs)-1]
		off := min(k, last.n)
		k -= off
		if last.n -= off; last.n == 0 {
			runs = runs[:len(runs)-1]
		}
	}
	w.offAt = w.out.stitches()
	if w.g != nil && w.quiet == 0 {
		w.g.doubt = "stitches just worked wait on a holder"
	}
}

func (w *work) leaves(n *ins.Leave) {
	w.takeTurning()
	if !n.All {
		if k := w.n(n.N); k != ins.None && k != w.cur.left {
			w.tell("rows/unworked", finding.Warning, n.At, "%s stitches are left unworked, not %s | %s stitches there, %s used | %s left unworked",
				"leave %s unworked, or correct the count before it", w.cur.left, k, w.from.stitches(), w.from.stitches()-w.cur.left, k, w.cur.left)
		}
	}
	w.leave = true
}

// shapedWithin reports whether what stands behind n shapes the row that n goes over to its end: sc around, decreasing 6
// evenly. The shaping works it then, in the stitch of n.
func (w *work) shapedWithin(n *ins.Stitch, tail []ins.Item) bool {
	if len(tail) == 0 || !is[*ins.Shape](tail[0]) && nthOf(tail[0]) == 0 || n.Kind == nil || w.cur.left == 0 || len(n.Places) == 1 && n.Places[0].Kind == ins.InCentre {
		return false
	}
	s := w.save()
	over := w.trial([]ins.Item{n}) && w.cur.left == 0
	if w.restore(s); over {
		w.within = n.Kind
	}
	return over
}

// nthOf is how far apart the increases or decreases stand that are told behind the row that has them: sc around, inc in
// every 9th st, sc across, making 2 sc in every 3rd sc; 0: it is no such instruction.
func nthOf(n ins.Item) int {
	s, ok := n.(*ins.Stitch)
	if !ok || !s.Inc && !s.Dec && (s.N.By != nil || s.N.All < 2) || len(s.Places) != 1 || s.Places[0].Kind != ins.InEach || s.Places[0].N.By != nil || s.Places[0].N.All < 2 {
		return 0
	}
	return s.Places[0].N.All
}

// everyNthHere works an increase or a decrease in every nth stitch over the rest of a row: dec 1 st in every 7th st.
func (w *work) everyNthHere(n *ins.Stitch) bool {
	k := nthOf(n)
	if k == 0 || !n.Dec && w.within == nil {
		return false
	}
	s := &ins.Shape{Inc: !n.Dec, N: ins.N(w.cur.left / k * max(n.N.All-1, 1))}
	s.Put(n.At)
	w.shapeHere(s)
	return true
}

// evenHere works the rest of a row as it stands, or with what is told behind it: work in dc, inc 1 dc in every 6th dc.
func (w *work) evenHere(n *ins.Even, tail []ins.Item, need int) {
	switch {
	case n.Row != nil && len(tail) == 0:
		w.seq(n.Row, need)
	case len(tail) > 0 && nthOf(tail[0]) > 0:
		w.within = w.kind()
	default:
		w.plainOver()
	}
}

// shapeHere works 'inc 6 sts evenly across' as a row: the rest of the row is plain.
func (w *work) shapeHere(n *ins.Shape) {
	k := w.count(n.N)
	if n.Both {
		k *= 2
	}
	if n.Length != nil || n.Every.By == nil && n.Every.All > 1 { // inc 1 st each side every 8th row until sleeve measures 7 in: how many there are then is not known
		w.blind = true
		w.plainOver()
		return
	}
	w.takeTurning()
	have := w.cur.left
	kind := w.kind()
	if w.within != nil {
		kind, w.within = w.within, nil
	}
	w.cur.toEnd()
	w.began = true
	if n.Inc {
		w.emit(run{kind: kind, n: have + k}, nil, n)
		return
	}
	if k > have/2 {
		w.blind = w.blind || have == 0 // what stands before it went over the row already
		w.tell("rows/over-use", finding.Warning, n.At, "this decreases %s stitches, but there are only %s", "decrease fewer", k, have)
		k = have / 2
	}
	w.emit(run{kind: kind, n: have - k}, nil, n)
}

// plainOver works what is left as it stands.
func (w *work) plainOver() {
	w.takeTurning()
	k := w.cur.left
	kind := w.kind()
	w.cur.toEnd()
	w.emit(run{kind: kind, n: k}, nil, nil)
}

// joinHere goes on to the place at which yarn is joined: the round begins there, or the row behind stitches that it passes.
func (w *work) joinHere(n *ins.JoinYarn, tail []ins.Item) {
	if w.began && w.kind().Craft == stitch.Knitting { // a second ball
		w.halves()
	}
	if len(n.Place) == 0 {
		return
	}
	if !w.round && w.cur.pos > 0 && n.Place[0].Kind == ins.InNext && w.out.stitches() == 0 && beginsInSame(tail) { // sk first 4 sts, join yarn in next st, sc in same st
		w.use(1, nil, n.At)
		return
	}
	if w.began || !w.round {
		return
	}
	p := n.Place[0]
	w.gaps = p.Unit.Between && !w.from.spaces(0)
	if p.Unit.Space && w.spaceBefore(w.spaceSize(p.Unit), 0) {
		w.space(w.spaceSize(p.Unit), p.At)
		w.turnRound()
	}
}

// turnRound puts what a round passed before its beginning to its end: it comes to it last. The place in which it begins is
// not among it.
func (w *work) turnRound() {
	w.travel, w.began = w.cur.pos, false
	passed, off := w.cur.i, w.cur.off
	if !w.round || w.cur.pos == 0 || passed >= len(w.from.runs) { // led all the way round, it begins where it would have
		return
	}
	w.cur.left -= w.around
	f := *w.from
	if off == 0 {
		passed, off = passed-1, f.runs[passed-1].n
	}
	f.runs = append(slices.Clone(f.runs), f.runs[:passed]...)
	if r := f.runs[passed]; !r.space() && off > 1 {
		r.n = off - 1
		f.runs = append(f.runs, r)
	}
	for i := len(w.from.runs); i < len(f.runs); i++ {
		if r := &f.runs[i]; r.group == f.runs[passed].group { // what is left of the one in which it begins is no group
			r.group = 0
		}
	}
	w.around = f.stitches() - w.from.stitches()
	w.cur.f = &f
	w.cur.left += w.around
}

// comesLast puts the stitches that a round passes on the way to its first space to its end: *2 dc in next sp, dc in next tr; rep
// from * around.
func (w *work) comesLast(passed int) {
	f := *w.from
	if passed == 0 || passed >= len(f.runs) {
		return
	}
	f.runs = append(slices.Clone(f.runs), f.runs[:passed]...)
	w.around = f.stitches() - w.from.stitches()
	w.cur.f = &f
	w.cur.left += w.around
}

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
	return w.round && (w.cur.left == 0 || w.from.ring && n == w.leadsOn) && len(tail) == 0 && k <= 4 && (w.startChain == 0 && w.joined == nil || w.closedRound)
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
	if top == 0 && w.counts(n.Count, k, false, n.At) != ins.CountsAsStitch {
		w.freeChain = k
		if w.g != nil && w.quiet == 0 {
			w.g.uncounted(k)
		}
		return
	}
	kind := n.Count.As
	if kind == nil {
		if kind = byTurning(k); k == 4 && !works(tail, kind) && works(tail, byTurning(3)) { // a dc and a space of one chain
			kind = byTurning(3)
		}
	}
	w.tchAt = true
	beyond := w.spaceBeside(n, k)
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
	w.tell("rows/kind", finding.Warning, at, "the next stitch is "+article(there, w.x.Terms)+", not "+article(kind, w.x.Terms), "name the stitch that is there, or skip to the one you mean")
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
	if size <= 0 || chains == size {
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
				w.doubtful("between which groups is not clear")
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

// skip passes places of the row below.
func (w *work) skip(p *ins.Place) {
	k := w.n(p.N)
	if k <= 0 || p.Kind == ins.InSame && !w.cur.atStart() { // sl st over 4 sts, ch 3, skip st at base of ch: it is the last of them
		return
	}
	w.spaced = false
	if p.Kind == ins.InFirst && w.tchAt && w.cur.atStart() {
		w.takeTurning()
		if k--; k == 0 {
			return
		}
	}
	switch {
	case p.Unit.Space:
		for range k {
			if !w.space(w.spaceSize(p.Unit), p.At) {
				return
			}
		}
	case p.Unit.Word == "made" && !w.from.foundation(): // the chain of the turn
	case p.Unit.Chain:
		w.chains(k, p.At)
	case p.Unit.Group != nil || p.Unit.Stretch:
		for range k {
			if !w.nextGroup(p.Unit.Group, p.At) {
				return
			}
		}
	default:
		w.takeTurning()
		w.cur.passSpaces()
		w.passedAt = w.cur.pos
		w.passed = w.use(k, p.Unit.Stitch, p.At)
	}
}

// nextChains is the run at which an instruction goes on that has taken so many chains: at its beginning, of the other side of the
// foundation too.
func (w *work) nextChains(got int) *run {
	r := w.cur.run()
	if r == nil && got == 0 && w.goesBack() {
		return w.cur.run()
	}
	return r
}

// chains takes k single chains: of a foundation, or of chain spaces.
func (w *work) chains(k int, at ins.Span) int {
	w.takeTurning()
	w.began = true
	got := 0
	for got < k {
		r := w.nextChains(got)
		if r == nil {
			break
		}
		switch {
		case r.space():
			m := min(k-got, r.chain-w.cur.off)
			w.cur.step(m)
			got += m
			w.spaced = true
		case r.base || r.tch && (got == 0 || w.cur.i == len(w.cur.f.runs)-1): // the turning chain below ends in one
			m := min(k-got, r.n-w.cur.off)
			w.cur.step(m)
			got += m
		default:
			if got == 0 && w.cur.f.hasChains(w.cur.i) || !w.from.hasChains(0) { // stitches before the chains are passed
				w.unsure()
				w.doubtful("which chain is meant is not clear")
				w.cur.step(1)
				got++
				continue
			}
			w.tell("rows/over-use", finding.Warning, at, "there is no chain left here, but "+article(r.kind, w.x.Terms), "name the stitch that is there")
			return got
		}
	}
	if w.lastPos = w.cur.pos - 1; w.cur.off > 0 && w.cur.run().space() { // within it
		w.lastPos++
	}
	if got < k {
		w.tellGap(k-got, w.from.stitches(), "rows/over-use", at, "this needs %s chains more than the row below has | %s places in the row below | at least %s places",
			"use %s fewer here, or chain more", k-got, w.from.stitches(), w.from.stitches()+k-got, k-got)
	}
	return got
}

func (f *fabric) hasChains(from int) bool {
	return slices.ContainsFunc(f.runs[from:], func(r run) bool { return r.space() || r.base })
}

// nextGroup goes on to the next whole group of that name and takes it; of any name, if
// none is given. Where no group is known, it is the next stitch.
func (w *work) nextGroup(g *ins.Group, at ins.Span) bool {
	w.takeTurning()
	w.began = true
	c := w.cur
	c.passGroup()
	for c.i < len(c.f.runs) {
		r := c.run()
		if r.group > 0 && (g == nil || stands(r.of, g)) && c.off == 0 {
			from, first := c, c.pos
			c.endGroup(r.group)
			w.cur = c
			w.spaced = true
			w.lastPos = from.middle(first, c.pos)
			return true
		}
		if r.space() {
			c.i, c.off = c.i+1, 0
			c.pos++
			continue
		}
		c.step(r.n - c.off)
	}
	name := "group"
	if g != nil {
		name = g.Name
	} else if w.cur.left > 0 && !slices.ContainsFunc(c.f.runs, func(r run) bool { return r.group > 0 }) {
		w.blind = true
		return w.use(1, nil, at) == 1
	}
	w.tell("rows/over-use", finding.Warning, at, "there is no "+name+" left to work into", "make it in the row below, or take this out")
	return false
}

// stands reports whether what was worked as one group may be called as another: a starting shell is a shell.
func stands(of, g *ins.Group) bool {
	return of == g || of != nil && (of.Name == "starting "+g.Name || of.Name == "beginning "+g.Name || of.Name == "beg "+g.Name)
}

// endGroup goes on behind the group of that number.
func (c *cursor) endGroup(id int) {
	for c.i < len(c.f.runs) && c.run().group == id {
		if q := c.run(); q.space() {
			c.step(q.chain - c.off)
		} else {
			c.step(q.n - c.off)
		}
	}
}

// passGroup goes on behind a group of which something was taken.
func (c *cursor) passGroup() {
	if r := c.run(); r != nil && r.group > 0 && (c.off > 0 || c.i > 0 && c.f.runs[c.i-1].group == r.group) {
		c.endGroup(r.group)
	}
}

// middle is the place in the middle of a group from one place up to another: a space of it, if it has one.
func (c cursor) middle(from, to int) int {
	best, off := (from+to-1)/2, to
	for c.pos < to {
		r := c.run()
		if far := abs(2*c.pos - from - to + 1); r.space() && far < off {
			best, off = c.pos, far
		}
		c.step(max(r.n, r.chain))
	}
	return best
}

func abs(n int) int { return max(n, -n) }

// skippedChains takes what chains skipped at the beginning of a foundation count as.
func (w *work) skippedChains(n *ins.Skip) {
	if w.began || len(w.from.runs) == 0 || !w.from.runs[0].base || len(n.Places) != 1 || !n.Places[0].Unit.Chain || !w.cur.atStart() {
		return
	}
	k := w.n(n.Places[0].N)
	c := n.Count.How
	if c == ins.Unsaid && k > 1 {
		c = w.counts(n.Count, k, true, n.At)
	}
	if c != ins.CountsAsStitch {
		return
	}
	kind := n.Count.As
	if kind == nil {
		kind = byTurning(k)
	}
	if w.rec != nil && w.quiet == 0 {
		w.rec(kind, 1, k, nil, n)
	}
	w.out.add(run{kind: kind, n: 1, tch: true})
}

// join holds the chain that a round is joined to against the one that began it.
func (w *work) join(n *ins.Join) {
	w.closedRound = n.Name != "ring" || w.began || len(w.out.runs) > 0 // else it only makes the ring
	if w.startChain == 0 {
		return
	}
	if t := w.n(n.Chain); t > 0 && t != w.startChain {
		w.tell("rows/join", finding.Warning, n.At, "the round is joined to a chain of %s, but began with one of %s", "join to the top of ch-%s", t, w.startChain, w.startChain)
		return
	}
	if k := w.n(n.Nth); k > 0 && w.startSpace > 0 && k != w.startChain-w.startSpace {
		w.tell("rows/join", finding.Warning, n.At, "the round is joined to chain %s, but the stitch that the chain counts as ends at chain %s", "join to chain %s",
			k, w.startChain-w.startSpace, w.startChain-w.startSpace)
	}
}
