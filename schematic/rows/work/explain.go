package work

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	ins "flatwright/schematic/rows/instructions"
)

// tracer keeps what each instruction of one line uses of the row below and makes.
type tracer struct {
	line  *ins.Line
	steps map[ins.Item]*traced
	quiet int // how deep a trial the row itself is
}

type traced struct{ times, used, made, chains int }

// item works an instruction, and keeps what it did.
func (t *tracer) item(w *work, n ins.Item, tail []ins.Item, need int) {
	left, made := w.cur.left, w.out.stitches()
	chains, _ := w.out.chains()
	w.one(n, tail, need)
	if w.quiet != t.quiet {
		return
	}
	s := t.steps[n]
	if s == nil {
		s = &traced{}
		t.steps[n] = s
	}
	s.times++
	s.used += left - w.cur.left
	s.made += w.out.stitches() - made
	now, _ := w.out.chains()
	s.chains += now - chains
}

// told is how one size reads a line.
type told struct {
	steps         map[ins.Item]*traced
	before, after int
	taken         map[key]bool
}

// Explain tells in plain words how the instructions that begin on a line of the text were read: each
// one, what it uses of the row below and what it makes, in every size; which reading was taken; what
// was not read; that there are only words, or a heading, where no instruction stands. It is empty for a line that is blank.
func Explain(x *ins.Text, line int) []string {
	turningSaid(x)
	var out []string
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			if !s.Prose && l.At.Line <= line && line <= l.Last() {
				out = append(out, (&explained{x: x, l: l, sizes: toldOf(x, l)}).lines(s.Name)...)
			}
		}
	}
	if len(out) == 0 {
		return noRow(x, line)
	}
	return out
}

// noRow tells what a line is on which no instruction stands.
func noRow(x *ins.Text, line int) []string {
	if line < 1 || line > len(x.Src) || strings.TrimSpace(x.Src[line-1]) == "" {
		return nil
	}
	for _, s := range x.Sections {
		if s.At.Line == line && s.Name != "" {
			return []string{fmt.Sprintf("line %d: the heading of %q", line, s.Name)}
		}
	}
	return []string{fmt.Sprintf("line %d: words only, no stitches", line)}
}

// toldOf works the text in every size, and keeps how it reads the line.
func toldOf(x *ins.Text, l *ins.Line) []told {
	var out []told
	for size := range x.Sizes.Names {
		trial, r := newRunner(x, size), newRunner(x, size)
		if open(x) {
			trial.run()
			r.fixed = trial.settled
		}
		r.trace = &tracer{line: l}
		r.run()
		out = append(out, r.told)
	}
	return out
}

// watched works a line, and keeps how it is read if it is the one that is asked for.
func (r *runner) watched(l *ins.Line) {
	if r.trace == nil || r.trace.line != l {
		r.line(l)
		return
	}
	r.told.before = r.count()
	r.line(l)
	r.told.after = r.count()
	r.told.taken = r.pick.taken
	if r.res != nil {
		r.told.steps = r.res.steps
	}
}

// count is how many stitches there are, or None where that is not known.
func (r *runner) count() int {
	if r.fab == nil || !r.known() {
		return ins.None
	}
	return r.fab.stitches()
}

// explained puts the reading of a line into words.
type explained struct {
	x     *ins.Text
	l     *ins.Line
	sizes []told
	out   []string
}

func (e *explained) say(format string, a ...any) { e.out = append(e.out, fmt.Sprintf(format, a...)) }

func (e *explained) lines(section string) []string {
	head := fmt.Sprintf("line %d", e.l.At.Line)
	for _, s := range []string{section, e.x.RowName(e.l)} {
		if s != "" {
			head += ", " + s
		}
	}
	e.say("%s:", head)
	if n := e.each(func(t told) int { return t.before }); n != "" {
		e.say("  before it there are %s", many(n, "stitches"))
	}
	for _, n := range e.l.Body {
		e.item(n, "  ")
	}
	for _, u := range e.l.Unread {
		if slices.ContainsFunc(e.l.Body, func(n ins.Item) bool { _, not := n.(*ins.Unread); return not && n.Span() == u }) {
			continue // told in its place
		}
		e.say("  '%s': not read, and left out", e.x.Quote(u))
	}
	if e.l.Stated != nil {
		e.say("  the text states %s", e.stated())
	}
	made, after := e.each(e.made), e.each(func(t told) int { return t.after })
	switch {
	case after == "":
		e.say("  after it the stitch count is not known")
	case made != "" && made != after:
		e.say("  the row makes %s; the rows after it are worked on the %s that it states", many(made, "stitches"), after)
	default:
		e.say("  after it there are %s", many(after, "stitches"))
	}
	e.readings()
	return e.out
}

// made is what the instructions of a line with a count make in all; None where that is not known of each.
func (e *explained) made(t told) int {
	sum := ins.None
	for _, n := range e.l.Body {
		switch s := t.steps[n]; {
		case s != nil && sum == ins.None:
			sum = s.made
		case s != nil:
			sum += s.made
		case !is[*ins.Nothing](n) && !is[*ins.Turn](n) && !is[*ins.Join](n):
			return ins.None
		}
	}
	if e.l.Stated == nil || len(e.l.Unread) > 0 || sum == 0 {
		return ins.None
	}
	return sum
}

