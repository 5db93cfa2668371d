package table

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

func TestPanelsThatAreAlikeAreToldOnceAndEachOfThemApartFromTheWholeRow(t *testing.T) {
	panels := &schematic.Panels{}
	for i := range 6 {
		panels.Of = append(panels.Of, schematic.Panel{Name: fmt.Sprintf("Gore %d", i+1), Stitches: expr.Counts(30)})
	}
	gs := bysize.WorkAll(&schematic.Pattern{Title: "Skirt", Sizes: expr.Sizes{Names: []string{"M"}, Groups: []int{1}}, Steps: units.Usual,
		Gauges: []schematic.Gauge{{Name: "fabric", Stitches: units.Int(20), Rows: units.Int(25), Over: units.Int(100)}},
		Pieces: []*schematic.Piece{{Name: "Skirt", Kind: schematic.KindBody, Round: true, Sections: []schematic.Section{
			&schematic.CastOn{Stitches: expr.Counts(180)}, panels,
			&schematic.Shape{Shapings: []schematic.Shaping{{By: expr.Counts(1), At: schematic.Lines, Every: expr.Counts(4), Times: expr.Counts(5)}}},
			&schematic.BindOff{All: true},
		}}}})
	var names []string
	for _, r := range Of(gs).Groups[0].Rows {
		names = append(names, r.Name+" "+r.Cells[0].Text(units.CM, units.Usual))
	}
	assert.Equal(t, []string{"Width at lower edge (each of 6) 15", "Width at upper edge (each of 6) 10", "Length (each of 6) 8",
		"Width at hem, around 90", "Width at top, around 60"}, names)
}
