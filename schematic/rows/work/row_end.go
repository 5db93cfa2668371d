package work

import (
	"fmt"
	"slices"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// offCount marks a line's last row in the graph if it makes another count than is stated.
func (r *runner) offCount(l *ins.Line) {
	k := len(r.g.Rows) - 1
	if k < 0 || l.Stated == nil || r.g.Rows[k].Line != l.At.Line || r.g.Rows[k].Unread != "" || r.ofSizes(l) || r.perRepeat(l) || r.shortTotal(r.said(l)) {
		return
	}
	if r.res == nil || r.res.total || !r.known() { // then what is drawn is all that can be counted
		if said, made, chains := r.said(l), r.g.Rows[k].counted(), r.g.Rows[k].chains(); r.round && said > 0 && made > 0 && said != made && said != made+chains {
			r.g.Rows[k].Amiss, r.g.lost = fmt.Sprintf("%d drawn, %d stated", made, said), true
		}
		return
	}
	if off := r.misfits(l, r.fab); len(off) > 0 && len(off[0].a) > 1 && off[0].a[0] > 0 { // what is counted by a name of its own may be there
		r.g.Rows[k].Amiss = fmt.Sprintf("%d drawn, %d stated", off[0].a[0], off[0].a[1])
		r.g.lost = r.g.lost || r.round // it, or its count, is not what is meant
	}
}

// addChain puts a chain that adds stitches before the row below: one that the row works into from the hook. It
// stands at the end of the row before, or begins this one.
func (r *runner) addChain(below *fabric, carry *ins.Chain, body []ins.Item) (*fabric, *ins.Chain, []ins.Item) {
	k := 0
	switch n := foundationOf(body); {
	case n != nil:
		k, body = n.N.At(r.size), behindWords(body)[1:]
	case !fromHook(body):
	case carry != nil:
		k, carry = carry.N.At(r.size), nil
	case len(below.runs) > 1 && below.runs[0].space():
		k = below.runs[0].chain
		below = &fabric{runs: below.runs[1:], picots: below.picots, groups: below.groups}
		if r.g != nil {
			r.g.lost = true
		}
	}
	if k <= 0 {
		return below, carry, body
	}
	f := &fabric{}
	f.add(run{kind: chainStitch(), n: min(k, maxSteps), base: true})
	if r.g != nil {
		r.g.chained(min(k, maxSteps))
	}
	return joined2(f, below), nil, body
}

// fromHook reports whether a row begins with a stitch in a chain counted from the hook.
func fromHook(body []ins.Item) bool {
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Nothing, *ins.Turn:
			continue
		case *ins.Stitch:
			return n.Kind != nil && n.Kind.ID != "slst" && len(n.Places) > 0 && n.Places[0].Kind == ins.FromHook
		}
		return false
	}
	return false
}

// leftOver says what becomes of stitches that a row has not used.
func (r *runner) leftOver(w *work, res *result, l *ins.Line, body []ins.Item) {
	if w.usesAll() {
		return
	}
	_, _, into := ringedIn(l.Body)
	switch {
	case w.leave && !(wrapped(body) && r.shortRow(w, l, body)), r.leavesEnd(w, l, body) && len(r.misfits(l, w.out)) == 0:
		res.lefts = rest(&w.cur)
	case l.Label == nil && l.Stated == nil && !w.leave && (r.round && !into && !w.from.foundation() || offLast(body)): // hdc in next st, sl st in next st: the end of a spiral; k1, p1, bind off the next 2 sts: the rest is told behind
		res.total = true
	case endsInSlip(body):
		res.lefts = rest(&w.cur)
	case r.shortRow(w, l, body):
		res.lefts = w.beyondTurn()
		res.ahead = res.lefts
		if r.g != nil {
			r.g.waits(w.cur.pos, w.cur.left, wrapped(body))
		}
	case w.pinned || w.free || w.quiet > 0 || w.blind || l.Label == nil && l.Stated == nil:
	case w.spaced && !w.spaceBefore(0, 0) || w.bySpaces(body) && !w.spaceBefore(0, 0) && w.round:
	case r.round && w.cur.left <= w.from.untilSpace() && firstInSameSpace(body): // it began in a space without a word of the way there
	case max(w.lastChain(body), w.passedLast(body)) >= w.cur.left: // they lie under the chain that closes the round
	case uses(w.found), l.Stated != nil && w.leavesChain() && len(r.misfits(l, w.out)) == 0:
	case l.Stated != nil && w.cur.left > mostTurning && len(r.misfits(l, w.out)) == 0:
		if res.lefts = rest(&w.cur); r.saysLeft(l) {
			return
		}
		w.tell("rows/under-use", finding.Note, l.At, "%s stitches are left at the end, and the text does not say so", "say that they are left, or work them", w.cur.left)
	case r.tellsLeft(l, w.cur.left):
		res.lefts = rest(&w.cur)
	default:
		below := w.from.stitches()
		left := w.cur.left - w.around
		w.tellGap(left, below, "rows/under-use", endOf(l, body), "%s stitches are left over at the end | %s stitches in the row below, %s used | all of them worked, or the text to say that the rest stay unworked",
			"work %s more, or say that they are left unworked", left, below, below-left, left)
	}
}

