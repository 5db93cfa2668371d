package rows

import (
	"strings"

	"flatwright/schematic/stitch"
)

// Bounds on what a text may nest and say, so that no input runs away.
const (
	maxDepth = 12
	maxItems = 2000
)

// parser reads the tokens of one line, by recursive descent.
type parser struct {
	t     []token
	i     int
	x     *Text
	line  *Line
	depth int
	deep  bool // nested too deeply
	loop  Loop // 'working in back loops only': for what follows
	same  bool // 'at the same time' stands before
	eof   token
}

func (p *parser) done() bool { return p.i >= len(p.t) }

func (p *parser) peek(k int) *token {
	if p.i+k < len(p.t) && p.i+k >= 0 {
		return &p.t[p.i+k]
	}
	return &p.eof
}

func (p *parser) next() *token {
	t := p.peek(0)
	p.i++
	return t
}

func (p *parser) is(s string) bool     { t := p.peek(0); return t.kind == 'p' && t.s == s }
func (p *parser) isWord(s string) bool { t := p.peek(0); return t.kind == 'w' && t.s == s }

func (p *parser) sign(s string) bool {
	if p.is(s) {
		p.i++
		return true
	}
	return false
}

// eat takes the words if they stand next.
func (p *parser) eat(words ...string) bool {
	for k, w := range words {
		if t := p.peek(k); t.kind != 'w' || t.s != w {
			return false
		}
	}
	p.i += len(words)
	return true
}

func (p *parser) eatAny(words ...string) bool {
	t := p.peek(0)
	if t.kind != 'w' {
		return false
	}
	for _, w := range words {
		if t.s == w {
			p.i++
			return true
		}
	}
	return false
}

var numerals = map[string]int{"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
	"ten": 10, "eleven": 11, "twelve": 12}

func (p *parser) number() (Num, bool) {
	t := p.peek(0)
	if t.kind == 'n' {
		if h := p.peek(1); h.s == "-" && h.glued && p.peek(2).glued && (p.peek(2).s == "ch" || p.peek(2).s == "chain") {
			return Num{}, false // 3-ch
		}
		p.i++
		return t.num, true
	}
	if t.kind == 'w' {
		if v, ok := numerals[t.s]; ok {
			p.i++
			return Num{All: v}, true
		}
	}
	return Num{}, false
}

func (p *parser) span(from, to int) Span {
	if len(p.t) == 0 {
		return p.line.At
	}
	from = min(max(from, 0), len(p.t)-1)
	to = min(max(to, from), len(p.t)-1)
	return Span{Line: p.line.At.Line, Col: p.t[from].col, End: p.t[to].end}
}

// clause skips to the next separator at this depth.
func (p *parser) clause(seps string) {
	depth := 0
	for !p.done() {
		t := p.peek(0)
		if t.kind == 'p' {
			switch t.s {
			case "(", "[", "{":
				depth++
			case ")", "]", "}":
				if depth == 0 {
					return
				}
				depth--
			default:
				if depth == 0 && strings.Contains(seps, t.s) {
					return
				}
			}
		}
		p.i++
	}
}

// seq reads instructions until a closing bracket or the end.
func (p *parser) seq() []*Node {
	var out []*Node
	star, stop := -1, -1
	starTok := 0
	var closed []*Node
	if p.depth++; p.depth > maxDepth {
		p.deep = true
		p.i = len(p.t)
	}
	defer func() { p.depth-- }()
	for !p.done() && len(out) < maxItems {
		t := p.peek(0)
		if t.kind == 'p' {
			switch t.s {
			case ")", "]", "}":
				return out
			case ",", ";", ".", ":", "&":
				p.i++
				continue
			case "*", "†", "★", "**", "††":
				p.i++
				switch {
				case star < 0:
					star, starTok = len(out), p.i-1
				case len(t.s) > len("*") && t.s == "**":
					stop = len(out) - star
				default:
					n := &Node{Op: OpGroup, Body: append([]*Node(nil), out[star:]...), Times: Num{All: 1}, Stop: -1}
					p.spec(n, false)
					n.At = p.span(starTok, p.i-1)
					closed = n.Body
					out = append(out[:star], n)
					star = -1
				}
				continue
			case "-", "--":
				p.i++
				continue
			}
		}
		if t.kind == 'w' && (t.s == "rep" || t.s == "repeat" || t.s == "repeating") && (star >= 0 || closed != nil) && !p.rowsFollow() {
			from := p.i
			p.i++
			body := closed
			if star >= 0 {
				body = append([]*Node(nil), out[star:]...)
				out = out[:star]
			} else {
				starTok = from
			}
			n := &Node{Op: OpGroup, Body: body, Stop: stop}
			if stop < 0 {
				n.Stop = -1
			}
			if star < 0 {
				n.More = true
			}
			p.spec(n, true)
			if star < 0 && n.Times.All > 0 && n.Times.By == nil {
				n.Times.All--
			}
			n.At = p.span(starTok, p.i-1)
			out = append(out, n)
			star, stop = -1, -1
			closed = nil
			continue
		}
		for _, n := range p.item() {
			if k := len(out); n.Op == OpChain && n.N.All == none && n.N.By == nil { // (counts as dc), of what stands before it
				if k > 0 {
					out[k-1].Counts, out[k-1].As, out[k-1].M, out[k-1].Told = n.Counts, n.As, n.M, n.Told
				}
				continue
			}
			out = append(out, n)
		}
	}
	if star >= 0 && len(out) > star { // a star without its repeat
		n := &Node{Op: OpGroup, Body: append([]*Node(nil), out[star:]...), Stop: -1, Times: Num{All: 1}, At: p.span(starTok, starTok)}
		p.unread(n.At)
		out = append(out[:star], n)
	}
	return out
}

