package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
)

// gathered puts stitches that are told before their chain and its like into the one place that is told behind them:
// 3 dc, ch 2, 3 dc in next corner space is worked there as a whole, and so is ch 3, 2 dc, ch 2, 3 dc in same space.
func (r *Reader) gathered(list []ins.Item) []ins.Item {
	var out []ins.Item
	list = started(list)
	inTurn(list)
	betweenToo(list)
	behindDown(list)
	for i := 0; i < len(list); i++ {
		if q, ok := list[i].(*ins.Repeat); ok && len(q.Places) == 0 {
			q.Body = r.gathered(q.Body)
			intoLast(q)
		}
		if q := r.andOne(list[i:]); q != nil {
			out = append(out, q)
			i++
			continue
		}
		if k := allInSpace(list[i:]); k > 0 {
			out = append(out, ins.InOnePlace(list[i:i+k]...))
			i += k - 1
			continue
		}
		a, b, ok := r.aroundChain(list[i:])
		if !ok {
			out = append(out, list[i])
			i += overSpaces(list[i:])
			continue
		}
		switch {
		case a.N.All == b.N.All:
			out = append(out, ins.InOnePlace(a, list[i+1], b))
			i += 2
		case a.N.All == b.N.All-1 && b.Places[0].Kind == ins.InSame && i > 0 && is[*ins.Chain](list[i-1]):
			first := *a
			first.Places = b.Places
			out = append(out, &first)
		default:
			out = append(out, a)
		}
	}
	return out
}

// allInSpace is how many stitches with which a list begins go into the space that the last of them alone is told: sc, hdc, 2 dc, hdc, sc in each
// loop. 0: they do not rise and fall so.
func allInSpace(list []ins.Item) int {
	kinds := map[string]bool{}
	for k, n := range list {
		st, ok := n.(*ins.Stitch)
		if !ok || st.Kind == nil || st.Kind.Uses != 1 || st.Kind.ID == "slst" || st.Kind.ID == "picot" || len(st.Also) > 0 || st.N.By != nil {
			return 0
		}
		if kinds[st.Kind.ID] = true; len(st.Places) == 0 {
			continue
		}
		p := &st.Places[0]
		if k < 2 || len(kinds) < 2 || len(st.Places) > 1 || !p.Unit.Space || p.N.By != nil || p.N.All != 1 || p.Kind != ins.InEach && p.Kind != ins.InNext && p.Kind != ins.InFirst && p.Kind != ins.InSame {
			return 0
		}
		return k + 1
	}
	return 0
}

// andOne is a stitch and the one behind it, both in the place of the second: sc and dc in next st. It is nil if a list does not begin so.
func (r *Reader) andOne(list []ins.Item) *ins.Repeat {
	if len(list) < 2 || !ins.Pair(list[0], list[1]) {
		return nil
	}
	a, b := list[0].(*ins.Stitch), list[1].(*ins.Stitch)
	if at := a.Span(); at.Line != b.At.Line || !slices.Contains(andWords, strings.TrimSpace(r.x.Quote(ins.Span{Line: at.Line, Col: at.End, End: b.At.Col}))) {
		return nil
	}
	q := ins.InOnePlace(a, b)
	q.Apart = true
	return q
}

// andWords join what goes into one place.
var andWords = []string{"and", "&", "+", "plus"}

// betweenToo puts the stitches that repeat one worked between two of the row below there as well: dc between dc, (ch 1, dc) around.
func betweenToo(list []ins.Item) {
	for i, n := range list {
		a, ok := n.(*ins.Stitch)
		if !ok || i+1 >= len(list) || len(a.Places) != 1 || !a.Places[0].Unit.Between {
			continue
		}
		if q, ok := list[i+1].(*ins.Repeat); ok && len(q.Places) == 0 && len(q.Body) == 2 && is[*ins.Chain](q.Body[0]) {
			if b, ok := q.Body[1].(*ins.Stitch); ok && b.Kind == a.Kind && len(b.Places) == 0 {
				p := a.Places[0]
				if q.Times.Set() {
					p.Unit.Word = "sp" // the next gap; around, nothing tells whether the chain at the beginning takes one
				}
				b.Places = []ins.Place{p}
			}
		}
	}
}

// behindDown leaves out that the stitches are passed behind those that go into a row further down: these took them already. FPdc around
// next sc 2 rows below, skip next sc.
func behindDown(list []ins.Item) {
	for i := 1; i < len(list); i++ {
		st, ok := list[i-1].(*ins.Stitch)
		sk, skips := list[i].(*ins.Skip)
		if !ok || !skips || len(st.Places) != 1 || len(sk.Places) != 1 || st.Places[0].Kind != ins.InNext || st.Places[0].Loop != ins.LowerDown {
			continue
		}
		if p := &sk.Places[0]; p.Kind == ins.InNext && !p.Unit.Space && !p.Unit.Chain && p.N.By == nil && p.N.All == st.Places[0].N.All {
			list[i] = &ins.Nothing{Placed: sk.Placed}
		}
	}
}

