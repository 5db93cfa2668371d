package work

import (
	"slices"
	"strings"
)

// panel is a stretch of a row between two markers.
type panel struct {
	name string
	n    int
}

// settle finds the places of the changes within a row of n stitches, whose panels it
// changes with them; ahead is a row that meets the panels in their order. Changes of panels that are not
// known, or do not make up the row, are spread over it.
func (e *edges) settle(panels *[]panel, n int, ahead, round bool) {
	e.at = nil
	now := slices.Clone(*panels)
	sum := 0
	for _, p := range now {
		sum += p.n
	}
	known := len(now) > 0 && sum == n
	for _, c := range e.inner {
		switch {
		case c.middle:
			e.middle(n, c.all)
		case !known || !e.sides(*panels, now, c, round):
			e.spread += c.all
		}
	}
	if !ahead {
		for i := range e.at {
			e.at[i].place, e.at[i].end = n-1-e.at[i].place, !e.at[i].end
		}
	}
	if !known {
		*panels = nil
		return
	}
	first, last := &now[0], &now[len(now)-1]
	if !ahead {
		first, last = last, first
	}
	first.n += e.begin - e.off
	last.n += e.end
	if e.spread != 0 && len(now) > 1 {
		now = nil // where each of them falls is not known
	}
	*panels = now
}

// sides puts a change at the ends of panels: of those with its name, or of all that have a
// marker there. It reports false if that is not what it comes to.
func (e *edges) sides(was, now []panel, c inner, round bool) bool {
	var at []change
	sum, start := 0, 0
	grow := make([]int, len(was))
	for k, p := range was {
		if p.n < -4*c.by {
			return false // too few to work together at both ends
		}
		low, high := start, start+p.n-1
		start += p.n
		if c.panel != "" && strings.ToLower(p.name) != c.panel {
			continue
		}
		if round || k > 0 {
			at, grow[k], sum = append(at, change{low, c.by, false}), grow[k]+c.by, sum+c.by
		}
		if round || k < len(was)-1 {
			at, grow[k], sum = append(at, change{high, c.by, true}), grow[k]+c.by, sum+c.by
		}
	}
	if sum != c.all {
		return false
	}
	e.at = append(e.at, at...)
	for k := range now {
		now[k].n += grow[k]
	}
	return true
}

// middle puts a change of by in all around the middle of a row of n.
func (e *edges) middle(n, by int) {
	low := (n - 1) / 2
	switch {
	case -2*by > n-1:
		e.spread += by
	case by > 0:
		e.at = append(e.at, change{low, (by + 1) / 2, false}, change{n / 2, by / 2, true})
	case by < 0:
		e.at = append(e.at, change{low, -((1 - by) / 2), true}, change{low + 1, by / 2, false})
	}
}
