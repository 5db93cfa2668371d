package read

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"gopkg.in/yaml.v3"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
)

// resized adds a size called c.Value behind the one that c.Cell counts, with the numbers of that one, or
// takes that one out: in the line of sizes and in every line of the trade.
func (e *editor) resized(c Change) ([]byte, error) {
	e.readSizes()
	z := resizing{Change: c, sizes: e.r.sizes}
	if err := z.possible(); err != nil {
		return nil, err
	}
	all, failed := e.entries(e.root, "", z)
	if failed != nil {
		return nil, failed
	}
	e.scalars(e.root, "", func(n *yaml.Node, path string) {
		text, ok := z.line(n.Value, path == "sizes", e.r.cells)
		if !ok {
			return
		}
		from, to, ok := e.span(n)
		if !ok {
			failed = errors.New("a line of numbers spans several lines of the file; change the sizes in the text")
			return
		}
		all = append(all, cut{from: from, to: to, text: written(text, n.Style)[0]})
	})
	if failed != nil {
		return nil, failed
	}
	out := e.cut(all)
	_, was := Pattern("", e.src)
	_, is := Pattern("", out)
	more := 0
	for _, k := range all {
		more += k.more
	}
	if len(tokens(out)) == len(tokens(e.src))+more && (!is.Errors() || was.Errors()) {
		return out, nil
	}
	why := "this can't be done here"
	if i := slices.IndexFunc(is, func(f finding.Finding) bool { return f.Severity == finding.Error }); i >= 0 {
		why = fmt.Sprintf("line %d: %s", is[i].Pos.Line, is[i].Message)
	}
	return nil, fmt.Errorf("%s; change the sizes in the text", why)
}

// resizing is a change of the sizes.
type resizing struct {
	Change
	sizes expr.Sizes
}

func (z resizing) possible() error {
	switch {
	case z.Cell < 0 || z.Cell >= z.sizes.Len():
		return errMoved
	case z.Act == Narrow && z.sizes.Len() == 1:
		return errors.New("it is the only size")
	case z.Act == Narrow:
		return nil
	case z.Value == "" || strings.ContainsAny(z.Value, "(),:#[]{}"):
		return fmt.Errorf("%q is not the name of a size", z.Value)
	case z.sizes.Index(z.Value) >= 0:
		return fmt.Errorf("there is a size %s already", z.Value)
	}
	return nil
}

// line is a line of the file with the size in it or taken out, if it is one with a number for each size;
// names says that it is that of the sizes' names.
func (z resizing) line(text string, names bool, cellsOf func(string) []Cell) (string, bool) {
	if one, other, both := strings.Cut(text, " / "); both && !names { // in cm and in inches
		one, ok := z.line(one, false, cellsOf)
		other, ok2 := z.line(other, false, cellsOf)
		return one + " / " + other, ok && ok2
	}
	cells := cellsOf(text)
	if names {
		cells = namesIn(text, z.sizes)
	}
	if len(cells) != z.sizes.Len() || len(cells) == 1 && !names {
		return "", false
	}
	switch {
	case z.Act == Narrow:
		return lineWithout(text, cells[z.Cell]), true
	case names:
		return lineWith(text, cells, z.Cell, z.Value, z.sizes), true
	}
	return lineWith(text, cells, z.Cell, cells[z.Cell].Text, z.sizes), true
}

// entries are the changes to what has an entry for each size below n: mappings by size, and lists of as many numbers.
func (e *editor) entries(n *yaml.Node, path string, z resizing) ([]cut, error) {
	list, at := e.sizedEntries(n, path, z)
	if at >= 0 {
		return e.entry(n, list, at, path == "/sizes", z)
	}
	var all []cut
	for i, p := range list {
		more, err := []cut(nil), error(nil)
		if path == "" && p.at.Value == "sample" && z.Act == Narrow && spaced(p.val.Value) == z.sizes.Names[z.Cell] {
			more, err = e.entryOut(n, list, i)
		} else {
			more, err = e.entries(p.val, path+"/"+p.at.Value, z)
		}
		if err != nil {
			return nil, err
		}
		all = append(all, more...)
	}
	return all, nil
}

