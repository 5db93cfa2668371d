package work

import (
	"slices"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// around is what a row is worked as: where its instructions stand once, as in 2 sc, inc (24) or *sc, inc* (24), or go
// around together, as in inc, sc around (18), and its count says so, they are worked again and again.
func (r *runner) around(l *ins.Line, body []ins.Item) []ins.Item {
	if r.fab == nil || !r.known() {
		return body
	}
	head, mid, tail := ends(body)
	once := onceAround(mid)
	if once == nil || l.Stated == nil && !decreasesAcross(mid) {
		return body
	}
	if near, fits := r.tried(l, body); l.Stated != nil && (fits || near && len(placesOf(mid[len(mid)-1])) == 0) {
		return body
	}
	all := &ins.Repeat{Placed: placed(mid), Body: once, Until: ins.Extent{Kind: ins.ToEnd}, Stop: -1}
	again := slices.Concat(head, []ins.Item{all}, tail)
	if near, fits := r.tried(l, again); fits || near {
		return again
	}
	return body
}

// decreasesAcross reports whether a row of knitting works some stitches and then a decrease that goes across it, which mostly means
// both: k3, k2tog across.
func decreasesAcross(body []ins.Item) bool {
	last, ok := body[len(body)-1].(*ins.Stitch)
	return ok && len(body) > 1 && last.Kind != nil && last.Kind.Craft == stitch.Knitting && last.Kind.Uses > 1 && goesOn(last.Places)
}

// meant is a row whose words have a second sense, in that sense if it fits only so: in each dc within a repeat is in
// the next one, one bracket alone goes around, and stitches that are only counted go over the chains of spaces too.
func (r *runner) meant(l *ins.Line, body []ins.Item) []ins.Item {
	if r.fab == nil || !r.known() {
		return body
	}
	body = r.atSpaces(l, body)
	_, plain := r.tried(l, body)
	if plain && !r.fab.parted() {
		return body
	}
	next := nextInRepeat(body)
	if plain && next == nil { // between any two spaces is one stitch: it is each by itself
		return body
	}
	if next == nil {
		next = bracketAround(body)
	}
	if next == nil && l.Stated != nil {
		next = r.other(l, body)
	}
	if next == nil && l.Stated == nil {
		next = r.countedLast(l, body)
	}
	flat := r.chainsCounted(l, body)
	if next == nil && flat == nil {
		return body
	}
	if next != nil {
		if _, fits := r.tried(l, next); fits {
			return next
		}
	}
	if flat != nil {
		was := r.fab
		r.fab = flat
		if _, fits := r.tried(l, body); !fits {
			r.fab = was
		}
	}
	return body
}

// other is a row that states a count in a further sense that its words may have, if it fits only so: 2 hdc within a repeat
// are two in one stitch; slip stitches at its beginning are no stitches of it. It is nil if there is none.
func (r *runner) other(l *ins.Line, body []ins.Item) []ins.Item {
	for _, sense := range []func([]ins.Item) []ins.Item{twoInOne, pairInOne, allTimes, slipsPassed, beganInOne, chainUncounted, chainCounted, skipsUnder, endsInTurning} {
		list := sense(body)
		if list == nil {
			continue
		}
		if _, fits := r.tried(l, list); fits {
			r.unlikeSaid(list)
			return list
		}
	}
	return nil
}

// countedLast is a row without the number of stitches at its end, if that is just how many it makes: sc in next 19 ch, 20 sc, turn. It
// is nil if it is not.
func (r *runner) countedLast(l *ins.Line, body []ins.Item) []ins.Item {
	_, mid, tail := ends(body)
	k := len(mid) - 1
	if k < 1 {
		return nil
	}
	st, ok := mid[k].(*ins.Stitch)
	if !ok || len(st.Places) > 0 || st.Kind == nil || st.Kind.Craft != stitch.Crochet {
		return nil
	}
	list := slices.Concat(body[:len(body)-len(tail)-1], tail)
	if res := r.test(l, list).res; len(res.found) > 0 || res.total || res.out.stitches() != st.N.At(r.size) {
		return nil
	}
	return list
}

// unlikeSaid asks about a row that fits only if its chain counts otherwise than the text says of such chains.
func (r *runner) unlikeSaid(list []ins.Item) {
	if loose(list) {
		return
	}
	for _, n := range list {
		c, ok := n.(*ins.Chain)
		if !ok {
			continue
		}
		said, noted := r.x.Turning[c.N.All]
		if !noted || c.Count.How == ins.Unsaid || said == c.Count.How {
			return
		}
		words := map[ins.Counts]string{ins.CountsNot: "does not count as a stitch", ins.CountsAsStitch: "counts as a stitch"}
		r.tell("rows/turning-chain", finding.Note, c.At, "ch %s "+words[said]+" in this text, but the row fits only if here it "+strings.Replace(words[c.Count.How], " as a stitch", "", 1),
			"correct a number in the row, or say here what the chain counts as", c.N.All)
		return
	}
}

// twoInOne is a row in whose repeats two or three stitches of which nothing says where they go are worked into one: *2
// hdc, hdc; rep from * around (30). It is nil if there are none.
func twoInOne(body []ins.Item) []ins.Item {
	return inRepeats(body, func(q *ins.Repeat) bool { return len(q.Places) == 0 }, func(st *ins.Stitch) bool {
		if len(st.Places) > 0 || st.Kind == nil || st.Kind.Craft != stitch.Crochet || st.Kind.Uses != 1 || st.N.By != nil || st.N.All < 2 || st.N.All > 3 {
			return false
		}
		st.Places = []ins.Place{{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: st.At}}
		return true
	})
}

// pairInOne is a row whose stitches of which only the last is told a place all go into that one: *sc, dc in next st, skip 1 st. It is nil
// if there are none.
func pairInOne(body []ins.Item) []ins.Item {
	var out []ins.Item
	changed := false
	for i := 0; i < len(body); i++ {
		if q, ok := body[i].(*ins.Repeat); ok && len(q.Places) == 0 {
			if inner := pairInOne(q.Body); inner != nil {
				again := *q
				again.Body, changed = inner, true
				out = append(out, &again)
				continue
			}
		}
		k := len(out)
		for k > 0 && ins.Pair(out[k-1], body[i]) {
			k--
		}
		if k < len(out) {
			out, changed = append(out[:k], ins.InOnePlace(append(slices.Clone(out[k:]), body[i])...)), true
			continue
		}
		out = append(out, body[i])
	}
	if !changed {
		return nil
	}
	return out
}

// allTimes is a row whose last stitches are so many because all of it is worked as often: sc, inc x 6. It is nil if there are none.
func allTimes(body []ins.Item) []ins.Item {
	head, mid, tail := ends(body)
	k := len(mid) - 1
	if k < 1 || !slices.ContainsFunc(mid[:k], is[*ins.Stitch]) {
		return nil
	}
	q := &ins.Repeat{Placed: placed(mid), Body: slices.Clone(mid), Stop: -1}
	switch n := mid[k].(type) {
	case *ins.Stitch:
		if len(n.Places) > 0 || n.N.By != nil || n.N.All < 2 {
			return nil
		}
		one := *n
		q.Times, one.N = n.N, ins.N(1)
		q.Body[k] = &one
	case *ins.Repeat: // sc, inc (6 times)
		if len(n.Body) != 1 || len(n.Places) > 0 || n.Times.By != nil || n.Times.All < 2 {
			return nil
		}
		q.Times, q.Body[k] = n.Times, n.Body[0]
	default:
		return nil
	}
	return slices.Concat(head, []ins.Item{q}, tail)
}

// inRepeats is a row in whose repeats of several instructions, those that are meant, change was tried on a copy of each
// stitch; it reports whether it changed it. Nil if it changed none.
func inRepeats(body []ins.Item, meant func(*ins.Repeat) bool, change func(*ins.Stitch) bool) []ins.Item {
	var out []ins.Item
	for i, n := range body {
		q, ok := n.(*ins.Repeat)
		if !ok || len(q.Body) < 2 || !meant(q) {
			continue
		}
		inner := slices.Clone(q.Body)
		changed := false
		for k, m := range inner {
			if st, ok := m.(*ins.Stitch); ok {
				if one := *st; change(&one) {
					inner[k], changed = &one, true
				}
			}
		}
		if changed {
			if out == nil {
				out = slices.Clone(body)
			}
			again := *q
			again.Body = inner
			out[i] = &again
		}
	}
	return out
}

// slipsPassed is a row without the slip stitches at its beginning, which only pass what they go over: sl st in first 3 sts,
// sc in next 37 sts. It is nil if it has none.
func slipsPassed(body []ins.Item) []ins.Item {
	head, mid, tail := ends(body)
	if len(mid) > 2 && is[*ins.Nothing](mid[1]) {
		mid = slices.Concat(mid[:1], mid[2:])
	}
	if len(mid) < 2 {
		return nil
	}
	s, ok := mid[0].(*ins.Stitch)
	if ok && s.Kind != nil && s.Kind.ID == "slst" && inNextSpace(s) && is[*ins.Chain](mid[1]) && len(mid) > 2 && inNextSpace(mid[2]) { // into the space in which the round begins, which is the next
		return slices.Concat(head, mid[1:], tail)
	}
	if !ok || s.Kind == nil || s.Kind.ID != "slst" || len(s.Places) > 1 || is[*ins.Chain](mid[1]) { // a chain behind them begins the row
		return nil
	}
	p := ins.Place{Kind: ins.InNext, N: s.N, Unit: ins.Unit{Word: "st"}, At: s.At}
	if len(s.Places) == 1 {
		if p = s.Places[0]; p.Kind != ins.InNext && p.Kind != ins.InFirst {
			return nil
		}
	}
	pass := &ins.Skip{Places: []ins.Place{p}}
	pass.Put(s.At)
	rest := mid[1:]
	if c, ok := rest[0].(*ins.Chain); ok && len(rest) > 1 && c.N.By == nil && c.N.All == 1 { // ch 1 behind them only begins the row
		rest = rest[1:]
	}
	return slices.Concat(head, []ins.Item{pass}, rest, tail)
}

// inNextSpace reports whether an instruction, or the first one of a repeat, goes into the next chain space.
func inNextSpace(n ins.Item) bool {
	if q, ok := n.(*ins.Repeat); ok && len(q.Places) == 0 && len(q.Body) > 0 {
		n = q.Body[0]
	}
	list := placesOf(n)
	return len(list) == 1 && list[0].Kind == ins.InNext && (list[0].Unit.Space || list[0].Unit.Word == "corner")
}

// beganInOne is a row whose first bracket holds the chain that it begins with and what goes into the same place: (ch 3, dc), 2
// dc in each st around. It is nil if it does not begin so.
func beganInOne(body []ins.Item) []ins.Item {
	for i, n := range body {
		if is[*ins.Nothing](n) || is[*ins.Turn](n) {
			continue
		}
		q, ok := n.(*ins.Repeat)
		if !ok || len(q.Places) > 0 || q.Until.Kind != ins.NoExtent || q.Times.By != nil || q.Times.All != 1 || len(q.Body) < 2 || !is[*ins.Chain](q.Body[0]) {
			return nil
		}
		one := *q
		one.Places = []ins.Place{{Kind: ins.InSame, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: q.At}}
		return slices.Concat(body[:i], []ins.Item{&one}, body[i+1:])
	}
	return nil
}

// chainUncounted is a row whose first chain, of which it says nothing itself, is no stitch, whatever other rows or the notes say:
// each is judged for itself. It is nil if it begins with none.
func chainUncounted(body []ins.Item) []ins.Item { return chainAs(body, ins.CountsNot) }

// chainCounted is a row whose first chain is a stitch.
func chainCounted(body []ins.Item) []ins.Item { return chainAs(body, ins.CountsAsStitch) }

// skipsUnder is a row that passes a stitch behind a chain that counts as one, which is the stitch under that chain: ch 2 (counts as
// dc), skip st, dc in each st around. It is nil if it begins otherwise.
func skipsUnder(body []ins.Item) []ins.Item {
	for i, n := range body {
		s, ok := n.(*ins.Skip)
		switch {
		case is[*ins.Chain](n), is[*ins.Nothing](n), is[*ins.Turn](n):
			continue
		case !ok || len(s.Places) != 1 || s.Places[0].Kind != ins.InNext || s.Places[0].N.By != nil || s.Places[0].N.All != 1 || !s.Places[0].Unit.Any():
			return nil
		}
		first := *s
		first.Places = slices.Clone(s.Places)
		first.Places[0].Kind = ins.InFirst
		return slices.Concat(body[:i], []ins.Item{&first}, body[i+1:])
	}
	return nil
}

func chainAs(body []ins.Item, how ins.Counts) []ins.Item {
	for i, n := range body {
		c, ok := n.(*ins.Chain)
		switch {
		case is[*ins.Nothing](n) || is[*ins.Turn](n):
			continue
		case !ok || c.Count.How != ins.Unsaid || c.N.By != nil || c.N.All < 2 || c.N.All > 4:
			return nil
		}
		one := *c
		one.Count.How = how
		return slices.Concat(body[:i], []ins.Item{&one}, body[i+1:])
	}
	return nil
}

// atSpaces is a row whose corners are the spaces that are there, if it fits only so: *(3 dc, ch 2, 3 dc) in next corner; rep from * around.
func (r *runner) atSpaces(l *ins.Line, body []ins.Item) []ins.Item {
	if r.fab.widest() == 0 {
		return body
	}
	open, changed := cornersOpen(body)
	if !changed {
		return body
	}
	j, joins := body[0].(*ins.JoinYarn)
	if _, fits := r.tried(l, body); fits && !(joins && len(j.Place) == 1 && j.Place[0].Unit.Word == "corner") { // join in any corner, ch 3, 2 dc in same sp
		return body
	}
	if _, fits := r.tried(l, open); fits {
		return open
	}
	return body
}

// cornersOpen is a row with spaces for its corners, and whether it names any.
func cornersOpen(body []ins.Item) (out []ins.Item, changed bool) {
	out = slices.Clone(body)
	for i, n := range body {
		open, here := n, false
		switch n := n.(type) {
		case *ins.Stitch:
			one := *n
			one.Places, here = placesOpen(n.Places)
			open = &one
		case *ins.JoinYarn:
			one := *n
			one.Place, here = placesOpen(n.Place)
			open = &one
		case *ins.Repeat:
			one := *n
			var in, until bool
			one.Places, here = placesOpen(n.Places)
			one.Body, in = cornersOpen(n.Body)
			one.Until.Unit, until = unitOpen(n.Until.Unit)
			open, here = &one, here || in || until
		}
		if here {
			out[i], changed = open, true
		}
	}
	return out, changed
}

// placesOpen are places with spaces for corners, and whether there are any.
func placesOpen(list []ins.Place) ([]ins.Place, bool) {
	out, changed := slices.Clone(list), false
	for i := range out {
		u, open := unitOpen(out[i].Unit)
		out[i].Unit, changed = u, changed || open
	}
	return out, changed
}

func unitOpen(u ins.Unit) (ins.Unit, bool) {
	if u.Word != "corner" || u.Space {
		return u, false
	}
	return ins.Unit{Space: true, Word: "sp"}, true
}

// endsInTurning is a row whose repeat is told to end in the turning chain, which is where its last stitch goes: *ch 1, dc in next dc; rep
// from * across, ending with dc in top of turning ch. It is nil if there is none.
func endsInTurning(body []ins.Item) []ins.Item {
	for i, n := range body {
		q, ok := n.(*ins.Repeat)
		if !ok || q.Until.Kind != ins.ToEnd || len(q.Body) == 0 {
			continue
		}
		k := i + 1
		for k < len(body) && is[*ins.Nothing](body[k]) {
			k++
		}
		if k == len(body) || k == i+1 {
			continue
		}
		st, ok := body[k].(*ins.Stitch)
		last, same := q.Body[len(q.Body)-1].(*ins.Stitch)
		if ok && same && st.Kind != nil && st.Kind == last.Kind && len(st.Places) == 1 && (st.Places[0].Kind == ins.InTop || st.Places[0].Kind == ins.InLast) {
			return slices.Delete(slices.Clone(body), k, k+1)
		}
	}
	return nil
}

// bracketAround is a row of one bracket alone that goes around: [[k1 MC, k1 CC] twice, k3 MC]; nil if it is none.
func bracketAround(body []ins.Item) []ins.Item {
	head, mid, tail := ends(body)
	if len(mid) != 1 {
		return nil
	}
	q, ok := mid[0].(*ins.Repeat)
	if !ok || q.Until.Kind != ins.NoExtent || len(q.Places) > 0 || q.Times.By != nil || q.Times.All > 1 {
		return nil
	}
	all := *q
	all.Until, all.Stop = ins.Extent{Kind: ins.ToEnd}, -1
	return slices.Concat(head, []ins.Item{&all}, tail)
}

// nextInRepeat is a row with the stitches in each place within its repeats in the next one instead; nil if it has none.
func nextInRepeat(body []ins.Item) []ins.Item {
	return inRepeats(body, func(q *ins.Repeat) bool { return q.Until.Kind != ins.NoExtent }, func(st *ins.Stitch) bool {
		if len(st.Places) != 1 || len(st.Also) > 0 || st.Places[0].Kind != ins.InEach || st.Places[0].Extent.Kind != ins.NoExtent {
			return false
		}
		st.Places = slices.Clone(st.Places)
		st.Places[0].Kind, st.Places[0].N = ins.InNext, ins.N(1)
		return true
	})
}

// parted reports whether a row has as many spaces as stitches.
func (f *fabric) parted() bool {
	_, spaces := f.chains()
	return spaces > 0 && spaces == f.stitches()
}

// chainsCounted is the row below with its spaces of one chain as stitches, if the row that is worked over it only
// counts stitches and names none, or states its count and works into any stitch; nil if it is not so.
func (r *runner) chainsCounted(l *ins.Line, body []ins.Item) *fabric {
	if !r.fab.spaces(1) || !onlyCounts(body) && (l.Stated == nil || !intoAny(body)) {
		return nil
	}
	f := *r.fab
	f.runs = slices.Clone(r.fab.runs)
	for i := range f.runs {
		switch q := &f.runs[i]; {
		case q.chain > 1:
			return nil
		case q.space():
			*q = run{kind: chainStitch(), n: 1}
		}
	}
	return &f
}

// onlyCounts reports whether a row says how many stitches are worked and skipped, and of none where.
func onlyCounts(body []ins.Item) bool {
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Stitch:
			if len(n.Places) > 0 || n.Call != nil {
				return false
			}
		case *ins.Skip:
			for _, p := range n.Places {
				if p.Kind != ins.InNext || !p.Unit.Any() {
					return false
				}
			}
		case *ins.Chain, *ins.Turn, *ins.Nothing, *ins.Join:
		default:
			return false
		}
	}
	return true
}

