package alter

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"
)

// fitter works the counts of a garment of one size out anew, for other gauges or other heights. Every
// count is a choice with a name: the nearest to the measurement as published that its rule allows. A trial
// makes all of them in the order of the work, so that what it gives goes together by construction, and
// search moves single choices up and down until the measurements are as near as they come.
type fitter struct {
	was     *schematic.Pattern // one size, as published
	base    *schematic.Garment // worked
	gauges  []schematic.Gauge  // as they are now
	steps   map[schematic.Section]schematic.Step
	extra   map[schematic.Section]units.Num
	grading []schematic.Grading
	ribs    map[finding.Pos]schematic.Need
	start   map[string]int // how choices are moved to begin with
	graded  *regrading     // works values of the grading out anew; nil keeps them as numbers
	had     map[string]bool
	pairs   map[string]bool // rows that go in twos
	same    bool            // the gauges are those published
}

func newFitter(was *schematic.Pattern, gauges []schematic.Gauge, before finding.List) *fitter {
	f := &fitter{was: was, base: schematic.Work(was, 0), gauges: gauges, pairs: map[string]bool{}, steps: map[schematic.Section]schematic.Step{}, had: map[string]bool{},
		same: sameGauges(was.Gauges, gauges)}
	for _, m := range f.base.Pieces {
		for _, s := range m.Steps {
			if _, twice := f.steps[s.Section]; !twice { // a mirrored part works its sections twice, alike
				f.steps[s.Section] = s
			}
		}
	}
	for _, g := range before {
		f.had[g.Kind+" "+g.Piece] = true
	}
	return f
}

// trial is one way to alter the garment.
type trial struct {
	f       *fitter
	moved   map[string]int // by how many steps choices are moved from the nearest
	p       *schematic.Pattern
	g       *schematic.Garment
	found   finding.List
	choices []choice
	seen    map[string]bool
	made    map[schematic.Section]int
	twos    map[schematic.Section]bool
	done    map[string]bool
	piece   string
	odd     int
	uses    map[string]map[string]bool // the choices in each piece
	bad     map[string]bool            // pieces with something to better
	picks   []picked
	score   score
}

// choice is a count that a trial chose, and the distance to the next that its rule allows.
type choice struct {
	name string
	step int
}

// score is how well a trial does, the first number first.
type score struct {
	broken int     // findings of arithmetic that the garment as published has not
	unlike int     // joins of edges that were as long as each other and are not now
	far    int     // measurements off by more than half a stitch or row, and by how many halves each is off
	off    float64 // all of them together
}

func (a score) less(b score) bool {
	switch {
	case a.broken != b.broken:
		return a.broken < b.broken
	case a.unlike != b.unlike:
		return a.unlike < b.unlike
	case a.far != b.far:
		return a.far < b.far
	}
	return a.off < b.off-1e-9
}

// try makes a trial.
func (f *fitter) try(moved map[string]int) *trial {
	t := &trial{f: f, moved: moved, seen: map[string]bool{}, made: map[schematic.Section]int{}, twos: map[schematic.Section]bool{}, done: map[string]bool{},
		uses: map[string]map[string]bool{}, bad: map[string]bool{}}
	q := *f.was
	q.Gauges = f.gauges
	q.Pieces = make([]*schematic.Piece, len(f.was.Pieces))
	value := func(_ *schematic.Piece, g expr.Graded) expr.Graded {
		g.From = nil
		return g
	}
	if f.graded != nil {
		var ok bool
		if value, ok = f.graded.values(t); !ok {
			t.score.broken = 1 << 20
			return t
		}
	}
	for i, piece := range f.was.Pieces {
		q.Pieces[i] = piece.With(func(g expr.Graded) expr.Graded { return value(piece, g) })
	}
	t.p = &q
	for i := range q.Pieces {
		t.fit(i)
	}
	t.g = schematic.Work(&q, 0)
	bysize.SameSides(f.base, t.g)
	t.judge()
	return t
}

