package read

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// take takes an entry of a list out, with its lines.
func (e *editor) take() ([]byte, error) {
	if len(e.trail) == 0 {
		return nil, errors.New("the pattern can't be taken out of itself")
	}
	s := e.trail[len(e.trail)-1]
	first, _, ok := e.dash(&s)
	if !ok {
		return nil, errors.New("this entry has no line of its own; take it out in the text")
	}
	if len(s.all) == 1 {
		return e.takeAbove()
	}
	last := e.lastLine()
	to := len(e.src)
	if last < len(e.starts) {
		to = e.starts[last]
	}
	out := splice(e.src, e.starts[first-1], to, "")
	before, gone := flat(e.root, e.r), len(flat(s.item().val, e.r))
	if after := tokens(out); len(after) != len(before)-gone || !added(after, before) {
		return nil, errors.New("it can't be taken out here; take it out in the text")
	}
	return out, nil
}

// insert puts an entry of a kind behind an entry of a list: a section, a part, a piece.
func (e *editor) insert(c Change) ([]byte, error) {
	list := e.listAt()
	if c.Act == Begin {
		list = "first section"
	}
	i := slices.IndexFunc(entries()[list], func(k entry) bool { return k.name == c.Key })
	if len(e.trail) == 0 || i < 0 {
		return nil, fmt.Errorf("a section %q can't be added here", c.Key)
	}
	if entries()[list][i].ask != "" && c.Value == "" {
		return nil, fmt.Errorf("what is needed: %s", entries()[list][i].ask)
	}
	s := e.trail[len(e.trail)-1]
	_, indent, ok := e.dash(&s)
	if !ok && list == "line" {
		return e.insertInLine(s.item().val, c.Value)
	}
	if !ok {
		return nil, errors.New("there is no line of its own for it here; write it into the text")
	}
	e.readSizes()
	lines := entries()[list][i].lines(e.begins(c))
	if lines == nil {
		return nil, errors.New("there is no piece before it, to start from")
	}
	for i, l := range lines {
		if i == 0 {
			lines[i] = "- " + l
		} else if !strings.HasPrefix(l, "- ") {
			lines[i] = "  " + l
		}
	}
	before := flat(e.root, e.r)
	out := e.insertLines(e.lastLine(), indent, lines...)
	if after := tokens(out); len(after) <= len(before) || !added(before, after) {
		return nil, errors.New("it can't be added here; write it into the text")
	}
	if entries()[list][i].ends && s.at+1 < len(s.all) && e.takesAll(s.all[s.at+1].val) {
		at := strings.LastIndexByte(c.Path, '/')
		return Edit(out, Change{Act: Take, Path: fmt.Sprint(c.Path[:at+1], s.at+2)})
	}
	return out, nil
}

// takesAll reports whether a section takes all stitches that there are.
func (e *editor) takesAll(n *yaml.Node) bool {
	all := e.pairsOf(n)
	return len(all) > 0 && spaced(all[0].at.Value) == "bind off" && all[0].val.Value == "all"
}

// begin has a piece or part begin in another way: the first section is replaced.
func (e *editor) begin(c Change) ([]byte, error) {
	if e.listAt() != "section" || e.trail[len(e.trail)-1].at != 0 {
		return nil, errors.New("a piece begins with its first section")
	}
	s := e.trail[len(e.trail)-1]
	away := 1
	if len(s.all) > 1 && e.has(s.all[0].val, "sideways") && e.has(s.all[1].val, "pick up") {
		away = 2 // what is picked up along a band goes with it
		e.trail[len(e.trail)-1].at = 1
	}
	path := c.Path[:strings.LastIndex(c.Path, "/")+1] + "0"
	out, err := e.insert(c)
	for range away {
		if err == nil {
			out, err = Edit(out, Change{Act: Take, Path: path})
		}
	}
	return out, err
}

func (e *editor) has(n *yaml.Node, key string) bool {
	return slices.ContainsFunc(e.pairsOf(n), func(p item) bool { return spaced(p.at.Value) == key })
}

// readSizes reads the line of sizes, which graded values need.
func (e *editor) readSizes() {
	for _, p := range pairs(e.root, e.r) {
		if p.at.Value == "sizes" {
			e.r.sizes = e.r.readSizes(p.val)
		}
	}
}

// dash is the line on which the dash of an entry stands, and its indent.
func (e *editor) dash(s *step) (line, indent int, ok bool) {
	if s.in.Kind != yaml.SequenceNode || s.in.Style&yaml.FlowStyle != 0 {
		return 0, 0, false
	}
	line = s.item().val.Line
	text := e.r.lines[line-1]
	indent = s.in.Column - 1
	for i, c := range text {
		if c != ' ' {
			return line, indent, c == '-' && i == indent
		}
	}
	return line, indent, false
}

// lastLine is the last line of the place, comments and empty lines behind it left out.
func (e *editor) lastLine() int {
	last := len(e.r.lines)
	for i := len(e.trail) - 1; i >= 0; i-- {
		if s := e.trail[i]; s.at+1 < len(s.all) {
			n := s.all[s.at+1].at
			if n == nil {
				n = s.all[s.at+1].val
			}
			last = n.Line - 1
			break
		}
	}
	for last > 1 {
		t := strings.TrimSpace(string(e.r.lines[last-1]))
		if t != "" && t[0] != '#' && t != "-" {
			break
		}
		last--
	}
	return last
}

