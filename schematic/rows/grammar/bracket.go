package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// bracket reads what a bracket holds: a repeat, stitches into one place, a count, or a remark.
func (s *sequence) bracket(t *text.Token) {
	from := s.i
	s.i++
	if s.told(t, from) {
		return
	}
	if g := s.countsIn(inRingLast(s.kindFirst(t.Sub))); g != nil && !s.timed && !groupsTold(t.Sub) && !s.opensStretch(g) && !s.worked(s.behindComma(s.i)) && !onNeedle(t.Sub) && !s.numbersNeedles(t.Sub, from) {
		s.add(countOrList(g, t.Sub), from, s.i)
		return
	}
	if s.timesIn(t.Sub, from) || s.leavesIn(t.Sub, from) || s.chainsMore(t.Sub, from) {
		return
	}
	s.namesWorked(t.Sub, from)
	if s.idle(t.Sub) || groupsTold(t.Sub) || onNeedle(t.Sub) || len(t.Sub) > 2 && t.Sub[0].Is("or", "alternatively", "alternately", "optional", "optionally") || s.remarks(t.Sub) { // (or 12 dc in a magic ring)
		s.add(&ins.Nothing{Part: onNeedle(t.Sub), Under: s.otherLoops(t.Sub)}, from, s.i)
		return
	}
	sub, inside := s.timesInside(t.Sub)
	sub, name := madeInside(sub)
	q := s.within(sub)
	before := len(s.line.Unread)
	body := q.sequence()
	if len(s.line.Unread) > before && (s.prose(t.Sub) || !working(body) && !s.worked(s.i)) {
		s.line.Unread = s.line.Unread[:before]
		s.add(&ins.Nothing{}, from, s.i)
		return
	}
	if !working(body) {
		s.add(&ins.Nothing{}, from, s.i)
		return
	}
	r := &ins.Repeat{Body: body, Times: ins.N(1), Stop: -1}
	s.namesGroup(body, name, from)
	at := s.behindComma(s.i)
	if inside.Set() {
		r.Times = inside
	} else if to := s.spec(r, at, false); to > at {
		s.i = to
		s.intoOne(r)
	} else if v, to := s.named("places", s.i); to >= 0 {
		r.Places = s.unlessBothLoops(body, v.(spots).list, to)
		s.i = to
		if v, to := s.named("times", s.i); to >= 0 {
			r.Times = v.(often).n
			s.i = to
		}
	} else if s.beside(body, from) {
		return
	}
	s.inOne(r)
	s.add(s.asGroup(r), from, s.i)
	s.closed = nil
}

// beside takes a bracket that says more of the row before it: its shaping, which is worked (purl (dec 1 st at each end)), or what a stitch of it is, which
// would be worked twice (k2tog (work 2 sts together)).
func (s *sequence) beside(body []ins.Item, from int) bool {
	if !s.afterRow(from) {
		return false
	}
	if slices.ContainsFunc(body, is[*ins.Shape]) && !slices.ContainsFunc(s.out, reshapes) {
		s.out = append(s.out, body...)
	} else {
		s.add(&ins.Nothing{}, from, s.i)
	}
	return true
}

// opensStretch reports whether a bracket of stitches is no count, since nothing that could be counted stands before it: ch 3, (2 dc), ch 1,
// *(3 dc), ch 1*.
func (s *sequence) opensStretch(g []ins.StitchGroup) bool {
	if !s.r.crochet || !s.line.IsRow() || len(g) != 1 || g[0].Unit.Stitch == nil || !s.at(s.i).Is(",") {
		return false
	}
	return s.star >= 0 && len(s.out) == s.star || s.star < 0 && len(s.out) > 0 && !slices.ContainsFunc(s.out, func(n ins.Item) bool { return !is[*ins.Chain](n) && !is[*ins.JoinYarn](n) && !is[*ins.Nothing](n) })
}

