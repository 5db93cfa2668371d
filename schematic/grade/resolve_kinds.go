package grade

import (
	"fmt"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"
)

// inputs are the sums of one line, worked out.
type inputs struct {
	r    *resolver
	i    int
	g    *schematic.Grading
	vals map[string]schematic.GradedValue
	ok   bool
}

func (r *resolver) work(i int) {
	if r.failed[i] {
		return
	}
	g := &r.p.Grading[i]
	in := &inputs{r: r, i: i, g: g, vals: map[string]schematic.GradedValue{}, ok: true}
	if g.Given != nil {
		in.vals[g.Kind.String()] = *g.Given
	}
	in.add(g.Kind.String(), g.Sum)
	for _, s := range wanted[g.Kind] {
		in.add(s.key, g.With[s.key])
	}
	for _, s := range wanted[g.Kind] {
		in.hold(s)
	}
	if in.ok {
		in.ok = in.give()
	}
	r.failed[i] = !in.ok
}

func (in *inputs) add(name string, s schematic.GradedSum) {
	if s.Sum == nil {
		return
	}
	v, ok := in.r.value(s)
	if !ok {
		in.ok = false
		return
	}
	in.vals[name] = v
}

// want is a sum that a kind of line takes: its key, what it must count, and
// whether the line can do without.
type want struct {
	key  string
	dims []expr.Dim
	may  bool
}

var (
	someStitches = []expr.Dim{expr.Stitches, expr.Plain}
	someRows     = []expr.Dim{expr.Rows, expr.Plain}
	aLength      = []expr.Dim{expr.LengthOf}
)

var wanted = map[schematic.GradingKind][]want{
	schematic.GradeValue:    {{"is", []expr.Dim{expr.LengthOf, expr.Stitches, expr.Rows, expr.Plain}, false}},
	schematic.GradeStitches: {{"stitches", []expr.Dim{expr.LengthOf, expr.Stitches, expr.Plain}, false}},
	schematic.GradeRows:     {{"rows", []expr.Dim{expr.LengthOf, expr.Rows, expr.Plain}, false}},
	schematic.GradeSpread:   {{"spread", someStitches, false}, {"over", someRows, false}},
	schematic.GradeArmhole:  {{"armhole", someStitches, false}, {"to", someStitches, false}, {"over", someRows, false}, {"first", someStitches, true}},
	schematic.GradeCap: {{"cap", someStitches, false}, {"armhole", aLength, false}, {"first", someStitches, false},
		{"ease", aLength, true}, {"top", aLength, true}},
	schematic.GradeRaglan: {{"raglan", someStitches, false}, {"front", someStitches, true}, {"sleeve", someStitches, false}, {"neck", someStitches, false},
		{"front neck", someStitches, true}, {"sleeve neck", someStitches, false}, {"underarm", someStitches, false}, {"over", someRows, false}},
	schematic.GradeYoke: {{"yoke", someStitches, false}, {"neck", someStitches, false}, {"over", someRows, false}, {"first", someRows, true}},
}

func (in *inputs) pos(key string) finding.Pos {
	if key == in.g.Kind.String() {
		return in.g.Sum.Pos
	}
	if s := in.g.With[key]; s.Sum != nil {
		return s.Pos
	}
	return in.g.Pos
}

// hold holds a sum to what it must count.
func (in *inputs) hold(w want) {
	v, ok := in.vals[w.key]
	if !ok {
		if !w.may && in.ok {
			in.ok = false
			in.r.fail(in.g.Pos, "file/missing-key", "%q needs %q", in.g.Name, w.key).Fix = "add a line " + w.key + ": …"
		}
		return
	}
	if slices.Contains(w.dims, v.Dim) {
		return
	}
	in.ok = false
	f := in.r.fail(in.pos(w.key), "file/unit", "%q is %s here, and %s is needed", w.key, v.Dim, w.dims[0])
	if v.Dim == expr.LengthOf {
		f.Fix = "make whole stitches or rows of it first, in a line of its own: {stitches: …} or {rows: …}"
	}
}

// whole is the count of a sum in the size at hand; false if the size has none, or if
// it is no whole number, which is told.
func (in *inputs) whole(key string) (int, bool) {
	v, given := in.vals[key]
	if !given {
		return 0, false
	}
	n, has := v.Vals.At(in.r.size)
	if !has {
		return 0, false
	}
	if !n.IsInt() || units.Int(shaping.MaxCount).Less(n.Abs()) {
		in.sizeFail(key, "%q comes to %s, and a count must be whole", key, n).
			Fix = "round it in a line of its own: {stitches: …, even: yes}"
		return 0, false
	}
	return int(n.Floor()), true
}

