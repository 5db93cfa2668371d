package grade

import (
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// Lengths are lengths of a pattern's garments, each under a key of its own, in mm, one a size.
type Lengths map[string]expr.Graded

// Follow is how one length of one size follows the values of the grading and the gauges: it is Rest and the sum of Terms, as long as
// every input in While is as it was. Where no such sum holds there are no terms, and While is all that moves it.
type Follow struct {
	Rest  units.Num // mm
	Terms []Term
	While []Input
}

// Term is By stitches wide, or rows high, of a gauge, times the values that are called Of.
type Term struct {
	By    units.Num
	Of    []string
	Gauge string
	Rows  bool
}

// Input is a value of a grading's sheet: one that has a name, or the stitches or rows of a gauge.
type Input struct {
	Name     string
	Gauge    string
	Rows     bool
	Positive bool // not as it was, but above 0
}

// Worked are the lengths of a pattern's garments, and how many findings each size has.
type Worked struct {
	Lengths Lengths
	Found   []int
}

// Follows finds how lengths follow what a pattern's pieces call: it works the garments with each value moved by a step, and two that stand
// together both; then it holds what it found against garments graded anew with other bodies, eases and gauges. The
// lengths are those that of tells of a pattern; values that searched names stay as they are when others change. It is nil where a pattern calls so
// much that this would take long.
func Follows(p *schematic.Pattern, of func(*schematic.Pattern) Worked, searched func(name string) bool) map[string][]Follow {
	plain := *p
	plain.Joins = nil // no length comes of one
	f := &follower{p: &plain, of: of, searched: searched, graded: map[string]bool{}, moved: map[string][2]run{}, both: map[[2]string]run{}, none: map[string]run{}, step: map[string]int64{}}
	for _, v := range p.Graded {
		f.graded[expr.Key(v.Name)] = true
	}
	for _, b := range p.Bodies {
		f.graded[expr.Key(b.Name)] = true
	}
	f.env = Envs(p)
	f.calls()
	if f.runs()*p.Sizes.Len()*f.sections() > most {
		return nil
	}
	f.measure()
	f.move()
	trials := f.trials()
	out := map[string][]Follow{}
	for key, l := range f.base.Lengths {
		out[key] = make([]Follow, len(l.Vals))
		for s := range l.Vals {
			if l.Has[s] {
				h := following{follower: f, key: key, s: s, was: l.Vals[s]}
				out[key][s] = h.held(trials)
			}
		}
	}
	return out
}

type follower struct {
	p        *schematic.Pattern
	of       func(*schematic.Pattern) Worked
	searched func(string) bool
	graded   map[string]bool // values that have a name of their own
	env      func(size int) expr.Env
	names    []string    // that the pieces call
	pairs    [][2]string // of those, called near each other
	units    []unit
	base     Worked
	parts    map[string][][]units.Num // of each length and size, how many of each unit
	probe    *schematic.Pattern       // of gauges in which no unit is a simple part of another
	probed   Worked
	step     map[string]int64
	moved    map[string][2]run // a value a step up, and down
	none     map[string]run    // a value at 0
	both     map[[2]string]run // two a step up
}

// unit is a stitch or a row of a gauge: as it is, and as it is in the probe.
type unit struct {
	gauge     string
	rows      bool
	is, probe units.Num // mm
}

// run is what a move gives; not ok if it can't be worked.
type run struct {
	Worked
	ok bool
}

// calls finds what the pieces call. An everyday shaping is so many stitches every so many rows so many times: names called up to near calls
// apart may stand for numbers that are multiplied.
func (f *follower) calls() {
	var order []string
	note := func(g expr.Graded) expr.Graded {
		if g.From != nil {
			for _, n := range g.From.Names() {
				if k := expr.Key(n); f.graded[k] {
					f.called(k, order)
					order = append(order, k)
				}
			}
		}
		return g
	}
	for _, q := range f.p.Pieces {
		q.With(note)
	}
}

// called notes a call after others.
func (f *follower) called(k string, before []string) {
	const near = 2
	if !slices.Contains(f.names, k) {
		f.names = append(f.names, k)
	}
	for _, o := range before[max(0, len(before)-near):] {
		if pair := [2]string{min(o, k), max(o, k)}; o != k && !slices.Contains(f.pairs, pair) {
			f.pairs = append(f.pairs, pair)
		}
	}
}

// most is how many sections are worked for the lengths of one pattern, and capSearch how many a cap counts for, which is searched anew: some
// seconds in all (choices of this project).
const most, capSearch = 150_000, 50

// runs is about how often the garments are worked.
func (f *follower) runs() int {
	return 3*len(f.names) + len(f.pairs) + 3*(len(f.p.Bodies)+len(f.p.Grading)+1) + 8*len(f.p.Gauges)
}

// sections are the sections that are worked in one size, and what else takes as long: a measurement that is written is looked for in
// every piece, and a piece is held against those like it.
func (f *follower) sections() int {
	pieces := len(f.p.Pieces)
	n := pieces*len(f.p.Finished) + pieces*pieces/10
	for i := range f.p.Grading {
		if f.p.Grading[i].Kind == schematic.GradeCap {
			n += capSearch
		}
	}
	for _, q := range f.p.Pieces {
		n += 1 + len(q.Sections)
		if q.Motifs != nil {
			n += q.Motifs.Columns.Int(0, 0) * q.Motifs.Rows.Int(0, 0)
		}
		for _, s := range q.Sections {
			for _, part := range s.Traits().Parts {
				n += len(part.Sections)
			}
		}
	}
	return n
}

// with is the pattern with its pieces worked of other values; false if one of its numbers can't be.
func (f *follower) with(p *schematic.Pattern, env func(size int) expr.Env) (*schematic.Pattern, bool) {
	q, ok := *p, true
	q.Pieces = make([]*schematic.Piece, len(p.Pieces))
	for i, piece := range p.Pieces {
		q.Pieces[i] = piece.With(func(g expr.Graded) expr.Graded {
			if g.From == nil {
				return g
			}
			out := expr.Graded{Vals: make([]units.Num, len(g.Vals)), Has: make([]bool, len(g.Vals)), From: g.From}
			for s := range g.Vals {
				v, bad := g.From.Eval(env(s))
				whole := !g.Has[s] || !g.Vals[s].IsInt() || v.N.IsInt()
				ok = ok && bad == nil && (!v.Has || v.N.Sign() >= 0 && whole)
				out.Vals[s], out.Has[s] = v.N, v.Has
			}
			return out
		})
	}
	return &q, ok
}

// shifted are the values with some of them moved.
func (f *follower) shifted(by map[string]int64) func(size int) expr.Env {
	return func(size int) expr.Env {
		env := f.env(size)
		return func(name string) (expr.Value, bool) {
			v, ok := env(name)
			if n := by[expr.Key(name)]; ok && n != 0 {
				v.N = v.N.Add(units.Int(n))
			}
			return v, ok
		}
	}
}

// finer has the stitches of a gauge wider, or its rows higher, by a part of themselves.
func finer(p *schematic.Pattern, gauge int, rows bool, by units.Num) *schematic.Pattern {
	q := *p
	q.Gauges = slices.Clone(p.Gauges)
	g, part := &q.Gauges[gauge], units.Int(1).Add(by)
	if rows {
		g.Rows = g.Rows.Div(part)
	} else {
		g.Stitches = g.Stitches.Div(part)
	}
	return &q
}

func size(g schematic.Gauge, rows bool) units.Num {
	if rows {
		return g.RowHeight()
	}
	return g.StitchWidth()
}

// measure takes the lengths apart: of how many stitches and rows of each gauge they are. A gauge is changed by so little that no row more or
// fewer comes to a length; where one does, the other way.
func (f *follower) measure() {
	f.base, f.parts, f.probe = f.of(f.p), map[string][][]units.Num{}, f.p
	for key, l := range f.base.Lengths {
		f.parts[key] = make([][]units.Num, len(l.Vals))
	}
	for g := range f.p.Gauges {
		for _, rows := range []bool{false, true} {
			u := unit{gauge: f.p.Gauges[g].Name, rows: rows, is: size(f.p.Gauges[g], rows)}
			by := units.Frac(1, 4096+int64(len(f.units))*7)
			counts, all := f.made(finer(f.p, g, rows, by), by.Mul(u.is))
			if other, less := f.made(finer(f.p, g, rows, by.Neg()), by.Mul(u.is).Neg()); less.Less(all) {
				counts, by = other, by.Neg()
			}
			f.probe = finer(f.probe, g, rows, by)
			u.probe = size(f.probe.Gauges[g], rows)
			f.units = append(f.units, u)
			for key, sizes := range counts {
				for s, n := range sizes {
					f.parts[key][s] = append(f.parts[key][s], n)
				}
			}
		}
	}
	f.probed = f.of(f.probe)
}

// made is of how many of a unit each length is made, where that is larger by so much, and all of them together.
func (f *follower) made(p *schematic.Pattern, by units.Num) (counts map[string][]units.Num, all units.Num) {
	now := f.of(p).Lengths
	counts = map[string][]units.Num{}
	for key, l := range f.base.Lengths {
		for s, was := range l.Vals {
			is, _ := now[key].At(s)
			n := is.Sub(was).Div(by)
			counts[key] = append(counts[key], n)
			all = all.Add(n.Abs())
		}
	}
	return counts, all
}

// plain reports whether a number of stitches or rows is one that a measurement may have: whole, or of halves, thirds or quarters.
func plain(n units.Num) bool { return n.Times(4).IsInt() || n.Times(3).IsInt() }

// move works the probe with each value moved, and with two.
func (f *follower) move() {
	for _, n := range f.names {
		for _, by := range []int64{1, 2, 4} { // halves and quarters of a count stay whole
			up, down := f.shift(map[string]int64{n: by}), f.shift(map[string]int64{n: -by})
			if up.ok || down.ok {
				f.step[n], f.moved[n] = by, [2]run{up, down}
				break
			}
		}
		if q, ok := f.with(f.probe, f.without(n)); ok {
			f.none[n] = run{f.of(q), true}
		}
	}
	for _, pair := range f.pairs {
		if a, b := pair[0], pair[1]; f.moved[a][0].ok && f.moved[b][0].ok {
			f.both[pair] = f.shift(map[string]int64{a: f.step[a], b: f.step[b]})
		}
	}
}

// without are the values with one of them 0.
func (f *follower) without(n string) func(size int) expr.Env {
	return func(size int) expr.Env {
		env := f.env(size)
		return func(name string) (expr.Value, bool) {
			v, ok := env(name)
			if expr.Key(name) == n {
				v.N = units.Num{}
			}
			return v, ok
		}
	}
}

func (f *follower) shift(by map[string]int64) run {
	q, ok := f.with(f.probe, f.shifted(by))
	if !ok {
		return run{}
	}
	return run{f.of(q), true}
}

// following is one length in one size.
type following struct {
	*follower
	key string
	s   int
	was units.Num
}

// sound reports whether a run can be worked without findings that the garment as it is has not.
func (h *following) sound(r run) bool { return r.ok && r.Found[h.s] <= h.probed.Found[h.s] }

// best is the run of a value's two that tells more, and by how much it moves the value: that up, unless it alone has findings.
func (h *following) best(n string) (run, int64) {
	up, down := h.moved[n][0], h.moved[n][1]
	if down.ok && (!up.ok || !h.sound(up) && down.Found[h.s] < up.Found[h.s]) {
		return down, -h.step[n]
	}
	return up, h.step[n]
}

// together reports whether a run of two values tells more than those of each: both go up, and have no findings that neither alone has.
func (h *following) together(r run, a, b string) bool {
	x, stepX := h.best(a)
	y, stepY := h.best(b)
	return r.ok && stepX > 0 && stepY > 0 && r.Found[h.s] <= max(x.Found[h.s], y.Found[h.s])
}

// change is how a run changes the length in the probe, in units: at most of one kind. It is not ok if it is of several.
func (h *following) change(r run) (d units.Num, ok bool) {
	now, has := r.Lengths[h.key].At(h.s)
	was, had := h.probed.Lengths[h.key].At(h.s)
	return now.Sub(was), has && had
}

// in is a length of the probe in units: which, and how many. A count is whole, or has halves or quarters.
func (h *following) in(d units.Num) (u int, n units.Num, ok bool) {
	for i, x := range h.units {
		if n := d.Div(x.probe); plain(n) {
			return i, n, true
		}
	}
	return 0, n, d.Sign() == 0
}

// sum is that for the length: its coefficients are those of a + Σ b·x + Σ c·x·y, where x and y are as the sheet has them.
func (h *following) sum() (Follow, bool) {
	c := coefficients{h: h, constant: slices.Clone(h.parts[h.key][h.s]), by: map[string][]units.Num{}}
	for _, n := range h.names {
		if !c.moved(n) {
			return Follow{}, false
		}
	}
	for _, pair := range h.pairs {
		if !c.together(h.both[pair], pair[0], pair[1]) {
			return Follow{}, false
		}
	}
	return c.follow(), true
}

// coefficients are those of a sum in the making, each in every unit.
type coefficients struct {
	h        *following
	constant []units.Num
	by       map[string][]units.Num
	products []Term
}

func (c *coefficients) value(n string) units.Num {
	v, _ := c.h.env(c.h.s)(n)
	return v.N
}

func (c *coefficients) add(n string, u int, k units.Num) {
	if c.by[n] == nil {
		c.by[n] = make([]units.Num, len(c.h.units))
	}
	c.by[n][u] = c.by[n][u].Add(k)
}

// moved adds what one value moves; false if that is of no one unit.
func (c *coefficients) moved(n string) bool {
	r, step := c.h.best(n)
	d, has := c.h.change(r)
	u, k, ok := c.h.in(d)
	if has && !c.h.sound(r) && (!ok || c.h.units[u].rows) {
		return true // shaped beyond its rows: its rows are not what such a value moves, if the trials hold
	}
	if !has || !ok {
		return false
	}
	k = k.Div(units.Int(step))
	c.add(n, u, k)
	c.constant[u] = c.constant[u].Sub(k.Mul(c.value(n)))
	return true
}

// together adds what two values move beyond what each does.
func (c *coefficients) together(r run, a, b string) bool {
	if !c.h.together(r, a, b) {
		return true
	}
	d, has := c.h.change(r)
	x, hasX := c.h.change(c.h.follower.moved[a][0])
	y, hasY := c.h.change(c.h.follower.moved[b][0])
	u, k, ok := c.h.in(d.Sub(x).Sub(y))
	if !has || !hasX || !hasY || !ok {
		return false
	}
	if k = k.Div(units.Int(c.h.step[a] * c.h.step[b])); k.Sign() == 0 {
		return true
	}
	c.add(a, u, k.Mul(c.value(b)).Neg())
	c.add(b, u, k.Mul(c.value(a)).Neg())
	c.constant[u] = c.constant[u].Add(k.Mul(c.value(a)).Mul(c.value(b)))
	c.products = append(c.products, c.h.term(k, u, a, b))
	return true
}

// follow is the sum; what no unit makes is its rest.
func (c *coefficients) follow() Follow {
	out := Follow{Rest: c.h.was, Terms: c.products}
	for u, k := range c.constant {
		for _, n := range c.h.names {
			if by := c.by[n]; by != nil && by[u].Sign() != 0 {
				out.Terms = append(out.Terms, c.h.term(by[u], u, n))
			}
		}
		if k.Sign() != 0 {
			out.Terms = append(out.Terms, c.h.term(k, u))
		}
		out.Rest = out.Rest.Sub(c.h.parts[c.h.key][c.h.s][u].Mul(c.h.units[u].is))
	}
	return out
}

func (h *following) term(by units.Num, u int, of ...string) Term {
	return Term{By: by, Of: of, Gauge: h.units[u].gauge, Rows: h.units[u].rows}
}

// close is how near a length must come, in mm: sums of large fractions are rounded.
var close = units.Frac(1, 100_000)

func (h *following) now(t *trial) (units.Num, bool) { return t.now.Lengths[h.key].At(h.s) }

// held holds the sum against all trials. Where it does not hold for another gauge, it holds while that gauge is
// as it was; where it does not for other values, the length holds while nothing that moves it changes.
func (h *following) held(trials []trial) Follow {
	out, ok := h.sum()
	if !ok {
		return h.kept(trials)
	}
	sum := out
	for _, n := range h.names {
		t := trial{p: h.probe, sheet: h.without(n), now: h.none[n]}
		v, _ := h.env(h.s)(n)
		if now, has := h.now(&t); v.N.Sign() > 0 && h.sound(t.now) && !(has && now.Sub(t.length(sum, h.s)).Abs().Less(close)) {
			out.add([]Input{{Name: n, Positive: true}})
		}
	}
	for i := range trials {
		t := &trials[i]
		now, has := h.now(t)
		switch {
		case t.called && !h.sound(t.now), out.out(t.sheet(h.s)), has && now.Sub(t.length(sum, h.s)).Abs().Less(close):
		case !t.gauges():
			return h.kept(trials)
		default:
			out.add(t.inputs)
		}
	}
	return out
}

// out reports whether a value that is to stay above 0 does not.
func (f *Follow) out(env expr.Env) bool {
	return slices.ContainsFunc(f.While, func(in Input) bool {
		v, _ := env(in.Name)
		return in.Positive && v.N.Sign() <= 0
	})
}

// kept is the length as it is, while all that moves it is as it was: values first, then what moves it and none of them.
func (h *following) kept(trials []trial) Follow {
	out := Follow{Rest: h.was}
	for _, n := range h.names {
		r, _ := h.best(n)
		if d, has := h.change(r); !has || d.Sign() != 0 {
			out.add([]Input{{Name: n}})
		}
	}
	for i := range trials {
		t := &trials[i]
		now, has := h.now(t)
		if t.called || has && now.Sub(h.was).Abs().Less(close) || !t.gauges() && h.seen(t, out.While) {
			continue
		}
		out.add(t.inputs)
	}
	if slices.ContainsFunc(out.While, func(in Input) bool { return h.searched(in.Name) }) {
		out.answers(trials)
	}
	return out
}

// answers adds all that is graded from: a search may answer to any of them.
func (f *Follow) answers(trials []trial) {
	for i := range trials {
		if t := &trials[i]; !t.called {
			f.add(t.inputs)
		}
	}
}

// seen reports whether a trial changes one of some inputs by itself.
func (h *following) seen(t *trial, all []Input) bool {
	was, is := h.env(h.s), t.sheet(h.s)
	return slices.ContainsFunc(all, func(in Input) bool {
		if in.Name == "" {
			return false
		}
		a, _ := was(in.Name)
		b, _ := is(in.Name)
		return slices.Contains(t.inputs, in) || a.Has != b.Has || !a.N.Eq(b.N)
	})
}

func (f *Follow) add(all []Input) {
	for _, in := range all {
		if !slices.Contains(f.While, in) {
			f.While = append(f.While, in)
		}
	}
}

// trial is a pattern with other inputs, its lengths, and the values that its sheet has then.
type trial struct {
	inputs []Input
	p      *schematic.Pattern
	sheet  func(size int) expr.Env // what is searched stays
	now    run
	called bool // one value is moved that pieces call, whatever its line of the grading says
}

func (t *trial) gauges() bool { return t.inputs[0].Gauge != "" }

// length is what a sum comes to in a trial.
func (t *trial) length(f Follow, s int) units.Num {
	sum, env := f.Rest, t.sheet(s)
	for _, term := range f.Terms {
		n := term.By.Mul(size(*schematic.GaugeIn(t.p.Gauges, term.Gauge), term.Rows))
		for _, name := range term.Of {
			v, _ := env(name)
			n = n.Mul(v.N)
		}
		sum = sum.Add(n)
	}
	return sum
}

// trials are garments with one input moved up and down, and with all lengths moved.
func (f *follower) trials() []trial {
	var out []trial
	for _, n := range f.names {
		for i, r := range f.moved[n] {
			by := f.step[n]
			if i > 0 {
				by = -by
			}
			out = append(out, trial{inputs: []Input{{Name: n}}, p: f.probe, sheet: f.shifted(map[string]int64{n: by}), now: r, called: true})
		}
	}
	given := f.given()
	for _, by := range [][2]int64{{10, 1}, {-25, -1}, {60, 2}} { // mm, stitches or rows
		for _, in := range given {
			out = f.regraded(out, f.p, []Input{in}, by)
		}
		out = f.regraded(out, f.p, given, by)
	}
	for g := range f.p.Gauges {
		for _, rows := range []bool{false, true} {
			for _, by := range []units.Num{units.Frac(1, 10), units.Frac(-1, 12)} {
				out = f.regraded(out, finer(f.p, g, rows, by), []Input{{Gauge: f.p.Gauges[g].Name, Rows: rows}}, [2]int64{})
			}
		}
	}
	return out
}

// given are the inputs that are numbers: bodies, and lines of the grading that call nothing.
func (f *follower) given() []Input {
	var out []Input
	for _, b := range f.p.Bodies {
		out = append(out, Input{Name: expr.Key(b.Name)})
	}
	for i := range f.p.Grading {
		if g := &f.p.Grading[i]; f.number(g) != nil {
			out = append(out, Input{Name: inputName(g)})
		}
	}
	return out
}

// inputName is that of the row of a sheet in which a line's number stands.
func inputName(g *schematic.Grading) string {
	if g.Kind == schematic.GradeValue {
		return expr.Key(g.Name)
	}
	return expr.Key(g.Name) + ", target"
}

// number is what a line of the grading gives by itself; nil if it calls something.
func (f *follower) number(g *schematic.Grading) *schematic.GradedValue {
	switch {
	case g.Kind != schematic.GradeValue && g.Kind != schematic.GradeStitches && g.Kind != schematic.GradeRows:
		return nil
	case g.Given != nil:
		return g.Given
	case g.Sum.Sum == nil || len(g.Sum.Sum.Names()) > 0:
		return nil
	}
	v, bad := g.Sum.Sum.Eval(f.env(0))
	if bad != nil {
		return nil
	}
	return &schematic.GradedValue{Name: g.Name, Dim: v.Dim, Vals: expr.Const(v.N, f.p.Sizes.Len())}
}

// regraded adds a trial: the pattern p graded anew with inputs moved by so many mm, or by so many stitches or rows.
func (f *follower) regraded(out []trial, p *schematic.Pattern, inputs []Input, by [2]int64) []trial {
	q := p
	if by != [2]int64{} {
		q = f.changed(p, inputs, by)
	}
	vals, found := Resolve(q)
	if found.Errors() {
		return out // so it can't be made at all
	}
	graded := *q
	graded.Graded = vals
	q = &graded
	env := Envs(q)
	worked, ok := f.with(q, env)
	if !ok {
		return out
	}
	return append(out, trial{inputs: inputs, p: q, now: run{f.of(worked), true}, sheet: func(size int) expr.Env {
		now, was := env(size), f.env(size)
		return func(name string) (expr.Value, bool) {
			if f.searched(expr.Key(name)) {
				return was(name)
			}
			return now(name)
		}
	}})
}

// changed is the pattern p with inputs moved by so many mm, or by so many stitches or rows.
func (f *follower) changed(p *schematic.Pattern, inputs []Input, by [2]int64) *schematic.Pattern {
	moved := func(g expr.Graded, d expr.Dim) expr.Graded {
		n := by[1]
		if d == expr.LengthOf {
			n = by[0]
		}
		g.Vals = slices.Clone(g.Vals)
		for i := range g.Vals {
			g.Vals[i] = g.Vals[i].Add(units.Int(n))
		}
		return g
	}
	q := *p
	q.Bodies, q.Grading = slices.Clone(p.Bodies), slices.Clone(p.Grading)
	for i := range q.Bodies {
		if b := &q.Bodies[i]; slices.Contains(inputs, Input{Name: expr.Key(b.Name)}) {
			b.Low, b.High = moved(b.Low, expr.LengthOf), moved(b.High, expr.LengthOf)
		}
	}
	for i := range q.Grading {
		g := &q.Grading[i]
		if v := f.number(g); v != nil && slices.Contains(inputs, Input{Name: inputName(g)}) {
			v := *v
			v.Vals = moved(v.Vals, v.Dim)
			g.Given, g.Sum = &v, schematic.GradedSum{}
		}
	}
	return &q
}
