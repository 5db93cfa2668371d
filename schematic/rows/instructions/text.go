package instructions

import (
	"fmt"
	"slices"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

// Word is a word, number or sign of a line as written, with its columns.
type Word struct {
	Kind     byte // w word, n number, p sign, f a number that is no whole one
	Glued    bool
	S        string
	Num      Num
	Line     int
	Col, End int
	Short    int // a line of numbers that has so many of them, not one a size
}

// StitchGroup is one part of a stated count: 48 sc, 4 ch-2 sps, 48 sts.
type StitchGroup struct {
	N    Num
	Unit Unit
	Any  bool // sts, or no word
	Side bool // of each of two sides: 20 sts each side
	At   Span

	Parts Num // the sum of its parts, if they are told and say how often each is there
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
	Label   *Label
	Body    []Item
	Stated  []StitchGroup // the count at its end; nil: none
	At      Span
	Src     string
	Into    int // the number of the row further down that it says to be worked into, behind the last; 0: none
	Unread  []Span
	Short   bool // a line of numbers in it has not one for each size
	Chart   bool // some of it is worked from a chart: how many stitches it makes is not known
	Words   []Word
	Sizes   []int         // for which alone it is; nil: all
	Yarn    string        // that words before it take up; empty: none
	Needles []NeedleCount // how many stitches needles hold behind it, as its words say
	Mark    string        // the sign from which rows are repeated; empty: none
	Changed *Change       // by how many stitches it differs from the row before, as its words say; nil: they don't
	Passed  Span          // words that name a place or a stitch, and that its reading does not follow; empty: none
	Doubted bool          // its words were not followed: it is likely worded otherwise than it was read
}

// Change is by how many stitches a row differs from the one before.
type Change struct {
	N     Num
	Fewer bool
	At    Span
}

// Section is a stretch under one heading.
type Section struct {
	Name  string
	At    Span
	Lines []*Line
	Make  int  // how many the heading says to make; 0: it does not say
	Prose bool // words, not rows: materials, notes, finishing
	// Pattern is true for the rows of a stitch pattern that stands by itself, before the work.
	Pattern bool
}

// SectionAt is the section in which a line of the text stands; nil before the first.
func (x *Text) SectionAt(line int) *Section {
	for _, s := range slices.Backward(x.Sections) {
		if s.At.Line <= line {
			return s
		}
	}
	return nil
}

// Doubt marks the row at a line of the text as one that was not followed.
func (x *Text) Doubt(line int) {
	s := x.SectionAt(line)
	if s == nil {
		return
	}
	for _, l := range slices.Backward(s.Lines) {
		if l.At.Line <= line {
			l.Doubted = true
			return
		}
	}
}

// Multiple is what the notes say the count is a multiple of.
type Multiple struct {
	Of, Plus int
	At       Span
	Base     int // chains to add to it for the foundation
}

// Text is a text of rows as read.
type Text struct {
	Name      string
	Sizes     expr.Sizes
	Terms     stitch.Terms
	TermsSet  bool
	Turns     []Terms // where the text goes on in other terms than those it began in
	Old       bool    // no word of it says the terms but such as older books of both have: single crochet, miss
	Title     string
	Gauge     *Gauge
	Sections  []*Section
	Groups    []*Group
	Turning   map[int]Counts // what a chain of that length counts as, by the notes; 0: any
	TurnSpace map[int]int    // of the chains of that length that count as a stitch, those that are a space beside it, by the notes
	ByRow     map[int]int    // the lengths of which a row says it, and not the notes: the first line that does
	Unsized   bool           // a stretch is for some sizes of which it is not known which
	Blocks    bool           // it is worked in blocks from corner to corner
	Multiples []Multiple
	Read      Reading
	Findings  finding.List // what the reading alone found
	Used      map[string]*stitch.Stitch
	Own       map[string]*stitch.Stitch // stitches that the text defines
	Said      Head
	Src       []string
	Columns   map[int][]int // by line: where each character of Src stands in the file, if a typesetter put others there
}

// Terms are those of a text from a line on.
type Terms struct {
	Line int
	In   stitch.Terms
}

// TermsAt are the terms that hold in a line.
func (x *Text) TermsAt(line int) stitch.Terms {
	t := x.Terms
	for _, turn := range x.Turns {
		if turn.Line <= line {
			t = turn.In
		}
	}
	return t
}

// Head is what the top of a text says itself, where the pattern says it too.
type Head struct {
	Sizes                     expr.Sizes
	Terms                     string // US, UK or nothing
	GaugeAt, SizesAt, TermsAt Span
}

// Reading is how much of the text was read.
type Reading struct {
	Lines  int // instruction lines
	Whole  int // read whole
	Words  int // lines of words that hold no row: title, notes, materials
	Stated int // lines with a stated count
}

// Share is how much of the instruction lines was read whole, from 0 to 1.
func (r Reading) Share() float64 {
	if r.Lines == 0 {
		return 1
	}
	return float64(r.Whole) / float64(r.Lines)
}

// Tell adds a finding at a place of the text.
func (x *Text) Tell(f finding.Finding, at Span) {
	f.Pos = x.Pos(at)
	x.Findings = append(x.Findings, Clipped(f))
}

// Pos is a place of the text as findings have it.
func (x *Text) Pos(at Span) finding.Pos {
	if c := x.Columns[at.Line]; at.Col > 0 && at.End > at.Col && at.End <= len(c)+1 {
		at.Col, at.End = c[at.Col-1], c[at.End-2]+1
	}
	return finding.Pos{File: x.Name, Line: at.Line, Col: at.Col, EndCol: at.End}
}

// Clipped is f with no more of the text in it than a person reads.
func Clipped(f finding.Finding) finding.Finding {
	const most = 1000
	for _, s := range []*string{&f.Message, &f.Have, &f.Want, &f.Fix} {
		*s = finding.ClipTo(*s, most)
	}
	return f
}

// Refused is the finding of a text that is out of bounds.
func Refused(format string, a ...any) finding.Finding {
	return finding.Finding{Kind: "rows/bounds", Severity: finding.Error, Message: fmt.Sprintf(format, a...)}
}

// IsRow reports whether the line has a label of its own.
func (l *Line) IsRow() bool { return l.Label != nil }