// leftBeside are the words of a sentence beside a row that say that stitches of it are not worked.
var leftBeside = text.Once(`(?i)\bunworked\b|\b(?:left|leave|leaving|remain\w*) (?:free|open|aside|behind|un\w+)\b|\b(?:sts|stitches)\b[\w ]{0,40}\bleft\b|\bnot (?:be )?worked\b`)

// saysLeft reports whether a row is the first of another piece, or the text says beside it, above or below, that stitches are left.
func (r *runner) saysLeft(l *ins.Line) bool {
	if r.no == 0 && l.Label != nil && !l.Label.Next {
		return true
	}
	k := slices.Index(r.section.Lines, l)
	from, to := l.At.Line, len(r.x.Src)
	for i := k - 1; i >= 0 && from == l.At.Line; i-- {
		if e := r.section.Lines[i]; e.Label != nil || i == 0 {
			from = e.At.Line
		}
	}
	if k >= 0 && k+1 < len(r.section.Lines) {
		to = r.section.Lines[k+1].At.Line
	}
	return slices.ContainsFunc(r.x.Src[from-1:min(to, len(r.x.Src))], func(s string) bool { return leftBeside().MatchString(s) })
}

// tellsLeft reports whether a sentence on a line of its own, beside a row, says that so many stitches of it are not worked, or the rest.
func (r *runner) tellsLeft(l *ins.Line, left int) bool {
	k := slices.Index(r.section.Lines, l)
	if k < 0 {
		return false
	}
	from, to := r.section.At.Line, len(r.x.Src)
	for _, e := range r.section.Lines[:k] {
		if n := len(e.Words); e.Label != nil && n > 0 {
			from = e.Words[n-1].Line
		}
	}
	if i := slices.IndexFunc(r.section.Lines[k+1:], func(e *ins.Line) bool { return e.Label != nil }); i >= 0 {
		to = r.section.Lines[k+1+i].At.Line - 1
	}
	for _, s := range r.x.Src[min(from, to):to] {
		if n, ok := text.LeftAlone(s); ok && (n == left || n == 0) {
			return true
		}
	}
	return false
}

// untilSpace is how many stitches stand before the first space.
func (f *fabric) untilSpace() (n int) {
	for i := range f.runs {
		if f.runs[i].space() {
			return n
		}
		n += f.runs[i].n
	}
	return 0
}

// firstInSameSpace reports whether the first place that is named is a space in which the round has begun.
func firstInSameSpace(body []ins.Item) bool {
	for _, n := range body {
		if p := placesOf(n); len(p) > 0 {
			return p[0].Kind == ins.InSame && (p[0].Unit.Space || p[0].Unit.Word == "corner")
		}
	}
	return false
}

