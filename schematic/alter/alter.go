// Package alter makes a pattern anew for a maker: at another gauge, body, size or length. Targets are the finished measurements;
// pieces that are joined share them, and what gives is told.
package alter

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"
)

// Request is what a maker wants otherwise than one published size. Lengths are in mm.
type Request struct {
	Size   int               // index of the size
	Gauges []schematic.Gauge // the maker's own, by the names of the pattern's; others follow the first, if it is among them, and else stay
	Body   units.Num         // how much longer the body is; negative for shorter
	Sleeve units.Num
	Parts  map[string]int // pieces that are taken in another size, by name
	Own    []Own          // a maker's own body, from which a graded pattern's counts are worked out
}

// Altered is the answer: the pattern in one size as published and as altered,
// both worked, and what differs.
type Altered struct {
	Before   *schematic.Pattern // one size, as published
	Pattern  *schematic.Pattern // one size, its counts altered
	Was, Now *schematic.Garment
	Changes  []Change
}

// Change is one number that an alteration changed.
type Change struct {
	Piece    string
	What     string
	Dim      expr.Dim
	Was, Now units.Num // counts, or mm
}

// Alter answers a request. Every count is worked out anew for the maker's gauge:
// stitches from the width that they made, rows from the height, shaping spread
// anew over the new rows. What it cannot keep is a finding: a shaping that does not fit, a join whose
// two edges no longer differ as they did, a kind of section that it cannot alter.
func Alter(p *schematic.Pattern, r Request) (*Altered, finding.List) {
	gauges, found := r.read(p)
	if found.Errors() {
		return nil, found
	}
	all, a := p, &Altered{Before: oneSize(p, r.Size, nil)}
	a.Was = schematic.Work(a.Before, 0)
	like := []*schematic.Garment{a.Was}
	if len(r.Own) > 0 {
		own, told := forBody(p, r.Size, r.Own)
		found = append(found, told...)
		if own == nil {
			return nil, found
		}
		if w, ok := placed(p, r.Own); ok {
			for i := w.low; i <= min(w.low+1, p.Sizes.Len()-1); i++ {
				like = append(like, schematic.Work(oneSize(p, i, nil), 0))
			}
		}
		p = own
	}
	t := alter(p, oneSize(p, r.Size, r.Parts), gauges, r, a.Was.Findings, &found)
	a.Pattern, a.Now = t.p, t.g
	a.Pattern.Finished = nil // written for the published size
	found = append(found, t.found...)
	if len(r.Gauges) > 0 {
		found = append(found, rulesKept(p, r.Size, a.Pattern)...)
	}
	if apart := r.grownApart(p, t.score.broken > 0); len(apart) > 0 {
		return nil, append(found, apart...)
	}
	found = append(found, t.contradictions(a.Was.Findings)...)
	found = append(found, t.gives()...)
	apart := t.joinsKept(a, like, len(r.Parts) > 0)
	for i := range apart {
		if fix := r.besides(all, a.Now, apart[i].Pos); fix != "" {
			apart[i].Fix = fix
		}
	}
	found = append(found, apart...)
	a.Changes = changes(a)
	found.Sort()
	if t.score.broken > 0 || apart.Errors() {
		return nil, found
	}
	return a, found
}

// read holds a request to the pattern, and gives the gauges as they are to be; what is wrong with it is an error.
func (r Request) read(p *schematic.Pattern) ([]schematic.Gauge, finding.List) {
	var found finding.List
	fail := func(format string, args ...any) {
		found = append(found, finding.Finding{Kind: "alter/request", Severity: finding.Error, Pos: p.SizesPos, Message: fmt.Sprintf(format, args...)})
	}
	if r.Size < 0 || r.Size >= p.Sizes.Len() {
		fail("there is no such size")
		return nil, found
	}
	for name, j := range r.Parts {
		if p.PieceNamed(name) == nil {
			fail("no piece called %q that could be in another size", name)
		} else if j < 0 || j >= p.Sizes.Len() {
			fail("there is no such size for %q", name)
		}
	}
	gauges, given := slices.Clone(p.Gauges), make([]bool, len(p.Gauges))
	for _, g := range r.Gauges {
		at := slices.IndexFunc(gauges, func(h schematic.Gauge) bool { return strings.EqualFold(h.Name, g.Name) || g.Name == "" })
		switch {
		case at < 0:
			fail("there is no gauge called %q in the pattern", g.Name)
		case g.Stitches.Sign() <= 0 || g.Rows.Sign() <= 0 || g.Over.Sign() <= 0:
			fail("a gauge has stitches and rows over a length")
		default:
			given[at] = true
			gauges[at].Stitches, gauges[at].Rows, gauges[at].Over, gauges[at].OverUnit = g.Stitches, g.Rows, g.Over, g.OverUnit
		}
	}
	if !found.Errors() && len(given) > 0 && given[0] {
		inProportion(p, gauges, given, &found)
	}
	return gauges, found
}

