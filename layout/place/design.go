package place

import (
	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// design is what the designer of the pattern chose for its drawings.
func (p *plan) design() *schematic.Drawing { return &p.g.Pattern.Drawing }

// inOrder is the pieces in the order in which the designer wants them, the garment as it is
// worn first if she says nothing; without it, if she wants nothing else and there is none,
// the pieces.
func inOrder(g *schematic.Garment, pieces []*schematic.Made) []*schematic.Made {
	if g.Pattern.Drawing.OneOutline {
		pieces = oneOutline(pieces)
	}
	views := g.Pattern.Drawing.Views
	if len(views) == 0 {
		views = []schematic.DrawnView{schematic.AsWorn, schematic.InPieces}
	}
	var all []*schematic.Made
	for _, v := range views {
		one := map[schematic.DrawnView]*schematic.Made{schematic.AsWorn: g.Worn, schematic.BackAsWorn: g.WornBack}[v]
		switch {
		case v == schematic.InPieces:
			all = append(all, pieces...)
		case one != nil:
			all = append(all, one)
		}
	}
	if len(all) == 0 {
		return pieces
	}
	return all
}

// chosen is a view without what the designer leaves off.
func (p *plan) chosen(view *schematic.View) *schematic.View {
	without := p.design().Without
	if !without.Has(schematic.Arrows | schematic.JoinMarks) {
		return view
	}
	v := *view
	if without.Has(schematic.Arrows) {
		v.Arrow = schematic.Point{}
	}
	if without.Has(schematic.JoinMarks) {
		v.Notches = nil
	}
	return &v
}

// named is a measurement by the name that the designer gives it.
func (p *plan) named(piece string, m *schematic.Measure) *schematic.Measure {
	name := p.design().NameOf(piece, m.Name)
	if name == m.Name {
		return m
	}
	out := *m
	out.Name = name
	return &out
}

// finish gives sheets what the designer chose of colours, and cuts them to their ink.
func (c *choice) finish(sheets []*sheet.Sheet) {
	o := &c.p.o
	for _, s := range sheets {
		colour(s, c.p.design().Colours)
		if o.cut() {
			s.Crop(o.Width)
		}
	}
}

// lineClasses are the classes of paths that belong to the pieces; all others measure.
var lineClasses = map[string]bool{"outline": true, "fold": true, "centre": true, "panel": true, "cell": true, "row": true, "slit": true,
	"seam": true, "notch": true, "hatch": true, "mark": true, "work": true}

// colour changes the inks of a sheet to the designer's: black only, since grey and grounds stay
// what they are. Pieces get their ground below everything else.
func colour(s *sheet.Sheet, c schematic.Colours) {
	if !c.Line.Set && !c.Fill.Set && !c.Measure.Set {
		return
	}
	var groups []*sheet.Group
	sheet.Walk(&s.Root, func(it sheet.Item) {
		switch it := it.(type) {
		case *sheet.Group:
			if it.Class == "piece" {
				groups = append(groups, it)
			}
		case *sheet.Text:
			it.Ink = inked(it.Ink, c.Measure)
		case *sheet.Path:
			of := c.Measure
			if lineClasses[it.Class] {
				of = c.Line
			}
			it.Style.Stroke, it.Style.Fill = inked(it.Style.Stroke, of), inked(it.Style.Fill, of)
		}
	})
	if c.Fill.Set {
		for _, g := range groups {
			ground(g, sheet.RGB(c.Fill.R, c.Fill.G, c.Fill.B))
		}
	}
}

// inked is black as the designer has it, if she chose a colour.
func inked(k sheet.Ink, c schematic.Colour) sheet.Ink {
	if k == sheet.Black && c.Set {
		return sheet.RGB(c.R, c.G, c.B)
	}
	return k
}

// ground fills the outlines of a piece, below everything else of it.
func ground(piece *sheet.Group, fill sheet.Ink) {
	var grounds []sheet.Item
	for _, it := range piece.Items {
		if p, ok := it.(*sheet.Path); ok && p.Class == "outline" && p.Segs[len(p.Segs)-1].Verb == sheet.Close {
			grounds = append(grounds, &sheet.Path{Segs: p.Segs, Class: "ground", Style: sheet.Style{Fill: fill}})
		}
	}
	piece.Items = append(grounds, piece.Items...)
}

// In a face of one's own the drawing is laid out in that of the house, so much larger that no
// text is wider or higher than the room that it gets; then each text takes its own face and size.

// mostFits is how often a drawing is laid out anew for a face at most.
const mostFits = 4

// faced lays a drawing out for the face of the options.
func faced(o Options, lay func(Options) ([]*sheet.Sheet, error)) ([]*sheet.Sheet, error) {
	if o.Face.House() {
		return lay(o)
	}
	return Faced(o.Face, o.text(), func(size float64) ([]*sheet.Sheet, error) {
		in := o
		in.Text, in.Face = size, fonts.Regular
		return lay(in)
	})
}

// Faced is a drawing in a face of one's own, its words of a size in mm: lay lays it out in the face of the house, with
// words of a size. Its error is that of lay.
func Faced(face fonts.Face, size float64, lay func(size float64) ([]*sheet.Sheet, error)) ([]*sheet.Sheet, error) {
	grown := likelyGrowth(face)
	for n := 0; ; n++ {
		sheets, err := lay(size * grown)
		if err != nil {
			return nil, err
		}
		need := 0.0
		for _, s := range sheets {
			need = max(need, wider(s, face, grown))
		}
		if need <= 1 || n == mostFits {
			for _, s := range sheets {
				reface(s, face, grown*max(need, 1))
			}
			return sheets, nil
		}
		grown *= need * 1.001
	}
}

// likelyGrowth is how much larger a drawing is laid out for a face at first: as the letters and
// digits that most labels have ask for.
func likelyGrowth(f fonts.Face) float64 {
	if f.House() {
		return 1
	}
	grown := 0.01
	for _, s := range []string{"10 cm", "42.5 cm", "16¾ in", "Sleeve", "measurements in cm"} {
		grown = max(grown, fonts.Width(f, 1, s)/fonts.Width(fonts.Regular, 1, s))
	}
	return max(grown, fonts.Ascent(f)/fonts.Ascent(fonts.Regular), fonts.Descent(f)/fonts.Descent(fonts.Regular))
}

// wider is by how much the texts of a sheet, smaller by grown, are wider or higher in a face
// than in that in which they were laid out, at the most.
func wider(s *sheet.Sheet, f fonts.Face, grown float64) float64 {
	need := 0.0
	sheet.Walk(&s.Root, func(it sheet.Item) {
		t, ok := it.(*sheet.Text)
		if !ok || !t.Visible() || t.Width <= 0 {
			return
		}
		size := t.Size / grown
		need = max(need, fonts.Width(f, size, t.S)/t.Width,
			fonts.Ascent(f)*size/(fonts.Ascent(t.Face)*t.Size), fonts.Descent(f)*size/(fonts.Descent(t.Face)*t.Size))
	})
	return need
}

func reface(s *sheet.Sheet, f fonts.Face, grown float64) {
	sheet.Walk(&s.Root, func(it sheet.Item) {
		if t, ok := it.(*sheet.Text); ok {
			t.Face, t.Size = f, sheet.Quantise(t.Size/grown)
			t.Width = fonts.Width(f, t.Size, t.S)
		}
	})
}