// lastDone is the last of what a row says that is more than words; -1 if there is none.
func lastDone(body []ins.Item) int {
	k := len(body) - 1
	for k >= 0 && is[*ins.Nothing](body[k]) {
		k--
	}
	return k
}

// offLast reports whether the last that a row says is that stitches behind others are bound off.
func offLast(body []ins.Item) bool {
	k := lastDone(body)
	if k < 1 {
		return false
	}
	off, ok := body[k].(*ins.BindOff)
	return ok && !off.All && !off.Hold && slices.ContainsFunc(body[:k], is[*ins.Stitch])
}

// endOf is where the last instruction of a line stands.
func endOf(l *ins.Line, body []ins.Item) ins.Span {
	if n := len(body); n > 0 && body[n-1].Span().Line > 0 {
		return body[n-1].Span()
	}
	return l.At
}

// usesAll reports whether nothing is left over: of the other side of a chain the place that the round began in may be, and
// what slip stitches went over.
func (w *work) usesAll() bool { return w.cur.left <= w.around || w.under && w.cur.left == 1 }

// joinsRound reports whether an instruction joins a round: join, or sl st in top of ch-3.
func joinsRound(n ins.Item) bool {
	st, ok := n.(*ins.Stitch)
	return is[*ins.Join](n) || ok && st.Kind != nil && st.Kind.ID == "slst" && len(st.Places) == 1 && (st.Places[0].Kind == ins.InTop || st.Places[0].Kind == ins.InFirst)
}

// lastChain is how many stitches may lie under the chain that closes a round: as many as its
// repeat passes each time.
func (w *work) lastChain(body []ins.Item) int {
	k := len(body) - 1
	for k >= 0 && (joinsRound(body[k]) || is[*ins.Nothing](body[k])) {
		k--
	}
	if k < 1 || !slices.ContainsFunc(body[k+1:], joinsRound) || !ofLoop(body[k]) {
		return 0
	}
	for k > 0 && ofLoop(body[k]) {
		k--
	}
	if r, ok := body[k].(*ins.Repeat); ok {
		return w.skipsFirst(r.Body)
	}
	return 0
}

// ofLoop reports whether an instruction makes chains or a picot on them, so that nothing of the row below is worked.
func ofLoop(n ins.Item) bool {
	switch n := n.(type) {
	case *ins.Chain, *ins.Nothing:
		return true
	case *ins.Stitch:
		return n.Kind != nil && (n.Kind.ID == "picot" && len(n.Places) == 0 || closesPicot(n) && len(n.Places) == 1 && n.Places[0].Kind == ins.FromHook)
	}
	return false
}

// passedLast is how many stitches a round leaves before its join: as many as the repeat that it ends with passes each time
// before it works one.
func (w *work) passedLast(body []ins.Item) int {
	k := len(body) - 1
	for k >= 0 && (joinsRound(body[k]) || is[*ins.Nothing](body[k])) {
		k--
	}
	if k < 0 || !w.round {
		return 0
	}
	if r, ok := body[k].(*ins.Repeat); ok && len(r.Places) == 0 {
		return w.skipsFirst(r.Body)
	}
	return 0
}

// mostTurning is how many chains of a foundation a row leaves to turn with, at most.
const mostTurning = 3

// leavesChain reports whether what a row has left are the chains of its foundation that it turned with.
func (w *work) leavesChain() bool {
	return w.from.runs[0].base && len(w.from.runs) == 1 && w.cur.left <= mostTurning
}

// shortRow reports whether a knitted row turns before its end: a short row, of a heel or a shoulder.
func (r *runner) shortRow(w *work, l *ins.Line, body []ins.Item) bool {
	if !w.turned || r.round || len(body) < 2 {
		return false
	}
	if _, ok := body[len(body)-1].(*ins.Turn); !ok && !wrapped(body) {
		return false
	}
	k := w.out.main()
	if k == nil || k.Craft != stitch.Knitting {
		return false
	}
	if l.Stated == nil {
		return true
	}
	said := r.said(l)
	return said == w.out.stitches() || said == w.out.stitches()+w.cur.left
}

