package read

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"flatwright/schematic/expr"
)

// beginning is what a new entry of a list can be made of.
type beginning struct {
	sizes  expr.Sizes
	counts []int    // stitches that there are at its place, one a size; nil: not known
	value  string   // what was asked for, if anything
	parts  []string // names of the parts of the division before it
	taken  []string // names of pieces, parts and panels that there are
	pieces []string // names of the pieces
	edges  []string // names of the edges that there are, in order; nil: not known
	leads  string   // the other piece that it may start from
}

// mate is what an edge most often is sewn to: the edge of its name on the next piece that has one, or for the top of a
// sleeve an armhole, or else an edge that there is.
func (b beginning) mate() string {
	own := slices.IndexFunc(b.pieces, func(name string) bool { return strings.HasPrefix(b.value, name+" ") })
	if own < 0 || len(b.pieces) < 2 {
		return b.value
	}
	edge := strings.TrimPrefix(b.value, b.pieces[own])
	others := append(slices.Clone(b.pieces[own+1:]), b.pieces[:own]...)
	if b.edges == nil {
		return others[0] + edge
	}
	for _, name := range others {
		if slices.Contains(b.edges, name+edge) {
			return name + edge
		}
	}
	for _, like := range []string{" armhole", " side", ""} {
		i := slices.IndexFunc(b.edges, func(name string) bool {
			return strings.HasSuffix(name, like) && !strings.HasPrefix(name, b.pieces[own]+" ")
		})
		if i >= 0 {
			return b.edges[i]
		}
	}
	return b.value
}

// share is a k-th of the stitches, and with rest what the others leave of them.
func (b beginning) share(k int, rest bool) string {
	of := func(n int) int {
		if rest {
			return n - (k-1)*(n/k)
		}
		return n / k
	}
	return b.each(of)
}

// chains is the stitches and the chain that turns them.
func (b beginning) chains() string { return b.each(func(n int) int { return n + 1 }) }

// each is a count of every size made of the stitches that it has; of 40 if they are not known.
func (b beginning) each(of func(n int) int) string {
	if b.counts == nil {
		return strconv.Itoa(of(40))
	}
	texts := make([]string, len(b.counts))
	for i, n := range b.counts {
		texts[i] = expr.Dash
		if n >= 0 {
			texts[i] = strconv.Itoa(of(n))
		}
	}
	return b.sizes.Line(texts)
}

// name is a name that nothing has yet.
func (b beginning) name(want string) string {
	for k := 1; ; k++ {
		name := want
		if k > 1 {
			name = fmt.Sprintf("%s %d", want, k)
		}
		if !slices.ContainsFunc(b.taken, func(s string) bool { return strings.EqualFold(s, name) }) {
			return asText(name)
		}
	}
}

// entry is a kind of entry that can be put into a list: its lines, the first of an
// entry without its dash; a line that begins with a dash begins a further entry.
type entry struct {
	name, what string
	ask        string // what has to be asked for, if anything
	names      Called // what that is the name of
	lines      func(b beginning) []string
	ends       bool // nothing is left to work behind it: what bound off all there goes
}

func fixed(lines ...string) func(beginning) []string {
	return func(beginning) []string { return slices.Clone(lines) }
}

// entries are the kinds of entry of each list, by the table of its entries. Those of "section", which stand in
// every place of a piece or part, and of "first section" come from the kinds of section.
func entries() map[string][]entry {
	sectionKinds()
	return listed
}

