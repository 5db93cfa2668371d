package alter

import (
	"maps"
	"math"
	"slices"

	"flatwright/schematic"
)

// together foresees what moves of several choices do, as the sum of what each does alone: how far every measurement is off, and how far the edges of
// every join and heights that were alike lie apart. What it finds is tried, since sides of the work and uneven shapings are not foreseen.
type together struct {
	choices []choice
	moved   []int
	base    []int     // how they are moved to begin with
	now     []float64 // the quantities
	costs   []func(float64) float64
	does    [][2][]effect // of one step of each choice up and down
	movedBy [][]int       // the choices that move each quantity
}

type effect struct {
	on int
	by float64
}

// What quantities cost: a stretch that was as long as another more than any measurement, since the garment would not go together.
const (
	costFar    = 1e3
	costUnlike = 1e6
)

// foresee tries every choice alone, a step up and a step down; nil if there are more than the search has trials for.
func (s *searching) foresee() *together {
	base := s.best
	list := base.quantities()
	l := &together{movedBy: make([][]int, len(list))}
	for _, q := range list {
		l.now, l.costs = append(l.now, q.v), append(l.costs, q.cost)
	}
	for i, c := range base.movable() {
		at := base.moved[c.name]
		l.choices, l.moved, l.base, l.does = append(l.choices, c), append(l.moved, at), append(l.base, at), append(l.does, [2][]effect{})
		for way, step := range []int{1, -1} {
			if at+step < -farthest || farthest < at+step {
				continue
			}
			if s.left <= 0 {
				return nil
			}
			moved := map[string]int{}
			maps.Copy(moved, base.moved)
			moved[c.name] += step
			l.learn(i, way, step, s.try(moved))
		}
	}
	return l
}

// learn notes what a step of choice i does, as a trial shows it.
func (l *together) learn(i, way, step int, t *trial) {
	for q, after := range t.quantities() {
		d := float64(step) * (after.v - l.now[q])
		if math.Abs(d) <= 1e-6 {
			continue
		}
		l.does[i][way] = append(l.does[i][way], effect{q, d})
		if !slices.Contains(l.movedBy[q], i) {
			l.movedBy[q] = append(l.movedBy[q], i)
		}
	}
}

// try makes a trial of so many moves, and keeps it if it is the best.
func (s *searching) try(moved map[string]int) *trial {
	s.left--
	t := s.f.try(moved)
	if t.score.less(s.best.score) {
		s.best = t
	}
	return t
}

// movable are the choices whose counts may be others than the nearest.
func (t *trial) movable() []choice {
	all := *t
	all.bad = map[string]bool{}
	for _, m := range t.g.Pieces {
		all.bad[m.Name] = true
	}
	return all.open()
}

// quantity is what a garment is judged by, as a number that moves with the counts, and what it costs.
type quantity struct {
	v    float64
	cost func(float64) float64
}

// quantities are those of a trial, as many and in the same order in each: findings, of every measurement how far it is off and how far apart heights are
// that were alike, of every join how far its edges are apart.
func (t *trial) quantities() []quantity {
	list := []quantity{{float64(t.score.broken), free}}
	alike := map[[2]string]float64{}
	for k := range t.f.base.Pieces {
		list = append(list, t.ofPiece(k, alike)...)
	}
	for i, was := range t.f.base.Seams {
		length, count := quantity{0, free}, quantity{0, free}
		if t.g != nil && i < len(t.g.Seams) {
			length, count = t.seamed(was, t.g.Seams[i])
		}
		list = append(list, length, count)
	}
	return list
}

// ofPiece are those of the measurements of a piece.
func (t *trial) ofPiece(k int, alike map[[2]string]float64) []quantity {
	was, now := t.f.base.Pieces[k], map[string]schematic.Measure{}
	if t.g != nil && k < len(t.g.Pieces) {
		for _, m := range t.g.Pieces[k].Measures {
			now[m.ID] = m
		}
	}
	var list []quantity
	told := map[string]bool{}
	for _, old := range was.Measures {
		off, apart := quantity{0, free}, quantity{0, free}
		if m, ok := now[old.ID]; ok {
			off, apart = t.measured(was, old, m, alike)
			if again := alikeIn(old, m); told[again] {
				off.cost = free
			} else {
				told[again] = true
			}
		}
		list = append(list, off, apart)
	}
	return list
}

// measured are by how many stitches or rows a measurement is off, and by how much a height is other than the first that was as high and has its name.
func (t *trial) measured(piece *schematic.Made, was, now schematic.Measure, alike map[[2]string]float64) (off, apart quantity) {
	off, apart = quantity{0, free}, quantity{0, free}
	if t.f.extra != nil && piece.Kind == schematic.KindBand {
		return off, apart // it follows its edges
	}
	was.Length = t.f.wanted(piece.Name, was, now)
	slack := half.Float()
	if exact, _ := t.ruled(piece.Name, now); exact != nil && exact.rib != "" {
		slack = max(slack, float64(exact.need.Multiple)/2)
	}
	unit := t.unit(now).Float()
	off = quantity{now.Length.Sub(was.Length).Float() / unit, offCost(slack)}
	if now.Axis == schematic.Vertical {
		h := [2]string{was.Name, was.Length.String()}
		if first, had := alike[h]; had {
			apart = quantity{now.Length.Float() - first, apartCost(unit/4, loose*costFar)}
		} else {
			alike[h] = now.Length.Float()
		}
	}
	return off, apart
}

