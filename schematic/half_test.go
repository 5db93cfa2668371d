package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// At 20 stitches over 10 cm a stitch is 5 mm. The half front has 50 stitches: 20 go at its neck, 100 mm, which
// is half of the neck; the whole front has 100, of which its neck takes 40, 200 mm.
func TestANeckThatAPieceHasHalfOfSaysSo(t *testing.T) {
	half := func(at Side, top ...Section) *Piece {
		p := &Piece{Name: "Half", Kind: KindFront, LeftEdge: "front edge", Sections: append([]Section{
			&CastOn{Stitches: n(50)}, &Even{Amount: Amount{Rows: n(50)}},
		}, top...)}
		if at == RightEdge {
			p.LeftEdge, p.RightEdge = "", "front edge"
		}
		return p
	}
	slope := func(at Side) *Shape {
		return &Shape{Shapings: []Shaping{{By: n(1), At: at, Every: n(2), Times: n(20), Edge: "neck"}}}
	}
	shoulder := &BindOff{All: true, Edge: "shoulder"}
	whole := func(neck, side int, inner ...Section) *Piece {
		return &Piece{Name: "Half", Kind: KindFront, Sections: []Section{
			&CastOn{Stitches: n(100)}, &Even{Amount: Amount{Rows: n(50)}},
			&Divide{Parts: []Part{
				{Name: "Left", Stitches: n(side), LeftEdge: "neck", Sections: append(inner, shoulder)},
				{Name: "neck", Stitches: n(neck), Leave: true, Edge: "neck"},
				{Name: "Right", Stitches: n(side), RightEdge: "neck", MirrorOf: "Left"},
			}},
		}}
	}
	for _, c := range []struct {
		name  string
		piece *Piece
		want  string
		long  float64
	}{
		{"a half V", half(LeftEdge, slope(LeftEdge), shoulder), "half front neck width", 100},
		{"a half V, its opening on the right", half(RightEdge, slope(RightEdge), shoulder), "half front neck width", 100},
		{"a half round neck", half(LeftEdge, &BindOff{Stitches: n(8), At: LeftEdge, Edge: "neck"},
			&Shape{Shapings: []Shaping{{By: n(1), At: LeftEdge, Every: n(2), Times: n(12), Edge: "neck"}}}, shoulder), "half front neck width", 100},
		{"a level half neck", half(LeftEdge, &BindOff{Stitches: n(20), At: LeftEdge, Leave: true, Edge: "neck"}, shoulder), "half front neck width", 100},
		{"a whole round neck", whole(16, 42, &Shape{Shapings: []Shaping{{By: n(1), At: LeftEdge, Every: n(2), Times: n(12), Edge: "neck"}}}), "front neck width", 200},
		{"a whole square neck", whole(40, 30, &Even{Amount: Amount{Rows: n(20)}}), "front neck width", 200},
		{"a whole level neck", whole(40, 30), "front neck width", 200},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, s := range Work(plain(c.piece), 0).Pieces[0].Measures {
				if s.Axis == Horizontal && s.Of == "st" && (s.Name == "front neck width" || s.Name == "half front neck width") {
					assert.Equal(t, c.want, s.Name)
					assert.InDelta(t, c.long, s.Length.Float(), 1e-9)
					assert.Contains(t, s.ID, "half.front-neck-width", "an ID does not change with the words")
					return
				}
			}
			assert.Fail(t, "no width of the neck")
		})
	}
}
