package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

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

// isCount reports whether a list of counts that ends at to is one of the row, and is not told of a needle: with 19 sts, will hold; or the
// slip stitch that closes a round: 12 sc in ring. 1 ss, 1 ch.
func (s *sequence) isCount(g []ins.StitchGroup, to int, firm bool) bool {
	k := g[0].Unit.Stitch
	return (firm || k == nil || k.ID != "slst") && !(s.at(to).Is(",") && s.at(to+1).Is("will")) && s.meansCount(g, to, firm)
}

// parted reports whether the sign before what is read parts a count from a row. A place from which the row goes on does not:
// from 2nd ch from hook: 23 sc.
func (s *sequence) parted() bool {
	from := len(s.out) > 0 && is[*ins.Skip](s.out[len(s.out)-1])
	return s.sep == "--" || s.sep == "-" || s.sep == "=" || s.sep == ":" && s.i > 1 && !from
}

// behindLead is where the number of a count may stand: behind the words that lead to it.
func (s *sequence) behindLead() int {
	lead := s.i
	for s.leadsCount(lead) {
		lead++
	}
	return lead
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

// noName are words that are in no name of a part that is counted.
var noName = set("in into next each x more on at from to st sts made total with for per")

// ofItsOwn is where the words end by which a text calls what it counts in a bracket: 8 ch-10 groovy loops, 6 clusters of 3
// dc, 6 corners of [3 dc, ch 2, 3 dc]. It is i if they are no such words.
func (p *parser) ofItsOwn(i int) int {
	k, words := i, 0
	for ; k < len(p.t) && !p.at(k).Is(",", ";", "and", "&", "+", "plus", ".", "around"); k++ {
		t := p.at(k)
		of := p.at(k - 1).Is("of")
		switch {
		case t.Kind == 'w' && (weighty[t.S] || noName[t.S] || verbs[t.S] && !of && !p.thingAt(k)):
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
	if p.at(k).Is("around") && p.at(k+1).Is("ring", "circle") {
		k += 2
	}
	return k
}

// groupsTold reports whether a bracket counts groups and tells what each of them is: (4, 3dc groups + 2ch).
func groupsTold(t []text.Token) bool {
	return len(t) > 4 && t[0].Kind == 'n' && t[1].Is(",") && t[2].Kind == 'n' && t[3].Kind == 'w' && t[4].Is("group", "groups", "cluster", "clusters", "set", "sets", "shell", "shells")
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

// lastPlace reports whether a place stands at i and no words about a count: 6 hdc in last, 3 sc in last ch, 2 sc last st, 2 dc in
// each remaining st.
func (p *parser) lastPlace(i int) bool {
	t := p.at(i + 1)
	if p.at(i).Is("in") && t.Is("each", "every", "all") { // 2 dc in each remaining st
		k := i + 2
		for p.at(k).Is("remaining", "rem", "other", "of", "following") {
			k++
		}
		return p.at(k).Is("st", "sts", "stitch", "stitches", "sc", "dc", "hdc", "htr", "tr")
	}
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