// fit chooses the counts of one piece, after those that it begins from.
func (t *trial) fit(i int) {
	q, was := t.p.Pieces[i], t.f.was.Pieces[i]
	if t.done[q.Name] {
		return
	}
	t.done[q.Name] = true
	if t.f.same && !t.longer(was) {
		return
	}
	for _, name := range schematic.BeginsFrom(was) {
		if k := slices.IndexFunc(t.p.Pieces, func(p *schematic.Piece) bool { return p.Name == name }); k >= 0 {
			t.fit(k)
		}
	}
	t.piece = q.Name
	if q.Motifs != nil {
		t.found = append(t.found, finding.Finding{Kind: "alter/section", Severity: finding.Note, Pos: q.Pos, Piece: q.Name,
			Message: fmt.Sprintf("the motifs of %s are measured, not counted, and kept: work yours to %s across", q.Name, both(t.p, first(q.Motifs.Across)))})
		return
	}
	t.firstRow(q)
	fit := &schematic.Fitting{Chooser: t, Steps: t.f.steps, Extra: t.f.extra, Made: t.made, Twos: t.twos, Gauge: q.Gauge, Round: q.Round, RS: !q.FirstWS}
	if step, ok := t.rates(q); ok {
		fit.Begin(step)
	}
	q.Sections = fit.Fit(q.Sections, was.Sections)
	t.ringed(was.Sections)
}

// firstRow chooses on which side of the work pieces worked flat begin, where something later in one of them must begin at one edge: begun on the
// other, it has one row more or fewer to there. Sleeves choose together, and all other pieces.
func (t *trial) firstRow(q *schematic.Piece) {
	name := firstRowOf(q)
	if name == "" || !slices.ContainsFunc(t.f.was.Pieces, func(p *schematic.Piece) bool { return firstRowOf(p) == name && schematic.Sided(p.Sections) }) {
		return
	}
	if t.Near(name, units.Num{}, schematic.Need{}, 0) == 0 {
		return
	}
	q.FirstWS = !q.FirstWS
	t.odd++
	side := "right"
	if q.FirstWS {
		side = "wrong"
	}
	t.found = append(t.found, finding.Finding{Kind: "alter/shape", Severity: finding.Note, Pos: q.Pos, Piece: q.Name,
		Message: fmt.Sprintf("begin with a %s-side row, so that each shaping begins at its own edge", side)})
}

// firstRowOf is the name of the choice of a piece's first row; empty if it has none.
func firstRowOf(q *schematic.Piece) string {
	if q.Round || len(q.Onto) > 0 || len(q.Sections) == 0 {
		return ""
	}
	if t := q.Sections[0].Traits(); !t.Starts || t.From != nil || !t.Band.IsZero() {
		return ""
	}
	if q.Kind == schematic.KindSleeve {
		return firstRow + " of a sleeve"
	}
	return firstRow
}

func first(g expr.Graded) units.Num {
	v, _ := g.At(0)
	return v
}

// Near is the count nearest to exact that need allows, moved as the trial says.
func (t *trial) Near(name string, exact units.Num, need schematic.Need, least int) int {
	n, step, err := shaping.Whole(exact, shaping.Rule{Multiple: need.Multiple, Plus: need.Plus, Least: least})
	if err != nil {
		return max(least, int(exact.Round()))
	}
	t.choose(name, step)
	if t.uses[t.piece] == nil {
		t.uses[t.piece] = map[string]bool{}
	}
	t.uses[t.piece][name] = true
	n += t.moved[name] * step
	for n < least {
		n += step
	}
	t.note(name, n, need)
	return n
}

func (t *trial) choose(name string, step int) {
	if !t.seen[name] {
		t.seen[name] = true
		t.choices = append(t.choices, choice{name, step})
	}
}

// Spread spreads n shapings over rows, the longer spacing first.
func (t *trial) Spread(n, rows, step int) []schematic.Spacing {
	plan, err := shaping.Spread(n, rows, step, shaping.SlowFirst)
	if err != nil {
		return nil
	}
	var out []schematic.Spacing
	for _, r := range plan.Runs {
		out = append(out, schematic.Spacing{Every: expr.Counts(r.Every), Times: expr.Counts(r.Times)})
	}
	return out
}

// Gauge is a gauge as published and as it is now.
func (t *trial) Gauge(name string) (was, now schematic.Gauge) {
	for i := range t.f.was.Gauges {
		if g := t.f.was.Gauges[i]; name == "" || g.Name == name {
			return g, t.f.gauges[i]
		}
	}
	return t.f.was.Gauges[0], t.f.gauges[0]
}

// Live is how many stitches of another piece, whose counts are chosen, a start takes up.
func (t *trial) Live(of schematic.HeldPart) int {
	m := t.worked(of.Piece)
	if m == nil {
		return of.Stitches.Int(0, 0)
	}
	n := m.LiveIn(of.Part)
	if of.Half {
		n /= 2
	}
	return n
}

