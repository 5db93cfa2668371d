package compare

import (
	"fmt"
	"math/rand/v2"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// Texts are lines in which writers could part: pairs that kern, fractions, letters
// that some faces join, signs, accents, and what no face has.
var Texts = []string{
	"11 111 17 71", "AV To LT Te Wa Yo P. A.", "103 (111, 119) (127, –, 135)", "14¼ (15½, 16¾) in × 2⅛",
	"fi ffi fl office", "−5 °C · 3:4 “quoted” ‘so’ …", "Änderung naïve Łódź Ñandú", "Ελλάδα Москва",
	"two  spaces and\ta tab", "e\u0301 o\u0308 composed", "missing: 編 🧶 א", "A & B < C > \"D\" 'E'",
	"A long line of text, which would drift from its place if widths were rounded: 111 sts, 77 rows, VAT.",
}

var faces = [3]fonts.Face{fonts.Regular, fonts.Bold, fonts.Italic}

// Sample is a sheet that uses everything that a sheet can hold, in places of its
// own: each face, anchor and ink, text at any angle, curves, dashes, dots, fills
// and links. It's the same for the same seed.
func Sample(seed uint64) *sheet.Sheet {
	r := rand.New(rand.NewPCG(seed, 1))
	s := &sheet.Sheet{
		W: 210, H: 297, Title: "Sample & test", Desc: "Every kind of mark.", Author: "A. Tester", Lang: "en",
		Prefix: "t1-", Bookmark: fmt.Sprintf("Sample %d", seed), Root: sheet.Group{ID: "all"},
	}
	add := func(id string, items ...sheet.Item) {
		s.Root.Items = append(s.Root.Items, &sheet.Group{ID: id, Class: "part " + id, Title: id, Desc: "Only a test.", Items: items})
	}
	add("upright", upright()...)
	add("turned", turned(r)...)
	add("lines", lines(r)...)
	add("curves", curves(r)...)
	add("fills", fills()...)
	link := &sheet.Group{ID: "link", Link: "https://example.org/?a=1&b=2", Items: []sheet.Item{
		&sheet.Text{S: "a link", At: sheet.Point{X: 12, Y: 288}, Size: 3, Ink: sheet.Black}}}
	inside := &sheet.Group{ID: "inside", Link: "#curves", Items: []sheet.Item{
		&sheet.Text{S: "to the curves", At: sheet.Point{X: 40, Y: 288}, Size: 3, Ink: sheet.Black, Face: fonts.Italic}}}
	s.Root.Items = append(s.Root.Items, link, inside)
	return s
}

func upright() (items []sheet.Item) {
	for i, text := range Texts {
		y := 12 + 6*float64(i)
		x, anchor := 10.0, sheet.Start
		switch i % 3 {
		case 1:
			x, anchor = 105, sheet.Middle
		case 2:
			x, anchor = 200, sheet.End
		}
		items = append(items, &sheet.Text{S: text, At: sheet.Point{X: x, Y: y}, Anchor: anchor,
			Face: faces[i%3], Size: 2.5 + float64(i%4)/2, Ink: sheet.Ink(1 + i%2)})
	}
	return items
}

func turned(r *rand.Rand) (items []sheet.Item) {
	for i := range 12 {
		at := sheet.Point{X: 30 + 50*float64(i%4), Y: 120 + 32*float64(i/4)}
		items = append(items, &sheet.Text{S: Texts[i%5], At: at, Anchor: sheet.Anchor(i % 3), Angle: float64(i)*30 + r.Float64(),
			Face: faces[i/4], Size: 2 + 2*r.Float64(), Ink: sheet.Black})
	}
	return items
}

func lines(r *rand.Rand) (items []sheet.Item) {
	dashes := [][]float64{nil, {2, 1}, {4, 1, 0.5, 1}, {0.01, 1.5}, {1}}
	for i := range 20 {
		p := &sheet.Path{Style: sheet.Style{Width: 0.18 + 0.1*float64(i%5), Dash: dashes[i%5], Stroke: sheet.Ink(1 + i%2)}}
		at := sheet.Point{X: 10 + 9.7*float64(i), Y: 205 + r.Float64()*5}
		for j := range 2 + i%4 {
			verb := sheet.Line
			if j == 0 {
				verb = sheet.Move
			}
			p.Segs = append(p.Segs, sheet.Seg{Verb: verb, P: [3]sheet.Point{at}})
			at.X, at.Y = at.X+r.Float64()*12-4, at.Y+r.Float64()*12
		}
		if i%4 == 3 {
			p.Segs = append(p.Segs, sheet.Seg{Verb: sheet.Close})
		}
		items = append(items, p)
	}
	return items
}

func curves(r *rand.Rand) (items []sheet.Item) {
	for i := range 12 {
		point := func() sheet.Point {
			return sheet.Point{X: 10 + 16*float64(i) + 14*r.Float64(), Y: 240 + 18*r.Float64()}
		}
		items = append(items, &sheet.Path{
			Segs: []sheet.Seg{{Verb: sheet.Move, P: [3]sheet.Point{point()}},
				{Verb: sheet.Cubic, P: [3]sheet.Point{point(), point(), point()}},
				{Verb: sheet.Cubic, P: [3]sheet.Point{point(), point(), point()}}},
			Style: sheet.Style{Width: 0.35, Stroke: sheet.Black},
		})
	}
	return items
}

func fills() (items []sheet.Item) {
	for i := range 10 {
		x, y := 10+19*float64(i), 268.0
		items = append(items, &sheet.Path{
			Segs: []sheet.Seg{{Verb: sheet.Move, P: [3]sheet.Point{{X: x, Y: y}}},
				{Verb: sheet.Line, P: [3]sheet.Point{{X: x + 14, Y: y}}},
				{Verb: sheet.Cubic, P: [3]sheet.Point{{X: x + 18, Y: y + 4}, {X: x + 10, Y: y + 10}, {X: x + 7, Y: y + 10}}},
				{Verb: sheet.Close}},
			Style: sheet.Style{Width: 0.25 * float64(i%2), Stroke: sheet.Black, Fill: sheet.Ink(i % 5)},
		})
	}
	// A dot: a line of no length with round ends.
	dot := sheet.Point{X: 200, Y: 290}
	return append(items, &sheet.Path{Style: sheet.Style{Width: 1.2, Stroke: sheet.Black},
		Segs: []sheet.Seg{{Verb: sheet.Move, P: [3]sheet.Point{dot}}, {Verb: sheet.Line, P: [3]sheet.Point{dot}}}})
}

// Busy is a page of so many primitives, such as a drawing with its table has: lines,
// labels in three faces and some curves. Benchmarks write it.
func Busy(primitives int) *sheet.Sheet {
	s := &sheet.Sheet{W: 210, H: 297, Title: "Busy", Lang: "en", Bookmark: "Busy", Root: sheet.Group{ID: "all"}}
	for i := range primitives {
		x, y := 5+float64(i%20)*10, 5+float64(i/20)*12
		var it sheet.Item
		switch i % 4 {
		case 0:
			it = &sheet.Text{S: fmt.Sprintf("%d (%d, %d)", i, i+11, i+22), At: sheet.Point{X: x, Y: y}, Size: 2.5,
				Face: faces[i/4%3], Ink: sheet.Black, Angle: float64(i / 4 % 2 * 90)}
		case 1:
			it = &sheet.Path{Style: sheet.Style{Width: 0.35, Stroke: sheet.Black}, Segs: []sheet.Seg{
				{Verb: sheet.Move, P: [3]sheet.Point{{X: x, Y: y}}},
				{Verb: sheet.Cubic, P: [3]sheet.Point{{X: x + 3, Y: y}, {X: x + 6, Y: y + 3}, {X: x + 6, Y: y + 6}}}}}
		default:
			it = &sheet.Path{Style: sheet.Style{Width: 0.18 * float64(1+i%2), Stroke: sheet.Grey}, Segs: []sheet.Seg{
				{Verb: sheet.Move, P: [3]sheet.Point{{X: x, Y: y}}}, {Verb: sheet.Line, P: [3]sheet.Point{{X: x + 8, Y: y + 8}}}}}
		}
		s.Root.Items = append(s.Root.Items, it)
	}
	return s
}