// inTurn makes the place that is told by its number the next one, where those before it are told so too: sc in first st, sc in second
// st, 2 sc in third st.
func inTurn(list []ins.Item) {
	at := 0
	for _, n := range list {
		st, ok := n.(*ins.Stitch)
		switch {
		case is[*ins.Chain](n), is[*ins.Turn](n), is[*ins.Nothing](n):
			continue
		case !ok || len(st.Places) == 0 || shapes(n) && at > 0:
			return
		}
		for i := range st.Places {
			switch p := &st.Places[i]; {
			case p.N.By != nil:
				return
			case p.Kind == ins.InFirst && at == 0, p.Kind == ins.InNext && at > 0:
				at += p.N.All
			case p.Kind == ins.InEvery && at > 0 && p.N.All == at+1 && !p.Unit.Between:
				p.Kind, p.N = ins.InNext, ins.N(1)
				at++
			case p.Kind != ins.InSame:
				return
			}
		}
	}
}

// intoLast works what a bracket tells once into the one place that its last stitch has, where no other has any: (2 dc, ch 2, 2 dc in
// next ch).
func intoLast(q *ins.Repeat) {
	end := len(q.Body) - 1
	if end < 1 || q.Times.By != nil || q.Times.All != 1 || q.Until.Kind != ins.NoExtent || slices.ContainsFunc(q.Body[:end], placedOrNone) {
		return
	}
	b, ok := q.Body[end].(*ins.Stitch)
	if !ok || !is[*ins.Stitch](q.Body[0]) || len(b.Places) != 1 || len(b.Also) > 0 || slices.ContainsFunc(q.Body, shapes) {
		return
	}
	if p := b.Places[0]; p.Kind == ins.InNext && p.N.By == nil && p.N.All == 1 {
		bare := *b
		q.Places, bare.Places, q.Body[end] = b.Places, nil, &bare
	}
}

// shapes reports whether an instruction is a stitch that is more or less than one over one.
func shapes(n ins.Item) bool {
	st, ok := n.(*ins.Stitch)
	return ok && (st.Kind == nil || st.Kind.Uses != 1 || st.Kind.Makes != 1 || st.Kind.ID == "slst")
}

// overSpaces takes what goes into each space and what goes into each stitch together, as they come: sc in each dc around, working 3
// sc in each corner sp; 2 sc in each ch-2 sp and sc in each dc around. It gives how many of the instructions behind the first it took.
func overSpaces(list []ins.Item) int {
	if len(list) < 2 {
		return 0
	}
	took := 1
	if len(list) > 2 && is[*ins.Nothing](list[1]) && is[*ins.Repeat](list[2]) { // working (2 dc, ch 2, 2 dc) in each corner
		took = 2
	}
	a, ok := list[0].(*ins.Stitch)
	b := oneOver(list[took])
	if !ok || b == nil || len(a.Places) == 0 || len(b.Places) != 1 || a.Kind == nil {
		return 0
	}
	p, q := &a.Places[len(a.Places)-1], b.Places[0]
	space := q.Unit.Space || q.Unit.Word == "corner"
	if p.Kind != ins.InEach || q.Kind != ins.InEach || p.Unit.Space == space || p.Unit.Between || q.Unit.Between || len(b.Also) > 0 {
		return 0
	}
	switch e := p.Extent.Kind; {
	case e == ins.ToEnd && space:
	case e == ins.NoExtent && (space || b.Call == nil && len(a.Also) == 0) && (q.Extent.Kind == ins.ToEnd || q.Extent.Kind == ins.NoExtent): // 2 sc in each ch-2 sp, sc in each dc around
		p.Extent = q.Extent
	default:
		return 0
	}
	a.Also = append(a.Also, b)
	return took
}

// oneOver is what goes into each of some places as one stitch: a bracket as a group of its own. It is nil if it is neither.
func oneOver(n ins.Item) *ins.Stitch {
	switch n := n.(type) {
	case *ins.Stitch:
		if n.Kind != nil {
			return n
		}
	case *ins.Repeat:
		if n.Times.By == nil && n.Times.All == 1 && n.Until.Kind == ins.NoExtent && len(n.Places) == 1 {
			st := &ins.Stitch{Call: &ins.Group{Name: "group", Body: n.Body, At: n.Span()}, N: ins.N(1), Places: n.Places}
			st.Put(n.Span())
			return st
		}
	}
	return nil
}

