package work

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"sync"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// start is what an unnumbered line begins with.
type start struct {
	chain       *ins.Chain
	cast        *ins.CastOn
	yarn        *ins.JoinYarn
	picks       []*ins.PickUp
	held        []*ins.PickUp // those that waited, beside what is picked up
	ring, round bool
	stitches    bool
	part        bool // the stitches of a part that waits are worked too
	skipped     int
	magic       bool
}

func (r *runner) startOf(l *ins.Line) start {
	var s start
	for _, n := range l.Body {
		switch n := n.(type) {
		case *ins.Chain:
			s.chains(n, r.size)
		case *ins.CastOn:
			s.casts(n)
		case *ins.Join:
			s.magic = s.magic || n.Name == "ring" && s.chain == nil
			s.ring = s.ring || n.Name == "ring" || s.chain != nil
			s.round = s.round || n.Name == "round"
		case *ins.JoinYarn:
			s.yarn = n
		case *ins.Together:
			s.waited(n)
		case *ins.Skip:
			s.skips(n, r.size)
		case *ins.BindOff: // slip centre 20 sts onto a holder, rejoin yarn
			if k := max(n.N.At(r.size), 0); n.Hold && !n.Made && s.yarn == nil && (r.fab == nil || k != r.fab.stitches()) {
				s.skipped += k
			}
		case *ins.PickUp:
			s.stitches = true
			if n.Kind == nil || n.Kind.Craft == stitch.Knitting {
				s.picks = append(s.picks, n)
			}
		case *ins.Stitch:
			if s.closes(n) && len(l.Body) < 4 { // ch 4, sl st in first ch
				s.ring = true
				continue
			}
			s.stitches = true
			s.takes(n)
		case *ins.Repeat, *ins.Needles:
			s.stitches = true
		}
	}
	return s
}

// casts takes stitches that are cast on, first of all or between what is picked up.
func (s *start) casts(n *ins.CastOn) {
	switch {
	case len(s.picks) > 0:
		s.held = append(s.held, &ins.PickUp{N: n.N})
	case s.chain == nil && s.cast == nil && !s.stitches:
		s.cast = n
	}
}

// waited takes stitches that waited, beside what is picked up.
func (s *start) waited(n *ins.Together) {
	for _, p := range n.Parts {
		s.held = append(s.held, &ins.PickUp{N: p.N})
	}
}

// takes takes what a stitch says of those that waited: k52 held sts, beside those picked up.
func (s *start) takes(n *ins.Stitch) {
	if len(n.Places) == 1 && n.Places[0].Unit.Word == "held" && n.Places[0].Kind == ins.InNext {
		s.held = append(s.held, &ins.PickUp{N: n.Places[0].N})
	}
	s.part = s.part || slices.ContainsFunc(n.Places, func(p ins.Place) bool { return p.Extent.Part })
}

func (s *start) chains(n *ins.Chain, size int) {
	if s.cast == nil && !s.stitches && (s.chain == nil || s.chain.N.At(size) <= 1 && n.N.At(size) > 1) {
		s.chain = n
	}
}

func (s *start) skips(n *ins.Skip, size int) {
	if s.yarn != nil {
		return
	}
	for _, p := range n.Places {
		s.skipped += max(p.N.At(size), 0)
	}
}

// closes reports whether a slip stitch closes the chain to a ring.
func (s *start) closes(n *ins.Stitch) bool {
	return s.chain != nil && n.Kind != nil && n.Kind.ID == "slst"
}

// mostTab is how many stitches a tab of garter stitch has at most.
const mostTab = 8

// pickUp begins with stitches picked up. Those on the needle go on beside them, if the count says so, or if a
// small tab is picked up on two of its edges.
func (r *runner) pickUp(l *ins.Line, s start) {
	live := 0
	if r.fab != nil && r.known() {
		live = r.fab.stitches()
	}
	k := r.said(l)
	n := r.picked(l, s, live, k)
	wait := s.part && live == 0
	if wait && k > n {
		n = k
	}
	if wait = wait || n == 0 && slices.ContainsFunc(s.picks, func(p *ins.PickUp) bool { return p.Rate }); k > n && wait {
		n = k
	}
	r.anew()
	r.put(uniform(knitStitch(), n), !wait || k >= 0)
	r.round = s.round
	if r.g != nil {
		r.g.anew()
		r.g.foundation(r.fab, l.At.Line, s.round)
	}
	if l.Stated != nil {
		r.checkOnly(l)
	}
}

// picked is how many stitches a line has that picks up some, where live ones are on the needle and k are stated.
func (r *runner) picked(l *ins.Line, s start, live, k int) int {
	n := 0
	for _, p := range append(s.picks, s.held...) {
		n += max(p.N.At(r.size), 0)
	}
	n += r.shapedBeside(l)
	if worked, all := r.workedBeside(l); live > 0 && (r.fab.waited && r.worksAll(l) || all && worked == live && k < 0) {
		return n + live
	}
	n = r.beside(l, n, live, k)
	if live > 0 && (k == n+live || k < 0 && (s.part || len(s.picks) > 1 && live <= mostTab)) {
		n += live
	}
	return n
}

// shapedBeside is how many stitches a line that picks up some makes more, in words: inc 1 st at centre back.
func (r *runner) shapedBeside(l *ins.Line) (n int) {
	for _, it := range l.Body {
		s, ok := it.(*ins.Shape)
		switch {
		case !ok || s.HasTimes || s.Every.Set():
		case s.Inc:
			n += max(s.N.At(r.size), 0)
		default:
			n -= max(s.N.At(r.size), 0)
		}
	}
	return n
}

// mostSlip is by how many stitches the numbers of a line that counts all it works may miss what it states, and be wrong rather than leave others out.
const mostSlip = 2

// beside is how many stitches a line has that picks up n, where live ones are on the needle and k are stated.
func (r *runner) beside(l *ins.Line, n, live, k int) int {
	worked, all := r.workedBeside(l)
	switch {
	case k > n+worked && r.fab != nil && !r.known() && !(all && worked > 0 && k-n-worked <= mostSlip): // beside others of which it is not known how many they are
		return k
	case worked == 0 && all:
	case k >= 0 && (!all || k == n+worked || k == n+worked-worksAgain(l, r.size)):
		return k
	case all && (live == 0 || k >= 0):
		return n + worked
	}
	return n
}

