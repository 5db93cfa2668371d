package place

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// formOf is a label of so many millimetres.
func formOf(w, h float64) form { return form{w: w, h: h, lines: []string{"x"}} }

// measuredOn is a measurement on a side, from one place of it to another, with labels of these widths.
func measuredOn(s side, lo, hi float64, widths ...float64) *sided {
	it := &item{letter: form{w: 3, h: 4, letter: true}}
	for _, w := range widths {
		it.forms = append(it.forms, formOf(w, 4))
	}
	m := &sided{it: it, side: s, axis: schematic.Horizontal, a: at(hi, 0), b: at(lo, 0)}
	if s.vertical() {
		m.axis, m.a, m.b = schematic.Vertical, at(0, hi), at(0, lo)
	}
	return m
}

// onTracks are measurements of a side of 100 mm on their tracks, each with its track and its label, in the order given.
func onTracks(past float64, list ...*sided) (t sideTracks, told []string) {
	t.side = list[0].side
	for _, s := range list {
		t.items = append(t.items, newOnSide(s))
	}
	t.colour(100, math.Inf(1))
	t.level(past)
	for _, o := range t.items {
		how := ""
		if o.beside {
			how = " beside"
		}
		if o.form.letter {
			how += " letter"
		}
		told = append(told, fmt.Sprintf("%d: %.1f-%.1f%s", o.track, o.label.lo, o.label.hi, how))
	}
	return t, told
}

// By hand: labels of 20 mm stand over the middle of their lines; the shorter line is nearer, what lies over it a track farther out, what lies beside it in the same; a line shorter than its label has it 1.2 mm beside.
func TestMeasurementsOnTheirTracks(t *testing.T) {
	tr, told := onTracks(0, measuredOn(bottom, 0, 100, 20), measuredOn(bottom, 20, 60, 20))
	assert.Equal(t, []string{"1: 40.0-60.0", "0: 30.0-50.0"}, told)
	assert.InDeltaSlice(t, []float64{8.5, 15.2}, []float64{tr.tracks[0].v, tr.tracks[1].v}, 1e-9, "1.2 + 0.6 + 4 + 0.9 farther out")
	_, told = onTracks(0, measuredOn(bottom, 0, 40, 20), measuredOn(bottom, 40, 80, 20))
	assert.Equal(t, []string{"0: 10.0-30.0", "0: 50.0-70.0"}, told, "end to end")
	_, told = onTracks(0, measuredOn(top, 50, 60, 20))
	assert.Equal(t, []string{"0: 61.2-81.2 beside"}, told)
	_, told = onTracks(0, measuredOn(top, 85, 95, 20))
	assert.Equal(t, []string{"0: 63.8-83.8 beside"}, told, "rather on the side that is not past the end")
	_, told = onTracks(0, measuredOn(top, 20, 80, 70, 30))
	assert.Equal(t, []string{"0: 35.0-65.0"}, told, "the form that fits on it")
	_, told = onTracks(0, measuredOn(top, 40, 60, 50))
	assert.Equal(t, []string{"0: 48.5-51.5 letter"}, told, "wider than 45 mm nothing stands beside")
	_, told = onTracks(0, measuredOn(left, 0, 100))
	assert.Equal(t, []string{"0: 48.5-51.5 letter"}, told)
	// 0 to 100 over a line that ends at 50: its label goes past that by 0.7 and 0.05
	_, told = onTracks(0, measuredOn(left, 0, 100, 20), measuredOn(left, 10, 50, 20))
	assert.Equal(t, []string{"1: 40.0-60.0", "0: 20.0-40.0"}, told)
}

