package rows

import "strings"

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
	round, ok := isRowWord(p.peek(0).s)
	if ok {
		p.i++
	}
	w.rounds = w.rounds || round
	return ok
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
	if !p.shapeWords(n) {
		return nil
	}
	return n
}

// shapeWords reads where and how often a shaping is done.
func (p *parser) shapeWords(n *Node) bool {
	for !p.done() {
		save := p.i
		p.sign(",")
		switch {
		case p.eat("at"):
			p.eat("the")
			switch {
			case p.eatAny("each", "both"):
				n.told().Both = true
				if !p.eatAny("end", "ends", "side", "sides", "edge", "edges") {
					return false
				}
				p.ofPanel(n)
			case p.eatAny("middle", "centre", "center"):
				p.eatAny("st", "stitch")
				n.told().inner = true
			case p.eat("marked", "edge"):
				n.told().inner = true
				p.ofPanel(n)
			case p.peek(0).kind == 'w' && (p.peek(1).s == "edge" || p.peek(1).s == "end"):
				n.told().Both = false
				n.Name = p.peek(0).s
				p.i += 2
				if s := p.peek(1); p.is("(") && (s.s == "left" || s.s == "right") && p.peek(2).s == ")" {
					n.told().edge = s.s
					p.i += 3
				}
			case p.eatAny("beg", "beginning", "end", "start"):
				n.Name = "edge"
			default:
				return false
			}
		case p.eat("evenly"):
			p.eat("spaced")
			p.eat("across")
		case p.isWord("after") && p.peek(1).kind == 'n':
			p.i += 2
			if _, ok := isRowWord(p.peek(0).s); !ok {
				return false
			}
			p.i++
		case p.eat("over"):
			v, ok := p.number()
			round, isRow := isRowWord(p.peek(0).s)
			if !ok || !isRow {
				return false
			}
			p.i++
			n.told().rounds = n.told().rounds || round
			n.told().Over, n.told().HasOver = v, true
		case p.peek(1).s == "every" && n.told().HasTimes && p.eat("then"):
			p.i++
			var w Where
			if !p.everyRow(&w) {
				return false
			}
			m := Node{Times: Num{All: 1}}
			p.until(&m)
			n.told().Then = append(n.told().Then, Spacing{w.Every, m.Times})
		case p.eat("on", "each", "side", "of") || p.eat("each", "side", "of") || p.eat("at", "each", "side", "of"):
			p.eatAny("each", "every")
			p.eat("of")
			p.eat("the")
			n.told().Both, n.told().marked = true, true
			if v, ok := p.number(); ok {
				n.told().markers = v
			}
			p.eat("marked")
			if !p.eatAny("marker", "markers", "line", "lines") {
				return false
			}
		case p.eat("each", "side") || p.eat("each", "end") || p.eat("on", "each", "side") || p.eat("on", "each", "end"):
			n.told().Both = true
		case p.eat("on", "next") || p.eat("of", "next") || p.eat("in", "next") || p.eat("on", "the", "next"):
			if m, ok := p.number(); ok {
				n.told().Rows = m
			} else {
				n.told().First = true
			}
			switch p.peek(0).s {
			case "rs":
				n.told().RSOnly = true
				p.i++
			case "ws":
				n.told().WSOnly = true
				p.i++
			}
			if _, ok := isRowWord(p.peek(0).s); ok {
				p.i++
			} else if !(p.isWord("and")) {
				return false
			}
			if p.eat("and", "every") || p.eat("and", "on", "every") || p.eat("then", "every") || p.eat("and", "each") {
				p.everyRow(n.told())
			}
		case p.eat("on", "every") || p.eat("every") || p.eat("of", "every") || p.eat("on", "each") || p.eat("then", "every") || p.eat("in", "every"):
			if !p.everyRow(n.told()) {
				return false
			}
		case p.eat("in") && p.inCloth(n):
		default:
			p.i = save
			p.until(n)
			if p.i == save {
				return true
			}
		}
	}
	return true
}

// ofPanel reads of which panel an end is: of Left arm. An end of the next row, or of every
// row, is one of the whole row.
func (p *parser) ofPanel(n *Node) {
	switch p.peek(1).s {
	case "the", "next", "every", "each", "foll", "following", "this", "these":
		return
	}
	if _, row := isRowWord(p.peek(1).s); row || p.peek(1).kind == 'n' || !p.eat("of") {
		return
	}
	n.told().inner = true
	from := p.i
	for !p.atEnd() && !p.isWord("every") && !p.isWord("on") && !p.isWord("each") && !p.is(",") {
		p.i++
	}
	n.told().panel = words(p.t[from:p.i])
}

// atOnce is a shaping that takes no row: stitches added, or left, at an edge.
func (p *parser) atOnce(inc bool, v Num) *Node {
	n := &Node{Op: OpShape, Inc: inc, N: v}
	n.told().HasOver = true
	if !p.shapeWords(n) {
		return nil
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
		if save := p.i; !p.eat("in") || !p.inCloth(n) {
			p.i = save
		}
		return n
	}
	if p.isWord("at") && ok && bind { // every 2 rows 3 times, over 6 rows
		save := p.i
		if m := p.atOnce(false, n.N); m != nil && (m.where().HasTimes || m.where().Over.set()) {
			return m
		}
		p.i = save
	}
	for !p.atEnd() {
		p.i++
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
			p.unit()
			n.Groups = append(n.Groups, StitchGroup{N: v, Any: true})
			continue
		}
		if k := len(n.Groups); k > 0 && !p.is(",") {
			n.Groups[k-1].Unit.Word = strings.TrimSpace(n.Groups[k-1].Unit.Word + " " + p.peek(0).s)
		}
		p.i++
	}
	if len(n.Groups) == 0 {
		return nil
	}
	return n
}
