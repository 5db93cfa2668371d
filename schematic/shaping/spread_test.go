package shaping

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// bjorklund is Bjorklund's algorithm (2003, as Toussaint describes it in 'The
// Euclidean algorithm generates traditional musical rhythms', 2005), written
// from its description: sequences of ones and zeros, the remainder distributed again
// and again. It gives the gaps between ones round a circle of m.
func bjorklund(n, m int) []int {
	var heads, tails [][]int
	for range n {
		heads = append(heads, []int{1})
	}
	for range m - n {
		tails = append(tails, []int{0})
	}
	for len(tails) > 1 {
		k := min(len(heads), len(tails))
		var joined [][]int
		for i := range k {
			joined = append(joined, append(slices.Clone(heads[i]), tails[i]...))
		}
		if len(heads) > k {
			tails = heads[k:]
		} else {
			tails = tails[k:]
		}
		heads = joined
	}
	var flat []int
	for _, s := range append(heads, tails...) {
		flat = append(flat, s...)
	}
	var gaps []int
	for i, v := range flat {
		if v == 1 {
			gaps = append(gaps, 0)
		}
		if len(gaps) == 0 {
			panic(i)
		}
		gaps[len(gaps)-1]++
	}
	return gaps
}

// bresenham is Bresenham's line algorithm (1965) with its integer error term:
// the x at which the line steps up, for a line of m by n.
func bresenham(n, m int) []int {
	var gaps []int
	err, run := 0, 0
	for range m {
		run++
		err += n
		if err >= m {
			err -= m
			gaps = append(gaps, run)
			run = 0
		}
	}
	return gaps
}

func rotates(a, b []int) bool {
	if len(a) != len(b) {
		return false
	}
	twice := append(slices.Clone(b), b...)
	for i := range b {
		if slices.Equal(a, twice[i:i+len(a)]) {
			return true
		}
	}
	return false
}

func TestSpreadingAgreesWithBresenhamAndBjorklundUpToRotation(t *testing.T) {
	for m := 1; m <= 60; m++ {
		for n := 1; n <= m; n++ {
			gaps, err := Evenly(n, m, InRound)
			require.NoError(t, err)
			require.Zero(t, gaps[n])
			require.True(t, rotates(gaps[:n], bresenham(n, m)), "Bresenham %d over %d: %v", n, m, gaps)
			require.True(t, rotates(gaps[:n], bjorklund(n, m)), "Bjorklund %d over %d: %v against %v", n, m, gaps, bjorklund(n, m))
		}
	}
}

func TestAFlatRowEndsAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 40).Draw(t, "n")
		m := rapid.IntRange(0, 400).Draw(t, "m")
		ends := ends(rapid.IntRange(0, 2).Draw(t, "ends"))
		gaps, err := Evenly(n, m, ends)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0
		for _, g := range gaps {
			sum += g
		}
		if sum != m || len(gaps) != n+1 {
			t.Fatalf("%v is not %d", gaps, m)
		}
		inner := gaps[:n]
		switch ends {
		case HalfGaps:
			inner = gaps[1:n]
			if d := gaps[0] - gaps[n]; d < 0 || d > 1 {
				t.Fatalf("ends %d and %d", gaps[0], gaps[n])
			}
			inner = append(slices.Clone(inner), gaps[0]+gaps[n])
		case FullGaps:
			inner = gaps
		}
		if slices.Max(inner)-slices.Min(inner) > 1 {
			t.Fatalf("uneven: %v", gaps)
		}
	})
}

// Worked by hand: 8 increases over 60 stitches are gaps of 7½, so 7 and 8 by turns,
// one of them cut into 4 and 3 for the two ends: 4 + (8 + 7) × 3 + 8 + 3 = 60.
func TestASpreadRowIsSaidInWords(t *testing.T) {
	gaps, err := Evenly(8, 60, HalfGaps)
	require.NoError(t, err)
	assert.Equal(t, "work 4, (increase, work 8, increase, work 7) 3 times, increase, work 8, increase, work 3", along(gaps, "increase"))
	assert.Equal(t, "(increase, work 5) 6 times", along([]int{0, 5, 5, 5, 5, 5, 5}, "increase"))
	assert.Equal(t, "work 3, (decrease, work 6) 3 times, decrease, work 3", along([]int{3, 6, 6, 6, 3}, "decrease"))
	assert.Equal(t, "increase", along([]int{0, 0}, "increase"))
}

// The trade's own example of a compound spacing: 11 increases over 52 rows on
// right-side rows alone are four times every sixth row and seven times every
// fourth, 4 × 6 + 7 × 4 = 52.
func TestElevenIncreasesOverFiftyTwoRows(t *testing.T) {
	p, err := Spread(11, 52, 2, SlowFirst)
	require.NoError(t, err)
	assert.Equal(t, "every 6th row 4 times, then every 4th row 7 times", p.String())
	assert.Equal(t, 52, p.rows())
	p, err = Spread(11, 52, 1, FastFirst)
	require.NoError(t, err)
	assert.Equal(t, "every 4th row 3 times, then every 5th row 8 times", p.String())
	p, err = Spread(1, 21, 1, SlowFirst)
	require.NoError(t, err)
	assert.Equal(t, "every 21st row once", p.String())
	_, err = Spread(27, 52, 2, SlowFirst)
	assert.ErrorContains(t, err, "they need 54 rows")
}

func TestASpreadOverRowsIsAsEvenAsRowsAllow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 80).Draw(t, "n")
		rows := rapid.IntRange(0, 300).Draw(t, "rows")
		step := rapid.IntRange(1, 2).Draw(t, "step")
		p, err := Spread(n, rows, step, Order(rapid.IntRange(0, 1).Draw(t, "order")))
		if (err != nil) != (n > rows/step) {
			t.Fatalf("%d over %d: %v", n, rows, err)
		}
		if err != nil {
			return
		}
		if p.count() != n || p.rows() != rows {
			t.Fatalf("%v is not %d over %d", p, n, rows)
		}
		if n == 0 {
			return
		}
		if p.Rest >= step || len(p.Runs) > 2 {
			t.Fatalf("%+v", p)
		}
		on := p.on()
		if on[len(on)-1] != rows-p.Rest {
			t.Fatalf("last on %d of %d", on[len(on)-1], rows)
		}
		last, least, most := 0, rows, 0
		for _, r := range on {
			least, most, last = min(least, r-last), max(most, r-last), r
			if r%step != 0 {
				t.Fatalf("row %d is of the wrong side", r)
			}
		}
		if most-least > step {
			t.Fatalf("uneven: %v", on)
		}
	})
}
