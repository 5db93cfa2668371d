package read

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// limit is what a count may be, and the words that may stand behind it.
type limit struct {
	least, most int64
	words       []string
	fraction    bool
}

var (
	stitchWords = []string{"st", "sts", "stitch", "stitches", "ch", "chs", "chains", "sc", "dc", "loops"}
	rowWords    = []string{"row", "rows", "rnd", "rnds", "round", "rounds"}
	timesWords  = []string{"time", "times"}
)

// Bounds of counts.
const (
	mostStitches = 20_000
	mostRows     = 20_000
	mostTimes    = 5_000
	mostPieceRow = 50_000
	mostMotifs   = 200
)

var (
	stitches   = limit{least: 0, most: mostStitches, words: stitchWords}
	someSts    = limit{least: 1, most: mostStitches, words: stitchWords}
	rows       = limit{least: 0, most: mostRows, words: rowWords}
	every      = limit{least: 1, most: mostRows, words: rowWords}
	times      = limit{least: 0, most: mostTimes, words: timesWords}
	copies     = limit{least: 0, most: 1000, words: timesWords}
	motifs     = limit{least: 1, most: mostMotifs}
	quantities = limit{least: 0, most: 1_000_000, fraction: true}
)

// counts is the whole numbers at a key, one a size.
func (m *mapped) counts(name string, lim limit) expr.Graded {
	n := m.get(name)
	if n == nil {
		return expr.Graded{}
	}
	return m.r.counts(n, quoted(name), lim)
}

func (r *reader) counts(n *yaml.Node, what string, lim limit) expr.Graded {
	if g, ok := r.ordinal(n, lim); ok {
		return g
	}
	if g, ok := r.calledCount(n, what, lim); ok {
		return g
	}
	g, ok := r.graded(n, what)
	if !ok || !r.countable(g, what, lim) {
		return expr.Graded{}
	}
	return g.low
}

// ordinal reads every row, every other row and every 4th row in the words of the trade.
func (r *reader) ordinal(n *yaml.Node, lim limit) (expr.Graded, bool) {
	if len(lim.words) == 0 || lim.words[0] != "row" || n.Kind != yaml.ScalarNode || r.sizes.Len() == 0 {
		return expr.Graded{}, false
	}
	f := strings.Fields(strings.ToLower(n.Value))
	if len(f) > 0 && (f[0] == "every" || f[0] == "each") {
		f = f[1:]
	}
	if len(f) == 0 || !in(f[len(f)-1], rowWords) {
		return expr.Graded{}, false
	}
	v := everyWords(f[:len(f)-1])
	if v < lim.least || v > lim.most || v == 0 {
		return expr.Graded{}, false
	}
	return expr.Const(units.Int(v), r.sizes.Len()), true
}

// everyWords is how many rows apart the words before 'row' say: none, other, second or 4th; else 0.
func everyWords(f []string) int64 {
	switch {
	case len(f) == 0:
		return 1
	case len(f) > 1:
		return 0
	case f[0] == "other" || f[0] == "second":
		return 2
	}
	end := max(len(f[0])-2, 0)
	if u, ok := units.ParseNum(f[0][:end]); ok && u.IsInt() && in(f[0][end:], []string{"st", "nd", "rd", "th"}) {
		return u.Floor()
	}
	return 0
}

func in(s string, list []string) bool {
	return slices.ContainsFunc(list, func(l string) bool { return strings.EqualFold(s, l) })
}

// countable holds numbers to a limit; each number that breaks it is an error of its own.
func (r *reader) countable(g graded, what string, lim limit) bool {
	if g.words != "" && !in(strings.TrimSuffix(g.words, "."), lim.words) {
		f := r.fail(g.wordsPos, "file/unit", "%s is a number, but %q follows it", what, finding.Clip(g.words))
		if f.Want = "a number alone"; len(lim.words) > 1 {
			f.Want = "a number, with or without " + lim.words[1]
		}
		if _, unit := expr.ParseUnit(g.words); unit {
			f.Fix = "give a whole number; a length is understood by even: and rows: only"
		}
		return false
	}
	ok := true
	for i := range r.sizes.Len() {
		v, has := g.low.At(i)
		if !has {
			continue
		}
		if i > 0 && g.alone {
			break
		}
		msg := ""
		switch {
		case g.high.Vals[i].Cmp(v) != 0:
			msg = "is a range, and one number is needed"
		case v.Sign() < 0:
			msg = fmt.Sprintf("is %s, and a count can't be less than %d", v, lim.least)
		case !v.IsInt() && !lim.fraction:
			msg = fmt.Sprintf("is %s, and a count must be whole", v)
		case v.Less(units.Int(lim.least)):
			msg = fmt.Sprintf("is %s, and must be at least %d", v, lim.least)
		case units.Int(lim.most).Less(v):
			msg = fmt.Sprintf("is %s, and can be at most %d", v, lim.most)
		default:
			continue
		}
		ok = false
		r.outside(g, i, lim, what+" "+msg)
	}
	return ok
}

// outside tells that the number of a size is not between its bounds.
func (r *reader) outside(g graded, i int, lim limit, message string) {
	f := r.fail(g.spot(i), "file/bounds", "%s", message)
	f.Want = fmt.Sprintf("a whole number from %d to %d", lim.least, lim.most)
	if lim.fraction {
		f.Want = fmt.Sprintf("a number from %d to %d", lim.least, lim.most)
	}
	if g.alone {
		return
	}
	f.Sizes = []string{r.sizes.Names[i]}
	if g.low.Vals[i].Sign() == 0 {
		f.Fix = "write – where a size has none"
	}
}

