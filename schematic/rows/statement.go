package rows

// statement reads instructions that are about whole rows: rep Rows 2 and 3 five
// times, work even, dec 1 st at neck edge, bind off 4 sts at beg of next 2 rows.
func (p *parser) statement() *Node {
	switch p.peek(0).s {
	case "rep", "repeat", "continue", "cont":
		if p.isWord("rep") || p.isWord("repeat") {
			p.i++
			return p.repRows()
		}
		p.i++
		p.eat("to")
		p.eatAny("work", "working")
		return p.even()
	case "work":
		p.i++
		if p.isWord("as") && (p.peek(1).s == "row" || p.peek(1).s == "rnd" || p.peek(1).s == "round") {
			p.i++
			return p.repRows()
		}
		if p.eat("as", "for") || p.eat("as", "given", "for") {
			return p.asFor()
		}
		save := p.i
		if n := p.even(); n != nil {
			return n
		}
		p.i = save
		if n := p.alongEdge(); n != nil {
			return n
		}
		p.i = save - 1
		return nil
	case "as", "same":
		if p.eat("as", "for") {
			return p.asFor()
		}
		if p.eat("same", "as") || p.eat("as") {
			return p.repRows()
		}
	case "dec", "decrease", "inc", "increase":
		inc := short(p.next().s) == "inc"
		return p.shape(inc)
	case "add", "adding":
		p.i++
		v, ok := p.number()
		if !ok {
			return nil
		}
		if _, ok := p.unit(); !ok {
			return nil
		}
		return p.atOnce(true, v)
	case "bind", "cast", "bo", "co":
		return p.castOrBind()
	case "pick":
		if p.eat("pick", "up") {
			p.eat("and")
			p.eatAny("knit", "k", "purl", "p", "work", "sc")
			n, ok := p.number()
			if !ok {
				return nil
			}
			if _, ok := p.unit(); !ok {
				return nil
			}
			out := &Node{Op: OpPickUp, N: n}
			p.clause(",;.")
			return out
		}
	case "make":
		return nil
	case "divide":
		p.i++
		return p.parts(OpDivide)
	case "join":
		if p.eat("join", "the", "parts") {
			return p.parts(OpTogether)
		}
	case "take":
		if p.eat("take", "up") {
			return p.parts(OpTogether)
		}
	case "place":
		if m := p.peek(1).s; m == "markers" && p.peek(2).s == "between" {
			return p.parts(OpMarkers)
		}
		if m := p.peek(2).s; p.peek(1).kind == 'n' && (m == "marker" || m == "markers") {
			p.clause(";.")
			return &Node{Op: OpNothing}
		}
		if p.eat("place") {
			if v, ok := p.number(); ok {
				if _, ok := p.unit(); ok && p.eat("on") {
					p.clause(",;.")
					return &Node{Op: OpBindOff, N: v, Name: "hold"}
				}
			}
		}
	}
	// Piece measures 46 cm / 18 in
	if n := p.measures(); n != nil {
		return n
	}
	return nil
}

func (p *parser) measures() *Node {
	for k := range 6 {
		t := p.peek(k)
		if t.kind != 'w' {
			return nil
		}
		if t.s == "measures" {
			p.i += k + 1
			n := &Node{Op: OpMeasure, Lines: p.length()}
			if n.Lines == nil {
				return nil
			}
			for !p.done() && !p.is(".") && !p.is(";") && !p.is(",") {
				n.Lines.From += p.next().s + " "
			}
			return n
		}
	}
	return nil
}

