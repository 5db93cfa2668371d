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
	case "as":
		if p.eat("as", "for") {
			return p.asFor()
		}
	case "dec", "decrease", "inc", "increase":
		inc := short(p.next().s) == "inc"
		return p.shape(inc)
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
			n.Times, n.Where.Times = Num{All: 1}, Num{All: 1}
			n.Where.HasTimes = true
		case p.eat("twice"):
			p.eat("more")
			n.Times, n.Where.Times = Num{All: 2}, Num{All: 2}
			n.Where.HasTimes = true
		case p.eat("every") || p.eat("on", "every") || p.eat("each") || p.eat("on", "each") || p.eat("of", "every"):
			p.everyRow(&n.Where)
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
			n.Where.ToRow = v
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
				n.Where.EndRS = 1
			case p.eat("ws") || p.eat("wrong", "side") || p.eat("wrong-side"):
				n.Where.EndRS = 2
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
			n.Where.Rows = v
		default:
			v, ok := p.number()
			if ok {
				p.eat("more")
				if p.eatAny("times", "time", "x") {
					p.eat("more")
					n.Times, n.Where.Times = v, v
					n.Where.HasTimes = true
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
		n.Where.Until = v
		return true
	}
	if p.eat("there", "are") {
		v, ok := p.number()
		if !ok {
			return false
		}
		p.unit()
		n.Where.Until = v
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
		n.Where.ToRow = v
		return true
	}
	if m := p.measures(); m != nil {
		n.Where.Length = m.Lines
		return true
	}
	return false
}

// everyRow reads '6th row', 'RS row', 'foll 4th row', 'other row', 'row'.
func (p *parser) everyRow(w *Where) bool {
	w.Every = Num{All: 1}
	p.eatAny("foll", "following")
	switch t := p.peek(0); {
	case t.kind == 'w' && t.num.All > 0:
		w.Every = t.num
		p.i++
	case p.eat("other") || p.eat("alt") || p.eat("alternate"):
		w.Every = Num{All: 2}
	case p.eat("rs") || p.eat("right", "side") || p.eat("right-side"):
		w.RSOnly, w.Every = true, Num{All: 2}
	case p.eat("ws") || p.eat("wrong", "side") || p.eat("wrong-side"):
		w.WSOnly, w.Every = true, Num{All: 2}
	default:
		if v, ok := p.number(); ok {
			w.Every = v
		}
	}
	_, ok := isRowWord(p.peek(0).s)
	if ok {
		p.i++
	}
	return ok
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
		if _, ok := isRowWord(p.peek(0).s); !ok {
			return nil
		}
		p.i++
		n.Where.Rows, rows = v, true
		if short {
			return n
		}
	}
	said := p.eat("even") || p.eat("straight") || p.eat("without", "shaping") || p.eat("in", "pattern") || p.eat("in", "patt") || p.eat("as", "established")
	for p.eat("in") {
		said = true
		for !p.atEnd() && !p.isWord("until") && !p.isWord("for") && !p.isWord("to") {
			p.i++
		}
	}
	p.eat("without", "shaping")
	p.eat("as", "set")
	p.eat("as", "established")
	if !said {
		return nil
	}
	p.until(n)
	if !rows && n.Where.Rows.All == 0 && n.Where.Rows.By == nil && n.Where.Length == nil && n.Where.ToRow.All == 0 && n.Where.ToRow.By == nil {
		return nil
	}
	return n
}

