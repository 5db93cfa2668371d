package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// test is a condition of a form beside its words: what it says, what stands around it, in which line and text.
type test func(m *match) bool

// tests are conditions that must all hold.
type tests []test

func (list tests) hold(m *match) bool {
	for _, t := range list {
		if !t(m) {
			return false
		}
	}
	return true
}

func no(t test) test        { return func(m *match) bool { return !t(m) } }
func all(list ...test) test { return tests(list).hold }
func either(list ...test) test {
	return func(m *match) bool { return slices.ContainsFunc(list, func(t test) bool { return t(m) }) }
}
func said(words ...string) test { return func(m *match) bool { return m.said(words...) } }
func one(name string) test {
	return func(m *match) bool { n := m.num(name, 1); return n.By == nil && n.All == 1 }
}
func has(name string) test { return func(m *match) bool { return m.has(name) } }

// The line and its text.

func inRow(m *match) bool    { return m.p.line.IsRow() }
func crochet(m *match) bool  { return m.p.r.crochet }
func knitting(m *match) bool { return m.p.r.knits }
func inRounds(m *match) bool { return m.p.r.roundR }
func begun(m *match) bool    { return m.p.r.began }
func takesUp(m *match) bool  { return m.p.takesUp() }

// limbs are pieces of a toy that its body is worked on from.
var limbs = set("leg legs arm arms foot feet ear ears limb limbs tentacle wing")

func behindLimb(m *match) bool {
	return slices.ContainsFunc(m.p.t[:m.from], func(t text.Token) bool { return limbs[t.S] })
}

// behindChain reports whether only one stitch stands between it and the chain with which the line begins: ch 2, 6 sc in 2nd ch.
func behindChain(m *match) bool {
	return m.from < 8 && m.p.at(0).Is("ch") && m.p.at(1).Kind == 'n' && m.p.at(2).Is(",")
}

// firstPlace reports whether no place is named before it in its line.
func firstPlace(m *match) bool {
	return !slices.ContainsFunc(m.p.t[:max(m.from-1, 0)], func(t text.Token) bool { return t.Is("in", "into", "next", "each", "across", "around") })
}

// behindRing reports whether no more than a chain and its join stand before it in its line.
func behindRing(m *match) bool {
	for i := range m.p.t[:m.from] {
		v, to := m.p.named("kind", i)
		if k, ok := v.(thing); to > i && ok && (k.Kind == nil || k.Kind.ID != "ch" && k.Kind.ID != "slst") {
			return false
		}
	}
	return m.from > 2
}

// Where it stands: opens and ends are the ends of the line, the others the words beside it or at its own ends.

func opens(m *match) bool { return m.from == 0 }
func ends(m *match) bool  { return m.to >= len(m.p.t) }

func beside(place func(m *match) int, words []string) test {
	return func(m *match) bool { return m.p.at(place(m)).Is(words...) }
}

func before(words ...string) test     { return beside(func(m *match) int { return m.to }, words) }
func after(words ...string) test      { return beside(func(m *match) int { return m.from - 1 }, words) }
func firstWord(words ...string) test  { return beside(func(m *match) int { return m.from }, words) }
func lastWord(words ...string) test   { return beside(func(m *match) int { return m.to - 1 }, words) }
func lineBegins(words ...string) test { return beside(func(*match) int { return 0 }, words) }
func opensOr(words ...string) test    { return either(opens, after(words...)) }
func endsOr(words ...string) test     { return either(ends, before(words...)) }

// alone reports whether it is the whole of its sentence, wholeLine of its line.
func alone(m *match) bool {
	return opensOr(".", ";", "then")(m) && endsOrKind("g", ".", ";")(m)
}

// leadsRow reports whether it is one shaping at its place in a row, behind which the row goes on: Row 2: Dec 1 st, k to last 2 sts, dec 1 st.
func leadsRow(m *match) bool {
	n, next := m.num("n", 1), m.to+1
	if !inRow(m) || n.By != nil || n.All != 1 || !m.p.at(m.to).Is(",") {
		return false
	}
	if m.p.at(next).Kind == 'n' {
		next++
	}
	return (m.p.thingAt(next) || m.p.at(next).Is("work", "patt", "pattern")) && !m.p.at(next).Is("ch", "chain", "chains")
}

// bounded reports whether it stands between signs.
func bounded(m *match) bool {
	return opensOr(".", ";", "then", ",", "and", "*", "(", "[")(m) && endsOrKind("g", ".", ";", ",", ")", "]")(m)
}

func wholeLine(m *match) bool { return opens(m) && m.to >= len(m.p.t)-1 && endsOr(".")(m) }

// ofGroups reports whether a unit of that name is of groups and no single stitches.
func ofGroups(name string) test {
	return func(m *match) bool { u := value[ins.Unit](m, name); return u.Stretch || u.Group != nil }
}

// beforeKind reports whether a token of one of these kinds stands behind it.
func beforeKind(kinds string) test {
	return func(m *match) bool { return !ends(m) && strings.IndexByte(kinds, m.p.at(m.to).Kind) >= 0 }
}

// beforeThing reports whether a stitch stands behind it.
func beforeThing(m *match) bool { return m.p.thingAt(m.to) }

// endsOrKind reports whether nothing stands behind it but such tokens or words.
func endsOrKind(kinds string, words ...string) test {
	return either(ends, beforeKind(kinds), before(words...))
}

// noWordBut reports whether no word stands behind it but these.
func noWordBut(words ...string) test { return either(no(beforeKind("w")), before(words...)) }

func oneWord(m *match) bool { return m.to == m.from+1 }

// beforeStranger reports whether a word stands behind it that no form has: slip makrer.
func beforeStranger(m *match) bool { return m.p.strangerAt(m.to) }

func (p *parser) strangerAt(i int) bool {
	t := p.at(i)
	return t.Kind == 'w' && len(t.S) > 3 && wordIDs[t.S] == 0
}

func saysOne(tokens []text.Token, words []string) bool {
	return slices.ContainsFunc(tokens, func(t text.Token) bool { return t.Is(words...) })
}

// saidBefore reports whether one of the words stands before it, lineSays whether it stands anywhere in the line.
func saidBefore(words ...string) test {
	return func(m *match) bool { return saysOne(m.p.t[:m.from], words) }
}
func lineSays(words ...string) test { return func(m *match) bool { return saysOne(m.p.t, words) } }
