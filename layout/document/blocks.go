package document

import (
	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// builder makes atoms of content, in the widths of one paper.
type builder struct {
	o     Options
	c     *Content
	p     *pages
	atoms []atom
}

func (b *builder) add(a ...atom) { b.atoms = append(b.atoms, a...) }

func (b *builder) wide() float64 { return b.p.w - 2*inset }

// runs are the printed form of a text: the chosen size's numbers bold and the others
// quiet, or its numbers alone.
func (b *builder) runs(t Text) []run {
	var out []run
	for _, s := range t {
		if b.o.Size >= 0 && b.o.Alone && s.Graded() {
			text := Text{s}.Said(b.c.Sizes, b.o.Size, b.units(), b.c.Steps)
			out = append(out, run{text, fonts.Bold, sheet.Black})
			continue
		}
		for _, p := range s.Pieces(b.c.Sizes, b.units(), b.c.Steps) {
			r := run{p.S, fonts.Regular, sheet.Black}
			switch {
			case b.o.Size >= 0 && p.Size == b.o.Size:
				r.face = fonts.Bold
			case b.o.Size >= 0 && (p.Size >= 0 || p.Between()):
				r.ink = sheet.Grey
			case p.Strong:
				r.face = fonts.Bold
			}
			out = append(out, r)
		}
	}
	return out
}

func (b *builder) units() []UnitOf {
	if len(b.o.Units) == 1 {
		return b.o.Units
	}
	return b.c.Units() // both, in the pattern's order
}

// heading begins a part of the document; it stays with what follows.
func (b *builder) heading(text string, level int, fresh bool) {
	size := b.p.size * 1.35
	if level > 0 {
		size = b.p.size * 1.1
	}
	lines := wrap([]run{{text, fonts.Bold, sheet.Black}}, size, b.wide())
	for i, l := range lines {
		a := atom{high: lineHigh(size), keep: true, draw: func(g *sheet.Group, y float64) {
			setLine(g, l, inset, y+fonts.Ascent(fonts.Bold)*size, size, "heading")
		}}
		if i == 0 {
			a.gap, a.name, a.level, a.fresh = size*1.1, text, level, fresh
		}
		if i == len(lines)-1 {
			a.high += size * 0.35
		}
		b.add(a)
	}
}

// para sets runs in a column; the first and last two lines stay together.
func (b *builder) para(runs []run, x, wide, hang, gap float64, keepLast bool) {
	size := b.p.size
	lines := wrap(runs, size, wide)
	if hang > 0 && len(lines) > 1 {
		lines = hanging(runs, size, wide, hang)
	}
	for i, l := range lines {
		in := 0.0
		if i > 0 {
			in = hang
		}
		a := atom{high: lineHigh(size) * 1.12, draw: func(g *sheet.Group, y float64) {
			setLine(g, l, x+in, y+fonts.Ascent(fonts.Regular)*size, size, "note")
		}}
		if i == 0 {
			a.gap = gap
		}
		a.keep = i == 0 && len(lines) > 1 || i == len(lines)-2 || i == len(lines)-1 && keepLast
		b.add(a)
	}
}

// hanging wraps so that lines after the first are narrower by hang.
func hanging(runs []run, size, wide, hang float64) [][]run {
	first := wrap(runs, size, wide)[0]
	n := 0
	for _, r := range first {
		n += len([]rune(r.s))
	}
	rest := after(runs, n)
	return append([][]run{first}, wrap(rest, size, wide-hang)...)
}

// after is what is left of runs behind n characters as they are shown, a space at its head
// left out.
func after(runs []run, n int) []run {
	var out []run
	for _, r := range runs {
		s := []rune(fonts.Shown(r.face, r.s))
		if n >= len(s) {
			n -= len(s)
			continue
		}
		s = s[n:]
		n = 0
		if len(out) == 0 {
			for len(s) > 0 && s[0] == ' ' {
				s = s[1:]
			}
			if len(s) == 0 {
				continue
			}
		}
		out = append(out, run{string(s), r.face, r.ink})
	}
	return out
}

// facts are names in a column of their own, beside their lines; in large print
// above them.
func (b *builder) facts(all []Fact, narrow float64) {
	side := narrow
	if b.o.Large {
		side = 0
	}
	for k, f := range all {
		if k > 0 && k == len(all)-1 {
			b.atoms[len(b.atoms)-1].keep = true // the last one does not stand alone over a page
		}
		b.fact(f, side)
	}
}

// fact is a name with its lines: beside it in a column so wide, or above them.
func (b *builder) fact(f Fact, side float64) {
	name, from, gap := []run{{f.Name, fonts.Bold, sheet.Black}}, len(b.atoms), b.p.size*0.55
	if side == 0 {
		b.para(name, inset, b.wide(), 0, b.p.size*0.6, true)
		gap = 0
	}
	for _, t := range f.Lines {
		b.para(b.runs(t), inset+side, b.wide()-side, 0, gap, false)
		gap = 0
	}
	if side > 0 && from < len(b.atoms) {
		b.beside(wrap(name, b.p.size, max(side, b.wide()*b.stack())-2), from)
	}
}

// beside puts the lines of a name beside the atoms from there on, at the left.
func (b *builder) beside(name [][]run, from int) {
	size := b.p.size
	for k, l := range name {
		if from+k >= len(b.atoms) {
			b.add(atom{high: lineHigh(size) * 1.12})
		}
		a := &b.atoms[from+k]
		inner := a.draw
		a.draw = func(g *sheet.Group, y float64) {
			setLine(g, l, inset, y+fonts.Ascent(fonts.Bold)*size, size, "heading")
			if inner != nil {
				inner(g, y)
			}
		}
		if k+1 < len(name) {
			a.keep = true
		}
	}
}

func (b *builder) stack() float64 {
	if b.o.Large {
		return 1
	}
	return 0
}

// listed sets a list under its heading, if there is one.
func (b *builder) listed(heading string, lines []Text) {
	if len(lines) > 0 {
		b.heading(heading, 0, false)
		b.list(lines)
	}
}

// list is lines with a dash before each.
func (b *builder) list(all []Text) {
	in := b.p.size * 1.1
	for _, t := range all {
		from := len(b.atoms)
		b.para(b.runs(t), inset+in, b.wide()-in, 0, b.p.size*0.3, false)
		a := &b.atoms[from]
		inner, size := a.draw, b.p.size
		a.draw = func(g *sheet.Group, y float64) {
			setLine(g, []run{{"–", fonts.Regular, sheet.Black}}, inset, y+fonts.Ascent(fonts.Regular)*size, size, "note")
			inner(g, y)
		}
	}
}

// boxed draws a frame round atoms that stay together.
func (b *builder) boxed(name string, lines []string) {
	size, pad := b.p.size, b.p.size*0.8
	type set struct {
		l    []run
		face fonts.Face
	}
	var all []set
	for _, l := range wrap([]run{{name, fonts.Bold, sheet.Black}}, size, b.wide()-2*pad) {
		all = append(all, set{l, fonts.Bold})
	}
	for _, s := range lines {
		for _, l := range wrap([]run{{s, fonts.Regular, sheet.Black}}, size, b.wide()-2*pad) {
			all = append(all, set{l, fonts.Regular})
		}
	}
	high := 2*pad + float64(len(all))*lineHigh(size)*1.12
	wide := b.wide()
	b.add(atom{high: high, gap: size * 1.4, draw: func(g *sheet.Group, y float64) {
		for _, e := range [4][4]float64{{0, 0, wide, 0}, {wide, 0, wide, high}, {wide, high, 0, high}, {0, high, 0, 0}} {
			g.Items = append(g.Items, rule(inset+e[0], y+e[1], inset+e[2], y+e[3], 0.5, "caution"))
		}
		for i, s := range all {
			setLine(g, s.l, inset+pad, y+pad+float64(i)*lineHigh(size)*1.12+fonts.Ascent(s.face)*size, size, "caution")
		}
	}})
}

// step is the height that handwriting takes.
func (b *builder) step() float64 { return max(8, b.p.size*1.7) }

// rules are n lines to write on.
func (b *builder) rules(n int) {
	step := b.step()
	wide := b.wide()
	for i := range n {
		b.add(atom{high: step, keep: i == 0, draw: func(g *sheet.Group, y float64) {
			g.Items = append(g.Items, rule(inset, y+step-1, inset+wide, y+step-1, 0.18, "blank"))
		}})
	}
}
