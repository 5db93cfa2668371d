package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

func TestWhatADrawingCallsAMeasurement(t *testing.T) {
	for _, c := range []struct {
		wrote, piece, measure string
		want                  bool
	}{
		{"bust", "Body", "bust", true}, {"Body bust", "Body", "bust", true}, {"body", "Body", "hip", true}, {"Body hip", "Body", "bust", false},
		{"bust", "Body", "chest", true}, {"chest", "Body", "bust", false}, {"hip around", "Skirt", "hip", true}, {"Sleeve", "Body", "cuff", false}, {"cuff", "Sleeve", "hip", false},
	} {
		assert.Equal(t, c.want, Called{Name: c.wrote}.Is(c.piece, c.measure), "%+v", c)
	}
	d := &Drawing{Order: []Called{{Name: "cuff"}, {Name: "Body bust"}, {Name: "bust"}}, Names: []Renamed{{Called{Name: "hip"}, "seat"}, {Called{Name: "Skirt hip"}, "low hip"}}}
	assert.Equal(t, []int{0, 1, 2, 3}, []int{d.Rank("Sleeve", "cuff"), d.Rank("Body", "bust"), d.Rank("Front", "bust"), d.Rank("Body", "hip")})
	assert.Equal(t, "seat", d.NameOf("Skirt", "hip"), "the first that means it")
	assert.Equal(t, "waist", d.NameOf("Skirt", "waist"))
	for _, c := range []struct {
		show, hide []Called
		want       bool
	}{
		{nil, nil, true}, {[]Called{{Name: "hip"}}, nil, true}, {[]Called{{Name: "bust"}}, nil, false}, {nil, []Called{{Name: "hip"}}, false},
		{[]Called{{Name: "hip"}}, []Called{{Name: "Skirt"}}, false}, {nil, []Called{{Name: "bust"}}, true},
	} {
		assert.Equal(t, c.want, (&Drawing{Show: c.show, Hide: c.hide}).Wants("Skirt", "hip"), "%+v", c)
	}
	parts := Key | Arrows
	assert.Equal(t, []bool{false, true, false, true, false}, []bool{parts.Has(Heading), parts.Has(Key), parts.Has(ScaleBar), parts.Has(Arrows), parts.Has(JoinMarks)})
}

// By hand: 1 stitch over 10 cm is 0.1 in a centimetre and 2000 are 200, the least and the most; 0.099 and 200.1 are beyond.
func TestTheBoundsOfAGauge(t *testing.T) {
	of := func(sts, rows, over units.Num) string {
		return Gauge{Stitches: sts, Rows: rows, Over: over}.Impossible()
	}
	ten, cm10, zero := units.Int(10), units.Int(100), "the stitches, rows and length of a gauge must be more than 0"
	for _, c := range []struct{ got, want string }{
		{of(units.Int(1), ten, cm10), ""}, {of(ten, units.Int(1), cm10), ""}, {of(units.Int(2000), ten, cm10), ""}, {of(ten, units.Int(2000), cm10), ""},
		{of(units.Frac(99, 100), ten, cm10), "this gauge has 0.099 stitches in a centimetre"}, {of(ten, units.Int(2001), cm10), "this gauge has 200.1 rows in a centimetre"},
		{of(units.Num{}, ten, cm10), zero}, {of(ten, units.Num{}, cm10), zero}, {of(ten, ten, units.Num{}), zero}, {of(ten, ten, units.Int(-1)), zero}, {of(units.Frac(1, 100), units.Frac(1, 100), units.Int(1)), ""},
	} {
		assert.Equal(t, c.want, c.got)
	}
	all := []Gauge{{Name: "fabric"}, {Name: "rib"}}
	assert.Same(t, &all[0], GaugeIn(all, ""))
	assert.Same(t, &all[1], GaugeIn(all, "rib"))
	assert.Nil(t, GaugeIn(all, "lace"))
	assert.Nil(t, GaugeIn(nil, ""))
	assert.True(t, Gauge{Stitch: "dc"}.Crochet(US))
	assert.False(t, Gauge{Stitch: "stocking stitch"}.Crochet(UK))
}

func TestWordsOfAPattern(t *testing.T) {
	assert.Equal(t, []string{"US", "UK"}, []string{US.String(), UK.String()})
	assert.Equal(t, "from the waist", (&Piece{Begins: "waist", From: FromNeck}).Worked())
	for d, want := range map[Direction]string{FromHem: "from the hem", FromNeck: "from the neck", FromLeft: "from the left side", FromRight: "from the right side", FromCentre: "from the centre"} {
		assert.Equal(t, want, (&Piece{From: d}).Worked())
	}
	for s, want := range map[Side]string{BothEdges: "both edges", LeftEdge: "left edge", RightEdge: "right edge", Lines: "each side of each line", Across: "across"} {
		assert.Equal(t, want, s.String())
	}
	assert.Equal(t, "sock", Kinds()[len(Kinds())-1].String())
	assert.Equal(t, KindPiece, Kinds()[0])
	for name, want := range map[string]bool{"Belt": true, "neck ties": true, "tie-end": true, "left,strap": true, "Tiered skirt": false, "body": false} {
		assert.Equal(t, want, HangsFree(name), name)
	}
	m := Measure{Length: units.Int(254), Own: &Own{CM: units.Int(250), Inch: units.Frac(5*127, 2)}}
	assert.Equal(t, "12½", m.Text(units.Inch, units.Usual))
	assert.Equal(t, "25", m.Text(units.CM, units.Usual))
	m.Own = nil
	assert.Equal(t, "10", m.Text(units.Inch, units.Usual))
	worn := &Made{Name: "worn"}
	assert.Equal(t, []*Made{worn}, (&Garment{WornBack: worn}).AsWorn())
	assert.Empty(t, (&Garment{}).AsWorn())
}

