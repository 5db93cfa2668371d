package schematic

import (
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
)

// GradingKind is what a line of a pattern's grading works out.
type GradingKind int

// The kinds of a line of the grading.
const (
	GradeValue    GradingKind = iota // a sum, as it is
	GradeStitches                    // whole stitches that make a width
	GradeRows                        // whole rows that make a height
	GradeSpread                      // shapings spread over rows
	GradeArmhole                     // bind-off and decreases of an armhole
	GradeCap                         // a sleeve cap that fits an armhole
	GradeRaglan                      // back, front and sleeve of a raglan
	GradeYoke                        // rounds of decreases of a round yoke
)

// String is the key of the kind in the pattern file.
func (k GradingKind) String() string {
	return [...]string{"is", "stitches", "rows", "spread", "armhole", "cap", "raglan", "yoke"}[k]
}

// Grading is one line of a pattern's grading: a name and how its value for each
// size is worked out of bodies, ease and other lines.
type Grading struct {
	Name     string
	Kind     GradingKind
	Sum      GradedSum            // the sum at the kind's own key; or
	Given    *GradedValue         // numbers for each size as the designer gave them (a value, stitches or rows)
	With     map[string]GradedSum // the sums at its other keys
	Gauge    string               // name of the gauge; empty: the first
	Multiple int                  // counts are a multiple of it, plus Plus
	Plus     int
	Even     bool // counts must be even
	Odd      bool
	Like     string // even or odd as the count of this name is
	Up       bool   // not less than the target
	Down     bool   // not more than the target
	Least    int
	On       RowSide // rows on which shapings may fall
	Leave    bool    // stitches are left at both edges of one row, not bound off
	Rounds   int     // of a yoke
	Pos      finding.Pos
	ValuePos finding.Pos // of its value, or of the numbers that it rounds, where that is one text in one line; otherwise no place
}

// GradedSum is a sum of the grading and where its text begins; Sum is nil where
// the key was not given.
type GradedSum struct {
	Sum *expr.Sum
	Pos finding.Pos
}

// GradedValue is a named value that the grading gave, one a size.
type GradedValue struct {
	Name string
	Dim  expr.Dim
	Vals expr.Graded
	Of   int // index of its line in Pattern.Grading
}

// Call is a place in the file where a graded value is a sum of names instead of
// numbers, and the numbers that it came to.
type Call struct {
	Pos  finding.Pos // of the text
	Sum  *expr.Sum
	Dim  expr.Dim
	Vals expr.Graded
}
