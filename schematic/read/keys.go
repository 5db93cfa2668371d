package read

import "slices"

import "flatwright/schematic"

// form is what may stand behind a key.
type form int

const (
	text    form = iota // words
	choice              // one of words
	yesNo               // yes or no
	counts              // whole numbers, one for all sizes or one for each
	lengths             // lengths, likewise
	amounts             // rows or lengths
	spans               // lengths or ranges of them
	phrase              // words of a fixed grammar
	sizes               // the line of sizes
	words               // a text or a list of texts
	block               // a block of text
	one                 // a mapping with the keys of a table
	list                // a list of such mappings
	named               // a mapping from names to values
	nothing             // no value, or yes
)

// key is one key of a table: the reader, the schema and the editors' help know it from here alone.
type key struct {
	name string
	also []string // other spellings, read alike
	need bool
	form form
	of   string   // the table, for one and list; the form of the values, for named
	pick []string // for choice
	what string   // one line of help

	names Called // what its value is the name of, of what there is in the pattern
}

// Called is what a value may be the name of.
type Called string

const (
	edgeName    Called = "edge"
	gaugeName   Called = "gauge"
	pieceName   Called = "piece"
	measureName Called = "measurement"
)

// table is the keys of one kind of mapping.
type table struct {
	name  string
	title string            // what messages call it
	keys  []key             // in the order in which people write them
	hints map[string]string // words that people try, and the key that is meant
	bare  string            // key that a plain text stands for, or empty
}

func (t *table) find(name string) *key {
	for i := range t.keys {
		if t.keys[i].name == name {
			return &t.keys[i]
		}
		if slices.Contains(t.keys[i].also, name) {
			return &t.keys[i]
		}
	}
	return nil
}

func (t *table) names() []string {
	out := make([]string, len(t.keys))
	for i, k := range t.keys {
		out[i] = k.name
	}
	return out
}

var places = []string{"both edges", "left edge", "right edge", "top edge", "bottom edge"}

var patternKeys = &table{
	name: "pattern", title: "the pattern",
	keys: []key{
		{name: "version", form: choice, pick: []string{"1"}, what: "form of the file, always 1"},
		{name: "pattern", need: true, form: text, what: "title of the pattern"},
		{name: "designer", form: text, what: "who designed it; shown under the title"},
		{name: "note", form: text, what: "a line under the title"},
		{name: "terms", need: true, form: choice, pick: []string{"US", "UK"}, what: "terms in which stitches are named: US or UK"},
		{name: "units", need: true, form: choice, pick: []string{"cm", "in"}, what: "unit of lengths that have none: cm or in"},
		{name: "rounding", form: phrase, what: "printed steps, such as 0.5 cm and 1/4 in"},
		{name: "sizes", need: true, form: sizes, what: "all sizes in the trade's line, such as XS (S, M, L) (1X, 2X)"},
		{name: "for", form: choice, pick: []string{"adults", "children"}, what: "adults or children (cautions follow)"},
		{name: "sample", form: text, what: "the size of the sample"},
		{name: "bodies", form: named, of: "spans", what: "the body that each size fits, by measurement"},
		{name: "gauges", also: []string{"tensions"}, need: true, form: named, of: "gauge", what: "gauges by name; the first one is the default"},
		{name: "grading", form: named, of: "grading", what: "named values, worked out of bodies, ease and gauge, that graded values may call"},
		{name: "yarn", form: list, of: "material", what: "yarn, a list of lines"},
		{name: "swatches", form: named, of: "swatch", what: "what a swatch in each gauge weighs, such as 12 g over 15 x 15 cm"},
		{name: "sample weight", form: phrase, what: "what the finished sample weighs, such as 412 g"},
		{name: "ball", form: phrase, what: "weight and length of a ball: 50 g, 120 m"},
		{name: "allowance", form: phrase, what: "how much more yarn than the fabric takes, such as 10 %"},
		{name: "tools", form: list, of: "material", what: "hooks, needles and other tools, a list of lines"},
		{name: "notions", form: list, of: "material", what: "buttons and the like, a list of lines"},
		{name: "notes", form: words, what: "notes, a list of lines"},
		{name: "special stitches", form: words, what: "special stitches, a list of lines, each with how it is worked"},
		{name: "finishing", form: words, what: "blocking, seams and edgings, a list of lines"},
		{name: "care", form: words, what: "washing and drying, a list of lines"},
		{name: "edition", form: text, what: "which version this is, with its date"},
		{name: "corrections", form: words, what: "what was corrected since the first version, a list of lines, each with its date"},
		{name: "photographs", form: named, of: "text", what: "photographs for web pages: a file beside this one, and what it shows"},
		{name: "pieces", need: true, form: list, of: "piece", what: "the pieces, in the order in which they are drawn"},
		{name: "joins", form: list, of: "join", what: "what is sewn to what"},
		{name: "drawing", form: one, of: "drawing", what: "how the pattern is drawn: what is shown and what is left off, its width, words and colours"},
		{name: "finished", form: named, of: "finished", names: measureName, what: "finished measurements that the designer wrote"},
		{name: "rows", form: block, what: "the written rows, as a block of text"},
		{name: "rows file", form: text, what: "a file beside this one that holds the written rows"},
	},
	hints: map[string]string{
		"title": "pattern", "name": "pattern", "author": "designer", "by": "designer", "gauge": "gauges", "tension": "gauges",
		"unit": "units", "size": "sizes", "body": "bodies", "hook": "tools", "hooks": "tools", "needles": "tools", "materials": "yarn",
		"yarns": "yarn", "buttons": "notions", "seams": "joins", "sewing": "joins", "measurements": "finished", "schematic": "drawing", "picture": "drawing", "terminology": "terms",
		"language": "terms", "piece": "pieces", "abbreviations": "notes", "errata": "corrections", "photos": "photographs", "photograph": "photographs", "photo": "photographs", "images": "photographs", "pictures": "photographs", "revision": "edition", "making up": "finishing", "washing": "care", "written rows": "rows",
	},
}

