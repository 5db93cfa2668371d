package sheet_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"flatwright/layout/sheet"
)

func text(s string, x, y, angle float64) *sheet.Text {
	return &sheet.Text{S: s, At: sheet.Point{X: x, Y: y}, Angle: angle, Size: 3, Ink: sheet.Black}
}

func rule(width float64, ps ...sheet.Point) *sheet.Path {
	p := &sheet.Path{Style: sheet.Style{Width: width, Stroke: sheet.Black}, Class: "dimension"}
	for i, at := range ps {
		v := sheet.Line
		if i == 0 {
			v = sheet.Move
		}
		p.Segs = append(p.Segs, sheet.Seg{Verb: v, P: [3]sheet.Point{at}})
	}
	return p
}

func page(items ...sheet.Item) *sheet.Sheet {
	return &sheet.Sheet{W: 100, H: 100, Root: sheet.Group{Items: []sheet.Item{&sheet.Group{Items: items}}}}
}

func TestPlantedOverlapsAreFound(t *testing.T) {
	at := func(x, y float64) sheet.Point { return sheet.Point{X: x, Y: y} }
	ground := rule(0, at(10, 40), at(60, 40), at(60, 60))
	ground.Style = sheet.Style{Fill: sheet.Tint}
	arrow := rule(0, at(20, 48), at(22, 49), at(20, 49.5))
	arrow.Style = sheet.Style{Fill: sheet.Black}
	curve := &sheet.Path{Style: sheet.Style{Width: 0.25, Stroke: sheet.Black}, Class: "outline", Segs: []sheet.Seg{
		{Verb: sheet.Move, P: [3]sheet.Point{at(10, 30)}},
		{Verb: sheet.Cubic, P: [3]sheet.Point{at(20, 60), at(30, 60), at(40, 30)}}}}
	closed := rule(0.25, at(18, 30), at(18, 70), at(90, 70))
	closed.Segs = append(closed.Segs, sheet.Seg{Verb: sheet.Close})
	for name, c := range map[string]struct {
		s    *sheet.Sheet
		want []sheet.ProblemKind
	}{
		"nothing":                 {page(text("12 cm", 20, 50, 0), text("14 cm", 20, 54, 0), rule(0.25, at(10, 51), at(60, 51))), nil},
		"two labels":              {page(text("12 cm", 20, 50, 0), text("14 cm", 22, 51, 0)), []sheet.ProblemKind{sheet.LabelOnLabel}},
		"a turned label":          {page(text("12 cm", 20, 50, 0), text("14 cm", 23, 52, 90)), []sheet.ProblemKind{sheet.LabelOnLabel}},
		"turned labels in a row":  {page(text("a long text that goes far", 20, 50, 45), text("another long text", 26, 50, 45)), nil},
		"a line":                  {page(text("12 cm", 20, 50, 0), rule(0.25, at(10, 49), at(60, 49))), []sheet.ProblemKind{sheet.LabelOnLine}},
		"a long slanted line":     {page(text("12 cm", 48, 51, 0), rule(0.25, at(1, 1), at(99, 99))), []sheet.ProblemKind{sheet.LabelOnLine}},
		"only a line's width":     {page(text("12 cm", 20, 50, 0), rule(1.2, at(10, 51), at(60, 51))), []sheet.ProblemKind{sheet.LabelOnLine}},
		"a curve":                 {page(text("12 cm", 22, 53, 0), curve), []sheet.ProblemKind{sheet.LabelOnLine}},
		"a curve's controls only": {page(text("12 cm", 22, 58.5, 0), curve), nil},
		"the side that closes":    {page(text("12 cm", 50, 51, 0), closed), []sheet.ProblemKind{sheet.LabelOnLine}},
		"a light ground":          {page(text("12 cm", 20, 50, 0), ground), nil},
		"a filled arrowhead":      {page(text("12 cm", 20, 50, 0), arrow), []sheet.ProblemKind{sheet.LabelOnLine}},
		"a label off the page":    {page(text("12 cm", 97, 50, 0)), []sheet.ProblemKind{sheet.LabelOffPage}},
		"a label on the margin":   {page(text("12 cm", 3, 50, 0)), []sheet.ProblemKind{sheet.LabelOffPage}},
		"a line on the margin":    {page(rule(0.25, at(2, 10), at(50, 10))), []sheet.ProblemKind{sheet.LineOffPage}},
		"a label with no text":    {page(text("", 3, 50, 0)), nil},
	} {
		t.Run(name, func(t *testing.T) {
			var got []sheet.ProblemKind
			for _, p := range sheet.Overlaps(c.s, 5) {
				require.NotEmpty(t, p.String())
				if name == "a long slanted line" && p.What == sheet.LineOffPage {
					continue
				}
				got = append(got, p.What)
			}
			require.Equal(t, c.want, got)
		})
	}
}

func TestEveryClassHasItsMeaning(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range sheet.Classes {
		require.NotEmpty(t, c.What)
		require.False(t, seen[c.Name], c.Name)
		seen[c.Name] = true
	}
}
