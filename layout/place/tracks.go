package place

import (
	"math"
	"slices"
	"sort"

	"flatwright/schematic"
)

const (
	firstTrack = 8.5 // from the outline to the first dimension line, mm
	nextPitch  = 6.5 // from one dimension line to the next
	fullTracks = 4   // tracks in which a value is tried before it becomes a letter
	apart      = 1.2 // between two things in one track
	mostPush   = 8   // farthest that one side is moved out for another's labels, first
	reachOut   = 15  // farthest that a value stands from the end of its line
	wideBeside = 45  // widest value that stands beside its line
	openArrow  = 5   // shortest line with arrowheads; a shorter one has strokes
)

type span struct{ lo, hi float64 }

func (s span) meets(o span, gap float64) bool { return s.lo < o.hi+gap && o.lo < s.hi+gap }

// onSide is a measurement on its side: u along the side.
type onSide struct {
	s      *sided
	u      span
	ends   [2]pt // at u.lo and u.hi
	leader bool
	track  int
	label  span
	form   form
	beside bool
	how    how
}

// track is one row of dimension lines.
type track struct {
	lines  []span
	labels []span
	high   float64 // of the highest label in it
	v      float64
}

// sideTracks are the tracks of one side, the nearest first.
type sideTracks struct {
	side   side
	items  []*onSide
	tracks []track
	reach  span // along u, of all that is in the tracks
	any    bool
	us     []float64 // room for ways
	over   float64   // farthest that a value reaches past the side's ends
}

// tracks places everything that is left beside the view: shortest first, nearest
// first, each where neither a line nor a label nor an extension line is in its way.
func (d *drawn) tracks(list []*sided) {
	var all [4]sideTracks
	for s := top; s <= right; s++ {
		all[s].side = s
	}
	for _, s := range list {
		if s.placed {
			continue
		}
		all[s.side].items = append(all[s.side].items, newOnSide(s))
	}
	lo, hi := d.all.lo, d.all.hi
	past := [...]float64{-lo.Y, hi.Y - d.h, -lo.X, hi.X - d.w}
	for s := top; s <= right; s++ {
		all[s].colour(d.along(s), math.Inf(1))
	}
	// At a corner where both sides reach out, the upright one is held back, and then
	// the upper or lower one starts farther out.
	var push [4]float64
	for _, c := range []side{left, right} {
		for _, s := range []side{top, bottom} {
			if corner(&all[s], &all[c], lo, hi, d.h) > mostPush {
				all[c].colour(d.h, mostPush*d.o.text()/defaultText)
			}
		}
		for _, s := range []side{top, bottom} {
			push[s] = max(push[s], corner(&all[s], &all[c], lo, hi, d.h))
		}
	}
	for s := top; s <= right; s++ {
		p := max(0, past[s])
		if push[s] > 0 {
			p = max(p, push[s]+1)
		}
		all[s].level(p)
	}
	for s := top; s <= right; s++ {
		d.settle(&all[s])
	}
}

// along is the length of a side of the outline's box.
func (d *drawn) along(s side) float64 {
	if s.vertical() {
		return d.h
	}
	return d.w
}

// corner is how far the upright side c reaches past the outline's height h where side
// s, above or below, reaches past the corners lo and hi as well, by more than the end of a line does; 0 if they
// don't meet.
func corner(s, c *sideTracks, lo, hi pt, h float64) float64 {
	if !s.any || !c.any || c.side == left && s.reach.lo > lo.X-1.01 || c.side == right && s.reach.hi < hi.X+1.01 {
		return 0
	}
	if s.side == top {
		return max(0, -c.reach.lo)
	}
	return max(0, c.reach.hi-h)
}

func newOnSide(s *sided) *onSide {
	o := &onSide{s: s, leader: s.axis == schematic.Slanted}
	a, b := s.a, s.b
	if o.leader {
		a = mid(a, b)
		b = a
	}
	ua, ub := a.X, b.X
	if s.side.vertical() {
		ua, ub = a.Y, b.Y
	}
	if ua > ub {
		a, b, ua, ub = b, a, ub, ua
	}
	o.u, o.ends = span{ua, ub}, [2]pt{a, b}
	return o
}

