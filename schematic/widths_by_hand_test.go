package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/units"
)

// drawnFrom is a stretch of an outline, exact, in mm.
func drawnFrom(name string, x0, y0, x1, y1 int64) drawn {
	return drawn{exact: true, ex: pt{units.Int(x0), units.Int(y0)}, ez: pt{units.Int(x1), units.Int(y1)}, seg: seg{name: name}}
}

// A neck that rises from its lowest point to one end is half of one, unless an armhole stands there; level, where it opens downwards at one of its ends alone.
func TestWhichNecksAreHalves(t *testing.T) {
	rise, fall := drawnFrom("neck", 0, 0, 30, 40), drawnFrom("neck", 0, 40, 30, 0)
	level := drawnFrom("neck", 0, 40, 30, 40)
	up, down := drawnFrom("shoulder", 30, 40, 60, 40), drawnFrom("front edge", 30, 40, 30, -10)
	opens := drawnFrom("front edge", 0, -10, 0, 40)
	slope := drawnFrom("front edge", -5, -10, 0, 40)
	arm := drawnFrom("armhole", 30, 40, 30, -10)
	for _, c := range []struct {
		name   string
		before drawn
		run    []drawn
		after  drawn
		want   bool
	}{
		{"rises", opens, []drawn{rise}, up, true}, {"rises from an armhole", arm, []drawn{rise}, up, false}, {"rises to an armhole", opens, []drawn{rise}, arm, true},
		{"falls", up, []drawn{fall}, down, true}, {"falls to an armhole", up, []drawn{fall}, arm, false}, {"falls from an armhole", arm, []drawn{fall}, down, true},
		{"falls and rises", up, []drawn{fall, drawnFrom("neck", 30, 0, 60, 30)}, up, false}, {"below both ends", up, []drawn{drawnFrom("neck", 0, 20, 9, 0), drawnFrom("neck", 9, 0, 40, 40)}, up, false},
		{"level, opens after", up, []drawn{level}, down, true}, {"level, opens before", opens, []drawn{level}, up, true}, {"level, opens at both", opens, []drawn{level}, down, false}, {"level", up, []drawn{level}, up, false},
		{"level, by an armhole", up, []drawn{level}, arm, false}, {"level, slants down", slope, []drawn{level}, up, false}, {"level, dips", opens, []drawn{drawnFrom("neck", 0, 40, 9, 30), drawnFrom("neck", 9, 30, 30, 40)}, up, false},
		{"none", up, nil, down, false}, {"inexact", opens, []drawn{{}}, up, false}, {"inexact before", drawn{}, []drawn{rise}, up, false}, {"inexact after", opens, []drawn{rise}, drawn{}, false},
	} {
		assert.Equal(t, c.want, halved(c.before, c.run, c.after), c.name)
	}
}

func TestHeightsOfOneNameAreToldApart(t *testing.T) {
	at := func(name, side string, axis Axis, y int64) span {
		return span{name: name, side: side, axis: axis, lo: pt{y: units.Int(y)}, length: units.Int(9), main: true}
	}
	out := []span{at("side length", "left", Vertical, 50), at("side length", "left", Vertical, 0), at("side length", "right", Vertical, 0), at("neck width", "left", Horizontal, 0), at("neck width", "left", Horizontal, 9),
		at("armhole depth", "", Vertical, 30), at("armhole depth", "", Vertical, 10), at("armhole depth", "", Vertical, 20)}
	tellApart(out)
	var names []string
	for _, s := range out {
		names = append(names, s.name)
	}
	assert.Equal(t, []string{"upper side length", "lower side length", "side length", "neck width", "neck width", "armhole depth 3", "armhole depth 1", "armhole depth 2"}, names)
	twins := []span{at("a", "", Vertical, 0), at("b", "", Vertical, 0), at("a", "", Vertical, 5), at("a", "", Horizontal, 0), at("a", "", Vertical, 7)}
	twins[4].length = units.Int(8)
	markTwins(twins)
	var main []bool
	for _, s := range twins {
		main = append(main, s.main)
	}
	assert.Equal(t, []bool{true, true, false, true, true}, main)
}

