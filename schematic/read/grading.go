package read

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/grade"
	"flatwright/schematic/units"
)

var roundings = []string{"nearest", "up", "down"}

// gradingKeys are the keys of a line of the grading. One of the first eight says
// what it works out; the earlier one leads where two could.
var gradingKeys = &table{
	name: "grading", title: "a line of the grading", bare: "is",
	keys: []key{
		{name: "cap", form: phrase, what: "a sleeve cap: the stitches at the upper arm"},
		{name: "raglan", form: phrase, what: "a raglan: the stitches of the back at the underarm"},
		{name: "yoke", form: phrase, what: "a round yoke: the stitches of body and sleeves together"},
		{name: "spread", form: phrase, what: "shapings spread evenly over rows: how many"},
		{name: "armhole", form: phrase, what: "an armhole: the stitches at the underarm; with cap, how long the armhole's edges are"},
		{name: "stitches", form: phrase, what: "whole stitches: the width that they are to make"},
		{name: "rows", form: phrase, what: "whole rows: the height that they are to make"},
		{name: "is", form: phrase, what: "a value as it is: a sum, or a number for each size"},
		{name: "gauge", form: text, what: "name of the gauge (the first)"},
		{name: "multiple", form: phrase, what: "the stitch pattern's repeat, such as 4 or 4 + 1"},
		{name: "even", form: yesNo, what: "yes: an even number"},
		{name: "odd", form: yesNo, what: "yes: an odd number"},
		{name: "like", form: text, what: "even or odd as the count of this name is"},
		{name: "round", form: choice, pick: roundings, what: "nearest (as it is without this), up or down"},
		{name: "least", form: counts, what: "not less than this many"},
		{name: "over", form: phrase, what: "the rows that hold it"},
		{name: "to", form: phrase, what: "with armhole: the stitches that are left above it"},
		{name: "first", form: phrase, what: "stitches of the first bind-off; with yoke: rows up to the first round of decreases"},
		{name: "ease", form: phrase, what: "with cap: how much longer it is than the armhole"},
		{name: "top", form: phrase, what: "with cap: the width wished at its top"},
		{name: "front", form: phrase, what: "with raglan: the stitches of the front, where they differ"},
		{name: "sleeve", form: phrase, what: "with raglan: the stitches of a sleeve"},
		{name: "neck", form: phrase, what: "with raglan or yoke: the stitches left at the neck"},
		{name: "front neck", form: phrase, what: "with raglan: those of the front, where they differ"},
		{name: "sleeve neck", form: phrase, what: "with raglan: those of a sleeve"},
		{name: "underarm", form: phrase, what: "with raglan: stitches bound off or held at each side"},
		{name: "rounds", form: counts, what: "with yoke: how many rounds of decreases"},
		{name: "on", form: choice, pick: sideNames, what: "rows on which decreases may fall"},
		{name: "leave", form: yesNo, what: "yes: stitches are left at both edges of a row, as in crochet, not bound off"},
	},
	hints: map[string]string{"sts": "stitches", "tension": "gauge", "repeat": "multiple", "width": "stitches", "height": "rows", "as": "like",
		"increases": "spread", "decreases": "spread", "sleeve cap": "cap", "round yoke": "yoke", "minimum": "least"},
}

// leading is the kind of a line of the grading by its key, in the order in which they lead.
var leading = []schematic.GradingKind{schematic.GradeCap, schematic.GradeRaglan, schematic.GradeYoke, schematic.GradeSpread,
	schematic.GradeArmhole, schematic.GradeStitches, schematic.GradeRows, schematic.GradeValue}

// onlyWith are the keys that belong to some kinds alone.
var onlyWith = map[string][]schematic.GradingKind{
	"multiple": {schematic.GradeStitches, schematic.GradeRows, schematic.GradeYoke},
	"even":     {schematic.GradeStitches, schematic.GradeRows}, "odd": {schematic.GradeStitches, schematic.GradeRows},
	"like": {schematic.GradeStitches, schematic.GradeRows}, "round": {schematic.GradeStitches, schematic.GradeRows},
	"least": {schematic.GradeStitches, schematic.GradeRows},
	"over":  {schematic.GradeSpread, schematic.GradeArmhole, schematic.GradeRaglan, schematic.GradeYoke},
	"to":    {schematic.GradeArmhole}, "first": {schematic.GradeArmhole, schematic.GradeCap, schematic.GradeYoke}, "armhole": {schematic.GradeArmhole, schematic.GradeCap},
	"ease": {schematic.GradeCap}, "top": {schematic.GradeCap},
	"front": {schematic.GradeRaglan}, "sleeve": {schematic.GradeRaglan}, "front neck": {schematic.GradeRaglan},
	"sleeve neck": {schematic.GradeRaglan}, "underarm": {schematic.GradeRaglan},
	"neck": {schematic.GradeRaglan, schematic.GradeYoke}, "rounds": {schematic.GradeYoke},
	"on":    {schematic.GradeSpread, schematic.GradeArmhole, schematic.GradeCap, schematic.GradeRaglan},
	"leave": {schematic.GradeArmhole, schematic.GradeCap},
}