// colour gives every item a track and a place for its label in it. A value reaches
// past the side's length by over at most.
func (t *sideTracks) colour(length, over float64) {
	t.tracks, t.any, t.reach, t.over = t.tracks[:0], false, span{}, over
	if len(t.items) == 0 {
		return
	}
	order := append([]*onSide{}, t.items...)
	sort.SliceStable(order, func(i, j int) bool {
		a, b := order[i].u.hi-order[i].u.lo, order[j].u.hi-order[j].u.lo
		if math.Abs(a-b) > 0.01 {
			return a < b
		}
		return false
	})
	for i, o := range order {
		t.put(o, order[:i], order[i+1:], length)
	}
}

// put places one item. Values are tried in a fixed number of tracks; a letter also
// in a new one of its own, where the line goes on until the letter is clear of
// every extension line: there are only so many, so it ends.
func (t *sideTracks) put(o *onSide, placed, later []*onSide, length float64) {
	least := 0
	for _, p := range placed {
		if !o.leader && !p.leader && o.u.lo < p.u.hi-0.05 && p.u.lo < o.u.hi-0.05 {
			least = max(least, p.track+1)
		}
	}
	if !o.leader && len(o.s.it.forms) > 0 {
		for k := least; k < least+fullTracks && k <= len(t.tracks); k++ {
			if t.value(o, k, t.ways(k, placed, later), length, k-least) {
				return
			}
		}
	}
	f := o.s.it.letter
	for k := least; ; k++ {
		ways := t.ways(k, placed, later)
		if u, ok := t.onLine(o, k, f, ways); ok && !o.leader {
			t.set(o, k, f, u, false, byLetter)
			return
		}
		if u, ok := t.beside(o, k, f, ways, length, math.Inf(1)); ok {
			t.set(o, k, f, u, true, byLetter)
			return
		}
	}
}

// value tries to place an item in track k with its value, on its line or else beside it.
func (t *sideTracks) value(o *onSide, k int, ways []float64, length float64, tried int) bool {
	for _, f := range o.s.it.forms {
		if u, ok := t.onLine(o, k, f, ways); ok {
			t.set(o, k, f, u, false, nth(onLine, tried))
			return true
		}
	}
	for _, over := range [2]float64{mostPush, t.over} { // rather in more lines than far out
		for _, f := range o.s.it.forms {
			if u, ok := t.beside(o, k, f, ways, length, over); ok {
				t.set(o, k, f, u, true, nth(beside, tried))
				return true
			}
		}
	}
	return false
}

func nth(h how, tried int) how {
	if tried > 0 {
		return nextTrack
	}
	return h
}

// ways are the places along the side where extension lines run through track k,
// now or later.
func (t *sideTracks) ways(k int, placed, later []*onSide) []float64 {
	us := t.us[:0]
	for _, p := range placed {
		if p.track >= k {
			us = append(us, p.u.lo, p.u.hi)
		}
	}
	for _, p := range later {
		us = append(us, p.u.lo, p.u.hi)
	}
	slices.Sort(us)
	t.us = us
	return us
}

const wayGap = 0.7 // between a label and an extension line

func runsThrough(ways []float64, label span) bool {
	i := sort.SearchFloat64s(ways, label.lo-wayGap)
	return i < len(ways) && ways[i] <= label.hi+wayGap
}

// open reports whether a label fits from lo in track k.
func (t *sideTracks) open(label span, k int, ways []float64) bool {
	if runsThrough(ways, label) {
		return false
	}
	if k >= len(t.tracks) {
		return true
	}
	for _, s := range t.tracks[k].labels {
		if label.meets(s, apart) {
			return false
		}
	}
	return !slices.ContainsFunc(t.tracks[k].lines, func(s span) bool { return label.meets(s, apart) })
}

// lineFits reports whether a line fits in track k: lines may meet end to end.
func (t *sideTracks) lineFits(line span, k int) bool {
	if k >= len(t.tracks) {
		return true
	}
	for _, s := range t.tracks[k].lines {
		if line.meets(s, -0.05) {
			return false
		}
	}
	return !slices.ContainsFunc(t.tracks[k].labels, func(s span) bool { return line.meets(s, apart) })
}

