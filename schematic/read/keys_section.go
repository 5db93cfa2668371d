package read

import "slices"

// common keys may stand in every section.
var common = []key{
	{name: "name", form: text, what: "what messages and rows call the section"},
	{name: "gauge", form: text, what: "the gauge from here on"},
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
	{name: "then", form: list, of: "spacing", what: "further runs with other spacings"},
	{name: "on", form: choice, pick: sideNames, what: "rows on which it falls"},
	{name: "after", form: counts, what: "rows worked even before the first shaping row"},
	{name: "edge", form: text, what: "name of the shaped edge from here on"},
	{name: "panel", form: text, what: "only at the edges of this panel"},
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
	t := &table{name: lead.name, title: title, keys: append([]key{lead}, keys...), hints: map[string]string{"sts": "stitches", "label": "name", "tension": "gauge"}}
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

// sectionTables are the kinds of section, by their leading keys. mitre stands
// first: it has decrease and increase among its own keys.
var sectionTables = []*table{
	section(key{name: "mitre", also: []string{"miter"}, form: phrase, what: "the row bends at its middle by so many degrees"}, "the mitre",
		key{name: "decrease", form: counts, what: "stitches decreased there in a row"},
		key{name: "increase", form: counts, what: "stitches increased there in a row"},
		key{name: "every", form: counts, what: "every how many rows (every row)"},
		key{name: "times", form: counts, what: "how many times (1)"}),
	section(key{name: "cast on", form: counts, what: "starts a piece with so many stitches"}, "the cast-on", edgeKey),
	section(key{name: "chain", form: counts, what: "starts a piece with so many foundation chains"}, "the foundation chain",
		key{name: "stitches", need: true, form: counts, what: "stitches worked into the chain"}, edgeKey),
	section(key{name: "sideways", form: choice, pick: []string{"rib", "band"}, what: "a band worked sideways"}, "the sideways band",
		key{name: "stitches", need: true, form: counts, what: "its depth in stitches"},
		key{name: "rows", need: true, form: counts, what: "its rows, which run along the edge"}, edgeKey),
	section(key{name: "pick up", form: phrase, what: "stitches picked up along the long edge of the sideways band"}, "the pick-up", statedKey),
	section(key{name: "even", form: amounts, what: "rows worked even, or a length"}, "the rows worked even",
		key{name: "rib", form: yesNo, what: "yes: drawn as rib"}, endKey),
	shaping("decrease", "stitches decreased at each place"),
	shaping("increase", "stitches increased at each place"),
	section(key{name: "shape", form: list, of: "shaping", what: "several shapings at once"}, "the shapings", rowsKey, endKey),
	section(key{name: "repeat row", form: phrase, what: "a row that changes the count by a repeat"}, "the repeat row",
		key{name: "rest", form: choice, pick: []string{"worked even"}, what: "what becomes of stitches that do not fill a repeat"}),
	section(key{name: "add", form: counts, what: "stitches chained or cast on at an edge"}, "the added stitches",
		key{name: "at", need: true, form: choice, pick: places, what: "at which edge"}, edgeKey),
	section(key{name: "bind off", also: []string{"cast off"}, form: counts, pick: []string{"all"}, what: "stitches bound off at an edge, or all"}, "the bind-off", takeKeys...),
	section(key{name: "leave", form: counts, pick: []string{"all"}, what: "stitches left unworked at an edge, or all"}, "the stitches left", takeKeys...),
	section(key{name: "hold", form: counts, pick: []string{"all"}, what: "stitches kept on hold at an edge, or all"}, "the stitches on hold", takeKeys...),
	section(key{name: "divide", form: list, of: "part", what: "parts, as a right-side row meets them"}, "the division"),
	section(key{name: "join parts", form: list, of: "join part", what: "parts that become one row again"}, "the joining of parts",
		key{name: "as", form: text, what: "name of the joined part"},
		key{name: "round", form: yesNo, what: "yes: joined into a round"}),
	section(key{name: "start from", form: list, of: "start", what: "live or held stitches of other pieces"}, "the start", edgeKey),
	section(key{name: "ring", form: counts, what: "starts from a centre ring with so many stitches"}, "the ring"),
	section(key{name: "panels", form: list, of: "panel", what: "the row is cut into panels at marked lines"}, "the panels"),
	section(key{name: "short rows", form: counts, what: "rows over part of the stitches"}, "the short rows",
		key{name: "over", need: true, form: counts, what: "stitches of the longest of them"},
		key{name: "at", need: true, form: choice, pick: []string{"left edge", "right edge", "top edge", "bottom edge", "middle"}, what: "where they are"},
		key{name: "step", form: counts, what: "each pair is so many stitches shorter at each turn (0)"}),
	section(key{name: "fold", form: nothing, what: "a fold line"}, "the fold"),
	section(key{name: "mark", form: text, what: "a mark at this row: buttonhole, pocket, waist, or any name"}, "the mark",
		key{name: "count", form: counts, what: "how many (1)"},
		key{name: "at", form: choice, pick: places, what: "edge at which it is"},
		key{name: "stitch", form: counts, what: "at this stitch, counted from the right-hand edge"},
		key{name: "inset", form: counts, what: "stitches in from the edge"},
		key{name: "first", form: counts, what: "rows (or stitches) to the first of several"},
		key{name: "apart", form: counts, what: "rows (or stitches) between two of them"},
		key{name: "along", form: yesNo, what: "yes: up an edge, over the rows that follow"},
		key{name: "line", form: yesNo, what: "yes: drawn across the whole row"}),
	section(key{name: "gather", form: nothing, what: "the end is gathered or fastened"}, "the gathering"),
}

var sectionHints = map[string]string{
	"co": "cast on", "caston": "cast on", "begin": "cast on", "start": "cast on", "ch": "chain", "foundation chain": "chain",
	"work even": "even", "even rows": "even", "rows": "even", "straight": "even", "length": "even", "plain": "even",
	"dec": "decrease", "inc": "increase", "shaping": "shape", "rib": "sideways", "band": "sideways", "pickup": "pick up",
	"repeat": "repeat row", "bo": "bind off", "fasten off": "bind off", "split": "divide", "parts": "divide",
	"join": "join parts", "held": "start from", "buttonhole": "mark", "buttonholes": "mark", "marker": "mark", "magic ring": "ring",
	"short row": "short rows", "knit": "even", "close": "gather",
}

func leads() []string {
	out := make([]string, len(sectionTables))
	for i, t := range sectionTables {
		out[i] = t.name
	}
	return out
}

func allTables() []*table {
	return append([]*table{patternKeys, materialKeys, finishedKeys, pieceKeys, motifKeys, partKeys, joinPartKeys,
		heldKeys, panelKeys, joinKeys, spacingKeys, shapingTable, gradingKeys, drawingKeys, colourKeys}, sectionTables...)
}