func (p *parser) repRows() *Node {
	n := &Node{Op: OpRep, Times: Num{All: 1}}
	p.eat("the")
	if p.eatAny("last", "previous", "prev") {
		n.Name = "last"
		n.N = Num{All: 1}
		if v, ok := p.number(); ok {
			n.N = v
		}
	} else if p.eatAny("these", "both") {
		n.Name = "last"
		n.N = Num{All: 2}
		if v, ok := p.number(); ok {
			n.N = v
		}
	} else if w := p.peek(0).s; w == "inc" || w == "dec" || w == "increase" || w == "decrease" {
		n.Name = short(w)
		p.i++
	}
	if _, ok := isRowWord(p.peek(0).s); !ok {
		return nil
	}
	p.i++
	if n.Name == "" {
		v, ok := p.number()
		if !ok {
			return nil
		}
		n.Rows = []Num{v}
		for {
			if k := p.peek(1).kind; k == 'n' && (p.sign("-") || p.eat("to") || p.eat("through")) {
				v, ok := p.number()
				if !ok {
					return nil
				}
				n.More = true // a stretch from the first to the last
				n.Rows = append(n.Rows, v)
				continue
			}
			save := p.i
			if (p.eat("and") || p.sign(",")) && p.peek(0).kind == 'n' {
				v, _ := p.number()
				n.Rows = append(n.Rows, v)
				continue
			}
			p.i = save
			break
		}
	}
	p.eat("alternately")
	p.eat("for", "pattern")
	p.eat("for", "patt")
	p.until(n)
	return n
}

// until reads how long rows go on: 5 times, to end of row 30 (32, 36), until piece
// measures 20 cm, ending after a wrong-side row, every 6th row 4 more times.
func (p *parser) until(n *Node) {
	for !p.done() {
		save := p.i
		p.sign(",")
		switch {
		case p.eat("once"):
			p.eat("more")
			n.Times, n.told().Times = Num{All: 1}, Num{All: 1}
			n.told().HasTimes = true
		case p.eat("twice"):
			p.eat("more")
			n.Times, n.told().Times = Num{All: 2}, Num{All: 2}
			n.told().HasTimes = true
		case p.eat("every") || p.eat("on", "every") || p.eat("each") || p.eat("on", "each") || p.eat("of", "every"):
			p.everyRow(n.told())
		case p.eat("to", "end", "of") || p.eat("until", "end", "of") || p.eat("through") || p.eat("to"):
			if _, ok := isRowWord(p.peek(0).s); !ok {
				p.i = save
				return
			}
			p.i++
			v, ok := p.number()
			if !ok {
				p.i = save
				return
			}
			n.told().ToRow = v
		case p.eat("until"):
			if !p.untilWhat(n) {
				p.i = save
				return
			}
		case p.eat("ending") || p.eat("end"):
			p.eatAny("after", "with", "on")
			p.eatAny("a", "an")
			switch {
			case p.eat("rs") || p.eat("right", "side") || p.eat("right-side"):
				n.told().EndRS = 1
			case p.eat("ws") || p.eat("wrong", "side") || p.eat("wrong-side"):
				n.told().EndRS = 2
			default:
				p.i = save
				return
			}
			p.eatAny("row", "rnd", "round")
		case p.eat("for"):
			p.eatAny("a", "another")
			v, ok := p.number()
			if !ok {
				p.i = save
				return
			}
			p.eat("more")
			if _, ok := isRowWord(p.peek(0).s); !ok {
				p.i = save
				return
			}
			p.i++
			n.told().Rows = v
		default:
			v, ok := p.number()
			if ok {
				p.eat("more")
				if p.eatAny("times", "time", "x") {
					p.eat("more")
					n.Times, n.told().Times = v, v
					n.told().HasTimes = true
					continue
				}
			}
			p.i = save
			return
		}
	}
}

func (p *parser) untilWhat(n *Node) bool {
	if v, ok := p.number(); ok { // until 60 sts rem
		if _, ok := p.unit(); !ok {
			return false
		}
		p.eatAny("rem", "remain", "remaining")
		p.eat("there")
		p.eat("are")
		n.told().Until = v
		return true
	}
	if p.eat("there", "are") {
		v, ok := p.number()
		if !ok {
			return false
		}
		p.unit()
		n.told().Until = v
		return true
	}
	if _, ok := isRowWord(p.peek(0).s); ok { // until row 156 is complete
		p.i++
		v, ok := p.number()
		if !ok {
			return false
		}
		p.eatAny("is", "has")
		p.eat("been")
		p.eatAny("complete", "completed", "worked", "done")
		n.told().ToRow = v
		return true
	}
	if m := p.measures(); m != nil {
		n.told().Length = m.Lines
		return true
	}
	return false
}

