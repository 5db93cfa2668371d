package check

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/given"
)

func n(v int) expr.Graded { return expr.Counts(v) }

func worked(pieces ...*schematic.Piece) []string {
	p := pattern("M")
	p.Sizes.Groups = []int{1}
	p.Pieces = pieces
	return kinds(Pattern(p, bysize.WorkAll(p)))
}

// Common practice: right side facing, the side of a right front is on its left as drawn, as it
// is of a garment that one looks at in front of its wearer.
func TestAFrontHasItsSideWhereItsNameSaysAsWorn(t *testing.T) {
	front := func(name string, at schematic.Side, left, right string) *schematic.Piece {
		return &schematic.Piece{Name: name, Kind: schematic.KindFront, LeftEdge: left, RightEdge: right, Sections: []schematic.Section{
			&schematic.CastOn{Stitches: n(30)},
			&schematic.Even{Amount: schematic.Amount{Rows: n(20)}},
			&schematic.BindOff{Stitches: n(3), At: at, Leave: true, Edge: "armhole"},
			&schematic.Even{Amount: schematic.Amount{Rows: n(20)}},
			&schematic.BindOff{All: true, Edge: "shoulder"},
		}}
	}
	assert.Empty(t, worked(front("Right front", schematic.LeftEdge, "side", "front edge")))
	assert.Empty(t, worked(front("Left front", schematic.RightEdge, "front edge", "side")))
	assert.Equal(t, []string{"words/left-right"}, worked(front("Left front", schematic.LeftEdge, "side", "front edge")))
	assert.Equal(t, []string{"words/left-right"}, worked(front("Right wrap front", schematic.RightEdge, "wrap edge", "side")))
	assert.Empty(t, worked(front("Front", schematic.RightEdge, "wrap edge", "side")), "no side is named")
}

// Right side facing, a right-side row meets the right shoulder of a back first, and the left one
// of a front.
func TestTheShouldersOfAWholeBackAndFrontAreCalledAsWorn(t *testing.T) {
	whole := func(kind schematic.Kind, first, second string) *schematic.Piece {
		return &schematic.Piece{Name: "Piece", Kind: kind, Sections: []schematic.Section{
			&schematic.CastOn{Stitches: n(50)},
			&schematic.Even{Amount: schematic.Amount{Rows: n(40)}},
			&schematic.Divide{Parts: []schematic.Part{
				{Name: first, Stitches: n(15), Sections: []schematic.Section{
					&schematic.Even{Amount: schematic.Amount{Rows: n(2)}}, &schematic.BindOff{All: true, Edge: "shoulder"}}},
				{Name: "neck", Stitches: n(20), Leave: true, Edge: "neck"},
				{Name: second, Stitches: n(15), MirrorOf: first},
			}},
		}}
	}
	assert.Empty(t, worked(whole(schematic.KindBack, "right shoulder", "left shoulder")))
	assert.Empty(t, worked(whole(schematic.KindFront, "left shoulder", "right shoulder")))
	assert.Equal(t, []string{"words/left-right"}, worked(whole(schematic.KindFront, "right shoulder", "left shoulder")))
	assert.Equal(t, []string{"words/left-right"}, worked(whole(schematic.KindBack, "left shoulder", "right shoulder")))
	assert.Empty(t, worked(whole(schematic.KindPiece, "left shoulder", "right shoulder")), "nobody knows how it is worn")
}

func TestPanelsOfAYokeFromTheNeckBeginAtTheLeftFront(t *testing.T) {
	yoke := func(from schematic.Direction, names ...string) *schematic.Piece {
		var panels []schematic.Panel
		for _, name := range names {
			panels = append(panels, schematic.Panel{Name: name, Stitches: n(20)})
		}
		return &schematic.Piece{Name: "Yoke", Kind: schematic.KindYoke, From: from, Sections: []schematic.Section{
			&schematic.CastOn{Stitches: n(20 * len(names))},
			&schematic.Panels{Of: panels},
			&schematic.Shape{Shapings: []schematic.Shaping{{Increase: from == schematic.FromNeck, By: n(1), At: schematic.Lines, Every: n(2), Times: n(4)}}},
			&schematic.BindOff{All: true},
		}}
	}
	assert.Empty(t, worked(yoke(schematic.FromNeck, "Left front", "Back", "Right front")))
	assert.Equal(t, []string{"words/left-right"}, worked(yoke(schematic.FromNeck, "Right front", "Back", "Left front")))
	assert.Empty(t, worked(yoke(schematic.FromHem, "Right front", "Back", "Left front")))
}

