package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The neck is on the right of the first part as drawn, and so on the left of its mirror, unless that names its edges itself.
func TestTheMirrorOfAPartHasTheNamesOfItsEdges(t *testing.T) {
	work := func(mirror Part) map[string]bool {
		even := &Even{Amount: Amount{Rows: n(10)}}
		m := Work(plain(&Piece{Name: "Front", Sections: []Section{&CastOn{Stitches: n(40)}, even, &Divide{Parts: []Part{
			{Name: "First", Stitches: n(20), LeftEdge: "armhole", RightEdge: "neck", Sections: []Section{even}}, mirror,
		}}}}), 0).Pieces[0]
		named := map[string]bool{}
		for _, e := range m.Edges {
			for _, p := range e.Parts {
				if p == "Second" && e.Left {
					named["left "+e.Name] = true
				}
				if p == "Second" && e.Right {
					named["right "+e.Name] = true
				}
			}
		}
		return named
	}
	own := work(Part{Name: "Second", Stitches: n(20), MirrorOf: "First"})
	assert.True(t, own["left neck"] && own["right armhole"], "%v", own)
	own = work(Part{Name: "Second", Stitches: n(20), MirrorOf: "First", LeftEdge: "front edge"})
	assert.True(t, own["left front edge"] && !own["left neck"], "%v", own)
}
