package schematic

import (
	"fmt"
	"math"
	"slices"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

func (s *Even) fit(f *Fitting, old Section) {
	if s.Rows.From != nil {
		rows := s.Rows.Int(0, 0)
		f.rise(rows)
		if left := f.ribbed(s, old, rows); left < rows {
			s.Amount = Amount{Rows: expr.Counts(left)}
		}
		return
	}
	need := Need{}
	if s.End != AnyRow && !f.Round && f.step.Rows > 0 {
		need = Need{2, 0}
		if f.RS == (s.End == RightSide) {
			need.Plus = 1
		}
	}
	rows := f.rows(old, need)
	if odd := f.odd; odd != 0 && rows > 1 {
		f.N += odd
		f.before = []Section{once(s, odd)}
		rows--
		f.oddOnce(s, odd)
	}
	f.odd = 0
	s.Amount = Amount{Rows: expr.Counts(f.ribbed(s, old, rows))}
}

// once is a row before rows worked even in which d stitches are increased, or decreased, at its middle.
func once(s *Even, d int) *Shape {
	return &Shape{Common: Common{Gauge: s.Gauge, LeftEdge: s.LeftEdge, RightEdge: s.RightEdge, Stitch: s.Stitch, Pos: s.Pos},
		Shapings: []Shaping{{Increase: d > 0, By: expr.Counts(abs(d)), At: Across, Every: expr.Counts(1), Times: expr.Counts(1), Pos: s.Pos}}}
}

// oddOnce says that d stitches are increased, or decreased, once beside the others.
func (f *Fitting) oddOnce(s Section, d int) {
	how := "increased"
	if d < 0 {
		how = "decreased"
	}
	f.Odd(s, "%s %s once, at the middle of the row or spread across it, beside the others, so that the count comes out", stitches(abs(d)), how)
}

func (s *Shape) need(f *Fitting, then Need) Need {
	step := f.Steps[s]
	if then.Multiple < 2 {
		return Need{}
	}
	m := then.Multiple
	for i := range s.Shapings {
		if at := s.Shapings[i].At; len(s.Shapings) == 1 && (at == Across || at == BothEdges && step.Rows > 0) {
			return Need{} // as many as it takes
		}
		m = gcd(m, s.change(i, step))
	}
	return Need{m, then.Plus}.bounded()
}

// change is how many stitches one shaping changes, at all its places.
func (s *Shape) change(i int, step Step) int {
	places := 1
	if i < len(step.Places) {
		places = max(1, step.Places[i])
	}
	return max(1, s.Shapings[i].By.Int(0, 1)) * places
}

// point is the one shaping of rounds that run into a point: as many stitches go in each as
// the point has, or a part of them, and so it stays, in more or fewer wedges.
func (s *Shape) point(step Step) *Shaping {
	if len(s.Shapings) != 1 || s.Shapings[0].At != Across || s.Shapings[0].Increase || s.Shapings[0].total() < 2 {
		return nil
	}
	if by := s.Shapings[0].By.Int(0, 1); step.After > 2*by {
		return nil
	}
	return &s.Shapings[0]
}

// total is how often a shaping falls, in a pattern of one size.
func (sh *Shaping) total() int {
	n := 0
	for _, r := range sh.spacings(0) {
		n += max(0, r.times)
	}
	return n
}

func (s *Shape) called() bool {
	return slices.ContainsFunc(s.Shapings, func(h Shaping) bool { return h.Every.From != nil || h.Times.From != nil || h.By.From != nil })
}

func (h *Shaping) sign() int {
	if h.Increase {
		return 1
	}
	return -1
}

func (s *Shape) fit(f *Fitting, old Section) {
	was := old.(*Shape)
	if s.called() {
		longest := 0
		for i := range s.Shapings {
			h := &s.Shapings[i]
			f.N += h.sign() * h.total() * s.change(i, f.step)
			longest = max(longest, h.profile(0).last().row)
		}
		if s.Rows.From == nil && !s.Rows.IsZero() {
			longest = max(longest, f.step.Rows)
		}
		f.rise(s.Rows.Int(0, longest))
		return
	}
	total, before := f.rows(old, Need{}), f.N
	t := &spreading{f: f, s: s, total: total}
	_, t.ratio = f.ratio()
	if _, longer := f.Extra[old]; longer {
		t.ratio = units.Frac(int64(total), int64(max(1, f.step.Rows)))
	}
	if len(s.Shapings) == 1 {
		t.one(was)
	} else {
		t.several(was)
	}
	t.panels(was, before)
	longest := 0
	for i := range s.Shapings {
		longest = max(longest, s.Shapings[i].profile(0).last().row)
	}
	if longest != total || !s.Rows.IsZero() || !s.Length.IsZero() {
		s.Amount = Amount{Rows: expr.Counts(total)}
	}
}

// spreading spreads the shapings of a section over its rows anew.
type spreading struct {
	f     *Fitting
	s     *Shape
	total int
	ratio units.Num
}

// one has a single shaping meet the count after it.
func (t *spreading) one(was *Shape) {
	f, h := t.f, &t.s.Shapings[0]
	n := was.Shapings[0].total()
	if n == 0 {
		return
	}
	sts, _ := f.ratio()
	exact := sts.Times(f.step.After)
	if to := t.s.To; to.From != nil { // the grading says
		exact = units.Int(int64(to.Int(0, f.step.After)))
	}
	by, each := h.By.Int(0, 1), t.s.change(0, f.step)
	need := f.needs()
	switch {
	case was.point(f.step) != nil:
		left := f.step.After
		if h.By.From == nil && left%by == 0 { // as many wedges as are as wide
			n := f.Near(f.name("wedges", by), sts.Times(by), Need{}, 2)
			by, left = n, left/by*n
			h.By = expr.Counts(by)
		}
		m := max(0, (f.N-left)/by)
		t.odd(left - f.N + m*by)
		f.N -= m * by
		t.spread(0, was, m)
	case h.At == Across:
		what := "after"
		if rib := f.ribNext(); rib.Multiple > 1 {
			what, need = "rib after", need.and(rib)
		}
		after := f.Near(f.name(what, f.step.After), exact, need, 1)
		t.parted(0, was, max(0, (after-f.N)*h.sign()), 1)
	case h.At == BothEdges && t.total > 0:
		d := (f.Near(f.name("after", f.step.After), exact, need, 1) - f.N) * h.sign()
		if by > 1 && h.By.From == nil {
			t.parted(0, was, max(0, d/2), 2)
			t.odd(h.sign() * (max(0, d) % 2))
			return
		}
		m := max(0, d/each)
		f.N += h.sign() * m * each
		if r := d - m*each; d > 0 && r != 0 {
			t.odd(h.sign() * r)
		}
		t.spread(0, was, m)
	case by > 1 && h.By.From == nil && t.total > 0 && h.At != Lines:
		after := f.Near(f.name("after", f.step.After), exact, need, 1)
		t.parted(0, was, max(0, (after-f.N)*h.sign()), 1)
	default:
		after := f.Near(f.name("after", f.step.After), exact, Need{each, f.N}.bounded().and(need), 1)
		m := max(0, (after-f.N)*h.sign()/each)
		if m > 0 && t.overPanels(was, m) {
			m--
		}
		f.N += h.sign() * m * each
		t.spread(0, was, m)
	}
}

// parted parts d stitches, at each of so many places, into equal shapings, about as often as published; where they do
// not divide, the first shapings take one stitch more each.
func (t *spreading) parted(i int, was *Shape, d, places int) {
	h, n := &t.s.Shapings[i], was.Shapings[i].total()
	t.f.N += h.sign() * d * places
	b, m := times(d, h.By.Int(0, 1), n, t.total)
	more := 0
	if everyRow := d > 0 && h.At == Across && n > 1 && n == t.f.step.Rows; everyRow || b*m != d {
		if m = min(n, d, max(1, t.total)); everyRow { // as the rounds of a crown
			m = min(d, max(1, t.total))
		}
		b, more = d/m, d%m
	}
	h.By = expr.Counts(max(1, b))
	all := len(t.s.Shapings)
	t.spread(i, was, m)
	if more == 0 || len(t.s.Shapings) > all {
		return
	}
	first, rest, rows := t.s.Shapings[i].cut(more)
	first.By = expr.Counts(b + 1)
	rest.Offset = rows
	t.s.Shapings[i] = first
	t.s.Shapings = append(t.s.Shapings, rest)
	verb, where := "decrease", "at the edge"
	if first.Increase {
		verb = "increase"
	}
	switch first.At {
	case Across:
		where = "across the row"
	case BothEdges:
		where = "at both edges"
	}
	t.f.Part(t.s, "%s %s %s %s, then %s %s, so that the count comes out", verb, stitches(b+1), where, often(more), stitches(b), often(first.total()+rest.total()-more))
}

func stitches(n int) string {
	if n == 1 {
		return "1 st"
	}
	return fmt.Sprintf("%d sts", n)
}

// byStitches is a difference in words: 2 sts fewer.
func byStitches(n int) string {
	if n < 0 {
		return stitches(-n) + " fewer"
	}
	return stitches(n) + " more"
}

func often(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// cut parts a shaping of one size after it has fallen n times, in that many rows.
func (h Shaping) cut(n int) (first, rest Shaping, rows int) {
	var a, b []Spacing
	rows = h.Offset
	for _, r := range h.spacings(0) {
		k := min(n, r.times)
		n -= k
		rows += k * r.every
		if k > 0 {
			a = append(a, Spacing{Every: expr.Counts(r.every), Times: expr.Counts(k)})
		}
		if r.times > k {
			b = append(b, Spacing{Every: expr.Counts(r.every), Times: expr.Counts(r.times - k)})
		}
	}
	first, rest = h, h
	set(&first, a)
	set(&rest, b)
	return first, rest, rows
}

// odd has what equal shapings leave over worked once, across the first row that they leave, so that the count comes out.
func (t *spreading) odd(d int) {
	if d == 0 {
		return
	}
	t.f.N += d
	t.f.oddOnce(t.s, d)
	t.s.Shapings = append(t.s.Shapings, Shaping{Increase: d > 0, By: expr.Counts(abs(d)), At: Across, Every: expr.Counts(1), Times: expr.Counts(1), Pos: t.s.Pos})
}

// times parts d stitches into so many at a time, so often: as published if that comes out, and
// otherwise as near to it as can be with the least left over.
func times(d, by, n, rows int) (b, m int) {
	if d == 0 {
		return 0, 0
	}
	best := math.MaxInt
	for k := max(1, n-max(2, n/3)); k <= min(n+max(2, n/3), max(1, rows)); k++ {
		for _, c := range []int{d / k, d/k + 1} {
			if c < 1 {
				continue
			}
			off := 8*abs(d-c*k) + 2*abs(k-n) + abs(c-by)
			if c == by {
				off -= 2
			}
			if off < best {
				best, b, m = off, c, k
			}
		}
	}
	return b, m
}

func abs(n int) int { return max(n, -n) }

// several keeps each of the shapings, and lets that which falls most often make up for the others.
func (t *spreading) several(was *Shape) {
	f := t.f
	sts, _ := f.ratio()
	most := 0
	for i := range was.Shapings {
		if was.Shapings[i].total() > was.Shapings[most].total() {
			most = i
		}
	}
	left := sts.Times(f.step.After).Sub(units.Int(int64(f.N)))
	for i := range t.s.Shapings {
		h, n := &t.s.Shapings[i], was.Shapings[i].total()
		if i == most || n == 0 {
			continue
		}
		if by := h.By.Int(0, 1); by > 1 && h.By.From == nil {
			places := t.s.change(i, f.step) / by
			d := f.Near(f.name("taken", n*by), sts.Times(n*by), Need{}, 0)
			left = left.Sub(units.Int(int64(h.sign() * d * places)))
			t.parted(i, was, d, places)
			continue
		}
		m := f.Near(f.name("times", n), sts.Times(n), Need{}, 0)
		change := h.sign() * m * t.s.change(i, f.step)
		left = left.Sub(units.Int(int64(change)))
		f.N += change
		t.spread(i, was, m)
	}
	h := &t.s.Shapings[most]
	if n := was.Shapings[most].total(); n > 0 {
		each := t.s.change(most, f.step)
		m := f.Near(f.name("most times", n), left.Times(h.sign()).Div(units.Int(int64(each))), Need{}, 0)
		f.N += h.sign() * m * each
		t.spread(most, was, m)
	}
}

// spread gives a shaping m times, each of its runs over its own share of the rows, so that a
// curve stays a curve. What the rows do not hold goes two at a time.
func (t *spreading) spread(i int, published *Shape, m int) {
	h, was := &t.s.Shapings[i], &published.Shapings[i]
	runs := was.spacings(0)
	n := was.total()
	step := 1
	if was.On != AnyRow || even(runs) {
		step = 2
	}
	h.Offset = min(int(t.ratio.Times(was.Offset).Round()), max(0, t.total-m))
	room := t.total - h.Offset
	if m > room/step && was.On == AnyRow {
		step = 1
	}
	more := max(0, m-room/step)
	set(h, t.runs(runs, n, m-more, room, step))
	t.double(*h, more, room, step)
}

func even(runs []spaced) bool {
	return !slices.ContainsFunc(runs, func(r spaced) bool { return r.times > 0 && r.every%2 == 1 })
}

// double has some of the rows shaped once more, where there are more shapings than rows.
func (t *spreading) double(h Shaping, more, room, step int) {
	if more == 0 || room < step {
		return
	}
	t.f.Tell(t.s, "%d shapings fall in %d rows: shape two stitches instead of one in %d of them", more+room/step, room/step, more)
	for more > 0 {
		m := min(more, room/step)
		again := h
		set(&again, t.f.Spread(m, room, step))
		t.s.Shapings = append(t.s.Shapings, again)
		more -= m
	}
}

// runs are the spacings of m shapings over room rows.
func (t *spreading) runs(runs []spaced, n, m, room, step int) []Spacing {
	var out []Spacing
	doneT, doneR, sumT, sumR := 0, 0, 0, 0
	for _, r := range runs {
		if r.times <= 0 {
			continue
		}
		sumT += r.times
		sumR += r.every * r.times
		toT := int(units.Frac(int64(sumT)*int64(m), int64(n)).Round())
		toR := min(room, int(t.ratio.Times(sumR).Round()))
		if step == 2 {
			toR -= (toR - doneR) % 2
		}
		toR = min(room, max(toR, doneR+(toT-doneT)*step)) // every shaping needs a row: take it from the runs that follow
		for toT > doneT && (toT-doneT)*step > toR-doneR {
			toT--
		}
		for _, g := range t.f.Spread(toT-doneT, toR-doneR, step) {
			out = append(out, g)
			doneT += g.Times.Int(0, 0)
			doneR += g.Every.Int(0, 0) * g.Times.Int(0, 0)
		}
	}
	if doneT < m { // what rounding left over goes where rows are left
		if more := t.f.Spread(m-doneT, room-doneR, step); more != nil {
			return append(out, more...)
		}
		return t.f.Spread(m, room, step)
	}
	return out
}

func set(h *Shaping, runs []Spacing) {
	h.Every, h.Times, h.Then = expr.Counts(1), expr.Counts(0), nil
	if len(runs) > 0 {
		h.Every, h.Times, h.Then = runs[0].Every, runs[0].Times, runs[1:]
	}
}

// manyRepeats is how many repeats there are at least in a row of which a stitch or two over are not seen, as they are between the wedges of a
// crown: a choice of this project.
const manyRepeats = 17

func (s *RepeatRow) many(f *Fitting) bool { return s.Use > 0 && f.Steps[s].Before >= manyRepeats*s.Use }

func (s *RepeatRow) need(f *Fitting, then Need) Need {
	if s.RestEven || s.Use < 1 || s.Makes < 1 {
		return Need{}
	}
	switch of := then.of(0, s.Makes); { // how often it is repeated
	case of.Multiple > 1:
		return Need{s.Use * of.Multiple, s.Use * of.Plus}.bounded()
	case s.many(f):
		return Need{}
	}
	return Need{s.Use, 0}.bounded()
}

func (s *RepeatRow) fit(f *Fitting, old Section) {
	use := max(s.Use, 1)
	rest := f.N % use
	if rest != 0 && !s.RestEven && f.step.Before%use == 0 {
		s.RestEven = true
		say := f.Tell
		if old.(*RepeatRow).many(f) {
			say = f.Odd
		}
		say(s, "the %s repeats over %d stitches, and there are %d: work the last %d even (or have %d or %d before it)", Words(s), use, f.N, rest, f.N-rest, f.N-rest+use)
	}
	f.N = f.N/use*s.Makes + rest
}

func (s *ShortRows) fit(f *Fitting, old Section) {
	was := old.(*ShortRows)
	round := f.Round
	f.Round = false // they go to and fro, in the round too
	if r := was.Rows.Int(0, 0); r > 0 {
		f.step.Rows = r
		f.put(&s.Rows, f.rows(old, Need{2, r}.bounded()))
	}
	f.Round = round
	over := f.put(&s.Over, min(f.N, f.count("short rows over", was.Over.Int(0, 0), Need{})))
	if n := was.Step.Int(0, 0); n > 0 { // all turns together leave as much as they left
		sts, _ := f.ratio()
		turns, ends := max(1, s.turns()), 1
		if s.At != LeftEdge && s.At != RightEdge {
			ends = 2
		}
		step := f.Near(f.name("turn", n), sts.Times(n*max(1, was.turns())).Div(units.Int(int64(turns))), Need{}, 1)
		f.put(&s.Step, min(step, max(1, (over-1)/(turns*ends))))
	}
}

// turns is how often the rows of one size turn before the end of the longest, at each end.
func (s *ShortRows) turns() int { return max(0, (s.Rows.Int(0, 0)+1)/2-1) }

func (s *Mark) fit(f *Fitting, old Section) {
	was := old.(*Mark)
	sts, rows := f.ratio()
	if f.step.Before > 0 {
		sts = units.Frac(int64(f.N), int64(f.step.Before))
	}
	along := sts
	if s.Along {
		along = rows
	}
	scaled := func(at *expr.Graded, by units.Num) int {
		n := at.Int(0, 0)
		if n > 0 {
			n = f.put(at, int(by.Times(n).Round()))
		}
		return n
	}
	scaled(&s.Inset, sts)
	scaled(&s.Stitch, sts)
	first := scaled(&s.First, along)
	if count := was.Count.Int(0, 1); count > 1 && was.Apart.Int(0, 0) > 0 { // so that the last stands where it stood
		last := along.Times(was.First.Int(0, 0) + (count-1)*was.Apart.Int(0, 0))
		f.put(&s.Apart, max(1, int(last.Sub(units.Int(int64(first))).Div(units.Int(int64(count-1))).Round())))
	}
}
