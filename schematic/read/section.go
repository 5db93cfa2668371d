package read

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// place is where a list of sections stands: what may stand first in it.
type place int

const (
	inPart  place = iota // stitches are there already
	ofPiece              // a start is needed
	ofBand               // picked up along an edge: a start may be left out
)

func starting(onto bool) place {
	if onto {
		return ofBand
	}
	return ofPiece
}

// sections reads a list of sections, and sees to it that a piece starts once, at its beginning.
func (r *reader) sections(n *yaml.Node, where place) []schematic.Section {
	if n == nil {
		return nil
	}
	outer := r.section
	defer func() { r.section = outer }()
	var out []schematic.Section
	before := ""
	all := r.list(n, `"sections"`, mostSections)
	if len(all) == 0 && n.Kind == yaml.SequenceNode && len(n.Content) == 0 && where != inPart {
		r.fail(r.pos(n), "file/empty", "a section is missing here")
	}
	for i, c := range all {
		if r.count++; r.count == mostSections+1 {
			r.fail(r.pos(c), "file/bounds", "this piece has more than %d sections", mostSections)
		}
		if r.count > mostSections {
			break
		}
		r.section = outer
		t, m := r.lead(c)
		if m == nil {
			continue
		}
		s := t.build(r, r.commonOf(m), m)
		r.ordered(t, before, m.node, where, i == 0)
		before = t.name
		if s != nil {
			out = append(out, s)
		}
	}
	return out
}

// ordered finds a section that can't be where it is.
func (r *reader) ordered(k *sectionKind, before string, n *yaml.Node, where place, first bool) {
	switch {
	case k.starts && (where == inPart || !first):
		f := r.fail(r.pos(n), "file/order", "%q starts a piece, and there are stitches already", k.name)
		f.Fix = "use add: for stitches added at an edge, or begin a new piece"
	case first && where == ofPiece && !k.starts:
		f := r.fail(r.pos(n), "file/order", "a piece can't begin with %q: there are no stitches yet", k.name)
		f.Want = startNames()
	case k.name == "pick up" && before != "sideways" && !(first && where == ofBand):
		f := r.fail(r.pos(n), "file/order", `"pick up" goes along the edge of a sideways band, and there is none before it`)
		f.Fix = "put a section sideways: rib before it"
	}
}

// lead finds which kind of section a mapping is, and holds it to the keys of that kind.
func (r *reader) lead(n *yaml.Node) (*sectionKind, *mapped) {
	if n.Kind == yaml.ScalarNode {
		return r.bare(n)
	}
	if n.Kind != yaml.MappingNode {
		r.fail(r.pos(n), "file/kind", "a section must be keys with values, and this is %s", kindOf(n)).
			Want = "one of: " + strings.Join(leads(), ", ")
		return nil, nil
	}
	var found []*sectionKind
	var at []*yaml.Node
	all := pairs(n, r)
	for _, p := range all {
		if t := kindsOf()[spaced(p.at.Value)]; t != nil && p.at.Kind == yaml.ScalarNode && !slices.Contains(found, t) {
			found, at = append(found, t), append(at, p.at)
		}
	}
	if len(found) == 0 {
		return r.guess(n, all)
	}
	t := owner(found)
	for i, u := range found {
		if u != t && t.find(u.name) == nil {
			f := r.fail(r.pos(at[i]), "file/conflict", "%q and %q are two sections", t.name, u.name)
			f.Fix = "put a dash and a space before " + u.name + ", so that it is a section of its own"
			n = without(n, at[i])
		}
	}
	r.section = t.name
	return t, r.mapping(n, t.table)
}

// owner is the kind that has the most of the others among its own keys, as mitre has
// decrease; of equals the one that is found first.
func owner(found []*sectionKind) *sectionKind {
	best, most := found[0], -1
	for _, t := range found {
		n := 0
		for _, u := range found {
			if u != t && t.find(u.name) != nil {
				n++
			}
		}
		if n > most {
			best, most = t, n
		}
	}
	return best
}

// without is a mapping without one of its keys.
func without(n, key *yaml.Node) *yaml.Node {
	c := *n
	c.Content = nil
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i] != key {
			c.Content = append(c.Content, n.Content[i], n.Content[i+1])
		}
	}
	return &c
}

