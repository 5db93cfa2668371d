package read

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// word is one word of a phrase with its place in it.
type word struct {
	s    string // small letters
	span expr.Span
}

// phraseOf reads the words of a fixed phrase from left to right.
type phraseOf struct {
	r    *reader
	n    *yaml.Node
	all  []word
	i    int
	form string // what is expected, for messages
	bad  bool
}

func (r *reader) phrase(n *yaml.Node, what, form string) *phraseOf {
	p := &phraseOf{r: r, n: n, form: form}
	s, ok := r.scalar(n, what)
	if !ok {
		p.bad = true
		return p
	}
	if t := []rune(s); len(t) > longestLine {
		r.fail(r.pos(n), "file/bounds", "%s has %d characters", what, len(t)).Want = fmt.Sprintf("at most %d", longestLine)
		p.bad = true
		return p
	}
	p.all = wordsOf(s)
	return p
}

// wordsOf cuts a text at spaces, and makes commas words of their own.
func wordsOf(s string) []word {
	var out []word
	t := []rune(s)
	for i := 0; i < len(t); {
		switch {
		case unicode.IsSpace(t[i]):
			i++
		case t[i] == ',':
			out = append(out, word{",", expr.Span{Start: i, End: i + 1}})
			i++
		default:
			j := i
			for j < len(t) && t[j] != ',' && !unicode.IsSpace(t[j]) {
				j++
			}
			out = append(out, word{strings.ToLower(string(t[i:j])), expr.Span{Start: i, End: j}})
			i = j
		}
	}
	return out
}

func (p *phraseOf) end() bool { return p.i >= len(p.all) }

func (p *phraseOf) peek() string {
	if p.end() {
		return ""
	}
	return p.all[p.i].s
}

// take goes past the next words if they are one of those given.
func (p *phraseOf) take(any ...string) bool {
	for _, a := range any {
		fields := strings.Fields(a)
		ok := p.i+len(fields) <= len(p.all)
		for k := 0; ok && k < len(fields); k++ {
			ok = p.all[p.i+k].s == fields[k]
		}
		if ok {
			p.i += len(fields)
			return true
		}
	}
	return false
}

// fail tells, once, that the phrase can't be read from here.
func (p *phraseOf) fail() {
	if p.bad {
		return
	}
	p.bad = true
	span := expr.Span{Start: 0, End: len([]rune(p.n.Value))}
	msg := "something is missing after this"
	if !p.end() {
		span = p.all[p.i].span
		msg = fmt.Sprintf("%q is not understood here", p.word())
	} else if len(p.all) > 0 {
		span = p.all[len(p.all)-1].span
	}
	p.r.fail(p.r.spanPos(p.n, span), "file/form", "%s", msg).Want = p.form
}

// wrong tells that the next words, if they are one of those given, are not the file's own, and
// what is.
func (p *phraseOf) wrong(fix string, any ...string) bool {
	from := p.i
	if p.bad || !p.take(any...) {
		return false
	}
	p.bad = true
	span := expr.Span{Start: p.all[from].span.Start, End: p.all[p.i-1].span.End}
	f := p.r.fail(p.r.spanPos(p.n, span), "file/form", "%q is not understood here", string([]rune(p.n.Value)[span.Start:span.End]))
	f.Want, f.Fix = p.form, fix
	return true
}

func (p *phraseOf) word() string {
	s := p.all[p.i].span
	return finding.Clip(string([]rune(p.n.Value)[s.Start:s.End]))
}

func (p *phraseOf) must(any ...string) bool {
	if p.bad {
		return false
	}
	if !p.take(any...) {
		p.fail()
		return false
	}
	return true
}

func (p *phraseOf) done() bool {
	if !p.bad && !p.end() {
		p.fail()
	}
	return !p.bad
}

// number reads a number, which may have a fraction as a word of its own.
func (p *phraseOf) number() units.Num {
	if p.bad || p.end() {
		p.fail()
		return units.Num{}
	}
	if p.i+1 < len(p.all) {
		if v, ok := units.ParseNum(p.all[p.i].s + " " + p.all[p.i+1].s); ok && v.Sign() > 0 && strings.ContainsAny(p.all[p.i+1].s, "/½¼¾⅛⅜⅝⅞") {
			p.i += 2
			return v
		}
	}
	v, ok := units.ParseNum(p.all[p.i].s)
	if !ok {
		p.fail()
		return units.Num{}
	}
	p.i++
	return v
}

