package place

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// inTable is a plan of one piece with these measurements, all of 40 (45) cm.
func inTable(names ...string) (*plan, []*item) {
	sizes, _ := expr.ParseSizes("S (M)")
	p := &plan{o: Options{Text: 3, Labels: Letters}, s: scheme{steps: units.Usual, sizes: sizes, size: 3}, letter: form{w: 4}}
	v := &viewPlan{made: &schematic.Made{Name: "Back"}, title: "Back"}
	for i, name := range names {
		m := &schematic.Measure{Name: name, Length: units.Int(400)}
		it := &item{m: m, name: string(rune('A' + i)), nth: i, value: value{m, {Name: name, Length: units.Int(450)}}}
		v.items = append(v.items, it)
	}
	p.views = []*viewPlan{v}
	return p, v.items
}

// Every column worked by hand for a text of 3 mm: 1.05 on either side of what stands in it, a fifth more for what another face may take.
func TestATableOfLettersIsMeasuredByHand(t *testing.T) {
	line, bold, _ := lines()
	p, items := inTable("width", "length")
	tab := newTable(p, 190)
	value := 1.2*fonts.Width(fonts.Regular, 3, "40") + 2.1
	name := max(1.2*fonts.Width(fonts.Bold, 3, "Measurement"), 1.2*fonts.Width(fonts.Regular, 3, "Back, length")) + 0.1 + 2.1
	unit := fonts.Width(fonts.Regular, 3, "cm") + 2.1
	assert.InDeltaSlice(t, []float64{6.1, name, unit, value, 6.1 + name + unit + 2*value, bold + 1.05, line}, []float64{tab.letterW, tab.nameW, tab.unitW, tab.valueW, tab.width, tab.head, tab.line}, 1e-9)
	assert.Equal(t, [][2]int{{0, 2}}, tab.blocks)
	assert.Equal(t, 3, tab.columns, "3 x 52 and 2 x 6 are less than 190")
	assert.InDelta(t, line+1.05, tab.rows[items[0]].high, 1e-9)
	assert.InDelta(t, 4+tab.head+2*(line+1.05), tab.high(items), 1e-9, "fewer than four rows are not shared")
	assert.Zero(t, tab.high(nil))

	// So narrow that one size has room at a time: two blocks, one under the other.
	narrow := newTable(p, 6.1+unit+value+20)
	require.NotNil(t, narrow)
	assert.Equal(t, [][2]int{{0, 1}, {1, 2}}, narrow.blocks)
	assert.InDelta(t, 20, narrow.nameW, 1e-9)
	assert.InDelta(t, 4+2*narrow.rowsHigh(items)+4, narrow.high(items), 1e-9)
	assert.Nil(t, newTable(p, 6.1+unit+value+14.9), "five times the text is the least for a name")
	assert.NotNil(t, newTable(p, 6.1+unit+value+15.1))

	assert.Equal(t, [][]string{{"40"}, {"45"}}, [][]string{p.cell(items[0], 0), p.cell(items[0], 1)})
	pages, ok := tab.sheets(items, 4+tab.head+line+1.1)
	assert.True(t, ok)
	assert.Equal(t, [][]*item{items[:1], items[1:]}, pages)
	_, ok = tab.sheets(items, 4+tab.head)
	assert.False(t, ok)
}

// The same table at 10, 20, of which every text and rule is placed by hand.
func TestATableOfLettersIsDrawnByHand(t *testing.T) {
	line, bold, _ := lines()
	p, items := inTable("width", "length")
	tab := newTable(p, 190)
	var g sheet.Group
	end := tab.draw(&g, items, 10, 20)
	up, upBold := fonts.Ascent(fonts.Regular)*3, fonts.Ascent(fonts.Bold)*3
	head := bold + 1.05
	name, unit := 10+tab.letterW, 10+tab.letterW+tab.nameW
	s := unit + tab.unitW + tab.valueW - 1.05
	m := s + tab.valueW
	text := func(s string, x, y float64) string { return fmt.Sprintf("table %q %.4g,%.4g 0", s, x, y) }
	want := []string{
		fmt.Sprintf("table 10,20 %.4g,20 %.4g,%.4g 10,%.4g z", 10+tab.width, 10+tab.width, 20+head, 20+head),
		text("Measurement", name+1.05, 20+0.525+upBold), text("S", s, 20+0.525+upBold), text("M", m, 20+0.525+upBold),
	}
	y := 20 + head
	for i, row := range []string{"Back, width", "Back, length"} {
		base := y + 0.525 + up
		y += line + 1.05
		want = append(want, text(string(rune('A'+i)), 11.05, base), text(row, name+1.05, base), text("cm", unit+1.05, base), text("40", s, base), text("45", m, base),
			fmt.Sprintf("table 10,%.4g %.4g,%.4g", y, 10+tab.width, y))
	}
	assert.Equal(t, want, drawnAs(g.Items...))
	assert.InDelta(t, y+4, end, 1e-9)
	assert.Equal(t, sheet.End, g.Items[2].(*sheet.Text).Anchor)

	p.o.Labels = Blank // one size, with a rule of 25 mm and 6.5 mm to write in
	blank := newTable(p, 190)
	assert.InDeltaSlice(t, []float64{27.1, 6.5}, []float64{blank.valueW, blank.line}, 1e-9)
	g.Items = nil
	blank.draw(&g, items[:1], 10, 20)
	right := 10 + blank.letterW + blank.nameW + blank.unitW + 27.1 - 1.05
	base := 20 + head + 0.525 + up + 6.5 - line
	assert.Contains(t, drawnAs(g.Items...), fmt.Sprintf("blank %.4g,%.4g %.4g,%.4g", right-25, base, right, base))
}