// bare reads a section that is one word, such as fold.
func (r *reader) bare(n *yaml.Node) (*sectionKind, *mapped) {
	name := plainKey(n.Value)
	for _, t := range sectionKinds() {
		if t.name == name && t.keys[0].form == nothing {
			r.section = t.name
			if r.seen != nil {
				r.seen(t.title+"/"+t.name, name)
			}
			return t, &mapped{r: r, node: n, table: t.table, items: []item{{&t.keys[0], n, &yaml.Node{Kind: yaml.ScalarNode, Line: n.Line, Column: n.Column}}}}
		}
	}
	head, rest, colon := strings.Cut(n.Value, ":")
	f := r.fail(r.pos(n), "file/kind", "%q is not a section", finding.Clip(n.Value))
	switch like := r.leadLike(head); {
	case colon && rest != "" && like != "":
		f.Fix = "put a space after the colon: " + like + ": " + finding.Clip(strings.TrimSpace(rest))
	case !colon && leadOf(n.Value) != "":
		lead := leadOf(n.Value)
		f.Fix = "put a colon after " + lead + ": " + lead + ": " + finding.Clip(spaced(n.Value)[len(lead)+1:])
	case like == "fold" || like == "gather":
		f.Fix = "did you mean " + quoted(like) + "?"
	case like != "":
		f.Fix = "write " + like + ": and a value"
	default:
		f.Want = "one of: " + strings.Join(leads(), ", ")
	}
	return nil, nil
}

// leadOf is the name of a section with which a text begins, the longest, if more follows.
func leadOf(text string) string {
	best := ""
	for _, l := range leads() {
		if rest, ok := strings.CutPrefix(strings.ToLower(spaced(text)), l+" "); ok && rest != "" && len(l) > len(best) {
			best = l
		}
	}
	return best
}

func (r *reader) leadLike(name string) string {
	n := plainKey(name)
	if h, ok := sectionHints[n]; ok {
		return h
	}
	return finding.Nearest(n, leads())
}

// guess tells that a mapping is no section, and what it may have been meant to be.
func (r *reader) guess(n *yaml.Node, all []item) (*sectionKind, *mapped) {
	if len(all) == 0 {
		r.fail(r.pos(n), "file/empty", "this section is empty")
		return nil, nil
	}
	if r.full {
		return nil, nil
	}
	best, like := r.meantLead(all)
	f := r.fail(r.pos(best.at), "file/unknown-key", "no section is called %q", finding.Clip(best.at.Value))
	if like == "" {
		f.Want = "one of: " + strings.Join(leads(), ", ")
		return nil, nil
	}
	f.Fix = "did you mean " + quoted(like) + "?"
	for _, t := range sectionKinds() {
		if t.name == like && finding.Distance(plainKey(best.at.Value), like) <= 3 {
			key := *best.at
			key.Value = like
			c := *n
			c.Content = slices.Clone(n.Content)
			c.Content[slices.Index(c.Content, best.at)] = &key
			r.section = t.name
			return t, r.mapping(&c, t.table)
		}
	}
	return nil, nil
}

// meantLead is the first key that is like the name of a section, and that name; the first of all if none is.
func (r *reader) meantLead(all []item) (item, string) {
	for _, p := range all {
		if p.at.Kind != yaml.ScalarNode {
			continue
		}
		name := plainKey(p.at.Value)
		like := r.leadLike(name)
		if like != "" && !slices.ContainsFunc(common, func(c key) bool { return c.name == name }) {
			return p, like
		}
	}
	return all[0], ""
}

// commonOf reads what every section may say.
func (r *reader) commonOf(m *mapped) schematic.Common {
	c := schematic.Common{Name: m.text("name"), Gauge: r.ref(m, "gauge", toGauge), Width: m.text("width"), To: m.counts("to", stitches), Pos: r.pos(m.node)}
	if it := m.item(m.table.name); it != nil {
		c.Pos = r.pos(it.at)
	}
	if k := m.table.find("stitch"); k != nil && k.form == text {
		c.Stitch = m.text("stitch")
	}
	c.LeftEdge, c.RightEdge = r.edges(m)
	if c.Name != "" {
		r.section = c.Name
	}
	return c
}

// side is where the shaping at a key falls.
func (m *mapped) side() schematic.Side {
	n := m.get("at")
	i := m.choice("at")
	if i < 0 {
		return schematic.BothEdges
	}
	switch w := m.table.find("at").pick[i]; w {
	case "both edges", "middle":
		return schematic.BothEdges
	case "across":
		return schematic.Across
	case "lines":
		return schematic.Lines
	default:
		s, _ := m.r.asDrawn(m.r.pos(n), w)
		return s
	}
}

func (m *mapped) onRows() schematic.RowSide {
	return schematic.RowSide(max(0, m.choice("on")))
}

// degrees reads an angle.
func (r *reader) degrees(n *yaml.Node) units.Num {
	p := r.phrase(n, "the angle", "an angle such as 90 degrees")
	if p.bad || len(p.all) == 0 {
		return units.Num{}
	}
	p.all[0].s = strings.TrimSuffix(p.all[0].s, "°")
	v := p.number()
	if !p.end() {
		p.must("degrees", "degree", "°")
	}
	if !p.done() {
		return units.Num{}
	}
	if v.Sign() <= 0 || !v.Less(units.Int(360)) {
		r.fail(r.pos(n), "file/bounds", "the row can't bend by %s degrees", v).Want = "more than 0 and less than 360"
	}
	return v
}