// intoAny reports whether a row works into stitches of any kind alone: hdc in each st to last st, 2 hdc in last st.
func intoAny(body []ins.Item) bool {
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Stitch:
			if n.Call != nil || len(n.Also) > 0 || slices.ContainsFunc(n.Places, notAny) {
				return false
			}
		case *ins.Skip:
			if slices.ContainsFunc(n.Places, notAny) {
				return false
			}
		case *ins.Repeat:
			if len(n.Places) > 0 || !intoAny(n.Body) {
				return false
			}
		case *ins.Chain, *ins.Turn, *ins.Nothing, *ins.Join:
		default:
			return false
		}
	}
	return true
}

// notAny reports whether a place is no stitch of any kind in the row below.
func notAny(p ins.Place) bool {
	switch p.Kind {
	case ins.InNext, ins.InEach, ins.InFirst, ins.InLast, ins.InSame:
		return !p.Unit.Any()
	}
	return true
}

// ends parts the chain at the beginning of a row, and what joins or turns it at its end, from what lies between.
func ends(body []ins.Item) (head, mid, tail []ins.Item) {
	from, to := 0, len(body)
	for from < to && (is[*ins.Chain](body[from]) || is[*ins.Nothing](body[from]) || is[*ins.Turn](body[from])) {
		from++
	}
	for to > from && (is[*ins.Join](body[to-1]) || is[*ins.Nothing](body[to-1]) || is[*ins.Turn](body[to-1])) {
		to--
	}
	return body[:from], body[from:to], body[to:]
}