// contradictions are what does not go together in a trial and did as published.
func (t *trial) contradictions(before finding.List) finding.List {
	var out finding.List
	for _, f := range t.g.Findings {
		if had(before, f) {
			continue
		}
		if contradicts(f) && t.score.broken > 0 {
			f.Severity = finding.Error
			f.Fix = "alter it by less, or one thing at a time"
		}
		out = append(out, f)
	}
	return out
}

// grownApart finds pieces that are to be in another size than the piece whose stitches they go on from, and would begin with other stitches than in their
// own size; if the garment is broken, all pieces whose size is another.
func (r Request) grownApart(p *schematic.Pattern, broken bool) finding.List {
	if len(r.Parts) == 0 {
		return nil
	}
	var out finding.List
	next := schematic.Work(oneSize(p, r.Size, r.Parts), 0)
	begins := func(g *schematic.Garment, piece string) int {
		if m := madeIn(g, piece); m != nil && len(m.Steps) > 0 {
			return m.Steps[0].After
		}
		return 0
	}
	size := func(name string) int {
		if j, ok := r.Parts[name]; ok {
			return j
		}
		return r.Size
	}
	for _, q := range p.Pieces {
		for _, from := range schematic.BeginsFrom(q) {
			at, of := size(q.Name), size(from)
			if at == of || p.PieceNamed(from) == nil || !broken && begins(next, q.Name) == begins(schematic.Work(p, at), q.Name) || slices.ContainsFunc(out, func(f finding.Finding) bool { return f.Piece == q.Name }) {
				continue
			}
			f := finding.Finding{Kind: "alter/request", Severity: finding.Error, Pos: q.Pos, Piece: q.Name,
				Message: fmt.Sprintf("%s in size %s can't go on from %s in size %s: their stitches differ", q.Name, p.Sizes.Names[at], from, p.Sizes.Names[of])}
			other, want := from, at
			if at == r.Size {
				other, want = q.Name, of
			}
			f.Fix = fmt.Sprintf("choose size %s for %s too, and for what goes on from it", p.Sizes.Names[want], other)
			out = append(out, f)
		}
	}
	return out
}

// alter is the best way to answer a request that was found.
func alter(p, next *schematic.Pattern, gauges []schematic.Gauge, r Request, before finding.List, found *finding.List) *trial {
	f := newFitter(next, gauges, before)
	f.grading, f.ribs = p.Grading, ribsOf(p)
	best := f.asPublished()
	if !sameGauges(next.Gauges, gauges) {
		best = f.search()
		if len(p.Grading) > 0 {
			g := *f
			g.graded = &regrading{p: p, gauges: gauges, size: r.Size, parts: r.Parts, own: len(r.Own) > 0}
			if t := g.search(); g.graded.own && t.score.broken == 0 || t.score.broken <= best.score.broken && t.score.unlike <= best.score.unlike && t.score.far <= best.score.far+regraded && !best.worst().Add(tooFar).Less(t.worst()) {
				f, best = &g, t
			} else {
				*found = append(*found, finding.Finding{Kind: "alter/section", Severity: finding.Note, Pos: p.Grading[0].Pos,
					Message: "worked out of the grading at your gauge, the garment would keep its measurements less well: its counts are those nearest to the measurements as published"})
			}
		}
	}
	return longer(f, best, r, found)
}

// regraded is by how much farther off a garment that goes through its grading may be, reckoned as in a score, than
// one whose counts are chosen freely (a choice of this project).
const regraded = 8

// worst is by how many of its stitches or rows the measurement is off that is off the most.
func (t *trial) worst() (most units.Num) {
	for k, m := range t.g.Pieces[:min(len(t.g.Pieces), len(t.f.base.Pieces))] {
		t.compare(t.f.base.Pieces[k], m, func(_, _ schematic.Measure, off units.Num) { most = units.Max(most, off) })
	}
	return most
}

