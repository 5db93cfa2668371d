package place

import (
	"strconv"

	"flatwright/schematic"
)

func tagText(n int) string { return strconv.Itoa(n) }

// markSign is the sign of a mark as thin lines around at: a bar with ends for a
// buttonhole, a square for a pocket, a cross for any other.
func markSign(what string, at pt) [][]pt {
	p := func(x, y float64) pt { return pt{X: at.X + x, Y: at.Y + y} }
	switch what {
	case "buttonhole":
		return [][]pt{{p(-1.2, 0), p(1.2, 0)}, {p(-1.2, -0.5), p(-1.2, 0.5)}, {p(1.2, -0.5), p(1.2, 0.5)}}
	case "pocket":
		return [][]pt{{p(-1, -1), p(1, -1), p(1, 1), p(-1, 1), p(-1, -1)}}
	case "waist":
		return [][]pt{{p(-1, 0), p(0, -1), p(1, 0), p(0, 1), p(-1, 0)}}
	}
	return [][]pt{{p(-0.8, -0.8), p(0.8, 0.8)}, {p(-0.8, 0.8), p(0.8, -0.8)}}
}

func lineClass(k schematic.LineKind) string {
	switch k {
	case schematic.LineFold:
		return "fold"
	case schematic.LineCentre:
		return "centre"
	case schematic.LinePanel:
		return "panel"
	case schematic.LineCell:
		return "cell"
	case schematic.LineMark:
		return "row"
	case schematic.LineSlit:
		return "slit"
	case schematic.LineSeam:
		return "seam"
	case schematic.LineEdge:
		return "outline"
	case schematic.LineBehind:
		return "behind"
	case schematic.LineRib:
		return "hatch"
	}
	return "change"
}

// lineWidth is how wide a line inside a piece is drawn: a slit has two edges, as an outline is one.
func lineWidth(k schematic.LineKind) float64 {
	switch k {
	case schematic.LineSlit, schematic.LineEdge:
		return wide
	case schematic.LineRib:
		return hair
	}
	return narrow
}

// lineDash is how a line inside a piece is broken (ISO 128: dashes for a fold, long
// and short for a centre).
func lineDash(k schematic.LineKind) []float64 {
	switch k {
	case schematic.LineFold:
		return []float64{3, 1.2}
	case schematic.LineCentre:
		return []float64{6, 1.2, 0.5, 1.2}
	case schematic.LinePanel:
		return []float64{1.2, 1}
	case schematic.LineMark:
		return []float64{0.4, 1.1}
	}
	return nil
}
