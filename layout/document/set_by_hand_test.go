package document

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// drawnAs are the items as words: a path's class and points, a text's words, face and place.
func drawnAs(items []sheet.Item) []string {
	var out []string
	for _, it := range items {
		switch it := it.(type) {
		case *sheet.Path:
			s := it.Class
			for _, g := range it.Segs {
				s += fmt.Sprintf(" %.4g,%.4g", g.P[0].X, g.P[0].Y)
			}
			out = append(out, s)
		case *sheet.Text:
			face := ""
			if it.Face == fonts.Bold {
				face = " bold"
			}
			out = append(out, fmt.Sprintf("%s %q%s %.4g,%.4g", it.Class, it.S, face, it.At.X, it.At.Y))
		}
	}
	return out
}

func drawnAt(a atom, y float64) []string {
	var g sheet.Group
	a.draw(&g, y)
	return drawnAs(g.Items)
}

func saidBy(lines [][]run) []string {
	var out []string
	for _, l := range lines {
		s := ""
		for _, r := range l {
			s += r.s
		}
		out = append(out, s)
	}
	return out
}

func wideOf(s string) float64 { return fonts.Width(fonts.Regular, 3, s) }

func plainRun(s string) []run { return []run{{s, fonts.Regular, sheet.Black}} }

// builderOf makes atoms 3 mm high on paper of 136 by 200 mm: 100 mm between insets of 18.
func builderOf() *builder {
	return &builder{c: &Content{}, o: Options{Size: -1}, p: &pages{w: 136, h: 200, size: 3}}
}

// Words stand on a line as long as they and a space between them have room; what is wider than the column is cut where it ends.
func TestLinesAreBrokenWhereTheyEnd(t *testing.T) {
	two := wideOf("one") + wideOf(" ") + wideOf("two")
	assert.Equal(t, []string{"one two", "three"}, saidBy(wrap(plainRun("one two three"), 3, two+0.001)))
	assert.Equal(t, []string{"one", "two", "three"}, saidBy(wrap(plainRun("one two three"), 3, max(two-0.001, wideOf("three")))))
	assert.Equal(t, []string{""}, saidBy(wrap(nil, 3, 10)))
	assert.Equal(t, []string{"mmm", "mmm", "m"}, saidBy(wrap(plainRun("mmmmmmm"), 3, wideOf("mmm")+0.01)))
	assert.Equal(t, []string{"m", "m"}, saidBy(wrap(plainRun("mm"), 3, 0.1)), "one letter at least")
	assert.Equal(t, "mm", fitting("mmmm", fonts.Regular, 3, wideOf("mm")+0.001))
	assert.Equal(t, "", fitting("mmmm", fonts.Regular, 3, wideOf("m")-0.001))
	assert.Equal(t, "mm…", cutText("mmmmm", fonts.Regular, 3, wideOf("mm")+wideOf("…")+0.001))
	assert.Equal(t, "mmmmm", cutText("mmmmm", fonts.Regular, 3, wideOf("mmmmm")))
	bold := run{"b", fonts.Bold, sheet.Black}
	assert.Equal(t, []run{{"a c", fonts.Regular, sheet.Black}, bold, {"d", fonts.Regular, sheet.Grey}}, joined([]run{{"a ", fonts.Regular, sheet.Black}, {"c", fonts.Regular, sheet.Black}, bold, {"d", fonts.Regular, sheet.Grey}}))
	assert.Equal(t, plainRun("three"), after(plainRun("one two three"), 8), "8 letters are gone, and none of the space")
	assert.Equal(t, plainRun("two"), after([]run{{"one", fonts.Regular, sheet.Black}, {" ", fonts.Bold, sheet.Black}, {"two", fonts.Regular, sheet.Black}}, 3))
	var g sheet.Group
	setLine(&g, []run{{" one ", fonts.Regular, sheet.Black}, bold}, 10, 20, 3, "note")
	assert.Equal(t, []string{fmt.Sprintf(`note "one" %.4g,20`, 10+wideOf(" one ")-wideOf("one ")), fmt.Sprintf(`note "b" bold %.4g,20`, sheet.Quantise(10+wideOf(" one ")))}, drawnAs(g.Items))
}

