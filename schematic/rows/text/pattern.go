package text

import (
	"regexp"
	"regexp/syntax"
	"slices"
	"sync"
	"sync/atomic"
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
			l.p.need = needs(tree.Simplify())
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
const mostNeeds = 32

// needs are the letters without which an expression fits nowhere: one of several ways; nil if nothing is known.
func needs(e *syntax.Regexp) []letters {
	switch e.Op {
	case syntax.OpLiteral:
		m, all := lettersOf(string(e.Rune))
		if all || m == (letters{}) {
			return nil
		}
		return []letters{m}
	case syntax.OpCharClass:
		return classNeeds(e.Rune)
	case syntax.OpCapture, syntax.OpPlus:
		return needs(e.Sub[0])
	case syntax.OpAlternate:
		var out []letters
		for _, sub := range e.Sub {
			more := needs(sub)
			if more == nil || len(out)+len(more) > mostNeeds {
				return nil
			}
			out = append(out, more...)
		}
		return out
	case syntax.OpConcat:
		var out []letters
		for _, sub := range e.Sub {
			out = bothNeeds(out, needs(sub))
		}
		return out
	}
	return nil
}

// bothNeeds are the ways to have what two stretches need, one behind the other.
func bothNeeds(a, b []letters) []letters {
	switch {
	case a == nil || b != nil && len(a)*len(b) > mostNeeds && len(b) < len(a):
		return b
	case b == nil || len(a)*len(b) > mostNeeds:
		return a
	}
	var out []letters
	for _, x := range a {
		for _, y := range b {
			for i := range y {
				y[i] |= x[i]
			}
			out = append(out, y)
		}
	}
	return out
}

// classNeeds are the characters of a small class.
func classNeeds(ranges []rune) []letters {
	var out []letters
	for i := 0; i < len(ranges); i += 2 {
		for c := ranges[i]; c <= ranges[i+1]; c++ {
			m, all := lettersOf(string(c))
			switch {
			case all: // such a line is not looked at
				continue
			case m == (letters{}) || len(out) == mostNeeds:
				return nil
			case !slices.Contains(out, m):
				out = append(out, m)
			}
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
