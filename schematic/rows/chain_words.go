package rows

// chain finishes reading ch 3, 3 ch, ch-3.
func (p *parser) chain(n *Node, counted bool) *Node {
	n.Op = OpChain
	if !counted {
		if v, ok := p.chainSize(); ok {
			n.N = v
		} else if v, ok := p.number(); ok {
			n.N = v
		}
	}
	if p.eatAny("sts", "st", "loosely") {
		p.eat("loosely")
	}
	if p.isWord("in") || p.isWord("into") { // '1 ch in ...' is none
		return nil
	}
	p.counts(n)
	return n
}

// counts reads (counts as dc), (counts as first dc and ch 1), (does not count as a st).
func (p *parser) counts(n *Node) {
	save := p.i
	open := p.sign("(") || p.sign("[")
	if !open {
		p.sign(",")
	}
	not := false
	p.eatAny("here", "now", "this", "always")
	if p.eat("does", "not") || p.eat("do", "not") || p.eat("not") {
		not = true
	}
	if !p.eatAny("counts", "count", "counted", "counting") {
		p.i = save
		return
	}
	p.eat("here")
	p.eat("and", "throughout")
	n.Counts = CountsAsStitch
	if not {
		n.Counts = CountsNot
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
		p.eatAny("here", "throughout")
		if p.eat("and") || p.sign("+") || p.sign(",") {
			p.number()
			if p.eatAny("ch", "chain", "chs") {
				if v, ok := p.chainSize(); ok {
					n.M = v
				} else if v, ok := p.number(); ok {
					n.M = v
				} else {
					n.M = Num{All: 1}
				}
				if k := p.peek(-2); n.M.All == 1 && k.kind == 'n' {
					n.M = k.num
				}
			}
		}
		p.eatAny("sp", "space", "here", "throughout")
	}
	if open {
		for !p.done() && !p.is(")") && !p.is("]") {
			p.i++
		}
		p.i++
	}
}

// knitting finishes reading k3, k to end, k to last 3 sts, sl 1.
func (p *parser) knitting(n *Node, counted bool) *Node {
	if p.eatAny("all", "every") {
		p.eatAny("sts", "st", "stitches")
		n.Places = []Place{{Kind: InEach, Unit: Unit{Word: "st"}, Extent: Extent{Kind: ToEnd}}}
		return n
	}
	if p.eatAny("sts", "st", "stitches", "stitch") && !counted {
		return nil
	}
	p.eat("tbl")
	p.eatAny("wise", "purlwise", "knitwise", "wyif", "wyib")
	if n.Stitch.Uses == 0 && p.eat("times") {
		return n
	}
	if e, ok := p.extent(); ok && !counted {
		n.Places = []Place{{Kind: InEach, Unit: Unit{Word: "st"}, Extent: e, At: e.At}}
		return n
	}
	if p.eat("in", "each", "st") || p.eat("each", "st") || p.eat("every", "st") {
		e, ok := p.extent()
		if !ok {
			e.Kind = ToEnd
		}
		n.Places = []Place{{Kind: InEach, Unit: Unit{Word: "st"}, Extent: e, At: e.At}}
		return n
	}
	if p.eat("in", "next") || p.eat("in") && p.eat("next") {
		p.number()
		p.unit()
	}
	if v, ok := p.number(); ok && p.eatAny("times", "x") {
		n.N = v
	}
	return n
}