// worked is a piece whose counts are chosen, worked with those that it begins from.
func (t *trial) worked(name string) *schematic.Made {
	need := map[string]bool{}
	var add func(name string)
	add = func(name string) {
		q := t.p.PieceNamed(name)
		if q == nil || need[name] || !t.done[q.Name] && !t.done[q.MirrorOf] {
			return
		}
		need[name] = true
		add(q.MirrorOf)
		for _, from := range schematic.BeginsFrom(q) {
			add(from)
		}
		for _, e := range q.Onto {
			for _, other := range t.p.Pieces {
				if strings.HasPrefix(strings.ToLower(e.Edge), strings.ToLower(other.Name)) {
					add(other.Name)
				}
			}
		}
	}
	add(name)
	p := *t.p
	p.Joins, p.Pieces = nil, nil
	for _, q := range t.p.Pieces {
		if need[q.Name] {
			p.Pieces = append(p.Pieces, q)
		}
	}
	return madeIn(schematic.Work(&p, 0), name)
}

// Tell says what of a section can't be altered as it should.
func (t *trial) Tell(s schematic.Section, format string, args ...any) {
	t.found = append(t.found, finding.Finding{Kind: "alter/section", Severity: finding.Warning, Pos: s.Base().Pos, Piece: t.piece, Message: fmt.Sprintf(format, args...)})
}

// Part says how shapings that were alike are parted into two kinds.
func (t *trial) Part(s schematic.Section, format string, args ...any) {
	t.found = append(t.found, finding.Finding{Kind: "alter/shape", Severity: finding.Note, Pos: s.Base().Pos, Piece: t.piece, Message: fmt.Sprintf(format, args...)})
}

// Rule is the multiple that a line of the grading asks of a count that is called by its name.
func (t *trial) Rule(g expr.Graded) schematic.Need {
	if g.From == nil || g.From.Root.Op != expr.Name {
		return schematic.Need{}
	}
	for _, line := range t.f.grading {
		if expr.Key(line.Name) == expr.Key(g.From.Root.Name) && line.Multiple > 1 {
			return schematic.Need{Multiple: line.Multiple, Plus: line.Plus}
		}
	}
	return schematic.Need{}
}

// Rib is the multiple that the stitches of a rib are in all sizes as published.
func (t *trial) Rib(s schematic.Section) schematic.Need { return t.f.ribs[s.Base().Pos] }

// Pair notes that rows of this name go in twos.
func (t *trial) Pair(name string) { t.f.pairs[name] = true }

// Paired reports whether rows of this name go in twos in one of the pieces.
func (t *trial) Paired(name string) bool { return t.f.pairs[name] }

// Odd says what is not alike any more so that a count comes out, and reckons it as a cost.
func (t *trial) Odd(s schematic.Section, format string, args ...any) {
	t.odd++
	t.Part(s, format, args...)
}

// TellRate says that stitches are picked up along an edge at another rate.
func (t *trial) TellRate(s schematic.Section, edge string, pick, of, wasPick, wasOf int) {
	t.tellRate(s.Base().Pos, edge, pick, of, wasPick, wasOf)
}

// judge scores a trial.
func (t *trial) judge() {
	s := score{}
	for _, f := range t.g.Findings {
		if contradicts(f) && !t.f.had[f.Kind+" "+f.Piece] {
			s.broken++
			t.bad[f.Piece] = true
		}
	}
	t.judgeSeams(&s)
	for k, m := range t.g.Pieces {
		if k >= len(t.f.base.Pieces) {
			break
		}
		counted := map[string]bool{}
		t.compare(t.f.base.Pieces[k], m, func(was, now schematic.Measure, off units.Num) {
			if counted[alikeIn(was, now)] {
				return
			}
			counted[alikeIn(was, now)] = true
			if t.f.extra != nil && m.Kind == schematic.KindBand {
				return // it follows its edges
			}
			off = units.Min(t.beyondRib(m.Name, now, off), tooFar) // a rib that goes another way than the fabric does not draw the fabric after it
			d := off.Float()
			if half.Less(off) {
				s.far += 1 + int(off.Div(half).Floor()) // so that one far off is better than two a little off, but not one twice as far
				t.bad[m.Name] = true
				d *= 2
			}
			s.off += d * d
		})
	}
	t.judgeAlike(&s)
	for _, k := range t.moved {
		s.off += 0.02 * float64(k*k)
	}
	s.off += 0.3 * float64(t.odd)
	t.score = s
}

