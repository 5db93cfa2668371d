package work

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// check holds the row of every reading against the count at the end of its line, and keeps
// those that fit best. Where none fits, the work goes on with the row as made and as stated.
func (r *runner) check(l *ins.Line) {
	list := r.room[:0]
	for _, rd := range r.readings() {
		list = r.checked(list, rd, l)
	}
	r.room = list
	r.keep(list)
	if r.res != nil && r.res.total && r.g != nil && r.res.per > 0 {
		r.g.anew()
		r.g.foundation(r.fab, l.At.Line, r.round)
	}
}

// checked adds one reading held against the stated count.
func (r *runner) checked(out []reading, rd reading, l *ins.Line) []reading {
	res := rd.res
	if l.Stated == nil {
		if res != nil && res.total {
			rd.lose()
		}
		return append(out, rd)
	}
	k := r.said(l)
	switch {
	case r.ofSizes(l):
		rd.lose()
		return append(out, rd)
	case r.perRepeat(l):
		return append(out, rd)
	case r.chainApart(l, rd.fab) && len(r.misfits(l, rd.fab)) > 0:
		rd.fab, rd.certainty = r.asStated(l, rd.fab, k), certainty{why: said}
		return append(out, rd)
	}
	if res == nil || res.total || !rd.known() && !res.pin {
		if k >= 0 {
			rd.found = append(slices.Clip(rd.found), r.oneByOne(l, k)...) // it rests on no row below
			r.takes(&rd, l, k)
		}
		return append(out, rd)
	}
	found := r.misfits(l, rd.fab)
	if len(found) > 0 && res.doubt == none && r.takesBehind(l.Body) {
		res.doubt = loosely
	}
	for i := range found {
		found[i].why = res.doubt
	}
	if len(found) == 0 {
		found = r.partsApart(l.Stated)
	}
	if len(found) == 0 || rd.shortTotal(k) || r.ofLast(l, rd, k) {
		rd.certainty = certainty{guess: rd.guess}
		rd.pardon(l)
		return append(out, rd)
	}
	if uses(res.found) { // it follows from what the row uses
		found = nil
	}
	return r.bothWays(out, rd, l, found)
}

// ofLast reports whether a count is that of the last of several rows that a line lists, with others between them.
func (r *runner) ofLast(l *ins.Line, rd reading, k int) bool {
	if l.Label == nil || len(l.Stated) > 1 {
		return false
	}
	more, made := len(l.Label.Listed), rd.fab.stitches()
	return more > 0 && made+more*(made-rd.res.used) == k
}

// bothWays goes on from a count that does not fit with the row as made and as stated; as stated alone, if a repeat before explains it.
func (r *runner) bothWays(out []reading, rd reading, l *ins.Line, found []raw) []reading {
	k := r.said(l)
	explained := k >= 0 && rd.apart.explains(rd.fab.stitches()-k)
	if len(found) > 0 && (explained || rd.suspect > 0 && !rd.res.pin && rd.suspectBefore()) {
		rd.suspect--
		rd.cost += len(found)
		found = nil
	}
	rd.addEach(found)
	if k < 0 || k == rd.fab.stitches() || r.g != nil {
		return append(out, rd)
	}
	as := rd
	as.fab, as.carry, as.guess, as.suspect, as.since = r.asStated(l, rd.fab, k), rd.carry, true, suspectRows, 0
	if explained { // what is off behind it is another slip
		as.suspect, as.amiss, as.apart = 0, false, misfit{}
		return append(out, as)
	}
	return append(out, rd, as)
}

// addEach adds what does not fit a stated count: from the second on it may follow from the first.
func (rd *reading) addEach(found []raw) {
	for _, f := range found {
		rd.add(f)
		rd.suspect = suspectRows
	}
}

// takes has a row of which nothing is known be what it states.
func (r *runner) takes(rd *reading, l *ins.Line, k int) {
	per := 0
	if rd.res != nil {
		per = rd.res.per
	}
	if per > 1 && k%per != 0 {
		rd.add(raw{kind: "rows/stated", sev: finding.Warning, at: l.Stated[0].At, msg: "%s stitches cannot be picked up at %s in each row", fix: "correct the count, or say what is picked up", a: []int{k, per}})
	}
	rd.fab = r.asStated(l, rd.fab, k)
	rd.find()
	rd.since = 0
	if per > 0 && rd.fab.main() == nil {
		rd.fab = uniform(nil, k)
	}
}

