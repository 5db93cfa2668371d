// Package grammar reads lines of written rows by a declared table: words by class, and
// forms over those classes, each with its meaning and an example. Adding a form is adding
// a line to the table.
package grammar

import (
	"cmp"
	"fmt"
	"math/bits"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// form is one line of the table: what stands in the text, what it means, an example that
// is a test, when it may be meant, and what is made of it: nothing, if that is not said.
type form struct {
	rule    string
	pattern string
	meaning string
	example string
	when    tests
	build   func(m *match) any

	code  []op
	must  []wordSet // of each a word has to stand in what is read
	rules []int     // each has to fit somewhere
	names []string
	begin start
}

// op is one step of a form: a backtracking machine of a few steps, without loops.
type op struct {
	kind     byte // w words, r rule, s split, j jump, . end
	one, two uint16
	set      *mask // of the words, if they are more than two
	rule     int16
	cap      int16 // where the value of the rule goes
	a, b     int16
}

// match is a form that fits, with the values of its rules as they were met.
type match struct {
	p    *parser
	f    *form
	vals []capture
	from int
	to   int
	room [6]capture
}

// capture is the value of the rule of that name.
type capture struct {
	name int
	v    any
}

func (m *match) get(name string) any {
	k := slices.Index(m.f.names, name)
	for i := len(m.vals) - 1; i >= 0; i-- {
		if m.vals[i].name == k {
			return m.vals[i].v
		}
	}
	return nil
}

func value[T any](m *match, name string) T {
	v, _ := m.get(name).(T)
	return v
}

func (m *match) has(name string) bool { return m.get(name) != nil }

// num is the number of that name, or k if the text gives none.
func (m *match) num(name string, k int) ins.Num {
	if v, ok := m.get(name).(ins.Num); ok {
		return v
	}
	return ins.N(k)
}

// said reports whether one of the words stands in what was matched.
func (m *match) said(words ...string) bool {
	for i := m.from; i < m.to; i++ {
		if m.p.t[i].Is(words...) {
			return true
		}
	}
	return false
}

func (m *match) span() ins.Span { return m.p.span(m.from, m.to-1) }

// ruleSet is all rules by their names; those of native are read by code, the others by the forms of the table.
type ruleSet struct {
	byName map[string]int
	native []func(p *parser, i int) (any, int)
	forms  [][]*form
	first  []map[uint16][]*form // forms of a rule by their first word; 0 those that begin with a rule
	met    []atomic.Pointer[[]candidate]
	quick  [256]struct {
		name string
		id   int
	}
}

var rules ruleSet

func (r *ruleSet) id(name string) int {
	if k, ok := r.byName[name]; ok {
		return k
	}
	k := len(r.native)
	r.byName[name] = k
	r.quick[quickly(name)].name, r.quick[quickly(name)].id = name, k
	r.native = append(r.native, nil)
	r.forms = append(r.forms, nil)
	r.first = append(r.first, nil)
	return k
}

func compileAll(native map[string]func(p *parser, i int) (any, int), tables ...[]form) {
	rules = ruleSet{byName: map[string]int{}}
	for name, f := range native {
		rules.native[rules.id(name)] = f
	}
	if len(native) > 64 {
		panic("more rules that are read by code than a set holds")
	}
	for _, table := range tables {
		for i := range table {
			f := &table[i]
			k := rules.id(f.rule)
			f.compile()
			rules.forms[k] = append(rules.forms[k], f)
		}
	}
	for name, k := range rules.byName {
		if rules.native[k] == nil && len(rules.forms[k]) == 0 {
			panic("a rule without forms is named in the table: " + name)
		}
	}
	rules.index()
	rules.begin()
	rules.needs()
	rules.met = make([]atomic.Pointer[[]candidate], len(rules.forms)*len(wordIDs))
}

// index puts the forms of each rule to the words with which they begin.
func (r *ruleSet) index() {
	for k, list := range r.forms {
		r.first[k] = map[uint16][]*form{}
		for _, f := range list {
			var first mask
			f.firsts(0, &first)
			first.each(func(n uint16) { r.first[k][n] = append(r.first[k][n], f) })
		}
	}
}

// readNeeds are the words of which one has to stand where a rule that is read by code is to fit; a number counts as one, whatever it is.
var readNeeds = map[string]string{
	"row":         "row rows rnd rnds round rounds rd rds",
	"num":         aNumber,
	"size":        aNumber,
	"sized":       aNumber,
	"chaincalled": "ch chain chs tch turning " + aNumber,
	"ofpart":      "held live holder holders " + partWords,
}

// aNumber stands for a number, or a bracket that may hold one.
const aNumber = "#"

// needs adds to what each form needs what the rules need that it can't do without, until no more is found. A rule needs a word
// out of one place of each of its forms.
func (r *ruleSet) needs() {
	of := r.readNeeds()
	for more := true; more; {
		more = false
		for k, list := range r.forms {
			if of[k] == nil && len(list) > 0 {
				of[k] = needOf(list, of)
				more = more || of[k] != nil
			}
		}
		of[r.byName["course"]] = of[r.byName["clause"]] // it begins with one
	}
	for _, list := range r.forms {
		for _, f := range list {
			f.needs(of)
		}
	}
}

// readNeeds are those of the rules that are read by code.
func (r *ruleSet) readNeeds() []*mask {
	of := make([]*mask, len(r.forms))
	for name, words := range readNeeds {
		m := &mask{}
		for w := range strings.FieldsSeq(words) {
			m.set(wordID(w))
		}
		of[r.byName[name]] = m
	}
	return of
}

// needs adds what the rules need that the form can't do without, those first that fewest words meet.
func (f *form) needs(of []*mask) {
	for _, k := range f.rules {
		if of[k] != nil {
			f.must = append(f.must, of[k].sparse())
		}
	}
	slices.SortStableFunc(f.must, func(a, b wordSet) int { return a.size() - b.size() })
}

// needOf are the words of which one has to stand where one of the forms is to fit; nil: it can do without.
func needOf(list []*form, of []*mask) *mask {
	m := &mask{}
	for _, f := range list {
		k := slices.IndexFunc(f.rules, func(k int) bool { return of[k] != nil })
		switch {
		case len(f.must) > 0:
			for _, s := range f.must[0] {
				m[s.at] |= s.bits
			}
		case k >= 0:
			m.join(of[f.rules[k]])
		default:
			return nil
		}
	}
	return m
}

// start is with what a form may begin: words of the table, or rules that are read by code. One that
// may be empty can do without.
type start struct {
	words  mask
	native []int
	empty  bool
}

func (s *start) add(o *start) (more bool) {
	for i := range s.words {
		more = more || o.words[i]&^s.words[i] != 0
		s.words[i] |= o.words[i]
	}
	for _, k := range o.native {
		if !slices.Contains(s.native, k) {
			s.native, more = append(s.native, k), true
		}
	}
	return more
}

// begin finds with what each form may begin, through the rules with which it begins, until no more is found.
func (r *ruleSet) begin() {
	of := make([]start, len(r.forms))
	for more := true; more; {
		more = false
		for k, list := range r.forms {
			for _, f := range list {
				f.begin.empty = f.starts(0, of, &f.begin)
				more = of[k].add(&f.begin) || f.begin.empty && !of[k].empty || more
				of[k].empty = of[k].empty || f.begin.empty
			}
		}
	}
}

// starts adds to s with what the code from at on may begin, and reports whether it may be empty.
func (f *form) starts(at int, of []start, s *start) bool {
	for {
		switch o := &f.code[at]; o.kind {
		case 'w':
			o.words(&s.words)
			return false
		case 's':
			empty := f.starts(int(o.a), of, s)
			return f.starts(int(o.b), of, s) || empty
		case 'j':
			at = int(o.a)
		case 'r':
			if rules.native[o.rule] != nil {
				if !slices.Contains(s.native, int(o.rule)) {
					s.native = append(s.native, int(o.rule))
				}
				return false
			}
			s.add(&of[o.rule])
			if !of[o.rule].empty {
				return false
			}
			at++
		default:
			return o.kind == '.'
		}
	}
}

// candidate is a form that may begin with a word: surely, or only where one of the rules does that are read by code.
type candidate struct {
	*form
	native []int // nil: surely
	bits   uint64
}

// candidates are the forms of a rule that may begin with that word of the table, 0 for any other; in the order of the table,
// those that begin with a word first. They are put together when the word is first met.
func (r *ruleSet) candidates(k int, word uint16) []candidate {
	at := &r.met[k*len(wordIDs)+int(word)]
	if list := at.Load(); list != nil {
		return *list
	}
	list := []candidate{}
	seen := map[*form]bool{}
	add := func(forms []*form) {
		for _, f := range forms {
			switch {
			case seen[f]:
			case f.begin.empty || f.begin.words.has(word):
				list = append(list, candidate{form: f})
			case len(f.begin.native) > 0:
				list = append(list, candidate{f, f.begin.native, nativeBits(f.begin.native)})
			}
			seen[f] = true
		}
	}
	if word != 0 {
		add(r.first[k][word])
	}
	add(r.first[k][0])
	at.Store(&list)
	return list
}

// nativeBits are rules that are read by code, which come first among all rules, as a set.
func nativeBits(list []int) uint64 {
	var set uint64
	for _, k := range list {
		set |= 1 << k
	}
	return set
}

// fitting is which of the rules that are read by code were asked at a place, and which of them fit there.
type fitting struct{ asked, fit uint64 }

// begins reports whether one of the rules fits at i that a form begins with.
func (n *fitting) begins(p *parser, c *candidate, i int) bool {
	if c.bits&n.fit != 0 {
		return true
	}
	for _, k := range c.native {
		if bit := uint64(1) << k; n.asked&bit == 0 {
			n.asked |= bit
			if _, to := p.rule(k, i); to >= 0 {
				n.fit |= bit
				return true
			}
		}
	}
	return false
}

// firsts adds the words with which a form may begin, 0 for a rule.
func (f *form) firsts(at int, m *mask) {
	for {
		switch o := &f.code[at]; o.kind {
		case 'w':
			o.words(m)
			return
		case 's':
			f.firsts(int(o.a), m)
			at = int(o.b)
		case 'j':
			at = int(o.a)
		case 'f':
			return
		default:
			m.set(0)
			return
		}
	}
}

// words adds those of a step.
func (o *op) words(m *mask) {
	if o.set != nil {
		m.join(o.set)
		return
	}
	m.set(int(o.one))
	m.set(int(o.two))
}

// compile turns a pattern into code: words, a/b/c for one of several, [ ] for what may be left
// out, ( | ) for one of several stretches, {name:rule} or {rule}.
func (f *form) compile() {
	drafts.pieces = pieces(drafts.pieces[:0], f.pattern)
	f.code = drafts.code[:0]
	rest, must := f.sequence(drafts.pieces, "")
	if len(rest) > 0 {
		panic("pattern: " + f.pattern)
	}
	drafts.code = append(f.code, op{kind: '.'})
	f.code = slices.Clone(drafts.code)
	for _, m := range must {
		f.must = append(f.must, m.sparse())
	}
}

// drafts are rooms in which forms are compiled.
var drafts struct {
	code   []op
	pieces []string
}

// pieces adds the words, rules and signs of a pattern.
func pieces(out []string, pattern string) []string {
	from := 0
	for i := 0; i <= len(pattern); i++ {
		sign := i < len(pattern) && strings.IndexByte("[]()|", pattern[i]) >= 0
		if !sign && i < len(pattern) && pattern[i] != ' ' {
			continue
		}
		if i > from {
			out = append(out, pattern[from:i])
		}
		if from = i + 1; sign {
			out = append(out, pattern[i:i+1])
		}
	}
	return out
}

// sequence compiles what a pattern has up to a closing bracket or a bar. Must are the words of which one has to
// stand in the text, for each place that can't be left out.
func (f *form) sequence(w []string, until string) (rest []string, must []*mask) {
	for len(w) > 0 {
		switch s := w[0]; {
		case s == until || until != "" && s == "|":
			return w, must
		case s == "[":
			at := len(f.code)
			f.code = append(f.code, op{kind: 's', a: int16(at + 1)})
			w, _ = f.choice(w[1:], "]")
			f.code[at].b = int16(len(f.code))
		case s == "(":
			var one *mask
			if w, one = f.choice(w[1:], ")"); one != nil {
				must = append(must, one)
			}
		case strings.HasPrefix(s, "{"):
			name := strings.Trim(s, "{}")
			rule := name
			if a, b, ok := strings.Cut(name, ":"); ok {
				name, rule = a, b
			}
			k := rules.id(rule)
			if f.code = append(f.code, op{kind: 'r', rule: int16(k), cap: f.capture(name)}); until == "" {
				f.rules = append(f.rules, k)
			}
			w = w[1:]
		default:
			c := classOf(s)
			f.code = append(f.code, c.op)
			must = append(must, &c.words)
			w = w[1:]
		}
	}
	return w, must
}

// class is one of several words, a/b/c, as many patterns have them: the step over it, and the words.
type class struct {
	op    op
	words mask
}

var classes = map[string]*class{}

func classOf(s string) *class {
	if c := classes[s]; c != nil {
		return c
	}
	c := &class{op: op{kind: 'w'}}
	classes[s] = c
	n := 0
	add := func(words string) {
		for w := range strings.SplitSeq(words, "/") {
			k := uint16(wordID(w))
			if c.words.set(int(k)); n == 0 {
				c.op.one = k
			}
			c.op.two = k
			n++
		}
	}
	switch {
	case s == "/":
		k := wordID(s)
		c.words.set(k)
		c.op.one, c.op.two = uint16(k), uint16(k)
	default:
		for w := range strings.SplitSeq(s, "/") {
			add(cmp.Or(macros[w], w))
		}
	}
	if n > 2 {
		c.op.set = &c.words
	}
	return c
}

func (f *form) capture(name string) int16 {
	k := slices.Index(f.names, name)
	if k < 0 {
		k = len(f.names)
		f.names = append(f.names, name)
	}
	return int16(k)
}

// choice compiles stretches of which one is meant, and gives the words of which one has to stand in the
// text; nil if there are none.
func (f *form) choice(w []string, end string) (rest []string, must *mask) {
	var ends []int
	all := true
	if end == ")" { // what stands in the others may be left out
		must = &mask{}
	}
	for {
		at := len(f.code)
		f.code = append(f.code, op{kind: 's', a: int16(at + 1)})
		var one []*mask
		w, one = f.sequence(w, end)
		if len(one) == 0 {
			all = false
		} else if must != nil {
			must.join(one[0])
		}
		ends = append(ends, len(f.code))
		f.code = append(f.code, op{kind: 'j'})
		f.code[at].b = int16(len(f.code))
		if len(w) == 0 {
			panic("pattern: " + f.pattern)
		}
		last := w[0] == end
		w = w[1:]
		if last {
			f.code = append(f.code, op{kind: 'f'}) // none of them
			for _, e := range ends {
				f.code[e].a = int16(len(f.code))
			}
			if !all {
				must = nil
			}
			return w, must
		}
	}
}

// mask is a set of the words of the table.
type mask [18]uint64

func (m *mask) set(k int) { m[k/64] |= 1 << (k % 64) }

func (m *mask) join(o *mask) {
	for i := range m {
		m[i] |= o[i]
	}
}

func (m *mask) each(f func(k uint16)) {
	for i, b := range m {
		for ; b != 0; b &= b - 1 {
			f(uint16(64*i + bits.TrailingZeros64(b)))
		}
	}
}

// wordSet is a mask where it has any words: most have few.
type wordSet []struct {
	at   int
	bits uint64
}

func (m *mask) sparse() wordSet {
	var out wordSet
	for i, b := range m {
		if b != 0 {
			out = append(out, struct {
				at   int
				bits uint64
			}{i, b})
		}
	}
	return out
}

func (s wordSet) size() int {
	n := 0
	for i := range s {
		n += bits.OnesCount64(s[i].bits)
	}
	return n
}

// meets reports whether two sets share a word.
func (s wordSet) meets(o *mask) bool {
	for i := range s {
		if o[s[i].at]&s[i].bits != 0 {
			return true
		}
	}
	return false
}

func (m *mask) has(k uint16) bool { return m[k/64]&(1<<(k%64)) != 0 }

// wordIDs are the numbers of the words of the table; 0 is none of them, 1 the first.
var wordIDs = map[string]int{"": 0, "first": firstID, aNumber: numberID}

const (
	firstID  = 1
	numberID = 2
)

func wordID(w string) int {
	k, ok := wordIDs[w]
	if !ok {
		k = len(wordIDs)
		if k >= 64*len(mask{}) {
			panic("too many words in the table")
		}
		wordIDs[w] = k
	}
	return k
}

// match is a match to try. They are used again: nothing that is made of one holds it.
func (r *Reader) match(p *parser, f *form, from int) *match {
	k := len(r.spare) - 1
	if k < 0 {
		r.spare = append(r.spare, &match{})
		k = 0
	}
	m := r.spare[k]
	r.spare = r.spare[:k]
	m.p, m.f, m.from, m.vals = p, f, from, m.room[:0]
	return m
}

// may reports whether the words that a form can't do without are among those that stand in the text from where it is to begin.
func (f *form) may(ahead *mask) bool {
	for i := range f.must {
		if !f.must[i].meets(ahead) {
			return false
		}
	}
	return true
}

// run matches the code from at on against the tokens from i on.
func (m *match) run(at, i int) bool {
	for {
		switch o := &m.f.code[at]; o.kind {
		case '.':
			m.to = i
			return true
		case 'f':
			return false
		case 'j':
			at = int(o.a)
		case 's':
			if one := &m.f.code[o.a]; one.kind == 'w' && !m.p.is(i, one) {
				at = int(o.b)
				continue
			}
			keep := len(m.vals)
			if m.run(int(o.a), i) {
				return true
			}
			m.vals = m.vals[:keep]
			at = int(o.b)
		case 'w':
			if !m.p.is(i, o) {
				return false
			}
			i++
			at++
		case 'r':
			v, to := m.p.rule(int(o.rule), i)
			if to < 0 {
				return false
			}
			m.vals = append(m.vals, capture{int(o.cap), v})
			i = to
			at++
		}
	}
}

// is reports whether one of the words of a step stands at i.
func (p *parser) is(i int, o *op) bool {
	if i >= len(p.t) {
		return false
	}
	w := p.words[i]
	if w == 0 {
		return false
	}
	if o.set != nil {
		return o.set.has(w)
	}
	return w == o.one || w == o.two
}

// memo is what a rule gave at a place.
type memo struct {
	of uint32 // the parser that it is of
	to int32
	v  any
}

func (m *memo) put(of uint32, v any, to int) {
	m.of, m.to = of, int32(to)
	if to >= 0 {
		m.v = v
	}
}

// rule reads a rule at i: its value, and where it ends; -1 if it does not fit. Of several
// forms the one that goes furthest is meant.
func (p *parser) rule(k, i int) (any, int) {
	if i < 0 || i > len(p.t) {
		return nil, -1
	}
	at := &p.memos[i*len(rules.native)+k]
	if at.of == p.id {
		if at.to < 0 {
			return nil, -1
		}
		return at.v, int(at.to)
	}
	at.of, at.to = p.id, -1 // a rule within itself at one place does not fit
	if p.steps++; p.steps > maxTries {
		return nil, -1
	}
	if f := rules.native[k]; f != nil {
		v, to := f(p, i)
		at.put(p.id, v, to)
		return v, to
	}
	list := rules.candidates(k, p.wordAt(i))
	if len(list) == 0 {
		return nil, -1
	}
	best := p.furthest(list, i)
	at.put(p.id, best.v, best.to)
	return best.v, best.to
}

// found is the value of a form, and where it ends; -1: none fits.
type found struct {
	v  any
	to int
}

// furthest is the value of the form that goes furthest from i on.
func (p *parser) furthest(list []candidate, i int) found {
	best := found{to: -1}
	ahead, asked := &p.ahead[i], fitting{}
	for n := range list {
		c := &list[n]
		if !c.may(ahead) || c.native != nil && !asked.begins(p, c, i) {
			continue
		}
		m := p.r.match(p, c.form, i)
		if m.run(0, i) && m.to > best.to {
			if v := c.value(m); v != nil {
				best = found{v, m.to}
			}
		}
		p.r.spare = append(p.r.spare, m)
	}
	return best
}

// value is what a form makes of what it matched; nil if it is not meant.
func (f *form) value(m *match) any {
	switch {
	case !f.when.hold(m):
		return nil
	case f.build == nil:
		return &ins.Nothing{}
	}
	return f.build(m)
}

// wordAt is the number of the word of the table that stands at i, 0 if none does.
func (p *parser) wordAt(i int) uint16 {
	if i >= len(p.t) {
		return 0
	}
	return p.words[i]
}

// named is rule by its name.
func (p *parser) named(rule string, i int) (any, int) {
	if q := &rules.quick[quickly(rule)]; q.name == rule {
		return p.rule(q.id, i)
	}
	return p.rule(rules.byName[rule], i)
}

// quickly is where the number of a rule stands that has to be found without counting up its whole name.
func quickly(rule string) byte { return byte(len(rule)*37) + rule[0]*5 + rule[len(rule)-1] }

// maxTries bounds the work on one line.
const maxTries = 400000

// parser reads the tokens of one line, or of one bracket.
type parser struct {
	t     []text.Token
	memos []memo
	id    uint32
	r     *Reader
	line  *ins.Line
	steps int
	depth int
	words []uint16 // the numbers of the tokens that are words of the table
	ahead []mask   // the words of the table that stand from each of them on
}

// memory is room for what the rules give at n places, for a parser so deep in brackets. A room is used again: what it
// holds is of the parser whose number it has.
func (r *Reader) memory(depth, n int) ([]memo, uint32) {
	if r.room == nil {
		r.room = rooms.Get().(*room)
	}
	n *= len(rules.native)
	for len(r.room.memos) <= depth {
		r.room.memos = append(r.room.memos, nil)
	}
	if len(r.room.memos[depth]) < n {
		r.room.memos[depth] = make([]memo, 2*n)
	}
	if r.room.ids++; r.room.ids == 0 { // round once: what is left of the first parsers would be of this one
		r.room.memos, r.room.ids = make([][]memo, depth+1), 1
		r.room.memos[depth] = make([]memo, 2*n)
	}
	return r.room.memos[depth], r.room.ids
}

// room is the memory of a reader, which the next one takes over.
type room struct {
	memos [][]memo
	ids   uint32
	words []uint16 // of the parsers of one line
	ahead []mask
}

// forWords is room for n words, and for what stands from each of them on; nothing, behind the last one. It is used again once the
// line of the text is read.
func (r *room) forWords(n int) ([]uint16, []mask) {
	at := len(r.ahead)
	if at+n >= cap(r.ahead) {
		at, r.words, r.ahead = 0, make([]uint16, 0, 2*cap(r.words)+n+64), make([]mask, 0, 2*cap(r.ahead)+n+64)
	}
	r.words, r.ahead = r.words[:at+n+1], r.ahead[:at+n+1]
	words, ahead := r.words[at:at+n:at+n], r.ahead[at:at+n+1:at+n+1]
	clear(words)
	ahead[n] = mask{}
	return words, ahead
}

// again lets the room for words be used again.
func (r *room) again() { r.words, r.ahead = r.words[:0], r.ahead[:0] }

// done gives the room to the next reader.
func (r *Reader) done() {
	if r.room != nil {
		rooms.Put(r.room)
		r.room = nil
	}
}

var rooms = sync.Pool{New: func() any { return &room{} }}

// ready makes the parser ready to read its tokens.
func (p *parser) ready() *parser {
	p.memos, p.id = p.r.memory(p.depth, len(p.t)+1)
	p.words, p.ahead = p.r.room.forWords(len(p.t))
	for i := len(p.t) - 1; i >= 0; i-- {
		t, m := &p.t[i], &p.ahead[i]
		*m = p.ahead[i+1]
		k := wordIDs[t.S]
		if m.set(k); t.Ord == 1 {
			k = firstID
			m.set(k)
		}
		if _, told := numerals[t.S]; told || t.Kind == 'n' || t.Kind == 'g' {
			m.set(numberID)
		}
		if t.Kind == 'w' || t.Kind == 'p' {
			p.words[i] = uint16(k)
		}
	}
	return p
}

func (p *parser) span(from, to int) ins.Span {
	if len(p.t) == 0 {
		return p.line.At
	}
	from = min(max(from, 0), len(p.t)-1)
	to = min(max(to, from), len(p.t)-1)
	a, b := &p.t[from], &p.t[to]
	s := ins.Span{Line: a.Line, Col: a.Col, End: b.End}
	for k := to; k >= from && p.t[k].Line != a.Line; k-- { // a line that goes on in the next
		s.End = p.t[max(k-1, from)].End
	}
	return s
}

func (p *parser) at(i int) *text.Token {
	if i >= 0 && i < len(p.t) {
		return &p.t[i]
	}
	return &nothing
}

var nothing text.Token

func (f *form) String() string { return fmt.Sprintf("%s: %s", f.rule, f.pattern) }
