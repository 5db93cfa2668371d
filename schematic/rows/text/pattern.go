package text

import (
	"math/bits"
	"regexp"
	"regexp/syntax"
	"slices"
	"sync"
	"sync/atomic"
	"unicode/utf8"
)

// Pattern is a regular expression that first looks whether a line has the letters that it can't do without: most lines have not.
type Pattern struct {
	*regexp.Regexp
	need []letters // of which a line must have one; nil: nothing is known
}

// Once is a pattern that is compiled when it is first asked: a start does not pay for a text that is not read.
func Once(expr string) func() *Pattern { return (&lazy{expr: expr}).pattern }

// lazy is an expression and, once it was asked, what is made of it.
type lazy struct {
	expr string
	once sync.Once
	p    Pattern
}

func (l *lazy) pattern() *Pattern {
	l.once.Do(func() {
		l.p.Regexp = regexp.MustCompile(l.expr)
		if tree, err := syntax.Parse(l.expr, syntax.Perl); err == nil {
			for _, w := range needs(tree.Simplify()) {
				l.p.need = append(l.p.need, w.has)
			}
		}
	})
	return &l.p
}

// letters are the characters of a line, and its pairs of neighbours (mixed down to 256 bits), small and capital ones alike.
type letters [6]uint64

// beyond stands for every letter beyond ASCII.
const beyond = 0x7F

func (m *letters) one(c byte) { m[c/64] |= 1 << (c % 64) }

func (m *letters) pair(a, b byte) {
	h := a*31 + b
	m[2+h/64] |= 1 << (h % 64)
}

// lettersOf are those of a line. One with letters beyond ASCII that are small forms of s and k has all.
func lettersOf(s string) (m letters, all bool) {
	before := byte(0)
	for i := range len(s) {
		c := s[i]
		switch {
		case c >= 'A' && c <= 'Z':
			c |= 0x20
		case c >= 0x80:
			if c == 0xC5 || c == 0xE2 && i+1 < len(s) && s[i+1] == 0x84 {
				return m, true
			}
			c = beyond
		}
		m.one(c)
		if before != 0 {
			m.pair(before, c)
		}
		before = c
	}
	return m, false
}

// may reports whether the pattern may fit somewhere in s.
func (p *Pattern) may(s string) bool {
	if p.need == nil {
		return true
	}
	of := lastLine.Load()
	if of == nil || of.s != s { // a line is mostly held against many patterns
		of = &lineLetters{s: s}
		of.has, of.all = lettersOf(s)
		lastLine.Store(of)
	}
	for i := range p.need {
		if of.has.hold(&p.need[i]) {
			return true
		}
	}
	return of.all
}

// lineLetters are the letters of a line, lastLine those of the last one that was looked at.
type lineLetters struct {
	s   string
	has letters
	all bool
}

var lastLine atomic.Pointer[lineLetters]

func (m *letters) hold(o *letters) bool {
	return o[0]&^m[0]|o[1]&^m[1]|o[2]&^m[2]|o[3]&^m[3]|o[4]&^m[4]|o[5]&^m[5] == 0
}

// mostNeeds bounds the ways in which a line may have what a pattern needs.
const mostNeeds = 128

// way is one way to have what an expression needs: its letters, and the first and last of them where it begins and ends with
// these, 0 where that is not known.
type way struct {
	has         letters
	first, last byte
}

// needs are the letters without which an expression fits nowhere: one of several ways; nil if nothing is known.
func needs(e *syntax.Regexp) []way {
	switch e.Op {
	case syntax.OpLiteral:
		return literalNeeds(string(e.Rune))
	case syntax.OpCharClass:
		return classNeeds(e.Rune)
	case syntax.OpCapture:
		return needs(e.Sub[0])
	case syntax.OpPlus:
		return repeatNeeds(e.Sub[0])
	case syntax.OpRepeat:
		if e.Min > 0 {
			return repeatNeeds(e.Sub[0])
		}
	case syntax.OpAlternate:
		return anyNeeds(e.Sub)
	case syntax.OpConcat:
		return sequenceNeeds(e.Sub)
	}
	return nil
}

func literalNeeds(s string) []way {
	m, all := lettersOf(s)
	if all || m == (letters{}) {
		return nil
	}
	return []way{{m, lowered(s[0]), lowered(s[len(s)-1])}}
}

// lowered is a byte of a line as letters knows it.
func lowered(c byte) byte {
	switch {
	case c >= 'A' && c <= 'Z':
		return c | 0x20
	case c >= 0x80:
		return beyond
	}
	return c
}

// sequenceNeeds are the ways to have what expressions need that stand one behind the other.
func sequenceNeeds(subs []*syntax.Regexp) []way {
	out := []way{{}}
	for i, sub := range subs {
		switch sub.Op {
		case syntax.OpBeginLine, syntax.OpEndLine, syntax.OpBeginText, syntax.OpEndText, syntax.OpWordBoundary, syntax.OpNoWordBoundary, syntax.OpEmptyMatch:
			continue
		}
		more := needs(sub)
		if more == nil {
			more = []way{{}}
		}
		if i == 0 {
			out = more
		} else {
			out = bothNeeds(out, more)
		}
	}
	return known(out)
}

