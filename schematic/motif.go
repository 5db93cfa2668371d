package schematic

import (
	"math"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
)

// MotifShape is the shape of a motif.
type MotifShape int

// The shapes of motif.
const (
	Square MotifShape = iota
	Triangle
	Hexagon
	HalfHexagon
	HalfSquare
)

// Motifs is a grid of motifs joined into a piece. Across is the width across
// flats of one motif as worked, Joining what a joining adds between two.
// Filled, one string a row from the top, has x where there is a motif.
type Motifs struct {
	Shape   MotifShape
	Across  expr.Graded // mm
	Joining expr.Graded // mm
	Columns expr.Graded
	Rows    expr.Graded
	Armhole expr.Graded // rows of motifs, from the top, whose sides are the armholes
	Side    expr.Graded // stitches along one side of a motif, for what is picked up there
	Filled  []string
	Pos     finding.Pos
}

// apart is by how many joinings two motifs in a row stand further apart than one is wide: a triangle with half a
// joining around it has sides that are √3 joinings longer.
func (s MotifShape) apart() float64 {
	if s == Triangle {
		return math.Sqrt(3)
	}
	return 1
}

// beyond is how many joinings the cells of a grid reach beyond its motifs, across and upright: half a joining
// at a side on either hand, and at a corner as much more as the corner is sharp.
func (s MotifShape) beyond() (x, y float64) {
	switch s {
	case Triangle:
		return math.Sqrt(3), 1
	case Hexagon, HalfHexagon:
		return 1, 2 / math.Sqrt(3)
	}
	return 1, 1
}
