package work

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// Words of a row that do not fit as they mostly mean, and the other things that they mean to some: each is tried, and taken if
// the row and its stated count fit so to the stitch.

// otherMeanings are they, each as a change of one instruction; nil: it has no other one. The first few are those of a row
// of which only the count does not fit, too.
func (r *runner) otherMeanings() []func(ins.Item) ins.Item {
	return []func(ins.Item) ins.Item{eachInOwn, eachOnce, r.unrun, eachGap, toNext, r.inBack, r.onceMore, r.heaped, threefold}
}

// onlyCounted is how many of the other meanings are tried for a row of which only the count does not fit.
const onlyCounted = 7

// otherwise is a row with a stated count in the first of the other meanings in which it fits; nil if it fits in none.
func (r *runner) otherwise(rd reading, l *ins.Line, body []ins.Item, used bool) *result {
	if l.Stated == nil || l.Label == nil {
		return r.uncountedApart(rd, l, body)
	}
	fits := func(rd reading, body []ins.Item) *result {
		g, again := r.g, rd
		r.g = nil
		res := r.try(&rd, l, body)
		r.g = g
		switch {
		case len(res.found) > 0 || res.total || len(r.misfits(l, res.out)) > 0:
			return nil
		case g != nil: // now that it is known to fit, it is recorded
			return r.try(&again, l, body)
		}
		return res
	}
	for i, other := range r.otherMeanings() {
		if i >= onlyCounted && !used {
			break
		}
		if list, changed := changed(body, other); changed {
			if res := fits(rd, list); res != nil {
				return res
			}
		}
	}
	for _, all := range [][]ins.Item{goesAround(body), r.uncounted(body)} {
		if all == nil {
			continue
		}
		if res := fits(rd, all); res != nil {
			return res
		}
	}
	if folds(body) {
		rd.fab = uniform(rd.fab.main(), (rd.fab.stitches()+1)/2)
		return fits(rd, body)
	}
	return nil
}

// uncountedApart is a row without a count with its stitches each in its own place; nil if it does not fit so either.
func (r *runner) uncountedApart(rd reading, l *ins.Line, body []ins.Item) *result {
	if list, changed := changed(body, eachInOwn); changed {
		if res := r.try(&rd, l, list); len(res.found) == 0 && !res.total {
			return res
		}
	}
	return nil
}

// eachInOwn is two stitches of which only the second is told a place, each in its own: sc and dc in next st.
func eachInOwn(n ins.Item) ins.Item {
	q, ok := n.(*ins.Repeat)
	if !ok || !q.Apart {
		return nil
	}
	own := *q
	own.Places, own.Body = nil, slices.Clone(q.Body)
	last := *q.Body[len(q.Body)-1].(*ins.Stitch)
	last.Places, own.Body[len(q.Body)-1] = q.Places, &last
	return &own
}

// uncounted is a row with the chain that it begins with counted as no stitch, if only a row before it said that one as long counts.
func (r *runner) uncounted(body []ins.Item) []ins.Item {
	k := len(body) - len(behindWords(body))
	if k == len(body) {
		return nil
	}
	c, ok := body[k].(*ins.Chain)
	if !ok || c.Count.How != ins.Unsaid || c.N.By != nil {
		return nil
	}
	if _, byRow := r.x.ByRow[c.N.All]; !byRow {
		return nil
	}
	out, one := slices.Clone(body), *c
	one.Count.How = ins.CountsNot
	out[k] = &one
	return out
}

// changed is instructions with each that has another meaning in that one; false if none has.
func changed(list []ins.Item, other func(ins.Item) ins.Item) ([]ins.Item, bool) {
	out, any := slices.Clone(list), false
	for i, n := range list {
		if q, ok := n.(*ins.Repeat); ok && len(q.Places) == 0 && other(n) == nil {
			if body, yes := changed(q.Body, other); yes {
				again := *q
				again.Body = body
				out[i], any = &again, true
			}
			continue
		}
		if o := other(n); o != nil {
			out[i], any = o, true
		}
	}
	return out, any
}

// unplaced is a stitch of crochet of which no place is named, so many times.
func unplaced(n ins.Item) (*ins.Stitch, bool) {
	st, ok := n.(*ins.Stitch)
	if !ok || len(st.Places) > 0 || st.Call != nil || st.N.By != nil || st.N.All < 2 || st.Kind != nil && (st.Kind.Craft != stitch.Crochet || st.Kind.Uses != 1) {
		return nil, false
	}
	return st, true
}

