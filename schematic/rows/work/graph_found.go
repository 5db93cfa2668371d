package work

import (
	"slices"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// The bounds of the stitches that are tried under a stitch pattern that says no number, and how often its repeat is drawn.
const (
	mostAssumed = 200
	mostTried   = 12
	shownTimes  = 3
	mostPlain   = 12 // rows that any number of stitches fits, before one that tells
)

// assume founds a stitch pattern that says of how many stitches it is a multiple at most: on as few as its rows fit on with
// its repeat worked some times. It does nothing where the rows have stitches to stand on, or bring their own.
func (g *Graph) assume(r *runner, lines []*ins.Line) {
	l := lines[0]
	if r.fab != nil && (r.known() || l.Label == nil || l.Label.Next || l.Label.From.At(r.size) != 1) || r.begun || l.Label == nil || len(l.Unread) > 0 || foundationOf(l.Body) != nil || usesNothing(l.Body) || fromRing(l) || ringAlone(l.Body) {
		return
	}
	kind := chainStitch()
	if !knitted(l.Body) && passesNamed(l.Body) {
		return
	}
	if knitted(l.Body) {
		if kind = knitStitch(); is[*ins.Turn](l.Body[len(l.Body)-1]) && len(l.Body) > 2 { // a short row: it leaves stitches
			return
		}
	}
	k, any := r.meantStitches(kind, lines)
	if k == 0 {
		return
	}
	f := foundationFor(kind, k)
	r.pick = r.pick.anew(r.triedOn(f, lines).pick.taken) // as what follows settles it
	r.put(f, true)
	r.begun = r.begun || kind == chainStitch() && !r.round // the row goes back along it
	if any {
		g.Assumed = k
	}
	g.anew()
	g.foundation(f, l.At.Line, l.Label.Round)
}

// passesNamed reports whether a row first passes, or slips into, a stitch that is named: it stands on rows told before, and on no chain.
func passesNamed(body []ins.Item) bool {
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Nothing, *ins.Turn:
			continue
		case *ins.Skip:
			return len(n.Places) > 0 && n.Places[0].Unit.Stitch != nil
		case *ins.Stitch:
			return n.Kind != nil && n.Kind.ID == "slst" && len(n.Places) > 0 && n.Places[0].Unit.Stitch != nil
		}
		return false
	}
	return false
}

// stray reports whether a line before the first row of a stitch pattern is no work of it: there is nothing yet that it could be
// worked on, and it founds nothing.
func (r *runner) stray(l *ins.Line, behind []*ins.Line) bool {
	if r.fab != nil || r.begun || l.Label != nil || foundationOf(l.Body) != nil || usesNothing(l.Body) {
		return false
	}
	at := slices.IndexFunc(behind, func(l *ins.Line) bool { return l.Label != nil })
	return at >= 0 && knitted(behind[at].Body) && !behind[at].Label.Next
}

// founded founds the rows of a section that bring no stitches of their own, and reports whether the first of its lines is no row.
func (g *Graph) founded(r *runner, lines []*ins.Line) bool {
	if g.toldOn(r, lines[0], lines[1:]) || r.stray(lines[0], lines[1:]) {
		return true
	}
	g.assume(r, lines)
	return false
}

// toldOn founds knitted rows on the stitches that a line before them says there are: You have 216 sts for the yoke. It reports false if the
// line says something else.
func (g *Graph) toldOn(r *runner, l *ins.Line, behind []*ins.Line) bool {
	at, k := slices.IndexFunc(behind, func(l *ins.Line) bool { return l.Label != nil }), r.said(l)
	idle := func(n ins.Item) bool { return is[*ins.Nothing](n) || is[*ins.Join](n) || is[*ins.Marker](n) }
	if r.fab != nil || r.begun || l.Label != nil || len(l.Unread) > 0 || k < 1 || k > maxGraph || at < 0 || !knitted(behind[at].Body) || slices.ContainsFunc(l.Body, func(n ins.Item) bool { return !idle(n) }) {
		return false
	}
	f := foundationFor(knitStitch(), k)
	rows := behind[at:]
	if end := slices.IndexFunc(rows, func(l *ins.Line) bool { return l.Label == nil }); end > 0 {
		rows = rows[:end]
	}
	if !r.fitsOn(f, rows) { // it counts borders too
		return false
	}
	r.put(f, true)
	g.takeUp(l)
	g.anew()
	g.foundation(f, l.At.Line, behind[at].Label.Round)
	g.held()
	return true
}

// fromRing reports whether a round is one of crochet, which begins in a ring.
func fromRing(l *ins.Line) bool { return l.Label.Round && !knitted(l.Body) }

