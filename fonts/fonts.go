// Package fonts holds the faces of every drawing and page, and the one measure
// of text that layout and all writers share: advances and kerning of Liberation
// Sans, as browsers apply them, and the same stand-in for what no face can draw.
// It draws nothing and breaks no lines.
package fonts

import (
	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansitalic"
	"github.com/go-fonts/liberation/liberationsansregular"
)

// Face is one of the faces. A value that is none of them counts as Regular.
type Face int

// The faces, all of Liberation Sans, whose widths are Arial's.
const (
	Regular Face = iota
	Bold
	Italic
	faces
)

// Family is the stack of families for a reader without Liberation Sans: each one
// has the same widths.
const Family = `"Liberation Sans", Arial, Helvetica, sans-serif`

// TTF are the bytes of the face's TrueType file. Callers must not change them.
func TTF(f Face) []byte {
	switch f {
	case Bold:
		return liberationsansbold.TTF
	case Italic:
		return liberationsansitalic.TTF
	}
	return liberationsansregular.TTF
}

// Ascent is the height of the tallest letters above the baseline, in em.
func Ascent(f Face) float64 { return metricsOf(f).ascent }

// Descent is the depth of the lowest letters below the baseline, in em, positive.
func Descent(f Face) float64 { return metricsOf(f).descent }
