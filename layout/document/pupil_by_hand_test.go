package document

import (
	"fmt"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// A panel of 100 by 60 mm whose corner is at 20, 10: y is turned over. An arrow of work reaches 15 mm to each side of its place, its
// barbs a fifth of that back and a tenth out; a notch is 4 mm with its number at 8; a mark is a cross of 8 mm.
func TestAPieceAtLifeSizeByHand(t *testing.T) {
	at := func(x, y float64) schematic.Point { return schematic.Point{X: 20 + x, Y: 10 + y} }
	v := &schematic.View{Name: "left", Outline: [][]schematic.Point{{at(0, 0), at(100, 0), at(100, 60), at(0, 60)}},
		Lines:   []schematic.Line{{Kind: schematic.LineFold, A: at(50, 0), B: at(50, 60)}, {Kind: schematic.LineChange, A: at(0, 20), B: at(100, 20)}},
		Notches: []schematic.Notch{{Number: 3, At: at(100, 30), Out: schematic.Point{X: 1}}, {Number: 4, At: at(40, 60), Out: schematic.Point{Y: 1}}},
		Marks:   []schematic.Marked{{What: "button", At: at(10, 50)}}, Arrow: schematic.Point{X: 0.6, Y: 0.8}, ArrowAt: at(30, 25)}
	p := newLifePart(&schematic.Made{Name: "Back", Make: 2, Mirrored: true}, v, fonts.Regular)
	assert.Equal(t, []any{"Back, left", "make 2, one mirrored", 100.0, 60.0}, []any{p.name, p.about, p.w, p.h})
	assert.Equal(t, []string{
		"outline 0,60 100,60 100,0 0,0 0,60",
		"fold 50,60 50,0", "change 0,40 100,40",
		"notch 100,30 104,30", "notch 40,0 40,-4",
		"mark 6,10 14,10", "mark 10,6 10,14",
		"work 21,47 39,23",                           // 30, 35 and 15 x (0.6, -0.8) = (9, -12) to each side
		"work 39,23 36,24.5", "work 39,23 38.4,26.3", // 39 - 1.8 -+ 1.2, 23 + 2.4 -+ 0.9: across (9, -12) lies (-12, -9)
	}, strokesOf(p))
	var labels []string
	for _, l := range p.labels {
		labels = append(labels, fmt.Sprintf("%s %.5g,%.5g", l.s, l.at.X, l.at.Y))
	}
	assert.Equal(t, []string{"3 108,30", "4 40,-8", fmt.Sprintf("Back, left %.5g,35", 30+12+fonts.Width(fonts.Regular, 3.5, "Back, left")/2)}, labels)

	one := newLifePart(&schematic.Made{Name: "Back", Make: 1}, &schematic.View{Alike: 2, Outline: v.Outline}, fonts.Regular)
	assert.Len(t, one.strokes, 1, "no arrow where nothing says which way the rows go")
	assert.NotContains(t, one.about, "make")
}

// Rules to write on are 8 mm apart, or 1.7 times a larger text, one rule 1 mm above the foot of each. They fill what is left of a page: with
// 3 mm of text 200 mm high paper ends at 200 - 10 - 4 and a line of 2.9.
func TestRoomForNotesFillsThePage(t *testing.T) {
	b := builderOf()
	b.rules(2)
	require.Len(t, b.atoms, 2)
	assert.Equal(t, []any{8.0, true, false}, []any{b.atoms[0].high, b.atoms[0].keep, b.atoms[1].keep})
	assert.Equal(t, []string{"blank 18,57 118,57"}, drawnAt(b.atoms[0], 50))
	assert.InDelta(t, 8.0, (&builder{p: &pages{size: 4.7}}).step(), 1e-9)
	assert.InDelta(t, 8.5, (&builder{p: &pages{size: 5}}).step(), 1e-9)

	end := 200 - 10 - 4 - lineHigh(2.9)
	head := 4.05*1.1 + lineHigh(4.05) + 4.05*0.35
	for _, c := range []struct {
		y float64
		n int // whole steps of 8 mm over what is left
	}{{end - head - 40.5, 5}, {end - head - 48.5, 6}, {end - head - 47.5, 5}} {
		b = builderOf()
		b.p.newPage()
		b.p.open, b.p.y = true, c.y
		b.room("Room for notes")
		assert.Len(t, b.p.sheets, 1)
		assert.Len(t, b.atoms, 1+c.n, "%g", c.y)
	}
	b = builderOf()
	b.p.newPage()
	b.p.open, b.p.y = true, end-head-39.5 // less than five: a page of its own, whose top is a line of 2.9 and 5 mm below the edge
	b.room("Room for notes")
	assert.Len(t, b.p.sheets, 2)
	assert.Len(t, b.atoms, 1+int((end-10-lineHigh(2.9)-5-head)/8))
}

// Name and date: 62 % of the 100 mm and the rest, each rule half a letter behind its word; in the answers the same room stands empty.
func TestAPupilWritesNameAndDate(t *testing.T) {
	b := builderOf()
	b.pupil(12, false)
	b.pupil(12, true)
	b.pupil(6, false)
	for i, high := range []float64{8 + 2.4, 8 + 2.4, 6 + 2.4} { // 8 mm at most, 0.8 of the text below
		assert.InDelta(t, high, b.atoms[i].high, 1e-9)
		assert.InDelta(t, 0.9, b.atoms[i].gap, 1e-9)
	}
	assert.Nil(t, b.atoms[1].draw)
	name, date := sheet.Quantise(18+wideOf("Name")+1.5), sheet.Quantise(83+wideOf("Date")+1.5)
	assert.Equal(t, []string{`text "Name" 18,56.8`, fmt.Sprintf("name %.4g,57.4 80,57.4", name), `text "Date" 83,56.8`, fmt.Sprintf("name %.4g,57.4 118,57.4", date)}, drawnAt(b.atoms[0], 50))
	assert.Equal(t, []float64{12, 10, 8, 7, 6}, writing)
}

// Running heads: none on the first page; a title keeps 6 mm from what stands at the right, which has half of the page less 4 mm.
func TestRunningHeadsAndFeet(t *testing.T) {
	p := &pages{w: 136, h: 200, size: 3, title: "A hat", right: "Size M"}
	p.newPage()
	p.newPage()
	sheets := p.finish()
	foot, head := sheet.Quantise(190-fonts.Descent(fonts.Regular)*2.9), sheet.Quantise(10+fonts.Ascent(fonts.Regular)*2.9)
	right := func(s string) float64 { return sheet.Quantise(126 - fonts.Width(fonts.Regular, 2.9, s)) }
	of := func(i int) []string { return drawnAs(sheets[i].Root.Items[0].(*sheet.Group).Items) }
	assert.Equal(t, []string{fmt.Sprintf(`page "page 1 of 2" %.4g,%.4g`, right("page 1 of 2"), foot)}, of(0))
	assert.Equal(t, []string{fmt.Sprintf(`page "A hat" 10,%.4g`, head), fmt.Sprintf(`page "Size M" %.4g,%.4g`, right("Size M"), head),
		fmt.Sprintf(`page "page 2 of 2" %.4g,%.4g`, right("page 2 of 2"), foot)}, of(1))
	assert.Equal(t, "A hat, page 2 of 2", sheets[1].Title)
	long := "nnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnn"
	p = &pages{w: 136, h: 200, size: 3, title: long, right: long}
	p.newPage()
	p.newPage()
	items := p.finish()[1].Root.Items[0].(*sheet.Group).Items
	l, r := items[0].(*sheet.Text), items[1].(*sheet.Text)
	n := fonts.Width(fonts.Regular, 2.9, "n")
	assert.LessOrEqual(t, r.Width, 54.0) // 116 / 2 - 4
	assert.Greater(t, r.Width+n, 54.0)
	assert.LessOrEqual(t, l.Width, 110-r.Width)
	assert.Greater(t, l.Width+n, 110-r.Width)
	large := &pages{w: 136, h: 200, size: 6.35}
	large.newPage()
	assert.InDelta(t, 14, large.top(), 1e-9)
	assert.InDelta(t, 186-lineHigh(6.35), large.bottom(), 1e-9)
	large.newPage()
	assert.InDelta(t, 15+lineHigh(6.35), large.top(), 1e-9)
}

// Steps of a shaping that a size does not take: its numbers are dashes there, and the verb of the first stays.
func TestStepsThatASizeDoesNotTake(t *testing.T) {
	n := func(all ...string) Span { return Span{Counts: all} }
	text := Text{{S: "Dec 1 st every 4 rows "}, n("3", "4"), {S: " times, then every 2 rows "}, n("–", "5"), {S: " times."}}
	said := func(x Text, size int) (s string) {
		for _, q := range x {
			s += q.S
			if q.Graded() {
				s += q.Counts[size]
			}
		}
		return s
	}
	assert.Equal(t, "Dec 1 st every 4 rows 3", said(kept(text, 0), 0)[:23])
	assert.Equal(t, "Dec 1 st every 4 rows 4 times, then every 2 rows 5 times.", said(kept(text, 1), 1))
	first := Text{{S: "Dec 1 st every 4 rows "}, n("–", "4"), {S: " times, then every 2 rows "}, n("6", "5"), {S: " times."}}
	assert.Equal(t, "Dec 1 st every 2 rows 6 times.", said(kept(first, 0), 0))
	assert.True(t, without(Text{n("–", "4")}, 0))
	assert.False(t, without(Text{n("–", "4")}, 1))
	assert.False(t, without(Text{{S: "Knit."}}, 0))
	assert.False(t, without(Text{n("–", "4"), n("2", "4")}, 0))
	var parts []string
	for _, s := range split(Text{{S: "a; b. "}, n("1", "2"), {S: " c;"}}, regexp.MustCompile(`[.;]\s*`)) {
		parts = append(parts, said(s.text, 1)+"|"+s.end)
	}
	assert.Equal(t, []string{"a|; ", "b|. ", "2 c|;"}, parts)
	assert.Equal(t, Text{{S: "a b"}, n("1"), {S: "c", Strong: true}, {S: "d"}}, plainJoined(Text{{S: "a "}, {S: "b"}, n("1"), {S: ""}, {S: "c", Strong: true}, {S: "d"}}))
}

// A page without hazards has no cautions, and without a weight no yarn; lengths are rounded to the steps of the pattern.
func TestWhatAPageDoesNotSay(t *testing.T) {
	assert.Empty(t, cautions(&schematic.Pattern{}))
	assert.Nil(t, reckoned(&schematic.Pattern{}, nil))
	b := builderOf()
	b.c.Unit, b.c.Steps = units.CM, units.Steps{CM: units.Frac(1, 2), Inch: units.Frac(1, 4)}
	b.rule([]UnitOf{units.CM, units.Inch})
	var lines []string
	for _, a := range b.atoms {
		lines = append(lines, drawnAt(a, 0)...)
	}
	assert.Contains(t, fmt.Sprint(lines), "cm to the nearest 0.5")
	assert.Contains(t, fmt.Sprint(lines), "in to the")
	assert.Contains(t, fmt.Sprint(lines), "¼")
}

// Photographs on a column of 100 mm, 6 mm apart and 45 to 70 mm high. Two squares are (100 - 6) / 2 = 47 mm high; three would be 29.3.
// Two of 4:3 would be 94 / 2.667 = 35 mm: each has a row, and is 70 mm high at most.
func TestPhotographsAreAsHighAsTheirRowLets(t *testing.T) {
	square, wide, tall := Photo{Shows: "front", W: 600, H: 600}, Photo{Shows: "back", W: 800, H: 600}, Photo{Shows: "side", W: 100, H: 600}
	b := builderOf()
	assert.InDelta(t, 47, b.photosHigh([]Photo{square, square}), 1e-9)
	assert.InDelta(t, 88.0/3, b.photosHigh([]Photo{square, square, square}), 1e-9)
	assert.InDelta(t, 70, b.photosHigh([]Photo{wide}), 1e-9)
	words := lineHigh(3) * 1.12
	for _, c := range []struct {
		all  []Photo
		high []float64
	}{
		{[]Photo{square, square, square}, []float64{47, 70}},
		{[]Photo{wide, wide}, []float64{70, 70}},
		{[]Photo{tall, tall, tall, tall}, []float64{70, 70}}, // three in a row, then one
	} {
		b = builderOf()
		b.c.Photos = c.all
		b.photographs()
		var high []float64
		for _, a := range b.atoms[:len(b.atoms)-1] {
			high = append(high, a.high-1.5-words)
		}
		assert.InDeltaSlice(t, c.high, high, 1e-9)
		assert.InDelta(t, 3, b.atoms[len(b.atoms)-1].high, 1e-9, "a line below all of them")
	}
	b = builderOf()
	b.photoRow([]Photo{tall, square}) // 11.7 mm wide, with 20 for its words; 26 further on
	var g sheet.Group
	b.atoms[0].draw(&g, 50)
	var at []float64
	for _, it := range g.Items {
		if q, ok := it.(*sheet.Group); ok {
			p := q.Items[0].(*sheet.Picture)
			at = append(at, p.At.X, p.At.Y, p.W, p.H)
		}
	}
	assert.InDeltaSlice(t, []float64{18, 50, 70.0 / 6, 70, 44, 50, 70, 70}, at, 1e-9)
	b.o.Little, b.atoms = true, nil
	b.photographs()
	assert.Empty(t, b.atoms)
}

// What stays together goes to the next page together; what is longer than a page is broken, and a page of its own stands alone.
func TestAtomsThatStayTogether(t *testing.T) {
	set := func(start float64, all ...atom) (n int, y float64) {
		p := &pages{w: 136, h: 100, size: 3}
		p.newPage()
		p.y = start
		p.flow(all)
		return len(p.sheets), p.y
	}
	top, bottom := 14.0, 86-lineHigh(2.9)
	a := func(high float64, keep bool) atom { return atom{high: high, gap: 2, keep: keep} }
	n, y := set(top, a(10, true), a(10, true), a(10, false))
	assert.Equal(t, []any{1, top + 34}, []any{n, y}, "no gap at the top of a page")
	n, _ = set(bottom-34, a(10, true), a(10, true), a(8, false))
	assert.Equal(t, 1, n, "2 + 10 + 2 + 10 + 2 + 8 = 34")
	n, _ = set(bottom-33.9, a(10, true), a(10, true), a(8, false))
	assert.Equal(t, 2, n)
	n, _ = set(top, a(40, true), a(40, false))
	assert.Equal(t, 2, n, "longer than a page")
	n, _ = set(top, a(10, false), atom{page: &sheet.Sheet{}}, a(10, false))
	assert.Equal(t, 3, n)
	n, _ = set(top, a(10, true), atom{page: &sheet.Sheet{}})
	assert.Equal(t, 2, n)
	p := &pages{w: 136, h: 100, size: 3}
	p.newPage()
	k, high := p.chunk([]atom{a(10, true), a(10, false), a(10, false)})
	assert.Equal(t, []any{2, 22.0}, []any{k, high})
	k, _ = p.chunk([]atom{{page: &sheet.Sheet{}}})
	assert.Equal(t, 1, k)
}

// On 100 mm: 100 - 40 - 20 = 40 for the loose column; of 30 it needs, 100 - 60 - 20 = 20 lack 10, which the names give; of names of
// 92 mm 42.
func TestALooseColumnTakesWhatIsLeft(t *testing.T) {
	loosened := func(names float64) []float64 {
		c := gridOf(grid{title: []string{"N", "S", ""}, loose: 2, looseLeast: 30}, names, 20, 0)
		c.loosen(100)
		return c.w
	}
	assert.InDeltaSlice(t, []float64{40, 20, 39.99}, loosened(40), 1e-9)
	assert.InDeltaSlice(t, []float64{50, 20, 30}, loosened(60), 1e-9)
	assert.InDeltaSlice(t, []float64{50, 20, 30}, loosened(92), 1e-9)
}

func TestScalesUntilAFigureIsNarrowEnough(t *testing.T) {
	s := &scaling{from: []float64{1, 2, 4, 5, 10}}
	assert.False(t, s.narrower(80, 80))
	assert.True(t, s.narrower(320, 80)) // 4 times too wide: 1:4
	assert.InDelta(t, 4, s.scale(), 0)
	assert.True(t, s.narrower(81, 80))
	assert.InDelta(t, 5, s.scale(), 0)
	assert.True(t, s.narrower(8000, 80))
	assert.InDelta(t, 10, s.scale(), 0)
	assert.False(t, s.narrower(81, 80), "none is smaller")
	at := func(x, y float64) schematic.Point { return schematic.Point{X: x, Y: y} }
	s.made = []*schematic.Made{{Views: []schematic.View{{Outline: [][]schematic.Point{{at(10, 0), at(70, 5)}}}, {Outline: [][]schematic.Point{{at(0, 0), at(50, 90)}}}}}}
	assert.InDelta(t, 60, s.longest(), 1e-9)
}
