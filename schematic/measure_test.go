package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/units"
)

// drawnNames are the names of the measurements that the drawing of the piece shows.
func drawnNames(m *Made) []string {
	var names []string
	for _, s := range m.Measures {
		if s.Main {
			names = append(names, s.Name)
		}
	}
	return names
}

// By hand, rows of 4 mm: 10 of cuff rib are 40 mm and 6 of top rib 24 mm, each called by its name. One rib is the depth of rib, whatever its name.
func TestTwoRibsAreCalledByTheirNames(t *testing.T) {
	rib := func(rows int, name string) Section {
		return &Even{Amount: Amount{Rows: n(rows)}, Rib: true, Common: Common{Name: name}}
	}
	m := Work(plain(&Piece{Name: "Mitt", Sections: []Section{&CastOn{Stitches: n(40)}, rib(10, "cuff rib"), &Even{Amount: Amount{Rows: n(20)}}, rib(6, "top rib")}}), 0).Pieces[0]
	assert.Equal(t, mm(40), find(t, m, "mitt.depth-of-cuff-rib").Length)
	assert.Equal(t, mm(24), find(t, m, "mitt.depth-of-top-rib").Length)
	m = Work(plain(&Piece{Name: "Mitt", Sections: []Section{&CastOn{Stitches: n(40)}, rib(10, "cuff rib"), &Even{Amount: Amount{Rows: n(20)}}}}), 0).Pieces[0]
	assert.Equal(t, mm(40), find(t, m, "mitt.depth-of-rib").Length)
}

// A back from the right side to the left: rows of 60 sts (300 mm) run along the body, 40 sts
// added at the top are the armhole (200 mm), 3 sts fewer at the neck (15 mm), and the rows,
// 4 + 12 + 3 + 20 + 3 + 12 + 4 of 4 mm, are its width.
func TestAPieceFromSideToSideHasItsLengthAlongTheRows(t *testing.T) {
	m := Work(plain(&Piece{Name: "Back", Kind: KindBack, From: FromRight, Sections: []Section{
		&CastOn{Stitches: n(60), Edge: "side"},
		&Even{Amount: Amount{Rows: n(4)}},
		&AddEdge{Stitches: n(40), At: RightEdge, Edge: "armhole", Common: Common{RightEdge: "shoulder"}},
		&Even{Amount: Amount{Rows: n(12)}},
		&Shape{Shapings: []Shaping{{By: n(1), At: RightEdge, Every: n(1), Times: n(3), Edge: "neck"}}},
		&Even{Amount: Amount{Rows: n(20)}},
		&Shape{Shapings: []Shaping{{Increase: true, By: n(1), At: RightEdge, Every: n(1), Times: n(3)}}},
		&Even{Amount: Amount{Rows: n(12)}, Common: Common{RightEdge: "shoulder"}},
		&BindOff{Stitches: n(40), At: RightEdge, Edge: "armhole", Leave: true},
		&Even{Amount: Amount{Rows: n(4)}},
		&BindOff{All: true, Edge: "side"},
	}}), 0).Pieces[0]
	assert.Equal(t, mm(500), find(t, m, "back.length").Length)
	assert.Equal(t, Vertical, find(t, m, "back.length").Axis)
	assert.Equal(t, mm(485), find(t, m, "back.length-at-neck").Length)
	assert.Equal(t, mm(58*4), find(t, m, "back.width-from-side-to-side").Length)
	assert.Equal(t, mm(200), find(t, m, "back.armhole-depth.right").Length)
	names := drawnNames(m)
	assert.NotContains(t, names, "width at hem")
	assert.NotContains(t, names, "cross back")
	count := 0
	for _, s := range m.Measures {
		if s.Main && s.Length.Eq(mm(300)) {
			count++
		}
	}
	assert.Equal(t, 1, count, "the side is measured once")
}

