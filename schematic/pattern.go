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
	Drawing  Drawing // how the designer wants it drawn
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
	Photos   []Photo  // for pages
	RowsFile string   // written rows beside the pattern, relative to it
	Rows     string   // written rows in the pattern
	RowsPos  finding.Pos
}

// Photo is a photograph of the garment: its file, relative to the pattern's, and what it shows, in
// words, for those who don't see it.
type Photo struct {
	File, Shows string
	Pos         finding.Pos
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
	return GaugeIn(p.Gauges, name)
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
	KindSkirt
	KindShawl
	KindHood
	KindBag
	KindPoncho
	KindMitten
	KindSock
)

// Kinds are all kinds of piece, in their order.
func Kinds() []Kind {
	all := make([]Kind, KindSock+1)
	for i := range all {
		all[i] = Kind(i)
	}
	return all
}

// String is the kind in the pattern file's words.
func (k Kind) String() string {
	return [...]string{"piece", "body", "back", "front", "sleeve", "yoke", "hat", "band",
		"skirt", "shawl", "hood", "bag", "poncho", "mitten", "sock"}[k]
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
	Begins    string // where on the body it begins, if not as From says it: the waist, the armhole
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

// Worked says where the piece begins, in the words of the pattern.
func (q *Piece) Worked() string {
	if q.Begins != "" {
		return "from the " + q.Begins
	}
	return q.From.String()
}

// EdgeRate is one edge onto which a band is worked, with its rate: Pick
// stitches for every Of rows or stitches of the edge.
type EdgeRate struct {
	Edge     string // an edge reference, such as 'Right front front edge'
	Pick, Of int
	Rows     bool // it is a rate in rows, and not for stitches that are bound off or left along the edge
	Pos      finding.Pos
}

// Side is an edge or place of a row, as drawn with the right side facing.
type Side int

// The places where a row may be shaped. Left and Right are as drawn, right side
// facing, the piece the way up in which it is worn; for a piece worked from side to
// side, Left is the top and Right the bottom if it goes to the right, and the
// other way round if it goes to the left. Lines is both sides of every marked
// line between panels; Across is spread evenly across the row; Middle is where a mitre bends.
const (
	BothEdges Side = iota
	LeftEdge
	RightEdge
	Lines
	Across
	Middle
)

// String is the place in the pattern file's words.
func (s Side) String() string {
	return [...]string{"both edges", "left edge", "right edge", "each side of each line", "across", "the middle"}[s]
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

// JoinHow is how a join is made.
type JoinHow int

// The ways in which two edges are joined.
const (
	AsLong JoinHow = iota // as long as each other
	StitchToStitch
	RowsToStitches // A stitches to B rows
	Eased          // the sewn edge is longer by Ease
	Gathered       // the sewn edge is gathered to the other
	AtFold         // an edge to itself at a fold
	InPlaces       // ends, such as those of handles, at Places spread evenly along the other edge
)

// Join is an edge sewn to another. Sew and Into are edge references: a piece
// (and part), then left or right if one side is meant, then the edge's name.
type Join struct {
	Sew, Into       []string // each a chain of edges
	How             JoinHow
	A, B            int
	Ease            expr.Graded // mm
	Places          int         // in how many places ends are sewn on
	Seam            units.Num   // mm that the seam takes of each edge's end
	SewPos, IntoPos finding.Pos
	Pos             finding.Pos
}