// Five rows in three tables side by side, 6 mm apart: two, two and one.
func TestTablesSideBySide(t *testing.T) {
	p, items := inTable("a", "b", "c", "d", "e")
	tab := newTable(p, 190)
	require.Equal(t, 3, tab.columns)
	c := &choice{t: tab}
	assert.InDelta(t, 3*tab.width+2*6, c.tableWide(10), 1e-9)
	assert.Zero(t, c.tableWide(0))
	assert.InDelta(t, tab.high(items), c.tableHigh(items), 1e-9)
	assert.Zero(t, (&choice{}).tableHigh(items))
	assert.InDelta(t, 4+tab.head+2*tab.rows[items[0]].high, tab.high(items), 1e-9)
	var g sheet.Group
	assert.InDelta(t, 20+tab.high(items), tab.draw(&g, items, 10, 20), 1e-9, "it ends where the longest does")
	var at []float64
	for _, it := range g.Items {
		if p, ok := it.(*sheet.Path); ok && len(p.Segs) > 2 {
			at = append(at, p.Segs[0].P[0].X)
		}
	}
	assert.InDeltaSlice(t, []float64{10, 16 + tab.width, 22 + 2*tab.width}, at, 1e-9)
	assert.Equal(t, "Back, bust", rowName(&viewPlan{title: "Back", made: &schematic.Made{}}, &item{m: &schematic.Measure{Name: "bust", View: 1}}))
	assert.Equal(t, "Bust around", rowName(&viewPlan{worn: true}, &item{m: &schematic.Measure{Name: "bust", View: 1}, suffix: " around"}))
	assert.Equal(t, "Yoke, neck around", rowName(&viewPlan{title: "Front", made: &schematic.Made{Name: "Yoke"}}, &item{m: &schematic.Measure{Name: "neck around", View: schematic.NoView}, suffix: " around"}))
}

// A label of two lines stands about its middle; turned by 90 degrees its lines stand side by side, the second to the right. One to write
// on has its rule 1 mm before its unit.
func TestTheTextsOfALabel(t *testing.T) {
	line, _, base := lines()
	m := &dim{it: &item{m: &schematic.Measure{ID: "w"}, title: "width", name: "A"}, form: newForm(3, "40 cm", "around"), at: at(30, 40)}
	text := func(s string, x, y, angle float64) string {
		return fmt.Sprintf("label %q %.4g,%.4g %g", s, x, y, angle)
	}
	assert.Equal(t, []string{text("40 cm", 130, 40-line/2+base, 0), text("around", 130, 40+line/2+base, 0)}, drawnAs(m.texts(at(100, 0), 3)...))
	m.angle = 90
	assert.Equal(t, []string{text("40 cm", 30-line/2+base, 40, 90), text("around", 30+line/2+base, 40, 90)}, drawnAs(m.texts(at(0, 0), 3)...))
	m.letter = true
	assert.Equal(t, []string{text("A", 30+base, 40, 90)}, drawnAs(m.texts(at(0, 0), 3)...))
	m.letter, m.angle, m.form = false, 0, blankForm(3, "cm")
	cm := fonts.Width(fonts.Regular, 3, "cm")
	y, end := 40+(6.5-line)/2, 30+(cm+26)/2
	assert.Equal(t, []string{text("cm", end-cm/2, y+base, 0), fmt.Sprintf("blank %.4g,%.4g %.4g,%.4g", 30-(cm+26)/2, y+base, end-cm-1, y+base)}, drawnAs(m.texts(at(0, 0), 3)...))

	m = &dim{it: m.it, form: newForm(3, "40"), at: at(5, -2), ends: true, line: seg{at(0, 0), at(10, 0)}, tail: []seg{{at(0, 1), at(0, -1)}}, lead: []pt{at(10, 0), at(14, 0)}}
	g := m.emit(at(100, 200), 3, map[string]bool{})
	assert.Equal(t, []string{"w", "measure", "width"}, []string{g.ID, g.Class, g.Title})
	assert.Equal(t, []string{"extension 100,201 100,199", "dimension 100,200 110,200", "dimension 100,200 101.9,200.4 101.9,199.6 z", "dimension 110,200 108.1,200.4 108.1,199.6 z",
		"dimension 110,200 114,200", text("40", 105, 198+base, 0)}, drawnAs(g))
	m.letter, m.ends = true, false
	g = m.emit(at(0, 0), 3, map[string]bool{})
	assert.Equal(t, "A: width", g.Title)
	assert.Equal(t, []string{"extension 0,1 0,-1", "leader 10,0 14,0", text("A", 5, -2+base, 0)}, drawnAs(g))
}