// inOne puts what a bracket holds into one stitch where it opens a row, or the stretch between two stars, and names no place: (ch 2, dc),
// ch 1, *(2 dc), ch 1*.
func (s *sequence) inOne(r *ins.Repeat) {
	if len(r.Places) > 0 || r.Times.By != nil || r.Times.All != 1 || r.Until.Kind != ins.NoExtent || !s.at(s.i).Is(",") || s.line.Label == nil || s.line.Label.From.All < 2 || saysOne(s.t, []string{"ring", "circle", "mr"}) {
		return
	}
	p := ins.Place{Kind: ins.InNext, N: ins.N(1), At: s.span(s.i-1, s.i-1)}
	st, one := r.Body[len(r.Body)-1].(*ins.Stitch)
	switch {
	case !one || st.Kind == nil || len(st.Places) > 0 || len(r.Body) > 2 || s.depth > 0 || !s.r.crochet:
		return
	case len(r.Body) == 1 && s.opensStretch([]ins.StitchGroup{{Unit: ins.Unit{Stitch: st.Kind}}}):
		if s.star < 0 {
			p.Kind = ins.InSame
		}
	case len(r.Body) == 2 && len(s.out) == 0 && is[*ins.Chain](r.Body[0]):
		p.Kind = ins.InSame
	default:
		return
	}
	p.Unit.Word = "st"
	r.Places = []ins.Place{p}
}

// numbersNeedles reports whether a bracket names the needles that stand before it: each needle (1, 2, 3 and 4).
func (s *sequence) numbersNeedles(t []text.Token, from int) bool {
	return s.at(from-1).Is("needle", "needles") && !slices.ContainsFunc(t, func(k text.Token) bool { return k.Kind != 'n' && !k.Is(",", "and", "&") })
}

// chainsMore adds to a chain what a bracket says it has more: ch 20 (plus 1 for turning).
func (s *sequence) chainsMore(t []text.Token, from int) bool {
	k := len(s.out) - 1
	if k < 0 || len(t) < 2 || !t[0].Is("plus", "+") || t[1].Kind != 'n' {
		return false
	}
	c, ok := s.out[k].(*ins.Chain)
	if !ok || len(t) > 2 && !t[2].Is("more", "extra", "for", "to", "turning", "turn", "ch") {
		return false
	}
	c.N = c.N.Plus(t[1].Num.All)
	s.add(&ins.Nothing{}, from, s.i)
	return true
}

// behindSkipped takes a chain that is counted from the hook, behind those that were passed from there, as the next: skip first 3
// chains, dc in 4th chain; skip 2 sts and ss into third st.
func (s *sequence) behindSkipped(st *ins.Stitch) {
	k := len(s.out) - 1
	for k >= 0 && is[*ins.Nothing](s.out[k]) {
		k--
	}
	if k < 0 || len(st.Places) == 0 {
		return
	}
	skip, ok := s.out[k].(*ins.Skip)
	if !ok || len(skip.Places) != 1 {
		return
	}
	a, b := skip.Places[0], &st.Places[0]
	if (a.Kind == ins.InFirst && b.Unit.Chain || a.Kind == ins.InNext && !b.Of && !b.Unit.Between) && b.Kind == ins.InEvery && a.N.By == nil && b.N.By == nil && b.N.All == a.N.All+1 {
		b.Kind, b.N = ins.InNext, ins.N(1)
	}
}

// asGroup is a bracket that is worked into one place as the group that the text defines with the same stitches: (2 dc, ch 2,
// 2 dc) in next ch is a shell, and counts as one.
func (s *sequence) asGroup(r *ins.Repeat) ins.Item {
	if len(r.Places) != 1 || r.Times.By != nil || r.Times.All != 1 || r.Until.Kind != ins.NoExtent {
		return r
	}
	for _, g := range s.r.groups {
		if g.group.Mesh == nil && slices.EqualFunc(g.group.Body, r.Body, alikeItems) {
			return &ins.Stitch{Call: g.group, N: ins.N(1), Places: r.Places}
		}
	}
	return r
}