// started puts the first stitch of a row into the chain in which the row is said to start: starting in 4th ch from hook,
// 7 dc. Before a repeat the chains are only passed.
func started(list []ins.Item) []ins.Item {
	k := slices.IndexFunc(list, func(n ins.Item) bool {
		q, ok := n.(*ins.Skip)
		return ok && q.Places[0].Kind == ins.FromHook
	})
	if k < 0 {
		return list
	}
	hook := list[k].(*ins.Skip).Places[0]
	out := slices.Clone(list[:k])
	var st *ins.Stitch
	if k+1 < len(list) {
		st, _ = list[k+1].(*ins.Stitch)
	}
	if st == nil || st.Kind == nil || len(st.Places) > 1 || len(st.Places) == 1 && st.Places[0].Kind != ins.InEach && st.Places[0].Kind != ins.InNext {
		hook.Kind, hook.N = ins.InFirst, hook.N.Plus(-1)
		pass := &ins.Skip{Places: []ins.Place{hook}}
		pass.Put(list[k].Span())
		return append(append(out, pass), list[k+1:]...)
	}
	first, rest := *st, *st
	first.N, first.Places, first.Also = ins.N(1), []ins.Place{hook}, nil
	first.Put(list[k].Span())
	out = append(out, &first)
	switch {
	case len(st.Places) == 0:
		rest.N = st.N.Plus(-1)
	case st.Places[0].Kind == ins.InNext:
		rest.Places = slices.Clone(st.Places)
		rest.Places[0].N = st.Places[0].N.Plus(-1)
	}
	if rest.N.By != nil || rest.N.All > 0 {
		out = append(out, &rest)
	}
	return append(out, list[k+2:]...)
}

// aroundChain are the stitches of one kind on both sides of a chain with which a list begins, if the second alone
// are told a place, which is a space; or any, if both are counted though there is one of each: 1 dc, ch 1, 1 dc in next dc.
func (r *Reader) aroundChain(list []ins.Item) (a, b *ins.Stitch, ok bool) {
	if len(list) < 3 || !is[*ins.Chain](list[1]) {
		return nil, nil, false
	}
	a, ok = list[0].(*ins.Stitch)
	b, both := list[2].(*ins.Stitch)
	if !ok || !both || a.Kind == nil || a.Kind != b.Kind || a.Kind.ID == "slst" || len(a.Places) > 0 || len(b.Places) != 1 || len(b.Also) > 0 {
		return nil, nil, false
	}
	p := b.Places[0]
	one := func(n *ins.Stitch) bool {
		return n.N.By == nil && n.N.All == 1 && strings.HasPrefix(r.x.Quote(n.Span()), "1 ")
	}
	if one(a) && one(b) && p.Kind == ins.InNext && p.N.By == nil && p.N.All == 1 {
		return a, b, true
	}
	space := (p.Unit.Space || p.Unit.Word == "corner") && (p.Kind == ins.InNext || p.Kind == ins.InSame) && p.N.All == 1
	least := 2
	if p.Kind == ins.InSame { // the chain at the beginning may be the other
		least = 1
	}
	return a, b, space && a.N.By == nil && b.N.By == nil && a.N.All >= least && b.N.All > 1
}

// startsInGroup is a row of which the first bracket begins with a chain, or a slip stitch and a chain, with these before it: they begin the
// row, as a chain within a bracket would not: (sl st, ch 3, 2 dc, ch 2, 3 dc) in next ch-2 sp.
func startsInGroup(list []ins.Item) []ins.Item {
	at := slices.IndexFunc(list, func(n ins.Item) bool { return !is[*ins.Nothing](n) && !is[*ins.Turn](n) && !is[*ins.JoinYarn](n) })
	if at < 0 {
		return list
	}
	q, ok := list[at].(*ins.Repeat)
	if !ok || len(q.Places) != 1 || !q.Places[0].Unit.Space || q.Places[0].Kind != ins.InNext && q.Places[0].Kind != ins.InFirst || q.Times.By != nil || q.Times.All != 1 || len(q.Body) < 3 {
		return list
	}
	rest := *q
	if is[*ins.Chain](q.Body[0]) {
		rest.Body = q.Body[1:]
		return slices.Concat(list[:at], []ins.Item{q.Body[0], &rest}, list[at+1:])
	}
	slip, ok := q.Body[0].(*ins.Stitch)
	if !ok || slip.Kind == nil || slip.Kind.ID != "slst" || len(slip.Places) > 0 || !is[*ins.Chain](q.Body[1]) {
		return list
	}
	to := *slip
	to.Places = q.Places
	rest.Body = q.Body[2:]
	rest.Places = []ins.Place{{Kind: ins.InSame, N: ins.N(1), Unit: ins.Unit{Space: true}, At: q.Places[0].At}}
	return slices.Concat(list[:at], []ins.Item{&to, q.Body[1], &rest}, list[at+1:])
}