// takesAll reports whether a line that joins yarn and picks up stitches tells each of those that waited, and states how many they are.
func (r *runner) takesAll(l *ins.Line, s start) bool {
	n, all := r.workedBeside(l)
	for _, p := range append(s.picks, s.held...) {
		n += max(p.N.At(r.size), 0)
	}
	return all && n > 0 && l.Stated != nil && 2*max(n-r.said(l), r.said(l)-n) < n
}

// worksAgain is how many stitches a line that picks up stitches works last of those that it began with: knit across 16 heel sts, pick
// up 15, …, k 8 heel sts.
func worksAgain(l *ins.Line, size int) int {
	var list []*ins.Stitch
	for _, it := range l.Body {
		if s, ok := it.(*ins.Stitch); ok {
			list = append(list, s)
		}
	}
	if k := len(list); k > 1 && list[k-1].Kind == list[0].Kind && 2*countOf(list[k-1], size) == countOf(list[0], size) {
		return countOf(list[k-1], size)
	}
	return 0
}

// countOf is how many stitches a stitch is told to be worked over.
func countOf(s *ins.Stitch, size int) int {
	if len(s.Places) == 1 && s.Places[0].Kind == ins.InNext {
		return max(s.Places[0].N.At(size), 0)
	}
	return max(s.N.At(size), 0)
}

// worksAll reports whether a line that picks up stitches works all those on the needle too, told as one stretch or not at all.
func (r *runner) worksAll(l *ins.Line) bool {
	for _, it := range l.Body {
		s, ok := it.(*ins.Stitch)
		if ok && (s.Kind == nil || s.Kind.Uses != 1 || s.Kind.Makes != 1 || len(s.Places) != 1 || s.Places[0].Extent.Kind != ins.ToEnd && !s.Places[0].Extent.Part) || is[*ins.Repeat](it) {
			return false
		}
	}
	return true
}

// workedBeside is how many stitches a line works beside those that it picks up, and whether each of them is counted.
func (r *runner) workedBeside(l *ins.Line) (n int, all bool) {
	all = true
	for _, it := range l.Body {
		s, ok := it.(*ins.Stitch)
		switch {
		case is[*ins.Repeat](it):
			all = false
		case !ok || len(s.Places) == 1 && s.Places[0].Unit.Word == "held":
		case s.Kind != nil && (s.Kind.Uses != 1 || s.Kind.Makes != 1), len(s.Places) > 1:
			all = false
		case len(s.Places) == 0:
			n += max(s.N.At(r.size), 0)
		case s.Places[0].Kind == ins.InNext && s.Places[0].Extent.Kind == ins.NoExtent:
			n += max(s.Places[0].N.At(r.size), 0)
		default:
			all = false
		}
	}
	return n, all
}

// between works an unnumbered line: a foundation, casting on, joining yarn,
// fastening off. It reports false for a line that is a row.
func (r *runner) between(l *ins.Line) bool {
	s := r.startOf(l)
	switch {
	case s.yarn != nil && !(len(s.picks) > 0 && (r.fab != nil && r.fab.waited || r.takesAll(l, s))): // place 14 held sts on needles; rejoin yarn, pick up 2 sts
		r.yarn(l, s)
	case (s.chain != nil || s.cast != nil) && !s.stitches:
		r.found1(l, s)
	case len(s.picks) > 0:
		r.pickUp(l, s)
	case s.stitches:
		return false
	case s.magic && r.fab != nil && r.fab.foundation() && len(r.fab.runs) == 1 && !r.fab.ring: // Ch 26. Join to form a ring.
		f := *r.fab
		f.ring = true
		r.put(&f, true)
		r.round = true
	case s.magic:
		r.put(&fabric{ring: true}, true)
	default:
		r.ends(l)
		if l.Stated != nil {
			r.checkOnly(l)
		}
	}
	return true
}

// yarn takes up the work where yarn is joined, and works the row that the line goes on with.
func (r *runner) yarn(l *ins.Line, s start) {
	r.joinYarn(s.yarn, s.skipped, l)
	var rest []ins.Item
	offs := false
	for i, n := range l.Body {
		if n == ins.Item(s.yarn) {
			rest = l.Body[i+1:]
		}
	}
	for _, n := range rest {
		_, off := n.(*ins.BindOff)
		offs = offs || off
	}
	if !s.stitches && !offs {
		return
	}
	r.rows(l, rest)
	r.fresh, r.no, r.side = true, 0, 0
}

// waiting is how many stitches that waited are on the needle, beside which others are cast on.
func (r *runner) waiting(s start) (n int) {
	for _, p := range s.held {
		n += max(p.N.At(r.size), 0)
	}
	if n == 0 && r.fab != nil && r.fab.waited && r.known() {
		return r.fab.stitches()
	}
	return n
}

// found1 begins with chains or stitches cast on.
func (r *runner) found1(l *ins.Line, s start) {
	var k int
	if s.chain != nil {
		k = s.chain.N.At(r.size)
	} else if k = s.cast.N.At(r.size); k != ins.None {
		k += r.waiting(s)
	}
	if k == ins.None || s.chain != nil && k == 1 { // one chain to close a piece begins none
		return
	}
	r.anew()
	f := &fabric{ring: s.ring}
	if s.chain != nil {
		f.add(run{kind: chainStitch(), n: k, base: true})
	} else {
		f = uniform(knitStitch(), k)
		f.ring = false
	}
	r.put(f, true)
	r.round, r.cloth = s.ring && s.chain != nil || s.round || s.ring && s.cast != nil, ins.Cloth{}
	if r.g != nil {
		r.g.anew()
		r.g.foundation(r.fab, l.At.Line, r.round)
	}
	r.goesOnAs(l)
	if l.Stated != nil && r.known() {
		r.res = &result{out: r.fab}
		r.check(l)
	}
}

// goesOnAs works what a line says of another piece behind its own beginning: ch 30 and work first row as for Back.
func (r *runner) goesOnAs(l *ins.Line) {
	for _, n := range l.Body {
		if a, ok := n.(*ins.AsFor); ok {
			r.asFor(l, a)
		}
	}
}