// The signs of the key within 9 mm, by hand, and each entry 1.5 mm behind its sign, 6 before the next.
func TestTheKeyIsDrawnByHand(t *testing.T) {
	_, _, base := lines()
	line := lineHeight(fonts.Regular, 3)
	view := &schematic.View{Arrow: schematic.Point{Y: 1}, Notches: make([]schematic.Notch, 1), Ribs: make([]schematic.Hatch, 1),
		Lines: []schematic.Line{{Kind: schematic.LineFold}, {Kind: schematic.LineCentre}, {Kind: schematic.LineFold}}, Marks: []schematic.Marked{{What: "button"}, {What: "button"}}}
	p := &plan{o: Options{Text: 3}, views: []*viewPlan{{view: view}}}
	var words, drawn []string
	for _, e := range p.key() {
		words = append(words, e.what)
		drawn = append(drawn, drawnAs(e.sign(at(10, 20))...)...)
	}
	assert.Equal(t, []string{"direction of work", "edges with the same number are joined", "rib, along its ribs", "fold", "centre", "button"}, words)
	want := []string{"work 10,20 18,20 16.4,19.3 18,20 16.4,20.7", "outline 11,21 17.5,21", "notch 14.2,21 14.2,19"}
	for _, x := range []string{"10.6", "11.5", "12.4", "13.3", "14.2", "15.1", "16", "16.9"} {
		want = append(want, fmt.Sprintf("hatch %s,18.8 %s,21.2", x, x))
	}
	want = append(want, "fold 10,20 18,20", "centre 10,20 18,20", "mark 14.2,19.2 15.8,20.8", "mark 14.2,20.8 15.8,19.2")
	assert.Equal(t, want, drawn)

	f := &frame{p: p, w: 210, h: 297, footHigh: 40, cautHigh: 20}
	wide := func(s string) float64 { return 9 + 1.5 + 1.2*fonts.Width(fonts.Regular, 3, s) + 6 }
	assert.InDelta(t, wide("fold"), f.keyWidth(keyEntry{what: "fold"}, 3), 1e-9)
	rows := f.keyRows(190, 3)
	var got [][]string
	for _, r := range rows {
		var in []string
		for _, e := range r {
			in = append(in, e.what)
		}
		got = append(got, in)
	}
	require.Less(t, wide(words[0])+wide(words[1])+wide(words[2]), 190.0)
	require.Greater(t, wide(words[0])+wide(words[1])+wide(words[2])+wide(words[3])+wide(words[4]), 190.0)
	assert.Equal(t, words, append(append([]string{}, got[0]...), got[1]...))
	assert.Len(t, got, 2)

	// On the page: the heading from the margin down, the page's number above the bottom margin at its right, the key 5 mm into the foot,
	// the caution 2 mm into its room above the foot, and on the first page alone.
	f.key = [][]keyEntry{{{"fold", p.key()[3].sign}}, {{"slit", p.key()[3].sign}}}
	f.head = []row{{s: "Title", face: fonts.Bold, size: 5, cl: "heading"}, {s: "Note", face: fonts.Regular, size: 3, gap: 0.8, cl: "note"}}
	f.caution = []row{{s: "Mind", face: fonts.Bold, size: 3, gap: 1.5, cl: "caution"}}
	var g sheet.Group
	f.emit(&g, 1, 2)
	y := 297 - 10 - 40 + 5 + 1.2 + line/2
	assert.Equal(t, []string{
		fmt.Sprintf(`heading "Title" 10,%.4g 0`, 10+fonts.Ascent(fonts.Bold)*5),
		fmt.Sprintf(`note "Note" 10,%.4g 0`, 10+lineHeight(fonts.Bold, 5)+0.8+fonts.Ascent(fonts.Regular)*3),
		fmt.Sprintf(`page "page 1 of 2" 200,%.4g 0`, 287-line+fonts.Ascent(fonts.Regular)*3),
		fmt.Sprintf("fold 10,%.4g 18,%.4g", y, y), fmt.Sprintf(`key "fold" 20.5,%.4g 0`, y+base),
		fmt.Sprintf("fold 10,%.4g 18,%.4g", y+line+1.2, y+line+1.2), fmt.Sprintf(`key "slit" 20.5,%.4g 0`, y+line+1.2+base),
		fmt.Sprintf(`caution "Mind" 10,%.4g 0`, 297-10-40-20+2+1.5+fonts.Ascent(fonts.Bold)*3),
	}, drawnAs(g.Items...))
	g.Items = nil
	f.emit(&g, 2, 2)
	assert.NotContains(t, fmt.Sprint(drawnAs(g.Items...)), "Mind")
	g.Items = nil
	f.emit(&g, 1, 1)
	assert.NotContains(t, fmt.Sprint(drawnAs(g.Items...)), "page")
	f.head = nil
	assert.InDelta(t, 5+line, f.bare().footHigh, 1e-9)
}