// sizedEntries are the entries of n, and which of them is that of the size: -1 if they are not by size.
func (e *editor) sizedEntries(n *yaml.Node, path string, z resizing) (list []item, at int) {
	switch n.Kind {
	case yaml.MappingNode:
		list = pairs(n, e.r)
		if path != "" && bySize(list, z.sizes) {
			return list, slices.IndexFunc(list, func(p item) bool { return spaced(p.at.Value) == z.sizes.Names[z.Cell] })
		}
	case yaml.SequenceNode:
		numbers := true
		for _, c := range elements(n, e.r) {
			list = append(list, item{at: c, val: c})
			numbers = numbers && c.Kind == yaml.ScalarNode && len(e.r.cells(c.Value)) == 1
		}
		if len(list) == z.sizes.Len() && (numbers || path == "/sizes") {
			return list, z.Cell
		}
	}
	return list, -1
}

// bySize reports whether the keys of a mapping are sizes.
func bySize(list []item, sizes expr.Sizes) bool {
	return !slices.ContainsFunc(list, func(p item) bool { return sizes.Index(spaced(p.at.Value)) < 0 })
}

var errLines = errors.New("the entry of a size spans several lines of the file; change the sizes in the text")

// entry changes the entry of the size among those of n: it goes, or a copy of it for the new size comes behind it. The names of
// sizes may be a list themselves.
func (e *editor) entry(n *yaml.Node, list []item, i int, names bool, z resizing) ([]cut, error) {
	if z.Act == Narrow {
		return e.entryOut(n, list, i)
	}
	p := list[i]
	from, to, ok := e.ends(p)
	_, keyTo, ok2 := e.span(p.at)
	if !ok || !ok2 {
		return nil, errLines
	}
	text := string(e.src[from:to])
	if names || p.at != p.val {
		text = written(z.Value, p.at.Style)[0] + string(e.src[keyTo:to])
	}
	if n.Style&yaml.FlowStyle != 0 {
		return []cut{{to, to, ", " + text, p.nodes()}}, nil
	}
	end := e.lineEnd(p.at.Line)
	return []cut{{end, end, "\n" + string(e.src[e.starts[p.at.Line-1]:from]) + text, p.nodes()}}, nil
}

// ends are the bytes at which an entry begins and ends, if it stands in one line.
func (e *editor) ends(p item) (from, to int, ok bool) {
	from, _, ok = e.span(p.at)
	_, to, ok2 := e.span(p.val)
	return from, to, ok && ok2 && p.at.Line == p.val.Line
}

// entryOut takes the i-th of the entries of n out.
func (e *editor) entryOut(n *yaml.Node, list []item, i int) ([]cut, error) {
	from, to, ok := e.ends(list[i])
	if !ok {
		return nil, errLines
	}
	switch {
	case n.Style&yaml.FlowStyle == 0:
		from, to = e.starts[list[i].at.Line-1], len(e.src)
		if list[i].at.Line < len(e.starts) {
			to = e.starts[list[i].at.Line]
		}
	case i > 0:
		_, from, ok = e.ends(list[i-1])
	case len(list) > 1:
		to, _, ok = e.ends(list[1])
	}
	if !ok {
		return nil, errLines
	}
	return []cut{{from, to, "", -list[i].nodes()}}, nil
}

// nodes are how many an entry has: a key and a value, or a value alone.
func (p item) nodes() int {
	if p.at == p.val {
		return 1
	}
	return 2
}

// cut is a stretch of the file, in bytes, with what takes its place.
type cut struct {
	from, to int
	text     string
	more     int // keys and values
}

// cut is the file with all of the stretches exchanged.
func (e *editor) cut(all []cut) []byte {
	slices.SortFunc(all, func(a, b cut) int { return b.from - a.from })
	out := e.src
	for _, k := range all {
		out = splice(out, k.from, k.to, k.text)
	}
	return out
}