// ends works what closes a piece, or takes stitches off it.
func (r *runner) ends(l *ins.Line) {
	waiting := len(r.lefts)
	for _, n := range l.Body {
		switch n := n.(type) {
		case *ins.Fasten:
			r.fasten(l)
		case *ins.BindOff:
			switch {
			case n.All:
				r.allOff(n)
				r.put(nil, false)
				r.fresh, r.side = true, 0
			case n.Next && len(r.lefts) > 0:
				v := &r.lefts[len(r.lefts)-1]
				v.f = uniform(r.stuff(v.f), max(v.f.stitches()-max(n.N.At(r.size), 0), 0))
			case n.Hold && len(r.lefts) > waiting && r.lefts[waiting].f.stitches() == n.N.At(r.size): // work on 28 sts, place the other 28 on hold
			case r.fab != nil:
				rows := 1
				if n.Hold {
					rows = 0
				}
				r.lessen(n, max(n.N.At(r.size), 0), rows, false)
			}
		case *ins.Join:
			r.round = r.round || n.Name == "round"
		case *ins.Leave:
			r.leaves(n)
		}
	}
}

// allOff tells where other stitches are left than all those that are bound off.
func (r *runner) allOff(n *ins.BindOff) {
	k := n.N.At(r.size)
	if !n.N.Set() || k <= 0 || r.fab == nil || !r.known() || r.long() || r.suspect > 0 && r.amiss {
		return
	}
	if have := r.fab.stitches(); !r.mayHave(k) && 2*max(have-k, k-have) <= max(have, k) {
		r.tell("rows/unworked", finding.Warning, n.At, "%s stitches remain, not %s", "say %s, or correct the count before it", have, k, have)
	}
}

// mayHave reports whether there are k stitches in a reading that is alive, such as that in which a stated count is right.
func (r *runner) mayHave(k int) bool {
	return slices.ContainsFunc(r.readings(), func(rd reading) bool { return rd.fab != nil && rd.known() && rd.fab.stitches() == k })
}

// fasten ends the piece, if the labelled line behind is not the round after the one worked last: then the yarn alone is cut.
func (r *runner) fasten(l *ins.Line) {
	if r.round && r.no > 0 && r.fab != nil && r.numberAfter(l) == r.no+1 {
		return
	}
	r.put(nil, false)
	r.fresh, r.side = true, 0
}

// leaves works on some of the stitches alone: those that are there, or fewer of them.
func (r *runner) leaves(n *ins.Leave) {
	if r.fab == nil {
		return
	}
	k := n.N.At(r.size)
	if n.All || !r.known() || k == ins.None {
		r.lefts = append(r.lefts, left{f: r.fab, no: r.no})
		return
	}
	have := r.fab.stitches()
	switch {
	case r.mayHave(k):
	case k < have && len(r.lefts) == 0:
		f := uniform(r.stuff(r.fab), k)
		r.lefts = append(r.lefts, left{f: uniform(r.stuff(r.fab), have-k), no: r.no})
		r.put(f, true)
	case r.long():
		r.put(uniform(r.stuff(r.fab), k), true)
	default:
		r.tell("rows/unworked", finding.Warning, n.At, "%s stitches remain, not %s", "say %s, or correct the count before it", have, k, have)
	}
}

var chainStitch = sync.OnceValue(func() *stitch.Stitch { return stitch.ByID("ch") })

func (r *runner) anew() {
	r.no, r.side, r.edge, r.panels, r.altNo = 0, 0, 0, nil, 0
	r.cur.anew, r.turnedRound = true, false
	r.fresh, r.begun = true, true
}

// onlyCut reports whether a yarn is joined where another one was cut, and no stitches wait: Rejoin MC.
func (r *runner) onlyCut(n *ins.JoinYarn) bool {
	return n.From == "yarn" && len(n.Place) == 0 && !n.N.Set() && len(r.lefts) == 0 && r.fab != nil && r.fab.stitches() > 0
}

// joinYarn takes up stitches that a row left unworked, or begins along an edge.
func (r *runner) joinYarn(n *ins.JoinYarn, skipped int, l *ins.Line) {
	if r.round && r.fab != nil && r.fab.stitches() > 0 && len(r.lefts) == 0 && len(n.Place) > 0 && n.From != "held" && (n.Place[0].Unit.Space || n.Place[0].Unit.Any() || n.Place[0].Unit.Stitch != nil) { // another colour in the next round
		r.carry = nil
		return
	}
	if skipped == 0 && r.onlyCut(n) {
		return
	}
	r.only()
	r.carry, r.side, r.cloth = nil, 0, ins.Cloth{}
	r.fresh, r.begun = true, false
	taken := skipped > 0 || slices.Contains([]string{"held", "holder", "next", "remaining", "rem", "unworked", "skipped"}, n.From)
	told := n.N.At(r.size)
	at := slices.IndexFunc(r.lefts, func(v left) bool { return v.f.stitches() == told })
	if len(r.lefts) == 0 || at < 0 && (!taken || max(told, 2*skipped) > 2*r.lefts[r.mostLeft()].f.stitches()) { // others wait from before
		r.put(nil, false)
		if told > 0 || n.From == "held" || n.From == "holder" { // of some it is not told how many they are
			f := uniform(r.mainOf(), max(told, 1))
			f.waited, f.untold = true, told <= 0
			r.put(f, told > 0)
		}
		r.no, r.edge = 0, 0
		if len(r.cur.rows) > 0 { // its rows may be counted on
			r.no = -1
		}
		r.cur.anew = true
		return
	}
	best := at
	if at < 0 {
		best = r.mostLeft()
	}
	v := r.lefts[best]
	r.workedOn(v.at)
	r.lefts = append(r.lefts[:best:best], r.lefts[best+1:]...)
	c := over(v.f)
	if skipped > c.left {
		r.tell("rows/over-use", finding.Warning, n.At, "%s stitches are skipped, and only %s were left", "skip fewer", skipped, c.left)
		skipped = c.left
	}
	w := &work{task: task{x: r.x, size: r.size, from: v.f, pick: newPicks()}, place: place{cur: c, out: &fabric{}}, quiet: 1}
	w.use(skipped, nil, n.At)
	r.put(rest(&w.cur).reversed(), !v.unsure)
	r.remains(n, told, &v)
	r.begun = true
	r.no = v.no
	r.round = false
	if r.g != nil {
		r.g.anew()
		r.g.foundation(r.fab, l.At.Line, false)
		r.g.held()
	}
}

