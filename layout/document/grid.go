package document

import (
	"slices"

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
	c := &columns{grid: t, size: size, pad: size * 0.4, lead: size * 0.4}
	c.measure(b.wide())
	parts := c.parts(b.wide())
	if len(parts) == 1 && b.abreast(c, parts[0]) {
		return
	}
	atoms := c.atoms(parts)
	if n, full := b.pagesWith(atoms); n > 1 && full < leastFull {
		atoms = b.closer(c, parts, n)
	}
	b.add(atoms...)
}

// leastFull is how much of its last page a table fills, or else its rows stand closer, if that saves the page.
const leastFull = 0.3

// closer is a table of n pages with its rows as close as one page less takes, or as they were.
func (b *builder) closer(c *columns, parts [][]int, n int) []atom {
	usual := c.lead
	for _, part := range []float64{0.85, 0.7, 0.55, 0.4} {
		c.lead = usual * part
		atoms := c.atoms(parts)
		if now, _ := b.pagesWith(atoms); now < n {
			return atoms
		}
	}
	c.lead = usual
	return c.atoms(parts)
}

// pagesWith is how many pages there are with the atoms behind what is set, and how much of the last of them is full.
func (b *builder) pagesWith(atoms []atom) (n int, full float64) {
	p := *b.p
	p.flow(append(slices.Clone(b.atoms), atoms...))
	return len(p.sheets), (p.y - p.top()) / (p.bottom() - p.top())
}

// atoms are all parts of a table, one under the other.
func (c *columns) atoms(parts [][]int) []atom {
	var out []atom
	for _, show := range parts {
		out = append(out, c.part(show, inset).atoms()...)
	}
	return out
}

// The room between the parts of a table that stand side by side, mm.
const gutter, leastGutter = 10.0, 6.0

// abreast sets a narrow table in two or three parts side by side, if the page has room for it so and not otherwise; or
// else on the next page, if the whole of it stands there so and is parted otherwise.
func (b *builder) abreast(c *columns, show []int) bool {
	whole := c.part(show, inset)
	room := b.p.bottom() - b.p.top()
	for _, a := range b.atoms {
		room -= a.gap + a.high
	}
	over := heightOf(whole.atoms()) - room // what stands on the next page
	if over <= 0 {
		return false
	}
	next := b.p.bottom() - edge - lineHigh(b.p.headSize()) - 5 - headingHigh(b.p.size)
	for _, most := range []float64{room, min(next, over)} {
		for n := 2; n <= 3; n++ {
			wide := whole.right() - inset
			air := min(gutter, (b.wide()-float64(n)*wide)/float64(n-1))
			if air < leastGutter {
				break
			}
			parts := c.runs(n, show, wide+air)
			high := 0.0
			for _, p := range parts {
				high = max(high, heightOf(p))
			}
			if high <= most {
				b.add(beside(parts, high))
				return true
			}
		}
	}
	return false
}

// headingHigh is room enough for the heading of a table, mm.
func headingHigh(size float64) float64 { return 4 * size }

// runs are the atoms of n parts of a table, so much apart from each other.
func (c *columns) runs(n int, show []int, step float64) [][]atom {
	var parts [][]atom
	for i, rows := range c.cut(n) {
		one := *c
		one.rows = rows
		parts = append(parts, one.part(show, inset+float64(i)*step).atoms())
	}
	return parts
}

// beside is parts of a table, of which the highest is so high, as one thing.
func beside(parts [][]atom, high float64) atom {
	gap := parts[0][0].gap
	return atom{gap: gap, high: high - gap, draw: func(g *sheet.Group, y float64) {
		for _, p := range parts {
			at := y
			for _, a := range p {
				a.draw(g, at)
				at += a.high
			}
		}
	}}
}

func heightOf(all []atom) float64 {
	sum := 0.0
	for _, a := range all {
		sum += a.gap + a.high
	}
	return sum
}

// cut parts the rows into n runs that are about as long as each other; a group that is cut has its name over each run.
func (c *columns) cut(n int) [][]gridRow {
	out := make([][]gridRow, 1, n)
	name := gridRow{}
	for i, r := range c.rows {
		whole := i == 0 || r.group != "" || !c.rows[i-1].keep && c.rows[i-1].group == "" // no row is parted from its name
		if whole && len(out) < n && i >= (len(c.rows)*len(out)+n-1)/n {
			out = append(out, nil)
			if r.group == "" && name.group != "" {
				out[len(out)-1] = []gridRow{name}
			}
		}
		if r.group != "" {
			name = r
		}
		out[len(out)-1] = append(out[len(out)-1], r)
	}
	return out
}

