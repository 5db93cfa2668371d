package schematic

import (
	"slices"
	"strings"

	"flatwright/schematic/finding"
)

// Drawing is how the designer wants her pattern drawn. The zero value is as usual.
type Drawing struct {
	Views             []DrawnView // which, in which order; none: as worn, then the pieces
	OneOutline        bool        // a front and a back that differ in their necks alone are one piece in the drawing
	Show, Hide, Order []Called    // measurements; nothing shown is all of them
	Names             []Renamed   // what the drawing calls a measurement instead
	Letters           int         // the first letter, 0 for A
	Lettered          Lettering
	Without           DrawnPart
	Width             float64 // of a picture cut to its ink, mm; 0: the paper
	Text              float64 // size of the words, mm; 0: the usual
	Face              string  // file of a face, relative to the pattern's
	FacePos           finding.Pos
	Colours           Colours
}

// Called is a measurement, or a piece, as the designer calls it, and where.
type Called struct {
	Name string
	Pos  finding.Pos
}

// Renamed is a measurement with another name.
type Renamed struct {
	Called
	To string
}

// DrawnView is one of the ways in which a garment is drawn.
type DrawnView int

// The views.
const (
	AsWorn DrawnView = iota // the whole garment
	InPieces
	BackAsWorn // the whole garment from behind
)

// Lettering is whether measurements are told by letters with a table.
type Lettering int

// The letterings.
const (
	AsAsked  Lettering = iota // as the command that draws asks for
	ByLetter                  // letters and a table
	ByValue                   // the values of the size that is drawn
)

// DrawnPart is a set of parts of a drawing.
type DrawnPart int

// The parts of a drawing that may be left off.
const (
	Heading DrawnPart = 1 << iota
	Key
	ScaleBar
	Arrows
	JoinMarks
)

// Colours are those of a drawing: lines of the pieces, their ground, and all that measures
// and names them.
type Colours struct{ Line, Fill, Measure Colour }

// Colour is a colour, of three parts from 0 to 255, if Set.
type Colour struct {
	R, G, B uint8
	Set     bool
}

// Is reports whether a designer who writes c means the measurement of a piece: by its
// name, by the piece's name and its own, or, for all that the piece has, by the piece's name.
func (c Called) Is(piece, measure string) bool {
	if measure == "chest" && c.Is(piece, "bust") { // the trade's two names of one measurement
		return true
	}
	switch name := finding.PlainName(c.Name); name {
	case finding.PlainName(measure), finding.PlainName(piece + " " + measure), finding.PlainName(piece):
		return true
	default:
		return strings.TrimSuffix(name, " around") == finding.PlainName(measure)
	}
}

// Has reports whether p is among the parts.
func (all DrawnPart) Has(p DrawnPart) bool { return all&p != 0 }

// Wants reports whether a measurement of a piece is to be drawn.
func (d *Drawing) Wants(piece, measure string) bool {
	is := func(all []Called) bool {
		return slices.ContainsFunc(all, func(c Called) bool { return c.Is(piece, measure) })
	}
	return !is(d.Hide) && (len(d.Show) == 0 || is(d.Show))
}

// Rank is where a measurement of a piece stands in the designer's order; those that she
// does not name come behind.
func (d *Drawing) Rank(piece, measure string) int {
	for i, c := range d.Order {
		if c.Is(piece, measure) {
			return i
		}
	}
	return len(d.Order)
}

// NameOf is what the drawing calls a measurement of a piece.
func (d *Drawing) NameOf(piece, measure string) string {
	for _, n := range d.Names {
		if n.Is(piece, measure) {
			return n.To
		}
	}
	return measure
}
