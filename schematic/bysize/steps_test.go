package bysize

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/units"
)

// Steps in centimetres, by hand: 10 is two and a half times 4, and more than 3; 9.5 is not. Among 2, 3, 4 and 4 the
// middle one is 4 (the upper of two), three times that 12.
func TestAStepIsOddFromTwoAndAHalfTimesTheLargestOfItsNeighbours(t *testing.T) {
	for _, c := range []struct {
		name         string
		steps        []float64
		grain, floor float64
		odd          []int
	}{
		{"the last", []float64{4, 4, 4, 10}, 0, 1, []int{3}},
		{"the first", []float64{-10, 4, 4, 4}, 0, 1, []int{0}},
		{"not quite", []float64{4, 4, 4, 9.5}, 0, 1, nil},
		{"three times the middle one, not the largest", []float64{1, 1, 1, 4, 4}, 0, 1, []int{3, 4}},
		{"not at an end", []float64{4, 4, 10, 4}, 0, 1, nil},
		{"within rounding", []float64{2, 2, 2, 5}, 2, 1, nil},
		{"more than rounding", []float64{2, 2, 2, 5.5}, 2, 1, []int{3}},
		{"up to the floor", []float64{0, 0, 3}, 0, 1, nil},
		{"over the floor", []float64{0, 0, 3.5}, 0, 1, []int{2}},
		{"sizes in pairs", []float64{0, 4.3, 0, 6.4, 0, 0}, 0, 1, nil},
		{"sizes in pairs, to a row", []float64{0.3, 4.3, 0.3, 6.4, 0, 0}, 1, 1, nil},
		{"sizes in pairs, and a wrong digit", []float64{0, 4, 0, 24, 0, 4, 0}, 0, 1, []int{3}},
		{"all alike but one", []float64{0, 30, -30, 0}, 0, 1, []int{1, 2}},
		{"too few to tell", []float64{1, 30}, 0, 1, nil},
	} {
		num := func(f float64) units.Num { return units.Frac(int64(f*10), 10) }
		var steps, grain []units.Num
		for _, s := range c.steps {
			steps, grain = append(steps, num(s)), append(grain, num(c.grain))
		}
		var got []int
		for _, o := range OddSteps(steps, grain, num(c.floor)) {
			got = append(got, o.At)
		}
		assert.Equal(t, c.odd, got, c.name)
	}
}