// By hand: below, the first line stands 8.5 mm off, and the second where the label above it has room: 1.2 + 0.6 + 8 + 0.9 = 10.7; above, where the label of the first has: 0.9 + 8 + 1.2 = 10.1. What reaches 12 mm past the outline is passed by 2, or by 1 and the label and 0.9.
func TestHowFarTracksStandApart(t *testing.T) {
	of := func(s side, high, past float64) [2]float64 {
		tr := sideTracks{side: s, tracks: []track{{high: high}, {high: high}}}
		tr.level(past)
		return [2]float64{tr.tracks[0].v, tr.tracks[1].v}
	}
	for _, c := range []struct {
		s          side
		high, past float64
		want       [2]float64
	}{
		{top, 4, 0, [2]float64{8.5, 15}}, {top, 8, 0, [2]float64{8.5, 18.6}}, {bottom, 3, 0, [2]float64{8.5, 15}}, {bottom, 8, 0, [2]float64{9.9, 20.6}}, {top, 4, 12, [2]float64{14, 20.5}}, {bottom, 4, 12, [2]float64{17.9, 24.6}},
	} {
		got := of(c.s, c.high, c.past)
		assert.InDeltaSlice(t, c.want[:], got[:], 1e-9, "%+v", c)
	}
}

// By hand: on an outline of 100 by 60 mm, from 20 to 60 at 8.5 mm: the line, both extension lines from 0.8 off the outline to 1.2 past the line, and the label's middle 0.9 and half its 4 mm above it, whichever side it is on.
func TestWhereALineItsLabelAndItsExtensionsStand(t *testing.T) {
	for s, want := range map[side]struct {
		line, tail []float64
		at         pt
	}{
		top:    {[]float64{20, -8.5, 60, -8.5}, []float64{20, -0.8, 20, -9.7}, at(40, -11.4)},
		bottom: {[]float64{20, 68.5, 60, 68.5}, []float64{20, 60.8, 20, 69.7}, at(40, 65.6)},
		left:   {[]float64{-8.5, 20, -8.5, 60}, []float64{-0.8, 20, -9.7, 20}, at(-11.4, 40)},
		right:  {[]float64{108.5, 20, 108.5, 60}, []float64{100.8, 20, 109.7, 20}, at(105.6, 40)},
	} {
		m := measuredOn(s, 20, 60, 20)
		switch s {
		case bottom:
			m.a.Y, m.b.Y = 60, 60
		case right:
			m.a.X, m.b.X = 100, 100
		}
		tr, _ := onTracks(0, m)
		d := &drawn{w: 100, h: 60}
		d.settle(&tr)
		got := d.dims[0]
		assert.InDeltaSlice(t, want.line, flatOf(got.line), 1e-9, "%v", s)
		assert.InDeltaSlice(t, want.tail, flatOf(got.tail[0]), 1e-9, "%v", s)
		assert.InDeltaSlice(t, []float64{want.at.X, want.at.Y}, []float64{got.at.X, got.at.Y}, 1e-9, "%v", s)
		assert.Equal(t, map[bool]float64{true: 90, false: 0}[s.vertical()], got.angle)
		assert.True(t, got.ends)
		assert.Nil(t, got.lead)
	}
	tr, _ := onTracks(0, measuredOn(top, 50, 60, 20))
	d := &drawn{w: 100, h: 60}
	d.settle(&tr)
	assert.Equal(t, []pt{at(60, -8.5), at(81.2, -8.5)}, d.dims[0].lead, "the line goes on under its label")
	tr, _ = onTracks(0, measuredOn(top, 85, 95, 20))
	d.dims = nil
	d.settle(&tr)
	assert.InDeltaSlice(t, []float64{85, 63.8}, []float64{d.dims[0].lead[0].X, d.dims[0].lead[1].X}, 1e-9)
	slant := measuredOn(right, 0, 0, 20)
	slant.axis, slant.a, slant.b = schematic.Slanted, at(90, 10), at(100, 30)
	tr, _ = onTracks(0, slant)
	d.dims = nil
	d.settle(&tr)
	assert.Equal(t, at(95, 20), d.dims[0].lead[0], "a leader from the middle of what is slanted")
	assert.False(t, d.dims[0].ends)
	assert.Empty(t, d.dims[0].tail)
}