// alikeItems reports whether two instructions of a group are the same stitches or chains.
func alikeItems(a, b ins.Item) bool {
	switch a := a.(type) {
	case *ins.Stitch:
		b, ok := b.(*ins.Stitch)
		return ok && a.Kind != nil && a.Kind == b.Kind && a.N.By == nil && b.N.By == nil && a.N.All == b.N.All && len(a.Places)+len(b.Places) == 0
	case *ins.Chain:
		b, ok := b.(*ins.Chain)
		return ok && a.N.By == nil && b.N.By == nil && a.N.All == b.N.All
	}
	return false
}

// countOrList is a stated count, or words if it is a list of bare numbers: ch 105 (121, 145) for other sizes, of which no
// line tells.
func countOrList(g []ins.StitchGroup, t []text.Token) ins.Item {
	if len(g) > 1 && !slices.ContainsFunc(t, func(k text.Token) bool { return k.Kind == 'w' }) {
		return &ins.Nothing{}
	}
	return &stated{groups: g}
}

// namesGroup gives the stitches of a bracket the name that stands within it, or behind it: (3 dc, ch 2, 3 dc) for a shell in
// next st.
func (s *sequence) namesGroup(body []ins.Item, within string, from int) {
	if within != "" && !s.r.defines(within) {
		s.r.definesGroup(within, ownStitches(body), s.span(from, from))
	}
	name := s.at(s.i + 1)
	if g, _ := s.group(s.i + 1); g != nil || !s.at(s.i).Is("for", "as") || !name.Is("shell", "fan", "scallop", "group", "petal") {
		return
	}
	if s.r.definesGroup(name.S, ownStitches(body), s.span(from, s.i+1)) {
		s.i += 2
	}
}

// ownStitches is a list with copies of its stitches, that may be changed.
func ownStitches(body []ins.Item) []ins.Item {
	items := make([]ins.Item, len(body))
	for i, n := range body {
		if items[i] = n; is[*ins.Stitch](n) {
			one := *n.(*ins.Stitch)
			items[i] = &one
		}
	}
	return items
}

// sums reports whether a bracket only says how a number comes about: (5 + 2 + 2 = 14).
func sums(t []text.Token) bool {
	equal := false
	for i := range t {
		equal = equal || t[i].Is("=")
		if t[i].Kind != 'n' && !t[i].Is("=", "+", "x", "*", "-", "×") {
			return false
		}
	}
	return equal && len(t) > 2
}

// namesCrossing makes a crossing of a name that a bracket behind it describes: Front Cross (slip next 3 sts to cable needle and hold
// in front, k3, k3 from cable needle). It reports false if the bracket describes none, or no name stands before it.
func (s *sequence) namesCrossing(t *text.Token) bool {
	k := len(s.out) - 1
	if k < 0 || s.r.crochet || s.i == 0 || s.at(s.i-1).Line != t.Line {
		return false
	}
	at := s.out[k].Span()
	switch n := s.out[k].(type) {
	case *ins.Nothing, *ins.Unread:
	case *ins.Stitch:
		if n.Kind == nil || n.Kind.Key != "cable" || n.Kind.Cross != nil {
			return false
		}
	default:
		return false
	}
	c, ok := crossOf(s.r.x.Quote(ins.Span{Line: t.Line, Col: t.Col, End: t.End}))
	name := s.r.x.Quote(at)
	if !ok || at.Line != t.Line || at.End != s.at(s.i-1).End || name == "" || len(strings.Fields(name)) > mostName {
		return false
	}
	if u := len(s.line.Unread) - 1; is[*ins.Unread](s.out[k]) && u >= 0 && s.line.Unread[u] == at {
		s.line.Unread = s.line.Unread[:u]
	}
	s.r.crossing(name, c)
	st := &ins.Stitch{Kind: s.r.x.Own[strings.ToLower(name)], N: ins.N(1)}
	st.Put(ins.Span{Line: at.Line, Col: at.Col, End: t.End})
	s.out = append(s.out[:k], st)
	s.i++
	return true
}

// mostName is how many words the name of a crossing has at most.
const mostName = 3

