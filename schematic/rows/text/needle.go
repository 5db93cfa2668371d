package text

// most needles that hold one round.
const mostNeedles = 6

var needleWords = set("needle needles ndl ndls dpn dpns")

// NeedleHead reads which needles of several the words at the beginning of t name: Needle 1:, N2:, Needles 2 and 3:, on
// 1st needle. To is where the words end, 0 if they name none; signed says that a sign stands behind them.
func NeedleHead(t []Token) (on []int, to int, signed bool) {
	p := &labeller{t: t}
	lead := p.eatAny("on", "with", "for", "from", "across", "over")
	p.eatAny("the")
	switch first := p.peek(0); {
	case needleWords[first.S]:
		p.i++
		p.eatAny("#", "no", "number")
		p.eatAny(".", "#")
		on = p.needleNumbers()
	case first.Is("n") && p.peek(1).Kind == 'n' && p.peek(1).Glued:
		p.i++
		on = p.needleNumbers()
	case first.Ord > 0:
		on = p.nthNeedles()
	}
	if len(on) == 0 {
		return nil, 0, false
	}
	if p.peek(0).Is("(") && p.peek(2).Is(")") { // Needle 1 (heel):
		p.i += 3
	}
	switch sign := p.peek(0); {
	case sign.Is(":", "--", "=") || sign.Is("-") && !sign.Glued:
		p.i++
		signed = true
	case sign.Is(",") && (lead || p.i > 1):
		p.i++
		signed = lead
	}
	return on, p.i, signed
}

// needleNumbers reads 1; 2 and 3; 1, 2 and 3; N1 and N2; 1-3.
func (p *labeller) needleNumbers() (on []int) {
	for len(on) < mostNeedles {
		t := p.peek(0)
		if t.Is("n", "needle") && len(on) > 0 {
			p.i++
			t = p.peek(0)
		}
		if t.Kind != 'n' || t.Num.By != nil || t.Num.All < 1 || t.Num.All > mostNeedles {
			return on
		}
		on = append(on, t.Num.All)
		p.i++
		next := p.peek(1)
		if next.Is("n", "needle") {
			next = p.peek(2)
		}
		if !p.peek(0).Is(",", "and", "&", "+", "/") || next.Kind != 'n' || next.Num.By != nil || next.Num.All <= on[len(on)-1] || next.Num.All > mostNeedles || p.peek(2).Kind == 'w' && p.peek(1).Kind == 'n' && !p.peek(2).Is("and", "knit", "k", "work") {
			return on
		}
		p.i++
	}
	return on
}

// nthNeedles reads 1st needle, first and 3rd needles.
func (p *labeller) nthNeedles() (on []int) {
	for p.peek(0).Ord > 0 && p.peek(0).Ord <= mostNeedles {
		on = append(on, p.peek(0).Ord)
		p.i++
		if !p.eatAny("and", "&", ",") {
			break
		}
	}
	if !needleWords[p.peek(0).S] {
		return nil
	}
	p.i++
	return on
}