// Five lines in a column: the first stays with the second, the fourth with the last; the later ones 4 mm further in and so much narrower.
func TestAParagraphStandsInItsColumn(t *testing.T) {
	b := builderOf()
	line := lineHigh(3)
	b.para(plainRun("mm mm mm mm mm"), 20, wideOf("mm")+1, 0, 2, false)
	var keep []bool
	for i, a := range b.atoms {
		keep = append(keep, a.keep)
		assert.InDelta(t, line*1.12, a.high, 1e-9)
		assert.InDelta(t, map[bool]float64{true: 2}[i == 0], a.gap, 1e-9)
	}
	assert.Equal(t, []bool{true, false, false, true, false}, keep)
	assert.Equal(t, []string{fmt.Sprintf(`note "mm" 20,%.4g`, 50+fonts.Ascent(fonts.Regular)*3)}, drawnAt(b.atoms[1], 50))
	b.atoms = nil
	b.para(plainRun("mm"), 20, 50, 0, 2, true)
	assert.True(t, b.atoms[0].keep)
	b.atoms = nil
	b.para(plainRun("mm mm mm mm"), 20, wideOf("mm mm")+0.1, wideOf(" mm")-0.05, 0, false)
	require.Len(t, b.atoms, 3, "two words, then one and one")
	assert.Equal(t, []string{fmt.Sprintf(`note "mm" %.4g,%.4g`, 20+wideOf(" mm")-0.05, sheet.Quantise(fonts.Ascent(fonts.Regular)*3))}, drawnAt(b.atoms[1], 0))

	b.atoms = nil
	b.heading("Rows", 0, true)
	b.heading("More", 1, false)
	first, second := b.atoms[0], b.atoms[1]
	assert.Equal(t, []any{"Rows", 0, true, true, "More", 1, false}, []any{first.name, first.level, first.fresh, first.keep, second.name, second.level, second.fresh})
	assert.InDeltaSlice(t, []float64{4.05 * 1.1, lineHigh(4.05) + 4.05*0.35, 3.3 * 1.1, lineHigh(3.3) + 3.3*0.35}, []float64{first.gap, first.high, second.gap, second.high}, 1e-9, "1.35 and 1.1 times the text")
	assert.Equal(t, []string{fmt.Sprintf(`heading "Rows" bold 18,%.4g`, 7+fonts.Ascent(fonts.Bold)*4.05)}, drawnAt(first, 7))
}