// namesWorked gives what was just worked into one place the name that a bracket behind it says: 2 dc, ch 2 and 2 dc in next
// loop (shell made).
func (s *sequence) namesWorked(t []text.Token, from int) {
	name, starts := nameMade(t)
	if k := s.blockStart(); k >= 0 && name != "" {
		s.r.startsBlock(name, s.out[k:], s.span(from, from+1))
		return
	}
	items, started := s.justWorked()
	if name == "" || items == nil {
		return
	}
	at := s.span(from, from+1)
	if !s.r.defines(name) && (started != nil || !starts) {
		whole := items
		if started != nil {
			whole = started
		}
		s.r.definesGroup(name, ownStitches(whole), at)
		if started == nil {
			s.worksGroup()
		}
		if name == vStitch {
			s.r.definesGroup("v st", ownStitches(whole), at) // the same by its other names
			s.r.definesGroup("vst", ownStitches(whole), at)
		}
	}
	if starting := "starting " + name; started != nil && !s.r.defines(starting) {
		at.End-- // a name of its own
		s.r.definesGroup(starting, ownStitches(items), at)
	}
}

// namedBehindDash gives what was just worked the name that stands behind a dash: (sl st, ch 3, 3 dc) in next ch-3 sp – block made.
func (s *sequence) namedBehindDash(t *text.Token) {
	if !t.Is("-", "--", ".", ",") || len(s.out) == 0 {
		return
	}
	for k := s.i + 1; k < min(s.i+4, len(s.t)); k++ {
		if !s.at(k).Is("made", "completed") {
			continue
		}
		if name, _ := nameMade(s.t[s.i : k+1]); name != "" {
			s.namesWorked(s.t[s.i:k+1], s.i)
			from := s.i
			s.i = k + 1
			s.add(&ins.Nothing{}, from, s.i)
		}
		return
	}
}

// blockStart is where the chains of a block that begins a row stand: ch 6, dc in 4th ch from hook, dc in next 2 ch; -1 if what was
// worked last is none.
func (s *sequence) blockStart() int {
	k := len(s.out) - 1
	for k >= 0 && is[*ins.Nothing](s.out[k]) {
		k--
	}
	for ; k > 0; k-- {
		st, ok := s.out[k].(*ins.Stitch)
		if !ok || len(st.Places) == 0 {
			return -1
		}
		if st.Places[0].Kind == ins.FromHook {
			if is[*ins.Chain](s.out[k-1]) {
				return k - 1
			}
			return -1
		}
	}
	return -1
}

// startsBlock gives the chains and stitches of a block that begins a row its names.
func (r *Reader) startsBlock(name string, items []ins.Item, at ins.Span) {
	items = slices.DeleteFunc(slices.Clone(items), is[*ins.Nothing])
	for _, first := range []string{"beg ", "beginning ", "starting "} {
		if !r.defines(first + name) {
			r.definesGroup(first+name, ownStitches(items), at)
		}
	}
	r.x.Groups[len(r.x.Groups)-1].Over = items
}

// vStitch is the name of two stitches with a space between them in one place.
const vStitch = "v-st"

// nameMade is the name that a bracket gives to what stands before it, and whether it says that a row begins with such a one: (shell
// made), (a starting shell). Empty: it gives none.
func nameMade(t []text.Token) (name string, starts bool) {
	made, said := false, leadsToName(t)
	t = t[said:]
	for i := range t {
		switch k := &t[i]; {
		case i == 0 && k.Is("a", "an", "first", "one", "another", "seam", "edge", "side"), k.Is("st", "sts", "stitch", "-"):
		case name == "" && k.Is("starting", "beginning", "beg", "start"):
			starts = true
		case name == "" && k.Is("shell", "fan", "scallop", "petal", "block", "tile"):
			name = k.S
		case name == "" && k.Is("v", "vst", "v-st"):
			name = vStitch
		case i == len(t)-1 && k.Is("made", "completed", "formed", "worked"):
			made = true
		default:
			return "", false
		}
	}
	if said > 0 && name != "" {
		return name, starts
	}
	if !made && !starts && (len(t) == 0 || !t[0].Is("a", "an", "another", "seam", "edge", "side", "shell", "fan")) {
		return "", false
	}
	return name, starts
}