func foundationFor(kind *stitch.Stitch, k int) *fabric {
	f := &fabric{}
	f.add(run{kind: kind, n: k, base: kind == chainStitch()})
	return f
}

// meantStitches is the number of stitches on which rows are shown, and whether their first row fits on others too. It is 0
// if none is found, or if any will do.
func (r *runner) meantStitches(kind *stitch.Stitch, lines []*ins.Line) (k int, others bool) {
	fits, n := r.fits(kind, lines[:1]), 1
	least := 0
	whole := func(k int) bool { return r.fitsOn(foundationFor(kind, k), lines) }
	if _, k := r.multiples(kind, lines[:1]); k > 0 && len(fits) > 1 && openEnded(lines[0].Body) && (whole(k) || !slices.ContainsFunc(fits, whole)) {
		return k, true // as the text says
	}
	for {
		switch {
		case len(fits) == 0:
			return 0, false
		case !openEnded(lines[n-1].Body):
			return fits[0], false
		case len(fits) == 1: // what goes on as far as its stitches do would fit on more
			return 0, false
		}
		step := fits[1] - fits[0]
		if least = shownTimes * step; step > 1 {
			break
		}
		if n == 1 { // any number will do, but for the multiple
			if all, k := r.multiples(kind, lines[:1]); k > 0 {
				fits, least = all, k
				break
			}
		}
		if n++; n > min(len(lines), mostPlain) || lines[n-1].Label == nil { // nor do the rows above tell
			return 0, false
		}
		fits = r.fits(kind, lines[:n])
	}
	if all := slices.DeleteFunc(slices.Clone(fits), func(k int) bool { return !whole(k) }); len(all) > 0 {
		fits = all
	}
	for _, k := range fits {
		if k >= least {
			return k, true
		}
	}
	return fits[len(fits)-1], true
}

// fits are the least numbers of stitches on which lines are worked.
func (r *runner) fits(kind *stitch.Stitch, lines []*ins.Line) (fits []int) {
	for k := max(r.usedBare(lines[0].Body), 1); k <= mostAssumed && len(fits) < mostTried; k++ {
		if r.fitsOn(foundationFor(kind, k), lines) {
			fits = append(fits, k)
		}
	}
	return fits
}

// usedBare is how many places the stitches of a row that are told by their number alone use at least.
func (r *runner) usedBare(list []ins.Item) (n int) {
	for _, it := range list {
		if s, ok := it.(*ins.Stitch); ok && len(s.Places) == 0 && (s.Kind == nil || s.Kind.Uses == 1) && s.Call == nil {
			n += max(s.N.At(r.size), 0)
		}
	}
	return n
}

// openEnded reports whether a row goes on as far as its stitches do.
func openEnded(list []ins.Item) bool {
	return slices.ContainsFunc(list, func(n ins.Item) bool {
		if q, ok := n.(*ins.Repeat); ok && (q.Until.Kind != ins.NoExtent || openEnded(q.Body)) {
			return true
		}
		return slices.ContainsFunc(placesOf(n), func(p ins.Place) bool { return p.Kind == ins.InEach })
	})
}

// multiples are numbers of stitches that the text says rows are worked over, and the least that shows its repeat.
func (r *runner) multiples(kind *stitch.Stitch, lines []*ins.Line) (fits []int, least int) {
	if len(r.x.Multiples) != 1 || r.x.Multiples[0].Of < 2 {
		return nil, 0
	}
	m := r.x.Multiples[0]
	for t := shownTimes; t < 2*shownTimes; t++ {
		if k := t*m.Of + m.Plus + m.Base; r.fitsOn(foundationFor(kind, k), lines) {
			fits = append(fits, k)
		}
	}
	if len(fits) == 0 {
		return nil, 0
	}
	return fits, fits[0]
}

// fitsOn reports whether lines are worked on a foundation without anything that does not fit.
func (r *runner) fitsOn(f *fabric, lines []*ins.Line) bool {
	q := r.triedOn(f, lines)
	return len(q.found) == 0 && len(q.all) == len(r.all) && q.known()
}

// triedOn is the work of lines on a foundation, apart from r.
func (r *runner) triedOn(f *fabric, lines []*ins.Line) *runner {
	q := r.fork()
	cur := *r.cur
	cur.rows = slices.Clip(slices.Clone(cur.rows))
	q.g, q.cur, q.stopped = nil, &cur, false
	q.pieces[len(q.pieces)-1] = q.cur
	q.put(f, true)
	for _, l := range lines {
		q.line(l)
	}
	return q
}
