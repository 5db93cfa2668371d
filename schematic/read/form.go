package read

import (
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"flatwright/schematic/expr"
)

// Group is a part of a pattern file as a form shows it: a piece, a section, or
// another mapping or list.
type Group struct {
	Path   string  `json:"path"`  // for Edit; it holds until a change adds or takes out an entry
	Key    string  `json:"key"`   // the key that it stands under, or the leading key of a section
	Title  string  `json:"title"` // its name, or what it is
	Line   int     `json:"line"`
	Entry  bool    `json:"entry,omitempty"` // an entry of a list, which may be taken out
	Fields []Field `json:"fields,omitempty"`
	Groups []Group `json:"groups,omitempty"`
	Can    []Key   `json:"can,omitempty"`    // keys that it may have and has not
	List   string  `json:"list,omitempty"`   // of a list: what its entries are, as Entries calls it
	Starts bool    `json:"starts,omitempty"` // of the sections of a piece: Begin can begin it otherwise
	Named  bool    `json:"named,omitempty"`  // a mapping of names, to which Put can add one
	Names  Called  `json:"names,omitempty"`  // of what
}

// Key is a key that may be added to a group: its name, its help, and the words
// to choose from if there are only a few.
type Key struct {
	Name string   `json:"name"`
	What string   `json:"what"`
	Pick []string `json:"pick,omitempty"`
	// Ask says what has to be asked for to begin an entry of a list; None that nothing
	// has to be, Named that a name has to be, beside its value.
	Ask   string `json:"ask,omitempty"`
	None  bool   `json:"none,omitempty"`
	Named bool   `json:"named,omitempty"`
	Names Called `json:"names,omitempty"` // what is to be given is the name of one of these
}

// Field is one value of a pattern file that a form may change. Cells are its
// numbers size by size, if it is a line of the trade. A Fixed one spans several
// lines and is changed in the text.
type Field struct {
	Path  string   `json:"path"`
	Key   string   `json:"key"`
	What  string   `json:"what"`  // one line of help
	Value string   `json:"value"` // as it stands, without quotes
	Pick  []string `json:"pick,omitempty"`
	Line  int      `json:"line"`
	Fixed bool     `json:"fixed,omitempty"`
	Need  bool     `json:"need,omitempty"`  // it can't be left out
	Sized bool     `json:"sized,omitempty"` // it may have a number for each size
	Cells []Cell   `json:"cells,omitempty"`
	Names Called   `json:"names,omitempty"` // it is the name of one of these
}

// Cell is one number of a line of the trade: the characters From to To (not
// included) of the field's value. Size is empty for one number for all sizes.
type Cell struct {
	Size string `json:"size"`
	Text string `json:"text"`
	From int    `json:"from"`
	To   int    `json:"to"`
}

// Fields are the values of a pattern file as groups that a form shows, in the
// order of the file, and its sizes. ok is false for a file whose form of YAML is broken: there
// the text has to be mended first. Errors of meaning do no harm.
func Fields(src []byte) (g Group, sizes expr.Sizes, ok bool) {
	r, root := whole(src)
	if root == nil || root.Kind != yaml.MappingNode {
		return Group{}, expr.Sizes{}, false
	}
	for _, p := range pairs(root, r) {
		if p.at.Value == "sizes" {
			r.sizes = r.readSizes(p.val)
		}
	}
	return r.formOf(root, patternKeys, ""), r.sizes, true
}

// whole is a file whose bytes could be read as they stand, without a repair.
func whole(src []byte) (*reader, *yaml.Node) {
	r := &reader{}
	root := r.parse(src)
	if root == nil || len(r.shift)+len(r.spoiled) > 0 || r.findings.Errors() {
		return r, nil
	}
	return r, root
}

// formOf is a mapping that is held to a table.
func (r *reader) formOf(n *yaml.Node, t *table, path string) Group {
	g := Group{Path: path, Key: t.name, Title: t.title, Line: n.Line}
	has := map[string]bool{}
	if n.Kind == yaml.MappingNode {
		for _, p := range pairs(n, r) {
			k := t.find(spaced(p.at.Value))
			if k == nil || has[k.name] {
				continue
			}
			has[k.name] = true
			r.add(&g, k, p, under(path, p.at.Value))
		}
	}
	for i := range t.keys {
		k := &t.keys[i]
		if has[k.name] || n.Kind != yaml.MappingNode {
			continue
		}
		switch {
		case k.single():
			g.Can = append(g.Can, Key{Name: k.name, What: k.what, Pick: k.words(), Names: k.names})
		case k.form == named:
			g.Can = append(g.Can, Key{Name: k.name, What: k.what, Named: true, Names: k.names})
		case k.form == list && k.name != t.keys[0].name && len(entries()[k.of]) > 0 && !(has["motifs"] || has["mirror of"]):
			first := entries()[k.of][0]
			g.Can = append(g.Can, Key{Name: k.name, What: k.what, Ask: first.ask, None: first.ask == "", Names: first.names})
		case k.loose():
			g.Groups = append(g.Groups, r.formOf(&yaml.Node{Kind: yaml.MappingNode}, tableOf(k.of), under(path, k.name)))
		}
	}
	return g
}

