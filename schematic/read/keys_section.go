package read

import "slices"

// common keys may stand in every section.
var common = []key{
	{name: "name", form: text, what: "what messages and rows call the section"},
	{name: "gauge", form: text, names: gaugeName, what: "the gauge from here on"},
	{name: "stitch", form: text, what: "what it is worked in"},
	{name: "left edge", also: []string{"top edge"}, form: text, what: "name of the left edge from here on, as drawn"},
	{name: "right edge", also: []string{"bottom edge"}, form: text, what: "name of the right edge from here on, as drawn"},
	{name: "width", form: text, what: "name of the width at its end, such as waist"},
	{name: "to", form: counts, what: "stitches that there are after it; checked"},
}

var sideNames = []string{"every row", "right-side rows", "wrong-side rows"}

// shapingKeys say how a shaping is spread over rows.
var shapingKeys = []key{
	{name: "at", need: true, form: choice, pick: append(slices.Clone(places), "across", "lines"), what: "where in the row"},
	{name: "every", form: counts, what: "every how many rows, such as 4 rows (every row)"},
	{name: "times", form: counts, what: "how many times (1)"},
	{name: "then", form: list, of: "spacing", what: "more runs, spaced differently"},
	{name: "on", form: choice, pick: sideNames, what: "rows on which it falls"},
	{name: "after", form: counts, what: "rows worked even before the first shaping row"},
	{name: "edge", form: text, what: "name of the shaped edge from here on"},
	{name: "panel", form: text, what: "only at the edges of this panel, or across it"},
}

var shapingTable = &table{
	name: "shaping", title: "a shaping",
	keys: append([]key{
		{name: "decrease", form: counts, what: "stitches decreased at each place"},
		{name: "increase", form: counts, what: "stitches increased at each place"},
	}, shapingKeys...),
	hints: shapingHints,
}

var shapingHints = map[string]string{
	"dec": "decrease", "inc": "increase", "each": "every", "repeat": "times", "where": "at", "side": "on", "total rows": "rows", "over": "rows",
}

var rowsKey = key{name: "rows", form: amounts, what: "rows in all, or a length"}
var endKey = key{name: "end after", form: choice, pick: []string{"right-side row", "wrong-side row"}, what: "with a length: the row after which it ends"}
var edgeKey = key{name: "edge", form: text, what: "name of the edge that it makes"}
var statedKey = key{name: "stitches", form: counts, what: "the number of stitches stated; checked"}
var whereKey = key{name: "at", form: choice, pick: places, what: "at which edge; needed unless it is all"}

var takeKeys = []key{
	whereKey,
	{name: "every", form: counts, what: "every how many rows, if it is repeated"},
	{name: "times", form: counts, what: "how many times (1)"},
	edgeKey,
}

func section(lead key, title string, keys ...key) *table {
	lead.need = true
	t := &table{name: lead.name, title: title, keys: append([]key{lead}, keys...), hints: map[string]string{"sts": "stitches", "label": "name", "tension": "gauge", "edge": "left edge"}}
	for _, c := range common {
		if t.find(c.name) == nil {
			t.keys = append(t.keys, c)
		}
	}
	return t
}

func shaping(name, what string) *table {
	t := section(key{name: name, form: counts, what: what}, "the shaping",
		append(slices.Clone(shapingKeys), rowsKey, endKey)...)
	t.hints = shapingHints
	return t
}

var sectionHints = map[string]string{
	"co": "cast on", "caston": "cast on", "begin": "cast on", "start": "cast on", "ch": "chain", "foundation chain": "chain",
	"work even": "even", "even rows": "even", "rows": "even", "straight": "even", "length": "even", "plain": "even",
	"dec": "decrease", "inc": "increase", "shaping": "shape", "rib": "sideways", "band": "sideways", "pickup": "pick up",
	"repeat": "repeat row", "bo": "bind off", "fasten off": "bind off", "split": "divide", "parts": "divide",
	"join": "join parts", "held": "start from", "buttonhole": "mark", "buttonholes": "mark", "marker": "mark", "magic ring": "ring",
	"short row": "short rows", "knit": "even", "close": "gather",
}

func allTables() []*table {
	all := []*table{patternKeys, materialKeys, finishedKeys, pieceKeys, motifKeys, partKeys, joinPartKeys,
		heldKeys, panelKeys, joinKeys, spacingKeys, shapingTable, gradingKeys, drawingKeys, colourKeys}
	for _, k := range sectionKinds() {
		all = append(all, k.table)
	}
	return all
}
