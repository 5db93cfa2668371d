package rows

import "flatwright/schematic/stitch"

// loopWords reads BLO, back loop only, through the back loops of.
func (p *parser) loopWords() Loop {
	save := p.i
	p.eatAny("in", "into", "through")
	p.eat("the")
	l := BothLoops
	switch {
	case p.eatAny("blo", "bl", "blos", "tbl"):
		l = BackLoop
	case p.eatAny("flo", "fl", "flos"):
		l = FrontLoop
	case (p.isWord("back") || p.isWord("front")) && (p.peek(1).s == "loop" || p.peek(1).s == "loops" || p.peek(1).s == "lp" || p.peek(1).s == "lps"):
		l = BackLoop
		if p.isWord("front") {
			l = FrontLoop
		}
		p.i += 2
		p.eat("only")
	default:
		p.i = save
		return BothLoops
	}
	p.eat("only")
	return l
}

// places reads into what a stitch is worked: in next 3 sts, in each st across, in
// 2nd ch from hook and in each ch across.
func (p *parser) places(n *Node, bare bool) {
	for {
		save := p.i
		if len(n.Places) > 0 {
			comma := p.sign(",")
			if p.is("(") && n.Places[len(n.Places)-1].Kind == FromHook {
			} else if !p.eat("and") || comma && !p.isPlace() {
				p.i = save
				return
			}
		}
		if k := len(n.Places); k > 0 && n.Places[k-1].Kind == FromHook && len(n.Places) == 1 && p.is("(") {
			p.i++
			if m, ok := p.remark(")"); ok && m.Op == OpChain {
				n.Counts, n.As, n.M, n.Told = m.Counts, m.As, m.M, m.Told
				save = p.i
				if !p.eat("and") {
					p.i = save
					return
				}
			} else {
				p.i = save
				return
			}
		}
		pl, ok := p.place(len(n.Places) > 0 || bare)
		bare = false
		if !ok {
			p.i = save
			// each st and 2 sc in each ch-2 sp: other stitches over the same stretch
			if k := len(n.Places); k > 0 && n.Places[k-1].Kind == InEach && p.isWord("and") {
				p.i++
				if m := p.making(); m != nil && len(m.Places) == 1 && m.Places[0].Kind == InEach && n.Places[k-1].Extent.Kind == NoExtent {
					n.Also = append(n.Also, m)
					n.Places[k-1].Extent = m.Places[0].Extent
					return
				}
				p.i = save
			}
			return
		}
		if k := len(n.Places); k > 0 && pl.Kind == InEach && n.Places[k-1].Kind == InEach && n.Places[k-1].Extent.Kind == NoExtent && !n.Places[k-1].Of {
			m := *n
			m.Places, m.Also = []Place{pl}, nil
			n.Places[k-1].Extent = pl.Extent
			n.Also = append(n.Also, &m)
			continue
		}
		n.Places = append(n.Places, pl)
	}
}

func (p *parser) isPlace() bool {
	switch p.peek(0).s {
	case "in", "into", "each", "next", "first", "last":
		return true
	}
	return false
}

// place reads one place. After 'and' the preposition may be left out.
func (p *parser) place(more bool) (Place, bool) {
	start := p.i
	pl := Place{N: Num{All: 1}}
	switch {
	case p.eatAny("in", "into", "over", "through", "on"):
	case (p.isWord("around") || p.isWord("across")) && (p.isPlaceAfter(1)):
		p.i++
	case p.eat("to") && p.eatAny("next") && false:
	default:
		if !more {
			p.i = start
			return pl, false
		}
	}
	if l := p.loopWords(); l != BothLoops {
		pl.Loop = l
		p.eat("of")
	}
	p.eatAny("the", "post")
	p.eat("of")
	p.eat("the")
	ok := p.core(&pl)
	if !ok {
		p.i = start
		return pl, false
	}
	if more && p.t[start].kind == 'n' && (p.isWord("in") || p.isWord("into") || p.isWord("around") || pl.Unit.Stitch != nil) {
		p.i = start // and 2 sc in ...: another instruction
		return pl, false
	}
	pl.At = p.span(start, p.i-1)
	return pl, true
}

func (p *parser) isPlaceAfter(k int) bool {
	switch p.peek(k).s {
	case "next", "each", "first", "last", "post", "the", "same", "posts":
		return true
	}
	return false
}