// repeatNeeds are the ways to have what an expression needs that stands there once or more: the last time may be another way
// than the first.
func repeatNeeds(sub *syntax.Regexp) []way {
	out := needs(sub)
	if len(out) > 1 {
		for i := range out {
			out[i].last = 0
		}
	}
	return out
}

// anyNeeds are the ways to have what one of several expressions needs.
func anyNeeds(subs []*syntax.Regexp) []way {
	var out []way
	for i, sub := range subs {
		more := needs(sub)
		if len(more)+len(out) > mostNeeds-(len(subs)-1-i) && len(more) > 0 {
			more = known(shared(more))
		}
		if more == nil {
			return nil
		}
		out = append(out, more...)
	}
	if len(out) > mostNeeds {
		return nil
	}
	return out
}

// known are the ways if each of them needs something.
func known(ways []way) []way {
	if slices.ContainsFunc(ways, func(w way) bool { return w.has == (letters{}) }) {
		return nil
	}
	return ways
}

// shared is the one way that needs what all of these need.
func shared(ways []way) []way {
	m := way{has: ways[0].has}
	for _, w := range ways[1:] {
		for i := range m.has {
			m.has[i] &= w.has[i]
		}
	}
	return []way{m}
}

// fewest is the number of letters and pairs that the weakest of these ways needs.
func fewest(ways []way) int {
	out := 0
	for i, w := range ways {
		n := 0
		for _, x := range w.has {
			n += bits.OnesCount64(x)
		}
		if i == 0 || n < out {
			out = n
		}
	}
	return out
}

// bothNeeds are the ways to have what two stretches need, one right behind the other.
func bothNeeds(a, b []way) []way {
	if len(a)*len(b) > mostNeeds {
		if fewest(a) > fewest(b) {
			b = shared(b)
		} else {
			a = shared(a)
		}
	}
	out := make([]way, 0, len(a)*len(b))
	for _, x := range a {
		for _, y := range b {
			both := way{x.has, x.first, y.last}
			for i := range y.has {
				both.has[i] |= y.has[i]
			}
			if x.last != 0 && y.first != 0 {
				both.has.pair(x.last, y.first)
			}
			out = append(out, both)
		}
	}
	return out
}

// classNeeds are the characters of a small class.
func classNeeds(ranges []rune) []way {
	var out []way
	for i := 0; i < len(ranges); i += 2 {
		for c := ranges[i]; c <= min(ranges[i+1], utf8.RuneSelf-1); c++ {
			w := literalNeeds(string(c))
			if w == nil || len(out) == mostNeeds {
				return nil
			}
			if !slices.Contains(out, w[0]) {
				out = append(out, w[0])
			}
		}
		if ranges[i+1] >= utf8.RuneSelf { // one letter stands for all of them
			return append(out, literalNeeds("é")...)
		}
	}
	return out
}

// MatchString reports whether s has a match.
func (p *Pattern) MatchString(s string) bool { return p.may(s) && p.Regexp.MatchString(s) }

// FindString is the first match in s.
func (p *Pattern) FindString(s string) string {
	if !p.may(s) {
		return ""
	}
	return p.Regexp.FindString(s)
}

// FindStringIndex is where the first match in s stands; nil if there is none.
func (p *Pattern) FindStringIndex(s string) []int {
	if !p.may(s) {
		return nil
	}
	return p.Regexp.FindStringIndex(s)
}

// FindStringSubmatch is the first match in s and its groups; nil if there is none.
func (p *Pattern) FindStringSubmatch(s string) []string {
	if !p.may(s) {
		return nil
	}
	return p.Regexp.FindStringSubmatch(s)
}

// FindStringSubmatchIndex is where the first match in s and its groups stand; nil if there is none.
func (p *Pattern) FindStringSubmatchIndex(s string) []int {
	if !p.may(s) {
		return nil
	}
	return p.Regexp.FindStringSubmatchIndex(s)
}

// FindAllString are up to n matches in s, all if n is negative.
func (p *Pattern) FindAllString(s string, n int) []string {
	if !p.may(s) {
		return nil
	}
	return p.Regexp.FindAllString(s, n)
}

// FindAllStringIndex is where up to n matches in s stand.
func (p *Pattern) FindAllStringIndex(s string, n int) [][]int {
	if !p.may(s) {
		return nil
	}
	return p.Regexp.FindAllStringIndex(s, n)
}

// FindAllStringSubmatch are up to n matches in s and their groups.
func (p *Pattern) FindAllStringSubmatch(s string, n int) [][]string {
	if !p.may(s) {
		return nil
	}
	return p.Regexp.FindAllStringSubmatch(s, n)
}

// FindAllStringSubmatchIndex is where up to n matches in s and their groups stand.
func (p *Pattern) FindAllStringSubmatchIndex(s string, n int) [][]int {
	if !p.may(s) {
		return nil
	}
	return p.Regexp.FindAllStringSubmatchIndex(s, n)
}

// ReplaceAllString is s with its matches replaced.
func (p *Pattern) ReplaceAllString(s, by string) string {
	if !p.may(s) {
		return s
	}
	return p.Regexp.ReplaceAllString(s, by)
}