// columns are a grid's columns with their widths.
type columns struct {
	grid
	size, pad float64 // pad is beside the words
	lead      float64 // above and below the words of a row, together
	w         []float64
	fixed     float64 // of those that are in every part
}

// measure gives every column its width on paper that is wide.
func (c *columns) measure(wide float64) {
	for i := range c.title {
		c.w = append(c.w, c.natural(i))
	}
	c.w[0] = min(c.w[0], wide*0.38)
	if c.loose > 0 {
		c.loosen(wide)
	}
	c.narrow(wide)
	c.fixed = sumOf(c.w[:c.first+1])
	all := sumOf(c.w)
	if rest := c.w[c.first+1:]; len(rest) > 0 && all < wide { // some air, if there is room
		air := min(3, (wide-all)/float64(len(rest)))
		for i := range rest {
			rest[i] += air
		}
	}
}

// leastNames is the part of the paper that names keep when they wrap so that a table has fewer parts.
const leastNames = 0.27

// narrow lets long names wrap where the table has fewer parts so.
func (c *columns) narrow(wide float64) {
	rest := c.w[c.first+1:]
	beside := sumOf(c.w[1 : c.first+1])
	for n := 1; n < len(rest); n++ {
		most := 0.0
		for part := range slices.Chunk(rest, (len(rest)+n-1)/n) {
			most = max(most, sumOf(part))
		}
		if names := wide - beside - most; names > wide*leastNames {
			c.w[0] = min(c.w[0], names)
			return
		}
	}
}

// natural is the width that a column's texts take.
func (c *columns) natural(i int) float64 {
	w := fonts.Width(fonts.Bold, c.size, c.title[i])
	if i > c.first {
		w = max(w, c.least)
	}
	for _, r := range c.rows {
		if i < len(r.cells) {
			w = max(w, fonts.Width(c.face(i), c.size, r.cells[i].s))
		}
	}
	return w + 2*c.pad
}

// loosen gives the loose column what the others leave.
func (c *columns) loosen(wide float64) {
	rest := wide
	for i, w := range c.w {
		if i != c.loose {
			rest -= w
		}
	}
	if rest < c.looseLeast { // longer names wrap
		c.w[0] = max(c.w[0]-(c.looseLeast-rest), wide*0.22, fonts.Width(fonts.Bold, c.size, c.title[0])+2*c.pad)
	}
	c.w[c.loose] = max(rest-0.01, c.looseLeast)
}

// parts are the columns of each part of the table.
func (c *columns) parts(wide float64) [][]int {
	var out [][]int
	cols := len(c.w)
	for from := c.first + 1; from < cols; {
		to, sum := from, c.fixed
		for to < cols && (to == from || sum+c.w[to] <= wide) {
			sum += c.w[to]
			to++
		}
		if rest := cols - from; to < cols { // parts of like width
			parts := (rest + (to - from) - 1) / (to - from)
			to = from + (rest+parts-1)/parts
		}
		var show []int
		for i := range cols {
			if i <= c.first || i >= from && i < to {
				show = append(show, i)
			}
		}
		out = append(out, show)
		from = to
	}
	return out
}

func (c *columns) face(i int) fonts.Face {
	if i == c.mark {
		return fonts.Bold
	}
	return fonts.Regular
}

func sumOf(w []float64) float64 {
	sum := 0.0
	for _, one := range w {
		sum += one
	}
	return sum
}

// part is the columns show of a table, side by side, the first one at x.
func (c *columns) part(show []int, x float64) *gridPart {
	p := &gridPart{columns: c, show: show, line: lineHigh(c.size), xs: []float64{x}, marked: -1}
	wide := 0.0
	for i, col := range show {
		wide += c.w[col]
		p.xs = append(p.xs, x+wide)
		if col == c.mark {
			p.marked = i
		}
	}
	return p
}

type gridPart struct {
	*columns
	show   []int
	xs     []float64 // left edges of the columns, and the right edge of the last
	marked int       // column of show; -1: another part has it
	line   float64
}

// atoms are the head and the rows.
func (p *gridPart) atoms() []atom {
	h := &head{high: p.line + 2*p.lead}
	h.draw = func(g *sheet.Group, y float64) { p.titles(g, y, h.high) }
	out := []atom{{high: h.high, gap: p.size * 0.8, keep: true, head: h, draw: h.draw}}
	for i := 0; i < len(p.rows); {
		n := i + 1
		for p.rows[n-1].keep && n < len(p.rows) {
			n++
		}
		all := p.together(p.rows[i:n], n == len(p.rows))
		if p.rows[i].group != "" {
			all = []atom{p.group(p.rows[i].group)}
		}
		for _, a := range all {
			a.head = h
			out = append(out, a)
		}
		i = n
	}
	return out
}

