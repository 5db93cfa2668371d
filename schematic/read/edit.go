package read

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"

	"flatwright/schematic/expr"
)

// Act is what a change does.
type Act int

// The acts. Set gives a field a value, or one Cell of it; an empty value takes
// the key out. Put adds the key called Key to the group. Take takes an entry of a list
// out. Insert puts an entry of the kind Key behind an entry of a list: a section, a
// part, a piece. Begin has the piece whose first section it is begin with one of the
// kind Key instead. Copy puts a copy of an entry of a list behind it. Widen puts a size
// called Value behind the size that Cell counts, with that one's numbers in every line of the
// trade, and Narrow takes the size out. Rename calls the sizes by their names of now where they still have those of Value.
const (
	Set Act = iota
	Put
	Take
	Insert
	Begin
	Copy
	Widen
	Narrow
	Rename
)

// Change is one change of a pattern file. Path is that of a field (Set) or group
// (the others), as Fields gives it.
type Change struct {
	Act   Act
	Path  string
	Key   string
	Value string
	Cell  int // number of the cell from 0; below 0: the whole value
	// Name is the name under a key that is a mapping of names (Put), such as gauges.
	Name string
	// After tells how many stitches there are after the section in the lines first to
	// last, one a size (-1: not known), so that what begins there fits. It may be nil.
	After func(first, last int) []int
	// Edges tells the names of the edges that there are, so that a join begins with one. It may be nil.
	Edges func() []string
}

// Edit makes a change at the bytes that it means and leaves every other byte of
// src as it is: comments, order, spelling and line ends. What it gives has been
// read again, and differs in nothing but what was meant. The error says why a
// change can't be made there; the text still can be changed by hand.
func Edit(src []byte, c Change) ([]byte, error) {
	r, root := whole(src)
	if root == nil {
		return nil, errors.New("the file can't be read; fix its text first")
	}
	if strings.ContainsFunc(c.Value+c.Name+c.Key, unicode.IsControl) {
		return nil, errors.New("a value is one line")
	}
	c.Value = strings.TrimSpace(c.Value)
	e := &editor{r: r, root: root, src: src, starts: lineStarts(src)}
	if err := e.find(c.Path); err != nil {
		return e.putLoose(c)
	}
	switch c.Act {
	case Set:
		return e.set(c)
	case Put:
		return e.put(c)
	case Take:
		return e.take()
	case Insert:
		return e.insert(c)
	case Begin:
		return e.begin(c)
	case Copy:
		return e.doubled(c)
	case Widen, Narrow:
		return e.resized(c)
	case Rename:
		return e.renamed(c)
	}
	return nil, fmt.Errorf("there is no such change")
}

// editor is a file with the place at which it is changed.
type editor struct {
	r      *reader
	root   *yaml.Node
	src    []byte
	starts []int // of the lines, in bytes
	trail  []step
}

// step is one step on the way down to a place: the mapping or list, and which of
// its entries.
type step struct {
	in   *yaml.Node
	all  []item // its entries; those of a list have no key
	at   int
	name string // in the table of the mapping, if it is known
}

func (s *step) item() item { return s.all[s.at] }

var errMoved = errors.New("the file has changed, and this place is not there any more")

func (e *editor) find(path string) error {
	if path == "" {
		return nil
	}
	n := e.root
	for name := range strings.SplitSeq(path, "/") {
		name = strings.NewReplacer("~1", "/", "~0", "~").Replace(name)
		s := step{in: n, at: -1, name: name}
		switch n.Kind {
		case yaml.MappingNode:
			s.all = pairs(n, e.r)
			s.at = slices.IndexFunc(s.all, func(p item) bool { return spaced(p.at.Value) == name })
		case yaml.SequenceNode:
			for i, c := range elements(n, e.r) {
				s.all = append(s.all, item{val: c})
				if fmt.Sprint(i) == name {
					s.at = i
				}
			}
		}
		if s.at < 0 {
			return errMoved
		}
		e.trail = append(e.trail, s)
		n = s.item().val
	}
	return nil
}