// A name stands along its line, 1 mm off, above before below and in the middle before the ends: a fifth and 0.35 of the line from it.
func TestWhereNamesStand(t *testing.T) {
	h := lineHeight(fonts.Regular, 3)
	w := fonts.Width(fonts.Regular, 3, "waist")
	onView := func() *drawn {
		return &drawn{v: &viewPlan{hi: schematic.Point{X: 1000, Y: 1000}}, o: &Options{Text: 3}, scale: 10, w: 100, h: 100, shape: [][]pt{{at(0, 0), at(100, 0), at(100, 100), at(0, 100)}}}
	}
	d := onView()
	level := schematic.Line{A: schematic.Point{X: 200, Y: 600}, B: schematic.Point{X: 800, Y: 600}, Name: "waist"}
	for _, want := range []pt{at(50, 39-h/2), at(38, 39-h/2), at(62, 39-h/2), at(29, 39-h/2), at(71, 39-h/2), at(50, 41+h/2)} {
		d.nameLine(level, 3)
		got := d.tags[len(d.tags)-1]
		assert.InDeltaSlice(t, []float64{want.X, want.Y, 0}, []float64{got.at.X, got.at.Y, got.angle}, 1e-9)
	}
	assert.InDelta(t, 50+21+w/2, d.all.hi.X, 1e-9)
	d.nameLine(schematic.Line{Name: "x"}, 3)
	assert.Equal(t, 1, d.dropped, "no line")

	d = onView() // upright in what is narrow, and none in what is lower than three lines
	d.shape = [][]pt{{at(45, 0), at(55, 0), at(55, 100), at(45, 100)}}
	part := schematic.PartName{Name: "Left front piece", At: schematic.Point{X: 500, Y: 500}, H: 30 * h}
	for i, p := range d.shape[0] {
		d.edges = append(d.edges, seg{p, d.shape[0][(i+1)%4]})
	}
	d.namePart(part, 3)
	assert.Equal(t, tag{s: "Left front piece", at: at(50, 50), angle: 90, class: "part"}, d.tags[0])
	part.H -= 0.1
	d.namePart(part, 3)
	assert.Len(t, d.tags, 1)

	// A mark's name: above it first, 2.6 mm and half its height off, then 30 degrees to one side and to the other; a number on the right
	// half the other way round.
	d = onView()
	number := fonts.Width(fonts.Regular, 3, "7")
	d.tagAt("7", "mark", at(50, 50), at(0, -1), 3)
	assert.InDeltaSlice(t, []float64{50, 50 - 2.6 - h/2}, []float64{d.tags[0].at.X, d.tags[0].at.Y}, 1e-9)
	d.tagAt("7", "mark", at(50, 50), at(0, -1), 3)
	right := d.tags[1].at.X > 50
	assert.True(t, right != (d.tags[1].at.X < 50))
	twin := onView()
	twin.tagAt("7", "notch", at(60, 50), at(0, -1), 3)
	twin.tagAt("7", "notch", at(60, 50), at(0, -1), 3)
	assert.Equal(t, !right, twin.tags[1].at.X > 60)
	assert.Empty(t, d.tags[1].lead, "near enough without a line back")
	assert.Greater(t, number, 1.0)
}