// Each dimension is given once (ISO 129-1:2018, clause 4): a front's shoulder, and the width
// to which its armhole is shaped, are one as long as nothing is shaped between them.
func TestAFrontAsWideAsItsShoulderIsMeasuredOnce(t *testing.T) {
	m := Work(plain(&Piece{Name: "Left front", Kind: KindFront, Sections: []Section{
		&CastOn{Stitches: n(50)},
		&Even{Amount: Amount{Rows: n(40)}},
		&BindOff{Stitches: n(5), At: RightEdge, Leave: true, Edge: "armhole"},
		&Shape{Shapings: []Shaping{{By: n(1), At: LeftEdge, Every: n(1), Times: n(25), Edge: "neck"}}},
		&Even{Amount: Amount{Rows: n(20)}},
		&BindOff{All: true, Edge: "shoulder"},
	}}), 0).Pieces[0]
	names := drawnNames(m)
	assert.Contains(t, names, "shoulder")
	assert.NotContains(t, names, "cross front")
}

func TestTheTradesNameGoesBeforeThatOfAnEdge(t *testing.T) {
	m := Work(plain(&Piece{Name: "Sleeve", Kind: KindSleeve, Sections: []Section{
		&CastOn{Stitches: n(36), Edge: "cuff edge"},
		&Shape{Shapings: []Shaping{{Increase: true, By: n(1), At: BothEdges, Every: n(4), Times: n(8)}}},
		&BindOff{All: true, Edge: "sleeve top"},
	}}), 0).Pieces[0]
	assert.Equal(t, []string{"cuff", "upper arm", "sleeve length"}, drawnNames(m))
}

func TestABandWorkedLengthwiseIsAsLongAsItsRows(t *testing.T) {
	tie := &Piece{Name: "Tie", Kind: KindBand, Sections: []Section{
		&CastOn{Stitches: n(6)},
		&Even{Amount: Amount{Rows: n(150)}},
		&BindOff{All: true},
	}}
	m := Work(plain(tie), 0).Pieces[0]
	assert.Equal(t, mm(600), find(t, m, "tie.length-of-band").Length)
	assert.Equal(t, mm(30), find(t, m, "tie.width-of-band").Length)
}

// Six gores of 30 sts, each narrowed by 2 sts 5 times: 180 sts around (900 mm) at the hem, and
// 120 (600 mm) at the waist. Marked lines alone do not make a raglan.
func TestAWholeRowInPanelsIsMeasuredAroundAndIsNoRaglanWithoutSleeves(t *testing.T) {
	var gores []Panel
	for _, name := range []string{"Gore 1", "Gore 2", "Gore 3", "Gore 4", "Gore 5", "Gore 6"} {
		gores = append(gores, Panel{Name: name, Stitches: n(30)})
	}
	m := Work(plain(&Piece{Name: "Skirt", Kind: KindBody, Round: true, Sections: []Section{
		&CastOn{Stitches: n(180)},
		&Panels{Of: gores},
		&Shape{Shapings: []Shaping{{By: n(1), At: Lines, Every: n(8), Times: n(5)}}, Common: Common{Width: "waist"}},
		&Even{Amount: Amount{Rows: n(10)}},
		&BindOff{All: true},
	}}), 0).Pieces[0]
	waist := find(t, m, "skirt.waist")
	assert.Equal(t, mm(600), waist.Length)
	assert.Equal(t, 120, waist.Count)
	assert.True(t, waist.Around)
	assert.False(t, waist.Main, "no drawing shows it")
	assert.Equal(t, mm(900), find(t, m, "skirt.width-at-hem").Length)
	assert.Equal(t, mm(100), find(t, m, "skirt.gore-1.width-at-upper-edge").Length)
	assert.Equal(t, mm(200), find(t, m, "skirt.gore-1.length").Length)
	for _, s := range m.Measures {
		assert.NotContains(t, s.Name, "raglan")
	}
}

