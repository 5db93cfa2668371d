package chart

import (
	"fmt"
	"slices"

	"flatwright/fonts"
	"flatwright/layout/place"
	"flatwright/schematic"
	"flatwright/schematic/stitch"
)

// Options say how a chart is drawn. The zero value is A4, symbols at the largest of
// the usual sizes that fits one page, for right-handed work.
type Options struct {
	Paper       place.Paper
	Orientation place.Orientation
	Scale       float64             // of the symbols, 1 for their usual size; 0 chooses
	Least       float64             // of the symbols that are chosen so; 0: 0.6. Larger ones than usual are tried too
	Text        float64             // font size of numbers and words, mm; 0: 2.8
	Face        fonts.Face          // of every word
	LeftHanded  bool                // the mirror image, read the other way
	Whole       bool                // leave nothing out, however wide and tall
	Trim        bool                // cut the paper to what is drawn all round, if it is on one page
	Without     schematic.DrawnPart // Heading or Key to leave off
	Title       string              // of the pattern
	Designer    string
	Prefix      string  // of every id
	Lang        string  // of the words; empty: en
	Proportion  float64 // of a grid: the height of a square, of its width; 0: square
	Floats      int     // over how many stitches a yarn is carried at most, untold; 0: 5
}

const (
	margin      = 10.0 // mm around every sheet
	defaultText = 2.8
	mostWide    = 44 // stitches across before a chart is shortened
	mostTall    = 22 // rows before repeats of rows are left out
	leastText   = 1.5

	mostStitches = 20_000 // 80 rounds of 6 more each have as many
	mostPages    = 100
	mostText     = 12.0
)

// usualScales are the sizes of the symbols that a chart takes by itself.
var usualScales = []float64{3, 2.6, 2.2, 1.9, 1.6, 1.25, 1, 0.85, 0.7, 0.6}

// scales are the sizes of the symbols that are tried, and the last of them on several pages.
func (o *Options) scales() []float64 {
	if o.Scale > 0 {
		return []float64{o.Scale}
	}
	least, from := o.Least, 0
	if least == 0 {
		from = 2
	}
	return append(slices.DeleteFunc(slices.Clone(usualScales[from:]), func(s float64) bool { return s < least }), max(severalScale, least))
}

// severalScale is the size of the symbols on several pages.
const severalScale = 0.85

func (o *Options) text() float64 {
	if o.Text == 0 {
		return defaultText
	}
	return o.Text
}

// mostFloat is how many stitches a float goes over, untold, if nothing says (common practice).
const mostFloat = 5

func (o *Options) lang() string {
	if o.Lang == "" {
		return "en"
	}
	return o.Lang
}

func (o *Options) check() error {
	switch {
	case o.Scale != 0 && !(o.Scale >= 0.3 && o.Scale <= 4):
		return fmt.Errorf("a symbol size of %g is outside 0.3 to 4 times the usual", o.Scale)
	case o.Text != 0 && !(o.Text >= leastText && o.Text <= mostText):
		return fmt.Errorf("a text size of %g mm is outside %g to %g mm", o.Text, leastText, mostText)
	}
	return nil
}

// drawing is what one page plan draws: a figure at a scale, its key and its words.
type drawing struct {
	f     *figure
	scale float64
	work  *Work
	key   []entry
	notes []string
	form  form
	craft stitch.Craft
}