// single reports whether a key's value is one text.
func (k *key) single() bool {
	switch k.form {
	case one, list, named, block, nothing:
		return false
	}
	return true
}

// loose reports whether a key is a mapping that may begin with any of its keys: a form shows it
// before it is there.
func (k *key) loose() bool {
	if k.form != one {
		return false
	}
	t := tableOf(k.of)
	return t != nil && !slices.ContainsFunc(t.keys, func(k key) bool { return k.need })
}

func (k *key) words() []string {
	if k.form == yesNo {
		return []string{"yes", "no"}
	}
	if k.form == choice {
		return k.pick
	}
	return nil
}

func (k *key) sized() bool {
	return k.form == counts || k.form == lengths || k.form == amounts || k.form == spans
}

// add puts a key of a mapping into the form.
func (r *reader) add(g *Group, k *key, p item, path string) {
	v := p.val
	switch {
	case v.Kind == yaml.AliasNode || k.form == nothing:
	case k.form == one:
		if t := tableOf(k.of); t != nil && v.Kind == yaml.MappingNode {
			sub := r.formOf(v, t, path)
			g.Groups = append(g.Groups, sub)
		}
	case k.form == list && v.Kind == yaml.SequenceNode:
		sub := Group{Path: path, Key: k.name, Title: k.name, Line: p.at.Line, List: k.of, Starts: k.of == "section" && g.Key == "piece"}
		for i, c := range elements(v, r) {
			r.entry(&sub, k, c, under(path, strconv.Itoa(i)))
		}
		g.Groups = append(g.Groups, sub)
	case k.form == named && v.Kind == yaml.MappingNode:
		sub := Group{Path: path, Key: k.name, Title: k.name, Line: p.at.Line, Named: true, Names: k.names}
		for _, e := range pairs(v, r) {
			r.entryNamed(&sub, k, e, under(path, e.at.Value))
		}
		g.Groups = append(g.Groups, sub)
	case v.Kind == yaml.ScalarNode:
		f := r.field(k, v, path, k.name)
		f.Need = k.need
		g.Fields = append(g.Fields, f)
	default:
		g.Groups = append(g.Groups, r.bySizes(k, p, path))
	}
}

// bySizes is a value that is written as a list or by size.
func (r *reader) bySizes(k *key, p item, path string) Group {
	sub := Group{Path: path, Key: k.name, Title: k.name, Line: p.at.Line}
	sized := k.form != words && k.form != sizes
	if k.form == words && p.val.Kind == yaml.SequenceNode {
		sub.List = "line"
	}
	add := func(n *yaml.Node, at, name string) {
		if n.Kind != yaml.ScalarNode {
			return
		}
		f := r.field(k, n, under(path, at), name)
		f.Need, f.Sized, f.Cells = true, false, nil
		sub.Fields = append(sub.Fields, f)
	}
	if p.val.Kind == yaml.SequenceNode {
		for i, c := range elements(p.val, r) {
			name := strconv.Itoa(i + 1)
			if sized && i < r.sizes.Len() {
				name = r.sizes.Names[i]
			}
			add(c, strconv.Itoa(i), name)
		}
		return sub
	}
	for _, e := range pairs(p.val, r) {
		add(e.val, e.at.Value, spaced(e.at.Value))
	}
	return sub
}