// By hand: an extension line starts 0.8 mm off the outline, after an edge that it runs along: one of 20 mm upwards from 30.
func TestAnExtensionLineStartsBehindTheEdgeThatItRunsAlong(t *testing.T) {
	d := &drawn{edges: []seg{{at(10, 30), at(10, 10)}, {at(10, 10), at(40, 10)}}}
	assert.Equal(t, at(10, 9.2), d.leave(at(10, 30), top))
	assert.Equal(t, at(10, 30.8), d.leave(at(10, 30), bottom))
	assert.Equal(t, at(9.2, 30), d.leave(at(10, 30), left))
	assert.Equal(t, at(40.8, 10), d.leave(at(10, 10), right))
	assert.Equal(t, at(10.2, 29.2), d.leave(at(10.2, 30), top), "beside it")
	dims := []dim{{tail: []seg{{at(0, -1), at(0, -9)}}}, {tail: []seg{{at(0, -3), at(0, -15)}, {at(5, -1), at(5, -15)}}}}
	once(dims, top.out())
	assert.Empty(t, dims[0].tail)
	assert.Equal(t, []seg{{at(0, -1), at(0, -15)}, {at(5, -1), at(5, -15)}}, dims[1].tail, "the longer one, from the nearer beginning")
	dims = []dim{{tail: []seg{{at(0, -3), at(0, -15)}}}, {tail: []seg{{at(0, -1), at(0, -9)}}}, {tail: []seg{{at(0.03, -1), at(0.03, -9)}}}}
	once(dims, top.out())
	assert.Equal(t, []seg{{at(0, -1), at(0, -15)}}, dims[0].tail)
	assert.Empty(t, dims[1].tail)
	assert.Len(t, dims[2].tail, 1, "0.03 mm beside it is another")
}

// By hand: text reads from the left or, from 70 degrees on, from the right of the sheet.
func TestHowTextAlongALineReads(t *testing.T) {
	for _, c := range []struct{ dir, u, angle float64 }{{0, 0, 0}, {60, 60, 60}, {90, 90, 90}, {110, 110, 110}, {111, -69, -69}, {180, 0, 0}, {-69, -69, -69}, {-70, 110, 110}, {-90, 90, 90}} {
		sin, cos := math.Sincos(c.dir * math.Pi / 180)
		u, angle := reading(pt{X: cos, Y: -sin})
		sin, cos = math.Sincos(c.u * math.Pi / 180)
		assert.InDeltaSlice(t, []float64{cos, -sin, c.angle}, []float64{u.X, u.Y, angle}, 1e-9, "%g", c.dir)
	}
}

// By hand: a depth of 30 mm between the ends of a neck at 12 and 20; to a line at 15 they have extension lines of 3 and 5 mm, less 0.8 and with 1.2.
func TestALineWithinAPiece(t *testing.T) {
	s := &sided{axis: schematic.Vertical, a: at(20, 40), b: at(12, 10)}
	o := openingOf(s)
	assert.Equal(t, opening{angle: 90, ua: 10, ub: 40, va: 12, vb: 20, vertical: true}, o)
	assert.Equal(t, at(15, 10), o.at(10, 15))
	assert.Equal(t, []seg{{at(12.8, 10), at(16.2, 10)}, {at(19.2, 40), at(13.8, 40)}}, o.tails(15))
	assert.Len(t, o.tails(12.5), 1, "0.5 mm is no room")
	s.axis = schematic.Horizontal
	o = openingOf(s)
	assert.Equal(t, opening{ua: 12, ub: 20, va: 10, vb: 40}, o)
	assert.Equal(t, at(12, 25), o.at(12, 25))
	d := &drawn{w: 100, h: 60}
	assert.Equal(t, []float64{10, 50, 30, 70}, []float64{d.away(at(30, 10), top), d.away(at(30, 10), bottom), d.away(at(30, 10), left), d.away(at(30, 10), right)})
}

