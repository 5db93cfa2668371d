package schematic

import (
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// A start has no row before it.
func (s *CastOn) need(*Fitting, Need) Need   { return Need{} }
func (s *Held) need(*Fitting, Need) Need     { return Need{} }
func (s *Ring) need(*Fitting, Need) Need     { return Need{} }
func (s *Sideways) need(*Fitting, Need) Need { return Need{} }

func (s *CastOn) fit(f *Fitting, old Section) {
	was := old.(*CastOn)
	n := was.Stitches.Int(0, 0)
	gauge := f.Gauge
	f.Gauge = f.governing()
	need := f.needs().and(f.Rule(was.Stitches))
	if extra, longer := f.Extra[old]; longer { // worked from side to side: its length lies in its stitches
		sts, _ := f.ratio()
		_, now := f.Chooser.Gauge(f.Gauge)
		f.N = f.put(&s.Stitches, f.Near(f.name("cast on", n), sts.Times(n).Add(extra.Div(now.StitchWidth())), need, 1))
		f.Made[old] = f.N
		f.more = int(units.Int(int64(f.N)).Div(sts).Round()) - n
	} else {
		f.N = f.put(&s.Stitches, f.count("cast on", n, need))
	}
	f.Gauge = gauge
	if chain := was.Chain.Int(0, 0); chain > 0 {
		f.put(&s.Chain, chain-n+f.N)
	}
}

// governing is the gauge that says how wide the stitches of a start are to be: that in
// which most rows are worked until the count changes, not that of a rib which draws them in.
func (f *Fitting) governing() string {
	rows, now := map[string]int{}, f.Gauge
	best := now
	for _, s := range f.next {
		if g := s.Base().Gauge; g != "" {
			now = g
		}
		step := f.Steps[s]
		if rows[now] += step.Rows; rows[now] > rows[best] {
			best = now
		}
		if step.After != step.Before {
			break
		}
	}
	return best
}

func (s *Held) fit(f *Fitting, old Section) {
	was := old.(*Held)
	sts, _ := f.ratio()
	sum := 0
	f.panels = nil
	for i := range s.From {
		h, n := &s.From[i], 0
		switch {
		case h.Piece != "":
			n = f.Live(*h)
			if !h.Stitches.IsZero() {
				n = f.put(&h.Stitches, n)
			}
		case !h.Added.IsZero():
			if n = was.From[i].Added.Int(0, 0); n > 0 {
				n = f.put(&h.Added, f.Near(f.addedName(n), sts.Times(n), Need{}, 1))
			}
		}
		sum += n
		if i < len(f.step.Taken) {
			f.panel(h.Panel, f.step.Taken[i], n)
		}
	}
	f.N, f.odd = sum, 0
	if d := int(sts.Times(f.step.After).Sub(units.Int(int64(sum))).Round()); len(s.From) > 1 && abs(d) <= joinedOff && f.evenNext() {
		f.odd = d
	}
}

// joinedOff is how many stitches what goes on from several pieces may gain or lose in its first row even, so that it is as wide as it was: a
// choice of this project.
const joinedOff = 2

// addedName is the name of the choice of stitches added between pieces: those under the arms of a body
// and of its sleeves meet.
func (f *Fitting) addedName(n int) string { return expr.Counts(n).Vals[0].String() + " added" }

func (s *Ring) fit(f *Fitting, _ Section) { f.N = s.Stitches.Int(0, 0) }

func (s *Sideways) fit(f *Fitting, old Section) {
	was := old.(*Sideways)
	deep := was.Stitches.Int(0, 0)
	n := f.put(&s.Stitches, f.count("depth", deep, Need{}))
	_, rows := f.ratio()
	if r := was.Rows.Int(0, 0); r > 0 {
		f.put(&s.Rows, f.Near(f.name("band rows", r), rows.Times(r), Need{}, 1))
	}
	a, b := f.Chooser.Gauge(f.Gauge)
	f.want, f.have = f.want.Add(a.StitchWidth().Times(deep)), f.have.Add(b.StitchWidth().Times(n))
	f.band, f.moved, f.N = s, true, 0
}

// ups are the most rows in which a rate of picking up repeats.
const ups = 20

// fit picks as many stitches up as are as wide as before, at the rate published if that gives
// them; otherwise at the simplest that does.
func (s *PickUp) fit(f *Fitting, old Section) {
	if f.band == nil {
		return
	}
	was, rows := old.(*PickUp), f.band.Rows.Int(0, 0)
	if f.band.Rows.From == nil {
		sts, _ := f.ratio()
		need := f.needs()
		search := rateSearch{s: s, need: need, n: f.Near(f.name("picked up", f.step.After), sts.Times(f.step.After), need, 1),
			best: rated{was.Pick, was.Of, rows}, was: rated{was.Pick, was.Of, rows}, least: units.Int(-1)}
		for d := -2; d <= 2; d++ {
			search.near(rows + d)
		}
		rows = search.best.rows
		s.Pick, s.Of = search.best.pick, search.best.of
		f.TellRate(s, "the long edge of the band", s.Pick, s.Of, was.Pick, was.Of)
		f.put(&f.band.Rows, rows)
	}
	f.N, _ = s.picked(rows)
	if !s.Stitches.IsZero() {
		f.put(&s.Stitches, f.N)
	}
}

// rateSearch seeks the pick-up rate that comes to n stitches, near the rows and the rate that were.
type rateSearch struct {
	s         *PickUp
	need      Need
	n         int
	was, best rated
	least     units.Num // how far off the best is; negative before there is one
}

// near tries the rates along so many rows.
func (q *rateSearch) near(rows int) {
	q.try(rated{q.was.pick, q.was.of, rows})
	for of := 1; of <= ups && !q.s.Alternate; of++ {
		p := int(units.Frac(int64(q.n)*int64(of), int64(max(1, rows))).Round())
		if p < 1 {
			continue
		}
		for pick := max(1, p-1); pick <= p+1; pick++ {
			q.try(rated{pick, of, rows})
		}
	}
}

func (q *rateSearch) try(r rated) {
	if r.rows < 1 {
		return
	}
	p := *q.s
	p.Pick, p.Of = r.pick, r.of
	got, _ := p.picked(r.rows)
	if !q.need.holds(got) {
		return
	}
	off := units.Int(int64(got - q.n)).Abs().Times(4).Add(units.Int(int64(r.rows - q.was.rows)).Abs().Times(3))
	if r.pick != q.was.pick || r.of != q.was.of {
		off = off.Add(units.Frac(int64(20+r.of), 10))
	}
	if q.least.Sign() < 0 || off.Less(q.least) {
		q.best, q.least = r, off
	}
}

// rated is a rate of picking up, along so many rows.
type rated struct{ pick, of, rows int }
