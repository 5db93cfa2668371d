package check

import (
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Own gives the measurements of the garment as it is worn, in all its sizes, the figures of the finished ones that its designer
// wrote and that the counts make. One that is not what is drawn under its name, such as a bust with its band, has no line in
// the picture of any size: it stands under it, and what is drawn is called for what it is.
func Own(gs []*schematic.Garment) {
	var all []*schematic.Garment
	for _, g := range gs {
		if g.Worn != nil {
			all = append(all, g)
		}
	}
	if len(all) == 0 {
		return
	}
	for i := range all[0].Pattern.Finished {
		w := &all[0].Pattern.Finished[i]
		s := lying{}
		for _, g := range all {
			if made, ok := Made(g, w); ok && drawnAs(g, w) >= 0 {
				off := made.Sub(g.Worn.Measures[drawnAs(g, w)].Length).Abs().Float()
				s.apart, s.near = s.apart || off > trueLine, s.near || off <= nearLine
			}
		}
		for _, g := range all {
			own(g, w, s)
		}
	}
}

// lying is how a finished measurement lies to the line of its name: apart from it in some size, and near it in some size.
type lying struct{ apart, near bool }

// trueLine is how far the length of a line in the picture may be from the value that it bears, mm. Up to nearLine the two would be
// taken for one measurement with two values.
const trueLine, nearLine = 0.5, 15

// drawnAs is the measurement of the garment as worn that has the name of a finished one, or -1.
func drawnAs(g *schematic.Garment, w *schematic.Written) int {
	return slices.IndexFunc(g.Worn.Measures, func(m schematic.Measure) bool { return sameMeasure(m.Name, w.Name) })
}

// own takes a finished measurement into the garment as worn of one size; apart from the line of its name if that is not what it is
// in every size.
func own(g *schematic.Garment, w *schematic.Written, s lying) {
	made, agrees := Made(g, w)
	i := drawnAs(g, w)
	m := schematic.Measure{ID: g.Worn.ID + "." + schematic.ID(w.Name), Name: w.Name, View: schematic.NoView}
	switch {
	case i >= 0 && !s.apart:
		if agrees {
			bear(g, w, &g.Worn.Measures[i], made)
		}
		return
	case i >= 0:
		drawn := &g.Worn.Measures[i]
		m.ID, m.Name, m.Around = drawn.ID, drawn.Name, drawn.Around
		rename(g.Worn, drawn, s.near)
	case !slices.ContainsFunc(g.Pattern.Drawing.Show, func(c schematic.Called) bool { return c.Is(g.Worn.Name, w.Name) }):
		return
	}
	if agrees {
		bear(g, w, &m, made)
		g.Worn.Measures = append(g.Worn.Measures, m)
	}
}

// bear gives a measurement the length that the counts make, and the figures that the designer wrote if she wrote both.
func bear(g *schematic.Garment, w *schematic.Written, m *schematic.Measure, made units.Num) {
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

// rename calls a measurement that is drawn for what it is, since its designer calls another one by its name. What lies flat is told
// flat, if its double would be taken for her own.
func rename(worn *schematic.Made, m *schematic.Measure, near bool) {
	m.Name += " as drawn"
	if sameMeasure(strings.TrimSuffix(m.Name, " as drawn"), "bust") || strings.HasPrefix(m.Name, "bust ") {
		m.Name = "width at underarm"
		if m.Around && near {
			m.Around, m.Length = false, m.Length.Half()
		}
	}
	m.ID = worn.ID + "." + schematic.ID(m.Name)
}