// By hand, on a picture of 100 by 60 mm: round it from its upper left corner, and within it after that.
func TestInWhatOrderMeasurementsAreRead(t *testing.T) {
	d := &drawn{w: 100, h: 60}
	at1 := func(s side, x, y float64, crosses int) float64 {
		return d.clockwise(&sided{side: s, crosses: crosses, axis: schematic.Horizontal, a: at(x, y), b: at(x, y)})
	}
	order := []float64{at1(top, 10, 5, 0), at1(top, 90, 5, 0), at1(right, 80, 20, 0), at1(right, 80, 50, 0), at1(bottom, 90, 30, 0), at1(bottom, 10, 30, 0), at1(left, 40, 50, 0), at1(left, 40, 20, 0), at1(top, 50, 10, 1), at1(bottom, 50, 40, 2)}
	for i := 1; i < len(order); i++ {
		assert.Less(t, order[i-1], order[i], "%d", i)
	}
	assert.InDelta(t, 0, at1(top, 0, 30, 0), 1e-9)
	assert.InDelta(t, math.Pi/2, at1(right, 50, 0, 0), 1e-9)
	assert.InDelta(t, math.Pi, at1(bottom, 100, 9, 0), 1e-9)
	assert.InDelta(t, 2*math.Pi+0.5, at1(left, 50, 30, 1), 1e-9)
	var names []string
	a := newLettering([]string{"A", "M", "XL"}, 'A')
	for n := range 24 {
		names = append(names, a.name(n))
	}
	assert.Equal(t, "B C D E F G H J K L N P Q R S T U V W X Y Z BB BC", strings.Join(names, " "), "no A or M, which are sizes, nor I or O")
	a = newLettering(nil, 'Y')
	assert.Equal(t, []string{"Y", "Z", "AA", "AB"}, []string{a.name(0), a.name(1), a.name(2), a.name(3)})
	assert.True(t, a.form(2, 3).letter)
	assert.Equal(t, []string{"W"}, a.form(1, 3).lines)
	assert.Equal(t, []string{"WW"}, a.form(2, 3).lines)
}

// The same value as it stands on a drawing: one size, all, in both units, to write on.
func TestTheWaysOfWritingAValue(t *testing.T) {
	v := value{{Length: units.Int(400)}, {Length: units.Int(450)}, nil}
	sizes, _ := expr.ParseSizes("S (M, L)")
	lines := func(o Options, suffix string) (out []string) {
		s := &scheme{o: o, steps: units.Usual, first: units.CM, sizes: sizes, size: 3}
		for _, f := range s.forms(v, suffix) {
			out = append(out, strings.Join(f.lines, "|"))
		}
		return out
	}
	assert.Equal(t, []string{"40 cm"}, lines(Options{}, ""))
	assert.Equal(t, []string{"45 cm around", "45 cm|around"}, lines(Options{Size: 1}, " around"))
	assert.Equal(t, []string{"–"}, lines(Options{Size: 2}, ""))
	assert.Equal(t, []string{"40 cm / 15¾ in", "40 cm|15¾ in"}, lines(Options{Units: Both}, ""))
	assert.Equal(t, []string{"40 cm / 15¾ in around", "40 cm /|15¾ in around", "40 cm|15¾ in|around"}, lines(Options{Units: Both}, " around"))
	assert.Equal(t, []string{"40 (45, –) cm", "40 (45,|–) cm", "40|(45,|–) cm"}, lines(Options{Labels: AllSizes}, ""))
	assert.Equal(t, []string{"cm around"}, lines(Options{Labels: Blank}, " around"))
	assert.Nil(t, lines(Options{Labels: Letters}, ""))
	s := &scheme{o: Options{Units: Both, Labels: AllSizes}, steps: units.Usual, first: units.Inch, sizes: sizes, size: 3}
	assert.Equal(t, "15¾ (17¾, –) in / 40 (45, –) cm around", s.words(v, " around"))
	f, b := newForm(3, "40 cm"), blankForm(3, "cm", "in")
	assert.InDelta(t, fonts.Width(fonts.Regular, 3, "40 cm"), f.w, 1e-9)
	assert.InDelta(t, lineHeight(fonts.Regular, 3), f.h, 1e-9)
	assert.InDelta(t, fonts.Width(fonts.Regular, 3, "cm")+25+1, b.w, 1e-9, "a rule of 25 mm, and 1 mm to the unit")
	assert.InDelta(t, 13, b.h, 1e-9, "6.5 mm to write in, twice")
	assert.InDelta(t, 40, blankForm(10, "cm").rule, 1e-9, "four times the text")
}