// Facts: a name beside its lines in a column of 38 mm, above them in large print; the last but one stays with the last.
func TestNamesStandBesideTheirLines(t *testing.T) {
	up := sheet.Quantise(fonts.Ascent(fonts.Regular) * 3)
	b := builderOf()
	b.facts([]Fact{{Name: "Yarn", Lines: []Text{Words("wool"), Words("cotton")}}, {Name: "Hook", Lines: []Text{Words("5 mm")}}}, 38)
	require.Len(t, b.atoms, 3)
	assert.Equal(t, []bool{false, true, false}, []bool{b.atoms[0].keep, b.atoms[1].keep, b.atoms[2].keep})
	assert.InDeltaSlice(t, []float64{1.65, 0, 1.65}, []float64{b.atoms[0].gap, b.atoms[1].gap, b.atoms[2].gap}, 1e-9)
	assert.Equal(t, []string{fmt.Sprintf(`heading "Yarn" bold 18,%.4g`, sheet.Quantise(fonts.Ascent(fonts.Bold)*3)), fmt.Sprintf(`note "wool" 56,%.4g`, up)}, drawnAt(b.atoms[0], 0))
	b = builderOf()
	b.fact(Fact{Name: "aa bb cc", Lines: []Text{Words("x")}}, fonts.Width(fonts.Bold, 3, "aa")+2.5)
	require.Len(t, b.atoms, 3, "a name of three lines beside one")
	assert.Equal(t, []bool{true, true, false}, []bool{b.atoms[0].keep, b.atoms[1].keep, b.atoms[2].keep})
	assert.Equal(t, []string{fmt.Sprintf(`heading "cc" bold 18,%.4g`, sheet.Quantise(fonts.Ascent(fonts.Bold)*3))}, drawnAt(b.atoms[2], 0))
	b = builderOf()
	b.o.Large = true
	b.facts([]Fact{{Name: "Yarn", Lines: []Text{Words("wool")}}}, 38)
	assert.Equal(t, []string{fmt.Sprintf(`note "wool" 18,%.4g`, up)}, drawnAt(b.atoms[1], 0))
	assert.True(t, b.atoms[0].keep)
	assert.InDelta(t, 1.8, b.atoms[0].gap, 1e-9)

	b = builderOf()
	b.list([]Text{Words("one")})
	assert.Equal(t, []string{fmt.Sprintf(`note "–" 18,%.4g`, up), fmt.Sprintf(`note "one" 21.3,%.4g`, up)}, drawnAt(b.atoms[0], 0))
	b = builderOf()
	b.listed("None", nil)
	assert.Empty(t, b.atoms)
	b.rules(2)
	assert.Equal(t, []bool{true, false}, []bool{b.atoms[0].keep, b.atoms[1].keep})
	assert.InDelta(t, 8, b.atoms[0].high, 1e-9)
	assert.Equal(t, []string{"blank 18,57 118,57"}, drawnAt(b.atoms[0], 50), "a millimetre above the next line")
	b.p.size = 6
	assert.InDelta(t, 10.2, b.step(), 1e-9, "1.7 times the text")
}

// A box of two lines, 2.4 mm from its frame of 100 mm.
func TestABoxByHand(t *testing.T) {
	b := builderOf()
	b.boxed("Mind", []string{"the cords"})
	line := lineHigh(3) * 1.12
	high := 4.8 + 2*line
	a := b.atoms[0]
	assert.InDeltaSlice(t, []float64{high, 4.2}, []float64{a.high, a.gap}, 1e-9)
	up, bold := fonts.Ascent(fonts.Regular)*3, fonts.Ascent(fonts.Bold)*3
	foot := sheet.Quantise(10 + high)
	assert.Equal(t, []string{
		"caution 18,10 118,10", fmt.Sprintf("caution 118,10 118,%.4g", foot), fmt.Sprintf("caution 118,%.4g 18,%.4g", foot, foot), fmt.Sprintf("caution 18,%.4g 18,10", foot),
		fmt.Sprintf(`caution "Mind" bold 20.4,%.4g`, 12.4+bold), fmt.Sprintf(`caution "the cords" 20.4,%.4g`, 12.4+line+up),
	}, drawnAt(a, 10))
}

// gridOf is a table of columns of these widths, 0.5 mm beside its words and 1 above and below them together.
func gridOf(t grid, w ...float64) *columns {
	return &columns{grid: t, size: 3, pad: 0.5, lead: 1, w: w}
}