// By hand: a cap of 4 stitches at either side and a slope between; its middle is 20.
func TestHowFarAnEdgeReaches(t *testing.T) {
	run := []drawn{drawnFrom("cap", 40, 0, 36, 0), drawnFrom("cap", 36, 0, 10, 30), drawnFrom("cap", 10, 30, 0, 30)}
	run[0].seg.sts, run[1].seg.sts, run[2].seg.sts = 4, 7, 10
	r := reachOf(run)
	assert.Equal(t, [4]units.Num{units.Int(30), units.Int(0), units.Int(0), units.Int(40)}, [4]units.Num{r.top.y, r.bottom.y, r.left.x, r.right.x})
	assert.Equal(t, 14, r.sts, "of level stretches")
	for mid, want := range map[int64]string{19: "right", 20: "", 21: "left"} {
		assert.Equal(t, want, r.side(units.Int(mid)))
	}
	assert.Equal(t, units.Int(20), middle([][]drawn{append(run, drawnFrom("", 0, 30, 40, 0)), {drawnFrom("", 5, 5, 6, 6)}}))
	run[1].seg.part, run[2].seg.doubt = "left", true
	r = reachOf(run)
	assert.Equal(t, "", r.part)
	assert.True(t, r.doubt)
	assert.Equal(t, "left", reachOf(run[1:2]).part)
	for _, c := range []struct {
		sts, count, rank int
		of               string
		length           int64
		want             bool
	}{
		{4, 2, rankNamed, "row", 8, true}, {4, 1, rankNamed, "row", 4, true}, {4, 3, rankNamed, "row", 12, false}, {0, 2, rankNamed, "row", 8, false}, {4, 2, rankEdge, "row", 8, false}, {4, 2, rankNamed, "st", 8, false},
		{4, 2, rankNamed, "row", 40, false}, {4, 0, rankNamed, "row", 8, false}, {1, 2, rankNamed, "row", 39, true},
	} {
		r.sts = c.sts
		r.left, r.right = pt{}, pt{x: units.Int(40)}
		assert.Equal(t, c.want, r.stagger(span{of: c.of, count: c.count, length: units.Int(c.length)}, c.rank), "%+v", c)
	}
	for kind, list := range map[Kind][3]string{KindBack: {"back ", "back ", "back "}, KindFront: {"front ", "back ", "front "}, KindBody: {"", "back ", "front "}} {
		w := &worker{made: &Made{Kind: kind}}
		assert.Equal(t, list, [3]string{w.frontOrBack(""), w.frontOrBack("Left Back"), w.frontOrBack("front")})
	}
}

func TestTheTradesNamesOfEdges(t *testing.T) {
	for name, want := range map[string][3]string{
		"armhole": {"armhole depth"}, "neck": {"neck depth", "neck width", "told apart"}, "shoulder": {"shoulder slope", "shoulder"}, "side": {"side length"}, "cap": {"cap height"}, "raglan": {"raglan depth"},
		"underarm": {"", "underarm"}, "front edge": {"front edge"}, "sleeve seam": {"length to underarm"}, "sleeve end": {"sleeve opening", "sleeve opening"}, "tab": {"height of tab", "width of tab"}, "gap": {}, "hem": {}, "": {},
	} {
		e, ok := edgeWords(name)
		told := ""
		if e.prefixed {
			told = "told apart"
		}
		assert.Equal(t, want, [3]string{e.height, e.width, told})
		assert.Equal(t, want != [3]string{}, ok)
	}
	neck, _ := edgeWords("neck")
	assert.Equal(t, []string{"front neck depth", "back neck depth", "front neck width", "neck width"}, []string{neck.heightName("front "), neck.heightName("back "), neck.widthName("front "), neck.widthName("back ")})
	cap, _ := edgeWords("sleeve end")
	assert.Equal(t, []string{"sleeve opening", "sleeve opening"}, []string{cap.heightName("front "), cap.widthName("front ")})
}

// levelAt is a level from the left to the right of its row, at the height of its number.
func levelAt(y, l, r int64, change ...func(*level)) level {
	v := level{y: units.Int(y), l: units.Int(l), r: units.Int(r)}
	for _, f := range change {
		f(&v)
	}
	return v
}

func ends(l *level)   { l.end = true }
func armed(l *level)  { l.armhole = true }
func ofPart(l *level) { l.part = "left" }
func begins(l *level) { l.start = true }
func widths(list []level, f func([]level, int) bool) (out []int) {
	for i := range list {
		if f(list, i) {
			out = append(out, i)
		}
	}
	return out
}