func (p *parser) core(pl *Place) bool {
	t := p.peek(0)
	switch {
	case p.eatAny("all"):
		pl.Kind = InEach
		p.eatAny("rem", "remaining")
		return p.placeUnit(pl)
	case p.eatAny("each", "every", "all"):
		pl.Kind = InEach
		p.eat("of")
		p.eat("the")
		p.eatAny("rem", "remaining")
		first := p.eat("first")
		if p.eatAny("next", "following") || first || p.peek(0).kind == 'n' {
			if v, ok := p.number(); ok {
				pl.Kind, pl.N, pl.Of = InNext, v, true
				if first {
					pl.Kind = InFirst
				}
			}
		} else if p.eat("last") {
			if v, ok := p.number(); ok {
				pl.Kind, pl.N = InLast, v
			}
		}
		p.eatAny("rem", "remaining")
		return p.placeUnit(pl)
	case p.eatAny("next", "following", "foll"):
		if v, ok := p.number(); ok {
			pl.N = v
		}
		return p.placeUnit(pl)
	case p.eat("first"):
		pl.Kind = InFirst
		if v, ok := p.number(); ok {
			pl.N = v
		}
		return p.placeUnit(pl)
	case p.eat("last"):
		pl.Kind = InLast
		if v, ok := p.number(); ok {
			pl.N = v
		}
		return p.placeUnit(pl)
	case p.eatAny("rem", "remaining"):
		pl.Kind = InEach
		if v, ok := p.number(); ok {
			pl.Kind, pl.N = InLast, v
		}
		return p.placeUnit(pl)
	case p.eat("same"):
		pl.Kind = InSame
		if !p.placeUnit(pl) && !p.eat("place") {
			return false
		}
		if p.eat("as") {
			for !p.atEnd() && !p.isWord("and") {
				p.i++
			}
		}
		return true
	case p.eat("ring") || p.eat("loop") || p.eat("circle") || p.eat("magic", "ring") || p.eat("magic", "circle") || p.eat("magic", "loop") ||
		p.eat("adjustable", "ring") || p.eat("centre", "of", "ring") || p.eat("center", "of", "ring") || p.eat("a", "magic", "ring") || p.eat("mr"):
		pl.Kind = InRing
		return true
	case p.eat("top", "of") || p.isWord("tch") || p.isWord("turning"):
		p.eat("the")
		p.eatAny("turning", "beg", "beginning", "starting", "tch")
		pl.Kind, pl.Unit = InTop, Unit{Word: "tch"}
		pl.Unit.Size = p.chainCalled()
		return p.peek(-1).s != "of"
	case t.kind == 'w' && t.num.All > 0: // 2nd ch from hook; 3rd dc of next shell
		p.i++
		u, ok := p.unit()
		if !ok {
			return false
		}
		pl.N, pl.Unit = t.num, u
		switch {
		case p.eat("from", "hook") || p.eat("from", "the", "hook"):
			pl.Kind = FromHook
			return u.Chain
		case p.eat("of"):
			p.eatAny("turning", "beg", "beginning", "the")
			if p.eat("tch") {
				pl.Kind = InTop
				return true
			}
			if p.eat("next") {
				return p.centre(pl)
			}
			size := p.chainCalled()
			pl.Kind, pl.Unit.Size = InTop, size
			return size.All > 0 || p.peek(-1).s == "ch" || p.peek(-1).s == "chain"
		}
		return false
	case p.eatAny("center", "centre", "middle"):
		u, ok := p.unit()
		if !ok || !p.eat("of") {
			return false
		}
		p.eat("the")
		p.eat("next")
		pl.N, pl.Unit = Num{All: 0}, u
		return p.centre(pl)
	case p.isWord("ch") || p.isWord("sp") || p.isWord("sps") || t.kind == 'n' && p.peek(1).s == "-" && p.peek(1).glued: // in ch-1 sp of each V-st
		return p.placeUnit(pl) && pl.Unit.Space
	case t.kind == 'n' || numerals[t.s] > 0: // in 21 sts
		pl.N, _ = p.number()
		return p.placeUnit(pl)
	case p.eat("st", "or", "sp", "indicated") || p.eat("st", "indicated") || p.eat("sp", "indicated"):
		pl.Kind = InSame
		return true
	}
	return false
}

// centre reads 'shell' of 'in centre dc of next shell', also '5-dc group'.
func (p *parser) centre(pl *Place) bool {
	pl.Kind = InCentre
	if g := p.group(); g != nil {
		pl.Unit.Group = g
		return true
	}
	if _, ok := p.number(); ok {
		p.sign("-")
		if _, _, ok := p.stitchName(); ok {
			p.eatAny("group", "shell")
			return true
		}
		return false
	}
	if _, _, ok := p.stitchName(); ok {
		return true
	}
	return p.eatAny("group", "shell", "fan")
}