var ledByNumber = text.Once(`(?i)^(?:\d|two|three|four|five|six|seven)`)

// heaped are so many stitches in one place: (sc, 3 sc) four times. A number behind the stitch is one of places: *2 sc, sc 2*.
func (r *runner) heaped(n ins.Item) ins.Item {
	st, ok := unplaced(n)
	if !ok || st.Kind == nil || st.N.All > 7 || !ledByNumber().MatchString(r.x.Quote(st.At)) {
		return nil
	}
	one := *st
	one.Places = []ins.Place{{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: st.At}}
	return &one
}

// secured are words of a text by which a bobble is closed by the stitch behind it.
var secured = text.Once(`(?i)\b(?:sc|hdc|single crochet) (?:in|into) (?:the )?next st\w*[^.]{0,10}\bto (?:complete|close|secure|finish|lock|hold)`)

// takesBehind reports whether bobbles of a row may each take the stitch behind it too, as the text says of them in words.
func (r *runner) takesBehind(list []ins.Item) bool {
	return slices.ContainsFunc(list, func(n ins.Item) bool {
		switch n := n.(type) {
		case *ins.Repeat:
			return r.takesBehind(n.Body)
		case *ins.Stitch:
			return n.Kind != nil && slices.Contains(bobbles, n.Kind.ID) && slices.ContainsFunc(r.x.Src, func(s string) bool { return secured().MatchString(s) })
		}
		return false
	})
}

var bobbles = []string{"bobble", "pc", "puff"}

// inBack is a stitch knitted into its back that is an increase, into the front and the back: kb.
func (r *runner) inBack(n ins.Item) ins.Item {
	st, ok := n.(*ins.Stitch)
	if !ok || st.Kind == nil || st.Kind.ID != "ktbl" || len(st.Places) > 0 || !strings.Contains(strings.ToLower(r.x.Quote(st.At)), "kb") {
		return nil
	}
	one := *st
	one.Kind = stitch.ByID("kfb")
	return &one
}

var runOn = text.Once(`(?i)^(\d*) ?(sc|hdc|dc|htr|tr) (inc|dec)( ?[x*] ?\d+| \d+ times)?$`)

// unrun are stitches and an increase or a decrease behind them that no comma parts: (2 sc inc).
func (r *runner) unrun(n ins.Item) ins.Item {
	st, ok := n.(*ins.Stitch)
	if !ok || st.Kind == nil || st.Kind.Craft != stitch.Crochet {
		return nil
	}
	m := runOn().FindStringSubmatch(r.x.Quote(st.At))
	if m == nil {
		return nil
	}
	k, _ := strconv.Atoi(m[1])
	inc := strings.EqualFold(m[3], "inc")
	plain := *st
	plain.Kind, plain.N, plain.Places = stitch.ByID(st.Kind.Base), ins.N(max(k, 1)), nil
	return &ins.Repeat{Placed: st.Placed, Body: []ins.Item{&plain, &ins.Stitch{Placed: st.Placed, Inc: inc, Dec: !inc, N: ins.N(1)}}, Times: ins.N(1), Stop: -1}
}

// onceMore is a bracket that is repeated so often beyond the first time: (sc, inc) rep 5x.
func (r *runner) onceMore(n ins.Item) ins.Item {
	q, ok := n.(*ins.Repeat)
	if !ok || len(q.Places) > 0 || q.Times.By != nil || q.Times.All < 2 || !strings.Contains(strings.ToLower(r.x.Quote(q.At)), ") rep") {
		return nil
	}
	again := *q
	again.Times = ins.N(q.Times.All + 1)
	return &again
}

// otherReach is a row that fits if times without a bracket are those of more of the stitches before them, or of the last alone:
// k1, yo, k2tog 5 times. It is nil if none fits.
func (r *runner) otherReach(rd reading, l *ins.Line, body []ins.Item) *result {
	var best *result
	for _, list := range r.reaches(body) {
		if res := r.try(&rd, l, list); len(res.found) == 0 && !res.total && (l.Stated == nil || len(r.misfits(l, res.out)) == 0) {
			if res.out.stitches() == rd.fab.stitches() { // lace keeps its count
				return res
			}
			best = cmp.Or(best, res)
		}
	}
	return best
}