// sumKeys are the keys of a line of the grading that hold sums beside the leading one.
var sumKeys = []string{"armhole", "over", "to", "first", "ease", "top", "front", "sleeve", "neck", "front neck", "sleeve neck", "underarm"}

// capsLeft counts the sleeve caps of a grading, whose search takes time.
type capsLeft struct{ caps, sizes int }

func (c *capsLeft) over() bool { return c.caps > mostCaps || c.caps*c.sizes > mostCapSizes }

// grading reads the grading and works it out, so that the graded values that
// follow can call it.
func (r *reader) grading(m *mapped, p *schematic.Pattern) {
	caps := capsLeft{sizes: r.sizes.Len()}
	r.named(m, "grading", func(name string, at, v *yaml.Node) {
		g, ok := r.gradingLine(name, at, v)
		if ok && g.Kind == schematic.GradeCap {
			if caps.caps++; caps.over() {
				r.fail(g.Pos, "file/bounds", "%q is one cap too many", name).Want = fmt.Sprintf("at most %d, and %d in all sizes together", mostCaps, mostCapSizes)
				ok = false
			}
		}
		if ok {
			p.Grading = append(p.Grading, g)
		} else {
			r.ill = append(r.ill, name)
		}
	})
	if r.sizes.Len() == 0 {
		return
	}
	r.of = p
	if len(p.Grading) == 0 || len(p.Gauges) == 0 || caps.over() || !r.fewSums(p) {
		return
	}
	vals, found := grade.Resolve(p)
	p.Graded = vals
	for i, g := range p.Grading {
		if !slices.ContainsFunc(vals, func(v schematic.GradedValue) bool { return v.Of == i }) {
			r.ill = append(r.ill, g.Name)
		}
	}
	for _, f := range found {
		r.unresolved(p, f)
	}
}

// unresolved tells what the grading found, with its place in the file.
func (r *reader) unresolved(p *schematic.Pattern, f finding.Finding) {
	if f.Kind == "file/reference" {
		name := between(f.Message, `"`)
		if r.isIll(name) {
			return // the line that it calls has been told of
		}
		if like := finding.Nearest(name, grade.Names(p)); f.Fix == "" && name != "" && like != "" {
			f.Fix = "did you mean " + quoted(like) + "?"
		}
	}
	g := r.note(f.Severity, f.Pos, f.Kind, "%s", f.Message)
	g.Have, g.Want, g.Fix, g.Sizes = f.Have, f.Want, f.Fix, f.Sizes
}

// fewSums reports whether the sums of the grading are few enough to be worked in every size.
func (r *reader) fewSums(p *schematic.Pattern) bool {
	n := 0
	for i := range p.Grading {
		g := &p.Grading[i]
		for _, s := range append(slices.Collect(maps.Values(g.With)), g.Sum) {
			if s.Sum != nil {
				n += s.Sum.Len()
			}
		}
		if n*r.sizes.Len() > mostTerms {
			f := r.fail(g.Pos, "file/bounds", "by this line the grading has %d numbers, names and signs, in %d sizes", n, r.sizes.Len())
			f.Want = fmt.Sprintf("at most %d in all sizes together", mostTerms)
			return false
		}
	}
	return true
}

// isIll reports whether a name is one that a line of the grading gives which could
// not be read or worked out.
func (r *reader) isIll(name string) bool {
	name = plainKey(name)
	return slices.ContainsFunc(r.ill, func(ill string) bool {
		rest, ok := strings.CutPrefix(name, plainKey(ill))
		return ok && (rest == "" || rest[0] == ' ')
	})
}

func between(s, mark string) string {
	_, rest, ok := strings.Cut(s, mark)
	if !ok {
		return ""
	}
	in, _, _ := strings.Cut(rest, mark)
	return in
}

