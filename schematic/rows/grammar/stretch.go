package grammar

import (
	"slices"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

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
	v, to := s.placesAt(s.i)
	if to < 0 {
		return s.i
	}
	r.Places = v
	return to
}

// intoFurther works the stretch that went into a place again in those at j: *sc, 3 dc, sc* in same sp; rep from * to * in next 7 ch-1 sps.
func (s *sequence) intoFurther(j int) bool {
	if s.closed == nil || len(s.closed.Places) == 0 || !s.at(j).Is("in", "into") {
		return false
	}
	v, to := s.placesAt(j)
	if to < 0 {
		return false
	}
	from := s.i
	s.i = to
	s.add(&ins.Repeat{Body: slices.Clone(s.closed.Body), Places: v, Times: ins.N(1), Stop: -1}, from, to)
	return true
}

// placesAt reads places behind in or into at i: into all the next ch-1 spaces.
func (s *sequence) placesAt(i int) ([]ins.Place, int) {
	v, to := s.named("places", i)
	if to < 0 {
		return nil, -1
	}
	return v.(spots).list, to
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
	from := s.i
	if _, to := s.placesAt(from); to > 0 && s.at(from).Is("in", "into") {
		from = to
	}
	for k := from; k < from+4; k++ {
		if s.at(k).Is("rep", "repeat", "repeating") || isStar(s.at(k)) && from > s.i {
			return true
		}
		if s.at(k).Kind != 'p' && !s.at(k).Is("and", "then") {
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
	if starred && s.intoFurther(j) {
		return true
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

// shapedAgain reads in a sentence of its own how often the shaping before it is repeated: Inc 1 st at each end of next row. Repeat this inc every 4 rows
// 7 times.
func (s *sequence) shapedAgain() bool {
	if !s.at(s.i).Is("rep", "repeat") {
		return false
	}
	shape := lastShape(s.out)
	if n := len(s.r.sec.Lines); n > 0 && len(s.out) == 0 && s.i == 0 && s.depth == 0 {
		shape = lastShape(s.r.sec.Lines[n-1].Body)
	}
	if shape == nil || shape.HasTimes {
		return false
	}
	v, to := s.named("clause", s.i)
	add, ok := v.(clause)
	if to < 0 || !ok || shape.Inc == slices.ContainsFunc(s.t[s.i:to], func(t text.Token) bool { return t.Is("dec", "decs", "decrease", "decreases") }) {
		return false
	}
	c := course{Course: shape.Course}
	add(&c)
	shape.Course = c.Course
	s.add(&ins.Nothing{}, s.i, to)
	s.i = to
	return true
}

// lastShape is the shaping that a list of instructions ends with, nil if it does not.
func lastShape(list []ins.Item) *ins.Shape {
	for _, n := range slices.Backward(list) {
		if !is[*ins.Nothing](n) {
			shape, _ := n.(*ins.Shape)
			return shape
		}
	}
	return nil
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
	if to := s.specExtent(r, i, rep); to >= 0 {
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

// specExtent reads how far something is worked, and how often if that stands behind it; -1: nothing says so.
func (s *sequence) specExtent(r *ins.Repeat, i int, rep bool) int {
	v, to := s.named("extent", i)
	if to < 0 {
		return -1
	}
	if k := s.timesBehind(to); k >= 0 && v.(ins.Extent).Kind == ins.ToEnd && s.said(i, to, "around") { // around, 8 times
		return s.spec(r, k, rep)
	}
	if w, next := s.named("extent", to+1); next >= 0 && s.at(to).Is(",") && v.(ins.Extent).Kind == ins.ToEnd { // across, to last 4 sts
		v, to = w, next
	}
	r.Times, r.Until = ins.Num{}, v.(ins.Extent)
	return to
}

// timesBehind is where words at i, or behind a comma there, say how often; -1: they do not.
func (s *sequence) timesBehind(i int) int {
	if s.at(i).Is(",") {
		i++
	}
	if _, to := s.named("times", i); to >= 0 {
		return i
	}
	return -1
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
// rep, leaving out the last 2 tr on the final repeat.
func (s *sequence) omits(r *ins.Repeat, j int) int {
	if !s.at(j).Is("omitting", "omit", "skipping", "leaving") || len(r.Body) == 0 {
		return 0
	}
	n, at := 1, j+1
	for s.at(at).Is("off", "out", "the", "last", "final") {
		at++
	}
	if t := s.at(at); t.Kind == 'n' && t.Num.By == nil {
		n, at = t.Num.All, at+1
	}
	k, to := s.thingEnd(at)
	if !s.at(to).Is("at", "from", "on", "in", "of") {
		return 0
	}
	for to++; s.at(to).Is("the", "end", "of"); to++ {
	}
	if !s.at(to).Is("last", "final") || !s.at(to+1).Is("rep", "repeat", "repetition") || !leavesOut(r, k, n) {
		return 0
	}
	return to + 2
}

// leavesOut has the last time of a repeat make n stitches of a kind fewer, with which it ends; false if it does not end with as many.
func leavesOut(r *ins.Repeat, k *stitch.Stitch, n int) bool {
	for i := len(r.Body) - 1; i >= 0 && k != nil; i-- {
		last, ok := r.Body[i].(*ins.Stitch)
		if !ok || last.Kind != k || last.N.By != nil || len(last.Places) > 1 {
			return false
		}
		each, places := last.N.All, 1
		if len(last.Places) == 1 && last.Places[0].Kind <= ins.InEach && last.Places[0].N.By == nil {
			places = last.Places[0].N.All
		}
		switch more := each*places - n; {
		case more <= 0:
			if n, r.Stop = -more, i; n == 0 {
				return i > 0
			}
			continue
		case i < len(r.Body)-1 || more%each > 0 && places > 1:
			r.Stop = -1
			return false
		case places == 1:
			fewer := *last
			fewer.N, r.Last = ins.N(more), []ins.Item{&fewer}
		default:
			fewer := *last
			fewer.Places = slices.Clone(last.Places)
			fewer.Places[0].N, r.Last = ins.N(more/each), []ins.Item{&fewer}
		}
		return true
	}
	return false
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

// withinStars reports whether a starred stretch is open that a further star ends or repeats.
func (s *sequence) withinStars() bool {
	return s.star >= 0 && slices.ContainsFunc(s.t[s.i:], func(t text.Token) bool { return isStar(&t) })
}