// standsTall is a row of which the first bracket is single crochet and a chain in the first stitch, as high as the stitches that follow,
// with one of these in its place: (1 dc, 1 ch) in first tr, 1 tr in each tr (UK).
func standsTall(list []ins.Item) []ins.Item {
	at := slices.IndexFunc(list, func(n ins.Item) bool { return !is[*ins.Nothing](n) && !is[*ins.Turn](n) && !is[*ins.JoinYarn](n) })
	if at < 0 || at+1 >= len(list) {
		return list
	}
	q, ok := list[at].(*ins.Repeat)
	if !ok || len(q.Body) != 2 || len(q.Places) != 1 || q.Places[0].Kind != ins.InFirst || q.Places[0].Unit.Space || q.Times.By != nil || q.Times.All != 1 {
		return list
	}
	low, single := q.Body[0].(*ins.Stitch)
	chain, chained := q.Body[1].(*ins.Chain)
	if !single || !chained || low.Kind == nil || low.Kind.ID != "sc" || len(low.Places) > 0 || low.N.By != nil || low.N.All != 1 || chain.N.By != nil || chain.N.All > 2 {
		return list
	}
	for _, n := range list[at+1:] {
		next, ok := n.(*ins.Stitch)
		if !ok || next.Kind == nil {
			return list
		}
		if k := next.Kind.ID; k == "dc" || k == "hdc" || k == "tr" {
			tall := *low
			tall.Kind, tall.Places, tall.At = next.Kind, q.Places, q.At
			return slices.Concat(list[:at], []ins.Item{&tall}, list[at+1:])
		}
		if next.Kind.Uses < 2 {
			return list
		}
	}
	return list
}

// endsWithin puts what a repeat ends with at its end where that is how it begins: *sc in next sp, sc in next dc; repeat from * around,
// ending with sc in next sp.
func (r *Reader) endsWithin(l *ins.Line) {
	for i := 0; i < len(l.Body); i++ {
		q, ok := l.Body[i].(*ins.Repeat)
		if !ok || q.Until.Kind != ins.ToEnd || q.Stop >= 0 {
			continue
		}
		if beginsSo(q.Body, q.Last) && !q.LastFor.Set() {
			q.Stop, q.Last = len(q.Last), nil
			continue
		}
		to := i + 1
		for to < len(l.Body) && is[*ins.Nothing](l.Body[to]) && r.saysEnding(l.Body[to].Span()) {
			to++
		}
		k := to
		for k < len(l.Body) && (is[*ins.Stitch](l.Body[k]) || is[*ins.Chain](l.Body[k]) || is[*ins.Skip](l.Body[k])) {
			k++
		}
		if to > i+1 && len(q.Last) == 0 && beginsSo(q.Body, l.Body[to:k]) {
			q.Stop = k - to
			l.Body = slices.Delete(l.Body, i+1, k)
		}
	}
}

func (r *Reader) saysEnding(at ins.Span) bool {
	return strings.Contains(strings.ToLower(r.x.Quote(at)), "end")
}

// beginsSo reports whether a stretch begins with instructions that each go on to the next place.
func beginsSo(body, end []ins.Item) bool {
	if len(end) == 0 || len(end) >= len(body) {
		return false
	}
	places := 0
	for i, n := range end {
		switch n := n.(type) {
		case *ins.Stitch:
			b, ok := body[i].(*ins.Stitch)
			if !ok || n.Kind != b.Kind || n.Call != b.Call || n.N.All != b.N.All || n.N.By != nil || !onNext(n.Places, b.Places) {
				return false
			}
			places += len(n.Places)
		case *ins.Chain:
			if b, ok := body[i].(*ins.Chain); !ok || n.N.All != b.N.All {
				return false
			}
		case *ins.Skip:
			if b, ok := body[i].(*ins.Skip); !ok || !onNext(n.Places, b.Places) {
				return false
			}
		default:
			return false
		}
	}
	return places > 0
}

// onNext reports whether two instructions go into the next place of the same kind each, or have no place.
func onNext(a, b []ins.Place) bool {
	return slices.EqualFunc(a, b, func(p, q ins.Place) bool {
		u, v := p.Unit, q.Unit
		return p.Kind == ins.InNext && q.Kind == ins.InNext && p.N.All == q.N.All && u.Stitch == v.Stitch && u.Space == v.Space && u.Chain == v.Chain && u.Group == v.Group && u.Size.All == v.Size.All
	})
}