// node is the place itself.
func (e *editor) node() *yaml.Node {
	if len(e.trail) == 0 {
		return e.root
	}
	return e.trail[len(e.trail)-1].item().val
}

func (e *editor) set(c Change) ([]byte, error) {
	n := e.node()
	if n.Kind != yaml.ScalarNode {
		return nil, errors.New("this is more than one value; change it in the text")
	}
	value := c.Value
	if c.Cell >= 0 {
		var err error
		if value, err = e.withCell(n.Value, c.Cell, value); err != nil {
			return nil, err
		}
	}
	if value == "" {
		return e.takeKey()
	}
	from, to, ok := e.span(n)
	if !ok {
		return nil, errors.New("this value spans several lines; change it in the text")
	}
	before := flat(e.root, e.r)
	for _, text := range written(value, n.Style) {
		out := splice(e.src, from, to, text)
		after := tokens(out)
		if len(after) != len(before) || !valueAt(out, e.names(), value) {
			continue
		}
		if at := prefix(before, after); at+1+suffix(before[min(at+1, len(before)):], after[min(at+1, len(after)):]) >= len(before) {
			return out, nil
		}
	}
	return nil, errors.New("this can't be written here; change it in the text")
}

// withCell is a line of the trade with another number in one of its places.
func (e *editor) withCell(line string, i int, value string) (string, error) {
	e.readSizes()
	cells := e.r.cells(line)
	if i >= len(cells) {
		return "", errMoved
	}
	if value == "" {
		value = "–"
		if len(cells) == 1 {
			return "", nil
		}
	}
	t := []rune(line)
	out := string(t[:cells[i].From]) + value + string(t[cells[i].To:])
	if got := e.r.cells(out); len(got) != len(cells) || got[i].Text != value {
		if _, p := expr.ParseLine(out, e.r.sizes); p != nil && p.Kind == "file/number" {
			return "", fmt.Errorf("%s: expected %s", p.Message, p.Want)
		}
		return "", fmt.Errorf("%q is not one number", value)
	}
	return out, nil
}

// put adds a key to a mapping.
func (e *editor) put(c Change) ([]byte, error) {
	key, value := c.Key, c.Value
	n := e.node()
	lines := e.below(c)
	if n.Kind != yaml.MappingNode || value == "" && lines == nil {
		return nil, errors.New("a key and its value are needed")
	}
	all := pairs(n, e.r)
	if len(all) == 0 {
		return nil, errors.New("there is no key to put it after; write it in the text")
	}
	if slices.ContainsFunc(all, func(p item) bool { return spaced(p.at.Value) == key }) {
		return nil, fmt.Errorf("%q is there already", key)
	}
	if lines != nil {
		return e.putAll(key, lines)
	}
	behind := e.behind(n, all, key)
	e.trail = append(e.trail, step{in: n, all: all, at: behind})
	before := flat(e.root, e.r)
	path := append(e.names()[:len(e.trail)-1], key)
	for _, text := range written(value, 0) {
		var out []byte
		if n.Style&yaml.FlowStyle != 0 {
			_, end, ok := e.span(all[behind].val)
			if !ok {
				break
			}
			out = splice(e.src, end, end, ", "+key+": "+text)
		} else {
			out = e.insertLines(e.lastLine(), n.Column-1, key+": "+text)
		}
		after := tokens(out)
		if len(after) == len(before)+2 && added(before, after) && valueAt(out, path, value) {
			return out, nil
		}
	}
	return nil, errors.New("it can't be added here; write it into the text")
}

// putAll adds a key with the lines below it to the mapping of the place.
func (e *editor) putAll(key string, lines []string) ([]byte, error) {
	n := e.node()
	all := pairs(n, e.r)
	before := flat(e.root, e.r)
	e.trail = append(e.trail, step{in: n, all: all, at: e.behind(n, all, key)})
	out := e.insertLines(e.lastLine(), n.Column-1, append([]string{key + ":"}, lines...)...)
	if after := tokens(out); n.Style&yaml.FlowStyle == 0 && len(after) > len(before) && added(before, after) {
		return out, nil
	}
	return nil, errors.New("it can't be added here; write it into the text")
}

