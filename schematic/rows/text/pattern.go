package text

import (
	"encoding/binary"
	"regexp"
	"regexp/syntax"
	"slices"
	"sync"
	"sync/atomic"
	"unicode/utf8"
)

// Pattern is a regular expression that an automaton runs: it looks at each letter of a line once, and most lines fit few patterns.
// Where one fits, and its groups, the expression itself tells. Its states are made when a line first leads to them.
type Pattern struct {
	full   func() *regexp.Regexp
	prog   *syntax.Prog
	looks  syntax.EmptyOp // what it asks of the letters beside a place
	first  atomic.Pointer[state]
	making sync.Mutex // of what follows
	states map[string]*state
	seen   []uint32 // instructions, by the turn in which they were met
	turn   uint32
	todo   []uint32
	next   []uint32
	key    []byte
}

// state is where a pattern may stand between two letters.
type state struct {
	at     []uint32 // instructions, before what they ask of the place is known
	before rune     // a letter like the one before
	after  [utf8.RuneSelf + 1]atomic.Pointer[state]
	beyond [8]atomic.Pointer[edge] // behind letters beyond ASCII
}

// edge is where a letter leads.
type edge struct {
	letter rune
	to     *state
}

// atEnd stands for what follows the last letter.
const atEnd = utf8.RuneSelf

// mostStates bounds what a pattern remembers.
const mostStates = 1000

// fits and never are where nothing more has to be looked at.
var fits, never = &state{}, &state{}

// Once is a pattern that is compiled when it is first asked: a start does not pay for a text that is not read.
func Once(expr string) func() *Pattern {
	return sync.OnceValue(func() *Pattern {
		tree, err := syntax.Parse(expr, syntax.Perl)
		if err != nil {
			panic(err)
		}
		prog, err := syntax.Compile(tree.Simplify())
		if err != nil {
			panic(err)
		}
		p := &Pattern{full: sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expr) }), prog: prog, seen: make([]uint32, len(prog.Inst))}
		for i := range prog.Inst {
			if in := &prog.Inst[i]; in.Op == syntax.InstEmptyWidth {
				p.looks |= syntax.EmptyOp(in.Arg)
			}
		}
		p.anew()
		return p
	})
}

// anew begins without any states.
func (p *Pattern) anew() {
	p.states = map[string]*state{}
	p.first.Store(&state{at: []uint32{uint32(p.prog.Start)}, before: -1})
}

// may reports whether the pattern fits somewhere in s.
func (p *Pattern) may(s string) bool {
	at := p.first.Load()
	for _, c := range s {
		var to *state
		if c < utf8.RuneSelf {
			to = at.after[c].Load()
		} else if b := at.beyond[c%8].Load(); b != nil && b.letter == c {
			to = b.to
		}
		if to == nil {
			to = p.step(at, c)
		}
		if at = to; at == fits || at == never {
			return at == fits
		}
	}
	to := at.after[atEnd].Load()
	if to == nil {
		to = p.step(at, -1)
	}
	return to == fits
}

// step finds where a letter leads, -1 for none, and keeps it.
func (p *Pattern) step(at *state, c rune) *state {
	p.making.Lock()
	defer p.making.Unlock()
	to := p.leads(at, c)
	switch {
	case c < 0:
		at.after[atEnd].Store(to)
	case c < utf8.RuneSelf:
		at.after[c].Store(to)
	default:
		at.beyond[c%8].Store(&edge{c, to})
	}
	return to
}