func (r *reader) gradingLine(name string, at, v *yaml.Node) (schematic.Grading, bool) {
	g := schematic.Grading{Name: name, Pos: r.pos(at)}
	if v.Kind == yaml.ScalarNode && !r.folded(v) {
		g.ValuePos = r.pos(v)
	}
	if v.Kind == yaml.SequenceNode || v.Kind == yaml.MappingNode && r.bySize(v) {
		given, ok := r.given(v, name)
		g.Given = given
		return g, ok
	}
	m := r.mapping(v, gradingKeys)
	if m == nil {
		return g, false
	}
	i := slices.IndexFunc(leading, func(k schematic.GradingKind) bool { return m.get(k.String()) != nil })
	if i < 0 {
		f := r.fail(r.pos(v), "file/missing-key", "%q does not say what to work out", name)
		f.Want = "one of: is, stitches, rows, spread, armhole, cap, raglan, yoke"
		return g, false
	}
	g.Kind = leading[i]
	l := gradedLine{mapped: m, g: &g, ok: true}
	l.fit()
	l.value()
	l.sums()
	l.settings()
	return g, l.ok
}

// gradedLine is a line of the grading as it is read; ok says that nothing in it is wrong.
type gradedLine struct {
	*mapped
	g  *schematic.Grading
	ok bool
}

func (l *gradedLine) bad(pos finding.Pos, kind, format string, args ...any) *finding.Finding {
	l.ok = false
	return l.r.fail(pos, kind, format, args...)
}

// goesWith reports whether a key may stand in a line of this kind.
func (l *gradedLine) goesWith(key string) bool {
	if kinds, some := onlyWith[key]; some {
		return slices.Contains(kinds, l.g.Kind)
	}
	return !slices.ContainsFunc(leading, func(k schematic.GradingKind) bool { return key == k.String() })
}

// fit tells each key that does not go with the leading one.
func (l *gradedLine) fit() {
	lead := l.g.Kind.String()
	for _, it := range l.items {
		if k := it.key.name; k != lead && !l.goesWith(k) {
			l.bad(l.r.pos(it.at), "file/conflict", "%q does not go with %q", k, lead).Fix = "take one of the two out"
		}
	}
}

// value reads what stands at the leading key: a sum or, where it may, numbers.
func (l *gradedLine) value() {
	g, n := l.g, l.get(l.g.Kind.String())
	fine := false
	numbers := g.Kind == schematic.GradeValue || g.Kind == schematic.GradeStitches || g.Kind == schematic.GradeRows
	if numbers && l.r.isLine(n) {
		g.Given, fine = l.r.given(n, g.Name)
		if n.Kind == yaml.ScalarNode && !l.r.folded(n) {
			g.ValuePos = l.r.pos(n)
		}
	} else {
		g.Sum, fine = l.r.gradedSum(n)
	}
	l.ok = l.ok && fine
}

// sums reads the sums beside the leading one.
func (l *gradedLine) sums() {
	l.g.With = map[string]schematic.GradedSum{}
	for _, k := range sumKeys {
		n := l.get(k)
		if n == nil || k == l.g.Kind.String() {
			continue
		}
		s, fine := l.r.gradedSum(n)
		if l.ok = l.ok && fine; fine {
			l.g.With[k] = s
		}
	}
}

// settings reads what is no sum.
func (l *gradedLine) settings() {
	g, at := l.g, l.r.pos(l.node)
	g.Gauge, g.Like = l.text("gauge"), l.text("like")
	g.Even, g.Odd, g.Leave = l.yes("even"), l.yes("odd"), l.yes("leave")
	if g.Even && g.Odd || g.Like != "" && (g.Even || g.Odd) {
		l.bad(at, "file/conflict", "%q is to be even, odd or like another one, not two of these", g.Name)
	}
	g.Up, g.Down = l.choice("round") == 1, l.choice("round") == 2
	g.Least = l.whole("least", stitches, 0)
	g.Rounds = l.whole("rounds", limit{least: 1, most: 20}, 0)
	g.On = schematic.RowSide(max(0, l.choice("on")))
	if n := l.get("multiple"); n != nil {
		of, plus, fine := l.r.multiple(n)
		g.Multiple, g.Plus, l.ok = of, plus, l.ok && fine
	}
	if g.Kind == schematic.GradeYoke && g.Rounds == 0 {
		l.bad(at, "file/missing-key", "%q needs %q: how many rounds of decreases", g.Name, "rounds").Fix = "add rounds: 4"
	}
}

// isLine reports whether a value is numbers in one of the forms of a graded value, not a sum.
func (r *reader) isLine(n *yaml.Node) bool {
	if n == nil || n.Kind != yaml.ScalarNode {
		return n != nil
	}
	s, bad := expr.ParseSum(n.Value)
	if _, no := expr.ParseLine(n.Value, r.sizes); no == nil {
		return bad != nil || len(s.Names()) == 0 // 1.6 x bust is a number with words behind it, and a sum
	}
	return bad != nil && strings.Contains(n.Value, ",")
}

