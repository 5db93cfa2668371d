package rows

import "flatwright/schematic/stitch"

// item reads one instruction. What it can't read it notes as unread, up to the
// next separator.
func (p *parser) item() []*Node {
	start := p.i
	one := func(n *Node) []*Node {
		if n.At.Line == 0 {
			n.At = p.span(start, p.i-1)
		}
		return []*Node{n}
	}
	t := p.peek(0)
	if t.kind == 'p' && (t.s == "(" || t.s == "[" || t.s == "{") {
		return p.bracket()
	}
	if t.kind == 'w' {
		if n := p.words(); n != nil {
			return one(n)
		}
		p.i = start
		if n := p.statement(); n != nil {
			return one(n)
		}
		p.i = start
	}
	if n := p.making(); n != nil {
		return one(n)
	}
	p.i = start
	p.clause(",;.")
	if p.i == start {
		p.i++
	}
	n := &Node{Op: OpUnread, At: p.span(start, p.i-1)}
	p.unread(n.At)
	return []*Node{n}
}

// words reads the short words between stitches.
func (p *parser) words() *Node {
	switch p.peek(0).s {
	case "and", "then", "also", "now", "ending", "end", "row", "in", "each":
		start := p.i
		if p.eatAny("and", "then", "also", "now") {
			return p.one()
		}
		if p.eatAny("ending", "end") {
			if p.eat("with") || p.peek(0).kind == 'n' || p.isStitch() {
				return p.one()
			}
		}
		p.i = start
	case "turn":
		p.i++
		if p.atEnd() {
			return &Node{Op: OpTurn}
		}
		if p.eat("to") || p.eat("the") || p.peek(0).kind == 'w' {
			return p.edge()
		}
	case "rotate":
		p.i++
		return p.edge()
	case "do":
		if p.eat("do", "not") || p.eat("don't") {
			n := &Node{Op: OpNothing, Name: "do not " + p.peek(0).s}
			p.clause(",;.")
			return n
		}
	case "at":
		if p.eat("at", "the", "same", "time") {
			p.same = true
			return &Node{Op: OpNothing}
		}
	case "join", "joining", "rejoin", "attach":
		if p.isWord("join") && p.peek(1).s == "the" && p.peek(2).s == "parts" {
			return nil
		}
		return p.join()
	case "sk", "skip", "miss", "skipping", "missing":
		p.i++
		return p.skip()
	case "leave", "leaving":
		p.i++
		return p.leave()
	case "fasten", "finish", "break", "cut":
		if p.eatAny("fasten", "finish") && p.eat("off") {
			return &Node{Op: OpFasten}
		}
		p.clause(";.")
		return &Node{Op: OpNothing}
	case "with", "using", "being", "taking", "weave", "sew", "change", "place", "pm", "slip", "working", "beginning", "beg", "starting", "set", "remove", "seam", "move":
		if p.eat("working") || p.eat("work") {
			if l := p.loopWords(); l != BothLoops {
				p.loop = l
				p.sign(",")
				return p.one()
			}
			p.i--
		}
		if p.isStitch() || p.isWord("place") && (p.peek(1).kind == 'n' || p.peek(1).s == "markers" && p.peek(2).s == "between") {
			return nil
		}
		if p.eat("beginning", "with") || p.eat("beg", "with") || p.eat("starting", "with") {
			p.clause(",;.")
			return &Node{Op: OpNothing}
		}
		if p.isWord("slip") || p.isWord("beginning") || p.isWord("beg") {
			return nil
		}
		if p.eat("working", "last") || p.eat("working", "along") || p.eat("working", "into") || p.eat("working", "across") {
			p.clause(",;.")
			return &Node{Op: OpNothing}
		}
		if p.eat("working", "in") || p.eat("working", "through") {
			p.clause(",;.")
			return &Node{Op: OpNothing}
		}
		if p.isWord("working") {
			p.i++
			return p.one()
		}
		switch p.peek(0).s {
		case "sew", "weave", "seam", "set":
			p.clause(";.")
			return &Node{Op: OpNothing}
		}
		if w := p.peek(0).s; (w == "with" || w == "using") && p.peek(1).kind == 'n' {
			return nil
		}
		p.clause(",;.")
		return &Node{Op: OpNothing}
	case "psso":
		p.i++
		return &Node{Op: OpPsso}
	case "pass":
		if p.eat("pass", "slipped", "st", "over") || p.eat("pass", "slipped", "stitch", "over") {
			return &Node{Op: OpPsso}
		}
	}
	return nil
}

