package grammar

import (
	"slices"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// Rounds on several needles: what is worked on each, told one after the other, and how many stitches each holds.

// wholeRow reads the instructions of a line, needle by needle if it tells them so.
func (p *parser) wholeRow() []ins.Item {
	if list := p.byNeedles(); list != nil {
		return list
	}
	return p.sequence()
}

// byNeedles reads a row that tells each needle by itself; nil if it does not.
func (p *parser) byNeedles() []ins.Item {
	from := p.needleAt(0)
	if from < 0 {
		return nil
	}
	var lead []ins.Item
	if from > 0 {
		before := p.within(p.t[:from])
		lead = before.sequence()
		if slices.ContainsFunc(lead, func(n ins.Item) bool { return !is[*ins.Nothing](n) && !is[*ins.Marker](n) }) {
			p.line.Unread = nil
			return nil
		}
	}
	n := &ins.Needles{}
	var said []ins.Item
	for from < len(p.t) {
		on, k, _ := text.NeedleHead(p.t[from:])
		next := p.needleAt(from + k)
		if next < 0 {
			next = len(p.t)
		}
		part := p.needle(n, on, p.t[from+k:next])
		if len(part.Said) > 0 && next == len(p.t) {
			said, part.Said = []ins.Item{&stated{groups: part.Said}}, nil
		}
		n.Parts = append(n.Parts, part)
		from = next
	}
	if !slices.ContainsFunc(n.Parts, func(q ins.NeedlePart) bool { return working(q.Body) }) { // how many stitches each holds, and no more
		p.line.Unread = nil
		return []ins.Item{&ins.Nothing{Placed: ins.Placed{At: p.span(0, len(p.t)-1)}}}
	}
	n.Put(p.span(0, len(p.t)-1))
	return append(append(lead, n), said...)
}

// needleAt is where the next words begin, from i on, that name needles and stand at the beginning of a clause; -1 if none do.
func (p *parser) needleAt(i int) int {
	for ; i < len(p.t); i++ {
		if i > 0 && !p.at(i-1).Is(".", ";", ",", ":", "--") && !p.at(i).Cap {
			continue
		}
		if on, k, signed := text.NeedleHead(p.t[i:]); len(on) > 0 && (signed || p.at(i+k).Is("k", "p", "knit", "purl", "work") && p.at(i+k-1).Kind != 'n') {
			return i
		}
	}
	return -1
}

// needle reads what is worked on one needle, or on several alike.
func (p *parser) needle(n *ins.Needles, on []int, t []text.Token) ins.NeedlePart {
	part := ins.NeedlePart{On: on}
	k := 0
	for k < len(t) && t[k].Is("as", "same", "rep", "repeat", "like", "work", "for", "on", "complete", "exactly") {
		k++
	}
	if as, to, _ := text.NeedleHead(t[k:]); k > 0 && len(as) == 1 && (k+to >= len(t) || t[k+to].Is(".", ";", ",") || t[k+to].Kind == 'g') {
		for _, q := range n.Parts {
			if slices.Contains(q.On, as[0]) {
				part.Body = q.Body
			}
		}
		t = t[k+to:]
		for len(t) > 0 && t[0].Is(".", ";", ",") {
			t = t[1:]
		}
		if part.Said = p.countsOf(t); part.Said != nil {
			return part
		}
	}
	q := p.within(t)
	q.depth = p.depth
	body, said := endCount(q.sequence(), nil)
	if part.Body == nil {
		l := &ins.Line{Label: p.line.Label, Body: body}
		for _, w := range t {
			l.Words = append(l.Words, w.Word)
		}
		p.r.plainRow(l)
		part.Body = l.Body
	}
	part.Said = said
	return part
}

// headsNeedle reports whether a line begins with words that name a needle, and a sign behind them.
func headsNeedle(t []text.Token) bool {
	on, _, signed := text.NeedleHead(t)
	return len(on) > 0 && signed
}

// nextNeedle reports whether a line tells the next needle of the round that is gathered.
func (r *Reader) nextNeedle(t []text.Token) bool {
	if len(r.tokens) == 0 || !headsNeedle(t) {
		return false
	}
	_, k, _ := text.Label(r.tokens, r.roundR)
	return k > 0 && k == len(r.tokens) || headsNeedle(r.tokens[k:])
}

// needleCounts are what a line says of how many stitches needles hold: 14 sts on each needle, 23 sts each on Needles 1
// and 4, divided evenly over 4 needles.
func (r *Reader) needleCounts(t []text.Token) []ins.NeedleCount {
	if !slices.ContainsFunc(t, func(k text.Token) bool { return k.Is("needle", "needles", "dpn", "dpns", "n") }) {
		return nil
	}
	var out []ins.NeedleCount
	spread := false
	for i := range t {
		spread = spread || t[i].Is("divide", "dividing", "distribute", "distributing", "arrange", "spread", "divided", "split")
		switch {
		case t[i].Kind != 'n' || near(t, i+1).Is("mm", "cm", "in", "inch"):
		case needleEnd(t, i) && spread && t[i].Num.By == nil && slices.ContainsFunc(t[max(0, i-6):i], func(k text.Token) bool { return k.Is("evenly", "equally") }):
			out = append(out, ins.NeedleCount{Of: t[i].Num.All})
		default:
			if c, to := countOn(t, i); to > i {
				out = append(out, c)
			}
		}
	}
	return out
}

// heldBefore gives what words between rows say of needles to the row before them.
func (r *Reader) heldBefore(l *ins.Line) {
	if k := len(r.sec.Lines); k > 0 {
		r.sec.Lines[k-1].Needles = append(r.sec.Lines[k-1].Needles, l.Needles...)
	}
}

// amongNeedles reports whether stitches that words place on something are put on needles, and wait on none: Place 10 sts
// on each of 2 needles, place next 18 sts on Needle 2.
func (m *match) amongNeedles() bool {
	each := false
	for i := m.from; i < min(m.to+6, len(m.p.t)); i++ {
		t := m.p.at(i)
		each = each || t.Is("each") || t.Ord > 0 && i > m.from+1
		if t.Is("needle", "needles", "dpn", "dpns") {
			n := m.p.at(i + 1)
			return each || n.Kind == 'n' && n.Num.By == nil && n.Num.All <= 6
		}
		if t.Is(".", ";") {
			break
		}
	}
	return false
}

// needleEnd reports whether the number at i is one of needles: over 4 needles, on 3 double-pointed needles, 4 dpns.
func needleEnd(t []text.Token, i int) bool {
	for k := i + 1; k < i+5; k++ {
		switch w := near(t, k); {
		case w.Is("needles", "dpns"):
			return true
		case w.Kind != 'w' && w.Kind != 'p' || w.Is("sts", "st", "stitches", ",", ".", ";", ":"):
			return false
		}
	}
	return false
}

// countOn reads the count at i and the needles that hold it, and gives where the words end; 0 if they name none.
func countOn(t []text.Token, i int) (ins.NeedleCount, int) {
	c, k := ins.NeedleCount{N: t[i].Num}, i+1
	if near(t, k).Is("st", "sts", "stitches") {
		k++
	}
	if near(t, k).Is("each") && near(t, k+1).Is("on") {
		k++
	}
	each := near(t, k).Is("on") && near(t, k+1).Is("each")
	if each && near(t, k+2).Is("of") {
		k, each = k+2, false
	}
	switch {
	case each && near(t, k+2).Is("needle", "dpn"):
		return c, k + 3
	case each:
		return c, 0
	case near(t, k).Is("per"):
		if near(t, k+1).Is("needle", "dpn") {
			return c, k + 2
		}
		return c, 0
	case near(t, k).Is("on", "of") && (near(t, k).Is("on") || near(t, k-1).Is("each")):
		on, n, _ := text.NeedleHead(t[k+1:])
		if c.On = on; len(on) > 0 {
			return c, k + 1 + n
		}
		return c, 0
	}
	from := i - 1 // Needle 1: 16 sts
	for from > 0 && i-from < 8 && !t[from-1].Is(".", ";", ",") {
		from--
	}
	from = max(from, 0)
	on, to, signed := text.NeedleHead(t[from:])
	if c.On = on; signed && from+to == i && near(t, i+1).Is("st", "sts", "stitches") {
		return c, i + 2
	}
	return c, 0
}

// inParts reads a total whose parts are told behind it, and gives where the total and they end: 74 sts: 23 sts each on
// Needles 1 and 4, 28 sts on Needle 2; 244 sts, 70 for each front and back, 52 for each sleeve. -1: no such thing stands there.
func (p *parser) inParts(i int) (total, to int) {
	if p.at(i).Kind != 'n' || !p.at(i+1).Is("st", "sts", "stitch", "stitches") {
		return -1, -1
	}
	total = i + 2
	for p.at(total).Is("total", "in", "all", "now", "altogether", "on", "needle", "needles", "rem", "remain") {
		total++
	}
	if !p.at(total).Is(":", "--", "-", "=", ",", ";") {
		return -1, -1
	}
	to = total
	k := total + 1
	if p.at(k).Is("with") && p.at(k+1).Kind == 'n' { // 46 sts, with 12 sts between markers
		k++
	}
	for {
		end := p.partEnd(k)
		if end < 0 {
			break
		}
		if to = end; !p.at(end).Is(",", ";", "and", "&", "+", "plus") {
			break
		}
		for k = end; p.at(k).Is(",", ";", "and", "&", "+", "plus"); k++ {
		}
	}
	if to == total || to < len(p.t) && !p.at(to).Is(".", ";") {
		return -1, -1
	}
	return total, to
}

// countedInParts reads a total, whose number is at lead, and its parts, or the parts alone.
func (s *sequence) countedInParts(lead int) bool {
	total, to := s.inParts(lead)
	if to < 0 || s.sep != "." && s.sep != ";" && !s.parted() && s.i > 0 && lead == s.i {
		return lead == s.i && s.partsAlone()
	}
	g := s.countsOf(s.t[lead : lead+2])
	if g == nil {
		return false
	}
	if sum, sure, _, parts := s.sumOfParts(total + 1); sure && parts > 0 {
		g[0].Parts = sum
	}
	s.add(&stated{groups: g}, s.i, total)
	s.add(&ins.Nothing{}, total, to)
	s.i = to
	return true
}

// partsAlone reads the counts of the parts of a row without their total: 27 sts each for front and back, 14 sts for each sleeve.
// Their sum is that of the row, if every part says how often it is there.
func (s *sequence) partsAlone() bool {
	sum, sure, to, parts := s.sumOfParts(s.i)
	if s.sep != "." && s.sep != ";" && !s.parted() || parts == 0 && !sure || to == s.i || to < len(s.t) && !s.at(to).Is(".", ";") || needles[s.at(to-1).S] {
		return false
	}
	if sure {
		s.add(&stated{groups: []ins.StitchGroup{{N: sum, Any: true, At: s.span(s.i, to-1)}}}, s.i, to)
	} else {
		s.add(&ins.Nothing{Part: true}, s.i, to)
	}
	s.i = to
	return true
}

// sumOfParts adds the counts of parts from k on, and tells whether every part says how often it is there, where they end, and how
// many are joined to the first.
func (p *parser) sumOfParts(k int) (sum ins.Num, sure bool, to, parts int) {
	sum, sure, to = ins.N(0), true, k
	for ; ; parts++ {
		end := p.partEnd(k)
		if end < 0 {
			return
		}
		times := partTimes(p.t[k:end])
		sum, sure, to = sum.Add(p.at(k).Num, times), sure && times > 0, end
		for k = end; p.at(k).Is(",", ";", "and", "&", "+", "plus"); k++ {
		}
		if k == end {
			return
		}
	}
}

// partTimes is how often a part of a garment is there of which a count is told: 2 for each sleeve, each for front and back; 0: that is not sure.
func partTimes(t []text.Token) int {
	each, one, two, other := false, 0, 0, false
	for i := range t {
		switch k := &t[i]; {
		case k.Is("each", "per"):
			each = true
		case k.Is("front", "back", "body"):
			one++
		case k.Is("sleeve", "sleeves", "arm", "arms", "fronts", "shoulder", "shoulders"):
			two++
		case i > 0 && !k.Is("st", "sts", "stitch", "stitches", "for", "in", "on", "at", "and", "&", "left", "right", "rem", "remain"):
			other = true
		}
	}
	switch {
	case other || one+two == 0 || one > 0 && two > 0:
		return 0
	case each:
		return 2
	case one == 1 || two == 1 && slices.ContainsFunc(t, func(k text.Token) bool { return k.Is("left", "right") }):
		return 1
	}
	return 0
}

// partEnd is where a part of a total that begins at k ends: 23 sts each on Needles 1 and 4; 70 for front. -1: it is none.
func (p *parser) partEnd(k int) int {
	if p.at(k).Kind != 'n' {
		return -1
	}
	k++
	for p.at(k).Is("st", "sts", "stitch", "stitches", "each", "heel", "instep", "sole", "gusset", "body", "sleeve", "back", "front", "thumb", "raglan", "right", "left") {
		k++
	}
	if !p.at(k).Is("on", "for", "in", "at", "between", "per") && !p.at(k-1).Is("heel", "instep", "sole", "gusset", "body", "sleeve", "back", "front", "thumb", "raglan", "each") {
		return -1
	}
	for k < len(p.t) && !p.at(k).Is(".", ";", ",") && p.at(k).Kind != 'g' {
		if p.at(k).Is("and", "&", "plus", "+") && p.at(k+1).Kind == 'n' && p.at(k+2).Kind == 'w' {
			break
		}
		k++
	}
	for p.at(k).Is(",") && p.at(k+1).Kind == 'n' && p.at(k+1).Num.By == nil && p.at(k-1).Kind == 'n' && !p.at(k+2).Is("st", "sts", "stitches", "on", "for") { // Needles 1, 2 and 4
		for k++; k < len(p.t) && !p.at(k).Is(".", ";", ","); k++ {
		}
	}
	return k
}

// listsHeld reports whether stitches that waited are listed before i in its sentence, of a line that picks up stitches: k across
// 4 sts of right sleeve, 22 sts of back neck.
func (p *parser) listsHeld(i int) bool {
	if p.line.IsRow() || p.at(i).Kind != 'n' && !p.at(i).Is("and", "across") || !p.takesUp() {
		return false
	}
	for i--; i >= 0 && !p.at(i).Is(".", ";", "pick", "-", "–", "—", "--", "=", ":"); i-- {
		if p.at(i).Is("k", "knit", "p", "purl", "work") && (p.at(i+1).Is("across", "from") || p.at(i+1).Kind == 'n' && p.at(i+3).Is("from", "of", "at", "on")) {
			return true
		}
	}
	return false
}

// takesUp reports whether words about stitches that waited may be an instruction of the line: it is a row, or picks up
// stitches too.

func (p *parser) takesUp() bool {
	return p.line.IsRow() || slices.ContainsFunc(p.line.Words, func(w ins.Word) bool { return w.S == "pick" })
}
