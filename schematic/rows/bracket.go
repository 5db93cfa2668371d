package rows

// bracket reads what a bracket holds: a repeat, stitches into one place, or a
// remark on what a chain counts as.
func (p *parser) bracket() []*Node {
	start := p.i
	open := p.next().s
	closing := map[string]string{"(": ")", "[": "]", "{": "}"}[open]
	if n, ok := p.remark(closing); ok {
		n.At = p.span(start, p.i-1)
		return []*Node{n}
	}
	body := p.seq()
	if !p.sign(closing) {
		at := p.span(start, start)
		p.unread(at)
		return append(body, &Node{Op: OpUnread, At: at})
	}
	n := &Node{Op: OpGroup, Body: body, Stop: -1, Times: Num{All: 1}}
	said := p.spec(n, false)
	if !said {
		p.places(n, false)
		if len(n.Places) > 0 {
			// [sc, ch 1] in next sp 3 times
			if v, ok := p.number(); ok && p.eatAny("times", "x") {
				n.Times = v
			}
		}
	}
	n.At = p.span(start, p.i-1)
	return []*Node{n}
}

// remark reads (counts as 1 dc), (3 skipped ch count as dc), (RS).
func (p *parser) remark(closing string) (*Node, bool) {
	save := p.i
	depth := 1
	counts, not := false, false
	n := &Node{Op: OpChain, N: Num{All: none}, Counts: CountsAsStitch}
scan:
	for k := 0; ; k++ {
		switch t := p.peek(k); {
		case t.kind == 0:
			break scan
		case t.s == "(" || t.s == "[":
			depth++
		case t.s == ")" || t.s == "]" || t.s == "}":
			if depth--; depth == 0 {
				break scan
			}
		case depth > 1:
		case t.s == "counts" || t.s == "count" || t.s == "counted" || t.s == "counting":
			counts = true
		case t.s == "not":
			not = true
		}
	}
	side := p.isWord("rs") || p.isWord("ws")
	if side && p.peek(1).s == closing {
		p.i += 2
		return &Node{Op: OpNothing}, true
	}
	if !counts {
		return nil, false
	}
	for !p.done() && !p.isWord("as") && !p.is(closing) {
		if t := p.next(); t.kind == 'n' && p.peek(0).s != "st" {
			n.Told = t.num
		}
	}
	if p.eat("as") {
		p.eatAny("a", "the", "one")
		p.eat("first")
		p.number()
		if s, _, ok := p.stitchName(); ok {
			n.As = s
		} else {
			p.eatAny("st", "stitch")
		}
		if p.eat("and") || p.sign(",") || p.sign("+") {
			v, ok := p.number()
			if p.eatAny("ch", "chain", "chs") {
				if w, ok2 := p.chainSize(); ok2 {
					v = w
				} else if w, ok2 := p.number(); ok2 {
					v = w
				} else if !ok {
					v = Num{All: 1}
				}
				n.M = v
			}
		}
	}
	for !p.done() && !p.is(closing) {
		p.i++
	}
	if !p.sign(closing) {
		p.i = save
		return nil, false
	}
	if not {
		n.Counts = CountsNot
	}
	return n, true
}

// stated takes the count at the end of a line off its tokens: (48 sts), - 48 hdc,
// [48 (52, 56)], 48 sts in total. What follows it (turn) stays.
func (p *parser) stated() []StitchGroup {
	end := len(p.t)
	for end > 0 && p.t[end-1].kind == 'p' && (p.t[end-1].s == "." || p.t[end-1].s == ";") {
		end--
	}
	tail := end
	for _, w := range []string{"turn", "join"} {
		if end > 1 && p.t[end-1].kind == 'w' && p.t[end-1].s == w && p.t[end-2].kind == 'p' {
			tail = end - 1
			end -= 2
			for end > 0 && p.t[end-1].kind == 'p' && (p.t[end-1].s == "." || p.t[end-1].s == "," || p.t[end-1].s == ";") {
				end--
			}
		}
	}
	if end == 0 {
		return nil
	}
	divides := p.t[0].s == "divide"
	if last := p.t[end-1]; last.kind == 'p' && (last.s == ")" || last.s == "]" || last.s == "}") {
		depth := 0
		for m := end - 1; m >= 0; m-- {
			if p.t[m].kind != 'p' {
				continue
			}
			switch p.t[m].s {
			case ")", "]", "}":
				depth++
			case "(", "[", "{":
				depth--
			}
			if depth == 0 {
				if g := p.countList(m+1, end-1); g != nil {
					p.cut(m, tail)
					return g
				}
				return nil
			}
		}
		return nil
	}
	depth := 0
	for m := end - 1; m >= 0; m-- {
		if p.t[m].kind != 'p' {
			continue
		}
		switch p.t[m].s {
		case ")", "]", "}":
			depth++
		case "(", "[", "{":
			depth--
		}
		if depth < 0 {
			return nil
		}
		if depth != 0 {
			continue
		}
		switch p.t[m].s {
		case ".", "--", "=", ";", ":":
		case "-":
			if p.t[m].glued && m+1 < len(p.t) && p.t[m+1].glued {
				continue
			}
		case ",":
			if divides {
				return nil
			}
			g := p.countList(m+1, end)
			if g != nil && g[len(g)-1].Any && p.t[end-1].kind == 'w' && len(g) == 1 {
				p.cut(m, tail)
				return g
			}
			continue
		default:
			continue
		}
		if p.t[m].s == ":" {
			return nil
		}
		if g := p.countList(m+1, end); g != nil {
			if p.t[m].s == ";" && !p.endsBefore(m) {
				return nil
			}
			p.cut(m, tail)
			return g
		}
		if p.t[m].s != "-" {
			return nil
		}
	}
	// Rep Rnd 2 ... 12 (16, 24) sts, without a sign before it: a line that holds a count alone
	return nil
}

// endsBefore reports whether the words before m work the row to its end.
func (p *parser) endsBefore(m int) bool {
	for k := m - 1; k >= 0; k-- {
		switch p.t[k].s {
		case "across", "end", "remaining", "rem", "around", "last":
			return true
		}
	}
	return false
}

func (p *parser) cut(from, tail int) {
	rest := p.t[tail:]
	if len(rest) == 0 {
		p.t = p.t[:from]
		return
	}
	p.t = append(append([]token(nil), p.t[:from]...), rest...)
}

// countList reads a list of counts in tokens [from, to), or nothing.
func (p *parser) countList(from, to int) []StitchGroup {
	if from >= to || p.t[from].kind == 0 {
		return nil
	}
	q := *p
	q.t = p.t[from:to]
	q.i = 0
	var out []StitchGroup
	for q.eatAny("total", "you", "will", "have", "now", "in", "made", "about", "there", "are", "of", "leaves", "leaving") || q.sign(":") {
	}
	for {
		at := q.i
		n, ok := q.number()
		if !ok {
			return nil
		}
		g := StitchGroup{N: n}
		if u, ok := q.unit(); ok {
			g.Unit = u
			g.Any = u.Stitch == nil && !u.Chain && !u.Space && u.Group == nil && !u.Row
		} else {
			g.Any = true
		}
		g.At = q.span(at, q.i-1)
		out = append(out, g)
		for q.eatAny("in", "total", "made", "remain", "remaining", "rem", "remains", "on", "needle", "needles", "now", "left", "inc", "dec", "around", "across", "each", "per") {
		}
		if q.done() {
			return out
		}
		if !q.sign(",") && !q.eat("and") && !q.sign("+") && !q.sign(";") {
			return nil
		}
		q.eat("and")
	}
}