// A wrap covers of the body what it measures before its opening is narrowed: 40 + 30 cm beside
// a back of 40 cm.
func TestTheBustOfAWrapIsMeasuredBeforeItsOpening(t *testing.T) {
	p := pattern("M")
	p.Sizes.Groups = []int{1}
	front := func(name string, sts int, at schematic.Side, edge string) *schematic.Piece {
		return &schematic.Piece{Name: name, Kind: schematic.KindFront, Sections: []schematic.Section{
			&schematic.CastOn{Stitches: n(sts)},
			&schematic.Shape{Shapings: []schematic.Shaping{{By: n(1), At: at, Every: n(1), Times: n(10), Edge: edge}}},
			&schematic.BindOff{Stitches: n(4), At: schematic.RightEdge, Leave: true, Edge: "armhole"},
			&schematic.Even{Amount: schematic.Amount{Rows: n(20)}},
			&schematic.BindOff{All: true},
		}}
	}
	p.Pieces = []*schematic.Piece{{Name: "Back", Kind: schematic.KindBack, Sections: []schematic.Section{
		&schematic.CastOn{Stitches: n(40)}, &schematic.Even{Amount: schematic.Amount{Rows: n(20)}}, &schematic.BindOff{All: true},
	}}, front("Left front", 40, schematic.LeftEdge, "neck"), front("Other front", 30, schematic.LeftEdge, "front edge")}
	got := sum(schematic.Work(p, 0), "bust")
	if assert.Len(t, got, 1) {
		assert.Equal(t, cm(110, 1), got[0].length())
	}
}

func TestTheBustOfPiecesFromSideToSideIsTheirRows(t *testing.T) {
	p := pattern("M")
	p.Sizes.Groups = []int{1}
	p.Pieces = []*schematic.Piece{{Name: "Back", Kind: schematic.KindBack, Make: n(2), From: schematic.FromLeft, Sections: []schematic.Section{
		&schematic.CastOn{Stitches: n(40)}, &schematic.Even{Amount: schematic.Amount{Rows: n(90)}}, &schematic.BindOff{All: true},
	}}}
	got := sum(schematic.Work(p, 0), "bust")
	if assert.Len(t, got, 1) {
		assert.Equal(t, cm(90, 1), got[0].length()) // twice 90 rows of half a centimetre
	}
}

// The back of a kimono is straight, its armholes but a name along its sides: it is a part of the bust as the fronts are, 40 + 2 x 18 stitches.
func TestAStraightBackWhoseArmholesAreNamedIsAPartOfTheBust(t *testing.T) {
	p := pattern("M")
	p.Sizes.Groups = []int{1}
	front := func(name string) *schematic.Piece {
		return &schematic.Piece{Name: name, Kind: schematic.KindFront, Sections: []schematic.Section{
			&schematic.CastOn{Stitches: n(18)},
			&schematic.Even{Amount: schematic.Amount{Rows: n(20)}},
			&schematic.Shape{Common: schematic.Common{LeftEdge: "front edge", RightEdge: "armhole"},
				Shapings: []schematic.Shaping{{By: n(1), At: schematic.LeftEdge, Every: n(2), Times: n(5)}}},
			&schematic.BindOff{All: true},
		}}
	}
	p.Pieces = []*schematic.Piece{{Name: "Back", Kind: schematic.KindBack, Sections: []schematic.Section{
		&schematic.CastOn{Stitches: n(40)}, &schematic.Even{Amount: schematic.Amount{Rows: n(20)}},
		&schematic.Even{Common: schematic.Common{LeftEdge: "armhole", RightEdge: "armhole"}, Amount: schematic.Amount{Rows: n(10)}}, &schematic.BindOff{All: true},
	}}, front("Left front"), front("Right front")}
	got := sum(schematic.Work(p, 0), "bust")
	if assert.Len(t, got, 1) {
		assert.Equal(t, cm(76, 1), got[0].length())
	}
}