// By hand: 40, 50, 50, 30, 45 wide: it turns at the ends, at the 50s and at the 30; a part's levels are looked at alone.
func TestWhereAWidthTurns(t *testing.T) {
	list := []level{levelAt(0, 0, 40), levelAt(10, -5, 45), levelAt(20, -5, 45), levelAt(30, 5, 35), levelAt(40, 0, 45)}
	assert.Equal(t, []int{0, 1, 2, 3, 4}, widths(list, turning))
	list[3] = levelAt(30, 0, 48)
	assert.Equal(t, []int{0, 1, 2, 4}, widths(list, turning), "50, 48, 45 falls on")
	list[3] = levelAt(30, 0, 10, ofPart)
	assert.Equal(t, []int{0, 1, 2, 3, 4}, widths(list, turning))
	assert.Equal(t, 1, widestOf(list))
	assert.Equal(t, -1, widestOf(list[3:4]))
	assert.Equal(t, -1, widestOf(nil))
	assert.Equal(t, 0, widestOf([]level{levelAt(0, 0, 9), levelAt(1, 1, 10)}), "the first of those as wide")
}

func TestWhereArmholesBegin(t *testing.T) {
	list := []level{levelAt(0, 0, 40), levelAt(10, 0, 40), levelAt(15, 0, 9, ofPart), levelAt(20, 2, 38, armed), levelAt(30, 3, 37, armed), levelAt(40, 3, 37)}
	assert.Equal(t, 1, underarm(list))
	assert.Equal(t, -1, underarm(list[:2]))
	assert.Equal(t, -1, underarm(list[3:]))
	assert.Equal(t, 0, underarm(list[1:]))
	assert.Equal(t, []int{4}, widths(list, lastArmhole))
	list[4].part = "left"
	assert.Equal(t, []int{3, 4}, widths(list, lastArmhole))
}

// By hand, for a body of 40, 30, 44, 42, 38 and 32: the waist is narrower than what is below and above it, the 44 wider, and below the underarm of 42.
func TestWhatIsBelowTheArms(t *testing.T) {
	g := &Gauge{}
	list := []level{levelAt(0, 0, 40), levelAt(10, 5, 35), levelAt(20, -2, 42), levelAt(25, -1, 41), levelAt(30, 1, 39, armed), levelAt(40, 4, 36, ends)}
	for i := range list {
		list[i].gauge = g
	}
	w := &worker{made: &Made{Kind: KindBody}, piece: &Piece{}}
	c := &canvas{levels: list}
	var got []int
	for i := range list {
		if w.belowTheArms(c, i) {
			got = append(got, i)
		}
	}
	assert.Equal(t, []int{1, 2}, got, "narrower, and wider with arms above it")
	name := func(i int) string { s, _ := w.innerWidthName(c, i); return s }
	assert.Equal(t, "waist", name(1))
	c.levels[0].gauge = &Gauge{}
	assert.True(t, w.belowTheArms(c, 1))
	c.levels[1].gauge = c.levels[0].gauge
	assert.False(t, w.belowTheArms(c, 2), "ribs draw in, and are no narrower body")
}

// The names of one level of a piece, by what it is and where it stands, as the trade calls them.
func TestHowAWidthIsCalled(t *testing.T) {
	hem, top, widest, inner := levelPlace{hem: true, first: true}, levelPlace{top: true, last: true}, levelPlace{widest: true}, levelPlace{}
	straight := &canvas{levels: []level{levelAt(0, 0, 40), levelAt(100, 0, 40, ends)}}
	for _, c := range []struct {
		kind Kind
		at   levelPlace
		want string
	}{
		{KindSleeve, hem, "cuff"}, {KindSleeve, widest, "upper arm"}, {KindSleeve, top, "width at top"}, {KindSleeve, inner, ""}, {KindHat, hem, "brim"}, {KindHat, widest, "width around"}, {KindHat, top, "width at crown, hidden"},
		{KindYoke, hem, "base of yoke"}, {KindYoke, widest, "width"}, {KindYoke, top, "neck edge"}, {KindSkirt, hem, "hem"}, {KindSkirt, widest, "hip"}, {KindSkirt, levelPlace{widest: true, top: true}, "waist"}, {KindSkirt, levelPlace{widest: true, hem: true}, "hem"},
		{KindShawl, hem, "lower edge"}, {KindShawl, levelPlace{widest: true, top: true}, "wingspan"}, {KindSleeve, levelPlace{widest: true, top: true}, "upper arm"}, {KindMitten, top, "tip"}, {KindSock, widest, "widest width"},
		{KindBody, hem, "width at hem"}, {KindBody, widest, "width at underarm"}, {KindBody, top, "width at top"}, {KindPiece, hem, "width at lower edge"}, {KindPiece, top, "width at upper edge"}, {KindPiece, widest, "width"}, {KindBack, inner, ""},
		{KindBand, hem, "width of band"}, {KindBand, top, "width at top"},
	} {
		w := &worker{made: &Made{Kind: c.kind}, piece: &Piece{Sections: []Section{&CastOn{}}}}
		name, show, ok := w.kindWidthName(straight, 1, c.at)
		if ok && !show {
			name += ", hidden"
		}
		assert.Equal(t, c.want, name, "%v %+v", c.kind, c.at)
		assert.Equal(t, c.want != "", ok)
	}
	armholes := &canvas{levels: []level{levelAt(0, 0, 40), levelAt(50, -1, 41), levelAt(60, 3, 37, armed)}}
	name, _, _ := KindBack.widthAt(armholes, 1, inner)
	assert.Equal(t, "width at underarm", name)
	name, _, _ = KindBack.widthAt(armholes, 0, widest)
	assert.Equal(t, "widest width", name)
	waist := &canvas{levels: []level{levelAt(0, 0, 40), levelAt(50, 5, 35, ends)}, segs: []seg{{a: pt{units.Int(35), units.Int(50)}, b: pt{units.Int(5), units.Int(50)}, name: "Waist"}}}
	name, _, _ = KindBody.widthAt(waist, 1, top)
	assert.Equal(t, "waist", name)
	waist.segs[0].a.x = units.Int(34)
	name, _, _ = KindBody.widthAt(waist, 1, top)
	assert.Equal(t, "width at top", name, "not all of it")
}