var listed = map[string][]entry{
	"part": {
		{name: "part", what: "a part that is worked on", lines: func(b beginning) []string {
			return []string{"part: " + b.name("New part"), "stitches: 1", "sections:", "  - even: 10 rows"}
		}},
		{name: "bind off", lines: fixed("bind off: 1")}, {name: "leave", lines: fixed("leave: 1")}, {name: "hold", lines: fixed("hold: 1")},
	},
	"shaping": {
		{name: "decrease", lines: fixed("decrease: 1", "at: both edges", "every: 2 rows", "times: 1")},
		{name: "increase", lines: fixed("increase: 1", "at: both edges", "every: 2 rows", "times: 1")},
	},
	"spacing": {{name: "spacing", what: "another run of the shaping", lines: fixed("every: 2 rows", "times: 1")}},
	"join part": {
		{name: "part", ask: "name of the part", lines: func(b beginning) []string { return []string{"part: " + asText(b.value)} }},
		{name: "add", lines: fixed("add: 1")},
	},
	"start": {
		{name: "piece", ask: "name of the piece", lines: func(b beginning) []string { return []string{"piece: " + asText(b.value)} }},
		{name: "add", lines: fixed("add: 1")},
	},
	"panel": {{name: "panel", what: "a panel of the row", lines: func(b beginning) []string {
		return []string{"panel: " + b.name("New panel"), "stitches: 1"}
	}}},
	"join": {{name: "sew", what: "two edges that are sewn together", ask: "edge that is sewn, such as Sleeve top", names: edgeName, lines: func(b beginning) []string {
		return []string{"sew: " + asText(b.value), "to: " + asText(b.mate())}
	}}},
	"material": {{name: "text", what: "a further line", ask: "the line", lines: func(b beginning) []string { return []string{asText(b.value)} }}},
	"line":     {{name: "line", what: "a further line", ask: "the line", lines: func(b beginning) []string { return []string{asText(b.value)} }}},
	"piece": {
		{name: "piece", what: "a piece worked flat, from a cast-on", lines: piece("New piece", nil, "cast on: 40", "even: 10 rows", "bind off: all")},
		{name: "round", what: "a piece worked in the round", lines: piece("New piece", []string{"worked: in the round, from the hem"}, "cast on: 80", "even: 10 rows", "bind off: all")},
		{name: "sideways rib", what: "a piece that begins with a rib worked sideways", lines: piece("New piece", nil, "sideways: rib", "  stitches: 8", "  rows: 40", "pick up: 1 in each row", "even: 10 rows", "bind off: all")},
		{name: "ring", what: "a piece in the round from a centre ring", lines: piece("New piece", []string{"worked: in the round, from the centre"}, "ring: 6", "increase: 6", "  at: across", "  every: 1 row", "  times: 6")},
		{name: "start from", what: "a piece that goes on from stitches of the one before it", lines: func(b beginning) []string {
			if b.leads == "" {
				return nil
			}
			return piece("New piece", nil, "start from:", "    - piece: "+asText(b.leads), "even: 10 rows", "bind off: all")(b)
		}},
		{name: "band", what: "a band worked onto an edge of another piece", ask: "edge, such as Body right front edge", names: edgeName, lines: func(b beginning) []string {
			return piece("New band", []string{"kind: band", "onto:", "  - " + asText(b.value+", 1 in every 1 rows")}, "even: 5 rows", "bind off: all")(b)
		}},
		{name: "mirror of", what: "a piece worked as another one, mirrored", ask: "name of the other piece", names: pieceName, lines: func(b beginning) []string {
			return []string{"piece: " + b.name("New piece"), "mirror of: " + asText(b.value)}
		}},
		{name: "motifs", what: "a grid of motifs joined together", lines: func(b beginning) []string {
			return []string{"piece: " + b.name("New piece"), "motifs:", "  shape: square", "  across: 10 cm", "  columns: 4", "  rows: 4"}
		}},
	},
}

// piece is a new piece: keys of its own, then its sections, whose further keys are
// indented.
func piece(name string, keys []string, sections ...string) func(beginning) []string {
	return func(b beginning) []string {
		out := append([]string{"piece: " + b.name(name)}, keys...)
		out = append(out, "sections:")
		for _, s := range sections {
			if s[0] == ' ' {
				out = append(out, "  "+s)
			} else {
				out = append(out, "  - "+s)
			}
		}
		return out
	}
}

// divided is a division into two halves; join parts makes one row of them again.
func divided(b beginning) []string {
	first, second := b.name("First part"), b.name("Second part")
	out := []string{"divide:",
		"  - part: " + first, "    stitches: " + b.share(2, false), "    sections:", "      - even: 10 rows",
		"  - part: " + second, "    stitches: " + b.share(2, true), "    sections:", "      - even: 10 rows"}
	return out
}

// rejoined makes one row of the parts of the division before it, or of the row in work a round.
func rejoined(b beginning) []string {
	if len(b.parts) == 0 {
		return []string{"join parts:", "  - add: 1", "round: yes"}
	}
	out := []string{"join parts:"}
	for _, p := range b.parts {
		out = append(out, "  - "+asText(p))
	}
	return out
}

// armholed binds off a twelfth of the stitches at each edge and decreases as many more, then works even (common
// practice for a set-in sleeve); its edge is the armhole.
func armholed(b beginning) []string {
	off := b.share(12, false)
	return []string{"bind off: " + off, "at: both edges", "edge: armhole",
		"- decrease: 1", "at: both edges", "every: 2 rows", "times: " + off, "edge: armhole",
		"- even: 40 rows", "left edge: armhole", "right edge: armhole"}
}

// necked divides the row at the neck: two fifths of it are each side's, of which a quarter is decreased
// at the neck, and the rest is the shoulder (a start to be changed, from memory of plain jumpers).
func necked(b beginning) []string {
	side := func(n int) int { return n * 2 / 5 }
	first, second := b.name("First side"), b.name("Second side")
	return []string{"divide:",
		"  - part: " + first, "    stitches: " + b.each(side), "    mirror of: " + second,
		"  - bind off: " + b.each(func(n int) int { return n - 2*side(n) }), "    edge: neck",
		"  - part: " + second, "    stitches: " + b.each(side), "    sections:",
		"      - decrease: 1", "        at: right edge", "        every: 2 rows", "        times: " + b.each(func(n int) int { return max(1, side(n)/4) }),
		"      - bind off: all", "        edge: shoulder"}
}

// addable are the entries that can be put into a list as a form shows them.
func addable(list string) []Key {
	var out []Key
	for _, e := range entries()[list] {
		k := Key{Name: e.name, What: e.what, Ask: e.ask, None: e.ask == "", Names: e.names}
		if k.What == "" {
			k.What = whatOf(list, e.name)
		}
		out = append(out, k)
	}
	return out
}

