// Package place lays the pieces of a garment out on paper: to one scale, with
// dimension lines, labels, matching marks and tables, so that nothing lies on
// anything else. It knows paper and garments, and nothing of files or formats.
package place

import (
	"fmt"
	"strings"

	"flatwright/fonts"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// Paper is a size of sheet.
type Paper int

// The papers, as their table has them.
const (
	A4 Paper = iota
	Letter
)

// papers are the sheets in mm: A4 of ISO 216, Letter of ANSI/ASME Y14.1 (size A, 8.5 x 11 in).
var papers = []struct {
	name        string
	short, long float64
}{
	A4:     {"A4", 210, 297},
	Letter: {"Letter", 215.9, 279.4},
}

// Papers are all papers, the usual one first.
func Papers() []Paper {
	all := make([]Paper, len(papers))
	for i := range all {
		all[i] = Paper(i)
	}
	return all
}

// Size is the paper's short and long side in mm.
func (p Paper) Size() (short, long float64) { return papers[p].short, papers[p].long }

// String is the paper's name.
func (p Paper) String() string { return papers[p].name }

// Word is the paper's name as a choice, in small letters.
func (p Paper) Word() string { return strings.ToLower(papers[p].name) }

// Orientation is which way up the paper is.
type Orientation int

// The orientations. Auto takes whichever needs fewer pages, then the larger
// scale, then portrait.
const (
	Auto Orientation = iota
	Portrait
	Landscape
)

// Labels is what the measurements say.
type Labels int

// The ways of labelling.
const (
	OneSize  Labels = iota // the value of the size that is drawn
	AllSizes               // the values of all sizes, in the trade's line
	Letters                // a letter, and a table with all sizes
	Blank                  // a rule to write on
)

// Units is which units the values are printed in.
type Units int

// The choices of unit.
const (
	CM Units = iota
	Inches
	Both
)

// Options say how a schematic is drawn. The zero value is A4, the usual scale that
// fits, size 0, its values in cm.
type Options struct {
	Paper       Paper
	Orientation Orientation
	Scale       float64 // 8 for 1:8; 0 chooses among UsualScales
	From        Scales  // no larger scale is tried
	WornScale   float64 // of the garment as it is worn; 0: Scale, or one at which it fills its page
	Size        int     // index of the garment that gives the shape
	Labels      Labels
	Order       []string // of letters, where it is known (LetterOrder) or not all sizes are there
	Units       Units
	Trim        bool    // cut the paper to what is drawn all round, for a screen or another page
	Width       float64 // of a picture cut to its ink, mm, instead of a paper; 0: the paper
	Without     schematic.DrawnPart
	Face        fonts.Face // of every word
	Text        float64    // font size of the values, mm; 0: 3.2
	Prefix      string     // of every id
	Lang        string     // of the drawing's words; empty: en
	Caution     string     // printed at the foot of the first sheet
	Stats       *Stats     // counts how labels were placed, if given

	altered string // the size whose alteration is compared with it; empty: sizes are

	Stop <-chan struct{} // once closed, no one waits for the drawing any more; may be nil
}

// Large is the text size of a large print, in mm: 18 point.
const Large = 6.35

// UsualScales are the scales that a drawing takes by itself, largest first.
var UsualScales = []float64{2, 2.5, 4, 5, 8, 10, 12, 16, 20, 25, 32, 40, 50, 64, 80, 100}

// WornScales are those of the garment as it is worn, which has a page to itself and fills it.
var WornScales = []float64{2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 7.5, 8, 8.5, 9, 9.5, 10, 11, 12, 13, 14, 15, 16, 18, 20, 22, 25, 28, 32, 36, 40, 45, 50, 64, 80, 100}

// Stats count how often each way of placing a label was taken.
type Stats struct {
	OnLine, Beside, NextTrack, Inside, Slanted int
	Outermost                                  int // letters in tracks, on the line or at its end
	Under                                      int // widths of whole rows, as text under a piece
	Letter                                     int // all letters for want of room
	Chosen                                     int // letters because Letters was asked for
	Dropped                                    int // names of marks for which there was no room; the key says them
	Pages, Tables                              int
}

const (
	margin      = 10.0 // mm around every sheet
	wide        = 0.5  // outline
	narrow      = 0.25 // everything that measures
	hair        = 0.18 // hatching and rules
	defaultText = 3.2
	smallest    = 1.5 // font size in mm
	largest     = 12.0
)

func (o Options) text() float64 {
	if o.Text == 0 {
		return defaultText
	}
	return o.Text
}

func (o Options) lang() string {
	if o.Lang == "" {
		return "en"
	}
	return o.Lang
}

// sides are the short and the long side of the paper in mm. A picture is at most half as high again
// as it is wide, or as a small piece with its words needs, and its ink has half a millimetre at each side.
func (o Options) sides() (short, long float64) {
	if o.Width > 0 {
		return o.Width + 2*margin - 1, max(1.5*o.Width, 120) + 2*margin
	}
	return o.Paper.Size()
}

// cut reports whether the paper is cut to what is drawn.
func (o Options) cut() bool { return o.Trim || o.Width > 0 }

// turned reports whether the paper may lie (or stand) this way up.
func (o Options) turned(landscape bool) bool {
	if o.Width > 0 {
		return !landscape
	}
	return o.Orientation == Auto || landscape == (o.Orientation == Landscape)
}

func (o Options) check(sizes int) error {
	switch {
	case sizes == 0:
		return fmt.Errorf("there is no garment to draw")
	case o.Paper < 0 || int(o.Paper) >= len(papers):
		return fmt.Errorf("there is no paper %d", o.Paper)
	case o.Size < 0 || o.Size >= sizes:
		return fmt.Errorf("size %d is not among the %d sizes", o.Size, sizes)
	case o.Scale != 0 && !(o.Scale >= 0.5 && o.Scale <= 1000):
		return fmt.Errorf("a scale of 1:%g is outside 1:0.5 to 1:1000", o.Scale)
	case o.WornScale != 0 && !(o.WornScale >= 0.5 && o.WornScale <= 1000):
		return fmt.Errorf("a scale of 1:%g is outside 1:0.5 to 1:1000", o.WornScale)
	case o.Width != 0 && !(o.Width >= 40 && o.Width <= 1000):
		return fmt.Errorf("a picture %g mm wide is outside 40 to 1000 mm", o.Width)
	case o.Text != 0 && !(o.Text >= smallest && o.Text <= largest):
		return fmt.Errorf("a text size of %g mm is outside %g to %g mm", o.Text, smallest, largest)
	}
	return nil
}

// TooLarge is the error of a drawing that no scale or further sheet can bring
// onto the paper. W and H are the least paper it needs, mm.
type TooLarge struct {
	What  string
	Scale float64
	Paper Paper
	W, H  float64
}

// Error says what does not fit, and the paper that would do.
func (e *TooLarge) Error() string {
	at := ""
	if e.Scale > 0 {
		at = " at 1:" + scaleText(e.Scale)
	}
	return fmt.Sprintf("%s%s does not fit on %s: it needs paper of at least %.0f x %.0f mm%s, a smaller scale or smaller text",
		e.What, at, e.Paper, e.W, e.H, namedPaper(e.W, e.H))
}

// or is the smaller paper of two that would do, for the paper the one way up and the
// other. One that the paper itself would hold, turned, is no answer alone.
func (e *TooLarge) or(o *TooLarge) *TooLarge {
	switch {
	case e == nil:
		return o
	case e.holds() && o.holds():
		o.W, o.H = max(e.W, o.W), max(e.H, o.H)
		return o
	case e.holds() || !o.holds() && o.W*o.H < e.W*e.H:
		return o
	}
	return e
}

// holds reports whether the paper, turned, is as large as the paper asked for.
func (e *TooLarge) holds() bool {
	short, long := e.Paper.Size()
	return min(e.W, e.H) <= short && max(e.W, e.H) <= long
}

// namedPaper is the smallest sheet of ISO 216's A series that holds w x h, if any.
func namedPaper(w, h float64) string {
	short, long := min(w, h), max(w, h)
	for _, p := range []struct {
		name        string
		short, long float64
	}{{"A4", 210, 297}, {"A3", 297, 420}, {"A2", 420, 594}, {"A1", 594, 841}, {"A0", 841, 1189}} {
		if short <= p.short && long <= p.long {
			return " (" + p.name + ")"
		}
	}
	return ""
}

func scaleText(s float64) string {
	n := units.Frac(int64(s*1000+0.5), 1000)
	return units.Decimal(n, 3)
}

// lineHeight is the height of a line of text in mm: ascent and descent.
func lineHeight(f fonts.Face, size float64) float64 {
	return (fonts.Ascent(f) + fonts.Descent(f)) * size
}