// Words begin a longer one from four letters on: buttonhole and strings, but no tieback.
func TestWhichWordsWarn(t *testing.T) {
	for _, c := range []struct {
		text  string
		words []string
		want  bool
	}{
		{"six Buttons, 15 mm", smallParts, true}, {"buttonhole", smallParts, true}, {"eyes", smallParts, true}, {"eyelet", smallParts, false}, {"tieback", cords, false}, {"ties", cords, true},
		{"an i-cord", cords, true}, {"zap toggle", smallParts, true}, {"azip", smallParts, false}, {"unpressed", heat, false}, {"Press/steam", heat, true}, {"", heat, false},
	} {
		assert.Equal(t, c.want, mentions([]string{"first", c.text}, c.words), c.text)
	}
}

func TestHowManyPanelsAViewStandsFor(t *testing.T) {
	for want, v := range map[string]View{"": {Alike: 1}, "2 alike, side by side": {Alike: 2}, "3 alike, side by side, one of them mirrored": {Alike: 3, Mirror: 1}, "6 alike, side by side, 3 of them mirrored": {Alike: 6, Mirror: 3}} {
		assert.Equal(t, want, v.AlikeText())
	}
}

// By hand: 9 rows and 7 stitches at 2 in every 3: 3 times 2 are 6 and 7 each, or of 16 together 5 times 2 and 1; at 5 in every 3, 8 rows are 2 times 5 and 1 + 1 for each of the two left.
func TestStitchesPickedUpAtARate(t *testing.T) {
	a := Along{Rows: 9, Stitches: 7}
	assert.Equal(t, 13, a.Pick(2, 3, true))
	assert.Equal(t, 11, a.Pick(2, 3, false))
	assert.Equal(t, 14, Along{Rows: 8}.Pick(5, 3, true))
	assert.Equal(t, 16, a.Pick(1, 0, true), "in each")
	s := &PickUp{Pick: 3, Of: 4}
	assert.Equal(t, "state 18, or work 26 rows instead of 24", s.fixFor(24, 20, 18), "20 x 4 / 3 are 26.7")
	assert.Equal(t, "state 18, or work another number of rows", (&PickUp{Of: 4}).fixFor(24, 20, 18))
	assert.Equal(t, "state 18, or work another number of rows", (&PickUp{Pick: 3, Of: 4, Alternate: true}).fixFor(24, 20, 18))
}

// By hand: stitches that are added belong to the panel before them, those before the first to the first.
func TestAddedStitchesJoinAPanel(t *testing.T) {
	g := &Gauge{}
	r := func(name string, n int) run { return run{name, n, g} }
	assert.Equal(t, []run{r("A", 13), r("B", 7)}, mergePanels([]run{r("", 2), r("", 1), r("A", 10), r("", 0), r("B", 4), r("", 3)}))
	assert.Equal(t, []run{r("A", 9)}, mergePanels([]run{r("A", 4), r("", 5), r("C", 0)}))
	assert.Equal(t, []run{r("", 5)}, mergePanels([]run{r("", 2), r("", 3)}))
	assert.Empty(t, mergePanels([]run{r("A", 0)}))
	m := &Made{Live: map[string]int{"": 0, "arm": 5}, liveParts: map[string]int{"arm": 5, "neck": 8}}
	assert.Equal(t, []int{13, 5, 0}, []int{m.LiveIn(""), m.LiveIn("arm"), m.LiveIn("leg")})
	m.Live[""] = 30
	assert.Equal(t, 30, m.LiveIn(""))
}

// By hand: live stitches that a piece begins with, all or half of them, or as many as it states where these are in doubt or others.
func TestLiveStitchesThatAPieceBeginsWith(t *testing.T) {
	other, self := &Piece{Name: "Body"}, &Piece{Name: "Arm"}
	of := func(h HeldPart, m *Made) (int, bool) {
		b := &builder{p: &Pattern{Pieces: []*Piece{other, self}}, g: &Garment{}, made: map[string]*Made{"Body": m}, busy: map[string]bool{}}
		w := &worker{b: b, piece: self, made: &Made{}}
		n := w.liveOf(h)
		return n, w.guessed
	}
	live := &Made{Live: map[string]int{"arm": 21}}
	for _, c := range []struct {
		h       HeldPart
		m       *Made
		n       int
		guessed bool
	}{
		{HeldPart{Piece: "Body", Part: "arm"}, live, 21, false}, {HeldPart{Piece: "Body", Part: "arm", Half: true}, live, 10, false}, {HeldPart{Piece: "Body", Part: "arm", Stitches: expr.Counts(21)}, live, 21, false},
		{HeldPart{Piece: "Body", Part: "arm", Stitches: expr.Counts(22)}, live, 22, false}, {HeldPart{Piece: "Nowhere"}, live, 0, false}, {HeldPart{Piece: "Arm"}, live, 0, false},
		{HeldPart{Piece: "Body", Part: "arm", Stitches: expr.Counts(8)}, &Made{Cut: true}, 8, false}, {HeldPart{Piece: "Body", Part: "arm"}, &Made{Cut: true, Live: map[string]int{"arm": 5}}, 5, true},
	} {
		n, guessed := of(c.h, c.m)
		assert.Equal(t, c.n, n, "%+v", c.h)
		assert.Equal(t, c.guessed, guessed, "%+v", c.h)
	}
}

func TestANameSaysTheSameOfTheOtherSide(t *testing.T) {
	for name, other := range map[string]string{"Left front": "Right front", "Right front left neck": "Left front right neck", "Body left armhole": "Body right armhole", "Back": "Back", "leftover": "leftover"} {
		assert.Equal(t, other, OtherSide(name))
		assert.Equal(t, name, OtherSide(other))
	}
}