// leads is where a letter leads.
func (p *Pattern) leads(at *state, c rune) *state {
	beside := syntax.EmptyOpContext(at.before, c)
	p.turn++
	p.todo, p.next = append(p.todo[:0], at.at...), p.next[:0]
	for len(p.todo) > 0 {
		k := p.todo[len(p.todo)-1]
		if p.todo = p.todo[:len(p.todo)-1]; p.seen[k] == p.turn {
			continue
		}
		p.seen[k] = p.turn
		switch in := &p.prog.Inst[k]; in.Op {
		case syntax.InstMatch:
			return fits
		case syntax.InstAlt, syntax.InstAltMatch:
			p.todo = append(p.todo, in.Out, in.Arg)
		case syntax.InstCapture, syntax.InstNop:
			p.todo = append(p.todo, in.Out)
		case syntax.InstEmptyWidth:
			if syntax.EmptyOp(in.Arg)&^beside == 0 {
				p.todo = append(p.todo, in.Out)
			}
		case syntax.InstFail:
		default:
			if c >= 0 && in.MatchRune(c) {
				p.next = append(p.next, in.Out)
			}
		}
	}
	if p.prog.StartCond()&syntax.EmptyBeginText == 0 {
		p.next = append(p.next, uint32(p.prog.Start))
	}
	if c < 0 || len(p.next) == 0 {
		return never
	}
	return p.state(c)
}

// state is the one at the next instructions, behind a letter.
func (p *Pattern) state(c rune) *state {
	slices.Sort(p.next)
	p.next = slices.Compact(p.next)
	before := ' '
	switch {
	case c == '\n' && p.looks&syntax.EmptyBeginLine != 0:
		before = c
	case syntax.IsWordChar(c) && p.looks&(syntax.EmptyWordBoundary|syntax.EmptyNoWordBoundary) != 0:
		before = 'a'
	}
	p.key = append(p.key[:0], byte(before))
	for _, k := range p.next {
		p.key = binary.LittleEndian.AppendUint32(p.key, k)
	}
	to := p.states[string(p.key)]
	if to == nil {
		if len(p.states) >= mostStates {
			p.anew()
		}
		to = &state{at: slices.Clone(p.next), before: before}
		p.states[string(p.key)] = to
	}
	return to
}

// MatchString reports whether s has a match.
func (p *Pattern) MatchString(s string) bool { return p.may(s) }

// FindString is the first match in s.
func (p *Pattern) FindString(s string) string {
	if !p.may(s) {
		return ""
	}
	return p.full().FindString(s)
}

// FindStringIndex is where the first match in s stands; nil if there is none.
func (p *Pattern) FindStringIndex(s string) []int {
	if !p.may(s) {
		return nil
	}
	return p.full().FindStringIndex(s)
}

// FindStringSubmatch is the first match in s and its groups; nil if there is none.
func (p *Pattern) FindStringSubmatch(s string) []string {
	if !p.may(s) {
		return nil
	}
	return p.full().FindStringSubmatch(s)
}

// FindStringSubmatchIndex is where the first match in s and its groups stand; nil if there is none.
func (p *Pattern) FindStringSubmatchIndex(s string) []int {
	if !p.may(s) {
		return nil
	}
	return p.full().FindStringSubmatchIndex(s)
}

// FindAllString are up to n matches in s, all if n is negative.
func (p *Pattern) FindAllString(s string, n int) []string {
	if !p.may(s) {
		return nil
	}
	return p.full().FindAllString(s, n)
}

// FindAllStringIndex is where up to n matches in s stand.
func (p *Pattern) FindAllStringIndex(s string, n int) [][]int {
	if !p.may(s) {
		return nil
	}
	return p.full().FindAllStringIndex(s, n)
}

// FindAllStringSubmatch are up to n matches in s and their groups.
func (p *Pattern) FindAllStringSubmatch(s string, n int) [][]string {
	if !p.may(s) {
		return nil
	}
	return p.full().FindAllStringSubmatch(s, n)
}

// FindAllStringSubmatchIndex is where up to n matches in s and their groups stand.
func (p *Pattern) FindAllStringSubmatchIndex(s string, n int) [][]int {
	if !p.may(s) {
		return nil
	}
	return p.full().FindAllStringSubmatchIndex(s, n)
}

// ReplaceAllString is s with its matches replaced.
func (p *Pattern) ReplaceAllString(s, by string) string {
	if !p.may(s) {
		return s
	}
	return p.full().ReplaceAllString(s, by)
}