// leadsToName is how many words lead to the name of what was made: this is a shell.
func leadsToName(t []text.Token) (n int) {
	for n < len(t) && (t[n].Is("this", "these", "that", "which", "makes", "make", "forms", "form", "called", "=", "referred", "counts") ||
		n > 0 && t[n].Is("is", "are", "will", "be", "group", "to", "as", "the", "a", "one", "1")) {
		n++
	}
	return n
}

// justWorked is what was worked into one place last, and the same with what the chain before it stands for, if it stands in the
// place in which the row begins.
func (s *sequence) justWorked() (items, started []ins.Item) {
	k := len(s.out) - 1
	for k >= 0 && is[*ins.Nothing](s.out[k]) {
		k--
	}
	if k < 0 {
		return nil, nil
	}
	var places []ins.Place
	switch n := s.out[k].(type) {
	case *ins.Repeat:
		if ok := n.Until.Kind == ins.NoExtent && len(n.Body) > 1; ok {
			items, places = n.Body, n.Places
		}
	case *ins.Stitch:
		if n.Kind != nil {
			items, places = []ins.Item{n}, n.Places
		}
	}
	if len(places) != 1 {
		return nil, nil
	}
	if k > 0 && places[0].Kind == ins.InSame {
		return items, stoodFor(s.out[k-1], items)
	}
	return items, nil
}

// stoodFor is what is worked into a place together with what a chain that begins a row stands for: ch 6, dc in same sp is dc, ch 3,
// dc. It is nil if it is no such chain.
func stoodFor(before ins.Item, items []ins.Item) []ins.Item {
	c, ok := before.(*ins.Chain)
	st, ok2 := items[0].(*ins.Stitch)
	if !ok || !ok2 || c.N.By != nil || st.Kind == nil || st.N.By != nil || st.Kind.Turn < 2 || c.N.All < st.Kind.Turn {
		return nil
	}
	one := *st
	one.N, one.Places = ins.N(1), nil
	if c.N.All == st.Kind.Turn {
		one.N.All = st.N.All + 1
		return slices.Concat([]ins.Item{&one}, items[1:])
	}
	space := *c
	space.N, space.Count = ins.N(c.N.All-st.Kind.Turn), ins.Counting{}
	return slices.Concat([]ins.Item{&one, &space}, items)
}

// defines reports whether the text has a group of that name.
func (r *Reader) defines(name string) bool {
	return slices.ContainsFunc(r.groups, func(g defined) bool { return g.group.Name == name })
}

// timesInside parts what a bracket holds from how often it says that it is worked: (K 4, P 4, 5 times).
func (s *sequence) timesInside(t []text.Token) ([]text.Token, ins.Num) {
	for k := len(t) - 2; k > 1 && k > len(t)-5; k-- {
		if !t[k].Is(",") {
			continue
		}
		q := s.within(t[k+1:])
		if v, to := q.named("times", 0); to == len(q.t) && to > 0 && !v.(often).more {
			return t[:k], v.(often).n
		}
	}
	return t, ins.Num{}
}

// madeInside parts what a bracket holds from the name that it says it has: (1 dc, ch 1, 1 dc - V-st made).
func madeInside(t []text.Token) ([]text.Token, string) {
	k := len(t) - 1
	if k < 3 || !t[k].Is("made", "completed") {
		return t, ""
	}
	name := ""
	for i := k - 1; i > 0 && i > k-5; i-- {
		if t[i].Is("--") || t[i].Is("-") && !t[i].Glued {
			return t[:i], name
		}
		if t[i].Kind == 'n' {
			break
		}
		if name = t[i].S + name; !t[i].Glued && i < k-1 {
			name = strings.Replace(name, t[i].S, t[i].S+" ", 1)
		}
	}
	return t, ""
}