// A neck cast on in two points and joined over added sts is one neck: 1 + 6 sts at each side
// and 8 added are 22 sts, 110 mm.
func TestTheNeckOfAYokeBegunFlatIsOneEdge(t *testing.T) {
	m := Work(plain(&Piece{Name: "Yoke", Kind: KindYoke, From: FromNeck, LeftEdge: "neck", RightEdge: "neck", Sections: []Section{
		&CastOn{Stitches: n(54), Edge: "neck"},
		&Panels{Of: []Panel{{Name: "Right front", Stitches: n(1)}, {Name: "Right sleeve", Stitches: n(10)}, {Name: "Back", Stitches: n(32)},
			{Name: "Left sleeve", Stitches: n(10)}, {Name: "Left front", Stitches: n(1)}}},
		&Shape{Shapings: []Shaping{
			{Increase: true, By: n(1), At: Lines, Every: n(2), Times: n(6), Edge: "raglan"},
			{Increase: true, By: n(1), At: BothEdges, Every: n(2), Times: n(6)},
		}},
		&JoinParts{Of: []JoinPart{{Added: n(8), Edge: "neck"}}, Round: true, Name: "Front"},
		&Shape{Shapings: []Shaping{{Increase: true, By: n(1), At: Lines, Every: n(2), Times: n(20)}}},
		&BindOff{All: true, Hold: true},
	}}), 0).Pieces[0]
	neck := find(t, m, "yoke.front.front-neck-width")
	assert.Equal(t, mm(110), neck.Length)
	require.True(t, neck.Main)
	assert.Equal(t, mm(48), find(t, m, "yoke.front.front-neck-depth").Length)
	base := find(t, m, "yoke.base-of-yoke")
	assert.Equal(t, 54+2*6*5+8+8*20, base.Count)
	assert.Equal(t, units.Int(int64(base.Count)).Times(5), base.Length)
}

// A dart of 8 short rows leaves the sides as they are: 30 rows below it and 20 above, of 4 mm.
func TestTheTwoHalvesOfASideCutByADartAreToldApart(t *testing.T) {
	m := Work(plain(&Piece{Name: "Front", Kind: KindFront, Sections: []Section{
		&CastOn{Stitches: n(80)},
		&Even{Amount: Amount{Rows: n(30)}},
		&ShortRows{Rows: n(8), Over: n(70), At: BothEdges, Step: n(4)},
		&Even{Amount: Amount{Rows: n(20)}},
		&BindOff{All: true},
	}}), 0).Pieces[0]
	assert.Equal(t, mm(120), find(t, m, "front.lower-side-length.left").Length)
	assert.Equal(t, mm(80), find(t, m, "front.upper-side-length.left").Length)
	assert.Equal(t, mm(32), find(t, m, "front.short-rows").Length)
	assert.Equal(t, mm(232), find(t, m, "front.length").Length)
}

// A dress is widest at its hem: 100 sts, 80 at the waist, 90 where its armholes begin, 70 above.
func TestTheUnderarmIsWhereTheArmholesBeginAndNotWhereItIsWidest(t *testing.T) {
	for _, at := range []Side{LeftEdge, RightEdge, BothEdges} {
		m := Work(plain(&Piece{Name: "Back", Kind: KindBack, Sections: []Section{
			&CastOn{Stitches: n(100)},
			&Shape{Shapings: []Shaping{{By: n(1), At: BothEdges, Every: n(4), Times: n(10)}}, Common: Common{Width: "waist"}},
			&Shape{Shapings: []Shaping{{Increase: true, By: n(1), At: BothEdges, Every: n(4), Times: n(5)}}},
			&Even{Amount: Amount{Rows: n(10)}},
			&BindOff{Stitches: n(10), At: at, Leave: true, Edge: "armhole"},
			&Even{Amount: Amount{Rows: n(40)}},
			&BindOff{All: true, Edge: "top edge"},
		}}), 0).Pieces[0]
		assert.Equal(t, mm(500), find(t, m, "back.width-at-hem").Length)
		assert.Equal(t, mm(400), find(t, m, "back.waist").Length)
		assert.Equal(t, mm(450), find(t, m, "back.width-at-underarm").Length)
		across := 400.0
		if at == BothEdges {
			across = 350
		}
		assert.Equal(t, mm(across), find(t, m, "back.cross-back").Length)
	}
}
