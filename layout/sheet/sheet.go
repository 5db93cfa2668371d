// Package sheet is a finished page as plain data: paths, texts and groups in
// millimetres, y downwards from the top left corner of the paper. Layout makes
// sheets, writers write them and decide nothing, tests ask them questions.
package sheet

import "flatwright/fonts"

// Sheet is one page. W and H are in mm.
type Sheet struct {
	W, H     float64
	Title    string // document and page title, plain text
	Desc     string // the drawing in words, plain text
	Author   string
	Lang     string // BCP 47, such as en
	Prefix   string // of every id, the caller's, so that drawings can share a page
	Bookmark string // name of the page in an outline of the document
	Places   []Bookmark
	Root     Group
}

// Bookmark is a place on a sheet in the outline of the document, behind the
// sheet's own. Y is its top in mm; a level is at most one deeper than the one before.
type Bookmark struct {
	Name  string
	Level int
	Y     float64
}

// Group is a group of primitives with a meaning: a piece, a measurement, a table.
// ID is unique in its sheet and has no prefix; Class is for styling (see Classes).
// Title and Desc are plain text for people who hear the drawing.
type Group struct {
	ID    string
	Class string
	Title string
	Desc  string
	Link  string // an address, or empty
	Items []Item
}

// Item is a Group, a Path, a Text or a Picture.
type Item interface{ item() }

func (*Group) item()   {}
func (*Path) item()    {}
func (*Text) item()    {}
func (*Picture) item() {}

// Verb is one segment of a path.
type Verb int

// The verbs. Move and Line take one point, Cubic three (two controls, then the
// end), Close none.
const (
	Move Verb = iota
	Line
	Cubic
	Close
)

// Seg is one segment of a path.
type Seg struct {
	Verb Verb
	P    [3]Point
}

// Point is a place on the sheet in mm.
type Point struct{ X, Y float64 }

// Path is an open or closed path with one style. Joins and caps are round.
type Path struct {
	Segs  []Seg
	Style Style
	Class string
}

// Style is how a path is drawn. A Width of 0 is no stroke. Colours are the
// sheet's own few (see Ink).
type Style struct {
	Width  float64   // mm
	Dash   []float64 // mm on, off, …; empty: solid
	Stroke Ink
	Fill   Ink
}

// Ink is one of the few colours of a drawing; each is told apart in black and
// white too.
type Ink int

// The inks.
const (
	None Ink = iota
	Black
	Grey  // for hatching and quiet lines
	Paper // white
	Tint  // the ground of a table's head
	Pale  // the ground of a second yarn on a chart
	Mid   // that of a third
)

// own marks an ink that is a colour of the designer's.
const own Ink = 1 << 24

// RGB is the ink of a colour, of three parts from 0 to 255.
func RGB(r, g, b uint8) Ink { return own | Ink(r)<<16 | Ink(g)<<8 | Ink(b) }

// Own reports whether the ink is a colour of the designer's.
func (k Ink) Own() bool { return k&own != 0 }

// RGB are the ink's parts from 0 to 255.
func (k Ink) RGB() (r, g, b int) {
	if k.Own() {
		return int(k >> 16 & 0xff), int(k >> 8 & 0xff), int(k & 0xff)
	}
	switch k {
	case Grey:
		return 0x6b, 0x6b, 0x6b
	case Paper:
		return 0xff, 0xff, 0xff
	case Tint:
		return 0xec, 0xec, 0xec
	case Pale:
		return 0xd2, 0xd2, 0xd2
	case Mid:
		return 0xae, 0xae, 0xae
	}
	return 0, 0, 0
}

// Anchor is where a text's point lies.
type Anchor int

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// Picture is a photograph, a JPEG file, of W by H mm from its top left corner.
type Picture struct {
	At   Point
	W, H float64
	JPEG []byte
}

// Text is one line of text. At is the point of its anchor on the baseline; Angle
// turns it anticlockwise about At, in degrees (90: read from the right). Size is the font
// size in mm. Width is the measured width in mm, the box that layout reserved.
type Text struct {
	S      string
	At     Point
	Anchor Anchor
	Angle  float64
	Face   fonts.Face
	Size   float64
	Width  float64
	Ink    Ink
	Class  string
}