// Columns of 30, 20 and 20 mm at 18: numbers at their right, words at their left, the marked column bold between rules.
func TestATableIsDrawnByHand(t *testing.T) {
	c := gridOf(grid{title: []string{"Name", "S", "M"}, mark: 2, rows: []gridRow{
		{group: "Back"},
		{cells: []gridCell{{s: "width"}, {s: "40"}, {s: "45"}}},
		{keep: true, cells: []gridCell{{s: "depth"}, {s: "cm", left: true}, {blank: true}}, tall: 12},
		{cells: []gridCell{{}, {s: "in"}, {s: "9"}}},
	}}, 30, 20, 20)
	atoms := c.part([]int{0, 1, 2}, 18).atoms()
	require.Len(t, atoms, 5)
	line, up, bold := lineHigh(3), fonts.Ascent(fonts.Regular)*3, fonts.Ascent(fonts.Bold)*3
	assert.InDeltaSlice(t, []float64{line + 2, line + 2.2, line + 1, 12, line + 1}, []float64{atoms[0].high, atoms[1].high, atoms[2].high, atoms[3].high, atoms[4].high}, 1e-9)
	assert.Equal(t, []bool{true, true, false, true, false}, []bool{atoms[0].keep, atoms[1].keep, atoms[2].keep, atoms[3].keep, atoms[4].keep})
	assert.InDelta(t, 2.4, atoms[0].gap, 1e-9)
	w := func(f fonts.Face, s string) float64 { return fonts.Width(f, 3, s) }
	f := func(s string, v ...any) string { return fmt.Sprintf("table "+s, v...) }
	head := sheet.Quantise(10 + line + 2)
	assert.Equal(t, []string{
		f(`"Name" bold 18,%.4g`, 10+1+bold), f(`"S" bold %.4g,%.4g`, 67.5-w(fonts.Bold, "S"), 11+bold), f(`"M" bold %.4g,%.4g`, 87.5-w(fonts.Bold, "M"), 11+bold),
		"table 68,10 88,10", f("68,10 68,%.4g", head), f("88,10 88,%.4g", head), f("18,%.4g 88,%.4g", head, head),
	}, drawnAt(atoms[0], 10))
	assert.Equal(t, []string{f(`"Back" bold 18,%.4g`, 10+line+2.2-0.6-fonts.Descent(fonts.Bold)*3), f("18,%.4g 88,%.4g", 10+line+2.2, 10+line+2.2)}, drawnAt(atoms[1], 10))
	row := sheet.Quantise(10 + line + 1)
	assert.Equal(t, []string{
		f(`"width" 18,%.4g`, 10.5+up), f(`"40" %.4g,%.4g`, 67.5-w(fonts.Regular, "40"), 10.5+up), f(`"45" bold %.4g,%.4g`, 87.5-w(fonts.Bold, "45"), 10.5+up),
		f("68,10 68,%.4g", row), f("88,10 88,%.4g", row), f("18,%.4g 88,%.4g", row, row),
	}, drawnAt(atoms[2], 10))
	base := 10 + 12 - 0.8 - fonts.Descent(fonts.Regular)*3
	assert.Equal(t, []string{
		f(`"depth" 18,%.4g`, base), f(`"cm" 48.5,%.4g`, base), fmt.Sprintf("blank 68.5,%.4g 87.5,%.4g", base+0.6, base+0.6),
		"table 68,10 68,22", "table 88,10 88,22",
	}, drawnAt(atoms[3], 10))
	last := drawnAt(atoms[4], 10)
	assert.Contains(t, last, f("68,%.4g 88,%.4g", row, row), "the mark is shut under the last row")
	assert.True(t, c.left(1) == false && !c.left(2))
	assert.InDelta(t, line+2+2.4+line+2.2+line+1+12+line+1, heightOf(atoms), 1e-9)
}

