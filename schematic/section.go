package schematic

import (
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Section is one step in the working of a piece. The concrete types are the
// kinds of section below: how each is worked stands in work, what its numbers are in with,
// how an alteration chooses them anew in fit.
type Section interface {
	Base() *Common
	traits() Traits
	with(f number) Section // a copy with every number put through f
	load(size int, rows func(Amount) int64) Load
	parts() []*Part
	named() []GivenName
	startsFrom() []string
	firstEdge() string
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

// CastOn starts a piece, or a part of none, with stitches cast on or chained.
// Chain is the number of foundation chains, if the designer wrote it.
type CastOn struct {
	Common
	Stitches expr.Graded
	Chain    expr.Graded
	Edge     string // name of the edge that it makes
}

// Held starts a piece from live or held stitches of other pieces, in the order
// in which a right-side row meets them, with stitches added or picked up between.
type Held struct {
	Common
	From []HeldPart
	Edge string // name of the edge that it makes
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

// Ring starts a piece at a centre ring with so many stitches; the piece is
// worked in the round outwards.
type Ring struct {
	Common
	Stitches expr.Graded
}

// Sideways is a band worked sideways: Stitches are its depth, Rows run along
// the edge. It starts a piece, before a PickUp.
type Sideways struct {
	Common
	Stitches expr.Graded
	Rows     expr.Graded
	Rib      bool // hatched
	Edge     string
}

// PickUp picks stitches up along the long edge of the Sideways band before it.
// With Tall and Short, rows alternate and begin and end with a tall one if
// FirstTall; EndsTall is what the first and the last tall row give.
type PickUp struct {
	Common
	Pick, Of  int // Pick stitches in every Of rows (1 in each row: 1, 1)
	Short     int // stitches in each short row, if rows alternate in height
	Tall      int // stitches in each tall row
	Ends      int // stitches in the first and the last tall row
	Alternate bool
	Stitches  expr.Graded // the number stated
}

// Even is rows worked even. Rib makes it hatched along its ribs.
type Even struct {
	Common
	Amount
	Rib bool
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

// Spacing is a further run of a shaping: every Every-th row, Times times.
type Spacing struct {
	Every expr.Graded
	Times expr.Graded
}

// Shape is rows with one or several shapings at once. Rows, if given, is the
// number of rows in all (they must hold every shaping); otherwise the longest
// shaping ends it.
type Shape struct {
	Common
	Shapings []Shaping
	Amount
}

// RepeatRow changes the count by a repeat: the row's pattern uses Use stitches
// and makes Make, again and again; Left is worked even if RestEven, and
// otherwise must be 0.
type RepeatRow struct {
	Common
	Text     string // as authored
	Use      int
	Makes    int
	RestEven bool
}

// AddEdge adds stitches (chained or cast on) at the edges that At names.
type AddEdge struct {
	Common
	Stitches expr.Graded
	At       Side
	Edge     string // name of the edge that they make
}

// BindOff takes stitches out of work at the edges that At names, or all of them:
// bound off, or left unworked (Leave). At both edges a bind-off takes two rows,
// one edge at the beginning of each. Repeats does so every Every rows.
type BindOff struct {
	Common
	Leave    bool
	Hold     bool // kept on hold, live for another piece
	All      bool
	Stitches expr.Graded
	At       Side
	Every    expr.Graded
	Times    expr.Graded
	Edge     string
}

// Divide splits the row into parts, in the order in which a right-side row
// meets them (from the right-hand edge as drawn, for a piece worked from the hem).
type Divide struct {
	Common
	Parts []Part
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

// JoinParts makes one row of several parts, in the order in which a right-side
// row meets them, with stitches added in the gaps. With Round the row becomes a round;
// if no part is named it is the row in work that is joined, over the stitches added.
type JoinParts struct {
	Common
	Name  string // of the joined part; empty: the piece goes on
	Of    []JoinPart
	Round bool // joined into a round
}

// JoinPart is a part by name, or stitches added (Part empty).
type JoinPart struct {
	Part  string
	Added expr.Graded
	Edge  string
	Pos   finding.Pos
}

// Panels cuts the row into panels at marked lines, in the order in which a
// right-side row meets them. If a later shaping falls on the lines, each panel
// is drawn with its own outline.
type Panels struct {
	Common
	Of []Panel
}

// Panel is one panel of a row, of its own stitch and gauge if Gauge is given.
type Panel struct {
	Name     string
	Stitches expr.Graded
	Gauge    string
	Pos      finding.Pos
}

// Mitre bends the row at its middle by Angle degrees while it is decreased or
// increased there By stitches in all on every Every-th row, Times times.
type Mitre struct {
	Common
	Angle    units.Num
	Increase bool
	By       expr.Graded
	Every    expr.Graded
	Times    expr.Graded
}

// ShortRows are rows over part of the stitches only: height is added only
// there. Over is how many stitches the longest row works, At which edge it
// starts from (BothEdges: in the middle). Each pair of rows is Step stitches shorter
// than the pair before at each turn.
type ShortRows struct {
	Common
	Over expr.Graded
	At   Side
	Rows expr.Graded
	Step expr.Graded
}

// Fold is a line on which the piece is folded.
type Fold struct {
	Common
}

// Mark is a named mark on the piece at this row: a waist line, a stitch
// marker, or Count of them (buttonholes) evenly between From and To stitches or,
// with Along, up an edge over the rows that follow.
type Mark struct {
	Common
	What   string // buttonhole, marker, waist, pocket
	Count  expr.Graded
	At     Side        // an edge, for marks up an edge
	Along  bool        // up an edge
	Inset  expr.Graded // stitches in from the edge
	Stitch expr.Graded // at this stitch from the right-hand edge
	First  expr.Graded // rows from here to the first of Count
	Apart  expr.Graded // rows (or stitches) between them
	Line   bool        // drawn across the whole row
}

// Gather draws all stitches together: an end that is gathered or fastened.
type Gather struct {
	Common
}
