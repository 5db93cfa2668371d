package grammar

import (
	"cmp"
	"slices"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// maxItems bounds the instructions of one bracket or line.
const maxItems = 2000

// stated is a count in its place, before it is known whether it is that of the line.
type stated struct {
	ins.Placed
	groups []ins.StitchGroup
}

// itemRules are the rules by which one instruction is read; the one that goes furthest is meant.
var itemRules = []string{"stitch", "chain", "skip", "join", "joinyarn", "turn", "leave", "psso", "fasten", "marker", "lace", "whole", "neutral"}

var itemIDs []int

// sequence reads instructions until the end of the tokens.
type sequence struct {
	*parser
	out        []ins.Item
	i          int
	sep        string // the sign before what is read
	star       int    // where the starred stretch begins in out, -1: none is open
	starTok    int
	sign       string // its sign
	further    bool   // a stretch that stands further back is worked once more
	saidUnread int    // how much of the line was not read before it
	stop       int    // items of the stretch before a second sign, -1: none
	closed     *ins.Repeat
	bare       *ins.Repeat // the stretch between two stars of which nothing says how often it is worked
	other      bool        // it goes along the other side of the foundation chain
	timed      bool        // how often the next bracket is worked stands before it
	closedStop int         // items before the second sign of the stretch that was repeated last
}

func (p *parser) sequence() []ins.Item {
	s := &sequence{parser: p, star: -1, stop: -1}
	for s.i < len(p.t) && len(s.out) < maxItems {
		switch t := &p.t[s.i]; {
		case t.Kind == 'p' && isStar(t):
			s.atStar(t)
		case t.Kind == 'p':
			s.sep = t.S
			s.i++
			s.namedBehindDash(t)
		case t.Kind == 'g' && (s.namesCrossing(t) || s.inColour() || s.yarnAlone()):
		case t.Kind == 'g':
			s.bracket(t)
		case s.verbOfYarns(t): // K *2 A, 3 B; K (2 A, 3 B) twice
			s.i++
		case t.Cap && (s.inColour() || s.yarnAlone()), s.filetSquares(), s.changesYarn(), s.tellsShaping():
		case s.timesFirst(), s.endsRow():
		case s.alternately(), s.repeat(), s.timesRepeat():
		case t.Is("and", "then", "than", "but", "plus", "finally") && s.i+1 < len(p.t):
			s.i++
		case s.loopSaid(), s.noted(), s.titled():
		case s.otherWearer(), s.ownNamed():
		case s.counted():
		case s.otherStart():
		case s.placeFirst():
		case s.placeLast(), s.placeBehind(), s.butLast():
		case s.allIn():
		case s.item(s.i):
		case s.inColour(), s.bareNumber(), s.fixed():
		default:
			s.clause()
		}
	}
	if s.i < len(p.t) {
		s.unread(s.i, len(p.t))
	}
	if s.bare != nil && s.star < 0 { // *k1, p1*, k1: it is marked so as to be repeated
		s.bare.Times, s.bare.Until = ins.Num{}, ins.Extent{Kind: ins.ToEnd, At: s.bare.At}
	}
	if s.star >= 0 && len(s.out) > s.star { // a star that another line, or nothing, repeats
		body := s.out[s.star:]
		if len(p.t) > 0 {
			p.r.starred = append([]ins.Item(nil), body...)
		}
	}
	return untilBehind(waiting(workedAgain(s.out)))
}

// untilBehind gives rows that are worked again the count that ends them, where other words stand before it: rep these 2 rows,
// keeping the decreases in line, until 40 sts remain.
func untilBehind(out []ins.Item) []ins.Item {
	var again *ins.RepeatRows
	for i, n := range out {
		switch n := n.(type) {
		case *ins.RepeatRows:
			if again = n; n.HasTimes || n.Until.Set() || n.Length != nil || n.Times.Set() && n.Times.All != 1 {
				again = nil
			}
		case *ins.Nothing:
		case *ins.Even:
			if again != nil && n.Until.Set() && !n.HasTimes && n.Length == nil {
				again.Until = n.Until
				return slices.Delete(out, i, i+1)
			}
			again = nil
		default:
			again = nil
		}
	}
	return out
}

func (s *sequence) add(n ins.Item, from, to int) {
	if n.Span().Line == 0 {
		n.Put(s.span(from, to-1))
	}
	switch n := n.(type) {
	case *ins.Nothing:
		n.Colour = cmp.Or(n.Colour, s.taken(from, to, s.line.IsRow()))
	case *ins.Even:
		if n.Colour = s.taken(from, to, true); n.Colour == "" { // Row 3: Col C
			n.Colour, _ = s.yarnAt(from)
		}
	case *ins.JoinYarn:
		if name := s.taken(from, to, true); name != "" && s.line.IsRow() { // join B, sc in next 7
			s.out = append(s.out, n)
			s.add(&ins.Nothing{Colour: name}, from, to)
			return
		}
	case *ins.Stitch:
		if n.Call != nil && len(n.Places) == 0 && len(n.Call.Over) > 1 && is[*ins.Chain](n.Call.Over[0]) { // a row may begin with its chain
			s.out = append(s.out, n.Call.Over...)
			return
		}
	}
	s.out = append(s.out, n)
}

func (s *sequence) unread(from, to int) {
	n := &ins.Unread{}
	s.add(n, from, to)
	s.line.Unread = append(s.line.Unread, n.At)
}

// atStar reads a star: the beginning of a stretch, a stop within it, or its end.
func (s *sequence) atStar(t *text.Token) {
	s.i++
	switch {
	case s.star < 0, t.S != s.sign && s.repeatsFrom(t.S) && !s.repeatsFrom(s.sign): // # ch 4, * dc in next st; rep from *
		s.star, s.starTok, s.sign, s.stop, s.closed = len(s.out), s.i-1, t.S, -1, nil
		s.saidUnread = len(s.line.Unread)
	case t.S != s.sign && !s.endsStretch():
		s.stop = len(s.out) - s.star
	case s.saidUnread < len(s.line.Unread) && !working(s.out[s.star:]) && slices.ContainsFunc(s.t[s.starTok+1:s.i-1], func(t text.Token) bool { return telling[t.S] }): // * The first 6 stitches form the border.*
		s.line.Unread, s.out = s.line.Unread[:s.saidUnread], s.out[:s.star]
		s.add(&ins.Nothing{}, s.starTok, s.i)
		s.star = -1
	default:
		r := &ins.Repeat{Body: append([]ins.Item(nil), s.out[s.star:]...), Times: ins.N(1), Stop: -1}
		if s.stop >= 0 {
			r.Stop = s.stop
		}
		at := s.behindComma(s.i)
		to := s.spec(r, at, false)
		if to == at {
			to = s.placesOfStretch(r)
		}
		again := reaches(r)
		s.out = s.out[:s.star]
		if to == s.i && s.endsBehind(to) { // *sc in next cluster, 5 dc in next sc* end with 3 dc in last st
			r.Times, r.Until = ins.Num{}, ins.Extent{Kind: ins.ToEnd, At: s.span(s.starTok, s.i-1)}
		}
		if s.bare = nil; to == s.i && s.line.IsRow() && s.depth == 0 && counts(r.Body) {
			s.bare = r
		}
		if to == s.i && (s.i >= len(s.t) || s.at(s.i).Kind == 'g' && s.countsIn(s.at(s.i).Sub) != nil) { // *6 sc, dec* [42]
			r.Times, r.Until = ins.Num{}, ins.Extent{Kind: ins.ToEnd, At: s.span(s.starTok, s.i-1)}
		}
		s.i = to
		s.add(r, s.starTok, s.i)
		s.star, s.closed = -1, again
	}
}

// repeatsFrom reports whether words ahead repeat from that sign.
func (s *sequence) repeatsFrom(sign string) bool {
	for i := s.i; i+2 < len(s.t); i++ {
		if s.at(i).Is("rep", "repeat", "rpt") && s.at(i+1).Is("from") && isStar(s.at(i+2)) && s.at(i+2).S == sign {
			return true
		}
	}
	return false
}

// unlessBothLoops are the places that end before to, but none if they are the two loops of a yarn over, each of which is worked:
// (k1, p1) into double yo.
func (s *sequence) unlessBothLoops(body []ins.Item, list []ins.Place, to int) []ins.Place {
	double := slices.IndexFunc(s.t[s.i:to], func(t text.Token) bool { return t.Is("double") })
	if s.r.knits && len(body) == 2 && double >= 0 && s.at(s.i+double+1).Is("yo", "yarn", "yarnover") {
		return nil
	}
	return list
}

// endsBehind reports whether words behind a stretch between stars say with what the row ends, so that it is worked up to there.
func (s *sequence) endsBehind(i int) bool {
	for s.at(i).Kind == 'g' || s.at(i).Kind == 'p' && !isStar(s.at(i)) && i < len(s.t) {
		i++
	}
	return s.at(i).Is("end", "ending", "finish", "finishing") && s.at(i+1).Is("with", "on", "in", "by")
}

// placesOfStretch reads into what a stretch between stars is worked each time, and gives what is behind it: *sl st, ch 2, 3 dc, sl st* in
// each ch-3 sp.
func (s *sequence) placesOfStretch(r *ins.Repeat) int {
	if len(r.Body) < 2 || !s.at(s.i).Is("in", "into") || s.placesOwn(r.Body) {
		return s.i
	}
	v, to := s.named("places", s.i)
	if to < 0 {
		return s.i
	}
	r.Places = v.(spots).list
	return to
}

// placesOwn reports whether any instruction says itself where it is worked.
func (s *sequence) placesOwn(list []ins.Item) bool {
	return slices.ContainsFunc(list, func(n ins.Item) bool {
		st, ok := n.(*ins.Stitch)
		return ok && len(st.Places) > 0 || is[*ins.Skip](n)
	})
}

// reaches takes what says how far a stretch is worked as said of its last stitch, if that goes across itself: *dc in each dc
// across* to ch-2 sp. It gives the stretch as it is repeated behind.
func reaches(r *ins.Repeat) *ins.Repeat {
	if k := r.Until.Kind; k != ins.ToUnit && k != ins.ToLast && k != ins.ToMarker || len(r.Body) == 0 {
		return r
	}
	at := len(r.Body) - 1
	st, ok := r.Body[at].(*ins.Stitch)
	if !ok || len(st.Places) == 0 || st.Places[len(st.Places)-1].Extent.Kind != ins.ToEnd {
		return r
	}
	again, near := *r, *st
	again.Body, near.Places = slices.Clone(r.Body), slices.Clone(st.Places)
	for i := range near.Places {
		if near.Places[i].Kind == ins.InEach {
			near.Places[i].Extent = r.Until
		}
	}
	r.Body[at], r.Times, r.Until = &near, ins.N(1), ins.Extent{}
	return &again
}

// counts reports whether a stretch is stitches alone that go as far as their own numbers.
func counts(list []ins.Item) bool {
	k := 0
	for _, n := range list {
		switch n := n.(type) {
		case *ins.Stitch:
			if n.Kind == nil && !n.Inc && !n.Dec || n.Kind != nil && n.Kind.Craft != stitch.Knitting || len(n.Places) > 0 && !(n.Inc && len(n.Places) == 1 && n.Places[0].Kind == ins.InNext && n.Places[0].N.All == 1) {
				return false
			}
			k++
		case *ins.Psso, *ins.Nothing:
		case *ins.Repeat:
			if n.Until.Kind != ins.NoExtent || !counts(n.Body) {
				return false
			}
			k++
		default:
			return false
		}
	}
	return k > 1
}

// behindComma is behind a comma or another sign at i, if how often a stretch is worked is all that its clause tells: *p2, k6*, 2x;
// (p1, k1), 3 times; (sc, inc) – 6 times.
func (s *sequence) behindComma(i int) int {
	if _, to := s.named("times", i+1); s.at(i).Is(",", "--", "-", ":", "/", "=") && to >= 0 && (to >= len(s.t) || s.at(to).Kind == 'p' || s.at(to).Kind == 'g') {
		return i + 1
	}
	return i
}

// endsStretch reports whether a sign unlike the first one ends the stretch: * … ** repeat from * to **.
func (s *sequence) endsStretch() bool {
	for k := s.i; k < s.i+4; k++ {
		if s.at(k).Is("rep", "repeat", "repeating") {
			return true
		}
		if s.at(k).Kind != 'p' {
			return false
		}
	}
	return false
}

// stretchAt reports whether a bracket stands there that holds instructions, and is repeated as far as words behind it say.
func (s *sequence) stretchAt(i int) bool {
	t := s.at(i)
	if t.Kind != 'g' || len(t.Sub) < 3 || s.neutralAll(t.Sub) || s.countsIn(t.Sub) != nil ||
		!slices.ContainsFunc(t.Sub, func(k text.Token) bool { return k.Kind == 'w' && s.names(k.S) }) {
		return false
	}
	if _, to := s.named("extent", i+1); to >= 0 {
		return true
	}
	_, to := s.named("times", i+1)
	return to >= 0
}

// timesRepeat reads [dc in next st, ch 1] x repeat around.
func (s *sequence) timesRepeat() bool {
	if !s.at(s.i).Is("x") || !s.at(s.i+1).Is("rep", "repeat") {
		return false
	}
	s.i++
	if s.repeat() {
		return true
	}
	s.i--
	return false
}

// repeat reads rep from * 5 times, repeat around, rep between * and *.
func (s *sequence) repeat() bool {
	t := s.at(s.i)
	if j := s.goesOnSo(); j > 0 {
		return s.wholeRow(j)
	}
	if t.Is("across", "around") {
		return s.at(s.i-1).Is(",") && s.at(s.i+1).Kind != 'w' && s.bareAround()
	}
	if !t.Is("rep", "repeat", "repeating", "rpt", "reps", "repeated", "work", "from") {
		return false
	}
	if (t.Is("work") || t.Is("rep", "repeat") && !working(s.out)) && s.star < 0 && isStar(s.at(s.i+1)) && slices.ContainsFunc(s.t[s.i+2:], func(k text.Token) bool { return isStar(&k) }) { // work * 1 sc in next st; rep from *
		s.i++
		return true
	}
	if t.Is("rep", "repeat") && s.stretchAt(s.i+1) { // repeat (2 dc in next st, dc in next st) to end
		s.i++
		return true
	}
	j := s.pastBeginning(s.pastMarks(s.i + 1))
	if t.Is("work", "from") && !isStar(s.at(j)) || t.Is("from") && j != s.i+1 {
		return false
	}
	j, starred := s.pastStars(j)
	if !starred && s.star < 0 && s.closed == nil && !s.lastGroup() {
		return s.wholeRow(j)
	}
	if s.ofRows(starred, j) {
		return false
	}
	if t.Is("from") && s.closed != nil && s.closedStop > 0 && s.closedStop < len(s.closed.Body) && len(s.at(j-1).S) > len(s.at(j-3).S) { // then from * to ** once more
		part := &ins.Repeat{Body: slices.Clone(s.closed.Body[:s.closedStop]), Times: ins.N(1), Stop: -1}
		from := s.i
		s.i = s.spec(part, j, false)
		s.add(part, from, s.i)
		return true
	}
	return s.again(j)
}

// alternately reads stitches of which a word before them says that they are worked again and again: alternately make 1,
// knit 2 together.
func (s *sequence) alternately() bool {
	regularly := s.at(s.i).Is("repeat") && s.at(s.i+1).Is("regularly")
	if !regularly && !s.at(s.i).Is("alternately", "alternate") || !s.line.IsRow() || s.star >= 0 || s.depth > 0 {
		return false
	}
	from := s.i + 1
	if regularly {
		from++
	}
	end, to := from, -1
	for ; end < len(s.t) && !s.at(end).Is(".", ";", "end", "ending") && s.at(end).Kind != 'g'; end++ {
		if _, to = s.named("extent", end); to >= 0 {
			break
		}
	}
	before := len(s.line.Unread)
	items := s.within(s.t[from:end]).sequence()
	if len(s.line.Unread) > before || len(items) < 2 || !working(items) {
		s.line.Unread = s.line.Unread[:before]
		return false
	}
	if to >= 0 {
		end = to
	}
	r := &ins.Repeat{Body: items, Until: ins.Extent{Kind: ins.ToEnd, At: s.span(s.i, end-1)}, Stop: -1}
	s.add(r, s.i, end)
	s.i = end
	s.lastTime(r)
	return true
}

// ofRows reports whether rows are repeated, from their star on if one is named, and no stitches of this line.
func (s *sequence) ofRows(starred bool, j int) bool {
	if starred && s.at(j).Is("as", "same") && s.at(j+1).Is("given", "for", "on", "of", "directed", "worked", "as") { // work from * to ** as given for Back
		return true
	}
	if !starred {
		return s.rowsFollow()
	}
	return s.r.mark != "" && s.star < 0 && s.closed == nil && slices.ContainsFunc(s.t[s.i:min(len(s.t), s.i+4)], func(t text.Token) bool { return t.S == s.r.mark })
}

// pastBeginning is behind 'the beginning of the row', from which a row is repeated.
func (s *sequence) pastBeginning(j int) int {
	if s.at(j).Is("of") && s.at(j-1).Is("beginning", "beg", "start") {
		j--
	} else if !s.at(j).Is("beginning", "beg", "commencement", "start") || !s.at(j-1).Is("from") {
		return j
	}
	if _, ok := text.RowWord(s.at(j + 2).S); ok && s.at(j+1).Is("of") {
		return j + 3
	}
	return j + 1
}

// goesOnSo is behind words that work what the row has so far again and again, if how far stands there: continue
// alternating this way to the end, and so on around. 0: they do not stand here.
func (s *sequence) goesOnSo() int {
	j := s.i
	switch {
	case s.at(j).Is("so") && s.at(j+1).Is("on", "forth"):
		j += 2
	case s.at(j).Is("continue", "cont", "continuing") && s.at(j+1).Is("alternating", "like", "this", "that", "repeating", "in"):
		for j++; s.at(j).Is("alternating", "like", "this", "that", "same", "in", "way", "manner", "fashion", "repeating", "pattern", "stitches", "sts", "these", "between"); j++ {
		}
	default:
		return 0
	}
	if _, to := s.named("extent", j); to < 0 || s.star >= 0 || s.closed != nil {
		return 0
	}
	return j
}

// bareAround reads 'around' behind a comma, which works what stands before it again and again.
func (s *sequence) bareAround() bool {
	if s.sep == "," && s.star < 0 && s.closed == nil && s.severalBare() {
		return s.wholeRow(s.i) // dc in next st, 2 dc in next st, around
	}
	if !s.lastGroup() { // *(p2, k8), around
		return false
	}
	r := s.out[len(s.out)-1].(*ins.Repeat)
	r.Times, r.Until = ins.Num{}, ins.Extent{Kind: ins.ToEnd, At: s.span(s.i, s.i)}
	s.i++
	return true
}

// plural reports whether the letter at j makes many of the star before it: between *s, between *'s once.
func (s *sequence) plural(j int) bool {
	t, next := s.at(j), s.at(j+1)
	if !t.Is("s") || next.Kind == 'n' {
		return false
	}
	gap := t.Col - s.at(j-1).End
	return gap == 0 && t.Glued || gap == 1 && s.r.knits && next.Is("once", "twice", "across", "around", "again", "to", "until", "till", "for", "over", "ending", "end", "along", ",", ".", ";")
}

// pastStars is behind the stars at j that 'repeat' names, and whether there are any: from * to *, between *s.
func (s *sequence) pastStars(j int) (int, bool) {
	starred := false
	for {
		v, to := star(s.parser, j)
		if v == nil {
			break
		}
		starred = true
		if j = to; s.plural(j) {
			j++
		}
		for s.at(j).Is("to", "until", "through", "and", "till", "-", "--") && isStar(s.at(j+1)) { // *-* as well
			j++
		}
	}
	if s.at(j).Is(",") && starred {
		j++
	}
	return j, starred
}

// again repeats the stretch that was marked last as the words at j say.
func (s *sequence) again(j int) bool {
	s.further, s.bare = false, nil
	r := s.stretch()
	if r == nil {
		return false
	}
	from := s.i
	s.i = s.spec(r, j, true)
	if s.further && r.Times.By == nil && r.Times.All > 1 { // it is worked so often, not once and so often more
		r.Times.All, r.InAll = r.Times.All-1, false
	}
	if r.Times.By == nil && r.Times.All == 0 && r.Until.Kind == ins.NoExtent {
		r.Until = ins.Extent{Kind: ins.ToEnd, At: s.span(from, s.i-1)}
	}
	s.lastTime(r)
	at := r.Span()
	if end := s.span(s.i-1, s.i-1); end.Line == at.Line && end.End > at.End {
		at.End = end.End
		r.Put(at)
	}
	s.closed = r
	return true
}

// severalBare reports whether the row so far is stitches into the next places, several of them: what 'around'
// behind a comma works again.
func (s *sequence) severalBare() bool {
	k := 0
	for _, n := range s.out {
		switch n := n.(type) {
		case *ins.Stitch:
			if len(n.Places) != 1 || n.Places[0].Kind != ins.InNext {
				return false
			}
			k++
		case *ins.Chain, *ins.Nothing:
		default:
			return false
		}
	}
	return k > 1
}

// rowsFollow reports whether 'rep' at this place repeats rows and not stitches.
func (s *sequence) rowsFollow() bool {
	for k := s.i + 1; k < s.i+6; k++ {
		if _, ok := text.RowWord(s.at(k).S); ok && s.at(k).Kind == 'w' && !(s.at(k-1).Is("of") && s.at(k-2).Is("end", "rest", "beginning", "beg", "commencement", "start")) && !s.at(k-1).Is("all", "along", "whole", "entire") {
			return true
		}
	}
	return false
}

// lastGroup reports whether a bracket stands last that 'repeat' may mean.
func (s *sequence) lastGroup() bool {
	if len(s.out) == 0 || s.rowsFollow() {
		return false
	}
	r, ok := s.out[len(s.out)-1].(*ins.Repeat)
	return ok && len(r.Places) == 0 && r.Until.Kind == ins.NoExtent && r.Times.By == nil && r.Times.All == 1
}

// wholeRow reads 'repeat around' at the end of a row without a star: all of it is repeated.
func (s *sequence) wholeRow(j int) bool {
	if s.rowsFollow() || len(s.out) == 0 || !s.line.IsRow() || s.depth > 0 {
		return false
	}
	var times ins.Num
	either := false // in all, or beyond the first time
	until := ins.Extent{Kind: ins.ToEnd}
	if v, to := s.named("extent", j); to >= 0 {
		if e, ok := v.(ins.Extent); ok && e.Kind == ins.ToLast {
			until = e
		}
		j = to
	} else if v, to := s.named("times", j); to >= 0 {
		if j, times = to, v.(often).n; !v.(often).total {
			times = times.Plus(1)
		}
		either = !v.(often).more && !v.(often).total
	} else if k := s.andEnds(j); k > j {
		j = k
	} else if j < len(s.t) && !s.at(j).Is(".", ";", "=", ":", "-", "–", "—") && s.at(j).Kind != 'g' {
		return false
	}
	from := s.behindStart()
	if from < len(s.out) && from > 0 && is[*ins.Skip](s.out[from]) && is[*ins.Chain](s.out[from-1]) && (j == s.i+1 || s.passesSeveral(from)) { // 3 chain, miss 2, 1 plain: repeat
		from--
	}
	if k := len(s.out) - 1; from > 0 && k > from+1 && is[*ins.Skip](s.out[from]) && is[*ins.Skip](s.out[k]) { // ch 4, skip 1, dc, ch 1, skip 1, repeat across
		from++
	}
	if from == len(s.out) {
		return false
	}
	until.At = s.span(s.i, j-1)
	r := &ins.Repeat{Body: inOrder(append([]ins.Item(nil), s.out[from:]...)), Until: until, Stop: -1}
	if times.Set() {
		r.Times, r.Until, r.InAll = times, ins.Extent{}, either
	}
	s.out = s.out[:from]
	s.i = j
	s.add(r, s.i-1, s.i)
	s.lastTime(r)
	s.sep = "," // what it ends with is no count
	return true
}

// inOrder is a stretch that is repeated whose stitches are told to go into the first stitch, the second, the third: each into
// the next one.
func inOrder(body []ins.Item) []ins.Item {
	at := 0
	for _, n := range body {
		st, ok := n.(*ins.Stitch)
		if !ok || len(body) < 2 || len(st.Places) != 1 || st.Places[0].N.By != nil || !st.Places[0].Unit.Any() {
			return body
		}
		switch p := &st.Places[0]; {
		case at == 0 && p.Kind == ins.InFirst:
			at = p.N.All
		case at > 0 && p.Kind == ins.InEvery && p.N.All == at+1 && !p.Of:
			at++
		default:
			return body
		}
	}
	for i, n := range body {
		p := &n.(*ins.Stitch).Places[0]
		if p.Kind = ins.InNext; i > 0 {
			p.N = ins.N(1)
		}
	}
	return body
}

// passesSeveral reports whether the skip at i passes more than one stitch, so that the chain before it spans them.
func (s *sequence) passesSeveral(i int) bool {
	k := s.out[i].(*ins.Skip)
	return len(k.Places) == 1 && k.Places[0].N.By == nil && k.Places[0].N.All > 1
}

// behindStart is behind the chains and words that the row begins with.
func (s *sequence) behindStart() int {
	for from, n := range s.out {
		switch n.(type) {
		case *ins.Chain, *ins.Nothing, *ins.Turn:
			continue
		}
		return from
	}
	return len(s.out)
}

// andEnds is where it is told with what a repeat ends: repeat, and end with 2 plain.
func (s *sequence) andEnds(j int) int {
	for s.at(j).Is(",", "and") {
		j++
	}
	if s.at(j).Is("end", "ending", "finish", "finishing", "knitting", "purling") {
		return j
	}
	return -1
}

// withoutWords is a stretch without the words in which it ends that say nothing of what is worked: 5 dc in next sp (note the slant).
func withoutWords(items []ins.Item) []ins.Item {
	for len(items) > 1 {
		last, ok := items[len(items)-1].(*ins.Nothing)
		if !ok || *last != (ins.Nothing{Placed: last.Placed}) {
			break
		}
		items = items[:len(items)-1]
	}
	return items
}

// oneEach is a repeated stretch with the next stitch for each of a kind, if it goes into the next space as well: *5 dc in ch-3 sp, sl st in
// each sc; rep from * around.
func oneEach(items []ins.Item) []ins.Item {
	spaced := slices.ContainsFunc(items, func(n ins.Item) bool {
		list := placesOf([]ins.Item{n})
		return len(list) == 1 && list[0].Kind == ins.InNext && list[0].Unit.Space
	})
	for i, n := range items {
		st, ok := n.(*ins.Stitch)
		if !ok || !spaced || len(st.Places) != 1 || st.Places[0].Kind != ins.InEach || st.Places[0].Extent.Kind != ins.NoExtent || st.Places[0].Unit.Space {
			continue
		}
		one := *st
		one.Places = slices.Clone(st.Places)
		one.Places[0].Kind, one.Places[0].N = ins.InNext, ins.N(1)
		items[i] = &one
	}
	return items
}

// stretch is the starred stretch that 'rep' means, taken out of what was read.
func (s *sequence) stretch() *ins.Repeat {
	switch {
	case s.star >= 0 && len(s.out) > s.star:
		r := &ins.Repeat{Body: oneEach(append([]ins.Item(nil), withoutWords(s.out[s.star:])...)), Stop: s.stop}
		s.out, s.closedStop = s.out[:s.star], s.stop
		s.add(r, s.starTok, s.i)
		s.star, s.stop = -1, -1
		return r
	case s.closed != nil:
		r := s.closed
		k := len(s.out) - 1
		for k >= 0 && s.out[k] != ins.Item(r) {
			k--
		}
		if k < len(s.out)-1 { // it stands further back: work it again here
			again := *r
			again.At = ins.Span{}
			r, s.further = &again, true
			s.add(r, s.i, s.i+1)
		}
		r.Times, r.Until = ins.Num{}, ins.Extent{}
		return r
	case len(s.out) > 0:
		if r, ok := s.out[len(s.out)-1].(*ins.Repeat); ok {
			r.Times = ins.Num{}
			r.InAll = true
			return r
		}
	}
	if len(s.r.starred) > 0 {
		r := &ins.Repeat{Body: s.r.starred, Stop: -1}
		s.add(r, s.i, s.i+1)
		return r
	}
	return nil
}

// spec reads how often something is worked: '6 times', 'twice', 'to last 3 sts', 'across'. After 'rep from
// *' the first working comes on top.
func (s *sequence) spec(r *ins.Repeat, i int, rep bool) int {
	bracket := r.InAll
	r.InAll = false
	i = s.behindWorked(i, rep)
	if !rep && s.at(i).Is("rep", "repeat", "repeated", "repeating") && !s.rowsAt(i+1) {
		return s.specRepeated(r, i)
	}
	if s.at(i).Kind == 'g' && len(s.at(i).Sub) > 1 { // dec (3 times)
		q := s.within(s.at(i).Sub)
		if v, to := q.named("times", 0); to == len(q.t) {
			r.Times = v.(often).n
			return i + 1
		}
	}
	if v, to := s.named("times", i); to >= 0 {
		o := v.(often)
		r.Times = o.n
		switch {
		case rep && !bracket && (o.more || !o.total):
			r.Times, r.InAll = o.n.Plus(1), !o.more
		case o.more && bracket:
			r.Times = o.n.Plus(1)
		}
		return to
	}
	if v, to := s.named("extent", i); to >= 0 {
		if w, next := s.named("extent", to+1); next >= 0 && s.at(to).Is(",") && v.(ins.Extent).Kind == ins.ToEnd { // across, to last 4 sts
			v, to = w, next
		}
		r.Times, r.Until = ins.Num{}, v.(ins.Extent)
		return to
	}
	if rep && s.at(i).Is("until") {
		if _, to := s.named("until", i+1); to >= 0 {
			r.Times, r.Until = ins.Num{}, ins.Extent{Kind: ins.ToEnd, At: s.span(i, to-1)}
			return to
		}
	}
	return i
}

// behindWorked is behind a word for working at i, if how often stands there: *2 dc in next st* work 17 times.
func (s *sequence) behindWorked(i int, rep bool) int {
	if !rep && s.at(i).Is("work", "worked", "done", "made") {
		if _, to := s.named("times", i+1); to >= 0 {
			return i + 1
		}
	}
	return i
}

// specRepeated reads how often a bracket is repeated: repeat from * to * 5 times, rep across.
func (s *sequence) specRepeated(r *ins.Repeat, i int) int {
	j := i + 1
	for emptyBrackets(s.at(j)) || s.at(j).Is("this", "from", "in", "brackets", "parenthesis", "parentheses", "pattern", "between", "bet", "btw", "a", "total", "of") || isStar(s.at(j)) || s.at(j).Is("to", "and", "-", "--") && isStar(s.at(j+1)) {
		j++
	}
	starred := isStar(s.at(j - 1))
	if starred && s.plural(j) {
		j++
	}
	if v, to := s.named("times", j); to >= 0 {
		o := v.(often)
		r.Times = o.n
		if starred || o.more {
			r.Times, r.InAll = o.n.Plus(1), !o.more
		}
		if r.Stop >= 0 && s.at(to).Is("end", "ending", ",") {
			return s.lastTimeAt(r, to)
		}
		return to
	}
	v, to := s.named("extent", j)
	switch {
	case to >= 0:
		r.Times, r.Until = ins.Num{}, v.(ins.Extent)
		if end := s.lastTimeAt(r, to); !s.at(end-1).Is("with", "by", "on") && !s.at(end-2).Is("on") {
			return end
		}
		return to // with what the row ends is its own
	case starred:
		r.Times, r.Until = ins.Num{}, ins.Extent{Kind: ins.ToEnd, At: s.span(i, j-1)}
		return s.lastTimeAt(r, j)
	}
	return i
}

// pastMarks is behind the words and brackets at j that only say what is repeated: from, between [ ], the instructions in brackets.
func (s *sequence) pastMarks(j int) int {
	for emptyBrackets(s.at(j)) || s.at(j).Is("parenthesis", "parentheses", "pattern", "from", "between", "bet", "btw", "instructions", "directions", "patt", "pat", "in", "after", "brackets", "stitches", "sts", "again", "this", "last", "section", "repeat", "beg", "beginning", "start", "bracketed", "asterisk") && !(s.at(j).Is("last", "this") && s.at(j+1).Is("row", "rnd", "round", "two", "2")) {
		j++
	}
	return j
}

// emptyBrackets reports whether brackets stand there that only name those of a stretch: repeat between [ ], from [ to ].
func emptyBrackets(t *text.Token) bool {
	return t.Kind == 'g' && (len(t.Sub) == 0 || len(t.Sub) == 1 && t.Sub[0].Is("to", "and", "-", "--"))
}

func (s *sequence) rowsAt(i int) bool {
	for k := i; k < i+3; k++ {
		if _, ok := text.RowWord(s.at(k).S); ok && s.at(k).Kind == 'w' {
			return true
		}
	}
	return false
}

// lastTime reads 'ending last rep at **' and 'ending last rep with 3 tr in last dc' behind a repeat.
func (s *sequence) lastTime(r *ins.Repeat) {
	if s.i = s.lastTimeAt(r, s.i); s.at(s.i-1).Is("with", "by") {
		s.add(&ins.Nothing{}, s.i-2, s.i)
	}
}

func (s *sequence) lastTimeAt(r *ins.Repeat, i int) int {
	j := i
	if s.at(j).Is(",", ";") || s.at(j).Is(".") && s.at(j+1).Is("end") && s.at(j+2).Is("last", "final") {
		j++
	}
	if to := s.omits(r, j); to > 0 {
		return to
	}
	if !s.at(j).Is("end", "ending", "finishing", "ends") {
		r.Stop = s.noStop(r, i)
		return i
	}
	j++
	last := false
	for s.at(j).Is("last", "final", "rep", "repeat", "each", "one", "row", "on") {
		last = last || s.at(j).Is("rep", "repeat")
		j++
	}
	switch {
	case s.at(j).Is("at", "with", "on") && isStar(s.at(j+1)):
		return j + 2
	case last && (s.at(j).Is("with", "in", "by") || s.at(j).Kind == 'g' || s.at(j).Kind == 'n' || s.thingAt(j) || s.at(j).Is("skip", "sk", "miss")):
		j, k, bare := s.lastStretch(j)
		q := *s.parser
		sub := q.within(s.t[j+1 : k])
		before := len(s.line.Unread)
		items := sub.sequence()
		r.Stop = s.noStop(r, i)
		if len(s.line.Unread) == before && len(items) > 0 && (bare || s.at(j).Is("with")) {
			r.Last = items
			return k
		}
		s.line.Unread = s.line.Unread[:before]
		return k
	case s.at(j).Is("with", "by") && s.insteadAt(j+1) > 0:
		r.Stop = s.noStop(r, i)
		return s.lastInstead(r, j+1)
	case s.at(j).Is("in", "into", "at", "on"):
		r.Stop = s.noStop(r, i)
		if _, to := s.named("core", j+1); to >= 0 {
			return to
		}
		return i
	case s.at(j).Is("with", "by"):
		r.Stop = s.noStop(r, i)
		return j + 1
	}
	r.Stop = s.noStop(r, i)
	if s.thingAt(j) || s.at(j).Kind == 'n' {
		return j
	}
	return i
}

// omits reads that the last time leaves out some of its last stitches, and gives the place behind it: omitting 1 tr at end of last
// rep. It is 0 if that is not said.
func (s *sequence) omits(r *ins.Repeat, j int) int {
	if !s.at(j).Is("omitting", "omit") || len(r.Body) == 0 {
		return 0
	}
	n, at := 1, j+1
	if t := s.at(at); t.Kind == 'n' && t.Num.By == nil {
		n, at = t.Num.All, at+1
	}
	last, ok := r.Body[len(r.Body)-1].(*ins.Stitch)
	k, to := s.thingEnd(at)
	if !ok || k != last.Kind || last.Kind == nil || last.N.By != nil || !s.at(to).Is("at", "from", "on", "in") {
		return 0
	}
	for to++; s.at(to).Is("the", "end", "of"); to++ {
	}
	if !s.at(to).Is("last", "final") || !s.at(to+1).Is("rep", "repeat") {
		return 0
	}
	switch fewer := *last; {
	case last.N.All > n:
		fewer.N = ins.N(last.N.All - n)
		r.Last = []ins.Item{&fewer}
	case last.N.All == n:
		r.Stop = len(r.Body) - 1
	default:
		return 0
	}
	return to + 2
}

// thingEnd is the stitch of which the name stands at i, and where that ends.
func (s *sequence) thingEnd(i int) (*stitch.Stitch, int) {
	v, to := s.named("kind", i)
	if k, ok := v.(thing); ok && to > i {
		return k.Kind, to
	}
	return nil, i
}

// lastStretch is where the words before what the last time has end, where that ends, and whether no word stands before it:
// ending last rep with 3 tr in last dc, ending last rep (sk 2, 3 dc in next dc).
func (s *sequence) lastStretch(j int) (before, k int, bare bool) {
	if bare = !s.at(j).Is("with", "in", "by"); bare {
		j--
	}
	k = j + 1
	if bare && s.at(k).Kind == 'g' {
		k++
	}
	for k < len(s.t) && !s.at(k).Is(".", ";") && s.at(k).Kind != 'g' && !(s.at(k).Is(",") && s.at(k+1).Is("turn", "join", "ch")) {
		k++
	}
	return j, k, bare
}

// insteadAt is where 'instead of' stands behind a few words, as in k 1 instead of k 8; 0: nowhere.
func (s *sequence) insteadAt(i int) int {
	for k := i + 1; k < min(i+8, len(s.t)) && !s.at(k).Is(".", ";", ","); k++ {
		if s.at(k).Is("instead") && s.at(k+1).Is("of") {
			return k
		}
	}
	return 0
}

// lastInstead reads what the last time has instead of its last stitch, and gives the place behind it.
func (s *sequence) lastInstead(r *ins.Repeat, i int) int {
	at := s.insteadAt(i)
	sub := s.within(s.t[i:at])
	before := len(s.line.Unread)
	if items := sub.sequence(); len(s.line.Unread) == before && len(items) > 0 {
		r.Last = items
	}
	s.line.Unread = s.line.Unread[:before]
	for at += 2; at < len(s.t) && !s.at(at).Is(".", ";", ",") && s.at(at).Kind != 'g'; at++ {
		if s.at(at).Kind == 'n' {
			r.LastFor = s.at(at).Num
		}
	}
	return at
}

// noStop drops a stop within the stretch that nothing speaks of.
func (s *sequence) noStop(r *ins.Repeat, i int) int {
	for k := i; k < len(s.t); k++ {
		if s.at(k).Is("ending", "end") && isStar(s.at(k+2)) || isStar(s.at(k)) && s.at(k-1).Is("at") {
			return r.Stop
		}
	}
	return -1
}

// within is a parser of the tokens of a bracket.
func (p *parser) within(t []text.Token) *parser {
	q := &parser{t: dropFillers(t), r: p.r, line: p.line, depth: p.depth + 1, steps: p.steps}
	return q.ready()
}

// intoOne reads into what stitches go that are told with how often: (sc, ch 3) 5 times in ring.
func (s *sequence) intoOne(r *ins.Repeat) {
	at := s.i
	if s.at(at-1).Is("in", "into") { // it was read with the number
		at--
	}
	if s.at(at).Is("all") { // twice all in last st
		at++
	}
	if len(r.Places) > 0 || r.Until.Kind != ins.NoExtent || !s.at(at).Is("in", "into") || slices.ContainsFunc(r.Body, placedOrNone) {
		return
	}
	if v, to := s.named("places", at); to >= 0 {
		r.Places, s.i = v.(spots).list, to
		if len(r.Places) == 1 && (r.Places[0].Kind == ins.InEach || r.Places[0].N.By == nil && r.Places[0].N.All <= 1) && r.Times.By == nil && r.Times.All > 1 { // (ch 1, dc) twice in last st
			all := &ins.Repeat{Placed: r.Placed, Body: r.Body, Times: r.Times, Stop: -1}
			r.Body, r.Times = []ins.Item{all}, ins.N(1)
		}
	}
}

// placedOrNone reports whether an instruction says a place itself, or is neither a stitch nor a chain.
func placedOrNone(n ins.Item) bool {
	switch n := n.(type) {
	case *ins.Stitch:
		return len(n.Places) > 0
	case *ins.Chain:
		return false
	}
	return true
}

// kindFirst is the count behind a row that names its stitch first, in the usual order: 2 dc in each st, join. (dc 24)
func (s *sequence) kindFirst(t []text.Token) []text.Token {
	if len(t) != 2 || t[1].Kind != 'n' || !s.r.crochet || s.depth > 0 || !s.names(t[0].S) || !working(s.out) || !s.restIsNothing(s.i) {
		return t
	}
	return []text.Token{t[1], t[0]}
}

// bracket reads what a bracket holds: a repeat, stitches into one place, a count, or a remark.
func (s *sequence) bracket(t *text.Token) {
	from := s.i
	s.i++
	if c, ok := s.remark(t); ok {
		s.throughout(t.Sub, c)
		s.remarked(c, s.span(from, from).End)
		return
	}
	if g := s.countsIn(inRingLast(s.kindFirst(t.Sub))); g != nil && !s.timed && !s.worked(s.behindComma(s.i)) && !onNeedle(t.Sub) {
		s.add(countOrList(g, t.Sub), from, s.i)
		return
	}
	if s.timesIn(t.Sub, from) || s.leavesIn(t.Sub, from) || s.chainsMore(t.Sub, from) {
		return
	}
	s.namesWorked(t.Sub, from)
	if s.idle(t.Sub) || onNeedle(t.Sub) || len(t.Sub) > 2 && t.Sub[0].Is("or", "alternatively", "alternately", "optional", "optionally") || s.remarks(t.Sub) { // (or 12 dc in a magic ring)
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
	} else if s.afterRow(from) { // (work 2 sts together) behind what it explains
		s.add(&ins.Nothing{}, from, s.i)
		return
	}
	s.add(s.asGroup(r), from, s.i)
	s.closed = nil
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

// worksGroup makes what was worked into one place last one of the group that it defines.
func (s *sequence) worksGroup() {
	k := len(s.out) - 1
	for is[*ins.Nothing](s.out[k]) {
		k--
	}
	st := &ins.Stitch{Call: s.r.x.Groups[len(s.r.x.Groups)-1], N: ins.N(1)}
	switch n := s.out[k].(type) {
	case *ins.Stitch:
		st.Places = n.Places
	case *ins.Repeat:
		st.Places = n.Places
	}
	st.Put(s.out[k].Span())
	s.out[k] = st
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
	made := false
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
	if !made && !starts && (len(t) == 0 || !t[0].Is("a", "an", "another", "seam", "edge", "side", "shell", "fan")) {
		return "", false
	}
	return name, starts
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

// remarks reports whether a bracket tells of the work and is no part of it: (Those 2 stitches are always knit.)
func (s *sequence) remarks(t []text.Token) bool {
	last := len(s.out) - 1
	if t[0].Cap && t[len(t)-1].Is(".", "row", "rows", "round", "rnd") || last >= 0 && is[*ins.Even](s.out[last]) { // (Knit first 3 and last 3 stitches on every row.)
		for i := 1; i < len(t); i++ {
			if _, row := text.RowWord(t[i].S); row && t[i-1].Is("every", "each", "all") {
				return true
			}
		}
	}
	if before := s.at(s.i - 2); last >= 0 && len(t) == 1 && t[0].Is("inc", "increase", "dec", "decrease") && before.Kind == 'w' && !s.worked(s.i) { // kfb (increase) k1
		st, ok := s.out[last].(*ins.Stitch)
		return ok && st.Kind != nil && st.Kind.Makes != st.Kind.Uses
	}
	return changes(t) && !s.worked(s.i) || t[0].Cap && t[0].Is("those", "these", "this", "that", "they", "it", "you", "your", "if", "note", "there", "remember", "when", "don't", "the") && s.tells(t)
}

// changes reports whether a bracket says how many increases or decreases its row has: [9 incs].
func changes(t []text.Token) bool {
	return len(t) == 2 && t[0].Kind == 'n' && t[1].Is("incs", "increases", "decs", "decreases")
}

// afterRow reports whether a bracket only explains what stands before it: it follows a
// stitch that it would work a second time, and no place or number is said of it.
func (s *sequence) afterRow(at int) bool {
	if at == 0 || s.at(at-1).Kind == 'p' || len(s.out) == 0 {
		return false
	}
	k := s.at(at - 1)
	return k.Kind == 'w' && !k.Is("and", "then", "work", "make", "with", "x", "times", "time") && k.End < s.at(at).Col && s.at(s.i).Kind != 'w'
}

// worked reports whether the words at i tell where or how often a bracket is worked.
func (s *sequence) worked(i int) bool {
	if s.at(i).Is("x", "*") && s.at(i+1).Kind == 'n' || s.at(i).Is("rep", "repeat") {
		return true
	}
	if _, to := s.named("times", i); to >= 0 {
		return true
	}
	if _, to := s.named("places", i); to >= 0 {
		return true
	}
	_, to := s.named("extent", i)
	return to >= 0
}

// remark reads (counts as 1 dc), (3 skipped ch count as dc), (does not count as a st).
func (p *parser) remark(t *text.Token) (ins.Counting, bool) {
	q := p.within(t.Sub)
	at := slices.IndexFunc(q.t, func(k text.Token) bool {
		return k.Is("counts", "count", "counted", "counting", "stands", "stand", "regard", "regarded", "treat", "treated", "consider", "considered", "equals", "equal")
	})
	if at < 0 && q.at(0).Is("=") && (q.at(1).Is("first", "1st") || q.at(1).Kind == 'n' && q.at(1).Num.By == nil && q.at(1).Num.All == 1) { // (= first dc + ch 1)
		at = 0
	}
	switch {
	case at < 0:
		return q.firstOf()
	case at > 0 && q.t[at-1].Is("st", "stitch"):
		return ins.Counting{}, false
	}
	from := at
	for from > 0 && q.t[from-1].Is("not", "does", "do", "will", "doesn't", "don't", "won't", "never", "doesnt", "dont", "wont", "no") {
		from--
	}
	v, to := q.named("counting", from)
	if to < 0 {
		return ins.Counting{}, false
	}
	c := v.(ins.Counting)
	for i := range q.t {
		if i < from && q.t[i].Kind == 'n' && !q.at(i+1).Is("st") {
			c.Told = q.t[i].Num
		}
		if q.t[i].Is(nots...) {
			c.How = ins.CountsNot
		}
	}
	return c, true
}

// throughout takes a remark about chains as said of the whole text: (the ch 3 at beg of row counts as 1 dc throughout).
func (s *sequence) throughout(t []text.Token, c ins.Counting) {
	n := c.Told
	if _, ok := s.r.x.Turning[n.All]; ok || n.By != nil || n.All == 0 || !slices.ContainsFunc(t, func(k text.Token) bool { return k.Is("throughout") }) {
		return
	}
	if _, ok := s.r.o.Turning[n.All]; !ok {
		s.r.x.Turning[n.All] = c.How
	}
}

// firstOf reads (first dc): the chain stands for one.
func (p *parser) firstOf() (ins.Counting, bool) {
	at := 0
	if p.at(0).Is("is", "as", "for") { // is first tr
		at++
	}
	if p.at(at).Is("first", "counts", "1st") {
		at++
	} else if !p.at(0).Is("as", "for") {
		return ins.Counting{}, false
	}
	k, to := p.named("kind", at)
	if to != len(p.t) {
		return ins.Counting{}, false
	}
	s := k.(thing).Kind
	if s == nil || s.Craft != stitch.Crochet || s.Uses != 1 {
		return ins.Counting{}, false
	}
	return ins.Counting{How: ins.CountsAsStitch, As: s}, true
}

// nots are words that say that something is not so.
var nots = []string{"not", "n't", "doesn't", "don't", "won't", "isn't", "never", "doesnt", "dont", "wont", "no"}

// remarked gives what a remark says to the chain, skip or stitch before it.
func (s *sequence) remarked(c ins.Counting, end int) {
	for k := len(s.out) - 1; k >= 0; k-- {
		switch n := s.out[k].(type) {
		case *ins.Chain:
			n.Count = c
			n.At.End = max(n.At.End, end)
			return
		case *ins.Skip:
			n.Count = c
			return
		case *ins.Stitch:
			n.Count = c
			if k > 0 && is[*ins.Chain](s.out[k-1]) && c.As != nil && c.As.Key == "cluster" && len(n.Places) == 1 && n.Places[0].Kind == ins.InSame && n.N.By == nil && n.N.All == 1 {
				one := &ins.Stitch{Kind: c.As, N: ins.N(1), Places: []ins.Place{{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}}}} // ch 3, dc in same st (counts as cluster)
				one.Put(n.At)
				s.out = append(s.out[:k-1], one)
			}
			return
		case *ins.Nothing, *ins.Turn:
			continue
		case *ins.Repeat:
			if len(n.Body) > 0 {
				if ch, ok := n.Body[0].(*ins.Chain); ok {
					ch.Count = c
				}
			}
			return
		}
		return
	}
}

// otherStart passes another way to begin a ring, behind the first one: 8 sc in magic ring, or ch 2 and 8 sc in 2nd ch
// from hook.
func (s *sequence) otherStart() bool {
	if !s.at(s.i).Is("or", "alternatively") || len(s.out) == 0 || !s.line.IsRow() || !slices.ContainsFunc(placesOf(s.out), func(p ins.Place) bool { return p.Kind == ins.InRing || p.Kind == ins.FromHook }) {
		return false
	}
	end, ring := s.i, false
	for ; end < len(s.t) && !s.at(end).Is(".", ";") && s.at(end).Kind != 'g'; end++ {
		ring = ring || s.at(end).Is("ring", "hook", "circle", "loop", "chain", "ch")
	}
	if !ring {
		return false
	}
	s.add(&ins.Nothing{}, s.i, end)
	s.i = end
	return true
}

// placesOf are where the stitches of a list go.
func placesOf(list []ins.Item) []ins.Place {
	var out []ins.Place
	for _, n := range list {
		switch n := n.(type) {
		case *ins.Stitch:
			out = append(out, n.Places...)
		case *ins.Repeat:
			out = append(append(out, n.Places...), placesOf(n.Body)...)
		}
	}
	return out
}

// placeFirst reads a place that stands before what is worked into it: in next ch-3 sp make tr, ch 3 and
// tr. It goes to what stands behind 'and', or else to the end of the clause.
func (s *sequence) placeFirst() bool {
	first, to := s.placesFirst()
	if to < 0 {
		return false
	}
	to, verb := s.pastVerb(to)
	if g, _ := s.group(to); g == nil && s.at(to).Kind != 'n' && !s.thingAt(to) && s.at(to).Kind != 'g' {
		return false
	}
	if !s.other && s.at(to-1).Is(",", ":") && s.underside(s.i, to) { // on the other side of the chain, sc in next 8 ch
		s.other = true
		s.add(&ins.Nothing{Under: true}, s.i, to)
		s.i = to
		return true
	}
	if first.last().Kind == ins.RowEnds && !s.r.crochet { // in the next ten rows knit two together
		return false
	}
	all := s.at(to-1).Is(":") || verb && first.last().Kind == ins.InEach
	end := s.firstEnd(to, verb, first.last().Kind == ins.InRing && !s.r.began, all)
	before := len(s.line.Unread)
	if name, _ := nameMade(s.at(end - 1).Sub); name != "" && end-1 > to { // (shell made)
		end--
	}
	inner := s.t[to:end]
	if len(inner) == 1 && inner[0].Kind == 'g' {
		inner = inner[0].Sub
	}
	items := s.within(inner).sequence()
	if len(s.line.Unread) > before || !working(items) || s.at(end-1).Is("times", "around", "across") {
		s.line.Unread = s.line.Unread[:before]
		return false
	}
	var r ins.Item = &ins.Repeat{Body: items, Places: first.list, Times: ins.N(1), Stop: -1}
	if st, ok := items[0].(*ins.Stitch); ok && len(items) == 1 && s.at(s.i).Is("over", "across") && st.Kind != nil && st.Kind.Together && len(st.Places) == 0 { // over next 2 sts work dc2tog
		st.Places = first.list
		r = st
	}
	s.add(r, s.i, end)
	s.i = end
	return true
}

// pastVerb goes past the words between a place and what is worked into it, and reports whether they say to make or work it.
func (s *sequence) pastVerb(to int) (next int, verb bool) {
	for s.at(to).Is(":", ",", "make", "work", "crochet", "do", "knit") && !(s.at(to).Is("knit") && s.knits()) {
		verb = verb || s.at(to).Is("make", "work")
		to++
	}
	return to, verb
}

// placesFirst reads the places that stand before what is worked into them, and where they end; -1 if none stand here.
func (s *sequence) placesFirst() (spots, int) {
	at := s.i
	if s.at(at).Is("working") && s.at(at+1).Is("in", "into") { // working into 1st ch made, 8 hdc
		at++
	}
	between := s.at(at).Is("between") // between next 2 petals make dc, ch 3 and dc
	if !between && !s.at(at).Is("in", "into", "over", "on") {
		return spots{}, -1
	}
	v, to := s.named("places", at)
	if to < 0 || between && !s.at(to).Is("make", "work") {
		return spots{}, -1
	}
	first := v.(spots)
	if at > s.i && first.last().Kind != ins.InFirst && first.last().Kind != ins.InRing { // working into back half of stitches
		return spots{}, -1
	}
	return first, to
}

// firstEnd is where what goes into a place that is told first ends: of a ring all that is listed, behind a colon or for each of several places
// (all) the stitches that are told no place of their own, else up to a comma behind which no 'and' comes.
func (s *sequence) firstEnd(end int, verb, ring, all bool) int {
	if twin := s.twinEnd(end); twin > 0 {
		return twin
	}
	joined := false
	for ; end < len(s.t) && !s.at(end).Is(".", ";", "rep", "repeat") && !isStar(s.at(end)); end++ {
		joined = joined || s.at(end).Is("and", "&") && s.at(end-1).Kind != 'g'
		switch {
		case !s.at(end).Is(","):
		case ring && !s.at(end+1).Is("join", "sl", "ss", "slst", "turn", "end", "ending", "close", "pull", "do"):
		case !ring && all && !s.placedAhead(end+1):
		case ring || joined || !s.andAhead(end+1) && !(verb && s.listAhead(end+1)):
			return end
		}
	}
	return end
}

// placedAhead reports whether the clause at i is told a place of its own, or is none of a list of stitches: sl st in next sc; join; ch 1, turn.
func (s *sequence) placedAhead(i int) bool {
	if s.at(i).Kind != 'n' && !s.thingAt(i) {
		return true
	}
	for ; i < len(s.t) && !s.at(i).Is(",", ".", ";"); i++ {
		if s.at(i).Is("in", "into", "to", "next", "each", "around", "times") || s.at(i).Kind == 'g' {
			return true
		}
	}
	return s.at(i).Is(",") && s.at(i+1).Is("turn")
}

// endsRow passes words before what a row ends with, where no repeat stands before them: end row with dc in last sc.
func (s *sequence) endsRow() bool {
	j := s.i + 1
	if !s.at(s.i).Is("end", "ending", "ends", "finish", "finishing") || s.closed != nil || !s.line.IsRow() || !s.r.crochet {
		return false
	}
	if _, row := text.RowWord(s.at(j).S); row {
		j++
	}
	if _, to := s.named("stitch", j+1); !s.at(j).Is("with", "by") || to < 0 {
		return false
	}
	s.add(&ins.Nothing{}, s.i, j+1)
	s.i = j + 1
	return true
}

// timesFirst reads how often a bracket is worked that stands behind it: 6 x (sc, inc).
func (s *sequence) timesFirst() bool {
	if s.at(s.i).Kind != 'n' || s.i > 0 && s.at(s.i-1).Kind != 'p' && s.at(s.i-1).Kind != 'g' {
		return false
	}
	v, to := s.named("times", s.i)
	if n := s.at(s.i).Num; to < 0 && s.r.crochet && n.By == nil && n.All > 0 { // 6 (sc, inc), 6*(sc, inc)
		v, to = often{n: n}, s.i+1
		if s.at(to).Is("*", "x") {
			to++
		}
		if !s.listed(s.at(to).Sub) {
			return false
		}
	}
	if to < 0 || to >= len(s.t) || v.(often).more || len(s.t[to].Sub) < 2 || s.countsIn(s.t[to].Sub) != nil && !s.listed(s.t[to].Sub) {
		return false
	}
	k := len(s.out)
	s.i, s.timed = to, true
	s.bracket(s.at(to))
	if s.timed = false; len(s.out) == k+1 {
		if r, ok := s.out[k].(*ins.Repeat); ok && r.Until.Kind == ins.NoExtent && r.Times.By == nil && r.Times.All == 1 {
			r.Times = v.(often).n
		}
	}
	return true
}

// listed reports whether a bracket holds several stitches, with a comma between two.
func (s *sequence) listed(sub []text.Token) bool {
	at := slices.IndexFunc(sub, func(t text.Token) bool { return t.Is(",", "+") })
	return at > 0 && s.within(sub[:at]).opensStitch() && s.within(sub[at+1:]).opensStitch()
}

// opensStitch reports whether tokens begin with a stitch, or so many of one.
func (p *parser) opensStitch() bool {
	return p.thingAt(0) || p.at(0).Kind == 'n' && p.thingAt(1)
}

// allIn reads a list of stitches that all go into the place behind it: sc, hdc, dc all in next st.
func (s *sequence) allIn() bool {
	if s.depth > 0 && !s.r.crochet || !s.r.crochet || s.at(s.i).Kind != 'n' && !s.thingAt(s.i) {
		return false
	}
	at := s.i
	for at < len(s.t) && (s.at(at).Kind == 'n' || s.at(at).Is(",", "and", "&", "+") || s.thingAt(at)) {
		at++
	}
	all := at
	for (s.at(at).Is("all", "together") || s.at(at).Is("worked") && s.at(at-1).Is("ch", "chain")) && at < all+2 { // 1 long, 1 ch worked in every st
		at++
	}
	chained := s.at(all-1).Is("ch", "chain") || s.at(all-2).Is("ch", "chain") // 2 dc, ch 1 in next sp: a chain goes into no place alone
	if at == all && !chained || !s.at(at).Is("in", "into") || s.at(all-1).Is(",") && all == s.i+1 {
		return false
	}
	v, to := s.named("places", at)
	if to < 0 {
		return false
	}
	before := len(s.line.Unread)
	items := s.within(s.t[s.i:all]).sequence()
	if len(s.line.Unread) > before || !working(items) || slices.ContainsFunc(items, placedOrNone) || chained && !slices.ContainsFunc(items, is[*ins.Stitch]) {
		s.line.Unread = s.line.Unread[:before]
		return false
	}
	s.add(&ins.Repeat{Body: items, Places: v.(spots).list, Times: ins.N(1), Stop: -1}, s.i, to)
	s.i = to
	return true
}

// placeLast reads a place behind a comma, for the stitches and chains before it that have none: *1 dc, 1 ch, into
// next st; rep from *.
func (s *sequence) placeLast() bool {
	if s.sep != "," || !s.at(s.i-1).Is(",") || !s.at(s.i).Is("in", "into") || !s.r.crochet {
		return false
	}
	v, to := s.named("places", s.i)
	if to < 0 || to < len(s.t) && s.at(to).Kind != 'p' {
		return false
	}
	k, stitches := len(s.out), 0
	for k > max(s.star, 0) && !placedOrNone(s.out[k-1]) {
		if k--; is[*ins.Stitch](s.out[k]) {
			stitches++
		}
	}
	if stitches == 0 {
		return false
	}
	r := &ins.Repeat{Body: append([]ins.Item(nil), s.out[k:]...), Places: v.(spots).list, Times: ins.N(1), Stop: -1}
	at := s.out[k].Span()
	s.out = s.out[:k]
	if end := s.span(to-1, to-1); end.Line == at.Line {
		at.End = end.End
	}
	r.Put(at)
	s.add(r, s.i, to)
	s.i = to
	return true
}

// butLast reads 'except' behind a stitch in each place, which leaves out the last one: sc in each st except 2 sc in last st; dc in
// each st except the last.
func (s *sequence) butLast() bool {
	k := len(s.out) - 1
	if k < 0 || !s.at(s.i).Is("except") || s.depth > 0 {
		return false
	}
	st, ok := s.out[k].(*ins.Stitch)
	if !ok || len(st.Places) != 1 || st.Places[0].Kind != ins.InEach || st.Places[0].Extent.Kind != ins.NoExtent && st.Places[0].Extent.Kind != ins.ToEnd {
		return false
	}
	to := s.i + 1
	if s.at(to).Is("last", "final") && (to+1 >= len(s.t) || s.at(to+1).Is(",", ".", ";", "st", "stitch")) { // except the last
		if to++; s.at(to).Is("st", "stitch") {
			to++
		}
	}
	end := to
	for end < len(s.t) && !s.at(end).Is(".", ";") && !s.at(end).Is("last", "final") {
		end++
	}
	if !s.at(end).Is("last", "final") || end > to+6 {
		return false
	}
	st.Places[0].Extent = ins.Extent{Kind: ins.ToLast, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: s.span(s.i, to-1)}
	s.add(&ins.Nothing{}, s.i, to)
	s.i = to
	return true
}

// placeBehind reads a place that a remark parts from its stitch: 8 dc (counts as shell) in 4th ch from hook.
func (s *sequence) placeBehind() bool {
	k := len(s.out) - 1
	if k < 0 || s.i == 0 || s.at(s.i-1).Kind != 'g' || !s.at(s.i).Is("in", "into") {
		return false
	}
	st, ok := s.out[k].(*ins.Stitch)
	v, to := s.named("places", s.i)
	if !ok || len(st.Places) > 0 || to < 0 {
		return false
	}
	st.Places = v.(spots).list
	st.At.End = max(st.At.End, s.span(to-1, to-1).End)
	s.i = to
	return true
}

// andAhead reports whether a list of stitches goes on to an 'and' before its clause ends, and no
// other place is named before it.
func (s *sequence) andAhead(i int) bool {
	for k := i; k < len(s.t) && !s.at(k).Is(".", ";", "in", "into", "skip", "sk", "miss", "rep", "repeat") && !isStar(s.at(k)); k++ {
		if s.at(k).Is("and", "&") {
			return true
		}
	}
	return false
}

// twinEnd is where a stitch, chains and the same stitch end that alone stand up to the end of the clause: in next dc make dc, ch 1,
// dc. It is 0 if they do not.
func (s *sequence) twinEnd(i int) int {
	one := func(i int) (string, int) {
		if s.at(i).Kind == 'n' {
			i++
		}
		return s.at(i).S, i + 1
	}
	first, i := one(i)
	if !s.at(i).Is(",") || !s.at(i+1).Is("ch", "chain") || s.at(i+2).Kind != 'n' || !s.at(i+3).Is(",") {
		return 0
	}
	second, to := one(i + 4)
	if second != first || to < len(s.t) && !s.at(to).Is(".", ";", "rep", "repeat") && !isStar(s.at(to)) {
		return 0
	}
	return to
}

// listAhead reports whether nothing but stitches, each with its number, stands up to the end of the clause.
func (s *sequence) listAhead(i int) bool {
	k := i
	for ; k < len(s.t) && !s.at(k).Is(".", ";", "rep", "repeat"); k++ {
		if t := s.at(k); t.Is("in", "into", "skip", "sk", "miss", "turn", "join", "ss", "next", "each") || isStar(t) || t.Kind == 'g' {
			return false
		}
	}
	return s.at(k).Is(";", "rep", "repeat") && s.at(i).Kind == 'n'
}

func (s *sequence) knits() bool { return !s.r.crochet }

// otherWearer passes what a row says once more for the other of two wearers: boy: k2, yo, k2tog, k to end; girl: k to last 4 sts …
func (s *sequence) otherWearer() bool {
	wearer := func(i int) string {
		if s.at(i).Is("for") {
			i++
		}
		for _, w := range []string{"boy", "girl"} {
			if s.at(i).Is(w, w+"s") {
				return w
			}
		}
		return ""
	}
	one := wearer(s.i)
	if one == "" || s.depth > 0 || !working(s.out) || s.at(s.i-1).Kind == 'w' || !slices.ContainsFunc(s.line.Words, func(w ins.Word) bool {
		return w.Kind == 'w' && strings.TrimSuffix(w.S, "s") != one && (w.S == "boy" || w.S == "girl" || w.S == "boys" || w.S == "girls")
	}) {
		return false
	}
	to := s.i
	for to < len(s.t) && !s.at(to).Is(".") && wearer(to) != map[string]string{"boy": "girl", "girl": "boy"}[one] {
		to++
	}
	s.add(&ins.Nothing{}, s.i, to)
	s.i = to
	return true
}

// loopSaid reads 'working in back loops only': for what follows in the row.
func (s *sequence) loopSaid() bool {
	v, to := s.named("loop", s.i)
	if to < 0 || !(to >= len(s.t) || s.at(to).Kind == 'p' || s.at(to).Is("throughout", "from", "of")) {
		return false
	}
	if s.at(to).Is("of") {
		return false
	}
	if s.at(to).Is("throughout") {
		to++
	}
	s.r.loop = v.(ins.Loop)
	s.add(&ins.Nothing{}, s.i, to)
	if s.i = to; s.at(to).Is(":") { // BLO: 18 sc
		s.i++
	}
	return true
}

// noted passes a sentence that tells how the work should look: Note: Each stitch should have 2 dc in it.
func (s *sequence) noted() bool {
	if !s.at(s.i).Is("note") || !s.at(s.i+1).Is(":") {
		return false
	}
	end := s.i + 2
	for end < len(s.t) && s.t[end].Kind != 'g' && !s.at(end).Is(".") {
		end++
	}
	is := func(words ...string) bool {
		return slices.ContainsFunc(s.t[s.i:end], func(t text.Token) bool { return t.Is(words...) })
	}
	if !is("should") || is("count", "counts", "counted", "work", "repeat") {
		return false
	}
	s.add(&ins.Nothing{}, s.i, end)
	s.i = end
	return true
}

// titled passes what a row is called before its instructions: Decrease row – *sc2tog, sc in next st; rep from * around.
func (s *sequence) titled() bool {
	_, row := text.RowWord(s.at(s.i + 1).S)
	if !row || working(s.out) || !s.at(s.i).Is("inc", "dec", "increase", "decrease") || !s.at(s.i+2).Is("-", "–", "—", "--", ":") {
		return false
	}
	s.add(&ins.Nothing{}, s.i, s.i+3)
	s.i += 3
	return true
}

// item reads the instruction at i, the one that goes furthest.
func (s *sequence) item(i int) bool {
	var best any
	to, from := -1, i
	for _, k := range itemIDs {
		if v, e := s.rule(k, i); e > to {
			best, to = v, e
		}
	}
	if to <= i {
		return false
	}
	n, ok := best.(ins.Item)
	if !ok {
		return false
	}
	if is[*ins.Stitch](n) && s.at(to).Is("apart") { // 6 sc apart
		s.add(&ins.Nothing{}, from, to+1)
		s.i = to + 1
		return true
	}
	if r, ok := n.(*ins.Repeat); ok && r.Span().Line == 0 {
		for _, b := range r.Body {
			if b.Span().Line == 0 {
				b.Put(s.span(from, to-1))
			}
		}
	}
	if st, ok := n.(*ins.Stitch); ok {
		s.colour(st, &to)
		s.behindSkipped(st)
	}
	if is[*ins.Stitch](n) && !s.other && s.underside(from, to) {
		s.other = true
		s.add(&ins.Nothing{Under: true}, from, to)
	}
	s.add(n, from, to)
	s.i = to
	s.r.began = true
	s.ribOf(from, to)
	return true
}

// ribOf takes a stitch that is worked so many times together with the one before it, if they are the two of a rib: k1, p1 four times.
func (s *sequence) ribOf(from, to int) {
	k := len(s.out) - 1
	if k < 1 || s.sep != "," || s.r.crochet {
		return
	}
	a, ok := s.out[k-1].(*ins.Stitch)
	b, ok2 := s.out[k].(*ins.Stitch)
	if !ok || !ok2 || a.Kind == nil || b.Kind == nil || !(a.Kind.ID == "k" && b.Kind.ID == "p" || a.Kind.ID == "p" && b.Kind.ID == "k") || len(a.Places)+len(b.Places) > 0 || a.N.By != nil || a.N.All != 1 {
		return
	}
	times := b.N
	if n := s.at(from + 1); n.Kind == 'n' && n.Num.By == nil && n.Num.All == 1 && to > from+2 { // p1 four times
		if _, end := s.named("times", from+2); end != to {
			return
		}
	} else if to != from+2 || b.N.By != nil || b.N.All != 1 || s.at(to).Kind != 'g' {
		return
	} else if v, end := s.within(s.at(to).Sub).named("times", 0); end != len(s.at(to).Sub) || v.(often).more {
		return
	} else { // p1 (4x)
		times = v.(often).n
		s.i++
	}
	one := *b
	one.N = ins.N(1)
	s.out = s.out[:k-1]
	r := &ins.Repeat{Body: []ins.Item{a, &one}, Times: times, Stop: -1}
	r.Put(a.Span())
	s.add(r, from, s.i)
}

// underside reports whether the words of a stitch say that it goes along the other side of a chain.
func (s *sequence) underside(from, to int) bool {
	if !s.r.crochet {
		return false
	}
	side := false
	for i := from; i < to; i++ {
		if side && s.at(i).Is("ch", "chs", "chain", "chains") {
			return true
		}
		if s.at(i).Is("side") && i == to-1 && s.at(i-2).Is("down", "along", "up", "back") { // read as how far it goes, in a row that begins in a chain
			return true
		}
		side = side || s.at(i).Is("underside") || s.at(i).Is("other", "opposite", "second", "bottom", "free", "unused") && s.at(i+1).Is("side", "edge", "loop", "loops", "lp", "lps")
	}
	return false
}

// colour takes the yarn that stands behind a stitch: k4 MC, sc 2 in B.
func (s *sequence) colour(st *ins.Stitch, to *int) {
	i := *to
	if s.at(i).Is("in", "with", "using") {
		i++
	}
	if name, after := s.yarnAt(i); name != "" && !s.at(after).Is(":") {
		st.Colour, *to = name, after
	} else if name := s.yarnIn(s.at(i)); name != "" && (s.at(i+1).Kind == 'p' || i+1 == len(s.t)) { // sc 4 (A), sc 7 (B)
		st.Colour, *to = name, i+1
	}
}

// yarnIn is the yarn that a bracket names and nothing else: (A), [MC]. Empty: it names none.
func (s *sequence) yarnIn(t *text.Token) string {
	if t.Kind != 'g' || !s.line.IsRow() {
		return ""
	}
	q := &sequence{parser: s.within(t.Sub)}
	if name, to := q.yarnAt(0); to == len(t.Sub) && q.namesYarn(q.at(to-1)) {
		return name
	}
	return ""
}

// yarnAlone takes up a yarn that is named alone before what is worked in it: A: 4 sc; [B] sc in next 7; A (sc in next 4).
func (s *sequence) yarnAlone() bool {
	name, to := s.yarnIn(s.at(s.i)), s.i+1
	t := s.at(s.i)
	first := s.i == 0 && t.Cap && len(t.S) == 1 && t.S[0] <= 'h' && s.r.colourNamed('a') // Row 5: C. As row 1
	if t.Kind == 'w' && s.line.IsRow() && (first || s.namesYarn(t)) {
		name, to = s.yarnAt(s.i)
	}
	if name == "" {
		return false
	}
	if k := len(s.out) - 1; k >= 0 && (s.at(s.i-1).Kind == 'g' || s.at(s.i-1).Is("/")) && coloured(s.out[k:], name) { // (k4)A, k4/A
		s.i = to
		return true
	}
	switch {
	case s.at(to).Is(":", "-", "--"):
		to++
	case first && s.at(to).Is("."):
		s.add(&ins.Nothing{Colour: name}, 0, to)
		s.i = to
		return true
	}
	if !s.beginsItem(to) && s.at(to).Kind != 'g' {
		return false
	}
	s.add(&ins.Nothing{Colour: name}, s.i, to)
	s.i = to
	return true
}

// coloured gives stitches that name no yarn one, and reports whether there are any.
func coloured(list []ins.Item, name string) (any bool) {
	for _, n := range list {
		switch n := n.(type) {
		case *ins.Repeat:
			any = coloured(n.Body, name) || any
		case *ins.Stitch:
			if n.Colour == "" {
				n.Colour, any = name, true
			}
		}
	}
	return any
}

// yarnNames are words that name a yarn by themselves.
var yarnNames = set("mc cc main contrast white black red blue green yellow pink brown grey gray orange purple cream beige navy natural gold")

// yarnAt is the yarn that is named at i, and where its name ends; none if none is.
func (s *sequence) yarnAt(i int) (name string, to int) {
	if s.at(i).Is("color", "colour", "col", "yarn", "shade", "your") {
		i++
	}
	t := s.at(i)
	letter := t.Kind == 'w' && len(t.S) == 1 && t.S[0] >= 'a' && (t.Cap && t.S[0] <= 'h' || (t.Cap || t.Glued) && s.r.colourNamed(t.S[0]))
	numbered := t.Kind == 'n' && t.Num.By == nil && t.Num.All > 0 && t.Num.All < 10 && s.at(i-1).Is("color", "colour")
	other := t.Is("main", "contrast") && s.at(i+1).Is("pattern", "patt", "piece", "part", "body", "section", "panel", "fabric", "needle", "needles")
	if other || !letter && !yarnNames[t.S] && !numbered && s.declaredAt(i) == "" {
		return "", i
	}
	name = strings.ToUpper(t.S)
	switch {
	case numbered:
		name = "COLOUR " + name
	case t.Is("main", "contrast"):
		name = s.r.shortFor(name)
	}
	i++
	if s.at(i).Kind == 'n' && s.at(i).Glued {
		name += s.at(i).S
		i++
	}
	if s.at(i).Kind == 'w' && s.at(i).Glued { // the cable C4F
		return "", i
	}
	if s.at(i).Is("color", "colour") {
		i++
	}
	return name, i
}

// declaredAt is the short name of a yarn at i that the text declares: M, C1.
func (s *sequence) declaredAt(i int) string {
	t := s.at(i)
	if t.Kind != 'w' || !t.Cap || len(t.S) > 2 {
		return ""
	}
	name := strings.ToUpper(t.S)
	if n := s.at(i + 1); n.Kind == 'n' && n.Glued {
		name += n.S
	}
	if !s.r.yarnNamed(name) {
		return ""
	}
	return name
}

// yarnInLabel is the yarn that the name of a row says in its brackets, or behind it: Row 3 (RS, Color B):, Row 3: White:
func (p *parser) yarnInLabel() string {
	s, open := &sequence{parser: p}, false
	for i := range p.t {
		t := &p.t[i]
		open = (open || t.Is("(", "[", ":")) && !t.Is(")", "]")
		if !open || !t.Is("(", "[", ":", ",", ";", "-", "with", "in", "using") {
			continue
		}
		if name, end := s.yarnAt(i + 1); name != "" && s.at(end).Is(")", "]", ",", ";", ":", "only") {
			return name
		}
	}
	return ""
}

// yarnCastOn is the yarn that a line without a name says stitches are cast on in: Cast on 21 sts in A. Empty: it says none.
func (p *parser) yarnCastOn(l *ins.Line) string {
	if l.Label != nil || !slices.ContainsFunc(l.Body, is[*ins.CastOn]) {
		return ""
	}
	s := &sequence{parser: p}
	for i := range p.t {
		if p.t[i].Is("with", "using", "in") || p.t[i].Is("and") && p.at(i-1).Is("needle", "needles") {
			if name, _ := s.yarnAt(i + 1); name != "" {
				return name
			}
		}
	}
	return ""
}

// goesOn are the words with which a clause begins that says how the work goes on.
var goesOn = set("continue cont work finish complete knit change switch go return join rejoin attach reattach pick use using with resume proceed remainder rest remaining all " +
	"further following begin start")

// goesOnIn is the yarn in which a sentence says that the work goes on: continue in MC; the rest of the hat is worked in black; drop white, pick up
// black. Empty: it says none.
func (p *parser) goesOnIn() (yarn string) {
	s, told, onward := &sequence{parser: p}, true, false
	for i := 0; i < len(p.t); i++ {
		t := &p.t[i]
		switch {
		case t.Is(".", ",", ";", ":", "--", "-", "and", "then", "now", "the"):
			told, onward = true, onward && t.Is("the")
		case told:
			told, onward = false, goesOn[t.S]
			if name, to := s.yarnAt(i); name != "" && (s.at(to).Is("only", "alone") || s.at(to).Is("yarn", "is") && slices.ContainsFunc(p.t[to:], func(t text.Token) bool { return t.Is("rest", "remainder", "remaining") })) {
				yarn = name
			}
		}
		if onward && t.Is("in", "with", "using", "use", "to", "join", "rejoin", "attach", "reattach", "up") {
			if name, _ := s.yarnAt(i + 1); name != "" {
				yarn = name
			}
		}
	}
	return yarn
}

// taken is the yarn that words take up for what follows: with MC; change to B; where work is told, in MC too.
func (s *sequence) taken(from, to int, in bool) string {
	for i := from; i < to; i++ {
		t := s.at(i)
		if t.Kind == 'g' { // (change to white)
			q := &sequence{parser: s.within(t.Sub)}
			if name := q.taken(0, len(q.t), in); name != "" {
				return name
			}
		}
		if !t.Is("with", "using", "to", "in") && !(in && t.Is("of", "rows", "rounds", "rnds", "row", "round", "rnd", "join", "attach", "up")) {
			continue
		}
		if name, end := s.yarnAt(i + 1); name != "" && end <= to && (in || !t.Is("in") || i == from && end == to) {
			return name
		}
	}
	return ""
}

// inColour reads so many stitches by their yarn alone: 1B, 2 MC, (A) x 5, B x 3, A9. In crochet they are the one stitch that the
// text names.
func (s *sequence) inColour() bool {
	name, n, to := s.countInYarn(s.i)
	if name == "" || !s.line.IsRow() || n.By == nil && n.All < 1 || s.at(to).Kind == 'w' && !s.at(to).Is("and", "then", "turn", "join", "around", "across") {
		return false
	}
	kind := cmp.Or(s.r.oneStitch(), s.likeBefore())
	if s.r.crochet && kind == nil {
		return false
	}
	s.add(&ins.Stitch{Kind: kind, N: n, Colour: name}, s.i, to)
	s.i = to
	return true
}

// idle reports whether what stands in a bracket moves no stitch.
func (s *sequence) idle(sub []text.Token) bool {
	return !s.namesOwn(sub) && !s.inYarns(sub) && s.neutralAll(sub) || s.tallies(sub)
}

// inYarns reports whether a bracket of a row begins with stitches by their yarn alone: (MC 1, CC 3).
func (s *sequence) inYarns(sub []text.Token) bool {
	q := &sequence{parser: s.within(sub)}
	name, _, to := q.countInYarn(0)
	return s.line.IsRow() && name != "" && q.at(to).Is(",", ";")
}

// verbOfYarns reports whether a verb leads to a stretch that tells its stitches by their yarns alone.
func (s *sequence) verbOfYarns(t *text.Token) bool {
	if !t.Is("k", "p", "knit", "purl") || !s.line.IsRow() {
		return false
	}
	next := s.at(s.i + 1)
	if isStar(next) {
		name, _, to := s.countInYarn(s.i + 2)
		return name != "" && s.at(to).Is(",", ";")
	}
	return next.Kind == 'g' && s.inYarns(next.Sub)
}

// countInYarn is a yarn with a number of stitches beside it, and where that ends.
func (s *sequence) countInYarn(i int) (name string, n ins.Num, to int) {
	t, next := s.at(i), s.at(i+1)
	if (t.Is("mc") || next.Is("mc")) && !s.r.mainYarn() { // a magic circle
		return "", n, i
	}
	if t.Kind == 'n' {
		name, to = s.yarnOfCount(i + 1)
		return name, t.Num, to
	}
	sub := s.t[i:min(i+1, len(s.t))]
	if t.Kind == 'g' {
		sub = t.Sub
	}
	if len(sub) == 0 || len(sub) > 2 || !sub[0].Cap || sub[0].Kind != 'w' || s.within(sub).thingAt(0) || s.namesOwn(sub) {
		return "", n, i
	}
	for _, w := range sub {
		name = strings.TrimSpace(name + " " + strings.ToUpper(w.S))
	}
	switch {
	case next.Is("x", "×", "*") && s.at(i+2).Kind == 'n':
		return name, s.at(i + 2).Num, i + 3
	case next.Kind == 'n' && s.namesYarn(&sub[0]) && (len(name) == 1 || !next.Glued) && (next.Glued || i+2 >= len(s.t) || s.parts(i+2)):
		return name, next.Num, i + 2
	}
	return "", n, i
}

// yarnOfCount is the yarn behind a number of stitches: 4 A; 7 sts in B.
func (s *sequence) yarnOfCount(i int) (string, int) {
	if s.at(i).Is("st", "sts", "stitch", "stitches") {
		i++
	}
	if s.at(i).Is("in", "with", "using") {
		i++
	}
	next := s.at(i)
	name, to := s.yarnAt(i)
	if len(next.S) == 1 && !next.Glued && !s.namesYarn(next) && s.declaredAt(i) == "" || next.Is("main", "contrast") {
		name = ""
	}
	return name, to
}

// namesYarn reports whether a word in capitals is the short name of a yarn: MC, CC, or a letter by which the text calls one.
func (s *sequence) namesYarn(t *text.Token) bool {
	return t.Is("mc", "cc") || t.Cap && (len(t.S) == 1 && s.r.colourNamed(t.S[0]) || s.r.yarnNamed(strings.ToUpper(t.S)))
}

// changesYarn passes a sentence that says how a yarn is changed, and takes up the one that it names: to change colours on the
// 11th dc, yo and draw through with white.
func (s *sequence) changesYarn() bool {
	if !s.at(s.i).Is("to") || !s.at(s.i+1).Is("change") || !s.at(s.i+2).Is("color", "colors", "colour", "colours", "yarn", "yarns") {
		return false
	}
	end := s.i
	for end < len(s.t) && !s.at(end).Is(".", ";") {
		end++
	}
	s.add(&ins.Nothing{}, s.i, end)
	s.i = end
	return true
}

// tellsShaping passes words that say how an increase or a decrease is made: increasing 1 sc—to inc 1 sc, make 2 sc in 1 sc.
func (s *sequence) tellsShaping() bool {
	at := s.i + 1
	for s.at(at).Is("make", "a", "an", "work") {
		at++
	}
	if !s.r.crochet || !s.at(s.i).Is("to") || s.i > 0 && s.at(s.i-1).Kind != 'p' || !s.at(at).Is("inc", "increase", "dec", "decrease") {
		return false
	}
	end := at
	for end < len(s.t) && !s.at(end).Is(".", ";", "--") {
		end++
	}
	if !slices.ContainsFunc(s.t[at:end], func(t text.Token) bool { return t.Is(",", ":") }) {
		return false
	}
	s.add(&ins.Nothing{}, s.i, end)
	s.i = end
	return true
}

// likeBefore is the stitch of a knitted row that stands right before stitches told by their yarn alone: knit 3 white, 1 black.
func (s *sequence) likeBefore() *stitch.Stitch {
	if k := len(s.out) - 1; k >= 0 {
		if st, ok := s.out[k].(*ins.Stitch); ok && st.Colour != "" && st.Kind != nil && st.Kind.Craft == stitch.Knitting && st.Kind.Uses == 1 {
			return st.Kind
		}
	}
	return nil
}

// oneStitch is the stitch that a text of crochet names if it names but one beside chains and slip stitches.
func (r *Reader) oneStitch() *stitch.Stitch {
	if !r.crochet {
		return nil
	}
	if r.sole == nil {
		r.sole = new(*stitch.Stitch)
		for n, line := range r.x.Src {
			p := r.parser(text.Lex(line, n+1), &ins.Line{})
			for i := range p.t {
				v, to := p.named("kind", i)
				if to < 0 {
					continue
				}
				switch k := v.(thing).Kind; {
				case k == nil || k.Craft != stitch.Crochet || k.Uses != 1 || k.ID == "ch" || k.ID == "slst":
				case *r.sole == nil:
					*r.sole = k
				case *r.sole != k:
					*r.sole = nil
					return nil
				}
			}
		}
	}
	return *r.sole
}

// bareNumber reads a number alone between increases and decreases, so many stitches as the row has them: 3, inc, 7, inc.
func (s *sequence) bareNumber() bool {
	alone := func(i int) bool { return i < 0 || i >= len(s.t) || s.at(i).Is(",", ";", ".") }
	if s.at(s.i).Kind != 'n' || !alone(s.i-1) || !alone(s.i+1) && s.at(s.i+1).Kind != 'g' || !s.line.IsRow() ||
		!slices.ContainsFunc(s.t, func(t text.Token) bool { return t.Is("inc", "dec", "increase", "decrease") }) {
		return false
	}
	s.add(&ins.Stitch{N: s.at(s.i).Num}, s.i, s.i+1)
	s.i++
	return true
}

// insertsAnew reports whether the hook goes in for a stitch that is told in words: it is not the first of its row, and no loop was
// dropped from it before.
func (s *sequence) insertsAnew() bool {
	return s.r.crochet && working(s.out) && s.at(s.i).Is("insert", "inserting") && s.at(s.i+1).Is("hook") && !slices.ContainsFunc(s.t[:s.i], func(t text.Token) bool {
		return t.Is("drop", "dropping", "dropped", "remove", "removing", "slip", "sl", "withdraw", "take", "pull", "draw", "slipknot", "knot")
	})
}

// clause reads what no form fits: words that move no stitch are passed; what may mean
// something is not read.
func (s *sequence) clause() {
	end := s.i
	for end < len(s.t) && !s.parts(end) {
		end++
	}
	for j := s.i + 1; j < end; j++ { // with A, in words before an instruction
		if s.at(j-1).Kind == 'n' && s.at(j).Is("mm", "cm", "hook", "needle", "needles") { // with 4 mm hook
			continue
		}
		if !s.neutralFrom(s.t[s.i:j], j-s.i-1-neutralReach) {
			break
		}
		if s.at(j).Kind == 'n' && s.at(j-1).Is("color", "colour", "yarn", "shade", "size", "no", "number") {
			continue
		}
		if s.leadsToPlace(j) {
			continue
		}
		if s.beginsItem(j) {
			s.add(&ins.Nothing{}, s.i, j)
			s.i = j
			return
		}
	}
	if (s.neutral(s.t[s.i:end]) || makesUp(s.t[s.i:end]) || s.r.crochet && handsHook(s.t[s.i:end])) && !s.insertsAnew() && !s.mistyped(s.i, end) && !s.strange(s.i, end) {
		s.add(&ins.Nothing{}, s.i, end)
		s.i = end
		return
	}
	from := s.i
	s.i = max(end, s.i+1)
	if !firm(s.out) && s.prose(s.sentence(from)) {
		s.add(&ins.Nothing{}, from, s.i)
		return
	}
	s.unread(from, s.i)
}

// leadsToPlace reports whether the word before j only leads to a place: in all dc.
func (s *sequence) leadsToPlace(j int) bool {
	return s.at(j-1).Is("in", "into", "each", "every", "next", "last", "first", "of", "to", "same", "other") || s.at(j-1).Is("from") && s.at(j).Is("ch", "chain") || s.at(j-1).Is("all", "both") && s.at(j-2).Is("in", "into")
}

// fixed passes a clause about a thing that is put on: place the eyes between rounds 9 & 10 with 8 sts between.
func (s *sequence) fixed() bool {
	end := s.i + 1
	for end < len(s.t) && !s.parts(end) {
		end++
	}
	if !fixes(s.t[s.i:end]) {
		return false
	}
	for s.at(end).Is("&") && s.at(end+1).Kind == 'n' {
		for end++; end < len(s.t) && !s.parts(end); end++ {
		}
	}
	s.add(&ins.Nothing{}, s.i, end)
	s.i = end
	return true
}

// mistyped reports whether a clause is one word that looks like an abbreviation that no one knows, or like
// a word of the trade with a wrong letter: among the instructions of a row it is more likely a stitch than words.
func (s *sequence) mistyped(i, end int) bool {
	w := s.at(i)
	if end != i+1 || w.Kind != 'w' || len(w.S) < 2 || len(s.out) == 0 || s.line == nil || s.line.Label == nil {
		return false
	}
	if !strings.ContainsAny(w.S, "aeiouy") {
		return !w.Is("st", "sts", "dnt", "sp", "sps", "xs", "xl", "mc", "cc", "ws", "rs", "pm", "sm", "rm")
	}
	near := finding.Nearest(w.S, tradeWords)
	return len(w.S) > 4 && !fillers[w.S] && near != "" && near != w.S && near+"s" != w.S
}

// code reports whether a clause within a row of knitting is a short name without vowels that nobody has told: 2/1/2 RPC.
func (s *sequence) code(i, end int) bool {
	for ; i < end-1; i++ {
		if t := s.at(i); t.Kind != 'n' && t.Kind != 'f' && !t.Is("/", "-") {
			return false
		}
	}
	last := s.at(end - 1)
	return last.Kind == 'w' && len(last.S) > 2 && !strings.ContainsAny(last.S, "aeiouy") && !telling[last.S] && !fillers[last.S] && !last.Is("sts", "rnd", "rnds", "rws", "dpn", "dpns", "mths")
}

// strange reports whether a clause within a row is a name of stitches that nobody has told: left-front-cable.
func (s *sequence) strange(i, end int) bool {
	if s.line == nil || s.line.Label == nil || len(s.out) == 0 || end > i+6 {
		return false
	}
	if !s.r.crochet && s.code(i, end) {
		return true
	}
	for _, t := range s.t[i:end] {
		if t.Kind != 'w' && !t.Is("-") || telling[t.S] || fillers[t.S] {
			return false
		}
	}
	last := s.at(end - 1)
	return last.Is("cable", "cables", "bobble", "bobbles", "knot", "knots", "cross", "twist", "braid", "petal", "pineapple") || strings.HasSuffix(last.S, "stitch") && end > i+1
}

// tradeWords are words that are mistyped.
var tradeWords = []string{"repeat", "around", "across", "popcorn", "cluster", "bobble", "picot", "shell", "treble", "crochet", "increase", "decrease", "together", "between", "double"}

// beginsItem reports whether an instruction that moves stitches begins at j.
func (s *sequence) beginsItem(j int) bool {
	if s.at(j).Kind == 'g' || isStar(s.at(j)) {
		return true
	}
	if !s.thingAt(j) && s.at(j).Kind != 'n' && !verbs[s.at(j).S] {
		return false
	}
	for _, k := range itemIDs {
		if v, e := s.rule(k, j); e > j {
			switch v.(type) {
			case *ins.Nothing, *ins.Turn:
			default:
				return true
			}
		}
	}
	return false
}

// parts reports whether the token at i parts clauses.
func (s *sequence) parts(i int) bool {
	t := s.at(i)
	return t.Kind == 'p' && !t.Is("-", "/", "\"", "%", "'", "”", "″", "$", "@") || t.Kind == 'g' && !s.neutralAll(t.Sub)
}

// sentence is the tokens around i to full stops.
func (s *sequence) sentence(i int) []text.Token {
	from, to := i, i
	for from > 0 && !s.at(from-1).Is(".") {
		from--
	}
	for to < len(s.t) && !s.at(to).Is(".") {
		to++
	}
	return s.t[from:to]
}

// working reports whether instructions are among the items.
func working(list []ins.Item) bool {
	for _, n := range list {
		switch n.(type) {
		case *ins.Nothing, *ins.Unread, *stated, *ins.Turn:
		default:
			return true
		}
	}
	return false
}

// mostCount is how many words a stated count has at most, of all its kinds of stitches.
const mostCount = 80

// counted reads a count that stands in its place as words: - 15 dc, 36 sts remain, you will have 7 spaces.
func (s *sequence) counted() bool {
	if s.depth > 0 || s.withinStars() || s.listsHeld(s.i) || s.at(s.i+1).Is("edge", "selvedge", "selvage") { // ends with 1 edge st
		return false
	}
	lead := s.behindLead()
	if parts := s.countedInParts(lead); parts || !s.mayLead(lead) {
		return parts
	}
	firm := lead > s.i || s.parted() || s.behindJoin()
	end := s.countEnd()
	for _, to := range []int{end, s.lastComma(end)} {
		if to <= s.i {
			continue
		}
		if s.at(to - 1).Is(",") {
			to--
		}
		g := s.countsOf(s.t[s.i:to])
		if g == nil || (len(g) == 1 || s.behindJoin()) && g[0].Unit.Chain || !s.isCount(g, to, firm) ||
			firm && lead == s.i && s.at(s.i).Kind == 'n' && !s.restIsNothing(to) && !s.restIsWords(to) {
			continue
		}
		s.add(s.countAs(g, to), s.i, to)
		s.i = to
		return true
	}
	return false
}

// countAs is what a list of counts that ends at to tells: of the row, of a needle, or on what rows are worked.
func (s *sequence) countAs(g []ins.StitchGroup, to int) ins.Item {
	switch {
	case onNeedle(s.t[s.i:to]):
		return &ins.Nothing{Part: true}
	case s.i > 0 && s.at(s.i-1).Is("on"): // work 9 more rows on 18 tr
		return &ins.Nothing{}
	}
	return &stated{groups: g}
}

// isCount reports whether a list of counts that ends at to is one of the row, and is not told of a needle: with 19 sts, will hold.
func (s *sequence) isCount(g []ins.StitchGroup, to int, firm bool) bool {
	return !(s.at(to).Is(",") && s.at(to+1).Is("will")) && s.meansCount(g, to, firm)
}

// parted reports whether the sign before what is read parts a count from a row. A place from which the row goes on does not:
// from 2nd ch from hook: 23 sc.
func (s *sequence) parted() bool {
	from := len(s.out) > 0 && is[*ins.Skip](s.out[len(s.out)-1])
	return s.sep == "--" || s.sep == "-" || s.sep == "=" || s.sep == ":" && s.i > 1 && !from
}

// behindJoin reports whether the round was just joined: stitches without a place are counted there, and worked no more.
func (s *sequence) behindJoin() bool {
	for _, n := range slices.Backward(s.out) {
		switch n.(type) {
		case *ins.Nothing:
			continue
		case *ins.Join:
			return s.line.IsRow() && slices.ContainsFunc(s.out, pastStart)
		}
		break
	}
	return false
}

// behindLead is where the number of a count may stand: behind the words that lead to it.
func (s *sequence) behindLead() int {
	lead := s.i
	for s.leadsCount(lead) {
		lead++
	}
	return lead
}

// withinStars reports whether a starred stretch is open that a further star ends or repeats.
func (s *sequence) withinStars() bool {
	return s.star >= 0 && slices.ContainsFunc(s.t[s.i:], func(t text.Token) bool { return isStar(&t) })
}

// mayLead reports whether a count may begin with the words up to lead, where its number is.
func (s *sequence) mayLead(lead int) bool {
	first, n := s.at(s.i), s.at(lead)
	if n.Kind != 'n' && n.Kind != 'w' || first.Kind == 'w' && lead == s.i && numerals[first.S] == 0 {
		return false
	}
	if first.Is("leave", "leaving") && s.said(lead, s.countEnd(), "holder", "holders", "needle", "unworked", "thread", "pin") {
		return false
	}
	return lead == s.i || !first.Is("in", "a", "of", "and", "on") || s.at(s.i+1).Kind != 'n'
}

// countEnd is where a count that begins here ends at the latest; here, if that is too far.
func (s *sequence) countEnd() int {
	end := s.i
	for end < len(s.t) && s.at(end).Kind != 'g' && (!s.at(end).Is(".", "--", "=", "turn", "join", "fasten", ";") || s.at(end).Is(";") && s.at(end+1).Kind == 'n' && s.behindJoin()) && !(s.at(end).Is("forming") && end > s.i) {
		if end++; end-s.i > mostCount {
			return s.i
		}
	}
	return end
}

// meansCount reports whether numbers up to the token at to are a count and no work: their words say so, or the row ends with them.
func (s *sequence) meansCount(g []ins.StitchGroup, to int, firm bool) bool {
	last := s.at(to - 1)
	if last.Kind == 'n' && s.at(to-2).Is("needle", "needles", "row", "rnd", "round") { // 25 sts on needle 1
		last = s.at(to - 2)
	}
	if last.Is("inc", "dec", "increase", "decrease") || s.at(s.i+1).Is("inc", "dec") && s.said(s.i, to, "in") || s.intoEach(to) { // 6 inc (12); 1 inc in each st
		return false
	}
	if last.Is("made") && s.at(s.i).Kind == 'n' && s.said(s.i, to, "in", "into") { // 8 sc in 1st ch made
		return false
	}
	if firm || last.Is(remains...) || s.said(s.i, to, "remain", "remains", "total", "altogether", "made") {
		return true
	}
	named, sentence := g[len(g)-1].Any && last.Kind == 'w', s.sep == "." || s.sep == ";"
	switch {
	case len(g) == 1 && last.Kind == 'w' && s.behindAll(to):
		return true
	case named && (sentence || s.sep == ",") && len(s.out) > 0 && s.ended(), named && s.sep == "" && s.i == 0:
		return true
	case sentence && s.ended() && s.restIsNothing(to):
		return true
	}
	return named && s.sep == "" && s.i > 0 && s.ended() && s.restIsNothing(to) && !s.at(s.i-1).Is("next", "last", "first")
}

// behindAll reports whether a number of stitches up to the token at to closes a row that has nothing left: in each ch to end, 24 sc.
func (s *sequence) behindAll(to int) bool {
	return s.sep == "," && s.at(s.i).Kind == 'n' && !s.said(s.i, to, "in", "into") && (to >= len(s.t) || s.at(to).Is(".", ";") || s.at(to).Is(",") && s.at(to+1).Is("turn", "join")) && s.reachedEnd()
}

// reachedEnd reports whether the stitch or the repeat before went on to the end, so that nothing is left.
func (s *sequence) reachedEnd() bool {
	if len(s.out) == 0 {
		return false
	}
	if q, ok := s.out[len(s.out)-1].(*ins.Repeat); ok {
		return q.Until.Kind == ins.ToEnd && !q.Until.Part
	}
	st, ok := s.out[len(s.out)-1].(*ins.Stitch)
	if !ok || len(st.Places) == 0 {
		return false
	}
	last := st.Places[len(st.Places)-1]
	return last.Kind == ins.InEach && last.Extent.Kind == ins.ToEnd
}

// intoEach reports whether words up to the token at to are worked into each stitch: Two sc in each st.
func (s *sequence) intoEach(to int) bool {
	for i := s.i; i+2 < to; i++ {
		if s.at(i).Is("in", "into") && s.at(i+1).Is("each", "every") && s.at(i+2).Is("st", "sts", "stitch", "ch", "sc", "dc", "hdc", "tr", "htr") {
			return true
		}
	}
	return false
}

// onNeedle reports whether a count is that of one needle of several: 25 sts on needle 1.
func onNeedle(t []text.Token) bool {
	if len(t) > 2 && t[0].Kind == 'n' && t[1].Is("st", "sts", "stitch", "stitches", "total") && t[2].Kind == 'p' { // 40 sts, 20 on each needle
		return false
	}
	for i := 1; i < len(t); i++ {
		if (t[i].Kind == 'n' || t[i-1].Is("on") && t[i].Ord > 0 && near(t, i+1).Is("needle")) && (t[i-1].Is("needle", "needles") || t[i].Ord > 0) || (t[i].Is("each") && t[i-1].Is("on") || t[i].Is("per", "each") && near(t, i+1).Is("needle", "dpn")) && (i == len(t)-1 || t[i+1].Is("needle", "dpn")) {
			return true
		}
	}
	return false
}

func (s *sequence) said(from, to int, words ...string) bool {
	for i := from; i < to; i++ {
		if s.at(i).Is(words...) {
			return true
		}
	}
	return false
}

func (s *sequence) lastComma(end int) int {
	for i := s.i + 1; i < end; i++ {
		if s.at(i).Is(",") && (s.restIsWords(i) && s.sep != "=" || !s.thingAt(i+2) && s.at(i+1).Kind != 'n' || s.at(i+1).Is("counting", "including", "excluding")) {
			return i
		}
	}
	return -1
}

// pastStart reports whether an instruction is more than the chain or the ring that a row begins with.
func pastStart(n ins.Item) bool {
	j, joins := n.(*ins.Join)
	return !is[*ins.Chain](n) && !is[*ins.Nothing](n) && (!joins || j.Name != "ring")
}

// ended reports whether the instructions so far may be a whole row.
func (s *sequence) ended() bool {
	if len(s.out) > 0 && !slices.ContainsFunc(s.out, pastStart) && s.line.IsRow() {
		return false // Chain 1. 10 hdc. Magic ring; 6 sc.
	}
	for k := len(s.out) - 1; k >= 0; k-- {
		switch n := s.out[k].(type) {
		case *ins.Nothing, *ins.Turn, *ins.Join, *ins.Fasten:
			if k == 0 {
				return true
			}
		case *ins.Stitch:
			for _, p := range n.Places {
				if p.Kind == ins.InEach || p.Kind == ins.InLast || p.Kind == ins.InTop || p.Kind == ins.InRing {
					return true
				}
			}
			return s.sep == "." || s.sep == ";" || n.Kind != nil && n.Kind.Craft == stitch.Knitting
		case *ins.Repeat, *ins.RepeatRows, *ins.Even, *ins.Shape, *ins.BindEach, *ins.BindOff, *ins.AsFor, *ins.Leave:
			return true
		default:
			return s.sep == "." || s.sep == ";"
		}
	}
	return false
}

// restIsWords reports whether only words that move no stitch follow a comma or a stop at i, to the end of the sentence.
func (s *sequence) restIsWords(i int) bool {
	from, stop := i, s.at(i).Is(".", ";")
	if stop {
		from++
	}
	end := i + 1
	for end < len(s.t) && !s.at(end).Is(".", ";") {
		end++
	}
	if _, to := s.named("neutral", i+1); to == end {
		return true // 48 sts. 2 sts increased
	}
	return (stop || s.sep == "=" && s.at(i).Is(",")) && s.neutral(s.t[from:end])
}

// restIsNothing reports whether nothing follows from i on that makes a stitch.
func (s *sequence) restIsNothing(i int) bool {
	for ; i < len(s.t); i++ {
		t := s.at(i)
		if t.Is("turn", "join", ".", ",", ";", "fasten", "off", "ch", "rep", "repeat", "and", "do", "not") || t.Kind == 'g' {
			if t.Is("rep", "repeat", "fasten", "join", "ch") {
				return true
			}
			continue
		}
		return t.Is("sl", "ss", "slst", "counting", "including", "excluding", "forming") || t.Cap
	}
	return true
}

var (
	countLead = []string{"total", "ought", "you", "will", "find", "that", "should", "have", "now", "in", "made", "about", "there", "are", "of", "leaves", "leaving", "a", "for", "with", "having", "be", "is", "makes", "making", "forming", "giving", "gives", "=", ":", "sts", "stitch", "stitches", "count", "st", "to", "and", "then", "so", "remaining", "approx", "remain"}
	remains   = []string{"remain", "remaining", "rem", "remains", "total", "made", "left", "altogether"}
)

// leadsCount reports whether the word at i may lead to the number of a count: there are 6 sts, to make 6 loops.
func (p *parser) leadsCount(i int) bool {
	return p.at(i).Is(countLead...) || p.at(i).Is("make", "form") && p.at(i-1).Is("to")
}

// countsIn reads a bracket that holds a count and nothing else.
func (p *parser) countsIn(t []text.Token) []ins.StitchGroup {
	if len(t) == 0 || len(t) > 60 || changes(t) {
		return nil
	}
	return p.countsOf(t)
}

// countsOf reads a list of counts that is the whole of the tokens, or nothing.
func (p *parser) countsOf(t []text.Token) []ins.StitchGroup {
	if !mayCount(t) {
		return nil
	}
	q := p.within(p.withoutChange(behindSum(t)))
	i := 0
	for q.leadsCount(i) || q.at(i).Is(",") && i > 0 {
		i++
	}
	var out []ins.StitchGroup
	for {
		if k := q.behindMore(i); k > 0 {
			i, out = k, nil
		}
		g, to := q.groupAt(i)
		if to < 0 {
			return nil
		}
		if k := q.eachSide(to); k > to {
			g.Side, to = true, k
		}
		out = q.addTo(out, g, i)
		to = q.eachNeedle(q.behindCount(to))
		if to >= len(q.t) || to == len(q.t)-1 && q.at(to).Kind == 'g' && q.neutralAll(q.at(to).Sub) {
			return out
		}
		switch i = q.behindAnd(to); {
		case i == to:
			return nil
		case i >= len(q.t):
			return out
		}
	}
}

// behindSum is what a sum of counts makes: 14 + 13 + 14 = 41.
func behindSum(t []text.Token) []text.Token {
	k := slices.IndexFunc(t, func(t text.Token) bool { return t.Is("=") })
	if k > 1 && k < len(t)-1 && t[k-1].Kind == 'n' && slices.ContainsFunc(t[:k], func(t text.Token) bool { return t.Is("+") }) {
		return t[k+1:]
	}
	return t
}

// withoutChange is a list of counts without what it tells, first or last, of how many stitches its row has more or fewer: 2 sts inc; 48 sts.
func (p *parser) withoutChange(t []text.Token) []text.Token {
	q := p.within(t)
	if to := q.changeAt(0); to > 0 && to < len(t) {
		return t[to:]
	}
	for i := range t {
		if t[i].Kind == 'p' && q.changeAt(i+1) == len(t) {
			return t[:i]
		}
	}
	return t
}

// changeAt is where it ends that i tells how many stitches a row has more or fewer, with the sign behind it; -1: it tells none.
func (p *parser) changeAt(i int) int {
	_, to := p.named("num", i)
	if to < 0 {
		return -1
	}
	if p.at(to).Is("st", "sts", "stitch", "stitches") {
		to++
	}
	if !p.at(to).Is("inc", "dec", "increased", "decreased", "inc'd", "dec'd") {
		return -1
	}
	if to++; p.at(to).Kind == 'p' && !isStar(p.at(to)) {
		to++
	}
	return to
}

// changed is by how many stitches a row differs from the one before, if its words say so once: (2 sts dec'd).
func (p *parser) changed(t []text.Token) (out *ins.Change) {
	q := p.within(t)
	for i := range t {
		to := -1
		if i == 0 || t[i-1].Kind == 'p' && !isStar(&t[i-1]) {
			to = q.changeAt(i)
		}
		if to < 0 || !slices.ContainsFunc(t[i:to], func(k text.Token) bool { return k.Is("increased", "decreased", "inc'd", "dec'd") }) {
			continue
		}
		if out != nil || to < len(t) && t[to-1].Kind != 'p' {
			return nil
		}
		fewer := slices.ContainsFunc(t[i:to], func(k text.Token) bool { return strings.HasPrefix(k.S, "dec") })
		out = &ins.Change{N: t[i].Num, Fewer: fewer, At: q.span(i, to-1)}
	}
	return out
}

// addTo adds the count that stands at i to those before it: to the last of them, if both are of stitches of no kind and a plus joins
// them, as in 14 + 2 edge sts.
func (p *parser) addTo(list []ins.StitchGroup, g ins.StitchGroup, i int) []ins.StitchGroup {
	if last := len(list) - 1; last >= 0 && p.at(i-1).Is("+", "plus") && list[last].Any && plainSts(g) {
		list[last].N = list[last].N.Plus(g.N.All)
		return list
	}
	return append(list, g)
}

// plainSts reports whether a count is of stitches of no kind of their own, one number for all sizes.
func plainSts(g ins.StitchGroup) bool {
	return g.N.By == nil && g.Unit.Stitch == nil && g.Unit.Group == nil && !g.Unit.Space && !g.Unit.Chain && !g.Unit.Row
}

// needles are what the stitches of a round are divided over.
var needles = set("needle needles dpn dpns n")

// eachNeedle is behind words at i that divide a count over needles: - 28 (30, 34) sts on each needle. It is i if none stand there.
func (p *parser) eachNeedle(i int) int {
	k := i
	for p.at(k).Is("-", "–", "—", ",", ";", ":", "/", "or", "and", "with", "=") {
		k++
	}
	if p.at(k).Kind != 'n' {
		return i
	}
	_, to := countOn(p.t, k)
	return max(i, to)
}

// eachSide is behind words at i that say a count of each of two sides: 20 sts rem at each side of neck, for each shoulder. It is i
// if none stand there.
func (p *parser) eachSide(i int) int {
	k := i
	for p.at(k).Is(remains...) || p.at(k).Is("now", "live", "on", "at", "for", "to", "in") {
		k++
	}
	if !p.at(k).Is("each", "either", "both", "per") {
		return i
	}
	for k++; p.at(k).Is("of"); k++ {
	}
	if !p.at(k).Is("side", "sides", "shoulder", "shoulders", "half") || p.at(k+1).Is("seam") {
		return i
	}
	k++
	if p.at(k).Is("of") {
		for k++; p.at(k).Is("front", "back", "v", "-", "center", "centre"); k++ {
		}
		if !p.at(k).Is("neck", "neckline", "opening", "work", "placket", "slit", "split", "edge", "sts", "stitches") {
			return i
		}
		k++
	}
	return k
}

// behindAnd is behind signs and words that join counts.
func (p *parser) behindAnd(i int) int {
	for p.at(i).Is(",", "and", "+", ";", "&", "plus", ".") {
		i++
	}
	return i
}

// mayCount reports whether tokens hold a number, and nothing that no count has.
func mayCount(t []text.Token) bool {
	number := false
	for i := range t {
		if t[i].Is("per") && (i+1 == len(t) || !needles[t[i+1].S] && !t[i+1].Is("side")) || isStar(&t[i]) && !t[i].Is("+") { // 18 sts + 6 ch spaces
			return false
		}
		number = number || t[i].Kind == 'n' || numerals[t[i].S] > 0
	}
	return number
}

// groupAt reads the number of one kind of stitch in a count.
func (p *parser) groupAt(i int) (ins.StitchGroup, int) {
	v, to := p.named("num", i)
	if to < 0 || p.at(to).Kind == 'g' || p.legsAt(i) || p.at(to).Glued && p.at(to).Is("in", "ins") || p.at(to).Is("mm", "cm", "hook", "needle", "needles") { // 34 (36) of other sizes; 3in
		return ins.StitchGroup{}, -1
	}
	g := ins.StitchGroup{N: v.(ins.Num), Any: true}
	if p.at(to).Is("x") { // 12 x ch-2 sps
		to++
	}
	if _, next := p.named("loop", to); next >= 0 && p.thingAt(next) { // 12 blsc
		to = next
	}
	if u, next := p.named("unit", to); next >= 0 {
		g.Unit = u.(ins.Unit)
		g.Any = g.Unit.Any() && g.Unit.Word != "corner"
		to = next
	}
	if k := p.ofItsOwn(to); k > to && !(k == to+1 && p.at(to).Is("in", "on")) {
		g.Unit, g.Any, to = ins.Unit{Stretch: true, Word: "thing"}, false, k
	}
	g.At = p.span(i, to-1)
	return g, to
}

// ofItsOwn is where the words end by which a text calls what it counts in a bracket: 8 ch-10 groovy loops, 6 clusters of 3
// dc, 6 corners of [3 dc, ch 2, 3 dc]. It is i if they are no such words.
func (p *parser) ofItsOwn(i int) int {
	k, words := i, 0
	for ; k < len(p.t) && !p.at(k).Is(",", ";", "and", "&", "+", "plus", "."); k++ {
		t := p.at(k)
		of := p.at(k - 1).Is("of")
		switch {
		case t.Kind == 'w' && (weighty[t.S] || t.Is("in", "into", "next", "each", "x", "more", "on", "at", "from", "to", "st", "sts", "made", "total", "with", "for", "per") || verbs[t.S] && !of && !p.thingAt(k)):
			return i
		case t.Kind == 'w' && !t.Is("of", "ch", "chain"):
			words++
		case t.Kind == 'g' && of, t.Kind == 'n' && (of || p.at(k-1).Is("ch", "chain")), t.Is("of", "ch", "chain"):
		default:
			return i
		}
	}
	last := p.at(k - 1)
	if words == 0 || p.depth == 0 || last.Kind == 'w' && !strings.HasSuffix(last.S, "s") && !p.at(k-2).Is("of") && last.Kind != 'g' && !p.thingAt(k-1) {
		return i
	}
	return k
}

// behindMore is where a total begins behind what was made more: 7 more tr, now 29. 0: there is none.
func (p *parser) behindMore(i int) int {
	_, to := p.named("num", i)
	if to < 0 || !p.at(to).Is("more", "other") {
		return 0
	}
	for to < len(p.t) && !p.at(to).Is("now", "total") {
		to++
	}
	return to + 1
}

// lastPlace reports whether a place stands at i and no words about a count: 6 hdc in last, 3 sc in last ch, 2 sc last st.
func (p *parser) lastPlace(i int) bool {
	t := p.at(i + 1)
	if p.at(i).Is("in") {
		return t.Is("last") && !p.at(i+2).Is("row", "rnd", "round")
	}
	ends := i+1 >= len(p.t) || t.Is("st", "sts", "stitch", "sc", "dc", "hdc", "htr", "tr") && i+2 >= len(p.t)
	return p.at(i).Is("last", "first") && ends
}

// behindCount is where words end that tell nothing more of a count: in all, on needle 1.
func (p *parser) behindCount(i int) int {
	for p.at(i).Ord > 0 || p.at(i).Is("in", "total", "made", "remain", "remaining", "rem", "remains", "on", "last", "needle", "needles", "now", "left", "around", "across", "each", "per", "row", "rnd", "round", "altogether", "for", "all", "hook", "worked",
		"this", "after", "sizes", "edge", "neck", "shoulder", "shoulders", "count", "at", "end", "of", "work", "counting", "ch", "first", "as", "side", "center", "front", "back", "sleeve", "body", "st", "sts", "total", "holder", "dc", "beg", "blo", "flo") {
		if p.at(i).Is("dc", "ch", "st", "sts") && i > 0 && p.at(i-1).Kind == 'n' {
			break
		}
		if p.lastPlace(i) {
			break
		}
		if i++; p.at(i-1).Is("needle", "needles", "row", "rnd", "round") && p.at(i).Kind == 'n' && p.at(i+1).Kind != 'w' { // on Needle 1, in Row 5
			i++
		}
	}
	return i
}