// 30 + 20 + 20 + 20 on 75 mm: the names and two columns, then the names and one; of four columns two and two.
func TestATableTooWideIsParted(t *testing.T) {
	c := gridOf(grid{title: make([]string, 4)}, 30, 20, 20, 20)
	c.fixed = 30
	assert.Equal(t, [][]int{{0, 1, 2}, {0, 3}}, c.parts(75))
	assert.Equal(t, [][]int{{0, 1, 2, 3}}, c.parts(90))
	assert.Equal(t, [][]int{{0, 1}, {0, 2}, {0, 3}}, c.parts(10), "one at least")
	c = gridOf(grid{title: make([]string, 5)}, 30, 20, 20, 20, 20)
	c.fixed = 30
	assert.Equal(t, [][]int{{0, 1, 2}, {0, 3, 4}}, c.parts(90), "parts of like width, and not three and one")
	c = gridOf(grid{title: make([]string, 4), first: 1}, 30, 10, 20, 20)
	c.fixed = 40
	assert.Equal(t, [][]int{{0, 1, 2}, {0, 1, 3}}, c.parts(70))

	// Widths: the longest text and half a millimetre on either side, names at most 38 % of the paper, and up to 3 mm of air.
	c = gridOf(grid{title: []string{"Name", "S"}, mark: 1, least: 5, rows: []gridRow{{cells: []gridCell{{s: "neck"}, {s: "400"}}}}})
	c.measure(100)
	assert.InDeltaSlice(t, []float64{fonts.Width(fonts.Bold, 3, "Name") + 1, fonts.Width(fonts.Bold, 3, "400") + 1 + 3}, c.w, 1e-9)
	c = gridOf(grid{title: []string{strings.Repeat("m", 40), "S"}, least: 5})
	c.measure(100)
	assert.InDeltaSlice(t, []float64{38, 9}, c.w, 1e-9, "5 + 1 + 3 of air")
	c = gridOf(grid{title: []string{"N", "", ""}, first: 1, loose: 1, looseLeast: 30, least: 10})
	c.measure(100)
	name := fonts.Width(fonts.Bold, 3, "N") + 1
	assert.InDeltaSlice(t, []float64{name, 100 - name - 11 - 0.01, 11.01}, c.w, 1e-9, "the loose column takes what is left")
	cut := gridOf(grid{rows: []gridRow{{group: "Back"}, {cells: []gridCell{{s: "a"}}}, {cells: []gridCell{{s: "b"}}}, {cells: []gridCell{{s: "c"}}}, {cells: []gridCell{{s: "d"}}}, {cells: []gridCell{{s: "e"}}}}})
	var rows [][]string
	for _, part := range cut.cut(2) {
		var in []string
		for _, r := range part {
			if r.group != "" {
				in = append(in, r.group)
			} else {
				in = append(in, r.cells[0].s)
			}
		}
		rows = append(rows, in)
	}
	assert.Equal(t, [][]string{{"Back", "a", "b"}, {"Back", "c", "d", "e"}}, rows, "a name again over what is cut from it")
}

// Lines of 20 mm on pages with room for 50: a gap falls away at a head, what stays together goes on together, and a table has its head again.
func TestAtomsFlowOverPages(t *testing.T) {
	p := &pages{w: 100, h: 14 + 50 + 14 + lineHigh(2.9), size: 3}
	assert.InDelta(t, 64, p.bottom(), 1e-9)
	var said []string
	of := func(name string, keep bool, h *head) atom {
		return atom{high: 20, gap: 5, keep: keep, head: h, name: name, draw: func(_ *sheet.Group, y float64) { said = append(said, fmt.Sprintf("%s %.4g", name, y)) }}
	}
	h := &head{high: 10, draw: func(_ *sheet.Group, y float64) { said = append(said, fmt.Sprintf("head %.4g", y)) }}
	p.flow([]atom{of("a", false, nil), of("b", true, nil), of("c", false, nil), of("d", false, h), of("e", false, h), of("f", false, h)})
	second := 10 + lineHigh(2.9) + 5
	assert.Equal(t, []string{"a 14", fmt.Sprintf("b %.4g", second), fmt.Sprintf("c %.4g", second+25), fmt.Sprintf("d %.4g", second), fmt.Sprintf("e %.4g", second+25), fmt.Sprintf("head %.4g", second), fmt.Sprintf("f %.4g", second+15)}, said)
	assert.Len(t, p.sheets, 4)
	assert.Equal(t, []sheet.Bookmark{{Name: "a", Y: 14}}, p.sheets[0].Places)
	p.title, p.right = "Bag", "Size M"
	p.finish()
	assert.Equal(t, "Bag, page 2 of 4", p.sheets[1].Title)
	foot := p.h - 10 - fonts.Descent(fonts.Regular)*2.9
	w := func(s string) float64 { return fonts.Width(fonts.Regular, 2.9, s) }
	group := p.sheets[1].Root.Items[len(p.sheets[1].Root.Items)-1].(*sheet.Group)
	assert.Equal(t, []string{fmt.Sprintf(`page "Bag" 10,%.4g`, 10+fonts.Ascent(fonts.Regular)*2.9), fmt.Sprintf(`page "Size M" %.4g,%.4g`, 90-w("Size M"), 10+fonts.Ascent(fonts.Regular)*2.9), fmt.Sprintf(`page "page 2 of 4" %.4g,%.4g`, 90-w("page 2 of 4"), foot)}, drawnAs(group.Items))
	assert.Len(t, p.sheets[0].Root.Items[0].(*sheet.Group).Items, 1, "no running head over the first page")
}