// remains holds what a line says that remains against what is left of a row, unless something behind that row is told already: it may be the same slip.
func (r *runner) remains(n *ins.JoinYarn, told int, v *left) {
	k := r.fab.stitches()
	if told < 1 || k == told || v.unsure || !strings.HasPrefix(n.From, "rem") {
		return
	}
	if !slices.ContainsFunc(r.all, func(f raw) bool { return f.at.Line >= v.at.Line && f.sev != finding.Note }) {
		r.tell("rows/unworked", finding.Warning, n.At, "%s stitches remain, not %s", "say %s, or correct the counts before it", k, told, k)
	}
}

// mostLeft is which of the stitches left unworked are the most.
func (r *runner) mostLeft() (best int) {
	for i, v := range r.lefts {
		if v.f.stitches() > r.lefts[best].f.stitches() {
			best = i
		}
	}
	return best
}

// workedOn takes back that the row at that place leaves stitches of which nothing is said: they are worked on now.
func (r *runner) workedOn(at ins.Span) {
	rest := func(list []raw) []raw {
		return slices.DeleteFunc(slices.Clone(list), func(f raw) bool { return f.kind == "rows/under-use" && f.at == at })
	}
	r.found, r.all, r.misfit = rest(r.found), rest(r.all), slices.Clone(r.misfit)
	for i := range r.misfit {
		r.misfit[i].list = rest(r.misfit[i].list)
	}
}

// lessen takes k stitches off in so many rows; at the beginning of each, if each is set.
func (r *runner) lessen(n ins.Item, k, rows int, each bool) {
	g := r.g
	if g != nil && each && rows > 0 {
		plan := make([]edges, min(rows, maxGraph))
		for i := range plan {
			plan[i].off = k / rows
		}
		g.planned(r, plan, 0)
		r.g = nil
	}
	r.even(rows)
	r.g = g
	if r.change(n, -k); rows > 0 {
		r.counted()
	}
}

// counted notes what the rows worked last come to.
func (r *runner) counted() {
	if k := len(r.cur.rows) - 1; k >= 0 {
		r.cur.rows[k].after, r.cur.rows[k].sure = r.fab, r.known()
	}
}

// change adds to the count of every reading, and tells where more is taken than there is.
func (r *runner) change(n ins.Item, by int) {
	list := r.readings()
	for i := range list {
		rd := &list[i]
		if rd.fab == nil || !rd.known() {
			continue
		}
		have := rd.fab.stitches()
		if have+by < 0 && rd.long() {
			rd.lose()
		} else if have+by < 0 {
			rd.add(raw{kind: "rows/over-use", sev: finding.Warning, at: n.Span(), msg: "this takes off %s stitches, and there are only %s", fix: "take off %s at most", a: []int{-by, have, have}})
		}
		marks := marksMoved(n, rd.fab, by)
		rd.fab = uniform(r.stuff(rd.fab), max(have+by, 0))
		rd.fab.marks = marks
		rd.res = &result{out: rd.fab}
	}
	r.keep(list)
}

// marksMoved are the markers of a row once a shaping has changed it by so many stitches, in equal parts at its ends or on each side
// of every marker; none if where it falls is not known.
func marksMoved(n ins.Item, f *fabric, by int) []int {
	s, ok := n.(*ins.Shape)
	if !ok || !s.Both || s.Halves || s.Panel != "" || len(f.marks) == 0 || s.Marked && s.Markers.Set() {
		return nil
	}
	first, step := by/2, 0 // at each end
	if s.Marked {
		first = by / (2 * len(f.marks))
		step = 2 * first
	}
	if f.marks[0] == 0 && s.Marked { // the round begins at a marker: what is before it falls at the end
		first = 0
	} else if f.marks[len(f.marks)-1] == f.stitches() && s.Marked { // what is behind it falls at the beginning
		first = step
	}
	out := make([]int, len(f.marks))
	for i, m := range f.marks {
		out[i] = max(m+first+i*step, 0)
	}
	return out
}

// even counts rows worked even.
func (r *runner) even(rows int) {
	if rows > 0 && r.fab != nil {
		no := -1
		if r.no >= 0 {
			no = r.no + 1
		}
		if r.g != nil {
			r.g.even(r, rows)
		}
		list := r.readings()
		for i := range list {
			if f := list[i].fab; f != nil {
				list[i].fab = uniform(r.stuff(f), f.stitches())
				list[i].fab.marks = f.marks
				list[i].carry, list[i].behind, list[i].ahead = nil, nil, nil
			}
		}
		r.keep(list)
		r.cur.rows = append(r.cur.rows, done{no: no, count: rows, after: r.fab, sure: r.known(), side: r.side})
	}
	if r.no >= 0 {
		r.no += rows
	}
	if !r.round && r.side != 0 && rows%2 == 1 {
		r.side = 3 - r.side
	}
	r.begun = true
}

// flat is the instructions of a line without the repeats of whole rows in it: each stands there as often as it is worked.
func (r *runner) flat(list []ins.Item) []ins.Item {
	var out []ins.Item
	for _, n := range list {
		q, ok := n.(*ins.Repeat)
		if !ok || len(q.Places) > 0 || q.Until.Kind != ins.NoExtent || !wholeRows(q) {
			out = append(out, n)
			continue
		}
		for range min(q.Times.At(r.size), mostTimes) {
			out = append(out, q.Body...)
		}
	}
	return out
}

// mostTimes is how often whole rows are repeated at most.
const mostTimes = 200

// wholeRows reports whether a repeat is of whole rows: even ones and those of another line only beside others, or more than once.
func wholeRows(q *ins.Repeat) bool {
	again := q.Times.By != nil || q.Times.All > 1
	for _, n := range q.Body {
		switch n := n.(type) {
		case *ins.BindEach, *ins.Shape:
		case *ins.RepeatRows:
			if !again {
				return false
			}
		case *ins.Even:
			if !again || !n.Rows.Set() || len(q.Body) == 1 {
				return false
			}
		default:
			return false
		}
	}
	return len(q.Body) > 0
}