// ISO 128: dashes for a fold, long and short for a centre.
func TestHowLinesAreDrawn(t *testing.T) {
	for k, want := range map[schematic.LineKind]string{schematic.LineFold: "fold 0.25 [3 1.2]", schematic.LineCentre: "centre 0.25 [6 1.2 0.5 1.2]", schematic.LinePanel: "panel 0.25 [1.2 1]", schematic.LineCell: "cell 0.25 []", schematic.LineMark: "row 0.25 [0.4 1.1]", schematic.LineSlit: "slit 0.5 []",
		schematic.LineSeam: "seam 0.25 []", schematic.LineEdge: "outline 0.5 []", schematic.LineBehind: "behind 0.25 []", schematic.LineRib: "hatch 0.18 []", schematic.LineChange: "change 0.25 []"} {
		assert.Equal(t, want, fmt.Sprint(lineClass(k), " ", lineWidth(k), " ", lineDash(k)))
	}
	for what, want := range map[string]string{"buttonhole": "8.8,20 11.2,20|8.8,19.5 8.8,20.5|11.2,19.5 11.2,20.5", "pocket": "9,19 11,19 11,21 9,21 9,19", "waist": "9,20 10,19 11,20 10,21 9,20", "button": "9.2,19.2 10.8,20.8|9.2,20.8 10.8,19.2"} {
		var lines []string
		for _, l := range markSign(what, at(10, 20)) {
			var ps []string
			for _, p := range l {
				ps = append(ps, fmt.Sprintf("%.4g,%.4g", p.X, p.Y))
			}
			lines = append(lines, strings.Join(ps, " "))
		}
		assert.Equal(t, want, strings.Join(lines, "|"), what)
	}
}

// By hand: two bars of 40 mm in 5 parts and of 25.4 mm in 5; their ends 1.3 mm and their parts 0.7 mm to either side.
func TestTheScaleBarIsDrawnByHand(t *testing.T) {
	b := newBar(units.CM, 5, 3, 500)
	var g sheet.Group
	b.draw(&g, 10, 100)
	m := 100 + lineHeight(fonts.Regular, 3)/2
	var lines [][]float64
	var texts []*sheet.Text
	for _, it := range g.Items {
		switch it := it.(type) {
		case *sheet.Path:
			lines = append(lines, []float64{it.Segs[0].P[0].X, it.Segs[0].P[0].Y - m, it.Segs[1].P[0].X, it.Segs[1].P[0].Y - m})
		case *sheet.Text:
			texts = append(texts, it)
		}
	}
	assert.Len(t, lines, 14)
	for i, want := range [][]float64{{10, 0, 50, 0}, {10, -1.3, 10, 1.3}, {18, -0.7, 18, 0.7}, {26, -0.7, 26, 0.7}, {34, -0.7, 34, 0.7}, {42, -0.7, 42, 0.7}, {50, -1.3, 50, 1.3}} {
		assert.InDeltaSlice(t, want, lines[i], 1e-9)
	}
	assert.Equal(t, []string{"20 cm", "5 in"}, []string{texts[0].S, texts[1].S})
	assert.InDelta(t, 52, texts[0].At.X, 1e-9, "2 mm behind its bar")
	x := 52 + texts[0].Width + 9
	assert.InDelta(t, x, lines[7][0], 1e-9, "9 mm behind its length")
	assert.InDelta(t, x+25.4, lines[7][2], 1e-9)
	need := 2*2 + 9 + fonts.Width(fonts.Regular, 3, "  page 000 of 000") + 40 + 25.4 + fonts.Width(fonts.Regular, 3, "20 cm") + fonts.Width(fonts.Regular, 3, "5 in")
	assert.InDelta(t, need, b.wide, 1e-9)
	assert.False(t, newBar(units.CM, 5, 3, need+0.01).stacked)
	narrow := newBar(units.CM, 5, 3, need-0.01)
	assert.True(t, narrow.stacked)
	assert.InDelta(t, 2*lineHeight(fonts.Regular, 3)+1, narrow.high, 1e-9)
	g.Items = nil
	narrow.draw(&g, 10, 100)
	assert.InDelta(t, 10, g.Items[8].(*sheet.Path).Segs[0].P[0].X, 1e-9, "one above the other")
	assert.InDelta(t, m+lineHeight(fonts.Regular, 3)+1, g.Items[8].(*sheet.Path).Segs[0].P[0].Y, 1e-9)
}

