package read

import (
	"fmt"
	"path"
	"strings"

	"gopkg.in/yaml.v3"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Bounds of lists.
const (
	mostSizes    = 60
	mostPieces   = 2000
	mostSections = 500
	mostEntries  = 500
	mostParts    = 200
	mostCaps     = 8
	mostCapSizes = 60      // of all caps in all sizes
	mostTerms    = 200_000 // of all sums of the grading in all sizes
)

func (r *reader) pattern(root *yaml.Node) *schematic.Pattern {
	p := &schematic.Pattern{File: r.file, Sample: -1, Steps: units.Usual}
	m := r.mapping(root, patternKeys)
	if m == nil {
		return p
	}
	r.head(m, p) // what the rest of the file is read by comes first, wherever it stands
	r.named(m, "bodies", func(name string, at, v *yaml.Node) {
		p.Bodies = append(p.Bodies, r.body(name, at, v))
	})
	r.named(m, "gauges", func(name string, at, v *yaml.Node) {
		g, ok := r.gauge(name, v)
		if !ok { // so that what calls it can be read on
			g = schematic.Gauge{Name: name, Stitches: units.Int(20), Rows: units.Int(20), Over: units.Int(100), Pos: r.pos(at)}
		}
		p.Gauges = append(p.Gauges, g)
	})
	r.grading(m, p)
	p.Yarn, p.Tools, p.Notions = r.materials(m, "yarn"), r.materials(m, "tools"), r.materials(m, "notions")
	p.Weights = r.weights(m)
	p.Notes = r.texts(m.get("notes"), "notes", longestLine)
	p.Special = r.texts(m.get("special stitches"), "special stitches", longestLine)
	p.Making, p.Care = r.texts(m.get("finishing"), "finishing", longestLine), r.texts(m.get("care"), "care", longestLine)
	p.Edition, p.Mended = m.text("edition"), r.texts(m.get("corrections"), "corrections", longestLine)
	r.named(m, "photographs", func(name string, at, v *yaml.Node) {
		if !below(name) {
			r.fail(r.pos(at), "file/reference", "the photograph %q must lie beside the pattern or below it", name).Want = "a name such as front.jpg"
			return
		}
		p.Photos = append(p.Photos, schematic.Photo{File: name, Shows: r.text(v, "what a photograph shows", longestLine), Pos: r.pos(at)})
	})
	r.rows(m, p)
	if n := m.get("drawing"); n != nil {
		p.Drawing = r.drawing(n)
	}
	if n := m.get("pieces"); n != nil && n.Kind == yaml.SequenceNode && len(n.Content) == 0 {
		r.fail(r.pos(n), "file/empty", "a piece is missing here").Fix = "write a piece: its name, and the sections in which it is worked"
	}
	for _, n := range r.list(m.get("pieces"), `"pieces"`, mostPieces) {
		if q := r.readPiece(n); q != nil {
			p.Pieces = append(p.Pieces, q)
		}
	}
	for _, n := range r.list(m.get("joins"), `"joins"`, mostPieces) {
		if j, ok := r.join(n); ok {
			p.Joins = append(p.Joins, j)
		}
	}
	r.named(m, "finished", func(name string, at, v *yaml.Node) {
		p.Finished = append(p.Finished, r.finished(name, at, v))
	})
	return p
}

// head reads what the pattern is, its units, its sizes and how it is rounded.
func (r *reader) head(m *mapped, p *schematic.Pattern) {
	if n := m.get("version"); n != nil && strings.TrimSpace(n.Value) != "1" {
		f := r.fail(r.pos(n), "file/version", "this program does not know version %q of the pattern file", finding.Clip(n.Value))
		f.Want, f.Fix = "1", "use a newer program, or write version: 1"
	}
	p.Title, p.Designer, p.Note = m.text("pattern"), m.text("designer"), m.text("note")
	p.Terms = schematic.Terms(max(0, m.choice("terms")))
	p.Units = units.Unit(max(0, m.choice("units")))
	r.unit = p.Units
	if n := m.get("sizes"); n != nil {
		p.SizesPos = r.pos(n)
		r.sizesAt = p.SizesPos
		if p.Sizes = r.readSizes(n); r.spoiled[n.Line] {
			p.Sizes = expr.Sizes{} // not what was meant: every line would seem too long or too short
		}
		r.sizes = p.Sizes
	}
	p.Children = m.choice("for") == 1
	if s := m.text("sample"); s != "" && r.sizes.Len() > 0 {
		if p.Sample = r.sizes.Index(s); p.Sample < 0 {
			r.unknownName(m.get("sample"), "file/unknown-size", "no size is called %q", s, r.sizes.Names)
		}
	}
	if n := m.get("rounding"); n != nil {
		p.Steps = r.rounding(n)
	}
}

// named reads a mapping from names to values.
func (r *reader) named(m *mapped, key string, read func(name string, at, val *yaml.Node)) {
	n := m.get(key)
	if n == nil {
		return
	}
	if n.Kind != yaml.MappingNode {
		f := r.fail(r.pos(n), "file/kind", "%q must be names with values, and this is %s", key, kindOf(n))
		f.Want = "one a line: a name, a colon, a space and its value"
		return
	}
	seen := map[string]*yaml.Node{}
	all := pairs(n, r)
	if len(all) > mostEntries {
		r.fail(r.pos(all[mostEntries].at), "file/bounds", "%q has %d entries", key, len(all)).Want = fmt.Sprintf("at most %d", mostEntries)
		all = all[:mostEntries]
	}
	for _, p := range all {
		if p.at.Kind != yaml.ScalarNode {
			r.fail(r.pos(p.at), "file/kind", "a name must be a text, and this is %s", kindOf(p.at)).Fix = "write the name, a colon, a space and its value"
			continue
		}
		name := r.text(p.at, "a name", longestName)
		if name == "" {
			continue
		}
		low := strings.ToLower(name)
		if old := seen[low]; old != nil {
			r.duplicate(old, p.at)
			continue
		}
		seen[low] = p.at
		if empty(p.val) {
			r.fail(r.pos(p.at), "file/empty", "%q has no value", name).Fix = "write it after the colon, or delete the line"
			continue
		}
		read(name, p.at, p.val)
	}
}

// list is the entries of a list.
func (r *reader) list(n *yaml.Node, what string, most int) []*yaml.Node {
	if n == nil {
		return nil
	}
	if n.Kind != yaml.SequenceNode {
		f := r.fail(r.pos(n), "file/kind", "%s must be a list, and this is %s", what, kindOf(n))
		f.Fix = "begin each entry on a line of its own with a dash and a space"
		if n.Kind == yaml.MappingNode {
			f.Fix = "put a dash and a space before the first line of each entry"
		}
		return nil
	}
	all := elements(n, r)
	if len(all) > most {
		r.fail(r.pos(all[most]), "file/bounds", "%s has %d entries", what, len(all)).Want = fmt.Sprintf("at most %d", most)
		all = all[:most]
	}
	out := make([]*yaml.Node, 0, len(all))
	for _, c := range all {
		if empty(c) {
			r.fail(r.pos(c), "file/empty", "%s has an empty entry", what).Fix = "delete the dash, or write something after it"
			continue
		}
		if r.swallowed(c) {
			continue
		}
		out = append(out, c)
	}
	return out
}

// swallowed finds a dash of a list that YAML takes for a part of the text above it.
func (r *reader) swallowed(n *yaml.Node) bool {
	if !plain(n) || n.Line >= len(r.lines) || !r.folded(n) {
		return false
	}
	for i := n.Line; i < len(r.lines) && i < n.Line+50; i++ {
		line := strings.TrimLeft(string(r.lines[i]), " ")
		if line == "" {
			continue
		}
		indent := len(r.lines[i]) - len([]rune(line))
		if indent < n.Column-1 && !strings.HasPrefix(line, "- ") || indent < n.Column-2 {
			return false
		}
		if strings.HasPrefix(line, "- ") {
			f := r.fail(finding.Pos{File: r.file, Line: i + 1, Col: indent + 1, EndCol: indent + 2}, "file/syntax",
				"this dash is indented further than the one before it, so it is read as a part of the text above")
			f.Fix = "put the dashes of a list below each other"
			return true
		}
	}
	return false
}

// texts is a text or a list of texts.
func (r *reader) texts(n *yaml.Node, what string, most int) []string {
	if n == nil {
		return nil
	}
	if n.Kind == yaml.ScalarNode {
		if s := r.text(n, quoted(what), most); s != "" {
			return []string{s}
		}
		return nil
	}
	var out []string
	for _, c := range r.list(n, quoted(what), mostEntries) {
		if s := r.text(c, "an entry of "+quoted(what), most); s != "" {
			out = append(out, s)
		}
	}
	return out
}

// sizesOfList are the sizes that stand in a list, the first by itself and the others in a bracket.
func (r *reader) sizesOfList(n *yaml.Node) (s expr.Sizes, ok bool) {
	for _, c := range r.list(n, `"sizes"`, mostSizes) {
		name := r.text(c, "the name of a size", longestName)
		switch {
		case name == "":
			return s, false
		case s.Index(name) >= 0:
			r.fail(r.pos(c), "file/duplicate-name", "two sizes are called %q", name)
			return s, false
		}
		s.Names = append(s.Names, name)
	}
	if s.Groups = []int{1}; len(s.Names) > 1 {
		s.Groups = []int{1, len(s.Names) - 1}
	}
	return s, true
}

func (r *reader) readSizes(n *yaml.Node) expr.Sizes {
	var s expr.Sizes
	switch n.Kind {
	case yaml.ScalarNode:
		if _, ok := r.scalar(n, `"sizes"`); !ok {
			return s
		}
		var p *expr.Problem
		if s, p = expr.ParseSizes(n.Value); p != nil {
			r.problem(n, p)
			return expr.Sizes{}
		}
	case yaml.SequenceNode:
		var ok bool
		if s, ok = r.sizesOfList(n); !ok {
			return expr.Sizes{}
		}
	default:
		r.fail(r.pos(n), "file/kind", `"sizes" must be a line, and this is %s`, kindOf(n)).
			Want = "the sizes, such as XS (S, M, L) (1X, 2X)"
		return s
	}
	if len(s.Names) > mostSizes {
		r.fail(r.pos(n), "file/bounds", "there are %d sizes", len(s.Names)).Want = fmt.Sprintf("at most %d", mostSizes)
		return expr.Sizes{}
	}
	for _, name := range s.Names {
		if len([]rune(name)) > 40 {
			r.fail(r.pos(n), "file/bounds", "the name of the size %q is too long", finding.Clip(name)).Want = "at most 40 characters"
			return expr.Sizes{}
		}
	}
	return s
}

func (r *reader) materials(m *mapped, key string) []schematic.Material {
	n := m.get(key)
	if n == nil {
		return nil
	}
	all := []*yaml.Node{n}
	if n.Kind != yaml.ScalarNode {
		all = r.list(n, quoted(key), mostEntries)
	}
	var out []schematic.Material
	for _, c := range all {
		e := r.mapping(c, materialKeys)
		if e == nil {
			continue
		}
		mat := schematic.Material{Amount: e.counts("amount", quantities), Pos: r.pos(c)}
		if t := e.get("text"); t != nil {
			mat.Text = r.text(t, "a line of "+quoted(key), longestLine)
		}
		out = append(out, mat)
	}
	return out
}

func (r *reader) body(name string, at, v *yaml.Node) schematic.Written {
	w := schematic.Written{Name: name, Pos: r.pos(at), Unit: r.unit}
	if l, ok := r.lengths(v, quoted(name), true); ok {
		w.Low, w.High, w.Unit, w.Other = l.Low, l.High, l.Unit, l.Other
	}
	return w
}

func (r *reader) finished(name string, at, v *yaml.Node) schematic.Written {
	w := schematic.Written{Name: name, Pos: r.pos(at), Unit: r.unit}
	val := v
	if v.Kind == yaml.MappingNode && !r.bySize(v) {
		m := r.mapping(v, finishedKeys)
		if m == nil {
			return w
		}
		if of := m.get("of"); of != nil {
			if w.Of = r.text(of, `"of"`, longestName); w.Of != "" {
				if _, p := expr.ParseSum(of.Value); p != nil {
					r.problem(of, p)
				}
			}
		}
		if val = m.get("is"); val == nil {
			return w
		}
	}
	if l, ok := r.lengths(val, quoted(name), false); ok {
		w.Low, w.High, w.Unit, w.Other = l.Low, l.Low, l.Unit, l.Other
	}
	return w
}

// bySize reports whether the keys of a mapping are sizes.
func (r *reader) bySize(n *yaml.Node) bool {
	for i := 0; i < len(n.Content); i += 2 {
		if r.sizes.Index(n.Content[i].Value) >= 0 {
			return true
		}
	}
	return false
}

// below reports whether a name is that of a file in the pattern's folder or below it.
func below(name string) bool {
	clean := path.Clean(strings.ReplaceAll(name, `\`, "/"))
	return !path.IsAbs(clean) && clean != ".." && !strings.HasPrefix(clean, "../") && !strings.Contains(clean, ":")
}

func (r *reader) rows(m *mapped, p *schematic.Pattern) {
	if f := m.get("rows file"); f != nil {
		p.RowsFile = m.text("rows file")
		if p.RowsFile != "" && !below(p.RowsFile) {
			r.fail(r.pos(f), "file/reference", "the file of written rows must lie beside the pattern or below it").
				Want = "a name such as rows.txt"
		}
		p.RowsPos = r.pos(f)
	}
	n := m.get("rows")
	if n == nil {
		return
	}
	if m.get("rows file") != nil {
		r.fail(r.pos(m.item("rows").at), "file/conflict", `"rows" and "rows file" can't both be there`).Fix = "take one of them out"
	}
	if n.Kind != yaml.ScalarNode {
		f := r.fail(r.pos(n), "file/kind", `"rows" must be a block of text, and this is %s`, kindOf(n))
		f.Fix = "write rows: | and the rows below it, indented"
		return
	}
	if n.Style&yaml.FoldedStyle != 0 || n.Style&yaml.LiteralStyle == 0 && r.folded(n) {
		f := r.fail(r.pos(n), "file/form", "the lines of this text run together")
		f.Fix = "write rows: | and the rows below it, indented"
	}
	p.Rows, p.RowsPos = n.Value, r.pos(n)
	if n.Style&yaml.LiteralStyle != 0 {
		p.RowsPos = finding.Pos{File: r.file, Line: n.Line + 1, Col: r.blockIndent(n) + 1}
		p.RowsPos.EndCol = p.RowsPos.Col + 1
	}
}

// blockIndent is how far the lines of a block of text are indented.
func (r *reader) blockIndent(n *yaml.Node) int {
	first, _, _ := strings.Cut(strings.TrimLeft(n.Value, "\n"), "\n")
	for i := n.Line; i < len(r.lines); i++ {
		if line := string(r.lines[i]); first != "" && strings.HasSuffix(line, first) {
			return len(r.lines[i]) - len([]rune(first))
		}
	}
	return 0
}

// unknownName is a reference to something that is not there.
func (r *reader) unknownName(n *yaml.Node, kind, format, name string, names []string) {
	r.unknownAt(r.pos(n), kind, fmt.Sprintf(format, finding.Clip(name)), name, names)
}

func (r *reader) unknownAt(pos finding.Pos, kind, message, name string, names []string) {
	f := r.fail(pos, kind, "%s", message)
	switch {
	case len(names) == 0:
		f.Want = "a name that the pattern gives, and there is none of that kind"
	case len(names) <= 12:
		f.Want = "one of: " + strings.Join(names, ", ")
	default:
		f.Want = "one of " + strings.Join(names[:8], ", ") + " and others"
	}
	if like := finding.Nearest(name, names); like != "" {
		f.Fix = "did you mean " + quoted(like) + "?"
	}
}