// A part in life size: 100 by 60 mm from -50, 10; a notch of 4 mm with its number at 8, a mark of 4 mm to each side, an arrow of 15 mm to
// each side whose barbs go 3 mm back and 1.5 aside.
func TestAPartInLifeSize(t *testing.T) {
	pt := func(x, y float64) schematic.Point { return schematic.Point{X: x, Y: y} }
	v := &schematic.View{Outline: [][]schematic.Point{{pt(-50, 10), pt(50, 10), pt(50, 70), pt(-50, 70)}}, Name: "left half",
		Lines:   []schematic.Line{{Kind: schematic.LineFold, A: pt(-50, 40), B: pt(50, 40)}, {Kind: schematic.LineChange, A: pt(0, 10), B: pt(0, 70)}},
		Notches: []schematic.Notch{{At: pt(50, 30), Out: pt(1, 0), Number: 2}}, Marks: []schematic.Marked{{At: pt(0, 20)}}, Arrow: pt(0, 1), ArrowAt: pt(-20, 40)}
	p := newLifePart(&schematic.Made{Name: "Back", Make: 2, Mirrored: true}, v, fonts.Regular)
	assert.Equal(t, []any{"Back, left half", "make 2, one mirrored", 100.0, 60.0}, []any{p.name, p.about, p.w, p.h})
	assert.Equal(t, []string{"outline 0,60 100,60 100,0 0,0 0,60", "fold 0,30 100,30", "change 50,60 50,0", "notch 100,40 104,40", "mark 46,50 54,50", "mark 50,46 50,54",
		"work 30,45 30,15", "work 30,15 28.5,18", "work 30,15 31.5,18"}, strokesOf(p))
	assert.Equal(t, lifeLabel{"2", fonts.Regular, sp(108, 40)}, p.labels[0])
	assert.InDelta(t, 30+12+fonts.Width(fonts.Regular, UsualText, "Back, left half")/2, p.labels[1].at.X, 1e-9)
	assert.Empty(t, newLifePart(&schematic.Made{Name: "B", Make: 1, Mirrored: true}, &schematic.View{}, fonts.Regular).about)
	lo, hi := boundsOf([][]schematic.Point{{pt(3, -4)}, {pt(-5, 6)}})
	assert.Equal(t, [2]schematic.Point{pt(-5, -4), pt(3, 6)}, [2]schematic.Point{lo, hi})
	ring := round([]schematic.Point{pt(2, 1), pt(0, 3), pt(-2, 1), pt(0, -1)})
	assert.InDeltaSlice(t, []float64{2, 1, 0, 3}, []float64{ring[0].X, ring[0].Y, ring[180].X, ring[180].Y}, 1e-9, "a circle of 2 about 0, 1")
	assert.Equal(t, []string{"A1", "B3", "Z1", "AA1", "AB2"}, []string{tileName(0, 0), tileName(1, 2), tileName(25, 0), tileName(26, 0), tileName(27, 1)})
}

// strokesOf are the strokes of a part at life size, each with its class and its points.
func strokesOf(p *lifePart) (out []string) {
	for _, s := range p.strokes {
		line := s.class
		for _, q := range s.pts {
			line += fmt.Sprintf(" %.4g,%.4g", q.X, q.Y)
		}
		out = append(out, line)
	}
	return out
}