// given reads numbers as they are: lengths, stitches or rows by the word behind
// them, else plain numbers.
func (r *reader) given(n *yaml.Node, name string) (*schematic.GradedValue, bool) {
	g := &schematic.GradedValue{Name: name}
	if r.isLength(n) {
		r.below = true // an ease may be negative
		l, ok := r.lengths(n, quoted(name), false)
		r.below = false
		g.Dim, g.Vals = expr.LengthOf, l.Low
		return g, ok
	}
	line, ok := r.graded(n, quoted(name))
	if !ok {
		return g, false
	}
	g.Vals = line.low
	switch w := strings.TrimSuffix(line.words, "."); {
	case w == "":
	case in(w, stitchWords):
		g.Dim = expr.Stitches
	case in(w, rowWords):
		g.Dim = expr.Rows
	default:
		f := r.fail(line.wordsPos, "file/unit", "%q is not a unit", finding.Clip(line.words))
		f.Want = "cm, in, mm, sts or rows"
		return g, false
	}
	if line.ranged {
		r.fail(r.pos(n), "file/number", "%q is a range, and one number is needed", name)
		return g, false
	}
	return g, true
}

func (r *reader) gradedSum(n *yaml.Node) (schematic.GradedSum, bool) {
	if _, ok := r.scalar(n, "a sum"); !ok {
		return schematic.GradedSum{}, false
	}
	s, bad := expr.ParseSum(n.Value)
	if bad != nil {
		if _, no := expr.ParseLine(n.Value, r.sizes); no == nil {
			f := r.fail(r.pos(n), "file/sum", "numbers for each size can't stand here, and a sum can")
			f.Fix = "give them a line of their own in the grading, and put its name here"
			return schematic.GradedSum{}, false
		}
		r.problem(n, bad)
		return schematic.GradedSum{}, false
	}
	pos := r.textPos(n)
	if r.folded(n) {
		pos.Col = 0
	}
	return schematic.GradedSum{Sum: s, Pos: pos}, true
}

// multiple reads a repeat: 4, 4 + 1, 6 plus 2, 4 - 1.
func (r *reader) multiple(n *yaml.Node) (of, plus int, ok bool) {
	text, ok := r.scalar(n, quoted("multiple"))
	if !ok {
		return 0, 0, false
	}
	t := strings.TrimPrefix(strings.ToLower(text), "of ")
	t = strings.NewReplacer("plus", "+", "minus", "-", "−", "-", "–", "-", "sts", "", " ", "").Replace(t)
	sign := int64(1)
	a, b, two := strings.Cut(t, "+")
	if !two {
		if a, b, two = strings.Cut(t, "-"); two {
			sign = -1
		}
	}
	m, ok1 := units.ParseNum(a)
	v, ok2 := units.Num{}, true
	if two {
		v, ok2 = units.ParseNum(b)
	}
	if !ok1 || !ok2 || !m.IsInt() || !v.IsInt() || m.Floor() < 1 || m.Floor() > 1000 || v.Floor() > 1000 {
		r.fail(r.pos(n), "file/form", "%q is not a repeat", finding.Clip(text)).Want = "such as 4 or 4 + 1"
		return 0, 0, false
	}
	return int(m.Floor()), int(sign * v.Floor()), true
}

// calls reports whether a graded value is a sum of names, and gives the sum.
func (r *reader) calls(n *yaml.Node) (*expr.Sum, bool) {
	if r.of == nil || n.Kind != yaml.ScalarNode || len(r.of.Graded)+len(r.of.Bodies)+len(r.ill) == 0 {
		return nil, false
	}
	s, bad := expr.ParseSum(n.Value)
	if bad != nil {
		return nil, false
	}
	env := grade.Env(r.of, 0)
	for _, name := range s.Names() {
		if _, known := env(name); known || r.isIll(name) {
			return s, true
		}
	}
	for _, name := range s.Names() {
		if len(name) > 3 && finding.Nearest(name, grade.Names(r.of)) != "" {
			return s, true
		}
	}
	return nil, false
}