// whole reads a whole number from least to most.
func (p *phraseOf) whole(least, most int64) int {
	start := p.i
	if p.take("one", "a", "an") {
		return 1
	}
	v := p.number()
	if p.bad {
		return 0
	}
	if !v.IsInt() || v.Floor() < least || v.Floor() > most {
		p.bad = true
		p.r.fail(p.r.spanPos(p.n, p.all[start].span), "file/bounds", "%s can't stand here", v).
			Want = fmt.Sprintf("a whole number from %d to %d", least, most)
		return 0
	}
	return int(v.Floor())
}

// length reads a length in mm with its unit, which may touch the number.
func (p *phraseOf) length() (units.Num, units.Unit) {
	if p.bad || p.end() {
		p.fail()
		return units.Num{}, units.CM
	}
	s := p.all[p.i].s
	cut := strings.IndexFunc(s, func(r rune) bool { return r >= 'a' && r <= 'z' || strings.ContainsRune("\"″”", r) })
	if cut > 0 {
		v, ok := units.ParseNum(s[:cut])
		u, ok2 := expr.ParseUnit(s[cut:])
		if ok && ok2 {
			p.i++
			return units.Of(v, u), u
		}
	}
	v := p.number()
	if p.bad || p.end() {
		p.fail()
		return units.Num{}, units.CM
	}
	u, ok := expr.ParseUnit(p.peek())
	if !ok {
		p.fail()
		return units.Num{}, units.CM
	}
	p.i++
	return units.Of(v, u), u
}

var stitchList = []string{"sts", "st", "stitches", "stitch"}
var roundList = []string{"rounds", "rnds", "round", "rnd"}

const gaugeForm = "such as 14 sts and 10 rows over 10 cm in hdc"

// gauge reads A sts and B rows over LENGTH in STITCH, stretched.
func (r *reader) gauge(name string, n *yaml.Node) (schematic.Gauge, bool) {
	g := schematic.Gauge{Name: name, Pos: r.pos(n)}
	p := r.phrase(n, "the gauge "+quoted(name), gaugeForm)
	g.Stitches = p.number()
	p.must(stitchList...)
	p.take(",")
	p.take("and", "x", "×", "&", "by")
	g.Rows = p.number()
	if !p.bad {
		if g.Rounds = p.take(roundList...); !g.Rounds {
			p.must("rows", "row")
		}
	}
	p.must("over", "to", "per")
	a, unit := p.length()
	g.Over, g.OverUnit = a, unit
	if p.take("/") {
		b, other := p.length()
		if !p.bad && unit == other {
			p.i--
			p.fail()
		}
		if other == r.unit {
			g.Over, g.OverUnit = b, other
		}
	}
	if p.bad {
		return g, false
	}
	if p.take("in") {
		g.Stitch = p.until(fabricStates)
	}
	for p.take(",") {
		state := p.peek()
		if !p.take(fabricStates...) {
			p.fail()
		}
		g.Stretched = g.Stretched || state == "stretched"
	}
	if !p.done() {
		return g, false
	}
	return g, r.dense(n, g)
}

// fabricStates are how a fabric lies when its gauge is measured.
var fabricStates = []string{"stretched", "relaxed", "blocked"}

// until is the text up to a comma with one of the words behind it, or to the end; none is an error.
func (p *phraseOf) until(words []string) string {
	from := p.i
	for !p.end() && !(p.peek() == "," && p.i+1 < len(p.all) && slices.Contains(words, p.all[p.i+1].s)) {
		p.i++
	}
	if p.i == from {
		p.fail()
		return ""
	}
	return strings.TrimSpace(string([]rune(p.n.Value)[p.all[from].span.Start:p.all[p.i-1].span.End]))
}

// dense holds a gauge to what yarn and rope can do.
func (r *reader) dense(n *yaml.Node, g schematic.Gauge) bool {
	bad := g.Impossible()
	if bad == "" {
		return true
	}
	f := r.fail(r.pos(n), "file/bounds", "%s", bad)
	f.Want, f.Fix = schematic.GaugeBounds, "count them on a swatch again"
	return false
}

// rounding reads printed steps: 0.5 cm and 1/4 in.
func (r *reader) rounding(n *yaml.Node) units.Steps {
	s := units.Usual
	p := r.phrase(n, `"rounding"`, "steps such as 0.5 cm and 1/4 in")
	for !p.bad {
		v, u := p.length()
		if p.bad {
			break
		}
		in := units.In(v, u)
		if in.Sign() <= 0 || units.Int(10).Less(in) || u == units.MM {
			p.bad = true
			r.fail(r.pos(n), "file/bounds", "%s %s can't be a printed step", in, u).Want = "more than 0 and at most 10, in cm or in"
			break
		}
		if u == units.Inch {
			s.Inch = in
		} else {
			s.CM = in
		}
		if p.end() {
			break
		}
		p.must("and", ",", "/")
	}
	return s
}