func (p *gridPart) right() float64 { return p.xs[len(p.xs)-1] }

// sides are the rules beside the marked column.
func (p *gridPart) sides(g *sheet.Group, y, high float64) {
	if p.marked >= 0 {
		l, r := p.xs[p.marked], p.xs[p.marked+1]
		g.Items = append(g.Items, rule(l, y, l, y+high, 0.5, "table"), rule(r, y, r, y+high, 0.5, "table"))
	}
}

// shut is the rule over or under the marked column.
func (p *gridPart) shut(g *sheet.Group, y float64) {
	if p.marked >= 0 {
		g.Items = append(g.Items, rule(p.xs[p.marked], y, p.xs[p.marked+1], y, 0.5, "table"))
	}
}

func (p *gridPart) titles(g *sheet.Group, y, high float64) {
	for i, c := range p.show {
		x := p.xs[i] + p.pad
		if c == 0 {
			x = p.xs[0]
		}
		setCell(g, p.title[c], fonts.Bold, p.size, x, p.xs[i+1]-p.pad, y+p.lead+fonts.Ascent(fonts.Bold)*p.size, c > 0 && !p.left(c))
		if i == p.marked {
			p.shut(g, y)
		}
	}
	p.sides(g, y, high)
	g.Items = append(g.Items, rule(p.xs[0], y+high, p.right(), y+high, 0.35, "table"))
}

// group is a heading within the table.
func (p *gridPart) group(name string) atom {
	high := p.line + 2.2*p.lead
	return atom{high: high, keep: true, draw: func(g *sheet.Group, y float64) {
		setCell(g, cutText(name, fonts.Bold, p.size, p.right()-p.xs[0]), fonts.Bold, p.size, p.xs[0], p.right(), y+high-p.lead*0.6-fonts.Descent(fonts.Bold)*p.size, false)
		g.Items = append(g.Items, rule(p.xs[0], y+high, p.right(), y+high, 0.18, "table"))
	}}
}

// together are rows of one name, which may have lines: the first of them stand beside the rows, what is left of them
// makes the last row high.
func (p *gridPart) together(rows []gridRow, last bool) []atom {
	if len(rows[0].cells) == 0 {
		return nil
	}
	names := wrap([]run{{rows[0].cells[0].s, fonts.Regular, sheet.Black}}, p.size, p.w[0]-2*p.pad)
	var out []atom
	for i, r := range rows {
		own := names
		if i+1 < len(rows) {
			own = names[:min(1, len(names))]
		}
		names = names[min(len(own), len(names)):]
		out = append(out, p.row(r, own, last && i+1 == len(rows)))
	}
	return out
}

// row is lines of a name and the cells beside them: at the first line, or at the
// last one in a row to write in.
func (p *gridPart) row(r gridRow, names [][]run, last bool) atom {
	lines := max(1, len(names))
	high := max(float64(lines)*p.line+p.lead, r.tall)
	down := float64(lines-1) * p.line
	return atom{high: high, keep: r.keep, draw: func(g *sheet.Group, y float64) {
		base := y + p.lead/2 + fonts.Ascent(fonts.Regular)*p.size
		foot := base
		if r.tall > 0 {
			base = y + high - p.lead*0.8 - fonts.Descent(fonts.Regular)*p.size - down
			foot = base + down
		}
		for i, l := range names {
			setLine(g, l, p.xs[0], base+float64(i)*p.line, p.size, "table")
		}
		p.cells(g, r, foot)
		p.sides(g, y, high)
		if last {
			p.shut(g, y+high)
		}
		if !r.keep && r.tall == 0 {
			g.Items = append(g.Items, rule(p.xs[0], y+high, p.right(), y+high, 0.1, "table"))
		}
	}}
}

func (p *gridPart) cells(g *sheet.Group, r gridRow, y float64) {
	for i, c := range p.show[1:] {
		if c >= len(r.cells) {
			continue
		}
		cell, face := r.cells[c], p.face(c)
		x0, x1 := p.xs[i+1]+p.pad, p.xs[i+2]-p.pad
		if cell.blank {
			g.Items = append(g.Items, rule(x0, y+0.6, x1, y+0.6, 0.18, "blank"))
			continue
		}
		setCell(g, cutText(cell.s, face, p.size, x1-x0+0.01), face, p.size, x0, x1, y, !cell.left)
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
