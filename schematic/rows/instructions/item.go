package instructions

import "flatwright/schematic/stitch"

// Item is one instruction.
type Item interface {
	// Span is its place in the text.
	Span() Span
	// Put sets its place.
	Put(Span)
}

// Placed is the place of an instruction in the text; every kind has one.
type Placed struct{ At Span }

// Span is its place in the text.
func (p *Placed) Span() Span { return p.At }

// Put sets its place.
func (p *Placed) Put(s Span) { p.At = s }

// Counts is what a turning or starting chain counts as.
type Counts int

// What a chain at the beginning counts as.
const (
	Unsaid Counts = iota
	CountsNot
	CountsAsStitch
)

// Counting is what is said of a chain at the beginning, or of chains skipped there.
type Counting struct {
	How   Counts
	As    *stitch.Stitch // as what it counts; nil: not named
	Space Num            // the chains beyond that, a space
	Told  Num            // the chains that a remark names
	Mesh  bool           // it counts as a square of filet: a stitch and the space beside it
}

// The kinds of instruction within a row.
type (
	// Stitch is N stitches of a kind, in places.
	Stitch struct {
		Placed
		Kind   *stitch.Stitch // nil: Inc, Dec or Call
		Inc    bool           // an increase of the stitch in which the row is worked
		Dec    bool           // a decrease of it
		Call   *Group         // a named group, such as a shell
		N      Num
		Places []Place
		Also   []*Stitch // further stitches worked over the same stretch
		Loop   Loop
		Count  Counting // of the chains skipped before it
		Colour string   // the yarn's name, if the text says it
		Again  *Again   // worked or slipped again as the row below was; nil: not so told
		Chart  bool     // worked from a chart: how many it makes stands there
	}
	// Chain is N chains.
	Chain struct {
		Placed
		N     Num
		Count Counting
	}
	// Skip passes places of the row below; all that are left, if it names none.
	Skip struct {
		Placed
		Places []Place
		Count  Counting
	}
	// Repeat is a bracket: worked once, in places, so often, or as far as it goes.
	Repeat struct {
		Placed
		Body    []Item
		Times   Num    // how often; 0: as Until says
		Until   Extent // until where, if Times is not given
		Places  []Place
		Stop    int    // ending the last time after so many items of Body; -1: all
		Last    []Item // what the last time has instead of its last stitch
		LastFor Num    // instead of so many stitches of the body
		InAll   bool   // Times may be meant in all and not beyond the first
		Cut     bool   // the last time may end early: a rib over an odd count
		Apart   bool   // its stitches are told without a bracket, and may stand each in its own place: sc and dc in next st
	}
	// Turn turns the work.
	Turn struct{ Placed }
	// Join joins the round.
	Join struct {
		Placed
		Name  string // ring, round, or nothing
		Chain Num    // the chain that it names
		Nth   Num    // the chain of it that is joined to
		First bool   // it names the first stitch of a kind
	}
	// Leave leaves stitches unworked: N, or all that are left.
	Leave struct {
		Placed
		N   Num
		All bool
	}
	// BindOff binds off N stitches, or all, which are N if that is set.
	BindOff struct {
		Placed
		N    Num
		To   Extent // or up to there
		All  bool
		Hold bool // they are put on a holder
		Next bool // of those that wait already, which come next
		Made bool // it is what was worked just before that is
		Drop bool // they are dropped off the needle
		Past bool // by being passed over another stitch
	}
	// Psso passes the slipped stitch over.
	Psso struct{ Placed }
	// CastOn casts on N stitches; Over: over what was bound off in the row below, in each gap if the row is at its end.
	CastOn struct {
		Placed
		N    Num
		Over bool
	}
	// Fasten fastens off.
	Fasten struct{ Placed }
	// PickUp picks up N stitches along an edge, of a kind if it is named.
	PickUp struct {
		Placed
		N    Num
		Kind *stitch.Stitch
		Held bool // they are stitches of the row below, if it has so many
		Rate bool // so many in every so many rows: how many there are is not said
	}
	// JoinYarn takes up the work anew.
	JoinYarn struct {
		Placed
		N     Num     // so many stitches
		From  string  // next, held, holder, edge and the like; yarn: nothing of that is said
		Place []Place // the place of the row below that it is joined to, if it begins there
	}
	// Marker is a marker in the row: placed, or slipped where it is met.
	Marker struct {
		Placed
		New bool
	}
	// Nothing are words that move no stitch.
	Nothing struct {
		Placed
		Colour string // the yarn that they take up; empty: none
		Part   bool   // they count one needle: what is worked is a part of the row
		Fold   bool   // what is worked goes through both layers of a piece that lies flat
		Tch    bool   // the stitch worked last goes into the turning chain
		Under  bool   // a round goes on from them along the other side of its foundation chain
		Wait   int    // so many stitches wait on a cable needle; 0: none
		Front  bool   // they wait in front
	}
	// Needles is a round told needle by needle.
	Needles struct {
		Placed
		Parts []NeedlePart
	}
	// Unread is what could not be read.
	Unread struct{ Placed }
)