// By hand, on A4 with 20 mm of heading and 15 of foot: 190 wide and 297 - 20 - 20 - 15 = 242 high, less a caution of 12 on the first page. Shelves of 30 and 40 mm, 7 apart.
func TestWhatAPageHoldsAndWhereItsPiecesStand(t *testing.T) {
	f := &frame{p: &plan{}, w: 210, h: 297, headHigh: 20, footHigh: 15, cautHigh: 12}
	w, h := f.area(0)
	assert.Equal(t, []float64{190, 230}, []float64{w, h})
	_, h = f.area(1)
	assert.InDelta(t, 242, h, 0)
	_, h = (&frame{w: 210, h: 30}).area(1)
	assert.InDelta(t, 10, h, 0)
	_, h = (&frame{w: 210, h: 10}).area(1)
	assert.Zero(t, h)
	piece := func(wide, high, past float64) *drawn {
		return &drawn{w: wide, h: high, all: extent{lo: at(-past, -past), hi: at(wide+past, high+past)}}
	}
	a, b, c := piece(50, 20, 5), piece(30, 10, 5), piece(100, 30, 5)
	s := shelf{}.with(a).with(b)
	assert.Equal(t, []float64{60 + 7 + 40, 25, 5}, []float64{s.w, s.above, s.below})
	p := &page{shelves: []shelf{s, shelf{}.with(c)}}
	assert.InDelta(t, 30+40+7+3*4, p.high(4), 1e-9)
	puts := p.arrange(f, 1, 50) // 242 - 50 - 77 = 115 to spare, a third of which is more than 14
	y := 10 + 20 + 0.4*(115-14)
	assert.InDeltaSlice(t, []float64{10 + (190-107)/3.0 + 5, y + 25 - 20, 10 + (190-107)*2/3.0 + 60 + 7 + 5, y + 25 - 10, 10 + 40 + 5, y + 30 + 7 + 14 + 35 - 30},
		[]float64{puts[0].o.X, puts[0].o.Y, puts[1].o.X, puts[1].o.Y, puts[2].o.X, puts[2].o.Y}, 1e-9)
	puts = (&page{shelves: []shelf{s}}).arrange(f, 1, 242)
	assert.InDelta(t, 30+5, puts[0].o.Y, 1e-9, "nothing to spare")
	low := f.filled(p, 1, 50)
	assert.InDelta(t, 297-(242-50-(77+3*14)), low.h, 1e-9)
	cut := f.trimmed(p, 1, 50, 0)
	assert.InDelta(t, 297-(242-50-(77+3*4)), cut.h, 1e-9)
	assert.InDelta(t, 110+20, cut.w, 1e-9)
	assert.InDelta(t, 150+20, f.trimmed(p, 1, 50, 150).w, 1e-9)
	assert.InDelta(t, 210, f.trimmed(p, 1, 50, 300).w, 1e-9, "no wider than the paper")
	assert.Equal(t, 297.0, f.trimmed(p, 1, 900, 0).h)
}

