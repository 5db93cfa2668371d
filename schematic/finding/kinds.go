package finding

import "slices"

// About describes one kind of finding.
type About struct {
	Kind string // family and thing, stable: scripts may rely on it
	What string // one line for people
}

// Kinds is the one table of all kinds of finding, by family. A kind keeps its
// name for as long as the program lives; a test holds the code to the table.
var Kinds = []About{
	{"file/size", "the file is larger than a pattern can be"},
	{"file/encoding", "the file is not UTF-8 text"},
	{"file/characters", "a character that does not belong in a text"},
	{"file/tab", "a tab where the file is indented"},
	{"file/syntax", "the file is not well-formed YAML"},
	{"file/quotes", "curly quotes, which do not quote"},
	{"file/comment", "a # that turns the rest of a line into a comment by mistake"},
	{"file/depth", "things inside each other too deeply"},
	{"file/anchor", "a YAML anchor or alias, which a pattern may not have"},
	{"file/tag", "a YAML tag, which a pattern may not have"},
	{"file/version", "a form of the file that this program does not know"},
	{"file/kind", "a text where a list is meant, a list where a text is meant, and so on"},
	{"file/empty", "a key without its value, or nothing where something is needed"},
	{"file/unknown-key", "a key that has no meaning in its place"},
	{"file/duplicate-key", "a key that stands twice in one place"},
	{"file/missing-key", "a key that must be there and is not"},
	{"file/conflict", "two keys that exclude each other"},
	{"file/list-length", "more or fewer numbers than there are sizes"},
	{"file/unknown-size", "a size that is not in the line of sizes"},
	{"file/number", "something that is not a number where one is meant"},
	{"file/bounds", "a number or a text that is out of bounds"},
	{"file/unit", "a unit that does not fit or is not known"},
	{"file/choice", "a word that is not one of the few that may stand there"},
	{"file/form", "a phrase of the trade that is not written in a form that can be read"},
	{"file/reference", "a name that nothing in the pattern has"},
	{"file/duplicate-name", "a name that two things have"},
	{"file/cycle", "things that refer to each other in a circle"},
	{"file/order", "a section that can't stand where it stands"},
	{"file/sum", "a sum with names that can't be read or worked out"},
	{"file/bodies", "a table of bodies that can't be read"},
	{"file/name", "a name that a sum could not call"},
	{"file/sheet", "a spreadsheet that can't be read"},
	{"file/many", "so many errors that the rest is not told"},
	{"words/brackets", "a line bracketed unlike the line of sizes"},
	{"arithmetic/cycle", "pieces that begin from each other in a circle"},
	{"arithmetic/start", "a section with no stitches to work on"},
	{"arithmetic/count", "a section that does not end on the count stated for it"},
	{"arithmetic/foundation", "a chain shorter than the stitches on it"},
	{"arithmetic/impossible", "more taken away than there is, or nothing left"},
	{"arithmetic/round", "an edge where a round has none, or a ring that is not round"},
	{"arithmetic/pick-up", "stitches picked up that are not as many as stated"},
	{"arithmetic/held", "live stitches of another piece that are not as many as stated"},
	{"arithmetic/lines", "a shaping at marked lines where there are none"},
	{"arithmetic/shaping-rows", "a shaping that needs more rows than there are"},
	{"arithmetic/row-side", "a shaping or bind-off that does not fall on its side of the work"},
	{"arithmetic/multiple", "a count that a repeat does not divide"},
	{"arithmetic/short-rows", "short rows that use up their stitches, or can't be drawn"},
	{"arithmetic/panels", "panels that do not make up their row"},
	{"arithmetic/division", "parts of a division that do not make up their row"},
	{"arithmetic/join", "parts that can't be joined to one row"},
	{"arithmetic/join-rows", "parts joined after different rows"},
	{"arithmetic/join-gap", "stitches added that do not fill the gap between two parts"},
	{"arithmetic/mitre", "a mitre that does not bend as stated"},
	{"arithmetic/motifs", "a grid without a motif"},
	{"reference/edge", "an edge that no piece has"},
	{"drawn/written", "a written measurement that the counts do not make at the gauge"},
	{"drawn/missing", "a measurement written for a size whose pieces have none"},
	{"drawn/unknown", "a written measurement that nothing in the drawing is called"},
	{"units/pair", "centimetres and inches that are not the same length"},
	{"grading/missing", "a measurement that is not written for a size that has it"},
	{"grading/hole", "a size without what smaller and larger sizes have"},
	{"grading/backwards", "a measurement that is smaller than in the size before"},
	{"grading/jump", "a step from size to size unlike the others"},
	{"grading/impossible", "a count or shaping that a size can't have"},
	{"grading/ease", "a garment smaller than the body that it fits"},
	{"joins/length", "two edges sewn together that are not as long as each other"},
	{"joins/count", "two edges sewn stitch to stitch that have not as many"},
	{"joins/rate", "stitches and rows that do not come out at the rate of their seam"},
	{"joins/ease", "two edges that do not differ by what is eased in"},
	{"materials/swatch", "a weight that the yarn is reckoned from is missing or can't be"},
	{"materials/yarn", "yarn stated for a size that its fabric does not bear out"},
	{"joins/gather", "an edge that is gathered and not longer than the other"},
}

// Known reports whether kind is in the table.
func Known(kind string) bool {
	return slices.ContainsFunc(Kinds, func(a About) bool { return a.Kind == kind })
}
