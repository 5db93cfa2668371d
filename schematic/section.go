package schematic

import (
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
)

// Section is one step in the working of a piece. Its kinds stand in section_*.go and freeform.go, each with its type, what
// it is and says (Traits), its bounds (load) and how it is worked; how an alteration chooses its numbers anew is its fit.
type Section interface {
	Base() *Common
	Traits() Traits
	load(size int, rows func(Amount) int64) Load
	work(w *worker)
	fit(f *Fitting, was Section)     // chooses its numbers anew; was is the section as published
	need(f *Fitting, then Need) Need // what the count before it must be, if that after it must be then
	sided() bool                     // it must begin on a row of one side, worked flat
}

// Common is what every section may say.
type Common struct {
	Name      string // shown in messages and rows; may be empty
	Gauge     string // change to this gauge from here on
	LeftEdge  string // name the edges from here on, as drawn
	RightEdge string
	Width     string      // name the width at the end of the section, and show it
	Stitch    string      // what it is worked in, where it is not the gauge's stitch
	To        expr.Graded // stitches there must be after it (stated by the designer)
	Pos       finding.Pos
}

// Base is the common part of the section.
func (c *Common) Base() *Common { return c }

// What most kinds of section do when a pattern is altered: nothing, the count stays, either side will do.
func (c *Common) fit(*Fitting, Section)           {}
func (c *Common) need(_ *Fitting, then Need) Need { return then }
func (c *Common) sided() bool                     { return false }

// Amount is a number of rows, or a length that rows must reach.
type Amount struct {
	Rows   expr.Graded // whole rows; or
	Length expr.Graded // mm, to the nearest whole row
	End    RowSide     // with Length: end after such a row (AnyRow: no matter)
}

// HeldPart is a run of a Held start: the live stitches of a piece (or of its
// named part or panel), or stitches added (Piece empty). Stitches, if given,
// is the number stated. Panel names the run as a panel of the new piece.
type HeldPart struct {
	Piece    string
	Part     string
	Stitches expr.Graded
	Added    expr.Graded
	Half     bool // only half of them (one half of a round)
	Panel    string
	Pos      finding.Pos
}

// Shaping is one shaping among those of a Shape: By stitches (increased if
// Increase) at each place that At names, on every Every-th row, Times times;
// Then follows with other spacings.
type Shaping struct {
	Increase bool
	By       expr.Graded
	At       Side
	Panel    string      // only at the edges of this panel (with Lines)
	Every    expr.Graded // rows; 1 is every row
	Times    expr.Graded
	Then     []Spacing
	On       RowSide
	Offset   int    // rows worked before the first shaping row
	Edge     string // name the shaped edge from here on
	Pos      finding.Pos
}

// Spacing is another run of a shaping: every Every-th row, Times times.
type Spacing struct {
	Every expr.Graded
	Times expr.Graded
}

// Part is one run of a divided row: worked on (Sections), or left, bound off
// or held. Name is how joins, measurements and messages call it.
type Part struct {
	Name      string
	Stitches  expr.Graded
	Leave     bool   // left unworked or bound off
	Off       bool   // with Leave: bound off
	Hold      bool   // on hold, for another piece
	Edge      string // for a part that is left: the name of the edge it makes
	LeftEdge  string
	RightEdge string
	MirrorOf  string // worked as that part, mirrored
	Sections  []Section
	Pos       finding.Pos
}

// JoinPart is a part by name, or stitches added (Part empty).
type JoinPart struct {
	Part  string
	Added expr.Graded
	Edge  string
	Pos   finding.Pos
}

// Panel is one panel of a row, of its own stitch and gauge if Gauge is given.
type Panel struct {
	Name     string
	Stitches expr.Graded
	Gauge    string
	Pos      finding.Pos
}
