// Package fonts holds the faces of every drawing and page, and the one measure
// of text that layout and all writers share: advances and kerning of Liberation
// Sans or of a face of one's own, as browsers apply them, and the same stand-in for
// what no face can draw. It gives glyphs as outlines, and the part of a face that
// some text needs. It draws nothing and breaks no lines.
package fonts

import (
	"sync"

	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansitalic"
	"github.com/go-fonts/liberation/liberationsansregular"
)

// Face is one of the faces: Regular, Bold, Italic, or one that Parse gave. The zero
// value is Regular.
type Face struct{ own *face }

// face is a face's file and what is made of it at need.
type face struct {
	ttf []byte

	once sync.Once
	m    *metrics

	mu      sync.Mutex
	subsets map[string]*Subset // by their characters; few, since documents repeat them
}

// The faces of the house, all of Liberation Sans, whose widths are Arial's.
var (
	Regular = Face{}
	Bold    = Face{bold}
	Italic  = Face{italic}

	regular = &face{ttf: liberationsansregular.TTF}
	bold    = &face{ttf: liberationsansbold.TTF}
	italic  = &face{ttf: liberationsansitalic.TTF}
)

// Family is the stack of families for a reader without Liberation Sans: each one
// has the same widths.
const Family = `"Liberation Sans", Arial, Helvetica, sans-serif`

func (f Face) get() *face {
	if f.own == nil {
		return regular
	}
	return f.own
}

// House reports whether the face is one of the house's three.
func (f Face) House() bool { return f.own == nil || f.own == bold || f.own == italic }

// TTF are the bytes of the face's TrueType or OpenType file. Callers must not change them.
func TTF(f Face) []byte { return f.get().ttf }

// Ascent is the height of the tallest letters above the baseline, in em.
func Ascent(f Face) float64 { return metricsOf(f).ascent }

// Descent is the depth of the lowest letters below the baseline, in em, positive.
func Descent(f Face) float64 { return metricsOf(f).descent }