// Two fronts on a back: with one side sewn the other is noted, and with both, or none, nothing is.
func TestASideThatIsSewnToNothingIsNotedWhereItsLikeIsSewn(t *testing.T) {
	const right, left = "  - {sew: Right front side, into: Back right side}\n", "  - {sew: Back left side, into: Left front side}\n"
	head, _, _ := strings.Cut(sewnSides, "joins:")
	for joins, want := range map[string]int{"joins:\n" + right + left: 0, "joins:\n" + right: 1, "joins:\n" + left: 1, "": 0} {
		p := given.Text(t, head+joins)
		list := slices.DeleteFunc(kinds(Pattern(p, bysize.WorkAll(p))), func(k string) bool { return k != "joins/one-side" })
		assert.Len(t, list, want, joins)
	}
}

// The right side of a back, right side facing, is that of the wearer: a right front is sewn to it.
func TestAFrontIsSewnToItsOwnSideOfTheBack(t *testing.T) {
	for sides, want := range map[[2]string][]string{{"right", "left"}: {}, {"left", "right"}: {"words/left-right", "words/left-right"}} {
		p := given.Text(t, fmt.Sprintf(sewnSides, sides[0], sides[1]))
		list := slices.DeleteFunc(kinds(Pattern(p, bysize.WorkAll(p))), func(k string) bool { return k != "words/left-right" })
		assert.ElementsMatch(t, want, list, sides)
	}
}

const sewnSides = `version: 1
pattern: Sides
terms: US
units: cm
sizes: [one]
gauges: {fabric: 20 sts and 28 rows over 10 cm in stockinette}
pieces:
  - piece: Back
    sections: [{cast on: 80}, {even: 60 rows}, {bind off: all, edge: shoulder}]
  - piece: Right front
    left edge: side
    right edge: front edge
    sections: [{cast on: 40}, {even: 60 rows}, {bind off: all, edge: shoulder}]
  - piece: Left front
    mirror of: Right front
joins:
  - {sew: Right front side, into: Back %s side}
  - {sew: Back %s side, into: Left front side}
`

// A right front lies at the right of a body in one piece: its armhole, beside the back, is at the left of it. With the edges exchanged its armhole would be
// where the band goes. A front that is divided at its neck, in a body that is open at a side, does have an armhole at its outer edge.
func TestAnArmholeAtTheFrontEdgeOfABodyIsTold(t *testing.T) {
	for _, c := range []struct {
		first, second, third, edge string
		want                       int
	}{
		{"Right front", "Back", "Left front", "left", 0},
		{"Right front", "Back", "Left front", "right", 2},
		{"Front", "Back", "Side", "right", 0},
		{"Right back", "Front", "Left back", "right", 0},
	} {
		p := given.Text(t, fmt.Sprintf(partedBody, c.first, c.edge, c.second, c.third, c.first))
		list := slices.DeleteFunc(kinds(Pattern(p, bysize.WorkAll(p))), func(k string) bool { return k != "words/left-right" })
		assert.Len(t, list, c.want, c.first, c.edge)
	}
}

const partedBody = `version: 1
pattern: Parted
terms: UK
units: cm
sizes: [one]
gauges: {fabric: 20 sts and 28 rows over 10 cm in stocking stitch}
pieces:
  - piece: Body
    kind: body
    worked: flat, from the hem
    sections:
      - {cast on: 180, edge: hem}
      - {even: 100 rows}
      - divide:
          - part: %s
            stitches: 42
            %s edge: armhole
            sections: [{even: 50 rows}, {bind off: all, edge: shoulder}]
          - {bind off: 6, edge: underarm}
          - part: %s
            stitches: 84
            left edge: armhole
            right edge: armhole
            sections: [{even: 50 rows}, {bind off: all, edge: shoulder}]
          - {bind off: 6, edge: underarm}
          - {part: %s, stitches: 42, mirror of: %s}
`
