package rows

import "strings"

func isRowWord(w string) (round, ok bool) {
	switch w {
	case "row", "rows":
		return false, true
	case "rnd", "rnds", "round", "rounds":
		return true, true
	}
	return false, false
}

// label reads how a line's row is called, up to its colon: Row 3 (RS):, Rows
// 4-20:, 1st row:, Next 3 rows:, R5:, Dec row:. Without one it reads nothing.
func (p *parser) label() *Label {
	start := p.i
	l := p.labelWords()
	if l == nil {
		p.i = start
		return nil
	}
	for {
		switch {
		case p.sign("(") || p.sign("["):
			for !p.done() && !p.sign(")") && !p.sign("]") {
				t := p.next()
				switch t.s {
				case "rs", "right":
					l.Side = 1
				case "ws", "wrong":
					l.Side = 2
				case "dec", "inc", "decrease", "increase", "buttonhole":
					l.Name = short(t.s)
				}
			}
			continue
		case p.eat("rs") || p.eat("right", "side"):
			l.Side = 1
			continue
		case p.eat("ws") || p.eat("wrong", "side"):
			l.Side = 2
			continue
		case p.sign(","):
			continue
		}
		break
	}
	if !p.sign(":") && !p.sign(".") {
		p.i = start
		return nil
	}
	l.At = p.span(start, p.i-1)
	return l
}

func short(w string) string { return w[:min(3, len(w))] }

func (p *parser) labelWords() *Label {
	l := &Label{}
	t := p.peek(0)
	if t.kind != 'w' {
		return nil
	}
	// R5 and R15-19
	if n, ok := strings.CutPrefix(t.s, "r"); ok && n != "" && allDigits(n) {
		p.i++
		l.Round = p.x.roundR
		l.From = Num{All: atoi(n)}
		l.To = l.From
		if p.sign("-") {
			if l.To, ok = p.number(); !ok {
				return nil
			}
		}
		return l
	}
	if t.num.All > 0 && t.kind == 'w' { // 1st row
		round, ok := isRowWord(p.peek(1).s)
		if !ok {
			return nil
		}
		p.i += 2
		l.Round, l.From, l.To = round, t.num, t.num
		if p.eat("to") || p.sign("-") {
			if e := p.peek(0); e.num.All > 0 {
				l.To = e.num
				p.i++
				if _, ok := isRowWord(p.peek(0).s); ok {
					p.i++
				}
			}
		}
		return l
	}
	name := ""
	switch t.s {
	case "next":
		l.Next = true
		l.From = Num{All: 1}
		p.i++
		if n, ok := p.number(); ok {
			l.From = n
		}
		if w := p.peek(0).s; w == "dec" || w == "inc" {
			p.i++
			name = w
		}
	case "inc", "dec", "increase", "decrease", "foundation", "set-up", "setup", "edging", "base", "last", "final", "joining", "buttonhole":
		p.i++
		name = short(t.s)
		l.Next = true
		l.From = Num{All: 1}
	}
	round, ok := isRowWord(p.peek(0).s)
	if !ok {
		return nil
	}
	p.i++
	l.Round, l.Name = round, name
	if l.Next {
		if name != "" && (p.peek(0).kind == 'n') { // Foundation row 1
			p.i++
		}
		return l
	}
	if l.From, ok = p.number(); !ok {
		return nil
	}
	l.To = l.From
	for {
		switch {
		case p.sign("-") || p.eat("to") || p.eat("through"):
			if l.To, ok = p.number(); !ok {
				return nil
			}
		case p.is(",") && p.peek(1).kind == 'n' || p.isWord("and") && p.peek(1).kind == 'n' || p.is("&"):
			p.i++
			n, ok := p.number()
			if !ok {
				return nil
			}
			l.Listed = append(l.Listed, n)
		case p.eat("and"):
			p.eat("all")
			p.eat("every")
			p.eat("following")
			p.eat("foll")
			p.eat("other")
			switch w := p.next().s; w {
			case "odd", "rs":
				l.Odd = true
			case "even", "ws", "alt", "alternate":
				l.Even = true
			default:
				return nil
			}
			p.eat("numbered")
			p.eat("following")
			if _, ok := isRowWord(p.peek(0).s); ok {
				p.i++
			}
		default:
			return l
		}
	}
}

func allDigits(s string) bool {
	for _, r := range s {
		if r < '0' || r > '9' {
			return false
		}
	}
	return len(s) > 0 && len(s) < 7
}

func atoi(s string) int {
	v := 0
	for _, r := range s {
		v = v*10 + int(r-'0')
	}
	return v
}
