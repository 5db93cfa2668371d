package schematic

import (
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// plain is a one-size pattern at 20 stitches and 25 rows over 10 cm: a stitch is
// 5 mm wide, a row 4 mm high.
func plain(pieces ...*Piece) *Pattern {
	return &Pattern{Title: "t", Sizes: expr.Sizes{Names: []string{"M"}, Groups: []int{1}}, Steps: units.Usual,
		Gauges: []Gauge{
			{Name: "fabric", Stitches: units.Int(20), Rows: units.Int(25), Over: units.Int(100)},
			{Name: "rib", Stitches: units.Int(20), Rows: units.Int(20), Over: units.Int(100)},
		}, Pieces: pieces}
}

func n(v int) expr.Graded { return expr.Counts(v) }

func find(t *testing.T, m *Made, id string) Measure {
	t.Helper()
	var ids []string
	for _, s := range m.Measures {
		if s.ID == id {
			return s
		}
		ids = append(ids, s.ID)
	}
	require.Failf(t, "no such measurement", "%s among %v", id, ids)
	return Measure{}
}

func mm(v float64) units.Num { return units.Frac(int64(v*1000), 1000) }

// One back with set-in armholes and a stepped neck, worked through by hand:
// 100 sts are 500 mm; 50 rows even are 200 mm; 5 sts bound off at the beginning of the
// next 2 rows leave 90; 1 decreased each side every 2nd row 5 times leaves 80 (400 mm) over 10
// rows; 38 rows even make the armhole 2 + 10 + 38 = 50 rows = 200 mm; the neck takes 30, each
// shoulder is 25 sts (125 mm), 2 rows more with 2 neck sts bound off: 23 sts.
func TestABackWithArmholesAndNeckComesOutAsWorkedByHand(t *testing.T) {
	p := plain(&Piece{Name: "Back", Kind: KindBack, Sections: []Section{
		&CastOn{Stitches: n(100)},
		&Even{Amount: Amount{Rows: n(50)}},
		&BindOff{Stitches: n(5), At: BothEdges, Edge: "armhole"},
		&Shape{Shapings: []Shaping{{By: n(1), At: BothEdges, Every: n(2), Times: n(5)}}},
		&Even{Amount: Amount{Rows: n(36)}},
		&Divide{Parts: []Part{
			{Name: "Left shoulder", Stitches: n(25), Sections: []Section{
				&Even{Amount: Amount{Rows: n(2)}},
				&BindOff{All: true, Edge: "shoulder"},
			}},
			{Name: "neck", Stitches: n(30), Leave: true, Edge: "neck"},
			{Name: "Right shoulder", Stitches: n(25), MirrorOf: "Left shoulder"},
		}},
	}})
	g := Work(p, 0)
	require.Empty(t, g.Findings)
	m := g.Pieces[0]
	require.Len(t, m.Views, 1)
	assert.Equal(t, mm(500), find(t, m, "back.width-at-hem").Length)
	assert.Equal(t, mm(400), find(t, m, "back.cross-back").Length)
	assert.Equal(t, mm(400), find(t, m, "back.length").Length) // 100 rows
	assert.Equal(t, mm(200), find(t, m, "back.armhole-depth.left").Length)
	assert.Equal(t, mm(150), find(t, m, "back.neck-width").Length)
	assert.Equal(t, mm(8), find(t, m, "back.back-neck-depth").Length)
	assert.Equal(t, mm(125), find(t, m, "back.left-shoulder.shoulder.right").Length)
	assert.Equal(t, mm(200), find(t, m, "back.side-length.left").Length)

	// The same area by rows, by our shoelace, and by a general geometry library.
	poly := orb.Polygon{}
	for _, l := range m.Views[0].Outline {
		var r orb.Ring
		for _, q := range l {
			r = append(r, orb.Point{q.X, q.Y})
		}
		poly = append(poly, append(r, r[0]))
	}
	assert.InDelta(t, planar.Area(poly), m.OutlineArea(), 1e-6)
	assert.InDelta(t, planar.Area(poly), m.Area.Float(), 1e-6)
}

func TestWhereEdgesMeetIsCalledByTheTradesNames(t *testing.T) {
	p := plain(&Piece{Name: "Front", Kind: KindFront, LeftEdge: "front edge", Sections: []Section{
		&CastOn{Stitches: n(50)},
		&Even{Amount: Amount{Rows: n(50)}},
		&Shape{Shapings: []Shaping{
			{By: n(1), At: LeftEdge, Every: n(2), Times: n(10), Edge: "neck"},
			{By: n(1), At: RightEdge, Every: n(1), Times: n(5), Edge: "armhole"},
		}, Amount: Amount{Rows: n(40)}},
		&BindOff{All: true, Edge: "shoulder"},
	}})
	at := map[string]Point{}
	for _, k := range Work(p, 0).Pieces[0].Views[0].Points {
		at[k.Name] = k.At
	}
	assert.Equal(t, Point{125, 200}, at["underarm"])
	assert.Equal(t, Point{-125, 200}, at["front neck point"])
	assert.Equal(t, Point{100, 360}, at["shoulder point"])
	assert.Equal(t, Point{-75, 360}, at["neck point"])
}

func TestSleevesAddedAtBothEndsRunFromCuffToCuff(t *testing.T) {
	p := plain(&Piece{Name: "Back", Kind: KindBack, Sections: []Section{
		&CastOn{Stitches: n(80)}, &Even{Amount: Amount{Rows: n(50)}},
		&AddEdge{Stitches: n(20), At: BothEdges, Edge: "underarm", Common: Common{LeftEdge: "sleeve end", RightEdge: "sleeve end"}},
		&Even{Amount: Amount{Rows: n(40)}}, &BindOff{All: true, Edge: "shoulder"},
	}})
	m := Work(p, 0).Pieces[0]
	assert.Equal(t, mm(600), find(t, m, "back.cuff-to-cuff").Length)
	assert.Equal(t, mm(300), find(t, m, "back.centre-back-to-cuff").Length)
	assert.Equal(t, mm(100), find(t, m, "back.underarm.left").Length)
	assert.Equal(t, mm(160), find(t, m, "back.sleeve-opening.left").Length)
	assert.Equal(t, units.Int(80*50*20+120*40*20), m.Area)
}

func TestATrapezoidHasItsAreaFromTheTextbook(t *testing.T) {
	// ½ (a + b) h, any geometry text: 20 sts = 100 mm to 40 sts = 200 mm over 40 rows = 160 mm.
	p := plain(&Piece{Name: "Sleeve", Kind: KindSleeve, Sections: []Section{
		&CastOn{Stitches: n(20)},
		&Shape{Shapings: []Shaping{{Increase: true, By: n(1), At: BothEdges, Every: n(4), Times: n(10)}}},
	}})
	m := Work(p, 0).Pieces[0]
	assert.InDelta(t, (100.0+200)/2*160, m.OutlineArea(), 1e-9)
	assert.Equal(t, units.Int(24000), m.Area)
	assert.Len(t, m.Views[0].Outline[0], 4, "one regular shaping is one edge")
	assert.Equal(t, mm(100), find(t, m, "sleeve.cuff").Length)
	assert.Equal(t, mm(200), find(t, m, "sleeve.upper-arm").Length)
}

func TestABodyInOnePieceDividesAndItsPartsAddUp(t *testing.T) {
	p := plain(&Piece{Name: "Body", Kind: KindBody, LeftEdge: "front edge", RightEdge: "front edge", Sections: []Section{
		&Sideways{Stitches: n(10), Rows: n(100), Rib: true, Common: Common{Gauge: "rib"}},
		&PickUp{Pick: 1, Of: 1, Common: Common{Gauge: "fabric"}},
		&Even{Amount: Amount{Rows: n(50)}},
		&Divide{Parts: []Part{
			{Name: "Right front", Stitches: n(22), Sections: []Section{
				&Shape{Shapings: []Shaping{{By: n(1), At: RightEdge, Every: n(2), Times: n(10), Edge: "neck"}}, Amount: Amount{Rows: n(50)}},
				&BindOff{All: true, Edge: "shoulder"},
			}},
			{Name: "underarm", Stitches: n(4), Leave: true, Edge: "underarm"},
			{Name: "Back", Stitches: n(48), LeftEdge: "armhole", RightEdge: "armhole", Sections: []Section{
				&Even{Amount: Amount{Rows: n(50)}},
				&Divide{Parts: []Part{
					{Name: "r", Stitches: n(12), Leave: true, Edge: "shoulder"},
					{Name: "neck", Stitches: n(24), Leave: true, Edge: "neck"},
					{Name: "l", Stitches: n(12), Leave: true, Edge: "shoulder"},
				}},
			}},
			{Name: "underarm 2", Stitches: n(4), Leave: true, Edge: "underarm"},
			{Name: "Left front", Stitches: n(22), MirrorOf: "Right front"},
		}},
	}})
	g := Work(p, 0)
	require.Empty(t, g.Findings)
	m := g.Pieces[0]
	require.Len(t, m.Views, 1)
	require.Len(t, m.Views[0].Outline, 1)
	assert.Equal(t, mm(500), find(t, m, "body.width-at-hem").Length)
	assert.Equal(t, mm(450), find(t, m, "body.length").Length) // 10 rib sts + 100 rows
	assert.Equal(t, mm(50), find(t, m, "body.depth-of-rib").Length)
	assert.Equal(t, mm(120), find(t, m, "body.back.neck-width").Length)
	assert.Equal(t, mm(50), find(t, m, "body.right-front.front-neck-width.right").Length)
	assert.Equal(t, mm(60), find(t, m, "body.left-front.shoulder.left").Length)
	armholes := m.edgesNamed("armhole")
	require.Len(t, armholes, 2)
	assert.Equal(t, units.Int(200), armholes[0].Length)
	assert.Len(t, m.edgesNamed("Back neck"), 1)
	assert.Len(t, m.edgesNamed("left front neck"), 1)
	assert.InDelta(t, m.OutlineArea(), m.Area.Float(), 1e-6)
}

func TestASidewaysCuffTakesTwoInEachTallRow(t *testing.T) {
	// 19 rows, 10 of them tall, make 27 (common practice: s + 2t - 2); then
	// `2 in one, 1 in each of 2` over 27 makes 36.
	pick := &PickUp{Alternate: true, Short: 1, Tall: 2, Ends: 1, Stitches: n(27), Common: Common{Gauge: "fabric"}}
	p := plain(&Piece{Name: "Sleeve", Kind: KindSleeve, Sections: []Section{
		&Sideways{Stitches: n(10), Rows: n(19), Rib: true, Common: Common{Gauge: "rib"}},
		pick,
		&RepeatRow{Use: 3, Makes: 4, Common: Common{To: n(36)}},
	}})
	g := Work(p, 0)
	assert.Empty(t, g.Findings)
	assert.Equal(t, 36, g.Pieces[0].Live[""])
	pick.Stitches = n(28)
	assert.Len(t, Work(p, 0).Findings, 1)
}

func TestADivisionThatDoesNotAddUpIsTold(t *testing.T) {
	p := plain(&Piece{Name: "Body", Sections: []Section{
		&CastOn{Stitches: n(50)}, &Even{Amount: Amount{Rows: n(4)}},
		&Divide{Parts: []Part{{Name: "a", Stitches: n(20)}, {Name: "b", Stitches: n(28)}}},
	}})
	g := Work(p, 0)
	require.Len(t, g.Findings, 1)
	assert.Equal(t, "arithmetic/division", g.Findings[0].Kind)
	assert.Equal(t, "20 + 28 = 48", g.Findings[0].Have)
}

func TestAFlatCircleGrowsByTwoPi(t *testing.T) {
	// A circle grows each round by 2π × row height / stitch width (geometry). At a
	// gauge of 20 × 25 that is 5.03; 6 is flat enough to be drawn as a disc.
	p := plain(&Piece{Name: "Hat", Kind: KindHat, Round: true, From: FromCentre, Sections: []Section{
		&Ring{Stitches: n(6)},
		&Shape{Shapings: []Shaping{{Increase: true, By: n(6), At: Across, Every: n(1), Times: n(10)}}},
		&Even{Amount: Amount{Rows: n(20)}},
	}})
	g := Work(p, 0)
	require.Empty(t, g.Findings)
	m := g.Pieces[0]
	require.Len(t, m.Views, 2)
	assert.True(t, m.Views[1].Disc)
	assert.Equal(t, mm(80), find(t, m, "hat.crown.diameter").Length)
	assert.Equal(t, mm(330), find(t, m, "hat.sides.brim").Length) // 66 sts around
	p.Pieces[0].Sections = append(p.Pieces[0].Sections, &Shape{Shapings: []Shaping{{Increase: true, By: n(6), At: Across, Every: n(2), Times: n(4)}}})
	m = Work(p, 0).Pieces[0]
	assert.Equal(t, mm(450), find(t, m, "hat.sides.brim").Length)
	assert.Equal(t, mm(330), find(t, m, "hat.sides.width-around").Length, "of the head")
}

func TestARowJoinedIntoARoundLiesFlatAtHalfItsWayRound(t *testing.T) {
	p := plain(&Piece{Name: "Cowl", Sections: []Section{
		&CastOn{Stitches: n(90)}, &Even{Amount: Amount{Rows: n(5)}},
		&JoinParts{Of: []JoinPart{{Added: n(10)}}, Round: true, Common: Common{To: n(100)}},
		&Even{Amount: Amount{Rows: n(25)}},
	}})
	g := Work(p, 0)
	require.Empty(t, g.Findings)
	m := g.Pieces[0]
	require.Len(t, m.Views, 2)
	assert.Equal(t, mm(450), find(t, m, "cowl.worked-flat.width-at-lower-edge").Length)
	around := find(t, m, "cowl.in-the-round.width-at-lower-edge")
	assert.True(t, around.Around)
	assert.Equal(t, mm(500), around.Length)
	assert.InDelta(t, 250, around.B.X-around.A.X, 1e-9)
	// 5 rows of 90 and 25 rounds of 100 stitches, each 5 × 4 mm.
	assert.Equal(t, units.Int((5*90+25*100)*20), m.Area)
}

// In crochet a row that picks up, or is worked into a ring, is as high as any other; in
// knitting the picked-up loops are the edge of the fabric (common practice).
func TestAPickedUpRowHasAHeightInCrochetAlone(t *testing.T) {
	for _, c := range []struct {
		stitch string
		rows   int64
	}{{"sc", 1}, {"hdc in back loop only", 1}, {"stockinette stitch", 0}, {"", 0}} {
		p := plain(&Piece{Name: "Sleeve", Kind: KindSleeve, Sections: []Section{
			&Sideways{Stitches: n(10), Rows: n(20)}, &PickUp{Pick: 1, Of: 1}, &Even{Amount: Amount{Rows: n(25)}},
		}}, &Piece{Name: "Mat", Round: true, From: FromCentre, Sections: []Section{
			&Ring{Stitches: n(6)}, &Shape{Shapings: []Shaping{{Increase: true, By: n(5), At: Across, Every: n(1), Times: n(9)}}},
		}})
		p.Gauges[0].Stitch = c.stitch
		g := Work(p, 0)
		require.Empty(t, g.Findings)
		// A band of 10 stitches of 5 mm, then rows of 4 mm.
		assert.Equal(t, units.Int(50+4*(25+c.rows)), find(t, g.Pieces[0], "sleeve.sleeve-length").Length, c.stitch)
		assert.Equal(t, units.Int(2*4*(9+c.rows)), find(t, g.Pieces[1], "mat.diameter").Length, c.stitch)
	}
}

func TestRoundsThatGrowTooFastFrill(t *testing.T) {
	// A flat circle grows each round by 2π × 4 mm ÷ 5 mm = 5.03 stitches (geometry).
	for by, frills := range map[int]bool{5: false, 6: false, 8: true} {
		p := plain(&Piece{Name: "Mat", Round: true, From: FromCentre, Sections: []Section{
			&Ring{Stitches: n(6)}, &Shape{Shapings: []Shaping{{Increase: true, By: n(by), At: Across, Every: n(1), Times: n(9)}}},
		}})
		f := Work(p, 0).Findings
		require.Equal(t, frills, len(f) == 1, by)
		if frills {
			assert.Equal(t, "arithmetic/flat", f[0].Kind)
		}
	}
}

func TestMotifsShareTheirJoinings(t *testing.T) {
	p := plain(&Piece{Name: "Panel", Motifs: &Motifs{Shape: Square, Across: expr.Of(units.Int(100)), Joining: expr.Of(units.Int(4)), Filled: []string{"x.", "xx"}}})
	m := Work(p, 0).Pieces[0]
	require.Len(t, m.Views[0].Outline, 1)
	assert.Len(t, m.Views[0].Outline[0], 8, "edges in one line are separate motifs' edges until merged")
	assert.Equal(t, units.Int(204), find(t, m, "panel.width").Length)
}

// A pocket that the middle size has no rows for is left out of it, with a note; what it mirrors tells it.
func TestAPieceWithoutRowsIsLeftOutOfItsSize(t *testing.T) {
	p := plain(
		&Piece{Name: "Back", Sections: []Section{&CastOn{Stitches: expr.Counts(40, 44, 48)}, &Even{Amount: Amount{Rows: expr.Counts(20, 20, 20)}}, &BindOff{All: true}}},
		&Piece{Name: "Pocket", Pos: at(7), Sections: []Section{&CastOn{Stitches: expr.Counts(10, 10, 10)}, &Even{Amount: Amount{Rows: expr.Counts(12, 0, 14)}}, &BindOff{All: true}}},
		&Piece{Name: "Other pocket", MirrorOf: "Pocket", Pos: at(9)},
	)
	p.Sizes = expr.Sizes{Names: []string{"S", "M", "L"}, Groups: []int{1, 2}}
	gs := []*Garment{Work(p, 0), Work(p, 1), Work(p, 2)}
	for i, want := range [][]string{nil, {"Pocket", "Other pocket"}, nil} {
		assert.Equal(t, want, gs[i].Without)
		assert.Len(t, gs[i].Pieces, 3-len(want))
	}
	assert.Empty(t, gs[0].Findings)
	assert.Equal(t, []string{"7 arithmetic/no-rows"}, toldAt(gs[1]))
	assert.Equal(t, finding.Note, gs[1].Findings[0].Severity)
	assert.Empty(t, gs[2].Findings)
}

// A cast on from which another piece begins is left out of the drawing and needs no note.
func TestAPieceThatIsButABeginningIsLeftOutWithoutANote(t *testing.T) {
	g := Work(plain(&Piece{Name: "Base", Sections: []Section{&CastOn{Stitches: n(20)}}},
		&Piece{Name: "Frill", Sections: []Section{&Held{From: []HeldPart{{Piece: "Base", Stitches: n(20)}}}, &Even{Amount: Amount{Rows: n(4)}}}}), 0)
	assert.Empty(t, g.Findings)
	assert.Equal(t, []string{"Base"}, g.Without)
	require.Len(t, g.Pieces, 1)
	assert.Equal(t, mm(100), find(t, g.Pieces[0], "frill.width-at-lower-edge").Length)
}