// even reads work even for 10 rows, 12 rows even, even until ...
func (p *parser) even() *Node {
	n := &Node{Op: OpEven}
	p.eat("a", "further")
	p.eat("another")
	rows := false
	if v, ok := p.number(); ok {
		p.eat("more")
		short := p.eat("short")
		round, ok := isRowWord(p.peek(0).s)
		if !ok {
			return nil
		}
		p.i++
		n.told().Rows, rows = v, true
		n.told().rounds = round
		if short {
			p.shortRows(n)
			if save := p.i; !p.eat("in") || !p.inCloth(n) {
				p.i = save
			}
			return n
		}
	}
	said := p.eat("even") || p.eat("straight") || p.eat("without", "shaping") || p.eat("in", "pattern") || p.eat("in", "patt") || p.eat("as", "established")
	for p.eat("in") {
		said = true
		from := p.i
		for !p.done() && !p.is(".") && !p.is(";") && !(p.is(",") && p.peek(1).s == "ending") && !p.isWord("until") && !p.isWord("for") && !p.isWord("to") {
			p.i++
		}
		if c := p.cloth(from); c != (cloth{}) {
			n.told().cloth = c
		}
	}
	p.eat("without", "shaping")
	p.eat("as", "set")
	p.eat("as", "established")
	if !said {
		return nil
	}
	p.until(n)
	if !rows && n.told().Rows.All == 0 && n.told().Rows.By == nil && n.told().Length == nil && n.told().ToRow.All == 0 && n.told().ToRow.By == nil {
		return nil
	}
	return n
}

// shortRows reads over the middle 66 sts, turning 4 sts sooner each time.
func (p *parser) shortRows(n *Node) {
	save := p.i
	if p.eat("over") {
		p.eat("the")
		p.eatAny("middle", "centre", "center", "first", "last")
		v, ok := p.number()
		if ok {
			_, ok = p.unit()
		}
		if !ok {
			p.i = save
			return
		}
		n.told().part = v
		if p.isWord("at") && (p.peek(2).s == "edge" || p.peek(2).s == "end") {
			p.i += 3
		}
	}
	save = p.i
	p.sign(",")
	if !p.eat("turning") {
		p.i = save
		return
	}
	if _, ok := p.number(); !ok {
		p.i = save
		return
	}
	p.unit()
	if !p.eat("sooner") && !p.eat("before", "the", "last", "turn") {
		p.i = save
		return
	}
	_ = p.eat("each", "time") || p.eat("at", "each", "end") || p.eat("each", "row")
	save = p.i
	if p.sign(",") && !p.isWord("in") {
		p.i = save
	}
}

func (p *parser) asFor() *Node {
	n := &Node{Op: OpAsFor}
	for !p.atEnd() && !p.isWord("to") && !p.isWord("until") && !p.isWord("reversing") {
		if n.Name != "" {
			n.Name += " "
		}
		n.Name += p.next().s
	}
	for !p.done() && !p.is(".") && !p.is(";") {
		switch {
		case p.eat("reversing") || p.eat("reverse"):
			n.Back = true
		case p.eat("to", "end", "of") || p.eat("to") || p.eat("until"):
			if _, ok := isRowWord(p.peek(0).s); ok {
				p.i++
				if v, ok := p.number(); ok {
					n.told().ToRow = v
				}
				continue
			}
			for !p.atEnd() {
				if n.Lines == nil {
					n.Lines = &Lengths{}
				}
				n.Lines.From += p.next().s + " "
			}
		default:
			p.i++
		}
	}
	return n
}

// alongEdge reads 'work 65 sc evenly along edge', '1 hdc in each row along edge',
// '6 hdc along underarm ch'.
func (p *parser) alongEdge() *Node {
	n := &Node{Op: OpPickUp}
	v, ok := p.number()
	if !ok {
		return nil
	}
	s, _, ok := p.stitchName()
	if !ok {
		return nil
	}
	n.N, n.Stitch = v, s
	switch {
	case p.eat("evenly"):
		for !p.atEnd() {
			p.i++
		}
	case p.isWord("along") || p.isWord("around") || p.isWord("up") || p.isWord("down"):
		for !p.atEnd() && !p.isWord("and") {
			p.i++
		}
	default:
		return nil
	}
	return n
}