// The kinds of instruction about whole rows.
type (
	// RepeatRows repeats rows worked before.
	RepeatRows struct {
		Placed
		Last    Num    // the last so many rows; not set: see Name and Rows
		Name    string // inc or dec: the row of that name
		Rows    []Num  // the rows meant
		Stretch bool   // from the first of Rows to the last
		Since   string // the rows from the line with that mark on
		Onward  bool   // from the one of Rows to the row worked last
		Times   Num    // so many times; HasTimes of Course tells whether that is said
		Total   bool   // Times is said in all
		InAll   bool   // in so many words
		Between Num    // with so many plain stitches between the increases or decreases; not set: as many as before
		Chains  Num    // with so many chains in each space; not set: as many as before
		Course
	}
	// Even works even.
	Even struct {
		Placed
		Cloth  Cloth
		Part   Num    // over so many stitches alone
		Row    []Item // what each row is, if words say it
		Open   bool   // nothing says how far
		Chart  bool   // worked from a chart, or in a pattern by its name: how many stitches it leaves stands there
		Colour string // the yarn that the rows are worked in; empty: none is said
		Course
	}
	// Shape increases or decreases in words.
	Shape struct {
		Placed
		Inc     bool
		N       Num
		Same    bool   // at the same time as the shaping before
		Both    bool   // at each end; otherwise at one edge
		Edge    string // the edge that is named: neck, left; nothing: none
		Side    string // left or right, of an edge that has a name of its own
		Marked  bool   // on each side of markers
		Markers Num    // so many; not set: every one that was placed
		Inner   bool   // within the row: at the ends of a panel, or at its middle
		Halves  bool   // at the inner edge of each half, of which one is worked, or both at the same time
		Panel   string // the panel, in lower case
		Spread  bool   // evenly across
		Vague   bool   // the text does not say where: at one end or at both
		Cloth   Cloth
		Course
	}
	// BindEach binds off, or casts on, N stitches at the beginning of the next Rows rows.
	BindEach struct {
		Placed
		N, Rows Num
		Add     bool
		Alt     bool // each second row; the rows between are plain
		Cloth   Cloth
	}
	// AsFor works as for another piece.
	AsFor struct {
		Placed
		Name     string
		ToRow    Num
		Count    Num    // until there are so many stitches
		To       string // to where, in words
		Done     bool   // to where that part is complete, and not where it begins
		Reversed bool
	}
	// Edge turns the work to go along its row ends.
	Edge struct{ Placed }
	// Divide divides the row into parts, whose stitches add up.
	Divide struct {
		Placed
		Parts []Part
	}
	// Together makes one row of several parts.
	Together struct {
		Placed
		Parts []Part
	}
	// Markers places markers between the panels of a row.
	Markers struct {
		Placed
		Panels []Part
	}
	// Measure says how much the piece measures.
	Measure struct {
		Placed
		Length *Lengths
	}
)

// NeedlePart is what is worked on one needle of several, or on each of those named.
type NeedlePart struct {
	On   []int // from 1 on
	Body []Item
	Said []StitchGroup // the count behind it
}

// NeedleCount is how many stitches needles hold.
type NeedleCount struct {
	On []int // from 1 on; none: each
	Of int   // over so many needles N is divided; 0: each holds N
	N  Num
}

// Part is one part of a row: so many stitches, and its words.
type Part struct {
	N    Num
	Name string
}