// seamed are by how much the two edges of a join differ in length and in count.
func (t *trial) seamed(was, now schematic.Seam) (length, count quantity) {
	length.cost, count.cost = free, free
	grain := min(t.p.Gauges[0].StitchWidth().Float(), t.p.Gauges[0].RowHeight().Float())
	length.v = now.SewLength.Sub(now.IntoLength).Float()
	count.v = float64(now.SewCount - now.IntoCount)
	agreed := agrees(t.f.was, was)
	switch {
	case was.SewLength.Eq(was.IntoLength) && ofRows(now.Sew) == ofRows(now.Into):
		length.cost = apartCost(grain/4, costUnlike)
	case was.SewLength.Eq(was.IntoLength):
		length.cost = apartCost(max(t.p.Gauges[0].StitchWidth().Float(), t.p.Gauges[0].RowHeight().Float()), costUnlike)
	case agreed && (now.Join.How == schematic.AsLong || now.Join.How == schematic.Eased):
		sewn, into, slack := now.Lengths(t.p)
		over := sewn.Sub(into)
		if now.Join.How == schematic.Eased {
			over = over.Sub(first(now.Join.Ease))
		}
		length.v, length.cost = over.Float(), apartCost(slack.Float()+1e-6, loose*costFar)
	}
	if agreed && now.Join.How == schematic.StitchToStitch {
		count.cost = apartCost(0.25, loose*costFar)
	}
	return length, count
}

func free(float64) float64 { return 0 }

// offCost is what a measurement costs that is off by so many stitches or rows, as it is judged.
func offCost(slack float64) func(float64) float64 {
	return func(off float64) float64 {
		off = min(math.Abs(off), tooFar.Float())
		if off <= slack+1e-3 {
			off = min(off, 0.5)
			return off * off
		}
		return costFar*(1+math.Floor(off/0.5+1e-6)) + 4*off*off // sums that come back to a bound stay on one side of it
	}
}

// apartCost is what it costs that two lengths differ by more than slack.
func apartCost(slack, cost float64) func(float64) float64 {
	return func(apart float64) float64 {
		if math.Abs(apart) <= slack {
			return 0
		}
		return cost + min(math.Abs(apart), 100)
	}
}

// move moves a choice, and is by how much the whole costs more, and the quantity that it makes worst; -1 if none is worse.
func (l *together) move(c, by int) (more float64, worst int) {
	way := 0
	if l.moved[c]+min(by, 0) < l.base[c] {
		way = 1
	}
	l.moved[c] += by
	k := l.moved[c]
	more, worst = 0.02*float64(k*k-(k-by)*(k-by)), -1
	most := 1e-6
	for _, e := range l.does[c][way] {
		cost := l.costs[e.on]
		d := -cost(l.now[e.on])
		l.now[e.on] += float64(by) * e.by
		d += cost(l.now[e.on])
		more += d
		if d > most {
			most, worst = d, e.on
		}
	}
	return more, worst
}

// better moves choice c, and up to depth-1 others, each one that moves what the one before made worst, so that the whole costs less than so far;
// false if none does.
func (l *together) better(c, depth int, soFar float64) bool {
	for _, by := range []int{1, -1} {
		if k := l.moved[c] + by; k < -farthest || farthest < k {
			continue
		}
		more, worst := l.move(c, by)
		if soFar+more < -1e-6 {
			return true
		}
		if depth > 1 && worst >= 0 && slices.ContainsFunc(l.movedBy[worst], func(other int) bool { return other != c && l.better(other, depth-1, soFar+more) }) {
			return true
		}
		l.move(c, -by)
	}
	return false
}

// settle moves choices, up to so many at once, until none of that helps.
func (l *together) settle(chain int) {
	for depth, left := 1, trials; depth <= chain && left > 0; depth++ {
		for c := range l.choices {
			if l.better(c, depth, 0) {
				depth, left = 0, left-1
				break
			}
		}
	}
}

// leap tries what is foreseen to be the best, and from there again as long as that helps: with any moves, with fewer at once, and with none that alone
// make something that does not go together.
func (s *searching) leap() {
	for better := true; better && !s.best.score.done(); {
		l := s.foresee()
		if l == nil {
			return
		}
		better = false
		start, now := slices.Clone(l.moved), slices.Clone(l.now)
		for _, way := range []struct {
			chain  int
			broken float64
		}{{3, 0}, {3, costUnlike}, {2, costUnlike}, {1, costUnlike}} {
			copy(l.moved, start)
			copy(l.now, now)
			l.costs[0] = func(n float64) float64 { return n * way.broken }
			l.settle(way.chain)
			moved := map[string]int{}
			maps.Copy(moved, s.best.moved)
			for i, c := range l.choices {
				moved[c.name] = l.moved[i]
			}
			before := s.best
			s.try(moved)
			better = better || s.best != before
		}
	}
}
