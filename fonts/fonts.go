// Package fonts holds the faces of every drawing and page, and the one measure
// of text that layout and all writers share.
package fonts

// Face is one of the faces.
type Face int

// The faces, all of Liberation Sans, whose widths are Arial's.
const (
	Regular Face = iota
	Bold
	Italic
)