func is[T ins.Item](n ins.Item) bool {
	_, ok := n.(T)
	return ok
}

func placed(body []ins.Item) ins.Placed {
	at := body[0].Span()
	if last := body[len(body)-1].Span(); last.Line == at.Line {
		at.End = last.End
	}
	var p ins.Placed
	p.Put(at)
	return p
}

// onceAround is what a row of a few stitches repeats, of which none says where it is worked, save that the last may
// go around; or what one stretch between stars holds; nil if it is not so.
func onceAround(body []ins.Item) []ins.Item {
	const most = 12
	if len(body) == 0 || len(body) > most {
		return nil
	}
	if q, ok := body[0].(*ins.Repeat); ok && len(body) == 1 && q.Until.Kind == ins.NoExtent && len(q.Places) == 0 && q.Times.At(0) <= 1 {
		return q.Body
	}
	out := slices.Clone(body)
	for i, n := range body {
		st, ok := n.(*ins.Stitch)
		switch {
		case !ok || len(st.Also) > 0:
			return nil
		case len(st.Places) == 0, inNext(st.Places):
		case i > 0 && i == len(body)-1 && goesOn(st.Places) && !(st.Kind != nil && st.Kind.Craft == stitch.Knitting && st.Kind.Uses == 1): // k to end is the rest
			bare := *st
			bare.Places = nil
			out[i] = &bare
		default:
			return nil
		}
	}
	if st := out[0].(*ins.Stitch); len(out) < 2 && (st.Kind == nil || st.Kind.Uses < 2 || st.Kind.Craft != stitch.Knitting || st.N.By != nil || st.N.All > 1) { // Rnd 9: K2tog (11)
		return nil
	}
	return out
}