// judgeAlike scores heights of one name that were alike in two pieces or parts and are not now, such as the lengths of front and back.
func (t *trial) judgeAlike(s *score) {
	type height struct {
		name string
		was  units.Num
	}
	now := map[height]units.Num{}
	for k, m := range t.g.Pieces[:min(len(t.g.Pieces), len(t.f.base.Pieces))] {
		t.compare(t.f.base.Pieces[k], m, func(was, is schematic.Measure, _ units.Num) {
			if is.Axis != schematic.Vertical {
				return
			}
			h := height{is.Name, was.Length}
			if other, ok := now[h]; ok && rounded.Less(other.Sub(is.Length).Abs()) {
				s.far += loose
				t.bad[m.Name] = true
				return
			}
			now[h] = is.Length
		})
	}
}

// beyondRib is by how much a measurement is off; half a stitch where it is no farther off than half a repeat of its rib.
func (t *trial) beyondRib(piece string, now schematic.Measure, off units.Num) units.Num {
	if exact, _ := t.ruled(piece, now); half.Less(off) && exact != nil && exact.rib != "" && !units.Frac(int64(exact.need.Multiple), 2).Less(off) {
		return half
	}
	return off
}

// judgeSeams scores the joins of a trial.
func (t *trial) judgeSeams(s *score) {
	for i, now := range t.g.Seams {
		if i >= len(t.f.base.Seams) {
			continue
		}
		switch was := t.f.base.Seams[i]; {
		case t.parted(was, now):
			s.unlike++
			t.badEdges(now)
		case t.loosened(was, now):
			s.far += loose
			t.badEdges(now)
		}
	}
}

// badEdges notes the pieces of a join that is not kept.
func (t *trial) badEdges(s schematic.Seam) {
	for _, m := range t.g.Pieces {
		for _, text := range slices.Concat(s.Join.Sew, s.Join.Into) {
			if strings.HasPrefix(text, m.Name) {
				t.bad[m.Name] = true
			}
		}
	}
}

// open are the choices that may better something: those of a piece that has something to better, and of the
// grading.
func (t *trial) open() []choice {
	var out []choice
	for _, c := range t.choices {
		if strings.HasPrefix(c.name, "rib ") {
			continue // the nearest that keeps its repeat is the best
		}
		of := strings.HasPrefix(c.name, grading) && t.score.broken+t.score.unlike > 0 // otherwise its rules have the last word
		for name := range t.bad {
			of = of || t.uses[name][c.name] || t.uses[t.mirrored(name)][c.name]
		}
		if of {
			out = append(out, c)
		}
	}
	return out
}

func (t *trial) mirrored(name string) string {
	if q := t.p.PieceNamed(name); q != nil {
		return q.MirrorOf
	}
	return ""
}

// grading begins the name of a choice in the grading.
const grading = "grading "

// half a stitch or row is within tolerance (common practice), and of a length a thousandth of a mm, since slants are rounded.
var half, rounded = units.Frac(1, 2), units.Frac(1, 1000)

// tooFar is how many stitches or rows are so far off that more does not matter.
var tooFar = units.Int(2)

// contradicts reports whether a finding says that a garment does not go together. Of a corner or a circle that is
// not quite flat it does not.
func contradicts(f finding.Finding) bool {
	return f.Severity != finding.Note && strings.HasPrefix(f.Kind, "arithmetic/") && f.Kind != "arithmetic/mitre" && f.Kind != "arithmetic/flat"
}

// loose is how far off edges count that agreed and do not now, reckoned as in a score: more than one measurement a row off (a choice of this project).
const loose = 4

// loosened reports whether two edges agreed, within half a stitch or row of each, and do not now.
func (t *trial) loosened(was, now schematic.Seam) bool {
	return agrees(t.f.was, was) && !agrees(t.p, now)
}

// parted reports whether two edges that were as long as each other are not now: exactly, if both are of rows or
// both of stitches, and otherwise to a stitch or row.
func (t *trial) parted(was, now schematic.Seam) bool {
	slack := units.Num{}
	if ofRows(now.Sew) != ofRows(now.Into) {
		slack = units.Max(t.p.Gauges[0].StitchWidth(), t.p.Gauges[0].RowHeight())
	}
	return was.SewLength.Eq(was.IntoLength) && slack.Less(now.SewLength.Sub(now.IntoLength).Abs())
}

// agrees reports whether the two sides of a seam are as long as their join says, within half a stitch or row of every edge.
func agrees(p *schematic.Pattern, s schematic.Seam) bool {
	sewn, into, slack := s.Lengths(p)
	over := sewn.Sub(into)
	switch s.Join.How {
	case schematic.StitchToStitch:
		return s.SewCount == s.IntoCount
	case schematic.AsLong:
	case schematic.Eased:
		over = over.Sub(first(s.Join.Ease))
	default:
		return true
	}
	return !slack.Less(over.Abs())
}

