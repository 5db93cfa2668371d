package check

import (
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Own gives the measurements of the garment as it is worn the figures of the finished ones that its designer wrote
// and that the counts make. One that is not what is drawn under its name, such as a bust with its band, has no line in the
// picture: it stands under it, and what is drawn is called for what it is.
func Own(g *schematic.Garment) {
	if g.Worn == nil {
		return
	}
	for i := range g.Pattern.Finished {
		w := &g.Pattern.Finished[i]
		if made, ok := Made(g, w); ok {
			own(g, w, made)
		}
	}
}

// trueLine is how far the length of a line in the picture may be from the value that it bears, mm.
const trueLine = 0.5

func own(g *schematic.Garment, w *schematic.Written, made units.Num) {
	all := g.Worn.Measures
	i := slices.IndexFunc(all, func(m schematic.Measure) bool { return sameMeasure(m.Name, w.Name) })
	var m *schematic.Measure
	switch asked := slices.ContainsFunc(g.Pattern.Drawing.Show, func(c schematic.Called) bool { return c.Is(g.Worn.Name, w.Name) }); {
	case i >= 0 && made.Sub(all[i].Length).Abs().Float() <= trueLine:
		m = &all[i]
	case i >= 0:
		under := schematic.Measure{ID: all[i].ID, Name: all[i].Name, Around: all[i].Around, View: schematic.NoView}
		rename(g.Worn, &all[i])
		g.Worn.Measures = append(all, under)
		m = &g.Worn.Measures[len(all)]
	case asked:
		g.Worn.Measures = append(all, schematic.Measure{ID: g.Worn.ID + "." + schematic.ID(w.Name), Name: w.Name, View: schematic.NoView})
		m = &g.Worn.Measures[len(all)]
	default:
		return
	}
	m.Length = made
	low, _ := w.Low.At(g.Index)
	other, both := w.Other.At(g.Index)
	if high, ok := w.High.At(g.Index); !both || ok && !high.Eq(low) {
		return
	}
	m.Own = &schematic.Own{CM: low, Inch: other}
	if w.Unit == units.Inch {
		m.Own = &schematic.Own{CM: other, Inch: low}
	}
}

// sameMeasure reports whether two names are of one measurement of a garment.
func sameMeasure(a, b string) bool {
	plain := func(s string) string {
		s = strings.TrimSuffix(finding.PlainName(s), " around")
		if s == "chest" {
			return "bust"
		}
		return s
	}
	return plain(a) == plain(b)
}

// rename calls a measurement that is drawn for what it is, since its designer calls another one by its name.
func rename(worn *schematic.Made, m *schematic.Measure) {
	m.Name += " as drawn"
	if strings.HasPrefix(m.Name, "bust ") {
		m.Name = "width at underarm"
	}
	m.ID = worn.ID + "." + schematic.ID(m.Name)
}