func (in *inputs) length(key string) (units.Num, bool) {
	v, given := in.vals[key]
	if !given {
		return units.Num{}, false
	}
	return v.Vals.At(in.r.size)
}

// sizeFail tells of something wrong in the size at hand.
func (in *inputs) sizeFail(key, format string, args ...any) *finding.Finding {
	in.ok = false
	size := in.r.p.Sizes.Names[in.r.size]
	f := in.r.fail(in.pos(key), "grading/impossible", format, args...)
	f.Sizes = []string{size}
	return f
}

// sheet gathers the values that a line gives, size by size.
type sheet struct {
	names []string
	dims  []expr.Dim
	vals  []expr.Graded
}

func (s *sheet) set(n, size int, name string, dim expr.Dim, v units.Num) {
	at := -1
	for i := range s.names {
		if s.names[i] == name {
			at = i
		}
	}
	if at < 0 {
		at = len(s.names)
		s.names, s.dims = append(s.names, name), append(s.dims, dim)
		s.vals = append(s.vals, expr.Graded{Vals: make([]units.Num, n), Has: make([]bool, n)})
	}
	s.vals[at].Vals[size], s.vals[at].Has[size] = v, true
}

func (in *inputs) give() bool {
	r, g := in.r, in.g
	if g.Kind == schematic.GradeValue {
		v := in.vals["is"]
		r.size = r.told.size
		in.tellSums()
		r.give(in.i, g.Name, v.Dim, v.Vals)
		return true
	}
	gauge := r.p.GaugeNamed(g.Gauge)
	if gauge == nil {
		r.fail(g.Pos, "file/reference", "there is no gauge called %q", g.Gauge)
		return false
	}
	n := r.p.Sizes.Len()
	s := &sheet{}
	var caps capsIn
	for r.size = range n {
		in.tellSums()
		put := func(name string, dim expr.Dim, v int) { s.set(n, r.size, name, dim, units.Int(int64(v))) }
		long := func(name string, v units.Num) { s.set(n, r.size, name, expr.LengthOf, v) }
		switch g.Kind {
		case schematic.GradeStitches, schematic.GradeRows:
			in.counted(gauge, put, long)
		case schematic.GradeSpread:
			in.spread(put)
		case schematic.GradeArmhole:
			in.armhole(shaping.ClothOf(*gauge), put, long)
		case schematic.GradeCap:
			in.cap(shaping.ClothOf(*gauge), &caps)
		case schematic.GradeRaglan:
			in.raglan(put)
		case schematic.GradeYoke:
			in.yoke(put)
		}
	}
	for i, p := range caps.plans(in) {
		r.size = caps.sizes[i]
		in.capped(caps.of[i], p, func(name string, dim expr.Dim, v units.Num) { s.set(n, r.size, name, dim, v) })
	}
	if !in.ok {
		return false
	}
	for i, name := range s.names {
		r.give(in.i, name, s.dims[i], s.vals[i])
	}
	// Names of which no size has a value are there all the same.
	for _, name := range gives(g) {
		if _, there := r.values[expr.Key(name)]; !there {
			r.give(in.i, name, expr.Plain, expr.Graded{Vals: make([]units.Num, n), Has: make([]bool, n)})
		}
	}
	return true
}

// rule is the rule of a count in the size at hand.
func (in *inputs) rule() shaping.Rule {
	g := in.g
	rule := shaping.Rule{Multiple: g.Multiple, Plus: g.Plus, Least: g.Least}
	switch {
	case g.Even:
		rule.Parity = shaping.Even
	case g.Odd:
		rule.Parity = shaping.Odd
	case g.Like != "":
		if v, ok := in.r.env(g.Like); ok && v.Has && v.N.IsInt() {
			rule.Parity = shaping.Like(int(v.N.Floor()))
		} else if !ok {
			in.ok = false
			in.r.fail(g.Pos, "file/reference", "nothing is called %q", g.Like).Want = "the name of a count"
		}
	}
	switch {
	case g.Up:
		rule.Round = shaping.AtLeast
	case g.Down:
		rule.Round = shaping.AtMost
	}
	return rule
}