// placeUnit reads the unit of a place, and how far it goes if it may.
func (p *parser) placeUnit(pl *Place) bool {
	held := p.isWord("held")
	p.eatAny("unworked", "held", "skipped", "free", "remaining", "rem")
	u, ok := p.unit()
	if !ok {
		return false
	}
	pl.Unit = u
	if held {
		pl.Unit.Word = "held"
	}
	if u.Row {
		pl.Kind = RowEnds
		for !p.atEnd() && !(p.isWord("and") && p.peek(1).kind != 'w') {
			p.i++
		}
		return true
	}
	for _, w := range []string{"of", "at"} { // in ch-1 sp of each V-st
		if p.isWord(w) {
			p.i++
			if p.eatAny("each", "every") {
				pl.Kind = InEach
			}
			p.eat("the")
			if p.eat("next") {
				if v, ok := p.number(); ok {
					pl.N = v
				}
			}
			if w == "of" && u.Space {
				if g := p.group(); g == nil {
					if _, ok := p.unit(); !ok {
						for !p.atEnd() && !p.isWord("across") && !p.isWord("around") && !p.isWord("and") {
							p.i++
						}
					}
				}
				break
			}
			for !p.atEnd() && !p.isWord("across") && !p.isWord("around") && !p.isWord("and") {
				p.i++
			}
		}
	}
	if e, ok := p.extent(); ok {
		if pl.Kind == InEach {
			pl.Extent = e
		}
		if pl.Kind == InNext && pl.N.All == 1 && pl.N.By == nil {
			pl.Kind, pl.Extent = InEach, e
		}
	}
	return true
}

// unit reads what is counted: sts, ch, ch-2 sp, 2-ch sps, dc, shells, rows.
func (p *parser) unit() (Unit, bool) {
	start := p.i
	unworked := p.eat("unworked")
	if !unworked {
		p.eatAny("corner", "held", "skipped")
	}
	if unworked && (p.isWord("st") || p.isWord("sts")) {
		p.i++
		return Unit{Word: "unworked"}, true
	}
	t := p.peek(0)
	if t.kind == 'n' && p.peek(1).s == "-" && p.peek(1).glued && (p.peek(2).s == "ch" || p.peek(2).s == "chain") {
		size := t.num
		p.i += 3
		if !p.spaceWord() {
			return Unit{Space: true, Size: size, Word: "ch-sp"}, true
		}
		return Unit{Space: true, Size: size, Word: "ch-sp"}, true
	}
	if t.kind != 'w' {
		p.i = start
		return Unit{}, false
	}
	switch t.s {
	case "st", "sts", "stitch", "stitches", "loops", "loop":
		p.i++
		return Unit{Word: t.s}, true
	case "row", "rows":
		p.i++
		p.eatAny("end", "ends")
		return Unit{Row: true, Word: "row"}, true
	case "sp", "sps", "space", "spaces":
		p.i++
		return Unit{Space: true, Word: t.s}, true
	case "ch", "chs", "chain", "chains", "ch-sp", "ch-sps", "ch-space":
		p.i++
		if len(t.s) > 4 && t.s[2] == '-' {
			return Unit{Space: true, Word: t.s}, true
		}
		if v, ok := p.chainSize(); ok {
			p.spaceWord()
			return Unit{Space: true, Size: v, Word: "ch-sp"}, true
		}
		if p.peek(0).kind == 'n' {
			save := p.i
			v, _ := p.number()
			if p.spaceWord() {
				return Unit{Space: true, Size: v, Word: "ch-sp"}, true
			}
			p.i = save
		}
		if p.spaceWord() {
			return Unit{Space: true, Word: "ch-sp"}, true
		}
		return Unit{Chain: true, Word: t.s}, true
	case "sl":
		if p.peek(1).s == "sts" {
			p.i += 2
			return Unit{Stitch: stitch.ByID("slst"), Word: "sl sts"}, true
		}
	}
	if g := p.group(); g != nil {
		return Unit{Group: g, Word: g.Name}, true
	}
	if s, v, ok := p.stitchName(); ok && v.All == 0 {
		return Unit{Stitch: s, Word: t.s}, true
	}
	p.i = start
	return Unit{}, false
}

func (p *parser) spaceWord() bool {
	return p.eatAny("sp", "sps", "space", "spaces", "loop", "loops", "lp", "lps", "arch", "arches", "underarm", "underarms")
}

// chainCalled reads ch-3, 3-ch or ch, and gives its size, 0 if none is named.
func (p *parser) chainCalled() Num {
	if t := p.peek(0); t.kind == 'n' && p.peek(1).s == "-" && (p.peek(2).s == "ch" || p.peek(2).s == "chain") {
		p.i += 3
		return t.num
	}
	if p.eatAny("ch", "chain") {
		if v, ok := p.chainSize(); ok {
			return v
		}
		if p.peek(0).kind == 'n' {
			v, _ := p.number()
			return v
		}
	}
	return Num{}
}