// inRingLast is the tokens of a count without the ring that it stands in: (12 dc in ring).
func inRingLast(t []text.Token) []text.Token {
	if k := len(t) - 2; k > 0 && t[k].Is("in") && t[k+1].Is("ring", "circle") && t[0].Kind == 'n' {
		return t[:k]
	}
	return t
}

// onlyThese reports whether a remark says that the work goes on over the stitches just worked alone: (we will now
// only be working with these 6 sts).
func onlyThese(t []text.Token) bool {
	only, work, these := false, false, false
	for i := range t {
		only = only || t[i].Is("only")
		work = work || t[i].Is("work", "working", "worked")
		these = these || t[i].Is("these") && (near(t, i+1).Kind == 'n' || near(t, i+1).Is("st", "sts", "stitches"))
	}
	return only && work && these
}

// tallies reports whether a bracket at the end of a row only tells how much of what there is: (6, 2-tr groups, 6, ch-1 sp).
func (s *sequence) tallies(t []text.Token) bool {
	if sums(t) {
		return true
	}
	if s.depth > 0 || s.line.Label == nil || len(t) < 3 || t[0].Kind != 'n' || !working(s.out) || !s.restIsNothing(s.i) || s.worked(s.i) || s.countsIn(t) != nil {
		return false
	}
	noun := false
	q := s.within(t)
	for i := 0; i < len(t); i++ {
		if g, to := q.group(i); g != nil {
			noun, i = true, to-1
			continue
		}
		switch k := &t[i]; {
		case k.Is("in", "on") && i+2 < len(t) && t[i+1].Is("each", "every") && t[i+2].Kind == 'w': // 9 tr in each pineapple
			noun, i = true, i+2
		case k.Is("per", "for") && i+1 < len(t) && t[i+1].Is("side", "edge", "corner", "corners"): // 19 sts per side, 4 ch-2 sps for corners
			i++
		case k.Is("sp", "sps", "space", "spaces", "group", "groups", "loop", "loops", "lps", "petal", "petals", "shells", "clusters", "corners", "picots", "st", "sts", "stitches", "chains", "tog"):
			noun = true
		case k.Kind == 'n', k.Is(",", ";", "/", "and", "&", "+", "ch", "of", "between"), k.Kind == 'w' && s.names(k.S):
		default:
			return false
		}
	}
	return noun
}

// leavesIn takes a bracket that says that stitches stay unworked: (leave remaining sts unworked).
func (s *sequence) leavesIn(t []text.Token, from int) bool {
	if onlyThese(t) {
		s.add(&ins.Leave{All: true}, from, s.i)
		return true
	}
	q := s.within(t)
	if !q.at(0).Is("leave", "leaving", "do") {
		return false
	}
	v, to := q.named("leave", 0)
	n, ok := v.(*ins.Leave)
	if ok = ok && to == len(q.t); ok {
		s.add(n, from, s.i)
	}
	return ok
}

// timesIn takes a bracket that tells how often the stitch before it is worked: dec (3 times).
func (s *sequence) timesIn(t []text.Token, from int) bool {
	k := len(s.out) - 1
	if k < 0 || from == 0 || s.at(from-1).Kind != 'w' {
		return false
	}
	st, ok := s.out[k].(*ins.Stitch)
	if !ok {
		return false
	}
	v, to := s.within(t).named("times", 0)
	if to != len(t) {
		return false
	}
	s.out = s.out[:k]
	s.add(&ins.Repeat{Body: []ins.Item{st}, Times: v.(often).n, Stop: -1}, from, s.i)
	return true
}

// otherLoops reports whether words in a bracket say that the round goes on along the other side of a chain: (next work
// into the unused loops).
func (s *sequence) otherLoops(t []text.Token) bool {
	for i := range t {
		if t[i].Is("other", "opposite", "unused", "free", "bottom") && near(t, i+1).Is("side", "loops", "lps", "loop") {
			return s.r.crochet
		}
	}
	return false
}
