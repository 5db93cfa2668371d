package place

import (
	"cmp"
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/finding"
)

// table is the shape of the table of letters on one width of paper.
type table struct {
	p                    *plan
	size, line, pad      float64
	letterW, nameW       float64
	unitW, valueW, width float64
	head                 float64 // height of its head
	blocks               [][2]int
	columns              int // tables side by side, if there is one block
	columnGap            float64
	rows                 map[*item]tableRow
}

type tableRow struct {
	name []string
	high float64
}

// columnsOf are the indices of the sizes that the table lists.
func (p *plan) columnsOf() []int {
	if p.o.Labels == OneSize || p.o.Labels == Blank {
		return []int{p.o.Size}
	}
	all := make([]int, p.s.sizes.Len())
	for i := range all {
		all[i] = i
	}
	return all
}

func (p *plan) cell(it *item, size int) []string {
	us := p.s.units()
	lines := make([]string, len(us))
	for i, u := range us {
		lines[i] = it.value.in(size, u, p.s.steps)
	}
	return lines
}

// newTable measures the table for avail mm of width. It is nil if not even one size
// has room.
func newTable(p *plan, avail float64) *table {
	size := p.o.text()
	t := &table{p: p, size: size, pad: size * 0.35, columnGap: 6, columns: 1}
	t.line = lineHeight(fonts.Regular, size)
	t.letterW = p.letter.w + 2*t.pad
	columns := p.columnsOf()
	us := p.s.units()
	for _, u := range us {
		t.unitW = max(t.unitW, fonts.Width(fonts.Regular, size, u.String())+2*t.pad)
	}
	longest := room(fonts.Bold, size, tableName)
	for _, i := range columns {
		t.valueW = max(t.valueW, room(fonts.Bold, size, p.s.sizes.Names[i]))
	}
	t.valueW = min(t.valueW, 12*size)
	for _, v := range p.views {
		for it := range v.all {
			longest = max(longest, room(fonts.Regular, size, rowName(v, it)))
			t.valueW = max(t.valueW, p.widest(it, columns, size))
		}
	}
	if p.o.Labels == Blank {
		t.valueW = max(t.valueW, leastRule, 4*size)
		t.line = max(t.line, ruleRoom)
	}
	t.valueW += 2 * t.pad
	t.nameW = min(longest+0.1, max(avail*0.3, 12*size)) + 2*t.pad
	per := int((avail - t.letterW - t.nameW - t.unitW) / t.valueW)
	if per < 1 {
		t.nameW = avail - t.letterW - t.unitW - t.valueW
		per = 1
		if t.nameW < 5*size {
			return nil
		}
	}
	blocks := (len(columns) + per - 1) / per
	per = (len(columns) + blocks - 1) / blocks
	for i := 0; i < len(columns); i += per {
		t.blocks = append(t.blocks, [2]int{columns[i], columns[min(i+per, len(columns))-1] + 1})
	}
	t.width = t.letterW + t.nameW + t.unitW + float64(per)*t.valueW
	t.head = t.headHigh()
	t.rows = t.rowsOf(t.nameW)
	if len(t.blocks) == 1 {
		t.abreast(avail)
	}
	return t
}

// mostAbreast is how many tables stand side by side at most.
const mostAbreast = 3

// abreast sets tables side by side, with longer names wrapped where that makes no row higher.
func (t *table) abreast(avail float64) {
	for n := mostAbreast; n > 1; n-- {
		wide := (avail+t.columnGap)/float64(n) - t.columnGap
		name := min(t.nameW, t.nameW+wide-t.width)
		if name < 5*t.size {
			continue
		}
		rows := t.rows
		if name < t.nameW {
			rows = t.rowsOf(name)
		}
		if !higher(rows, t.rows) {
			t.width, t.nameW, t.rows, t.columns = t.width-t.nameW+name, name, rows, n
			return
		}
	}
}

// higher reports whether a row of a is higher than it is in b.
func higher(a, b map[*item]tableRow) bool {
	for it, row := range a {
		if row.high > b[it].high {
			return true
		}
	}
	return false
}

// rowsOf are the rows with names that are so wide.
func (t *table) rowsOf(nameW float64) map[*item]tableRow {
	rows := map[*item]tableRow{}
	for _, v := range t.p.views {
		for it := range v.all {
			name := sheet.Wrap(fonts.Shown(fonts.Regular, rowName(v, it)), (nameW-2*t.pad)/sheet.Elsewhere, t.size, fonts.Regular)
			rows[it] = tableRow{name, float64(max(len(name), len(t.p.s.units())))*t.line + t.pad}
		}
	}
	return rows
}

// widest is the width of the longest value in a row.
func (p *plan) widest(it *item, columns []int, size float64) float64 {
	w := 0.0
	for _, i := range columns {
		for _, s := range p.cell(it, i) {
			w = max(w, room(fonts.Regular, size, s))
		}
	}
	return w
}

const tableName = "Measurement"

func rowName(v *viewPlan, it *item) string {
	title := v.title
	if it.m.View == schematic.NoView {
		title = v.made.Name
	}
	suffix := it.suffix
	if strings.HasSuffix(it.m.Name, " around") {
		suffix = strings.TrimPrefix(suffix, " around")
	}
	if v.worn {
		return finding.Capital(it.m.Name) + suffix
	}
	return title + ", " + it.m.Name + suffix
}

