package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/units"
)

// tubeWith is a tube of 64 stitches of 5 mm, in rounds of 4 mm: 20 rounds, the division over rows rows,
// joined again over added stitches, and 10 rounds more.
func tubeWith(rows, added int, parts ...Part) *Garment {
	join := &JoinParts{Round: true}
	for i := range parts {
		p := &parts[i]
		if p.Leave || p.Hold {
			join.Of = append(join.Of, JoinPart{Added: n(added), Edge: "upper slit"})
			continue
		}
		if rows > 0 {
			p.Sections = []Section{&Even{Amount: Amount{Rows: n(rows)}}}
		}
		join.Of = append(join.Of, JoinPart{Part: p.Name})
	}
	return Work(plain(&Piece{Name: "Mitten", Round: true, Sections: []Section{
		&CastOn{Stitches: n(64)}, &Even{Amount: Amount{Rows: n(20)}}, &Divide{Parts: parts}, join,
		&Even{Amount: Amount{Rows: n(10)}}, &BindOff{All: true}}}), 0)
}

// The tube lies flat 160 mm wide, 31 rounds of 4 mm long. A right-side round meets the parts from the right: the
// slit of 10 stitches, 50 mm, after 6 (30 mm) lies from 0 to 50 mm left of the middle of it; and its row has 54
// stitches.
func TestASlitIsDrawnOnTheTubeThatItIsIn(t *testing.T) {
	g := tubeWith(1, 10, Part{Name: "Palm", Stitches: n(6)}, Part{Name: "thumb", Stitches: n(10), Leave: true, Edge: "slit"}, Part{Name: "Back", Stitches: n(48)})
	require.Empty(t, g.Findings)
	m := g.Pieces[0]
	require.Len(t, m.Views, 1)
	assert.Len(t, m.Views[0].Outline, 1)
	assert.Equal(t, units.Int((64*30+54)*20), m.Area)
	require.Len(t, m.Views[0].Lines, 1)
	l := m.Views[0].Lines[0]
	assert.Equal(t, LineSlit, l.Kind)
	assert.Equal(t, "thumb", l.Name)
	assert.Equal(t, []Point{{0, 82}, {50, 82}}, []Point{l.A, l.B})
	assert.Equal(t, mm(50), find(t, m, "mitten.width-of-thumb").Length)
	assert.Equal(t, mm(82), find(t, m, "mitten.length-to-thumb").Length)
	assert.Equal(t, mm(124), find(t, m, "mitten.length").Length)
	for _, name := range []string{"slit", "upper slit"} {
		e := m.edgesNamed(name)
		require.Len(t, e, 1, name)
		assert.Equal(t, 10, e[0].Stitches)
		assert.Equal(t, mm(50), e[0].Length)
	}
	var counts []int
	for _, s := range m.Steps {
		counts = append(counts, s.After)
	}
	assert.Equal(t, []int{64, 64, 6, 48, 0, 64, 64, 0}, counts, "the parts are worked and told as ever")
}

func TestWhatIsNoSlitIsDrawnInItsParts(t *testing.T) {
	hand, thumb := Part{Name: "Hand", Stitches: n(54)}, Part{Name: "thumb", Stitches: n(10), Hold: true}
	for _, c := range []struct {
		name        string
		rows, added int
		views       int
	}{
		{"in the same round", 0, 10, 1},
		{"two rounds later", 2, 10, 1},
		{"an opening of three rows", 3, 10, 3},
		{"fewer are added, as above a gusset", 1, 8, 1},
		{"more are added", 1, 12, 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := tubeWith(c.rows, c.added, thumb, hand)
			require.Empty(t, g.Findings)
			assert.Len(t, g.Pieces[0].Views, c.views)
			assert.Equal(t, 10, g.Pieces[0].Live["thumb"], "held stitches stay live for a thumb")
		})
	}
}

// A gusset of 4 times 4 stitches more in 4 rounds, of which 16 are left for the thumb and 2 added above: 64, 80, and then 66 stitches of 5 mm, of which half lie flat.
func TestAboveAGussetTheHandIsAsWideAsItIsWorked(t *testing.T) {
	g := Work(plain(&Piece{Name: "Mitten", Kind: KindMitten, Round: true, Sections: []Section{
		&CastOn{Stitches: n(64)}, &Even{Amount: Amount{Rows: n(10)}}, &Shape{Shapings: []Shaping{{By: n(4), At: Across, Increase: true, Every: n(1), Times: n(4)}}},
		&Divide{Parts: []Part{{Name: "thumb", Stitches: n(16), Hold: true}, {Name: "Hand", Stitches: n(64), Sections: []Section{&Even{Amount: Amount{Rows: n(1)}}}}}},
		&JoinParts{Round: true, Of: []JoinPart{{Part: "Hand"}, {Added: n(2)}}}, &Even{Amount: Amount{Rows: n(10)}}, &BindOff{All: true}}}), 0)
	require.Empty(t, g.Findings)
	m := g.Pieces[0]
	require.Len(t, m.Views, 1)
	assert.Contains(t, m.Views[0].Outline[0], Point{100, 60})
	assert.Contains(t, m.Views[0].Outline[0], Point{82.5, 60})
	assert.Equal(t, mm(400), find(t, m, "mitten.hand-with-thumb").Length)
}