// namesKind reports whether a part of a count is of stitches of a kind of their own.
func namesKind(g ins.StitchGroup) bool {
	return !g.Any && !g.Unit.Space && !g.Unit.Chain && g.Unit.Group == nil && (g.Unit.Stitch == nil || g.Unit.Stitch.ID != "picot")
}

// namedBy is how many stitches of a kind of their own a part of a count names, of which made are there, or also are as rightly.
func namedBy(g ins.StitchGroup, made, also, said int) int {
	switch {
	case !namesKind(g):
		return 0
	case also == said && g.Unit.Stitch != nil && g.Unit.Stitch.Key == "cluster": // with the first, of a chain and stitches together
		return also
	}
	return made
}

// ofSizes reports whether a count has the numbers of sizes that the text names nowhere: (66, 72 sc) of one size.
func (r *runner) ofSizes(l *ins.Line) bool {
	k := len(l.Stated) - 1
	if k < 1 || len(r.x.Sizes.Names) > 1 || l.Stated[k].Any || l.Stated[k].Unit.Space { // 12 sts, 4 ch-spaces
		return false
	}
	return !slices.ContainsFunc(l.Stated[:k], func(g ins.StitchGroup) bool { return !g.Any })
}

// perRepeat reports whether a count tells the stitches of one time of the row's repeat, by their kinds: (4 dc, 1 FPdc).
func (r *runner) perRepeat(l *ins.Line) bool {
	k := r.said(l)
	return len(l.Stated) > 1 && k > 0 && slices.ContainsFunc(l.Body, func(n ins.Item) bool {
		q, ok := n.(*ins.Repeat)
		return ok && (q.Until.Kind != ins.NoExtent || q.Times.All > 1) && r.makesOnce(q.Body) == k
	})
}

// oneByOne is what the stated count of a row and the numbers of its stitches have apart, where what they are worked into is not known:
// with the chain that begins it or without.
func (r *runner) oneByOne(l *ins.Line, k int) []raw {
	var body []ins.Item
	var chain *ins.Chain
	for _, n := range l.Body {
		switch n := n.(type) {
		case *ins.Nothing, *ins.Join, *ins.Turn, *ins.Marker:
		case *ins.Chain:
			if chain != nil || len(body) > 0 {
				return nil
			}
			chain = n
		default:
			body = append(body, n)
		}
	}
	n := r.makesOnce(body)
	if n <= 0 || len(body) < 2 || l.Label == nil || knitted(body) { // k2, p2 for 18 sts
		return nil
	}
	if chain != nil {
		with := r.x.Turning[chain.N.All] != ins.CountsNot
		if n == k && with || n+1 == k && !with {
			r.unlikeSaid(chainAs(l.Body, ins.CountsAsStitch+ins.CountsNot-r.x.Turning[chain.N.All]))
			return nil
		}
		if with {
			n++
		}
	}
	if n == k {
		return nil
	}
	return []raw{{kind: "rows/stated", sev: finding.Warning, at: l.Stated[0].At, msg: "the row makes %s stitches, not %s | %s stitches made, one by one | %s stitches stated",
		fix: "say %l, or correct the row so that it makes %s", a: []int{n, k, n, k, k}, stated: l.Stated[0].N}}
}

// makesOnce is how many stitches instructions make that each tell how many; -1: one of them does not.
func (r *runner) makesOnce(body []ins.Item) int {
	n := 0
	for _, one := range body {
		st, ok := one.(*ins.Stitch)
		if !ok || st.Kind == nil || len(st.Places) > 1 {
			return -1
		}
		k := max(st.N.At(r.size), 1) * st.Kind.Makes
		if len(st.Places) == 1 {
			if p := st.Places[0]; p.Kind != ins.InNext && !(p.Kind == ins.InLast && p.N.Set()) {
				return -1
			}
			k *= max(st.Places[0].N.At(r.size), 1)
		}
		n += k
	}
	return n
}

// chainApart reports whether a count tells the chain that begins the row beside its stitches: 17 tr + 3 ch. Whether the
// stitches are with it or without is not sure.
func (r *runner) chainApart(l *ins.Line, f *fabric) bool {
	k := len(l.Stated) - 1
	if k < 1 {
		return false
	}
	if f != nil {
		if _, stretches := f.chains(); stretches == l.Stated[k].N.At(r.size) { // 2 underarm chains
			return false
		}
	}
	last := l.Stated[k]
	return last.Unit.Chain && last.N.At(r.size) > 0 && last.N.At(r.size) <= 6 && l.Stated[0].Unit.Stitch != nil
}

