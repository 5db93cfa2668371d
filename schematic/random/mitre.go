package random

import (
	"math"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// mitreAngle is the bend, to a tenth of a degree, that decreasing 2 stitches every rows rows makes.
func mitreAngle(g schematic.Gauge, rows int) units.Num {
	a := 2 * math.Atan2(g.StitchWidth().Float(), float64(rows)*g.RowHeight().Float())
	return units.Frac(int64(math.Round(a*1800/math.Pi)), 10)
}
