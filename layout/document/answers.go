package document

import (
	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// filling is what is written where the pages of a schematic have rules to write on.
type filling struct {
	steps  units.Steps
	length map[string]units.Num // by measurement
	letter map[string]string    // the measurement that a letter stands for
}

// fill writes the values of g where the pages of a schematic have rules to write on, those of the
// measurements that are given.
func fill(pages []atom, g *schematic.Garment, steps units.Steps, given func(schematic.Measure) bool) {
	f := filling{steps, map[string]units.Num{}, map[string]string{}}
	for id, m := range measuresOf(g) {
		if given(m) {
			f.length[id] = m.Length
		}
	}
	all := groups(pages)
	for _, piece := range all {
		if piece.Class == "piece" {
			f.piece(piece)
		}
	}
	for _, t := range all {
		if t.Class == "table" {
			f.table(t)
		}
	}
}

func (f *filling) piece(piece *sheet.Group) {
	for id, l := range letters(piece) {
		f.letter[l] = id
	}
	for _, it := range piece.Items {
		if m, ok := it.(*sheet.Group); ok && m.Class == "measure" {
			m.Items = filled(m.Items, f.steps, func(*sheet.Text) (units.Num, bool) { v, ok := f.length[m.ID]; return v, ok })
		}
	}
}

// table fills a table of letters, after the pieces have told what they stand for.
func (f *filling) table(t *sheet.Group) {
	id := ""
	t.Items = filled(t.Items, f.steps, func(tx *sheet.Text) (units.Num, bool) {
		if tx.Face == fonts.Bold && f.letter[tx.S] != "" {
			id = f.letter[tx.S]
		}
		v, ok := f.length[id]
		return v, ok
	})
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
