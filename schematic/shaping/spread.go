package shaping

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
)

// ends is where the first and the last of n things stand in a row.
type ends int

// The rules for the ends of a row. InRound has n gaps, the last running into the
// first. HalfGaps has n+1 stretches, the two outer ones half as long as the
// others, the left one the longer if they can't match. FullGaps has n+1 equal stretches.
const (
	InRound ends = iota
	HalfGaps
	FullGaps
)

// Evenly is how many stitches stand before each of n places spread over m
// stitches, and behind the last one: n+1 numbers that add up to m, no two of the
// inner ones apart by more than one. In the round the last number is 0 and the
// rule holds for all n. Longer gaps are spread among the shorter ones as
// Bresenham's line (1965) spreads its steps.
func Evenly(n, m int, ends ends) ([]int, error) {
	if n < 1 || m < 0 || n > MaxCount || m > MaxCount {
		return nil, fmt.Errorf("%d things cannot be spread over %d stitches", n, m)
	}
	gaps := make([]int, n+1)
	switch ends {
	case InRound:
		copy(gaps, steps(n, m))
	case FullGaps:
		copy(gaps, steps(n+1, m))
	case HalfGaps:
		// n whole gaps, one of them cut in two and laid at the ends.
		all := steps(n, m)
		outer := all[n-1]
		gaps[0], gaps[n] = (outer+1)/2, outer/2
		copy(gaps[1:], all[:n-1])
	}
	return gaps, nil
}

// steps are the n whole steps of a line that rises m over n, the longer ones spread evenly.
func steps(n, m int) []int {
	out := make([]int, n)
	last := 0
	for i := range n {
		next := (m*(i+1) + n/2) / n
		out[i] = next - last
		last = next
	}
	return out
}

// along says a spread row in words: 'work 5, (increase, work 7) 3 times'. act is
// what is done at each place. Neighbours that repeat become one repeat.
func along(gaps []int, act string) string {
	if len(gaps) == 0 {
		return ""
	}
	var parts []string
	if gaps[0] > 0 {
		parts = append(parts, fmt.Sprintf("work %d", gaps[0]))
	}
	one := func(gap int) string {
		if gap == 0 {
			return act
		}
		return fmt.Sprintf("%s, work %d", act, gap)
	}
	for i := 1; i < len(gaps); {
		period, times := repeat(gaps[i:])
		var in []string
		for _, g := range gaps[i : i+period] {
			in = append(in, one(g))
		}
		text := strings.Join(in, ", ")
		if times > 1 {
			text = fmt.Sprintf("(%s) %d times", text, times)
		}
		parts = append(parts, text)
		i += period * times
	}
	return strings.Join(parts, ", ")
}

// repeat is the beginning of gaps that repeats at least twice and covers most,
// the shortest period of those; or one gap once.
func repeat(gaps []int) (period, times int) {
	const longest = 6 // more is not read at a glance
	period, times = 1, 1
	for p := 1; p <= longest && 2*p <= len(gaps); p++ {
		k := 1
		for (k+1)*p <= len(gaps) && slices.Equal(gaps[:p], gaps[k*p:(k+1)*p]) {
			k++
		}
		if k > 1 && p*k > period*times {
			period, times = p, k
		}
	}
	return period, times
}

// Run is a run of shaping rows: the shaping falls on every Every-th row, Times times.
type Run struct{ Every, Times int }

// Plan is n shapings over rows: the runs in the order in which they are
// worked, and Rest rows worked even after the last shaping.
type Plan struct {
	Runs []Run
	Rest int
}

// Order is which of two spacings is worked first.
type Order int

// The orders: SlowFirst begins with the longer spacing.
const (
	SlowFirst Order = iota
	FastFirst
)

// Spread spreads n shapings over rows as evenly as whole rows allow: two
// spacings at most, one row apart, or two rows apart if shaping must fall on rows of one
// side (step 2). 'Every 6th row' has its shaping on the sixth. It fails if the rows do not hold n.
func Spread(n, rows, step int, order Order) (Plan, error) {
	if n < 0 || rows < 0 || step < 1 || n > MaxCount || rows > MaxCount {
		return Plan{}, fmt.Errorf("%d shapings cannot be spread over %d rows", n, rows)
	}
	if n == 0 {
		return Plan{Rest: rows}, nil
	}
	slots := rows / step
	if n > slots {
		if step == 1 {
			return Plan{}, fmt.Errorf("%d shapings do not fit into %d rows", n, rows)
		}
		return Plan{}, fmt.Errorf("%d shapings do not fit into %d rows, which have %d of one side: they need %d rows", n, rows, slots, n*step)
	}
	short, more := slots/n, slots%n
	slow, fast := Run{(short + 1) * step, more}, Run{short * step, n - more}
	runs := []Run{slow, fast}
	if order == FastFirst {
		runs = []Run{fast, slow}
	}
	p := Plan{Rest: rows - slots*step}
	for _, r := range runs {
		if r.Times > 0 {
			p.Runs = append(p.Runs, r)
		}
	}
	return p, nil
}

// on are the rows on which the shapings fall, counted from 1.
func (p Plan) on() []int {
	var on []int
	row := 0
	for _, r := range p.Runs {
		for range r.Times {
			row += r.Every
			on = append(on, row)
		}
	}
	return on
}

// String is the plan in the trade's words: every 6th row 4 times, then every
// 4th row 7 times.
func (p Plan) String() string {
	if len(p.Runs) == 0 {
		return "none"
	}
	var parts []string
	for _, r := range p.Runs {
		parts = append(parts, fmt.Sprintf("%s %s", everyRow(r.Every), times(r.Times)))
	}
	return strings.Join(parts, ", then ")
}

func everyRow(n int) string {
	if n == 1 {
		return "every row"
	}
	tail := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			tail = "st"
		case 2:
			tail = "nd"
		case 3:
			tail = "rd"
		}
	}
	return fmt.Sprintf("every %d%s row", n, tail)
}

func times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// RowStep is the distance between two rows on which a shaping may fall: 1 if any
// row will do, 2 for right-side or wrong-side rows alone.
func RowStep(on schematic.RowSide) int {
	if on == schematic.AnyRow {
		return 1
	}
	return 2
}