// Bands: from end to end they are narrower than they are high; begun along an edge, their length is their row.
func TestHowABandIsMeasured(t *testing.T) {
	cast := []Section{&CastOn{}}
	long, flat := []level{levelAt(0, 0, 40), levelAt(100, 0, 40)}, []level{levelAt(0, 0, 40), levelAt(40, 0, 40)}
	for _, c := range []struct {
		piece  *Piece
		levels []level
		want   bool
	}{
		{&Piece{Sections: cast}, long, true}, {&Piece{Sections: cast}, flat, false}, {&Piece{Sections: cast, Onto: []EdgeRate{{}}}, long, false}, {&Piece{Sections: []Section{&Even{}}}, long, false}, {&Piece{}, long, false}, {&Piece{Sections: cast}, nil, false},
	} {
		assert.Equal(t, c.want, (&worker{piece: c.piece}).lengthwise(&canvas{levels: c.levels}))
	}
	w := &worker{made: &Made{Kind: KindBand}, piece: &Piece{Onto: []EdgeRate{{}}, Sections: cast}}
	name, _, _ := w.kindWidthName(&canvas{levels: flat}, 0, levelPlace{hem: true, first: true})
	assert.Equal(t, "length of band", name)
	name, show, _ := w.kindWidthName(&canvas{levels: []level{levelAt(0, 0, 40), levelAt(9, -4, 44)}}, 1, levelPlace{top: true, last: true})
	assert.Equal(t, "length at outer edge", name)
	assert.True(t, show)
}

// A piece from the left side to the right: its rows are its length, of 60 at its beginning, 70 at the most and 50 at its end.
func TestLengthsOfAPieceFromSideToSide(t *testing.T) {
	c := &canvas{levels: []level{levelAt(0, 0, 60), levelAt(10, 0, 70), levelAt(20, 0, 70), levelAt(30, 0, 40), levelAt(40, 0, 55), levelAt(45, 0, 52), levelAt(50, 0, 50, ends)}}
	for from, want := range map[Direction][7]string{
		FromLeft:  {"length at left edge", "length", "", "inner length", "inner length", "", "length at right edge"},
		FromRight: {"length at right edge", "length", "", "inner length", "inner length", "", "length at left edge"},
	} {
		var got [7]string
		for i := range c.levels {
			got[i], _ = (&worker{made: &Made{}, piece: &Piece{From: from}}).lengthAt(c, i, 1)
		}
		assert.Equal(t, want, got)
	}
	for kind, want := range map[Kind]string{KindSleeve: "sleeve length", KindHat: "hat depth", KindBand: "depth of band", KindBack: "length"} {
		got, _ := (&worker{made: &Made{Kind: kind}, piece: &Piece{From: FromLeft}}).lengthAt(c, 1, 1)
		assert.Equal(t, want, got)
	}
	for top, want := range map[string]string{"neck": "length at neck", "side": "inner length", "": "inner length"} {
		c.levels[3].top = top
		got, _ := (&worker{made: &Made{}, piece: &Piece{From: FromLeft}}).lengthAt(c, 3, 1)
		assert.Equal(t, want, got)
	}
}

