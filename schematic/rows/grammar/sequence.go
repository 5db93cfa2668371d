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
var itemRules = []string{"stitch", "chain", "skip", "join", "joinyarn", "turn", "leave", "psso", "fasten", "marker", "whole", "neutral"}

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
	began      int         // items before the sentence that is read
}

func (p *parser) sequence() []ins.Item {
	s := &sequence{parser: p, star: -1, stop: -1}
	for s.i < len(p.t) && len(s.out) < maxItems {
		switch t := &p.t[s.i]; {
		case t.Kind == 'p' && isStar(t):
			s.atStar(t)
		case t.Kind == 'p':
			if s.sep = t.S; t.Is(".", ";") {
				s.began = len(s.out)
			}
			s.i++
			s.namedBehindDash(t)
		case t.Kind == 'g' && (s.namesCrossing(t) || s.inColour() || s.yarnAlone()):
		case t.Kind == 'g':
			s.bracket(t)
		case s.verbOfYarns(t): // K *2 A, 3 B; K (2 A, 3 B) twice
			s.i++
		case t.Cap && (s.inColour() || s.yarnAlone()), s.filetSquares(), s.changesYarn(), s.tellsShaping():
		case s.timesFirst(), s.endsRow(), s.shapedAgain():
		case s.alternately(), s.repeat(), s.timesRepeat(), s.listTimes():
		case t.Is("and", "then", "than", "but", "plus", "finally") && s.i+1 < len(p.t):
			s.i++
		case s.loopSaid(), s.noted(), s.titled(), s.effectSaid():
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

// listTimes takes the list of a sentence that ends in a chain, and behind it how often all of it is worked: 3 sc in ring, ch 2, 4 times.
func (s *sequence) listTimes() bool {
	k := s.began
	if k == 0 && len(s.out) > 1 && is[*ins.Chain](s.out[0]) {
		k++
	}
	v, to := s.named("times", s.i)
	if to < 0 || v.(often).more || s.star >= 0 || !s.r.crochet || len(s.out) < k+2 || !is[*ins.Chain](s.out[len(s.out)-1]) {
		return false
	}
	body := slices.Clone(s.out[k:])
	if !slices.ContainsFunc(body, is[*ins.Stitch]) || slices.ContainsFunc(body, func(n ins.Item) bool { return !is[*ins.Stitch](n) && !is[*ins.Chain](n) && !is[*ins.Skip](n) }) {
		return false
	}
	r := &ins.Repeat{Body: body, Times: v.(often).n, Stop: -1}
	at := body[0].Span()
	s.out = s.out[:k]
	s.add(r, s.i, to)
	r.At.Line, r.At.Col = at.Line, at.Col
	s.i = to
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

var (
	countLead = []string{"total", "ought", "you", "will", "find", "that", "should", "have", "now", "in", "made", "about", "there", "are", "of", "leaves", "leaving", "a", "for", "with", "having", "be", "is", "makes", "making", "forming", "giving", "gives", "=", ":", "sts", "stitch", "stitches", "count", "st", "to", "and", "then", "so", "remaining", "approx", "remain"}
	remains   = []string{"remain", "remaining", "rem", "remains", "total", "made", "left", "altogether"}
)