// whatOf is the help of a key that begins an entry.
func whatOf(list, name string) string {
	if strings.HasSuffix(list, "section") {
		if t := kindsOf()[name]; t != nil {
			return t.keys[0].what
		}
	}
	if t := tableOf(list); t != nil {
		if k := t.find(name); k != nil {
			return k.what
		}
	}
	return ""
}

// Entries are the kinds of entry that Insert can put into each list, by what its
// entries are; those of "first section" are for Begin.
func Entries() map[string][]Key {
	out := map[string][]Key{}
	for list := range entries() {
		out[list] = addable(list)
	}
	return out
}

// listAt is the table of the entries of the list that the last step is in.
func (e *editor) listAt() string {
	if len(e.trail) < 2 {
		return ""
	}
	switch name := e.trail[len(e.trail)-2].name; name {
	case "sections":
		return "section"
	case "divide":
		return "part"
	case "then":
		return "spacing"
	case "pieces", "joins", "panels":
		return strings.TrimSuffix(name, "s")
	case "shape":
		return "shaping"
	case "join parts":
		return "join part"
	case "start from":
		return "start"
	case "yarn", "tools", "notions":
		return "material"
	case "onto", "sew", "into", "to", "filled", "views", "show", "hide", "order":
		return "line"
	default:
		if k := patternKeys.find(name); k != nil && k.form == words && len(e.trail) == 2 {
			return "line"
		}
	}
	return ""
}

// begins is what the place has to say of a new entry behind it.
func (e *editor) begins(c Change) beginning {
	b := beginning{sizes: e.r.sizes, value: c.Value, parts: e.partsAbove()}
	if c.After != nil {
		if n := c.After(e.trail[len(e.trail)-1].item().val.Line, e.lastLine()); len(n) > 0 && len(n) == b.sizes.Len() && slices.Max(n) > 1 {
			b.counts = n
		}
	}
	if len(e.trail) > 1 && e.trail[0].name == "pieces" {
		p := e.trail[1]
		if len(e.trail) > 2 { // in a piece: the one before it
			p.at--
		}
		if p.at >= 0 {
			b.leads = e.textAt(p.item().val, "piece")
		}
	}
	e.eachPair(e.root, func(key string, val *yaml.Node) {
		if key == "piece" || key == "part" || key == "panel" {
			b.taken = append(b.taken, val.Value)
		}
	})
	b.pieces = e.pieces()
	b.edges = c.edges(e.listAt())
	return b
}

// edges are the names of the edges that there are, where an entry of the list takes one.
func (c Change) edges(list string) []string {
	if c.Edges == nil || list != "join" {
		return nil
	}
	return c.Edges()
}

// pieces are the names of the pieces, in order.
func (e *editor) pieces() []string {
	var names []string
	for _, p := range e.under(e.root, "pieces") {
		if name := e.textAt(p, "piece"); name != "" {
			names = append(names, name)
		}
	}
	return names
}

// partsAbove are the names of the parts of the nearest division above the place, or nil.
func (e *editor) partsAbove() []string {
	s := e.trail[len(e.trail)-1]
	var names []string
	for i := s.at; i >= 0 && names == nil; i-- {
		for _, part := range e.under(s.all[i].val, "divide") {
			if name := e.textAt(part, "part"); name != "" {
				names = append(names, name)
			}
		}
	}
	return names
}

// textAt is the value at a key of a node, or nothing.
func (e *editor) textAt(n *yaml.Node, key string) string {
	for _, p := range e.pairsOf(n) {
		if spaced(p.at.Value) == key {
			return p.val.Value
		}
	}
	return ""
}

// eachPair calls f with every key below n and its value.
func (e *editor) eachPair(n *yaml.Node, f func(key string, val *yaml.Node)) {
	for _, p := range e.pairsOf(n) {
		f(spaced(p.at.Value), p.val)
		e.eachPair(p.val, f)
	}
	if n.Kind == yaml.SequenceNode {
		for _, k := range elements(n, e.r) {
			e.eachPair(k, f)
		}
	}
}

func (e *editor) pairsOf(n *yaml.Node) []item {
	if n.Kind != yaml.MappingNode {
		return nil
	}
	return pairs(n, e.r)
}

// under are the entries of the list that stands under a key.
func (e *editor) under(n *yaml.Node, key string) []*yaml.Node {
	for _, p := range e.pairsOf(n) {
		if spaced(p.at.Value) == key && p.val.Kind == yaml.SequenceNode {
			return elements(p.val, e.r)
		}
	}
	return nil
}

// asText is a text as it can stand in a file: in quotes, if it must.
func asText(s string) string {
	if s == "" || strings.ContainsAny(s, `:#"'{}[]&*!|>%@\`+"`") || strings.ContainsAny(s[:1], "-?, ") {
		return written(s, yaml.DoubleQuotedStyle)[0]
	}
	return s
}