// pardon takes back what was told of the stitches that a row uses, if it makes what it states
// and says where in words of which the reading is less sure: they are meant otherwise.
func (rd *reading) pardon(l *ins.Line) {
	told := rd.res.found
	k := len(rd.found) - len(told)
	if k < 0 || !uses(told) {
		return
	}
	if (loose(l.Body) || told[0].short) && !slices.ContainsFunc(told, func(f raw) bool { return f.kind == "rows/over-use" || f.kind == "rows/no-space" }) {
		rd.found, rd.res.found = rd.found[:k:k], nil
		rd.cost -= len(told)
		return
	}
	rd.found = append(rd.found[:k:k], told...)
	for i := range told {
		if f := &rd.found[k+i]; f.why == none {
			f.why = held
		}
	}
}

// suspectBefore reports whether a finding of a row before this one is told already.
func (rd *reading) suspectBefore() bool { return len(rd.found) > 0 || rd.amiss }

// shortTotal reports whether the count of a short row is that of all stitches.
func (rd *reading) shortTotal(k int) bool {
	if rd.carry != nil && rd.carry.N.By == nil && rd.carry.N.All > 3 && k == rd.fab.stitches()+rd.carry.N.All { // chains that are added count too
		return true
	}
	sts, all := rd.fab.stitches(), rd.fab.stitches()
	for _, f := range []*fabric{rd.ahead, rd.behind} { // what lies beyond either end of the row
		if f == nil {
			continue
		}
		if all += f.stitches(); k == sts+f.stitches() {
			return true
		}
	}
	return all > sts && k == all
}

func (rd *reading) add(fs ...raw) {
	rd.cost += len(fs)
	if fs = rd.judged(fs); rd.suspect > 0 && rd.suspectBefore() { // what is doubtful follows from what is told
		fs = slices.DeleteFunc(fs, func(f raw) bool { return f.why > held })
	}
	for _, f := range fs {
		if f.kind == "rows/repeat" && len(f.a) > 3 {
			rd.apart = misfit{f.a[0], f.a[3]}
		}
	}
	left := mostFound - len(rd.found)
	if left < 0 {
		return
	}
	if len(fs) > left {
		more := raw{kind: "rows/bounds", sev: finding.Error, at: fs[left].at, msg: fmt.Sprintf("%d things before this row do not fit; from here on they are not listed", mostFound), fix: "correct the first of them, then check again"}
		fs = append(slices.Clone(fs[:left]), more)
	}
	rd.found = append(slices.Clip(rd.found), fs...) // other readings hold what was found before
}

// mostFound bounds the findings that wait until the readings of a section are settled.
const mostFound = 300

// checkOnly holds a count that stands alone against the row before it.
func (r *runner) checkOnly(l *ins.Line) {
	if r.fab == nil {
		return
	}
	if r.counts++; r.counts > 1 { // 70 sts, and below it 74 sts: each is of a size that the text does not tell
		r.lose()
		return
	}
	for _, rd := range []*reading{&r.reading} {
		rd.res = &result{out: rd.fab, total: !rd.known()}
	}
	for i := range r.others {
		r.others[i].res = &result{out: r.others[i].fab}
	}
	r.check(l)
}

// misfits is what the stated count of a line and a row as worked have apart.
func (r *runner) misfits(l *ins.Line, f *fabric) []raw {
	var out []raw
	gap, of := 0, 0
	tell := func(at ins.Span, msg, fix string, a ...int) {
		out = append(out, raw{kind: "rows/stated", sev: finding.Warning, at: at, msg: msg, fix: fix, a: a, gap: gap, of: of})
	}
	grouped := slices.ContainsFunc(l.Stated, func(g ins.StitchGroup) bool { return g.Unit.Group != nil })
	groups, twice := r.oneOfKind(l.Stated)
	named, unsure := 0, false
	for _, g := range groups {
		said := g.N.At(r.size)
		if said == ins.None {
			return nil
		}
		if g.Side {
			return r.bothSides(f, g, said)
		}
		made, what, also, blocks := r.madeOf(f, g, grouped, groups)
		if unsure = unsure || blocks || made < 0; made < 0 {
			continue
		}
		named += namedBy(g, made, also, said)
		if also == said || made == said || g.Unit.Space && said == made+1 && beginsByLoop(l.Body) {
			continue
		}
		if twice.Line > 0 {
			tell(twice, "the count names the same thing twice", "name each kind once")
			return out
		}
		gap, of = made-said, max(made, said)
		tell(g.At, "the row makes %s "+what+", not %s | %s "+what+" made over the row below | %s "+what+" stated", "say %l, or correct the row so that it makes %s",
			made, said, made, said, said)
		out[len(out)-1].stated = g.N
		return out // the kinds that follow are of the same cause
	}
	if !grouped && !unsure && len(l.Stated) > 0 && !l.Stated[0].Any && !r.oneCounted(l, f, len(groups), named) {
		if total := f.stitches(); named != total && !r.onlySpaces(l) && !r.partly(f, total-named) {
			tell(l.Stated[0].At, "the row makes %s stitches, of which the count names %s | %s of other kinds made | all kinds named", "name them all, or correct the row",
				total, named, total-named)
		}
	}
	return out
}

