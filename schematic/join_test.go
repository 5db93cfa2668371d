package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/units"
)

// 64 sts of 5 mm are 320 mm around. Two halves are worked apart over 28 rows of 4 mm and
// joined into a round again: 10 rows more around 64 sts.
func TestTwoHalvesOfARoundAreJoinedIntoTheRoundAgain(t *testing.T) {
	g := Work(plain(&Piece{Name: "Tube", Round: true, Sections: []Section{
		&CastOn{Stitches: n(64)},
		&Even{Amount: Amount{Rows: n(20)}},
		&Divide{Parts: []Part{
			{Name: "Front", Stitches: n(32), Sections: []Section{&Even{Amount: Amount{Rows: n(28)}}}},
			{Name: "Back", Stitches: n(32), Sections: []Section{&Even{Amount: Amount{Rows: n(28)}}}},
		}},
		&JoinParts{Of: []JoinPart{{Part: "Front"}, {Part: "Back"}}, Round: true, Common: Common{To: n(64)}},
		&Even{Amount: Amount{Rows: n(10)}},
		&BindOff{All: true},
	}}), 0)
	require.Empty(t, g.Findings)
	m := g.Pieces[0]
	require.Len(t, m.Views, 3)
	for _, v := range m.Views {
		require.Len(t, v.Outline, 1, v.Name)
	}
	w := find(t, m, "tube.in-the-round.width-at-lower-edge")
	assert.True(t, w.Around)
	assert.Equal(t, mm(320), w.Length)
	assert.Equal(t, mm(40), find(t, m, "tube.in-the-round.length").Length)
	assert.Equal(t, mm(192), find(t, m, "tube.front.length").Length)
	assert.Equal(t, int64(64*58*20), m.Area.Floor()) // 64 sts × 58 rows × 5 mm × 4 mm
}

// A thumb's stitches are held and as many added over them: the one part that goes on
// is joined into the round again.
func TestTheOnePartThatGoesOnIsJoinedOverAddedStitches(t *testing.T) {
	g := Work(plain(&Piece{Name: "Hand", Round: true, Sections: []Section{
		&CastOn{Stitches: n(36)},
		&Even{Amount: Amount{Rows: n(12)}},
		&Divide{Parts: []Part{
			{Name: "thumb", Stitches: n(6), Hold: true},
			{Name: "Palm", Stitches: n(30), Sections: []Section{&Even{Amount: Amount{Rows: n(2)}}}},
		}},
		&JoinParts{Of: []JoinPart{{Part: "Palm"}, {Added: n(6), Edge: "thumb edge"}}, Round: true, Common: Common{To: n(36)}},
		&Even{Amount: Amount{Rows: n(20)}},
		&Gather{},
	}}, &Piece{Name: "Thumb", Round: true, Sections: []Section{
		&Held{From: []HeldPart{{Piece: "Hand", Part: "thumb", Stitches: n(6)}, {Added: n(8)}}},
		&Even{Amount: Amount{Rows: n(15)}},
		&Gather{},
	}}), 0)
	require.Empty(t, g.Findings)
	edges := g.Pieces[0].edgesNamed("thumb edge")
	require.Len(t, edges, 1)
	assert.Equal(t, 6, edges[0].Stitches)
	assert.Equal(t, mm(30), edges[0].Length)
}

func TestPartsThatEndAfterDifferentRowsAreToldWithTheirRows(t *testing.T) {
	half := func(name string, rows int) Part {
		return Part{Name: name, Stitches: n(32), Sections: []Section{&Even{Amount: Amount{Rows: n(rows)}}}}
	}
	g := Work(plain(&Piece{Name: "Tube", Round: true, Sections: []Section{
		&CastOn{Stitches: n(64)},
		&Even{Amount: Amount{Rows: n(20)}},
		&Divide{Parts: []Part{half("Front", 28), half("Back", 30)}},
		&JoinParts{Of: []JoinPart{{Part: "Front"}, {Part: "Back"}}, Round: true},
		&Even{Amount: Amount{Rows: n(10)}},
	}}), 0)
	require.Len(t, g.Findings, 1)
	assert.Equal(t, "arithmetic/join-rows", g.Findings[0].Kind)
	assert.Equal(t, "rows 50 and 48", g.Findings[0].Have)
}

func square(name string, make int) *Piece {
	q := &Piece{Name: name, Sections: []Section{
		&CastOn{Stitches: n(40), Edge: "lower edge"},
		&Even{Amount: Amount{Rows: n(50)}},
		&BindOff{All: true, Edge: "upper edge"},
	}}
	if make > 1 {
		q.Make = n(make)
	}
	return q
}