// putLoose puts the first key into a mapping that is not there yet, which a form shows before it is.
func (e *editor) putLoose(c Change) ([]byte, error) {
	above, missing := "", strings.Split(c.Path, "/")
	for e.trail = nil; len(missing) > 0 && e.find(under(above, missing[0])) == nil; e.trail = nil {
		above, missing = under(above, missing[0]), missing[1:]
	}
	e.trail = nil
	if len(missing) == 0 { // all of it is there, and is no mapping
		return nil, errMoved
	}
	if c.Act != Put || c.Value == "" || e.find(above) != nil || e.node().Kind != yaml.MappingNode {
		return nil, errMoved
	}
	t := e.table(e.node(), pairs(e.node(), e.r))
	var lines []string
	for depth, name := range append(missing, c.Key) {
		if t == nil || t.find(name) == nil {
			return nil, errMoved
		}
		if depth == len(missing) {
			break
		}
		if !t.find(name).loose() {
			return nil, errMoved
		}
		t = tableOf(t.find(name).of)
		if depth > 0 {
			lines = append(lines, strings.Repeat("  ", depth)+name+":")
		}
	}
	indent := strings.Repeat("  ", len(missing))
	if k := t.find(c.Key); k.form == named && c.Name != "" {
		lines = append(lines, indent+k.name+":")
		return e.putAll(missing[0], append(lines, indent+"  "+asText(c.Name)+": "+asText(c.Value)))
	}
	return e.putAll(missing[0], append(lines, indent+c.Key+": "+asText(c.Value)))
}

// below are the lines below a key that is a list, with a first entry, or a mapping of
// names, with a first one; nil for others.
func (e *editor) below(c Change) []string {
	if e.node().Kind != yaml.MappingNode {
		return nil
	}
	t := e.table(e.node(), pairs(e.node(), e.r))
	if t == nil {
		return nil
	}
	k := t.find(c.Key)
	switch {
	case k == nil:
	case k.form == named && c.Name != "" && c.Value != "":
		return []string{"  " + asText(c.Name) + ": " + c.Value}
	case k.form == words && t == patternKeys && c.Value != "":
		return []string{"  - " + asText(c.Value)}
	case k.form == list && len(entries()[k.of]) > 0 && (entries()[k.of][0].ask == "" || c.Value != ""):
		var lines []string
		e.readSizes()
		for i, l := range entries()[k.of][0].lines(beginning{sizes: e.r.sizes, value: c.Value, pieces: e.pieces(), edges: c.edges(k.of)}) {
			lines = append(lines, map[bool]string{true: "  - ", false: "    "}[i == 0]+l)
		}
		return lines
	}
	return nil
}

// behind is the entry of a mapping behind which a key is put: the last of those
// with one text that come before it in the table.
func (e *editor) behind(n *yaml.Node, all []item, name string) int {
	t := e.table(n, all)
	best := 0
	if t == nil {
		return len(all) - 1
	}
	order := func(s string) int {
		return slices.IndexFunc(t.keys, func(k key) bool { return k.name == s || slices.Contains(k.also, s) })
	}
	want := order(name)
	for i, p := range all {
		if o := order(spaced(p.at.Value)); o >= 0 && o < want && p.val.Kind == yaml.ScalarNode {
			best = i
		}
	}
	return best
}

// table is the table that a mapping is held to, or nil.
func (e *editor) table(n *yaml.Node, all []item) *table {
	if n == e.root {
		return patternKeys
	}
	if t := e.r.kind(n); t != nil && len(e.trail) > 1 && e.trail[len(e.trail)-2].name == "sections" {
		return t
	}
	for _, name := range []string{"piece", "part", "join", "motifs", "shaping", "panel", "start", "grading", "drawing", "colours"} {
		if t := tableOf(name); !slices.ContainsFunc(all, func(p item) bool { return t.find(spaced(p.at.Value)) == nil }) {
			return t
		}
	}
	return nil
}

