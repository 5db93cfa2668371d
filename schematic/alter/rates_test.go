package alter

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// By hand: 3 in every 4 along 40 rows are 30, within a stitch of 30.8. Along 60 rows they are 45, four short of 49: of
// the rates that repeat within 10 rows, 4 in every 5 (48) is the simplest of those that come nearest. 9 in every 5 along 35 are 63.
func TestARateOfPickingUpIsKeptOrIsTheSimplestThatGivesTheStitches(t *testing.T) {
	for _, k := range []struct {
		wish             units.Num
		n, pick, of      int
		wantPick, wantOf int
	}{
		{units.Frac(308, 10), 40, 3, 4, 3, 4}, {units.Int(49), 60, 3, 4, 4, 5}, {units.Int(63), 35, 2, 1, 9, 5},
		{units.Int(60), 30, 1, 1, 2, 1}, {units.Int(0), 30, 2, 3, 2, 3}, {units.Int(5), 0, 2, 3, 2, 3},
	} {
		pick, of := rateFor(k.wish, schematic.Along{Rows: k.n}, k.pick, k.of, true)
		assert.Equal(t, [2]int{k.wantPick, k.wantOf}, [2]int{pick, of}, "%v of %d", k.wish, k.n)
	}
}
