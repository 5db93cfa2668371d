package rows

import (
	"flatwright/schematic"
	"flatwright/schematic/rows/print"
)

// PrintOptions say how a pattern's rows are printed.
type PrintOptions = print.Options

// Print writes the rows of every piece of a pattern from its worked sizes (gs, one a size,
// in the order of p.Sizes), and how the pieces are made up. What it prints, Read and Check
// read back with no finding.
func Print(p *schematic.Pattern, gs []*schematic.Garment, o PrintOptions) string {
	return print.Rows(p, gs, o)
}

// MakingUp is how the pieces of a pattern are sewn together, a sentence for each join, as Print
// puts it behind the rows: nothing if nothing is joined.
func MakingUp(p *schematic.Pattern, gs []*schematic.Garment, o PrintOptions) []string {
	return print.MakingUp(p, gs, o)
}