func sameGauges(a, b []schematic.Gauge) bool {
	for i := range a {
		if !a[i].StitchWidth().Eq(b[i].StitchWidth()) || !a[i].RowHeight().Eq(b[i].RowHeight()) {
			return false
		}
	}
	return true
}

// asPublished is the garment as it is, with the maker's names for its gauges.
func (f *fitter) asPublished() *trial {
	q := *f.was
	q.Gauges = f.gauges
	t := &trial{f: f, p: &q, g: f.base, bad: map[string]bool{}}
	t.judge()
	return t
}

// inProportion reckons the gauges that the maker does not tell from the first: who makes
// the fabric denser makes the ribs denser (common practice). It says so of each.
func inProportion(p *schematic.Pattern, gauges []schematic.Gauge, given []bool, found *finding.List) {
	was, now := p.Gauges[0], gauges[0]
	sts, rows := was.StitchWidth().Div(now.StitchWidth()), was.RowHeight().Div(now.RowHeight())
	if sts.Eq(units.Int(1)) && rows.Eq(units.Int(1)) {
		return
	}
	quarter := units.Frac(1, 4)
	for i := range gauges {
		g := &gauges[i]
		if given[i] {
			continue
		}
		g.Stitches = units.Max(quarter, g.Stitches.Mul(sts).RoundTo(quarter))
		g.Rows = units.Max(quarter, g.Rows.Mul(rows).RoundTo(quarter))
		*found = append(*found, finding.Finding{Kind: "alter/gauge", Severity: finding.Note, Pos: g.Pos,
			Message: fmt.Sprintf("the gauge %s is scaled in proportion to %s: %s sts and %s rows over %s %s", g.Name, now.Name,
				units.Decimal(g.Stitches, 2), units.Decimal(g.Rows, 2), units.Mixed(units.In(g.Over, g.OverUnit)), g.OverUnit),
			Fix: "give your own swatch's, if it differs"})
	}
}

func had(l finding.List, f finding.Finding) bool {
	return slices.ContainsFunc(l, func(g finding.Finding) bool { return g.Kind == f.Kind && g.Pos == f.Pos })
}

// longer makes a body or a sleeve longer or shorter, with the choices of the trial t, and tells where whole
// rows do not come to the length that was asked for.
func longer(f *fitter, t *trial, r Request, found *finding.List) *trial {
	var body []schematic.Kind
	for _, kinds := range bodies {
		if body = kinds; slices.ContainsFunc(f.was.Pieces, func(q *schematic.Piece) bool { return slices.Contains(kinds, q.Kind) }) {
			break
		}
	}
	l := &lengthener{f: f, found: found, by: map[schematic.Section]units.Num{}}
	for _, part := range []struct {
		by    units.Num
		of    string
		kinds []schematic.Kind
	}{
		{r.Body, "body, back, front, skirt, hat, mitten or sock", body},
		{r.Sleeve, "sleeve", []schematic.Kind{schematic.KindSleeve}},
	} {
		if part.by.Sign() != 0 && !l.ask(part.by, part.kinds) {
			l.warn(finding.Pos{}, "", fmt.Sprintf("the pattern has no %s, so nothing was made longer or shorter", part.of))
		}
	}
	if len(l.by) == 0 {
		return t
	}
	zero := map[schematic.Section]units.Num{}
	for s := range l.by {
		zero[s] = units.Num{}
	}
	g := *f
	g.extra = zero
	before := g.try(t.moved)
	g.extra = l.by
	g.start = t.moved
	after := g.search()
	l.tell(before, after)
	return after
}

// bodies are the pieces that are a pattern's body, the first of these that it has: a sock is made longer in its leg.
var bodies = [][]schematic.Kind{{schematic.KindBody, schematic.KindBack, schematic.KindFront}, {schematic.KindSkirt}, {schematic.KindHat, schematic.KindMitten, schematic.KindSock}}

// lengthener adds rows, or in a piece worked from side to side stitches, to a body or a sleeve.
type lengthener struct {
	f     *fitter
	found *finding.List
	by    map[schematic.Section]units.Num
}

func (l *lengthener) warn(pos finding.Pos, piece, message string) {
	*l.found = append(*l.found, finding.Finding{Kind: "alter/length", Severity: finding.Warning, Pos: pos, Piece: piece, Message: message})
}