// whole is one whole number for all sizes at a key, or otherwise.
func (m *mapped) whole(name string, lim limit, otherwise int) int {
	n := m.get(name)
	if n == nil {
		return otherwise
	}
	g := m.counts(name, lim)
	if g.IsZero() {
		return otherwise
	}
	for i := range g.Vals {
		if !g.Has[i] || !g.Vals[i].Eq(g.Vals[0]) {
			m.r.fail(m.r.pos(n), "file/number", "%q must be one number for all sizes", name)
			return otherwise
		}
	}
	return g.Int(0, otherwise)
}

// longest is 10 m: no garment measures more.
var longest = units.Int(10_000)

// lengths is the lengths at a key in mm, one a size.
func (m *mapped) lengths(name string) expr.Graded {
	n := m.get(name)
	if n == nil {
		return expr.Graded{}
	}
	l, ok := m.r.lengths(n, quoted(name), false)
	if !ok {
		return expr.Graded{}
	}
	return l.Low
}

// lengths reads lengths, or ranges of them, in any form of a graded value, in
// one unit or in both.
func (r *reader) lengths(n *yaml.Node, what string, ranges bool) (expr.Length, bool) {
	if r.sizes.Len() == 0 {
		return expr.Length{}, false
	}
	if n.Kind == yaml.ScalarNode {
		if _, ok := r.scalar(n, what); !ok {
			return expr.Length{}, false
		}
		if l, called, ok := r.calledLength(n, what); called {
			return l, ok
		}
		l, p := expr.ParseLength(n.Value, r.sizes, r.unit)
		if p != nil {
			r.problem(n, p)
			return l, false
		}
		for _, line := range l.Lines {
			r.bracketed(n, line)
		}
		return l, r.measurable(r.spread(n, l.Lines[0]), l, what, ranges)
	}
	g, ok := r.graded(n, what)
	if !ok {
		return expr.Length{}, false
	}
	l := expr.Length{Unit: r.unit, Ranged: g.ranged}
	if g.words != "" {
		u, ok := expr.ParseUnit(g.words)
		if !ok {
			f := r.fail(g.wordsPos, "file/unit", "%q is not a unit of length", finding.Clip(g.words))
			f.Want = "cm, in or mm"
			return l, false
		}
		l.Unit = u
	}
	l.Low, l.High = inMM(g.low, l.Unit), inMM(g.high, l.Unit)
	return l, r.measurable(g, l, what, ranges)
}

func inMM(g expr.Graded, u units.Unit) expr.Graded {
	out := expr.Graded{Vals: make([]units.Num, len(g.Vals)), Has: g.Has}
	for i, v := range g.Vals {
		out.Vals[i] = units.Of(v, u)
	}
	return out
}

func (r *reader) measurable(g graded, l expr.Length, what string, ranges bool) bool {
	if l.Ranged && !ranges {
		r.fail(g.spot(0), "file/number", "%s is a range, and one length is needed", what).
			Want = "a length such as 86 cm; a dash alone where a size has none"
		return false
	}
	ok := true
	for i := range r.sizes.Len() {
		lo, has := l.Low.At(i)
		if i > 0 && g.alone {
			break
		}
		if !has {
			continue
		}
		hi := units.Max(lo, l.High.Vals[i])
		if !l.Other.IsZero() && l.Other.Has[i] {
			hi = units.Max(hi, l.Other.Vals[i])
			lo = units.Min(lo, l.Other.Vals[i])
		}
		switch {
		case lo.Sign() < 0 && !r.below:
			r.fail(g.spot(i), "file/bounds", "%s can't be less than 0", what)
		case longest.Less(hi), lo.Less(longest.Neg()):
			r.fail(g.spot(i), "file/bounds", "%s is longer than 10 metres", what).Fix = "look at the unit: cm, in or mm"
		default:
			continue
		}
		ok = false
	}
	return ok
}

// amount is a number of rows, or a length that rows must reach, at a key.
func (m *mapped) amount(name string) schematic.Amount {
	n := m.get(name)
	a := schematic.Amount{}
	if i := m.choice("end after"); i >= 0 {
		a.End = [...]schematic.RowSide{schematic.RightSide, schematic.WrongSide}[i]
	}
	if n == nil || m.r.sizes.Len() == 0 {
		return a
	}
	if m.r.isLength(n) || m.r.callsLength(n) {
		a.Length = m.lengths(name)
		return a
	}
	a.Rows = m.counts(name, rows)
	if a.End != schematic.AnyRow {
		e := m.item("end after")
		m.r.fail(m.r.pos(e.at), "file/conflict", "%q goes with a length, and %s is a number of rows", "end after", quoted(name)).
			Fix = "take it out, or give a length such as 20 cm"
	}
	return a
}

// isLength reports whether a graded value has a unit of length behind it.
func (r *reader) isLength(n *yaml.Node) bool {
	switch n.Kind {
	case yaml.ScalarNode:
		t := strings.TrimRight(n.Value, " .")
		i := strings.LastIndexAny(t, " )]0123456789½¼¾⅛⅜⅝⅞")
		if i < 0 {
			return false
		}
		for i++; i < len(t) && t[i] >= 0x80 && t[i] < 0xc0; i++ { // the rest of a character of several bytes
		}
		_, ok := expr.ParseUnit(t[i:])
		return ok
	case yaml.SequenceNode:
		if slices.ContainsFunc(elements(n, r), r.isLength) {
			return true
		}
	case yaml.MappingNode:
		for _, p := range pairs(n, r) {
			if r.isLength(p.val) {
				return true
			}
		}
	}
	return false
}
