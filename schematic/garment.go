package schematic

import (
	"fmt"
	"iter"
	"slices"
	"sync"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Garment is a pattern worked in one size: flat pieces at the gauge. Points are in
// millimetres, y upwards, right side facing, the way up in which the piece is
// worn; every number printed comes from the exact lengths beside them.
type Garment struct {
	Pattern  *Pattern
	Size     string
	Index    int // of the size in Pattern.Sizes
	Pieces   []*Made
	Without  []string // pieces left out because they have no rows in this size
	Seams    []Seam
	Worn     *Made        // the garment as it is worn, laid flat, front up; nil if nobody put it together
	WornBack *Made        // the same from behind; nil if nobody asked for it
	Findings finding.List // arithmetic that does not fit, found in the working
	named    *namedEdges
}

// namedEdges keeps what references name: a garment with many pieces and joins is not searched anew for each.
type namedEdges struct {
	sync.Mutex
	of map[string]edgesOfPiece
}

type edgesOfPiece struct {
	piece *Made
	edges []Edge
}

// Measured are all measurements of the garment, each with the piece that it is of.
func (g *Garment) Measured() iter.Seq2[*Made, *Measure] {
	return func(yield func(*Made, *Measure) bool) {
		for _, m := range g.Pieces {
			for i := range m.Measures {
				if !yield(m, &m.Measures[i]) {
					return
				}
			}
		}
	}
}

// Made is one worked piece.
type Made struct {
	Piece    *Piece
	ID       string // stable, from the name: lower case, hyphens
	Name     string
	Kind     Kind
	Make     int
	MirrorOf string
	Mirrored bool // worked once as drawn and once mirrored (Make 2 with a mirror)
	Round    bool
	From     Direction
	Views    []View
	Measures []Measure
	Edges    []Edge
	Steps    []Step
	Area     units.Num // mm² of fabric, rows and stitches at their gauge, of one such piece (both layers in the round)
	Areas    []GaugeArea
	Live     map[string]int // stitches left live or held at the end, by part ('' is the piece)
	Rows     int
	Broken   bool // an error was met in the working: what is in Doubt follows from it and says nothing
	Cut      bool // it could not be drawn to its end

	Lies string // of a garment as it is worn: how it lies, such as front up

	apart     *Made           // with every panel by itself, if some that are alike are drawn once
	liveParts map[string]int  // Live by part alone, without the panels in them
	nothing   bool            // a start in it has no stitches
	doubtLive map[string]bool // parts whose live stitches follow from an error
}

// Worked is the piece with every panel by itself, also those that are alike and drawn once.
func (m *Made) Worked() *Made {
	if m.apart != nil {
		return m.apart
	}
	return m
}

// Keep keeps the piece as it is for Worked and for names, before panels that are alike are drawn once.
func (m *Made) Keep() {
	whole := *m
	whole.Measures, whole.Edges = slices.Clone(m.Measures), slices.Clone(m.Edges)
	m.apart = &whole
}

// GaugeArea is fabric area by gauge, mm², for yarn sums.
type GaugeArea struct {
	Gauge string
	Area  units.Num
}

// View is one flat drawing of a piece: most pieces have one; a piece cut on
// marked lines has one a panel; a tube that divides has a front and a back.
type View struct {
	Name    string    // of the panel; empty for the whole piece
	Panel   bool      // of a row that is drawn in panels
	Alike   int       // how many panels that lie side by side it stands for; 0 for itself alone
	Mirror  int       // how many of those are its mirror image
	Outline [][]Point // closed loops; the first is the outside, others are holes
	Under   [][]Point // closed loops of what lies partly beneath the outline; Lines has what shows of their edges
	Lines   []Line
	Ribs    []Hatch
	Notches []Notch
	Marks   []Marked
	Parts   []PartName
	Points  []Named
	Arrow   Point     // unit direction of work, (0,0) for none
	ArrowAt Point     // a place inside the piece for it
	Half    bool      // it lies flat: half of what is worked in the round shows
	Raised  units.Num // mm by which short rows raise the layer behind at the neck
	Disc    bool      // worked from the centre: Outline[0] is a circle through its points
}

// Point is in mm, y upwards.
type Point struct{ X, Y float64 }

// LineKind is what a line inside a piece means.
type LineKind int

// The kinds of line inside an outline.
const (
	LineChange LineKind = iota // from one section to another of another gauge or stitch
	LineFold
	LineCentre
	LinePanel  // a marked line between panels that are drawn together
	LineCell   // between motifs
	LineMark   // a marked row
	LineSlit   // stitches taken out of a round and added again above
	LineSeam   // between two panels of what is worn
	LineEdge   // the edge of a panel that lies partly under another
	LineBehind // what shows of the back
	LineRib    // of a band that bends
)

// Line is a line inside a piece.
type Line struct {
	Kind LineKind
	A, B Point
	Name string
}

// Hatch is an area of rib: a closed polygon, and the direction in which its ribs run.
type Hatch struct {
	Poly []Point
	Dir  Point
	Gap  float64 // mm between two ribs, at life size
}

// Notch is a matching mark on an edge: the same Number on both edges of a join.
type Notch struct {
	Number int
	At     Point
	Out    Point // unit vector out of the piece
}

// Marked is a mark at a place, such as a buttonhole.
type Marked struct {
	What string
	At   Point
	Name string // empty for all but one of a row of equal marks
}

// PartName is the name of a part of a divided piece, a place within the part, and how
// high the part is (mm).
type PartName struct {
	Name string
	At   Point
	H    float64
}

// Named is a point of an outline where two of its edges meet, by the trade's name:
// underarm, shoulder point, neck point, front neck point, cap point, hem corner.
type Named struct {
	Name string
	At   Point
}

// NoView is the View of a measurement that no drawing shows: of a row that is drawn in
// panels, all of them together.
const NoView = -1

// Axis is the way in which a measurement runs.
type Axis int

// The axes of a measurement.
const (
	Horizontal Axis = iota
	Vertical
	Slanted // along the line from A to B
)

// Measure is one measurement of a piece. The same ID names the same measurement in
// every size. A and B are its ends on the outline of View. Length is exact, in mm; with
// Around it is the whole way round, and A to B is half of it.
type Measure struct {
	ID        string // piece.name, or piece.part.name; stable through sizes
	Name      string // the trade's name: width at hem, armhole depth
	View      int
	A, B      Point
	Axis      Axis
	Length    units.Num
	Around    bool
	Count     int    // stitches or rows that make it, 0 if they are not all of one gauge
	Of        string // st or row
	Main      bool   // shown on the drawing; others only in the table
	Gauge     *Gauge // that makes it, or nil if there are several
	Part      string // of the piece, empty for all of it
	Stretched bool   // the gauge that makes it is of stretched fabric
	Same      bool   // another measurement of the view says the same
	Doubt     bool   // it follows from an error in the working
	Own       *Own   // the figures that its designer gives, or nil

	rank         int  // see rankWhole
	lasts, given bool // a width that goes on to the end; named by the pattern
}

// Own are a measurement's figures in both units, in mm, as its designer gives them: they are printed as they are.
type Own struct{ CM, Inch units.Num }

// Text is the measurement in a unit, without it: as its designer gives it, or the exact length printed to steps.
func (m *Measure) Text(u units.Unit, steps units.Steps) string {
	switch {
	case m.Own == nil:
		return steps.Format(m.Length, u)
	case u == units.Inch:
		return units.Steps{}.Format(m.Own.Inch, u)
	}
	return units.Steps{}.Format(m.Own.CM, u)
}

// Edge is one named stretch of a piece's outline, from the sections that made it.
type Edge struct {
	Name     string
	Parts    []string // the parts that it belongs to, from its beginning on
	Left     bool     // which side of its part it is on; both false for top and bottom
	Right    bool
	View     int
	Path     []Point   // in mm, along the outline
	Length   units.Num // mm; slanted stretches rounded to 0.001 mm
	Stitches int       // stitches along it (bound off, cast on)
	Rows     int       // rows along it
	Grain    units.Num // the largest stitch or row along it, in mm
	Doubt    bool      // it follows from an error in the working
	Pos      finding.Pos

	Piece string // the ID of the piece, for an edge of a seam
}

// Step is the record of one section as worked in one size.
type Step struct {
	Section  Section
	Part     string
	Before   int // stitches before
	After    int // stitches after
	Rows     int
	FirstRow int // number of its first row in the piece or part, from 1
	FirstRS  bool
	Gauge    string
	Doubt    bool    // its counts follow from an error
	Taken    []int   // stitches of each run of a start from held stitches, or of each part joined, as listed
	Onto     []Along // the edges onto which a band is worked, as listed
	Places   []int   // edges on which each shaping of a Shape falls
}

// Along is an edge onto which a band is worked: its rows and the stitches that are bound off, left or
// cast on along it, how many stitches are picked up along it, and its length in mm.
type Along struct {
	Rows, Stitches int
	Picked         int
	Length         units.Num
}

// Pick is how many stitches are picked up at a rate of pick in every of: a rate in rows is for the rows, and
// stitches that are bound off give one each (common practice).
func (a Along) Pick(pick, of int, rows bool) int {
	of = max(1, of)
	at := func(n int) int { return n/of*pick + n%of*(pick/of) + min(n%of, pick%of) }
	if rows {
		return at(a.Rows) + a.Stitches
	}
	return at(a.Rows + a.Stitches)
}

// Seam is a join as it comes out in one size.
type Seam struct {
	Join                  *Join
	Number                int
	Sew, Into             []Edge
	SewLength, IntoLength units.Num // mm, all edges and all pieces to make together
	SewCount, IntoCount   int       // stitches or rows
	SewPieces             int       // how many ends there are, of a join in places
	One                   bool      // of what is made several times one is sewn here; the other goes into the other side
	SewOf, IntoOf         string    // of how many pieces they are, in words; nothing if each is made once
	Broken                bool      // of edges that follow from an error in the working
}

// AsWorn are the garment as it is worn from in front, if it was put together, and from behind.
func (g *Garment) AsWorn() []*Made {
	var all []*Made
	for _, m := range []*Made{g.Worn, g.WornBack} {
		if m != nil {
			all = append(all, m)
		}
	}
	return all
}

// Bends reports whether the piece is a shawl that is widened so fast from the middle of its upper edge that both of its sides are that edge: no
// straight outline is how it is worn.
func (m *Made) Bends() bool {
	if m.Kind != KindShawl || m.Piece == nil || m.Round || m.From.upwards() || m.From.sideways() || len(m.Views) != 1 || m.Views[0].Panel {
		return false
	}
	upper := m.Piece.LeftEdge == "upper edge" || m.Piece.LeftEdge == "top edge"
	return upper && m.Piece.RightEdge == m.Piece.LeftEdge || m.RowEnds()
}

// RowEnds reports whether the sides of the piece are row ends alone, since its rows are shaped across.
func (m *Made) RowEnds() bool {
	across := false
	for i, s := range m.Piece.Sections {
		t := s.Traits()
		if t.Slopes && !t.Across || t.Takes && i < len(m.Piece.Sections)-1 {
			return false
		}
		across = across || t.Across
	}
	return across
}

// AlikeText says for how many panels the view stands; nothing for one.
func (v *View) AlikeText() string {
	switch {
	case v.Alike < 2:
		return ""
	case v.Mirror == 0:
		return fmt.Sprintf("%d alike, side by side", v.Alike)
	case v.Mirror == 1:
		return fmt.Sprintf("%d alike, side by side, one of them mirrored", v.Alike)
	}
	return fmt.Sprintf("%d alike, side by side, %d of them mirrored", v.Alike, v.Mirror)
}