// renamed calls sizes as they are called now, in the mappings by size and as the sample, that are called there as in c.Value,
// a line of as many names. Names that only changed places stay as they are.
func (e *editor) renamed(c Change) ([]byte, error) {
	e.readSizes()
	now := map[string]string{}
	gone := false
	for i, k := range namesIn(c.Value, e.r.sizes) {
		now[k.Text] = e.r.sizes.Names[i]
		gone = gone || e.r.sizes.Index(k.Text) < 0
	}
	if !gone {
		return e.src, nil
	}
	var all []cut
	for _, n := range e.sized(e.root, 0, now) {
		from, to, ok := e.span(n)
		if !ok {
			return nil, errors.New("the name of a size spans several lines; change the sizes in the text")
		}
		all = append(all, cut{from: from, to: to, text: written(now[spaced(n.Value)], n.Style)[0]})
	}
	out := e.cut(all)
	if len(tokens(out)) != len(tokens(e.src)) {
		return nil, errors.New("this can't be done here; change the sizes in the text")
	}
	return out, nil
}

// sized are the names of sizes, of those called, below n: the keys of the mappings that have no others, and the sample. What
// lies at the top or right below it is no number by size.
func (e *editor) sized(n *yaml.Node, deep int, called map[string]string) []*yaml.Node {
	if n.Kind == yaml.SequenceNode {
		var out []*yaml.Node
		for _, k := range elements(n, e.r) {
			out = append(out, e.sized(k, deep+1, called)...)
		}
		return out
	}
	if n.Kind != yaml.MappingNode {
		return nil
	}
	var keys, out []*yaml.Node
	for _, p := range pairs(n, e.r) {
		if called[spaced(p.at.Value)] != "" {
			keys = append(keys, p.at)
		}
		if deep == 0 && spaced(p.at.Value) == "sample" && called[spaced(p.val.Value)] != "" {
			out = append(out, p.val)
		}
		out = append(out, e.sized(p.val, deep+1, called)...)
	}
	if deep > 1 && len(keys) > 0 && len(keys) == len(pairs(n, e.r)) {
		return keys
	}
	return out
}

// scalars calls f with every value below n, and the way to it.
func (e *editor) scalars(n *yaml.Node, path string, f func(*yaml.Node, string)) {
	switch n.Kind {
	case yaml.ScalarNode:
		f(n, path)
	case yaml.MappingNode:
		for _, p := range pairs(n, e.r) {
			e.scalars(p.val, strings.TrimPrefix(path+"/"+spaced(p.at.Value), "/"), f)
		}
	case yaml.SequenceNode:
		for _, k := range elements(n, e.r) {
			e.scalars(k, path+"/", f)
		}
	}
}

var sizeName = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`[^(),]+`) })

// namesIn are the names of sizes in their line.
func namesIn(line string, sizes expr.Sizes) []Cell {
	var out []Cell
	for _, m := range sizeName().FindAllStringIndex(line, -1) {
		name := strings.TrimSpace(line[m[0]:m[1]])
		if name == "" {
			continue
		}
		from := len([]rune(line[:m[0]])) + len([]rune(line[m[0]:m[1]])) - len([]rune(strings.TrimLeft(line[m[0]:m[1]], " ")))
		out = append(out, Cell{Text: name, From: from, To: from + len([]rune(name))})
	}
	if len(out) != sizes.Len() {
		return nil
	}
	return out
}

// lineWith is a line with one more number behind the i-th. One that stands alone before the brackets stays
// alone: what follows it opens the first of them.
func lineWith(line string, cells []Cell, i int, text string, sizes expr.Sizes) string {
	t := []rune(line)
	put := func(at int, s string) string { return string(t[:at]) + s + string(t[at:]) }
	alone := i == 0 && sizes.Groups[0] == 1 && !strings.Contains(string(t[:cells[0].From]), "(")
	switch {
	case !alone:
		return put(cells[i].To, ", "+text)
	case len(cells) > 1:
		return put(cells[1].From, text+", ")
	}
	return put(cells[0].To, " ("+text+")")
}

var (
	afterOpen  = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\(\s*,\s*`) })
	beforeShut = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\s*,\s*\)`) })
	twice      = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`,\s*,`) })
	emptyGroup = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\s*\(\s*\)`) })
)

// lineWithout is a line without one of its numbers.
func lineWithout(line string, c Cell) string {
	t := []rune(line)
	s := string(t[:c.From]) + string(t[c.To:])
	s = beforeShut().ReplaceAllString(afterOpen().ReplaceAllString(s, "("), ")")
	return strings.TrimSpace(emptyGroup().ReplaceAllString(twice().ReplaceAllString(s, ","), ""))
}
