package work

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/units"
)

// raw is one thing that does not fit, in one size.
type raw struct {
	kind  string
	at    ins.Span
	sev   finding.Severity
	msg   string // with %s where the sizes' numbers stand, %h where they are hundredths
	fix   string
	a     []int  // the numbers of msg, then those of fix
	in    string // the section, if it is not the one that is worked
	gap   int    // by how many stitches it does not fit
	of    int    // of so many; 0: not told
	short bool   // a repeat that goes around, as far as it goes
	why   doubt  // it may be read otherwise than it is meant

	stated ins.Num // the line of numbers that %l of fix mends
}

// merged is raw over several sizes.
type merged struct {
	raw
	section string
	sizes   []int
	vals    [][]int
}

// merge adds what size found in section to the list; the same thing in several
// sizes becomes one finding.
func merge(list []*merged, index map[string]*merged, section string, size int, found []raw) []*merged {
	for _, r := range found {
		section := section
		if r.in != "" {
			section = r.in
		}
		key := fmt.Sprintf("%d:%d:%s:%s", r.at.Line, r.at.Col, r.kind, r.msg)
		m := index[key]
		if m == nil {
			m = &merged{raw: r, section: section}
			index[key] = m
			list = append(list, m)
		}
		if r.why == none { // one size is sure of it
			m.why = none
		}
		if slices.Contains(m.sizes, size) { // told of the number and of the rows
			continue
		}
		m.sizes = append(m.sizes, size)
		m.vals = append(m.vals, r.a)
	}
	return list
}

// finding is the merged thing as told.
func (m *merged) finding(x *ins.Text) finding.Finding {
	all := len(m.sizes) == len(x.Sizes.Names)
	var names []string
	if !all {
		for _, i := range m.sizes {
			names = append(names, x.Sizes.Names[i])
		}
	}
	f := finding.Finding{Kind: m.kind, Severity: m.sev, Section: m.section, Sizes: names,
		Pos: x.Pos(m.at)}
	t := telling{merged: m, x: x, all: all}
	f.Message = t.fill(m.msg)
	f.Fix = t.fill(m.fix)
	if parts := strings.SplitN(f.Message, " | ", 3); len(parts) == 3 {
		f.Message, f.Have, f.Want = parts[0], parts[1], parts[2]
	}
	return ins.Clipped(f)
}

// telling puts the numbers of all sizes concerned into words.
type telling struct {
	*merged
	x    *ins.Text
	all  bool // every size is concerned
	next int  // the number that comes next
}

// fill puts the numbers where text has a place for them: %s a number, %h hundredths of a unit, %l the
// stated line with the first number in its place.
func (t *telling) fill(text string) string {
	parts := strings.Split(text, "%")
	var out strings.Builder
	out.WriteString(parts[0])
	for _, part := range parts[1:] {
		switch {
		case strings.HasPrefix(part, "l"):
			out.WriteString(t.mended() + part[1:])
		case t.next < len(t.a) && (strings.HasPrefix(part, "s") || strings.HasPrefix(part, "h")):
			n := t.numbers(part[0] == 'h')
			t.next++
			if n == "1" {
				part = part[:1] + singular(part[1:])
			}
			out.WriteString(n + part[1:])
		default: // of a name in the text
			out.WriteString("%" + part)
		}
	}
	return out.String()
}

// numbers is the next number, of each size concerned: in the trade's line if those are all, else in words.
func (t *telling) numbers(hundredths bool) string {
	vals := make([]string, len(t.vals))
	for i, v := range t.vals {
		vals[i] = written(v[t.next], hundredths)
	}
	if t.all {
		return t.x.Sizes.Line(vals)
	}
	if len(slices.Compact(slices.Clone(vals))) == 1 {
		return vals[0]
	}
	return ins.And(vals)
}

// mended is the stated line of all sizes, with the numbers that do not fit put right.
func (t *telling) mended() string {
	vals := make([]string, len(t.x.Sizes.Names))
	for i := range vals {
		vals[i] = written(t.stated.At(i), false)
	}
	for i, size := range t.sizes {
		vals[size] = written(t.vals[i][0], false)
	}
	return t.x.Sizes.Line(vals)
}

func written(v int, hundredths bool) string {
	switch {
	case v == ins.None:
		return "–"
	case hundredths:
		return units.Decimal(units.Frac(int64(v), 100), 2)
	}
	return strconv.Itoa(v)
}

// verbs are what follows a noun that a number goes with, for one of it.
var verbs = map[string]string{"are": "is", "remain": "remains", "measure": "measures", "have": "has", "do": "does", "would": "would"}

// singular is the text behind a number of one: its noun, and the verb that follows it.
func singular(text string) string {
	words := strings.SplitN(text, " ", 5)
	noun := 0
	for i := 1; i < min(len(words), 3) && noun == 0; i++ {
		if one, ok := oneOf(words[i]); ok {
			words[i], noun = one, i
		}
	}
	if noun > 0 && noun+1 < len(words) {
		if v, ok := verbs[words[noun+1]]; ok {
			words[noun+1] = v
		}
	}
	return strings.Join(words, " ")
}

// oneOf is one of what word names many of.
func oneOf(word string) (string, bool) {
	end := ""
	if k := len(strings.TrimRight(word, ",;:.")); k < len(word) {
		word, end = word[:k], word[k:]
	}
	switch {
	case word == "sts":
		return "st" + end, true
	case len(word) < 4 || !strings.HasSuffix(word, "s") || word == "less" || word == "this":
		return "", false
	case strings.HasSuffix(word, "ches"):
		return strings.TrimSuffix(word, "es") + end, true
	}
	return strings.TrimSuffix(word, "s") + end, true
}

// tell notes something that does not fit. Message parts are cut at ' | ': what is
// wrong, what was found, what was expected.
func (w *work) tell(kind string, sev finding.Severity, at ins.Span, msg, fix string, a ...int) {
	if w.quiet > 0 {
		w.missed++
		return
	}
	if w.blind { // how many it uses does not follow from the words
		return
	}
	if uses(w.found) && (kind == "rows/kind" || kind == "rows/place" || uses([]raw{{kind: kind}})) {
		return // of the same cause as what was told
	}
	f := raw{kind: kind, sev: sev, at: at, msg: msg, fix: fix, a: a}
	if w.from.stitches() <= fewest {
		f.why = bare
	}
	w.found = append(w.found, f)
}

// tellGap is tell with by how many of how many stitches it does not fit.
func (w *work) tellGap(gap, of int, kind string, at ins.Span, msg, fix string, a ...int) {
	k := len(w.found)
	w.tell(kind, finding.Warning, at, msg, fix, a...)
	if len(w.found) > k {
		w.found[k].gap, w.found[k].of = gap, of
	}
}