// called works a graded value out that is a sum of names. The second result says
// whether it is one; a value that could not be worked out, which is told, is zero.
func (r *reader) called(n *yaml.Node, what string, dims ...expr.Dim) (expr.Graded, bool) {
	s, ok := r.calls(n)
	if !ok {
		return expr.Graded{}, false
	}
	c := schematic.Call{Pos: r.pos(n), Sum: s, Vals: r.blank().low}
	c.Vals.From = s
	if n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 || r.folded(n) {
		r.fail(r.pos(n), "file/form", "%s must are on one line", what)
		return expr.Graded{}, true
	}
	env := grade.Envs(r.of)
	for i := range r.sizes.Len() {
		v, bad := s.Eval(env(i))
		if bad != nil {
			r.uncalled(n, bad)
			return expr.Graded{}, true
		}
		if !slices.Contains(dims, v.Dim) {
			f := r.fail(r.pos(n), "file/unit", "%q is %s, and %s needs %s", finding.Clip(n.Value), v.Dim, what, dims[0])
			if v.Dim == expr.LengthOf {
				f.Fix = "make whole stitches or rows of it in the grading: {stitches: …} or {rows: …}"
			}
			return expr.Graded{}, true
		}
		c.Dim = v.Dim
		c.Vals.Vals[i], c.Vals.Has[i] = v.N, v.Has
	}
	if !slices.ContainsFunc(r.of.Calls, func(k schematic.Call) bool { return k.Pos == c.Pos }) {
		r.of.Calls = append(r.of.Calls, c)
	}
	return c.Vals, true
}

// uncalled tells why a sum could not be worked out, unless the line that it calls has been told of.
func (r *reader) uncalled(n *yaml.Node, bad *expr.Problem) {
	if bad.Kind == "file/reference" {
		name := string([]rune(n.Value)[bad.Span.Start:bad.Span.End])
		if r.isIll(name) {
			return
		}
		if like := finding.Nearest(name, grade.Names(r.of)); like != "" {
			bad.Fix = "did you mean " + quoted(like) + "?"
		}
	}
	r.problem(n, bad)
}

// calledCount is called, held to the limits of a count.
func (r *reader) calledCount(n *yaml.Node, what string, lim limit) (expr.Graded, bool) {
	dims := []expr.Dim{expr.Plain}
	switch {
	case len(lim.words) == 0:
	case lim.words[0] == "st":
		dims = []expr.Dim{expr.Stitches, expr.Plain}
	case lim.words[0] == "row":
		dims = []expr.Dim{expr.Rows, expr.Plain}
	case lim.words[0] == "time":
		dims = []expr.Dim{expr.Plain, expr.Stitches} // a shaping of one stitch each: as many times as stitches
	}
	if in("rows", lim.words) && in("sts", lim.words) {
		dims = []expr.Dim{expr.Stitches, expr.Rows, expr.Plain}
	}
	g, ok := r.called(n, what, dims...)
	if !ok || g.IsZero() {
		return g, ok
	}
	for i, v := range g.Vals {
		if !g.Has[i] {
			continue
		}
		msg := ""
		switch {
		case !v.IsInt() && !lim.fraction:
			msg = fmt.Sprintf("comes to %s, and a count must be whole", v)
		case v.Less(units.Int(lim.least)):
			msg = fmt.Sprintf("comes to %s, and must be at least %d", v, lim.least)
		case units.Int(lim.most).Less(v):
			msg = fmt.Sprintf("comes to %s, and can be at most %d", v, lim.most)
		default:
			continue
		}
		f := r.fail(r.pos(n), "file/bounds", "%s %s", what, msg)
		f.Sizes = []string{r.sizes.Names[i]}
		if !v.IsInt() {
			f.Fix = "round it in the grading: {stitches: …, even: yes} or the like"
		}
		return expr.Graded{}, true
	}
	return g, true
}

// calledLength is called for a length.
func (r *reader) calledLength(n *yaml.Node, what string) (l expr.Length, called, ok bool) {
	g, called := r.called(n, what, expr.LengthOf)
	if !called {
		return l, false, false
	}
	l = expr.Length{Low: g, High: g, Unit: r.unit}
	if g.IsZero() {
		return l, true, false
	}
	for i, v := range g.Vals {
		if g.Has[i] && (v.Sign() < 0 || longest.Less(v)) {
			f := r.fail(r.pos(n), "file/bounds", "%s comes to %s cm", what, units.Decimal(units.In(v, units.CM), 2))
			f.Want, f.Sizes = "from 0 to 10 metres", []string{r.sizes.Names[i]}
			return l, true, false
		}
	}
	return l, true, true
}

// callsLength reports whether a graded value is a sum that comes to a length.
func (r *reader) callsLength(n *yaml.Node) bool {
	s, ok := r.calls(n)
	if !ok {
		return false
	}
	v, bad := s.Eval(grade.Env(r.of, 0))
	return bad == nil && v.Dim == expr.LengthOf
}