// reaches are instructions with the times of each repeat without a bracket in their other reaches, one at a time.
func (r *runner) reaches(list []ins.Item) (out [][]ins.Item) {
	for i, n := range list {
		q, ok := r.asTimes(n).(*ins.Repeat)
		switch {
		case !ok || len(q.Places) > 0:
		case strings.ContainsAny(r.x.Quote(q.At), "[*") || q.Times.By != nil || q.Times.All < 2:
			for _, b := range r.reaches(q.Body) {
				again := *q
				again.Body = b
				out = append(out, slices.Concat(list[:i], []ins.Item{&again}, list[i+1:]))
			}
		case knits(q.Body[0]):
			out = append(out, reachesOf(list, i, q)...)
		}
	}
	return out
}

// reachesOf are instructions with the times of the repeat at i for its last stitch alone, and for up to three more before it.
func reachesOf(list []ins.Item, i int, q *ins.Repeat) (out [][]ins.Item) {
	with := func(from int, alone, body []ins.Item) {
		again := *q
		again.Body = body
		out = append(out, slices.Concat(list[:from], alone, []ins.Item{&again}, list[i+1:]))
	}
	if k := len(q.Body) - 1; k > 0 {
		with(i, q.Body[:k], q.Body[k:])
	}
	for from := i - 1; from >= max(i-3, 0); from-- {
		if st, ok := list[from].(*ins.Stitch); !ok || len(st.Places) > 0 {
			break
		}
		with(from, nil, slices.Concat(list[from:i], q.Body))
	}
	return out
}

// knits reports whether an instruction is a stitch of knitting.
func knits(n ins.Item) bool {
	st, ok := n.(*ins.Stitch)
	return ok && st.Kind != nil && st.Kind.Craft == stitch.Knitting
}

var times = text.Once(`(?i)\b(\d+) ?(?:times|x)|\b(twice)|\b(thrice)|x ?(\d+)`)

// asTimes is a stitch that is worked so many times as a repeat of it.
func (r *runner) asTimes(n ins.Item) ins.Item {
	st, ok := n.(*ins.Stitch)
	if !ok || st.N.By != nil || st.N.All < 2 || len(st.Places) > 0 {
		return n
	}
	m := times().FindStringSubmatch(r.x.Quote(st.At))
	if m == nil {
		return n
	}
	k, _ := strconv.Atoi(m[1] + m[4])
	k = max(k, len(m[2])/2, len(m[3])/2) // twice has 5 letters, thrice 6
	if k < 2 || st.N.All%k != 0 {
		return n
	}
	one := *st
	one.N = ins.N(st.N.All / k)
	return &ins.Repeat{Placed: st.Placed, Body: []ins.Item{&one}, Times: ins.N(k), Stop: -1}
}

// eachGap is a stitch between the next two that goes into one gap, as the next one goes into the gap behind it.
func eachGap(n ins.Item) ins.Item {
	st, ok := n.(*ins.Stitch)
	if !ok || len(st.Places) != 1 || st.Places[0].Kind != ins.InEvery || !st.Places[0].Unit.Between {
		return nil
	}
	one := *st
	one.Places = []ins.Place{{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: st.Places[0].At}}
	return &one
}

// toNext are several stitches in the same stitch, which is not the one worked last but the one behind it: sc in next 4 sts, 3 sc in same st;
// or in the first one, which is that beside a chain that counts.
func toNext(n ins.Item) ins.Item {
	st, ok := n.(*ins.Stitch)
	if !ok || len(st.Places) != 1 || st.Places[0].Kind != ins.InSame && st.Places[0].Kind != ins.InFirst || !st.Places[0].Unit.Any() || st.N.By != nil || st.N.All < 2 {
		return nil
	}
	one := *st
	one.Places = []ins.Place{{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: st.Places[0].At}}
	return &one
}

// threefold is an increase of one stitch to so many: inc3.
func threefold(n ins.Item) ins.Item {
	st, ok := unplaced(n)
	if !ok || !st.Inc || st.N.All > 4 {
		return nil
	}
	one := *st
	one.Inc, one.Places = false, []ins.Place{{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: st.At}}
	return &one
}

