package sheet

// Class names what a path, text or group is, for styling. The class is part of
// the drawing's interface: it stays when looks change.
type Class struct{ Name, What string }

// Classes are the classes that layout gives, each with what it marks.
var Classes = []Class{
	{"piece", "one view of a piece, with all that measures it"},
	{"measure", "one measurement: its lines and its label"},
	{"outline", "the edge of a piece"},
	{"hatch", "rib, drawn along its ribs"},
	{"change", "from one section to another"},
	{"fold", "a fold line"},
	{"centre", "a centre line"},
	{"panel", "a marked line between panels"},
	{"cell", "between motifs"},
	{"row", "a marked row"},
	{"work", "the direction of work"},
	{"notch", "a matching mark at a join"},
	{"mark", "a mark at a place"},
	{"dimension", "a dimension line with its ends"},
	{"extension", "an extension line"},
	{"leader", "from a measured edge to its letter"},
	{"label", "a value or a letter on the drawing"},
	{"blank", "a rule to write on"},
	{"caption", "the name of a piece and how many to make"},
	{"heading", "title, sizes and scale"},
	{"note", "a quiet line of text"},
	{"caution", "a caution"},
	{"table", "the table of letters"},
	{"key", "what the signs mean"},
	{"scalebar", "a bar of stated length"},
	{"page", "the page number"},
	{"chart", "one stitch chart, with its numbers"},
	{"stitch", "the symbol of a stitch on a chart"},
	{"join", "the slip stitch that closes a round"},
	{"ring", "a ring to work into"},
	{"number", "the number of a row or round of a chart"},
	{"repeat", "the box around a repeat, and its words"},
	{"break", "where stitches or rows of a chart are left out"},
	{"grid", "the lines of a knitting chart"},
	{"again", "what stands on another page of a chart too"},
}