func ofRows(edges []schematic.Edge) bool {
	return len(edges) > 0 && edges[0].Rows > edges[0].Stitches
}

// compare calls f with every measurement of a piece as it is to be and as it is, and by how many of its
// stitches or rows they differ.
func (t *trial) compare(was, now *schematic.Made, f func(was, now schematic.Measure, off units.Num)) {
	old := map[string]schematic.Measure{}
	for _, m := range was.Measures {
		old[m.ID] = m
	}
	for _, m := range now.Measures {
		before, ok := old[m.ID]
		if !ok {
			continue
		}
		before.Length = t.f.wanted(now.Name, before, m)
		f(before, m, units.Max(units.Num{}, m.Length.Sub(before.Length).Abs().Sub(rounded)).Div(t.unit(m)))
	}
}

// alikeIn is the same for measurements of a piece that are one before and after, as at its left and its right.
func alikeIn(was, now schematic.Measure) string {
	return fmt.Sprint(now.Name, was.Length, now.Length)
}

// wanted is how long a measurement of a piece is to be: as published, or longer by those of the stretches made longer, on end, that come nearest.
func (f *fitter) wanted(piece string, was, now schematic.Measure) units.Num {
	if len(f.extra) == 0 {
		return was.Length
	}
	q := f.was.PieceNamed(piece)
	if of := f.was.PieceNamed(q.MirrorOf); of != nil {
		q = of
	}
	if (now.Of == "st") != schematic.SideToSide(q) {
		return was.Length
	}
	best, open := was.Length, []units.Num{} // lengths with the stretches on end that end with the last
	for _, s := range q.Sections {
		if e := f.extra[s]; e.Sign() != 0 {
			open = append(open, was.Length)
			for i := range open {
				open[i] = open[i].Add(e)
				if now.Length.Sub(open[i]).Abs().Less(now.Length.Sub(best).Abs()) {
					best = open[i]
				}
			}
		}
	}
	return best
}

// unit is the stitch or row of which a measurement is made, in mm, of the fabric where it is made of several; the larger of the two where
// it is made of both.
func (t *trial) unit(m schematic.Measure) units.Num {
	g := t.p.Gauges[0]
	if m.Gauge != nil {
		g = *m.Gauge
	}
	switch m.Of {
	case "st":
		return g.StitchWidth()
	case "row":
		if across := g.RowHeight().Times(2); m.Count > 0 && across.Times(m.Count).Eq(m.Length) {
			return across // a round more makes a disc two rows wider
		}
		return g.RowHeight()
	}
	return units.Max(g.StitchWidth(), g.RowHeight())
}

// trials bounds the search, and farthest the steps by which it moves one choice.
const (
	trials   = 600
	farthest = 2
)

// searching is a search under way.
type searching struct {
	f    *fitter
	best *trial
	left int // trials
}

// search gives the best trial found from the nearest counts, and then from pieces that begin on the other side of the work.
func (f *fitter) search() *trial {
	f.try(f.start) // tells which rows go in twos
	best := f.from(f.start)
	for _, c := range best.open() {
		if best.score.done() {
			break
		}
		if !strings.HasPrefix(c.name, firstRow) {
			continue
		}
		start := maps.Clone(best.moved)
		if start == nil {
			start = map[string]int{}
		}
		for name := range start {
			if c.ofRows() && (choice{name: name}).ofRows() {
				delete(start, name)
			}
		}
		start[c.name] = 1 - best.moved[c.name]
		if t := f.from(start); t.score.less(best.score) {
			best = t
		}
	}
	return best
}

// from is the best trial found from some choices.
func (f *fitter) from(start map[string]int) *trial {
	s := &searching{f, f.try(start), trials}
	s.leap()
	return s.best
}

// ofRows reports whether a choice counts rows, and not stitches.
func (c choice) ofRows() bool {
	return strings.HasPrefix(c.name, "rows ") || strings.HasPrefix(c.name, firstRow)
}

// firstRow begins the name of a choice of the side of the work on which pieces begin.
const firstRow = "first row"

func (s score) done() bool { return s.broken+s.unlike+s.far == 0 }

// longer reports whether a piece is to be longer or shorter.
func (t *trial) longer(q *schematic.Piece) bool {
	return slices.ContainsFunc(q.Sections, func(s schematic.Section) bool { _, ok := t.f.extra[s]; return ok })
}

// sided reports whether the rows of a section go in twos, and the words of what follows it and asks for that.
func (f *fitter) sided(list []schematic.Section, s schematic.Section) (string, bool) {
	return (&schematic.Fitting{Steps: f.steps}).Sided(list, s)
}
