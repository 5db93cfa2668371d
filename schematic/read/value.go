package read

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Bounds of texts, in characters.
const (
	longestName = 200
	longestLine = 5000
)

// scalar is the text of a node, or an error if it is no text.
func (r *reader) scalar(n *yaml.Node, what string) (string, bool) {
	if n.Kind != yaml.ScalarNode {
		f := r.fail(r.pos(n), "file/kind", "%s must be one text, and this is %s", what, kindOf(n))
		f.Fix = "write it after the colon, on the same line"
		if n.Kind == yaml.MappingNode && n.Style&yaml.FlowStyle == 0 && len(n.Content) == 2 && n.Content[0].Line == n.Content[1].Line {
			f.Fix = "put quotes around a text that has a colon in it"
		}
		return "", false
	}
	if strings.TrimSpace(n.Value) == "" {
		r.fail(r.pos(n), "file/empty", "%s is empty", what)
		return "", false
	}
	return n.Value, true
}

// text is a name or a line of at most most characters, without needless space.
func (r *reader) text(n *yaml.Node, what string, most int) string {
	s, ok := r.scalar(n, what)
	if !ok {
		return ""
	}
	r.curly(n)
	s = spaced(s)
	if c := utf8.RuneCountInString(s); c > most {
		f := r.fail(r.pos(n), "file/bounds", "%s has %d characters", what, c)
		f.Want = fmt.Sprintf("at most %d", most)
		return ""
	}
	return s
}

// curly warns of a text in curly quotes, which do not quote.
func (r *reader) curly(n *yaml.Node) {
	s := strings.TrimSpace(n.Value)
	if n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0 || s == "" {
		return
	}
	first, _ := utf8.DecodeRuneInString(s)
	last, _ := utf8.DecodeLastRuneInString(s)
	if strings.ContainsRune("“„«‘‚", first) && strings.ContainsRune("”“»’‘", last) {
		f := r.note(finding.Warning, r.pos(n), "file/quotes", "the curly quotes are part of the text and will be printed")
		f.Fix = `use straight quotes (") or none`
	}
	if c := n.LineComment; len(c) > 1 && c[0] == '#' && c[1] >= '0' && c[1] <= '9' {
		f := r.note(finding.Warning, r.pos(n), "file/comment", "the text ends here: %q is read as a comment", c)
		f.Fix = "put quotes around the whole text, or a space after # if it is a comment"
	}
}

func (m *mapped) text(name string) string {
	n := m.get(name)
	if n == nil {
		return ""
	}
	return m.r.text(n, quoted(name), longestName)
}

// choice is the number of the word that stands at the key, or -1.
func (m *mapped) choice(name string) int {
	n := m.get(name)
	if n == nil {
		return -1
	}
	return m.r.choice(n, quoted(name), m.table.find(name).pick)
}

func (r *reader) choice(n *yaml.Node, what string, pick []string) int {
	s, ok := r.scalar(n, what)
	if !ok {
		return -1
	}
	w := plainKey(s)
	for i, p := range pick {
		if w == plainKey(p) {
			return i
		}
	}
	f := r.fail(r.pos(n), "file/choice", "%s can't be %q", what, finding.Clip(s))
	f.Want = "one of: " + strings.Join(pick, ", ")
	if len(pick) == 1 {
		f.Want = pick[0]
	}
	if like := cmp.Or(finding.Nearest(s, pick), among(strings.Fields(w), pick)); like != "" {
		f.Fix = "did you mean " + quoted(like) + "?"
	}
	return -1
}