// rowsFollow reports whether 'rep' at this place repeats rows and not stitches.
func (p *parser) rowsFollow() bool {
	for k := 1; k < 5; k++ {
		t := p.peek(k)
		if t.kind == 'p' && t.s == "*" {
			return false
		}
		if _, ok := isRowWord(t.s); ok && t.kind == 'w' {
			return true
		}
	}
	return false
}

// spec reads how often something is worked: '6 times', 'twice', 'to last 3 sts',
// 'across'. After 'rep from *' the first working comes on top.
func (p *parser) spec(n *Node, rep bool) bool {
	total := false                                                     // the times are told in all
	if !rep && p.is("*") && p.peek(0).glued && p.peek(1).kind == 'n' { // (2 sc, inc)*6
		p.i++
		n.Times, _ = p.number()
		return true
	}
	if p.eatAny("rep", "repeat") {
		total = !rep
		rep = true
	}
	if rep {
		p.eat("from")
		p.eat("between")
		for p.sign("*") || p.sign("**") || p.sign("†") || p.eat("s") {
		}
		if p.isWord("to") && (p.peek(1).s == "*" || p.peek(1).s == "**" || p.peek(1).s == "†") {
			p.i += 2
		}
		p.sign(",")
	}
	mark := p.i
	add := 0
	if rep && !n.More && !total {
		add = 1
	}
	plus := func(v Num) Num {
		if v.By == nil {
			return Num{All: v.All + add}
		}
		by := make([]int, len(v.By))
		for i, b := range v.By {
			if by[i] = b + add; b == none {
				by[i] = none
			}
		}
		return Num{By: by}
	}
	p.eat("a", "total", "of")
	p.eat("for")
	switch {
	case p.eat("once"):
		p.eat("more")
		n.Times = plus(Num{All: 1})
		return true
	case p.eat("twice"):
		p.eat("more")
		n.Times = plus(Num{All: 2})
		return true
	}
	if p.isWord("x") && p.peek(1).kind == 'n' {
		p.i++
		n.Times, _ = p.number()
		n.Times = plus(n.Times)
		return true
	}
	if v, ok := p.number(); ok {
		p.eat("more")
		if p.eatAny("times", "time", "x") {
			p.eat("more")
			p.eat("in", "all")
			p.eat("in", "total")
			n.Times = plus(v)
			return true
		}
		p.i = mark
	}
	if e, ok := p.extent(); ok {
		n.Until, n.Times = e, Num{}
		p.lastRep(n)
		return true
	}
	if rep {
		n.Until, n.Times = Extent{Kind: ToEnd, At: p.span(p.i-1, p.i-1)}, Num{}
		p.lastRep(n)
		return true
	}
	p.i = mark
	return false
}

// lastRep reads 'ending last rep at **'.
func (p *parser) lastRep(n *Node) {
	save := p.i
	p.sign(",")
	if p.eatAny("ending", "end") && p.eat("last") && p.eatAny("rep", "repeat") && p.eat("at") && p.sign("**") {
		return
	}
	p.i = save
	n.Stop = -1
}