func (in *inputs) counted(gauge *schematic.Gauge, put func(string, expr.Dim, int), long func(string, units.Num)) {
	each, dim, k := gauge.StitchWidth(), expr.Stitches, "stitches"
	if in.g.Kind == schematic.GradeRows {
		each, dim, k = gauge.RowHeight(), expr.Rows, "rows"
	}
	target, has := in.length(k)
	if !has {
		return
	}
	if in.vals[k].Dim != expr.LengthOf {
		target = each.Mul(target)
	}
	if target.Sign() < 0 {
		in.sizeFail(k, "%q comes to %s less than nothing", in.g.Name, shaping.LongIn(target.Neg(), in.r.p.Units))
		return
	}
	rule := in.rule()
	c, err := shaping.Count(target, each, rule)
	if err != nil {
		in.sizeFail(k, "%q: %v", in.g.Name, err)
		return
	}
	if in.telling() {
		in.tell(countWords(c, rule, dim, *gauge, in.vals[k].Dim == expr.LengthOf, in.r.p.Units)...)
	}
	put(in.g.Name, dim, c.Count)
	long(in.g.Name+" makes", c.Makes)
}

// runs gives the two spacings of a plan by name; a spacing that is not there has none times.
func (in *inputs) runs(name string, p shaping.Plan, put func(string, expr.Dim, int)) {
	two := [2]shaping.Run{{Every: 1}, {Every: 1}}
	copy(two[:], p.Runs)
	for i, tail := range []string{"", "then "} {
		put(name+" "+tail+"every", expr.Rows, two[i].Every)
		put(name+" "+tail+"times", expr.Plain, two[i].Times)
	}
	put(name+" rest", expr.Rows, p.Rest)
}

func (in *inputs) spread(put func(string, expr.Dim, int)) {
	count, ok := in.whole("spread")
	rows, ok2 := in.whole("over")
	if !ok || !ok2 {
		return
	}
	if count < 0 {
		in.sizeFail("spread", "%q: there are %d shapings to spread: the larger count is taken from the smaller", in.g.Name, count).Fix = "look for two swapped values, or a wrong digit"
		return
	}
	p, err := shaping.Spread(count, rows, shaping.RowStep(in.g.On), shaping.SlowFirst)
	if err != nil {
		in.sizeFail("spread", "%q: %v", in.g.Name, err).Fix = "give it more rows, or shape more stitches at a time and so less often"
		return
	}
	if in.telling() {
		in.tell(shaping.SpreadWords(count, rows, shaping.RowStep(in.g.On), p))
	}
	in.runs(in.g.Name, p, put)
}

func (in *inputs) armhole(c shaping.Cloth, put func(string, expr.Dim, int), long func(string, units.Num)) {
	body, ok := in.whole("armhole")
	cross, ok2 := in.whole("to")
	rows, ok3 := in.whole("over")
	if !ok || !ok2 || !ok3 {
		return
	}
	first, _ := in.whole("first")
	p, err := shaping.Armhole(shaping.ArmholeIn{Body: body, Cross: cross, Rows: rows, First: first, Step: shaping.RowStep(in.g.On), Leave: in.g.Leave, Cloth: c, Unit: in.r.p.Units})
	if err != nil {
		in.sizeFail("armhole", "%q: %v", in.g.Name, err)
		return
	}
	in.tell(p.Lines...)
	name := in.g.Name
	run, rest := shaping.Run{Every: 1}, 0
	for _, m := range p.Edge[1:] {
		if m.Even > 0 {
			rest = m.Even
		} else {
			run = shaping.Run{Every: m.Every, Times: m.Times}
		}
	}
	put(name+" first", expr.Stitches, p.First)
	put(name+" every", expr.Rows, run.Every)
	put(name+" times", expr.Plain, run.Times)
	put(name+" rest", expr.Rows, rest)
	long(name+" edge", shaping.Milli(p.Edge.Length(c)))
}

// capsIn are the caps of the sizes that have one, chosen together.
type capsIn struct {
	sizes []int
	of    []shaping.CapIn
}

func (in *inputs) cap(c shaping.Cloth, caps *capsIn) {
	upper, ok := in.whole("cap")
	first, ok2 := in.whole("first")
	armhole, ok3 := in.length("armhole")
	if !ok || !ok2 || !ok3 {
		return
	}
	ease, _ := in.length("ease")
	top, _ := in.length("top")
	caps.sizes = append(caps.sizes, in.r.size)
	caps.of = append(caps.of, shaping.CapIn{Upper: upper, First: first, Armhole: armhole, Ease: ease, Cloth: c, Step: shaping.RowStep(in.g.On), Leave: in.g.Leave, Top: top, Unit: in.r.p.Units})
}

// plans are the caps, and nothing if one of them cannot be, which is told.
func (c *capsIn) plans(in *inputs) []shaping.CapPlan {
	if !in.ok {
		return nil
	}
	plans, errs := shaping.Caps(c.of)
	for i, err := range errs {
		if err != nil {
			in.r.size = c.sizes[i]
			in.sizeFail("cap", "%q: %v", in.g.Name, err)
		}
	}
	return plans
}