// each is a number of every size in the trade's line; empty if no size has one.
func (e *explained) each(of func(told) int) string {
	vals := make([]string, len(e.sizes))
	any := false
	for i, t := range e.sizes {
		n := of(t)
		any = any || n != ins.None
		vals[i] = written(n, false)
	}
	if !any {
		return ""
	}
	return e.x.Sizes.Line(vals)
}

func many(n, what string) string {
	text := " " + what
	if n == "1" {
		text = singular(text)
	}
	return n + text
}

// item tells what an instruction is, and what it does.
func (e *explained) item(n ins.Item, in string) {
	words := strings.Join(strings.Fields(e.x.Quote(whole(n))), " ")
	if words == "" {
		words = "understood without words"
	} else {
		words = "'" + words + "'"
	}
	line := in + words + ": " + e.meaning(n)
	if does := e.does(n); does != "" {
		line += "; " + does
	}
	e.say("%s", line)
	switch q := n.(type) {
	case *ins.Repeat:
		for _, b := range q.Body {
			e.item(b, in+"  ")
		}
	case *ins.Needles:
		for _, p := range q.Parts {
			for _, b := range p.Body {
				e.item(b, in+"  ")
			}
		}
	}
}

// whole is where an instruction stands with all that it repeats, though only its last word says so: K2, p2; rep to end.
func whole(n ins.Item) ins.Span {
	at := n.Span()
	if q, ok := n.(*ins.Repeat); ok && len(q.Body) > 0 {
		if first := whole(q.Body[0]); first.Line == at.Line && first.Col < at.Col {
			at.Col = first.Col
		}
	}
	return at
}

// does is what an instruction uses and makes in all.
func (e *explained) does(n ins.Item) string {
	of := func(f func(*traced) int) string {
		return e.each(func(t told) int {
			if s := t.steps[n]; s != nil {
				return f(s)
			}
			return ins.None
		})
	}
	used := of(func(s *traced) int { return s.used })
	if used == "" {
		return ""
	}
	var out []string
	if _, ok := n.(*ins.Chain); !ok && strings.HasPrefix(used, "-") {
		return "now its " + many(of(func(s *traced) int { return -s.used }), "chains") + " are there to work into"
	} else if !ok && used != "0" {
		out = append(out, "uses "+many(used, "stitches")+" of the row below")
	}
	if made := of(func(s *traced) int { return s.made }); is[*ins.Psso](n) {
		out = append(out, "leaves "+of(func(s *traced) int { return -s.made })+" fewer")
	} else if made != "0" {
		out = append(out, "makes "+many(made, "stitches"))
	}
	if chains := of(func(s *traced) int { return s.chains }); chains != "0" {
		out = append(out, "makes "+many(chains, "chains"))
	}
	if times := of(func(s *traced) int { return s.times }); times != "1" && len(out) > 0 {
		out = append(out, "in all, over "+many(times, "times"))
	}
	return strings.Join(out, ", ")
}

// meaning is what an instruction is.
func (e *explained) meaning(n ins.Item) string {
	switch n := n.(type) {
	case *ins.Stitch:
		return e.stitch(n)
	case *ins.Chain:
		return e.chain(n)
	case *ins.Skip:
		return "passed over"
	case *ins.Nothing:
		if used := e.each(func(t told) int { return t.usedBy(n) }); strings.HasPrefix(used, "-") {
			return "along the other side of the chain"
		}
	case *ins.Repeat:
		return e.repeat(n)
	case *ins.Shape:
		if n.Inc {
			return "an increase in words"
		}
		return "a decrease in words"
	case *ins.RepeatRows:
		return "rows worked before, again"
	case *ins.Even:
		if n.Chart {
			return "rows of a chart or a pattern: how many stitches they leave is not known"
		}
	case *ins.AsFor:
		return "worked as " + n.Name
	case *ins.BindOff:
		if n.Drop {
			return "dropped off the needle"
		}
	}
	if s, ok := meanings[fmt.Sprintf("%T", n)]; ok {
		return s
	}
	return "an instruction"
}

// meanings are those of the kinds of which there is nothing more to say.
var meanings = map[string]string{
	"*instructions.Turn": "the work is turned", "*instructions.Join": "the round is joined", "*instructions.Leave": "stitches left unworked",
	"*instructions.BindOff": "bound off", "*instructions.Psso": "the slipped stitch is passed over", "*instructions.CastOn": "cast on",
	"*instructions.Fasten": "fastened off", "*instructions.PickUp": "picked up along an edge", "*instructions.JoinYarn": "the work is taken up again",
	"*instructions.Marker": "a marker", "*instructions.Nothing": "words that move no stitch", "*instructions.Unread": "not read",
	"*instructions.Even": "worked even: as many stitches as there are", "*instructions.BindEach": "stitches at the beginning of rows",
	"*instructions.Edge": "the work turns to go along its row ends", "*instructions.Divide": "the row is divided", "*instructions.Together": "parts made one row",
	"*instructions.Needles": "worked needle by needle", "*instructions.Markers": "markers between panels", "*instructions.Measure": "a length, checked against the rows at the gauge",
}

