package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAMeasurementKeepsItsIDThoughItsEdgeChangesSides(t *testing.T) {
	sizes := []*Made{
		{Measures: []Measure{{ID: "front.shoulder.right"}, {ID: "front.neck.left"}, {ID: "front.length"}}},
		{Measures: []Measure{{ID: "front.shoulder"}, {ID: "front.neck.left"}, {ID: "front.neck.right"}}},
		{Measures: []Measure{{ID: "front.shoulder.left"}, {ID: "front.neck.right"}}},
	}
	oneSide(sizes)
	ids := func(m *Made) (out []string) {
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
	was := &Garment{Pieces: []*Made{{ID: "front", Measures: []Measure{{ID: "front.shoulder.right"}}}}}
	now := &Garment{Pieces: []*Made{{ID: "front", Measures: []Measure{{ID: "front.shoulder.left"}}}, {ID: "back"}}}
	SameSides(was, now)
	assert.Equal(t, "front.shoulder.right", now.Pieces[0].Measures[0].ID)
}

func TestANameSaysTheSameOfTheOtherSide(t *testing.T) {
	for name, other := range map[string]string{"Left front": "Right front", "Right front left neck": "Left front right neck", "Body left armhole": "Body right armhole", "Back": "Back", "leftover": "leftover"} {
		assert.Equal(t, other, OtherSide(name))
		assert.Equal(t, name, OtherSide(other))
	}
}