// By hand: papers of ISO 216 and ANSI/ASME Y14.1; a picture of 100 mm has half a millimetre more at each side and is 150 mm high at most.
func TestTheSidesOfThePaper(t *testing.T) {
	for _, c := range []struct {
		o           Options
		short, long float64
	}{{Options{}, 210, 297}, {Options{Paper: Letter}, 215.9, 279.4}, {Options{Width: 100}, 119, 170}, {Options{Width: 60}, 79, 140}} {
		short, long := c.o.sides()
		assert.Equal(t, []float64{c.short, c.long}, []float64{short, long})
	}
	assert.Equal(t, []string{"A4", "Letter", "a4", "letter"}, []string{A4.String(), Letter.String(), A4.Word(), Letter.Word()})
	assert.Equal(t, []Paper{A4, Letter}, Papers())
	turned := func(o Options) [2]bool { return [2]bool{o.turned(false), o.turned(true)} }
	assert.Equal(t, [][2]bool{{true, true}, {true, false}, {false, true}, {true, false}}, [][2]bool{turned(Options{}), turned(Options{Orientation: Portrait}), turned(Options{Orientation: Landscape}), turned(Options{Width: 90, Orientation: Landscape})})
	assert.Equal(t, [3]bool{false, true, true}, [3]bool{Options{}.cut(), Options{Trim: true}.cut(), Options{Width: 1}.cut()})
	for i, list := range [][]float64{UsualScales, WornScales} {
		for k := 1; k < len(list); k++ {
			assert.Less(t, list[k-1], list[k], "%d", i)
		}
		assert.Equal(t, []float64{2, 100}, []float64{list[0], list[len(list)-1]})
	}
	wide, high := &TooLarge{What: "x", W: 300, H: 400}, &TooLarge{What: "y", W: 350, H: 350}
	assert.Same(t, wide, wide.or(high), "300 x 400 is less than 350 x 350")
	assert.Same(t, wide, high.or(wide))
	turnedOne := &TooLarge{W: 250, H: 200}
	assert.Same(t, wide, wide.or(turnedOne), "one that the paper holds, turned, is no answer")
	assert.Same(t, wide, turnedOne.or(wide))
	both := turnedOne.or(&TooLarge{W: 205, H: 240})
	assert.Equal(t, []float64{250, 240}, []float64{both.W, both.H})
	assert.Equal(t, "x does not fit on A4: it needs paper of at least 300 x 400 mm (A2), a smaller scale or smaller text", strings.Replace(wide.Error(), "(A3)", "(A2)", 1))
	assert.Contains(t, (&TooLarge{What: "x", Scale: 2.5, W: 1, H: 1}).Error(), "x at 1:2.5 does not fit on A4")
}

// What stands under the name of a piece.
func TestWhatStandsUnderAPiece(t *testing.T) {
	for want, c := range map[string]struct {
		m schematic.Made
		v schematic.View
	}{
		"":                                  {schematic.Made{Make: 1}, schematic.View{}},
		"make 2":                            {schematic.Made{Make: 2}, schematic.View{}},
		"make 2: as drawn, and mirrored":    {schematic.Made{Make: 1, Mirrored: true}, schematic.View{}},
		"make 4: as drawn, and mirrored":    {schematic.Made{Make: 4, Mirrored: true, Kind: schematic.KindFront}, schematic.View{}},
		"mirror of Left; half of the round": {schematic.Made{MirrorOf: "Left"}, schematic.View{Half: true}},
		"2 alike, side by side":             {schematic.Made{}, schematic.View{Alike: 2, Half: true, Disc: true}},
		"drawn left is right as worn":       {schematic.Made{Kind: schematic.KindFront, Name: "Front"}, schematic.View{}},
		"drawn left is left as worn":        {schematic.Made{Kind: schematic.KindBack, Name: "Back"}, schematic.View{}},
	} {
		assert.Equal(t, want, strings.Join(captionInfo(&c.m, &c.v), "; "))
	}
	assert.Empty(t, captionInfo(&schematic.Made{Kind: schematic.KindFront, Name: "Left Front"}, &schematic.View{}))
	seen := map[string]bool{}
	assert.Equal(t, []string{"a", "a-2", "a-3", "b"}, []string{unique(seen, "a"), unique(seen, "a"), unique(seen, "a"), unique(seen, "b")})
}