func (e *explained) stitch(n *ins.Stitch) string {
	name := "the stitch of the row"
	switch {
	case n.Chart:
		name = "stitches of a chart"
	case n.Kind != nil:
		name = n.Kind.Name(e.x.Terms)
	case n.Call != nil:
		name = n.Call.Name
	case n.Inc:
		name = "an increase in it"
	case n.Dec:
		name = "a decrease in it"
	}
	if k := e.num(n.N); k != "" && k != "1" {
		name = k + " " + name
	}
	if n.Colour != "" {
		name += ", in " + n.Colour
	}
	return name
}

func (e *explained) num(n ins.Num) string {
	if !n.Set() {
		return ""
	}
	vals := make([]string, len(e.sizes))
	for i := range vals {
		vals[i] = written(n.At(i), false)
	}
	return e.x.Sizes.Line(vals)
}

func (e *explained) chain(n *ins.Chain) string {
	k := many(e.num(n.N), "chains")
	counts := e.each(func(t told) int {
		if s := t.steps[n]; s != nil {
			return s.made
		}
		return ins.None
	})
	switch {
	case counts == "0" && e.each(func(t told) int { return t.chainsOf(n) }) == "0":
		return k + ", counted as no stitch"
	case counts != "" && counts != "0":
		return k + ", counted as a stitch"
	}
	return k
}

func (t told) chainsOf(n ins.Item) int {
	if s := t.steps[n]; s != nil {
		return s.chains
	}
	return ins.None
}

func (t told) usedBy(n ins.Item) int {
	if s := t.steps[n]; s != nil {
		return s.used
	}
	return ins.None
}

func (e *explained) repeat(n *ins.Repeat) string {
	switch {
	case n.Until.Kind == ins.ToLast:
		return "again and again, to the last " + many(e.num(n.Until.N), "stitches")
	case n.Until.Kind != ins.NoExtent:
		return "again and again, as far as it goes"
	case len(n.Places) > 0:
		return "worked as a group in its place"
	}
	if k := e.num(n.Times); k != "" && k != "1" {
		return "worked " + k + " times"
	}
	return "worked once"
}

// stated is the count at the end of the line.
func (e *explained) stated() string {
	var list []string
	for _, g := range e.l.Stated {
		list = append(list, "'"+e.x.Quote(g.At)+"'")
	}
	return ins.And(slices.Compact(list))
}

// readings tells what the text leaves open, and how it was taken.
func (e *explained) readings() {
	seen := map[string]bool{}
	var list []string
	for _, t := range e.sizes {
		for k, v := range t.taken {
			if s := k.words(v); s != "" && !seen[s] && k.of(e.l) {
				seen[s] = true
				list = append(list, s)
			}
		}
	}
	slices.Sort(list)
	for _, s := range list {
		e.say("  the text does not say so, and its counts fit best if %s", s)
	}
}

// of reports whether it is something in a line that is left open.
func (k key) of(l *ins.Line) bool {
	if k.both.Line > 0 {
		return k.both.Line >= l.At.Line && k.both.Line <= l.Last()
	}
	for _, n := range l.Body {
		switch n := n.(type) {
		case *ins.Chain:
			if !k.hook && n.N.By == nil && n.N.All == k.chain {
				return true
			}
		case *ins.Repeat:
			if k.inAll && n.InAll {
				return true
			}
		}
		if st, ok := n.(*ins.Stitch); ok && k.leads && st.Kind != nil && st.Kind.ID == "slst" {
			return true
		}
		if k.hook && slices.ContainsFunc(placesOf(n), func(p ins.Place) bool { return p.Kind == ins.FromHook }) {
			return true
		}
	}
	return false
}

// words tell what was taken of a thing that is left open.
func (k key) words(v bool) string {
	switch {
	case k.turns && v:
		return "the last chain of the foundation is there to turn with"
	case k.turns:
		return "every chain of the foundation is worked into"
	case k.leads && v:
		return "the slip stitches at the beginning only lead to where the row begins"
	case k.leads:
		return ""
	case k.inAll && v:
		return "the number of repeats is meant in all"
	case k.inAll:
		return "the number of repeats is meant beyond the first"
	case k.both.Line > 0 && v:
		return "the shaping is at both ends"
	case k.both.Line > 0:
		return "the shaping is at one end"
	case k.chain == 0:
		return ""
	}
	what := "ch " + strconv.Itoa(k.chain) + " at the beginning of a row"
	if k.hook {
		what = strconv.Itoa(k.chain) + " chains skipped from the hook"
	}
	if k.hook && v {
		return what + " count as a stitch"
	}
	if k.hook {
		return what + " do not count as a stitch"
	}
	if v {
		return what + " counts as a stitch"
	}
	return what + " does not count as a stitch"
}
