package shaping

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/units"
)

// The widest sleeve that a count can say, and an armhole that no cap fits: the search ends.
func TestASearchForACapThatDoesNotExistEnds(t *testing.T) {
	for _, armhole := range []int64{20_000_000, 1_000_000, 150_000, 143_000} {
		for _, stitch := range []units.Num{units.Frac(100, 14), units.Frac(1, 20_000)} {
			_, err := Cap(CapIn{Upper: 20_000, First: 1, Armhole: units.Int(armhole), Cloth: Cloth{stitch, units.Int(10)}, Step: 1})
			assert.Error(t, err, "%d mm, %s mm a stitch", armhole, stitch)
		}
	}
}

func BenchmarkACapThatDoesNotExist(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Cap(CapIn{Upper: 20_000, First: 1, Armhole: units.Int(999_990), Cloth: Cloth{units.Frac(100, 14), units.Int(10)}, Step: 1})
	}
}