// capped gives the cap of the size at hand.
func (in *inputs) capped(c shaping.CapIn, p shaping.CapPlan, set func(string, expr.Dim, units.Num)) {
	if !in.ok {
		return
	}
	in.tell(p.Lines...)
	name := in.g.Name
	put := func(what string, dim expr.Dim, v int) { set(name+" "+what, dim, units.Int(int64(v))) }
	put("first", expr.Stitches, c.First)
	for i, slot := range []string{"quick", "slow", "less slow", "last"} {
		put(slot+" every", expr.Rows, p.Slots[i].Every)
		put(slot+" times", expr.Plain, p.Slots[i].Times)
	}
	put("step", expr.Stitches, p.Steps.Off)
	put("step times", expr.Plain, p.Steps.Times)
	put("top", expr.Stitches, p.Top)
	put("rows", expr.Rows, p.Rows)
	set(name+" edge", expr.LengthOf, p.Length)
	made := c.Cloth.Stitch.Times(p.Top)
	if c.Top.Sign() > 0 && c.Cloth.Stitch.Less(made.Sub(c.Top).Abs()) {
		in.r.found = append(in.r.found, finding.Finding{Kind: "grading/cap", Severity: finding.Note, Pos: in.pos("top"), Sizes: []string{in.r.p.Sizes.Names[in.r.size]},
			Message: fmt.Sprintf("%q: the top is not as wide as was wished: of the caps that fit their armhole to half a stitch, the nearest that goes with the other sizes", name),
			Have:    fmt.Sprintf("%d sts, %s", p.Top, shaping.LongIn(made, c.Unit)), Want: shaping.LongIn(c.Top, c.Unit),
			Fix: "wish for another top, or change the ease of the cap"})
	}
}

func (in *inputs) raglan(put func(string, expr.Dim, int)) {
	var n [7]int
	for i, k := range []string{"raglan", "sleeve", "neck", "sleeve neck", "underarm", "over"} {
		v, ok := in.whole(k)
		if !ok {
			return
		}
		n[i] = v
	}
	ri := shaping.RaglanIn{Back: n[0], Front: n[0], Sleeve: n[1], NeckBack: n[2], NeckFront: n[2], NeckSleeve: n[3], Underarm: n[4], Rows: n[5], Step: shaping.RowStep(in.g.On)}
	if v, ok := in.whole("front"); ok {
		ri.Front = v
	}
	if v, ok := in.whole("front neck"); ok {
		ri.NeckFront = v
	}
	p, err := shaping.Raglan(ri)
	if err != nil {
		in.sizeFail("raglan", "%q: %v", in.g.Name, err)
		return
	}
	in.tell(p.Lines...)
	put(in.g.Name+" underarm", expr.Stitches, p.Underarm)
	put(in.g.Name+" rows", expr.Rows, p.Rows)
	for _, l := range p.Pieces {
		in.runs(in.g.Name+" "+l.Name, l.Plan, put)
		put(in.g.Name+" "+l.Name+" neck", expr.Stitches, l.Neck)
	}
}

func (in *inputs) yoke(put func(string, expr.Dim, int)) {
	start, ok := in.whole("yoke")
	neck, ok2 := in.whole("neck")
	rows, ok3 := in.whole("over")
	if !ok || !ok2 || !ok3 {
		return
	}
	first, _ := in.whole("first")
	p, err := shaping.Yoke(shaping.YokeIn{Start: start, Neck: neck, Rows: rows, Rounds: in.g.Rounds, First: first, Multiple: in.g.Multiple})
	if err == nil && len(p.Rounds) != in.g.Rounds {
		err = fmt.Errorf("%d rounds of decreases are too many for %d stitches to lose by the multiple", in.g.Rounds, start-p.Neck)
	}
	if err != nil {
		in.sizeFail("yoke", "%q: %v", in.g.Name, err)
		return
	}
	in.tell(p.Lines...)
	last := 0
	for i, rd := range p.Rounds {
		put(fmt.Sprintf("%s rows %d", in.g.Name, i+1), expr.Rows, rd.Row-last)
		put(fmt.Sprintf("%s decreases %d", in.g.Name, i+1), expr.Stitches, rd.Before-rd.After)
		put(fmt.Sprintf("%s left %d", in.g.Name, i+1), expr.Stitches, rd.After)
		last = rd.Row
	}
	put(in.g.Name+" neck", expr.Stitches, p.Neck)
}
