// Package rows reads written rows as the trade writes them, works every row for
// every size, and says where the text, its counts and the pattern do not agree.
// It also turns a text from US into UK words and back, prints the rows of a
// pattern, and yields the graph of stitches from which charts are drawn. It knows
// nothing of paper.
package rows

import (
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
	"flatwright/schematic/units"
)

// none stands for the number of a size that has none.
const none = -1

// Num is a count for all sizes (By is nil) or one a size, in the text's order;
// -1 where a size has none.
type Num struct {
	All int
	By  []int
}

// At is the count of size i, or -1 where it has none.
func (n Num) At(i int) int {
	if n.By == nil {
		return n.All
	}
	if i < 0 || i >= len(n.By) {
		return none
	}
	return n.By[i]
}

// Span is a place in the text: a line from 1, columns in characters from 1, End
// the column after the last.
type Span struct{ Line, Col, End int }

// Op is what an instruction does.
type Op int

// The instructions.
const (
	OpStitch   Op = iota // N stitches of a kind, in places
	OpChain              // N chains
	OpSkip               // skip places
	OpGroup              // a bracket: worked once, in places, or several times
	OpTurn               // turn
	OpJoin               // join the round
	OpLeave              // leave stitches unworked
	OpBindOff            // bind off N stitches (all if N is 0)
	OpPsso               // pass the slipped stitch over
	OpCastOn             // cast on N stitches
	OpFasten             // fasten off
	OpPickUp             // pick up N stitches along an edge
	OpJoinYarn           // join yarn, after skipping N unworked stitches
	OpRep                // repeat rows
	OpEven               // work even
	OpMarkers            // markers between the panels of a row, which are Groups
	OpShape              // increase or decrease N at an edge
	OpBindEach           // bind off N at the beginning of the next M rows
	OpAsFor              // work as for another piece
	OpEdge               // turn the work to go along its row ends
	OpDivide             // divide the row into parts, whose stitches add up
	OpTogether           // one row of several parts, whose stitches add up
	OpMeasure            // the piece measures so much
	OpNothing            // words that change no stitch
	OpUnread             // what could not be read
)

// Node is one instruction.
type Node struct {
	Op     Op
	At     Span
	Stitch *stitch.Stitch
	N      Num
	M      Num
	Places []Place
	Also   []*Node // further stitches worked over the same stretch: in each st and 2 in each sp
	Body   []*Node
	Times  Num            // how often the bracket is worked; 0 and no By: as Until says
	Until  Extent         // until where the bracket is worked, if Times is not given
	Stop   int            // with 'ending last repeat at **': so many items of Body are worked the last time; -1: all
	Counts Counts         // of a chain, or of chains skipped from the hook: whether it counts
	Told   Num            // of a remark or a join: the chains that it names
	As     *stitch.Stitch // as what it counts; M is the chains beyond that, a space
	Loop   Loop
	Rows   []Num  // row numbers meant: one, or the first and the last
	Where  *Where // nil: nothing of that is said
	Name   string // the piece, the row or the stretch that is meant
	Groups []StitchGroup
	Lines  *Lengths
	Inc    bool
	More   bool   // 'more': beyond the first time
	Back   bool   // reversing shaping
	Call   *Group // a defined group, such as a shell
	Open   bool   // the end of the row is what ends it: across, to end
}

// Loop is the loop into which stitches are worked.
type Loop int

// The loops.
const (
	BothLoops Loop = iota
	BackLoop
	FrontLoop
)

// Counts is what a turning or starting chain counts as.
type Counts int

// What a chain at the beginning counts as.
const (
	Unsaid Counts = iota
	CountsNot
	CountsAsStitch
)

// PlaceKind is where a stitch is worked.
type PlaceKind int

// The places.
const (
	InNext    PlaceKind = iota // the next N
	InEach                     // each, to Extent
	InFirst                    // the first N
	InLast                     // the last N
	InSame                     // the same place again
	InRing                     // the ring
	InTop                      // the top of the turning chain
	FromHook                   // the Nth chain from the hook
	InCentre                   // stitch Nth (0: the middle one) of the next group
	RowEnds                    // each row end
	AlongEdge                  // evenly along an edge
)

// Unit is what is counted in a place: a stitch of any kind, or one kind.
type Unit struct {
	Stitch *stitch.Stitch // that kind alone
	Chain  bool           // a chain
	Space  bool           // a chain space
	Size   Num            // chains of the space; 0: any
	Group  *Group         // a named group
	Row    bool
	Word   string // as written
}

// Place is one place into which stitches are worked.
type Place struct {
	Kind   PlaceKind
	N      Num
	Unit   Unit
	Extent Extent
	Loop   Loop
	At     Span
	Of     bool // 'each of the next N'
}

// ExtentKind is how far something goes.
type ExtentKind int