// By hand: a level of 30 cm around is drawn 15 wide; of a piece from the side it stands upright.
func TestHowALevelIsMeasured(t *testing.T) {
	l := levelAt(40, -75, 75)
	s := l.span(FromHem)
	assert.Equal(t, []any{units.Int(150), Horizontal, "st", false, pt{units.Int(-75), units.Int(40)}}, []any{s.length, s.axis, s.of, s.around, s.lo})
	l.round, l.band = true, true
	s = l.span(FromHem)
	assert.Equal(t, []any{units.Int(300), "row", true}, []any{s.length, s.of, s.around})
	s = l.span(FromLeft)
	assert.Equal(t, Vertical, s.axis)
	for _, c := range []struct {
		levels []level
		i      int
		up     bool
		want   bool
	}{
		{[]level{levelAt(0, 0, 40), levelAt(0, 0, 40)}, 1, true, true}, {[]level{levelAt(0, 0, 40), levelAt(9, 0, 40, ends)}, 1, true, true}, {[]level{levelAt(0, 0, 40), levelAt(9, 0, 40, ends)}, 1, false, false},
		{[]level{levelAt(0, 0, 40), levelAt(9, 0, 41, ends)}, 1, true, false}, {[]level{levelAt(0, 0, 40), levelAt(9, 1, 40, ends)}, 1, true, false}, {[]level{levelAt(0, 0, 40, ofPart), levelAt(9, 0, 40, ends)}, 1, true, false},
		{[]level{levelAt(0, 0, 40), levelAt(5, 0, 50), levelAt(9, 0, 40), levelAt(12, 0, 30)}, 2, true, true}, {[]level{levelAt(0, 0, 40), levelAt(5, 0, 50), levelAt(9, 0, 40), levelAt(12, 0, 60)}, 2, true, false},
	} {
		assert.Equal(t, c.want, toldBelow(c.levels, c.i, c.up), "%+v", c)
	}
	c := &canvas{levels: []level{l, levelAt(50, 0, 1), levelAt(60, 0, 1, ends)}}
	assert.Equal(t, []levelPlace{{hem: true, first: true}, {widest: true}, {top: true, last: true}}, []levelPlace{c.placeOf(0, 1), c.placeOf(1, 1), c.placeOf(2, 1)})
	c.down = true
	assert.Equal(t, []levelPlace{{top: true, first: true, widest: true}, {}, {hem: true, last: true}}, []levelPlace{c.placeOf(0, 0), c.placeOf(1, 0), c.placeOf(2, 0)})
}

func TestHowTheWidthsOfPanelsAreCalled(t *testing.T) {
	hem, top := levelPlace{hem: true}, levelPlace{top: true}
	of := func(kind Kind, from Direction, views []*canvas, i int, at levelPlace) string {
		name, _, ok := (&worker{made: &Made{Kind: kind}, piece: &Piece{From: from}, views: views}).panelWidthName(views[0], i, at)
		if !ok {
			return "no panel's"
		}
		return name
	}
	panel := &canvas{panel: true, levels: []level{levelAt(0, 0, 40, begins), levelAt(9, 0, 30), levelAt(20, 0, 30, ends)}}
	whole := &canvas{name: "worked flat", levels: panel.levels}
	assert.Equal(t, "width of worked flat", of(KindYoke, FromNeck, []*canvas{whole, panel}, 0, hem))
	assert.Equal(t, "no panel's", of(KindBody, FromNeck, []*canvas{whole, panel}, 0, hem))
	assert.Equal(t, "no panel's", of(KindYoke, FromNeck, []*canvas{whole}, 0, hem))
	assert.Equal(t, "width at lower edge", of(KindBody, FromHem, []*canvas{panel}, 0, hem))
	assert.Equal(t, "width at upper edge", of(KindBody, FromHem, []*canvas{panel}, 2, top))
	assert.Equal(t, "width at upper edge", of(KindBody, FromHem, []*canvas{panel}, 1, levelPlace{}), "as wide as its end")
	named := &canvas{name: "Front", panel: true, levels: panel.levels}
	assert.Equal(t, "width at base", of(KindYoke, FromNeck, []*canvas{named, panel}, 0, hem))
	assert.Equal(t, "width below neck", of(KindYoke, FromNeck, []*canvas{named, panel}, 2, top))
	assert.Equal(t, "width at neck edge", of(KindYoke, FromNeck, []*canvas{named, panel}, 0, top), "where it begins")
	assert.Equal(t, "width at neck edge", of(KindYoke, FromHem, []*canvas{named, panel}, 2, top))
	assert.Equal(t, "no panel's", of(KindYoke, FromHem, []*canvas{named, panel}, 1, levelPlace{}))
}
