package place

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
)

func TestTitlesOfOneNameSayTheirPartWhereTheyAreNotAlike(t *testing.T) {
	titled := func(name, part, length string) *item {
		return &item{m: &schematic.Measure{Name: name, Part: part}, title: name + ": " + length}
	}
	v := &viewPlan{items: []*item{
		titled("depth of rib", "", "5 cm"), titled("depth of rib", "Right front", "3 cm"), // unlike
		titled("armhole depth", "Left front", "20 cm"), titled("armhole depth", "Right front", "20 cm"), // alike: told once for both
		titled("neck width", "Back", "18 cm"), titled("neck width", "Back", "16 cm"), // no part tells them apart
	}}
	v.tellApart()
	var titles []string
	for _, it := range v.items {
		titles = append(titles, it.title)
	}
	assert.Equal(t, []string{"depth of rib: 5 cm", "depth of rib (Right front): 3 cm", "armhole depth: 20 cm", "armhole depth: 20 cm",
		"neck width: 18 cm", "neck width: 16 cm"}, titles)
}
