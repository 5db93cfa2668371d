package schematic

import (
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
	"flatwright/schematic/units"
)

// Gauge is so many stitches and rows over a length, of blocked fabric. Over is
// in mm; '4 in / 10 cm' is a nominal pair of which the authored unit governs.
type Gauge struct {
	Name      string
	Stitches  units.Num
	Rows      units.Num
	Over      units.Num
	OverUnit  units.Unit
	Stitch    string // in which stitch, as written
	Stretched bool
	Rounds    bool
	Pos       finding.Pos
}

// GaugeIn is the gauge called name among some, or nil. An empty name is the first.
func GaugeIn(all []Gauge, name string) *Gauge {
	for i := range all {
		if name == "" || all[i].Name == name {
			return &all[i]
		}
	}
	return nil
}

// StitchWidth is the width of one stitch in mm.
func (g Gauge) StitchWidth() units.Num { return g.Over.Div(g.Stitches) }

// RowHeight is the height of one row in mm.
func (g Gauge) RowHeight() units.Num { return g.Over.Div(g.Rows) }

// GaugeBounds says in words what a gauge may be; Gauge.Impossible holds it to that.
const GaugeBounds = "from 0.1 to 200 in a centimetre"

// Impossible says what makes g more, or less, than yarn and rope can do, or "".
func (g Gauge) Impossible() string {
	if g.Over.Sign() <= 0 || g.Stitches.Sign() <= 0 || g.Rows.Sign() <= 0 {
		return "the stitches, rows and length of a gauge must be more than 0"
	}
	least, most := units.Frac(1, 10), units.Int(200)
	for _, c := range []struct {
		n    units.Num
		what string
	}{{g.Stitches, "stitches"}, {g.Rows, "rows"}} {
		if per := c.n.Div(g.Over).Times(10); per.Less(least) || most.Less(per) {
			return "this gauge has " + units.Decimal(per, 3) + " " + c.what + " in a centimetre"
		}
	}
	return ""
}

// Crochet reports whether the gauge is of a crochet stitch in the terms t: a row that picks
// stitches up, or is worked into a ring, is then a row as high as any other (common practice); in
// knitting it is the edge of the fabric.
func (g Gauge) Crochet(t Terms) bool {
	_, ok := stitch.Worked(g.Stitch, stitch.Terms(t))
	return ok
}