// The extents.
const (
	NoExtent ExtentKind = iota
	ToEnd
	ToLast // to the last N
)

// Extent is how far a repeat or 'each' goes.
type Extent struct {
	Kind ExtentKind
	N    Num
	Unit Unit
	At   Span
}

// Where is where prose shaping falls.
type Where struct {
	Both     bool // each end or side; otherwise one edge
	Every    Num  // every so many rows
	Times    Num  // so many times; 0: see Rows
	Rows     Num  // on the next so many rows
	Until    Num  // until so many stitches remain or are there
	First    bool // 'on next row and every ...'
	RSOnly   bool
	WSOnly   bool
	Length   *Lengths  // until the piece measures so much
	ToRow    Num       // until that row is done
	Then     []Spacing // further spacings, one after the other
	HasOver  bool
	HasTimes bool
	Over     Num    // the rows in all that shapings at the same time take
	EndRS    int    // end after: 1 a right-side row, 2 a wrong-side row
	rounds   bool   // the rows are called rounds
	edge     string // left or right, of an edge that has a name of its own
	marked   bool   // on each side of markers
	markers  Num    // so many; 0: every one that was placed
	inner    bool   // within the row: at the ends of a panel, or at its middle
	panel    string // the panel, in lower case
	part     Num    // over so many stitches alone
	cloth    cloth  // the fabric that the rows are worked in, if words name one
}

// Spacing is a further run of a shaping in words: every so many rows, so many times.
type Spacing struct{ Every, Times Num }

// Lengths is a length, one a size, in mm; the other unit beside it if written.
type Lengths struct {
	MM    []units.Num
	Unit  units.Unit
	Other []units.Num
	From  string
	At    Span
}

// Group is a named group of stitches: a shell, a V-stitch.
type Group struct {
	Name string
	Body []*Node
	At   Span
}

// StitchGroup is one part of a stated count: 48 sc, 4 ch-2 sps, 48 sts.
type StitchGroup struct {
	N    Num
	Unit Unit
	Any  bool // sts, or no word
	At   Span
}

// Label is how a row is called.
type Label struct {
	Round     bool
	Next      bool // Next row, Next 3 rows: From is how many, if said
	From, To  Num
	Listed    []Num // Rows 3, 5 and 7: those after From
	Name      string
	Side      int // 1 right side, 2 wrong side, 0 not said
	Odd, Even bool
	At        Span
}

// Line is one instruction line: a row, or instructions without a row number.
type Line struct {
	Label  *Label
	Body   []*Node
	Stated []StitchGroup // the count at its end; nil: none
	At     Span
	Src    string
	Unread []Span
	Short  bool // a line of numbers in it has not one for each size
	tokens []token
}

// Section is a stretch under one heading.
type Section struct {
	Name  string
	At    Span
	Lines []*Line
	Make  int  // how many the heading says to make; 0: it does not say
	Prose bool // words, not rows: materials, notes, finishing
}

// Text is a text of rows as read.
type Text struct {
	Name     string
	Sizes    expr.Sizes
	Terms    stitch.Terms
	TermsSet bool
	Craft    stitch.Craft
	Title    string
	Gauge    *Gauge
	Sections []*Section
	Groups   []*Group
	Turning  map[int]Counts // what a chain of that length counts as, by the notes; 0: any
	Read     Reading
	Findings finding.List // what the reading alone found
	used     map[string]*stitch.Stitch
	own      map[string]*stitch.Stitch // stitches that the text defines
	unlike   bool                      // a line of numbers bracketed unlike the sizes has been told
	roundR   bool                      // R5 means a round
	said     head
	src      []string
}

// head is what the top of a text says itself, where the pattern says it too.
type head struct {
	sizes                     expr.Sizes
	terms                     string // US, UK or nothing
	gaugeAt, sizesAt, termsAt Span
}

// Gauge is the gauge that the text states: mm.
type Gauge struct{ StitchWidth, RowHeight units.Num }

// Reading is how much of the text was read.
type Reading struct {
	Lines  int // instruction lines
	Whole  int // read whole
	Words  int // lines of words that hold no row: title, notes, materials
	Blank  int
	Stated int // lines with a stated count
}

// Options says what the text does not say itself.
type Options struct {
	Sizes    expr.Sizes
	Terms    stitch.Terms
	TermsSet bool
	Turning  map[int]Counts // what a chain of that length counts as; 0: any
	Gauge    *Gauge
}

// where is what is said of where and how long; nothing, if nothing is.
func (n *Node) where() Where {
	if n.Where == nil {
		return Where{}
	}
	return *n.Where
}

// told is the same, to be put in.
func (n *Node) told() *Where {
	if n.Where == nil {
		n.Where = &Where{}
	}
	return n.Where
}
