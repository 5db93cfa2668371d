package read

import (
	"strings"
	"sync"

	"gopkg.in/yaml.v3"

	"flatwright/schematic"
)

// sectionKind is a kind of section as it stands in a file: its keys, the leading one first, what makes a
// section of them, and what a form begins one with.
type sectionKind struct {
	*table
	starts bool // it begins a piece
	build  func(r *reader, c schematic.Common, m *mapped) schematic.Section
	begins []entry // one without a name is called as the kind is
}

// madeKinds are the kinds of section once they were asked for, kindsLed by their leading keys.
var (
	madeKinds []*sectionKind
	kindsLed  = map[string]*sectionKind{}
	makeKinds sync.Once // no value: a division is built of sections again
)

// sectionKinds are all of them, in the order in which a form offers them.
func sectionKinds() []*sectionKind {
	makeKinds.Do(func() {
		madeKinds = allKinds()
		for _, k := range madeKinds {
			for _, n := range append([]string{k.keys[0].name}, k.keys[0].also...) {
				kindsLed[n] = k
			}
			k.list()
		}
	})
	return madeKinds
}

func allKinds() []*sectionKind {
	return []*sectionKind{
		{section(key{name: "cast on", form: counts, what: "starts a piece with this many stitches"}, "the cast-on", edgeKey),
			true, func(_ *reader, c schematic.Common, m *mapped) schematic.Section {
				return &schematic.CastOn{Common: c, Stitches: m.counts("cast on", stitches), Edge: m.text("edge")}
			}, []entry{{lines: func(b beginning) []string { return []string{"cast on: " + b.share(1, false)} }}}},
		{section(key{name: "chain", form: counts, what: "starts a piece with this many foundation chains"}, "the foundation chain",
			key{name: "stitches", need: true, form: counts, what: "stitches worked into the chain"}, edgeKey),
			true, func(_ *reader, c schematic.Common, m *mapped) schematic.Section {
				return &schematic.CastOn{Common: c, Stitches: m.counts("stitches", stitches), Chain: m.counts("chain", stitches), Edge: m.text("edge")}
			}, []entry{{lines: func(b beginning) []string {
				return []string{"chain: " + b.chains(), "stitches: " + b.share(1, false)}
			}}}},
		{section(key{name: "sideways", form: choice, pick: []string{"rib", "band"}, what: "a band worked sideways"}, "the sideways band",
			key{name: "stitches", need: true, form: counts, what: "its depth in stitches"},
			key{name: "rows", need: true, form: counts, what: "its rows, which run along the edge"}, edgeKey),
			true, func(_ *reader, c schematic.Common, m *mapped) schematic.Section {
				return &schematic.Sideways{Common: c, Stitches: m.counts("stitches", stitches), Rows: m.counts("rows", rows), Rib: m.choice("sideways") == 0, Edge: m.text("edge")}
			}, []entry{{lines: func(b beginning) []string {
				return []string{"sideways: rib", "stitches: 8", "rows: " + b.share(1, false), "- pick up: 1 in each row"}
			}}}},
		{section(key{name: "ring", form: counts, what: "starts from a centre ring with this many stitches"}, "the ring"),
			true, func(_ *reader, c schematic.Common, m *mapped) schematic.Section {
				return &schematic.Ring{Common: c, Stitches: m.counts("ring", someSts)}
			}, []entry{{lines: func(b beginning) []string { return []string{"ring: " + b.share(1, false)} }}}},
		{section(key{name: "start from", form: list, of: "start", what: "live or held stitches of other pieces"}, "the start", edgeKey),
			true, (*reader).startFrom, []entry{{lines: func(b beginning) []string {
				if b.leads == "" {
					return nil
				}
				return []string{"start from:", "  - piece: " + asText(b.leads)}
			}}}},
		{section(key{name: "pick up", form: phrase, what: "stitches picked up along the long edge of the sideways band"}, "the pick-up", statedKey),
			false, (*reader).pickUp, nil},
		{section(key{name: "even", form: amounts, what: "rows worked even, or a length"}, "the rows worked even",
			key{name: "rib", form: yesNo, what: "yes: drawn as rib"}, endKey),
			false, func(_ *reader, c schematic.Common, m *mapped) schematic.Section {
				return &schematic.Even{Common: c, Amount: m.amount("even"), Rib: m.yes("rib")}
			}, always("even: 10 rows")},
		{shaping("decrease", "stitches decreased at each place"),
			false, (*reader).oneShaping, always("decrease: 1", "at: both edges", "every: 2 rows", "times: 1")},
		{shaping("increase", "stitches increased at each place"),
			false, (*reader).oneShaping, always("increase: 1", "at: both edges", "every: 2 rows", "times: 1")},
		{section(key{name: "shape", form: list, of: "shaping", what: "several shapings at once"}, "the shapings", rowsKey, endKey),
			false, (*reader).shape, always("shape:", "  - decrease: 1", "    at: left edge", "    every: 2 rows", "    times: 2", "  - decrease: 1", "    at: right edge", "    every: 4 rows", "    times: 1")},
		{section(key{name: "repeat row", form: phrase, what: "a row that changes the count by a repeat"}, "the repeat row",
			key{name: "rest", form: choice, pick: []string{"worked even"}, what: "what becomes of stitches that do not fill a repeat"}),
			false, (*reader).repeatRow, always("repeat row: 2 in 1, 1 in each of 2", "rest: worked even")},
		{section(key{name: "add", form: counts, what: "stitches chained or cast on at an edge"}, "the added stitches",
			key{name: "at", need: true, form: choice, pick: places, what: "at which edge"}, edgeKey),
			false, func(_ *reader, c schematic.Common, m *mapped) schematic.Section {
				return &schematic.AddEdge{Common: c, Stitches: m.counts("add", stitches), At: m.side(), Edge: m.text("edge")}
			}, always("add: 1", "at: both edges")},
		{section(key{name: "bind off", also: []string{"cast off"}, form: counts, pick: []string{"all"}, what: "stitches bound off at an edge, or all"}, "the bind-off", takeKeys...),
			false, (*reader).takeOff, []entry{{lines: fixed("bind off: 1", "at: both edges")},
				{name: "shaped armhole", what: "stitches bound off at both edges, then decreased, then rows up to the shoulder", lines: armholed}}},
		{section(key{name: "leave", form: counts, pick: []string{"all"}, what: "stitches left unworked at an edge, or all"}, "the stitches left", takeKeys...),
			false, (*reader).takeOff, always("leave: 1", "at: both edges")},
		{section(key{name: "hold", form: counts, pick: []string{"all"}, what: "stitches kept on hold at an edge, or all"}, "the stitches on hold", takeKeys...),
			false, (*reader).takeOff, always("hold: 1", "at: both edges")},
		{section(key{name: "divide", form: list, of: "part", what: "parts, as a right-side row meets them"}, "the division"),
			false, (*reader).divide, []entry{{lines: divided},
				{name: "shaped neck", what: "the middle is bound off, and each side decreased at the neck up to its shoulder", lines: necked, ends: true}}},
		{section(key{name: "join parts", form: list, of: "join part", what: "parts that become one row again"}, "the joining of parts",
			key{name: "as", form: text, what: "name of the joined part"},
			key{name: "round", form: yesNo, what: "yes: joined into a round"}),
			false, (*reader).joinParts, []entry{{lines: rejoined}}},
		{section(key{name: "panels", form: list, of: "panel", what: "the row is cut into panels at marked lines"}, "the panels"),
			false, (*reader).panels, []entry{{lines: func(b beginning) []string {
				return []string{"panels:", "  - panel: " + b.name("Right panel"), "    stitches: " + b.share(2, false), "  - panel: " + b.name("Left panel"), "    stitches: " + b.share(2, true)}
			}}}},
		{section(key{name: "mitre", also: []string{"miter"}, form: phrase, what: "the row bends at its middle by this many degrees"}, "the mitre",
			key{name: "decrease", form: counts, what: "stitches decreased there in a row"},
			key{name: "increase", form: counts, what: "stitches increased there in a row"},
			key{name: "every", form: counts, what: "every how many rows (every row)"},
			key{name: "times", form: counts, what: "how many times (1)"}),
			false, (*reader).mitre, always("mitre: 90 degrees", "decrease: 2", "every: 2 rows", "times: 1")},
		{section(key{name: "short rows", form: counts, what: "rows over part of the stitches"}, "the short rows",
			key{name: "over", need: true, form: counts, what: "stitches of the longest of them"},
			key{name: "at", need: true, form: choice, pick: []string{"left edge", "right edge", "top edge", "bottom edge", "middle"}, what: "where they are"},
			key{name: "step", form: counts, what: "each pair turns this many stitches sooner (0)"}),
			false, func(_ *reader, c schematic.Common, m *mapped) schematic.Section {
				return &schematic.ShortRows{Common: c, Rows: m.counts("short rows", rows), Over: m.counts("over", stitches), At: m.side(), Step: m.counts("step", stitches)}
			}, always("short rows: 2 rows", "over: 2", "at: middle")},
		{section(key{name: "fold", form: nothing, what: "a fold line"}, "the fold"),
			false, func(_ *reader, c schematic.Common, m *mapped) schematic.Section {
				if !m.alone() {
					return nil
				}
				return &schematic.Fold{Common: c}
			}, always("fold:")},
		{section(key{name: "mark", form: text, what: "a mark at this row: buttonhole, pocket, waist, or any name"}, "the mark",
			key{name: "count", form: counts, what: "how many (1)"},
			key{name: "at", form: choice, pick: places, what: "edge at which it is"},
			key{name: "stitch", form: counts, what: "at this stitch, counted from the right-hand edge"},
			key{name: "inset", form: counts, what: "stitches in from the edge"},
			key{name: "first", form: counts, what: "rows (or stitches) to the first of several"},
			key{name: "apart", form: counts, what: "rows (or stitches) between two of them"},
			key{name: "along", form: yesNo, what: "yes: up an edge, over the rows that follow"},
			key{name: "line", form: yesNo, what: "yes: drawn across the whole row"}),
			false, (*reader).mark, always("mark: marker", "stitch: 1")},
		{section(key{name: "gather", form: nothing, what: "the end is gathered or fastened"}, "the gathering"),
			false, func(_ *reader, c schematic.Common, m *mapped) schematic.Section {
				if !m.alone() {
					return nil
				}
				return &schematic.Gather{Common: c}
			}, always("gather:")},
	}
}