// whole works a line that is about whole rows; it reports false for other lines.
func (r *runner) whole(l *ins.Line) bool {
	found := false
	body := r.flat(l.Body)
	for i, n := range body {
		switch n := n.(type) {
		case *ins.RepeatRows, *ins.BindEach, *ins.AsFor, *ins.Edge, *ins.Measure, *ins.Divide, *ins.Together, *ins.Markers:
			found = true
		case *ins.Even:
			found = true
		case *ins.Shape:
			if n.Spread && l.Label != nil && !n.HasTimes && !n.Every.Set() && len(body) > 1 {
				return false
			}
			found = true
		case *ins.Stitch, *ins.Repeat, *ins.CastOn, *ins.PickUp:
			return false
		case *ins.Chain:
			if len(body) > 1 && !(found && slices.ContainsFunc(body[i+1:], is[*ins.Turn]) && endOfRow(body[i+1:])) { // Row 5: Repeat Row 3. Ch 1, turn.
				return false
			}
		}
	}
	if !found {
		return false
	}
	r.sameRow = false
	for _, n := range body {
		if endsWork(n) {
			r.checkWhole(l)
		}
		r.wholeOne(l, n)
		r.sameRow = l.Label != nil && is[*ins.RepeatRows](n)
	}
	r.sameRow = false
	r.checkWhole(l)
	return true
}

// endsWork reports whether the work is at its end with an instruction.
func endsWork(n ins.Item) bool {
	off, ok := n.(*ins.BindOff)
	return ok && off.All || is[*ins.Fasten](n)
}

// checkWhole holds the row that whole rows come to against the count that their line states.
func (r *runner) checkWhole(l *ins.Line) {
	if r.fab == nil || l.Stated == nil {
		return
	}
	list := r.readings()
	for i := range list {
		list[i].res = &result{out: list[i].fab, total: !list[i].known()}
	}
	r.keep(list)
	r.check(l)
}

// wholeOne works one instruction about whole rows.
func (r *runner) wholeOne(l *ins.Line, n ins.Item) bool {
	switch n := n.(type) {
	case *ins.RepeatRows:
		return r.rep(l, n)
	case *ins.Even:
		r.evenRows(l, n)
	case *ins.Shape:
		r.shape(l, n)
	case *ins.Divide:
		r.divide(n)
	case *ins.Together:
		r.together1(n)
	case *ins.Markers:
		r.marks1(n)
	case *ins.BindEach:
		if k := r.times(l); k > 1 && n.Rows.By == nil && n.Rows.All == 1 && !n.Alt { // Next 2 rows: bind off 3 sts at beg of each row
			each := *n
			n, each.Rows = &each, ins.N(k)
		}
		r.bindEach(n)
	case *ins.AsFor:
		r.asFor(l, n)
	case *ins.Edge:
		r.only()
		r.edge = max(r.no, 0)
		r.no, r.side, r.carry = 0, 0, nil
		r.fresh = true
	case *ins.Chain:
		list := r.readings()
		for i := range list {
			list[i].carry = n
		}
		r.keep(list)
	case *ins.Measure:
		r.measure(n.Length)
	case *ins.Leave:
		r.leaves(n)
	case *ins.BindOff:
		if n.All {
			r.allOff(n)
			r.put(nil, false)
			r.fresh, r.side = true, 0
		} else if r.fab != nil && r.known() {
			rows := 1
			if n.Hold { // leave sts on a spare needle: no row
				rows = 0
			}
			r.lessen(n, max(n.N.At(r.size), 0), rows, false)
		}
	case *ins.Fasten:
		r.fasten(l)
	}
	return false
}

func (r *runner) bindEach(n *ins.BindEach) {
	if n.Cloth != (ins.Cloth{}) {
		r.cloth = n.Cloth
	}
	rows := max(n.Rows.At(r.size), 0)
	if one := *n; n.Alt {
		one.Rows, one.Alt = ins.N(1), false
		for i := range rows {
			r.even(min(i, 1))
			r.bindEach(&one)
		}
		return
	}
	k := max(n.N.At(r.size), 0) * rows
	switch {
	case r.fab == nil || !r.known():
		r.even(rows)
	case n.Add:
		r.even(rows)
		r.change(n, k)
	default:
		r.lessen(n, k, rows, true)
	}
	if k := len(r.cur.rows); k > 0 && rows > 0 {
		one := *n
		one.Rows = ins.N(1)
		r.cur.rows[k-1].shape = &one
	}
}

// bodies are the rows that 'rep' means, in order.
func (r *runner) bodies(l *ins.Line, n *ins.RepeatRows) ([]done, bool) {
	switch {
	case n.Last.Set():
		return r.lastRows(n.Last.At(r.size))
	case n.Name != "" && len(n.Rows) > 0:
		if out, ok := r.numbered(n); ok {
			return out, true
		}
	case n.Name != "":
		return r.rowsNamed(n.Name)
	case n.Since != "":
		return r.since(n.Since)
	case n.Onward && r.no >= n.Rows[0].At(r.size):
		return r.lastRows(r.no - n.Rows[0].At(r.size) + 1)
	}
	for i := 1; i < len(n.Rows) && !n.Stretch; i++ {
		if n.Rows[i].At(r.size) == n.Rows[i-1].At(r.size) {
			r.tell("rows/reference", finding.Warning, n.At, "row %s is named twice", "name the rows in their order", n.Rows[i].At(r.size))
		}
	}
	var out []done
	for _, k := range r.numbersOf(n) {
		d, ok := r.row(k)
		if !ok {
			if !r.anyUnread() && !slices.Contains(r.gone, k) && (len(r.cur.rows) > 0 || len(r.pieces) > 1 || l.Label != nil) { // before the first row it tells of rows to come
				r.tell("rows/reference", finding.Warning, n.At, "there is no row %s to repeat", "name a row that was worked before", k)
			}
			return nil, true
		}
		out = append(out, d)
	}
	if n.Between.Set() {
		return spacedAll(out, n.Between)
	}
	if n.Chains.Set() {
		return chainedAll(out, n.Chains)
	}
	return out, len(out) > 0
}

// spacedAll are rows with so many plain stitches between their increases; false if it is not sure which those are.
func spacedAll(rows []done, k ins.Num) ([]done, bool) {
	for i := range rows {
		body, n := spaced(rows[i].body, k, false)
		if n != 1 {
			rows[i].unread = true
			continue
		}
		rows[i].body = body
	}
	return rows, len(rows) > 0
}

// chainedAll are rows with so many chains in each of their spaces; false if those are of several lengths.
func chainedAll(rows []done, k ins.Num) ([]done, bool) {
	for i := range rows {
		lengths := map[int]bool{}
		body := chained(rows[i].body, k, false, lengths)
		if len(lengths) != 1 {
			rows[i].unread = true
			continue
		}
		rows[i].body = body
	}
	return rows, len(rows) > 0
}

