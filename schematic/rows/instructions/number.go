// Package instructions holds what written rows say once they are read: a type for each
// kind of instruction, with the fields that it has and no others. It does nothing itself.
package instructions

import (
	"flatwright/schematic/expr"
	"flatwright/schematic/stitch"
	"flatwright/schematic/units"
)

// None stands for the number of a size that has none.
const None = -1

// Most bounds every count that a text may give.
const Most = 100000

// Num is a count for all sizes (By is nil) or one a size, in the text's order;
// None where a size has none.
type Num struct {
	All int
	By  []int
}

// N is a count for all sizes.
func N(k int) Num { return Num{All: k} }

// At is the count of size i, or None where it has none.
func (n Num) At(i int) int {
	if n.By == nil {
		return n.All
	}
	if i < 0 || i >= len(n.By) {
		return None
	}
	return n.By[i]
}

// Set reports whether a number was given.
func (n Num) Set() bool { return n.By != nil || n.All > 0 }

// Plus is the number with k added, where there is one.
func (n Num) Plus(k int) Num {
	if n.By == nil {
		return Num{All: n.All + k}
	}
	by := make([]int, len(n.By))
	for i, b := range n.By {
		if by[i] = b + k; b == None {
			by[i] = None
		}
	}
	return Num{By: by}
}

// Add is the number with so many times another added, where both are there.
func (n Num) Add(o Num, times int) Num {
	if n.By == nil && o.By == nil {
		return Num{All: n.All + times*o.All}
	}
	by := make([]int, max(len(n.By), len(o.By)))
	for i := range by {
		a, b := n.At(i), o.At(i)
		if by[i] = a + times*b; a == None || b == None {
			by[i] = None
		}
	}
	return Num{By: by}
}

// Span is a place in the text: a line from 1, columns in characters from 1, End
// the column after the last.
type Span struct{ Line, Col, End int }

// Before reports whether a span begins before another one.
func (s Span) Before(o Span) bool { return s.Line < o.Line || s.Line == o.Line && s.Col < o.Col }

// Lengths is a length, one a size, in mm; the other unit beside it if written.
type Lengths struct {
	MM    []units.Num
	Unit  units.Unit
	Other []units.Num
	Of    string // of what it is, as written: piece, rib, armhole
	From  string // from what it is measured, as written
	When  bool   // what is done then: the work goes on till there
	At    Span
}

// Cloth is the fabric in which rows are worked that name no stitch: a crochet stitch,
// or a plain knitted fabric as its right side looks. The zero value is not known.
type Cloth struct {
	St         *stitch.Stitch // of crochet
	Knit, Purl int            // a rib; stockinette has no purl, its reverse no knit
	Garter     bool
	Unknown    bool // not even the craft is
}

// Gauge is the gauge that the text states: mm.
type Gauge struct{ StitchWidth, RowHeight units.Num }

// Options says what the text does not say itself.
type Options struct {
	Sizes    expr.Sizes
	Terms    stitch.Terms
	TermsSet bool
	Turning  map[int]Counts // what a chain of that length counts as; 0: any
	Gauge    *Gauge
}
