package grade

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/units"
)

// By hand: 3 in every 4 are 0.75; a wish of 0.74 is within three in a hundred of it. Of 0.82 the
// simplest within two in a hundred is 5 in every 6 (0.833).
func TestARateOfPickingUpIsKeptOrIsTheSimplestNear(t *testing.T) {
	for _, k := range []struct {
		n, d             int64
		pick, of         int
		wantPick, wantOf int
	}{
		{74, 100, 3, 4, 3, 4}, {82, 100, 1, 1, 5, 6}, {2, 3, 3, 4, 2, 3}, {151, 100, 9, 5, 3, 2}, {1, 1, 2, 3, 1, 1}, {0, 1, 2, 3, 2, 3}, {1, 30, 1, 2, 1, 10},
	} {
		pick, of := nearRate(units.Frac(k.n, k.d), k.pick, k.of)
		assert.Equal(t, [2]int{k.wantPick, k.wantOf}, [2]int{pick, of}, "%d/%d", k.n, k.d)
	}
}

func TestARuleHoldsForTheCountsThatItAllows(t *testing.T) {
	r := Rule{Multiple: 4, Plus: 2, Least: 6}
	for n, want := range map[int]bool{2: false, 6: true, 8: false, 10: true} {
		assert.Equal(t, want, r.holds(n), n)
	}
	assert.True(t, Rule{Parity: Odd}.holds(7))
	assert.False(t, Rule{Parity: Odd}.holds(8))
}