// chained are instructions with so many chains in each chain of a repeat; it notes the lengths that they had.
func chained(list []ins.Item, k ins.Num, within bool, lengths map[int]bool) []ins.Item {
	out := slices.Clone(list)
	for i, it := range out {
		switch it := it.(type) {
		case *ins.Repeat:
			rep := *it
			rep.Body = chained(it.Body, k, true, lengths)
			out[i] = &rep
		case *ins.Chain:
			if within && it.N.By == nil {
				lengths[it.N.All] = true
				ch := *it
				ch.N = k
				out[i] = &ch
			}
		}
	}
	return out
}

// spaced are instructions with so many plain stitches in each repeat, and how many stretches of plain stitches that changed.
func spaced(list []ins.Item, k ins.Num, within bool) (out []ins.Item, changed int) {
	out = slices.Clone(list)
	for i, it := range out {
		switch it := it.(type) {
		case *ins.Repeat:
			rep := *it
			var n int
			rep.Body, n = spaced(it.Body, k, true)
			out[i], changed = &rep, changed+n
		case *ins.Stitch:
			if s, ok := plainOf(it, k); ok && within {
				out[i], changed = s, changed+1
			}
		}
	}
	return out, changed
}

// plainOf is a stretch of one plain stitch in each with k of them; false if the stitch is worked otherwise.
func plainOf(s *ins.Stitch, k ins.Num) (*ins.Stitch, bool) {
	if s.Kind == nil || s.Kind.Uses != 1 || s.Kind.Makes != 1 || len(s.Also) > 0 {
		return nil, false
	}
	plain := *s
	switch {
	case len(s.Places) == 0:
		plain.N = k
	case len(s.Places) == 1 && s.Places[0].Kind == ins.InNext && s.N.By == nil && s.N.All == 1:
		place := s.Places[0]
		place.N = k
		plain.Places = []ins.Place{place}
	default:
		return nil, false
	}
	return &plain, true
}

// lastRows are the last k rows of the section; false if it has not so many.
func (r *runner) lastRows(k int) ([]done, bool) {
	var out []done
	for _, d := range slices.Backward(r.cur.rows) {
		for j := 0; j < d.count && len(out) < k; j++ {
			out = append(out, d)
		}
	}
	slices.Reverse(out)
	return out, len(out) == k
}

// since are the rows from the latest line of the section with a mark on, each as often as it was worked.
func (r *runner) since(mark string) ([]done, bool) {
	from, ok := r.cur.marked[mark]
	if !ok || from >= len(r.cur.rows) {
		return nil, false
	}
	k := 0
	for _, d := range r.cur.rows[from:] {
		k += d.count
	}
	return r.lastRows(k)
}

// rowsNamed is the latest row of a name, or of a part of it: dec row, first dec row.
func (r *runner) rowsNamed(want string) ([]done, bool) {
	for _, p := range slices.Backward(r.pieces) {
		for _, d := range slices.Backward(p.rows) {
			name := strings.TrimRight(d.name, " 0123456789")
			if d.name == want || name != "" && (strings.HasSuffix(want, name) || strings.HasSuffix(name, want)) {
				return []done{d}, true
			}
		}
	}
	return nil, false
}

// numbered are rows that have a name and a number: Mesh rounds 1 and 2. They are none if one of them is not there by both.
func (r *runner) numbered(n *ins.RepeatRows) ([]done, bool) {
	var out []done
	for _, k := range r.numbersOf(n) {
		want := fmt.Sprint(n.Name, " ", k)
		d, ok := r.rowsNamed(want)
		if !ok || d[0].name != want {
			return nil, false
		}
		out = append(out, d...)
	}
	return out, len(out) > 0
}

// numbersOf are the numbers of the rows that are meant, those within a stretch too.
func (r *runner) numbersOf(n *ins.RepeatRows) []int {
	var out []int
	for i, v := range n.Rows {
		k := v.At(r.size)
		if n.Stretch && i > 0 {
			for j := n.Rows[i-1].At(r.size) + 1; j < k && len(out) < 1000; j++ {
				out = append(out, j)
			}
		}
		out = append(out, k)
	}
	return out
}

// anyUnread reports whether a line of the section was not read, or is told by a chart: what it is called may be what is meant.
func (r *runner) anyUnread() bool {
	return slices.ContainsFunc(r.section.Lines, func(l *ins.Line) bool {
		return len(l.Unread) > 0 && l.Label == nil || slices.ContainsFunc(l.Body, func(n ins.Item) bool { e, ok := n.(*ins.Even); return ok && e.Chart })
	})
}

// row is the row of that number, of this section or else of the latest that has one.
func (r *runner) row(k int) (done, bool) {
	for p := len(r.pieces) - 1; p >= 0; p-- {
		list := r.pieces[p].rows
		for i := len(list) - 1; i >= 0; i-- {
			if d := list[i]; d.called(k) {
				return d, true
			}
		}
		for _, e := range slices.Backward(r.every) { // a row that an interleaved line tells
			if p == len(r.pieces)-1 && r.fills(e, k) {
				return done{no: k, count: 1, line: e, body: e.Body, unread: len(e.Unread) > 0}, true
			}
		}
		if r.pieces[p].anew && len(list) > 0 && p < len(r.pieces)-1 {
			break
		}
		if p == len(r.pieces)-1 && r.no > 0 && k == r.no+1 && len(list) > 0 && list[0].no == 1 { // the row that comes now
			break
		}
	}
	return done{}, false
}

// called reports whether rows that were worked have the number k, or had it by mistake.
func (d *done) called(k int) bool {
	return (d.body != nil || d.line == nil) && (d.no > 0 && d.no <= k && k < d.no+d.count || d.alt > 0 && d.alt <= k && k < d.alt+d.count)
}

