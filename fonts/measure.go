package fonts

// Width is the width of one line of text in mm, at a size in mm, with kerning:
// what a browser advances by. It measures what is drawn, so stand-ins count.
func Width(f Face, sizeMM float64, s string) float64 {
	m := metricsOf(f)
	units := 0
	var last uint16
	for _, r := range Shown(f, s) {
		g := m.of(r)
		units += int(m.advance[g]) + m.between(last, g)
		last = g
	}
	return float64(units) / float64(m.em) * sizeMM
}

// Run is a stretch of text within which nothing kerns. Offset is where it starts,
// in em from the start of the whole text.
type Run struct {
	Text   string
	Offset float64
}

// Runs cuts a text, as it's drawn, where a pair of letters kerns, for writers
// that know no kerning.
func Runs(f Face, s string) []Run {
	m := metricsOf(f)
	s = Shown(f, s)
	if s == "" {
		return nil
	}
	var runs []Run
	units, start, startUnits := 0, 0, 0
	var last uint16
	for i, r := range s {
		g := m.of(r)
		if k := m.between(last, g); k != 0 {
			runs = append(runs, Run{s[start:i], float64(startUnits) / float64(m.em)})
			units += k
			start, startUnits = i, units
		}
		units += int(m.advance[g])
		last = g
	}
	return append(runs, Run{s[start:], float64(startUnits) / float64(m.em)})
}