// ask has all pieces of some kinds made longer; false if there is none.
func (l *lengthener) ask(by units.Num, kinds []schematic.Kind) bool {
	there := false
	for _, q := range l.f.was.Pieces {
		if q.MirrorOf != "" || !slices.Contains(kinds, q.Kind) {
			continue
		}
		there = true
		if schematic.SideToSide(q) {
			l.along(q, by)
			continue
		}
		l.up(q, by)
	}
	return there
}

// up has a piece made longer in its longest stretch worked even, or where that is too short for it in all its stretches, each in proportion.
func (l *lengthener) up(q *schematic.Piece, by units.Num) {
	high := func(list ...schematic.Section) (sum units.Num) {
		for _, s := range list {
			sum = sum.Add(l.f.was.GaugeNamed(l.f.steps[s].Gauge).RowHeight().Times(l.f.steps[s].Rows))
		}
		return sum
	}
	holds := func(high units.Num) bool { return !high.Add(by).Less(high.Div(units.Int(4))) }
	if s := schematic.Longest(q, func(s schematic.Section) int { return l.f.steps[s].Rows }); s != nil && holds(high(s)) {
		l.by[s] = by
		return
	}
	all := schematic.Stretches(q)
	switch sum := high(all...); {
	case sum.Sign() == 0:
		l.warn(q.Pos, q.Name, fmt.Sprintf("%s has no stretch that could be longer or shorter", q.Name))
	case !holds(sum):
		l.warn(q.Pos, q.Name, fmt.Sprintf("%s can't become %s shorter: its stretches outside armholes and rib are %s together", q.Name, both(l.f.was, by.Abs()), both(l.f.was, sum)))
	default:
		for _, s := range all {
			if h := high(s); h.Sign() > 0 {
				l.by[s] = by.Mul(h).Div(sum)
			}
		}
	}
}

// along has a piece made longer whose length lies in its stitches.
func (l *lengthener) along(q *schematic.Piece, by units.Num) {
	s := schematic.StitchesAlong(q)
	if s == nil {
		l.warn(q.Pos, q.Name, fmt.Sprintf("%s is worked from side to side and shaped at both of its long edges: change its stitches in the pattern to make it longer or shorter", q.Name))
		return
	}
	n := l.f.steps[s].After
	width := l.f.was.GaugeNamed(l.f.steps[s].Gauge).StitchWidth()
	if long := width.Times(n); long.Add(by).Less(long.Div(units.Int(4))) {
		l.warn(s.Base().Pos, q.Name, fmt.Sprintf("%s can't become %s shorter: it begins with %d stitches, which are %s", q.Name, both(l.f.was, by.Abs()), n, both(l.f.was, long)))
		return
	}
	l.by[s] = by
}

// tell says where whole rows or stitches do not come to the length that was asked for, why, and what the other choice is.
func (l *lengthener) tell(before, after *trial) {
	for _, q := range l.f.was.Pieces {
		var last schematic.Section
		by, n := units.Num{}, 0
		for _, s := range q.Sections {
			if part, asked := l.by[s]; asked {
				last, by, n = s, by.Add(part), n+after.made[s]-before.made[s]
			}
		}
		if last != nil {
			l.came(q, last, by, n, after.twos[last])
		}
	}
}

// came tells of a piece that was to be higher by a length, and is by n rows, of which s has the last.
func (l *lengthener) came(q *schematic.Piece, s schematic.Section, by units.Num, n int, twos bool) {
	g, of := schematic.GaugeIn(l.f.gauges, l.f.steps[s].Gauge), "row"
	row, high := g.RowHeight(), "high"
	if schematic.SideToSide(q) {
		of, row, high = "stitch", g.StitchWidth(), "wide"
	}
	made := row.Times(n)
	if steps := l.f.was.Steps; steps.Format(made, l.f.was.Units) == steps.Format(by, l.f.was.Units) {
		return // as it is printed
	}
	next, sided := l.f.sided(q.Sections, s)
	if !sided {
		next = "piece beside it"
	}
	step, why := 1, fmt.Sprintf("a %s is %s %s", of, shaping.LongIn(row, l.f.was.Units), high)
	if of == "row" && (sided || twos) {
		step, why = 2, fmt.Sprintf("rows go in twos there, since the %s must begin on the same side of the work, and two rows are %s high", next, shaping.LongIn(row.Times(2), l.f.was.Units))
	}
	other := n - step
	if made.Less(by) {
		other = n + step
	}
	way := "longer"
	if by.Sign() < 0 {
		way = "shorter"
	}
	who := q.Name + " becomes"
	for _, m := range l.f.was.Pieces {
		if m.MirrorOf == q.Name {
			who = q.Name + " and " + m.Name + " become"
		}
	}
	*l.found = append(*l.found, finding.Finding{Kind: "alter/length", Severity: finding.Note, Pos: s.Base().Pos, Piece: q.Name,
		Message: fmt.Sprintf("%s %s %s, not %s: %s", who, shaping.LongIn(made.Abs(), l.f.was.Units), way, shaping.LongIn(by.Abs(), l.f.was.Units), why),
		Have:    fmt.Sprintf("%+d %s", n, many(of)),
		Fix:     fmt.Sprintf("%+d %s would make it %s %s", other, many(of), shaping.LongIn(row.Times(other).Abs(), l.f.was.Units), way)})
}

