package work

import (
	"slices"

	ins "flatwright/schematic/rows/instructions"
)

// laps are the last two times of a repeat: where each ended, and what it had made. A stretch that went alike over equal stitches
// both times, or over equal stretches, as of a rib, goes on so, and is not worked out again for each time.
type laps struct {
	works bool // every instruction of the stretch only goes on to the next stitches
	last  [2]lap
}

// lap is the work as it stood at the end of one time of a repeat.
type lap struct {
	cur         cursor
	runs        int
	end         run // of the runs made
	steps, made int
	groups      int
	picots      int
	spaced      bool
}

// lapsOf are those of a repeat of which no time is worked yet.
func (w *work) lapsOf(body []ins.Item) laps {
	return laps{works: w.rec == nil && w.trace == nil && !slices.ContainsFunc(body, func(n ins.Item) bool { return !goesNext(n) })}
}

// goesNext reports whether an instruction only works, or passes, the next stitches, whatever else there is in the row.
func goesNext(n ins.Item) bool {
	var list []ins.Place
	switch n := n.(type) {
	case *ins.Stitch:
		if n.Kind == nil || n.Call != nil || len(n.Also) > 0 || n.Kind.ID == "slst" || n.Kind.ID == "picot" {
			return false
		}
		list = n.Places
	case *ins.Skip:
		list = n.Places
	default:
		return false
	}
	return !slices.ContainsFunc(list, func(p ins.Place) bool {
		return p.Kind != ins.InNext || !p.Unit.Any() || p.Unit.Between || p.Unit.Word == "held" || p.Unit.Word == "corner"
	})
}

// lapHere is the lap that ends here.
func (w *work) lapHere() lap {
	l := lap{cur: w.cur, runs: len(w.out.runs), steps: w.steps, made: w.made, groups: w.out.groups, picots: w.out.picots, spaced: w.spaced}
	if l.runs > 0 {
		l.end = w.out.runs[l.runs-1]
	}
	return l
}

// run goes on as the last two times went, as often as there surely are stitches for it before the last so many and the end of
// their run, and reports how often. What is near the end is worked out.
func (s *laps) run(w *work, keep int) int {
	if !s.works {
		return 0
	}
	a, b, c := s.last[0], s.last[1], w.lapHere()
	s.last = [2]lap{b, c}
	if a.runs == 0 || !alikeLaps(a, b, c) || !w.madeAlike(a, b, c) {
		return 0
	}
	per := b.cur.left - c.cur.left
	times := min(furtherLaps(b, c), (w.cur.left-keep)/per) - spare
	if times <= 0 || w.steps+times*(c.steps-b.steps) > maxSteps/2 || w.made+times*(c.made-b.made) > maxStitches/2 {
		return 0
	}
	if k := c.cur.i - b.cur.i; k == 0 {
		w.cur.step(times * per)
	} else {
		w.cur.i, w.cur.pos, w.cur.left = w.cur.i+times*k, w.cur.pos+times*per, w.cur.left-times*per
	}
	w.lastPos += times * per
	w.steps += times * (c.steps - b.steps)
	w.made += times * (c.made - b.made)
	w.out.groups += times * (c.groups - b.groups)
	w.out.picots += times * (c.picots - b.picots)
	if b.runs == c.runs {
		w.out.runs[c.runs-1].n += times * (c.end.n - b.end.n)
		return times
	}
	for t := range times {
		for _, q := range w.out.runs[b.runs:c.runs] {
			if q.group > 0 {
				q.group += (t + 1) * (c.groups - b.groups)
			}
			w.out.runs = append(w.out.runs, q)
		}
	}
	return times
}

// spare is how many times before the end of a run are worked out, where what is left may matter.
const spare = 3

// furtherLaps is how many more times the row below goes on as it did from b to c.
func furtherLaps(b, c lap) int {
	runs, k, per := c.cur.f.runs, c.cur.i-b.cur.i, b.cur.left-c.cur.left
	if k == 0 {
		return (runs[c.cur.i].n - c.cur.off) / per
	}
	at := c.cur.i
	for at < len(runs) && runs[at] == runs[at-k] && !runs[at].space() {
		at++
	}
	return (at - c.cur.i) / k
}

// alikeLaps reports whether two times, from a to b and from b to c, went alike over one run, or over as many runs to the same place of one.
func alikeLaps(a, b, c lap) bool {
	per, runs := b.cur.left-c.cur.left, c.cur.i-b.cur.i
	if a.cur.f != c.cur.f || b.cur.f != c.cur.f || b.cur.i-a.cur.i != runs || c.cur.i >= len(c.cur.f.runs) || c.cur.f.runs[c.cur.i].space() ||
		per <= 0 || a.cur.left-b.cur.left != per || b.steps-a.steps != c.steps-b.steps || b.made-a.made != c.made-b.made ||
		b.groups-a.groups != c.groups-b.groups || b.picots-a.picots != c.picots-b.picots || b.spaced != c.spaced || b.runs-a.runs != c.runs-b.runs {
		return false
	}
	if runs == 0 {
		return a.cur.off > 0
	}
	return a.cur.off == b.cur.off && b.cur.off == c.cur.off && slices.Equal(c.cur.f.runs[a.cur.i:b.cur.i], c.cur.f.runs[b.cur.i:c.cur.i])
}

// madeAlike reports whether they made the same: both only more of the stitches that came last, or the same runs behind those.
func (w *work) madeAlike(a, b, c lap) bool {
	if b.runs == c.runs {
		x, y, z := a.end, b.end, c.end
		same := y.n-x.n == z.n-y.n
		x.n, y.n = z.n, z.n
		return same && x == z && y == z
	}
	runs := w.out.runs
	if runs[a.runs-1] != a.end || runs[b.runs-1] != b.end {
		return false
	}
	return slices.EqualFunc(runs[a.runs:b.runs], runs[b.runs:c.runs], func(x, y run) bool {
		if x.group > 0 && y.group > 0 {
			x.group += c.groups - b.groups
		}
		return x == y
	})
}