// rep repeats rows.
func (r *runner) rep(l *ins.Line, n *ins.RepeatRows) bool {
	cycle, ok := r.bodies(l, n)
	bare := func(d done) bool { return d.line != nil && d.line.Label == nil } // it may be the row of that name
	if !ok && !r.anyUnread() && len(r.cur.rows) > 0 && !n.Last.Set() && (n.Name == "" || !slices.ContainsFunc(r.cur.rows, bare)) {
		r.tell("rows/reference", finding.Warning, n.At, "there are no such rows to repeat", "name rows that were worked before")
	}
	unread := len(cycle) == 0 || !ok
	for _, d := range cycle {
		unread = unread || d.unread || d.body == nil && d.line != nil
	}
	if unread {
		r.repUnread(l, n, len(cycle))
		return false
	}
	n = r.ofPart(n)
	rows, gap, done := r.repRows(l, n, cycle)
	if done {
		return true
	}
	r.cycle(l, n, cycle, rows, gap)
	r.totalOr(l, n, cycle)
	for _, t := range n.Then {
		r.cycle(l, n, cycle, max(t.Times.At(r.size), 0)*len(cycle), max(t.Every.At(r.size), 1)-1)
	}
	if n.Length != nil {
		if l.Label != nil {
			r.measure(n.Length)
		} else {
			r.no, r.side = -1, 0
			r.endSide(n.Course)
		}
	}
	return true
}

// ofPart takes a number of rows that are there then, if there are more already, as that of a part: how many of them are worked is
// not known.
func (r *runner) ofPart(n *ins.RepeatRows) *ins.RepeatRows {
	if !n.Counted || r.no < 0 || n.ToRow.At(r.size) >= r.no {
		return n
	}
	part := *n
	part.ToRow, part.Length = ins.Num{}, &ins.Lengths{}
	return &part
}

// repUnread counts rows repeated that were not read: their count is not known.
func (r *runner) repUnread(l *ins.Line, n *ins.RepeatRows, each int) {
	if r.g != nil {
		r.g.gap(r, l, "the rows that are repeated", -1)
	}
	r.put(r.fab, false)
	switch {
	case l.Label != nil:
		times := max(r.times(l), 1)
		r.log(l, l.Body, times) // a later line may repeat them
		r.cur.rows[len(r.cur.rows)-1].unread = true
		r.countRows(times)
	case each > 0 && n.HasTimes:
		r.countRows(each * max(n.Times.At(r.size), 0))
	default:
		r.no = -1
	}
}

// repRows is how many rows a repeat of rows works, and how many even ones before each; done
// if it is worked already.
func (r *runner) repRows(l *ins.Line, n *ins.RepeatRows, cycle []done) (rows, gap int, done bool) {
	times := max(n.Times.At(r.size), 0)
	rows = times * len(cycle)
	switch {
	case l.Label != nil:
		before, last := r.repeatedIn(l, n)
		if !last {
			break
		}
		all := r.times(l)
		if made := before + times*len(cycle); n.HasTimes && (n.Times.By != nil || n.Times.All != 1 || before > 0) && made != all {
			r.tell("rows/number", finding.Warning, n.At, "this line is for %s rows, and its repeats make %s | %s rows by its numbers | %s rows by its repeats", "correct the numbers of the rows, or repeat otherwise",
				all, made, all, made)
		}
		rows = max(all-before, 0)
	case n.ToRow.Set() && n.Length == nil && n.Course.Length == nil && !n.Course.Rows.Set() && !(n.HasTimes && n.ToRow.At(r.size) < r.no): // else the row of a pattern
		to := n.ToRow.At(r.size)
		if r.no < 0 {
			r.no = to
			return len(cycle), 0, false
		}
		if rows = to - r.no; rows < 0 {
			r.tell("rows/number", finding.Warning, n.At, "row %s has already been worked: the last was row %s", "name a later row", to, r.no)
			return 0, 0, true
		}
	case (n.Every.All > 1 || n.Every.By != nil) && (n.HasTimes || !n.Until.Set()):
		gap = max(n.Every.At(r.size), 1) - 1
		rows -= r.repFirst(l, n, cycle, times)
	case n.Until.Set():
		r.repUntil(l, n, cycle)
		r.endSide(n.Course)
		return 0, 0, true
	case n.Course.Rows.Set():
		rows = max(n.Course.Rows.At(r.size), 0)
	case n.Length != nil:
		rows = len(cycle)
	case n.InAll && times > 1 && r.workedLast(cycle): // that once is among them
		rows -= len(cycle)
	}
	return rows, gap, false
}

// repFirst works rows that are repeated every so many rows on the next row first, if it is told so; it gives how many of the others
// are among those worked then, or before.
func (r *runner) repFirst(l *ins.Line, n *ins.RepeatRows, cycle []done, times int) (fewer int) {
	if n.First && r.fab != nil && r.known() { // on the next row, then on every 4th
		was := r.fab.stitches()
		if r.cycle(l, n, cycle, len(cycle), 0); r.said(l) >= 0 && r.said(l) == was+times*(r.fab.stitches()-was) {
			fewer += len(cycle)
		}
	}
	if n.Total && r.worked1(cycle, n.Every.At(r.size)) { // the first time is among them
		fewer += len(cycle)
	}
	return fewer
}

// repeatedIn is how many rows a line repeats before n, and whether n is the last that it repeats.
func (r *runner) repeatedIn(l *ins.Line, n *ins.RepeatRows) (before int, last bool) {
	met := false
	for _, k := range l.Body {
		switch q, ok := k.(*ins.RepeatRows); {
		case !ok:
		case q == n:
			met = true
		case met:
			return before, false
		default:
			cycle, _ := r.bodies(l, q)
			before += max(q.Times.At(r.size), 0) * len(cycle)
		}
	}
	return before, true
}

// workedLast reports whether rows that are to be repeated are those that were worked last.
func (r *runner) workedLast(cycle []done) bool {
	last := r.cur.rows[max(len(r.cur.rows)-len(cycle), 0):]
	return slices.EqualFunc(last, cycle, func(a, b done) bool { return a.line == b.line })
}

// totalOr works rows once more whose number is said in all, if the count that is stated says that it was meant without the first
// time. If none is stated, how many stitches there are is not sure.
func (r *runner) totalOr(l *ins.Line, n *ins.RepeatRows, cycle []done) {
	if !n.InAll || n.Every.All > 1 || n.Every.By != nil || len(n.Then) > 0 || l.Label != nil || !r.known() || r.fab == nil {
		return
	}
	switch k := r.said(l); {
	case k < 0:
		r.forget()
	case k != r.fab.stitches():
		r.cycle(l, n, cycle, len(cycle), 0)
	}
}