var materialKeys = &table{
	name: "material", title: "a line of what is needed", bare: "text",
	keys: []key{
		{name: "text", need: true, form: text, what: "the line"},
		{name: "amount", form: counts, what: "how much for each size, a number"},
	},
}

var finishedKeys = &table{
	name: "finished", title: "a finished measurement", bare: "is",
	keys: []key{
		{name: "is", need: true, form: lengths, what: "its value in each size"},
		{name: "of", form: phrase, what: "the measurement, or sum of measurements, that it is checked against"},
	},
}

var pieceKeys = &table{
	name: "piece", title: "a piece",
	keys: []key{
		{name: "piece", need: true, form: text, what: "its name"},
		{name: "kind", form: choice, pick: kinds(), what: "what it is on the body; chooses the names of its measurements"},
		{name: "worked", form: phrase, what: "flat or in the round, a comma, and where it begins: from the hem, the neck, the left side, the right side or the centre"},
		{name: "make", form: counts, what: "how many (1)"},
		{name: "mirror of", form: text, names: pieceName, what: "it is worked as that piece, mirrored"},
		{name: "gauge", form: text, names: gaugeName, what: "name of the gauge that it starts with (the first)"},
		{name: "first row", form: choice, pick: []string{"right side", "wrong side"}, what: "right side or wrong side"},
		{name: "left edge", also: []string{"top edge"}, form: text, what: "name of its left edge as drawn (top edge, if it is worked from side to side)"},
		{name: "right edge", also: []string{"bottom edge"}, form: text, what: "name of its right edge as drawn (bottom edge, if it is worked from side to side)"},
		{name: "centre", also: []string{"center"}, form: choice, pick: []string{"line", "fold"}, what: "line draws its centre line, fold draws it as a fold"},
		{name: "onto", form: words, names: edgeName, what: "for a band: the edges onto which it is worked, each with its rate"},
		{name: "sections", form: list, of: "section", what: "what is worked, in order"},
		{name: "motifs", form: one, of: "motifs", what: "instead of sections: a grid of motifs"},
	},
	hints: map[string]string{
		"name": "piece", "mirror": "mirror of", "mirrored": "mirror of", "as": "mirror of", "steps": "sections", "section": "sections",
		"rows": "sections", "work": "worked", "direction": "worked", "count": "make", "quantity": "make", "tension": "gauge", "motif": "motifs",
	},
}