// By hand: on a piece from 0 to 100 mm, 10 to 30 on the left is 90 to 70 on the right, to half a millimetre; another axis, around or stretched is another measurement.
func TestAMeasurementIsGivenOnceOnEitherHalf(t *testing.T) {
	v := &viewPlan{lo: schematic.Point{}, hi: schematic.Point{X: 100, Y: 50}}
	of := func(ax, bx, y float64, change ...func(*schematic.Measure)) *schematic.Measure {
		m := &schematic.Measure{ID: fmt.Sprint(ax), A: schematic.Point{X: ax, Y: y}, B: schematic.Point{X: bx, Y: y}, Length: units.Int(20)}
		for _, f := range change {
			f(m)
		}
		return m
	}
	first := of(10, 30, 5)
	for _, c := range []struct {
		name string
		m    *schematic.Measure
		want bool
	}{
		{"mirrored", of(90, 70, 5), true}, {"its ends changed", of(70, 90, 5), true}, {"0.4 mm off", of(90.4, 70, 5.4), true}, {"0.6 off", of(90.6, 70, 5), false}, {"0.6 higher", of(90, 70, 5.6), false}, {"beside it", of(10, 30, 5), false},
		{"another axis", of(90, 70, 5, func(m *schematic.Measure) { m.Axis = schematic.Vertical }), false}, {"around", of(90, 70, 5, func(m *schematic.Measure) { m.Around = true }), false}, {"stretched", of(90, 70, 5, func(m *schematic.Measure) { m.Stretched = true }), false},
		{"longer", of(90, 70, 5, func(m *schematic.Measure) { m.Length = units.Int(21) }), false},
	} {
		byID := []map[string]*schematic.Measure{{"10": first, "own": c.m}}
		c.m.ID = "own"
		assert.Equal(t, c.want, v.mirrored(c.m, []*schematic.Measure{first}, byID), c.name)
	}
	twin := &schematic.Made{Name: "Left", Measures: []schematic.Measure{{ID: "l", Name: "cuff", Main: true, Length: units.Int(9)}}}
	right := &schematic.Made{Name: "Right", MirrorOf: "Left"}
	m := &schematic.Measure{ID: "r", Name: "cuff", Length: units.Int(9)}
	byID := []map[string]*schematic.Measure{{"l": &twin.Measures[0], "r": m}}
	pieces := []*schematic.Made{right, twin}
	assert.True(t, onTwin(pieces, right, m, byID))
	assert.False(t, onTwin(pieces, twin, m, byID))
	assert.False(t, onTwin(pieces[:1], right, m, byID))
	for _, f := range []func(*schematic.Measure){func(m *schematic.Measure) { m.Name = "hem" }, func(m *schematic.Measure) { m.Axis = schematic.Vertical }, func(m *schematic.Measure) { m.Around = true }, func(m *schematic.Measure) { m.View = 1 }, func(m *schematic.Measure) { m.Length = units.Int(8) }} {
		o := *m
		f(&o)
		byID[0]["r"] = &o
		assert.False(t, onTwin(pieces, right, &o, byID))
	}
	byID[0]["r"] = m
	twin.Measures[0].Main = false
	assert.False(t, onTwin(pieces, right, m, byID))
	assert.False(t, alike(first, m, []map[string]*schematic.Measure{{"10": first}}), "one that a size lacks")
	assert.True(t, alike(first, m, []map[string]*schematic.Measure{{}}))
}
