package read

import (
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"flatwright/schematic/finding"
)

// pos is the place of a node: of its words if it is a text, else of its first character.
func (r *reader) pos(n *yaml.Node) finding.Pos {
	p := finding.Pos{File: r.file, Line: n.Line, Col: n.Column, EndCol: n.Column + 1}
	if n.Line < 1 || n.Line > len(r.lines) {
		return p
	}
	line := r.lines[n.Line-1]
	from := n.Column - 1
	if from < 0 || from > len(line) {
		return r.unshift(p)
	}
	switch {
	case n.Kind != yaml.ScalarNode:
	case n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0 && from < len(line):
		p.EndCol = quoteEnd(line, from) + 1
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
	case n.Value != "" && begins(line[from:], n.Value):
		p.EndCol = n.Column + utf8.RuneCountInString(n.Value)
	case n.Value != "":
		p.EndCol = max(n.Column+1, len([]rune(strings.TrimRight(string(line), " ")))+1)
	}
	return r.unshift(p)
}

// unshift takes out the one column that a repaired line has too many.
func (r *reader) unshift(p finding.Pos) finding.Pos {
	if at, ok := r.shift[p.Line]; ok {
		if p.Col > at {
			p.Col--
		}
		if p.EndCol > at {
			p.EndCol--
		}
	}
	return p
}

// quoteEnd is the place after the quote that closes the one at i, or the line's end.
func quoteEnd(line []rune, i int) int {
	q := line[i]
	for j := i + 1; j < len(line); j++ {
		switch {
		case line[j] == '\\' && q == '"':
			j++
		case line[j] == q && q == '\'' && j+1 < len(line) && line[j+1] == q:
			j++
		case line[j] == q:
			return j + 1
		}
	}
	return len(line)
}

// textPos is the place of the first character of a node's text.
func (r *reader) textPos(n *yaml.Node) finding.Pos {
	p := r.pos(n)
	if n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0 {
		p.Col++
	}
	return p
}

// folded reports whether places in the text of a node can't be told from its
// column: it spans several lines, or has escapes.
func (r *reader) folded(n *yaml.Node) bool {
	if n.Line < 1 || n.Line > len(r.lines) || n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 {
		return true
	}
	from := n.Column - 1
	if n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0 {
		from++
	}
	line := r.lines[n.Line-1]
	return from > len(line) || !begins(line[max(from, 0):], n.Value)
}

// begins reports whether a line begins with a text.
func begins(line []rune, text string) bool {
	i := 0
	for _, c := range text {
		if i == len(line) || line[i] != c {
			return false
		}
		i++
	}
	return true
}

func kindOf(n *yaml.Node) string {
	switch {
	case n.Kind == yaml.MappingNode:
		return "a group of keys"
	case n.Kind == yaml.SequenceNode:
		return "a list"
	case empty(n):
		return "nothing"
	}
	return "a text"
}

// empty reports whether nothing was written: a key without a value.
func empty(n *yaml.Node) bool {
	return n.Kind == yaml.ScalarNode && n.Value == "" && n.Style == 0
}

// item is one key of a mapping with its value.
type item struct {
	key     *key
	at, val *yaml.Node
}

// mapped is a mapping whose keys have been held to a table.
type mapped struct {
	r     *reader
	node  *yaml.Node
	table *table
	items []item
	comma bool // a comma in braces that cuts a number is told
}

// get is the value of a key, or nil.
func (m *mapped) get(name string) *yaml.Node {
	if i := m.item(name); i != nil {
		return i.val
	}
	return nil
}

func (m *mapped) item(name string) *item {
	for i := range m.items {
		if m.items[i].key.name == name {
			return &m.items[i]
		}
	}
	return nil
}

// mapping holds a node to a table: unknown keys, keys that stand twice and keys
// that are missing are errors. An unknown key that is near to one that is not there
// is read as that one, so that what stands below it is checked too. It is nil if the node is no mapping.
func (r *reader) mapping(n *yaml.Node, t *table) *mapped {
	if n.Kind == yaml.ScalarNode && t.bare != "" && !empty(n) {
		return &mapped{r: r, node: n, table: t, items: []item{{t.find(t.bare), n, n}}}
	}
	if n.Kind != yaml.MappingNode {
		r.wrongKind(n, t)
		return nil
	}
	m := &mapped{r: r, node: n, table: t}
	var unknown []item
	for _, p := range pairs(n, r) {
		if !m.known(p) {
			unknown = append(unknown, p)
		}
	}
	for _, p := range unknown {
		m.unknown(p)
	}
	for i := range t.keys {
		m.needed(&t.keys[i])
	}
	return m
}

// known takes a key of the table in; one that stands twice, or is no text, is told and left out.
func (m *mapped) known(p item) bool {
	r, t := m.r, m.table
	if p.at.Kind != yaml.ScalarNode {
		r.fail(r.pos(p.at), "file/kind", "a key must be a text, and this is %s", kindOf(p.at)).
			Fix = "put a space after the colon, and quotes around a text that begins with a bracket"
		return true
	}
	if p.key = t.find(spaced(p.at.Value)); p.key == nil {
		return false
	}
	if old := m.item(p.key.name); old != nil {
		r.duplicate(old.at, p.at)
		return true
	}
	if r.seen != nil {
		r.seen(t.title+"/"+t.name, p.key.name)
	}
	m.items = append(m.items, p)
	return true
}

