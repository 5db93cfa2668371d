// Package schematic holds a garment pattern as its designer wrote it (Pattern),
// works its rows for one size at the gauge, and gives the flat pieces that come
// of it (Garment): outlines, named edges and measurements, in millimetres. It
// knows the craft and nothing of files, drawing or paper.
package schematic

import (
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Terms are the words in which stitches are named.
type Terms int

// The two sets of crochet terms.
const (
	US Terms = iota
	UK
)

// String is US or UK.
func (t Terms) String() string { return [...]string{"US", "UK"}[t] }

// Pattern is a pattern as authored, for all sizes.
type Pattern struct {
	File     string // name of the file, for messages
	Title    string
	Designer string
	Note     string // shown under the title
	Terms    Terms
	Units    units.Unit  // as authored
	Steps    units.Steps // printed steps of cm and in
	Sizes    expr.Sizes
	SizesPos finding.Pos
	Sample   int  // index of the size in which the sample is worked, or -1
	Children bool // sizes for children: cautions apply
	Bodies   []Written
	Grading  []Grading     // sums from which graded values are worked out
	Graded   []GradedValue // what they came to
	Calls    []Call        // where the file uses them
	Gauges   []Gauge
	Pieces   []*Piece
	Joins    []Join
	Finished []Written
	Yarn     []Material
	Tools    []Material
	Notions  []Material // buttons and the like
	Weights  Weights    // what the yarn is reckoned from
	Notes    []string
	Special  []string // special stitches, each with how it is worked
	Making   []string // finishing: blocking, seams, edgings
	Care     []string
	Edition  string   // which version this is, and its date, as the designer wrote it
	Mended   []string // corrections since the first version, each with its date
	RowsFile string   // written rows beside the pattern, relative to it
	Rows     string   // written rows in the pattern
	RowsPos  finding.Pos
}

// Material is a line of what is needed, with an optional amount for each size.
type Material struct {
	Text   string
	Amount expr.Graded
	Pos    finding.Pos
}

// Written is a measurement or a body measurement that the designer wrote.
// Low and High are in mm and differ only for a range; Unit is as authored.
// Both says that the other unit was written too (Other, in mm).
type Written struct {
	Name  string
	Low   expr.Graded
	High  expr.Graded
	Unit  units.Unit
	Other expr.Graded // the same in the other unit, if the designer wrote it
	Of    string      // the derived measurement it is held against; empty: by its name
	Pos   finding.Pos
}

// GaugeNamed is the gauge called name, or nil. An empty name is the first.
func (p *Pattern) GaugeNamed(name string) *Gauge {
	for i := range p.Gauges {
		if name == "" || p.Gauges[i].Name == name {
			return &p.Gauges[i]
		}
	}
	return nil
}

// PieceNamed is the piece called name, or nil.
func (p *Pattern) PieceNamed(name string) *Piece {
	for _, q := range p.Pieces {
		if q.Name == name {
			return q
		}
	}
	return nil
}

// Direction is where a piece begins on the body.
type Direction int

// The directions in which a piece may be worked. FromLeft and FromRight are
// worked from side to side and begin at the left or right edge of the drawing.
const (
	FromHem Direction = iota
	FromNeck
	FromLeft
	FromRight
	FromCentre
)

// String is the direction in the pattern file's words.
func (d Direction) String() string {
	return [...]string{"from the hem", "from the neck", "from the left side", "from the right side", "from the centre"}[d]
}

// Kind is what a piece is on the body; it chooses the trade's names for its
// measurements.
type Kind int

// The kinds of piece.
const (
	KindPiece Kind = iota
	KindBody
	KindBack
	KindFront
	KindSleeve
	KindYoke
	KindHat
	KindBand
)

// String is the kind in the pattern file's words.
func (k Kind) String() string {
	return [...]string{"piece", "body", "back", "front", "sleeve", "yoke", "hat", "band"}[k]
}

// Piece is one piece of the garment as authored: sections in the order in which
// they are worked, or the mirror of another piece, or a grid of motifs.
type Piece struct {
	Name      string
	Kind      Kind
	Make      expr.Graded // how many; at least 1. A size that has none makes no such piece
	MirrorOf  string      // the piece that this one mirrors; Sections are then empty
	Round     bool        // worked in the round: lies flat at half its way round
	From      Direction
	Gauge     string // name of the gauge it starts with; empty: the first
	FirstWS   bool   // its first row is a wrong-side row
	LeftEdge  string // names of its outer edges as drawn, until a section renames them
	RightEdge string
	BeginEdge string // name of the edge that it begins with (default 'cast-on edge')
	Centre    bool   // draw its centre line
	FoldAt    bool   // the centre is a fold
	Onto      []EdgeRate
	Motifs    *Motifs
	Sections  []Section
	Pos       finding.Pos
}

// EdgeRate is one edge onto which a band is worked, with its rate: Pick
// stitches for every Of rows or stitches of the edge.
type EdgeRate struct {
	Edge     string // an edge reference, such as 'Right front front edge'
	Pick, Of int
	Pos      finding.Pos
}

// Side is an edge or place of a row, as drawn with the right side facing.
type Side int

// The places where a row may be shaped. Left and Right are as drawn, right side
// facing, the piece the way up in which it is worn; for a piece worked from side to
// side, Left is the top and Right the bottom if it goes to the right, and the
// other way round if it goes to the left. Lines is both sides of every marked
// line between panels; Across is spread evenly across the row.
const (
	BothEdges Side = iota
	LeftEdge
	RightEdge
	Lines
	Across
)

// String is the place in the pattern file's words.
func (s Side) String() string {
	return [...]string{"both edges", "left edge", "right edge", "each side of each line", "across"}[s]
}

// RowSide is which rows a shaping falls on.
type RowSide int

// The rows on which a shaping may fall.
const (
	AnyRow RowSide = iota
	RightSide
	WrongSide
)

// String is the side in the pattern file's words.
func (r RowSide) String() string {
	return [...]string{"every row", "right-side rows", "wrong-side rows"}[r]
}

// Section is one step in the working of a piece. The concrete types are the
// kinds of section below; Work knows how each is worked.
type Section interface {
	Base() *Common
	work(w *worker)
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

// Shape of a motif.
type MotifShape int

// The shapes of motif.
const (
	Square MotifShape = iota
	Triangle
	Hexagon
	HalfHexagon
	HalfSquare
)

// Motifs is a grid of motifs joined into a piece. Across is the width across
// flats of one motif as worked, Joining what a joining adds between two.
// Filled, one string a row from the top, has x where there is a motif.
type Motifs struct {
	Shape   MotifShape
	Across  expr.Graded // mm
	Joining expr.Graded // mm
	Columns expr.Graded
	Rows    expr.Graded
	Filled  []string
	Pos     finding.Pos
}

// How a join is made.
type JoinHow int

// The ways in which two edges are joined.
const (
	AsLong JoinHow = iota // as long as each other
	StitchToStitch
	RowsToStitches // A stitches to B rows
	Eased          // the sewn edge is longer by Ease
	Gathered       // the sewn edge is gathered to the other
	AtFold         // an edge to itself at a fold
)

// Join is an edge sewn to another. Sew and Into are edge references: a piece
// (and part), then left or right if one side is meant, then the edge's name.
type Join struct {
	Sew, Into       []string // each a chain of edges
	How             JoinHow
	A, B            int
	Ease            expr.Graded // mm
	Seam            units.Num   // mm that the seam takes of each edge's end
	SewPos, IntoPos finding.Pos
	Pos             finding.Pos
}