// entry puts an entry of a list into the form.
func (r *reader) entry(g *Group, k *key, n *yaml.Node, path string) {
	t := tableOf(k.of)
	if k.of == "section" {
		if t = r.kind(n); t == nil {
			return
		}
	}
	switch {
	case t == nil || empty(n):
	case n.Kind == yaml.MappingNode:
		sub := r.formOf(n, t, path)
		sub.Entry = true
		sub.Title = t.name
		for _, f := range sub.Fields {
			if f.Key == k.of || f.Key == t.name && k.of != "section" || f.Key == titled[k.of] {
				sub.Title = f.Value
			}
		}
		if sub.Title == t.name && k.of != "section" && k.of != "material" && len(sub.Fields) > 0 && t.find(sub.Fields[0].Key) != nil {
			sub.Key, sub.Title = sub.Fields[0].Key, sub.Fields[0].Key // a bind-off among parts
		}
		g.Groups = append(g.Groups, sub)
	case n.Kind == yaml.ScalarNode && t.bare != "":
		f := r.field(t.find(t.bare), n, path, strconv.Itoa(len(g.Fields)+1))
		f.Need = true
		g.Fields = append(g.Fields, f)
	case n.Kind == yaml.ScalarNode:
		g.Groups = append(g.Groups, Group{Path: path, Key: t.name, Title: t.name, Line: n.Line, Entry: true})
	}
}

// titled are the keys, beside the one that a list's entries are called by, whose value is the title of an entry.
var titled = map[string]string{"section": "name", "join": "sew", "material": "text"}

// kind is which kind of section a node is, or nil.
func (r *reader) kind(n *yaml.Node) *table {
	if n.Kind == yaml.ScalarNode {
		if t := kindsOf()[plainKey(n.Value)]; t != nil && t.keys[0].form == nothing {
			return t.table
		}
		return nil
	}
	if n.Kind != yaml.MappingNode {
		return nil
	}
	var found []*sectionKind
	for _, p := range pairs(n, r) {
		if t := kindsOf()[spaced(p.at.Value)]; t != nil {
			found = append(found, t)
		}
	}
	if len(found) == 0 {
		return nil
	}
	return owner(found).table
}

// entryNamed puts a name and its value into the form.
func (r *reader) entryNamed(g *Group, k *key, e item, path string) {
	name := spaced(e.at.Value)
	t := tableOf(k.of)
	kind := &key{name: name, form: phrase, what: k.what}
	switch k.of {
	case "spans":
		kind.form = spans
	case "finished":
		kind.form = lengths
	case "grading":
		kind.form = amounts
	}
	switch {
	case e.val.Kind == yaml.ScalarNode:
		f := r.field(kind, e.val, path, name)
		f.Need = true
		g.Fields = append(g.Fields, f)
	case t != nil && e.val.Kind == yaml.MappingNode && !r.bySize(e.val):
		sub := r.formOf(e.val, t, path)
		sub.Title, sub.Line = name, e.at.Line
		g.Groups = append(g.Groups, sub)
	default:
		g.Groups = append(g.Groups, r.bySizes(kind, e, path))
		g.Groups[len(g.Groups)-1].Title = name
	}
}

func (r *reader) field(k *key, v *yaml.Node, path, name string) Field {
	f := Field{Path: path, Key: name, What: k.what, Value: v.Value, Pick: k.words(), Line: v.Line, Sized: k.sized(), Names: k.names}
	_, _, ok := r.span(v)
	f.Fixed = !ok || k.form == block
	if f.Sized && !f.Fixed && r.sizes.Len() > 1 {
		f.Cells = r.cells(v.Value)
	}
	return f
}

// cells are the numbers of a line of the trade.
func (r *reader) cells(text string) []Cell {
	l, p := expr.ParseLine(text, r.sizes)
	if p != nil || len(l.Spans) != 1 && len(l.Spans) != r.sizes.Len() {
		return nil
	}
	t := []rune(text)
	out := make([]Cell, len(l.Spans))
	for i, s := range l.Spans {
		if s.Start < 0 || s.End > len(t) || s.Start > s.End {
			return nil
		}
		out[i] = Cell{Text: string(t[s.Start:s.End]), From: s.Start, To: s.End}
		if len(l.Spans) > 1 {
			out[i].Size = r.sizes.Names[i]
		}
	}
	return out
}

func tableOf(name string) *table {
	for _, t := range []*table{patternKeys, materialKeys, finishedKeys, pieceKeys, motifKeys, partKeys, joinPartKeys,
		heldKeys, panelKeys, joinKeys, spacingKeys, shapingTable, gradingKeys, drawingKeys, colourKeys} {
		if t.name == name {
			return t
		}
	}
	return nil
}

// under is the path of what stands under name.
func under(path, name string) string {
	name = strings.NewReplacer("~", "~0", "/", "~1").Replace(spaced(name))
	if path == "" {
		return name
	}
	return path + "/" + name
}
