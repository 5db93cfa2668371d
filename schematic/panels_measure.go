package schematic

// acrossPanels notes the width of the whole row in work, which is drawn in panels. No
// drawing shows it; tables and checks have it.
func (w *worker) acrossPanels(name string) {
	st := w.cur
	s := Measure{Name: name, View: NoView, Axis: Horizontal, Around: st.round, Count: st.count(), Of: "st", Doubt: st.doubt}
	for i := range st.blocks {
		b := &st.blocks[i]
		s.Length = s.Length.Add(st.gaugeWidth(b))
		switch {
		case !b.uniform() || i > 0 && s.Gauge != b.runs[0].gauge:
			s.Gauge, s.Count = nil, 0
		case i == 0:
			s.Gauge = b.runs[0].gauge
			s.Stretched = s.Gauge.Stretched
		}
	}
	w.wholes = append(w.wholes, s)
}

// panelsName is the trade's name of the whole row with which panels begin, or end.
func (w *worker) panelsName(start bool) string {
	low := start == w.piece.From.upwards()
	switch k := w.made.Kind; {
	case w.raglan() && low:
		return "base of yoke"
	case w.raglan():
		return "neck edge"
	case k == KindPiece && low:
		return "width at lower edge"
	case k == KindPiece:
		return "width at upper edge"
	case low:
		return "width at hem"
	}
	return "width at top"
}