// spoken are choices as people say them.
var spoken = map[string]string{"english": "UK", "british": "UK", "american": "US",
	"inch": "in", "inches": "in", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm", "metric": "cm", "imperial": "in"}

// among is the first of the words that is one of pick, or says it in another way, misspelt or not; empty if none does.
func among(words, pick []string) string {
	said := slices.Sorted(maps.Keys(spoken))
	for _, w := range words {
		w = strings.Trim(w, ",;/")
		if u, ok := units.ParseUnit(w); ok {
			w = u.String()
		} else if like := finding.Nearest(w, said); like != "" {
			w = spoken[like]
		}
		if slices.Contains(pick, w) {
			return w
		}
	}
	return ""
}

// yes reads yes or no.
func (m *mapped) yes(name string) bool {
	n := m.get(name)
	if n == nil {
		return false
	}
	return m.r.yes(n, quoted(name))
}

func (r *reader) yes(n *yaml.Node, what string) bool {
	if empty(n) {
		return true
	}
	s, ok := r.scalar(n, what)
	if !ok {
		return false
	}
	switch strings.ToLower(strings.TrimSpace(s)) {
	case "yes", "true":
		return true
	case "no", "false":
		return false
	}
	f := r.fail(r.pos(n), "file/choice", "%s can't be %q", what, finding.Clip(s))
	f.Want = "yes or no"
	return false
}

// graded is a line of numbers as it was read, with the place of each.
type graded struct {
	low, high expr.Graded
	ranged    bool
	words     string
	wordsPos  finding.Pos
	spot      func(i int) finding.Pos // of the number of size i
	spots     []finding.Pos           // for a list or mapping
	alone     bool                    // one number for all sizes
}

// graded reads a number for each size in any of its forms: a number for all,
// the trade's line, a list or a mapping by size.
func (r *reader) graded(n *yaml.Node, what string) (graded, bool) {
	if r.sizes.Len() == 0 {
		return graded{}, false // the sizes could not be read: that has been told
	}
	switch n.Kind {
	case yaml.ScalarNode:
		if _, ok := r.scalar(n, what); !ok {
			return graded{}, false
		}
		l, p := expr.ParseLine(n.Value, r.sizes)
		if p != nil {
			r.problem(n, p)
			return graded{}, false
		}
		r.bracketed(n, l)
		return r.spread(n, l), true
	case yaml.SequenceNode:
		return r.gradedList(n, what)
	case yaml.MappingNode:
		return r.gradedMap(n, what)
	}
	return graded{}, false
}

// spread gives the places of a line's numbers, one a size.
func (r *reader) spread(n *yaml.Node, l expr.Line) graded {
	g := graded{low: l.Low, high: l.High, ranged: l.Ranged, words: l.Words, alone: len(l.Spans) == 1}
	if l.Words != "" {
		g.wordsPos = r.spanPos(n, l.WordsAt)
	}
	g.spot = func(i int) finding.Pos { return r.spanPos(n, l.Spans[min(i, len(l.Spans)-1)]) }
	return g
}

// spanPos is the place of a stretch of a node's text.
func (r *reader) spanPos(n *yaml.Node, s expr.Span) finding.Pos {
	if r.folded(n) {
		return r.pos(n)
	}
	p := r.textPos(n)
	p.EndCol = p.Col + s.End
	p.Col += s.Start
	return p
}

func (r *reader) bracketed(n *yaml.Node, l expr.Line) {
	if l.Alike(r.sizes) {
		return
	}
	f := r.note(finding.Warning, r.pos(n), "words/brackets", "the brackets group the sizes in another way than the line of sizes does")
	f.Want = r.sizes.Full(r.sizes.Names)
}

var oneSize = expr.Sizes{Names: []string{""}, Groups: []int{1}}

// single reads one entry of a list or of a mapping by size.
func (r *reader) single(n *yaml.Node, what string, g *graded, i int) bool {
	if n.Kind == yaml.SequenceNode && len(n.Content) <= 1 && (len(n.Content) == 0 || empty(n.Content[0])) {
		n = &yaml.Node{Kind: yaml.ScalarNode, Value: "-", Line: n.Line, Column: n.Column} // a dash alone
	}
	if n.Kind == yaml.ScalarNode && empty(n) {
		f := r.fail(r.pos(n), "file/empty", "%s has an entry without a number", what)
		f.Fix = "write a dash (–) or none where a size has none"
		return false
	}
	if _, ok := r.scalar(n, "a number for one size"); !ok {
		return false
	}
	l, p := expr.ParseLine(n.Value, oneSize)
	if p != nil {
		r.problem(n, p)
		return false
	}
	g.low.Vals[i], g.low.Has[i] = l.Low.Vals[0], l.Low.Has[0]
	g.high.Vals[i], g.high.Has[i] = l.High.Vals[0], l.High.Has[0]
	g.ranged = g.ranged || l.Ranged
	g.spots[i] = r.pos(n)
	if l.Words != "" {
		if g.words != "" && !strings.EqualFold(g.words, l.Words) {
			r.fail(r.spanPos(n, l.WordsAt), "file/unit", "%q and %q are in one list", g.words, l.Words).
				Want = "one unit for all the numbers of a list"
			return false
		}
		g.words, g.wordsPos = l.Words, r.spanPos(n, l.WordsAt)
	}
	return true
}

func (r *reader) blank() graded {
	n := r.sizes.Len()
	spots := make([]finding.Pos, n)
	g := graded{low: expr.Const(units.Num{}, n), high: expr.Const(units.Num{}, n), spots: spots, spot: func(i int) finding.Pos { return spots[i] }}
	for i := range n {
		g.low.Has[i], g.high.Has[i] = false, false
	}
	return g
}

func (r *reader) gradedList(n *yaml.Node, what string) (graded, bool) {
	all := elements(n, r)
	size := r.sizes.Len()
	if len(all) == 1 && size > 1 && strings.HasPrefix(strings.TrimSpace(all[0].Value), "(") {
		f := r.fail(r.pos(all[0]), "file/kind", "the dash before this makes a list of one entry, not a size that has none")
		f.Fix = "write – or none for the size that has none: – " + finding.Clip(all[0].Value)
		return graded{}, false
	}
	if len(all) != size {
		f := r.fail(r.pos(n), "file/list-length", "%s for %s", plural(len(all), "entry", "entries"), plural(size, "size", "sizes"))
		f.Want = "one for each of " + r.sizes.Full(r.sizes.Names)
		if len(all) < size {
			f.Sizes = slices.Clone(r.sizes.Names[len(all):])
			f.Fix = "add one for " + strings.Join(f.Sizes, ", ") + "; a dash (–) or none where a size has none"
		} else {
			f.Pos = r.pos(all[size])
			f.Fix = "take out what is too much"
		}
		return graded{}, false
	}
	g, ok := r.blank(), true
	for i, c := range all {
		ok = r.single(c, what, &g, i) && ok
	}
	return g, ok
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func (r *reader) gradedMap(n *yaml.Node, what string) (graded, bool) {
	g, ok := r.blank(), true
	at := make([]*yaml.Node, r.sizes.Len())
	for _, p := range pairs(n, r) {
		i := -1
		if p.at.Kind == yaml.ScalarNode {
			i = r.sizes.Index(p.at.Value)
		}
		switch {
		case i < 0:
			ok = false
			f := r.fail(r.pos(p.at), "file/unknown-size", "%q is none of the sizes", finding.Clip(p.at.Value))
			f.Want = "one of: " + strings.Join(r.sizes.Names, ", ")
			if like := finding.Nearest(p.at.Value, r.sizes.Names); like != "" {
				f.Fix = "did you mean " + quoted(like) + "?"
			}
		case at[i] != nil:
			ok = false
			r.duplicate(at[i], p.at)
		default:
			at[i] = p.at
			ok = r.single(p.val, what, &g, i) && ok
		}
	}
	var none []string
	for i, a := range at {
		if a == nil {
			none = append(none, r.sizes.Names[i])
		}
	}
	if len(none) > 0 && ok {
		f := r.fail(r.pos(n), "file/list-length", "%s has no number for %s", what, strings.Join(none, ", "))
		f.Sizes = none
		f.Fix = "add " + none[0] + ": and its number, or a dash (–) where the size has none"
		return g, false
	}
	return g, ok
}