// extent reads across, around, to end, to last 3 sts, until 3 sts rem.
func (p *parser) extent() (Extent, bool) {
	start := p.i
	e := Extent{Kind: ToEnd}
	done := func() (Extent, bool) {
		e.At = p.span(start, p.i-1)
		return e, true
	}
	across := p.eatAny("across", "around", "along", "throughout")
	if across {
		p.eat("the")
		p.eatAny("row", "round", "rnd")
	}
	mid := p.i
	switch {
	case p.eat("to") || p.eat("until"):
		p.eat("the")
		p.eat("within")
		switch {
		case p.eat("end"):
			if p.eat("of") {
				p.eat("the")
				p.eatAny("row", "rnd", "round", "ch", "chain")
			}
			return done()
		case p.eatAny("last", "final"):
			n, ok := p.number()
			if !ok {
				n = Num{All: 1}
			}
			if u, ok := p.unit(); ok {
				e.Kind, e.N, e.Unit = ToLast, n, u
				return done()
			}
			p.eatAny("rem", "remaining")
		case p.eatAny("turning", "beg", "beginning"):
			if p.eatAny("ch", "chain") {
				p.chainSize()
				e.Kind, e.N, e.Unit = ToLast, Num{All: 1}, Unit{Word: "st"}
				return done()
			}
		case p.eat("tch"):
			e.Kind, e.N, e.Unit = ToLast, Num{All: 1}, Unit{Word: "st"}
			return done()
		default:
			if n, ok := p.number(); ok {
				if u, ok := p.unit(); ok && p.eatAny("rem", "remain", "remains", "before", "from", "left") {
					p.eat("the")
					p.eat("end")
					e.Kind, e.N, e.Unit = ToLast, n, u
					return done()
				}
			}
		}
		p.i = mid
	}
	if across {
		return done()
	}
	p.i = start
	return e, false
}

// chainSize takes the -2 of ch-2.
func (p *parser) chainSize() (Num, bool) {
	if p.is("-") && p.peek(0).glued && p.peek(1).kind == 'n' && p.peek(1).glued {
		p.i++
		n, _ := p.number()
		return n, true
	}
	return Num{}, false
}

// stitchName reads the longest stitch name that stands next, or a name with its
// number glued to it (k3).
func (p *parser) stitchName() (*stitch.Stitch, Num, bool) {
	most := 0
	var buf [96]byte
	b := buf[:0]
	var found *stitch.Stitch
	for k := range stitch.Longest {
		t := p.peek(k)
		if t.kind != 'w' || k > 0 && len(b) > 80 {
			break
		}
		if k > 0 {
			b = append(b, ' ')
		}
		b = append(b, t.s...)
		if s := p.x.stitchNamed(b); s != nil {
			found, most = s, k+1
		}
	}
	if found != nil {
		p.i += most
		p.x.used[found.ID] = found
		return found, Num{}, true
	}
	t := p.peek(0)
	if t.kind != 'w' {
		return nil, Num{}, false
	}
	if s, k := p.otherTerms(); s != nil {
		p.i += k
		p.x.used[s.ID] = s
		return s, Num{}, true
	}
	cut := strings.IndexAny(t.s, "0123456789")
	if cut > 0 && allDigits(t.s[cut:]) {
		if s, ok := stitch.Lookup(t.s[:cut], p.x.Terms); ok {
			p.i++
			p.x.used[s.ID] = s
			return s, Num{All: min(atoi(t.s[cut:]), maxNumber)}, true
		}
	}
	return nil, Num{}, false
}

// stitchNamed finds a stitch by its words: one that the text defines, or one of the list.
func (x *Text) stitchNamed(words []byte) *stitch.Stitch {
	if s, ok := x.own[string(words)]; ok {
		return s
	}
	s, _ := stitch.LookupBytes(words, x.Terms)
	return s
}

// otherTerms is the stitch of words that only the other terms have, and how many words
// they are: it is read as what it means, and told of as a word.
func (p *parser) otherTerms() (found *stitch.Stitch, words int) {
	if !p.x.TermsSet {
		return nil, 0
	}
	name := ""
	for k := range 4 {
		t := p.peek(k)
		if t.kind != 'w' {
			break
		}
		name = strings.TrimPrefix(name+" "+t.s, " ")
		if terms, only := stitch.Only(name); only && terms != p.x.Terms {
			if s, ok := stitch.Lookup(name, terms); ok {
				found, words = s, k+1
			}
		}
	}
	return found, words
}

func (p *parser) unread(at Span) { p.line.Unread = append(p.line.Unread, at) }