// list puts its beginnings among the entries of sections.
func (k *sectionKind) list() {
	list := "section"
	if k.starts {
		list = "first section"
	}
	for _, e := range k.begins {
		if e.name == "" {
			e.name = k.name
		}
		listed[list] = append(listed[list], e)
	}
}

// always is a beginning that is always the same.
func always(lines ...string) []entry { return []entry{{lines: fixed(lines...)}} }

// alone reports whether nothing stands at the leading key of a section that needs no value, or yes; anything else is told.
func (m *mapped) alone() bool {
	name := m.table.name
	switch v := m.get(name); {
	case v == nil:
		return true
	case v.Kind == yaml.MappingNode:
		m.r.fail(m.r.pos(v), "file/kind", "%q has no keys below it", name).Fix = "indent them like " + quoted(name) + " itself, not further"
		return false
	default:
		return m.r.yes(v, quoted(name))
	}
}

// kindsOf are the kinds of section by their leading keys.
func kindsOf() map[string]*sectionKind {
	sectionKinds()
	return kindsLed
}

func leads() []string {
	out := make([]string, len(sectionKinds()))
	for i, k := range sectionKinds() {
		out[i] = k.name
	}
	return out
}

// startNames are the kinds that begin a piece, as a message lists them.
func startNames() string {
	var out []string
	for _, k := range sectionKinds() {
		if k.starts {
			out = append(out, k.name)
		}
	}
	last := len(out) - 1
	return strings.Join(out[:last], ", ") + " or " + out[last]
}