// A sleeve that is made twice goes into the armhole of one side once, and into those of both
// sides twice.
func TestOneOfTwoSleevesIsHeldAgainstTheArmholeOfOneSide(t *testing.T) {
	body := square("Body", 1) // each side is 50 rows, 200 mm; a sleeve's top is 40 sts, 200 mm
	for _, c := range []struct {
		name string
		into []string
		want int64 // mm of sleeve
	}{
		{"one side", []string{"Body left side"}, 200},
		{"both sides", []string{"Body side"}, 400},
		{"both sides by name", []string{"Body left side", "Body right side"}, 400},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plain(body, square("Sleeve", 2))
			p.Joins = []Join{{Sew: []string{"Sleeve upper edge"}, Into: c.into}}
			g := Work(p, 0)
			require.Len(t, g.Seams, 1)
			assert.Equal(t, c.want, g.Seams[0].SewLength.Floor())
			assert.True(t, g.Seams[0].SewLength.Eq(g.Seams[0].IntoLength))
		})
	}
}

// What fits better is not what is meant: the words say how many are counted, and the finding tells it.
func TestAllPiecesAreCountedUnlessTheWordsSayOneSide(t *testing.T) {
	right, left := square("Right front", 1), square("Left front", 1)
	for _, c := range []struct {
		into []string
		want int64 // mm of sleeve, of 200 each
		of   string
	}{
		{[]string{"Body lower edge"}, 400, "all 2 to make"},
		{[]string{"Body left side"}, 200, "one of the 2 to make"},
		{[]string{"Right front left side", "Body right side"}, 200, "one of the 2 to make"},
		{[]string{"Right front upper edge", "Left front upper edge"}, 400, "all 2 to make"},
		{[]string{"Right front upper edge", "Body lower edge"}, 400, "all 2 to make"},
	} {
		p := plain(square("Body", 1), right, left, square("Sleeve", 2))
		p.Joins = []Join{{Sew: []string{"Sleeve upper edge"}, Into: c.into}}
		g := Work(p, 0)
		require.Len(t, g.Seams, 1)
		assert.Equal(t, c.want, g.Seams[0].SewLength.Floor(), c.into)
		assert.Equal(t, c.of, g.Seams[0].SewOf, c.into)
		assert.Empty(t, g.Seams[0].IntoOf)
	}
}

// An edge in several stretches, such as a cap that ends in steps, is that of one sleeve all the same.
func TestTheEdgeOfOneSleeveMayComeInStretches(t *testing.T) {
	p := plain(square("Body", 1), square("Sleeve", 2))
	p.Joins = []Join{{Sew: []string{"Sleeve side"}, Into: []string{"Body left side"}}} // both sides of one sleeve, 200 mm each
	s := Work(p, 0).Seams[0]
	require.Len(t, s.Sew, 2)
	assert.Equal(t, "one of the 2 to make", s.SewOf)
	assert.Equal(t, int64(400), s.SewLength.Floor())
}

func TestAnEdgeSewnToItselfAtAFoldIsMarkedOnBothHalves(t *testing.T) {
	p := plain(square("Hood", 1))
	p.Joins = []Join{{Sew: []string{"Hood upper edge"}, Into: []string{"Hood upper edge"}, How: AtFold}}
	notches := Work(p, 0).Pieces[0].Views[0].Notches
	require.Len(t, notches, 2)
	assert.InDelta(t, -50, min(notches[0].At.X, notches[1].At.X), 1e-9)
	assert.InDelta(t, 50, max(notches[0].At.X, notches[1].At.X), 1e-9)
}

func TestTheEdgeThatWasMeantIsNamed(t *testing.T) {
	for ref, want := range map[string]string{
		"Body uper edge": `did you mean "Body upper edge"?`,
		"Body left sied": `did you mean "Body left side"?`,
	} {
		p := plain(square("Body", 1))
		p.Joins = []Join{{Sew: []string{ref}, Into: []string{"Body lower edge"}}}
		g := Work(p, 0)
		require.Len(t, g.Findings, 1)
		assert.Equal(t, want, g.Findings[0].Fix)
	}
}