func (t *table) headHigh() float64 {
	n := 1
	for _, name := range t.p.s.sizes.Names {
		n = max(n, len(sheet.Wrap(name, t.valueW-2*t.pad, t.size, fonts.Bold)))
	}
	return float64(n)*lineHeight(fonts.Bold, t.size) + t.pad
}

// leastSplit is how many rows stand in one table at most before they are shared: each further table has its head again.
const leastSplit = 4

// split shares rows among the columns in the order of their letters.
func (t *table) split(items []*item) [][]*item {
	items = slices.SortedStableFunc(slices.Values(items), func(a, b *item) int { return cmp.Compare(a.nth, b.nth) })
	if t.columns <= 1 || len(items) < leastSplit {
		return [][]*item{items}
	}
	per := (len(items) + t.columns - 1) / t.columns
	var parts [][]*item
	for i := 0; i < len(items); i += per {
		parts = append(parts, items[i:min(i+per, len(items))])
	}
	return parts
}

func (t *table) rowsHigh(items []*item) float64 {
	h := t.head
	for _, it := range items {
		h += t.rows[it].high
	}
	return h
}

// high is the height of the whole table of the items, with the room above it.
func (t *table) high(items []*item) float64 {
	if len(items) == 0 {
		return 0
	}
	h := 0.0
	for _, part := range t.split(items) {
		h = max(h, t.rowsHigh(part))
	}
	return tableGap + h*float64(len(t.blocks)) + tableGap*float64(len(t.blocks)-1)
}

const tableGap = 4.0

// draw writes the table at x, y and says where it ends.
func (t *table) draw(out *sheet.Group, items []*item, x, y float64) float64 {
	for b := range t.blocks {
		low := y
		for c, part := range t.split(items) {
			low = max(low, t.block(out, part, b, x+float64(c)*(t.width+t.columnGap), y))
		}
		y = low + tableGap
	}
	return y
}

func (t *table) block(out *sheet.Group, items []*item, b int, x, y float64) float64 {
	from, to := t.blocks[b][0], t.blocks[b][1]
	w := t.letterW + t.nameW + t.unitW + float64(to-from)*t.valueW
	ground := boxPath(x, y, w, t.head)
	ground.Style = sheet.Style{Fill: sheet.Tint}
	ground.Class = "table"
	out.Items = append(out.Items, ground)
	text := func(s string, face fonts.Face, at pt, a sheet.Anchor) {
		out.Items = append(out.Items, newText(s, face, t.size, at, a, "table"))
	}
	bold := fonts.Ascent(fonts.Bold) * t.size
	up := fonts.Ascent(fonts.Regular) * t.size
	valueX := x + t.letterW + t.nameW + t.unitW
	text(tableName, fonts.Bold, pt{X: x + t.letterW + t.pad, Y: y + t.pad/2 + bold}, sheet.Start)
	for i := from; i < to; i++ {
		right := valueX + float64(i-from+1)*t.valueW - t.pad
		for k, s := range sheet.Wrap(fonts.Shown(fonts.Bold, t.p.s.sizes.Names[i]), t.valueW-2*t.pad, t.size, fonts.Bold) {
			text(s, fonts.Bold, pt{X: right, Y: y + t.pad/2 + bold + float64(k)*lineHeight(fonts.Bold, t.size)}, sheet.End)
		}
	}
	y += t.head
	lift := t.line - lineHeight(fonts.Regular, t.size) // writing room above a blank's rule
	for _, it := range items {
		row := t.rows[it]
		base := func(k int) float64 { return y + t.pad/2 + up + lift + float64(k)*t.line }
		text(it.name, fonts.Bold, pt{X: x + t.pad, Y: base(0)}, sheet.Start)
		for k, s := range row.name {
			text(s, fonts.Regular, pt{X: x + t.letterW + t.pad, Y: base(k)}, sheet.Start)
		}
		for k, u := range t.p.s.units() {
			text(u.String(), fonts.Regular, pt{X: x + t.letterW + t.nameW + t.pad, Y: base(k)}, sheet.Start)
			for i := from; i < to; i++ {
				right := valueX + float64(i-from+1)*t.valueW - t.pad
				if t.p.o.Labels == Blank {
					out.Items = append(out.Items, line("blank", hair, pt{X: right - t.valueW + 2*t.pad, Y: base(k)}, pt{X: right, Y: base(k)}))
					continue
				}
				text(t.p.cell(it, i)[k], fonts.Regular, pt{X: right, Y: base(k)}, sheet.End)
			}
		}
		y += row.high
		out.Items = append(out.Items, line("table", hair, pt{X: x, Y: y}, pt{X: x + w, Y: y}))
	}
	return y
}

// sheets shares items that have no room beside the pieces among further pages, each
// h high. It reports false if one row alone is too high.
func (t *table) sheets(items []*item, h float64) ([][]*item, bool) {
	var pages [][]*item
	for len(items) > 0 {
		n := 0
		for n < len(items) && t.high(items[:n+1]) <= h {
			n++
		}
		if n == 0 {
			return nil, false
		}
		pages = append(pages, items[:n])
		items = items[n:]
	}
	return pages, true
}
