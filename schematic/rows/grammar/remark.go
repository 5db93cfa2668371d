package grammar

import (
	"slices"
	"strings"
	"sync"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

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
	if last < 0 && t[0].Cap && t[len(t)-1].Is(".") && s.tells(t) { // Row 5: (Shaping begins on this row.) K to end
		return true
	}
	return changes(t) && !s.worked(s.i) || t[0].Cap && t[0].Is("those", "these", "this", "that", "they", "it", "you", "your", "if", "note", "there", "remember", "when", "don't", "the") && s.tells(t)
}

// changes reports whether a bracket says how many increases or decreases its row has: [9 incs].
func changes(t []text.Token) bool {
	return len(t) == 2 && t[0].Kind == 'n' && t[1].Is("incs", "increases", "decs", "decreases")
}

// changing are the words for more and fewer stitches.
var changing = sync.OnceValue(func() []string {
	return append(strings.Split(macros["$inc"]+"/"+macros["$dec"], "/"), "+", "more", "fewer", "less", "increased", "decreased", "added")
})

// ofEffect are words of how far a row changes its count, and how often; whereChanged say where.
var (
	ofEffect = []string{"by", "for", "of", "a", "an", "one", "two", "extra", "total", "st", "sts", "stitch", "stitches", "count", "this", "you", "your", "will", "have", "made", "inc'd", "dec'd", "time", "than", "before", ":", "-", "–", "−",
		"increase", "increases", "decrease", "decreases"}
	// tellingOf are words of one that says that it is made.
	tellingOf = []string{"this", "that", "it", "is", "was", "are", "has", "been", "be", "makes", "make", "made", "forms", "form", "creates", "completes", "counts", "as", "there", "you've", "now", "the", "first", "second", "last", "complete", "completed", "done",
		"formed", "created", "finished", "worked", "that's"}
	whereChanged = []string{"each", "every", "per", "at", "on", "in", "with", "the", "beg", "beginning", "start", "end", "ends", "both", "side", "sides", "edge", "row", "rows", "round", "rnd", "rep", "repeat"}
)

// effect reports whether words say by how many stitches the row changes that it has changed already: 2 sc in last st (inc 1 st at end of row). After a row
// without a shaping they are worked.
func (s *sequence) effect(t []text.Token, more ...string) bool {
	how, many := false, false
	for _, k := range t {
		change := k.Is(changing()...)
		how, many = how || change, many || k.Kind == 'n' || k.Is("one", "a", "an", "two")
		if k.Kind != 'n' && !change && !k.Is(ofEffect...) && !k.Is(more...) {
			return false
		}
	}
	return how && many && slices.ContainsFunc(s.out, reshapes)
}

// told takes a bracket that says what a chain before it counts as, or how many stitches the row has more, and works nothing.
func (s *sequence) told(t *text.Token, from int) bool {
	if c, ok := s.remark(t); ok {
		s.throughout(t.Sub, c)
		s.remarked(c, s.span(from, from).End)
		return true
	}
	if s.worked(s.i) || !s.effect(t.Sub, whereChanged...) {
		return false
	}
	s.add(&ins.Nothing{}, from, s.i)
	return true
}

// effectSaid passes such words at the end of a sentence that no bracket holds: -- increasing by 2 sts. 'Inc 2 sts' alone is worked.
func (s *sequence) effectSaid() bool {
	end := s.i
	for end < len(s.t) && s.at(end).Kind != 'g' && !s.at(end).Is(".", ",", ";") && !(end > s.i+1 && s.at(end).Is("-", "--", "–")) {
		end++
	}
	t := s.t[s.i:end]
	said := func(words ...string) bool {
		return slices.ContainsFunc(t, func(k text.Token) bool { return k.Is(words...) })
	}
	if s.made(t, said) {
		s.add(&ins.Nothing{}, s.i, end)
		s.i = end
		return true
	}
	if len(t) < 2 || s.depth > 0 || said("inc", "dec", "increase", "decrease") && !said("by", "for", "of", "an", ":") || !s.effect(t) {
		return false
	}
	s.add(&ins.Nothing{}, s.i, end)
	s.i = end
	return true
}

// made reports whether words say that an increase or a decrease, which the row has worked, is made: this makes the first increase.
func (s *sequence) made(t []text.Token, said func(...string) bool) bool {
	if len(t) < 2 || !said("inc", "dec", "increase", "decrease", "increases", "decreases") || !said("this", "that", "that's", "is", "made", "been", "complete", "completed", "done", "formed", "created", "there", "you've") {
		return false
	}
	return slices.ContainsFunc(s.out, reshapes) && !slices.ContainsFunc(t, func(k text.Token) bool {
		return k.Kind != 'n' && k.Ord == 0 && !k.Is(ofEffect...) && !k.Is(tellingOf...) && !k.Is("inc", "dec")
	})
}

// reshapes reports whether an item makes another count than it uses by its own words: kfb, 2 sc in next st.
func reshapes(n ins.Item) bool {
	switch n := n.(type) {
	case *ins.Stitch:
		if n.Kind == nil || len(n.Places) != 1 {
			return n.Kind != nil && n.Kind.Makes != n.Kind.Uses
		}
		p := n.Places[0]
		return n.Kind.Makes != n.Kind.Uses || p.Kind == ins.InSame || n.N.By == nil && n.N.All > 1 && (p.Kind == ins.InEach || p.N.By == nil && p.N.All == 1)
	case *ins.Repeat:
		return len(n.Places) > 0 && len(n.Body) > 1 || slices.ContainsFunc(n.Body, reshapes)
	}
	return false
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

// noted passes a sentence that tells how the work should look: Note: Each stitch should have 2 dc in it. As you knit you will find that it slants.
func (s *sequence) noted() bool {
	note, seen := s.at(s.i).Is("note") && s.at(s.i+1).Is(":"), s.at(s.i).Is("as", "when", "while") && s.at(s.i+1).Is("you")
	if !note && !seen {
		return false
	}
	end := s.i + 2
	for end < len(s.t) && s.t[end].Kind != 'g' && !s.at(end).Is(".") {
		end++
	}
	is := func(words ...string) bool {
		return slices.ContainsFunc(s.t[s.i:end], func(t text.Token) bool { return t.Is(words...) })
	}
	if note && (!is("should") || is("count", "counts", "counted", "work", "repeat")) || seen && !is("find", "see", "notice") {
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