func many(of string) string {
	if of == "stitch" {
		return "stitches"
	}
	return of + "s"
}

// joinsKept tells of joins whose two edges differ in another way than in any of the published sizes like it, by
// more than a stitch and a row; where they can't be sewn to each other any more it is an error, unless the maker has
// chosen pieces of several sizes herself.
func (t *trial) joinsKept(a *Altered, like []*schematic.Garment, chosen bool) finding.List {
	var out finding.List
	for _, now := range a.Now.Seams {
		was, ok := nearest(like, now)
		if !ok {
			continue
		}
		g := a.Pattern.GaugeNamed("")
		edges := max(len(now.Sew), len(now.Into)) // both sleeves in the armholes of both sides are four, each off by as much
		one := units.Max(g.StitchWidth(), g.RowHeight())
		slack := one.Times(max(2, edges))
		before, after := was.SewLength.Sub(was.IntoLength), now.SewLength.Sub(now.IntoLength)
		if !slack.Less(after.Sub(before).Abs()) && !t.parted(was, now) && !t.loosened(was, now) {
			continue
		}
		f := finding.Finding{Kind: "alter/join", Severity: finding.Warning, Pos: now.Join.Pos,
			Message: fmt.Sprintf("the join of %s and %s is not kept", strings.Join(now.Join.Sew, ", "), strings.Join(now.Join.Into, ", ")),
			Have:    sewn(now, a.Pattern.Units), Want: sewn(was, a.Pattern.Units) + ", as published",
			Fix: "alter the other piece the same way, or ease the difference in"}
		if more := after.Abs().Sub(before.Abs()); !chosen && one.Times(2*edges).Less(more) && eased.Mul(units.Min(now.SewLength, now.IntoLength)).Less(more) {
			f.Severity = finding.Error
			f.Message += fmt.Sprintf(": one is %s longer than the other, more than can be eased in", both(a.Pattern, after.Abs()))
			f.Fix = "alter the other piece the same way, or also give the measurement that the other edge comes from"
		}
		out = append(out, f)
	}
	return out
}

// besides is the fix for a join of which one piece alone is in a size of its own: the other in that size too, or the difference eased in or worked off.
// It is empty for any other join.
func (r Request) besides(p *schematic.Pattern, now *schematic.Garment, join finding.Pos) string {
	i := slices.IndexFunc(now.Seams, func(s schematic.Seam) bool { return s.Join.Pos == join })
	if i < 0 || len(r.Parts) == 0 {
		return ""
	}
	s := &now.Seams[i]
	if len(s.Join.Into) == 0 {
		return ""
	}
	for _, side := range [][2]string{{s.Join.Sew[0], s.Join.Into[0]}, {s.Join.Into[0], s.Join.Sew[0]}} {
		m, _ := now.EdgesOf(side[0])
		other, _ := now.EdgesOf(side[1])
		if m == nil || other == nil {
			continue
		}
		size, chosen := r.Parts[m.Name]
		if _, too := r.Parts[other.Name]; !chosen || too {
			continue
		}
		apart := s.SewLength.Sub(s.IntoLength).Abs()
		how := fmt.Sprintf("ease in %s", both(p, apart))
		if row := now.Pattern.GaugeNamed("").RowHeight(); ofRows(s.Sew) && ofRows(s.Into) && len(s.Sew) == len(s.Into) {
			longer := s.Join.Sew[0]
			if s.SewLength.Less(s.IntoLength) {
				longer = s.Join.Into[0]
			}
			n := int(apart.Div(units.Int(int64(len(s.Sew)))).Div(row).Round())
			how = fmt.Sprintf("work %d %s fewer along %s, where nothing is shaped", n, plural(int64(n), "row", "rows"), longer)
		}
		return fmt.Sprintf("choose size %s for %s too, or %s", p.Sizes.Names[size], other.Name, how)
	}
	return ""
}