// needed tells a key of the table that is missing, or has no value.
func (m *mapped) needed(k *key) {
	r := m.r
	switch it := m.item(k.name); {
	case it == nil && k.need:
		f := r.fail(r.pos(m.node), "file/missing-key", "%s needs %q: %s", m.table.title, k.name, k.what)
		f.Fix = "add a line " + k.name + ": …"
		if k.form == choice {
			f.Want = "one of: " + strings.Join(k.pick, ", ")
		}
	case it != nil && empty(it.val) && k.form != nothing:
		r.fail(r.pos(it.at), "file/empty", "%q has no value", it.at.Value).Want = k.what
		m.drop(k.name)
	}
}

func (m *mapped) drop(name string) {
	for i := range m.items {
		if m.items[i].key.name == name {
			m.items = append(m.items[:i], m.items[i+1:]...)
			return
		}
	}
}

func (m *mapped) unknown(p item) {
	r := m.r
	if r.full {
		return // a large file of nothing else must not take long
	}
	name := finding.Clip(spaced(p.at.Value))
	comma := m.node.Style&yaml.FlowStyle != 0 && strings.ContainsAny(name[:min(1, len(name))], "0123456789")
	if comma && m.comma {
		return
	}
	if comma {
		m.comma = true
		r.fail(r.pos(p.at), "file/form", "%q follows a comma in braces, where a key is expected", name).
			Fix = "write a decimal with a point, or the entries one a line without braces"
		return
	}
	f := r.fail(r.pos(p.at), "file/unknown-key", "%q is not a key of %s", name, m.table.title)
	f.Want = "one of: " + strings.Join(m.table.names(), ", ")
	like := m.table.like(name)
	if like == "" {
		return
	}
	f.Fix = "did you mean " + quoted(like) + "?"
	if m.item(like) == nil {
		p.key = m.table.find(like)
		m.items = append(m.items, p)
	}
}

// spaced is a text with one space between its words and none round them.
func spaced(s string) string { return finding.Spaced(s) }

func quoted(s string) string { return `"` + s + `"` }

func (r *reader) duplicate(old, now *yaml.Node) {
	f := r.fail(r.pos(now), "file/duplicate-key", "%q is here twice; the first is on line %d", finding.Clip(now.Value), old.Line)
	f.Fix = "take one of the two out, or rename it"
	if now.Value == "increase" || now.Value == "decrease" {
		f.Fix = "begin a new section with a dash, or use shape: for several shapings at once"
	}
}

func (r *reader) wrongKind(n *yaml.Node, t *table) {
	f := r.fail(r.pos(n), "file/kind", "%s must be keys with values, and this is %s", t.title, kindOf(n))
	if n.Kind == yaml.ScalarNode {
		if k, rest, ok := strings.Cut(n.Value, ":"); ok && t.find(strings.TrimSpace(k)) != nil && rest != "" {
			f.Fix = "put a space after the colon: " + k + ": " + rest
			return
		}
	}
	f.Want = "keys such as " + strings.Join(t.names()[:min(3, len(t.names()))], ", ") + ", each with a colon and its value"
}

// pairs are the keys and values of a mapping. Inside braces YAML cuts a line of
// the trade at its commas; what it cut is put together again.
func pairs(n *yaml.Node, r *reader) []item {
	out := make([]item, 0, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		p := item{at: n.Content[i], val: n.Content[i+1]}
		if n.Style&yaml.FlowStyle != 0 && open(p.val) > 0 {
			parts := []*yaml.Node{p.val}
			depth, j := open(p.val), i+2
			for ; depth > 0 && j+1 < len(n.Content) && empty(n.Content[j+1]) && plain(n.Content[j]); j += 2 {
				parts = append(parts, n.Content[j])
				depth += open(n.Content[j])
			}
			if depth == 0 {
				p.val = r.together(parts)
				i = j - 2
			}
		}
		out = append(out, p)
	}
	return out
}

// elements are the entries of a list, with what YAML cut put together again.
func elements(n *yaml.Node, r *reader) []*yaml.Node {
	if n.Style&yaml.FlowStyle == 0 {
		return n.Content
	}
	out := make([]*yaml.Node, 0, len(n.Content))
	for i := 0; i < len(n.Content); i++ {
		c := n.Content[i]
		if depth := open(c); depth > 0 {
			j := i + 1
			for ; depth > 0 && j < len(n.Content) && plain(n.Content[j]); j++ {
				depth += open(n.Content[j])
			}
			if depth == 0 {
				c = r.together(n.Content[i:j])
				i = j - 1
			}
		}
		out = append(out, c)
	}
	return out
}

func plain(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Style == 0 }

// open counts the round brackets of a plain text that it leaves open.
func open(n *yaml.Node) int {
	if !plain(n) {
		return 0
	}
	return strings.Count(n.Value, "(") - strings.Count(n.Value, ")")
}

// together is one text of several that YAML cut at commas, as it stands in the file.
func (r *reader) together(parts []*yaml.Node) *yaml.Node {
	first, last := parts[0], parts[len(parts)-1]
	c := *first
	c.Tag = "!!str"
	if first.Line == last.Line && first.Line <= len(r.lines) {
		line := r.lines[first.Line-1]
		to := last.Column - 1 + utf8.RuneCountInString(last.Value)
		if first.Column >= 1 && to <= len(line) && first.Column-1 <= to {
			c.Value = string(line[first.Column-1 : to])
			return &c
		}
	}
	texts := make([]string, len(parts))
	for i, p := range parts {
		texts[i] = p.Value
	}
	c.Value = strings.Join(texts, ", ")
	return &c
}
