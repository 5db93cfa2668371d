package schematic

import (
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
