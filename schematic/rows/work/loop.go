package work

import (
	"slices"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// repeat works a bracket: into places, so many times, or as far as it goes.
func (w *work) repeat(n *ins.Repeat, tail []ins.Item, need int) {
	if len(n.Places) > 0 {
		times := 1
		if n.Until.Kind == ins.NoExtent {
			times = max(w.n(n.Times), 1)
		}
		for range min(times, maxSteps) {
			for i := range n.Places {
				w.place1(n, &n.Places[i], w.reserve(tail, need))
			}
			if w.steps > maxSteps {
				return
			}
		}
		return
	}
	if n.Until.Kind != ins.NoExtent {
		w.loop(n, tail, need)
		return
	}
	t := w.n(n.Times)
	if t == ins.None {
		return
	}
	if n.InAll && w.pick.inAll() {
		t--
	}
	w.inAll(n, t)
}

// inAll works a bracket t times.
func (w *work) inAll(n *ins.Repeat, t int) {
	if t > 1 && t <= 4 && toEnds(n.Body) && w.round && len(w.from.marks) == 0 { // on each of so many needles
		each := ins.NeedlePart{Body: n.Body}
		for k := range t {
			each.On = append(each.On, k+1)
		}
		w.byNeedles(&ins.Needles{Parts: []ins.NeedlePart{each}})
		return
	}
	if t > 1 && toEnds(n.Body) {
		w.blind = true
		w.plainOver()
		return
	}
	for k := range min(t, maxSteps) {
		body := n.Body
		w.again = t > 1
		if k == t-1 {
			body = w.lastBody(n)
		}
		w.seq(body, 0)
		if w.steps > maxSteps {
			return
		}
	}
	w.again = false
}

// toEnds reports whether a stretch goes to an end, as that of a needle or a marked part.
func toEnds(list []ins.Item) bool {
	for _, n := range list {
		list := placesOf(n)
		for i := range list {
			p := &list[i]
			if p.Kind == ins.InEach && (p.Extent.Kind == ins.ToLast || p.Extent.Kind == ins.ToEnd || p.Extent.Unit.Word == "part") {
				return true
			}
		}
	}
	return false
}

// lastBody is what a repeat works the last time.
func (w *work) lastBody(n *ins.Repeat) []ins.Item {
	if stops(n) {
		return n.Body[:n.Stop]
	}
	if len(n.Last) > 0 {
		if k := w.instead(n); k >= 0 {
			return append(append([]ins.Item(nil), n.Body[:k]...), n.Last...)
		}
		k := len(n.Body) - 1
		for k > 0 {
			if _, ok := n.Body[k].(*ins.Stitch); ok {
				break
			}
			if _, ok := n.Body[k].(*ins.Repeat); ok {
				break
			}
			k--
		}
		return append(append([]ins.Item(nil), n.Body[:k]...), n.Last...)
	}
	return n.Body
}

// instead is where in the body of a repeat so many stitches begin as its last time has others for; -1: nothing is said
// of them, or no stitch begins there.
func (w *work) instead(n *ins.Repeat) int {
	left := w.count(n.LastFor)
	if left == 0 {
		return -1
	}
	k := len(n.Body)
	for ; k > 0 && left > 0; k-- {
		if st, ok := n.Body[k-1].(*ins.Stitch); ok && st.Kind != nil {
			left -= w.count(st.N) * st.Kind.Uses
		}
	}
	if left != 0 {
		return -1
	}
	return k
}

// before is what a trial may have to take back.
type before struct {
	place place
	out   fabric
	last  run
}

func (w *work) save() before {
	b := before{place: w.place, out: *w.out}
	if k := len(w.out.runs); k > 0 {
		b.last = w.out.runs[k-1]
	}
	return b
}

func (w *work) restore(b before) {
	w.place = b.place
	*w.out = b.out
	if k := len(b.out.runs); k > 0 {
		w.out.runs[k-1] = b.last
	}
}

// trial works a list quietly, and reports whether it fits.
func (w *work) trial(list []ins.Item) bool {
	missed, rec := w.missed, w.rec
	w.quiet++
	w.rec = nil
	w.seq(list, 0)
	w.quiet--
	w.rec = rec
	return w.missed == missed
}

// hasRoom reports whether a time that was worked leaves what is kept, and room for a last one that is worked otherwise.
func (w *work) hasRoom(n *ins.Repeat, keep int) bool {
	if len(n.Last) == 0 {
		return w.cur.left >= keep
	}
	return w.cur.left > keep && w.cur.left-keep >= w.perTime(w.lastBody(n))
}

// workAgain works a time that fits once more, if it is to be recorded, told of, or is the last one and shorter; it reports
// whether it is that.
func (w *work) workAgain(s before, body, last []ins.Item, keep int) bool {
	if w.cur.left != keep {
		last = body
	}
	shorter := len(last) < len(body)
	if w.rec != nil || w.trace != nil || shorter {
		w.restore(s)
		w.seq(last, 0)
	}
	return shorter
}

// throughSecond leaves one stitch fewer where a repeat goes until the second to last stitch, and fits if that is worked too.
func (w *work) throughSecond(n *ins.Repeat, keep int) int {
	if n.Until.Unit.Word != "second" || keep < 1 {
		return keep
	}
	if per := w.perTime(n.Body); per > 1 && (w.cur.left-keep)%per != 0 && (w.cur.left-keep+1)%per == 0 {
		keep--
	}
	return keep
}

// loop works a bracket again and again, to the end of the row or to its last so
// many stitches, as long as it fits.
func (w *work) loop(n *ins.Repeat, tail []ins.Item, need int) {
	w.takeTurning()
	w.starHere()
	keep, known := w.stopOf(n, tail, need)
	if !known {
		w.blindOver(n)
		return
	}
	if keep > w.cur.left && n.Until.Kind == ins.ToLast {
		w.tell("rows/over-use", finding.Warning, n.Until.At, "only %s stitches are left, so nothing is worked 'to last %s'", "correct the count before it", w.cur.left, keep)
		return
	}
	keep = min(keep, w.cur.left)
	keep, lastLoop := w.lastLoop(n, tail, w.throughSecond(n, keep))
	defer lastLoop()
	n = w.endsSooner(w.nextForSame(nextForEach(n)), tail)
	body := n.Body
	last := withoutLead(n) // without what leads to the next time, or is told behind the repeat
	if k, cut := w.endSaid(n, tail, keep, need); k > 0 || cut > 0 {
		keep, last = need, body[:len(body)-cut]
		defer func() { w.ended = k }()
	}
	w.upTo = keep
	times, body := w.ledOnce(body)
	per, before := 0, w.out.stitches()
	led := before > w.cur.pos
	ended := false
	w.again = true
	defer func() { w.again = false }()
	laps, limit := w.lapsOf(body), w.lastSpaces(body, tail, n.Until)
	for w.steps < maxSteps && !w.looped(keep, body) {
		s := w.save()
		fits := w.trial(body)
		if w.past(limit) { // the last ones are told behind it
			w.restore(s)
			w.seq(w.endsInTurning(body, tail, keep), 0)
			return
		}
		moved := w.cur.pos > s.place.cur.pos
		if fits && moved && w.hasRoom(n, keep) {
			per = s.place.cur.left - w.cur.left
			if times++; w.workAgain(s, body, last, keep) {
				break
			}
			times += laps.run(w, keep)
			continue
		}
		left := s.place.cur.left
		w.restore(s)
		if ended = w.endsOtherwise(ending{n, body, tail, keep, times, left - keep, per, led}); ended {
			break
		}
		w.misfit(n, left-keep, times, per, fits, moved, keep, w.out.stitches()-before != times*per)
		return
	}
	if !ended && keep == 0 && times > 1 && w.stepsAround(body) {
		w.seq(body[:len(body)-1], 0)
		times++
	}
	w.looped1(n, times, per)
	w.closes1(n, tail, times, !ended && w.cur.left > keep)
}

// stepsAround reports whether a repeat begins where it stands and ends with a slip stitch to the next stitch: the last one leads to the
// first stitch of the round, in which it was begun: *ch 3, 2 dc in same st, ch 3, sl st in same st, sl st in next st.
func (w *work) stepsAround(body []ins.Item) bool {
	st, ok := body[len(body)-1].(*ins.Stitch)
	if !ok || !w.round || w.cur.left > 0 || !goesInSame(body) || st.Kind == nil || st.Kind.ID != "slst" || len(st.Places) != 1 {
		return false
	}
	p := &st.Places[0]
	return p.Kind == ins.InNext && !p.Unit.Space && w.count(p.N) == 1
}

// ledOnce works a repeat in the space to which slip stitches led, where it begins there, and gives how often that is, and the repeat as it
// goes on from there: sl st in ch-4 sp, ch 1, *(sc, ch 3, sc) in ch-4 sp, ch 2; rep from * around.
func (w *work) ledOnce(body []ins.Item) (times int, next []ins.Item) {
	if len(body) == 0 {
		return 0, body
	}
	list := placesOf(body[0])
	if len(list) != 1 || list[0].Kind != ins.InNext && list[0].Kind != ins.InSame || !w.led(&list[0]) {
		return 0, body
	}
	w.again = true
	w.seq(body, 0)
	next = slices.Clone(body)
	list = slices.Clone(list)
	list[0].Kind = ins.InNext
	switch n := body[0].(type) {
	case *ins.Repeat:
		further := *n
		further.Places, next[0] = list, &further
	case *ins.Stitch:
		further := *n
		further.Places, next[0] = list, &further
	}
	return 1, next
}

// nextForEach is a repeat around that begins in each space, and goes on: it means the next one each time, *3 dc in each sp, ch 1* around.
func nextForEach(n *ins.Repeat) *ins.Repeat {
	if len(n.Body) < 2 {
		return n
	}
	st, ok := n.Body[0].(*ins.Stitch)
	if !ok || len(st.Places) != 1 || st.Places[0].Kind != ins.InEach || st.Places[0].Extent.Kind != ins.NoExtent || !st.Places[0].Unit.Space {
		return n
	}
	first, again := *st, *n
	first.Places = []ins.Place{st.Places[0]}
	first.Places[0].Kind, first.Places[0].N = ins.InNext, ins.N(1)
	again.Body = append([]ins.Item{&first}, n.Body[1:]...)
	return &again
}

// nextForSame is a repeat with which a row begins and that only goes into the same stitch: it means the next one each time, [2 sc in same
// sc] around.
func (w *work) nextForSame(n *ins.Repeat) *ins.Repeat {
	if len(n.Body) != 1 {
		return n
	}
	st, ok := n.Body[0].(*ins.Stitch)
	if !ok || len(st.Places) != 1 || st.Places[0].Kind != ins.InSame || st.Places[0].Unit.Space || w.out.stitches() > 0 || w.used() > 0 {
		return n
	}
	first, again := *st, *n
	first.Places = []ins.Place{st.Places[0]}
	first.Places[0].Kind, first.Places[0].N = ins.InNext, ins.N(1)
	again.Body = []ins.Item{&first}
	return &again
}

// ending is where the times of a repeat that are alike have ended: so many stitches are left before those that it keeps, of as
// many as it uses each time; led, if stitches stand before the first.
type ending struct {
	n                      *ins.Repeat
	body, tail             []ins.Item // of it as it goes on, and what stands behind it
	keep, times, rest, per int
	led                    bool
}

// endsOtherwise works the last time of a repeat, which is not like the others: the first way that it may end in gives what is worked
// of it. It reports false if there is none.
func (w *work) endsOtherwise(e ending) bool {
	for _, way := range []func(ending) []ins.Item{w.toldLast, w.slipsAround, w.passesFirst, w.joinsOver, w.comesBack, w.endsEarly, w.endsWider, w.ledIn} {
		if list := way(e); list != nil {
			w.seq(w.withoutTold(list, e.tail), 0)
			return true
		}
	}
	return false
}

// withoutTold is what a repeat works the last time without the chain in which it ends, if that is told behind it: (ch 2, skip next st, 2 dc
// in next st) around, ch 2, join.
func (w *work) withoutTold(list, tail []ins.Item) []ins.Item {
	k := len(list) - 1
	for k > 0 && is[*ins.Skip](list[k]) {
		k--
	}
	tail = tail[wordsAhead(tail):]
	if k < 0 || len(tail) == 0 || !w.round {
		return list
	}
	last, ok := list[k].(*ins.Chain)
	told, ok2 := tail[0].(*ins.Chain)
	if !ok || !ok2 || w.count(last.N) != w.count(told.N) {
		return list
	}
	return slices.Delete(slices.Clone(list), k, k+1)
}

// stops reports whether a repeat has a place at which its last time stops.
func stops(n *ins.Repeat) bool { return n.Stop >= 0 && n.Stop < len(n.Body) }

// closes1 works what a repeat that has come to its end still has: up to where it stops, if anything is left, or the arch that leads
// back to where its round began.
func (w *work) closes1(n *ins.Repeat, tail []ins.Item, times int, left bool) {
	switch {
	case left && stops(n):
		w.seq(n.Body[:n.Stop], 0)
	case !left && times > 0 && n.Stop < 0 && len(n.Last) == 0 && w.leadsBack(n.Body, tail):
		w.seq(n.Body[:1], 0)
	}
}

// starHere notes where the first repeat of a row begins that goes across it.
func (w *work) starHere() {
	if w.rec != nil && w.quiet == 0 && w.g.cur.Star == 0 {
		w.g.cur.Star = len(w.g.cur.Stitches) + 1
	}
}

// leadsBack reports whether a repeat leads back to where its round began once more, with the arch before its first stitch, and is
// joined there: sc in same loop, * ch 5, sc in next loop; repeat from * around, join.
func (w *work) leadsBack(body, tail []ins.Item) bool {
	k := len(w.out.runs) - 1
	if st, ok := body[len(body)-1].(*ins.Stitch); ok && w.round && w.travel > 0 && w.spaced && len(tail) == 0 && len(body) == 2 && is[*ins.Chain](body[0]) && w.count(body[0].(*ins.Chain).N) > 1 && st.Kind != nil && st.Kind.ID == "slst" {
		w.joins() // sl st into ch sp, *ch 5, sl st in next ch sp; rep from * around
		return true
	}
	return joinsOnly(tail) && w.round && w.joined != nil && w.spaced && k > 0 && len(body) > 1 && is[*ins.Chain](body[0]) && !is[*ins.Chain](body[len(body)-1]) &&
		!w.out.runs[k].space() && !w.out.runs[0].space() && w.bySpaces(body[1:2])
}

// joinsOnly reports whether what follows a repeat joins the round and no more.
func joinsOnly(tail []ins.Item) bool {
	return !slices.ContainsFunc(tail, func(n ins.Item) bool { return !is[*ins.Join](n) && !is[*ins.Nothing](n) && !is[*ins.Fasten](n) })
}

// joinsOver is the arch with which a repeat leads over the last stitches of a round to its first one, where it is joined: sc in same
// place, * ch 7, skip 2 tr, sc in next tr; repeat from * around, join.
func (w *work) joinsOver(e ending) []ins.Item {
	body := e.n.Body
	if !w.round || w.joined == nil || e.times == 0 || e.rest == 0 || len(body) < 3 || !is[*ins.Chain](body[0]) || w.skipsFirst(body) != e.rest || !joinsOnly(e.tail) {
		return nil
	}
	return []ins.Item{body[0], &ins.Skip{}}
}

// past reports whether the work has gone on behind a place; 0: there is none.
func (w *work) past(place int) bool { return place > 0 && w.cur.pos > place }

// looped1 keeps over how many stitches the first repeat of a row goes each time.
func (w *work) looped1(n *ins.Repeat, times, per int) {
	if w.quiet == 0 && w.perAt.Line == 0 && times > 1 {
		w.per, w.perAt = per, n.At
	}
}

// lastSpaces is the place of the first of the last chain spaces, or of the last group, that the instruction behind a repeat is
// worked into: rep from * across, end ch 2, dc in last sp; or of the one beside the turning chain: *ch 5, sc in next ch-5 sp; rep from *
// across, ch 5, sc in 3rd ch of turning ch-5; or of those up to which it is worked. 0: it is worked into others.
func (w *work) lastSpaces(body, tail []ins.Item, until ins.Extent) int {
	if until.Kind == ins.ToLast && until.Unit.Space {
		if all, k := w.spacesAt(w.spaceSize(until.Unit)), w.count(until.N); k > 0 && len(all) > k {
			return all[len(all)-k]
		}
	}
	for _, n := range tail {
		list := placesOf(n)
		if len(list) == 0 {
			continue
		}
		p, k := &list[0], 1
		var all []int
		switch {
		case p.Last && p.Unit.Group != nil: // end sc in 3rd dc of last shell
			all, _ = w.groups(p.Unit.Group)
		case p.Kind == ins.InLast && p.Unit.Space:
			all, k = w.spacesAt(w.spaceSize(p.Unit)), w.count(p.N)
		case p.Kind == ins.InTop:
			return w.spaceOfTurning(body)
		}
		if k > 0 && len(all) > k {
			return all[len(all)-k]
		}
		return 0
	}
	return 0
}

// spaceOfTurning is the place of the space beside the turning chain that the row below ends with, if a repeat is worked into spaces that
// are longer and its stitch would have to be counted in; 0: there is none.
func (w *work) spaceOfTurning(body []ins.Item) int {
	size, _ := w.spaceIn(body)
	if all := w.spacesAt(size); len(all) > 1 && w.spaceBesideTurning() && w.from.runs[len(w.from.runs)-2].chain < size {
		return all[len(all)-1]
	}
	return 0
}

// spaceBesideTurning reports whether the row below ends with a space and its turning chain.
func (w *work) spaceBesideTurning() bool {
	k := len(w.from.runs) - 1
	return k > 1 && w.from.runs[k].tch && w.from.runs[k-1].space()
}

// spacesAt are the places of the chain spaces of a size that are still to come.
func (w *work) spacesAt(size int) []int {
	var all []int
	for c := w.cur; c.i < len(c.f.runs); {
		if r := c.run(); r.space() {
			if c.f.sized(c.i, size) {
				all = append(all, c.pos)
			}
			c.step(r.chain - c.off)
		} else {
			c.step(r.n - c.off)
		}
	}
	return all
}

// withoutLead is what a repeat works the last time, if it then stops before the chains that only lead to the next: * dc3tog **,
// ch 2; rep from * across, ending last rep at **.
func withoutLead(n *ins.Repeat) []ins.Item {
	if n.Stop <= 0 || n.Stop >= len(n.Body) || slices.ContainsFunc(n.Body[n.Stop:], func(m ins.Item) bool { return !is[*ins.Chain](m) && !is[*ins.Nothing](m) }) {
		return n.Body
	}
	return n.Body[:n.Stop]
}

// perTime is how many stitches of the row below a list uses each time; 0 if that is not known.
func (w *work) perTime(body []ins.Item) int {
	per := 0
	for _, m := range body {
		used, _, ok := w.needs(m)
		if !ok {
			return 0
		}
		per += used
	}
	return per
}

// endSaid is how many instructions behind a repeat only say with what its last time ends: * p5, k1, p1 *,
// rep from * to * across, end k1, p1; and how many instructions of the repeat that leaves out. 0: they are worked.
func (w *work) endSaid(n *ins.Repeat, tail []ins.Item, keep, need int) (said, cut int) {
	words := wordsAhead(tail) // ending with
	tail = tail[words:]
	k := 0
	for k < len(tail) && !is[*ins.Turn](tail[k]) && !is[*ins.Nothing](tail[k]) && !turnsNext(tail[k:]) {
		k++
	}
	body := n.Body
	for len(body) > 1 && is[*ins.Chain](body[len(body)-1]) {
		body, cut = body[:len(body)-1], cut+1
	}
	toLast := n.Until.Kind == ins.ToLast && n.Until.N.By == nil && n.Until.N.All == 1 // rep from * to last sc, 3 dc in last sc
	if k == 0 || k >= len(body) || n.Until.Kind != ins.NoExtent && n.Until.Kind != ins.ToEnd && !toLast {
		return 0, 0
	}
	per := w.perTime(n.Body)
	if per == 0 {
		per = w.perTrial(n.Body)
	}
	ends := k == 1 && standsFor(body[len(body)-1], tail[0], words > 0)
	mesh := per == 1 && ends && words > 0 && w.spaceBesideTurning() // * ch 1, skip next sp, dc in next dc, ending with dc in 3rd ch of tch
	if per == 0 || !mesh && (w.cur.left-keep)%per == 0 || (w.cur.left-need)%per != 0 {
		return 0, 0
	}
	if ends { // across, ending with 2 sc in last dc
		return 0, cut + 1
	}
	if toLast || !slices.EqualFunc(body[len(body)-k:], tail[:k], w.sameBare) {
		return 0, 0
	}
	return words + k, cut
}

// wordsAhead is how many of a list are words before its first instruction.
func wordsAhead(list []ins.Item) int {
	if k := slices.IndexFunc(list, func(n ins.Item) bool { return !is[*ins.Nothing](n) }); k >= 0 {
		return k
	}
	return len(list)
}

// perTrial is how many stitches a list takes the next time; 0 if it does not fit.
func (w *work) perTrial(body []ins.Item) int {
	s := w.save()
	fits := w.trial(body)
	per := s.place.cur.left - w.cur.left
	if w.restore(s); !fits {
		return 0
	}
	return per
}

// lastLoop is how many stitches a repeat keeps of which the last loop is told behind it, and what is worked in its place.
func (w *work) lastLoop(n *ins.Repeat, tail []ins.Item, keep int) (int, func()) {
	at, last := w.closes(n, tail, keep)
	if last == 0 {
		return keep, func() {}
	}
	keep += last
	return keep, func() {
		if w.cur.left == keep {
			w.seq(n.Body[:at], 0)
			if k := min(w.cur.left, w.cur.left-keep+last); k > 0 {
				w.cur.step(k)
			}
		}
	}
}

// closes reports whether what stands behind a repeat is its last loop, closed into the beginning of the round by a shorter chain
// and a stitch: * ch 5, skip 2, sc in next; repeat from * around, ending with ch 2, dc in first sc; or by the join in place of
// its last stitch: * ch 7, skip 2, sc in next, ch 5, skip 1, sc in next; repeat from * around, ending with ch 5, join. It gives
// how much of the repeat the last time still has, and how many stitches it takes; 0: it is not so.
func (w *work) closes(n *ins.Repeat, tail []ins.Item, keep int) (at, last int) {
	words := wordsAhead(tail)
	if tail = tail[words:]; !w.round || words == 0 || len(tail) < 2 || n.Until.Kind != ins.ToEnd || !intoBeginning(tail[1]) {
		return 0, 0
	}
	ch, ok := tail[0].(*ins.Chain)
	for at = len(n.Body) - 1; at >= 0 && !is[*ins.Chain](n.Body[at]); at-- {
	}
	per := w.perTime(n.Body)
	if !ok || at < 0 || per == 0 || w.cur.left-keep < 2*per {
		return 0, 0
	}
	switch more := w.count(n.Body[at].(*ins.Chain).N) - w.count(ch.N); {
	case more > 0 && len(tail) == 2 && is[*ins.Stitch](tail[1]) && (w.cur.left-keep)%per == 0:
		return at, per
	case more >= 0 && (w.cur.left-keep+1)%per == 0 && slices.ContainsFunc(n.Body[:at], is[*ins.Stitch]) && onlySkipsToLast(n.Body[at+1:]):
		return at, per - 1
	}
	return 0, 0
}

// intoBeginning reports whether an instruction is the join of a round, or a stitch into what it began with.
func intoBeginning(n ins.Item) bool {
	st, ok := n.(*ins.Stitch)
	if !ok {
		return is[*ins.Join](n)
	}
	return len(st.Places) == 1 && (st.Places[0].Kind == ins.InFirst || st.Places[0].Kind == ins.InTop || st.Places[0].Kind == ins.InSame)
}

// onlySkipsToLast reports whether a list passes stitches and works one.
func onlySkipsToLast(list []ins.Item) bool {
	k := len(list) - 1
	return k >= 0 && is[*ins.Stitch](list[k]) && !slices.ContainsFunc(list[:k], func(n ins.Item) bool { return !is[*ins.Skip](n) })
}

// endsSooner is a repeat of which the last time ends with fewer stitches than the others, as what stands behind it says: *yo,
// sl 1, k2tog, psso, yo, k3, rep from * across, ending with yo, k2.
func (w *work) endsSooner(n *ins.Repeat, tail []ins.Item) *ins.Repeat {
	words := wordsAhead(tail)
	k := words
	for k < len(tail) && is[*ins.Stitch](tail[k]) {
		k++
	}
	end := tail[words:k]
	per := w.perTime(n.Body)
	at := len(n.Body) - len(end)
	if words == 0 || len(end) == 0 || at <= 0 || per == 0 || n.Stop >= 0 || w.cur.left%per == 0 {
		return n
	}
	if less := w.fewer(n.Body[at:], end); less == 0 || (w.cur.left+less)%per != 0 {
		return n
	}
	sooner := *n
	sooner.Stop = at
	return &sooner
}

// fewer is by how many stitches an end is shorter than the end of the repeat that it stands for: yo, k3, ending with yo, k2; 0
// if it is another.
func (w *work) fewer(body, end []ins.Item) int {
	k := len(end) - 1
	a, ok := body[k].(*ins.Stitch)
	b, ok2 := end[k].(*ins.Stitch)
	if !ok || !ok2 || a.Kind == nil || a.Kind != b.Kind || a.Kind.Uses != 1 || len(a.Places)+len(b.Places) > 0 || !slices.EqualFunc(body[:k], end[:k], w.sameBare) {
		return 0
	}
	return max(w.count(a.N)-w.count(b.N), 0)
}

// endsInTurning is a stretch once more without its last stitch, which is told behind it and goes into the turning chain, where just that
// fits: *shell in next sc, sc in next ch-5 sp; rep from * across, ending sc in 3rd ch of ch-5.
func (w *work) endsInTurning(body, tail []ins.Item, keep int) []ins.Item {
	k := len(body) - 1
	tail = tail[wordsAhead(tail):]
	if w.round || k < 1 || len(tail) == 0 || w.cur.left <= keep || !standsFor(body[k], tail[0], true) {
		return nil
	}
	if a, b := body[k].(*ins.Stitch), tail[0].(*ins.Stitch); a.Kind != b.Kind || b.Places[0].Kind != ins.InTop || w.perTrial(body[:k]) != w.cur.left-keep {
		return nil
	}
	return body[:k]
}

// turnsNext reports whether a list begins with the chain of the next row: ch 1, turn.
func turnsNext(list []ins.Item) bool {
	return len(list) > 1 && is[*ins.Chain](list[0]) && is[*ins.Turn](list[1])
}

// sameBare reports whether two instructions are as many stitches of one kind, into the next ones.
func (w *work) sameBare(m, n ins.Item) bool {
	a, ok := m.(*ins.Stitch)
	b, ok2 := n.(*ins.Stitch)
	return ok && ok2 && a.Kind == b.Kind && w.count(a.N) == w.count(b.N) && len(a.Places)+len(b.Places) == 0
}

// standsFor reports whether a stitch behind a repeat is worked in place of its last one. If no word such as ending says so it is
// no slip stitch, which joins.
func standsFor(each, end ins.Item, said bool) bool {
	a, ok := each.(*ins.Stitch)
	b, ok2 := end.(*ins.Stitch)
	return ok && ok2 && insteadOf(a.Places, b.Places) && (said || b.Places[0].Kind == ins.InLast && b.Kind != nil && b.Kind.ID != "slst")
}

// insteadOf reports whether a stitch at the end of a row is the last of its repeat, told by where it goes: dc in next
// dc, ending with dc in top of ch-3.
func insteadOf(each, end []ins.Place) bool {
	return len(each) == 1 && len(end) == 1 && (each[0].Kind == ins.InNext || each[0].Kind == ins.InEach) && (end[0].Kind == ins.InTop || end[0].Kind == ins.InLast) && each[0].N.By == nil && each[0].N.All == 1
}

// looped reports whether a repeat has come to where it ends.
func (w *work) looped(keep int, body []ins.Item) bool {
	if w.cur.left == keep && keep > 0 {
		return true
	}
	return w.cur.left <= keep && !(keep == 0 && w.bySpaces(body) && w.spaceBefore(0, 0))
}

// toldLast is what a repeat works the last time, if it says so itself.
func (w *work) toldLast(e ending) []ins.Item {
	if !stops(e.n) && len(e.n.Last) == 0 {
		return nil
	}
	return w.lastBody(e.n)
}

// ledIn is the plain stitches of a repeat over what is left of a round that begins with the increase in which each repeat ends:
// ch 3, dc in same st, *dc in next 2 sts, 2 dc in next st; rep from * around.
func (w *work) ledIn(e ending) []ins.Item {
	k := len(e.body) - 1
	if !e.led || !w.round || k < 1 || e.rest == 0 || e.rest != e.per-1 || e.keep > 0 {
		return nil
	}
	if st, ok := e.body[k].(*ins.Stitch); !ok || !st.Inc && (len(st.Places) != 1 || st.Places[0].Kind != ins.InNext || w.count(st.N) < 2) {
		return nil
	}
	if w.perTrial(e.body[:k]) != e.rest {
		return nil
	}
	return e.body[:k]
}

// slipsAround is what a repeat passes before its slip stitch to the next stitch, where that is the one in which the round began: 3 sc in same
// st, *skip next st, sl st in next st, 3 sc in same st; rep from * around, join.
func (w *work) slipsAround(e ending) []ins.Item {
	k := w.fills(e.n.Body, e.rest)
	if !w.round || e.times == 0 || k == 0 || k+1 >= len(e.n.Body) || e.keep > 0 || !goesInSame(e.n.Body[k+1:]) {
		return nil
	}
	st, ok := e.n.Body[k].(*ins.Stitch)
	if !ok || st.Kind == nil || st.Kind.ID != "slst" || len(st.Places) != 1 || st.Places[0].Kind != ins.InNext {
		return nil
	}
	return e.n.Body[:k]
}

// passesFirst is a stretch once more over the last space of a round, without the stitches that it passes at its
// end: they are the chain that began the round.
func (w *work) passesFirst(e ending) []ins.Item {
	k := len(e.n.Body) - 1
	if !w.round || k < 1 || !is[*ins.Skip](e.n.Body[k]) || !w.spaceBefore(0, 0) || w.skipsFirst(e.n.Body[k:]) < w.cur.left {
		return nil
	}
	part := append(slices.Clip(e.n.Body[:k]), &ins.Skip{}) // its chains lead on to where it began
	s := w.save()
	fits := w.trial(part)
	if w.restore(s); !fits {
		return nil
	}
	return part
}

// cutShort works the first stitches of a rib over the rest of a row.
func (w *work) cutShort(body []ins.Item, rest int) {
	for _, n := range body {
		st, ok := n.(*ins.Stitch)
		if !ok || rest <= 0 {
			return
		}
		part := *st
		uses := &part.N
		if len(st.Places) == 1 && st.Places[0].Kind == ins.InNext { // 2 dc in next st
			part.Places = slices.Clone(st.Places)
			uses = &part.Places[0].N
		}
		*uses = ins.N(min(rest, w.count(*uses)))
		w.seq([]ins.Item{&part}, 0)
		rest -= uses.All
	}
}

// misfit tells why a repeat does not go on to its end. One that changes the count is worked in a round as far as it goes; one
// that keeps it makes what its row states however it fits, so that this tells nothing.
func (w *work) misfit(n *ins.Repeat, rest, times, per int, fits, moved bool, keep int, changes bool) {
	body := n.Body
	if !moved && fits {
		if w.pinned || len(w.from.runs) == 0 {
			w.doubtful("it does not say how often to repeat")
			return
		}
		w.tell("rows/repeat", finding.Warning, n.At, "this repeat uses no stitch of the row below, so it never ends", "say how many times it is worked")
		return
	}
	if times == 0 && !fits {
		w.seq(body, 0) // tells why not even the first fits
		return
	}
	if size, ok := w.spaceIn(body); ok && times > 0 && !w.spaceBefore(size, 0) { // no space is left: the rest lies behind the last one
		return
	}
	if w.round && times > 0 && keep == 0 && w.joinedBefore(body, rest, per) {
		w.behind(keep)
		return
	}
	if n.Cut && times > 0 && rest < per {
		w.cutShort(body, rest)
		return
	}
	if rest == 0 && times > 0 { // nothing is left over
		return
	}
	each := max(per, 1)
	if per == 0 {
		each = max(len(body), 1)
	}
	w.tell("rows/repeat", finding.Warning, n.At, "the repeat does not fit: %s stitches are left over after %s times | %s stitches to repeat over, the repeat uses %s | a multiple of %s",
		"have %s stitches more or %s fewer before it, or say what to do with the rest", rest, times, rest+times*per, each, each, max(each-rest, 1), rest)
	if rest < per {
		if w.cutShort(body, rest); w.round && changes && len(w.found) > 0 && w.takesOne(body[0], rest) {
			w.found[len(w.found)-1].short = true
		}
	}
	w.behind(keep)
}

// takesOne reports whether an instruction can be worked once over the rest of a row: a decrease over one stitch can't.
func (w *work) takesOne(n ins.Item, rest int) bool {
	st, ok := n.(*ins.Stitch)
	if !ok || len(st.Places) > 0 {
		return true
	}
	_, _, uses := w.resolve(st)
	return uses <= rest
}

// joinedBefore reports whether a round is joined before a repeat comes to what it passes of the rest.
func (w *work) joinedBefore(body []ins.Item, rest, per int) bool {
	return rest < per && w.skipsFirst(body) >= rest || rest == 1 && w.endsOnAnchor(body)
}

// endsOnAnchor reports whether all that is left is a stitch between two arches, and a repeat begins with a chain that leads over
// such a one.
func (w *work) endsOnAnchor(body []ins.Item) bool {
	c := w.cur
	if c.passSpaces(); len(body) < 2 || !is[*ins.Chain](body[0]) || !c.anchor() {
		return false
	}
	st, ok := body[1].(*ins.Stitch)
	return ok && len(st.Places) == 1 && st.Places[0].Unit.Stitch != nil && !alike(st.Places[0].Unit.Stitch, c.run().kind)
}

// behind goes on behind what a repeat leaves over.
func (w *work) behind(keep int) {
	for w.cur.left > keep {
		w.cur.passSpaces()
		r := w.cur.run()
		if r == nil {
			break
		}
		w.cur.step(min(r.n-w.cur.off, w.cur.left-keep))
	}
}

// endsWider is the last time of a repeat up to the stitches that are told wider as its end: k7, *p4, k4, repeat from *, ending k7, over
// 4 more than so many times.
func (w *work) endsWider(e ending) []ins.Item {
	k := w.fills(e.n.Body, e.rest)
	if e.times == 0 || e.n.Until.Kind != ins.ToEnd || e.n.Stop >= 0 || len(e.tail) == 0 || k == 0 || k != len(e.n.Body)-1 {
		return nil
	}
	end, ok := e.tail[0].(*ins.Stitch)
	next, ok2 := e.n.Body[k].(*ins.Stitch)
	if !ok || !ok2 || end.Kind == nil || end.Kind.Craft != stitch.Knitting || next.Kind != end.Kind {
		return nil
	}
	return e.n.Body[:k]
}

// endsEarly is the last time of a repeat up to the last so many stitches as far as it comes just up to them: *skip 2, sc in next,
// skip 2, 5 dc in next; rep from * to last 3 ch, over 6 stitches and 3 more.
func (w *work) endsEarly(e ending) []ins.Item {
	k := w.fills(e.n.Body, e.rest)
	if e.times == 0 || e.n.Until.Kind != ins.ToLast || e.n.Stop >= 0 || k == 0 {
		return nil
	}
	if st, ok := e.n.Body[k-1].(*ins.Stitch); !ok || st.Kind == nil || st.Kind.Craft != stitch.Crochet {
		return nil
	}
	return e.n.Body[:k]
}

// fills is how many instructions of a list take just so many stitches; 0 if none do.
func (w *work) fills(list []ins.Item, rest int) int {
	for i, m := range list {
		used, _, known := w.needs(m)
		if rest -= used; !known || rest < 0 {
			return 0
		}
		if rest == 0 && used > 0 {
			return i + 1
		}
	}
	return 0
}

// comesBack is what fits of a stretch once more, up to where a round began behind slip stitches, or in the loop that the
// round before ended in; empty if it has come there already.
func (w *work) comesBack(e ending) []ins.Item {
	body := e.n.Body
	if !w.round || e.times == 0 || w.travel == 0 && !w.from.midArch && !(w.cur.left == e.keep && w.bySpaces(body[:1]) && w.spaceBefore(0, 0)) {
		return nil
	}
	s, at := w.save(), w.cur.pos
	body = w.unfolded(body)
	n := 0
	for n < len(body) && w.trial(body[n:n+1]) {
		n++
	}
	over, left := w.cur.pos > at, w.cur.left-e.keep
	w.restore(s)
	switch {
	case over && (left <= 0 || w.spaced) && !(w.bySpaces(body) && n == len(body)):
		return body[:n]
	case w.cur.left-e.keep <= w.around:
		return []ins.Item{}
	}
	return nil
}

// unfolded is a stretch with each bracket that is worked a few times in its place written out.
func (w *work) unfolded(body []ins.Item) []ins.Item {
	const most = 8
	var out []ins.Item
	for _, n := range body {
		q, ok := n.(*ins.Repeat)
		if !ok || len(q.Places) > 0 || q.Until.Kind != ins.NoExtent || q.Stop >= 0 || len(q.Last) > 0 || w.count(q.Times) > most {
			out = append(out, n)
			continue
		}
		for range max(w.count(q.Times), 1) {
			out = append(out, q.Body...)
		}
	}
	return out
}
