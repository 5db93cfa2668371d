package place

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// A pocket that size M does not have still stands on the sheet of all sizes drawn in M, in the
// shape of another size, with a dash for M; on the sheet of M alone it does not.
func TestAPieceThatOnlyOtherSizesHaveStandsOnTheSheetOfAllSizes(t *testing.T) {
	square := func(name string, make expr.Graded) *schematic.Piece {
		return &schematic.Piece{Name: name, Make: make, Sections: []schematic.Section{
			&schematic.CastOn{Stitches: expr.Counts(20, 20, 20)},
			&schematic.Even{Amount: schematic.Amount{Rows: expr.Counts(20, 20, 20)}},
			&schematic.BindOff{All: true},
		}}
	}
	none := expr.Counts(1, 0, 1)
	none.Has[1] = false
	p := &schematic.Pattern{Title: "t", Steps: units.Usual, Sizes: expr.Sizes{Names: []string{"S", "M", "L"}, Groups: []int{3}},
		Gauges: []schematic.Gauge{{Name: "fabric", Stitches: units.Int(20), Rows: units.Int(20), Over: units.Int(100)}},
		Pieces: []*schematic.Piece{square("Pocket", none), square("Back", expr.Graded{})}}
	gs := bysize.WorkAll(p)
	require.Len(t, gs[1].Pieces, 1)
	titles := func(l Labels) []string {
		plan, err := newPlan(gs, Options{Labels: l, Size: 1, Paper: A4})
		require.NoError(t, err)
		var all []string
		for _, v := range plan.views {
			all = append(all, v.title)
			if v.title == "Pocket" {
				assert.Equal(t, []string{"drawn in size S"}, v.info)
				assert.Equal(t, []bool{true, false, true}, []bool{v.items[0].value[0] != nil, v.items[0].value[1] != nil, v.items[0].value[2] != nil})
			}
		}
		return all
	}
	assert.Equal(t, []string{"Pocket", "Back"}, titles(AllSizes))
	assert.Equal(t, []string{"Pocket", "Back"}, titles(Letters))
	assert.Equal(t, []string{"Back"}, titles(OneSize))
	assert.Equal(t, []string{"Back"}, titles(Blank))
}