// turnsWithin reports whether a row is wrapped and turned before its end, and goes on: only how many stitches it adds is known.
func turnsWithin(body []ins.Item) bool {
	for i := range body {
		if i > 0 && wrapped(body[:i+1]) && slices.ContainsFunc(body[i+1:], func(n ins.Item) bool { return is[*ins.Stitch](n) }) {
			return true
		}
	}
	return false
}

// net is how many stitches instructions add, or take away.
func net(body []ins.Item, size int) int {
	by := 0
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Stitch:
			switch k := max(n.N.At(size), 0); {
			case n.Inc:
				by += k
			case n.Dec:
				by -= k
			case n.Kind != nil:
				by += k * (n.Kind.Makes - n.Kind.Uses)
			}
		case *ins.CastOn:
			by += max(n.N.At(size), 0)
		case *ins.Repeat:
			by += net(n.Body, size) * max(n.Times.At(size), 0)
		}
	}
	return by
}

// oneForOne reports whether a row can only leave as many stitches as it finds: *k2, p2, again and again.
func oneForOne(body []ins.Item) bool {
	return !slices.ContainsFunc(body, func(n ins.Item) bool {
		switch n := n.(type) {
		case *ins.Stitch:
			return n.Inc || n.Dec || n.Kind == nil || n.Kind.Craft != stitch.Knitting || n.Kind.Uses != 1 || n.Kind.Makes != 1
		case *ins.Repeat:
			return !oneForOne(n.Body)
		}
		return !is[*ins.Nothing](n)
	})
}

// wrapped reports whether a row ends where a stitch is wrapped and the work turned.
func wrapped(body []ins.Item) bool {
	q, ok := body[len(body)-1].(*ins.Repeat)
	if !ok || len(q.Body) != 2 {
		return false
	}
	_, leaves := q.Body[0].(*ins.Leave)
	_, turns := q.Body[1].(*ins.Turn)
	return leaves && turns
}

// joined2 is a row and what lies beyond it.
func joined2(a, b *fabric) *fabric {
	f := &fabric{runs: append([]run(nil), a.runs...), picots: a.picots, groups: a.groups, ring: a.ring, marks: a.marks}
	for _, q := range b.runs {
		f.add(q)
	}
	for _, m := range b.marks {
		f.marks = append(slices.Clip(f.marks), a.stitches()+m)
	}
	return f
}

// endsInSlip reports whether a row goes up to its last stitches and slips into the next one: those behind it are left, as
// at a shoulder.
func endsInSlip(body []ins.Item) bool {
	k := lastDone(body)
	if k < 1 {
		return false
	}
	last, slip := body[k].(*ins.Stitch)
	before, ok := body[k-1].(*ins.Stitch)
	return slip && ok && last.Kind != nil && last.Kind.ID == "slst" && last.N.By == nil && last.N.All == 1 && len(before.Places) == 1 && before.Places[0].Extent.Kind == ins.ToLast
}

// upToLast reports whether a row goes up to its last stitches and turns there (turns: or is shaped, and need not say so): they are
// then left, if the stated count leaves them out too.
func upToLast(body []ins.Item, turns bool) bool {
	k := len(body) - 1
	for k >= 0 && (is[*ins.Turn](body[k]) || is[*ins.Chain](body[k]) || is[*ins.Nothing](body[k])) {
		turns = turns || is[*ins.Turn](body[k])
		k--
	}
	if k < 0 || !turns {
		return false
	}
	last, ok := body[k].(*ins.Stitch)
	return ok && len(last.Places) > 0 && last.Places[len(last.Places)-1].Extent.Kind == ins.ToLast
}

// leavesEnd reports whether a row leaves its last stitches, if its count says so too: it goes up to them, or passed as many by slip
// stitches at its beginning.
func (r *runner) leavesEnd(w *work, l *ins.Line, body []ins.Item) bool {
	slips := slipsBefore(body, r.size)
	return (l.Stated != nil || slips > 0) && upToLast(body, slips > 0) || l.Stated != nil && slips >= w.cur.left
}
