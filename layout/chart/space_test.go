package chart

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Least squares under least gaps: the gaps hold, and no small step that keeps them
// makes the sum smaller (the conditions of Karush, Kuhn and Tucker for a convex problem).
func TestSpreadMovesPlacesAsLittleAsItCan(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(rt, "n")
		f := rapid.Float64Range(-50, 50)
		want := rapid.SliceOfN(f, n, n).Draw(rt, "wishes")
		w := rapid.SliceOfN(rapid.Float64Range(0.1, 5), n, n).Draw(rt, "weights")
		gap := rapid.SliceOfN(rapid.Float64Range(0, 6), n, n).Draw(rt, "gaps")
		x := make([]float64, n)
		(&solver{}).spread(x, want, w, gap, math.Inf(-1), math.Inf(1))
		cost := func(x []float64) float64 {
			s := 0.0
			for i := range x {
				s += w[i] * (x[i] - want[i]) * (x[i] - want[i])
			}
			return s
		}
		for i := 1; i < n; i++ {
			require.GreaterOrEqual(rt, x[i]-x[i-1], gap[i]-1e-9)
		}
		best := cost(x)
		for from := range n {
			for to := from + 1; to <= n; to++ {
				for _, d := range []float64{-1e-3, 1e-3} {
					y := append([]float64(nil), x...)
					for i := from; i < to; i++ {
						y[i] += d
					}
					if from > 0 && y[from]-y[from-1] < gap[from] || to < n && y[to]-y[to-1] < gap[to] {
						continue
					}
					require.GreaterOrEqual(rt, cost(y), best-1e-9)
				}
			}
		}
	})
}
