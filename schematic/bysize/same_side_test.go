package bysize

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
)

func TestAMeasurementKeepsItsIDThoughItsEdgeChangesSides(t *testing.T) {
	sizes := []*schematic.Made{
		{Measures: []schematic.Measure{{ID: "front.shoulder.right"}, {ID: "front.neck.left"}, {ID: "front.length"}}},
		{Measures: []schematic.Measure{{ID: "front.shoulder"}, {ID: "front.neck.left"}, {ID: "front.neck.right"}}},
		{Measures: []schematic.Measure{{ID: "front.shoulder.left"}, {ID: "front.neck.right"}}},
	}
	oneSide(sizes)
	ids := func(m *schematic.Made) (out []string) {
		for _, s := range m.Measures {
			out = append(out, s.ID)
		}
		return out
	}
	assert.Equal(t, []string{"front.shoulder.right", "front.neck.left", "front.length"}, ids(sizes[0]))
	assert.Equal(t, []string{"front.shoulder.right", "front.neck.left", "front.neck.right"}, ids(sizes[1]), "two of a name keep their sides")
	assert.Equal(t, []string{"front.shoulder.right", "front.neck.right"}, ids(sizes[2]))
}

func TestAGarmentHasTheIDsOfOneThatIsLikeIt(t *testing.T) {
	was := &schematic.Garment{Pieces: []*schematic.Made{{ID: "front", Measures: []schematic.Measure{{ID: "front.shoulder.right"}}}}}
	now := &schematic.Garment{Pieces: []*schematic.Made{{ID: "front", Measures: []schematic.Measure{{ID: "front.shoulder.left"}}}, {ID: "back"}}}
	SameSides(was, now)
	assert.Equal(t, "front.shoulder.right", now.Pieces[0].Measures[0].ID)
}
