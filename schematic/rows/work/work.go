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
	marks    int        // markers of the row below that are passed
	missed   int        // what a trial would have told
	again    bool       // within a repeat: the first stitch is that of each time
	hooked   int        // place of the foundation that the row begins in, counted from the hook
	maker    ins.Item   // the instruction that made stitches last
	gaps     bool       // it is worked into the gaps between stitches
	gapAt    int        // where it was worked into one last
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
	switch p := lastPlace(list); {
	case w.endsIn != nil || !w.round:
	case p.Kind == ins.InTop:
		w.endsIn = &ins.Join{Chain: p.Unit.Size, Nth: ins.N(p.Nth)}
	case p.Kind == ins.InFirst && p.Unit.Stitch != nil:
		w.endsIn = &ins.Join{First: true}
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