// partsApart is what a total and the sum of its parts have apart.
func (r *runner) partsApart(list []ins.StitchGroup) []raw {
	for _, g := range list {
		if said, k := g.N.At(r.size), g.Parts.At(r.size); g.Parts.Set() && k != ins.None && k != said {
			return []raw{{kind: "rows/stated", sev: finding.Warning, at: g.At, msg: "its parts add up to %s stitches, not %s | %s stitches in the parts | %s stitches stated in all", fix: "correct the total, or the part that is off", a: []int{k, said, k, said}}}
		}
	}
	return nil
}

// oneCounted reports whether a count names one kind alone, of which so many are named with it: that may be all that is counted.
func (r *runner) oneCounted(l *ins.Line, f *fabric, groups, named int) bool {
	return groups == 1 && (named == l.Stated[0].N.At(r.size) || named > 0 && f.meshChain() >= 0)
}

// madeOf is what a row has of what a part of a count names, and what as rightly, and whether these are blocks; below 0: that is not counted.
func (r *runner) madeOf(f *fabric, g ins.StitchGroup, grouped bool, groups []ins.StitchGroup) (made int, what string, also int, blocks bool) {
	if made, what, also = r.blocksIn(f, g.Unit); made >= 0 {
		return made, what, also, true
	}
	if g.Unit.Stretch || g.Unit.Row || g.Unit.Word == "corner" && !g.Unit.Space {
		return -1, "", -1, false
	}
	made, what, also = r.made1(f, g, grouped, groups)
	if m := g.Unit.Group; m != nil && m.Mesh != nil && max(made, also) == 0 { // squares of filet told stitch by stitch
		return -1, "", -1, false
	}
	return made, what, also, false
}

// blocksIn is how many blocks from corner to corner a row has, each a space beside three tall stitches, if a count names blocks; else -1.
func (r *runner) blocksIn(f *fabric, u ins.Unit) (made int, what string, also int) {
	if w := strings.TrimSuffix(u.Word, "s"); w != "block" && w != "tile" && w != "square" || !r.known() {
		return -1, "", -1
	}
	spaces, size, tall := 0, 0, 0
	for _, q := range f.runs {
		switch {
		case q.space() && (size == 0 || q.chain == size):
			spaces, size = spaces+1, q.chain
		case q.space() || q.kind == nil:
			return -1, "", -1
		case !q.tch && q.kind.ID != "slst":
			tall += q.n
		}
	}
	if spaces == 0 || tall != 3*spaces {
		return -1, "", -1
	}
	return spaces, "blocks", spaces
}

// bothSides is what a count of each side and a row have apart: the row is both sides of an opening, or the one that is worked. The sides
// of a round are as many as it has corners.
func (r *runner) bothSides(f *fabric, g ins.StitchGroup, said int) []raw {
	made := f.stitches()
	if r.round || made == said || made == 2*said {
		return nil
	}
	return []raw{{kind: "rows/stated", sev: finding.Warning, at: g.At, msg: "both sides have %s stitches together, not %s each | %s stitches made over the row below | %s stitches stated, and %s on both sides",
		fix: "correct the count, or the row so that it makes %s on each side", a: []int{made, said, made, said, 2 * said, said}, gap: made - 2*said, of: max(made, 2*said), stated: g.N}}
}

// beginsByLoop reports whether a round begins with a repeat of loops: its first chain is one of them, and no turning chain.
func beginsByLoop(body []ins.Item) bool {
	if len(body) == 0 {
		return false
	}
	r, ok := body[0].(*ins.Repeat)
	return ok && len(r.Body) > 0 && is[*ins.Chain](r.Body[0])
}

