package document

import (
	"errors"
	"maps"
	"slices"

	"flatwright/fonts"
	"flatwright/layout/place"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// schematics are the pages of a drawing, their own heads taken out: of the chosen
// size with its values (or blanks), or of all sizes.
func schematics(gs []*schematic.Garment, c *Content, o Options, labels place.Labels) ([]atom, error) {
	po := place.Options{Paper: o.Paper, Orientation: place.Portrait, Size: max(o.Size, 0), Labels: labels, Units: unitChoice(o.Units)}
	if o.Large {
		po.Text = largeText
	}
	if o.Size < 0 && c.Sizes.Len() > 1 {
		po.Size, po.Labels = shapeOf(gs), place.Letters
	}
	po.Face = o.Face
	po = designed(gs, po)
	sheets, err := placed(gs, po)
	if err != nil {
		return nil, err
	}
	size := UsualText
	if o.Large {
		size = largeText
	}
	var out []atom
	for i, s := range sheets {
		name := "Schematic, " + sizeWords(c, Options{Size: po.Size})
		if po.Labels == place.Letters {
			name = "Schematic, all sizes"
		}
		out = append(out, atom{page: headless(s, name, i == 0, size)})
	}
	return out, nil
}

// placed is a drawing, upright if its paper has room for it so; with no outline wider than the pattern says, if it has room for that.
func placed(gs []*schematic.Garment, o place.Options) ([]*sheet.Sheet, error) {
	sheets, err := place.Schematic(gs, o)
	var large *place.TooLarge
	if errors.As(err, &large) && o.Orientation == place.Portrait {
		o.Orientation = place.Auto
		sheets, err = place.Schematic(gs, o)
	}
	w := gs[0].Pattern.Drawing.Width
	if err != nil || w <= 0 {
		return sheets, err
	}
	pieces, worn := outlinesNoWider(gs[o.Size], w)
	wide, wideWorn := widestOutlines(sheets, worn.made)
	if wide <= w && wideWorn <= w {
		return sheets, nil
	}
	if wide > w {
		o.Scale = pieces.scale()
	}
	if wideWorn > w {
		o.WornScale = worn.scale()
	}
	if narrow, err := place.Schematic(gs, o); err == nil {
		return narrow, nil
	}
	return sheets, nil
}

// widestOutlines are how wide the widest outline of a piece is, and that of the garment as it is worn.
func widestOutlines(sheets []*sheet.Sheet, worn []*schematic.Made) (pieces, asWorn float64) {
	for _, s := range sheets {
		for _, g := range groupsOf(&s.Root) {
			most := &pieces
			if slices.ContainsFunc(worn, func(m *schematic.Made) bool { return m.Name == g.Title }) {
				most = &asWorn
			}
			for _, it := range g.Items {
				if p, ok := it.(*sheet.Path); ok && p.Class == "outline" {
					lo, hi, _ := sheet.Bounds(p)
					*most = max(*most, hi.X-lo.X)
				}
			}
		}
	}
	return pieces, asWorn
}

// untabled takes the tables of letters off the pages of a schematic, and pages that held
// nothing else: the letters stand in the table of measurements instead.
func untabled(drawn []atom) ([]atom, map[string]string) {
	letter := map[string]string{}
	var out []atom
	for _, a := range drawn {
		s := *a.page
		s.Root.Items = nil
		pieces := 0
		for _, it := range a.page.Root.Items {
			if g, ok := it.(*sheet.Group); ok && g.Class == "table" {
				continue
			} else if ok && g.Class == "piece" {
				pieces++
				maps.Copy(letter, letters(g))
			}
			s.Root.Items = append(s.Root.Items, it)
		}
		if pieces > 0 {
			a.page = &s
			out = append(out, a)
		}
	}
	return out, letter
}

func unitChoice(us []units.Unit) place.Units {
	if len(us) == 1 && us[0] == units.CM {
		return place.CM
	}
	if len(us) == 1 {
		return place.Inches
	}
	return place.Both
}

// headless is a sheet of a schematic with the heading of this document in the place of
// its own: the head is never higher than what it replaces.
func headless(s *sheet.Sheet, name string, first bool, size float64) *sheet.Sheet {
	out := *s
	out.Bookmark = ""
	out.Root.Items = nil
	for _, it := range s.Root.Items {
		if t, ok := it.(*sheet.Text); ok && t.Class == "page" {
			continue // of the drawing alone
		}
		if g, ok := it.(*sheet.Group); ok && g.Class == "heading" {
			head, y := headed(g, name, size)
			it = head
			if first {
				out.Places = []sheet.Bookmark{{Name: name, Y: y}}
			}
		}
		out.Root.Items = append(out.Root.Items, it)
	}
	return &out
}

// headed is the heading of a drawing with a name in the place of what it is called there, and the
// place of that, mm.
func headed(g *sheet.Group, name string, size float64) (head *sheet.Group, y float64) {
	head = &sheet.Group{ID: g.ID, Class: g.Class, Title: g.Title}
	for _, it := range g.Items {
		if t, ok := it.(*sheet.Text); ok && remark(t) {
			head.Items = append(head.Items, t)
		}
	}
	line, big := 2.9, size*1.25
	if size >= 6 {
		line, big = size, size*1.2
	}
	y = edge + lineHigh(line) + 0.8
	setLine(head, []run{{name, fonts.Bold, sheet.Black}}, edge, y+fonts.Ascent(fonts.Bold)*big, big, "heading")
	return head, y
}

// lessInk takes grounds away, every second line of a rib and the hairlines between the rows
// of a table; outlines and frames become thinner, and rules to write on are dotted.
func lessInk(g *sheet.Group) {
	for _, it := range g.Items {
		switch it := it.(type) {
		case *sheet.Group:
			lessInk(it)
		case *sheet.Path:
			if it.Style.Fill == sheet.Tint {
				it.Style.Fill = sheet.None
			}
			switch {
			case it.Class == "hatch":
				it.Segs = everySecond(it.Segs)
			case it.Class == "outline":
				it.Style.Width *= 0.7
			case it.Class == "caution":
				it.Style.Width = min(it.Style.Width, 0.25)
			case it.Class == "blank":
				it.Style.Dash = []float64{0.2, 1.8}
			case it.Class == "table" && it.Style.Width <= 0.1:
				it.Style.Stroke = sheet.None
			}
		}
	}
}

// everySecond keeps every second line of a path of lines.
func everySecond(segs []sheet.Seg) []sheet.Seg {
	var out []sheet.Seg
	n := -1
	for _, s := range segs {
		if s.Verb == sheet.Move {
			n++
		}
		if n%2 == 0 {
			out = append(out, s)
		}
	}
	return out
}