// onLine is the middle of a free place for the label above the line itself, the
// nearest to the line's middle.
func (t *sideTracks) onLine(o *onSide, k int, f form, ways []float64) (float64, bool) {
	if f.w > o.u.hi-o.u.lo-2*wayGap || !t.lineFits(o.u, k) {
		return 0, false
	}
	middle := (o.u.lo + o.u.hi) / 2
	if !runsThrough(ways, span{middle - f.w/2, middle + f.w/2}) {
		return middle, true
	}
	var tries []float64
	for _, w := range ways {
		if between(w, o.u.lo, o.u.hi) {
			tries = append(tries, w-wayGap-0.05-f.w/2, w+wayGap+0.05+f.w/2)
		}
	}
	sort.SliceStable(tries, func(i, j int) bool { return math.Abs(tries[i]-middle) < math.Abs(tries[j]-middle) })
	for _, u := range tries {
		label := span{u - f.w/2, u + f.w/2}
		if label.lo < o.u.lo+wayGap || label.hi > o.u.hi-wayGap {
			continue
		}
		if !runsThrough(ways, label) {
			return u, true
		}
	}
	return 0, false
}

// beside is the middle of a free place for the label beyond either end of the line,
// with the line going on under it, past the side's length by most at most. A letter
// in a track of its own may stand as far off as it must.
func (t *sideTracks) beside(o *onSide, k int, f form, ways []float64, length, most float64) (float64, bool) {
	reach := float64(reachOut)
	switch {
	case !f.letter && f.w > wideBeside:
		return 0, false
	case f.letter && k >= len(t.tracks):
		reach = math.Inf(1)
	}
	var room [24]float64
	tries := append(room[:0], o.u.hi+apart+f.w/2, o.u.lo-apart-f.w/2)
	for _, w := range ways {
		if w >= o.u.hi-0.01 {
			tries = append(tries, w+apart+f.w/2)
		}
		if w <= o.u.lo+0.01 {
			tries = append(tries, w-apart-f.w/2)
		}
	}
	best, found, least := 0.0, false, math.Inf(1)
	for _, u := range tries {
		label := span{u - f.w/2, u + f.w/2}
		off := max(label.lo-o.u.hi, o.u.lo-label.hi)
		if off > reach {
			continue
		}
		over := max(0, -label.lo) + max(0, label.hi-length)
		if over > most {
			continue
		}
		cost := off + over
		if u < o.u.lo {
			cost += 0.5
		}
		if cost >= least {
			continue
		}
		whole := span{min(o.u.lo, label.lo), max(o.u.hi, label.hi)}
		if t.lineFits(whole, k) && t.open(label, k, ways) {
			best, found, least = u, true, cost
		}
	}
	return best, found
}

func (t *sideTracks) set(o *onSide, k int, f form, u float64, beside bool, h how) {
	for k >= len(t.tracks) {
		t.tracks = append(t.tracks, track{})
	}
	o.track, o.form, o.beside, o.how = k, f, beside, h
	o.label = span{u - f.w/2, u + f.w/2}
	tr := &t.tracks[k]
	line := o.u
	if beside {
		line = span{min(o.u.lo, o.label.lo), max(o.u.hi, o.label.hi)}
		tr.labels = append(tr.labels, o.label)
	}
	tr.lines = append(tr.lines, line)
	tr.high = max(tr.high, f.h)
	line = span{line.lo - 1, line.hi + 1}
	if !t.any {
		t.reach, t.any = line, true
	}
	t.reach = span{min(t.reach.lo, line.lo), max(t.reach.hi, line.hi)}
}

// level gives each track its distance from the outline, the first one clear of what
// reaches past the outline there.
func (t *sideTracks) level(past float64) {
	v := past
	for k := range t.tracks {
		tr := &t.tracks[k]
		switch {
		case k == 0 && t.side.outer():
			tr.v = max(firstTrack, past+2)
		case k == 0:
			tr.v = max(firstTrack, past+1+tr.high+lineGap)
		case t.side.outer():
			tr.v = v + max(nextPitch, lineGap+t.tracks[k-1].high+1.2)
		default:
			tr.v = v + max(nextPitch, overshoot+0.6+tr.high+lineGap)
		}
		v = tr.v
	}
}