// oneOfKind are stated counts with those of one kind taken together, as a row has them in its order: 10 hdc, 50 dc,
// 10 hdc; and where a kind is named again.
func (r *runner) oneOfKind(list []ins.StitchGroup) (out []ins.StitchGroup, twice ins.Span) {
	if len(list) < 2 {
		return list, twice
	}
	for _, g := range list {
		if g.Side && len(out) > 0 { // 24 dc; 6 dc each side
			continue
		}
		k := slices.IndexFunc(out, func(h ins.StitchGroup) bool {
			return !g.Any && sameUnit(g.Unit, h.Unit) && g.Unit.Size.At(r.size) == h.Unit.Size.At(r.size) && !g.Unit.Stretch
		})
		if k < 0 {
			out = append(out, g)
			continue
		}
		twice = g.At
		if a, b := out[k].N.At(r.size), g.N.At(r.size); a != ins.None && b != ins.None {
			out[k].N = ins.N(a + b)
		}
	}
	return out, twice
}

// partly reports whether a count of one kind leaves other kinds out that texts often do not
// count: clusters, slip stitches, increases by another name.
func (r *runner) partly(f *fabric, rest int) bool {
	slips := 0
	for _, q := range f.runs {
		if q.kind != nil && q.kind.ID == "slst" {
			slips += q.n
		}
	}
	return slips == rest
}

func sameUnit(a, b ins.Unit) bool {
	return a.Stitch == b.Stitch && a.Chain == b.Chain && a.Space == b.Space && a.Group == b.Group
}

func (r *runner) onlySpaces(l *ins.Line) bool {
	return !slices.ContainsFunc(l.Stated, func(g ins.StitchGroup) bool {
		return !g.Unit.Space && !(g.Unit.Stitch != nil && g.Unit.Stitch.ID == "picot")
	})
}

// asStated is the row with the stated number of stitches, all of the kind that is
// named or that it has most of.
func (r *runner) asStated(l *ins.Line, f *fabric, k int) *fabric {
	g := &fabric{}
	if f != nil {
		g.ring = f.ring
		kind := f.main()
		if len(l.Stated) == 1 && l.Stated[0].Unit.Stitch != nil {
			kind = l.Stated[0].Unit.Stitch
		}
		g.add(run{kind: kind, n: k})
		if f.stitches() == k {
			g.marks = f.marks
		}
		g.plain = !(len(f.runs) == 1 && f.runs[0].n > 0)
		return g
	}
	return uniform(nil, k)
}

// made1 counts what a stated count names: the number made, and a second number
// that is as right (stitches with their chains, for 'sts').
func (r *runner) made1(f *fabric, g ins.StitchGroup, grouped bool, all []ins.StitchGroup) (made int, what string, also int) {
	u := g.Unit
	switch {
	case u.Space:
		n := r.spacesMade(f, u, grouped, all)
		if len(f.runs) > 1 && f.runs[0].tch && f.runs[0].tall > 3 && f.runs[1].kind != nil && f.runs[1].kind.ID == "sc" { // ch 4, sc in first lp: it is a loop, too
			return n, "chain spaces", n + 1
		}
		return n, "chain spaces", n
	case u.Chain:
		chains, stretches := f.chains()
		return chains, "chains", stretches
	case u.Group != nil:
		seen := map[int]bool{}
		n := f.tally(func(q run) bool { return q.of == u.Group }, func(q run) int { seen[q.group] = true; return 0 })
		n += len(seen)
		return n, u.Group.Name + "s", n
	case u.Stitch != nil && u.Stitch.ID == "picot":
		return f.picots, "picots", f.picots
	case u.Stitch != nil:
		n := f.tally(func(q run) bool {
			return !q.space() && !(grouped && q.of != nil) && (q.kind == nil || alike(u.Stitch, q.kind) && !apart(all, u.Stitch, q.kind) && !(q.one && u.Stitch.ID == q.kind.Base))
		}, func(q run) int { return q.n })
		if g.N.At(r.size) == f.stitches() && r.said1(f) { // a total by the name of the main stitch
			return n, u.Stitch.Abbr(r.x.Terms), f.stitches()
		}
		if u.Stitch.Key == "cluster" && len(f.runs) > 1 && f.runs[0].tch && f.runs[1].kind != nil && f.runs[1].kind.Together { // ch 3, dc2tog is the first of them
			return n, u.Stitch.Abbr(r.x.Terms), n + 1
		}
		if k := f.meshChain(); k >= 0 && alike(u.Stitch, f.runs[k].kind) && g.N.At(r.size) == n-1 { // the chain that begins a mesh is often not counted
			return n, u.Stitch.Abbr(r.x.Terms), n - 1
		}
		return n, u.Stitch.Abbr(r.x.Terms), n
	}
	return f.inAll(g.N.At(r.size))
}