// shape reads 1 st at each end of every 6th row 5 times, and the like.
func (p *parser) shape(inc bool) *Node {
	n := &Node{Op: OpShape, Inc: inc, More: p.same}
	p.same = false
	v, ok := p.number()
	if !ok {
		return nil
	}
	if u, ok := p.unit(); !ok || u.Word != "st" && u.Word != "sts" && u.Word != "stitch" && u.Word != "stitches" && u.Stitch == nil {
		return nil
	}
	n.N = v
	for !p.done() {
		save := p.i
		p.sign(",")
		switch {
		case p.eat("at"):
			p.eat("the")
			switch {
			case p.eatAny("each", "both"):
				n.Where.Both = true
				if !p.eatAny("end", "ends", "side", "sides", "edge", "edges") {
					return nil
				}
			case p.eatAny("neck", "armhole", "front", "side", "raglan", "shoulder", "inner", "outer", "left", "right"):
				n.Where.Both = false
				n.Name = p.peek(-1).s
				if !p.eat("edge") && !p.eat("end") {
					return nil
				}
			case p.eatAny("beg", "beginning", "end", "start"):
				n.Name = "edge"
			default:
				return nil
			}
		case p.eat("evenly"):
			p.eat("spaced")
			p.eat("across")
		case p.isWord("after") && p.peek(1).kind == 'n':
			p.i += 2
			if _, ok := isRowWord(p.peek(0).s); !ok {
				return nil
			}
			p.i++
		case p.eat("over"):
			v, ok := p.number()
			if _, isRow := isRowWord(p.peek(0).s); !ok || !isRow {
				return nil
			}
			p.i++
			n.Where.Over, n.Where.HasOver = v, true
		case p.peek(1).s == "every" && n.Where.HasTimes && p.eat("then"):
			p.i++
			var w Where
			if !p.everyRow(&w) {
				return nil
			}
			m := Node{Times: Num{All: 1}}
			p.until(&m)
			n.Where.Then = append(n.Where.Then, Spacing{w.Every, m.Times})
		case p.eat("each", "side") || p.eat("each", "end") || p.eat("on", "each", "side") || p.eat("on", "each", "end"):
			n.Where.Both = true
		case p.eat("on", "next") || p.eat("of", "next") || p.eat("in", "next") || p.eat("on", "the", "next"):
			v := Num{All: 1}
			if m, ok := p.number(); ok {
				v = m
				n.Where.Rows = v
			} else {
				n.Where.First = true
			}
			switch p.peek(0).s {
			case "rs":
				n.Where.RSOnly = true
				p.i++
			case "ws":
				n.Where.WSOnly = true
				p.i++
			}
			if _, ok := isRowWord(p.peek(0).s); ok {
				p.i++
			} else if !(p.isWord("and")) {
				return nil
			}
			if p.eat("and", "every") || p.eat("and", "on", "every") || p.eat("then", "every") || p.eat("and", "each") {
				p.everyRow(&n.Where)
			}
		case p.eat("on", "every") || p.eat("every") || p.eat("of", "every") || p.eat("on", "each") || p.eat("then", "every") || p.eat("in", "every"):
			if !p.everyRow(&n.Where) {
				return nil
			}
		default:
			p.i = save
			p.until(n)
			if p.i == save {
				return n
			}
		}
	}
	return n
}

func (p *parser) castOrBind() *Node {
	bind := true
	switch {
	case p.eat("bind", "off") || p.eat("cast", "off") || p.eat("bo"):
	case p.eat("cast", "on") || p.eat("co"):
		bind = false
	default:
		return nil
	}
	n := &Node{Op: OpBindOff}
	if !bind {
		n.Op = OpCastOn
	}
	p.eat("the")
	v, ok := p.number()
	if ok {
		n.N = v
		p.unit()
	} else if p.eatAny("all", "rem", "remaining") {
		p.eatAny("rem", "remaining")
		p.unit()
	} else if !p.atEnd() && !p.isWord("in") {
		return nil
	}
	n.Open = !ok && bind
	if !ok && !bind {
		return nil
	}
	if p.eat("at", "beg", "of") || p.eat("at", "beginning", "of") || p.eat("at", "the", "beginning", "of") || p.eat("at", "start", "of") {
		p.eat("the")
		if !p.eatAny("next", "foll", "following") {
			return nil
		}
		n.M = Num{All: 1}
		if m, ok := p.number(); ok {
			n.M = m
		}
		if _, ok := isRowWord(p.peek(0).s); !ok {
			return nil
		}
		p.i++
		n.Op = OpBindEach
		n.Inc = !bind
		return n
	}
	for !p.atEnd() {
		p.i++
	}
	return n
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
					n.Where.ToRow = v
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

// set reports whether a number was given.
func (n Num) set() bool { return n.By != nil || n.All > 0 }

// parts reads the parts of a division, or those of which one row is made: the
// numbers of a clause, each with its words.
func (p *parser) parts(op Op) *Node {
	n := &Node{Op: op}
	for !p.done() && !p.is(".") && !p.is(";") {
		if v, ok := p.number(); ok {
			n.Groups = append(n.Groups, StitchGroup{N: v, Any: true})
			continue
		}
		p.i++
	}
	if len(n.Groups) == 0 {
		return nil
	}
	return n
}
