package chart

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/stitch"
)

// A circle of circumference 2πr: all heads of a round stand on one circle, evenly, and
// it is as long as its stitches are wide.
func TestAFlatCircleIsRound(t *testing.T) {
	for _, n := range []int{6, 12} {
		k := stitch.ByID(map[int]string{6: "sc", 12: "dc"}[n])
		p, _ := laid(flatCircle(k, n, 8))
		require.Equal(t, circle, p.form)
		for _, l := range p.lines {
			lo, hi := math.Inf(1), 0.0
			for i, m := range l.nodes {
				r := long(p.point(m, m.v))
				lo, hi = min(lo, r), max(hi, r)
				if i > 0 && l.n > 0 {
					step := p.angle(m) - p.angle(l.nodes[i-1])
					even := (around - l.wedge) / float64(len(l.nodes))
					assert.InDelta(t, even, step, 0.35*even, "round %d, stitch %d", l.n+1, i)
				}
			}
			assert.Less(t, hi-lo, roundDip+0.01, "round %d", l.n+1)
			assert.GreaterOrEqual(t, around*hi+1e-6, p.need(l))
			assert.InDelta(t, float64(l.n+1)*(k.Height*tall+clear)+p.ringOf(), hi, 0.1*hi+1, "a round is as tall as its stitches")
		}
	}
}

func TestRoundsOfATextStandInACircle(t *testing.T) {
	p, f := laid(text(t, "rows/circle-dc-12.txt"))
	require.Equal(t, circle, p.form)
	assert.Empty(t, touching(p, f, 0.02))
}
