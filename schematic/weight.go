package schematic

import (
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Swatch is the weight of a swatch in one gauge: of Width by Height (mm), or of
// so many stitches by so many rows.
type Swatch struct {
	Gauge          string // name of the gauge; empty: the first
	Grams          units.Num
	Width, Height  units.Num
	Stitches, Rows units.Num
	Pos            finding.Pos
}

// Area is the swatch's area in mm² at the gauge g.
func (s Swatch) Area(g Gauge) units.Num {
	if s.Stitches.Sign() > 0 {
		return s.Stitches.Mul(g.StitchWidth()).Mul(s.Rows).Mul(g.RowHeight())
	}
	return s.Width.Mul(s.Height)
}

// Ball is what is sold: its weight in grams and its length in mm; either may be 0, not known.
type Ball struct{ Grams, Length units.Num }

// Weights are what the yarn for each size is reckoned from.
type Weights struct {
	Swatches  []Swatch
	Sample    units.Num // weight of the finished sample, in grams; 0 if it is not known
	SamplePos finding.Pos
	Ball      Ball
	Allowance units.Num // a share: 1/10 is a tenth more
}