// eachOnce are so many stitches in all, one in each place: 42 sc in each stitch.
func eachOnce(n ins.Item) ins.Item {
	st, ok := n.(*ins.Stitch)
	if !ok || len(st.Places) != 1 || st.Places[0].Kind != ins.InEach || st.Places[0].Unit.Space || st.Call != nil || st.N.By != nil || st.N.All < 5 {
		return nil
	}
	once := *st
	once.Places = nil
	return &once
}

// goesAround is a row of one increase, decrease or few stitches alone that go into each stitch: inc (12); nil if it is another one.
func goesAround(body []ins.Item) []ins.Item {
	at := -1
	for i, n := range body {
		switch n := n.(type) {
		case *ins.Nothing, *ins.Join:
		case *ins.Stitch:
			if at >= 0 || len(n.Places) > 0 || n.N.By != nil || n.N.All > 2 || n.Call != nil {
				return nil
			}
			at = i
		default:
			return nil
		}
	}
	if at < 0 {
		return nil
	}
	one := *body[at].(*ins.Stitch)
	one.Places = []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: one.At}}
	out := slices.Clone(body)
	out[at] = &one
	return out
}

// folds reports whether a row closes a piece that lies flat: its stitches go through both of its layers.
func folds(body []ins.Item) bool {
	return slices.ContainsFunc(body, func(n ins.Item) bool {
		k, ok := n.(*ins.Nothing)
		return ok && k.Fold
	})
}

// alongOwn works a stitch into a chain that was made within the row, back along it, as the points of a star are; it reports
// false if n is none of those.
func (w *work) alongOwn(n *ins.Stitch, tail []ins.Item) bool {
	if w.own > 0 {
		k := w.ofOwn(n)
		if k > w.own || k < 0 {
			w.own = 0
			return false
		}
		w.own -= k
		return true
	}
	k := len(w.out.runs) - 1
	if k < 0 || !w.out.runs[k].space() || len(n.Places) != 1 || n.Places[0].Kind != ins.FromHook {
		return false
	}
	left := w.out.runs[k].chain - w.n(n.Places[0].N)
	if left <= 0 || !goesAlong(tail, left) {
		return false
	}
	w.out.runs = w.out.runs[:k]
	w.own, w.blind, w.spaced = left, true, false
	if w.g != nil && w.quiet == 0 {
		w.g.doubt = "stitches go back along a chain within it"
	}
	return true
}

// alongAdded works a stitch into each chain that was added at the end of the row, when nothing else is left: ch 7, dc in each ch.
func (w *work) alongAdded(n *ins.Stitch) bool {
	k := len(w.out.runs) - 1
	if k < 0 || w.cur.left > 0 || w.round || !w.out.runs[k].space() || len(n.Places) != 1 || n.Places[0].Kind != ins.InEach || !n.Places[0].Unit.Chain || n.Kind == nil || n.Kind.Uses != 1 {
		return false
	}
	chains := w.out.runs[k].chain
	w.out.runs = w.out.runs[:k]
	w.emit(run{kind: n.Kind, n: chains * max(w.count(n.N), 1)}, nil, n)
	if w.g != nil && w.quiet == 0 {
		w.g.doubt = "stitches go into a chain within it"
	}
	return true
}

// ofOwn is how many chains of its own a stitch takes, -1 if it stands elsewhere.
func (w *work) ofOwn(n *ins.Stitch) int {
	if len(n.Places) == 0 {
		_, _, uses := w.resolve(n)
		return w.count(n.N) * uses
	}
	switch p := n.Places[0]; {
	case len(n.Places) > 1 || p.Unit.Space:
	case p.Kind == ins.InSame:
		return 0
	case p.Kind == ins.InNext && p.Unit.Stitch == nil && p.Unit.Group == nil && !p.Unit.Stretch:
		return w.count(p.N)
	case p.Kind == ins.InLast && p.Unit.Chain:
		return w.own
	case p.Kind == ins.InEach && p.Unit.Chain:
		return w.own
	}
	return -1
}

// goesAlong reports whether what follows goes into the chains that are left of one.
func goesAlong(tail []ins.Item, left int) bool {
	for _, n := range tail {
		switch n := n.(type) {
		case *ins.Nothing:
			continue
		case *ins.Stitch:
			if len(n.Places) == 0 {
				return left > 1 && n.Kind != nil
			}
			return n.Places[0].Unit.Chain
		}
		break
	}
	return false
}