// one reads the next instruction and joins what it gives into one node.
func (p *parser) one() *Node {
	if p.atEnd() || p.done() {
		return &Node{Op: OpNothing}
	}
	if p.depth++; p.depth > 4*maxDepth {
		p.deep, p.i = true, len(p.t)
	}
	defer func() { p.depth-- }()
	list := p.item()
	if len(list) == 1 {
		return list[0]
	}
	return &Node{Op: OpGroup, Body: list, Times: Num{All: 1}, Stop: -1}
}

func (p *parser) atEnd() bool {
	t := p.peek(0)
	if p.done() {
		return true
	}
	if t.kind != 'p' {
		return false
	}
	switch t.s {
	case ",", ".", ";", ")", "]", "}", ":", "*", "**":
		return true
	}
	return false
}

func (p *parser) isStitch() bool {
	i := p.i
	_, _, ok := p.stitchName()
	p.i = i
	return ok
}

func (p *parser) edge() *Node {
	start := p.i
	along := false
	for !p.done() && !p.is(".") && !p.is(";") {
		switch p.next().s {
		case "edge", "side", "ends", "along":
			along = true
		}
	}
	if along {
		return &Node{Op: OpEdge}
	}
	n := &Node{Op: OpUnread, At: p.span(start, p.i-1)}
	p.unread(n.At)
	return n
}

// join reads the joining of a round, or the joining of yarn.
func (p *parser) join() *Node {
	p.i++
	if p.eat("yarn") || p.eat("new", "yarn") || p.isWord("working") {
		n := &Node{Op: OpJoinYarn, Name: "yarn"}
		for !p.atEnd() {
			if w := p.peek(0).s; w == "next" || w == "foundation" || w == "edge" || w == "underarm" || w == "held" || w == "holder" || w == "lower" {
				n.Name = w
			}
			p.i++
		}
		return n
	}
	n := &Node{Op: OpJoin}
	for !p.atEnd() {
		if p.eat("to", "form", "a", "ring") || p.eat("to", "form", "ring") || p.eat("into", "a", "ring") || p.eat("into", "ring") {
			n.Name = "ring"
			continue
		}
		if p.eat("to", "work", "in", "the", "round") || p.eat("in", "the", "round") || p.eat("for", "working") || p.eat("into", "round") {
			n.Name = "round"
			continue
		}
		if p.isWord("and") && (p.peek(1).s == "turn") {
			break
		}
		if t := p.peek(0); t.kind == 'w' && t.num.All > 0 && (p.peek(1).s == "ch" || p.peek(1).s == "chain") {
			n.N = t.num
			p.i += 2
			continue
		}
		if p.eat("top") || p.eat("of") {
			p.eat("of")
			p.eatAny("the", "turning", "beg", "beginning", "starting")
			if v := p.chainCalled(); v.All > 0 {
				n.Told = v
			}
			continue
		}
		p.i++
	}
	return n
}

func (p *parser) skip() *Node {
	n := &Node{Op: OpSkip}
	start := p.i
	p.eat("the")
	pl := Place{Kind: InNext, N: Num{All: 1}, At: p.span(start, start)}
	switch {
	case p.eat("first"):
		pl.Kind = InFirst
	case p.eat("last"):
		pl.Kind = InLast
	default:
		p.eatAny("next", "following", "foll")
	}
	if v, ok := p.number(); ok {
		pl.N = v
	}
	p.eatAny("next", "first", "rem", "remaining")
	u, ok := p.unit()
	if !ok && (p.atEnd() || p.isWord("and")) { // sk 2
		u, ok = Unit{Word: "sts"}, true
	}
	if !ok {
		return nil
	}
	pl.Unit = u
	pl.At = p.span(start, p.i-1)
	n.Places = []Place{pl}
	for p.isWord("and") && (p.peek(1).s == "next" || p.peek(1).kind == 'n') {
		save := p.i
		p.i++
		q := Place{Kind: InNext, N: Num{All: 1}}
		p.eat("next")
		if v, ok := p.number(); ok {
			q.N = v
		}
		u, ok := p.unit()
		if !ok || p.isWord("in") || p.isWord("into") {
			p.i = save
			break
		}
		q.Unit = u
		n.Places = append(n.Places, q)
	}
	for _, w := range []string{"of", "for", "at", "on"} { // skip next 4 unworked sts of Body for underarm
		if p.isWord(w) {
			for !p.atEnd() && !p.isWord("and") {
				p.i++
			}
		}
	}
	return n
}