// insertLines puts lines behind line number after.
func (e *editor) insertLines(after, indent int, lines ...string) []byte {
	end := "\n"
	if at := e.lineEnd(1); at < len(e.src) && e.src[at] == '\r' {
		end = "\r"
		if at+1 < len(e.src) && e.src[at+1] == '\n' {
			end = "\r\n"
		}
	}
	at, before := len(e.src), ""
	if after < len(e.starts) {
		at = e.starts[after]
	} else if e.lineEnd(after) == len(e.src) {
		before = end
	}
	var b strings.Builder
	b.WriteString(before)
	for _, l := range lines {
		b.WriteString(strings.Repeat(" ", indent) + l + end)
	}
	return splice(e.src, at, at, b.String())
}

// span is the bytes of a text that stands in one line.
func (e *editor) span(n *yaml.Node) (from, to int, ok bool) {
	a, b, ok := e.r.span(n)
	if !ok {
		return 0, 0, false
	}
	from, ok = e.offset(n.Line, a)
	to, ok2 := e.offset(n.Line, b)
	return from, to, ok && ok2
}

// span is the characters of a text that stands in one line, counted from 0.
func (r *reader) span(n *yaml.Node) (from, to int, ok bool) {
	from = n.Column - 1
	if n.Kind != yaml.ScalarNode || empty(n) || n.Line < 1 || n.Line > len(r.lines) || from < 0 || from >= len(r.lines[n.Line-1]) {
		return 0, 0, false
	}
	line := r.lines[n.Line-1]
	switch {
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return 0, 0, false
	case n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0:
		to = quoteEnd(line, from)
		return from, to, to > from+1 && line[to-1] == line[from]
	}
	return from, from + utf8.RuneCountInString(n.Value), n.Value != "" && begins(line[from:], n.Value)
}

// offset is the byte at which a character of a line stands, both counted from
// 1 and 0.
func (e *editor) offset(line, col int) (int, bool) {
	if line < 1 || line > len(e.starts) || line > len(e.r.lines) || col < 0 || col > len(e.r.lines[line-1]) {
		return 0, false
	}
	return e.starts[line-1] + len(string(e.r.lines[line-1][:col])), true
}

// lineEnd is the byte behind the last character of a line.
func (e *editor) lineEnd(line int) int {
	return e.starts[line-1] + len(string(e.r.lines[line-1]))
}

// lineStarts are the bytes at which lines begin, whatever their ends.
func lineStarts(src []byte) []int {
	at := 0
	if bytes.HasPrefix(src, []byte("\uFEFF")) {
		at = len("\uFEFF")
	}
	starts := []int{at}
	for i, b := range src {
		if b == '\n' || b == '\r' && (i+1 == len(src) || src[i+1] != '\n') {
			starts = append(starts, i+1)
		}
	}
	return starts
}

func splice(src []byte, from, to int, text string) []byte {
	out := make([]byte, 0, len(src)+len(text))
	return append(append(append(out, src[:from]...), text...), src[to:]...)
}

// written are the ways of writing a value: as it is or as it was quoted, then in quotes.
func written(value string, was yaml.Style) []string {
	single := "'" + strings.ReplaceAll(value, "'", "''") + "'"
	double := `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(value) + `"`
	switch {
	case was&yaml.SingleQuotedStyle != 0:
		return []string{single, double}
	case was&yaml.DoubleQuotedStyle != 0:
		return []string{double, single}
	}
	return []string{value, double}
}

// names is the path of the place.
func (e *editor) names() []string {
	out := make([]string, len(e.trail))
	for i, s := range e.trail {
		out[i] = s.name
	}
	return out
}

// valueAt reports whether a file has a value in a place.
func valueAt(src []byte, path []string, value string) bool {
	r, root := whole(src)
	if root == nil {
		return false
	}
	e := &editor{r: r, root: root}
	escaped := ""
	for i, name := range path {
		if i == 0 {
			escaped = under("", name)
		} else {
			escaped = under(escaped, name)
		}
	}
	return e.find(escaped) == nil && e.node().Kind == yaml.ScalarNode && e.node().Value == value
}

// tokens are a file's keys, values and brackets in order, or nil if it can't be read.
func tokens(src []byte) []string {
	r, root := whole(src)
	if root == nil {
		return nil
	}
	return flat(root, r)
}

func flat(n *yaml.Node, r *reader) []string {
	var out []string
	switch n.Kind {
	case yaml.MappingNode:
		out = append(out, "{")
		for _, p := range pairs(n, r) {
			out = append(append(out, p.at.Value+":"), flat(p.val, r)...)
		}
		out = append(out, "}")
	case yaml.SequenceNode:
		out = append(out, "[")
		for _, c := range elements(n, r) {
			out = append(out, flat(c, r)...)
		}
		out = append(out, "]")
	default:
		out = append(out, "="+n.Value)
	}
	return out
}

func prefix(a, b []string) int {
	n := 0
	for n < len(a) && n < len(b) && a[n] == b[n] {
		n++
	}
	return n
}

func suffix(a, b []string) int {
	a, b = slices.Clone(a), slices.Clone(b)
	slices.Reverse(a)
	slices.Reverse(b)
	return prefix(a, b)
}

// added reports whether long is short with tokens put in at one place.
func added(short, long []string) bool {
	return prefix(short, long)+suffix(short, long) >= len(short)
}

// insertInLine puts a value behind one of a list in brackets.
func (e *editor) insertInLine(n *yaml.Node, value string) ([]byte, error) {
	_, end, ok := e.span(n)
	before := flat(e.root, e.r)
	for _, text := range written(value, 0) {
		if out := splice(e.src, end, end, ", "+text); ok {
			if after := tokens(out); len(after) == len(before)+1 && added(before, after) {
				return out, nil
			}
		}
	}
	return nil, errors.New("it can't be added here; write it into the text")
}