// spacesMade is how many spaces of a row a part of a count means: in 4 corner sps, 4 ch-1 sps, those of a size that is told beside
// them are no corners.
func (r *runner) spacesMade(f *fabric, u ins.Unit, grouped bool, all []ins.StitchGroup) int {
	size := u.Size.At(r.size)
	other := func(q run) bool {
		return size <= 0 && slices.ContainsFunc(all, func(h ins.StitchGroup) bool { return h.Unit.Space && h.Unit.Size.At(r.size) == q.chain })
	}
	return f.tally(func(q run) bool {
		return q.space() && (size <= 0 || q.called(size)) && !other(q) && !(grouped && q.of != nil)
	}, func(run) int { return 1 })
}

// inAll counts all stitches, or these with their chains, as 'sts' may be meant: as said, if that is a way to count them.
func (f *fabric) inAll(said int) (made int, what string, also int) {
	n := f.stitches()
	c, spaces := f.chains()
	if k := f.smallChains(); k > 0 && said == n+k { // not those of corners
		return n, "stitches", said
	}
	if said == n+spaces && spaces > 0 || f.picots > 0 && said == n+f.picots {
		return n, "stitches", said
	}
	return n, "stitches", n + c
}

// meshChain is the run of a turning chain that stands for a stitch and the space beside it; -1: there is none.
func (f *fabric) meshChain() int {
	return slices.IndexFunc(f.runs, func(q run) bool { return q.tch && len(f.runs) > 2 && (q.tall > 4 || q.tall == 0) && f.runs[1].space() })
}

// smallChains are the chains of the spaces of a row but for those of the longest, if these are few, as at corners: 28 sts with the
// ch-1 spaces, without the ch-2 corner. 0: there are none.
func (f *fabric) smallChains() int {
	const few = 4
	long, n, k := 0, 0, 0
	for _, q := range f.runs {
		long = max(long, q.chain)
	}
	for _, q := range f.runs {
		switch {
		case q.chain == long:
			n++
		case q.space():
			k += q.chain
		}
	}
	if n > few {
		return 0
	}
	return k
}

// tally adds up what each of the runs that are meant counts for.
func (f *fabric) tally(meant func(run) bool, each func(run) int) int {
	n := 0
	for _, q := range f.runs {
		if meant(q) {
			n += each(q)
		}
	}
	return n
}

// apart reports whether a count names a kind of its own beside the one it is like: 12 dc, 12 Fpdc.
func apart(all []ins.StitchGroup, like, kind *stitch.Stitch) bool {
	return kind != like && slices.ContainsFunc(all, func(g ins.StitchGroup) bool { return g.Unit.Stitch == kind })
}

// said1 reports whether a row is of one kind but for increases and decreases of it.
func (r *runner) said1(f *fabric) bool {
	base := ""
	for _, q := range f.runs {
		if q.kind == nil || q.space() {
			continue
		}
		if base == "" {
			base = q.kind.Base
		}
		if q.kind.Base != base {
			return false
		}
	}
	return true
}

// questions asks for what the text leaves open and nothing in it decides.
func (r *runner) questions() finding.List {
	var out finding.List
	var sizes []int
	var first ins.Span
	for k, at := range r.asks {
		if k.chain > 0 {
			if !slices.Contains(sizes, k.chain) {
				sizes = append(sizes, k.chain)
			}
			if first.Line == 0 || at.Before(first) {
				first = at
			}
		}
	}
	if len(sizes) == 0 {
		return nil
	}
	slices.Sort(sizes)
	var names []string
	for _, n := range sizes {
		names = append(names, "ch "+strconv.Itoa(n))
	}
	return append(out, finding.Finding{Kind: "rows/turning-chain", Severity: finding.Note, Pos: r.x.Pos(first),
		Message: "the text does not say whether the chain at the beginning of a row (" + strings.Join(names, ", ") + ") counts as a stitch",
		Want:    "a sentence in the notes, or (counts as dc) or (does not count as a st) where it stands first", Fix: "say whether it counts"})
}
