package check

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// A pullover with two neck edges and a cuff, in mm, against a head of 533 mm (21
// in, the least of women's heads in the yarn standard) and a hand of 178 mm (7 in). A
// neck of 440 mm gives 550 mm stretched, one of 420 mm gives 525 mm.
func worn(back, front, cuff int64, opens bool) (*schematic.Pattern, *schematic.Garment) {
	p := &schematic.Pattern{Sizes: expr.Sizes{Names: []string{"M"}, Groups: []int{1}}, Bodies: []schematic.Written{
		{Name: "Head", Low: expr.Of(units.Of(units.Int(21), units.Inch))}, {Name: "hand", Low: expr.Of(units.Of(units.Int(7), units.Inch))},
	}}
	g := &schematic.Garment{Pattern: p, Size: "M", Pieces: []*schematic.Made{
		{Name: "Back", Make: 1, Edges: []schematic.Edge{{Name: "back neck", Length: units.Int(back)}}},
		{Name: "Front", Make: 1, Edges: []schematic.Edge{{Name: "neck", Length: units.Int(front)}}},
		{Name: "Sleeve", Kind: schematic.KindSleeve, Make: 2, Measures: []schematic.Measure{{Name: "cuff", Length: units.Int(cuff)}}},
		{Name: "Neckband", Kind: schematic.KindBand, Make: 1, Edges: []schematic.Edge{{Name: "neck", Length: units.Int(900)}}},
	}}
	if opens {
		g.Pieces[1].Edges = append(g.Pieces[1].Edges, schematic.Edge{Name: "front edge", Length: units.Int(500)})
	}
	return p, g
}

func TestTheNeckGoesOverTheHeadAndTheCuffOverTheHand(t *testing.T) {
	for _, c := range []struct {
		name              string
		back, front, cuff int64
		opens             bool
		want              []string
	}{
		{"wide enough, stretched", 180, 260, 150, false, nil},
		{"a narrow neck", 170, 250, 150, false, []string{"the neck opening does not go over the head, even stretched by a quarter"}},
		{"a narrow neck that opens", 170, 250, 150, true, nil},
		{"a narrow cuff", 180, 260, 140, false, []string{"the cuff does not go over the hand, even stretched by a quarter"}},
		{"no neck edge", 0, 0, 150, false, nil},
	} {
		p, g := worn(c.back, c.front, c.cuff, c.opens)
		var got []string
		for _, f := range wear(p, g) {
			got = append(got, f.Message)
			assert.NotEmpty(t, f.Have)
			assert.NotEmpty(t, f.Want)
		}
		assert.Equal(t, c.want, got, c.name)
	}
	p, g := worn(100, 100, 100, false)
	p.Bodies = nil
	assert.Empty(t, wear(p, g), "no body, nothing to hold it against")
}
