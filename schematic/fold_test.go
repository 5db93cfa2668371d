package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A round is folded in the middle of its underarms, wherever it begins: of 46, 6, 46 and 6 stitches the gaps are at 46 to 52 and at 98 to
// 104, so that it is folded at 49 and at 101.
func TestARoundIsFoldedMidwayBetweenItsParts(t *testing.T) {
	work, gap := func(n int) [2]int { return [2]int{n, 0} }, func(n int) [2]int { return [2]int{n, 1} }
	for _, c := range []struct {
		parts []([2]int)
		want  int // from the left, as the row is drawn
	}{
		{[][2]int{work(46), gap(6), work(46), gap(6)}, 49},
		{[][2]int{gap(6), work(46), gap(6), work(46)}, 3},
		{[][2]int{gap(3), work(46), gap(6), work(46), gap(3)}, 0},
		{[][2]int{work(44), gap(6), work(48), gap(6)}, 48}, // 47 and 101: the mean
		{[][2]int{work(20), gap(6), work(20), gap(6), work(46), gap(6)}, 49},
		{[][2]int{work(30), gap(6), work(68)}, 0}, // no two gaps
	} {
		var places []stretchOf
		n := 0
		for _, p := range c.parts {
			places = append(places, stretchOf{&Part{Leave: p[1] == 1}, n, n + p[0]})
			n += p[0]
		}
		by := foldIn(places, n)
		if c.want > 0 {
			assert.Equal(t, c.want, by%(n/2), "%v", c.parts)
		} else {
			assert.Equal(t, 0, by, "%v", c.parts)
		}
		if by == 0 {
			continue
		}
		for _, p := range turned(places, by, n) {
			if p.part.worked() {
				assert.False(t, p.from < n/2 && p.to > n/2, "%v is folded", c.parts)
			}
		}
	}
}