var motifKeys = &table{
	name: "motifs", title: "a grid of motifs",
	keys: []key{
		{name: "shape", need: true, form: choice, pick: []string{"square", "triangle", "hexagon", "half hexagon", "half square"}, what: "shape of a motif"},
		{name: "across", need: true, form: lengths, what: "width of one motif across its flats"},
		{name: "stitches", form: counts, what: "stitches along one side of a motif, for a band worked onto it"},
		{name: "joining", form: lengths, what: "what joining adds between two motifs (0)"},
		{name: "columns", need: true, form: counts, what: "motifs in a row"},
		{name: "rows", need: true, form: counts, what: "rows of motifs"},
		{name: "armhole", form: counts, what: "rows of motifs, from the top, whose sides are the armholes (none)"},
		{name: "filled", form: words, what: "one line a row from the top: x for a motif, . for none"},
	},
}

var partKeys = &table{
	name: "part", title: "a part of a division",
	keys: []key{
		{name: "part", form: text, what: "name of a part that is worked on"},
		{name: "stitches", form: counts, what: "its stitches (those of the part that it mirrors)"},
		{name: "bind off", also: []string{"cast off"}, form: counts, what: "stitches bound off between two parts"},
		{name: "leave", form: counts, what: "stitches left unworked"},
		{name: "hold", form: counts, what: "stitches kept on hold, for another piece"},
		{name: "name", form: text, what: "name of stitches left or held"},
		{name: "edge", form: text, what: "name of the edge that stitches bound off or left make"},
		{name: "left edge", also: []string{"top edge"}, form: text, what: "name of its left edge as drawn"},
		{name: "right edge", also: []string{"bottom edge"}, form: text, what: "name of its right edge as drawn"},
		{name: "mirror of", form: text, what: "it is worked as that part, mirrored"},
		{name: "sections", form: list, of: "section", what: "what is worked on this part"},
	},
	hints: map[string]string{"name": "part", "mirror": "mirror of", "rows": "sections", "sts": "stitches"},
}

var joinPartKeys = &table{
	name: "join part", title: "a part that is joined", bare: "part",
	keys: []key{
		{name: "part", form: text, what: "name of the part"},
		{name: "add", form: counts, what: "stitches added in the gap"},
		{name: "edge", form: text, what: "name of the edge that added stitches make"},
	},
}

var heldKeys = &table{
	name: "start", title: "a run of stitches to start from", bare: "piece",
	keys: []key{
		{name: "piece", form: text, what: "the piece whose live or held stitches these are"},
		{name: "part", form: text, what: "its part"},
		{name: "stitches", form: counts, what: "how many there are; checked"},
		{name: "half", form: yesNo, what: "yes: half of a round"},
		{name: "add", form: counts, what: "stitches added between two runs"},
		{name: "panel", form: text, what: "name of the panel that they make in this piece"},
	},
}

var panelKeys = &table{
	name: "panel", title: "a panel",
	keys: []key{
		{name: "panel", need: true, form: text, what: "its name"},
		{name: "stitches", need: true, form: counts, what: "its stitches"},
		{name: "gauge", form: text, names: gaugeName, what: "its gauge"},
	},
}

var joinKeys = &table{
	name: "join", title: "a join",
	keys: []key{
		{name: "sew", need: true, form: words, names: edgeName, what: "an edge, or a list of edges"},
		{name: "into", also: []string{"to"}, form: words, names: edgeName, what: "the edge that it is sewn to"},
		{name: "how", form: phrase, what: "as long, stitch to stitch, 3 sts to 4 rows, eased by 2 cm, gathered, at a fold, or in 4 places"},
		{name: "seam", form: lengths, what: "what the seam takes, one length"},
	},
	hints: map[string]string{"join": "sew", "edge": "sew", "with": "into", "onto": "into"},
}

var spacingKeys = &table{
	name: "spacing", title: "another run of a shaping",
	keys: []key{
		{name: "every", need: true, form: counts, what: "every how many rows"},
		{name: "times", need: true, form: counts, what: "how many times"},
	},
}

// kinds are the words for the kinds of piece.
func kinds() []string {
	var out []string
	for _, k := range schematic.Kinds() {
		out = append(out, k.String())
	}
	return out
}
