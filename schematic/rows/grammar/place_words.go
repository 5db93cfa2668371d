package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

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
	all := s.at(to-1).Is(":") || verb && (first.last().Kind == ins.InEach || first.last().Unit.Space && s.bareToStop(to))
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

// bareToStop reports whether stitches and chains alone stand from i to the end of the sentence: in same loop work sc, hdc, 2 dc, hdc, sc.
func (s *sequence) bareToStop(i int) bool {
	stitches := false
	for ; i < len(s.t) && !s.at(i).Is(".", ";"); i++ {
		t := s.at(i)
		thing := s.thingAt(i)
		if stitches = stitches || thing && !t.Is("ch", "sl", "slst", "ss"); !thing && t.Kind != 'n' && !t.Is(",", "and") || t.Is("sl", "slst", "ss") {
			return false
		}
	}
	return stitches && i < len(s.t)
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