func (p *parser) leave() *Node {
	n := &Node{Op: OpLeave, Open: true}
	p.eat("the")
	p.eat("last")
	p.eatAny("rem", "remaining")
	if v, ok := p.number(); ok {
		n.N, n.Open = v, false
	}
	p.eatAny("rem", "remaining")
	if _, ok := p.unit(); !ok {
		return nil
	}
	if !p.eatAny("unworked", "on", "unfinished", "held", "live") {
		return nil
	}
	p.eat("a", "holder")
	if p.isWord("at") && !n.Open {
		return p.atOnce(false, n.N)
	}
	for !p.atEnd() {
		p.i++
	}
	return n
}

// making reads stitches: 2 dc in next st, sc in each st across, k3, ch 2, 5 ch.
func (p *parser) making() *Node {
	start := p.i
	p.eatAny("work", "make", "knit", "purl")
	if p.i > start && (p.peek(0).kind != 'n' || p.peek(-1).s == "knit" || p.peek(-1).s == "purl") {
		p.i = start
	}
	n := &Node{Op: OpStitch, N: Num{All: 1}, Loop: p.loop}
	counted := false
	if v, ok := p.number(); ok {
		n.N, counted = v, true
	}
	if g := p.group(); g != nil {
		n.Call = g
	} else if s, v, ok := p.stitchName(); ok {
		n.Stitch = s
		if v.All > 0 {
			if counted {
				return nil
			}
			n.N, counted = v, true
		}
	} else if p.eatAny("inc", "increase", "incs") {
		n.Inc = true
		n.Name = "inc"
	} else if p.eatAny("dec", "decrease", "decs") {
		n.Name = "dec"
	} else {
		return nil
	}
	if n.Stitch != nil && n.Stitch.ID == "ch" {
		return p.chain(n, counted)
	}
	if !counted {
		if t := p.peek(0); t.kind == 'n' && !(p.peek(1).kind == 'w' && (p.peek(1).s == "times" || p.peek(1).s == "more")) {
			n.N, _ = p.number()
			counted = true
		}
	}
	if p.isWord("x") && p.peek(1).kind == 'n' && !counted { // inc x6
		p.i++
		n.N, counted = p.peek(0).num, true
		p.i++
	}
	if p.eatAny("times", "x") { // inc 6 times
		counted = true
	}
	if n.Stitch != nil && n.Stitch.Craft == stitch.Knitting {
		return p.knitting(n, counted)
	}
	of := false
	if l := p.loopWords(); l != BothLoops {
		n.Loop = l
		of = p.eat("of")
	}
	p.places(n, of)
	if n.Stitch != nil && n.Stitch.ID == "slst" && p.isWord("to") { // sl st in first ch to form a ring
		j := &Node{Op: OpJoin}
		for !p.atEnd() {
			if w := p.next().s; w == "ring" || w == "circle" {
				j.Name = "ring"
			}
		}
		for _, q := range n.Places {
			j.Told = q.Unit.Size
		}
		return j
	}
	if len(n.Places) == 0 {
		if e, ok := p.extent(); ok {
			n.Places = []Place{{Kind: InEach, Unit: Unit{Word: "st"}, Extent: e, At: e.At}}
			n.N = Num{All: 1}
		}
	}
	// '3 times' behind a single stitch: sc2tog 3 times
	save := p.i
	if v, ok := p.number(); ok && p.eatAny("times", "x") && len(n.Places) == 0 {
		n.N = v
	} else {
		p.i = save
		if p.eat("twice") && len(n.Places) == 0 {
			n.N = Num{All: 2}
		}
	}
	return n
}

// group takes the name of a group that the text defines.
func (p *parser) group() *Group {
	t := p.peek(0)
	if t.kind != 'w' {
		return nil
	}
	for _, g := range p.x.Groups {
		if t.s == g.Name || t.s == g.Name+"s" || t.s == g.Name+"es" {
			p.i++
			return g
		}
		if p.peek(1).kind == 'w' {
			if two := t.s + " " + p.peek(1).s; two == g.Name || two == g.Name+"s" || two == g.Name+"es" {
				p.i += 2
				return g
			}
		}
	}
	return nil
}