// takeKey takes the key of the place out, with its line.
func (e *editor) takeKey() ([]byte, error) {
	if len(e.trail) == 0 {
		return nil, errors.New("this is the whole file, and no value")
	}
	s := e.trail[len(e.trail)-1]
	key := s.item().at
	if above := e.trail[:len(e.trail)-1]; len(s.all) == 1 && key != nil && len(above) > 0 {
		return e.takeAbove()
	}
	if key == nil || s.in.Kind != yaml.MappingNode || len(s.all) == 1 {
		return nil, errors.New("this value is needed; take it out in the text")
	}
	from, to, err := e.reach(s, key)
	if err != nil {
		return nil, err
	}
	before := flat(e.root, e.r)
	out := splice(e.src, from, to, "")
	if after := tokens(out); len(after) != len(before)-2 || !added(after, before) {
		return nil, errors.New("this can't be taken out here; take it out in the text")
	}
	return out, nil
}

// reach is what goes with a key that is taken out: its line, or what parts it from its neighbours.
func (e *editor) reach(s step, key *yaml.Node) (from, to int, err error) {
	_, to, ok := e.span(s.item().val)
	from, ok2 := e.offset(key.Line, key.Column-1)
	if !ok || !ok2 || key.Line != s.item().val.Line {
		return 0, 0, errors.New("this spans several lines; take it out in the text")
	}
	next := s.all[min(s.at+1, len(s.all)-1)].at
	line := e.starts[key.Line-1]
	switch rest := strings.TrimSpace(string(e.src[to:e.lineEnd(key.Line)])); {
	case s.in.Style&yaml.FlowStyle != 0 && s.at > 0:
		_, from, ok = e.span(s.all[s.at-1].val)
	case s.in.Style&yaml.FlowStyle != 0:
		to, ok = e.offset(next.Line, next.Column-1)
	case strings.TrimSpace(string(e.src[line:from])) != "": // behind the dash of an entry
		to, ok = e.offset(next.Line, next.Column-1)
		ok = ok && rest == "" && next.Line == key.Line+1
	case rest == "":
		from = line
		to = len(e.src)
		if key.Line < len(e.starts) {
			to = e.starts[key.Line]
		}
	default: // the comment stays
		for e.src[to] == ' ' {
			to++
		}
	}
	if !ok {
		return 0, 0, errors.New("this begins its entry; take it out in the text")
	}
	return from, to, nil
}

// takeAbove takes out the whole of the list or mapping that the place is the only entry of, with its key,
// if what it stands in may do without.
func (e *editor) takeAbove() ([]byte, error) {
	e.trail = e.trail[:len(e.trail)-1]
	needed := errors.New("it is the only one, and needed; change it")
	if len(e.trail) == 0 {
		return nil, needed
	}
	s := e.trail[len(e.trail)-1]
	key := s.item().at
	if key == nil || s.in.Kind != yaml.MappingNode || s.in.Style&yaml.FlowStyle != 0 {
		return nil, needed
	}
	if len(s.all) == 1 {
		return e.takeAbove()
	}
	t := e.tableAbove(s)
	if t == nil || t == pieceKeys {
		return nil, needed
	}
	// what leads a section or a part says what it is
	if k := t.find(spaced(key.Value)); k == nil || k.need || t != patternKeys && t != drawingKeys && k.name == t.keys[0].name {
		return nil, needed
	}
	last, to := e.lastLine(), len(e.src)
	if last < len(e.starts) {
		to = e.starts[last]
	}
	before, gone := flat(e.root, e.r), 1+len(flat(s.item().val, e.r))
	out := splice(e.src, e.starts[key.Line-1], to, "")
	if after := tokens(out); len(after) != len(before)-gone || !added(after, before) {
		return nil, errors.New("it can't be taken out here; take it out in the text")
	}
	return out, nil
}

// tableAbove is the table of the mapping that a step is in.
func (e *editor) tableAbove(s step) *table {
	trail := e.trail
	e.trail = trail[:len(trail)-1]
	defer func() { e.trail = trail }()
	return e.table(s.in, s.all)
}
