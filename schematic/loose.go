package schematic

import (
	"slices"
	"strings"
)

// looseThings are parts that hang free: their length follows no body, and no seam holds more than an end of them (common practice).
var looseThings = []string{"tie", "ties", "handle", "handles", "strap", "straps", "cord", "cords", "drawstring", "drawstrings", "belt", "sash", "loop", "loops", "tassel", "tassels", "fringe", "scarf"}

// HangsFree reports whether a piece, part or measurement is named for something that hangs free: a tie, a belt, a handle.
func HangsFree(name string) bool {
	return slices.ContainsFunc(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r == ' ' || r == '-' || r == ',' }),
		func(word string) bool { return slices.Contains(looseThings, word) })
}