// inNext reports whether a stitch goes into the next stitches.
func inNext(list []ins.Place) bool {
	return len(list) == 1 && list[0].Kind == ins.InNext && list[0].Unit.Any() && !list[0].Unit.Space
}

// goesOn reports whether a stitch is worked around, wherever that is.
func goesOn(list []ins.Place) bool {
	return len(list) == 1 && list[0].Kind == ins.InEach && list[0].Extent.Kind == ins.ToEnd && !list[0].Unit.Space
}

// tried reports whether a row, worked so, uses all that is there and makes about what it states, and whether it makes just that.
func (r *runner) tried(l *ins.Line, body []ins.Item) (near, fits bool) {
	res := r.test(l, body).res
	if len(res.found) > 0 || res.total {
		return false, false
	}
	said, made := r.said(l), res.out.stitches()
	return 10*max(said-made, made-said) <= said, len(r.misfits(l, res.out)) == 0
}

// tested is a row worked over the likeliest reading, and what of it the text leaves open.
type tested struct {
	line *ins.Line
	body []ins.Item
	over reading // as it was
	pick *picks
	res  *result
}

// is reports whether t is the test of these instructions over this reading.
func (t *tested) is(rd *reading, l *ins.Line, body []ins.Item) bool {
	return t.res != nil && t.line == l && len(t.body) == len(body) && len(body) > 0 && &t.body[0] == &body[0] && t.over.fab == rd.fab && t.over.pick == rd.pick
}

// test works a row so over the likeliest reading, without keeping anything. The one that was worked last is kept until its row is.
func (r *runner) test(l *ins.Line, body []ins.Item) *tested {
	if r.tested.is(&r.reading, l, body) {
		return &r.tested
	}
	g, trace := r.g, r.trace
	r.g, r.trace = nil, nil
	defer func() { r.g, r.trace = g, trace }()
	rd := r.reading
	rd.pick = &picks{taken: rd.pick.taken, asked: rd.pick.asked}
	r.tested = tested{line: l, body: body, over: r.reading, pick: rd.pick, res: r.try(&rd, l, body)}
	return &r.tested
}