// Course is over which rows something goes, and until when.
type Course struct {
	Every    Num      // every so many rows
	Apart    *Lengths // every so far, in how many rows is not said
	Times    Num      // so many times
	HasTimes bool
	Rows     Num  // on, or for, so many rows
	Until    Num  // until so many stitches remain or are there
	Via      Num  // so many are there on the way
	First    bool // on the next row, and then so often
	On       Num  // the first is on that row, and not on the next; of First
	RSOnly   bool
	WSOnly   bool
	Length   *Lengths // until the piece measures so much
	ToRow    Num      // until that row is done
	Counted  bool     // ToRow is how many rows there are then, and may be those of a part alone
	Then     []Spacing
	Over     Num // the rows in all that it takes
	HasOver  bool
	EndSide  int  // end after: 1 a right-side row, 2 a wrong-side row
	Begins   int  // with which they begin: 1 a right-side row, 2 a wrong-side row
	AnySide  bool // the row after which they end is told, whatever side it is
	Rounds   bool // the rows are called rounds
}

// Spacing is another run of a shaping in words: every so many rows, so many times.
type Spacing struct{ Every, Times Num }

// Again tells how the stitches of a mosaic go over those of the row below: slipped where these are of a yarn, or slipped, worked elsewhere.
type Again struct {
	Slip, Work *stitch.Stitch
	Yarn       string // empty: those that were slipped
}

// Loop is the loop into which stitches are worked.
type Loop int

// The loops.
const (
	BothLoops Loop = iota
	BackLoop
	FrontLoop
	LowerDown // not in a loop of the row below, but in a stitch of a row further down
)

// PlaceKind is where a stitch is worked.
type PlaceKind int

// The places.
const (
	InNext   PlaceKind = iota // the next N
	InEach                    // each, to Extent
	InFirst                   // the first N
	InLast                    // the last N
	InSame                    // the same place again
	InRing                    // the ring
	InTop                     // the top of the turning chain
	FromHook                  // the Nth chain from the hook
	InCentre                  // stitch Nth (0: the middle one) of the next group
	RowEnds                   // each row end
	InEvery                   // every Nth stitch
)

// Unit is what is counted in a place: a stitch of any kind, or one kind.
type Unit struct {
	Stitch  *stitch.Stitch // that kind alone
	Chain   bool           // a chain
	Space   bool           // a chain space
	Size    Num            // chains of the space; 0: any
	Group   *Group         // a named group
	Row     bool
	Between bool // of a space: the one between two groups, with chains or without
	Stretch bool // any group: a shell or a loop that is not defined
	Within  bool // of a space: that of a group, whose other stitches are passed with it
	Word    string
}

// Any reports whether it is a stitch of any kind.
func (u Unit) Any() bool {
	return u.Stitch == nil && !u.Chain && !u.Space && u.Group == nil && !u.Row && !u.Stretch
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
	Start  bool // of the same place: the one in which the row began
	Nth    int  // of the turning chain: the chain of it that is its top; 0: not told
	Last   bool // of the last group of the row
	Far    bool // in a row further down, or in a loop of the stitch: nothing of the row below is named
	Passed Span // words that tell it nearer by another place, and are not followed; empty: none
}

// ExtentKind is how far something goes.
type ExtentKind int

// The extents.
const (
	NoExtent ExtentKind = iota
	ToEnd
	ToLast   // to the last N
	ToMarker // to N before the next marker
	ToLastMarker
	ToUnit   // to the next such place
	ToMiddle // to N before the stitch in the middle of the row
	ToMade   // until N are on the right needle, counted from what was bound off
)

// Extent is how far a repeat or 'each' goes.
type Extent struct {
	Kind ExtentKind
	N    Num
	Unit Unit
	Part bool // the stitches of one part of the row, up to the next marker, or to the end if there is none
	At   Span
}

// Group is a named group of stitches: a shell, a V-stitch.
type Group struct {
	Name string
	Body []Item
	At   Span
	Over []Item // as it is told, if it goes over several stitches of the row below
	Mesh *Mesh  // it is a square of filet; nil: it is worked into one place
}

// Untold reports whether the text does not say of what stitches the group is.
func (g *Group) Untold() bool { return len(g.Body) == 0 && g.Mesh == nil }

// Mesh is a square of filet: over a space, or over as many stitches as it is wide, it has chains or stitches, and a post at
// its end.
type Mesh struct {
	Post  *stitch.Stitch
	Wide  int // chains, or stitches, without the post
	Solid bool
	First bool // the post comes before the rest
}

// Vague marks that nothing says how far the rows go.
func (e *Even) Vague() { e.Open = true }