// sewn is how long the edges of a join are, and of how many pieces.
func sewn(s schematic.Seam, u units.Unit) string {
	of := func(l units.Num, pieces string) string {
		if pieces == "" {
			return shaping.LongIn(l, u)
		}
		return fmt.Sprintf("%s (%s)", shaping.LongIn(l, u), pieces)
	}
	return of(s.SewLength, s.SewOf) + " and " + of(s.IntoLength, s.IntoOf)
}

// nearest is a join in that of some garments whose edges differ most as they do now; false if none has it, or if they
// differ now by no more than in one and no less than in another.
func nearest(like []*schematic.Garment, now schematic.Seam) (best schematic.Seam, ok bool) {
	differ := func(s schematic.Seam) units.Num { return s.SewLength.Sub(s.IntoLength) }
	var low, high, off units.Num
	for _, g := range like {
		for _, s := range g.Seams {
			if s.Number != now.Number {
				continue
			}
			d := differ(s).Sub(differ(now))
			low, high = units.Min(low, d), units.Max(high, d)
			if !ok || d.Abs().Less(off) {
				best, ok, off = s, true, d.Abs()
			}
		}
	}
	return best, ok && (low.Sign() == 0 || high.Sign() == 0)
}

// eased is the most, as a part of the shorter edge, by which two edges may differ more than they did and still be sewn
// to each other (common practice: a twentieth is eased without a trace, a tenth with care).
var eased = units.Frac(1, 10)

// both is a length in both units, that of the pattern first.
func both(p *schematic.Pattern, mm units.Num) string { return p.Steps.Both(mm, p.Units) }

// changes are the measurements and counts that differ, piece by piece.
func changes(a *Altered) []Change {
	var out []Change
	was := map[string]*schematic.Made{}
	for _, m := range a.Was.Pieces {
		was[m.Name] = m
	}
	for _, m := range a.Now.Pieces {
		if old := was[m.Name]; old != nil {
			out = append(append(out, countsChanged(old, m)...), lengthsChanged(old, m)...)
		}
	}
	return out
}

// countsChanged are the counts of a piece that differ, section by section.
func countsChanged(old, now *schematic.Made) []Change {
	was, is := stepsInFile(old), stepsInFile(now)
	if len(was) != len(is) {
		return nil
	}
	var out []Change
	for i, s := range is {
		what := schematic.Words(was[i].Section)
		if s.Part != "" {
			what = s.Part + ": " + what
		}
		if x, y := was[i].After, s.After; x != y {
			out = append(out, Change{now.Name, what, expr.Stitches, units.Int(int64(x)), units.Int(int64(y))})
		}
		if x, y := was[i].Rows, s.Rows; x != y {
			out = append(out, Change{now.Name, what, expr.Rows, units.Int(int64(x)), units.Int(int64(y))})
		}
	}
	return out
}

// stepsInFile are those of a piece, with those of sections that stand for one in the file taken together.
func stepsInFile(m *schematic.Made) []schematic.Step {
	var out []schematic.Step
	for _, s := range m.Steps {
		if n := len(out) - 1; n >= 0 && out[n].Part == s.Part && sameInFile(out[n].Section, s.Section) {
			s.Rows += out[n].Rows
			s.Before = out[n].Before
			out = out[:n]
		}
		out = append(out, s)
	}
	return out
}

// lengthsChanged are the main measurements of a piece that differ, each once.
func lengthsChanged(old, now *schematic.Made) []Change {
	var out []Change
	lengths := map[string]units.Num{}
	for _, s := range old.Measures {
		lengths[s.ID] = s.Length
	}
	for _, s := range now.Measures {
		before, ok := lengths[s.ID]
		c := Change{now.Name, measureName(now, s), expr.LengthOf, before, s.Length}
		if ok && s.Main && !before.Eq(s.Length) && !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	return out
}