// heel is a sock's heel: 28 of 56 stitches go on over 20 rows, the others are on hold.
func heel(join *JoinParts) *Garment {
	return Work(plain(&Piece{Name: "Sock", Round: true, Sections: []Section{
		&CastOn{Stitches: n(56)}, &Even{Amount: Amount{Rows: n(30)}},
		&Divide{Parts: []Part{
			{Name: "Heel", Stitches: n(28), LeftEdge: "flap edge", RightEdge: "flap edge", Sections: []Section{&Even{Amount: Amount{Rows: n(20)}}}},
			{Name: "instep", Stitches: n(28), Hold: true},
		}},
		join,
		&Even{Amount: Amount{Rows: n(10)}}, &BindOff{All: true},
	}}, &Piece{Name: "Patch", Sections: []Section{&Held{From: []HeldPart{{Piece: "Sock", Part: "instep"}}}, &Even{Amount: Amount{Rows: n(4)}}}}), 0)
}

// Heel 28, 10 picked up at each side, instep 28: 76 stitches of 5 mm are 380 mm around. The stitches are in work
// again, so that no other piece can begin from them.
func TestHeldStitchesAreJoinedIntoARoundAgain(t *testing.T) {
	g := heel(&JoinParts{Of: []JoinPart{{Part: "Heel"}, {Added: n(10), Edge: "picked up"}, {Part: "instep"}, {Added: n(10), Edge: "picked up"}}, Round: true, Name: "Foot"})
	require.Len(t, g.Findings, 1)
	assert.Equal(t, "arithmetic/held", g.Findings[0].Kind)
	m := g.Pieces[0]
	assert.Equal(t, mm(380), find(t, m, "sock.foot.width-at-lower-edge").Length)
	assert.Equal(t, mm(40), find(t, m, "sock.foot.length").Length)
	assert.Len(t, m.edgesNamed("picked up"), 2)
	assert.Equal(t, units.Int((56*30+28*20+76*10)*20), m.Area)
}

func TestAPartThatCantBeJoinedIsToldWithWhatMayBeMeant(t *testing.T) {
	for _, c := range []struct {
		of    []JoinPart
		round bool
		fix   string
	}{
		{[]JoinPart{{Part: "Heel"}, {Part: "instep"}}, false, "held stitches are taken up in a round: say `round: yes`, or begin a piece of its own with `start from`"},
		{[]JoinPart{{Part: "Heel"}, {Part: "insetp"}}, true, `did you mean "instep"?`},
		{[]JoinPart{{Part: "Heel"}, {Part: "instep"}, {Part: "instep"}}, true, "its held stitches are taken up already"},
		{[]JoinPart{{Part: "Heel"}, {Part: "Heel"}}, true, "let its sections end without binding all of it off"},
	} {
		for _, f := range heel(&JoinParts{Of: c.of, Round: c.round}).Findings {
			if f.Kind == "arithmetic/join" {
				assert.Equal(t, c.fix, f.Fix)
			}
		}
	}
}

// Of four places spread evenly in a round that lies flat, two lie in front, at a quarter and three quarters of its width; of two, one at
// either side. Along an edge worked flat all show; of two edges each has its half of them.
func TestPlacesAreSpreadEvenlyAlongAnEdge(t *testing.T) {
	spots := func(half bool, n, edges int) []float64 {
		m := &Made{Views: []View{{Half: half}}}
		var out []float64
		for _, s := range (&Join{Places: n}).Spots(m, &Edge{}, edges) {
			out = append(out, s.Float())
		}
		return out
	}
	assert.Equal(t, []float64{0.25, 0.75}, spots(true, 4, 1))
	assert.Equal(t, []float64{0, 1}, spots(true, 2, 1))
	assert.Equal(t, []float64{0.125, 0.375, 0.625, 0.875}, spots(false, 4, 1))
	assert.Equal(t, []float64{0.5}, spots(false, 1, 1))
	assert.Equal(t, []float64{0.5}, spots(false, 2, 2), "one of a pair on either side")
	assert.Equal(t, []float64{0.25, 0.75}, spots(false, 4, 2))
	assert.Len(t, spots(false, 3, 2), 3, "nobody says on which")
}

// A word that ends the name of a piece and begins that of its edge is said once; an edge of that very name comes first.
func TestAWordOfThePieceAndOfItsEdgeIsSaidOnce(t *testing.T) {
	m := &Made{Name: "Left front", Edges: []Edge{{Name: "front neck"}, {Name: "front hem"}, {Name: "hem"}}}
	named := func(text string) (out []string) {
		for _, e := range m.edgesNamed(text) {
			out = append(out, e.Name)
		}
		return out
	}
	assert.Equal(t, []string{"front neck"}, named("neck"))
	assert.Equal(t, []string{"front neck"}, named("front neck"))
	assert.Equal(t, []string{"hem"}, named("hem"))
	assert.Empty(t, named("cuff"))
}
