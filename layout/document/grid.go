package document

import (
	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// grid is a table: one name and cells a row, numbers to the right.
type grid struct {
	title      []string // heads of the columns; the first one is the names'
	rows       []gridRow
	mark       int // column that is marked, or -1: it stands between rules, bold
	first      int // columns behind the names that are in every part of a table too wide for the paper
	least      float64
	loose      int // a column that takes what room is left, at least looseLeast mm; 0: none
	looseLeast float64
}

// left reports whether the texts of a column begin at its left.
func (t *grid) left(c int) bool {
	for _, r := range t.rows {
		if c < len(r.cells) {
			return r.cells[c].left
		}
	}
	return false
}

type gridRow struct {
	cells []gridCell
	group string // a row of its own, a heading within the table
	keep  bool
	tall  float64 // least height, to write in
}

type gridCell struct {
	s     string
	blank bool // a rule to write on
	left  bool
}

// table sets a grid; one too wide for the paper is set in parts, each with the names.
func (b *builder) table(t grid) {
	size := b.p.size * 0.9
	if b.o.Large {
		size = b.p.size
	}
	pad := size * 0.4
	cols := len(t.title)
	w := make([]float64, cols)
	for c := range cols {
		face := fonts.Regular
		if c == t.mark {
			face = fonts.Bold
		}
		w[c] = max(fonts.Width(fonts.Bold, size, t.title[c]), t.least*b2f(c > t.first))
		for _, r := range t.rows {
			if c < len(r.cells) {
				w[c] = max(w[c], fonts.Width(face, size, r.cells[c].s))
			}
		}
		w[c] += 2 * pad
	}
	w[0] = min(w[0], b.wide()*0.38)
	if t.loose > 0 {
		rest := b.wide()
		for c, one := range w {
			if c != t.loose {
				rest -= one
			}
		}
		if rest < t.looseLeast { // longer names wrap
			w[0] = max(w[0]-(t.looseLeast-rest), b.wide()*0.22, fonts.Width(fonts.Bold, size, t.title[0])+2*pad)
		}
		w[t.loose] = max(rest-0.01, t.looseLeast)
	}
	fixed := 0.0
	for c := 0; c <= t.first; c++ {
		fixed += w[c]
	}
	all := fixed
	for c := t.first + 1; c < cols; c++ {
		all += w[c]
	}
	if over := all - b.wide(); over > 0 && w[0]-over > b.wide()*0.27 { // longer names wrap, and it is one table
		w[0], fixed, all = w[0]-over, fixed-over, b.wide()
	}
	if n := cols - t.first - 1; n > 0 && all < b.wide() { // some air, if there is room
		for c := t.first + 1; c < cols; c++ {
			w[c] += min(3, (b.wide()-all)/float64(n))
		}
	}
	for from := t.first + 1; from < cols; {
		to, sum := from, fixed
		for to < cols && (to == from || sum+w[to] <= b.wide()) {
			sum += w[to]
			to++
		}
		if rest := cols - from; to < cols { // parts of like width
			parts := (rest + (to - from) - 1) / (to - from)
			to = from + (rest+parts-1)/parts
		}
		var show []int
		for c := 0; c <= t.first; c++ {
			show = append(show, c)
		}
		for c := from; c < to; c++ {
			show = append(show, c)
		}
		b.part(t, show, w, size, pad)
		from = to
	}
}

func b2f(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func (b *builder) part(t grid, show []int, w []float64, size, pad float64) {
	line := lineHigh(size)
	total := 0.0
	xs := make([]float64, len(show)+1)
	for i, c := range show {
		xs[i] = inset + total
		total += w[c]
	}
	xs[len(show)] = inset + total
	marked := func(g *sheet.Group, y, high float64) {
		for i, c := range show {
			if c == t.mark {
				g.Items = append(g.Items, rule(xs[i], y, xs[i], y+high, 0.5, "table"), rule(xs[i+1], y, xs[i+1], y+high, 0.5, "table"))
			}
		}
	}
	h := &head{high: line + 2*pad}
	h.draw = func(g *sheet.Group, y float64) {
		for i, c := range show {
			x := xs[i] + pad
			if c == 0 {
				x = inset
			}
			setCell(g, t.title[c], fonts.Bold, size, x, xs[i+1]-pad, y+pad+fonts.Ascent(fonts.Bold)*size, c > 0 && !t.left(c))
			if c == t.mark {
				g.Items = append(g.Items, rule(xs[i], y, xs[i+1], y, 0.5, "table"))
			}
		}
		marked(g, y, h.high)
		g.Items = append(g.Items, rule(inset, y+h.high, inset+total, y+h.high, 0.35, "table"))
	}
	b.add(atom{high: h.high, gap: size * 0.8, keep: true, head: h, draw: h.draw})
	for k, r := range t.rows {
		last := k == len(t.rows)-1
		if r.group != "" {
			high := line + 2.2*pad
			b.add(atom{high: high, keep: true, head: h, draw: func(g *sheet.Group, y float64) {
				setCell(g, cutText(r.group, fonts.Bold, size, total), fonts.Bold, size, inset, inset+total, y+high-pad*0.6-fonts.Descent(fonts.Bold)*size, false)
				g.Items = append(g.Items, rule(inset, y+high, inset+total, y+high, 0.18, "table"))
			}})
			continue
		}
		names := wrap([]run{{r.cells[0].s, fonts.Regular, sheet.Black}}, size, w[0]-2*pad)
		high := max(float64(len(names))*line+pad, r.tall)
		b.add(atom{high: high, keep: r.keep, head: h, draw: func(g *sheet.Group, y float64) {
			base := y + pad/2 + fonts.Ascent(fonts.Regular)*size
			if r.tall > 0 {
				base = y + high - pad*0.8 - fonts.Descent(fonts.Regular)*size - float64(len(names)-1)*line
			}
			for i, l := range names {
				setLine(g, l, inset, base+float64(i)*line, size, "table")
			}
			foot := base + float64(len(names)-1)*line
			for i, c := range show[1:] {
				if c >= len(r.cells) {
					continue
				}
				cell := r.cells[c]
				x0, x1 := xs[i+1]+pad, xs[i+2]-pad
				face := fonts.Regular
				if c == t.mark {
					face = fonts.Bold
				}
				at := base
				if r.tall > 0 {
					at = foot
				}
				if cell.blank {
					g.Items = append(g.Items, rule(x0, at+0.6, x1, at+0.6, 0.18, "blank"))
					continue
				}
				setCell(g, cutText(cell.s, face, size, x1-x0+0.01), face, size, x0, x1, at, !cell.left)
			}
			marked(g, y, high)
			if last {
				for i, c := range show {
					if c == t.mark {
						g.Items = append(g.Items, rule(xs[i], y+high, xs[i+1], y+high, 0.5, "table"))
					}
				}
			}
			if !r.keep && r.tall == 0 {
				g.Items = append(g.Items, rule(inset, y+high, inset+total, y+high, 0.1, "table"))
			}
		}})
	}
}

// setCell sets a short text between x0 and x1, to the right if it is a number.
func setCell(g *sheet.Group, s string, f fonts.Face, size, x0, x1, y float64, right bool) {
	x := x0
	if right {
		x = x1 - fonts.Width(f, size, s)
	}
	setLine(g, []run{{s, f, sheet.Black}}, x, y, size, "table")
}