// worked1 reports whether the row that is to be repeated is one of the last k worked.
func (r *runner) worked1(cycle []done, k int) bool {
	rows := r.cur.rows
	return len(cycle) == 1 && slices.ContainsFunc(rows[max(len(rows)-k, 0):], func(d done) bool { return d.line == cycle[0].line })
}

// onlyFirst keeps of what was found since mark the first, at the words that repeat, unless it was told of its line; again: the rows were worked once before.
func (r *runner) onlyFirst(mark int, n *ins.RepeatRows, of *ins.Line, again bool) bool {
	if len(r.found) > mark { // it names the stitches over which it was worked first
		kept := slices.DeleteFunc(slices.Clone(r.found[mark:]), func(f raw) bool { return f.kind == "rows/kind" })
		r.found = append(r.found[:mark:mark], kept...)
	}
	if len(r.found) <= mark {
		return false
	}
	f := &r.found[mark]
	f.at = n.At
	if again {
		f.why = once
	}
	if r.found = r.found[:mark+1]; r.toldOf(of, f.kind, mark) {
		r.found = r.found[:mark]
	}
	return true
}

// cycle works rows over and over.
func (r *runner) cycle(l *ins.Line, n *ins.RepeatRows, cycle []done, rows, gap int) {
	var last *fabric
	first := r.fab
	for k := 0; k < rows && r.steps <= maxWork; k++ {
		d := cycle[k%len(cycle)]
		if gap > 0 {
			r.even(gap)
		}
		if d.line == nil {
			r.again(l, d)
			continue
		}
		mark := len(r.found)
		r.one(l, r.inYarn(l, d))
		r.log(l, d.body, 1)
		r.cur.rows[len(r.cur.rows)-1].name = d.name
		if r.onlyFirst(mark, n, d.line, k >= len(cycle)) {
			r.logRest(l, cycle, k+1, rows)
			return
		}
		r.countRows(1)
		if k%len(cycle) == len(cycle)-1 && gap == 0 && r.g == nil {
			rest := rows - k - 1
			rest -= rest % len(cycle)
			if rest > 0 && (last != nil && last.same(r.fab) && len(r.others) == 0 || k > maxRepeat) { // they change nothing more
				r.log(l, d.body, rest)
				r.countRows(rest)
				k += rest
			}
			last = r.fab
		}
	}
	if n.Length != nil && len(cycle) > 0 && r.known() && first != nil && r.fab.stitches() != first.stitches() { // how often it is done is not known
		r.lose()
	}
}

// inYarn is what a row worked before is worked of once more: in the yarn that the line which repeats it names, or else in its own.
func (r *runner) inYarn(l *ins.Line, d done) []ins.Item {
	if r.g == nil {
		return d.body
	}
	yarn := l.Yarn
	for _, n := range l.Body {
		if n, ok := n.(*ins.Nothing); ok {
			yarn = cmp.Or(yarn, n.Colour)
		}
	}
	body := d.body
	for yarn != "" && len(body) > 0 && is[*ins.Nothing](body[0]) {
		body = body[1:]
	}
	if yarn = cmp.Or(yarn, d.line.Yarn); yarn == "" {
		return body
	}
	return append([]ins.Item{&ins.Nothing{Placed: ins.Placed{At: l.At}, Colour: yarn}}, body...)
}

// logRest notes the rows from the k-th on that are worked as those before and not followed any more: later rows may refer to them.
func (r *runner) logRest(l *ins.Line, cycle []done, k, rows int) {
	r.countRows(1)
	for ; k < min(rows, maxRepeat); k++ {
		r.log(l, cycle[k%len(cycle)].body, 1)
		r.countRows(1)
	}
}

// toldOf reports whether something of that kind is told of a line itself, among the first k things found.
func (r *runner) toldOf(l *ins.Line, kind string, k int) bool {
	return slices.ContainsFunc(r.found[:k], func(f raw) bool { return f.at.Line == l.At.Line && f.kind == kind })
}

// once works rows once more.
func (r *runner) once(l *ins.Line, cycle []done) {
	for _, d := range cycle {
		if d.line == nil {
			r.again(l, d)
			continue
		}
		r.one(l, r.inYarn(l, d))
		r.log(l, d.body, 1)
		r.countRows(1)
	}
}

// goesOn takes the count up to which rows are shaped on as they began, if it is whole steps away.
func (r *runner) goesOn(n *ins.RepeatRows, cycle []done, have, want int) {
	rows := r.cur.rows
	i := slices.IndexFunc(rows, func(d done) bool { return d.line == cycle[0].line })
	if end := cycle[len(cycle)-1].after; i > 0 && rows[i-1].after != nil && end != nil {
		by := end.stitches() - rows[i-1].after.stitches()
		steady := have+by >= 0 // rows that halve take fewer each time
		if steady && (by == 0 || (want-have)%by != 0 || (want-have)/by < 0) {
			r.tell("rows/stated", finding.Warning, n.At, "%s stitches never remain: the repeat goes from %s to %s", "correct the number, or the count before it", want, have, have+by)
			defer func() { r.suspect, r.amiss = suspectRows, true }()
		}
	}
	r.put(uniform(r.mainOf(), max(want, 0)), true)
}

// repUntil repeats until so many stitches are there.
func (r *runner) repUntil(l *ins.Line, n *ins.RepeatRows, cycle []done) {
	want := n.Until.At(r.size)
	gap := max(n.Every.At(r.size), 1) - 1
	for k := 0; k < maxRepeat && r.fab != nil && r.known() && r.steps < maxWork; k++ {
		have := r.fab.stitches()
		if have == want { // it holds
			r.certainty.since = 0
			return
		}
		if gap > 0 {
			r.even(gap)
		}
		mark := len(r.found)
		r.once(l, cycle)
		if len(r.found) > mark { // its numbers are those of the first time: k35, k2tog
			r.found = r.found[:mark]
			r.goesOn(n, cycle, have, want)
			return
		}
		if now := r.fab.stitches(); now == have || (now > want) != (have > want) && now != want {
			r.tell("rows/stated", finding.Warning, n.At, "%s stitches never remain: the repeat goes from %s to %s", "correct the number, or the count before it", want, have, now)
			r.put(uniform(r.fab.main(), max(want, 0)), true)
			r.suspect, r.amiss = suspectRows, true
			return
		}
	}
}
