package grammar

import (
	"cmp"
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

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
