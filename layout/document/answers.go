package document

import (
	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// fill writes the values of g where the pages of a schematic have rules to write on, those of the
// measurements that are given.
func fill(pages []atom, g *schematic.Garment, steps units.Steps, given func(schematic.Measure) bool) {
	length := map[string]units.Num{}
	for _, made := range g.Pieces {
		for _, m := range made.Measures {
			if given(m) {
				length[m.ID] = m.Length
			}
		}
	}
	letter := map[string]string{} // the measurement that a letter stands for
	var tables []*sheet.Group
	for _, piece := range groups(pages) {
		if piece.Class == "table" {
			tables = append(tables, piece)
		}
		if piece.Class != "piece" {
			continue
		}
		for id, l := range letters(piece) {
			letter[l] = id
		}
		for _, it := range piece.Items {
			if m, ok := it.(*sheet.Group); ok && m.Class == "measure" {
				id := m.ID
				m.Items = filled(m.Items, steps, func(*sheet.Text) (units.Num, bool) { v, ok := length[id]; return v, ok })
			}
		}
	}
	for _, t := range tables {
		id := ""
		t.Items = filled(t.Items, steps, func(tx *sheet.Text) (units.Num, bool) {
			if tx.Face == fonts.Bold && letter[tx.S] != "" {
				id = letter[tx.S]
			}
			v, ok := length[id]
			return v, ok
		})
	}
}

// groups are the groups that the pages hold.
func groups(pages []atom) []*sheet.Group {
	var out []*sheet.Group
	for _, a := range pages {
		for _, it := range a.page.Root.Items {
			if g, ok := it.(*sheet.Group); ok {
				out = append(out, g)
			}
		}
	}
	return out
}

// filled puts a value in the place of each rule. A rule stands behind the text of its
// unit; value is told every text, and says which value is meant.
func filled(items []sheet.Item, steps units.Steps, value func(*sheet.Text) (units.Num, bool)) []sheet.Item {
	var unit *sheet.Text
	var mm units.Num
	known := false
	out := make([]sheet.Item, len(items))
	for i, it := range items {
		out[i] = it
		switch it := it.(type) {
		case *sheet.Text:
			mm, known = value(it)
			if len(it.S) >= 2 && (it.S[:2] == "cm" || it.S[:2] == "in") {
				unit = it
			}
		case *sheet.Path:
			if it.Class != "blank" || unit == nil || !known || len(it.Segs) < 2 {
				continue
			}
			u, _ := units.ParseUnit(unit.S[:2])
			s := steps.Format(mm, u)
			out[i] = &sheet.Text{S: s, At: it.Segs[1].P[0], Anchor: sheet.End, Angle: unit.Angle, Face: fonts.Bold, Size: unit.Size,
				Width: fonts.Width(fonts.Bold, unit.Size, s), Ink: sheet.Black, Class: "label"}
		}
	}
	return out
}
